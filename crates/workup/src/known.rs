//! What was found by searching, kept so that an edit of something else does not search again.
//!
//! An answer is kept beside its whole question, and counts only where the next question is the same. With
//! [`Depth::Quick`](crate::Depth) what is not known is left waiting; with `Full` it is searched for and kept.
//!
//! Chains in the hand ([`Known::hold`]) are the one thing here that changes what follows from a plan, until they
//! are let go.

use std::collections::BTreeMap;

use geometry::Placement;

use crate::gates::GateWork;
use crate::held::Held;
use crate::kept::Kept;

/// Answers to searches, by run.
#[derive(Clone, Debug, Default)]
pub struct Known {
    pub(crate) placements: BTreeMap<String, (crate::lay::Question, Placement)>,
    pub(crate) gates: BTreeMap<String, (crate::gates::Question, Vec<GateWork>)>,
    /// The surfaces of heights, triangulated.
    pub(crate) surfaces: Kept,
    /// The chains in the hand.
    pub(crate) held: Held,
}

impl Known {
    /// What is known of the ground alone, for a plan of other runs: cheap to copy.
    #[must_use]
    pub fn of_ground(&self) -> Self {
        Self { surfaces: self.surfaces.clone(), ..Self::default() }
    }

    /// From now on something is in the hand: chains on lines that it leads keep their start, direction and order.
    pub fn hold(&mut self, plan: &plan::Plan, worked: &crate::Workup) {
        let heights = self.surfaces.heights(plan, &mut Vec::new());
        self.held = Held::of(plan, worked, heights);
    }

    /// It was let go.
    pub fn let_go(&mut self) {
        self.held = Held::default();
    }

    /// What else is known, with the chains in the hand as they are.
    pub fn learn(&mut self, known: Self) {
        *self = Self { held: std::mem::take(&mut self.held), ..known };
    }

    /// Forgets runs that are no longer there.
    pub(crate) fn keep_only(&mut self, plan: &plan::Plan) {
        self.placements.retain(|id, _| plan.run(id).is_some());
        self.gates.retain(|id, _| plan.run(id).is_some());
    }
}
