//! The list of everything keeps its rows from frame to frame: what is kept is never older than what it is made from.

use crate::hand::{Desk, example, on_page, settle, spot, window};
use desktop::editor::{ManyMessage, Message, Page};
use drawing::Thing;
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, MouseWheelSource, MouseWheelUnit, Pos2, Rect, TouchPhase, vec2};
use egui_kittest::kittest::NodeT;
use words::{Language, Units, Words};

/// High enough for every row.
const HIGH: f32 = 9000.0;

/// What is done while the list is open, or before it is.
type Step = (&'static str, fn(&mut Desk));

fn say(desk: &mut Desk, message: Message) {
    desk.state_mut().as_mut().unwrap().say(message);
}

fn open(desk: &mut Desk) {
    say(desk, Message::Many(ManyMessage::List(true)));
    settle(desk);
}

/// What each row says, and where.
fn laid(desk: &Desk) -> Vec<(String, Rect)> {
    let nodes = desk.root().children_recursive();
    let rows = nodes.filter(|node| node.accesskit_node().role() == Role::Row);
    rows.map(|node| (node.accesskit_node().label().unwrap_or_default(), node.rect())).collect()
}

#[test]
fn a_list_that_stayed_open_is_the_list_opened_anew() {
    let steps: [Step; 9] = [
        ("a run is named", |desk| {
            let name = "Behind the long barn".to_owned();
            say(desk, Message::Many(ManyMessage::Rename(Thing::Run { run: 0 }, name)));
        }),
        ("the paddock is picked", |desk| say(desk, Message::Pick(Some(Thing::Boundary)))),
        ("a corner of a pond is picked", |desk| {
            say(desk, Message::Pick(Some(Thing::KeepOutCorner { keep_out: 0, vertex: 1 })));
        }),
        ("German is read", |desk| say(desk, Message::Language(Language::German))),
        ("feet are read", |desk| say(desk, Message::Units(Units::Feet))),
        ("the window is made narrow", |desk| {
            desk.set_size(vec2(900.0, HIGH));
        }),
        ("everything is made larger", |desk| desk.key_press_modifiers(Modifiers::COMMAND, Key::Plus)),
        ("that pond is taken out", |desk| {
            say(desk, Message::Pick(Some(Thing::KeepOut { keep_out: 0 })));
            say(desk, Message::Remove);
        }),
        ("and comes back", |desk| say(desk, Message::Undo)),
    ];
    let desk = || on_page(example(), Page::Run, [1280.0, HIGH], Words::default());
    let mut stayed = desk();
    open(&mut stayed);
    let mut before = laid(&stayed);
    assert!(before.len() > 25, "{} rows", before.len());
    for (count, (what, step)) in steps.iter().enumerate() {
        step(&mut stayed);
        settle(&mut stayed);
        let mut anew = desk();
        for (_, step) in &steps[..=count] {
            step(&mut anew);
            settle(&mut anew);
        }
        open(&mut anew);
        let now = laid(&stayed);
        assert_eq!(now, laid(&anew), "after {what}");
        assert_ne!(now, before, "nothing to see after {what}");
        before = now;
    }
}

#[test]
fn what_is_found_by_typing_follows_the_plan() {
    let mut desk = on_page(example(), Page::Run, [1280.0, HIGH], Words::default());
    open(&mut desk);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::F);
    desk.run();
    desk.event(Event::Text("barn".to_owned()));
    settle(&mut desk);
    let said = |desk: &Desk| laid(desk).into_iter().map(|(said, _)| said).collect::<Vec<_>>();
    assert!(said(&desk).is_empty(), "{:?}", said(&desk));
    say(&mut desk, Message::Many(ManyMessage::Rename(Thing::Run { run: 0 }, "Barn".to_owned())));
    settle(&mut desk);
    let found = said(&desk);
    assert!(found.iter().any(|row| row.starts_with("Barn: ")) && found.iter().all(|row| row.contains("Barn")));
    say(&mut desk, Message::Undo);
    settle(&mut desk);
    assert!(said(&desk).is_empty(), "{:?}", said(&desk));
}

#[test]
fn what_is_left_of_scrolling_the_list_does_not_zoom_the_map() {
    let mut desk = on_page(example(), Page::Run, [1280.0, 800.0], Words::default());
    open(&mut desk);
    let wheel = |desk: &mut Desk, at: Pos2| {
        desk.event(Event::PointerMoved(at));
        desk.step();
        let (unit, delta, phase) = (MouseWheelUnit::Point, vec2(0.0, -600.0), TouchPhase::Move);
        let (source, modifiers) = (MouseWheelSource::Unknown, Modifiers::NONE);
        desk.event(Event::MouseWheel { unit, delta, phase, source, modifiers });
        desk.step();
    };
    let px_per_m = |desk: &Desk| window(desk).editor().view().px_per_m;
    let (first, before) = (laid(&desk)[0].1, px_per_m(&desk));
    let on_map = spot(&desk, window(&desk).editor().view().middle);
    wheel(&mut desk, first.center());
    desk.event(Event::PointerMoved(on_map));
    desk.run();
    assert_eq!(px_per_m(&desk), before);
    assert!(!laid(&desk).iter().any(|(_, rect)| *rect == first), "the list was scrolled");
    wheel(&mut desk, on_map);
    desk.run();
    assert!(px_per_m(&desk) < before, "a wheel that is turned over the map zooms it");
}
