//! Orders too many to try: the best that is found by climbing.

use super::search;
use super::seen::seen;
use crate::placement::chain::{Chosen, Lattice};
use crate::placement::pins::Pin;
use crate::placement::search::Corners;
use crate::placement::{EQUAL_SUMS_M, PlacementRequest};

/// Orders that are climbed from where the lattice is too large.
const MOST_CLIMBS: usize = 8;

/// Where the orders are too many: from the order as listed and from some of its rotations, the best start, then swaps of
/// two nets that lessen the sum there. Good, not proven: its bound is 0.
pub(super) fn climb(
    request: &PlacementRequest<'_>,
    pins: &[Pin],
    corners: &Corners,
    posts: &[&[f64]],
    by_kind: bool,
) -> Option<Chosen> {
    let mut best: Option<(f64, Chosen)> = None;
    let count = request.nets.len();
    let mut left = request.budget_steps;
    for rotation in (0..count).step_by(count.div_ceil(MOST_CLIMBS)) {
        let mut nets = request.nets.to_vec();
        nets.rotate_left(rotation);
        let listed = Lattice::as_listed_told(corners.line, posts, &nets, by_kind);
        let Some(chosen) = search(request, pins, corners, &listed, request.budget_steps) else { continue };
        let places_m = corners.in_chain_m(chosen.start_m, chosen.reversed);
        let ways = seen(pins, &listed, chosen.start_m, chosen.reversed);
        let sum_of = |classes: &[usize]| {
            let sums_m = ways.iter().map(|seen| listed.walk_kept(classes, &places_m, seen).sum_m);
            sums_m.fold(f64::INFINITY, f64::min)
        };
        let mut classes = listed.listed.clone();
        let mut sum_m = sum_of(&classes);
        'swaps: for first in 0..count {
            for second in first + 1..count {
                if left == 0 {
                    break 'swaps;
                }
                if classes[first] == classes[second] {
                    continue;
                }
                left = left.saturating_sub(corners.steps(count));
                classes.swap(first, second);
                let swapped_m = sum_of(&classes);
                if swapped_m < sum_m - EQUAL_SUMS_M {
                    sum_m = swapped_m;
                } else {
                    classes.swap(first, second);
                }
            }
        }
        if best.as_ref().is_none_or(|(least_m, _)| sum_m < least_m - EQUAL_SUMS_M) {
            let order = listed.name_kinds(&classes);
            let bound_m = (sum_m > EQUAL_SUMS_M).then_some(0.0);
            best = Some((sum_m, Chosen { order, bound_m, ..chosen }));
        }
    }
    best.map(|(_, chosen)| chosen)
}
