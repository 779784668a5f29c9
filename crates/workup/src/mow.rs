//! The strip to mow, through `geometry`.

use geometry::{Mower, Outline, Passes, PassesRequest, StripPolygon, StripRequest, StripWidth};
use plan::{Plan, Point, Run, RunStatus};

use crate::growth;
use crate::model::{Part, RunWorkup, StillToMow, Strip, Trouble};
use crate::outlines::{self, Ground};
use crate::values::Bad;
use crate::{place, point};

pub(crate) fn strip(plan: &Plan, run: &Run, outline: &Outline, ground: &Ground, bad: &Bad, worked: &mut RunWorkup) {
    if bad.any("store.mower.") || Bad::of(&worked.troubles).any("strip_") {
        return;
    }
    worked.strip = mown(plan, run, outline, ground);
    if worked.strip.is_none() {
        worked.troubles.push(Trouble::Beyond { part: Part::Strip });
    }
}

/// The lines to walk and when the grass is back, where the strip could be worked out.
pub(crate) fn walk(plan: &Plan, run: &Run, outline: &Outline, ground: &Ground, worked: &mut RunWorkup) {
    if worked.strip.is_none() {
        return;
    }
    worked.mow_walk = passes(plan, run, outline, ground, &[]);
    worked.grass = worked.lay.as_ref().and_then(|lay| growth::days(plan, lay));
}

/// What is still to mow of runs that are thought of, where nets that stand have been mown for already: of those at the
/// places that are wanted.
pub(crate) fn after_standing(plan: &Plan, ground: &Ground, wanted: &dyn Fn(usize) -> bool, runs: &mut [RunWorkup]) {
    if !plan.runs.iter().enumerate().any(|(place, run)| run.status == RunStatus::Option && wanted(place)) {
        return;
    }
    let stand = |run: &Run| run.status == RunStatus::Standing;
    let strips: Vec<Strip> = plan
        .runs
        .iter()
        .zip(runs.iter())
        .filter_map(|(run, worked)| worked.strip.clone().filter(|_| stand(run)))
        .collect();
    let strips: Vec<&Strip> = strips.iter().collect();
    let thought_of = |place: usize| wanted(place) && plan.runs[place].status == RunStatus::Option;
    for (place, worked) in runs.iter_mut().enumerate().filter(|(place, _)| thought_of(*place)) {
        let run = &plan.runs[place];
        worked.still_to_mow = worked.strip.as_ref().and_then(|strip| left(plan, run, ground, strip, &strips));
    }
}

/// What is still to mow of a run's strip once others are mown; `None` where they share no ground or where it cannot be
/// worked out. `worked` is what follows for the run.
///
/// The flock moves on and takes its nets along: under a side that stays, and where both strips cross, the grass is
/// short already.
pub fn still_to_mow(plan: &Plan, run: &Run, worked: &RunWorkup, mown: &[&Strip]) -> Option<StillToMow> {
    let ground = Ground::of(plan, &mut Vec::new());
    left(plan, run, &ground, worked.strip.as_ref()?, mown)
}

fn left(plan: &Plan, run: &Run, ground: &Ground, strip: &Strip, mown: &[&Strip]) -> Option<StillToMow> {
    let reach = bounds(strip);
    let meets = |other: &&&Strip| {
        let other = bounds(other);
        (0..2).all(|axis| reach[axis].0 <= other[axis].1 && other[axis].0 <= reach[axis].1)
    };
    let mown: Vec<StripPolygon> = mown.iter().filter(meets).flat_map(|strip| pieces(strip)).collect();
    if mown.is_empty() {
        return None;
    }
    let outline = outlines::of_run(run)?;
    let area_m2 = geometry::still_to_mow_m2(&pieces(strip).collect::<Vec<_>>(), &mown);
    let grain_m2 = strip.area_m2 * 1e-6;
    if area_m2 >= strip.area_m2 - grain_m2 {
        return None;
    }
    let walk_m = passes(plan, run, &outline, ground, &mown)?.length_m;
    Some(StillToMow { area_m2, walk_m, minutes: walk_m / plan.store.mower.speed_m_per_s() / 60.0 })
}

/// From where to where a strip reaches, east and north.
fn bounds(strip: &Strip) -> [(f64, f64); 2] {
    let places = || strip.polygons.iter().filter_map(|rings| rings.first()).flatten();
    [geometry::span_m(places().map(|at| at.east_m)), geometry::span_m(places().map(|at| at.north_m))]
}

fn pieces(strip: &Strip) -> impl Iterator<Item = StripPolygon> {
    let ring = |ring: &Vec<Point>| ring.iter().copied().map(point).collect();
    let piece = move |rings: &Vec<Vec<Point>>| {
        let (outer, holes) = rings.split_first()?;
        Some(StripPolygon { outer: ring(outer), holes: holes.iter().map(ring).collect() })
    };
    strip.polygons.iter().filter_map(piece)
}

fn width(run: &Run) -> StripWidth {
    let [left_m, right_m] = run.strip_sides_m();
    StripWidth { left_m, right_m }
}

fn passes(plan: &Plan, run: &Run, outline: &Outline, ground: &Ground, mown: &[StripPolygon]) -> Option<Passes> {
    let mower = &plan.store.mower;
    geometry::passes(&PassesRequest {
        outline,
        width: width(run),
        mower_width_m: mower.width_m(),
        overlap: mower.overlap(),
        keep_outs: &ground.keep_outs,
        mown,
    })
}

fn mown(plan: &Plan, run: &Run, outline: &Outline, ground: &Ground) -> Option<Strip> {
    let mower = &plan.store.mower;
    let strip = geometry::strip(&StripRequest {
        outline,
        width: width(run),
        keep_outs: &ground.keep_outs,
        mower: Mower { width_m: mower.width_m(), overlap: mower.overlap(), speed_m_per_s: mower.speed_m_per_s() },
    });
    let capacity_m2_per_s =
        geometry::mowing::field_capacity_m2_per_s(mower.speed_m_per_s(), mower.width_m(), mower.efficiency());
    let ring = |points: &Vec<geometry::Point>| points.iter().copied().map(place).collect();
    Some(Strip {
        width_m: width(run).whole_m(),
        area_m2: strip.area_m2,
        passes: strip.passes?,
        walk_m: strip.walk_m?,
        minutes: strip.minutes?,
        minutes_by_area: strip.area_m2 / capacity_m2_per_s / 60.0,
        polygons: strip
            .polygons
            .iter()
            .map(|polygon| std::iter::once(ring(&polygon.outer)).chain(polygon.holes.iter().map(ring)).collect())
            .collect(),
    })
}
