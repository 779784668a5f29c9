//! Where the nets of each run stand, made once for a round: distances between many runs are measured from it.

use geometry::{Outline, span_m};
use plan::Point;
use workup::RunWorkup;

/// The lines of one run, and the upright box round them.
#[derive(Clone, Debug)]
pub(crate) struct Stand {
    /// The line as it was worked out.
    pub(crate) line: Option<Outline>,
    /// The netting as it stands.
    pub(crate) netting: Option<Outline>,
    low: Point,
    high: Point,
}

impl Stand {
    pub(crate) fn of(worked: &RunWorkup) -> Self {
        let (line, netting) = (crate::line(worked), crate::netting(worked));
        let span = |of: fn(geometry::Point) -> f64| span_m(line.iter().flat_map(Outline::points).map(of));
        let ((west_m, east_m), (south_m, north_m)) = (span(|at| at.east_m), span(|at| at.north_m));
        let (low, high) = (Point::new(west_m, south_m), Point::new(east_m, north_m));
        Self { line, netting, low, high }
    }

    /// Whether the boxes of two runs are so near: where not, no net of the one is to one of the other.
    pub(crate) fn may_near(&self, other: &Self, reach_m: f64) -> bool {
        self.within(other.low, other.high, reach_m)
    }

    /// Whether a place is so near to the box.
    pub(crate) fn may_near_place(&self, at: Point, reach_m: f64) -> bool {
        self.within(at, at, reach_m)
    }

    fn within(&self, low: Point, high: Point, reach_m: f64) -> bool {
        low.east_m - self.high.east_m <= reach_m
            && self.low.east_m - high.east_m <= reach_m
            && low.north_m - self.high.north_m <= reach_m
            && self.low.north_m - high.north_m <= reach_m
    }
}
