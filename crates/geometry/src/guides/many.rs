//! Many places that move together: which of them is caught, and by what.

use super::model::{Asked, Guide, Guided, Line, Why};
use super::{Guides, HELD_SHARE};
use crate::point::Point;

impl Guides {
    /// What catches one of many places that move together, and which of them: the answer that goes before the others.
    ///
    /// `held` is the one that is caught already; only what stands near all of them together is looked at.
    pub fn best_of(&self, asked: &Asked<'_>, hands: &[Point], held: Option<(usize, Why)>) -> Option<(usize, Guided)> {
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
}
