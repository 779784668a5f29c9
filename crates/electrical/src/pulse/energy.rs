//! Where the energy of a pulse goes: the capacitor's `Cs V0² / 2` into heat here and there, by Simpson's rule on the
//! powers of the steps.

use crate::network::Network;
use crate::stepper::Stepper;

/// Where the energy went, joules.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Energy {
    /// On the energizer's capacitor before the pulse.
    pub stored_j: f64,
    /// Lost inside the energizer.
    pub source_j: f64,
    /// Lost in the earth stakes.
    pub earth_j: f64,
    /// Lost along leads, live lines and joins.
    pub wire_j: f64,
    /// Lost through leakage.
    pub leakage_j: f64,
    /// Lost through shorts.
    pub shorts_j: f64,
    /// Still on capacitors (and in the inductance) at the end.
    pub left_j: f64,
}

impl Energy {
    /// What left the energizer's terminals for good, joules: all but its own loss and the rest.
    pub fn delivered_j(&self) -> f64 {
        self.earth_j + self.wire_j + self.leakage_j + self.shorts_j
    }

    /// (Spent + left - stored) / stored: what the integration lost or made.
    pub fn residual(&self) -> f64 {
        (self.source_j + self.delivered_j() + self.left_j - self.stored_j) / self.stored_j
    }
}

/// Watts, or joules, by where they are spent.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Spent {
    source: f64,
    earth: f64,
    wire: f64,
    leakage: f64,
    shorts: f64,
}

impl Spent {
    /// The powers at one instant: `R I²` of source and earth, `G V²` of wires, leakage and shorts.
    pub(super) fn power(net: &Network, stepper: &Stepper) -> Self {
        let squared_a = stepper.amperes * stepper.amperes;
        Self {
            source: net.feeder.source_ohm * squared_a,
            earth: net.feeder.earth_ohm * squared_a,
            wire: stepper.strands.wire_w(),
            leakage: stepper.strands.leakage_w(),
            shorts: stepper.strands.shorts_w(),
        }
    }

    pub(super) fn add(&mut self, power: &Self, weight: f64) {
        self.source += weight * power.source;
        self.earth += weight * power.earth;
        self.wire += weight * power.wire;
        self.leakage += weight * power.leakage;
        self.shorts += weight * power.shorts;
    }

    pub(super) fn into_energy(self, stored_j: f64, left_j: f64) -> Energy {
        Energy {
            stored_j,
            source_j: self.source,
            earth_j: self.earth,
            wire_j: self.wire,
            leakage_j: self.leakage,
            shorts_j: self.shorts,
            left_j,
        }
    }
}
