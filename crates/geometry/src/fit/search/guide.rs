//! Where the nearest line leaves the ground: lines that keep to it guide the search to good answers first.
//!
//! They prove nothing; with a good answer early, the search that proves has less to look at.

use super::{EXACT_M, LEAF_ROUNDS, Node, Search, drawn_in};
use crate::fit::ground::FreeGround;
use crate::fit::shape::{Shape, amiss_m};

/// Newton steps for a node that guides.
const GUIDED_ROUNDS: usize = 5;
/// Steps after which nothing guides any more.
const GUIDED_STEPS: u64 = 12_000;

impl Search {
    /// Finds lines on the ground, where the nearest leaves it, and lets them guide.
    pub(super) fn guide(&mut self, start: &Shape) {
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

    /// Opens one of the nodes that guide.
    pub(super) fn open_guided(&mut self, node: &Node) {
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
}
