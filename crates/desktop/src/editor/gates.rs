//! A gate in the hand: it slides along its run's line and lands on the joins that no other gate was set at; a key takes it
//! to the next of them on that side.

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
        let free = self.free_joins(run, gate)?;
        let join = nearest(free, wanted)?;
        if self.gate_join(run, gate).is_some_and(|now| apart_m(now, join) <= SAME_JOIN_M) {
            return None;
        }
        self.gate_at(run, gate, join)
    }

    /// The edit that takes a gate to the next join that way.
    pub(super) fn gate_nudged(&self, run: usize, gate: usize, east_m: f64, north_m: f64) -> Option<Edit> {
        let now = self.gate_join(run, gate)?;
        let onward = |join: &Point| {
            let (east, north) = (join.east_m - now.east_m, join.north_m - now.north_m);
            let far_m = east.hypot(north);
            // Within 60 degrees of the key's way.
            far_m > SAME_JOIN_M && (east * east_m + north * north_m) > 0.5 * far_m * east_m.hypot(north_m)
        };
        let join = nearest(self.free_joins(run, gate)?.into_iter().filter(onward).collect(), now)?;
        self.gate_at(run, gate, join)
    }

    fn gate_at(&self, run: usize, gate: usize, join: Point) -> Option<Edit> {
        let mut run = self.plan.runs.get(run)?.clone();
        run.gates.get_mut(gate)?.at = Some(join);
        Some(Edit::SetRun { run: Box::new(run) })
    }

    /// The joins of a run's line that no other gate was set at.
    fn free_joins(&self, run: usize, gate: usize) -> Option<Vec<Point>> {
        let (stated, worked) = self.plan.runs.get(run).zip(self.workup.runs.get(run))?;
        let others = stated.gates.iter().zip(&worked.gates).enumerate();
        // One that chose its join itself gives way.
        let set: Vec<Point> = others
            .filter(|(other, (stated, _))| *other != gate && stated.at.is_some())
            .filter_map(|(_, (_, worked))| worked.opening.as_ref().map(|opening| opening.join))
            .collect();
        let joins = worked.lay.as_ref()?.join_places().into_iter().map(|(_, join)| join);
        Some(joins.filter(|&join| set.iter().all(|&taken| apart_m(taken, join) > SAME_JOIN_M)).collect())
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
    pub(super) fn gate_join(&self, run: usize, gate: usize) -> Option<Point> {
        self.workup.runs.get(run)?.gates.get(gate)?.opening.as_ref().map(|opening| opening.join)
    }
}

fn nearest(places: Vec<Point>, to: Point) -> Option<Point> {
    places.into_iter().min_by(|&one, &other| apart_m(one, to).total_cmp(&apart_m(other, to)))
}
