//! Things in the hand: what can be taken hold of, and what is then held. A drag is one undo step.

use std::sync::Arc;

use drawing::Thing;
use geometry::guides::Edge;
use plan::{Branch, Deed, Edit, LeakageZone, Plan, Point};
use words::texts::Window as Text;
use workup::shaping::CornerTyped;

use super::chosen::Many;
use super::cornering::Grip;
use super::shaping::{Pivot, Slide};
use super::snap::point;
use super::whole::Whole;
use super::{Editor, corner_of};

/// How near a post or a corner catches what is dragged, pixels.
pub(super) const SNAP_PX: f64 = 9.0;
/// How near its middle a side must be taken hold of to get a corner there, pixels.
const MIDDLE_PX: f64 = 14.0;
/// Something that is being dragged.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Held {
    pub(super) what: Hold,
    /// Where it was taken hold of.
    pub(super) from: Point,
    /// Where it was.
    pub(super) was: Point,
    /// Whether anything came of it yet.
    pub(super) moved: bool,
}

#[derive(Clone, Debug, PartialEq)]
pub(super) enum Hold {
    Corner(Grip),
    /// A side that slides parallel to itself.
    Slide(Slide),
    /// The place that a turn leaves where it is, as it was chosen before.
    Pivot(Option<(Thing, Pivot)>),
    Whole(Whole),
    /// Several things; by their turning ring, about their middle.
    Many(Arc<Many>, Option<Point>),
    /// A whole by its turning ring, about its middle.
    Turn(Whole, Point),
    /// The coop's door, about the coop's middle, as it was.
    Door(Box<plan::Coop>),
    /// A gate of a run, from join to join.
    Gate(usize, usize),
    /// A fault of a run or of one of its branches, along the netting.
    Fault(usize, Option<usize>, usize),
    /// An earth stake of a run, and where all of them stood.
    EarthStake(usize, usize, Vec<Point>),
    /// The energizer of a run, where it was or was drawn.
    Energizer(usize),
    /// A stretch of grass of a run or of one of its branches, along the line, as it was.
    Zone(usize, Option<usize>, usize, LeakageZone),
    /// An end of such a stretch; whether it is the last.
    ZoneEnd(usize, Option<usize>, usize, bool),
    /// A branch of a run, along its line, as it was; whether all of it goes along.
    Hanging(usize, usize, bool, Branch),
}

impl Hold {
    /// Whether posts and corners catch it.
    pub(super) fn is_catchable(&self) -> bool {
        matches!(
            self,
            Self::Corner(_)
                | Self::Slide(_)
                | Self::Pivot(_)
                | Self::Whole(_)
                | Self::Many(_, None)
                | Self::ZoneEnd(..)
                | Self::Hanging(..)
        )
    }
}

impl Editor {
    pub(super) fn grab(&mut self, thing: Thing, at: Point) {
        self.hold_chains();
        self.take_hold(thing, at);
        if self.held.is_none() {
            self.unhold();
        }
    }

    /// From now on the nets of a line that is led keep their order and their start.
    pub(super) fn hold_chains(&mut self) {
        self.known.hold(&self.plan, &self.workup);
        self.held_from = Some(Box::new(self.plan.clone()));
    }

    /// Nothing is in the hand any more; what was.
    pub(super) fn unhold(&mut self) -> Option<Held> {
        self.known.let_go();
        self.held_from = None;
        self.held.take()
    }

    fn take_hold(&mut self, thing: Thing, at: Point) {
        if self.is_one_of_several(thing) {
            self.held = self.many_to_hold(at);
            return;
        }
        if super::hiding::is_locked(&self.plan, thing) {
            self.take_up(Some(thing.whole()));
            self.notice = Some(Text::IsLocked);
            return;
        }
        self.history.begin();
        self.unguided();
        let thing = self.side_of_post(thing, at);
        let held = self.corner_to_hold(thing, at).or_else(|| self.gate_to_hold(thing, at));
        let held = held.or_else(|| self.fault_to_hold(thing, at)).or_else(|| self.zone_to_hold(thing, at));
        let held = held.or_else(|| self.door_to_hold(thing, at));
        let held = held.or_else(|| self.hanging_to_hold(thing, at)).or_else(|| self.stake_to_hold(thing, at));
        let held = held.or_else(|| self.energizer_to_hold(thing, at));
        self.held = held.or_else(|| match self.slide_to_hold(thing, at) {
            (None, false) => self.whole_to_hold(thing, at),
            (slide, _) => slide,
        });
        if self.held.is_none() {
            self.history.end();
        }
    }

    /// Takes hold of what is picked by its turning ring.
    pub(super) fn grab_turn(&mut self, at: Point) {
        self.hold_chains();
        self.take_ring(at);
        if self.held.is_none() {
            self.unhold();
        }
    }

    fn take_ring(&mut self, at: Point) {
        if self.has_several() {
            self.held = self.many_to_turn(at);
            return;
        }
        let Some(&thing) = self.unlocked().first() else { return };
        let whole = Whole::of(&self.plan, thing);
        if let Some((whole, pivot)) = whole.zip(self.turns_about()) {
            self.history.begin_called(Deed::Turn);
            self.held = Some(Held { what: Hold::Turn(whole, pivot), from: at, was: at, moved: false });
        }
    }

    fn corner_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        let (thing, moved) = match corner_of_side(&self.plan, thing, at) {
            // A side that is taken hold of by its middle gets a corner there; else all of it moves.
            Some((corner, side_end)) => {
                let (shape, _) = corner_of(&self.plan, corner)?;
                let outline = self.plan.outline(&shape)?;
                let (one, other) = (outline.get(side_end - 1)?, &outline[side_end % outline.len()]);
                let middle =
                    Point::new(f64::midpoint(one.east_m, other.east_m), f64::midpoint(one.north_m, other.north_m));
                if crate::tool::apart_m(middle, at) * self.view.px_per_m > MIDDLE_PX {
                    return None;
                }
                self.history.call(Deed::InsertCorner);
                self.make(Edit::InsertCorner { shape, corner: side_end, at });
                (corner, true)
            }
            None => (thing, false),
        };
        if !moved {
            self.history.begin_called(Deed::MoveCorner);
        }
        let (shape, corner) = corner_of(&self.plan, thing)?;
        let was = *self.plan.outline(&shape)?.get(corner)?;
        self.take_up(Some(thing));
        let grip = Grip { shape, corner, fresh: moved, hand: was, typed: CornerTyped::default() };
        Some(Held { what: Hold::Corner(grip), from: at, was, moved })
    }

    fn whole_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        // The first lesson is to move all of it, by whatever is taken hold of.
        let lesson = self.lesson == super::Lesson::Drag && matches!(thing, Thing::Coop { .. } | Thing::RunSide { .. });
        let thing = if lesson { Thing::Run { run: self.run } } else { thing };
        let whole = Whole::of(&self.plan, thing)?;
        let was = whole.pivot().or(whole.places().first().copied())?;
        self.take_up(Some(thing.whole()));
        self.history.begin_called(Deed::Move);
        Some(Held { what: Hold::Whole(whole), from: at, was, moved: false })
    }
}

/// The corner that a side would get, and before which corner it is put in; of a path that is taken hold of as a whole it
/// is the side at hand.
fn corner_of_side(plan: &Plan, thing: Thing, at: Point) -> Option<(Thing, usize)> {
    let after = |path: &[Point]| {
        let off_m = |pair: &[Point]| {
            let side = Edge { from: point(pair[0]), to: point(pair[1]) };
            side.nearest(point(at)).distance_m(point(at))
        };
        let sides = path.windows(2).map(off_m).enumerate();
        sides.min_by(|one, other| one.1.total_cmp(&other.1)).map(|(side, _)| side + 1)
    };
    match thing {
        Thing::Wall { wall } => {
            let vertex = after(&plan.walls.get(wall)?.path)?;
            Some((Thing::WallCorner { wall, vertex }, vertex))
        }
        Thing::Hazard { hazard } => {
            let vertex = after(&plan.ground.hazards.get(hazard)?.path)?;
            Some((Thing::HazardCorner { hazard, vertex }, vertex))
        }
        Thing::RunSide { run, side } => Some((Thing::RunCorner { run, vertex: side + 1 }, side + 1)),
        Thing::BoundarySide { side } => Some((Thing::BoundaryCorner { vertex: side + 1 }, side + 1)),
        Thing::BranchSide { run, branch, side } => {
            Some((Thing::BranchCorner { run, branch, vertex: side + 1 }, side + 1))
        }
        Thing::ShadeSide { shade, side } => Some((Thing::ShadeCorner { shade, vertex: side + 1 }, side + 1)),
        Thing::DampSide { damp, side } => Some((Thing::DampCorner { damp, vertex: side + 1 }, side + 1)),
        Thing::KeepOutSide { keep_out, side } => Some((Thing::KeepOutCorner { keep_out, vertex: side + 1 }, side + 1)),
        _ => None,
    }
}
