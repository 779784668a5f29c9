//! Numbers at the corners of the paddock while it is in hand, as its table calls them. A run's corners have theirs always.

use plan::Point;

use super::Inker;
use super::blocks::Block;
use super::pen::Type;
use super::signs::{plate_size, plate_width};
use super::trace::{self, Px, add, right, scaled, toward};
use crate::ink::Weight;
use crate::map::track::signed_area_m2;
use crate::view::Distance;

/// From a corner to the nearest of its plate, pixels: clear of the square on the corner.
const OFF_PX: f64 = 7.0;

impl Inker<'_> {
    /// The numbers of a closed outline's corners, each outside of it; one whose room another number has is left out. From
    /// afar they are as large as from the middle distance: the corners of a paddock are far from each other then.
    pub(super) fn outline_numbers(&mut self, corners: &[Point], picked: Option<usize>) {
        let size = plate_size(if self.distance == Distance::Far { Distance::Middle } else { self.distance });
        let kind = Type::new(12.0, Weight::SemiBold, self.palette.ink);
        // Out of ground that is walked round counter-clockwise is to the right.
        let side = if signed_area_m2(corners) < 0.0 { -1.0 } else { 1.0 };
        let spots = self.pxs(corners);
        for (index, &corner) in spots.iter().enumerate() {
            let outward = scaled(to_the_right(&spots, index), side);
            let far = OFF_PX + size / 2.0 / outward[0].abs().max(outward[1].abs()).max(0.5);
            let middle = toward(corner, outward, far);
            let text = (index + 1).to_string();
            let block = Block::new(middle, plate_width(&text, size, kind) + 3.0, size + 3.0);
            if !self.sees(corner) || self.numbers.iter().any(|other| other.overlaps(&block)) {
                continue;
            }
            self.pen.number_plate(self.palette, middle, &text, size, picked == Some(index));
            self.numbers.push(block);
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
