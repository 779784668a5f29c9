//! Gates, ways, pins and the gateway.

use plan::Point;

use super::Inker;
use super::blocks::Block;
use super::trace::{self, Px, toward};
use crate::shape::Role;
use crate::view::Distance;

/// Dots of a swing and of what is laid back: dash and gap, pixels.
const DOTS: [f32; 2] = [2.0, 3.0];
/// Dashes of a way.
const DASHES: [f32; 2] = [9.0, 5.0];

/// How far beside the net panels are drawn that are laid back.
pub(crate) fn laid_back_px(distance: Distance) -> f64 {
    if distance == Distance::Near { 15.0 } else { 11.0 }
}

impl Inker<'_> {
    pub(super) fn gate_line(&mut self, role: Role, places: &[Point]) {
        let colours = self.palette;
        match role {
            Role::Way => {
                self.seen_line(places, false, 1.75, colours.ink2, Some(DASHES));
                self.take_line(&self.pxs(places), false);
            }
            Role::Swing { .. } if self.distance != Distance::Far => {
                self.seen_line(places, false, 1.5, colours.ink, Some(DOTS));
                self.take_line(&self.pxs(places), false);
            }
            Role::LaidBack if self.distance != Distance::Far => {
                let beside = trace::aside(&self.pxs(places), false, laid_back_px(self.distance));
                for piece in self.seen(&beside, false) {
                    self.pen.dashed(&piece.points(), 1.5, colours.ink2, Some(DOTS));
                }
            }
            _ => {}
        }
    }

    /// A post that is pulled to open a gate: a ring at its tooth's end.
    pub(super) fn pulled_post(&mut self, at: Px, outward: Px) {
        let (reach, radius) = match self.distance {
            Distance::Near => (15.0, 3.25),
            Distance::Middle => (11.0, 2.5),
            Distance::Far => return,
        };
        let ring = toward(at, outward, reach);
        self.pen.disc(ring, radius, Some(self.palette.sheet), Some((1.5, self.palette.ink)));
        self.taken.push(Block::new(ring, 2.0 * radius + 3.0, 2.0 * radius + 3.0));
    }

    /// A pin, stuck in from the inner side; open and in danger's colour where it cannot be kept.
    pub(super) fn pin(&mut self, at: Px, inward: Px, kept: bool) {
        let scale = self.sign_scale();
        let colours = self.palette;
        let colour = if kept { colours.ink } else { colours.danger };
        let head = toward(at, inward, 14.0 * scale);
        self.pen.line(&[toward(at, inward, 2.0), head], 1.5, colour);
        let fill = if kept { colour } else { colours.sheet };
        self.pen.disc(head, 4.0 * scale, Some(fill), Some((1.5, colour)));
        self.taken.push(Block::new(head, 11.0 * scale, 11.0 * scale));
    }

    /// The gateway: two posts with a bar between them.
    pub(super) fn gateway(&mut self, at: Px) {
        let scale = self.sign_scale();
        let (half, tall) = (8.0 * scale, 7.0 * scale);
        let colours = self.palette;
        let back = super::pen::plate_ring(at, 2.0 * half + 6.0, 2.0 * tall + 4.0, 0.0);
        self.pen.polygon(&back, colours.sheet);
        for bar in [-0.45, 0.0, 0.45] {
            let y = at[1] + bar * 2.0 * tall * 0.8;
            self.pen.line(&[[at[0] - half, y], [at[0] + half, y]], 1.25, colours.ink);
        }
        self.pen.line(&[[at[0] - half, at[1] + tall * 0.7], [at[0] + half, at[1] - tall * 0.7]], 1.25, colours.ink);
        for side in [-half, half] {
            self.pen.line(&[[at[0] + side, at[1] - tall], [at[0] + side, at[1] + tall]], 2.25, colours.ink);
        }
        self.taken.push(Block::new(at, 2.0 * half + 6.0, 2.0 * tall + 4.0));
    }
}
