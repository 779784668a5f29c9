//! Where the orders are too many even for the lattice: climbs from the order as listed and from its rotations.
//!
//! In turn, the best start for the order at hand (exact), then every swap of two unlike nets that lessens the sum at that
//! start, until neither helps. What the best climb finds is good, not proven; its bound is the one that needs no proof, 0.

use super::chain::{Chosen, Lattice};
use super::search::{Corners, choose_start};
use super::tie::Tried;
use super::{EQUAL_SUMS_M, PlacementRequest};

/// The best placement found by swapping nets while the budget lasts; at least one climb is made.
pub(super) fn climb(request: &PlacementRequest<'_>, corners: &Corners, posts: &[&[f64]]) -> Chosen {
    let mut kinds = request.nets.to_vec();
    let mut left = request.budget_steps;
    let (mut best, mut order) = climb_once(request, corners, posts, kinds.clone(), &mut left);
    for _ in 1..kinds.len() {
        if left == 0 || best.misses.sum_m <= EQUAL_SUMS_M {
            break;
        }
        kinds.rotate_left(1);
        let (found, found_order) = climb_once(request, corners, posts, kinds.clone(), &mut left);
        if found.misses.sum_m < best.misses.sum_m - EQUAL_SUMS_M {
            (best, order) = (found, found_order);
        }
    }
    let proven = best.misses.sum_m <= EQUAL_SUMS_M;
    Chosen { start_m: best.start_m, reversed: best.reversed, order, bound_m: (!proven).then_some(0.0) }
}

fn climb_once(
    request: &PlacementRequest<'_>,
    corners: &Corners,
    posts: &[&[f64]],
    mut kinds: Vec<usize>,
    left: &mut u64,
) -> (Tried, Vec<usize>) {
    loop {
        let lattice = Lattice::as_listed(corners.line, posts, &kinds);
        *left = left.saturating_sub(corners.steps(lattice.post_count()));
        let (winner, order) = choose_start(request, corners, &lattice);
        let mut sum_m = winner.misses.sum_m;
        let places_m = corners.in_chain_m(winner.start_m, winner.reversed);
        let mut classes = lattice.listed_classes().to_vec();
        let mut swapped = false;
        for first in 0..kinds.len() {
            for second in first + 1..kinds.len() {
                if classes[first] == classes[second] || *left == 0 {
                    continue;
                }
                *left = left.saturating_sub(corners.steps(kinds.len()));
                classes.swap(first, second);
                let misses = lattice.walk(&classes, &places_m);
                if misses.sum_m < sum_m - EQUAL_SUMS_M && (misses.met || corners.free()) {
                    sum_m = misses.sum_m;
                    kinds.swap(first, second);
                    swapped = true;
                } else {
                    classes.swap(first, second);
                }
            }
        }
        if !swapped {
            return (winner, order);
        }
    }
}
