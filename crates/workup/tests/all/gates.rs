//! Gates and pins, worked out from plans.

use geometry::{Outline, region};
use plan::{GateKind, Plan, Point};
use serde_json::{Value, json};
use workup::gates::{GateWork, NoRoad};
use workup::{Depth, Known, RunWorkup, Workup, knowing, workup};

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
    let worked = workup(plan, Depth::Full);
    assert_eq!(worked, workup(plan, Depth::Full), "the same plan, the same gates");
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

#[test]
fn no_two_gates_open_one_join() {
    // Joins amid the four sides; the southern one is nearest the gateway, the northern one farthest.
    let worked = run(&with(|plan| plan["runs"][0]["gates"] = json!(vec![json!({ "kind": "foot" }); 5])));
    let joins: Vec<Option<Point>> = worked.gates.iter().map(|gate| gate.opening.as_ref().map(|o| o.join)).collect();
    let own = [(50.0, 35.0), (65.0, 50.0), (35.0, 50.0), (50.0, 65.0)].map(Point::from);
    let is_at = |place: Point| joins.iter().flatten().filter(|join| apart_m(**join, place) < 1e-6).count();
    assert!(own.iter().all(|&place| is_at(place) == 1), "{joins:?}");
    assert!(apart_m(joins[0].unwrap(), own[0]) < 1e-6 && apart_m(joins[3].unwrap(), own[3]) < 1e-6, "{joins:?}");
    assert!(joins[4].is_none() && worked.gates[4].none_left && worked.gates[4].width_m > 0.0);
    // One that names a place chooses before one that does not, and of two at one place the later gives way.
    let worked = run(&with(|plan| {
        plan["runs"][0]["gates"] = json!([ { "kind": "foot" }, { "kind": "foot", "at": [50, 35] },
            { "kind": "foot", "at": [51, 35] } ]);
    }));
    let join = |gate: usize| worked.gates[gate].opening.as_ref().unwrap().join;
    assert!(apart_m(join(1), own[0]) < 1e-6 && worked.gates[1].taken_by.is_none());
    assert!(apart_m(join(2), own[1]) < 1e-6 && worked.gates[2].taken_by == Some(1));
    assert!(apart_m(join(0), own[2]) < 1e-6, "{:?}", join(0));
}

#[test]
fn a_gate_that_runs_into_anothers_clear_width_is_told() {
    // Nets of 30 m in three panels: two gates of 25 m from neighbouring joins on a straight line.
    let plan = |widths: [f64; 2]| {
        with(|plan| {
            plan["store"]["nets"][0]["panels"] = json!(6);
            plan["runs"][0]["outline"] = json!([[10, 50], [90, 50]]);
            plan["runs"][0]["closed"] = json!(false);
            plan["runs"][0]["nets"] = json!(["roll", "roll", "roll"]);
            plan["runs"][0]["pins"] = json!([ { "kind": "start", "at": [10, 50] } ]);
            plan["runs"][0]["gates"] = json!([ { "kind": "wheels", "at": [40, 50], "width_m": widths[0] },
                { "kind": "wheels", "at": [70, 50], "width_m": widths[1] } ]);
        })
    };
    let near = run(&plan([40.0, 38.0]));
    assert_eq!((near.gates[0].runs_into, near.gates[1].runs_into), (None, Some(0)));
    let apart = run(&plan([20.0, 20.0]));
    assert!(apart.gates.iter().all(|gate| gate.runs_into.is_none() && gate.is_wide_enough()));
}

#[test]
fn what_is_searched_for_waits_at_quick_depth_and_is_known_from_then_on() {
    let plan = with(|plan| plan["runs"][0]["pins"][0]["at"] = json!([51, 35]));
    let quick = workup(&plan, Depth::Quick).runs.remove(0);
    let full = workup(&plan, Depth::Full).runs.remove(0);
    let pin = |run: &RunWorkup| run.lay.as_ref().unwrap().pins[0].clone();
    assert!(pin(&quick).waits && pin(&quick).kept && pin(&quick).cost_m.is_none() && quick.waits());
    assert!(!pin(&full).waits && pin(&full).cost_m.is_some() && !full.waits());
    assert_eq!(quick.gates[0].no_road, Some(NoRoad::Waiting));
    assert_eq!(quick.gates[0].opening, full.gates[0].opening, "what is pulled is known at once");
    let mut known = Known::default();
    assert_eq!(knowing(&plan, Depth::Full, &mut known).runs[0], full, "what is known changes nothing");
    // Another title, another target: nothing of it is asked again.
    let other = Plan { title: "other".to_owned(), target_kv: Some(3.0), ..plan.clone() };
    let again = knowing(&other, Depth::Quick, &mut known).runs.remove(0);
    assert!(!again.waits() && again.gates == full.gates && pin(&again) == pin(&full));
    // A net in the way is asked anew, and the gate's own line too.
    let mut moved = plan.clone();
    moved.runs[0].outline[2].east_m += 0.5;
    let moved = knowing(&moved, Depth::Quick, &mut known).runs.remove(0);
    assert!(pin(&moved).waits && moved.gates[0].waits());
    let mut pond = plan.clone();
    pond.ground.keep_outs = with(|plan| {
        plan["ground"]["keep_outs"] =
            json!([ { "name": "pond", "outline": [[48, 10], [52, 10], [52, 20], [48, 20]] } ]);
    })
    .ground
    .keep_outs;
    let round = knowing(&pond, Depth::Quick, &mut known).runs.remove(0);
    assert!(round.gates[0].waits() && !pin(&round).waits);
    assert_eq!(knowing(&pond, Depth::Full, &mut known), workup(&pond, Depth::Full));
}

#[test]
fn a_gate_that_chose_its_join_stays_at_it_while_the_way_is_worked_out() {
    // The southern join is nearest the gateway and a barn stands before it, so another is chosen at full depth.
    let plan = with(|plan| {
        plan["runs"][0]["gates"] = json!([ { "kind": "foot" } ]);
        plan["ground"]["keep_outs"] =
            json!([ { "name": "barn", "outline": [[45, 26], [55, 26], [55, 34.8], [45, 34.8]] } ]);
    });
    let mut known = Known::default();
    let join = |worked: Workup| worked.runs[0].gates[0].opening.as_ref().unwrap().join;
    let full = join(knowing(&plan, Depth::Full, &mut known));
    assert!(apart_m(full, Point::new(50.0, 35.0)) > 1.0, "{full:?}");
    let mut moved = plan.clone();
    moved.runs[0].outline[2].east_m += 0.01;
    assert!(apart_m(join(knowing(&moved, Depth::Quick, &mut known)), full) < 0.1);
}
