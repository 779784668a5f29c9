//! Gates and pins, worked out from plans.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

use geometry::{Outline, region};
use plan::{GateKind, Plan, Point};
use serde_json::{Value, json};
use workup::gates::{GateWork, NoRoad};
use workup::{Depth, RunWorkup, workup};

/// A square of 30 m of four nets of 30 m and 10 panels in a paddock of 100 m, its joins pinned amid the sides.
fn square() -> Value {
    json!({ "format": "netfold-plan", "version": 1,
        "ground": { "boundary": [[0, 0], [100, 0], [100, 100], [0, 100]], "gateway": { "at": [50, 0] } },
        "store": { "nets": [ { "id": "roll", "count": 8, "length_m": 30, "panels": 10 } ] },
        "coop": { "id": "house", "at": [50, 50], "length_m": 4, "width_m": 2 },
        "runs": [ { "id": "run", "outline": [[35, 35], [65, 35], [65, 65], [35, 65]], "nets": ["roll", "roll", "roll", "roll"],
            "coop": "house", "status": "standing", "pins": [ { "kind": "join", "at": [50, 35] } ],
            "gates": [ { "kind": "wheels", "at": [50, 35] } ] } ] })
}

fn with(change: impl FnOnce(&mut Value)) -> Plan {
    let mut plan = square();
    change(&mut plan);
    plan::read(plan.to_string().as_bytes()).unwrap().plan
}

fn run(plan: &Plan) -> RunWorkup {
    let worked = workup(plan, Depth::Quick);
    assert_eq!(worked, workup(plan, Depth::Quick), "the same plan, the same gates");
    worked.runs.into_iter().next().unwrap()
}

fn gate(plan: &Plan) -> GateWork {
    run(plan).gates.into_iter().next().unwrap()
}

fn apart_m(one: Point, other: Point) -> f64 {
    (one.east_m - other.east_m).hypot(one.north_m - other.north_m)
}

/// The least distance of a way from a line, sampled every five centimetres.
fn off_m(way: &[Point], line: &Outline) -> f64 {
    let samples = way.windows(2).flat_map(|pair| {
        let steps = (apart_m(pair[0], pair[1]) / 0.05).ceil().max(1.0);
        (0..=steps as usize).map(move |step| {
            let share = step as f64 / steps;
            let between = |from: f64, to: f64| from + (to - from) * share;
            geometry::Point::new(between(pair[0].east_m, pair[1].east_m), between(pair[0].north_m, pair[1].north_m))
        })
    });
    samples.map(|at| region::distance_to_m(line, at)).fold(f64::INFINITY, f64::min)
}

fn ring(points: &[(f64, f64)]) -> Outline {
    Outline::closed(&points.iter().copied().map(geometry::Point::from).collect::<Vec<_>>())
}

#[test]
fn a_pinned_join_moves_the_posts_and_says_what_it_costs() {
    let worked = run(&with(|_| {}));
    let pin = &worked.lay.as_ref().unwrap().pins[0];
    // 15 m from a corner is five panels of 3 m: it costs nothing.
    assert!(pin.kept && pin.proven && pin.cost_m == Some(0.0));
    let worked = run(&with(|plan| plan["runs"][0]["pins"][0]["at"] = json!([51, 35])));
    let lay = worked.lay.unwrap();
    // A metre off, at each of four corners.
    assert!((lay.pins[0].cost_m.unwrap() - 4.0).abs() < 1e-6 && (lay.corner_miss_m - 4.0).abs() < 1e-6);
    assert!(lay.best.unwrap().corner_miss_m < 1e-6);
    let lost = run(&with(|plan| plan["runs"][0]["pins"] = json!([ { "kind": "corner", "at": [50, 60] } ])));
    let pin = &lost.lay.unwrap().pins[0];
    assert!(!pin.kept && pin.along_m.is_none() && pin.at == Point::new(50.0, 60.0));
}

#[test]
fn a_gate_for_wheels_opens_one_panel_at_its_join_and_is_drawn_shut() {
    let plan = with(|_| {});
    let worked = run(&plan);
    let shut = run(&with(|plan| plan["runs"][0]["gates"] = json!([])));
    assert_eq!(worked.lay, shut.lay, "everything else is of the run with its gates shut");
    let gate = &worked.gates[0];
    let opening = gate.opening.as_ref().unwrap();
    assert_eq!((gate.kind, gate.width_m, gate.from_stated_m), (GateKind::Wheels, 2.5, Some(0.0)));
    assert_eq!((opening.panels, opening.pulled.len(), opening.leaves.len()), (1, 1, 1));
    assert!((opening.clear_m - 3.0).abs() < 1e-9 && gate.is_wide_enough());
    let lay = worked.lay.as_ref().unwrap();
    let pulled = lay.posts[opening.pulled[0]];
    assert!(apart_m(pulled.at, opening.join) < 1e-9, "the post at the join is pulled");
    assert!([0, 10].contains(&pulled.post), "and it is the end post of its net");
    // The leaf turns about the next post of the same net, one panel off, and lies back along the panel behind it.
    let (hinge, end) = opening.leaves[0];
    assert!((apart_m(hinge, end) - 3.0).abs() < 1e-9 && apart_m(end, opening.join) < 1e-9);
    let lies = &opening.laid_back[0];
    assert!(apart_m(lies[0], hinge) < 1e-9 && (apart_m(lies[1], opening.join) - 6.0).abs() < 1e-9);
    assert!((opening.to_corner_m.unwrap() - 12.0).abs() < 1e-9);
    // 35 m up from the gateway and a little aside.
    let road = gate.road.as_ref().unwrap();
    assert!((34.9..36.0).contains(&road.length_m), "{}", road.length_m);
    assert_eq!((road.gateway, *road.points.last().unwrap()), (Point::new(50.0, 0.0), opening.at));
}

#[test]
fn a_wider_gate_lays_back_more_and_both_nets_where_one_is_short_of_panels() {
    let wide = gate(&with(|plan| plan["runs"][0]["gates"][0]["width_m"] = json!(7.0)));
    let opening = wide.opening.unwrap();
    assert_eq!((opening.panels, opening.pulled.len(), opening.leaves.len()), (3, 3, 1));
    // 15 m to the corners on either side: 26 m cannot come from one net, but from both.
    let both = gate(&with(|plan| plan["runs"][0]["gates"][0]["width_m"] = json!(26.0)));
    let opening = both.opening.as_ref().unwrap();
    assert!(both.is_wide_enough() && opening.leaves.len() == 2 && opening.panels == 9);
    assert!((opening.to_corner_m.unwrap() - 0.0).abs() < 1e-9);
    // And 31 m not at all, for a gate does not open round a corner.
    let never = gate(&with(|plan| plan["runs"][0]["gates"][0]["width_m"] = json!(31.0)));
    assert!(!never.is_wide_enough() && never.no_road == Some(NoRoad::Narrow) && never.road.is_none());
}

#[test]
fn without_a_place_the_gate_keeps_off_corners_and_wet_ground() {
    // Joins in the middle of the sides, a pond before the southern one where the gateway is.
    let pond = json!([ { "name": "pond", "outline": [[45, 28], [55, 28], [55, 33], [45, 33]], "water": true } ]);
    let chosen = |gates: Value| {
        gate(&with(|plan| {
            plan["ground"]["keep_outs"] = pond.clone();
            plan["runs"][0]["gates"] = gates;
        }))
    };
    let free = chosen(json!([ { "kind": "wheels" } ]));
    let opening = free.opening.unwrap();
    assert!(free.from_stated_m.is_none() && opening.near.is_empty());
    assert!(opening.join.north_m > 36.0, "not by the pond: {:?}", opening.join);
    let stated = chosen(json!([ { "kind": "wheels", "at": [50, 35] } ]));
    let near = &stated.opening.as_ref().unwrap().near;
    assert!(near.len() == 1 && (near[0].apart_m - 2.0).abs() < 1e-6, "what the keeper states is kept, and said");
    // A join at a corner: the gate opens there only where nothing better is.
    let corners = gate(&with(|plan| {
        plan["runs"][0]["pins"] = json!([ { "kind": "join", "at": [35, 35] } ]);
        plan["runs"][0]["gates"] = json!([ { "kind": "foot" } ]);
    }));
    assert!((corners.opening.unwrap().to_corner_m.unwrap()).abs() < 1e-9, "all joins stand at corners");
}

#[test]
fn a_way_goes_round_nets_and_water_and_keeps_its_width() {
    // The gate is on the far side: round the run's own net, a second standing run and a pond.
    let plan = with(|plan| {
        plan["runs"][0]["gates"][0]["at"] = json!([50, 65]);
        plan["ground"]["keep_outs"] =
            json!([ { "name": "pond", "outline": [[70, 20], [95, 20], [95, 60], [70, 60]], "water": true } ]);
        let other = json!({ "id": "other", "status": "standing", "nets": ["roll", "roll"],
            "outline": [[10, 40], [25, 40], [25, 55], [10, 55]] });
        plan["runs"].as_array_mut().unwrap().push(other);
    });
    let gate = gate(&plan);
    let road = gate.road.as_ref().unwrap();
    for line in [
        ring(&[(70.0, 20.0), (95.0, 20.0), (95.0, 60.0), (70.0, 60.0)]),
        ring(&[(10.0, 40.0), (25.0, 40.0), (25.0, 55.0), (10.0, 55.0)]),
    ] {
        assert!(off_m(&road.points, &line) >= 1.24, "{}", off_m(&road.points, &line));
    }
    // Its own net but for the opening, which lies between two posts 3 m apart.
    let opening = gate.opening.as_ref().unwrap();
    let own = ring(&[(35.0, 35.0), (65.0, 35.0), (65.0, 65.0), (35.0, 65.0)]);
    let middle = own.nearest_along(geometry::Point::new(opening.at.east_m, opening.at.north_m)).0;
    let shut = geometry::ways::without_stretch(&own, middle - 1.5, 3.0);
    assert!(off_m(&road.points, &shut[0]) >= 1.24);
    assert!(road.length_m > 70.0 && road.length_m < 100.0, "{}", road.length_m);
}

#[test]
fn where_nets_shut_the_gate_off_it_is_said() {
    // A standing run all round the first.
    let plan = with(|plan| {
        let round = json!({ "id": "round", "status": "standing", "nets": vec!["roll"; 8],
            "outline": [[25, 25], [75, 25], [75, 75], [25, 75]] });
        plan["runs"].as_array_mut().unwrap().push(round);
    });
    let shut = gate(&plan);
    assert!(shut.road.is_none() && shut.no_road == Some(NoRoad::Blocked) && shut.opening.is_some());
    // An option that is not there yet shuts nothing.
    let plan = with(|plan| {
        let round =
            json!({ "id": "round", "nets": vec!["roll"; 8], "outline": [[25, 25], [75, 25], [75, 75], [25, 75]] });
        plan["runs"].as_array_mut().unwrap().push(round);
    });
    assert!(gate(&plan).road.is_some());
    // Neither gateway nor boundary.
    let nowhere = gate(&with(|plan| plan["ground"] = json!({})));
    assert_eq!(nowhere.no_road, Some(NoRoad::NoGateway));
    // One open net has no join.
    let alone = gate(&with(|plan| {
        plan["runs"][0]["nets"] = json!(["roll"]);
        plan["runs"][0]["closed"] = json!(false);
        plan["runs"][0]["outline"] = json!([[35, 35], [65, 35]]);
    }));
    assert!(alone.opening.is_none());
}

#[test]
fn the_coops_gate_is_as_wide_as_the_coop_and_has_a_way_out_for_it() {
    let coop = gate(&with(|plan| plan["runs"][0]["gates"][0]["kind"] = json!("coop")));
    assert!((coop.width_m - 3.0).abs() < 1e-12 && coop.is_wide_enough());
    let road = coop.road.unwrap();
    assert_eq!((road.inside[0], *road.inside.last().unwrap()), (Point::new(50.0, 50.0), coop.opening.unwrap().at));
    assert!((15.0..15.5).contains(&road.inside_m), "{}", road.inside_m);
}

#[test]
fn a_gateway_that_is_not_stated_is_the_boundarys_nearest_corner() {
    let assumed = gate(&with(|plan| {
        plan["ground"]["gateway"] = Value::Null;
        plan["runs"][0]["gates"][0]["at"] = json!([35, 50]);
    }));
    let gateway = assumed.road.unwrap().gateway;
    assert!(gateway.east_m == 0.0, "{gateway:?}");
}

#[test]
fn a_bad_width_opens_nothing_and_is_said() {
    let worked = run(&with(|plan| plan["runs"][0]["gates"][0]["width_m"] = json!(-2.0)));
    assert!(worked.gates[0].opening.is_none() && !worked.troubles.is_empty());
}

#[test]
fn where_the_spare_is_folded_back_only_the_other_net_is_laid_back() {
    // 125 m of nets on 120 m: the closing join has spare on one side.
    let plan = with(|plan| {
        plan["store"]["nets"].as_array_mut().unwrap().push(json!({ "id": "long", "length_m": 35, "panels": 10 }));
        plan["runs"][0]["nets"] = json!(["roll", "roll", "roll", "long"]);
        plan["runs"][0]["pins"] = json!([ { "kind": "start", "at": [50, 35] } ]);
        plan["runs"][0]["gates"][0]["width_m"] = json!(2.0);
    });
    let worked = run(&plan);
    let opening = worked.gates[0].opening.clone().unwrap();
    let lay = worked.lay.unwrap();
    assert!(lay.spare_m > 4.0 && apart_m(opening.join, Point::new(50.0, 35.0)) < 1e-6);
    assert!(opening.pulled.iter().all(|&post| lay.posts[post].net == 0), "{:?}", opening.pulled);
}
