//! The search over panel counts: best first over ranges of posts, each with its proven bound.
//!
//! A node says for every corner between which posts of the ring it may stand. Its bound holds for every outline whose
//! corners stand there, posts or not ([`super::bound`]). The node of the least bound is split at the corner that stands
//! farthest between two posts; when every corner has its post the shape is worked out to the end. The search is over
//! when no node's bound is below the best outline found: then nothing nearer exists. A shape whose own bound does not
//! meet its cost (it left the ground, crossed itself, or was stretched too far to be proven) leaves its bound open, and
//! the answer's bound is the least of those.
//!
//! Everything counts in steps: one step of Newton's, of which a node takes four.

mod guide;
mod leaf;

use std::cmp::Ordering;
use std::collections::{BTreeSet, BinaryHeap};

use super::bound::lower_m2;
use super::chain::{Ring, Rings};
use super::ground::FreeGround;
use super::shape::{Lengths, Shape, Wall, amiss_m, settle};
use crate::{Outline, Point, Vector, check_outline};

/// Newton steps for a node's bound.
const NODE_ROUNDS: usize = 2;
/// Newton steps until a shape has to be at rest.
const LEAF_ROUNDS: usize = 80;
/// What a step against the ground counts for: looking for walls takes longer than the step.
const GROUND_STEPS: u64 = 5;
/// Sides and walls of an answer are met to this, metres.
const EXACT_M: f64 = 1e-9;
/// A side may be at most this near to half the line: no triangle is flatter. Metres.
const FLAT_M: f64 = 1e-9;

/// Where corners may stand: numbers of the ring's posts, from the first corner (post 0) to itself again (the last).
#[derive(Debug, Clone)]
struct Node {
    ring: usize,
    low: Vec<u32>,
    high: Vec<u32>,
    shape: Shape,
    bound_m2: f64,
    number: u64,
}

impl Node {
    fn is_leaf(&self) -> bool {
        self.low == self.high
    }
}

impl PartialEq for Node {
    fn eq(&self, other: &Node) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}
impl Eq for Node {}
impl PartialOrd for Node {
    fn partial_cmp(&self, other: &Node) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Node {
    /// The greatest is the one to open next: the least bound, of equals the oldest.
    fn cmp(&self, other: &Node) -> Ordering {
        other.bound_m2.total_cmp(&self.bound_m2).then(other.number.cmp(&self.number))
    }
}

/// The best outline so far.
#[derive(Debug, Clone)]
pub(super) struct Found {
    pub(super) ring: usize,
    pub(super) posts: Vec<u32>,
    pub(super) at: Vec<Vector>,
    pub(super) cost_m2: f64,
}

/// The state of a search; coordinates are relative to the sketch's first corner.
#[derive(Debug, Clone)]
pub(super) struct Search {
    sketch: Vec<Vector>,
    ground: FreeGround,
    hull: Vec<(Vector, f64)>,
    pub(super) rings: Vec<Ring>,
    complete: bool,
    queue: BinaryHeap<Node>,
    /// Nodes whose shapes keep to the ground as far as they see; their cost guides and proves nothing.
    guided: BinaryHeap<Node>,
    tried: BTreeSet<(usize, Vec<u32>)>,
    pub(super) best: Option<Found>,
    /// Least bound of the shapes that were given up.
    open_m2: f64,
    root_m2: f64,
    closed_any: bool,
    numbers: u64,
    nodes: u64,
    pub(super) steps: u64,
}

impl Search {
    pub(super) fn new(sketch: Vec<Vector>, rings: Rings, ground: FreeGround) -> Search {
        let hull = ground.hull();
        let mut search = Search {
            sketch,
            ground,
            hull,
            rings: rings.all,
            complete: rings.complete,
            queue: BinaryHeap::new(),
            guided: BinaryHeap::new(),
            tried: BTreeSet::new(),
            best: None,
            open_m2: f64::INFINITY,
            root_m2: 0.0,
            closed_any: false,
            numbers: 0,
            nodes: 0,
            steps: 0,
        };
        let corners = search.sketch.len() as u32;
        let mut start = Shape::at_rest(search.sketch.clone());
        for ring in 0..search.rings.len() {
            let panels = search.rings[ring].posts_m.len() as u32 - 1;
            if panels < corners {
                continue;
            }
            let mut low: Vec<u32> = (0..corners).collect();
            let mut high: Vec<u32> = (0..corners).map(|corner| panels - corners + corner).collect();
            high[0] = 0;
            low.push(panels);
            high.push(panels);
            if ring == 0 {
                // The first ring's shape, at rest, is where all begin.
                start = search.settled(ring, &low, &high, start, 30);
            }
            search.admit(ring, low, high, &start, 0.0, 1);
        }
        search.guide(&start);
        search.root_m2 = search.queue.iter().map(|node| node.bound_m2).fold(f64::INFINITY, f64::min);
        search
    }

    /// Whether the best found, if any, is settled: nothing open is nearer.
    pub(super) fn is_done(&self) -> bool {
        self.guided.is_empty() && self.queue.peek().is_none_or(|node| node.bound_m2 > self.cutoff_m2())
    }

    /// Whether nothing is in the queue.
    pub(super) fn is_empty(&self) -> bool {
        self.queue.is_empty()
    }

    /// Whether any choice of posts closed, wherever it lay.
    pub(super) fn closed_any(&self) -> bool {
        self.closed_any
    }

    /// Opens one node.
    pub(super) fn step(&mut self) {
        if self.is_done() {
            self.queue.clear();
            return;
        }
        if let Some(node) = self.guided.pop() {
            self.open_guided(&node);
            return;
        }
        let Some(node) = self.queue.pop() else { return };
        self.nodes += 1;
        if node.is_leaf() {
            self.work_out(node.ring, &node.low, &node.shape, node.bound_m2);
            return;
        }
        if (self.best.is_none() && self.nodes < 64) || self.nodes % 64 == 1 {
            let posts = self.rounded(&node);
            self.work_out(node.ring, &posts, &node.shape, 0.0);
        }
        for (low, high) in self.halves(&node) {
            self.admit(node.ring, low, high, &node.shape, node.bound_m2, NODE_ROUNDS);
        }
    }

    /// The two halves of a node.
    fn halves(&self, node: &Node) -> [(Vec<u32>, Vec<u32>); 2] {
        let (corner, post) = self.split(node);
        let (mut low, mut high) = (node.low.clone(), node.high.clone());
        high[corner] = post;
        low[corner] = post + 1;
        [(node.low.clone(), high), (low, node.high.clone())]
    }

    /// Draws the ranges in to what the order of the corners allows; `false` where nothing is left that closes.
    fn tighten(&self, ring: usize, low: &mut [u32], high: &mut [u32]) -> bool {
        let last = low.len() - 1;
        for corner in 1..last {
            low[corner] = low[corner].max(low[corner - 1] + 1);
        }
        for corner in (1..last).rev() {
            high[corner] = high[corner].min(high[corner + 1] - 1);
        }
        if (1..last).any(|corner| low[corner] > high[corner]) {
            return false;
        }
        let posts_m = &self.rings[ring].posts_m;
        let half_m = posts_m[posts_m.len() - 1] / 2.0;
        let too_long = |side: usize| posts_m[low[side + 1] as usize] - posts_m[high[side] as usize] >= half_m - FLAT_M;
        !(0..last).any(too_long)
    }

    /// The proven lower bound of the cost, square metres; infinite where nothing was left to look at.
    pub(super) fn bound_m2(&self) -> f64 {
        let best = self.best.as_ref().map_or(f64::INFINITY, |best| best.cost_m2);
        let queued = self.queue.peek().map_or(f64::INFINITY, |node| node.bound_m2);
        let unseen = if self.complete { f64::INFINITY } else { self.root_m2 };
        let least = best.min(queued).min(self.open_m2).min(unseen);
        // Costs are known to rounding: a bound that meets the best but for that is the best.
        if least >= best - grain_m2(best) { best } else { least }
    }

    fn cutoff_m2(&self) -> f64 {
        self.best.as_ref().map_or(f64::INFINITY, |best| best.cost_m2 + grain_m2(best.cost_m2))
    }

    fn lengths(&self, ring: usize, low: &[u32], high: &[u32]) -> Lengths {
        let posts_m = &self.rings[ring].posts_m;
        let of = |posts: &[u32]| posts[1..].iter().map(|&post| posts_m[post as usize]).collect();
        Lengths { low_m: of(low), high_m: of(high) }
    }

    fn settled(&mut self, ring: usize, low: &[u32], high: &[u32], start: Shape, rounds: usize) -> Shape {
        let lengths = self.lengths(ring, low, high);
        let mut kept = hull_of(&start);
        let mut walls = |at: &[Vector]| hull_walls(&self.hull, at, &mut kept);
        settle(&self.sketch, start, &lengths, &mut walls, rounds, &mut self.steps)
    }

    /// Puts a node into the queue where an outline with such corners may exist and may be nearer than the best.
    fn admit(
        &mut self,
        ring: usize,
        mut low: Vec<u32>,
        mut high: Vec<u32>,
        parent: &Shape,
        parent_m2: f64,
        rounds: usize,
    ) {
        if !self.tighten(ring, &mut low, &mut high) {
            return;
        }
        let lengths = self.lengths(ring, &low, &high);
        let mut shape = self.settled(ring, &low, &high, parent.clone(), rounds);
        let mut bound_m2 = lower_m2(&self.sketch, &shape, &lengths);
        if shape.walls.iter().any(|(_, push_m)| *push_m > 0.0) {
            // Walls that leave no room for the line make multipliers that prove little: without them it may be more.
            let mut free = Shape { walls: Vec::new(), ..parent.clone() };
            free = settle(&self.sketch, free, &lengths, &mut |_| Vec::new(), rounds, &mut self.steps);
            let free_m2 = lower_m2(&self.sketch, &free, &lengths);
            if free_m2 > bound_m2 {
                (shape, bound_m2) = (free, free_m2);
            }
        }
        let bound_m2 = bound_m2.max(parent_m2);
        if bound_m2 <= self.cutoff_m2() {
            self.numbers += 1;
            self.queue.push(Node { ring, low, high, shape, bound_m2, number: self.numbers });
        }
    }

    /// Where the corners of a node stand along its line, metres, and the post before each with the share of the panel.
    fn between(&self, node: &Node) -> Vec<(u32, f64)> {
        let posts_m = &self.rings[node.ring].posts_m;
        let mut along_m = 0.0;
        let mut places = vec![(0, 0.0)];
        for (side, (length_m, _)) in super::shape::sides(&node.shape.at).into_iter().enumerate() {
            along_m += length_m;
            let (low, high) = (node.low[side + 1], node.high[side + 1]);
            let place_m = along_m.clamp(posts_m[low as usize], posts_m[high as usize]);
            let after = posts_m.partition_point(|&post_m| post_m <= place_m).clamp(1, posts_m.len() - 1);
            let before = (after as u32 - 1).clamp(low, high);
            let panel_m = posts_m[after] - posts_m[after - 1];
            let share = ((place_m - posts_m[before as usize]) / panel_m).clamp(0.0, 1.0);
            places.push((before, share));
        }
        places
    }

    /// The corner that stands farthest between posts, and the post before it.
    fn split(&self, node: &Node) -> (usize, u32) {
        let places = self.between(node);
        let off = |corner: usize| {
            let (_, share) = places[corner];
            share.min(1.0 - share) + 1e-6 * f64::from(node.high[corner] - node.low[corner])
        };
        let corner = (1..node.low.len() - 1)
            .filter(|&corner| node.low[corner] < node.high[corner])
            .max_by(|&one, &other| off(one).total_cmp(&off(other)).then(other.cmp(&one)))
            .expect("a node that is no leaf has a corner with two posts");
        (corner, places[corner].0.min(node.high[corner] - 1))
    }

    /// Every corner on a post near to where it stands.
    fn rounded(&self, node: &Node) -> Vec<u32> {
        let places = self.between(node);
        let mut posts = vec![0];
        for corner in 1..node.low.len() {
            let (before, share) = places[corner];
            let near = if share > 0.5 { before + 1 } else { before };
            posts.push(near.max(posts[corner - 1] + 1).clamp(node.low[corner], node.high[corner]));
        }
        posts
    }

    /// A shape pushed back into the ground; `choice` counts the sides by which a place that is enclosed may leave.
    fn held_in(&mut self, shape: &Shape, lengths: &Lengths, choice: usize, most: usize) -> Shape {
        let mut kept = hull_of(shape);
        let mut walls = |at: &[Vector]| {
            let mut walls = hull_walls(&self.hull, at, &mut kept);
            walls.extend(self.ground.walls(at, choice));
            walls
        };
        let mut rounds = 0;
        let held = settle(&self.sketch, shape.clone(), lengths, &mut walls, most, &mut rounds);
        self.steps += GROUND_STEPS * rounds;
        held
    }

    /// The sketch.
    pub(super) fn sketch(&self) -> &[Vector] {
        &self.sketch
    }

    /// The corners nearest to the sketch with sides of those lengths, from a shape; `choice` counts the sides by which a
    /// place that is enclosed may leave, and without one the ground is not looked at. `None` where they do not close.
    pub(super) fn nearest(&self, from: &Shape, sides_m: &[f64], choice: Option<usize>) -> Option<Shape> {
        let mut ends_m = Vec::with_capacity(sides_m.len());
        for side_m in sides_m {
            ends_m.push(ends_m.last().copied().unwrap_or(0.0) + side_m);
        }
        let lengths = Lengths { low_m: ends_m.clone(), high_m: ends_m };
        let mut kept = Vec::new();
        let mut walls = |at: &[Vector]| {
            let Some(choice) = choice else { return Vec::new() };
            let mut walls = hull_walls(&self.hull, at, &mut kept);
            walls.extend(self.ground.walls(at, choice));
            walls
        };
        let shape = settle(&self.sketch, from.clone(), &lengths, &mut walls, LEAF_ROUNDS, &mut 0);
        (amiss_m(&shape.at, &lengths, &[]) < EXACT_M).then_some(shape)
    }

    /// Whether an outline is simple and lies on free ground.
    pub(super) fn may_stand(&self, at: &[Vector]) -> bool {
        let points: Vec<Point> = at.iter().map(|&way| Point::default() + way).collect();
        check_outline(&points, true).is_empty() && self.ground.holds(&Outline::closed(&points))
    }

    fn ground_holds(&self, at: &[Vector]) -> bool {
        self.ground.holds(&Outline::closed(&at.iter().map(|&way| Point::default() + way).collect::<Vec<_>>()))
    }
}

/// Costs nearer than this are equal, square metres.
fn grain_m2(cost_m2: f64) -> f64 {
    if cost_m2.is_finite() { 1e-9 * cost_m2 + 1e-12 } else { 0.0 }
}

/// Walls of the hull: those kept so far and those that are crossed.
fn hull_walls(hull: &[(Vector, f64)], at: &[Vector], kept: &mut Vec<Wall>) -> Vec<Wall> {
    for (corner, &place) in at.iter().enumerate() {
        for &(normal, least_m) in hull {
            let known = |wall: &Wall| wall.parts[0].0 == corner && wall.parts[0].1 == normal;
            if normal.dot(place) < least_m - 1e-12 && !kept.iter().any(known) {
                let parts = [(corner, normal), (corner, Vector::default())];
                kept.push(Wall { parts, least_m, always: true });
            }
        }
    }
    kept.clone()
}

/// Walls of the hull that a shape leans on.
fn hull_of(shape: &Shape) -> Vec<Wall> {
    shape.walls.iter().filter(|(wall, push_m)| wall.always && *push_m > 0.0).map(|(wall, _)| wall.clone()).collect()
}

/// A shape at a share of its size about its middle.
fn drawn_in(at: &[Vector], share: f64) -> Vec<Vector> {
    let middle = at.iter().fold(Vector::default(), |sum, &place| sum + place) * (1.0 / at.len() as f64);
    at.iter().map(|&place| middle + (place - middle) * share).collect()
}
