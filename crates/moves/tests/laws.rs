//! What every motion over a side keeps, and what stays standing.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

use moves::{Motion, Next, over_side};
use plan::{EarthStakes, Fault, FaultKind, NetKind, Plan, Point, Rest, Run, RunStatus, SpotHeight, StatedBrace};
use proptest::prelude::*;
use workup::{Depth, Workup};

fn net(id: &str, count: u32, length_m: f64, panels: u32) -> NetKind {
    NetKind { count: Some(count), ..NetKind::new(id, length_m, panels) }
}

fn plan_of(outline: &[(f64, f64)]) -> Plan {
    let outline = outline.iter().copied().map(Point::from).collect();
    let run = Run { id: "run-1".to_owned(), outline, status: RunStatus::Standing, ..Run::default() };
    let mut plan = Plan { runs: vec![run], ..Plan::default() };
    plan.store.nets = vec![net("long", 6, 50.0, 14)];
    plan
}

/// The next run over a side, and the workup of the plan that has both.
fn next(plan: &Plan, side: usize, motion: Motion) -> Option<(Next, Workup)> {
    let worked = workup::workup(plan, Depth::Quick);
    let next = over_side(plan, &plan.runs[0], worked.runs[0].lay.as_ref(), side, motion)?;
    let mut both = plan.clone();
    both.runs.push(next.run.clone());
    let worked = workup::workup(&both, Depth::Quick);
    Some((next, worked))
}

fn apart_m(a: Point, b: Point) -> f64 {
    (a.east_m - b.east_m).hypot(a.north_m - b.north_m)
}

fn sides_m(outline: &[Point]) -> Vec<f64> {
    (0..outline.len()).map(|side| apart_m(outline[side], outline[(side + 1) % outline.len()])).collect()
}

fn area_m2(outline: &[Point]) -> f64 {
    let places: Vec<_> = outline.iter().map(|at| geometry::Point::new(at.east_m, at.north_m)).collect();
    geometry::Outline::closed(&places).area_m2()
}

/// Distance from a place to the nearest side of an outline.
fn off_m(outline: &[Point], at: Point) -> f64 {
    let places: Vec<_> = outline.iter().map(|at| geometry::Point::new(at.east_m, at.north_m)).collect();
    geometry::region::distance_to_m(&geometry::Outline::closed(&places), geometry::Point::new(at.east_m, at.north_m))
}

const SQUARE: [(f64, f64); 4] = [(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)];
/// An L: its sides 2 and 3 lie in the notch.
const NOTCHED: [(f64, f64); 6] = [(0.0, 0.0), (30.0, 0.0), (30.0, 10.0), (10.0, 10.0), (10.0, 30.0), (0.0, 30.0)];

#[test]
fn both_motions_lay_a_square_beside_itself() {
    let plan = plan_of(&SQUARE);
    for motion in [Motion::Shift, Motion::TurnOver] {
        let (next, worked) = next(&plan, 1, motion).unwrap();
        let mut places: Vec<_> = next.run.outline.iter().map(|at| (at.east_m.round(), at.north_m.round())).collect();
        places.sort_by(|a, b| a.partial_cmp(b).unwrap());
        assert_eq!(places, [(25.0, 0.0), (25.0, 25.0), (50.0, 0.0), (50.0, 25.0)]);
        assert!((next.shared_m - 25.0).abs() < 1e-9);
        assert!(next.grazed_m2 < 1e-6);
        let stays = next.stays.unwrap();
        // By hand: 100 m of two nets of 14 panels of 25/7 m; a side of 25 m has 7 panels, and 8 posts of the ring's 28
        // places. Where two nets meet, two posts stand at one place; joins stand at two of the four corners.
        let first = worked.runs[0].lay.as_ref().unwrap();
        let joined = first.posts.iter().filter(|post| post.at.east_m > 24.999).count();
        assert_eq!(stays.posts.len(), joined);
        assert!((8..=10).contains(&joined), "{joined}");
        assert_eq!(stays.posts_to_move, first.posts.len() - joined);
        assert!((stays.netting_m - 25.0).abs() < 1e-6);
        assert_eq!(stays.panels, 7);
        assert_eq!((stays.nets, stays.nets_in_part > 0), (0, true));
        assert_eq!((next.run.id.as_str(), next.run.status), ("run-2", RunStatus::Option));
    }
}

#[test]
fn what_stays_stands_in_both_runs() {
    // No side is a whole number of panels here, and the nets differ.
    let mut plan = plan_of(&[(0.0, 0.0), (33.0, 0.0), (33.0, 21.0), (0.0, 21.0)]);
    plan.store.nets = vec![net("long", 1, 50.0, 14), net("short", 3, 25.0, 7)];
    plan.runs[0].nets = Some(vec!["long".to_owned(), "short".to_owned(), "short".to_owned(), "short".to_owned()]);
    for side in 0..4 {
        for motion in [Motion::Shift, Motion::TurnOver] {
            let (next, worked) = next(&plan, side, motion).unwrap();
            let (first, second) = (worked.runs[0].lay.as_ref().unwrap(), worked.runs[1].lay.as_ref().unwrap());
            let stays = next.stays.unwrap();
            assert!(stays.posts.len() >= 5, "{side} {motion:?}: {}", stays.posts.len());
            for &index in &stays.posts {
                let post = &first.posts[index];
                let same = second
                    .posts
                    .iter()
                    .any(|other| apart_m(other.at, post.at) < 1e-6 && (other.net, other.post) == (post.net, post.post));
                assert!(same, "side {side}, {motion:?}: post {index} of the first run is moved");
            }
            assert!((first.spare_m - second.spare_m).abs() < 1e-6);
        }
    }
}

#[test]
fn on_a_slope_what_stays_stands_in_both_runs() {
    let spot = |(east_m, north_m, up_m)| SpotHeight { at: Point::new(east_m, north_m), up_m, rest: Rest::new() };
    let mut plan = plan_of(&[(0.0, 0.0), (33.0, 0.0), (33.0, 21.0), (0.0, 21.0)]);
    // A hill under the run and a plain beside it, so that every side is as long as its own ground.
    plan.heights = [(-40.0, -40.0, 0.0), (80.0, -40.0, 4.0), (15.0, 11.0, 9.0), (-40.0, 70.0, 0.0), (80.0, 70.0, 14.0)]
        .map(spot)
        .to_vec();
    plan.runs[0].nets = Some(vec!["long".to_owned(); 3]);
    let (mut differ, mut looked_at) = (0, 0);
    for side in 0..4 {
        for motion in [Motion::Shift, Motion::TurnOver] {
            let (next, worked) = next(&plan, side, motion).unwrap();
            let (first, second) = (worked.runs[0].lay.as_ref().unwrap(), worked.runs[1].lay.as_ref().unwrap());
            differ += usize::from((first.line_m - second.line_m).abs() > 0.05);
            let stays = next.stays.unwrap();
            assert!(stays.posts.len() >= 5, "{side} {motion:?}: {}", stays.posts.len());
            let ground_m = worked.runs[0].slope.as_ref().unwrap().sides[side].surface_m;
            assert!((stays.netting_m - ground_m).abs() < 1e-6, "{side} {motion:?}: {} of {ground_m}", stays.netting_m);
            // Where the chain begins within the side, what lies round the other way moves by what the lines differ.
            let from_m = first.posts[stays.posts[0]].chain_m;
            let to_m = (from_m + ground_m + 1e-6).min(second.line_m - 1e-6);
            for &index in stays.posts.iter().filter(|&&index| first.posts[index].chain_m <= to_m) {
                let post = &first.posts[index];
                let same = second.posts.iter().any(|other| apart_m(other.at, post.at) < 1e-6);
                assert!(same, "side {side}, {motion:?}: post {index} of the first run is moved");
                looked_at += 1;
            }
        }
    }
    assert!(differ >= 4 && looked_at >= 40, "{differ} lines differ on the ground, {looked_at} posts");
}

#[test]
fn a_net_that_fits_the_side_stays_whole() {
    let mut plan = plan_of(&[(0.0, 0.0), (50.0, 0.0), (50.0, 25.0), (0.0, 25.0)]);
    plan.runs[0].start_m = Some(0.0);
    let (next, _) = next(&plan, 0, Motion::TurnOver).unwrap();
    let stays = next.stays.unwrap();
    assert_eq!((stays.nets, stays.nets_in_part), (1, 0));
    assert!((stays.netting_m - 50.0).abs() < 1e-6);
}

#[test]
fn a_gap_in_the_netting_does_not_stay() {
    // 100 m of netting on 120 m of line, from corner 1: the last 20 m, up the fourth side, are open.
    let mut plan = plan_of(&[(0.0, 0.0), (30.0, 0.0), (30.0, 30.0), (0.0, 30.0)]);
    plan.runs[0].nets = Some(vec!["long".to_owned(); 2]);
    plan.runs[0].start_m = Some(0.0);
    let (next, _) = next(&plan, 3, Motion::TurnOver).unwrap();
    assert!((next.stays.unwrap().netting_m - 10.0).abs() < 1e-6);
}

#[test]
fn a_pentagon_pushed_over_a_side_may_meet_it_in_a_corner_alone() {
    let plan = plan_of(&[(0.0, 0.0), (30.0, 0.0), (36.0, 20.0), (15.0, 35.0), (-6.0, 20.0)]);
    let (pushed, _) = next(&plan, 0, Motion::Shift).unwrap();
    assert_eq!((pushed.shared, pushed.shared_m), (None, 0.0));
    let stays = pushed.stays.unwrap();
    assert!(stays.posts.is_empty() && stays.netting_m < 1e-9);
    assert_eq!(pushed.run.start_m, None, "nothing stays that would fix the chain");
    let (turned, _) = next(&plan, 0, Motion::TurnOver).unwrap();
    assert!((turned.shared_m - 30.0).abs() < 1e-9);
}

#[test]
fn ground_that_is_grazed_again_is_told() {
    let plan = plan_of(&NOTCHED);
    let (turned, _) = next(&plan, 2, Motion::TurnOver).unwrap();
    // By hand: mirrored in north = 10 the foot falls on 10 m of the arm, and 10 m of the arm on the foot.
    assert!((turned.grazed_m2 - 200.0).abs() < 1e-6, "{}", turned.grazed_m2);
}

#[test]
fn ground_of_runs_that_stand_or_stood_is_not_fresh_and_what_they_share_counts_once() {
    // Over the east side of a square of 25 m the next one lies from 25 to 50 m east.
    let beside = |id: &str, from_m: f64, to_m: f64, status| Run {
        id: id.to_owned(),
        outline: [(from_m, 0.0), (to_m, 0.0), (to_m, 10.0), (from_m, 10.0)].map(Point::from).to_vec(),
        status,
        ..Run::default()
    };
    let grazed = |others: Vec<Run>| {
        let mut plan = plan_of(&SQUARE);
        plan.runs.extend(others);
        next(&plan, 1, Motion::TurnOver).unwrap().0.grazed_m2
    };
    let near = |one: f64, other: f64| assert!((one - other).abs() < 1e-6, "{one} and {other}");
    let side_m = SQUARE[1].0;
    near(grazed(Vec::new()), 0.0);
    near(grazed(vec![beside("other", side_m, side_m + 8.0, RunStatus::Standing)]), 80.0);
    near(grazed(vec![beside("other", side_m, side_m + 8.0, RunStatus::Past)]), 80.0);
    near(grazed(vec![beside("other", side_m, side_m + 8.0, RunStatus::Option)]), 0.0);
    // Four metres of both are one ground.
    let both = [(0.0, 8.0, RunStatus::Standing), (4.0, 10.0, RunStatus::Past)].into_iter().enumerate();
    let both =
        both.map(|(at, (from_m, to_m, status))| beside(&format!("other-{at}"), side_m + from_m, side_m + to_m, status));
    near(grazed(both.collect()), 100.0);
}

#[test]
fn what_goes_along_and_what_is_left() {
    let mut plan = plan_of(&SQUARE);
    let run = &mut plan.runs[0];
    run.coop = Some("coop".to_owned());
    run.energizer = Some("field".to_owned());
    run.feed_at = Some(Point::new(0.0, 5.0));
    let places = vec![Point::new(-3.0, 5.0), Point::new(-4.0, 8.0)];
    run.earth_stakes =
        EarthStakes { count: Some(2), at: Some(Point::new(-3.0, 5.0)), places, ..EarthStakes::default() };
    run.earth_ohm = Some(40.0);
    (run.strip_left_m, run.strip_right_m) = (Some(0.4), Some(0.9));
    let brace = StatedBrace { at: Point::new(25.0, 25.0), ..StatedBrace::default() };
    run.braces = vec![brace];
    let fault = Fault {
        at: Point::new(1.0, 0.0),
        kind: FaultKind::Short,
        ohm: Some(500.0),
        lines: None,
        cause: None,
        rest: Rest::new(),
    };
    run.faults = vec![fault];
    let (next, _) = next(&plan, 0, Motion::TurnOver).unwrap();
    let next = next.run;
    assert_eq!((next.coop.as_deref(), next.energizer.as_deref()), (Some("coop"), Some("field")));
    assert_eq!(next.feed_at, Some(Point::new(0.0, -5.0)));
    assert_eq!((next.earth_stakes.count, next.earth_stakes.at), (Some(2), Some(Point::new(-3.0, -5.0))));
    assert_eq!(next.earth_stakes.places, [Point::new(-3.0, -5.0), Point::new(-4.0, -8.0)]);
    assert_eq!(next.braces[0].at, Point::new(25.0, -25.0));
    assert_eq!((next.earth_ohm, next.faults.len()), (None, 0));
    // What is mirrored runs the other way round: its inside stays inside.
    assert_eq!((next.strip_left_m, next.strip_right_m), (Some(0.9), Some(0.4)));
}

#[test]
fn what_is_no_run_has_no_next_one() {
    let nan = f64::NAN;
    let none: [&[(f64, f64)]; 6] = [
        &[],
        &[(0.0, 0.0)],
        &[(0.0, 0.0), (10.0, 0.0), (20.0, 0.0)],
        &[(0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0)],
        &[(0.0, 0.0), (nan, 0.0), (10.0, 10.0)],
        &[(0.0, 0.0), (1e300, 0.0), (10.0, 10.0)],
    ];
    for outline in none {
        let plan = plan_of(outline);
        for motion in [Motion::Shift, Motion::TurnOver] {
            assert_eq!(over_side(&plan, &plan.runs[0], None, 0, motion), None, "{outline:?}");
        }
    }
    let mut plan = plan_of(&[(0.0, 0.0), (10.0, 0.0), (10.0, 0.0), (0.0, 10.0)]);
    assert_eq!(over_side(&plan, &plan.runs[0], None, 4, Motion::Shift), None, "no such side");
    assert_eq!(over_side(&plan, &plan.runs[0], None, 1, Motion::Shift), None, "a side of no length");
    assert!(over_side(&plan, &plan.runs[0], None, 0, Motion::Shift).is_some());
    plan.runs[0].closed = Some(false);
    assert_eq!(over_side(&plan, &plan.runs[0], None, 3, Motion::TurnOver), None, "an open line has no last side");
}

/// A convex outline of 3 to 9 corners round a circle, in either sense, somewhere.
fn convex() -> impl Strategy<Value = Vec<(f64, f64)>> {
    let angles = prop::collection::btree_set(0_u32..60, 3..10);
    (angles, 5.0..60.0_f64, -500.0..500.0_f64, -500.0..500.0_f64, any::<bool>()).prop_filter_map(
        "corners all on one half of the circle are too thin",
        |(angles, radius_m, east_m, north_m, back)| {
            let mut corners: Vec<(f64, f64)> = angles
                .into_iter()
                .map(|step| (f64::from(step) * 6.0).to_radians())
                .map(|angle| (east_m + radius_m * angle.cos(), north_m + radius_m * angle.sin()))
                .collect();
            if back {
                corners.reverse();
            }
            let places: Vec<Point> = corners.iter().copied().map(Point::from).collect();
            (area_m2(&places) > 0.3 * radius_m * radius_m).then_some(corners)
        },
    )
}

proptest! {
    #[test]
    fn lengths_and_area_are_kept_and_the_shared_side_lies_on_both(corners in convex(), side in 0_usize..9) {
        let plan = plan_of(&corners);
        let side = side % corners.len();
        let outline = &plan.runs[0].outline;
        for motion in [Motion::Shift, Motion::TurnOver] {
            let next = over_side(&plan, &plan.runs[0], None, side, motion).unwrap();
            prop_assert!((area_m2(&next.run.outline) - area_m2(outline)).abs() < 1e-6);
            for (one, other) in sides_m(&next.run.outline).into_iter().zip(sides_m(outline)) {
                prop_assert!((one - other).abs() < 1e-9);
            }
            prop_assert!(next.grazed_m2 < 1e-3, "a convex run goes to ground of its own: {}", next.grazed_m2);
            for end in next.shared.into_iter().flatten() {
                prop_assert!(off_m(outline, end) < 1e-6 && off_m(&next.run.outline, end) < 1e-6);
            }
            // They touch, whether in a side or in a corner.
            let nearest_m = next.run.outline.iter().map(|&at| off_m(outline, at)).fold(f64::INFINITY, f64::min);
            let other_m = outline.iter().map(|&at| off_m(&next.run.outline, at)).fold(f64::INFINITY, f64::min);
            prop_assert!(motion == Motion::Shift || nearest_m.min(other_m) < 1e-6);
        }
    }

    #[test]
    fn turning_over_twice_gives_the_first_outline(corners in convex(), side in 0_usize..9) {
        let mut plan = plan_of(&corners);
        let side = side % corners.len();
        let first = plan.runs[0].outline.clone();
        let once = over_side(&plan, &plan.runs[0], None, side, Motion::TurnOver).unwrap();
        prop_assert!((once.shared_m - sides_m(&first)[side]).abs() < 1e-9);
        plan.runs.push(once.run.clone());
        let twice = over_side(&plan, &once.run, None, side, Motion::TurnOver).unwrap();
        prop_assert_eq!(twice.run.id.as_str(), "run-3");
        for (one, other) in twice.run.outline.iter().zip(&first) {
            prop_assert!(apart_m(*one, *other) < 1e-9);
        }
    }
}
