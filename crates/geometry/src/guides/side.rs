//! A side that slides parallel to itself: what it lines up with.
//!
//! It has one freedom, how far it slides, so one guide pins it down. Of everything within reach the first in this order is
//! taken, the nearer of equals: a place that comes to lie on it; a side that it comes to lie along; a side that one of its
//! corners comes to lie on; whole panels of a neighbour; in line with a side; a neighbour as long as the side itself; a
//! length that is another's too; the grid.

use super::model::{Beside, Edge, Line, Netting};
use super::{GUIDE_SHARE, Guides, HELD_SHARE, LEAST_REACHES};
use crate::outline::SAME_PLACE_M;
use crate::point::{Point, Vector};
use crate::shaping::rails;

/// What lies no farther off a line than this lies along it, metres: a centimetre is what is paced.
const ALONG_M: f64 = 0.01;
/// A side that a corner meets under a smaller sine does not pin it down.
const LEAST_SINE: f64 = 0.17;
/// A side is on a line of the grid where its ends are no farther off each other across it, metres.
const LEVEL_M: f64 = 1e-6;

/// A side whose length may change while one slides.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Moving {
    /// The neighbour that leads to its first corner.
    Before,
    /// The side that slides.
    Itself,
    /// The neighbour that leads on from its last corner.
    After,
}

impl Moving {
    /// The neighbour at that end.
    pub fn beside(beside: Beside) -> Self {
        match beside {
            Beside::Before => Self::Before,
            Beside::After => Self::After,
        }
    }
}

/// Why a side lies where it was caught.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SideWhy {
    /// A place lies on it, by its place in [`Guides::new`].
    Place(usize),
    /// It lies along a side.
    Along(Line),
    /// That corner of it lies on a side.
    EndOn(Beside, Line),
    /// The neighbour at that end is so many panels long.
    Panels(u32, Beside),
    /// It lies in line with a side.
    InLine(Line),
    /// That side is as long as one that stays.
    AsLong(Moving, Line),
    /// That neighbour is as long as the side itself.
    AsItself(Beside),
    /// It lies on a line of the grid.
    Grid,
    /// That corner of it lies on a line of the grid.
    EndOnGrid(Beside),
}

impl SideWhy {
    fn rank(self) -> u8 {
        match self {
            Self::Place(_) => 0,
            Self::Along(_) => 1,
            Self::EndOn(..) => 2,
            Self::Panels(..) => 3,
            Self::InLine(_) => 4,
            Self::AsItself(_) => 5,
            Self::AsLong(..) => 6,
            Self::Grid | Self::EndOnGrid(_) => 7,
        }
    }
}

/// What is asked about a side that slides.
#[derive(Clone, Debug)]
pub struct SideAsked<'a> {
    /// The side where it was taken hold of.
    pub side: Edge,
    /// The corners from which its neighbours lead to it; an end of an open line has none.
    pub beyond: [Option<Point>; 2],
    /// How far the hand slides it, metres to the left as it is walked.
    pub by_m: f64,
    /// Where on the side it was taken hold of.
    pub hold: Point,
    /// The own sides that stay.
    pub own: Vec<Edge>,
    /// How near a guide catches, metres: from two thirds of that.
    pub reach_m: f64,
    /// How far from the hand something else may be to be a guide, metres.
    pub look_m: f64,
    /// The netting, where whole panels count.
    pub netting: Option<&'a dyn Netting>,
    /// Step of the grid, metres.
    pub grid_m: Option<f64>,
    /// What holds it already.
    pub held: Option<SideWhy>,
}

impl SideAsked<'_> {
    /// Its ends where it slides so far; where it is where it cannot.
    pub fn ends(&self, by_m: f64) -> [Point; 2] {
        let ends = [self.side.from, self.side.to];
        rails(ends, self.beyond).map_or(ends, |[one, other]| [ends[0] + one * by_m, ends[1] + other * by_m])
    }
}

/// A side that was caught.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slid {
    /// How far it slides, metres to the left as it is walked.
    pub by_m: f64,
    /// Why.
    pub why: SideWhy,
}

/// A length while the side slides: so long where it stands, and so much longer for each metre.
#[derive(Clone, Copy)]
struct Length {
    at_0_m: f64,
    per_m: f64,
}

impl Length {
    fn at(self, by_m: f64) -> f64 {
        self.at_0_m + by_m * self.per_m
    }

    /// How far the side slides for that length; `None` for one that stays.
    fn by_m(self, length_m: f64) -> Option<f64> {
        (self.per_m.abs() > f64::EPSILON).then(|| (length_m - self.at_0_m) / self.per_m)
    }
}

/// The side on its rails.
struct Sliding<'a> {
    asked: &'a SideAsked<'a>,
    along: Vector,
    normal: Vector,
    rails: [Vector; 2],
    lengths: [Option<Length>; 3],
    found: Option<(Slid, f64)>,
}

const ENDS: [Beside; 2] = [Beside::Before, Beside::After];

impl Guides {
    /// What catches a side that slides; `None` where nothing is within reach, or where it cannot slide.
    pub fn best_slide(&self, asked: &SideAsked<'_>) -> Option<Slid> {
        let sound = asked.by_m.is_finite() && asked.reach_m > 0.0 && asked.reach_m.is_finite();
        if !sound || asked.side.length_m() <= SAME_PLACE_M {
            return None;
        }
        let mut sliding = Sliding::new(asked)?;
        for (index, &place) in self.places.iter().enumerate() {
            sliding.place(index, place);
        }
        let own = asked.own.iter().enumerate().map(|(index, edge)| (Line::Own(index), edge));
        for (line, edge) in own.chain(self.edges.iter().enumerate().map(|(index, edge)| (Line::Other(index), edge))) {
            sliding.side(line, edge);
        }
        sliding.panels();
        sliding.lengths();
        sliding.grid();
        sliding.found.map(|(slid, _)| slid)
    }
}

impl<'a> Sliding<'a> {
    fn new(asked: &'a SideAsked<'a>) -> Option<Self> {
        let ends = [asked.side.from, asked.side.to];
        let along = (ends[1] - ends[0]).unit();
        let rails = rails(ends, asked.beyond)?;
        let neighbour = |end: usize| {
            let beyond = asked.beyond[end]?;
            let way = ends[end] - beyond;
            Some(Length { at_0_m: way.length(), per_m: rails[end].dot(way.unit()) })
        };
        let itself = Length { at_0_m: asked.side.length_m(), per_m: (rails[1] - rails[0]).dot(along) };
        let lengths = [neighbour(0), Some(itself), neighbour(1)];
        Some(Self { asked, along, normal: along.left(), rails, lengths, found: None })
    }

    fn length(&self, of: Moving) -> Option<Length> {
        self.lengths[of as usize]
    }

    fn end(&self, end: usize, by_m: f64) -> Point {
        [self.asked.side.from, self.asked.side.to][end] + self.rails[end] * by_m
    }

    fn offer(&mut self, by_m: f64, why: SideWhy) {
        let held = if self.asked.held == Some(why) { HELD_SHARE } else { 1.0 };
        let far_m = (by_m - self.asked.by_m).abs() * held;
        // Beyond where a side vanishes the outline would fold over.
        let stands = self.lengths.iter().flatten().all(|length| length.at(by_m) > SAME_PLACE_M);
        if far_m.is_nan() || far_m > self.asked.reach_m * GUIDE_SHARE || !stands {
            return;
        }
        let better = self.found.is_none_or(|(found, nearest_m)| {
            let (rank, other) = (why.rank(), found.why.rank());
            rank < other || (rank == other && far_m < nearest_m - 1e-9)
        });
        if better {
            self.found = Some((Slid { by_m, why }, far_m));
        }
    }

    /// How far the side slides to lie on a place, and whether the place then lies between its ends.
    fn over(&self, at: Point) -> (f64, bool) {
        let by_m = (at - self.asked.side.from).dot(self.normal);
        let (from, to) = (self.end(0, by_m), self.end(1, by_m));
        let on = (at - from).dot(self.along) >= -SAME_PLACE_M && (at - to).dot(self.along) <= SAME_PLACE_M;
        (by_m, on)
    }

    fn place(&mut self, index: usize, place: Point) {
        let (by_m, on) = self.over(place);
        let hand = self.asked.hold + self.normal * by_m;
        // Of what lies far along the side the hand does not think, but of its corners.
        let near = (place - hand).dot(self.along).abs() <= self.asked.look_m
            || (0..2).any(|end| place.distance_m(self.end(end, by_m)) <= self.asked.reach_m);
        if on && near {
            self.offer(by_m, SideWhy::Place(index));
        }
    }

    fn side(&mut self, line: Line, edge: &Edge) {
        let (one_m, from_on) = self.over(edge.from);
        let (other_m, to_on) = self.over(edge.to);
        let (asked, by_m) = (self.asked, f64::midpoint(one_m, other_m));
        let length_m = edge.length_m();
        if length_m >= LEAST_REACHES * asked.reach_m && (one_m - other_m).abs() <= 2.0 * ALONG_M {
            let hand = asked.hold + self.normal * by_m;
            // The slid side may also lie wholly within the other.
            let (low, high) = (edge.nearest(self.end(0, by_m)), edge.nearest(self.end(1, by_m)));
            if matches!(line, Line::Other(_)) && (from_on || to_on || low.distance_m(high) > SAME_PLACE_M) {
                self.offer(by_m, SideWhy::Along(line));
            } else if matches!(line, Line::Own(_)) || edge.nearest(hand).distance_m(hand) <= asked.look_m {
                self.offer(by_m, SideWhy::InLine(line));
            }
            return;
        }
        if matches!(line, Line::Own(_)) || length_m <= SAME_PLACE_M {
            return;
        }
        let way = (edge.to - edge.from) * (1.0 / length_m);
        for (end, beside) in ENDS.into_iter().enumerate() {
            let (corner, rail) = (self.end(end, 0.0), self.rails[end]);
            let sine = rail.unit().cross(way);
            if sine.abs() < LEAST_SINE {
                continue;
            }
            let by_m = (edge.from - corner).cross(way) / rail.cross(way);
            let along_m = (corner + rail * by_m - edge.from).dot(way);
            if (-SAME_PLACE_M..=length_m + SAME_PLACE_M).contains(&along_m) {
                self.offer(by_m, SideWhy::EndOn(beside, line));
            }
        }
    }

    fn panels(&mut self) {
        let Some(netting) = self.asked.netting else { return };
        for (end, beside) in ENDS.into_iter().enumerate() {
            let (Some(beyond), Some(length)) = (self.asked.beyond[end], self.length(Moving::beside(beside))) else {
                continue;
            };
            let corner = self.end(end, self.asked.by_m);
            let Some(panels) = netting.panels(beside, beyond, corner) else { continue };
            // Its direction is the rail's, so that how far the panels reach hangs on nothing else.
            let reach_m = netting.reach_m(beside, beyond, corner, panels);
            if let Some(by_m) = reach_m.and_then(|reach_m| length.by_m(reach_m)) {
                self.offer(by_m, SideWhy::Panels(panels, beside));
            }
        }
    }

    fn lengths(&mut self) {
        for (index, edge) in self.asked.own.iter().enumerate() {
            for moving in [Moving::Before, Moving::Itself, Moving::After] {
                if let Some(by_m) = self.length(moving).and_then(|length| length.by_m(edge.length_m())) {
                    self.offer(by_m, SideWhy::AsLong(moving, Line::Own(index)));
                }
            }
        }
        for beside in ENDS {
            let (Some(one), Some(itself)) = (self.length(Moving::beside(beside)), self.length(Moving::Itself)) else {
                continue;
            };
            let apart = Length { at_0_m: one.at_0_m - itself.at_0_m, per_m: one.per_m - itself.per_m };
            if let Some(by_m) = apart.by_m(0.0) {
                self.offer(by_m, SideWhy::AsItself(beside));
            }
        }
    }

    fn grid(&mut self) {
        let Some(step_m) = self.asked.grid_m.filter(|step_m| *step_m > 0.0) else { return };
        // How far it slides until a measure of it, so great now and so much greater for each metre, is on the grid.
        let hand_m = self.asked.by_m;
        let on = |at_0_m: f64, per_m: f64| {
            let there_m = ((at_0_m + per_m * hand_m) / step_m).round() * step_m;
            (per_m.abs() > f64::EPSILON).then(|| (there_m - at_0_m) / per_m)
        };
        let Edge { from, to } = self.asked.side;
        let level = |one_m: f64, other_m: f64| (one_m - other_m).abs() <= LEVEL_M;
        let whole = if level(from.north_m, to.north_m) {
            on(from.north_m, self.normal.north)
        } else if level(from.east_m, to.east_m) {
            on(from.east_m, self.normal.east)
        } else {
            None
        };
        if let Some(by_m) = whole {
            return self.offer(by_m, SideWhy::Grid);
        }
        for (end, beside) in ENDS.into_iter().enumerate() {
            let (corner, rail) = (self.end(end, 0.0), self.rails[end]);
            for by_m in [on(corner.east_m, rail.east), on(corner.north_m, rail.north)].into_iter().flatten() {
                self.offer(by_m, SideWhy::EndOnGrid(beside));
            }
        }
    }
}
