//! Lines of netting that hang on a run's, and netting wired alternately: from a plan's statements to volts.

use plan::{Branch, Edit, Fault, FaultCause, FaultKind, LeakageZone, NetKind, Plan, Point, Rest, Run, RunStatus};
use workup::{BranchTrouble, Depth, RunWorkup, SampleOf, Trouble, workup};

fn line(points: &[(f64, f64)]) -> Vec<Point> {
    points.iter().map(|&(east_m, north_m)| Point::new(east_m, north_m)).collect()
}

/// Two nets along a straight line of 100 m, and one that hangs on it 30 m from its start.
fn plan() -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(4), ..NetKind::new("long", 50.0, 14) });
    plan.store.nets.push(NetKind { count: Some(1), ..NetKind::new("short", 20.0, 5) });
    plan.runs.push(Run {
        id: "run".into(),
        outline: line(&[(0.0, 0.0), (100.0, 0.0)]),
        closed: Some(false),
        nets: Some(vec!["long".into(), "long".into()]),
        status: RunStatus::Standing,
        branches: vec![Branch {
            from_m: 30.0,
            outline: line(&[(30.0, 0.0), (30.0, 12.0), (40.0, 12.0)]),
            nets: vec!["short".into()],
            ..Branch::default()
        }],
        ..Run::default()
    });
    plan
}

fn worked(plan: &Plan) -> RunWorkup {
    workup(plan, Depth::Full).runs.remove(0)
}

#[test]
fn a_branch_is_laid_counted_and_read() {
    let run = worked(&plan());
    assert!(run.troubles.is_empty(), "{:?}", run.troubles);
    let (lay, volts) = (run.lay.unwrap(), run.volts.unwrap());
    let branch = &lay.branches[0];
    assert_eq!((branch.posts.len(), branch.posts[3].at), (6, Point::new(30.0, 12.0)));
    assert_eq!((lay.nets_needed["long"], lay.nets_needed["short"], lay.joins()), (2, 1, 1));
    assert!((branch.short_m - 2.0).abs() < 1e-9 && branch.spare_m.abs() < 1e-9);
    let peaks: Vec<f64> = volts.branches[0].iter().map(|sample| sample.peak_kv).collect();
    assert_eq!(peaks.len(), 6);
    // It draws from where it hangs, between two posts of the line, and falls on outward.
    let on_line = |along_m: f64| volts.samples.iter().find(|sample| sample.along_m >= along_m).unwrap().peak_kv;
    assert!(on_line(29.0) < peaks[0] && peaks[0] < on_line(26.0 - 1.0) && peaks[0] > peaks[5]);
    assert!(volts.branches[0].iter().all(|sample| sample.animal_kv.is_some_and(|kv| kv > 0.0)));
    // Nothing hangs on a line whose branch is taken away, and it holds more.
    let mut bare = plan();
    bare.runs[0].branches.clear();
    let bare = worked(&bare).volts.unwrap();
    assert!(bare.feed_kv > volts.feed_kv && bare.branches.is_empty());
}

#[test]
fn the_weakest_post_may_stand_on_a_branch() {
    let mut plan = plan();
    plan.store.nets[1].line_resistance_ohm_per_m = Some(2000.0);
    plan.runs[0].leakage_s_per_m = Some(1e-4);
    plan.runs[0].branches[0].nets = vec!["short".into(), "long".into()];
    plan.runs[0].branches[0].outline = line(&[(30.0, 0.0), (30.0, 70.0)]);
    let run = worked(&plan);
    let (lay, volts) = (run.lay.unwrap(), run.volts.unwrap());
    let weakest = volts.weakest.unwrap();
    assert_eq!((weakest.branch, weakest.post), (Some(0), lay.branches[0].posts.len() - 1));
    assert_eq!(lay.post(weakest.post, weakest.branch).unwrap().at, weakest.at);
    assert!((weakest.along_m - 30.0).abs() < 1e-9 && weakest.low_kv < weakest.high_kv);
    assert_eq!(volts.weakest_sample().unwrap().peak_kv, weakest.peak_kv);
}

#[test]
fn what_a_branch_lacks_is_said() {
    let troubles = |change: &dyn Fn(&mut Branch)| {
        let mut plan = plan();
        change(&mut plan.runs[0].branches[0]);
        let run = worked(&plan);
        assert!(run.volts.is_some(), "the line has its volts all the same");
        run.troubles
    };
    let fault = |fault| vec![Trouble::Branch { branch: 0, fault }];
    assert_eq!(troubles(&|branch| branch.nets.clear()), fault(BranchTrouble::NoNets));
    assert_eq!(troubles(&|branch| branch.outline.truncate(1)), fault(BranchTrouble::NoLine));
    let off = troubles(&|branch| branch.from_m = 35.0);
    assert_eq!(off, fault(BranchTrouble::OffLine { off_m: 5.0, at: Point::new(30.0, 0.0) }));
    assert!(matches!(
        troubles(&|branch| branch.from_m = -10.0)[..],
        [Trouble::Branch { fault: BranchTrouble::Beyond { from_m: -10.0, .. }, .. }]
    ));
}

#[test]
fn a_branch_goes_through_edits_and_the_file() {
    let mut plan = plan();
    let was = plan.clone();
    let run = Run { branches: Vec::new(), ..plan.runs[0].clone() };
    let inverse = plan.apply(Edit::SetRun { run: Box::new(run) }).unwrap();
    assert!(plan.runs[0].branches.is_empty());
    plan.apply(inverse).unwrap();
    assert_eq!(plan, was);
    let read = plan::read(&plan::write(&plan)).unwrap().plan;
    assert_eq!(read.runs[0].branches, was.runs[0].branches);
}

#[test]
fn a_net_wired_alternately_keeps_its_shock_in_dry_ground() {
    let mut plan = plan();
    plan.ground.soil.resistivity_ohm_m = Some(3000.0);
    plan.runs[0].leakage_s_per_m = Some(2e-7);
    let before = worked(&plan).volts.unwrap();
    for net in &mut plan.store.nets {
        let heights_m = net.live_line_heights_m().to_vec();
        let every_second = |first: usize| heights_m.iter().copied().skip(first).step_by(2).collect();
        net.live_line_heights_m = Some(every_second(0));
        net.earthed_line_heights_m = Some(every_second(1));
    }
    let run = worked(&plan);
    assert!(run.troubles.is_empty(), "{:?}", run.troubles);
    let after = run.volts.unwrap();
    let animal = |volts: &workup::Volts| volts.samples[10].animal_kv.unwrap();
    assert!(animal(&before) < 0.5 && animal(&after) > 2.0, "{} and {}", animal(&before), animal(&after));
    assert!(after.branches[0].iter().all(|sample| sample.animal_kv.unwrap() > 2.0));
    // On the line alone: the branch's earthed lines then hang on none.
    plan.runs[0].nets = Some(vec!["long".into(), "long".into()]);
    plan.store.nets[0].earthed_line_heights_m = None;
    let floating = worked(&plan).volts.unwrap();
    let last = floating.branches[0].last().unwrap();
    assert!(
        last.animal_kv.unwrap().is_finite() && last.animal_j.unwrap() < 0.1 * after.branches[0][5].animal_j.unwrap()
    );
}

/// A line of two nets end to end, and the same with the second net as a branch at its end, with what is said of each.
fn as_line_and_as_branch(change: impl Fn(&mut Run, Option<usize>, f64)) -> [Plan; 2] {
    let mut whole = plan();
    whole.store.energizers = vec![plan::Energizer::assumed()];
    let run = &mut whole.runs[0];
    run.branches.clear();
    (run.feed_at, run.join_ohm) = (Some(Point::new(0.0, 0.0)), None);
    let mut parted = whole.clone();
    let run = &mut parted.runs[0];
    run.outline = line(&[(0.0, 0.0), (50.0, 0.0)]);
    run.nets = Some(vec!["long".into()]);
    let outline = line(&[(50.0, 0.0), (100.0, 0.0)]);
    run.branches = vec![Branch { from_m: 50.0, outline, nets: vec!["long".into()], ..Branch::default() }];
    change(&mut whole.runs[0], None, 50.0);
    change(&mut parted.runs[0], Some(0), 0.0);
    [whole, parted]
}

/// Peaks at the posts of the second net, then at the faults, kilovolts.
fn of_second_net(plan: &Plan) -> Vec<f64> {
    let run = worked(plan);
    assert!(run.troubles.is_empty(), "{:?}", run.troubles);
    let (lay, volts) = (run.lay.unwrap(), run.volts.unwrap());
    if let Some(branch) = volts.branches.first() {
        return branch.iter().map(|sample| sample.peak_kv).collect();
    }
    let posts = lay.posts.iter().zip(&volts.samples).filter(|(post, _)| post.net == 1);
    let faults = volts.samples.iter().filter(|sample| matches!(sample.of, SampleOf::Fault(_)));
    posts.map(|(_, sample)| sample).chain(faults).map(|sample| sample.peak_kv).collect()
}

fn fault(east_m: f64, kind: FaultKind, ohm: f64, lines: u32) -> Fault {
    let at = Point::new(east_m, 0.4);
    Fault { at, kind, ohm: Some(ohm), lines: Some(lines), cause: None, rest: Rest::new() }
}

type Change = dyn Fn(&mut Run, Option<usize>, f64);

#[test]
fn grass_and_faults_act_on_a_branch_as_they_do_on_a_line() {
    let zone = |run: &mut Run, on, from_m: f64, to_m: f64, s_per_m| {
        run.zones_on_mut(on).unwrap().push(LeakageZone { from_m, to_m, s_per_m, rest: Rest::new() });
    };
    let put = |run: &mut Run, on, one: Fault| run.faults_on_mut(on).unwrap().push(one);
    let grass = move |run: &mut Run, on, start_m: f64| {
        zone(run, on, start_m + 5.0, start_m + 31.0, 1e-4);
        zone(run, on, start_m + 20.0, start_m + 41.0, 2e-7);
    };
    let short = move |run: &mut Run, on, _| put(run, on, fault(72.5, FaultKind::Short, 400.0, 1));
    let cut = move |run: &mut Run, on, _| put(run, on, fault(72.5, FaultKind::LineBreak, 0.0, 6));
    let all = move |run: &mut Run, on, _| put(run, on, fault(72.5, FaultKind::LineBreak, 0.0, 40));
    let dead = move |run: &mut Run, on, _| put(run, on, fault(72.5, FaultKind::Break, 0.0, 1));
    let changes: [(&str, &Change); 5] =
        [("grass", &grass), ("short", &short), ("cut lines", &cut), ("all lines cut", &all), ("dead net", &dead)];
    let sound = of_second_net(&as_line_and_as_branch(|_, _, _| {})[1]);
    for (name, change) in changes {
        let [whole, parted] = as_line_and_as_branch(change);
        let (on_line, on_branch) = (of_second_net(&whole), of_second_net(&parted));
        // Fifteen posts, and what is there where the fault is.
        let count = 15 + usize::from(name != "grass");
        assert_eq!((on_line.len(), on_branch.len()), (count, count), "{name}");
        for (post, (one, other)) in on_line.iter().zip(&on_branch).enumerate() {
            assert!((one - other).abs() <= 1e-6 * one.max(1.0), "{name}, post {post}: {one} and {other}");
        }
        assert!(on_branch[14] < sound[14] - 0.05, "{name} changes nothing: {} and {}", on_branch[14], sound[14]);
        assert!(name != "dead net" || on_branch[14].abs() < 1e-9, "nothing comes behind a break");
    }
}

#[test]
fn a_branch_that_is_drawn_on_a_slope_hangs_by_metres_of_ground_and_takes_the_nets_that_reach() {
    let mut plan = plan();
    plan.runs[0].branches.clear();
    let rising = |east_m: f64, north_m: f64, up_m: f64| plan::SpotHeight {
        at: Point::new(east_m, north_m),
        up_m,
        rest: Rest::new(),
    };
    // Three up on four along, eastward and nowhere else.
    plan.heights = vec![
        rising(-50.0, -90.0, 0.0),
        rising(-50.0, 90.0, 0.0),
        rising(150.0, -90.0, 150.0),
        rising(150.0, 90.0, 150.0),
    ];
    let drawn = line(&[(40.0, 0.4), (40.0, 20.0), (72.0, 20.0)]);
    let (branch, off_m) = workup::hang(&plan, &plan.runs[0], &drawn).unwrap();
    assert!((branch.from_m - 50.0).abs() < 1e-9 && (off_m - 0.4).abs() < 1e-9, "{branch:?}");
    // 20 m level and 32 m that climb: 60 m of ground, two nets where the map shows 52 m.
    assert_eq!(branch.nets.len(), 2);
    plan.runs[0].branches = vec![branch];
    let run = worked(&plan);
    let laid = &run.lay.unwrap().branches[0];
    assert!(
        (laid.line_m - 60.0).abs() < 1e-9 && (laid.spare_m - 40.0).abs() < 1e-9,
        "{} {}",
        laid.line_m,
        laid.spare_m
    );
    let kilovolts = &run.volts.unwrap().branches[0];
    let end = kilovolts.last().unwrap();
    assert!((end.along_m - laid.posts.last().unwrap().along_m).abs() < 1e-9 && end.along_m > 56.0, "{}", end.along_m);
}

#[test]
fn a_bad_join_of_a_branch_lies_at_its_nearest_join() {
    let mut plan = plan();
    let branch = &mut plan.runs[0].branches[0];
    branch.nets = vec!["short".into(), "long".into()];
    branch.outline = line(&[(30.0, 0.0), (30.0, 70.0)]);
    let sound = worked(&plan).volts.unwrap();
    plan.runs[0].leakage_s_per_m = Some(1e-4);
    let at = Point::new(30.0, 60.0);
    let bad = Fault { at, ..fault(0.0, FaultKind::Join, 5_000.0, 1) };
    plan.runs[0].branches[0].faults = vec![bad];
    let run = worked(&plan);
    let (lay, volts) = (run.lay.unwrap(), run.volts.unwrap());
    let (alone, laid) = (plan.runs[0].branches[0].alone(&plan.runs[0]), lay.branches[0].alone());
    let landing = workup::faults::land(&alone, &laid, FaultKind::Join, at).unwrap();
    assert!((landing.along_m - 20.0).abs() < 1e-9 && (landing.net, landing.behind) == (0, Some(1)));
    // The posts of the short net, and those behind the join.
    let kv = &volts.branches[0];
    assert!(kv[5].peak_kv - kv[6].peak_kv > 0.5, "{} and {}", kv[5].peak_kv, kv[6].peak_kv);
    assert!(sound.branches[0][5].peak_kv - sound.branches[0][6].peak_kv < 1e-6);
}

#[test]
fn what_is_on_a_branch_goes_through_edits_the_file_and_the_sound_fence() {
    let mut plan = plan();
    let branch = &mut plan.runs[0].branches[0];
    branch.leakage_zones = vec![LeakageZone { from_m: 1.0, to_m: 9.0, s_per_m: 1e-4, rest: Rest::new() }];
    let at = Point::new(30.0, 6.0);
    branch.faults = vec![Fault { at, cause: Some(FaultCause::Peg), ..fault(0.0, FaultKind::Short, 50.0, 1) }];
    assert_eq!(plan::read(&plan::write(&plan)).unwrap().plan.runs[0], plan.runs[0]);
    let moved = plan.runs[0].carried(|at| Point::new(at.east_m + 5.0, at.north_m));
    assert_eq!(moved.branches[0].faults[0].at, Point::new(35.0, 6.0));
    let sound = plan.runs[0].sound();
    assert!(plan.runs[0].has_faults() && !sound.has_faults(), "no fault is left");
    assert!(sound.is_tried() && !sound.untried().is_tried(), "the sound fence stands in the grass as stated");
    let worked = workup::workup(&plan, workup::Depth::Quick);
    let (lay, volts) = (worked.runs[0].lay.as_ref().unwrap(), worked.runs[0].volts.as_ref().unwrap());
    let sound = volts.sound.as_ref().unwrap();
    assert_eq!((sound.posts_kv.len(), sound.branches_kv[0].len()), (lay.posts.len(), lay.branches[0].posts.len()));
    let now = volts.weakest.unwrap();
    assert_eq!(now.branch, Some(0), "behind the peg on the branch the volts are least");
    assert!(sound.post_kv(now.post, now.branch).unwrap() > now.peak_kv + 0.1);
    // The corners of a branch are moved by the edits that move a run's.
    let (shape, was) = (plan::Shape::Branch("run".into(), 0), plan.clone());
    let to = Point::new(33.0, 12.0);
    let inverse = plan.apply(Edit::MoveCorner { shape: shape.clone(), corner: 1, to }).unwrap();
    assert_eq!(plan.runs[0].branches[0].outline[1], to);
    plan.apply(inverse).unwrap();
    let inverse = plan.apply(Edit::InsertCorner { shape: shape.clone(), corner: 2, at: to }).unwrap();
    assert_eq!(plan.outline(&shape).unwrap().len(), 4);
    plan.apply(inverse).unwrap();
    assert_eq!(plan, was);
    let other = plan::Shape::Branch("run".into(), 1);
    assert!(matches!(
        plan.apply(Edit::RemoveCorner { shape: other, corner: 0 }),
        Err(plan::EditError::NoSuchBranch { index: 1 })
    ));
}

#[test]
fn a_bad_figure_on_a_branch_is_named_by_its_place() {
    let mut plan = plan();
    let branch = &mut plan.runs[0].branches[0];
    branch.faults = vec![fault(30.0, FaultKind::Short, -3.0, 1)];
    let run = worked(&plan);
    assert!(run.volts.is_none());
    assert!(matches!(
        &run.troubles[..],
        [Trouble::BadValue { key, .. }] if key == "runs[0].branches[0].faults[0].ohm"
    ));
}
