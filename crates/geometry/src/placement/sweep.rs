//! The sum of misses as a function of the start, swept round the ring.
//!
//! With fixed posts the sum is piecewise linear in the start: its slope rises by 2 where a corner meets a post and falls
//! by 2 where a corner passes the middle between two posts. Sorting those events gives the sum at every meeting of a
//! corner and a post for a few operations each. Metres; rounding adds up to less than 1e-8 m on any line we accept.

/// Events sorted at a time; keeps the sweep in the cache.
const EVENTS_PER_WINDOW: usize = 1 << 12;

/// Posts and middles between them, ascending round the ring.
struct Breaks {
    /// Place in the chain, metres, and whether a post stands there (else it is a middle).
    places: Vec<(f64, bool)>,
    ring_m: f64,
}

impl Breaks {
    fn new(posts_m: &[f64], ring_m: f64) -> Breaks {
        let mut places = Vec::with_capacity(2 * posts_m.len());
        for (index, &post_m) in posts_m.iter().enumerate() {
            let next_m = posts_m.get(index + 1).copied().unwrap_or(posts_m[0] + ring_m);
            places.push((post_m, true));
            places.push((f64::midpoint(post_m, next_m), false));
        }
        Breaks { places, ring_m }
    }

    /// Distance from `place_m` to the nearest post, the slope of it as the place moves back, and the number of breaks
    /// at or before it.
    fn miss(&self, place_m: f64) -> (f64, f64, usize) {
        let after = self.places.partition_point(|&(break_m, _)| break_m <= place_m);
        // The first break is a post at 0, so there is always one before.
        let (before_m, is_post) = self.places[after.max(1) - 1];
        if is_post {
            ((place_m - before_m).max(0.0), -1.0, after)
        } else {
            let next_m = self.places.get(after).map_or(self.places[0].0 + self.ring_m, |&(next_m, _)| next_m);
            (next_m - place_m, 1.0, after)
        }
    }
}

/// Calls `found` with every start at which a corner meets a post and the sum of misses there, starts ascending.
///
/// `corners_m`: places of the corners on the ring, `0..ring_m`. `posts_m`: posts of the chain, ascending, the first at 0,
/// all below `ring_m`. The chain runs in the direction of the corners' measure. Starts nearer than
/// [`crate::SAME_PLACE_M`] to the last one are left out.
pub(super) fn sweep(corners_m: &[f64], posts_m: &[f64], ring_m: f64, mut found: impl FnMut(f64, f64)) {
    let breaks = Breaks::new(posts_m, ring_m);
    let events = corners_m.len() * breaks.places.len();
    let windows = events.div_ceil(EVENTS_PER_WINDOW).max(1);
    let mut last_m = f64::NEG_INFINITY;
    let mut window_events: Vec<(f64, f64)> = Vec::with_capacity(EVENTS_PER_WINDOW);
    for window in 0..windows {
        let from_m = ring_m * window as f64 / windows as f64;
        let width_m = ring_m * (window + 1) as f64 / windows as f64 - from_m;
        window_events.clear();
        let (mut sum_m, mut slope) = (0.0, 0.0);
        for &corner_m in corners_m {
            let place_m = (corner_m - from_m).rem_euclid(ring_m);
            let place_m = if place_m < ring_m { place_m } else { 0.0 };
            let (miss_m, back, mut index) = breaks.miss(place_m);
            sum_m += miss_m;
            slope += back;
            // As the start moves on, the corner's place in the chain moves back over the breaks.
            let mut turned_m = 0.0;
            for _ in 0..breaks.places.len() {
                if index == 0 {
                    index = breaks.places.len();
                    turned_m = ring_m;
                }
                index -= 1;
                let (break_m, is_post) = breaks.places[index];
                let moved_m = place_m - break_m + turned_m;
                // A hair of overlap, lest rounding lose an event between two windows; doubles are dropped below.
                if moved_m >= width_m + crate::SAME_PLACE_M {
                    break;
                }
                window_events.push((moved_m.max(0.0), if is_post { 2.0 } else { -2.0 }));
            }
        }
        // Each corner's events come sorted, and the stable sort merges such runs.
        window_events.sort_by(|one, other| one.0.total_cmp(&other.0));
        let mut at_m = 0.0;
        for &(moved_m, turn) in &window_events {
            sum_m += slope * (moved_m - at_m);
            slope += turn;
            at_m = moved_m;
            let start_m = from_m + moved_m;
            if turn > 0.0 && start_m - last_m >= crate::SAME_PLACE_M {
                last_m = start_m;
                found(start_m, sum_m);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::sweep;

    fn sum_m(corners_m: &[f64], posts_m: &[f64], ring_m: f64, start_m: f64) -> f64 {
        let away = |corner_m: f64, post_m: f64| {
            let apart_m = (corner_m - start_m - post_m).rem_euclid(ring_m);
            apart_m.min(ring_m - apart_m)
        };
        corners_m
            .iter()
            .map(|&corner_m| posts_m.iter().map(|&post_m| away(corner_m, post_m)).fold(f64::INFINITY, f64::min))
            .sum()
    }

    #[test]
    fn every_meeting_is_found_with_its_sum() {
        let corners_m = [0.0, 7.3, 7.3, 19.0, 33.1];
        let posts_m = [0.0, 3.0, 6.5, 11.0, 30.0];
        let mut found = Vec::new();
        sweep(&corners_m, &posts_m, 40.0, |start_m, sum| found.push((start_m, sum)));
        for &corner_m in &corners_m {
            for &post_m in &posts_m {
                let start_m = (corner_m - post_m).rem_euclid(40.0);
                assert!(found.iter().any(|(at_m, _)| (at_m - start_m).abs() < 1e-8), "{start_m}");
            }
        }
        for &(start_m, sum) in &found {
            assert!((sum - sum_m(&corners_m, &posts_m, 40.0, start_m)).abs() < 1e-9);
        }
    }

    #[test]
    fn one_post_and_many_windows() {
        let corners_m: Vec<f64> = (0..500).map(|index| f64::from(index) * 0.77 % 300.0).collect();
        let posts_m: Vec<f64> = (0..200).map(|index| f64::from(index) * 1.49).collect();
        for posts_m in [&posts_m[..1], &posts_m[..]] {
            let mut count = 0;
            sweep(&corners_m, posts_m, 300.0, |start_m, sum| {
                count += 1;
                if count % 97 == 0 {
                    assert!((sum - sum_m(&corners_m, posts_m, 300.0, start_m)).abs() < 1e-8);
                }
            });
            assert!(count > 100);
        }
    }
}
