//! What follows from a plan, as values: lengths in metres, forces in newtons, volts in kilovolts.
//!
//! A part is `None` where it cannot be computed; the [`Trouble`] beside it says why. Nothing here is
//! ever saved.

mod closing;
mod corner;
mod lay;
mod mowing;
mod trouble;
mod volts;

use std::collections::BTreeMap;

use crate::bracing::{Bracing, SoilFound};
use crate::gates::GateWork;
use crate::growth::GrassDays;
use crate::setting_up::Work;
use crate::slope::Slope;

pub use closing::{Closing, ClosingSide, ShutBy};
pub use corner::{Bend, Corner, Stake, Verdict};
pub use lay::{Best, LaidBranch, LaidNet, Lay, Post};
pub use mowing::{StillToMow, Strip};
pub use trouble::{BranchTrouble, Must, OutlineTrouble, Part, SheetTrouble, Trouble};
pub use volts::{Sample, SampleOf, Sound, SoundWeakest, SourceFit, Volts, Weakest};

/// Everything that follows from a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Workup {
    /// Each run of the plan, in its order.
    pub runs: Vec<RunWorkup>,
    /// What concerns the plan as a whole.
    pub troubles: Vec<Trouble>,
    /// Area of the paddock, square metres; 0 where none is stated.
    pub paddock_m2: f64,
    /// Length of the paddock's boundary, metres; 0 where none can be built.
    pub paddock_round_m: f64,
    /// Nets of each kind that the standing runs use.
    pub standing: BTreeMap<String, u32>,
    /// The soil that the braces reckon with.
    pub soil: Option<SoilFound>,
}

impl Workup {
    /// The run of that id.
    pub fn run(&self, id: &str) -> Option<&RunWorkup> {
        self.runs.iter().find(|run| run.id == id)
    }
}

/// Everything that follows for one run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RunWorkup {
    /// The run's id.
    pub id: String,
    /// Length of its line in plan, metres, with or without nets.
    pub line_m: Option<f64>,
    /// Area that its outline encloses, square metres, whatever netting stands on it; 0 for an open line.
    pub area_m2: Option<f64>,
    /// What shuts it and what of it is open; `None` where its nets could not be laid.
    pub closing: Option<Closing>,
    /// Its line and nets.
    pub lay: Option<Lay>,
    /// Where hardly any netting is spare: the corner to draw in.
    pub draw_in: Option<crate::DrawIn>,
    /// Its corners in detail, and the wind on it.
    pub bracing: Option<Bracing>,
    /// The ground along its line; `None` where nothing is known of its heights.
    pub slope: Option<Slope>,
    /// The ground to mow.
    pub strip: Option<Strip>,
    /// What is still to mow of it where nets that stand have been mown for already; `None` where that is all of it.
    pub still_to_mow: Option<StillToMow>,
    /// The lines walked behind the mower.
    pub mow_walk: Option<geometry::Passes>,
    /// When the grass will touch.
    pub grass: Option<GrassDays>,
    /// The order in which it is set up.
    pub set_up: Option<Work>,
    /// The order in which it is taken down.
    pub taking_down: Option<Work>,
    /// Its gates, in the order stated; empty where the nets could not be laid.
    pub gates: Vec<GateWork>,
    /// The pulse.
    pub volts: Option<Volts>,
    /// The dampest place for its earth stakes; `None` where no damp ground is in reach.
    pub dampest: Option<crate::earth::Dampest>,
    /// What is wrong with it.
    pub troubles: Vec<Trouble>,
}

impl RunWorkup {
    /// Ground that is shut in, square metres; `None` of a run that is open.
    pub fn ground_m2(&self) -> Option<f64> {
        self.closing.as_ref()?.ground_m2
    }

    /// That ground for each of so many birds, square metres; `None` where there are none of either.
    pub fn each_bird_m2(&self, birds: u32) -> Option<f64> {
        crate::stocking::each_m2(self.ground_m2()?, birds)
    }

    /// Whether a pin's cost or the way to a gate is yet to be worked out.
    pub fn waits(&self) -> bool {
        let pins = self.lay.iter().flat_map(|lay| &lay.pins);
        self.gates.iter().any(crate::gates::GateWork::waits) || pins.into_iter().any(|pin| pin.waits)
    }
}
