//! Which coops a run has, and whose birds are its.

use plan::{Coop, CoopKind, Flock, Plan, Point, Run, RunStatus};

fn run(id: &str, west_m: f64) -> Run {
    let outline = [(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)];
    Run {
        id: id.to_owned(),
        outline: outline.map(|(east, north)| Point::new(west_m + east, north)).to_vec(),
        ..Run::default()
    }
}

fn coop(id: &str, east_m: f64, birds: u32) -> Coop {
    Coop { birds: Some(birds), ..Coop::new(id, Point::new(east_m, 10.0)) }
}

/// Two runs side by side, two coops in the first and one in the second.
fn farm() -> Plan {
    Plan {
        coop: Some(coop("house", 5.0, 60)),
        other_coops: vec![coop("coop-2", 15.0, 40), coop("ark", 35.0, 7)],
        runs: vec![run("one", 0.0), run("two", 25.0)],
        ..Plan::default()
    }
}

fn ids(plan: &Plan, run: usize) -> Vec<&str> {
    plan.coops_in(&plan.runs[run]).map(|coop| coop.id.as_str()).collect()
}

#[test]
fn every_coop_that_stands_in_a_run_is_one_of_its() {
    let mut plan = farm();
    assert_eq!((ids(&plan, 0), ids(&plan, 1)), (vec!["house", "coop-2"], vec!["ark"]));
    assert!(plan.coops_without_run().is_empty());
    // Its own comes first, wherever it stands.
    plan.runs[0].coop = Some("coop-2".to_owned());
    assert_eq!(ids(&plan, 0), ["coop-2", "house"]);
    plan.runs[0].coop = Some("ark".to_owned());
    assert_eq!((ids(&plan, 0), ids(&plan, 1)), (vec!["ark", "house", "coop-2"], vec!["ark"]));
    // What another run names is that run's, unless that run is a memory.
    plan.runs[0].coop = Some("house".to_owned());
    plan.runs[1].coop = Some("coop-2".to_owned());
    assert_eq!((ids(&plan, 0), ids(&plan, 1)), (vec!["house"], vec!["coop-2", "ark"]));
    plan.runs[1].status = RunStatus::Past;
    assert_eq!(ids(&plan, 0), ["house", "coop-2"]);
}

#[test]
fn a_second_coop_goes_along_with_its_run_and_counts_as_in_it() {
    let mut plan = farm();
    plan.runs[0].coop = Some("house".to_owned());
    let second = plan.other_coops[0].clone();
    assert_eq!(plan.run_round(&second), Some(0));
    assert!(plan.coops_without_run().is_empty(), "it stands in the run that names another");
    plan.other_coops[0].at = Point::new(15.0, 40.0);
    assert_eq!(plan.coops_without_run(), [&plan.other_coops[0]]);
}

#[test]
fn birds_of_all_coops_of_a_run_count_together() {
    let mut plan = farm();
    assert_eq!(plan.flock(&plan.runs[0]), Some(Flock { birds: 100, kind: CoopKind::Layer }));
    plan.other_coops[0].kind = Some(CoopKind::Chick);
    assert_eq!(plan.flock(&plan.runs[0]), Some(Flock { birds: 100, kind: CoopKind::Other }));
    assert!(
        (plan.gap_under_net_m(&plan.runs[0]) - plan::defaults::GAP_UNDER_NET_YOUNG_M).abs() < 1e-12,
        "chicks among them"
    );
    plan.other_coops[0].width_m = Some(4.0);
    let widest = plan.coop_of(&plan.runs[0]).map(|coop| coop.id.as_str());
    assert_eq!(widest, Some("coop-2"), "the coop's gate lets the widest through");
    plan.runs[0].outline.truncate(2);
    assert_eq!(plan.flock(&plan.runs[0]), None);
    let assumed =
        |plan: &Plan| plan::assumed(plan).into_iter().find(|one| one.key == "runs[0].coop").map(|one| one.value);
    assert_eq!(assumed(&farm()), Some(serde_json::json!(["house", "coop-2"])));
    let mut stated = farm();
    stated.runs[0].coop = Some("house".to_owned());
    assert_eq!(assumed(&stated), Some(serde_json::json!("coop-2")));
}
