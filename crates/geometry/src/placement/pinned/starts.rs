//! Where a chain may start so that its pins can be kept.

use super::NEAR_M;
use crate::placement::PlacementRequest;
use crate::placement::chain::{Lattice, Line};
use crate::placement::pins::{Pin, PinKind};
use crate::placement::search::{Corners, MAX_STARTS, MAX_SWEPT_POSTS, Start};
use crate::placement::sweep::sweep;

/// The starts worth trying.
pub(super) struct Starts {
    /// The least bound first, but where they are narrowed down.
    pub(super) list: Vec<Start>,
    /// No start left out has a smaller bound.
    pub(super) bound_m: f64,
    /// Whether they are all at which a corner meets a post, of unlike nets, and can be narrowed down.
    pub(super) narrowed: bool,
}

impl Starts {
    fn few(places: impl IntoIterator<Item = (f64, bool)>) -> Self {
        let start = |(at_m, reversed)| Start { bound_m: 0.0, at_m, reversed };
        Self { list: places.into_iter().map(start).collect(), bound_m: f64::INFINITY, narrowed: false }
    }
}

/// Every start worth trying; `None` where two starts are pinned.
pub(super) fn starts(
    request: &PlacementRequest<'_>,
    pins: &[Pin],
    corners: &Corners,
    lattice: &Lattice<'_>,
) -> Option<Starts> {
    let Line { length_m: line_m, closed } = corners.line;
    let places = |is_it: fn(&PinKind) -> bool| -> Vec<f64> {
        pins.iter().filter(|pin| is_it(&pin.what)).map(|pin| pin.along_m).collect()
    };
    let starts_m = places(|what| matches!(what, PinKind::Start));
    if !closed {
        let ends = [(0.0, false), (line_m, true)];
        let nearer = |reversed: bool| {
            starts_m.iter().all(|&start_m| {
                let from_m = if reversed { line_m - start_m } else { start_m };
                from_m <= line_m / 2.0 + NEAR_M
            })
        };
        return Some(Starts::few(ends.into_iter().filter(|end| nearer(end.1))));
    }
    let wrap_m = |along_m: f64| crate::placement::lay::wrap_m(line_m, true, along_m);
    if let Some(&first_m) = starts_m.first() {
        let apart_m = |start_m: f64| {
            let apart_m = (wrap_m(start_m) - wrap_m(first_m)).abs();
            apart_m.min(line_m - apart_m)
        };
        if starts_m.iter().any(|&start_m| apart_m(start_m) > NEAR_M) {
            return None;
        }
        let start_m = wrap_m(first_m);
        return Some(Starts::few([(start_m, false), (start_m, true)]));
    }
    // Where the posts of all orders are too many to be held, no start has a bound.
    let posts_m = if lattice.post_count() > MAX_SWEPT_POSTS { None } else { Some(lattice.posts_m()) };
    let ends_m = lattice.ends_m();
    let mut found: Vec<(f64, bool, Option<f64>)> = Vec::new();
    let mut dense = false;
    let mut from = |along_m: f64, chain_m: &[f64]| {
        for &at_m in chain_m {
            found.extend([(wrap_m(along_m - at_m), false, None), (wrap_m(along_m + at_m), true, None)]);
        }
    };
    let (joins_m, at_posts_m) = (places(|what| *what == PinKind::Join), places(|what| *what == PinKind::Post));
    if let Some(&join_m) = joins_m.first() {
        from(join_m, &ends_m);
    } else if let (Some(&post_m), Some(posts_m)) = (at_posts_m.first(), &posts_m) {
        from(post_m, posts_m);
    } else {
        for net_m in places(|what| matches!(what, PinKind::Net { .. })) {
            from(net_m, &ends_m);
        }
        for post_m in at_posts_m {
            from(post_m, &ends_m);
        }
        if corners.along_m.is_empty() {
            found.push((request.feed.map_or(0.0, |feed| request.outline.nearest_along(feed).0), false, None));
        } else if let Some(posts_m) = &posts_m {
            dense = true;
            let ring_posts_m: Vec<f64> =
                posts_m.iter().copied().filter(|&post_m| post_m < line_m - crate::SAME_PLACE_M).collect();
            for reversed in [false, true] {
                sweep(&corners.on_ring_m(reversed), &ring_posts_m, line_m, |at_m, bound_m| {
                    found.push((wrap_m(if reversed { line_m - at_m } else { at_m }), reversed, Some(bound_m)));
                });
            }
        }
    }
    found.sort_unstable_by(|a, b| a.1.cmp(&b.1).then(a.0.total_cmp(&b.0)));
    found.dedup_by(|later, earlier| later.1 == earlier.1 && later.0 - earlier.0 < crate::SAME_PLACE_M);
    let bound_m = |start_m: f64, reversed: bool| match &posts_m {
        Some(posts_m) => lattice.misses_from(posts_m, &corners.in_chain_m(start_m, reversed)).sum_m,
        None => 0.0,
    };
    let mut list: Vec<Start> = found
        .into_iter()
        .map(|(at_m, reversed, known_m)| {
            let bound_m = known_m.unwrap_or_else(|| bound_m(at_m, reversed));
            Start { bound_m, at_m, reversed }
        })
        .collect();
    let narrowed = dense && !lattice.is_single();
    if !narrowed || list.len() > MAX_STARTS {
        list.sort_unstable();
    }
    let mut left_out_m = if posts_m.is_none() { 0.0 } else { f64::INFINITY };
    if list.len() > MAX_STARTS {
        left_out_m = list[MAX_STARTS].bound_m.min(left_out_m);
        list.truncate(MAX_STARTS);
    }
    Some(Starts { list, bound_m: left_out_m, narrowed })
}
