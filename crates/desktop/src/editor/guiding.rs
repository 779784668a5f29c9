//! What catches the hand while it draws or drags: the guides of `geometry` over what stands in the plan, the reason in
//! words and the marks that show it; the grid; and the dimensions beside what is edited.

use drawing::Thing;
use drawing::dimensions::Shown;
use drawing::guides::{Mark, Sign};
use geometry::guides::{Asked, Beside, Edge, Guide, Guided, Line, Why};
use plan::{Plan, Point, Shape};
use words::texts::Guides as Text;
use words::{Units, Words};

use super::hold::{Hold, SNAP_PX};
use super::snap::{Standing, place, point};
use super::{Editor, Snapped, corner_of};
use crate::tool::{Drawn, Tool};

/// How far from the hand another thing's side may be to be a guide, pixels.
const LOOK_PX: f64 = 130.0;
/// Metres in a foot, exactly.
const METRES_PER_FOOT: f64 = 0.3048;
/// Nets whose panels differ by less have the same, metres.
const SAME_PANEL_M: f64 = 1e-6;

/// The grid that the hand is caught by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Grid {
    /// None.
    #[default]
    Off,
    /// Of one metre, or one foot.
    One,
    /// Of five.
    Five,
    /// Of ten.
    Ten,
}

impl Grid {
    /// All of them, as they are offered.
    pub const ALL: [Self; 4] = [Self::Off, Self::One, Self::Five, Self::Ten];

    /// Its step, metres.
    pub fn step_m(self, units: Units) -> Option<f64> {
        let unit_m = if units == Units::Feet { METRES_PER_FOOT } else { 1.0 };
        match self {
            Self::Off => None,
            Self::One => Some(unit_m),
            Self::Five => Some(5.0 * unit_m),
            Self::Ten => Some(10.0 * unit_m),
        }
    }

    /// What it is called.
    pub fn name(self, words: Words) -> String {
        self.step_m(words.units).map_or_else(|| words.text(Text::GridOff).to_owned(), |step_m| words.far(step_m))
    }
}

/// What the hand is guided by.
#[derive(Debug, Default)]
pub(super) struct Guiding {
    /// What stands, and what that was made of: what is in the hand, and the plan's revision.
    standing: Option<(Option<Shape>, u64, Standing)>,
    /// What caught the hand, and of a whole which of its corners.
    held: Option<(usize, Why)>,
    caught: Option<Caught>,
    grid: Grid,
    keeps_dimensions: bool,
}

/// What caught the hand, as it is shown.
#[derive(Debug)]
struct Caught {
    at: Point,
    marks: Vec<Mark>,
    /// The corners beside a square corner.
    square: Option<[Point; 2]>,
}

/// A corner in the hand.
#[derive(Clone, Debug, Default)]
struct Corner {
    beside: [Option<Point>; 2],
    own: Vec<[Point; 2]>,
    /// Number of each own side's first corner, and of its last.
    named: Vec<[usize; 2]>,
    joined: [Option<usize>; 2],
    panel_m: Option<f64>,
}

impl Corner {
    /// Of an outline: the sides that do not move with it are its own.
    fn of(outline: &[Point], closed: bool, corner: usize) -> Self {
        let count = outline.len();
        let before = if corner > 0 { Some(corner - 1) } else { (closed && count > 1).then(|| count - 1) };
        let after = if corner + 1 < count { Some(corner + 1) } else { (closed && count > 1).then_some(0) };
        let mut all = Self { beside: [before, after].map(|at| at.map(|at| outline[at])), ..Self::default() };
        let sides = if closed && count > 2 { count } else { count.saturating_sub(1) };
        for from in 0..sides {
            let to = (from + 1) % count;
            if from == corner || to == corner {
                continue;
            }
            if Some(to) == before {
                all.joined[0] = Some(all.own.len());
            }
            if Some(from) == after {
                all.joined[1] = Some(all.own.len());
            }
            all.own.push([outline[from], outline[to]]);
            all.named.push([from, to]);
        }
        all
    }
}

impl Editor {
    /// What caught the hand lets go, and what stands is looked at anew.
    pub(super) fn unguided(&mut self) {
        let guiding = &mut self.guiding;
        (guiding.standing, guiding.held, guiding.caught) = (None, None, None);
    }

    /// What catches a corner of an outline that is dragged.
    pub(super) fn guide_corner(&mut self, shape: &Shape, corner: usize, at: Point) -> Option<Snapped> {
        let closed = is_closed(&self.plan, shape);
        let mut asked = Corner::of(self.plan.outline(shape)?, closed, corner);
        if let Shape::Run(id) = shape {
            asked.panel_m = self.panel_m(id);
        }
        self.guide(Some(shape), &asked, at, true)
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
        self.guide(None, &corner, at, true)
    }

    /// What stands there and catches the next corner of a run.
    pub(super) fn guide_place(&mut self, at: Point) -> Option<Snapped> {
        let before = self.guiding.held;
        let found = self.guide(None, &Corner::default(), at, false);
        if found.is_some() && self.guiding.held.is_some_and(|(_, why)| matches!(why, Why::Place(_))) {
            return found;
        }
        // What led the side goes on to lead it.
        (self.guiding.held, self.guiding.caught) = (before, None);
        None
    }

    /// The way of the next side of a run that is unrolled: of the guides those that lead from its last corner.
    pub(super) fn guide_way(&mut self, at: Point) -> Option<Snapped> {
        let Tool::Outline { corners, .. } = &self.tool else { return None };
        let mut outline = corners.clone();
        outline.push(at);
        let corner = Corner::of(&outline, false, corners.len());
        let found = self.guide(None, &corner, at, false)?;
        let leads = |why: Why| match why {
            Why::One(Guide::Square(_, Beside::Before) | Guide::Parallel(_, Beside::Before)) => true,
            Why::One(Guide::InLine(Line::Own(side))) => corner.joined[0] == Some(side),
            _ => false,
        };
        if self.guiding.held.is_some_and(|(_, why)| leads(why)) {
            return Some(found);
        }
        (self.guiding.held, self.guiding.caught) = (None, None);
        None
    }

    /// What caught the hand goes along to where the netting wants it.
    pub(super) fn guided_to(&mut self, at: Point) {
        if let Some(caught) = &mut self.guiding.caught {
            caught.at = at;
        }
    }

    fn guide(&mut self, own: Option<&Shape>, corner: &Corner, at: Point, grid: bool) -> Option<Snapped> {
        if self.free {
            self.unguided();
            return None;
        }
        let asked = Asked {
            at: point(at),
            beside: corner.beside.map(|at| at.map(point)),
            own: corner.own.iter().map(|&[from, to]| Edge { from: point(from), to: point(to) }).collect(),
            joined: corner.joined,
            panel_m: corner.panel_m,
            held: self.guiding.held.map(|(_, why)| why),
            ..self.asked(grid)
        };
        let guiding = &mut self.guiding;
        let standing = standing(
            &mut guiding.standing,
            &self.plan,
            &self.workup,
            own,
            self.history.revision(),
            self.held.is_some(),
        );
        let found = standing.guides.best(&asked);
        guiding.held = found.map(|found| (0, found.why));
        let said =
            found.map(|found| Said { standing, plan: &self.plan, words: self.words, corner, asked: &asked, found });
        let snapped = said.as_ref().and_then(Said::snapped);
        guiding.caught = said.filter(|_| snapped.is_some()).map(|said| said.caught());
        snapped
    }

    /// What stands while several things are in the hand: a plan without them, and what follows from it.
    pub(super) fn stand_without(&mut self, rest: &Plan, workup: &workup::Workup) {
        self.unguided();
        self.guiding.standing = Some((None, self.history.revision(), Standing::of(rest, workup, None)));
    }

    /// What catches one of the places of a whole, and which.
    pub(super) fn guide_whole(&mut self, own: Option<&Shape>, places: &[Point]) -> Option<(usize, Snapped)> {
        if self.free || places.is_empty() {
            self.unguided();
            return None;
        }
        let asked = self.asked(true);
        let guiding = &mut self.guiding;
        let standing = standing(
            &mut guiding.standing,
            &self.plan,
            &self.workup,
            own,
            self.history.revision(),
            self.held.is_some(),
        );
        let hands: Vec<_> = places.iter().copied().map(point).collect();
        let best = standing.guides.best_of(&asked, &hands, guiding.held);
        guiding.held = best.map(|(index, found)| (index, found.why));
        guiding.caught = None;
        let (index, found) = best?;
        let (words, corner) = (self.words, &Corner::default());
        let said = Said { standing, plan: &self.plan, words, corner, asked: &asked, found };
        let snapped = said.snapped()?;
        guiding.caught = Some(said.caught());
        Some((index, snapped))
    }

    fn asked(&self, grid: bool) -> Asked {
        Asked {
            reach_m: SNAP_PX / self.view.px_per_m,
            look_m: LOOK_PX / self.view.px_per_m,
            grid_m: self.guiding.grid.step_m(self.words.units).filter(|_| grid),
            ..Asked::default()
        }
    }

    /// Length of the panels of a run whose nets all have the same, on ground where a metre of net is one of the map.
    fn panel_m(&self, id: &str) -> Option<f64> {
        let index = self.plan.runs.iter().position(|run| run.id == id)?;
        if self.workup.runs.get(index)?.slope.is_some() {
            return None;
        }
        let run = &self.plan.runs[index];
        let used =
            self.plan.store.nets.iter().filter(|net| run.nets.as_ref().is_none_or(|nets| nets.contains(&net.id)));
        let mut panels = used.map(|net| {
            let count = net.panel_lengths_m.is_none().then(|| net.panel_count()).filter(|&count| count > 0)?;
            Some(net.length_m / count as f64)
        });
        let first = panels.next()??;
        panels.all(|panel_m| panel_m.is_some_and(|panel_m| (panel_m - first).abs() < SAME_PANEL_M)).then_some(first)
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

    /// The dimensions that are shown: of what is drawn, dragged, or picked and kept.
    pub fn dimensions(&self) -> Vec<Shown> {
        let drawn = match &self.tool {
            Tool::Outline { of, corners, pointer: Some(pointer), typed } if *of != Drawn::Run => {
                of_drawn(*of, corners, typed.place(corners, *pointer))
            }
            _ => None,
        };
        let held = self.held.as_ref().and_then(|held| match &held.what {
            Hold::Corner(grip) => of_dragged(&self.plan, &grip.shape, grip.corner),
            _ => None,
        });
        let kept = self.picked.filter(|_| self.guiding.keeps_dimensions && self.tool == Tool::Pick && held.is_none());
        let kept = kept.and_then(|thing| of_kept(&self.plan, thing));
        drawn.into_iter().chain(held).chain(kept).collect()
    }

    /// The dimensions in words.
    pub fn dimensions_said(&self) -> Option<String> {
        let words = self.words;
        let mut figures = Vec::new();
        for shown in self.dimensions() {
            for &side in &shown.sides {
                let Some([from, to]) = shown.side(side) else { continue };
                let (one, other) = ((side + 1).to_string(), ((side + 1) % shown.outline.len() + 1).to_string());
                let length = words.length(crate::tool::apart_m(from, to));
                figures.push(words.say(Text::SideFigure, &[("from", &one), ("to", &other), ("length", &length)]));
            }
            for &corner in &shown.turns {
                let Some(turn_deg) = shown.turn_deg(corner) else { continue };
                let (number, degrees) = ((corner + 1).to_string(), words.degrees(turn_deg));
                figures.push(words.say(Text::TurnFigure, &[("number", &number), ("degrees", &degrees)]));
            }
            if let Some((area_m2, _)) = shown.area {
                figures.push(words.say(Text::AreaFigure, &[("area", &words.area(area_m2))]));
            }
        }
        (!figures.is_empty()).then(|| words.say(Text::DimensionsNode, &[("figures", &figures.join(", "))]))
    }
}

/// What stands, made anew where something else is in the hand or the plan changed; while a hand drags, only its own
/// thing changes.
fn standing<'a>(
    kept: &'a mut Option<(Option<Shape>, u64, Standing)>,
    plan: &Plan,
    workup: &workup::Workup,
    own: Option<&Shape>,
    revision: u64,
    dragging: bool,
) -> &'a Standing {
    let fits = kept.as_ref().is_some_and(|(of, at, _)| of.as_ref() == own && (dragging || *at == revision));
    if !fits {
        *kept = None;
    }
    let (_, _, standing) = kept.get_or_insert_with(|| (own.cloned(), revision, Standing::of(plan, workup, own)));
    standing
}

/// An answer, about to be said and shown.
struct Said<'a> {
    standing: &'a Standing,
    plan: &'a Plan,
    words: Words,
    corner: &'a Corner,
    asked: &'a Asked,
    found: Guided,
}

impl Said<'_> {
    fn snapped(&self) -> Option<Snapped> {
        let words = self.words;
        let reason = match self.found.why {
            Why::Place(index) => self.standing.place_reason(self.plan, words, index)?,
            Why::One(guide) => self.guide(guide)?,
            Why::Both(one, other) => {
                words.say(Text::Both, &[("one", &self.guide(one)?), ("other", &self.guide(other)?)])
            }
            Why::Grid => words.say(Text::OnGrid, &[("step", &words.far(self.asked.grid_m?))]),
        };
        Some(Snapped { at: place(self.found.at), reason })
    }

    fn guide(&self, guide: Guide) -> Option<String> {
        let side = |text: Text, line: Line| Some(self.words.say(text, &[("side", &self.side(line)?)]));
        match guide {
            Guide::On(line) => side(Text::OnSide, line),
            Guide::Square(line, _) => side(Text::SquareTo, line),
            Guide::Parallel(line, _) => side(Text::ParallelTo, line),
            Guide::InLine(line) => side(Text::InLineWith, line),
            Guide::AsLong(line, _) => side(Text::AsLongAs, line),
            Guide::SquareCorner => Some(self.words.text(Text::SquareCorner).to_owned()),
            Guide::Panels(1, _) => Some(self.words.text(Text::OnePanel).to_owned()),
            Guide::Panels(panels, _) => Some(self.words.say(Text::Panels, &[("panels", &panels.to_string())])),
        }
    }

    fn side(&self, line: Line) -> Option<String> {
        match line {
            Line::Own(index) => {
                let [from, to] = self.corner.named.get(index)?.map(|corner| (corner + 1).to_string());
                Some(self.words.say(Text::OwnSide, &[("from", &from), ("to", &to)]))
            }
            Line::Other(index) => self.standing.side_name(self.plan, self.words, index),
        }
    }

    fn caught(&self) -> Caught {
        let ends = |line: Line| {
            let edge = self.standing.guides.edge(self.asked, line);
            edge.map(|edge| [place(edge.from), place(edge.to)])
        };
        let from = |beside: Beside| self.corner.beside[usize::from(beside == Beside::After)];
        let mark = |guide: Guide| match guide {
            Guide::On(line) => Some(Mark { sign: Sign::On, side: ends(line), from: None }),
            Guide::Square(line, beside) => Some(Mark { sign: Sign::Square, side: ends(line), from: from(beside) }),
            Guide::Parallel(line, beside) => Some(Mark { sign: Sign::Parallel, side: ends(line), from: from(beside) }),
            Guide::InLine(line) => Some(Mark { sign: Sign::InLine, side: ends(line), from: None }),
            Guide::AsLong(line, beside) => Some(Mark { sign: Sign::AsLong, side: ends(line), from: from(beside) }),
            Guide::Panels(_, beside) => Some(Mark { sign: Sign::Length, side: None, from: from(beside) }),
            Guide::SquareCorner => None,
        };
        let square = self.found.why.guides().any(|guide| guide == Guide::SquareCorner);
        let beside = match self.corner.beside {
            [Some(before), Some(after)] if square => Some([before, after]),
            _ => None,
        };
        Caught { at: place(self.found.at), marks: self.found.why.guides().filter_map(mark).collect(), square: beside }
    }
}

fn is_closed(plan: &Plan, shape: &Shape) -> bool {
    match shape {
        Shape::Run(id) => plan.run(id).is_none_or(plan::Run::closed),
        Shape::Boundary | Shape::KeepOut(_) | Shape::Shade(_) => true,
        Shape::Branch(..) | Shape::Wall(_) => false,
    }
}

fn area_m2(outline: &[Point], closed: bool) -> Option<f64> {
    let places: Vec<_> = outline.iter().copied().map(point).collect();
    (closed && places.len() > 2).then(|| geometry::Outline::closed(&places).area_m2())
}

/// The side in hand, the turn before it and, where it closes, the last side and the area.
fn of_drawn(of: Drawn, corners: &[Point], next: Point) -> Option<Shown> {
    let last = corners.len().checked_sub(1)?;
    let outline: Vec<Point> = corners.iter().copied().chain([next]).collect();
    let closed = of.closes() && outline.len() > 2;
    let mut shown = Shown { sides: vec![last], turns: vec![last], closed, ..Shown::default() };
    if closed {
        shown.sides.push(last + 1);
        shown.turns.extend([last + 1, 0]);
        shown.area = area_m2(&outline, true).map(|area_m2| (area_m2, Some(last + 1)));
    }
    shown.outline = outline;
    Some(shown)
}

/// Lengths beside a corner and its turn; a run's own lengths stand on its sides.
fn of_dragged(plan: &Plan, shape: &Shape, corner: usize) -> Option<Shown> {
    let (outline, closed) = (plan.outline(shape)?.to_vec(), is_closed(plan, shape));
    let count = outline.len();
    let before = (corner + count.max(1) - 1) % count.max(1);
    let area = area_m2(&outline, closed).map(|area_m2| (area_m2, Some(corner)));
    let mut turns = vec![corner, before, (corner + 1) % count.max(1)];
    turns.dedup();
    let labelled = matches!(shape, Shape::Run(_));
    Some(Shown { outline, closed, sides: vec![before, corner], turns, area, labelled })
}

/// All lengths and turns of what is picked, and its area.
fn of_kept(plan: &Plan, thing: Thing) -> Option<Shown> {
    let shape = shape_of(plan, thing)?;
    let (outline, closed) = (plan.outline(&shape)?.to_vec(), is_closed(plan, &shape));
    let all: Vec<usize> = (0..outline.len()).collect();
    let area = area_m2(&outline, closed).map(|area_m2| (area_m2, None));
    let labelled = matches!(shape, Shape::Run(_));
    Some(Shown { outline, closed, sides: all.clone(), turns: all, area, labelled })
}

/// The outline that a thing is or belongs to.
fn shape_of(plan: &Plan, thing: Thing) -> Option<Shape> {
    if let Some((shape, _)) = corner_of(plan, thing) {
        return Some(shape);
    }
    let run = |run: usize| plan.runs.get(run).map(|run| run.id.clone());
    match thing {
        Thing::Run { run: index } | Thing::RunSide { run: index, .. } => run(index).map(Shape::Run),
        Thing::Boundary | Thing::BoundarySide { .. } => Some(Shape::Boundary),
        Thing::KeepOut { keep_out } | Thing::KeepOutSide { keep_out, .. } => Some(Shape::KeepOut(keep_out)),
        Thing::Branch { run: index, branch }
        | Thing::BranchSide { run: index, branch, .. }
        | Thing::BranchCorner { run: index, branch, .. } => run(index).map(|id| Shape::Branch(id, branch)),
        _ => None,
    }
}
