//! Things doubled, copied, cut and pasted as the text of a plan.

use crate::hand;
use crate::hand::many::*;
use crate::hand::{example, spot, window};
use desktop::editor::{Editor, ManyMessage, Message, Page};
use drawing::Thing;
use egui::{Event, Key, Modifiers};
use plan::{Deed, Point};
use words::Words;
use words::texts::Window as Text;

#[test]
fn copies_of_a_keep_out_have_names_of_their_own() {
    let mut plan = example();
    plan.ground.keep_outs[0].name = "Old well".to_owned();
    let mut editor = Editor::new(plan, Words::default());
    editor.receive(Message::Pick(Some(Thing::KeepOut { keep_out: 0 })));
    editor.receive(Message::Duplicate);
    editor.receive(Message::Pick(Some(Thing::KeepOut { keep_out: 0 })));
    editor.receive(Message::Many(ManyMessage::Copy));
    let text = editor.take_copied().unwrap();
    editor.receive(Message::Many(ManyMessage::Paste(text, None)));
    let names: Vec<&str> = editor.plan().ground.keep_outs.iter().map(|one| one.name.as_str()).collect();
    assert!(names.contains(&"Old well 2") && names.contains(&"Old well 3"), "{names:?}");
}

#[test]
fn several_are_doubled_and_the_doubles_are_picked() {
    let mut editor = editor();
    pick(&mut editor, &[POND, RUN]);
    editor.receive(Message::Duplicate);
    let plan = editor.plan();
    assert_eq!((plan.runs.len(), plan.ground.keep_outs.len()), (2, 3));
    assert_eq!(plan.runs[1].name, "Round Quince House 2");
    assert_ne!(plan.runs[1].id, plan.runs[0].id);
    let mut chosen = editor.chosen();
    chosen.sort_unstable();
    assert_eq!(chosen, [Thing::Run { run: 1 }, Thing::KeepOut { keep_out: 2 }]);
    assert_eq!(editor.deeds().0, [Deed::Duplicate]);
}

#[test]
fn what_is_copied_is_a_plan_in_text_and_is_pasted_beside_or_at_the_pointer() {
    let mut desk = desk(Page::Ground);
    let well = spot(&desk, Point::new(122.5, 35.5));
    hand::click(&mut desk, well);
    let text = copy(&mut desk, Event::Copy);
    let read = plan::read(text.as_bytes()).unwrap().plan;
    assert_eq!(read.ground.keep_outs, [example().ground.keep_outs[1].clone()]);
    assert!(read.readings.is_empty() && read.runs.is_empty() && read.store.nets.is_empty());

    desk.event(Event::Paste(text.clone()));
    desk.run();
    let plan = window(&desk).editor().plan().clone();
    assert_eq!(plan.ground.keep_outs[2].outline[0], Point::new(124.0, 31.0), "three metres east and south");
    assert_eq!(window(&desk).editor().picked(), Some(Thing::KeepOut { keep_out: 2 }));
    assert_eq!(window(&desk).editor().deeds().0, [Deed::Paste]);

    let here = Point::new(40.0, 70.0);
    let at = spot(&desk, here);
    desk.event(Event::PointerMoved(at));
    desk.run();
    desk.event_modifiers(Event::Paste(text), Modifiers::SHIFT);
    desk.run();
    let pasted = &window(&desk).editor().plan().ground.keep_outs[3].outline;
    let middle = Point::new(pasted[0].east_m.midpoint(pasted[1].east_m), pasted[1].north_m.midpoint(pasted[2].north_m));
    assert!((middle.east_m - here.east_m).abs() < 0.2 && (middle.north_m - here.north_m).abs() < 0.2, "{middle:?}");
}

#[test]
fn a_run_goes_into_another_plan_without_what_that_one_lacks() {
    let mut editor = editor();
    pick(&mut editor, &[RUN]);
    many(&mut editor, ManyMessage::Copy);
    let text = editor.take_copied().unwrap();
    assert!(editor.take_copied().is_none(), "once");
    let mut other = Editor::new(plan::Plan::default(), Words::default());
    many(&mut other, ManyMessage::Paste(text.clone(), None));
    let run = &other.plan().runs[0];
    assert_eq!((run.nets.clone(), run.energizer.clone(), run.coop.clone()), (None, None, None));
    assert!(plan::read(&plan::write(other.plan())).is_ok(), "what was pasted can be saved and read");
    // Twice into its own plan: ids are made free.
    many(&mut editor, ManyMessage::Paste(text.clone(), None));
    many(&mut editor, ManyMessage::Paste(text, None));
    assert!(plan::read(&plan::write(editor.plan())).is_ok());
    assert_eq!(editor.plan().runs.len(), 3);
    assert!(editor.plan().runs[1].nets.is_some(), "its own store has the nets");
}

#[test]
fn cut_takes_out_and_what_is_no_plan_is_refused_in_one_sentence() {
    let mut desk = desk(Page::Ground);
    let well = spot(&desk, Point::new(122.5, 35.5));
    hand::click(&mut desk, well);
    let text = copy(&mut desk, Event::Cut);
    assert!(plan::read(text.as_bytes()).is_ok());
    assert_eq!(window(&desk).editor().plan().ground.keep_outs.len(), 1);
    let before = window(&desk).editor().plan().clone();
    for bad in
        ["", "eggs: 12", "{\"format\":\"netfold-plan\",\"version\":1}", "{\"type\":\"FeatureCollection\"}", "[1e999]"]
    {
        desk.event(Event::Paste(bad.to_owned()));
        desk.run();
        assert_eq!(*window(&desk).editor().plan(), before, "{bad}");
        assert_eq!(window(&desk).editor().notice(), Some(Text::NothingToPaste), "{bad}");
    }
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert_eq!(*window(&desk).editor().plan(), example());
}

#[test]
fn what_is_drawn_on_the_ground_is_picked_by_a_rectangle_and_copied_but_the_picture() {
    let mut editor = Editor::new(drawn_on(), Words::default());
    editor.receive(Message::Open(Page::Ground));
    many(&mut editor, ManyMessage::Within(Point::new(8.0, 70.0), Point::new(78.0, 58.0), false));
    let mut chosen = editor.chosen();
    chosen.sort_unstable();
    assert_eq!(chosen, [WALL, SHADE]);
    pick(&mut editor, &[PICTURE]);
    many(&mut editor, ManyMessage::Copy);
    assert_eq!(editor.notice(), Some(Text::NothingToCopy));
    pick(&mut editor, &[WALL, Thing::ShadeCorner { shade: 0, vertex: 1 }, WORDS, PICTURE]);
    many(&mut editor, ManyMessage::Copy);
    let text = editor.take_copied().unwrap();
    let mut other = Editor::new(plan::Plan::default(), Words::default());
    many(&mut other, ManyMessage::Paste(text, None));
    let plan = other.plan();
    assert_eq!(plan.walls[0].path[0], Point::new(13.0, 59.0), "three metres east and south");
    assert_eq!(plan.ground.shade[0].outline[0], Point::new(73.0, 57.0));
    assert_eq!((plan.labels[0].at, plan.labels[0].text.as_str()), (Point::new(18.0, 37.0), "Trough"));
    assert_eq!((plan.underlay.as_ref(), other.chosen().len()), (None, 3));
    other.receive(Message::Undo);
    assert_eq!(*other.plan(), plan::Plan::default());
}
