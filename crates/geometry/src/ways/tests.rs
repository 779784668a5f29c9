//! Ways against closed forms and against the whole graph.

use std::f64::consts::{PI, TAU};

use super::*;

fn ring(points: &[(f64, f64)], clear_m: f64) -> Barrier {
    let points: Vec<Point> = points.iter().copied().map(Point::from).collect();
    Barrier { line: Outline::closed(&points), clear_m }
}

fn path(points: &[(f64, f64)], clear_m: f64) -> Barrier {
    let points: Vec<Point> = points.iter().copied().map(Point::from).collect();
    Barrier { line: Outline::open(&points), clear_m }
}

fn way(from: (f64, f64), to: (f64, f64), barriers: &[Barrier]) -> Result<Way, NoWay> {
    let mut budget = WAY_BUDGET_STEPS;
    shortest_way(from.into(), to.into(), barriers, &mut budget)
}

/// The least distance of a way from a line, sampled every centimetre.
fn nearest_m(way: &Way, line: &Outline) -> f64 {
    let samples = way.points.windows(2).flat_map(|pair| {
        let steps = (pair[0].distance_m(pair[1]) / 0.01).ceil().max(1.0) as usize;
        (0..=steps).map(move |step| pair[0].towards(pair[1], step as f64 / steps as f64))
    });
    samples.map(|at| crate::region::distance_to_m(line, at)).fold(f64::INFINITY, f64::min)
}

#[test]
fn nothing_between_is_a_straight_way() {
    let found = way((0.0, 0.0), (30.0, 40.0), &[]).expect("a way");
    assert_eq!((found.points.len(), found.length_m), (2, 50.0));
    // What stands aside by its clearance or more leaves it straight.
    let found = way((0.0, 0.0), (10.0, 0.0), &[path(&[(0.0, 2.0), (10.0, 2.0)], 2.0)]).expect("a way");
    assert_eq!(found.points.len(), 2);
}

#[test]
fn round_a_wall_the_way_is_two_tangents_and_an_arc() {
    // Closed form: from 10 m before a wall's end to 10 m behind it, off by 1 m: twice the tangent and the arc between.
    let wall = path(&[(0.0, 0.0), (0.0, 100.0)], 1.0);
    let found = way((-10.0, 10.0), (10.0, 10.0), std::slice::from_ref(&wall)).expect("a way");
    let far_m = 10.0_f64.hypot(10.0);
    let tangent_m = (far_m * far_m - 1.0).sqrt();
    let arc_rad = PI * 1.5 - 2.0 * (1.0 / far_m).acos();
    let exact_m = 2.0 * tangent_m + arc_rad;
    assert!(found.length_m >= exact_m - 1e-6, "{} is shorter than {exact_m}", found.length_m);
    assert!(found.length_m <= exact_m * 1.01, "{} is far longer than {exact_m}", found.length_m);
    assert!(nearest_m(&found, &wall.line) >= 1.0 - 1e-5);
}

#[test]
fn what_is_shut_has_no_way_and_a_gap_opens_it() {
    let square = [(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)];
    assert_eq!(way((10.0, 10.0), (40.0, 10.0), &[ring(&square, 0.5)]), Err(NoWay::None));
    let net = ring(&square, 0.5).line;
    let opened = |gap_m: f64| -> Vec<Barrier> {
        without_stretch(&net, 10.0, gap_m).into_iter().map(|line| Barrier { line, clear_m: 0.5 }).collect()
    };
    let found = way((10.0, 10.0), (40.0, 10.0), &opened(3.0)).expect("a way");
    assert!(found.points.iter().any(|at| at.north_m < 0.0), "out through the south side: {found:?}");
    assert_eq!(way((10.0, 10.0), (40.0, 10.0), &opened(0.8)), Err(NoWay::None), "the gap is narrower than the way");
}

#[test]
fn an_end_within_a_clearance_is_refused_and_the_budget_ends() {
    let wall = path(&[(0.0, 0.0), (0.0, 10.0)], 2.0);
    assert_eq!(way((1.0, 5.0), (9.0, 5.0), std::slice::from_ref(&wall)), Err(NoWay::EndTooNear));
    let found = shortest_way(Point::new(-5.0, 5.0), Point::new(5.0, 5.0), &[wall], &mut 3);
    assert_eq!(found, Err(NoWay::OutOfSteps));
}

#[test]
fn what_is_shut_off_costs_no_search() {
    // Five rings one in the other, of forty sides each: to look at every pair would cost millions of steps.
    let rings: Vec<Barrier> = (1..=5)
        .map(|ring_number| {
            let radius_m = 10.0 * f64::from(ring_number);
            let places: Vec<(f64, f64)> = (0..40)
                .map(|step| f64::from(step) * TAU / 40.0)
                .map(|angle| (radius_m * angle.cos(), radius_m * angle.sin()))
                .collect();
            ring(&places, 1.0)
        })
        .collect();
    let mut budget = 1;
    let found = shortest_way(Point::new(0.0, 0.0), Point::new(80.0, 3.0), &rings, &mut budget);
    assert_eq!((found, budget), (Err(NoWay::None), 1));
}

#[test]
fn shut_off_is_said_only_of_what_has_no_way() {
    // Boxes scattered so thickly that about half of the places are shut in: never one to which a way is found, and
    // most of those to which none is.
    let (mut shut_off, mut none) = (0, 0);
    for case in 0..120_u32 {
        let boxes: Vec<Barrier> = (0..14)
            .map(|index| {
                let spread = |by: f64| (f64::from(case * 31 + index) * by).sin() * 14.0;
                let (east, north) = (spread(1.7), spread(2.9));
                let half_m = 1.0 + f64::from(index % 4);
                let places = [(-1.0, -1.0), (1.0, -0.8), (0.9, 1.0), (-1.0, 1.1)]
                    .map(|(e, n): (f64, f64)| (east + half_m * e, north + half_m * n));
                ring(&places, 0.9)
            })
            .collect();
        let (from, to) = (Point::new(0.0, 0.0), Point::new(40.0, 1.0));
        let sides: Vec<Side> = boxes.iter().flat_map(sides_of).collect();
        if !clear(from, from, &sides) {
            continue;
        }
        let is_shut = shut::off(from, to, &sides);
        // Without the shortcut: every pair of places looked at.
        let mut places = vec![from, to];
        places.extend(boxes.iter().flat_map(fans).filter(|&at| clear(at, at, &sides)));
        let (mut reached, mut open) = (vec![false; places.len()], vec![0]);
        reached[0] = true;
        while let Some(here) = open.pop() {
            for next in 0..places.len() {
                if !reached[next] && clear(places[here], places[next], &sides) {
                    reached[next] = true;
                    open.push(next);
                }
            }
        }
        assert!(!(is_shut && reached[1]), "case {case}: there is a way");
        shut_off += u32::from(is_shut);
        none += u32::from(!reached[1]);
    }
    assert!(none >= 5 && shut_off * 10 >= none * 8, "{shut_off} of {none}");
}

#[test]
fn the_lazy_search_finds_what_the_whole_graph_holds() {
    // Every pair of places looked at, by Floyd and Warshall, on scattered boxes.
    for case in 0..25_u32 {
        let boxes: Vec<Barrier> = (0..6)
            .map(|index| {
                let spread = |by: f64| (f64::from(case * 7 + index) * by).sin() * 12.0;
                let (east, north) = (20.0 + spread(1.7), spread(2.9));
                ring(
                    &[(east, north), (east + 5.0, north + 1.0), (east + 4.0, north + 6.0), (east - 1.0, north + 5.0)],
                    0.8,
                )
            })
            .collect();
        let (from, to) = (Point::new(-5.0, 0.0), Point::new(45.0, 3.0));
        let sides: Vec<Side> = boxes.iter().flat_map(sides_of).collect();
        let mut places = vec![from, to];
        places.extend(boxes.iter().flat_map(fans).filter(|&at| clear(at, at, &sides)));
        let count = places.len();
        let mut far_m = vec![vec![f64::INFINITY; count]; count];
        for (one, from) in places.iter().enumerate() {
            for (other, to) in places.iter().enumerate() {
                if clear(*from, *to, &sides) {
                    far_m[one][other] = from.distance_m(*to);
                }
            }
        }
        for over in 0..count {
            for one in 0..count {
                for other in 0..count {
                    far_m[one][other] = far_m[one][other].min(far_m[one][over] + far_m[over][other]);
                }
            }
        }
        let mut budget = WAY_BUDGET_STEPS;
        match shortest_way(from, to, &boxes, &mut budget) {
            Ok(found) => {
                assert!((found.length_m - far_m[0][1]).abs() < 1e-9, "case {case}");
                assert!(boxes.iter().all(|one| nearest_m(&found, &one.line) >= 0.8 - 1e-5), "case {case}");
            }
            Err(_) => assert!(far_m[0][1].is_infinite(), "case {case}"),
        }
    }
}

#[test]
fn stretches_run_over_the_first_vertex() {
    let square = ring(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)], 0.0).line;
    let over = stretch(&square, 35.0, 10.0);
    assert_eq!(over.points().collect::<Vec<_>>(), [(0.0, 5.0), (0.0, 0.0), (5.0, 0.0)].map(Point::from));
    let rest = without_stretch(&square, 35.0, 10.0);
    assert!(rest.len() == 1 && (rest[0].length_m() - 30.0).abs() < 1e-9);
    let open = path(&[(0.0, 0.0), (10.0, 0.0)], 0.0).line;
    assert_eq!(without_stretch(&open, 4.0, 2.0).iter().map(Outline::length_m).collect::<Vec<_>>(), [4.0, 4.0]);
    assert!(without_stretch(&open, 0.0, 10.0).is_empty());
}
