//! The walk through the lattice over those orders only that keep every pin.

use super::NEAR_M;
use super::seen::Seen;
use crate::placement::chain::{Lattice, Line, Misses, Move, length_m};
use crate::placement::{EQUAL_SUMS_M, MEET_M};

/// The class that the next net has to be of, if any.
struct Next(Option<usize>);

impl Lattice<'_> {
    /// Length of all nets together, metres.
    fn chain_m(&self) -> f64 {
        self.listed.iter().map(|&class| length_m(self.classes[class])).sum()
    }

    pub(super) fn is_ring(&self) -> bool {
        self.line.closed && self.chain_m() > self.line.length_m - MEET_M
    }

    /// How far the nets cover the line, metres.
    pub(super) fn covered_m(&self) -> f64 {
        self.chain_m().min(self.line.length_m)
    }

    /// Every place in the chain where a net ends in some order and another may begin, ascending, metres; 0 among them.
    pub(super) fn ends_m(&self) -> Vec<f64> {
        let mut ends_m: Vec<f64> =
            self.states.iter().map(|state| state.at_m).filter(|&at_m| at_m <= self.line.length_m).collect();
        ends_m.push(self.covered_m());
        ends_m.sort_unstable_by(f64::total_cmp);
        ends_m.dedup_by(|later, earlier| *later - *earlier < crate::SAME_PLACE_M);
        ends_m
    }

    /// The least misses over all orders that keep what is seen, in one of its ways.
    pub(super) fn least_kept(&self, corners_m: &[f64], ways: &[Seen]) -> Misses {
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
    pub(super) fn kept_order(&self, corners_m: &[f64], ways: &[Seen]) -> Vec<usize> {
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
    pub(super) fn walk_kept(&self, order: &[usize], corners_m: &[f64], seen: &Seen) -> Misses {
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
