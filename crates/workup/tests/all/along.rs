//! What is on a run's line goes along where the line goes: the law is that each keeps its share of its side.

use plan::{
    Branch, Fault, FaultKind, Gate, GateKind, LeakageZone, Motion, NetKind, Pin, PinKind, Plan, Point, Rest, Run,
    SpotHeight, StatedBrace,
};
use proptest::prelude::*;
use workup::{Depth, taken_along, taken_to_nearest, workup};

fn at(east_m: f64, north_m: f64) -> Point {
    Point::new(east_m, north_m)
}

fn apart_m(one: Point, other: Point) -> f64 {
    (one.east_m - other.east_m).hypot(one.north_m - other.north_m)
}

fn fault(at: Point) -> Fault {
    Fault { at, kind: FaultKind::Short, ohm: Some(50.0), lines: None, cause: None, rest: Rest::new() }
}

/// A square of 40 m with one of everything on the middle of its second side, and a branch that hangs there.
fn square() -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(8), ..NetKind::new("long", 40.0, 16) });
    let amid = at(40.0, 20.0);
    let zone = |from_m, to_m| LeakageZone { from_m, to_m, s_per_m: 1e-4, rest: Rest::new() };
    plan.runs.push(Run {
        id: "run".into(),
        outline: vec![at(0.0, 0.0), at(40.0, 0.0), at(40.0, 40.0), at(0.0, 40.0)],
        nets: Some(vec!["long".into(); 4]),
        feed_at: Some(at(40.2, 10.0)),
        faults: vec![fault(amid), fault(at(47.0, 20.0))],
        gates: vec![Gate { at: Some(at(40.0, 40.0)), ..Gate::new(GateKind::Foot) }],
        pins: vec![Pin::new(PinKind::Join, amid), Pin::new(PinKind::Corner, at(40.0, 39.5))],
        braces: vec![StatedBrace { at: at(40.4, 40.0), ..StatedBrace::default() }],
        leakage_zones: vec![zone(50.0, 60.0), zone(150.0, 10.0)],
        branches: vec![Branch {
            from_m: 60.0,
            outline: vec![amid, at(60.0, 20.0), at(60.0, 30.0)],
            nets: vec!["long".into()],
            faults: vec![fault(at(50.0, 20.0))],
            leakage_zones: vec![zone(5.0, 15.0)],
            ..Branch::default()
        }],
        ..Run::default()
    });
    plan
}

fn reshaped(plan: &Plan, corner: usize, to: Point) -> Run {
    let was = &plan.runs[0];
    let mut outline = was.outline.clone();
    outline[corner] = to;
    taken_along(plan, was, &Run { outline, ..was.clone() })
}

fn troubles(plan: &Plan, run: &Run) -> usize {
    workup(&Plan { runs: vec![run.clone()], ..plan.clone() }, Depth::Quick).runs[0].troubles.len()
}

#[test]
fn everything_on_a_side_keeps_its_share_of_it_when_a_corner_moves() {
    let mut plan = square();
    plan.runs[0].energizer_at = Some(at(42.0, 12.0));
    let was = &plan.runs[0];
    // The second side goes from 40 m to 50 m, and its far end east by 30 m.
    let run = reshaped(&plan, 2, at(70.0, 40.0));
    let middle = at(55.0, 20.0);
    assert!(apart_m(run.faults[0].at, middle) < 1e-9, "{:?}", run.faults);
    assert_eq!(run.faults[1], was.faults[1], "what is stated off the line stays");
    assert_eq!(run.energizer_at, was.energizer_at, "an energizer stands on the ground, not on the line");
    assert!((run.branches[0].from_m - 65.0).abs() < 1e-9);
    let shift = at(15.0, 0.0);
    for (now, was) in run.branches[0].outline.iter().zip(&was.branches[0].outline) {
        assert!(apart_m(*now, at(was.east_m + shift.east_m, was.north_m)) < 1e-9, "the branch goes along as it is");
    }
    assert!(apart_m(run.branches[0].faults[0].at, at(65.0, 20.0)) < 1e-9);
    assert_eq!(run.branches[0].leakage_zones, was.branches[0].leakage_zones);
    assert_eq!(run.gates[0].at, Some(at(70.0, 40.0)));
    assert!(apart_m(run.pins[0].at, middle) < 1e-9);
    assert_eq!(run.pins[1].at, at(70.0, 40.0));
    assert!(apart_m(run.braces[0].at, at(70.4, 40.0)) < 1e-9);
    // A quarter of the way, 0.2 m to the right of the side.
    let along = at(40.0 + 7.5, 10.0);
    let right = at(0.2 * 40.0 / 50.0, -0.2 * 30.0 / 50.0);
    let feed = run.feed_at.unwrap();
    assert!(apart_m(feed, at(along.east_m + right.east_m, along.north_m + right.north_m)) < 1e-9, "{feed:?}");
    let ends: Vec<(f64, f64)> = run.leakage_zones.iter().map(|zone| (zone.from_m, zone.to_m)).collect();
    // The last side begins 40 m farther on than it did: 10 m more on the second, 30 m more on the third.
    assert!((ends[0].0 - 52.5).abs() < 1e-9 && (ends[0].1 - 65.0).abs() < 1e-9, "{ends:?}");
    assert!((ends[1].0 - 190.0).abs() < 1e-9 && (ends[1].1 - 10.0).abs() < 1e-9, "{ends:?}");
    assert_eq!(troubles(&plan, was), troubles(&plan, &run), "the branch hangs on the line as it did");
}

#[test]
fn what_is_on_other_sides_stays_to_the_bit() {
    let plan = square();
    let was = &plan.runs[0];
    let run = reshaped(&plan, 0, at(-10.0, 3.0));
    assert_eq!((&run.faults, &run.gates, &run.pins, &run.braces), (&was.faults, &was.gates, &was.pins, &was.braces));
    assert_eq!((run.feed_at, &run.branches[0].outline), (was.feed_at, &was.branches[0].outline));
    // Metres before it have changed, the place has not.
    let first_m = 50.0_f64.hypot(3.0);
    assert!((run.branches[0].from_m - first_m - 20.0).abs() < 1e-9);
}

#[test]
fn whoever_moves_a_thing_himself_says_where_it_goes() {
    let plan = square();
    let was = &plan.runs[0];
    let mut now = was.clone();
    now.outline[2] = at(70.0, 40.0);
    now.branches[0].outline[0] = at(1.0, 2.0);
    now.feed_at = Some(at(3.0, 3.0));
    now.start_m = Some(7.0);
    let run = taken_along(&plan, was, &now);
    assert_eq!((run.branches[0].outline[0], run.feed_at, run.start_m), (at(1.0, 2.0), Some(at(3.0, 3.0)), Some(7.0)));
}

#[test]
fn a_fault_and_grass_on_a_branch_go_with_its_own_corners() {
    let plan = square();
    let was = &plan.runs[0];
    let mut now = was.clone();
    now.branches[0].outline[1] = at(80.0, 20.0);
    let branch = taken_along(&plan, was, &now).branches.remove(0);
    assert!(apart_m(branch.faults[0].at, at(60.0, 20.0)) < 1e-9, "half of its first side");
    assert!((branch.leakage_zones[0].from_m - 10.0).abs() < 1e-9 && (branch.leakage_zones[0].to_m - 30.0).abs() < 1e-9);
}

#[test]
fn with_more_or_fewer_corners_the_nearest_place_is_taken() {
    let plan = square();
    let was = &plan.runs[0];
    let mut now = was.clone();
    now.outline.remove(2);
    let run = taken_along(&plan, was, &now);
    // From (40, 0) to (0, 40): the middle of the old side lies nearest to (30, 10).
    assert!(apart_m(run.branches[0].outline[0], at(30.0, 10.0)) < 1e-9, "{:?}", run.branches[0].outline);
    assert!(apart_m(run.branches[0].outline[1], at(50.0, 10.0)) < 1e-9);
    // A shape taken elsewhere, drawn the other way round.
    let outline = vec![at(100.0, 0.0), at(100.0, 40.0), at(140.0, 40.0), at(140.0, 0.0)];
    let run = taken_to_nearest(&plan, was, &Run { outline, ..was.clone() });
    assert!(apart_m(run.branches[0].outline[0], at(100.0, 20.0)) < 1e-9, "{:?}", run.branches[0]);
    assert!((run.branches[0].from_m - 20.0).abs() < 1e-9);
    assert_eq!(run.leakage_zones[0].from_m, 10.0, "grass between the same places, the other way round");
    assert_eq!(run.leakage_zones[0].to_m, 20.0);
    assert_eq!(run.faults[1], was.faults[1]);
}

#[test]
fn on_a_slope_metres_are_those_of_the_ground_and_a_whole_run_keeps_its_places() {
    let mut plan = square();
    let height = |east_m: f64, north_m: f64, up_m: f64| SpotHeight { at: at(east_m, north_m), up_m, rest: Rest::new() };
    // Level to the west of 100 m, one in one beyond.
    plan.heights = [(-200.0, 0.0), (100.0, 0.0), (300.0, 200.0)]
        .into_iter()
        .flat_map(|(east_m, up_m)| [height(east_m, -200.0, up_m), height(east_m, 200.0, up_m)])
        .collect();
    let was = plan.runs[0].clone();
    let motion = Motion::Shift { east_m: 120.0, north_m: 0.0 };
    let run = taken_along(&plan, &was, &was.moved(motion));
    // Its first side climbs: 40 m on the map are 56.57 m of net, and 20 m of the second come after them.
    let wanted_m = 40.0 * std::f64::consts::SQRT_2 + 20.0;
    assert!((run.branches[0].from_m - wanted_m).abs() < 1e-6, "{}", run.branches[0].from_m);
    assert!(apart_m(run.branches[0].outline[0], at(160.0, 20.0)) < 1e-9);
    assert!((run.leakage_zones[0].from_m - wanted_m + 10.0).abs() < 1e-6);
    let back = taken_along(&plan, &run, &run.moved(Motion::Shift { east_m: -120.0, north_m: 0.0 }));
    assert!((back.branches[0].from_m - 60.0).abs() < 1e-6);
}

proptest! {
    /// Led anywhere and back, corner by corner, everything is where it was; on the way the branch never lets go.
    #[test]
    fn there_and_back_is_where_it_was(ways in prop::collection::vec((0..4_usize, -15.0..15.0_f64, -15.0..15.0_f64), 1..12)) {
        let plan = square();
        let was = plan.runs[0].clone();
        let mut here = was.clone();
        let led = |run: &Run, corner: usize, to: Point| {
            let mut now = run.clone();
            now.outline[corner] = to;
            taken_along(&plan, run, &now)
        };
        for (corner, east_m, north_m) in ways {
            let from = was.outline[corner];
            here = led(&here, corner, at(from.east_m + east_m, from.north_m + north_m));
            let outline: Vec<_> = here.outline.iter().map(|at| geometry::Point::new(at.east_m, at.north_m)).collect();
            let hangs = geometry::Outline::closed(&outline).at(here.branches[0].from_m);
            let first = here.branches[0].outline[0];
            prop_assert!(hangs.distance_m(geometry::Point::new(first.east_m, first.north_m)) < 1e-6);
        }
        for corner in 0..4 {
            here = led(&here, corner, was.outline[corner]);
        }
        for (now, was) in here.branches[0].outline.iter().zip(&was.branches[0].outline) {
            prop_assert!(apart_m(*now, *was) < 1e-6);
        }
        prop_assert!(apart_m(here.faults[0].at, was.faults[0].at) < 1e-6);
        prop_assert!(apart_m(here.feed_at.unwrap(), was.feed_at.unwrap()) < 1e-6);
        prop_assert!((here.leakage_zones[1].from_m - was.leakage_zones[1].from_m).abs() < 1e-6);
    }
}
