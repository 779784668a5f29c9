//! Everything that follows from a plan: nets on the line, corners, strip and volts.
//!
//! [`workup`] is a pure function and never fails: what cannot be built is `None`, and a [`Trouble`] beside it
//! says why. The rooms that do the maths know nothing of plans; this one translates both ways:
//!
//! - [`values`] looks for statements that nothing can be built with;
//! - [`nets`] chooses nets from the store where a run names none;
//! - [`lay`] puts the nets on the line and judges the corners, through `geometry`; [`branches`] lays those that hang on it;
//! - [`taken_along`] takes what is on a run's line along where that goes;
//! - [`closing`] says what shuts a run, and what of it is open;
//! - [`slope`] lays the line on the ground where heights are known;
//! - [`draw_in`] names the corner to draw in where hardly any netting is spare;
//! - [`bracing`] weighs what is known of the soil, judges each brace, finds the cheapest mend, and the wind;
//! - [`mow`] works out the strip, through `geometry`; [`growth`] says when its grass touches;
//! - [`setting_up`] finds the order of setting up and taking down;
//! - [`pins`] are kept while the nets are laid; [`gates`] opens the run where it goes, with the way to the gateway;
//! - [`Known`] keeps what both had to search for;
//! - [`volts`] works out the pulse, through `electrical`;
//! - [`power`] works out on demand which energizer would hold, and what the pulse does;
//! - [`lead`] says where the energizer stands and what its lead resists;
//! - [`earth`] says where the earth stakes stand and how far off what, in which soil, and where they would earth best;
//! - [`faults`] finds the place of the netting that a fault acts on;
//! - [`stocking`] counts birds by a rule; [`compare`] puts runs side by side;
//! - [`Known`] hands what does not change from one workup to the next;
//! - [`unroll`] lays the nets along a run while it is being drawn;
//! - [`candidates`] finds the largest runs that the nets enclose, each worked out as above.
//!
//! Nothing computed here is ever saved, and no statement is invented: what the keeper did not say comes from
//! `plan`'s defaults.

mod along;
pub mod bracing;
mod branches;
pub mod candidates;
mod chain;
mod closing;
pub mod compare;
mod draw_in;
pub mod earth;
pub mod faults;
pub mod fit;
pub mod gates;
pub mod growth;
mod held;
mod kept;
mod known;
mod lay;
pub mod lead;
pub mod model;
mod mow;
mod nets;
mod outlines;
pub mod panels;
pub mod pins;
pub mod power;
pub mod setting_up;
pub mod shaping;
pub mod slope;
pub mod stocking;
pub mod tape;
pub mod unroll;
mod values;
mod volts;

use std::collections::BTreeMap;

use plan::{Plan, RunStatus};

pub use along::{ON_LINE_M, taken_along, taken_along_branch, taken_to_nearest};
pub use branches::{BRANCH_REACH_M, hang};
pub use closing::{ON_WALL_M, close};
pub use compare::Compared;
pub use draw_in::{DrawIn, SPARE_SHARE};
pub use fit::{FitReason, FitRefusal, Fitted, fit};
pub use known::Known;
pub use model::*;
pub use mow::still_to_mow;
pub use slope::{Evidence, Slope};

/// How much to work out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Depth {
    /// All but what an animal feels at every post, what each pin costs, the ways to gates and where the nets fall once a
    /// corner is cut: cheap enough for every frame of a drag.
    Quick,
    /// Everything.
    #[default]
    Full,
}

/// Works a plan out.
pub fn workup(plan: &Plan, depth: Depth) -> Workup {
    knowing(plan, depth, &mut Known::default())
}

/// Works a plan out with what is known of earlier searches, which changes how long it takes, and how much is left waiting
/// where it has to be quick.
pub fn knowing(plan: &Plan, depth: Depth, known: &mut Known) -> Workup {
    some(plan, &|_| true, depth, known)
}

/// Works some of a plan's runs out, quickly, as they are where no other run changes what follows from them: in the order
/// of their places.
pub fn some_runs(plan: &Plan, places: &[usize], known: &mut Known) -> Vec<RunWorkup> {
    let worked = some(plan, &|place| places.contains(&place), Depth::Quick, known);
    let runs = worked.runs.into_iter().enumerate();
    runs.filter(|(place, _)| places.contains(place)).map(|(_, run)| run).collect()
}

/// What is still to mow, once more, of the runs thought of that are at the places wanted.
pub fn mown_again(plan: &Plan, wanted: &dyn Fn(usize) -> bool, runs: &mut [RunWorkup]) {
    let ground = outlines::Ground::of(plan, &mut Vec::new());
    mow::after_standing(plan, &ground, wanted, runs);
}

/// Nets of each kind that the standing runs use.
pub fn standing(plan: &Plan, runs: &[RunWorkup]) -> BTreeMap<String, u32> {
    let mut standing = BTreeMap::new();
    for (run, worked) in plan.runs.iter().zip(runs) {
        if run.status == RunStatus::Standing
            && let Some(lay) = &worked.lay
        {
            for (kind, count) in &lay.nets_needed {
                *standing.entry(kind.clone()).or_insert(0) += count;
            }
        }
    }
    standing
}

/// Works out the runs at the places that are wanted; the others are left empty.
fn some(plan: &Plan, wanted: &dyn Fn(usize) -> bool, depth: Depth, known: &mut Known) -> Workup {
    let mut troubles = values::of_plan(plan);
    let ground = outlines::Ground::of(plan, &mut troubles);
    let (soil, of_soil) = bracing::soil(plan);
    troubles.extend(of_soil);
    let heights = known.surfaces.heights(plan, &mut troubles);
    let bad = values::Bad::of(&troubles);
    let mut runs: Vec<RunWorkup> = Vec::with_capacity(plan.runs.len());
    let mut lines = Vec::with_capacity(plan.runs.len());
    let mut chosen = nets::Chosen::new();
    for (place, run) in plan.runs.iter().enumerate() {
        let mut worked = RunWorkup { id: run.id.clone(), ..RunWorkup::default() };
        let mut line = None;
        if wanted(place) {
            worked.troubles = values::of_run(plan, run, place);
            let mut search = lay::Search { depth, known: &mut *known };
            line = lay::line(plan, run, &heights, &bad, &soil, &mut chosen, &mut search, &mut worked);
        }
        if let Some(line) = &line {
            mow::strip(plan, run, &line.level, &ground, &bad, &mut worked);
            mow::walk(plan, run, &line.level, &ground, &mut worked);
            let sloped = worked.slope.as_ref().and_then(|_| slope::Measure::of(run, &heights));
            worked.draw_in = worked.lay.as_ref().and_then(|lay| draw_in::of_lay(lay, sloped.as_ref()));
            let given = bracing::Given { soil: &soil, ground: &ground, heights: &heights, bad: &bad, depth };
            bracing::add(plan, run, line, given, &mut worked);
            setting_up::add(plan, run, &line.outline, line.placement.as_ref(), &bad, &mut worked);
        }
        runs.push(worked);
        lines.push(line);
    }
    mow::after_standing(plan, &ground, wanted, &mut runs);
    closing::close(plan, &mut runs);
    gates::all(plan, &lines, ground.boundary(), depth, known, &mut runs);
    if depth == Depth::Full {
        known.keep_only(plan);
    }
    volts::all(plan, &lines, &bad, depth, &mut runs);
    earth::dampest::all(plan, &ground, wanted, &mut runs);
    let (paddock_m2, paddock_round_m) = (ground.paddock_m2(), ground.paddock_round_m());
    let standing = standing(plan, &runs);
    Workup { runs, troubles, paddock_m2, paddock_round_m, standing, soil: Some(soil) }
}

fn point(point: plan::Point) -> geometry::Point {
    geometry::Point { east_m: point.east_m, north_m: point.north_m }
}

fn place(point: geometry::Point) -> plan::Point {
    plan::Point { east_m: point.east_m, north_m: point.north_m }
}
