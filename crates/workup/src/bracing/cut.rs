//! A cut corner on the ground: whether it may lie there, and the run that comes of taking it.

use geometry::{Outline, Point, region};
use plan::{Pin, PinKind, Run};

use super::Site;
use super::mends::builds;
use super::model::CutMend;
use crate::pins::CORNER_REACH_M;
use crate::point;

/// Distances that meet to rounding, metres.
const GRAIN_M: f64 = 1e-6;

/// More vertices than this are no outline that a keeper walks corner by corner; no cut is looked for.
pub(super) const MOST_VERTICES: usize = 500;

/// The outline with the places of a cut in place of a vertex.
fn outline_after(outline: &Outline, vertex: usize, places: &[Point]) -> Outline {
    let mut points: Vec<Point> = outline.points().collect();
    points.splice(vertex..=vertex, places.iter().copied());
    if outline.is_closed() { Outline::closed(&points) } else { Outline::open(&points) }
}

/// The line beyond the two sides that meet at a vertex, in one or two stretches.
fn beyond(outline: &Outline, vertex: usize) -> Vec<Outline> {
    let points: Vec<Point> = outline.points().collect();
    if outline.is_closed() {
        let round = points[vertex + 1..].iter().chain(&points[..vertex]).copied().collect::<Vec<_>>();
        return vec![Outline::open(&round)];
    }
    vec![Outline::open(&points[..vertex]), Outline::open(&points[vertex + 1..])]
}

/// Whether a cut line may lie there: it crosses nothing of its own, keeps inside the paddock if the run did, off the
/// keep-outs and the coop.
pub(super) fn fits(site: &Site<'_>, vertex: usize, places: &[Point]) -> bool {
    let path = Outline::open(places);
    let crosses = |rest: &Outline| region::distance_between_m(&path, rest) < GRAIN_M;
    if beyond(site.outline, vertex).iter().any(crosses) {
        return false;
    }
    if site.inside && site.ground.boundary().is_some_and(|boundary| !region::inside(&path, boundary)) {
        return false;
    }
    let after = outline_after(site.outline, vertex, places);
    for keep_out in &site.plan.ground.keep_outs {
        let points: Vec<Point> = keep_out.outline.iter().copied().map(point).collect();
        let Some(outline) = builds(&points, true) else { continue };
        let crossed = region::crossings(&path, &outline);
        let inside = places.iter().any(|&at| region::contains(&outline, at));
        let off_m = region::distance_between_m(&path, &outline);
        if !crossed.is_empty() || inside || off_m + GRAIN_M < keep_out.clearance_m() {
            return false;
        }
        // What stood inside stays inside, and what stood outside stays outside.
        let middle = points.first().copied().unwrap_or_default();
        if after.is_closed() && region::contains(site.outline, middle) != region::contains(&after, middle) {
            return false;
        }
    }
    let coop = site.run.coop.as_deref().and_then(|id| site.plan.coop(id));
    if let Some(coop) = coop.filter(|_| after.is_closed()) {
        let reach_m = 0.5 * coop.length_m().hypot(coop.width_m());
        let at = point(coop.at);
        let was_in = region::contains(site.outline, at);
        if was_in && (!region::contains(&after, at) || region::distance_to_m(&path, at) < reach_m) {
            return false;
        }
    }
    true
}

/// The run with its corner cut: what is stated along its line is carried over, the corner's brace goes.
pub fn cut_run(run: &Run, cut: &CutMend) -> Option<Run> {
    let corner = *run.outline.get(cut.vertex)?;
    let points: Vec<Point> = run.outline.iter().copied().map(point).collect();
    let outline = if run.closed() { Outline::closed(&points) } else { Outline::open(&points) };
    let vertex = outline.vertices().iter().position(|vertex| vertex.stated == cut.vertex)?;
    let carried = |along_m: f64| carried_m(&outline, vertex, cut, along_m);
    let mut cut_run = run.clone();
    cut_run.outline.splice(cut.vertex..=cut.vertex, cut.places.iter().copied());
    cut_run.start_m = run.start_m.map(carried);
    // The corner that a pin kept on a post is no more.
    let kept = |pin: &Pin| pin.kind != PinKind::Corner || point(pin.at).distance_m(point(corner)) > CORNER_REACH_M;
    cut_run.pins.retain(kept);
    for zone in &mut cut_run.leakage_zones {
        zone.from_m = carried(zone.from_m);
        zone.to_m = carried(zone.to_m);
    }
    let mut number = 0..;
    cut_run.braces.retain(|_| number.next().is_none_or(|number| !cut.braces.contains(&number)));
    Some(cut_run)
}

/// Where a place of the old line lies on the new one, metres along it; within the cut in proportion.
fn carried_m(outline: &Outline, vertex: usize, cut: &CutMend, along_m: f64) -> f64 {
    let at_m = outline.vertices()[vertex].along_m;
    let (before_m, wide_m) = (at_m - cut.set_back_m, 2.0 * cut.set_back_m);
    let from_cut_m = along_m - before_m;
    if !outline.is_closed() {
        return if from_cut_m <= 0.0 { along_m } else { before_m + within_m(cut, wide_m, from_cut_m) };
    }
    let length_m = outline.length_m();
    // The new line begins with the cut where the corner was its first.
    let first_m = if vertex == 0 { 0.0 } else { before_m };
    let on_m = within_m(cut, wide_m, from_cut_m.rem_euclid(length_m));
    (first_m + on_m).rem_euclid(length_m - cut.shorter_m)
}

/// Metres from the cut's first place on the new line, of so many on the old.
fn within_m(cut: &CutMend, wide_m: f64, from_cut_m: f64) -> f64 {
    if from_cut_m >= wide_m { from_cut_m - cut.shorter_m } else { from_cut_m * (wide_m - cut.shorter_m) / wide_m }
}
