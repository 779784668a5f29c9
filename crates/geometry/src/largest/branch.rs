//! Branch and bound over place, angle and proportion: the largest shape, and what no shape can exceed.
//!
//! A cell is a box of places times an interval of angles times one of stretches. At its middle the largest free scale s
//! is worked out exactly. If a shape of scale s' is free anywhere in the cell, then the shape of the middle's angle and
//! stretch is free there at scale `shrink` s' ([`Kind::shrink`]), and moved to the middle its first touch is nearer by
//! at most the gauge of the move: shrink s' <= s + gauge. So (s + gauge) / shrink bounds the cell. The cell with the
//! greatest bound is halved along what slackens it most. Whatever is left when the budget ends still bounds the answer.

use std::cmp::Ordering;
use std::collections::BinaryHeap;

use super::convex::Convex;
use super::field::Field;
use super::kind::Kind;
use super::polish::polish;
use crate::{Point, Vector, span_m};

/// Where a shape stands and how large it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Pose {
    pub(super) at: Point,
    pub(super) angle: f64,
    pub(super) stretch: f64,
    pub(super) scale: f64,
}

/// A bound this near above the answer, relative in scale, closes the search.
const CLOSED: f64 = 1e-4;

/// A place to start climbing from has to hold this share of the best scale; so many are climbed from in one step.
const PROMISING: f64 = 0.94;
const CLIMBS: usize = 3;
/// Seeds climbed from in one step.
const SEEDS: usize = 16;

/// The search for one kind of shape.
#[derive(Debug, Clone)]
pub(super) struct Branch {
    kind: Kind,
    /// The line may be this long.
    round: f64,
    cells: BinaryHeap<Cell>,
    pub(super) best: Option<Pose>,
    /// No free scale exceeds it.
    bound: f64,
    started: bool,
    /// Diameter of the paddock.
    across: f64,
    /// Climbs that stay well below this scale are given up.
    wanted: f64,
    /// The best scale when last it was climbed from beside the best ends.
    kicked: f64,
    /// A regular shape at angle 0.
    upright: Option<Convex>,
    /// Shapes that fit, to climb from before the cells are looked at, the best last.
    seeds: Vec<Pose>,
    /// Poses from elsewhere to start from.
    given: Vec<Pose>,
    /// Where climbs began and ended: what is like one of these is not climbed from again.
    climbed: Vec<Pose>,
}

impl Branch {
    pub(super) fn new(kind: Kind, round: f64) -> Self {
        Self {
            kind,
            round,
            cells: BinaryHeap::new(),
            best: None,
            bound: f64::INFINITY,
            started: false,
            across: 0.0,
            wanted: 0.0,
            kicked: 0.0,
            upright: matches!(kind, Kind::Regular(_)).then(|| kind.shape(0.0, 0.0)),
            seeds: Vec::new(),
            given: Vec::new(),
            climbed: Vec::new(),
        }
    }

    /// Nothing but the full scale, reached from these poses or others, whichever the kind of the shapes there was.
    pub(super) fn aiming(kind: Kind, round: f64, from: &[Pose]) -> Self {
        let search = Self::new(kind, round);
        Self { wanted: search.cap(), given: from.to_vec(), ..search }
    }

    fn shape(&self, angle: f64, stretch: f64) -> Convex {
        self.upright.as_ref().map_or_else(|| self.kind.shape(angle, stretch), |upright| upright.turned(angle))
    }

    /// The largest scale that the line's length allows anywhere.
    pub(super) fn cap(&self) -> f64 {
        self.round / self.kind.round(0.0)
    }

    /// Whether no more can be gained.
    pub(super) fn is_done(&self) -> bool {
        self.started && (self.cells.is_empty() || self.bound() <= self.best_scale() * (1.0 + CLOSED))
    }

    /// Where climbs ended.
    pub(super) fn ends(&self) -> impl Iterator<Item = Pose> + '_ {
        self.climbed.iter().skip(1).step_by(2).chain(&self.best).copied()
    }

    fn best_scale(&self) -> f64 {
        self.best.map_or(0.0, |best| best.scale)
    }

    /// No free shape is of greater scale.
    pub(super) fn bound(&self) -> f64 {
        // What is left out of the cells exceeds the best by less than CLOSED.
        self.bound.max(self.best_scale() * (1.0 + CLOSED)).min(self.cap())
    }

    /// Looks at so many more cells and climbs from the most promising.
    pub(super) fn step(&mut self, field: &Field, looks: u32) {
        if !self.started {
            self.started = true;
            self.across = diameter(&field.boundary.points);
            self.root(field);
            self.seeds = seeds(self.kind, field, self.round);
            let given = std::mem::take(&mut self.given);
            let given = given.into_iter().filter_map(|pose| refit(self.kind, field, self.round, pose));
            let mut given: Vec<Pose> = given.collect();
            given.sort_by(|one, two| one.scale.total_cmp(&two.scale));
            for pose in given {
                self.seeds.retain(|other| !alike(self.kind, &pose, other));
                self.seeds.push(pose);
            }
        }
        if self.seeds.is_empty() && self.wanted <= 0.0 && self.best_scale() > self.kicked * (1.0 + CLOSED) {
            self.kicked = self.best_scale();
            self.kick(field);
        }
        if !self.seeds.is_empty() {
            for _ in 0..SEEDS {
                match self.seeds.pop() {
                    Some(seed) if self.best_scale() < self.cap() => self.climb(field, seed),
                    _ => break,
                }
            }
            return;
        }
        let mut promising: Vec<Pose> = Vec::new();
        let mut left = looks;
        while left > 0 {
            let Some(cell) = self.cells.pop() else { break };
            self.bound = cell.bound;
            if cell.bound <= self.best_scale() * (1.0 + CLOSED) {
                self.cells.clear();
                break;
            }
            for side in [-0.5, 0.5] {
                let mut part = cell.clone();
                part.middle[cell.split] += side * cell.half[cell.split];
                part.half[cell.split] *= 0.5;
                left = left.saturating_sub(1);
                if let Some(found) = self.look(field, part)
                    && found.scale > self.best_scale() * PROMISING
                {
                    promising.push(found);
                }
            }
        }
        if self.cells.is_empty() {
            self.bound = self.best_scale();
        }
        promising.sort_by(|one, two| two.scale.total_cmp(&one.scale));
        let mut climbs = 0;
        for start in promising {
            if climbs < CLIMBS && !self.climbed.iter().any(|other| alike(self.kind, &start, other)) {
                climbs += 1;
                self.climb(field, start);
            }
        }
    }

    /// Whether all that it was given to start from has been climbed from.
    pub(super) fn has_climbed(&self) -> bool {
        self.started && self.seeds.is_empty()
    }

    /// Starts beside the best ends: turned, stretched, moved along and across.
    fn kick(&mut self, field: &Field) {
        let mut ends: Vec<Pose> = self.ends().collect();
        ends.sort_by(|one, two| two.scale.total_cmp(&one.scale));
        let mut tops: Vec<Pose> = Vec::new();
        for end in ends {
            if tops.len() < KICKED && !tops.iter().any(|other| alike(self.kind, &end, other)) {
                tops.push(end);
            }
        }
        for &top in tops.iter().rev() {
            let (sin, cos) = top.angle.sin_cos();
            let (long, wide) = ((top.stretch / 2.0).exp() * top.scale, (-top.stretch / 2.0).exp() * top.scale);
            for (along, across, turn, stretch) in KICKS {
                if stretch.abs() > 0.0 && self.kind != Kind::Rectangle {
                    continue;
                }
                let (along, across) = (along * long, across * wide);
                let at = top.at + Vector::new(along * cos - across * sin, along * sin + across * cos);
                let turn = turn * (top.stretch * -0.5).exp();
                let pose =
                    Pose { at, angle: top.angle + turn, stretch: (top.stretch + stretch).max(0.0), scale: top.scale };
                self.seeds.extend(refit(self.kind, field, self.round, pose));
            }
        }
    }

    fn climb(&mut self, field: &Field, start: Pose) {
        let end = polish(self.kind, field, self.round, start, self.best_scale().max(self.wanted));
        self.climbed.push(start);
        self.climbed.push(end);
        self.take(end);
    }

    pub(super) fn take(&mut self, pose: Pose) {
        if pose.scale > self.best_scale() {
            self.best = Some(pose);
        }
    }

    fn root(&mut self, field: &Field) {
        let span = |of: fn(&Point) -> f64| {
            let (low, high) = span_m(field.boundary.points.iter().map(of));
            (f64::midpoint(low, high), (high - low) / 2.0)
        };
        let (east, north) = (span(|at| at.east_m), span(|at| at.north_m));
        let (stretch, half_stretch) = self.kind.stretches();
        // An angle of 0, a side along the boundary's longest, is the middle of its range: the first that is looked at.
        let middle = [east.0, north.0, 0.0, stretch];
        let half = [east.1, north.1, self.kind.half_turn(), half_stretch];
        self.look(field, Cell { middle, half, bound: f64::INFINITY, worth: 0.0, split: 0 });
    }

    /// Works out a cell, keeps it if it may hold a larger shape, and says what its middle holds.
    fn look(&mut self, field: &Field, mut cell: Cell) -> Option<Pose> {
        let [east, north, angle, stretch] = cell.middle;
        let at = Point::new(east, north);
        let shape = self.shape(angle, stretch);
        let scales = field.scales(&shape, at);
        let found =
            scales.largest(self.round / self.kind.round(stretch)).map(|scale| Pose { at, angle, stretch, scale });
        if let Some(found) = found {
            self.take(found);
        }
        let [h_east, h_north, h_angle, h_stretch] = cell.half;
        let shift = shape.gauge(Vector::new(h_east, h_north)).max(shape.gauge(Vector::new(h_east, -h_north)));
        let shift =
            shift.max(shape.gauge(Vector::new(-h_east, h_north))).max(shape.gauge(Vector::new(-h_east, -h_north)));
        let shrink = self.kind.shrink(h_angle, stretch, h_stretch);
        // The least line round any rectangle of the cell is that of the one nearest a square.
        let nearest_square = (stretch - h_stretch).max(0.0);
        // And none is longer than the paddock is across.
        let by_length = self.across / (nearest_square / 2.0).exp();
        let cap = (self.round / self.kind.round(nearest_square)).min(by_length);
        if let Some(bound) = scales.within(cap, shift, shrink) {
            cell.bound = bound.min(cell.bound);
            cell.worth = found.map_or(0.0, |found| found.scale);
            if cell.bound > self.best_scale() * (1.0 + CLOSED) {
                let scale = scales.upto.max(0.0) + shift;
                let by_turn = (1.0 / self.kind.shrink(h_angle, stretch, 0.0) - 1.0) * scale;
                let by_stretch = (1.0 / self.kind.shrink(0.0, stretch, h_stretch) - 1.0) * scale;
                cell.split = if by_turn > shift && by_turn >= by_stretch {
                    2
                } else if by_stretch > shift {
                    3
                } else {
                    usize::from(h_north > h_east)
                };
                self.cells.push(cell);
            }
        }
        found
    }
}

/// The best ends beside which climbs start anew, and how: along and across as shares of length and width, a turn,
/// a stretch.
const KICKED: usize = 6;
const KICKS: [(f64, f64, f64, f64); 12] = [
    (0.15, 0.0, 0.0, 0.0),
    (-0.15, 0.0, 0.0, 0.0),
    (0.0, 0.2, 0.0, 0.0),
    (0.0, -0.2, 0.0, 0.0),
    (0.0, 0.0, 0.15, 0.0),
    (0.0, 0.0, -0.15, 0.0),
    (0.0, 0.0, 0.0, 0.35),
    (0.0, 0.0, 0.0, -0.35),
    (0.1, 0.0, 0.25, 0.5),
    (-0.1, 0.0, 0.25, 0.5),
    (0.1, 0.0, -0.25, 0.5),
    (-0.1, 0.0, -0.25, 0.5),
];
/// Even angles and places a side of the grid of seeds, and sides of boundary and keep-outs whose angles are tried.
const GRID: (u32, u32, usize) = (8, 13, 24);
/// A regular polygon of more sides is as good as round, and tried as one of so many: places a side, seeds kept.
const ROUNDISH: (u32, u32, usize) = (12, 14, 8);
/// Proportions of rectangles tried.
const PROPORTIONS: [f64; 10] = [1.0, 1.3, 1.6, 2.0, 2.5, 3.2, 4.2, 5.5, 8.0, 14.0];
/// Sides whose directions differ by less are one.
const ONE_WAY: f64 = 0.01;
/// Seeds kept of a regular shape and of a rectangle.
const KEPT: (usize, usize) = (24, 240);
/// Poses this near in place, angle and stretch are alike.
const ALIKE: (f64, f64, f64) = (0.1, 0.1, 0.25);

/// Angles that are tried: even ones, then those along the longest sides of all lines, and for a rectangle across them.
fn angles(kind: Kind, field: &Field) -> Vec<f64> {
    let period = 2.0 * kind.half_turn();
    let (even, _, most) = GRID;
    let mut angles: Vec<f64> = (0..even).map(|index| f64::from(index) / f64::from(even) * period).collect();
    let lines = std::iter::once(&field.boundary).chain(field.offs.iter().map(|off| &off.ring));
    let mut ways: Vec<Vector> =
        lines.flat_map(|line| super::fits::sides(&line.points)).map(|(from, to)| to - from).collect();
    ways.sort_by(|one, two| two.length().total_cmp(&one.length()));
    let mut kept: Vec<f64> = Vec::new();
    for way in ways {
        let angle = way.north.atan2(way.east).rem_euclid(period);
        let apart = |other: &f64| (angle - other).rem_euclid(period).min((other - angle).rem_euclid(period));
        if kept.len() < most && kept.iter().all(|other| apart(other) > ONE_WAY) {
            kept.push(angle);
            if kind == Kind::Rectangle {
                kept.push((angle + period / 2.0).rem_euclid(period));
            }
        }
    }
    angles.extend(kept);
    angles
}

/// Coarse: shapes of a grid of places at those angles, the best of each neighbourhood, the best last.
fn seeds(kind: Kind, field: &Field, round: f64) -> Vec<Pose> {
    if let Kind::Regular(sides) = kind
        && sides > ROUNDISH.0
    {
        let like = seeds(Kind::Regular(ROUNDISH.0), field, round);
        return like.into_iter().filter_map(|pose| refit(kind, field, round, pose)).collect();
    }
    let (angles, places, most) = match kind {
        // Turning hardly changes it.
        Kind::Regular(sides) if sides == ROUNDISH.0 => (vec![0.0], ROUNDISH.1, ROUNDISH.2),
        Kind::Regular(_) => (angles(kind, field), GRID.1, KEPT.0),
        Kind::Rectangle => (angles(kind, field), GRID.1, KEPT.1),
    };
    let stretches: &[f64] = if kind == Kind::Rectangle { &PROPORTIONS } else { &PROPORTIONS[..1] };
    let span = |of: fn(&Point) -> f64| {
        let (low, high) = span_m(field.boundary.points.iter().map(of));
        (low, high - low)
    };
    let (east, north) = (span(|at| at.east_m), span(|at| at.north_m));
    let share = |index: u32| (f64::from(index) + 0.5) / f64::from(places);
    let grid = (0..places * places)
        .map(|place| Point::new(east.0 + east.1 * share(place % places), north.0 + north.1 * share(place / places)));
    let grid: Vec<Point> = grid.filter(|&at| super::contact::contains(&field.boundary.points, at)).collect();
    let mut found: Vec<Pose> = Vec::new();
    for &angle in &angles {
        for stretch in stretches.iter().map(|proportion| proportion.ln()) {
            let shape = kind.shape(angle, stretch);
            for &at in &grid {
                let scale = field.scales(&shape, at).largest(round / kind.round(stretch));
                found.extend(scale.map(|scale| Pose { at, angle, stretch, scale }));
            }
        }
    }
    found.sort_by(|one, two| two.scale.total_cmp(&one.scale));
    let mut kept: Vec<Pose> = Vec::new();
    for pose in found {
        if !kept.iter().any(|other| alike(kind, &pose, other)) {
            kept.push(pose);
            if kept.len() == most {
                break;
            }
        }
    }
    kept.reverse();
    kept
}

/// A shape of this kind where another stood, as large as it can be there.
fn refit(kind: Kind, field: &Field, round: f64, pose: Pose) -> Option<Pose> {
    let scale = field.scales(&kind.shape(pose.angle, pose.stretch), pose.at).largest(round / kind.round(pose.stretch));
    scale.map(|scale| Pose { scale, ..pose })
}

fn alike(kind: Kind, one: &Pose, other: &Pose) -> bool {
    let (near, near_angle, near_stretch) = ALIKE;
    let period = 2.0 * kind.half_turn();
    let turn = (one.angle - other.angle).rem_euclid(period);
    one.at.distance_m(other.at) < near
        && turn.min(period - turn) < near_angle
        && (one.stretch - other.stretch).abs() < near_stretch
}

pub(super) fn diameter(ring: &[Point]) -> f64 {
    ring.iter().flat_map(|one| ring.iter().map(move |other| one.distance_m(*other))).fold(0.0, f64::max)
}

#[derive(Debug, Clone)]
struct Cell {
    middle: [f64; 4],
    half: [f64; 4],
    bound: f64,
    /// The largest scale at its middle: of cells with one bound the richer is looked at first.
    worth: f64,
    /// Along which of the four it is halved next.
    split: usize,
}

impl Ord for Cell {
    fn cmp(&self, other: &Self) -> Ordering {
        let key = |cell: &Cell| cell.middle;
        let by_middle = || {
            let pairs = key(self).into_iter().zip(key(other));
            pairs.map(|(one, two)| two.total_cmp(&one)).find(|order| order.is_ne()).unwrap_or(Ordering::Equal)
        };
        self.bound.total_cmp(&other.bound).then(self.worth.total_cmp(&other.worth)).then_with(by_middle)
    }
}

impl PartialOrd for Cell {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Cell {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other).is_eq()
    }
}

impl Eq for Cell {}
