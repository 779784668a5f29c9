//! What a touching animal takes at every place, one place at a time.
//!
//! An animal is a branch of body and feet, `R = body + feet`, from the live line to remote earth.
//! How all places are found at once stands in `touch`; where that method doubts itself, the pulse is
//! stepped in time for that place with the branch in it.
//!
//! Where the netting is wired alternately it may also stand between a live and an earthed line, its feet apart from it: a
//! branch of the body alone. It then takes the greater of both, volts and joules each.
//!
//! Source of the model: docs/sources.md, electrical §7. Volts across, and joules in, the body alone.
//! Measured error of both: below 1e-4 (see `tests/exact.rs`).

use crate::circuit::{Circuit, CircuitFault, LineReadings, Mesh};
use crate::network::{LEAST_SHORT_OHM, Network, deal};
use crate::pulse::{Accuracy, PulseSolver};
use crate::touch::{charges, touches};
use crate::woven;

/// A touching animal: its body in series with its feet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Animal {
    /// From the touching part to the feet, ohms.
    pub body_ohm: f64,
    /// All feet together to remote earth, ohms (see [`crate::foot_ohm`]); 0 is allowed.
    pub feet_ohm: f64,
}

/// What the body takes.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Touch {
    /// Greatest voltage across the body alone, volts; not clamped to the no-load figure.
    pub peak_v: f64,
    /// Energy in the body alone, joules.
    pub energy_j: f64,
    /// Charge through it over the whole pulse, coulombs.
    pub charge_c: f64,
}

/// Touches at every place that is read, of every line, in the circuit's order.
pub type Animals = Vec<LineReadings<Touch>>;

/// What the animal takes at every mark, feed and short; 0 where the pulse never comes.
///
/// ```
/// use electrical::{Animal, Chain, Circuit, Line, Mesh, Source, animals, foot_ohm, one_stake_ohm};
/// // docs/sources.md, electrical §7, third row: 300 Ω·m, 1842 V and 0.26 J in the body.
/// let source = Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 };
/// let line = Line::open(Chain::even(1.0, 0.0, 0.0, 0.0));
/// let circuit = Circuit { source, earth_ohm: one_stake_ohm(300.0, 1.0, 0.012), lines: vec![line] };
/// let animal = Animal { body_ohm: 500.0, feet_ohm: foot_ohm(300.0, 0.02, 4) };
/// let touch = animals(&circuit, &animal, &Mesh::default()).expect("a plain circuit")[0].feed;
/// assert!((touch.peak_v - 1842.0).abs() < 1.0);
/// assert!((touch.energy_j - 0.26).abs() < 0.005);
/// ```
pub fn animals(circuit: &Circuit, animal: &Animal, mesh: &Mesh) -> Result<Animals, CircuitFault> {
    for (what, value) in [("the animal's body", animal.body_ohm), ("the animal's feet", animal.feet_ohm)] {
        if !(value >= 0.0 && value.is_finite()) {
            return Err(CircuitFault::Figure { what, value, must: "zero or above" });
        }
    }
    if circuit.is_woven() {
        return woven::animals(circuit, animal, mesh);
    }
    let mut net = Network::default();
    net.lay_out(circuit, mesh)?;
    let touch_ohm = (animal.body_ohm + animal.feet_ohm).max(LEAST_SHORT_OHM);
    let share = animal.body_ohm / touch_ohm;
    let mut solver = PulseSolver::new();
    let accuracy = Accuracy { mesh: *mesh, ..Accuracy::default() };
    let found = touches(&net, touch_ohm);
    let charges = charges(&net, touch_ohm);
    let touches = net.probes.iter().zip(found).zip(charges).map(|((probe, found), charge_c)| {
        let (peak_v, energy_j) = match (probe, found) {
            (None, _) => (0.0, 0.0),
            (Some(_), Some(found)) => (found.peak_v, found.square_vs / touch_ohm),
            (Some(node), None) => solver.touched(&net, *node, touch_ohm, &accuracy),
        };
        Touch { peak_v: peak_v * share, energy_j: energy_j * share, charge_c }
    });
    let mut lines = Vec::new();
    deal(circuit, touches, &mut lines);
    Ok(lines)
}
