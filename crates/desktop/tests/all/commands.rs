//! The list of commands: searched, walked and run by keys; the pages by number; the page folded away.

use crate::hand;
use crate::hand::{Desk, example, on_page, open, window};
use desktop::Opening;
use desktop::editor::{Message, Page};
use desktop::tool::{Drawn, Tool};
use drawing::{Theme, Thing};
use egui::{Event, Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use words::{Words, texts};

fn desk() -> Desk {
    on_page(example(), Page::Run, [1280.0, 800.0], Words::default())
}

fn press(desk: &mut Desk, modifiers: Modifiers, key: Key) {
    desk.key_press_modifiers(modifiers, key);
    desk.run();
}

fn types(desk: &mut Desk, text: &str) {
    desk.event(Event::Text(text.to_owned()));
    desk.run();
}

#[test]
fn words_that_stand_in_a_name_as_they_are_typed_go_before_those_that_are_scattered() {
    let mut desk = desk();
    press(&mut desk, Modifiers::COMMAND, Key::K);
    types(&mut desk, "known place");
    press(&mut desk, Modifiers::NONE, Key::Enter);
    let tool = window(&desk).editor().tool();
    assert!(matches!(tool, Tool::Outline { of: Drawn::TapePoint, .. }), "{tool:?}");
}

#[test]
fn a_command_is_found_by_its_words_and_run_by_enter() {
    let mut desk = desk();
    press(&mut desk, Modifiers::COMMAND, Key::K);
    types(&mut desk, "theme dark");
    press(&mut desk, Modifiers::NONE, Key::Enter);
    assert_eq!(window(&desk).editor().theme(), Theme::Dark);
    assert!(desk.query_by_label("Find a command").is_some(), "its button stays");
    assert!(desk.query_by_label("Theme: Dark").is_none(), "the list is gone");
}

#[test]
fn the_list_is_walked_by_arrows_and_left_by_escape() {
    let mut desk = desk();
    press(&mut desk, Modifiers::NONE, Key::F1);
    types(&mut desk, "go to page");
    for _ in 0..2 {
        press(&mut desk, Modifiers::NONE, Key::ArrowDown);
    }
    press(&mut desk, Modifiers::NONE, Key::Enter);
    assert_eq!(window(&desk).editor().page(), Page::Power);
    press(&mut desk, Modifiers::NONE, Key::F1);
    types(&mut desk, "go to page");
    press(&mut desk, Modifiers::NONE, Key::Escape);
    assert!(desk.query_by_label("Go to page Book").is_none());
    assert_eq!(window(&desk).editor().page(), Page::Power, "Esc runs nothing");
}

#[test]
fn what_is_not_called_so_says_so_and_what_cannot_be_done_now_does_nothing() {
    let mut desk = desk();
    let before = window(&desk).editor().plan().clone();
    press(&mut desk, Modifiers::COMMAND, Key::K);
    types(&mut desk, "fly the hens");
    press(&mut desk, Modifiers::NONE, Key::Enter);
    press(&mut desk, Modifiers::NONE, Key::Escape);
    press(&mut desk, Modifiers::COMMAND, Key::K);
    types(&mut desk, "take out");
    press(&mut desk, Modifiers::NONE, Key::Enter);
    assert_eq!(*window(&desk).editor().plan(), before, "nothing is picked");
    press(&mut desk, Modifiers::NONE, Key::Escape);
    // Of two that are called so Enter is for the one that can be done: no picture lies there to be placed.
    press(&mut desk, Modifiers::COMMAND, Key::K);
    types(&mut desk, "picture");
    press(&mut desk, Modifiers::NONE, Key::Enter);
    desk.get_by_label("Lay a picture underneath");
    desk.get_by_label("File name");
    press(&mut desk, Modifiers::NONE, Key::Escape);
    // What only has such a word among others is not taken in place of what is called so.
    press(&mut desk, Modifiers::COMMAND, Key::K);
    types(&mut desk, "cut");
    press(&mut desk, Modifiers::NONE, Key::Enter);
    assert!(desk.query_by_label("Save the page of keys").is_none());
}

#[test]
fn numbers_open_pages_and_r_unrolls() {
    let mut desk = desk();
    for (key, page) in [
        (Key::Num1, Page::Ground),
        (Key::Num3, Page::Power),
        (Key::Num4, Page::Moves),
        (Key::Num5, Page::Book),
        (Key::Num6, Page::Sheet),
        (Key::Num2, Page::Run),
    ] {
        press(&mut desk, Modifiers::NONE, key);
        assert_eq!(window(&desk).editor().page(), page);
    }
    press(&mut desk, Modifiers::NONE, Key::R);
    assert!(window(&desk).editor().in_hand().is_some());
}

#[test]
fn the_page_folds_away_and_a_name_brings_it_back() {
    let mut desk = open(Opening { plan: example(), ..Opening::default() }, [900.0, 600.0]);
    let wide = desk.get_by_label("Map").rect().width();
    press(&mut desk, Modifiers::NONE, Key::F9);
    assert!(desk.get_by_label("Map").rect().width() > wide + 250.0);
    hand::click_on(&mut desk, "Power");
    assert!((desk.get_by_label("Map").rect().width() - wide).abs() < 1.0);
}

#[test]
fn what_is_picked_has_a_row_below_the_tools_of_the_page_and_moves_nothing() {
    let words = Words::default();
    let of_coop = words.say(texts::Ground::CoopField, &[("field", words.text(texts::Ground::Birds))]);
    for (page, picked, below) in [
        (Page::Ground, Thing::BoundarySide { side: 0 }, of_coop.as_str()),
        (Page::Ground, Thing::KeepOutSide { keep_out: 0, side: 0 }, of_coop.as_str()),
        (Page::Run, Thing::RunSide { run: 0, side: 0 }, "Fit to whole nets"),
        (Page::Run, Thing::RunCorner { run: 0, vertex: 0 }, "Fit to whole nets"),
    ] {
        let mut desk = on_page(example(), page, [900.0, 600.0], words);
        let place = |desk: &Desk, label: &str| desk.get_by_label(label).rect();
        let (tape, under) = (place(&desk, words.text(texts::Guides::Tape)), place(&desk, below));
        let hint = place(&desk, words.text(texts::Shaping::PickedHint));
        desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(picked)));
        desk.run();
        let of_picked = [texts::Shape::SquareUp, texts::Shape::MirrorEastWest, texts::Shape::MirrorNorthSouth];
        let places = of_picked.map(|text| place(&desk, words.text(text)));
        for at in places {
            assert!(at.top() >= tape.bottom() && at.bottom() <= under.top(), "{picked:?}: {at:?}");
            assert!((at.center().y - hint.center().y).abs() < 8.0, "{picked:?}: {at:?} is not where {hint:?} was");
            assert!(at.left() >= 604.0 && at.right() <= 900.0, "{picked:?}: {at:?}");
        }
        assert_eq!(place(&desk, words.text(texts::Guides::Tape)), tape, "{picked:?}");
        if page == Page::Run {
            assert_eq!(place(&desk, below), under, "{picked:?}");
        }
    }
}

#[test]
fn what_the_list_asks_for_is_asked_and_the_saved_page_is_told_of() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("field.netfold.json");
    std::fs::write(&path, hand::EXAMPLE).unwrap();
    let mut desk = open(Opening { plan: example(), path: Some(path), ..Opening::default() }, [1280.0, 800.0]);
    press(&mut desk, Modifiers::COMMAND, Key::K);
    types(&mut desk, "keys");
    press(&mut desk, Modifiers::NONE, Key::Enter);
    desk.get_by_label("Save the page of keys");
    hand::click_on(&mut desk, "Save it here");
    let written = folder.path().canonicalize().unwrap().join("keys.pdf");
    assert!(std::fs::read(&written).unwrap().starts_with(b"%PDF"));
    desk.get_by_label(&format!("It lies at {}", written.display()));
    hand::click_on(&mut desk, "Understood");
    assert!(desk.query_by_label("Understood").is_none());
}

#[test]
fn a_search_of_one_row_leaves_the_next_list_its_height() {
    let mut desk = desk();
    press(&mut desk, Modifiers::COMMAND, Key::K);
    types(&mut desk, "keys");
    press(&mut desk, Modifiers::NONE, Key::Escape);
    press(&mut desk, Modifiers::COMMAND, Key::K);
    // A row that is cut off is not hit: the click would fall beside the list and close it.
    hand::click_on(&mut desk, "Go to page Sheet");
    assert_eq!(window(&desk).editor().page(), Page::Sheet);
}

/// Gives the window a size in pixels, as a host would: the larger all of it, the fewer points.
fn sized(desk: &mut Desk, [width, height]: [f32; 2]) {
    for _ in 0..6 {
        let zoom = desk.ctx.zoom_factor();
        desk.set_size(egui::vec2(width, height) / zoom);
        desk.step();
    }
    desk.run();
}

#[test]
fn a_size_that_the_window_has_no_room_for_stands_chosen_and_comes_with_the_room() {
    let mut desk = desk();
    sized(&mut desk, [900.0, 600.0]);
    hand::click_on(&mut desk, "Theme, language and size");
    hand::click_on(&mut desk, "150 %");
    sized(&mut desk, [900.0, 600.0]);
    assert!((desk.ctx.zoom_factor() - 900.0 / 820.0).abs() < 1e-3, "{}", desk.ctx.zoom_factor());
    desk.get_by_label_contains("This window allows 110 %");
    assert_eq!(desk.get_by_label("150 %").accesskit_node().toggled(), Some(egui::accesskit::Toggled::True));
    sized(&mut desk, [1280.0, 820.0]);
    assert!((desk.ctx.zoom_factor() - 1.5).abs() < 1e-3, "{}", desk.ctx.zoom_factor());
    assert!(desk.query_by_label_contains("This window allows").is_none());
}

#[test]
fn a_command_is_found_by_what_a_keeper_calls_it() {
    use words::Language::{English, German};
    for (language, query, name) in [
        (English, "quit", "Quit"),
        (English, "exit", "Quit"),
        (English, "gate", "Place the gateway"),
        (English, "underlay", "Lay a picture underneath"),
        (English, "wind", "Go to page Run"),
        (English, "energizer", "Place the feed point"),
        (English, "volts", "Go to page Power"),
        (English, "grass", "Go to page Power"),
        (English, "print", "Go to page Sheet"),
        (English, "print", "Save all keys as a page to print"),
        (English, "theme", "Theme: Dark"),
        (English, "night", "Theme: Dark"),
        (English, "language", "Language: Deutsch"),
        (German, "beenden", "Beenden"),
        (German, "weidezaungerät", "Einspeisung setzen"),
        (German, "gras", "Zur Seite „Strom“"),
        (German, "drucken", "Zur Seite „Blatt“"),
    ] {
        let words = Words { language, ..Words::default() };
        let mut desk = on_page(example(), Page::Run, [1280.0, 800.0], words);
        press(&mut desk, Modifiers::COMMAND, Key::K);
        types(&mut desk, query);
        assert!(desk.query_by_label(name).is_some(), "{query}: {name}");
    }
}

#[test]
fn quit_in_the_list_asks_about_unsaved_work() {
    let mut desk = desk();
    desk.state_mut()
        .as_mut()
        .unwrap()
        .say(desktop::editor::Message::Pick(Some(drawing::Thing::RunCorner { run: 0, vertex: 2 })));
    desk.state_mut().as_mut().unwrap().say(desktop::editor::Message::Nudge(0.5, 0.25));
    press(&mut desk, Modifiers::COMMAND, Key::K);
    types(&mut desk, "quit");
    press(&mut desk, Modifiers::NONE, Key::Enter);
    desk.get_by_label("Save what you changed?");
}

#[test]
fn a_page_that_was_looked_at_gives_the_map_back_as_it_was() {
    let mut plan = example();
    // Drawn since the view was fitted, and reaching beyond it.
    let mut desk = on_page(plan.clone(), Page::Run, [1280.0, 800.0], Words::default());
    for at in &mut plan.runs[0].outline {
        at.east_m += 300.0;
    }
    let run = Box::new(plan.runs[0].clone());
    desk.state_mut().as_mut().unwrap().say(desktop::editor::Message::Make(plan::Edit::SetRun { run }));
    desk.run();
    let seen = *window(&desk).editor().view();
    for page in [Page::Power, Page::Book, Page::Sheet, Page::Run] {
        desk.state_mut().as_mut().unwrap().say(desktop::editor::Message::Open(page));
        desk.run();
    }
    let now = *window(&desk).editor().view();
    assert_eq!((now.size, now.middle), (seen.size, seen.middle));
    assert!((now.px_per_m - seen.px_per_m).abs() < 1e-9, "{} and {}", now.px_per_m, seen.px_per_m);
    // A window made smaller keeps in sight what was, clear of the scale and the key, and the larger one has its view back.
    desk.set_size(egui::vec2(1000.0, 640.0));
    desk.run();
    let (editor, view) = (window(&desk).editor(), *window(&desk).editor().view());
    for &at in &editor.plan().ground.boundary {
        let [right, down] = view.spot(at);
        assert!((0.0..=view.size[0]).contains(&right) && (0.0..=view.size[1]).contains(&down), "{at:?}");
    }
    desk.set_size(egui::vec2(1280.0, 800.0));
    desk.run();
    assert!((window(&desk).editor().view().px_per_m - seen.px_per_m).abs() < 1e-9);
}
