//! What catches the hand, as marks: the line on which it lies, the side that the line comes from, and the sign of what
//! they are to each other; and the grid.

use plan::Point;

use crate::ink::{Ink, in_theme};
use crate::inking::pen::Pen;
use crate::inking::trace::{Px, add, apart, direction, lerp, right, scaled, toward};
use crate::palette::Palette;
use crate::view::View;

/// What a guide is to the side that it comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// On it.
    On,
    /// Square to it: a small square.
    Square,
    /// Parallel to it: two ticks on each.
    Parallel,
    /// Beyond its end: dots.
    InLine,
    /// As long: a tick across each.
    AsLong,
    /// So long as it is said to be: nothing but the line.
    Length,
    /// A place of it: a dot there.
    Place,
}

/// A guide as it is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// What it is to its side.
    pub sign: Sign,
    /// The side.
    pub side: Option<[Point; 2]>,
    /// The corner from which the new side leads to the hand.
    pub from: Option<Point>,
    /// Where it leads instead, where that is not the hand.
    pub to: Option<Point>,
}

const LINE_PX: f64 = 1.5;
const TICK_PX: f64 = 6.0;
const SQUARE_PX: f64 = 9.0;
const DOT_PX: f64 = 4.0;
/// A guide's line goes on beyond the hand by so much, pixels.
const BEYOND_PX: f64 = 22.0;
/// Lines of the grid closer than this are left out, pixels.
const LEAST_GRID_PX: f64 = 9.0;
/// More lines of the grid than this are never drawn.
const MOST_LINES: f64 = 2_000.0;

/// The marks of what caught the hand at a place.
pub fn marks(view: &View, at: Point, marks: &[Mark]) -> Vec<Ink> {
    let colours = view.theme.palette();
    let hand = view.px(at);
    let mut pen = Pen::default();
    for mark in marks {
        let to = mark.to.map_or(hand, |to| view.px(to));
        one(&mut pen, view, to, mark, colours);
    }
    in_theme(pen.ink, view.theme)
}

fn one(pen: &mut Pen, view: &View, hand: Px, mark: &Mark, colours: &Palette) {
    let side = mark.side.map(|side| side.map(|at| view.px(at)));
    let from = mark.from.map(|at| view.px(at));
    if let Some(side) = side {
        pen.line(&side, LINE_PX, colours.pick);
    }
    if let Some(from) = from
        && let Some(along) = direction(from, hand)
    {
        pen.line(&[from, toward(hand, along, BEYOND_PX)], LINE_PX, colours.pick);
    }
    match mark.sign {
        Sign::On | Sign::Length => {}
        Sign::Place => {
            let dot = [[0.0, -DOT_PX], [DOT_PX, 0.0], [0.0, DOT_PX], [-DOT_PX, 0.0]].map(|off| add(hand, off));
            pen.polygon(&dot, colours.pick);
        }
        Sign::Square => {
            // Where the new side leaves the corner, or at the hand itself where that is square.
            let corner = from.unwrap_or(hand);
            let away = from.and_then(|from| direction(from, hand));
            let along = side.and_then(|[one, other]| {
                let far = if apart(one, corner) > apart(other, corner) { one } else { other };
                direction(one, other).map(|along| {
                    let to_far = [far[0] - corner[0], far[1] - corner[1]];
                    if along[0] * to_far[0] + along[1] * to_far[1] < 0.0 { scaled(along, -1.0) } else { along }
                })
            });
            if let (Some(away), Some(along)) = (away, along) {
                let (one, other) = (toward(corner, along, SQUARE_PX), toward(corner, away, SQUARE_PX));
                let both = toward(one, away, SQUARE_PX);
                pen.line(&[one, both, other], LINE_PX, colours.pick);
            }
        }
        Sign::Parallel => {
            if let Some(from) = from {
                ticks(pen, from, hand, 2, colours);
            }
            if let Some([one, other]) = side {
                ticks(pen, one, other, 2, colours);
            }
        }
        Sign::AsLong => {
            if let Some(from) = from {
                ticks(pen, from, hand, 1, colours);
            }
            if let Some([one, other]) = side {
                ticks(pen, one, other, 1, colours);
            }
        }
        Sign::InLine => {
            if let Some([one, other]) = side {
                let end = if apart(one, hand) < apart(other, hand) { one } else { other };
                if let Some(along) = direction(end, hand) {
                    let to = toward(hand, along, BEYOND_PX);
                    pen.dashed(&[end, to], 2.0, colours.pick, Some([2.0, 5.0]));
                }
            }
        }
    }
}

/// Ticks across the middle of a line.
fn ticks(pen: &mut Pen, from: Px, to: Px, count: u32, colours: &Palette) {
    let Some(along) = direction(from, to) else { return };
    let across = right(along);
    let lean = add(across, scaled(along, 0.45));
    for tick in 0..count {
        let off = 5.0 * (f64::from(tick) - f64::from(count - 1) / 2.0);
        let middle = toward(lerp(from, to, 0.5), along, off);
        pen.line(&[toward(middle, lean, -TICK_PX), toward(middle, lean, TICK_PX)], 1.75, colours.pick);
    }
}

/// A square corner at the hand, between the corners beside it.
pub fn square_corner(view: &View, at: Point, beside: [Point; 2]) -> Vec<Ink> {
    let colours = view.theme.palette();
    let hand = view.px(at);
    let mut pen = Pen::default();
    let [before, after] = beside.map(|at| view.px(at));
    pen.line(&[before, hand, after], LINE_PX, colours.pick);
    if let (Some(one), Some(other)) = (direction(hand, before), direction(hand, after)) {
        let both = toward(toward(hand, one, SQUARE_PX), other, SQUARE_PX);
        let ring = [toward(hand, one, SQUARE_PX), both, toward(hand, other, SQUARE_PX)];
        pen.line(&ring, LINE_PX, colours.pick);
    }
    in_theme(pen.ink, view.theme)
}

/// The grid of such a step, thinned where its lines would be too close.
pub fn grid(view: &View, step_m: f64) -> Vec<Ink> {
    let colours = view.theme.palette();
    let mut pen = Pen::default();
    let mut each_m = step_m;
    while each_m * view.px_per_m < LEAST_GRID_PX && each_m.is_finite() && each_m > 0.0 {
        each_m *= 10.0;
    }
    let [width, height] = view.size.map(f64::from);
    let (low, high) = (view.place([0.0, view.size[1]]), view.place([view.size[0], 0.0]));
    let lines = |from_m: f64, to_m: f64| {
        let (first, last) = ((from_m / each_m).ceil(), (to_m / each_m).floor());
        let sound = first.is_finite() && last.is_finite() && last - first < MOST_LINES;
        let count = if sound { (last - first + 1.0).max(0.0) as u32 } else { 0 };
        (0..count).map(move |index| (first + f64::from(index)) * each_m)
    };
    for east_m in lines(low.east_m, high.east_m) {
        let x = view.px(Point::new(east_m, low.north_m))[0];
        pen.line(&[[x, 0.0], [x, height]], 1.0, colours.hairline);
    }
    for north_m in lines(low.north_m, high.north_m) {
        let y = view.px(Point::new(low.east_m, north_m))[1];
        pen.line(&[[0.0, y], [width, y]], 1.0, colours.hairline);
    }
    pen.ink
}
