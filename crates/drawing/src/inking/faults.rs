//! Faults: a diamond on the net with what is wrong in it; and stretches of other grass, tufts beside the net.

use plan::{FaultKind, Point};

use super::Inker;
use super::blocks::Block;
use super::pen::Pen;
use super::trace::{self, Px, add, scaled};
use crate::palette::{Colour, Palette};
use crate::shape::Thing;
use crate::view::Distance;

/// How far a fault's diamond reaches from its middle, pixels.
pub(crate) const FAULT_PX: f64 = 10.0;
/// A stretch of grass stands so far outside the net's axis, pixels.
pub(crate) const ZONE_OFF_PX: f64 = 12.0;
/// How far the bar at a stretch's end reaches in and out from there, pixels.
const BAR_PX: [f64; 2] = [4.0, 8.0];
/// The grip in the middle of it, while the stretch is in hand.
const GRIP_PX: f64 = 8.0;
/// One tuft each so many pixels, and how high it is.
const TUFT_EACH_PX: f64 = 9.0;
const TUFT_PX: f64 = 6.0;

/// Size of a fault's sign at a distance.
pub(crate) fn fault_scale(distance: Distance) -> f64 {
    match distance {
        Distance::Near => 1.0,
        Distance::Middle => 0.8,
        Distance::Far => 0.7,
    }
}

/// The bar at an end of a stretch, square to the net.
pub(crate) fn zone_end(at: Px, outward: Px, distance: Distance) -> [Px; 2] {
    let scale = if distance == Distance::Far { 0.7 } else { 1.0 };
    [ZONE_OFF_PX - BAR_PX[0] * scale, ZONE_OFF_PX + BAR_PX[1] * scale].map(|off| trace::toward(at, outward, off))
}

/// How a sign is edged.
pub(crate) struct Edged {
    pub(crate) edge: Colour,
    pub(crate) width: f64,
}

impl Pen {
    /// A fault's diamond with its glyph.
    pub(crate) fn fault(&mut self, colours: &Palette, at: Px, kind: FaultKind, edged: &Edged, scale: f64) {
        let far = FAULT_PX * scale;
        let ring = [[0.0, -far], [far, 0.0], [0.0, far], [-far, 0.0]].map(|off| add(at, off));
        self.edged(&ring, colours.sheet, edged.width, edged.edge);
        let on = |off: [f64; 2]| add(at, scaled(off, scale));
        let mut line = |from: [f64; 2], to: [f64; 2]| self.line(&[on(from), on(to)], 1.5, edged.edge);
        match kind {
            // Into the ground.
            FaultKind::Short => {
                line([0.0, -5.5], [0.0, 0.5]);
                line([-4.0, 0.5], [4.0, 0.5]);
                line([-2.0, 3.5], [2.0, 3.5]);
            }
            // Two ends, nothing between.
            FaultKind::Break => {
                line([-3.5, -3.5], [3.5, 3.5]);
                line([-3.5, 3.5], [3.5, -3.5]);
            }
            FaultKind::LineBreak => {
                for side in [-1.0, 1.0] {
                    line([side * 6.0, 0.0], [side * 2.0, 0.0]);
                    line([side * 2.0, -3.0], [side * 2.0, 3.0]);
                }
            }
            FaultKind::Join => {
                for off in [-3.75, 0.0, 3.75] {
                    self.disc(on([off, 0.0]), 1.25 * scale, Some(edged.edge), None);
                }
            }
        }
    }
}

impl Inker<'_> {
    pub(super) fn fault(&mut self, thing: Option<Thing>, at: Px, kind: FaultKind) {
        let picked = thing.is_some() && thing == self.view.picked;
        let edged = Edged {
            edge: if picked { self.palette.pick } else { self.palette.danger },
            width: if picked { 2.0 } else { 1.5 },
        };
        let scale = fault_scale(self.distance);
        self.pen.fault(self.palette, at, kind, &edged, scale);
        let side = 2.0 * FAULT_PX * scale;
        self.taken.push(Block::turned(at, side / 1.4, side / 1.4, std::f64::consts::FRAC_PI_4));
    }

    /// The bar at an end of a stretch; with a grip while the stretch or one of its ends is picked or under the pointer.
    pub(super) fn zone_end(&mut self, thing: Option<Thing>, at: Px, outward: Px) {
        let zone = thing.and_then(Thing::zone);
        let of_it = |other: Option<Thing>| zone.is_some() && other.and_then(Thing::zone) == zone;
        let (in_hand, under) = (of_it(self.view.picked), of_it(self.view.hovered));
        let colours = self.palette;
        let colour = if in_hand { colours.pick } else { colours.hedge_edge };
        let bar = zone_end(at, outward, self.distance);
        self.pen.line(&bar, if in_hand || under { 2.25 } else { 1.75 }, colour);
        self.take_line(&bar, false);
        if in_hand || under {
            let middle = trace::toward(at, outward, ZONE_OFF_PX);
            let fill = if thing == self.view.picked { colours.pick } else { colours.sheet };
            let grip = super::pen::plate_ring(middle, GRIP_PX, GRIP_PX, 0.0);
            self.pen.edged(&grip, fill, 2.0, if in_hand { colours.pick } else { colours.ink });
            self.taken.push(Block::new(middle, GRIP_PX + 3.0, GRIP_PX + 3.0));
        }
    }

    /// The line of a stretch that is picked or under the pointer.
    pub(super) fn zone_state(&mut self, places: &[Point], width: f64, colour: Colour) {
        let beside = trace::aside(&self.pxs(places), false, ZONE_OFF_PX);
        for piece in self.seen(&beside, false) {
            self.pen.line(&piece.points(), width, colour);
        }
    }

    /// Tufts along the outer side; short ones where it leaks less than the rest.
    pub(super) fn zone(&mut self, places: &[Point], more: bool) {
        let colour = self.palette.hedge_edge;
        let beside = trace::aside(&self.pxs(places), false, ZONE_OFF_PX);
        let tall = if more { TUFT_PX } else { TUFT_PX / 2.0 };
        for piece in self.seen(&beside, false) {
            let line = piece.points();
            self.pen.line(&line, 1.75, colour);
            if self.distance == Distance::Far {
                continue;
            }
            for (root, along) in trace::walk(&line, false, TUFT_EACH_PX / 2.0, TUFT_EACH_PX) {
                let out = trace::right(along);
                for lean in [-0.5, 0.0, 0.5] {
                    let way = add(out, scaled(along, lean));
                    self.pen.line(&[root, trace::toward(root, way, tall)], 1.25, colour);
                }
            }
        }
        self.take_line(&beside, false);
    }
}
