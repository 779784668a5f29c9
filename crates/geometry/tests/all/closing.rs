//! The closing curve and the arc of one angle against their definitions, and against closed forms of the ellipse.

use geometry::{AngleArc, ClosingCurve, Point, Vector};
use proptest::prelude::*;

fn place() -> impl Strategy<Value = Point> {
    (-300.0..300.0_f64, -300.0..300.0_f64).prop_map(|(east_m, north_m)| Point::new(east_m, north_m))
}

/// The angle under which two places are seen from a third, radians.
fn angle(from: Point, at: Point, to: Point) -> f64 {
    let (one, other) = (from - at, to - at);
    one.cross(other).abs().atan2(one.dot(other))
}

#[test]
fn the_ends_of_the_axes_are_those_of_the_gardeners_ellipse() {
    // Foci 60 m apart, 100 m of net: half axes 50 and 40 (textbook 3-4-5).
    let curve = ClosingCurve::new(Point::new(-30.0, 0.0), Point::new(30.0, 0.0), 100.0).unwrap();
    for (from, to) in [((90.0, 0.0), (50.0, 0.0)), ((0.0, 7.0), (0.0, 40.0)), ((0.0, -90.0), (0.0, -40.0))] {
        assert!(curve.nearest(from.into()).distance_m(to.into()) < 1e-9, "{from:?}");
    }
    // At the end of the latus rectum the side is b²/a = 32 m, right over the focus.
    let over = curve.on_way(Vector::new(0.0, 2.0)).unwrap();
    assert!(over.distance_m(Point::new(-30.0, 32.0)) < 1e-9);
    assert_eq!(curve.at_side(32.0).len(), 2);
    assert!(curve.at_side(15.0).is_empty() && curve.at_side(81.0).is_empty());
    assert!(ClosingCurve::new(Point::new(-30.0, 0.0), Point::new(30.0, 0.0), 60.0).is_none());
}

#[test]
fn one_corner_alone_closes_on_a_circle() {
    let home = Point::new(3.0, 4.0);
    let curve = ClosingCurve::new(home, home, 50.0).unwrap();
    assert!((curve.nearest(Point::new(90.0, 4.0)).distance_m(home) - 25.0).abs() < 1e-9);
    assert!(curve.at_side(25.0).is_empty(), "every place of a circle is as far");
}

proptest! {
    #[test]
    fn every_place_of_the_curve_closes_the_run_exactly(
        from in place(), to in place(), more in 0.01..400.0_f64, at in place(), turn in 0.0..std::f64::consts::TAU,
    ) {
        let sum_m = from.distance_m(to) + more;
        let curve = ClosingCurve::new(from, to, sum_m).unwrap();
        let closes = |at: Point| (from.distance_m(at) + at.distance_m(to) - sum_m).abs() < 1e-9;
        let near = curve.nearest(at);
        prop_assert!(closes(near), "{:e}", from.distance_m(near) + near.distance_m(to) - sum_m);
        prop_assert!(closes(curve.on_way(Vector::new(turn.cos(), turn.sin())).unwrap()));
        for side in curve.at_side(0.5 * sum_m) {
            prop_assert!(closes(side) && (from.distance_m(side) - 0.5 * sum_m).abs() < 1e-9);
        }
        for place in curve.ring(48) {
            prop_assert!(closes(place));
            prop_assert!(near.distance_m(at) <= place.distance_m(at) + 1e-6, "a nearer place: {place:?}");
        }
    }

    #[test]
    fn a_corner_on_its_arc_keeps_its_angle(from in place(), at in place(), to in place(), pull in place()) {
        prop_assume!(from.distance_m(to) > 1.0 && angle(from, at, to) > 0.05 && angle(from, at, to) < 3.09);
        let arc = AngleArc::through(from, at, to).unwrap();
        prop_assert!(arc.nearest(at).unwrap().distance_m(at) < 1e-6);
        if let Some(there) = arc.nearest(pull) {
            prop_assume!(there.distance_m(from) > 1e-3 && there.distance_m(to) > 1e-3);
            prop_assert!((angle(from, there, to) - angle(from, at, to)).abs() < 1e-9);
        }
    }
}
