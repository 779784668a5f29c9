//! Corners by tape in the report: as text in both languages, and as keys.

use plan::{Branch, Plan, Point, TapePoint};
use serde_json::{Value, json};
use words::{Language, Units, Words};
use workup::Depth;

/// The example's net round a square of 25 m, with a branch of 20 m out of the middle of its second side.
fn plan() -> Plan {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../assets/demo/kettle-field.netfold.json");
    let mut plan = plan::read(&std::fs::read(path).unwrap()).unwrap().plan;
    let at = |places: &[(f64, f64)]| places.iter().copied().map(Point::from).collect::<Vec<_>>();
    let net = plan.store.nets[0].id.clone();
    let run = &mut plan.runs[0];
    run.outline = at(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)]);
    run.branches =
        vec![Branch { from_m: 37.5, outline: at(&[(25.0, 12.5), (45.0, 12.5)]), nets: vec![net], ..Branch::default() }];
    plan
}

fn text(plan: &Plan, language: Language) -> String {
    let words = Words { language, units: Units::Metric };
    let workup = workup::workup(plan, Depth::Quick);
    exchange::page::text(plan, &workup, &care::findings(plan, &workup, words), words)
}

/// A table's rows with one space between cells.
fn close(text: &str) -> Vec<String> {
    text.lines().map(|line| line.split_whitespace().collect::<Vec<_>>().join(" ")).collect()
}

#[test]
fn the_text_says_how_corners_and_branches_are_set_out() {
    let said = close(&text(&plan(), Language::English));
    for want in [
        "Corners by tape: longest 35.36 m",
        "3 25.00 m from 2 35.36 m from 1 right 25.00 m",
        "Branch 1, once the run’s corners stand; its first lies on the line.",
        "B1 12.50 m from 2 12.50 m from 3 in line 20.00 m",
        // The hypotenuse of 20 and 12.5.
        "B2 20.00 m from B1 23.58 m from 2 left –",
    ] {
        assert!(said.iter().any(|line| line == want), "{want}: {said:#?}");
    }
    assert!(said.iter().any(|line| line.contains("Check: 2 to 4 is 35.36 m.")));
    let german = close(&text(&plan(), Language::German));
    for want in ["Ecken mit dem Maßband: längstes Maß 35,36 m", "Z1 12,50 m ab 2 12,50 m ab 3 in der Linie 20,00 m"]
    {
        assert!(german.iter().any(|line| line == want), "{want}: {german:#?}");
    }
}

#[test]
fn known_places_are_named_in_the_text() {
    let mut plan = plan();
    let known =
        |name: &str, at: (f64, f64)| TapePoint { name: name.to_owned(), at: Point::from(at), ..TapePoint::default() };
    plan.tape_points = vec![known("gatepost", (0.0, -30.0)), known("oak", (40.0, -30.0))];
    let said = close(&text(&plan, Language::English));
    for want in ["Corners by tape: P gatepost, Q oak", "1 30.00 m from P 50.00 m from Q left 25.00 m"] {
        assert!(said.iter().any(|line| line == want), "{want}: {said:#?}");
    }
}

#[test]
fn the_keys_tell_of_branches_where_there_are_any() {
    let report = |plan: &Plan| -> Value {
        let workup = workup::workup(plan, Depth::Quick);
        let findings = care::findings(plan, &workup, Words::default());
        serde_json::from_slice(&exchange::report::json(plan, &workup, &findings)).unwrap()
    };
    let mut plan = plan();
    let told = report(&plan)["runs"][0]["set_out"]["branches"].clone();
    assert_eq!(told[0]["branch"], 0);
    let foot = [json!({ "from_corner": 1, "length_m": 12.5 }), json!({ "from_corner": 2, "length_m": 12.5 })];
    assert_eq!(told[0]["corners"][0]["tapes"], json!(foot));
    assert_eq!(told[0]["corners"][1]["tapes"][0], json!({ "from_branch_corner": 0, "length_m": 20.0 }));
    plan.runs[0].branches.clear();
    assert!(report(&plan)["runs"][0]["set_out"].get("branches").is_none());
}
