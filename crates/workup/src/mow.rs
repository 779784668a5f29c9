//! The strip to mow, through `geometry`.

use geometry::{Mower, Outline, PassesRequest, StripRequest};
use plan::{Plan, Run};

use crate::growth;
use crate::model::{Part, RunWorkup, Strip, Trouble};
use crate::outlines::Ground;
use crate::place;
use crate::values::Bad;

pub(crate) fn strip(plan: &Plan, run: &Run, outline: &Outline, ground: &Ground, bad: &Bad, worked: &mut RunWorkup) {
    if bad.any("store.mower.") || Bad::of(&worked.troubles).any("strip_width_m") {
        return;
    }
    worked.strip = mown(plan, run, outline, ground);
    if worked.strip.is_none() {
        worked.troubles.push(Trouble::Beyond { part: Part::Strip });
    }
}

/// The lines to walk and when the grass is back, where the strip could be worked out.
pub(crate) fn walk(plan: &Plan, outline: &Outline, ground: &Ground, worked: &mut RunWorkup) {
    let Some(strip) = &worked.strip else { return };
    let mower = &plan.store.mower;
    worked.mow_walk = geometry::passes(&PassesRequest {
        outline,
        left_m: strip.width_m / 2.0,
        right_m: strip.width_m / 2.0,
        mower_width_m: mower.width_m(),
        overlap: mower.overlap(),
        keep_outs: &ground.keep_outs,
    });
    worked.grass = worked.lay.as_ref().and_then(|lay| growth::days(plan, lay));
}

fn mown(plan: &Plan, run: &Run, outline: &Outline, ground: &Ground) -> Option<Strip> {
    let mower = &plan.store.mower;
    let strip = geometry::strip(&StripRequest {
        outline,
        width_m: run.strip_width_m(),
        keep_outs: &ground.keep_outs,
        mower: Mower { width_m: mower.width_m(), overlap: mower.overlap(), speed_m_per_s: mower.speed_m_per_s() },
    });
    let ring = |points: &Vec<geometry::Point>| points.iter().copied().map(place).collect();
    Some(Strip {
        width_m: run.strip_width_m(),
        area_m2: strip.area_m2,
        passes: strip.passes?,
        walk_m: strip.walk_m?,
        minutes: strip.minutes?,
        polygons: strip
            .polygons
            .iter()
            .map(|polygon| std::iter::once(ring(&polygon.outer)).chain(polygon.holes.iter().map(ring)).collect())
            .collect(),
    })
}
