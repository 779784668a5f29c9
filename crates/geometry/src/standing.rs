//! The nearest place where something may stand: inside an outline, off what it has to keep off, within reach.
//!
//! Exact, not sampled: the nearest place is where one stands already, or it lies on the rim of what is allowed: on a line
//! so far from a side, or on a circle so far round a corner or an end; there it is the foot of the way to it, or a place
//! where two rims meet. All of these are tried, the nearest first. Metres on flat ground; the same question has the same
//! answer every time.

use crate::{Outline, Point, Vector, region};

/// Places this near beyond a limit still keep it, metres: room for the rounding of computed places.
const ROUNDING_M: f64 = 1e-6;

/// Something that is kept off.
#[derive(Clone, Copy, Debug)]
pub struct KeepOff<'a> {
    /// Its line; of a single place, one vertex.
    pub line: &'a Outline,
    /// How far, metres.
    pub metres: f64,
    /// Whether the ground that it encloses is kept off too.
    pub filled: bool,
}

/// Where something may stand.
#[derive(Clone, Copy, Debug)]
pub struct Standing<'a> {
    /// The closed outline inside which it stands.
    pub inside: &'a Outline,
    /// How far inside at the least, metres; above 0.
    pub inset_m: f64,
    /// What it keeps off.
    pub off: &'a [KeepOff<'a>],
}

impl Standing<'_> {
    /// Whether a place is allowed.
    pub fn allows(&self, at: Point) -> bool {
        let deep = region::distance_to_m(self.inside, at) >= self.inset_m - ROUNDING_M;
        deep && self.keeps_off(at) && region::contains(self.inside, at)
    }

    /// Whether a place keeps off what it has to, wherever it lies.
    pub fn keeps_off(&self, at: Point) -> bool {
        at.is_finite()
            && self.off.iter().all(|off| {
                region::distance_to_m(off.line, at) >= off.metres - ROUNDING_M
                    && !(off.filled && region::contains(off.line, at))
            })
    }

    /// The allowed place that is nearest to `from`, within `reach_m` of it; of places as near the westernmost, then the
    /// southernmost. `None` where there is none.
    pub fn nearest(&self, from: Point, reach_m: f64) -> Option<Point> {
        if !(from.is_finite() && reach_m >= 0.0) {
            return None;
        }
        let mut rims = Vec::new();
        rims_of(self.inside, self.inset_m, &mut rims);
        self.off.iter().for_each(|off| rims_of(off.line, off.metres, &mut rims));
        rims.retain(|rim| rim.foot(from).distance_m(from) <= reach_m + ROUNDING_M);
        let alone = std::iter::once(from).chain(rims.iter().map(|rim| rim.foot(from)));
        let nearest = self.first_allowed(alone.collect(), from, reach_m);
        // What meets farther off than a place that is known cannot be nearer.
        let bound_m = nearest.map_or(reach_m, |at| at.distance_m(from));
        rims.retain(|rim| rim.foot(from).distance_m(from) <= bound_m);
        let mut meetings = Vec::new();
        for (number, one) in rims.iter().enumerate() {
            rims[..number].iter().for_each(|other| one.meets(other, &mut meetings));
        }
        nearest.into_iter().chain(self.first_allowed(meetings, from, bound_m)).min_by(|one, other| {
            // The earlier stays where both are as near.
            one.distance_m(from).total_cmp(&other.distance_m(from))
        })
    }

    /// The corners of what is inside: where a row along its rim would begin.
    pub fn corners(&self) -> Vec<Point> {
        let mut rims = Vec::new();
        rims_of(self.inside, self.inset_m, &mut rims);
        let mut corners = Vec::new();
        for (number, one) in rims.iter().enumerate() {
            rims[..number].iter().for_each(|other| one.meets(other, &mut corners));
        }
        corners.retain(|&at| self.allows(at));
        corners
    }

    fn first_allowed(&self, mut places: Vec<Point>, from: Point, reach_m: f64) -> Option<Point> {
        places.retain(|at| at.is_finite() && at.distance_m(from) <= reach_m + ROUNDING_M);
        let key = |at: &Point| (at.distance_m(from), at.east_m, at.north_m);
        places.sort_by(|one, other| {
            let (one, other) = (key(one), key(other));
            one.0.total_cmp(&other.0).then(one.1.total_cmp(&other.1)).then(one.2.total_cmp(&other.2))
        });
        places.into_iter().find(|&at| self.allows(at))
    }
}

/// A piece of the rim of what is allowed.
enum Rim {
    Line(Point, Point),
    Circle(Point, f64),
}

fn rims_of(line: &Outline, off_m: f64, rims: &mut Vec<Rim>) {
    for (from, to) in line.sides() {
        let aside = (to - from).unit().left() * off_m;
        rims.extend([Rim::Line(from + aside, to + aside), Rim::Line(from - aside, to - aside)]);
    }
    rims.extend(line.points().map(|at| Rim::Circle(at, off_m)));
}

impl Rim {
    /// The place of it that is nearest to a place; of a circle about that place, its easternmost.
    fn foot(&self, from: Point) -> Point {
        match *self {
            Self::Line(start, end) => {
                let way = end - start;
                let share = (from - start).dot(way) / way.dot(way);
                start.towards(end, if share.is_finite() { share.clamp(0.0, 1.0) } else { 0.0 })
            }
            Self::Circle(middle, round_m) => {
                let out = (from - middle).unit();
                let out = if out.length() > 0.0 { out } else { Vector::new(1.0, 0.0) };
                middle + out * round_m
            }
        }
    }

    fn meets(&self, other: &Self, places: &mut Vec<Point>) {
        match (self, other) {
            (Self::Line(a, b), Self::Line(c, d)) => {
                let (way, across) = (*b - *a, *d - *c);
                let turn = way.cross(across);
                let share = |along: Vector| (*c - *a).cross(along) / turn;
                let (on_one, on_other) = (share(across), share(way));
                if (0.0..=1.0).contains(&on_one) && (0.0..=1.0).contains(&on_other) {
                    places.push(a.towards(*b, on_one));
                }
            }
            (&Self::Line(start, end), &Self::Circle(middle, round_m))
            | (&Self::Circle(middle, round_m), &Self::Line(start, end)) => {
                let (along, length_m) = ((end - start).unit(), (end - start).length());
                let foot_m = (middle - start).dot(along);
                let half_m = (round_m.powi(2) - (start + along * foot_m).distance_m(middle).powi(2)).sqrt();
                let on = [foot_m - half_m, foot_m + half_m].into_iter().filter(|at_m| (0.0..=length_m).contains(at_m));
                places.extend(on.map(|at_m| start + along * at_m));
            }
            (&Self::Circle(one, one_m), &Self::Circle(two, two_m)) => {
                let (way, apart_m) = ((two - one).unit(), one.distance_m(two));
                let along_m = (one_m.powi(2) - two_m.powi(2) + apart_m.powi(2)) / (2.0 * apart_m);
                let half_m = (one_m.powi(2) - along_m.powi(2)).sqrt();
                // Circles that do not meet leave no number here, and no place.
                let both = [way.left() * half_m, way.left() * -half_m].map(|aside| one + way * along_m + aside);
                places.extend(both.into_iter().filter(|at| at.is_finite()));
            }
        }
    }
}
