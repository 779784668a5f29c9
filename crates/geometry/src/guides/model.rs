//! What is asked of guides and what they answer.

use std::fmt::Debug;

use crate::point::Point;

/// A straight side that stands on the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// Its first end.
    pub from: Point,
    /// Its other end.
    pub to: Point,
}

impl Edge {
    /// Its length, metres.
    pub fn length_m(&self) -> f64 {
        self.from.distance_m(self.to)
    }

    /// The place on it that is nearest to another.
    pub fn nearest(&self, at: Point) -> Point {
        let way = self.to - self.from;
        let square = way.dot(way);
        let share = if square > 0.0 { ((at - self.from).dot(way) / square).clamp(0.0, 1.0) } else { 0.0 };
        self.from.towards(self.to, share)
    }
}

/// A side that a guide comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Line {
    /// One of the outline's own that do not move, by its place in [`Asked::own`].
    Own(usize),
    /// One of another thing, by its place in [`super::Guides::new`].
    Other(usize),
}

/// A corner beside the one in hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Beside {
    /// The one before.
    Before,
    /// The one after.
    After,
}

/// One guide.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Guide {
    /// On a side.
    On(Line),
    /// The side from the corner beside stands square on another.
    Square(Line, Beside),
    /// The corner in hand is square.
    SquareCorner,
    /// The side from the corner beside is so many panels long.
    Panels(u32, Beside),
    /// The side from the corner beside is parallel to another.
    Parallel(Line, Beside),
    /// On the line of a side, beyond its ends.
    InLine(Line),
    /// The side from the corner beside is as long as another.
    AsLong(Line, Beside),
}

impl Guide {
    /// The side that it comes from.
    pub(super) fn line(self) -> Option<Line> {
        match self {
            Self::On(line)
            | Self::InLine(line)
            | Self::Square(line, _)
            | Self::Parallel(line, _)
            | Self::AsLong(line, _) => Some(line),
            Self::SquareCorner | Self::Panels(..) => None,
        }
    }

    pub(super) fn rank(self) -> u8 {
        match self {
            Self::On(_) => 2,
            Self::Square(..) | Self::SquareCorner => 3,
            Self::Panels(..) => 4,
            Self::Parallel(..) => 5,
            Self::InLine(_) => 6,
            Self::AsLong(..) => 7,
        }
    }
}

/// Why a corner stands where it was caught.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Why {
    /// On a place, by its place in [`super::Guides::new`].
    Place(usize),
    /// Where two guides cross.
    Both(Guide, Guide),
    /// On one guide.
    One(Guide),
    /// On the grid.
    Grid,
}

impl Why {
    pub(super) fn rank(self) -> u8 {
        match self {
            Self::Place(_) => 0,
            Self::Both(..) => 1,
            Self::One(guide) => guide.rank(),
            Self::Grid => 8,
        }
    }

    /// The guides that it lies on.
    pub fn guides(self) -> impl Iterator<Item = Guide> {
        let (one, other) = match self {
            Self::Both(one, other) => (Some(one), Some(other)),
            Self::One(guide) => (Some(guide), None),
            Self::Place(_) | Self::Grid => (None, None),
        };
        one.into_iter().chain(other)
    }
}

/// A corner that was caught.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Guided {
    /// Where.
    pub at: Point,
    /// Why.
    pub why: Why,
}

/// Netting counted in whole panels along the sides that lead from the corners beside. Panels lie along the ground, sides
/// are measured on the map.
pub trait Netting: Debug {
    /// How many whole panels come nearest to the side from a corner beside to a place.
    fn panels(&self, beside: Beside, from: Point, to: Point) -> Option<u32>;

    /// How far so many panels reach on the map from a corner beside towards a place, metres.
    fn reach_m(&self, beside: Beside, from: Point, towards: Point, panels: u32) -> Option<f64>;
}

/// Panels of one length, metres, on level ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LevelPanels(pub f64);

impl Netting for LevelPanels {
    fn panels(&self, _: Beside, from: Point, to: Point) -> Option<u32> {
        (self.0 > 0.0).then(|| (from.distance_m(to) / self.0).round().clamp(1.0, 1e6) as u32)
    }

    fn reach_m(&self, _: Beside, _: Point, _: Point, panels: u32) -> Option<f64> {
        Some(f64::from(panels) * self.0)
    }
}

/// What is asked about a corner in hand.
#[derive(Clone, Debug, Default)]
pub struct Asked<'a> {
    /// Where the hand is.
    pub at: Point,
    /// The corner before and the one after, as far as there are any.
    pub beside: [Option<Point>; 2],
    /// The own sides that do not move.
    pub own: Vec<Edge>,
    /// Which of them end at the corner before, and begin at the one after.
    pub joined: [Option<usize>; 2],
    /// How near a place catches, metres; a guide from two thirds of that.
    pub reach_m: f64,
    /// How far a side of something else may be from the hand to be a guide, metres.
    pub look_m: f64,
    /// The netting, where whole panels count.
    pub netting: Option<&'a dyn Netting>,
    /// Step of the grid, metres.
    pub grid_m: Option<f64>,
    /// What holds it already.
    pub held: Option<Why>,
}
