//! Places that are typed: where the energizer and each coop stands; and the fields of every coop.

use crate::hand::{Desk, click_on, deeds, example, fill, on_page, plan_of, settle, window};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use plan::{Coop, Plan, Point};
use words::Words;

fn stands(desk: &Desk) -> Option<Point> {
    plan_of(desk).runs[0].energizer_at
}

/// What stands in a field.
fn value(desk: &Desk, label: &str) -> String {
    let field = desk.get_by_role_and_label(egui::accesskit::Role::TextInput, label);
    field.accesskit_node().value().unwrap_or_default()
}

fn empty(desk: &mut Desk, label: &str) {
    desk.get_by_label(label).focus();
    desk.run();
    desk.key_press_modifiers(Modifiers::COMMAND, Key::A);
    desk.run();
    for key in [Key::Backspace, Key::Enter] {
        desk.key_press(key);
        desk.run();
    }
}

#[test]
fn where_the_energizer_stands_is_typed_changed_and_taken_back() {
    let mut desk = on_page(example(), Page::Power, [1280.0, 3600.0], Words::default());
    assert_eq!(stands(&desk), None);
    let feed = workup::lead::feed(&plan_of(&desk).runs[0]).unwrap();
    // Until something is stated the fields show the feed point.
    let words = Words::default();
    let figure = |metres: f64| words.typed_parts(words::Measure::Length, metres).0;
    assert_eq!(value(&desk, "East of Energizer"), figure(feed.east_m));
    assert_eq!(value(&desk, "North of Energizer"), figure(feed.north_m));
    let before = deeds(&desk);
    fill(&mut desk, "East of Energizer", "20");
    assert_eq!(stands(&desk), Some(Point::new(20.0, feed.north_m)), "the other figure is the one that stood there");
    settle(&mut desk);
    fill(&mut desk, "North of Energizer", "1250 cm");
    settle(&mut desk);
    assert_eq!((stands(&desk), deeds(&desk)), (Some(Point::new(20.0, 12.5)), before + 2));
    let apart_m = (feed.east_m - 20.0).hypot(feed.north_m - 12.5);
    let told = format!("The energizer stands {} from the feed point", words.length(apart_m));
    assert!(desk.query_all_by_label_contains(&told).next().is_some(), "{told}");
    // What cannot be read changes nothing and says why.
    fill(&mut desk, "North of Energizer", "up there");
    assert!(desk.query_all_by_label_contains("“up there”").next().is_some());
    assert_eq!(stands(&desk), Some(Point::new(20.0, 12.5)));
    desk.key_press(Key::Escape);
    desk.run();
    empty(&mut desk, "East of Energizer");
    settle(&mut desk);
    assert_eq!((stands(&desk), deeds(&desk)), (None, before + 3));
    assert_eq!(value(&desk, "North of Energizer"), figure(feed.north_m));
    desk.state_mut().as_mut().unwrap().say(Message::Undo);
    settle(&mut desk);
    assert_eq!(stands(&desk), Some(Point::new(20.0, 12.5)));
}

#[test]
fn the_energizer_that_is_picked_brings_its_fields_in_sight_and_the_list_has_them_too() {
    let mut plan = example();
    plan.runs[0].energizer_at = Some(Point::new(18.0, 20.0));
    let mut desk = on_page(plan, Page::Power, [1280.0, 800.0], Words::default());
    let bottom = |desk: &Desk| desk.get_by_label("North of Energizer").rect().bottom();
    assert!(bottom(&desk) > 800.0, "far below: {}", bottom(&desk));
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(Thing::Energizer { run: 0 })));
    // The page scrolls there within a few frames.
    desk.run_steps(60);
    desk.run();
    assert!((44.0..720.0).contains(&bottom(&desk)), "in sight: {}", bottom(&desk));
    desk.key_press(Key::L);
    desk.run();
    let label = "East of Energizer of Round Quince House";
    fill(&mut desk, label, "19");
    assert_eq!(stands(&desk), Some(Point::new(19.0, 20.0)));
}

/// The example with a second coop beside its own.
fn two_coops() -> Plan {
    let mut plan = example();
    let own = plan.coop.clone().unwrap();
    let at = Point::new(own.at.east_m + 8.0, own.at.north_m);
    plan.other_coops.push(Coop { id: "Ark".to_owned(), birds: Some(12), at, ..own });
    plan
}

#[test]
fn every_coop_is_listed_and_the_one_that_is_picked_has_its_fields() {
    let mut desk = on_page(two_coops(), Page::Ground, [1280.0, 2400.0], Words::default());
    let own = plan_of(&desk).coop.unwrap();
    assert!(desk.query_by_label("Birds of Coop Ark").is_none());
    click_on(&mut desk, "Coop Ark: 12 hens");
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Coop { coop: 1 }));
    // Its fields lead the page; the row stays, so that the other is a click away.
    assert!(desk.get_by_label("Birds of Coop Ark").rect().top() < 500.0);
    let before = deeds(&desk);
    fill(&mut desk, "Birds of Coop Ark", "30");
    fill(&mut desk, "Length of Coop Ark", "3");
    fill(&mut desk, "East of Coop Ark", "41.5");
    fill(&mut desk, "Name of Coop Ark", "Barge");
    let now = plan_of(&desk);
    let ark = &now.other_coops[0];
    assert_eq!((ark.id.as_str(), ark.birds, ark.length_m), ("Barge", Some(30), Some(3.0)));
    assert!((ark.at.east_m - 41.5).abs() < 1e-9);
    assert_eq!((now.coop.as_ref(), deeds(&desk)), (Some(&own), before + 4), "the other is as it was, each one step");
    click_on(&mut desk, &format!("Coop {}: {} hens", own.id, own.birds()));
    fill(&mut desk, &format!("Birds of Coop {}", own.id), "75");
    assert_eq!(plan_of(&desk).coop.unwrap().birds, Some(75));
    assert_eq!(plan_of(&desk).other_coops[0].birds, Some(30));
}

#[test]
fn a_coop_of_the_others_has_its_fields_where_the_plan_has_none_of_its_own() {
    let mut plan = two_coops();
    plan.coop = None;
    plan.runs[0].coop = None;
    let mut desk = on_page(plan, Page::Ground, [1280.0, 2400.0], Words::default());
    fill(&mut desk, "Birds of the coop", "9");
    assert_eq!(plan_of(&desk).other_coops[0].birds, Some(9));
    assert_eq!(plan_of(&desk).coop, None);
}
