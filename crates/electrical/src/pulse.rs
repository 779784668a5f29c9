//! The pulse in time: the greatest voltage at every place, where the energy went, and the charge.
//!
//! The capacitor is let go at `t = 0`. Steps (see `stepper`) start at sixteen nanoseconds and are doubled
//! after every eight, so that one factorisation serves an octave of time: rates from a panel's
//! picoseconds to a clean fence's seconds cost the same. Where the energizer's inductance rings,
//! the step stays below 1/80 of the period until the ringing is spent. (A ringing that almost nothing
//! damps, `Q` above some hundred, is followed for 400 periods; [`Energy::residual`] tells.)
//!
//! A peak is a parabola through three samples; the first instant counts as well (a node without
//! capacitance jumps there), and so does the end (where nothing leaks, the greatest value is an
//! asymptote). Should a peak fall among the very first steps, or the energies not balance, the
//! pulse is taken again from a first step 64 times shorter, and if need be from shorter ones still.
//!
//! Check in every run: [`Energy::residual`], the energies by Simpson's rule against `Cs V0² / 2`.
//! Measured error of the defaults against exact modes (`tests/exact.rs`): 4e-5 of the value on
//! ordinary netting, below 3e-4 of the value, or of 0.5 % of the no-load figure, on two thousand nasty ones.

use crate::circuit::{Circuit, CircuitFault, LineReadings, Mesh};
use crate::network::{Network, TERMINAL, deal};
use crate::ringing::{Finder, Oscillation};
use crate::stepper::Stepper;
use crate::woven;

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

/// What is known of the peak at one place, none where the pulse never comes.
#[derive(Debug, Clone, Copy, Default)]
struct Track {
    /// Where it stands among the stepper's voltages.
    place: Option<usize>,
    at_once_v: f64,
    first_v: f64,
    last_v: f64,
    best: Peak,
}

/// The peaks of all places. Voltages are noted as they come, and looked at a block at a time: most places have no
/// peak in a block, and the highest of its samples tells.
#[derive(Debug, Clone, Default)]
struct Peaks {
    tracks: Vec<Track>,
    /// Voltages of the last two samples already looked at and of all since, row after row, with their times.
    noted_v: Vec<f64>,
    times_s: Vec<f64>,
    /// The highest of all but the first of them, at every place.
    highest_v: Vec<f64>,
    /// What does not count.
    counts_v: f64,
    /// The least peak so far of all places that the pulse reaches.
    lowest_v: f64,
}

/// How many times a pulse is taken again from a shorter first step; how much shorter for a start.
pub(crate) const RETRIES: i32 = 4;
pub(crate) const SHORTER: f64 = 64.0;
/// Steps to one period of ringing of quality `Q`: the scheme damps each step by `y⁴ / 72`, `y` the
/// angle of a step, so that `80 (0.7 Q)^(1/3)` steps keep the energy lost to it below 2e-5.
pub(crate) const STEPS_PER_PERIOD: f64 = 80.0;
pub(crate) const MOST_STEPS_PER_PERIOD: f64 = 400.0;
/// The ringing is spent after so many of its decay times, or after so many periods.
pub(crate) const RINGING_DECAYS: f64 = 10.0;
pub(crate) const RINGING_PERIODS: f64 = 400.0;
/// The pulse is over when so little of the energy is left.
pub(crate) const SPENT: f64 = 1e-9;
/// Voltages below so much of `V0` do not count: 0.1 % of 0.5 % of the no-load figure.
pub(crate) const NEGLIGIBLE: f64 = 5e-6;
/// Samples lower than so much of the peak so far have no top above it between them: steps are an eighth of the time, or
/// an eightieth of a period.
const STILL_NEAR: f64 = 0.98;
/// How much of a peak at the first instant may be gone by the first sample.
pub(crate) const FIRST_DROP: f64 = 2e-4;
/// What the energies may be out of balance before a shorter first step is tried.
pub(crate) const BALANCED: f64 = 5e-5;
/// Time constants after which even an asymptote is reached.
pub(crate) const DECAYS: f64 = 30.0;
/// No pulse is followed for longer, seconds.
pub(crate) const LONGEST_S: f64 = 1e6;

impl PulseSolver {
    /// An empty one; memory grows with the first pulse.
    pub fn new() -> Self {
        Self::default()
    }

    /// As [`pulse()`], into a result that is used again.
    pub fn pulse_into(&mut self, circuit: &Circuit, accuracy: &Accuracy, out: &mut Pulse) -> Result<(), CircuitFault> {
        if circuit.is_woven() {
            return woven::pulse(circuit, accuracy, out);
        }
        self.net.lay_out(circuit, &accuracy.mesh)?;
        self.solve(accuracy, out);
        out.no_load_v = circuit.source.v0;
        deal(circuit, self.peaks.tracks.iter().map(|track| track.best), &mut out.lines);
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
            if retry == RETRIES || !(unbalanced || self.peaks_early(first_block_s)) {
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
        peaks.start(net, stepper);
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
                    peaks.note(stepper);
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

    /// Whether a peak that counts fell among the first block's steps, where they are too coarse, or
    /// may have fallen between the first instant and the first sample.
    fn peaks_early(&self, first_block_s: f64) -> bool {
        let counts_v = NEGLIGIBLE * self.net.feeder.v0;
        self.peaks.tracks.iter().any(|track| {
            let Peak { volts, at_s } = track.best;
            if at_s > 0.0 {
                at_s <= first_block_s && volts - track.at_once_v > counts_v
            } else {
                track.at_once_v - track.first_v > FIRST_DROP * volts + counts_v
            }
        })
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

/// When even the slowest part of the network has settled: no time constant is longer than
/// `(all resistance in series + 1 / all leakage) × all capacitance`, by Thomson's principle.
/// `touch_s` is leakage besides the network's own.
pub(crate) fn longest_s(net: &Network, touch_s: f64) -> f64 {
    let feeder = &net.feeder;
    let series_ohm: f64 = feeder.ohm() + net.ahead_s.iter().filter(|s| **s > 0.0).map(|s| 1.0 / s).sum::<f64>();
    let leak_s: f64 = net.shunt_s.iter().sum::<f64>() + touch_s;
    let fence_f: f64 = net.capacitance_f.iter().sum();
    let slowest_s =
        if leak_s > 0.0 { (series_ohm + 1.0 / leak_s) * (fence_f + feeder.farad) } else { series_ohm * fence_f };
    let inductive_s = if feeder.henry > 0.0 { 2.0 * feeder.henry / feeder.ohm() } else { 0.0 };
    (DECAYS * (slowest_s + inductive_s)).min(LONGEST_S)
}

/// Whether nothing that is asked for is still to come. Without inductance no voltage ever rises above the greatest of
/// now, so that every peak is past once that is below the least of them; with it, once the energy is spent.
fn is_over(net: &Network, stepper: &Stepper, peaks: &Peaks, accuracy: &Accuracy) -> bool {
    let inductive = net.feeder.henry > 0.0;
    if (accuracy.energy || inductive) && stepper.left_j() >= SPENT * net.feeder.stored_j() {
        return false;
    }
    inductive || stepper.greatest_v() <= peaks.lowest_v.max(peaks.counts_v)
}

/// Whether [`is_over`] is worth asking, from the energizer alone: most of the time it holds the answer.
fn may_be_over(net: &Network, stepper: &Stepper, peaks: &Peaks, accuracy: &Accuracy) -> bool {
    if accuracy.energy || net.feeder.henry > 0.0 {
        return stepper.source_j() < SPENT * net.feeder.stored_j();
    }
    stepper.source_v.abs() <= peaks.lowest_v.max(peaks.counts_v)
}

/// How the inductance bounds the step.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Ringing {
    longest_step_s: f64,
    until_s: f64,
}

impl Ringing {
    pub(crate) fn of(net: &Network) -> Self {
        let Some(Oscillation { pole, .. }) = Finder::default().find(net, &[], TERMINAL, None) else {
            return Self { longest_step_s: f64::INFINITY, until_s: 0.0 };
        };
        let period_s = 2.0 * std::f64::consts::PI / pole.im;
        let decay = (-pole.re).max(f64::MIN_POSITIVE);
        let steps = STEPS_PER_PERIOD * (0.7 * pole.im / (2.0 * decay)).cbrt();
        Self {
            longest_step_s: period_s / steps.clamp(STEPS_PER_PERIOD, MOST_STEPS_PER_PERIOD),
            until_s: (RINGING_DECAYS / decay).min(RINGING_PERIODS * period_s),
        }
    }

    pub(crate) fn step_s(&self, time_s: f64) -> f64 {
        if time_s < self.until_s { self.longest_step_s } else { f64::INFINITY }
    }
}

impl Peaks {
    /// Begins with the first instant's voltages.
    fn start(&mut self, net: &Network, stepper: &Stepper) {
        let volts = &stepper.strands.volts;
        self.counts_v = NEGLIGIBLE * net.feeder.v0;
        self.tracks.clear();
        self.tracks.extend(net.probes.iter().map(|probe| {
            let place = probe.map(|node| stepper.strands.place(node));
            let volts = place.map_or(0.0, |place| volts[place]);
            Track { place, at_once_v: volts, first_v: volts, last_v: volts, best: Peak { volts, at_s: 0.0 } }
        }));
        // Before the first instant there is no sample that it could be a top against.
        self.noted_v.clear();
        self.noted_v.resize(volts.len(), f64::INFINITY);
        self.noted_v.extend_from_slice(volts);
        self.times_s.clear();
        self.times_s.extend([0.0; 2]);
        self.highest_v.clone_from(volts);
        self.find_lowest();
    }

    /// Notes the voltages of a step.
    fn note(&mut self, stepper: &Stepper) {
        let volts = &stepper.strands.volts;
        self.noted_v.extend_from_slice(volts);
        self.times_s.push(stepper.time_s);
        for (highest_v, now_v) in self.highest_v.iter_mut().zip(volts) {
            // Not `max`: this one is a single instruction, and no voltage is a NaN.
            *highest_v = if *highest_v > *now_v { *highest_v } else { *now_v };
        }
    }

    /// Looks at what was noted since the last time.
    fn look(&mut self) {
        let Self { tracks, noted_v, times_s, highest_v, .. } = self;
        let nodes = highest_v.len();
        let last = times_s.len() - 1;
        if last < 2 {
            return;
        }
        for track in tracks.iter_mut() {
            let Some(place) = track.place else { continue };
            let volts = |sample: usize| noted_v[sample * nodes + place];
            if times_s[1] <= 0.0 {
                track.first_v = volts(2);
            }
            track.last_v = volts(last);
            let highest_v = highest_v[place];
            if track.last_v >= highest_v {
                // Still rising: any top before is lower.
                if track.last_v > track.best.volts {
                    track.best = Peak { volts: track.last_v, at_s: times_s[last] };
                }
            } else if highest_v > STILL_NEAR * track.best.volts {
                for (first, times_s) in times_s.windows(3).enumerate() {
                    let around_v = [volts(first), volts(first + 1), volts(first + 2)];
                    track.sample(around_v, [times_s[0], times_s[1], times_s[2]], self.counts_v);
                }
            }
        }
        highest_v.copy_from_slice(&noted_v[last * nodes..]);
        noted_v.drain(..(last - 1) * nodes);
        times_s.drain(..last - 1);
        self.find_lowest();
    }

    fn find_lowest(&mut self) {
        let reached = self.tracks.iter().filter(|track| track.place.is_some());
        self.lowest_v = reached.fold(f64::INFINITY, |least, track| least.min(track.best.volts));
    }

    /// Whether every place that the pulse reaches has come down from its peak.
    fn all_fall(&self) -> bool {
        self.tracks.iter().all(|track| track.last_v < track.best.volts || track.best.volts <= self.counts_v)
    }
}

impl Track {
    /// Takes the last of three samples. A top below `counts_v` is left as sampled: far out, before the pulse comes,
    /// there are many.
    fn sample(&mut self, around_v: [f64; 3], times_s: [f64; 3], counts_v: f64) {
        let [earlier_v, last_v, now_v] = around_v;
        if last_v >= now_v && last_v > earlier_v && last_v > counts_v {
            if let Some(top) = vertex(around_v, times_s, self.best.volts) {
                self.best = top;
            }
        } else if now_v > self.best.volts {
            self.best = Peak { volts: now_v, at_s: times_s[2] };
        }
    }
}

/// Top of the parabola through three samples of which the middle one is the greatest: over the
/// logarithm of time, where a pulse's rise and fall are nearly alike, or over time from its start.
/// `None` where it is not above `best_v`.
pub(crate) fn vertex(volts: [f64; 3], times_s: [f64; 3], best_v: f64) -> Option<Peak> {
    let logarithmic = times_s[0] > 0.0;
    let [a, b, c] = if logarithmic { times_s.map(f64::ln) } else { times_s };
    let rising = (volts[1] - volts[0]) / (b - a);
    let falling = (volts[2] - volts[1]) / (c - b);
    let bend = (falling - rising) / (c - a);
    if bend >= 0.0 {
        return (volts[1] > best_v).then_some(Peak { volts: volts[1], at_s: times_s[1] });
    }
    let slope = rising + bend * (b - a);
    let top_v = volts[1] - slope * slope / (4.0 * bend);
    (top_v > best_v).then(|| {
        let top = b - slope / (2.0 * bend);
        Peak { volts: top_v, at_s: if logarithmic { top.exp() } else { top } }
    })
}

/// Watts, or joules, by where they are spent.
#[derive(Debug, Clone, Copy, Default)]
struct Spent {
    source: f64,
    earth: f64,
    wire: f64,
    leakage: f64,
    shorts: f64,
}

impl Spent {
    fn power(net: &Network, stepper: &Stepper) -> Self {
        let squared_a = stepper.amperes * stepper.amperes;
        Self {
            source: net.feeder.source_ohm * squared_a,
            earth: net.feeder.earth_ohm * squared_a,
            wire: stepper.strands.wire_w(),
            leakage: stepper.strands.leakage_w(),
            shorts: stepper.strands.shorts_w(),
        }
    }

    fn add(&mut self, power: &Self, weight: f64) {
        self.source += weight * power.source;
        self.earth += weight * power.earth;
        self.wire += weight * power.wire;
        self.leakage += weight * power.leakage;
        self.shorts += weight * power.shorts;
    }

    fn into_energy(self, stored_j: f64, left_j: f64) -> Energy {
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
