//! Faults that are tried: put onto the netting, slid along it, seen beside the sound fence.

use drawing::Thing;
use plan::{Edit, Fault, FaultKind, LeakageZone, Motion, Plan, Point, Rest, Run, defaults};
use words::texts::Window;
use workup::Lay;
use workup::faults::{NoLanding, land};

use super::hold::{Held, Hold};
use super::{Editor, Page, Snapped};
use crate::tool::{Hand, Tool, Trial, apart_m};

/// Resistances of what is tried, ohms: common practice, no source.
const BRANCH_OHM: f64 = 1_000.0;
const PEG_OHM: f64 = 50.0;
const BAD_JOIN_OHM: f64 = 1_000.0;
/// Long grass that is tried goes so far, metres: common practice, no source.
const LONG_GRASS_M: f64 = 10.0;
/// How far beside the net a click still means it, pixels.
const BESIDE_PX: f64 = 60.0;
/// Places nearer than this along a line are one, metres.
const SAME_M: f64 = 0.01;

/// Kilovolts at every post of the sound fence, and of which plan and run.
#[derive(Default)]
pub(super) struct Sound {
    of: Option<(Plan, String)>,
    kv: Vec<f64>,
}

/// The fault that a trial puts at a place; `None` for long grass, which is a stretch.
pub fn trial_fault(trial: Trial, at: Point) -> Option<Fault> {
    let (kind, ohm, lines) = match trial {
        Trial::Branch => (FaultKind::Short, Some(BRANCH_OHM), None),
        Trial::Peg => (FaultKind::Short, Some(PEG_OHM), None),
        Trial::CutLine => (FaultKind::LineBreak, None, Some(1)),
        Trial::BadJoin => (FaultKind::Join, Some(BAD_JOIN_OHM), None),
        Trial::DeadNet => (FaultKind::Break, None, None),
        Trial::LongGrass => return None,
    };
    Some(Fault { at, kind, ohm, lines, rest: Rest::new() })
}

/// Long grass about a place of the line, held to the ends of an open one.
fn long_grass(lay: &Lay, along_m: f64) -> LeakageZone {
    let whole_m = LONG_GRASS_M.min(lay.line_m);
    let from_m = along_m - whole_m / 2.0;
    let (from_m, to_m) = if lay.closed {
        (lay.held_m(from_m), lay.held_m(from_m + whole_m))
    } else {
        let from_m = from_m.clamp(0.0, lay.line_m - whole_m);
        (from_m, from_m + whole_m)
    };
    LeakageZone { from_m, to_m, s_per_m: defaults::LEAKAGE_LONG_WET_S_PER_M, rest: Rest::new() }
}

fn set(run: Run) -> Edit {
    Edit::SetRun { run: Box::new(run) }
}

impl Editor {
    fn on_line(&self, run: usize) -> Option<(&Run, &Lay)> {
        self.plan.runs.get(run).zip(self.workup.runs.get(run)?.lay.as_ref())
    }

    /// A trial in the hand: shown where it would land, put there by a click.
    pub(super) fn try_out(&mut self, trial: Trial, hand: Hand) {
        let (at, clicked) = match hand {
            Hand::Leave => {
                (self.tool, self.snapped) = (Tool::Pick, None);
                return;
            }
            Hand::Move(at) => (at, false),
            Hand::Click { at, .. } => (at, true),
            Hand::Type(_) | Hand::Set | Hand::Close | Hand::Back => return,
        };
        let shown = self.trial_at(trial, at);
        if !clicked {
            // A refusal stays in sight until the hand is over a net again.
            if shown.is_ok() {
                self.notice = None;
            }
            self.snapped = shown.ok().map(|(snapped, _, _)| snapped);
            return;
        }
        match shown {
            Ok((_, run, thing)) => {
                (self.tool, self.snapped) = (Tool::Pick, None);
                self.make(set(run));
                self.pick(Some(thing));
            }
            Err(why) => {
                self.snapped = None;
                self.notice = Some(why);
            }
        }
    }

    /// Where a trial would land, the run with it, and what it is then.
    fn trial_at(&self, trial: Trial, at: Point) -> Result<(Snapped, Run, Thing), Window> {
        let index = self.run;
        let (run, lay) = self.on_line(index).ok_or(Window::NoNetsYet)?;
        let (_, off_m) = lay.nearest_m(at).ok_or(Window::NoNetsYet)?;
        let kind = trial_fault(trial, at).map_or(FaultKind::Short, |fault| fault.kind);
        let landing = land(run, lay, kind, at).map_err(|why| match why {
            NoLanding::NoJoin => Window::NoJoinHere,
            NoLanding::NoNet => Window::NoNetHere,
        })?;
        if off_m * self.view.px_per_m > BESIDE_PX {
            return Err(Window::NoNetHere);
        }
        let place = care::place_on_line(self.words, lay, landing.along_m);
        let mut run = run.clone();
        let (says, thing) = if let Some(fault) = trial_fault(trial, landing.at) {
            let what = care::fault_said::what(&self.plan, lay, &fault, Ok(landing), self.words);
            run.faults.push(fault);
            (what, Thing::Fault { run: index, fault: run.faults.len() - 1 })
        } else {
            let zone = long_grass(lay, landing.along_m);
            let says = care::fault_said::zone(&zone, self.words);
            run.leakage_zones.push(zone);
            (says, Thing::Zone { run: index, zone: run.leakage_zones.len() - 1 })
        };
        let name = self.words.text(trial.name());
        Ok((Snapped { at: landing.at, reason: format!("{name}: {says}, {place}") }, run, thing))
    }

    pub(super) fn fault_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        let (what, was) = match thing {
            Thing::Fault { run: index, fault } => {
                let (run, lay) = self.on_line(index)?;
                let stated = run.faults.get(fault)?;
                let was = land(run, lay, stated.kind, stated.at).map_or(stated.at, |landing| landing.at);
                (Hold::Fault(index, fault), was)
            }
            Thing::Zone { run: index, zone } => {
                let (run, lay) = self.on_line(index)?;
                let stated = run.leakage_zones.get(zone)?;
                (Hold::Zone(index, zone, stated.clone()), lay.place_at(stated.from_m)?)
            }
            _ => return None,
        };
        self.take_up(Some(thing));
        self.history.begin_called(plan::Deed::Move);
        Some(Held { what, from: at, was, moved: false })
    }

    /// The edit that takes a fault to the place of the netting nearest to a wanted one; `None` where it is there.
    pub(super) fn fault_to(&self, index: usize, fault: usize, wanted: Point) -> Option<Edit> {
        let (run, lay) = self.on_line(index)?;
        let stated = run.faults.get(fault)?;
        let landing = land(run, lay, stated.kind, wanted).ok()?;
        if apart_m(landing.at, stated.at) < SAME_M / 10.0 {
            return None;
        }
        let mut run = run.clone();
        run.faults[fault].at = landing.at;
        Some(set(run))
    }

    /// Where a fault in the hand lands, in words.
    pub(super) fn fault_at_hand(&self, index: usize, fault: usize, wanted: Point) -> Option<Snapped> {
        let (run, lay) = self.on_line(index)?;
        let stated = run.faults.get(fault)?;
        let landing = land(run, lay, stated.kind, wanted).ok()?;
        let what = care::fault_said::what(&self.plan, lay, stated, Ok(landing), self.words);
        let place = care::place_on_line(self.words, lay, landing.along_m);
        Some(Snapped { at: landing.at, reason: format!("{what}, {place}") })
    }

    /// The edit that slides a stretch along its line by as much as the pointer went along it.
    pub(super) fn zone_to(&self, index: usize, zone: usize, was: &LeakageZone, from: Point, to: Point) -> Option<Edit> {
        let (_, lay) = self.on_line(index)?;
        self.zone_by(index, zone, was, lay.nearest_m(to)?.0 - lay.nearest_m(from)?.0)
    }

    fn zone_by(&self, index: usize, zone: usize, was: &LeakageZone, by_m: f64) -> Option<Edit> {
        let (run, lay) = self.on_line(index)?;
        let stated = run.leakage_zones.get(zone)?;
        let (from_m, to_m) = if lay.closed {
            (lay.held_m(was.from_m + by_m), lay.held_m(was.to_m + by_m))
        } else {
            let by_m = by_m.clamp(-was.from_m.min(was.to_m), (lay.line_m - was.to_m.max(was.from_m)).max(0.0));
            (was.from_m + by_m, was.to_m + by_m)
        };
        if (stated.from_m, stated.to_m) == (from_m, to_m) {
            return None;
        }
        let mut run = run.clone();
        run.leakage_zones[zone] = LeakageZone { from_m, to_m, ..stated.clone() };
        Some(set(run))
    }

    /// The edit of an arrow key: a step along the line, a bad join to the next join that way.
    pub(super) fn fault_nudged(&self, thing: Thing, motion: Motion, way: [f64; 2]) -> Option<Edit> {
        match thing {
            Thing::Fault { run: index, fault } => {
                let (run, lay) = self.on_line(index)?;
                let stated = run.faults.get(fault)?;
                let now = land(run, lay, stated.kind, stated.at).map_or(stated.at, |landing| landing.at);
                if stated.kind != FaultKind::Join {
                    return self.fault_to(index, fault, motion.of(now));
                }
                let onward = |join: &Point| {
                    let (east, north) = (join.east_m - now.east_m, join.north_m - now.north_m);
                    let far_m = east.hypot(north);
                    // Within 60 degrees of the key's way.
                    far_m > SAME_M && (east * way[0] + north * way[1]) > 0.5 * far_m * way[0].hypot(way[1])
                };
                let joins = lay.join_places().into_iter().map(|(_, join)| join).filter(onward);
                let join = joins.min_by(|&one, &other| apart_m(one, now).total_cmp(&apart_m(other, now)))?;
                self.fault_to(index, fault, join)
            }
            Thing::Zone { run: index, zone } => {
                let (run, lay) = self.on_line(index)?;
                let stated = run.leakage_zones.get(zone)?;
                let from = lay.place_at(stated.from_m)?;
                self.zone_to(index, zone, stated, from, motion.of(from))
            }
            _ => None,
        }
    }

    /// Works out the volts of the sound fence, where the page shows them and they are others than before.
    pub(super) fn reckon_sound(&mut self) {
        let faulty = |run: &&Run| !run.faults.is_empty() && self.page == Page::Power;
        let Some(run) = self.plan.runs.get(self.run).filter(faulty) else { return };
        let id = run.id.clone();
        let mut sound = self.plan.clone();
        sound.runs[self.run].faults.clear();
        let of = Some((sound, id));
        if self.sound.of != of {
            let id = &self.plan.runs[self.run].id;
            self.sound = Sound { kv: workup::power::sound_kv(&self.plan, id), of };
        }
    }

    /// Kilovolts at every post of the run in hand without its faults, its grass as stated; empty where it has none.
    pub fn sound_kv(&self) -> &[f64] {
        let run = self.plan.runs.get(self.run).filter(|run| !run.faults.is_empty());
        let own = run.zip(self.sound.of.as_ref()).is_some_and(|(run, (_, id))| run.id == *id);
        if own { &self.sound.kv } else { &[] }
    }
}
