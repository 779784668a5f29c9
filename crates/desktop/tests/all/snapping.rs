//! What catches the hand, with its reason; the grid; dimensions; the tape.

use crate::hand;
use crate::hand::{Desk, button, click, click_on, example, on_page, say, spot, window};
use desktop::Opening;
use desktop::editor::{Grid, Message, Page};
use drawing::Thing;
use egui::{Event, Key, Modifiers, OutputCommand};
use egui_kittest::kittest::Queryable;
use plan::{Hazard, HazardKind, KeepOut, NetKind, Plan, Point, Run, SpotHeight, Wall, WallKind};
use words::{Language, Words};

/// A panel of the example's long net, metres.
const PANEL_M: f64 = 50.0 / 14.0;

/// Bare ground of 100 m by 80 m.
pub(crate) fn field() -> Plan {
    let mut plan = example();
    plan.runs.clear();
    plan.coop = None;
    plan.heights.clear();
    plan.ground.keep_outs.clear();
    plan.ground.hazards.clear();
    plan.ground.gateway = None;
    plan.ground.height_grid = None;
    plan.ground.boundary =
        [(0.0, 0.0), (100.0, 0.0), (100.0, 80.0), (0.0, 80.0)].map(|(e, n)| Point::new(e, n)).to_vec();
    plan
}

pub(crate) fn desk(plan: Plan, page: Page) -> Desk {
    on_page(plan, page, [1280.0, 800.0], Words::default())
}

pub(crate) fn points(desk: &mut Desk, at: Point) {
    let to = spot(desk, at);
    desk.event(Event::PointerMoved(to));
    desk.run();
}

pub(crate) fn clicks(desk: &mut Desk, east_m: f64, north_m: f64) {
    let to = spot(desk, Point::new(east_m, north_m));
    click(desk, to);
}

pub(crate) fn press(desk: &mut Desk, key: Key) {
    desk.key_press(key);
    desk.run();
}

/// Why the hand stands where it is caught, and where.
pub(crate) fn caught(desk: &Desk) -> Option<(String, Point)> {
    window(desk).editor().snapped().map(|snapped| (snapped.reason.clone(), snapped.at))
}

fn commands(desk: &mut Desk, text: &str) {
    desk.key_press_modifiers(Modifiers::COMMAND, Key::K);
    desk.run();
    desk.event(Event::Text(text.to_owned()));
    desk.run();
    press(desk, Key::Enter);
}

#[test]
fn a_new_side_is_caught_square_in_line_and_equal_and_alt_lets_it_go() {
    let mut desk = desk(field(), Page::Ground);
    click_on(&mut desk, "Keep-out");
    clicks(&mut desk, 20.0, 31.0);
    clicks(&mut desk, 45.3, 31.0);
    let (corner, first_m) = {
        let desktop::tool::Tool::Outline { corners, .. } = window(&desk).editor().tool() else { panic!() };
        assert!((corners[1].north_m - corners[0].north_m).abs() < 1e-9, "parallel to the paddock: {corners:?}");
        (corners[1], corners[1].east_m - corners[0].east_m)
    };
    let east_m = corner.east_m;
    points(&mut desk, Point::new(east_m + 0.4, 44.0));
    let (reason, at) = caught(&desk).unwrap();
    assert_eq!(reason, "square to side 1 to 2");
    assert!((at.east_m - east_m).abs() < 1e-9, "{at:?}");
    points(&mut desk, Point::new(east_m + 0.4, 31.0 + first_m + 0.3));
    let (reason, at) = caught(&desk).unwrap();
    assert_eq!(reason, "square to side 1 to 2");
    assert!((at.north_m - corner.north_m - first_m).abs() < 1e-9, "{at:?}");
    points(&mut desk, Point::new(east_m + 14.0, 31.4));
    assert_eq!(caught(&desk).unwrap().0, "in line with side 1 to 2");
    desk.event(Event::ModifiersChanged(Modifiers::ALT));
    points(&mut desk, Point::new(east_m + 15.0, 31.4));
    assert_eq!(caught(&desk), None, "Alt lets it go anywhere");
}

#[test]
fn a_dragged_corner_is_square_and_its_dimensions_are_said() {
    let mut plan = field();
    plan.ground.boundary[2] = Point::new(93.0, 71.0);
    let mut desk = desk(plan, Page::Ground);
    say(&mut desk, Message::Pick(Some(Thing::BoundaryCorner { vertex: 2 })));
    let from = spot(&desk, Point::new(93.0, 71.0));
    let to = spot(&desk, Point::new(99.8, 80.3));
    button(&desk, from, true);
    desk.run();
    for step in 1..=5 {
        desk.event(Event::PointerMoved(from + (to - from) * step as f32 / 5.0));
        desk.run();
    }
    let (reason, at) = caught(&desk).unwrap();
    assert!(reason.starts_with("square to side 1 to 2") || reason.starts_with("square to side 4 to 1"), "{reason}");
    assert!((at.east_m - 100.0).abs() < 1e-9 && (at.north_m - 80.0).abs() < 1e-9, "{at:?}");
    let node = desk.get_by_label_contains("Dimensions: ");
    let text = format!("{node:?}");
    for figure in ["side 2 to 3 80.0 m", "side 3 to 4 100.0 m", "turn at corner 3 90°", "area 8,000 m²"] {
        assert!(text.contains(figure), "{figure}: {text}");
    }
    button(&desk, to, false);
    desk.run();
    assert_eq!(caught(&desk), None);
    assert!(desk.query_by_label_contains("Dimensions: ").is_none(), "they go with the hand");
}

#[test]
fn a_whole_is_caught_by_the_side_that_it_comes_near() {
    let mut plan = field();
    plan.ground.keep_outs = example().ground.keep_outs[..1].to_vec();
    plan.ground.keep_outs[0].outline =
        [(40.0, 40.0), (64.0, 48.0), (48.0, 60.0)].map(|(e, n)| Point::new(e, n)).to_vec();
    let mut desk = desk(plan, Page::Ground);
    say(&mut desk, Message::Pick(Some(Thing::KeepOut { keep_out: 0 })));
    let (from, to) = (spot(&desk, Point::new(50.0, 49.0)), spot(&desk, Point::new(50.0, 9.4)));
    button(&desk, from, true);
    desk.run();
    for step in 1..=5 {
        desk.event(Event::PointerMoved(from + (to - from) * step as f32 / 5.0));
        desk.run();
    }
    assert_eq!(caught(&desk).unwrap().0, "on side 1 to 2 of the paddock");
    button(&desk, to, false);
    desk.run();
    let outline = window(&desk).editor().plan().ground.keep_outs[0].outline.clone();
    assert!(outline[0].north_m.abs() < 1e-9, "{outline:?}");
    assert!((outline[1].north_m - 8.0).abs() < 1e-9, "all of it went along: {outline:?}");
}

#[test]
fn a_run_s_corner_is_caught_by_whole_panels() {
    let mut desk = desk(example(), Page::Run);
    let outline = window(&desk).editor().plan().runs[0].outline.clone();
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 1 })));
    // Near enough that whole panels are told from what else catches there.
    let about = spot(&desk, outline[1]) - desk.get_by_label("Map").rect().min;
    say(&mut desk, Message::Zoom(1.4, [about.x, about.y]));
    let from = spot(&desk, outline[1]);
    button(&desk, from, true);
    desk.run();
    // Round the corner before: somewhere on the way a side of whole panels stands alone.
    let (before, was) = (outline[0], outline[1]);
    let bearing = (was.north_m - before.north_m).atan2(was.east_m - before.east_m);
    let mut found = None;
    for step in 1..=24 {
        let (way, far) = (bearing + 0.011 * f64::from(step), 9.0 * PANEL_M + 0.05);
        points(&mut desk, Point::new(before.east_m + far * way.cos(), before.north_m + far * way.sin()));
        if let Some((reason, at)) = caught(&desk).filter(|(reason, _)| reason == "9 panels") {
            found = Some((reason, at));
        }
    }
    let (_, at) = found.unwrap();
    let side_m = (at.east_m - before.east_m).hypot(at.north_m - before.north_m);
    assert!((side_m - 9.0 * PANEL_M).abs() < 1e-9, "{side_m}");
}

#[test]
fn a_run_is_unrolled_square_from_post_to_post() {
    let mut plan = field();
    plan.ground.boundary.clear();
    let mut desk = desk(plan, Page::Run);
    click_on(&mut desk, "Unroll a run");
    clicks(&mut desk, -20.0, -15.0);
    clicks(&mut desk, 10.0, -13.0);
    let corners = window(&desk).editor().in_hand().unwrap().unrolled.corners.clone();
    let (one, two) = (corners[0], corners[1]);
    let side_m = (two.east_m - one.east_m).hypot(two.north_m - one.north_m);
    let along = ((two.east_m - one.east_m) / side_m, (two.north_m - one.north_m) / side_m);
    // 20 m to the left, and a little beside.
    points(
        &mut desk,
        Point::new(two.east_m - along.1 * 20.0 + along.0 * 0.3, two.north_m + along.0 * 20.0 + along.1 * 0.3),
    );
    let (reason, at) = caught(&desk).unwrap();
    assert_eq!(reason, "on a post, 6 panels on");
    let dot = (at.east_m - two.east_m) * along.0 + (at.north_m - two.north_m) * along.1;
    assert!(dot.abs() < 1e-9, "{dot}");
}

#[test]
fn the_grid_catches_once_it_is_chosen() {
    let mut desk = desk(field(), Page::Ground);
    assert_eq!(window(&desk).editor().grid(), Grid::Off);
    commands(&mut desk, "grid 5");
    assert_eq!(window(&desk).editor().grid(), Grid::Five);
    click_on(&mut desk, "Keep-out");
    points(&mut desk, Point::new(35.4, 39.7));
    assert_eq!(caught(&desk), Some(("on the grid of 5 m".to_owned(), Point::new(35.0, 40.0))));
    points(&mut desk, Point::new(37.4, 37.6));
    assert_eq!(caught(&desk), None, "between its lines nothing catches");
}

#[test]
fn the_tape_says_distance_bearing_and_sum_and_is_copied() {
    let mut desk = desk(field(), Page::Ground);
    press(&mut desk, Key::T);
    desk.event(Event::ModifiersChanged(Modifiers::ALT));
    clicks(&mut desk, 20.0, 20.0);
    clicks(&mut desk, 50.0, 20.0);
    desk.get_by_label("Tape: 30.0 m, 90° east");
    points(&mut desk, Point::new(50.0, 60.0));
    desk.get_by_label("Tape: 40.0 m, 0° north, 70.0 m in all");
    desk.event(Event::ModifiersChanged(Modifiers::NONE));
    press(&mut desk, Key::Enter);
    points(&mut desk, Point::new(70.0, 10.0));
    desk.get_by_label("Tape: 40.0 m, 0° north, 70.0 m in all");
    desk.event(Event::Copy);
    desk.step();
    let copied =
        desk.output().platform_output.commands.iter().any(
            |command| matches!(command, OutputCommand::CopyText(text) if text == "40.0 m, 0° north\n70.0 m in all"),
        );
    assert!(copied, "{:?}", desk.output().platform_output.commands);
    press(&mut desk, Key::Escape);
    assert!(desk.query_by_label_contains("Tape: ").is_none());
}

#[test]
fn a_drag_measures_too_and_moves_nothing() {
    let mut desk = desk(field(), Page::Run);
    click_on(&mut desk, "Tape");
    let before = *window(&desk).editor().view();
    desk.event(Event::ModifiersChanged(Modifiers::ALT));
    let (from, to) = (spot(&desk, Point::new(30.0, 50.0)), spot(&desk, Point::new(50.0, 30.0)));
    hand::drag(&mut desk, from, to);
    desk.get_by_label("Tape: 28.3 m, 135° south-east");
    assert_eq!(window(&desk).editor().view().middle, before.middle);
}

#[test]
fn the_tape_snaps_and_goes_along_the_ground_where_heights_are_known() {
    let mut plan = field();
    let height = |east_m: f64, north_m: f64, up_m: f64| SpotHeight {
        at: Point::new(east_m, north_m),
        up_m,
        rest: plan::Rest::new(),
    };
    // A plane that rises 3 m on 4 m eastwards: along it 4 m are 5 m.
    plan.heights =
        vec![height(0.0, 0.0, 0.0), height(100.0, 0.0, 75.0), height(0.0, 80.0, 0.0), height(100.0, 80.0, 75.0)];
    let mut desk = desk(plan, Page::Ground);
    press(&mut desk, Key::T);
    clicks(&mut desk, 0.4, 0.3);
    points(&mut desk, Point::new(99.7, 0.4));
    assert_eq!(caught(&desk).unwrap().0, "on corner 2 of the paddock");
    desk.get_by_label("Tape: 100.0 m, 90° east, along the ground 125.0 m");
}

/// The same with a keep-out of 20 m by 15 m, and a hedge north of it.
fn hedged() -> Plan {
    let mut plan = field();
    plan.ground.keep_outs = example().ground.keep_outs[..1].to_vec();
    plan.ground.keep_outs[0].outline =
        [(20.0, 20.0), (40.0, 20.0), (40.0, 35.0), (20.0, 35.0)].map(|(e, n)| Point::new(e, n)).to_vec();
    let path = [(8.0, 50.0), (64.0, 50.0)].map(|(e, n)| Point::new(e, n)).to_vec();
    plan.walls = vec![Wall { kind: Some(WallKind::Hedge), path, ..Wall::default() }];
    plan
}

/// Presses on a place and leads the pointer to another, without letting go.
fn takes(desk: &mut Desk, from: (f64, f64), to: (f64, f64)) {
    let (from, to) = (spot(desk, Point::new(from.0, from.1)), spot(desk, Point::new(to.0, to.1)));
    desk.event(Event::PointerMoved(from));
    desk.run();
    button(desk, from, true);
    desk.run();
    for step in 1..=5 {
        desk.event(Event::PointerMoved(from + (to - from) * step as f32 / 5.0));
        desk.run();
    }
}

#[test]
fn a_side_that_slides_is_caught_with_its_reason_and_shows_its_dimensions() {
    let mut desk = desk(hedged(), Page::Ground);
    say(&mut desk, Message::Pick(Some(Thing::KeepOut { keep_out: 0 })));
    takes(&mut desk, (34.0, 35.0), (34.0, 40.3));
    assert_eq!(caught(&desk).unwrap().0, "side 2 to 3: as long as side 3 to 4", "a square");
    points(&mut desk, Point::new(34.0, 49.6));
    let (reason, at) = caught(&desk).unwrap();
    assert_eq!(reason, "along side 1 to 2 (Hedge 1)");
    assert!((at.north_m - 50.0).abs() < 1e-9 && (at.east_m - 34.0).abs() < 0.2, "at the pointer: {at:?}");
    let node = desk.get_by_label_contains("Dimensions: ");
    let text = format!("{node:?}");
    for figure in [
        "side 2 to 3 30.0 m",
        "side 3 to 4 20.0 m",
        "side 4 to 1 30.0 m",
        "turn at corner 3 90°",
        "turn at corner 4 90°",
        "area 600 m²",
    ] {
        assert!(text.contains(figure), "{figure}: {text}");
    }
    desk.event(Event::ModifiersChanged(Modifiers::ALT));
    points(&mut desk, Point::new(34.0, 49.5));
    assert_eq!(caught(&desk), None, "Alt lets it go anywhere");
    desk.event(Event::ModifiersChanged(Modifiers::NONE));
    points(&mut desk, Point::new(34.0, 49.6));
    let to = spot(&desk, Point::new(34.0, 49.6));
    button(&desk, to, false);
    desk.run();
    let outline = &window(&desk).editor().plan().ground.keep_outs[0].outline;
    for corner in [2, 3] {
        assert!((outline[corner].north_m - 50.0).abs() < 1e-9, "{outline:?}");
    }
    assert!(desk.query_by_label_contains("Dimensions: ").is_none(), "they go with the hand");
}

#[test]
fn a_corner_is_caught_by_a_wall_together_with_another_guide() {
    let mut desk = desk(hedged(), Page::Ground);
    say(&mut desk, Message::Pick(Some(Thing::KeepOutCorner { keep_out: 0, vertex: 2 })));
    takes(&mut desk, (40.0, 35.0), (40.3, 49.7));
    let (reason, at) = caught(&desk).unwrap();
    assert_eq!(reason, "on side 1 to 2 (Hedge 1)");
    assert!((at.east_m - 40.0).abs() < 1e-9 && (at.north_m - 50.0).abs() < 1e-9, "{at:?}");
    points(&mut desk, Point::new(29.0, 49.7));
    let (reason, at) = caught(&desk).unwrap();
    assert_eq!(reason, "on side 1 to 2 (Hedge 1)");
    assert!((at.north_m - 50.0).abs() < 1e-9, "{at:?}");
}

#[test]
fn what_stands_is_called_at_the_hand_as_the_list_calls_it() {
    for (language, hedge, corner, way) in [
        (Language::English, "on side 1 to 2 (Hedge 2)", "on corner 3 (Keep-out 1)", "on point 1 (Public way 1)"),
        (Language::German, "an Seite 1–2 (Hecke 2)", "auf Ecke 3 (Sperrfläche 1)", "auf Punkt 1 (Öffentlicher Weg 1)"),
    ] {
        let mut plan = hedged();
        let line = |places: [(f64, f64); 2]| places.map(|(e, n)| Point::new(e, n)).to_vec();
        plan.walls.push(Wall { path: line([(8.0, 60.0), (64.0, 60.0)]), ..plan.walls[0].clone() });
        let outline = [(70.0, 20.0), (80.0, 20.0), (80.0, 30.0), (70.0, 30.0)].map(|(e, n)| Point::new(e, n)).to_vec();
        plan.ground.keep_outs.push(KeepOut {
            outline,
            name: String::new(),
            water: false,
            ..plan.ground.keep_outs[0].clone()
        });
        let path = line([(70.0, 50.0), (90.0, 50.0)]);
        let hazard = example().ground.hazards[0].clone();
        plan.ground.hazards.push(Hazard { path, name: String::new(), kind: HazardKind::PublicWay, ..hazard });
        let mut desk = on_page(plan, Page::Ground, [1280.0, 800.0], Words { language, ..Words::default() });
        say(&mut desk, Message::Pick(Some(Thing::KeepOutCorner { keep_out: 0, vertex: 2 })));
        takes(&mut desk, (40.0, 35.0), (30.3, 59.7));
        assert_eq!(caught(&desk).unwrap().0, hedge);
        points(&mut desk, Point::new(80.2, 30.2));
        assert_eq!(caught(&desk).unwrap().0, corner);
        points(&mut desk, Point::new(70.2, 50.2));
        assert_eq!(caught(&desk).unwrap().0, way);
    }
}

#[test]
fn a_run_that_is_unrolled_meets_a_wall_squarely_and_ends_there() {
    let mut plan = hedged();
    plan.ground.keep_outs.clear();
    plan.walls[0].holds_birds = Some(true);
    let mut desk = desk(plan, Page::Run);
    click_on(&mut desk, "Unroll a run");
    clicks(&mut desk, 25.0, 50.2);
    clicks(&mut desk, 26.0, 25.0);
    clicks(&mut desk, 52.0, 27.0);
    let corners = window(&desk).editor().in_hand().unwrap().unrolled.corners.clone();
    let (one, two) = (corners[1], corners[2]);
    let along = (two.east_m - one.east_m, two.north_m - one.north_m);
    // Square to the last side from its end, where that meets the hedge.
    let up_m = 50.0 - two.north_m;
    points(&mut desk, Point::new(two.east_m - up_m * along.1 / along.0 + 0.3, 49.7));
    let (reason, at) = caught(&desk).unwrap();
    assert_eq!(reason, "on side 1 to 2 (Hedge 1): the run may end here");
    let dot = (at.east_m - two.east_m) * along.0 + (at.north_m - two.north_m) * along.1;
    assert!(dot.abs() < 1e-7 && (at.north_m - 50.0).abs() < 1e-9, "{at:?}");
    clicks(&mut desk, at.east_m, at.north_m);
    press(&mut desk, Key::Enter);
    let run = &window(&desk).editor().plan().runs[0];
    assert_eq!(run.closed, Some(false), "the wall closes it");
    assert!((run.outline[3].north_m - 50.0).abs() < 1e-9, "{:?}", run.outline);
}

/// A run of 40 m by 30 m with panels of 2.5 m.
fn run_of_panels() -> Plan {
    let mut plan = field();
    plan.store.nets = vec![NetKind { count: Some(4), ..NetKind::new("long", 50.0, 20) }];
    let outline = [(20.0, 20.0), (60.0, 20.0), (60.0, 50.0), (20.0, 50.0)].map(|(e, n)| Point::new(e, n)).to_vec();
    let nets = Some(vec!["long".to_owned(); 3]);
    plan.runs = vec![Run { id: "run-1".to_owned(), outline, nets, ..Run::default() }];
    plan
}

#[test]
fn a_slid_side_of_a_run_makes_its_neighbours_whole_panels() {
    let mut desk = desk(run_of_panels(), Page::Run);
    say(&mut desk, Message::Pick(Some(Thing::Run { run: 0 })));
    takes(&mut desk, (51.0, 50.0), (51.0, 55.2));
    assert_eq!(caught(&desk).unwrap().0, "side 2 to 3: 14 panels");
    let outline = &window(&desk).editor().plan().runs[0].outline;
    assert!((outline[2].north_m - 55.0).abs() < 1e-9, "{outline:?}");
}

#[test]
fn on_a_slope_whole_panels_are_those_along_the_ground() {
    let mut plan = run_of_panels();
    let height = |east_m: f64, north_m: f64, up_m: f64| SpotHeight {
        at: Point::new(east_m, north_m),
        up_m,
        rest: plan::Rest::new(),
    };
    // A plane that rises 3 m on 4 m eastwards: along it 4 m are 5 m.
    plan.heights =
        vec![height(0.0, 0.0, 0.0), height(100.0, 0.0, 75.0), height(0.0, 80.0, 0.0), height(100.0, 80.0, 75.0)];
    let mut desk = desk(plan, Page::Run);
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 1 })));
    let from = spot(&desk, Point::new(60.0, 20.0));
    button(&desk, from, true);
    desk.run();
    let mut found = Vec::new();
    for step in 1..=30 {
        let way = -0.012 * f64::from(step);
        points(&mut desk, Point::new(20.0 + 36.1 * way.cos(), 20.0 + 36.1 * way.sin()));
        if let Some((reason, _)) = caught(&desk).filter(|(reason, _)| reason.ends_with(" panels")) {
            let sides = window(&desk).editor().run().unwrap().1.slope.as_ref().unwrap().sides.clone();
            // Where both sides are of whole panels, one of them is said.
            if reason == "18 panels" || (sides[0].surface_m - 45.0).abs() < 1e-9 {
                found.push((reason, sides));
            }
        }
    }
    assert!(found.len() > 3, "{found:?}");
    for (reason, sides) in found {
        assert!((sides[0].surface_m - 45.0).abs() < 1e-9 && sides[0].level_m < 37.0, "{reason}: {sides:?}");
        if reason.ends_with("12 panels") {
            assert!((sides[1].surface_m - 30.0).abs() < 1e-9, "{reason}: {sides:?}");
        }
    }
}

#[test]
fn the_grid_and_the_kept_dimensions_are_there_at_the_next_start() {
    let folder = tempfile::tempdir().unwrap();
    let start = || {
        let opening = Opening { plan: field(), folder: Some(folder.path().to_path_buf()), ..Opening::default() };
        hand::open(opening, [1280.0, 800.0])
    };
    let mut first = start();
    assert_eq!((window(&first).editor().grid(), window(&first).editor().keeps_dimensions()), (Grid::Off, false));
    commands(&mut first, "grid 5");
    say(&mut first, Message::Open(Page::Ground));
    press(&mut first, Key::D);
    drop(first);
    let second = start();
    assert_eq!((window(&second).editor().grid(), window(&second).editor().keeps_dimensions()), (Grid::Five, true));
}

#[test]
fn dimensions_are_kept_by_a_key_beside_what_is_picked() {
    let mut desk = desk(field(), Page::Ground);
    say(&mut desk, Message::Pick(Some(Thing::Boundary)));
    assert!(desk.query_by_label_contains("Dimensions: ").is_none());
    press(&mut desk, Key::D);
    let text = format!("{:?}", desk.get_by_label_contains("Dimensions: "));
    for figure in ["side 1 to 2 100.0 m", "side 4 to 1 80.0 m", "turn at corner 1 90°", "area 8,000 m²"] {
        assert!(text.contains(figure), "{figure}: {text}");
    }
    press(&mut desk, Key::D);
    assert!(desk.query_by_label_contains("Dimensions: ").is_none());
}
