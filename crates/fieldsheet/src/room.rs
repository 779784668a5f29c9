//! Room on the map for the sheet's own signs: beside their places, on top of nothing.

use drawing::letters::text_width;
use drawing::{Anchor, Ink, Spot};

use crate::setting::{PLATE, RING};

/// Half of what a sign takes up, with a little air.
const HALF: f32 = if RING > PLATE { RING / 2.0 + 1.0 } else { PLATE / 2.0 + 1.0 };
/// Between furniture and the frame, points.
const AIR: f32 = 8.0;
/// Areas that are larger than this are ground, which a sign may lie on, points.
const GROUND: f32 = 60.0;
/// How far from its place a sign may stand, nearest first, points.
const AWAY: [f32; 5] = [14.0, 17.0, 20.0, 24.0, 30.0];
/// Which way, from where it would best stand, best first, radians.
const TURNS: [f32; 10] = [0.0, 0.4, -0.4, 0.8, -0.8, 1.2, -1.2, 2.4, -2.4, 3.1];

/// What lies on the map already.
pub(crate) struct Room<'a> {
    ink: &'a [Ink],
    frame: [f32; 4],
    taken: Vec<Spot>,
    standing: Vec<[f32; 4]>,
}

/// What it costs to cover one line that is drawn boldly, as the net is.
const BOLD: u32 = 10;

/// Furniture in a corner of the map.
pub(crate) struct Cornered {
    /// How far it is moved.
    pub(crate) by: Spot,
    /// Whether it covers the net, a sign or words there.
    pub(crate) covers: bool,
}

/// An end of the map at which furniture may stand.
#[derive(Clone, Copy)]
pub(crate) enum Side {
    /// The upper one.
    Top,
    /// The lower one.
    Bottom,
}

impl<'a> Room<'a> {
    pub(crate) fn of(ink: &'a [Ink], frame: [f32; 4]) -> Self {
        Self { ink, frame, taken: Vec::new(), standing: Vec::new() }
    }

    /// The boxes of scale and north, where they stand.
    pub(crate) fn standing(&self) -> [Option<[f32; 4]>; 2] {
        [0, 1].map(|place| self.standing.get(place).copied())
    }

    /// The same room over other ink.
    pub(crate) fn over(self, ink: &[Ink]) -> Room<'_> {
        Room { ink, frame: self.frame, taken: self.taken, standing: self.standing }
    }

    /// The middle of a sign for a place, in a direction or as near to it as may be. Where there is no free spot it
    /// may lie over lines, but never over words, other signs or the frame.
    pub(crate) fn take(&mut self, at: Spot, toward: Spot) -> Option<Spot> {
        let distance = toward[0].hypot(toward[1]).max(1e-3);
        let (right, down) = (toward[0] / distance, toward[1] / distance);
        let spots: Vec<Spot> = AWAY
            .iter()
            .flat_map(|away| TURNS.iter().map(move |turn| (away, turn.sin_cos())))
            .map(|(away, (sin, cos))| {
                [at[0] + away * (right * cos - down * sin), at[1] + away * (right * sin + down * cos)]
            })
            .filter(|spot| self.is_inside(*spot))
            .collect();
        let free = |over_lines: bool| {
            spots.iter().copied().find(|spot| !self.ink.iter().any(|item| covers(*spot, item, over_lines)))
        };
        let spot = free(false).or_else(|| free(true))?;
        self.taken.push(spot);
        Some(spot)
    }

    /// How far to move some furniture so that it stands in a corner of the map, `beside` points off at its right,
    /// where it covers least; at the first side where it can, right before left.
    pub(crate) fn corner(&mut self, furniture: &[Ink], beside: f32, sides: [Side; 2]) -> Option<Cornered> {
        let own = all_bounds(furniture)?;
        let [left, top, right, bottom] = self.frame;
        let mut best: Option<(u32, Spot, [f32; 4])> = None;
        for side in sides {
            for at_right in [true, false] {
                let x = if at_right { right - AIR - beside - own[2] } else { left + AIR - own[0] };
                let y = match side {
                    Side::Top => top + AIR - own[1],
                    Side::Bottom => bottom - AIR - own[3],
                };
                let stands = [own[0] + x, own[1] + y, own[2] + x + beside, own[3] + y];
                let cost = self.cost(stands);
                if best.is_none_or(|(least, ..)| cost < least) {
                    best = Some((cost, [x, y], stands));
                }
            }
        }
        let (cost, by, stands) = best?;
        self.standing.push(stands);
        Some(Cornered { by, covers: cost >= BOLD })
    }

    /// What furniture would cover there: other furniture most of all, then words and signs, then lines.
    fn cost(&self, stands: [f32; 4]) -> u32 {
        let furniture = self.standing.iter().filter(|other| meet(stands, **other)).count() as u32 * 1000;
        let ink = self.ink.iter().map(|item| match item {
            Ink::Text { .. } => 20 * u32::from(text_bounds(item).is_some_and(|bounds| meet(stands, bounds))),
            Ink::Disc { middle: [x, y], radius, .. } => {
                5 * u32::from(meet(stands, [x - radius, y - radius, x + radius, y + radius]))
            }
            Ink::Area { rings, .. } => {
                let bounds = bounds(rings.iter().flatten().copied());
                BOLD * u32::from(!is_ground(bounds) && meet(stands, bounds))
            }
            // The net and what is drawn as boldly may not be covered; a strip's edge may.
            Ink::Line { width, .. } => line_in(item, stands) * if *width > 1.2 { BOLD } else { 1 },
        });
        furniture + ink.sum::<u32>()
    }

    fn is_inside(&self, [x, y]: Spot) -> bool {
        let [left, top, right, bottom] = self.frame;
        let in_frame = x - HALF > left && x + HALF < right && y - HALF > top && y + HALF < bottom;
        let apart = |other: &Spot| (other[0] - x).abs() >= 2.0 * HALF || (other[1] - y).abs() >= 2.0 * HALF;
        let clear = self.standing.iter().all(|stands| !overlaps([x, y], *stands));
        in_frame && clear && self.taken.iter().all(apart)
    }
}

/// Whether a sign there would cover an item.
fn covers(spot: Spot, item: &Ink, over_lines: bool) -> bool {
    match item {
        Ink::Text { .. } => text_bounds(item).is_some_and(|bounds| overlaps(spot, bounds)),
        Ink::Disc { middle, radius, .. } => {
            !over_lines && (middle[0] - spot[0]).hypot(middle[1] - spot[1]) < radius + HALF
        }
        Ink::Area { rings, .. } => {
            let bounds = bounds(rings.iter().flatten().copied());
            !is_ground(bounds) && overlaps(spot, bounds)
        }
        Ink::Line { width, .. } => {
            let reach = HALF + width / 2.0;
            !over_lines && sides(item).any(|[from, to]| distance_to_side(spot, from, to) < reach)
        }
    }
}

fn is_ground([left, top, right, bottom]: [f32; 4]) -> bool {
    right - left > GROUND || bottom - top > GROUND
}

fn meet(a: [f32; 4], b: [f32; 4]) -> bool {
    a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]
}

/// How many sides of a line come into a rectangle.
fn line_in(item: &Ink, stands: [f32; 4]) -> u32 {
    let (middle, half) = (
        [f32::midpoint(stands[0], stands[2]), f32::midpoint(stands[1], stands[3])],
        [(stands[2] - stands[0]) / 2.0, (stands[3] - stands[1]) / 2.0],
    );
    sides(item)
        .filter(|[from, to]| {
            // A point of the side in the rectangle, looked for in steps of a quarter of its shorter half.
            let length = (to[0] - from[0]).hypot(to[1] - from[1]);
            let steps = ((length / (half[0].min(half[1]) / 4.0)) as usize).clamp(1, 400);
            (0..=steps).any(|step| {
                let share = step as f32 / steps as f32;
                let at = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
                (at[0] - middle[0]).abs() < half[0] && (at[1] - middle[1]).abs() < half[1]
            })
        })
        .count() as u32
}

/// The sides of a line.
fn sides(item: &Ink) -> impl Iterator<Item = [Spot; 2]> {
    let (spots, closed): (&[Spot], bool) = match item {
        Ink::Line { spots, closed, .. } => (spots, *closed),
        _ => (&[], false),
    };
    let closing = closed.then(|| Some([*spots.last()?, *spots.first()?])).flatten();
    spots.windows(2).map(|side| [side[0], side[1]]).chain(closing)
}

fn overlaps([x, y]: Spot, [left, top, right, bottom]: [f32; 4]) -> bool {
    x - HALF < right && left < x + HALF && y - HALF < bottom && top < y + HALF
}

fn distance_to_side(at: Spot, from: Spot, to: Spot) -> f32 {
    let (right, down) = (to[0] - from[0], to[1] - from[1]);
    let squared = (right * right + down * down).max(1e-6);
    let share = (((at[0] - from[0]) * right + (at[1] - from[1]) * down) / squared).clamp(0.0, 1.0);
    (from[0] + share * right - at[0]).hypot(from[1] + share * down - at[1])
}

fn bounds(spots: impl Iterator<Item = Spot>) -> [f32; 4] {
    spots.fold([f32::MAX, f32::MAX, f32::MIN, f32::MIN], |bounds, [x, y]| {
        [bounds[0].min(x), bounds[1].min(y), bounds[2].max(x), bounds[3].max(y)]
    })
}

/// Left, top, right and bottom of a text, level or not.
fn text_bounds(item: &Ink) -> Option<[f32; 4]> {
    let Ink::Text { at, text, size, weight, anchor, turn_rad, .. } = item else { return None };
    let width = text_width(text, *size, *weight);
    let (from, to) = match anchor {
        Anchor::Start => (0.0, width),
        Anchor::Middle => (-width / 2.0, width / 2.0),
        Anchor::End => (-width, 0.0),
    };
    let (sin, cos) = turn_rad.sin_cos();
    let half = size / 2.0;
    let corners = [[from, -half], [to, -half], [to, half], [from, half]];
    Some(bounds(corners.iter().map(|[x, y]| [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos])))
}

/// Left, top, right and bottom of some ink.
fn all_bounds(ink: &[Ink]) -> Option<[f32; 4]> {
    ink.iter()
        .map(|item| match item {
            Ink::Text { .. } => text_bounds(item).unwrap_or([f32::MAX, f32::MAX, f32::MIN, f32::MIN]),
            Ink::Disc { middle: [x, y], radius, .. } => [x - radius, y - radius, x + radius, y + radius],
            Ink::Area { rings, .. } => bounds(rings.iter().flatten().copied()),
            Ink::Line { spots, .. } => bounds(spots.iter().copied()),
        })
        .reduce(|a, b| [a[0].min(b[0]), a[1].min(b[1]), a[2].max(b[2]), a[3].max(b[3])])
}

/// Ink moved by so much to the right and down.
pub(crate) fn moved(ink: Vec<Ink>, [right, down]: Spot) -> Vec<Ink> {
    let move_one = |[x, y]: Spot| [x + right, y + down];
    ink.into_iter()
        .map(|item| match item {
            Ink::Area { rings, fill } => Ink::Area {
                rings: rings.into_iter().map(|ring| ring.into_iter().map(move_one).collect()).collect(),
                fill,
            },
            Ink::Line { spots, closed, width, colour, dash } => {
                Ink::Line { spots: spots.into_iter().map(move_one).collect(), closed, width, colour, dash }
            }
            Ink::Disc { middle, radius, fill, edge } => Ink::Disc { middle: move_one(middle), radius, fill, edge },
            Ink::Text { at, text, size, weight, colour, anchor, turn_rad } => {
                Ink::Text { at: move_one(at), text, size, weight, colour, anchor, turn_rad }
            }
        })
        .collect()
}
