//! What the pointer does by itself on the map: double clicks, the middle button, Space, and the cross of a turn.

use crate::corners;
use crate::hand::{self, Desk, button, click, click_on, editor, plan_of, say, spot};
use crate::snapping::{clicks, desk, field, points};
use desktop::editor::{Message, Page, ShapingMessage};
use desktop::tool::Tool;
use drawing::Thing;
use egui::{Event, Key, Modifiers, PointerButton, Pos2};
use plan::{Point, Wall, WallKind};

/// Presses twice at once at a place, as a double click.
fn double_click(desk: &mut Desk, at: Point) {
    let at = spot(desk, at);
    desk.event(Event::PointerMoved(at));
    desk.run();
    for _ in 0..2 {
        button(desk, at, true);
        desk.step();
        button(desk, at, false);
        desk.step();
    }
    desk.run();
}

#[test]
fn a_double_click_closes_a_run_that_is_unrolled() {
    let mut desk = desk(field(), Page::Run);
    click_on(&mut desk, "Unroll a run");
    say(&mut desk, Message::Free(true));
    for (east_m, north_m) in [(20.0, 20.0), (60.0, 20.0), (60.0, 50.0)] {
        clicks(&mut desk, east_m, north_m);
    }
    points(&mut desk, Point::new(22.0, 48.0));
    double_click(&mut desk, Point::new(22.0, 48.0));
    let plan = plan_of(&desk);
    assert_eq!(plan.runs.len(), 1);
    assert_eq!(plan.runs[0].outline.len(), 4, "{:?}", plan.runs[0].outline);
    assert_eq!(*editor(&desk).tool(), Tool::Pick);
    assert_eq!(hand::deeds(&desk), 1);
}

#[test]
fn a_run_may_end_on_a_wall_a_hedge_or_a_permanent_fence() {
    for kind in [WallKind::Wall, WallKind::Hedge, WallKind::Fence] {
        let mut plan = field();
        let path = corners::line(&[(8.0, 50.0), (64.0, 50.0)]);
        plan.walls = vec![Wall { kind: Some(kind), holds_birds: Some(true), path, ..Wall::default() }];
        let mut desk = desk(plan, Page::Run);
        click_on(&mut desk, "Unroll a run");
        for (east_m, north_m) in [(25.0, 50.2), (26.0, 25.0), (52.0, 27.0), (52.0, 49.8)] {
            clicks(&mut desk, east_m, north_m);
        }
        assert!(
            editor(&desk).snapped().is_some_and(|caught| caught.reason.ends_with("the run may end here")),
            "{kind:?}"
        );
        desk.key_press(Key::Enter);
        desk.run();
        assert_eq!(plan_of(&desk).runs[0].closed, Some(false), "{kind:?}");
    }
}

/// Where the map's middle went by a drag, metres.
fn moved(desk: &mut Desk, press: impl Fn(&Desk, Pos2, bool)) -> (f64, f64) {
    let middle = |desk: &Desk| editor(desk).view().middle;
    let (was, from) = (middle(desk), spot(desk, Point::new(30.0, 30.0)));
    desk.event(Event::PointerMoved(from));
    desk.run();
    press(desk, from, true);
    desk.run();
    let to = from + egui::vec2(-60.0, 40.0);
    desk.event(Event::PointerMoved(to));
    desk.run();
    press(desk, to, false);
    desk.run();
    let (is, px_per_m) = (middle(desk), editor(desk).view().px_per_m);
    ((is.east_m - was.east_m) * px_per_m, (is.north_m - was.north_m) * px_per_m)
}

#[test]
fn space_and_the_middle_button_move_the_map_whatever_lies_under_the_pointer() {
    let whole = Thing::Run { run: 0 };
    let shown = || {
        let mut plan = field();
        plan.runs = vec![plan::Run {
            id: "run-1".to_owned(),
            outline: corners::line(&[(20.0, 20.0), (60.0, 20.0), (60.0, 50.0), (20.0, 50.0)]),
            ..plan::Run::default()
        }];
        let mut desk = desk(plan, Page::Run);
        say(&mut desk, Message::Pick(Some(whole)));
        desk
    };
    // Without either the run that is picked goes along.
    let mut desk = shown();
    let was = plan_of(&desk);
    assert_eq!(moved(&mut desk, button), (0.0, 0.0));
    assert_ne!(plan_of(&desk), was);
    let mut desk = shown();
    let middle = |desk: &Desk, pos: Pos2, pressed: bool| {
        desk.event(Event::PointerButton { pos, button: PointerButton::Middle, pressed, modifiers: Modifiers::NONE });
    };
    let (east, north) = moved(&mut desk, middle);
    assert!((east - 60.0).abs() < 0.01 && (north - 40.0).abs() < 0.01, "{east} {north}");
    assert_eq!(plan_of(&desk), was);
    let mut desk = shown();
    let held = |pressed: bool| Event::Key {
        key: Key::Space,
        physical_key: None,
        pressed,
        repeat: false,
        modifiers: Modifiers::NONE,
    };
    desk.event(held(true));
    desk.run();
    let (east, north) = moved(&mut desk, button);
    desk.event(held(false));
    desk.run();
    assert!((east - 60.0).abs() < 0.01 && (north - 40.0).abs() < 0.01, "{east} {north}");
    assert_eq!(plan_of(&desk), was);
}

#[test]
fn the_cross_of_a_turn_is_dragged_and_the_run_turns_about_it() {
    let mut plan = field();
    plan.runs = vec![plan::Run {
        id: "run-1".to_owned(),
        outline: corners::line(&[(30.0, 20.0), (60.0, 20.0), (60.0, 50.0), (30.0, 50.0)]),
        ..plan::Run::default()
    }];
    let mut desk = desk(plan, Page::Run);
    say(&mut desk, Message::Free(true));
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 1 })));
    say(&mut desk, Message::Shaping(ShapingMessage::PivotHere));
    assert_eq!(editor(&desk).turns_about(), Some(Point::new(60.0, 20.0)));
    let (cross, to) = (spot(&desk, Point::new(60.0, 20.0)), spot(&desk, Point::new(70.0, 10.0)));
    hand::drag(&mut desk, cross, to);
    let about = editor(&desk).turns_about().unwrap();
    assert!((about.east_m - 70.0).abs() < 0.2 && (about.north_m - 10.0).abs() < 0.2, "{about:?}");
    // A place to turn about is no change of the plan.
    assert_eq!(hand::deeds(&desk), 0);
    let apart = |at: Point| (at.east_m - about.east_m).hypot(at.north_m - about.north_m);
    let before: Vec<f64> = plan_of(&desk).runs[0].outline.iter().map(|&at| apart(at)).collect();
    say(&mut desk, Message::Turn(30.0));
    let after = plan_of(&desk).runs[0].outline.clone();
    for (was, at) in before.iter().zip(&after) {
        assert!((was - apart(*at)).abs() < 1e-9, "each keeps its distance from the cross");
    }
    assert!((after[0].east_m - 30.0).abs() > 1.0);
    // A press on open ground lets go of it with the run.
    let open = spot(&desk, Point::new(95.0, 75.0));
    click(&mut desk, open);
    assert_eq!(editor(&desk).turns_about(), None);
}
