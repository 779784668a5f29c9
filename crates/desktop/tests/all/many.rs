//! Several things at once: picked, moved, turned, taken out.

use crate::hand;
use crate::hand::many::*;
use crate::hand::{Desk, example, on_page, spot, window};
use desktop::editor::{Editor, ManyMessage, Message, Page};
use drawing::Thing;
use egui::{Key, Modifiers, vec2};
use plan::{Deed, Point};
use words::Words;

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
