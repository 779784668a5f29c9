//! Tags of findings: on their places, or as near to them as keeps them off each other and off the signs that stand there.

use care::Severity;
use plan::Point;

use super::faults::{FAULT_PX, fault_scale};
use super::filled::Filled;
use super::ground::coop_size;
use super::pen::Pen;
use super::signs::{Plate, plate_size};
use super::trace::{self, Px, add, scaled, toward};
use super::{Inker, blocks::Block, earths};
use crate::palette::Palette;
use crate::shape::{Form, Role, Shape};
use crate::view::{Distance, View};

/// The ring of a tag whose point is at a place: 14 x 20 at scale 1.
pub(crate) fn tag_ring(point: Px, scale: f64) -> [Px; 5] {
    [[-7.0, -20.0], [7.0, -20.0], [7.0, -6.0], [0.0, 0.0], [-7.0, -6.0]].map(|at| add(point, scaled(at, scale)))
}

/// How far beside its place a tag may stand where signs stand there, pixels.
const ASIDE_PX: [f64; 5] = [14.0, 22.0, 30.0, 42.0, 56.0];
/// A coop that is drawn wider than this shows beside a tag that stands on it, pixels.
const COOP_PX: f64 = 40.0;

/// Size of a tag at a distance.
pub(crate) fn tag_scale(distance: Distance) -> f64 {
    match distance {
        Distance::Near => 1.0,
        Distance::Middle => 0.9,
        Distance::Far => 0.7,
    }
}

/// What a tag takes whose point is at a place.
pub(crate) fn tag_body(point: Px, scale: f64) -> Block {
    Block::new(add(point, [0.0, -10.0 * scale]), 16.0 * scale, 22.0 * scale)
}

/// Where the points of those tags stand that are seen, in the order in which they find room: what is picked, then the
/// heaviest. They are drawn there, and picked there.
pub(crate) fn tags<'a>(
    marked: &[&'a Shape],
    view: &View,
    plates: &[Plate],
    signs: impl IntoIterator<Item = Block>,
) -> Vec<(&'a Shape, Px)> {
    let (distance, scale) = (view.distance(), tag_scale(view.distance()));
    let mut filled = Filled::new(view.size.map(f64::from));
    filled.extend(signs);
    let mut tags: Vec<&Shape> =
        marked.iter().copied().filter(|shape| matches!(shape.role, Role::Tag { .. })).rev().collect();
    tags.sort_by_key(|shape| shape.thing != view.picked);
    let stood = tags.into_iter().filter_map(|shape| {
        let (Role::Tag { severity, at_corner }, Form::Mark { at, .. }) = (shape.role, &shape.form) else { return None };
        let spot = view.px(*at);
        if !super::sees(view, spot) || (super::specks(view) && severity != Severity::Danger) {
            return None;
        }
        let point = tag_point(plates, distance, *at, spot, at_corner, &|body| filled.overlaps(body));
        filled.push(tag_body(point, scale));
        Some((shape, point))
    });
    stood.collect()
}

/// Where a tag's point stands: beside the corner's plate, else on its place, or as near to it as is free.
fn tag_point(
    plates: &[Plate],
    distance: Distance,
    place: Point,
    spot: Px,
    at_corner: bool,
    is_taken: &dyn Fn(&Block) -> bool,
) -> Px {
    let near = |plate: &&Plate| (plate.place.east_m - place.east_m).hypot(plate.place.north_m - place.north_m) < 0.06;
    let scale = tag_scale(distance);
    let is_free = |point: &Px| !is_taken(&tag_body(*point, scale));
    // Over the sign, then beside it on either side, then farther off.
    let steps = [[0.0, -1.0], [1.0, 0.4], [-1.0, 0.4], [1.0, -1.0], [-1.0, -1.0]];
    let off = |way: [f64; 2], by: f64| add(spot, scaled(way, by * scale));
    let beside = ASIDE_PX.into_iter().flat_map(|by| steps.map(|way| off(way, by)));
    if at_corner
        && distance != Distance::Far
        && let Some(plate) = plates.iter().find(near)
    {
        let half = plate_size(distance) / 2.0;
        // On the side away from the corner, clear of its brace, or on the other.
        let side = if plate.outward[0] < -0.2 { -1.0 } else { 1.0 };
        let at = |side: f64| add(plate.middle, [side * (half + 5.0 + 7.0 * scale), half + 1.0]);
        return [at(side), at(-side)].into_iter().chain(beside).find(is_free).unwrap_or(at(side));
    }
    std::iter::once(spot).chain(beside).find(is_free).unwrap_or(spot)
}

impl Pen {
    /// A tag for a finding: three strokes for a danger, two for a warning, one for a note.
    pub(crate) fn tag(&mut self, palette: &Palette, point: Px, severity: Severity, scale: f64) {
        let (fill, edge, stroke, strokes): (_, _, _, &[f64]) = match severity {
            Severity::Danger => (palette.danger_fill, palette.ink, palette.danger_stroke, &[-15.5, -12.0, -8.5]),
            Severity::Warning => (palette.warning_fill, palette.ink, palette.warning_stroke, &[-14.0, -10.0]),
            Severity::Note => (palette.sheet, palette.pick, palette.pick, &[-12.0]),
        };
        self.edged(&tag_ring(point, scale), fill, 1.5, edge);
        for &up in strokes {
            let line = [[-3.5, up], [3.5, up]].map(|at| add(point, scaled(at, scale)));
            self.line(&line, 1.75 * scale.max(0.8), stroke);
        }
    }
}

impl Inker<'_> {
    /// The tags of findings.
    pub(super) fn tags(&mut self) {
        let shown: Vec<&Shape> = self.marked.iter().copied().filter(|shape| !self.is_ghost(shape)).collect();
        let signs = self.signs.iter().chain(&self.numbers).copied();
        let tags = tags(&shown, self.view, &self.plates, signs);
        let scale = tag_scale(self.distance);
        // Where there was no room, what found it first lies on top.
        for (shape, point) in tags.into_iter().rev() {
            let Role::Tag { severity, .. } = shape.role else { continue };
            self.pen.tag(self.palette, point, severity, scale);
            let (picked, hovered) = (shape.thing == self.view.picked, shape.thing == self.view.hovered);
            if shape.thing.is_some() && (picked || hovered) {
                let (by, width) = if picked { (4.0, 2.0) } else { (3.75, 1.5) };
                let ring = trace::aside(&tag_ring(point, scale), true, -by);
                self.pen.ring(&ring, width, if picked { self.palette.pick } else { self.palette.ink });
                self.circles.push(tag_body(point, scale).grown(by));
            }
            self.taken.push(tag_body(point, scale));
            self.signs.push(tag_body(point, scale));
        }
    }
}

impl crate::shape::Drawing {
    /// What the signs of faults, of pins, of the power and of coops take up: tags and the boards of readings keep off it.
    pub(crate) fn taken_by_signs(&self, marked: &[&Shape], view: &View) -> Vec<Block> {
        let ghosts = self.ghosts(view.picked);
        let scale = tag_scale(view.distance());
        let block = |shape: &&Shape| {
            let Form::Mark { at, toward_rad } = shape.form else { return None };
            let block = match shape.role {
                Role::Fault { .. } => {
                    let side = 2.0 * FAULT_PX * fault_scale(view.distance()) / std::f64::consts::SQRT_2;
                    Block::turned(view.px(at), side, side, std::f64::consts::FRAC_PI_4)
                }
                Role::Energizer => Block::new(view.px(at), 18.0 * scale, 16.0 * scale),
                Role::Feed => Block::new(view.px(at), 10.0 * scale, 10.0 * scale),
                Role::EarthStake => Block::new(add(view.px(at), [0.0, 6.0 * scale]), 13.0 * scale, 12.0 * scale),
                Role::Pin { .. } => {
                    let head = toward(view.px(at), trace::heading(toward_rad), 14.0 * scale);
                    Block::new(head, 10.0 * scale, 10.0 * scale)
                }
                // A coop that is drawn large shows beside a tag.
                Role::Coop { length_m, width_m, .. } if width_m * view.px_per_m < COOP_PX => {
                    let size = [length_m * view.px_per_m, width_m * view.px_per_m];
                    let [long, wide] = coop_size(size);
                    Block::turned(view.px(at), long, wide, -toward_rad)
                }
                Role::EarthBest if self.shows_best(view, shape) => earths::best_block(view.px(at), view.distance()),
                _ => return None,
            };
            let ghost = shape.run.is_some_and(|run| ghosts.get(run) == Some(&true));
            (!ghost).then_some(block)
        };
        marked.iter().filter_map(block).collect()
    }
}
