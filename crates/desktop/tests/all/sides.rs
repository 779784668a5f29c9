//! Sides of shade and damp ground slide as a paddock's do; a branch is mirrored with its run and over its own sides.

use crate::hand::{Desk, click_on, drag, example, on_page, plan_of, say, settle, spot, window};
use desktop::editor::{Message, Over, Page, ShapingMessage};
use drawing::Thing;
use egui_kittest::kittest::Queryable;
use plan::{Branch, Damp, Motion, Plan, Point, Shade};
use words::Words;

fn near(one: Point, other: Point) -> bool {
    (one.east_m - other.east_m).hypot(one.north_m - other.north_m) < 1e-6
}

/// An oblong on open ground of the example.
fn oblong() -> Vec<Point> {
    [(84.0, 66.0), (104.0, 66.0), (104.0, 76.0), (84.0, 76.0)].map(Point::from).to_vec()
}

#[test]
fn a_side_of_shade_and_of_damp_ground_slides_and_its_neighbours_follow() {
    for shade in [true, false] {
        let mut plan = example();
        if shade {
            plan.ground.shade.push(Shade { outline: oblong(), ..Shade::default() });
        } else {
            plan.ground.damp.push(Damp { outline: oblong(), ..Damp::default() });
        }
        let mut desk = on_page(plan.clone(), Page::Ground, [1280.0, 800.0], Words::default());
        let outline = |desk: &Desk| {
            let ground = plan_of(desk).ground;
            if shade { ground.shade[0].outline.clone() } else { ground.damp[0].outline.clone() }
        };
        let side = if shade { Thing::ShadeSide { shade: 0, side: 0 } } else { Thing::DampSide { damp: 0, side: 0 } };
        say(&mut desk, Message::Pick(Some(side)));
        let before = window(&desk).editor().deeds().0.len();
        // Well off the middle, where a corner would be made.
        let from = spot(&desk, Point::new(88.0, 66.0));
        let px_per_m = window(&desk).editor().view().px_per_m as f32;
        drag(&mut desk, from, from + egui::vec2(0.0, 7.0 * px_per_m));
        let (was, now) = (oblong(), outline(&desk));
        assert_eq!(now.len(), 4, "no corner was made");
        assert_eq!((now[2], now[3]), (was[2], was[3]), "the other side stays");
        for corner in [0, 1] {
            assert!((now[corner].east_m - was[corner].east_m).abs() < 1e-6, "{now:?}");
            assert!(was[corner].north_m - now[corner].north_m > 5.0, "{now:?}");
        }
        let deeds = window(&desk).editor().deeds().0;
        assert_eq!((deeds.len(), deeds.last()), (before + 1, Some(&plan::Deed::SlideSide)));
        say(&mut desk, Message::Undo);
        assert_eq!(outline(&desk), was);
    }
}

/// The example with a branch from its first side that goes out and turns.
fn branched() -> Plan {
    let mut plan = example();
    plan.store.nets[0].count = Some(9);
    let outline = &plan.runs[0].outline;
    let at = |share: f64| {
        let (from, to) = (outline[0], outline[1]);
        let way = (to.east_m - from.east_m, to.north_m - from.north_m);
        Point::new(from.east_m + share * way.0, from.north_m + share * way.1)
    };
    let middle = at(0.5);
    let from_m = (middle.east_m - outline[0].east_m).hypot(middle.north_m - outline[0].north_m);
    let far = |east_m: f64, south_m: f64| Point::new(middle.east_m + east_m, middle.north_m - south_m);
    let places = vec![middle, far(0.0, 9.0), far(30.0, 9.0)];
    plan.runs[0].branches =
        vec![Branch { from_m, outline: places, nets: vec!["long".to_owned()], ..Branch::default() }];
    plan
}

#[test]
fn a_branch_is_mirrored_with_its_run_over_any_of_the_runs_sides() {
    let was = branched();
    for side in 0..was.runs[0].outline.len() {
        let mut desk = on_page(was.clone(), Page::Run, [1280.0, 900.0], Words::default());
        say(&mut desk, Message::Pick(Some(Thing::RunSide { run: 0, side })));
        click_on(&mut desk, "Mirror it over the picked side");
        settle(&mut desk);
        let outline = &was.runs[0].outline;
        let (from, to) = (outline[side], outline[(side + 1) % outline.len()]);
        let bearing_rad = (to.east_m - from.east_m).atan2(to.north_m - from.north_m);
        let over = Motion::Mirror { through: from, bearing_rad };
        let now = plan_of(&desk);
        for (one, other) in now.runs[0].outline.iter().zip(outline) {
            assert!(near(*one, over.of(*other)), "side {side}");
        }
        for (one, other) in now.runs[0].branches[0].outline.iter().zip(&was.runs[0].branches[0].outline) {
            assert!(near(*one, over.of(*other)), "side {side}: {one:?}, not {:?}", over.of(*other));
        }
        say(&mut desk, Message::Undo);
        assert_eq!(plan_of(&desk), was);
    }
}

#[test]
fn a_branch_is_mirrored_over_its_own_side_and_hangs_where_it_hung() {
    let was = branched();
    let mut desk = on_page(was.clone(), Page::Run, [1280.0, 900.0], Words::default());
    say(&mut desk, Message::Pick(Some(Thing::BranchSide { run: 0, branch: 0, side: 0 })));
    click_on(&mut desk, "Mirror it over the picked side");
    settle(&mut desk);
    let (now, before) = (plan_of(&desk).runs[0].branches[0].clone(), was.runs[0].branches[0].clone());
    let over = Motion::Mirror { through: before.outline[0], bearing_rad: std::f64::consts::PI };
    assert!((now.from_m - before.from_m).abs() < 1e-9);
    for (one, other) in now.outline.iter().zip(&before.outline) {
        assert!(near(*one, over.of(*other)), "{one:?}, not {:?}", over.of(*other));
    }
    assert!(!near(now.outline[2], before.outline[2]));
    // With none of its sides picked it is said what is missing.
    say(&mut desk, Message::Pick(Some(Thing::Branch { run: 0, branch: 0 })));
    say(&mut desk, Message::Shaping(ShapingMessage::Mirror(Over::Side)));
    assert_eq!(window(&desk).editor().shape_told(), Some(words::texts::Shape::PickSide));
    assert!(desk.query_by_label("Mirror it over the picked side").is_none());
}
