//! How far corners miss the posts, and what that comes to along a chain.

use super::{Lattice, Line};
use crate::placement::MEET_M;

/// A corner this near to a post meets it, metres: room for the rounding of a start.
const MEETS_M: f64 = 1e-8;

/// Partial sums nearer than this are equal while walking the lattice, metres; far below the tie rule's 1e-6.
const SAME_SUM_M: f64 = 1e-9;

/// Sum and largest of some misses, metres.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(in crate::placement) struct Misses {
    /// Their sum.
    pub(in crate::placement) sum_m: f64,
    /// The largest of them.
    pub(in crate::placement) largest_m: f64,
    /// Whether one of the corners meets a post.
    pub(in crate::placement) met: bool,
}

impl Misses {
    pub(in crate::placement) const NEVER: Misses =
        Misses { sum_m: f64::INFINITY, largest_m: f64::INFINITY, met: false };

    fn add(&mut self, miss_m: f64) {
        self.sum_m += miss_m;
        self.largest_m = self.largest_m.max(miss_m);
        self.met |= miss_m <= MEETS_M;
    }

    pub(in crate::placement) fn and(self, other: Misses) -> Misses {
        Misses {
            sum_m: self.sum_m + other.sum_m,
            largest_m: self.largest_m.max(other.largest_m),
            met: self.met || other.met,
        }
    }

    pub(in crate::placement) fn better_than(self, other: Misses) -> bool {
        if (self.sum_m - other.sum_m).abs() > SAME_SUM_M {
            return self.sum_m < other.sum_m;
        }
        self.largest_m < other.largest_m
    }
}

impl Lattice<'_> {
    /// Misses of all corners from the posts of one whole chain.
    pub(in crate::placement) fn misses_from(&self, posts_m: &[f64], corners_m: &[f64]) -> Misses {
        let mut misses = Misses::default();
        for &corner_m in corners_m {
            let after = self.first_at(posts_m, corner_m);
            // Round a closed line the first post follows the last.
            let mut miss_m = if self.line.closed { self.line.length_m - corner_m } else { f64::INFINITY };
            for post_m in &posts_m[after.saturating_sub(1)..(after + 1).min(posts_m.len())] {
                miss_m = miss_m.min((post_m - corner_m).abs());
            }
            misses.add(miss_m);
        }
        misses
    }

    /// The number of posts before a place. Posts stand nearly evenly, so it is sought from where it would be were they
    /// even, in strides that double: in a few steps, whatever their number.
    fn first_at(&self, posts_m: &[f64], place_m: f64) -> usize {
        let even = place_m / self.line.length_m * posts_m.len() as f64;
        let guess = (even.max(0.0) as usize).min(posts_m.len());
        let before = |index: usize| posts_m[index] < place_m;
        let (mut low, mut high, mut stride) = (guess, guess, 1);
        while low > 0 && !before(low - 1) {
            high = low - 1;
            low = low.saturating_sub(stride);
            stride *= 2;
        }
        stride = 1;
        while high < posts_m.len() && before(high) {
            low = high + 1;
            high = (high + stride).min(posts_m.len());
            stride *= 2;
        }
        low + posts_m[low..high].partition_point(|&post_m| post_m < place_m)
    }

    /// Misses of the corners under a net from `at_m` to `end_m` in the chain.
    ///
    /// The end is the next net's start to the last bit, so that every corner lies under just one net.
    pub(in crate::placement) fn net_cost(&self, class: usize, at_m: f64, end_m: f64, corners_m: &[f64]) -> Misses {
        let posts_m = self.classes[class];
        let Line { length_m: line_m, closed } = self.line;
        let cut = end_m > line_m + MEET_M;
        let on_line = if cut {
            &posts_m[..posts_m.partition_point(|offset_m| at_m + offset_m <= line_m + MEET_M)]
        } else {
            posts_m
        };
        let mut misses = Misses::default();
        let first = corners_m.partition_point(|&corner_m| corner_m < at_m);
        for &corner_m in corners_m[first..].iter().take_while(|&&corner_m| corner_m < end_m) {
            let after = on_line.partition_point(|offset_m| at_m + offset_m < corner_m);
            let mut miss_m = f64::INFINITY;
            for offset_m in &on_line[after.saturating_sub(1)..(after + 1).min(on_line.len())] {
                miss_m = miss_m.min(((at_m + offset_m).min(line_m) - corner_m).abs());
            }
            if cut && closed {
                // Behind the last post on the line the chain's first one may be nearer.
                miss_m = miss_m.min(line_m - corner_m);
            }
            misses.add(miss_m);
        }
        misses
    }

    /// Misses of the corners beyond the last net, which ends `at_m` in the chain.
    pub(in crate::placement) fn tail_cost(&self, at_m: f64, corners_m: &[f64]) -> Misses {
        let Line { length_m: line_m, closed } = self.line;
        let mut misses = Misses::default();
        let first = corners_m.partition_point(|&corner_m| corner_m < at_m);
        for &corner_m in &corners_m[first..] {
            let behind_m = corner_m - at_m;
            misses.add(if closed { behind_m.min(line_m - corner_m) } else { behind_m });
        }
        misses
    }
}
