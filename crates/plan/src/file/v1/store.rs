//! What the keeper owns, in version 1.

use super::empty;
use crate::defaults;
use crate::file::mirror::{Mirror, mirrored};

/// Whether a rate table says nothing, so that the file need not hold it.
fn unstated(rates: &Rates) -> bool {
    rates.clone().mirror() == crate::model::Rates::default()
}

mirrored! {
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
        /// Heights of the lines that are earthed, metres, on a net wired alternately; left out, there are none.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        earthed_line_heights_m: Option<Vec<f64>>,
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
        /// Height at which a guy is tied to its post, metres, but no higher than the net.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::bracing::GUY_HEIGHT_M))]
        guy_height_m: Option<f64>,
        /// Angle of a guy to the ground, degrees; left out, as the stand-off makes it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        guy_angle_deg: Option<f64>,
        /// Pegs of a guy, in line.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::bracing::PEGS))]
        pegs: Option<u32>,
        /// Length of a brace post in the ground, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::bracing::POST_LENGTH_M))]
        post_length_m: Option<f64>,
        /// Diameter of a brace post, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::bracing::POST_DIAMETER_M))]
        post_diameter_m: Option<f64>,
        /// Wanted ratio of hold to pull.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::SAFETY_FACTOR))]
        safety_factor: Option<f64>,
        /// Driving a peg longer by 0.15 m, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::bracing::LONGER_PEG_MINUTES))]
        longer_peg_minutes: Option<f64>,
        /// Driving a second peg, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::bracing::SECOND_PEG_MINUTES))]
        second_peg_minutes: Option<f64>,
        /// Driving a brace post and tying it, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::bracing::POST_MINUTES))]
        post_minutes: Option<f64>,
        /// Each post more that a corner is cut over, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::bracing::CUT_POST_MINUTES))]
        cut_post_minutes: Option<f64>,
        /// Each thing more to carry and keep, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::bracing::CARRY_MINUTES))]
        carry_minutes: Option<f64>,
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
        /// Setting one further post at a dip or a ridge, beside the walk, minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::rates::FURTHER_POST_MINUTES))]
        further_post_minutes: Option<f64>,
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
}
