//! What is wrong with an outline, each fault with its place.
//!
//! A sweep over the sides sorted from west to east, so that 2,000 vertices take milliseconds; beyond [`MAX_VERTICES`]
//! nobody asks for crossings. Touching counts as crossing, but an open line may end where it began.

use geo::line_intersection::{LineIntersection, line_intersection};
use geo::{Coord, Line};

use crate::{Outline, Point};

/// More vertices than this are a recorded track, not corners that somebody staked.
pub const MAX_VERTICES: usize = 2_000;

/// A coordinate beyond this is no longer on the flat ground round the plan's origin, metres.
pub const FARTHEST_M: f64 = 1e6;

/// An area below this share of the squared length is nothing.
const FLAT_SHARE: f64 = 1e-9;

/// So many crossings are named; more would only repeat the news.
const CROSSINGS_NAMED: usize = 16;

/// One thing wrong with an outline. Numbers count the points as stated, from 0.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum OutlineFault {
    /// Fewer distinct points than a closed line (3) or an open one (2) needs.
    #[error("{count} distinct points make no line: a closed one needs 3, an open one 2")]
    TooFewPoints {
        /// Distinct points found.
        count: usize,
    },
    /// A coordinate that is not a finite number.
    #[error("point {index} has a coordinate that is not a number")]
    NotFinite {
        /// The point.
        index: usize,
    },
    /// A coordinate beyond [`FARTHEST_M`].
    #[error("point {index} lies more than 1,000 km from the origin")]
    TooFar {
        /// The point.
        index: usize,
    },
    /// A point on top of the one before it; it is dropped, so this is only worth a word.
    #[error("point {index} repeats the point before it")]
    RepeatedVertex {
        /// The point.
        index: usize,
    },
    /// Two sides share a place that they should not share.
    #[error("the sides from point {first} and from point {second} cross or touch")]
    CrossesItself {
        /// The point at which the first side starts.
        first: usize,
        /// The point at which the second side starts.
        second: usize,
        /// Where they meet.
        at: Point,
    },
    /// More than [`MAX_VERTICES`]; crossings were not looked for.
    #[error("{count} corners are too many: keep at most {MAX_VERTICES}")]
    TooManyCorners {
        /// Vertices found.
        count: usize,
    },
    /// A closed outline that encloses nothing.
    #[error("the outline encloses no ground")]
    ZeroArea,
}

impl OutlineFault {
    /// A name that stays the same in every version.
    pub fn id(&self) -> &'static str {
        match self {
            OutlineFault::TooFewPoints { .. } => "outline/too-few-points",
            OutlineFault::NotFinite { .. } => "outline/not-finite",
            OutlineFault::TooFar { .. } => "outline/too-far",
            OutlineFault::RepeatedVertex { .. } => "outline/repeated-vertex",
            OutlineFault::CrossesItself { .. } => "outline/crosses-itself",
            OutlineFault::TooManyCorners { .. } => "outline/too-many-corners",
            OutlineFault::ZeroArea => "outline/zero-area",
        }
    }

    /// Whether nothing can be worked out from such an outline (a repeated vertex is simply dropped).
    pub fn is_fatal(&self) -> bool {
        !matches!(self, OutlineFault::RepeatedVertex { .. })
    }
}

/// Everything wrong with the line through `points`; empty when it can be built.
pub fn check_outline(points: &[Point], closed: bool) -> Vec<OutlineFault> {
    let mut faults = Vec::new();
    for (index, point) in points.iter().enumerate() {
        if !point.is_finite() {
            faults.push(OutlineFault::NotFinite { index });
        } else if point.east_m.abs() > FARTHEST_M || point.north_m.abs() > FARTHEST_M {
            faults.push(OutlineFault::TooFar { index });
        }
    }
    if !faults.is_empty() {
        // Nothing below means anything with such numbers.
        return faults;
    }
    let outline = if closed { Outline::closed(points) } else { Outline::open(points) };
    faults.extend(repeats(points, &outline));
    let count = outline.vertices().len();
    if count < if closed { 3 } else { 2 } {
        faults.push(OutlineFault::TooFewPoints { count });
        return faults;
    }
    if count > MAX_VERTICES {
        faults.push(OutlineFault::TooManyCorners { count });
        return faults;
    }
    faults.extend(crossings(&outline));
    if closed && outline.area_m2() <= FLAT_SHARE * outline.length_m() * outline.length_m() {
        faults.push(OutlineFault::ZeroArea);
    }
    faults
}

/// Points that the cleaning dropped, but for one repeated closing vertex, which is a habit of file formats.
fn repeats(points: &[Point], outline: &Outline) -> Vec<OutlineFault> {
    let mut kept = outline.vertices().iter().map(|vertex| vertex.stated).peekable();
    let mut found = Vec::new();
    for index in 0..points.len() {
        if kept.next_if_eq(&index).is_none() {
            found.push(OutlineFault::RepeatedVertex { index });
        }
    }
    let last = points.len().saturating_sub(1);
    if outline.is_closed() && points.len() > 1 && points[0].distance_m(points[last]) <= crate::SAME_PLACE_M {
        found.retain(|fault| *fault != OutlineFault::RepeatedVertex { index: last });
    }
    found
}

/// Pairs of sides that share a place beyond the vertex between neighbours.
fn crossings(outline: &Outline) -> Vec<OutlineFault> {
    let sides: Vec<(usize, Line<f64>)> =
        outline.sides().map(|(from, to)| Line::new(coord(from), coord(to))).enumerate().collect();
    let west = |line: &Line<f64>| line.start.x.min(line.end.x);
    let east = |line: &Line<f64>| line.start.x.max(line.end.x);
    let mut by_west = sides.clone();
    by_west.sort_by(|one, other| west(&one.1).total_cmp(&west(&other.1)).then(one.0.cmp(&other.0)));

    let mut open: Vec<(usize, Line<f64>)> = Vec::new();
    let mut found = Vec::new();
    for &(index, line) in &by_west {
        open.retain(|(_, other)| east(other) >= west(&line));
        for &(other_index, other) in &open {
            let (first, second) = (index.min(other_index), index.max(other_index));
            if let Some(at) = shared_place(outline, first, second, &line, &other) {
                found.push((first, second, at));
            }
        }
        open.push((index, line));
    }
    found.sort_by_key(|&(first, second, _)| (first, second));
    found.truncate(CROSSINGS_NAMED);
    let stated = |index: usize| outline.vertices()[index].stated;
    found
        .into_iter()
        .map(|(first, second, at)| OutlineFault::CrossesItself { first: stated(first), second: stated(second), at })
        .collect()
}

/// Where two sides meet in a way that a simple line does not.
fn shared_place(outline: &Outline, first: usize, second: usize, line: &Line<f64>, other: &Line<f64>) -> Option<Point> {
    let count = outline.side_count();
    let neighbours = second - first == 1 || (outline.is_closed() && first == 0 && second == count - 1);
    match line_intersection(*line, *other)? {
        // Neighbours always share their vertex; a triangle's sides do so twice over, never otherwise.
        LineIntersection::SinglePoint { .. } if neighbours => None,
        LineIntersection::SinglePoint { intersection, .. } => {
            let at = Point::new(intersection.x, intersection.y);
            let ends_meet = !outline.is_closed()
                && first == 0
                && second == count - 1
                && at == outline.vertices()[0].at
                && at == outline.vertices()[count].at;
            (!ends_meet).then_some(at)
        }
        LineIntersection::Collinear { intersection } => {
            let overlap_m = (intersection.end - intersection.start).x.hypot((intersection.end - intersection.start).y);
            (!neighbours || overlap_m > crate::SAME_PLACE_M)
                .then(|| Point::new(intersection.start.x, intersection.start.y))
        }
    }
}

fn coord(point: Point) -> Coord<f64> {
    Coord { x: point.east_m, y: point.north_m }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn faults(points: &[(f64, f64)], closed: bool) -> Vec<OutlineFault> {
        check_outline(&points.iter().copied().map(Point::from).collect::<Vec<_>>(), closed)
    }

    #[test]
    fn sound_outlines_have_none() {
        assert_eq!(faults(&[(0.0, 0.0), (5.0, 0.0), (0.0, 5.0)], true), []);
        assert_eq!(faults(&[(0.0, 0.0), (5.0, 0.0), (5.0, 5.0), (0.0, 5.0), (0.0, 0.0)], true), []);
        assert_eq!(faults(&[(0.0, 0.0), (5.0, 0.0)], false), []);
        // An open line may end where it began: that is a ring with a gate.
        assert_eq!(faults(&[(0.0, 0.0), (5.0, 0.0), (0.0, 5.0), (0.0, 0.0)], false), []);
    }

    #[test]
    fn every_fault_names_its_place() {
        assert_eq!(faults(&[(0.0, 0.0), (5.0, 0.0)], true), [OutlineFault::TooFewPoints { count: 2 }]);
        assert_eq!(faults(&[(1.0, 1.0)], false), [OutlineFault::TooFewPoints { count: 1 }]);
        assert_eq!(faults(&[], false), [OutlineFault::TooFewPoints { count: 0 }]);
        assert_eq!(
            faults(&[(0.0, 0.0), (f64::NAN, 0.0), (2e6, 0.0)], true),
            [OutlineFault::NotFinite { index: 1 }, OutlineFault::TooFar { index: 2 }]
        );
        assert_eq!(
            faults(&[(0.0, 0.0), (5.0, 0.0), (5.0, 0.0), (0.0, 5.0)], true),
            [OutlineFault::RepeatedVertex { index: 2 }]
        );
        assert_eq!(
            faults(&[(0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0)], true),
            [OutlineFault::CrossesItself { first: 0, second: 2, at: Point::new(5.0, 5.0) }, OutlineFault::ZeroArea]
        );
        assert!(faults(&[(0.0, 0.0), (5.0, 0.0), (10.0, 0.0)], true).contains(&OutlineFault::ZeroArea));
    }

    #[test]
    fn a_line_laid_back_on_itself_crosses() {
        let there_and_back = faults(&[(0.0, 0.0), (10.0, 0.0), (4.0, 0.0)], false);
        assert!(matches!(there_and_back[..], [OutlineFault::CrossesItself { first: 0, second: 1, .. }]));
        let touching = faults(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (5.0, 0.0), (0.0, 10.0)], true);
        assert!(matches!(touching[0], OutlineFault::CrossesItself { first: 0, second: 2, .. }));
    }

    #[test]
    fn a_recorded_track_is_refused_at_once() {
        let track: Vec<(f64, f64)> = (0..100_000).map(|i| (f64::from(i % 317), f64::from(i % 101) * 0.5)).collect();
        assert_eq!(faults(&track, true), [OutlineFault::TooManyCorners { count: 100_000 }]);
    }
}
