//! What is picked, typed on the map: sides by length, panels and bearing, corners and things of one place by coordinates.

use crate::entries::{is_off, types};
use crate::hand::{Desk, click, deeds, editor, on_page, plan_of, say, says, spot};
use crate::snapping::{clicks, press};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::Key;
use egui_kittest::kittest::Queryable;
use plan::{Branch, Damp, KeepOut, NetKind, Plan, Point, Run, Shade, Shape, SpotHeight};
use words::Words;

/// A run of 40 m by 30 m with nets of 2.5 m panels, and beside it one of each other thing that has sides.
fn netted() -> Plan {
    let oblong = |east_m: f64, north_m: f64| {
        [(0.0, 0.0), (20.0, 0.0), (20.0, 15.0), (0.0, 15.0)]
            .map(|(east, north)| Point::new(east_m + east, north_m + north))
            .to_vec()
    };
    let outline = [(0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (0.0, 30.0)].map(Point::from).to_vec();
    let branch = Branch {
        from_m: 55.0,
        outline: [(40.0, 15.0), (55.0, 15.0), (55.0, 25.0)].map(Point::from).to_vec(),
        nets: vec!["long".to_owned()],
        ..Branch::default()
    };
    let nets = Some(vec!["long".to_owned(); 3]);
    let run = Run { id: "run-1".to_owned(), outline, nets, branches: vec![branch], ..Run::default() };
    let mut plan = Plan { runs: vec![run], ..Plan::default() };
    plan.store.nets = vec![NetKind::new("long", 50.0, 20)];
    plan.store.nets[0].count = Some(6);
    plan.ground.boundary = [(-5.0, -5.0), (85.0, -5.0), (85.0, 62.0), (-5.0, 62.0)].map(Point::from).to_vec();
    plan.ground.keep_outs = vec![KeepOut::new(oblong(60.0, 45.0))];
    plan.ground.shade = vec![Shade { outline: oblong(0.0, 45.0), ..Shade::default() }];
    plan.ground.damp = vec![Damp { outline: oblong(30.0, 45.0), ..Damp::default() }];
    plan
}

pub(crate) fn at_work(page: Page) -> Desk {
    on_page(netted(), page, [1280.0, 800.0], Words::default())
}

/// Where a post stands that is no corner's.
fn post(desk: &Desk, post: usize) -> Point {
    editor(desk).workup().runs[0].lay.as_ref().unwrap().posts[post].at
}

fn vector(plan: &Plan, shape: &Shape, side: usize) -> (f64, f64) {
    let outline = plan.outline(shape).unwrap();
    let (from, to) = (outline[side], outline[(side + 1) % outline.len()]);
    (to.east_m - from.east_m, to.north_m - from.north_m)
}

/// Types into the entry at what is picked, which Enter opens.
fn types_at(desk: &mut Desk, text: &str) {
    if !says(desk, "Enter sets it") {
        press(desk, Key::Enter);
    }
    types(desk, text);
}

#[test]
fn a_click_on_a_post_picks_its_side_then_the_post_and_where_volts_are_told_the_post_at_once() {
    let mut desk = at_work(Page::Run);
    let fourth = post(&desk, 4);
    let click_there = |desk: &mut Desk| {
        let to = spot(desk, fourth);
        click(desk, to);
        editor(desk).picked()
    };
    assert_eq!(click_there(&mut desk), Some(Thing::RunSide { run: 0, side: 0 }));
    assert_eq!(click_there(&mut desk), Some(Thing::Post { run: 0, post: 4 }));
    assert_eq!(click_there(&mut desk), Some(Thing::RunSide { run: 0, side: 0 }), "and back");
    for page in [Page::Power, Page::Book] {
        say(&mut desk, Message::Pick(None));
        say(&mut desk, Message::Open(page));
        assert_eq!(click_there(&mut desk), Some(Thing::Post { run: 0, post: 4 }), "{page:?}");
    }
    say(&mut desk, Message::Pick(None));
    say(&mut desk, Message::Open(Page::Ground));
    assert_eq!(click_there(&mut desk), Some(Thing::RunSide { run: 0, side: 0 }));
}

#[test]
fn enter_opens_the_length_of_a_side_that_was_clicked_and_sets_it_in_one_step() {
    let mut desk = at_work(Page::Run);
    let before = deeds(&desk);
    let to = spot(&desk, post(&desk, 4));
    click(&mut desk, to);
    assert!(desk.query_by_label("Bearing").is_none(), "nothing stands over the map before Enter");
    types_at(&mut desk, "32.5");
    assert_eq!(editor(&desk).page(), Page::Run, "a digit turns no page while a side is picked");
    desk.get_by_label("side 1 to 2: Enter sets it, Esc leaves it");
    assert_eq!(vector(&plan_of(&desk), &Shape::Run("run-1".to_owned()), 0), (40.0, 0.0), "nothing before Enter");
    press(&mut desk, Key::Enter);
    assert!(!is_off(plan_of(&desk).runs[0].outline[0], plan_of(&desk).runs[0].outline[1], 32.5, 0.0));
    assert_eq!(deeds(&desk), before + 1);
    assert_eq!(editor(&desk).deeds().0.last(), Some(&plan::Deed::SideLength), "as its table calls it");
    assert!(desk.query_by_label_contains("Enter sets it").is_none());
    assert_eq!(editor(&desk).picked(), Some(Thing::RunSide { run: 0, side: 0 }));
    say(&mut desk, Message::Undo);
    assert_eq!(plan_of(&desk), netted());
}

#[test]
fn tab_leads_round_through_panels_and_bearing_and_all_of_it_is_one_step() {
    let shape = Shape::Run("run-1".to_owned());
    let mut desk = at_work(Page::Run);
    let before = deeds(&desk);
    say(&mut desk, Message::Pick(Some(Thing::RunSide { run: 0, side: 1 })));
    types_at(&mut desk, "9");
    press(&mut desk, Key::Tab);
    // 14 panels of 2.5 m.
    types_at(&mut desk, "14");
    press(&mut desk, Key::Enter);
    let (east_m, north_m) = vector(&plan_of(&desk), &shape, 1);
    assert!(east_m.abs() < 1e-9 && (north_m - 35.0).abs() < 1e-9, "{east_m} {north_m}");
    assert_eq!(editor(&desk).deeds().0.last(), Some(&plan::Deed::SidePanels));
    // Length and bearing together; Tab alone types nothing, and leads round.
    types_at(&mut desk, "8");
    press(&mut desk, Key::Tab);
    press(&mut desk, Key::Tab);
    types_at(&mut desk, "30");
    press(&mut desk, Key::Tab);
    types_at(&mut desk, "20");
    press(&mut desk, Key::Enter);
    let (east_m, north_m) = vector(&plan_of(&desk), &shape, 1);
    let wanted = (20.0 * 30.0_f64.to_radians().sin(), 20.0 * 30.0_f64.to_radians().cos());
    assert!((east_m - wanted.0).hypot(north_m - wanted.1) < 1e-9, "{east_m} {north_m}");
    assert_eq!(deeds(&desk), before + 2);
}

#[test]
fn on_a_slope_the_length_is_the_one_along_the_ground_with_the_bearing_typed_beside_it() {
    let mut plan = netted();
    plan.runs[0].branches.clear();
    // Ground that rises 1 in 5 to the north.
    plan.heights = [(0.0, 0.0), (80.0, 0.0), (80.0, 60.0), (0.0, 60.0)]
        .map(|(east_m, north_m)| SpotHeight {
            at: Point::new(east_m, north_m),
            up_m: north_m / 5.0,
            rest: plan::Rest::new(),
        })
        .to_vec();
    let mut desk = on_page(plan, Page::Run, [1280.0, 800.0], Words::default());
    say(&mut desk, Message::Pick(Some(Thing::RunSide { run: 0, side: 1 })));
    types_at(&mut desk, "26");
    press(&mut desk, Key::Tab);
    press(&mut desk, Key::Tab);
    types_at(&mut desk, "0");
    press(&mut desk, Key::Enter);
    // Due north already: only its length changes. Then it swings to the north-east.
    let slope_m = |desk: &Desk| editor(desk).workup().runs[0].slope.as_ref().unwrap().sides[1].surface_m;
    assert!((slope_m(&desk) - 26.0).abs() < 1e-6, "{}", slope_m(&desk));
    types_at(&mut desk, "20");
    press(&mut desk, Key::Tab);
    press(&mut desk, Key::Tab);
    types_at(&mut desk, "45");
    press(&mut desk, Key::Enter);
    assert!((slope_m(&desk) - 20.0).abs() < 1e-6, "{}", slope_m(&desk));
    let (east_m, north_m) = vector(&plan_of(&desk), &Shape::Run("run-1".to_owned()), 1);
    assert!((east_m - north_m).abs() < 1e-6 && east_m > 0.0, "{east_m} {north_m}");
}

#[test]
fn sides_of_whatever_has_them_are_typed_and_only_a_run_s_own_in_panels() {
    let run = || Shape::Run("run-1".to_owned());
    let sides = [
        (Thing::RunSide { run: 0, side: 2 }, run(), 2, Page::Run),
        (Thing::BranchSide { run: 0, branch: 0, side: 1 }, Shape::Branch("run-1".to_owned(), 0), 1, Page::Run),
        (Thing::BoundarySide { side: 1 }, Shape::Boundary, 1, Page::Ground),
        (Thing::KeepOutSide { keep_out: 0, side: 3 }, Shape::KeepOut(0), 3, Page::Ground),
        (Thing::ShadeSide { shade: 0, side: 0 }, Shape::Shade(0), 0, Page::Ground),
        (Thing::DampSide { damp: 0, side: 2 }, Shape::Damp(0), 2, Page::Ground),
    ];
    for (thing, shape, side, page) in sides {
        let mut desk = at_work(page);
        say(&mut desk, Message::Pick(Some(thing)));
        let (was_east, was_north) = vector(&plan_of(&desk), &shape, side);
        let was_m = was_east.hypot(was_north);
        types_at(&mut desk, "12.25");
        let panels = desk.query_all_by_label("Panels").count();
        assert_eq!(panels, usize::from(shape == run()), "{thing:?}");
        press(&mut desk, Key::Enter);
        let (east_m, north_m) = vector(&plan_of(&desk), &shape, side);
        assert!((east_m.hypot(north_m) - 12.25).abs() < 1e-9, "{thing:?}: {east_m} {north_m}");
        let along = (east_m * was_east + north_m * was_north) / was_m;
        assert!((along - 12.25).abs() < 1e-9, "{thing:?}: its direction stays");
    }
}

#[test]
fn a_side_stays_as_it_is_with_esc_a_click_elsewhere_or_a_figure_that_cannot_be_used() {
    let mut desk = at_work(Page::Run);
    let side = Thing::RunSide { run: 0, side: 0 };
    say(&mut desk, Message::Pick(Some(side)));
    types_at(&mut desk, "15");
    press(&mut desk, Key::Escape);
    assert!(desk.query_by_label_contains("Enter sets it").is_none());
    assert_eq!(editor(&desk).picked(), Some(side), "the first Esc is the entry's");
    types_at(&mut desk, "0");
    press(&mut desk, Key::Enter);
    desk.get_by_label_contains("Nothing at all does not work here");
    desk.get_by_label_contains("Enter sets it");
    press(&mut desk, Key::Escape);
    types_at(&mut desk, "9");
    press(&mut desk, Key::Tab);
    types_at(&mut desk, "2.5");
    press(&mut desk, Key::Enter);
    desk.get_by_label_contains("Only whole ones count");
    clicks(&mut desk, 70.0, 10.0);
    assert!(desk.query_by_label_contains("Enter sets it").is_none());
    assert_eq!(plan_of(&desk), netted());
}

#[test]
fn digits_open_pages_whatever_is_picked_and_enter_opens_nothing_of_what_is_locked() {
    let mut desk = at_work(Page::Run);
    for thing in [Thing::RunSide { run: 0, side: 0 }, Thing::RunCorner { run: 0, vertex: 1 }] {
        say(&mut desk, Message::Open(Page::Run));
        say(&mut desk, Message::Pick(Some(thing)));
        types(&mut desk, "3");
        assert_eq!(editor(&desk).page(), Page::Power, "{thing:?}");
    }
    let mut locked = netted();
    locked.runs[0].locked = true;
    let mut desk = on_page(locked, Page::Run, [1280.0, 800.0], Words::default());
    for thing in [Thing::RunSide { run: 0, side: 0 }, Thing::RunCorner { run: 0, vertex: 1 }] {
        say(&mut desk, Message::Pick(Some(thing)));
        press(&mut desk, Key::Enter);
        assert!(!says(&desk, "Enter sets it"), "{thing:?}");
    }
}

#[test]
fn a_corner_that_is_picked_is_typed_by_its_coordinates_in_one_step() {
    let mut desk = at_work(Page::Run);
    let (was, before) = (plan_of(&desk), deeds(&desk));
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 2 })));
    types_at(&mut desk, "44.5");
    press(&mut desk, Key::Tab);
    types(&mut desk, "31.25");
    assert_eq!(plan_of(&desk), was, "nothing before Enter");
    press(&mut desk, Key::Enter);
    assert_eq!(plan_of(&desk).runs[0].outline[2], Point::new(44.5, 31.25));
    assert_eq!(deeds(&desk), before + 1);
    // One of the two leaves the other as it is; Esc leaves both.
    types_at(&mut desk, "40");
    press(&mut desk, Key::Enter);
    assert_eq!(plan_of(&desk).runs[0].outline[2], Point::new(40.0, 31.25));
    types_at(&mut desk, "39");
    press(&mut desk, Key::Escape);
    assert_eq!(plan_of(&desk).runs[0].outline[2], Point::new(40.0, 31.25));
    // A node that Tab came to opens it too.
    say(&mut desk, Message::Pick(None));
    desk.get_by_label("Corner 2 of run-1").focus();
    desk.run();
    types_at(&mut desk, "12");
    press(&mut desk, Key::Enter);
    assert_eq!(plan_of(&desk).runs[0].outline[1].east_m, 12.0);
}

#[test]
fn what_was_typed_at_one_thing_is_not_there_at_the_next() {
    let mut desk = at_work(Page::Run);
    let was = plan_of(&desk);
    say(&mut desk, Message::Pick(Some(Thing::RunSide { run: 0, side: 0 })));
    types_at(&mut desk, "15");
    // A press on another side lets go of it.
    let middle = spot(&desk, Point::new(40.0, 17.0));
    click(&mut desk, middle);
    assert_eq!(editor(&desk).picked(), Some(Thing::RunSide { run: 0, side: 1 }));
    press(&mut desk, Key::Enter);
    types(&mut desk, "8");
    press(&mut desk, Key::Enter);
    let (east_m, north_m) = vector(&plan_of(&desk), &Shape::Run("run-1".to_owned()), 1);
    assert!(east_m.abs() < 1e-9 && (north_m - 8.0).abs() < 1e-9, "{east_m} {north_m}");
    assert_eq!(plan_of(&desk).runs[0].outline[0], was.runs[0].outline[0]);
}

#[test]
fn every_thing_of_one_place_is_typed_by_its_coordinates() {
    let mut plan = netted();
    plan.coop = Some(plan::Coop::new("house", Point::new(10.0, 10.0)));
    plan.tape_points = vec![plan::TapePoint { at: Point::new(5.0, 6.0), ..plan::TapePoint::default() }];
    plan.runs[0].feed_at = Some(Point::new(20.0, 0.0));
    for thing in
        [Thing::Coop { coop: 0 }, Thing::TapePoint { point: 0 }, Thing::Feed { run: 0 }, Thing::Energizer { run: 0 }]
    {
        let mut desk = on_page(plan.clone(), Page::Ground, [1280.0, 800.0], Words::default());
        say(&mut desk, Message::Pick(Some(thing)));
        types_at(&mut desk, "17.5");
        press(&mut desk, Key::Enter);
        let now = plan_of(&desk);
        let east_m = match thing {
            Thing::Coop { .. } => now.coop.unwrap().at.east_m,
            Thing::TapePoint { .. } => now.tape_points[0].at.east_m,
            Thing::Feed { .. } => now.runs[0].feed_at.unwrap().east_m,
            _ => now.runs[0].energizer_at.unwrap().east_m,
        };
        assert_eq!(east_m, 17.5, "{thing:?}");
        assert_eq!(deeds(&desk), 1, "{thing:?}");
    }
}
