//! Which energizer holds: against runs worked out as they stand, and against itself.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

use plan::{Energizer, NetKind, Plan, Point, Run};
use workup::power::{ByGrass, Choice, MOST_NETS, SourceModel, choice};
use workup::{Depth, SheetTrouble, workup};

/// A square run of so many nets of 50 m, fed at its first corner where its chain starts.
fn square(nets: usize) -> Plan {
    let side_m = 12.5 * nets as f64;
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(20), ..NetKind::new("long", 50.0, 14) });
    let corner = |east: f64, north: f64| Point::new(side_m * east, side_m * north);
    plan.runs.push(Run {
        id: "run".to_owned(),
        outline: vec![corner(0.0, 0.0), corner(1.0, 0.0), corner(1.0, 1.0), corner(0.0, 1.0)],
        nets: Some(vec!["long".to_owned(); nets]),
        start_m: Some(0.0),
        feed_at: Some(corner(0.0, 0.0)),
        ..Run::default()
    });
    plan
}

fn of(plan: &Plan) -> Choice {
    choice(plan, "run").unwrap()
}

fn unit(id: &str, stored_j: f64, times: f64) -> Energizer {
    // So many of the assumed one side by side: the same no-load figure, the resistance by the inverse.
    let loaded_kv = 7.0 * 500.0 / (500.0 + 200.0 / times);
    Energizer {
        id: id.to_owned(),
        stored_j: Some(stored_j),
        no_load_kv: Some(7.0),
        kv_at_500_ohm: Some(loaded_kv),
        output_j_at_500_ohm: Some(0.98 * stored_j * 500.0 / (500.0 + 200.0 / times)),
        ..Energizer::assumed()
    }
}

#[test]
fn a_run_that_is_such_a_ring_has_the_same_weakest_post() {
    for nets in [1, 2, 5, 10] {
        let plan = square(nets);
        let weakest = workup(&plan, Depth::Quick).runs[0].volts.clone().unwrap().weakest.unwrap();
        let found = of(&plan).units[0].weakest_kv[nets - 1];
        let same = |one: f64, other: f64| assert!((one - other).abs() < 1e-3 * other, "{nets} nets: {one} and {other}");
        same(found.likely, weakest.peak_kv);
        same(found.clean, weakest.high_kv);
        same(found.overgrown, weakest.low_kv);
    }
}

#[test]
fn more_nets_never_help_and_more_energy_never_harms() {
    let mut plan = square(3);
    plan.store.energizers = vec![unit("half", 0.5, 0.5), unit("one", 1.0, 1.0), unit("four", 4.0, 4.0)];
    let choice = of(&plan);
    let grasses: [fn(&ByGrass<f64>) -> f64; 3] = [|kv| kv.clean, |kv| kv.likely, |kv| kv.overgrown];
    for grass in grasses {
        for unit in &choice.units {
            assert_eq!(unit.weakest_kv.len(), MOST_NETS);
            assert!(unit.weakest_kv.windows(2).all(|pair| grass(&pair[1]) <= grass(&pair[0])), "{}", unit.id);
        }
        for pair in choice.units.windows(2) {
            let rows = pair[0].weakest_kv.iter().zip(&pair[1].weakest_kv);
            assert!(rows.clone().all(|(less, more)| grass(less) < grass(more)), "{}", pair[1].id);
        }
    }
    for kv in choice.units.iter().flat_map(|unit| &unit.weakest_kv) {
        assert!(kv.overgrown < kv.likely && kv.likely < kv.clean && kv.clean <= 7.0);
    }
}

#[test]
fn the_least_stored_energy_holds_and_a_little_less_does_not() {
    for target_kv in [3.0, 4.0, 5.5] {
        let mut plan = square(3);
        plan.target_kv = Some(target_kv);
        let least = of(&plan).least_stored_j;
        let mut looked_at = 0;
        let grasses: [fn(&ByGrass<f64>) -> f64; 2] = [|kv| kv.likely, |kv| kv.clean];
        for (row, grass) in [&least.likely, &least.clean].into_iter().zip(grasses) {
            assert!(row.windows(2).all(|pair| pair[1].is_none() || pair[0].unwrap() <= pair[1].unwrap()));
            for (nets, found) in row.iter().enumerate().step_by(3) {
                // At the very least that is looked at, less was not asked.
                let Some(found_j) = found.filter(|&found_j| found_j > 0.06) else { continue };
                plan.store.energizers =
                    vec![unit("it", found_j, found_j), unit("less", 0.98 * found_j, 0.98 * found_j)];
                let both = of(&plan);
                assert!(grass(&both.units[0].weakest_kv[nets]) >= target_kv - 1e-9, "{found_j} J on {}", nets + 1);
                assert!(grass(&both.units[1].weakest_kv[nets]) < target_kv, "{found_j} J on {}", nets + 1);
                looked_at += 1;
            }
        }
        assert!(looked_at >= 4, "{looked_at}");
    }
}

#[test]
fn a_sheet_that_contradicts_itself_has_no_curve_and_the_others_have_theirs() {
    let mut plan = square(2);
    let mut wrong = unit("wrong", 1.0, 1.0);
    wrong.kv_at_500_ohm = Some(8.0);
    // Facts/electrical.md 2.3, the second worked sheet: it needs an inductance.
    let slow = Energizer {
        id: "slow".to_owned(),
        stored_j: Some(1.0),
        no_load_kv: Some(8.0),
        kv_at_500_ohm: Some(5.0),
        output_j_at_500_ohm: Some(0.7),
        ..Energizer::assumed()
    };
    plan.store.energizers = vec![wrong, slow, unit("right", 1.0, 1.0)];
    let choice = of(&plan);
    assert_eq!(choice.units[0].model, Err(SheetTrouble::LoadedAboveNoLoad));
    assert!(choice.units[0].weakest_kv.is_empty());
    assert_eq!((choice.units[1].model, choice.units[2].model), (Ok(SourceModel::Rlc), Ok(SourceModel::Rc)));
    assert!(choice.units[1].weakest_kv.iter().all(|kv| kv.likely > 0.0 && kv.clean <= 8.0));
}

#[test]
fn what_no_fence_has_gives_nothing() {
    assert!(choice(&square(2), "other").is_none());
    let mut plan = square(2);
    plan.store.nets.clear();
    assert!(choice(&plan, "run").is_none());
    let mut plan = square(2);
    plan.store.nets[0].length_m = 0.0;
    assert!(choice(&plan, "run").is_none());
    let mut plan = square(2);
    plan.runs[0].earth_ohm = Some(f64::NAN);
    assert!(choice(&plan, "run").is_none());
}
