//! What was asked for comes into sight on its page, and stays there.

use crate::hand;
use crate::hand::{Desk, example, on_page, say, settle, window};
use desktop::editor::{ManyMessage, Message, Page};
use drawing::Thing;
use egui::{Event, Key, Modifiers, Rect};
use egui_kittest::kittest::{NodeT, Queryable};
use plan::{Gateway, Plan, Point, Rest};
use words::Words;

/// Height of the head, of the figures, and of the names at a page's foot.
const HEAD: f32 = 44.0;
const FOOT: f32 = 48.0 + 32.0;

/// The example with a gateway in the middle of nowhere and a hazard that is hidden.
fn plan() -> Plan {
    let mut plan = example();
    plan.ground.gateway = Some(Gateway { at: Point::new(300.0, 300.0), rest: Rest::new() });
    plan.ground.hazards[0].hidden = true;
    plan
}

/// Every finding with its place among its like.
fn findings(desk: &Desk) -> Vec<(Thing, String, &'static str)> {
    let found = window(desk).editor().findings();
    let of_runs = found.runs.iter().enumerate().map(|(run, found)| (Some(run), found));
    let all = of_runs.chain([(None, &found.plan)]);
    all.flat_map(|(run, found)| {
        let thing = move |finding| Thing::Finding { run, finding };
        found.iter().enumerate().map(move |(place, one)| (thing(place), one.message.clone(), one.id))
    })
    .collect()
}

/// Where the sentence of the finding that is picked stands on its page, under its weight.
fn sentence(desk: &Desk, message: &str) -> Rect {
    let told = desk.query_all_by_label_contains(message);
    let mut told = told.filter(|node| {
        let node = node.accesskit_node();
        // What only tells has its words as its value.
        let label = node.label().filter(|label| !label.is_empty()).or_else(|| node.value()).unwrap_or_default();
        ["Danger: ", "Warning: ", "Note: "].iter().any(|weight| label.starts_with(weight))
    });
    told.next().unwrap_or_else(|| panic!("not on its page: {message}")).rect()
}

fn is_in_sight(place: Rect, size: [f32; 2]) -> bool {
    place.top() >= HEAD && place.bottom() <= size[1] - FOOT
}

#[test]
fn a_finding_in_the_list_leads_to_its_page_and_is_in_sight_there_or_on_the_map() {
    for size in [[900.0, 600.0], [1280.0, 800.0]] {
        let mut desk = on_page(plan(), Page::Book, size, Words::default());
        let all = findings(&desk);
        assert!(all.len() > 6);
        let mut pages = std::collections::BTreeSet::new();
        for (thing, message, id) in all {
            say(&mut desk, Message::Open(Page::Book));
            say(&mut desk, Message::Many(ManyMessage::List(true)));
            let filter = desk.get_by_label("Find in the list");
            filter.focus();
            desk.run();
            desk.key_press_modifiers(Modifiers::COMMAND, Key::A);
            desk.run();
            desk.event(Event::Text(message.clone()));
            desk.run();
            let at = {
                let mut rows = desk.query_all_by_label(&message);
                let row = rows.find(|node| node.accesskit_node().role() == egui::accesskit::Role::Row);
                row.unwrap().rect().center()
            };
            hand::click(&mut desk, at);
            if window(&desk).editor().picked() != Some(thing) {
                // The same sentence of another run.
                continue;
            }
            desk.key_press(Key::Enter);
            settle(&mut desk);
            // What is hidden is shown again from the list itself.
            assert_eq!(window(&desk).editor().is_listing(), id == "hidden-on-map");
            pages.insert(window(&desk).editor().page());
            if id == "hidden-on-map" {
                continue;
            }
            if let Some(led) = window(&desk).editor().led() {
                assert_eq!(led, message, "on the map, beside what mends it");
                continue;
            }
            let place = sentence(&desk, &message);
            assert!(is_in_sight(place, size), "{id} at {place:?} of {size:?}: {message}");
        }
        assert!(pages.contains(&Page::Ground) && pages.contains(&Page::Run), "{pages:?}");
    }
}

#[test]
fn a_finding_stands_on_the_page_where_it_is_mended() {
    let desk = on_page(plan(), Page::Ground, [1280.0, 800.0], Words::default());
    for id in ["gateway-off-boundary", "hidden-on-map"] {
        let (_, message, _) = findings(&desk).into_iter().find(|(_, _, one)| *one == id).unwrap();
        sentence(&desk, &message);
    }
}

#[test]
fn the_keyboard_takes_the_page_along() {
    let size = [900.0, 600.0];
    let mut desk = on_page(plan(), Page::Run, size, Words::default());
    let field = "Length of side 1 to 2";
    let was = desk.get_by_label(field).rect();
    assert!(!is_in_sight(was, size), "{was:?}");
    desk.get_by_label(field).focus();
    desk.run();
    let place = desk.get_by_label(field).rect();
    assert!(is_in_sight(place, size), "{place:?}");
}

#[test]
fn a_click_beside_the_page_does_not_move_it_as_it_scrolls() {
    let size = [1280.0, 800.0];
    let mut desk = on_page(plan(), Page::Run, size, Words::default());
    let top = |desk: &Desk| desk.get_by_label("Length of side 1 to 2").rect().top();
    let units = desk.get_by_label_contains("Units ").rect().center();
    hand::click(&mut desk, units);
    hand::click(&mut desk, units);
    let was = top(&desk);
    let scroll = |desk: &mut Desk| {
        desk.event(Event::PointerMoved(egui::pos2(1100.0, 400.0)));
        desk.event(Event::MouseWheel {
            unit: egui::MouseWheelUnit::Point,
            delta: egui::vec2(0.0, -60.0),
            phase: egui::TouchPhase::Move,
            source: egui::MouseWheelSource::Wheel,
            modifiers: Modifiers::NONE,
        });
        desk.run();
        for _ in 0..20 {
            desk.step();
        }
    };
    scroll(&mut desk);
    assert!((was - top(&desk) - 60.0).abs() < 1.0, "by {} in place of 60", was - top(&desk));
}

#[test]
fn why_something_typed_cannot_be_used_comes_into_sight_with_it() {
    let size = [900.0, 600.0];
    let mut desk = on_page(plan(), Page::Run, size, Words::default());
    let field = "Length of side 1 to 2";
    desk.get_by_label(field).focus();
    desk.run();
    // The hand moves the page until the field is the last thing above its foot, and takes it.
    let low = size[1] - FOOT - desk.get_by_label(field).rect().bottom();
    let over = desk.get_by_label(field).rect().center();
    desk.event(Event::PointerMoved(over));
    desk.event(Event::MouseWheel {
        unit: egui::MouseWheelUnit::Point,
        delta: egui::vec2(0.0, low),
        source: egui::MouseWheelSource::Wheel,
        phase: egui::TouchPhase::Move,
        modifiers: Modifiers::NONE,
    });
    desk.run();
    let at = desk.get_by_label(field).rect();
    assert!((at.bottom() - (size[1] - FOOT)).abs() < 2.0, "{at:?}");
    hand::click(&mut desk, at.center());
    desk.key_press_modifiers(Modifiers::COMMAND, Key::A);
    desk.event(Event::Text("ninety thousand".into()));
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    let told = desk.get_by_label_contains("is no number").rect();
    assert!(is_in_sight(told, size), "{told:?}");
    // It is brought once: who scrolls on is let go.
    let before = desk.get_by_label(field).rect();
    desk.run();
    assert_eq!(desk.get_by_label(field).rect(), before);
}
