//! Where else on its ground a run's name stands when its best places are taken or out of sight: as deep inside what is
//! seen of the ground as it can, level before along it, the name alone before nothing, the number alone before that.

use plan::Point;

use super::super::Inker;
use super::super::trace::{self, Px};
use super::run::far_lines;
use super::{Label, Layout, crosses};
use crate::shape::{Form, Role, Shape, Thing};
use crate::view::Distance;

/// A ground is looked through in at least so many steps each way, and in fewer than twice as many where it is seen in part.
const STEPS: f64 = 8.0;
/// The middles of names keep so far inside, pixels.
const LEAST_DEPTH_PX: f64 = 10.0;
/// Names keep so far off the middle of a net, pixels.
const OFF_NET_PX: f64 = 6.0;
/// Ground whose longest side is nearly level has no other way along it, radians.
const LEVEL_RAD: f64 = 0.12;

/// What is seen of a run's ground.
struct Seen {
    /// Places on it, the deepest first.
    spots: Vec<Px>,
    /// The turn of its longest side, read from below or from the right.
    turn_rad: f64,
    /// The lines that come near it.
    lines: Vec<[Px; 2]>,
}

impl<'a> Inker<'a> {
    /// The ground of each run, where it has one.
    pub(super) fn grounds(&self) -> Vec<(Thing, &'a [Point])> {
        let ground = |shape: &&'a Shape| match (&shape.form, shape.role) {
            (Form::Area { rings }, Role::RunGround) => Some((shape.thing?, rings.first()?.as_slice())),
            _ => None,
        };
        self.marked.iter().filter_map(ground).collect()
    }

    /// The first way with room to lay a run's name out on its ground.
    pub(super) fn inside(&self, label: &Label<'_>, named: bool, ground: &[Point]) -> Option<Layout> {
        let seen = self.seen_ground(ground)?;
        let along = (seen.turn_rad.abs() > LEVEL_RAD).then_some(seen.turn_rad);
        let fits = |layout: &Layout| {
            self.has_room(layout, &seen.lines)
                && !layout.blocks.iter().any(|block| crosses(&block.grown(OFF_NET_PX), &seen.lines))
        };
        let by_number = |count: usize| {
            seen.spots.iter().map(|&at| self.numbered(label, named, count, at)).find(|layout| fits(layout))
        };
        if self.distance == Distance::Far {
            return (0..=far_lines(label, named)).rev().find_map(by_number);
        }
        let by_name = |with_rest: bool, turn_rad: f64| {
            seen.spots.iter().map(|&at| self.named(label, with_rest, at, turn_rad)).find(|layout| fits(layout))
        };
        [true, false]
            .into_iter()
            .find_map(|with_rest| {
                by_name(with_rest, 0.0).or_else(|| along.and_then(|turn_rad| by_name(with_rest, turn_rad)))
            })
            .or_else(|| by_number(0))
    }

    fn seen_ground(&self, ground: &[Point]) -> Option<Seen> {
        let ring = self.pxs(ground);
        let view = trace::Window { low: [0.0; 2], high: self.view.size.map(f64::from) };
        let whole = window_of(&ring)?;
        if (0..2).any(|axis| whole.high[axis] < view.low[axis] || whole.low[axis] > view.high[axis]) {
            return None;
        }
        let shown = &trace::clip_ring(&ring, &view);
        let part = window_of(shown)?;
        // The places stay where they are on the ground while the view moves.
        let rows = |axis: usize| {
            let (extent, size) = (whole.high[axis] - whole.low[axis], part.high[axis] - part.low[axis]);
            let halved = (extent / size).log2().floor().clamp(0.0, 40.0);
            let step = extent / (STEPS * halved.exp2());
            let first = ((part.low[axis] - whole.low[axis]) / step).ceil();
            let count = (size / step).floor().clamp(0.0, 2.0 * STEPS) as u32;
            (0..=count).map(move |index| whole.low[axis] + step * (first + f64::from(index))).collect::<Vec<f64>>()
        };
        // Amid each stretch of a row on the ground, however narrow, and amid its halves; rows across, then rows down.
        let places = [1, 0].into_iter().flat_map(|axis| {
            let stretches = rows(axis)
                .into_iter()
                .flat_map(move |row| chords(shown, axis, row).into_iter().map(move |chord| (row, chord)));
            stretches.flat_map(move |(row, [from, to])| {
                [0.5, 0.25, 0.75].map(move |share| {
                    let across = from + share * (to - from);
                    if axis == 1 { [across, row] } else { [row, across] }
                })
            })
        });
        let mut spots: Vec<(f64, Px)> =
            places.map(|at| (depth(shown, at), at)).filter(|&(depth, _)| depth >= LEAST_DEPTH_PX).collect();
        spots.sort_by(|a, b| b.0.total_cmp(&a.0));
        let near = |line: &&[Px; 2]| {
            (0..2).all(|axis| {
                line[0][axis].min(line[1][axis]) <= part.high[axis]
                    && line[0][axis].max(line[1][axis]) >= part.low[axis]
            })
        };
        Some(Seen {
            spots: spots.into_iter().map(|spot| spot.1).collect(),
            turn_rad: longest_turn(&ring),
            lines: self.lines.iter().filter(near).copied().collect(),
        })
    }
}

/// The box round a ring that has some size.
fn window_of(ring: &[Px]) -> Option<trace::Window> {
    let first = *ring.first()?;
    let window = ring.iter().fold(trace::Window { low: first, high: first }, |window, at| trace::Window {
        low: [0, 1].map(|axis| window.low[axis].min(at[axis])),
        high: [0, 1].map(|axis| window.high[axis].max(at[axis])),
    });
    let sound = |axis: usize| {
        let size = window.high[axis] - window.low[axis];
        size > LEAST_DEPTH_PX && size.is_finite()
    };
    (sound(0) && sound(1)).then_some(window)
}

/// The stretches of a row, a place on that axis, that lie on a ring's ground.
fn chords(ring: &[Px], axis: usize, row: f64) -> Vec<[f64; 2]> {
    let other = 1 - axis;
    let mut crossed: Vec<f64> = ring
        .iter()
        .enumerate()
        .map(|(index, &to)| (ring[(index + ring.len() - 1) % ring.len()], to))
        .filter(|(from, to)| (from[axis] > row) != (to[axis] > row))
        .map(|(from, to)| from[other] + (row - from[axis]) / (to[axis] - from[axis]) * (to[other] - from[other]))
        .collect();
    crossed.sort_by(f64::total_cmp);
    crossed.chunks_exact(2).map(|pair| [pair[0], pair[1]]).collect()
}

/// How far inside a ring a place lies; negative outside.
fn depth(ring: &[Px], at: Px) -> f64 {
    let mut inside = false;
    let mut nearest = f64::INFINITY;
    for (index, &to) in ring.iter().enumerate() {
        let from = ring[(index + ring.len() - 1) % ring.len()];
        nearest = nearest.min(trace::from_segment(from, to, at));
        if (to[1] > at[1]) != (from[1] > at[1]) {
            let part = (at[1] - to[1]) / (from[1] - to[1]);
            inside ^= at[0] < to[0] + part * (from[0] - to[0]);
        }
    }
    if inside { nearest } else { -nearest }
}

/// The turn of a ring's longest side, read from below or from the right.
fn longest_turn(ring: &[Px]) -> f64 {
    let sides = ring.iter().enumerate().map(|(index, &to)| [ring[(index + ring.len() - 1) % ring.len()], to]);
    let longest = sides.max_by(|a, b| trace::apart(a[0], a[1]).total_cmp(&trace::apart(b[0], b[1])));
    longest.and_then(|[from, to]| trace::direction(from, to)).map_or(0.0, trace::upright)
}
