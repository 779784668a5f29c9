//! No label is cut, in any language, in what stands at the pointer or over the window: entries, lists, menus, choosers.

use std::collections::BTreeSet;

use super::{SIZES, cut, open, painted};
use crate::hand::{self, Desk, click, click_on, editor, hold, settle, spot};
use desktop::editor::{Message, Page};
use desktop::tool::{Drawn, Tool};
use drawing::Thing;
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable;
use words::texts::{Files, Power, Shaping, Window as WindowText};
use words::{Language, Units, Words};

/// What is done by hand or key to come to a state that no message leads to.
type Does = fn(&mut Desk);

/// States with something at the pointer, or over the window: an entry, a list, a menu, a chooser.
fn in_hand() -> Vec<(&'static str, Vec<Message>, Does)> {
    let ground = || vec![Message::Open(Page::Ground)];
    let run = || vec![Message::Open(Page::Run)];
    let unroll = || vec![Message::UseOn(Page::Run, Tool::outline(Drawn::Run))];
    let shade = vec![Message::UseOn(Page::Ground, Tool::outline(Drawn::Shade))];
    let pick = vec![Message::Open(Page::Run), Message::Pick(Some(Thing::Run { run: 0 }))];
    let nudged = [&pick[..], &[Message::Nudge(1.0, 0.0), Message::Nudge(0.0, 1.0)]].concat();
    vec![
        ("unrolling, one corner set", unroll(), |desk| set_corners(desk, 1)),
        ("unrolling, two corners set", unroll(), |desk| set_corners(desk, 2)),
        ("unrolling, out of reach", unroll(), |desk| {
            set_corners(desk, 2);
            let map = desk.get_by_label(editor(desk).words().text(WindowText::Map)).rect();
            desk.event(egui::Event::PointerMoved(map.min + vec2(0.12, 0.15) * map.size()));
            desk.run();
        }),
        ("a ground tool, two corners set", shade, |desk| set_corners(desk, 2)),
        ("a corner in the hand", run(), |desk| {
            let from = spot(desk, editor(desk).plan().runs[0].outline[1]);
            hold(desk, from, from + vec2(14.0, -22.0));
        }),
        ("a corner in the hand that keeps its length", run(), |desk| {
            let from = spot(desk, editor(desk).plan().runs[0].outline[1]);
            hold(desk, from, from + vec2(14.0, -22.0));
            desk.key_press(Key::L);
            desk.run();
        }),
        ("a whole in the hand", pick, |desk| {
            let coop = editor(desk).plan().coop.as_ref().unwrap().at;
            let from = spot(desk, coop) + vec2(40.0, 40.0);
            hold(desk, from, from + vec2(20.0, 12.0));
        }),
        ("the tape", vec![Message::UseOn(Page::Ground, Tool::tape())], |desk| set_corners(desk, 1)),
        ("the list of commands", run(), |desk| {
            desk.key_press_modifiers(Modifiers::COMMAND, Key::K);
            desk.run();
        }),
        ("commands that were searched for", run(), |desk| {
            desk.key_press_modifiers(Modifiers::COMMAND, Key::K);
            desk.run();
            desk.event(egui::Event::Text("e".to_owned()));
            desk.run();
        }),
        ("the plan's menu", ground(), |desk| open_menu(desk, |words| words.text(Files::PlanMenu))),
        ("the view's menu", ground(), |desk| open_menu(desk, |words| words.text(WindowText::View))),
        ("the ground today", ground(), |desk| {
            let words = editor(desk).words();
            let word = words.text(care::bracing::today_word(plan::Today::Wet));
            let at = desk.get_by_label(&format!("{} {word}", words.text(Power::GroundToday))).rect().center();
            click(desk, at);
        }),
        ("what was done", nudged, |desk| open_menu(desk, |words| words.text(Shaping::History))),
        ("the chooser to open", ground(), |desk| {
            choose(desk, |desk| desk.key_press_modifiers(Modifiers::COMMAND, Key::O));
        }),
        ("the chooser to save", ground(), |desk| {
            choose(desk, |desk| desk.key_press_modifiers(Modifiers::COMMAND | Modifiers::SHIFT, Key::S));
        }),
        ("the chooser of a picture", ground(), |desk| {
            choose(desk, |desk| {
                let label = editor(desk).words().text(words::texts::Underlay::Bring);
                desk.get_by_label(label).focus();
                desk.run();
                desk.key_press(Key::Enter);
            });
        }),
    ]
}

/// Sets so many corners on the map, and leads the tool on to where a further one would be.
fn set_corners(desk: &mut Desk, count: usize) {
    let map = desk.get_by_label(editor(desk).words().text(WindowText::Map)).rect();
    let places = [vec2(0.4, 0.62), vec2(0.55, 0.6), vec2(0.5, 0.48)];
    let at = places.map(|share| map.min + share * map.size());
    for &corner in &at[..count] {
        click(desk, corner);
    }
    desk.event(egui::Event::PointerMoved(at[count]));
    desk.run();
    settle(desk);
}

fn open_menu(desk: &mut Desk, name: fn(Words) -> &'static str) {
    let name = name(editor(desk).words());
    click_on(desk, name);
    desk.run();
}

/// Comes to a chooser, and leads it to a folder with nothing in it but a plan of a long name.
fn choose(desk: &mut Desk, come: fn(&mut Desk)) {
    let folder = tempfile::tempdir().unwrap();
    std::fs::create_dir(folder.path().join("old")).unwrap();
    std::fs::write(folder.path().join("farm.netfold.json"), b"{}").unwrap();
    come(desk);
    desk.run();
    let words = editor(desk).words();
    hand::fill(desk, words.text(Files::Folder), folder.path().to_str().unwrap());
    // With nothing typed what is missing is said, and with the name of what stands there that it does.
    hand::fill(desk, words.text(Files::FileName), "farm.netfold.json");
    desk.run();
}

fn none_cut_in_hand(language: Language) {
    let mut found = Vec::new();
    for (name, messages, does) in in_hand() {
        for (size, units) in [(SIZES[0], Units::Metric), (SIZES[1], Units::Feet)] {
            let mut desk = open(Words { language, units }, size, messages.clone());
            let before: BTreeSet<String> = painted(&desk).0.into_iter().map(|one| one.text).collect();
            does(&mut desk);
            let more = painted(&desk).0.into_iter().filter(|one| !before.contains(&one.text)).count();
            assert!(more > 0, "{name}: nothing more is written than before");
            found.extend(cut(&desk).into_iter().map(|cut| format!("{name} at {size:?} in {units:?}: {cut}")));
        }
    }
    assert!(found.is_empty(), "{} labels in {language:?}:\n{}", found.len(), found.join("\n"));
}

#[test]
fn no_label_is_cut_at_the_pointer_in_lists_menus_and_choosers() {
    none_cut_in_hand(Language::English);
}

#[test]
fn no_label_is_cut_at_the_pointer_in_lists_menus_and_choosers_in_german() {
    none_cut_in_hand(Language::German);
}

#[test]
fn no_label_is_cut_at_the_pointer_in_lists_menus_and_choosers_where_text_is_two_fifths_longer() {
    none_cut_in_hand(Language::Longer);
}
