//! What rests on a default: every statement that a plan leaves out and that a figure depends on.

use serde_json::{Value, json};

use crate::defaults::{self, COMMON_PRACTICE};
use crate::model::{Plan, Rates};
use crate::today::Factors;

/// One statement that was not made, and what stands in for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Assumed {
    /// The key in the file.
    pub key: String,
    /// The value that stands in.
    pub value: Value,
    /// Where that value comes from.
    pub source: &'static str,
}

/// Everything that the figures of this plan assume, in the order of the file's keys.
pub fn assumed(plan: &Plan) -> Vec<Assumed> {
    let mut list = List(Vec::new());
    let soil = &plan.ground.soil;
    for (index, hazard) in plan.ground.hazards.iter().enumerate() {
        if hazard.kind == crate::HazardKind::OverheadLine {
            list.unless(
                hazard.line_voltage_kv.is_some(),
                format!("ground.hazards[{index}].line_voltage_kv"),
                defaults::OVERHEAD_LINE_VOLTAGE_KV,
            );
        }
    }
    list.unless(soil.resistivity_ohm_m.is_some(), "ground.soil.resistivity_ohm_m", defaults::RESISTIVITY_OHM_M);
    // A word that its table does not have tells nothing.
    let classed = soil.class.as_ref().is_some_and(|class| class.table.class(class.name).is_some());
    let told = soil.by_foot.is_some() || classed || soil.pull_test.is_some();
    if soil.undrained_strength_kpa.is_none() && soil.friction_angle_deg.is_none() && !told {
        list.with(
            "ground.soil.undrained_strength_kpa",
            defaults::UNDRAINED_STRENGTH_KPA,
            "upper end of medium clay, US Army TM 5-818-1, table 2-2; common practice to assume it",
        );
    }
    let of_sand = |class: &crate::SoilClass| class.table == crate::SoilTable::Sands;
    let sand = soil.friction_angle_deg.is_some() || classed && soil.class.as_ref().is_some_and(of_sand);
    if soil.undrained_strength_kpa.is_none() && soil.pull_test.as_ref().and_then(|test| test.pull_n()).is_none() && sand
    {
        list.unless(
            soil.unit_weight_kn_per_m3.is_some(),
            "ground.soil.unit_weight_kn_per_m3",
            defaults::UNIT_WEIGHT_KN_PER_M3,
        );
    }
    list.unless(soil.wet.is_some() || plan.ground.today.is_some(), "ground.soil.wet", defaults::WET);
    for (index, damp) in plan.ground.damp.iter().enumerate() {
        if damp.resistivity_ohm_m.is_none() {
            let key = format!("ground.damp[{index}].resistivity_ohm_m");
            list.with(key, plan.ground.damp_ohm_m(damp), crate::today::source());
        }
    }
    if let Some(today) = plan.ground.today {
        let Factors { resistivity, leakage, mass, minutes, .. } = today.factors();
        let named = [("resistivity", resistivity), ("leakage", leakage), ("mass", mass), ("minutes", minutes)];
        for (name, factor) in named.into_iter().filter(|(_, factor)| *factor != 1.0) {
            list.with(format!("ground.today.{name}"), factor, crate::today::source());
        }
    }
    if let Some(run) = plan.runs.iter().find(|run| !run.gates.is_empty())
        && let Some(&first) = run.outline.first()
        && let Some(at) = plan.gateway_for(first)
    {
        list.unless(plan.ground.gateway.is_some(), "ground.gateway.at", json!(at));
    }
    if let Some(underlay) = &plan.underlay {
        list.unless(underlay.is_to_scale(), "underlay.world_m", json!(underlay.world_m()));
    }
    for (index, net) in plan.store.nets.iter().enumerate() {
        let key = |name: &str| format!("store.nets[{index}].{name}");
        list.unless(net.count.is_some(), key("count"), defaults::NET_COUNT);
        list.unless(net.height_m.is_some(), key("height_m"), defaults::NET_HEIGHT_M);
        list.unless(
            net.live_line_heights_m.is_some(),
            key("live_line_heights_m"),
            json!(defaults::LIVE_LINE_HEIGHTS_M),
        );
        list.unless(
            net.line_resistance_ohm_per_m.is_some(),
            key("line_resistance_ohm_per_m"),
            defaults::LINE_RESISTANCE_OHM_PER_M,
        );
        list.unless(net.tension_n.is_some(), key("tension_n"), defaults::TENSION_N);
        list.unless(net.spikes_per_post.is_some(), key("spikes_per_post"), defaults::SPIKES_PER_POST);
        list.unless(net.spike_length_m.is_some(), key("spike_length_m"), defaults::SPIKE_LENGTH_M);
        list.unless(net.spike_diameter_m.is_some(), key("spike_diameter_m"), defaults::SPIKE_DIAMETER_M);
    }
    if plan.store.energizers.is_empty() && !plan.runs.is_empty() {
        for (name, value) in [
            ("stored_j", defaults::STORED_J),
            ("no_load_kv", defaults::NO_LOAD_KV),
            ("kv_at_500_ohm", defaults::KV_AT_500_OHM),
            ("output_j_at_500_ohm", defaults::OUTPUT_J_AT_500_OHM),
        ] {
            list.with(format!("store.energizers[0].{name}"), value, COMMON_PRACTICE);
        }
    }
    for (index, unit) in plan.store.energizers.iter().enumerate() {
        let key = |name: &str| format!("store.energizers[{index}].{name}");
        list.unless(unit.count.is_some(), key("count"), defaults::ENERGIZER_COUNT);
        list.unless(unit.stored_j.is_some(), key("stored_j"), defaults::STORED_J);
        list.unless(unit.no_load_kv.is_some(), key("no_load_kv"), defaults::NO_LOAD_KV);
        list.unless(unit.kv_at_500_ohm.is_some(), key("kv_at_500_ohm"), unit.kv_at_500_ohm());
        list.unless(unit.output_j_at_500_ohm.is_some(), key("output_j_at_500_ohm"), unit.output_j_at_500_ohm());
    }
    let store = &plan.store;
    list.unless(store.brace.stake_length_m.is_some(), "store.brace.stake_length_m", defaults::BRACE_STAKE_LENGTH_M);
    list.unless(
        store.brace.stake_diameter_m.is_some(),
        "store.brace.stake_diameter_m",
        defaults::BRACE_STAKE_DIAMETER_M,
    );
    list.unless(store.brace.loop_height_m.is_some(), "store.brace.loop_height_m", defaults::BRACE_LOOP_HEIGHT_M);
    let off = store.brace.stand_off_m.is_some() || store.brace.guy_angle_deg.is_some();
    list.unless(off, "store.brace.stand_off_m", defaults::STAND_OFF_M);
    list.0.extend(crate::bracing::assumed(plan));
    list.unless(store.mower.width_m.is_some(), "store.mower.width_m", defaults::MOWER_WIDTH_M);
    list.unless(store.mower.overlap.is_some(), "store.mower.overlap", defaults::MOWER_OVERLAP);
    list.unless(store.mower.speed_m_per_s.is_some(), "store.mower.speed_m_per_s", defaults::MOWER_SPEED_M_PER_S);
    list.unless(store.mower.efficiency.is_some(), "store.mower.efficiency", defaults::MOWER_EFFICIENCY);
    list.unless(store.earth_stake.length_m.is_some(), "store.earth_stake.length_m", defaults::EARTH_STAKE_LENGTH_M);
    list.unless(
        store.earth_stake.diameter_m.is_some(),
        "store.earth_stake.diameter_m",
        defaults::EARTH_STAKE_DIAMETER_M,
    );
    list.unless(store.mower.cut_height_m.is_some(), "store.mower.cut_height_m", defaults::CUT_HEIGHT_M);
    if !plan.runs.is_empty() {
        list.rates(&store.rates, plan.runs.iter().any(|run| plan.knows_heights(run)));
    }
    if !plan.runs.is_empty()
        && plan.season.birds_rule() == defaults::BIRDS_RULE
        && plan.season.min_m2_per_bird.is_none()
    {
        list.with("season.min_m2_per_bird", defaults::MIN_M2_PER_BIRD, defaults::MIN_M2_PER_BIRD_SOURCE);
    }
    if plan.target_kv.is_none() {
        list.with("target_kv", defaults::TARGET_KV, defaults::TARGET_SOURCE);
    }
    for (index, run) in plan.runs.iter().enumerate() {
        let key = |name: &str| format!("runs[{index}].{name}");
        let stated = |coop: &&crate::Coop| run.coop.as_ref() == Some(&coop.id);
        let coops: Vec<&str> = plan.coops_in(run).filter(|coop| !stated(coop)).map(|coop| coop.id.as_str()).collect();
        match coops[..] {
            [] => {}
            [id] => list.with(key("coop"), id, "it stands in the run"),
            _ => list.with(key("coop"), coops, "they stand in the run"),
        }
        list.unless(run.feed_at.is_some(), key("feed_at"), json!(run.outline.first()));
        // Where the energizer stands and how far its lead reaches matter where the best place for a stake is asked for.
        let asked = !plan.ground.damp.is_empty() && run.earth_ohm.is_none() && run.status != crate::RunStatus::Past;
        let led = run.earth_stakes.lead_m.is_some() || run.lead_m.is_some();
        if asked || led {
            let feed = run.feed_at.or(run.outline.first().copied());
            list.unless(run.energizer_at.is_some(), key("energizer_at"), json!(feed));
        }
        if asked {
            list.unless(run.earth_stakes.lead_m.is_some(), key("earth_stakes.lead_m"), defaults::EARTH_LEAD_M);
        }
        let in_line = run.earth_stakes.places.is_empty();
        list.unless(
            run.earth_stakes.count.is_some() || !in_line || run.earth_ohm.is_some(),
            key("earth_stakes.count"),
            defaults::EARTH_STAKE_COUNT,
        );
        if run.earth_ohm.is_none() && in_line && run.earth_stakes.count() > 1 {
            list.unless(
                run.earth_stakes.spacing_m.is_some(),
                key("earth_stakes.spacing_m"),
                defaults::EARTH_STAKE_SPACING_M,
            );
        }
        list.unless(run.leakage_s_per_m.is_some(), key("leakage_s_per_m"), defaults::LEAKAGE_S_PER_M);
        list.unless(!run.strip_is_assumed(), key("strip_width_m"), defaults::STRIP_WIDTH_M);
        for (number, gate) in run.gates.iter().enumerate() {
            let key = key(&format!("gates[{number}].width_m"));
            list.unless(gate.width_m.is_some(), key, gate.width_m(plan.coop_of(run)));
        }
        if plan.knows_heights(run) {
            list.unless(run.gap_under_net_m.is_some(), key("gap_under_net_m"), plan.gap_under_net_m(run));
        }
        list.unless(run.drop_at.is_some(), key("drop_at"), json!(plan.drop_at(run)));
    }
    list.0
}

struct List(Vec<Assumed>);

impl List {
    fn with(&mut self, key: impl Into<String>, value: impl Into<Value>, source: &'static str) {
        self.0.push(Assumed { key: key.into(), value: value.into(), source });
    }

    /// The rates that make up the minutes; a factor counts only where its hindrance is stated.
    fn rates(&mut self, stated: &Rates, heights: bool) {
        use defaults::rates as table;
        for (is_stated, name, value, source) in [
            (stated.unroll_minutes.is_some(), "unroll_minutes", table::UNROLL_MINUTES, COMMON_PRACTICE),
            (stated.tread_post_s.is_some(), "tread_post_s", table::TREAD_POST_S, table::POST_SOURCE),
            (stated.join_minutes.is_some(), "join_minutes", table::JOIN_MINUTES, COMMON_PRACTICE),
            (stated.brace_minutes.is_some(), "brace_minutes", table::BRACE_MINUTES, COMMON_PRACTICE),
            (
                // Without heights no further post is known to be needed.
                stated.further_post_minutes.is_some() || !heights,
                "further_post_minutes",
                table::FURTHER_POST_MINUTES,
                COMMON_PRACTICE,
            ),
            (stated.power_minutes.is_some(), "power_minutes", table::POWER_MINUTES, COMMON_PRACTICE),
            (stated.fold_minutes.is_some(), "fold_minutes", table::FOLD_MINUTES, COMMON_PRACTICE),
            (stated.pull_post_s.is_some(), "pull_post_s", table::PULL_POST_S, table::POST_SOURCE),
            (stated.untie_minutes.is_some(), "untie_minutes", table::UNTIE_MINUTES, COMMON_PRACTICE),
            (stated.draw_brace_minutes.is_some(), "draw_brace_minutes", table::DRAW_BRACE_MINUTES, COMMON_PRACTICE),
            (stated.walk_m_per_s.is_some(), "walk_m_per_s", table::WALK_M_PER_S, COMMON_PRACTICE),
            (stated.carry_m_per_s.is_some(), "carry_m_per_s", table::CARRY_M_PER_S, table::POST_SOURCE),
            (stated.first_time_factor.is_some(), "first_time_factor", table::FIRST_TIME_FACTOR, COMMON_PRACTICE),
            (
                stated.two_people_factor.is_some() || stated.people() < 2,
                "two_people_factor",
                table::TWO_PEOPLE_FACTOR,
                COMMON_PRACTICE,
            ),
            (stated.stony_factor.is_some() || !stated.stony(), "stony_factor", table::STONY_FACTOR, COMMON_PRACTICE),
            (
                stated.long_grass_factor.is_some() || !stated.long_grass(),
                "long_grass_factor",
                table::LONG_GRASS_FACTOR,
                COMMON_PRACTICE,
            ),
            (stated.rain_factor.is_some() || !stated.rain(), "rain_factor", table::RAIN_FACTOR, COMMON_PRACTICE),
            (stated.dark_factor.is_some() || !stated.dark(), "dark_factor", table::DARK_FACTOR, COMMON_PRACTICE),
        ] {
            if !is_stated {
                self.with(format!("store.rates.{name}"), value, source);
            }
        }
        self.unless(stated.rolls_a_trip.is_some(), "store.rates.rolls_a_trip", table::ROLLS_A_TRIP);
        self.unless(stated.people.is_some(), "store.rates.people", table::PEOPLE);
    }

    fn unless(&mut self, stated: bool, key: impl Into<String>, value: impl Into<Value>) {
        if !stated {
            self.with(key, value, COMMON_PRACTICE);
        }
    }
}
