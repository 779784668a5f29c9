//! Faults that are tried: put onto the netting, slid along it, seen beside the sound fence.

use std::borrow::Cow;

use drawing::Thing;
use plan::{Edit, Fault, FaultCause, FaultKind, Motion, Point, Rest, Run};
use words::texts::Window;
use workup::Lay;
use workup::faults::{NoLanding, land};

use super::hold::{Held, Hold};
use super::{Editor, Snapped};
use crate::tool::{Hand, Tool, Trial, apart_m};

/// Resistances of what is tried, ohms: common practice, no source.
const BRANCH_OHM: f64 = 1_000.0;
const PEG_OHM: f64 = 50.0;
const BAD_JOIN_OHM: f64 = 1_000.0;
/// How far beside the net a click still means it, pixels.
const BESIDE_PX: f64 = 60.0;
/// Places nearer than this along a line are one, metres.
const SAME_M: f64 = 0.01;

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
    let cause = match trial {
        Trial::Branch => Some(FaultCause::FallenBranch),
        Trial::Peg => Some(FaultCause::Peg),
        _ => None,
    };
    Some(Fault { at, kind, ohm, lines, cause, rest: Rest::new() })
}

pub(super) fn set(run: Run) -> Edit {
    Edit::SetRun { run: Box::new(run) }
}

impl Editor {
    /// A run's line of netting, or one of its branches as a run by itself, with how it is laid.
    pub(crate) fn on_line(&self, run: usize, branch: Option<usize>) -> Option<(Cow<'_, Run>, Cow<'_, Lay>)> {
        let (stated, lay) = self.plan.runs.get(run).zip(self.workup.runs.get(run)?.lay.as_ref())?;
        Some(match branch {
            None => (Cow::Borrowed(stated), Cow::Borrowed(lay)),
            Some(branch) => {
                let alone = lay.branch(branch)?.alone();
                (Cow::Owned(stated.branches.get(branch)?.alone(stated)), Cow::Owned(alone))
            }
        })
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
            Hand::Type(_) | Hand::Set | Hand::Close | Hand::CloseHere | Hand::Off | Hand::Back | Hand::Again => return,
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
        let stated = self.plan.runs.get(index).ok_or(Window::NoNetsYet)?;
        if stated.hidden {
            return Err(Window::NoNetHere);
        }
        // The line or branch that is nearest.
        let lines = stated.lines().filter_map(|branch| {
            let (run, lay) = self.on_line(index, branch)?;
            let off_m = lay.nearest_m(at)?.1;
            Some((branch, run, lay, off_m))
        });
        let (branch, run, lay, off_m) =
            lines.min_by(|one, other| one.3.total_cmp(&other.3)).ok_or(Window::NoNetsYet)?;
        let kind = trial_fault(trial, at).map_or(FaultKind::Short, |fault| fault.kind);
        let landing = land(&run, &lay, kind, at).map_err(|why| match why {
            NoLanding::NoJoin => Window::NoJoinHere,
            NoLanding::NoNet => Window::NoNetHere,
        })?;
        if off_m * self.view.px_per_m > BESIDE_PX {
            return Err(Window::NoNetHere);
        }
        let place = care::fault_said::place(self.words, &lay, branch, landing.along_m);
        let mut with = stated.clone();
        let (says, thing) = if let Some(fault) = trial_fault(trial, landing.at) {
            let what = care::fault_said::what(&self.plan, &lay, &fault, Ok(landing), self.words);
            let faults = with.faults_on_mut(branch).ok_or(Window::NoNetsYet)?;
            faults.push(fault);
            (what, Thing::Fault { run: index, branch, fault: faults.len() - 1 })
        } else {
            let zone = super::zones::long_grass(&lay, landing.along_m);
            let says = care::fault_said::zone(&zone, self.words);
            let zones = with.zones_on_mut(branch).ok_or(Window::NoNetsYet)?;
            zones.push(zone);
            (says, Thing::Zone { run: index, branch, zone: zones.len() - 1 })
        };
        let name = self.words.text(trial.name());
        Ok((Snapped { at: landing.at, reason: format!("{name}: {says}, {place}") }, with, thing))
    }

    pub(super) fn fault_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        let Thing::Fault { run: index, branch, fault } = thing else { return None };
        let (run, lay) = self.on_line(index, branch)?;
        let stated = run.faults.get(fault)?;
        let was = land(&run, &lay, stated.kind, stated.at).map_or(stated.at, |landing| landing.at);
        self.take_up(Some(thing));
        self.history.begin_called(plan::Deed::Move);
        Some(Held { what: Hold::Fault(index, branch, fault), from: at, was, moved: false })
    }

    /// The edit that takes a fault to the place of the netting nearest to a wanted one; `None` where it is there.
    pub(super) fn fault_to(&self, index: usize, branch: Option<usize>, fault: usize, wanted: Point) -> Option<Edit> {
        let (run, lay) = self.on_line(index, branch)?;
        let stated = run.faults.get(fault)?;
        let landing = land(&run, &lay, stated.kind, wanted).ok()?;
        if apart_m(landing.at, stated.at) < SAME_M / 10.0 {
            return None;
        }
        let mut run = self.plan.runs.get(index)?.clone();
        run.faults_on_mut(branch)?.get_mut(fault)?.at = landing.at;
        Some(set(run))
    }

    /// Where a fault in the hand lands, in words.
    pub(super) fn fault_at_hand(
        &self,
        index: usize,
        branch: Option<usize>,
        fault: usize,
        wanted: Point,
    ) -> Option<Snapped> {
        let (run, lay) = self.on_line(index, branch)?;
        let stated = run.faults.get(fault)?;
        let landing = land(&run, &lay, stated.kind, wanted).ok()?;
        let what = care::fault_said::what(&self.plan, &lay, stated, Ok(landing), self.words);
        let place = care::fault_said::place(self.words, &lay, branch, landing.along_m);
        Some(Snapped { at: landing.at, reason: format!("{what}, {place}") })
    }

    /// The edit of an arrow key: a step along the line, a bad join to the next join that way.
    pub(super) fn fault_nudged(&self, thing: Thing, motion: Motion, way: [f64; 2]) -> Option<Edit> {
        let Thing::Fault { run: index, branch, fault } = thing else { return None };
        let (run, lay) = self.on_line(index, branch)?;
        let stated = run.faults.get(fault)?;
        let now = land(&run, &lay, stated.kind, stated.at).map_or(stated.at, |landing| landing.at);
        if stated.kind != FaultKind::Join {
            return self.fault_to(index, branch, fault, motion.of(now));
        }
        let onward = |join: &Point| {
            let (east, north) = (join.east_m - now.east_m, join.north_m - now.north_m);
            let far_m = east.hypot(north);
            // Within 60 degrees of the key's way.
            far_m > SAME_M && (east * way[0] + north * way[1]) > 0.5 * far_m * way[0].hypot(way[1])
        };
        let joins = lay.join_places().into_iter().map(|(_, join)| join).filter(onward);
        let join = joins.min_by(|&one, &other| apart_m(one, now).total_cmp(&apart_m(other, now)))?;
        self.fault_to(index, branch, fault, join)
    }

    /// The run in hand without its faults, its grass as stated; `None` where it has none.
    pub fn sound(&self) -> Option<&workup::Sound> {
        self.run()?.1.volts.as_ref()?.sound.as_ref()
    }
}
