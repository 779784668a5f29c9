//! Netting wired alternately live and earthed: two ladders side by side, tied by capacitance all along.
//!
//! The earthed ladder starts at the energizer's earth pole, which is not remote earth: the stakes lie between. Such a
//! network is no row of nodes, so the plain ladder's elimination does not serve. Here any graph of positive conductances
//! and capacitances is eliminated by the same star-mesh step, without a subtraction, in an order that is found once
//! (`order`). Steps in time follow the scheme of `stepper`; touches follow the contour of `touch`, with a driving-point
//! impedance between any two nodes. Slower than the ladder by some factor, and used only where earthed lines are.
//!
//! Taken where the model's page is silent: all leakage runs from the live lines to remote earth, none from or to the
//! earthed ones; joins stand in both ladders, faults in the live one alone; a piece of earthed lines that netting without
//! any cuts off from the feed floats, held by its capacitances; a live piece between two breaks is carried along by the
//! capacitance to its earthed neighbours and read as it comes.

mod graph;
mod order;
mod poles;
mod step;
mod touch;

use crate::animal::{Animal, Animals, Touch};
use crate::circuit::{Circuit, CircuitFault, Mesh};
use crate::network::{LEAST_SHORT_OHM, deal};
use crate::pulse::{Accuracy, Peaks, Pulse};
use crate::touch::Found;
use graph::Graph;
use order::Order;
use step::Stepping;
use touch::Spot;

/// As [`crate::PulseSolver::pulse_into`], with its memory for the peaks.
pub(crate) fn pulse(
    circuit: &Circuit,
    accuracy: &Accuracy,
    peaks: &mut Peaks,
    out: &mut Pulse,
) -> Result<(), CircuitFault> {
    let graph = Graph::new(circuit, &accuracy.mesh)?;
    let order = Order::new(&graph);
    Stepping::new(&graph, &order).pulse(accuracy, peaks, out);
    out.no_load_v = circuit.source.v0;
    deal(circuit, peaks.found(), &mut out.lines);
    Ok(())
}

/// As [`crate::curves()`]: times, and volts of every place at each; until so small a share of the no-load figure is left.
pub(crate) fn curves(
    circuit: &Circuit,
    accuracy: &Accuracy,
    drawn: f64,
    most_samples: usize,
    longest_s: f64,
) -> Result<(Vec<f64>, Vec<Vec<f64>>), CircuitFault> {
    let graph = Graph::new(circuit, &accuracy.mesh)?;
    let order = Order::new(&graph);
    Ok(Stepping::new(&graph, &order).curves(accuracy, drawn, most_samples, longest_s))
}

/// As [`crate::animals()`]: the greater of a touch through the feet and one of an earthed line.
pub(crate) fn animals(circuit: &Circuit, animal: &Animal, mesh: &Mesh) -> Result<Animals, CircuitFault> {
    let graph = Graph::new(circuit, mesh)?;
    let order = Order::new(&graph);
    let ohm = (animal.body_ohm + animal.feet_ohm).max(LEAST_SHORT_OHM);
    let body_ohm = animal.body_ohm.max(LEAST_SHORT_OHM);
    let to_feet = |probe: &graph::Probe| Spot { from: probe.live, to: graph::EARTH, ohm };
    let to_line = |probe: &graph::Probe| {
        let to = probe.earthed.filter(|to| *to != probe.live)?;
        Some(Spot { from: probe.live, to, ohm: body_ohm })
    };
    let spots: Vec<Spot> = graph.probes.iter().map(to_feet).chain(graph.probes.iter().filter_map(to_line)).collect();
    let charges = touch::charges(&graph, &order, &spots);
    let found: Vec<(Found, f64)> = touch::touches(&graph, &order, &spots).into_iter().zip(charges).collect();
    let body = |(found, charge_c): &(Found, f64), ohm: f64| {
        let share = animal.body_ohm / ohm;
        Touch { peak_v: found.peak_v * share, energy_j: found.square_vs / ohm * share, charge_c: *charge_c }
    };
    let (feet, lines) = found.split_at(graph.probes.len());
    let mut lines = lines.iter();
    let touches = graph.probes.iter().zip(feet).map(|(probe, feet)| {
        let mut touch = body(feet, ohm);
        if let Some(line) = to_line(probe).and_then(|_| lines.next()) {
            let line = body(line, body_ohm);
            touch.peak_v = touch.peak_v.max(line.peak_v);
            touch.energy_j = touch.energy_j.max(line.energy_j);
            touch.charge_c = touch.charge_c.max(line.charge_c);
        }
        touch
    });
    let touches: Vec<Touch> = touches.collect();
    let mut readings = Vec::new();
    deal(circuit, touches.into_iter(), &mut readings);
    Ok(readings)
}
