//! A figure says what it is, its unit and where it comes from while the pointer rests on it.

use crate::hand::{Desk, example, on_page, painted, window};
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

/// Every row and field of a page, by its own words; what only leads elsewhere has none.
#[test]
fn rows_and_sentences_tell_of_their_figures_too() {
    for (page, under, told) in [
        (Page::Run, "1,491 m² for 90 hens", "how much of it each bird has"),
        (Page::Run, "Nets", "what you own"),
        (Page::Run, "Length of side 1 to 2", "Length of a side in metres"),
        (Page::Ground, "Pond: ", "How far a run keeps off"),
        (Page::Power, "Stored", "from a data sheet"),
        (Page::Moves, "Nets that stay: ", "What stays and what moves"),
    ] {
        let mut desk = on_page(example(), page, [1280.0, 5200.0], Words::default());
        let nodes = desk.query_all_by_label_contains(under);
        let at = nodes.map(|node| node.rect()).find(|place| place.left() > 900.0);
        let at = at.unwrap_or_else(|| panic!("{under} on {page:?}"));
        desk.event(Event::PointerMoved(at.left_center() + egui::vec2(3.0, 0.0)));
        desk.run();
        desk.run_steps(60);
        assert!(desk.query_by_label_contains(told).is_some(), "{under} on {page:?}");
    }
}

/// Whether words are those that are looked for.
type Is = fn(&str) -> bool;

/// Where text of a drawing stands in the window.
fn written(desk: &Desk, is: Is) -> egui::Pos2 {
    let here = painted(desk, is).into_iter().find(|place| place.left() < 900.0);
    here.map(|place| place.center()).expect("it is not written on the map or the line")
}

#[test]
fn figures_on_the_map_on_the_line_and_on_the_plot_tell_of_themselves() {
    let run = || on_page(example(), Page::Run, [1280.0, 800.0], Words::default());
    let cases: [(&str, Is, &str); 6] = [
        ("the weakest post", |text| text.starts_with("about "), "Peak volts at the weakest post"),
        ("a side", |text| text.ends_with(" panels"), "Length of this side"),
        ("the run", |text| text.ends_with("90 hens"), "how much of it each bird has"),
        ("a post", |text| text == "post 5", "Number of this post"),
        ("the overhead line", |text| text == "11 kV line", "As you state it; ask its operator"),
        ("along the line", |text| text == "60.7", "How far this corner is along the line"),
    ];
    for (what, is, told) in cases {
        let mut desk = run();
        let at = written(&desk, is);
        desk.event(Event::PointerMoved(at));
        desk.run();
        desk.run_steps(60);
        assert!(desk.query_by_label_contains(told).is_some(), "{what}");
        desk.event(Event::PointerMoved(egui::pos2(2.0, 400.0)));
        desk.run();
        desk.run_steps(60);
        assert!(desk.query_by_label_contains(told).is_none(), "{what} is left");
    }
    // The plot over the line.
    let mut desk = on_page(example(), Page::Power, [1280.0, 800.0], Words::default());
    let axis = desk.get_by_label("The run unfolded").rect().left_top() - egui::vec2(-10.0, 60.0);
    desk.event(Event::PointerMoved(axis));
    desk.run();
    desk.run_steps(60);
    assert!(desk.query_by_label_contains("Peak volts along the line").is_some());
    // Scale and key.
    let mut desk = run();
    let kept = window(&desk).editor().view().kept;
    for (plate, told) in kept.iter().flatten().zip(["as long as the bar", "Colours of the net"]) {
        let map = desk.get_by_label("Map").rect();
        let spot = map.min + egui::vec2(plate[0].midpoint(plate[2]), plate[1].midpoint(plate[3]));
        desk.event(Event::PointerMoved(spot));
        desk.run();
        desk.run_steps(60);
        assert!(desk.query_by_label_contains(told).is_some(), "{told}");
    }
    // While something is in the hand nothing is told.
    desk.state_mut().as_mut().unwrap().say(desktop::editor::Message::Use(desktop::tool::Tool::tape()));
    desk.run();
    desk.run_steps(60);
    assert!(desk.query_by_label_contains("Colours of the net").is_none());
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

#[test]
fn the_list_over_a_page_is_about_none_of_its_sections() {
    let mut desk = on_page(example(), Page::Power, [1280.0, 800.0], Words::default());
    desk.state_mut().as_mut().unwrap().say(desktop::editor::Message::Many(desktop::editor::ManyMessage::List(true)));
    desk.run();
    rest_on(&mut desk, "Footpath: ");
    for told in ["In grass", "data sheet", "From the circuit", "common practice", "have not stated"] {
        assert!(desk.query_by_label_contains(told).is_none(), "{told}");
    }
}
