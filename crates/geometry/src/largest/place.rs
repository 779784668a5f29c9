//! Where the nets and not the ground limit a shape: of all places where it fits, the one nearest to a wished place, or
//! the deepest in the free ground.

use std::collections::BTreeSet;

use super::branch::{Branch, Pose};
use super::field::Field;
use super::kind::Kind;
use crate::{Point, Vector};

/// Angles tried beside the one found.
const ANGLES: u32 = 8;
/// Looks at each angle.
const LOOKS: u32 = 250;
/// Cells smaller than this are not halved any more.
const SMALLEST: f64 = 1e-3;
/// Steps and looks of the search for the deepest place, and a line that no paddock needs.
const DEEPEST: (u32, u32, f64) = (6, 250, 1e2);

/// A pose of the same scale, better placed.
pub(super) fn settle(kind: Kind, field: &Field, pose: Pose, towards: Option<Point>) -> Pose {
    match towards {
        Some(towards) => nearest(kind, field, pose, towards),
        None => deepest(kind, field, pose),
    }
}

fn is_free(kind: Kind, field: &Field, pose: Pose) -> bool {
    let scales = field.scales(&kind.shape(pose.angle, pose.stretch), pose.at);
    scales.largest(pose.scale).is_some_and(|scale| scale >= pose.scale)
}

fn deepest(kind: Kind, field: &Field, pose: Pose) -> Pose {
    // A rectangle as long as its nets allow is a square.
    let kind_of_place = if kind == Kind::Rectangle { Kind::Regular(4) } else { kind };
    let (steps, looks, round) = DEEPEST;
    let mut search = Branch::new(kind_of_place, round);
    for _ in 0..steps {
        search.step(field, looks);
    }
    let deeper = search.best.map(|best| Pose { scale: pose.scale, stretch: pose.stretch, ..best });
    deeper.filter(|&deeper| is_free(kind, field, deeper)).unwrap_or(pose)
}

/// Best first by distance, at a few angles; of angles as near, the first: along the boundary's longest side.
fn nearest(kind: Kind, field: &Field, pose: Pose, towards: Point) -> Pose {
    let mut best = pose;
    let mut least = pose.at.distance_m(towards);
    let mut consider = |angle: f64| {
        let shape = kind.shape(angle, pose.stretch);
        // Boxes by their least distance; the middle's coordinates only settle ties.
        let key = |at: Point, half: f64| {
            let off = |way: f64| (way.abs() - half).max(0.0);
            let distance = off(at.east_m - towards.east_m).hypot(off(at.north_m - towards.north_m));
            (order(distance), order(at.east_m), order(at.north_m), order(half))
        };
        let mut boxes = BTreeSet::new();
        let half = field.boundary.points.iter().map(|&corner| corner.distance_m(towards)).fold(0.0, f64::max);
        boxes.insert(key(towards, half));
        for _ in 0..LOOKS {
            let Some((near, east, north, half)) = boxes.pop_first() else { break };
            let (near, at, half) = (value(near), Point::new(value(east), value(north)), value(half));
            if near >= least * (1.0 - 1e-6) {
                break;
            }
            let scales = field.scales(&shape, at);
            if scales.largest(pose.scale).is_some_and(|scale| scale >= pose.scale) && at.distance_m(towards) < least {
                (best, least) = (Pose { at, angle, ..pose }, at.distance_m(towards));
            }
            let shift = shape.gauge(Vector::new(half, half)).max(shape.gauge(Vector::new(half, -half)));
            let shift = shift.max(shape.gauge(Vector::new(-half, half))).max(shape.gauge(Vector::new(-half, -half)));
            if half > SMALLEST && scales.within(pose.scale, shift, 1.0).is_some_and(|scale| scale >= pose.scale) {
                for (east, north) in [(-0.5, -0.5), (0.5, -0.5), (-0.5, 0.5), (0.5, 0.5)] {
                    boxes.insert(key(at + Vector::new(east, north) * half, half / 2.0));
                }
            }
        }
    };
    let part = 2.0 * kind.half_turn() / f64::from(ANGLES);
    (0..ANGLES).for_each(|index| consider(f64::from(index) * part));
    consider(pose.angle);
    best
}

/// A number as an integer that sorts alike: the order of [`f64::total_cmp`].
fn order(value: f64) -> i64 {
    let bits = value.to_bits().cast_signed();
    bits ^ (bits >> 63).cast_unsigned().wrapping_shr(1).cast_signed()
}

fn value(order: i64) -> f64 {
    f64::from_bits((order ^ (order >> 63).cast_unsigned().wrapping_shr(1).cast_signed()).cast_unsigned())
}
