//! What is hidden is neither hit nor snapped to, guides no hand and takes nothing.

use crate::hand::example;
use desktop::editor::{Editor, ManyMessage, Message, Page};
use desktop::tool::{Drawn, Hand, Tool, Trial};
use drawing::Thing;
use plan::{Branch, Damp, Hazard, HazardKind, KeepOut, Label, Plan, Point, Run, Shade, Wall, WallKind};
use words::Words;
use words::texts::Window as Text;

fn at(east_m: f64, north_m: f64) -> Point {
    Point::new(east_m, north_m)
}

/// Bare ground.
fn field() -> Plan {
    let mut plan = example();
    plan.runs.clear();
    plan.readings.clear();
    plan.coop = None;
    plan.other_coops.clear();
    plan.heights.clear();
    plan.ground = plan::Ground::default();
    plan
}

fn square(east_m: f64, north_m: f64) -> Vec<Point> {
    vec![at(east_m, north_m), at(east_m + 30.0, north_m), at(east_m + 30.0, north_m + 20.0), at(east_m, north_m + 20.0)]
}

fn run(outline: Vec<Point>) -> Run {
    Run { id: "run".to_owned(), outline, nets: Some(vec!["long".to_owned(); 2]), ..Run::default() }
}

fn hide(editor: &mut Editor, thing: Thing, hidden: bool) {
    editor.receive(Message::Many(ManyMessage::Hide(thing, hidden)));
}

/// The example with one more of everything that can be hidden.
fn everything() -> (Plan, Vec<Thing>) {
    let mut plan = example();
    plan.walls = vec![Wall { path: vec![at(-20.0, 70.0), at(10.0, 90.0)], ..Wall::default() }];
    plan.ground.shade = vec![Shade { outline: square(-60.0, 10.0), ..Shade::default() }];
    plan.ground.damp = vec![Damp { outline: square(-60.0, 40.0), ..Damp::default() }];
    plan.ground.hazards.push(Hazard::new(HazardKind::ForeignEarth, vec![at(-40.0, 90.0)]));
    plan.labels = vec![Label { at: at(-40.0, 70.0), text: "Here".to_owned(), ..Label::default() }];
    plan.runs[0].drop_at = Some(at(-20.0, 30.0));
    let whole = [Thing::Run { run: 0 }, Thing::Boundary, Thing::Coop { coop: 0 }, Thing::Wall { wall: 0 }];
    let ground = [Thing::Shade { shade: 0 }, Thing::Damp { damp: 0 }, Thing::Label { label: 0 }];
    let keep_outs = (0..plan.ground.keep_outs.len()).map(|keep_out| Thing::KeepOut { keep_out });
    let hazards = (0..plan.ground.hazards.len()).map(|hazard| Thing::Hazard { hazard });
    let things = whole.into_iter().chain(ground).chain(keep_outs).chain(hazards).collect();
    (plan, things)
}

/// What is hit anywhere on the map, as wholes; what belongs to a run is its run.
fn hit(editor: &Editor) -> Vec<Thing> {
    let view = editor.view();
    let mut found: Vec<Thing> = Vec::new();
    for right in 0..160 {
        for down in 0..120 {
            let spot = [right as f32 * 5.0, down as f32 * 5.0];
            if let Some(thing) = editor.drawing().thing_at(view, spot, 9.0) {
                found.push(thing.run().map_or(thing.whole(), |run| Thing::Run { run }));
            }
        }
    }
    found.sort_unstable();
    found.dedup();
    found
}

#[test]
fn nothing_hidden_is_hit() {
    let (plan, things) = everything();
    let mut editor = Editor::new(plan, Words::default());
    editor.receive(Message::Open(Page::Ground));
    // With something picked, handles are shown.
    editor.receive(Message::Pick(Some(Thing::Gateway)));
    editor.receive(Message::Zoom(0.6, [400.0, 300.0]));
    let shown = hit(&editor);
    for &thing in &things {
        assert!(shown.contains(&thing), "{thing:?} can be hit while it is shown");
        hide(&mut editor, thing, true);
        assert!(!hit(&editor).contains(&thing), "{thing:?}");
        hide(&mut editor, thing, false);
    }
    for &thing in &things {
        hide(&mut editor, thing, true);
    }
    let left = hit(&editor);
    assert!(things.iter().all(|thing| !left.contains(thing)), "{left:?}");
}

#[test]
fn what_is_picked_in_the_list_and_hidden_has_no_ring() {
    let (plan, _) = everything();
    let mut editor = Editor::new(plan, Words::default());
    for thing in [Thing::Run { run: 0 }, Thing::Wall { wall: 0 }, Thing::KeepOut { keep_out: 0 }] {
        editor.receive(Message::Pick(Some(thing)));
        assert!(editor.turn_ring().is_some());
        hide(&mut editor, thing, true);
        assert_eq!(editor.turn_ring(), None, "{thing:?}");
    }
}

#[test]
fn nothing_hidden_catches_a_hand_that_draws_or_drags() {
    let with = |put: fn(&mut Plan)| {
        let mut plan = field();
        put(&mut plan);
        plan
    };
    let run_0 = Thing::Run { run: 0 };
    // What stands there, and a place within reach of a corner or a side of it.
    let cases: [(Plan, Thing, Point); 7] = [
        (with(|plan| plan.runs = vec![run(square(40.0, 40.0))]), run_0, at(40.1, 40.1)),
        (with(|plan| plan.runs = vec![run(square(40.0, 40.0))]), run_0, at(54.3, 40.1)),
        (
            with(|plan| {
                let outline = vec![at(55.0, 40.0), at(55.0, 10.0), at(70.0, 10.0)];
                let branch = Branch { from_m: 15.0, outline, nets: vec!["long".to_owned()], ..Branch::default() };
                plan.runs = vec![Run { branches: vec![branch], ..run(square(40.0, 40.0)) }];
            }),
            run_0,
            at(62.0, 10.1),
        ),
        (with(|plan| plan.ground.boundary = square(40.0, 40.0)), Thing::Boundary, at(40.1, 40.1)),
        (
            with(|plan| plan.ground.keep_outs = vec![KeepOut::new(square(40.0, 40.0))]),
            Thing::KeepOut { keep_out: 0 },
            at(40.1, 40.1),
        ),
        (
            with(|plan| {
                plan.ground.hazards = vec![Hazard::new(HazardKind::PublicWay, vec![at(40.0, 40.0), at(70.0, 45.0)])];
            }),
            Thing::Hazard { hazard: 0 },
            at(40.1, 40.1),
        ),
        (
            with(|plan| plan.walls = vec![Wall { path: vec![at(40.0, 40.0), at(70.0, 45.0)], ..Wall::default() }]),
            Thing::Wall { wall: 0 },
            at(55.0, 42.55),
        ),
    ];
    for (mut plan, thing, near) in cases {
        // Another thing to be dragged there.
        plan.labels = vec![Label { at: at(10.0, 90.0), text: "Here".to_owned(), ..Label::default() }];
        plan.ground.damp = vec![Damp { outline: square(100.0, 80.0), ..Damp::default() }];
        let mut editor = Editor::new(plan, Words::default());
        for (hidden, caught) in [(false, true), (true, false)] {
            hide(&mut editor, thing, hidden);
            editor.receive(Message::Use(Tool::outline(Drawn::KeepOut)));
            editor.receive(Message::Hand(Hand::Move(near)));
            assert_eq!(editor.snapped().is_some(), caught, "drawn, {thing:?} hidden: {hidden}");
            editor.receive(Message::Hand(Hand::Leave));
            let corner = Thing::DampCorner { damp: 0, vertex: 0 };
            editor.receive(Message::Pick(Some(corner)));
            editor.receive(Message::Grab(corner, at(100.0, 80.0)));
            editor.receive(Message::Drag(near));
            assert_eq!(editor.snapped().is_some(), caught, "dragged, {thing:?} hidden: {hidden}");
            editor.receive(Message::Escape);
        }
    }
}

#[test]
fn nothing_is_put_onto_a_hidden_run_and_no_run_ends_on_a_hidden_wall() {
    let mut plan = field();
    plan.runs = vec![run(square(40.0, 40.0))];
    plan.walls = vec![Wall { kind: Some(WallKind::Wall), path: vec![at(0.0, 0.0), at(90.0, 0.0)], ..Wall::default() }];
    let mut editor = Editor::new(plan, Words::default());
    for hidden in [true, false] {
        hide(&mut editor, Thing::Run { run: 0 }, hidden);
        hide(&mut editor, Thing::Wall { wall: 0 }, hidden);
        let click = |at| Message::Hand(Hand::Click { at, reach_m: 0.1 });
        editor.receive(Message::Use(Tool::Try(Trial::Peg)));
        editor.receive(click(at(55.0, 40.0)));
        assert_eq!(editor.plan().runs[0].faults.is_empty(), hidden);
        assert_eq!(editor.notice() == Some(Text::NoNetHere), hidden);
        editor.receive(Message::Hand(Hand::Leave));
        editor.receive(Message::Use(Tool::outline(Drawn::Branch)));
        for place in [at(55.0, 60.0), at(55.0, 75.0)] {
            editor.receive(click(place));
        }
        editor.receive(Message::Hand(Hand::Close));
        editor.receive(Message::Hand(Hand::Leave));
        assert_eq!(editor.plan().runs[0].branches.is_empty(), hidden);
        editor.receive(Message::Use(Tool::outline(Drawn::Run)));
        for place in [at(100.0, 30.0), at(80.0, 20.0), at(80.0, 0.0)] {
            editor.receive(click(place));
        }
        editor.receive(Message::Hand(Hand::Close));
        let drawn = editor.plan().runs.last().unwrap();
        assert_eq!(drawn.closed(), hidden, "it stays open on the wall: {drawn:?}");
        editor.receive(Message::Undo);
    }
}
