//! How the window looks: each page in both themes at two sizes, kept in `docs/pictures` and looked at by eye.
//! Renew with `UPDATE_SNAPSHOTS=1`.
//!
//! They need a Vulkan driver, a software one will do; a missing one fails.
#![cfg(feature = "pictures")]
#![allow(clippy::unwrap_used, reason = "a test may stop")]

use desktop::editor::{Message, Page};
use desktop::{Opening, Window};
use drawing::Theme;
use egui_kittest::{Harness, SnapshotOptions, SnapshotResults};
use plan::{Plan, Reading, ReadingKind, Rest};

const EXAMPLE: &[u8] = include_bytes!("../../../assets/demo/kettle-field.netfold.json");
const TWO_RUNS: &[u8] = include_bytes!("../../../assets/demo/square-or-rectangle.netfold.json");

/// The usual window and a large one, and the smallest.
const USUAL: [f32; 2] = [1280.0, 800.0];
const LARGE: [f32; 2] = [1920.0, 1080.0];
const LEAST: [f32; 2] = [900.0, 600.0];

fn example() -> Plan {
    plan::read(EXAMPLE).unwrap().plan
}

/// The example with what a keeper read on it.
fn read_on() -> Plan {
    let mut plan = example();
    let run = plan.runs[0].id.clone();
    let reading = |kind, along_m, value, when: &str| Reading {
        run: run.clone(),
        kind,
        along_m,
        value: Some(value),
        rest: Rest::from_iter([("when".to_owned(), when.into())]),
    };
    plan.readings = vec![
        reading(ReadingKind::FenceKv, Some(0.0), 4.4, "2027-05-01"),
        reading(ReadingKind::FenceKv, Some(70.0), 3.1, "2027-05-08"),
        reading(ReadingKind::EarthKv, None, 0.2, "2027-05-08"),
    ];
    plan
}

fn picture(results: &mut SnapshotResults, name: &str, plan: Plan, size: [f32; 2], messages: Vec<Message>) {
    let mut made = Some((plan, messages));
    let mut harness =
        Harness::builder().with_size(size).with_step_dt(1.0 / 60.0).with_max_steps(30).wgpu().build_ui_state(
            move |ui, window: &mut Option<Window>| {
                let window = window.get_or_insert_with(|| {
                    let (plan, messages) = made.take().unwrap();
                    let example = Some(example());
                    let is_example = example.as_ref() == Some(&plan);
                    let opening = Opening { plan, is_example, example, ..Opening::default() };
                    let mut window = Window::open(ui.ctx(), opening);
                    messages.into_iter().for_each(|message| window.say(message));
                    window
                });
                window.ui(ui);
            },
            None,
        );
    for _ in 0..2000 {
        harness.run();
        let editor = harness.state().as_ref().unwrap().editor();
        if editor.is_full() || editor.question().is_some() {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(5));
    }
    harness.run();
    let options = SnapshotOptions::new().output_path("../../docs/pictures");
    results.add(harness.try_snapshot_options(name, &options));
}

#[test]
fn every_page_looks_as_it_did() {
    let mut results = SnapshotResults::new();
    for (page, name) in [
        (Page::Ground, "ground"),
        (Page::Run, "run"),
        (Page::Power, "power"),
        (Page::Moves, "moves"),
        (Page::Book, "book"),
        (Page::Sheet, "sheet"),
    ] {
        let plan = if page == Page::Book { read_on() } else { example() };
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
