//! Lines of netting that hang on a run's, and netting wired alternately: from a plan's statements to volts.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop")]

use plan::{Branch, Edit, NetKind, Plan, Point, Run, RunStatus};
use workup::{BranchTrouble, Depth, RunWorkup, Trouble, workup};

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
    assert_eq!(lay.weakest(&weakest).unwrap().at, weakest.at);
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
