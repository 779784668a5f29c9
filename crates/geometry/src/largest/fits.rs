//! Whether a ring of corners, dented or not, lies in the free ground. Within [`GRAIN`] of a line is on its free side.

use super::contact::contains;
use super::field::{Field, Off, distance};
use crate::Point;

/// Room for rounding, in units of the frame: well below a micrometre on any paddock.
pub(super) const GRAIN: f64 = 1e-9;

/// Whether the ring, counter-clockwise, is simple and free.
pub(super) fn fits(field: &Field, corners: &[Point]) -> bool {
    is_simple(corners)
        && corners.iter().all(|&at| contains(&field.boundary.points, at) || apart(&field.boundary.points, at) <= GRAIN)
        && !field.boundary.points.iter().any(|&at| is_deep(corners, at))
        && !sides(corners).any(|side| sides(&field.boundary.points).any(|other| cross(side, other)))
        && field.offs.iter().all(|off| keeps_off(off, corners))
        && field.hold.iter().all(|&at| contains(corners, at) && apart(corners, at) >= field.hold_clearance - GRAIN)
}

fn keeps_off(off: &Off, corners: &[Point]) -> bool {
    if corners.iter().any(|&at| is_deep(&off.ring.points, at)) {
        return false;
    }
    if !off.may_enclose && (is_deep(corners, off.ring.inner) || off.ring.points.iter().any(|&at| is_deep(corners, at)))
    {
        return false;
    }
    sides(corners).all(|side| {
        sides(&off.ring.points).all(|other| {
            !cross(side, other)
                && (off.clearance <= 0.0 || {
                    let from_side = |at: Point| distance(side.0 - at, side.1 - at);
                    let from_other = |at: Point| distance(other.0 - at, other.1 - at);
                    let least = from_side(other.0).min(from_other(side.0)).min(from_other(side.1));
                    least >= off.clearance - GRAIN
                })
        })
    })
}

fn is_simple(corners: &[Point]) -> bool {
    let count = corners.len();
    if count < 3 {
        return false;
    }
    let doubled: f64 = sides(corners).map(|(from, to)| (from - corners[0]).cross(to - corners[0])).sum();
    let all: Vec<(Point, Point)> = sides(corners).collect();
    doubled > 0.0
        && (0..count).all(|one| {
            (one + 1..count).all(|two| {
                let neighbours = two == one + 1 || (one == 0 && two + 1 == count);
                neighbours || !(cross(all[one], all[two]) || touch(all[one], all[two]))
            })
        })
}

fn touch(one: (Point, Point), other: (Point, Point)) -> bool {
    let near = |at: Point, side: (Point, Point)| distance(side.0 - at, side.1 - at) <= GRAIN;
    near(one.0, other) || near(one.1, other) || near(other.0, one) || near(other.1, one)
}

pub(super) fn sides(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    (0..ring.len()).map(|index| (ring[index], ring[(index + 1) % ring.len()]))
}

/// Distance of a place from a ring's line.
pub(super) fn apart(ring: &[Point], at: Point) -> f64 {
    sides(ring).map(|(from, to)| distance(from - at, to - at)).fold(f64::INFINITY, f64::min)
}

/// Whether a place lies within a ring, off its line.
fn is_deep(ring: &[Point], at: Point) -> bool {
    contains(ring, at) && apart(ring, at) > GRAIN
}

/// Whether two sides cross with all four ends off the other side's line.
fn cross(one: (Point, Point), other: (Point, Point)) -> bool {
    let way = (one.1 - one.0).unit();
    let (a, b) = (way.cross(other.0 - one.0), way.cross(other.1 - one.0));
    if !(a > GRAIN && b < -GRAIN || a < -GRAIN && b > GRAIN) {
        return false;
    }
    let way = (other.1 - other.0).unit();
    let (a, b) = (way.cross(one.0 - other.0), way.cross(one.1 - other.0));
    a > GRAIN && b < -GRAIN || a < -GRAIN && b > GRAIN
}
