//! What of the map is hidden or locked, and what things are called: statements of the plan, each an edit.

use drawing::Thing;
use plan::{Deed, Plan, between};
use words::texts::Window as Text;

use super::Editor;
use super::chosen::coop_at;

/// Longest name that is taken, letters.
const LONGEST_NAME: usize = 80;

/// The two switches of a thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Switches {
    /// Whether it is left out of the map.
    pub(crate) hidden: bool,
    /// Whether the hand leaves it where it is.
    pub(crate) locked: bool,
}

/// The whole that has the switches of a thing: of all that belongs to a run its run. Faults and grass on a fence are no
/// part of how it is drawn, and what was found is no thing.
fn whole(thing: Thing) -> Option<Thing> {
    match thing {
        Thing::Fault { .. }
        | Thing::Zone { .. }
        | Thing::ZoneEnd { .. }
        | Thing::Reading { .. }
        | Thing::Finding { .. } => None,
        thing => Some(thing.run().map_or_else(|| thing.whole(), |run| Thing::Run { run })),
    }
}

/// The switches of a thing's whole, hidden and locked; `None` where it has none.
fn stated(plan: &mut Plan, thing: Thing) -> Option<(&mut bool, &mut bool)> {
    let ground = &mut plan.ground;
    match whole(thing)? {
        Thing::Run { run } => plan.runs.get_mut(run).map(|one| (&mut one.hidden, &mut one.locked)),
        Thing::Boundary => Some((&mut ground.boundary_hidden, &mut ground.boundary_locked)),
        Thing::KeepOut { keep_out } => ground.keep_outs.get_mut(keep_out).map(|one| (&mut one.hidden, &mut one.locked)),
        Thing::Hazard { hazard } => ground.hazards.get_mut(hazard).map(|one| (&mut one.hidden, &mut one.locked)),
        Thing::Shade { shade } => ground.shade.get_mut(shade).map(|one| (&mut one.hidden, &mut one.locked)),
        Thing::Damp { damp } => ground.damp.get_mut(damp).map(|one| (&mut one.hidden, &mut one.locked)),
        Thing::Wall { wall } => plan.walls.get_mut(wall).map(|one| (&mut one.hidden, &mut one.locked)),
        Thing::Label { label } => plan.labels.get_mut(label).map(|one| (&mut one.hidden, &mut one.locked)),
        Thing::Coop { coop } => {
            let mut coops = plan.coop.iter_mut().chain(&mut plan.other_coops);
            coops.nth(coop).map(|one| (&mut one.hidden, &mut one.locked))
        }
        Thing::Underlay => plan.underlay.as_mut().map(|one| (&mut one.hidden, &mut one.locked)),
        _ => None,
    }
}

/// The switches of a thing's whole; `None` where it has none.
pub(crate) fn switches(plan: &Plan, thing: Thing) -> Option<Switches> {
    let ground = &plan.ground;
    let (hidden, locked) = match whole(thing)? {
        Thing::Run { run } => plan.runs.get(run).map(|one| (one.hidden, one.locked)),
        Thing::Boundary => Some((ground.boundary_hidden, ground.boundary_locked)),
        Thing::KeepOut { keep_out } => ground.keep_outs.get(keep_out).map(|one| (one.hidden, one.locked)),
        Thing::Hazard { hazard } => ground.hazards.get(hazard).map(|one| (one.hidden, one.locked)),
        Thing::Shade { shade } => ground.shade.get(shade).map(|one| (one.hidden, one.locked)),
        Thing::Damp { damp } => ground.damp.get(damp).map(|one| (one.hidden, one.locked)),
        Thing::Wall { wall } => plan.walls.get(wall).map(|one| (one.hidden, one.locked)),
        Thing::Label { label } => plan.labels.get(label).map(|one| (one.hidden, one.locked)),
        Thing::Coop { coop } => coop_at(plan, coop).map(|one| (one.hidden, one.locked)),
        Thing::Underlay => plan.underlay.as_ref().map(|one| (one.hidden, one.locked)),
        _ => None,
    }?;
    Some(Switches { hidden, locked })
}

/// Whether the map leaves a thing out.
pub(crate) fn is_hidden(plan: &Plan, thing: Thing) -> bool {
    switches(plan, thing).is_some_and(|switches| switches.hidden)
}

/// Whether the hand leaves a thing where it is.
pub(crate) fn is_locked(plan: &Plan, thing: Thing) -> bool {
    switches(plan, thing).is_some_and(|switches| switches.locked)
}

/// Sets a switch of a thing's whole.
fn set(plan: &mut Plan, thing: Thing, hidden: Option<bool>, locked: Option<bool>) {
    if let Some((is_hidden, is_locked)) = stated(plan, thing) {
        *is_hidden = hidden.unwrap_or(*is_hidden);
        *is_locked = locked.unwrap_or(*is_locked);
    }
}

/// The name that a keeper gave a thing, and of words what they say; `None` where it can have none.
pub(crate) fn name_of(plan: &Plan, thing: Thing) -> Option<&str> {
    match thing {
        Thing::Run { run } => plan.runs.get(run).map(|run| run.name.as_str()),
        Thing::KeepOut { keep_out } => plan.ground.keep_outs.get(keep_out).map(|keep_out| keep_out.name.as_str()),
        Thing::Hazard { hazard } => plan.ground.hazards.get(hazard).map(|hazard| hazard.name.as_str()),
        Thing::Wall { wall } => plan.walls.get(wall).map(|wall| wall.name.as_str()),
        Thing::Shade { shade } => plan.ground.shade.get(shade).map(|shade| shade.name.as_str()),
        Thing::Damp { damp } => plan.ground.damp.get(damp).map(|damp| damp.name.as_str()),
        Thing::Label { label } => plan.labels.get(label).map(|label| label.text.as_str()),
        Thing::TapePoint { point } => plan.tape_points.get(point).map(|point| point.name.as_str()),
        _ => None,
    }
}

/// The place of that name in a plan.
fn name_mut(plan: &mut Plan, thing: Thing) -> Option<&mut String> {
    match thing {
        Thing::Run { run } => plan.runs.get_mut(run).map(|run| &mut run.name),
        Thing::KeepOut { keep_out } => plan.ground.keep_outs.get_mut(keep_out).map(|keep_out| &mut keep_out.name),
        Thing::Hazard { hazard } => plan.ground.hazards.get_mut(hazard).map(|hazard| &mut hazard.name),
        Thing::Wall { wall } => plan.walls.get_mut(wall).map(|wall| &mut wall.name),
        Thing::Shade { shade } => plan.ground.shade.get_mut(shade).map(|shade| &mut shade.name),
        Thing::Damp { damp } => plan.ground.damp.get_mut(damp).map(|damp| &mut damp.name),
        Thing::Label { label } => plan.labels.get_mut(label).map(|label| &mut label.text),
        Thing::TapePoint { point } => plan.tape_points.get_mut(point).map(|point| &mut point.name),
        _ => None,
    }
}

impl Editor {
    fn becomes(&mut self, deed: Deed, change: impl FnOnce(&mut Plan)) {
        let mut to = self.plan.clone();
        change(&mut to);
        self.one_step(deed, between(&self.plan, &to));
    }

    pub(super) fn hide(&mut self, things: &[Thing], hidden: bool) {
        self.becomes(Deed::Hide, |plan| things.iter().for_each(|&thing| set(plan, thing, Some(hidden), None)));
    }

    pub(super) fn lock(&mut self, things: &[Thing], locked: bool) {
        self.becomes(Deed::Lock, |plan| things.iter().for_each(|&thing| set(plan, thing, None, Some(locked))));
    }

    /// What is picked and has switches; a sentence where nothing has.
    fn switchable(&mut self) -> Vec<Thing> {
        let mut things = self.chosen();
        things.retain(|&thing| switches(&self.plan, thing).is_some());
        if things.is_empty() {
            self.notice = Some(Text::NothingToHide);
        }
        things
    }

    pub(super) fn hide_picked(&mut self) {
        let things = self.switchable();
        let all = things.iter().all(|&thing| is_hidden(&self.plan, thing));
        self.hide(&things, !all);
    }

    pub(super) fn lock_picked(&mut self) {
        let things = self.switchable();
        let all = things.iter().all(|&thing| is_locked(&self.plan, thing));
        self.lock(&things, !all);
    }

    pub(super) fn show_all(&mut self) {
        self.becomes(Deed::Hide, Plan::show_all);
    }

    pub(super) fn rename(&mut self, thing: Thing, name: String) {
        let name: String = name.trim().chars().take(LONGEST_NAME).collect();
        if let Thing::Coop { coop } = thing {
            return self.rename_coop(coop, &name);
        }
        // Words that say nothing would be nowhere on the map.
        if name.is_empty() && matches!(thing, Thing::Label { .. }) {
            return;
        }
        self.becomes(Deed::Rename, |plan| name_mut(plan, thing).into_iter().for_each(|one| one.clone_from(&name)));
    }
}
