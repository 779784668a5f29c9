//! Resistance of wire, twine and parallel paths, ohms and metres.
//!
//! `R / m = ρ / (n π d² / 4)`. Direct current, 20 °C; skin effect and temperature left out.
//! Source: docs/sources.md, electrical §3 (resistivities from memory of data books).

/// Stainless steel 304 at 20 °C, ohm metres.
pub const STAINLESS_304_OHM_M: f64 = 7.2e-7;
/// Stainless steel 316 at 20 °C, ohm metres.
pub const STAINLESS_316_OHM_M: f64 = 7.4e-7;
/// Annealed copper at 20 °C, ohm metres.
pub const COPPER_OHM_M: f64 = 1.724e-8;
/// Tinned copper at 20 °C, ohm metres.
pub const TINNED_COPPER_OHM_M: f64 = 1.80e-8;
/// Aluminium for conductors at 20 °C, ohm metres.
pub const ALUMINIUM_OHM_M: f64 = 2.82e-8;

/// `count` round wires of one metal in parallel, ohms per metre.
pub fn wire_ohm_per_m(resistivity_ohm_m: f64, diameter_m: f64, count: usize) -> f64 {
    let area_m2 = std::f64::consts::PI * diameter_m * diameter_m / 4.0 * count as f64;
    resistivity_ohm_m / area_m2
}

/// Resistances side by side, ohms: `1 / Σ (1 / R)`. An empty list is open: infinite.
pub fn parallel_ohm(ohms: &[f64]) -> f64 {
    1.0 / ohms.iter().map(|ohm| 1.0 / ohm).sum::<f64>()
}
