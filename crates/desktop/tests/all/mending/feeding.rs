//! Rules of gates, volts and earth, and of what is asked and typed.

use desktop::editor::Page;
use drawing::Thing;
use serde_json::json;
use words::texts::{Compare, Damp, Faults, Gates, Store, Window as Text};

use super::breaking::*;
use super::{Row, head};

pub(super) fn rows() -> Vec<Row> {
    let (ground_page, run_page, power, book) = (Page::Ground, Page::Run, Page::Power, Page::Book);
    let said = |text: &str| text.to_owned();
    let whole = Some(Thing::Run { run: 0 });
    let corner = |vertex| Some(Thing::RunCorner { run: 0, vertex });
    let a_fault = Some(Thing::Fault { run: 0, branch: None, fault: 0 });
    let a_gate = |gate| Some(Thing::Gate { run: 0, gate });
    let stake = |stake| Some(Thing::EarthStake { run: 0, stake });
    let off = 1.0 / 2.0_f64.sqrt();
    let lines = plan::defaults::LIVE_LINE_HEIGHTS_M.len();
    let pond = json!([ { "name": "the pond", "outline": [[45, 28], [55, 28], [55, 33], [45, 33]], "water": true } ]);
    vec![
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
