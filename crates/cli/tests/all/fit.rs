//! `netfold fit` as a script sees it.

use crate::hand;
use std::path::Path;
use std::process::Output;

use serde_json::{Value, json};

fn netfold(plan: &str, arguments: &[&str]) -> Output {
    hand::netfold("fit", plan, arguments)
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

fn demo(name: &str) -> String {
    let path = format!("../../assets/demo/{name}.netfold.json");
    std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(path)).unwrap()
}

fn refused(plan: &str, arguments: &[&str]) -> String {
    hand::sentence(netfold(plan, arguments))
}

#[test]
fn the_example_is_fitted_as_json_and_as_a_page() {
    let plan = demo("kettle-field");
    let output = netfold(&plan, &["--run", "run-1", "--json"]);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    let answer: Value = serde_json::from_slice(&output.stdout).unwrap();
    let sides: Vec<u64> = answer["side_panels"].as_array().unwrap().iter().map(|side| side.as_u64().unwrap()).collect();
    assert_eq!(sides.iter().sum::<u64>(), 42);
    let at = |index: usize| {
        let corner = &answer["outline"][index % sides.len()];
        (corner[0].as_f64().unwrap(), corner[1].as_f64().unwrap())
    };
    for (index, &panels) in sides.iter().enumerate() {
        let ((east, north), (to_east, to_north)) = (at(index), at(index + 1));
        assert!(((to_east - east).hypot(to_north - north) - panels as f64 * 50.0 / 14.0).abs() < 1e-6);
    }
    assert!(answer["bound_rms_m"].as_f64().unwrap() <= answer["moved_rms_m"].as_f64().unwrap());
    assert_eq!(answer["possible"], true);
    assert_eq!(netfold(&plan, &["--run", "run-1", "--json"]).stdout, output.stdout, "the same bytes twice");
    let page = text(&netfold(&plan, &["--run", "run-1"]).stdout);
    assert!(page.contains("panels") && page.contains("nothing nearer exists") && page.contains("set corner"), "{page}");
    let doubled = netfold(&plan, &["--run", "run-1", "--double-back", "2", "--json"]);
    let doubled: Value = serde_json::from_slice(&doubled.stdout).unwrap();
    assert!((doubled["spare_m"].as_f64().unwrap() - 100.0 / 14.0).abs() < 1e-9 && doubled["draw_in"].is_null());
}

#[test]
fn an_odd_count_says_that_no_rectangle_exists() {
    let page = text(&netfold(&demo("square-or-rectangle"), &["--run", "square", "--double-back", "1"]).stdout);
    assert!(page.contains("No rectangle exists"), "{page}");
}

#[test]
fn the_impossible_is_a_sentence_or_an_object_and_exits_two() {
    let plan = json!({
        "format": "netfold-plan", "version": 1,
        "store": { "nets": [ { "id": "two", "length_m": 7.0, "panels": 2 } ] },
        "runs": [ { "id": "r", "outline": [[0, 0], [6, 0], [3, 5]], "nets": ["two", "two"] } ]
    })
    .to_string();
    let said = refused(&plan, &["--run", "r"]);
    assert!(
        said.contains("plan.netfold.json") && said.contains("as long as the rest") && said.contains("1 panel"),
        "{said}"
    );
    let output = netfold(&plan, &["--run", "r", "--json"]);
    assert_eq!(output.status.code(), Some(2));
    let answer: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(answer["possible"], false);
    assert_eq!(answer["nearest"]["side_panels"], json!([1, 1, 1]));
    assert_eq!(answer["given_up"], json!({ "double_back": 1, "asked": 0 }));
    assert!(answer["reason"].as_str().unwrap().contains("4 panels"));
}

#[test]
fn what_cannot_be_used_is_one_sentence_with_or_without_json() {
    let plan = demo("square-or-rectangle");
    assert!(refused(&plan, &["--run", "nowhere", "--json"]).contains("square, "));
    assert!(refused(&plan, &["--run", "square", "--double-back", "-1"]).contains("--help"));
    let mut changed: Value = serde_json::from_str(&plan).unwrap();
    changed["runs"][0]["closed"] = json!(false);
    assert!(refused(&changed.to_string(), &["--run", "square"]).contains("open line"));
    changed["runs"][0]["closed"] = json!(true);
    changed["ground"]["boundary"] = json!([[0, 0], [9, 9], [9, 0], [0, 9]]);
    assert!(refused(&changed.to_string(), &["--run", "square"]).contains("ground.boundary"));
    changed["runs"] = json!([]);
    assert!(refused(&changed.to_string(), &["--run", "square"]).contains("draw one first"));
}

#[test]
fn on_a_slope_the_sides_are_whole_along_the_ground_and_without_one_nothing_is_said_of_it() {
    let mut plan = json!({
        "format": "netfold-plan", "version": 1,
        "store": { "nets": [{ "id": "long", "count": 2, "length_m": 50.0, "panels": 14 }] },
        "runs": [{ "id": "run-1", "outline": [[0, 0], [24, 0], [24, 25.5], [0, 25.5]], "nets": ["long", "long"] }]
    });
    let level = netfold(&plan.to_string(), &["--run", "run-1", "--json"]);
    let level: Value = serde_json::from_slice(&level.stdout).unwrap();
    assert!(level.get("slope").is_none() && level["bound_rms_m"].as_f64().unwrap() > 0.0);
    plan["heights"] = json!([{ "at": [0, 0], "up_m": 0.0 }, { "at": [40, 0], "up_m": 12.0 }]);
    let output = netfold(&plan.to_string(), &["--run", "run-1", "--json"]);
    let answer: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(answer["slope"]["whole"], true);
    assert!(answer["slope"]["why"].is_null() && answer["bound_rms_m"] == 0.0);
    let number = |value: &Value| value.as_f64().unwrap();
    for (side, panels) in answer["side_panels"].as_array().unwrap().iter().enumerate() {
        let ground_m = number(panels) * 50.0 / 14.0;
        // 12 m on 40 along the first and the third side.
        let level_m = if side % 2 == 0 { ground_m / f64::hypot(1.0, 0.3) } else { ground_m };
        assert!((number(&answer["side_m"][side]) - ground_m).abs() < 1e-9);
        assert!((number(&answer["slope"]["level_side_m"][side]) - level_m).abs() < 1e-8);
    }
    let page = text(&netfold(&plan.to_string(), &["--run", "run-1"]).stdout);
    assert!(page.contains("along the ground, 23.9 m on the map") && page.contains("it is not proved"), "{page}");
}
