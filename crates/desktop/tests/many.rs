//! Several things at once: picked, moved, turned, taken out, copied and pasted; hidden and locked.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod hand;

use desktop::editor::{Editor, ManyMessage, Message, Page};
use drawing::Thing;
use egui::{Event, Key, Modifiers, OutputCommand, PointerButton, Pos2, vec2};
use hand::{Desk, example, on_page, spot, window};
use plan::{Deed, Point};
use words::Words;
use words::texts::Window as Text;

const POND: Thing = Thing::KeepOut { keep_out: 0 };
const WELL: Thing = Thing::KeepOut { keep_out: 1 };
const LINE: Thing = Thing::Hazard { hazard: 0 };
const RUN: Thing = Thing::Run { run: 0 };
const COOP: Thing = Thing::Coop { coop: 0 };

fn desk(page: Page) -> Desk {
    on_page(example(), page, [1280.0, 800.0], Words::default())
}

fn editor() -> Editor {
    Editor::new(example(), Words::default())
}

fn many(editor: &mut Editor, said: ManyMessage) {
    editor.receive(Message::Many(said));
}

fn pick(editor: &mut Editor, things: &[Thing]) {
    editor.receive(Message::Pick(None));
    for &thing in things {
        many(editor, ManyMessage::Also(thing));
    }
}

fn click_with(desk: &mut Desk, at: Pos2, modifiers: Modifiers) {
    desk.event(Event::PointerMoved(at));
    desk.run();
    for pressed in [true, false] {
        desk.event_modifiers(
            Event::PointerButton { pos: at, button: PointerButton::Primary, pressed, modifiers },
            modifiers,
        );
        desk.run();
    }
}

fn drag_with(desk: &mut Desk, from: Pos2, to: Pos2, modifiers: Modifiers) {
    let button = |desk: &Desk, pos: Pos2, pressed: bool| {
        desk.event_modifiers(
            Event::PointerButton { pos, button: PointerButton::Primary, pressed, modifiers },
            modifiers,
        );
    };
    desk.event(Event::PointerMoved(from));
    desk.run();
    button(desk, from, true);
    desk.run();
    for step in 1..=4 {
        desk.event_modifiers(Event::PointerMoved(from + (to - from) * step as f32 / 4.0), modifiers);
        desk.run();
    }
    button(desk, to, false);
    desk.run();
}

fn press(desk: &mut Desk, modifiers: Modifiers, key: Key) {
    desk.key_press_modifiers(modifiers, key);
    desk.run();
}

fn chosen(desk: &Desk) -> Vec<Thing> {
    let mut chosen = window(desk).editor().chosen();
    chosen.sort_unstable();
    chosen
}

/// What went to the clipboard in the last frame.
fn copied(desk: &Desk) -> Option<String> {
    let commands = &desk.output().platform_output.commands;
    commands.iter().rev().find_map(|command| match command {
        OutputCommand::CopyText(text) => Some(text.clone()),
        _ => None,
    })
}

/// Copies what is picked: the frame of the key itself is the one that has the command.
fn copy(desk: &mut Desk, event: Event) -> String {
    desk.event(event);
    for _ in 0..4 {
        desk.step();
        if let Some(text) = copied(desk) {
            desk.run();
            return text;
        }
    }
    String::new()
}

#[test]
fn clicks_with_shift_pick_more_and_let_go() {
    let mut desk = desk(Page::Ground);
    let (pond, well) = (spot(&desk, Point::new(90.0, 44.0)), spot(&desk, Point::new(122.5, 35.5)));
    hand::click(&mut desk, pond);
    assert_eq!(chosen(&desk), [POND]);
    click_with(&mut desk, well, Modifiers::SHIFT);
    assert_eq!(chosen(&desk), [POND, WELL]);
    assert_eq!(window(&desk).editor().picked(), Some(WELL), "the last is foremost");
    click_with(&mut desk, well, Modifiers::SHIFT);
    assert_eq!(chosen(&desk), [POND]);
    click_with(&mut desk, well, Modifiers::SHIFT);
    press(&mut desk, Modifiers::NONE, Key::Escape);
    assert!(chosen(&desk).is_empty());
}

#[test]
fn a_rectangle_picks_what_lies_wholly_inside() {
    let mut desk = desk(Page::Ground);
    let corner = |desk: &Desk, east: f64, north: f64| spot(desk, Point::new(east, north));
    // Round pond and well, over part of the overhead line; from free ground.
    let (from, to) = (corner(&desk, 76.0, 62.0), corner(&desk, 128.0, 27.0));
    drag_with(&mut desk, from, to, Modifiers::SHIFT);
    assert_eq!(chosen(&desk), [POND, WELL]);
    press(&mut desk, Modifiers::NONE, Key::Escape);
    // The same by its key, without Shift.
    press(&mut desk, Modifiers::NONE, Key::B);
    assert!(window(&desk).editor().picks_by_rectangle());
    drag_with(&mut desk, from, to, Modifiers::NONE);
    assert_eq!(chosen(&desk), [POND, WELL]);
    assert!(!window(&desk).editor().picks_by_rectangle(), "one rectangle, then the hand picks again");
    let empty = (corner(&desk, 5.0, 60.0), corner(&desk, 12.0, 55.0));
    drag_with(&mut desk, empty.0, empty.1, Modifiers::SHIFT);
    assert_eq!(chosen(&desk), [POND, WELL], "with Shift nothing is let go");
}

#[test]
fn a_rectangle_that_holds_no_whole_picks_corners_which_move_together() {
    let mut desk = desk(Page::Run);
    let corner = |desk: &Desk, east: f64, north: f64| spot(desk, Point::new(east, north));
    press(&mut desk, Modifiers::NONE, Key::B);
    let (from, to) = (corner(&desk, 20.0, 20.0), corner(&desk, 62.0, 12.0));
    drag_with(&mut desk, from, to, Modifiers::NONE);
    let two = [Thing::RunCorner { run: 0, vertex: 0 }, Thing::RunCorner { run: 0, vertex: 1 }];
    assert_eq!(chosen(&desk), two);
    press(&mut desk, Modifiers::NONE, Key::ArrowDown);
    let (was, is) = (example(), window(&desk).editor().plan().clone());
    for vertex in 0..5 {
        let by_m = was.runs[0].outline[vertex].north_m - is.runs[0].outline[vertex].north_m;
        assert!((by_m - if vertex < 2 { 0.1 } else { 0.0 }).abs() < 1e-9, "{vertex}: {by_m}");
    }
    assert_eq!(window(&desk).editor().deeds().0, [Deed::Move]);
}

#[test]
fn all_of_a_page_are_picked_by_ctrl_a() {
    let mut desk = desk(Page::Ground);
    press(&mut desk, Modifiers::COMMAND, Key::A);
    assert_eq!(chosen(&desk), [POND, WELL, LINE, Thing::Hazard { hazard: 1 }, COOP]);
    press(&mut desk, Modifiers::NONE, Key::Num2);
    press(&mut desk, Modifiers::COMMAND, Key::A);
    assert_eq!(chosen(&desk), [RUN]);
}

#[test]
fn several_are_dragged_as_one_step() {
    let mut desk = desk(Page::Ground);
    let (pond, well) = (spot(&desk, Point::new(90.0, 44.0)), spot(&desk, Point::new(122.5, 35.5)));
    hand::click(&mut desk, pond);
    click_with(&mut desk, well, Modifiers::SHIFT);
    let was = window(&desk).editor().plan().clone();
    hand::drag(&mut desk, pond, pond + vec2(30.0, 18.0));
    let is = window(&desk).editor().plan().clone();
    let by = |index: usize| {
        let (was, is) = (was.ground.keep_outs[index].outline[0], is.ground.keep_outs[index].outline[0]);
        (is.east_m - was.east_m, is.north_m - was.north_m)
    };
    assert!(by(0).0 > 1.0 && by(0).1 < -0.5, "{:?}", by(0));
    assert!((by(0).0 - by(1).0).abs() < 1e-9 && (by(0).1 - by(1).1).abs() < 1e-9);
    assert_eq!(window(&desk).editor().deeds().0, [Deed::Move]);
    press(&mut desk, Modifiers::COMMAND, Key::Z);
    assert_eq!(*window(&desk).editor().plan(), was);
}

#[test]
fn several_of_one_list_move_turn_and_go_together() {
    let mut editor = editor();
    let was = editor.plan().clone();
    pick(&mut editor, &[POND, LINE, WELL, RUN]);
    editor.receive(Message::Nudge(1.0, -2.0));
    let is = editor.plan().clone();
    for (one, other) in [
        (was.ground.keep_outs[0].outline[3], is.ground.keep_outs[0].outline[3]),
        (was.ground.keep_outs[1].outline[2], is.ground.keep_outs[1].outline[2]),
        (was.ground.hazards[0].path[1], is.ground.hazards[0].path[1]),
        (was.runs[0].outline[4], is.runs[0].outline[4]),
        // The coop of the one run round it goes along.
        (was.coop.clone().unwrap().at, is.coop.clone().unwrap().at),
    ] {
        assert!((other.east_m - one.east_m - 1.0).abs() < 1e-9 && (other.north_m - one.north_m + 2.0).abs() < 1e-9);
    }
    assert_eq!(is.ground.hazards[1], was.ground.hazards[1]);
    editor.receive(Message::Turn(90.0));
    let turned = editor.plan().clone();
    let apart = |plan: &plan::Plan| {
        let (one, other) = (plan.ground.keep_outs[0].outline[0], plan.ground.keep_outs[1].outline[0]);
        (one.east_m - other.east_m).hypot(one.north_m - other.north_m)
    };
    assert!((apart(&turned) - apart(&is)).abs() < 1e-9, "turned about one middle");
    assert_ne!(turned, is);
    editor.receive(Message::Remove);
    let left = editor.plan();
    assert_eq!((left.runs.len(), left.ground.keep_outs.len(), left.ground.hazards.len()), (0, 0, 1));
    assert_eq!(left.ground.hazards[0].name, "Footpath");
    assert!(editor.chosen().is_empty());
    assert_eq!(editor.deeds().0, [Deed::Move, Deed::Turn, Deed::Remove]);
    (0..3).for_each(|_| editor.receive(Message::Undo));
    assert_eq!(*editor.plan(), was);
}

#[test]
fn ctrl_and_an_arrow_move_by_a_panel_of_the_net() {
    let mut desk = desk(Page::Run);
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(RUN)));
    let lay = window(&desk).editor().run().unwrap().1.lay.clone().unwrap();
    let kind = example().net_kind(&lay.nets[0].kind).cloned().unwrap();
    let panel_m = kind.length_m / f64::from(kind.panels.unwrap());
    press(&mut desk, Modifiers::COMMAND, Key::ArrowRight);
    let moved_m = window(&desk).editor().plan().runs[0].outline[0].east_m - example().runs[0].outline[0].east_m;
    assert!((moved_m - panel_m).abs() < 1e-9, "{moved_m} for {panel_m}");
    assert_eq!(window(&desk).editor().deeds().0, [Deed::Move]);
}

#[test]
fn several_are_doubled_and_the_doubles_are_picked() {
    let mut editor = editor();
    pick(&mut editor, &[POND, RUN]);
    editor.receive(Message::Duplicate);
    let plan = editor.plan();
    assert_eq!((plan.runs.len(), plan.ground.keep_outs.len()), (2, 3));
    assert_eq!(plan.runs[1].name, "Round Quince House, a second");
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
fn what_is_hidden_is_not_drawn_and_counts() {
    let mut editor = editor();
    let volts = editor.workup().runs[0].line_m;
    let drawn = |editor: &Editor, thing: Thing| editor.drawing().shapes.iter().any(|shape| shape.thing == Some(thing));
    assert!(drawn(&editor, RUN) && drawn(&editor, POND) && drawn(&editor, LINE));
    pick(&mut editor, &[RUN, POND, LINE]);
    many(&mut editor, ManyMessage::HidePicked);
    assert!(!drawn(&editor, RUN) && !drawn(&editor, POND) && !drawn(&editor, LINE) && drawn(&editor, WELL));
    assert!(editor.drawing().shapes.iter().all(|shape| shape.run.is_none()), "nothing of the run is left");
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
