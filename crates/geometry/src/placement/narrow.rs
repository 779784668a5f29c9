//! Leaving out starts between two that were tried, by how fast the sum can fall.
//!
//! A corner's distance to its nearest post changes by no more than the start moves, whatever the order; so the least sum
//! over all orders falls by no more than the number of corners times that. Two tried starts with the sums a and b thus
//! bound every start between them by (a + b)/2 less half that slope times their distance apart. The stretch with the
//! least bound is halved next, until every bound lies above the best sum found: exact, and where the budget ends first,
//! the least bound left is a proven one. Source: Piyavskii 1972 and Shubert 1972, from memory. Metres.

use std::cmp::Ordering;
use std::collections::BinaryHeap;

use super::EQUAL_SUMS_M;
use super::search::{SWEEP_GRAIN_M, Start};
use super::tie::Contest;

/// What may be spent.
pub(super) struct Budget {
    /// Steps of trying one start.
    pub(super) steps_each: u64,
    /// Steps in all.
    pub(super) steps: u64,
}

/// A stretch between two starts that were tried.
struct Stretch {
    bound_m: f64,
    /// Numbers of the two, and the least sums there.
    from: (usize, f64),
    to: (usize, f64),
}

impl PartialEq for Stretch {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Stretch {}

impl Ord for Stretch {
    /// The least bound first out of a heap that gives its greatest.
    fn cmp(&self, other: &Self) -> Ordering {
        other.bound_m.total_cmp(&self.bound_m).then(other.from.0.cmp(&self.from.0))
    }
}

impl PartialOrd for Stretch {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

/// Tries starts until none left can matter or the budget ends, and returns a bound of those not tried: infinite where
/// they are all worse than the best.
///
/// `enter` tries one and returns what the sum in any order is at least there; between two starts of one direction that
/// falls no faster than `corners` metres a metre.
pub(super) fn narrow(
    mut starts: Vec<Start>,
    corners: usize,
    budget: &Budget,
    contest: &mut Contest,
    mut enter: impl FnMut(&mut Contest, Start) -> f64,
) -> f64 {
    // They come in rising or falling runs, which a stable sort merges.
    starts.sort_by(|a, b| a.reversed.cmp(&b.reversed).then(a.at_m.total_cmp(&b.at_m)));
    let slope = corners as f64;
    let mut heap = BinaryHeap::new();
    let stretch = |from: (usize, f64), to: (usize, f64)| {
        let apart_m = starts[to.0].at_m - starts[from.0].at_m;
        let bound_m = f64::midpoint(from.1, to.1) - slope * apart_m / 2.0;
        // The sweep's own bounds hold between as well, but none is kept for a stretch: 0 needs no proof.
        Stretch { bound_m: bound_m.max(0.0), from, to }
    };
    let mut look = |contest: &mut Contest, at: usize| {
        let start = starts[at];
        if start.bound_m > contest.least_m + EQUAL_SUMS_M + SWEEP_GRAIN_M {
            return start.bound_m;
        }
        enter(contest, start)
    };
    let turn = starts.partition_point(|start| !start.reversed);
    for (from, to) in [(0, turn), (turn, starts.len())] {
        if from == to {
            continue;
        }
        let first = (from, look(contest, from));
        let last = if to - from > 1 { (to - 1, look(contest, to - 1)) } else { first };
        heap.push(stretch(first, last));
    }
    let mut spent = 0_u64;
    while let Some(Stretch { bound_m, from, to }) = heap.pop() {
        if bound_m > contest.least_m + EQUAL_SUMS_M + SWEEP_GRAIN_M {
            break;
        }
        if to.0 - from.0 <= 1 {
            continue;
        }
        if spent > budget.steps {
            return bound_m;
        }
        spent += budget.steps_each;
        let middle_m = f64::midpoint(starts[from.0].at_m, starts[to.0].at_m);
        let after = from.0 + starts[from.0..to.0].partition_point(|start| start.at_m < middle_m);
        let at = after.clamp(from.0 + 1, to.0 - 1);
        let here = (at, look(contest, at));
        heap.push(stretch(from, here));
        heap.push(stretch(here, to));
    }
    f64::INFINITY
}
