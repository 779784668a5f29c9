//! Duration and root mean square of one impulse, and the limit line of current-limited energizers.
//!
//! An RC source into a resistance: `i(t) = V0 / (R + Rs) e^(-t / τ)`, `τ = (R + Rs) Cs`. The
//! duration is the shortest time that holds 95 % of `∫ i² dt`. Source: docs/sources.md, electrical §1.1,
//! §2.2; the clauses of IEC 60335-2-76 are from memory. Seconds, amperes, ohms, joules.

use crate::source::Source;

/// Shortest time that holds 95 % of `∫ i² dt`, `τ / 2 · ln 20`, seconds; RC source only.
pub fn duration_s(source: &Source, load_ohm: f64) -> f64 {
    0.5 * (load_ohm + source.r_ohm) * source.c_farad * 20.0_f64.ln()
}

/// Energy into a resistance, joules: `Cs V0² / 2 · R / (R + Rs)`, whatever the inductance.
pub fn energy_j(source: &Source, load_ohm: f64) -> f64 {
    source.stored_j() * load_ohm / (load_ohm + source.r_ohm)
}

/// Root mean square over the impulse's duration, amperes: `√(0.95 E / (R t95))`; RC source only.
pub fn rms_ampere(source: &Source, load_ohm: f64) -> f64 {
    (0.95 * energy_j(source, load_ohm) / (load_ohm * duration_s(source, load_ohm))).sqrt()
}

/// Longest duration allowed for a root mean square current, seconds; `None` above 15.7 A.
///
/// `t / ms = 41 885 (I / mA)^-1.34` between 1 A (then 4 ms, taken as the longest below it too)
/// and 15.7 A. From memory of IEC 60335-2-76; its two corners agree with the formula.
pub fn limit_line_s(rms_ampere: f64) -> Option<f64> {
    if rms_ampere > 15.7 {
        return None;
    }
    let milliampere = rms_ampere.max(1.0) * 1e3;
    Some(41_885.0 * milliampere.powf(-1.34) * 1e-3)
}
