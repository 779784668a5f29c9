//! A side's length along the ground, and how long it is on the map then.

use plan::Plan;
use serde_json::{Value, json};
use workup::slope::{NoSide, side_on_map_m};
use workup::{Depth, workup};

fn square(change: impl FnOnce(&mut Value)) -> Plan {
    let mut value = json!({
        "format": "netfold-plan", "version": 1,
        "runs": [{ "id": "r", "outline": [[0, 0], [25, 0], [25, 25], [0, 25]] }]
    });
    change(&mut value);
    plan::read(value.to_string().as_bytes()).unwrap().plan
}

/// The side as the workup measures it, once its far corner was moved.
fn measured_m(plan: &Plan, side: usize, on_map_m: f64) -> f64 {
    let mut plan = plan.clone();
    plan.runs[0] = plan.runs[0].with_side_on_map(side, on_map_m);
    let worked = workup(&plan, Depth::Quick);
    worked.runs[0].slope.as_ref().unwrap().sides.iter().find(|one| one.vertex == side).unwrap().surface_m
}

#[test]
fn on_planes_and_by_hand_it_is_that_of_the_closed_form() {
    let level = square(|_| {});
    assert_eq!(side_on_map_m(&level, &level.runs[0], 0, 30.0), Ok(30.0));
    for rise in [0.05, 0.2, 0.6] {
        let plane = square(|plan| {
            plan["heights"] = json!([
                { "at": [-90, -90], "up_m": 0 }, { "at": [190, -90], "up_m": 280.0 * rise }, { "at": [0, 190], "up_m": 90.0 * rise }
            ]);
        });
        // Along the slope a metre on the map is so long on the ground; across it, one metre.
        let found = side_on_map_m(&plane, &plane.runs[0], 0, 40.0).unwrap();
        assert!((found - 40.0 / f64::hypot(1.0, rise)).abs() < 1e-6, "{rise}: {found}");
    }
    let by_hand = square(|plan| plan["runs"][0]["side_slopes"] = json!([{ "at": [12, 0], "rises_m": 3.0 }]));
    let found = side_on_map_m(&by_hand, &by_hand.runs[0], 0, 20.0).unwrap();
    assert!((found - (400.0_f64 - 9.0).sqrt()).abs() < 1e-6, "{found}");
    assert_eq!(side_on_map_m(&by_hand, &by_hand.runs[0], 0, 2.9), Err(NoSide::TooShort), "what it rises is longer");
    // What it rises goes with it, however short it becomes.
    assert!((measured_m(&by_hand, 0, side_on_map_m(&by_hand, &by_hand.runs[0], 0, 3.2).unwrap()) - 3.2).abs() < 1e-6);
    let one_in = square(|plan| plan["runs"][0]["side_slopes"] = json!([{ "at": [12, 0], "one_in": 4.0 }]));
    let found = side_on_map_m(&one_in, &one_in.runs[0], 0, 20.0).unwrap();
    assert!((found - 20.0 / f64::hypot(1.0, 0.25)).abs() < 1e-6, "{found}");
}

#[test]
fn over_broken_ground_the_workup_measures_what_was_typed() {
    let broken = square(|plan| {
        plan["heights"] = json!([
            { "at": [-9, -9], "up_m": 0 }, { "at": [60, -9], "up_m": 4 }, { "at": [60, 60], "up_m": 1 },
            { "at": [-9, 60], "up_m": 7 }, { "at": [12, 3], "up_m": 6 }, { "at": [30, 14], "up_m": 0 }
        ]);
    });
    for side in 0..4 {
        for typed_m in [12.0, 25.0, 33.3] {
            let on_map_m = side_on_map_m(&broken, &broken.runs[0], side, typed_m).unwrap();
            let found_m = measured_m(&broken, side, on_map_m);
            assert!((found_m - typed_m).abs() < 1e-6, "side {side}: {typed_m} typed, {found_m} measured");
            assert!(on_map_m < typed_m);
        }
    }
    assert_eq!(side_on_map_m(&broken, &broken.runs[0], 9, 20.0), Err(NoSide::NotBuilt));
    assert_eq!(side_on_map_m(&broken, &broken.runs[0], 0, f64::NAN), Err(NoSide::NotBuilt));
}

#[test]
fn a_side_is_measured_where_lengths_that_are_tried_make_the_line_cross_itself() {
    let bay = |up_m: f64| {
        square(|plan| {
            plan["runs"][0]["outline"] =
                json!([[0, 0], [30, 0], [30, 20], [20, 20], [20, 5], [10, 5], [10, 20], [0, 20]]);
            plan["heights"] = json!([
                { "at": [-90, -90], "up_m": 0 }, { "at": [190, -90], "up_m": 280.0 * up_m }, { "at": [0, 190], "up_m": 90.0 * up_m }
            ]);
        })
    };
    for up_m in [0.05, 0.3] {
        let plan = bay(up_m);
        for typed_m in [31.0, 15.0] {
            let found = side_on_map_m(&plan, &plan.runs[0], 0, typed_m).unwrap();
            assert!((found - typed_m / f64::hypot(1.0, up_m)).abs() < 1e-6, "{up_m}, {typed_m}: {found}");
        }
    }
}

#[test]
fn far_out_the_search_ends_where_no_number_lies_between() {
    let plane = square(|plan| {
        plan["heights"] = json!([
            { "at": [-90, -90], "up_m": 0 }, { "at": [190, -90], "up_m": 28 }, { "at": [0, 190], "up_m": 9 }
        ]);
    });
    for typed_m in [9e6, 3e7, 1e12] {
        let found = side_on_map_m(&plane, &plane.runs[0], 0, typed_m).unwrap();
        assert!(found <= typed_m && found > 0.9 * typed_m, "{typed_m}: {found}");
    }
}
