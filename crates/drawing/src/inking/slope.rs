//! Signs of the ground's shape: spot heights, dips, ridges and further posts.

use super::Inker;
use super::blocks::Block;
use super::trace::{Px, right, toward};
use crate::view::Distance;

/// How far inside the net's axis a dip's or ridge's sign stands, pixels.
const INSIDE_PX: f64 = 15.0;

impl Inker<'_> {
    /// A surveyor's cross.
    pub(super) fn height(&mut self, at: Px) {
        // From afar it steps back behind what is built.
        let far = self.distance == Distance::Far;
        let arm = if far { 2.5 } else { 4.5 * self.sign_scale() };
        let strokes = [[[-arm, 0.0], [arm, 0.0]], [[0.0, -arm], [0.0, arm]]];
        let halo = if far { 3.0 } else { 4.0 };
        let stroke = if far { (1.0, self.palette.ink2) } else { (1.5, self.palette.ink) };
        for (width, colour) in [(halo, self.palette.sheet), stroke] {
            for stroke in &strokes {
                self.pen.line(&stroke.map(|off| [at[0] + off[0], at[1] + off[1]]), width, colour);
            }
        }
        self.taken.push(Block::new(at, 2.0 * arm + 2.0, 2.0 * arm + 2.0));
    }

    /// A cup below the net: the ground falls away there.
    pub(super) fn dip(&mut self, at: Px, inward: Px) {
        self.under(
            at,
            inward,
            &[(-6.0, -2.5), (-4.6, 1.2), (-2.0, 3.2), (0.0, 3.6), (2.0, 3.2), (4.6, 1.2), (6.0, -2.5)],
        );
    }

    /// A peak below the net: the ground rises into it.
    pub(super) fn ridge(&mut self, at: Px, inward: Px) {
        self.under(at, inward, &[(-6.0, 3.5), (0.0, -3.5), (6.0, 3.5)]);
    }

    /// A stroke beside the net, its places across and inward.
    fn under(&mut self, at: Px, inward: Px, places: &[(f64, f64)]) {
        if self.distance == Distance::Far {
            return;
        }
        let scale = self.sign_scale();
        let middle = toward(at, inward, INSIDE_PX * scale);
        let across = right(inward);
        let line: Vec<Px> = places
            .iter()
            .map(|&(aside, ahead)| toward(toward(middle, across, aside * scale), inward, ahead * scale))
            .collect();
        self.pen.line(&line, 5.0, self.palette.sheet);
        self.pen.line(&line, 2.0, self.palette.ink);
        self.taken.push(Block::new(middle, 15.0 * scale, 13.0 * scale));
    }

    /// An open ring on the net: no post of the net's own.
    pub(super) fn further_post(&mut self, at: Px) {
        let (radius, colours) =
            (if self.distance == Distance::Far { 2.5 } else { 4.0 * self.sign_scale() }, self.palette);
        self.pen.disc(at, radius, Some(colours.sheet), Some((1.75, colours.ink)));
        self.taken.push(Block::new(at, 2.0 * radius + 3.0, 2.0 * radius + 3.0));
    }
}
