//! One choice of posts worked out to the end, from as many starts as its shape asks for.

use super::{EXACT_M, FLAT_M, Found, LEAF_ROUNDS, Search, drawn_in, grain_m2};
use crate::Vector;
use crate::fit::bound::lower_m2;
use crate::fit::ground::FreeGround;
use crate::fit::shape::{Shape, amiss_m, cost_m2, settle};

impl Search {
    /// Works the shape of one choice of posts out and takes it where it is the best that may stand.
    pub(super) fn work_out(&mut self, ring: usize, posts: &[u32], start: &Shape, known_m2: f64) {
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

    pub(super) fn take(&mut self, ring: usize, posts: &[u32], at: &[Vector], cost_m2: f64) {
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
