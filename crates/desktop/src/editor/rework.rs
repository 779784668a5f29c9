//! What follows from a plan, worked out anew only where an edit touched it.
//!
//! A drag changes one run in every frame; of many runs the others stay as they were worked out. What is put together
//! here equals the whole workup: where that is not plain, the whole is worked out.

use plan::{Plan, Run, RunStatus};
use workup::{Depth, Known, Workup};

/// What follows from a plan, quickly, from what followed from an earlier one; and the runs that were worked out anew
/// where nothing else changed.
pub(super) fn quick(
    plan: &Plan,
    was: Option<&Plan>,
    worked: Workup,
    known: &mut Known,
) -> (Workup, Option<Vec<usize>>) {
    if let Some(was) = was
        && let Some(touched) = touched(plan, was)
        && touched.len() < plan.runs.len()
        && worked.runs.iter().map(|run| &run.id).eq(plan.runs.iter().map(|run| &run.id))
    {
        let (worked, touched) = part(plan, was, worked, touched, known);
        return (worked, Some(touched));
    }
    (workup::knowing(plan, Depth::Quick, known), None)
}

/// The places of the runs that differ, with those on one circuit with them; `None` where more than that differs.
fn touched(plan: &Plan, was: &Plan) -> Option<Vec<usize>> {
    // Taken apart by name, so that a new part of a plan is thought of here.
    let Plan {
        title: _,
        origin: _,
        ground,
        store,
        target_kv,
        coop,
        other_coops,
        runs,
        heights,
        // Only drawn.
        labels: _,
        tape_points: _,
        underlay: _,
        walls,
        season,
        readings,
        rest,
    } = plan;
    // A corner seen turns as its run does where its turn is not stated, and pulled as that run's net: then the soil is
    // a matter of the whole plan's runs.
    let seen_by_turn = ground.soil.corners_seen.iter().all(|seen| seen.turn_deg.is_some() && seen.run.is_none());
    let same_but_runs = *ground == was.ground
        && seen_by_turn
        && *store == was.store
        && *target_kv == was.target_kv
        && *coop == was.coop
        && *other_coops == was.other_coops
        && *heights == was.heights
        && *walls == was.walls
        && *season == was.season
        && *readings == was.readings
        && *rest == was.rest
        && runs.len() == was.runs.len();
    let pairs = || plan.runs.iter().zip(&was.runs);
    // Nets that one run takes are missing for another that names none.
    let of_branches = |run: &Run| run.branches.iter().map(|branch| branch.nets.clone()).collect::<Vec<_>>();
    let alone = |run: &Run, was: &Run| {
        run.id == was.id
            && run.status == was.status
            && run.energizer == was.energizer
            && run.nets == was.nets
            && of_branches(run) == of_branches(was)
    };
    // The best place for a stake keeps off the nets and the earths of every run that stands.
    let staked = !ground.damp.is_empty() && runs.iter().filter(|run| run.status == RunStatus::Standing).count() > 1;
    if staked || !same_but_runs || !pairs().all(|(run, was)| run == was || alone(run, was)) {
        return None;
    }
    let changed: Vec<&Run> = pairs().filter(|(run, was)| run != was).map(|(run, _)| run).collect();
    let stands = |run: &Run| run.status == RunStatus::Standing && run.energizer.is_some();
    let with = |run: &Run, other: &Run| stands(run) && stands(other) && run.energizer == other.energizer;
    let touches = |run: &Run| changed.iter().any(|other| run.id == other.id || with(run, other));
    let touched: Vec<usize> = (0..plan.runs.len()).filter(|&index| touches(&plan.runs[index])).collect();
    // What is chosen for a run depends on every run before it.
    touched.iter().all(|&index| plan.runs[index].nets.is_some()).then_some(touched)
}

/// The workup with those runs worked out anew, and all that changed.
fn part(
    plan: &Plan,
    before: &Plan,
    mut worked: Workup,
    mut touched: Vec<usize>,
    known: &mut Known,
) -> (Workup, Vec<usize>) {
    let (mut in_the_way, mut mown) = (false, false);
    for (&index, mut anew) in touched.iter().zip(workup::some_runs(plan, &touched, known)) {
        let was = &worked.runs[index];
        let (run, run_was) = (&plan.runs[index], &before.runs[index]);
        let same_line = same_stands(anew.lay.as_ref(), was.lay.as_ref());
        if same_line && run.gates == run_was.gates && run.coop == run_was.coop {
            // Its name, its volts: the ways to its gates are as they were.
            anew.gates.clone_from(&was.gates);
        } else {
            // Worked out alone, it knew of no other net that its ways go round.
            anew.gates.iter_mut().for_each(workup::gates::GateWork::wait);
        }
        let stands = run.status == RunStatus::Standing;
        in_the_way |= stands && !same_line;
        mown |= stands && anew.strip != was.strip;
        worked.runs[index] = anew;
    }
    worked.standing = workup::standing(plan, &worked.runs);
    let mut others = Vec::new();
    for index in (0..worked.runs.len()).filter(|index| in_the_way && !touched.contains(index)) {
        // A way to a gate leads round the nets of every run that stands.
        let mut gates = worked.runs[index].gates.clone();
        gates.iter_mut().for_each(workup::gates::GateWork::wait);
        if gates != worked.runs[index].gates {
            worked.runs[index].gates = gates;
            others.push(index);
        }
    }
    // What is left to mow of a run that is thought of depends on those that stand.
    let was: Vec<_> = worked.runs.iter().map(|run| run.still_to_mow).collect();
    workup::mown_again(plan, &|index| mown || touched.contains(&index), &mut worked.runs);
    others.extend((0..was.len()).filter(|&index| was[index] != worked.runs[index].still_to_mow));
    // A run may end on the netting of another.
    others.extend(workup::close(plan, &mut worked.runs));
    touched.extend(others);
    touched.sort_unstable();
    touched.dedup();
    (worked, touched)
}

/// Whether nets and guys stand as they stood.
fn same_stands(lay: Option<&workup::Lay>, was: Option<&workup::Lay>) -> bool {
    match (lay, was) {
        (Some(lay), Some(was)) => {
            lay.vertices == was.vertices && lay.posts == was.posts && lay.nets == was.nets && lay.corners == was.corners
        }
        (None, None) => true,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use plan::Point;

    const TWO_RUNS: &[u8] = include_bytes!("../../../../assets/demo/square-or-rectangle.netfold.json");

    /// Moves a corner of the first run in small steps and compares every part with the whole.
    fn drag(mut plan: Plan) -> usize {
        let mut worked = workup::workup(&plan, Depth::Quick);
        let (mut parts, mut rounds, mut drawing) = (0, care::Rounds::default(), drawing::Drawing::default());
        for step in 0..60 {
            let was = plan.clone();
            let corner = &mut plan.runs[0].outline[1];
            *corner = Point::new(corner.east_m + 0.5, corner.north_m - 0.3 * f64::from(step % 7));
            let touched = touched(&plan, &was).unwrap_or_default();
            let known = &mut Known::default();
            parts += usize::from(touched.len() == 1);
            let anew;
            (worked, anew) = quick(&plan, Some(&was), worked, known);
            assert_eq!(worked, workup::workup(&plan, Depth::Quick), "step {step}");
            let words = words::Words::default();
            let findings = rounds.findings(&plan, &worked, words, anew.as_deref());
            assert_eq!(findings, care::findings(&plan, &worked, words), "step {step}");
            let scene = drawing::Scene { plan: &plan, workup: &worked, findings: &findings, words };
            drawing = drawing::map_again(&scene, drawing, anew.as_deref());
            assert_eq!(drawing, drawing::map(&scene), "step {step}");
        }
        parts
    }

    #[test]
    fn the_parts_make_the_whole() {
        let mut plan = plan::read(TWO_RUNS).unwrap().plan;
        let nets = workup::workup(&plan, Depth::Quick).runs[0].lay.as_ref().unwrap().nets.len();
        let kind = plan.store.nets[0].id.clone();
        for run in &mut plan.runs {
            run.nets = Some(vec![kind.clone(); nets]);
        }
        assert!(drag(plan.clone()) > 30, "most steps of a drag touch one run alone");
        // On one circuit the other run's volts follow.
        for run in &mut plan.runs {
            run.status = RunStatus::Standing;
            run.energizer = plan.store.energizers.first().map(|unit| unit.id.clone());
        }
        assert!(plan.runs[0].energizer.is_some());
        drag(plan);
    }

    #[test]
    fn a_gate_elsewhere_leaves_a_drag_to_the_run_that_is_dragged() {
        let mut plan = plan::read(TWO_RUNS).unwrap().plan;
        let kind = plan.store.nets[0].id.clone();
        for run in &mut plan.runs {
            run.nets = Some(vec![kind.clone(); 2]);
            run.gates = vec![plan::Gate::new(plan::GateKind::Foot)];
        }
        assert!(drag(plan.clone()) > 30, "most steps of a drag touch one run alone");
        // A run that stands lies in the way of the other's gate, an option does not.
        for (status, waits) in [(RunStatus::Option, false), (RunStatus::Standing, true)] {
            plan.runs.iter_mut().for_each(|run| run.status = status);
            let mut known = Known::default();
            let full = workup::knowing(&plan, Depth::Full, &mut known);
            let mut moved = plan.clone();
            moved.runs[0].outline[1].east_m += 0.2;
            let (quickly, _) = quick(&moved, Some(&plan), full.clone(), &mut known);
            assert!(quickly.runs[0].gates[0].waits());
            assert_eq!(quickly.runs[1].gates[0].waits(), waits, "{status:?}");
            // A name changes no way.
            let mut named = plan.clone();
            named.runs[0].name = "Another".to_owned();
            let (quickly, _) = quick(&named, Some(&plan), full, &mut known);
            assert!(quickly.runs.iter().all(|run| !run.gates[0].waits()));
        }
    }

    #[test]
    fn nets_that_are_chosen_for_a_run_are_the_whole_plans_matter() {
        let mut plan = plan::read(TWO_RUNS).unwrap().plan;
        plan.runs.iter_mut().for_each(|run| run.nets = None);
        assert_eq!(drag(plan), 0);
    }

    #[test]
    fn what_rests_on_another_run_is_the_whole_plans_matter() {
        let named = || {
            let mut plan = plan::read(TWO_RUNS).unwrap().plan;
            let kind = plan.store.nets[0].id.clone();
            plan.runs.iter_mut().for_each(|run| run.nets = Some(vec![kind.clone(); 2]));
            plan
        };
        // The soil by a corner of a run that was seen.
        let mut plan = named();
        let run = Some(plan.runs[0].id.clone());
        let seen = plan::CornerSeen { run, stood: true, turn_deg: Some(90.0), ..plan::CornerSeen::default() };
        plan.ground.soil.corners_seen = vec![seen];
        assert_eq!(drag(plan), 0);
    }

    #[test]
    fn what_is_left_to_mow_follows_the_run_that_stands_and_the_one_thought_of() {
        for dragged in [RunStatus::Standing, RunStatus::Option] {
            let mut plan = plan::read(TWO_RUNS).unwrap().plan;
            let kind = plan.store.nets[0].id.clone();
            plan.runs.iter_mut().for_each(|run| run.nets = Some(vec![kind.clone(); 2]));
            let other = if dragged == RunStatus::Option { RunStatus::Standing } else { RunStatus::Option };
            (plan.runs[0].status, plan.runs[1].status) = (dragged, other);
            plan.runs[1].outline = plan.runs[0].outline.clone();
            let worked = workup::workup(&plan, Depth::Quick);
            assert!(worked.runs.iter().any(|run| run.still_to_mow.is_some()), "{dragged:?}");
            assert!(drag(plan) > 50, "{dragged:?}");
        }
    }

    /// Makes an edit and compares what follows with the whole; whether a part was worked out.
    fn edited(plan: &Plan, edit: impl Fn(&mut Plan)) -> bool {
        let worked = workup::workup(plan, Depth::Quick);
        let mut now = plan.clone();
        edit(&mut now);
        let (quickly, touched) = quick(&now, Some(plan), worked, &mut Known::default());
        assert_eq!(quickly, workup::workup(&now, Depth::Quick));
        touched.is_some()
    }

    #[test]
    fn what_one_run_takes_from_the_store_is_missing_for_one_that_names_no_nets() {
        let mut plan = plan::read(TWO_RUNS).unwrap().plan;
        let kind = plan.store.nets[0].id.clone();
        plan.store.nets.truncate(1);
        plan.store.nets[0].count = Some(5);
        plan.runs.iter_mut().for_each(|run| run.status = RunStatus::Standing);
        (plan.runs[0].nets, plan.runs[1].nets) = (Some(vec![kind.clone(); 2]), None);
        // A branch on the one takes a roll that the other would have had.
        let at = plan.runs[0].outline[0];
        let outline = vec![at, Point::new(at.east_m - 10.0, at.north_m)];
        let branch = plan::Branch { nets: vec![kind.clone(), kind.clone()], outline, ..plan::Branch::default() };
        assert!(!edited(&plan, |plan| plan.runs[0].branches.push(branch.clone())));
        // On one energizer with a run that is led, it still chooses after a third that stands by itself.
        let mut third = plan.runs[1].clone();
        third.id = "third".to_owned();
        plan.runs.insert(0, third);
        let unit = plan.store.energizers[0].id.clone();
        plan.runs[0].energizer = None;
        plan.runs[1].energizer = Some(unit.clone());
        plan.runs[2].energizer = Some(unit);
        assert!(!edited(&plan, |plan| plan.runs[1].outline[1].east_m += 0.2));
        // Where all name theirs it is the matter of those on one energizer.
        plan.runs.iter_mut().for_each(|run| run.nets = Some(vec![kind.clone()]));
        assert!(edited(&plan, |plan| plan.runs[1].outline[1].east_m += 0.2));
    }

    #[test]
    fn nothing_is_mown_by_a_run_whose_strip_is_gone() {
        let mut plan = plan::read(TWO_RUNS).unwrap().plan;
        let kind = plan.store.nets[0].id.clone();
        plan.runs.iter_mut().for_each(|run| run.nets = Some(vec![kind.clone(); 2]));
        plan.runs[1].outline = plan.runs[0].outline.clone();
        (plan.runs[0].status, plan.runs[1].status) = (RunStatus::Standing, RunStatus::Option);
        assert!(workup::workup(&plan, Depth::Quick).runs[1].still_to_mow.is_some());
        // The run that stands is led over itself.
        assert!(edited(&plan, |plan| plan.runs[0].outline.swap(1, 2)));
    }

    #[test]
    fn a_line_that_crosses_itself_and_more_nets_than_it_had_are_the_matter_of_one_run() {
        let mut plan = plan::read(TWO_RUNS).unwrap().plan;
        let kind = plan.store.nets[0].id.clone();
        plan.runs.iter_mut().for_each(|run| run.nets = Some(vec![kind.clone(); 2]));
        plan.runs.iter_mut().for_each(|run| run.status = RunStatus::Standing);
        // The second run's keys hold its place.
        plan.runs.reverse();
        plan.runs[1].join_ohm = Some(-1.0);
        let (mut troubled, mut needed, mut known) = (0, Vec::new(), Known::default());
        let mut worked = workup::workup(&plan, Depth::Quick);
        for step in 0..40 {
            let was = plan.clone();
            // Over the opposite side, and far out again.
            plan.runs[1].outline[1].east_m += if step < 20 { -4.0 } else { 9.0 };
            let touched = touched(&plan, &was).unwrap();
            (worked, _) = part(&plan, &was, worked, touched, &mut known);
            assert_eq!(worked, workup::workup(&plan, Depth::Quick), "step {step}");
            troubled += usize::from(worked.runs[1].troubles.len() > 1);
            needed.push(worked.standing.clone());
        }
        needed.dedup();
        assert!(troubled > 2 && needed.len() > 2, "{troubled} {}", needed.len());
        let place = |trouble: &workup::Trouble| matches!(trouble, workup::Trouble::BadValue { key, .. } if key.starts_with("runs[1]"));
        assert!(worked.runs[1].troubles.iter().any(place));
    }

    #[test]
    fn another_store_is_the_whole_plans_matter() {
        let was = plan::read(TWO_RUNS).unwrap().plan;
        let mut plan = was.clone();
        plan.store.nets[0].length_m += 1.0;
        let worked = workup::workup(&was, Depth::Quick);
        assert_eq!(touched(&plan, &was), None);
        assert_eq!(quick(&plan, Some(&was), worked, &mut Known::default()).0, workup::workup(&plan, Depth::Quick));
    }
}
