//! Gentle bends: each turn is too slight for a brace, and still their posts may lean together.

use super::{CornerRequest, GENTLE_TURN_RAD, passes, pull_and_hold_n};
use crate::corner_pull_n;
use crate::outline::TURN_GRAIN_RAD;

/// A straight of more panels than this between two turns is no bend (common practice, no source).
const STRAIGHT_PANELS: f64 = 3.0;

/// A gentle bend whose posts lean although no corner of it asks for a brace.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LeaningBend {
    /// Post nearest to the bend's first vertex along the outline: a number of
    /// [`Placement::posts`](crate::Placement::posts).
    pub first_post: usize,
    /// Post nearest to the bend's last vertex.
    pub last_post: usize,
    /// The vertex of the worst pull over hold.
    pub worst_vertex: usize,
    /// Pull there, newtons.
    pub pull_n: f64,
    /// Hold there, newtons.
    pub hold_n: f64,
}

/// Bends of turns below 20 degrees where the pull is more than a post holds, along the outline.
///
/// A bend is a stretch of neighbouring vertices that turn, but each below 20 degrees: corners, and gentler vertices where
/// the pull alone is more than a post holds. A straight of more than three panels ends it.
pub fn leaning_bends(request: &CornerRequest<'_>) -> Vec<LeaningBend> {
    let (outline, placement) = (request.outline, request.placement);
    if placement.posts.is_empty() {
        return Vec::new();
    }
    let panels = placement.posts.len() + placement.spare_posts.len() - placement.nets.len();
    let longest_m = STRAIGHT_PANELS * placement.chain_m / panels as f64;
    let count = outline.vertices().len();
    let bending: Vec<Option<Bending>> = (0..count).map(|vertex| bending(request, vertex)).collect();
    let goes_on = |vertex: usize| {
        let before = (vertex + count - 1) % count;
        let (from, to) = outline.side(before);
        (outline.is_closed() || vertex > 0) && bending[before].is_some() && from.distance_m(to) <= longest_m
    };
    // On a ring begin where a bend begins, so that none is cut in two.
    let first = (0..count).find(|&vertex| !goes_on(vertex)).unwrap_or(0);
    let mut bends: Vec<Vec<&Bending>> = Vec::new();
    for vertex in (0..count).map(|step| (first + step) % count) {
        if let Some(bending) = &bending[vertex] {
            match bends.last_mut() {
                Some(bend) if vertex != first && goes_on(vertex) => bend.push(bending),
                _ => bends.push(vec![bending]),
            }
        }
    }
    let mut leaning: Vec<LeaningBend> = bends.iter().filter_map(|bend| leaning_bend(bend)).collect();
    leaning.sort_by_key(|bend| bend.worst_vertex);
    leaning
}

/// A bend whose worst vertex leans; `None` where all stand.
fn leaning_bend(bend: &[&Bending]) -> Option<LeaningBend> {
    let worst = bend
        .iter()
        .filter(|bending| passes(bending.pull_n, bending.hold_n))
        .max_by(|one, other| (one.pull_n - one.hold_n).total_cmp(&(other.pull_n - other.hold_n)))?;
    Some(LeaningBend {
        first_post: bend.first()?.post,
        last_post: bend.last()?.post,
        worst_vertex: worst.vertex,
        pull_n: worst.pull_n,
        hold_n: worst.hold_n,
    })
}

/// A vertex of a gentle bend.
#[derive(Debug)]
struct Bending {
    vertex: usize,
    post: usize,
    pull_n: f64,
    hold_n: f64,
}

fn bending(request: &CornerRequest<'_>, vertex: usize) -> Option<Bending> {
    let corner = &request.outline.vertices()[vertex];
    let turn_rad = corner.turn_rad();
    if turn_rad <= TURN_GRAIN_RAD || turn_rad >= GENTLE_TURN_RAD - TURN_GRAIN_RAD {
        return None;
    }
    let (_, posts) = request.placement.nearest_posts(corner.along_m);
    let (pull_n, hold_n) = pull_and_hold_n(request, &posts, |tension_n| corner_pull_n(tension_n, turn_rad));
    (corner.is_corner() || passes(pull_n, hold_n)).then_some(Bending { vertex, post: posts[0], pull_n, hold_n })
}
