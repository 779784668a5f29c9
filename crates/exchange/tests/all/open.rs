//! A run that is open, and one that a wall shuts, in report and export.

use plan::{Origin, Plan, Point, Rest, Run, Wall};
use serde_json::Value;
use words::{Language, Units, Words};
use workup::Depth;

/// 100 m of netting on an outline, with the rolls of the example.
fn plan(outline: &[(f64, f64)], closed: bool) -> Plan {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../assets/demo/kettle-field.netfold.json");
    let mut plan = plan::read(&std::fs::read(path).unwrap()).unwrap().plan;
    let net = plan.store.nets[0].id.clone();
    plan.ground.boundary = Vec::new();
    plan.runs = vec![Run {
        id: "run-1".to_owned(),
        outline: outline.iter().copied().map(Point::from).collect(),
        closed: Some(closed),
        nets: Some(vec![net; 2]),
        ..Run::default()
    }];
    plan
}

const SQUARE: [(f64, f64); 4] = [(0.0, 0.0), (30.0, 0.0), (30.0, 30.0), (0.0, 30.0)];
const BAY: [(f64, f64); 4] = [(0.0, 0.0), (0.0, 40.0), (20.0, 40.0), (20.0, 0.0)];

fn walled(holds_birds: Option<bool>) -> Plan {
    let path = [(-4.0, 0.0), (24.0, 0.0)].map(Point::from).to_vec();
    Plan { walls: vec![Wall { path, holds_birds, ..Wall::default() }], ..plan(&BAY, false) }
}

fn text(plan: &Plan, language: Language) -> String {
    let words = Words { language, units: Units::Metric };
    let workup = workup::workup(plan, Depth::Quick);
    exchange::page::text(plan, &workup, &care::findings(plan, &workup, words), words)
}

fn json(plan: &Plan) -> Value {
    let workup = workup::workup(plan, Depth::Quick);
    let findings = care::findings(plan, &workup, Words::default());
    let report: Value = serde_json::from_slice(&exchange::report::json(plan, &workup, &findings)).unwrap();
    report["runs"][0].clone()
}

#[test]
fn the_text_says_that_it_is_open_by_how_much_and_what_closes_it() {
    let says = |plan: &Plan, language: Language, want: &str| {
        let said = text(plan, language);
        assert!(said.contains(want), "{want}\n{said}");
    };
    let short = plan(&SQUARE, true);
    says(&short, Language::English, "Open: 20.0 m of 120.0 m of line are without netting. A further roll closes it");
    says(&short, Language::German, "Offen: 20,0 m von 120,0 m Linie ohne Netz. Eine weitere Rolle schließt ihn");
    for language in [Language::English, Language::German] {
        assert!(!text(&short, language).contains("900 m²"), "no ground of what is open");
    }
    let open = plan(&[(0.0, 0.0), (0.0, 20.0), (60.0, 20.0), (60.0, 0.0)], false);
    says(
        &open,
        Language::English,
        "Open: 100.0 m of line, 60.0 m without netting from end to end. 2 further rolls close it",
    );
    says(
        &open,
        Language::German,
        "Offen: 100,0 m Linie, von Ende zu Ende 60,0 m ohne Netz. 2 weitere Rollen schließen ihn",
    );
    says(&walled(None), Language::English, "The wall from end to end: say on the Ground page whether that holds birds");
    says(&walled(None), Language::German, "Die Mauer von Ende zu Ende: Auf der Seite „Gelände“ angeben");
    says(
        &walled(Some(true)),
        Language::English,
        "800 m² inside the line. Shut by 100.0 m of line and 20.0 m along the wall.",
    );
    says(&walled(Some(true)), Language::German, "Geschlossen durch 100,0 m Linie und 20,0 m entlang: die Mauer.");
}

#[test]
fn the_reports_keys_tell_what_shuts_it() {
    let short = json(&plan(&SQUARE, true));
    assert_eq!((&short["closing"]["by"], &short["closing"]["ground_m2"]), (&Value::Null, &Value::Null));
    assert!((short["closing"]["open_m"].as_f64().unwrap() - 20.0).abs() < 1e-9);
    assert_eq!(short["area_m2"], 900.0, "that of the outline, as ever");
    let walled = json(&walled(Some(true)));
    assert_eq!((&walled["closing"]["by"], &walled["closing"]["open_m"]), (&"sides".into(), &0.0.into()));
    assert_eq!(walled["closing"]["walls"], serde_json::json!([0]));
    assert!((walled["closing"]["ground_m2"].as_f64().unwrap() - 800.0).abs() < 1e-6);
    assert_eq!(walled["area_m2"], 0.0, "an open line has none of its own");
}

#[test]
fn the_export_gives_no_area_of_what_is_open() {
    let mut open = plan(&SQUARE, true);
    open.origin = Some(Origin { latitude_deg: 51.0, longitude_deg: 10.0, rest: Rest::new() });
    let workup = workup::workup(&open, Depth::Quick);
    let bytes = exchange::geojson::write(&open, &workup).unwrap();
    let all: Value = serde_json::from_slice(&bytes).unwrap();
    let run = all["features"].as_array().unwrap().iter().find(|one| one["properties"]["role"] == "run").unwrap();
    assert_eq!(run["properties"]["area_m2"], Value::Null);
    assert!((run["properties"]["open_m"].as_f64().unwrap() - 20.0).abs() < 1e-9);
}

#[test]
fn two_minutes_for_one_work_are_told_apart() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../assets/demo/kettle-field.netfold.json");
    let mut plan = plan::read(&std::fs::read(path).unwrap()).unwrap().plan;
    let rule = |plan: &Plan, language| {
        let said = text(plan, language);
        [
            "by rule of thumb, braces",
            "By rule of thumb it is",
            "nach der Faustregel, Abspannungen",
            "Nach der Faustregel sind",
        ]
        .map(|part| said.contains(part))
    };
    assert_eq!(rule(&plan, Language::English), [true, true, false, false]);
    assert_eq!(rule(&plan, Language::German), [false, false, true, true]);
    // Once it is stated how long things take there is one figure.
    plan.store.rates.unroll_minutes = Some(1.0);
    assert_eq!(rule(&plan, Language::English), [false; 4]);
}
