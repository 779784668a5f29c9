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
    /// Its letter.
    pub letter: String,
}
