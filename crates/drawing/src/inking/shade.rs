//! Shade: a hint of green on the ground within an edge of crowns, as maps draw the rim of a wood.
//!
//! The crowns are in the colour of a hedge's edge, which stands out from every ground, and as large from afar as they are
//! near: shade is told by its edge, not by its fill.

use plan::Point;

use super::Inker;
use super::trace::{self, Px, add, direction, right, scaled, toward};
use crate::map::track::signed_area_m2;
use crate::view::Distance;

/// From one crown to the next, pixels: from afar, and nearer.
const FAR_PX: f64 = 7.0;
const CROWN_PX: f64 = 11.0;
/// Half the angle of a crown's arc, and its pieces.
const HALF_RAD: f64 = 1.15;
const PIECES: u8 = 6;
/// Width of the edge.
const EDGE_PX: f64 = 1.5;

impl Inker<'_> {
    pub(super) fn shade(&mut self, rings: &[Vec<Point>]) {
        let Some(ring) = rings.first() else { return };
        let points = self.pxs(ring);
        let area = trace::clip_ring(&points, &self.window);
        self.pen.area(vec![area], self.palette.shade);
        self.take_line(&points, true);
        let apart = if self.distance == Distance::Far { FAR_PX } else { CROWN_PX };
        let outward = if signed_area_m2(ring) >= 0.0 { 1.0 } else { -1.0 };
        let colour = self.palette.hedge_edge;
        let round: Vec<Px> = points.iter().chain(points.first()).copied().collect();
        let length = trace::line_length(&round);
        // Whole crowns round the outline; one that is too small for three is a line.
        let count = (length / apart).round();
        if !(count >= 3.0 && count.is_finite()) {
            return self.seen_line(ring, true, EDGE_PX, colour, None);
        }
        let every = length / count;
        for piece in self.seen(&points, true) {
            let first = (every - piece.before.rem_euclid(every)).rem_euclid(every);
            let mut feet: Vec<Px> =
                trace::walk(&piece.points(), piece.closed, first, every).into_iter().map(|(at, _)| at).collect();
            if piece.closed {
                feet.truncate(count as usize);
                feet.extend(feet.first().copied());
            }
            let mut edge: Vec<Px> = feet.first().copied().into_iter().collect();
            for pair in feet.windows(2) {
                edge.extend(crown(pair[0], pair[1], outward));
            }
            self.pen.line(&edge, EDGE_PX, colour);
        }
    }
}

/// The arc of a crown from foot to foot, without the first, bulging to the right of the way by `outward`'s sign.
fn crown(from: Px, to: Px, outward: f64) -> Vec<Px> {
    let Some(way) = direction(from, to) else { return vec![to] };
    let half = trace::apart(from, to) / 2.0;
    let radius = half / HALF_RAD.sin();
    let out = scaled(right(way), outward);
    let middle = toward(toward(from, way, half), out, -radius * HALF_RAD.cos());
    let at = |piece: u8| {
        let turn = HALF_RAD * (2.0 * f64::from(piece) / f64::from(PIECES) - 1.0);
        add(middle, add(scaled(way, radius * turn.sin()), scaled(out, radius * turn.cos())))
    };
    (1..=PIECES).map(at).collect()
}
