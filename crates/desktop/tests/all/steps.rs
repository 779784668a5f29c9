//! Undo, always: every way of changing a plan is a step of its own, with a name, that can be gone back to.

use crate::hand;
use crate::hand::{Desk, click_on, example, on_page, say, spot, window};
use desktop::editor::{ManyMessage, Message, Page};
use drawing::Thing;
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable;
use plan::{Deed, Plan, Point};
use words::Words;

fn desk(page: Page) -> Desk {
    on_page(example(), page, [1280.0, 900.0], Words::default())
}

fn plan(desk: &Desk) -> Plan {
    window(desk).editor().plan().clone()
}

fn deeds(desk: &Desk) -> Vec<Deed> {
    window(desk).editor().deeds().0
}

/// One step led here; undone it was never done, and done again it is the same.
fn is_one_step(desk: &mut Desk, deed: Deed) {
    assert_eq!(deeds(desk), [deed]);
    let after = plan(desk);
    assert_ne!(after, example());
    desk.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    desk.run();
    assert_eq!(plan(desk), example());
    desk.key_press_modifiers(Modifiers::COMMAND, Key::Y);
    desk.run();
    assert_eq!(plan(desk), after);
}

#[test]
fn a_drag_on_the_map_is_one_step() {
    let mut desk = desk(Page::Run);
    let at = spot(&desk, example().runs[0].outline[2]);
    hand::drag(&mut desk, at, at + vec2(25.0, 10.0));
    is_one_step(&mut desk, Deed::MoveCorner);
}

#[test]
fn a_drag_of_a_slider_is_one_step() {
    let mut desk = desk(Page::Power);
    let slider = desk.get_all_by_role(egui::accesskit::Role::Slider).next().unwrap().rect();
    let (from, to) = (slider.left_top() + vec2(60.0, 12.0), slider.left_top() + vec2(200.0, 12.0));
    hand::drag(&mut desk, from, to);
    let after = plan(&desk);
    assert_ne!(after.runs[0].leakage_s_per_m, example().runs[0].leakage_s_per_m);
    is_one_step(&mut desk, Deed::Grass);
}

#[test]
fn a_figure_typed_in_a_page_and_in_the_list_is_one_step() {
    let mut desk = desk(Page::Run);
    hand::fill(&mut desk, "Length of side 1 to 2", "40");
    is_one_step(&mut desk, Deed::SideLength);

    let mut desk = self::desk(Page::Run);
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 1 })));
    say(&mut desk, Message::Many(ManyMessage::List(true)));
    hand::fill(&mut desk, "East of Corner 2 of Round Quince House", "61.5");
    assert_eq!(plan(&desk).runs[0].outline[1], Point::new(61.5, 15.5));
    is_one_step(&mut desk, Deed::MoveCorner);
}

#[test]
fn what_is_read_from_a_file_is_one_step_with_its_name() {
    let mut desk = desk(Page::Ground);
    let mut brought = Plan::default();
    brought.ground.boundary = [(0.0, 0.0), (90.0, 0.0), (90.0, 70.0)].map(Point::from).to_vec();
    brought.ground.keep_outs = vec![example().ground.keep_outs[1].clone()];
    say(&mut desk, Message::BringIn(Box::new(brought)));
    assert_eq!(plan(&desk).ground.keep_outs.len(), 3);
    is_one_step(&mut desk, Deed::BringIn);
}

#[test]
fn every_deed_of_several_things_stands_in_the_list_by_name_and_the_list_is_walked_by_keys() {
    let mut desk = desk(Page::Ground);
    say(&mut desk, Message::Pick(Some(Thing::KeepOut { keep_out: 0 })));
    for said in [
        Message::Many(ManyMessage::Also(Thing::KeepOut { keep_out: 1 })),
        Message::Nudge(0.5, 0.0),
        Message::Duplicate,
        Message::Many(ManyMessage::HidePicked),
        Message::Many(ManyMessage::LockPicked),
        Message::Many(ManyMessage::LockPicked),
        Message::Many(ManyMessage::Rename(Thing::KeepOut { keep_out: 2 }, "Further pond".to_owned())),
        Message::Remove,
    ] {
        say(&mut desk, said);
    }
    let done = [Deed::Move, Deed::Duplicate, Deed::Hide, Deed::Lock, Deed::Lock, Deed::Rename, Deed::Remove];
    assert_eq!(deeds(&desk), done);
    assert_eq!(plan(&desk).ground.keep_outs.len(), 2);
    click_on(&mut desk, "What was done");
    for step in [
        "1  moved it whole",
        "3  hid or showed something",
        "5  locked or unlocked something",
        "6  gave it a name",
        "7  took something out",
    ] {
        assert!(desk.query_by_label(step).is_some(), "{step}");
    }
    // Up the list by keys, and Enter goes there.
    desk.get_by_label("1  moved it whole").focus();
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    assert_eq!(deeds(&desk), [Deed::Move]);
    assert_eq!(plan(&desk).ground.keep_outs.len(), 2);
    say(&mut desk, Message::GoTo(7));
    assert_eq!(deeds(&desk), done);
    say(&mut desk, Message::GoTo(0));
    assert_eq!(plan(&desk), example());
}
