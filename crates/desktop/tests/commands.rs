//! The list of commands: searched, walked and run by keys; the pages by number; the page folded away.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may stop")]

mod hand;

use desktop::Opening;
use desktop::editor::Page;
use drawing::Theme;
use egui::{Event, Key, Modifiers};
use egui_kittest::kittest::Queryable;
use hand::{Desk, example, on_page, open, window};
use words::Words;

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
