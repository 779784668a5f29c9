//! The energizer's place, its leads and damp ground, from the file to findings, report, map of others and netlist.

use crate::told;
use care::{Finding, Severity};
use serde_json::{Value, json};
use words::{Language, Words};
use workup::Depth;

fn farm(change: impl FnOnce(&mut Value)) -> Value {
    let mut plan = json!({ "format": "netfold-plan", "version": 1, "origin": { "latitude_deg": 50.0, "longitude_deg": 9.0 },
        "ground": { "soil": { "resistivity_ohm_m": 100.0 },
                    "damp": [ { "name": "Hollow", "outline": [[-12, 5], [-6, 5], [-6, 15], [-12, 15]],
                                "resistivity_ohm_m": 40.0 } ] },
        "store": { "nets": [ { "id": "long", "count": 2, "length_m": 50, "panels": 14 } ],
                   "energizers": [ { "id": "one" } ] },
        "runs": [ { "id": "run", "outline": [[0, 0], [25, 0], [25, 25], [0, 25]], "nets": ["long", "long"],
                    "energizer": "one", "feed_at": [0, 10], "energizer_at": [-4, 10],
                    "earth_stakes": { "places": [[-4, 13]], "lead_m": 5.0 } } ] });
    change(&mut plan);
    plan
}

fn read(plan: &Value) -> plan::Plan {
    plan::read(plan.to_string().as_bytes()).unwrap().plan
}

fn found(plan: &Value, id: &str) -> Vec<Finding> {
    let plan = read(plan);
    let worked = workup::workup(&plan, Depth::Full);
    let findings = care::findings(&plan, &worked, Words::default());
    let german = care::findings(&plan, &worked, Words { language: Language::German, ..Words::default() });
    assert_eq!(findings.plan.len(), german.plan.len());
    let all = findings.runs.into_iter().flatten().chain(findings.plan);
    all.filter(|finding| finding.id == id).collect()
}

fn one(plan: &Value, id: &str, severity: Severity) -> Finding {
    let [finding] = &found(plan, id)[..] else { panic!("{id}: {:?}", found(plan, id)) };
    assert_eq!(finding.severity, severity, "{id}");
    finding.clone()
}

fn none(plan: &Value, id: &str) {
    assert!(found(plan, id).is_empty(), "{id}: {:?}", found(plan, id));
}

#[test]
fn leads_that_do_not_reach_are_said_with_place_and_mend() {
    let run = |change: &dyn Fn(&mut Value)| farm(|plan| change(&mut plan["runs"][0]));
    none(&run(&|_| {}), "lead-short");
    let short = one(&run(&|run| run["lead_m"] = json!(3)), "lead-short", Severity::Warning);
    assert!(short.message.contains("3.0 m long") && short.message.contains("4.0 m from the feed point"), "{short:?}");
    assert_eq!(short.at, [plan::Point::new(-4.0, 10.0), plan::Point::new(0.0, 10.0)]);
    none(&run(&|run| run["lead_m"] = json!(4)), "lead-short");
    none(&run(&|run| run["lead_m"] = json!(3.96)), "lead-short");
    let past = run(&|run| {
        run["lead_m"] = json!(3);
        run["status"] = json!("past");
    });
    none(&past, "lead-short");
    // The earth lead goes to the nearest stake; the further ones hang on each other.
    let stakes =
        |lead_m: f64, places: Value| run(&|run| run["earth_stakes"] = json!({ "places": places, "lead_m": lead_m }));
    none(&stakes(3.0, json!([[-4, 13], [-4, 16], [-4, 19]])), "earth-lead-short");
    let short = one(&stakes(2.5, json!([[-4, 16], [-4, 13]])), "earth-lead-short", Severity::Warning);
    assert!(short.message.contains("2.5 m long") && short.message.contains("3.0 m from the energizer"), "{short:?}");
    assert_eq!(short.at, [plan::Point::new(-4.0, 13.0)]);
    // Nothing is said of a lead that is only assumed.
    none(&run(&|run| run["earth_stakes"] = json!({ "places": [[-4, 30]] })), "earth-lead-short");
    // Without a place of its own the energizer stands at the feed point.
    let at_feed = run(&|run| {
        run["earth_stakes"] = json!({ "places": [[-4, 13]], "lead_m": 4.0 });
        run.as_object_mut().unwrap().remove("energizer_at");
    });
    one(&at_feed, "earth-lead-short", Severity::Warning);
}

#[test]
fn stakes_in_drier_ground_than_they_could_stand_in_are_noted() {
    let dry = one(&farm(|_| {}), "earth-damper-near", Severity::Note);
    assert!(dry.message.contains("Hollow, 2.5 m from the energizer"), "{}", dry.message);
    assert!(dry.message.contains("35 Ω in place of 88 Ω"), "{}", dry.message);
    assert!((dry.at[0].east_m + 6.5).abs() < 1e-6 && (dry.at[0].north_m - 10.0).abs() < 1e-6);
    assert_eq!(dry.source, plan::defaults::COMMON_PRACTICE);
    for change in [
        // They stand there; they stand nowhere; the lead does not reach; rain made all ground damp.
        json!({ "places": [[-8, 10]], "lead_m": 5.0 }),
        json!({ "count": 1, "lead_m": 5.0 }),
        json!({ "places": [[-4, 11]], "lead_m": 2.0 }),
    ] {
        none(&farm(|plan| plan["runs"][0]["earth_stakes"] = change.clone()), "earth-damper-near");
    }
    let rain = farm(|plan| {
        plan["ground"]["damp"][0].as_object_mut().unwrap().remove("resistivity_ohm_m");
        plan["ground"]["today"] = json!("wet");
    });
    none(&rain, "earth-damper-near");
    none(&farm(|plan| plan["runs"][0]["earth_ohm"] = json!(50)), "earth-damper-near");
}

#[test]
fn damp_ground_that_is_none_is_said() {
    let damp = |key: &str, value: Value| farm(|plan| plan["ground"]["damp"][0][key] = value.clone());
    let drier = one(&damp("resistivity_ohm_m", json!(250)), "damp-drier", Severity::Note);
    assert!(drier.message.contains("250 Ω m") && drier.message.contains("100"), "{}", drier.message);
    none(&farm(|_| {}), "damp-drier");
    let bad = one(&damp("resistivity_ohm_m", json!(-4)), "bad-value", Severity::Warning);
    assert!(bad.message.contains("ground.damp[0].resistivity_ohm_m"), "{}", bad.message);
    let crosses = damp("outline", json!([[-12, 5], [-6, 15], [-6, 5], [-12, 15]]));
    let crosses = one(&crosses, "outline-crosses", Severity::Warning).message;
    assert!(crosses.contains("Hollow") && crosses.contains("where side 1 to 2 meets side 3 to 4"), "{crosses}");
    one(&damp("outline", json!([[-12, 5], [-6, 15]])), "outline-few-corners", Severity::Warning);
    for (key, value) in [("lead_m", json!(-1)), ("energizer_at", json!([1e9, 0]))] {
        let bad = one(&farm(|plan| plan["runs"][0][key] = value.clone()), "bad-value", Severity::Warning);
        assert!(bad.message.contains(&format!("runs[0].{key}")), "{}", bad.message);
    }
    let lead = farm(|plan| plan["runs"][0]["earth_stakes"]["lead_m"] = json!(-1));
    assert!(one(&lead, "bad-value", Severity::Warning).message.contains("earth_stakes.lead_m"));
}

#[test]
fn report_map_and_netlist_go_by_the_same_earth() {
    let stated = farm(|plan| {
        plan["runs"][0]["earth_stakes"] = json!({ "places": [[-8, 10]], "lead_m": 5.0 });
        plan["runs"][0]["lead_of"] = json!("copper");
    });
    let plan = read(&stated);
    let worked = workup::workup(&plan, Depth::Full);
    let findings = care::findings(&plan, &worked, Words::default());
    let report: Value = serde_json::from_slice(&exchange::report::json(&plan, &worked, &findings)).unwrap();
    told::keeps_to_its_schema(&report);
    let run = &report["runs"][0];
    let figure = |value: &Value| value.as_f64().unwrap();
    // One stake of a metre by 12 mm: rho / (2 pi) (ln(8 L / d) - 1), facts 6.1.
    let want = 40.0 / (2.0 * std::f64::consts::PI) * ((8.0_f64 / 0.012).ln() - 1.0);
    assert!((figure(&run["voltage"]["earth_ohm"]) - want).abs() < 1e-9);
    let unit = &run["energizer_place"];
    assert_eq!(unit["at"], json!([-4.0, 10.0]));
    assert!((figure(&unit["feed_m"]) - 4.0).abs() < 1e-9 && (figure(&unit["lead_m"]) - 4.0).abs() < 1e-9);
    assert!((figure(&unit["lead_ohm"]) - 0.014).abs() < 1e-4 && (figure(&unit["earth_stake_m"]) - 4.0).abs() < 1e-9);
    assert_eq!(run["dampest"]["there"], json!(true));
    assert!((figure(&run["earth_stakes"][0]["energizer_m"]) - 4.0).abs() < 1e-9);
    // The netlist has the same resistances.
    let wiring = workup::power::wiring(&plan, "run").unwrap();
    assert!((wiring.circuit.earth_ohm - want).abs() < 1e-9);
    let netlist = exchange::spice::write(&wiring, "Farm");
    let earth = netlist.lines().find(|line| line.starts_with("rearth ")).unwrap();
    let told: f64 = earth.split_whitespace().last().unwrap().parse().unwrap();
    assert!((told / want - 1.0).abs() < 1e-6, "{earth}");
    // On the map of others.
    let map: Value = serde_json::from_slice(&exchange::geojson::write(&plan, &worked).unwrap()).unwrap();
    let features = map["features"].as_array().unwrap();
    let of = |role: &str| features.iter().find(|one| one["properties"]["role"] == role).unwrap();
    assert_eq!(of("energizer")["geometry"]["type"], json!("Point"));
    assert_eq!(of("damp")["properties"]["name"], json!("Hollow"));
    assert!((figure(&of("damp")["properties"]["resistivity_ohm_m"]) - 40.0).abs() < 1e-9);
    // What is asked of power says it in keys and in sentences.
    let dry = read(&farm(|_| {}));
    let worked = workup::workup(&dry, Depth::Quick);
    let earth = exchange::power::earth(&dry, &dry.runs[0], &worked.runs[0], Words::default());
    assert_eq!(earth["dampest"]["damp"], json!(0));
    let says: Vec<&str> = earth["says"].as_array().unwrap().iter().filter_map(Value::as_str).collect();
    assert!(says[0].contains("4.0 m from the feed point") && says[1].contains("Hollow, 2.5 m"), "{says:?}");
    let best = worked.runs[0].dampest.as_ref().unwrap();
    assert!((figure(&earth["dampest"]["earth_ohm"]) - best.ohm).abs() < 1e-12);
}

#[test]
fn the_file_is_written_as_it_was_read() {
    let stated = farm(|plan| {
        plan["runs"][0]["lead_of"] = json!("net_line");
        plan["runs"][0]["lead_m"] = json!(12.5);
        plan["ground"]["damp"][0]["hidden"] = json!(true);
        plan["ground"]["damp"][0]["locked"] = json!(true);
        plan["ground"]["damp"][0]["since"] = json!("the flood");
    });
    let bytes = plan::write(&read(&stated));
    let written: Value = serde_json::from_slice(&bytes).unwrap();
    assert_eq!(written["ground"]["damp"][0]["since"], json!("the flood"));
    assert_eq!(written["ground"]["damp"][0]["hidden"], json!(true));
    for key in ["lead_of", "lead_m"] {
        assert_eq!(written["runs"][0][key], stated["runs"][0][key], "{key}");
    }
    assert_eq!(written["runs"][0]["energizer_at"], json!([-4.0, 10.0]));
    assert_eq!(written["runs"][0]["earth_stakes"]["lead_m"], json!(5.0));
    assert_eq!(plan::write(&plan::read(&bytes).unwrap().plan), bytes, "byte for byte");
    let wrong = farm(|plan| plan["runs"][0]["lead_of"] = json!("gold"));
    assert!(plan::read(wrong.to_string().as_bytes()).is_err());
}
