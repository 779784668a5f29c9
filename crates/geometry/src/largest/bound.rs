//! Areas that no outline can exceed, whatever is searched.
//!
//! - An outline lies in one connected part of the paddock less what it may not enclose, so the largest part bounds it.
//!   Clearances are cut with too few ground: a polygon inscribed in each disc, so that the bound stays one.
//! - Of all outlines of n sides and a given line the regular one encloses most (Zenodorus). With a straight side that
//!   costs no net, the outline and its image in the wall make one of 2n - 2 sides and twice the line: half of the most
//!   that this encloses.
//!
//! Proportions beyond the search: a rectangle in a paddock of diameter D is at most D long, so D / r wide.

use std::f64::consts::TAU;

use geo::{Area, BooleanOps, LineString, Polygon, unary_union};

use super::field::Field;
use crate::region::coord;
use crate::{Point, Vector, shapes};

/// Sides of the polygon in a clearance's disc.
const DISC_SIDES: u32 = 48;
/// Room for the overlay's grid.
const OVERLAY: f64 = 1e-6;

fn polygon(ring: &[Point]) -> Polygon<f64> {
    Polygon::new(LineString::new(ring.iter().copied().map(coord).collect()), Vec::new())
}

/// The paddock less the keep-outs with their clearance; those that may be enclosed only where `all`.
fn parts(field: &Field, all: bool) -> Vec<Polygon<f64>> {
    let mut taken = Vec::new();
    for off in field.offs.iter().filter(|off| all || !off.may_enclose) {
        taken.push(polygon(&off.ring.points));
        if off.clearance > 0.0 {
            for (from, to) in super::fits::sides(&off.ring.points) {
                let aside = (to - from).left().unit() * -off.clearance;
                taken.push(polygon(&[from, from + aside, to + aside, to]));
                let disc = (0..DISC_SIDES).map(|index| f64::from(index) * TAU / f64::from(DISC_SIDES));
                let disc: Vec<Point> =
                    disc.map(|way| from + Vector::new(way.cos(), way.sin()) * off.clearance).collect();
                taken.push(polygon(&disc));
            }
        }
    }
    let paddock = polygon(&field.boundary.points);
    if taken.is_empty() {
        return vec![paddock];
    }
    paddock.difference(&unary_union(&taken)).0
}

/// Area of the largest connected part of the ground that a run may lie in.
pub(super) fn ground(field: &Field) -> f64 {
    parts(field, false).iter().map(Area::unsigned_area).fold(0.0, f64::max) * (1.0 + OVERLAY)
}

/// Parts into which the keep-outs cut the paddock, slivers left out.
pub(super) fn part_count(field: &Field) -> usize {
    parts(field, true).iter().filter(|part| part.unsigned_area() > 1e-4).count()
}

/// The most that `line` encloses with so many sides, one of them borrowed or none.
pub(super) fn isoperimetric(line: f64, sides: u32, borrowed: bool) -> f64 {
    if borrowed {
        shapes::regular_area_m2(2.0 * line, 2 * sides - 2) / 2.0
    } else {
        shapes::regular_area_m2(line, sides)
    }
}

/// The most that a rectangle at least `proportion` times as long as wide encloses in this paddock.
pub(super) fn long_rectangle(field: &Field, line: f64, proportion: f64) -> f64 {
    let diameter = super::branch::diameter(&field.boundary.points);
    // Line 2 (1 + r) w, area r w^2; longer ones are smaller by both.
    let by_line = line * line * proportion / (4.0 * (1.0 + proportion) * (1.0 + proportion));
    by_line.min(diameter * diameter / proportion)
}
