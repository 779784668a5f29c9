//! Damp ground: a broken edge, and short level strokes in staggered rows, as maps mark wet meadows.
//!
//! The rows lie on the ground, so that they do not swim when the map moves; from afar there are fewer of them. Strokes
//! and edge are in the colour of water's edge, which stands out from every ground.

use plan::Point;

use super::Inker;
use super::blocks::Block;
use super::trace::{self, Px};
use crate::map::track::inside;

/// Strokes of a row are no nearer than this, pixels, and no farther than a half more.
const LEAST_APART_PX: f64 = 13.0;
/// Between the rows, as a share of that.
const ROWS_SHARE: f64 = 0.5;
/// How thick strokes and edge are, pixels.
const STROKE_PX: f64 = 1.25;
/// Half a stroke, pixels.
const HALF_PX: f64 = 3.5;
/// The finest rows, metres apart along them.
const FINEST_M: f64 = 0.25;
/// More strokes than this are noise.
const MOST_STROKES: f64 = 20_000.0;

impl Inker<'_> {
    pub(super) fn damp(&mut self, rings: &[Vec<Point>]) {
        let Some(ring) = rings.first() else { return };
        let colour = self.palette.water_edge;
        self.seen_line(ring, true, STROKE_PX, colour, Some([7.0, 3.0]));
        self.take_line(&self.pxs(ring), true);
        let strokes = self.damp_strokes(ring);
        self.wet.push((self.pen.ink.len(), strokes));
    }

    /// The strokes, once it is known where words and signs stand: none lies beneath those.
    pub(super) fn damp_hatch(&mut self) {
        for (place, strokes) in std::mem::take(&mut self.wet).into_iter().rev() {
            let mut hatch = super::pen::Pen::default();
            for [from, to] in strokes {
                let room = Block::new(trace::lerp(from, to, 0.5), 2.0 * HALF_PX + 3.0, 4.0);
                if !self.taken.overlaps(&room) {
                    hatch.line(&[from, to], STROKE_PX, self.palette.water_edge);
                }
            }
            self.pen.ink.splice(place..place, hatch.ink);
        }
    }

    /// The strokes that lie wholly inside, as far as the view shows the ring.
    fn damp_strokes(&self, ring: &[Point]) -> Vec<[Px; 2]> {
        let view = self.view;
        let (mut low, mut high) = (view.place([0.0, view.size[1]]), view.place([view.size[0], 0.0]));
        let span = |of: fn(&Point) -> f64| {
            ring.iter().map(of).fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), m| (low.min(m), high.max(m)))
        };
        let (east, north) = (span(|at| at.east_m), span(|at| at.north_m));
        (low.east_m, high.east_m) = (low.east_m.max(east.0), high.east_m.min(east.1));
        (low.north_m, high.north_m) = (low.north_m.max(north.0), high.north_m.min(north.1));
        let mut every_m = FINEST_M;
        while self.px_of(every_m) < LEAST_APART_PX && every_m.is_finite() {
            every_m *= 1.5;
        }
        let row_m = every_m * ROWS_SHARE;
        let count = (high.east_m - low.east_m) / every_m * ((high.north_m - low.north_m) / row_m);
        if !(high.east_m > low.east_m && high.north_m > low.north_m && count < MOST_STROKES) {
            return Vec::new();
        }
        let steps = |low: f64, high: f64, step: f64| (low / step).floor() as i64..=(high / step).ceil() as i64;
        let half_m = every_m * HALF_PX / self.px_of(every_m);
        let stroke = |row: i64, column: i64| {
            let shift = if row.rem_euclid(2) == 0 { 0.0 } else { 0.5 };
            let (east_m, north_m) = ((column as f64 + shift) * every_m, row as f64 * row_m);
            let ends = [-half_m, half_m].map(|by| Point::new(east_m + by, north_m));
            ends.iter().all(|&end| inside(ring, end)).then(|| ends.map(|end| self.px(end)))
        };
        let rows = steps(low.north_m, high.north_m, row_m);
        rows.flat_map(|row| steps(low.east_m, high.east_m, every_m).filter_map(move |column| stroke(row, column)))
            .collect()
    }
}
