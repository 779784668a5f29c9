//! Where the energizer stands, what its lead resists, and the dampest place for its earth: closed forms and laws.

use plan::lead::Conductor;
use plan::{Damp, EarthStakes, Energizer, Hazard, HazardKind, KeepOut, NetKind, Plan, Point, Run, RunStatus, Today};
use proptest::prelude::*;
use workup::earth::{Dampest, OFF_FOREIGN_M, OFF_NET_M};
use workup::lead::lead;
use workup::{Depth, RunWorkup, Trouble, workup};

/// A square run of 25 m from two nets, its energizer west of it, with a lead for the earth of five metres.
fn farm() -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(4), ..NetKind::new("long", 50.0, 14) });
    plan.store.energizers = vec![Energizer { id: "one".to_owned(), ..Energizer::assumed() }];
    plan.runs.push(Run {
        id: "run".to_owned(),
        outline: [(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(Point::from).to_vec(),
        nets: Some(vec!["long".to_owned(); 2]),
        feed_at: Some(Point::new(0.0, 10.0)),
        energizer_at: Some(Point::new(-4.0, 10.0)),
        earth_stakes: EarthStakes { lead_m: Some(5.0), ..EarthStakes::default() },
        ..Run::default()
    });
    plan
}

fn damp(west: f64, south: f64, east: f64, north: f64, ohm_m: Option<f64>) -> Damp {
    let outline = [(west, south), (east, south), (east, north), (west, north)].map(Point::from).to_vec();
    Damp { outline, resistivity_ohm_m: ohm_m, ..Damp::default() }
}

fn with(all: &[Damp]) -> Plan {
    let mut plan = farm();
    plan.ground.damp = all.to_vec();
    plan
}

fn worked(plan: &Plan) -> RunWorkup {
    workup(plan, Depth::Quick).runs.remove(0)
}

fn best(plan: &Plan) -> Option<Dampest> {
    worked(plan).dampest
}

fn ohm(plan: &Plan) -> f64 {
    worked(plan).volts.unwrap().earth_ohm
}

fn near(got: Point, want: (f64, f64)) {
    assert!((got.east_m - want.0).hypot(got.north_m - want.1) < 1e-6, "{got:?} for {want:?}");
}

/// One stake of a metre by 12 mm by Dwight's formula (facts 6.1): rho / (2 pi L) (ln(8 L / d) - 1).
fn one_stake_ohm(soil_ohm_m: f64) -> f64 {
    soil_ohm_m / (2.0 * std::f64::consts::PI) * ((8.0 / 0.012_f64).ln() - 1.0)
}

#[test]
fn the_place_is_the_nearest_of_the_damp_rectangle_within_the_circle_of_the_lead() {
    // Straight ahead: the near side, half a metre inside.
    let ahead = best(&with(&[damp(-12.0, 5.0, -6.0, 15.0, Some(40.0))])).unwrap();
    near(ahead.places[0], (-6.5, 10.0));
    assert!((ahead.off_m - 2.5).abs() < 1e-6 && ahead.inside == 1 && !ahead.there && !ahead.known);
    assert!((ahead.ohm - one_stake_ohm(40.0)).abs() < 1e-9, "{}", ahead.ohm);
    assert!((ahead.now_ohm - one_stake_ohm(100.0)).abs() < 1e-9);
    // Aside: its near corner, half a metre inside both sides; 2.5 and 2.5 metres off.
    let aside = with(&[damp(-12.0, 12.0, -6.0, 20.0, Some(40.0))]);
    near(best(&aside).unwrap().places[0], (-6.5, 12.5));
    // With a shorter lead less far inside, down to a tenth of a metre: 2.1 and 2.1 metres off.
    for (lead_m, reaches) in [(2.98, true), (2.96, false)] {
        let mut plan = aside.clone();
        plan.runs[0].earth_stakes.lead_m = Some(lead_m);
        assert_eq!(best(&plan).is_some(), reaches, "{lead_m}");
    }
    // Where nothing is said of it the energizer stands at the feed point and its lead is of five metres.
    let mut assumed = with(&[damp(-12.0, 5.0, -4.0, 15.0, Some(40.0))]);
    (assumed.runs[0].energizer_at, assumed.runs[0].earth_stakes.lead_m) = (None, None);
    near(best(&assumed).unwrap().places[0], (-4.5, 10.0));
    let told: Vec<String> = plan::assumed(&assumed).into_iter().map(|one| one.key).collect();
    for key in ["runs[0].energizer_at", "runs[0].earth_stakes.lead_m"] {
        assert!(told.iter().any(|told| told == key), "{key}");
    }
    assumed.runs[0].feed_at = Some(Point::new(0.0, 22.0));
    assert_eq!(best(&assumed), None);
    // A ditch that is narrower than a metre: a quarter of a metre inside.
    near(best(&with(&[damp(-6.8, 5.0, -6.0, 15.0, None)])).unwrap().places[0], (-6.25, 10.0));
}

#[test]
fn it_keeps_off_nets_earths_of_others_ponds_and_fences_that_are_fed_apart() {
    // Damp on both sides of the net, the energizer a hand's breadth from it.
    let mut plan = with(&[damp(-3.0, 5.0, 3.0, 15.0, Some(40.0))]);
    plan.runs[0].energizer_at = Some(Point::new(-0.1, 10.0));
    near(best(&plan).unwrap().places[0], (-OFF_NET_M - 0.05, 10.0));
    // A pole of the supply on the damp ground.
    let ahead = with(&[damp(-30.0, -20.0, -6.0, 40.0, Some(40.0))]);
    let mut poled = ahead.clone();
    poled.ground.hazards.push(Hazard::new(HazardKind::ForeignEarth, vec![Point::new(-6.5, 11.0)]));
    assert_eq!(best(&poled), None, "ten metres about the pole are all that the lead reaches");
    poled.runs[0].earth_stakes.lead_m = Some(20.0);
    let off = OFF_FOREIGN_M + 0.05;
    let place = best(&poled).unwrap().places[0];
    assert!((place.east_m + 6.5).hypot(place.north_m - 11.0) >= off - 1e-6);
    near(place, (-6.5, 11.0 - off));
    // A pond in the way, as drawn.
    let mut pond = ahead.clone();
    pond.ground.keep_outs.push(KeepOut {
        name: "pond".to_owned(),
        clearance_m: Some(2.0),
        water: true,
        ..KeepOut::new([(-9.0, 8.0), (-5.0, 8.0), (-5.0, 11.0), (-9.0, 11.0)].map(Point::from).to_vec())
    });
    near(best(&pond).unwrap().places[0], (-6.5, 11.05));
    // The stakes of another fence that stands and is fed apart.
    let mut two = ahead;
    let mut other = two.runs[0].clone();
    other.id = "other".to_owned();
    other.outline.iter_mut().for_each(|at| at.east_m += 60.0);
    other.feed_at = Some(Point::new(60.0, 10.0));
    other.energizer = Some("two".to_owned());
    other.earth_stakes.places = vec![Point::new(-6.5, 9.0)];
    two.store.energizers.push(Energizer { id: "two".to_owned(), ..Energizer::assumed() });
    two.runs.push(other);
    near(best(&two).unwrap().places[0], (-6.5, 10.0));
    two.runs.iter_mut().for_each(|run| run.status = RunStatus::Standing);
    assert_eq!(best(&two), None, "ten metres about its stake are all that the lead reaches");
}

#[test]
fn the_dampest_goes_first_and_only_what_is_damper_than_the_ground_counts() {
    let (near_by, far) = (damp(-9.0, 5.0, -6.0, 15.0, Some(60.0)), damp(-12.0, 5.0, -7.0, 15.0, Some(30.0)));
    // Where both lie the soil counts as the drier of the two: what is damp beyond that is out of reach, then in it.
    let mut overlap = with(&[near_by, far]);
    assert_eq!(best(&overlap).unwrap().damp, 0);
    overlap.runs[0].earth_stakes.lead_m = Some(6.0);
    let beyond = best(&overlap).unwrap();
    near(beyond.places[0], (-9.05, 10.0));
    assert!(beyond.damp == 1 && (beyond.ohm - one_stake_ohm(30.0)).abs() < 1e-9);
    let apart = damp(-12.0, 5.0, -7.5, 8.9, Some(30.0));
    let found = best(&with(&[damp(-7.0, 9.0, -5.0, 15.0, Some(60.0)), apart])).unwrap();
    assert_eq!((found.damp, found.ohm < one_stake_ohm(31.0)), (1, true));
    // Unstated it is the ground's after rain, here half of 100; stated drier than the ground it is passed over.
    assert!((best(&with(&[damp(-9.0, 5.0, -6.0, 15.0, None)])).unwrap().ohm - one_stake_ohm(50.0)).abs() < 1e-9);
    assert_eq!(best(&with(&[damp(-9.0, 5.0, -6.0, 15.0, Some(150.0))])), None);
    // The ground today: dry makes both thrice as dry, rain makes the unstated place no wetter than the rest.
    let mut plan = with(&[damp(-9.0, 5.0, -6.0, 15.0, Some(40.0))]);
    plan.ground.today = Some(Today::Dry);
    let dry = best(&plan).unwrap();
    assert!((dry.ohm - one_stake_ohm(120.0)).abs() < 1e-9 && (dry.now_ohm - one_stake_ohm(300.0)).abs() < 1e-9);
    plan.ground.today = Some(Today::Wet);
    let wet = best(&plan).unwrap();
    assert!((wet.ohm - one_stake_ohm(40.0)).abs() < 1e-9 && (wet.now_ohm - one_stake_ohm(50.0)).abs() < 1e-9);
    plan.ground.damp[0].resistivity_ohm_m = None;
    assert_eq!(best(&plan), None, "after rain all ground is as damp");
}

#[test]
fn several_stakes_stand_in_a_row_that_stays_inside_where_it_fits() {
    let row = |count: u32, place: Damp| {
        let mut plan = with(&[place]);
        plan.runs[0].earth_stakes.count = Some(count);
        best(&plan).unwrap()
    };
    let spaced = |found: &Dampest| {
        found.places.windows(2).all(|two| {
            let apart_m = (two[0].east_m - two[1].east_m).hypot(two[0].north_m - two[1].north_m);
            (apart_m - 3.0).abs() < 1e-9
        })
    };
    let wide = row(3, damp(-12.0, 2.0, -6.0, 18.0, Some(40.0)));
    assert!(wide.inside == 3 && spaced(&wide) && wide.places.len() == 3);
    near(wide.places[0], (-6.5, 10.0));
    let law = electrical::stakes_ohm(40.0, 1.0, 0.012, 3, 3.0).unwrap();
    assert!((wide.ohm / law - 1.0).abs() < 1e-9, "{} and {law}", wide.ohm);
    // A ditch of 1.2 m by 7.2 m: from amid its side three find no room, from its end they do.
    let ditch = row(3, damp(-7.2, 6.5, -6.0, 13.7, Some(40.0)));
    assert!(ditch.inside == 3 && spaced(&ditch), "{ditch:?}");
    assert!(ditch.off_m <= 5.0 && ditch.off_m > 2.5);
    // Of four there is room for three: the fourth stands beyond its end, and is said not to be inside.
    let four = row(4, damp(-7.2, 6.5, -6.0, 13.7, Some(40.0)));
    assert!(four.inside < 4 && four.places.len() == 4 && spaced(&four), "{four:?}");
    // What stands outside never makes it worse than those inside alone.
    assert!(four.ohm <= electrical::stakes_ohm(40.0, 1.0, 0.012, four.inside, 3.0).unwrap() * (1.0 + 1e-9));
}

#[test]
fn a_braces_stake_that_stands_there_is_named() {
    let mut plan = with(&[]);
    let corners = worked(&plan).lay.unwrap().corners;
    let (number, corner) = corners.iter().enumerate().find(|(_, corner)| corner.needs_brace()).unwrap();
    let at = corner.stake.at;
    plan.ground.damp = vec![damp(at.east_m - 3.0, at.north_m - 3.0, at.east_m + 3.0, at.north_m + 3.0, None)];
    plan.runs[0].energizer_at = Some(Point::new(at.east_m - 2.0, at.north_m - 1.0));
    let found = best(&plan).unwrap();
    assert_eq!(found.corner, Some(number));
    // Out of the lead's reach, or holding the earth already, it is not.
    let mut short = plan.clone();
    short.runs[0].earth_stakes.lead_m = Some(1.0);
    assert_eq!(best(&short).unwrap().corner, None);
    plan.runs[0].earth_stakes.places = vec![at];
    let found = best(&plan).unwrap();
    assert!(found.there && found.known && !found.is_better());
    assert_eq!(found.corner, None);
}

#[test]
fn stakes_resist_by_the_soil_in_which_they_stand() {
    let places = |places: &[(f64, f64)], all: &[Damp]| {
        let mut plan = with(all);
        plan.runs[0].earth_stakes.places = places.iter().map(|&at| at.into()).collect();
        plan
    };
    let hollow = damp(-12.0, 5.0, -6.0, 15.0, Some(40.0));
    let all = std::slice::from_ref(&hollow);
    assert!((ohm(&places(&[(-8.0, 10.0)], all)) - one_stake_ohm(40.0)).abs() < 1e-9);
    assert!((ohm(&places(&[(-5.0, 10.0)], all)) - one_stake_ohm(100.0)).abs() < 1e-9);
    // Both inside: the matrix in that soil. One outside: as both in the ground's own, or the one inside alone.
    let two = |soil_ohm_m: f64| electrical::stakes_ohm(soil_ohm_m, 1.0, 0.012, 2, 3.0).unwrap();
    assert!((ohm(&places(&[(-8.0, 10.0), (-11.0, 10.0)], all)) / two(40.0) - 1.0).abs() < 1e-9);
    let mixed = ohm(&places(&[(-8.0, 10.0), (-5.0, 10.0)], all));
    assert!((mixed - one_stake_ohm(40.0).min(two(100.0))).abs() < 1e-9, "{mixed}");
    // In two damp places: the drier counts for both.
    let second = damp(-12.0, 15.0, -6.0, 20.0, Some(50.0));
    let both = ohm(&places(&[(-8.0, 13.5), (-8.0, 16.5)], &[hollow.clone(), second]));
    assert!((both / two(50.0).min(one_stake_ohm(40.0)) - 1.0).abs() < 1e-9, "{both}");
    // Of a row the first alone is where it is said to be; without a place all stand in the ground's own.
    let mut row = with(all);
    row.runs[0].earth_stakes = EarthStakes { at: Some(Point::new(-8.0, 10.0)), ..EarthStakes::default() };
    assert!((ohm(&row) - one_stake_ohm(40.0)).abs() < 1e-9);
    row.runs[0].earth_stakes.count = Some(2);
    assert!((ohm(&row) - one_stake_ohm(40.0).min(two(100.0))).abs() < 1e-9);
    row.runs[0].earth_stakes.at = None;
    assert!((ohm(&row) / two(100.0) - 1.0).abs() < 1e-9);
    // The study of one more stake never tells that it makes an earth worse, wherever it would stand.
    let study = workup::power::stakes(&places(&[(-8.0, 10.0), (-11.0, 10.0)], all), "run");
    assert_eq!(study.len(), 3);
    for ground in study {
        assert!(ground.by_count.windows(2).all(|pair| pair[1].ohm <= pair[0].ohm * (1.0 + 1e-12)));
    }
}

#[test]
fn nothing_is_told_where_it_would_mean_nothing() {
    let hollow = damp(-12.0, 5.0, -6.0, 15.0, Some(40.0));
    let with = |change: &dyn Fn(&mut Plan)| {
        let mut plan = with(std::slice::from_ref(&hollow));
        change(&mut plan);
        best(&plan)
    };
    assert!(with(&|_| {}).is_some());
    assert_eq!(with(&|plan| plan.runs[0].earth_ohm = Some(30.0)), None);
    assert_eq!(with(&|plan| plan.runs[0].status = RunStatus::Past), None);
    for bad in [f64::NAN, f64::INFINITY, -1.0, 1e300] {
        // One that reaches for ever reaches the nearest place all the same.
        let far = with(&|plan| plan.runs[0].earth_stakes.lead_m = Some(bad));
        assert_eq!(far.is_some(), bad > 0.0, "{bad}");
        assert_eq!(with(&|plan| plan.runs[0].energizer_at = Some(Point::new(bad, 900.0))), None);
        let soil = with(&|plan| plan.ground.damp[0].resistivity_ohm_m = Some(bad));
        assert_eq!(soil, None, "{bad}");
    }
    // An outline that is none is said and left out, here and where stakes stand.
    let mut crossed = farm();
    let mut bow = hollow.clone();
    bow.outline.swap(1, 2);
    crossed.ground.damp = vec![bow];
    crossed.runs[0].earth_stakes.places = vec![Point::new(-8.0, 10.0)];
    let all = workup(&crossed, Depth::Quick);
    assert!(all.troubles.iter().any(|one| matches!(one, Trouble::Outline { shape: plan::Shape::Damp(0), .. })));
    assert!((all.runs[0].volts.as_ref().unwrap().earth_ohm - one_stake_ohm(100.0)).abs() < 1e-9);
}

#[test]
fn the_lead_is_as_long_as_its_way_unless_it_is_stated() {
    let mut plan = farm();
    let told = |plan: &Plan| lead(plan, &plan.runs[0]);
    let free = told(&plan);
    assert_eq!((free.apart_m, free.length_m), (Some(4.0), Some(4.0)));
    assert!(free.ohm.abs() < 1e-12 && free.short_m().is_none(), "a conductor is not assumed");
    // 34.6 ohms a kilometre of steel, 11.9 ohms a metre of netting.
    plan.runs[0].lead_of = Some(Conductor::Steel);
    assert!((told(&plan).ohm - 4.0 * 0.034_63).abs() < 1e-3);
    plan.runs[0].lead_of = Some(Conductor::NetLine);
    assert!((told(&plan).ohm - 4.0 * 11.9).abs() < 1e-9);
    // What is stated counts: its length, and its ohms before all.
    plan.runs[0].lead_m = Some(10.0);
    assert!((told(&plan).ohm - 119.0).abs() < 1e-9 && told(&plan).short_m().is_none());
    plan.runs[0].lead_m = Some(3.0);
    assert!((told(&plan).short_m().unwrap() - 1.0).abs() < 1e-12);
    plan.runs[0].lead_ohm = Some(2.0);
    assert!((told(&plan).ohm - 2.0).abs() < 1e-12);
    // It is what the volts go by: less at the feed than without.
    let feed_kv = |plan: &Plan| worked(plan).volts.unwrap().feed_kv;
    plan.runs[0].lead_ohm = None;
    plan.runs[0].lead_m = None;
    let with_lead = feed_kv(&plan);
    plan.runs[0].lead_of = None;
    assert!(with_lead < feed_kv(&plan));
    // Where the energizer's place is not stated there is no way to measure.
    plan.runs[0].energizer_at = None;
    plan.runs[0].lead_of = Some(Conductor::Copper);
    let nowhere = told(&plan);
    assert_eq!((nowhere.apart_m, nowhere.length_m), (None, None));
    assert!(nowhere.ohm.abs() < 1e-12);
    // To the place of the line that is nearest to the stated feed, not to where that was drawn.
    plan.runs[0].energizer_at = Some(Point::new(-4.0, 10.0));
    plan.runs[0].feed_at = Some(Point::new(2.0, 10.0));
    assert_eq!(told(&plan).apart_m, Some(4.0));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn what_is_told_keeps_every_limit(
        (west, south, wide, high) in (-14.0..-2.0_f64, -5.0..20.0_f64, 1.0..9.0_f64, 1.0..12.0_f64),
        unit in (-8.0..-0.5_f64, 2.0..22.0_f64),
        lead_m in 1.0..12.0_f64,
        count in 1..4_u32,
    ) {
        let mut plan = with(&[damp(west, south, west + wide, south + high, Some(40.0))]);
        plan.runs[0].energizer_at = Some(unit.into());
        plan.runs[0].earth_stakes = EarthStakes { count: Some(count), lead_m: Some(lead_m), ..EarthStakes::default() };
        if let Some(found) = best(&plan) {
            prop_assert!(found.off_m <= lead_m + 1e-6);
            prop_assert!(found.places.len() <= count as usize && found.inside <= found.places.len());
            let mut put = plan.clone();
            put.runs[0].earth_stakes = EarthStakes { places: found.places.clone(), ..put.runs[0].earth_stakes.clone() };
            let all = workup(&put, Depth::Quick);
            prop_assert!((all.runs[0].volts.as_ref().unwrap().earth_ohm / found.ohm - 1.0).abs() < 1e-9, "told and given alike");
            for stake in workup::earth::stakes(&put, &all, 0) {
                prop_assert!(stake.net_m.unwrap() >= OFF_NET_M);
            }
            for at in &found.places[..found.inside] {
                prop_assert!((workup::earth::at_ohm_m(&put, *at) - 40.0).abs() < 1e-9);
            }
            if found.inside == count as usize {
                prop_assert!(all.runs[0].dampest.as_ref().is_some_and(|again| again.there));
            }
        }
    }
}
