//! Statements that nothing can be built with: zero and negative sizes, shares above one.
//!
//! Each is named by its key, so that the keeper finds it in the file and on the page.

use plan::{FaultKind, Plan, Run};

use crate::earth::MOST_STAKES;
use crate::model::{Must, Trouble};
use crate::slope;

/// Lengths of nets and sizes of things beyond this are a slip of the pen, metres.
const LARGEST_M: f64 = 1e5;

/// Any other figure (ohms, newtons, kilovolts, kilopascals) beyond this is one.
const LARGEST: f64 = 1e9;

/// More live lines than this on one net are one.
const MOST_LINES: usize = 100;

struct Look(Vec<Trouble>);

impl Look {
    fn must(&mut self, holds: bool, key: String, value: f64, must: Must) {
        if !holds {
            self.0.push(Trouble::BadValue { key, value, must });
        }
    }

    fn positive(&mut self, key: String, value: f64) {
        let must = if value > 0.0 { Must::BeSmaller } else { Must::BePositive };
        self.must(value > 0.0 && value <= LARGEST, key, value, must);
    }

    fn size(&mut self, key: String, value_m: f64) {
        let must = if value_m > 0.0 { Must::BeSmaller } else { Must::BePositive };
        self.must(value_m > 0.0 && value_m <= LARGEST_M, key, value_m, must);
    }

    fn not_negative(&mut self, key: String, value: f64) {
        let must = if value >= 0.0 { Must::BeSmaller } else { Must::NotBeNegative };
        self.must((0.0..=LARGEST).contains(&value), key, value, must);
    }

    fn at_least_one(&mut self, key: String, value: u32) {
        self.must(value >= 1, key, f64::from(value), Must::BeAtLeastOne);
    }
}

/// What is wrong with ground, store and coops.
pub(crate) fn of_plan(plan: &Plan) -> Vec<Trouble> {
    let mut look = Look(Vec::new());
    let soil = &plan.ground.soil;
    look.positive("ground.soil.resistivity_ohm_m".into(), soil.resistivity_ohm_m());
    for (index, damp) in plan.ground.damp.iter().enumerate() {
        if let Some(ohm_m) = damp.resistivity_ohm_m {
            look.positive(format!("ground.damp[{index}].resistivity_ohm_m"), ohm_m);
        }
    }
    if let Some(strength_kpa) = soil.undrained_strength_kpa {
        look.positive("ground.soil.undrained_strength_kpa".into(), strength_kpa);
        if soil.friction_angle_deg.is_some() {
            look.0.push(Trouble::TwoSoils);
        }
    } else if let Some(angle_deg) = soil.friction_angle_deg {
        look.must(
            angle_deg > 0.0 && angle_deg < 90.0,
            "ground.soil.friction_angle_deg".into(),
            angle_deg,
            Must::BeAnAngle,
        );
        look.positive("ground.soil.unit_weight_kn_per_m3".into(), soil.unit_weight_kn_per_m3());
    }
    let efficiency = plan.store.mower.efficiency();
    let key = "store.mower.efficiency".to_owned();
    look.must(efficiency > 0.0 && efficiency <= 1.0, key, efficiency, Must::BeAPart);
    bracing(plan, &mut look);
    for (index, keep_out) in plan.ground.keep_outs.iter().enumerate() {
        look.not_negative(format!("ground.keep_outs[{index}].clearance_m"), keep_out.clearance_m());
    }
    for (index, hazard) in plan.ground.hazards.iter().enumerate() {
        if let Some(line_kv) = hazard.line_voltage_kv {
            look.positive(format!("ground.hazards[{index}].line_voltage_kv"), line_kv);
        }
    }
    look.must(plan.heights.len() <= slope::MOST_SPOTS, "heights".into(), plan.heights.len() as f64, Must::BeSmaller);
    let grid = plan.ground.height_grid.as_ref();
    if let Some(&up_m) = grid.and_then(|grid| grid.up_m.iter().flatten().find(|up_m| up_m.abs() > slope::HIGHEST_M)) {
        look.must(false, "ground.height_grid.up_m".into(), up_m, Must::BeSmaller);
    }
    for (index, height) in plan.heights.iter().enumerate() {
        let far_m = height.at.east_m.abs().max(height.at.north_m.abs());
        look.must(far_m <= geometry::FARTHEST_M, format!("heights[{index}].at"), far_m, Must::BeSmaller);
        look.must(
            height.up_m.abs() <= slope::HIGHEST_M,
            format!("heights[{index}].up_m"),
            height.up_m,
            Must::BeSmaller,
        );
    }
    nets(plan, &mut look);
    for (index, unit) in plan.store.energizers.iter().enumerate() {
        let key = |name: &str| format!("store.energizers[{index}].{name}");
        look.positive(key("stored_j"), unit.stored_j());
        look.positive(key("no_load_kv"), unit.no_load_kv());
        look.positive(key("kv_at_500_ohm"), unit.kv_at_500_ohm());
        look.positive(key("output_j_at_500_ohm"), unit.output_j_at_500_ohm());
    }
    let brace = &plan.store.brace;
    look.size("store.brace.stake_length_m".into(), brace.stake_length_m());
    look.size("store.brace.stake_diameter_m".into(), brace.stake_diameter_m());
    look.not_negative("store.brace.loop_height_m".into(), brace.loop_height_m());
    look.size("store.brace.stand_off_m".into(), brace.stand_off_m());
    let mower = &plan.store.mower;
    look.size("store.mower.width_m".into(), mower.width_m());
    look.must((0.0..1.0).contains(&mower.overlap()), "store.mower.overlap".into(), mower.overlap(), Must::BeAShare);
    look.positive("store.mower.speed_m_per_s".into(), mower.speed_m_per_s());
    look.not_negative("store.mower.cut_height_m".into(), mower.cut_height_m());
    rates(&plan.store.rates, &mut look);
    look.size("store.earth_stake.length_m".into(), plan.store.earth_stake.length_m());
    look.size("store.earth_stake.diameter_m".into(), plan.store.earth_stake.diameter_m());
    look.positive("target_kv".into(), plan.target_kv());
    for (index, coop) in plan.coop.iter().chain(&plan.other_coops).enumerate() {
        let first = usize::from(plan.coop.is_some());
        let key = |name: &str| {
            if index < first { format!("coop.{name}") } else { format!("other_coops[{}].{name}", index - first) }
        };
        look.size(key("length_m"), coop.length_m());
        look.size(key("width_m"), coop.width_m());
    }
    look.0
}

/// What is said of the ground for the sake of the braces, and of the wind.
fn bracing(plan: &Plan, look: &mut Look) {
    let soil = &plan.ground.soil;
    let share = |look: &mut Look, key: &str, value: f64| {
        look.must(value > 0.0 && value <= 1.0, key.to_owned(), value, Must::BeAPart);
    };
    if let Some(factor) = soil.wet_factor {
        share(look, "ground.soil.wet_factor", factor);
    }
    if let Some(value) = plan.ground.fouled_share {
        share(look, "ground.fouled_share", value);
    }
    if let Some(wind) = plan.ground.wind_m_per_s {
        look.must((0.0..=STRONGEST_WIND).contains(&wind), "ground.wind_m_per_s".into(), wind, Must::BeAWind);
    }
    if let Some(test) = &soil.pull_test {
        let key = |name: &str| format!("ground.soil.pull_test.{name}");
        let name = if test.pull_n.is_none() && test.pull_kg.is_some() { "pull_kg" } else { "pull_n" };
        look.positive(key(name), test.pull_n.or(test.pull_kg).unwrap_or(0.0));
        look.not_negative(key("height_m"), test.height_m());
        let (length_m, diameter_m) = plan.pulled_spike_m(test);
        if test.spike_length_m.is_some() {
            look.size(key("spike_length_m"), length_m);
        }
        if test.spike_diameter_m.is_some() {
            look.size(key("spike_diameter_m"), diameter_m);
        }
        if let Some(spikes) = test.spikes {
            look.at_least_one(key("spikes"), spikes);
        }
    }
    for (index, seen) in soil.corners_seen.iter().enumerate() {
        if let Some(deg) = seen.turn_deg {
            let key = format!("ground.soil.corners_seen[{index}].turn_deg");
            look.must(deg > 0.0 && deg <= 180.0, key, deg, Must::BeATurn);
        }
    }
    let brace = &plan.store.brace;
    let key = |name: &str| format!("store.brace.{name}");
    for (name, value) in [
        ("guy_height_m", brace.guy_height_m),
        ("post_length_m", brace.post_length_m),
        ("post_diameter_m", brace.post_diameter_m),
        ("safety_factor", brace.safety_factor),
    ] {
        if let Some(value) = value {
            look.size(key(name), value);
        }
    }
    for (name, value) in [
        ("longer_peg_minutes", brace.longer_peg_minutes),
        ("second_peg_minutes", brace.second_peg_minutes),
        ("post_minutes", brace.post_minutes),
        ("cut_post_minutes", brace.cut_post_minutes),
        ("carry_minutes", brace.carry_minutes),
    ] {
        look.not_negative(key(name), value.unwrap_or(0.0));
    }
    guy(look, &key("guy_angle_deg"), brace.guy_angle_deg, &key("pegs"), brace.pegs);
}

/// What is wrong with a guy's angle and pegs.
fn guy(look: &mut Look, angle_key: &str, angle_deg: Option<f64>, pegs_key: &str, pegs: Option<u32>) {
    if let Some(deg) = angle_deg {
        look.must(deg > 0.0 && deg < 90.0, angle_key.to_owned(), deg, Must::BeAnAngle);
    }
    if let Some(pegs) = pegs {
        look.at_least_one(pegs_key.to_owned(), pegs);
        look.must(pegs <= MOST_PEGS, pegs_key.to_owned(), f64::from(pegs), Must::BeSmaller);
    }
}

/// More pegs in one line than this are a slip of the pen.
const MOST_PEGS: u32 = 4;

/// No wind on record near the ground is stronger, metres a second.
pub(crate) const STRONGEST_WIND: f64 = 120.0;

fn rates(rates: &plan::Rates, look: &mut Look) {
    let key = |name: &str| format!("store.rates.{name}");
    for (name, value) in [
        ("unroll_minutes", rates.unroll_minutes()),
        ("tread_post_s", rates.tread_post_s()),
        ("join_minutes", rates.join_minutes()),
        ("brace_minutes", rates.brace_minutes()),
        ("further_post_minutes", rates.further_post_minutes()),
        ("power_minutes", rates.power_minutes()),
        ("fold_minutes", rates.fold_minutes()),
        ("pull_post_s", rates.pull_post_s()),
        ("untie_minutes", rates.untie_minutes()),
        ("draw_brace_minutes", rates.draw_brace_minutes()),
    ] {
        look.not_negative(key(name), value);
    }
    for (name, value) in [
        ("walk_m_per_s", rates.walk_m_per_s()),
        ("carry_m_per_s", rates.carry_m_per_s()),
        ("two_people_factor", rates.two_people_factor()),
        ("first_time_factor", rates.first_time_factor()),
        ("stony_factor", rates.stony_factor()),
        ("long_grass_factor", rates.long_grass_factor()),
        ("rain_factor", rates.rain_factor()),
        ("dark_factor", rates.dark_factor()),
    ] {
        look.positive(key(name), value);
    }
    for (name, value) in [("rolls_a_trip", rates.rolls_a_trip()), ("people", rates.people())] {
        look.at_least_one(key(name), value);
        look.must(value <= 2, key(name), f64::from(value), Must::BeSmaller);
    }
}

fn nets(plan: &Plan, look: &mut Look) {
    for (index, net) in plan.store.nets.iter().enumerate() {
        let key = |name: &str| format!("store.nets[{index}].{name}");
        look.size(key("length_m"), net.length_m);
        match (&net.panel_lengths_m, net.panels) {
            (Some(lengths_m), _) => {
                look.must(!lengths_m.is_empty(), key("panel_lengths_m"), 0.0, Must::BeAtLeastOne);
                for (panel, &length_m) in lengths_m.iter().enumerate() {
                    look.size(key(&format!("panel_lengths_m[{panel}]")), length_m);
                }
                let sum_m: f64 = lengths_m.iter().sum();
                if !lengths_m.is_empty() && (sum_m - net.length_m).abs() > geometry::PANEL_SUM_TOLERANCE_M {
                    look.0.push(Trouble::PanelSum { net: net.id.clone(), sum_m, length_m: net.length_m });
                }
            }
            (None, panels) => look.at_least_one(key("panels"), panels.unwrap_or(0)),
        }
        if net.panel_count() > geometry::MAX_PANELS {
            look.must(false, key("panels"), net.panel_count() as f64, Must::BeSmaller);
        }
        look.size(key("height_m"), net.height_m());
        look.positive(key("tension_n"), net.tension_n());
        look.at_least_one(key("spikes_per_post"), net.spikes_per_post());
        look.size(key("spike_length_m"), net.spike_length_m());
        look.size(key("spike_diameter_m"), net.spike_diameter_m());
        look.not_negative(key("line_resistance_ohm_per_m"), net.line_resistance_ohm_per_m());
        look.must(!net.live_line_heights_m().is_empty(), key("live_line_heights_m"), 0.0, Must::BeAtLeastOne);
        let lines = net.live_line_heights_m().len();
        look.must(lines <= MOST_LINES, key("live_line_heights_m"), lines as f64, Must::BeSmaller);
        for (line, &height_m) in net.live_line_heights_m().iter().enumerate() {
            look.size(key(&format!("live_line_heights_m[{line}]")), height_m);
        }
        let earthed = net.earthed_line_heights_m();
        look.must(earthed.len() <= MOST_LINES, key("earthed_line_heights_m"), earthed.len() as f64, Must::BeSmaller);
        for (line, &height_m) in earthed.iter().enumerate() {
            look.size(key(&format!("earthed_line_heights_m[{line}]")), height_m);
        }
    }
}

/// What is wrong with the statements of the run at a place in the plan; the outline is looked at elsewhere.
pub(crate) fn of_run(plan: &Plan, run: &Run, index: usize) -> Vec<Trouble> {
    let key = |name: &str| format!("runs[{index}].{name}");
    let mut look = Look(Vec::new());
    look.not_negative(key("leakage_s_per_m"), run.leakage_s_per_m());
    for line in run.lines() {
        let on = |name: &str| key(&line.map_or_else(|| name.to_owned(), |line| format!("branches[{line}].{name}")));
        for (zone, leakage) in run.zones_on(line).iter().enumerate() {
            look.not_negative(on(&format!("leakage_zones[{zone}].s_per_m")), leakage.s_per_m);
            look.not_negative(on(&format!("leakage_zones[{zone}].from_m")), leakage.from_m);
            look.not_negative(on(&format!("leakage_zones[{zone}].to_m")), leakage.to_m);
        }
        for (number, fault) in run.faults_on(line).iter().enumerate() {
            if matches!(fault.kind, FaultKind::Short | FaultKind::Join) {
                look.not_negative(on(&format!("faults[{number}].ohm")), fault.ohm.unwrap_or(0.0));
            }
        }
    }
    look.not_negative(key("join_ohm"), run.join_ohm.unwrap_or(0.0));
    look.not_negative(key("lead_ohm"), run.lead_ohm.unwrap_or(0.0));
    look.not_negative(key("lead_m"), run.lead_m.unwrap_or(0.0));
    look.not_negative(key("earth_stakes.lead_m"), run.earth_stakes.lead_m());
    if let Some(far_m) = run.energizer_at.map(|at| at.east_m.hypot(at.north_m)) {
        look.must(far_m <= geometry::FARTHEST_M, key("energizer_at"), far_m, Must::BeSmaller);
    }
    look.not_negative(key("earth_ohm"), run.earth_ohm.unwrap_or(0.0));
    look.size(key("strip_width_m"), run.strip_width_m());
    let sides = [("strip_left_m", run.strip_left_m), ("strip_right_m", run.strip_right_m)];
    for (name, side_m) in sides {
        look.not_negative(key(name), side_m.unwrap_or(0.0));
    }
    // One side may be nothing, both may not.
    let stated = sides.iter().find(|(_, side_m)| side_m.is_some_and(|side_m| side_m >= 0.0));
    if let Some((name, _)) = stated {
        look.size(key(name), run.strip_sides_m().iter().sum());
    }
    earth_stakes(&mut look, plan, run, &key);
    for (number, brace) in run.braces.iter().enumerate() {
        if let Some(stand_off_m) = brace.stand_off_m {
            look.size(key(&format!("braces[{number}].stand_off_m")), stand_off_m);
        }
        for (name, value) in [
            ("guy_height_m", brace.guy_height_m),
            ("peg_length_m", brace.peg_length_m),
            ("peg_diameter_m", brace.peg_diameter_m),
        ] {
            if let Some(value_m) = value {
                look.size(key(&format!("braces[{number}].{name}")), value_m);
            }
        }
        let of = |name: &str| key(&format!("braces[{number}].{name}"));
        guy(&mut look, &of("guy_angle_deg"), brace.guy_angle_deg, &of("pegs"), brace.pegs);
    }
    for (number, gate) in run.gates.iter().enumerate() {
        if let Some(width_m) = gate.width_m {
            look.size(key(&format!("gates[{number}].width_m")), width_m);
        }
    }
    if let Some(gap_m) = run.gap_under_net_m {
        look.not_negative(key("gap_under_net_m"), gap_m);
    }
    for (number, slope) in run.side_slopes.iter().enumerate() {
        if let Some(rises_m) = slope.rises_m {
            let name = key(&format!("side_slopes[{number}].rises_m"));
            look.must(rises_m.abs() <= slope::MOST_RISE_M, name, rises_m, Must::BeSmaller);
        } else if let Some(one_in) = slope.one_in {
            look.must(
                one_in.abs() >= slope::LEAST_ONE_IN,
                key(&format!("side_slopes[{number}].one_in")),
                one_in,
                Must::NotBeZero,
            );
        }
    }
    look.0
}

/// A run's earth stakes: a row by its figures, else the places.
fn earth_stakes(look: &mut Look, plan: &Plan, run: &Run, key: &impl Fn(&str) -> String) {
    let (stated, count) = (&run.earth_stakes, run.earth_stakes.count());
    if stated.places.is_empty() {
        look.at_least_one(key("earth_stakes.count"), count);
        look.must(count <= MOST_STAKES, key("earth_stakes.count"), f64::from(count), Must::BeSmaller);
        look.size(key("earth_stakes.spacing_m"), stated.spacing_m());
    } else if let Some(&at) = stated.places.get(MOST_STAKES as usize) {
        look.0.push(Trouble::TooManyStakes { count, at });
    } else if let Some((number, far_m)) = far_off(run) {
        look.must(false, key(&format!("earth_stakes.places[{number}]")), far_m, Must::BeSmaller);
    } else if run.earth_ohm.is_none()
        && let Some((one, other)) = crate::earth::together(plan, run)
    {
        look.0.push(Trouble::StakesTogether { one, other, at: stated.places[other] });
    }
}

/// The first earth stake that stands farther off than anything can be worked out, and how far.
fn far_off(run: &Run) -> Option<(usize, f64)> {
    let far_m = |at: &plan::Point| at.east_m.hypot(at.north_m);
    let mut stakes = run.earth_stakes.places.iter().map(far_m).enumerate();
    stakes.find(|(_, far_m)| far_m.is_nan() || *far_m > geometry::FARTHEST_M)
}

/// What nothing can be built with: keys of bad values, and kinds of net whose panels do not sum to their length.
pub(crate) struct Bad {
    keys: Vec<String>,
    sums: Vec<String>,
}

impl Bad {
    pub(crate) fn of(troubles: &[Trouble]) -> Self {
        let mut bad = Self { keys: Vec::new(), sums: Vec::new() };
        for trouble in troubles {
            match trouble {
                Trouble::BadValue { key, .. } => bad.keys.push(key.clone()),
                Trouble::PanelSum { net, .. } => bad.sums.push(net.clone()),
                Trouble::StakesTogether { .. } | Trouble::TooManyStakes { .. } => {
                    bad.keys.push("earth_stakes.places".to_owned());
                }
                _ => {}
            }
        }
        bad
    }

    /// Whether a key that holds this text is bad.
    pub(crate) fn any(&self, part: &str) -> bool {
        self.keys.iter().any(|key| key.contains(part))
    }

    /// Whether the panels of this kind of net do not sum to its length.
    pub(crate) fn sum_of(&self, net: &str) -> bool {
        self.sums.iter().any(|id| id == net)
    }
}
