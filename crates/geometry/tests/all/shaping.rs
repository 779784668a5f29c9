//! Outlines shaped by hand against closed forms and laws.

use std::f64::consts::{FRAC_PI_2, FRAC_PI_3, PI, TAU};

use geometry::{AngleArc, CornerFigures, Point, Vector, shift_to_share, slide_side, square_up, turn_rad};
use proptest::prelude::*;

fn points(places: &[(f64, f64)]) -> Vec<Point> {
    places.iter().copied().map(Point::from).collect()
}

fn near(one: Point, other: Point, off_m: f64) -> bool {
    one.distance_m(other) <= off_m
}

fn area(outline: &[Point]) -> f64 {
    let home = outline[0];
    let twice: f64 =
        (0..outline.len()).map(|one| (outline[one] - home).cross(outline[(one + 1) % outline.len()] - home)).sum();
    twice / 2.0
}

/// Far from round, never in line, corners at random distances in order round a middle.
fn outlines() -> impl Strategy<Value = Vec<Point>> {
    (proptest::collection::vec((8.0..60.0_f64, 0.2..0.8_f64), 3..9), -300.0..300.0_f64, -300.0..300.0_f64).prop_map(
        |(spokes, east_m, north_m)| {
            let count = spokes.len() as f64;
            let at = |(index, (far, share)): (usize, (f64, f64))| {
                let (sine, cosine) = (TAU * (index as f64 + share) / count).sin_cos();
                Point::new(east_m + far * cosine, north_m + far * sine)
            };
            spokes.into_iter().enumerate().map(at).collect()
        },
    )
}

#[test]
fn a_slid_side_of_a_rectangle_makes_another_rectangle() {
    let rectangle = points(&[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)]);
    // Walked counter-clockwise, the left of a side is inside.
    let slid = slide_side(&rectangle, true, 1, 5.0).unwrap();
    assert_eq!(slid, points(&[(0.0, 0.0), (25.0, 0.0), (25.0, 20.0), (0.0, 20.0)]));
    // The slanted neighbours of a trapezium lead its corners: 5 m up along 45 degrees is 5 m in.
    let trapezium = points(&[(0.0, 0.0), (40.0, 0.0), (30.0, 10.0), (10.0, 10.0)]);
    let slid = slide_side(&trapezium, true, 0, 5.0).unwrap();
    assert!(near(slid[0], Point::new(5.0, 5.0), 1e-12) && near(slid[1], Point::new(35.0, 5.0), 1e-12), "{slid:?}");
}

#[test]
fn a_side_between_neighbours_along_it_does_not_slide() {
    let straight_on = points(&[(0.0, 0.0), (10.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)]);
    assert_eq!(slide_side(&straight_on, true, 0, 1.0), None);
    assert_eq!(slide_side(&straight_on, true, 7, 1.0), None);
    assert_eq!(slide_side(&straight_on, true, 2, f64::NAN), None);
    assert_eq!(slide_side(&straight_on, false, 4, 1.0), None, "an open line has no closing side");
    // Its ends are free.
    let ends = slide_side(&points(&[(0.0, 0.0), (10.0, 0.0)]), false, 0, 2.0).unwrap();
    assert_eq!(ends, points(&[(0.0, 2.0), (10.0, 2.0)]));
}

#[test]
fn what_is_nearly_a_rectangle_becomes_one_and_a_triangle_does_not() {
    let sketch = points(&[(0.0, 0.2), (30.0, -0.2), (30.5, 20.0), (-0.5, 20.0)]);
    let squared = square_up(&sketch, true).unwrap();
    for corner in 0..4 {
        let turn = turn_rad(squared[(corner + 3) % 4], squared[corner], squared[(corner + 1) % 4]);
        assert!((turn - FRAC_PI_2).abs() < 1e-9, "{turn}");
    }
    // Square to the axes already, each line goes through the mean of its two corners.
    let askew = points(&[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (-1.0, 20.0), (-1.0, 10.0), (1.0, 10.0)]);
    assert!(square_up(&askew, true).is_some());
    assert_eq!(square_up(&points(&[(0.0, 0.0), (10.0, 0.0), (5.0, 8.0)]), true), None);
    assert_eq!(square_up(&points(&[(0.0, 0.0)]), true), None);
    assert_eq!(square_up(&points(&[(0.0, 0.0), (f64::NAN, 0.0), (5.0, 8.0)]), true), None);
}

#[test]
fn a_corner_that_leans_out_shares_its_lines_with_both_neighbours() {
    // Symmetric about the axes, so the main direction is theirs: the two upper corners meet at the mean of 20 and 22.
    let sketch = points(&[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)]);
    let mut lifted = sketch.clone();
    lifted.iter_mut().skip(2).for_each(|at| at.north_m += 2.0);
    assert_eq!(square_up(&lifted, true).unwrap().len(), 4);
    assert!(square_up(&lifted, true).unwrap().iter().zip(&lifted).all(|(one, other)| near(*one, *other, 1e-12)));
}

#[test]
fn a_like_side_is_shared_by_a_shift_and_by_nothing_where_there_is_none() {
    let parallelogram = points(&[(0.0, 0.0), (30.0, 0.0), (36.0, 20.0), (6.0, 20.0)]);
    assert_eq!(shift_to_share(&parallelogram, 1, 1e-6), Some(Vector::new(30.0, 0.0)));
    assert_eq!(shift_to_share(&points(&[(0.0, 0.0), (10.0, 0.0), (5.0, 8.0)]), 0, 1e-6), None);
    assert_eq!(shift_to_share(&parallelogram, 9, 1e-6), None);
    assert_eq!(shift_to_share(&[], 0, 1e-6), None);
}

#[test]
fn figures_of_a_corner_place_it_as_a_triangle_has_it() {
    let (before, after) = (Point::new(0.0, 0.0), Point::new(50.0, 0.0));
    let near_by = Point::new(20.0, 10.0);
    let figures = |before_m, after_m, turn_rad| CornerFigures { before_m, after_m, turn_rad };
    // 30, 40, 50: a right angle at the corner, over the hypotenuse at 18, 24.
    let right = Point::new(18.0, 24.0);
    for given in [
        figures(Some(30.0), Some(40.0), None),
        figures(Some(30.0), None, Some(FRAC_PI_2)),
        figures(None, Some(40.0), Some(FRAC_PI_2)),
        figures(Some(30.0), Some(40.0), Some(FRAC_PI_2)),
    ] {
        let at = given.place(before, after, near_by).unwrap();
        assert!(near(at, right, 1e-9), "{given:?} {at:?}");
        let below = given.place(before, after, Point::new(20.0, -10.0)).unwrap();
        assert!(near(below, Point::new(18.0, -24.0), 1e-9), "{given:?} {below:?}");
    }
    // What cannot close, or does not agree.
    for given in [
        figures(Some(10.0), Some(20.0), None),
        figures(Some(90.0), Some(20.0), None),
        figures(Some(30.0), Some(40.0), Some(FRAC_PI_3)),
        figures(Some(60.0), None, Some(FRAC_PI_2)),
        figures(Some(f64::NAN), Some(20.0), None),
        figures(None, None, Some(f64::NAN)),
        figures(None, None, Some(PI)),
    ] {
        assert_eq!(given.place(before, after, near_by), None, "{given:?}");
    }
    assert_eq!(figures(None, None, None).place(before, after, near_by), Some(near_by));
    assert_eq!(figures(None, None, Some(0.0)).place(before, after, near_by), Some(Point::new(20.0, 0.0)));
    assert!(near(
        figures(Some(20.0), Some(30.0), None).place(before, after, near_by).unwrap(),
        (20.0, 0.0).into(),
        1e-9
    ));
}

proptest! {
    #[test]
    fn a_slid_side_stays_parallel_and_slides_back(outline in outlines(), side in 0..9_usize, by_m in -6.0..6.0_f64) {
        let side = side % outline.len();
        let count = outline.len();
        let Some(slid) = slide_side(&outline, true, side, by_m) else { return Ok(()) };
        let way = |of: &[Point], one: usize| of[(one + 1) % count] - of[one % count];
        let (was, is) = (way(&outline, side), way(&slid, side));
        let scale = 1.0 + was.length() * is.length();
        prop_assert!(was.cross(is).abs() <= 1e-6 * scale);
        prop_assert!(((slid[side] - outline[side]).dot(was.unit().left()) - by_m).abs() < 1e-6);
        for neighbour in [side + count - 1, side + 1] {
            let (was, is) = (way(&outline, neighbour), way(&slid, neighbour));
            prop_assert!(was.cross(is).abs() <= 1e-6 * (1.0 + was.length() * is.length()), "a neighbour keeps its line");
        }
        let others = (0..count).filter(|&corner| corner != side && corner != (side + 1) % count);
        prop_assert!(others.into_iter().all(|corner| slid[corner] == outline[corner]));
        // Not through a neighbour's end, it slides back to where it was.
        let keeps = (0..count).all(|one| way(&slid, one).dot(way(&outline, one)) > 1e-3);
        if let Some(back) = slide_side(&slid, true, side, -by_m).filter(|_| keeps) {
            prop_assert!(back.iter().zip(&outline).all(|(one, other)| near(*one, *other, 1e-6)));
        }
    }

    #[test]
    fn a_squared_outline_is_square_and_stays_as_it_is(outline in outlines(), closed in any::<bool>()) {
        let Some(squared) = square_up(&outline, closed) else { return Ok(()) };
        let count = squared.len();
        let sides: Vec<Vector> = (0..if closed { count } else { count - 1 })
            .map(|one| squared[(one + 1) % count] - squared[one])
            .collect();
        for side in &sides {
            let turn = sides[0].unit().cross(side.unit()).abs();
            prop_assert!(!(1e-6..=1.0 - 1e-6).contains(&turn), "{turn}");
        }
        // No other size of the same shape lies nearer: the ways of the corners of one line cancel out.
        let moved: Vector = squared.iter().zip(&outline).fold(Vector::default(), |sum, (one, other)| sum + (*one - *other));
        if closed {
            prop_assert!(moved.length() < 1e-6, "the mean of the corners stays: {moved:?}");
        }
        let again = square_up(&squared, closed).unwrap();
        prop_assert!(again.iter().zip(&squared).all(|(one, other)| near(*one, *other, 1e-6)));
    }

    #[test]
    fn a_turned_sketch_of_a_rectangle_is_squared_alike(
        wide_m in 12.0..60.0_f64, tall_m in 12.0..60.0_f64, off in proptest::array::uniform8(-2.0..2.0_f64), turn in 0.0..TAU,
    ) {
        let (sine, cosine) = turn.sin_cos();
        let turned = |at: Point| Point::new(cosine * at.east_m - sine * at.north_m, sine * at.east_m + cosine * at.north_m);
        let sketch = points(&[
            (off[0], off[1]), (wide_m + off[2], off[3]), (wide_m + off[4], tall_m + off[5]), (off[6], tall_m + off[7]),
        ]);
        let there: Vec<Point> = sketch.iter().copied().map(turned).collect();
        let (one, other) = (square_up(&sketch, true).unwrap(), square_up(&there, true).unwrap());
        prop_assert!(one.into_iter().map(turned).zip(&other).all(|(one, other)| near(one, *other, 1e-6)));
        prop_assert!((area(&other) - area(&there)).abs() < 0.2 * area(&there), "nothing collapses");
    }

    #[test]
    fn the_figures_of_any_corner_lead_back_to_it(
        before in (-90.0..90.0_f64, -90.0..90.0_f64), after in (-90.0..90.0_f64, -90.0..90.0_f64),
        at in (-90.0..90.0_f64, -90.0..90.0_f64), which in 0..5_usize,
    ) {
        let [before, after, at] = [before, after, at].map(Point::from);
        let turn = turn_rad(before, at, after).abs();
        let (one_m, other_m) = (before.distance_m(at), at.distance_m(after));
        prop_assume!(one_m > 1.0 && other_m > 1.0 && before.distance_m(after) > 1.0);
        prop_assume!(turn > 0.05 && turn < PI - 0.05);
        let given = [
            CornerFigures { before_m: Some(one_m), after_m: Some(other_m), turn_rad: None },
            CornerFigures { before_m: Some(one_m), after_m: None, turn_rad: Some(turn) },
            CornerFigures { before_m: None, after_m: Some(other_m), turn_rad: Some(turn) },
            CornerFigures { before_m: Some(one_m), after_m: None, turn_rad: None },
            CornerFigures { before_m: None, after_m: None, turn_rad: Some(turn) },
        ][which];
        let found = given.place(before, after, at).unwrap();
        prop_assert!(near(found, at, 1e-4), "{given:?}: {found:?} for {at:?}");
        // A typed side is that side.
        if given.before_m.is_some() {
            prop_assert!((before.distance_m(found) - one_m).abs() < 1e-9);
        }
        if given.turn_rad.is_some() {
            prop_assert!((turn_rad(before, found, after).abs() - turn).abs() < 1e-6);
        }
        let arc = AngleArc::of_turn(before, after, turn, (after - before).cross(at - before) > 0.0).unwrap();
        for place in arc.line(9).into_iter().skip(1).take(7) {
            prop_assert!((turn_rad(before, place, after).abs() - turn).abs() < 1e-6);
            prop_assert!(((after - before).cross(place - before) > 0.0) == ((after - before).cross(at - before) > 0.0));
        }
    }
}
