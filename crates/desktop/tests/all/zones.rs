//! Stretches of other grass taken by their ends: on the map, on the unfolded line, by keys, over corner 1, on a slope.

use crate::hand;
use crate::hand::{Desk, button, click, deeds, drag, example, fill, spot, window};
use desktop::editor::{Message, Page};
use drawing::{Form, Role, Thing};
use egui::{Key, Modifiers, Pos2};
use egui_kittest::kittest::{NodeT, Queryable};
use plan::{LeakageZone, Plan, Point, Rest, Run};
use words::Words;

const END: Thing = Thing::ZoneEnd { run: 0, branch: None, zone: 0, last: true };
const START: Thing = Thing::ZoneEnd { run: 0, branch: None, zone: 0, last: false };
const ZONE: Thing = Thing::Zone { run: 0, branch: None, zone: 0 };

fn zone(from_m: f64, to_m: f64) -> LeakageZone {
    LeakageZone { from_m, to_m, s_per_m: 1e-4, rest: Rest::new() }
}

/// The example with one stretch, on the page about volts.
fn open(from_m: f64, to_m: f64) -> Desk {
    let mut plan = example();
    plan.runs[0].leakage_zones = vec![zone(from_m, to_m)];
    on_page(plan)
}

fn on_page(plan: Plan) -> Desk {
    hand::on_page(plan, Page::Power, [1280.0, 2400.0], Words::default())
}

fn run(desk: &Desk) -> &Run {
    &window(desk).editor().plan().runs[0]
}

fn stretch(desk: &Desk) -> (f64, f64) {
    let zone = &run(desk).leakage_zones[0];
    (zone.from_m, zone.to_m)
}

fn place(desk: &Desk, along_m: f64) -> Point {
    window(desk).editor().run().unwrap().1.lay.as_ref().unwrap().place_at(along_m).unwrap()
}

/// Where the bar of an end stands on the screen: a little outside the net.
fn bar(desk: &Desk, end: Thing) -> Pos2 {
    let mut shapes = window(desk).editor().drawing().shapes();
    let mark = shapes.find_map(|shape| match shape.form {
        Form::Mark { at, toward_rad } if shape.role == Role::ZoneEnd && shape.thing == Some(end) => {
            Some((at, toward_rad))
        }
        _ => None,
    });
    let (at, toward_rad) = mark.unwrap();
    spot(desk, at) + 12.0 * egui::vec2(toward_rad.cos() as f32, -toward_rad.sin() as f32)
}

/// From the bar of an end to where it would be at another place of the line.
fn by(desk: &Desk, end: Thing, along_m: f64) -> (Pos2, Pos2) {
    let (from_m, to_m) = stretch(desk);
    let is_m = if end == END { to_m } else { from_m };
    let from = bar(desk, end);
    (from, from + (spot(desk, place(desk, along_m)) - spot(desk, place(desk, is_m))))
}

fn post_m(desk: &Desk, post: usize) -> f64 {
    window(desk).editor().run().unwrap().1.lay.as_ref().unwrap().posts[post].along_m
}

#[test]
fn an_end_is_dragged_is_caught_by_a_post_and_says_its_figures_and_grass_meanwhile() {
    let mut desk = open(40.0, 52.0);
    let count = deeds(&desk);
    // The first side is 35.7 m long, the second 25 m: post 15 and further stand on the second.
    let post = (0..45).find(|&post| post_m(&desk, post) > 44.0 && post_m(&desk, post) < 48.0).unwrap();
    let post_m = post_m(&desk, post);
    let (from, to) = by(&desk, END, post_m + 0.4);
    desk.event(egui::Event::PointerMoved(from));
    desk.run();
    button(&desk, from, true);
    desk.run();
    desk.event(egui::Event::PointerMoved(to));
    desk.run();
    let told = window(&desk).editor().snapped().unwrap().reason.clone();
    let length = Words::default().length(post_m - 40.0);
    assert_eq!(told, format!("Long, wet grass, {length}, to post {}", post + 1));
    assert_eq!(window(&desk).editor().picked(), Some(END));
    // As long as Alt is held nothing catches it.
    desk.event(egui::Event::ModifiersChanged(Modifiers::ALT));
    desk.run();
    desk.event(egui::Event::PointerMoved(to + egui::vec2(0.5, 0.0)));
    desk.run();
    assert!((stretch(&desk).1 - post_m - 0.4).abs() < 0.2, "{} at {post_m}", stretch(&desk).1);
    assert!((stretch(&desk).1 - post_m).abs() > 0.1);
    desk.event(egui::Event::ModifiersChanged(Modifiers::NONE));
    desk.run();
    desk.event(egui::Event::PointerMoved(to));
    desk.run();
    button(&desk, to, false);
    desk.run();
    assert!((stretch(&desk).1 - post_m).abs() < 1e-9 && (stretch(&desk).0 - 40.0).abs() < 1e-12);
    assert_eq!(deeds(&desk), count + 1, "a drag is one step");
    assert!(window(&desk).editor().snapped().is_none());
    desk.state_mut().as_mut().unwrap().say(Message::Undo);
    desk.run();
    assert_eq!(stretch(&desk), (40.0, 52.0));
}

#[test]
fn an_end_never_passes_the_other() {
    let mut desk = open(40.0, 50.0);
    let (from, to) = by(&desk, START, 58.0);
    drag(&mut desk, from, to);
    let (from_m, to_m) = stretch(&desk);
    assert!(from_m < to_m && (to_m - 50.0).abs() < 1e-12 && (to_m - from_m - 0.1).abs() < 1e-9, "{from_m} to {to_m}");
    let (from, to) = by(&desk, END, 42.0);
    drag(&mut desk, from, to);
    let (from_m, to_m) = stretch(&desk);
    assert!((to_m - from_m - 0.1).abs() < 1e-9, "{from_m} to {to_m}");
}

#[test]
fn a_stretch_grows_over_corner_1_and_back() {
    let mut desk = open(140.0, 147.0);
    let (from, to) = by(&desk, END, 5.3);
    drag(&mut desk, from, to);
    let (from_m, to_m) = stretch(&desk);
    assert!((from_m - 140.0).abs() < 1e-12 && to_m < 8.0, "{from_m} to {to_m}");
    let (from, to) = by(&desk, END, 145.0);
    drag(&mut desk, from, to);
    let (from_m, to_m) = stretch(&desk);
    assert!(from_m < to_m && (143.0..147.0).contains(&to_m), "{from_m} to {to_m}");
}

#[test]
fn an_end_is_dragged_on_the_unfolded_line_too() {
    let mut desk = open(40.0, 52.0);
    let line = desk.get_by_label("The run unfolded").rect();
    let x = |along_m: f64| line.left() + 40.0 + (line.width() - 80.0) * (along_m / 150.0) as f32;
    let at = |along_m: f64| egui::pos2(x(along_m), line.top() + 18.0);
    let count = deeds(&desk);
    let (from, to) = (at(52.0), at(57.0));
    drag(&mut desk, from, to);
    let (from_m, to_m) = stretch(&desk);
    assert!((from_m - 40.0).abs() < 1e-12 && (to_m - 57.0).abs() < 2.0 && to_m > 53.0, "{from_m} to {to_m}");
    assert_eq!(deeds(&desk), count + 1);
    assert_eq!(window(&desk).editor().picked(), Some(END));
}

#[test]
fn ends_and_stretch_are_named_reached_by_tab_nudged_and_deleted() {
    let mut desk = open(40.0, 52.0);
    let start = "Start of long, wet grass, 4.3 m past corner 2";
    desk.get_by_label("Corner 5 of Round Quince House").focus();
    desk.run();
    desk.key_press(Key::Tab);
    desk.run();
    let whole = "Long, wet grass, 12.0 m, from 4.3 m past corner 2 to 16.3 m past corner 2";
    assert!(desk.get_by_label(whole).accesskit_node().is_focused(), "Tab goes on from the corners");
    assert_eq!(window(&desk).editor().picked(), Some(ZONE));
    let count = deeds(&desk);
    // The second side goes north.
    desk.key_press(Key::ArrowUp);
    desk.run();
    let (from_m, to_m) = stretch(&desk);
    assert!(from_m > 40.05 && (to_m - from_m - 12.0).abs() < 1e-9 && deeds(&desk) == count + 1);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::ArrowUp);
    desk.run();
    assert!(stretch(&desk).1 > to_m + 0.05 && (stretch(&desk).0 - from_m).abs() < 1e-12, "Ctrl takes the end");
    desk.key_press_modifiers(Modifiers::ALT, Key::ArrowUp);
    desk.run();
    assert!(stretch(&desk).0 > from_m + 0.05, "Alt takes the start");
    assert_eq!(deeds(&desk), count + 3);
    for _ in 0..3 {
        desk.state_mut().as_mut().unwrap().say(Message::Undo);
        desk.run();
    }
    assert_eq!(stretch(&desk), (40.0, 52.0));
    desk.key_press(Key::Tab);
    desk.run();
    assert!(desk.get_by_label(start).accesskit_node().is_focused());
    desk.key_press_modifiers(Modifiers::SHIFT, Key::ArrowUp);
    desk.run();
    let (from_m, to_m) = stretch(&desk);
    assert!((40.9..41.01).contains(&from_m) && (to_m - 52.0).abs() < 1e-12, "a metre with Shift: {from_m}");
    desk.key_press(Key::Delete);
    desk.run();
    assert!(run(&desk).leakage_zones.is_empty());
}

#[test]
fn an_end_is_picked_by_a_click_on_its_bar_and_opens_its_fields() {
    let mut desk = open(40.0, 52.0);
    let at = bar(&desk, START);
    click(&mut desk, at);
    assert_eq!(window(&desk).editor().picked(), Some(START));
    fill(&mut desk, "Start of grass 1", "45");
    assert_eq!(stretch(&desk), (45.0, 52.0));
}

#[test]
fn on_a_slope_an_end_goes_by_metres_of_ground() {
    let mut plan = example();
    plan.runs[0].leakage_zones = vec![zone(40.0, 52.0)];
    let outline = plan.runs[0].outline.clone();
    let at = Point::new(
        f64::midpoint(outline[1].east_m, outline[2].east_m),
        f64::midpoint(outline[1].north_m, outline[2].north_m),
    );
    plan.runs[0].side_slopes = vec![plan::SideSlope { at, rises_m: Some(10.0), one_in: None, rest: Rest::new() }];
    let mut desk = on_page(plan);
    let lay = window(&desk).editor().run().unwrap().1.lay.clone().unwrap();
    let (corner_m, next_m) = (lay.vertices[1].1, lay.vertices[2].1);
    let flat_m = (outline[2].east_m - outline[1].east_m).hypot(outline[2].north_m - outline[1].north_m);
    assert!((next_m - corner_m - flat_m.hypot(10.0)).abs() < 0.05, "the side is as long as its ground");
    desk.event(egui::Event::ModifiersChanged(Modifiers::ALT));
    let wanted_m = corner_m + 0.8 * (next_m - corner_m);
    let (from, to) = by(&desk, END, wanted_m);
    drag(&mut desk, from, to);
    assert!((stretch(&desk).1 - wanted_m).abs() < 0.1, "{} of {wanted_m}", stretch(&desk).1);
}
