//! Resistance of earth stakes and of an animal's feet to remote earth.
//!
//! One stake by Dwight (1936), `R1 = ρ / (2 π L) (ln(8 L / d) - 1)`; several by the matrix of
//! mutual resistances (the exact potential average of parallel stakes driven from the surface),
//! `R = 1 / (1ᵀ M⁻¹ 1)`. A foot is a disc on the surface, `ρ / (4 b)`. Source: docs/sources.md, electrical
//! §6.1, §7. Ohms, metres. Uniform soil; contact resistance left out.

use std::f64::consts::PI;

use crate::dense;

/// More stakes than this are taken for an error of typing.
pub const MOST_STAKES: usize = 200;

/// Why stakes have no resistance.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum StakesFault {
    /// A figure that must be above zero is not.
    #[error("{what} is {value}; it must be finite and above zero")]
    NotPositive {
        /// Which figure.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// A stake thicker than the formula allows.
    #[error("a stake of {length_m} m cannot be {diameter_m} m thick; check both figures")]
    TooThick {
        /// Length in the ground, metres.
        length_m: f64,
        /// Diameter, metres.
        diameter_m: f64,
    },
    /// No stake, too many, or two that touch.
    #[error("there must be 1 to {MOST_STAKES} stakes, and no two within a diameter of each other")]
    Layout,
}

impl StakesFault {
    /// A stable name of the fault.
    pub fn id(&self) -> &'static str {
        match self {
            Self::NotPositive { .. } => "electrical/stake-not-positive",
            Self::TooThick { .. } => "electrical/stake-too-thick",
            Self::Layout => "electrical/stake-layout",
        }
    }
}

/// One stake, ohms.
///
/// ```
/// // ρ 55 Ω·m, 3 m long, 25 mm thick: 17.12 Ω (docs/sources.md, electrical T20)
/// assert!((electrical::one_stake_ohm(55.0, 3.0, 0.025) - 17.12).abs() < 0.01);
/// ```
pub fn one_stake_ohm(resistivity_ohm_m: f64, length_m: f64, diameter_m: f64) -> f64 {
    resistivity_ohm_m / (2.0 * PI * length_m) * ((8.0 * length_m / diameter_m).ln() - 1.0)
}

/// Mutual resistance of two stakes `spacing_m` apart, ohms.
///
/// `ρ / (2 π L) (asinh(2L/s) - √(1 + (s/2L)²) + s/2L)`; far apart it is `ρ / (2 π s)`.
pub fn mutual_ohm(resistivity_ohm_m: f64, length_m: f64, spacing_m: f64) -> f64 {
    let wide = spacing_m / (2.0 * length_m);
    // √(1 + w²) - w = 1 / (√(1 + w²) + w), so that nothing cancels far apart ...
    let rest = 1.0 / (wide.hypot(1.0) + wide);
    // ... and there the difference of the two terms is taken from its series instead.
    let shape = if wide > 1e3 { 0.5 / wide } else { wide.recip().asinh() - rest };
    resistivity_ohm_m / (2.0 * PI * length_m) * shape
}

/// `count` stakes in line, `spacing_m` apart (unused for one), ohms.
pub fn stakes_ohm(
    resistivity_ohm_m: f64,
    length_m: f64,
    diameter_m: f64,
    count: usize,
    spacing_m: f64,
) -> Result<f64, StakesFault> {
    let places_m: Vec<[f64; 2]> = match count.min(MOST_STAKES + 1) {
        0 => Vec::new(),
        1 => vec![[0.0, 0.0]],
        count => (0..count).map(|index| [index as f64 * spacing_m, 0.0]).collect(),
    };
    layout_ohm(resistivity_ohm_m, length_m, diameter_m, &places_m)
}

/// Stakes at any places (metres east and north), ohms.
pub fn layout_ohm(
    resistivity_ohm_m: f64,
    length_m: f64,
    diameter_m: f64,
    places_m: &[[f64; 2]],
) -> Result<f64, StakesFault> {
    for (what, value) in [
        ("the soil's resistivity", resistivity_ohm_m),
        ("the stake's length", length_m),
        ("the stake's diameter", diameter_m),
    ] {
        if !(value.is_finite() && value > 0.0) {
            return Err(StakesFault::NotPositive { what, value });
        }
    }
    if diameter_m >= length_m {
        return Err(StakesFault::TooThick { length_m, diameter_m });
    }
    let apart_m = |i: usize, j: usize| {
        let [[x1, y1], [x2, y2]] = [places_m[i], places_m[j]];
        (x1 - x2).hypot(y1 - y2)
    };
    let clear = |i: usize| (0..i).all(|j| apart_m(i, j).is_finite() && apart_m(i, j) > diameter_m);
    let countable = (1..=MOST_STAKES).contains(&places_m.len());
    if !(countable && (0..places_m.len()).all(clear)) {
        return Err(StakesFault::Layout);
    }
    let sum = dense::sum_of_inverse(places_m.len(), |i, j| {
        if i == j {
            one_stake_ohm(resistivity_ohm_m, length_m, diameter_m)
        } else {
            mutual_ohm(resistivity_ohm_m, length_m, apart_m(i, j))
        }
    });
    Ok(sum.ok_or(StakesFault::Layout)?.recip())
}

/// `feet` discs of radius `radius_m` on soil, together, ohms: `ρ / (4 b n)`.
///
/// Their mutual resistance is left out. Four of 2 cm on 100 Ω·m: 312.5 Ω.
pub fn foot_ohm(resistivity_ohm_m: f64, radius_m: f64, feet: usize) -> f64 {
    resistivity_ohm_m / (4.0 * radius_m * feet as f64)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop")]
mod tests {
    use super::*;

    #[test]
    fn far_apart_stakes_share_evenly_and_near_ones_do_not() {
        let one = one_stake_ohm(100.0, 1.0, 0.012);
        let far = stakes_ohm(100.0, 1.0, 0.012, 4, 1e6).unwrap();
        assert!((far * 4.0 / one - 1.0).abs() < 1e-5);
        let by_spacing: Vec<f64> =
            [0.1, 0.5, 1.0, 3.0, 10.0].iter().map(|s| stakes_ohm(100.0, 1.0, 0.012, 4, *s).unwrap()).collect();
        assert!(by_spacing.windows(2).all(|pair| pair[1] < pair[0]), "{by_spacing:?}");
    }

    #[test]
    fn the_far_branch_of_the_mutual_meets_the_near_one() {
        let [near, far] = [1.999_999, 2.000_001].map(|km: f64| mutual_ohm(100.0, 1.0, km * 1e3));
        assert!((near / far - 1.0).abs() < 2e-6);
    }

    #[test]
    fn stated_arithmetic() {
        // docs/sources.md, electrical §6.3 (100 Ω·m, 12 mm), §7: ours, computed there.
        for (got, want, tol) in [
            (one_stake_ohm(100.0, 1.0, 0.012), 87.6, 0.05),
            (stakes_ohm(100.0, 1.0, 0.012, 2, 3.0).unwrap(), 46.4, 0.05),
            (stakes_ohm(100.0, 1.0, 0.012, 3, 3.0).unwrap(), 32.0, 0.05),
            (layout_ohm(100.0, 1.0, 0.012, &[[0.0, 0.0], [3.0, 0.0], [1.5, 2.598_076]]).unwrap(), 32.6, 0.05),
            (foot_ohm(100.0, 0.02, 4), 312.5, 1e-9),
        ] {
            assert!((got - want).abs() <= tol, "{got} against {want}");
        }
    }

    #[test]
    fn what_cannot_be_stakes_is_refused_by_name() {
        for (result, id) in [
            (stakes_ohm(0.0, 1.0, 0.012, 1, 3.0), "electrical/stake-not-positive"),
            (stakes_ohm(100.0, 1.0, 1.2, 1, 3.0), "electrical/stake-too-thick"),
            (stakes_ohm(100.0, 1.0, 0.012, 0, 3.0), "electrical/stake-layout"),
            (stakes_ohm(100.0, 1.0, 0.012, usize::MAX, 3.0), "electrical/stake-layout"),
            (stakes_ohm(100.0, 1.0, 0.012, 2, 0.0), "electrical/stake-layout"),
            (stakes_ohm(100.0, 1.0, 0.012, 2, f64::NAN), "electrical/stake-layout"),
        ] {
            assert_eq!(result.unwrap_err().id(), id);
        }
    }
}
