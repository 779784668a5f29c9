//! The symbol of a run that is only thought of: ground half clear, outline dashed, a letter, a bracket at what stays; and of
//! a gate that stands open.

use plan::Point;

use super::Inker;
use super::blocks::Block;
use super::pen::{Type, plate_ring};
use super::trace::{self, Px, right, toward};
use crate::ghost::{Ghost, GhostMark, OpenGate};
use crate::ink::{Anchor, Weight};
use crate::map::track::middle;
use crate::shape::{Form, Role};
use crate::view::Distance;

/// Width of its outline, pixels, and dash and gap.
const WIDTH_PX: f64 = 1.75;
const DASH: [f32; 2] = [7.0, 4.0];
/// The bracket stands so far inside the next run, its arms are so long, pixels.
const BRACKET_OFF_PX: f64 = 16.0;
const ARM_PX: f64 = 6.0;
/// Side of the letter's plate.
const PLATE_PX: f64 = 18.0;
/// Side of the open square at a named ghost's corner, and how far over the uppermost its name stands, pixels.
const SQUARE_PX: f64 = 7.0;
const NAME_OVER_PX: f64 = 20.0;
/// As far to either side of a name's middle as its plate and a tag beside it reach.
const NAME_REACH_PX: f64 = 60.0;
/// Half a bar at either end of what a gate opens, the ring where a post stood, and how far inside its width is told, pixels.
const BAR_PX: f64 = 8.0;
const RING_PX: f64 = 3.5;
const WIDTH_OFF_PX: f64 = 30.0;
/// Places nearer than this are one, metres.
const SAME_M: f64 = 0.01;

impl Inker<'_> {
    pub(super) fn thought(&mut self, ghost: &Ghost) {
        if let GhostMark::Open(open) = &ghost.mark {
            self.open_gate(&ghost.outline, open);
            return;
        }
        let colours = self.palette;
        let outline = self.pxs(&ghost.outline);
        if ghost.closed {
            self.pen.polygon(&trace::clip_ring(&outline, &self.window), colours.ghost_fill);
        }
        let sides = ghost.outline.len().saturating_sub(usize::from(!ghost.closed));
        let side = |index: usize| [ghost.outline[index], ghost.outline[(index + 1) % ghost.outline.len()]];
        for [from, to] in (0..sides).map(side) {
            // What stays is drawn as the net that stands there.
            for stretch in without([from, to], ghost.stays) {
                self.seen_line(&stretch, false, WIDTH_PX, colours.ghost, Some(DASH));
                self.take_line(&self.pxs(&stretch), false);
            }
        }
        let inside = middle(&ghost.outline).map(|(at, _)| self.px(at));
        if let (Some(stays), Some(inside)) = (ghost.stays, inside) {
            self.bracket(stays.map(|at| self.px(at)), inside);
        }
        match &ghost.mark {
            GhostMark::Letter(letter) => {
                // From afar an outline has no room for its letter.
                if let Some(at) = inside.filter(|_| self.distance != Distance::Far) {
                    self.ghost_plate(at, letter);
                }
            }
            GhostMark::Places => self.ghost_squares(&outline),
            // It has a symbol of its own.
            GhostMark::Open(_) => {}
            GhostMark::Name(name) => {
                self.ghost_squares(&outline);
                // Over the uppermost corner, or under the lowest where a tag hangs there.
                let top = outline.iter().min_by(|one, other| one[1].total_cmp(&other[1]));
                let bottom = outline.iter().max_by(|one, other| one[1].total_cmp(&other[1]));
                if let (Some(&[x, top]), Some(&[low_x, bottom])) = (top, bottom) {
                    let over = [x, top - NAME_OVER_PX];
                    let under = [low_x, bottom + NAME_OVER_PX];
                    self.ghost_plate(if self.tag_at(over) { under } else { over }, name);
                }
            }
        }
    }

    /// A gate that stands open: the net taken off what opens, its width between two bars, the panels laid back along the
    /// net that stays, rings where the posts stood that are pulled.
    fn open_gate(&mut self, gap: &[Point], open: &OpenGate) {
        let colours = self.palette;
        let off = match self.distance {
            Distance::Near => 15.0,
            Distance::Middle => 11.0,
            Distance::Far => 7.0,
        };
        let line = self.pxs(gap);
        let bare = 2.0 * self.net_style().half() + 4.0;
        for piece in self.seen(&line, false) {
            self.pen.line(&piece.points(), bare, colours.sheet);
        }
        for piece in self.seen(&line, false) {
            self.pen.line(&piece.points(), WIDTH_PX, colours.ghost);
        }
        for ends in
            [line.first().zip(line.get(1)), line.last().zip(line.len().checked_sub(2).and_then(|at| line.get(at)))]
        {
            let Some((&end, &next)) = ends else { continue };
            let Some(across) = trace::direction(end, next).map(right) else { continue };
            self.pen.line(&[toward(end, across, BAR_PX), toward(end, across, -BAR_PX)], 2.0, colours.ghost);
        }
        for lies in &open.laid_back {
            let beside = trace::aside(&self.pxs(lies), false, off);
            for piece in self.seen(&beside, false) {
                self.pen.line(&piece.points(), 3.0, colours.ghost);
            }
        }
        for &at in &open.pulled {
            let at = self.px(at);
            self.pen.disc(at, RING_PX, Some(colours.sheet), Some((1.5, colours.ghost)));
        }
        if let (Some(&first), Some(&last)) = (line.first(), line.last()) {
            let middle = [f64::midpoint(first[0], last[0]), f64::midpoint(first[1], last[1])];
            self.ghost_plate(toward(middle, trace::heading(open.inward_rad), WIDTH_OFF_PX), &open.clear);
        }
    }

    /// Whether a tag for a finding will hang near a spot.
    fn tag_at(&self, spot: Px) -> bool {
        self.marked.iter().any(|shape| match (&shape.form, shape.role) {
            (Form::Mark { at, .. }, Role::Tag { .. }) => {
                let [right, down] = trace::sub(self.px(*at), spot);
                right.abs() < NAME_REACH_PX && (-PLATE_PX..2.0 * PLATE_PX).contains(&down)
            }
            _ => false,
        })
    }

    /// Open squares at a ghost's corners.
    fn ghost_squares(&mut self, corners: &[Px]) {
        for &at in corners {
            let ring = plate_ring(at, SQUARE_PX, SQUARE_PX, 0.0);
            self.pen.edged(&ring, self.palette.sheet, 1.5, self.palette.ghost);
        }
    }

    /// A plate with what a ghost is called, where it is in sight.
    fn ghost_plate(&mut self, at: Px, name: &str) {
        if !self.sees(at) {
            return;
        }
        let colours = self.palette;
        let kind = Type::new(12.0, Weight::SemiBold, colours.ghost);
        let wide = PLATE_PX.max(kind.width(name) + 10.0);
        self.pen.edged(&plate_ring(at, wide, PLATE_PX, 5.0), colours.sheet, 1.5, colours.ghost);
        self.pen.text(at, name, kind, Anchor::Middle);
        self.taken.push(Block::new(at, wide + 3.0, PLATE_PX + 3.0));
    }

    /// A bracket along the stretch that stays, on the side of the next run, its arms toward the net.
    fn bracket(&mut self, [from, to]: [Px; 2], inside: Px) {
        let Some(along) = trace::direction(from, to) else { return };
        let aside = right(along);
        let way = trace::sub(inside, from);
        let inward = if way[0] * aside[0] + way[1] * aside[1] >= 0.0 { aside } else { trace::scaled(aside, -1.0) };
        let length = trace::apart(from, to);
        if length < 4.0 * ARM_PX {
            return;
        }
        let at = |along_px: f64, off: f64| toward(toward(from, along, along_px), inward, off);
        let (start, end) = (ARM_PX, length - ARM_PX);
        let line = [
            at(start, BRACKET_OFF_PX - ARM_PX),
            at(start, BRACKET_OFF_PX),
            at(end, BRACKET_OFF_PX),
            at(end, BRACKET_OFF_PX - ARM_PX),
        ];
        for piece in self.seen(&line, false) {
            self.pen.line(&piece.points(), 2.0, self.palette.ghost);
        }
        self.take_line(&line, false);
    }
}

/// A side without the stretch that stays, where that lies on it.
fn without([from, to]: [Point; 2], stays: Option<[Point; 2]>) -> Vec<[Point; 2]> {
    let (east, north) = (to.east_m - from.east_m, to.north_m - from.north_m);
    let length_m = east.hypot(north);
    let along_and_off = |at: Point| {
        let (right_m, up_m) = (at.east_m - from.east_m, at.north_m - from.north_m);
        ((right_m * east + up_m * north) / length_m, (up_m * east - right_m * north).abs() / length_m)
    };
    let Some([one, other]) = stays.filter(|_| length_m > SAME_M).map(|ends| ends.map(along_and_off)) else {
        return vec![[from, to]];
    };
    let (start_m, end_m) = (one.0.min(other.0).max(0.0), one.0.max(other.0).min(length_m));
    if one.1.max(other.1) > SAME_M || end_m - start_m < SAME_M {
        return vec![[from, to]];
    }
    let at = |along_m: f64| {
        let share = along_m / length_m;
        Point::new(from.east_m + east * share, from.north_m + north * share)
    };
    [[0.0, start_m], [end_m, length_m]]
        .into_iter()
        .filter(|[start_m, end_m]| end_m - start_m > SAME_M)
        .map(|ends| ends.map(at))
        .collect()
}
