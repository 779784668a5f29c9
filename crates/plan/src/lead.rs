//! Conductors of a lead and their resistance at direct current.

/// Diameter of the solid wire that a lead is counted as, metres: the usual one of field fences.
pub const WIRE_M: f64 = 2.5e-3;

/// What a solid wire of a lead is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Conductor {
    /// Galvanised steel.
    Steel,
    /// Aluminium.
    Aluminium,
    /// Copper.
    Copper,
}

impl Conductor {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Steel, Self::Aluminium, Self::Copper];

    /// Resistivity, ohm metres: fencing steel 0.17 micro-ohm metre (a published 56 ohms a mile of 12.5 gauge wire gives
    /// 0.172), aluminium and copper of conductors from memory.
    pub fn resistivity_ohm_m(self) -> f64 {
        match self {
            Self::Steel => 1.7e-7,
            Self::Aluminium => 2.82e-8,
            Self::Copper => 1.72e-8,
        }
    }

    /// Resistance of a wire of [`WIRE_M`], ohms per metre.
    pub fn ohm_per_m(self) -> f64 {
        self.resistivity_ohm_m() / (std::f64::consts::PI * (WIRE_M / 2.0).powi(2))
    }
}

#[cfg(test)]
mod tests {
    use super::Conductor;

    /// A published 56 ohms a mile for steel of 12.5 gauge (2.51 mm); aluminium and copper against their resistivity over
    /// area worked out apart (docs, sources: 5.74 and 3.5 ohms a kilometre).
    #[test]
    fn wires_of_a_lead_resist_as_published() {
        let of = |conductor: Conductor| conductor.ohm_per_m() * 1e3;
        let per_km = 56.0 / 1.609_344 * (2.51_f64 / 2.5).powi(2);
        assert!((of(Conductor::Steel) / per_km - 1.0).abs() < 0.02, "{} against {per_km}", of(Conductor::Steel));
        assert!((of(Conductor::Aluminium) - 5.74).abs() < 0.02);
        assert!((of(Conductor::Copper) - 3.5).abs() < 0.02);
    }
}
