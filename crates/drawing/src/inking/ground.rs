//! Symbols of the ground: paddock, runs, strip, water, keep-outs and coops.

use plan::{DoorSide, Point};

use super::trace::{self, Px, add, lerp, right, scaled, sub, toward};
use super::{Inker, blocks::Block};
use crate::map::track::inside;
use crate::palette::half;
use crate::shape::{Form, Role};
use crate::view::Distance;

/// One tuft for so much ground, square metres.
const TUFT_M2: f64 = 30.0;
/// A cross on bare ground each so many metres.
const CROSS_M: f64 = 10.0;
/// Crosses nearer than this are noise, pixels.
const LEAST_CROSS_PX: f64 = 36.0;

impl Inker<'_> {
    /// Small crosses where no paddock is stated, so that bare ground has a scale.
    pub(super) fn bare_ground(&mut self) {
        if self.prints() || self.drawing.shapes().any(|shape| shape.role == Role::Paddock) {
            return;
        }
        let mut every_m = CROSS_M;
        while self.px_of(every_m) < LEAST_CROSS_PX {
            every_m *= 10.0;
        }
        for at in self.lattice(every_m) {
            let at = self.px(at);
            for arm in [[3.0, 0.0], [0.0, 3.0]] {
                self.pen.line(&[sub(at, arm), add(at, arm)], 1.0, self.palette.hairline);
            }
        }
    }

    /// Places of a square lattice that the view shows.
    fn lattice(&self, every_m: f64) -> Vec<Point> {
        let view = self.view;
        let (low, high) = (view.place([0.0, view.size[1]]), view.place([view.size[0], 0.0]));
        let steps = |low: f64, high: f64| {
            let first = (low / every_m).floor();
            let count = (((high - low) / every_m).ceil() + 1.0).clamp(0.0, 400.0) as u32;
            (0..count).map(move |step| (first + f64::from(step)) * every_m)
        };
        if !(low.east_m.is_finite() && low.north_m.is_finite()) {
            return Vec::new();
        }
        steps(low.north_m, high.north_m)
            .flat_map(|north_m| steps(low.east_m, high.east_m).map(move |east_m| Point::new(east_m, north_m)))
            .collect()
    }

    pub(super) fn area(&mut self, role: Role, rings: &[Vec<Point>]) {
        let colours = self.palette;
        let clipped = |inker: &Self| -> Vec<Vec<Px>> {
            rings.iter().map(|ring| trace::clip_ring(&inker.pxs(ring), &inker.window)).collect()
        };
        match role {
            // The picture shows its own grass.
            Role::Paddock if self.view.underlay => {}
            Role::Paddock => {
                let area = clipped(self);
                self.pen.area(area, colours.grass);
                self.grass = Some(self.pen.ink.len());
            }
            Role::Shade => self.shade(rings),
            Role::Damp => self.damp(rings),
            Role::RunGround => {
                let area = clipped(self);
                self.pen.area(area, self.over(colours.run));
            }
            Role::Strip => {
                let thin = self.distance == Distance::Far;
                let area = clipped(self);
                self.pen.area(area, if thin { half(colours.strip) } else { self.over(colours.strip) });
                if !thin {
                    for ring in rings {
                        self.seen_line(ring, true, 1.0, colours.strip_edge, None);
                    }
                }
            }
            Role::Water => {
                let area = clipped(self);
                self.pen.area(area, self.over(colours.water));
                if let Some(ring) = rings.first() {
                    self.shore(ring);
                    self.seen_line(ring, true, 1.5, colours.water_edge, None);
                    self.take_line(&self.pxs(ring), true);
                }
            }
            Role::KeepOut => {
                if let Some(ring) = rings.first() {
                    self.keep_out(ring);
                }
            }
            _ => {}
        }
    }

    /// A fill, half clear where a picture lies beneath.
    fn over(&self, fill: crate::palette::Colour) -> crate::palette::Colour {
        if self.view.underlay { half(fill) } else { fill }
    }

    /// The seen pieces of a path as one line each; dashes stay where they are when the map moves.
    pub(super) fn seen_line(
        &mut self,
        places: &[Point],
        closed: bool,
        width: f64,
        colour: crate::palette::Colour,
        dash: Option<[f32; 2]>,
    ) {
        for piece in self.seen(&self.pxs(places), closed) {
            let mut knots = piece.knots;
            if let Some([dash, gap]) = dash
                && piece.before > 0.0
            {
                let period = f64::from(dash + gap);
                let skip = (period - piece.before.rem_euclid(period)).rem_euclid(period);
                knots = trace::stretch(&knots, skip, f64::INFINITY);
            }
            let points: Vec<Px> = knots.iter().map(|knot| knot.at).collect();
            if piece.closed {
                self.pen.dashed_ring(&points, width, colour, dash);
            } else {
                self.pen.dashed(&points, width, colour, dash);
            }
        }
    }

    pub(super) fn ground_line(&mut self, role: Role, places: &[Point], closed: bool) {
        let colours = self.palette;
        match role {
            Role::StripPass if self.distance == Distance::Near => {
                self.seen_line(places, closed, 1.0, colours.strip_edge, Some([6.0, 4.0]));
            }
            Role::PaddockEdge => {
                self.seen_line(places, closed, 1.5, colours.rule, None);
                self.take_line(&self.pxs(places), closed);
            }
            Role::Clearance { water } => {
                let colour = if water { colours.water_edge } else { colours.ink2 };
                self.seen_line(places, closed, 1.2, colour, Some([5.0, 4.0]));
                self.take_line(&self.pxs(places), closed);
            }
            _ => {}
        }
    }

    /// Two broken lines within the water's edge: one where it is not seen near, none from afar.
    fn shore(&mut self, ring: &[Point]) {
        let lines: &[(f64, [f64; 4])] = match self.distance {
            Distance::Far => &[],
            Distance::Middle => &[(0.74, [0.04, 0.34, 0.52, 0.80])],
            Distance::Near => &[(0.80, [0.04, 0.30, 0.50, 0.84]), (0.60, [0.08, 0.24, 0.56, 0.74])],
        };
        let edge = self.pxs(ring);
        let Some((middle, _)) = crate::map::track::middle(ring) else { return };
        let middle = self.px(middle);
        for (share, parts) in lines {
            let inner: Vec<Px> = edge.iter().map(|&at| lerp(middle, at, *share)).collect();
            // Shrunk about its middle, a bent shape may leave itself; then it has no shore line.
            let in_water = inner.iter().all(|&at| inside(ring, self.view.place(super::pen::spot(at))));
            let finite = inner.iter().flatten().all(|px| px.is_finite());
            let knots: Vec<trace::Knot> =
                inner.iter().chain(inner.first()).map(|&at| trace::Knot { at, kv: 0.0 }).collect();
            let points: Vec<Px> = knots.iter().map(|knot| knot.at).collect();
            let length = trace::line_length(&points);
            if !in_water || !finite || length > 1e5 {
                continue;
            }
            for part in parts.chunks(2) {
                let arc = trace::stretch(&knots, part[0] * length, part[1] * length);
                let arc: Vec<Px> = arc.iter().map(|knot| knot.at).collect();
                self.pen.line(&arc, 1.0, self.palette.water_edge);
            }
        }
    }

    /// An outline with a slanted fringe inward.
    fn keep_out(&mut self, ring: &[Point]) {
        let colour = self.palette.ink2;
        self.seen_line(ring, true, 1.5, colour, None);
        let points = self.pxs(ring);
        self.take_line(&points, true);
        let every = match self.distance {
            Distance::Far => return,
            Distance::Middle => 9.0,
            Distance::Near => 8.0,
        };
        let turn = if crate::map::track::signed_area_m2(ring) >= 0.0 { -1.0 } else { 1.0 };
        for piece in self.seen(&points, true) {
            let first = every - piece.before.rem_euclid(every);
            for (at, way) in trace::walk(&piece.points(), piece.closed, first, every) {
                let inward = add(scaled(right(way), turn), way);
                let end = toward(at, inward, 4.0 / std::f64::consts::SQRT_2);
                if inside(ring, self.view.place(super::pen::spot(end))) {
                    self.pen.line(&[at, end], 1.0, colour);
                }
            }
        }
    }

    /// Three strokes here and there, where nothing else is.
    pub(super) fn tufts(&mut self) {
        let Some(grass) = self.grass.filter(|_| self.distance == Distance::Near && !self.prints()) else { return };
        let mut tufts = super::pen::Pen::default();
        let side_m = TUFT_M2.sqrt();
        let drawing = self.drawing;
        let outlines = |role: Role| {
            drawing.shapes().filter(move |shape| shape.role == role).filter_map(|shape| match &shape.form {
                Form::Area { rings } => rings.first(),
                _ => None,
            })
        };
        let paddocks: Vec<_> = outlines(Role::Paddock).collect();
        let others: Vec<_> =
            [Role::RunGround, Role::Strip, Role::Water, Role::KeepOut].map(outlines).into_iter().flatten().collect();
        for cell in self.lattice(side_m) {
            let (jitter_east, jitter_north) = jitter(cell, side_m);
            let place = Point::new(cell.east_m + jitter_east * side_m, cell.north_m + jitter_north * side_m);
            let grass = paddocks.iter().any(|ring| inside(ring, place));
            if !grass || others.iter().any(|ring| inside(ring, place)) {
                continue;
            }
            let foot = self.px(place);
            let room = Block::new(add(foot, [0.0, -2.5]), 9.0, 7.0);
            if self.taken.overlaps(&room) {
                continue;
            }
            let colour = self.palette.tuft;
            tufts.line(&[add(foot, [-3.0, -2.5]), foot, add(foot, [3.0, -2.5])], 1.0, colour);
            tufts.line(&[foot, add(foot, [0.0, -4.5])], 1.0, colour);
        }
        self.pen.ink.splice(grass..grass, tufts.ink);
    }

    /// A coop true to size: ridge, ribs, skids and ramp; a sign of its own where that would be too small.
    pub(super) fn coop(&mut self, at: Px, along: Px, [length_m, width_m]: [f64; 2], side: DoorSide) {
        let colours = self.palette;
        let (mut length, mut width) = (self.px_of(length_m), self.px_of(width_m));
        if !(length > 0.0 && width > 0.0 && length < 1e5 && width < 1e5) {
            return;
        }
        let small = is_small([length, width]);
        [length, width] = coop_size([length, width]);
        let across = right(along);
        let place = |l: f64, w: f64| toward(toward(at, along, l * length / 2.0), across, w * width / 2.0);
        let turn = along[1].atan2(along[0]);
        self.taken.push(Block::turned(at, length + 4.0, width + 4.0, turn));
        // The ramp: a door's width at the wall, a little more at its foot.
        let (door, reach) = if small { (2.5, 3.5) } else { (length * 0.085, (width * 0.45).min(22.0)) };
        // Where the door is, the way out of it, and the way along its wall.
        let (sill, out, wall) = match side {
            DoorSide::Right => (place(0.5, 1.0), across, along),
            DoorSide::Left => (place(0.5, -1.0), scaled(across, -1.0), along),
            DoorSide::Ahead => (place(1.0, 0.0), along, across),
            DoorSide::Behind => (place(-1.0, 0.0), scaled(along, -1.0), across),
        };
        let foot = |l: f64, w: f64| toward(toward(sill, wall, l), out, w);
        let ramp = [foot(-door, 0.0), foot(door, 0.0), foot(door * 0.7, reach), foot(-door * 0.7, reach)];
        self.pen.edged(&ramp, colours.sheet, 1.25, colours.ink);
        if self.distance == Distance::Near && !small {
            let reach = 10.0_f64.min(length * 0.12);
            for (end, side) in [(-1.0, -0.62), (-1.0, 0.62), (1.0, -0.62), (1.0, 0.62)] {
                let wall = place(end, side);
                self.pen.line(&[wall, toward(wall, along, end * reach)], 1.5, colours.ink);
            }
        }
        let walls = [place(-1.0, -1.0), place(1.0, -1.0), place(1.0, 1.0), place(-1.0, 1.0)];
        self.pen.edged(&walls, colours.sheet, 1.5, colours.ink);
        if !small {
            for rib in [-0.5, 0.0, 0.5] {
                self.pen.line(&[place(rib, -1.0), place(rib, 0.0)], 1.0, colours.rule);
            }
            self.pen.line(&[place(-1.0, 0.0), place(1.0, 0.0)], 1.25, colours.ink);
        }
    }
}

/// Length and width of a coop as it is drawn: one that would be too small to be seen is a sign.
pub(crate) fn coop_size(true_size: Px) -> Px {
    if is_small(true_size) { [12.0, 7.0] } else { true_size }
}

fn is_small([length, width]: Px) -> bool {
    length < 12.0 || width < 7.0
}

/// Where in its cell a tuft stands, 0 to 1 each way: the same for the same cell.
fn jitter(cell: Point, side_m: f64) -> (f64, f64) {
    let (column, row) = ((cell.east_m / side_m).round() as i64, (cell.north_m / side_m).round() as i64);
    // The finaliser of SplitMix64 (Steele, Lea and Flood, 2014).
    let mut word =
        (column as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ (row as u64).wrapping_mul(0xc2b2_ae3d_27d4_eb4f);
    word = (word ^ (word >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    word = (word ^ (word >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    word ^= word >> 31;
    let share = |bits: u64| (bits & 0xffff) as f64 / 65536.0;
    (share(word), share(word >> 16))
}
