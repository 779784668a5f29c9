//! The nearest place to stand: closed forms, and that no place on a fine grid is nearer.

use geometry::standing::{KeepOff, Standing};
use geometry::{Outline, Point};
use proptest::prelude::*;

fn rectangle(west: f64, south: f64, east: f64, north: f64) -> Outline {
    Outline::closed(&[(west, south), (east, south), (east, north), (west, north)].map(Point::from))
}

fn nearest(inside: &Outline, off: &[KeepOff<'_>], reach_m: f64) -> Option<(f64, f64)> {
    let standing = Standing { inside, inset_m: 0.5, off };
    standing.nearest(Point::new(0.0, 0.0), reach_m).map(|at| (at.east_m, at.north_m))
}

fn near(got: Option<(f64, f64)>, want: (f64, f64)) {
    let got = got.expect("there is a place");
    assert!((got.0 - want.0).hypot(got.1 - want.1) < 1e-9, "{got:?} for {want:?}");
}

#[test]
fn a_rectangle_within_a_circle_of_reach_has_the_place_of_its_closed_form() {
    // Straight ahead the foot on the near side, half a metre inside.
    let ahead = rectangle(2.0, -3.0, 6.0, 3.0);
    near(nearest(&ahead, &[], 5.0), (2.5, 0.0));
    // Aside its near corner, half a metre inside either side: 2.5 and 1.5 are 2.915 m off.
    let aside = rectangle(2.0, 1.0, 6.0, 4.0);
    near(nearest(&aside, &[], 2.92), (2.5, 1.5));
    assert_eq!(nearest(&aside, &[], 2.91), None, "out of reach");
    // Where one stands in it already there is no need to go; near its rim one goes half a metre in.
    near(nearest(&rectangle(-2.0, -2.0, 6.0, 2.0), &[], 5.0), (0.0, 0.0));
    near(nearest(&rectangle(-0.2, -2.0, 6.0, 2.0), &[], 5.0), (0.3, 0.0));
    // Too narrow to stand half a metre inside.
    assert_eq!(nearest(&rectangle(2.0, -3.0, 2.9, 3.0), &[], 5.0), None);
}

#[test]
fn what_is_kept_off_pushes_the_place_along_its_rim() {
    let ahead = rectangle(2.0, -9.0, 9.0, 9.0);
    // A fence along the near side: a metre beyond it.
    let fence = Outline::open(&[(2.2, -20.0), (2.2, 20.0)].map(Point::from));
    let off = |line, metres| KeepOff { line, metres, filled: false };
    near(nearest(&ahead, &[off(&fence, 1.0)], 5.0), (3.2, 0.0));
    // A single place amid the way: where the circle about it meets the line half a metre inside.
    let pole = Outline::open(&[Point::new(2.5, 0.25)]);
    near(nearest(&ahead, &[off(&pole, 2.0)], 5.0), (2.5, -1.75));
    // Two circles: where they meet, for both lie in the way; the one meeting is out of reach of the inside.
    let (one, two) = (Outline::open(&[Point::new(2.5, 1.5)]), Outline::open(&[Point::new(2.5, -1.5)]));
    near(nearest(&ahead, &[off(&one, 2.5), off(&two, 2.5)], 5.0), (4.5, 0.0));
    // Ground that is kept off as such, clearance nothing.
    let pond = rectangle(1.0, -2.0, 4.0, 1.0);
    near(nearest(&ahead, &[KeepOff { line: &pond, metres: 0.05, filled: true }], 9.0), (2.5, 1.05));
    // All of it.
    let lake = rectangle(-9.0, -30.0, 30.0, 30.0);
    assert_eq!(nearest(&ahead, &[KeepOff { line: &lake, metres: 0.05, filled: true }], 9.0), None);
}

#[test]
fn nothing_comes_of_what_is_no_number() {
    let ahead = rectangle(2.0, -3.0, 6.0, 3.0);
    let standing = Standing { inside: &ahead, inset_m: 0.5, off: &[] };
    assert_eq!(standing.nearest(Point::new(f64::NAN, 0.0), 5.0), None);
    assert_eq!(standing.nearest(Point::new(0.0, 0.0), f64::NAN), None);
    assert!(!standing.allows(Point::new(f64::NAN, 0.0)));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn no_place_on_a_grid_is_nearer(
        (west, south, wide, high) in (-6.0..3.0_f64, -6.0..3.0_f64, 1.5..8.0_f64, 1.5..8.0_f64),
        lean in -1.2..1.2_f64,
        fence in prop::collection::vec((-6.0..6.0_f64, -6.0..6.0_f64), 2..5),
        pole in (-6.0..6.0_f64, -6.0..6.0_f64),
        reach_m in 1.0..9.0_f64,
    ) {
        let corners = [(west, south), (west + wide, south + lean), (west + wide + lean, south + high), (west, south + high)];
        let inside = Outline::closed(&corners.map(Point::from));
        let fence = Outline::open(&fence.into_iter().map(Point::from).collect::<Vec<_>>());
        let pole = Outline::open(&[Point::from(pole)]);
        let off = [
            KeepOff { line: &fence, metres: 0.35, filled: false },
            KeepOff { line: &pole, metres: 2.0, filled: false },
        ];
        let standing = Standing { inside: &inside, inset_m: 0.5, off: &off };
        let from = Point::new(0.0, 0.0);
        let found = standing.nearest(from, reach_m);
        if let Some(at) = found {
            prop_assert!(standing.allows(at) && at.distance_m(from) <= reach_m + 1e-6);
        }
        let found_m = found.map_or(f64::INFINITY, |at| at.distance_m(from));
        for east in -90..=90 {
            for north in -90..=90 {
                let at = Point::new(f64::from(east) * 0.1, f64::from(north) * 0.1);
                let off_m = at.distance_m(from);
                if off_m <= reach_m && off_m < found_m - 1e-5 {
                    prop_assert!(!standing.allows(at), "{at:?} is {off_m} off, and {found_m} was found");
                }
            }
        }
    }
}
