//! Gates: which join is opened, which posts are pulled and laid back, and the way from there to the gateway.
//!
//! A net cannot be cut, so a run opens where two nets join: the join is untied, and panels beside it are folded back
//! along the netting that stays, as many as the clear width asks for. Of the two nets the one is laid back that keeps the
//! opening off corners and wet ground ([`off::places`]) and pulls the fewest posts; both where one has not enough panels
//! before a corner. Where the keeper names no place, the join that breaks no rule and lies nearest the gateway is taken. No
//! two gates open one join: those that name a place choose first, in their order, then the others.
//!
//! The way is as wide as the gate, keeps off every standing net, water and whatever else runs keep off, other fences,
//! coops and guys, and stays in the paddock but for the gateway itself ([`geometry::ways`]). It is searched for at full depth
//! only; a search whose question was answered before is not made again ([`crate::Known`]). A plan is drawn and worked
//! out with its gates shut. Sources: facts of the trade 1.5 (gate at a join, away from corners; no driving over a net)
//! and common practice, no source, for the figures.

mod model;
mod off;
mod opening;
mod road;

use geometry::{Outline, Placement};
use plan::{Plan, Run};

pub use model::{GateWork, Near, NoRoad, OffKind, Opening, Road};

use crate::lay::Line;
use crate::model::RunWorkup;
use crate::values::Bad;
use crate::{Depth, Known, place, point};
use opening::Choice;

/// A gate stands at least this far from every corner, metres: a corner's post is held by the netting on both sides.
pub const TO_CORNER_M: f64 = 2.0;

/// Joins that are tried in turn for a gate that names no place, until one has a way.
const MOST_TRIED: usize = 4;

/// Everything that a run's gates and the ways to them rest on.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Question {
    gates: Vec<plan::Gate>,
    bad: Vec<bool>,
    coop: Option<plan::Coop>,
    outline: Outline,
    placement: Placement,
    off: Vec<off::Off>,
    about: Vec<Outline>,
    boundary: Option<Outline>,
    corners: Vec<plan::Point>,
    gateway: Option<plan::Point>,
}

/// Works out the gates of every run, once the lines of all are there.
pub(crate) fn all(
    plan: &Plan,
    lines: &[Option<Line>],
    boundary: Option<&Outline>,
    depth: Depth,
    known: &mut Known,
    runs: &mut [RunWorkup],
) {
    if plan.runs.iter().all(|run| run.gates.is_empty()) {
        return;
    }
    let wet = off::places(plan);
    let nets = road::Nets::of(plan, lines, runs);
    for (index, run) in plan.runs.iter().enumerate().filter(|(_, run)| !run.gates.is_empty()) {
        let Some(Line { outline, placement: Some(placement), .. }) = &lines[index] else { continue };
        let bad = Bad::of(&runs[index].troubles);
        let off: Vec<off::Off> = wet.iter().cloned().chain(off::dips(&runs[index])).collect();
        let site = Site { plan, run, index, outline, placement, off: &off, nets: &nets, boundary, depth };
        let bad: Vec<bool> = (0..run.gates.len()).map(|number| bad.any(&format!("gates[{number}]."))).collect();
        let question = site.question(bad);
        let before = known.gates.get(&run.id);
        if let Some((_, gates)) = before.filter(|(of, _)| *of == question) {
            runs[index].gates.clone_from(gates);
            continue;
        }
        // Until the ways are found again, a gate that chose its join stays at it.
        let before = before.map_or(&[][..], |(_, gates)| gates);
        runs[index].gates = site.gates(&question.bad, if depth == Depth::Quick { before } else { &[] });
        if depth == Depth::Full {
            known.gates.insert(run.id.clone(), (question, runs[index].gates.clone()));
        }
    }
}

/// One run and what its gates have to heed.
struct Site<'a> {
    plan: &'a Plan,
    run: &'a Run,
    index: usize,
    outline: &'a Outline,
    placement: &'a Placement,
    off: &'a [off::Off],
    nets: &'a road::Nets,
    boundary: Option<&'a Outline>,
    depth: Depth,
}

impl Site<'_> {
    fn question(&self, bad: Vec<bool>) -> Question {
        Question {
            gates: self.run.gates.clone(),
            bad,
            coop: self.plan.coop_of(self.run).cloned(),
            outline: self.outline.clone(),
            placement: self.placement.clone(),
            off: self.off.to_vec(),
            about: road::about(self),
            boundary: self.boundary.cloned(),
            corners: self.plan.ground.boundary.clone(),
            gateway: self.plan.ground.gateway.as_ref().map(|gateway| gateway.at),
        }
    }

    /// The gates in the plan's order; those that name a place choose before the others.
    fn gates(&self, bad: &[bool], before: &[GateWork]) -> Vec<GateWork> {
        let gates = &self.run.gates;
        let mut order: Vec<usize> = (0..gates.len()).collect();
        order.sort_by_key(|&number| gates[number].at.is_none());
        let mut worked: Vec<GateWork> = gates.iter().map(|gate| GateWork::none(gate.kind)).collect();
        for number in order.into_iter().filter(|&number| !bad[number]) {
            let was = before.get(number).filter(|was| was.kind == gates[number].kind && before.len() == gates.len());
            let nets = was.and_then(|was| was.opening.as_ref()).map(|opening| opening.nets);
            worked[number] = self.gate(number, &worked, nets);
        }
        worked
    }

    /// A gate beside those that chose before it; of equals it prefers the join of the nets that it had.
    fn gate(&self, number: usize, others: &[GateWork], had: Option<(usize, usize)>) -> GateWork {
        let stated = &self.run.gates[number];
        let coop = self.plan.coop_of(self.run);
        let width_m = stated.width_m(coop);
        let none = GateWork { width_m, ..GateWork::none(stated.kind) };
        let opened: Vec<(usize, &Opening)> =
            others.iter().enumerate().filter_map(|(other, gate)| Some((other, gate.opening.as_ref()?))).collect();
        let taken_by =
            |join: &opening::Join| opened.iter().find(|(_, opening)| opening.nets == join.nets).map(|one| one.0);
        let mut joins = opening::joins(self.placement);
        let is_any = !joins.is_empty();
        let mut instead_of = None;
        if let Some(at) = stated.at {
            // The nearest first; only it and, where others open that one, the next.
            let from_m = |join: &opening::Join| self.outline.at(join.along_m).distance_m(point(at));
            joins.sort_by(|a, b| from_m(a).total_cmp(&from_m(b)));
            instead_of = joins.first().and_then(taken_by);
        }
        joins.retain(|join| taken_by(join).is_none());
        if stated.at.is_some() {
            joins.truncate(1);
        }
        if joins.is_empty() {
            return GateWork { none_left: is_any, ..none };
        }
        let stretches: Vec<(f64, f64)> = opened.iter().map(|(_, opening)| (opening.from_m, opening.clear_m)).collect();
        let mut candidates: Vec<Choice> =
            joins.into_iter().map(|join| opening::best(self, join, width_m, &stretches)).collect();
        let gateway_m = |choice: &Choice| {
            let at = self.outline.at(choice.join.along_m);
            self.plan.gateway_for(place(at)).map_or(0.0, |gateway| point(gateway).distance_m(at))
        };
        let is_other = |choice: &Choice| had.is_some_and(|had| choice.join.nets != had);
        candidates.sort_by(|a, b| {
            a.broken
                .cmp(&b.broken)
                .then(is_other(a).cmp(&is_other(b)))
                .then(gateway_m(a).total_cmp(&gateway_m(b)))
                .then(a.pulled.cmp(&b.pulled))
        });
        candidates.truncate(MOST_TRIED);
        let least_broken = candidates.first().map(|choice| choice.broken);
        let mut budget = road::budget();
        let mut first: Option<GateWork> = None;
        for choice in candidates.iter().filter(|choice| Some(choice.broken) == least_broken) {
            let mut worked = self.worked(stated, width_m, choice, &mut budget);
            worked.taken_by = instead_of;
            worked.runs_into = opened
                .iter()
                .find(|(_, other)| {
                    let stretch = opening::gap_m(self, choice);
                    opening::overlap(self.outline, stretch, (other.from_m, other.clear_m))
                })
                .map(|(other, _)| *other);
            let has_way = worked.no_road.is_none() || worked.waits();
            first = match first {
                Some(first) if !has_way => Some(first),
                _ => Some(worked),
            };
            if has_way {
                break;
            }
        }
        first.unwrap_or(none)
    }

    fn worked(&self, stated: &plan::Gate, width_m: f64, choice: &Choice, budget: &mut u64) -> GateWork {
        let opening = opening::opening(self, choice);
        let join = point(opening.join);
        let from_stated_m = stated.at.map(|at| join.distance_m(point(at)));
        let (road, no_road) = match road::of(self, (stated.kind, width_m), choice, &opening, budget) {
            Ok(road) => (Some(road), None),
            Err(why) => (None, Some(why)),
        };
        let none = GateWork::none(stated.kind);
        GateWork { width_m, from_stated_m, opening: Some(opening), road, no_road, ..none }
    }
}
