//! What shuts a run, and what of it is open.

use plan::Point;

/// What shuts a run, and what of it is open.
#[derive(Clone, Debug, PartialEq)]
pub struct Closing {
    /// What shuts it.
    pub by: ShutBy,
    /// The gap, metres: the line without netting, and of an open line that nothing shuts the straight way between its ends;
    /// the way along them where other things shut it, and 0 where netting does.
    pub gap_m: f64,
    /// Ground that is shut in, square metres; `None` where the run is open, and where its ring crosses itself.
    pub ground_m2: Option<f64>,
    /// The ring of netting and what shuts it; empty where netting alone does, or nothing.
    pub(crate) ring: Vec<Point>,
}

/// What shuts a run.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ShutBy {
    /// Its own netting.
    Netting,
    /// What stands between its ends: walls, hedges and fences that are stated to hold birds, and nets that stand.
    Sides {
        /// Those, from the chain's end to its start.
        along: Vec<ClosingSide>,
    },
    /// Nothing.
    Nothing {
        /// What stands between its ends and may hold birds, of which nothing is said.
        may: Vec<ClosingSide>,
    },
}

impl ClosingSide {
    /// The wall's place in the plan.
    pub fn wall(self) -> Option<usize> {
        match self {
            Self::Wall(wall) => Some(wall),
            Self::Run(_) => None,
        }
    }

    /// The run's place in the plan.
    pub fn run(self) -> Option<usize> {
        match self {
            Self::Run(run) => Some(run),
            Self::Wall(_) => None,
        }
    }
}

/// Something that may serve as a side of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClosingSide {
    /// A wall, a hedge or a fence, by its place in the plan.
    Wall(usize),
    /// The netting of another run, by its place in the plan.
    Run(usize),
}
