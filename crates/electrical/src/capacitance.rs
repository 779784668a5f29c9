//! Capacitance of a bundle of parallel live wires over earth, by Maxwell's potential coefficients.
//!
//! All wires lie in one vertical plane over a perfectly conducting, flat earth:
//! `P_ii = ln(2 h_i / r) / (2 π ε0)`, `P_ij = ln((h_i + h_j) / |h_i - h_j|) / (2 π ε0)`. Joined, they
//! stand at one potential, so the bundle's capacitance is the sum of the solution of `P q = 1`.
//! Source: docs/sources.md, electrical §4.1, §4.2. Metres, farads per metre. Holds while `r` is small
//! beside every height and distance; posts, string and wet grass are left out.

use std::f64::consts::PI;

use crate::dense;

/// Permittivity of vacuum, farads per metre (CODATA 2018).
pub const EPSILON_0_F_PER_M: f64 = 8.854_187_812_8e-12;

/// Why a bundle has no capacitance.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum CapacitanceFault {
    /// No live wire.
    #[error("no live line is given; give at least one height")]
    NoWire,
    /// A radius that is not above zero.
    #[error("the conductor's radius is {radius_m} m; it must be finite and above zero")]
    Radius {
        /// What was given, metres.
        radius_m: f64,
    },
    /// A wire lies in the ground, or on it.
    #[error("live line {index} lies at {height_m} m; its height must be above the conductor's radius of {radius_m} m")]
    TooLow {
        /// Which one, from 0.
        index: usize,
        /// Its height, metres.
        height_m: f64,
        /// The radius, metres.
        radius_m: f64,
    },
    /// Two wires touch.
    #[error("live lines {first} and {second} lie within two radii of each other; keep one of them")]
    Touching {
        /// One, from 0.
        first: usize,
        /// The other.
        second: usize,
    },
}

impl CapacitanceFault {
    /// A stable name of the fault.
    pub fn id(&self) -> &'static str {
        match self {
            Self::NoWire => "electrical/no-live-line",
            Self::Radius { .. } => "electrical/conductor-radius",
            Self::TooLow { .. } => "electrical/live-line-too-low",
            Self::Touching { .. } => "electrical/live-lines-touch",
        }
    }
}

/// Capacitance to earth of joined live lines at `heights_m`, farads per metre.
///
/// ```
/// let c = electrical::capacitance_per_m(&[0.5, 0.3], 0.001).expect("two wires apart");
/// assert!((c - 13.863e-12).abs() < 1e-15);
/// ```
pub fn capacitance_per_m(heights_m: &[f64], radius_m: f64) -> Result<f64, CapacitanceFault> {
    check(heights_m, radius_m)?;
    let sum = dense::sum_of_inverse(heights_m.len(), potential(heights_m, radius_m))
        .ok_or(CapacitanceFault::Touching { first: 0, second: 0 })?;
    Ok(2.0 * PI * EPSILON_0_F_PER_M * sum)
}

/// Capacitances of netting wired alternately, farads per metre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PartialCapacitance {
    /// Live lines to earth.
    pub live: f64,
    /// Earthed lines to earth.
    pub earthed: f64,
    /// Live to earthed lines.
    pub between: f64,
}

/// Partial capacitances of two groups of joined lines, from the inverse of all lines' potential coefficients: with `Q` its
/// sums by groups, `between = -Q_le`, `live = Q_ll + Q_le`, `earthed = Q_ee + Q_le`.
///
/// ```
/// // Eleven strands a decimetre apart, every second one earthed: 49.6 pF/m from live to return.
/// let at = |k: usize| 0.07 + 0.1 * k as f64;
/// let live: Vec<f64> = (0..11).step_by(2).map(at).collect();
/// let earthed: Vec<f64> = (1..11).step_by(2).map(at).collect();
/// let c = electrical::partial_capacitance_per_m(&live, &earthed, 0.001).expect("wires apart");
/// assert!((c.live + c.between - 49.6e-12).abs() < 0.1e-12);
/// ```
pub fn partial_capacitance_per_m(
    live_m: &[f64],
    earthed_m: &[f64],
    radius_m: f64,
) -> Result<PartialCapacitance, CapacitanceFault> {
    if live_m.is_empty() {
        return Err(CapacitanceFault::NoWire);
    }
    let heights_m: Vec<f64> = live_m.iter().chain(earthed_m).copied().collect();
    check(&heights_m, radius_m)?;
    let group = |line: usize| usize::from(line >= live_m.len());
    let [[live, mutual], [_, earthed]] =
        dense::sums_of_inverse(heights_m.len(), potential(&heights_m, radius_m), group)
            .ok_or(CapacitanceFault::Touching { first: 0, second: 0 })?;
    let scale = 2.0 * PI * EPSILON_0_F_PER_M;
    // A line between two others may be hidden from the ground to rounding; its share is never below nothing.
    let share = |sum: f64| (scale * sum).max(0.0);
    Ok(PartialCapacitance { live: share(live + mutual), earthed: share(earthed + mutual), between: share(-mutual) })
}

fn potential(heights_m: &[f64], radius_m: f64) -> impl Fn(usize, usize) -> f64 + '_ {
    move |i, j| {
        let (a, b) = (heights_m[i], heights_m[j]);
        if i == j { (2.0 * a / radius_m).ln() } else { ((a + b) / (a - b).abs()).ln() }
    }
}

fn check(heights_m: &[f64], radius_m: f64) -> Result<(), CapacitanceFault> {
    if heights_m.is_empty() {
        return Err(CapacitanceFault::NoWire);
    }
    if !(radius_m.is_finite() && radius_m > 0.0) {
        return Err(CapacitanceFault::Radius { radius_m });
    }
    for (index, &height_m) in heights_m.iter().enumerate() {
        if !(height_m.is_finite() && height_m > radius_m) {
            return Err(CapacitanceFault::TooLow { index, height_m, radius_m });
        }
        if let Some(first) = heights_m[..index].iter().position(|h| (h - height_m).abs() <= 2.0 * radius_m) {
            return Err(CapacitanceFault::Touching { first, second: index });
        }
    }
    Ok(())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop")]
mod tests {
    use super::*;

    #[test]
    fn a_wire_more_never_lowers_the_capacitance() {
        let heights_m: Vec<f64> = (1..=12).map(|i| 0.08 * f64::from(i)).collect();
        let by_count: Vec<f64> = (1..=12).map(|n| capacitance_per_m(&heights_m[..n], 0.001).unwrap()).collect();
        assert!(by_count.windows(2).all(|pair| pair[1] > pair[0]), "{by_count:?}");
    }

    #[test]
    fn what_cannot_be_a_bundle_is_refused_by_name() {
        for (heights_m, radius_m, id) in [
            (&[][..], 0.001, "electrical/no-live-line"),
            (&[0.2], 0.0, "electrical/conductor-radius"),
            (&[0.2, 0.0], 0.001, "electrical/live-line-too-low"),
            (&[0.2, f64::NAN], 0.001, "electrical/live-line-too-low"),
            (&[0.2, 0.4, 0.2], 0.001, "electrical/live-lines-touch"),
        ] {
            assert_eq!(capacitance_per_m(heights_m, radius_m).unwrap_err().id(), id);
        }
    }
}
