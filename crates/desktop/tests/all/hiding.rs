//! What is hidden and what is locked, whatever it is.

use crate::hand;
use crate::hand::many::*;
use crate::hand::{example, spot, window};
use desktop::editor::{Editor, ManyMessage, Message, Page};
use drawing::Thing;
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable;
use plan::{Deed, Point};
use words::Words;
use words::texts::Window as Text;

#[test]
fn what_is_hidden_is_not_drawn_and_counts() {
    let mut editor = editor();
    let volts = editor.workup().runs[0].line_m;
    let drawn = |editor: &Editor, thing: Thing| editor.drawing().shapes().any(|shape| shape.thing == Some(thing));
    assert!(drawn(&editor, RUN) && drawn(&editor, POND) && drawn(&editor, LINE));
    pick(&mut editor, &[RUN, POND, LINE]);
    many(&mut editor, ManyMessage::HidePicked);
    assert!(!drawn(&editor, RUN) && !drawn(&editor, POND) && !drawn(&editor, LINE) && drawn(&editor, WELL));
    assert!(editor.drawing().shapes().all(|shape| shape.run.is_none()), "nothing of the run is left");
    assert_eq!(editor.workup().runs[0].line_m, volts);
    let found = |editor: &Editor| editor.findings().plan.iter().any(|finding| finding.id == "hidden-on-map");
    assert!(found(&editor));
    let near = editor.findings().runs[0].iter().any(|finding| finding.id.starts_with("public-way"));
    assert!(near || !editor.findings().runs[0].is_empty(), "its findings stay");
    let again = plan::read(&plan::write(editor.plan())).unwrap().plan;
    assert!(again.runs[0].hidden && again.ground.keep_outs[0].hidden && again.ground.hazards[0].hidden);
    many(&mut editor, ManyMessage::ShowAll);
    assert_eq!(*editor.plan(), example());
    assert!(!found(&editor));
    assert_eq!(editor.deeds().0, [Deed::Hide, Deed::Hide]);
}

#[test]
fn what_is_locked_is_picked_and_stays() {
    let mut desk = desk(Page::Ground);
    let pond = spot(&desk, Point::new(90.0, 44.0));
    hand::click(&mut desk, pond);
    press(&mut desk, Modifiers::NONE, Key::K);
    let locked = window(&desk).editor().plan().clone();
    assert!(locked.ground.keep_outs[0].locked);
    desk.event(egui::Event::PointerMoved(pond));
    desk.run();
    let said = Words::default().text(Text::IsLocked);
    assert!(desk.query_by_label(said).is_some(), "the pointer on it is told before anything is tried");
    for key in [Key::ArrowLeft, Key::Delete, Key::CloseBracket] {
        press(&mut desk, Modifiers::NONE, key);
        assert_eq!(window(&desk).editor().notice(), Some(Text::IsLocked), "{key:?}");
        assert_eq!(*window(&desk).editor().plan(), locked, "{key:?}");
        assert_eq!(window(&desk).editor().picked(), Some(POND));
    }
    hand::drag(&mut desk, pond, pond + vec2(40.0, 0.0));
    assert_eq!(*window(&desk).editor().plan(), locked);
    assert_eq!(window(&desk).editor().notice(), Some(Text::IsLocked), "the drag says why");
    // Of several, what is not locked goes.
    let editor = desk.state_mut().as_mut().unwrap();
    editor.say(Message::Many(ManyMessage::Also(WELL)));
    editor.say(Message::Nudge(1.0, 0.0));
    let moved = window(&desk).editor().plan().clone();
    assert_eq!(moved.ground.keep_outs[0], locked.ground.keep_outs[0]);
    assert_ne!(moved.ground.keep_outs[1], locked.ground.keep_outs[1]);
    assert_eq!(window(&desk).editor().notice(), Some(Text::SomeAreLocked));
}

#[test]
fn all_that_is_drawn_can_be_hidden_and_shown_the_paddock_and_the_coop_too() {
    let mut editor = Editor::new(drawn_on(), Words::default());
    let drawn = |editor: &Editor, thing: Thing| {
        editor.drawing().shapes().any(|shape| shape.thing.is_some_and(|one| one.whole() == thing))
    };
    let counted = |editor: &Editor| {
        let found = editor.findings().plan.iter().find(|finding| finding.id == "hidden-on-map");
        found.map(|finding| finding.message.clone()).unwrap_or_default()
    };
    for (number, thing) in [WALL, Thing::Boundary, COOP, SHADE, WORDS, PICTURE].into_iter().enumerate() {
        assert!(drawn(&editor, thing), "{thing:?}");
        many(&mut editor, ManyMessage::Hide(thing, true));
        assert!(!drawn(&editor, thing), "{thing:?}");
        // What no rule hangs on may be hidden without a word.
        let expected = match number {
            0 => "One thing",
            1 => "2 things",
            _ => "3 things",
        };
        assert!(counted(&editor).starts_with(expected), "{thing:?}: {}", counted(&editor));
    }
    let again = plan::read(&plan::write(editor.plan())).unwrap().plan;
    assert_eq!(again, *editor.plan());
    assert!(again.ground.boundary_hidden && again.coop.as_ref().is_some_and(|coop| coop.hidden));
    assert!(!editor.view().underlay, "nothing shines through");
    many(&mut editor, ManyMessage::ShowAll);
    assert_eq!(*editor.plan(), drawn_on());
}

#[test]
fn all_that_is_drawn_can_be_locked_and_a_locked_coop_stays_where_its_run_is_moved() {
    let mut editor = Editor::new(drawn_on(), Words::default());
    let all = [WALL, SHADE, WORDS, PICTURE, Thing::Boundary, COOP];
    for thing in all {
        many(&mut editor, ManyMessage::Lock(thing, true));
    }
    let locked = editor.plan().clone();
    let parts = [
        Thing::WallCorner { wall: 0, vertex: 0 },
        Thing::ShadeCorner { shade: 0, vertex: 0 },
        Thing::BoundaryCorner { vertex: 0 },
        Thing::BoundarySide { side: 0 },
        Thing::CoopDoor,
    ];
    for thing in all.into_iter().chain(parts) {
        for said in [Message::Nudge(1.0, 1.0), Message::Turn(10.0), Message::Remove] {
            editor.receive(Message::Pick(Some(thing)));
            editor.receive(said);
            assert_eq!(editor.notice(), Some(Text::IsLocked), "{thing:?}");
        }
        editor.receive(Message::Grab(thing, Point::new(0.0, 0.0)));
        editor.receive(Message::Drag(Point::new(5.0, 5.0)));
        editor.receive(Message::Drop);
        assert_eq!(*editor.plan(), locked, "{thing:?}");
    }
    // The one run round the coop: alone, and with another.
    let coop = locked.coop.clone();
    editor.receive(Message::Pick(Some(RUN)));
    editor.receive(Message::Nudge(1.0, 0.0));
    pick(&mut editor, &[RUN, POND]);
    editor.receive(Message::Nudge(1.0, 0.0));
    assert_eq!(editor.plan().coop, coop);
    assert!((editor.plan().runs[0].outline[0].east_m - locked.runs[0].outline[0].east_m - 2.0).abs() < 1e-9);
}

#[test]
fn further_coops_are_moved_hidden_and_taken_out_by_themselves() {
    let mut plan = example();
    plan.other_coops = vec![plan::Coop::new("second", Point::new(20.0, 60.0))];
    let mut editor = Editor::new(plan.clone(), Words::default());
    let second = Thing::Coop { coop: 1 };
    editor.receive(Message::Pick(Some(second)));
    editor.receive(Message::Nudge(2.0, 1.0));
    assert_eq!(editor.plan().other_coops[0].at, Point::new(22.0, 61.0));
    assert_eq!(editor.plan().coop, plan.coop);
    many(&mut editor, ManyMessage::HidePicked);
    assert!(editor.plan().other_coops[0].hidden && !editor.plan().coop.as_ref().unwrap().hidden);
    editor.receive(Message::Remove);
    assert_eq!((editor.plan().other_coops.len(), editor.plan().coop.is_some()), (0, true));
    editor.receive(Message::Pick(Some(COOP)));
    editor.receive(Message::Remove);
    assert_eq!(editor.notice(), Some(Text::CoopInUse));
    (0..3).for_each(|_| editor.receive(Message::Undo));
    assert_eq!(*editor.plan(), plan);
}

#[test]
fn damp_ground_is_picked_by_a_rectangle_copied_hidden_with_a_word_and_locked() {
    let mut editor = Editor::new(with_hollow(), Words::default());
    editor.receive(Message::Open(Page::Ground));
    many(&mut editor, ManyMessage::Within(Point::new(1.0, 1.0), Point::new(11.5, 10.0), false));
    assert_eq!(editor.chosen(), [HOLLOW]);
    many(&mut editor, ManyMessage::Copy);
    let text = editor.take_copied().unwrap();
    let mut other = Editor::new(plan::Plan::default(), Words::default());
    many(&mut other, ManyMessage::Paste(text, None));
    assert_eq!(other.plan().ground.damp[0].outline[0], Point::new(5.0, -1.0), "three metres east and south");
    assert_eq!(other.plan().ground.damp[0].name, "Hollow");
    many(&mut editor, ManyMessage::Copy);
    let text = editor.take_copied().unwrap();
    many(&mut editor, ManyMessage::Paste(text, None));
    editor.receive(Message::Duplicate);
    let names: Vec<&str> = editor.plan().ground.damp.iter().map(|one| one.name.as_str()).collect();
    assert_eq!(names, ["Hollow", "Hollow 2", "Hollow 3"]);
    (0..2).for_each(|_| editor.receive(Message::Undo));
    many(&mut editor, ManyMessage::Within(Point::new(10.0, 1.0), Point::new(11.5, 3.0), false));
    assert_eq!(editor.chosen(), [Thing::DampCorner { damp: 0, vertex: 1 }]);
    // Stakes count by it, so that it is not hidden without a word.
    many(&mut editor, ManyMessage::Hide(HOLLOW, true));
    assert!(editor.findings().plan.iter().any(|finding| finding.id == "hidden-on-map"));
    assert!(!editor.drawing().shapes().any(|shape| shape.thing.is_some_and(|one| one.whole() == HOLLOW)));
    many(&mut editor, ManyMessage::ShowAll);
    assert_eq!(*editor.plan(), with_hollow());
    many(&mut editor, ManyMessage::Lock(HOLLOW, true));
    for thing in [HOLLOW, Thing::DampCorner { damp: 0, vertex: 0 }, Thing::DampSide { damp: 0, side: 0 }] {
        editor.receive(Message::Pick(Some(thing)));
        editor.receive(Message::Nudge(1.0, 1.0));
        assert_eq!(editor.notice(), Some(Text::IsLocked), "{thing:?}");
    }
}
