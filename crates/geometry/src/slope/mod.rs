//! The ground's shape under a line: how much net it eats, where the bottom line leaves a gap and where it drags.
//!
//! - [`Spots`] and [`Grid`] are two ways of knowing heights, both continuous and made of flat triangles;
//! - [`Profile`] is the ground along an outline, from heights or from what each side rises;
//! - [`crate::Outline::over`] lays an outline on its profile, so that places along it are metres of net;
//! - [`uneven`] finds the panels under which the ground dips or rises too far, and where a post mends it.
//!
//! Heights are metres above any level; only their differences count. Everything is piecewise flat, so that lengths are
//! sums of straight lines and exact to rounding. The line is the net's foot: posts are plumb, and a net's length is taken
//! along the ground. Source: docs/sources.md, husbandry 7.

mod buckets;
mod grid;
mod profile;
mod spots;
mod uneven;

pub use grid::Grid;
pub use profile::{Knot, Profile, SideHeights, Steep};
pub use spots::Spots;
pub use uneven::{Across, PanelGround, Uneven, UnevenRequest, Worst, uneven};

use crate::Point;

/// Ground of which heights are known somewhere.
///
/// Along a straight line the height is straight between cuts.
pub trait Surface {
    /// Shares of the way from one place to another, between 0 and 1, at which the slope may change.
    fn cuts(&self, from: Point, to: Point) -> Vec<f64>;

    /// Heights at two places of one flat piece that holds the place `within`; `None` where no height is known there.
    fn piece(&self, within: Point, from: Point, to: Point) -> Option<Piece>;

    /// Height at a place; `None` where none is known.
    fn up_m(&self, at: Point) -> Option<f64> {
        self.piece(at, at, at).map(|piece| piece.from_up_m)
    }
}

/// Two heights on one flat piece of ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece {
    /// At the first place, metres.
    pub from_up_m: f64,
    /// At the second, metres.
    pub to_up_m: f64,
    /// Whether the piece lies beyond what was measured, and its heights are those of the nearest edge.
    pub beyond: bool,
}

/// Shares strictly between 0 and 1, in order and apart.
fn ordered(mut shares: Vec<f64>) -> Vec<f64> {
    shares.retain(|share| *share > GRAIN && *share < 1.0 - GRAIN);
    shares.sort_by(f64::total_cmp);
    shares.dedup_by(|next, kept| *next - *kept < GRAIN);
    shares
}

/// Shares of a side nearer than this are one.
const GRAIN: f64 = 1e-12;
