//! How the nets fall round the line: where the chain starts, which way it runs, in which order.
//!
//! The chosen placement has the least sum of distances, along the line, from the corners to their nearest posts; a net
//! cuts across a corner that has no post. Free are the start (an open line starts at an end), the direction and the order
//! of unlike nets. Metres throughout. Model and tie rules: docs/model.md, "Placement".
//!
//! What the keeper pins (a start, a join, a post at a corner, a kind of net at a place) is kept, and the rest is chosen
//! round it, as exactly: [`pins`].
//!
//! With a fixed order and direction the sum is piecewise linear in the start and its minima lie where a corner meets a
//! post, so [`search`] looks at those starts only and is exact. Where the orders are too many for the budget, the best
//! found stands beside a proven lower bound ([`Placement::bound_m`]).

mod chain;
mod climb;
mod lay;
mod narrow;
mod pinned;
mod pins;
mod search;
mod sweep;
mod table;
mod tie;

pub use pins::{HELD_M, Pin, PinKind, PinOutcome};

use crate::{Net, Outline, Point};

/// Lengths nearer than this meet: no spare, no gap, no end. Metres.
pub const MEET_M: f64 = 0.01;

/// Sums of misses (and the figures of the tie rules) nearer than this are equal, metres.
pub const EQUAL_SUMS_M: f64 = 1e-6;

/// More posts than this in one chain are refused.
pub const MAX_CHAIN_POSTS: usize = 20_000;

/// A budget that takes about a second on a small computer; a step is one corner meeting one post.
pub const DEFAULT_BUDGET_STEPS: u64 = 10_000_000;

/// What to place on what.
#[derive(Debug, Clone, Copy)]
pub struct PlacementRequest<'a> {
    /// The line.
    pub outline: &'a Outline,
    /// The kinds of net in the store.
    pub kinds: &'a [Net],
    /// The nets of this run as listed: numbers of `kinds`.
    pub nets: &'a [usize],
    /// Where the live lead meets the net, if stated; decides between equal starts.
    pub feed: Option<Point>,
    /// A start that the keeper fixed; an open line ignores it.
    pub fixed: Option<FixedStart>,
    /// What the keeper pinned; the rest is chosen round it.
    pub pins: &'a [Pin],
    /// Whether to find out what each pin costs, a search of its own for each.
    pub costs: bool,
    /// How much to try where nets differ, in steps (corner meets post).
    pub budget_steps: u64,
}

impl<'a> PlacementRequest<'a> {
    /// A request without feed point or fixed start, with [`DEFAULT_BUDGET_STEPS`].
    pub fn new(outline: &'a Outline, kinds: &'a [Net], nets: &'a [usize]) -> Self {
        let budget_steps = DEFAULT_BUDGET_STEPS;
        Self { outline, kinds, nets, feed: None, fixed: None, pins: &[], costs: true, budget_steps }
    }
}

/// A start that the keeper fixed; the nets then stay in the order listed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FixedStart {
    /// Where the chain starts, along the outline, metres.
    pub start_m: f64,
    /// Whether the chain runs against the outline.
    pub reversed: bool,
}

/// Where every net and post of a run stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Placement {
    /// Length of the line, metres.
    pub line_m: f64,
    /// Length of all nets, metres.
    pub chain_m: f64,
    /// Where the chain starts, along the outline, metres.
    pub start_m: f64,
    /// Whether the chain runs against the outline: along = start - distance in the chain.
    pub reversed: bool,
    /// The kinds in chain order.
    pub order: Vec<usize>,
    /// Sum of the misses, metres.
    pub corner_miss_m: f64,
    /// The largest miss, metres.
    pub largest_miss_m: f64,
    /// A proven lower bound of `corner_miss_m`, where the orders were too many to try, or none was ([`place_from`]); else
    /// the sum is the least.
    pub bound_m: Option<f64>,
    /// The nets in chain order, whole, also where they hang beyond the line's end.
    pub nets: Vec<PlacedNet>,
    /// Posts on the line in chain order; at a join two stand at one place.
    pub posts: Vec<Post>,
    /// Posts of the spare, folded back from the chain's end along its last panels.
    pub spare_posts: Vec<Post>,
    /// Length of the nets beyond the line, metres, as it comes (see [`Placement::has_spare`]).
    pub spare_m: f64,
    /// Length of the line beyond the nets, metres, as it comes (see [`Placement::falls_short`]).
    pub short_m: f64,
    /// Every corner with its miss, in the outline's order.
    pub misses: Vec<CornerMiss>,
    /// With a fixed start or pins: what would have been without.
    pub best: Option<Best>,
    /// What became of each pin, in the request's order.
    pub pins: Vec<PinOutcome>,
    closed: bool,
}

/// A net in the chain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlacedNet {
    /// Its kind, a number of the request's `kinds`.
    pub kind: usize,
    /// Where it starts in the chain, metres.
    pub start_m: f64,
    /// Where it ends in the chain, metres.
    pub end_m: f64,
    /// Whether any of it stands on the line.
    pub on_line: bool,
}

/// A post.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Post {
    /// Its net, counted in chain order.
    pub net: usize,
    /// Its number in the net, counted in the chain's direction.
    pub post: usize,
    /// Distance from the chain's start through the nets, metres.
    pub chain_m: f64,
    /// Place along the outline, metres.
    pub along_m: f64,
    /// Place on the ground.
    pub at: Point,
}

/// A corner and the post nearest to it.
#[derive(Debug, Clone, PartialEq)]
pub struct CornerMiss {
    /// Number of the vertex in the outline.
    pub vertex: usize,
    /// Place along the outline, metres.
    pub along_m: f64,
    /// Exterior turn, radians.
    pub turn_rad: f64,
    /// Distance along the line to the nearest post, metres, without sign.
    pub to_post_m: f64,
    /// The nearest post, then any that stands at the same place (a join): numbers of [`Placement::posts`].
    pub posts: Vec<usize>,
}

/// The placement that the keeper's fixed start forgoes.
#[derive(Debug, Clone, PartialEq)]
pub struct Best {
    /// Where the chain would start, along the outline, metres.
    pub start_m: f64,
    /// Whether it would run against the outline.
    pub reversed: bool,
    /// The kinds in chain order.
    pub order: Vec<usize>,
    /// The least sum of misses found, metres.
    pub corner_miss_m: f64,
    /// A proven lower bound, where the orders were too many to try.
    pub bound_m: Option<f64>,
}

/// Why nothing can be placed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PlacementFault {
    /// The run has no net.
    #[error("the run has no net to place")]
    NoNets,
    /// The line has no length, or one that is not a finite number.
    #[error("the line has no length to place a net on")]
    NoLine,
    /// A net of a kind that does not exist.
    #[error("net {net} names kind {kind}, which does not exist")]
    UnknownKind {
        /// The net, counted as listed.
        net: usize,
        /// The kind that it names.
        kind: usize,
    },
    /// More than [`MAX_CHAIN_POSTS`].
    #[error("{posts} posts in one run are too many: keep at most {MAX_CHAIN_POSTS}")]
    TooManyPosts {
        /// Posts of all nets.
        posts: usize,
    },
}

impl PlacementFault {
    /// A name that stays the same in every version.
    pub fn id(&self) -> &'static str {
        match self {
            PlacementFault::NoNets => "placement/no-nets",
            PlacementFault::NoLine => "placement/no-line",
            PlacementFault::UnknownKind { .. } => "placement/unknown-kind",
            PlacementFault::TooManyPosts { .. } => "placement/too-many-posts",
        }
    }
}

impl Placement {
    /// Whether netting hangs beyond the line's end (by [`MEET_M`] or more).
    pub fn has_spare(&self) -> bool {
        self.spare_m >= MEET_M
    }

    /// Whether the nets end before the line does (by [`MEET_M`] or more).
    pub fn falls_short(&self) -> bool {
        self.short_m >= MEET_M
    }

    /// Whether the line is closed and the nets reach all the way round.
    pub fn is_ring(&self) -> bool {
        self.closed && !self.falls_short()
    }

    /// How far the netting covers the line from the chain's start, metres.
    pub fn covered_m(&self) -> f64 {
        if self.falls_short() { self.chain_m } else { self.line_m }
    }

    /// Nets with any netting on the line, in chain order.
    pub fn nets_on_line(&self) -> impl Iterator<Item = &PlacedNet> {
        self.nets.iter().filter(|net| net.on_line)
    }

    /// Place along the outline of a distance in the chain, metres; the spare is folded back from the line's end.
    pub fn along_m(&self, chain_m: f64) -> f64 {
        lay::along_m(self.line_m, self.closed, self.start_m, self.reversed, chain_m)
    }

    /// Distance in the chain, `0..line_m`, of a place along the outline, metres: the other way round.
    ///
    /// On a closed line the start itself is 0. Beyond [`Placement::covered_m`] lies the gap of a chain that falls short.
    pub fn chain_at_m(&self, along_m: f64) -> f64 {
        lay::chain_m(self.line_m, self.closed, self.start_m, self.reversed, along_m)
    }
}

impl Placement {
    /// The post nearest to a place along the outline: its distance along the line, metres, then its number in
    /// [`Placement::posts`] (of equals the first) and the numbers of those that stand at the same place.
    pub fn nearest_posts(&self, along_m: f64) -> (f64, Vec<usize>) {
        lay::nearest_posts(self.line_m, self.closed, &self.posts, self.chain_at_m(along_m))
    }
}

/// Places the nets on the line.
///
/// Exact over start, direction and order while all orders fit in the budget; see [`Placement::bound_m`] else.
pub fn place(request: &PlacementRequest<'_>) -> Result<Placement, PlacementFault> {
    check(request)?;
    let chosen = search::choose(request);
    let placement = lay::lay(request, &chosen);
    let (kept, outcomes) = match request.fixed.filter(|_| request.outline.is_closed()) {
        Some(fixed) => {
            let kept = lay::lay(request, &search::fixed(request, fixed));
            let outcomes = pins::looked_at(request, &kept);
            (kept, outcomes)
        }
        None if request.pins.is_empty() => return Ok(placement),
        None => pins::placed(request, &placement),
    };
    let best = Best {
        start_m: chosen.start_m,
        reversed: chosen.reversed,
        order: chosen.order,
        corner_miss_m: placement.corner_miss_m,
        bound_m: chosen.bound_m,
    };
    Ok(Placement { best: Some(best), pins: outcomes, ..kept })
}

/// Lays the nets from the line's start in the order listed, whatever else would be better; nothing is searched, and what
/// the request fixes or pins is passed over.
pub fn place_in_order(request: &PlacementRequest<'_>) -> Result<Placement, PlacementFault> {
    check(request)?;
    Ok(lay::lay(request, &search::fixed(request, FixedStart { start_m: 0.0, reversed: false })))
}

/// Lays the nets from a start in the order listed, and looks at which pins that keeps; nothing is searched, so of a better
/// chain it is known only that none can miss by less than nothing.
pub fn place_from(request: &PlacementRequest<'_>, start: FixedStart) -> Result<Placement, PlacementFault> {
    check(request)?;
    let placement = lay::lay(request, &search::fixed(request, start));
    let pins = pins::looked_at(request, &placement);
    Ok(Placement { pins, bound_m: Some(0.0), ..placement })
}

fn check(request: &PlacementRequest<'_>) -> Result<(), PlacementFault> {
    if request.nets.is_empty() {
        return Err(PlacementFault::NoNets);
    }
    let line_m = request.outline.length_m();
    if !(line_m > 0.0 && line_m.is_finite()) {
        return Err(PlacementFault::NoLine);
    }
    let mut posts = 0_usize;
    for (net, &kind) in request.nets.iter().enumerate() {
        let known = request.kinds.get(kind).ok_or(PlacementFault::UnknownKind { net, kind })?;
        posts = posts.saturating_add(known.posts_m().len());
    }
    if posts > MAX_CHAIN_POSTS {
        return Err(PlacementFault::TooManyPosts { posts });
    }
    Ok(())
}

#[cfg(test)]
mod tests;
