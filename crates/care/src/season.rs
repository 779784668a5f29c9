//! What the keeper asks of a season.

use words::texts::Findings as Text;
use workup::stocking::{self, OWN};

use crate::limits::OWN_FORMAT;
use crate::{Finding, Look, Severity};

/// A rule for birds that nothing can be counted by.
pub(crate) fn of_plan(look: Look<'_>) -> Option<Finding> {
    if stocking::chosen(look.plan).is_some() {
        return None;
    }
    let rule = look.plan.season.birds_rule();
    let says = if rule == OWN {
        look.words.text(Text::NoGroundABird).to_owned()
    } else {
        look.say(Text::UnknownBirdsRule, &[("rule", rule)])
    };
    Some(Finding::new("birds-rule", Severity::Note, OWN_FORMAT).says(says))
}
