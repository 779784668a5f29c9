//! A gate in the hand: it slides along its run's line and lands on the joins that no other gate was set at.

use drawing::Thing;
use plan::{Deed, Edit, Point};

use super::hold::{Held, Hold};
use super::{Editor, Snapped};
use crate::tool::apart_m;

/// Places nearer than this are one join, metres.
const SAME_JOIN_M: f64 = 0.01;

impl Editor {
    pub(super) fn gate_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        let Thing::Gate { run, gate } = thing else { return None };
        let was = self.gate_join(run, gate)?;
        self.take_up(Some(thing));
        self.history.begin_called(Deed::Move);
        self.snapped = self.gate_at_hand(run, gate);
        Some(Held { what: Hold::Gate(run, gate), from: at, was, moved: false })
    }

    /// The edit that sets a gate at the join nearest to a place; `None` where it stands there.
    pub(super) fn gate_to(&self, run: usize, gate: usize, wanted: Point) -> Option<Edit> {
        let (stated, worked) = self.plan.runs.get(run).zip(self.workup.runs.get(run))?;
        let others = stated.gates.iter().zip(&worked.gates).enumerate();
        // One that chose its join itself gives way.
        let set: Vec<Point> = others
            .filter(|(other, (stated, _))| *other != gate && stated.at.is_some())
            .filter_map(|(_, (_, worked))| worked.opening.as_ref().map(|opening| opening.join))
            .collect();
        let free = worked.lay.as_ref()?.join_places().into_iter().map(|(_, join)| join);
        let free = free.filter(|&join| set.iter().all(|&taken| apart_m(taken, join) > SAME_JOIN_M));
        let join = free.min_by(|&one, &other| apart_m(one, wanted).total_cmp(&apart_m(other, wanted)))?;
        if self.gate_join(run, gate).is_some_and(|now| apart_m(now, join) <= SAME_JOIN_M) {
            return None;
        }
        let mut run = stated.clone();
        run.gates.get_mut(gate)?.at = Some(join);
        Some(Edit::SetRun { run: Box::new(run) })
    }

    /// Where a gate in the hand opens, and its figures in words.
    pub(super) fn gate_at_hand(&self, run: usize, gate: usize) -> Option<Snapped> {
        let worked = self.workup.runs.get(run)?;
        let opening = worked.gates.get(gate)?.opening.as_ref()?;
        let opens = care::gate_said::opens(opening, worked.lay.as_ref()?, self.words);
        let reason = format!("{opens}; {}", care::gate_said::pulled(opening, self.words));
        Some(Snapped { at: opening.join, reason })
    }

    /// The join that a gate opens.
    fn gate_join(&self, run: usize, gate: usize) -> Option<Point> {
        self.workup.runs.get(run)?.gates.get(gate)?.opening.as_ref().map(|opening| opening.join)
    }
}
