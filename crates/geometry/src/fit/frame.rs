//! One frame for plans that differ by moving, turning or mirroring.
//!
//! The sketch's first corner is the origin, its first side runs east, and it runs counter-clockwise. Places are taken to a
//! grid of 2^-32 m (a quarter of a nanometre), so that the rounding of a turned plan is gone before the search starts:
//! on ground with keep-outs it chooses between ways round, and a last digit must not decide. Metres.

use super::ground::{FreeGround, KeepOff};
use crate::{Outline, Point, Vector};

/// Steps of the grid in a metre.
const GRID_PER_M: f64 = 4_294_967_296.0;

/// Where the frame lies in the plan.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame {
    origin: Point,
    east: Vector,
    north: Vector,
}

impl Frame {
    /// The frame of a closed sketch of at least three corners.
    pub(super) fn of(sketch: &Outline) -> Frame {
        let (from, to) = sketch.side(0);
        let east = (to - from).unit();
        let north = if sketch.is_counter_clockwise() { east.left() } else { -east.left() };
        Frame { origin: from, east, north }
    }

    /// A place of the plan in the frame, on the grid.
    pub(super) fn inward(&self, at: Point) -> Vector {
        let way = at - self.origin;
        let snapped = |value: f64| (value * GRID_PER_M).round() / GRID_PER_M;
        Vector::new(snapped(way.dot(self.east)), snapped(way.dot(self.north)))
    }

    /// A place of the frame in the plan.
    pub(super) fn outward(&self, at: Vector) -> Point {
        self.origin + self.east * at.east + self.north * at.north
    }

    /// Ground of the plan in the frame.
    pub(super) fn ground(&self, ground: &FreeGround) -> FreeGround {
        let inward = |outline: &Outline| {
            let points: Vec<Point> = outline.points().map(|at| Point::default() + self.inward(at)).collect();
            Outline::closed(&points)
        };
        FreeGround {
            boundary: ground.boundary.as_ref().map(inward),
            keep_offs: ground
                .keep_offs
                .iter()
                .map(|keep_off| KeepOff { outline: inward(&keep_off.outline), ..keep_off.clone() })
                .collect(),
        }
    }
}
