//! The shortest way between two places round lines that may not be crossed nor come near to: nets, water, fences.
//!
//! Each line keeps its own clearance, metres, straight and round at its corners. The way is a row of straight pieces over
//! a visibility graph: at every outward corner and every end stands a fan of places just beyond the clearance, no more
//! than 30 degrees apart, and two places see each other where the piece between keeps every clearance. The pieces cut the
//! corners' arcs from outside, so a way is at most 3.6 % longer at its bends than the shortest, and a passage that is
//! less than 3.6 % wider than it has to be counts as shut. Found by A* with the straight distance as its bound.
//! Source: Lozano-Pérez and Wesley, Commun. ACM 22 (1979), from memory.
//!
//! Whether lines shut the two places off from each other is asked first ([`shut`]), for a search that finds nothing looks
//! at every pair of places and costs the most.

mod fan;
mod shut;
mod side;
mod stretch;
#[cfg(test)]
mod tests;

use std::cmp::Ordering;
use std::collections::BinaryHeap;

use crate::{Outline, Point};
use fan::fans;
use side::{Side, clear, sides_of};

pub use stretch::{stretch, without_stretch};

/// Clearances are kept to within this, metres: room for the rounding of a place that keeps one exactly.
const GRAIN_M: f64 = 1e-6;

/// A budget for a way: a step is a piece looked at against one side. About a tenth of a second on a small computer.
pub const WAY_BUDGET_STEPS: u64 = 4_000_000;

/// A line that a way keeps off.
#[derive(Debug, Clone, PartialEq)]
pub struct Barrier {
    /// The line; what it encloses may be gone into only where the line is open.
    pub line: Outline,
    /// How far the way keeps off it, metres.
    pub clear_m: f64,
}

/// A way that was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Way {
    /// Its places, both ends included.
    pub points: Vec<Point>,
    /// Its length, metres.
    pub length_m: f64,
}

/// Why there is no way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NoWay {
    /// An end stands nearer to a line than that line's clearance.
    #[error("an end of the way stands too near to what it keeps off")]
    EndTooNear,
    /// None keeps every clearance.
    #[error("no way keeps off everything that it has to")]
    None,
    /// The budget ended before one was found or ruled out.
    #[error("so many lines stand about that no way was found in the steps allowed")]
    OutOfSteps,
}

/// The shortest way from one place to another that keeps every clearance. What it costs is taken from `budget_steps`, so
/// that several ways may share one budget.
///
/// # Errors
/// [`NoWay`], where there is none or none was found within the budget.
pub fn shortest_way(from: Point, to: Point, barriers: &[Barrier], budget_steps: &mut u64) -> Result<Way, NoWay> {
    let sides: Vec<Side> = barriers.iter().flat_map(sides_of).collect();
    if !clear(from, from, &sides) || !clear(to, to, &sides) {
        return Err(NoWay::EndTooNear);
    }
    if clear(from, to, &sides) {
        return Ok(Way { points: vec![from, to], length_m: from.distance_m(to) });
    }
    if shut::off(from, to, &sides) {
        return Err(NoWay::None);
    }
    let mut places = vec![from, to];
    for barrier in barriers {
        places.extend(fans(barrier).filter(|&at| at.is_finite() && clear(at, at, &sides)));
    }
    let (mut reached_m, mut before) = (vec![f64::INFINITY; places.len()], vec![usize::MAX; places.len()]);
    let mut settled = vec![false; places.len()];
    reached_m[0] = 0.0;
    let mut open = BinaryHeap::from([Open { least_m: from.distance_m(to), place: 0 }]);
    while let Some(Open { place, .. }) = open.pop() {
        if place == 1 {
            let mut points = vec![to];
            let mut here = 1;
            while here != 0 {
                here = before[here];
                points.push(places[here]);
            }
            points.reverse();
            return Ok(Way { points, length_m: reached_m[1] });
        }
        if std::mem::replace(&mut settled[place], true) {
            continue;
        }
        for next in 0..places.len() {
            let there_m = reached_m[place] + places[place].distance_m(places[next]);
            if settled[next] || there_m >= reached_m[next] {
                continue;
            }
            let Some(left) = budget_steps.checked_sub(sides.len() as u64 + 1) else {
                return Err(NoWay::OutOfSteps);
            };
            *budget_steps = left;
            if clear(places[place], places[next], &sides) {
                (reached_m[next], before[next]) = (there_m, place);
                open.push(Open { least_m: there_m + places[next].distance_m(to), place: next });
            }
        }
    }
    Err(NoWay::None)
}

/// Whether the straight piece between two places keeps every clearance.
pub fn is_clear(from: Point, to: Point, barriers: &[Barrier]) -> bool {
    let sides: Vec<Side> = barriers.iter().flat_map(sides_of).collect();
    clear(from, to, &sides)
}

/// A place that was seen and not yet settled.
struct Open {
    least_m: f64,
    place: usize,
}

impl PartialEq for Open {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Open {}

impl Ord for Open {
    /// The shortest first out of a heap that gives its greatest.
    fn cmp(&self, other: &Self) -> Ordering {
        other.least_m.total_cmp(&self.least_m).then(other.place.cmp(&self.place))
    }
}

impl PartialOrd for Open {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
