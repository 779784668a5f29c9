//! Numbers at the corners of the paddock while it is in hand, as its table calls them. A run's corners have theirs always.

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

/// Between two plates, pixels.
const MARGIN_PX: f64 = 3.0;

/// A corner's number.
#[derive(Clone, Copy)]
pub(crate) struct Number {
    /// The corner's place in its outline.
    pub(crate) index: usize,
    /// What its plate takes, a little margin with it.
    pub(crate) block: Block,
}

/// The numbers of a closed outline's corners, each outside of it; one whose room another number has is left out, and
/// what they take is added to theirs.
pub(crate) fn outline_numbers(view: &View, corners: &[Point], numbers: &mut Vec<Block>) -> Vec<Number> {
    let size = size(view);
    let kind = Type::new(12.0, Weight::SemiBold, view.theme.palette().ink);
    // Out of ground that is walked round counter-clockwise is to the right.
    let side = if signed_area_m2(corners) < 0.0 { -1.0 } else { 1.0 };
    let spots: Vec<Px> = corners.iter().map(|&at| view.px(at)).collect();
    let mut found = Vec::new();
    for (index, &corner) in spots.iter().enumerate() {
        let outward = scaled(to_the_right(&spots, index), side);
        let far = OFF_PX + size / 2.0 / outward[0].abs().max(outward[1].abs()).max(0.5);
        let width = plate_width(&name(index), size, kind);
        let block = Block::new(toward(corner, outward, far), width + MARGIN_PX, size + MARGIN_PX);
        if sees(view, corner) && !numbers.iter().any(|other| other.overlaps(&block)) {
            numbers.push(block);
            found.push(Number { index, block });
        }
    }
    found
}

/// From afar they are as large as from the middle distance: the corners of a paddock are far from each other then.
fn size(view: &View) -> f64 {
    plate_size(if view.distance() == Distance::Far { Distance::Middle } else { view.distance() })
}

/// What a corner is called.
fn name(index: usize) -> String {
    (index + 1).to_string()
}

impl Drawing {
    /// The paddock's corners while it is in hand.
    pub(crate) fn paddock_in_hand(&self, view: &View) -> Vec<Point> {
        if !view.handles || view.picked.and_then(outline_of) != Some(Thing::Boundary) {
            return Vec::new();
        }
        let corner = |shape: &Shape| match (shape.role, shape.thing, &shape.form) {
            (Role::Handle, Some(Thing::BoundaryCorner { .. }), Form::Mark { at, .. }) => Some(*at),
            _ => None,
        };
        self.shapes().filter_map(corner).collect()
    }
}

impl Inker<'_> {
    /// Draws the numbers of the paddock's corners.
    pub(super) fn number_corners(&mut self) {
        let corners = self.drawing.paddock_in_hand(self.view);
        for Number { index, block } in outline_numbers(self.view, &corners, &mut self.numbers) {
            let picked = self.view.picked == Some(Thing::BoundaryCorner { vertex: index });
            self.pen.number_plate(self.palette, block.middle(), &name(index), size(self.view), picked);
            self.taken.push(block.grown(0.5));
        }
    }
}

/// The way to the right of both sides that meet in a corner; of two that lie on each other, out of their end.
fn to_the_right(spots: &[Px], index: usize) -> Px {
    let count = spots.len();
    let here = spots[index];
    let before = trace::direction(spots[(index + count - 1) % count], here);
    let after = trace::direction(here, spots[(index + 1) % count]);
    let [Some(before), Some(after)] = [before.or(after), after.or(before)] else { return [0.0, -1.0] };
    trace::direction([0.0; 2], right(add(before, after))).unwrap_or(before)
}
