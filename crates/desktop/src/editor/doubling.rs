//! A second one of what is picked.

use drawing::Thing;
use plan::{Deed, Edit, Point, Run};
use words::texts::Window as Text;

use super::Editor;
use crate::tool::free_run_id;

/// How far off a second one of something is put, metres: one step east and south, so that both are seen.
const BESIDE_M: f64 = 3.0;

impl Editor {
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
}
