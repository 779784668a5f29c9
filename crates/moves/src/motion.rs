//! The two motions over a side, as maps of the plane, and the stretch that two lines share.

use geometry::{Outline, Point, Vector};

/// How a run goes over one of its sides.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Motion {
    /// Mirrored in the line of the side: that side stays, the rest is swung over it.
    #[default]
    TurnOver,
    /// Pushed square over the side by the run's depth there, so that its far end comes to lie on the side.
    Shift,
}

/// Places this near to a line lie on it, metres.
const ON_LINE_M: f64 = 1e-6;

/// A motion of the plane that keeps lengths.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Carry {
    /// By a way.
    By(Vector),
    /// Mirrored in a line: a place on it, and its direction of length one.
    In(Point, Vector),
}

impl Carry {
    /// Where a place goes.
    pub(crate) fn of(self, at: Point) -> Point {
        match self {
            Self::By(way) => at + way,
            Self::In(on, along) => {
                let square = along.left();
                at - square * (2.0 * (at - on).dot(square))
            }
        }
    }
}

impl Motion {
    /// The motion over a side of a line; `None` where the line has no inner side.
    pub(crate) fn carry(self, line: &Outline, [from, to]: [Point; 2]) -> Option<Carry> {
        let along = (to - from).unit();
        match self {
            Self::TurnOver => Some(Carry::In(from, along)),
            Self::Shift => {
                // An open line is judged as if it closed: its hollow side is inside.
                let points: Vec<Point> = line.points().collect();
                let inward = if Outline::closed(&points).is_counter_clockwise() { along.left() } else { -along.left() };
                let depth_m = points.iter().map(|&at| (at - from).dot(inward)).fold(0.0, f64::max);
                (depth_m > ON_LINE_M).then(|| Carry::By(-inward * depth_m))
            }
        }
    }
}

/// The longest stretch of a side that also lies on a side of a line; `None` where they meet in a place at most.
pub(crate) fn shared([from, to]: [Point; 2], line: &Outline) -> Option<[Point; 2]> {
    let along = (to - from).unit();
    let length_m = from.distance_m(to);
    let off_m = |at: Point| (at - from).dot(along.left()).abs();
    line.sides()
        .filter(|&(start, end)| off_m(start) < ON_LINE_M && off_m(end) < ON_LINE_M)
        .map(|(start, end)| {
            let (a, b) = ((start - from).dot(along), (end - from).dot(along));
            (a.min(b).max(0.0), a.max(b).min(length_m))
        })
        .filter(|(start_m, end_m)| end_m - start_m > geometry::MEET_M)
        .max_by(|one, other| (one.1 - one.0).total_cmp(&(other.1 - other.0)))
        .map(|(start_m, end_m)| [from + along * start_m, from + along * end_m])
}
