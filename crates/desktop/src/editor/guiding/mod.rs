//! What catches the hand while it draws or drags: the guides of `geometry` over what stands in the plan, with the reason in
//! words and the marks that show it; and the grid.

mod corner;
mod grid;
mod said;
mod side;

use std::sync::Arc;

use geometry::guides::{Asked, Beside, Edge, Guide, Guided, Line, Netting, SideAsked, SideWhy, Why};
use plan::{Plan, Point, Shape};
use workup::panels::Ruler;
use workup::shaping::is_closed;

use super::hold::SNAP_PX;
use super::shaping::Slide;
use super::snap::{Standing, point};
use super::{Editor, Snapped};
use crate::tool::{Drawn, Tool};
use corner::Corner;
use said::{Caught, Said, Told};
use side::{Side, SideSaid};

pub use grid::Grid;

/// How far from the hand another thing's side may be to be a guide, pixels.
const LOOK_PX: f64 = 130.0;

/// What stands beside what is in the hand.
#[derive(Debug)]
struct About {
    /// What is in the hand.
    own: Option<Shape>,
    /// The plan's revision that it was seen in.
    revision: u64,
    standing: Standing,
}

/// What the hand is guided by.
#[derive(Debug, Default)]
pub(super) struct Guiding {
    about: Option<About>,
    /// What caught the hand, and of a whole which of its corners.
    held: Option<(usize, Why)>,
    /// What caught the side that is slid.
    held_side: Option<SideWhy>,
    /// What counts panels beside what is in the hand.
    ruler: Option<Arc<Ruler>>,
    caught: Option<Caught>,
    grid: Grid,
    keeps_dimensions: bool,
}
impl Editor {
    /// What caught the hand lets go, and what stands is looked at anew.
    pub(super) fn unguided(&mut self) {
        let guiding = &mut self.guiding;
        *guiding = Guiding { grid: guiding.grid, keeps_dimensions: guiding.keeps_dimensions, ..Guiding::default() };
    }

    /// What catches a corner of an outline that is dragged.
    pub(super) fn guide_corner(&mut self, shape: &Shape, corner: usize, at: Point) -> Option<Snapped> {
        let closed = is_closed(&self.plan, shape);
        let asked = Corner::of(self.plan.outline(shape)?, closed, corner);
        let ruler = self.ruler(shape, [asked.numbers[0], Some(corner)]);
        self.guide(Some(shape), &asked, ruler.as_deref(), at, true)
    }

    /// What catches the next corner of what is drawn.
    pub(super) fn guide_next(&mut self, at: Point) -> Option<Snapped> {
        let corner = match &self.tool {
            Tool::Outline { of, corners, .. } => {
                let mut outline = corners.clone();
                outline.push(at);
                Corner::of(&outline, of.closes() && corners.len() > 1, corners.len())
            }
            Tool::Tape(tape) => {
                let mut path = tape.places.clone();
                path.push(at);
                Corner::of(&path, false, tape.places.len())
            }
            Tool::Pick | Tool::Try(_) => Corner::default(),
        };
        self.guide(None, &corner, None, at, true)
    }

    /// A place that catches something by itself: a corner or a post that stands there.
    pub(super) fn guide_place(&mut self, at: Point) -> Option<Snapped> {
        self.guide_if(&Corner::default(), at, |_, why| matches!(why, Why::Place(_)))
    }

    /// What the next corner of a run lands on: a place, or a wall on which the run may end, where its side would meet that
    /// squarely or so, else anywhere along it.
    pub(super) fn guide_landing(&mut self, at: Point) -> Option<Snapped> {
        let lands = |standing: &Standing, why: Why| matches!(why, Why::Place(_)) || standing.on_wall(why).is_some();
        let corner = self.next_corner(at)?;
        self.guide_if(&corner, at, lands).or_else(|| self.guide_if(&Corner::default(), at, lands))
    }

    /// The way of the next side of a run that is unrolled: of the guides those that lead from its last corner.
    pub(super) fn guide_way(&mut self, at: Point) -> Option<Snapped> {
        let corner = self.next_corner(at)?;
        self.guide_if(&corner, at, |_, why| match why {
            Why::One(Guide::Square(_, Beside::Before) | Guide::Parallel(_, Beside::Before)) => true,
            Why::One(Guide::InLine(Line::Own(side))) => corner.joined[0] == Some(side),
            _ => false,
        })
    }

    /// The next corner of the line that is drawn, open.
    fn next_corner(&self, at: Point) -> Option<Corner> {
        let Tool::Outline { corners, .. } = &self.tool else { return None };
        let mut outline = corners.clone();
        outline.push(at);
        Some(Corner::of(&outline, false, corners.len()))
    }

    /// What catches a corner where it is of the kind that is looked for; else what led the hand goes on to lead it.
    fn guide_if(&mut self, corner: &Corner, at: Point, wanted: impl Fn(&Standing, Why) -> bool) -> Option<Snapped> {
        let before = self.guiding.held;
        let found = self.guide(None, corner, None, at, false);
        if let (Some((_, why)), Some(about)) = (self.guiding.held, &self.guiding.about)
            && found.is_some()
            && wanted(&about.standing, why)
        {
            return found;
        }
        (self.guiding.held, self.guiding.caught) = (before, None);
        None
    }

    /// What caught the hand goes along to where the netting wants it.
    pub(super) fn guided_to(&mut self, at: Point) {
        if let Some(caught) = &mut self.guiding.caught {
            caught.at = at;
        }
    }

    fn guide(
        &mut self,
        own: Option<&Shape>,
        corner: &Corner,
        ruler: Option<&Ruler>,
        at: Point,
        grid: bool,
    ) -> Option<Snapped> {
        if self.free {
            self.unguided();
            return None;
        }
        let asked = Asked {
            at: point(at),
            beside: corner.beside.map(|at| at.map(point)),
            own: corner.own.iter().map(|&[from, to]| Edge { from: point(from), to: point(to) }).collect(),
            joined: corner.joined,
            netting: ruler.map(|ruler| ruler as &dyn Netting),
            held: self.guiding.held.map(|(_, why)| why),
            ..self.asked(grid)
        };
        let found = self.standing(own).guides.best(&asked);
        self.caught_so(corner, &asked, found.map(|found| (0, found)))
    }

    /// What stands while several things are in the hand: a plan without them, and what follows from it.
    pub(super) fn stand_without(&mut self, rest: &Plan, workup: &workup::Workup) {
        self.unguided();
        let standing = Standing::of(rest, workup, None);
        self.guiding.about = Some(About { own: None, revision: self.history.revision(), standing });
    }

    /// What catches one of the places of a whole, and which.
    pub(super) fn guide_whole(&mut self, own: Option<&Shape>, places: &[Point]) -> Option<(usize, Snapped)> {
        if self.free || places.is_empty() {
            self.unguided();
            return None;
        }
        let (asked, held) = (self.asked(true), self.guiding.held);
        let hands: Vec<_> = places.iter().copied().map(point).collect();
        let found = self.standing(own).guides.best_of(&asked, &hands, held);
        let snapped = self.caught_so(&Corner::default(), &asked, found)?;
        found.map(|(index, _)| (index, snapped))
    }

    /// What stands beside what is in the hand, looked at anew where that is something else or the plan changed; while a
    /// hand drags, only its own thing changes.
    fn standing(&mut self, own: Option<&Shape>) -> &Standing {
        let (revision, is_dragged) = (self.history.revision(), self.held.is_some());
        let fits = |about: &About| about.own.as_ref() == own && (is_dragged || about.revision == revision);
        let about = self.guiding.about.take().filter(fits).unwrap_or_else(|| About {
            own: own.cloned(),
            revision,
            standing: Standing::of(&self.plan, &self.workup, own),
        });
        &self.guiding.about.insert(about).standing
    }

    /// Keeps what caught the hand, and says it.
    fn caught_so(&mut self, corner: &Corner, asked: &Asked<'_>, found: Option<(usize, Guided)>) -> Option<Snapped> {
        let guiding = &mut self.guiding;
        guiding.held = found.map(|(index, found)| (index, found.why));
        guiding.caught = None;
        let ((_, found), standing) = (found?, &guiding.about.as_ref()?.standing);
        let ends_run = self.tool.draws(Drawn::Run);
        let told = Told { standing, plan: &self.plan, words: self.words };
        let said = Said { told, ends_run, corner, asked, found };
        let snapped = said.snapped()?;
        guiding.caught = Some(said.caught());
        Some(snapped)
    }

    fn asked(&self, grid: bool) -> Asked<'static> {
        Asked {
            reach_m: SNAP_PX / self.view.px_per_m,
            look_m: LOOK_PX / self.view.px_per_m,
            grid_m: self.guiding.grid.step_m(self.words.units).filter(|_| grid),
            ..Asked::default()
        }
    }

    /// What counts the panels of two sides of a run in the hand, by their first corners; made once as it is taken hold of.
    fn ruler(&mut self, shape: &Shape, sides: [Option<usize>; 2]) -> Option<Arc<Ruler>> {
        let Shape::Run(id) = shape else { return None };
        if self.guiding.ruler.is_none() {
            let index = self.plan.runs.iter().position(|run| run.id == *id)?;
            let lay = self.workup.runs.get(index)?.lay.as_ref()?;
            let ruler = Ruler::of(&self.plan, &self.plan.runs[index], lay, sides, &mut self.known);
            self.guiding.ruler = Some(Arc::new(ruler));
        }
        self.guiding.ruler.clone()
    }

    /// What catches a side that the hand slides so many metres to its left, and how far it slides to there.
    pub(super) fn guide_side(&mut self, slide: &Slide, by_m: f64) -> Option<(f64, Snapped)> {
        if self.free {
            self.unguided();
            return None;
        }
        let side = Side::of(&slide.was, is_closed(&self.plan, &slide.shape), slide.side)?;
        let ruler = self.ruler(&slide.shape, side.neighbours);
        let Asked { reach_m, look_m, grid_m, .. } = self.asked(true);
        let asked = SideAsked {
            side: side.edge,
            beyond: side.beyond.map(|at| at.map(point)),
            by_m,
            hold: point(slide.hold),
            own: side.own.clone(),
            reach_m,
            look_m,
            netting: ruler.as_deref().map(|ruler| ruler as &dyn Netting),
            grid_m,
            held: self.guiding.held_side,
        };
        let found = self.standing(Some(&slide.shape)).guides.best_slide(&asked);
        self.guiding.held_side = found.map(|found| found.why);
        self.guiding.caught = None;
        let (found, standing) = (found?, &self.guiding.about.as_ref()?.standing);
        let told = Told { standing, plan: &self.plan, words: self.words };
        let said = SideSaid { told, side: &side, asked: &asked, found };
        let snapped = said.snapped()?;
        self.guiding.caught = Some(said.caught());
        Some((found.by_m, snapped))
    }

    /// The marks of what caught the hand.
    pub fn guide_ink(&self) -> Vec<drawing::Ink> {
        let Some(caught) =
            self.guiding.caught.as_ref().filter(|caught| self.snapped.as_ref().is_some_and(|one| one.at == caught.at))
        else {
            return Vec::new();
        };
        let mut ink = drawing::guides::marks(&self.view, caught.at, &caught.marks);
        if let Some(beside) = caught.square {
            ink.extend(drawing::guides::square_corner(&self.view, caught.at, beside));
        }
        ink
    }

    /// The grid.
    pub fn grid(&self) -> Grid {
        self.guiding.grid
    }

    pub(super) fn set_grid(&mut self, grid: Grid) {
        self.guiding.grid = grid;
        self.stamp += 1;
    }

    /// Whether dimensions stay beside what is picked.
    pub fn keeps_dimensions(&self) -> bool {
        self.guiding.keeps_dimensions
    }

    pub(super) fn keep_dimensions(&mut self, keep: bool) {
        self.guiding.keeps_dimensions = keep;
    }
}
