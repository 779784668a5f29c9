//! The strip's width on either side, and what is left to mow beside nets that stand.

use plan::{NetKind, Plan, Point, Run, RunStatus};
use workup::{Depth, RunWorkup, workup};

fn ring(corners: [(f64, f64); 4]) -> Vec<Point> {
    corners.map(|(east, north)| Point::new(east, north)).to_vec()
}

/// A square that stands, and one turned over its east side.
fn plan() -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(4), ..NetKind::new("long", 50.0, 14) });
    plan.runs.push(Run {
        id: "stands".to_owned(),
        status: RunStatus::Standing,
        outline: ring([(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)]),
        ..Run::default()
    });
    plan.runs.push(Run {
        id: "next".to_owned(),
        outline: ring([(25.0, 0.0), (50.0, 0.0), (50.0, 25.0), (25.0, 25.0)]),
        ..Run::default()
    });
    plan
}

fn worked(plan: &Plan, run: usize) -> RunWorkup {
    workup(plan, Depth::Quick).runs.swap_remove(run)
}

#[test]
fn beside_a_run_that_stands_only_the_rest_is_mown() {
    let plan = plan();
    let next = worked(&plan, 1);
    let left = next.still_to_mow.unwrap();
    // 25.0 + 1.2 m of strip lie under the side that stays.
    assert!((left.area_m2 - (120.0 - 26.2 * 1.2)).abs() < 1e-4, "{}", left.area_m2);
    // The strip itself is what the model says, whatever stands beside it.
    assert_eq!(next.strip.as_ref().unwrap().area_m2, 120.0);
    assert!(left.walk_m < next.mow_walk.unwrap().length_m * 0.8);
    let speed = plan.store.mower.speed_m_per_s();
    assert!((left.minutes - left.walk_m / speed / 60.0).abs() < 1e-12);
    assert_eq!(worked(&plan, 0).still_to_mow, None, "what stands is mown");
}

#[test]
fn what_is_far_away_or_a_thought_or_past_leaves_all_to_mow() {
    let with = |change: fn(&mut Plan)| {
        let mut plan = plan();
        change(&mut plan);
        worked(&plan, 1).still_to_mow
    };
    assert_eq!(with(|plan| plan.runs[0].status = RunStatus::Option), None);
    assert_eq!(with(|plan| plan.runs[0].status = RunStatus::Past), None);
    assert_eq!(with(|plan| plan.runs[0].outline.iter_mut().for_each(|at| at.east_m -= 100.0)), None);
    // Its box meets, its strip does not: a thin one beside it.
    assert_eq!(with(|plan| plan.runs[0].outline.iter_mut().for_each(|at| at.east_m -= 1.21)), None);
}

#[test]
fn the_strip_reaches_as_far_to_either_side_as_is_said() {
    let with = |width: Option<f64>, left: Option<f64>, right: Option<f64>| {
        let mut plan = plan();
        let run = &mut plan.runs[0];
        (run.strip_width_m, run.strip_left_m, run.strip_right_m) = (width, left, right);
        worked(&plan, 0)
    };
    let area_m2 = |worked: &RunWorkup| worked.strip.as_ref().unwrap().area_m2;
    assert_eq!(area_m2(&with(None, None, None)), 120.0);
    // docs/sources.md, husbandry 8.2: inside alone 114.24 m².
    let inside = with(None, Some(1.2), Some(0.0));
    assert!((area_m2(&inside) - 114.24).abs() < 1e-9);
    assert_eq!(inside.strip.as_ref().unwrap().width_m, 1.2);
    // One side said, the other half of the width.
    let outside = with(Some(0.8), None, Some(1.0));
    assert!((outside.strip.as_ref().unwrap().width_m - 1.4).abs() < 1e-12);
    for (left, right) in [(Some(0.0), Some(0.0)), (Some(-0.1), None), (Some(f64::MAX), None)] {
        let bad = with(None, left, right);
        assert!(bad.strip.is_none() && !bad.troubles.is_empty(), "{left:?} {right:?}");
    }
}

#[test]
fn minutes_by_area_agree_with_the_passes() {
    // docs/sources.md, husbandry 5.1: 120 m², 0.53 m, 4 km/h, 0.75 take 4.53 min; three passes 4.5.
    let mut plan = plan();
    plan.store.mower.speed_m_per_s = Some(4.0 / 3.6);
    plan.store.mower.width_m = Some(0.53);
    plan.store.mower.efficiency = Some(0.75);
    let strip = worked(&plan, 0).strip.unwrap();
    assert!((strip.minutes_by_area - 4.53).abs() < 0.005, "{}", strip.minutes_by_area);
    assert!((strip.minutes - 4.5).abs() < 1e-9, "{}", strip.minutes);
}

#[test]
fn the_inside_lies_left_of_a_ring_drawn_counter_clockwise() {
    let mut plan = plan();
    assert!(worked(&plan, 0).lay.unwrap().left_is_inside());
    plan.runs[0].outline.reverse();
    assert!(!worked(&plan, 0).lay.unwrap().left_is_inside());
}
