//! Damp ground and the earth stakes that could stand in it.

use plan::{Plan, Run, defaults::COMMON_PRACTICE};
use words::Words;
use words::texts::Damp as Text;
use workup::{RunWorkup, earth, lead};

use crate::limits::OWN_FORMAT;
use crate::names::{self, Named};
use crate::{Finding, Look, Severity, Subject, run_name};

/// Stakes that stand in drier ground than they could.
pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Option<Finding> {
    let best = worked.dampest.as_ref().filter(|best| best.known && best.is_better())?;
    let (place, off) = (look.amid(Named::Damp(best.damp)), look.words.length(best.off_m));
    let (ohm, now) = (look.words.ohms(best.ohm), look.words.ohms(best.now_ohm));
    let places = [("run", run_name(run)), ("place", &*place), ("off", &*off), ("ohm", &*ohm), ("now", &*now)];
    Some(
        Finding::new("earth-damper-near", Severity::Note, COMMON_PRACTICE)
            .says(look.words.say(Text::DamperInReach, &places))
            .at(best.places.first().copied()),
    )
}

/// Damp ground that is stated to be drier than the ground round it.
pub(crate) fn of_plan(look: Look<'_>) -> Vec<Finding> {
    let ground = &look.plan.ground;
    let own_ohm_m = ground.soil.resistivity_ohm_m();
    let number = |ohm_m: f64| look.words.number(ohm_m, usize::from(ohm_m < 10.0));
    let said = |(index, damp): (usize, &plan::Damp)| {
        let stated = damp.resistivity_ohm_m.filter(|ohm_m| *ohm_m > own_ohm_m)?;
        let (place, stated, own) = (look.first(Named::Damp(index)), number(stated), number(own_ohm_m));
        let places = [("place", &*place), ("stated", &*stated), ("ground", &*own)];
        Some(
            Finding::new("damp-drier", Severity::Note, OWN_FORMAT)
                .about(Subject::Outline(plan::Shape::Damp(index), None))
                .says(look.words.say(Text::DampDrier, &places))
                .at(damp.outline.first().copied()),
        )
    };
    ground.damp.iter().enumerate().filter_map(said).collect()
}

/// How far the energizer of a run stands from what its leads go to, in one sentence.
pub fn stands_said(plan: &Plan, run: &Run, words: Words) -> String {
    let Some(apart_m) = lead::lead(plan, run).apart_m else { return words.text(Text::StandsAtFeed).to_owned() };
    let stands = words.say(Text::Stands, &[("feed", &words.length(apart_m))]);
    match earth::nearest_to_energizer(run) {
        Some((_, off_m)) => words.say(Text::StandsWithStake, &[("stands", &stands), ("stake", &words.length(off_m))]),
        None => words.say(Text::StandsAlone, &[("stands", &stands)]),
    }
}

/// Where the earth stakes of a run would earth best, as sentences: the first says where that is and what it gives;
/// empty where no damp ground is drawn, or the earth was measured.
pub fn damper_said(plan: &Plan, run: &Run, worked: &RunWorkup, words: Words) -> Vec<String> {
    if plan.ground.damp.is_empty() || run.earth_ohm.is_some() || run.status == plan::RunStatus::Past {
        return Vec::new();
    }
    let reach = words.length(run.earth_stakes.lead_m());
    let mut said = Vec::new();
    let (count, assumed) = (run.earth_stakes.count() as usize, run.earth_stakes.lead_m.is_none());
    match &worked.dampest {
        // On a wet day the rest may be as damp as what is drawn.
        None if !plan.ground.is_damper_today() => said.push(words.text(Text::NotDamper).to_owned()),
        None => said.push(words.say(Text::NoneInReach, &[("reach", &reach)])),
        Some(best) if best.there => {
            said.push(words.say(Text::There, &[("place", &names::amid(plan, words, Named::Damp(best.damp)))]));
        }
        Some(best) if !best.is_better() => said.push(words.text(Text::NotBetter).to_owned()),
        Some(best) => {
            let (place, off) = (names::amid(plan, words, Named::Damp(best.damp)), words.length(best.off_m));
            let (ohm, now) = (words.ohms(best.ohm), words.ohms(best.now_ohm));
            said.push(words.say(Text::Best, &[("place", &place), ("off", &off), ("ohm", &ohm), ("now", &now)]));
            let [kept, inside, all] = [best.places.len(), best.inside, count].map(|number| number.to_string());
            let places = [("kept", &*kept), ("inside", &*inside), ("count", &*all)];
            if best.places.len() < count {
                said.push(words.say(Text::BestCut, &places));
            } else if best.inside < count {
                said.push(words.say(Text::BestPartly, &places));
            } else if count > 1 {
                said.push(words.say(Text::BestInside, &places));
            }
        }
    }
    if assumed {
        said.push(words.say(Text::ReachAssumed, &[("reach", &reach)]));
    }
    let corner = worked.dampest.as_ref().and_then(|best| worked.lay.as_ref()?.corners.get(best.corner?));
    if let Some(corner) = corner {
        said.push(corner.vertex.map_or_else(
            || words.text(Text::BraceThereEnd).to_owned(),
            |vertex| words.say(Text::BraceThere, &[("number", &(vertex + 1).to_string())]),
        ));
    }
    said
}
