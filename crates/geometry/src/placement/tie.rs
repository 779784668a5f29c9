//! Which of equal starts is taken: least sum, then least largest miss, then nearest the feed, then the smaller along,
//! then forward. Figures nearer than [`EQUAL_SUMS_M`] are equal. Model: docs/model.md, "Placement".

use super::EQUAL_SUMS_M;
use super::chain::Misses;

/// Starts held before those that have lost are let go.
const HELD: usize = 4096;

/// A start that was tried.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Tried {
    /// Its misses in the best order.
    pub(super) misses: Misses,
    /// Straight distance from the feed point, metres; 0 without one.
    pub(super) feed_m: f64,
    /// Start along the outline, metres.
    pub(super) start_m: f64,
    /// Against the outline.
    pub(super) reversed: bool,
}

/// The starts that may still win.
#[derive(Debug)]
pub(super) struct Contest {
    held: Vec<Tried>,
    /// The least sum so far, metres.
    pub(super) least_m: f64,
}

impl Contest {
    pub(super) fn new() -> Contest {
        Contest { held: Vec::new(), least_m: f64::INFINITY }
    }

    /// Enters a start.
    pub(super) fn enter(&mut self, tried: Tried) {
        self.least_m = self.least_m.min(tried.misses.sum_m);
        if tried.misses.sum_m > self.least_m + EQUAL_SUMS_M {
            return;
        }
        self.held.push(tried);
        if self.held.len() > HELD {
            self.held = self.winner().into_iter().collect();
        }
    }

    /// The start that wins among those entered.
    pub(super) fn winner(&self) -> Option<Tried> {
        let mut left = self.held.clone();
        for key in [
            |tried: &Tried| tried.misses.sum_m,
            |tried: &Tried| tried.misses.largest_m,
            |tried: &Tried| tried.feed_m,
            |tried: &Tried| tried.start_m,
        ] {
            let least = left.iter().map(key).fold(f64::INFINITY, f64::min);
            left.retain(|tried| key(tried) <= least + EQUAL_SUMS_M);
        }
        left.iter().find(|tried| !tried.reversed).or(left.first()).copied()
    }
}
