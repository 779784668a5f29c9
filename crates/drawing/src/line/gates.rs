//! Gates and pins on the unfolded line: swings and pulled posts over it, pins beneath.

use std::f64::consts::PI;

use super::Unroll;
use crate::shape::Thing;

/// How far a swing is drawn here, radians: the line is lower than the map.
const SWING_RAD: f64 = 38.0 * PI / 180.0;
/// No swing reaches higher than this over the axis, pixels.
const TALLEST_PX: f64 = 24.0;

impl Unroll<'_> {
    pub(super) fn gates(&mut self) {
        let Some(worked) = self.run.worked.filter(|_| self.rows.posts) else { return };
        let Some((lay, _)) = &self.run.laid else { return };
        let (axis, colours) = (self.rows.axis, self.colours);
        for (index, gate) in worked.gates.iter().enumerate() {
            let Some(opening) = &gate.opening else { continue };
            let thing = Thing::Gate { run: self.run.index, gate: index };
            let along = |at: plan::Point| self.track.nearest(at);
            let line_m = self.track.line_m();
            for &(hinge, end) in &opening.leaves {
                // The leaf lies between hinge and end, the shorter way.
                let mut by_m = along(end) - along(hinge);
                if self.track.closed() && by_m.abs() > line_m / 2.0 {
                    by_m -= by_m.signum() * line_m;
                }
                let (x, reach) = (self.x(along(hinge)), (self.right - self.left) * by_m / line_m);
                let tall = (reach.abs() * SWING_RAD.sin()).min(TALLEST_PX) / SWING_RAD.sin();
                let arc: Vec<_> = (0..=8)
                    .map(|piece| SWING_RAD * f64::from(piece) / 8.0)
                    .map(|turn| [x + reach * turn.cos(), axis - tall * turn.sin()])
                    .collect();
                self.pen.dashed(&arc, 1.25, colours.ink, Some([2.0, 3.0]));
                let (from, to) = (x.min(x + reach), x.max(x + reach));
                self.above.push([from, axis - tall * SWING_RAD.sin() - 1.0, to, axis]);
            }
            let pulled: Vec<f64> = opening
                .pulled
                .iter()
                .filter_map(|&post| lay.posts.get(post))
                .map(|post| self.x(post.along_m))
                .collect();
            for x in pulled {
                let ring = [x, axis - 14.0];
                self.pen.disc(ring, 2.5, Some(colours.sheet), Some((1.25, colours.ink)));
                self.place(thing, [x - 4.0, axis - 19.0, x + 4.0, axis - 10.0]);
            }
        }
        for (index, pin) in lay.pins.iter().enumerate() {
            let Some(along_m) = pin.along_m else { continue };
            let x = self.x(along_m);
            let colour = if pin.kept { colours.ink } else { colours.danger };
            let head = [x, axis + 13.0];
            self.pen.line(&[[x, axis + 2.0], head], 1.25, colour);
            let fill = if pin.kept { colour } else { colours.sheet };
            self.pen.disc(head, 3.0, Some(fill), Some((1.25, colour)));
            self.place(Thing::Pin { run: self.run.index, pin: index }, [x - 4.0, axis + 8.0, x + 4.0, axis + 17.0]);
        }
    }
}
