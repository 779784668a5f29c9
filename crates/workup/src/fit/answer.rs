//! What a fit answers: an outline of whole panels, or why there is none and the nearest that there is.

use geometry::fit::Unlaid;
use plan::Shape;

use crate::draw_in::DrawIn;

/// An outline of whole panels.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitted {
    /// Its corners, in the sketch's order.
    pub outline: Vec<plan::Point>,
    /// Panels from each corner to the next.
    pub side_panels: Vec<u32>,
    /// Length of each side, metres; along the ground where its heights are known.
    pub side_m: Vec<f64>,
    /// Root of the mean squared move of the corners, metres.
    pub moved_rms_m: f64,
    /// A proven lower bound of it, metres: equal where nothing nearer can exist. On a slope nothing is proved, and it is 0.
    pub bound_rms_m: f64,
    /// Length of the line, metres; along the ground where its heights are known.
    pub line_m: f64,
    /// Panels doubled back at the chain's end.
    pub double_back: u32,
    /// Their length, metres.
    pub spare_m: f64,
    /// Kinds of the nets in chain order.
    pub nets: Vec<String>,
    /// Where the chain starts along the outline, metres.
    pub start_m: f64,
    /// Whether the chain runs against the outline.
    pub reversed: bool,
    /// Whether four corners were asked for on an odd number of equal panels, of which no rectangle can be made.
    pub no_rectangle: bool,
    /// Where less than [`crate::SPARE_SHARE`] of the line is spare: the corner to draw in.
    pub draw_in: Option<DrawIn>,
    /// How it lies on ground that is not level.
    pub slope: Option<FittedSlope>,
}

/// A fit on ground that is not level.
#[derive(Clone, Debug, PartialEq)]
pub struct FittedSlope {
    /// Length of each side on the map, metres.
    pub level_m: Vec<f64>,
    /// Why the sides are not whole panels along the ground, where they are not.
    pub unlaid: Option<Unlaid>,
    /// Netting that the line then takes beyond its nets, metres.
    pub short_m: f64,
}

/// Why a run cannot be fitted, and the nearest that can be had.
#[derive(Clone, Debug, PartialEq)]
pub struct FitRefusal {
    /// Why.
    pub reason: FitReason,
    /// The nearest outline that exists, where one was found.
    pub nearest: Option<Box<Fitted>>,
    /// What was given up for it.
    pub given_up: Option<GivenUp>,
}

impl FitRefusal {
    /// Whether the plan can be read and built, and only no outline exists.
    pub fn is_impossible(&self) -> bool {
        matches!(self.reason, FitReason::TooFewPanels { .. } | FitReason::NeverCloses { .. } | FitReason::NoRoom { .. })
    }
}

impl From<FitReason> for FitRefusal {
    fn from(reason: FitReason) -> Self {
        Self { reason, nearest: None, given_up: None }
    }
}

/// What stands in the way.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum FitReason {
    /// There is no such run.
    #[error("there is no run of that id")]
    NoSuchRun,
    /// The run is an open line.
    #[error("the run is an open line")]
    Open,
    /// An outline cannot be built.
    #[error("an outline cannot be built")]
    Unbuilt {
        /// Whose.
        shape: Shape,
    },
    /// The run has no net.
    #[error("the run has no net")]
    NoNets,
    /// A net's length or panels make no net.
    #[error("the net {net} has no length or no panels to fit with")]
    BadNet {
        /// The net's id.
        net: String,
    },
    /// More corners than are fitted.
    #[error("{corners} corners are too many: at most {most}")]
    TooManyCorners {
        /// Corners of the sketch.
        corners: usize,
        /// The most.
        most: usize,
    },
    /// More panels than are fitted.
    #[error("{panels} panels are too many: at most {most}")]
    TooManyPanels {
        /// Panels of the nets.
        panels: usize,
        /// The most.
        most: usize,
    },
    /// Fewer panels than corners.
    #[error("{panels} panels make no {corners} sides")]
    TooFewPanels {
        /// Panels on the line.
        panels: usize,
        /// Corners of the sketch.
        corners: usize,
    },
    /// One side is as long as the rest together, however the panels are shared out.
    #[error("one side is as long as the rest together")]
    NeverCloses {
        /// Panels on the line.
        panels: usize,
        /// Corners of the sketch.
        corners: usize,
    },
    /// No outline that was found lies on free ground without crossing itself.
    #[error("no such outline was found inside the paddock and off the keep-outs")]
    NoRoom {
        /// Panels on the line.
        panels: usize,
        /// Whether every choice of panels was tried.
        all_tried: bool,
    },
}

impl FitReason {
    /// A name that stays the same in every version.
    pub fn id(&self) -> &'static str {
        match self {
            FitReason::NoSuchRun => "fit/no-such-run",
            FitReason::Open => "fit/open",
            FitReason::Unbuilt { .. } => "fit/unbuilt",
            FitReason::NoNets => "fit/no-nets",
            FitReason::BadNet { .. } => "fit/bad-net",
            FitReason::TooManyCorners { .. } => "fit/too-many-corners",
            FitReason::TooManyPanels { .. } => "fit/too-many-panels",
            FitReason::TooFewPanels { .. } => "fit/too-few-panels",
            FitReason::NeverCloses { .. } => "fit/never-closes",
            FitReason::NoRoom { .. } => "fit/no-room",
        }
    }
}

/// What the nearest outline does without.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GivenUp {
    /// So many panels are doubled back in all, in place of those that were asked for.
    DoubleBack {
        /// Asked for.
        asked: u32,
        /// Doubled back.
        panels: u32,
    },
    /// The sketch lost its flattest corners down to so many.
    Corners {
        /// Corners left.
        corners: usize,
    },
}
