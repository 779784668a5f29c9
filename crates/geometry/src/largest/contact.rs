//! Where a shape's line may meet the ground's lines: each meeting as a gap that must not become negative.
//!
//! The shape is a ring of corners, counter-clockwise. What lies farther off than `reach` is left out.

use super::convex::direction;
use super::field::{Field, Ring};
use crate::{Point, Vector};

/// One meeting.
#[derive(Debug, Clone, Copy)]
pub(super) enum Contact {
    /// A corner of the shape stays on the left of a line by a clearance.
    CornerToLine { corner: usize, from: Point, along: Vector, clearance: f64 },
    /// A corner stays so far from a place.
    CornerToPlace { corner: usize, place: Point, clearance: f64 },
    /// A place stays so far outside of a side, or inside where `sign` is -1.
    PlaceToSide { side: usize, place: Point, sign: f64, clearance: f64 },
}

impl Contact {
    /// What is left of the way; negative where the shape leaves the free ground.
    pub(super) fn gap(&self, corners: &[Point]) -> f64 {
        match *self {
            Contact::CornerToLine { corner, from, along, clearance } => along.cross(corners[corner] - from) - clearance,
            Contact::CornerToPlace { corner, place, clearance } => apart(place, corners[corner]) - clearance,
            Contact::PlaceToSide { side, place, sign, clearance } => {
                let from = corners[side];
                let along = direction(corners[(side + 1) % corners.len()] - from);
                -sign * along.cross(place - from) - clearance
            }
        }
    }
}

/// All meetings of the shape within `reach`.
pub(super) fn contacts(field: &Field, corners: &[Point], reach: f64) -> Vec<Contact> {
    let mut found = Vec::new();
    let sides: Vec<Vector> =
        (0..corners.len()).map(|side| direction(corners[(side + 1) % corners.len()] - corners[side])).collect();
    let ring = |line: &Ring, clearance: f64, within: bool, found: &mut Vec<Contact>| {
        meet(line, (corners, &sides), reach, clearance, within, found);
    };
    ring(&field.boundary, 0.0, true, &mut found);
    for off in &field.offs {
        if off.may_enclose && contains(corners, off.ring.points[0]) {
            held(&off.ring.points, off.clearance, corners, &mut found);
        } else {
            ring(&off.ring, off.clearance, false, &mut found);
        }
    }
    held(&field.hold, field.hold_clearance, corners, &mut found);
    found
}

fn held(places: &[Point], clearance: f64, corners: &[Point], found: &mut Vec<Contact>) {
    for &place in places {
        for side in 0..corners.len() {
            if over(corners[side], corners[(side + 1) % corners.len()], place) {
                found.push(Contact::PlaceToSide { side, place, sign: -1.0, clearance });
            }
        }
    }
}

fn meet(
    line: &Ring,
    (corners, sides): (&[Point], &[Vector]),
    reach: f64,
    clearance: f64,
    within: bool,
    found: &mut Vec<Contact>,
) {
    let count = line.points.len();
    for index in 0..count {
        let (from, to) = (line.points[index], line.points[(index + 1) % count]);
        let along = line.outward[(index + 1) % count].left();
        // The free side is on the left of a boundary, on the right of a keep-out.
        let (start, along) = if within { (from, along) } else { (to, -along) };
        for (corner, &at) in corners.iter().enumerate() {
            let gap = along.cross(at - start) - clearance;
            if gap.abs() <= reach && over(from, to, at) {
                found.push(Contact::CornerToLine { corner, from: start, along, clearance });
            }
            if clearance > 0.0 && (apart(from, at) - clearance).abs() <= reach {
                found.push(Contact::CornerToPlace { corner, place: from, clearance });
            }
        }
        for side in 0..corners.len() {
            let (a, b) = (corners[side], corners[(side + 1) % corners.len()]);
            let gap = -sides[side].cross(from - a) - clearance;
            if gap.abs() <= reach && over(a, b, from) {
                found.push(Contact::PlaceToSide { side, place: from, sign: 1.0, clearance });
            }
        }
    }
}

fn apart(one: Point, other: Point) -> f64 {
    (one - other).dot(one - other).sqrt()
}

/// Whether a place lies abreast of a side.
fn over(from: Point, to: Point, place: Point) -> bool {
    let way = to - from;
    let share = (place - from).dot(way);
    share >= 0.0 && share <= way.dot(way)
}

/// Whether a place lies within a ring.
pub(super) fn contains(ring: &[Point], at: Point) -> bool {
    let mut inside = false;
    let mut from = ring[ring.len() - 1] - at;
    for &corner in ring {
        let to = corner - at;
        if (from.north > 0.0) != (to.north > 0.0) {
            inside ^= from.east + (to.east - from.east) * (from.north / (from.north - to.north)) > 0.0;
        }
        from = to;
    }
    inside
}
