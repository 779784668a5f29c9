//! Findings: what the tool noticed that the keeper should know, with severity, place, mend and source.
//!
//! A rule is a small function from plan and workup to findings; its limit and the source of that limit stand
//! in [`limits`] as data. Words come from `words`. Local codes and licensed practice come before any of it,
//! and nothing here ever says that a plan is safe or legal.

pub mod bracing;
pub mod closing_said;
mod damp;
pub mod earths;
mod ends;
pub mod fault_said;
mod faults;
pub mod finding;
pub mod gate_said;
mod gates;
mod ground;
mod hazards;
mod hidden;
mod leads;
mod limits;
pub mod names;
mod nets;
mod overlap;
mod power;
mod say;
mod season;
mod slope;
mod stands;
pub mod tape_said;
mod troubles;
mod volts;
pub mod volts_said;

use plan::keys::UnknownKey;
use plan::{Plan, Run};
use stands::Stand;
use words::{Words, texts};
use workup::{RunWorkup, Workup};

/// Distance between the earths of two systems, metres.
pub const BETWEEN_EARTHS_M: f64 = limits::BETWEEN_EARTHS.metres;
/// Distance from a metal stake to the net, metres.
pub const STAKE_TO_NET_M: f64 = limits::STAKE_TO_NET.metres;

pub use damp::{damper_said, stands_said};
pub use finding::{Finding, Findings, Severity, Subject};
pub use gate_said::{pin_name, place_on_line};
pub use limits::Limit;
pub use slope::{panel_said, slope_line};

/// Everything that a rule looks at.
#[derive(Clone, Copy)]
pub(crate) struct Look<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) workup: &'a Workup,
    pub(crate) words: Words,
    /// Where each run's nets stand.
    pub(crate) stands: &'a [Stand],
}

/// The findings of a plan.
pub fn findings(plan: &Plan, workup: &Workup, words: Words) -> Findings {
    Rounds::default().findings(plan, workup, words, None)
}

/// Goes round a plan again and again, and looks anew only at runs that changed.
#[derive(Clone, Debug, Default)]
pub struct Rounds {
    /// What was found of each run by itself.
    alone: Vec<Vec<Finding>>,
    /// Where each run's nets stand.
    stands: Vec<Stand>,
}

impl Rounds {
    /// The findings of a plan. Of the runs that are not `touched` nothing changed since the last round, neither what is
    /// stated nor what follows, nor the rest of the plan, nor the words; `None` where anything may have.
    pub fn findings(&mut self, plan: &Plan, workup: &Workup, words: Words, touched: Option<&[usize]>) -> Findings {
        let touched = touched.filter(|_| self.alone.len() == plan.runs.len());
        match touched.filter(|_| self.stands.len() == workup.runs.len()) {
            Some(touched) => {
                for &index in touched {
                    self.stands[index] = Stand::of(&workup.runs[index]);
                }
            }
            None => self.stands = workup.runs.iter().map(Stand::of).collect(),
        }
        let look = Look { plan, workup, words, stands: &self.stands };
        self.alone.resize(plan.runs.len(), Vec::new());
        let mut runs = Vec::with_capacity(plan.runs.len());
        for (index, (run, worked)) in plan.runs.iter().zip(&workup.runs).enumerate() {
            if touched.is_none_or(|touched| touched.contains(&index)) {
                self.alone[index] = alone(look, run, worked);
            }
            runs.push(among_others(look, index, self.alone[index].clone()));
        }
        let mut plan_wide = troubles::of_plan(look);
        plan_wide.extend(hazards::of_plan(look));
        plan_wide.extend(ground::of_plan(look));
        plan_wide.extend(nets::of_plan(look));
        plan_wide.extend(power::of_plan(look));
        plan_wide.extend(damp::of_plan(look));
        plan_wide.extend(bracing::of_plan(look));
        plan_wide.extend(slope::of_plan(look));
        plan_wide.extend(season::of_plan(look));
        plan_wide.extend(gates::of_plan(look));
        plan_wide.extend(hidden::of_plan(look));
        plan_wide.extend(always(words));
        plan_wide.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
        Findings { runs, plan: plan_wide }
    }
}

/// The findings of one run of a plan, by its place.
pub fn of_run(plan: &Plan, workup: &Workup, words: Words, index: usize) -> Vec<Finding> {
    let (Some(run), Some(worked)) = (plan.runs.get(index), workup.runs.get(index)) else { return Vec::new() };
    let stands: Vec<Stand> = workup.runs.iter().map(Stand::of).collect();
    let look = Look { plan, workup, words, stands: &stands };
    among_others(look, index, alone(look, run, worked))
}

/// What is found of a run by itself and, with it, beside the others; the heaviest first.
fn among_others(look: Look<'_>, index: usize, mut found: Vec<Finding>) -> Vec<Finding> {
    let (Some(run), Some(worked)) = (look.plan.runs.get(index), look.workup.runs.get(index)) else { return found };
    found.extend(hazards::between_runs(look, index, run));
    found.extend(earths::between_runs(look, index, run));
    found.extend(overlap::between_runs(look, index, run));
    found.extend(ends::of_run(look, index, run, worked));
    found.extend(nets::stakes(look, index, run, worked));
    found.extend(damp::of_run(look, run, worked));
    found.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
    found
}

/// What is found of a run whatever the other runs are.
fn alone(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    let mut found = troubles::of_run(look, run, worked);
    found.extend(hazards::of_run(look, run, worked));
    found.extend(earths::of_run(look, run, worked));
    found.extend(leads::of_run(look, run));
    found.extend(ground::of_run(look, run, worked));
    found.extend(nets::of_run(look, run, worked));
    found.extend(gates::of_run(look, run, worked));
    found.extend(bracing::of_run(look, run, worked));
    found.extend(slope::of_run(look, run, worked));
    found.extend(faults::of_run(look, run, worked));
    found.extend(volts::of_run(look, run, worked));
    found.extend(power::of_run(look, run, worked));
    found
}

/// Notes on keys of the file that look misspelt.
pub fn unknown_keys(unknown: &[UnknownKey], words: Words) -> Vec<Finding> {
    unknown
        .iter()
        .map(|key| {
            Finding::new("unknown-key", Severity::Note, limits::OWN_FORMAT)
                .says(words.say(texts::Findings::UnknownKey, &[("key", &key.path), ("meant", &key.meant)]))
        })
        .collect()
}

/// What holds for every plan.
fn always(words: Words) -> Vec<Finding> {
    vec![
        Finding::new("buried-services", Severity::Note, "usual guidance on buried services; from memory")
            .says(words.text(texts::Findings::BuriedServices)),
        Finding::new("local-codes-first", Severity::Note, plan::defaults::COMMON_PRACTICE)
            .says(words.text(texts::Findings::LocalCodesFirst)),
    ]
}

/// What a run is called: its name, else its id.
pub fn run_name(run: &Run) -> &str {
    if run.name.is_empty() { &run.id } else { &run.name }
}

/// The line of a run as it was worked out, to measure distances from.
pub(crate) fn line(worked: &RunWorkup) -> Option<geometry::Outline> {
    worked.lay.as_ref().map(workup::Lay::line)
}

/// The netting as it stands.
pub(crate) fn netting(worked: &RunWorkup) -> Option<geometry::Outline> {
    worked.lay.as_ref()?.netting()
}

pub(crate) fn point(at: plan::Point) -> geometry::Point {
    geometry::Point { east_m: at.east_m, north_m: at.north_m }
}

pub(crate) fn place(at: geometry::Point) -> plan::Point {
    plan::Point { east_m: at.east_m, north_m: at.north_m }
}
