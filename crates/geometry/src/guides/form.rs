//! What a guide looks like on the ground, and where two of them cross.

use super::model::Edge;
use crate::point::{Point, Vector};

/// Guides that cross under a smaller sine do not pin a place down.
const LEAST_SINE: f64 = 0.17;

/// What a guide looks like on the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Form {
    Segment(Edge),
    /// Through a place, along a direction of length one.
    Line(Point, Vector),
    Round(Point, f64),
}

impl Form {
    pub(super) fn nearest(&self, at: Point) -> Option<Point> {
        match *self {
            Self::Segment(edge) => Some(edge.nearest(at)),
            Self::Line(through, along) => Some(through + along * (at - through).dot(along)),
            Self::Round(middle, radius_m) => {
                let way = at - middle;
                let length_m = way.length();
                (length_m > 0.0).then(|| middle + way * (radius_m / length_m))
            }
        }
    }

    fn line(&self) -> Option<(Point, Vector)> {
        match *self {
            Self::Segment(edge) => Some((edge.from, (edge.to - edge.from).unit())),
            Self::Line(through, along) => Some((through, along)),
            Self::Round(..) => None,
        }
    }

    fn holds(&self, at: Point, slack_m: f64) -> bool {
        self.nearest(at).is_some_and(|nearest| nearest.distance_m(at) <= slack_m)
    }

    /// Where two cross, as far as they do so clearly.
    pub(super) fn crossings(&self, other: &Self) -> [Option<Point>; 2] {
        match (self.line(), other.line()) {
            (Some((a, along)), Some((b, across))) => {
                let sine = along.cross(across);
                if sine.abs() < LEAST_SINE {
                    return [None; 2];
                }
                let at = a + along * ((b - a).cross(across) / sine);
                let on_both = self.holds(at, 1e-6) && other.holds(at, 1e-6);
                [on_both.then_some(at), None]
            }
            (Some((a, along)), None) => {
                Self::line_and_round(a, along, other).map(|at| at.filter(|&at| self.holds(at, 1e-6)))
            }
            (None, Some((b, across))) => {
                Self::line_and_round(b, across, self).map(|at| at.filter(|&at| other.holds(at, 1e-6)))
            }
            (None, None) => Self::two_rounds(self, other),
        }
    }

    fn line_and_round(through: Point, along: Vector, round: &Self) -> [Option<Point>; 2] {
        let Self::Round(middle, radius_m) = *round else { return [None; 2] };
        let foot = through + along * (middle - through).dot(along);
        let off_m = foot.distance_m(middle);
        let square = (radius_m - off_m) * (radius_m + off_m);
        // A line that grazes pins nothing down.
        if square.sqrt() < LEAST_SINE * radius_m || !square.is_finite() || square < 0.0 {
            return [None; 2];
        }
        let half = along * square.sqrt();
        [Some(foot + half), Some(foot - half)]
    }

    fn two_rounds(one: &Self, other: &Self) -> [Option<Point>; 2] {
        let (&Self::Round(a, r), &Self::Round(b, s)) = (one, other) else { return [None; 2] };
        let between = b - a;
        let apart_m = between.length();
        if apart_m <= 0.0 {
            return [None; 2];
        }
        let along_m = 0.5 * (apart_m + (r - s) * ((r + s) / apart_m));
        let square = (r - along_m) * (r + along_m);
        if square < 0.0 || square.sqrt() < LEAST_SINE * r.min(s) {
            return [None; 2];
        }
        let unit = between * (1.0 / apart_m);
        let (foot, off) = (a + unit * along_m, unit.left() * square.sqrt());
        [Some(foot + off), Some(foot - off)]
    }
}
