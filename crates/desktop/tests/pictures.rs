//! How the window looks: each page in its themes and sizes, and tools in the hand, kept in `docs/pictures` and looked
//! at by eye. Renew with `UPDATE_SNAPSHOTS=1`.
//!
//! They need a Vulkan driver, a software one will do; a missing one fails.
#![allow(clippy::unwrap_used, reason = "a test may stop")]
#![allow(clippy::disallowed_methods, reason = "a folder with a plan in it is a file or two")]

#[allow(dead_code, reason = "the other program uses the rest")]
#[path = "all/hand/mod.rs"]
mod hand;

#[path = "pictures/drawn.rs"]
mod drawn;

use desktop::Opening;
use desktop::editor::{ManyMessage, Message, Page, Pictured, ShapesMessage};
use desktop::tool::{Drawn, Tape, Tool};
use drawing::{Theme, Thing};
use egui::{Event, Key, Modifiers, Pos2, vec2};
use egui_kittest::kittest::Queryable;
use egui_kittest::{Harness, SnapshotOptions, SnapshotResults};
use hand::{Desk, button, click, click_on, editor, example, fill, plans, spot};
use plan::{Plan, Point};
use words::texts::{Files, Shaping};
use words::{Language, Words};

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

/// How far a pixel may lie from the picture that is kept: the weighted square of their distance in YIQ, in which black
/// and white are about 33,000 apart. A smoothed edge that one driver rounds otherwise than the next lies one step of 255
/// off in each channel, which is 0.51; two steps, 2.0, fail, which no eye sees yet.
const TOLERANCE: f32 = 0.6;
/// How many pixels may lie farther off: none.
const FARTHER_OFF: usize = 0;

fn take(results: &mut SnapshotResults, name: &str, desk: &mut Desk) {
    let options =
        SnapshotOptions::new().output_path("../../docs/pictures").threshold(TOLERANCE).max_failed_pixels(FARTHER_OFF);
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
    leads_spots(desk, from, to);
}

/// The same from spot to spot.
fn leads_spots(desk: &mut Desk, from: Pos2, to: Pos2) {
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

/// A window on the page about the ground, with everything drawn and a picture of that strength beneath.
fn photographed(theme: Theme, opacity: f64, messages: Vec<Message>) -> Desk {
    let folder = tempfile::tempdir().unwrap();
    let plan = drawn::everything(opacity);
    let path = Some(drawn::laid_in(folder.path(), &plan));
    let opening = Opening { plan, path, ..Opening::default() };
    let messages = [vec![Message::Theme(theme), Message::Open(Page::Ground)], messages].concat();
    let mut desk = hand::built(Harness::builder().with_size(USUAL).wgpu(), opening, messages);
    hand::wait(&mut desk, "the picture", |window| matches!(window.editor().pictured(), Pictured::Shown { .. }));
    hand::settle(&mut desk);
    desk
}

#[test]
fn everything_that_is_drawn_looks_over_a_picture_as_it_did() {
    let mut results = SnapshotResults::new();
    for (theme, shade) in [(Theme::Light, "light"), (Theme::Dark, "dark"), (Theme::Contrast, "contrast")] {
        for (opacity, strength) in [(plan::defaults::UNDERLAY_OPACITY, 35), (1.0, 100)] {
            let mut desk = photographed(theme, opacity, Vec::new());
            take(&mut results, &format!("drawn-picture-{strength}-{shade}"), &mut desk);
        }
    }
    // The same on plain paper.
    let plan = Plan { underlay: None, ..drawn::everything(1.0) };
    let open = |theme| vec![Message::Theme(theme), Message::Open(Page::Ground)];
    picture(&mut results, "drawn-light", plan.clone(), USUAL, open(Theme::Light));
    picture(&mut results, "drawn-contrast", plan, USUAL, open(Theme::Contrast));
}

#[test]
fn shaping_by_hand_looks_as_it_did() {
    let mut results = SnapshotResults::new();
    let run = Thing::Run { run: 0 };
    let picked = |theme| vec![Message::Theme(theme), Message::Open(Page::Run), Message::Pick(Some(run))];
    let outline = example().runs[0].outline.clone();
    let on_side = |side: usize, share: f64| {
        let (from, to) = (outline[side], outline[(side + 1) % outline.len()]);
        Point::new(from.east_m + share * (to.east_m - from.east_m), from.north_m + share * (to.north_m - from.north_m))
    };

    // Off its middle, which would put a corner in.
    let mut desk = window_of(example(), USUAL, picked(Theme::Light));
    let from = on_side(0, 0.3);
    leads(&mut desk, from, (from.east_m, from.north_m - 6.0));
    take(&mut results, "tool-side-slides", &mut desk);

    let mut desk = window_of(example(), USUAL, picked(Theme::Dark));
    let ring = spot(&desk, editor(&desk).turn_ring().unwrap()) - vec2(0.0, 30.0);
    leads_spots(&mut desk, ring, ring + vec2(70.0, 30.0));
    take(&mut results, "tool-turning-dark", &mut desk);

    let mut desk = window_of(example(), USUAL, picked(Theme::Light));
    leads(&mut desk, Point::new(38.0, 26.0), (46.0, 24.0));
    take(&mut results, "tool-whole-dragged", &mut desk);

    let mut desk = window_of(example(), USUAL, vec![Message::Open(Page::Ground)]);
    desk.key_press(Key::B);
    desk.run();
    leads(&mut desk, Point::new(74.0, 62.0), (128.0, 26.0));
    take(&mut results, "tool-rectangle", &mut desk);
}

#[test]
fn drawing_on_the_ground_looks_as_it_did() {
    let mut results = SnapshotResults::new();
    let shade = vec![Message::UseOn(Page::Ground, Tool::outline(Drawn::Shade))];
    let mut desk = window_of(example(), USUAL, shade);
    for at in [(84.0, 10.0), (107.0, 12.0)] {
        let to = spot(&desk, at.into());
        click(&mut desk, to);
    }
    points(&mut desk, (104.0, 25.0));
    take(&mut results, "tool-shade-two-corners", &mut desk);

    let known = vec![Message::UseOn(Page::Ground, Tool::outline(Drawn::Known))];
    let mut desk = photographed(Theme::Light, 1.0, known);
    for at in [(20.0, 8.0), (128.0, 44.0)] {
        let to = spot(&desk, at.into());
        click(&mut desk, to);
    }
    take(&mut results, "tool-known-points", &mut desk);
}

#[test]
fn lists_menus_and_the_chooser_look_as_they_did() {
    let mut results = SnapshotResults::new();
    let say = |desk: &mut Desk, message: Message| {
        desk.state_mut().as_mut().unwrap().say(message);
        hand::settle(desk);
    };
    let words = Words::default();
    let mut desk = window_of(example(), USUAL, vec![Message::Open(Page::Run)]);
    say(&mut desk, Message::Pick(Some(Thing::Run { run: 0 })));
    say(&mut desk, Message::Nudge(2.0, 1.0));
    say(&mut desk, Message::Pick(Some(Thing::KeepOut { keep_out: 1 })));
    say(&mut desk, Message::Nudge(0.0, 1.0));
    say(&mut desk, Message::Undo);
    click_on(&mut desk, words.text(Shaping::History));
    desk.run();
    take(&mut results, "list-of-what-was-done", &mut desk);

    let mut desk = window_of(example(), USUAL, vec![Message::Open(Page::Run)]);
    click_on(&mut desk, words.text(Files::PlanMenu));
    desk.run();
    take(&mut results, "menu-of-the-plan", &mut desk);

    // A folder whose name is the same everywhere.
    let folder = tempfile::tempdir().unwrap();
    let farm = folder.path().join("farm");
    std::fs::create_dir_all(farm.join("last year")).unwrap();
    for name in ["kettle-field", "long-meadow", "orchard"] {
        std::fs::write(farm.join(format!("{name}.netfold.json")), b"{}").unwrap();
    }
    let mut desk = window_of(example(), USUAL, vec![Message::Open(Page::Run)]);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::O);
    desk.run();
    fill(&mut desk, words.text(Files::Folder), farm.to_str().unwrap());
    let row = words.say(Files::FileRow, &[("name", "long-meadow.netfold.json")]);
    desk.get_by_label(&row).click();
    desk.run();
    // Where it lies on this machine is no part of the picture.
    desk.get_by_label(words.text(Files::Folder)).focus();
    desk.run();
    hand::over(&mut desk, "/home/keeper/farm");
    take(&mut results, "chooser-to-open", &mut desk);
}
