//! What a corner in hand lines up with: places, sides, the square to a side, its parallel, its line beyond its end, its
//! length, whole panels, a grid.
//!
//! One answer at a time. Of everything within reach the first in this order is taken, the nearer of equals, then the one
//! stated first: a place; where two guides cross; a side itself; square to a side, or a square corner; whole panels;
//! parallel to a side; in line with a side; as long as a side; the grid. What holds the corner already counts as nearer
//! than it is, so that a trembling hand changes nothing. Metres; every answer lies on its guide to rounding.
//!
//! - [`Guides::best`] answers for one corner;
//! - [`Guides::best_of`] for many places that move together;
//! - [`Guides::best_slide`] for a side that slides parallel to itself.

mod corner;
mod form;
mod many;
mod model;
mod side;
#[cfg(test)]
mod side_tests;
#[cfg(test)]
mod tests;

pub use model::{Asked, Beside, Edge, Guide, Guided, LevelPanels, Line, Netting, Why};
pub use side::{Moving, SideAsked, SideWhy, Slid};

use crate::point::Point;

/// What holds already counts as at this share of its distance.
const HELD_SHARE: f64 = 0.65;
/// A guide catches from this share of the reach: lines lie closer than places.
const GUIDE_SHARE: f64 = 0.67;
/// Sides shorter than so many reaches have no way that a hand could mean.
const LEAST_REACHES: f64 = 2.0;

/// Places and sides that stand.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Guides {
    places: Vec<Point>,
    edges: Vec<Edge>,
}

impl Guides {
    /// The places and sides that stand; of places at one spot the first is taken.
    pub fn new(places: Vec<Point>, edges: Vec<Edge>) -> Self {
        Self { places, edges }
    }

    /// The places.
    pub fn places(&self) -> &[Point] {
        &self.places
    }

    /// The sides.
    pub fn edges(&self) -> &[Edge] {
        &self.edges
    }

    /// A side by its name; `own` are those that were asked about.
    pub fn edge(&self, own: &[Edge], line: Line) -> Option<Edge> {
        match line {
            Line::Own(index) => own.get(index),
            Line::Other(index) => self.edges.get(index),
        }
        .copied()
    }
}
