//! Branches in the hand: corners dragged, put in and taken out, where one hangs slid along the line, typed and nudged;
//! what is tried on them.

use crate::hand;
use crate::hand::{Desk, click, click_on, deeds, drag, example, fill, spot, window};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use plan::{Branch, FaultKind, Plan, Point};
use words::Words;

/// The example with a branch from the middle of its first side southward.
fn farm() -> Plan {
    let mut plan = example();
    plan.store.nets[0].count = Some(9);
    let outline = &plan.runs[0].outline;
    let middle = Point::new(
        f64::midpoint(outline[0].east_m, outline[1].east_m),
        f64::midpoint(outline[0].north_m, outline[1].north_m),
    );
    let from_m = (middle.east_m - outline[0].east_m).hypot(middle.north_m - outline[0].north_m);
    let far = |east_m: f64, south_m: f64| Point::new(middle.east_m + east_m, middle.north_m - south_m);
    let outline = vec![middle, far(0.0, 9.0), far(30.0, 9.0)];
    plan.runs[0].branches = vec![Branch { from_m, outline, nets: vec!["long".to_owned()], ..Branch::default() }];
    plan
}

fn open(page: Page) -> Desk {
    hand::on_page(farm(), page, [1280.0, 2400.0], Words::default())
}

fn branch(desk: &Desk) -> &Branch {
    &window(desk).editor().plan().runs[0].branches[0]
}

fn near(one: Point, other: Point, within_m: f64) -> bool {
    (one.east_m - other.east_m).hypot(one.north_m - other.north_m) < within_m
}

/// How far the branch's first corner is from where it hangs on the run's line, metres.
fn off_m(desk: &Desk) -> f64 {
    let lay = window(desk).editor().run().unwrap().1.lay.as_ref().unwrap();
    let (at, first) = (lay.place_at(branch(desk).from_m).unwrap(), branch(desk).outline[0]);
    (at.east_m - first.east_m).hypot(at.north_m - first.north_m)
}

#[test]
fn a_corner_is_dragged_put_in_and_taken_out_each_one_step() {
    let mut desk = open(Page::Run);
    let (was, count) = (branch(&desk).clone(), deeds(&desk));
    let to = Point::new(was.outline[2].east_m + 4.0, was.outline[2].north_m - 3.0);
    let (from, spot_to) = (spot(&desk, was.outline[2]), spot(&desk, to));
    drag(&mut desk, from, spot_to);
    assert!(near(branch(&desk).outline[2], to, 0.3), "{:?}", branch(&desk).outline);
    assert_eq!((branch(&desk).from_m, branch(&desk).nets.len(), deeds(&desk)), (was.from_m, 1, count + 1));
    assert_eq!(window(&desk).editor().picked(), Some(Thing::BranchCorner { run: 0, branch: 0, vertex: 2 }));
    // A side that is picked gets a corner where its middle is dragged.
    let outline = branch(&desk).outline.clone();
    let middle = Point::new(
        f64::midpoint(outline[1].east_m, outline[2].east_m),
        f64::midpoint(outline[1].north_m, outline[2].north_m),
    );
    let from = spot(&desk, middle);
    drag(&mut desk, from, from + egui::vec2(0.0, 30.0));
    assert_eq!((branch(&desk).outline.len(), deeds(&desk)), (4, count + 2));
    desk.key_press(Key::Delete);
    desk.run();
    assert_eq!((branch(&desk).outline.len(), deeds(&desk)), (3, count + 3));
    for _ in 0..3 {
        desk.state_mut().as_mut().unwrap().say(Message::Undo);
        desk.run();
    }
    assert_eq!(*branch(&desk), was);
}

#[test]
fn two_corners_stay() {
    let mut plan = farm();
    plan.runs[0].branches[0].outline.truncate(2);
    let mut desk = hand::on_page(plan, Page::Run, [1280.0, 2400.0], Words::default());
    desk.get_by_label("Corner 2 of branch 1 of Round Quince House").focus();
    desk.run();
    desk.key_press(Key::Delete);
    desk.run();
    assert_eq!(branch(&desk).outline.len(), 2);
    let notice = window(&desk).editor().notice().map(|text| Words::default().text(text));
    assert!(notice.unwrap().starts_with("Two corners are the fewest of a branch"));
}

#[test]
fn where_it_hangs_slides_along_the_line_is_caught_by_posts_and_takes_no_other_corner_along() {
    let mut desk = open(Page::Run);
    let (was, count) = (branch(&desk).clone(), deeds(&desk));
    let lay = window(&desk).editor().run().unwrap().1.lay.clone().unwrap();
    let post = lay.posts.iter().filter(|post| post.along_m > was.from_m + 4.0);
    let post_m = post.map(|post| post.along_m).fold(f64::INFINITY, f64::min);
    let (from, to) = (spot(&desk, was.outline[0]), spot(&desk, lay.place_at(post_m).unwrap()));
    drag(&mut desk, from, to + egui::vec2(2.0, -9.0));
    assert!((branch(&desk).from_m - post_m).abs() < 1e-9, "{} and {post_m}", branch(&desk).from_m);
    assert_eq!(branch(&desk).outline[1..], was.outline[1..]);
    assert!(off_m(&desk) < 1e-9 && deeds(&desk) == count + 1);
    // Nothing catches it while Alt is held.
    desk.event(egui::Event::ModifiersChanged(Modifiers::ALT));
    let from = spot(&desk, branch(&desk).outline[0]);
    drag(&mut desk, from, from + egui::vec2(16.0, 0.0));
    let gone_m = branch(&desk).from_m - post_m;
    let wanted_m = 16.0 / window(&desk).editor().view().px_per_m;
    assert!((gone_m - wanted_m).abs() < 0.1 * wanted_m, "{gone_m} of {wanted_m}");
    assert!(off_m(&desk) < 1e-9);
}

#[test]
fn all_of_it_slides_by_a_side_that_is_not_held_amid() {
    let mut desk = open(Page::Run);
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(Thing::Branch { run: 0, branch: 0 })));
    desk.run();
    let was = branch(&desk).clone();
    let share = |part: f64| {
        let (one, other) = (was.outline[1], was.outline[2]);
        Point::new(one.east_m + part * (other.east_m - one.east_m), one.north_m + part * (other.north_m - one.north_m))
    };
    let from = spot(&desk, share(0.8));
    drag(&mut desk, from, from - egui::vec2(40.0, 0.0));
    let now = branch(&desk).clone();
    let shift = (now.outline[0].east_m - was.outline[0].east_m, now.outline[0].north_m - was.outline[0].north_m);
    assert!(shift.0 < -1.0 && off_m(&desk) < 1e-9);
    for (one, other) in now.outline.iter().zip(&was.outline) {
        assert!(near(*one, Point::new(other.east_m + shift.0, other.north_m + shift.1), 1e-9));
    }
}

#[test]
fn where_it_hangs_is_a_field_and_nonsense_changes_nothing() {
    let mut desk = open(Page::Run);
    click_on(&mut desk, "Branch 1, 17.9 m past corner 1: 1 net, 39.0 m");
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Branch { run: 0, branch: 0 }));
    let (was, count) = (branch(&desk).clone(), deeds(&desk));
    fill(&mut desk, "Where branch 1 hangs", "25");
    assert!((branch(&desk).from_m - 25.0).abs() < 1e-9 && off_m(&desk) < 1e-9);
    assert_eq!((deeds(&desk), &branch(&desk).outline[1..]), (count + 1, &was.outline[1..]));
    for bad in ["-3", "200", "far"] {
        fill(&mut desk, "Where branch 1 hangs", bad);
        assert!((branch(&desk).from_m - 25.0).abs() < 1e-9, "{bad}");
        desk.key_press(Key::Escape);
        desk.run();
        desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(Thing::Branch { run: 0, branch: 0 })));
        desk.run();
    }
}

#[test]
fn corners_of_a_branch_are_reached_by_tab_after_the_runs_and_nudged() {
    let mut desk = open(Page::Run);
    desk.get_by_label("Corner 5 of Round Quince House").focus();
    desk.run();
    // The branch as a whole comes before its corners.
    for _ in 0..2 {
        desk.key_press(Key::Tab);
        desk.run();
    }
    assert!(desk.get_by_label("Start of branch 1 of Round Quince House").accesskit_node().is_focused());
    let (was, count) = (branch(&desk).clone(), deeds(&desk));
    desk.key_press_modifiers(Modifiers::SHIFT, Key::ArrowRight);
    desk.run();
    assert!((branch(&desk).from_m - was.from_m - 1.0).abs() < 0.02 && off_m(&desk) < 1e-9);
    desk.key_press(Key::Tab);
    desk.run();
    assert!(desk.get_by_label("Corner 2 of branch 1 of Round Quince House").accesskit_node().is_focused());
    desk.key_press(Key::ArrowDown);
    desk.run();
    let to = Point::new(was.outline[1].east_m, was.outline[1].north_m - 0.1);
    assert!(near(branch(&desk).outline[1], to, 1e-9));
    assert_eq!(deeds(&desk), count + 2);
    // Without the place where it hangs it is none.
    desk.get_by_label("Start of branch 1 of Round Quince House").focus();
    desk.run();
    desk.key_press(Key::Delete);
    desk.run();
    assert!(window(&desk).editor().plan().runs[0].branches.is_empty());
}

#[test]
fn a_fault_and_long_grass_are_tried_on_a_branch_listed_slid_and_taken_out() {
    let mut desk = open(Page::Power);
    let outline = branch(&desk).outline.clone();
    let amid = Point::new(f64::midpoint(outline[1].east_m, outline[2].east_m), outline[1].north_m);
    let at = spot(&desk, amid);
    click_on(&mut desk, "Peg");
    click(&mut desk, at + egui::vec2(3.0, 8.0));
    let fault = branch(&desk).faults[0].clone();
    assert_eq!((fault.kind, fault.ohm), (FaultKind::Short, Some(50.0)));
    assert!(window(&desk).editor().plan().runs[0].faults.is_empty());
    let thing = Thing::Fault { run: 0, branch: Some(0), fault: 0 };
    assert_eq!(window(&desk).editor().picked(), Some(thing));
    let editor = window(&desk).editor();
    let volts = editor.run().unwrap().1.volts.as_ref().unwrap();
    assert_eq!(volts.weakest.unwrap().branch, Some(0));
    let sound = volts.sound.as_ref().unwrap();
    assert!(sound.posts_kv.iter().zip(&volts.samples).all(|(sound, sample)| *sound > sample.peak_kv + 0.1));
    assert!(desk.query_all_by_label_contains("along branch 1: 50 Ω").next().is_some());
    fill(&mut desk, "Resistance of fault 1 on branch 1", "900");
    assert_eq!(branch(&desk).faults[0].ohm, Some(900.0));
    // It slides along the branch, and stays on it.
    let from = spot(&desk, branch(&desk).faults[0].at);
    drag(&mut desk, from, from + egui::vec2(30.0, 12.0));
    let now = branch(&desk).faults[0].at;
    assert!(now.east_m > fault.at.east_m + 1.0 && (now.north_m - outline[1].north_m).abs() < 1e-9, "{now:?}");
    click_on(&mut desk, "Long grass");
    click(&mut desk, at);
    let zone = branch(&desk).leakage_zones[0].clone();
    assert!((zone.to_m - zone.from_m - 10.0).abs() < 1e-9);
    fill(&mut desk, "End of grass 1 on branch 1", "38");
    assert!((branch(&desk).leakage_zones[0].to_m - 38.0).abs() < 1e-9);
    let end = Thing::ZoneEnd { run: 0, branch: Some(0), zone: 0, last: true };
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(end)));
    desk.run();
    desk.key_press(Key::ArrowLeft);
    desk.run();
    assert!((branch(&desk).leakage_zones[0].to_m - 37.9).abs() < 1e-6);
    click_on(&mut desk, "Take all away");
    assert!(!window(&desk).editor().plan().runs[0].is_tried());
}

/// The branch hangs on the line, is not found off it, and a step back it is as it was.
fn goes_along(desk: &mut Desk, was: &Plan, count: usize, how: &str) {
    let plan = window(desk).editor().plan().clone();
    assert_ne!(plan.runs[0].outline, was.runs[0].outline, "{how}: nothing moved");
    assert!(off_m(desk) < 1e-6, "{how}: the branch hangs {} m off", off_m(desk));
    let found = window(desk).editor().findings().all().any(|finding| finding.id == "branch-off-line");
    assert!(!found, "{how}");
    // As it is: all of it moved or turned, none of it stretched.
    let sides = |branch: &Branch| -> Vec<f64> {
        let apart = |pair: &[Point]| (pair[1].east_m - pair[0].east_m).hypot(pair[1].north_m - pair[0].north_m);
        branch.outline.windows(2).map(apart).collect()
    };
    for (now, was) in sides(&plan.runs[0].branches[0]).iter().zip(sides(&was.runs[0].branches[0])) {
        assert!((now - was).abs() < 1e-6, "{how}: a side of {was} m is {now} m");
    }
    assert_eq!(deeds(desk), count + 1, "{how}: one step");
    desk.state_mut().as_mut().unwrap().say(Message::Undo);
    desk.run();
    assert_eq!(window(desk).editor().plan(), was, "{how}, undone");
}

#[test]
fn a_branch_goes_along_whatever_is_done_to_its_run_and_comes_back_in_one_step() {
    use desktop::editor::{ManyMessage, Over, ShapingMessage};
    let mut desk = open(Page::Run);
    let was = window(&desk).editor().plan().clone();
    let run = plan::Shape::Run(was.runs[0].id.clone());
    let corner = Thing::RunCorner { run: 0, vertex: 1 };
    let whole = Thing::Run { run: 0 };
    let side = Thing::RunSide { run: 0, side: 0 };
    let (first, second) = (was.runs[0].outline[0], was.runs[0].outline[1]);
    let on_side = |share: f64| {
        Point::new(
            first.east_m + share * (second.east_m - first.east_m),
            first.north_m + share * (second.north_m - first.north_m),
        )
    };
    let pick = |thing| Message::Pick(Some(thing));
    let dragged = |thing, from: Point, ways: &[(f64, f64)]| {
        let mut said = vec![pick(thing), Message::Grab(thing, from)];
        said.extend(ways.iter().map(|way| Message::Drag(Point::new(from.east_m + way.0, from.north_m + way.1))));
        said.push(Message::Drop);
        said
    };
    let several = |said: Vec<Message>| {
        let also = |thing| Message::Many(ManyMessage::Also(thing));
        let mut all = vec![Message::Pick(None), also(corner), also(Thing::KeepOut { keep_out: 0 })];
        all.extend(said);
        all
    };
    let deeds_done = [
        ("a corner dragged", dragged(corner, second, &[(3.0, 1.0), (9.0, -4.0), (6.0, 5.0)])),
        ("a side slid", dragged(side, on_side(0.2), &[(0.3, -1.5), (1.0, -5.0)])),
        ("the whole dragged", dragged(whole, on_side(0.7), &[(4.0, 0.0), (8.0, 7.0)])),
        ("a corner nudged", vec![pick(corner), Message::Nudge(1.0, 2.0)]),
        ("the whole turned", vec![pick(whole), Message::Turn(37.0)]),
        ("mirrored", vec![pick(whole), Message::Shaping(ShapingMessage::Mirror(Over::EastWest))]),
        ("a side by its length", vec![Message::SideLength(run.clone(), 0, 30.0)]),
        ("a side by its bearing", vec![Message::Shaping(ShapingMessage::Bearing(run.clone(), 0, 100.0))]),
        ("a corner by its turn", vec![Message::Shaping(ShapingMessage::Turn(run.clone(), 1, 50.0))]),
        (
            "a corner in the list",
            vec![Message::Make(plan::Edit::MoveCorner { shape: run, corner: 0, to: on_side(-0.2) })],
        ),
        ("squared up", vec![pick(whole), Message::Shaping(ShapingMessage::SquareUp)]),
        ("several nudged", several(vec![Message::Nudge(2.0, -3.0)])),
        ("several dragged", several(dragged(corner, second, &[(3.0, 1.0), (5.0, -4.0)]).split_off(1))),
    ];
    for (how, said) in deeds_done {
        let count = deeds(&desk);
        for message in said {
            desk.state_mut().as_mut().unwrap().say(message);
            desk.run();
        }
        goes_along(&mut desk, &was, count, how);
    }
}

#[test]
fn a_branch_goes_with_a_fitted_run_and_to_the_nearest_side_of_another_shape() {
    use desktop::editor::{RowOf, ShapesMessage};
    let mut plan = farm();
    plan.runs[0].outline[1].east_m += 1.3;
    plan.runs[0].outline[2].north_m += 0.9;
    let first = plan.runs[0].outline[0];
    let second = plan.runs[0].outline[1];
    // Where the branch hangs is anew on the moved side.
    let from_m = plan.runs[0].branches[0].from_m;
    let length_m = (second.east_m - first.east_m).hypot(second.north_m - first.north_m);
    let share = from_m / length_m;
    let at = Point::new(
        first.east_m + share * (second.east_m - first.east_m),
        first.north_m + share * (second.north_m - first.north_m),
    );
    plan.runs[0].branches[0].outline = vec![at, Point::new(at.east_m, at.north_m - 9.0)];
    let mut desk = hand::on_page(plan.clone(), Page::Run, [1280.0, 900.0], Words::default());
    let count = deeds(&desk);
    desk.state_mut().as_mut().unwrap().say(Message::FitNets(0));
    hand::settle(&mut desk);
    assert!(matches!(window(&desk).editor().fit_answer(), Some((_, Ok(_)))), "the nets fit");
    goes_along(&mut desk, &plan, count, "fitted");
    let mut desk = hand::on_page(plan.clone(), Page::Run, [1280.0, 900.0], Words::default());
    desk.state_mut().as_mut().unwrap().say(Message::Shapes(ShapesMessage::Open(true)));
    hand::settle(&mut desk);
    let rows = window(&desk).editor().compared();
    let key = rows.iter().find_map(|row| if let RowOf::Shape(key) = &row.what { Some(*key) } else { None }).unwrap();
    let count = deeds(&desk);
    desk.state_mut().as_mut().unwrap().say(Message::Shapes(ShapesMessage::Take(key)));
    desk.run();
    goes_along(&mut desk, &plan, count, "another shape taken");
}
