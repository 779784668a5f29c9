//! The clipboard: things as the text of a plan that holds nothing else, and back.
//!
//! The text is a plan file, so that a keeper may paste it into any editor and back; what is pasted is read as any file
//! is. Ids are made free, what is read on a fence stays with that fence, and kinds of nets that this plan's store does
//! not have are left for the tool to choose.

use drawing::Thing;
use plan::{Deed, Motion, Plan, Point, Store, between};
use words::texts::Window as Text;

use super::chosen::{coop_at, middle, places_of};
use super::{Editor, known_places};
use crate::tool::free_run_id;

/// How far off what is pasted is put, metres: one step east and south, so that both are seen.
const BESIDE_M: f64 = 3.0;

/// The wholes that some things are or belong to, each once.
fn wholes(things: &[Thing]) -> Vec<Thing> {
    let whole = |thing: &Thing| thing.run().map_or_else(|| thing.whole(), |run| Thing::Run { run });
    let mut wholes: Vec<Thing> = things.iter().map(whole).collect();
    wholes.sort_unstable();
    wholes.dedup();
    wholes
}

/// A plan of those things alone, with the kinds of nets and energizers that they name.
fn part(plan: &Plan, things: &[Thing]) -> Plan {
    let mut part = Plan::default();
    for thing in wholes(things) {
        match thing {
            Thing::Run { run } => part.runs.extend(plan.runs.get(run).cloned()),
            Thing::KeepOut { keep_out } => part.ground.keep_outs.extend(plan.ground.keep_outs.get(keep_out).cloned()),
            Thing::Hazard { hazard } => part.ground.hazards.extend(plan.ground.hazards.get(hazard).cloned()),
            Thing::Height { height } => part.heights.extend(plan.heights.get(height).cloned()),
            Thing::Wall { wall } => part.walls.extend(plan.walls.get(wall).cloned()),
            Thing::Shade { shade } => part.ground.shade.extend(plan.ground.shade.get(shade).cloned()),
            Thing::Damp { damp } => part.ground.damp.extend(plan.ground.damp.get(damp).cloned()),
            Thing::Label { label } => part.labels.extend(plan.labels.get(label).cloned()),
            Thing::TapePoint { point } => part.tape_points.extend(plan.tape_points.get(point).cloned()),
            Thing::Coop { coop } => part.other_coops.extend(coop_at(plan, coop).cloned()),
            Thing::Boundary => part.ground.boundary.clone_from(&plan.ground.boundary),
            Thing::Gateway => part.ground.gateway.clone_from(&plan.ground.gateway),
            // A picture is no part of the text: only where it lies is known of it, and that from this plan's folder.
            _ => {}
        }
    }
    let coops: Vec<String> = part.other_coops.iter().map(|coop| coop.id.clone()).collect();
    for run in &mut part.runs {
        run.coop = run.coop.take().filter(|coop| coops.contains(coop));
    }
    let named = |id: &str| {
        part.runs.iter().any(|run| {
            let branches = run.branches.iter().flat_map(|branch| &branch.nets);
            let pins = run.pins.iter().filter_map(|pin| pin.net.as_ref());
            run.nets.iter().flatten().chain(branches).chain(pins).any(|net| net == id)
        })
    };
    let feeds = |id: &str| part.runs.iter().any(|run| run.energizer.as_deref() == Some(id));
    part.store = Store {
        nets: plan.store.nets.iter().filter(|net| named(&net.id)).cloned().collect(),
        energizers: plan.store.energizers.iter().filter(|energizer| feeds(&energizer.id)).cloned().collect(),
        ..Store::default()
    };
    part
}

/// Everything that a plan has on the map.
fn all(plan: &Plan) -> Vec<Thing> {
    let runs = (0..plan.runs.len()).map(|run| Thing::Run { run });
    let keep_outs = (0..plan.ground.keep_outs.len()).map(|keep_out| Thing::KeepOut { keep_out });
    let hazards = (0..plan.ground.hazards.len()).map(|hazard| Thing::Hazard { hazard });
    let walls = (0..plan.walls.len()).map(|wall| Thing::Wall { wall });
    let shade = (0..plan.ground.shade.len()).map(|shade| Thing::Shade { shade });
    let damp = (0..plan.ground.damp.len()).map(|damp| Thing::Damp { damp });
    let labels = (0..plan.labels.len()).map(|label| Thing::Label { label });
    let heights = (0..plan.heights.len()).map(|height| Thing::Height { height });
    let points = (0..plan.tape_points.len()).map(|point| Thing::TapePoint { point });
    let coops = (0..plan.coop.iter().chain(&plan.other_coops).count()).map(|coop| Thing::Coop { coop });
    let boundary = (!plan.ground.boundary.is_empty()).then_some(Thing::Boundary);
    let gateway = plan.ground.gateway.as_ref().map(|_| Thing::Gateway);
    let lines = runs.chain(keep_outs).chain(hazards).chain(walls).chain(shade).chain(damp);
    lines.chain(labels).chain(heights).chain(points).chain(coops).chain(boundary).chain(gateway).collect()
}

impl Editor {
    pub(super) fn copy(&mut self) {
        let part = part(&self.plan, &self.chosen());
        if all(&part).is_empty() {
            self.notice = Some(Text::NothingToCopy);
            return;
        }
        self.chosen.copied = String::from_utf8(plan::write(&part)).ok();
    }

    /// Puts in what a text holds.
    pub(super) fn paste(&mut self, text: &str, at: Option<Point>) {
        match plan::read(text.as_bytes()) {
            Ok(opened) => self.put_in(opened.plan, at, Deed::Paste),
            Err(error) => {
                tracing::debug!(%error, "nothing to paste");
                self.notice = Some(Text::NothingToPaste);
            }
        }
    }

    /// A second one of each of these, a step beside.
    pub(super) fn duplicate_many(&mut self, things: &[Thing]) {
        let part = part(&self.plan, things);
        self.put_in(part, None, Deed::Duplicate);
    }

    fn put_in(&mut self, part: Plan, at: Option<Point>, deed: Deed) {
        let things = all(&part);
        let places: Vec<Point> = things.iter().flat_map(|&thing| places_of(&part, thing)).collect();
        let about = middle(&places).or(places.first().copied());
        let motion = match (at, about) {
            (Some(at), Some(about)) => {
                Motion::Shift { east_m: at.east_m - about.east_m, north_m: at.north_m - about.north_m }
            }
            _ => Motion::Shift { east_m: BESIDE_M, north_m: -BESIDE_M },
        };
        let mut to = self.plan.clone();
        let new = added(&mut to, part, motion);
        if new.is_empty() {
            self.notice = Some(Text::NothingToPaste);
            return;
        }
        self.one_step(deed, between(&self.plan, &to));
        self.pick_things(new);
    }
}

/// Adds the things of a part to a plan; what was added. A paddock and a way in go where there is none yet.
fn added(to: &mut Plan, part: Plan, motion: Motion) -> Vec<Thing> {
    let mut new = Vec::new();
    let carry = |at: &mut Point| *at = motion.of(*at);
    let mut coops = Vec::new();
    for coop in part.coop.iter().chain(&part.other_coops) {
        let mut put = coop.moved(motion);
        (put.hidden, put.locked) = (false, false);
        if to.coop(&put.id).is_some() {
            put.id = to.free_coop_id();
        }
        coops.push((coop.id.clone(), put.id.clone()));
        if to.coop.is_none() && to.other_coops.is_empty() {
            to.coop = Some(put);
        } else {
            to.other_coops.push(put);
        }
        new.push(Thing::Coop { coop: to.coop.iter().chain(&to.other_coops).count() - 1 });
    }
    for mut keep_out in part.ground.keep_outs {
        keep_out.outline.iter_mut().for_each(carry);
        (keep_out.hidden, keep_out.locked) = (false, false);
        keep_out.name = to.free_keep_out_name(&keep_out.name);
        new.push(Thing::KeepOut { keep_out: to.ground.keep_outs.len() });
        to.ground.keep_outs.push(keep_out);
    }
    for mut hazard in part.ground.hazards {
        hazard.path.iter_mut().for_each(carry);
        (hazard.hidden, hazard.locked) = (false, false);
        hazard.name = to.free_hazard_name(&hazard.name);
        new.push(Thing::Hazard { hazard: to.ground.hazards.len() });
        to.ground.hazards.push(hazard);
    }
    for mut wall in part.walls {
        wall.path.iter_mut().for_each(carry);
        (wall.hidden, wall.locked) = (false, false);
        wall.name = to.free_wall_name(&wall.name);
        new.push(Thing::Wall { wall: to.walls.len() });
        to.walls.push(wall);
    }
    for mut shade in part.ground.shade {
        shade.outline.iter_mut().for_each(carry);
        (shade.hidden, shade.locked) = (false, false);
        shade.name = to.free_shade_name(&shade.name);
        new.push(Thing::Shade { shade: to.ground.shade.len() });
        to.ground.shade.push(shade);
    }
    for mut damp in part.ground.damp {
        damp.outline.iter_mut().for_each(carry);
        damp.name = to.free_damp_name(&damp.name);
        (damp.hidden, damp.locked) = (false, false);
        new.push(Thing::Damp { damp: to.ground.damp.len() });
        to.ground.damp.push(damp);
    }
    for mut label in part.labels {
        carry(&mut label.at);
        (label.hidden, label.locked) = (false, false);
        new.push(Thing::Label { label: to.labels.len() });
        to.labels.push(label);
    }
    for mut height in part.heights {
        carry(&mut height.at);
        new.push(Thing::Height { height: to.heights.len() });
        to.heights.push(height);
    }
    for mut point in part.tape_points {
        carry(&mut point.at);
        new.push(Thing::TapePoint { point: to.tape_points.len() });
        to.tape_points = known_places::with(to, point);
    }
    if to.ground.boundary.is_empty() && !part.ground.boundary.is_empty() {
        to.ground.boundary = part.ground.boundary.iter().map(|&at| motion.of(at)).collect();
        new.push(Thing::Boundary);
    }
    if let (None, Some(mut gateway)) = (&to.ground.gateway, part.ground.gateway) {
        carry(&mut gateway.at);
        to.ground.gateway = Some(gateway);
        new.push(Thing::Gateway);
    }
    for run in part.runs {
        let mut run = workup::taken_along(to, &run, &run.carried(|at| motion.of(at)));
        run.drop_at.iter_mut().for_each(carry);
        (run.hidden, run.locked) = (false, false);
        let called = care::run_name(&run);
        let free = to.free_run_name(called);
        if free != called {
            run.name = free;
        }
        if to.run(&run.id).is_some() {
            run.id = free_run_id(to);
        }
        run.coop = run.coop.and_then(|was| coops.iter().find(|(id, _)| *id == was).map(|(_, id)| id.clone()));
        let owned = |net: &String| to.net_kind(net).is_some();
        run.nets = run.nets.filter(|nets| nets.iter().all(owned));
        run.pins.retain(|pin| pin.net.as_ref().is_none_or(owned));
        run.branches.iter_mut().for_each(|branch| branch.nets.retain(owned));
        run.energizer = run.energizer.filter(|id| to.store.energizers.iter().any(|one| one.id == *id));
        new.push(Thing::Run { run: to.runs.len() });
        to.runs.push(run);
    }
    new
}
