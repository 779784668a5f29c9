//! Why there are no candidates, and what should be known beside them.

use geometry::largest::{GroundNote, LargestFault};
use plan::Plan;

/// Why nothing can be searched. Each has a stable id.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum CandidateFault {
    /// No boundary is stated.
    #[error("ground.boundary is missing")]
    NoBoundary,
    /// The boundary crosses itself, or encloses nothing.
    #[error("ground.boundary crosses itself or encloses nothing")]
    BadBoundary {
        /// Where it crosses itself, if that is the matter.
        at: Option<plan::Point>,
    },
    /// A keep-out has no inside.
    #[error("keep-out {name} crosses itself or encloses nothing")]
    BadKeepOut {
        /// Its name or number.
        name: String,
    },
    /// A clearance is not a distance.
    #[error("a clearance is negative")]
    BadClearance,
    /// The store has no nets.
    #[error("store.nets is empty")]
    NoNets,
    /// No net, or more than the store has.
    #[error("{asked} nets were asked for of {owned}")]
    NetsAsked {
        /// How many were asked for.
        asked: u32,
        /// How many there are.
        owned: u32,
    },
    /// A net's length or panels are none.
    #[error("net {id} has no usable length or panels")]
    BadNet {
        /// The net's id.
        id: String,
    },
    /// So few panels enclose nothing.
    #[error("{panels} panels enclose nothing")]
    TooFewPanels {
        /// How many there are.
        panels: u32,
    },
    /// A free outline cannot have so many sides.
    #[error("{asked} sides were asked for, 3 to {most} are searched")]
    Sides {
        /// How many were asked for.
        asked: u32,
        /// How many there may be.
        most: u32,
    },
    /// The coop was asked for and none is stated.
    #[error("no coop is stated")]
    NoCoop,
    /// The coop's sizes are none.
    #[error("the coop's sizes are not positive")]
    BadCoop,
    /// The coop stands outside the paddock or too near its boundary.
    #[error("the coop does not stand inside the boundary with its clearance")]
    CoopOutside,
    /// The coop stands in a keep-out or its clearance.
    #[error("the coop stands in keep-out {name} or its clearance")]
    CoopInKeepOut {
        /// The keep-out's name or number.
        name: String,
    },
    /// No shape fits anywhere.
    #[error("no shape fits")]
    NothingFits {
        /// Whether the coop had to be inside.
        coop: bool,
    },
}

impl CandidateFault {
    /// A name that stays.
    pub fn id(&self) -> &'static str {
        match self {
            Self::NoBoundary => "shapes-no-boundary",
            Self::BadBoundary { .. } => "shapes-bad-boundary",
            Self::BadKeepOut { .. } => "shapes-bad-keep-out",
            Self::BadClearance => "shapes-bad-clearance",
            Self::NoNets => "shapes-no-nets",
            Self::NetsAsked { .. } => "shapes-nets-asked",
            Self::BadNet { .. } => "shapes-bad-net",
            Self::TooFewPanels { .. } => "shapes-too-few-panels",
            Self::Sides { .. } => "shapes-sides",
            Self::NoCoop => "shapes-no-coop",
            Self::BadCoop => "shapes-bad-coop",
            Self::CoopOutside => "shapes-coop-outside",
            Self::CoopInKeepOut { .. } => "shapes-coop-in-keep-out",
            Self::NothingFits { .. } => "shapes-nothing-fits",
        }
    }

    /// The place in the plan where it is to be mended, if there is one.
    pub fn key(&self) -> Option<&'static str> {
        match self {
            Self::NoBoundary | Self::BadBoundary { .. } => Some("ground.boundary"),
            Self::BadKeepOut { .. } | Self::BadClearance => Some("ground.keep_outs"),
            Self::NoNets | Self::NetsAsked { .. } | Self::BadNet { .. } => Some("store.nets"),
            Self::NoCoop | Self::BadCoop | Self::CoopOutside | Self::CoopInKeepOut { .. } => Some("coop"),
            Self::TooFewPanels { .. } | Self::Sides { .. } | Self::NothingFits { .. } => None,
        }
    }
}

/// What should be known beside the candidates.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CandidateNote {
    /// A keep-out shares no ground with the paddock.
    KeepOutOutside {
        /// Its name or number.
        name: String,
    },
    /// Two keep-outs share ground.
    KeepOutsOverlap {
        /// One's name or number.
        first: String,
        /// The other's.
        second: String,
    },
    /// The keep-outs cut the paddock apart.
    PaddockInParts {
        /// How many parts there are.
        count: usize,
    },
    /// Walls were asked for, and none that holds birds is stated.
    NoWall,
    /// The ground is not level, and shapes are drawn in until they close along it.
    Slope,
}

/// A keep-out's name, or its number from 1.
fn name(plan: &Plan, index: usize) -> String {
    match plan.ground.keep_outs.get(index) {
        Some(keep_out) if !keep_out.name.is_empty() => keep_out.name.clone(),
        _ => (index + 1).to_string(),
    }
}

pub(super) fn of(plan: &Plan, fault: LargestFault) -> CandidateFault {
    match fault {
        LargestFault::Boundary { fault: Some(geometry::OutlineFault::CrossesItself { at, .. }) } => {
            CandidateFault::BadBoundary { at: Some(crate::place(at)) }
        }
        LargestFault::Boundary { .. } => CandidateFault::BadBoundary { at: None },
        LargestFault::KeepOut { index, .. } => CandidateFault::BadKeepOut { name: name(plan, index) },
        LargestFault::Number { .. } => CandidateFault::BadClearance,
        LargestFault::HoldOutside => CandidateFault::CoopOutside,
        LargestFault::HoldInKeepOut { index } => CandidateFault::CoopInKeepOut { name: name(plan, index) },
    }
}

pub(super) fn notes(plan: &Plan, found: &[GroundNote]) -> Vec<CandidateNote> {
    let note = |note: &GroundNote| match *note {
        GroundNote::KeepOutOutside { index } => CandidateNote::KeepOutOutside { name: name(plan, index) },
        GroundNote::KeepOutsOverlap { first, second } => {
            CandidateNote::KeepOutsOverlap { first: name(plan, first), second: name(plan, second) }
        }
        GroundNote::PaddockInParts { count } => CandidateNote::PaddockInParts { count },
    };
    found.iter().map(note).collect()
}
