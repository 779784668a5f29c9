//! Version 1 of the plan file: plain structs, the unit in the key.
//!
//! The keys of this page are a promise to other people's scripts: add, never rename.

use super::mirror::{Mirror, mirrored};
use crate::defaults;
use crate::model::{BraceKind, CoopKind, FaultKind, HazardKind, MowWay, Point, ReadingKind, Rest, RunStatus};

/// A plan for portable electric netting: what the keeper states, in SI units, the unit in the key.
#[derive(Clone, Debug, serde::Serialize, serde::Deserialize, schemars::JsonSchema)]
#[schemars(title = "Netfold plan")]
pub(crate) struct Plan {
    /// Always `netfold-plan`.
    #[schemars(extend("const" = "netfold-plan"))]
    format: String,
    /// The version of the file.
    #[schemars(extend("const" = 1))]
    version: u64,
    /// The plan's name.
    #[serde(default)]
    title: String,
    /// Where the coordinates start on WGS 84.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    origin: Option<Origin>,
    /// The ground.
    #[serde(default = "empty::<Ground>")]
    ground: Ground,
    /// What the keeper owns.
    #[serde(default = "empty::<Store>")]
    store: Store,
    /// Volts asked for at the weakest post, kilovolts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(extend("default" = defaults::TARGET_KV))]
    target_kv: Option<f64>,
    /// The coop.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    coop: Option<Coop>,
    /// Further coops.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    other_coops: Vec<Coop>,
    /// The runs.
    #[serde(default)]
    runs: Vec<Run>,
    /// What the keeper measured.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    readings: Vec<Reading>,
    /// Keys that this version does not know; they are kept.
    #[serde(flatten)]
    rest: Rest,
}

impl Mirror for Plan {
    type Of = crate::model::Plan;
    fn mirror(self) -> Self::Of {
        crate::model::Plan {
            title: self.title,
            origin: self.origin.mirror(),
            ground: self.ground.mirror(),
            store: self.store.mirror(),
            target_kv: self.target_kv,
            coop: self.coop.mirror(),
            other_coops: self.other_coops.mirror(),
            runs: self.runs.mirror(),
            readings: self.readings.mirror(),
            rest: self.rest,
        }
    }
}

impl Mirror for crate::model::Plan {
    type Of = Plan;
    fn mirror(self) -> Self::Of {
        Plan {
            format: super::FORMAT.to_owned(),
            version: super::VERSION,
            title: self.title,
            origin: self.origin.mirror(),
            ground: self.ground.mirror(),
            store: self.store.mirror(),
            target_kv: self.target_kv,
            coop: self.coop.mirror(),
            other_coops: self.other_coops.mirror(),
            runs: self.runs.mirror(),
            readings: self.readings.mirror(),
            rest: self.rest,
        }
    }
}

/// A part of which nothing was stated: what an empty object reads as.
fn empty<T: serde::de::DeserializeOwned>() -> T {
    serde_json::from_value(serde_json::Value::Object(Rest::new())).expect("every key of such a part has a default")
}

/// Whether a rate table says nothing, so that the file need not hold it.
fn unstated(rates: &Rates) -> bool {
    rates.clone().mirror() == crate::model::Rates::default()
}

mirrored! {
    /// The place on WGS 84 from which metres are counted.
    Origin {
        /// Latitude, degrees, north positive.
        latitude_deg: f64,
        /// Longitude, degrees, east positive.
        longitude_deg: f64,
    }

    /// The ground that the flock may use, and what stands on it.
    Ground {
        /// Outline of the paddock, `[east_m, north_m]` pairs.
        #[serde(default)]
        boundary: Vec<Point>,
        /// Places that a run keeps off.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        keep_outs: Vec<KeepOut>,
        /// Things that can hurt.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        hazards: Vec<Hazard>,
        /// The soil.
        #[serde(default = "empty::<Soil>")]
        soil: Soil,
    }

    /// A place that a run keeps off.
    KeepOut {
        /// Its name.
        #[serde(default)]
        name: String,
        /// Its outline.
        outline: Vec<Point>,
        /// Straight distance kept from it, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::CLEARANCE_M))]
        clearance_m: Option<f64>,
        /// Whether it may stand inside a run.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::MAY_ENCLOSE))]
        may_enclose: Option<bool>,
        /// Whether it is water.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        water: bool,
    }

    /// A thing that can hurt.
    Hazard {
        /// Its kind.
        kind: HazardKind,
        /// Its name.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        name: String,
        /// Its path, or one point.
        path: Vec<Point>,
        /// Voltage of an overhead line, kilovolts.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::OVERHEAD_LINE_VOLTAGE_KV))]
        line_voltage_kv: Option<f64>,
        /// Whether warning signs face a public way.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        signed: bool,
        /// Whether an unpowered gate or stile lets a public way through.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        unpowered_gate: bool,
    }

    /// The soil: a clay by its strength or a sand by its friction angle; with both, the clay counts.
    Soil {
        /// Resistivity, ohm metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::RESISTIVITY_OHM_M))]
        resistivity_ohm_m: Option<f64>,
        /// Undrained shear strength of a clay, kilopascals.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::UNDRAINED_STRENGTH_KPA))]
        undrained_strength_kpa: Option<f64>,
        /// Friction angle of a sand, degrees.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        friction_angle_deg: Option<f64>,
        /// Unit weight of a sand, kilonewtons per cubic metre.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::UNIT_WEIGHT_KN_PER_M3))]
        unit_weight_kn_per_m3: Option<f64>,
        /// Whether it is wet, which halves what a spike holds.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::WET))]
        wet: Option<bool>,
    }

    /// What the keeper owns.
    Store {
        /// Nets by kind.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        nets: Vec<NetKind>,
        /// Energizers by kind.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        energizers: Vec<Energizer>,
        /// Braces.
        #[serde(default = "empty::<BraceRule>")]
        brace: BraceRule,
        /// The mower.
        #[serde(default = "empty::<Mower>")]
        mower: Mower,
        /// Earth stakes.
        #[serde(default = "empty::<EarthStake>")]
        earth_stake: EarthStake,
        /// How long setting up and taking down take.
        #[serde(default = "empty::<Rates>", skip_serializing_if = "unstated")]
        rates: Rates,
    }

    /// One kind of net: a roll of fixed length with its posts built in.
    NetKind {
        /// Its id, unique among nets.
        id: String,
        /// How many the keeper owns.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::NET_COUNT))]
        count: Option<u32>,
        /// Length, metres.
        length_m: f64,
        /// Equal panels; needed unless their lengths are given.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        panels: Option<u32>,
        /// Lengths of unequal panels in the direction of the chain, metres; they sum to the length.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        panel_lengths_m: Option<Vec<f64>>,
        /// Height, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::NET_HEIGHT_M))]
        height_m: Option<f64>,
        /// Heights of the live lines, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::LIVE_LINE_HEIGHTS_M))]
        live_line_heights_m: Option<Vec<f64>>,
        /// Resistance of one live line, ohms per metre.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::LINE_RESISTANCE_OHM_PER_M))]
        line_resistance_ohm_per_m: Option<f64>,
        /// Tension of the whole net, newtons.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::TENSION_N))]
        tension_n: Option<f64>,
        /// Spikes under one post.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::SPIKES_PER_POST))]
        spikes_per_post: Option<u32>,
        /// Length of a spike, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::SPIKE_LENGTH_M))]
        spike_length_m: Option<f64>,
        /// Diameter of a spike, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::SPIKE_DIAMETER_M))]
        spike_diameter_m: Option<f64>,
        /// Mass with its posts, kilograms; by default 0.14 a metre.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        mass_kg: Option<f64>,
    }

    /// One kind of energizer, from its data sheet.
    Energizer {
        /// Its id, unique among energizers.
        id: String,
        /// How many the keeper owns.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::ENERGIZER_COUNT))]
        count: Option<u32>,
        /// Stored energy, joules.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::STORED_J))]
        stored_j: Option<f64>,
        /// No-load voltage, kilovolts.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::NO_LOAD_KV))]
        no_load_kv: Option<f64>,
        /// Voltage at 500 ohms, kilovolts; left out, in proportion to the no-load voltage.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::KV_AT_500_OHM))]
        kv_at_500_ohm: Option<f64>,
        /// Output at 500 ohms, joules; left out, in proportion to the stored energy.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::OUTPUT_J_AT_500_OHM))]
        output_j_at_500_ohm: Option<f64>,
    }

    /// Braces.
    BraceRule {
        /// Length of the stake, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::BRACE_STAKE_LENGTH_M))]
        stake_length_m: Option<f64>,
        /// Diameter of the stake, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::BRACE_STAKE_DIAMETER_M))]
        stake_diameter_m: Option<f64>,
        /// Height of the loop on the stake, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::BRACE_LOOP_HEIGHT_M))]
        loop_height_m: Option<f64>,
        /// Distance from the net to the stake, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::STAND_OFF_M))]
        stand_off_m: Option<f64>,
    }

    /// The mower.
    Mower {
        /// Cut, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::MOWER_WIDTH_M))]
        width_m: Option<f64>,
        /// Share of a cut that overlaps the one before.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::MOWER_OVERLAP))]
        overlap: Option<f64>,
        /// Walking speed, metres a second.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::MOWER_SPEED_M_PER_S))]
        speed_m_per_s: Option<f64>,
        /// Share of the time in which it mows.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::MOWER_EFFICIENCY))]
        efficiency: Option<f64>,
        /// Height of the cut, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::CUT_HEIGHT_M))]
        cut_height_m: Option<f64>,
    }

    /// One earth stake.
    EarthStake {
        /// Length in the ground, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::EARTH_STAKE_LENGTH_M))]
        length_m: Option<f64>,
        /// Diameter, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::EARTH_STAKE_DIAMETER_M))]
        diameter_m: Option<f64>,
    }

    /// The rate table of setting up and taking down: practised hands, soft ground, short dry grass, daylight.
    Rates {
        /// Handling of one net while it is rolled out, beside the walk, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::UNROLL_MINUTES))]
        unroll_minutes: Option<f64>,
        /// Treading in one post, seconds.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::TREAD_POST_S))]
        tread_post_s: Option<f64>,
        /// Tying and clipping one join, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::JOIN_MINUTES))]
        join_minutes: Option<f64>,
        /// Setting one brace, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::BRACE_MINUTES))]
        brace_minutes: Option<f64>,
        /// Clipping on the energizer, switching on and reading at the far end, beside the walk, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::POWER_MINUTES))]
        power_minutes: Option<f64>,
        /// Folding and tying one net, beside the walk, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::FOLD_MINUTES))]
        fold_minutes: Option<f64>,
        /// Pulling up one post, seconds.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::PULL_POST_S))]
        pull_post_s: Option<f64>,
        /// Untying and unclipping one join, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::UNTIE_MINUTES))]
        untie_minutes: Option<f64>,
        /// Drawing one brace, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::DRAW_BRACE_MINUTES))]
        draw_brace_minutes: Option<f64>,
        /// Walking with empty hands, metres a second.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::WALK_M_PER_S))]
        walk_m_per_s: Option<f64>,
        /// Walking with a roll in hand, metres a second.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::CARRY_M_PER_S))]
        carry_m_per_s: Option<f64>,
        /// Rolls carried in one trip: 1 or 2.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::ROLLS_A_TRIP))]
        rolls_a_trip: Option<u32>,
        /// People at work: 1 or 2.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::PEOPLE))]
        people: Option<u32>,
        /// Share of the minutes that two people need.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::TWO_PEOPLE_FACTOR))]
        two_people_factor: Option<f64>,
        /// How many times as long the first time takes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::FIRST_TIME_FACTOR))]
        first_time_factor: Option<f64>,
        /// Whether the ground is stony.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::NO_HINDRANCE))]
        stony: Option<bool>,
        /// Whether the grass is long.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::NO_HINDRANCE))]
        long_grass: Option<bool>,
        /// Whether it rains.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::NO_HINDRANCE))]
        rain: Option<bool>,
        /// Whether it is dark.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::NO_HINDRANCE))]
        dark: Option<bool>,
        /// How many times as long a post or a brace takes in stony ground.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::STONY_FACTOR))]
        stony_factor: Option<f64>,
        /// How many times as long rolling out, folding and walking take in long grass.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::LONG_GRASS_FACTOR))]
        long_grass_factor: Option<f64>,
        /// How many times as long everything takes in the rain.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::RAIN_FACTOR))]
        rain_factor: Option<f64>,
        /// How many times as long everything takes in the dark.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::DARK_FACTOR))]
        dark_factor: Option<f64>,
    }

    /// A movable coop.
    Coop {
        /// Its id, unique among coops.
        id: String,
        /// Its middle.
        at: Point,
        /// Which way its length points, degrees clockwise from north.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::HEADING_DEG))]
        heading_deg: Option<f64>,
        /// Length, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::COOP_LENGTH_M))]
        length_m: Option<f64>,
        /// Width, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::COOP_WIDTH_M))]
        width_m: Option<f64>,
        /// Birds in it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::BIRDS))]
        birds: Option<u32>,
        /// What birds.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = CoopKind::Layer))]
        kind: Option<CoopKind>,
    }

    /// One line of netting and the ground that it encloses.
    Run {
        /// Its id, unique among runs.
        id: String,
        /// Its name.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        name: String,
        /// Its outline.
        outline: Vec<Point>,
        /// Whether the outline closes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::CLOSED))]
        closed: Option<bool>,
        /// Ids of its nets in order; left out, the tool chooses from the store.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        nets: Option<Vec<String>>,
        /// Id of the coop inside.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        coop: Option<String>,
        /// Whether it stands.
        #[serde(default)]
        status: RunStatus,
        /// Id of its energizer; left out, the store's first.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        energizer: Option<String>,
        /// Where the live lead meets the net; left out, its first vertex.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        feed_at: Option<Point>,
        /// Its earth stakes, in line.
        #[serde(default = "empty::<EarthStakes>")]
        earth_stakes: EarthStakes,
        /// Measured resistance of its earth, ohms, in place of the stakes'.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        earth_ohm: Option<f64>,
        /// Leakage, siemens per metre of net.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::LEAKAGE_S_PER_M))]
        leakage_s_per_m: Option<f64>,
        /// Stretches of other leakage; of overlapping ones the later counts.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        leakage_zones: Vec<LeakageZone>,
        /// Resistance of every join, ohms; left out, joins are ideal.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        join_ohm: Option<f64>,
        /// Resistance of the lead to the fence, ohms.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::LEAD_OHM))]
        lead_ohm: Option<f64>,
        /// Where the chain starts, fixed, metres along the outline.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        start_m: Option<f64>,
        /// Whether a chain with a fixed start runs against the outline.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = false))]
        reversed: Option<bool>,
        /// Width of the mown strip, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::STRIP_WIDTH_M))]
        strip_width_m: Option<f64>,
        /// How the strip is mown.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = MowWay::BetweenCanes))]
        mow_way: Option<MowWay>,
        /// Where the rolls lie before setting up; left out, the feed point, else the boundary's nearest corner.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        drop_at: Option<Point>,
        /// Where the rolls are laid after taking down; left out, where they lay before.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        next_drop_at: Option<Point>,
        /// Whether the live lines are clipped together where the chain closes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::LIVE_LOOP))]
        live_loop: Option<bool>,
        /// Braces that stand or are decided.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        braces: Vec<StatedBrace>,
        /// Faults that are there or tried.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        faults: Vec<Fault>,
    }

    /// A run's earth stakes, in line.
    EarthStakes {
        /// How many.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::EARTH_STAKE_COUNT))]
        count: Option<u32>,
        /// Distance between neighbours, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::EARTH_STAKE_SPACING_M))]
        spacing_m: Option<f64>,
        /// Where the first stands.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<Point>,
    }

    /// A stretch of the line with a leakage of its own.
    LeakageZone {
        /// Start along the outline, metres.
        from_m: f64,
        /// End along the outline, metres; before the start where it runs over the first vertex.
        to_m: f64,
        /// Leakage, siemens per metre.
        s_per_m: f64,
    }

    /// A brace that the keeper has decided on.
    StatedBrace {
        /// The corner that it holds.
        at: Point,
        /// What it is made of.
        #[serde(default)]
        kind: BraceKind,
        /// Distance from the vertex to its stake, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        stand_off_m: Option<f64>,
    }

    /// A fault at a place.
    Fault {
        /// Where.
        at: Point,
        /// What.
        kind: FaultKind,
        /// Its resistance, ohms, for a short or a join.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        ohm: Option<f64>,
        /// How many live lines are broken, for broken lines.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        lines: Option<u32>,
    }

    /// A measurement.
    Reading {
        /// Id of the run.
        run: String,
        /// What was read.
        kind: ReadingKind,
        /// Where along the outline, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        along_m: Option<f64>,
        /// The value, in the unit of its kind.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        value: Option<f64>,
    }
}
