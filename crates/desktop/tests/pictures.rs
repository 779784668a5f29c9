//! How the window looks: each page in its themes and sizes, and tools in the hand, kept in `docs/pictures` and looked
//! at by eye. Renew with `UPDATE_SNAPSHOTS=1`.
//!
//! They need a Vulkan driver, a software one will do; a missing one fails.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

#[allow(dead_code, reason = "the other program uses the rest")]
#[path = "all/hand/mod.rs"]
mod hand;

use desktop::Opening;
use desktop::editor::{ManyMessage, Message, Page, ShapesMessage};
use desktop::tool::{Drawn, Tape, Tool};
use drawing::Theme;
use egui::{Event, Key, Modifiers};
use egui_kittest::{Harness, SnapshotOptions, SnapshotResults};
use hand::{Desk, button, click, example, plans, spot};
use plan::{Plan, Point};
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
    let mut desk = window_of(plan, size, messages);
    take(results, name, &mut desk);
}

fn window_of(plan: Plan, size: [f32; 2], messages: Vec<Message>) -> Desk {
    let example = example();
    let opening = Opening { is_example: example == plan, plan, example: Some(example), ..Opening::default() };
    let mut desk = hand::built(Harness::builder().with_size(size).wgpu(), opening, messages);
    hand::settle(&mut desk);
    desk
}

fn take(results: &mut SnapshotResults, name: &str, desk: &mut Desk) {
    let options = SnapshotOptions::new().output_path("../../docs/pictures");
    results.add(desk.try_snapshot_options(name, &options));
}

/// The pointer over a place of the map.
fn points(desk: &mut Desk, at: (f64, f64)) {
    let to = spot(desk, at.into());
    desk.event(Event::PointerMoved(to));
    desk.run();
}

/// Takes hold of a place of the map and leads it to another, where it is held.
fn leads(desk: &mut Desk, from: Point, to: (f64, f64)) {
    let (from, to) = (spot(desk, from), spot(desk, to.into()));
    desk.event(Event::PointerMoved(from));
    desk.run();
    button(desk, from, true);
    desk.run();
    for step in 1..=4 {
        desk.event(Event::PointerMoved(from + (to - from) * step as f32 / 4.0));
        desk.run();
    }
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
        let messages = vec![Message::Theme(Theme::Contrast), Message::Open(page)];
        picture(&mut results, &format!("{name}-contrast-1280"), plan, USUAL, messages);
    }
}

#[test]
fn tools_in_the_hand_look_as_they_did() {
    let mut results = SnapshotResults::new();
    let mut bare = example();
    bare.runs.clear();
    bare.coop = None;
    let unroll = vec![Message::UseOn(Page::Run, Tool::outline(Drawn::Run))];
    let mut desk = window_of(bare, USUAL, unroll);
    for at in [(15.0, 20.0), (51.0, 20.0), (51.0, 56.0)] {
        let to = spot(&desk, at.into());
        click(&mut desk, to);
    }
    points(&mut desk, (10.0, 52.0));
    take(&mut results, "tool-unrolling", &mut desk);

    let outline = example().runs[0].outline.clone();
    let on_run = |theme| vec![Message::Theme(theme), Message::Open(Page::Run)];
    let mut desk = window_of(example(), USUAL, on_run(Theme::Light));
    leads(&mut desk, outline[1], (66.0, 12.0));
    take(&mut results, "tool-corner", &mut desk);
    desk.key_press(Key::L);
    desk.run();
    take(&mut results, "tool-corner-keeps-length", &mut desk);

    let middle = Point::new(
        f64::midpoint(outline[0].east_m, outline[1].east_m),
        f64::midpoint(outline[0].north_m, outline[1].north_m),
    );
    let mut desk = window_of(example(), USUAL, on_run(Theme::Dark));
    // The ring amid a side of what is picked puts a corner in.
    let on_side = spot(&desk, middle);
    click(&mut desk, on_side);
    leads(&mut desk, middle, (middle.east_m - 0.5, middle.north_m - 7.0));
    take(&mut results, "tool-corner-put-in-dark", &mut desk);

    let mut desk =
        window_of(example(), USUAL, vec![Message::Open(Page::Ground), Message::Use(Tool::Tape(Tape::default()))]);
    let from = spot(&desk, outline[2]);
    click(&mut desk, from);
    points(&mut desk, (110.0, 60.0));
    take(&mut results, "tool-tape", &mut desk);

    let mut desk = window_of(example(), USUAL, vec![Message::Open(Page::Ground)]);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::A);
    desk.run();
    take(&mut results, "tool-several-picked", &mut desk);
    desk.state_mut().as_mut().unwrap().say(Message::Many(ManyMessage::List(true)));
    desk.run();
    take(&mut results, "list-of-everything", &mut desk);

    let mut desk = window_of(example(), USUAL, vec![Message::Theme(Theme::Contrast), Message::Open(Page::Run)]);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::K);
    desk.run();
    take(&mut results, "commands-contrast", &mut desk);
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
