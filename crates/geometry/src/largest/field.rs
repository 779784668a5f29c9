//! The free ground, and how far a shape can grow at a place before it leaves it.
//!
//! In the search's frame. Exact but for rounding: clearances are discs about corners and shifted sides, not polygons.

use super::contact::contains;
use super::convex::Convex;
use super::fits::apart;
use crate::{Point, Vector};

/// A closed line, counter-clockwise, with what is asked of it often.
#[derive(Debug, Clone)]
pub(super) struct Ring {
    pub(super) points: Vec<Point>,
    /// Outward across the side that ends at the point of that number, length one.
    pub(super) outward: Vec<Vector>,
    /// A place and how far the line goes from it.
    about: (Point, f64),
    /// A place well within: what encloses the ring or lies in it on its line all the same holds this.
    pub(super) inner: Point,
}

impl Ring {
    pub(super) fn new(points: Vec<Point>) -> Self {
        let count = points.len();
        let outward = (0..count).map(|to| -(points[to] - points[(to + count - 1) % count]).left().unit()).collect();
        let sum = points.iter().fold(Vector::default(), |sum, &at| sum + (at - points[0]));
        let middle = points[0] + sum * (1.0 / count as f64);
        let radius = points.iter().map(|&at| at.distance_m(middle)).fold(0.0, f64::max);
        // Of a simple outline's corners one is an ear, whose triangle lies within.
        let triple = |at: usize| {
            let (one, two, three) = (points[at], points[(at + 1) % count], points[(at + 2) % count]);
            one + ((two - one) + (three - one)) * (1.0 / 3.0)
        };
        let within = std::iter::once(middle).chain((0..count).map(triple)).filter(|&at| contains(&points, at));
        let inner = within.max_by(|&one, &other| apart(&points, one).total_cmp(&apart(&points, other)));
        let inner = inner.unwrap_or(middle);
        Self { points, outward, about: (middle, radius), inner }
    }
}

/// A keep-out in the search's frame.
#[derive(Debug, Clone)]
pub(super) struct Off {
    pub(super) ring: Ring,
    pub(super) clearance: f64,
    pub(super) may_enclose: bool,
}

/// The ground.
#[derive(Debug, Clone)]
pub(super) struct Field {
    /// The paddock's boundary.
    pub(super) boundary: Ring,
    pub(super) offs: Vec<Off>,
    /// Places that the shape has to hold, each with this clearance.
    pub(super) hold: Vec<Point>,
    pub(super) hold_clearance: f64,
}

/// The scales at which a shape is free at a place: at least `least`, at most `upto`, in none of the `gaps`.
#[derive(Debug, Clone)]
pub(super) struct Scales {
    /// Negative where the place itself is not free: then its depth as a scale.
    pub(super) upto: f64,
    pub(super) least: f64,
    /// Between the two the line cuts a keep-out that may be enclosed.
    pub(super) gaps: Vec<(f64, f64)>,
}

/// Shapes smaller than this are none: a hundred-millionth of the paddock.
const SMALLEST: f64 = 1e-4;

impl Scales {
    /// The largest free scale up to `cap`, if there is one.
    pub(super) fn largest(&self, cap: f64) -> Option<f64> {
        self.within(cap, 0.0, 1.0)
    }

    /// The largest scale that may be free at a place whose way from here gauges at most `shift`, for a shape that
    /// holds the shape here shrunk by `shrink` and is held by it grown by as much.
    pub(super) fn within(&self, cap: f64, shift: f64, shrink: f64) -> Option<f64> {
        let mut scale = ((self.upto + shift) / shrink).min(cap);
        for _ in 0..=self.gaps.len() {
            let hit = self.gaps.iter().map(|&(from, to)| ((from + shift) / shrink, (to - shift) * shrink));
            // The least end of all gaps that the scale lies in.
            let down = hit.filter(|&(from, to)| from < scale && scale < to).map(|(from, _)| from).reduce(f64::min);
            match down {
                Some(from) => scale = from,
                None => break,
            }
        }
        (scale > SMALLEST && scale >= (self.least - shift) * shrink).then_some(scale)
    }
}

impl Field {
    /// At which scales the shape is free with its reference at `at`.
    pub(super) fn scales(&self, shape: &Convex, at: Point) -> Scales {
        let (inside, distance, nearest) = lies(&self.boundary, at);
        if !inside {
            return Scales { upto: -distance / shape.reach(), least: 0.0, gaps: Vec::new() };
        }
        let mut upto = first_touch(&self.boundary, 0.0, shape, at, nearest, f64::INFINITY);
        let mut gaps = Vec::new();
        for off in &self.offs {
            let (middle, radius) = off.ring.about;
            let way = middle - at;
            let far = upto * shape.reach() + radius + off.clearance;
            if way.dot(way) > far * far {
                continue;
            }
            let (within, distance, nearest) = lies(&off.ring, at);
            let depth = if within { distance + off.clearance } else { off.clearance - distance };
            let touch = if depth > 0.0 {
                -depth / shape.reach()
            } else {
                first_touch(&off.ring, off.clearance, shape, at, nearest, upto)
            };
            if off.may_enclose {
                if touch < upto {
                    gaps.push((touch, hold(shape, at, &off.ring.points, off.clearance)));
                }
            } else if depth > 0.0 {
                return Scales { upto: touch, least: 0.0, gaps: Vec::new() };
            } else {
                upto = touch;
            }
        }
        Scales { upto, least: hold(shape, at, &self.hold, self.hold_clearance), gaps }
    }
}

/// The least scale at which the shape at `at` holds all places with their clearance.
fn hold(shape: &Convex, at: Point, places: &[Point], clearance: f64) -> f64 {
    places.iter().map(|&place| shape.holds(place - at, clearance)).fold(0.0, f64::max)
}

/// Where a place lies to a ring: inside or not, its distance from the line, the number of the nearest side.
fn lies(ring: &Ring, at: Point) -> (bool, f64, usize) {
    let mut inside = false;
    let mut nearest = (f64::INFINITY, 0);
    let mut from = ring.points[ring.points.len() - 1] - at;
    for (side, &corner) in ring.points.iter().enumerate() {
        let to = corner - at;
        if (from.north > 0.0) != (to.north > 0.0) {
            inside ^= from.east + (to.east - from.east) * (from.north / (from.north - to.north)) > 0.0;
        }
        let square = square_distance(from, to);
        if square < nearest.0 {
            nearest = (square, side);
        }
        from = to;
    }
    (inside, nearest.0.sqrt(), nearest.1)
}

/// The scale, up to `touch`, at which the shape first comes within `clearance` of a ring's line, from its side
/// `nearest` on: what that one leaves, few others can.
fn first_touch(ring: &Ring, clearance: f64, shape: &Convex, at: Point, nearest: usize, mut touch: f64) -> f64 {
    let count = ring.points.len();
    let before = |side: usize| ring.points[(side + count - 1) % count] - at;
    for side in std::iter::once(nearest).chain((0..count).filter(|&side| side != nearest)) {
        let (from, to) = (before(side), ring.points[side] - at);
        // The shape's gauge of a way is at least its length over the reach.
        let near = touch * shape.reach() + clearance;
        if square_distance(from, to) >= near * near {
            continue;
        }
        if clearance > 0.0 {
            let aside = ring.outward[side] * clearance;
            touch = touch.min(shape.touch_segment(from + aside, to + aside)).min(shape.touch_disc(to, clearance));
        } else {
            touch = touch.min(shape.touch_segment(from, to));
        }
    }
    touch
}

fn square_distance(from: Vector, to: Vector) -> f64 {
    let way = to - from;
    let square = way.dot(way);
    let share = if square > 0.0 { (-from.dot(way) / square).clamp(0.0, 1.0) } else { 0.0 };
    let near = from + way * share;
    near.dot(near)
}

/// Distance from the reference to the segment between two ways.
pub(super) fn distance(from: Vector, to: Vector) -> f64 {
    square_distance(from, to).sqrt()
}
