//! What is picked moved and turned by keys: each press is a step of its own, all of them one way.

use drawing::Thing;
use plan::{Deed, Edit, Motion};

use super::shaping::side_of;
use super::whole::Whole;
use super::{Editor, corner_of};

impl Editor {
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
        } else if let Some((shape, side)) = side_of(&self.plan, thing) {
            let edit = self.side_nudged(shape, side, [east_m, north_m]);
            (Deed::SlideSide, edit.into_iter().collect())
        } else if let Some(whole) = Whole::of(&self.plan, thing) {
            (Deed::Move, whole.moved(&self.plan, motion))
        } else {
            (Deed::Move, Vec::new())
        }
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
}
