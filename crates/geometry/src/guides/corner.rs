//! One corner in hand: of everything within its reach, what catches it.

use super::form::Form;
use super::model::{Asked, Beside, Edge, Guide, Guided, Line, Why};
use super::{GUIDE_SHARE, Guides, HELD_SHARE, LEAST_REACHES};
use crate::point::Point;

/// A crossing catches from this share of the reach: lines lie closer than places.
const CROSSING_SHARE: f64 = 0.8;
/// So many of the best guides are crossed with each other.
const MOST_CROSSED: usize = 10;
/// Of another thing's sides those shorter than so many reaches give no square and no parallel.
const LEAST_OTHER_REACHES: f64 = 6.0;
/// Sides nearest to the hand that give square and parallel.
const MOST_NEAR: usize = 6;
/// Guides that cross farther off than so many reaches are not looked at anew.
const SETTLES_FROM: f64 = 4.0;
/// Nearer than this a crossing stands still, metres; one that does not after so many looks is none.
const SETTLED_M: f64 = 1e-10;
const MOST_LOOKS: usize = 24;

impl Guides {
    /// What catches the corner; `None` where nothing is within reach.
    pub fn best(&self, asked: &Asked<'_>) -> Option<Guided> {
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
                for at in settled(asked, (*one, form), (*other, across)) {
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

    /// Every guide of a corner, near or not; the named ones of a list of many are those near the hand.
    fn forms(&self, asked: &Asked<'_>) -> Vec<(Guide, Form)> {
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
            let Some(netting) = asked.netting else { continue };
            let Some(panels) = netting.panels(beside, corner, asked.at) else { continue };
            if let Some(reach_m) = netting.reach_m(beside, corner, asked.at, panels) {
                forms.push((Guide::Panels(panels, beside), Form::Round(corner, reach_m)));
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

/// Where two guides cross near the hand. How far panels reach may hang on the way that they lead: that is looked at anew
/// from where they cross, until they cross there.
fn settled(asked: &Asked<'_>, one: (Guide, &Form), other: (Guide, &Form)) -> impl Iterator<Item = Point> {
    let towards = |at: Point, (guide, form): (Guide, &Form)| match (guide, *form, asked.netting) {
        (Guide::Panels(panels, beside), Form::Round(corner, _), Some(netting)) => {
            netting.reach_m(beside, corner, at, panels).map(|reach_m| Form::Round(corner, reach_m))
        }
        (_, form, _) => Some(form),
    };
    let near = |at: &Point| at.distance_m(asked.at) <= SETTLES_FROM * asked.reach_m;
    one.1.crossings(other.1).into_iter().flatten().filter(near).filter_map(move |mut at| {
        for _ in 0..MOST_LOOKS {
            let crossings = towards(at, one)?.crossings(&towards(at, other)?);
            let next = crossings.into_iter().flatten();
            let next = next.min_by(|a, b| a.distance_m(at).total_cmp(&b.distance_m(at)))?;
            if next.distance_m(at) <= SETTLED_M {
                return Some(next);
            }
            at = next;
        }
        None
    })
}

fn besides(asked: &Asked<'_>) -> impl Iterator<Item = (Beside, Point)> {
    [Beside::Before, Beside::After].into_iter().zip(asked.beside).filter_map(|(beside, corner)| Some((beside, corner?)))
}

/// What a side is to the new sides from the corners beside.
fn beside_guides(asked: &Asked<'_>, line: Line, edge: &Edge, length_m: f64, forms: &mut Vec<(Guide, Form)>) {
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
    asked: &'a Asked<'a>,
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
