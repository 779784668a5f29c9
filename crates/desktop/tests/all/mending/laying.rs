//! Rules of corners, nets, ends, ground, dangers, slope and soil.

use desktop::editor::Page;
use drawing::Thing;
use serde_json::{Value, json};
use words::texts::{Bracing, Fitting, Many, Power, Slope, Store, Window as Text};

use super::breaking::*;
use super::{Row, head};

pub(super) fn rows() -> Vec<Row> {
    let (ground_page, run_page, power) = (Page::Ground, Page::Run, Page::Power);
    let said = |text: &str| text.to_owned();
    let whole = Some(Thing::Run { run: 0 });
    let corner = |vertex| Some(Thing::RunCorner { run: 0, vertex });
    let a_hazard = Some(Thing::Hazard { hazard: 0 });
    let square = |at: f64| json!([[at, 50], [at + 2.0, 50], [at + 2.0, 52], [at, 52]]);
    let round: Vec<[f64; 2]> = (0..28)
        .map(|post| f64::from(post) * std::f64::consts::TAU / 28.0)
        .map(|angle| [50.0 + 15.95 * angle.cos(), 50.0 + 15.95 * angle.sin()])
        .collect();
    let seen = |stood: bool, turn: Value| json!({ "at": [0, 0], "stood": stood, "turn_deg": turn });
    let soil = |soil: Value| ground("soil", soil);
    let rises = |at: [f64; 2], rises_m: f64| json!({ "at": at, "rises_m": rises_m });
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
            "coop-cut",
            changed(quiet(), &|plan| plan["coop"]["at"] = json!([64.5, 52])),
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
    ]
}
