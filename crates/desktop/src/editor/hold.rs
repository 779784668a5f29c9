//! Things in the hand: taken hold of, dragged, turned, nudged, taken out, doubled. A drag is one undo step.

use std::sync::Arc;

use drawing::Thing;
use geometry::guides::Edge;
use plan::{Branch, Deed, Edit, LeakageZone, Motion, Plan, Point, Run, Shape};
use words::texts::Window as Text;
use workup::shaping::CornerTyped;

use super::chosen::{Many, coop_at, coop_out, fewest, in_use};
use super::cornering::Grip;
use super::shaping::{Pivot, Slide};
use super::snap::point;
use super::whole::Whole;
use super::{Editor, corner_of};
use crate::tool::free_run_id;

/// How near a post or a corner catches what is dragged, pixels.
pub(super) const SNAP_PX: f64 = 9.0;
/// How near its middle a side must be taken hold of to get a corner there, pixels.
const MIDDLE_PX: f64 = 14.0;
/// How far off a second one of something is put, metres: one step east and south, so that both are seen.
const BESIDE_M: f64 = 3.0;

/// Something that is being dragged.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Held {
    pub(super) what: Hold,
    /// Where it was taken hold of.
    pub(super) from: Point,
    /// Where it was.
    pub(super) was: Point,
    /// Whether anything came of it yet.
    pub(super) moved: bool,
}

#[derive(Clone, Debug, PartialEq)]
pub(super) enum Hold {
    Corner(Grip),
    /// A side that slides parallel to itself.
    Slide(Slide),
    /// The place that a turn leaves where it is, as it was chosen before.
    Pivot(Option<(Thing, Pivot)>),
    Whole(Whole),
    /// Several things; by their turning ring, about their middle.
    Many(Arc<Many>, Option<Point>),
    /// A whole by its turning ring, about its middle.
    Turn(Whole, Point),
    /// The coop's door, about the coop's middle, as it was.
    Door(Box<plan::Coop>),
    /// A gate of a run, from join to join.
    Gate(usize, usize),
    /// A fault of a run or of one of its branches, along the netting.
    Fault(usize, Option<usize>, usize),
    /// An earth stake of a run, and where all of them stood.
    EarthStake(usize, usize, Vec<Point>),
    /// The energizer of a run, where it was or was drawn.
    Energizer(usize),
    /// A stretch of grass of a run or of one of its branches, along the line, as it was.
    Zone(usize, Option<usize>, usize, LeakageZone),
    /// An end of such a stretch; whether it is the last.
    ZoneEnd(usize, Option<usize>, usize, bool),
    /// A branch of a run, along its line, as it was; whether all of it goes along.
    Hanging(usize, usize, bool, Branch),
}

impl Hold {
    /// Whether posts and corners catch it.
    pub(super) fn is_catchable(&self) -> bool {
        matches!(
            self,
            Self::Corner(_)
                | Self::Slide(_)
                | Self::Pivot(_)
                | Self::Whole(_)
                | Self::Many(_, None)
                | Self::ZoneEnd(..)
                | Self::Hanging(..)
        )
    }
}

impl Editor {
    pub(super) fn grab(&mut self, thing: Thing, at: Point) {
        self.hold_chains();
        self.take_hold(thing, at);
        if self.held.is_none() {
            self.unhold();
        }
    }

    /// From now on the nets of a line that is led keep their order and their start.
    fn hold_chains(&mut self) {
        self.known.hold(&self.plan, &self.workup);
        self.held_from = Some(Box::new(self.plan.clone()));
    }

    /// Nothing is in the hand any more; what was.
    pub(super) fn unhold(&mut self) -> Option<Held> {
        self.known.let_go();
        self.held_from = None;
        self.held.take()
    }

    fn take_hold(&mut self, thing: Thing, at: Point) {
        if self.is_one_of_several(thing) {
            self.held = self.many_to_hold(at);
            return;
        }
        if super::hiding::is_locked(&self.plan, thing) {
            self.take_up(Some(thing.whole()));
            self.notice = Some(Text::IsLocked);
            return;
        }
        self.history.begin();
        self.unguided();
        let thing = self.side_of_post(thing, at);
        let held = self.corner_to_hold(thing, at).or_else(|| self.gate_to_hold(thing, at));
        let held = held.or_else(|| self.fault_to_hold(thing, at)).or_else(|| self.zone_to_hold(thing, at));
        let held = held.or_else(|| self.door_to_hold(thing, at));
        let held = held.or_else(|| self.hanging_to_hold(thing, at)).or_else(|| self.stake_to_hold(thing, at));
        let held = held.or_else(|| self.energizer_to_hold(thing, at));
        self.held = held.or_else(|| match self.slide_to_hold(thing, at) {
            (None, false) => self.whole_to_hold(thing, at),
            (slide, _) => slide,
        });
        if self.held.is_none() {
            self.history.end();
        }
    }

    /// Takes hold of what is picked by its turning ring.
    pub(super) fn grab_turn(&mut self, at: Point) {
        self.hold_chains();
        self.take_ring(at);
        if self.held.is_none() {
            self.unhold();
        }
    }

    fn take_ring(&mut self, at: Point) {
        if self.has_several() {
            self.held = self.many_to_turn(at);
            return;
        }
        let Some(&thing) = self.unlocked().first() else { return };
        let whole = Whole::of(&self.plan, thing);
        if let Some((whole, pivot)) = whole.zip(self.turns_about()) {
            self.history.begin_called(Deed::Turn);
            self.held = Some(Held { what: Hold::Turn(whole, pivot), from: at, was: at, moved: false });
        }
    }

    fn corner_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        let (thing, moved) = match corner_of_side(&self.plan, thing, at) {
            // A side that is taken hold of by its middle gets a corner there; else all of it moves.
            Some((corner, side_end)) => {
                let (shape, _) = corner_of(&self.plan, corner)?;
                let outline = self.plan.outline(&shape)?;
                let (one, other) = (outline.get(side_end - 1)?, &outline[side_end % outline.len()]);
                let middle =
                    Point::new(f64::midpoint(one.east_m, other.east_m), f64::midpoint(one.north_m, other.north_m));
                if crate::tool::apart_m(middle, at) * self.view.px_per_m > MIDDLE_PX {
                    return None;
                }
                self.history.call(Deed::InsertCorner);
                self.make(Edit::InsertCorner { shape, corner: side_end, at });
                (corner, true)
            }
            None => (thing, false),
        };
        if !moved {
            self.history.begin_called(Deed::MoveCorner);
        }
        let (shape, corner) = corner_of(&self.plan, thing)?;
        let was = *self.plan.outline(&shape)?.get(corner)?;
        self.take_up(Some(thing));
        let grip = Grip { shape, corner, fresh: moved, hand: was, typed: CornerTyped::default() };
        Some(Held { what: Hold::Corner(grip), from: at, was, moved })
    }

    fn whole_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        // The first lesson is to move all of it, by whatever is taken hold of.
        let lesson = self.lesson == super::Lesson::Drag && matches!(thing, Thing::Coop { .. } | Thing::RunSide { .. });
        let thing = if lesson { Thing::Run { run: self.run } } else { thing };
        let whole = Whole::of(&self.plan, thing)?;
        let was = whole.pivot().or(whole.places().first().copied())?;
        self.take_up(Some(thing.whole()));
        self.history.begin_called(Deed::Move);
        Some(Held { what: Hold::Whole(whole), from: at, was, moved: false })
    }

    pub(super) fn drag(&mut self, to: Point) {
        let Some(held) = self.held.clone() else { return };
        let shift = Motion::Shift { east_m: to.east_m - held.from.east_m, north_m: to.north_m - held.from.north_m };
        self.snapped = None;
        let edits = match &held.what {
            Hold::Corner(_) => {
                // The corner keeps its distance from the pointer, so that it does not jump into it.
                let hand = shift.of(held.was);
                return self.lead_corner(|grip| grip.hand = hand);
            }
            Hold::Slide(slide) => {
                let hand = [to.east_m - held.from.east_m, to.north_m - held.from.north_m];
                let edit = self.slid_to(slide, hand);
                let told = self.snapped.take();
                return self.slid(edit, told);
            }
            Hold::Pivot(_) => return self.pivot_to(shift.of(held.was)),
            Hold::Whole(whole) => {
                let own = whole.shape();
                let places = whole.places();
                // The one of its corners that comes nearest to something takes the whole there.
                // A metal stake goes onto no post.
                let uncaught = matches!(whole, Whole::EarthStakes(..) | Whole::Underlay(_) | Whole::Label(..));
                let places = if uncaught { Vec::new() } else { places };
                let free: Vec<Point> = places.iter().map(|&place| shift.of(place)).collect();
                let caught = self.guide_whole(own.as_ref(), &free).map(|(place, snapped)| (free[place], snapped));
                let motion = match &caught {
                    Some((free, snapped)) => Motion::Shift {
                        east_m: to.east_m - held.from.east_m + snapped.at.east_m - free.east_m,
                        north_m: to.north_m - held.from.north_m + snapped.at.north_m - free.north_m,
                    },
                    None => shift,
                };
                self.snapped = caught.map(|(_, snapped)| snapped);
                whole.moved(&self.plan, motion)
            }
            Hold::Many(many, about) => {
                let bearing = |about: Point, at: Point| (at.east_m - about.east_m).atan2(at.north_m - about.north_m);
                return match *about {
                    Some(about) => self.many_turned(many, about, bearing(about, to) - bearing(about, held.from)),
                    None => {
                        self.many_shifted(many, to.east_m - held.from.east_m, to.north_m - held.from.north_m);
                    }
                };
            }
            Hold::Turn(whole, about) => {
                let bearing = |at: Point| (at.east_m - about.east_m).atan2(at.north_m - about.north_m);
                whole.moved(&self.plan, Motion::Turn { about: *about, clockwise_rad: bearing(to) - bearing(held.from) })
            }
            Hold::Door(coop) => vec![Self::door_to(coop, shift.of(held.was))],
            &Hold::Gate(run, gate) => {
                let edit = self.gate_to(run, gate, shift.of(held.was));
                if let Some(edit) = edit {
                    self.make(edit);
                    if let Some(held) = &mut self.held {
                        held.moved = true;
                    }
                }
                self.snapped = self.gate_at_hand(run, gate);
                return;
            }
            &Hold::Fault(run, branch, fault) => {
                let edit = self.fault_to(run, branch, fault, shift.of(held.was));
                return self.slid(edit, self.fault_at_hand(run, branch, fault, shift.of(held.was)));
            }
            Hold::EarthStake(run, stake, stand) => {
                let edit = self.stake_to(*run, *stake, stand, shift.of(held.was));
                let (run, stake) = (*run, *stake);
                self.slid(edit, None);
                self.snapped = self.stake_at_hand(run, stake);
                return;
            }
            &Hold::Energizer(run) => {
                let edit = self.energizer_to(run, shift.of(held.was));
                self.slid(edit, None);
                self.snapped = self.energizer_at_hand(run);
                return;
            }
            Hold::Zone(run, branch, zone, was) => {
                let edit = self.zone_to((*run, *branch, *zone), was, held.from, to);
                self.slid(edit, None);
                self.snapped = self.zone_at_hand(*run, *branch, *zone);
                return;
            }
            &Hold::ZoneEnd(run, branch, zone, last) => {
                if let Some((edit, told)) = self.zone_end_to((run, branch, zone, last), shift.of(held.was), true) {
                    self.slid(edit, Some(told));
                }
                return;
            }
            Hold::Hanging(run, branch, whole, was) => {
                if let Some((edit, told)) = self.hanging_to((*run, *branch, *whole), was, shift.of(held.was), true) {
                    self.slid(edit, Some(told));
                }
                return;
            }
        };
        if let Some(held) = &mut self.held {
            held.moved = true;
        }
        self.make_as_said(edits);
    }

    pub(super) fn let_go(&mut self) {
        let moved_whole = self.held.as_ref().is_some_and(|held| held.moved && matches!(held.what, Hold::Whole(_)));
        if moved_whole && self.lesson == super::Lesson::Drag {
            self.lesson = super::Lesson::ReadLine;
        }
        let led = |from: &Plan| {
            from.runs.iter().zip(&self.plan.runs).any(|(was, is)| was.id == is.id && was.outline != is.outline)
        };
        let from = self.held_from.take().filter(|from| led(from));
        self.unhold();
        self.snapped = None;
        self.unguided();
        self.history.end();
        if let Some(from) = from {
            // Of lines that were led the best chains are searched for now.
            self.worked_of = self.worked_of.is_some().then_some(*from);
            self.changed();
        }
    }

    pub(super) fn nudge(&mut self, east_m: f64, north_m: f64) {
        let things = self.unlocked();
        match &things[..] {
            [] => {}
            &[thing] if !self.has_several() => {
                let (deed, edits) = self.nudged(thing, east_m, north_m);
                self.begin_by_keys(deed, &things);
                self.make_all(edits);
                self.end_by_keys(things);
            }
            _ => self.nudge_many(things, east_m, north_m),
        }
    }

    /// One more step of the arrow keys, on the way that they began.
    pub(super) fn begin_by_keys(&mut self, deed: Deed, things: &[Thing]) {
        self.history.begin_called(deed);
        self.way.goes_on_by_keys(&self.history, things);
    }

    pub(super) fn end_by_keys(&mut self, things: Vec<Thing>) {
        self.history.end();
        self.way.went_by_keys(&self.history, things);
    }

    /// The edits that move a thing by so many metres, and what that is called.
    pub(super) fn nudged(&mut self, thing: Thing, east_m: f64, north_m: f64) -> (Deed, Vec<Edit>) {
        let motion = Motion::Shift { east_m, north_m };
        if let Some((shape, corner)) = corner_of(&self.plan, thing) {
            let (deed, edit) = self.corner_nudged(shape, corner, motion);
            (deed, edit.into_iter().collect())
        } else if let Thing::Gate { run, gate } = thing {
            let edit = self.gate_nudged(run, gate, east_m, north_m);
            (Deed::Move, edit.into_iter().collect())
        } else if matches!(thing, Thing::Fault { .. }) {
            let edit = self.fault_nudged(thing, motion, [east_m, north_m]);
            (Deed::Move, edit.into_iter().collect())
        } else if let Thing::EarthStake { run, stake } = thing {
            let edit = self.stake_nudged(run, stake, motion);
            (Deed::Move, edit.into_iter().collect())
        } else if let Thing::Energizer { run } = thing {
            let edit = self.energizer_drawn(run).and_then(|at| self.energizer_to(run, motion.of(at)));
            (Deed::Move, edit.into_iter().collect())
        } else if thing.zone().is_some() {
            let edit = self.zone_nudged(thing, motion);
            (Deed::Move, edit.into_iter().collect())
        } else if matches!(thing, Thing::Branch { .. } | Thing::BranchCorner { .. } | Thing::BranchSide { .. }) {
            let edit = self.hanging_nudged(thing, motion);
            (Deed::Move, edit.into_iter().collect())
        } else if let Some(whole) = Whole::of(&self.plan, thing) {
            (Deed::Move, whole.moved(&self.plan, motion))
        } else {
            (Deed::Move, Vec::new())
        }
    }

    /// What slides along its line was moved by an edit, or stays.
    fn slid(&mut self, edit: Option<Edit>, snapped: Option<super::Snapped>) {
        if let Some(edit) = edit {
            self.make(edit);
            if let Some(held) = &mut self.held {
                held.moved = true;
            }
        }
        self.snapped = snapped;
    }

    /// Turns what is picked about its middle.
    pub(super) fn turn_by(&mut self, clockwise_deg: f64) {
        let things = self.unlocked();
        if self.has_several() {
            return self.turn_many(things, clockwise_deg);
        }
        let of = |thing| Some((Whole::of(&self.plan, thing)?, thing));
        let found = things.first().copied().and_then(of);
        if let Some((whole, about)) = found.and_then(|(whole, thing)| Some((whole.clone(), self.about(&whole, thing)?)))
        {
            let motion = Motion::Turn { about, clockwise_rad: clockwise_deg.to_radians() };
            self.one_step(Deed::Turn, whole.moved(&self.plan, motion));
        }
    }

    /// Gives a side a length: its far corner moves along it.
    pub(super) fn side_length(&mut self, shape: Shape, side: usize, length_m: f64) {
        self.side_length_called(Deed::SideLength, shape, side, length_m);
    }

    pub(super) fn side_length_called(&mut self, deed: Deed, shape: Shape, side: usize, length_m: f64) {
        let drawn_out = self.plan.outline(&shape).and_then(|outline| plan::drawn_out(outline, side, length_m));
        let Some((_, corner, to)) = drawn_out else { return };
        let mut edits = vec![Edit::MoveCorner { shape: shape.clone(), corner, to }];
        // What the side is stated to rise goes with it.
        if let Shape::Run(id) = &shape
            && let Some(run) = self.plan.runs.iter().find(|run| run.id == *id)
            && run.side_slope(side).is_some()
        {
            let stated = run.with_side_on_map(side, length_m).side_slopes;
            edits.insert(0, Edit::SetRun { run: Box::new(plan::Run { side_slopes: stated, ..run.clone() }) });
        }
        self.one_step(deed, edits);
    }

    /// A second one of what is picked, a step beside it.
    pub(super) fn duplicate(&mut self) {
        if self.has_several() {
            let things = self.chosen();
            return self.duplicate_many(&things);
        }
        let beside = |at: Point| Point::new(at.east_m + BESIDE_M, at.north_m - BESIDE_M);
        match self.picked {
            Some(thing @ (Thing::Run { .. } | Thing::RunCorner { .. } | Thing::RunSide { .. })) => {
                let Some(run) = thing.run().and_then(|index| self.plan.runs.get(index)) else { return };
                let name = self.plan.free_run_name(care::run_name(run));
                let drop_at = run.drop_at.map(beside);
                let (id, hidden, locked) = (free_run_id(&self.plan), false, false);
                let carried = workup::taken_along(&self.plan, run, &run.carried(beside));
                let second = Run { id, name, drop_at, hidden, locked, ..carried };
                let index = self.plan.runs.len();
                self.one_step(Deed::Duplicate, vec![Edit::AddRun { index, run: Box::new(second) }]);
                self.pick(Some(Thing::Run { run: index }));
            }
            Some(
                Thing::KeepOut { keep_out }
                | Thing::KeepOutCorner { keep_out, .. }
                | Thing::KeepOutSide { keep_out, .. },
            ) => {
                let mut keep_outs = self.plan.ground.keep_outs.clone();
                let Some(mut second) = keep_outs.get(keep_out).cloned() else { return };
                second.outline.iter_mut().for_each(|at| *at = beside(*at));
                (second.hidden, second.locked) = (false, false);
                second.name = self.plan.free_keep_out_name(&second.name);
                keep_outs.push(second);
                self.one_step(Deed::Duplicate, vec![Edit::SetKeepOuts { keep_outs }]);
                let keep_out = self.plan.ground.keep_outs.len() - 1;
                self.pick(Some(Thing::KeepOut { keep_out }));
            }
            thing => match thing.and_then(|thing| self.feature_doubled(thing, beside)) {
                Some((edit, second)) => {
                    self.one_step(Deed::Duplicate, vec![edit]);
                    self.pick(Some(second));
                }
                None => self.notice = Some(Text::NothingToDouble),
            },
        }
    }

    pub(super) fn one_step(&mut self, deed: Deed, edits: Vec<Edit>) {
        self.history.begin_called(deed);
        self.make_all(edits);
        self.history.end();
    }

    pub(super) fn remove(&mut self) {
        let things = self.unlocked();
        if self.has_several() {
            return self.remove_many(things);
        }
        let edit = match things.first().copied() {
            Some(Thing::Run { run }) => {
                if let Some(id) = self.plan.runs.get(run).map(|run| run.id.clone()) {
                    self.remove_run(id);
                }
                None
            }
            Some(Thing::Boundary) => Some(Edit::SetOutline { shape: Shape::Boundary, outline: Vec::new() }),
            Some(Thing::KeepOut { keep_out } | Thing::KeepOutSide { keep_out, .. }) => {
                let mut keep_outs = self.plan.ground.keep_outs.clone();
                (keep_out < keep_outs.len()).then(|| {
                    keep_outs.remove(keep_out);
                    Edit::SetKeepOuts { keep_outs }
                })
            }
            Some(Thing::Reading { reading, .. }) => {
                let mut readings = self.plan.readings.clone();
                (reading < readings.len()).then(|| {
                    readings.remove(reading);
                    Edit::SetReadings { readings }
                })
            }
            Some(Thing::Hazard { hazard }) => {
                let mut hazards = self.plan.ground.hazards.clone();
                (hazard < hazards.len()).then(|| {
                    hazards.remove(hazard);
                    Edit::SetHazards { hazards }
                })
            }
            Some(Thing::Gateway) => Some(Edit::SetGateway { gateway: None }),
            Some(Thing::Gate { run, gate }) => self.plan.runs.get(run).cloned().and_then(|mut run| {
                (gate < run.gates.len()).then(|| {
                    run.gates.remove(gate);
                    Edit::SetRun { run: Box::new(run) }
                })
            }),
            Some(Thing::Pin { run, pin }) => self.plan.runs.get(run).cloned().and_then(|mut run| {
                (pin < run.pins.len()).then(|| {
                    run.pins.remove(pin);
                    Edit::SetRun { run: Box::new(run) }
                })
            }),
            Some(Thing::Fault { run, branch, fault }) => self.without(run, |run| {
                let faults = run.faults_on_mut(branch)?;
                (fault < faults.len()).then(|| drop(faults.remove(fault)))
            }),
            Some(Thing::Zone { run, branch, zone } | Thing::ZoneEnd { run, branch, zone, .. }) => {
                self.without(run, |run| {
                    let zones = run.zones_on_mut(branch)?;
                    (zone < zones.len()).then(|| drop(zones.remove(zone)))
                })
            }
            Some(Thing::EarthStake { run, stake }) => self.stake_out(run, stake),
            Some(Thing::Energizer { run }) => self.energizer_out(run),
            // Without the place where it hangs a branch is none.
            Some(Thing::Branch { run, branch } | Thing::BranchCorner { run, branch, vertex: 0 }) => {
                self.without(run, |run| (branch < run.branches.len()).then(|| drop(run.branches.remove(branch))))
            }
            Some(Thing::Height { height }) => {
                let mut heights = self.plan.heights.clone();
                (height < heights.len()).then(|| {
                    heights.remove(height);
                    Edit::SetHeights { heights }
                })
            }
            Some(Thing::Coop { coop }) => self.coop_out(coop),
            Some(Thing::RunSide { .. } | Thing::BoundarySide { .. } | Thing::BranchSide { .. }) => {
                self.notice = Some(Text::NoSideAlone);
                None
            }
            Some(thing) => {
                let out = self.feature_out(thing);
                if out.is_none() {
                    self.remove_corner(thing);
                }
                out
            }
            None => None,
        };
        if let Some(edit) = edit {
            self.make(edit);
            self.picked = None;
        }
    }

    /// The edit that takes something out of a run; `None` where it is not there.
    fn without(&self, run: usize, take: impl FnOnce(&mut Run) -> Option<()>) -> Option<Edit> {
        let mut run = self.plan.runs.get(run)?.clone();
        take(&mut run)?;
        Some(Edit::SetRun { run: Box::new(run) })
    }

    /// Takes a run out with its readings: the file refuses a reading of a run that is not there.
    fn remove_run(&mut self, id: String) {
        let kept: Vec<_> = self.plan.readings.iter().filter(|reading| reading.run != id).cloned().collect();
        let readings = (kept.len() < self.plan.readings.len()).then_some(Edit::SetReadings { readings: kept });
        self.one_step(Deed::RemoveRun, readings.into_iter().chain([Edit::RemoveRun { id }]).collect());
        self.picked = None;
    }

    /// The edit that takes a coop out; a sentence where a run names it.
    fn coop_out(&mut self, index: usize) -> Option<Edit> {
        let coop = coop_at(&self.plan, index)?;
        if in_use(&self.plan, coop) {
            self.notice = Some(Text::CoopInUse);
            return None;
        }
        let mut without = self.plan.clone();
        coop_out(&mut without, index);
        plan::between(&self.plan, &without).pop()
    }

    fn remove_corner(&mut self, thing: Thing) {
        let Some((shape, corner)) = corner_of(&self.plan, thing) else { return };
        let (fewest, why) = fewest(&shape);
        if self.plan.outline(&shape).is_some_and(|outline| outline.len() > fewest) {
            self.make(Edit::RemoveCorner { shape, corner });
            self.picked = None;
        } else {
            self.notice = Some(why);
        }
    }
}

/// The corner that a side would get, and before which corner it is put in; of a path that is taken hold of as a whole it
/// is the side at hand.
fn corner_of_side(plan: &Plan, thing: Thing, at: Point) -> Option<(Thing, usize)> {
    let after = |path: &[Point]| {
        let off_m = |pair: &[Point]| {
            let side = Edge { from: point(pair[0]), to: point(pair[1]) };
            side.nearest(point(at)).distance_m(point(at))
        };
        let sides = path.windows(2).map(off_m).enumerate();
        sides.min_by(|one, other| one.1.total_cmp(&other.1)).map(|(side, _)| side + 1)
    };
    match thing {
        Thing::Wall { wall } => {
            let vertex = after(&plan.walls.get(wall)?.path)?;
            Some((Thing::WallCorner { wall, vertex }, vertex))
        }
        Thing::Hazard { hazard } => {
            let vertex = after(&plan.ground.hazards.get(hazard)?.path)?;
            Some((Thing::HazardCorner { hazard, vertex }, vertex))
        }
        Thing::RunSide { run, side } => Some((Thing::RunCorner { run, vertex: side + 1 }, side + 1)),
        Thing::BoundarySide { side } => Some((Thing::BoundaryCorner { vertex: side + 1 }, side + 1)),
        Thing::BranchSide { run, branch, side } => {
            Some((Thing::BranchCorner { run, branch, vertex: side + 1 }, side + 1))
        }
        Thing::ShadeSide { shade, side } => Some((Thing::ShadeCorner { shade, vertex: side + 1 }, side + 1)),
        Thing::DampSide { damp, side } => Some((Thing::DampCorner { damp, vertex: side + 1 }, side + 1)),
        Thing::KeepOutSide { keep_out, side } => Some((Thing::KeepOutCorner { keep_out, vertex: side + 1 }, side + 1)),
        _ => None,
    }
}
