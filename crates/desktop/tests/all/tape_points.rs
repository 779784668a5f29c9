//! Known places that corners are taped from: put down, named, dragged, typed, taken out, listed and told.

use crate::hand::{Desk, click, click_on, deeds, drag, example, fill, on_page, overtype, says, spot, window};
use desktop::editor::{ManyMessage, Message, Page};
use drawing::Thing;
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable;
use plan::{Plan, Point, TapeLetter, TapePoint};
use words::{Language, Units, Words};

const GATE: Point = Point { east_m: 12.0, north_m: 60.0 };
const OAK: Point = Point { east_m: 72.0, north_m: 64.0 };

fn points(desk: &Desk) -> Vec<TapePoint> {
    window(desk).editor().plan().tape_points.clone()
}

fn press(desk: &mut Desk, modifiers: Modifiers, key: Key) {
    desk.key_press_modifiers(modifiers, key);
    desk.run();
}

fn desk(plan: Plan) -> Desk {
    on_page(plan, Page::Ground, [1280.0, 3000.0], Words::default())
}

/// The example with two of them.
fn known() -> Plan {
    let point = |name: &str, at: Point| TapePoint { name: name.to_owned(), at, ..TapePoint::default() };
    Plan { tape_points: vec![point("gatepost", GATE), point("", OAK)], ..example() }
}

#[test]
fn two_are_put_down_on_the_map_and_named_at_once() {
    let mut desk = desk(example());
    assert!(says(&desk, "No known place is stated"));
    click_on(&mut desk, "Known place");
    assert!(says(&desk, "Click a place that you find again on the ground"));
    let at = spot(&desk, GATE);
    click(&mut desk, at);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::TapePoint { point: 0 }));
    // What is typed next is its name.
    overtype(&mut desk, "gatepost");
    assert_eq!(points(&desk)[0].name, "gatepost");
    assert!(says(&desk, "The sheet tapes from P gatepost."));
    click_on(&mut desk, "Known place");
    let at = spot(&desk, OAK);
    click(&mut desk, at);
    let both = points(&desk);
    let off = |one: Point, other: Point| (one.east_m - other.east_m).hypot(one.north_m - other.north_m);
    assert!(both.len() == 2 && off(both[0].at, GATE) < 0.5 && off(both[1].at, OAK) < 0.5, "{both:?}");
    assert!(says(
        &desk,
        "The sheet tapes from these two every corner where the tapes cross well, the others from corners that stand."
    ));
    desk.get_by_label("P gatepost on the map");
    desk.get_by_label("Known place Q on the map");
    assert_eq!(deeds(&desk), 3);
    // The field for the name has the focus, and nothing was typed into it: undoing takes the place back at once.
    for left in [1, 1, 0] {
        press(&mut desk, Modifiers::COMMAND, Key::Z);
        assert_eq!(points(&desk).len(), left, "each is a step that is taken back");
    }
}

#[test]
fn one_is_dragged_in_one_step_nudged_typed_and_taken_out() {
    let mut desk = desk(known());
    let (at, was) = (spot(&desk, OAK), points(&desk));
    drag(&mut desk, at, at + vec2(60.0, 0.0));
    let east_m = points(&desk)[1].at.east_m;
    assert!(east_m > OAK.east_m + 2.0 && points(&desk)[0] == was[0] && deeds(&desk) == 1, "{:?}", points(&desk));
    assert_eq!(window(&desk).editor().picked(), Some(Thing::TapePoint { point: 1 }));
    press(&mut desk, Modifiers::NONE, Key::ArrowLeft);
    assert!((points(&desk)[1].at.east_m - east_m + 0.1).abs() < 1e-9);
    fill(&mut desk, "East of Known place Q", "80.25");
    assert!((points(&desk)[1].at.east_m - 80.25).abs() < 1e-9);
    fill(&mut desk, "Name of Known place Q", "oak");
    desk.get_by_label("Q oak on the map");
    press(&mut desk, Modifiers::NONE, Key::Delete);
    let p_alone = [TapePoint { letter: Some(TapeLetter::P), ..was[0].clone() }];
    assert_eq!(points(&desk), p_alone);
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert_eq!(points(&desk)[1].name, "oak");
    // By its button too.
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(Thing::TapePoint { point: 1 })));
    desk.run();
    click_on(&mut desk, "Take it out");
    assert_eq!(points(&desk), p_alone);
}

#[test]
fn they_are_put_down_by_command_and_stand_in_the_list_of_everything() {
    let mut desk = on_page(known(), Page::Run, [1280.0, 900.0], Words::default());
    press(&mut desk, Modifiers::COMMAND, Key::K);
    desk.event(egui::Event::Text("known place to tape".to_owned()));
    desk.run();
    press(&mut desk, Modifiers::NONE, Key::Enter);
    assert_eq!(window(&desk).editor().page(), Page::Ground);
    let at = spot(&desk, Point::new(100.0, 70.0));
    click(&mut desk, at);
    assert_eq!(points(&desk).len(), 3);
    press(&mut desk, Modifiers::NONE, Key::Escape);
    press(&mut desk, Modifiers::NONE, Key::Escape);
    press(&mut desk, Modifiers::NONE, Key::L);
    // A third counts for nothing, so it has no letter.
    for name in ["P gatepost", "Known place Q", "Known place 3"] {
        let rows = desk.query_all_by_label_contains(name).count();
        assert!(rows > 1, "{name} on the map and in the list: {rows}");
    }
}

#[test]
fn several_go_together_and_are_doubled() {
    let mut desk = desk(known());
    let things = [Thing::TapePoint { point: 0 }, Thing::TapePoint { point: 1 }];
    let say = |desk: &mut Desk, message: Message| {
        desk.state_mut().as_mut().unwrap().say(message);
        desk.run();
    };
    say(&mut desk, Message::Pick(Some(things[0])));
    say(&mut desk, Message::Many(ManyMessage::Also(things[1])));
    press(&mut desk, Modifiers::NONE, Key::ArrowRight);
    assert!(points(&desk).iter().zip([GATE, OAK]).all(|(one, was)| (one.at.east_m - was.east_m - 0.1).abs() < 1e-9));
    let both = points(&desk);
    press(&mut desk, Modifiers::NONE, Key::Delete);
    assert!(points(&desk).is_empty());
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert_eq!(points(&desk), both);
    for (message, thing) in [(Message::Pick(Some(things[0])), 0), (Message::Many(ManyMessage::Also(things[1])), 1)] {
        say(&mut desk, message);
        assert_eq!(window(&desk).editor().picked(), Some(things[thing]));
    }
    say(&mut desk, Message::Duplicate);
    let of = |one: &TapePoint| (one.name.clone(), one.at);
    let doubled = points(&desk);
    assert!(doubled.len() == 4 && doubled.iter().zip(&both).all(|(one, was)| of(one) == of(was)));
    let letters: Vec<Option<TapeLetter>> = doubled.iter().map(|one| one.letter).collect();
    assert_eq!(letters, [Some(TapeLetter::P), Some(TapeLetter::Q), None, None], "no two have one letter");
}

#[test]
fn german_calls_them_by_their_name() {
    let words = Words { language: Language::German, units: Units::Metric };
    let desk = on_page(known(), Page::Ground, [1280.0, 3000.0], words);
    desk.get_by_label("Bekannter Ort");
    assert!(says(
        &desk,
        "Das Blatt misst von diesen beiden jede Ecke ein, in der sich die Bänder gut kreuzen, die übrigen von Ecken, die stehen."
    ));
    desk.get_by_label("Bekannter Ort Q auf der Karte");
}

/// With a third place, in the order of the list.
fn with_a_third() -> Plan {
    let mut plan = known();
    plan.tape_points.push(TapePoint { name: "trough".to_owned(), at: Point::new(50.0, 8.0), ..TapePoint::default() });
    plan
}

fn pick(desk: &mut Desk, point: usize) {
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(Thing::TapePoint { point })));
    desk.run();
}

#[test]
fn a_letter_stays_with_its_place_when_another_is_taken_out() {
    let mut desk = desk(with_a_third());
    pick(&mut desk, 0);
    press(&mut desk, Modifiers::NONE, Key::Delete);
    // Q is still Q, and the third is not P by itself.
    desk.get_by_label("Known place Q on the map");
    desk.get_by_label("trough on the map");
    assert!(says(&desk, "The sheet tapes from Known place Q alone. Pick another place and give it the other letter"));
    // One that is put down now takes the letter that is free.
    click_on(&mut desk, "Known place");
    let at = spot(&desk, Point::new(100.0, 70.0));
    click(&mut desk, at);
    desk.get_by_label("Known place P on the map");
    desk.get_by_label("Known place Q on the map");
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert_eq!(points(&desk), with_a_third().tape_points);
    // Several at once likewise.
    let say = |desk: &mut Desk, message: Message| {
        desk.state_mut().as_mut().unwrap().say(message);
        desk.run();
    };
    pick(&mut desk, 0);
    say(&mut desk, Message::Many(ManyMessage::Also(Thing::TapePoint { point: 2 })));
    press(&mut desk, Modifiers::NONE, Key::Delete);
    assert_eq!(points(&desk).len(), 1);
    desk.get_by_label("Known place Q on the map");
}

#[test]
fn the_keeper_chooses_which_two_are_taped_from() {
    let mut desk = desk(with_a_third());
    assert!(says(
        &desk,
        "The sheet tapes from P gatepost and Known place Q; a place without a letter is not taped from. Pick it to give \
         it one."
    ));
    assert!(says(&desk, "8.0 m north, not taped from"), "its row says so too");
    pick(&mut desk, 2);
    click_on(&mut desk, "P");
    let letters = |desk: &Desk| points(desk).iter().map(|one| one.letter).collect::<Vec<_>>();
    assert_eq!(letters(&desk), [None, Some(TapeLetter::Q), Some(TapeLetter::P)]);
    desk.get_by_label("P trough on the map");
    desk.get_by_label("gatepost on the map");
    // The two change about.
    click_on(&mut desk, "Q");
    assert_eq!(letters(&desk), [None, Some(TapeLetter::P), Some(TapeLetter::Q)]);
    assert_eq!(deeds(&desk), 2);
    let corners = workup::tape::taped(window(&desk).editor().plan(), &example().runs[0]).unwrap();
    assert_eq!(corners.known.iter().map(|known| known.point).collect::<Vec<_>>(), [1, 2]);
}
