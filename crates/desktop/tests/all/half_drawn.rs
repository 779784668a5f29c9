//! What is half drawn is taken back corner by corner, stays in hand while pages are turned, and comes back from another tool.

use crate::hand::{self, Desk, click_on, plan_of, say, window};
use crate::unrolling::{clicks, unrolling};
use desktop::editor::{Message, Page};
use desktop::tool::Tool;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use plan::Point;

/// A page is often opened for a figure that the next corner wants, so it takes nothing out of the hand; another tool does,
/// and what it took the place of comes back by undoing, in its place among the steps of the plan.
#[test]
fn a_line_stays_in_hand_while_pages_are_turned_and_is_laid_by_for_another_tool() {
    let mut desk = unrolling();
    let before = plan_of(&desk);
    clicks(&mut desk, Point::new(15.0, 20.0));
    clicks(&mut desk, Point::new(45.0, 20.0));
    let set = corners(&desk);
    click_on(&mut desk, "Ground");
    assert_eq!(window(&desk).editor().page(), Page::Ground);
    assert!(window(&desk).editor().in_hand().is_some());
    clicks(&mut desk, Point::new(45.0, 45.0));
    assert_eq!(corners(&desk)[..2], set[..], "and is drawn on there");
    press(&mut desk, Modifiers::NONE, Key::Backspace);

    click_on(&mut desk, "Keep-out");
    assert!(window(&desk).editor().in_hand().is_none());
    desk.get_by_label("What was half drawn is laid by: Ctrl Z takes it back in hand.");
    for (east, north) in [(60.0, 20.0), (66.0, 20.0), (66.0, 26.0)] {
        clicks(&mut desk, Point::new(east, north));
    }
    press(&mut desk, Modifiers::NONE, Key::Enter);
    assert_eq!(plan_of(&desk).ground.keep_outs.len(), 1);
    assert!(corners(&desk).is_empty());
    // The keep-out was drawn after it: that goes first.
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert_eq!(plan_of(&desk), before);
    assert!(corners(&desk).is_empty());
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert_eq!(corners(&desk), set);
    assert!(window(&desk).editor().in_hand().is_some());
    // Left by Esc it is gone for good.
    press(&mut desk, Modifiers::NONE, Key::Escape);
    assert!(!window(&desk).editor().can_undo());
    assert_eq!(plan_of(&desk), before);
}

fn press(desk: &mut Desk, modifiers: Modifiers, key: Key) {
    desk.key_press_modifiers(modifiers, key);
    desk.run();
}

/// The corners that are set.
fn corners(desk: &Desk) -> Vec<Point> {
    match window(desk).editor().tool() {
        Tool::Outline { corners, .. } => corners.clone(),
        _ => Vec::new(),
    }
}

#[test]
fn undoing_takes_up_corners_before_any_step_of_the_plan_and_redoing_sets_them_again() {
    let again = Modifiers::COMMAND | Modifiers::SHIFT;
    let mut desk = unrolling();
    say(&mut desk, Message::Make(plan::Edit::SetTitle { title: "first".to_owned() }));
    say(&mut desk, Message::Make(plan::Edit::SetTitle { title: "second".to_owned() }));
    clicks(&mut desk, Point::new(15.0, 20.0));
    clicks(&mut desk, Point::new(45.0, 20.0));
    let two = corners(&desk);
    assert_eq!(two.len(), 2);
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert_eq!(corners(&desk), two[..1]);
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert!(corners(&desk).is_empty());
    assert_eq!(plan_of(&desk).title, "second", "the plan beneath is as it was");
    assert!(window(&desk).editor().in_hand().is_some(), "the tool is as it was taken");
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert_eq!(plan_of(&desk).title, "first");
    // All of it again, in the order in which it was done.
    press(&mut desk, again, Key::Z);
    assert_eq!((plan_of(&desk).title.as_str(), corners(&desk).len()), ("second", 0));
    press(&mut desk, again, Key::Z);
    press(&mut desk, again, Key::Z);
    assert_eq!(corners(&desk), two);
    assert!(!window(&desk).editor().can_redo());
    // What Backspace takes up is set again as well; a corner that is set elsewhere instead is the last word.
    press(&mut desk, Modifiers::NONE, Key::Backspace);
    click_on(&mut desk, "Redo");
    assert_eq!(corners(&desk), two);
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    clicks(&mut desk, Point::new(15.0, 45.0));
    assert!(!window(&desk).editor().can_redo());
    click_on(&mut desk, "Undo");
    assert_eq!(corners(&desk), two[..1]);
}

#[test]
fn the_tape_takes_back_its_last_place_too() {
    let mut desk = unrolling();
    press(&mut desk, Modifiers::NONE, Key::Escape);
    press(&mut desk, Modifiers::NONE, Key::T);
    clicks(&mut desk, Point::new(15.0, 20.0));
    clicks(&mut desk, Point::new(45.0, 20.0));
    let places = |desk: &Desk| window(desk).editor().tool().set_count();
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert_eq!(places(&desk), 1);
    press(&mut desk, Modifiers::COMMAND, Key::Y);
    assert_eq!(places(&desk), 2);
}

#[test]
fn two_lines_that_were_laid_by_come_back_one_after_the_other() {
    let mut desk = unrolling();
    clicks(&mut desk, Point::new(15.0, 20.0));
    clicks(&mut desk, Point::new(45.0, 20.0));
    let run = corners(&desk);
    click_on(&mut desk, "Ground");
    click_on(&mut desk, "Keep-out");
    clicks(&mut desk, Point::new(60.0, 20.0));
    let keep_out = corners(&desk);
    click_on(&mut desk, "Shade");
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert_eq!(corners(&desk), keep_out);
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert_eq!(corners(&desk), run);
}

#[test]
fn what_is_laid_by_is_asked_about_before_the_plan_is_left() {
    let mut desk = unrolling();
    clicks(&mut desk, Point::new(15.0, 20.0));
    clicks(&mut desk, Point::new(45.0, 20.0));
    press(&mut desk, Modifiers::NONE, Key::T);
    press(&mut desk, Modifiers::COMMAND, Key::N);
    assert!(window(&desk).editor().has_unfinished());
    press(&mut desk, Modifiers::COMMAND, Key::O);
    assert!(hand::says(&desk, "half drawn"), "the question stands before the chooser");
}
