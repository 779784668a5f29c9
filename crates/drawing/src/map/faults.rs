//! Faults of a run, there or tried, where they act, and stretches of other grass beside its net.

use plan::{FaultKind, Point, RunStatus};
use workup::faults::land;

use super::run::RunLine;
use super::track::{SAME_M, Track};
use super::{Legend, Sheet};
use crate::shape::{About, Priority, Role, Thing};

/// Where a fault acts along the line, metres: where no net lies it is shown on the line beside its place.
pub(crate) fn along_m(run: &RunLine<'_>, track: &Track, kind: FaultKind, at: Point) -> f64 {
    let landed = run.laid.as_ref().and_then(|(lay, _)| land(run.run, lay, kind, at).ok());
    landed.map_or_else(|| track.nearest(at), |landing| landing.along_m)
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

/// Bands beside the net.
pub(super) fn zones(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let Some((_, track)) = run.laid.as_ref().filter(|_| run.run.status != RunStatus::Past) else { return };
    for (index, zone) in run.run.leakage_zones.iter().enumerate() {
        let Some((from_m, to_m)) = stretch_m(track, zone.from_m, zone.to_m) else { continue };
        let mut points = places(track, from_m, to_m);
        if !track.outside_right() {
            points.reverse();
        }
        let more = zone.s_per_m >= run.run.leakage_s_per_m();
        sheet.path(Role::Zone { more }, points, false, Some(Thing::Zone { run: run.index, zone: index }));
    }
}

/// A sign at each fault.
pub(super) fn signs(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let Some((_, track)) = run.laid.as_ref().filter(|_| run.run.status != RunStatus::Past) else { return };
    for (index, fault) in run.run.faults.iter().enumerate() {
        let along_m = along_m(run, track, fault.kind, fault.at);
        let thing = Some(Thing::Fault { run: run.index, fault: index });
        sheet.mark(Role::Fault { kind: fault.kind }, track.at(along_m), track.square_outward(along_m), thing);
    }
}

/// What each supposes, for when it is picked.
pub(super) fn words(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let Some((lay, track)) = run.laid.as_ref().filter(|_| run.run.status != RunStatus::Past) else { return };
    let (plan, words) = (sheet.scene.plan, sheet.scene.words);
    let legend = |along_m: f64, text: String| Legend {
        about: About::WhatIf,
        at: track.at(along_m),
        toward_rad: track.square_outward(along_m),
        texts: vec![text],
        priority: Priority::Weakest,
    };
    for (index, fault) in run.run.faults.iter().enumerate() {
        let text = care::fault_said::what_if(plan, run.run, lay, fault, words);
        let legend = legend(along_m(run, track, fault.kind, fault.at), text);
        sheet.label(legend, Some(Thing::Fault { run: run.index, fault: index }));
    }
    for (index, zone) in run.run.leakage_zones.iter().enumerate() {
        let Some((from_m, to_m)) = stretch_m(track, zone.from_m, zone.to_m) else { continue };
        let legend = legend(f64::midpoint(from_m, to_m), care::fault_said::zone_what_if(zone, words));
        sheet.label(legend, Some(Thing::Zone { run: run.index, zone: index }));
    }
}
