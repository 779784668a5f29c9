//! What is done to several things at once, as one step: held and dragged, nudged, turned, taken out.

use std::sync::Arc;

use drawing::Thing;
use plan::{Deed, Edit, Motion, Plan, Point, between};
use words::texts::Window as Text;

use super::many::{Many, Slid};
use super::places::{middle, places_of};
use crate::editor::hold::{Held, Hold};
use crate::editor::{Editor, Snapped};

/// What slides along a line of its own, each by itself.
fn slides(thing: Thing) -> bool {
    matches!(thing, Thing::Gate { .. } | Thing::Zone { .. } | Thing::Branch { .. })
}

impl Editor {
    /// Length of one panel of the net of what is picked, else of the run in hand, else of the store's first, metres.
    pub(super) fn panel_of_picked_m(&self) -> Option<f64> {
        let run = self.picked.and_then(Thing::run).unwrap_or(self.run);
        let lay = self.workup.runs.get(run).and_then(|worked| worked.lay.as_ref());
        let kind = lay.and_then(|lay| lay.nets.first()).and_then(|net| self.plan.net_kind(&net.kind));
        let kind = kind.or(self.plan.store.nets.first())?;
        let panels = kind.panels.filter(|&panels| panels > 0)?;
        Some(kind.length_m / f64::from(panels)).filter(|panel_m| panel_m.is_finite())
    }

    /// What is picked and not locked; a sentence where something is.
    pub(in crate::editor) fn unlocked(&mut self) -> Vec<Thing> {
        let mut things = self.chosen();
        let all = things.len();
        things.retain(|&thing| !crate::editor::hiding::is_locked(&self.plan, thing));
        if things.len() < all {
            self.notice = Some(if things.is_empty() { Text::IsLocked } else { Text::SomeAreLocked });
        }
        things
    }

    fn many(&mut self) -> Option<Many> {
        let things = self.unlocked();
        (!things.is_empty()).then(|| Many::new(things, self.plan.clone()))
    }

    /// Takes hold of all that is picked.
    pub(in crate::editor) fn many_to_hold(&mut self, at: Point) -> Option<Held> {
        let mut many = self.many()?;
        let was = many.places().first().copied().unwrap_or(at);
        many.may_be_caught(at);
        let sliding = many.things().iter().filter(|thing| slides(**thing) && !many.goes_along(**thing));
        many.slid = sliding.filter_map(|&thing| self.slid_from(thing)).collect();
        // What goes along catches nothing.
        let mut workup = self.workup.clone();
        for run in many.runs() {
            workup.runs.get_mut(run).into_iter().for_each(|run| run.lay = None);
        }
        self.stand_without(&many.rest(), &workup);
        self.history.begin_called(Deed::Move);
        Some(Held { what: Hold::Many(Arc::new(many), None), from: at, was, moved: false })
    }

    /// Takes hold of all that is picked by its turning ring.
    pub(in crate::editor) fn many_to_turn(&mut self, at: Point) -> Option<Held> {
        let many = self.many()?;
        let about = middle(&many.places())?;
        self.history.begin_called(Deed::Turn);
        Some(Held { what: Hold::Many(Arc::new(many), Some(about)), from: at, was: at, moved: false })
    }

    /// Something that slides, as it is.
    fn slid_from(&self, thing: Thing) -> Option<Slid> {
        match thing {
            Thing::Gate { run, gate } => Some(Slid::Gate(run, gate, self.gate_join(run, gate)?)),
            Thing::Zone { run, branch, zone } => {
                let (stated, lay) = self.on_line(run, branch)?;
                let stated = stated.leakage_zones.get(zone)?;
                Some(Slid::Zone((run, branch, zone), stated.clone(), lay.place_at(stated.from_m)?))
            }
            Thing::Branch { run, branch } => {
                let stated = self.plan.runs.get(run)?.branches.get(branch)?;
                Some(Slid::Branch(run, branch, stated.clone(), *stated.outline.first()?))
            }
            _ => None,
        }
    }

    /// Takes all that is held along with the hand, to where something catches it.
    pub(in crate::editor) fn many_shifted(&mut self, many: &Many, east_m: f64, north_m: f64) {
        let shift = Motion::Shift { east_m, north_m };
        let free: Vec<Point> = many.hands.iter().map(|&at| shift.of(at)).collect();
        let caught = self.guide_whole(None, &free);
        let motion = caught.as_ref().map_or(shift, |(index, snapped)| Motion::Shift {
            east_m: east_m + snapped.at.east_m - free[*index].east_m,
            north_m: north_m + snapped.at.north_m - free[*index].north_m,
        });
        self.snapped = caught.map(|(_, snapped)| snapped);
        self.many_become(&many.moved(motion));
        let told = self.slide_along(many, motion);
        self.snapped = self.snapped.take().or(told);
    }

    /// Turns all that is held about a place.
    pub(in crate::editor) fn many_turned(&mut self, many: &Many, about: Point, clockwise_rad: f64) {
        self.many_become(&many.moved(Motion::Turn { about, clockwise_rad }));
    }

    fn many_become(&mut self, to: &Plan) {
        let edits = between(&self.plan, to);
        if !edits.is_empty() {
            self.went(edits);
        }
    }

    fn went(&mut self, edits: Vec<Edit>) {
        if let Some(held) = &mut self.held {
            held.moved = true;
        }
        self.make_as_said(edits);
    }

    /// What slides follows along its line from where it was, and what the first of it says. The one that is foremost on
    /// the hand's way goes first, so that no gate finds its join taken by another that is about to leave it.
    fn slide_along(&mut self, many: &Many, motion: Motion) -> Option<Snapped> {
        let ahead = |one: &Slid| {
            let at = one.began();
            let to = motion.of(at);
            (to.east_m - at.east_m) * at.east_m + (to.north_m - at.north_m) * at.north_m
        };
        let mut order: Vec<&Slid> = many.slid.iter().collect();
        order.sort_by(|one, other| ahead(other).total_cmp(&ahead(one)));
        for one in order {
            if let Some(edit) = self.follows(one, motion) {
                self.went(vec![edit]);
            }
        }
        match many.slid.first()? {
            &Slid::Gate(run, gate, _) => self.gate_at_hand(run, gate),
            &Slid::Zone((run, branch, zone), ..) => self.zone_at_hand(run, branch, zone),
            Slid::Branch(run, branch, was, hung) => {
                self.hanging_to((*run, *branch, true), was, motion.of(*hung), false).map(|(_, told)| told)
            }
        }
    }

    fn follows(&self, one: &Slid, motion: Motion) -> Option<Edit> {
        match one {
            &Slid::Gate(run, gate, join) => self.gate_to(run, gate, motion.of(join)),
            Slid::Zone(zone, was, began) => self.zone_to(*zone, was, *began, motion.of(*began)),
            Slid::Branch(run, branch, was, hung) => {
                self.hanging_to((*run, *branch, true), was, motion.of(*hung), false)?.0
            }
        }
    }

    /// Moves all of these as one step; what slides along a line does so by itself.
    pub(in crate::editor) fn nudge_many(&mut self, things: Vec<Thing>, east_m: f64, north_m: f64) {
        let motion = Motion::Shift { east_m, north_m };
        let many = Many::new(things.clone(), self.plan.clone());
        self.begin_by_keys(Deed::Move, &things);
        self.make_all(between(&self.plan, &many.carried(motion)));
        for &thing in many.things().iter().filter(|thing| slides(**thing) && !many.goes_along(**thing)) {
            let (_, edits) = self.nudged(thing, east_m, north_m);
            self.make_all(edits);
        }
        self.end_by_keys(things);
    }

    /// Turns all of these about their middle.
    pub(in crate::editor) fn turn_many(&mut self, things: Vec<Thing>, clockwise_deg: f64) {
        let many = Many::new(things, self.plan.clone());
        let Some(about) = middle(&many.places()) else { return };
        let motion = Motion::Turn { about, clockwise_rad: clockwise_deg.to_radians() };
        self.one_step(Deed::Turn, between(&self.plan, &many.moved(motion)));
    }

    /// Takes all of these out.
    pub(in crate::editor) fn remove_many(&mut self, things: Vec<Thing>) {
        let (without, refused) = Many::new(things, self.plan.clone()).without();
        let edits = between(&self.plan, &without);
        // What is left of it has other numbers.
        self.pick(None);
        self.history.begin_called(Deed::Remove);
        self.make_as_said(edits);
        self.history.end();
        self.notice = refused.or(self.notice);
    }

    /// Over which place the turning ring of several things stands.
    pub(in crate::editor) fn ring_of_several(&self) -> Option<Point> {
        let places: Vec<Point> = self.chosen().into_iter().flat_map(|thing| places_of(&self.plan, thing)).collect();
        let about = middle(&places)?;
        let top_m = places.iter().map(|at| at.north_m).fold(about.north_m, f64::max);
        Some(Point::new(about.east_m, top_m))
    }
}
