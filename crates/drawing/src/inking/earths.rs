//! Where earth stakes would earth best: a drop with the earth's sign in it.
//!
//! In the colour of what is only thought of, for nothing of it stands yet; a drop, for it is the damp that earths.

use super::Inker;
use super::blocks::Block;
use super::pen::Pen;
use super::trace::{Px, add, scaled};
use crate::palette::Palette;
use crate::shape::{Drawing, Shape};
use crate::view::{Distance, View};

/// From the drop's middle up to its tip, and the radius of its round, pixels.
const TIP_PX: f64 = 14.5;
const ROUND_PX: f64 = 9.0;
/// Bars of the sign in it: half their width, and how far down.
const BARS: [(f64, f64); 3] = [(5.0, 1.0), (3.2, 3.5), (1.4, 6.0)];

/// The drop about its middle, its tip up.
fn drop_ring(middle: Px, scale: f64) -> Vec<Px> {
    // From the tip two straight sides touch the round.
    let touch = (ROUND_PX / TIP_PX).acos();
    let turn = std::f64::consts::TAU - 2.0 * touch;
    let up = -std::f64::consts::FRAC_PI_2;
    let round = (0..=20).map(|step| {
        let (sine, cosine) = (up + touch + turn * f64::from(step) / 20.0).sin_cos();
        [cosine * ROUND_PX, sine * ROUND_PX]
    });
    std::iter::once([0.0, -TIP_PX]).chain(round).map(|off| add(middle, scaled(off, scale))).collect()
}

impl Pen {
    /// The drop, its sign left out where it is small.
    pub(crate) fn earth_best(&mut self, palette: &Palette, middle: Px, scale: f64) {
        self.edged(&drop_ring(middle, scale), palette.sheet, 1.75, palette.ghost);
        if scale < 0.6 {
            return;
        }
        let at = |right: f64, down: f64| add(middle, scaled([right, down], scale));
        self.line(&[at(0.0, -6.5), at(0.0, BARS[0].1)], 1.5, palette.ghost);
        for (half, down) in BARS {
            self.line(&[at(-half, down), at(half, down)], 1.5, palette.ghost);
        }
    }
}

/// Its size at a distance.
fn best_scale(distance: Distance) -> f64 {
    match distance {
        Distance::Near => 1.0,
        Distance::Middle => 0.8,
        Distance::Far => 0.5,
    }
}

/// What it takes up.
pub(super) fn best_block(at: Px, distance: Distance) -> Block {
    let scale = best_scale(distance);
    let middle = add(at, [0.0, (ROUND_PX - TIP_PX) / 2.0 * scale]);
    Block::new(middle, 2.0 * ROUND_PX * scale + 4.0, (TIP_PX + ROUND_PX) * scale + 4.0)
}

impl Drawing {
    /// Whether one is shown: only of the run that is worked on, and only where that is asked about.
    pub(super) fn shows_best(&self, view: &View, shape: &Shape) -> bool {
        view.earth && shape.run == self.foremost.or(Some(0))
    }
}

impl Inker<'_> {
    pub(super) fn earth_best(&mut self, at: Px) {
        self.pen.earth_best(self.palette, at, best_scale(self.distance));
        self.taken.push(best_block(at, self.distance));
    }
}
