//! Several things as they were when they were taken hold of: where a motion takes all of them, and what is left of the
//! plan without their lines.
//!
//! What is done to all is done to a copy of the plan, from where things were, so that rounding never adds up and a list
//! that holds several of them is stated once.

use drawing::Thing;
use plan::{Branch, LeakageZone, Motion, Plan, Point, Underlay};

use super::places::{coop_mut, outline_of, places_of};
use crate::editor::corner_of;
use crate::tool::apart_m;

/// So many places of what is in the hand are looked at for what catches them, the nearest to the hand first: what lies
/// far from it is not what the eye is on, and each more costs a part of the frame.
const MOST_CAUGHT: usize = 48;

/// What slides along the line of its own run, as it was.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Slid {
    /// A gate of a run, and the join that it opened.
    Gate(usize, usize, Point),
    /// A stretch of grass of a run or of one of its branches, and where that began.
    Zone((usize, Option<usize>, usize), LeakageZone, Point),
    /// A branch of a run, and where it hung.
    Branch(usize, usize, Branch, Point),
}

impl Slid {
    /// Where it was.
    pub(super) fn began(&self) -> Point {
        match self {
            Self::Gate(.., at) | Self::Zone(.., at) | Self::Branch(.., at) => *at,
        }
    }
}

/// Several things as they were before they were moved together.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::editor) struct Many {
    things: Vec<Thing>,
    pub(super) was: Plan,
    /// Those that slide along a line that does not go along itself.
    pub(super) slid: Vec<Slid>,
    /// The places that may be caught by something.
    pub(super) hands: Vec<Point>,
}

impl Many {
    pub(super) fn new(things: Vec<Thing>, was: Plan) -> Self {
        Self { things, was, slid: Vec::new(), hands: Vec::new() }
    }

    pub(super) fn things(&self) -> &[Thing] {
        &self.things
    }

    pub(super) fn has(&self, thing: Thing) -> bool {
        self.things.contains(&thing)
    }

    /// Whether something goes along with a whole that is one of them. A run's rolls lie where they were put down.
    pub(super) fn goes_along(&self, thing: Thing) -> bool {
        let (whole, apart) = (thing.whole(), matches!(thing, Thing::Run { .. } | Thing::Drop { .. }));
        let run = thing.run().filter(|_| !apart).map(|run| Thing::Run { run });
        (whole != thing && self.has(whole)) || run.is_some_and(|run| self.has(run))
    }

    /// All places of them.
    pub(super) fn places(&self) -> Vec<Point> {
        self.things.iter().flat_map(|&thing| places_of(&self.was, thing)).collect()
    }

    /// Looks for the places that may be caught while a hand drags all by a place. A metal stake goes onto no post, and
    /// neither do an energizer, words and a picture.
    pub(super) fn may_be_caught(&mut self, by: Point) {
        let catches = |thing: &Thing| {
            !matches!(
                thing,
                Thing::EarthStake { .. }
                    | Thing::Energizer { .. }
                    | Thing::Fault { .. }
                    | Thing::Label { .. }
                    | Thing::Underlay
            )
        };
        let of = |&thing: &Thing| match thing {
            Thing::Coop { coop } => super::coop_at(&self.was, coop).map(|coop| coop.at).into_iter().collect(),
            thing => places_of(&self.was, thing),
        };
        let mut hands: Vec<Point> = self.things.iter().filter(|thing| catches(thing)).flat_map(of).collect();
        hands.sort_by(|one, other| apart_m(*one, by).total_cmp(&apart_m(*other, by)));
        hands.truncate(MOST_CAUGHT);
        self.hands = hands;
    }

    /// The runs and the branches whose posts and lines go along, wholly or in part.
    pub(super) fn runs(&self) -> impl Iterator<Item = usize> {
        self.things.iter().filter_map(|thing| match thing.whole() {
            Thing::Run { run } => Some(run),
            _ => None,
        })
    }

    /// The plan without the lines of what is in the hand, each list as long as it was: the rest may catch it.
    pub(super) fn rest(&self) -> Plan {
        let mut rest = self.was.clone();
        for &thing in &self.things {
            match thing.whole() {
                Thing::Run { run } => rest.runs.get_mut(run).into_iter().for_each(|run| {
                    run.outline.clear();
                    run.branches.clear();
                }),
                Thing::Branch { run, branch } => {
                    let branch = rest.runs.get_mut(run).and_then(|run| run.branches.get_mut(branch));
                    if let Some(branch) = branch {
                        branch.outline.clear();
                    }
                }
                whole => {
                    let outline = outline_of(whole).and_then(|shape| rest.outline_mut(&shape).ok());
                    outline.into_iter().for_each(Vec::clear);
                }
            }
        }
        rest
    }

    /// The plan with all of them where a motion takes them, and what is on the lines that they lead.
    pub(super) fn moved(&self, motion: Motion) -> Plan {
        let mut plan = self.carried(motion);
        for (run, stated) in plan.runs.iter_mut().zip(&self.was.runs) {
            *run = workup::taken_along(&self.was, stated, run);
        }
        plan
    }

    /// The plan with all of them where a motion takes them. What belongs to a whole goes with it, once.
    pub(super) fn carried(&self, motion: Motion) -> Plan {
        let mut plan = self.was.clone();
        for (run, stated) in self.was.runs.iter().enumerate().filter(|(run, _)| self.has(Thing::Run { run: *run })) {
            plan.runs[run] = stated.carried(|at| motion.of(at));
        }
        for &thing in self.things.iter().filter(|thing| !self.goes_along(**thing)) {
            carry(&mut plan, thing, motion);
        }
        self.coops_along(&mut plan, motion);
        plan
    }

    /// A coop goes along with the one run that is round it, as where that run is moved alone; one that is locked stays.
    fn coops_along(&self, plan: &mut Plan, motion: Motion) {
        for (number, coop) in self.was.coops().enumerate().filter(|(_, coop)| !coop.locked) {
            if let Some(run) = self.was.run_round(coop)
                && self.has(Thing::Run { run })
                && !self.has(Thing::Coop { coop: number })
                && let Some(one) = coop_mut(plan, number)
            {
                *one = coop.moved(motion);
            }
        }
    }
}

/// Takes one thing, but no run, to where a motion takes it.
fn carry(plan: &mut Plan, thing: Thing, motion: Motion) {
    let to = |at: &mut Point| *at = motion.of(*at);
    if let Some((shape, corner)) = corner_of(plan, thing) {
        plan.outline_mut(&shape).ok().and_then(|outline| outline.get_mut(corner)).into_iter().for_each(to);
        return;
    }
    if let Some(shape) = outline_of(thing) {
        plan.outline_mut(&shape).into_iter().flatten().for_each(to);
        return;
    }
    match thing {
        Thing::Coop { coop } => {
            if let Some(coop) = coop_mut(plan, coop) {
                *coop = coop.moved(motion);
            }
        }
        Thing::Gateway => plan.ground.gateway.iter_mut().for_each(|gateway| to(&mut gateway.at)),
        Thing::Height { height } => plan.heights.get_mut(height).into_iter().for_each(|one| to(&mut one.at)),
        Thing::Label { label } => plan.labels.get_mut(label).into_iter().for_each(|one| to(&mut one.at)),
        Thing::TapePoint { point } => plan.tape_points.get_mut(point).into_iter().for_each(|one| to(&mut one.at)),
        Thing::Underlay => plan.underlay.iter_mut().for_each(|underlay| {
            let world_m = Some(underlay.world_m().moved(motion));
            *underlay = Underlay { world_m, ..underlay.clone() };
        }),
        Thing::Drop { run } => {
            plan.runs.get_mut(run).and_then(|run| run.drop_at.as_mut()).into_iter().for_each(to);
        }
        Thing::Feed { run } => {
            let Some(run) = plan.runs.get_mut(run) else { return };
            run.feed_at = run.feed_at.or(run.outline.first().copied()).map(|at| motion.of(at));
        }
        Thing::Energizer { run } => {
            plan.runs.get_mut(run).and_then(|run| run.energizer_at.as_mut()).into_iter().for_each(to);
        }
        Thing::EarthStakes { run } => {
            let Some(run) = plan.runs.get_mut(run) else { return };
            run.earth_stakes.at.iter_mut().chain(&mut run.earth_stakes.places).for_each(to);
        }
        Thing::EarthStake { run, stake } => {
            let run = plan.runs.get_mut(run);
            run.and_then(|run| run.earth_stakes.places.get_mut(stake)).into_iter().for_each(to);
        }
        Thing::Fault { run, branch, fault } => {
            let faults = plan.runs.get_mut(run).and_then(|run| run.faults_on_mut(branch));
            faults.and_then(|faults| faults.get_mut(fault)).into_iter().for_each(|fault| to(&mut fault.at));
        }
        _ => {}
    }
}
