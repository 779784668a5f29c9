//! Corners of whatever is drawn on the ground catch the hand, each called as lists call it; the scale in every state.

use crate::hand::{self, click_on, say, window};
use crate::snapping::{caught, clicks, desk, field, points, press};
use desktop::editor::{Message, Page};
use desktop::tool::{Drawn, Tool};
use egui::Key;
use plan::{Branch, Damp, HazardKind, NetKind, Plan, Point, Run, Shade, Wall, WallKind};

pub(crate) fn line(places: &[(f64, f64)]) -> Vec<Point> {
    places.iter().map(|&(east_m, north_m)| Point::new(east_m, north_m)).collect()
}

/// A hedge, shade, damp ground, and a run with a branch.
fn drawn_on() -> Plan {
    let mut plan = field();
    plan.walls = vec![Wall {
        kind: Some(WallKind::Hedge),
        path: line(&[(8.0, 50.0), (40.0, 54.0)]),
        holds_birds: Some(true),
        ..Wall::default()
    }];
    plan.ground.shade = vec![Shade { outline: line(&[(60.0, 60.0), (72.0, 60.0), (66.0, 70.0)]), ..Shade::default() }];
    plan.ground.damp = vec![Damp { outline: line(&[(80.0, 60.0), (92.0, 60.0), (86.0, 70.0)]), ..Damp::default() }];
    plan.store.nets = vec![NetKind { count: Some(4), ..NetKind::new("long", 50.0, 20) }];
    plan.runs = vec![Run {
        id: "run-1".to_owned(),
        outline: line(&[(20.0, 5.0), (60.0, 5.0), (60.0, 35.0), (20.0, 35.0)]),
        nets: Some(vec!["long".to_owned(); 3]),
        branches: vec![Branch { from_m: 50.0, outline: line(&[(60.0, 15.0), (83.0, 18.0)]), ..Branch::default() }],
        ..Run::default()
    }];
    plan
}

#[test]
fn corners_of_walls_shade_damp_ground_and_branches_catch_a_corner_that_is_drawn() {
    for (near, corner, reason) in [
        ((40.3, 54.2), (40.0, 54.0), "on corner 2 (Hedge 1)"),
        ((72.2, 59.8), (72.0, 60.0), "on corner 2 (Shade 1)"),
        ((86.1, 70.3), (86.0, 70.0), "on corner 3 (Damp place 1)"),
        ((83.3, 18.2), (83.0, 18.0), "on corner 2 (run-1, branch 1)"),
    ] {
        let mut desk = desk(drawn_on(), Page::Ground);
        click_on(&mut desk, "Keep-out");
        points(&mut desk, Point::new(near.0, near.1));
        let (said, at) = caught(&desk).unwrap_or_else(|| panic!("nothing catches at {reason}"));
        assert_eq!(said, reason);
        assert_eq!((at.east_m, at.north_m), corner, "{reason}");
    }
}

#[test]
fn sides_of_shade_and_damp_ground_catch_too() {
    let mut desk = desk(drawn_on(), Page::Ground);
    click_on(&mut desk, "Keep-out");
    points(&mut desk, Point::new(66.0, 59.8));
    assert_eq!(caught(&desk).unwrap().0, "on side 1 to 2 (Shade 1)");
    points(&mut desk, Point::new(86.0, 59.8));
    assert_eq!(caught(&desk).unwrap().0, "on side 1 to 2 (Damp place 1)");
}

#[test]
fn a_side_is_drawn_parallel_to_one_that_stands() {
    let mut desk = desk(drawn_on(), Page::Ground);
    click_on(&mut desk, "Keep-out");
    clicks(&mut desk, 45.0, 66.0);
    // As the hedge goes: 4 m north on 32 m.
    points(&mut desk, Point::new(23.0, 63.3));
    let (reason, at) = caught(&desk).unwrap();
    assert_eq!(reason, "parallel to side 1 to 2 (Hedge 1)");
    let across = (at.east_m - 45.0) * 4.0 - (at.north_m - 66.0) * 32.0;
    assert!(across.abs() < 1e-7, "{at:?}");
}

#[test]
fn a_run_that_is_unrolled_may_end_on_the_end_of_a_hedge() {
    let mut plan = drawn_on();
    plan.runs.clear();
    let mut desk = desk(plan, Page::Run);
    click_on(&mut desk, "Unroll a run");
    clicks(&mut desk, 8.0, 50.0);
    clicks(&mut desk, 12.0, 30.0);
    points(&mut desk, Point::new(40.2, 54.1));
    assert_eq!(caught(&desk).unwrap().0, "on corner 2 (Hedge 1): the run may end here");
    clicks(&mut desk, 40.2, 54.1);
    press(&mut desk, Key::Enter);
    let run = &window(&desk).editor().plan().runs[0];
    assert_eq!(run.closed, Some(false), "the hedge closes it");
    assert_eq!(run.outline[2], Point::new(40.0, 54.0));
}

#[test]
fn scale_bar_and_north_stand_whatever_is_in_the_hand() {
    let drawn = [
        Drawn::Paddock,
        Drawn::Run,
        Drawn::KeepOut,
        Drawn::Water,
        Drawn::Hazard(HazardKind::OverheadLine),
        Drawn::Coop,
        Drawn::Gateway,
        Drawn::Height,
        Drawn::Branch,
        Drawn::Wall(WallKind::Wall),
        Drawn::Shade,
        Drawn::Label,
    ];
    let tools = drawn.map(Tool::outline);
    for tool in tools.into_iter().chain([Tool::Pick, Tool::tape()]) {
        let mut desk = desk(drawn_on(), Page::Ground);
        say(&mut desk, Message::Use(tool.clone()));
        points(&mut desk, Point::new(30.0, 20.0));
        let scale = window(&desk).editor().view().kept[0].expect("the scale has its place");
        let map = egui_kittest::kittest::Queryable::get_by_label(&desk, "Map").rect();
        let plate = egui::Rect::from_min_max(
            map.min + egui::vec2(scale[0], scale[1]),
            map.min + egui::vec2(scale[2], scale[3]),
        );
        let written = |text: &str| hand::painted(&desk, |one| one == text).iter().any(|at| plate.contains_rect(*at));
        assert!(written("m") && written("N") && written("0"), "{tool:?}");
    }
}

#[test]
fn on_a_hedge_on_which_the_run_may_end_nothing_is_missing_to_close() {
    let mut plan = drawn_on();
    plan.runs.clear();
    plan.store.nets = vec![NetKind { count: Some(1), ..NetKind::new("long", 60.0, 20) }];
    let mut desk = desk(plan, Page::Run);
    click_on(&mut desk, "Unroll a run");
    points(&mut desk, Point::new(8.0, 50.0));
    let strip = |desk: &crate::hand::Desk, text: &str| {
        hand::painted(desk, |one| one == text).iter().any(|at| at.right() < 900.0 && at.top() > 600.0)
    };
    assert!(strip(&desk, "Press where the first corner stands"));
    clicks(&mut desk, 8.0, 50.0);
    assert!(strip(&desk, "Lead on to where the second corner stands"));
    clicks(&mut desk, 12.0, 30.0);
    points(&mut desk, Point::new(36.0, 48.0));
    assert!(hand::says(&desk, "short to close from here"), "57 m are drawn and 32 are missing");
    points(&mut desk, Point::new(40.2, 54.1));
    assert!(hand::says(&desk, "the run may end here"));
    assert!(!hand::says(&desk, "short to close from here"));
}
