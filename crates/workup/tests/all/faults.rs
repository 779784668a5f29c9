//! Where a fault lands on the netting, and that what is told of it is what the volts were worked out with.

use plan::{Fault, FaultKind, NetKind, Plan, Point, Rest, Run};
use proptest::prelude::*;
use workup::faults::{NoLanding, land};
use workup::{Depth, SampleOf, workup};

/// Three nets of 50 m round a square of that line.
fn square(side_m: f64, nets: usize, closed: bool) -> Plan {
    let outline = [(0.0, 0.0), (side_m, 0.0), (side_m, side_m), (0.0, side_m)].map(Point::from).to_vec();
    let mut plan = Plan::default();
    plan.store.nets = vec![NetKind::new("net", 50.0, 16)];
    plan.store.energizers = vec![plan::Energizer::assumed()];
    let run = Run {
        id: "run".to_owned(),
        outline,
        closed: Some(closed),
        nets: Some(vec!["net".to_owned(); nets]),
        ..Run::default()
    };
    plan.runs = vec![run];
    plan
}

/// The fence without its faults, where it has any.
fn sound(plan: &Plan) -> Option<workup::Sound> {
    workup(plan, Depth::Quick).runs[0].volts.as_ref().unwrap().sound.clone()
}

fn fault(at: Point, kind: FaultKind, ohm: f64) -> Fault {
    Fault { at, kind, ohm: Some(ohm), lines: None, cause: None, rest: Rest::new() }
}

#[test]
fn a_fault_lands_on_the_netting_and_a_bad_join_on_a_join() {
    let plan = square(37.5, 3, true);
    let worked = workup(&plan, Depth::Quick);
    let (run, lay) = (&plan.runs[0], worked.runs[0].lay.as_ref().unwrap());
    let wanted = Point::new(20.0, -3.0);
    let landing = land(run, lay, FaultKind::Short, wanted).unwrap();
    assert!((landing.at.east_m - 20.0).abs() < 1e-9 && landing.at.north_m.abs() < 1e-9);
    assert!((landing.off_m - 3.0).abs() < 1e-9 && landing.behind.is_none());
    let joins = lay.join_places();
    assert_eq!(joins.len(), 3);
    for &(_, join) in &joins {
        let landing = land(run, lay, FaultKind::Join, join).unwrap();
        assert!((landing.at.east_m - join.east_m).hypot(landing.at.north_m - join.north_m) < 1e-6);
        let (one, other) = (landing.net, landing.behind.unwrap());
        assert_eq!((one + 1) % 3, other);
    }
    // Only tied, the gate passes no current and is no join.
    let tied = Run { live_loop: Some(false), ..run.clone() };
    let places: Vec<usize> =
        joins.iter().map(|&(_, join)| land(&tied, lay, FaultKind::Join, join).unwrap().net).collect();
    assert!(places.iter().all(|&net| net < 2), "{places:?}");
}

#[test]
fn where_no_net_lies_nothing_lands() {
    // One net of 50 m on a line of 112.5 m, its chain at the outline's start.
    let mut plan = square(37.5, 1, false);
    plan.runs[0].start_m = Some(0.0);
    let worked = workup(&plan, Depth::Quick);
    let (run, lay) = (&plan.runs[0], worked.runs[0].lay.as_ref().unwrap());
    assert!(lay.short_m > 60.0);
    assert!(land(run, lay, FaultKind::Short, Point::new(10.0, 1.0)).is_ok());
    assert_eq!(land(run, lay, FaultKind::Short, Point::new(0.0, 37.5)), Err(NoLanding::NoNet));
    assert_eq!(land(run, lay, FaultKind::Join, Point::new(10.0, 0.0)), Err(NoLanding::NoJoin));
    assert!(land(run, lay, FaultKind::Short, Point::new(f64::NAN, 0.0)).is_err());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// The sample that the volts hold for a fault is where the fault is said to be; a bad join is a step in volts between the
    /// posts of the very nets that are named.
    #[test]
    fn what_is_told_is_what_was_reckoned(east_m in -5.0..45.0_f64, north_m in -5.0..45.0_f64, start_m in 0.0..150.0_f64, reversed in any::<bool>()) {
        let mut plan = square(37.5, 3, true);
        let at = Point::new(east_m, north_m);
        (plan.runs[0].start_m, plan.runs[0].reversed) = (Some(start_m), Some(reversed));
        plan.runs[0].faults = vec![fault(at, FaultKind::Short, 500.0)];
        let worked = workup(&plan, Depth::Quick);
        let lay = worked.runs[0].lay.as_ref().unwrap();
        let volts = worked.runs[0].volts.as_ref().unwrap();
        let landing = land(&plan.runs[0], lay, FaultKind::Short, at).unwrap();
        let sample = volts.samples.iter().find(|sample| sample.of == SampleOf::Fault(0)).unwrap();
        let apart_m = (sample.along_m - landing.along_m).abs();
        prop_assert!(apart_m.min(lay.line_m - apart_m) < 1e-6, "{} against {}", sample.along_m, landing.along_m);
        let net = &lay.nets[landing.net];
        prop_assert!(net.start_m <= sample.chain_m + 1e-6 && sample.chain_m <= net.end_m + 1e-6);

        plan.runs[0].live_loop = Some(false);
        plan.runs[0].feed_at = lay.place_at(lay.posts[1].along_m);
        plan.runs[0].faults = vec![fault(at, FaultKind::Join, 1e5)];
        let landing = land(&plan.runs[0], lay, FaultKind::Join, at).unwrap();
        let worked = workup(&plan, Depth::Quick);
        let samples = &worked.runs[0].volts.as_ref().unwrap().samples;
        let kv = |net: usize, last: bool| {
            let mut posts = lay.posts.iter().zip(samples).filter(|(post, _)| post.net == net);
            if last { posts.next_back() } else { posts.next() }.unwrap().1.peak_kv
        };
        let behind = landing.behind.unwrap();
        let drop_kv = kv(landing.net, true) - kv(behind, false);
        let other = usize::from(landing.net == 0);
        let other_kv = kv(other, true) - kv(other + 1, false);
        prop_assert!(drop_kv.abs() > 5.0 * other_kv.abs() + 1e-3, "{drop_kv} against {other_kv}");
    }
}

#[test]
fn a_gate_that_is_only_tied_reads_lower_and_a_ring_hides_one_break() {
    let mut plan = square(37.5, 3, true);
    let [clipped, tied] = workup::power::gate_kv(&plan, "run").unwrap();
    assert!(clipped > tied && tied > 0.0);
    plan.runs[0].faults = vec![fault(Point::new(37.5, 20.0), FaultKind::Break, 0.0)];
    let [ring, open] = workup::power::gate_kv(&plan, "run").unwrap();
    assert!(ring > 0.8 * clipped, "round the other way every post still reads: {ring}");
    assert!(open < 0.01 * clipped, "behind the break nothing does: {open}");
    assert!((sound(&plan).unwrap().weakest.peak_kv - clipped).abs() < 1e-9);
    assert!(workup::power::gate_kv(&square(37.5, 1, false), "run").is_none());
}

#[test]
fn the_sound_fence_is_without_faults_and_in_the_grass_as_stated() {
    let mut plan = square(37.5, 3, true);
    plan.runs[0].leakage_zones =
        vec![plan::LeakageZone { from_m: 20.0, to_m: 60.0, s_per_m: 1e-4, rest: plan::Rest::new() }];
    assert!(sound(&plan).is_none(), "grass is no fault");
    let peaks = |plan: &Plan| -> Vec<f64> {
        let worked = workup(plan, Depth::Quick);
        let volts = worked.runs[0].volts.as_ref().unwrap();
        volts.samples.iter().filter(|one| matches!(one.of, workup::SampleOf::Post(_))).map(|one| one.peak_kv).collect()
    };
    let stood = peaks(&plan);
    plan.runs[0].faults = vec![fault(Point::new(37.5, 20.0), FaultKind::Short, 300.0)];
    let sound = sound(&plan).unwrap();
    assert_eq!(sound.posts_kv.len(), stood.len());
    for ((sound, stood), faulty) in sound.posts_kv.iter().zip(&stood).zip(peaks(&plan)) {
        assert!((sound - stood).abs() < 1e-6 * stood && faulty < 0.9 * stood, "{sound}, {stood}, {faulty}");
    }
}

#[test]
fn the_weakest_post_now_and_the_weakest_of_the_sound_fence_are_told_apart() {
    let mut plan = square(37.5, 3, true);
    let volts = |plan: &Plan| workup(plan, Depth::Quick).runs[0].volts.clone().unwrap();
    let stood = volts(&plan);
    assert!(stood.sound.is_none() && stood.weakest_sound_kv().is_none() && stood.weakest_elsewhere().is_none());
    // Round a sound ring the post farthest from the feed is the weakest, with a short the one beside that.
    let far = stood.weakest.unwrap();
    plan.runs[0].faults = vec![fault(Point::new(37.5, 5.0), FaultKind::Short, 50.0)];
    let now = volts(&plan);
    let weakest = now.weakest.unwrap();
    let sound = now.sound.as_ref().unwrap();
    assert_eq!((sound.weakest.post, sound.weakest.branch), (far.post, far.branch));
    assert!((sound.weakest.peak_kv - far.peak_kv).abs() < 1e-9);
    assert!((now.weakest_sound_kv().unwrap() - stood.samples[weakest.post].peak_kv).abs() < 1e-9);
    assert_ne!(weakest.post, far.post);
    assert_eq!(now.weakest_elsewhere(), Some(sound.weakest));
    // With the short beside the farthest post, that is the weakest with it and without.
    plan.runs[0].faults = vec![fault(far.at, FaultKind::Short, 50.0)];
    let now = volts(&plan);
    assert_eq!((now.weakest.unwrap().post, now.weakest_elsewhere()), (far.post, None));
}
