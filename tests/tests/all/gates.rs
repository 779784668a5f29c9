//! Pins and gates from plan to report: every finding on a plan that breaks its rule and on one that keeps it, the keys of
//! the report, and a plan without either told as before.

use crate::told;
use care::{Finding, Severity};
use serde_json::{Value, json};
use words::Words;
use workup::Depth;

/// A square of 30 m of four rolls, its joins amid its sides, a gate for wheels on the south side.
fn quiet() -> Value {
    json!({ "format": "netfold-plan", "version": 1,
        "ground": { "boundary": [[0, 0], [100, 0], [100, 100], [0, 100]], "gateway": { "at": [50, 0] } },
        "store": { "nets": [ { "id": "roll", "count": 12, "length_m": 30, "panels": 10 } ] },
        "coop": { "id": "house", "at": [50, 50], "length_m": 4, "width_m": 2 },
        "runs": [ { "id": "run", "outline": [[35, 35], [65, 35], [65, 65], [35, 65]], "nets": ["roll", "roll", "roll", "roll"],
            "coop": "house", "pins": [ { "kind": "join", "at": [50, 35] } ],
            "gates": [ { "kind": "wheels", "at": [50, 35] } ] } ] })
}

fn findings(plan: &Value) -> Vec<Finding> {
    let plan = plan::read(plan.to_string().as_bytes()).unwrap().plan;
    let worked = workup::workup(&plan, Depth::Full);
    care::findings(&plan, &worked, Words::default()).all().cloned().collect()
}

fn with(change: impl FnOnce(&mut Value)) -> Value {
    let mut plan = quiet();
    change(&mut plan);
    plan
}

fn gate(key: &'static str, value: Value) -> Value {
    with(|plan| plan["runs"][0]["gates"][0][key] = value)
}

#[test]
fn every_rule_of_gates_and_pins_is_broken_by_one_plan_and_kept_by_another() {
    let pond = json!([ { "name": "the pond", "outline": [[45, 28], [55, 28], [55, 33], [45, 33]], "water": true } ]);
    let ring = json!({ "id": "round", "status": "standing", "nets": vec!["roll"; 8],
        "outline": [[25, 25], [75, 25], [75, 75], [25, 75]] });
    let corner = |plan: &mut Value| {
        plan["runs"][0]["pins"][0]["at"] = json!([35, 35]);
        plan["runs"][0]["gates"][0]["at"] = json!([35, 35]);
    };
    for (id, severity, said, broken) in [
        (
            "pin-not-kept",
            Severity::Warning,
            "stands at no corner",
            with(|plan| plan["runs"][0]["pins"] = json!([ { "kind": "corner", "at": [50, 50] } ])),
        ),
        (
            "pin-not-kept",
            Severity::Warning,
            "cannot be kept",
            with(|plan| {
                plan["runs"][0]["pins"] =
                    json!([ { "kind": "start", "at": [50, 35] }, { "kind": "start", "at": [35, 50] } ]);
            }),
        ),
        (
            "pin-not-kept",
            Severity::Warning,
            "fixes where the chain starts",
            with(|plan| plan["runs"][0]["start_m"] = json!(3.3)),
        ),
        (
            "gate-no-join",
            Severity::Warning,
            "two nets have to meet",
            with(|plan| {
                plan["runs"][0]["nets"] = json!(["roll"]);
                plan["runs"][0]["closed"] = json!(false);
                plan["runs"][0]["outline"] = json!([[35, 35], [65, 35]]);
            }),
        ),
        ("gate-off-join", Severity::Note, "joins only", gate("at", json!([55, 35]))),
        (
            "gate-join-taken",
            Severity::Note,
            "for gate 1 opens the join there",
            with(|plan| {
                plan["runs"][0]["gates"].as_array_mut().unwrap().push(json!({ "kind": "foot", "at": [50, 35] }));
            }),
        ),
        (
            "gate-none-left",
            Severity::Warning,
            "no join is left for gate 5",
            with(|plan| plan["runs"][0]["gates"] = json!(vec![json!({ "kind": "foot" }); 5])),
        ),
        (
            "gate-overlap",
            Severity::Warning,
            "runs into what gate 1 opens",
            with(|plan| {
                plan["runs"][0]["outline"] = json!([[10, 50], [90, 50]]);
                plan["runs"][0]["closed"] = json!(false);
                plan["runs"][0]["nets"] = json!(["roll", "roll", "roll"]);
                plan["runs"][0]["pins"] = json!([ { "kind": "start", "at": [10, 50] } ]);
                plan["runs"][0]["gates"] = json!([ { "kind": "wheels", "at": [40, 50], "width_m": 40 },
                    { "kind": "wheels", "at": [70, 50], "width_m": 38 } ]);
            }),
        ),
        ("gate-too-wide", Severity::Warning, "31.0 m wide", gate("width_m", json!(31))),
        ("gate-near-corner", Severity::Warning, "from a corner", with(corner)),
        ("gate-wet", Severity::Warning, "the pond", with(|plan| plan["ground"]["keep_outs"] = pond.clone())),
        (
            "gate-no-way",
            Severity::Warning,
            "without crossing a net",
            with(|plan| plan["runs"].as_array_mut().unwrap().push(ring.clone())),
        ),
        (
            "gate-no-way",
            Severity::Warning,
            "from the coop",
            with(|plan| {
                plan["runs"][0]["gates"][0]["kind"] = json!("coop");
                plan["coop"]["at"] = json!([36, 50]);
            }),
        ),
        ("gate-no-gateway", Severity::Note, "where the gateway is", with(|plan| plan["ground"] = json!({}))),
        ("gate-wheels-narrow", Severity::Warning, "a quad wants", gate("width_m", json!(1.2))),
        (
            "gate-coop-narrow",
            Severity::Warning,
            "the coop is",
            with(|plan| {
                plan["runs"][0]["gates"][0] = json!({ "kind": "coop", "at": [50, 35], "width_m": 1.5 });
            }),
        ),
        ("gate-power-off", Severity::Note, "energizer off", quiet()),
    ] {
        let found = findings(&broken);
        let hit = found.iter().find(|finding| finding.id == id && finding.message.contains(said));
        let hit = hit.unwrap_or_else(|| {
            panic!(
                "no {id} that says {said:?} among {:?}",
                found.iter().map(|f| (f.id, &f.message)).collect::<Vec<_>>()
            )
        });
        assert_eq!(hit.severity, severity, "{id}");
        assert!(!hit.message.contains('{') && !hit.source.is_empty(), "{id}: {}", hit.message);
        let kept = if id == "gate-power-off" { with(|plan| plan["runs"][0]["gates"] = json!([])) } else { quiet() };
        assert!(findings(&kept).iter().all(|finding| finding.id != id), "{id} on a plan that keeps it");
    }
}

#[test]
fn a_gateway_amid_the_paddock_is_said() {
    let off = |at: [f64; 2]| {
        let plan = with(|plan| plan["ground"]["gateway"]["at"] = json!(at));
        findings(&plan).into_iter().find(|finding| finding.id == "gateway-off-boundary")
    };
    assert!(off([50.0, 0.0]).is_none() && off([50.0, 1.9]).is_none() && off([50.0, -1.9]).is_none());
    let said = off([50.0, 20.0]).unwrap();
    assert!(said.severity == Severity::Note && said.message.contains("20.0 m off"), "{}", said.message);
}

#[test]
fn the_report_tells_of_pins_and_gates_as_its_schema_says_and_the_page_in_words() {
    let plan = plan::read(with(|plan| plan["runs"][0]["pins"][0]["at"] = json!([51, 35])).to_string().as_bytes())
        .unwrap()
        .plan;
    let worked = workup::workup(&plan, Depth::Full);
    let findings = care::findings(&plan, &worked, Words::default());
    let report: Value = serde_json::from_slice(&exchange::report::json(&plan, &worked, &findings)).unwrap();
    told::keeps_to_its_schema(&report);
    let run = &report["runs"][0];
    // A metre at each of four corners.
    let pin = &run["pins"][0];
    assert!((pin["cost_m"].as_f64().unwrap() - 4.0).abs() < 1e-6 && pin["kept"] == true && pin["cost_proven"] == true);
    assert!(run["best"]["corner_miss_m"].as_f64().unwrap() < 1e-6);
    let gate = &run["gates"][0];
    assert!((gate["clear_m"].as_f64().unwrap() - 3.0).abs() < 1e-9 && gate["panels_laid_back"] == 1);
    let pulled = gate["posts_pulled"][0].as_u64().unwrap() as usize;
    assert_eq!(run["posts"][pulled]["at"], gate["join"], "the post at the join is pulled");
    let way = gate["way"].as_array().unwrap();
    assert_eq!((&way[0], &way[way.len() - 1]), (&json!([50.0, 0.0]), &gate["at"]));
    let page = exchange::page::text(&plan, &worked, &findings, Words::default());
    for words in ["Join 16.0 m past corner 1: costs 4.00 m", " pulled, 1 panel laid back", "from the gateway"] {
        assert!(page.contains(words), "{words:?} not in\n{page}");
    }
}

#[test]
fn a_plan_without_pins_and_gates_is_told_as_before() {
    let bare = with(|plan| {
        plan["runs"][0].as_object_mut().unwrap().retain(|key, _| key != "pins" && key != "gates");
        plan["ground"].as_object_mut().unwrap().remove("gateway");
    });
    let plan = plan::read(bare.to_string().as_bytes()).unwrap().plan;
    let worked = workup::workup(&plan, Depth::Full);
    let findings = care::findings(&plan, &worked, Words::default());
    let report: Value = serde_json::from_slice(&exchange::report::json(&plan, &worked, &findings)).unwrap();
    assert_eq!((&report["runs"][0]["pins"], &report["runs"][0]["gates"]), (&json!([]), &json!([])));
    assert!(report["runs"][0].get("best").is_none());
    assert!(findings.all().all(|finding| !finding.id.starts_with("gate") && !finding.id.starts_with("pin")));
    assert!(!String::from_utf8(plan::write(&plan)).unwrap().contains("gate"));
    assert!(plan::assumed(&plan).iter().all(|assumed| !assumed.key.contains("gate")));
}
