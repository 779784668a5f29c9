//! Shapes with one side borrowed from a wall: the side lies on the wall, the others are netted.
//!
//! The place along the wall and, for a rectangle, its depth over its length are swept and then drawn in round the best.
//! At each the largest free size is stepped down to and bisected. Round on a wall is the half of a regular polygon of
//! twice the panels, the most that a line of equal panels encloses against a straight wall (reflection: the whole would
//! be the regular polygon).

use std::f64::consts::PI;

use super::field::Field;
use super::fits::fits;
use crate::{Point, Vector};

/// A shape by its corners over a wall of length 1: from the wall's left to its right end over the free side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Leaning {
    /// A regular polygon of so many sides, one of them the wall.
    Regular(u32),
    /// A rectangle of any depth.
    Rectangle,
    /// So many equal panels over a half circle.
    Arc(u32),
}

/// Places along the wall, depths of a rectangle, rounds of drawing in.
const SWEEP: (u32, u32, u32) = (33, 17, 6);
/// Least and greatest depth of a rectangle over its length, as a logarithm.
const DEPTHS: (f64, f64) = (-3.5, 3.5);
/// Sizes are stepped down by this share until one fits, then bisected.
const STEP_DOWN: (f64, u32, u32) = (0.95, 70, 30);

/// Sides of the half round that is tried first, panels tried above and below what it lets expect, places of each.
const ARC: (u32, u32, u32, u32) = (12, 2, 12, 33);

/// A place found: corners counter-clockwise, the last side (last corner to first) on the wall.
#[derive(Debug, Clone)]
pub(super) struct Leant {
    pub(super) corners: Vec<Point>,
    along: f64,
    depth: f64,
    size: f64,
}

/// A wall with its free side on the left of the way from `from` to `to`.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wall {
    pub(super) from: Point,
    pub(super) to: Point,
}

impl Leaning {
    /// Corners over a side on the wall of length `size`, its middle at (0, 0), the free side north; the first corner at
    /// the east end of the wall, the last at its west end.
    fn corners(self, depth: f64, size: f64) -> Vec<Vector> {
        match self {
            Leaning::Regular(sides) => {
                let part = 2.0 * PI / f64::from(sides);
                let mut at = Vector::new(size / 2.0, 0.0);
                (0..sides)
                    .map(|index| {
                        let corner = at;
                        let way = part * f64::from(index + 1);
                        at = at + Vector::new(way.cos(), way.sin()) * size;
                        corner
                    })
                    .collect()
            }
            Leaning::Rectangle => {
                let (half, deep) = (size / 2.0, size * depth.exp());
                [(half, 0.0), (half, deep), (-half, deep), (-half, 0.0)].map(|(e, n)| Vector::new(e, n)).to_vec()
            }
            Leaning::Arc(panels) => (0..=panels)
                .map(|index| PI * f64::from(index) / f64::from(panels))
                .map(|way| Vector::new(way.cos(), way.sin()) * (size / 2.0))
                .collect(),
        }
    }

    /// Netted line over a wall side of length 1.
    fn round(self, depth: f64) -> f64 {
        match self {
            Leaning::Regular(sides) => f64::from(sides) - 1.0,
            Leaning::Rectangle => 1.0 + 2.0 * depth.exp(),
            Leaning::Arc(panels) => f64::from(panels) * (PI / (2.0 * f64::from(panels))).sin(),
        }
    }

    fn area(self, depth: f64, size: f64) -> f64 {
        super::free::area(&self.corners(depth, size).iter().map(|&way| Point::default() + way).collect::<Vec<_>>())
    }
}

/// The corners where the shape stands.
fn placed(leaning: Leaning, wall: Wall, along: f64, depth: f64, size: f64) -> Vec<Point> {
    let way = (wall.to - wall.from).unit();
    let middle = wall.from + way * along;
    leaning.corners(depth, size).iter().map(|at| middle + way * at.east + way.left() * at.north).collect()
}

/// The largest shape against that wall, with at most `round` of netting; its size continuous.
pub(super) fn lean(field: &Field, leaning: Leaning, wall: Wall, round: f64) -> Option<Leant> {
    let length = wall.from.distance_m(wall.to);
    let (places, depths, rounds) = SWEEP;
    let depths = if leaning == Leaning::Rectangle { depths } else { 1 };
    let middle_depth = if leaning == Leaning::Rectangle { f64::midpoint(DEPTHS.0, DEPTHS.1) } else { 0.0 };
    let mut best: Option<Leant> = None;
    let mut span = (length / 2.0, (DEPTHS.1 - DEPTHS.0) / 2.0);
    let mut about = (length / 2.0, middle_depth);
    for turn in 0..rounds {
        let (places, depths) = if turn == 0 { (places, depths) } else { (9, if depths > 1 { 9 } else { 1 }) };
        let share =
            |index: u32, count: u32| if count > 1 { 2.0 * f64::from(index) / f64::from(count - 1) - 1.0 } else { 0.0 };
        for place in 0..places {
            for deep in 0..depths {
                let along = (about.0 + span.0 * share(place, places)).clamp(0.0, length);
                let depth = (about.1 + span.1 * share(deep, depths)).clamp(DEPTHS.0, DEPTHS.1);
                let known = best.as_ref().map_or(0.0, |best| leaning.area(best.depth, best.size));
                if let Some(found) = largest(field, leaning, wall, round, (along, depth), known) {
                    best = Some(found);
                }
            }
        }
        let found = best.as_ref()?;
        about = (found.along, found.depth);
        let (n, m) = if turn == 0 { (f64::from(places - 1), f64::from(SWEEP.1 - 1)) } else { (6.0, 6.0) };
        span = (span.0 * 2.0 / n * 1.2, span.1 * 2.0 / m * 1.2);
    }
    best
}

/// The largest that fits at a place, where its area exceeds `known`.
fn largest(
    field: &Field,
    leaning: Leaning,
    wall: Wall,
    round: f64,
    (along, depth): (f64, f64),
    known: f64,
) -> Option<Leant> {
    let length = wall.from.distance_m(wall.to);
    let cap = (round / leaning.round(depth)).min(2.0 * along.min(length - along));
    let (share, steps, bisections) = STEP_DOWN;
    let free = |size: f64| fits(field, &placed(leaning, wall, along, depth, size));
    let worth = |size: f64| leaning.area(depth, size) > known * (1.0 + 1e-12);
    let (mut above, mut size) = (cap, cap);
    for _ in 0..steps {
        if size <= 0.0 || !worth(size) {
            return None;
        }
        if free(size) {
            break;
        }
        above = size;
        size *= share;
    }
    if !free(size) {
        return None;
    }
    for _ in 0..bisections {
        let middle = f64::midpoint(size, above);
        if above > size && free(middle) { size = middle } else { above = middle }
    }
    worth(size).then(|| Leant { corners: placed(leaning, wall, along, depth, size), along, depth, size })
}

/// The half round of as many panels as fit, each side one panel.
pub(super) fn arc(field: &Field, wall: Wall, panel: f64, panels: u32) -> Option<Vec<Point>> {
    let length = wall.from.distance_m(wall.to);
    // A half round of a few sides says how large a round can be; a finer one of that area is about as large.
    let line = panel * f64::from(panels);
    let coarse = lean(field, Leaning::Arc(ARC.0), wall, line)?;
    let radius = (2.0 * Leaning::Arc(ARC.0).area(0.0, coarse.size) / PI).sqrt();
    let likely = (PI * radius / panel).ceil() as u32 + ARC.1;
    for number in (likely.saturating_sub(ARC.2).max(2)..=likely.min(panels)).rev() {
        let size = panel / (PI / (2.0 * f64::from(number))).sin();
        if size > length {
            continue;
        }
        let places = ARC.3;
        let slide = length - size;
        let spread = (0..places).map(|index| size / 2.0 + slide * f64::from(index) / f64::from(places - 1));
        let tries = std::iter::once(coarse.along.clamp(size / 2.0, length - size / 2.0)).chain(spread);
        let placed = tries.map(|along| placed(Leaning::Arc(number), wall, along, 0.0, size));
        if let Some(corners) = placed.into_iter().find(|corners| fits(field, corners)) {
            return Some(corners);
        }
    }
    None
}

/// The shape of whole panels nearest below, against the same place of the wall; `None` where none fits.
pub(super) fn whole(
    field: &Field,
    leaning: Leaning,
    wall: Wall,
    leant: &Leant,
    panel: f64,
    panels: u32,
) -> Option<(Vec<Point>, Vec<u32>)> {
    let floor = |length: f64| (length / panel + 1e-6).floor() as u32;
    let at = |depth: f64, size: f64| Some(placed(leaning, wall, leant.along, depth, size)).filter(|it| fits(field, it));
    match leaning {
        Leaning::Regular(sides) => {
            let each = floor(leant.size).min(panels / (sides - 1));
            let corners = (each > 0).then(|| at(0.0, f64::from(each) * panel)).flatten()?;
            Some((corners, vec![each; sides as usize - 1]))
        }
        Leaning::Rectangle => {
            let (long, deep) = (leant.size, leant.size * leant.depth.exp());
            let tries = [(1, 0), (0, 1), (0, 0)].map(|(a, b)| (floor(long) + a, floor(deep) + b));
            let found =
                tries.into_iter().filter(|&(a, b)| a > 0 && b > 0 && a + 2 * b <= panels).filter_map(|(a, b)| {
                    let depth = (f64::from(b) / f64::from(a)).ln();
                    Some((at(depth, f64::from(a) * panel)?, vec![b, a, b]))
                });
            found.max_by(|one, two| super::free::area(&one.0).total_cmp(&super::free::area(&two.0)))
        }
        Leaning::Arc(_) => None,
    }
}
