//! The frame that the search works in: the paddock's middle at (0, 0), its longest side due east, its area 1.
//!
//! A paddock that is moved, turned or scaled gives the same figures here, and so the same answer: all lie on a fine
//! grid, so that rounding on the way in all but never leads a climb elsewhere.

use crate::{Outline, Point, Vector};

/// Steps of the grid to one unit: well below a micrometre on any paddock, far above rounding.
const GRID: f64 = (1_u64 << 34) as f64;

/// The nearest number on the grid.
pub(super) fn on_grid(value: f64) -> f64 {
    (value * GRID).round() / GRID
}

/// From the caller's plane to the frame and back.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame {
    middle: Point,
    east: Vector,
    /// The caller's metres to one unit here.
    pub(super) unit_m: f64,
}

impl Frame {
    pub(super) fn of(boundary: &Outline) -> Self {
        let count = boundary.vertices().len().max(1) as f64;
        let first = boundary.at(0.0);
        let sum = boundary.points().fold(Vector::default(), |sum, at| sum + (at - first));
        let mut longest = (0.0, Vector::new(1.0, 0.0));
        for (from, to) in boundary.sides() {
            // Of sides alike but for rounding, the first.
            let length_m = from.distance_m(to);
            if length_m > longest.0 * (1.0 + 1e-9) {
                longest = (length_m, (to - from).unit());
            }
        }
        Self { middle: first + sum * (1.0 / count), east: longest.1, unit_m: boundary.area_m2().sqrt() }
    }

    pub(super) fn enter(&self, at: Point) -> Point {
        let way = (at - self.middle) * (1.0 / self.unit_m);
        Point::new(on_grid(self.east.dot(way)), on_grid(self.east.cross(way)))
    }

    pub(super) fn leave(&self, at: Point) -> Point {
        let way = self.east * at.east_m + self.east.left() * at.north_m;
        self.middle + way * self.unit_m
    }
}
