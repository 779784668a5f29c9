//! A fit laid on ground that is not level: sides of whole panels along the ground, not on the map.
//!
//! Metres. [`super::search`] chooses the panels of each side for lengths in plan. Here the plan lengths are sought at which
//! each side, measured along the ground where it then lies, is as long as its panels; for any such lengths the corners are
//! the nearest to the sketch. That is a root of as many equations as there are sides: Broyden's method (1965) from the
//! diagonal of ground to plan, whose first step is the fixed point's. Then panels go from one side to another, one at a
//! time, while the corners come nearer: a side that climbs wants more of them than it has on the map.
//!
//! What is found is whole along the ground. That nothing is nearer is not proved: the bound of [`super::bound`] is one
//! for lengths in plan.

use super::ground::FreeGround;
use super::search::Search;
use super::shape::{Shape, sides};
use crate::Vector;

/// A side this near to its panels' length along the ground is whole, metres: 40 sides close to a nanometre.
const WHOLE_M: f64 = 2e-11;
/// What the last digits of a plan far from its origin leave, metres.
const NEAR_WHOLE_M: f64 = 1e-9;
/// Steps after which a line is given up.
const MOST_ROUNDS: usize = 40;
/// With more corners panels stay on the side where the map has them.
const MOST_EXCHANGED: usize = 16;
/// Exchanges of one panel.
const MOST_EXCHANGES: usize = 12;
/// Of the exchanges that promise to come nearer, so many are worked out.
const WORKED_OUT: usize = 4;
/// Nearer by less is no nearer, square metres.
const GRAIN_M2: f64 = 1e-9;

/// Why a fit cannot be laid on the ground.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unlaid {
    /// The outlines that were found leave the paddock, trespass or cross themselves.
    NoRoom,
    /// No lengths in plan were found at which every side is whole along the ground.
    NotWhole,
}

/// An outline on the ground.
#[derive(Debug, Clone)]
pub(super) struct Laid {
    pub(super) posts: Vec<u32>,
    pub(super) at: Vec<Vector>,
    pub(super) cost_m2: f64,
    /// Along the ground over in plan, of each side.
    stretch: Vec<f64>,
}

/// The length along the ground of each side of the outline through those corners; `None` where it cannot be said.
pub(super) type Measure<'a> = &'a dyn Fn(&[Vector]) -> Option<Vec<f64>>;

/// Lays the best of a search on the ground; its rings are `eased` times shorter than the panels.
pub(super) fn over(search: &Search, eased: f64, measure: Measure<'_>) -> Option<Result<Laid, Unlaid>> {
    let best = search.best.as_ref()?;
    let posts_m: Vec<f64> = search.rings[best.ring].posts_m.iter().map(|post_m| post_m * eased).collect();
    let ground = Ground { search, posts_m: &posts_m, measure };
    let mut why = Unlaid::NotWhole;
    let mut now = match ground.laid(&best.posts, &best.at, None) {
        Ok(laid) => Some(laid),
        Err(reason) => {
            why = reason;
            None
        }
    };
    for _ in 0..MOST_EXCHANGES {
        match ground.exchanged(&best.posts, &best.at, now.as_ref()) {
            Some(nearer) => now = Some(nearer),
            None => break,
        }
    }
    Some(now.ok_or(why))
}

struct Ground<'a> {
    search: &'a Search,
    /// Places of the posts along the ground.
    posts_m: &'a [f64],
    measure: Measure<'a>,
}

impl Ground<'_> {
    fn goals_m(&self, posts: &[u32]) -> Vec<f64> {
        posts.windows(2).map(|pair| self.posts_m[pair[1] as usize] - self.posts_m[pair[0] as usize]).collect()
    }

    /// Along the ground over in plan, of each side.
    fn stretch(&self, at: &[Vector]) -> Option<Vec<f64>> {
        let ground_m = (self.measure)(at)?;
        let stretch = ground_m.iter().zip(sides(at)).map(|(ground_m, (side_m, _))| ground_m / side_m);
        Some(stretch.collect())
    }

    /// The outline with those posts at its corners: free first, and where that may not stand pushed back into the ground.
    fn laid(&self, posts: &[u32], from: &[Vector], stretch: Option<&[f64]>) -> Result<Laid, Unlaid> {
        let mut why = Unlaid::NotWhole;
        let choices = std::iter::once(None).chain((0..=FreeGround::LAST_CHOICE).map(Some));
        for choice in choices {
            let Some(laid) = self.whole(posts, from, stretch, choice) else { continue };
            if self.search.may_stand(&laid.at) {
                return Ok(laid);
            }
            why = Unlaid::NoRoom;
        }
        Err(why)
    }

    /// The plan lengths at which every side is whole along the ground.
    fn whole(&self, posts: &[u32], from: &[Vector], stretch: Option<&[f64]>, choice: Option<usize>) -> Option<Laid> {
        let goals_m = self.goals_m(posts);
        let count = goals_m.len();
        let stretch = stretch.map_or_else(|| self.stretch(from), |stretch| Some(stretch.to_vec()))?;
        let mut plan_m: Vec<f64> = goals_m.iter().zip(&stretch).map(|(goal_m, stretch)| goal_m / stretch).collect();
        let mut shape = Shape::at_rest(from.to_vec());
        let mut inverse: Vec<Vec<f64>> = Vec::new();
        let mut before: Option<(Vec<f64>, Vec<f64>)> = None;
        let mut nearest: Option<(f64, Laid)> = None;
        for _ in 0..MOST_ROUNDS {
            shape = self.search.nearest(&shape, &plan_m, choice)?;
            let ground_m = (self.measure)(&shape.at)?;
            let off_m: Vec<f64> = ground_m.iter().zip(&goals_m).map(|(ground_m, goal_m)| ground_m - goal_m).collect();
            let worst_m = off_m.iter().fold(0.0_f64, |worst, off_m| worst.max(off_m.abs()));
            let stretch: Vec<f64> = ground_m.iter().zip(&plan_m).map(|(ground_m, plan_m)| ground_m / plan_m).collect();
            if nearest.as_ref().is_none_or(|(least_m, _)| worst_m < *least_m) {
                let cost_m2 = shape.cost_m2(self.search.sketch());
                let laid = Laid { posts: posts.to_vec(), at: shape.at.clone(), cost_m2, stretch: stretch.clone() };
                nearest = Some((worst_m, laid));
            }
            if worst_m < WHOLE_M {
                break;
            }
            match &before {
                None => {
                    inverse = vec![vec![0.0; count]; count];
                    for (side, stretch) in stretch.iter().enumerate() {
                        inverse[side][side] = 1.0 / stretch;
                    }
                }
                Some((was_m, was_off_m)) => learn(&mut inverse, (was_m, &plan_m), (was_off_m, &off_m)),
            }
            before = Some((plan_m.clone(), off_m.clone()));
            for (side, row) in inverse.iter().enumerate() {
                let step_m = row.iter().zip(&off_m).map(|(part, off_m)| part * off_m).sum::<f64>();
                // A side stays a side, however wrong the slope is guessed.
                plan_m[side] = (plan_m[side] - step_m).clamp(0.5 * plan_m[side], 2.0 * plan_m[side]);
            }
        }
        nearest.filter(|(worst_m, _)| *worst_m < NEAR_WHOLE_M).map(|(_, laid)| laid)
    }

    /// The nearest of the outlines with one panel taken from one side to another, where it is nearer than `now`.
    fn exchanged(&self, posts: &[u32], from: &[Vector], now: Option<&Laid>) -> Option<Laid> {
        let (posts, from) = now.map_or((posts, from), |now| (&now.posts, &now.at));
        let count = posts.len() - 1;
        if count > MOST_EXCHANGED {
            return None;
        }
        let stretch = now.map_or_else(|| self.stretch(from), |now| Some(now.stretch.clone()))?;
        let most_m2 = now.map_or(f64::INFINITY, |now| now.cost_m2 - GRAIN_M2);
        let start = Shape::at_rest(from.to_vec());
        let mut promising: Vec<(f64, Vec<u32>)> = Vec::new();
        for first in 1..count {
            for last in first..count {
                for on in [true, false] {
                    let mut other = posts.to_vec();
                    for post in &mut other[first..=last] {
                        *post = if on { *post + 1 } else { *post - 1 };
                    }
                    let goals_m = self.goals_m_of(&other);
                    let Some(goals_m) = goals_m else { continue };
                    let plan_m: Vec<f64> =
                        goals_m.iter().zip(&stretch).map(|(goal_m, stretch)| goal_m / stretch).collect();
                    let Some(shape) = self.search.nearest(&start, &plan_m, None) else { continue };
                    let cost_m2 = shape.cost_m2(self.search.sketch());
                    if cost_m2 < most_m2 {
                        promising.push((cost_m2, other));
                    }
                }
            }
        }
        promising.sort_by(|one, other| one.0.total_cmp(&other.0).then_with(|| one.1.cmp(&other.1)));
        let worked_out = promising.iter().take(WORKED_OUT);
        let found = worked_out.filter_map(|(_, posts)| self.laid(posts, from, Some(&stretch)).ok());
        found.filter(|laid| laid.cost_m2 < most_m2).min_by(|one, other| one.cost_m2.total_cmp(&other.cost_m2))
    }

    /// The lengths of the sides, where each has a panel and none is as long as the rest together.
    fn goals_m_of(&self, posts: &[u32]) -> Option<Vec<f64>> {
        if posts.windows(2).any(|pair| pair[1] <= pair[0]) {
            return None;
        }
        let goals_m = self.goals_m(posts);
        let half_m = goals_m.iter().sum::<f64>() / 2.0;
        goals_m.iter().all(|goal_m| *goal_m < half_m).then_some(goals_m)
    }
}

/// Broyden's update of the inverse by what a step did.
fn learn(inverse: &mut [Vec<f64>], (was_m, now_m): (&[f64], &[f64]), (was_off_m, now_off_m): (&[f64], &[f64])) {
    let count = was_m.len();
    let step: Vec<f64> = now_m.iter().zip(was_m).map(|(now, was)| now - was).collect();
    let change: Vec<f64> = now_off_m.iter().zip(was_off_m).map(|(now, was)| now - was).collect();
    let guessed: Vec<f64> = inverse.iter().map(|row| row.iter().zip(&change).map(|(a, b)| a * b).sum()).collect();
    let across: Vec<f64> =
        (0..count).map(|column| (0..count).map(|row| step[row] * inverse[row][column]).sum()).collect();
    let length: f64 = step.iter().zip(&guessed).map(|(a, b)| a * b).sum();
    // A step that says nothing, or the opposite of what it was taken for, teaches nothing.
    if length.abs() <= 0.1 * step.iter().map(|part| part * part).sum::<f64>() {
        return;
    }
    for (row, (step, guessed)) in inverse.iter_mut().zip(step.iter().zip(&guessed)) {
        for (value, across) in row.iter_mut().zip(&across) {
            *value += (step - guessed) * across / length;
        }
    }
}
