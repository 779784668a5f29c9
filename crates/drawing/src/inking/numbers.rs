//! Numbers at the corners of what is in hand on the ground, as tables, list and findings call them. The corners of runs
//! and branches have theirs always.

use plan::Point;

use super::blocks::Block;
use super::pen::Type;
use super::signs::{plate_size, plate_width};
use super::states::outline_of;
use super::trace::{self, Px, add, right, scaled, toward};
use super::{Inker, sees};
use crate::ink::Weight;
use crate::map::track::signed_area_m2;
use crate::shape::{Drawing, Form, Role, Shape, Thing};
use crate::view::{Distance, View};

/// From a corner to the nearest of its plate, pixels: clear of the square on the corner.
const OFF_PX: f64 = 7.0;

/// The square on a corner, pixels.
const SQUARE_PX: f64 = 8.0;

/// Between two plates, pixels.
const MARGIN_PX: f64 = 3.0;

/// An outline that is fewer of its plates wide and high than this has none, pixels: they would hide it.
const LEAST_PLATES: f64 = 3.0;

/// A corner's number.
#[derive(Clone, Copy)]
pub(crate) struct Number {
    /// The corner.
    pub(crate) thing: Thing,
    /// Its place in its outline.
    index: usize,
    /// What the plate takes, a little margin with it.
    pub(crate) block: Block,
}

impl Drawing {
    /// The numbers of the corners that are in hand, each outside of its outline, or inside where another number, key,
    /// scale or what the hand takes hold of stands; one without room is left out. What they take is added to the other numbers.
    pub(crate) fn numbers_in_hand(&self, view: &View, numbers: &mut Vec<Block>) -> Vec<Number> {
        let mut found = Vec::new();
        let outline = view.picked.and_then(outline_of).filter(|_| view.handles);
        let Some(outline) = outline.filter(|thing| !matches!(thing, Thing::Run { .. } | Thing::Branch { .. })) else {
            return found;
        };
        let closed = !matches!(outline, Thing::Wall { .. } | Thing::Hazard { .. });
        let of_outline = |thing: &Thing| outline_of(*thing) == Some(outline);
        let corner = |shape: &Shape| match (shape.role, shape.thing.filter(of_outline), &shape.form) {
            (Role::Handle, Some(thing), Form::Mark { at, .. }) => Some((thing, *at)),
            _ => None,
        };
        let (things, corners): (Vec<Thing>, Vec<Point>) = self.shapes().filter_map(corner).unzip();
        let size = size(view);
        let kind = Type::new(12.0, Weight::SemiBold, view.theme.palette().ink);
        // Out of ground that is walked round counter-clockwise is to the right.
        let side = if closed && signed_area_m2(&corners) < 0.0 { -1.0 } else { 1.0 };
        let spots: Vec<Px> = corners.iter().map(|&at| view.px(at)).collect();
        if !(0..2).any(|axis| across(&spots, axis) >= LEAST_PLATES * size) {
            return found;
        }
        let kept = view.kept.iter().chain(&view.held).flatten();
        let kept: Vec<Block> = kept.map(|&kept| Block::of(kept.map(f64::from))).collect();
        let squares: Vec<Block> = spots.iter().map(|&corner| Block::new(corner, SQUARE_PX, SQUARE_PX)).collect();
        for (index, (&thing, &corner)) in things.iter().zip(&spots).enumerate() {
            let width = plate_width(&name(index), size, kind);
            let plate = |way: Px| {
                let far = OFF_PX + size / 2.0 / way[0].abs().max(way[1].abs()).max(0.5);
                Block::new(toward(corner, way, far), width + MARGIN_PX, size + MARGIN_PX)
            };
            let outward = scaled(to_the_right(&spots, closed, index), side);
            let others = || squares.iter().enumerate().filter(|(other, _)| *other != index).map(|(_, square)| square);
            let is_free =
                |block: &Block| !numbers.iter().chain(&kept).chain(others()).any(|other| other.overlaps(block));
            let block = [outward, scaled(outward, -1.0)].map(plate).into_iter().find(is_free);
            if let Some(block) = block.filter(|_| sees(view, corner)) {
                numbers.push(block);
                found.push(Number { thing, index, block });
            }
        }
        found
    }
}

/// How far spots lie apart along an axis.
fn across(spots: &[Px], axis: usize) -> f64 {
    let along = || spots.iter().map(|at| at[axis]);
    along().fold(f64::NEG_INFINITY, f64::max) - along().fold(f64::INFINITY, f64::min)
}

/// From afar they are as large as from the middle distance: the corners of a paddock are far from each other then.
fn size(view: &View) -> f64 {
    plate_size(if view.distance() == Distance::Far { Distance::Middle } else { view.distance() })
}

/// What a corner is called.
fn name(index: usize) -> String {
    (index + 1).to_string()
}

impl Inker<'_> {
    /// Draws the numbers of the corners in hand.
    pub(super) fn number_corners(&mut self) {
        for Number { thing, index, block } in self.drawing.numbers_in_hand(self.view, &mut self.numbers) {
            let picked = self.view.picked == Some(thing);
            self.pen.number_plate(self.palette, block.middle(), &name(index), size(self.view), picked);
            self.taken.push(block.grown(0.5));
        }
    }
}

/// The way to the right of both sides that meet in a corner, at an open line's end of its one; of two that lie on each
/// other, out of their end.
fn to_the_right(spots: &[Px], closed: bool, index: usize) -> Px {
    let count = spots.len();
    let here = spots[index];
    let met = |other: usize, there: bool| if closed || there { Some(spots[other % count]) } else { None };
    let before = met(index + count - 1, index > 0).and_then(|at| trace::direction(at, here));
    let after = met(index + 1, index + 1 < count).and_then(|at| trace::direction(here, at));
    let [Some(before), Some(after)] = [before.or(after), after.or(before)] else { return [0.0, -1.0] };
    trace::direction([0.0; 2], right(add(before, after))).unwrap_or(before)
}
