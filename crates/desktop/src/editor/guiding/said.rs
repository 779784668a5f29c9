//! What caught the hand in words, and as marks on the map.

use care::names::{self, Named};
use drawing::guides::{Mark, Sign};
use geometry::guides::{Asked, Beside, Guide, Guided, Line, Why};
use plan::{Plan, Point};
use words::Words;
use words::texts::{Guides as Text, Underlay};

use super::corner::Corner;
use crate::editor::Snapped;
use crate::editor::snap::{Standing, place};

/// What caught the hand, as it is shown.
#[derive(Debug)]
pub(super) struct Caught {
    pub(super) at: Point,
    pub(super) marks: Vec<Mark>,
    /// The corners beside a square corner.
    pub(super) square: Option<[Point; 2]>,
}
/// What stands, to be told of.
#[derive(Clone, Copy)]
pub(super) struct Told<'a> {
    pub(super) standing: &'a Standing,
    pub(super) plan: &'a Plan,
    pub(super) words: Words,
}

impl Told<'_> {
    /// What a place is called.
    pub(super) fn place(&self, index: usize) -> Option<String> {
        self.standing.place_reason(self.plan, self.words, index)
    }

    /// What a side is called; `own` are the numbers of the corners of the own sides.
    pub(super) fn side(&self, own: &[[usize; 2]], line: Line) -> Option<String> {
        match line {
            Line::Own(index) => own.get(index).map(|&ends| own_side(self.words, ends)),
            Line::Other(index) => self.standing.side_name(self.plan, self.words, index),
        }
    }

    /// That it is on a side.
    pub(super) fn on_side(&self, own: &[[usize; 2]], line: Line) -> Option<String> {
        let name = self.side(own, line)?;
        Some(match self.standing.wall(line) {
            Some(_) => self.words.say(Underlay::AtWall, &[("name", &name)]),
            None => self.words.say(Text::OnSide, &[("side", &name)]),
        })
    }
}

/// What a side of what is in the hand is called, by the numbers of its corners.
pub(super) fn own_side(words: Words, ends: [usize; 2]) -> String {
    let [from, to] = ends.map(|corner| (corner + 1).to_string());
    words.say(Text::OwnSide, &[("from", &from), ("to", &to)])
}

/// An answer about a corner, about to be said and shown.
pub(super) struct Said<'a> {
    pub(super) told: Told<'a>,
    /// Whether a run would end on a wall there.
    pub(super) ends_run: bool,
    pub(super) corner: &'a Corner,
    pub(super) asked: &'a Asked<'a>,
    pub(super) found: Guided,
}

impl Said<'_> {
    pub(super) fn snapped(&self) -> Option<Snapped> {
        let words = self.told.words;
        let reason = match self.found.why {
            Why::Place(index) => self.place(index)?,
            Why::One(guide) => self.guide(guide)?,
            // Where two cross, one reason is enough: the stronger stands first.
            Why::Both(one, _) => self.guide(one)?,
            Why::Grid => words.say(Text::OnGrid, &[("step", &words.far(self.asked.grid_m?))]),
        };
        Some(Snapped { at: place(self.found.at), reason })
    }

    fn guide(&self, guide: Guide) -> Option<String> {
        let words = self.told.words;
        let side =
            |text: Text, line: Line| Some(words.say(text, &[("side", &self.told.side(&self.corner.named, line)?)]));
        match guide {
            Guide::On(line) => self.on(line),
            Guide::Square(line, _) => side(Text::SquareTo, line),
            Guide::Parallel(line, _) => side(Text::ParallelTo, line),
            Guide::InLine(line) => side(Text::InLineWith, line),
            Guide::AsLong(line, _) => side(Text::AsLongAs, line),
            Guide::SquareCorner => Some(words.text(Text::SquareCorner).to_owned()),
            Guide::Panels(panels, _) => Some(panels_said(words, panels)),
        }
    }

    /// On a side; of a wall what it means for the run that is unrolled.
    fn on(&self, line: Line) -> Option<String> {
        let Some(wall) = self.told.standing.wall(line).filter(|_| self.ends_run) else {
            return self.told.on_side(&self.corner.named, line);
        };
        Some(self.ends_on(wall, &self.told.side(&self.corner.named, line)?))
    }

    /// At a place; of a wall's corner what it means for the run that is unrolled.
    fn place(&self, index: usize) -> Option<String> {
        let Some((wall, corner)) = self.told.standing.wall_corner(index).filter(|_| self.ends_run) else {
            return self.told.place(index);
        };
        let (words, name) = (self.told.words, names::listed(self.told.plan, self.told.words, Named::Wall(wall)));
        let at = words.say(Text::CornerOf, &[("number", &(corner + 1).to_string()), ("name", &name)]);
        Some(self.ends_on(wall, &at))
    }

    /// What it means for the run that is unrolled that it is on a wall there.
    fn ends_on(&self, wall: usize, name: &str) -> String {
        let holds = self.told.plan.walls.get(wall).is_some_and(plan::Wall::holds_birds);
        let text = if holds { Underlay::OnWall } else { Underlay::OnWallNoBirds };
        self.told.words.say(text, &[("name", name)])
    }

    pub(super) fn caught(&self) -> Caught {
        let ends = |line: Line| {
            let edge = self.told.standing.guides.edge(&self.asked.own, line);
            edge.map(|edge| [place(edge.from), place(edge.to)])
        };
        let from = |beside: Beside| self.corner.beside[usize::from(beside == Beside::After)];
        let mark = |guide: Guide| {
            let (sign, line, beside) = match guide {
                Guide::On(line) => (Sign::On, Some(line), None),
                Guide::Square(line, beside) => (Sign::Square, Some(line), Some(beside)),
                Guide::Parallel(line, beside) => (Sign::Parallel, Some(line), Some(beside)),
                Guide::InLine(line) => (Sign::InLine, Some(line), None),
                Guide::AsLong(line, beside) => (Sign::AsLong, Some(line), Some(beside)),
                Guide::Panels(_, beside) => (Sign::Length, None, Some(beside)),
                Guide::SquareCorner => return None,
            };
            Some(Mark { sign, side: line.and_then(ends), from: beside.and_then(from), to: None })
        };
        let square = self.found.why.guides().any(|guide| guide == Guide::SquareCorner);
        let beside = match self.corner.beside {
            [Some(before), Some(after)] if square => Some([before, after]),
            _ => None,
        };
        Caught { at: place(self.found.at), marks: self.found.why.guides().filter_map(mark).collect(), square: beside }
    }
}

/// So many panels.
pub(super) fn panels_said(words: Words, panels: u32) -> String {
    match panels {
        1 => words.text(Text::OnePanel).to_owned(),
        _ => words.say(Text::Panels, &[("panels", &panels.to_string())]),
    }
}
