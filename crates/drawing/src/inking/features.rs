//! Symbols of walls, hedges and permanent fences, of drop points and doors, and the ground of the keeper's words.

use plan::{Point, WallKind};

use super::Inker;
use super::blocks::Block;
use super::pen::{Type, text_block};
use super::trace::{self, Px, add, right, toward};
use crate::ink::{Anchor, Weight};
use crate::palette::Colour;
use crate::shape::{Form, Thing};
use crate::view::{Distance, View};

/// Half the width of a hedge, metres.
pub(super) const HEDGE_M: f64 = 1.25;
/// Lines through a hedge that words do not cross lie no farther apart, pixels, and are no more than so many a side: a word is
/// higher than that.
const LEAVES_PX: f64 = 9.0;
const MOST_STRIPS: f64 = 60.0;
/// Half the width of a wall, pixels, and from block to block.
const WALL_PX: f64 = 3.0;
const BLOCK_PX: f64 = 24.0;
/// From post to post of a permanent fence, pixels.
const POST_PX: f64 = 18.0;

/// How the keeper's words are written.
pub(super) fn label_type(large: bool, ink: Colour) -> Type {
    if large { Type::new(16.0, Weight::SemiBold, ink) } else { Type::new(11.0, Weight::Medium, ink) }
}

/// The ground that the keeper's words take.
pub(crate) fn label_block(view: &View, at: Point, texts: &[String], large: bool) -> Block {
    let kind = label_type(large, view.theme.palette().ink);
    let text = texts.first().map_or("", String::as_str);
    text_block(view.px(at), text, kind, Anchor::Middle, 0.0).grown(3.0)
}

/// Whether a spot lies on the keeper's words.
pub(crate) fn label_holds(view: &View, at: Point, texts: &[String], large: bool, spot: Px) -> bool {
    // Of ten thousand words most lie above or below: how wide those are is not asked.
    let tall = f64::from(label_type(large, view.theme.palette().ink).size);
    (view.px(at)[1] - spot[1]).abs() <= tall && label_block(view, at, texts, large).reach().holds(spot)
}

impl Inker<'_> {
    pub(super) fn wall(&mut self, kind: WallKind, holds: bool, places: &[Point]) {
        let points = trace::distinct(&self.pxs(places), false);
        if points.len() < 2 {
            return;
        }
        self.take_line(&points, false);
        match kind {
            _ if self.distance == Distance::Far && kind != WallKind::Fence => self.double_line(&points, 2.5),
            WallKind::Wall => self.blocks(&points),
            WallKind::Hedge => self.hedge(&points),
            WallKind::Fence => self.fence(places, &points),
        }
        if holds && self.distance != Distance::Far {
            self.ends(&points);
        }
    }

    fn double_line(&mut self, points: &[Px], half: f64) {
        for side in [-half, half] {
            let edge = trace::aside(points, false, side);
            for piece in self.seen(&edge, false) {
                self.pen.line(&piece.points(), 1.5, self.palette.ink2);
            }
        }
    }

    /// Two lines, with a joint between blocks now and then.
    fn blocks(&mut self, points: &[Px]) {
        for piece in self.seen(points, false) {
            self.pen.line(&piece.points(), 2.0 * WALL_PX, self.palette.sheet);
        }
        self.double_line(points, WALL_PX);
        for (at, way) in self.along(points, BLOCK_PX / 2.0, BLOCK_PX) {
            let across = right(way);
            self.pen.line(&[toward(at, across, -WALL_PX), toward(at, across, WALL_PX)], 1.5, self.palette.ink2);
        }
    }

    /// Rounds under one outline: those of the edge first, then those of the leaves.
    fn hedge(&mut self, points: &[Px]) {
        let radius = self.px_of(HEDGE_M);
        // Words keep off all of its leaves, or have a plate: not every word stands out from them.
        let strips = (radius / LEAVES_PX).ceil().clamp(1.0, MOST_STRIPS);
        for strip in 1..=strips as u8 {
            for side in [-1.0, 1.0] {
                let beside = trace::aside(points, false, side * radius * f64::from(strip) / strips);
                self.take_line(&beside, false);
            }
        }
        let rounds: Vec<Px> = self.along(points, 0.0, (radius * 1.5).max(5.0)).into_iter().map(|(at, _)| at).collect();
        let ends = [points[0], points[points.len() - 1]].into_iter().filter(|&at| self.sees(at)).collect::<Vec<_>>();
        let all = || rounds.iter().chain(&ends);
        let (edge, leaves) = (self.palette.hedge_edge, self.palette.hedge);
        for &at in all() {
            self.pen.disc(at, radius + 1.5, Some(edge), None);
        }
        for &at in all() {
            self.pen.disc(at, radius, Some(leaves), None);
        }
    }

    /// A line with a square post now and then.
    fn fence(&mut self, places: &[Point], points: &[Px]) {
        let colour = self.palette.ink2;
        self.seen_line(places, false, 1.5, colour, None);
        if self.distance == Distance::Far {
            return;
        }
        for (at, _) in self.along(points, 0.0, POST_PX) {
            self.pen.polygon(&super::pen::plate_ring(at, 4.5, 4.5, 0.0), colour);
        }
    }

    /// A bar across each end of what holds birds: a run may end there.
    fn ends(&mut self, points: &[Px]) {
        let [.., before, last] = points else { return };
        for (end, next) in [(points[0], points[1]), (*last, *before)] {
            let (Some(way), true) = (trace::direction(end, next), self.sees(end)) else { continue };
            let across = right(way);
            self.pen.line(&[toward(end, across, -5.0), toward(end, across, 5.0)], 2.0, self.palette.ink);
        }
    }

    /// Where rolls are put down: three rolls on end.
    pub(super) fn drop_point(&mut self, at: Px) {
        let scale = self.sign_scale();
        let (radius, ink) = (4.5 * scale, self.palette.ink);
        for off in [[-5.0, 3.0], [5.0, 3.0], [0.0, -5.0]] {
            let middle = add(at, off.map(|px| px * scale));
            self.pen.disc(middle, radius, Some(self.palette.sheet), Some((1.5, ink)));
            self.pen.disc(middle, 1.25, Some(ink), None);
        }
        self.taken.push(Block::new(at, 24.0 * scale, 22.0 * scale));
    }

    /// The handle at a door, once its coop or the door is picked.
    pub(super) fn door(&mut self, at: Px) {
        let in_hand = matches!(self.view.picked, Some(Thing::Coop { coop: 0 } | Thing::CoopDoor));
        if in_hand && self.distance != Distance::Far {
            self.pen.disc(at, 4.0, Some(self.palette.sheet), Some((2.0, self.palette.pick)));
        }
    }

    /// A box round the keeper's words.
    pub(super) fn label_state(&mut self, thing: Thing, width: f64, colour: Colour) {
        let words = self.marked.iter().find_map(|shape| match (&shape.form, shape.role) {
            (
                Form::Label { at, texts, .. },
                crate::shape::Role::Words { about: crate::shape::About::Label { large } },
            ) if shape.thing == Some(thing) => Some(label_block(self.view, *at, texts, large)),
            _ => None,
        });
        if let Some(block) = words {
            let ring = block.grown(2.0).corners();
            // Its own words keep their place in it: the ring is not taken.
            if ring.iter().any(|&at| self.sees(at)) {
                self.pen.ring(&ring, width, colour);
            }
        }
    }
}
