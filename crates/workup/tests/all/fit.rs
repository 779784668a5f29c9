//! The fit of a plan's run: nets, ground, spare, and what is said where nothing fits.

use plan::{KeepOut, NetKind, Plan, Point, Run};
use workup::fit::{FitReason, GivenUp, fit};
use workup::{Depth, workup};

fn points(places: &[(f64, f64)]) -> Vec<Point> {
    places.iter().map(|&(east_m, north_m)| Point::new(east_m, north_m)).collect()
}

/// A plan of one run on open ground.
fn plan(outline: &[(f64, f64)], nets: &[(&str, f64, u32)]) -> Plan {
    let text = serde_like(outline, nets);
    plan::read(text.as_bytes()).unwrap().plan
}

fn serde_like(outline: &[(f64, f64)], nets: &[(&str, f64, u32)]) -> String {
    let corners: Vec<String> = outline.iter().map(|(east_m, north_m)| format!("[{east_m}, {north_m}]")).collect();
    let kinds: Vec<String> = nets
        .iter()
        .map(|(id, length_m, panels)| {
            format!(r#"{{"id": "{id}", "count": 9, "length_m": {length_m}, "panels": {panels}}}"#)
        })
        .collect();
    let used: Vec<String> = nets.iter().map(|(id, ..)| format!(r#""{id}", "{id}""#)).collect();
    format!(
        r#"{{"format": "netfold-plan", "version": 1, "store": {{"nets": [{}]}},
        "runs": [{{"id": "r", "outline": [{}], "nets": [{}]}}]}}"#,
        kinds.join(", "),
        corners.join(", "),
        used.join(", ")
    )
}

const SQUARE: [(f64, f64); 4] = [(0.0, 0.0), (24.0, 0.0), (24.0, 25.0), (0.0, 25.0)];

fn keep_out(outline: &[(f64, f64)], may_enclose: bool) -> KeepOut {
    KeepOut {
        name: "pond".into(),
        clearance_m: Some(2.0),
        may_enclose: Some(may_enclose),
        ..KeepOut::new(points(outline))
    }
}

#[test]
fn the_workup_of_a_fitted_outline_has_every_corner_on_a_post() {
    for nets in [&[("long", 50.0, 14)][..], &[("long", 50.0, 14), ("short", 20.0, 7)]] {
        let mut plan = plan(&SQUARE.map(|(east_m, north_m)| (1.3 * east_m, 1.4 * north_m)), nets);
        let fitted = fit(&plan, "r", 0).unwrap();
        let total_m: f64 = nets.iter().map(|(_, length_m, _)| 2.0 * length_m).sum();
        assert!((fitted.line_m - total_m).abs() < 1e-9 && fitted.spare_m.abs() < 1e-9);
        plan.runs[0].outline = fitted.outline.clone();
        let worked = workup(&plan, Depth::Quick);
        let lay = worked.runs[0].lay.as_ref().unwrap();
        assert!(lay.corner_miss_m < 1e-6, "{}", lay.corner_miss_m);
        assert!(lay.spare_m.abs() < 1e-6 && lay.short_m.abs() < 1e-6);
        // The chain as the fit states it lies on the posts, too.
        plan.runs[0] = Run {
            start_m: Some(fitted.start_m),
            reversed: Some(fitted.reversed),
            nets: Some(fitted.nets.clone()),
            ..plan.runs[0].clone()
        };
        let worked = workup(&plan, Depth::Quick);
        assert!(worked.runs[0].lay.as_ref().unwrap().corner_miss_m < 1e-6);
    }
}

#[test]
fn panels_doubled_back_are_the_spare() {
    let plan = plan(&SQUARE, &[("long", 50.0, 14)]);
    let fitted = fit(&plan, "r", 2).unwrap();
    assert_eq!(fitted.side_panels.iter().sum::<u32>(), 26);
    assert!((fitted.spare_m - 100.0 / 14.0).abs() < 1e-9 && fitted.draw_in.is_none() && !fitted.no_rectangle);
}

#[test]
fn without_spare_the_corner_set_last_is_drawn_in_by_what_the_ground_may_take() {
    let plan = plan(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)], &[("long", 50.0, 14)]);
    let drawn = fit(&plan, "r", 0).unwrap().draw_in.unwrap();
    // At a right angle with sides a, moving in by d along the bisector: 2 (a - sqrt((a - c)^2 + c^2)), c = d / sqrt 2.
    let c = drawn.by_m / 2.0_f64.sqrt();
    assert_eq!(drawn.corner, 3);
    assert!((drawn.gives_m - 1.0).abs() < 1e-9, "one per cent of 100 m: {}", drawn.gives_m);
    assert!((2.0 * (25.0 - (25.0 - c).hypot(c)) - 1.0).abs() < 1e-9);
    assert!(drawn.to.east_m > 0.0 && drawn.to.north_m < 25.0);
}

#[test]
fn four_corners_on_an_odd_count_are_another_quadrilateral() {
    let plan = plan(&SQUARE, &[("odd", 50.0, 14)]);
    let odd = fit(&plan, "r", 1).unwrap();
    assert!(odd.no_rectangle && odd.side_panels.iter().sum::<u32>() == 27);
    assert!(!fit(&plan, "r", 0).unwrap().no_rectangle);
}

#[test]
fn an_answer_stays_on_free_ground() {
    let mut plan = plan(&SQUARE, &[("long", 50.0, 14)]);
    plan.ground.boundary = points(&[(-2.0, -0.5), (60.0, -0.5), (60.0, 60.0), (-2.0, 60.0)]);
    plan.ground.keep_outs = vec![keep_out(&[(20.0, 10.0), (23.0, 10.0), (23.0, 14.0), (20.0, 14.0)], false)];
    let open = fit(&plan, "r", 0);
    let fitted = open.unwrap();
    let line = geometry::Outline::closed(
        &fitted.outline.iter().map(|at| geometry::Point::new(at.east_m, at.north_m)).collect::<Vec<_>>(),
    );
    let pond =
        geometry::Outline::closed(&[(20.0, 10.0), (23.0, 10.0), (23.0, 14.0), (20.0, 14.0)].map(geometry::Point::from));
    assert!(geometry::region::distance_between_m(&line, &pond) >= 2.0 - 1e-6);
    assert!(!geometry::region::contains(&line, geometry::Point::new(21.0, 12.0)));
    assert!(fitted.outline.iter().all(|at| at.north_m > -0.5 - 1e-6 && at.east_m > -2.0 - 1e-6));
    assert!(fitted.bound_rms_m <= fitted.moved_rms_m);
    // A tree in the middle may be gone round and costs nothing.
    plan.ground.keep_outs = vec![keep_out(&[(12.0, 12.0), (13.0, 12.0), (13.0, 13.0)], true)];
    let enclosed = fit(&plan, "r", 0).unwrap();
    assert!((enclosed.moved_rms_m - enclosed.bound_rms_m).abs() < 1e-9 && enclosed.moved_rms_m < fitted.moved_rms_m);
}

#[test]
fn where_nothing_fits_the_nearest_is_shown_with_what_was_given_up() {
    // Four panels on three sides: 2, 1, 1 is flat. One doubled back makes a triangle.
    let flat = plan(&[(0.0, 0.0), (6.0, 0.0), (3.0, 5.0)], &[("two", 7.0, 2)]);
    let refusal = fit(&flat, "r", 0).unwrap_err();
    assert_eq!(refusal.reason, FitReason::NeverCloses { panels: 4, corners: 3 });
    assert_eq!(refusal.given_up, Some(GivenUp::DoubleBack { asked: 0, panels: 1 }));
    assert_eq!(refusal.nearest.unwrap().side_panels, [1, 1, 1]);
    // Four panels on five corners: the flattest goes.
    let five = plan(&[(0.0, 0.0), (2.0, -0.3), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)], &[("two", 7.0, 2)]);
    let refusal = fit(&five, "r", 0).unwrap_err();
    assert_eq!(refusal.reason, FitReason::TooFewPanels { panels: 4, corners: 5 });
    assert_eq!(refusal.given_up, Some(GivenUp::Corners { corners: 4 }));
    assert_eq!(refusal.nearest.unwrap().side_panels, [1, 1, 1, 1]);
    // Too many doubled back: fewer.
    let square = plan(&SQUARE, &[("two", 50.0, 2)]);
    let refusal = fit(&square, "r", 1).unwrap_err();
    assert_eq!(refusal.given_up, Some(GivenUp::DoubleBack { asked: 1, panels: 0 }));
    // No room: as many doubled back as it takes, and inside.
    let mut tight = plan(&SQUARE, &[("long", 50.0, 14)]);
    tight.ground.boundary = points(&[(2.0, 2.0), (20.0, 2.0), (20.0, 20.0), (2.0, 20.0)]);
    let refusal = fit(&tight, "r", 0).unwrap_err();
    assert!(matches!(refusal.reason, FitReason::NoRoom { panels: 28, .. }) && refusal.is_impossible());
    let nearest = refusal.nearest.unwrap();
    assert!(nearest.line_m <= 72.0 + 1e-6 && nearest.double_back >= 8 && nearest.moved_rms_m < 6.0, "{nearest:?}");
    assert!(nearest.outline.iter().all(|at| (2.0 - 1e-6..=20.0 + 1e-6).contains(&at.east_m)));
}

#[test]
fn what_cannot_be_fitted_is_refused_with_its_reason() {
    let good = plan(&SQUARE, &[("long", 50.0, 14)]);
    let reason = |change: &dyn Fn(&mut Plan)| {
        let mut plan = good.clone();
        change(&mut plan);
        fit(&plan, "r", 0).unwrap_err().reason.id()
    };
    assert_eq!(fit(&good, "other", 0).unwrap_err().reason, FitReason::NoSuchRun);
    assert_eq!(reason(&|plan| plan.runs[0].closed = Some(false)), "fit/open");
    assert_eq!(reason(&|plan| plan.runs[0].outline.swap(0, 1)), "fit/unbuilt");
    assert_eq!(reason(&|plan| plan.ground.boundary = points(&[(0.0, 0.0), (1.0, 1.0)])), "fit/unbuilt");
    assert_eq!(reason(&|plan| plan.ground.keep_outs = vec![keep_out(&[(0.0, 0.0)], false)]), "fit/unbuilt");
    assert_eq!(reason(&|plan| plan.runs[0].nets = Some(Vec::new())), "fit/no-nets");
    assert_eq!(reason(&|plan| plan.store.nets[0].panels = Some(0)), "fit/bad-net");
    assert_eq!(reason(&|plan| plan.store.nets[0].length_m = -3.0), "fit/bad-net");
    assert_eq!(
        reason(&|plan| plan.store.nets = vec![NetKind { panels: Some(3000), ..NetKind::new("long", 50.0, 1) }]),
        "fit/too-many-panels"
    );
    let round = |plan: &mut Plan| {
        plan.runs[0].outline =
            (0..41).map(|at| f64::from(at) * 0.15).map(|a| Point::new(9.0 * a.cos(), 9.0 * a.sin())).collect();
    };
    assert_eq!(reason(&round), "fit/too-many-corners");
}
