//! What a search depends on, so that what was found is let go once it is of another ground, store or run.

use plan::{Coop, Ground, Plan, Run, SpotHeight, Store};

/// What a search depends on.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Basis {
    ground: Ground,
    store: Store,
    coop: Option<Coop>,
    heights: Vec<SpotHeight>,
    walls: Vec<plan::Wall>,
    /// The run in hand as far as shapes are like it: not where it lies.
    like: Option<Run>,
}

/// A run without what a found shape does not take over from it.
fn likeness(run: &Run) -> Run {
    let Run { energizer, feed_at, energizer_at, earth_stakes, earth_ohm, leakage_s_per_m, join_ohm, .. } = run.clone();
    let (lead_ohm, lead_of, lead_m) = (run.lead_ohm, run.lead_of, run.lead_m);
    let (strip_width_m, strip_left_m, strip_right_m) = (run.strip_width_m, run.strip_left_m, run.strip_right_m);
    Run {
        energizer,
        feed_at,
        energizer_at,
        earth_stakes,
        earth_ohm,
        leakage_s_per_m,
        join_ohm,
        lead_ohm,
        lead_of,
        lead_m,
        strip_width_m,
        strip_left_m,
        strip_right_m,
        ..Run::default()
    }
}

impl Basis {
    pub(super) fn of(plan: &Plan, like: Option<&Run>) -> Self {
        Self {
            like: like.map(likeness),
            heights: plan.heights.clone(),
            ground: plan.ground.clone(),
            store: plan.store.clone(),
            coop: plan.coop.clone(),
            walls: plan.walls.clone(),
        }
    }

    /// Whether the plan is still like that; looked at after every change, so nothing is copied for it.
    pub(super) fn holds(&self, plan: &Plan, like: Option<&Run>) -> bool {
        self.like == like.map(likeness)
            && self.heights == plan.heights
            && self.ground == plan.ground
            && self.store == plan.store
            && self.coop == plan.coop
            && self.walls == plan.walls
    }
}
