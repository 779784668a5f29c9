//! What the keeper owns.

use super::{Rest, StatedBrace};
use crate::defaults;
use crate::rates::Rates;

/// What the keeper owns.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Store {
    /// Nets by kind.
    pub nets: Vec<NetKind>,
    /// Energizers by kind.
    pub energizers: Vec<Energizer>,
    /// Braces.
    pub brace: BraceRule,
    /// The mower.
    pub mower: Mower,
    /// Earth stakes.
    pub earth_stake: EarthStake,
    /// How long setting up and taking down take.
    pub rates: Rates,
    /// Unknown keys.
    pub rest: Rest,
}

/// One kind of net.
#[derive(Clone, Debug, PartialEq)]
pub struct NetKind {
    /// Its id, unique among nets.
    pub id: String,
    /// How many the keeper owns.
    pub count: Option<u32>,
    /// Length, metres.
    pub length_m: f64,
    /// Equal panels, where no lengths are given.
    pub panels: Option<u32>,
    /// Lengths of unequal panels in the direction of the chain, metres.
    pub panel_lengths_m: Option<Vec<f64>>,
    /// Height, metres.
    pub height_m: Option<f64>,
    /// Heights of the live lines, metres.
    pub live_line_heights_m: Option<Vec<f64>>,
    /// Heights of lines that are earthed, metres; none on most nets.
    pub earthed_line_heights_m: Option<Vec<f64>>,
    /// Resistance of one live line, ohms per metre.
    pub line_resistance_ohm_per_m: Option<f64>,
    /// Tension of the whole net, newtons.
    pub tension_n: Option<f64>,
    /// Spikes under one post.
    pub spikes_per_post: Option<u32>,
    /// Length of a spike, metres.
    pub spike_length_m: Option<f64>,
    /// Diameter of a spike, metres.
    pub spike_diameter_m: Option<f64>,
    /// Mass with its posts, kilograms.
    pub mass_kg: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl NetKind {
    /// A net of which no more is stated than every net has.
    pub fn new(id: impl Into<String>, length_m: f64, panels: u32) -> Self {
        Self {
            id: id.into(),
            count: None,
            length_m,
            panels: Some(panels),
            panel_lengths_m: None,
            height_m: None,
            live_line_heights_m: None,
            earthed_line_heights_m: None,
            line_resistance_ohm_per_m: None,
            tension_n: None,
            spikes_per_post: None,
            spike_length_m: None,
            spike_diameter_m: None,
            mass_kg: None,
            rest: Rest::new(),
        }
    }

    /// How many the keeper owns, stated or assumed.
    pub fn count(&self) -> u32 {
        self.count.unwrap_or(defaults::NET_COUNT)
    }

    /// Height, stated or assumed, metres.
    pub fn height_m(&self) -> f64 {
        self.height_m.unwrap_or(defaults::NET_HEIGHT_M)
    }

    /// Heights of the live lines, stated or assumed, metres.
    pub fn live_line_heights_m(&self) -> &[f64] {
        self.live_line_heights_m.as_deref().unwrap_or(&defaults::LIVE_LINE_HEIGHTS_M)
    }

    /// Heights of the earthed lines, metres; most nets have none.
    pub fn earthed_line_heights_m(&self) -> &[f64] {
        self.earthed_line_heights_m.as_deref().unwrap_or_default()
    }

    /// Resistance of one live line, stated or assumed, ohms per metre.
    pub fn line_resistance_ohm_per_m(&self) -> f64 {
        self.line_resistance_ohm_per_m.unwrap_or(defaults::LINE_RESISTANCE_OHM_PER_M)
    }

    /// Tension of the whole net, stated or assumed, newtons.
    pub fn tension_n(&self) -> f64 {
        self.tension_n.unwrap_or(defaults::TENSION_N)
    }

    /// Spikes under one post, stated or assumed.
    pub fn spikes_per_post(&self) -> u32 {
        self.spikes_per_post.unwrap_or(defaults::SPIKES_PER_POST)
    }

    /// Length of a spike, stated or assumed, metres.
    pub fn spike_length_m(&self) -> f64 {
        self.spike_length_m.unwrap_or(defaults::SPIKE_LENGTH_M)
    }

    /// Diameter of a spike, stated or assumed, metres.
    pub fn spike_diameter_m(&self) -> f64 {
        self.spike_diameter_m.unwrap_or(defaults::SPIKE_DIAMETER_M)
    }

    /// Mass with its posts, stated or assumed, kilograms.
    pub fn mass_kg(&self) -> f64 {
        self.mass_kg.unwrap_or(defaults::MASS_KG_PER_M * self.length_m)
    }

    /// Panels on one net.
    pub fn panel_count(&self) -> usize {
        match (&self.panel_lengths_m, self.panels) {
            (Some(lengths), _) => lengths.len(),
            (None, Some(panels)) => panels as usize,
            (None, None) => 0,
        }
    }
}

/// One kind of energizer, from its data sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Energizer {
    /// Its id, unique among energizers.
    pub id: String,
    /// How many the keeper owns.
    pub count: Option<u32>,
    /// Stored energy, joules.
    pub stored_j: Option<f64>,
    /// No-load voltage, kilovolts.
    pub no_load_kv: Option<f64>,
    /// Voltage at 500 ohms, kilovolts.
    pub kv_at_500_ohm: Option<f64>,
    /// Output at 500 ohms, joules.
    pub output_j_at_500_ohm: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Energizer {
    /// The energizer that is assumed where the store has none.
    pub fn assumed() -> Self {
        Self {
            id: String::new(),
            count: None,
            stored_j: None,
            no_load_kv: None,
            kv_at_500_ohm: None,
            output_j_at_500_ohm: None,
            rest: Rest::new(),
        }
    }

    /// How many the keeper owns, stated or assumed.
    pub fn count(&self) -> u32 {
        self.count.unwrap_or(defaults::ENERGIZER_COUNT)
    }

    /// No-load voltage, stated or assumed, kilovolts.
    pub fn no_load_kv(&self) -> f64 {
        self.no_load_kv.unwrap_or(defaults::NO_LOAD_KV)
    }

    /// Voltage at 500 ohms, stated or assumed in the default's proportion, kilovolts.
    pub fn kv_at_500_ohm(&self) -> f64 {
        self.kv_at_500_ohm.unwrap_or(self.no_load_kv() * defaults::KV_AT_500_OHM / defaults::NO_LOAD_KV)
    }

    /// Output at 500 ohms, stated or assumed in the default's proportion, joules.
    pub fn output_j_at_500_ohm(&self) -> f64 {
        self.output_j_at_500_ohm
            .unwrap_or(self.stored_j.unwrap_or(defaults::STORED_J) * defaults::OUTPUT_J_AT_500_OHM / defaults::STORED_J)
    }

    /// Stored energy, stated or assumed, joules.
    pub fn stored_j(&self) -> f64 {
        self.stored_j.unwrap_or(defaults::STORED_J)
    }
}

/// The keeper's braces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BraceRule {
    /// Length of the stake, metres.
    pub stake_length_m: Option<f64>,
    /// Diameter of the stake, metres.
    pub stake_diameter_m: Option<f64>,
    /// Height of the guy's loop on the stake, metres.
    pub loop_height_m: Option<f64>,
    /// Distance from the net to the stake, metres.
    pub stand_off_m: Option<f64>,
    /// Height at which a guy is tied to its post, metres.
    pub guy_height_m: Option<f64>,
    /// Angle of a guy to the ground, degrees.
    pub guy_angle_deg: Option<f64>,
    /// Pegs of a guy, in line.
    pub pegs: Option<u32>,
    /// Length of a brace post in the ground, metres.
    pub post_length_m: Option<f64>,
    /// Diameter of a brace post, metres.
    pub post_diameter_m: Option<f64>,
    /// Wanted ratio of hold to pull.
    pub safety_factor: Option<f64>,
    /// Driving a peg longer by 0.15 m, minutes.
    pub longer_peg_minutes: Option<f64>,
    /// Driving a second peg, minutes.
    pub second_peg_minutes: Option<f64>,
    /// Driving a brace post and tying it, minutes.
    pub post_minutes: Option<f64>,
    /// Each post more that a corner is cut over, minutes.
    pub cut_post_minutes: Option<f64>,
    /// Each thing more to carry and keep, minutes.
    pub carry_minutes: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl BraceRule {
    /// Length of the stake, stated or assumed, metres.
    pub fn stake_length_m(&self) -> f64 {
        self.stake_length_m.unwrap_or(defaults::BRACE_STAKE_LENGTH_M)
    }

    /// Diameter of the stake, stated or assumed, metres.
    pub fn stake_diameter_m(&self) -> f64 {
        self.stake_diameter_m.unwrap_or(defaults::BRACE_STAKE_DIAMETER_M)
    }

    /// Height of the loop, stated or assumed, metres.
    pub fn loop_height_m(&self) -> f64 {
        self.loop_height_m.unwrap_or(defaults::BRACE_LOOP_HEIGHT_M)
    }

    /// The stand-off made by the guy's stated angle, else stated, else assumed, metres.
    pub fn stand_off_m(&self) -> f64 {
        self.off_m(self.guy_height_m())
    }

    fn off_m(&self, tied_m: f64) -> f64 {
        let by_angle = self.guy_angle_deg.map(|deg| tied_m / deg.to_radians().tan());
        by_angle.or(self.stand_off_m).unwrap_or(defaults::STAND_OFF_M)
    }

    /// Where the guy of a stated brace is tied, no higher than the net, and its stand-off, metres: what the brace states
    /// counts before what all of them are, and an angle before a stand-off.
    pub fn guy_of(&self, brace: &StatedBrace, net_height_m: f64) -> (f64, f64) {
        let tied_m = brace.guy_height_m.unwrap_or(self.guy_height_m()).min(net_height_m);
        let by_angle = brace.guy_angle_deg.map(|deg| tied_m / deg.to_radians().tan());
        (tied_m, by_angle.or(brace.stand_off_m).unwrap_or_else(|| self.off_m(tied_m)))
    }

    /// Height at which a guy is tied, stated or assumed, metres.
    pub fn guy_height_m(&self) -> f64 {
        self.guy_height_m.unwrap_or(defaults::bracing::GUY_HEIGHT_M)
    }

    /// Pegs of a guy, stated or assumed.
    pub fn pegs(&self) -> u32 {
        self.pegs.unwrap_or(defaults::bracing::PEGS)
    }

    /// Length of a brace post, stated or assumed, metres.
    pub fn post_length_m(&self) -> f64 {
        self.post_length_m.unwrap_or(defaults::bracing::POST_LENGTH_M)
    }

    /// Diameter of a brace post, stated or assumed, metres.
    pub fn post_diameter_m(&self) -> f64 {
        self.post_diameter_m.unwrap_or(defaults::bracing::POST_DIAMETER_M)
    }

    /// Wanted ratio of hold to pull, stated or assumed.
    pub fn safety_factor(&self) -> f64 {
        self.safety_factor.unwrap_or(defaults::SAFETY_FACTOR)
    }

    /// Driving a longer peg, stated or assumed, minutes.
    pub fn longer_peg_minutes(&self) -> f64 {
        self.longer_peg_minutes.unwrap_or(defaults::bracing::LONGER_PEG_MINUTES)
    }

    /// Driving a second peg, stated or assumed, minutes.
    pub fn second_peg_minutes(&self) -> f64 {
        self.second_peg_minutes.unwrap_or(defaults::bracing::SECOND_PEG_MINUTES)
    }

    /// Driving a brace post, stated or assumed, minutes.
    pub fn post_minutes(&self) -> f64 {
        self.post_minutes.unwrap_or(defaults::bracing::POST_MINUTES)
    }

    /// Each post of a cut, stated or assumed, minutes.
    pub fn cut_post_minutes(&self) -> f64 {
        self.cut_post_minutes.unwrap_or(defaults::bracing::CUT_POST_MINUTES)
    }

    /// Each thing more to carry, stated or assumed, minutes.
    pub fn carry_minutes(&self) -> f64 {
        self.carry_minutes.unwrap_or(defaults::bracing::CARRY_MINUTES)
    }
}

/// The keeper's mower.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mower {
    /// Cut, metres.
    pub width_m: Option<f64>,
    /// Share of a cut that overlaps the one before.
    pub overlap: Option<f64>,
    /// Walking speed, metres a second.
    pub speed_m_per_s: Option<f64>,
    /// Share of the time in which it mows.
    pub efficiency: Option<f64>,
    /// Height of the cut, metres.
    pub cut_height_m: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Mower {
    /// Cut, stated or assumed, metres.
    pub fn width_m(&self) -> f64 {
        self.width_m.unwrap_or(defaults::MOWER_WIDTH_M)
    }

    /// Overlap, stated or assumed, a share of the cut.
    pub fn overlap(&self) -> f64 {
        self.overlap.unwrap_or(defaults::MOWER_OVERLAP)
    }

    /// Share of the time in which it mows, stated or assumed.
    pub fn efficiency(&self) -> f64 {
        self.efficiency.unwrap_or(defaults::MOWER_EFFICIENCY)
    }

    /// Speed, stated or assumed, metres a second.
    pub fn speed_m_per_s(&self) -> f64 {
        self.speed_m_per_s.unwrap_or(defaults::MOWER_SPEED_M_PER_S)
    }

    /// Height of the cut, stated or assumed, metres.
    pub fn cut_height_m(&self) -> f64 {
        self.cut_height_m.unwrap_or(defaults::CUT_HEIGHT_M)
    }
}

/// One earth stake of the keeper's.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EarthStake {
    /// Length in the ground, metres.
    pub length_m: Option<f64>,
    /// Diameter, metres.
    pub diameter_m: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl EarthStake {
    /// Length, stated or assumed, metres.
    pub fn length_m(&self) -> f64 {
        self.length_m.unwrap_or(defaults::EARTH_STAKE_LENGTH_M)
    }

    /// Diameter, stated or assumed, metres.
    pub fn diameter_m(&self) -> f64 {
        self.diameter_m.unwrap_or(defaults::EARTH_STAKE_DIAMETER_M)
    }
}
