//! Readings over the unfolded line: small signs whose foot stands on it.

use super::Unroll;
use crate::inking::readings::Board;
use crate::map::readings::{figure, newest};
use crate::shape::Thing;

/// The sign's body and foot, pixels; without room for figures it is a speck.
const BODY_PX: (f64, f64, f64) = (30.0, 14.0, 7.0);
const SPECK_PX: (f64, f64, f64) = (7.0, 5.0, 4.0);

impl Unroll<'_> {
    pub(super) fn readings(&mut self) {
        let (plan, run) = (self.scene.plan, self.run.index);
        let mut stand: Vec<(f64, f64)> = Vec::new();
        for index in newest(plan, &self.run.run.id).into_iter().rev() {
            let reading = &plan.readings[index];
            let Some((along_m, text)) = reading.along_m.zip(figure(self.scene, reading)) else { continue };
            if !along_m.is_finite() {
                continue;
            }
            let thing = Thing::Reading { run, reading: index };
            let x = self.x(self.track.held(along_m));
            let crowded = stand.iter().any(|&(from, to)| x + 17.0 > from && x - 17.0 < to);
            let speck = crowded || !self.rows.posts;
            let (width, height, foot) = if speck { SPECK_PX } else { BODY_PX };
            let board = Board::over([x, self.rows.axis - 4.0], foot, width, height);
            let (edge, thick) = if self.view.picked == Some(thing) {
                (self.colours.pick, 2.0)
            } else if self.view.hovered == Some(thing) {
                (self.colours.ink, 2.25)
            } else {
                (self.colours.ink, 1.25)
            };
            self.pen.board(&board, &text, self.colours, edge, thick);
            stand.push((x - width / 2.0, x + width / 2.0));
            self.place(thing, board.body());
        }
    }
}
