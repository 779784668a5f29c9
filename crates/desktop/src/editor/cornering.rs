//! A corner in the hand: free, on its ellipse, on its arc, or by what is typed.

use plan::{Deed, Edit, Motion, Point, Shape};
use workup::shaping::{CornerTyped, Keep, Way, neighbours};

use super::hold::Hold;
use super::{Editor, Snapped};
use words::texts::Shape as Text;

/// A corner that moves less stays, metres.
const STILL_M: f64 = 1e-6;

/// A corner that is held.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Grip {
    pub(super) shape: Shape,
    pub(super) corner: usize,
    /// Whether it was put in by this very drag: in line as it lies it keeps nothing yet.
    pub(super) fresh: bool,
    /// Where the hand would put it.
    pub(super) hand: Point,
    /// What is typed of it.
    pub(super) typed: CornerTyped,
}

/// What the views read of a corner in the hand.
#[derive(Clone, Debug, PartialEq)]
pub struct CornerInHand {
    /// Whose.
    pub shape: Shape,
    /// Which, from 0.
    pub corner: usize,
    /// Where it is.
    pub at: Point,
    /// The corners before and after it.
    pub neighbours: [Option<Point>; 2],
    /// How many corners its outline has.
    pub corners: usize,
    /// What is typed of it.
    pub typed: CornerTyped,
    /// What it keeps.
    pub keep: Keep,
    /// The line that it keeps to, and whether that closes.
    pub way: Option<(Vec<Point>, bool)>,
}

impl Editor {
    /// What corners keep while they are dragged.
    pub fn keep(&self) -> Keep {
        self.keep
    }

    /// The corner that is being dragged.
    pub fn corner_in_hand(&self) -> Option<CornerInHand> {
        let held = self.held.as_ref()?;
        let Hold::Corner(grip) = &held.what else { return None };
        let outline = self.plan.outline(&grip.shape)?;
        Some(CornerInHand {
            shape: grip.shape.clone(),
            corner: grip.corner,
            at: *outline.get(grip.corner)?,
            neighbours: neighbours(&self.plan, &grip.shape, grip.corner),
            corners: outline.len(),
            typed: grip.typed,
            keep: if grip.fresh { Keep::Free } else { self.keep },
            way: self.way(grip, held.was).map(|way| way.line()),
        })
    }

    /// Whether a corner with those figures can be had.
    pub fn corner_can(&self, typed: CornerTyped) -> bool {
        let Some(Hold::Corner(grip)) = self.held.as_ref().map(|held| &held.what) else { return false };
        typed.place(neighbours(&self.plan, &grip.shape, grip.corner), grip.hand).is_some()
    }

    fn way(&self, grip: &Grip, was: Point) -> Option<Way> {
        let keep = if grip.fresh || grip.typed != CornerTyped::default() { Keep::Free } else { self.keep };
        Way::of(keep, neighbours(&self.plan, &grip.shape, grip.corner), was)
    }

    /// Other corners are kept to from now on; one in the hand goes there at once.
    pub(super) fn set_keep(&mut self, keep: Keep) {
        self.keep = keep;
        self.lead_corner(|_| ());
        self.stamp += 1;
    }

    /// What is typed of the corner in the hand.
    pub(super) fn type_corner(&mut self, typed: CornerTyped) {
        self.lead_corner(|grip| grip.typed = typed);
        self.stamp += 1;
    }

    /// The corner in the hand goes where it goes with that changed.
    pub(super) fn lead_corner(&mut self, change: impl FnOnce(&mut Grip)) {
        let Some(held) = &mut self.held else { return };
        let was = held.was;
        let Hold::Corner(grip) = &mut held.what else { return };
        change(grip);
        let grip = grip.clone();
        let Some(to) = self.corner_goes(&grip, was) else { return };
        if self.plan.outline(&grip.shape).and_then(|outline| outline.get(grip.corner)) == Some(&to) {
            return;
        }
        if !grip.fresh {
            let typed = grip.typed != CornerTyped::default();
            self.history.call(if typed { Deed::CornerFigures } else { self.keep_deed() });
        }
        if let Some(held) = &mut self.held {
            held.moved = true;
        }
        self.make(Edit::MoveCorner { shape: grip.shape, corner: grip.corner, to });
    }

    /// Where a corner goes that the hand leads, and what caught it.
    fn corner_goes(&mut self, grip: &Grip, was: Point) -> Option<Point> {
        self.snapped = None;
        let beside = neighbours(&self.plan, &grip.shape, grip.corner);
        if grip.typed != CornerTyped::default() {
            return grip.typed.place(beside, grip.hand);
        }
        if let Some(way) = self.way(grip, was) {
            return way.nearest(grip.hand);
        }
        self.snapped = self.guide_corner(&grip.shape, grip.corner, grip.hand);
        Some(self.snapped.as_ref().map_or(grip.hand, |snapped| snapped.at))
    }

    /// The edit that moves a corner by so much and keeps what corners keep, and what that is called; no edit where it
    /// cannot go that way.
    pub(super) fn corner_nudged(&mut self, shape: Shape, corner: usize, motion: Motion) -> (Deed, Option<Edit>) {
        let deed = self.keep_deed();
        let Some(&at) = self.plan.outline(&shape).and_then(|outline| outline.get(corner)) else { return (deed, None) };
        let way = Way::of(self.keep, neighbours(&self.plan, &shape, corner), at);
        let to = way.map_or_else(|| Some(motion.of(at)), |way| way.nearest(motion.of(at)));
        let to = to.filter(|&to| crate::tool::apart_m(at, to) > STILL_M);
        if to.is_none() {
            self.shape_told = Some(Text::KeptThere);
        }
        (deed, to.map(|to| Edit::MoveCorner { shape, corner, to }))
    }

    /// What moving a corner is called.
    fn keep_deed(&self) -> Deed {
        match self.keep {
            Keep::Free => Deed::MoveCorner,
            Keep::Length => Deed::KeepLength,
            Keep::Angle => Deed::KeepAngle,
        }
    }

    /// What holds the corner in the hand, in words.
    pub fn corner_reason(&self, corner: &CornerInHand) -> String {
        let words = self.words;
        if let Some(Snapped { reason, .. }) = &self.snapped {
            return reason.clone();
        }
        let apart_m = |beside: Option<Point>| beside.map_or(0.0, |beside| crate::tool::apart_m(beside, corner.at));
        match (corner.keep, corner.way.is_some()) {
            (Keep::Length, true) => {
                let both_m = apart_m(corner.neighbours[0]) + apart_m(corner.neighbours[1]);
                words.say(Text::OnEllipse, &[("length", &words.length(both_m))])
            }
            (Keep::Angle, true) => {
                let turn = workup::shaping::turn_deg(corner.neighbours, corner.at).unwrap_or(0.0);
                words.say(Text::OnArc, &[("angle", &words.degrees(turn))])
            }
            _ => words.say(Text::FreeCorner, &[("number", &(corner.corner + 1).to_string())]),
        }
    }
}
