//! A line that is led over the ground: what was on it goes along, what it merely passes stays, and led back everything is
//! to the bit as it was.

use crate::hand;
use desktop::editor::{Editor, ManyMessage, Message, Page};
use drawing::Thing;
use plan::{
    Branch, Deed, Fault, FaultKind, Gate, GateKind, LeakageZone, NetKind, Pin, PinKind, Plan, Point, Rest, Run,
    SideSlope,
};
use words::Words;

fn at(east_m: f64, north_m: f64) -> Point {
    Point::new(east_m, north_m)
}

fn fault(at: Point) -> Fault {
    Fault { at, kind: FaultKind::Short, ohm: Some(50.0), lines: None, cause: None, rest: Rest::new() }
}

/// A square of 40 m with one of everything on its second side, a branch that hangs there, and beyond it things that stand
/// off the line: a fault of the run, one of the branch, the feed, a pin and a gate.
fn farm() -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(8), ..NetKind::new("long", 40.0, 16) });
    let zone = |from_m, to_m| LeakageZone { from_m, to_m, s_per_m: 1e-4, rest: Rest::new() };
    plan.runs.push(Run {
        id: "run".into(),
        outline: vec![at(0.0, 0.0), at(40.0, 0.0), at(40.0, 40.0), at(0.0, 40.0)],
        nets: Some(vec!["long".into(); 4]),
        feed_at: Some(at(47.0, 30.0)),
        faults: vec![fault(at(40.0, 20.0)), fault(at(47.0, 32.0))],
        gates: vec![Gate { at: Some(at(46.0, 36.0)), ..Gate::new(GateKind::Foot) }],
        pins: vec![Pin::new(PinKind::Join, at(40.0, 10.0)), Pin::new(PinKind::Join, at(48.0, 38.0))],
        leakage_zones: vec![zone(50.0, 60.0)],
        side_slopes: vec![SideSlope { rises_m: Some(0.0), ..SideSlope::at(at(39.0, 21.0)) }],
        branches: vec![Branch {
            from_m: 60.0,
            outline: vec![at(40.0, 20.0), at(60.0, 20.0), at(60.0, 30.0)],
            nets: vec!["long".into()],
            faults: vec![fault(at(50.0, 20.0)), fault(at(64.0, 24.0))],
            leakage_zones: vec![zone(5.0, 15.0)],
            ..Branch::default()
        }],
        ..Run::default()
    });
    plan
}

fn editor() -> Editor {
    let mut editor = Editor::new(farm(), Words::default());
    editor.receive(Message::Free(true));
    editor
}

/// Takes hold of a thing and leads it over places, without letting go.
fn lead(editor: &mut Editor, thing: Thing, from: Point, ways: &[Point]) {
    editor.receive(Message::Pick(Some(thing)));
    editor.receive(Message::Grab(thing, from));
    drag(editor, ways);
}

fn drag(editor: &mut Editor, ways: &[Point]) {
    for &to in ways {
        editor.receive(Message::Drag(to));
    }
}

/// Twenty steps from one place to another.
fn steps(from: Point, to: Point) -> Vec<Point> {
    let between = |share: f64| {
        at(from.east_m + share * (to.east_m - from.east_m), from.north_m + share * (to.north_m - from.north_m))
    };
    (1..=20).map(|step| between(f64::from(step) / 20.0)).collect()
}

const CORNER: Thing = Thing::RunCorner { run: 0, vertex: 2 };

#[test]
fn a_corner_led_past_a_fault_takes_what_was_on_the_line_and_leaves_what_it_passes() {
    let (was, mut editor) = (farm(), editor());
    let (from, far) = (at(40.0, 40.0), at(70.0, 40.0));
    lead(&mut editor, CORNER, from, &steps(from, far));
    let run = &editor.plan().runs[0];
    assert_eq!(run.outline[2], far);
    // The middle of the second side.
    assert!((run.faults[0].at.east_m - 55.0).abs() < 1e-9 && (run.faults[0].at.north_m - 20.0).abs() < 1e-9);
    assert!((run.branches[0].outline[0].east_m - 55.0).abs() < 1e-9, "the branch hangs there");
    assert!(run.pins[0].at.east_m > 40.1 && run.leakage_zones[0].to_m > 60.1);
    assert_eq!(run.side_slopes[0].at, at(55.0, 20.0), "and what the side rises is of that side");
    // Everything else the line swept over.
    assert_eq!(run.faults[1], was.runs[0].faults[1]);
    assert_eq!((run.feed_at, run.gates[0].at, run.pins[1].at), {
        let was = &was.runs[0];
        (was.feed_at, was.gates[0].at, was.pins[1].at)
    });
    // On and back.
    drag(&mut editor, &steps(far, from));
    assert_eq!(*editor.plan(), was, "to the bit as it was");
    editor.receive(Message::Drop);
    assert_eq!(*editor.plan(), was);
}

#[test]
fn a_side_slid_past_a_fault_and_back_leaves_everything_as_it_was() {
    let (was, mut editor) = (farm(), editor());
    let (from, far) = (at(40.0, 33.0), at(52.0, 33.0));
    lead(&mut editor, Thing::RunSide { run: 0, side: 1 }, from, &steps(from, far));
    let run = &editor.plan().runs[0];
    assert_eq!((run.outline[1], run.outline[2]), (at(52.0, 0.0), at(52.0, 40.0)));
    assert!((run.faults[0].at.east_m - 52.0).abs() < 1e-9);
    assert_eq!(run.faults[1], was.runs[0].faults[1]);
    assert_eq!(run.pins[1], was.runs[0].pins[1]);
    drag(&mut editor, &steps(far, from));
    assert_eq!(*editor.plan(), was);
    editor.receive(Message::Drop);
    assert_eq!(*editor.plan(), was);
}

#[test]
fn a_branchs_corner_and_the_place_where_it_hangs_leave_what_they_pass() {
    let was = farm();
    let mut editor = editor();
    let (from, far) = (at(60.0, 30.0), at(70.0, 24.0));
    let corner = |vertex| Thing::BranchCorner { run: 0, branch: 0, vertex };
    lead(&mut editor, corner(2), from, &steps(from, far));
    let branch = &editor.plan().runs[0].branches[0];
    assert_eq!((branch.outline[2], &branch.faults), (far, &was.runs[0].branches[0].faults));
    drag(&mut editor, &steps(far, from));
    assert_eq!(*editor.plan(), was);
    editor.receive(Message::Drop);
    // Its foot goes along the run's line; the second fault lies in the way of no side, a third does.
    let mut passed = was.clone();
    passed.runs[0].branches[0].faults[1].at = at(45.0, 12.0);
    let mut editor = Editor::new(passed.clone(), Words::default());
    editor.receive(Message::Free(true));
    let (from, far) = (at(40.0, 20.0), at(40.0, 2.0));
    lead(&mut editor, corner(0), from, &steps(from, far));
    let branch = &editor.plan().runs[0].branches[0];
    assert!((branch.from_m - 42.0).abs() < 1e-6, "{}", branch.from_m);
    assert!((branch.faults[0].at.north_m - 11.0).abs() < 1e-6, "the middle of its first side");
    assert_eq!(branch.faults[1].at, at(45.0, 12.0));
    editor.receive(Message::Drop);
}

#[test]
fn the_arrow_keys_lead_one_way_until_something_else_is_done() {
    let (was, mut editor) = (farm(), editor());
    let nudge = |editor: &mut Editor, east_m: f64| {
        for _ in 0..20 {
            editor.receive(Message::Nudge(east_m, 0.0));
        }
    };
    for things in [vec![CORNER], vec![CORNER, Thing::RunCorner { run: 0, vertex: 1 }]] {
        editor.receive(Message::Pick(None));
        for thing in things {
            editor.receive(Message::Many(ManyMessage::Also(thing)));
        }
        nudge(&mut editor, 1.0);
        let run = &editor.plan().runs[0];
        assert_eq!(run.outline[2], at(60.0, 40.0));
        assert!(run.faults[0].at.east_m > 49.0, "what is on the line goes along");
        assert_eq!(run.faults[1], was.runs[0].faults[1]);
        nudge(&mut editor, -1.0);
        assert_eq!(*editor.plan(), was);
    }
    // Each press is a step of its own.
    assert_eq!(editor.deeds().0.len(), 80);
    // A way that ends on the fault takes it along as the next begins.
    editor.receive(Message::Pick(Some(Thing::RunSide { run: 0, side: 1 })));
    editor.receive(Message::Pick(Some(CORNER)));
    editor.receive(Message::Nudge(8.75, 0.0));
    editor.receive(Message::Undo);
    editor.receive(Message::Redo);
    editor.receive(Message::Nudge(5.0, 0.0));
    assert_ne!(editor.plan().runs[0].faults[1], was.runs[0].faults[1]);
}

#[test]
fn several_led_past_a_fault_leave_it() {
    let (was, mut editor) = (farm(), editor());
    editor.receive(Message::Pick(None));
    for vertex in [1, 2] {
        editor.receive(Message::Many(ManyMessage::Also(Thing::RunCorner { run: 0, vertex })));
    }
    let (from, far) = (at(40.0, 40.0), at(60.0, 40.0));
    editor.receive(Message::Grab(CORNER, from));
    drag(&mut editor, &steps(from, far));
    let run = &editor.plan().runs[0];
    assert!((run.faults[0].at.east_m - 60.0).abs() < 1e-9);
    assert_eq!((&run.faults[1], run.feed_at), (&was.runs[0].faults[1], was.runs[0].feed_at));
    drag(&mut editor, &steps(far, from));
    assert_eq!(*editor.plan(), was);
}

#[test]
fn a_corner_put_in_by_a_drag_leaves_what_it_passes_too() {
    let (was, mut editor) = (farm(), editor());
    let (from, far) = (at(40.0, 20.0), at(70.0, 20.0));
    editor.receive(Message::Pick(Some(Thing::Run { run: 0 })));
    lead(&mut editor, Thing::RunSide { run: 0, side: 1 }, from, &[at(47.0, 34.0), at(47.0, 29.0), far]);
    editor.receive(Message::Drop);
    let run = &editor.plan().runs[0];
    assert_eq!((run.outline.len(), run.outline[2]), (5, far));
    assert_eq!(run.faults[1], was.runs[0].faults[1]);
    assert_eq!(editor.deeds().0, [Deed::InsertCorner]);
}

#[test]
fn what_is_said_within_a_step_is_not_lost_on_the_way() {
    let mut editor = editor();
    let shape = plan::Shape::Run("run".to_owned());
    let lead = |editor: &mut Editor, to: Point| {
        editor.receive(Message::Make(plan::Edit::MoveCorner { shape: shape.clone(), corner: 2, to }));
    };
    editor.receive(Message::Begin);
    lead(&mut editor, at(45.0, 40.0));
    let mut run = editor.plan().runs[0].clone();
    run.faults.push(fault(at(20.0, 0.0)));
    editor.receive(Message::Make(plan::Edit::SetRun { run: Box::new(run) }));
    lead(&mut editor, at(50.0, 40.0));
    editor.receive(Message::End);
    let run = &editor.plan().runs[0];
    assert_eq!((run.faults.len(), run.faults[2].at), (3, at(20.0, 0.0)));
    assert!((run.faults[0].at.east_m - 45.0).abs() < 1e-9);
}

#[test]
fn taken_out_together_what_is_left_goes_along_with_the_corner_that_goes() {
    let mut plan = farm();
    let second =
        Branch { from_m: 70.0, outline: vec![at(40.0, 30.0), at(55.0, 30.0)], ..plan.runs[0].branches[0].clone() };
    plan.runs[0].branches.push(Branch { faults: Vec::new(), leakage_zones: Vec::new(), ..second });
    plan.runs[0].faults.push(fault(at(40.0, 30.0)));
    let was = plan.clone();
    let mut editor = Editor::new(plan, Words::default());
    // The corner, the first fault and the first branch: the second side falls back to the line from (40, 0) to (0, 40).
    for thing in [Thing::Branch { run: 0, branch: 0 }, CORNER, Thing::Fault { run: 0, branch: None, fault: 0 }] {
        editor.receive(Message::Many(ManyMessage::Also(thing)));
    }
    editor.receive(Message::Remove);
    let run = &editor.plan().runs[0];
    assert_eq!(run.outline, [at(0.0, 0.0), at(40.0, 0.0), at(0.0, 40.0)]);
    // Of faults the one off the line stays where it is, the one on the line goes to the nearest place.
    assert_eq!(run.faults.len(), 2);
    assert_eq!(run.faults[0].at, at(47.0, 32.0));
    assert!((run.faults[1].at.east_m - 25.0).abs() < 1e-9 && (run.faults[1].at.north_m - 15.0).abs() < 1e-9);
    let [branch] = &run.branches[..] else { panic!("{:?}", run.branches) };
    assert!((branch.outline[0].east_m - 25.0).abs() < 1e-9, "it hangs on the line as it is now: {branch:?}");
    assert!((branch.outline[1].east_m - 40.0).abs() < 1e-9, "all of it");
    assert!((branch.from_m - 40.0 - 15.0 * std::f64::consts::SQRT_2).abs() < 1e-9, "{}", branch.from_m);
    assert_eq!(editor.deeds().0, [Deed::Remove]);
    editor.receive(Message::Undo);
    assert_eq!(*editor.plan(), was);
}

/// Start and direction of the first run's chain.
fn chain(lay: &workup::Lay) -> (f64, bool) {
    (lay.start_m, lay.reversed)
}

/// How far apart two places along a closed line are, metres.
fn apart_m(line_m: f64, one_m: f64, other_m: f64) -> f64 {
    let apart_m = (one_m - other_m).abs();
    apart_m.min(line_m - apart_m)
}

#[test]
fn while_a_line_is_led_its_nets_keep_their_order_and_their_start() {
    let mut elsewhere = 0;
    for (thing, from, by) in [
        (Thing::RunCorner { run: 0, vertex: 2 }, None, (6.0, 9.0)),
        (Thing::RunSide { run: 0, side: 1 }, Some(0.35), (7.0, 2.0)),
        (Thing::RunSide { run: 0, side: 2 }, Some(0.5), (4.0, 8.0)),
    ] {
        let mut plan = hand::example();
        plan.runs[0].pins.clear();
        let outline = &plan.runs[0].outline;
        let from = match (thing, from) {
            (Thing::RunSide { side, .. }, Some(share)) => {
                steps(outline[side], outline[side + 1])[(20.0 * share) as usize - 1]
            }
            _ => outline[2],
        };
        let to = at(from.east_m + by.0, from.north_m + by.1);
        let mut editor = Editor::new(plan.clone(), Words::default());
        editor.receive(Message::Free(true));
        let lay = |editor: &Editor| editor.run().unwrap().1.lay.clone().unwrap();
        let order = |lay: &workup::Lay| lay.nets.iter().map(|net| net.kind.clone()).collect::<Vec<_>>();
        let (began, mut last) = (lay(&editor), chain(&lay(&editor)));
        let (mut searched, mut jumps) = (last, 0);
        lead(&mut editor, thing, from, &[]);
        for way in steps(from, to) {
            editor.receive(Message::Drag(way));
            let is = lay(&editor);
            // A twentieth of the way, and what the line itself is longer by.
            assert!(apart_m(is.line_m, chain(&is).0, last.0) < 0.6, "{thing:?}: {last:?} and {:?}", chain(&is));
            assert_eq!((chain(&is).1, order(&is)), (last.1, order(&began)));
            last = chain(&is);
            let free = workup::workup(editor.plan(), workup::Depth::Quick).runs[0].lay.clone().unwrap();
            jumps +=
                usize::from(chain(&free).1 != searched.1 || apart_m(free.line_m, chain(&free).0, searched.0) > 0.6);
            searched = chain(&free);
        }
        assert!(jumps > 0, "{thing:?}: searched for anew in each frame it would jump");
        // Led back it is as it was, and let go the best is searched for, once.
        editor.receive(Message::Drag(from));
        assert_eq!(
            lay(&editor).posts,
            workup::workup(editor.plan(), workup::Depth::Quick).runs[0].lay.clone().unwrap().posts
        );
        editor.receive(Message::Drag(to));
        let (led, whole) = (lay(&editor), workup::workup(editor.plan(), workup::Depth::Quick));
        let whole = whole.runs[0].lay.clone().unwrap();
        editor.receive(Message::Drop);
        assert_eq!(lay(&editor), whole);
        // Where that lies elsewhere than it was led it is said.
        let said = (!led.lies_as(&whole, 1.0)).then_some(words::texts::Window::ChainedAnew);
        assert_eq!(editor.notice(), said, "{thing:?}");
        elsewhere += usize::from(said.is_some());
    }
    assert!(elsewhere > 0, "some lie elsewhere once let go");
}

#[test]
fn a_hand_that_rests_sees_how_the_nets_will_lie_once_it_lets_go() {
    let mut plan = hand::example();
    plan.runs[0].pins.clear();
    let from = plan.runs[0].outline[2];
    let to = at(from.east_m - 9.0, from.north_m + 4.0);
    let mut desk = hand::on_page(plan, Page::Run, [1280.0, 800.0], Words::default());
    hand::say(&mut desk, Message::Free(true));
    hand::say(&mut desk, Message::Pick(Some(CORNER)));
    let lay = |desk: &hand::Desk| hand::editor(desk).run().unwrap().1.lay.clone().unwrap();
    let (start, end) = (hand::spot(&desk, from), hand::spot(&desk, to));
    hand::button(&desk, start, true);
    desk.step();
    for step in 1..=8_u8 {
        desk.event(egui::Event::PointerMoved(start.lerp(end, f32::from(step) / 8.0)));
        desk.step();
    }
    let led = lay(&desk);
    let best = |desk: &hand::Desk| {
        let worked = workup::workup(hand::editor(desk).plan(), workup::Depth::Quick);
        worked.runs[0].lay.clone().unwrap()
    };
    assert!(!led.lies_as(&best(&desk), 1.0), "while it is led the nets keep their order");
    desk.run_steps(30);
    let rested = lay(&desk);
    assert_eq!(rested, best(&desk));
    hand::button(&desk, end, false);
    desk.step();
    assert_eq!(lay(&desk), rested);
    assert_eq!(hand::editor(&desk).notice(), None);
    assert_eq!(hand::deeds(&desk), 1);
}

#[test]
fn a_start_that_the_keeper_fixed_and_pins_are_kept_while_the_line_is_led() {
    let mut plan = farm();
    plan.runs[0].start_m = Some(7.0);
    let mut editor = Editor::new(plan, Words::default());
    editor.receive(Message::Free(true));
    lead(&mut editor, CORNER, at(40.0, 40.0), &steps(at(40.0, 40.0), at(47.0, 45.0)));
    let worked = |editor: &Editor| editor.run().unwrap().1.lay.clone().unwrap();
    assert_eq!(worked(&editor), workup::workup(editor.plan(), workup::Depth::Quick).runs[0].lay.clone().unwrap());
    assert_eq!(worked(&editor).start_m, 7.0);
    editor.receive(Message::Escape);
    assert_eq!(worked(&editor).start_m, 7.0);
    // A join that is pinned holds in every frame.
    let mut editor = self::editor();
    lead(&mut editor, CORNER, at(40.0, 40.0), &[]);
    for way in steps(at(40.0, 40.0), at(52.0, 45.0)) {
        editor.receive(Message::Drag(way));
        assert!(worked(&editor).pins[0].kept, "{way:?}");
    }
}
