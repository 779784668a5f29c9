//! The search of one family, free in the ground or against one wall: a value that grows by steps.

use super::branch::{Branch, Pose};
use super::field::Field;
use super::free::{self, Climb};
use super::kind::{Kind, LONGEST_PROPORTION};
use super::place::settle;
use super::request::Family;
use super::round::Round;
use super::wall::{self, Leaning, Leant, Wall};
use super::{bound, polish, whole};
use crate::{Point, shapes};

/// Steps of each family, and cells looked at in one.
const STEPS: (u32, u32) = (64, 250);
/// Climbing steps of the free outline in one step.
const CLIMBS: u32 = 6;
/// Steps of a free outline, its starts, and how many of them are climbed from to the end.
const FREE_STEPS: u32 = 900;
const FREE_STARTS: usize = 80;
const FREE_FINALISTS: usize = 12;
/// A shape limited by the ground is drawn in by this share, so that rounding does not put it over a line.
const DRAWN_IN: f64 = 1e-9;

/// What all tasks are asked, in the frame.
#[derive(Debug, Clone)]
pub(super) struct Asked {
    pub(super) field: Field,
    pub(super) towards: Option<Point>,
    pub(super) line: f64,
    pub(super) panels: u32,
    pub(super) equal: bool,
    pub(super) free_sides: u32,
    pub(super) ground_bound: f64,
}

impl Asked {
    fn panel(&self) -> f64 {
        self.line / f64::from(self.panels)
    }
}

/// What a task has found, in the frame.
#[derive(Debug, Clone)]
pub(super) struct Found {
    pub(super) corners: Vec<Point>,
    pub(super) whole: Option<(Vec<Point>, Vec<u32>)>,
}

/// One family's search.
#[derive(Debug, Clone)]
pub(super) struct Task {
    pub(super) family: Family,
    /// The wall's number and the wall with its free side on the left.
    pub(super) wall: Option<(usize, Wall)>,
    work: Work,
    steps: u32,
    pub(super) done: bool,
    pub(super) found: Option<Found>,
}

#[derive(Debug, Clone)]
enum Work {
    Middle(Kind, Box<Branch>),
    Round(Box<Round>),
    Lean,
    Free { climbs: Vec<Climb>, left: u32 },
}

impl Task {
    pub(super) fn new(family: Family, asked: &Asked, wall: Option<(usize, Wall)>) -> Self {
        let middle = |kind: Kind| Work::Middle(kind, Box::new(Branch::new(kind, asked.line)));
        let work = match (family, wall) {
            (Family::Free, _) => Work::Free { climbs: Vec::new(), left: FREE_STEPS },
            (_, Some(_)) => Work::Lean,
            (Family::Square, _) => middle(Kind::Regular(4)),
            (Family::Rectangle, _) => middle(Kind::Rectangle),
            (Family::Hexagon, _) => middle(Kind::Regular(6)),
            (Family::Octagon, _) => middle(Kind::Regular(8)),
            (Family::Round, _) => {
                Work::Round(Box::new(Round::new(&asked.field, asked.panel(), asked.panels, asked.ground_bound)))
            }
        };
        Self { family, wall, work, steps: 0, done: false, found: None }
    }

    /// Gives a free outline the shapes found so far to start from.
    pub(super) fn start_from(&mut self, shapes: impl Iterator<Item = Vec<Point>>, asked: &Asked) {
        if let Work::Free { climbs, .. } = &mut self.work {
            let most = asked.free_sides as usize;
            let mut starts: Vec<Vec<Point>> = shapes.map(|shape| thinned(shape, most)).collect();
            if self.wall.is_none() {
                starts.extend(free::paddock(&asked.field, most, asked.line));
            }
            starts.sort_by(|one, two| free::area(two).total_cmp(&free::area(one)));
            let on_wall = self.wall.map(|wall| (wall.1.from, wall.1.to));
            let mut kept: Vec<Vec<Point>> = Vec::new();
            for start in starts {
                if kept.len() < FREE_STARTS && !kept.iter().any(|other| free::alike(other, &start)) {
                    climbs.push(Climb::new(start.clone(), most, asked.line, on_wall));
                    kept.push(start);
                }
            }
        }
    }

    /// Every shape that climbs ended at.
    pub(super) fn ends(&self) -> Vec<Vec<Point>> {
        match &self.work {
            Work::Middle(kind, branch) => branch.ends().map(|end| polish::corners(*kind, end)).collect(),
            _ => self.found.iter().map(|found| found.corners.clone()).collect(),
        }
    }

    /// Goes on; a task that is done stays as it is.
    pub(super) fn step(&mut self, asked: &Asked) {
        if self.done {
            return;
        }
        self.steps += 1;
        let (steps, looks) = STEPS;
        let last = self.steps >= steps;
        let wall = self.wall.map(|wall| wall.1);
        match &mut self.work {
            Work::Middle(kind, branch) => {
                branch.step(&asked.field, looks);
                self.done = last || branch.is_done();
                if let Some(mut best) = branch.best {
                    // Within a billionth the nets are the limit and any place will do as well.
                    if self.done && best.scale >= branch.cap() * (1.0 - 1e-9) {
                        best = settle(*kind, &asked.field, best, asked.towards);
                    }
                    self.found = Some(with_middle(*kind, asked, best));
                }
            }
            Work::Round(round) => {
                round.step(&asked.field, looks);
                self.done = round.is_done();
                if let Some((number, mut best)) = round.best {
                    let kind = Kind::Regular(number);
                    if self.done {
                        best = settle(kind, &asked.field, best, asked.towards);
                    }
                    let corners = polish::corners(kind, best);
                    let whole = asked.equal.then(|| (corners.clone(), vec![1; number as usize]));
                    self.found = Some(Found { corners, whole });
                }
            }
            Work::Lean => {
                self.done = true;
                self.found = wall.and_then(|wall| lean(self.family, asked, wall));
            }
            Work::Free { climbs, left } => {
                *left = left.saturating_sub(1);
                // All a little way, then the few that got farthest to their ends.
                let begun = climbs.iter_mut().position(|climb| climb.is_fresh());
                let Some(next) = begun.or_else(|| {
                    climbs.sort_by(|one, two| free::area(two.corners()).total_cmp(&free::area(one.corners())));
                    climbs.truncate(FREE_FINALISTS);
                    (!climbs.is_empty() && *left > 0).then_some(0)
                }) else {
                    self.done = true;
                    return;
                };
                let climb = &mut climbs[next];
                for _ in 0..CLIMBS {
                    if !climb.is_done() {
                        climb.step(&asked.field);
                    }
                }
                let corners = climb.corners();
                if self.found.as_ref().is_none_or(|found| free::area(&found.corners) < free::area(corners)) {
                    self.found = Some(Found { corners: corners.to_vec(), whole: None });
                }
                if climb.is_done() && begun.is_none() {
                    match climb.renewed(&asked.field) {
                        Some(again) => *climb = again,
                        None => drop(climbs.remove(next)),
                    }
                }
            }
        }
    }

    /// No outline of this family encloses more; in the frame.
    pub(super) fn bound(&self, asked: &Asked) -> f64 {
        let ground = asked.ground_bound;
        let line = asked.line;
        let borrowed = self.wall.is_some();
        let by_line = match (self.family, borrowed) {
            (Family::Square, true) => (line / 3.0).powi(2),
            (Family::Rectangle, true) => line * line / 8.0,
            // A regular polygon of n sides, n - 1 of them netted.
            (Family::Hexagon, true) => shapes::regular_area_m2(line * 6.0 / 5.0, 6),
            (Family::Octagon, true) => shapes::regular_area_m2(line * 8.0 / 7.0, 8),
            (Family::Round, true) => bound::isoperimetric(line, asked.panels + 1, true),
            (Family::Square | Family::Rectangle, false) => bound::isoperimetric(line, 4, false),
            (Family::Hexagon, false) => bound::isoperimetric(line, 6, false),
            (Family::Octagon, false) => bound::isoperimetric(line, 8, false),
            (Family::Round, false) => bound::isoperimetric(line, asked.panels, false),
            (Family::Free, _) => bound::isoperimetric(line, asked.free_sides, borrowed),
        };
        let searched = match &self.work {
            Work::Middle(Kind::Rectangle, branch) => {
                let beyond = bound::long_rectangle(&asked.field, line, LONGEST_PROPORTION);
                branch.bound().powi(2).max(beyond)
            }
            Work::Middle(_, branch) => branch.bound().powi(2),
            Work::Round(round) => round.area(round.most()),
            Work::Lean | Work::Free { .. } => f64::INFINITY,
        };
        by_line.min(ground).min(searched)
    }
}

/// A shape with a middle, its corners and its whole panels.
fn with_middle(kind: Kind, asked: &Asked, pose: Pose) -> Found {
    let by_ground = pose.scale * kind.round(pose.stretch) < asked.line * (1.0 - 2.0 * DRAWN_IN);
    let drawn = if by_ground { Pose { scale: pose.scale * (1.0 - DRAWN_IN), ..pose } } else { pose };
    let whole = asked.equal.then(|| whole::whole(kind, &asked.field, pose, asked.panel(), asked.panels)).flatten();
    let whole = whole.map(|(pose, sides)| (polish::corners(kind, pose), sides));
    Found { corners: polish::corners(kind, drawn), whole }
}

/// The family's largest against a wall.
fn lean(family: Family, asked: &Asked, wall: Wall) -> Option<Found> {
    let leaning = match family {
        Family::Square => Leaning::Regular(4),
        Family::Rectangle => Leaning::Rectangle,
        Family::Hexagon => Leaning::Regular(6),
        Family::Octagon => Leaning::Regular(8),
        Family::Round | Family::Free => {
            return wall::arc(&asked.field, wall, asked.panel(), asked.panels).map(found_arc(asked));
        }
    };
    let leant = wall::lean(&asked.field, leaning, wall, asked.line)?;
    let panels = |leant: &Leant| wall::whole(&asked.field, leaning, wall, leant, asked.panel(), asked.panels);
    let whole = if asked.equal { panels(&leant) } else { None };
    Some(Found { corners: leant.corners, whole })
}

fn found_arc(asked: &Asked) -> impl Fn(Vec<Point>) -> Found + '_ {
    |corners| {
        let sides = vec![1; corners.len() - 1];
        Found { whole: asked.equal.then(|| (corners.clone(), sides)), corners }
    }
}

/// A convex ring with corners left out evenly until it has at most so many; the first and the last stay.
fn thinned(ring: Vec<Point>, most: usize) -> Vec<Point> {
    if ring.len() <= most {
        return ring;
    }
    let last = ring.len() - 1;
    (0..most).map(|index| ring[(index * last + (most - 1) / 2) / (most - 1)]).collect()
}
