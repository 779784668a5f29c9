//! How the nets fall on the line.

use std::collections::BTreeMap;

use plan::Point;

use super::{Bend, Corner};
use crate::bracing::Kit;
use crate::pins::PinWork;

/// How the nets fall on the line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lay {
    /// Whether the outline closes.
    pub closed: bool,
    /// The vertices, without repeats, with each one's place along the line, metres. Along the line is along the ground
    /// wherever heights are known of it.
    pub vertices: Vec<(Point, f64)>,
    /// Length of the line along the ground, metres.
    pub line_m: f64,
    /// Area that the outline encloses, square metres, whatever netting stands on it; 0 for an open line.
    pub area_m2: f64,
    /// Netting beyond the line, metres.
    pub spare_m: f64,
    /// Line without netting, metres.
    pub short_m: f64,
    /// Nets on the line by kind.
    pub nets_needed: BTreeMap<String, u32>,
    /// Where the chain starts along the line, metres.
    pub start_m: f64,
    /// Whether the chain runs against the outline.
    pub reversed: bool,
    /// Sum of the distances from corners to posts, metres.
    pub corner_miss_m: f64,
    /// A proven lower bound of that sum, where the orders were too many to try.
    pub corner_miss_bound_m: Option<f64>,
    /// What would have been best, where the start is fixed or something is pinned.
    pub best: Option<Best>,
    /// What became of the pins, in the order stated.
    pub pins: Vec<PinWork>,
    /// The nets in the chain's order.
    pub nets: Vec<LaidNet>,
    /// The posts on the line, in the chain's order.
    pub posts: Vec<Post>,
    /// The posts that are folded back beyond the line's end.
    pub spare_posts: Vec<Post>,
    /// Corners along the outline, then ends of the netting.
    pub corners: Vec<Corner>,
    /// Whether the corners could be judged; where not, `corners` and `bends` are empty.
    pub corners_judged: bool,
    /// Gentle bends whose posts will lean.
    pub bends: Vec<Bend>,
    /// Lines of netting that hang on it, as far as they could be laid.
    pub branches: Vec<LaidBranch>,
    /// Minutes to set it all up.
    pub set_up_minutes: f64,
}

impl Lay {
    /// The same with branches: their nets are counted, with so many minutes each.
    pub(crate) fn with_branches(mut self, branches: Vec<LaidBranch>, minutes_a_net: f64) -> Self {
        for net in branches.iter().flat_map(|branch| &branch.nets) {
            *self.nets_needed.entry(net.kind.clone()).or_insert(0) += 1;
            self.set_up_minutes += minutes_a_net;
        }
        self.branches = branches;
        self
    }

    /// Whether the nets lie as in another chain on the same line: in the same order and direction, from a start so near.
    pub fn lies_as(&self, other: &Self, near_m: f64) -> bool {
        let apart_m = (self.start_m - other.start_m).abs();
        let apart_m = if self.closed { apart_m.min((self.line_m - apart_m).abs()) } else { apart_m };
        let kinds = self.nets.iter().map(|net| &net.kind);
        self.reversed == other.reversed && apart_m < near_m && kinds.eq(other.nets.iter().map(|net| &net.kind))
    }

    /// Netting that lies on the line, metres of the chain from its start.
    pub fn covered_m(&self) -> f64 {
        if self.short_m < geometry::MEET_M { self.line_m } else { (self.line_m - self.short_m).max(0.0) }
    }

    /// Whether netting lies all the way between two places along the line, metres.
    pub fn is_netted(&self, from_m: f64, to_m: f64) -> bool {
        let bare_m = self.line_m - self.covered_m();
        let bare_from_m = if self.reversed { self.start_m - self.line_m } else { self.start_m + self.covered_m() };
        let shared_m = |bare_from_m: f64| to_m.min(bare_from_m + bare_m) - from_m.max(bare_from_m);
        // Round a ring the bare stretch may lie over the first vertex, on either side of it.
        let rounds = if self.closed { -2..=2 } else { 0..=0 };
        let lies_m = rounds.map(|round| bare_from_m + f64::from(round) * self.line_m);
        lies_m.map(shared_m).all(|shared_m| shared_m < geometry::MEET_M)
    }

    /// The part of a net that stands on the line, from its first place along the chain to its last, metres; `None` of one
    /// that is wholly left over.
    pub fn stands_m(&self, net: usize) -> Option<[f64; 2]> {
        let net = self.nets.get(net)?;
        let end_m = net.end_m.min(self.covered_m());
        (end_m - net.start_m > geometry::MEET_M).then_some([net.start_m, end_m])
    }

    /// A post by its number on the line, or on a branch.
    pub fn post(&self, post: usize, branch: Option<usize>) -> Option<&Post> {
        let posts = match branch {
            None => &self.posts,
            Some(branch) => &self.branches.get(branch)?.posts,
        };
        posts.get(post)
    }

    /// The line, to measure distances from.
    pub fn line(&self) -> geometry::Outline {
        let points: Vec<_> = self.vertices.iter().map(|vertex| crate::point(vertex.0)).collect();
        if self.closed { geometry::Outline::closed(&points) } else { geometry::Outline::open(&points) }
    }

    /// The netting as it stands: the line without the gap of a chain that falls short.
    pub fn netting(&self) -> Option<geometry::Outline> {
        if self.short_m < geometry::MEET_M {
            return Some(self.line());
        }
        let (first, last) = (self.posts.first()?, self.posts.last()?);
        let chain_m = |along_m: f64| {
            let from_start_m = if self.reversed { self.start_m - along_m } else { along_m - self.start_m };
            if self.closed { from_start_m.rem_euclid(self.line_m) } else { from_start_m }
        };
        let mut between: Vec<(f64, geometry::Point)> = self
            .vertices
            .iter()
            .map(|(at, along_m)| (chain_m(*along_m), crate::point(*at)))
            .filter(|(at_m, _)| *at_m > 0.0 && *at_m < last.chain_m)
            .collect();
        between.sort_by(|a, b| a.0.total_cmp(&b.0));
        let between = between.into_iter().map(|(_, at)| at);
        let places: Vec<_> =
            std::iter::once(crate::point(first.at)).chain(between).chain([crate::point(last.at)]).collect();
        Some(geometry::Outline::open(&places))
    }

    /// Joins between nets on the line, a ring's closing one included.
    pub fn joins(&self) -> usize {
        let all: usize = self.nets_needed.values().map(|&count| count as usize).sum();
        let hanging: usize = self.branches.iter().map(|branch| branch.nets.len()).sum();
        let on_line = all.saturating_sub(hanging);
        let ring = self.closed && self.short_m < geometry::MEET_M;
        on_line.saturating_sub(usize::from(!ring))
    }

    /// Whether the inside of a ring lies to the left of its outline as stated.
    pub fn left_is_inside(&self) -> bool {
        let places: Vec<geometry::Point> = self.vertices.iter().map(|vertex| crate::point(vertex.0)).collect();
        geometry::Outline::closed(&places).is_counter_clockwise()
    }

    /// Where nets join on the line, along it: metres and places; a ring's closing join among them.
    pub fn join_places(&self) -> Vec<(f64, Point)> {
        let between = self.posts.windows(2).filter(|pair| pair[0].net != pair[1].net).map(|pair| &pair[1]);
        let ring = self.closed && self.short_m < geometry::MEET_M;
        let closing = self.posts.first().filter(|_| ring);
        let mut places: Vec<(f64, Point)> = between.chain(closing).map(|post| (post.along_m, post.at)).collect();
        places.sort_by(|a, b| a.0.total_cmp(&b.0));
        places
    }

    /// Corners and ends that have a brace or need one.
    pub fn braces(&self) -> usize {
        self.corners.iter().filter(|corner| corner.needs_brace()).count()
    }

    /// Corners for which a brace is advised beside those.
    pub fn braces_advised(&self) -> usize {
        self.corners.iter().filter(|corner| corner.brace_advised()).count()
    }

    /// Corners on posts, and all corners; ends are neither.
    pub fn corners_on_posts(&self) -> (usize, usize) {
        let corners = || self.corners.iter().filter(|corner| !corner.end);
        (corners().filter(|corner| corner.to_post_m < geometry::MEET_M).count(), corners().count())
    }
}

impl Lay {
    /// The braces that are decided or have to be, by what they are made of, each with how many there are.
    pub fn kits(&self) -> Vec<(Kit, usize)> {
        let mut kits: Vec<(Kit, usize)> = Vec::new();
        for corner in self.corners.iter().filter(|corner| corner.needs_brace()) {
            match kits.iter_mut().find(|(kit, _)| *kit == corner.kit) {
                Some((_, count)) => *count += 1,
                None => kits.push((corner.kit, 1)),
            }
        }
        kits
    }
}

/// The best placement, beside a fixed or pinned one.
#[derive(Clone, Debug, PartialEq)]
pub struct Best {
    /// Where its chain starts, metres along the outline.
    pub start_m: f64,
    /// Whether its chain runs against the outline.
    pub reversed: bool,
    /// Kinds of its nets in order.
    pub nets: Vec<String>,
    /// Its sum of misses, metres.
    pub corner_miss_m: f64,
}

/// One net in the chain.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidNet {
    /// Its kind.
    pub kind: String,
    /// Start along the chain, metres.
    pub start_m: f64,
    /// End along the chain, metres.
    pub end_m: f64,
}

/// A line of netting that hangs on a run's. Its posts and nets are counted for themselves.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LaidBranch {
    /// Its place in the run's list of branches.
    pub branch: usize,
    /// Where it hangs along the run's outline, metres.
    pub from_m: f64,
    /// That place.
    pub at: Point,
    /// The vertices of its own line, each with its place along it, metres.
    pub vertices: Vec<(Point, f64)>,
    /// Length of its line, metres.
    pub line_m: f64,
    /// Netting beyond it, metres.
    pub spare_m: f64,
    /// Line without netting, metres.
    pub short_m: f64,
    /// Its nets, from the run on.
    pub nets: Vec<LaidNet>,
    /// Its posts on its line, from the run on.
    pub posts: Vec<Post>,
    /// Posts that are folded back.
    pub spare_posts: Vec<Post>,
}

/// One post.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Post {
    /// Where it stands.
    pub at: Point,
    /// Along the outline, metres.
    pub along_m: f64,
    /// Along the chain, metres.
    pub chain_m: f64,
    /// Its net, from 0 in the chain's order.
    pub net: usize,
    /// Its number on that net, from 0.
    pub post: usize,
}

impl Post {
    /// A post as it was placed.
    pub(crate) fn of(placed: &geometry::Post) -> Self {
        let geometry::Post { at, along_m, chain_m, net, post } = *placed;
        Self { at: crate::place(at), along_m, chain_m, net, post }
    }
}

#[cfg(test)]
mod tests {
    use super::{LaidNet, Lay};

    fn lay(start_m: f64, reversed: bool, kinds: &[&str], closed: bool) -> Lay {
        let net = |kind: &&str| LaidNet { kind: (*kind).to_owned(), start_m: 0.0, end_m: 50.0 };
        Lay { closed, line_m: 100.0, start_m, reversed, nets: kinds.iter().map(net).collect(), ..Lay::default() }
    }

    #[test]
    fn chains_lie_alike_in_the_same_order_and_way_from_a_start_so_near() {
        let one = lay(0.25, false, &["long", "short"], true);
        for (other, alike) in [
            (lay(0.75, false, &["long", "short"], true), true),
            // Round a ring the places before and after the first corner are near each other.
            (lay(99.75, false, &["long", "short"], true), true),
            (lay(3.0, false, &["long", "short"], true), false),
            (lay(0.25, true, &["long", "short"], true), false),
            (lay(0.25, false, &["short", "long"], true), false),
            (lay(0.25, false, &["long"], true), false),
        ] {
            assert_eq!(one.lies_as(&other, 1.0), alike, "{other:?}");
        }
        let open = lay(0.25, false, &["long"], false);
        assert!(!open.lies_as(&lay(99.75, false, &["long"], false), 1.0), "an open line has two ends");
    }
}
