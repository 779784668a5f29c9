//! The search over start, direction and order.
//!
//! A start's sum over the posts of *all* orders together is a lower bound of its sum in any order. One sweep gives that
//! bound for every start at which a corner can meet a post; the starts are then tried from the least bound up until it
//! passes the best found. Each is tried over all orders at once ([`Lattice::least`]), and of unlike nets those are left
//! out between which no sum can fall low enough ([`super::narrow`]). So the result is exact, and where the budget ends
//! first, the least bound left is a proven lower bound of all.

use std::cmp::Ordering;

use super::chain::{Chosen, Lattice, Line};
use super::climb::climb;
use super::narrow::{Budget, narrow};
use super::sweep::sweep;
use super::table::Tables;
use super::tie::{Contest, Tried};
use super::{EQUAL_SUMS_M, FixedStart, PlacementRequest};

/// More starts than this are not held at once; those with the greatest bounds go.
pub(super) const MAX_STARTS: usize = 400_000;

/// More posts than this are not swept.
pub(super) const MAX_SWEPT_POSTS: usize = 1_000_000;

/// A lattice of which the budget does not pay this many walks is left for [`climb`].
pub(super) const LEAST_STARTS: u64 = 20;

/// Room for the rounding of a sweep, metres.
pub(super) const SWEEP_GRAIN_M: f64 = 1e-6;

/// A start not tried yet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Start {
    pub(super) bound_m: f64,
    pub(super) at_m: f64,
    pub(super) reversed: bool,
}

impl Eq for Start {}

impl Ord for Start {
    /// The least bound first.
    fn cmp(&self, other: &Start) -> Ordering {
        self.bound_m
            .total_cmp(&other.bound_m)
            .then(self.at_m.total_cmp(&other.at_m))
            .then(self.reversed.cmp(&other.reversed))
    }
}

impl PartialOrd for Start {
    fn partial_cmp(&self, other: &Start) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

/// The corners and how they look from a start.
pub(super) struct Corners {
    pub(super) line: Line,
    /// Places along the outline, ascending, metres.
    pub(super) along_m: Vec<f64>,
    /// All vertices: a start on one is written as its place.
    vertices_m: Vec<f64>,
}

impl Corners {
    pub(super) fn of(request: &PlacementRequest<'_>) -> Corners {
        let outline = request.outline;
        Corners {
            line: Line { length_m: outline.length_m(), closed: outline.is_closed() },
            along_m: outline.corners().map(|(_, corner)| corner.along_m).collect(),
            vertices_m: outline.vertices().iter().map(|vertex| vertex.along_m).collect(),
        }
    }

    /// Whether the start stands by itself: the ends of an open line, and a line without corners.
    pub(super) fn free(&self) -> bool {
        !self.line.closed || self.along_m.is_empty()
    }

    /// Work of measuring one start of `nets` nets, in steps.
    pub(super) fn steps(&self, nets: usize) -> u64 {
        (self.along_m.len() + nets) as u64
    }

    /// Tries a start over all orders of a lattice; the least sum there, whether or not a corner meets a post.
    fn enter(&self, request: &PlacementRequest<'_>, contest: &mut Contest, lattice: &Lattice<'_>, start: Start) -> f64 {
        let start_m = self.tidy_m(start.at_m);
        let (misses, any_m) = lattice.least(&self.in_chain_m(start_m, start.reversed), self.free());
        if misses.sum_m.is_finite() {
            let feed_m = request.feed.map_or(0.0, |feed| request.outline.at(start_m).distance_m(feed));
            contest.enter(Tried { misses, feed_m, start_m, reversed: start.reversed });
        }
        any_m
    }

    /// Distances from the chain's start in its direction, ascending.
    pub(super) fn in_chain_m(&self, start_m: f64, reversed: bool) -> Vec<f64> {
        let Line { length_m, closed } = self.line;
        let mut chain_m: Vec<f64> = self
            .along_m
            .iter()
            .map(|&along_m| super::lay::chain_m(length_m, closed, start_m, reversed, along_m))
            .collect();
        chain_m.sort_unstable_by(f64::total_cmp);
        chain_m
    }

    /// Places on the ring in the direction of the chain.
    pub(super) fn on_ring_m(&self, reversed: bool) -> Vec<f64> {
        let length_m = self.line.length_m;
        let turned = |along_m: f64| if along_m > 0.0 { length_m - along_m } else { 0.0 };
        self.along_m.iter().map(|&along_m| if reversed { turned(along_m) } else { along_m }).collect()
    }

    /// A start within a nanometre of a vertex is that vertex.
    pub(super) fn tidy_m(&self, start_m: f64) -> f64 {
        let start_m = super::lay::wrap_m(self.line.length_m, self.line.closed, start_m);
        let after = self.vertices_m.partition_point(|&vertex_m| vertex_m < start_m);
        self.vertices_m[after.saturating_sub(1)..(after + 1).min(self.vertices_m.len())]
            .iter()
            .copied()
            .find(|vertex_m| (vertex_m - start_m).abs() < crate::SAME_PLACE_M)
            .unwrap_or(start_m)
    }
}

/// The order, start and direction as the keeper fixed them.
pub(super) fn fixed(request: &PlacementRequest<'_>, fixed: FixedStart) -> Chosen {
    Chosen {
        start_m: request.outline.wrap_m(fixed.start_m),
        reversed: fixed.reversed,
        order: request.nets.to_vec(),
        bound_m: None,
    }
}

/// The best start, direction and order.
pub(super) fn choose(request: &PlacementRequest<'_>) -> Chosen {
    let corners = Corners::of(request);
    let posts: Vec<&[f64]> = request.kinds.iter().map(crate::Net::posts_m).collect();
    let affordable =
        |lattice: &Lattice<'_>| lattice.is_single() || lattice.steps() * LEAST_STARTS <= request.budget_steps;
    let Some(lattice) = Lattice::all_orders(corners.line, &posts, request.nets).filter(affordable) else {
        return climb(request, &corners, &posts);
    };
    let exact = lattice.is_single();
    let mut contest = Contest::new();
    let starts = starts(request, &corners, &lattice, exact);
    if starts.thinned {
        // The best start of the listed order first, so that whatever is left out, this is not missed.
        let listed = Lattice::as_listed(corners.line, &posts, request.nets);
        let (Tried { start_m, reversed, .. }, _) = choose_start(request, &corners, &listed);
        corners.enter(request, &mut contest, &lattice, Start { bound_m: 0.0, at_m: start_m, reversed });
    }
    let steps_each = lattice.steps() + corners.along_m.len() as u64;
    let mut bound_m = starts.dropped_m;
    if exact || starts.thinned || corners.free() {
        let mut steps = 0;
        for start in starts.list {
            if start.bound_m > contest.least_m + EQUAL_SUMS_M + SWEEP_GRAIN_M {
                continue;
            }
            if !exact && steps > request.budget_steps {
                bound_m = bound_m.min(start.bound_m);
                break;
            }
            steps += steps_each;
            corners.enter(request, &mut contest, &lattice, start);
        }
    } else {
        let budget = Budget { steps_each, steps: request.budget_steps };
        let mut tables = Tables::of(&lattice, &corners);
        let left_m = narrow(starts.list, corners.along_m.len(), &budget, &mut contest, |contest, start| {
            // A start is measured corner by corner only where its sum may be the best.
            if let Some(tables) = &mut tables {
                let start_m = corners.tidy_m(start.at_m);
                let least_m = tables.least_m(start_m, start.reversed, &corners.in_chain_m(start_m, start.reversed));
                if least_m > contest.least_m + EQUAL_SUMS_M + SWEEP_GRAIN_M {
                    return least_m;
                }
            }
            corners.enter(request, contest, &lattice, start)
        });
        bound_m = bound_m.min(left_m);
    }
    let winner = contest.winner().expect("a start at which a corner meets a post was tried");
    let order = lattice.best_order(&corners.in_chain_m(winner.start_m, winner.reversed), corners.free());
    let sum_m = winner.misses.sum_m;
    let proven = bound_m - SWEEP_GRAIN_M >= sum_m - EQUAL_SUMS_M || sum_m <= EQUAL_SUMS_M;
    Chosen {
        start_m: winner.start_m,
        reversed: winner.reversed,
        order,
        bound_m: (!proven).then(|| (bound_m - SWEEP_GRAIN_M).max(0.0)),
    }
}

/// The best start and direction of the one order of a lattice, and its kinds.
pub(super) fn choose_start(
    request: &PlacementRequest<'_>,
    corners: &Corners,
    lattice: &Lattice<'_>,
) -> (Tried, Vec<usize>) {
    let mut contest = Contest::new();
    for start in starts(request, corners, lattice, true).list {
        if start.bound_m > contest.least_m + EQUAL_SUMS_M + SWEEP_GRAIN_M {
            continue;
        }
        corners.enter(request, &mut contest, lattice, start);
    }
    let winner = contest.winner().expect("a start at which a corner meets a post was tried");
    let order = lattice.best_order(&corners.in_chain_m(winner.start_m, winner.reversed), corners.free());
    (winner, order)
}

/// Starts worth trying, in any order.
struct Starts {
    list: Vec<Start>,
    /// No start left out has a smaller bound.
    dropped_m: f64,
    /// Whether only some of the starts are here, without bounds.
    thinned: bool,
}

fn starts(request: &PlacementRequest<'_>, corners: &Corners, lattice: &Lattice<'_>, exact: bool) -> Starts {
    let given = |starts: Vec<Start>| Starts { list: starts, dropped_m: f64::INFINITY, thinned: false };
    let ring_m = corners.line.length_m;
    if !corners.line.closed {
        return given(vec![
            Start { bound_m: 0.0, at_m: 0.0, reversed: false },
            Start { bound_m: 0.0, at_m: ring_m, reversed: true },
        ]);
    }
    if corners.along_m.is_empty() {
        let start_m = request.feed.map_or(0.0, |feed| request.outline.nearest_along(feed).0);
        return given(vec![Start { bound_m: 0.0, at_m: start_m, reversed: false }]);
    }
    if lattice.post_count() > MAX_SWEPT_POSTS {
        return thinned(request, corners, lattice, Vec::new());
    }
    let mut posts_m = lattice.posts_m();
    posts_m.retain(|&post_m| post_m < ring_m - crate::SAME_PLACE_M);
    let steps = 2 * corners.along_m.len() as u64 * posts_m.len() as u64;
    if !exact && steps > request.budget_steps {
        return thinned(request, corners, lattice, posts_m);
    }

    let mut held: Vec<Start> = Vec::new();
    let mut least_m = f64::INFINITY;
    let mut dropped_m = f64::INFINITY;
    // With one order the sweep gives the sum itself, and only starts near the least one matter.
    let margin_m = if exact { EQUAL_SUMS_M + SWEEP_GRAIN_M } else { f64::INFINITY };
    for reversed in [false, true] {
        sweep(&corners.on_ring_m(reversed), &posts_m, ring_m, |at_m, bound_m| {
            least_m = least_m.min(bound_m);
            if bound_m > least_m + margin_m {
                return;
            }
            let start_m = if reversed { ring_m - at_m } else { at_m };
            held.push(Start { bound_m, at_m: start_m, reversed });
            if held.len() >= 2 * MAX_STARTS {
                held.retain(|start| start.bound_m <= least_m + margin_m);
                if held.len() > MAX_STARTS {
                    held.select_nth_unstable(MAX_STARTS);
                    dropped_m = held[MAX_STARTS..].iter().map(|start| start.bound_m).fold(dropped_m, f64::min);
                    held.truncate(MAX_STARTS);
                }
            }
        });
    }
    if exact {
        held.retain(|start| start.bound_m <= least_m + margin_m);
    }
    Starts { list: held, dropped_m, thinned: false }
}

/// Too many starts to bound: as many as the budget allows, evenly taken, with the bound that needs no proof.
fn thinned(request: &PlacementRequest<'_>, corners: &Corners, lattice: &Lattice<'_>, posts_m: Vec<f64>) -> Starts {
    let ring_m = corners.line.length_m;
    let each = lattice.steps() + corners.along_m.len() as u64;
    let wanted = (request.budget_steps / each.max(1)).clamp(2, MAX_STARTS as u64) as usize;
    let mut held = Vec::with_capacity(wanted);
    for index in 0..wanted / 2 {
        let share = index as f64 / (wanted / 2) as f64;
        let corner_m = corners.along_m[index % corners.along_m.len()];
        let post_m = if posts_m.is_empty() { ring_m * share } else { posts_m[(share * posts_m.len() as f64) as usize] };
        for reversed in [false, true] {
            let start_m = if reversed { corner_m + post_m } else { corner_m - post_m };
            held.push(Start { bound_m: 0.0, at_m: start_m, reversed });
        }
    }
    Starts { list: held, dropped_m: 0.0, thinned: true }
}
