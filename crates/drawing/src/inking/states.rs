//! What is picked, under the pointer, or in hand.
//!
//! Picked: a ring or box of 2 px in pick. Under the pointer: an outline of 1.5 px in ink, 3 px off. An outline in
//! hand shows a square on each corner and a ring amid each side.

use geometry::Outline;
use geometry::ways::without_stretch;
use plan::Point;

use super::Inker;
use super::blocks::Block;
use super::trace::{self, Px, lerp};
use crate::palette::Colour;
use crate::shape::{Form, Role, Shape, Thing};
use crate::view::Distance;

/// The outline that a thing is part of.
pub(crate) fn outline_of(thing: Thing) -> Option<Thing> {
    match thing {
        Thing::RunCorner { run, .. } | Thing::RunSide { run, .. } | Thing::Run { run } => Some(Thing::Run { run }),
        Thing::BoundaryCorner { .. } | Thing::BoundarySide { .. } | Thing::Boundary => Some(Thing::Boundary),
        Thing::KeepOutCorner { keep_out, .. } | Thing::KeepOutSide { keep_out, .. } | Thing::KeepOut { keep_out } => {
            Some(Thing::KeepOut { keep_out })
        }
        Thing::WallCorner { wall, .. } | Thing::Wall { wall } => Some(Thing::Wall { wall }),
        Thing::ShadeCorner { shade, .. } | Thing::ShadeSide { shade, .. } | Thing::Shade { shade } => {
            Some(Thing::Shade { shade })
        }
        Thing::DampCorner { damp, .. } | Thing::DampSide { damp, .. } | Thing::Damp { damp } => {
            Some(Thing::Damp { damp })
        }
        Thing::HazardCorner { hazard, .. } | Thing::Hazard { hazard } => Some(Thing::Hazard { hazard }),
        Thing::BranchCorner { run, branch, .. }
        | Thing::BranchSide { run, branch, .. }
        | Thing::Branch { run, branch } => Some(Thing::Branch { run, branch }),
        _ => None,
    }
}

/// The path of a gap in the netting.
fn gap(shape: &Shape) -> Option<&[Point]> {
    match (shape.role, &shape.form) {
        (Role::Gap, Form::Path { points, .. }) => Some(points),
        _ => None,
    }
}

/// Places nearer than this to a side lie on it, metres.
const ON_SIDE_M: f64 = 1e-3;

/// What of a side lies in none of the gaps.
fn netted(side: &[Point], gaps: &[&[Point]]) -> Vec<Vec<Point>> {
    let point = |at: &Point| geometry::Point::new(at.east_m, at.north_m);
    let whole = Outline::open(&side.iter().map(point).collect::<Vec<_>>());
    if whole.length_m() < ON_SIDE_M {
        return vec![side.to_vec()];
    }
    let without = |piece: Outline, gap: &[Point]| {
        let [one, other] = [&gap[0], &gap[1]].map(|end| piece.nearest_along(point(end)));
        if one.1.max(other.1) > ON_SIDE_M {
            return vec![piece];
        }
        without_stretch(&piece, one.0.min(other.0), (one.0 - other.0).abs())
    };
    let bare = gaps.iter().flat_map(|gap| gap.windows(2));
    let pieces =
        bare.fold(vec![whole], |pieces, gap| pieces.into_iter().flat_map(|piece| without(piece, gap)).collect());
    pieces.iter().map(|piece| piece.points().map(|at| Point::new(at.east_m, at.north_m)).collect()).collect()
}

impl Inker<'_> {
    /// Options that share ground with a run that is shown: dashed outlines with an open square at each corner.
    pub(super) fn ghosts(&mut self) {
        if !self.ghosts.contains(&true) {
            return;
        }
        let drawing = self.drawing;
        let colour = self.palette.ghost;
        let ghosts = drawing.shapes().filter(|shape| self.is_ghost(shape)).collect::<Vec<_>>();
        for shape in &ghosts {
            match (shape.role, &shape.form) {
                (Role::Side, Form::Path { points, .. }) => {
                    let line = self.pxs(points);
                    // A side that stands already is seen as the net that it is.
                    if !self.lies_on_net(&line) {
                        self.seen_line(points, false, 1.75, colour, Some([7.0, 4.0]));
                        self.take_net(&line, false);
                    }
                }
                (Role::Handle, Form::Mark { at, .. }) => {
                    let at = self.px(*at);
                    if self.sees(at) {
                        let ring = super::pen::plate_ring(at, 6.0, 6.0, 0.0);
                        self.pen.edged(&ring, self.palette.sheet, 1.5, colour);
                    }
                }
                _ => {}
            }
        }
    }

    /// Whether the middle and both ends of a line lie on one straight piece of a net or another.
    fn lies_on_net(&self, line: &[Px]) -> bool {
        let (Some(&from), Some(&to)) = (line.first(), line.last()) else { return false };
        let on_net = |at: Px| {
            self.nets.iter().any(|&[start, end]| {
                let Some(along) = trace::direction(start, end) else { return false };
                let way = trace::sub(at, start);
                let along_px = way[0] * along[0] + way[1] * along[1];
                let off_px = (way[0] * along[1] - way[1] * along[0]).abs();
                off_px < 1.0 && (-1.0..trace::apart(start, end) + 1.0).contains(&along_px)
            })
        };
        [0.0, 0.5, 1.0].into_iter().all(|share| on_net(lerp(from, to, share)))
    }

    /// Marks what is picked, what is under the pointer, and the handles of the outline in hand.
    pub(super) fn states(&mut self) {
        // An end of a stretch shows all of it.
        let whole = |thing: Thing| thing.zone().unwrap_or(thing);
        let (picked, hovered) = (self.view.picked.map(whole), self.view.hovered.map(whole));
        if let Some(thing) = hovered.filter(|_| hovered != picked) {
            self.outlined(thing, 1.5, self.palette.ink);
        }
        let in_hand = picked.and_then(outline_of).filter(|_| self.view.handles);
        if let Some(outline) = in_hand {
            self.handles(outline, self.view.picked);
        }
        if let Some(thing) = picked.filter(|&thing| in_hand != Some(thing)) {
            self.outlined(thing, 2.0, self.palette.pick);
        }
        for &thing in self.drawing.chosen.iter().filter(|&&thing| self.view.picked != Some(thing)) {
            self.outlined(whole(thing), 2.0, self.palette.pick);
        }
    }

    /// The shape whose form tells where a thing is.
    fn body(&self, thing: Thing) -> Option<&'_ Shape> {
        let ground = |shape: &&&Shape| shape.thing == Some(thing) && shape.role == Role::RunGround;
        if let Some(ground) = self.marked.iter().find(ground) {
            return Some(ground);
        }
        let fits = |shape: &&Shape| {
            shape.thing == Some(thing)
                && !matches!(shape.form, Form::Label { .. })
                && !matches!(shape.role, Role::Tag { .. } | Role::Corner { .. } | Role::Lead | Role::Gap)
        };
        self.drawing.shapes().find(fits)
    }

    fn outlined(&mut self, thing: Thing, width: f64, colour: Colour) {
        if let Thing::Label { .. } = thing {
            return self.label_state(thing, width, colour);
        }
        let Some(shape) = self.body(thing) else { return };
        let (role, form) = (shape.role, shape.form.clone());
        let net = self.net_style().half();
        match (role, form) {
            (Role::Coop { length_m, width_m, .. }, Form::Mark { at, toward_rad }) => {
                let along = trace::heading(toward_rad);
                let grown = |metres: f64, least: f64| self.px_of(metres).max(least) + 12.0;
                let ring = super::net::staple(self.px(at), along, grown(width_m, 7.0), grown(length_m, 12.0));
                self.pen.ring(&ring, width, colour);
            }
            (role, Form::Mark { at, toward_rad }) => {
                let at = match role {
                    // An earth's sign hangs below its place, a kite lies beyond its stake.
                    Role::EarthStake => trace::add(self.px(at), [0.0, 6.0 * self.sign_scale()]),
                    Role::Brace { guy_m, .. } => self.kite_middle(self.px(at), trace::heading(toward_rad), guy_m),
                    _ => self.px(at),
                };
                let radius = match role {
                    Role::Handle if matches!(thing, Thing::RunCorner { .. }) => 11.0,
                    Role::Energizer | Role::Drop => 15.0,
                    Role::EarthStake | Role::Fault { .. } | Role::TapePoint { .. } => 14.0,
                    Role::Hazard { .. } => 16.0,
                    _ => 9.0,
                };
                if self.sees(at) {
                    self.pen.disc(at, radius, None, Some((width, colour)));
                    self.circles.push(Block::new(at, 2.0 * radius + width, 2.0 * radius + width));
                }
            }
            (role, Form::Path { points, closed, .. }) => {
                if matches!(role, Role::Zone { .. }) {
                    return self.zone_state(&points, width + 0.75, colour);
                }
                let off = match role {
                    Role::Net if self.distance == Distance::Far => net + 4.0,
                    Role::Net => 13.0,
                    Role::Hazard { .. } | Role::Wall { .. } => 11.0,
                    Role::Side if matches!(thing, Thing::RunSide { .. } | Thing::BranchSide { .. }) => {
                        net + 3.0 + width / 2.0
                    }
                    _ => 5.0,
                };
                self.beside(&points, closed, off, width, colour);
            }
            (role, Form::Area { rings }) => {
                if let Some(ring) = rings.first() {
                    let off = match role {
                        Role::RunGround if self.distance == Distance::Far => net + 4.0,
                        // Beyond the posts.
                        Role::RunGround => 13.0,
                        _ => 5.0,
                    };
                    let out = if crate::map::track::signed_area_m2(ring) >= 0.0 { off } else { -off };
                    let grown = trace::aside(&self.pxs(ring), true, out);
                    self.seen_ring(&grown, width, colour);
                }
            }
            (_, Form::Label { .. }) => {}
        }
    }

    /// A box round an open path; one line outside a closed one.
    fn beside(&mut self, places: &[Point], closed: bool, off: f64, width: f64, colour: Colour) {
        let line = trace::distinct(&self.pxs(places), closed);
        if closed {
            let grown = trace::aside(&line, true, off);
            self.seen_ring(&grown, width, colour);
            return;
        }
        let (Some(&[first, second]), Some(&[before, last])) = (line.first_chunk::<2>(), line.last_chunk::<2>()) else {
            return;
        };
        let (Some(start), Some(end)) = (trace::direction(second, first), trace::direction(before, last)) else {
            return;
        };
        // The box closes a little beyond the path's ends.
        let mut longer = line.clone();
        longer[0] = trace::toward(first, start, off / 2.0);
        let foot = longer.len() - 1;
        longer[foot] = trace::toward(last, end, off / 2.0);
        let mut ring = trace::aside(&longer, false, off);
        ring.extend(trace::aside(&longer, false, -off).into_iter().rev());
        self.seen_ring(&ring, width, colour);
    }

    fn seen_ring(&mut self, ring: &[Px], width: f64, colour: Colour) {
        self.take_ring(ring);
        for piece in self.seen(ring, true) {
            if piece.closed {
                self.pen.ring(&piece.points(), width, colour);
            } else {
                self.pen.line(&piece.points(), width, colour);
            }
        }
    }

    /// The outline in pick, a square on each corner, a ring amid each side.
    fn handles(&mut self, outline: Thing, picked: Option<Thing>) {
        let colours = self.palette;
        let of_outline = |shape: &&Shape| shape.thing.and_then(outline_of) == Some(outline);
        let shapes: Vec<&Shape> = self.drawing.shapes().filter(of_outline).collect();
        // Where no netting stands the dashes of the gap show through.
        let gaps: Vec<&[Point]> = shapes.iter().filter_map(|shape| gap(shape)).collect();
        for shape in &shapes {
            if let (Role::Side, Form::Path { points, .. }) = (shape.role, &shape.form) {
                for piece in netted(points, &gaps) {
                    self.seen_line(&piece, false, 2.0, colours.pick, None);
                }
            }
        }
        for shape in &shapes {
            match (shape.role, &shape.form) {
                (Role::Side, Form::Path { points, .. }) if self.distance != Distance::Far => {
                    let &[from, to] = &self.pxs(points)[..] else { continue };
                    let middle = lerp(from, to, 0.5);
                    if trace::apart(from, to) > 36.0 && self.sees(middle) {
                        self.pen.disc(middle, 3.0, Some(colours.sheet), Some((1.5, colours.pick)));
                    }
                }
                (Role::Handle, Form::Mark { at, .. }) => {
                    let at = self.px(*at);
                    if self.sees(at) {
                        let fill = if shape.thing == picked { colours.pick } else { colours.sheet };
                        let ring = super::pen::plate_ring(at, 8.0, 8.0, 0.0);
                        self.pen.edged(&ring, fill, 2.0, colours.pick);
                    }
                }
                _ => {}
            }
        }
    }
}
