//! `netfold shapes` as a script sees it: the keys, the figures, the refusals.

use crate::hand;
use std::process::Output;

use serde_json::{Value, json};

fn netfold(plan: &Value, arguments: &[&str]) -> Output {
    hand::netfold("shapes", &plan.to_string(), arguments)
}

fn shapes(plan: &Value, arguments: &[&str]) -> Value {
    let output = netfold(plan, &[arguments, &["--json"]].concat());
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    serde_json::from_slice(&output.stdout).unwrap()
}

fn refused(plan: &Value, arguments: &[&str]) -> String {
    hand::sentence(netfold(plan, arguments))
}

fn plan() -> Value {
    json!({
        "format": "netfold-plan", "version": 1,
        "ground": {
            "boundary": [[0, 0], [80, 0], [80, 60], [0, 60]],
            "keep_outs": [{ "name": "oak", "outline": [[60, 40], [62, 40], [62, 42]], "clearance_m": 2.0, "may_enclose": true }]
        },
        "store": { "nets": [{ "id": "long", "count": 4, "length_m": 50.0, "panels": 14 }] }
    })
}

fn entry<'a>(shapes: &'a Value, family: &str, wall: bool) -> &'a Value {
    let all = shapes["families"].as_array().unwrap();
    all.iter().find(|entry| entry["family"] == family && entry.get("wall").is_some() == wall).unwrap()
}

fn close(got: &Value, want: f64, share: f64) {
    let got = got.as_f64().unwrap();
    assert!((got - want).abs() <= share * want.abs().max(1.0), "{got} where {want} is right");
}

// Source of the areas: geometry, docs/sources.md, husbandry 8.1.
#[test]
fn the_families_come_largest_first_with_every_figure() {
    let found = shapes(&plan(), &["--nets", "2"]);
    let areas: Vec<f64> =
        found["families"].as_array().unwrap().iter().map(|entry| entry["area_m2"].as_f64().unwrap()).collect();
    assert_eq!(areas.len(), 6);
    assert!(areas.windows(2).all(|pair| pair[0] >= pair[1]), "{areas:?}");
    let square = entry(&found, "square", false);
    close(&square["area_m2"], 625.0, 1e-9);
    close(&square["area_bound_m2"], 625.0, 1e-6);
    close(&square["spare_m"], 0.0, 1e-6);
    close(&square["strip_m2"], 120.0, 1e-6);
    assert_eq!((&square["nets"], &square["corners"]), (&json!(2), &json!(4)));
    assert_eq!(square["kinds"], json!(["long", "long"]));
    assert_eq!(square["whole_panels"]["side_panels"], json!([7, 7, 7, 7]));
    close(&square["whole_panels"]["area_m2"], 625.0, 1e-9);
    assert!(square["weakest_kv"].as_f64().unwrap() > 1.0 && square["braces"].is_u64() && square["minutes"].is_number());
    close(&entry(&found, "hexagon", false)["area_m2"], 721.688, 1e-5);
    close(&entry(&found, "octagon", false)["area_m2"], 754.442, 1e-5);
    let round = entry(&found, "round", false);
    assert_eq!((&round["corners"], round["outline"].as_array().unwrap().len()), (&json!(28), 28));
    assert_eq!(entry(&found, "free", false)["whole_panels"], Value::Null);
}

#[test]
fn a_report_of_the_same_outline_says_the_same() {
    let found = shapes(&plan(), &["--nets", "3"]);
    let hexagon = entry(&found, "hexagon", false);
    let mut with_run = plan();
    with_run["runs"] = json!([{ "id": "kept", "outline": hexagon["outline"], "nets": hexagon["kinds"] }]);
    let output = hand::netfold("report", &with_run.to_string(), &["--json"]);
    let report: Value = serde_json::from_slice(&output.stdout).unwrap();
    let run = &report["runs"][0];
    assert_eq!(run["area_m2"], hexagon["area_m2"]);
    assert_eq!(run["spare_m"], hexagon["spare_m"]);
    assert_eq!(run["strip"]["area_m2"], hexagon["strip_m2"]);
    assert_eq!(run["set_up_minutes"], hexagon["minutes"]);
    assert_eq!(run["voltage"]["weakest"]["peak_kv"], hexagon["weakest_kv"]);
}

#[test]
fn the_same_question_prints_the_same_bytes() {
    let once = netfold(&plan(), &["--nets", "4", "--json"]).stdout;
    assert_eq!(once, netfold(&plan(), &["--nets", "4", "--json"]).stdout);
}

#[test]
fn walls_are_entries_of_their_own() {
    let mut walled = plan();
    walled["walls"] = json!([
        { "path": [[0, 0], [80, 0]], "holds_birds": false },
        { "path": [[0, 60], [80, 60]], "holds_birds": true }
    ]);
    let without = shapes(&walled, &["--nets", "2"]);
    let with = shapes(&walled, &["--nets", "2", "--walls"]);
    assert_eq!(entry(&without, "square", false), entry(&with, "square", false));
    let square = entry(&with, "square", true);
    assert_eq!(square["wall"], 1);
    close(&square["area_m2"], (100.0_f64 / 3.0).powi(2), 1e-6);
    close(&square["spare_m"], 0.0, 1e-6);
    assert_eq!(square["corners"], 2);
    close(&entry(&with, "rectangle", true)["area_m2"], 1250.0, 1e-4);
    // A wall that no birds are held by is none.
    walled["walls"][1]["holds_birds"] = json!(false);
    let none = shapes(&walled, &["--nets", "2", "--walls"]);
    assert_eq!(none["families"], without["families"]);
    assert_eq!(none["notes"].as_array().unwrap().len(), 1);
}

#[test]
fn the_coop_lies_inside_where_asked() {
    let mut housed = plan();
    housed["coop"] = json!({ "id": "house", "at": [70, 50], "heading_deg": 30.0, "length_m": 6.0, "width_m": 2.4 });
    let found = shapes(&housed, &["--nets", "2", "--coop"]);
    for entry in found["families"].as_array().unwrap() {
        let points = entry["outline"].as_array().unwrap();
        let at = |index: usize| {
            let point = &points[index % points.len()];
            (point[0].as_f64().unwrap(), point[1].as_f64().unwrap())
        };
        let left = |index: usize| {
            let ((e, n), (f, o)) = (at(index), at(index + 1));
            (f - e) * (50.0 - n) - (o - n) * (70.0 - e)
        };
        assert!((0..points.len()).all(|index| left(index) > 0.0), "{}", entry["family"]);
    }
}

#[test]
fn more_nets_never_enclose_less() {
    let found: Vec<Value> = ["1", "2", "3", "4"].iter().map(|nets| shapes(&plan(), &["--nets", nets])).collect();
    for family in ["square", "rectangle", "hexagon", "octagon", "round", "free"] {
        let areas: Vec<f64> =
            found.iter().map(|found| entry(found, family, false)["area_m2"].as_f64().unwrap()).collect();
        assert!(areas.windows(2).all(|pair| pair[1] >= pair[0] * (1.0 - 1e-6)), "{family}: {areas:?}");
    }
}

#[test]
fn the_table_names_what_the_keeper_reads() {
    let output = netfold(&plan(), &["--nets", "2"]);
    let said = String::from_utf8(output.stdout).unwrap();
    assert!(said.contains("625 m²") && said.contains("square") && said.contains("weakest post"), "{said}");
}

#[test]
fn what_cannot_be_asked_is_refused_in_a_sentence() {
    let with = |change: fn(&mut Value)| {
        let mut plan = plan();
        change(&mut plan);
        plan
    };
    let no_boundary = with(|plan| plan["ground"]["boundary"] = json!([]));
    assert!(refused(&no_boundary, &["--nets", "2"]).contains("ground.boundary"));
    let crossed = with(|plan| plan["ground"]["boundary"] = json!([[0, 0], [80, 60], [80, 0], [0, 60]]));
    assert!(refused(&crossed, &["--nets", "2"]).contains("in two parts"));
    assert!(refused(&plan(), &["--nets", "5"]).contains("4 nets"));
    assert!(refused(&plan(), &["--nets", "0"]).contains("1 to 4"));
    assert!(refused(&plan(), &["--nets", "2", "--coop"]).contains("No coop"));
    assert!(refused(&plan(), &["--nets", "2", "--sides", "2"]).contains("3 to 12"));
    assert!(refused(&plan(), &["--nets", "two"]).contains("two"));
    let swallowed = with(|plan| plan["coop"] = json!({ "id": "house", "at": [61.3, 40.6] }));
    assert!(refused(&swallowed, &["--nets", "2", "--coop"]).contains("oak"));
    let outside = with(|plan| plan["coop"] = json!({ "id": "house", "at": [200, 40] }));
    assert!(refused(&outside, &["--nets", "2", "--coop"]).contains("inside the paddock"));
    let covered = with(|plan| {
        plan["ground"]["keep_outs"] = json!([{ "name": "bog", "outline": [[-1, -1], [81, -1], [81, 61], [-1, 61]] }]);
    });
    assert!(refused(&covered, &["--nets", "2"]).contains("No shape fits"));
}

#[test]
fn keep_outs_that_overlap_or_lie_outside_are_noted() {
    let mut odd = plan();
    odd["ground"]["keep_outs"] = json!([
        { "name": "bog", "outline": [[30, -5], [35, -5], [35, 65], [30, 65]] },
        { "name": "ditch", "outline": [[33, 20], [40, 20], [40, 25]] },
        { "name": "far pond", "outline": [[200, 20], [210, 20], [210, 25]] }
    ]);
    let found = shapes(&odd, &["--nets", "4"]);
    let notes = found["notes"].to_string();
    assert!(notes.contains("far pond") && notes.contains("overlap") && notes.contains("2 parts"), "{notes}");
    close(&entry(&found, "rectangle", false)["area_m2"], 2400.0, 1e-6);
}
