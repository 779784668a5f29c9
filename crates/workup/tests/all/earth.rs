//! Earth stakes at stated places: laws of any layout, distances by hand, one more beyond the last, one that is a brace's too.

use plan::{EarthStakes, Energizer, Hazard, HazardKind, Motion, NetKind, Plan, Point, Run, RunStatus};
use proptest::prelude::*;
use workup::earth::{self, EarthStake, one_more, stakes};
use workup::power::{earth_test, stakes as worth};
use workup::{Depth, RunWorkup, Trouble, workup};

/// A square run of 25 m from two nets, fed at its first corner, with stakes at those places.
fn with(places: &[(f64, f64)]) -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(4), ..NetKind::new("long", 50.0, 14) });
    plan.store.energizers = vec![Energizer { id: "one".to_owned(), ..Energizer::assumed() }];
    let places = places.iter().map(|&at| at.into()).collect();
    plan.runs.push(Run {
        id: "run".to_owned(),
        outline: [(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(Point::from).to_vec(),
        nets: Some(vec!["long".to_owned(); 2]),
        feed_at: Some(Point::new(0.0, 0.0)),
        earth_stakes: EarthStakes { places, ..EarthStakes::default() },
        ..Run::default()
    });
    plan
}

fn worked(plan: &Plan) -> RunWorkup {
    workup(plan, Depth::Quick).runs.remove(0)
}

fn ohm(plan: &Plan) -> f64 {
    worked(plan).volts.unwrap().earth_ohm
}

fn off(plan: &Plan) -> Vec<EarthStake> {
    stakes(plan, &workup(plan, Depth::Quick), 0)
}

/// Layouts of stakes that stand at least half a metre apart: on a grid of metres, each a little off it.
fn layout(most: usize) -> impl Strategy<Value = Vec<(f64, f64)>> {
    let cell = (-12_i32..12, -12_i32..-1);
    let many = proptest::collection::btree_set(cell, 1..=most);
    (many, proptest::collection::vec((-0.25..0.25, -0.25..0.25), most)).prop_map(|(cells, off)| {
        let place = |((x, y), (dx, dy)): ((i32, i32), (f64, f64))| (f64::from(x) + dx, f64::from(y) + dy);
        cells.into_iter().zip(off).map(place).collect()
    })
}

#[test]
fn a_row_that_is_placed_is_the_row_that_is_counted() {
    let mut row = with(&[]);
    for count in 1..=5 {
        row.runs[0].earth_stakes = EarthStakes { count: Some(count), ..EarthStakes::default() };
        let placed = with(&(0..count).map(|number| (-2.0 - 3.0 * f64::from(number), -4.0)).collect::<Vec<_>>());
        assert!((ohm(&row) / ohm(&placed) - 1.0).abs() < 1e-12, "{count}");
        // The study of stakes worth driving goes on beyond the last, so that it says the same of both.
        let counts = |plan: &Plan| -> Vec<f64> {
            worth(plan, "run").iter().flat_map(|ground| ground.by_count.iter().map(|one| one.ohm)).collect()
        };
        for (one, other) in counts(&row).iter().zip(counts(&placed)) {
            assert!((one / other - 1.0).abs() < 1e-9, "{one} and {other}");
        }
    }
    // Places count, whatever else is stated.
    let mut both = with(&[(-2.0, -4.0)]);
    let alone = ohm(&both);
    both.runs[0].earth_stakes.count = Some(9);
    both.runs[0].earth_stakes.spacing_m = Some(f64::NAN);
    assert!((ohm(&both) - alone).abs() < 1e-12);
    let assumed = plan::assumed(&both);
    assert!(assumed.iter().all(|one| !one.key.contains("earth_stakes")), "nothing of them is assumed");
}

#[test]
fn stakes_in_a_square_share_alike() {
    // By symmetry each carries a quarter: the mean of its own and the mutual resistances (ours, beside the matrix).
    let plan = with(&[(-4.0, -4.0), (-1.0, -4.0), (-1.0, -1.0), (-4.0, -1.0)]);
    let mutual = |apart_m: f64| electrical::mutual_ohm(100.0, 1.0, apart_m);
    let own = electrical::one_stake_ohm(100.0, 1.0, 0.012);
    let want = (own + 2.0 * mutual(3.0) + mutual(3.0 * 2.0_f64.sqrt())) / 4.0;
    assert!((ohm(&plan) / want - 1.0).abs() < 1e-12);
}

#[test]
fn one_more_stands_in_line_beyond_the_last_and_on_no_other() {
    let at = |places: &[(f64, f64)]| one_more(&with(places).runs[0]).unwrap();
    assert_eq!(at(&[(-2.0, -4.0), (-2.0, -7.0)]), Point::new(-2.0, -10.0));
    assert_eq!(at(&[(-2.0, -4.0)]), Point::new(-5.0, -4.0), "level, away from the feed");
    // Back along its own row: past the one that stands there.
    assert_eq!(at(&[(-9.0, -4.0), (-3.0, -4.0), (-6.0, -4.0)]), Point::new(-12.0, -4.0));
    let mut wide = with(&[(-2.0, -4.0), (-2.0, -7.0)]);
    wide.runs[0].earth_stakes.spacing_m = Some(1.5);
    assert_eq!(one_more(&wide.runs[0]), Some(Point::new(-2.0, -8.5)));
    assert_eq!(one_more(&with(&[]).runs[0]), None);
}

#[test]
fn distances_are_those_of_every_stake() {
    let mut plan = with(&[(-3.0, -4.0), (-0.2, 10.0), (30.0, 25.0)]);
    plan.runs[0].status = RunStatus::Standing;
    let mut second = plan.runs[0].clone();
    second.id = "second".to_owned();
    second.outline.iter_mut().for_each(|at| at.east_m += 40.0);
    second.energizer = Some("two".to_owned());
    second.earth_stakes = EarthStakes { at: Some(Point::new(36.0, 17.0)), ..EarthStakes::default() };
    plan.runs.push(second);
    plan.store.energizers.push(Energizer { id: "two".to_owned(), ..Energizer::assumed() });
    plan.ground.hazards.push(Hazard {
        name: "pole".to_owned(),
        ..Hazard::new(HazardKind::ForeignEarth, vec![Point::new(-3.0, -16.0)])
    });
    let all = off(&plan);
    let near = |got: Option<f64>, want: f64| assert!((got.unwrap() - want).abs() < 1e-9, "{got:?} for {want}");
    near(all[0].net_m, 5.0);
    near(all[0].feed_m, 5.0);
    near(all[0].foreign.map(|one| one.1), 12.0);
    near(all[1].net_m, 0.2);
    // The second run's net begins at 40.
    near(all[2].net_m, 5.0);
    near(all[2].next_m, (30.2_f64).hypot(15.0));
    near(all[2].other_run.map(|one| one.1), 10.0);
    assert_eq!(all[2].other_run.unwrap().0, 1);
    assert!(all.iter().all(|one| one.placed && one.corner.is_none()));
    // On one energizer of which there is one they are one fence.
    plan.runs[0].energizer = Some("one".to_owned());
    plan.runs[1].energizer = Some("one".to_owned());
    plan.store.energizers[0].count = Some(1);
    assert_eq!(off(&plan)[2].other_run, None);
    // Of a row only the first is where it is said to be.
    let mut row = with(&[]);
    row.runs[0].earth_stakes =
        EarthStakes { count: Some(3), at: Some(Point::new(-3.0, -4.0)), ..EarthStakes::default() };
    assert_eq!(off(&row).iter().map(|one| one.placed).collect::<Vec<_>>(), [true, false, false]);
    assert!(off(&with(&[])).is_empty());
}

#[test]
fn two_runs_on_one_energizer_stand_on_one_layout() {
    let two = |own: &[(f64, f64)], theirs: &[(f64, f64)]| {
        let mut plan = with(own);
        let mut second = with(theirs).runs.remove(0);
        second.id = "second".to_owned();
        second.outline.iter_mut().for_each(|at| at.east_m += 40.0);
        second.feed_at = Some(Point::new(40.0, 0.0));
        plan.runs.push(second);
        plan.store.energizers[0].count = Some(1);
        for run in &mut plan.runs {
            (run.status, run.energizer) = (RunStatus::Standing, Some("one".to_owned()));
        }
        ohm(&plan)
    };
    let (one, other) = ([(-3.0, -4.0), (-6.0, -4.0)], [(-3.0, -5.0)]);
    let all = ohm(&with(&[one[0], one[1], other[0]]));
    assert!((two(&one, &other) / all - 1.0).abs() < 1e-12);
    // Near each other they are worth less than side by side; a stake that both runs name stands once.
    let apart = 1.0 / (1.0 / ohm(&with(&one)) + 1.0 / ohm(&with(&other)));
    assert!(all > 1.05 * apart, "{all} and {apart}");
    assert!((two(&one, &one) / ohm(&with(&one)) - 1.0).abs() < 1e-12);
    // Where one's row stands nowhere they are as far apart as can be.
    let far = 1.0 / (1.0 / ohm(&with(&one)) + 1.0 / ohm(&with(&[])));
    assert!((two(&one, &[]) / far - 1.0).abs() < 1e-12);
}

#[test]
fn the_test_of_the_earth_keeps_off_every_stake() {
    let mut plan = with(&[(-3.0, -4.0)]);
    let far = earth_test(&plan, "run").unwrap().far_m;
    plan.runs[0].earth_stakes.places.push(Point::new(28.0, 28.0));
    let test = earth_test(&plan, "run").unwrap();
    assert!(test.far_m < far - 5.0, "{} and {far}", test.far_m);
}

#[test]
fn a_braces_stake_that_is_the_earth_is_carried_once() {
    let plain = worked(&with(&[(-3.0, -4.0)])).lay.unwrap();
    let corner = plain.corners.iter().position(workup::Corner::needs_brace).unwrap();
    let stake = plain.corners[corner].stake.at;
    let shared = with(&[(stake.east_m + 0.01, stake.north_m), (-3.0, -4.0)]);
    let lay = worked(&shared).lay.unwrap();
    assert_eq!(off(&shared)[0].corner, Some(corner));
    let pegs = |lay: &workup::Lay| lay.kits().iter().map(|(kit, count)| kit.own_pegs() as usize * count).sum::<usize>();
    assert_eq!((pegs(&plain), pegs(&lay)), (4, 3));
    assert_eq!(lay.kits().iter().map(|(kit, count)| kit.carried() as usize * count).sum::<usize>(), 2 * 4 - 1);
    // What holds and what it takes is as it was.
    assert_eq!(
        (lay.corners[corner].verdict, lay.set_up_minutes),
        (plain.corners[corner].verdict, plain.set_up_minutes)
    );
    // So is the first of a row that begins there.
    let mut row = with(&[]);
    row.runs[0].earth_stakes = EarthStakes { count: Some(3), at: Some(stake), ..EarthStakes::default() };
    assert_eq!((off(&row)[0].corner, pegs(&worked(&row).lay.unwrap())), (Some(corner), 3));
    // A hand's breadth off it is another stake.
    let beside = with(&[(stake.east_m + 0.1, stake.north_m)]);
    assert_eq!((off(&beside)[0].corner, pegs(&worked(&beside).lay.unwrap())), (None, 4));
}

#[test]
fn what_cannot_be_worked_out_is_said_and_leaves_the_rest() {
    let together = worked(&with(&[(-3.0, -4.0), (-6.0, -4.0), (-3.005, -4.0)]));
    let at = Point::new(-3.005, -4.0);
    assert_eq!(together.troubles, [Trouble::StakesTogether { one: 0, other: 2, at }]);
    assert!(together.volts.is_none() && together.lay.is_some());
    // A measured earth is what it is.
    let mut measured = with(&[(-3.0, -4.0), (-3.0, -4.0)]);
    measured.runs[0].earth_ohm = Some(40.0);
    assert!((ohm(&measured) - 40.0).abs() < 1e-12);
    let many: Vec<(f64, f64)> = (0..=earth::MOST_STAKES).map(|number| (-3.0 * f64::from(number), -9.0)).collect();
    let many = worked(&with(&many));
    let at = Point::new(-3.0 * f64::from(earth::MOST_STAKES), -9.0);
    assert_eq!(many.troubles, [Trouble::TooManyStakes { count: earth::MOST_STAKES + 1, at }]);
    assert!(many.volts.is_none());
    for wild in [f64::NAN, f64::INFINITY, 1e300] {
        let wild = worked(&with(&[(wild, 0.0), (-3.0, -4.0)]));
        let said = matches!(wild.troubles.as_slice(), [Trouble::BadValue { key, .. }] if key.ends_with("places[0]"));
        assert!(said && wild.volts.is_none(), "{:?}", wild.troubles);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn moving_and_turning_all_of_a_run_changes_nothing(
        places in layout(6),
        (east_m, north_m, turn) in (-200.0..200.0, -200.0..200.0, 0.0..6.3),
    ) {
        let plan = with(&places);
        let mut moved = plan.clone();
        let turn = Motion::Turn { about: Point::new(3.0, -2.0), clockwise_rad: turn };
        moved.runs[0] = moved.runs[0].carried(|at| Motion::Shift { east_m, north_m }.of(turn.of(at)));
        prop_assert!((ohm(&plan) / ohm(&moved) - 1.0).abs() < 1e-9);
        for (one, other) in off(&plan).iter().zip(off(&moved)) {
            prop_assert!((one.net_m.unwrap() - other.net_m.unwrap()).abs() < 1e-6);
            prop_assert!((one.feed_m.unwrap() - other.feed_m.unwrap()).abs() < 1e-6);
        }
    }

    #[test]
    fn farther_apart_is_never_more_ohms(places in layout(6), wider in 1.0..4.0) {
        let wide: Vec<(f64, f64)> = places.iter().map(|(x, y)| (x * wider, y * wider)).collect();
        prop_assert!(ohm(&with(&wide)) <= ohm(&with(&places)) * (1.0 + 1e-12));
    }

    #[test]
    fn one_more_is_never_more_ohms_and_the_order_is_no_matter(places in layout(6)) {
        let plan = with(&places);
        let mut more = plan.clone();
        more.runs[0].earth_stakes.places.extend(one_more(&plan.runs[0]));
        prop_assert!(ohm(&more) < ohm(&plan));
        let mut turned = plan.clone();
        turned.runs[0].earth_stakes.places.reverse();
        prop_assert!((ohm(&turned) / ohm(&plan) - 1.0).abs() < 1e-9);
        for ground in worth(&plan, "run") {
            prop_assert!(ground.by_count.windows(2).all(|pair| pair[1].ohm <= pair[0].ohm * (1.0 + 1e-12)));
        }
    }
}
