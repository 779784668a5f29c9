//! A run unrolled on the map: by clicks that posts and curves catch, by what is typed at the pointer, by keys alone.

use crate::hand::{Desk, click, click_on, example, on_page, plan_of, settle, spot, window};
use desktop::editor::{Message, Page};
use egui::{Event, Key, Modifiers};
use egui_kittest::kittest::Queryable;
use plan::Point;
use words::Words;

/// A panel of the example's long net, metres.
const PANEL_M: f64 = 50.0 / 14.0;

/// The example with all five nets in the store, about to unroll.
pub(crate) fn unrolling() -> Desk {
    let mut plan = example();
    plan.runs.clear();
    plan.coop = None;
    plan.ground.keep_outs.clear();
    plan.ground.hazards.clear();
    let mut desk = on_page(plan, Page::Run, [1280.0, 800.0], Words::default());
    click_on(&mut desk, "Unroll a run");
    desk
}

fn points(desk: &mut Desk, at: Point) {
    let to = spot(desk, at);
    desk.event(Event::PointerMoved(to));
    desk.run();
}

pub(crate) fn clicks(desk: &mut Desk, at: Point) {
    let to = spot(desk, at);
    click(desk, to);
}

fn types(desk: &mut Desk, text: &str) {
    desk.event(Event::Text(text.to_owned()));
    desk.run();
}

/// What is typed replaces what stood in the field that Tab led to; Enter sets it.
fn sets(desk: &mut Desk, text: &str) {
    types(desk, text);
    desk.key_press(Key::Enter);
    desk.run();
}

fn apart_m(one: Point, other: Point) -> f64 {
    (one.east_m - other.east_m).hypot(one.north_m - other.north_m)
}

fn last_run(desk: &Desk) -> plan::Run {
    window(desk).editor().plan().runs.last().unwrap().clone()
}

#[test]
fn posts_catch_corners_and_the_roll_counts_down() {
    let mut desk = unrolling();
    clicks(&mut desk, Point::new(15.0, 20.0));
    points(&mut desk, Point::new(45.0, 20.0));
    let in_hand = window(&desk).editor().in_hand().unwrap();
    let side_m = in_hand.unrolled.along_m[1];
    assert!((side_m - 8.0 * PANEL_M).abs() < 1e-9, "{side_m}");
    assert_eq!((in_hand.unrolled.begun, in_hand.unrolled.in_store), (1, 4));
    let entry = format!("{:?}", desk.get_by_label_contains("21.4 m left on net 1, 4 more in the store, "));
    assert!(entry.contains("on a post, 8 panels on"), "{entry}");
    clicks(&mut desk, Point::new(45.0, 20.0));
    clicks(&mut desk, Point::new(45.0, 50.0));
    points(&mut desk, Point::new(15.0, 48.0));
    // The figures at the foot are those of the run as it would close here.
    let (run, worked) = window(&desk).editor().shown_run().unwrap();
    let round_m: f64 = (0..4).map(|side| apart_m(run.outline[side], run.outline[(side + 1) % 4])).sum();
    assert!((worked.lay.as_ref().unwrap().line_m - round_m).abs() < 1e-9);
    desk.get_by_label(&format!("Line {round_m:.1} m"));
    assert!(worked.volts.is_none(), "volts come when it is laid");
    assert!(plan_of(&desk).runs.is_empty(), "nothing is stated before it is closed");
}

#[test]
fn the_curve_catches_a_corner_from_which_the_nets_close_exactly() {
    let mut desk = unrolling();
    for at in [Point::new(15.0, 20.0), Point::new(51.0, 20.0), Point::new(51.0, 56.0)] {
        clicks(&mut desk, at);
    }
    points(&mut desk, Point::new(7.0, 54.0));
    let curve = window(&desk).editor().in_hand().unwrap().unrolled.closing.unwrap().curve.unwrap();
    let near = curve.nearest((7.0, 54.0).into());
    clicks(&mut desk, Point::new(near.east_m + 0.3, near.north_m + 0.3));
    desk.key_press(Key::Enter);
    settle(&mut desk);
    let (editor, run) = (window(&desk).editor(), last_run(&desk));
    assert_eq!(run.outline.len(), 4);
    let lay = editor.workup().runs.last().unwrap().lay.as_ref().unwrap();
    assert!(lay.spare_m < 1e-6 && lay.short_m < 1e-6, "spare {} short {}", lay.spare_m, lay.short_m);
    assert!(editor.in_hand().is_none());
    desk.get_by_label("Undo").click();
    desk.run();
    assert!(plan_of(&desk).runs.is_empty());
}

#[test]
fn the_modifier_lets_go_of_posts_and_curves() {
    let mut desk = unrolling();
    clicks(&mut desk, Point::new(15.0, 20.0));
    desk.event(Event::ModifiersChanged(Modifiers::ALT));
    points(&mut desk, Point::new(45.0, 20.0));
    let side_m = window(&desk).editor().in_hand().unwrap().unrolled.along_m[1];
    assert!((side_m - 30.0).abs() < 0.05, "{side_m}");
}

#[test]
fn a_typed_side_is_that_side_and_a_typed_turn_that_turn() {
    let mut desk = unrolling();
    clicks(&mut desk, Point::new(15.0, 20.0));
    points(&mut desk, Point::new(35.0, 25.0));
    // The first figure goes to the side; Tab twice leads to the bearing.
    types(&mut desk, "2");
    types(&mut desk, "5.5");
    desk.key_press(Key::Tab);
    desk.run();
    desk.key_press(Key::Tab);
    desk.run();
    sets(&mut desk, "90");
    points(&mut desk, Point::new(35.0, 40.0));
    types(&mut desk, "3");
    types(&mut desk, "0");
    desk.key_press(Key::Tab);
    desk.run();
    desk.key_press(Key::Tab);
    desk.run();
    sets(&mut desk, "90");
    points(&mut desk, Point::new(15.0, 50.0));
    clicks(&mut desk, Point::new(15.0, 50.0));
    desk.key_press(Key::Enter);
    settle(&mut desk);
    let outline = last_run(&desk).outline;
    assert!((outline[1].east_m - outline[0].east_m - 25.5).abs() < 1e-9, "{outline:?}");
    assert!((outline[1].north_m - outline[0].north_m).abs() < 1e-9, "due east: {outline:?}");
    assert!((outline[2].north_m - outline[1].north_m - 30.0).abs() < 1e-9, "to the hand of the pointer: {outline:?}");
    assert!((outline[2].east_m - outline[1].east_m).abs() < 1e-9);
}

#[test]
fn what_cannot_be_read_is_said_at_the_place_and_sets_nothing() {
    let mut desk = unrolling();
    clicks(&mut desk, Point::new(15.0, 20.0));
    points(&mut desk, Point::new(35.0, 25.0));
    types(&mut desk, "7");
    types(&mut desk, " hens");
    desk.key_press(Key::Enter);
    desk.run();
    desk.get_by_label_contains("hens");
    assert_eq!(window(&desk).editor().in_hand().unwrap().unrolled.corners.len(), 2, "no corner was set");
    desk.key_press(Key::Escape);
    desk.run();
    desk.key_press(Key::Escape);
    desk.run();
    assert!(window(&desk).editor().in_hand().is_none(), "twice leaves the field and the tool");
}

#[test]
fn keys_alone_unroll_a_run() {
    let mut desk = unrolling();
    let press = |desk: &mut Desk, key: Key, times: usize| {
        for _ in 0..times {
            desk.key_press(key);
            desk.run();
        }
    };
    press(&mut desk, Key::ArrowUp, 3);
    press(&mut desk, Key::Space, 1);
    for turn in ["0", "90", "90"] {
        press(&mut desk, Key::Tab, 2);
        types(&mut desk, "9");
        desk.key_press(Key::Tab);
        desk.run();
        sets(&mut desk, turn);
    }
    desk.key_press(Key::Enter);
    settle(&mut desk);
    let outline = last_run(&desk).outline;
    assert_eq!(outline.len(), 4);
    for side in 0..3 {
        assert!((apart_m(outline[side], outline[side + 1]) - 9.0 * PANEL_M).abs() < 1e-9, "{outline:?}");
    }
}

fn press(desk: &mut Desk, key: Key, times: usize) {
    for _ in 0..times {
        desk.key_press(key);
        desk.run();
    }
}

/// The corner at the pointer.
fn pointer(desk: &Desk) -> Point {
    *window(desk).editor().in_hand().unwrap().unrolled.corners.last().unwrap()
}

#[test]
fn enter_closes_with_the_corner_at_the_pointer() {
    let mut desk = unrolling();
    let corners = [Point::new(15.0, 20.0), Point::new(45.0, 20.0), Point::new(52.0, 40.0), Point::new(45.0, 52.0)];
    for at in corners {
        clicks(&mut desk, at);
    }
    points(&mut desk, Point::new(15.0, 50.0));
    let shown_m2 = window(&desk).editor().shown_run().unwrap().1.lay.as_ref().unwrap().area_m2;
    let at = pointer(&desk);
    press(&mut desk, Key::Enter, 1);
    settle(&mut desk);
    let outline = last_run(&desk).outline;
    assert_eq!((outline.len(), outline[4]), (5, at), "the corner at the pointer is one");
    let got_m2 = window(&desk).editor().run().unwrap().1.lay.as_ref().unwrap().area_m2;
    assert!((got_m2 - shown_m2).abs() < 1e-9, "shown {shown_m2}, got {got_m2}");
}

#[test]
fn a_corner_that_was_clicked_is_not_doubled_by_a_hand_at_rest_or_off_the_map() {
    for off in [false, true] {
        let mut desk = unrolling();
        let last = Point::new(45.0, 49.0);
        for at in [Point::new(15.0, 20.0), Point::new(45.0, 20.0), last] {
            clicks(&mut desk, at);
        }
        let trembles = spot(&desk, last) + egui::vec2(2.0, -1.0);
        desk.event(Event::PointerMoved(trembles));
        desk.run();
        if off {
            points(&mut desk, Point::new(20.0, 49.0));
            desk.event(Event::PointerMoved(egui::pos2(1200.0, 400.0)));
            desk.run();
        }
        press(&mut desk, Key::Enter, 1);
        settle(&mut desk);
        assert_eq!(last_run(&desk).outline.len(), 3, "off the map: {off}");
    }
}

#[test]
fn a_tool_chosen_by_a_key_has_the_keys_at_once() {
    for by_command in [false, true] {
        let mut plan = example();
        plan.runs.clear();
        let mut desk = on_page(plan, Page::Run, [1280.0, 800.0], Words::default());
        if by_command {
            desk.key_press_modifiers(Modifiers::COMMAND, Key::K);
            desk.run();
            types(&mut desk, "unroll a run");
            press(&mut desk, Key::Enter, 1);
        } else {
            press(&mut desk, Key::R, 1);
        }
        desk.get_by_label_contains("Space sets a corner, Enter closes it here");
        desk.event(Event::ModifiersChanged(Modifiers::ALT));
        let middle = window(&desk).editor().view().middle;
        press(&mut desk, Key::Space, 1);
        assert!(apart_m(pointer(&desk), middle) < 10.0, "{:?}", pointer(&desk));
        let first = pointer(&desk);
        press(&mut desk, Key::ArrowRight, 9);
        assert_eq!(window(&desk).editor().in_hand().unwrap().unrolled.corners.len(), 2);
        assert!(pointer(&desk).east_m > first.east_m + 5.0);
    }
    // Tools of one place too.
    let mut desk = on_page(example(), Page::Ground, [1280.0, 800.0], Words::default());
    desk.key_press_modifiers(Modifiers::COMMAND, Key::K);
    desk.run();
    types(&mut desk, "place the gateway");
    press(&mut desk, Key::Enter, 1);
    desk.get_by_label_contains("Space or Enter puts it there");
    let at = window(&desk).editor().tool().pointer().unwrap();
    press(&mut desk, Key::Space, 1);
    assert_eq!(plan_of(&desk).ground.gateway.map(|gateway| gateway.at), Some(at));
}

#[test]
fn arrows_leave_what_caught_the_corner_though_the_mouse_rests_on_the_map() {
    let mut desk = unrolling();
    let corners = [Point::new(15.0, 20.0), Point::new(45.0, 20.0), Point::new(45.0, 52.0)];
    for at in corners {
        clicks(&mut desk, at);
    }
    // Led over the first corner, where it is caught, and out on the other side.
    points(&mut desk, Point::new(15.0, 24.0));
    press(&mut desk, Key::ArrowDown, 4);
    assert_eq!(window(&desk).editor().snapped().map(|caught| caught.reason.as_str()), Some("closes on corner 1"));
    press(&mut desk, Key::ArrowDown, 8);
    assert!(pointer(&desk).north_m < 16.0, "{:?}", pointer(&desk));
    points(&mut desk, Point::new(20.0, 50.0));
    assert!(pointer(&desk).north_m > 40.0, "a mouse that moves leads again");
}

#[test]
fn after_a_typed_side_the_pointer_waits_at_its_corner() {
    let mut desk = unrolling();
    clicks(&mut desk, Point::new(15.0, 20.0));
    points(&mut desk, Point::new(35.0, 20.0));
    types(&mut desk, "1");
    types(&mut desk, "5");
    press(&mut desk, Key::Enter, 1);
    let in_hand = window(&desk).editor().in_hand().unwrap();
    assert_eq!(in_hand.unrolled.corners.len(), 2, "no third corner is shown: {:?}", in_hand.unrolled.corners);
    let corner = pointer(&desk);
    desk.event(Event::ModifiersChanged(Modifiers::ALT));
    desk.key_press_modifiers(Modifiers::NONE, Key::ArrowUp);
    desk.run();
    press(&mut desk, Key::ArrowUp, 5);
    assert!((pointer(&desk).north_m - corner.north_m - 6.0).abs() < 1.5, "{:?}", pointer(&desk));
}

#[test]
fn back_on_corner_1_every_side_has_its_net() {
    let mut desk = unrolling();
    clicks(&mut desk, Point::new(15.0, 20.0));
    points(&mut desk, Point::new(35.0, 25.0));
    for turn in ["0", "90", "90"] {
        press(&mut desk, Key::Tab, 1);
        types(&mut desk, "15");
        press(&mut desk, Key::Tab, 2);
        sets(&mut desk, turn);
    }
    points(&mut desk, Point::new(15.1, 20.1));
    assert_eq!(window(&desk).editor().snapped().map(|caught| caught.reason.as_str()), Some("closes on corner 1"));
    let in_hand = window(&desk).editor().in_hand().unwrap();
    let corners = &in_hand.unrolled.corners;
    let middle = Point::new(corners[0].east_m, f64::midpoint(corners[0].north_m, corners[1].north_m));
    let net_m: f64 = in_hand
        .shown()
        .drawing
        .shapes()
        .filter(|shape| shape.role == drawing::Role::Net)
        .filter_map(|shape| match &shape.form {
            drawing::Form::Path { points, .. } => {
                Some(points.windows(2).map(|pair| apart_m(pair[0], pair[1])).sum::<f64>())
            }
            _ => None,
        })
        .sum();
    assert!((net_m - 60.0).abs() < 1e-6, "net all round: {net_m} m, past {middle:?}");
    let (run, worked) = in_hand.shown().run().unwrap();
    assert_eq!((run.outline.len(), worked.lay.as_ref().unwrap().closed), (4, true));
}

#[test]
fn out_of_reach_is_said_at_the_pointer() {
    let mut desk = unrolling();
    for at in [Point::new(-40.0, -20.0), Point::new(60.0, -20.0)] {
        desk.state_mut().as_mut().unwrap().say(Message::Hand(desktop::tool::Hand::Click { at, reach_m: 0.0 }));
        desk.run();
    }
    points(&mut desk, Point::new(60.0, 70.0));
    let in_hand = window(&desk).editor().in_hand().unwrap();
    let closing = in_hand.unrolled.closing.unwrap();
    assert!(closing.spare_m < -1.0, "{closing:?}");
    let short = Words::default().length(-closing.spare_m);
    desk.get_by_label_contains(&format!("out of reach: {short} short to close from here"));
    let ruled = |desk: &Desk| {
        let editor = window(desk).editor();
        let ink = drawing::unroll::reach(editor.view(), &editor.in_hand().unwrap().unrolled);
        ink.iter().filter(|item| matches!(item, drawing::Ink::Line { width, .. } if *width == 1.0)).count()
    };
    let around_the_curve = ruled(&desk);
    // A corner from which all five nets do not even come back: nowhere is in reach.
    let at = Point::new(60.0, 400.0);
    desk.state_mut().as_mut().unwrap().say(Message::Hand(desktop::tool::Hand::Click { at, reach_m: 0.0 }));
    desk.run();
    points(&mut desk, Point::new(40.0, 20.0));
    let closing = window(&desk).editor().in_hand().unwrap().unrolled.closing.unwrap();
    assert!(closing.curve.is_none() && closing.nets == 5, "{closing:?}");
    assert!(around_the_curve > 10 && ruled(&desk) > 10, "{around_the_curve}, then {}", ruled(&desk));
}

#[test]
fn a_line_that_crosses_itself_stays_in_sight() {
    let mut desk = unrolling();
    for at in [(15.0, 20.0), (35.0, 20.0), (35.0, 40.0)] {
        clicks(&mut desk, Point::from(at));
    }
    points(&mut desk, Point::new(25.0, 10.0));
    let in_hand = window(&desk).editor().in_hand().unwrap();
    let drawn: Vec<drawing::Role> = in_hand.shown().drawing.shapes().map(|shape| shape.role).collect();
    assert!(!drawn.contains(&drawing::Role::Net), "no net can be laid on it: {drawn:?}");
    assert!(drawn.contains(&drawing::Role::Outline), "{drawn:?}");
}
