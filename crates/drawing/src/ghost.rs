//! A run that is only thought of, or a gate as it stands open, shown over the ground of the map.
//!
//! It is no part of the plan, so it is no part of a [`crate::Drawing`]: whoever previews a run gives it along when the
//! drawing is inked, and its symbol stands in `inking::ghost`.

use std::f64::consts::PI;

use plan::Point;
use workup::Lay;
use workup::gates::Opening;

use crate::map::gates::outside_right;
use crate::map::track::Track;

/// What is to be shown.
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
    /// How wide it is clear: a gate that stands open. It lies over the net, not under it.
    Open(OpenGate),
}

/// A gate as it stands when it is open; the ghost's outline is what opens.
#[derive(Clone, Debug, PartialEq)]
pub struct OpenGate {
    /// Where the posts stood that are pulled.
    pub pulled: Vec<Point>,
    /// Where the panels lie that are laid back, each along the net that stays; the outer side is to its right.
    pub laid_back: Vec<Vec<Point>>,
    /// Into the run, radians counter-clockwise from east: there the width is told.
    pub inward_rad: f64,
    /// The clear width, in words.
    pub clear: String,
}

impl Ghost {
    /// A stretch that a run's line could take instead.
    pub fn stretch(places: Vec<Point>) -> Self {
        Self { outline: places, closed: false, stays: None, mark: GhostMark::Places }
    }

    /// A gate of a run as it stands open; `clear` says how wide.
    pub fn open_gate(lay: &Lay, opening: &Opening, clear: String) -> Option<Self> {
        let track = Track::new(&lay.vertices, lay.closed, lay.line_m)?;
        let open = OpenGate {
            pulled: opening.pulled.iter().filter_map(|&post| lay.posts.get(post)).map(|post| post.at).collect(),
            laid_back: outside_right(&track, &opening.laid_back),
            inward_rad: track.outward(track.nearest(opening.at)) + PI,
            clear,
        };
        Some(Self { outline: opening.gap.clone(), closed: false, stays: None, mark: GhostMark::Open(open) })
    }

    /// A shape that the run could have.
    pub fn named(name: String, outline: Vec<Point>, closed: bool) -> Self {
        Self { outline, closed, stays: None, mark: GhostMark::Name(name) }
    }
}
