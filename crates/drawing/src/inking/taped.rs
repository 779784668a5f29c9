//! Known places that corners are taped from: a diamond on its tip, with the letter that the sheet calls it by.

use super::Inker;
use super::blocks::Block;
use super::pen::Type;
use super::trace::{Px, add, scaled};
use crate::ink::{Anchor, Weight};
use crate::view::Distance;
use plan::TapeLetter;

/// Half its diagonal, pixels.
const DIAMOND_PX: f64 = 11.0;
/// And from afar, where it has no letter.
const FAR_PX: f64 = 5.0;

impl Inker<'_> {
    /// A known place; one that is neither of the two that count has a dot in place of its letter.
    pub(super) fn tape_point(&mut self, at: Px, letter: Option<TapeLetter>) {
        let colours = self.palette;
        let far = self.distance == Distance::Far;
        let reach = if far { FAR_PX } else { DIAMOND_PX };
        let ring = [[0.0, -reach], [reach, 0.0], [0.0, reach], [-reach, 0.0]].map(|off| add(at, off));
        self.pen.edged(&ring, if far { colours.ink } else { colours.sheet }, 1.5, colours.ink);
        match letter {
            _ if far => {}
            Some(letter) => {
                self.pen.text(at, letter.as_str(), Type::new(11.0, Weight::SemiBold, colours.ink), Anchor::Middle);
            }
            None => self.pen.disc(at, 1.75, Some(colours.ink), None),
        }
        let [wide, high] = scaled([2.0, 2.0], reach);
        self.taken.push(Block::new(at, wide, high));
    }
}
