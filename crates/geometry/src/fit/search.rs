//! The search over panel counts: best first over ranges of posts, each with its proven bound.
//!
//! A node says for every corner between which posts of the ring it may stand. Its bound holds for every outline whose
//! corners stand there, posts or not ([`super::bound`]). The node of the least bound is split at the corner that stands
//! farthest between two posts; when every corner has its post the shape is worked out to the end. The search is over
//! when no node's bound is below the best outline found: then nothing nearer exists. A shape whose own bound does not
//! meet its cost (it left the ground, crossed itself, or was stretched too far to be proven) leaves its bound open, and
//! the answer's bound is the least of those. Where the nearest line leaves the
//! ground, lines that keep to it guide the search to good answers first; they prove nothing.
//!
//! Everything counts in steps: one step of Newton's, of which a node takes four.

use std::cmp::Ordering;
use std::collections::{BTreeSet, BinaryHeap};

use super::bound::lower_m2;
use super::chain::{Ring, Rings};
use super::ground::FreeGround;
use super::shape::{Lengths, Shape, Wall, amiss_m, cost_m2, settle};
use crate::{Outline, Point, Vector, check_outline};

/// Newton steps for a node's bound.
const NODE_ROUNDS: usize = 2;
/// Newton steps until a shape has to be at rest.
const LEAF_ROUNDS: usize = 80;
/// Newton steps for a node that guides.
const GUIDED_ROUNDS: usize = 5;
/// Steps after which nothing guides any more.
const GUIDED_STEPS: u64 = 12_000;
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

    /// Where the nearest line leaves the ground, finds lines on it and lets them guide: first good answers early, so
    /// that the search that proves has less to look at.
    fn guide(&mut self, start: &Shape) {
        if self.queue.is_empty() || self.ground_holds(&start.at) {
            return;
        }
        let first = self.queue.peek().expect("the queue is not empty");
        let (ring, low, high) = (first.ring, first.low.clone(), first.high.clone());
        let lengths = self.lengths(ring, &low, &high);
        let mut seeds: Vec<(Shape, usize)> =
            (0..=FreeGround::LAST_CHOICE).map(|choice| (start.clone(), choice)).collect();
        for share in [0.85, 0.7] {
            seeds.push((Shape::at_rest(drawn_in(&start.at, share)), 0));
        }
        let mut known: Vec<f64> = Vec::new();
        for (seed, choice) in seeds {
            let held = self.held_in(&seed, &lengths, choice, LEAF_ROUNDS);
            let cost_m2 = held.cost_m2(&self.sketch);
            let new = known.iter().all(|other| (other - cost_m2).abs() > 1e-6);
            if new && amiss_m(&held.at, &lengths, &[]) < 1e-6 && self.ground_holds(&held.at) {
                known.push(cost_m2);
                let nodes: Vec<Node> = self.queue.iter().cloned().collect();
                for node in nodes {
                    self.numbers += 1;
                    let shape = held.clone();
                    self.guided.push(Node { shape, bound_m2: cost_m2, number: self.numbers, ..node });
                }
            }
        }
    }

    fn ground_holds(&self, at: &[Vector]) -> bool {
        self.ground.holds(&Outline::closed(&at.iter().map(|&way| Point::default() + way).collect::<Vec<_>>()))
    }

    /// Opens one of the nodes that guide.
    fn open_guided(&mut self, node: &Node) {
        if node.bound_m2 > self.cutoff_m2() || self.steps > GUIDED_STEPS {
            self.guided.clear();
            return;
        }
        if node.is_leaf() || self.best.is_none() {
            let posts = self.rounded(node);
            let lengths = self.lengths(node.ring, &posts, &posts);
            let held = self.held_in(&node.shape, &lengths, 0, LEAF_ROUNDS);
            let flat = posts.windows(2).any(|pair| pair[1] <= pair[0]);
            if !flat && amiss_m(&held.at, &lengths, &[]) < EXACT_M && self.may_stand(&held.at) {
                self.take(node.ring, &posts, &held.at, held.cost_m2(&self.sketch));
            }
        }
        if node.is_leaf() {
            return;
        }
        for (mut low, mut high) in self.halves(node) {
            if !self.tighten(node.ring, &mut low, &mut high) {
                continue;
            }
            let lengths = self.lengths(node.ring, &low, &high);
            let shape = self.held_in(&node.shape, &lengths, 0, GUIDED_ROUNDS);
            let cost_m2 = shape.cost_m2(&self.sketch);
            if amiss_m(&shape.at, &lengths, &[]) < 0.1 && cost_m2 < self.cutoff_m2() {
                self.numbers += 1;
                self.guided.push(Node { ring: node.ring, low, high, shape, bound_m2: cost_m2, number: self.numbers });
            }
        }
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

    /// Works the shape of one choice of posts out and takes it where it is the best that may stand.
    fn work_out(&mut self, ring: usize, posts: &[u32], start: &Shape, known_m2: f64) {
        let posts_m = &self.rings[ring].posts_m;
        let total_m = posts_m[posts_m.len() - 1];
        let side_m = |pair: &[u32]| posts_m[pair[1] as usize] - posts_m[pair[0] as usize];
        let bad = |pair: &[u32]| pair[1] <= pair[0] || side_m(pair) >= total_m / 2.0 - FLAT_M;
        if posts.windows(2).any(bad) || !self.tried.insert((ring, posts.to_vec())) {
            return;
        }
        let sides_m: Vec<f64> = posts.windows(2).map(side_m).collect();
        self.closed_any = true;
        let lengths = self.lengths(ring, posts, posts);
        let first = self.settled(ring, posts, posts, start.clone(), LEAF_ROUNDS);
        let mut lower = lower_m2(&self.sketch, &first, &lengths).max(known_m2);
        if first.walls.iter().any(|(_, push_m)| *push_m > 0.0) {
            let free = Shape { walls: Vec::new(), ..start.clone() };
            let free = settle(&self.sketch, free, &lengths, &mut |_| Vec::new(), LEAF_ROUNDS, &mut self.steps);
            lower = lower.max(lower_m2(&self.sketch, &free, &lengths));
        }
        let mut shapes = vec![first];
        let cost = shapes[0].cost_m2(&self.sketch);
        let met = shapes[0].settled && amiss_m(&shapes[0].at, &lengths, &[]) < EXACT_M;
        if !met || cost > lower + grain_m2(cost) {
            if lower > self.cutoff_m2() {
                return;
            }
            if sides_m.len() == 3 {
                let rigid = triangles(&self.sketch, &sides_m);
                // The two rigid ways to lay a triangle are all that there are.
                let least = rigid.iter().map(|at| cost_m2(&self.sketch, at)).fold(f64::INFINITY, f64::min);
                lower = lower.max(least - grain_m2(least));
                shapes.extend(rigid.into_iter().map(Shape::at_rest));
            }
            for at in starts(&self.sketch, &shapes[0].at) {
                shapes.push(self.settled(ring, posts, posts, Shape::at_rest(at), LEAF_ROUNDS));
            }
        }
        let mut taken = f64::INFINITY;
        shapes.retain(|shape| amiss_m(&shape.at, &lengths, &[]) < EXACT_M);
        shapes.sort_by(|one, other| one.cost_m2(&self.sketch).total_cmp(&other.cost_m2(&self.sketch)));
        let mut pushed = Vec::new();
        for shape in &shapes {
            let cost = shape.cost_m2(&self.sketch);
            if cost >= taken {
                break;
            }
            if self.may_stand(&shape.at) {
                taken = cost;
                self.take(ring, posts, &shape.at, cost);
            } else if cost <= self.cutoff_m2() {
                pushed.push(shape.clone());
            }
        }
        for shape in pushed {
            // Pushed back from where it stands, drawn in, by the next best side, and from where the best so far stands.
            let drawn_in = Shape::at_rest(drawn_in(&shape.at, 0.85));
            let mut starts =
                vec![(shape.clone(), 0), (drawn_in, 0), (shape.clone(), 1), (shape, FreeGround::LAST_CHOICE)];
            starts.extend(self.best.as_ref().map(|best| (Shape::at_rest(best.at.clone()), 0)));
            for (start, choice) in starts {
                let held = self.held_in(&start, &lengths, choice, LEAF_ROUNDS);
                let cost = held.cost_m2(&self.sketch);
                if cost < taken && amiss_m(&held.at, &lengths, &[]) < EXACT_M && self.may_stand(&held.at) {
                    taken = cost;
                    self.take(ring, posts, &held.at, cost);
                }
            }
        }
        if taken > lower + grain_m2(lower) {
            self.open_m2 = self.open_m2.min(lower);
        }
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

    fn take(&mut self, ring: usize, posts: &[u32], at: &[Vector], cost_m2: f64) {
        let better = self.best.as_ref().is_none_or(|best| {
            let grain = grain_m2(best.cost_m2);
            let first = (ring, posts) < (best.ring, &best.posts[..]);
            cost_m2 < best.cost_m2 - grain || (cost_m2 <= best.cost_m2 + grain && first)
        });
        if better {
            self.best = Some(Found { ring, posts: posts.to_vec(), at: at.to_vec(), cost_m2 });
        }
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

/// Other shapes to start from: the sketch, and each corner laid over to the other side of its neighbours' chord.
fn starts(sketch: &[Vector], at: &[Vector]) -> Vec<Vec<Vector>> {
    let count = at.len();
    let mut all = vec![sketch.to_vec()];
    let middle = at.iter().fold(Vector::default(), |sum, &place| sum + place) * (1.0 / count as f64);
    if count.is_multiple_of(2) {
        // Far stretched, an outline lies nearest with every other corner drawn in.
        for parity in [0, 1] {
            let drawn_in = |(index, &place): (usize, &Vector)| {
                let share = if index % 2 == parity { 0.9 } else { 1.1 };
                middle + (place - middle) * share
            };
            all.push(at.iter().enumerate().map(drawn_in).collect());
        }
    }
    for corner in 0..count {
        let (before, after) = (at[(corner + count - 1) % count], at[(corner + 1) % count]);
        let chord = (after - before).unit();
        let off = at[corner] - before;
        let mut other = at.to_vec();
        other[corner] = before + chord * (2.0 * off.dot(chord)) - off;
        all.push(other);
    }
    all
}

/// A triangle of given sides laid on the sketch in both of its ways, each turned and moved to the least cost.
///
/// With both centred, the best turn of `t` onto `s` as complex numbers is the angle of `sum s conj(t)`; laid over, `t` is
/// its own conjugate.
fn triangles(sketch: &[Vector], sides_m: &[f64]) -> Vec<Vec<Vector>> {
    let (a, b, c) = (sides_m[0], sides_m[1], sides_m[2]);
    let east = (a * a + c * c - b * b) / (2.0 * a);
    let north = (c * c - east * east).max(0.0).sqrt();
    let middle = |at: &[Vector]| at.iter().fold(Vector::default(), |sum, &place| sum + place) * (1.0 / 3.0);
    let goal = middle(sketch);
    [north, -north]
        .map(|north| {
            let mut laid = vec![Vector::default(), Vector::new(a, 0.0), Vector::new(east, north)];
            let centre = middle(&laid);
            let (mut cos, mut sin) = (0.0, 0.0);
            for (place, &drawn) in laid.iter_mut().zip(sketch) {
                *place = *place - centre;
                cos += place.dot(drawn - goal);
                sin += place.cross(drawn - goal);
            }
            let size = f64::hypot(cos, sin).max(1e-300);
            let (cos, sin) = (cos / size, sin / size);
            laid.iter().map(|&place| goal + place * cos + place.left() * sin).collect()
        })
        .into()
}
