//! What is asked of the search for the largest run, what it answers, and what it cannot work with. Metres.

use crate::{Outline, OutlineFault, Point};

/// A keep-out.
#[derive(Debug, Clone, PartialEq)]
pub struct KeepOff {
    /// Its outline, closed.
    pub outline: Outline,
    /// Straight distance that the line keeps from it, metres.
    pub clearance_m: f64,
    /// Whether it may lie inside, as far from the line.
    pub may_enclose: bool,
}

/// What the run has to hold: all these places, each this far from the line.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Hold {
    /// The corners of what is held.
    pub places: Vec<Point>,
    /// Straight distance from them to the line, metres.
    pub clearance_m: f64,
}

/// The panels of the nets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Panels {
    /// How many there are.
    pub count: u32,
    /// Whether they are alike, each the line's share; only then an outline can close on whole panels of any order.
    pub equal: bool,
}

/// A question to [`super::LargestSearch`].
#[derive(Debug, Clone, PartialEq)]
pub struct LargestRequest {
    /// The paddock.
    pub boundary: Outline,
    /// The keep-outs.
    pub keep_outs: Vec<KeepOff>,
    /// What the run has to hold, if anything.
    pub hold: Option<Hold>,
    /// Where the middle goes where any place would do; left out, the deepest place.
    pub towards: Option<Point>,
    /// Length of the nets, metres.
    pub net_m: f64,
    /// Their panels.
    pub panels: Panels,
    /// Straight walls of which one may stand in for a side; empty where none is asked for.
    pub walls: Vec<(Point, Point)>,
    /// Sides of the free outline, 3 to [`super::MOST_FREE_SIDES`].
    pub free_sides: u32,
}

/// A family of shapes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Family {
    /// Four equal sides, four right angles.
    Square,
    /// Four right angles, any proportion.
    Rectangle,
    /// Regular, six sides.
    Hexagon,
    /// Regular, eight sides.
    Octagon,
    /// Regular, every side one panel; against a wall, half of one.
    Round,
    /// Any outline of so many sides.
    Free,
}

impl Family {
    /// A name that stays the same in every version.
    pub fn id(self) -> &'static str {
        match self {
            Family::Square => "square",
            Family::Rectangle => "rectangle",
            Family::Hexagon => "hexagon",
            Family::Octagon => "octagon",
            Family::Round => "round",
            Family::Free => "free",
        }
    }
}

/// The largest outline of a family that was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Largest {
    /// Its family.
    pub family: Family,
    /// The wall that stands in for the side from the last corner to the first.
    pub wall: Option<usize>,
    /// Its corners, counter-clockwise.
    pub outline: Vec<Point>,
    /// Area enclosed, square metres.
    pub area_m2: f64,
    /// Length of its netted sides, metres.
    pub line_m: f64,
    /// No outline of the family, of these nets and on this ground, encloses more, square metres: proved.
    pub area_bound_m2: f64,
    /// The nearest that closes on whole panels; `None` where there is none at this place.
    pub whole_panels: Option<WholePanels>,
}

/// An outline whose netted sides are whole panels.
#[derive(Debug, Clone, PartialEq)]
pub struct WholePanels {
    /// Its corners, counter-clockwise; a wall's side from the last to the first.
    pub outline: Vec<Point>,
    /// Panels from each corner to the next.
    pub side_panels: Vec<u32>,
    /// Area enclosed, square metres.
    pub area_m2: f64,
}

/// What can be searched but should be known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum GroundNote {
    /// The keep-out shares no ground with the paddock.
    KeepOutOutside {
        /// Its number.
        index: usize,
    },
    /// Two keep-outs share ground.
    KeepOutsOverlap {
        /// The first's number.
        first: usize,
        /// The second's number.
        second: usize,
    },
    /// The keep-outs cut the paddock apart.
    PaddockInParts {
        /// How many parts there are.
        count: usize,
    },
}

/// Why nothing can be searched.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LargestFault {
    /// The boundary encloses no ground.
    #[error("the boundary encloses no ground: {fault:?}")]
    Boundary {
        /// What is wrong with it; `None` where it is open.
        fault: Option<OutlineFault>,
    },
    /// A keep-out has no inside.
    #[error("keep-out {index} has no inside: {fault:?}")]
    KeepOut {
        /// Its number.
        index: usize,
        /// What is wrong with it; `None` where it is open.
        fault: Option<OutlineFault>,
    },
    /// A number is not one to work with.
    #[error("{what} has to be a positive finite number")]
    Number {
        /// Which.
        what: &'static str,
    },
    /// What has to be held lies outside the paddock or nearer to its boundary than its clearance.
    #[error("what the run has to hold does not lie inside the paddock with its clearance")]
    HoldOutside,
    /// What has to be held lies in a keep-out or its clearance.
    #[error("what the run has to hold lies in keep-out {index} or its clearance")]
    HoldInKeepOut {
        /// The keep-out's number.
        index: usize,
    },
}

impl LargestFault {
    /// A name that stays.
    pub fn id(&self) -> &'static str {
        match self {
            LargestFault::Boundary { .. } => "largest-boundary",
            LargestFault::KeepOut { .. } => "largest-keep-out",
            LargestFault::Number { .. } => "largest-number",
            LargestFault::HoldOutside => "largest-hold-outside",
            LargestFault::HoldInKeepOut { .. } => "largest-hold-in-keep-out",
        }
    }
}
