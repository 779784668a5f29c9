//! Earth stakes in the hand: each is dragged, nudged and taken out by itself, and a brace's stake takes one in. What is
//! done to one of a row states where all of them stand.

use drawing::{Form, Role, Thing};
use plan::{BraceKind, Deed, EarthStakes, Edit, Motion, Point, Run};
use words::texts::{Earth as Text, Window};
use workup::earth;

use super::hold::{Held, Hold, SNAP_PX};
use super::whole::Whole;
use super::{Editor, Snapped};
use crate::tool::apart_m;

/// The run with its stakes at those places; where none is left, as if nothing had been said of them.
pub(crate) fn placed(run: &Run, places: Vec<Point>) -> Run {
    let earth_stakes = EarthStakes { count: None, at: None, places, ..run.earth_stakes.clone() };
    Run { earth_stakes, ..run.clone() }
}

fn set(run: Run) -> Edit {
    Edit::SetRun { run: Box::new(run) }
}

impl Editor {
    /// Where a run's earth stakes stand, or are drawn where that is not stated.
    pub(super) fn stakes(&self, index: usize) -> Vec<Point> {
        let Some(run) = self.plan.runs.get(index) else { return Vec::new() };
        let known = earth::places(run);
        if !known.is_empty() {
            return known;
        }
        let mark = |thing: Thing, role: Role| {
            let shape = self.drawing.shapes().find(|shape| shape.thing == Some(thing) && shape.role == role);
            shape.and_then(|shape| if let Form::Mark { at, .. } = shape.form { Some(at) } else { None })
        };
        let first = mark(Thing::EarthStake { run: index, stake: 0 }, Role::EarthStake);
        let feed = mark(Thing::Feed { run: index }, Role::Feed);
        first.map(|first| earth::row(run, first, feed)).unwrap_or_default()
    }

    pub(super) fn stake_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        let (what, was) = match thing {
            Thing::EarthStake { run, stake } => {
                let stand = self.stakes(run);
                let was = *stand.get(stake)?;
                (Hold::EarthStake(run, stake, stand), was)
            }
            // All of a row that is nowhere yet: where it is drawn it is taken hold of.
            Thing::EarthStakes { run } => {
                let stated = self.plan.runs.get(run).filter(|stated| earth::known(stated).is_empty())?;
                let was = *self.stakes(run).first()?;
                let mut stated = stated.clone();
                stated.earth_stakes.at = Some(was);
                (Hold::Whole(Whole::EarthStakes(Box::new(stated), vec![was])), was)
            }
            _ => return None,
        };
        self.take_up(Some(thing));
        self.history.begin_called(Deed::Move);
        Some(Held { what, from: at, was, moved: false })
    }

    /// The edit that takes a stake to a place, or into the brace's stake that is in reach; `None` where it stands there.
    pub(super) fn stake_to(&self, index: usize, stake: usize, stand: &[Point], wanted: Point) -> Option<Edit> {
        let run = self.plan.runs.get(index)?;
        let mut places = stand.to_vec();
        let place = places.get_mut(stake)?;
        let others = stand.iter().enumerate().filter(|(other, _)| *other != stake).map(|(_, at)| *at);
        *place = self.brace_stake(index, others, wanted).unwrap_or(wanted);
        (run.earth_stakes.places != places).then(|| set(placed(run, places)))
    }

    /// The stake of a guy of that run which is in reach of a place; `None` where nothing is to be caught, or one of the
    /// run's other earth stakes is that stake already.
    fn brace_stake(&self, index: usize, mut others: impl Iterator<Item = Point>, at: Point) -> Option<Point> {
        if self.free || self.plan.runs.get(index)?.hidden {
            return None;
        }
        let lay = self.workup.runs.get(index)?.lay.as_ref()?;
        let guyed = lay.corners.iter().filter(|corner| corner.needs_brace() && corner.kit.kind == BraceKind::Guy);
        let stakes = guyed.map(|corner| corner.stake.at).filter(|at| at.east_m.is_finite() && at.north_m.is_finite());
        let near = stakes.min_by(|&one, &other| apart_m(one, at).total_cmp(&apart_m(other, at)))?;
        let taken = others.any(|other| apart_m(near, other) <= earth::SAME_STAKE_M);
        (!taken && apart_m(near, at) * self.view.px_per_m <= SNAP_PX).then_some(near)
    }

    /// How far off what the stake in the hand is, in words.
    pub(super) fn stake_at_hand(&self, index: usize, stake: usize) -> Option<Snapped> {
        let all = earth::stakes(&self.plan, &self.workup, index);
        let one = all.get(stake)?;
        Some(Snapped {
            at: one.at,
            reason: care::earths::said_in_hand(&self.plan, &self.workup, index, one, self.words),
        })
    }

    /// What a brace's stake says that takes a new earth stake in.
    pub(super) fn taken_in(&self, index: usize, at: Point) -> Option<Snapped> {
        let stand = earth::known(self.plan.runs.get(index)?);
        let at = self.brace_stake(index, stand.into_iter(), at)?;
        Some(Snapped { at, reason: self.words.text(Text::OnBrace).to_owned() })
    }

    /// The edit of an arrow key.
    pub(super) fn stake_nudged(&self, index: usize, stake: usize, motion: Motion) -> Option<Edit> {
        let at = *self.stakes(index).get(stake)?;
        self.stake_put(index, stake, motion.of(at))
    }

    /// The edit that puts a stake there; where all of them stand is then stated.
    pub(super) fn stake_put(&self, index: usize, stake: usize, to: Point) -> Option<Edit> {
        let mut places = self.stakes(index);
        *places.get_mut(stake)? = to;
        Some(set(placed(self.plan.runs.get(index)?, places)))
    }

    /// The edit that takes a stake out; the last one is said to stand nowhere.
    pub(super) fn stake_out(&mut self, index: usize, stake: usize) -> Option<Edit> {
        let run = self.plan.runs.get(index)?;
        let mut places = self.stakes(index);
        if places.len() < 2 && earth::known(run).is_empty() {
            self.notice = Some(Window::LastStake);
            return None;
        }
        if stake >= places.len() {
            return None;
        }
        places.remove(stake);
        Some(set(placed(run, places)))
    }

    /// Whether a run has that stake, as far as it can be picked.
    pub(super) fn has_stake(&self, run: usize, stake: usize) -> bool {
        self.plan.runs.get(run).is_some_and(|run| stake < run.earth_stakes.count() as usize)
    }
}
