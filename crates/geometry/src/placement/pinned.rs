//! The search round pins: over start, direction and order as without them, but over those chains only that keep them.
//!
//! Where a start is pinned there is one to try. A pinned join takes the starts from which some order has a join there, a
//! pinned corner those from which some order has a post there. With kinds of net alone, the sum is piecewise linear in
//! the start between those at which a net's end passes a pin, so those are tried beside the ones at which a corner meets
//! a post. At each start the walk through the lattice counts those orders only that keep every pin: exact. As without
//! pins, starts are tried from the least bound up, and where the budget ends first the next bound is a proven one.
//!
//! A net lies at a place from its first post to its last, both counted: at a join either of the two may be the pinned
//! one. So the walk knows, besides the state, whether the next net has to be of a kind. Metres.
//!
//! The rooms: `starts` worth trying; pins as `seen` from a start; the walk over orders that keep them (`kept`); and `climb`,
//! where the orders are too many.

mod climb;
mod kept;
mod seen;
mod starts;

use super::chain::{Chosen, Lattice};
use super::narrow::{Budget, narrow};
use super::pins::{Pin, PinKind};
use super::search::{Corners, LEAST_STARTS, SWEEP_GRAIN_M, Start};
use super::table::Tables;
use super::tie::{Contest, Tried};
use super::{EQUAL_SUMS_M, PlacementRequest};
use seen::seen;
use starts::{Starts, starts};

/// What is pinned to a place stands this near to it, metres: room for the rounding of a start.
const NEAR_M: f64 = 1e-7;

/// The best start, direction and order that keep the pins; `None` where none was found that does.
pub(super) fn choose(request: &PlacementRequest<'_>, pins: &[Pin]) -> Option<Chosen> {
    let corners = Corners::of(request);
    let posts: Vec<&[f64]> = request.kinds.iter().map(crate::Net::posts_m).collect();
    let by_kind = pins.iter().any(|pin| matches!(pin.what, PinKind::Net { .. }));
    let affordable =
        |lattice: &Lattice<'_>| lattice.is_single() || lattice.steps() * LEAST_STARTS <= request.budget_steps;
    match Lattice::all_orders_told(corners.line, &posts, request.nets, by_kind).filter(affordable) {
        Some(lattice) => search(request, pins, &corners, &lattice, request.budget_steps),
        None => climb::climb(request, pins, &corners, &posts, by_kind),
    }
}

fn search(
    request: &PlacementRequest<'_>,
    pins: &[Pin],
    corners: &Corners,
    lattice: &Lattice<'_>,
    budget_steps: u64,
) -> Option<Chosen> {
    let Starts { list, mut bound_m, narrowed } = starts(request, pins, corners, lattice)?;
    let mut contest = Contest::new();
    let steps_each = lattice.steps() + corners.along_m.len() as u64;
    let enter = |contest: &mut Contest, start: Start| {
        let start_m = corners.tidy_m(start.at_m);
        let places_m = corners.in_chain_m(start_m, start.reversed);
        let misses = lattice.least_kept(&places_m, &seen(pins, lattice, start_m, start.reversed));
        if misses.sum_m.is_finite() {
            let feed_m = request.feed.map_or(0.0, |feed| request.outline.at(start_m).distance_m(feed));
            contest.enter(Tried { misses, feed_m, start_m, reversed: start.reversed });
        }
    };
    if narrowed {
        // What keeps the pins is no less than what need not, and that falls no faster than the start moves.
        let budget = Budget { steps_each: 2 * steps_each, steps: budget_steps };
        let mut tables = Tables::of(lattice, corners);
        let left_m = narrow(list, corners.along_m.len(), &budget, &mut contest, |contest, start| {
            let start_m = corners.tidy_m(start.at_m);
            let places_m = corners.in_chain_m(start_m, start.reversed);
            let least_m = match &mut tables {
                Some(tables) => tables.least_m(start_m, start.reversed, &places_m),
                None => lattice.least(&places_m, true).1,
            };
            if least_m <= contest.least_m + EQUAL_SUMS_M + SWEEP_GRAIN_M {
                enter(contest, start);
            }
            least_m
        });
        bound_m = bound_m.min(left_m);
    } else {
        let mut steps = 0;
        for start in list {
            if start.bound_m > contest.least_m + EQUAL_SUMS_M + SWEEP_GRAIN_M {
                break;
            }
            if !lattice.is_single() && steps > budget_steps {
                bound_m = bound_m.min(start.bound_m);
                break;
            }
            steps += steps_each;
            enter(&mut contest, start);
        }
    }
    let winner = contest.winner()?;
    let places_m = corners.in_chain_m(winner.start_m, winner.reversed);
    let order = lattice.kept_order(&places_m, &seen(pins, lattice, winner.start_m, winner.reversed));
    let sum_m = winner.misses.sum_m;
    let proven = bound_m - SWEEP_GRAIN_M >= sum_m - EQUAL_SUMS_M || sum_m <= EQUAL_SUMS_M;
    Some(Chosen {
        start_m: winner.start_m,
        reversed: winner.reversed,
        order,
        bound_m: (!proven).then(|| (bound_m - SWEEP_GRAIN_M).max(0.0)),
    })
}
