//! Where feet are chosen nothing is said in metres, on any page and in any state.

use crate::hand::{self, plans};
use desktop::editor::{ManyMessage, Message, Page};
use drawing::Thing;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use words::{Language, Units, Words};

/// Units of length and area that only metric figures have.
const METRIC: [&str; 7] = ["m", "cm", "mm", "km", "m²", "m/s", "m²·"];

/// Figures with a metric unit, in the words of a window's nodes.
fn metric(desk: &hand::Desk) -> Vec<String> {
    let mut found = Vec::new();
    for node in desk.query_all(egui_kittest::kittest::By::new().predicate(|_| true)) {
        let node = node.accesskit_node();
        for text in [node.label(), node.value()].into_iter().flatten() {
            let parts: Vec<&str> = text.split([' ', '\u{a0}', '\u{202f}', '\n']).collect();
            let is_metric = |pair: &[&str]| {
                let figure = pair[0].ends_with(|letter: char| letter.is_ascii_digit());
                let unit = pair[1].trim_end_matches([',', '.', ';', ':', ')']);
                figure && METRIC.contains(&unit)
            };
            if parts.windows(2).any(is_metric) {
                found.push(text);
            }
        }
    }
    found
}

#[test]
fn feet_leave_no_metres_on_any_page_in_any_language() {
    let plan = plans::read_on(plans::faulty(plans::drawn_on(hand::example())));
    // What is looked for is found where metres are chosen.
    let metres = hand::on_page(plan.clone(), Page::Run, [1280.0, 6000.0], Words::default());
    assert!(metric(&metres).len() > 20, "{:?}", metric(&metres));
    for language in [Language::English, Language::German] {
        for page in [Page::Ground, Page::Run, Page::Power, Page::Moves, Page::Book, Page::Sheet] {
            let words = Words { units: Units::Feet, language };
            let mut desk = hand::on_page(plan.clone(), page, [1280.0, 6000.0], words);
            assert_eq!(metric(&desk), Vec::<String>::new(), "{page:?} {language:?}");
            hand::say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 1 })));
            assert_eq!(metric(&desk), Vec::<String>::new(), "a corner picked, {page:?} {language:?}");
            hand::say(&mut desk, Message::Many(ManyMessage::List(true)));
            desk.run();
            assert_eq!(metric(&desk), Vec::<String>::new(), "the list, {page:?} {language:?}");
        }
    }
}

#[test]
fn the_commands_say_their_lengths_in_feet_too() {
    let words = Words { units: Units::Feet, ..Words::default() };
    let mut desk = hand::on_page(hand::example(), Page::Run, [1280.0, 800.0], words);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::K);
    desk.run();
    desk.event(egui::Event::Text("move what".to_owned()));
    desk.run();
    desk.get_by_label_contains("Move what is picked by 0.3 ft, with Shift by 3.3 ft");
    assert_eq!(metric(&desk), Vec::<String>::new());
}
