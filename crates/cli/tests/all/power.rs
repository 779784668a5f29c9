//! `netfold power` as a script sees it: the keys, the figures, the refusals.

use crate::hand;
use std::process::Output;

use serde_json::{Value, json};

fn netfold(plan: &Value, arguments: &[&str]) -> Output {
    hand::netfold("power", &plan.to_string(), arguments)
}

fn plan() -> Value {
    json!({
        "format": "netfold-plan", "version": 1,
        "store": {
            "nets": [{ "id": "long", "count": 4, "length_m": 50.0, "panels": 14 }],
            "energizers": [
                { "id": "field", "stored_j": 1.0, "no_load_kv": 7.0, "kv_at_500_ohm": 5.0, "output_j_at_500_ohm": 0.7 },
                { "id": "slow", "stored_j": 1.0, "no_load_kv": 8.0, "kv_at_500_ohm": 5.0, "output_j_at_500_ohm": 0.7 },
                { "id": "misread", "stored_j": 1.0, "no_load_kv": 4.0, "kv_at_500_ohm": 5.0, "output_j_at_500_ohm": 0.7 }
            ]
        },
        "runs": [{ "id": "run-1", "outline": [[0, 0], [25, 0], [25, 25], [0, 25]], "nets": ["long", "long"] }]
    })
}

#[test]
fn every_energizer_has_its_model_its_reason_and_its_curve() {
    let output = netfold(&plan(), &["--run", "run-1", "--json"]);
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    let found: Value = serde_json::from_slice(&output.stdout).unwrap();
    let units = found["energizers"].as_array().unwrap();
    let models: Vec<&str> = units.iter().map(|unit| unit["model"].as_str().unwrap()).collect();
    assert_eq!(models, ["rc", "rlc", "none"]);
    assert!(units[2]["reason"].as_str().unwrap().contains("One of the two is misread."));
    for key in ["weakest_kv_by_nets", "weakest_kv_by_nets_clean", "weakest_kv_by_nets_overgrown"] {
        let lengths: Vec<usize> = units.iter().map(|unit| unit[key].as_array().unwrap().len()).collect();
        assert_eq!(lengths, [20, 20, 0], "{key}");
    }
    assert_eq!(found["least_stored_j"]["by_nets"].as_array().unwrap().len(), 20);
    assert_eq!((&found["run"], &found["target_kv"]), (&json!("run-1"), &json!(4.0)));
}

#[test]
fn without_json_it_is_a_page_and_the_first_run_is_taken() {
    let output = netfold(&plan(), &[]);
    assert_eq!(output.status.code(), Some(0));
    let page = String::from_utf8(output.stdout).unwrap();
    for part in [
        "What run-1 needs",
        "Slow fits its sheet",
        "up to ",
        "Least stored energy that holds",
        "Local codes come first.",
    ] {
        assert!(page.contains(part), "{part} is not in\n{page}");
    }
}

#[test]
fn what_cannot_be_answered_is_one_sentence() {
    let refused = |plan: &Value, arguments: &[&str], part: &str| {
        let said = hand::sentence(netfold(plan, arguments));
        assert!(said.contains(part), "{said}");
    };
    refused(&plan(), &["--run", "other"], "no run is called “other”; it has “run-1”.");
    let mut none = plan();
    none["runs"] = json!([]);
    refused(&none, &[], "has no run; draw one");
    let mut bad = plan();
    bad["store"]["nets"][0]["length_m"] = json!(-3.0);
    refused(&bad, &["--json"], "`netfold check` names what is wrong");
}
