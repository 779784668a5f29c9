//! The shapes with a middle that are searched by place and angle: regular polygons, rectangles of any proportion.
//!
//! Each is of area 1 at scale 1, so that a shape's area is its scale squared.

use std::f64::consts::{FRAC_PI_2, PI};

use super::convex::Convex;
use crate::Vector;

/// A shape by its place, angle and proportion.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// A regular polygon of so many sides.
    Regular(u32),
    /// A rectangle; its proportion is searched too.
    Rectangle,
}

/// Rectangles longer than this many times their width are bounded, not searched.
pub(super) const LONGEST_PROPORTION: f64 = 40.0;

impl Kind {
    /// The shape of area 1 at an angle; `stretch` is the logarithm of a rectangle's length over its width.
    pub(super) fn shape(self, angle: f64, stretch: f64) -> Convex {
        let (sin, cos) = angle.sin_cos();
        let turned = |east: f64, north: f64| Vector::new(east * cos - north * sin, east * sin + north * cos);
        match self {
            Kind::Regular(sides) => {
                let n = f64::from(sides);
                // Area of the n-gon of circumradius R: n/2 R^2 sin(2 pi / n).
                let radius = (2.0 / (n * (2.0 * PI / n).sin())).sqrt();
                let corner = |index: u32| {
                    // The first side lies due south, as the frame's longest boundary side does.
                    let way = -FRAC_PI_2 + PI / n * (2.0 * f64::from(index) - 1.0);
                    turned(radius * way.cos(), radius * way.sin())
                };
                Convex::new((0..sides).map(corner).collect())
            }
            Kind::Rectangle => {
                let (a, b) = ((stretch / 2.0).exp() / 2.0, (-stretch / 2.0).exp() / 2.0);
                Convex::new(vec![turned(-a, -b), turned(a, -b), turned(a, b), turned(-a, b)])
            }
        }
    }

    /// Line round the shape of area 1.
    pub(super) fn round(self, stretch: f64) -> f64 {
        match self {
            Kind::Regular(sides) => {
                let n = f64::from(sides);
                (4.0 * n * (PI / n).tan()).sqrt()
            }
            Kind::Rectangle => 2.0 * ((stretch / 2.0).exp() + (-stretch / 2.0).exp()),
        }
    }

    /// Half of the angles after which the shape is itself again.
    pub(super) fn half_turn(self) -> f64 {
        match self {
            Kind::Regular(sides) => PI / f64::from(sides),
            Kind::Rectangle => FRAC_PI_2,
        }
    }

    /// Half of the range of `stretch`, and its middle.
    pub(super) fn stretches(self) -> (f64, f64) {
        match self {
            Kind::Regular(_) => (0.0, 0.0),
            Kind::Rectangle => (LONGEST_PROPORTION.ln() / 2.0, LONGEST_PROPORTION.ln() / 2.0),
        }
    }

    /// The scale to which the shape shrinks so that it lies in itself turned by up to `turn` and stretched by up to
    /// `by`; grown by as much it holds them all.
    ///
    /// Regular: a corner at R, turned, lies deepest against the side at R cos(pi/n), at cos(pi/n - turn). Rectangle of
    /// half sides p >= q: the long side's corner meets the short side at (p cos + q sin) / q, greatest at tan = p / q
    /// over the narrower side. Stretching by `by` changes each half side by exp(by / 2).
    pub(super) fn shrink(self, turn: f64, stretch: f64, by: f64) -> f64 {
        match self {
            Kind::Regular(sides) => {
                let part = PI / f64::from(sides);
                part.cos() / (part - turn.min(part)).cos()
            }
            Kind::Rectangle => {
                let ratio = stretch.exp();
                let turn = turn.min(ratio.atan());
                (-by / 2.0).exp() / (turn.cos() + ratio * turn.sin())
            }
        }
    }
}
