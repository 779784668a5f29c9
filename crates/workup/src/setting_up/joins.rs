//! Where two nets meet: on the line, in the spare, and where a ring closes.

use geometry::{Placement, Point};

/// A join of two nets.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Join {
    /// The net before it and the net after it.
    pub(crate) nets: (usize, usize),
    /// Where.
    pub(crate) at: Point,
    /// Whether the ring closes there.
    pub(crate) closing: bool,
}

/// The joins in the chain's order; a ring's closing one is the last.
///
/// The closing join of a ring is between the net that meets the line's end and the first one; spare hangs before it.
pub(crate) fn of(placement: &Placement) -> Vec<Join> {
    let first_post = |net: usize| {
        let all = placement.posts.iter().chain(&placement.spare_posts);
        all.filter(|post| post.net == net).min_by_key(|post| post.post).map(|post| post.at)
    };
    let mut joins: Vec<Join> = (1..placement.nets.len())
        .filter_map(|net| Some(Join { nets: (net - 1, net), at: first_post(net)?, closing: false }))
        .collect();
    let last_on_line = placement.nets_on_line().count().saturating_sub(1);
    if placement.is_ring()
        && let Some(at) = first_post(0)
    {
        joins.push(Join { nets: (last_on_line, 0), at, closing: true });
    }
    joins
}
