//! What shuts a run: its netting, or walls that hold birds and nets that stand; all else is open.

use plan::{NetKind, Plan, Point, Run, RunStatus, Wall};
use workup::{Closing, ClosingSide, Compared, Depth, RunWorkup, ShutBy, workup};

fn places(all: &[(f64, f64)]) -> Vec<Point> {
    all.iter().copied().map(Point::from).collect()
}

/// Nets of 50 m and a run of so many of them.
fn plan_of(outline: &[(f64, f64)], closed: bool, nets: usize) -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(9), ..NetKind::new("long", 50.0, 14) });
    plan.runs.push(Run {
        id: "run-1".to_owned(),
        outline: places(outline),
        closed: Some(closed),
        nets: Some(vec!["long".to_owned(); nets]),
        ..Run::default()
    });
    plan
}

fn wall(path: &[(f64, f64)], holds_birds: Option<bool>) -> Wall {
    Wall { path: places(path), holds_birds, ..Wall::default() }
}

fn worked(plan: &Plan) -> RunWorkup {
    workup(plan, Depth::Quick).runs[0].clone()
}

fn closing(plan: &Plan) -> Closing {
    worked(plan).closing.unwrap()
}

fn near(one: f64, other: f64) {
    assert!((one - other).abs() < 1e-6, "{one} and {other}");
}

/// Three sides of a rectangle of 20 by 40 m, open to the south.
const BAY: [(f64, f64); 4] = [(0.0, 0.0), (0.0, 40.0), (20.0, 40.0), (20.0, 0.0)];
const SQUARE: [(f64, f64); 4] = [(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)];

#[test]
fn netting_that_reaches_round_shuts_the_outlines_ground() {
    let found = closing(&plan_of(&SQUARE, true, 2));
    assert_eq!((found.by, found.gap_m, found.ground_m2), (ShutBy::Netting, 0.0, Some(625.0)));
}

#[test]
fn netting_that_falls_short_is_open_by_what_is_missing_and_has_no_ground() {
    let plan = plan_of(&[(0.0, 0.0), (30.0, 0.0), (30.0, 30.0), (0.0, 30.0)], true, 2);
    let run = worked(&plan);
    let found = run.closing.clone().unwrap();
    assert_eq!(found.by, ShutBy::Nothing { may: Vec::new() });
    near(found.gap_m, 20.0);
    assert_eq!((found.ground_m2, run.ground_m2(), run.each_bird_m2(10)), (None, None, None));
    assert_eq!(Compared::of(&run, None).area_m2, None, "and none in a table");
    assert_eq!(run.area_m2, Some(900.0), "what its outline encloses is another matter");
}

#[test]
fn a_wall_from_end_to_end_is_a_side_once_it_is_stated_to_hold_birds() {
    // 100 m of line and of netting.
    let mut plan = plan_of(&BAY, false, 2);
    near(closing(&plan).gap_m, 20.0);
    for (holds, by, ground_m2) in [
        (Some(true), ShutBy::Sides { along: vec![ClosingSide::Wall(0)] }, Some(800.0)),
        (None, ShutBy::Nothing { may: vec![ClosingSide::Wall(0)] }, None),
        (Some(false), ShutBy::Nothing { may: Vec::new() }, None),
    ] {
        plan.walls = vec![wall(&[(-5.0, 0.0), (30.0, 0.0)], holds)];
        let found = closing(&plan);
        assert_eq!((&found.by, found.ground_m2.map(f64::round)), (&by, ground_m2), "{holds:?}");
        near(found.gap_m, 20.0);
    }
}

#[test]
fn walls_that_meet_are_followed_to_the_ground_that_they_really_shut() {
    // The wall dents 10 m to the south: 200 m² more, by hand.
    let mut plan = plan_of(&BAY, false, 2);
    let parts = [
        wall(&[(-5.0, 0.3), (0.0, 0.3), (0.0, -10.0)], Some(true)),
        wall(&[(0.2, -10.0), (20.0, -10.0), (20.0, 9.0)], Some(true)),
    ];
    plan.walls = parts.to_vec();
    let found = closing(&plan);
    assert_eq!(found.by, ShutBy::Sides { along: vec![ClosingSide::Wall(1), ClosingSide::Wall(0)] });
    assert!((found.ground_m2.unwrap() - 1_000.0).abs() < 10.0, "{:?}", found.ground_m2);
    // Apart they shut nothing.
    plan.walls[1].path[0].east_m = 4.0;
    assert!(!closing(&plan).is_shut());
}

#[test]
fn a_wall_along_the_gap_of_a_closed_outline_shuts_it() {
    // 120 m of line, 100 of netting: its chain starts at the first corner, so the gap is the last side but its end.
    let mut plan = plan_of(&[(0.0, 0.0), (40.0, 0.0), (40.0, 20.0), (0.0, 20.0)], true, 2);
    (plan.runs[0].start_m, plan.runs[0].reversed) = (Some(0.0), Some(false));
    near(closing(&plan).gap_m, 20.0);
    plan.walls = vec![wall(&[(0.0, -3.0), (0.0, 30.0)], Some(true))];
    let found = closing(&plan);
    assert_eq!(found.by, ShutBy::Sides { along: vec![ClosingSide::Wall(0)] });
    near(found.ground_m2.unwrap(), 800.0);
}

#[test]
fn the_netting_of_a_run_that_stands_shuts_and_that_of_an_option_does_not() {
    let mut plan = plan_of(&BAY, false, 2);
    let other = plan_of(&[(-10.0, 0.0), (40.0, 0.0), (40.0, -25.0), (-10.0, -25.0)], true, 3).runs.remove(0);
    for (status, shut) in [(RunStatus::Standing, true), (RunStatus::Option, false), (RunStatus::Past, false)] {
        plan.runs.truncate(1);
        plan.runs.push(Run { id: "run-2".to_owned(), status, ..other.clone() });
        let found = closing(&plan);
        assert_eq!(found.is_shut(), shut, "{status:?}");
        if shut {
            assert_eq!(found.sides(), [ClosingSide::Run(1)]);
            near(found.ground_m2.unwrap(), 800.0);
        }
    }
}

#[test]
fn a_line_whose_ring_with_the_wall_crosses_itself_tells_no_ground() {
    let mut plan = plan_of(&[(0.0, 0.0), (0.0, 20.0), (30.0, -20.0), (30.0, 0.0)], false, 2);
    plan.walls = vec![wall(&[(-5.0, 0.0), (40.0, 0.0)], Some(true))];
    let found = closing(&plan);
    assert!(found.is_shut());
    assert_eq!(found.ground_m2, None);
}

#[test]
fn a_line_that_falls_short_of_its_wall_lacks_that_netting_and_no_more() {
    // 120 m of line from end to end of a wall, 100 of netting.
    let mut plan = plan_of(&[(0.0, 0.0), (0.0, 50.0), (20.0, 50.0), (20.0, 0.0)], false, 2);
    near(closing(&plan).gap_m, 40.0);
    plan.walls = vec![wall(&[(-5.0, 0.0), (30.0, 0.0)], Some(true))];
    let found = closing(&plan);
    assert_eq!(found.by, ShutBy::Nothing { may: Vec::new() });
    near(found.gap_m, 20.0);
}
