//! Climbing from a shape that fits to the best one near it, by a row of small linear programmes.
//!
//! Area, line and every meeting with the ground are made linear at the shape as it stands; the best step within reach
//! is taken, the shape there is grown or shrunk to what really fits, and the reach halves where nothing was gained. So
//! each shape on the way fits exactly, and the last touches the ground at as many places as it has freedoms.

use super::branch::Pose;
use super::contact::contacts;
use super::field::Field;
use super::kind::Kind;
use super::lp::{Limit, best_step};
use crate::Point;

/// The first reach, the one at which it ends, and the most steps.
const REACH: (f64, f64, u32) = (0.06, 1e-8, 40);

/// A climb that has not come this near to the known best by that step is given up.
const HOPELESS: (f64, u32) = (0.95, 6);

/// Way by which the slopes are measured.
const NUDGE: f64 = 1e-6;

/// The best shape near `start`; not followed to its end where it stays well below `known`.
pub(super) fn polish(kind: Kind, field: &Field, round: f64, start: Pose, known: f64) -> Pose {
    let mut best = start;
    let mut reach = REACH.0 * start.scale;
    for step in 0..REACH.2 {
        if reach < REACH.1 || step >= HOPELESS.1 && best.scale < known * HOPELESS.0 {
            break;
        }
        let next = better(kind, field, round, best, reach);
        let gain = next.scale / best.scale - 1.0;
        if gain > 0.0 {
            best = next;
        }
        if gain < 1e-4 * reach {
            reach *= 0.25;
        } else if gain < 0.1 * reach {
            reach *= 0.7;
        }
    }
    best
}

/// The pose after unknowns: east, north, turn as a way, growth, stretch.
fn moved(kind: Kind, from: Pose, x: &[f64]) -> Pose {
    Pose {
        at: Point::new(from.at.east_m + x[0], from.at.north_m + x[1]),
        angle: from.angle + x[2] / from.scale,
        scale: from.scale + x[3],
        stretch: if kind == Kind::Rectangle { from.stretch + x[4] / from.scale } else { 0.0 },
    }
}

/// The corners of a shape where it stands.
pub(super) fn corners(kind: Kind, pose: Pose) -> Vec<Point> {
    kind.shape(pose.angle, pose.stretch).corners().iter().map(|&way| pose.at + way * pose.scale).collect()
}

fn better(kind: Kind, field: &Field, round: f64, from: Pose, reach: f64) -> Pose {
    let unknowns = if kind == Kind::Rectangle { 5 } else { 4 };
    let here = corners(kind, from);
    let meetings = contacts(field, &here, 3.0 * reach);
    let nudged: Vec<(Vec<Point>, f64)> = (0..unknowns)
        .map(|index| {
            let mut x = [0.0; 5];
            x[index] = NUDGE;
            let pose = moved(kind, from, &x);
            (corners(kind, pose), pose.scale * kind.round(pose.stretch))
        })
        .collect();
    let mut limits: Vec<Limit> = meetings
        .iter()
        .map(|meeting| {
            let gap = meeting.gap(&here);
            (nudged.iter().map(|(corners, _)| (gap - meeting.gap(corners)) / NUDGE).collect(), gap)
        })
        .collect();
    let line = from.scale * kind.round(from.stretch);
    limits.push((nudged.iter().map(|(_, other)| (other - line) / NUDGE).collect(), round - line));
    let mut gain = vec![0.0; unknowns];
    gain[3] = 1.0;
    let step = moved(kind, from, &best_step(&gain, &limits, reach));
    let stretch = step.stretch.max(0.0);
    let cap = round / kind.round(stretch);
    let scales = field.scales(&kind.shape(step.angle, stretch), step.at);
    match scales.largest(cap) {
        Some(scale) => Pose { stretch, scale, ..step },
        None => from,
    }
}
