//! What stands on the shared stretch and stays there.

use geometry::{Outline, Point};
use workup::Lay;

use crate::{Motion, point};

/// Posts this near to the end of the stretch stand on it, metres: room for the rounding of computed places.
const ON_STRETCH_M: f64 = 1e-3;

/// What nobody needs to touch when a run moves over a side.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stays {
    /// Netting on the shared stretch, metres.
    pub netting_m: f64,
    /// Posts on it: places in the lay's posts.
    pub posts: Vec<usize>,
    /// Whole panels on it.
    pub panels: usize,
    /// Posts to be pulled and set again.
    pub posts_to_move: usize,
    /// Nets that stay whole.
    pub nets: usize,
    /// Nets of which a part stays: that part stands and the rest is swung round.
    pub nets_in_part: usize,
}

/// Where a chain starts so that the netting that stays keeps its place.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Start {
    pub(crate) along_m: f64,
    pub(crate) reversed: bool,
}

/// Both lines laid on the ground, where it is not level.
pub(crate) struct Slopes {
    pub(crate) first: Option<Outline>,
    pub(crate) next: Option<Outline>,
}

impl Stays {
    /// What of a lay stands on a stretch of one of its sides.
    pub(crate) fn on(lay: &Lay, stretch: Option<[Point; 2]>, slopes: &Slopes) -> Self {
        let Some(stretch) = stretch else { return Self { posts_to_move: lay.posts.len(), ..Self::default() } };
        let stands = |index: &usize| on_stretch(stretch, point(lay.posts[*index].at));
        let posts: Vec<usize> = (0..lay.posts.len()).filter(stands).collect();
        let covered_m = if lay.short_m < geometry::MEET_M { lay.line_m } else { lay.line_m - lay.short_m };
        let [from_m, to_m] = match &slopes.first {
            None => chain_span(lay, &line(lay), stretch),
            Some(laid) => chain_span_on_ground(lay, laid, stretch),
        };
        // On a ring the stretch may run over the chain's start.
        let turns_m: &[f64] = if lay.closed { &[-lay.line_m, 0.0, lay.line_m] } else { &[0.0] };
        let shared_m = |start_m: f64, end_m: f64| -> f64 {
            let in_turn = |&turn_m: &f64| (end_m.min(to_m + turn_m) - start_m.max(from_m + turn_m)).max(0.0);
            turns_m.iter().map(in_turn).sum()
        };
        let (mut nets, mut nets_in_part) = (0, 0);
        for net in lay.nets.iter().filter(|net| net.start_m < covered_m) {
            let end_m = net.end_m.min(covered_m);
            let stays_m = shared_m(net.start_m, end_m);
            if stays_m > end_m - net.start_m - ON_STRETCH_M && net.end_m <= covered_m + ON_STRETCH_M {
                nets += 1;
            } else if stays_m > ON_STRETCH_M {
                nets_in_part += 1;
            }
        }
        // A net's posts follow one another in the chain.
        let panels = posts
            .windows(2)
            .filter(|pair| pair[1] == pair[0] + 1 && lay.posts[pair[0]].net == lay.posts[pair[1]].net)
            .count();
        Self {
            netting_m: shared_m(0.0, covered_m),
            panels,
            posts_to_move: lay.posts.len() - posts.len(),
            posts,
            nets,
            nets_in_part,
        }
    }
}

/// Where the next run's chain starts so that every post on the shared stretch stays; `None` where none does, and for
/// an open line that is pushed.
pub(crate) fn start(lay: &Lay, stays: &Stays, level: &Outline, slopes: &Slopes, motion: Motion) -> Option<Start> {
    let post = stays.posts.first().map(|&index| &lay.posts[index])?;
    let next = slopes.next.as_ref().unwrap_or(level);
    match motion {
        // On a slope the mirrored sides are as long as their own ground; the post that stays says where the chain begins.
        Motion::TurnOver if lay.closed && (slopes.first.is_some() || slopes.next.is_some()) => {
            let along_m = next.nearest_along(point(post.at)).0;
            let start_m = if lay.reversed { along_m + post.chain_m } else { along_m - post.chain_m };
            Some(Start { along_m: next.wrap_m(start_m), reversed: lay.reversed })
        }
        // A mirrored line counts its metres alike.
        Motion::TurnOver => Some(Start { along_m: lay.start_m, reversed: lay.reversed }),
        // The pushed line runs along the side the other way, so its chain turns round to run as before.
        Motion::Shift if lay.closed => {
            let reversed = !lay.reversed;
            let along_m = next.nearest_along(point(post.at)).0;
            let start_m = if reversed { along_m + post.chain_m } else { along_m - post.chain_m };
            Some(Start { along_m: next.wrap_m(start_m), reversed })
        }
        Motion::Shift => None,
    }
}

fn line(lay: &Lay) -> Outline {
    let places: Vec<Point> = lay.vertices.iter().map(|&(at, _)| point(at)).collect();
    if lay.closed { Outline::closed(&places) } else { Outline::open(&places) }
}

fn on_stretch([from, to]: [Point; 2], at: Point) -> bool {
    let along = (to - from).unit();
    let (along_m, off_m) = ((at - from).dot(along), (at - from).dot(along.left()).abs());
    off_m < ON_STRETCH_M && along_m > -ON_STRETCH_M && along_m < from.distance_m(to) + ON_STRETCH_M
}

/// The stretch along the chain, from the smaller to the greater; on a ring it may reach beyond the chain's end.
fn chain_span(lay: &Lay, line: &Outline, [from, to]: [Point; 2]) -> [f64; 2] {
    let length_m = from.distance_m(to);
    let middle_m = line.nearest_along(from.towards(to, 0.5)).0;
    let ahead_m = if lay.reversed { lay.start_m - middle_m } else { middle_m - lay.start_m };
    let chain_m = if lay.closed { ahead_m.rem_euclid(lay.line_m) } else { ahead_m };
    [chain_m - length_m / 2.0, chain_m + length_m / 2.0]
}

/// The same along a line that lies on the ground, where half the stretch may take more netting than the other.
fn chain_span_on_ground(lay: &Lay, laid: &Outline, [from, to]: [Point; 2]) -> [f64; 2] {
    let along_m = |at: Point| laid.nearest_along(at).0;
    let middle_m = along_m(from.towards(to, 0.5));
    let ahead_m = if lay.reversed { lay.start_m - middle_m } else { middle_m - lay.start_m };
    let chain_m = if lay.closed { ahead_m.rem_euclid(lay.line_m) } else { ahead_m };
    // From the middle to each end, the short way round.
    let off_m = |at: Point| {
        let off_m = along_m(at) - middle_m;
        let whole_m = laid.length_m();
        let off_m = if lay.closed && off_m.abs() > whole_m / 2.0 { off_m - off_m.signum() * whole_m } else { off_m };
        if lay.reversed { -off_m } else { off_m }
    };
    let (one_m, other_m) = (chain_m + off_m(from), chain_m + off_m(to));
    [one_m.min(other_m), one_m.max(other_m)]
}
