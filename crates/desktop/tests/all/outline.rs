//! An outline shaped on the map and by its figures: sides slid, corners that keep length or angle, turned about a picked
//! corner, squared up, mirrored, doubled beside; and every figure of the outline's table typed.

use crate::hand;
use crate::hand::{Desk, click_on, drag, fill, on_page, say, spot, window};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable;
use plan::{Branch, Deed, Plan, Point, Run};
use words::Words;

/// One run of 40 by 30 with nets of 2.5 m panels, east of the middle of the map.
fn plain() -> Plan {
    let outline = [(0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (0.0, 30.0)].map(Point::from).to_vec();
    let mut plan = Plan { runs: vec![Run { id: "run-1".to_owned(), outline, ..Run::default() }], ..Plan::default() };
    plan.store.nets = vec![plan::NetKind::new("long", 50.0, 20)];
    plan.store.nets[0].count = Some(4);
    plan.runs[0].nets = Some(vec!["long".to_owned(); 3]);
    plan.ground.boundary = [(-30.0, -30.0), (90.0, -30.0), (90.0, 70.0), (-30.0, 70.0)].map(Point::from).to_vec();
    plan
}

fn desk() -> Desk {
    on_page(plain(), Page::Run, [1280.0, 800.0], Words::default())
}

fn pick(desk: &mut Desk, thing: Thing) {
    say(desk, Message::Pick(Some(thing)));
}

fn outline(desk: &Desk) -> Vec<Point> {
    window(desk).editor().plan().runs[0].outline.clone()
}

fn apart_m(one: Point, other: Point) -> f64 {
    (one.east_m - other.east_m).hypot(one.north_m - other.north_m)
}

fn line_m(outline: &[Point]) -> f64 {
    outline.iter().zip(outline.iter().cycle().skip(1)).map(|(one, other)| apart_m(*one, *other)).sum()
}

fn deeds(desk: &Desk) -> Vec<Deed> {
    window(desk).editor().deeds().0
}

fn near(one: Point, other: (f64, f64), off_m: f64) -> bool {
    apart_m(one, Point::from(other)) < off_m
}

/// Presses on a place and leads the pointer on, without letting go.
fn take(desk: &mut Desk, from: Point, to: Point) {
    let (from, to) = (spot(desk, from), spot(desk, to));
    desk.event(Event::PointerMoved(from));
    desk.run();
    hand::button(desk, from, true);
    desk.run();
    lead(desk, from, to);
}

fn lead(desk: &mut Desk, from: egui::Pos2, to: egui::Pos2) {
    for step in 1..=4 {
        desk.event(Event::PointerMoved(from + (to - from) * step as f32 / 4.0));
        desk.run();
    }
}

fn let_go(desk: &mut Desk, at: Point) {
    let at = spot(desk, at);
    hand::button(desk, at, false);
    desk.run();
}

/// Presses what may lie below what is in sight, as a screen reader does.
fn press(desk: &mut Desk, label: &str) {
    desk.get_by_label(label).click_accesskit();
    desk.run();
}

fn key(desk: &mut Desk, key: Key) {
    desk.key_press(key);
    desk.run();
}

#[test]
fn a_side_of_what_is_picked_slides_parallel_and_its_neighbours_follow() {
    let mut desk = desk();
    pick(&mut desk, Thing::Run { run: 0 });
    // Off the middle of the east side, which would put a corner in.
    let (from, to) = (spot(&desk, Point::new(40.0, 5.0)), spot(&desk, Point::new(52.0, 9.0)));
    desk.event(Event::ModifiersChanged(Modifiers::ALT));
    desk.run();
    drag(&mut desk, from, to);
    let slid = outline(&desk);
    assert!((slid[1].east_m - 52.0).abs() < 0.3, "{slid:?}");
    assert_eq!((slid[1].east_m, slid[1].north_m), (slid[2].east_m, 0.0));
    assert_eq!((slid[0], slid[3]), (Point::new(0.0, 0.0), Point::new(0.0, 30.0)));
    assert_eq!(deeds(&desk), [Deed::SlideSide]);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::RunSide { run: 0, side: 1 }));
    say(&mut desk, Message::Undo);
    assert_eq!(*window(&desk).editor().plan(), plain());
}

#[test]
fn a_side_between_neighbours_along_it_says_why_it_stays() {
    let mut plan = plain();
    plan.runs[0].outline.insert(1, Point::new(20.0, 0.0));
    let mut desk = on_page(plan.clone(), Page::Run, [1280.0, 800.0], Words::default());
    pick(&mut desk, Thing::Run { run: 0 });
    take(&mut desk, Point::new(5.0, 0.0), Point::new(5.0, -8.0));
    let said = window(&desk).editor().shape_told().map(|text| Words::default().text(text));
    assert_eq!(said, Some("This side cannot slide: a neighbour runs along it."));
    let_go(&mut desk, Point::new(5.0, -8.0));
    assert_eq!(*window(&desk).editor().plan(), plan);
    assert!(deeds(&desk).is_empty());
}

#[test]
fn a_corner_keeps_the_length_or_the_angle_or_goes_free_by_keys_while_it_is_dragged() {
    let mut desk = desk();
    let was = outline(&desk);
    take(&mut desk, was[2], Point::new(47.0, 36.0));
    assert!(window(&desk).editor().corner_in_hand().unwrap().way.is_none());
    key(&mut desk, Key::L);
    let kept = outline(&desk);
    assert!((line_m(&kept) - line_m(&was)).abs() < 1e-9, "{}", line_m(&kept) - line_m(&was));
    assert!(apart_m(kept[2], was[2]) < 6.0);
    let to = spot(&desk, Point::new(55.0, 12.0));
    let from = spot(&desk, Point::new(47.0, 36.0));
    lead(&mut desk, from, to);
    let kept = outline(&desk);
    assert!((line_m(&kept) - line_m(&was)).abs() < 1e-9);
    assert!(apart_m(kept[2], was[2]) > 3.0, "it went along");
    let way = window(&desk).editor().corner_in_hand().unwrap().way.unwrap();
    assert!(way.1 && way.0.len() > 100, "the ellipse is shown");
    desk.get_by_label_contains("length kept:");
    key(&mut desk, Key::A);
    let turned = outline(&desk);
    let (one, other) = (
        (turned[2].east_m - turned[1].east_m, turned[2].north_m - turned[1].north_m),
        (turned[3].east_m - turned[2].east_m, turned[3].north_m - turned[2].north_m),
    );
    assert!((one.0 * other.0 + one.1 * other.1).abs() < 1e-6, "a right angle stays one");
    let_go(&mut desk, Point::new(55.0, 12.0));
    assert_eq!(deeds(&desk), [Deed::KeepAngle], "one step, called what it ended as");
    say(&mut desk, Message::Undo);
    assert_eq!(outline(&desk), was);
    // The choice on the page is the same.
    press(&mut desk, "keeps length");
    take(&mut desk, was[1], Point::new(44.0, 6.0));
    let_go(&mut desk, Point::new(44.0, 6.0));
    assert!((line_m(&outline(&desk)) - line_m(&was)).abs() < 1e-9);
    assert_eq!(deeds(&desk), [Deed::KeepLength]);
    press(&mut desk, "goes free");
    assert_eq!(window(&desk).editor().keep(), workup::shaping::Keep::Free);
}

#[test]
fn a_corner_in_the_hand_takes_typed_figures() {
    let mut desk = desk();
    let was = outline(&desk);
    take(&mut desk, was[2], Point::new(44.0, 33.0));
    // The first figure goes to the side before, Tab to the one after.
    for text in ["3", "5"] {
        desk.event(Event::Text(text.to_owned()));
        desk.run();
    }
    key(&mut desk, Key::Tab);
    desk.event(Event::Text("45".to_owned()));
    desk.run();
    key(&mut desk, Key::Enter);
    let set = outline(&desk);
    assert!((apart_m(set[1], set[2]) - 35.0).abs() < 1e-9, "{}", apart_m(set[1], set[2]));
    assert!((apart_m(set[2], set[3]) - 45.0).abs() < 1e-9);
    assert_eq!(deeds(&desk), [Deed::CornerFigures]);
    assert!(window(&desk).editor().corner_in_hand().is_none(), "set, it is let go of");
    let_go(&mut desk, Point::new(44.0, 33.0));
    assert_eq!(outline(&desk), set);
}

#[test]
fn typed_figures_that_cannot_close_say_so_and_esc_gives_back() {
    let mut desk = desk();
    let was = outline(&desk);
    take(&mut desk, was[2], Point::new(44.0, 33.0));
    let led = outline(&desk);
    desk.event(Event::Text("5".to_owned()));
    desk.run();
    key(&mut desk, Key::Tab);
    desk.event(Event::Text("6".to_owned()));
    desk.run();
    desk.get_by_label_contains("No corner has these figures");
    key(&mut desk, Key::Enter);
    assert!(window(&desk).editor().corner_in_hand().is_some(), "what cannot be is not set");
    desk.key_press_modifiers(Modifiers::COMMAND, Key::A);
    desk.run();
    desk.event(Event::Text("wide".to_owned()));
    desk.run();
    desk.get_by_label_contains("is no number");
    key(&mut desk, Key::Escape);
    // Given back to the pointer, it stands where that is, and goes on with it.
    assert!(apart_m(outline(&desk)[2], led[2]) < 1e-9);
    let (from, to) = (spot(&desk, Point::new(44.0, 33.0)), spot(&desk, Point::new(49.0, 36.0)));
    lead(&mut desk, from, to);
    assert!(near(outline(&desk)[2], (49.0, 36.0), 1.2), "{:?}", outline(&desk));
    key(&mut desk, Key::Escape);
    assert_eq!(outline(&desk), was);
    let_go(&mut desk, Point::new(44.0, 33.0));
    assert!(deeds(&desk).is_empty());
}

#[test]
fn a_run_turns_about_a_picked_corner_by_typed_degrees_and_by_its_ring() {
    let mut desk = desk();
    pick(&mut desk, Thing::RunCorner { run: 0, vertex: 0 });
    click_on(&mut desk, "Turn it about this corner");
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Run { run: 0 }));
    assert_eq!(window(&desk).editor().turns_about(), Some(Point::new(0.0, 0.0)));
    fill(&mut desk, "Turn it by", "90");
    let turned = outline(&desk);
    assert!(near(turned[0], (0.0, 0.0), 1e-9) && near(turned[1], (0.0, -40.0), 1e-9), "{turned:?}");
    say(&mut desk, Message::Undo);
    let ring = spot(&desk, window(&desk).editor().turn_ring().unwrap()) - vec2(0.0, 30.0);
    drag(&mut desk, ring, ring + vec2(60.0, 20.0));
    let turned = outline(&desk);
    assert!(near(turned[0], (0.0, 0.0), 1e-9) && !near(turned[1], (40.0, 0.0), 1.0));
    assert_eq!(deeds(&desk), [Deed::Turn]);
    say(&mut desk, Message::Undo);
    // The cross is dragged to another corner, which catches it.
    let (from, to) = (spot(&desk, Point::new(0.0, 0.0)), spot(&desk, Point::new(40.0, 30.0)));
    drag(&mut desk, from, to + vec2(3.0, -2.0));
    assert_eq!(window(&desk).editor().turns_about(), Some(Point::new(40.0, 30.0)));
    assert_eq!(*window(&desk).editor().plan(), plain(), "that is no change of the plan");
    // The field that was typed into brought itself into sight, and the button out of it.
    press(&mut desk, "Turn it about its middle");
    assert_eq!(window(&desk).editor().turns_about(), Some(Point::new(20.0, 15.0)));
    for bad in ["", "far", "1000"] {
        fill(&mut desk, "Turn it by", bad);
        desk.get_by_label("Turn it by").focus();
        desk.run();
        key(&mut desk, Key::Escape);
        assert_eq!(*window(&desk).editor().plan(), plain(), "{bad:?}");
    }
}

#[test]
fn an_outline_is_squared_up_mirrored_and_doubled_beside_by_buttons_and_keys() {
    let mut plan = plain();
    plan.runs[0].outline[2] = Point::new(41.0, 31.0);
    let mut desk = on_page(plan.clone(), Page::Run, [1280.0, 800.0], Words::default());
    pick(&mut desk, Thing::Run { run: 0 });
    click_on(&mut desk, "Square it up");
    let squared = outline(&desk);
    for corner in 0..4 {
        let way = |one: usize, other: usize| {
            let (one, other) = (squared[one % 4], squared[other % 4]);
            (other.east_m - one.east_m, other.north_m - one.north_m)
        };
        let (on, away) = (way(corner, corner + 1), way(corner + 1, corner + 2));
        assert!((on.0 * away.0 + on.1 * away.1).abs() < 1e-6);
    }
    key(&mut desk, Key::M);
    let mirrored = outline(&desk);
    assert!(mirrored[0].east_m > mirrored[1].east_m, "east and west changed places");
    desk.key_press_modifiers(Modifiers::SHIFT, Key::M);
    desk.run();
    assert!(outline(&desk)[0].north_m > outline(&desk)[3].north_m);
    assert_eq!(deeds(&desk), [Deed::SquareUp, Deed::Mirror, Deed::Mirror]);
    press(&mut desk, "Pick side 2 to 3");
    assert_eq!(window(&desk).editor().picked(), Some(Thing::RunSide { run: 0, side: 1 }));
    let side = outline(&desk)[1..3].to_vec();
    click_on(&mut desk, "Mirror it over the picked side");
    assert!(apart_m(outline(&desk)[1], side[0]) < 1e-9 && apart_m(outline(&desk)[2], side[1]) < 1e-9, "the side stays");
    key(&mut desk, Key::N);
    let runs = window(&desk).editor().plan().runs.clone();
    assert_eq!(runs.len(), 2);
    assert_eq!(runs[1].name, "run-2");
    for corner in side {
        assert!(runs[1].outline.iter().any(|&at| apart_m(at, corner) < 1e-9));
    }
    assert_eq!(deeds(&desk).last(), Some(&Deed::DuplicateBeside));
    for _ in 0..5 {
        say(&mut desk, Message::Undo);
    }
    assert_eq!(*window(&desk).editor().plan(), plan);
}

#[test]
fn arrow_keys_obey_what_corners_keep() {
    let mut desk = desk();
    let was = outline(&desk);
    press(&mut desk, "keeps length");
    pick(&mut desk, Thing::RunCorner { run: 0, vertex: 2 });
    for _ in 0..5 {
        key(&mut desk, Key::ArrowRight);
    }
    let kept = outline(&desk);
    assert!((line_m(&kept) - line_m(&was)).abs() < 1e-9, "{}", line_m(&kept) - line_m(&was));
    assert!(kept[2].east_m > was[2].east_m + 0.1 && kept[2].north_m < was[2].north_m, "{kept:?}");
    press(&mut desk, "keeps angle");
    pick(&mut desk, Thing::RunCorner { run: 0, vertex: 2 });
    let turn_deg = |outline: &[Point]| {
        let beside = [Some(outline[1]), Some(outline[3])];
        workup::shaping::turn_deg(beside, outline[2]).unwrap()
    };
    key(&mut desk, Key::ArrowUp);
    let turned = outline(&desk);
    assert!((turn_deg(&turned) - turn_deg(&kept)).abs() < 1e-6 && apart_m(turned[2], kept[2]) > 0.01);
    assert_eq!(deeds(&desk).last(), Some(&Deed::KeepAngle));
    assert!(deeds(&desk)[..5].iter().all(|deed| *deed == Deed::KeepLength), "{:?}", deeds(&desk));
    press(&mut desk, "goes free");
    pick(&mut desk, Thing::RunCorner { run: 0, vertex: 2 });
    key(&mut desk, Key::ArrowUp);
    assert!((outline(&desk)[2].north_m - turned[2].north_m - 0.1).abs() < 1e-9);
}

#[test]
fn a_corner_that_cannot_go_where_an_arrow_leads_says_so() {
    let mut plan = plain();
    plan.runs[0].outline.insert(1, Point::new(20.0, 0.0));
    let mut desk = on_page(plan.clone(), Page::Run, [1280.0, 800.0], Words::default());
    press(&mut desk, "keeps length");
    pick(&mut desk, Thing::RunCorner { run: 0, vertex: 1 });
    key(&mut desk, Key::ArrowUp);
    let told = window(&desk).editor().shape_told().map(|text| Words::default().text(text));
    assert_eq!(told, Some("Kept as it is, this corner cannot go that way."));
    assert_eq!(*window(&desk).editor().plan(), plan);
    key(&mut desk, Key::ArrowRight);
    assert!(near(outline(&desk)[1], (20.1, 0.0), 1e-9), "along its side it goes: {:?}", outline(&desk));
}

#[test]
fn a_branch_is_mirrored_by_a_corner_of_it_about_where_it_hangs() {
    let mut plan = plain();
    let hanging = [(20.0, 0.0), (26.0, -10.0), (24.0, -20.0)].map(Point::from).to_vec();
    plan.runs[0].branches =
        vec![Branch { from_m: 20.0, outline: hanging, nets: vec!["long".to_owned()], ..Branch::default() }];
    let mut desk = on_page(plan.clone(), Page::Run, [1280.0, 800.0], Words::default());
    pick(&mut desk, Thing::BranchCorner { run: 0, branch: 0, vertex: 1 });
    press(&mut desk, "Mirror it east to west");
    let branch = |desk: &Desk| window(desk).editor().plan().runs[0].branches[0].outline.clone();
    for (at, to) in branch(&desk).into_iter().zip([(20.0, 0.0), (14.0, -10.0), (16.0, -20.0)]) {
        assert!(near(at, to, 1e-9), "{:?}", branch(&desk));
    }
    desk.key_press_modifiers(Modifiers::SHIFT, Key::M);
    desk.run();
    assert!(near(branch(&desk)[1], (14.0, 10.0), 1e-9), "{:?}", branch(&desk));
    assert_eq!(outline(&desk), plan.runs[0].outline, "the run stays");
    assert_eq!(deeds(&desk), [Deed::Mirror, Deed::Mirror]);
    say(&mut desk, Message::Undo);
    say(&mut desk, Message::Undo);
    assert_eq!(*window(&desk).editor().plan(), plan);
}

#[test]
fn what_has_no_side_picked_or_no_like_side_says_so() {
    let mut plan = plain();
    plan.runs[0].outline.pop();
    let mut desk = on_page(plan.clone(), Page::Run, [1280.0, 800.0], Words::default());
    let told = |desk: &Desk| window(desk).editor().shape_told().map(|text| Words::default().text(text));
    pick(&mut desk, Thing::Run { run: 0 });
    key(&mut desk, Key::N);
    assert_eq!(told(&desk), Some("Pick a side first."));
    key(&mut desk, Key::Q);
    assert!(told(&desk).unwrap().starts_with("It cannot be squared up"), "{:?}", told(&desk));
    pick(&mut desk, Thing::RunSide { run: 0, side: 0 });
    desk.key_press_modifiers(Modifiers::SHIFT, Key::N);
    desk.run();
    assert!(told(&desk).unwrap().starts_with("It has no other side"));
    assert_eq!(*window(&desk).editor().plan(), plan);
}

#[test]
fn every_figure_of_the_table_is_so_exactly_and_a_bad_one_changes_nothing() {
    let mut desk = desk();
    fill(&mut desk, "Length of side 1 to 2", "37.123");
    assert!((apart_m(outline(&desk)[0], outline(&desk)[1]) - 37.123).abs() < 1e-9);
    fill(&mut desk, "Panels of side 1 to 2", "14");
    assert!((apart_m(outline(&desk)[0], outline(&desk)[1]) - 35.0).abs() < 1e-9, "fourteen of 2.5 m");
    fill(&mut desk, "Bearing of side 1 to 2", "90");
    fill(&mut desk, "East of corner 2", "40");
    fill(&mut desk, "North of corner 2", "-2.5");
    assert_eq!(outline(&desk)[1], Point::new(40.0, -2.5));
    fill(&mut desk, "Bearing of side 3 to 4", "225");
    let (one, other) = (outline(&desk)[2], outline(&desk)[3]);
    assert!((one.east_m - other.east_m - (one.north_m - other.north_m)).abs() < 1e-9, "to the south-west");
    assert!((apart_m(one, other) - 40.0).abs() < 1e-9, "its length stays");
    fill(&mut desk, "Turn of corner 2", "60");
    let turned = outline(&desk);
    let way = |one: usize, other: usize| {
        (turned[other].east_m - turned[one].east_m, turned[other].north_m - turned[one].north_m)
    };
    let ((a, b), (c, d)) = (way(0, 1), way(1, 2));
    let turn_deg = (a * d - b * c).atan2(a * c + b * d).to_degrees();
    assert!((turn_deg - 60.0).abs() < 1e-9, "{turn_deg}");
    assert_eq!(
        deeds(&desk),
        [Deed::SideLength, Deed::SidePanels, Deed::CornerPlace, Deed::CornerPlace, Deed::SideBearing, Deed::CornerTurn]
    );
    let before = window(&desk).editor().plan().clone();
    for (label, texts) in [
        ("Length of side 1 to 2", ["NaN", "-4", "1e99"]),
        ("Panels of side 2 to 3", ["many", "0", "2.5"]),
        ("Bearing of side 2 to 3", ["north", "inf", "720"]),
        ("Turn of corner 3", ["sharp", "180", "-20"]),
        ("East of corner 1", ["NaN", "here", "1e9"]),
        ("North of corner 4", ["", "nan m", "4 kg"]),
    ] {
        for text in texts {
            fill(&mut desk, label, text);
            assert_eq!(*window(&desk).editor().plan(), before, "{label}: {text}");
            desk.get_by_label(label).focus();
            desk.run();
            key(&mut desk, Key::Escape);
        }
    }
}

#[test]
fn the_list_of_what_was_done_names_each() {
    let mut desk = desk();
    pick(&mut desk, Thing::Run { run: 0 });
    key(&mut desk, Key::M);
    fill(&mut desk, "Panels of side 1 to 2", "14");
    click_on(&mut desk, "What was done");
    desk.get_by_label("1  mirrored it");
    desk.get_by_label("2  set a side’s panels");
}

#[test]
fn of_a_traced_line_the_sides_about_what_is_picked_are_typed() {
    let mut plan = hand::example();
    plan.runs.clear();
    let around = |corner: usize| {
        let way = std::f64::consts::TAU * corner as f64 / 60.0;
        plan::Point::new(50.0 + 40.0 * way.cos(), 50.0 + 40.0 * way.sin())
    };
    plan.ground.boundary = (0..60).map(around).collect();
    let mut desk = hand::on_page(plan, Page::Ground, [1280.0, 2400.0], Words::default());
    hand::say(&mut desk, Message::Pick(Some(Thing::Boundary)));
    assert!(hand::says(&desk, "Sides 1 to 24 of 60"));
    assert!(desk.query_by_label("Length of side 40 to 41").is_none());
    hand::say(&mut desk, Message::Pick(Some(Thing::BoundaryCorner { vertex: 39 })));
    assert!(hand::says(&desk, "Sides 28 to 51 of 60"));
    hand::fill(&mut desk, "Length of side 40 to 41", "7.25");
    let outline = hand::plan_of(&desk).ground.boundary;
    let side_m = (outline[40].east_m - outline[39].east_m).hypot(outline[40].north_m - outline[39].north_m);
    assert!((side_m - 7.25).abs() < 1e-9, "{side_m}");
    // The last sides, and the corner at their end.
    hand::say(&mut desk, Message::Pick(Some(Thing::BoundaryCorner { vertex: 59 })));
    assert!(hand::says(&desk, "Sides 37 to 60 of 60"));
    assert!(desk.query_by_label("Length of side 60 to 1").is_some());
}
