//! The least sum over all orders at a start, without looking at a single corner.
//!
//! What the corners under a net add to the sum depends on its class and on where round the ring it begins, not on what
//! lies before it: a function that is linear between the places at which a corner meets a post of it or the middle of a
//! panel. Those are worked out once for each class and direction; a start is then a few look-ups instead of many
//! searches. Nets that the line's end cuts, and what lies beyond the last net, are still measured corner by corner.
//! Rounding stays far below [`super::search::SWEEP_GRAIN_M`]. Metres.

use super::chain::{Lattice, length_m};
use super::search::Corners;

/// Tables of more places than this are not made.
const MOST_PLACES: usize = 2_000_000;

/// The tables of a lattice.
pub(super) struct Tables<'a> {
    lattice: &'a Lattice<'a>,
    /// For each direction and class.
    sums: [Vec<Sums>; 2],
    /// The least sum from each state on.
    to_go_m: Vec<f64>,
}

/// What a class of net costs by where it begins.
struct Sums {
    /// Where the sum bends, ascending from 0, and the sum there; the last is the ring's length.
    bends: Vec<(f64, f64)>,
    /// For each of as many equal stretches of the ring as there are bends, the last bend at or before its beginning.
    from: Vec<u32>,
    per_m: f64,
}

impl<'a> Tables<'a> {
    /// The tables, or `None` where they would be too large or there is nothing to gain.
    pub(super) fn of(lattice: &'a Lattice<'a>, corners: &Corners) -> Option<Self> {
        if lattice.is_single() || corners.free() {
            return None;
        }
        let places: usize = lattice.classes.iter().map(|posts_m| 2 * corners.along_m.len() * (2 * posts_m.len())).sum();
        if places > MOST_PLACES {
            return None;
        }
        let ring_m = corners.line.length_m;
        let sums = [false, true].map(|reversed| {
            let corners_m = corners.on_ring_m(reversed);
            lattice.classes.iter().map(|posts_m| Sums::of(posts_m, &corners_m, ring_m)).collect()
        });
        Some(Self { lattice, sums, to_go_m: vec![0.0; lattice.states.len()] })
    }

    /// The least sum over all orders at a start; `corners_m` are the corners' distances from it in the chain.
    pub(super) fn least_m(&mut self, start_m: f64, reversed: bool, corners_m: &[f64]) -> f64 {
        let (lattice, ring_m) = (self.lattice, self.lattice.line.length_m);
        let at_m = if reversed { ring_m - start_m } else { start_m };
        let sums = &self.sums[usize::from(reversed)];
        for (index, state) in lattice.states.iter().enumerate().rev() {
            let steps = &lattice.moves[state.first_move..state.end_move];
            let mut least_m = f64::INFINITY;
            if steps.is_empty() {
                least_m = lattice.tail_cost(state.at_m, corners_m).sum_m;
            }
            for step in steps {
                let end_m = lattice.states[step.to].at_m;
                let cost_m = if end_m > ring_m {
                    lattice.net_cost(step.class, state.at_m, end_m, corners_m).sum_m
                } else {
                    sums[step.class].at(at_m + state.at_m, ring_m)
                };
                least_m = least_m.min(cost_m + self.to_go_m[step.to]);
            }
            self.to_go_m[index] = least_m;
        }
        self.to_go_m[0]
    }
}

impl Sums {
    fn of(posts_m: &[f64], corners_m: &[f64], ring_m: f64) -> Self {
        let whole = length_m(posts_m) <= ring_m;
        let corners_m = if whole { corners_m } else { &[] };
        // The sum where the net begins at a place, corner by corner.
        let sum_at = |at_m: f64| -> f64 {
            let under_m = corners_m.iter().map(|corner_m| (corner_m - at_m).rem_euclid(ring_m));
            under_m
                .map(|under_m| {
                    let after = posts_m.partition_point(|&post_m| post_m <= under_m);
                    if after == posts_m.len() {
                        0.0
                    } else {
                        (under_m - posts_m[after - 1]).min(posts_m[after] - under_m)
                    }
                })
                .sum()
        };
        // As the net moves on, a corner under it moves back from its last post to its first: at every post its distance
        // begins to grow, at every middle to fall.
        let mut turns: Vec<(f64, f64)> = Vec::with_capacity(2 * corners_m.len() * posts_m.len());
        for &corner_m in corners_m {
            let place = |offset_m: f64| (corner_m - offset_m).rem_euclid(ring_m) % ring_m;
            for (index, &post_m) in posts_m.iter().enumerate() {
                let at_end = index == 0 || index + 1 == posts_m.len();
                turns.push((place(post_m), if at_end { 1.0 } else { 2.0 }));
                if let Some(next_m) = posts_m.get(index + 1) {
                    turns.push((place(f64::midpoint(post_m, *next_m)), -2.0));
                }
            }
        }
        turns.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
        let first_m = turns.iter().map(|turn| turn.0).find(|&turn_m| turn_m > crate::SAME_PLACE_M).unwrap_or(ring_m);
        let mut sum_m = sum_at(0.0);
        // A whole number, as every corner adds or takes its own way.
        let mut slope = ((sum_at(first_m / 2.0) - sum_m) / (first_m / 2.0)).round();
        let mut bends = vec![(0.0, sum_m)];
        let mut at_m = 0.0;
        for (turn_m, by) in turns.into_iter().filter(|turn| turn.0 > crate::SAME_PLACE_M) {
            if turn_m > at_m {
                sum_m += slope * (turn_m - at_m);
                at_m = turn_m;
                bends.push((at_m, sum_m));
            }
            slope += by;
        }
        bends.push((ring_m, bends[0].1));
        let per_m = bends.len() as f64 / ring_m;
        let mut from = Vec::with_capacity(bends.len() + 1);
        let mut bend = 0_usize;
        for stretch in 0..=bends.len() {
            while bend + 2 < bends.len() && bends[bend + 1].0 <= stretch as f64 / per_m {
                bend += 1;
            }
            from.push(bend as u32);
        }
        Self { bends, from, per_m }
    }

    fn at(&self, place_m: f64, ring_m: f64) -> f64 {
        let place_m = if place_m >= ring_m { place_m - ring_m } else { place_m };
        let stretch = ((place_m * self.per_m).max(0.0) as usize).min(self.from.len() - 1);
        let mut bend = self.from[stretch] as usize;
        while bend + 2 < self.bends.len() && self.bends[bend + 1].0 < place_m {
            bend += 1;
        }
        let ((from_m, from_sum_m), (to_m, to_sum_m)) = (self.bends[bend], self.bends[bend + 1]);
        if to_m <= from_m {
            return from_sum_m;
        }
        from_sum_m + (to_sum_m - from_sum_m) * ((place_m - from_m) / (to_m - from_m)).clamp(0.0, 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::placement::PlacementRequest;
    use crate::{Net, Outline, Point};

    #[test]
    fn a_table_says_what_the_corners_say() {
        let points: Vec<Point> = (0..23)
            .map(|step| (f64::from(step) * 0.2731, 11.0 + f64::from(step * 7 % 5)))
            .map(|(angle, radius_m)| Point::new(radius_m * angle.cos(), radius_m * angle.sin()))
            .collect();
        // Round figures make corners meet posts at the ring's beginning.
        let rounded: Vec<Point> =
            [(0.0, 0.0), (12.0, 0.0), (12.0, 9.0), (3.0, 12.0), (0.0, 12.0)].map(Point::from).into();
        let kinds =
            [Net::equal(9.0, 3), Net::unequal(&[2.0, 1.0, 3.5]), Net::equal(5.0, 4)].map(|net| net.expect("a net"));
        let nets = [0, 1, 2, 0, 1, 2, 1];
        for outline in [Outline::closed(&points), Outline::closed(&rounded)] {
            let corners = Corners::of(&PlacementRequest::new(&outline, &kinds, &nets));
            let posts: Vec<&[f64]> = kinds.iter().map(Net::posts_m).collect();
            let lattice = Lattice::all_orders(corners.line, &posts, &nets).expect("a small lattice");
            let mut tables = Tables::of(&lattice, &corners).expect("tables");
            for step in 0..400 {
                for reversed in [false, true] {
                    let start_m = f64::from(step) / 400.0 * outline.length_m();
                    let places_m = corners.in_chain_m(start_m, reversed);
                    let (want_m, got_m) =
                        (lattice.least(&places_m, true).1, tables.least_m(start_m, reversed, &places_m));
                    assert!((want_m - got_m).abs() < 1e-9, "{start_m} {reversed}: {got_m}, not {want_m}");
                }
            }
        }
    }
}
