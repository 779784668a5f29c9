//! The places by which a way turns.

use std::f64::consts::{FRAC_PI_6, PI, TAU};

use super::{Barrier, GRAIN_M};
use crate::{Point, Vector};

/// Places of a fan stand no farther apart than this, radians.
const FAN_RAD: f64 = FRAC_PI_6;

/// Places just beyond the clearance, round the outside of every turn and round every end.
pub(super) fn fans(barrier: &Barrier) -> impl Iterator<Item = Point> + '_ {
    let line = &barrier.line;
    let sides: Vec<(Point, Point)> = line.sides().collect();
    let count = line.vertices().len();
    let heading = |way: Vector| way.north.atan2(way.east);
    (0..count).flat_map(move |index| {
        let at = line.vertices()[index].at;
        let into = if index > 0 { sides.get(index - 1) } else { sides.last().filter(|_| line.is_closed()) };
        let out = sides.get(index);
        let (first_rad, turn_rad) = match (into, out) {
            (Some(into), Some(out)) => {
                let (into, out) = (into.1 - into.0, out.1 - out.0);
                let turn_rad = into.cross(out).atan2(into.dot(out));
                // The outside of a turn to the left is on the right.
                let normal = if turn_rad > 0.0 { -PI / 2.0 } else { PI / 2.0 };
                (heading(into) + normal, turn_rad)
            }
            (Some(into), None) => (heading(into.1 - into.0) + PI / 2.0, -PI),
            (None, Some(out)) => (heading(out.0 - out.1) + PI / 2.0, -PI),
            (None, None) => (0.0, TAU),
        };
        let steps = (turn_rad.abs() / FAN_RAD - 1e-9).ceil().max(0.0);
        let step_rad = if steps > 0.0 { turn_rad / steps } else { 0.0 };
        let beyond_m = (barrier.clear_m.max(0.0) + 2.0 * GRAIN_M) / (step_rad / 2.0).cos();
        let kept = turn_rad.abs() > 1e-9;
        (0..=steps as usize).filter(move |_| kept).map(move |step| {
            let toward_rad = first_rad + step_rad * step as f64;
            at + Vector::new(toward_rad.cos(), toward_rad.sin()) * beyond_m
        })
    })
}
