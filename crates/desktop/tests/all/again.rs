//! Laying out taken back: the question stands there again with what was typed, and nothing behind it is lost.

use crate::hand::{Desk, click_on, cold, example, plan_of, settle, window};
use desktop::editor::{Editor, Message, SaveState};
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use plan::Deed;
use words::Words;

const UNDO: (Modifiers, Key) = (Modifiers::COMMAND, Key::Z);
const REDO: (Modifiers, Key) = (Modifiers::COMMAND, Key::Y);

fn press(desk: &mut Desk, (modifiers, key): (Modifiers, Key)) {
    desk.key_press_modifiers(modifiers, key);
    desk.run();
    settle(desk);
}

fn type_rolls(desk: &mut Desk, text: &str) {
    desk.get_by_label("Rolls").focus();
    desk.run();
    desk.key_press_modifiers(Modifiers::COMMAND, Key::A);
    desk.run();
    desk.event(egui::Event::Text(text.to_owned()));
    desk.run();
}

/// Three rolls laid out, and the run moved a little.
fn laid() -> Desk {
    let mut desk = cold();
    click_on(&mut desk, "Start with your own rolls");
    type_rolls(&mut desk, "3");
    click_on(&mut desk, "Lay it out");
    settle(&mut desk);
    desk
}

#[test]
fn the_question_stands_again_with_what_was_typed() {
    let mut desk = laid();
    let laid = plan_of(&desk);
    press(&mut desk, UNDO);
    desk.get_by_label("How much netting do you have?");
    let rolls = desk.get_by_role_and_label(egui::accesskit::Role::TextInput, "Rolls");
    assert_eq!(rolls.accesskit_node().value().as_deref(), Some("3"));
    assert_eq!(window(&desk).editor().question().unwrap().rolls.count, 3);
    assert_eq!(window(&desk).editor().deeds(), (Vec::new(), vec![Deed::LayOut]));
    // Enter answers it as before, and another answer lays another run.
    desk.key_press(Key::Enter);
    desk.run();
    settle(&mut desk);
    assert_eq!(plan_of(&desk), laid);
    press(&mut desk, UNDO);
    type_rolls(&mut desk, "4");
    assert!(!window(&desk).editor().can_redo(), "what was laid out from another answer is not to be done again");
    click_on(&mut desk, "Lay it out");
    settle(&mut desk);
    assert_eq!(plan_of(&desk).store.nets[0].count, Some(4));
    assert_eq!(window(&desk).editor().deeds().0, [Deed::LayOut]);
}

#[test]
fn redo_and_esc_lead_forward_to_all_that_was_done() {
    let mut desk = laid();
    let say = |desk: &mut Desk, message: Message| desk.state_mut().as_mut().unwrap().say(message);
    say(&mut desk, Message::Pick(Some(drawing::Thing::Run { run: 0 })));
    say(&mut desk, Message::Nudge(2.0, 1.0));
    settle(&mut desk);
    let moved = plan_of(&desk);
    for back in [Some(REDO), None] {
        press(&mut desk, UNDO);
        press(&mut desk, UNDO);
        desk.get_by_label("How much netting do you have?");
        assert_eq!(window(&desk).editor().deeds().1.len(), 2);
        match back {
            Some(keys) => press(&mut desk, keys),
            // Esc does not throw away what was taken back a moment ago.
            None => press(&mut desk, (Modifiers::NONE, Key::Escape)),
        }
        assert!(window(&desk).editor().question().is_none());
        press(&mut desk, REDO);
        assert_eq!(plan_of(&desk), moved);
        assert!(window(&desk).editor().save_state().is_unsaved());
    }
}

#[test]
fn the_way_back_to_the_example_is_where_it_was() {
    let mut desk = laid();
    press(&mut desk, UNDO);
    click_on(&mut desk, "Look round the example farm");
    settle(&mut desk);
    assert_eq!(plan_of(&desk), example());
    assert_eq!(window(&desk).editor().save_state(), SaveState::Example);
    assert!(!window(&desk).editor().can_undo() && !window(&desk).editor().can_redo());
}

#[test]
fn the_list_of_what_was_done_walks_over_the_question() {
    let mut editor = Editor::new(example(), Words::default());
    editor.receive(Message::AskRolls);
    editor.receive(Message::LayOut);
    editor.receive(Message::Pick(Some(drawing::Thing::Run { run: 0 })));
    editor.receive(Message::Nudge(2.0, 1.0));
    let last = editor.plan().clone();
    editor.receive(Message::GoTo(0));
    assert!(editor.question().is_some());
    editor.receive(Message::GoTo(usize::MAX));
    assert_eq!((editor.plan(), editor.question().is_none()), (&last, true));
    // Another plan that is opened has no question behind it.
    editor.receive(Message::Opened(Box::new(example()), None));
    editor.receive(Message::Undo);
    assert!(editor.question().is_none());
    assert_eq!(*editor.plan(), example());
}

#[test]
fn a_question_that_is_left_leaves_the_one_behind_the_plan() {
    let mut editor = Editor::new(example(), Words::default());
    editor.receive(Message::AskRolls);
    let two = editor.question().unwrap().rolls;
    editor.receive(Message::LayOut);
    editor.receive(Message::AskRolls);
    editor.receive(Message::Rolls(plan::Rolls { count: 7, ..two }));
    editor.receive(Message::Escape);
    assert!(editor.question().is_none());
    editor.receive(Message::Undo);
    assert_eq!(editor.question().unwrap().rolls, two);
}
