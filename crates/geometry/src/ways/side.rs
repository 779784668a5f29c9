//! Straight pieces against the sides that they keep off.

use super::{Barrier, GRAIN_M};
use crate::Point;

/// One side of a barrier, with the box about it grown by its clearance.
pub(super) struct Side {
    pub(super) from: Point,
    pub(super) to: Point,
    pub(super) clear_m: f64,
    pub(super) low: Point,
    pub(super) high: Point,
}

/// All sides of a barrier.
pub(super) fn sides_of(barrier: &Barrier) -> impl Iterator<Item = Side> + '_ {
    let clear_m = barrier.clear_m.max(0.0);
    barrier.line.sides().map(move |(from, to)| Side {
        from,
        to,
        clear_m,
        low: Point::new(from.east_m.min(to.east_m) - clear_m, from.north_m.min(to.north_m) - clear_m),
        high: Point::new(from.east_m.max(to.east_m) + clear_m, from.north_m.max(to.north_m) + clear_m),
    })
}

/// Whether a straight piece keeps every side's clearance.
pub(super) fn clear(from: Point, to: Point, sides: &[Side]) -> bool {
    let (low_east, high_east) = (from.east_m.min(to.east_m), from.east_m.max(to.east_m));
    let (low_north, high_north) = (from.north_m.min(to.north_m), from.north_m.max(to.north_m));
    sides.iter().all(|side| {
        high_east < side.low.east_m
            || low_east > side.high.east_m
            || high_north < side.low.north_m
            || low_north > side.high.north_m
            || apart_m((from, to), (side.from, side.to)) >= (side.clear_m - GRAIN_M).max(GRAIN_M)
    })
}

/// Straight distance between two segments, metres; 0 where they cross.
fn apart_m(one: (Point, Point), other: (Point, Point)) -> f64 {
    let (here, there) = nearest(one, other);
    here.distance_m(there)
}

/// The places on two segments that are nearest to each other; the same one where they cross.
pub(super) fn nearest(one: (Point, Point), other: (Point, Point)) -> (Point, Point) {
    let side_of = |line: (Point, Point), at: Point| (line.1 - line.0).cross(at - line.0);
    let parts = |line: (Point, Point), by: (Point, Point)| side_of(line, by.0) * side_of(line, by.1) < 0.0;
    if parts(one, other) && parts(other, one) {
        let (from, to) = (side_of(other, one.0), side_of(other, one.1));
        let at = one.0.towards(one.1, from / (from - to));
        return (at, at);
    }
    let on_segment = |at: Point, (from, to): (Point, Point)| {
        let way = to - from;
        let squared = way.dot(way);
        let share = if squared > 0.0 { ((at - from).dot(way) / squared).clamp(0.0, 1.0) } else { 0.0 };
        from.towards(to, share)
    };
    let pairs = [
        (one.0, on_segment(one.0, other)),
        (one.1, on_segment(one.1, other)),
        (on_segment(other.0, one), other.0),
        (on_segment(other.1, one), other.1),
    ];
    let mut best = pairs[0];
    for pair in &pairs[1..] {
        if pair.0.distance_m(pair.1) < best.0.distance_m(best.1) {
            best = *pair;
        }
    }
    best
}
