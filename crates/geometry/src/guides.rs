//! What a corner in hand lines up with: places, sides, the square to a side, its parallel, its line beyond its end, its
//! length, whole panels, a grid.
//!
//! One answer at a time. Of everything within reach the first in this order is taken, the nearer of equals, then the one
//! stated first: a place; where two guides cross; a side itself; square to a side, or a square corner; whole panels;
//! parallel to a side; in line with a side; as long as a side; the grid. What holds the corner already counts as nearer
//! than it is, so that a trembling hand changes nothing. Metres; every answer lies on its guide to rounding.

use crate::point::{Point, Vector};

/// A straight side that stands on the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// Its first end.
    pub from: Point,
    /// Its other end.
    pub to: Point,
}

impl Edge {
    /// Its length, metres.
    pub fn length_m(&self) -> f64 {
        self.from.distance_m(self.to)
    }

    /// The place on it that is nearest to another.
    pub fn nearest(&self, at: Point) -> Point {
        let way = self.to - self.from;
        let square = way.dot(way);
        let share = if square > 0.0 { ((at - self.from).dot(way) / square).clamp(0.0, 1.0) } else { 0.0 };
        self.from.towards(self.to, share)
    }
}

/// A side that a guide comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Line {
    /// One of the outline's own that do not move, by its place in [`Asked::own`].
    Own(usize),
    /// One of another thing, by its place in [`Guides::new`].
    Other(usize),
}

/// A corner beside the one in hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Beside {
    /// The one before.
    Before,
    /// The one after.
    After,
}

/// One guide.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Guide {
    /// On a side.
    On(Line),
    /// The side from the corner beside stands square on another.
    Square(Line, Beside),
    /// The corner in hand is square.
    SquareCorner,
    /// The side from the corner beside is so many panels long.
    Panels(u32, Beside),
    /// The side from the corner beside is parallel to another.
    Parallel(Line, Beside),
    /// On the line of a side, beyond its ends.
    InLine(Line),
    /// The side from the corner beside is as long as another.
    AsLong(Line, Beside),
}

impl Guide {
    /// The side that it comes from.
    fn line(self) -> Option<Line> {
        match self {
            Self::On(line)
            | Self::InLine(line)
            | Self::Square(line, _)
            | Self::Parallel(line, _)
            | Self::AsLong(line, _) => Some(line),
            Self::SquareCorner | Self::Panels(..) => None,
        }
    }

    fn rank(self) -> u8 {
        match self {
            Self::On(_) => 2,
            Self::Square(..) | Self::SquareCorner => 3,
            Self::Panels(..) => 4,
            Self::Parallel(..) => 5,
            Self::InLine(_) => 6,
            Self::AsLong(..) => 7,
        }
    }
}

/// Why a corner stands where it was caught.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Why {
    /// On a place, by its place in [`Guides::new`].
    Place(usize),
    /// Where two guides cross.
    Both(Guide, Guide),
    /// On one guide.
    One(Guide),
    /// On the grid.
    Grid,
}

impl Why {
    fn rank(self) -> u8 {
        match self {
            Self::Place(_) => 0,
            Self::Both(..) => 1,
            Self::One(guide) => guide.rank(),
            Self::Grid => 8,
        }
    }

    /// The guides that it lies on.
    pub fn guides(self) -> impl Iterator<Item = Guide> {
        let (one, other) = match self {
            Self::Both(one, other) => (Some(one), Some(other)),
            Self::One(guide) => (Some(guide), None),
            Self::Place(_) | Self::Grid => (None, None),
        };
        one.into_iter().chain(other)
    }
}

/// A corner that was caught.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Guided {
    /// Where.
    pub at: Point,
    /// Why.
    pub why: Why,
}

/// What is asked about a corner in hand.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Asked {
    /// Where the hand is.
    pub at: Point,
    /// The corner before and the one after, as far as there are any.
    pub beside: [Option<Point>; 2],
    /// The own sides that do not move.
    pub own: Vec<Edge>,
    /// Which of them end at the corner before, and begin at the one after.
    pub joined: [Option<usize>; 2],
    /// How near a place catches, metres; a guide from two thirds of that.
    pub reach_m: f64,
    /// How far a side of something else may be from the hand to be a guide, metres.
    pub look_m: f64,
    /// Length of a panel, metres, where whole panels count.
    pub panel_m: Option<f64>,
    /// Step of the grid, metres.
    pub grid_m: Option<f64>,
    /// What holds it already.
    pub held: Option<Why>,
}

/// What holds already counts as at this share of its distance.
const HELD_SHARE: f64 = 0.65;
/// Guides that cross under a smaller sine do not pin a place down.
const LEAST_SINE: f64 = 0.17;
/// A place catches from all of the reach, a crossing and a guide from these shares of it: lines lie closer than places.
const CROSSING_SHARE: f64 = 0.8;
const GUIDE_SHARE: f64 = 0.67;
/// So many of the best guides are crossed with each other.
const MOST_CROSSED: usize = 10;
/// Sides shorter than so many reaches have no way that a hand could mean.
const LEAST_REACHES: f64 = 2.0;
/// Of another thing's sides those shorter than so many reaches give no square and no parallel.
const LEAST_OTHER_REACHES: f64 = 6.0;
/// Sides nearest to the hand that give square and parallel.
const MOST_NEAR: usize = 6;

/// Places and sides that stand.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Guides {
    places: Vec<Point>,
    edges: Vec<Edge>,
}

/// What a guide looks like on the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Form {
    Segment(Edge),
    /// Through a place, along a direction of length one.
    Line(Point, Vector),
    Round(Point, f64),
}

impl Form {
    fn nearest(&self, at: Point) -> Option<Point> {
        match *self {
            Self::Segment(edge) => Some(edge.nearest(at)),
            Self::Line(through, along) => Some(through + along * (at - through).dot(along)),
            Self::Round(middle, radius_m) => {
                let way = at - middle;
                let length_m = way.length();
                (length_m > 0.0).then(|| middle + way * (radius_m / length_m))
            }
        }
    }

    fn line(&self) -> Option<(Point, Vector)> {
        match *self {
            Self::Segment(edge) => Some((edge.from, (edge.to - edge.from).unit())),
            Self::Line(through, along) => Some((through, along)),
            Self::Round(..) => None,
        }
    }

    fn holds(&self, at: Point, slack_m: f64) -> bool {
        self.nearest(at).is_some_and(|nearest| nearest.distance_m(at) <= slack_m)
    }

    /// Where two cross, as far as they do so clearly.
    fn crossings(&self, other: &Self) -> [Option<Point>; 2] {
        match (self.line(), other.line()) {
            (Some((a, along)), Some((b, across))) => {
                let sine = along.cross(across);
                if sine.abs() < LEAST_SINE {
                    return [None; 2];
                }
                let at = a + along * ((b - a).cross(across) / sine);
                let on_both = self.holds(at, 1e-6) && other.holds(at, 1e-6);
                [on_both.then_some(at), None]
            }
            (Some((a, along)), None) => {
                Self::line_and_round(a, along, other).map(|at| at.filter(|&at| self.holds(at, 1e-6)))
            }
            (None, Some((b, across))) => {
                Self::line_and_round(b, across, self).map(|at| at.filter(|&at| other.holds(at, 1e-6)))
            }
            (None, None) => Self::two_rounds(self, other),
        }
    }

    fn line_and_round(through: Point, along: Vector, round: &Self) -> [Option<Point>; 2] {
        let Self::Round(middle, radius_m) = *round else { return [None; 2] };
        let foot = through + along * (middle - through).dot(along);
        let off_m = foot.distance_m(middle);
        let square = (radius_m - off_m) * (radius_m + off_m);
        // A line that grazes pins nothing down.
        if square.sqrt() < LEAST_SINE * radius_m || !square.is_finite() || square < 0.0 {
            return [None; 2];
        }
        let half = along * square.sqrt();
        [Some(foot + half), Some(foot - half)]
    }

    fn two_rounds(one: &Self, other: &Self) -> [Option<Point>; 2] {
        let (&Self::Round(a, r), &Self::Round(b, s)) = (one, other) else { return [None; 2] };
        let between = b - a;
        let apart_m = between.length();
        if apart_m <= 0.0 {
            return [None; 2];
        }
        let along_m = 0.5 * (apart_m + (r - s) * ((r + s) / apart_m));
        let square = (r - along_m) * (r + along_m);
        if square < 0.0 || square.sqrt() < LEAST_SINE * r.min(s) {
            return [None; 2];
        }
        let unit = between * (1.0 / apart_m);
        let (foot, off) = (a + unit * along_m, unit.left() * square.sqrt());
        [Some(foot + off), Some(foot - off)]
    }
}

impl Guides {
    /// The places and sides that stand; of places at one spot the first is taken.
    pub fn new(places: Vec<Point>, edges: Vec<Edge>) -> Self {
        Self { places, edges }
    }

    /// The places.
    pub fn places(&self) -> &[Point] {
        &self.places
    }

    /// The sides.
    pub fn edges(&self) -> &[Edge] {
        &self.edges
    }

    /// A side by its name.
    pub fn edge(&self, asked: &Asked, line: Line) -> Option<Edge> {
        match line {
            Line::Own(index) => asked.own.get(index),
            Line::Other(index) => self.edges.get(index),
        }
        .copied()
    }

    /// What catches the corner; `None` where nothing is within reach.
    pub fn best(&self, asked: &Asked) -> Option<Guided> {
        if !(asked.at.is_finite() && asked.reach_m > 0.0 && asked.reach_m.is_finite()) {
            return None;
        }
        let mut best = Best { asked, found: None };
        for (index, &place) in self.places.iter().enumerate() {
            best.offer(place, Why::Place(index), 1.0);
        }
        // Nothing goes before a place.
        if let Some((found, _)) = best.found {
            return Some(found);
        }
        let mut forms = self.forms(asked);
        let far_m = |form: &Form| form.nearest(asked.at).map_or(f64::INFINITY, |at| at.distance_m(asked.at));
        forms.retain(|(_, form)| far_m(form) <= asked.reach_m / HELD_SHARE);
        forms.sort_by(|one, other| {
            (one.0.rank())
                .cmp(&other.0.rank())
                .then(far_m(&one.1).total_cmp(&far_m(&other.1)))
                .then(one.0.cmp(&other.0))
        });
        for (guide, form) in &forms {
            if let Some(at) = form.nearest(asked.at) {
                best.offer(at, Why::One(*guide), GUIDE_SHARE);
            }
        }
        forms.truncate(MOST_CROSSED);
        for (index, (one, form)) in forms.iter().enumerate() {
            for (other, across) in &forms[index + 1..] {
                for at in form.crossings(across).into_iter().flatten() {
                    let (first, second) = if one <= other { (*one, *other) } else { (*other, *one) };
                    best.offer(at, Why::Both(first, second), CROSSING_SHARE);
                }
            }
        }
        if let Some(step_m) = asked.grid_m.filter(|step_m| *step_m > 0.0) {
            let on = |metres: f64| (metres / step_m).round() * step_m;
            best.offer(Point::new(on(asked.at.east_m), on(asked.at.north_m)), Why::Grid, 1.0);
        }
        best.found.map(|(found, _)| found)
    }

    /// What catches one of many places that move together, and which of them: the answer that goes before the others.
    ///
    /// `held` is the one that is caught already; only what stands near all of them together is looked at.
    pub fn best_of(&self, asked: &Asked, hands: &[Point], held: Option<(usize, Why)>) -> Option<(usize, Guided)> {
        let (mut low, mut high) = (*hands.first()?, *hands.first()?);
        for hand in hands {
            low = Point::new(low.east_m.min(hand.east_m), low.north_m.min(hand.north_m));
            high = Point::new(high.east_m.max(hand.east_m), high.north_m.max(hand.north_m));
        }
        let margin_m = asked.reach_m / HELD_SHARE;
        let meets = |one: Point, other: Point| {
            one.east_m.max(other.east_m) >= low.east_m - margin_m
                && one.east_m.min(other.east_m) <= high.east_m + margin_m
                && one.north_m.max(other.north_m) >= low.north_m - margin_m
                && one.north_m.min(other.north_m) <= high.north_m + margin_m
        };
        let near = |count: usize, meets: &dyn Fn(usize) -> bool| (0..count).filter(|&index| meets(index)).collect();
        let places: Vec<usize> = near(self.places.len(), &|index| meets(self.places[index], self.places[index]));
        let edges: Vec<usize> = near(self.edges.len(), &|index| meets(self.edges[index].from, self.edges[index].to));
        let part = Self {
            places: places.iter().map(|&index| self.places[index]).collect(),
            edges: edges.iter().map(|&index| self.edges[index]).collect(),
        };
        let line = |line: Line, to: &dyn Fn(usize) -> Option<usize>| match line {
            Line::Other(index) => to(index).map(Line::Other),
            Line::Own(_) => None,
        };
        // Places that move along have no sides of their own to line up with.
        let guide = |guide: Guide, to: &dyn Fn(usize) -> Option<usize>| match guide {
            Guide::On(of) => line(of, to).map(Guide::On),
            Guide::InLine(with) => line(with, to).map(Guide::InLine),
            _ => None,
        };
        let named = |why: Why, place: &dyn Fn(usize) -> Option<usize>, edge: &dyn Fn(usize) -> Option<usize>| match why
        {
            Why::Place(index) => place(index).map(Why::Place),
            Why::One(one) => guide(one, edge).map(Why::One),
            Why::Both(one, other) => Some(Why::Both(guide(one, edge)?, guide(other, edge)?)),
            Why::Grid => Some(Why::Grid),
        };
        let within = |index: usize, of: &[usize]| of.binary_search(&index).ok();
        let mut best: Option<(usize, Guided, f64)> = None;
        for (index, &hand) in hands.iter().enumerate() {
            let held = held.filter(|(of, _)| *of == index);
            let held = held.and_then(|(_, why)| named(why, &|at| within(at, &places), &|at| within(at, &edges)));
            let one = Asked { at: hand, beside: [None; 2], own: Vec::new(), joined: [None; 2], held, ..asked.clone() };
            let Some(found) = part.best(&one) else { continue };
            let far_m = found.at.distance_m(hand) * if held == Some(found.why) { HELD_SHARE } else { 1.0 };
            let rank = found.why.rank();
            if best.is_none_or(|(_, other, nearest_m)| (rank, far_m) < (other.why.rank(), nearest_m)) {
                let all = |of: &[usize], index: usize| of.get(index).copied();
                let why = named(found.why, &|at| all(&places, at), &|at| all(&edges, at));
                best = why.map(|why| (index, Guided { why, ..found }, far_m)).or(best);
            }
        }
        best.map(|(index, found, _)| (index, found))
    }

    /// Every guide of a corner, near or not; the named ones of a list of many are those near the hand.
    fn forms(&self, asked: &Asked) -> Vec<(Guide, Form)> {
        let mut forms = Vec::new();
        let least_m = LEAST_REACHES * asked.reach_m;
        let mut near: Vec<(f64, usize)> = Vec::new();
        let ways = asked.own.iter().enumerate().map(|(index, edge)| (Line::Own(index), edge));
        for (line, edge) in ways.chain(self.edges.iter().enumerate().map(|(index, edge)| (Line::Other(index), edge))) {
            let off_m = edge.nearest(asked.at).distance_m(asked.at);
            if off_m <= asked.reach_m / HELD_SHARE {
                forms.push((Guide::On(line), Form::Segment(*edge)));
            }
            let length_m = edge.length_m();
            // One of its own is a guide from anywhere, and so is what holds already.
            let holds = asked.held.is_some_and(|why| why.guides().any(|guide| guide.line() == Some(line)));
            let seen = matches!(line, Line::Own(_)) || off_m <= asked.look_m || holds;
            if !(seen && length_m >= least_m) {
                continue;
            }
            let along = (edge.to - edge.from) * (1.0 / length_m);
            let off_line_m = along.cross(asked.at - edge.from).abs();
            if off_line_m <= asked.reach_m / HELD_SHARE && off_m > off_line_m + 1e-9 {
                forms.push((Guide::InLine(line), Form::Line(edge.from, along)));
            }
            match line {
                Line::Own(_) => beside_guides(asked, line, edge, length_m, &mut forms),
                Line::Other(index) if length_m >= LEAST_OTHER_REACHES * asked.reach_m => {
                    near.push((if holds { 0.0 } else { off_m }, index));
                }
                Line::Other(_) => {}
            }
        }
        if asked.beside.iter().any(Option::is_some) {
            let order = |one: &(f64, usize), other: &(f64, usize)| one.0.total_cmp(&other.0).then(one.1.cmp(&other.1));
            if near.len() > MOST_NEAR {
                near.select_nth_unstable_by(MOST_NEAR, order);
                near.truncate(MOST_NEAR);
            }
            near.sort_by(order);
            for &(_, index) in &near {
                let edge = &self.edges[index];
                beside_guides(asked, Line::Other(index), edge, edge.length_m(), &mut forms);
            }
        }
        for (beside, corner) in besides(asked) {
            if let Some(panel_m) = asked.panel_m.filter(|panel_m| *panel_m > 0.0) {
                let panels = (corner.distance_m(asked.at) / panel_m).round().clamp(1.0, 1e6);
                forms.push((Guide::Panels(panels as u32, beside), Form::Round(corner, panels * panel_m)));
            }
        }
        if let [Some(before), Some(after)] = asked.beside {
            // Every corner on the circle over the two beside it is square (Thales).
            let middle = before.towards(after, 0.5);
            forms.push((Guide::SquareCorner, Form::Round(middle, middle.distance_m(before))));
        }
        forms
    }
}

fn besides(asked: &Asked) -> impl Iterator<Item = (Beside, Point)> {
    [Beside::Before, Beside::After].into_iter().zip(asked.beside).filter_map(|(beside, corner)| Some((beside, corner?)))
}

/// What a side is to the new sides from the corners beside.
fn beside_guides(asked: &Asked, line: Line, edge: &Edge, length_m: f64, forms: &mut Vec<(Guide, Form)>) {
    let along = (edge.to - edge.from) * (1.0 / length_m);
    for (beside, corner) in besides(asked) {
        let which = usize::from(beside == Beside::After);
        forms.push((Guide::Square(line, beside), Form::Line(corner, along.left())));
        // Parallel to the side that it goes on from is in line with it, which was said.
        if asked.joined[which].map(Line::Own) != Some(line) {
            forms.push((Guide::Parallel(line, beside), Form::Line(corner, along)));
        }
        if matches!(line, Line::Own(_)) {
            forms.push((Guide::AsLong(line, beside), Form::Round(corner, length_m)));
        }
    }
}

struct Best<'a> {
    asked: &'a Asked,
    found: Option<(Guided, f64)>,
}

impl Best<'_> {
    fn offer(&mut self, at: Point, why: Why, share: f64) {
        let held = if self.asked.held == Some(why) { HELD_SHARE } else { 1.0 };
        let far_m = at.distance_m(self.asked.at) * held;
        if far_m.is_nan() || far_m > self.asked.reach_m * share {
            return;
        }
        let better = self.found.is_none_or(|(found, nearest_m)| {
            let (rank, other) = (why.rank(), found.why.rank());
            // Two that are one place to rounding: the one stated first.
            rank < other || (rank == other && far_m < nearest_m - 1e-9)
        });
        if better {
            self.found = Some((Guided { at, why }, far_m));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Asked, Beside, Edge, Guide, Guides, Line, Why};
    use crate::point::Point;
    use proptest::prelude::*;

    fn at(east_m: f64, north_m: f64) -> Point {
        Point::new(east_m, north_m)
    }

    fn edge(from: (f64, f64), to: (f64, f64)) -> Edge {
        Edge { from: from.into(), to: to.into() }
    }

    /// The third corner of an outline that began eastwards for 20 m.
    fn third(hand: Point) -> Asked {
        Asked {
            at: hand,
            beside: [Some(at(20.0, 0.0)), None],
            own: vec![edge((0.0, 0.0), (20.0, 0.0))],
            joined: [Some(0), None],
            reach_m: 0.5,
            look_m: 30.0,
            ..Asked::default()
        }
    }

    #[test]
    fn a_new_side_stands_square_on_the_last_and_runs_on_in_line_with_it() {
        let guides = Guides::default();
        let square = guides.best(&third(at(20.3, 13.0))).unwrap();
        assert_eq!((square.at, square.why), (at(20.0, 13.0), Why::One(Guide::Square(Line::Own(0), Beside::Before))));
        let on = guides.best(&third(at(31.0, -0.3))).unwrap();
        assert_eq!((on.at, on.why), (at(31.0, 0.0), Why::One(Guide::InLine(Line::Own(0)))));
        assert_eq!(guides.best(&third(at(33.0, 9.0))), None);
    }

    #[test]
    fn where_two_guides_cross_goes_before_either() {
        let found = Guides::default().best(&third(at(20.2, 19.8))).unwrap();
        assert!((found.at - at(20.0, 20.0)).length() < 1e-12);
        let (square, long) = (Guide::Square(Line::Own(0), Beside::Before), Guide::AsLong(Line::Own(0), Beside::Before));
        assert_eq!(found.why, Why::Both(square, long));
    }

    #[test]
    fn a_place_goes_before_a_side_and_a_side_before_the_grid() {
        let guides = Guides::new(vec![at(5.0, 5.0)], vec![edge((0.0, 4.8), (10.0, 4.8))]);
        let asked = |hand: Point| Asked { at: hand, reach_m: 0.5, grid_m: Some(1.0), ..Asked::default() };
        assert_eq!(guides.best(&asked(at(5.3, 4.9))).unwrap().why, Why::Place(0));
        let on = guides.best(&asked(at(7.1, 5.0))).unwrap();
        assert_eq!((on.at, on.why), (at(7.1, 4.8), Why::One(Guide::On(Line::Other(0)))));
        let grid = guides.best(&asked(at(7.1, 8.2))).unwrap();
        assert_eq!((grid.at, grid.why), (at(7.0, 8.0), Why::Grid));
    }

    #[test]
    fn a_hand_that_trembles_at_the_edge_of_reach_changes_nothing() {
        let guides = Guides::new(vec![at(0.0, 0.0)], Vec::new());
        let mut held = None;
        let mut held_at = |east_m: f64| {
            let asked = Asked { at: at(east_m, 0.0), reach_m: 0.5, held, ..Asked::default() };
            held = guides.best(&asked).map(|found| found.why);
            held.is_some()
        };
        let caught = [0.52, 0.49, 0.52, 0.6, 0.76, 0.8, 0.76, 0.6, 0.52].map(&mut held_at);
        assert_eq!(caught, [false, true, true, true, true, false, false, false, false]);
    }

    #[test]
    fn whole_panels_catch_a_side_of_netting() {
        let asked = Asked { panel_m: Some(2.5), ..third(at(26.0, 19.0)) };
        let found = Guides::default().best(&asked).unwrap();
        assert_eq!(found.why, Why::One(Guide::Panels(8, Beside::Before)));
        assert!((found.at.distance_m(at(20.0, 0.0)) - 20.0).abs() < 1e-12);
    }

    #[test]
    fn a_side_far_off_is_a_guide_only_as_far_as_one_looks() {
        let guides = Guides::new(Vec::new(), vec![edge((100.0, 100.0), (130.0, 110.0))]);
        let along = Asked { at: at(29.0, 3.0), ..third(at(0.0, 0.0)) };
        assert_eq!(guides.best(&along), None);
        let far = guides.best(&Asked { look_m: 200.0, ..along }).unwrap();
        assert_eq!(far.why, Why::One(Guide::Parallel(Line::Other(0), Beside::Before)));
    }

    #[test]
    fn of_a_whole_the_corner_that_meets_something_is_named_as_the_whole_list_names_it() {
        let places = (0..9).map(|step| at(100.0 * f64::from(step), 50.0)).collect();
        let edges = (0..9).map(|step| edge((100.0 * f64::from(step), 0.0), (100.0 * f64::from(step), 20.0))).collect();
        let guides = Guides::new(places, edges);
        let asked = Asked { reach_m: 0.5, look_m: 30.0, ..Asked::default() };
        let hands = [at(610.0, 10.0), at(600.3, 11.0), at(620.0, 30.0)];
        let (corner, found) = guides.best_of(&asked, &hands, None).unwrap();
        assert_eq!((corner, found.why, found.at), (1, Why::One(Guide::On(Line::Other(6))), at(600.0, 11.0)));
        let away = hands.map(|hand| at(hand.east_m + 0.15, hand.north_m));
        assert_eq!(guides.best_of(&asked, &away, None), None);
        assert!(guides.best_of(&asked, &away, Some((1, found.why))).is_some(), "what holds goes on to hold");
    }

    fn place() -> impl Strategy<Value = Point> {
        (-60.0..60.0, -60.0..60.0).prop_map(|(east_m, north_m)| at(east_m, north_m))
    }

    fn any_edge() -> impl Strategy<Value = Edge> {
        (place(), place())
            .prop_filter("a side", |(from, to)| from.distance_m(*to) > 4.0)
            .prop_map(|(from, to)| Edge { from, to })
    }

    fn any_asked() -> impl Strategy<Value = Asked> {
        let own = prop::collection::vec(any_edge(), 0..4);
        (place(), prop::option::of(place()), prop::option::of(place()), own, prop::option::of(1.0..4.0), any::<bool>())
            .prop_map(|(hand, before, after, own, panel_m, grid)| Asked {
                at: hand,
                beside: [before, after],
                own,
                joined: [None, None],
                reach_m: 1.2,
                look_m: 40.0,
                panel_m,
                grid_m: grid.then_some(5.0),
                held: None,
            })
    }

    fn any_guides() -> impl Strategy<Value = Guides> {
        let places = prop::collection::vec(place(), 0..6);
        (places, prop::collection::vec(any_edge(), 0..12)).prop_map(|(places, edges)| Guides::new(places, edges))
    }

    /// How far an answer is from what its guide says, metres.
    fn misses_m(guides: &Guides, asked: &Asked, guide: Guide, found: Point) -> f64 {
        let corner = |beside| asked.beside[usize::from(beside == Beside::After)].unwrap();
        let line = |line| guides.edge(asked, line).unwrap();
        let unit = |edge: Edge| (edge.to - edge.from).unit();
        match guide {
            Guide::On(of) => line(of).nearest(found).distance_m(found),
            Guide::Square(to, beside) => (found - corner(beside)).dot(unit(line(to))).abs(),
            Guide::Parallel(to, beside) => (found - corner(beside)).cross(unit(line(to))).abs(),
            Guide::InLine(with) => (found - line(with).from).cross(unit(line(with))).abs(),
            Guide::AsLong(other, beside) => (found.distance_m(corner(beside)) - line(other).length_m()).abs(),
            Guide::Panels(count, beside) => {
                (found.distance_m(corner(beside)) - f64::from(count) * asked.panel_m.unwrap()).abs()
            }
            Guide::SquareCorner => {
                let (before, after) = (asked.beside[0].unwrap() - found, asked.beside[1].unwrap() - found);
                before.dot(after).abs() / (before.length() + after.length()).max(1.0)
            }
        }
    }

    proptest! {
        #[test]
        fn every_answer_lies_on_what_it_names_within_reach(guides in any_guides(), asked in any_asked()) {
            if let Some(found) = guides.best(&asked) {
                prop_assert!(found.at.distance_m(asked.at) <= asked.reach_m + 1e-9);
                for guide in found.why.guides() {
                    let miss_m = misses_m(&guides, &asked, guide, found.at);
                    prop_assert!(miss_m < 1e-8, "{guide:?} missed by {miss_m}");
                }
                if let Why::Place(index) = found.why {
                    prop_assert_eq!(found.at, guides.places()[index]);
                }
            }
        }

        #[test]
        fn what_holds_is_left_only_for_something_better(
            guides in any_guides(), asked in any_asked(), east in -0.1..0.1_f64, north in -0.1..0.1_f64,
        ) {
            let Some(found) = guides.best(&asked) else { return Ok(()) };
            let there = Asked { at: found.at, held: Some(found.why), ..asked.clone() };
            let moved = Asked { at: at(found.at.east_m + east, found.at.north_m + north), ..there };
            let next = guides.best(&moved);
            prop_assert!(next.is_some(), "it let go within reach");
            let next = next.unwrap();
            prop_assert!(next.why.rank() <= found.why.rank(), "{next:?} after {found:?}");
        }

        #[test]
        fn without_anything_the_answer_is_the_grid_or_nothing(hand in place(), step_m in 0.5..9.0_f64) {
            let asked = Asked { at: hand, reach_m: step_m, grid_m: Some(step_m), ..Asked::default() };
            let found = Guides::default().best(&asked).unwrap();
            prop_assert_eq!(found.why, Why::Grid);
            for metres in [found.at.east_m, found.at.north_m] {
                prop_assert!((metres / step_m - (metres / step_m).round()).abs() < 1e-9);
            }
            prop_assert!(found.at.distance_m(hand) <= step_m * 0.5_f64.sqrt() + 1e-9);
        }
    }
}
