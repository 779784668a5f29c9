//! A run being unrolled, against what a tape would say: posts, rolls and the curve that closes it.

use plan::{NetKind, Plan, Point, Run, RunStatus};
use proptest::prelude::*;
use workup::unroll::{Caught, Rolls, catch, unroll};

/// A store of so many nets of 50 m in 14 panels.
fn store(count: u32) -> Plan {
    let mut plan = plan::read(include_bytes!("../../../../assets/demo/kettle-field.netfold.json")).unwrap().plan;
    plan.runs.clear();
    let net = NetKind {
        count: Some(count),
        length_m: 50.0,
        panels: Some(14),
        panel_lengths_m: None,
        ..plan.store.nets[0].clone()
    };
    plan.store.nets = vec![net];
    plan
}

fn at(east_m: f64, north_m: f64) -> Point {
    Point::new(east_m, north_m)
}

const PANEL_M: f64 = 50.0 / 14.0;

#[test]
fn rolls_and_metres_count_down_along_the_line() {
    let rolls = Rolls::of(&store(5));
    assert_eq!((rolls.count(), rolls.length_m()), (5, 250.0));
    let start = unroll(&rolls, vec![at(0.0, 0.0)]);
    assert_eq!((start.begun, start.in_store, start.on_roll_m), (1, 4, 50.0));
    let there = unroll(&rolls, vec![at(0.0, 0.0), at(30.0, 0.0), at(30.0, 40.0)]);
    assert_eq!((there.begun, there.in_store), (2, 3));
    assert!((there.on_roll_m - 30.0).abs() < 1e-9);
    // 70 m laid and 50 m home: three nets, 30 m over.
    let closing = there.closing.unwrap();
    assert_eq!((closing.nets, closing.side_m), (3, 50.0));
    assert!((closing.spare_m - 30.0).abs() < 1e-9);
    let end = unroll(&rolls, vec![at(0.0, 0.0), at(50.0, 0.0)]);
    assert_eq!((end.begun, end.on_roll_m), (1, 0.0), "a whole net is still the one in hand");
}

#[test]
fn beyond_all_netting_it_says_how_much_is_missing() {
    let rolls = Rolls::of(&store(2));
    let far = unroll(&rolls, vec![at(0.0, 0.0), at(60.0, 0.0), at(60.0, 60.0)]);
    assert_eq!((far.begun, far.in_store), (2, 0));
    assert!((far.short_m - 20.0).abs() < 1e-9);
    assert!(far.closing.unwrap().spare_m < 0.0);
    let none = unroll(&Rolls::of(&store(0)), vec![at(0.0, 0.0), at(1.0, 0.0), at(0.0, 1.0)]);
    assert_eq!((none.begun, none.closing), (0, None));
}

#[test]
fn of_several_kinds_the_last_net_is_the_one_that_leaves_least_over() {
    let mut plan = store(2);
    let short =
        NetKind { id: "short".into(), count: Some(1), length_m: 25.0, panels: Some(7), ..plan.store.nets[0].clone() };
    plan.store.nets.push(short);
    let rolls = Rolls::of(&plan);
    assert_eq!((rolls.count(), rolls.length_m()), (3, 125.0));
    // 70 m round: 50 and 25 leave 5 m, two of 50 would leave 30.
    let corners = vec![at(0.0, 0.0), at(25.0, 0.0), at(25.0, 10.0), at(0.0, 10.0)];
    let closing = unroll(&rolls, corners.clone()).closing.unwrap();
    assert_eq!(
        (closing.nets, rolls.closing_ids(&plan, &closing)),
        (2, vec![plan.store.nets[0].id.clone(), "short".into()])
    );
    assert!((closing.spare_m - 5.0).abs() < 1e-9);
    // And 75 m is a curve of its own.
    let curve = closing.curve.unwrap();
    let near = curve.nearest((-2.0, 10.0).into());
    let (place, caught) = catch(&rolls, &corners[..3], at(near.east_m - 0.1, near.north_m), 0.5).unwrap();
    assert!(matches!(caught, Caught::Curve { nets: 2 } | Caught::CurveAndPost { nets: 2, .. }), "{caught:?}");
    let closed = unroll(&rolls, vec![corners[0], corners[1], corners[2], place]);
    assert!(closed.closing.unwrap().is_exact());
}

#[test]
fn nets_that_stand_elsewhere_are_not_unrolled_again() {
    let mut plan = store(5);
    let id = plan.store.nets[0].id.clone();
    plan.runs =
        vec![Run { id: "there".into(), status: RunStatus::Standing, nets: Some(vec![id; 3]), ..Run::default() }];
    assert_eq!(Rolls::of(&plan).count(), 2);
}

#[test]
fn a_corner_goes_to_a_post_and_onto_the_curve_where_both_are_near() {
    let rolls = Rolls::of(&store(3));
    let (place, caught) = catch(&rolls, &[at(0.0, 0.0)], at(38.0, 0.0), 0.5).unwrap();
    assert_eq!(caught, Caught::Post { panels: 11 });
    assert!((place.east_m - 11.0 * PANEL_M).abs() < 1e-9);
    // Two sides of eleven panels: twenty are left of three nets, of which one side may take eleven.
    let corners = [at(0.0, 0.0), place, at(place.east_m, 11.0 * PANEL_M)];
    let both = geometry::ClosingCurve::new((place.east_m, 11.0 * PANEL_M).into(), (0.0, 0.0).into(), 20.0 * PANEL_M);
    let there = both.unwrap().at_side(11.0 * PANEL_M)[0];
    let near = at(there.east_m + 0.2, there.north_m + 0.1);
    let (place, caught) = catch(&rolls, &corners, near, 0.5).unwrap();
    assert_eq!(caught, Caught::CurveAndPost { nets: 3, panels: 11 });
    assert!((place.east_m - there.east_m).hypot(place.north_m - there.north_m) < 1e-9);
}

proptest! {
    #[test]
    fn what_the_curve_caught_closes_with_nothing_to_spare(
        corners in prop::collection::vec((-40.0..40.0_f64, -40.0..40.0_f64), 2..5), pointer in (-80.0..80.0_f64, -80.0..80.0_f64),
    ) {
        let rolls = Rolls::of(&store(8));
        let corners: Vec<Point> = corners.into_iter().map(|(east_m, north_m)| at(east_m, north_m)).collect();
        let Some((place, caught)) = catch(&rolls, &corners, at(pointer.0, pointer.1), 6.0) else { return Ok(()) };
        let there = unroll(&rolls, corners.iter().copied().chain([place]).collect());
        match caught {
            Caught::Curve { nets } | Caught::CurveAndPost { nets, .. } => {
                let closing = there.closing.unwrap();
                prop_assert_eq!(closing.nets, nets);
                prop_assert!(closing.is_exact(), "{}", closing.spare_m);
            }
            Caught::Post { .. } => {}
        }
        if let Caught::Post { panels } | Caught::CurveAndPost { panels, .. } = caught {
            let side_m = there.along_m[corners.len()] - there.along_m[corners.len() - 1];
            let want_m = rolls.panels_m(there.along_m[corners.len() - 1], panels).unwrap();
            prop_assert!((side_m - want_m).abs() < 1e-6, "{side_m} {want_m}");
        }
    }
}
