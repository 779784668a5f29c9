//! The hand that draws, and the key that lets go.

use drawing::Thing;
use plan::Edit;
use words::texts::Window as Text;

use super::hold::Hold;
use super::{Editor, ShapesMessage};
use crate::tool::{Drawn, Hand, Tool};

impl Editor {
    pub(super) fn hand(&mut self, hand: Hand) {
        if let Tool::Try(trial) = self.tool {
            return self.try_out(trial, hand);
        }
        if hand == Hand::Back {
            self.lifts();
        }
        let staked = self.tool.stakes();
        let drops = matches!(self.tool, Tool::Outline { of: Drawn::Drop(_), .. });
        let unit = self.tool.energizer();
        let feeds = matches!(self.tool, Tool::Outline { of: Drawn::Feed(_), .. });
        if self.is_one_place(hand) {
            return;
        }
        let hand = if self.tool.draws(Drawn::Run) { self.caught_unrolling(hand) } else { self.caught(hand) };
        let (tool, edit) = match self.ends_on_wall(hand) {
            Some(edit) => (Tool::Pick, Some(edit)),
            None => std::mem::take(&mut self.tool).step(hand, &self.plan),
        };
        self.tool = tool;
        if self.tool == Tool::Pick {
            self.snapped = None;
        }
        if let Some(mut edit) = edit {
            let thing = match &mut edit {
                Edit::AddRun { index, run } => {
                    run.nets = run.nets.take().or_else(|| self.unrolled_nets(&run.outline));
                    let number = (*index + 1).to_string();
                    run.name = self.plan.free_run_name(&self.words.say(Text::RunNumber, &[("number", &number)]));
                    Thing::Run { run: *index }
                }
                Edit::SetKeepOuts { keep_outs } => Thing::KeepOut { keep_out: keep_outs.len().saturating_sub(1) },
                Edit::SetHazards { hazards } => Thing::Hazard { hazard: hazards.len().saturating_sub(1) },
                Edit::SetHeights { heights } => Thing::Height { height: heights.len().saturating_sub(1) },
                Edit::SetWalls { walls } => Thing::Wall { wall: walls.len().saturating_sub(1) },
                Edit::SetShade { shade } => Thing::Shade { shade: shade.len().saturating_sub(1) },
                Edit::SetDamp { damp } => Thing::Damp { damp: damp.len().saturating_sub(1) },
                Edit::SetLabels { labels } => {
                    if let Some(label) = labels.last_mut() {
                        self.words.text(words::texts::Underlay::NewLabel).clone_into(&mut label.text);
                    }
                    Thing::Label { label: labels.len().saturating_sub(1) }
                }
                Edit::SetRun { run } if drops || feeds => {
                    let index = self.plan.runs.iter().position(|other| other.id == run.id).unwrap_or(self.run);
                    if feeds { Thing::Feed { run: index } } else { Thing::Drop { run: index } }
                }
                Edit::SetTapePoints { points } => Thing::TapePoint { point: points.len().saturating_sub(1) },
                Edit::SetCoop { .. } => Thing::Coop { coop: 0 },
                Edit::SetOtherCoops { .. } => Thing::Coop { coop: self.plan.coops().count() },
                Edit::SetGateway { .. } => Thing::Gateway,
                Edit::SetRun { .. } if unit.is_some() => Thing::Energizer { run: unit.unwrap_or(self.run) },
                Edit::SetRun { run } if staked.is_some() => {
                    let last = run.earth_stakes.places.len().max(1) - 1;
                    Thing::EarthStake { run: staked.unwrap_or(self.run), stake: last }
                }
                Edit::SetRun { run } => {
                    let index = self.plan.runs.iter().position(|other| other.id == run.id).unwrap_or(self.run);
                    // A branch that was drawn hangs where the line is nearest along the ground.
                    let branch = run.branches.len().checked_sub(1);
                    let lay = self.workup.runs.get(index).and_then(|worked| worked.lay.as_ref());
                    if let (Some(branch), Some(lay)) = (branch, lay)
                        && let Some((from_m, _)) =
                            run.branches[branch].outline.first().and_then(|&at| lay.nearest_m(at))
                    {
                        run.branches[branch].from_m = from_m;
                    }
                    branch.map_or(Thing::Run { run: index }, |branch| Thing::Branch { run: index, branch })
                }
                _ => Thing::Boundary,
            };
            self.make(edit);
            self.pick(Some(thing));
        }
    }

    /// A hand that draws is caught by posts and corners, as one that drags is.
    pub(super) fn caught(&mut self, hand: Hand) -> Hand {
        let at = match hand {
            // A picture's points are on no post, and an energizer stands by itself.
            _ if self.tool.draws(Drawn::Known) || self.tool.energizer().is_some() => {
                self.snapped = None;
                return hand;
            }
            // What is typed leads, and nothing catches it.
            Hand::Move(_) | Hand::Click { .. } if self.tool.is_typed() => {
                self.snapped = None;
                return hand;
            }
            Hand::Move(at) | Hand::Click { at, .. } => at,
            Hand::Type(_)
            | Hand::Set
            | Hand::Close
            | Hand::CloseHere
            | Hand::Off
            | Hand::Back
            | Hand::Again
            | Hand::Leave => {
                self.snapped = None;
                return hand;
            }
        };
        self.snapped = match self.tool.stakes() {
            Some(run) => self.taken_in(run, at),
            None => self.guide_next(at),
        };
        let at = self.snapped.as_ref().map_or(at, |snapped| snapped.at);
        match hand {
            Hand::Click { reach_m, .. } => Hand::Click { at, reach_m },
            _ => Hand::Move(at),
        }
    }

    pub(super) fn escape(&mut self) {
        if self.question.as_ref().is_some_and(super::Question::stands_again) {
            // What was taken back a moment ago is not thrown away with it.
            self.redo_step();
        } else if self.question.is_some() {
            self.leave_question();
        } else if let Some(held) = self.unhold() {
            if let Hold::Pivot(was) = held.what {
                self.pivot = was;
            }
            self.snapped = None;
            if self.history.cancel(&mut self.plan) {
                self.changed();
            }
        } else if self.picks_by_rectangle() {
            self.chosen.by_rectangle = false;
        } else if self.tool == Tool::Pick && self.picked.is_none() && self.chosen.listing {
            self.chosen.listing = false;
        } else if self.tool == Tool::Pick && self.picked.is_none() && self.shapes.is_open() {
            self.shapes_said(ShapesMessage::Open(false));
        } else if self.tool == Tool::Pick {
            self.pick(None);
        } else {
            self.hand(Hand::Leave);
        }
    }
}
