//! What is one place is put where it is typed to stand.

use drawing::Thing;
use plan::{Coop, Edit, Gateway, Point, Run};

use super::chosen::coop_at;
use super::hiding::is_locked;
use super::{Editor, corner_of};
use crate::tool::Tool;

impl Editor {
    /// The picked corner or thing of one place whose coordinates can be typed on the map, and where it stands: nothing is
    /// in the hand, and it is not locked.
    pub(crate) fn place_to_type(&self) -> Option<(Thing, Point)> {
        let thing = self.picked.filter(|_| self.tool == Tool::Pick && self.held.is_none() && !self.has_several())?;
        if self.question.is_some() || is_locked(&self.plan, thing) {
            return None;
        }
        let plan = &self.plan;
        let at = match thing {
            Thing::Gateway => plan.ground.gateway.as_ref()?.at,
            Thing::Height { height } => plan.heights.get(height)?.at,
            Thing::Label { label } => plan.labels.get(label)?.at,
            Thing::Drop { run } => plan.runs.get(run)?.drop_at?,
            Thing::Feed { run } => plan.runs.get(run)?.feed_at?,
            Thing::Energizer { run } => workup::lead::energizer(plan.runs.get(run)?)?,
            Thing::TapePoint { point } => plan.tape_points.get(point)?.at,
            Thing::Coop { coop } => coop_at(plan, coop)?.at,
            Thing::EarthStake { run, stake } => *self.stakes(run).get(stake)?,
            thing => {
                let (shape, corner) = corner_of(plan, thing)?;
                *plan.outline(&shape)?.get(corner)?
            }
        };
        Some((thing, at))
    }

    /// Puts a thing that is one place there, to the bit; what is no such thing stays.
    pub(super) fn put_at(&mut self, thing: Thing, to: Point) {
        if let Some(edit) = self.edit_to(thing, to) {
            self.make(edit);
        }
    }

    fn edit_to(&self, thing: Thing, to: Point) -> Option<Edit> {
        let plan = &self.plan;
        let run = |run: usize, change: &dyn Fn(&mut Run)| {
            let mut run = plan.runs.get(run)?.clone();
            change(&mut run);
            Some(Edit::SetRun { run: Box::new(run) })
        };
        match thing {
            Thing::Gateway => {
                let gateway = plan.ground.gateway.clone()?;
                Some(Edit::SetGateway { gateway: Some(Gateway { at: to, ..gateway }) })
            }
            Thing::Height { height } => {
                let mut heights = plan.heights.clone();
                heights.get_mut(height)?.at = to;
                Some(Edit::SetHeights { heights })
            }
            Thing::Label { label } => {
                let mut labels = plan.labels.clone();
                labels.get_mut(label)?.at = to;
                Some(Edit::SetLabels { labels })
            }
            Thing::TapePoint { point } => {
                let mut points = plan.tape_points.clone();
                points.get_mut(point)?.at = to;
                Some(Edit::SetTapePoints { points })
            }
            Thing::Coop { coop } => {
                let moved = Coop { at: to, ..coop_at(plan, coop)?.clone() };
                let Some(other) = coop.checked_sub(usize::from(plan.coop.is_some())) else {
                    return Some(Edit::SetCoop { coop: Some(moved) });
                };
                let mut other_coops = plan.other_coops.clone();
                *other_coops.get_mut(other)? = moved;
                Some(Edit::SetOtherCoops { other_coops })
            }
            Thing::Energizer { run: index } => run(index, &|run| run.energizer_at = Some(to)),
            Thing::Drop { run: index } => run(index, &|run| run.drop_at = Some(to)),
            Thing::Feed { run: index } => run(index, &|run| run.feed_at = Some(to)),
            Thing::EarthStake { run, stake } => self.stake_put(run, stake, to),
            thing => {
                let (shape, corner) = corner_of(plan, thing)?;
                Some(Edit::MoveCorner { shape, corner, to })
            }
        }
    }
}
