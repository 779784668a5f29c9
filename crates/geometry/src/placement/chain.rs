//! All chains that the listed nets can form, as one lattice, and the least sum of misses over them for a given start.
//!
//! What lies behind a place in the chain depends only on which nets are used up, not on their order. A state is therefore
//! a count of used nets of each class, and the least sum over all orders is a walk from the empty to the full state:
//! the corners under a net have their nearest post in that net, so each step's cost stands by itself. Exact; metres.

mod misses;

use super::MEET_M;

pub(super) use misses::Misses;

/// More states than this are not built.
const MAX_STATES: usize = 500_000;

/// Panels that differ by less than this share of their length are equal.
const SAME_PANEL: f64 = 1e-12;

/// The chosen start, direction and order.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Chosen {
    /// Start along the outline, metres.
    pub(super) start_m: f64,
    /// Against the outline.
    pub(super) reversed: bool,
    /// Kinds in chain order.
    pub(super) order: Vec<usize>,
    /// Proven lower bound of the sum where the orders were too many.
    pub(super) bound_m: Option<f64>,
}

/// The line as a chain sees it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Line {
    /// Its length, metres.
    pub(super) length_m: f64,
    /// Whether it is closed.
    pub(super) closed: bool,
}

/// The least misses from a state on.
#[derive(Debug, Clone, Copy)]
struct ToGo {
    /// In any order.
    any: Misses,
    /// In an order that lets some corner meet a post.
    meeting: Misses,
}

impl ToGo {
    /// What counts behind a chain in which a corner has met a post already, or not.
    fn behind(&self, met: bool) -> Misses {
        if met { self.any } else { self.meeting }
    }
}

/// All chains of the listed nets.
#[derive(Debug)]
pub(super) struct Lattice<'a> {
    pub(super) line: Line,
    /// Posts of each class of net, from its first one.
    pub(super) classes: Vec<&'a [f64]>,
    /// Kinds of each class in the order listed: they differ in other things than their posts.
    pub(super) kinds: Vec<Vec<usize>>,
    /// Class of each net as listed.
    pub(super) listed: Vec<usize>,
    pub(super) states: Vec<State>,
    pub(super) moves: Vec<Move>,
    /// Posts on the line of the one order, where they fall alike in all: a start is then measured corner by corner, not
    /// net by net, which would cost the square of the nets over all starts.
    alone_m: Option<Vec<f64>>,
}

/// Nets used up so far. Every move leads to a later state.
#[derive(Debug, Clone, Copy)]
pub(super) struct State {
    /// Where the next net starts in the chain, metres.
    pub(super) at_m: f64,
    /// Its moves: none where the line or the nets are at their end.
    pub(super) first_move: usize,
    pub(super) end_move: usize,
}

/// Another net is hung on.
#[derive(Debug, Clone, Copy)]
pub(super) struct Move {
    pub(super) class: usize,
    pub(super) to: usize,
}

impl<'a> Lattice<'a> {
    /// The lattice of all orders, or `None` where it is too large.
    pub(super) fn all_orders(line: Line, posts: &[&'a [f64]], nets: &[usize]) -> Option<Lattice<'a>> {
        Lattice::all_orders_told(line, posts, nets, false)
    }

    /// The same; `by_kind` keeps kinds apart whose posts fall alike, where it matters which of them lies where.
    pub(super) fn all_orders_told(
        line: Line,
        posts: &[&'a [f64]],
        nets: &[usize],
        by_kind: bool,
    ) -> Option<Lattice<'a>> {
        let (classes, kinds, listed) = classify(posts, nets, by_kind);
        let mut sizes = Vec::with_capacity(classes.len());
        let mut total = 1_usize;
        for class in &kinds {
            sizes.push((total, class.len()));
            total = total.checked_mul(class.len() + 1).filter(|&states| states <= MAX_STATES)?;
        }
        let mut states = Vec::new();
        let mut moves = Vec::new();
        let mut slot = vec![usize::MAX; total];
        let mut reached = vec![false; total];
        reached[0] = true;
        for index in 0..total {
            if !reached[index] {
                continue;
            }
            slot[index] = states.len();
            let used = |class: usize| index / sizes[class].0 % (sizes[class].1 + 1);
            let at_m: f64 = (0..classes.len()).map(|class| used(class) as f64 * length_m(classes[class])).sum();
            let first_move = moves.len();
            if index == 0 || at_m < line.length_m - MEET_M {
                for (class, &(stride, count)) in sizes.iter().enumerate() {
                    if used(class) < count {
                        reached[index + stride] = true;
                        moves.push(Move { class, to: index + stride });
                    }
                }
            }
            states.push(State { at_m, first_move, end_move: moves.len() });
        }
        for step in &mut moves {
            step.to = slot[step.to];
        }
        Some(Lattice { line, classes, kinds, listed, states, moves, alone_m: None }.with_posts_alone())
    }

    /// The single chain of the nets as listed.
    pub(super) fn as_listed(line: Line, posts: &[&'a [f64]], nets: &[usize]) -> Lattice<'a> {
        Lattice::as_listed_told(line, posts, nets, false)
    }

    /// The same; `by_kind` as above.
    pub(super) fn as_listed_told(line: Line, posts: &[&'a [f64]], nets: &[usize], by_kind: bool) -> Lattice<'a> {
        let (classes, kinds, listed) = classify(posts, nets, by_kind);
        let mut states = Vec::with_capacity(nets.len() + 1);
        let mut moves = Vec::with_capacity(nets.len());
        let mut at_m = 0.0;
        for &class in &listed {
            let first_move = moves.len();
            if states.is_empty() || at_m < line.length_m - MEET_M {
                moves.push(Move { class, to: states.len() + 1 });
            }
            states.push(State { at_m, first_move, end_move: moves.len() });
            at_m += length_m(classes[class]);
        }
        states.push(State { at_m, first_move: moves.len(), end_move: moves.len() });
        Lattice { line, classes, kinds, listed, states, moves, alone_m: None }.with_posts_alone()
    }

    fn with_posts_alone(mut self) -> Self {
        let single = self.states.iter().all(|state| state.end_move - state.first_move <= 1);
        self.alone_m = single.then(|| self.posts_m());
        self
    }

    /// Whether the posts fall alike in every order.
    pub(super) fn is_single(&self) -> bool {
        self.alone_m.is_some()
    }

    /// The class of each net as listed.
    pub(super) fn listed_classes(&self) -> &[usize] {
        &self.listed
    }

    /// Work of one [`Lattice::least`], in steps.
    pub(super) fn steps(&self) -> u64 {
        self.moves.len() as u64
    }

    /// Posts of all chains together, or more: the size of [`Lattice::posts_m`] before sorting out.
    pub(super) fn post_count(&self) -> usize {
        self.moves.iter().map(|step| self.classes[step.class].len()).sum()
    }

    /// Every place in the chain where some order has a post on the line, ascending, metres.
    pub(super) fn posts_m(&self) -> Vec<f64> {
        let mut places_m = Vec::with_capacity(self.post_count());
        for state in &self.states {
            for step in &self.moves[state.first_move..state.end_move] {
                let on_line = self.classes[step.class]
                    .iter()
                    .map(|offset_m| state.at_m + offset_m)
                    .take_while(|&place_m| place_m <= self.line.length_m + MEET_M)
                    .map(|place_m| place_m.min(self.line.length_m));
                places_m.extend(on_line);
            }
        }
        places_m.sort_unstable_by(f64::total_cmp);
        places_m.dedup_by(|later, earlier| *later - *earlier < crate::SAME_PLACE_M);
        places_m
    }

    /// The least sum of misses over all orders, and the least largest miss that goes with it.
    ///
    /// `corners_m`: the corners' distances from the chain's start in its direction, ascending. `free`: the start stands by
    /// itself; else only orders count in which some corner meets a post, as only those are minima in the start. (Where
    /// the sum is level between two such starts, those between are not looked at.) Beside it the least sum of all orders.
    pub(super) fn least(&self, corners_m: &[f64], free: bool) -> (Misses, f64) {
        if let Some(posts_m) = &self.alone_m {
            let misses = self.misses_from(posts_m, corners_m);
            (if free || misses.met { misses } else { Misses::NEVER }, misses.sum_m)
        } else {
            let to_go = &self.costs_to_go(corners_m)[0];
            (to_go.behind(free), to_go.any.sum_m)
        }
    }

    /// Kinds in the order that reaches [`Lattice::least`]: as listed where that does, else the first in the order in
    /// which the kinds are first listed.
    pub(super) fn best_order(&self, corners_m: &[f64], free: bool) -> Vec<usize> {
        let to_go = self.costs_to_go(corners_m);
        let goal = to_go[0].behind(free);
        let reaches = |misses: Misses| {
            misses.sum_m <= goal.sum_m + super::EQUAL_SUMS_M && misses.largest_m <= goal.largest_m + super::EQUAL_SUMS_M
        };
        let mut order = Vec::with_capacity(self.listed.len());
        let as_listed = self.walk(&self.listed, corners_m);
        if reaches(as_listed) && (free || as_listed.met) {
            order.clone_from(&self.listed);
        } else {
            let (mut state, mut behind) = (0, Misses { met: free, ..Misses::default() });
            while let Some((step, cost)) = self.next_step(state, behind, &to_go, corners_m, &reaches) {
                order.push(step.class);
                behind = cost;
                state = step.to;
            }
        }
        self.name_kinds(&order)
    }

    /// The first move that still reaches the goal; should rounding hide it, the one that comes nearest.
    fn next_step(
        &self,
        state: usize,
        behind: Misses,
        to_go: &[ToGo],
        corners_m: &[f64],
        reaches: &impl Fn(Misses) -> bool,
    ) -> Option<(Move, Misses)> {
        let State { at_m, first_move, end_move } = self.states[state];
        let mut nearest: Option<(Move, Misses, f64)> = None;
        for &step in &self.moves[first_move..end_move] {
            let cost = behind.and(self.net_cost(step.class, at_m, self.states[step.to].at_m, corners_m));
            let total = cost.and(to_go[step.to].behind(cost.met));
            if reaches(total) {
                return Some((step, cost));
            }
            if nearest.is_none_or(|(_, _, sum_m)| total.sum_m < sum_m) {
                nearest = Some((step, cost, total.sum_m));
            }
        }
        nearest.map(|(step, cost, _)| (step, cost))
    }

    /// Misses of one order, given as classes.
    pub(super) fn walk(&self, order: &[usize], corners_m: &[f64]) -> Misses {
        let mut misses = Misses::default();
        let mut at_m = 0.0;
        for (index, &class) in order.iter().enumerate() {
            if index > 0 && at_m >= self.line.length_m - MEET_M {
                break;
            }
            let end_m = at_m + length_m(self.classes[class]);
            misses = misses.and(self.net_cost(class, at_m, end_m, corners_m));
            at_m = end_m;
        }
        misses.and(self.tail_cost(at_m, corners_m))
    }

    /// Classes turned into kinds, those of one class in the order listed; nets left over follow as listed.
    pub(super) fn name_kinds(&self, order: &[usize]) -> Vec<usize> {
        let mut left: Vec<_> = self.kinds.iter().map(|kinds| kinds.iter().copied()).collect();
        let mut named: Vec<usize> = order.iter().filter_map(|&class| left[class].next()).collect();
        let mut skip = vec![0_usize; self.kinds.len()];
        for &class in order {
            skip[class] += 1;
        }
        for &class in &self.listed {
            if skip[class] > 0 {
                skip[class] -= 1;
            } else {
                named.extend(left[class].next());
            }
        }
        named
    }

    fn costs_to_go(&self, corners_m: &[f64]) -> Vec<ToGo> {
        let mut to_go = vec![ToGo { any: Misses::NEVER, meeting: Misses::NEVER }; self.states.len()];
        for (index, state) in self.states.iter().enumerate().rev() {
            let steps = &self.moves[state.first_move..state.end_move];
            let mut best = to_go[index];
            if steps.is_empty() {
                best.any = self.tail_cost(state.at_m, corners_m);
                best.meeting = if best.any.met { best.any } else { Misses::NEVER };
            }
            for step in steps {
                let cost = self.net_cost(step.class, state.at_m, self.states[step.to].at_m, corners_m);
                let any = cost.and(to_go[step.to].any);
                let meeting = cost.and(to_go[step.to].behind(cost.met));
                if any.better_than(best.any) {
                    best.any = any;
                }
                if meeting.better_than(best.meeting) {
                    best.meeting = meeting;
                }
            }
            to_go[index] = best;
        }
        to_go
    }
}

/// Classes of nets whose posts fall alike: posts, kinds as listed, and the class of each listed net.
fn classify<'a>(posts: &[&'a [f64]], nets: &[usize], by_kind: bool) -> (Vec<&'a [f64]>, Vec<Vec<usize>>, Vec<usize>) {
    let mut classes: Vec<&'a [f64]> = Vec::new();
    let mut kinds: Vec<Vec<usize>> = Vec::new();
    let mut listed = Vec::with_capacity(nets.len());
    for &kind in nets {
        let is_it = |(known, of): (&&'a [f64], &Vec<usize>)| {
            if by_kind { of.first() == Some(&kind) } else { alike(known, posts[kind]) }
        };
        let class = classes.iter().zip(&kinds).position(is_it).unwrap_or_else(|| {
            classes.push(posts[kind]);
            kinds.push(Vec::new());
            classes.len() - 1
        });
        kinds[class].push(kind);
        listed.push(class);
    }
    (classes, kinds, listed)
}

fn alike(one: &[f64], other: &[f64]) -> bool {
    one.len() == other.len() && one.iter().zip(other).all(|(a, b)| (a - b).abs() <= SAME_PANEL * length_m(one))
}

pub(super) fn length_m(posts_m: &[f64]) -> f64 {
    posts_m[posts_m.len() - 1]
}
