//! Outlines shaped: a side slid by hand; squared up, mirrored, doubled beside, turned about a picked place; sides and
//! corners by their figures. Each is one step.

use drawing::Thing;
use geometry::guides::Edge;
use plan::{Deed, Edit, Motion, Plan, Point, Run, Shape};
use words::texts::Shape as Text;
use workup::shaping::{self, CornerTyped, Keep, is_closed, neighbours};

use super::hold::{Held, Hold};
use super::snap::{place, point};
use super::whole::Whole;
use super::{Editor, Page, corner_of};
use crate::tool::{Tool, free_run_id};

/// Over which line a thing is mirrored.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Over {
    /// East and west change places.
    EastWest,
    /// North and south do.
    NorthSouth,
    /// Over the side that is picked.
    Side,
}

impl Over {
    /// Where the line points over which it is mirrored, radians clockwise from north; `None` for a side's.
    fn bearing_rad(self) -> Option<f64> {
        match self {
            Self::EastWest => Some(0.0),
            Self::NorthSouth => Some(std::f64::consts::FRAC_PI_2),
            Self::Side => None,
        }
    }
}

/// What a view says about the shape of what is picked.
#[derive(Clone, Debug, PartialEq)]
pub enum ShapingMessage {
    /// Two directions, square to each other.
    SquareUp,
    /// Cut the picked corner of a run over two posts.
    CutCorner,
    /// A mirror image.
    Mirror(Over),
    /// A second one that shares the picked side: its mirror image, or as it is.
    Beside(bool),
    /// What corners keep while they are dragged.
    Keep(Keep),
    /// A corner in the middle of the picked side, or of the side after the picked corner.
    InsertCorner,
    /// It turns about the corner that is picked.
    PivotHere,
    /// It turns about its middle.
    PivotMiddle,
    /// Take hold of the place that it turns about.
    GrabPivot(Point),
    /// A side's bearing, degrees clockwise from north: its far corner swings.
    Bearing(Shape, usize, f64),
    /// A side's length by panels, metres on the map.
    Panels(Shape, usize, f64),
    /// Both at once: a side's length, metres on the map, and its bearing.
    LengthAndBearing(Shape, usize, f64, f64),
    /// A corner's place.
    Place(Shape, usize, Point),
    /// A corner's turn, degrees, to the hand to which it turns.
    Turn(Shape, usize, f64),
    /// What is typed of the corner in the hand.
    Typed(CornerTyped),
}

/// What a thing turns about where that is not its middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Pivot {
    /// One of its own corners, wherever that goes.
    Corner(usize),
    Place(Point),
}

/// A side that is held.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Slide {
    pub(super) shape: Shape,
    pub(super) side: usize,
    /// The outline as it was.
    pub(super) was: Vec<Point>,
    /// Where on the side it was taken hold of.
    pub(super) hold: Point,
}

/// The shape and the side that a thing is; a branch's hang together along the run and are not slid.
pub(super) fn side_of(plan: &Plan, thing: Thing) -> Option<(Shape, usize)> {
    match thing {
        Thing::RunSide { run, side } => Some((Shape::Run(plan.runs.get(run)?.id.clone()), side)),
        Thing::BoundarySide { side } => Some((Shape::Boundary, side)),
        Thing::KeepOutSide { keep_out, side } => Some((Shape::KeepOut(keep_out), side)),
        Thing::ShadeSide { shade, side } => Some((Shape::Shade(shade), side)),
        Thing::DampSide { damp, side } => Some((Shape::Damp(damp), side)),
        _ => None,
    }
}

impl Editor {
    /// Why the last thing about a shape was not done.
    pub fn shape_told(&self) -> Option<Text> {
        self.shape_told
    }

    /// The outline that commands about shapes are about: the one of what is picked, else the run in hand.
    pub fn shaped(&self) -> Option<Thing> {
        let whole = match self.picked {
            Some(thing) => thing.whole(),
            None => Thing::Run { run: self.run },
        };
        let is_outline = matches!(whole, Thing::Run { .. } | Thing::Boundary | Thing::KeepOut { .. });
        (is_outline && self.exists(whole)).then_some(whole)
    }

    /// Whether what is picked can be mirrored: an outline, or a branch.
    pub fn mirrors(&self) -> bool {
        self.shaped().is_some() || self.picked_branch().is_some()
    }

    /// Whether a side is picked that another one can share.
    pub fn shares_side(&self) -> bool {
        matches!(self.picked, Some(Thing::RunSide { .. } | Thing::KeepOutSide { .. }))
    }

    /// Whether a side is picked.
    pub fn has_side(&self) -> bool {
        self.picked.is_some_and(|thing| side_of(&self.plan, thing).is_some()) || self.branch_side_rad().is_some()
    }

    /// The picked side whose figures can be typed on the map: nothing is in the hand, and it is not locked.
    pub(crate) fn side_to_type(&self) -> Option<(Shape, usize)> {
        let thing = self.picked.filter(|_| self.tool == Tool::Pick && self.held.is_none() && !self.has_several())?;
        if self.question.is_some() || super::hiding::is_locked(&self.plan, thing) {
            return None;
        }
        match thing {
            Thing::BranchSide { run, branch, side } => {
                Some((Shape::Branch(self.plan.runs.get(run)?.id.clone(), branch), side))
            }
            thing => side_of(&self.plan, thing),
        }
    }

    /// Where the picked side of a branch points, radians clockwise from north. The branch is mirrored over a line that
    /// points there through the place where it hangs, and hangs there still.
    fn branch_side_rad(&self) -> Option<f64> {
        let Some(Thing::BranchSide { run, branch, side }) = self.picked else { return None };
        let outline = &self.plan.runs.get(run)?.branches.get(branch)?.outline;
        let (from, to) = (outline.get(side)?, outline.get(side + 1)?);
        Some((to.east_m - from.east_m).atan2(to.north_m - from.north_m))
    }

    pub(super) fn shape_said(&mut self, said: ShapingMessage) {
        // With something in the hand only the hand counts.
        if self.held.is_some() && !matches!(said, ShapingMessage::Keep(_) | ShapingMessage::Typed(_)) {
            return;
        }
        match said {
            ShapingMessage::SquareUp => self.square_up(),
            ShapingMessage::CutCorner => self.cut_corner(),
            ShapingMessage::Mirror(over) => self.mirror(over),
            ShapingMessage::Beside(mirrored) => self.beside(mirrored),
            ShapingMessage::Keep(keep) => self.set_keep(keep),
            ShapingMessage::InsertCorner => self.insert_corner(),
            ShapingMessage::PivotHere => self.pivot_here(),
            ShapingMessage::PivotMiddle => self.pivot = None,
            ShapingMessage::GrabPivot(at) => self.grab_pivot(at),
            ShapingMessage::Bearing(shape, side, bearing_deg) => {
                let Some((outline, far)) = self.far_corner(&shape, side) else { return };
                let to = shaping::at_bearing(outline[side], outline[far], bearing_deg);
                self.one_step(Deed::SideBearing, vec![Edit::MoveCorner { shape, corner: far, to }]);
            }
            ShapingMessage::Panels(shape, side, length_m) => {
                self.side_length_called(Deed::SidePanels, shape, side, length_m);
            }
            ShapingMessage::LengthAndBearing(shape, side, length_m, bearing_deg) => {
                let Some((outline, far)) = self.far_corner(&shape, side) else { return };
                let ends = [outline[side], outline[far]];
                let Some(to) = shaping::side_end(ends, Some(length_m), Some(bearing_deg)) else { return };
                self.one_step(Deed::CornerFigures, vec![Edit::MoveCorner { shape, corner: far, to }]);
            }
            ShapingMessage::Place(shape, corner, to) => {
                self.one_step(Deed::CornerPlace, vec![Edit::MoveCorner { shape, corner, to }]);
            }
            ShapingMessage::Turn(shape, corner, turn_deg) => {
                let Some(&at) = self.plan.outline(&shape).and_then(|outline| outline.get(corner)) else { return };
                let typed = CornerTyped { turn_deg: Some(turn_deg), ..CornerTyped::default() };
                match typed.place(neighbours(&self.plan, &shape, corner), at) {
                    Some(to) => self.one_step(Deed::CornerTurn, vec![Edit::MoveCorner { shape, corner, to }]),
                    None => self.shape_told = Some(Text::CannotClose),
                }
            }
            ShapingMessage::Typed(typed) => self.type_corner(typed),
        }
    }

    /// Gives a side a length: its far corner moves along it.
    pub(super) fn side_length(&mut self, shape: Shape, side: usize, length_m: f64) {
        self.side_length_called(Deed::SideLength, shape, side, length_m);
    }

    pub(super) fn side_length_called(&mut self, deed: Deed, shape: Shape, side: usize, length_m: f64) {
        let drawn_out = self.plan.outline(&shape).and_then(|outline| plan::drawn_out(outline, side, length_m));
        let Some((_, corner, to)) = drawn_out else { return };
        self.one_step(deed, vec![Edit::MoveCorner { shape, corner, to }]);
    }

    fn far_corner(&self, shape: &Shape, side: usize) -> Option<(&[Point], usize)> {
        let outline = self.plan.outline(shape)?;
        (side < outline.len()).then(|| (outline, (side + 1) % outline.len()))
    }

    fn square_up(&mut self) {
        let Some(shape) = self.shaped().and_then(|thing| self.shape_of(thing)) else {
            self.shape_told = Some(Text::PickOutline);
            return;
        };
        let outline = self.plan.outline(&shape).unwrap_or_default();
        match shaping::squared(outline, is_closed(&self.plan, &shape)) {
            Some(squared) => {
                self.one_step(Deed::SquareUp, vec![Edit::SetOutline { shape, outline: squared }]);
            }
            None => self.shape_told = Some(Text::NotSquare),
        }
    }

    fn shape_of(&self, whole: Thing) -> Option<Shape> {
        Whole::of(&self.plan, whole)?.shape()
    }

    fn mirror(&mut self, over: Over) {
        if let Some((run, branch)) = self.picked_branch() {
            return match over.bearing_rad().or_else(|| self.branch_side_rad()) {
                Some(bearing_rad) => self.mirror_branch(run, branch, bearing_rad),
                None => self.shape_told = Some(Text::PickSide),
            };
        }
        let whole = match self.picked {
            Some(thing) => Some(thing.whole()),
            None => self.shaped(),
        };
        let found = whole.and_then(|thing| Some((thing, Whole::of(&self.plan, thing)?)));
        let Some((thing, whole)) = found else {
            self.shape_told = Some(Text::PickOutline);
            return;
        };
        let motion = match over.bearing_rad() {
            None => {
                let side = self.picked.and_then(|thing| side_of(&self.plan, thing));
                let motion = side.and_then(|(shape, side)| shaping::beside(self.plan.outline(&shape)?, side, true));
                let Some(motion) = motion else {
                    self.shape_told = Some(Text::PickSide);
                    return;
                };
                motion
            }
            Some(bearing_rad) => {
                let Some(through) = self.about(&whole, thing) else {
                    self.shape_told = Some(Text::PickOutline);
                    return;
                };
                Motion::Mirror { through, bearing_rad }
            }
        };
        self.one_step(Deed::Mirror, whole.moved(&self.plan, motion));
    }

    fn beside(&mut self, mirrored: bool) {
        let found = self.picked.filter(|_| self.shares_side()).and_then(|thing| side_of(&self.plan, thing));
        let Some((shape, side)) = found else {
            self.shape_told = Some(Text::PickSide);
            return;
        };
        let outline = self.plan.outline(&shape).unwrap_or_default();
        let Some(motion) = shaping::beside(outline, side, mirrored) else {
            self.shape_told = Some(Text::NothingLike);
            return;
        };
        match shape {
            Shape::Run(id) => {
                let Some(run) = self.plan.run(&id) else { return };
                let name = self.plan.free_run_name(care::run_name(run));
                let second = Run {
                    id: free_run_id(&self.plan),
                    name,
                    hidden: false,
                    locked: false,
                    ..workup::taken_along(&self.plan, run, &run.moved(motion))
                };
                let index = self.plan.runs.len();
                self.one_step(Deed::DuplicateBeside, vec![Edit::AddRun { index, run: Box::new(second) }]);
                self.pick(Some(Thing::Run { run: index }));
            }
            Shape::KeepOut(index) => {
                let mut keep_outs = self.plan.ground.keep_outs.clone();
                let Some(mut second) = keep_outs.get(index).cloned() else { return };
                second.outline.iter_mut().for_each(|at| *at = motion.of(*at));
                (second.hidden, second.locked) = (false, false);
                second.name = self.plan.free_keep_out_name(&second.name);
                keep_outs.push(second);
                let keep_out = keep_outs.len() - 1;
                self.one_step(Deed::DuplicateBeside, vec![Edit::SetKeepOuts { keep_outs }]);
                self.pick(Some(Thing::KeepOut { keep_out }));
            }
            Shape::Boundary
            | Shape::Branch(..)
            | Shape::Wall(_)
            | Shape::Shade(_)
            | Shape::Damp(_)
            | Shape::Hazard(_) => {}
        }
    }

    /// What a whole turns about.
    pub(super) fn about(&self, whole: &Whole, thing: Thing) -> Option<Point> {
        let chosen = self.pivot.filter(|(of, _)| *of == thing.whole()).and_then(|(_, pivot)| match pivot {
            Pivot::Corner(corner) => whole.places().get(corner).copied(),
            Pivot::Place(at) => Some(at),
        });
        whole.pivot().map(|middle| chosen.unwrap_or(middle))
    }

    /// What the picked thing turns about.
    pub fn turns_about(&self) -> Option<Point> {
        let thing = self.picked?;
        self.about(&Whole::of(&self.plan, thing)?, thing)
    }

    /// Whether that is a place of its own, not the middle.
    pub fn has_pivot(&self) -> bool {
        self.pivot.is_some_and(|(of, _)| self.picked.map(Thing::whole) == Some(of))
    }

    fn pivot_here(&mut self) {
        let corner = self.picked.and_then(|thing| Some((thing, corner_of(&self.plan, thing)?.1)));
        let turns = |thing: Thing| thing.whole() != thing && Whole::of(&self.plan, thing.whole()).is_some();
        if let Some((thing, corner)) = corner.filter(|(thing, _)| turns(*thing)) {
            let whole = thing.whole();
            self.pivot = Some((whole, Pivot::Corner(corner)));
            self.take_up(Some(whole));
        }
    }

    fn grab_pivot(&mut self, at: Point) {
        if let Some(was) = self.turns_about() {
            let what = Hold::Pivot(self.pivot);
            self.held = Some(Held { what, from: at, was, moved: false });
        }
    }

    /// The place to turn about goes to a place; corners and posts catch it.
    pub(super) fn pivot_to(&mut self, at: Point) {
        let Some(thing) = self.picked else { return };
        let Some(whole) = Whole::of(&self.plan, thing) else { return };
        self.snapped = self.guide_place(at);
        let at = self.snapped.as_ref().map_or(at, |snapped| snapped.at);
        let own = whole.places().iter().position(|place| *place == at);
        self.pivot = Some((thing.whole(), own.map_or(Pivot::Place(at), Pivot::Corner)));
        if let Some(held) = &mut self.held {
            held.moved = true;
        }
    }

    /// What a click on the map picks: posts stand thick on a side, so a click on one picks its side, and once that is picked
    /// the post; where posts are what is told of, the post at once.
    pub(crate) fn picks_at(&self, thing: Thing, at: Point) -> Thing {
        let side = self.side_of_post(thing, at);
        let tells_posts = matches!(self.page, Page::Power | Page::Book);
        if tells_posts || self.picked == Some(side) { thing } else { side }
    }

    /// Posts stand thick on a side: who takes hold of one takes hold of its side.
    pub(super) fn side_of_post(&self, thing: Thing, at: Point) -> Thing {
        let Thing::Post { run, .. } = thing else { return thing };
        let side = self.plan.runs.get(run).and_then(|run| run.side_at(at));
        side.map_or(thing, |side| Thing::RunSide { run, side })
    }

    /// A side of what is picked, taken hold of to be slid; whether it is one at all.
    pub(super) fn slide_to_hold(&mut self, thing: Thing, at: Point) -> (Option<Held>, bool) {
        let lesson = self.lesson == super::Lesson::Drag && matches!(thing, Thing::RunSide { .. });
        let Some((shape, side)) = side_of(&self.plan, thing).filter(|_| !lesson) else { return (None, false) };
        let was = self.plan.outline(&shape).unwrap_or_default().to_vec();
        if shaping::slid(&was, is_closed(&self.plan, &shape), side, 0.0).is_none() {
            self.shape_told = Some(Text::SideNotSlid);
            return (None, true);
        }
        self.take_up(Some(thing));
        self.history.begin_called(Deed::SlideSide);
        let (from, to) = (was[side], was[(side + 1) % was.len()]);
        let hold = place(Edge { from: point(from), to: point(to) }.nearest(point(at)));
        (Some(Held { what: Hold::Slide(Slide { shape, side, was, hold }), from: at, was: from, moved: false }), true)
    }

    /// The edit that slides the side in the hand by so much, or to what catches it.
    pub(super) fn slid_to(&mut self, slide: &Slide, hand: [f64; 2]) -> Option<Edit> {
        let by_m = shaping::slides_m(&slide.was, slide.side, hand)?;
        let caught = self.guide_side(slide, by_m);
        let by_m = caught.as_ref().map_or(by_m, |(caught_m, _)| *caught_m);
        self.snapped = caught.map(|(_, snapped)| snapped);
        let slid = shaping::slid(&slide.was, is_closed(&self.plan, &slide.shape), slide.side, by_m)?;
        let outline = self.plan.outline(&slide.shape)?;
        (outline != slid).then(|| Edit::SetOutline { shape: slide.shape.clone(), outline: slid })
    }

    /// What is held, for the hint at the map's foot.
    pub fn shape_hint(&self) -> Option<Text> {
        match &self.held.as_ref()?.what {
            Hold::Corner(_) => Some(match self.keep {
                Keep::Free => Text::HintFree,
                Keep::Length => Text::HintLength,
                Keep::Angle => Text::HintAngle,
            }),
            Hold::Slide(_) => Some(Text::HintSlide),
            Hold::Pivot(_) => Some(Text::HintPivot),
            _ => None,
        }
    }
}
