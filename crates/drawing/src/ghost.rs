//! A run that is only thought of, shown over the ground of the map.
//!
//! It is no part of the plan, so it is no part of a [`crate::Drawing`]: whoever previews a run gives it along when the
//! drawing is inked, and its symbol stands in `inking::ghost`.

use plan::Point;

/// A next run to be shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Ghost {
    /// Its outline.
    pub outline: Vec<Point>,
    /// Whether it closes.
    pub closed: bool,
    /// The stretch of its outline that stays standing.
    pub stays: Option<[Point; 2]>,
    /// What it is called.
    pub mark: GhostMark,
}

/// What a run that is only thought of is called, and where that stands.
#[derive(Clone, Debug, PartialEq)]
pub enum GhostMark {
    /// A letter in its middle: one of several next runs.
    Letter(String),
    /// A name over its northernmost corner, every corner an open square: one of several shapes.
    Name(String),
    /// Nothing: a stretch of a line, every place an open square. It lies over the net, not under it.
    Places,
}

impl Ghost {
    /// A stretch that a run's line could take instead.
    pub fn stretch(places: Vec<Point>) -> Self {
        Self { outline: places, closed: false, stays: None, mark: GhostMark::Places }
    }

    /// A shape that the run could have.
    pub fn named(name: String, outline: Vec<Point>, closed: bool) -> Self {
        Self { outline, closed, stays: None, mark: GhostMark::Name(name) }
    }
}
