//! The free outline of so many sides: every corner climbs by itself, dents allowed.
//!
//! Starts are the shapes found so far with corners added on their longest sides, and the paddock itself with corners
//! cut off. From each, a row of small linear programmes over all corners (as in [`super::polish`]); a step that leaves
//! the free ground by what is not linear is drawn together about its middle, else halved. What is found is the best
//! near the starts, not the best of all; the bound beside it is that of any outline.

use super::contact::contacts;
use super::field::Field;
use super::fits::{fits, sides};
use super::lp::{Limit, best_step};
use crate::{Point, Vector};

/// The first reach, the one at which a climb ends, and its most steps.
const REACH: (f64, f64, u32) = (0.1, 2e-6, 90);

/// Way by which the slopes are measured.
const NUDGE: f64 = 1e-6;

/// The outline as it climbs.
#[derive(Debug, Clone)]
pub(super) struct Climb {
    corners: Vec<Point>,
    /// The netted line may be this long.
    round: f64,
    /// The last side, from the last corner to the first, lies on this wall and is not netted.
    wall: Option<(Point, Point)>,
    reach: f64,
    steps: u32,
    /// How often it was begun anew, and the area that it has to exceed to be so again.
    renewals: u32,
    before: f64,
}

/// Steps after which a climb is compared with others.
const FRESH: u32 = 18;
/// How often a climb is begun anew, and by which share each has to gain.
const RENEWALS: (u32, f64) = (4, 1e-4);
/// Corners nearer to the line between their neighbours than this share of the outline's size are none.
const STRAIGHT: f64 = 1e-4;

/// Whether two outlines of nearly one area lie at nearly one place.
pub(super) fn alike(one: &[Point], other: &[Point]) -> bool {
    let (a, b) = (area(one), area(other));
    (a - b).abs() < 0.01 * a && middle(one).distance_m(middle(other)) < 0.03
}

pub(super) fn area(corners: &[Point]) -> f64 {
    let first = corners[0];
    corners.windows(2).map(|pair| (pair[0] - first).cross(pair[1] - first)).sum::<f64>() / 2.0
}

/// Length of the netted sides: all, or all but the last.
pub(super) fn netted(corners: &[Point], on_wall: bool) -> f64 {
    sides(corners).take(corners.len() - usize::from(on_wall)).map(|(from, to)| from.distance_m(to)).sum()
}

impl Climb {
    /// Starts from an outline that fits, counter-clockwise, with at most `count` sides.
    pub(super) fn new(mut corners: Vec<Point>, count: usize, round: f64, wall: Option<(Point, Point)>) -> Self {
        while corners.len() < count {
            let netted = corners.len() - usize::from(wall.is_some());
            let length = |index: &usize| corners[*index].distance_m(corners[(*index + 1) % corners.len()]);
            // The first of the longest, whatever rounding says.
            let longest = (0..netted)
                .fold(0, |best, index| if length(&index) > length(&best) * (1.0 + 1e-9) { index } else { best });
            let middle = corners[longest].towards(corners[(longest + 1) % corners.len()], 0.5);
            corners.insert(longest + 1, middle);
        }
        let reach = REACH.0 * area(&corners).max(0.0).sqrt();
        Self { corners, round, wall, reach, steps: 0, renewals: 0, before: 0.0 }
    }

    pub(super) fn corners(&self) -> &[Point] {
        &self.corners
    }

    pub(super) fn is_done(&self) -> bool {
        self.steps >= REACH.2 || self.reach < REACH.1
    }

    /// Whether it has barely begun.
    pub(super) fn is_fresh(&self) -> bool {
        self.renewals == 0 && self.steps < FRESH && !self.is_done()
    }

    /// The climb begun anew with its idle corners put to use on its longest sides; `None` where that gained nothing.
    pub(super) fn renewed(&self, field: &Field) -> Option<Climb> {
        let here = area(&self.corners);
        if self.renewals >= RENEWALS.0 || here < self.before * (1.0 + RENEWALS.1) {
            return None;
        }
        let mut corners = self.corners.clone();
        let fixed = usize::from(self.wall.is_some());
        let mut index = fixed;
        while index + fixed < corners.len() && corners.len() > 3 + fixed {
            let count = corners.len();
            let (before, at, after) =
                (corners[(index + count - 1) % count], corners[index], corners[(index + 1) % count]);
            let mut without = corners.clone();
            without.remove(index);
            if super::field::distance(before - at, after - at) < STRAIGHT * here.sqrt() && fits(field, &without) {
                corners = without;
            } else {
                index += 1;
            }
        }
        let again = Climb::new(corners, self.corners.len(), self.round, self.wall);
        Some(Climb { renewals: self.renewals + 1, before: here, ..again })
    }

    fn unknowns(&self) -> usize {
        2 * self.corners.len() - if self.wall.is_some() { 2 } else { 0 }
    }

    fn moved(&self, x: &[f64]) -> Vec<Point> {
        let mut corners = self.corners.clone();
        let last = corners.len() - 1;
        if let Some((from, to)) = self.wall {
            let (along, length) = ((to - from).unit(), from.distance_m(to));
            let slid = |at: Point, by: f64| from + along * (along.dot(at - from) + by).clamp(0.0, length);
            corners[0] = slid(corners[0], x[0]);
            corners[last] = slid(corners[last], x[1]);
            for (index, at) in corners[1..last].iter_mut().enumerate() {
                *at = *at + Vector::new(x[2 + 2 * index], x[3 + 2 * index]);
            }
        } else {
            for (index, at) in corners.iter_mut().enumerate() {
                *at = *at + Vector::new(x[2 * index], x[2 * index + 1]);
            }
        }
        corners
    }

    /// One small step.
    pub(super) fn step(&mut self, field: &Field) {
        self.steps += 1;
        let on_wall = self.wall.is_some();
        let here = area(&self.corners);
        let line = netted(&self.corners, on_wall);
        let nudged: Vec<Vec<Point>> = (0..self.unknowns())
            .map(|index| {
                let mut x = vec![0.0; self.unknowns()];
                x[index] = NUDGE;
                let forward = self.moved(&x);
                // A wall's corner at its end cannot slide on; its slope is taken the other way.
                if forward == self.corners {
                    x[index] = -NUDGE;
                    let back = self.moved(&x);
                    return self.corners.iter().zip(back).map(|(&at, other)| at + (at - other)).collect();
                }
                forward
            })
            .collect();
        let mut limits: Vec<Limit> = contacts(field, &self.corners, 3.0 * self.reach)
            .iter()
            .map(|meeting| {
                let gap = meeting.gap(&self.corners);
                (nudged.iter().map(|corners| (gap - meeting.gap(corners)) / NUDGE).collect(), gap)
            })
            .collect();
        let slopes = nudged.iter().map(|corners| (netted(corners, on_wall) - line) / NUDGE).collect();
        limits.push((slopes, self.round - line));
        if let Some((from, to)) = self.wall {
            let along = (to - from).unit();
            let last = self.corners[self.corners.len() - 1];
            for (unknown, at) in [(0, self.corners[0]), (1, last)] {
                for (sign, left) in [(1.0, along.dot(to - at)), (-1.0, along.dot(at - from))] {
                    let mut row = vec![0.0; self.unknowns()];
                    row[unknown] = sign;
                    limits.push((row, left));
                }
            }
        }
        let gain: Vec<f64> = nudged.iter().map(|corners| (area(corners) - here) / NUDGE).collect();
        let step = best_step(&gain, &limits, self.reach);
        let mut share = 1.0;
        for _ in 0..5 {
            let next = self.moved(&step.iter().map(|value| value * share).collect::<Vec<_>>());
            if let Some(next) = self.mended(field, next) {
                let gained = area(&next) - here;
                if gained > 0.0 {
                    self.corners = next;
                    if gained < 1e-3 * self.reach * self.reach.max(here) {
                        self.reach *= 0.5;
                    } else if share < 1.0 {
                        self.reach *= 0.7;
                    }
                    return;
                }
            }
            share *= 0.5;
        }
        self.reach *= 0.3;
    }

    /// The outline drawn together until its line is short enough and it fits; `None` where that does not help.
    fn mended(&self, field: &Field, mut corners: Vec<Point>) -> Option<Vec<Point>> {
        let on_wall = self.wall.is_some();
        let line = netted(&corners, on_wall);
        let middle = match self.wall {
            // Towards a place on the wall, so that the side on it stays there.
            Some(_) => corners[0].towards(corners[corners.len() - 1], 0.5),
            None => middle(&corners),
        };
        let mut shrink = (self.round / line).min(1.0);
        for _ in 0..4 {
            let drawn: Vec<Point> = corners.iter().map(|&at| middle.towards(at, shrink)).collect();
            if fits(field, &drawn) {
                return Some(drawn);
            }
            corners = drawn;
            shrink = 1.0 - 0.3 * self.reach * self.reach / area(&corners).max(GRAIN_AREA);
            if shrink < 0.9 {
                return None;
            }
        }
        None
    }
}

/// An area below which nothing is shrunk any more.
const GRAIN_AREA: f64 = 1e-12;

fn middle(corners: &[Point]) -> Point {
    let first = corners[0];
    let (mut doubled, mut sum) = (0.0, Vector::default());
    for pair in corners.windows(2) {
        let (a, b) = (pair[0] - first, pair[1] - first);
        doubled += a.cross(b);
        sum = sum + (a + b) * a.cross(b);
    }
    first + sum * (1.0 / (3.0 * doubled))
}

/// The paddock with corners cut off until it has at most `count`, where it then fits and its line is short enough.
pub(super) fn paddock(field: &Field, count: usize, round: f64) -> Option<Vec<Point>> {
    let mut corners = field.boundary.points.clone();
    while corners.len() > count {
        let loss = |index: usize| {
            let n = corners.len();
            let (before, at, after) = (corners[(index + n - 1) % n], corners[index], corners[(index + 1) % n]);
            (at - before).cross(after - at)
        };
        // Only corners that bulge: cutting a dent would leave the paddock.
        let least =
            (0..corners.len()).filter(|&index| loss(index) >= 0.0).min_by(|&a, &b| loss(a).total_cmp(&loss(b)))?;
        corners.remove(least);
    }
    (netted(&corners, false) <= round && fits(field, &corners)).then_some(corners)
}
