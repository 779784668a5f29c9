//! The ground that a gate keeps off: feet and wheels soon make mud of it.

use geometry::{Outline, Point, region};
use plan::Plan;

use super::OffKind;
use crate::model::RunWorkup;
use crate::point;
use crate::slope::Slope;

/// The ground about water is wet this far, metres (common practice, no source).
pub(super) const WET_M: f64 = 3.0;

/// An area that a gate keeps off, and how far.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Off {
    pub(super) kind: OffKind,
    area: Outline,
    apart_m: f64,
}

/// The ground about a dip's lowest place is wet this far, metres (common practice, no source).
const DIP_M: f64 = 1.5;

/// Dips under a run's own net, where heights are known.
pub(super) fn dips(worked: &RunWorkup) -> Vec<Off> {
    let slope = worked.slope.iter();
    let lowest = slope.flat_map(Slope::dips).map(|(_, dip)| point(dip.at));
    lowest
        .map(|at| {
            // As small a ring as an outline may be: what counts is how far a gate is from it.
            let corner = |east_m: f64, north_m: f64| Point::new(at.east_m + east_m, at.north_m + north_m);
            let ring = [corner(-0.05, -0.05), corner(0.05, -0.05), corner(0.0, 0.05)];
            Off { kind: OffKind::Dip, area: Outline::closed(&ring), apart_m: DIP_M }
        })
        .collect()
}

/// The water that a gate keeps off.
pub(super) fn places(plan: &Plan) -> Vec<Off> {
    let water = plan.ground.keep_outs.iter().enumerate().filter(|(_, keep_out)| keep_out.water);
    let water = water.filter_map(|(index, keep_out)| {
        let points: Vec<Point> = keep_out.outline.iter().copied().map(point).collect();
        let sound = !geometry::check_outline(&points, true).iter().any(geometry::OutlineFault::is_fatal);
        let apart_m = WET_M.max(keep_out.clearance_m());
        sound.then(|| Off { kind: OffKind::Water(index), area: Outline::closed(&points), apart_m })
    });
    water.collect()
}

impl Off {
    /// How far a line is from it, metres, where that is nearer than it should be.
    pub(super) fn too_near_m(&self, line: &Outline) -> Option<f64> {
        let within = line.points().any(|at| region::contains(&self.area, at));
        let apart_m = if within { 0.0 } else { region::distance_within_m(line, &self.area, self.apart_m) };
        (apart_m < self.apart_m).then_some(apart_m)
    }
}
