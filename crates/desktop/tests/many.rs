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

const WALL: Thing = Thing::Wall { wall: 0 };
const SHADE: Thing = Thing::Shade { shade: 0 };
const WORDS: Thing = Thing::Label { label: 0 };
const DROP: Thing = Thing::Drop { run: 0 };
const PICTURE: Thing = Thing::Underlay;

/// The example with a hedge, shade, words, a drop point and a picture beneath.
fn drawn_on() -> plan::Plan {
    let mut plan = example();
    let places = |all: &[(f64, f64)]| all.iter().copied().map(Point::from).collect::<Vec<_>>();
    let kind = Some(plan::WallKind::Hedge);
    plan.walls = vec![plan::Wall { path: places(&[(10.0, 62.0), (40.0, 66.0)]), kind, ..plan::Wall::default() }];
    let outline = places(&[(70.0, 60.0), (76.0, 60.0), (76.0, 64.0)]);
    plan.ground.shade = vec![plan::Shade { outline, ..plan::Shade::default() }];
    plan.labels = vec![plan::Label { at: Point::new(15.0, 40.0), text: "Trough".to_owned(), ..plan::Label::default() }];
    plan.runs[0].drop_at = Some(Point::new(12.0, 20.0));
    plan.underlay = Some(plan::Underlay {
        path: "air.png".to_owned(),
        sha256: String::new(),
        size_px: Some([160, 120]),
        world_m: Some(plan::World([0.5, 0.0, 0.0, -0.5, 0.25, 59.75])),
        opacity: None,
        by_eye: false,
        hidden: false,
        locked: false,
        rest: plan::Rest::new(),
    });
    plan
}

/// A place of each of what is drawn on the ground.
fn drawn_at(plan: &plan::Plan) -> Vec<Point> {
    let wall = plan.walls.first().map(|wall| wall.path[1]);
    let shade = plan.ground.shade.first().map(|shade| shade.outline[2]);
    let words = plan.labels.first().map(|label| label.at);
    let picture = plan.underlay.as_ref().map(|underlay| underlay.corners()[1]);
    [wall, shade, words, plan.runs.first().and_then(|run| run.drop_at), picture].into_iter().flatten().collect()
}

#[test]
fn walls_shade_words_drop_point_and_picture_move_turn_and_go_together() {
    let mut editor = Editor::new(drawn_on(), Words::default());
    let was = drawn_at(editor.plan());
    let five = [WALL, SHADE, WORDS, DROP, PICTURE];
    pick(&mut editor, &five);
    editor.receive(Message::Nudge(1.5, -2.5));
    let is = drawn_at(editor.plan());
    assert_eq!(is.len(), 5);
    for (was, is) in was.iter().zip(&is) {
        let by = (is.east_m - was.east_m, is.north_m - was.north_m);
        assert!((by.0 - 1.5).abs() < 1e-9 && (by.1 + 2.5).abs() < 1e-9, "{by:?}");
    }
    assert_eq!(editor.plan().runs[0].outline, example().runs[0].outline, "the run stays where its rolls are moved");
    editor.receive(Message::Turn(90.0));
    let turned = drawn_at(editor.plan());
    let apart = |one: Point, other: Point| (one.east_m - other.east_m).hypot(one.north_m - other.north_m);
    for pair in [[0, 1], [1, 2], [2, 3], [3, 4]] {
        let (was_m, is_m) = (apart(is[pair[0]], is[pair[1]]), apart(turned[pair[0]], turned[pair[1]]));
        assert!((was_m - is_m).abs() < 1e-9, "{pair:?}: {was_m} and {is_m}");
    }
    assert!(apart(is[0], turned[0]) > 1.0);
    editor.receive(Message::Remove);
    assert!(drawn_at(editor.plan()).is_empty());
    assert_eq!(editor.deeds().0, [Deed::Move, Deed::Turn, Deed::Remove]);
    (0..3).for_each(|_| editor.receive(Message::Undo));
    assert_eq!(*editor.plan(), drawn_on());
}

#[test]
fn a_run_and_its_drop_point_picked_together_both_go_and_corners_of_walls_by_themselves() {
    let mut editor = Editor::new(drawn_on(), Words::default());
    pick(
        &mut editor,
        &[DROP, RUN, Thing::WallCorner { wall: 0, vertex: 1 }, Thing::ShadeCorner { shade: 0, vertex: 0 }],
    );
    editor.receive(Message::Nudge(2.0, 0.0));
    let (was, is) = (drawn_on(), editor.plan().clone());
    assert_eq!(is.runs[0].drop_at, Some(Point::new(14.0, 20.0)), "once");
    assert!((is.runs[0].outline[0].east_m - was.runs[0].outline[0].east_m - 2.0).abs() < 1e-9);
    assert_eq!(is.walls[0].path, [was.walls[0].path[0], Point::new(42.0, 66.0)]);
    assert_eq!(is.ground.shade[0].outline[0], Point::new(72.0, 60.0));
    assert_eq!(is.ground.shade[0].outline[1..], was.ground.shade[0].outline[1..]);
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

#[test]
fn all_that_is_drawn_can_be_hidden_and_shown_the_paddock_and_the_coop_too() {
    let mut editor = Editor::new(drawn_on(), Words::default());
    let drawn = |editor: &Editor, thing: Thing| {
        editor.drawing().shapes.iter().any(|shape| shape.thing.is_some_and(|one| one.whole() == thing))
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

const GATE: Thing = Thing::Gate { run: 0, gate: 0 };
const GRASS: Thing = Thing::Zone { run: 0, branch: None, zone: 0 };
const BRANCH: Thing = Thing::Branch { run: 0, branch: 0 };

/// The joins of the example's run that lie farthest south-west and north-east.
fn far_joins() -> [Point; 2] {
    let editor = editor();
    let joins = editor.workup().runs[0].lay.as_ref().unwrap().join_places().into_iter().map(|(_, at)| at);
    let off_m = |at: &Point| at.east_m + at.north_m;
    let least = joins.clone().min_by(|one, other| off_m(one).total_cmp(&off_m(other))).unwrap();
    let most = joins.max_by(|one, other| off_m(one).total_cmp(&off_m(other))).unwrap();
    [least, most]
}

/// The example with a gate, a stretch of grass and a branch.
fn with_sliding() -> plan::Plan {
    let mut plan = example();
    let run = &mut plan.runs[0];
    run.gates = vec![plan::Gate { at: Some(far_joins()[0]), ..plan::Gate::new(plan::GateKind::Foot) }];
    run.leakage_zones = vec![plan::LeakageZone { from_m: 4.0, to_m: 12.0, s_per_m: 1e-4, rest: plan::Rest::new() }];
    let first = run.outline[0];
    run.branches = vec![plan::Branch {
        from_m: 0.0,
        outline: vec![first, Point::new(first.east_m - 10.0, first.north_m - 10.0)],
        nets: Vec::new(),
        leakage_zones: Vec::new(),
        faults: Vec::new(),
        rest: plan::Rest::new(),
    }];
    plan
}

#[test]
fn what_slides_goes_along_with_a_drag_of_several_each_on_its_own_line() {
    let mut desk = on_page(with_sliding(), Page::Ground, [1280.0, 800.0], Words::default());
    hand::settle(&mut desk);
    let say = |desk: &mut Desk, message: Message| {
        desk.state_mut().as_mut().unwrap().say(message);
        desk.run();
    };
    let was = window(&desk).editor().plan().clone();
    let (from_join, other) = (was.runs[0].gates[0].at.unwrap(), far_joins()[1]);
    say(&mut desk, Message::Pick(None));
    for thing in [POND, GRASS, BRANCH, GATE] {
        say(&mut desk, Message::Many(ManyMessage::Also(thing)));
    }
    say(&mut desk, Message::Open(Page::Ground));
    let by = (other.east_m - from_join.east_m, other.north_m - from_join.north_m);
    let from = Point::new(90.0, 44.0);
    let (at, to) = (spot(&desk, from), spot(&desk, Point::new(from.east_m + by.0, from.north_m + by.1)));
    hand::drag(&mut desk, at, to);
    let is = window(&desk).editor().plan().clone();
    let pond = (was.ground.keep_outs[0].outline[0], is.ground.keep_outs[0].outline[0]);
    assert!((pond.1.east_m - pond.0.east_m - by.0).abs() < 2.0, "{pond:?} by {by:?}");
    let apart = |one: Point, other: Point| (one.east_m - other.east_m).hypot(one.north_m - other.north_m);
    assert!(apart(is.runs[0].gates[0].at.unwrap(), other) < 0.01, "the gate went to the join where the hand led it");
    let (zone, zone_was) = (&is.runs[0].leakage_zones[0], &was.runs[0].leakage_zones[0]);
    assert_ne!(zone.from_m, zone_was.from_m);
    let lay = window(&desk).editor().workup().runs[0].lay.clone().unwrap();
    let long_m = care::fault_said::zone_m(&lay, zone);
    assert!((long_m - 8.0).abs() < 1e-6, "as long as it was: {long_m}");
    let (branch, branch_was) = (&is.runs[0].branches[0], &was.runs[0].branches[0]);
    assert!(branch.from_m > 0.0 && branch.from_m != branch_was.from_m);
    let hangs = lay.place_at(branch.from_m).unwrap();
    assert!(apart(branch.outline[0], hangs) < 1e-6, "it hangs on the line");
    assert!(
        (apart(branch.outline[0], branch.outline[1]) - apart(branch_was.outline[0], branch_was.outline[1])).abs()
            < 1e-9
    );
    assert_eq!(is.runs[0].outline, was.runs[0].outline);
    assert_eq!(window(&desk).editor().deeds().0, [Deed::Move], "one step");
    say(&mut desk, Message::Undo);
    assert_eq!(*window(&desk).editor().plan(), was);
}

#[test]
fn two_gates_of_one_run_do_not_stand_in_each_others_way() {
    let gate = |east_m: f64| plan::Gate { at: Some(Point::new(east_m, 0.0)), ..plan::Gate::new(plan::GateKind::Foot) };
    let run = plan::Run {
        id: "line".to_owned(),
        outline: vec![Point::new(0.0, 0.0), Point::new(200.0, 0.0)],
        closed: Some(false),
        nets: Some(vec!["roll".to_owned(); 4]),
        gates: vec![gate(50.0), gate(100.0)],
        ..plan::Run::default()
    };
    let mut plan = plan::Plan { runs: vec![run], ..plan::Plan::default() };
    plan.store.nets = vec![plan::NetKind { count: Some(4), ..plan::NetKind::new("roll", 50.0, 10) }];
    let mut editor = Editor::new(plan.clone(), Words::default());
    pick(&mut editor, &[GATE, Thing::Gate { run: 0, gate: 1 }]);
    editor.receive(Message::Grab(GATE, Point::new(50.0, 0.0)));
    let stand = |editor: &Editor| [0, 1].map(|gate| editor.plan().runs[0].gates[gate].at.unwrap().east_m.round());
    // One jump of the hand, from the first's join to the second's; and back.
    editor.receive(Message::Drag(Point::new(100.0, 0.0)));
    assert!(stand(&editor) == [100.0, 150.0], "{:?}", stand(&editor));
    assert!(editor.snapped().is_some(), "where a gate in the hand opens is said at the pointer");
    editor.receive(Message::Drag(Point::new(55.0, 1.0)));
    assert!(stand(&editor) == [50.0, 100.0], "{:?}", stand(&editor));
    editor.receive(Message::Drag(Point::new(95.0, 3.0)));
    editor.receive(Message::Drop);
    assert!(stand(&editor) == [100.0, 150.0], "{:?}", stand(&editor));
    editor.receive(Message::Undo);
    assert_eq!(*editor.plan(), plan);
}

#[test]
fn several_in_the_hand_are_caught_by_what_stands_and_the_reason_is_said_once() {
    let mut editor = editor();
    editor.receive(Message::Open(Page::Ground));
    pick(&mut editor, &[POND, WELL]);
    let was = editor.plan().clone();
    let grabbed = Point::new(122.5, 35.5);
    let drag = |editor: &mut Editor, east_m: f64, north_m: f64| {
        editor.receive(Message::Drag(Point::new(grabbed.east_m + east_m, grabbed.north_m + north_m)));
        let (was, is) = (&was.ground.keep_outs, &editor.plan().ground.keep_outs);
        let by = |index: usize| {
            let (was, is) = (was[index].outline[0], is[index].outline[0]);
            (is.east_m - was.east_m, is.north_m - was.north_m)
        };
        assert!((by(0).0 - by(1).0).abs() < 1e-9 && (by(0).1 - by(1).1).abs() < 1e-9, "as one");
        by(0)
    };
    editor.receive(Message::Grab(WELL, grabbed));
    assert!(editor.is_catchable());
    // The well's second corner, at (124, 34), to just beside the paddock's fourth, at (142, 46).
    let by = drag(&mut editor, 18.2, 12.1);
    assert!((by.0 - 18.0).abs() < 1e-9 && (by.1 - 12.0).abs() < 1e-9, "{by:?}");
    let reason = editor.snapped().map(|snapped| (snapped.at, snapped.reason.clone())).unwrap();
    assert_eq!(reason.0, Point::new(142.0, 46.0));
    assert!(reason.1.contains("corner 4"), "{}", reason.1);
    // The pond has no corner of its own to be caught by the well, nor the well by the pond: both are in the hand.
    let by = drag(&mut editor, 0.02, 0.01);
    assert!(by.0.abs() < 2.0);
    let own = |reason: &str| reason.contains("Pond") || reason.contains("well");
    assert!(editor.snapped().is_none_or(|one| !own(&one.reason)), "{:?}", editor.snapped());
    editor.receive(Message::Free(true));
    let by = drag(&mut editor, 18.2, 12.1);
    assert!((by.0 - 18.2).abs() < 1e-9 && editor.snapped().is_none(), "{by:?}");
    editor.receive(Message::Drop);
    assert_eq!(editor.deeds().0, [Deed::Move]);
    editor.receive(Message::Undo);
    assert_eq!(*editor.plan(), was);
}

const HOLLOW: Thing = Thing::Damp { damp: 0 };
const UNIT: Thing = Thing::Energizer { run: 0 };

/// The example with a hollow, and an energizer that stands beside its run.
fn with_hollow() -> plan::Plan {
    let mut plan = example();
    let outline = [(2.0, 2.0), (11.0, 2.0), (11.0, 9.0)].map(Point::from).to_vec();
    plan.ground.damp = vec![plan::Damp { name: "Hollow".to_owned(), outline, ..plan::Damp::default() }];
    plan.runs[0].energizer_at = Some(Point::new(12.0, 12.0));
    plan
}

#[test]
fn damp_ground_and_the_energizer_move_with_others_and_go_with_them() {
    let mut editor = Editor::new(with_hollow(), Words::default());
    pick(&mut editor, &[HOLLOW, UNIT, POND]);
    editor.receive(Message::Nudge(1.5, -2.5));
    let (was, is) = (with_hollow(), editor.plan().clone());
    assert_eq!(is.ground.damp[0].outline[1], Point::new(12.5, -0.5));
    assert_eq!(is.runs[0].energizer_at, Some(Point::new(13.5, 9.5)));
    assert_eq!(is.runs[0].outline, was.runs[0].outline, "its run stays");
    editor.receive(Message::Undo);
    // With its run it goes once, picked itself or not.
    for others in [[RUN, UNIT, HOLLOW], [RUN, HOLLOW, POND]] {
        pick(&mut editor, &others);
        editor.receive(Message::Nudge(2.0, 0.0));
        assert_eq!(editor.plan().runs[0].energizer_at, Some(Point::new(14.0, 12.0)), "{others:?}");
        editor.receive(Message::Undo);
    }
    pick(&mut editor, &[Thing::RunCorner { run: 0, vertex: 0 }, Thing::DampCorner { damp: 0, vertex: 2 }]);
    editor.receive(Message::Nudge(1.0, 0.0));
    assert_eq!(editor.plan().runs[0].energizer_at, was.runs[0].energizer_at, "a line takes no energizer along");
    assert_eq!(editor.plan().ground.damp[0].outline[2], Point::new(12.0, 9.0));
    assert_eq!(editor.plan().ground.damp[0].outline[..2], was.ground.damp[0].outline[..2]);
    editor.receive(Message::Undo);
    pick(&mut editor, &[HOLLOW, UNIT]);
    editor.receive(Message::Remove);
    assert!(editor.plan().ground.damp.is_empty() && editor.plan().runs[0].energizer_at.is_none());
    editor.receive(Message::Undo);
    assert_eq!(*editor.plan(), was);
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
    assert!(!editor.drawing().shapes.iter().any(|shape| shape.thing.is_some_and(|one| one.whole() == HOLLOW)));
    many(&mut editor, ManyMessage::ShowAll);
    assert_eq!(*editor.plan(), with_hollow());
    many(&mut editor, ManyMessage::Lock(HOLLOW, true));
    for thing in [HOLLOW, Thing::DampCorner { damp: 0, vertex: 0 }, Thing::DampSide { damp: 0, side: 0 }] {
        editor.receive(Message::Pick(Some(thing)));
        editor.receive(Message::Nudge(1.0, 1.0));
        assert_eq!(editor.notice(), Some(Text::IsLocked), "{thing:?}");
    }
}
