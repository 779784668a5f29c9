//! Gates: which join is opened, which posts are pulled and laid back, and the way from there to the gateway.
//!
//! A net cannot be cut, so a run opens where two nets join: the join is untied, and panels beside it are folded back
//! along the netting that stays, as many as the clear width asks for. Of the two nets the one is laid back that keeps the
//! opening off corners and wet ground ([`off::places`]) and pulls the fewest posts; both where one has not enough panels
//! before a corner. Where the keeper names no place, the join that breaks no rule and lies nearest the gateway is taken.
//!
//! The way is as wide as the gate, keeps off every standing net, water and whatever else runs keep off, other fences,
//! coops and guys, and stays in the paddock but for the gateway itself ([`geometry::ways`]). A plan is drawn and worked
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
use crate::{place, point};
use opening::Choice;

/// A gate stands at least this far from every corner, metres: a corner's post is held by the netting on both sides.
pub const TO_CORNER_M: f64 = 2.0;

/// Joins that are tried in turn for a gate that names no place, until one has a way.
const MOST_TRIED: usize = 4;

/// Works out the gates of every run, once the lines of all are there.
pub(crate) fn all(plan: &Plan, lines: &[Option<Line>], boundary: Option<&Outline>, runs: &mut [RunWorkup]) {
    if plan.runs.iter().all(|run| run.gates.is_empty()) {
        return;
    }
    let wet = off::places(plan);
    let nets = road::Nets::of(plan, lines, runs);
    for (index, run) in plan.runs.iter().enumerate() {
        let Some(Line { outline, placement: Some(placement), .. }) = &lines[index] else { continue };
        let bad = Bad::of(&runs[index].troubles);
        let off: Vec<off::Off> = wet.iter().cloned().chain(off::dips(&runs[index])).collect();
        let site = Site { plan, run, index, outline, placement, off: &off, nets: &nets, boundary };
        let mut worked: Vec<GateWork> = Vec::with_capacity(run.gates.len());
        for number in 0..run.gates.len() {
            let is_bad = bad.any(&format!("gates[{number}]."));
            let gate = if is_bad { GateWork::none(run.gates[number].kind) } else { site.gate(number, &worked) };
            worked.push(gate);
        }
        runs[index].gates = worked;
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
}

impl Site<'_> {
    /// A gate, after those before it: one that names no place leaves their joins to them where it can.
    fn gate(&self, number: usize, before: &[GateWork]) -> GateWork {
        let stated = &self.run.gates[number];
        let coop = self.plan.coop_of(self.run);
        let width_m = stated.width_m(coop);
        let joins = opening::joins(self.placement);
        let none = GateWork { width_m, ..GateWork::none(stated.kind) };
        let choices = |join: &opening::Join| opening::best(self, *join, width_m);
        let mut candidates: Vec<Choice> = match stated.at {
            Some(at) => {
                let from_m = |join: &&opening::Join| self.outline.at(join.along_m).distance_m(point(at));
                joins.iter().min_by(|a, b| from_m(a).total_cmp(&from_m(b))).map(choices).into_iter().collect()
            }
            None => joins.iter().map(choices).collect(),
        };
        let gateway_m = |choice: &Choice| {
            let at = self.outline.at(choice.join.along_m);
            self.plan.gateway_for(place(at)).map_or(0.0, |gateway| point(gateway).distance_m(at))
        };
        let is_taken = |choice: &Choice| {
            let openings = before.iter().filter_map(|gate| gate.opening.as_ref());
            openings
                .map(|opening| opening.join_along_m)
                .any(|along_m| (along_m - choice.join.along_m).abs() < geometry::MEET_M)
        };
        candidates.sort_by(|a, b| {
            a.broken
                .cmp(&b.broken)
                .then(is_taken(a).cmp(&is_taken(b)))
                .then(gateway_m(a).total_cmp(&gateway_m(b)))
                .then(a.pulled.cmp(&b.pulled))
        });
        candidates.truncate(MOST_TRIED);
        let least_broken = candidates.first().map(|choice| choice.broken);
        let mut first: Option<GateWork> = None;
        for choice in candidates.iter().filter(|choice| Some(choice.broken) == least_broken) {
            let worked = self.worked(stated, width_m, choice);
            let has_way = worked.no_road.is_none();
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

    fn worked(&self, stated: &plan::Gate, width_m: f64, choice: &Choice) -> GateWork {
        let opening = opening::opening(self, choice);
        let join = point(opening.join);
        let from_stated_m = stated.at.map(|at| join.distance_m(point(at)));
        let (road, no_road) = match road::of(self, stated.kind, width_m, choice, &opening) {
            Ok(road) => (Some(road), None),
            Err(why) => (None, Some(why)),
        };
        GateWork { kind: stated.kind, width_m, from_stated_m, opening: Some(opening), road, no_road }
    }
}
