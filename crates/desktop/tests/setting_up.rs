//! In which order a run is set up and taken down, on the page about it.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod hand;

use desktop::editor::Page;
use egui_kittest::kittest::Queryable;
use hand::{example, on_page, window};
use words::Words;

#[test]
fn the_steps_open_on_demand_and_are_those_of_the_report() {
    let mut desk = on_page(example(), Page::Run, [1280.0, 2400.0], Words::default());
    desk.get_by_label("Setting up");
    assert!(desk.query_by_label_contains("Only now let the birds out").is_none());
    desk.get_by_label("Go through setting up").click();
    desk.run();
    desk.run();
    desk.get_by_label_contains("Only now let the birds out");
    let worked = window(&desk).editor().workup().runs[0].clone();
    for line in exchange::work::sentences::lines(&worked, Words::default()) {
        // The report indents and numbers its steps; only those of setting up are open.
        if line.contains("Taking down") {
            break;
        }
        if let Some((_, step)) = line.trim().split_once(". ").filter(|(number, _)| number.parse::<usize>().is_ok()) {
            desk.get_all_by_label_contains(step).next().unwrap();
        }
    }
    desk.get_by_label("Fold setting up").click();
    desk.run();
    desk.run();
    assert!(desk.query_by_label_contains("Only now let the birds out").is_none());
}
