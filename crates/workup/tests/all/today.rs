//! The ground today multiplies what is stated, each figure as if it had been stated so.

use plan::{NetKind, Plan, Point, Run, Today};
use workup::{Depth, RunWorkup, Workup, workup};

fn plan() -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(2), ..NetKind::new("long", 50.0, 14) });
    plan.ground.soil.undrained_strength_kpa = Some(40.0);
    plan.runs.push(Run {
        id: "run".to_owned(),
        outline: [[0.0, 0.0], [25.0, 0.0], [25.0, 25.0], [0.0, 25.0]].map(|[e, n]| Point::new(e, n)).to_vec(),
        leakage_s_per_m: Some(2e-5),
        leakage_zones: Vec::new(),
        ..Run::default()
    });
    plan
}

fn on(today: Option<Today>) -> Workup {
    let mut plan = plan();
    plan.ground.today = today;
    workup(&plan, Depth::Full)
}

fn run(workup: &Workup) -> &RunWorkup {
    &workup.runs[0]
}

fn near(one: f64, other: f64) {
    assert!((one - other).abs() <= 1e-9 * other.abs().max(1e-9), "{one} and {other}");
}

#[test]
fn damp_is_as_nothing_said() {
    assert_eq!(on(Some(Today::Damp)).runs, on(None).runs);
}

// Source of the factors: common practice, no source (the plan's data file).
#[test]
fn volts_are_those_of_soil_and_grass_stated_so() {
    for (today, ohm_m, s_per_m) in [(Today::Dry, 300.0, 4e-6), (Today::Wet, 50.0, 1e-4), (Today::Frozen, 500.0, 4e-6)] {
        let mut stated = plan();
        stated.ground.soil.resistivity_ohm_m = Some(ohm_m);
        stated.runs[0].leakage_s_per_m = Some(s_per_m);
        let stated = workup(&stated, Depth::Full);
        let (said, as_stated) = (on(Some(today)), run(&stated).volts.clone().unwrap());
        let volts = run(&said).volts.clone().unwrap();
        near(volts.earth_ohm, as_stated.earth_ohm);
        for (one, other) in volts.samples.iter().zip(&as_stated.samples) {
            near(one.peak_kv, other.peak_kv);
            near(one.animal_kv.unwrap(), other.animal_kv.unwrap());
        }
    }
}

#[test]
fn zones_are_wet_too_and_a_measured_earth_stays() {
    let with = |today: Option<Today>, s_per_m: f64| {
        let mut plan = plan();
        plan.ground.today = today;
        plan.runs[0].earth_ohm = Some(40.0);
        plan.runs[0].leakage_s_per_m = Some(s_per_m);
        plan.runs[0].leakage_zones =
            vec![plan::LeakageZone { from_m: 10.0, to_m: 30.0, s_per_m: 2.0 * s_per_m, rest: plan::Rest::new() }];
        let outline = vec![Point::new(25.0, 10.0), Point::new(70.0, 10.0)];
        let rest = plan::Rest::new();
        plan.runs[0].branches = vec![plan::Branch {
            from_m: 35.0,
            outline,
            nets: vec!["long".to_owned()],
            rest,
            ..plan::Branch::default()
        }];
        plan.store.nets[0].count = Some(3);
        workup(&plan, Depth::Quick).runs[0].volts.clone().unwrap()
    };
    let (wet, stated) = (with(Some(Today::Wet), 1e-5), with(None, 5e-5));
    near(wet.earth_ohm, 40.0);
    near(wet.weakest.unwrap().peak_kv, stated.weakest.unwrap().peak_kv);
    for (one, other) in wet.branches[0].iter().zip(&stated.branches[0]) {
        near(one.peak_kv, other.peak_kv);
    }
}

#[test]
fn holds_minutes_and_frost() {
    let hold = |workup: &Workup| run(workup).lay.as_ref().unwrap().corners[0].hold_n;
    let (damp, wet, frozen) = (on(None), on(Some(Today::Wet)), on(Some(Today::Frozen)));
    near(hold(&wet), 0.5 * hold(&damp));
    // Wet for the hold alone is the same hold; both together do not halve it twice.
    for today in [None, Some(Today::Wet)] {
        let mut stated = plan();
        stated.ground.today = today;
        stated.ground.soil.wet = Some(true);
        near(hold(&workup(&stated, Depth::Quick)), hold(&wet));
    }
    let soil = |workup: &Workup| workup.soil.clone().unwrap();
    assert!(!soil(&damp).refuses && !soil(&wet).refuses && soil(&frozen).refuses);
    let corners = &run(&frozen).lay.as_ref().unwrap().corners;
    assert!(corners.iter().all(|corner| corner.hold_n == 0.0 && corner.needs_brace()), "no spike goes in");
    for (today, factor) in [(&wet, 1.3), (&frozen, 2.0)] {
        near(run(today).lay.as_ref().unwrap().set_up_minutes, factor * run(&damp).lay.as_ref().unwrap().set_up_minutes);
        let minutes = |workup: &Workup| run(workup).taking_down.as_ref().unwrap().minutes_low;
        near(minutes(today), factor * minutes(&damp));
    }
}
