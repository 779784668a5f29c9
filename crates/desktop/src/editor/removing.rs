//! What is picked taken out, or a sentence that says why it stays.

use drawing::Thing;
use plan::{Deed, Edit, Run, Shape};
use words::texts::Window as Text;

use super::chosen::{coop_at, coop_out, fewest, in_use};
use super::{BracingMessage, Editor, corner_of};

impl Editor {
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
            // A brace that only is advised stands nowhere yet.
            Some(Thing::Brace { corner, .. }) => {
                self.bracing_said(BracingMessage::TakeBack(corner));
                None
            }
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
