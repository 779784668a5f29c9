//! Laying the chosen chain out on the line: nets, posts, spare, misses.

use super::chain::Chosen;
use super::{CornerMiss, EQUAL_SUMS_M, MEET_M, PlacedNet, Placement, PlacementRequest, Post};

/// Place along the outline of a distance in the chain; what lies beyond the line's end is folded back.
pub(super) fn along_m(line_m: f64, closed: bool, start_m: f64, reversed: bool, chain_m: f64) -> f64 {
    let folded_m = if chain_m > line_m { (2.0 * line_m - chain_m).rem_euclid(2.0 * line_m) } else { chain_m };
    // A spare longer than the whole line comes back a second time.
    let folded_m = if folded_m > line_m { 2.0 * line_m - folded_m } else { folded_m };
    let along_m = if reversed { start_m - folded_m } else { start_m + folded_m };
    wrap_m(line_m, closed, along_m)
}

/// Distance in the chain of a place along the outline.
pub(super) fn chain_m(line_m: f64, closed: bool, start_m: f64, reversed: bool, along_m: f64) -> f64 {
    wrap_m(line_m, closed, if reversed { start_m - along_m } else { along_m - start_m })
}

/// Round the ring when closed, held to the ends when open; the ring's last nanometre is its beginning.
pub(super) fn wrap_m(line_m: f64, closed: bool, along_m: f64) -> f64 {
    if !closed {
        return along_m.clamp(0.0, line_m);
    }
    let wrapped_m = along_m.rem_euclid(line_m);
    if line_m - wrapped_m < crate::SAME_PLACE_M { 0.0 } else { wrapped_m }
}

/// Lays the chosen chain on the line.
pub(super) fn lay(request: &PlacementRequest<'_>, chosen: &Chosen) -> Placement {
    let outline = request.outline;
    let (line_m, closed) = (outline.length_m(), outline.is_closed());
    let along = |chain_m| along_m(line_m, closed, chosen.start_m, chosen.reversed, chain_m);

    let mut nets = Vec::with_capacity(chosen.order.len());
    let mut posts = Vec::new();
    let mut spare_posts = Vec::new();
    let mut start_m = 0.0;
    for (index, &kind) in chosen.order.iter().enumerate() {
        let net = &request.kinds[kind];
        let on_line = index == 0 || start_m < line_m - MEET_M;
        for (number, offset_m) in net.posts_m().iter().enumerate() {
            let chain_m = start_m + offset_m;
            let stands = on_line && chain_m <= line_m + MEET_M;
            // Within the tolerance the last post meets the line's end.
            let along_m = along(if stands { chain_m.min(line_m) } else { chain_m });
            let post = Post { net: index, post: number, chain_m, along_m, at: outline.at(along_m) };
            if stands { posts.push(post) } else { spare_posts.push(post) }
        }
        let end_m = start_m + net.length_m();
        nets.push(PlacedNet { kind, start_m, end_m, on_line });
        start_m = end_m;
    }
    let chain_total_m = start_m;
    let misses: Vec<CornerMiss> = outline
        .corners()
        .map(|(vertex, corner)| {
            let place_m = chain_m(line_m, closed, chosen.start_m, chosen.reversed, corner.along_m);
            let (to_post_m, near) = nearest_posts(line_m, closed, &posts, place_m);
            CornerMiss { vertex, along_m: corner.along_m, turn_rad: corner.turn_rad(), to_post_m, posts: near }
        })
        .collect();
    Placement {
        line_m,
        chain_m: chain_total_m,
        start_m: chosen.start_m,
        reversed: chosen.reversed,
        order: chosen.order.clone(),
        corner_miss_m: misses.iter().map(|miss| miss.to_post_m).sum(),
        largest_miss_m: misses.iter().map(|miss| miss.to_post_m).fold(0.0, f64::max),
        bound_m: chosen.bound_m,
        nets,
        posts,
        spare_posts,
        spare_m: (chain_total_m - line_m).max(0.0),
        short_m: (line_m - chain_total_m).max(0.0),
        misses,
        best: None,
        pins: Vec::new(),
        closed,
    }
}

/// The nearest post to a place in the chain, of equals the first, and the posts that stand where it stands.
pub(super) fn nearest_posts(line_m: f64, closed: bool, posts: &[Post], place_m: f64) -> (f64, Vec<usize>) {
    let stands_m = |post: usize| posts[post].chain_m.min(line_m);
    let apart_m = |one_m: f64, other_m: f64| {
        let apart_m = (one_m - other_m).abs();
        if closed { apart_m.min(line_m - apart_m) } else { apart_m }
    };
    let last = posts.len() - 1;
    let after = posts.partition_point(|post| post.chain_m.min(line_m) < place_m);
    // Posts stand in chain order, so the nearest is a neighbour, or round the ring the first or last.
    let mut near = vec![0, after.saturating_sub(1), after.min(last), last];
    let least_m = near.iter().map(|&post| apart_m(stands_m(post), place_m)).fold(f64::INFINITY, f64::min);
    near.retain(|&post| apart_m(stands_m(post), place_m) <= least_m + EQUAL_SUMS_M);
    let nearest = near.into_iter().min().unwrap_or(0);
    let same =
        |post: usize| posts[post].net != posts[nearest].net && apart_m(stands_m(post), stands_m(nearest)) < MEET_M;
    let mut near = vec![nearest];
    near.extend(
        [nearest.checked_sub(1), Some(nearest + 1), Some(0), Some(last)]
            .into_iter()
            .flatten()
            .filter(|&post| post <= last && same(post)),
    );
    near[1..].sort_unstable();
    near.dedup();
    (least_m, near)
}
