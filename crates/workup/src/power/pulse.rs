//! The pulse over time at the feed and at every post, and what it carries.

use plan::Plan;

use super::fence::Fence;

/// The pulse of a run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PulseShape {
    /// When, seconds after the pulse starts.
    pub times_s: Vec<f64>,
    /// Kilovolts at the feed, one a time; not clamped to the no-load figure.
    pub feed_kv: Vec<f64>,
    /// The same at every post, in the order of the lay's posts.
    pub posts_kv: Vec<Vec<f64>>,
    /// Charge that leaves the energizer's capacitor, coulombs.
    pub charge_c: f64,
    /// Energy that leaves the energizer's terminals for good, joules.
    pub energy_j: f64,
    /// How long 95 % of the integral of the feed's squared voltage takes, seconds.
    pub duration_s: f64,
}

/// The pulse of a run; `None` where its volts cannot be worked out.
pub fn pulse_shape(plan: &Plan, run: &str) -> Option<PulseShape> {
    let fence = Fence::of(plan, run)?;
    let pulse = electrical::pulse(&fence.circuit, &electrical::Accuracy::default()).ok()?;
    let curves = fence.curves()?;
    let readings = &curves.lines[fence.line];
    let kv = |volts: &Vec<f64>| volts.iter().map(|volts| volts / 1e3).collect::<Vec<f64>>();
    let feed_kv = kv(&readings.feed);
    Some(PulseShape {
        duration_s: width_s(&curves.times_s, &feed_kv),
        posts_kv: readings.chain.marks[..fence.posts].iter().map(kv).collect(),
        feed_kv,
        times_s: curves.times_s,
        charge_c: pulse.charge_c,
        energy_j: pulse.energy.delivered_j(),
    })
}

/// The shortest time from the start that holds 95 % of the integral of the square, by the trapezoidal rule.
pub fn width_s(times_s: &[f64], kv: &[f64]) -> f64 {
    let mut sums = vec![0.0];
    for (pair_s, pair_kv) in times_s.windows(2).zip(kv.windows(2)) {
        let squares = 0.5 * (pair_kv[0] * pair_kv[0] + pair_kv[1] * pair_kv[1]);
        sums.push(sums[sums.len() - 1] + squares * (pair_s[1] - pair_s[0]));
    }
    let wanted = 0.95 * sums[sums.len() - 1];
    let index = sums.partition_point(|&sum| sum < wanted).min(times_s.len().saturating_sub(1));
    if index == 0 {
        return times_s.first().copied().unwrap_or(0.0);
    }
    let share = (wanted - sums[index - 1]) / (sums[index] - sums[index - 1]).max(f64::MIN_POSITIVE);
    times_s[index - 1] + share * (times_s[index] - times_s[index - 1])
}
