//! Corners in the hand: taken hold of, dragged, nudged, taken out. A drag is one undo step.

use drawing::Thing;
use plan::{Edit, Point, Shape};
use words::texts::Window as Text;

use super::{Editor, corner_of};
use crate::tool::FEWEST_CORNERS;

/// A corner that is being dragged.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Held {
    shape: Shape,
    corner: usize,
    /// From the pointer to the corner, metres east and north, so that it does not jump into the pointer.
    offset_m: (f64, f64),
    /// Where it was.
    pub(super) was: Point,
    /// Whether anything came of it yet.
    pub(super) moved: bool,
}

impl Editor {
    pub(super) fn grab(&mut self, thing: Thing, at: Point) {
        self.history.begin();
        self.held = self.corner_to_hold(thing, at);
        if self.held.is_none() {
            self.history.end();
        }
    }

    fn corner_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        let (thing, moved) = match corner_of_side(thing) {
            // A side that is taken hold of gets a corner there.
            Some((corner, side_end)) => {
                let (shape, _) = corner_of(&self.plan, corner)?;
                self.make(Edit::InsertCorner { shape, corner: side_end, at });
                (corner, true)
            }
            None => (thing, false),
        };
        let (shape, corner) = corner_of(&self.plan, thing)?;
        let was = *self.plan.outline(&shape)?.get(corner)?;
        self.take_up(Some(thing));
        let offset_m = (was.east_m - at.east_m, was.north_m - at.north_m);
        Some(Held { shape, corner, offset_m, was, moved })
    }

    pub(super) fn drag(&mut self, to: Point) {
        let Some(held) = &mut self.held else { return };
        let to = Point::new(to.east_m + held.offset_m.0, to.north_m + held.offset_m.1);
        if self.plan.outline(&held.shape).and_then(|outline| outline.get(held.corner)) == Some(&to) {
            return;
        }
        held.moved = true;
        let edit = Edit::MoveCorner { shape: held.shape.clone(), corner: held.corner, to };
        self.make(edit);
    }

    pub(super) fn let_go(&mut self) {
        self.held = None;
        self.history.end();
    }

    pub(super) fn nudge(&mut self, east_m: f64, north_m: f64) {
        let Some((shape, corner)) = self.picked.and_then(|thing| corner_of(&self.plan, thing)) else { return };
        let Some(&at) = self.plan.outline(&shape).and_then(|outline| outline.get(corner)) else { return };
        let to = Point::new(at.east_m + east_m, at.north_m + north_m);
        self.make(Edit::MoveCorner { shape, corner, to });
    }

    pub(super) fn remove(&mut self) {
        match self.picked {
            Some(Thing::Run { run }) => {
                if let Some(id) = self.plan.runs.get(run).map(|run| run.id.clone()) {
                    self.make(Edit::RemoveRun { id });
                }
            }
            Some(thing) => self.remove_corner(thing),
            None => {}
        }
    }

    fn remove_corner(&mut self, thing: Thing) {
        let Some((shape, corner)) = corner_of(&self.plan, thing) else { return };
        if self.plan.outline(&shape).is_some_and(|outline| outline.len() > FEWEST_CORNERS) {
            self.make(Edit::RemoveCorner { shape, corner });
            self.picked = None;
        } else {
            self.notice = Some(Text::FewestCorners);
        }
    }

    /// Whether the plan has that thing, as far as it can be picked.
    pub(super) fn exists(&self, thing: Thing) -> bool {
        let plan = &self.plan;
        match thing {
            Thing::RunCorner { run, vertex } | Thing::RunSide { run, side: vertex } => {
                plan.runs.get(run).is_some_and(|run| vertex < run.outline.len())
            }
            Thing::Run { run } | Thing::Feed { run } | Thing::Energizer { run } | Thing::EarthStakes { run } => {
                run < plan.runs.len()
            }
            Thing::BoundaryCorner { vertex } | Thing::BoundarySide { side: vertex } => {
                vertex < plan.ground.boundary.len()
            }
            Thing::Boundary => !plan.ground.boundary.is_empty(),
            Thing::KeepOutCorner { keep_out, vertex } | Thing::KeepOutSide { keep_out, side: vertex } => {
                plan.ground.keep_outs.get(keep_out).is_some_and(|keep_out| vertex < keep_out.outline.len())
            }
            Thing::KeepOut { keep_out } => keep_out < plan.ground.keep_outs.len(),
            Thing::HazardCorner { hazard, .. } | Thing::Hazard { hazard } => hazard < plan.ground.hazards.len(),
            Thing::Coop { .. } => plan.coop.is_some() || !plan.other_coops.is_empty(),
            // Posts and findings are counted anew with every change.
            Thing::Post { .. } | Thing::Finding { .. } => false,
        }
    }
}

/// The corner that a side would get, and before which corner it is put in.
fn corner_of_side(thing: Thing) -> Option<(Thing, usize)> {
    match thing {
        Thing::RunSide { run, side } => Some((Thing::RunCorner { run, vertex: side + 1 }, side + 1)),
        Thing::BoundarySide { side } => Some((Thing::BoundaryCorner { vertex: side + 1 }, side + 1)),
        Thing::KeepOutSide { keep_out, side } => Some((Thing::KeepOutCorner { keep_out, vertex: side + 1 }, side + 1)),
        _ => None,
    }
}
