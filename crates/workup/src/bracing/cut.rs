//! A cut corner on the ground: whether it may lie there, and the run that comes of taking it.

use geometry::{Outline, Point, region};
use plan::{Pin, PinKind, Plan, Run};

use super::Site;
use super::mends::builds;
use super::model::CutMend;
use crate::model::{Lay, Post, RunWorkup};
use crate::pins::CORNER_REACH_M;
use crate::slope::{self, Heights, Measure};
use crate::{Depth, Known, lay, nets, point};

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
    // Only the ground between the corner and the cut changes sides.
    let changed: Vec<Point> =
        site.outline.vertices().get(vertex).map(|corner| corner.at).into_iter().chain(places.iter().copied()).collect();
    for keep_out in &site.plan.ground.keep_outs {
        let points: Vec<Point> = keep_out.outline.iter().copied().map(point).collect();
        if region::boxes_apart_m(points.iter().copied(), changed.iter().copied())
            > keep_out.clearance_m().max(0.0) + GRAIN_M
        {
            continue;
        }
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
    for coop in site.plan.coops_in(site.run).filter(|_| after.is_closed()) {
        let reach_m = 0.5 * coop.length_m().hypot(coop.width_m());
        let at = point(coop.at);
        let was_in = region::contains(site.outline, at);
        if was_in && (!region::contains(&after, at) || region::distance_to_m(&path, at) < reach_m) {
            return false;
        }
    }
    true
}

/// How far the places of a cut lie from the posts at most, once it is taken and the nets fall anew; `None` where that is
/// not worked out.
pub(super) fn off_post_m(site: &Site<'_>, cut: &CutMend) -> Option<f64> {
    let given = &site.given;
    if given.depth == Depth::Quick {
        return None;
    }
    let run = cut_over_ground(site.run, cut, given.heights)?;
    let mut worked = RunWorkup::default();
    let (mut chosen, mut known) = (nets::Chosen::new(), Known::default());
    let mut search = lay::Search { depth: Depth::Quick, known: &mut known };
    let line = lay::line(site.plan, &run, given.heights, given.bad, given.soil, &mut chosen, &mut search, &mut worked)?;
    let posts = line.placement?.posts;
    let off_m =
        |at: &plan::Point| posts.iter().map(|post| post.at.distance_m(point(*at))).fold(f64::INFINITY, f64::min);
    let most_m = cut.places.iter().map(off_m).fold(0.0, f64::max);
    most_m.is_finite().then_some(most_m)
}

/// The places of a cut over so many posts a panel apart, along the ground where that is measured.
pub(super) fn places(
    level: &Outline,
    vertex: usize,
    posts: usize,
    panel_m: f64,
    measure: Option<&Measure>,
) -> Option<geometry::Cut> {
    match measure {
        None => geometry::cut_corner(level, vertex, posts, panel_m),
        Some(measure) => {
            let ground_m = |from, to| measure.between_m(from, to);
            geometry::cut_corner_over(level, vertex, posts, panel_m, &ground_m)
        }
    }
}

/// A run with a corner cut over so many posts a panel apart, whatever stands in its way and whether that holds by itself:
/// as a keeper asks for it, of a run with the lay of its nets. `None` where no net stands at the corner, where it does not
/// turn, and where a side beside it is too short.
///
/// `braces` are those stated for the corner, by their places in the run's list: they go with it.
pub fn cut_over_posts(
    plan: &Plan,
    run: &Run,
    lay: &Lay,
    (vertex, braces): (usize, &[usize]),
    posts: usize,
) -> Option<Run> {
    let corner = point(*run.outline.get(vertex)?);
    let off_m = |post: &&Post| point(post.at).distance_m(corner);
    let post = lay.posts.iter().min_by(|one, other| off_m(one).total_cmp(&off_m(other)))?;
    let id = &lay.nets.get(post.net)?.kind;
    let kind = plan.store.nets.iter().find(|kind| kind.id == *id)?;
    let panel_m = kind.length_m / kind.panel_count().max(1) as f64;
    let level = line(run);
    let number = level.vertices().iter().position(|one| one.stated == vertex)?;
    let heights = Heights::of(plan, &mut Vec::new());
    let found = places(&level, number, posts, panel_m, Measure::of(run, &heights).as_ref())?;
    let cut = CutMend {
        vertex,
        braces: braces.to_vec(),
        places: found.places.iter().copied().map(crate::place).collect(),
        turn_deg: found.turn_rad.to_degrees(),
        shorter_m: found.shorter_m,
        along_m: found.along_m,
        ..CutMend::default()
    };
    cut_over_ground(run, &cut, &heights)
}

/// The run with its corner cut: what is stated along its line is carried over, the corner's brace goes.
pub fn cut_run(plan: &Plan, run: &Run, cut: &CutMend) -> Option<Run> {
    cut_over_ground(run, cut, &Heights::of(plan, &mut Vec::new()))
}

fn cut_over_ground(run: &Run, cut: &CutMend, heights: &Heights) -> Option<Run> {
    let corner = *run.outline.get(cut.vertex)?;
    let level = line(run);
    let vertex = level.vertices().iter().position(|vertex| vertex.stated == cut.vertex)?;
    let mut cut_run = run.clone();
    cut_run.outline.splice(cut.vertex..=cut.vertex, cut.places.iter().copied());
    // What a side is stated to rise it rises over its whole length: what is left of it rises less.
    for slope in &mut cut_run.side_slopes {
        let shorter = |side: usize, at: plan::Point| {
            let (from, to) = level.side(side);
            let taken_m = point(at).distance_m(point(corner));
            slope::is_side_of(slope, &level, side).then(|| 1.0 - taken_m / from.distance_m(to))
        };
        let before = (vertex + level.vertices().len() - 1) % level.vertices().len();
        let share = shorter(before, *cut.places.first()?).or(shorter(vertex, *cut.places.last()?));
        if let (Some(share), Some(rises_m)) = (share, &mut slope.rises_m) {
            *rises_m *= share;
        }
    }
    let (was, is) = (Measure::of(run, heights), Measure::of(&cut_run, heights));
    let on_ground = was.or(is).map(|_| {
        let laid = |run: &Run| {
            let level = line(run);
            Measure::of(run, heights).and_then(|measure| measure.laid(&level)).unwrap_or(level)
        };
        [laid(run), laid(&cut_run)]
    });
    let carried = |along_m: f64| match &on_ground {
        None => carried_m(&level, vertex, cut, along_m),
        Some([old, new]) => carried_on_ground_m([old, new], vertex, cut, along_m),
    };
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

/// A run's line on the map.
fn line(run: &Run) -> Outline {
    let points: Vec<Point> = run.outline.iter().copied().map(point).collect();
    if run.closed() { Outline::closed(&points) } else { Outline::open(&points) }
}

/// Where a place of the old line lies on the new one, both on the ground, metres along it; within the cut in proportion.
fn carried_on_ground_m([old, new]: [&Outline; 2], vertex: usize, cut: &CutMend, along_m: f64) -> f64 {
    let before_m = old.vertices()[vertex].along_m - cut.along_m[0];
    let from_cut_m = along_m - before_m;
    let from_cut_m = if old.is_closed() { from_cut_m.rem_euclid(old.length_m()) } else { from_cut_m };
    let wide_m = cut.along_m[0] + cut.along_m[1];
    if !(0.0..wide_m).contains(&from_cut_m) {
        return new.nearest_along(old.at(along_m)).0;
    }
    let end = |place: Option<&plan::Point>| place.map_or(0.0, |&at| new.nearest_along(point(at)).0);
    let (first_m, last_m) = (end(cut.places.first()), end(cut.places.last()));
    first_m + (last_m - first_m) * from_cut_m / wide_m
}

/// Where a place of the old line lies on the new one, metres along it; within the cut in proportion.
fn carried_m(outline: &Outline, vertex: usize, cut: &CutMend, along_m: f64) -> f64 {
    let at_m = outline.vertices()[vertex].along_m;
    let (before_m, wide_m) = (at_m - cut.along_m[0], cut.along_m[0] + cut.along_m[1]);
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
