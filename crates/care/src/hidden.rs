//! What the map leaves out.

use words::texts::Findings as Text;

use crate::limits::OWN_FORMAT;
use crate::{Finding, Look, Severity};

/// Things that are hidden count all the same, and a keeper who does not see them should know. No rule hangs on shade, on
/// words and on the picture beneath the map: those may be hidden without a word.
pub(crate) fn of_plan(look: Look<'_>) -> Option<Finding> {
    let ground = &look.plan.ground;
    let runs = look.plan.runs.iter().filter(|run| run.hidden).count();
    let hazards = ground.hazards.iter().filter(|hazard| hazard.hidden).count();
    let keep_outs = ground.keep_outs.iter().filter(|keep_out| keep_out.hidden).count();
    let walls = look.plan.walls.iter().filter(|wall| wall.hidden).count();
    let damp = ground.damp.iter().filter(|damp| damp.hidden).count();
    let coops = look.plan.coop.iter().chain(&look.plan.other_coops).filter(|coop| coop.hidden).count();
    let paddock = usize::from(ground.boundary_hidden && !ground.boundary.is_empty());
    let hidden = runs + hazards + keep_outs + walls + damp + coops + paddock;
    let says = match (hidden, hazards) {
        (0, _) => return None,
        (1, 0) => look.words.text(Text::OneHidden).to_owned(),
        (1, _) => look.words.text(Text::OneHazardHidden).to_owned(),
        (_, 0) => look.say(Text::Hidden, &[("count", &hidden.to_string())]),
        _ => look.say(Text::HiddenWithHazards, &[("count", &hidden.to_string()), ("hazards", &hazards.to_string())]),
    };
    let severity = if hazards > 0 { Severity::Warning } else { Severity::Note };
    Some(Finding::new("hidden-on-map", severity, OWN_FORMAT).says(says))
}
