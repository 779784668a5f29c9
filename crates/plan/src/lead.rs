//! Conductors of a lead and their resistance at direct current.

use serde::{Deserialize, Serialize};

/// Diameter of the solid wire that a lead is counted as, metres: the usual one of field fences.
pub const WIRE_M: f64 = 2.5e-3;

/// What a lead is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Conductor {
    /// A solid wire of galvanised steel.
    Steel,
    /// A solid wire of aluminium.
    Aluminium,
    /// A solid wire of copper.
    Copper,
    /// One live line of the run's own netting.
    NetLine,
}

impl Conductor {
    /// Resistivity of the metal, ohm metres; `None` of netting, whose data sheet tells it. Fencing steel 0.17 micro-ohm
    /// metre (a published 56 ohms a mile of 12.5 gauge wire gives 0.172), aluminium and copper of conductors from memory.
    fn resistivity_ohm_m(self) -> Option<f64> {
        match self {
            Self::Steel => Some(1.7e-7),
            Self::Aluminium => Some(2.82e-8),
            Self::Copper => Some(1.72e-8),
            Self::NetLine => None,
        }
    }

    /// Resistance of a wire of [`WIRE_M`], or of a live line of so many, ohms per metre.
    pub fn ohm_per_m(self, net_line_ohm_per_m: f64) -> f64 {
        let area_m2 = std::f64::consts::PI * (WIRE_M / 2.0).powi(2);
        self.resistivity_ohm_m().map_or(net_line_ohm_per_m, |ohm_m| ohm_m / area_m2)
    }
}

#[cfg(test)]
mod tests {
    use super::Conductor;

    /// A published 56 ohms a mile for steel of 12.5 gauge (2.51 mm); aluminium and copper against their resistivity over
    /// area worked out apart (docs, sources: 5.74 and 3.5 ohms a kilometre).
    #[test]
    fn wires_of_a_lead_resist_as_published() {
        let of = |conductor: Conductor| conductor.ohm_per_m(11.9) * 1e3;
        let per_km = 56.0 / 1.609_344 * (2.51_f64 / 2.5).powi(2);
        assert!((of(Conductor::Steel) / per_km - 1.0).abs() < 0.02, "{} against {per_km}", of(Conductor::Steel));
        assert!((of(Conductor::Aluminium) - 5.74).abs() < 0.02);
        assert!((of(Conductor::Copper) - 3.5).abs() < 0.02);
        assert!((of(Conductor::NetLine) - 11_900.0).abs() < 1e-9);
    }
}
