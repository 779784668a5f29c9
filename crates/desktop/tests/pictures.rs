//! How the window looks: each page in both themes at two sizes, kept in `docs/pictures` and looked at by eye.
//! Renew with `UPDATE_SNAPSHOTS=1`.
//!
//! They need a Vulkan driver, a software one will do; a missing one fails.
#![cfg(feature = "pictures")]
#![allow(clippy::unwrap_used, reason = "a test may stop")]

use desktop::editor::{Message, Page, Progress, ShapesMessage};
use desktop::{Opening, Window};
use drawing::Theme;
use egui_kittest::{Harness, SnapshotOptions, SnapshotResults};
use plan::{
    ByFoot, Fault, FaultKind, Gate, GateKind, Pin, PinKind, Plan, Reading, ReadingKind, Rest, SideSlope, Today,
};
use words::Language;

const EXAMPLE: &[u8] = include_bytes!("../../../assets/demo/kettle-field.netfold.json");
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
        // What is worked out beside the window has come too.
        let reckoned = editor.page() != Page::Power || editor.study().is_some_and(|(_, stale)| !stale);
        let searched = !editor.shapes().is_open() || editor.shapes().progress() == Progress::Rests;
        if editor.question().is_some() || editor.is_full() && reckoned && searched {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(5));
    }
    harness.run();
    let options = SnapshotOptions::new().output_path("../../docs/pictures");
    results.add(harness.try_snapshot_options(name, &options));
}

#[test]
fn every_page_in_german_and_with_text_two_fifths_longer_looks_as_it_did() {
    let mut results = SnapshotResults::new();
    for (page, name) in PAGES {
        let plan = if page == Page::Book { read_on() } else { example() };
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

/// The example with soil, wind, gates, a pin and a side that rises.
fn stated() -> Plan {
    let mut plan = example();
    plan.ground.soil.by_foot = Some(ByFoot::PushesIn);
    plan.ground.wind_m_per_s = Some(15.0);
    let run = &mut plan.runs[0];
    run.gates = vec![Gate::new(GateKind::Foot), Gate::new(GateKind::Wheels)];
    run.pins = vec![Pin::new(PinKind::Corner, run.outline[1])];
    let middle = plan::Point::new(
        0.5 * (run.outline[0].east_m + run.outline[1].east_m),
        0.5 * (run.outline[0].north_m + run.outline[1].north_m),
    );
    run.side_slopes = vec![SideSlope { at: middle, rises_m: Some(1.0), one_in: None, rest: Rest::new() }];
    plan
}

#[test]
fn pages_that_go_on_and_what_is_found_beside_them_look_as_they_did() {
    let mut results = SnapshotResults::new();
    let open = |page| vec![Message::Open(page)];
    picture(&mut results, "run-stated-tall", stated(), [1280.0, 3400.0], open(Page::Run));
    let shapes = vec![Message::Shapes(ShapesMessage::Open(true))];
    picture(&mut results, "shapes-light-1920", example(), LARGE, shapes.clone());
    let dark = [vec![Message::Theme(Theme::Dark)], shapes].concat();
    picture(&mut results, "shapes-dark-1280", example(), USUAL, dark);
    let mut faulty = example();
    let at = faulty.runs[0].outline[2];
    faulty.runs[0].faults =
        vec![Fault { at, kind: FaultKind::Short, ohm: Some(300.0), lines: None, cause: None, rest: Rest::new() }];
    faulty.ground.today = Some(Today::Wet);
    let dark = [vec![Message::Theme(Theme::Dark)], open(Page::Power)].concat();
    picture(&mut results, "power-fault-tall", faulty, [1280.0, 3200.0], dark);
}
