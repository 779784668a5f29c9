//! The published checks and the whole-program tests live in `tests/`; here stands what more than one of them goes by.

/// Slope in percent, metres of net for a metre of plan, metres of plan that a roll of 50 m covers: docs/sources.md,
/// husbandry 7, derived there.
pub const SLOPE_TABLE: [(f64, f64, f64); 8] = [
    (5.0, 1.00125, 49.94),
    (10.0, 1.00499, 49.75),
    (15.0, 1.01119, 49.45),
    (20.0, 1.01980, 49.03),
    (25.0, 1.03078, 48.51),
    (30.0, 1.04403, 47.89),
    (40.0, 1.07703, 46.42),
    (50.0, 1.11803, 44.72),
];
