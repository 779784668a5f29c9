//! A run while it is being unrolled: how the nets left in the store fall along what is drawn, post by post, and from
//! where the next corner closes it exactly.
//!
//! Nets are taken from the store longest first and lie from the first corner on; the last one is of whichever kind leaves
//! the least over. Lengths are those of the map: what the ground takes up is known when the run is laid.

use geometry::{ClosingCurve, Net, Outline, Vector};
use plan::{Plan, Point, Run};

use crate::{nets, place, point};

/// A corner this near to a post stands on it, metres.
const ON_POST_M: f64 = geometry::MEET_M;

/// The nets that are left to unroll, in the order in which they are taken.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Rolls {
    /// Kind of each, its place in the store's list, and where it starts on the line, metres.
    nets: Vec<(usize, f64)>,
    /// Where each post stands on the line, metres, with the net that it belongs to; at a join the next net's.
    posts: Vec<(f64, usize)>,
    /// Length of them all, metres.
    length_m: f64,
    /// Length of each kind and how many of it there are, longest first.
    kinds: Vec<(usize, f64, usize)>,
}

impl Rolls {
    /// The nets that a further run can have.
    pub fn of(plan: &Plan) -> Self {
        let left = nets::left(plan, &Run::default(), &nets::Chosen::new());
        let mut rolls = Self::default();
        for kind in nets::by_length(plan, &left) {
            let Ok(net) = nets::built(&plan.store.nets[kind]) else { continue };
            rolls.kinds.push((kind, net.length_m(), left[kind] as usize));
            for _ in 0..left[kind] {
                // Beyond any run that can be worked out; the store's count may be a slip of the pen.
                if rolls.posts.len() + net.panels() > geometry::MAX_CHAIN_POSTS {
                    return rolls;
                }
                rolls.push(kind, &net);
            }
        }
        rolls
    }

    fn push(&mut self, kind: usize, net: &Net) {
        let (index, start_m) = (self.nets.len(), self.length_m);
        // The first post of a net stands where the last of the net before does.
        self.posts.pop();
        self.posts.extend(net.posts_m().iter().map(|at_m| (start_m + at_m, index)));
        self.nets.push((kind, start_m));
        self.length_m += net.length_m();
    }

    /// How many there are.
    pub fn count(&self) -> usize {
        self.nets.len()
    }

    /// Their length, metres.
    pub fn length_m(&self) -> f64 {
        self.length_m
    }

    /// Length of the first so many, metres.
    fn first_m(&self, count: usize) -> f64 {
        self.nets.get(count).map_or(self.length_m, |&(_, start_m)| start_m)
    }

    /// Ids of the first so many.
    pub fn ids(&self, plan: &Plan, count: usize) -> Vec<String> {
        self.nets.iter().take(count).map(|&(kind, _)| plan.store.nets[kind].id.clone()).collect()
    }

    /// Ids of the nets that close a run: the first ones, and the last of its own kind.
    pub fn closing_ids(&self, plan: &Plan, closing: &Closing) -> Vec<String> {
        let mut ids = self.ids(plan, closing.nets.saturating_sub(1));
        ids.extend(closing.last.map(|kind| plan.store.nets[kind].id.clone()));
        ids
    }

    /// Whether they are of more than one kind.
    pub fn are_mixed(&self) -> bool {
        self.kinds.len() > 1
    }

    /// What so many nets reach, by the kind of the last one: metres and that kind.
    fn reaches(&self, count: usize) -> impl Iterator<Item = (f64, usize)> + '_ {
        let before = count.saturating_sub(1);
        let used = move |kind: usize| self.nets[..before].iter().filter(|net| net.0 == kind).count();
        let kinds = self.kinds.iter().filter(move |(kind, _, owned)| count <= self.count() && used(*kind) < *owned);
        kinds.map(move |&(kind, length_m, _)| (self.first_m(before) + length_m, kind))
    }

    /// The fewest nets that are so long and of those the least: how many, metres, the last one's kind. All of them where none
    /// are.
    fn fewest(&self, metres: f64) -> (usize, f64, Option<usize>) {
        let least = |count: usize| {
            let enough = self.reaches(count).filter(|&(reach_m, _)| reach_m >= metres - ON_POST_M);
            enough.min_by(|one, other| one.0.total_cmp(&other.0)).map(|(reach_m, kind)| (count, reach_m, Some(kind)))
        };
        let all = (self.count(), self.length_m, self.nets.last().map(|net| net.0));
        (1..=self.count()).find_map(least).unwrap_or(all)
    }

    /// The post nearest to a place of the line, metres along it, if any lies after `after_m`.
    fn nearest_post_m(&self, at_m: f64, after_m: f64) -> Option<f64> {
        let later = self.posts.iter().map(|&(post_m, _)| post_m).filter(|&post_m| post_m > after_m + ON_POST_M);
        later.min_by(|one, other| (one - at_m).abs().total_cmp(&(other - at_m).abs()))
    }

    /// Panels from a place of the line to a post further on, the first one counted whole wherever the place lies in it;
    /// `None` where there is no post.
    pub fn panels(&self, from_m: f64, to_m: f64) -> Option<usize> {
        let is_post = self.posts.iter().any(|&(post_m, _)| (post_m - to_m).abs() < ON_POST_M);
        let between =
            self.posts.iter().filter(|&&(at_m, _)| at_m > from_m + ON_POST_M && at_m < to_m + ON_POST_M).count();
        is_post.then_some(between)
    }

    /// The length that so many panels have from a place of the line on, metres.
    pub fn panels_m(&self, from_m: f64, panels: usize) -> Option<f64> {
        let first = self.posts.iter().position(|&(post_m, _)| post_m > from_m + ON_POST_M)?;
        let (end_m, _) = *self.posts.get(first + panels.checked_sub(1)?)?;
        Some(end_m - from_m)
    }
}

/// The run in hand.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Unrolled {
    /// Its corners, the one at the pointer last.
    pub corners: Vec<Point>,
    /// Length up to each corner, metres.
    pub along_m: Vec<f64>,
    /// How far the line turns at each corner, degrees, the closing side among them; of two corners none turns.
    pub turns_deg: Vec<f64>,
    /// Nets begun, the one in hand last.
    pub begun: usize,
    /// Netting left on the net in hand, metres.
    pub on_roll_m: f64,
    /// Length of the net in hand, metres.
    pub roll_m: f64,
    /// Nets in the store that are not begun.
    pub in_store: usize,
    /// Line beyond all netting, metres.
    pub short_m: f64,
    /// How it closes from here; `None` while there is no side, or no netting for it.
    pub closing: Option<Closing>,
}

/// How a run closes from its last corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Closing {
    /// The fewest nets that do it, or all where none do.
    pub nets: usize,
    /// Kind of the last of them, its place in the store's list; the others are the first ones of the rolls.
    pub last: Option<usize>,
    /// Netting that they have beyond it, metres; less than nothing where even all of them fall short.
    pub spare_m: f64,
    /// Length of the last side, metres.
    pub side_m: f64,
    /// From where these nets close it exactly; `None` where they do from nowhere.
    pub curve: Option<ClosingCurve>,
}

impl Closing {
    /// Whether the corner stands on the curve.
    pub fn is_exact(&self) -> bool {
        self.spare_m.abs() < ON_POST_M
    }
}

/// Unrolls the nets along corners, the last of which is in hand.
pub fn unroll(rolls: &Rolls, corners: Vec<Point>) -> Unrolled {
    let mut along_m = Vec::with_capacity(corners.len());
    let mut line_m = 0.0;
    for (index, &corner) in corners.iter().enumerate() {
        if let Some(before) = index.checked_sub(1) {
            line_m += point(corners[before]).distance_m(point(corner));
        }
        along_m.push(line_m);
    }
    let begun =
        rolls.nets.iter().filter(|&&(_, start_m)| start_m <= line_m - ON_POST_M).count().max(1).min(rolls.count());
    let end_m = rolls.first_m(begun);
    let start_m = begun.checked_sub(1).map_or(0.0, |last| rolls.nets[last].1);
    Unrolled {
        begun,
        on_roll_m: (end_m - line_m).max(0.0),
        roll_m: end_m - start_m,
        in_store: rolls.count() - begun,
        short_m: (line_m - rolls.length_m).max(0.0),
        turns_deg: turns_deg(&corners),
        closing: closing(rolls, &corners, line_m),
        corners,
        along_m,
    }
}

/// How far a ring of corners turns at each, degrees, to whichever hand.
fn turns_deg(corners: &[Point]) -> Vec<f64> {
    let count = corners.len();
    if count < 3 {
        return Vec::new();
    }
    let way = |from: usize, to: usize| point(corners[to % count]) - point(corners[from % count]);
    (0..count)
        .map(|index| {
            let (before, after) = (way(index + count - 1, index), way(index, index + 1));
            before.cross(after).abs().atan2(before.dot(after)).to_degrees()
        })
        .collect()
}

fn closing(rolls: &Rolls, corners: &[Point], line_m: f64) -> Option<Closing> {
    let [first, .., before, last] = *corners else { return None };
    if rolls.count() == 0 {
        return None;
    }
    let (first, before, last) = (point(first), point(before), point(last));
    let side_m = last.distance_m(first);
    let (nets, reach_m, last_kind) = rolls.fewest(line_m + side_m);
    let laid_m = line_m - before.distance_m(last);
    // From the first side alone it closes onto itself; that encloses nothing.
    let curve = (corners.len() > 2).then(|| ClosingCurve::new(before, first, reach_m - laid_m)).flatten();
    Some(Closing { nets, last: last_kind, spare_m: reach_m - line_m - side_m, side_m, curve })
}

/// Where netting itself takes hold of a corner in hand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Caught {
    /// So many nets close the run from here, and a post stands here.
    CurveAndPost {
        /// The nets.
        nets: usize,
        /// Panels of the side.
        panels: usize,
    },
    /// So many nets close the run from here.
    Curve {
        /// The nets.
        nets: usize,
    },
    /// A post stands here.
    Post {
        /// Panels of the side.
        panels: usize,
    },
}

/// The place near a corner in hand where the netting wants it: on the curve that closes the run, at a post, or both.
///
/// A curve takes hold within `reach_m`, a post always: a net bends at its posts.
pub fn catch(rolls: &Rolls, corners: &[Point], at: Point, reach_m: f64) -> Option<(Point, Caught)> {
    let &before = corners.last()?;
    let laid = Outline::open(&corners.iter().map(|&corner| point(corner)).collect::<Vec<_>>()).length_m();
    let (from, at) = (point(before), point(at));
    let way = at - from;
    let side_m = way.length();
    let panels_at = |place: geometry::Point| rolls.panels(laid, laid + from.distance_m(place));
    let with_pointer: Vec<Point> = corners.iter().copied().chain([place(at)]).collect();
    let closing = unroll(rolls, with_pointer).closing;
    // Just beyond a curve the next net begins: the curve behind the pointer takes hold too.
    let counts =
        closing.filter(|_| corners.len() > 1).map_or(0..0, |closing| closing.nets.saturating_sub(1)..closing.nets + 1);
    let curves = counts.filter(|&nets| nets > 0).flat_map(|nets| {
        let home = point(corners[0]);
        let curve = move |(reach_m, _): (f64, usize)| Some((nets, ClosingCurve::new(from, home, reach_m - laid)?));
        rolls.reaches(nets).filter_map(curve)
    });
    let near = |place: geometry::Point| place.distance_m(at);
    let on_curve = curves.filter_map(|(nets, curve)| {
        let nearest = curve.nearest(at);
        if near(nearest) > reach_m {
            return None;
        }
        let posts = rolls.posts.iter().map(|&(post_m, _)| post_m - laid).filter(|&side_m| side_m > ON_POST_M);
        let both = posts.flat_map(|side_m| curve.at_side(side_m));
        let both =
            both.min_by(|one, other| near(*one).total_cmp(&near(*other))).filter(|&place| near(place) <= reach_m);
        match both.and_then(|place| Some((place, panels_at(place)?))) {
            Some((place, panels)) => Some((place, Caught::CurveAndPost { nets, panels })),
            None => Some((nearest, Caught::Curve { nets })),
        }
    });
    let best = on_curve.min_by(|one, other| {
        let rank = |(place, caught): &(geometry::Point, Caught)| (matches!(caught, Caught::Curve { .. }), near(*place));
        let (one, other) = (rank(one), rank(other));
        one.0.cmp(&other.0).then(one.1.total_cmp(&other.1))
    });
    let caught = best.or_else(|| {
        let post_m = rolls.nearest_post_m(laid + side_m, laid)? - laid;
        if side_m == 0.0 {
            return None;
        }
        let there = from + Vector::new(way.east, way.north) * (post_m / side_m);
        Some((there, Caught::Post { panels: panels_at(there)? }))
    });
    caught.map(|(there, caught)| (place(there), caught))
}
