//! How the window looks: each page in both themes at two sizes, kept in `docs/pictures` and looked at by eye.
//! Renew with `UPDATE_SNAPSHOTS=1`.
//!
//! They need a Vulkan driver, a software one will do; a missing one fails.
#![cfg(feature = "pictures")]
#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod hand;

use desktop::Opening;
use desktop::editor::{Message, Page, ShapesMessage};
use drawing::Theme;
use egui_kittest::{Harness, SnapshotOptions, SnapshotResults};
use hand::{example, plans};
use plan::Plan;
use words::Language;

const TWO_RUNS: &[u8] = include_bytes!("../../../assets/demo/square-or-rectangle.netfold.json");

/// The usual window and a large one, and the smallest.
const USUAL: [f32; 2] = [1280.0, 800.0];
const LARGE: [f32; 2] = [1920.0, 1080.0];
const LEAST: [f32; 2] = [900.0, 600.0];

const PAGES: [(Page, &str); 6] = [
    (Page::Ground, "ground"),
    (Page::Run, "run"),
    (Page::Power, "power"),
    (Page::Moves, "moves"),
    (Page::Book, "book"),
    (Page::Sheet, "sheet"),
];

fn picture(results: &mut SnapshotResults, name: &str, plan: Plan, size: [f32; 2], messages: Vec<Message>) {
    let example = example();
    let opening = Opening { is_example: example == plan, plan, example: Some(example), ..Opening::default() };
    let mut desk = hand::built(Harness::builder().with_size(size).wgpu(), opening, messages);
    hand::settle(&mut desk);
    let options = SnapshotOptions::new().output_path("../../docs/pictures");
    results.add(desk.try_snapshot_options(name, &options));
}

#[test]
fn every_page_in_german_and_with_text_two_fifths_longer_looks_as_it_did() {
    let mut results = SnapshotResults::new();
    for (page, name) in PAGES {
        let plan = if page == Page::Book { plans::read_on(example()) } else { example() };
        let in_language = |language| vec![Message::Language(language), Message::Open(page)];
        picture(&mut results, &format!("{name}-german-1280"), plan.clone(), USUAL, in_language(Language::German));
        for (size, width) in [(USUAL, 1280), (LEAST, 900)] {
            let messages = in_language(Language::Longer);
            picture(&mut results, &format!("{name}-longer-{width}"), plan.clone(), size, messages);
        }
    }
}

#[test]
fn every_page_looks_as_it_did() {
    let mut results = SnapshotResults::new();
    for (page, name) in PAGES {
        let plan = if page == Page::Book { plans::read_on(example()) } else { example() };
        for (theme, shade) in [(Theme::Light, "light"), (Theme::Dark, "dark")] {
            for (size, width) in [(USUAL, 1280), (LARGE, 1920)] {
                let messages = vec![Message::Theme(theme), Message::Open(page)];
                picture(&mut results, &format!("{name}-{shade}-{width}"), plan.clone(), size, messages);
            }
        }
    }
}

#[test]
fn the_first_start_several_runs_and_the_smallest_window_look_as_they_did() {
    let mut results = SnapshotResults::new();
    picture(&mut results, "start-question-1280", example(), USUAL, vec![Message::AskRolls]);
    picture(&mut results, "start-laid-1280", example(), USUAL, vec![Message::AskRolls, Message::LayOut]);
    let two_runs = plan::read(TWO_RUNS).unwrap().plan;
    picture(&mut results, "two-runs-1920", two_runs, LARGE, Vec::new());
    picture(&mut results, "run-900", example(), LEAST, Vec::new());
}

#[test]
fn pages_that_go_on_and_what_is_found_beside_them_look_as_they_did() {
    let mut results = SnapshotResults::new();
    let open = |page| vec![Message::Open(page)];
    picture(&mut results, "run-stated-tall", plans::stated(example()), [1280.0, 3400.0], open(Page::Run));
    let shapes = vec![Message::Shapes(ShapesMessage::Open(true))];
    picture(&mut results, "shapes-light-1920", example(), LARGE, shapes.clone());
    let dark = [vec![Message::Theme(Theme::Dark)], shapes].concat();
    picture(&mut results, "shapes-dark-1280", example(), USUAL, dark);
    let dark = [vec![Message::Theme(Theme::Dark)], open(Page::Power)].concat();
    picture(&mut results, "power-fault-tall", plans::faulty(example()), [1280.0, 3200.0], dark);
}
