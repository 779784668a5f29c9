//! What may hurt someone stands on the sheet, whatever weight its finding has.

use drawing::{Ink, Scene};
use fieldsheet::{Paper, Runs, pages};
use plan::{EarthStakes, Hazard, HazardKind, Plan, Point, RunStatus};
use words::texts::Sheet;
use words::{Language, Units, Words};
use workup::Depth;

fn demo() -> Plan {
    let mut plan = plan::read(include_bytes!("../../../../assets/demo/kettle-field.netfold.json")).unwrap().plan;
    plan.runs.truncate(1);
    plan
}

/// The words of the last run's first page, in reading order, with a space for every new line.
fn first_page(plan: &Plan, words: Words) -> (String, Vec<care::Finding>) {
    first_page_of(plan, plan.runs.len() - 1, words)
}

fn first_page_of(plan: &Plan, run: usize, words: Words) -> (String, Vec<care::Finding>) {
    let workup = workup::workup(plan, Depth::Full);
    let findings = care::findings(plan, &workup, words);
    let scene = Scene { plan, workup: &workup, findings: &findings, words };
    let page = pages(&scene, Runs::One(run), None, Paper::A4).unwrap().swap_remove(0);
    let texts = page.ink.into_iter().filter_map(|item| match item {
        Ink::Text { text, .. } => Some(text),
        _ => None,
    });
    (texts.collect::<Vec<_>>().join(" "), findings.all().cloned().collect())
}

/// A plan that breaks one rule.
fn broken(id: &str) -> Plan {
    let mut plan = demo();
    let corner = plan.runs[0].outline[0];
    let at = |east_m: f64, north_m: f64| Point::new(corner.east_m + east_m, corner.north_m + north_m);
    let hazard = |kind, path: Vec<Point>| Hazard { kind, path, ..demo().ground.hazards[0].clone() };
    let placed = |at: Point| EarthStakes { at: Some(at), ..EarthStakes::default() };
    match id {
        "stake-near-net" => plan.runs[0].earth_stakes = placed(at(-0.1, -0.1)),
        "earths-near" => {
            plan.runs[0].status = RunStatus::Standing;
            plan.runs[0].earth_stakes = placed(at(-6.0, -6.0));
            let mut other = plan.runs[0].clone();
            other.id = "other".into();
            other.outline.iter_mut().for_each(|corner| corner.east_m -= 200.0);
            other.energizer = Some("other".into());
            other.earth_stakes = placed(at(-8.0, -6.0));
            let mut unit = plan.store.energizers[0].clone();
            unit.id = "other".into();
            plan.store.energizers.push(unit);
            plan.runs.insert(0, other);
        }
        "foreign-earth-unchecked" => {
            plan.runs[0].earth_stakes = EarthStakes::default();
            plan.ground.hazards.push(hazard(HazardKind::ForeignEarth, vec![at(-5.0, -5.0)]));
        }
        "hazard-without-path" => plan.ground.hazards.push(hazard(HazardKind::OverheadLine, Vec::new())),
        "energizer-above-limit" => {
            let unit = &mut plan.store.energizers[0];
            (unit.stored_j, unit.no_load_kv) = (Some(40.0), Some(9.0));
            (unit.kv_at_500_ohm, unit.output_j_at_500_ohm) = (Some(8.0), Some(20.0));
        }
        // Half a kilovolt stores its joules in so much capacitance that an impulse lasts for some 10 ms and more.
        "energizer-long-impulse" => {
            let unit = &mut plan.store.energizers[0];
            (unit.stored_j, unit.no_load_kv) = (Some(4.0), Some(0.5));
            (unit.kv_at_500_ohm, unit.output_j_at_500_ohm) = (Some(0.3), Some(2.2));
        }
        "two-fences-near" => {
            let mut other = plan.runs[0].clone();
            other.id = "other".into();
            other.outline.iter_mut().for_each(|corner| corner.east_m -= 1.0);
            other.energizer = Some("other".into());
            let mut unit = plan.store.energizers[0].clone();
            unit.id = "other".into();
            plan.store.energizers.push(unit);
            plan.runs[0].status = RunStatus::Standing;
            other.status = RunStatus::Standing;
            plan.runs.insert(0, other);
        }
        _ => unreachable!("{id}"),
    }
    plan
}

#[test]
fn warnings_about_safety_are_told_where_the_keeper_looks_first_in_both_languages() {
    let german = Words { language: Language::German, units: Units::Metric };
    for id in [
        "stake-near-net",
        "earths-near",
        "foreign-earth-unchecked",
        "hazard-without-path",
        "energizer-above-limit",
        "energizer-long-impulse",
    ] {
        for words in [Words::default(), german] {
            let plan = broken(id);
            let (said, findings) = first_page(&plan, words);
            let finding = findings.iter().find(|finding| finding.id == id).unwrap_or_else(|| panic!("{id} not found"));
            assert!(finding.may_hurt(), "{id}");
            let opening: String = finding.message.chars().take(24).collect();
            let head = said.find(words.text(Sheet::Dangers)).unwrap_or_else(|| panic!("{id}: {said}"));
            assert!(said[head..].contains(&opening), "{id}: {opening}: {said}");
        }
    }
}

#[test]
fn what_is_no_danger_stays_off_the_dangers() {
    let (said, findings) = first_page(&demo(), Words::default());
    assert!(findings.iter().all(|finding| !finding.may_hurt()), "{findings:?}");
    assert!(!said.contains("Look out here"), "{said}");
}

#[test]
fn what_is_between_two_runs_is_on_the_sheets_of_both() {
    for id in ["earths-near", "two-fences-near"] {
        let plan = broken(id);
        for run in [0, 1] {
            let (said, findings) = first_page_of(&plan, run, Words::default());
            let near = findings.iter().find(|finding| finding.id == id).unwrap();
            let opening: String = near.message.chars().take(24).collect();
            assert!(said.contains("Look out here") && said.contains(&opening), "{id} {run}: {opening}: {said}");
        }
    }
}
