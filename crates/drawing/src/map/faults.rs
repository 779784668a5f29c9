//! Faults of a run, there or tried, where they act, and stretches of other grass beside its net; on its own line and on
//! its branches.

use std::borrow::Cow;

use plan::{FaultKind, Point, Run, RunStatus};
use workup::Lay;
use workup::faults::land;

use super::run::RunLine;
use super::track::{SAME_M, Track};
use super::{Legend, Sheet};
use crate::shape::{About, Priority, Role, Thing};

/// A line of netting that faults and stretches are on: a run's own, or a branch as a run by itself.
struct On<'a> {
    branch: Option<usize>,
    run: Cow<'a, Run>,
    lay: Cow<'a, Lay>,
    track: Cow<'a, Track>,
}

/// The lines of a run that have either.
fn lines<'a>(run: &'a RunLine<'_>) -> Vec<On<'a>> {
    let Some((lay, track)) = run.laid.as_ref().filter(|_| run.run.status != RunStatus::Past) else { return Vec::new() };
    let own = On { branch: None, run: Cow::Borrowed(run.run), lay: Cow::Borrowed(*lay), track: Cow::Borrowed(track) };
    let mut lines = vec![own];
    for laid in &lay.branches {
        let stated = run.run.branches.get(laid.branch);
        let Some(branch) = stated.filter(|branch| !branch.faults.is_empty() || !branch.leakage_zones.is_empty()) else {
            continue;
        };
        let Some(track) = Track::new(&laid.vertices, false, laid.line_m) else { continue };
        lines.push(On {
            branch: Some(laid.branch),
            run: Cow::Owned(branch.alone(run.run)),
            lay: Cow::Owned(laid.alone()),
            track: Cow::Owned(track),
        });
    }
    lines
}

/// Where a fault acts along the line, metres: where no net lies it is shown on the line beside its place.
pub(crate) fn along_m(run: &RunLine<'_>, track: &Track, kind: FaultKind, at: Point) -> f64 {
    let landed = run.laid.as_ref().and_then(|(lay, _)| land(run.run, lay, kind, at).ok());
    landed.map_or_else(|| track.nearest(at), |landing| landing.along_m)
}

impl On<'_> {
    fn along_m(&self, kind: FaultKind, at: Point) -> f64 {
        land(&self.run, &self.lay, kind, at).map_or_else(|_| self.track.nearest(at), |landing| landing.along_m)
    }

    /// Each stretch that lies on the line, by its place, metres from start to end.
    fn stretches(&self) -> impl Iterator<Item = (usize, f64, f64)> + '_ {
        self.run.leakage_zones.iter().enumerate().filter_map(|(index, zone)| {
            let (from_m, to_m) = stretch_m(&self.track, zone.from_m, zone.to_m)?;
            Some((index, from_m, to_m))
        })
    }
}

/// A stretch along the line, metres from start to end; an end before the start is one round over the first vertex.
pub(crate) fn stretch_m(track: &Track, from_m: f64, to_m: f64) -> Option<(f64, f64)> {
    if !(from_m.is_finite() && to_m.is_finite()) {
        return None;
    }
    if from_m <= to_m {
        let (from_m, to_m) = (from_m.clamp(0.0, track.line_m()), to_m.clamp(0.0, track.line_m()));
        return (to_m - from_m > SAME_M).then_some((from_m, to_m));
    }
    let (from_m, to_m) = (track.held(from_m), track.held(to_m));
    track.closed().then_some((from_m, if to_m > from_m { to_m } else { to_m + track.line_m() }))
}

/// The places of a stretch of the line.
fn places(track: &Track, from_m: f64, to_m: f64) -> Vec<Point> {
    let vertices = track.vertices().iter().map(|vertex| vertex.1);
    let mut stops: Vec<f64> = vertices.flat_map(|at_m| [at_m, at_m + track.line_m()]).collect();
    stops.retain(|&at_m| at_m > from_m + SAME_M && at_m < to_m - SAME_M);
    stops.extend([from_m, to_m]);
    stops.sort_by(f64::total_cmp);
    // The end of an open line is no start.
    let at = |at_m: f64| if track.closed() { track.at(at_m) } else { track.at(at_m.min(track.line_m())) };
    stops.into_iter().map(at).collect()
}

/// Bands beside the net, and both ends of each.
pub(super) fn zones(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    for on in lines(run) {
        let (index, branch) = (run.index, on.branch);
        for (zone, from_m, to_m) in on.stretches() {
            let mut points = places(&on.track, from_m, to_m);
            let outside_right = on.track.outside_right();
            if !outside_right {
                points.reverse();
            }
            let ends = ends(&points);
            let more = on.run.leakage_zones[zone].s_per_m >= on.run.leakage_s_per_m();
            sheet.path(Role::Zone { more }, points, false, Some(Thing::Zone { run: index, branch, zone }));
            for (place, (at, toward_rad)) in ends.into_iter().enumerate() {
                let last = (place == 1) == outside_right;
                let thing = Thing::ZoneEnd { run: index, branch, zone, last };
                sheet.mark(Role::ZoneEnd, at, toward_rad, Some(thing));
            }
        }
    }
}

/// Both ends of a path, each with the way to its right, radians.
fn ends(points: &[Point]) -> Vec<(Point, f64)> {
    let right_of = |from: Point, to: Point| {
        (to.north_m - from.north_m).atan2(to.east_m - from.east_m) - std::f64::consts::FRAC_PI_2
    };
    match points {
        [first, second, ..] => {
            let (before, last) = (points[points.len() - 2], points[points.len() - 1]);
            vec![(*first, right_of(*first, *second)), (last, right_of(before, last))]
        }
        _ => Vec::new(),
    }
}

/// A sign at each fault.
pub(super) fn signs(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    for on in lines(run) {
        for (index, fault) in on.run.faults.iter().enumerate() {
            let along_m = on.along_m(fault.kind, fault.at);
            let thing = Some(Thing::Fault { run: run.index, branch: on.branch, fault: index });
            let outward = on.track.square_outward(along_m);
            sheet.mark(Role::Fault { kind: fault.kind }, on.track.at(along_m), outward, thing);
        }
    }
}

/// What each supposes, for when it is picked.
pub(super) fn words(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let (plan, words) = (sheet.scene.plan, sheet.scene.words);
    for on in lines(run) {
        let legend = |along_m: f64, text: String| Legend {
            about: About::WhatIf,
            at: on.track.at(along_m),
            toward_rad: on.track.square_outward(along_m),
            texts: vec![text],
            priority: Priority::Weakest,
        };
        let branch = on.branch;
        for (index, fault) in on.run.faults.iter().enumerate() {
            let text = care::fault_said::what_if(plan, &on.run, &on.lay, fault, words);
            let legend = legend(on.along_m(fault.kind, fault.at), text);
            sheet.label(legend, Some(Thing::Fault { run: run.index, branch, fault: index }));
        }
        for (zone, from_m, to_m) in on.stretches() {
            let text = care::fault_said::zone_what_if(&on.run.leakage_zones[zone], words);
            let legend = legend(f64::midpoint(from_m, to_m), text);
            sheet.label(legend, Some(Thing::Zone { run: run.index, branch, zone }));
        }
    }
}
