//! Corners and ends of the netting: what pulls, what holds, the verdict and the stake.
//!
//! Newtons, metres, radians. Pull and hold are ultimate values of [`crate::corner_pull_n`] and [`Soil::hold_n`]; the
//! wind is left out. Model: docs/model.md, "Corners and strip"; docs/sources.md, husbandry 2.

use std::f64::consts::PI;

use crate::outline::TURN_GRAIN_RAD;
use crate::{CornerMiss, MEET_M, Outline, Placement, Point, Soil, Spike, Vector, corner_pull_n};

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

/// A gentle bend whose posts lean although no corner of it asks for a brace.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LeaningBend {
    /// Post nearest to the bend's first vertex along the outline: a number of [`Placement::posts`].
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

/// Beyond this turn a brace is advised whatever the numbers say: 30 degrees (common practice, docs/sources.md, husbandry 1.4).
pub const ADVISED_TURN_RAD: f64 = 30.0 * PI / 180.0;

/// Below this turn a bend is carried by its posts together: 20 degrees.
const GENTLE_TURN_RAD: f64 = 20.0 * PI / 180.0;

/// A straight of more panels than this between two turns is no bend (common practice, no source).
const STRAIGHT_PANELS: f64 = 3.0;

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
mod tests {
    use super::*;
    use crate::{FixedStart, Net, PlacementRequest, place};

    const FORCES: NetForces = NetForces {
        tension_n: 100.0,
        height_m: 1.1,
        spikes_per_post: 1,
        spike: Spike { length_m: 0.2, diameter_m: 0.01 },
    };
    const STAKE: StakeKind =
        StakeKind { spike: Spike { length_m: 0.3, diameter_m: 0.012 }, loop_height_m: 0.05, stand_off_m: 1.0 };
    const FIRM: Soil = Soil::Clay { undrained_strength_pa: 50_000.0 };

    fn request<'a>(outline: &'a Outline, placement: &'a Placement, kinds: &'a [NetForces]) -> CornerRequest<'a> {
        CornerRequest {
            outline,
            placement,
            kinds,
            soil: FIRM,
            wet: false,
            safety_factor: 2.0,
            stake: STAKE,
            stand_offs: &[],
            stated_within_m: 1.0,
        }
    }

    fn placed(outline: &Outline, nets: &[usize], start_m: Option<f64>) -> Placement {
        let kinds = [Net::equal(50.0, 14).expect("a net"), Net::equal(50.0, 14).expect("a net")];
        let fixed = start_m.map(|start_m| FixedStart { start_m, reversed: false });
        place(&PlacementRequest { fixed, ..PlacementRequest::new(outline, &kinds, nets) }).expect("a placement")
    }

    fn ring(points: &[(f64, f64)]) -> Outline {
        Outline::closed(&points.iter().copied().map(Point::from).collect::<Vec<_>>())
    }

    fn square() -> Outline {
        ring(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)])
    }

    #[test]
    fn the_corners_of_a_square_need_braces_outside() {
        let (outline, kinds) = (square(), [FORCES]);
        let placement = placed(&outline, &[0, 0], None);
        let found = corners(&request(&outline, &placement, &kinds));
        assert_eq!(found.len(), 4);
        for corner in &found {
            assert!((corner.pull_n - 141.421).abs() < 1e-3);
            // docs/sources.md, husbandry 2.5: the formula at e = 0.55 m, worked by hand: B = 2.63, L' = 0.185.
            let f_m = -1.315 + f64::hypot(1.315, 0.185);
            assert!((corner.hold_n - 9.0 * 50_000.0 * 0.01 * f_m).abs() < 1e-6);
            assert_eq!((corner.brace, corner.end, corner.dents), (Verdict::Required, false, false));
            assert!(
                (corner.stake.hold_n - 466.0).abs() < 0.5,
                "docs/sources.md, husbandry 2.5, same peg, loop 50 mm up"
            );
            assert!((corner.stake.at.distance_m(corner.at) - 1.0).abs() < 1e-12);
        }
        assert!(found[0].stake.at.distance_m(Point::new(-0.5_f64.sqrt(), -0.5_f64.sqrt())) < 1e-12);
    }

    #[test]
    fn wet_ground_halves_and_the_verdict_follows_the_numbers() {
        // Turns of 25 degrees: pull 43.3 N.
        let turn_rad = f64::to_radians(25.0);
        let outline = Outline::open(
            &[(0.0, 0.0), (30.0, 0.0), (30.0 + 60.0 * turn_rad.cos(), 60.0 * turn_rad.sin())].map(Point::from),
        );
        let placement = placed(&outline, &[0, 0], None);
        for (strength_pa, wet, want) in [
            (100_000.0, false, Verdict::None),    // holds 116 N
            (50_000.0, false, Verdict::Advised),  // holds 58 N
            (100_000.0, true, Verdict::Advised),  // the same 58 N
            (30_000.0, false, Verdict::Required), // holds 35 N
        ] {
            let kinds = [FORCES];
            let soil = Soil::Clay { undrained_strength_pa: strength_pa };
            let found = corners(&CornerRequest { soil, wet, ..request(&outline, &placement, &kinds) });
            let corner = found.iter().find(|corner| !corner.end).expect("one corner");
            assert_eq!(corner.brace, want, "{strength_pa} Pa, wet {wet}: holds {} N", corner.hold_n);
        }
    }

    #[test]
    fn thirty_degrees_themselves_advise_nothing() {
        let firm = Soil::Clay { undrained_strength_pa: 1e6 };
        for (sides, want) in [(12, Verdict::None), (11, Verdict::Advised)] {
            let round: Vec<Point> = (0..sides)
                .map(|side| f64::from(side) / f64::from(sides) * 2.0 * PI)
                .map(|angle| Point::new(15.0 * angle.cos(), 15.0 * angle.sin()))
                .collect();
            let outline = Outline::closed(&round);
            let placement = placed(&outline, &[0, 0], None);
            let found = corners(&CornerRequest { soil: firm, ..request(&outline, &placement, &[FORCES]) });
            assert!(found.iter().all(|corner| corner.brace == want), "{sides} sides");
        }
    }

    #[test]
    fn a_dent_has_its_stake_inside_whichever_way_the_line_runs() {
        let mut points = vec![(0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (10.0, 10.0), (10.0, 20.0), (0.0, 20.0)];
        for _ in 0..2 {
            let outline = ring(&points);
            let placement = placed(&outline, &[0, 0], None);
            let found = corners(&request(&outline, &placement, &[FORCES]));
            for corner in &found {
                let dent = corner.at == Point::new(10.0, 10.0);
                assert_eq!(corner.dents, dent);
                assert_eq!(crate::region::contains(&outline, corner.stake.at), dent);
            }
            points.reverse();
        }
    }

    #[test]
    fn ends_of_an_open_line_stand_on_its_prolongation() {
        let outline = Outline::open(&[(0.0, 0.0), (30.0, 0.0), (30.0, 40.0)].map(Point::from));
        let placement = placed(&outline, &[0], None);
        let kinds = [FORCES];
        let found = corners(&request(&outline, &placement, &kinds));
        let ends: Vec<&Corner> = found.iter().filter(|corner| corner.end).collect();
        assert_eq!((found.len(), ends.len()), (3, 2));
        assert!(ends.iter().all(|end| end.brace == Verdict::Required && end.pull_n == 100.0 && end.turn_rad == 0.0));
        // 50 m of net on 70 m of line: it starts at one end and stops 20 m before the other.
        let stakes: Vec<Point> = ends.iter().map(|end| end.stake.at).collect();
        if placement.reversed {
            assert!(stakes[1].distance_m(Point::new(30.0, 41.0)) < 1e-9, "{stakes:?}");
            assert!(stakes[0].distance_m(Point::new(19.0, 0.0)) < 1e-9, "{stakes:?}");
        } else {
            assert!(stakes[0].distance_m(Point::new(-1.0, 0.0)) < 1e-9, "{stakes:?}");
            assert!(stakes[1].distance_m(Point::new(30.0, 21.0)) < 1e-9, "{stakes:?}");
        }
    }

    #[test]
    fn a_ring_that_falls_short_has_two_ends_and_one_that_closes_none() {
        let outline = ring(&[(0.0, 0.0), (26.0, 0.0), (26.0, 26.0), (0.0, 26.0)]);
        let placement = placed(&outline, &[0, 0], Some(3.0));
        let found = corners(&request(&outline, &placement, &[FORCES]));
        let ends: Vec<&Corner> = found.iter().filter(|corner| corner.end).collect();
        assert_eq!((ends.len(), found.len()), (2, 6));
        assert!((ends[0].along_m - 3.0).abs() < 1e-9 && (ends[1].along_m - 103.0).abs() < 1e-9);
        assert!(ends[0].stake.at.distance_m(Point::new(2.0, 0.0)) < 1e-9);
        assert!(ends[1].stake.at.distance_m(Point::new(0.0, 0.0)) < 1e-9);
        let closing = square();
        let placement = placed(&closing, &[0, 0, 0], None);
        assert!(corners(&request(&closing, &placement, &[FORCES])).iter().all(|corner| !corner.end));
    }

    #[test]
    fn at_a_join_the_weaker_hold_and_the_greater_pull_count() {
        let outline = square();
        let strong = NetForces { tension_n: 150.0, spikes_per_post: 2, ..FORCES };
        let placement = placed(&outline, &[0, 1], Some(0.0));
        let found = corners(&request(&outline, &placement, &[FORCES, strong]));
        let single_n = FIRM.hold_n(FORCES.spike, 0.55, false);
        let pulls: Vec<f64> = found.iter().map(|corner| corner.pull_n / 2_f64.sqrt()).collect();
        let holds: Vec<f64> = found.iter().map(|corner| corner.hold_n / single_n).collect();
        for (got, want) in pulls.iter().zip([150.0, 100.0, 150.0, 150.0]) {
            assert!((got - want).abs() < 1e-9, "{pulls:?}");
        }
        for (got, want) in holds.iter().zip([1.0, 1.0, 1.0, 2.0]) {
            assert!((got - want).abs() < 1e-9, "{holds:?}");
        }
        assert_eq!(found[0].posts.len(), 2, "the ring's closing is a join");
    }

    #[test]
    fn a_stated_stand_off_moves_its_own_stake_only() {
        let outline = square();
        let placement = placed(&outline, &[0, 0], None);
        let stated = [(Point::new(25.2, 0.0), 2.0), (Point::new(12.0, 12.0), 9.0)];
        let found = corners(&CornerRequest { stand_offs: &stated, ..request(&outline, &placement, &[FORCES]) });
        let stand_offs: Vec<f64> = found.iter().map(|corner| corner.stake.stand_off_m).collect();
        assert_eq!(stand_offs, [1.0, 2.0, 1.0, 1.0]);
        assert!((found[1].stake.at.distance_m(found[1].at) - 2.0).abs() < 1e-12);
        assert_eq!(found.iter().map(|corner| corner.stated.len()).collect::<Vec<_>>(), [0, 1, 0, 0]);
        // Of two the nearer counts, whichever is stated first.
        for stated in [[(25.2, 2.0), (25.1, 3.0)], [(25.1, 3.0), (25.2, 2.0)]] {
            let stated = stated.map(|(east_m, off_m)| (Point::new(east_m, 0.0), off_m));
            let found = corners(&CornerRequest { stand_offs: &stated, ..request(&outline, &placement, &[FORCES]) });
            assert!((found[1].stake.stand_off_m - 3.0).abs() < 1e-12 && found[1].stated.len() == 2);
        }
    }

    #[test]
    fn a_round_run_in_soft_ground_leans_as_one_bend() {
        let round: Vec<Point> = (0..28)
            .map(|post| f64::from(post) / 28.0 * 2.0 * PI)
            .map(|angle| Point::new(15.9 * angle.cos(), 15.9 * angle.sin()))
            .collect();
        let outline = Outline::closed(&round);
        let placement = placed(&outline, &[0, 0], None);
        let kinds = [FORCES];
        let on_firm = request(&outline, &placement, &kinds);
        assert_eq!(leaning_bends(&on_firm), []);
        let soft = Soil::Clay { undrained_strength_pa: 12_500.0 };
        let on_soft = CornerRequest { soil: soft, ..on_firm };
        let bends = leaning_bends(&on_soft);
        assert_eq!(bends.len(), 1);
        assert!((bends[0].pull_n - 22.39).abs() < 0.01, "docs/sources.md, husbandry N43: R/T 0.2239");
        assert!(bends[0].hold_n < bends[0].pull_n);
        assert!(corners(&on_soft).iter().all(|corner| corner.brace == Verdict::None));
    }

    #[test]
    fn two_bends_apart_are_two_and_one_over_the_first_vertex_is_one() {
        // Sides of a long oblong whose ends are rounded by turns of 15 degrees; the first vertex lies within an end.
        let mut points = Vec::new();
        for (centre_m, from) in [(0.0, 90), (60.0, 270)] {
            for step in 0..=12 {
                let angle = f64::to_radians(f64::from(from + 15 * step));
                points.push(Point::new(centre_m + 12.0 * angle.cos(), 12.0 * angle.sin()));
            }
        }
        points.rotate_left(5);
        let outline = Outline::closed(&points);
        let placement = placed(&outline, &[0, 0, 0, 0], None);
        let soft = Soil::Clay { undrained_strength_pa: 12_500.0 };
        let kinds = [FORCES];
        let bends = leaning_bends(&CornerRequest { soil: soft, ..request(&outline, &placement, &kinds) });
        assert_eq!(bends.len(), 2);
        for bend in bends {
            let middle = outline.vertices()[bend.worst_vertex].at;
            for post in [bend.first_post, bend.last_post] {
                assert!(placement.posts[post].at.distance_m(middle) < 26.0);
            }
        }
    }
}
