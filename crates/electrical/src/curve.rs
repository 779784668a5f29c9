//! The pulse over time at every place that is read: for a picture, and for other programs.
//!
//! The steps are those of [`mod@crate::pulse`], kept as they are taken; the peaks between them are finer there.
//! Volts to remote earth, not clamped; seconds after the pulse starts.

use crate::circuit::{Circuit, CircuitFault, LineReadings};
use crate::network::{Network, deal};
use crate::pulse::{Accuracy, Ringing};
use crate::stepper::Stepper;
use crate::woven;

/// The pulse is drawn until so little of the energizer's voltage is left, as a share of the no-load figure.
const DRAWN: f64 = 2e-3;
/// No curve has more samples than this.
const MOST_SAMPLES: usize = 4_000;

/// Voltages over time.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Curves {
    /// When the samples were taken, seconds; the first at the first instant.
    pub times_s: Vec<f64>,
    /// Volts at every place, one a time; zeros where the pulse never comes.
    pub lines: Vec<LineReadings<Vec<f64>>>,
}

/// Follows the pulse of a circuit until the energizer is nearly spent.
///
/// ```
/// use electrical::{Accuracy, Chain, Circuit, Line, Place, Source, curves};
/// // An energizer into 500 Ω alone falls as exp(-t / 28 µs) from 5 kV (docs/sources.md, electrical §2.2).
/// let source = Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 };
/// let mut chain = Chain::even(1.0, 0.0, 1.0 / 500.0, 0.0);
/// chain.marks.push(Place::before(1.0));
/// let circuit = Circuit { source, earth_ohm: 0.0, lines: vec![Line::open(chain)] };
/// let found = curves(&circuit, &Accuracy::default()).expect("a plain line");
/// for (time_s, volts) in found.times_s.iter().zip(&found.lines[0].chain.marks[0]) {
///     assert!((volts - 5000.0 * (-time_s / 28e-6).exp()).abs() < 1.0);
/// }
/// ```
pub fn curves(circuit: &Circuit, accuracy: &Accuracy) -> Result<Curves, CircuitFault> {
    if circuit.is_woven() {
        let (times_s, samples) = woven::curves(circuit, accuracy, DRAWN, MOST_SAMPLES, LONGEST_S)?;
        let mut lines = Vec::new();
        deal(circuit, samples.into_iter(), &mut lines);
        return Ok(Curves { times_s, lines });
    }
    let mut net = Network::default();
    net.lay_out(circuit, &accuracy.mesh)?;
    let ringing = Ringing::of(&net);
    let mut stepper = Stepper::default();
    stepper.start(&net);
    let block = accuracy.steps_per_octave.max(2);
    let mut step_s = accuracy.first_step_s;
    let mut times_s = vec![0.0];
    let mut samples: Vec<Vec<f64>> = vec![Vec::new(); net.probes.len()];
    let note = |stepper: &Stepper, samples: &mut [Vec<f64>]| {
        for (row, probe) in samples.iter_mut().zip(&net.probes) {
            row.push(probe.map_or(0.0, |node| stepper.strands.volts[stepper.strands.place(node)]));
        }
    };
    note(&stepper, &mut samples);
    let spent_v = DRAWN * circuit.source.v0.abs();
    let taken = |stepper: &Stepper| stepper.greatest_v() <= spent_v;
    while !taken(&stepper) && times_s.len() < MOST_SAMPLES {
        let allowed_s = ringing.step_s(stepper.time_s);
        stepper.set_step(step_s.min(allowed_s));
        for _ in 0..block {
            stepper.advance();
            times_s.push(stepper.time_s);
            note(&stepper, &mut samples);
        }
        if step_s <= allowed_s {
            step_s *= 2.0;
        }
        // A net that hardly leaks holds its volts for seconds: what a picture shows is long past.
        if stepper.time_s > LONGEST_S {
            break;
        }
    }
    let mut lines = Vec::new();
    deal(circuit, samples.into_iter(), &mut lines);
    Ok(Curves { times_s, lines })
}

/// No curve goes on for longer: a pulse may last 10 ms by the standard, seconds.
const LONGEST_S: f64 = 0.02;
