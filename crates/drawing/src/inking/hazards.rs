//! Symbols of what can hurt: overhead lines, public ways, other fences and earths.

use plan::{HazardKind, Point};

use super::Inker;
use super::blocks::Block;
use super::trace::{self, Px, add, right, scaled, sub, toward};
use crate::view::Distance;

impl Inker<'_> {
    pub(super) fn hazard_path(&mut self, kind: HazardKind, places: &[Point]) {
        let points = self.pxs(places);
        self.take_line(&points, false);
        match kind {
            HazardKind::OverheadLine => self.overhead_line(places, &points),
            HazardKind::PublicWay => self.public_way(&points),
            HazardKind::OtherEnergisedFence => self.other_fence(&points),
            HazardKind::ForeignEarth => {}
        }
    }

    /// Long dashes, with a ring now and then that has an arm to each side.
    fn overhead_line(&mut self, places: &[Point], points: &[Px]) {
        let colour = self.palette.danger;
        self.seen_line(places, false, 1.5, colour, Some([14.0, 4.0]));
        for (at, way) in self.along(points, 36.0, 72.0) {
            let arm = right(way);
            if self.distance != Distance::Far {
                self.pen.line(&[toward(at, arm, -8.0), toward(at, arm, 8.0)], 1.5, colour);
            }
            self.pen.disc(at, 3.5, Some(self.palette.sheet), Some((1.5, colour)));
            self.taken.push(Block::new(at, 16.0, 16.0));
        }
    }

    /// Two dotted edges, with a pair of steps now and then.
    fn public_way(&mut self, points: &[Px]) {
        let colour = self.palette.ink2;
        let half = match self.distance {
            Distance::Far => 3.0,
            Distance::Middle => 5.5,
            Distance::Near => 7.0,
        };
        for side in [-half, half] {
            let edge = trace::aside(points, false, side);
            for piece in self.seen(&edge, false) {
                let first = (6.0 - piece.before.rem_euclid(6.0)).rem_euclid(6.0);
                let knots = trace::stretch(&piece.knots, first, f64::INFINITY);
                let edge: Vec<Px> = knots.iter().map(|knot| knot.at).collect();
                self.pen.dashed(&edge, 1.5, colour, Some([2.0, 4.0]));
            }
        }
        if self.distance == Distance::Far {
            return;
        }
        for (at, way) in self.along(points, 32.0, 64.0) {
            for (ahead, aside) in [(-3.0, -2.2), (3.0, 2.2)] {
                let step = toward(toward(at, way, ahead), right(way), aside);
                self.pen.line(&[toward(step, way, -1.75), toward(step, way, 1.75)], 2.0, colour);
            }
        }
    }

    /// A line that jumps.
    fn other_fence(&mut self, points: &[Px]) {
        let every = match self.distance {
            Distance::Far => 20.0,
            Distance::Middle => 24.0,
            Distance::Near => 28.0,
        };
        let (up, down) = if self.distance == Distance::Far { (5.0, 3.0) } else { (7.0, 4.0) };
        for piece in self.seen(points, false) {
            let (line, first) = (piece.points(), every - piece.before.rem_euclid(every));
            let length = trace::line_length(&line);
            let mut jumping: Vec<Px> = Vec::new();
            let mut walked = 0.0;
            let mut far = first;
            while far < length {
                let (knots, next) = (trace::stretch(&piece.knots, walked, far - 4.0), far + 5.0);
                jumping.extend(knots.iter().map(|knot| knot.at));
                if let Some(&(at, way)) = trace::walk(&line, false, far, f64::INFINITY).first() {
                    let side = right(way);
                    jumping.push(toward(toward(at, way, -1.0), side, -up));
                    jumping.push(toward(toward(at, way, 2.0), side, down));
                }
                walked = next.min(length);
                far += every;
            }
            jumping.extend(trace::stretch(&piece.knots, walked, length).iter().map(|knot| knot.at));
            self.pen.line(&trace::distinct(&jumping, false), 1.5, self.palette.danger);
        }
    }

    /// A hazard at one place: an earth sign in a ring, or a bare ring.
    pub(super) fn hazard_place(&mut self, kind: HazardKind, at: Px) {
        let colour = self.palette.danger;
        let radius = match self.distance {
            Distance::Far => 7.0,
            Distance::Middle => 9.0,
            Distance::Near => 11.0,
        };
        self.pen.disc(at, radius, Some(self.palette.sheet), Some((1.5, colour)));
        if kind == HazardKind::ForeignEarth {
            let scale = radius / 11.0;
            self.pen.line(&[add(at, [0.0, -6.0 * scale]), add(at, [0.0, -scale])], 1.5, colour);
            for (half, down) in [(6.0, -1.0), (3.75, 2.0), (1.5, 5.0)] {
                let bar = scaled([half, 0.0], scale);
                let middle = add(at, [0.0, down * scale]);
                self.pen.line(&[sub(middle, bar), add(middle, bar)], 1.5, colour);
            }
        }
        self.taken.push(Block::new(at, 2.0 * radius + 4.0, 2.0 * radius + 4.0));
    }

    /// Places along the seen part of a line, each so many pixels, that stay where they are when the map moves.
    pub(super) fn along(&self, points: &[Px], first: f64, every: f64) -> Vec<(Px, Px)> {
        self.seen(points, false)
            .iter()
            .flat_map(|piece| {
                let first = (first - piece.before).rem_euclid(every);
                trace::walk(&piece.points(), false, first, every)
            })
            .collect()
    }
}
