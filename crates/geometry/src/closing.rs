//! Where the next corner of a run in hand may stand: the curve on which so much net closes it exactly, and the arc on
//! which a corner keeps its angle.
//!
//! A corner *P* between two others, *A* before it and *B* after it, uses |*AP*| + |*PB*| of net. All places that use the
//! same lie on an ellipse with *A* and *B* as its foci (the gardener's construction); all that see *A* and *B* under the
//! same angle lie on a circle through both (Euclid, Elements III.21). Metres; sums are kept to 1e-9 m.

use crate::point::{Point, Vector};

/// All places from which the ways to two others are together so long: an ellipse about those two.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClosingCurve {
    from: Point,
    to: Point,
    sum_m: f64,
}

/// Steps of the search for the nearest place: halving from the width of the curve, this ends below a double's grain.
const HALVINGS: usize = 100;

impl ClosingCurve {
    /// The curve about the corner before and the one after; `None` where the net does not even reach from one to the other.
    pub fn new(from: Point, to: Point, sum_m: f64) -> Option<Self> {
        let reaches = from.is_finite() && to.is_finite() && sum_m.is_finite() && sum_m > from.distance_m(to);
        reaches.then_some(Self { from, to, sum_m })
    }

    /// The net that the corner uses on both its sides, metres.
    pub fn sum_m(&self) -> f64 {
        self.sum_m
    }

    /// The net that a corner there would use, metres.
    pub fn needs_m(&self, at: Point) -> f64 {
        self.from.distance_m(at) + at.distance_m(self.to)
    }

    /// The place of the curve that lies that way from the corner before; a way is a direction of any length but zero.
    pub fn on_way(&self, way: Vector) -> Option<Point> {
        let length = way.length();
        if !length.is_finite() || length == 0.0 {
            return None;
        }
        // r + |r u − d| = S gives r = (S² − d²) / (2 (S − u·d)), the ellipse about its focus.
        let (unit, between) = (way * (1.0 / length), self.to - self.from);
        let apart_m = between.length();
        let (sum_m, along_m) = (self.sum_m, unit.dot(between));
        let reach_m = 0.5 * (sum_m - apart_m) * ((sum_m + apart_m) / (sum_m - along_m));
        Some(self.from + unit * reach_m)
    }

    /// The place of the curve nearest to another.
    pub fn nearest(&self, at: Point) -> Point {
        let middle = self.from.towards(self.to, 0.5);
        let half = 0.5 * self.from.distance_m(self.to);
        let along = if half > 0.0 { (self.to - self.from) * (0.5 / half) } else { Vector::new(1.0, 0.0) };
        let across = Vector::new(-along.north, along.east);
        let (long, short) = (0.5 * self.sum_m, (0.25 * self.sum_m * self.sum_m - half * half).max(0.0).sqrt());
        let away = at - middle;
        let (u, v) = nearest_of_ellipse(long, short, away.dot(along).abs(), away.dot(across).abs());
        let signed = |size: f64, like: f64| if like < 0.0 { -size } else { size };
        let found = middle + along * signed(u, away.dot(along)) + across * signed(v, away.dot(across));
        // What the search lost is made up for along the way from the corner before.
        self.on_way(found - self.from).unwrap_or(found)
    }

    /// The one or two places of the curve that lie so far from the corner before.
    pub fn at_side(&self, side_m: f64) -> Vec<Point> {
        let rest_m = self.sum_m - side_m;
        let between = self.to - self.from;
        let apart_m = between.length();
        if !(side_m > 0.0 && rest_m >= 0.0 && apart_m > 0.0) {
            return Vec::new();
        }
        // Two circles meet on the chord that stands on the line of their middles.
        let along_m = 0.5 * (apart_m + (side_m - rest_m) * ((side_m + rest_m) / apart_m));
        let square = side_m * side_m - along_m * along_m;
        if square < 0.0 {
            return Vec::new();
        }
        let unit = between * (1.0 / apart_m);
        let (foot, off) = (self.from + unit * along_m, Vector::new(-unit.north, unit.east) * square.sqrt());
        if square == 0.0 { vec![foot] } else { vec![foot + off, foot - off] }
    }

    /// The curve as so many places round it, counter-clockwise.
    pub fn ring(&self, count: usize) -> Vec<Point> {
        let middle = self.from.towards(self.to, 0.5);
        let half = 0.5 * self.from.distance_m(self.to);
        let along = if half > 0.0 { (self.to - self.from) * (0.5 / half) } else { Vector::new(1.0, 0.0) };
        let across = Vector::new(-along.north, along.east);
        let (long, short) = (0.5 * self.sum_m, (0.25 * self.sum_m * self.sum_m - half * half).max(0.0).sqrt());
        (0..count)
            .map(|step| {
                let (sine, cosine) = (std::f64::consts::TAU * step as f64 / count as f64).sin_cos();
                middle + along * (long * cosine) + across * (short * sine)
            })
            .collect()
    }
}

/// The place of an ellipse about the origin, half axes `long >= short`, nearest to one in its first quarter.
///
/// The foot of the normal, found by halving (D. Eberly, Distance from a Point to an Ellipse, 2013, section 2.9).
fn nearest_of_ellipse(long: f64, short: f64, u: f64, v: f64) -> (f64, f64) {
    if short == 0.0 {
        return (u.min(long), 0.0);
    }
    if v == 0.0 {
        // From the long axis, near the middle, the foot is not at its end.
        let bend = (long - short) * (long + short);
        if long * u < bend {
            let share = long * u / bend;
            return (long * share, short * (1.0 - share * share).max(0.0).sqrt());
        }
        return (long, 0.0);
    }
    let (p, q) = (u / long, v / short);
    let ratio = (long / short) * (long / short);
    // In units of the short half axis squared, the foot's parameter lies between these.
    let excess = |t: f64| {
        let (a, b) = (ratio * p / (t + ratio), q / (t + 1.0));
        a * a + b * b - 1.0
    };
    let (mut low, mut high) = (q - 1.0, (ratio * p).hypot(q) - 1.0);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if excess(middle) > 0.0 { low = middle } else { high = middle }
    }
    let t = f64::midpoint(low, high);
    (ratio * u / (t + ratio), v / (t + 1.0))
}

/// All places from which two others are seen under one angle, on one side of the line through both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AngleArc {
    from: Point,
    to: Point,
    middle: Point,
    radius_m: f64,
    left: bool,
}

impl AngleArc {
    /// The arc on which that corner stands; `None` where it lies in line with the two.
    pub fn through(from: Point, at: Point, to: Point) -> Option<Self> {
        let (before, after) = (from - at, to - at);
        let (cross, dot) = (before.cross(after), before.dot(after));
        let between = to - from;
        let apart_m = between.length();
        if apart_m == 0.0 || cross.abs() <= 1e-9 * (cross.abs() + dot.abs()) || !cross.is_finite() {
            return None;
        }
        // The middle of the circle is off the chord's middle by half the chord over the angle's tangent.
        let left = between.cross(at - from) > 0.0;
        let off_m = 0.5 * apart_m * (dot / cross.abs());
        let normal = Vector::new(-between.north, between.east) * (if left { 1.0 } else { -1.0 } / apart_m);
        let middle = from.towards(to, 0.5) + normal * off_m;
        Some(Self { from, to, middle, radius_m: middle.distance_m(from), left })
    }

    /// The arc on which a corner between two others turns the line so far, radians between 0 and π, to the left of the way
    /// from one to the other or to the right; `None` for any other turn.
    pub fn of_turn(from: Point, to: Point, turn_rad: f64, left: bool) -> Option<Self> {
        let between = to - from;
        let apart_m = between.length();
        let (sine, cosine) = turn_rad.sin_cos();
        if !(apart_m > 0.0 && turn_rad > 0.0 && turn_rad < std::f64::consts::PI && sine > 1e-9) {
            return None;
        }
        // The angle seen from there is what the turn leaves of half a circle.
        let normal = between.left() * (if left { 1.0 } else { -1.0 } / apart_m);
        let middle = from.towards(to, 0.5) - normal * (0.5 * apart_m * (cosine / sine));
        Some(Self { from, to, middle, radius_m: middle.distance_m(from), left })
    }

    /// The arc as so many places from one end to the other.
    pub fn line(&self, count: usize) -> Vec<Point> {
        let (one, other) = (self.from - self.middle, self.to - self.middle);
        let start = one.north.atan2(one.east);
        let round = (other.north.atan2(other.east) - start).rem_euclid(std::f64::consts::TAU);
        // To the left of the way the arc is walked clockwise, to the right counter-clockwise.
        let round = if self.left { round - std::f64::consts::TAU } else { round };
        (0..count)
            .map(|step| {
                let (sine, cosine) = (start + round * step as f64 / (count.max(2) - 1) as f64).sin_cos();
                self.middle + Vector::new(cosine, sine) * self.radius_m
            })
            .collect()
    }

    /// The place of the arc nearest to another; `None` where that lies behind the line of the two.
    pub fn nearest(&self, at: Point) -> Option<Point> {
        let way = at - self.middle;
        let length = way.length();
        if length == 0.0 || !length.is_finite() {
            return None;
        }
        let place = self.middle + way * (self.radius_m / length);
        let side = (self.to - self.from).cross(place - self.from);
        ((side > 0.0) == self.left && side != 0.0).then_some(place)
    }
}
