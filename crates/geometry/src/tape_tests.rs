//! Corners found again from their distances, by the crossing of two circles.

use proptest::prelude::*;

use super::{Setting, Standing, check, set_out};
use crate::Point;

/// Where two circles cross, on the stated side of the way between their middles; closed form, from memory.
fn crossing(from: Point, to: Point, near_m: f64, far_m: f64, left: bool) -> Point {
    let apart_m = from.distance_m(to);
    let (east, north) = ((to.east_m - from.east_m) / apart_m, (to.north_m - from.north_m) / apart_m);
    let along_m = (near_m * near_m - far_m * far_m + apart_m * apart_m) / (2.0 * apart_m);
    let beside_m = (near_m * near_m - along_m * along_m).max(0.0).sqrt() * if left { 1.0 } else { -1.0 };
    let at = |along: f64, beside: f64| along * along_m + beside * beside_m;
    Point { east_m: from.east_m + at(east, -north), north_m: from.north_m + at(north, east) }
}

/// Sets the corners out again with every distance rounded to so many metres, the first as drawn, the second on the line
/// to where it is; the farthest that one is off.
fn off_m(corners: &[Point], known: &[Point], round_m: f64) -> f64 {
    let rounded = |length_m: f64| if round_m > 0.0 { (length_m / round_m).round() * round_m } else { length_m };
    let mut found: Vec<Option<Point>> = vec![None; corners.len()];
    for setting in set_out(corners, known) {
        let stands = |from: Standing| match from {
            Standing::Known(number) => known[number],
            Standing::Corner(number) => found[number].expect("it stands already"),
        };
        let at = corners[setting.corner];
        let place = match (&setting.tapes[..], setting.left) {
            ([], _) => at,
            ([one], _) => {
                let from = stands(one.from);
                let share = rounded(one.length_m) / from.distance_m(at);
                let to = |from: f64, to: f64| from + share * (to - from);
                Point { east_m: to(from.east_m, at.east_m), north_m: to(from.north_m, at.north_m) }
            }
            ([one, other], Some(left)) => {
                let lengths = [rounded(one.length_m), rounded(other.length_m)];
                crossing(stands(one.from), stands(other.from), lengths[0], lengths[1], left)
            }
            // In one line: by the first tape alone, the way it shows.
            ([one, ..], None) => {
                let from = stands(one.from);
                let share = rounded(one.length_m) / from.distance_m(at);
                let to = |from: f64, to: f64| from + share * (to - from);
                Point { east_m: to(from.east_m, at.east_m), north_m: to(from.north_m, at.north_m) }
            }
            _ => panic!("more than two tapes"),
        };
        found[setting.corner] = Some(place);
    }
    let off = corners.iter().zip(found).map(|(at, found)| at.distance_m(found.expect("every corner is set")));
    off.fold(0.0, f64::max)
}

fn points<const COUNT: usize>(places: [(f64, f64); COUNT]) -> Vec<Point> {
    places.map(Point::from).to_vec()
}

fn lengths(setting: &Setting) -> Vec<f64> {
    setting.tapes.iter().map(|taped| taped.length_m).collect()
}

#[test]
fn a_square_is_its_sides_and_its_diagonal() {
    let square = points([(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)]);
    let set = set_out(&square, &[]);
    assert_eq!(set.iter().map(|one| one.corner).collect::<Vec<_>>(), [0, 1, 2, 3]);
    assert!(set[0].tapes.is_empty() && lengths(&set[1]) == [25.0]);
    let diagonal_m = 25.0 * 2_f64.sqrt();
    assert!((lengths(&set[2])[0] - 25.0).abs() < 1e-12 && (lengths(&set[2])[1] - diagonal_m).abs() < 1e-12);
    assert_eq!(set[2].tapes.iter().map(|one| one.from).collect::<Vec<_>>(), [Standing::Corner(1), Standing::Corner(0)]);
    assert!((set[2].crossing_rad.to_degrees() - 45.0).abs() < 1e-9);
    assert_eq!(lengths(&set[3]), [25.0, 25.0]);
    assert!((set[3].crossing_rad.to_degrees() - 90.0).abs() < 1e-6);
    // From corner 3 to corner 1 corner 4 is to the right; the diagonal from 2 to 4 is left to check it by.
    assert_eq!(set[3].left, Some(false));
    let (one, other, length_m) = check(&square, true, &set).unwrap();
    assert_eq!((one, other), (1, 3));
    assert!((length_m - diagonal_m).abs() < 1e-12);
    assert!(off_m(&square, &[], 0.0) < 1e-9 && off_m(&square, &[], 0.01) < 0.03);
}

#[test]
fn a_bent_shape_comes_out_within_the_rounding() {
    // An L, a dent of which looks inward, and a corner on a straight side.
    let bent = points([(0.0, 0.0), (20.0, 0.0), (40.0, 0.0), (40.0, 15.0), (18.0, 15.0), (18.0, 40.0), (0.0, 40.0)]);
    let set = set_out(&bent, &[]);
    // Corner 3 lies in one line with both that stand and waits for one beside that line.
    let order: Vec<usize> = set.iter().map(|one| one.corner).collect();
    assert_eq!(order[..3], [0, 1, 3]);
    assert!(set[2..].iter().all(|one| one.crossing_rad.to_degrees() > 14.9 && one.left.is_some()));
    assert!(off_m(&bent, &[], 0.0) < 1e-9);
    let off = off_m(&bent, &[], 0.01);
    assert!(off < 0.06, "{off}");
}

#[test]
fn known_places_set_every_corner_that_they_cross_well() {
    let square = points([(10.0, 10.0), (35.0, 10.0), (35.0, 35.0), (10.0, 35.0)]);
    let known = points([(0.0, 0.0), (0.0, 0.0), (40.0, 0.0)]);
    let set = set_out(&square, &known);
    // The second stands on the first: the first and the third count.
    let from = |one: &Setting| one.tapes.iter().map(|taped| taped.from).collect::<Vec<_>>();
    let pair = [Standing::Known(0), Standing::Known(2)];
    assert_eq!(from(&set[0]), pair);
    assert!(
        (lengths(&set[0])[0] - 200_f64.sqrt()).abs() < 1e-12 && (lengths(&set[0])[1] - 1000_f64.sqrt()).abs() < 1e-12
    );
    assert!(set.iter().all(|one| one.left.is_some()), "from two known places nothing is left to the hand");
    assert!(off_m(&square, &known, 0.0) < 1e-9 && off_m(&square, &known, 0.01) < 0.03);
    // One known place gives the first corner's distance, and crosses with it.
    let set = set_out(&square, &known[..1]);
    assert_eq!(from(&set[0]), [Standing::Known(0)]);
    assert_eq!(set[1].tapes.len(), 2);
    assert!(off_m(&square, &known[..1], 0.0) < 1e-9);
}

#[test]
fn a_place_on_top_of_another_is_no_second_one() {
    // The only known place is the gatepost at which corner 1 stands: no tape gives the direction of corner 2.
    let square = points([(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)]);
    let gatepost = points([(0.0, 0.0)]);
    let set = set_out(&square, &gatepost);
    assert_eq!(lengths(&set[0]), [0.0]);
    assert_eq!(lengths(&set[1]), [25.0], "one tape, not two from one spot");
    assert!(set[1].left.is_none());
    assert!(off_m(&square, &gatepost, 0.0) < 1e-9);
    // Where all lie in one line, the two that are taped from lie apart still.
    let line = points([(0.0, 0.0), (10.0, 0.0), (30.0, 0.0), (45.0, 0.0)]);
    for setting in &set_out(&line, &gatepost)[2..] {
        let [one, other] = lengths(setting)[..] else { panic!("two tapes: {setting:?}") };
        assert!((one - other).abs() > 1.0, "{setting:?}");
    }
}

#[test]
fn lines_points_and_nothing_are_set_without_a_crossing() {
    assert!(set_out(&[], &[]).is_empty());
    let line = points([(0.0, 0.0), (10.0, 0.0), (30.0, 0.0)]);
    let set = set_out(&line, &[]);
    assert!(set.iter().all(|one| one.left.is_none()));
    assert!(off_m(&line, &[], 0.0) < 1e-9);
    assert_eq!(check(&line[..2], false, &set_out(&line[..2], &[])), None);
    let same = vec![Point { east_m: 1.0, north_m: 1.0 }; 3];
    assert_eq!(set_out(&same, &same).len(), 3);
}

proptest! {
    /// Any outline comes out again from its distances, and stays so however it is turned and moved.
    #[test]
    fn every_outline_is_found_again(
        places in proptest::collection::vec((-60.0..60.0_f64, -60.0..60.0_f64), 3..12),
        known in proptest::collection::vec((-80.0..80.0_f64, -80.0..80.0_f64), 0..3),
    ) {
        let corners: Vec<Point> = places.iter().copied().map(Point::from).collect();
        let known: Vec<Point> = known.iter().copied().map(Point::from).collect();
        let apart = |all: &[Point]| all.iter().enumerate().all(|(index, one)| {
            all[index + 1..].iter().all(|other| one.distance_m(*other) > 1.0)
        });
        prop_assume!(apart(&[&corners[..], &known[..]].concat()));
        let flattest = set_out(&corners, &known).iter().filter(|one| one.tapes.len() == 2)
            .map(|one| one.crossing_rad).fold(f64::INFINITY, f64::min);
        prop_assume!(flattest > 0.1);
        let off = off_m(&corners, &known, 0.0);
        prop_assert!(off < 1e-6, "{off}");
    }
}
