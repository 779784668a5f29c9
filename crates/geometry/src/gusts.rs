//! Wind on a run: at which speed the posts between its braced places go over.
//!
//! The wind blows square to the net, which is the worst; each post takes the wind on half of either panel beside it, at
//! half the net's height, and with it the net's own pull where the line turns a little. Posts side by side at a join
//! hold together. A post goes over where that passes what its spikes hold. Where posts of two stretches give way at one
//! speed, those of the longer stretch lean farther: beyond its posts' hold a stretch hangs in its net like a line
//! between two firm places, and the sag of that grows with the square of its length. Gusts are taken as steady wind, and
//! the shelter of hedge and grass is left out. Metres, newtons, metres a second. Sources: [`crate::statics`] for the
//! wind; [`Soil::hold_n`] for the posts; docs/sources.md, husbandry 2.3.

use crate::statics::wind_n_per_m;
use crate::{Corner, MEET_M, NetForces, Outline, Placement, Soil, Verdict, corner_pull_n};

/// What is needed to judge the wind on a run.
#[derive(Debug, Clone, Copy)]
pub struct GustRequest<'a> {
    /// The line.
    pub outline: &'a Outline,
    /// The nets on it.
    pub placement: &'a Placement,
    /// Forces of each kind, in the order of the placement's kinds.
    pub kinds: &'a [NetForces],
    /// Share of its face that is strand, for each kind.
    pub solidity: &'a [f64],
    /// The corners and ends, judged: those that want a brace are taken as braced.
    pub corners: &'a [Corner],
    /// The ground, as wet as it is.
    pub soil: Soil,
}

/// A post, or posts side by side, in the wind.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// The posts there: numbers of [`Placement::posts`].
    pub posts: Vec<usize>,
    /// Place along the outline, metres.
    pub along_m: f64,
    /// Net whose wind it takes, metres.
    pub net_m: f64,
    /// What the posts hold beyond the net's pull, newtons; 0 where that is more.
    pub left_n: f64,
    /// The wind at which they go over, metres a second.
    pub limit_m_per_s: f64,
}

/// A stretch between two places that are braced, or the whole of a ring without one.
#[derive(Debug, Clone, PartialEq)]
pub struct Stretch {
    /// Length along the line, metres.
    pub length_m: f64,
    /// Its posts in the order of the chain.
    pub standing: Vec<Standing>,
    /// The wind at which its first posts go over, metres a second.
    pub limit_m_per_s: f64,
}

impl Stretch {
    /// Of the posts that go over first, the one nearest to the stretch's middle.
    pub fn first(&self) -> Option<&Standing> {
        let middle = self.standing.len().saturating_sub(1) as f64 / 2.0;
        let weakest = |one: &(usize, &Standing)| same(one.1.limit_m_per_s, self.limit_m_per_s);
        let off = |index: usize| (index as f64 - middle).abs();
        self.standing
            .iter()
            .enumerate()
            .filter(weakest)
            .min_by(|a, b| off(a.0).total_cmp(&off(b.0)))
            .map(|(_, one)| one)
    }
}

/// Speeds within this share are one.
const SPEED_GRAIN: f64 = 1e-9;

fn same(one: f64, other: f64) -> bool {
    (one - other).abs() <= SPEED_GRAIN * one.abs().max(other.abs())
}

/// The stretches of a run in the order of the chain; none where no post stands free.
pub fn stretches(request: &GustRequest<'_>) -> Vec<Stretch> {
    let placement = request.placement;
    let groups = groups(placement);
    let braced = |group: &Vec<usize>| {
        let along_m = placement.posts[group[0]].along_m;
        request.corners.iter().any(|corner| {
            (corner.end || corner.brace != Verdict::None)
                && (corner.posts.iter().any(|post| group.contains(post))
                    || request.outline.between_m(corner.along_m, along_m) < MEET_M)
        })
    };
    let count = groups.len();
    let firm: Vec<bool> = groups.iter().map(braced).collect();
    let ring = placement.is_ring();
    // On a ring begin behind a braced place, so that no stretch is cut in two.
    let start = if ring { firm.iter().position(|&firm| firm).unwrap_or(0) } else { 0 };
    let mut found: Vec<Stretch> = Vec::new();
    let mut open = false;
    for index in (0..count).map(|step| (start + step) % count) {
        if firm[index] {
            open = false;
            continue;
        }
        let [before_m, after_m] = panels_m(placement, &groups, index);
        let Some(standing) = standing(request, &groups[index], 0.5 * (before_m + after_m)) else { continue };
        if !open {
            // A ring without a firm place begins anywhere, and its first panel is its last one's.
            let length_m = if firm.contains(&true) || !ring { before_m } else { 0.0 };
            found.push(Stretch { length_m, standing: Vec::new(), limit_m_per_s: f64::INFINITY });
            open = true;
        }
        let Some(stretch) = found.last_mut() else { continue };
        stretch.length_m += after_m;
        stretch.limit_m_per_s = stretch.limit_m_per_s.min(standing.limit_m_per_s);
        stretch.standing.push(standing);
    }
    found
}

/// Posts by place, in the order of the chain; on a ring the last post stands with the first.
fn groups(placement: &Placement) -> Vec<Vec<usize>> {
    let mut groups: Vec<Vec<usize>> = Vec::new();
    let mut last_m = f64::NEG_INFINITY;
    for (index, post) in placement.posts.iter().enumerate() {
        match groups.last_mut() {
            Some(group) if post.chain_m - last_m < MEET_M => group.push(index),
            _ => groups.push(vec![index]),
        }
        last_m = post.chain_m;
    }
    if placement.is_ring() && groups.len() > 1 && placement.covered_m() - last_m < MEET_M {
        let closing = groups.pop().unwrap_or_default();
        groups[0].extend(closing);
    }
    groups
}

/// Metres in the chain from posts to those before and after them; 0 where there are none.
fn panels_m(placement: &Placement, groups: &[Vec<usize>], index: usize) -> [f64; 2] {
    let chain_m = |index: usize| placement.posts[groups[index][0]].chain_m;
    let (count, here_m) = (groups.len(), chain_m(index));
    let ring_m = if placement.is_ring() && count > 1 { Some(placement.covered_m()) } else { None };
    let before_m = match (index.checked_sub(1), ring_m) {
        (Some(before), _) => here_m - chain_m(before),
        (None, Some(ring_m)) => here_m + ring_m - chain_m(count - 1),
        (None, None) => 0.0,
    };
    let after_m = match (index + 1 < count, ring_m) {
        (true, _) => chain_m(index + 1) - here_m,
        (false, Some(ring_m)) => chain_m(0) + ring_m - here_m,
        (false, None) => 0.0,
    };
    [before_m, after_m]
}

fn standing(request: &GustRequest<'_>, posts: &[usize], net_m: f64) -> Option<Standing> {
    let placement = request.placement;
    let (mut hold_n, mut tension_n, mut load_n_per_m) = (0.0, 0.0_f64, 0.0_f64);
    for &post in posts {
        let kind = placement.nets[placement.posts[post].net].kind;
        let (forces, &solidity) = request.kinds.get(kind).zip(request.solidity.get(kind))?;
        hold_n += f64::from(forces.spikes_per_post) * request.soil.hold_n(forces.spike, forces.height_m / 2.0, false);
        tension_n = tension_n.max(forces.tension_n);
        load_n_per_m = load_n_per_m.max(wind_n_per_m(1.0, solidity, forces.height_m));
    }
    let along_m = placement.posts[*posts.first()?].along_m;
    let at_vertex = |vertex: &&crate::Vertex| request.outline.between_m(vertex.along_m, along_m) < MEET_M;
    let turn_rad = request.outline.vertices().iter().find(at_vertex).map_or(0.0, crate::Vertex::turn_rad);
    let left_n = (hold_n - corner_pull_n(tension_n, turn_rad)).max(0.0);
    let whole_n = load_n_per_m * net_m;
    let limit_m_per_s = if whole_n > 0.0 { (left_n / whole_n).sqrt() } else { f64::INFINITY };
    Some(Standing { posts: posts.to_vec(), along_m, net_m, left_n, limit_m_per_s })
}

/// The stretches that go over first: those of the least wind, and of these the longest; several where they are alike.
pub fn first(stretches: &[Stretch]) -> Vec<&Stretch> {
    let least = stretches.iter().map(|one| one.limit_m_per_s).fold(f64::INFINITY, f64::min);
    let weakest: Vec<&Stretch> =
        stretches.iter().filter(|one| least.is_finite() && same(one.limit_m_per_s, least)).collect();
    let longest_m = weakest.iter().map(|one| one.length_m).fold(0.0, f64::max);
    weakest.into_iter().filter(|one| one.length_m > longest_m - MEET_M).collect()
}
