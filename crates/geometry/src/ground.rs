//! Slopes, dips and ridges: how the ground's shape eats net and opens gaps. Metres. Source: geometry, docs/sources.md,
//! husbandry 7.

/// Metres of net on the ground for each metre in plan: `sqrt(1 + s^2)`, slope as a fraction (0.2 = 20 %).
pub fn slope_factor(slope: f64) -> f64 {
    slope.hypot(1.0)
}

/// Gap under a straight bottom line between posts `spacing_m` apart over ground of vertical radius `radius_m`, metres.
///
/// `s^2 / (8 R)`: the flat form, good while the spacing is well below the radius. On a ridge it is the depth of the drag.
pub fn sagitta_m(spacing_m: f64, radius_m: f64) -> f64 {
    spacing_m * spacing_m / (8.0 * radius_m)
}

/// Widest post spacing that keeps that gap to `gap_m`, metres: `sqrt(8 R d)`.
pub fn spacing_for_gap_m(radius_m: f64, gap_m: f64) -> f64 {
    (8.0 * radius_m * gap_m).sqrt()
}
