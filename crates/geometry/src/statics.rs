//! Small forces: sag, wind, guys. Newtons, metres, radians, kilograms per cubic metre.
//!
//! Sources: statics; EN 1991-1-4 for the wind (from memory); docs/sources.md, husbandry 2.2 to 2.4.

/// Density of air in the wind formulas, kg/m3 (EN 1991-1-4 4.5, from memory).
pub const AIR_KG_PER_M3: f64 = 1.25;

/// Drag factor of a round strand (EN 1991-1-4 7.9, from memory).
pub const ROUND_STRAND_DRAG: f64 = 1.2;

/// Tension that holds a span to a sag, newtons: the flat parabola `w s^2 / (8 d)`; good while the sag is small.
pub fn sag_tension_n(weight_n_per_m: f64, span_m: f64, sag_m: f64) -> f64 {
    weight_n_per_m * span_m * span_m / (8.0 * sag_m)
}

/// Pressure of the wind, pascals: `rho v^2 / 2`.
pub fn wind_pressure_pa(speed_m_per_s: f64) -> f64 {
    0.5 * AIR_KG_PER_M3 * speed_m_per_s * speed_m_per_s
}

/// Share of a net's face that is strand: lines and stays less where they cover each other.
///
/// `line_share` = lines x their thickness / height, `stay_share` = thickness / spacing of the stays.
pub fn solidity(line_share: f64, stay_share: f64) -> f64 {
    line_share + stay_share - line_share * stay_share
}

/// Wind on a metre of net, newtons per metre: pressure x drag x solidity x height.
pub fn wind_n_per_m(speed_m_per_s: f64, solidity: f64, height_m: f64) -> f64 {
    wind_pressure_pa(speed_m_per_s) * ROUND_STRAND_DRAG * solidity * height_m
}

/// Tension of a guy at `angle_rad` to the ground that takes `horizontal_n`, newtons: `H / cos a`.
pub fn guy_tension_n(horizontal_n: f64, angle_rad: f64) -> f64 {
    horizontal_n / angle_rad.cos()
}

/// Force with which such a guy pushes its post down and lifts its peg, newtons: `H tan a`.
pub fn guy_lift_n(horizontal_n: f64, angle_rad: f64) -> f64 {
    horizontal_n * angle_rad.tan()
}

/// Distance of the peg from the post, metres: `h / tan a`.
pub fn guy_reach_m(height_m: f64, angle_rad: f64) -> f64 {
    height_m / angle_rad.tan()
}
