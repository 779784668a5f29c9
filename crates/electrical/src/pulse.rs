//! The pulse in time: the greatest voltage at every place, where the energy went, and the charge.
//!
//! The capacitor is let go at `t = 0`. Steps (see `stepper`) start at sixteen nanoseconds and are doubled
//! after every eight, so that one factorisation serves an octave of time: rates from a panel's
//! picoseconds to a clean fence's seconds cost the same. Where the energizer's inductance rings,
//! the step stays below 1/80 of the period until the ringing is spent. (A ringing that almost nothing
//! damps, `Q` above some hundred, is followed for 400 periods; [`Energy::residual`] tells.)
//!
//! Where the peaks lie is found in `peaks`, how finely and how long to step in `pace`. Should a peak fall among the very
//! first steps, or the energies not balance, the pulse is taken again from a first step 64 times shorter, and if need be
//! from shorter ones still.
//!
//! Check in every run: [`Energy::residual`], the energies by Simpson's rule against `Cs V0² / 2`.
//! Measured error of the defaults against exact modes (`tests/exact.rs`): 4e-5 of the value on
//! ordinary netting, below 3e-4 of the value, or of 0.5 % of the no-load figure, on two thousand nasty ones.

mod energy;
mod pace;
mod peaks;

use crate::circuit::{Circuit, CircuitFault, LineReadings, Mesh};
use crate::network::{Network, deal};
use crate::stepper::Stepper;
use crate::woven;
pub use energy::Energy;
use energy::Spent;
pub(crate) use pace::{Ringing, SPENT, longest_s, settled_s};
use pace::{is_over, may_be_over};
pub(crate) use peaks::{FIRST_DROP, NEGLIGIBLE, Peaks, vertex};

/// How finely the pulse is integrated. The default keeps every figure within 0.01 % or so.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Accuracy {
    /// Equal steps before the step is doubled.
    pub steps_per_octave: usize,
    /// First step, seconds.
    pub first_step_s: f64,
    /// Where nodes are laid.
    pub mesh: Mesh,
    /// Whether to go on until the energy is spent (true), or only until every peak is past.
    pub energy: bool,
}

impl Default for Accuracy {
    fn default() -> Self {
        Self { steps_per_octave: 8, first_step_s: 16e-9, mesh: Mesh::default(), energy: true }
    }
}

/// The greatest voltage over time at one place, from live line to remote earth.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Peak {
    /// Volts, not clamped to the no-load figure; 0 where the pulse never comes.
    pub volts: f64,
    /// When, seconds after the pulse starts; 0 where it jumps at once.
    pub at_s: f64,
}

/// One pulse of one circuit.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Pulse {
    /// The energizer's no-load figure, volts: no peak is to be credited above it.
    pub no_load_v: f64,
    /// Peaks of every line, in the circuit's order.
    pub lines: Vec<LineReadings<Peak>>,
    /// Where the energy went; complete only where [`Accuracy::energy`] was asked for.
    pub energy: Energy,
    /// Charge that left the energizer's capacitor by the end, coulombs.
    pub charge_c: f64,
    /// When the integration ended, seconds.
    pub end_s: f64,
    /// Steps taken.
    pub steps: usize,
}

/// Keeps its memory from one pulse to the next, for loops over many circuits.
#[derive(Debug, Clone, Default)]
pub struct PulseSolver {
    net: Network,
    stepper: Stepper,
    peaks: Peaks,
}

/// How many times a pulse is taken again from a shorter first step; how much shorter for a start.
pub(crate) const RETRIES: i32 = 4;
pub(crate) const SHORTER: f64 = 64.0;
/// What the energies may be out of balance before a shorter first step is tried.
pub(crate) const BALANCED: f64 = 5e-5;

impl PulseSolver {
    /// An empty one; memory grows with the first pulse.
    pub fn new() -> Self {
        Self::default()
    }

    /// As [`pulse()`], into a result that is used again.
    pub fn pulse_into(&mut self, circuit: &Circuit, accuracy: &Accuracy, out: &mut Pulse) -> Result<(), CircuitFault> {
        if circuit.is_woven() {
            return woven::pulse(circuit, accuracy, &mut self.peaks, out);
        }
        self.net.lay_out(circuit, &accuracy.mesh)?;
        self.solve(accuracy, out);
        out.no_load_v = circuit.source.v0;
        deal(circuit, self.peaks.found(), &mut out.lines);
        Ok(())
    }

    /// The peak volts at one node of a network, and the energy in a resistance from there to earth.
    pub(crate) fn touched(&mut self, net: &Network, node: usize, touch_ohm: f64, accuracy: &Accuracy) -> (f64, f64) {
        self.net.clone_from(net);
        // Shorts become leakage, so that the touch is the one short that is left.
        let touched = &mut self.net;
        touched.leak_s.clone_from(&touched.shunt_s);
        touched.shorts.clear();
        touched.shorts.push((node, 1.0 / touch_ohm));
        touched.shunt_s[node] += 1.0 / touch_ohm;
        touched.probes.clear();
        touched.probes.push(Some(node));
        let mut out = Pulse::default();
        self.solve(accuracy, &mut out);
        (self.peaks.tracks[0].best.volts, out.energy.shorts_j)
    }

    /// The laid-out network's pulse, from a shorter first step where that is needed.
    fn solve(&mut self, accuracy: &Accuracy, out: &mut Pulse) {
        let ringing = Ringing::of(&self.net);
        let mut first_step_s = accuracy.first_step_s;
        if !(first_step_s > 0.0 && first_step_s.is_finite()) {
            first_step_s = Accuracy::default().first_step_s;
        }
        let mut residual_before = f64::INFINITY;
        for retry in 0..=RETRIES {
            self.integrate(first_step_s, accuracy, &ringing, out);
            let first_block_s = first_step_s * steps_per_block(accuracy) as f64;
            let residual = if accuracy.energy { out.energy.residual().abs() } else { 0.0 };
            let unbalanced = residual > BALANCED && residual < 0.5 * residual_before;
            if retry == RETRIES || !(unbalanced || self.peaks.are_early(first_block_s)) {
                break;
            }
            residual_before = residual;
            first_step_s /= SHORTER.powi(retry + 1);
        }
    }

    fn integrate(&mut self, first_step_s: f64, accuracy: &Accuracy, ringing: &Ringing, out: &mut Pulse) {
        let Self { net, stepper, peaks } = self;
        let block = steps_per_block(accuracy);
        let longest_s = longest_s(net, 0.0);
        let stored_j = net.feeder.stored_j();
        stepper.start(net);
        let places = net.probes.iter().map(|probe| probe.map(|node| stepper.strands.place(node)));
        peaks.start(net.feeder.v0, &stepper.strands.volts, places);
        let mut spent = Spent::default();
        let mut power = if accuracy.energy { Spent::power(net, stepper) } else { Spent::default() };
        let mut step_s = first_step_s;
        out.steps = 0;
        'pulse: loop {
            let allowed_s = ringing.step_s(stepper.time_s);
            let capped = step_s > allowed_s;
            let taken_s = step_s.min(allowed_s);
            if (taken_s - stepper.step_s()).abs() > 0.0 {
                stepper.set_step(taken_s);
            }
            for pair in 1..=block / 2 {
                // Simpson's rule over each two steps.
                if accuracy.energy {
                    spent.add(&power, taken_s / 3.0);
                }
                for weight in [4.0, 1.0] {
                    stepper.advance();
                    peaks.note(&stepper.strands.volts, stepper.time_s);
                    if accuracy.energy {
                        power = Spent::power(net, stepper);
                        spent.add(&power, weight * taken_s / 3.0);
                    }
                }
                out.steps += 2;
                let is_last = pair == block / 2;
                if is_last || may_be_over(net, stepper, peaks, accuracy) {
                    peaks.look();
                    // Within a block only where every place falls: one that still rises has no top yet.
                    if (is_last || peaks.all_fall()) && is_over(net, stepper, peaks, accuracy) {
                        break 'pulse;
                    }
                }
            }
            if stepper.time_s > longest_s {
                break;
            }
            if !capped {
                step_s *= 2.0;
            }
        }
        out.energy = spent.into_energy(stored_j, stepper.left_j());
        out.charge_c = net.feeder.farad * (net.feeder.v0 - stepper.source_v);
        out.end_s = stepper.time_s;
    }
}

/// Integrates one pulse.
///
/// ```
/// use electrical::{Accuracy, Chain, Circuit, Line, Place, Short, Source, pulse};
/// // 40 nF at 7 kV behind 200 Ω, straight into 500 Ω: 5 kV, 0.7 J (docs/sources.md, electrical T9).
/// let source = Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 };
/// let mut chain = Chain::even(1.0, 0.0, 0.0, 0.0);
/// chain.shorts.push(Short { at: Place::after(0.0), ohm: 500.0 });
/// let circuit = Circuit { source, earth_ohm: 0.0, lines: vec![Line::open(chain)] };
/// let pulse = pulse(&circuit, &Accuracy::default()).expect("a plain circuit");
/// assert!((pulse.lines[0].feed.volts - 5000.0).abs() < 1e-6);
/// assert!((pulse.energy.shorts_j - 0.7).abs() < 1e-5);
/// ```
pub fn pulse(circuit: &Circuit, accuracy: &Accuracy) -> Result<Pulse, CircuitFault> {
    let mut out = Pulse::default();
    PulseSolver::new().pulse_into(circuit, accuracy, &mut out)?;
    Ok(out)
}

/// Steps of one size: an even number, for Simpson's rule.
fn steps_per_block(accuracy: &Accuracy) -> usize {
    accuracy.steps_per_octave.max(2).next_multiple_of(2)
}
