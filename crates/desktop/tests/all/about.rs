//! A figure says what it is, its unit and where it comes from while the pointer rests on it.

use crate::hand::{Desk, example, on_page, window};
use desktop::editor::Page;
use egui::Event;
use egui_kittest::kittest::Queryable;
use words::Words;

/// Rests the pointer on what is called so.
fn rest_on(desk: &mut Desk, label: &str) {
    let at = desk.get_by_label_contains(label).rect().center();
    desk.event(Event::PointerMoved(at));
    desk.run();
    desk.run_steps(60);
}

#[test]
fn every_figure_at_the_foot_tells_of_itself() {
    let mut desk = on_page(example(), Page::Run, [1920.0, 1080.0], Words::default());
    for (figure, told) in [
        ("Nets 3 of 5", "The fewest that cover it"),
        ("Line 150.0 m", "From the outline"),
        ("Spare 0.0 m", "Length of the nets less the line"),
        ("Posts 45", "From the panels of the nets"),
        ("Braces 5", "From turn, tension and soil"),
        ("Strip 300 m² · 11 min", "From the strip’s width and the mower"),
        ("Weakest about ", "From energizer, nets, grass and earth"),
    ] {
        rest_on(&mut desk, figure);
        assert!(desk.query_by_label_contains(told).is_some(), "{figure}");
    }
}

#[test]
fn the_large_figures_of_a_page_do_too() {
    let mut desk = on_page(example(), Page::Power, [1280.0, 800.0], Words::default());
    rest_on(&mut desk, "kV at the feed");
    assert!(desk.query_by_label_contains("against remote soil").is_some());
}

#[test]
fn what_is_said_of_a_figure_stands_beside_the_page_and_covers_none_of_it() {
    let mut desk = on_page(example(), Page::Power, [1280.0, 800.0], Words::default());
    rest_on(&mut desk, "kV at the feed");
    let told = desk.get_by_label_contains("against remote soil").rect();
    assert!(told.right() <= 1280.0 - 360.0, "{told:?}");
    // A finding too.
    let mut desk = on_page(example(), Page::Book, [1280.0, 3600.0], Words::default());
    let found = &window(&desk).editor().findings().runs[0];
    let finding = found.iter().find(|finding| finding.id == "not-measured").unwrap().clone();
    rest_on(&mut desk, &finding.message);
    let told = desk.query_all_by_label_contains(finding.source).next().unwrap().rect();
    assert!(told.right() <= 1280.0 - 360.0, "{told:?}");
}
