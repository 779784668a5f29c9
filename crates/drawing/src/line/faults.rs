//! Faults and stretches of other grass on the unfolded line.

use super::Unroll;
use crate::inking::faults::{Edged, FAULT_PX};
use crate::inking::pen::plate_ring;
use crate::map::faults::{along_m, stretch_m};
use crate::shape::Thing;

/// A stretch lies so far over the axis, above the posts, and its tufts reach so much higher, pixels.
const ZONE_PX: f64 = 12.0;
const TUFT_PX: f64 = 5.0;
/// Half of the bar at an end of a stretch, and the grip on it.
const BAR_PX: f64 = 6.0;
const GRIP_PX: f64 = 7.0;
/// One tuft each so many pixels.
const TUFT_EACH_PX: f64 = 8.0;

impl Unroll<'_> {
    pub(super) fn zones(&mut self) {
        let (run, line_m) = (self.run.index, self.track.line_m());
        for (index, zone) in self.run.run.leakage_zones.iter().enumerate() {
            let Some((from_m, to_m)) = stretch_m(self.track, zone.from_m, zone.to_m) else { continue };
            let thing = Thing::Zone { run, branch: None, zone: index };
            let of_it = |other: Option<Thing>| other.and_then(Thing::zone) == Some(thing);
            let (in_hand, under) = (of_it(self.view.picked), of_it(self.view.hovered));
            let (colour, width) = if in_hand {
                (self.colours.pick, 2.5)
            } else if under {
                (self.colours.ink, 2.25)
            } else {
                (self.colours.hedge_edge, 1.75)
            };
            let tall = if zone.s_per_m >= self.run.run.leakage_s_per_m() { TUFT_PX } else { TUFT_PX / 2.0 };
            // A stretch over corner 1 is seen at both ends.
            let pieces = [(from_m, to_m.min(line_m)), (0.0, to_m - line_m)];
            for (from_m, to_m) in pieces.into_iter().filter(|(from_m, to_m)| to_m > from_m) {
                let (from, to, y) = (self.x(from_m), self.x(to_m), self.rows.axis - ZONE_PX);
                self.pen.line(&[[from, y], [to, y]], width, colour);
                let count = ((to - from) / TUFT_EACH_PX).floor().min(2_000.0) as u32;
                for tuft in 0..count {
                    let x = from + TUFT_EACH_PX * (f64::from(tuft) + 0.5);
                    for lean in [-2.0, 0.0, 2.0] {
                        self.pen.line(&[[x, y], [x + lean, y - tall]], 1.0, colour);
                    }
                }
                self.place(thing, [from, y - TUFT_PX, to, y + 1.0]);
            }
            for (last, end_m) in [(false, from_m), (true, to_m)] {
                // What ends at corner 1 ends at the line's right end, and is drawn there.
                let end_m = if end_m > line_m { end_m - line_m } else { end_m };
                let (x, y) = (self.x(end_m), self.rows.axis - ZONE_PX);
                let end = Thing::ZoneEnd { run, branch: None, zone: index, last };
                self.pen.line(&[[x, y - BAR_PX], [x, y + BAR_PX]], width, colour);
                if in_hand || under {
                    let fill = if self.view.picked == Some(end) { self.colours.pick } else { self.colours.sheet };
                    self.pen.edged(&plate_ring([x, y], GRIP_PX, GRIP_PX, 0.0), fill, 2.0, colour);
                }
                let half = GRIP_PX / 2.0;
                self.place(end, [x - half, y - BAR_PX, x + half, y + BAR_PX]);
            }
        }
    }

    pub(super) fn faults(&mut self) {
        let run = self.run.index;
        let scale = if self.rows.posts { 0.85 } else { 0.7 };
        for (index, fault) in self.run.run.faults.iter().enumerate() {
            let thing = Thing::Fault { run, branch: None, fault: index };
            let picked = self.view.picked == Some(thing);
            let edged = Edged {
                edge: if picked { self.colours.pick } else { self.colours.danger },
                width: if picked { 2.0 } else { 1.5 },
            };
            let along_m = along_m(self.run, self.track, fault.kind, fault.at);
            for x in self.spots(along_m) {
                let at = [x, self.rows.axis];
                self.pen.fault(self.colours, at, fault.kind, &edged, scale);
                let far = FAULT_PX * scale;
                self.place(thing, [at[0] - far, at[1] - far, at[0] + far, at[1] + far]);
                self.state(thing, at, far + 4.0);
            }
        }
    }
}
