//! A plan that breaks no rule, changed by a test, and what is found of it.

use care::{Finding, Severity};
use serde_json::{Value, json};
use words::Words;
use workup::Depth;

/// A square of 25 m from two nets in the middle of a paddock, fed from its south-west corner; nothing wrong but
/// that its corners lean.
pub(crate) fn quiet() -> Value {
    json!({ "format": "netfold-plan", "version": 1,
        "ground": { "boundary": [[0, 0], [100, 0], [100, 100], [0, 100]], "keep_outs": [], "hazards": [], "soil": {} },
        "store": { "nets": [ { "id": "long", "count": 2, "length_m": 50, "panels": 14 } ],
            "energizers": [ { "id": "big", "stored_j": 3, "no_load_kv": 9, "kv_at_500_ohm": 7.5, "output_j_at_500_ohm": 2.2 } ] },
        "coop": { "id": "house", "at": [50, 50] },
        "runs": [ { "id": "run", "outline": [[40, 40], [65, 40], [65, 65], [40, 65]], "nets": ["long", "long"],
            "coop": "house", "energizer": "big", "feed_at": [40, 40], "status": "standing",
            "earth_stakes": { "count": 3, "at": [30, 30] } } ],
        "readings": [ { "run": "run", "along_m": 50, "kind": "fence_kv", "value": 6.0 } ] })
}

pub(crate) fn findings(plan: &Value) -> Vec<Finding> {
    findings_in(plan, Words::default())
}

pub(crate) fn findings_in(plan: &Value, words: Words) -> Vec<Finding> {
    let opened = plan::read(plan.to_string().as_bytes()).unwrap_or_else(|error| panic!("{error}"));
    let worked = workup::workup(&opened.plan, Depth::Full);
    let mut findings = care::findings(&opened.plan, &worked, words);
    findings.plan.extend(care::unknown_keys(&opened.unknown, words));
    findings.all().cloned().collect()
}

pub(crate) fn ids(plan: &Value) -> Vec<&'static str> {
    let mut ids: Vec<_> = findings(plan).iter().map(|finding| finding.id).collect();
    ids.sort_unstable();
    ids
}

pub(crate) fn with(change: impl FnOnce(&mut Value)) -> Value {
    let mut plan = quiet();
    change(&mut plan);
    plan
}

pub(crate) fn has(plan: &Value, id: &str, severity: Severity) -> Finding {
    let found = findings(plan);
    let hit = found.iter().find(|finding| finding.id == id);
    let hit = hit.unwrap_or_else(|| panic!("no {id} among {:?}", found.iter().map(|f| f.id).collect::<Vec<_>>()));
    assert_eq!(hit.severity, severity, "{id}");
    assert!(!hit.message.contains('{') && hit.message.ends_with(['.', '?']), "{id}: {}", hit.message);
    assert!(!hit.source.is_empty(), "{id}");
    hit.clone()
}

pub(crate) fn lacks(plan: &Value, id: &str) {
    assert!(!ids(plan).contains(&id), "{id} among {:?}", ids(plan));
}
