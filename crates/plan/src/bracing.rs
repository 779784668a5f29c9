//! Whether a plan says anything of braces, soil classes or wind beyond the first statements, and what it leaves out then.
//!
//! Where it says nothing of the kind, nothing of it is in the report: figures of older plans stay as they were.

use serde_json::Value;

use crate::Assumed;
use crate::defaults::bracing as table;
use crate::defaults::{COMMON_PRACTICE, SAFETY_FACTOR};
use crate::model::{BraceKind, BraceRule, Plan, Rest, Soil, StatedBrace};

/// Whether the plan states anything that this page is about.
pub fn stated(plan: &Plan) -> bool {
    let Soil { by_foot, class, pull_test, corners_seen, wet_factor, .. } = &plan.ground.soil;
    let of_soil =
        by_foot.is_some() || class.is_some() || pull_test.is_some() || !corners_seen.is_empty() || wet_factor.is_some();
    let of_ground = plan.ground.wind_m_per_s.is_some() || plan.ground.fouled_share.is_some();
    of_soil || of_ground || rule(&plan.store.brace) || plan.runs.iter().flat_map(|run| &run.braces).any(detailed)
}

/// Whether a brace says more than where it stands and what it is.
pub fn detailed(brace: &StatedBrace) -> bool {
    brace.guy_angle_deg.is_some()
        || brace.guy_height_m.is_some()
        || brace.pegs.is_some()
        || brace.peg_length_m.is_some()
        || brace.peg_diameter_m.is_some()
}

/// Whether the keeper's braces say more than their stake and how far off it stands.
fn rule(brace: &BraceRule) -> bool {
    let first_statements = BraceRule {
        stake_length_m: brace.stake_length_m,
        stake_diameter_m: brace.stake_diameter_m,
        loop_height_m: brace.loop_height_m,
        stand_off_m: brace.stand_off_m,
        rest: Rest::clone(&brace.rest),
        ..BraceRule::default()
    };
    *brace != first_statements
}

/// What it leaves out, in the order of the file's keys; nothing where it says nothing of the kind. Where it states braces
/// and no more, what these are judged by.
pub(crate) fn assumed(plan: &Plan) -> Vec<Assumed> {
    let braces = || plan.runs.iter().flat_map(|run| &run.braces);
    let all = stated(plan);
    if !all && braces().next().is_none() {
        return Vec::new();
    }
    let posts = all || braces().any(|brace| brace.kind == BraceKind::Post);
    let guys = all || braces().any(|brace| brace.kind == BraceKind::Guy);
    let mut list = Vec::new();
    let mut add = |is_stated: bool, key: String, value: Value, source: &'static str| {
        if !is_stated {
            list.push(Assumed { key, value, source });
        }
    };
    let soil = &plan.ground.soil;
    let any_wet = plan.ground.wet()
        || soil.pull_test.as_deref().is_some_and(crate::PullTest::wet)
        || soil.corners_seen.iter().any(crate::CornerSeen::wet);
    add(
        soil.wet_factor.is_some() || !any_wet || !all,
        "ground.soil.wet_factor".to_owned(),
        table::WET_FACTOR.into(),
        table::WET_SOURCE,
    );
    if let Some(test) = &soil.pull_test {
        let key = |name: &str| format!("ground.soil.pull_test.{name}");
        let first = plan.store.nets.first();
        add(test.height_m.is_some(), key("height_m"), table::PULL_HEIGHT_M.into(), COMMON_PRACTICE);
        for (is_stated, name, value) in [
            (test.spike_length_m.is_some(), "spike_length_m", plan.pulled_spike_m(test).0),
            (test.spike_diameter_m.is_some(), "spike_diameter_m", plan.pulled_spike_m(test).1),
        ] {
            let source = if first.is_some() { "the spike of the store’s first net" } else { COMMON_PRACTICE };
            add(is_stated, key(name), value.into(), source);
        }
        add(
            test.spikes.is_some(),
            key("spikes"),
            plan.pulled_spikes(test).into(),
            "the spikes of the store’s first net",
        );
        add(test.wet.is_some(), key("wet"), table::SEEN_WET.into(), COMMON_PRACTICE);
    }
    for (index, seen) in soil.corners_seen.iter().enumerate() {
        add(
            seen.wet.is_some(),
            format!("ground.soil.corners_seen[{index}].wet"),
            table::SEEN_WET.into(),
            COMMON_PRACTICE,
        );
    }
    if all && !plan.runs.is_empty() {
        add(
            plan.ground.fouled_share.is_some(),
            "ground.fouled_share".to_owned(),
            table::FOULED_SHARE.into(),
            "derived for a net with grass and leaves in it; common practice for the inputs",
        );
    }
    let brace = &plan.store.brace;
    let key = |name: &str| format!("store.brace.{name}");
    for (of_it, is_stated, name, value) in [
        (guys, brace.guy_height_m.is_some(), "guy_height_m", table::GUY_HEIGHT_M),
        (posts, brace.post_length_m.is_some(), "post_length_m", table::POST_LENGTH_M),
        (posts, brace.post_diameter_m.is_some(), "post_diameter_m", table::POST_DIAMETER_M),
        (true, brace.safety_factor.is_some(), "safety_factor", SAFETY_FACTOR),
        (all, brace.longer_peg_minutes.is_some(), "longer_peg_minutes", table::LONGER_PEG_MINUTES),
        (all, brace.second_peg_minutes.is_some(), "second_peg_minutes", table::SECOND_PEG_MINUTES),
        (posts, brace.post_minutes.is_some(), "post_minutes", table::POST_MINUTES),
        (all, brace.cut_post_minutes.is_some(), "cut_post_minutes", table::CUT_POST_MINUTES),
        (all, brace.carry_minutes.is_some(), "carry_minutes", table::CARRY_MINUTES),
    ] {
        add(is_stated || !of_it, key(name), value.into(), COMMON_PRACTICE);
    }
    add(brace.pegs.is_some() || !guys, key("pegs"), table::PEGS.into(), COMMON_PRACTICE);
    list
}
