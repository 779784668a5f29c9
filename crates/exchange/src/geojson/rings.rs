//! Rings: closed lists of places, and which way round they run.

use plan::Point;

/// Twice the area that a ring encloses, positive where it runs counter-clockwise.
///
/// Summed about its first place, so that a ring far from the origin loses no digits.
pub(super) fn twice_area(ring: &[Point]) -> f64 {
    let Some(first) = ring.first() else { return 0.0 };
    let from_first = |at: &Point| (at.east_m - first.east_m, at.north_m - first.north_m);
    ring.windows(2)
        .map(|side| {
            let ((from_east, from_north), (to_east, to_north)) = (from_first(&side[0]), from_first(&side[1]));
            from_east * to_north - to_east * from_north
        })
        .sum()
}

/// The ring run counter-clockwise, as an outer ring must (RFC 7946, section 3.1.6), or clockwise, as a hole.
pub(super) fn wound(ring: &[Point], counter_clockwise: bool) -> Vec<Point> {
    let mut wound = ring.to_vec();
    if (twice_area(ring) > 0.0) != counter_clockwise {
        wound.reverse();
    }
    wound
}
