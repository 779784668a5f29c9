//! A run that is open says so on its sheet, whatever leaves it open.

use drawing::{Ink, Scene};
use fieldsheet::{Paper, Runs, pages};
use plan::{Plan, Point, Wall};
use words::{Language, Units, Words};
use workup::Depth;

fn sheet(plan: &Plan, language: Language) -> String {
    let words = Words { language, units: Units::Metric };
    let workup = workup::workup(plan, Depth::Quick);
    let findings = care::findings(plan, &workup, words);
    let scene = Scene { plan, workup: &workup, findings: &findings, words };
    let page = pages(&scene, Runs::One(0), None, Paper::A4).unwrap().swap_remove(0);
    let texts = page.ink.into_iter().filter_map(|item| match item {
        Ink::Text { text, .. } => Some(text),
        _ => None,
    });
    texts.collect::<Vec<_>>().join(" ")
}

#[test]
fn a_line_whose_ends_stand_apart_is_open_on_paper_until_a_wall_shuts_it() {
    let mut plan = plan::read(include_bytes!("../../../../assets/demo/kettle-field.netfold.json")).unwrap().plan;
    let net = plan.store.nets[0].id.clone();
    let run = &mut plan.runs[0];
    run.outline = [(10.0, 10.0), (10.0, 50.0), (30.0, 50.0), (30.0, 10.0)].map(Point::from).to_vec();
    (run.closed, run.nets) = (Some(false), Some(vec![net; 2]));
    let path = [(8.0, 10.0), (32.0, 10.0)].map(Point::from).to_vec();
    for (holds_birds, is_open) in [(None, true), (Some(true), false)] {
        plan.walls = vec![Wall { path: path.clone(), holds_birds, ..Wall::default() }];
        for (language, open) in [
            (Language::English, "20.0 m without netting from end to end"),
            (Language::German, "von Ende zu Ende 20,0 m ohne Netz"),
        ] {
            assert_eq!(sheet(&plan, language).contains(open), is_open, "{holds_birds:?}, {language:?}");
        }
    }
}
