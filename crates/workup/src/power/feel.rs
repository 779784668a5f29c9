//! What an animal that touches the net would feel, by its body and its feet, on soil from damp to very dry.
//!
//! Feet are discs on the soil (docs/sources.md, electrical 7). Soil reaches the animal twice: under its feet and round
//! the earth stakes, where their resistance is not measured. No figure is ever given for a person.

use electrical::Animal;
use plan::Plan;

use super::fence::Fence;

/// Who touches.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Who {
    /// A fox.
    Fox,
    /// A dog.
    Dog,
    /// A hen.
    Hen,
    /// A sheep.
    Sheep,
}

/// Body and feet of an animal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// From the touching part to the feet, ohms.
    pub body_ohm: f64,
    /// Radius of a foot as a disc, metres.
    pub foot_m: f64,
    /// Feet on the ground.
    pub feet: usize,
    /// Where the figures come from.
    pub source: &'static str,
}

/// The body of the standard load, and four paws of 2 cm: the animal whose figures the report gives.
const PAWS: &str = "500 Ω is the standard load; paws of 2 cm: common practice, no source";
/// The same with larger paws.
const LARGE_PAWS: &str = "500 Ω is the standard load; paws of 3 cm: common practice, no source";
/// Hens.
const HENS: &str = "hens 1.9 to 7 kΩ in stunning baths, Schütt-Abraham and others, from memory; two feet of 2 cm: common practice, no source";
/// Sheep.
const SHEEP: &str =
    "head of a sheep 150 to 1,000 Ω, Humane Slaughter Association; feet of 2.5 cm: common practice, no source";

impl Who {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Fox, Self::Dog, Self::Hen, Self::Sheep];

    /// Body and feet.
    pub fn body(self) -> Body {
        match self {
            Self::Fox => Body { body_ohm: 500.0, foot_m: 0.02, feet: 4, source: PAWS },
            Self::Dog => Body { body_ohm: 500.0, foot_m: 0.03, feet: 4, source: LARGE_PAWS },
            Self::Hen => Body { body_ohm: 3000.0, foot_m: 0.02, feet: 2, source: HENS },
            Self::Sheep => Body { body_ohm: 500.0, foot_m: 0.025, feet: 4, source: SHEEP },
        }
    }
}

/// Soils that the table goes through, ohm metres: damp, dry, very dry (docs/sources.md, electrical 6.3 and 7).
pub const SOILS_OHM_M: [f64; 3] = [100.0, 1000.0, 3000.0];

/// What is felt at one post.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Felt {
    /// Greatest volts across the body, kilovolts.
    pub kv: f64,
    /// Energy in the body, joules.
    pub j: f64,
    /// Charge through the body, coulombs.
    pub charge_c: f64,
}

/// What one kind of animal feels on one soil.
#[derive(Clone, Debug, PartialEq)]
pub struct Feels {
    /// Who.
    pub who: Who,
    /// On which soil, ohm metres.
    pub soil_ohm_m: f64,
    /// At every post, in the order of the lay's posts.
    pub posts: Vec<Felt>,
}

/// What every kind feels on every soil of the table; empty where the run's volts cannot be worked out.
pub fn feels(plan: &Plan, run: &str) -> Vec<Feels> {
    let mut all = Vec::new();
    for soil_ohm_m in SOILS_OHM_M {
        let there = super::on_soil(plan, soil_ohm_m);
        let Some(fence) = Fence::of(&there, run) else { return Vec::new() };
        for who in Who::ALL {
            let Body { body_ohm, foot_m, feet, .. } = who.body();
            let animal = Animal { body_ohm, feet_ohm: electrical::foot_ohm(soil_ohm_m, foot_m, feet) };
            let felt = |touch: &electrical::Touch| Felt {
                kv: touch.peak_v / 1e3,
                j: touch.energy_j,
                charge_c: touch.charge_c,
            };
            let Some(posts) = fence.touched(&animal, felt) else { return Vec::new() };
            all.push(Feels { who, soil_ohm_m, posts });
        }
    }
    all
}
