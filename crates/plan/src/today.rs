//! The ground today: one word that sets soil, leakage, holding, the nets' weight and the minutes together.
//!
//! Every figure that the keeper states or that is assumed is that of damp ground; the word multiplies it, by the
//! factors of `data/ground_today.json`. A measured earth resistance was measured and stays as it is. `ground.soil.wet`
//! is wet for the hold alone, whatever the word is. Without the word nothing is multiplied.

use std::sync::LazyLock;

use serde::{Deserialize, Serialize};

use crate::model::{Damp, Ground, NetKind, Plan, Run};

/// How the ground is today.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Today {
    /// No rain for long: the soil conducts badly, the grass hardly.
    Dry,
    /// As it mostly is; what is stated is taken to be of such ground.
    Damp,
    /// After rain: the soil conducts well, the grass too, and spikes hold half.
    Wet,
    /// Frozen: the soil conducts badly and spikes do not go in.
    Frozen,
}

impl Today {
    /// The words in the order of a switch.
    pub const ALL: [Self; 4] = [Self::Dry, Self::Damp, Self::Wet, Self::Frozen];

    /// What it multiplies.
    pub fn factors(self) -> Factors {
        let table = &*TABLE;
        match self {
            Self::Dry => table.dry,
            Self::Damp => table.damp,
            Self::Wet => table.wet,
            Self::Frozen => table.frozen,
        }
    }
}

/// What a word multiplies.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize)]
pub struct Factors {
    /// The soil's resistivity.
    pub resistivity: f64,
    /// The leakage along the line.
    pub leakage: f64,
    /// What a spike holds; `None` where it does not go in.
    pub hold: Option<f64>,
    /// The nets' mass.
    pub mass: f64,
    /// The minutes of setting up and taking down.
    pub minutes: f64,
}

/// The data file.
#[derive(Deserialize)]
struct Table {
    source: String,
    dry: Factors,
    damp: Factors,
    wet: Factors,
    frozen: Factors,
}

static TABLE: LazyLock<Table> = LazyLock::new(|| {
    serde_json::from_str(include_str!("../data/ground_today.json")).expect("the data file is as the tests hold it")
});

/// Where the factors come from.
pub fn source() -> &'static str {
    &TABLE.source
}

impl Ground {
    /// What today multiplies; ones where nothing is said.
    pub fn factors(&self) -> Factors {
        self.today.unwrap_or(Today::Damp).factors()
    }

    /// Resistivity of the soil today, ohm metres.
    pub fn resistivity_today_ohm_m(&self) -> f64 {
        self.soil.resistivity_ohm_m() * self.factors().resistivity
    }

    /// Resistivity of a damp place, stated or as the ground's own after rain, ohm metres; no word for today counted.
    pub fn damp_ohm_m(&self, damp: &Damp) -> f64 {
        damp.resistivity_ohm_m.unwrap_or_else(|| self.soil.resistivity_ohm_m() * Today::Wet.factors().resistivity)
    }

    /// Resistivity of a damp place today, ohm metres. Rain makes it no wetter than it is: on a wet day it stays as it
    /// was, or is as the ground round it where that is better.
    pub fn damp_today_ohm_m(&self, damp: &Damp) -> f64 {
        match self.today {
            Some(Today::Wet) => self.damp_ohm_m(damp).min(self.resistivity_today_ohm_m()),
            _ => self.damp_ohm_m(damp) * self.factors().resistivity,
        }
    }

    /// Whether any damp place is damper today than the ground round it.
    pub fn is_damper_today(&self) -> bool {
        self.damp.iter().any(|damp| self.damp_today_ohm_m(damp) < self.resistivity_today_ohm_m())
    }

    /// Whether the ground is wet for what it holds: today, or as stated for the hold alone.
    pub fn wet(&self) -> bool {
        self.soil.wet() || self.today == Some(Today::Wet)
    }
}

impl Plan {
    /// Leakage of a run today, siemens per metre.
    pub fn leakage_today_s_per_m(&self, run: &Run) -> f64 {
        run.leakage_s_per_m() * self.ground.factors().leakage
    }

    /// Mass of one net today, kilograms.
    pub fn mass_today_kg(&self, net: &NetKind) -> f64 {
        net.mass_kg() * self.ground.factors().mass
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::defaults::bracing::WET_FACTOR;

    #[test]
    fn the_data_file_reads_and_damp_changes_nothing() {
        let one = Factors { resistivity: 1.0, leakage: 1.0, hold: Some(1.0), mass: 1.0, minutes: 1.0 };
        assert_eq!(Today::Damp.factors(), one);
        assert_eq!(Today::Wet.factors().hold, Some(WET_FACTOR), "wet for the hold is told in two places alike");
        assert_eq!(Today::Frozen.factors().hold, None);
        assert_eq!(source(), crate::defaults::COMMON_PRACTICE);
        for today in Today::ALL {
            let Factors { resistivity, leakage, mass, minutes, .. } = today.factors();
            assert!([resistivity, leakage, mass, minutes].into_iter().all(|factor| factor > 0.0 && factor <= 10.0));
        }
    }

    #[test]
    fn a_damp_place_is_wet_once_and_dries_with_the_rest() {
        let mut ground = Ground::default();
        let unstated = Damp::default();
        let stated = |ohm_m: f64| Damp { resistivity_ohm_m: Some(ohm_m), ..Damp::default() };
        let of = |ground: &Ground, damp: &Damp, want: f64| {
            let got = ground.damp_today_ohm_m(damp);
            assert!((got - want).abs() < 1e-12, "{got} for {want} when {:?}", ground.today);
        };
        of(&ground, &unstated, 50.0);
        of(&ground, &stated(30.0), 30.0);
        for (today, of_unstated, of_30, of_80) in [
            (Today::Damp, 50.0, 30.0, 80.0),
            (Today::Wet, 50.0, 30.0, 50.0),
            (Today::Dry, 150.0, 90.0, 240.0),
            (Today::Frozen, 250.0, 150.0, 400.0),
        ] {
            ground.today = Some(today);
            of(&ground, &unstated, of_unstated);
            of(&ground, &stated(30.0), of_30);
            of(&ground, &stated(80.0), of_80);
        }
        ground.soil.resistivity_ohm_m = Some(300.0);
        ground.today = None;
        of(&ground, &unstated, 150.0);
    }

    #[test]
    fn wet_for_the_hold_alone_needs_no_word() {
        let mut ground = Ground::default();
        assert!(!ground.wet());
        ground.today = Some(Today::Wet);
        assert!(ground.wet());
        ground.soil.wet = Some(false);
        assert!(ground.wet(), "the word wets the hold too");
        assert!((ground.resistivity_today_ohm_m() - 50.0).abs() < 1e-12);
        ground.today = None;
        ground.soil.wet = Some(true);
        assert!(ground.wet() && (ground.resistivity_today_ohm_m() - 100.0).abs() < 1e-12);
    }
}
