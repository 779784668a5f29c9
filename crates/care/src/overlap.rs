//! Standing runs whose ground overlaps: one piece of ground cannot be grazed twice at once.
//!
//! Only closed runs are looked at: an open line may part the ground of another. Runs with a side in common share no ground,
//! also where its two drawings miss each other by a little.

use geometry::region;
use plan::{Run, RunStatus};
use words::texts::Findings as Text;

use crate::limits::ONE_SIDE;
use crate::{Finding, Look, Severity, place, run_name};

/// Each pair is said once, with the later run.
pub(crate) fn between_runs(look: Look<'_>, index: usize, run: &Run) -> Vec<Finding> {
    let Some((stand, before)) = look.stands.get(..=index).and_then(<[_]>::split_last) else { return Vec::new() };
    let Some(line) = stand.line.as_ref().filter(|_| run.status == RunStatus::Standing) else { return Vec::new() };
    let others = look.plan.runs.iter().zip(before).filter(|(other, _)| other.status == RunStatus::Standing);
    let near = others.filter(|(_, other)| stand.may_near(other, -ONE_SIDE.metres));
    near.filter_map(|(other, other_stand)| {
        let pieces = region::shared_ground(line, other_stand.line.as_ref()?, ONE_SIDE.metres);
        if pieces.is_empty() {
            return None;
        }
        let area = look.words.area(pieces.iter().map(|piece| piece.area_m2).sum());
        let places = [("run", run_name(run)), ("other", run_name(other)), ("area", &*area)];
        Some(
            Finding::new("runs-overlap", Severity::Warning, ONE_SIDE.source)
                .says(look.say(Text::RunsOverlap, &places))
                .mends(look.words.text(Text::RunsOverlapMend))
                .at(pieces.into_iter().map(|piece| place(piece.at)))
                .with(&other.id),
        )
    })
    .collect()
}
