//! Several things taken out of a plan, and what could not be.

use drawing::Thing;
use plan::{Coop, Plan, Point, Shape};
use words::texts::Window as Text;

use super::many::Many;
use super::places::coop_at;
use crate::editor::{corner_of, known_places};
use crate::tool::FEWEST_CORNERS;

impl Many {
    /// The plan without them, and what could not be taken out.
    pub(super) fn without(&self) -> (Plan, Option<Text>) {
        let mut refused = None;
        let mut things = self.things().to_vec();
        // The last of a list first, so that the numbers of the others stay.
        things.sort_unstable_by(|one, other| other.cmp(one));
        let mut plan = self.without_corners(&things, &mut refused);
        for &thing in things.iter().filter(|thing| !self.goes_along(**thing)) {
            match thing {
                Thing::Boundary => plan.ground.boundary.clear(),
                Thing::Gateway => plan.ground.gateway = None,
                Thing::Underlay => plan.underlay = None,
                _ => out_of_run(&mut plan, thing),
            }
        }
        let gone = |thing: Thing| self.has(thing);
        keep(&mut plan.ground.keep_outs, |keep_out| !gone(Thing::KeepOut { keep_out }));
        keep(&mut plan.ground.hazards, |hazard| !gone(Thing::Hazard { hazard }));
        keep(&mut plan.ground.shade, |shade| !gone(Thing::Shade { shade }));
        keep(&mut plan.ground.damp, |damp| !gone(Thing::Damp { damp }));
        keep(&mut plan.walls, |wall| !gone(Thing::Wall { wall }));
        keep(&mut plan.labels, |label| !gone(Thing::Label { label }));
        keep(&mut plan.heights, |height| !gone(Thing::Height { height }));
        if things.iter().any(|thing| matches!(thing, Thing::TapePoint { .. })) {
            plan.tape_points = known_places::lettered(&plan);
            keep(&mut plan.tape_points, |point| !gone(Thing::TapePoint { point }));
        }
        keep(&mut plan.runs, |run| !gone(Thing::Run { run }));
        // The file refuses a reading of a run that is not there.
        let runs: Vec<&str> = plan.runs.iter().map(|run| run.id.as_str()).collect();
        plan.readings.retain(|reading| runs.contains(&reading.run.as_str()));
        for &thing in &things {
            let Thing::Coop { coop } = thing else { continue };
            if coop_at(&plan, coop).is_some_and(|coop| in_use(&plan, coop)) {
                refused = Some(Text::CoopInUse);
            } else {
                coop_out(&mut plan, coop);
            }
        }
        (plan, refused)
    }

    /// The plan without those of the things that are corners: all else is still there, and on a line goes along with it.
    fn without_corners(&self, things: &[Thing], refused: &mut Option<Text>) -> Plan {
        let mut plan = self.was.clone();
        for &thing in things.iter().filter(|thing| !self.goes_along(**thing)) {
            let Some((shape, corner)) = corner_of(&plan, thing) else { continue };
            let (fewest, why) = fewest(&shape);
            plan.outline_mut(&shape).into_iter().for_each(|line| out_of(line, corner, fewest, why, refused));
        }
        for (run, was) in plan.runs.iter_mut().zip(&self.was.runs) {
            *run = workup::taken_along(&self.was, was, run);
        }
        plan
    }
}

/// The fewest corners that a shape keeps, and what is said where that is all it has.
pub(in crate::editor) fn fewest(shape: &Shape) -> (usize, Text) {
    match shape {
        Shape::Branch(..) | Shape::Wall(_) | Shape::Hazard(_) => (2, Text::FewestOfLine),
        _ => (FEWEST_CORNERS, Text::FewestCorners),
    }
}

/// Takes something out of the run that it belongs to.
fn out_of_run(plan: &mut Plan, thing: Thing) {
    fn out<T>(list: Option<&mut Vec<T>>, index: usize) {
        if let Some(list) = list.filter(|list| index < list.len()) {
            list.remove(index);
        }
    }
    let Some(run) = thing.run().and_then(|run| plan.runs.get_mut(run)) else { return };
    match thing {
        Thing::Gate { gate, .. } => out(Some(&mut run.gates), gate),
        Thing::Pin { pin, .. } => out(Some(&mut run.pins), pin),
        Thing::EarthStake { stake, .. } => out(Some(&mut run.earth_stakes.places), stake),
        Thing::Fault { branch, fault, .. } => out(run.faults_on_mut(branch), fault),
        Thing::Zone { branch, zone, .. } => out(run.zones_on_mut(branch), zone),
        Thing::Branch { branch, .. } => out(Some(&mut run.branches), branch),
        Thing::Drop { .. } => run.drop_at = None,
        Thing::Energizer { .. } => run.energizer_at = None,
        _ => {}
    }
}

fn out_of(outline: &mut Vec<Point>, vertex: usize, fewest: usize, why: Text, refused: &mut Option<Text>) {
    if outline.len() > fewest && vertex < outline.len() {
        outline.remove(vertex);
    } else {
        *refused = Some(why);
    }
}

fn keep<T>(list: &mut Vec<T>, stays: impl Fn(usize) -> bool) {
    let mut index = 0;
    list.retain(|_| {
        index += 1;
        stays(index - 1)
    });
}

/// Whether a run names a coop: the file refuses a name that nothing has.
pub(in crate::editor) fn in_use(plan: &Plan, coop: &Coop) -> bool {
    plan.runs.iter().any(|run| run.coop.as_ref() == Some(&coop.id))
}

/// Takes out the coop of a number.
pub(in crate::editor) fn coop_out(plan: &mut Plan, index: usize) {
    if plan.coop.is_some() && index == 0 {
        plan.coop = None;
    } else if let Some(place) = index.checked_sub(usize::from(plan.coop.is_some()))
        && place < plan.other_coops.len()
    {
        plan.other_coops.remove(place);
    }
}
