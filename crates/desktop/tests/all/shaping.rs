//! Shaping by hand: whole things moved and turned, sides typed, caught by posts and corners, doubled, taken out.

use crate::hand;
use crate::hand::{click, click_on, cold, drag, fill, say, spot, window};
use desktop::editor::{Message, Page};
use desktop::tool::{Drawn, Tool};
use drawing::Thing;
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable;
use plan::{Deed, HazardKind, Point, StatedBrace};

#[test]
fn a_run_is_turned_by_its_ring_and_by_keys_about_its_middle() {
    let mut desk = cold();
    say(&mut desk, Message::Pick(Some(Thing::Run { run: 0 })));
    let before = window(&desk).editor().plan().runs[0].clone();
    let ring = spot(&desk, window(&desk).editor().turn_ring().unwrap()) - vec2(0.0, 30.0);
    drag(&mut desk, ring, ring + vec2(80.0, 40.0));
    let after = window(&desk).editor().plan().runs[0].clone();
    let side = |run: &plan::Run| apart(run.outline[0], run.outline[1]);
    assert!((side(&after) - side(&before)).abs() < 1e-9, "a turn keeps every length");
    assert!(apart(after.outline[0], before.outline[0]) > 1.0);
    assert_eq!(window(&desk).editor().deeds().0, [Deed::Turn]);
    desk.key_press(Key::CloseBracket);
    desk.run();
    desk.key_press(Key::OpenBracket);
    desk.run();
    let back = &window(&desk).editor().plan().runs[0];
    assert!(apart(back.outline[2], after.outline[2]) < 1e-9, "five degrees there and back");
}

fn apart(one: Point, other: Point) -> f64 {
    (one.east_m - other.east_m).hypot(one.north_m - other.north_m)
}

#[test]
fn a_typed_side_moves_its_far_corner_and_a_bad_one_nothing() {
    let mut desk = cold();
    let before = window(&desk).editor().plan().clone();
    for bad in ["long", "-5", "1e12", ""] {
        fill(&mut desk, "Length of side 1 to 2", bad);
        desk.key_press(Key::Escape);
        desk.run();
        assert_eq!(*window(&desk).editor().plan(), before, "{bad:?}");
    }
    fill(&mut desk, "Length of side 1 to 2", "40,25");
    let outline = &window(&desk).editor().plan().runs[0].outline;
    assert!((apart(outline[0], outline[1]) - 40.25).abs() < 1e-9);
    assert_eq!(outline[0], before.runs[0].outline[0]);
    assert_eq!(window(&desk).editor().deeds().0, [Deed::SideLength]);
}

#[test]
fn a_corner_near_a_paddock_corner_is_caught_and_says_why() {
    let mut desk = cold();
    let plan = window(&desk).editor().plan().clone();
    let (corner, post) = (plan.runs[0].outline[4], plan.ground.boundary[0]);
    let (from, to) = (spot(&desk, corner), spot(&desk, post) + vec2(4.0, -3.0));
    desk.event(egui::Event::PointerMoved(from));
    desk.run();
    hand::button(&desk, from, true);
    desk.run();
    for share in [0.5, 0.9, 1.0] {
        desk.event(egui::Event::PointerMoved(from + (to - from) * share));
        desk.run();
    }
    let snapped = window(&desk).editor().snapped().cloned().unwrap();
    assert_eq!(snapped.at, post);
    assert_eq!(snapped.reason, "on corner 1 of the paddock");
    hand::button(&desk, to, false);
    desk.run();
    assert_eq!(window(&desk).editor().plan().runs[0].outline[4], post);
    assert!(window(&desk).editor().snapped().is_none());
}

#[test]
fn a_run_is_doubled_and_taken_out_again() {
    let mut desk = cold();
    say(&mut desk, Message::Pick(Some(Thing::Run { run: 0 })));
    click_on(&mut desk, "Double it");
    let plan = window(&desk).editor().plan().clone();
    assert_eq!(plan.runs.len(), 2);
    assert_ne!(plan.runs[0].id, plan.runs[1].id);
    assert_eq!(plan.runs[1].name, "Round Quince House 2");
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Run { run: 1 }));
    click_on(&mut desk, "Take it out");
    assert_eq!(window(&desk).editor().plan().runs.len(), 1);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    desk.run();
    assert_eq!(*window(&desk).editor().plan(), plan);
}

#[test]
fn keep_outs_hazards_and_the_coop_are_drawn() {
    let mut desk = cold();
    say(&mut desk, Message::Open(desktop::editor::Page::Ground));
    click_on(&mut desk, "Keep-out");
    let at = [(60.0, 20.0), (66.0, 20.0), (66.0, 26.0)].map(|(east, north)| spot(&desk, Point::new(east, north)));
    for spot in at {
        click(&mut desk, spot);
    }
    desk.key_press(Key::Enter);
    desk.run();
    let ground = &window(&desk).editor().plan().ground;
    let drawn = ground.keep_outs.len() - 1;
    assert_eq!(ground.keep_outs[drawn].outline.len(), 3);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::KeepOut { keep_out: drawn }));

    let foreign_earth = Drawn::Hazard(HazardKind::ForeignEarth);
    say(&mut desk, Message::Use(Tool::outline(foreign_earth)));
    let place = spot(&desk, Point::new(20.0, 55.0));
    click(&mut desk, place);
    let hazards = &window(&desk).editor().plan().ground.hazards;
    assert_eq!(hazards.last().map(|hazard| (hazard.kind, hazard.path.len())), Some((HazardKind::ForeignEarth, 1)));

    let before = window(&desk).editor().plan().coop.clone().unwrap();
    say(&mut desk, Message::Use(Tool::outline(Drawn::Coop)));
    let place = spot(&desk, Point::new(33.0, 33.0));
    click(&mut desk, place);
    let coop = window(&desk).editor().plan().coop.clone().unwrap();
    assert_eq!(coop.id, before.id);
    assert!(apart(coop.at, Point::new(33.0, 33.0)) < 0.2);
}

#[test]
fn the_list_of_what_was_done_goes_back_and_forth() {
    let mut desk = cold();
    let first = window(&desk).editor().plan().clone();
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 1 })));
    for _ in 0..3 {
        say(&mut desk, Message::Nudge(0.5, 0.0));
    }
    let last = window(&desk).editor().plan().clone();
    click_on(&mut desk, "What was done");
    desk.get_by_label("2  moved a corner");
    click_on(&mut desk, "as it was opened");
    assert_eq!(*window(&desk).editor().plan(), first);
    click_on(&mut desk, "What was done");
    click_on(&mut desk, "3  moved a corner");
    assert_eq!(*window(&desk).editor().plan(), last);
}

#[test]
fn fields_of_the_ground_keep_the_old_value_when_they_refuse() {
    let mut desk = cold();
    say(&mut desk, Message::Open(desktop::editor::Page::Ground));
    say(&mut desk, Message::Pick(Some(Thing::KeepOut { keep_out: 0 })));
    let before = window(&desk).editor().plan().clone();
    for (label, sentence) in [
        ("Birds of the coop", "no number"),
        ("Length of the coop", "no number"),
        ("Width of the coop", "no number"),
        ("Heading of the coop", "no number"),
        ("Length of side 1 to 2", "no number"),
        ("Keep off by of Pond", "no number"),
    ] {
        for (text, sentence) in [("many", sentence), ("-4", "Less than nothing"), ("100000000", "too much")] {
            let field = desk.get_by_label(label);
            field.focus();
            desk.run();
            hand::overtype(&mut desk, text);
            assert!(desk.query_all_by_label_contains(sentence).count() > 0, "{label}: {text} is answered");
            assert_eq!(*window(&desk).editor().plan(), before, "{label}: {text}");
            desk.get_by_label(label).focus();
            desk.run();
            desk.key_press(Key::Escape);
            desk.run();
        }
    }
    for (label, text) in
        [("Birds of the coop", "64"), ("Length of the coop", "12' 6\""), ("Keep off by of Pond", "2,5")]
    {
        desk.get_by_label(label).focus();
        desk.run();
        hand::overtype(&mut desk, text);
    }
    let plan = window(&desk).editor().plan();
    let coop = plan.coop.as_ref().unwrap();
    assert_eq!(coop.birds, Some(64));
    assert!((coop.length_m.unwrap() - 12.5 * 0.3048).abs() < 1e-9);
    assert_eq!(plan.ground.keep_outs[0].clearance_m, Some(2.5));
    assert_eq!(window(&desk).editor().deeds().0, [Deed::Coop, Deed::Coop, Deed::KeepOuts]);
}

#[test]
fn an_assumed_figure_that_is_typed_is_said() {
    let mut desk = cold();
    say(&mut desk, Message::Open(desktop::editor::Page::Ground));
    let mut coop = window(&desk).editor().plan().coop.clone().unwrap();
    coop.birds = None;
    say(&mut desk, Message::Make(plan::Edit::SetCoop { coop: Some(coop) }));
    desk.get_by_label("Birds of the coop").focus();
    desk.run();
    hand::overtype(&mut desk, &plan::defaults::BIRDS.to_string());
    assert_eq!(window(&desk).editor().plan().coop.as_ref().unwrap().birds, Some(plan::defaults::BIRDS));
}

#[test]
fn a_drag_that_is_given_up_leaves_what_could_be_done_again() {
    let mut desk = cold();
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 1 })));
    say(&mut desk, Message::Nudge(0.5, 0.0));
    say(&mut desk, Message::Undo);
    let before = window(&desk).editor().plan().clone();
    let corner = spot(&desk, before.runs[0].outline[3]);
    desk.event(egui::Event::PointerMoved(corner));
    desk.run();
    hand::button(&desk, corner, true);
    desk.run();
    desk.event(egui::Event::PointerMoved(corner + vec2(40.0, 10.0)));
    desk.run();
    assert_ne!(*window(&desk).editor().plan(), before);
    desk.key_press(Key::Escape);
    desk.run();
    hand::button(&desk, corner, false);
    desk.run();
    assert_eq!(*window(&desk).editor().plan(), before);
    assert_eq!(window(&desk).editor().deeds(), (Vec::new(), vec![Deed::MoveCorner]));
}

#[test]
fn a_corner_is_cut_over_two_posts_a_panel_apart_as_one_step() {
    let mut desk = cold();
    let before = window(&desk).editor().plan().runs[0].clone();
    // Of nothing but a run's corner.
    say(&mut desk, Message::Pick(Some(Thing::BoundaryCorner { vertex: 1 })));
    desk.key_press(Key::C);
    desk.run();
    assert!(desk.query_by_label_contains("Pick a corner of a run first").is_some());
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 2 })));
    desk.key_press(Key::C);
    desk.run();
    let after = window(&desk).editor().plan().runs[0].clone();
    assert_eq!(after.outline.len(), before.outline.len() + 1);
    // A panel apart, and on the sides that met at the corner.
    let (one, other) = (after.outline[2], after.outline[3]);
    assert!((apart(one, other) - 50.0 / 14.0).abs() < 1e-9);
    for (at, end) in [(one, before.outline[1]), (other, before.outline[3])] {
        let corner = before.outline[2];
        assert!((apart(corner, at) + apart(at, end) - apart(corner, end)).abs() < 1e-9, "on its side");
    }
    // Each turns half as far.
    let turn = |outline: &[Point], corner: usize| {
        let bearing = |from: Point, to: Point| (to.east_m - from.east_m).atan2(to.north_m - from.north_m);
        let ways = [(corner - 1, corner), (corner, corner + 1)].map(|(from, to)| bearing(outline[from], outline[to]));
        (ways[1] - ways[0] + std::f64::consts::PI).rem_euclid(std::f64::consts::TAU) - std::f64::consts::PI
    };
    let whole = turn(&before.outline, 2);
    assert!((turn(&after.outline, 2) - turn(&after.outline, 3)).abs() < 1e-9);
    assert!((turn(&after.outline, 2) + turn(&after.outline, 3) - whole).abs() < 1e-9);
    assert_eq!(window(&desk).editor().deeds().0, [Deed::CutCorner]);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::RunCorner { run: 0, vertex: 2 }));
    say(&mut desk, Message::Undo);
    assert_eq!(window(&desk).editor().plan().runs[0], before);
    // A side that is shorter than that says so and stays.
    say(&mut desk, Message::Open(Page::Run));
    fill(&mut desk, "Length of side 1 to 2", "1");
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 1 })));
    let short = window(&desk).editor().plan().clone();
    desk.key_press(Key::C);
    desk.run();
    assert!(desk.query_by_label_contains("cannot be cut over two posts").is_some());
    assert_eq!(*window(&desk).editor().plan(), short);
}

#[test]
fn a_corner_of_a_locked_run_is_not_cut() {
    let mut plan = hand::example();
    plan.runs[0].locked = true;
    let mut desk = hand::on_page(plan.clone(), Page::Run, [1280.0, 800.0], words::Words::default());
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 2 })));
    desk.key_press(Key::C);
    desk.run();
    assert_eq!(*window(&desk).editor().plan(), plan);
    assert!(hand::says(&desk, "It is locked"));
}

#[test]
fn the_brace_of_a_corner_that_is_cut_goes_with_it_and_no_other() {
    let mut plan = hand::example();
    let beside = |at: Point| Point::new(at.east_m + 0.9, at.north_m + 0.4);
    let outline = plan.runs[0].outline.clone();
    let brace = |corner: usize| StatedBrace { at: beside(outline[corner]), ..StatedBrace::default() };
    plan.runs[0].braces = vec![brace(0), brace(2)];
    let mut desk = hand::on_page(plan.clone(), Page::Run, [1280.0, 800.0], words::Words::default());
    assert!(hand::editor(&desk).run().unwrap().1.lay.as_ref().unwrap().corners[2].braced, "it is the corner's");
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 2 })));
    desk.key_press(Key::C);
    desk.run();
    assert_eq!(hand::plan_of(&desk).runs[0].braces, plan.runs[0].braces[..1]);
}
