//! The energizer as a circuit: a capacitor `Cs` charged to `V0`, behind `Rs` and sometimes `Ls`.
//!
//! Three figures of a data sheet (no-load peak, peak at 500 Ω, joules into 500 Ω) fix `V0`, `Rs`
//! and `Cs` in closed form. The stored joules then check them: the share of them that the fitted
//! capacitor holds, η0, cannot exceed 1. Where it does, the three figures do not belong to a plain
//! capacitor behind a resistance, and an inductance is fitted as well, so that the peak at 500 Ω is
//! met. Source: docs/sources.md, electrical §2.2, §2.3. Volts, ohms, farads, henries, joules.
//!
//! Assumes a linear source whose current may reverse: no thyristor, no saturation.

/// The load at which data sheets state volts and joules, ohms (standard load, from memory of
/// IEC 60335-2-76 clause 3).
pub const SHEET_LOAD_OHM: f64 = 500.0;

/// What a data sheet states.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DataSheet {
    /// Energy stored, joules, where it is stated.
    pub stored_j: Option<f64>,
    /// Peak without load, volts.
    pub no_load_v: f64,
    /// Peak at 500 Ω, volts.
    pub v_at_500_ohm: f64,
    /// Energy into 500 Ω, joules.
    pub output_j_at_500_ohm: f64,
}

/// A charged capacitor in series with a resistance and, where fitted, an inductance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Source {
    /// Voltage on the capacitor before the pulse, volts; also the no-load figure.
    pub v0: f64,
    /// Series resistance, ohms.
    pub r_ohm: f64,
    /// Capacitance, farads.
    pub c_farad: f64,
    /// Series inductance, henries; 0 where none was fitted.
    pub l_henry: f64,
}

impl Source {
    /// Energy on the capacitor before the pulse, `Cs V0² / 2`, joules.
    pub fn stored_j(&self) -> f64 {
        0.5 * self.c_farad * self.v0 * self.v0
    }
}

/// Which circuit the data sheet asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SourceModel {
    /// Capacitor and resistance.
    Rc,
    /// Capacitor, resistance and inductance.
    Rlc,
}

/// The source with the grounds for its choice.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fit {
    /// The fitted source.
    pub source: Source,
    /// Which model it is.
    pub model: SourceModel,
    /// Energy of the plain RC fit over the stored energy; `None` where that is not stated.
    pub eta0: Option<f64>,
}

/// What in a data sheet contradicts what.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum SheetFault {
    /// A figure is zero, negative or not a number.
    #[error("{what} is {value}; state a figure above zero")]
    NotPositive {
        /// Which figure.
        what: &'static str,
        /// What the sheet states.
        value: f64,
    },
    /// The peak under load is not below the peak without.
    #[error("{v_at_500_ohm} V at 500 Ω is not below the {no_load_v} V without load; check both figures")]
    NoDrop {
        /// Peak without load, volts.
        no_load_v: f64,
        /// Peak at 500 Ω, volts.
        v_at_500_ohm: f64,
    },
    /// More comes out than was stored.
    #[error("{output_j} J into 500 Ω is more than the {stored_j} J stored; check both figures")]
    MoreThanStored {
        /// Energy stored, joules.
        stored_j: f64,
        /// Energy into 500 Ω, joules.
        output_j: f64,
    },
    /// No inductance brings the peak at 500 Ω to the stated figure.
    #[error(
        "no energizer with {stored_j} J stored and {no_load_v} V without load gives {v_at_500_ohm} V and {output_j} J at 500 Ω: its peak there would be at most {best_v} V; check the four figures"
    )]
    PeakOutOfReach {
        /// Energy stored, joules.
        stored_j: f64,
        /// Peak without load, volts.
        no_load_v: f64,
        /// Peak at 500 Ω, volts.
        v_at_500_ohm: f64,
        /// Energy into 500 Ω, joules.
        output_j: f64,
        /// The greatest peak that any inductance gives, volts.
        best_v: f64,
    },
}

impl SheetFault {
    /// A stable name of the fault.
    pub fn id(&self) -> &'static str {
        match self {
            Self::NotPositive { .. } => "electrical/sheet-not-positive",
            Self::NoDrop { .. } => "electrical/sheet-no-drop",
            Self::MoreThanStored { .. } => "electrical/sheet-more-than-stored",
            Self::PeakOutOfReach { .. } => "electrical/sheet-peak-out-of-reach",
        }
    }
}

/// Fits the source to a data sheet; see the module for the two branches.
///
/// ```
/// let sheet = electrical::DataSheet {
///     stored_j: Some(1.0), no_load_v: 7000.0, v_at_500_ohm: 5000.0, output_j_at_500_ohm: 0.7,
/// };
/// let fit = electrical::fit(&sheet).expect("the three figures agree");
/// assert!((fit.source.r_ohm - 200.0).abs() < 1e-9);
/// assert!((fit.source.c_farad - 40e-9).abs() < 1e-18);
/// ```
pub fn fit(sheet: &DataSheet) -> Result<Fit, SheetFault> {
    let DataSheet { stored_j, no_load_v, v_at_500_ohm, output_j_at_500_ohm: output_j } = *sheet;
    let stated = [
        ("the peak without load", Some(no_load_v)),
        ("the peak at 500 Ω", Some(v_at_500_ohm)),
        ("the energy into 500 Ω", Some(output_j)),
        ("the stored energy", stored_j),
    ];
    for (what, value) in stated.into_iter().filter_map(|(what, value)| Some((what, value?))) {
        if !(value.is_finite() && value > 0.0) {
            return Err(SheetFault::NotPositive { what, value });
        }
    }
    if v_at_500_ohm >= no_load_v {
        return Err(SheetFault::NoDrop { no_load_v, v_at_500_ohm });
    }
    if let Some(stored_j) = stored_j.filter(|stored_j| output_j > *stored_j) {
        return Err(SheetFault::MoreThanStored { stored_j, output_j });
    }

    let r_ohm = SHEET_LOAD_OHM * (no_load_v / v_at_500_ohm - 1.0);
    let c_farad = 2.0 * output_j * (r_ohm + SHEET_LOAD_OHM) / (no_load_v * no_load_v * SHEET_LOAD_OHM);
    let plain = Source { v0: no_load_v, r_ohm, c_farad, l_henry: 0.0 };
    let eta0 = stored_j.map(|stored_j| plain.stored_j() / stored_j);
    match (stored_j, eta0) {
        (Some(stored_j), Some(share)) if share > 1.0 + ETA0_ROUNDING => {
            let source = fit_inductance(sheet, stored_j)?;
            Ok(Fit { source, model: SourceModel::Rlc, eta0 })
        }
        _ => Ok(Fit { source: plain, model: SourceModel::Rc, eta0 }),
    }
}

/// A sheet whose figures agree exactly may exceed η0 = 1 by rounding.
const ETA0_ROUNDING: f64 = 1e-9;

/// Beyond this no energizer's inductance lies, henries; it only bounds the search.
const LARGEST_HENRY: f64 = 1e3;

/// All stored energy on the capacitor, the resistance from the share that comes out, and the
/// inductance that lowers the peak at 500 Ω to the stated one. The peak falls steadily with it.
fn fit_inductance(sheet: &DataSheet, stored_j: f64) -> Result<Source, SheetFault> {
    let DataSheet { no_load_v, v_at_500_ohm, output_j_at_500_ohm: output_j, .. } = *sheet;
    let c_farad = 2.0 * stored_j / (no_load_v * no_load_v);
    let r_ohm = SHEET_LOAD_OHM * (stored_j / output_j - 1.0);
    let total_ohm = r_ohm + SHEET_LOAD_OHM;
    let peak_v = |l_henry: f64| {
        SHEET_LOAD_OHM * series_peak_ampere(&Source { v0: no_load_v, r_ohm: total_ohm, c_farad, l_henry })
    };
    let (mut low, mut high) = (total_ohm * total_ohm * c_farad * 1e-12, LARGEST_HENRY);
    let best_v = peak_v(low);
    if best_v < v_at_500_ohm || peak_v(high) > v_at_500_ohm {
        return Err(SheetFault::PeakOutOfReach { stored_j, no_load_v, v_at_500_ohm, output_j, best_v });
    }
    // Bisection on the logarithm: 100 halvings reach rounding from any bracket.
    for _ in 0..100 {
        let middle = (low * high).sqrt();
        if peak_v(middle) > v_at_500_ohm {
            low = middle;
        } else {
            high = middle;
        }
    }
    Ok(Source { v0: no_load_v, r_ohm, c_farad, l_henry: (low * high).sqrt() })
}

/// Greatest current of a source shorted at its terminals, amperes: put any load into `r_ohm`.
///
/// With `α = R / 2L`, `ω0² = 1 / LC`: `i_pk = V0 / (L ω0) e^(-α t_pk)` for every damping;
/// `t_pk = ln((α + β) / ω0) / β`, `β² = α² - ω0²`, or `atan(ωd / α) / ωd`, `ωd² = ω0² - α²`.
/// Infinite without resistance and inductance. Source: docs/sources.md, electrical §2.3, rearranged so
/// that nothing cancels as `L` falls to 0.
pub fn series_peak_ampere(source: &Source) -> f64 {
    let Source { v0, r_ohm, c_farad, l_henry } = *source;
    if l_henry <= 0.0 {
        return v0 / r_ohm;
    }
    let alpha = r_ohm / (2.0 * l_henry);
    let omega0 = (l_henry * c_farad).sqrt().recip();
    let detuning = (alpha - omega0) * (alpha + omega0);
    let peak_s = if detuning.abs() < 1e-12 * omega0 * omega0 {
        alpha.recip()
    } else if detuning > 0.0 {
        let beta = detuning.sqrt();
        ((alpha + beta) / omega0).ln() / beta
    } else {
        let omega_d = (-detuning).sqrt();
        omega_d.atan2(alpha) / omega_d
    };
    v0 / (l_henry * omega0) * (-alpha * peak_s).exp()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop")]
mod tests {
    use super::*;

    fn sheet(stored_j: Option<f64>, no_load_v: f64, v_at_500_ohm: f64, output_j: f64) -> DataSheet {
        DataSheet { stored_j, no_load_v, v_at_500_ohm, output_j_at_500_ohm: output_j }
    }

    #[test]
    fn without_stored_energy_the_plain_fit_stands() {
        let fit = fit(&sheet(None, 8000.0, 5000.0, 0.7)).unwrap();
        assert_eq!((fit.model, fit.eta0), (SourceModel::Rc, None));
        assert!((fit.source.stored_j() - 1.12).abs() < 1e-12);
    }

    #[test]
    fn a_sheet_against_itself_is_refused_by_name() {
        for (sheet, id) in [
            (sheet(None, 5000.0, 5000.0, 0.7), "electrical/sheet-no-drop"),
            (sheet(None, 5000.0, 6000.0, 0.7), "electrical/sheet-no-drop"),
            (sheet(Some(0.6), 7000.0, 5000.0, 0.7), "electrical/sheet-more-than-stored"),
            (sheet(None, -7000.0, 5000.0, 0.7), "electrical/sheet-not-positive"),
            (sheet(None, 7000.0, f64::NAN, 0.7), "electrical/sheet-not-positive"),
            (sheet(None, 7000.0, 5000.0, 0.0), "electrical/sheet-not-positive"),
            (sheet(Some(1.0), 7000.0, 0.01, 0.7), "electrical/sheet-peak-out-of-reach"),
        ] {
            assert_eq!(fit(&sheet).unwrap_err().id(), id, "{sheet:?}");
        }
    }

    #[test]
    fn the_peak_of_a_series_circuit_is_continuous_through_every_damping() {
        // At critical damping i_pk = 2 V0 / (e R): from memory, any textbook.
        let at = |l_henry: f64| series_peak_ampere(&Source { v0: 1.0, r_ohm: 2.0, c_farad: 1.0, l_henry });
        assert!((at(1.0) - 1.0_f64.exp().recip()).abs() < 1e-12);
        for nearby in [1.0 - 1e-6, 1.0 - 1e-11, 1.0 + 1e-11, 1.0 + 1e-6] {
            assert!((at(nearby) - at(1.0)).abs() < 1e-6);
        }
        assert!((at(1e-9) - 0.5).abs() < 1e-6, "no inductance: V0 / R");
        assert!((at(1e9) * 1e9_f64.sqrt() - 1.0).abs() < 1e-3, "no resistance: V0 √(C / L)");
    }

    #[test]
    fn the_fitted_inductance_gives_the_stated_peak() {
        for (stored, peak, output) in [(1.0, 5000.0, 0.7), (0.7, 6000.0, 0.7), (5.0, 300.0, 3.0)] {
            let fit = fit(&sheet(Some(stored), 8000.0, peak, output)).unwrap();
            assert_eq!(fit.model, SourceModel::Rlc);
            let loaded = Source { r_ohm: fit.source.r_ohm + 500.0, ..fit.source };
            assert!((500.0 * series_peak_ampere(&loaded) / peak - 1.0).abs() < 1e-9);
        }
    }
}
