//! Passes and minutes behind a mower. Metres, seconds. Source: docs/sources.md, husbandry 5.1 (ASABE EP496/D497, from memory).

/// Rounding that a count of passes may carry: 1.2 / 0.6 is two passes, not three.
const PASS_GRAIN: f64 = 1e-9;

/// Effective field capacity, square metres per second: speed x width x efficiency.
pub fn field_capacity_m2_per_s(speed_m_per_s: f64, width_m: f64, efficiency: f64) -> f64 {
    speed_m_per_s * width_m * efficiency
}

/// Passes for a strip: strip width over the width that each pass adds, rounded up.
///
/// `None` where the mower gains nothing (no width, full overlap, not a number) or the count is beyond reason (> 1e6).
pub fn passes(strip_width_m: f64, mower_width_m: f64, overlap: f64) -> Option<u32> {
    let gained_m = mower_width_m * (1.0 - overlap);
    let exact = strip_width_m / gained_m;
    if !(gained_m > 0.0 && (0.0..=1e6).contains(&exact)) {
        return None;
    }
    Some((exact * (1.0 - PASS_GRAIN)).ceil() as u32)
}

#[cfg(test)]
mod tests {
    use super::passes;

    #[test]
    fn rounding_makes_no_extra_pass() {
        for (strip_m, mower_m, overlap, want) in [
            (1.2, 0.6, 0.0, Some(2)),
            (1.2, 0.4, 0.0, Some(3)),
            (0.9, 0.3, 0.0, Some(3)),
            (1.08, 0.6, 0.1, Some(2)),
            (1.2, 0.53, 0.1, Some(3)),
            (1.2001, 0.6, 0.0, Some(3)),
            (0.0, 0.5, 0.0, Some(0)),
            (1.2, 0.0, 0.0, None),
            (1.2, 0.5, 1.0, None),
            (f64::NAN, 0.5, 0.0, None),
            (1.2, 1e-9, 0.0, None),
        ] {
            assert_eq!(passes(strip_m, mower_m, overlap), want, "{strip_m} m by {mower_m} m, overlap {overlap}");
        }
    }
}
