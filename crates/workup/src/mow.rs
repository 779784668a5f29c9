//! The strip to mow, through `geometry`.

use geometry::{Mower, Outline, StripRequest};
use plan::{Plan, Run};

use crate::model::{Strip, Trouble};
use crate::outlines::Ground;
use crate::place;
use crate::values::Bad;

pub(crate) fn strip(
    plan: &Plan,
    run: &Run,
    outline: &Outline,
    ground: &Ground,
    bad: &Bad,
    troubles: &[Trouble],
) -> Option<Strip> {
    if bad.any("store.mower.") || Bad::of(troubles).any("strip_width_m") {
        return None;
    }
    let mower = &plan.store.mower;
    let worked = geometry::strip(&StripRequest {
        outline,
        width_m: run.strip_width_m(),
        keep_outs: &ground.keep_outs,
        mower: Mower { width_m: mower.width_m(), overlap: mower.overlap(), speed_m_per_s: mower.speed_m_per_s() },
    });
    let ring = |points: &Vec<geometry::Point>| points.iter().copied().map(place).collect();
    Some(Strip {
        width_m: run.strip_width_m(),
        area_m2: worked.area_m2,
        passes: worked.passes?,
        walk_m: worked.walk_m?,
        minutes: worked.minutes?,
        polygons: worked
            .polygons
            .iter()
            .map(|polygon| std::iter::once(ring(&polygon.outer)).chain(polygon.holes.iter().map(ring)).collect())
            .collect(),
    })
}
