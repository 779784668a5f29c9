//! The names of a page's sections at its foot: each brings its section to the top.

use crate::hand;
use crate::hand::{click, example, on_page};
use desktop::editor::Page;
use egui::accesskit::Role;
use egui_kittest::kittest::Queryable;
use words::Words;

#[test]
fn a_click_between_the_names_presses_nothing_beneath_and_goes_on() {
    let mut desk = on_page(example(), Page::Ground, [1280.0, 800.0], Words::default());
    let strip = desk.get_by_role_and_label(Role::Button, "Go on").rect();
    let before = hand::window(&desk).editor().plan().clone();
    let first = desk.get_by_role_and_label(Role::Link, "Keep-outs").rect();
    assert!(strip.contains_rect(first));
    // Wherever a button lies beneath: none is pressed, no tool is taken up.
    let mut at = strip.left() + 4.0;
    while at < first.left() - 6.0 {
        click(&mut desk, egui::pos2(at, strip.center().y));
        desk.run();
        assert_eq!(*hand::window(&desk).editor().tool(), desktop::tool::Tool::Pick);
        at += 6.0;
    }
    assert_eq!(hand::window(&desk).editor().plan(), &before);
    let head = desk.get_by_role_and_label(Role::Heading, "Keep-outs").rect();
    assert!(head.top() < strip.top() - 100.0, "what lay below came up: {head:?}");
}

#[test]
fn a_section_that_is_named_at_the_foot_comes_to_the_top_of_its_page() {
    let mut desk = on_page(example(), Page::Power, [1280.0, 800.0], Words::default());
    let name = "Where the energizer stands";
    let chip = desk.get_by_role_and_label(Role::Link, name).rect();
    click(&mut desk, chip.center());
    // It is scrolled there, not thrown.
    for _ in 0..60 {
        desk.run();
    }
    let head = desk.get_by_role_and_label(Role::Heading, name).rect();
    assert!((40.0..90.0).contains(&head.top()), "{head:?}");
    // And there it stays.
    desk.run();
    assert_eq!(desk.get_by_role_and_label(Role::Heading, name).rect(), head);
}
