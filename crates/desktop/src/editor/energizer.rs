//! The energizer in the hand: put down, dragged, nudged, taken out; and how far its earth lead reaches meanwhile.

use drawing::{Form, Role, Thing};
use plan::{Deed, Edit, Point, Run};
use words::texts::{Damp as Text, Window};

use super::hold::{Held, Hold};
use super::whole::Whole;
use super::{Editor, Snapped};
use crate::tool::apart_m;

/// What an earth lead reaches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// Where the energizer stands.
    pub from: Point,
    /// How far the lead reaches, metres.
    pub lead_m: f64,
    /// Whether that is assumed.
    pub assumed: bool,
}

impl Editor {
    /// Where a run's energizer stands, or is drawn where that is not stated.
    pub(super) fn energizer_drawn(&self, index: usize) -> Option<Point> {
        let stated = self.plan.runs.get(index)?.energizer_at;
        let thing = Some(Thing::Energizer { run: index });
        stated.or_else(|| {
            let mark = self.drawing.shapes().find(|one| one.thing == thing && one.role == Role::Energizer);
            match mark?.form {
                Form::Mark { at, .. } => Some(at),
                _ => None,
            }
        })
    }

    pub(super) fn energizer_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        let Thing::Energizer { run } = thing else { return None };
        let was = self.energizer_drawn(run)?;
        self.take_up(Some(thing));
        self.history.begin_called(Deed::Move);
        Some(Held { what: Hold::Energizer(run), from: at, was, moved: false })
    }

    /// The edit that puts it there; `None` where it stands there.
    pub(super) fn energizer_to(&self, index: usize, at: Point) -> Option<Edit> {
        let run = self.plan.runs.get(index)?;
        let moved = Run { energizer_at: Some(at), ..run.clone() };
        (run.energizer_at != Some(at)).then(|| Edit::SetRun { run: Box::new(moved) })
    }

    /// How far the one in the hand is from what its leads go to.
    pub(super) fn energizer_at_hand(&self, index: usize) -> Option<Snapped> {
        let run = self.plan.runs.get(index)?;
        let feed = self.words.length(workup::lead::lead(&self.plan, run).apart_m?);
        let stake = self.stakes(index).into_iter().map(|at| apart_m(at, run.energizer_at.unwrap_or(at)));
        let reason = match stake.min_by(f64::total_cmp).filter(|_| !workup::earth::known(run).is_empty()) {
            Some(off_m) => {
                let stake = self.words.length(off_m);
                self.words.say(Text::EnergizerInHand, &[("feed", &feed), ("stake", &stake)])
            }
            None => self.words.say(Text::EnergizerInHandAlone, &[("feed", &feed)]),
        };
        Some(Snapped { at: run.energizer_at?, reason })
    }

    /// The edit after which nothing is said of where it stands.
    pub(super) fn energizer_out(&mut self, index: usize) -> Option<Edit> {
        let Some(run) = self.plan.runs.get(index).filter(|run| run.energizer_at.is_some()) else {
            self.notice = Some(Window::EnergizerNowhere);
            return None;
        };
        Some(Edit::SetRun { run: Box::new(Run { energizer_at: None, ..run.clone() }) })
    }

    /// How far the earth lead reaches, while a stake or the energizer is put down or dragged.
    pub fn earth_reach(&self) -> Option<Reach> {
        let held = self.held.as_ref().map(|held| &held.what);
        let index = match held {
            Some(Hold::EarthStake(run, ..) | Hold::Energizer(run)) => Some(*run),
            Some(Hold::Whole(Whole::EarthStakes(run, _))) => self.plan.runs.iter().position(|one| one.id == run.id),
            _ => self.tool.stakes(),
        }?;
        let run = self.plan.runs.get(index).filter(|run| run.earth_ohm.is_none())?;
        let (from, lead_m) = (workup::lead::energizer(run)?, run.earth_stakes.lead_m());
        let assumed = run.earth_stakes.lead_m.is_none();
        (lead_m.is_finite() && lead_m > 0.0).then_some(Reach { from, lead_m, assumed })
    }
}
