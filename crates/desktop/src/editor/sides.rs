//! The side that is picked, without a pointer: slid by the arrow keys, and given a corner in its middle.

use drawing::Thing;
use plan::{Deed, Edit, Plan, Point, Shape};
use words::texts::Shape as Text;
use workup::shaping::{self, is_closed};

use super::shaping::side_of;
use super::{Editor, corner_of, corner_thing};

/// A side that an arrow moves by less than this lies along it, metres.
const STILL_M: f64 = 1e-9;

impl Editor {
    /// The edit that slides a side by so much of an arrow's way as is square to it; its neighbours follow.
    pub(super) fn side_nudged(&mut self, shape: Shape, side: usize, hand: [f64; 2]) -> Option<Edit> {
        let outline = self.plan.outline(&shape)?;
        let by_m = shaping::slides_m(outline, side, hand)?;
        if by_m.abs() < STILL_M {
            self.shape_told = Some(Text::AlongSide);
            return None;
        }
        let Some(outline) = shaping::slid(outline, is_closed(&self.plan, &shape), side, by_m) else {
            self.shape_told = Some(Text::SideNotSlid);
            return None;
        };
        Some(Edit::SetOutline { shape, outline })
    }

    /// Whether a side is picked that slides.
    pub fn slides_side(&self) -> bool {
        !self.has_several() && self.picked.is_some_and(|thing| side_of(&self.plan, thing).is_some())
    }

    /// Whether a side is picked, or a corner that has one.
    pub fn takes_corner(&self) -> bool {
        !self.has_several() && self.picked.is_some_and(|thing| side_to_split(&self.plan, thing).is_some())
    }

    /// Puts a corner into the middle of the side that is picked, or of the side after the corner that is, and picks it.
    pub(super) fn insert_corner(&mut self) {
        let found = self.picked.filter(|_| !self.has_several()).and_then(|thing| side_to_split(&self.plan, thing));
        let Some((shape, side)) = found else {
            self.shape_told = Some(Text::PickSide);
            return;
        };
        if self.unlocked().is_empty() {
            return;
        }
        let outline = self.plan.outline(&shape).unwrap_or_default();
        let (one, other) = (outline[side], outline[(side + 1) % outline.len()]);
        let at = Point::new(one.east_m.midpoint(other.east_m), one.north_m.midpoint(other.north_m));
        let thing = corner_thing(&self.plan, &shape, side + 1);
        self.one_step(Deed::InsertCorner, vec![Edit::InsertCorner { shape, corner: side + 1, at }]);
        self.pick(thing);
    }
}

/// The side that is picked, or the one after a corner; of the last corner of a path the one before it.
fn side_to_split(plan: &Plan, thing: Thing) -> Option<(Shape, usize)> {
    let branch = |run: usize, branch: usize| Some(Shape::Branch(plan.runs.get(run)?.id.clone(), branch));
    let (shape, side) = match thing {
        Thing::BranchSide { run, branch: number, side } => (branch(run, number)?, side),
        Thing::BranchCorner { run, branch: number, vertex } => (branch(run, number)?, vertex),
        thing => side_of(plan, thing).or_else(|| corner_of(plan, thing))?,
    };
    let count = plan.outline(&shape)?.len();
    let last = if is_closed(plan, &shape) { count.checked_sub(1)? } else { count.checked_sub(2)? };
    let is_corner = thing.whole() != thing && corner_of(plan, thing).is_some();
    let side = if is_corner { side.min(last) } else { side };
    (count >= 2 && side <= last).then_some((shape, side))
}
