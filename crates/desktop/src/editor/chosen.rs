//! Several things at once: what is picked beside what is picked, and what is done to all of it as one step.
//!
//! `Editor::picked` stays the foremost, whose page is open; the others stand beside it. What is done to all is done to a
//! copy of the plan and becomes the edits that differ, so that a list that holds several of them is stated once.

use std::sync::Arc;

use drawing::Thing;
use plan::{Coop, Deed, Motion, Plan, Point, between};
use words::texts::Window as Text;

use super::hold::{Held, Hold};
use super::{Editor, Page};
use crate::tool::{FEWEST_CORNERS, Tool};

/// What is said about several things, their clipboard, and what of the map is hidden or locked.
#[derive(Clone, Debug)]
pub enum ManyMessage {
    /// Pick something beside what is picked, or let go of it.
    Also(Thing),
    /// Pick what lies wholly between two corners of a rectangle; beside what is picked, or in its place.
    Within(Point, Point, bool),
    /// Pick everything of the kind that the open page is about.
    All,
    /// Whether a drag draws a rectangle to pick by.
    ByRectangle(bool),
    /// Move what is picked by so many panels of its net east and north.
    NudgePanels(f64, f64),
    /// Put what is picked on the clipboard.
    Copy,
    /// The same, and take it out.
    Cut,
    /// Put in what stands on the clipboard: with its middle at a place, or a step beside where it was.
    Paste(String, Option<Point>),
    /// Hide something, or show it.
    Hide(Thing, bool),
    /// Hide what is picked, or show it where all of it is hidden.
    HidePicked,
    /// Show everything that is hidden.
    ShowAll,
    /// Lock something, or unlock it.
    Lock(Thing, bool),
    /// Lock what is picked, or unlock it where all of it is locked.
    LockPicked,
    /// Give something a name.
    Rename(Thing, String),
    /// Open the list of everything on the map, or close it.
    List(bool),
}

/// What is picked beside the foremost, and how more is picked.
#[derive(Clone, Debug, Default)]
pub(super) struct Chosen {
    /// The others, in the order in which they were picked.
    pub(super) others: Vec<Thing>,
    /// Whether a drag draws a rectangle.
    pub(super) by_rectangle: bool,
    /// Whether the list of everything is open.
    pub(super) listing: bool,
    /// What is to go to the clipboard.
    pub(super) copied: Option<String>,
}

/// Several things as they were before they were moved together.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Many {
    things: Vec<Thing>,
    was: Plan,
}

impl Many {
    pub(super) fn new(things: Vec<Thing>, was: Plan) -> Self {
        Self { things, was }
    }

    fn has(&self, thing: Thing) -> bool {
        self.things.contains(&thing)
    }

    /// The plan with all of them where a motion takes them. What belongs to a whole goes with it, once.
    pub(super) fn moved(&self, motion: Motion) -> Plan {
        let (mut plan, was) = (self.was.clone(), &self.was);
        let to = |at: &mut Point| *at = motion.of(*at);
        let corner = |outline: &mut Vec<Point>, vertex: usize| {
            if let Some(at) = outline.get_mut(vertex) {
                to(at);
            }
        };
        for &thing in &self.things {
            // A part of a whole that goes is gone along already.
            if let Some(run) = thing.run()
                && thing != (Thing::Run { run })
                && self.has(Thing::Run { run })
            {
                continue;
            }
            match thing {
                Thing::Run { run } => {
                    let Some(stated) = was.runs.get(run) else { continue };
                    plan.runs[run] = stated.carried(|at| motion.of(at));
                }
                Thing::RunCorner { run, vertex } => {
                    plan.runs.get_mut(run).into_iter().for_each(|run| corner(&mut run.outline, vertex));
                }
                Thing::Boundary => plan.ground.boundary.iter_mut().for_each(to),
                Thing::BoundaryCorner { vertex } if !self.has(Thing::Boundary) => {
                    corner(&mut plan.ground.boundary, vertex);
                }
                Thing::KeepOut { keep_out } => {
                    let stated = plan.ground.keep_outs.get_mut(keep_out);
                    stated.into_iter().flat_map(|stated| &mut stated.outline).for_each(to);
                }
                Thing::KeepOutCorner { keep_out, vertex } if !self.has(Thing::KeepOut { keep_out }) => {
                    let stated = plan.ground.keep_outs.get_mut(keep_out);
                    if let Some(stated) = stated {
                        corner(&mut stated.outline, vertex);
                    }
                }
                Thing::Hazard { hazard } => {
                    let stated = plan.ground.hazards.get_mut(hazard);
                    stated.into_iter().flat_map(|stated| &mut stated.path).for_each(to);
                }
                Thing::HazardCorner { hazard, vertex } if !self.has(Thing::Hazard { hazard }) => {
                    let stated = plan.ground.hazards.get_mut(hazard);
                    if let Some(stated) = stated {
                        corner(&mut stated.path, vertex);
                    }
                }
                Thing::Coop { coop } => {
                    if let Some(coop) = coop_mut(&mut plan, coop) {
                        *coop = coop.moved(motion);
                    }
                }
                Thing::Gateway => plan.ground.gateway.iter_mut().for_each(|gateway| to(&mut gateway.at)),
                Thing::Height { height } => {
                    plan.heights.get_mut(height).into_iter().for_each(|height| to(&mut height.at));
                }
                Thing::Feed { run } => {
                    let Some(run) = plan.runs.get_mut(run) else { continue };
                    run.feed_at = run.feed_at.or(run.outline.first().copied()).map(|at| motion.of(at));
                }
                Thing::EarthStakes { run } => {
                    let Some(run) = plan.runs.get_mut(run) else { continue };
                    run.earth_stakes.at.iter_mut().chain(&mut run.earth_stakes.places).for_each(to);
                }
                Thing::EarthStake { run, stake } => {
                    let Some(run) = plan.runs.get_mut(run) else { continue };
                    corner(&mut run.earth_stakes.places, stake);
                }
                Thing::Fault { run, branch, fault } => {
                    let faults = plan.runs.get_mut(run).and_then(|run| run.faults_on_mut(branch));
                    faults.and_then(|faults| faults.get_mut(fault)).into_iter().for_each(|fault| to(&mut fault.at));
                }
                Thing::BranchCorner { run, branch, vertex } if vertex > 0 => {
                    let branch = plan.runs.get_mut(run).and_then(|run| run.branches.get_mut(branch));
                    if let Some(branch) = branch {
                        corner(&mut branch.outline, vertex);
                    }
                }
                _ => {}
            }
        }
        self.coop_along(&mut plan, motion);
        for (run, stated) in plan.runs.iter_mut().zip(&was.runs) {
            *run = workup::taken_along(was, stated, run);
        }
        plan
    }

    /// The coop goes along with the one run that is round it, as where that run is moved alone.
    fn coop_along(&self, plan: &mut Plan, motion: Motion) {
        let Some(coop) = self.was.coop.as_ref() else { return };
        let mut about = self.was.runs.iter().enumerate().filter(|(_, run)| run.coop.as_ref() == Some(&coop.id));
        if let (Some((run, _)), None) = (about.next(), about.next())
            && self.has(Thing::Run { run })
            && !self.has(Thing::Coop { coop: 0 })
        {
            plan.coop = Some(coop.moved(motion));
        }
    }

    /// The plan without them, and what could not be taken out.
    fn without(&self) -> (Plan, Option<Text>) {
        let (mut plan, mut refused) = (self.was.clone(), None);
        let mut things = self.things.clone();
        // The last of a list first, so that the numbers of the others stay.
        things.sort_unstable_by(|one, other| other.cmp(one));
        for &thing in &things {
            let of_run = thing.run().filter(|&run| thing != (Thing::Run { run }));
            if of_run.is_some_and(|run| self.has(Thing::Run { run })) {
                continue;
            }
            match thing {
                Thing::Boundary => plan.ground.boundary.clear(),
                Thing::BoundaryCorner { vertex } if !self.has(Thing::Boundary) => {
                    out_of(&mut plan.ground.boundary, vertex, FEWEST_CORNERS, Text::FewestCorners, &mut refused);
                }
                Thing::KeepOutCorner { keep_out, vertex } if !self.has(Thing::KeepOut { keep_out }) => {
                    if let Some(stated) = plan.ground.keep_outs.get_mut(keep_out) {
                        out_of(&mut stated.outline, vertex, FEWEST_CORNERS, Text::FewestCorners, &mut refused);
                    }
                }
                Thing::HazardCorner { hazard, vertex } if !self.has(Thing::Hazard { hazard }) => {
                    if let Some(stated) = plan.ground.hazards.get_mut(hazard) {
                        out_of(&mut stated.path, vertex, 2, Text::FewestOfLine, &mut refused);
                    }
                }
                Thing::Gateway => plan.ground.gateway = None,
                Thing::RunCorner { run, vertex } => {
                    if let Some(run) = plan.runs.get_mut(run) {
                        out_of(&mut run.outline, vertex, FEWEST_CORNERS, Text::FewestCorners, &mut refused);
                    }
                }
                _ => out_of_run(&mut plan, thing),
            }
        }
        let gone = |thing: Thing| self.has(thing);
        keep(&mut plan.ground.keep_outs, |keep_out| !gone(Thing::KeepOut { keep_out }));
        keep(&mut plan.ground.hazards, |hazard| !gone(Thing::Hazard { hazard }));
        keep(&mut plan.heights, |height| !gone(Thing::Height { height }));
        keep(&mut plan.runs, |run| !gone(Thing::Run { run }));
        let runs: Vec<&str> = plan.runs.iter().map(|run| run.id.as_str()).collect();
        plan.readings.retain(|reading| runs.contains(&reading.run.as_str()));
        let in_use = |plan: &Plan, coop: &Coop| plan.runs.iter().any(|run| run.coop.as_ref() == Some(&coop.id));
        for &thing in &things {
            let Thing::Coop { coop: index } = thing else { continue };
            if coop_mut(&mut plan, index).cloned().is_some_and(|coop| in_use(&plan, &coop)) {
                refused = Some(Text::CoopInUse);
            } else {
                coop_out(&mut plan, index);
            }
        }
        (plan, refused)
    }

    /// All places of them.
    fn places(&self) -> Vec<Point> {
        self.things.iter().flat_map(|&thing| places_of(&self.was, thing)).collect()
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
        Thing::BranchCorner { branch, vertex, .. } => {
            let outline = run.branches.get_mut(branch).map(|branch| &mut branch.outline);
            out(outline.filter(|outline| vertex > 0 && outline.len() > 2), vertex);
        }
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

/// The coop of a number: the plan's own first, where it has one.
pub(crate) fn coop_at(plan: &Plan, index: usize) -> Option<&Coop> {
    plan.coop.iter().chain(&plan.other_coops).nth(index)
}

fn coop_mut(plan: &mut Plan, index: usize) -> Option<&mut Coop> {
    plan.coop.iter_mut().chain(&mut plan.other_coops).nth(index)
}

fn coop_out(plan: &mut Plan, index: usize) {
    if plan.coop.is_some() && index == 0 {
        plan.coop = None;
    } else if let Some(place) = index.checked_sub(usize::from(plan.coop.is_some()))
        && place < plan.other_coops.len()
    {
        plan.other_coops.remove(place);
    }
}

/// The places that a thing is made of.
pub(super) fn places_of(plan: &Plan, thing: Thing) -> Vec<Point> {
    let one = |at: Option<Point>| at.into_iter().collect();
    match thing {
        Thing::Run { run } => plan.runs.get(run).map(|run| run.outline.clone()).unwrap_or_default(),
        Thing::RunCorner { run, vertex } => one(plan.runs.get(run).and_then(|run| run.outline.get(vertex)).copied()),
        Thing::Boundary => plan.ground.boundary.clone(),
        Thing::BoundaryCorner { vertex } => one(plan.ground.boundary.get(vertex).copied()),
        Thing::KeepOut { keep_out } => {
            plan.ground.keep_outs.get(keep_out).map(|keep_out| keep_out.outline.clone()).unwrap_or_default()
        }
        Thing::KeepOutCorner { keep_out, vertex } => {
            one(plan.ground.keep_outs.get(keep_out).and_then(|keep_out| keep_out.outline.get(vertex)).copied())
        }
        Thing::Hazard { hazard } => {
            plan.ground.hazards.get(hazard).map(|hazard| hazard.path.clone()).unwrap_or_default()
        }
        Thing::HazardCorner { hazard, vertex } => {
            one(plan.ground.hazards.get(hazard).and_then(|hazard| hazard.path.get(vertex)).copied())
        }
        Thing::Coop { coop } => coop_at(plan, coop).map(|coop| coop.corners().to_vec()).unwrap_or_default(),
        Thing::Gateway => one(plan.ground.gateway.as_ref().map(|gateway| gateway.at)),
        Thing::Height { height } => one(plan.heights.get(height).map(|height| height.at)),
        Thing::Feed { run } => one(plan.runs.get(run).and_then(|run| run.feed_at)),
        Thing::EarthStake { run, stake } => {
            one(plan.runs.get(run).and_then(|run| run.earth_stakes.places.get(stake)).copied())
        }
        Thing::Fault { run, branch, fault } => {
            one(plan.runs.get(run).and_then(|run| run.faults_on(branch).get(fault)).map(|fault| fault.at))
        }
        Thing::BranchCorner { run, branch, vertex } => {
            let branch = plan.runs.get(run).and_then(|run| run.branches.get(branch));
            one(branch.and_then(|branch| branch.outline.get(vertex)).copied())
        }
        _ => Vec::new(),
    }
}

/// What is picked by a click with Shift on a thing: the whole of a side or a post; `None` for what only tells.
fn choosable(thing: Thing) -> Option<Thing> {
    match thing {
        Thing::RunSide { run, .. } | Thing::Post { run, .. } => Some(Thing::Run { run }),
        Thing::BoundarySide { .. } => Some(Thing::Boundary),
        Thing::KeepOutSide { keep_out, .. } => Some(Thing::KeepOut { keep_out }),
        Thing::BranchSide { run, branch, .. } => Some(Thing::Branch { run, branch }),
        Thing::ZoneEnd { run, branch, zone, .. } => Some(Thing::Zone { run, branch, zone }),
        Thing::Reading { .. } | Thing::Finding { .. } | Thing::Energizer { .. } => None,
        thing => Some(thing),
    }
}

/// What slides along a line of its own, each by itself.
fn slides(thing: Thing) -> bool {
    matches!(thing, Thing::Gate { .. } | Thing::Zone { .. } | Thing::Branch { .. })
}

impl Editor {
    /// Everything that is picked, the foremost first.
    pub fn chosen(&self) -> Vec<Thing> {
        self.picked.into_iter().chain(self.chosen.others.iter().copied()).collect()
    }

    /// Whether more than one thing is picked.
    pub fn has_several(&self) -> bool {
        self.picked.is_some() && !self.chosen.others.is_empty()
    }

    /// Whether a thing, or the whole that it is a side of, is one of several that are picked.
    pub fn is_one_of_several(&self, thing: Thing) -> bool {
        let is_chosen = |thing: Thing| self.picked == Some(thing) || self.chosen.others.contains(&thing);
        let of_run = || thing.run().is_some_and(|run| is_chosen(Thing::Run { run }));
        self.has_several() && (is_chosen(thing) || choosable(thing).is_some_and(is_chosen) || of_run())
    }

    /// Whether a drag draws a rectangle to pick by.
    pub fn picks_by_rectangle(&self) -> bool {
        self.chosen.by_rectangle && self.tool == Tool::Pick
    }

    /// Whether the list of everything on the map is open.
    pub fn is_listing(&self) -> bool {
        self.chosen.listing && self.question.is_none()
    }

    /// The page that is about a thing: its own, else the open one.
    pub(crate) fn page_about(&self, thing: Thing) -> Page {
        let own = matches!(thing, Thing::Coop { .. }).then_some(Page::Ground);
        let of_run = || thing.run().map(|_| Page::Run);
        super::page::page_of(thing).or(own).or_else(of_run).unwrap_or(self.page)
    }

    /// What is to go to the clipboard, once.
    pub fn take_copied(&mut self) -> Option<String> {
        self.chosen.copied.take()
    }

    pub(super) fn many_said(&mut self, said: ManyMessage) {
        if self.question.is_some() {
            return;
        }
        match said {
            ManyMessage::Also(thing) => self.pick_also(thing),
            ManyMessage::Within(one, other, also) => self.pick_within(one, other, also),
            ManyMessage::All => self.pick_things(self.all_of_page()),
            ManyMessage::ByRectangle(on) => {
                self.tool = Tool::Pick;
                self.snapped = None;
                self.chosen.by_rectangle = on;
            }
            ManyMessage::NudgePanels(east, north) => {
                if let Some(panel_m) = self.panel_of_picked_m() {
                    self.nudge(east * panel_m, north * panel_m);
                }
            }
            ManyMessage::Copy => self.copy(),
            ManyMessage::Cut => {
                self.copy();
                if self.chosen.copied.is_some() {
                    self.remove();
                }
            }
            ManyMessage::Paste(text, at) => self.paste(&text, at),
            ManyMessage::Hide(thing, hidden) => self.hide(&[thing], hidden),
            ManyMessage::HidePicked => self.hide_picked(),
            ManyMessage::ShowAll => self.show_all(),
            ManyMessage::Lock(thing, locked) => self.lock(&[thing], locked),
            ManyMessage::LockPicked => self.lock_picked(),
            ManyMessage::Rename(thing, name) => self.rename(thing, name),
            ManyMessage::List(open) => {
                self.chosen.listing = open;
                self.folded &= !open;
            }
        }
    }

    fn pick_also(&mut self, thing: Thing) {
        let Some(thing) = choosable(thing) else { return };
        if self.picked == Some(thing) {
            self.picked = self.chosen.others.pop();
        } else if let Some(place) = self.chosen.others.iter().position(|&other| other == thing) {
            self.chosen.others.remove(place);
        } else {
            self.chosen.others.extend(self.picked);
            self.foremost(thing);
        }
    }

    fn foremost(&mut self, thing: Thing) {
        self.picked = Some(thing);
        if let Some(run) = thing.run() {
            self.run = run;
        }
    }

    /// Picks several things in place of what was picked, the last of them foremost.
    pub(super) fn pick_things(&mut self, mut things: Vec<Thing>) {
        let last = things.pop();
        self.picked = None;
        if let Some(last) = last {
            self.foremost(last);
        }
        self.chosen.others = things;
    }

    /// Picks what lies wholly in a rectangle: whole things, or where none does corners.
    fn pick_within(&mut self, one: Point, other: Point, also: bool) {
        self.chosen.by_rectangle = false;
        let (east, north) = (
            [one.east_m.min(other.east_m), one.east_m.max(other.east_m)],
            [one.north_m.min(other.north_m), one.north_m.max(other.north_m)],
        );
        let inside =
            |at: &Point| (east[0]..=east[1]).contains(&at.east_m) && (north[0]..=north[1]).contains(&at.north_m);
        let holds = |thing: &Thing| {
            let places = places_of(&self.plan, *thing);
            !places.is_empty() && places.iter().all(inside)
        };
        let mut found: Vec<Thing> = self.wholes().into_iter().filter(holds).collect();
        if found.is_empty() {
            found = self.corners().into_iter().filter(holds).collect();
        }
        if also {
            let mut all = self.chosen();
            all.reverse();
            found.retain(|thing| !all.contains(thing));
            all.extend(found);
            found = all;
        }
        self.pick_things(found);
    }

    /// Every whole thing that is drawn.
    fn wholes(&self) -> Vec<Thing> {
        let (plan, ground) = (&self.plan, &self.plan.ground);
        let coops = plan.coop.iter().chain(&plan.other_coops).count();
        let paddock = self.page == Page::Ground && !ground.boundary.is_empty();
        let runs = (0..plan.runs.len()).map(|run| Thing::Run { run });
        let all = std::iter::once(Thing::Boundary)
            .filter(|_| paddock)
            .chain((0..ground.keep_outs.len()).map(|keep_out| Thing::KeepOut { keep_out }))
            .chain((0..ground.hazards.len()).map(|hazard| Thing::Hazard { hazard }))
            .chain((0..plan.heights.len()).map(|height| Thing::Height { height }))
            .chain(ground.gateway.iter().map(|_| Thing::Gateway))
            .chain((0..coops).map(|coop| Thing::Coop { coop }))
            .chain(runs);
        all.filter(|&thing| !super::hiding::is_hidden(plan, thing)).collect()
    }

    /// Every corner that is drawn and can be moved.
    fn corners(&self) -> Vec<Thing> {
        let (plan, ground) = (&self.plan, &self.plan.ground);
        let of_runs = plan.runs.iter().enumerate().filter(|(_, stated)| !stated.hidden);
        let of_runs = of_runs
            .flat_map(|(run, stated)| (0..stated.outline.len()).map(move |vertex| Thing::RunCorner { run, vertex }));
        if self.page != Page::Ground {
            return of_runs.collect();
        }
        let paddock = (0..ground.boundary.len()).map(|vertex| Thing::BoundaryCorner { vertex });
        let keep_outs = ground.keep_outs.iter().enumerate().filter(|(_, stated)| !stated.hidden);
        let keep_outs = keep_outs.flat_map(|(keep_out, stated)| {
            (0..stated.outline.len()).map(move |vertex| Thing::KeepOutCorner { keep_out, vertex })
        });
        of_runs.chain(paddock).chain(keep_outs).collect()
    }

    /// Everything that the open page is about: what stands on the ground, what is on the fence, or the runs.
    fn all_of_page(&self) -> Vec<Thing> {
        let wholes = self.wholes().into_iter();
        match self.page {
            Page::Ground => wholes.filter(|thing| thing.run().is_none() && *thing != Thing::Boundary).collect(),
            Page::Power => {
                let run = self.run;
                let Some(stated) = self.plan.runs.get(run) else { return Vec::new() };
                stated
                    .lines()
                    .flat_map(|branch| {
                        let faults =
                            (0..stated.faults_on(branch).len()).map(move |fault| Thing::Fault { run, branch, fault });
                        let zones =
                            (0..stated.zones_on(branch).len()).map(move |zone| Thing::Zone { run, branch, zone });
                        faults.chain(zones)
                    })
                    .chain((0..workup::earth::places(stated).len()).map(|stake| Thing::EarthStake { run, stake }))
                    .collect()
            }
            _ => wholes.filter(|thing| thing.run().is_some()).collect(),
        }
    }

    /// Length of one panel of the net of what is picked, else of the run in hand, else of the store's first, metres.
    fn panel_of_picked_m(&self) -> Option<f64> {
        let run = self.picked.and_then(Thing::run).unwrap_or(self.run);
        let lay = self.workup.runs.get(run).and_then(|worked| worked.lay.as_ref());
        let kind = lay.and_then(|lay| lay.nets.first()).and_then(|net| self.plan.net_kind(&net.kind));
        let kind = kind.or(self.plan.store.nets.first())?;
        let panels = kind.panels.filter(|&panels| panels > 0)?;
        Some(kind.length_m / f64::from(panels)).filter(|panel_m| panel_m.is_finite())
    }

    /// What is picked and not locked; a sentence where something is.
    pub(super) fn unlocked(&mut self) -> Vec<Thing> {
        let mut things = self.chosen();
        let all = things.len();
        things.retain(|&thing| !super::hiding::is_locked(&self.plan, thing));
        if things.len() < all {
            self.notice = Some(if things.is_empty() { Text::IsLocked } else { Text::SomeAreLocked });
        }
        things
    }

    fn many(&mut self) -> Option<Many> {
        let things = self.unlocked();
        (!things.is_empty()).then(|| Many::new(things, self.plan.clone()))
    }

    /// Takes hold of all that is picked.
    pub(super) fn many_to_hold(&mut self, at: Point) -> Option<Held> {
        let many = self.many()?;
        let was = many.places().first().copied().unwrap_or(at);
        self.history.begin_called(Deed::Move);
        Some(Held { what: Hold::Many(Arc::new(many), None), from: at, was, moved: false })
    }

    /// Takes hold of all that is picked by its turning ring.
    pub(super) fn many_to_turn(&mut self, at: Point) -> Option<Held> {
        let many = self.many()?;
        let about = middle(&many.places())?;
        self.history.begin_called(Deed::Turn);
        Some(Held { what: Hold::Many(Arc::new(many), Some(about)), from: at, was: at, moved: false })
    }

    /// Puts all that is held where the hand went.
    pub(super) fn many_dragged(&mut self, many: &Many, motion: Motion) {
        let edits = between(&self.plan, &many.moved(motion));
        if !edits.is_empty() {
            if let Some(held) = &mut self.held {
                held.moved = true;
            }
            self.make_all(edits);
        }
    }

    /// Moves all of these as one step; what slides along a line does so by itself.
    pub(super) fn nudge_many(&mut self, things: Vec<Thing>, east_m: f64, north_m: f64) {
        let motion = Motion::Shift { east_m, north_m };
        let many = Many::new(things, self.plan.clone());
        self.history.begin_called(Deed::Move);
        self.make_all(between(&self.plan, &many.moved(motion)));
        let alone = |thing: &&Thing| slides(**thing) && thing.run().is_none_or(|run| !many.has(Thing::Run { run }));
        for &thing in many.things.iter().filter(alone) {
            let (_, edits) = self.nudged(thing, east_m, north_m);
            self.make_all(edits);
        }
        self.history.end();
    }

    /// Turns all of these about their middle.
    pub(super) fn turn_many(&mut self, things: Vec<Thing>, clockwise_deg: f64) {
        let many = Many::new(things, self.plan.clone());
        let Some(about) = middle(&many.places()) else { return };
        let motion = Motion::Turn { about, clockwise_rad: clockwise_deg.to_radians() };
        self.one_step(Deed::Turn, between(&self.plan, &many.moved(motion)));
    }

    /// Takes all of these out.
    pub(super) fn remove_many(&mut self, things: Vec<Thing>) {
        let (without, refused) = Many::new(things, self.plan.clone()).without();
        let edits = between(&self.plan, &without);
        // What is left of it has other numbers.
        self.pick(None);
        self.one_step(Deed::Remove, edits);
        self.notice = refused.or(self.notice);
    }

    /// Over which place the turning ring of several things stands.
    pub(super) fn ring_of_several(&self) -> Option<Point> {
        let places: Vec<Point> = self.chosen().into_iter().flat_map(|thing| places_of(&self.plan, thing)).collect();
        let about = middle(&places)?;
        let top_m = places.iter().map(|at| at.north_m).fold(about.north_m, f64::max);
        Some(Point::new(about.east_m, top_m))
    }
}

/// The middle of the box round places; `None` where there are none, or all are one place.
pub(super) fn middle(places: &[Point]) -> Option<Point> {
    let finite = places.iter().filter(|at| at.east_m.is_finite() && at.north_m.is_finite());
    let ends = |of: fn(&Point) -> f64| {
        finite
            .clone()
            .map(of)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), one| (low.min(one), high.max(one)))
    };
    let (east, north) = (ends(|at| at.east_m), ends(|at| at.north_m));
    (east.0 < east.1 || north.0 < north.1)
        .then(|| Point::new(f64::midpoint(east.0, east.1), f64::midpoint(north.0, north.1)))
}
