//! Corners and ends of the netting: what pulls, what holds, the verdict and the stake.
//!
//! Newtons, metres, radians. Pull and hold are ultimate values of [`crate::corner_pull_n`] and [`Soil::hold_n`]; the
//! wind is left out. Model: docs/model.md, "Corners and strip"; docs/sources.md, husbandry 2.

mod bends;

use std::f64::consts::PI;

use crate::outline::TURN_GRAIN_RAD;
use crate::{CornerMiss, MEET_M, Outline, Placement, Point, Soil, Spike, Vector, corner_pull_n};

pub use bends::{LeaningBend, leaning_bends};

/// Tension, height and spikes of one kind of net.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NetForces {
    /// Tension of the whole net, newtons.
    pub tension_n: f64,
    /// Height of the net, metres; the pull acts at half of it.
    pub height_m: f64,
    /// Spikes under each post.
    pub spikes_per_post: u32,
    /// One spike.
    pub spike: Spike,
}

/// The stake of a brace as kept in the store.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StakeKind {
    /// Length and diameter in the ground.
    pub spike: Spike,
    /// Height of the guy's loop above the ground, metres.
    pub loop_height_m: f64,
    /// Distance from the vertex unless stated for the corner, metres.
    pub stand_off_m: f64,
}

/// What is needed to judge the corners of a run.
#[derive(Debug, Clone, Copy)]
pub struct CornerRequest<'a> {
    /// The line.
    pub outline: &'a Outline,
    /// The nets on it.
    pub placement: &'a Placement,
    /// Forces of each kind, in the order of the placement's kinds.
    pub kinds: &'a [NetForces],
    /// The ground.
    pub soil: Soil,
    /// Whether it is wet, which halves every hold.
    pub wet: bool,
    /// Wanted ratio of hold to pull.
    pub safety_factor: f64,
    /// The stake.
    pub stake: StakeKind,
    /// Stand-offs stated for single corners or ends: place on the ground, metres. Each is taken for the nearest corner or
    /// end, and for both where they are at one place.
    pub stand_offs: &'a [(Point, f64)],
    /// One that is farther than this from every corner and end is for none, metres.
    pub stated_within_m: f64,
}

/// Whether a corner needs a brace.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// It stands by itself.
    None,
    /// It may lean.
    Advised,
    /// It will lean in.
    Required,
}

/// A corner of the line or an end of the netting.
#[derive(Debug, Clone, PartialEq)]
pub struct Corner {
    /// Where it is.
    pub at: Point,
    /// Place along the outline, metres.
    pub along_m: f64,
    /// Exterior turn without its side, radians; 0 at an end.
    pub turn_rad: f64,
    /// Distance along the line to the nearest post, metres.
    pub to_post_m: f64,
    /// The nearest post, then any at the same place: numbers of [`Placement::posts`].
    pub posts: Vec<usize>,
    /// Pull, newtons.
    pub pull_n: f64,
    /// What the post's spikes hold, newtons.
    pub hold_n: f64,
    /// Whether it is an end of the netting and not a corner.
    pub end: bool,
    /// Whether the run dents here, so that its stake stands inside; never on an open line or at an end.
    pub dents: bool,
    /// The verdict.
    pub brace: Verdict,
    /// The stake that a brace would need.
    pub stake: Stake,
    /// The stand-offs that are stated for it: numbers of [`CornerRequest::stand_offs`], the farthest first; the last counts.
    pub stated: Vec<usize>,
}

/// A stake's place and hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stake {
    /// Where it stands.
    pub at: Point,
    /// Its distance from the vertex, metres.
    pub stand_off_m: f64,
    /// What it holds, newtons.
    pub hold_n: f64,
    /// Direction from the vertex to the stake, length one.
    pub away: Vector,
}

/// Beyond this turn a brace is advised whatever the numbers say: 30 degrees (common practice, docs/sources.md, husbandry 1.4).
pub const ADVISED_TURN_RAD: f64 = 30.0 * PI / 180.0;

/// Below this turn a bend is carried by its posts together: 20 degrees.
const GENTLE_TURN_RAD: f64 = 20.0 * PI / 180.0;

/// Share by which a pull must pass a hold to count, room for rounding.
const FORCE_GRAIN: f64 = 1e-9;

/// Every corner of the line and every end of the netting, along the outline; a corner before an end at one place.
pub fn corners(request: &CornerRequest<'_>) -> Vec<Corner> {
    let mut found: Vec<Corner> = request.placement.misses.iter().map(|miss| bend_corner(request, miss)).collect();
    found.extend(ends(request));
    found.sort_by(|one, other| one.along_m.total_cmp(&other.along_m).then(one.end.cmp(&other.end)));
    set_stand_offs(&mut found, request);
    found
}

/// A corner where the line turns.
fn bend_corner(request: &CornerRequest<'_>, miss: &CornerMiss) -> Corner {
    let outline = request.outline;
    let vertex = outline.vertices()[miss.vertex];
    let (pull_n, hold_n) = pull_and_hold_n(request, &miss.posts, |tension_n| corner_pull_n(tension_n, miss.turn_rad));
    let brace = bend_verdict(miss.turn_rad, pull_n, hold_n, request.safety_factor);
    // Both sides pull towards the inside of the turn; the stake stands the other way on the bisector.
    let against = outline.direction_before(vertex.along_m) - outline.direction_at(vertex.along_m);
    Corner {
        at: vertex.at,
        along_m: miss.along_m,
        turn_rad: miss.turn_rad,
        to_post_m: miss.to_post_m,
        posts: miss.posts.clone(),
        pull_n,
        hold_n,
        end: false,
        dents: outline.is_closed() && (vertex.signed_turn_rad > 0.0) != outline.is_counter_clockwise(),
        brace,
        stake: stake(request, vertex.at, against.unit()),
        stated: Vec::new(),
    }
}

/// The verdict on a post at a turn that pulls and holds so much.
pub fn bend_verdict(turn_rad: f64, pull_n: f64, hold_n: f64, safety_factor: f64) -> Verdict {
    if turn_rad < GENTLE_TURN_RAD - TURN_GRAIN_RAD {
        Verdict::None
    } else if passes(pull_n, hold_n) {
        Verdict::Required
    } else if passes(pull_n * safety_factor, hold_n) || turn_rad > ADVISED_TURN_RAD + TURN_GRAIN_RAD {
        Verdict::Advised
    } else {
        Verdict::None
    }
}

/// The ends of the netting: both of an open line, and of a closed one that the nets do not reach round.
fn ends(request: &CornerRequest<'_>) -> Vec<Corner> {
    let (outline, placement) = (request.outline, request.placement);
    if placement.is_ring() || placement.posts.is_empty() {
        return Vec::new();
    }
    let first_m = placement.along_m(0.0);
    let last_m = placement.along_m(placement.covered_m());
    // Away from the netting, on the prolongation of its last stretch.
    let (before_first, beyond_last) = if placement.reversed {
        (outline.direction_before(first_m), -outline.direction_at(last_m))
    } else {
        (-outline.direction_at(first_m), outline.direction_before(last_m))
    };
    let last_post = placement.posts.len() - 1;
    let to_last_m = (placement.covered_m() - placement.posts[last_post].chain_m).max(0.0);
    [(first_m, before_first, 0, 0.0), (last_m, beyond_last, last_post, to_last_m)]
        .map(|(along_m, away, post, to_post_m)| {
            let at = outline.at(along_m);
            let (pull_n, hold_n) = pull_and_hold_n(request, &[post], |tension_n| tension_n);
            Corner {
                at,
                along_m,
                turn_rad: 0.0,
                to_post_m,
                posts: vec![post],
                pull_n,
                hold_n,
                end: true,
                dents: false,
                brace: Verdict::Required,
                stake: stake(request, at, away),
                stated: Vec::new(),
            }
        })
        .into()
}

/// Greatest pull and weakest hold of the posts at one place, newtons.
fn pull_and_hold_n(request: &CornerRequest<'_>, posts: &[usize], pull: impl Fn(f64) -> f64) -> (f64, f64) {
    let (mut pull_n, mut hold_n) = (0.0_f64, f64::INFINITY);
    for &post in posts {
        let net = request.placement.posts[post].net;
        let Some(forces) = request.kinds.get(request.placement.nets[net].kind) else { continue };
        pull_n = pull_n.max(pull(forces.tension_n));
        let one_n = request.soil.hold_n(forces.spike, forces.height_m / 2.0, request.wet);
        hold_n = hold_n.min(f64::from(forces.spikes_per_post) * one_n);
    }
    (pull_n, if hold_n.is_finite() { hold_n } else { 0.0 })
}

fn stake(request: &CornerRequest<'_>, from: Point, away: Vector) -> Stake {
    let kind = &request.stake;
    Stake {
        at: from + away * kind.stand_off_m,
        stand_off_m: kind.stand_off_m,
        hold_n: request.soil.hold_n(kind.spike, kind.loop_height_m, request.wet),
        away,
    }
}

/// Gives the stated stand-offs to the corners and ends that they are stated for; of several the nearest counts.
fn set_stand_offs(corners: &mut [Corner], request: &CornerRequest<'_>) {
    for (number, &(place, _)) in request.stand_offs.iter().enumerate() {
        let nearest_m = corners.iter().map(|corner| corner.at.distance_m(place)).fold(f64::INFINITY, f64::min);
        if nearest_m > request.stated_within_m {
            continue;
        }
        for corner in corners.iter_mut().filter(|corner| corner.at.distance_m(place) <= nearest_m + MEET_M) {
            corner.stated.push(number);
        }
    }
    for corner in corners {
        let off_m = |number: usize| corner.at.distance_m(request.stand_offs[number].0);
        // Stable, so that of two that are alike the later counts.
        corner.stated.sort_by(|&one, &other| off_m(other).total_cmp(&off_m(one)));
        if let Some(&number) = corner.stated.last() {
            let (_, stand_off_m) = request.stand_offs[number];
            corner.stake.stand_off_m = stand_off_m;
            corner.stake.at = corner.at + corner.stake.away * stand_off_m;
        }
    }
}

fn passes(pull_n: f64, hold_n: f64) -> bool {
    pull_n > hold_n * (1.0 + FORCE_GRAIN)
}

#[cfg(test)]
mod tests;
