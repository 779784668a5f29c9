//! What was found leads to where it is mended: every rule by a plan that breaks it, clicked in the list over the foot.

use std::collections::BTreeSet;

use crate::hand::{self, Desk, on_page, settle, window};
use desktop::editor::Page;
use drawing::Thing;
use egui::{Key, Rect};
use egui_kittest::kittest::{NodeT, Queryable};
use plan::Plan;
use serde_json::{Value, json};
use words::Words;
use words::texts::{Bracing, Compare, Damp, Faults, Fitting, Gates, Many, Power, Slope, Store, Window as Text};

/// The smallest window, where the least of a page is in sight, and what of it a page takes.
const SIZE: [f32; 2] = [900.0, 600.0];
const PAGE: f32 = 296.0;
/// Heights of the head, and of the figures with the names at a page's foot.
const HEAD: f32 = 44.0;
const FOOT: f32 = 48.0 + 32.0;

/// A square of 25 m from two nets in the middle of a paddock; nothing wrong but that its corners lean.
fn quiet() -> Value {
    json!({ "format": "netfold-plan", "version": 1,
        "ground": { "boundary": [[0, 0], [100, 0], [100, 100], [0, 100]], "soil": {} },
        "store": { "nets": [ { "id": "long", "count": 4, "length_m": 50, "panels": 14 } ],
            "energizers": [ { "id": "big", "stored_j": 3, "no_load_kv": 9, "kv_at_500_ohm": 7.5, "output_j_at_500_ohm": 2.2 },
                { "id": "small" } ] },
        "coop": { "id": "house", "at": [50, 50], "width_m": 2, "birds": 30 },
        "runs": [ { "id": "run", "outline": [[40, 40], [65, 40], [65, 65], [40, 65]], "nets": ["long", "long"],
            "coop": "house", "energizer": "big", "feed_at": [40, 40], "status": "standing",
            "earth_stakes": { "count": 3, "at": [30, 30] } } ],
        "readings": [ { "run": "run", "along_m": 50, "kind": "fence_kv", "value": 6.0 } ] })
}

/// The same of four rolls, with a gate for wheels at a join amid the southern side and a way in.
fn gated() -> Value {
    changed(quiet(), &|plan| {
        plan["ground"]["gateway"] = json!({ "at": [50, 0] });
        plan["store"]["nets"] = json!([ { "id": "roll", "count": 12, "length_m": 30, "panels": 10 } ]);
        let run = &mut plan["runs"][0];
        run["outline"] = json!([[35, 35], [65, 35], [65, 65], [35, 65]]);
        run["nets"] = json!(["roll", "roll", "roll", "roll"]);
        run["feed_at"] = json!([35, 35]);
        run["pins"] = json!([ { "kind": "join", "at": [50, 35] } ]);
        run["gates"] = json!([ { "kind": "wheels", "at": [50, 35] } ]);
    })
}

/// The same square with damp ground beside the feed, and one earth stake not in it.
fn damp() -> Value {
    changed(quiet(), &|plan| {
        plan["ground"]["soil"]["resistivity_ohm_m"] = json!(100);
        let hollow = json!([[28, 45], [34, 45], [34, 55], [28, 55]]);
        plan["ground"]["damp"] = json!([ { "name": "Hollow", "outline": hollow, "resistivity_ohm_m": 40 } ]);
        let run = &mut plan["runs"][0];
        (run["feed_at"], run["energizer_at"]) = (json!([40, 50]), json!([36, 50]));
        run["earth_stakes"] = json!({ "places": [[36, 53]], "lead_m": 5 });
    })
}

/// Heights over the whole square and beyond.
fn grid(cell_m: f64, up_m: impl Fn(f64, f64) -> Option<f64>) -> Value {
    let count = (44.0 / cell_m) as usize;
    let mut all = Vec::new();
    for row in 0..count {
        all.extend((0..count).map(|column| up_m(30.0 + cell_m * column as f64, 30.0 + cell_m * row as f64)));
    }
    json!({ "south_west": [30, 30], "cell_m": cell_m, "columns": count, "up_m": all })
}

fn changed(mut plan: Value, change: &dyn Fn(&mut Value)) -> Value {
    change(&mut plan);
    plan
}

fn run(key: &'static str, value: Value) -> Value {
    changed(quiet(), &|plan| plan["runs"][0][key] = value.clone())
}

fn ground(key: &'static str, value: Value) -> Value {
    changed(quiet(), &|plan| plan["ground"][key] = value.clone())
}

fn gate(key: &'static str, value: Value) -> Value {
    changed(gated(), &|plan| plan["runs"][0]["gates"][0][key] = value.clone())
}

fn net(key: &'static str, value: Value) -> Value {
    changed(quiet(), &|plan| plan["store"]["nets"][0][key] = value.clone())
}

fn unit(key: &'static str, value: Value) -> Value {
    changed(quiet(), &|plan| plan["store"]["energizers"][0][key] = value.clone())
}

fn stakes(places: Value) -> Value {
    run("earth_stakes", json!({ "places": places }))
}

fn fault(fault: Value) -> Value {
    run("faults", json!([fault]))
}

fn branch(branch: Value) -> Value {
    run("branches", json!([branch]))
}

fn hazard(kind: &str, path: Value) -> Value {
    ground("hazards", json!([ { "kind": kind, "path": path, "name": "It" } ]))
}

/// An open run round three sides.
fn open(walls: Value) -> Value {
    changed(quiet(), &|plan| {
        plan["runs"][0]["outline"] = json!([[40, 70], [40, 40], [70, 40], [70, 70]]);
        plan["runs"][0]["closed"] = json!(false);
        plan["walls"] = walls.clone();
    })
}

/// A second run that stands, from that far east on.
fn beside(east: f64, energizer: &str) -> Value {
    changed(quiet(), &|plan| {
        let mut other = plan["runs"][0].clone();
        (other["id"], other["energizer"], other["coop"]) = (json!("other"), json!(energizer), Value::Null);
        other["outline"] = json!([[east, 40], [east + 25.0, 40], [east + 25.0, 65], [east, 65]]);
        other["feed_at"] = json!([east, 40]);
        other["earth_stakes"] = json!({ "at": [34, 30] });
        plan["runs"].as_array_mut().unwrap().push(other);
    })
}

/// A rule, a plan that breaks it, the page where that is mended, what is picked there, and what is in sight.
type Row = (&'static str, Value, Page, Option<Thing>, String);

/// Every rule that something in the window mends.
fn rows() -> Vec<Row> {
    let words = Words::default();
    let (ground_page, run_page, power, book) = (Page::Ground, Page::Run, Page::Power, Page::Book);
    let head = |text: &dyn Fn(Words) -> &'static str| text(words).to_owned();
    macro_rules! head {
        ($text:expr) => {
            head(&|words: Words| words.text($text))
        };
    }
    let said = |text: &str| text.to_owned();
    let whole = Some(Thing::Run { run: 0 });
    let corner = |vertex| Some(Thing::RunCorner { run: 0, vertex });
    let a_fault = Some(Thing::Fault { run: 0, branch: None, fault: 0 });
    let a_gate = |gate| Some(Thing::Gate { run: 0, gate });
    let stake = |stake| Some(Thing::EarthStake { run: 0, stake });
    let a_hazard = Some(Thing::Hazard { hazard: 0 });
    let square = |at: f64| json!([[at, 50], [at + 2.0, 50], [at + 2.0, 52], [at, 52]]);
    let round: Vec<[f64; 2]> = (0..28)
        .map(|post| f64::from(post) * std::f64::consts::TAU / 28.0)
        .map(|angle| [50.0 + 15.95 * angle.cos(), 50.0 + 15.95 * angle.sin()])
        .collect();
    let off = 1.0 / 2.0_f64.sqrt();
    let seen = |stood: bool, turn: Value| json!({ "at": [0, 0], "stood": stood, "turn_deg": turn });
    let soil = |soil: Value| ground("soil", soil);
    let rises = |at: [f64; 2], rises_m: f64| json!({ "at": at, "rises_m": rises_m });
    let lines = plan::defaults::LIVE_LINE_HEIGHTS_M.len();
    let pond = json!([ { "name": "the pond", "outline": [[45, 28], [55, 28], [55, 33], [45, 33]], "water": true } ]);
    let wall = |holds: Value| json!([ { "path": [[30, 70.4], [90, 70.4]], "holds_birds": holds, "kind": "hedge" } ]);
    let mend = |number: usize| format!(": Corner {number}");
    vec![
        // Corners and what holds them.
        ("corner-leans", quiet(), run_page, corner(0), mend(1)),
        ("corner-may-lean", soil(json!({ "undrained_strength_kpa": 180 })), run_page, corner(0), mend(1)),
        (
            "brace-too-weak",
            changed(soil(json!({ "friction_angle_deg": 30 })), &|plan| {
                plan["runs"][0]["braces"] = json!([ { "at": [40, 65] } ]);
            }),
            run_page,
            corner(3),
            mend(4),
        ),
        (
            "brace-inside",
            run("outline", json!([[40, 40], [65, 40], [52, 52], [65, 65], [40, 65]])),
            run_page,
            corner(2),
            mend(3),
        ),
        ("end-needs-brace", open(json!([])), run_page, Some(Thing::Brace { run: 0, corner: 0 }), said(": End")),
        (
            "bend-leans",
            changed(soil(json!({ "undrained_strength_kpa": 12 })), &|plan| {
                plan["runs"][0]["outline"] = json!(round);
            }),
            run_page,
            whole,
            head!(Text::Corners),
        ),
        ("posts-go-over", ground("wind_m_per_s", json!(40)), run_page, whole, head!(Bracing::Wind)),
        (
            "corner-between-posts",
            run("outline", json!([[40, 40], [66, 40], [66, 64], [40, 64]])),
            run_page,
            corner(1),
            said("Move corner 2 to a post"),
        ),
        // Nets and the store.
        ("net-too-short", run("nets", json!(["long"])), run_page, whole, head!(Store::YourNets)),
        (
            "spare-netting",
            run("outline", json!([[40, 40], [64, 40], [64, 65], [40, 65]])),
            run_page,
            whole,
            head!(Fitting::Fit),
        ),
        ("store-too-small", net("count", json!(1)), run_page, whole, said("How many, long")),
        (
            "standing-too-many",
            changed(beside(65.0, "big"), &|plan| plan["store"]["nets"][0]["count"] = json!(3)),
            run_page,
            None,
            said("How many, long"),
        ),
        ("panel-sum", net("panel_lengths_m", json!([20, 20])), run_page, None, said("How many, long")),
        ("live-lines", net("live_line_heights_m", json!([0.2, 0.2])), run_page, whole, said("How many, long")),
        (
            "no-nets",
            changed(quiet(), &|plan| {
                plan["store"]["nets"] = json!([]);
                plan["runs"][0].as_object_mut().unwrap().remove("nets");
            }),
            run_page,
            whole,
            head!(Store::YourNets),
        ),
        (
            "too-many-posts",
            changed(run("nets", Value::Array(vec![json!("long"); 60])), &|plan| {
                plan["store"]["nets"][0] = json!({ "id": "long", "length_m": 1, "panels": 10_000, "count": 60 });
            }),
            run_page,
            whole,
            head!(Store::YourNets),
        ),
        (
            "chain-too-long",
            changed(quiet(), &|plan| {
                plan["store"]["nets"][0] =
                    json!({ "id": "long", "length_m": 1e5, "panels": 1, "count": 4_000_000_000_u32 });
            }),
            run_page,
            whole,
            head!(Store::YourNets),
        ),
        // Ends and branches.
        ("end-in-the-open", open(json!([])), run_page, corner(0), said("Pick corner 1")),
        ("end-holds-no-birds", open(wall(json!(false))), run_page, corner(0), said("Pick corner 1")),
        ("end-to-look-at", open(wall(Value::Null)), ground_page, Some(Thing::Wall { wall: 0 }), said("Hedge")),
        (
            "ends-apart",
            open(
                json!([ { "path": [[40, 69], [40, 90]], "holds_birds": true }, { "path": [[70, 69], [70, 90]], "holds_birds": true } ]),
            ),
            run_page,
            corner(3),
            said("Pick corner 4"),
        ),
        (
            "branch-no-nets",
            branch(json!({ "from_m": 10, "outline": [[65, 50], [80, 50]] })),
            run_page,
            Some(Thing::Branch { run: 0, branch: 0 }),
            said("Branch 1, "),
        ),
        (
            "branch-no-line",
            branch(json!({ "from_m": 10, "outline": [[65, 50]], "nets": ["long"] })),
            run_page,
            Some(Thing::Branch { run: 0, branch: 0 }),
            said("Branch 1, "),
        ),
        (
            "branch-off-line",
            branch(json!({ "from_m": 10, "outline": [[650, 50], [700, 50]], "nets": ["long"] })),
            run_page,
            Some(Thing::Branch { run: 0, branch: 0 }),
            said("Branch 1, "),
        ),
        // The run on its ground.
        (
            "leaves-paddock",
            run("outline", json!([[40, 40], [65, 40], [65, 120], [40, 65]])),
            run_page,
            corner(2),
            said("Pick corner 3"),
        ),
        (
            "keep-out-touched",
            ground("keep_outs", json!([ { "outline": square(66.5), "clearance_m": 3 } ])),
            ground_page,
            Some(Thing::KeepOut { keep_out: 0 }),
            said("Keep off by"),
        ),
        (
            "keep-out-enclosed",
            ground("keep_outs", json!([ { "outline": square(50.0), "clearance_m": 1 } ])),
            ground_page,
            Some(Thing::KeepOut { keep_out: 0 }),
            said("May stand inside a run"),
        ),
        (
            "coop-outside",
            changed(quiet(), &|plan| plan["coop"]["at"] = json!([80, 80])),
            ground_page,
            Some(Thing::Coop { coop: 0 }),
            said("Birds"),
        ),
        (
            "coop-in-no-run",
            changed(run("coop", Value::Null), &|plan| plan["coop"]["at"] = json!([80, 80])),
            ground_page,
            Some(Thing::Coop { coop: 0 }),
            said("Birds"),
        ),
        ("runs-overlap", beside(60.0, "big"), run_page, Some(Thing::Run { run: 1 }), said("Pick corner 1")),
        ("two-fences-near", beside(67.0, "small"), run_page, Some(Thing::Run { run: 1 }), said("Pick corner 1")),
        (
            "hidden-on-map",
            hazard("public_way", json!([[10, 0], [10, 100]])),
            ground_page,
            None,
            head!(Many::Everything),
        ),
        // Dangers.
        (
            "overhead-line-crossed",
            hazard("overhead_line", json!([[50, 0], [50, 100]])),
            ground_page,
            a_hazard,
            said("Line voltage"),
        ),
        (
            "overhead-line-near",
            hazard("overhead_line", json!([[70, 0], [70, 100]])),
            ground_page,
            a_hazard,
            said("Line voltage"),
        ),
        (
            "public-way-crossed",
            hazard("public_way", json!([[50, 0], [50, 100]])),
            ground_page,
            a_hazard,
            said("Signs face it"),
        ),
        (
            "public-way-unsigned",
            hazard("public_way", json!([[70, 0], [70, 100]])),
            ground_page,
            a_hazard,
            said("Signs face it"),
        ),
        ("hazard-without-path", hazard("public_way", json!([])), ground_page, a_hazard, said("Signs face it")),
        // The slope.
        ("slope-steep", run("side_slopes", json!([rises([52.0, 40.0], 20.0)])), run_page, whole, head!(Slope::Head)),
        (
            "sides-do-not-close",
            run(
                "side_slopes",
                json!([
                    rises([52.0, 40.0], 3.0),
                    rises([65.0, 52.0], 0.0),
                    rises([52.0, 65.0], -1.0),
                    rises([40.0, 52.0], 0.0)
                ]),
            ),
            run_page,
            whole,
            head!(Slope::Head),
        ),
        (
            "dip-under-net",
            ground(
                "height_grid",
                grid(0.5, |east_m, north_m| {
                    Some(if north_m < 45.0 { -0.3 * (1.0 - (east_m - 50.0).abs()).max(0.0) } else { 0.0 })
                }),
            ),
            run_page,
            whole,
            head!(Slope::DipsHead),
        ),
        (
            "ridge-under-net",
            ground(
                "height_grid",
                grid(0.5, |east_m, north_m| {
                    Some(if north_m > 60.0 { 0.25 * (1.0 - (east_m - 52.0).abs()).max(0.0) } else { 0.0 })
                }),
            ),
            run_page,
            whole,
            head!(Slope::DipsHead),
        ),
        (
            "heights-missing",
            ground("height_grid", grid(2.0, |east_m, north_m| (east_m != 52.0 || north_m != 40.0).then_some(1.0))),
            ground_page,
            whole,
            head!(Slope::HeightsHead),
        ),
        (
            "heights-beyond",
            changed(quiet(), &|plan| {
                plan["heights"] = json!([ { "at": [45, 45], "up_m": 0 }, { "at": [49, 45], "up_m": 1 }, { "at": [45, 49], "up_m": 1 } ]);
            }),
            ground_page,
            whole,
            head!(Slope::HeightsHead),
        ),
        (
            "heights-elsewhere",
            changed(quiet(), &|plan| {
                plan["ground"]["height_grid"] = grid(2.0, |_, _| Some(1.0));
                plan["ground"]["height_grid"]["south_west"] = json!([500, 500]);
            }),
            ground_page,
            whole,
            head!(Slope::HeightsHead),
        ),
        (
            "heights-coarse",
            changed(quiet(), &|plan| plan["ground"]["height_grid"] = grid(11.0, |_, _| Some(1.0))),
            ground_page,
            None,
            head!(Slope::HeightsHead),
        ),
        (
            "height-grid",
            ground("height_grid", json!({ "south_west": [0, 0], "cell_m": 1, "columns": 7, "up_m": [1, 2, 3] })),
            ground_page,
            None,
            head!(Slope::HeightsHead),
        ),
        // Soil.
        (
            "two-soils",
            soil(json!({ "undrained_strength_kpa": 50, "friction_angle_deg": 30 })),
            ground_page,
            None,
            head!(Text::SoilHead),
        ),
        ("soil-refuses", soil(json!({ "by_foot": "refuses" })), ground_page, None, head!(Text::SoilHead)),
        (
            "no-such-class",
            soil(json!({ "class": { "table": "tm_5_818_1", "name": "firm" } })),
            ground_page,
            None,
            head!(Text::SoilHead),
        ),
        (
            "seen-nowhere",
            soil(json!({ "corners_seen": [seen(true, Value::Null)] })),
            ground_page,
            None,
            head!(Text::SoilHead),
        ),
        (
            "corners-contradict",
            soil(json!({ "corners_seen": [seen(true, json!(90)), seen(false, json!(60))] })),
            ground_page,
            None,
            head!(Text::SoilHead),
        ),
        ("resistivity-odd", soil(json!({ "resistivity_ohm_m": 1e6 })), power, None, head!(Power::SoilSlider)),
        (
            "damp-drier",
            changed(damp(), &|plan| plan["ground"]["damp"][0]["resistivity_ohm_m"] = json!(250)),
            ground_page,
            Some(Thing::Damp { damp: 0 }),
            said("Hollow"),
        ),
        // Gates and pins.
        (
            "pin-not-kept",
            changed(gated(), &|plan| plan["runs"][0]["pins"] = json!([ { "kind": "corner", "at": [50, 50] } ])),
            run_page,
            Some(Thing::Pin { run: 0, pin: 0 }),
            said("Take out the pin"),
        ),
        (
            "gate-no-join",
            changed(gated(), &|plan| {
                plan["runs"][0]["nets"] = json!(["roll"]);
                plan["runs"][0]["closed"] = json!(false);
                plan["runs"][0]["outline"] = json!([[35, 35], [65, 35]]);
            }),
            run_page,
            whole,
            head!(Gates::Gates),
        ),
        ("gate-off-join", gate("at", json!([55, 35])), run_page, a_gate(0), said("Clear width")),
        (
            "gate-join-taken",
            changed(gated(), &|plan| {
                plan["runs"][0]["gates"].as_array_mut().unwrap().push(json!({ "kind": "foot", "at": [50, 35] }));
            }),
            run_page,
            a_gate(1),
            said("Clear width"),
        ),
        (
            "gate-none-left",
            changed(gated(), &|plan| plan["runs"][0]["gates"] = json!(vec![json!({ "kind": "foot" }); 5])),
            run_page,
            a_gate(4),
            said("Clear width"),
        ),
        (
            "gate-overlap",
            changed(gated(), &|plan| {
                plan["runs"][0]["outline"] = json!([[10, 50], [90, 50]]);
                plan["runs"][0]["closed"] = json!(false);
                plan["runs"][0]["nets"] = json!(["roll", "roll", "roll"]);
                plan["runs"][0]["pins"] = json!([ { "kind": "start", "at": [10, 50] } ]);
                plan["runs"][0]["gates"] = json!([ { "kind": "wheels", "at": [40, 50], "width_m": 40 },
                    { "kind": "wheels", "at": [70, 50], "width_m": 38 } ]);
            }),
            run_page,
            a_gate(1),
            said("Clear width"),
        ),
        ("gate-too-wide", gate("width_m", json!(31)), run_page, a_gate(0), said("Clear width")),
        (
            "gate-near-corner",
            changed(gated(), &|plan| {
                plan["runs"][0]["pins"][0]["at"] = json!([35, 35]);
                plan["runs"][0]["gates"][0]["at"] = json!([35, 35]);
            }),
            run_page,
            a_gate(0),
            said("Clear width"),
        ),
        (
            "gate-wet",
            changed(gated(), &|plan| plan["ground"]["keep_outs"] = pond.clone()),
            run_page,
            a_gate(0),
            said("Clear width"),
        ),
        (
            "gate-no-way",
            changed(gated(), &|plan| {
                plan["runs"].as_array_mut().unwrap().push(json!({ "id": "round", "status": "standing",
                    "nets": vec!["roll"; 8], "outline": [[25, 25], [75, 25], [75, 75], [25, 75]] }));
            }),
            run_page,
            a_gate(0),
            said("Clear width"),
        ),
        ("gate-wheels-narrow", gate("width_m", json!(1.2)), run_page, a_gate(0), said("Clear width")),
        (
            "gate-coop-narrow",
            changed(gated(), &|plan| {
                plan["runs"][0]["gates"][0] = json!({ "kind": "coop", "at": [50, 35], "width_m": 1.5 });
            }),
            run_page,
            a_gate(0),
            said("Clear width"),
        ),
        (
            "gate-no-gateway",
            changed(gated(), &|plan| plan["ground"] = json!({})),
            ground_page,
            whole,
            head!(Gates::PlaceGateway),
        ),
        (
            "gateway-off-boundary",
            ground("gateway", json!({ "at": [50, 10] })),
            ground_page,
            Some(Thing::Gateway),
            head!(Gates::PlaceGateway),
        ),
        // Volts.
        ("weak-post", run("leakage_s_per_m", json!(1e-3)), power, None, head!(Text::GrassOnTheNet)),
        ("not-measured", changed(quiet(), &|plan| plan["readings"] = json!([])), book, None, said("From corner 1")),
        ("leakage-zero", run("leakage_s_per_m", json!(0)), power, whole, head!(Text::GrassOnTheNet)),
        ("leakage-enormous", run("leakage_s_per_m", json!(1)), power, whole, head!(Text::GrassOnTheNet)),
        (
            "fault-off-net",
            fault(json!({ "at": [50, 30], "kind": "short", "ohm": 300 })),
            power,
            a_fault,
            said("Take out "),
        ),
        ("fault-no-ohm", fault(json!({ "at": [50, 40], "kind": "short" })), power, a_fault, said("Take out ")),
        (
            "fault-lines",
            fault(json!({ "at": [50, 40], "kind": "line_break", "lines": lines + 1 })),
            power,
            a_fault,
            said("Take out "),
        ),
        (
            "fault-no-join",
            changed(fault(json!({ "at": [50, 40], "kind": "join", "ohm": 50 })), &|plan| {
                plan["runs"][0]["nets"] = json!(["long"]);
            }),
            power,
            a_fault,
            said("Take out "),
        ),
        (
            "all-lines-broken",
            fault(json!({ "at": [50, 40], "kind": "line_break", "lines": lines })),
            power,
            a_fault,
            said("Take out "),
        ),
        (
            "energizer-above-limit",
            changed(unit("stored_j", json!(14)), &|plan| {
                plan["store"]["energizers"][0]["output_j_at_500_ohm"] = json!(9);
            }),
            power,
            None,
            said("Stored, big"),
        ),
        (
            "energizer-long-impulse",
            changed(quiet(), &|plan| {
                plan["store"]["energizers"][0] = json!({ "id": "big", "stored_j": 4, "no_load_kv": 0.5, "kv_at_500_ohm": 0.3, "output_j_at_500_ohm": 2.2 });
            }),
            power,
            None,
            said("Stored, big"),
        ),
        ("data-sheet", unit("kv_at_500_ohm", json!(9.5)), power, whole, said("Stored, big")),
        (
            "no-energizer",
            changed(quiet(), &|plan| {
                plan["store"]["energizers"] = json!([]);
                plan["runs"][0].as_object_mut().unwrap().remove("energizer");
            }),
            power,
            whole,
            head!(Store::Energizer),
        ),
        (
            "no-volts",
            changed(quiet(), &|plan| plan["store"]["earth_stake"] = json!({ "length_m": 0.01, "diameter_m": 5 })),
            power,
            whole,
            said("Volts on run"),
        ),
        (
            "feed-off-line",
            run("feed_at", json!([20, 50])),
            power,
            Some(Thing::Feed { run: 0 }),
            head!(Damp::WhereItStands),
        ),
        (
            "lead-short",
            changed(damp(), &|plan| plan["runs"][0]["lead_m"] = json!(3)),
            power,
            Some(Thing::Energizer { run: 0 }),
            head!(Damp::WhereItStands),
        ),
        // The earth.
        (
            "earth-lead-short",
            changed(damp(), &|plan| plan["runs"][0]["earth_stakes"]["lead_m"] = json!(2)),
            power,
            stake(0),
            said("Earth lead, "),
        ),
        ("earth-damper-near", damp(), power, whole, head!(Text::Earth)),
        ("stake-near-net", stakes(json!([[30, 30], [40.2, 50]])), power, stake(1), said("Stake 2")),
        ("earth-stakes-together", stakes(json!([[30, 30], [33, 30], [33, 30]])), power, stake(2), said("Stake 3")),
        (
            "earth-stakes-many",
            stakes(json!((0..101).map(|number| json!([1 + number % 30, 1 + number / 30])).collect::<Vec<_>>())),
            power,
            whole,
            head!(Text::Earth),
        ),
        (
            "earth-stakes-differ",
            run("earth_stakes", json!({ "count": 3, "places": [[30, 30], [33, 30]] })),
            power,
            stake(0),
            said("Stake 1"),
        ),
        (
            "earth-stake-weak",
            changed(quiet(), &|plan| {
                plan["store"]["earth_stake"] = json!({ "length_m": 0.4, "diameter_m": 0.012 });
                plan["store"]["brace"] = json!({ "stake_length_m": 0.5 });
                plan["runs"][0]["braces"] = json!([ { "at": [40, 40] } ]);
                plan["runs"][0]["earth_stakes"] = json!({ "places": [[40.0 - off, 40.0 - off], [30, 30]] });
            }),
            power,
            whole,
            said("Length in the ground, "),
        ),
        ("earths-near", beside(80.0, "small"), power, Some(Thing::EarthStake { run: 1, stake: 0 }), head!(Text::Earth)),
        ("foreign-earth-near", hazard("foreign_earth", json!([[35, 30]])), power, stake(0), head!(Text::Earth)),
        (
            "foreign-earth-unchecked",
            changed(hazard("foreign_earth", json!([[35, 30]])), &|plan| {
                plan["runs"][0]["earth_stakes"] = json!({ "count": 3 });
            }),
            power,
            whole,
            head!(Text::Earth),
        ),
        // What is asked and what is typed.
        (
            "birds-rule",
            changed(quiet(), &|plan| plan["season"] = json!({ "birds_rule": "mine" })),
            run_page,
            None,
            head!(Compare::BirdsHead),
        ),
        (
            "outline-crosses",
            run("outline", json!([[40, 40], [65, 65], [65, 40], [40, 65]])),
            run_page,
            corner(0),
            said("Pick corner 1"),
        ),
        ("outline-few-corners", run("outline", json!([[40, 40], [65, 65]])), run_page, whole, said("Pick corner 1")),
        (
            "outline-many-corners",
            ground(
                "keep_outs",
                json!([ { "outline": (0..10_001).map(|at| json!([at, at % 2])).collect::<Vec<_>>() } ]),
            ),
            ground_page,
            Some(Thing::KeepOut { keep_out: 0 }),
            said("Keep off by"),
        ),
        (
            "outline-too-far",
            run("outline", json!([[40, 40], [65, 40], [1e9, 65], [40, 65]])),
            run_page,
            corner(2),
            said("Pick corner 3"),
        ),
        (
            "outline-repeats",
            run("outline", json!([[40, 40], [65, 40], [65, 40], [65, 65], [40, 65]])),
            run_page,
            corner(2),
            said("Pick corner 3"),
        ),
        (
            "outline-no-area",
            run("outline", json!([[40, 40], [65, 40], [50, 40]])),
            run_page,
            whole,
            said("Pick corner 1"),
        ),
        (
            "bad-value",
            changed(quiet(), &|plan| plan["store"]["mower"] = json!({ "overlap": 1.0 })),
            run_page,
            None,
            head!(Store::Mower),
        ),
        ("bad-value", run("join_ohm", json!(-1)), power, whole, head!(Faults::Fence)),
        (
            "no-strip",
            changed(quiet(), &|plan| plan["store"]["mower"] = json!({ "width_m": 1e-10 })),
            run_page,
            whole,
            head!(Store::Mower),
        ),
    ]
}

/// What nothing in the window mends: it is said of every plan, mended in the file, or by a hand that switches off.
const NOWHERE: [&str; 4] = ["buried-services", "local-codes-first", "gate-power-off", "unknown-key"];
/// Found only where the way through a plan of thousands of outlines takes too many steps: it leads as its like do.
const TOO_LONG_TO_BREAK: [&str; 1] = ["gate-way-unknown"];

/// The ids of all rules, as the room of findings names them.
fn rules() -> BTreeSet<String> {
    let room = concat!(env!("CARGO_MANIFEST_DIR"), "/../care/src");
    let mut found = BTreeSet::new();
    for file in std::fs::read_dir(room).unwrap() {
        let text = std::fs::read_to_string(file.unwrap().path()).unwrap();
        let quoted = text.split('"');
        let is_id = |part: &&str| {
            part.contains('-')
                && part.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'-')
                && !part.starts_with('-')
        };
        found.extend(quoted.filter(is_id).map(str::to_owned));
    }
    found
}

#[test]
fn every_rule_has_its_row() {
    let told: BTreeSet<String> = rows().into_iter().map(|row| row.0.to_owned()).collect();
    let rest = NOWHERE.into_iter().chain(TOO_LONG_TO_BREAK).map(str::to_owned);
    assert_eq!(rules(), told.into_iter().chain(rest).collect());
}

/// Opens the list over the foot.
fn open_list(desk: &mut Desk) {
    let at = figure(desk).rect().center();
    hand::click(desk, at);
}

/// The findings in the foot.
fn figure(desk: &Desk) -> egui_kittest::Node<'_> {
    let is_it = |label: &str| label.starts_with("Findings ") && label != "Findings on this page";
    let mut all = desk.query_all_by_label_contains("Findings ");
    all.find(|node| node.accesskit_node().label().is_some_and(|label| is_it(&label))).unwrap()
}

/// Where what is called so stands on the page; a heading, a field or a row, in part or whole.
fn on_page_in_sight(desk: &Desk, sees: &str) -> Option<Rect> {
    let all: Vec<_> = desk.query_all_by_label_contains(sees).map(|node| node.rect()).collect();
    let on_page = |place: &Rect| {
        place.left() >= SIZE[0] - PAGE && place.top() >= HEAD - 0.5 && place.bottom() <= SIZE[1] - FOOT + 0.5
    };
    all.into_iter().find(on_page)
}

#[test]
fn every_finding_leads_to_where_it_is_mended() {
    let mut wrong = Vec::new();
    for (id, value, page, picked, sees) in rows() {
        let mut plan: Plan =
            plan::read(value.to_string().as_bytes()).unwrap_or_else(|error| panic!("{id}: {error}")).plan;
        if id == "hidden-on-map" {
            plan.ground.hazards[0].hidden = true;
        }
        let mut desk = on_page(plan, Page::Sheet, SIZE, Words::default());
        let found = window(&desk).editor().findings().all().find(|one| one.id == id).cloned();
        let Some(found) = found else {
            let all: Vec<_> = window(&desk).editor().findings().all().map(|one| one.id).collect();
            wrong.push(format!("{id} is not found among {all:?}"));
            continue;
        };
        open_list(&mut desk);
        let row = desk
            .query_all_by_label_contains(&found.message)
            .find(|node| node.accesskit_node().role() == egui::accesskit::Role::MenuItem);
        let Some(row) = row else {
            wrong.push(format!("{id} is not in the list"));
            continue;
        };
        // What lies below in a long list is reached by the keyboard.
        row.focus();
        desk.run();
        desk.key_press(Key::Enter);
        desk.run();
        settle(&mut desk);
        let editor = window(&desk).editor();
        if editor.page() != page || (picked.is_some() && editor.picked() != picked) {
            wrong.push(format!(
                "{id}: {:?} with {:?} in place of {page:?} with {picked:?}",
                editor.page(),
                editor.picked()
            ));
        }
        if on_page_in_sight(&desk, &sees).is_none() {
            let all: Vec<_> = desk.query_all_by_label_contains(&sees).map(|node| node.rect()).collect();
            wrong.push(format!("{id}: {sees:?} is not in sight but at {all:?}"));
        }
        if !hand::says(&desk, &found.message) {
            wrong.push(format!("{id}: its sentence is nowhere"));
        }
    }
    assert!(wrong.is_empty(), "{} wrong:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn the_list_over_the_foot_holds_as_many_as_the_foot_says_the_gravest_first() {
    let mut value = beside(67.0, "small");
    value["runs"].as_array_mut().unwrap().push(json!({ "id": "gone", "status": "past", "nets": ["long"],
        "outline": [[5, 5], [20, 5], [20, 20], [5, 20]] }));
    let plan = plan::read(value.to_string().as_bytes()).unwrap().plan;
    let mut desk = on_page(plan, Page::Run, [1280.0, 800.0], Words::default());
    let figure = figure(&desk);
    let label = figure.accesskit_node().label().unwrap();
    let told: usize =
        label.split(|letter: char| !letter.is_ascii_digit()).filter_map(|part| part.parse::<usize>().ok()).sum();
    // By the keyboard: opened, walked, and gone to.
    figure.focus();
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    let listed = |desk: &Desk| -> Vec<String> {
        let rows = desk.query_all(egui_kittest::kittest::by().role(egui::accesskit::Role::MenuItem));
        rows.map(|node| node.accesskit_node().label().unwrap_or_default()).collect()
    };
    let all = listed(&desk);
    assert!(all.len() == told && told > 6, "{told} in the foot, {} in the list: {label}", all.len());
    let weight = |row: &String| ["Danger: ", "Warning: ", "Note: "].iter().position(|weight| row.starts_with(weight));
    assert!(all.iter().map(weight).is_sorted() && all.iter().all(|row| weight(row).is_some()), "{all:?}");
    assert!(all.iter().all(|row| row.contains(" Page ")) && !all.iter().any(|row| row.contains("gone")), "{all:?}");
    assert!(
        all[0].starts_with("Danger: other and run stand 2.0 m apart") && all[0].ends_with("Page Run."),
        "{}",
        all[0]
    );
    desk.key_press(Key::ArrowDown);
    desk.run();
    desk.key_press(Key::ArrowUp);
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    let editor = window(&desk).editor();
    assert_eq!((editor.page(), editor.run_index(), editor.picked()), (Page::Run, 1, Some(Thing::Run { run: 1 })));
    assert!(listed(&desk).is_empty(), "the list is gone");
    // By the mouse, and away with Esc.
    open_list(&mut desk);
    assert_eq!(listed(&desk).len(), told);
    desk.key_press(Key::Escape);
    desk.run();
    assert!(listed(&desk).is_empty());
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Run { run: 1 }), "Esc closes the list alone");
}

#[test]
fn a_tag_on_the_map_and_a_sentence_on_a_page_lead_there_too() {
    let mut value = quiet();
    value["coop"]["at"] = json!([80, 80]);
    let plan = plan::read(value.to_string().as_bytes()).unwrap().plan;
    let mut desk = on_page(plan.clone(), Page::Ground, [1280.0, 800.0], Words::default());
    let said = "stands outside run: move the coop or the run.";
    let is_sentence = |node: &egui_kittest::Node<'_>| {
        node.accesskit_node().label().is_some_and(|label| label.starts_with("Warning: "))
    };
    desk.query_all_by_label_contains(said).find(is_sentence).unwrap().focus();
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Coop { coop: 0 }));
    let hint = desk.query_all_by_label_contains(said).any(|node| node.rect().left() < 900.0);
    assert!(hint, "what it is about is said on the map");
    desk.key_press(Key::Escape);
    desk.run();
    assert_eq!(window(&desk).editor().led(), None);

    // The tag has the keyboard.
    let mut desk = on_page(plan.clone(), Page::Ground, [1280.0, 800.0], Words::default());
    let on_map = |node: &egui_kittest::Node<'_>| {
        node.accesskit_node().label().is_some_and(|label| label.ends_with("on the map"))
    };
    desk.query_all_by_label_contains(said).find(on_map).unwrap().focus();
    desk.run();
    assert!(matches!(window(&desk).editor().picked(), Some(Thing::Finding { .. })));
    desk.key_press(Key::Enter);
    desk.run();
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Coop { coop: 0 }));

    let mut desk = on_page(plan, Page::Book, [1280.0, 800.0], Words::default());
    let tag = window(&desk).editor().drawing().shapes().find(|shape| {
        matches!(shape.thing, Some(Thing::Finding { .. })) && matches!(shape.role, drawing::Role::Tag { .. })
    });
    let drawing::Form::Mark { at, .. } = tag.unwrap().form else { panic!("a tag is a mark") };
    let on_tag = hand::spot(&desk, at) - egui::vec2(0.0, 11.0);
    hand::click(&mut desk, on_tag);
    assert_eq!(window(&desk).editor().page(), Page::Ground);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Coop { coop: 0 }));
}
