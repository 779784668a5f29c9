//! A side in the hand that slides: what it is asked about, and what caught it in words and as marks.

use drawing::guides::{Mark, Sign};
use geometry::guides::{Beside, Edge, Line, Moving, SideAsked, SideWhy, Slid};
use plan::Point;
use words::texts::Guides as Text;

use super::said::{Caught, Told, own_side, panels_said};
use crate::editor::Snapped;
use crate::editor::snap::{place, point};

/// A side of an outline, where it was taken hold of.
#[derive(Clone, Debug)]
pub(super) struct Side {
    pub(super) edge: Edge,
    /// Its corners' numbers.
    ends: [usize; 2],
    /// The corners from which its neighbours lead to it.
    pub(super) beyond: [Option<Point>; 2],
    /// Their numbers.
    beyond_numbers: [Option<usize>; 2],
    /// The neighbours by their first corners.
    pub(super) neighbours: [Option<usize>; 2],
    /// The own sides that stay.
    pub(super) own: Vec<Edge>,
    /// The numbers of their corners.
    named: Vec<[usize; 2]>,
}

impl Side {
    pub(super) fn of(outline: &[Point], closed: bool, side: usize) -> Option<Self> {
        let count = outline.len();
        let sides = if closed && count > 2 { count } else { count.saturating_sub(1) };
        if side >= sides {
            return None;
        }
        let edge = |side: usize| Edge { from: point(outline[side]), to: point(outline[(side + 1) % count]) };
        let before = if side > 0 { Some(side - 1) } else { (sides == count).then(|| count - 1) };
        let after = Some((side + 1) % count).filter(|after| *after < sides && sides > 1);
        let beyond_numbers = [before, after.map(|after| (after + 1) % count)];
        let moves = |one: usize| one == side || before == Some(one) || after == Some(one);
        let stay: Vec<usize> = (0..sides).filter(|&one| !moves(one)).collect();
        Some(Self {
            edge: edge(side),
            ends: [side, (side + 1) % count],
            beyond: beyond_numbers.map(|corner| corner.map(|corner| outline[corner])),
            beyond_numbers,
            neighbours: [before, after],
            own: stay.iter().map(|&one| edge(one)).collect(),
            named: stay.iter().map(|&one| [one, (one + 1) % count]).collect(),
        })
    }
}

/// An answer about a side, about to be said and shown.
pub(super) struct SideSaid<'a> {
    pub(super) told: Told<'a>,
    pub(super) side: &'a Side,
    pub(super) asked: &'a SideAsked<'a>,
    pub(super) found: Slid,
}

fn end(beside: Beside) -> usize {
    usize::from(beside == Beside::After)
}

impl SideSaid<'_> {
    pub(super) fn snapped(&self) -> Option<Snapped> {
        Some(Snapped { at: self.hold(), reason: self.reason()? })
    }

    /// Where the side is held, slid along.
    fn hold(&self) -> Point {
        let Edge { from, to } = self.asked.side;
        place(self.asked.hold + (to - from).unit().left() * self.found.by_m)
    }

    fn reason(&self) -> Option<String> {
        let words = self.told.words;
        let side = |line: Line| self.told.side(&self.side.named, line);
        let of = |what: Option<String>, reason: String| match what {
            Some(what) => words.say(Text::Of, &[("what", &what), ("reason", &reason)]),
            None => reason,
        };
        let corner = |beside: Beside| {
            let number = (self.side.ends[end(beside)] + 1).to_string();
            Some(words.say(Text::OwnCorner, &[("number", &number)]))
        };
        let on_grid = || Some(words.say(Text::OnGrid, &[("step", &words.far(self.asked.grid_m?))]));
        Some(match self.found.why {
            SideWhy::Place(index) => self.told.place(index)?,
            SideWhy::Along(line) => words.say(Text::AlongSide, &[("side", &side(line)?)]),
            SideWhy::InLine(line) => words.say(Text::InLineWith, &[("side", &side(line)?)]),
            SideWhy::EndOn(beside, line) => of(corner(beside), self.told.on_side(&self.side.named, line)?),
            SideWhy::Panels(panels, beside) => of(self.named(Moving::beside(beside)), panels_said(words, panels)),
            SideWhy::AsLong(moving, line) => {
                of(self.named(moving), words.say(Text::AsLongAs, &[("side", &side(line)?)]))
            }
            SideWhy::AsItself(beside) => {
                let itself = own_side(words, self.side.ends);
                of(self.named(Moving::beside(beside)), words.say(Text::AsLongAs, &[("side", &itself)]))
            }
            SideWhy::Grid => on_grid()?,
            SideWhy::EndOnGrid(beside) => of(corner(beside), on_grid()?),
        })
    }

    /// What a neighbour is called; the side in the hand needs no name.
    fn named(&self, moving: Moving) -> Option<String> {
        let [from, to] = self.side.ends;
        let [before, after] = self.side.beyond_numbers;
        match moving {
            Moving::Before => Some(own_side(self.told.words, [before?, from])),
            Moving::Itself => None,
            Moving::After => Some(own_side(self.told.words, [to, after?])),
        }
    }

    pub(super) fn caught(&self) -> Caught {
        let ends = self.asked.ends(self.found.by_m).map(place);
        let side = |line: Line| {
            let edge = self.told.standing.guides.edge(&self.side.own, line);
            edge.map(|edge| [place(edge.from), place(edge.to)])
        };
        let itself = Mark { sign: Sign::On, side: Some(ends), from: None, to: None };
        let long = |moving: Moving, sign: Sign, side: Option<[Point; 2]>| {
            let [before, after] = self.side.beyond;
            let (from, to) = match moving {
                Moving::Before => (before, ends[0]),
                Moving::Itself => (Some(ends[0]), ends[1]),
                Moving::After => (after, ends[1]),
            };
            Mark { sign, side, from, to: Some(to) }
        };
        let dot = |at: Point| Mark { sign: Sign::Place, side: None, from: None, to: Some(at) };
        let on = |line: Line| Mark { sign: Sign::On, side: side(line), from: None, to: None };
        let marks = match self.found.why {
            SideWhy::Place(index) => {
                let at = self.told.standing.guides.places().get(index).copied().map(place);
                [itself].into_iter().chain(at.map(dot)).collect()
            }
            SideWhy::Along(line) => vec![on(line), itself],
            SideWhy::InLine(line) => vec![Mark { sign: Sign::InLine, side: side(line), from: None, to: None }, itself],
            SideWhy::EndOn(beside, line) => vec![on(line), dot(ends[end(beside)])],
            SideWhy::Panels(_, beside) => vec![long(Moving::beside(beside), Sign::Length, None)],
            SideWhy::AsLong(moving, line) => vec![long(moving, Sign::AsLong, side(line))],
            SideWhy::AsItself(beside) => vec![long(Moving::beside(beside), Sign::AsLong, Some(ends))],
            SideWhy::Grid => vec![itself],
            SideWhy::EndOnGrid(beside) => vec![dot(ends[end(beside)])],
        };
        Caught { at: self.hold(), marks, square: None }
    }
}
