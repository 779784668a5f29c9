//! What stands on the unfolded line: posts, joins, feed, tags, and the corners' plates beneath.

use care::Findings;

use super::Unroll;
use crate::ink::Weight;
use crate::inking::net::staple;
use crate::inking::pen::{Type, plate_ring};
use crate::inking::trace::Px;
use crate::map::run::{along_m, ends_m, is_ring, joins_m};
use crate::map::signs::{corner_vertices, feed};
use crate::map::tags::has_sign;
use crate::map::track::SAME_M;
use crate::shape::Thing;
use crate::told::Told;

/// Size of a corner's plate.
const PLATE_PX: f64 = 18.0;
/// Findings farther than this from the line stand on the map alone, metres.
const NEAR_LINE_M: f64 = 0.3;

impl Unroll<'_> {
    pub(super) fn posts(&mut self) {
        let Some((lay, _)) = &self.run.laid else { return };
        let covered_m = lay.covered_m();
        let axis = self.rows.axis;
        let ink = self.colours.ink;
        let joins = joins_m(lay, covered_m);
        let ends = ends_m(lay, covered_m);
        let panel_px = lay
            .posts
            .windows(2)
            .map(|pair| (pair[1].chain_m - pair[0].chain_m).abs())
            .filter(|&panel_m| panel_m > SAME_M)
            .fold(f64::INFINITY, f64::min)
            * (self.right - self.left)
            / self.track.line_m();
        let every = if panel_px >= 9.0 { 1 } else { 2 };
        let taken = |chain_m: f64| joins.iter().chain(&ends).any(|&place| (place - chain_m).abs() < SAME_M);
        for (index, post) in lay.posts.iter().enumerate() {
            let thing = Thing::Post { run: self.run.index, post: index };
            let wraps = is_ring(lay) && (post.chain_m - lay.line_m).abs() < SAME_M;
            let shown = self.rows.posts && panel_px >= 4.5 && post.post % every == 0;
            for x in self.spots(post.along_m) {
                self.place(thing, [x - 2.0, axis - 10.0, x + 2.0, axis + 5.0]);
                if shown && !wraps && !taken(post.chain_m) {
                    self.pen.line(&[[x, axis - 3.0], [x, axis - 10.0]], 1.75, ink);
                }
            }
        }
        for chain_m in joins {
            for x in self.spots(along_m(lay, chain_m)) {
                let ring = staple([x, axis], [0.0, -1.0], 6.0, 19.0);
                self.above.push([x - 4.0, axis - 10.5, x + 4.0, axis + 10.5]);
                self.pen.edged(&ring, self.colours.sheet, 1.5, ink);
            }
        }
        for chain_m in ends {
            for x in self.spots(along_m(lay, chain_m)) {
                self.pen.line(&[[x, axis + 4.0], [x, axis - 12.0]], 1.75, ink);
                self.pen.line(&[[x - 5.0, axis - 12.0], [x + 5.0, axis - 12.0]], 1.75, ink);
            }
        }
    }

    /// Where a place of the line is seen: once, or at both ends where a ring closes.
    pub(super) fn spots(&self, along_m: f64) -> Vec<f64> {
        let along_m = self.track.held(along_m);
        let closes = along_m < SAME_M || self.track.line_m() - along_m < SAME_M;
        if self.track.closed() && closes { vec![self.left, self.right] } else { vec![self.x(along_m)] }
    }

    /// Rings round posts and corners that are picked or under the pointer.
    pub(super) fn rings(&mut self) {
        for thing in [self.view.hovered, self.view.picked].into_iter().flatten() {
            let along_m = match thing {
                Thing::Post { run, post } if run == self.run.index => {
                    self.run.laid.as_ref().and_then(|(lay, _)| lay.posts.get(post)).map(|post| post.along_m)
                }
                Thing::Brace { run, corner } if run == self.run.index => {
                    let lay = self.run.laid.as_ref().map(|(lay, _)| lay);
                    lay.and_then(|lay| lay.corners.get(corner)).map(|corner| corner.along_m)
                }
                Thing::RunCorner { run, vertex } if run == self.run.index => {
                    let is_vertex = |place: &usize| self.run.stated_vertex(*place) == vertex;
                    let place = (0..self.track.vertices().len()).find(is_vertex);
                    place.map(|place| self.track.vertices()[place].1)
                }
                _ => None,
            };
            if let Some(along_m) = along_m {
                let radius = if self.rows.posts { 11.0 } else { 8.5 };
                for x in self.spots(along_m) {
                    self.state(thing, [x, self.rows.axis], radius);
                }
            }
        }
    }

    pub(super) fn feed(&mut self) {
        let Some((at, _)) = feed(self.run, self.track) else { return };
        let thing = Thing::Feed { run: self.run.index };
        let spot = [self.x(self.track.nearest(at)), self.rows.axis];
        self.pen.disc(spot, 5.0, Some(self.colours.sheet), Some((1.5, self.colours.ink)));
        self.pen.disc(spot, 1.75, Some(self.colours.ink), None);
        self.place(thing, [spot[0] - 4.0, spot[1] - 5.0, spot[0] + 4.0, spot[1] + 5.0]);
        self.state(thing, spot, 9.0);
    }

    /// Findings that have a place on the line stand over it, small.
    pub(super) fn tags(&mut self, findings: &Findings) {
        const SCALE: f64 = 0.7;
        if !self.rows.posts {
            return;
        }
        let Some(list) = findings.runs.get(self.run.index) else { return };
        let mut order: Vec<usize> = (0..list.len()).filter(|&index| !has_sign(&list[index])).collect();
        order.sort_by_key(|&index| std::cmp::Reverse(list[index].severity));
        let mut stand: Vec<f64> = Vec::new();
        for index in order {
            let thing = Thing::Finding { run: Some(self.run.index), finding: index };
            for &at in &list[index].at {
                let along_m = self.track.nearest(at);
                let on_line = self.track.at(along_m);
                if (on_line.east_m - at.east_m).hypot(on_line.north_m - at.north_m) > NEAR_LINE_M {
                    continue;
                }
                let x = self.x(along_m);
                if stand.iter().any(|&other| (other - x).abs() < 13.0) {
                    continue;
                }
                stand.push(x);
                let point = [x, self.rows.axis - 10.0];
                self.pen.tag(self.colours, point, list[index].severity, SCALE);
                self.place(thing, [x - 5.0, point[1] - 14.0, x + 5.0, point[1]]);
                if self.view.picked == Some(thing) || self.view.hovered == Some(thing) {
                    self.state(thing, [x, point[1] - 7.5], 11.0);
                }
            }
        }
    }

    /// Plates of the corners with their distance from corner 1, and lengths of the sides between.
    pub(super) fn corners(&mut self) {
        let Some((lay, track)) = &self.run.laid else { return };
        let mut stops: Vec<(usize, f64)> =
            corner_vertices(lay, track).into_iter().map(|vertex| (vertex, track.vertices()[vertex].1)).collect();
        if stops.first().is_none_or(|&(vertex, _)| vertex != 0) {
            stops.insert(0, (0, 0.0));
        }
        if lay.closed {
            stops.push((0, track.line_m()));
        }
        let thing = |vertex: usize| Thing::RunCorner { run: self.run.index, vertex: self.run.stated_vertex(vertex) };
        let number = Type::new(12.0, Weight::SemiBold, self.colours.ink);
        let figure = Type::new(11.0, Weight::Regular, self.colours.ink2);
        // The ends first, then what is picked, then the rest in their order: each where there is room.
        let last = stops.len() - 1;
        let mut order: Vec<usize> = (0..stops.len()).collect();
        order.sort_by_key(|&index| {
            (index != 0 && index != last, self.view.picked != Some(thing(stops[index].0)), index)
        });
        let mut plates: Vec<(f64, f64)> = Vec::new();
        let mut figures: Vec<(f64, f64)> = Vec::new();
        let free = |taken: &mut Vec<(f64, f64)>, x: f64, half: f64| {
            let room = taken.iter().all(|&(from, to)| x + half < from || x - half > to);
            if room {
                taken.push((x - half, x + half));
            }
            room
        };
        let mut shown: Vec<(usize, f64)> = Vec::new();
        for index in order {
            let (vertex, along_m) = stops[index];
            let x = self.x(along_m);
            let text = (vertex + 1).to_string();
            let half = f64::midpoint(number.width(&text), 8.0).max(PLATE_PX / 2.0) + 2.0;
            if !free(&mut plates, x, half) {
                continue;
            }
            shown.push((vertex, x));
            if let Some(row) = self.rows.distances {
                let (text, _) = self.scene.words.length_parts(along_m);
                if free(&mut figures, x, figure.width(&text) / 2.0 + 4.0) {
                    self.figure(Told::Along, [x, row], &text, figure);
                }
            }
        }
        for (vertex, x) in shown {
            self.plate(thing(vertex), vertex + 1, x);
        }
        self.lengths(&plates);
    }

    /// A corner's plate, tied to its place on the net.
    fn plate(&mut self, thing: Thing, number: usize, x: f64) {
        let (axis, row) = (self.rows.axis, self.rows.plates);
        let middle = [x, row];
        self.pen.line(&[[x, axis + 9.5], [x, row - PLATE_PX / 2.0]], 1.0, self.colours.rule);
        let (picked, hovered) = (self.view.picked == Some(thing), self.view.hovered == Some(thing));
        self.pen.number_plate(self.colours, middle, &number.to_string(), PLATE_PX, picked);
        if hovered && !picked {
            self.pen.ring(&plate_ring(middle, PLATE_PX + 7.5, PLATE_PX + 7.5, 6.5), 1.5, self.colours.ink);
        }
        let half = PLATE_PX / 2.0;
        self.place(thing, [x - half, row - half, x + half, row + half]);
        self.place(thing, [x - 4.0, axis - 6.0, x + 4.0, row]);
    }

    /// Lengths of the sides, between the plates.
    fn lengths(&mut self, plates: &[(f64, f64)]) {
        if self.rows.distances.is_none() {
            return;
        }
        let kind = Type::new(12.0, Weight::Medium, self.colours.ink2);
        for side in 0..self.track.sides() {
            let ((_, from_m), (_, to_m)) = self.track.side(side);
            let text = self.scene.words.length(to_m - from_m);
            let (middle, half) = (self.x(f64::midpoint(from_m, to_m)), kind.width(&text) / 2.0 + 4.0);
            if plates.iter().all(|&(from, to)| middle + half < from || middle - half > to)
                && self.x(to_m) - self.x(from_m) > 2.0 * half
            {
                self.figure(Told::Side, [middle, self.rows.plates], &text, kind);
            }
        }
    }

    /// Sides: to pick, and boxed where they are picked or under the pointer.
    pub(super) fn sides(&mut self) {
        let axis = self.rows.axis;
        for side in 0..self.track.sides() {
            let ((_, from_m), (_, to_m)) = self.track.side(side);
            let thing = Thing::RunSide { run: self.run.index, side: self.run.stated_vertex(side) };
            let (from, to) = (self.x(from_m), self.x(to_m));
            self.place(thing, [from, axis - 6.0, to, axis + 6.0]);
            let (picked, hovered) = (self.view.picked == Some(thing), self.view.hovered == Some(thing));
            if picked || hovered {
                let (width, colour) = if picked { (2.0, self.colours.pick) } else { (1.5, self.colours.ink) };
                let middle = [f64::midpoint(from, to), axis];
                self.pen.ring(&plate_ring(middle, to - from + 8.0, 18.0, 0.0), width, colour);
            }
        }
    }

    pub(super) fn place(&mut self, thing: Thing, place: [f64; 4]) {
        self.places.push((thing, place.map(|px| px as f32)));
    }

    /// A ring round what is picked or under the pointer.
    pub(super) fn state(&mut self, thing: Thing, middle: Px, radius: f64) {
        if self.view.picked == Some(thing) {
            self.pen.disc(middle, radius, None, Some((2.0, self.colours.pick)));
        } else if self.view.hovered == Some(thing) {
            self.pen.disc(middle, radius, None, Some((1.5, self.colours.ink)));
        }
    }
}
