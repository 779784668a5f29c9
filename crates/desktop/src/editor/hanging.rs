//! Branches in the hand: where one hangs slides along the run's line, alone or with all of the branch.

use drawing::Thing;
use plan::{Branch, Edit, Motion, Point};
use words::texts::Power as Text;
use workup::Lay;

use super::faults::set;
use super::hold::{Held, Hold, SNAP_PX};
use super::{Editor, Snapped};

/// Places nearer than this along a line are one, metres.
const SAME_M: f64 = 1e-6;

impl Editor {
    /// A branch in the hand: by where it hangs, or all of it by one of its sides.
    pub(super) fn hanging_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        let (run, branch, whole) = match thing {
            Thing::BranchCorner { run, branch, vertex: 0 } => (run, branch, false),
            Thing::Branch { run, branch } | Thing::BranchSide { run, branch, .. } => (run, branch, true),
            _ => return None,
        };
        let stated = self.plan.runs.get(run)?.branches.get(branch)?.clone();
        let was = *stated.outline.first()?;
        self.take_up(Some(if whole { Thing::Branch { run, branch } } else { thing }));
        self.history.begin_called(plan::Deed::Move);
        Some(Held { what: Hold::Hanging(run, branch, whole, stated), from: at, was, moved: false })
    }

    /// Where a branch would hang that is wanted at a place: the edit, where it does not hang there yet, and what is told.
    pub(super) fn hanging_to(
        &self,
        (run, branch, whole): (usize, usize, bool),
        was: &Branch,
        wanted: Point,
        caught: bool,
    ) -> Option<(Option<Edit>, Snapped)> {
        let lay = self.workup.runs.get(run)?.lay.as_ref()?;
        let at_m = lay.nearest_m(wanted)?.0;
        let post = self.caught_on_line(lay, at_m).filter(|_| caught);
        let from_m = lay.held_m(post.map_or(at_m, |post| post.0));
        let place = match post.and_then(|post| post.1) {
            Some(post) => self.words.say(Text::AtPost, &[("number", &(post + 1).to_string())]),
            None => care::place_on_line(self.words, lay, from_m),
        };
        let reason = self.words.say(Text::HangsAt, &[("number", &(branch + 1).to_string()), ("place", &place)]);
        let snapped = Snapped { at: lay.place_at(from_m)?, reason };
        Some((self.hung(run, branch, whole, was, from_m), snapped))
    }

    /// The edit that hangs a branch at a place of the run's line, metres along it; `None` where it hangs there. All of it
    /// goes along, or its first corner alone.
    fn hung(&self, run: usize, branch: usize, whole: bool, was: &Branch, from_m: f64) -> Option<Edit> {
        let at = self.workup.runs.get(run)?.lay.as_ref()?.place_at(from_m)?;
        let first = *was.outline.first()?;
        let stated = self.plan.runs.get(run)?;
        let here = stated.branches.get(branch)?;
        // What is on its line goes along with its first corner as with any other.
        let mut to = if whole { was.clone() } else { here.clone() };
        to.from_m = from_m;
        if whole {
            let shift = Motion::Shift { east_m: at.east_m - first.east_m, north_m: at.north_m - first.north_m };
            to.outline.iter_mut().for_each(|at| *at = shift.of(*at));
            to.faults.iter_mut().for_each(|fault| fault.at = shift.of(fault.at));
        }
        *to.outline.first_mut()? = at;
        if whole {
            to = workup::taken_along_branch(&self.plan, stated, was, &to);
        }
        if *here == to {
            return None;
        }
        let mut run = stated.clone();
        run.branches[branch] = to;
        Some(set(run))
    }

    /// Hangs a branch at a place that was typed, metres along the run's line; its other corners stay.
    pub(super) fn hang_at(&mut self, run: usize, branch: usize, from_m: f64) {
        let was = self.plan.runs.get(run).and_then(|run| run.branches.get(branch)).cloned();
        let edit = was.and_then(|was| self.hung(run, branch, false, &was, from_m));
        self.one_step(plan::Deed::Move, edit.into_iter().collect());
    }

    /// The edit of an arrow key: where a branch hangs goes a step along the run's line.
    pub(super) fn hanging_nudged(&self, thing: Thing, motion: Motion) -> Option<Edit> {
        let (run, branch, whole) = match thing {
            Thing::BranchCorner { run, branch, vertex: 0 } => (run, branch, false),
            Thing::Branch { run, branch } | Thing::BranchSide { run, branch, .. } => (run, branch, true),
            _ => return None,
        };
        let was = self.plan.runs.get(run)?.branches.get(branch)?.clone();
        let from = self.workup.runs.get(run)?.lay.as_ref()?.place_at(was.from_m)?;
        self.hanging_to((run, branch, whole), &was, motion.of(from), false)?.0
    }

    /// The branch that is picked, or of which a part is.
    pub(super) fn picked_branch(&self) -> Option<(usize, usize)> {
        match self.picked? {
            Thing::Branch { run, branch }
            | Thing::BranchCorner { run, branch, .. }
            | Thing::BranchSide { run, branch, .. } => Some((run, branch)),
            _ => None,
        }
    }

    /// Mirrors a branch over a line through the place where it hangs, which stays.
    pub(super) fn mirror_branch(&mut self, run: usize, branch: usize, bearing_rad: f64) {
        let Some(mut run) = self.plan.runs.get(run).cloned() else { return };
        let Some(stated) = run.branches.get_mut(branch) else { return };
        let Some(&through) = stated.outline.first() else { return };
        let motion = Motion::Mirror { through, bearing_rad };
        let faults = stated.faults.iter_mut().map(|fault| &mut fault.at);
        stated.outline.iter_mut().skip(1).chain(faults).for_each(|at| *at = motion.of(*at));
        self.one_step(plan::Deed::Mirror, vec![set(run)]);
    }

    /// What of a line catches a place along it: a post, with its number, or a corner; the nearest within reach.
    pub(super) fn caught_on_line(&self, lay: &Lay, at_m: f64) -> Option<(f64, Option<usize>)> {
        if self.free {
            return None;
        }
        let off_m = |place_m: f64| {
            let straight_m = (place_m - at_m).abs();
            if lay.closed { straight_m.min(lay.line_m - straight_m) } else { straight_m }
        };
        let posts = lay.posts.iter().enumerate().map(|(number, post)| (post.along_m, Some(number)));
        let corners = lay.vertices.iter().map(|vertex| (vertex.1, None));
        let all = posts.chain(corners).filter(|place| off_m(place.0) <= SNAP_PX / self.view.px_per_m);
        // A corner on a post is told by its post.
        all.min_by(|one, other| {
            (off_m(one.0) + SAME_M * f64::from(u8::from(one.1.is_none())))
                .total_cmp(&(off_m(other.0) + SAME_M * f64::from(u8::from(other.1.is_none()))))
        })
    }
}
