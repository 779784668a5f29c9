//! Branches on paper: how their corners are set out, and where the map has them.

use drawing::{Ink, Scene};
use fieldsheet::{Page, Paper, Runs, pages};
use plan::{Branch, Plan, Point};
use words::{Language, Units, Words};
use workup::Depth;

/// The example's net round a square of 25 m, with a branch out of the middle of its second side.
fn plan() -> Plan {
    let mut plan = plan::read(include_bytes!("../../../../assets/demo/kettle-field.netfold.json")).unwrap().plan;
    plan.runs.truncate(1);
    let at = |places: &[(f64, f64)]| places.iter().copied().map(Point::from).collect::<Vec<_>>();
    let net = plan.store.nets[0].id.clone();
    let run = &mut plan.runs[0];
    run.outline = at(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)]);
    run.branches =
        vec![Branch { from_m: 37.5, outline: at(&[(25.0, 12.5), (45.0, 12.5)]), nets: vec![net], ..Branch::default() }];
    plan
}

fn printed(plan: &Plan, language: Language) -> Vec<Page> {
    let words = Words { language, units: Units::Metric };
    let workup = workup::workup(plan, Depth::Full);
    let findings = care::findings(plan, &workup, words);
    pages(&Scene { plan, workup: &workup, findings: &findings, words }, Runs::All, None, Paper::A4).unwrap()
}

fn texts(page: &Page) -> Vec<String> {
    let text = |item: &Ink| match item {
        Ink::Text { text, .. } => Some(text.clone()),
        _ => None,
    };
    page.ink.iter().filter_map(text).collect()
}

#[test]
fn a_branch_is_set_out_by_tape_and_its_corners_are_named_on_the_map() {
    for (language, foot, far) in [
        (
            Language::English,
            "B1 12.50 m from 2 12.50 m from 3 in line 20.00 m",
            "B2 20.00 m from B1 23.58 m from 2 left –",
        ),
        (
            Language::German,
            "Z1 12,50 m ab 2 12,50 m ab 3 in der Linie 20,00 m",
            "Z2 20,00 m ab Z1 23,58 m ab 2 links –",
        ),
    ] {
        let pages = printed(&plan(), language);
        let all = pages.iter().flat_map(texts).collect::<Vec<_>>();
        let said = all.join(" ");
        assert!(said.contains(foot) && said.contains(far), "{foot}; {far}: {said}");
        // Once in the table by itself, once on the map.
        let name = if language == Language::German { "Z2" } else { "B2" };
        assert_eq!(all.iter().filter(|text| *text == name).count(), 2, "{said}");
    }
}

#[test]
fn a_run_without_branches_says_nothing_of_them() {
    let mut bare = plan();
    bare.runs[0].branches.clear();
    let said = printed(&bare, Language::English).iter().flat_map(texts).collect::<Vec<_>>().join(" ");
    assert!(said.contains("Corners by tape") && !said.contains("B1"), "{said}");
}
