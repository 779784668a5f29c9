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

use super::chain::{Chosen, Lattice, Line, Misses, Move, length_m};
use super::narrow::{Budget, narrow};
use super::pins::{Pin, PinKind};
use super::search::{Corners, LEAST_STARTS, MAX_STARTS, MAX_SWEPT_POSTS, SWEEP_GRAIN_M, Start};
use super::sweep::sweep;
use super::table::Tables;
use super::tie::{Contest, Tried};
use super::{EQUAL_SUMS_M, MEET_M, PlacementRequest};

/// What is pinned to a place stands this near to it, metres: room for the rounding of a start.
const NEAR_M: f64 = 1e-7;

/// Orders that are climbed from where the lattice is too large.
const MOST_CLIMBS: usize = 8;

/// The pins as a chain sees them from its start: places in its direction, metres.
#[derive(Debug, Clone, Default)]
struct Seen {
    joins_m: Vec<f64>,
    posts_m: Vec<f64>,
    /// Places and classes of nets.
    nets: Vec<(f64, usize)>,
    /// The class that the first net has to be of.
    first: Option<usize>,
}

/// The class that the next net has to be of, if any.
struct Next(Option<usize>);

/// The best start, direction and order that keep the pins; `None` where none was found that does.
pub(super) fn choose(request: &PlacementRequest<'_>, pins: &[Pin]) -> Option<Chosen> {
    let corners = Corners::of(request);
    let posts: Vec<&[f64]> = request.kinds.iter().map(crate::Net::posts_m).collect();
    let by_kind = pins.iter().any(|pin| matches!(pin.what, PinKind::Net { .. }));
    let affordable =
        |lattice: &Lattice<'_>| lattice.is_single() || lattice.steps() * LEAST_STARTS <= request.budget_steps;
    match Lattice::all_orders_told(corners.line, &posts, request.nets, by_kind).filter(affordable) {
        Some(lattice) => search(request, pins, &corners, &lattice, request.budget_steps),
        None => climb(request, pins, &corners, &posts, by_kind),
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

/// The starts worth trying.
struct Starts {
    /// The least bound first, but where they are narrowed down.
    list: Vec<Start>,
    /// No start left out has a smaller bound.
    bound_m: f64,
    /// Whether they are all at which a corner meets a post, of unlike nets, and can be narrowed down.
    narrowed: bool,
}

impl Starts {
    fn few(places: impl IntoIterator<Item = (f64, bool)>) -> Self {
        let start = |(at_m, reversed)| Start { bound_m: 0.0, at_m, reversed };
        Self { list: places.into_iter().map(start).collect(), bound_m: f64::INFINITY, narrowed: false }
    }
}

/// Every start worth trying; `None` where two starts are pinned.
fn starts(request: &PlacementRequest<'_>, pins: &[Pin], corners: &Corners, lattice: &Lattice<'_>) -> Option<Starts> {
    let Line { length_m: line_m, closed } = corners.line;
    let places = |is_it: fn(&PinKind) -> bool| -> Vec<f64> {
        pins.iter().filter(|pin| is_it(&pin.what)).map(|pin| pin.along_m).collect()
    };
    let starts_m = places(|what| matches!(what, PinKind::Start));
    if !closed {
        let ends = [(0.0, false), (line_m, true)];
        let nearer = |reversed: bool| {
            starts_m.iter().all(|&start_m| {
                let from_m = if reversed { line_m - start_m } else { start_m };
                from_m <= line_m / 2.0 + NEAR_M
            })
        };
        return Some(Starts::few(ends.into_iter().filter(|end| nearer(end.1))));
    }
    let wrap_m = |along_m: f64| super::lay::wrap_m(line_m, true, along_m);
    if let Some(&first_m) = starts_m.first() {
        let apart_m = |start_m: f64| {
            let apart_m = (wrap_m(start_m) - wrap_m(first_m)).abs();
            apart_m.min(line_m - apart_m)
        };
        if starts_m.iter().any(|&start_m| apart_m(start_m) > NEAR_M) {
            return None;
        }
        let start_m = wrap_m(first_m);
        return Some(Starts::few([(start_m, false), (start_m, true)]));
    }
    // Where the posts of all orders are too many to be held, no start has a bound.
    let posts_m = if lattice.post_count() > MAX_SWEPT_POSTS { None } else { Some(lattice.posts_m()) };
    let ends_m = lattice.ends_m();
    let mut found: Vec<(f64, bool, Option<f64>)> = Vec::new();
    let mut dense = false;
    let mut from = |along_m: f64, chain_m: &[f64]| {
        for &at_m in chain_m {
            found.extend([(wrap_m(along_m - at_m), false, None), (wrap_m(along_m + at_m), true, None)]);
        }
    };
    let (joins_m, at_posts_m) = (places(|what| *what == PinKind::Join), places(|what| *what == PinKind::Post));
    if let Some(&join_m) = joins_m.first() {
        from(join_m, &ends_m);
    } else if let (Some(&post_m), Some(posts_m)) = (at_posts_m.first(), &posts_m) {
        from(post_m, posts_m);
    } else {
        for net_m in places(|what| matches!(what, PinKind::Net { .. })) {
            from(net_m, &ends_m);
        }
        for post_m in at_posts_m {
            from(post_m, &ends_m);
        }
        if corners.along_m.is_empty() {
            found.push((request.feed.map_or(0.0, |feed| request.outline.nearest_along(feed).0), false, None));
        } else if let Some(posts_m) = &posts_m {
            dense = true;
            let ring_posts_m: Vec<f64> =
                posts_m.iter().copied().filter(|&post_m| post_m < line_m - crate::SAME_PLACE_M).collect();
            for reversed in [false, true] {
                sweep(&corners.on_ring_m(reversed), &ring_posts_m, line_m, |at_m, bound_m| {
                    found.push((wrap_m(if reversed { line_m - at_m } else { at_m }), reversed, Some(bound_m)));
                });
            }
        }
    }
    found.sort_unstable_by(|a, b| a.1.cmp(&b.1).then(a.0.total_cmp(&b.0)));
    found.dedup_by(|later, earlier| later.1 == earlier.1 && later.0 - earlier.0 < crate::SAME_PLACE_M);
    let bound_m = |start_m: f64, reversed: bool| match &posts_m {
        Some(posts_m) => lattice.misses_from(posts_m, &corners.in_chain_m(start_m, reversed)).sum_m,
        None => 0.0,
    };
    let mut list: Vec<Start> = found
        .into_iter()
        .map(|(at_m, reversed, known_m)| {
            let bound_m = known_m.unwrap_or_else(|| bound_m(at_m, reversed));
            Start { bound_m, at_m, reversed }
        })
        .collect();
    let narrowed = dense && !lattice.is_single();
    if !narrowed || list.len() > MAX_STARTS {
        list.sort_unstable();
    }
    let mut left_out_m = if posts_m.is_none() { 0.0 } else { f64::INFINITY };
    if list.len() > MAX_STARTS {
        left_out_m = list[MAX_STARTS].bound_m.min(left_out_m);
        list.truncate(MAX_STARTS);
    }
    Some(Starts { list, bound_m: left_out_m, narrowed })
}

/// The pins in the chain's direction from a start; one of a net at the start itself comes as all ways to keep it.
fn seen(pins: &[Pin], lattice: &Lattice<'_>, start_m: f64, reversed: bool) -> Vec<Seen> {
    let Line { length_m: line_m, closed } = lattice.line;
    let mut seen = Seen::default();
    let mut at_start: Vec<usize> = Vec::new();
    let class = |kind: usize| lattice.kinds.iter().position(|kinds| kinds.contains(&kind)).unwrap_or(usize::MAX);
    for pin in pins {
        let mut place_m = super::lay::chain_m(line_m, closed, start_m, reversed, pin.along_m);
        if closed && line_m - place_m < NEAR_M {
            place_m = 0.0;
        }
        match pin.what {
            PinKind::Start => {}
            PinKind::Join => seen.joins_m.push(place_m),
            PinKind::Post => seen.posts_m.push(place_m),
            PinKind::Net { kind } if place_m <= NEAR_M => at_start.push(class(kind)),
            PinKind::Net { kind } => seen.nets.push((place_m, class(kind))),
        }
    }
    at_start.sort_unstable();
    at_start.dedup();
    let closing_m = lattice.covered_m() - 10.0 * NEAR_M;
    let first = |class: usize| Seen { first: Some(class), ..seen.clone() };
    let last = |of: &Seen, class: usize| {
        let mut of = of.clone();
        of.nets.push((closing_m, class));
        of
    };
    match at_start[..] {
        [] => vec![seen],
        [class] if lattice.is_ring() => vec![first(class), last(&seen, class)],
        [class] => vec![first(class)],
        [one, other] if lattice.is_ring() => vec![last(&first(one), other), last(&first(other), one)],
        _ => Vec::new(),
    }
}

impl Lattice<'_> {
    /// Length of all nets together, metres.
    fn chain_m(&self) -> f64 {
        self.listed.iter().map(|&class| length_m(self.classes[class])).sum()
    }

    fn is_ring(&self) -> bool {
        self.line.closed && self.chain_m() > self.line.length_m - MEET_M
    }

    /// How far the nets cover the line, metres.
    fn covered_m(&self) -> f64 {
        self.chain_m().min(self.line.length_m)
    }

    /// Every place in the chain where a net ends in some order and another may begin, ascending, metres; 0 among them.
    fn ends_m(&self) -> Vec<f64> {
        let mut ends_m: Vec<f64> =
            self.states.iter().map(|state| state.at_m).filter(|&at_m| at_m <= self.line.length_m).collect();
        ends_m.push(self.covered_m());
        ends_m.sort_unstable_by(f64::total_cmp);
        ends_m.dedup_by(|later, earlier| *later - *earlier < crate::SAME_PLACE_M);
        ends_m
    }

    /// The least misses over all orders that keep what is seen, in one of its ways.
    fn least_kept(&self, corners_m: &[f64], ways: &[Seen]) -> Misses {
        let mut best = Misses::NEVER;
        for seen in ways.iter().filter(|seen| self.can_close(seen)) {
            let any = self.to_go(corners_m, seen);
            let found = self.least_from(0, seen.first, &any, corners_m, seen);
            if found.better_than(best) {
                best = found;
            }
        }
        best
    }

    /// Kinds in the order that reaches [`Lattice::least_kept`]: as listed where that does.
    fn kept_order(&self, corners_m: &[f64], ways: &[Seen]) -> Vec<usize> {
        let goal = self.least_kept(corners_m, ways);
        let reaches = |misses: Misses| {
            misses.sum_m <= goal.sum_m + EQUAL_SUMS_M && misses.largest_m <= goal.largest_m + EQUAL_SUMS_M
        };
        if ways.iter().any(|seen| self.can_close(seen) && reaches(self.walk_kept(&self.listed, corners_m, seen))) {
            return self.name_kinds(&self.listed);
        }
        for seen in ways.iter().filter(|seen| self.can_close(seen)) {
            let any = self.to_go(corners_m, seen);
            if !reaches(self.least_from(0, seen.first, &any, corners_m, seen)) {
                continue;
            }
            let (mut state, mut need, mut behind) = (0, seen.first, Misses::default());
            let mut order = Vec::with_capacity(self.listed.len());
            loop {
                let mut nearest: Option<(Misses, Move, Misses, Option<usize>)> = None;
                for (step, cost, next) in self.ways_on(state, need, corners_m, seen) {
                    let cost = behind.and(cost);
                    let total = cost.and(self.least_from(step.to, next, &any, corners_m, seen));
                    if nearest.as_ref().is_none_or(|(sum, ..)| total.sum_m < sum.sum_m && !reaches(*sum)) {
                        nearest = Some((total, step, cost, next));
                    }
                }
                let Some((_, step, cost, next)) = nearest else { break };
                order.push(step.class);
                (state, need, behind) = (step.to, next, cost);
            }
            return self.name_kinds(&order);
        }
        self.name_kinds(&self.listed)
    }

    /// Whether the chain's start may be what is pinned there: a join where a ring closes.
    fn can_close(&self, seen: &Seen) -> bool {
        self.is_ring() || seen.joins_m.iter().all(|&join_m| join_m > NEAR_M)
    }

    /// The least misses from each state on, where the next net may be any.
    fn to_go(&self, corners_m: &[f64], seen: &Seen) -> Vec<Misses> {
        let mut any = vec![Misses::NEVER; self.states.len()];
        for state in (0..self.states.len()).rev() {
            any[state] = self.best_of(state, None, &any, corners_m, seen);
        }
        any
    }

    fn least_from(&self, state: usize, need: Option<usize>, any: &[Misses], corners_m: &[f64], seen: &Seen) -> Misses {
        match need {
            None => any[state],
            Some(_) => self.best_of(state, need, any, corners_m, seen),
        }
    }

    fn best_of(&self, state: usize, need: Option<usize>, any: &[Misses], corners_m: &[f64], seen: &Seen) -> Misses {
        let here = self.states[state];
        if here.first_move == here.end_move {
            return if need.is_none() { self.tail_kept(here.at_m, corners_m, seen) } else { Misses::NEVER };
        }
        let mut best = Misses::NEVER;
        for (step, cost, next) in self.ways_on(state, need, corners_m, seen) {
            let total = cost.and(self.least_from(step.to, next, any, corners_m, seen));
            if total.better_than(best) {
                best = total;
            }
        }
        best
    }

    /// The moves from a state that keep the pins under their net, their cost, and what the net after has to be.
    fn ways_on<'b>(
        &'b self,
        state: usize,
        need: Option<usize>,
        corners_m: &'b [f64],
        seen: &'b Seen,
    ) -> impl Iterator<Item = (Move, Misses, Option<usize>)> + 'b {
        let here = self.states[state];
        self.moves[here.first_move..here.end_move]
            .iter()
            .filter(move |step| need.is_none_or(|class| class == step.class))
            .filter_map(move |&step| {
                let end_m = self.states[step.to].at_m;
                let Next(next) = self.keeps(step.class, here.at_m, end_m, seen)?;
                Some((step, self.net_cost(step.class, here.at_m, end_m, corners_m), next))
            })
    }

    /// Whether a net from `at_m` to `end_m` keeps the pins under it: `None` where not, else the class that the next one
    /// has to be of.
    fn keeps(&self, class: usize, at_m: f64, end_m: f64, seen: &Seen) -> Option<Next> {
        let Line { length_m: line_m, closed } = self.line;
        let within = |place_m: f64| place_m > at_m + NEAR_M && place_m < end_m - NEAR_M;
        if seen.joins_m.iter().any(|&join_m| within(join_m))
            || seen.nets.iter().any(|&(place_m, of)| of != class && within(place_m))
        {
            return None;
        }
        let has_post = |place_m: f64| {
            let posts_m = self.classes[class];
            let after = posts_m.partition_point(|offset_m| at_m + offset_m < place_m);
            let near = posts_m[after.saturating_sub(1)..(after + 1).min(posts_m.len())].iter().any(|offset_m| {
                let post_m = at_m + offset_m;
                post_m <= line_m + MEET_M && (post_m.min(line_m) - place_m).abs() <= NEAR_M
            });
            near || (closed && line_m - place_m <= NEAR_M)
        };
        if seen.posts_m.iter().any(|&post_m| within(post_m) && !has_post(post_m)) {
            return None;
        }
        let mut next = None;
        let at_end = seen.nets.iter().filter(|(place_m, of)| (place_m - end_m).abs() <= NEAR_M && *of != class);
        for &(_, of) in at_end {
            if next.is_some_and(|known| known != of) {
                return None;
            }
            next = Some(of);
        }
        Some(Next(next))
    }

    /// Misses beyond the last net; nothing is pinned there.
    fn tail_kept(&self, at_m: f64, corners_m: &[f64], seen: &Seen) -> Misses {
        let beyond = |place_m: f64| place_m > at_m + NEAR_M;
        let broken = seen.joins_m.iter().any(|&join_m| join_m >= at_m - NEAR_M)
            || seen.posts_m.iter().any(|&post_m| beyond(post_m))
            || seen.nets.iter().any(|&(place_m, _)| beyond(place_m));
        if broken { Misses::NEVER } else { self.tail_cost(at_m, corners_m) }
    }

    /// Misses of one order, given as classes, where it keeps the pins.
    fn walk_kept(&self, order: &[usize], corners_m: &[f64], seen: &Seen) -> Misses {
        let mut misses = Misses::default();
        let (mut at_m, mut need) = (0.0, seen.first);
        for (index, &class) in order.iter().enumerate() {
            if index > 0 && at_m >= self.line.length_m - MEET_M {
                break;
            }
            if need.is_some_and(|need| need != class) {
                return Misses::NEVER;
            }
            let end_m = at_m + length_m(self.classes[class]);
            let Some(Next(next)) = self.keeps(class, at_m, end_m, seen) else { return Misses::NEVER };
            misses = misses.and(self.net_cost(class, at_m, end_m, corners_m));
            (at_m, need) = (end_m, next);
        }
        if need.is_some() { Misses::NEVER } else { misses.and(self.tail_kept(at_m, corners_m, seen)) }
    }
}

/// Where the orders are too many: from the order as listed and from some of its rotations, the best start, then swaps of
/// two nets that lessen the sum there. Good, not proven: its bound is 0.
fn climb(
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
