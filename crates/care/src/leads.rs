//! Leads that do not reach: the live one to the net, the earth one to the nearest stake.

use plan::{Run, RunStatus};
use words::texts::Damp as Text;
use workup::{earth, lead};

use crate::limits::OWN_FORMAT;
use crate::{Finding, Look, Severity, Subject, run_name};

pub(crate) fn of_run(look: Look<'_>, run: &Run) -> Vec<Finding> {
    if run.status == RunStatus::Past {
        return Vec::new();
    }
    live(look, run).into_iter().chain(earth_lead(look, run)).collect()
}

/// A live lead that is stated shorter than its way.
fn live(look: Look<'_>, run: &Run) -> Option<Finding> {
    let lead = lead::lead(look.plan, run);
    lead.short_m()?;
    let (length, apart) = (look.words.length(lead.length_m?), look.words.length(lead.apart_m?));
    Some(
        Finding::new("lead-short", Severity::Warning, OWN_FORMAT)
            .about(Subject::Energizer)
            .says(look.words.say(Text::LeadShort, &[("run", run_name(run)), ("length", &length), ("apart", &apart)]))
            .at(run.energizer_at.into_iter().chain(lead::feed(run))),
    )
}

/// An earth lead that is stated shorter than the way to the nearest stake; the further ones hang on each other.
fn earth_lead(look: Look<'_>, run: &Run) -> Option<Finding> {
    let length_m = run.earth_stakes.lead_m.filter(|length_m| *length_m >= 0.0 && run.earth_ohm.is_none())?;
    let (stake, apart_m) = earth::nearest_to_energizer(run)?;
    if apart_m <= length_m + lead::SHORT_M {
        return None;
    }
    let (length, apart) = (look.words.length(length_m), look.words.length(apart_m));
    let places = [("run", run_name(run)), ("length", &*length), ("apart", &*apart)];
    let number = earth::known(run).iter().position(|&at| at == stake);
    Some(
        Finding::new("earth-lead-short", Severity::Warning, OWN_FORMAT)
            .about(number.map_or(Subject::Whole, Subject::EarthStake))
            .says(look.words.say(Text::EarthLeadShort, &places))
            .at([stake]),
    )
}
