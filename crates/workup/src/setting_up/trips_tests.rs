//! The search against brute force, its bound, and what must not change the answer.
#![allow(clippy::unwrap_used, clippy::print_stdout, reason = "a test may stop and prints its gap")]

use proptest::prelude::{prop_assert, prop_assert_eq, proptest};

use super::*;

/// Numbers from 0 to 1 by a fixed recurrence (Knuth's multiplier), so that the cases are the same every time.
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn place(&mut self, extent_m: f64) -> Point {
        Point::new(self.next() * extent_m, self.next() * extent_m)
    }
}

/// Rolls in a chain round scattered places; entered and left at one end or at the two.
fn task(seed: u64, count: usize, rolls_a_trip: usize, through: bool) -> Task {
    let mut numbers = Numbers(seed.wrapping_mul(977).wrapping_add(5));
    for _ in 0..4 {
        numbers.next();
    }
    let joins: Vec<Point> = (0..count).map(|_| numbers.place(100.0)).collect();
    let rolls = (0..count)
        .map(|roll| {
            let (start, end) = (joins[roll], joins[(roll + 1) % count]);
            let ends = [(start, end), (end, start)];
            ends.map(|(enter, far)| Way { enter, leave: if through { far } else { enter } }).to_vec()
        })
        .collect();
    Task {
        base: numbers.place(100.0),
        last_home: numbers.place(100.0),
        rolls,
        rolls_a_trip,
        out: 1.0 / 45.0,
        between: 1.0 / 45.0,
        home: 1.0 / 75.0,
    }
}

/// Every order of the rolls, every way of each, every cut into trips: the least minutes.
fn brute_force(task: &Task) -> f64 {
    fn go(task: &Task, left: &mut Vec<usize>, trip: &mut Vec<Stop>, spent: f64, best: &mut f64) {
        if left.is_empty() {
            let total = spent + task.trip_minutes(trip, task.last_home);
            *best = best.min(total);
            return;
        }
        for index in 0..left.len() {
            let roll = left.remove(index);
            for way in 0..task.rolls[roll].len() {
                if trip.len() < task.rolls_a_trip {
                    trip.push((roll, way));
                    go(task, left, trip, spent, best);
                    trip.pop();
                }
                if !trip.is_empty() {
                    let home = spent + task.trip_minutes(trip, task.base);
                    go(task, left, &mut vec![(roll, way)], home, best);
                }
            }
            left.insert(index, roll);
        }
    }
    let mut best = f64::INFINITY;
    go(task, &mut (0..task.rolls.len()).collect(), &mut Vec::new(), 0.0, &mut best);
    best
}

/// What a walk takes, from its trips alone; every roll once.
fn retold(task: &Task, walk: &Walk) -> f64 {
    let mut rolls: Vec<usize> = walk.trips.iter().flatten().map(|stop| stop.0).collect();
    rolls.sort_unstable();
    assert_eq!(rolls, (0..task.rolls.len()).collect::<Vec<_>>());
    assert!(walk.trips.iter().all(|trip| (1..=task.rolls_a_trip.max(1)).contains(&trip.len())));
    let (last, others) = walk.trips.split_last().unwrap();
    others.iter().map(|trip| task.trip_minutes(trip, task.base)).sum::<f64>() + task.trip_minutes(last, task.last_home)
}

#[test]
fn the_answer_is_the_best_of_all_orders_ways_and_cuts() {
    for (count, seeds) in [(1, 10), (2, 20), (3, 20), (4, 20), (5, 10), (6, 3)] {
        for seed in 0..seeds {
            for (rolls_a_trip, through) in [(1, false), (1, true), (2, false), (2, true)] {
                let task = task(seed, count, rolls_a_trip, through);
                let (walk, want) = (best(&task), brute_force(&task));
                assert!((walk.minutes - want).abs() < 1e-9, "{count} {seed} {rolls_a_trip}: {} {want}", walk.minutes);
                assert!((retold(&task, &walk) - want).abs() < 1e-9);
                assert!((walk.bound - want).abs() < 1e-9, "exact, so the bound is the answer");
            }
        }
    }
}

#[test]
fn seven_rolls_in_every_order_agree_too() {
    for (rolls_a_trip, through) in [(1, false), (2, true)] {
        let task = task(3, 7, rolls_a_trip, through);
        assert!((best(&task).minutes - brute_force(&task)).abs() < 1e-9);
    }
}

#[test]
fn beyond_the_exact_size_the_answer_stands_beside_its_bound() {
    let mut gaps = Vec::new();
    for seed in 0..30 {
        // Where both can be had the bound is held against the exact answer.
        let small = task(seed, 12, 2, seed % 2 == 0);
        let pairs = Pairs::of(&small);
        let (exact, rough) = (over_subsets(&small, &pairs), improved(&small, &pairs));
        assert!(rough.bound <= exact.minutes + 1e-9 && exact.minutes <= rough.minutes + 1e-9, "{seed}");
        assert!((retold(&small, &rough) - rough.minutes).abs() < 1e-9);
        assert!(rough.minutes <= exact.minutes * 1.1, "{seed}: {} {}", rough.minutes, exact.minutes);
        let large = task(seed, 40, 2, seed % 2 == 0);
        let walk = best(&large);
        assert!(walk.bound <= walk.minutes && (retold(&large, &walk) - walk.minutes).abs() < 1e-9);
        gaps.push(walk.minutes / walk.bound - 1.0);
    }
    gaps.sort_by(f64::total_cmp);
    println!("median gap over 30 chains of 40 rolls, two a trip: {:.1} %", 100.0 * gaps[gaps.len() / 2]);
}

proptest! {
    #[test]
    fn moving_turning_and_mirroring_change_nothing(
        seed in 0_u64..10_000, count in 1_usize..12, rolls_a_trip in 1_usize..3, through: bool,
        angle_rad in 0.0..6.3_f64, mirror: bool, east_m in -1e4..1e4_f64, north_m in -1e4..1e4_f64,
    ) {
        let task = task(seed, count, rolls_a_trip, through);
        let walk = best(&task);
        let (sin, cos) = angle_rad.sin_cos();
        let to = |at: Point| {
            let (east, north) = (if mirror { -at.east_m } else { at.east_m }, at.north_m);
            Point::new(cos * east - sin * north + east_m, sin * east + cos * north + north_m)
        };
        let ways = |ways: &Vec<Way>| ways.iter().map(|way| Way { enter: to(way.enter), leave: to(way.leave) }).collect();
        let moved = Task {
            base: to(task.base),
            last_home: to(task.last_home),
            rolls: task.rolls.iter().map(ways).collect(),
            ..task.clone()
        };
        let other = best(&moved);
        prop_assert_eq!(&other.trips, &walk.trips);
        prop_assert!((other.minutes - walk.minutes).abs() < 1e-8);
        prop_assert!(walk.bound <= walk.minutes + 1e-9);
    }
}

#[test]
fn the_last_roll_of_the_chain_is_last_where_all_are_equal() {
    let mut same = task(1, 4, 1, false);
    same.last_home = same.base;
    let rolls = |walk: &Walk| walk.trips.iter().flatten().map(|stop| stop.0).collect::<Vec<_>>();
    assert_eq!(rolls(&best(&same)), [0, 1, 2, 3]);
    assert_eq!(best(&Task { rolls: Vec::new(), ..same }), Walk::default());
}
