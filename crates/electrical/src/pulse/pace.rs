//! How finely a pulse is stepped and how long it is followed.

use super::Accuracy;
use super::peaks::Peaks;
use crate::complex::Complex;
use crate::network::{Feeder, Network, TERMINAL};
use crate::ringing::Finder;
use crate::stepper::Stepper;

/// Steps to one period of ringing of quality `Q`: the scheme damps each step by `y⁴ / 72`, `y` the
/// angle of a step, so that `80 (0.7 Q)^(1/3)` steps keep the energy lost to it below 2e-5.
const STEPS_PER_PERIOD: f64 = 80.0;
const MOST_STEPS_PER_PERIOD: f64 = 400.0;
/// The ringing is spent after so many of its decay times, or after so many periods.
const RINGING_DECAYS: f64 = 10.0;
const RINGING_PERIODS: f64 = 400.0;
/// The pulse is over when so little of the energy is left.
pub(crate) const SPENT: f64 = 1e-9;
/// Time constants after which even an asymptote is reached.
const DECAYS: f64 = 30.0;
/// No pulse is followed for longer, seconds.
const LONGEST_S: f64 = 1e6;

/// When even the slowest part of a network has settled: no time constant of resistances and capacitances is longer than
/// `(all resistance in series + 1 / all leakage) × all capacitance`. The slowest is at most the sum of all, `Σ C_k R_kk`
/// with `R_kk` the resistance that node `k` sees to earth (the trace of `C G⁻¹`); and that is at most what a current would
/// meet that leaves in proportion to the leaks (Thomson's principle: any flow spends no less than the true one). An
/// inductance adds `2 L / R`. Where nothing leaks the energizer's capacitor never empties, and the fence's alone settles.
pub(crate) fn settled_s(feeder: &Feeder, series_ohm: f64, leak_s: f64, fence_f: f64) -> f64 {
    let slowest_s =
        if leak_s > 0.0 { (series_ohm + 1.0 / leak_s) * (fence_f + feeder.farad) } else { series_ohm * fence_f };
    let inductive_s = if feeder.henry > 0.0 { 2.0 * feeder.henry / feeder.ohm() } else { 0.0 };
    (DECAYS * (slowest_s + inductive_s)).min(LONGEST_S)
}

/// The same of a network of paths; `touch_s` is leakage besides its own.
pub(crate) fn longest_s(net: &Network, touch_s: f64) -> f64 {
    let along_ohm: f64 = net.ahead_s.iter().filter(|s| **s > 0.0).map(|s| 1.0 / s).sum();
    let leak_s: f64 = net.shunt_s.iter().sum::<f64>() + touch_s;
    settled_s(&net.feeder, net.feeder.ohm() + along_ohm, leak_s, net.capacitance_f.iter().sum())
}

/// Whether nothing that is asked for is still to come. Without inductance no voltage ever rises above the greatest of
/// now, so that every peak is past once that is below the least of them; with it, once the energy is spent.
pub(super) fn is_over(net: &Network, stepper: &Stepper, peaks: &Peaks, accuracy: &Accuracy) -> bool {
    let inductive = net.feeder.henry > 0.0;
    if (accuracy.energy || inductive) && stepper.left_j() >= SPENT * net.feeder.stored_j() {
        return false;
    }
    inductive || stepper.greatest_v() <= peaks.lowest_v.max(peaks.counts_v)
}

/// Whether [`is_over`] is worth asking, from the energizer alone: most of the time it holds the answer.
pub(super) fn may_be_over(net: &Network, stepper: &Stepper, peaks: &Peaks, accuracy: &Accuracy) -> bool {
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
    /// Of a network of paths.
    pub(crate) fn of(net: &Network) -> Self {
        Self::at(Finder::default().find(net, &[], TERMINAL, None).map(|found| found.pole))
    }

    /// Of a circuit with that pole in the upper half plane, if any. `Q = ω / (2 α)` for a pole `-α + iω`.
    pub(crate) fn at(pole: Option<Complex>) -> Self {
        let Some(pole) = pole else {
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

    /// The longest step at a time.
    pub(crate) fn step_s(&self, time_s: f64) -> f64 {
        if time_s < self.until_s { self.longest_step_s } else { f64::INFINITY }
    }
}
