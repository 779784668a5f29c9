//! Corners, their stakes and gentle bends against figures worked by hand.

use super::*;
use crate::{FixedStart, Net, PlacementRequest, place};

const FORCES: NetForces =
    NetForces { tension_n: 100.0, height_m: 1.1, spikes_per_post: 1, spike: Spike { length_m: 0.2, diameter_m: 0.01 } };
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
        assert!((corner.stake.hold_n - 466.0).abs() < 0.5, "docs/sources.md, husbandry 2.5, same peg, loop 50 mm up");
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
