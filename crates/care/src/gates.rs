//! Pins that cannot be kept, and gates that stand where none should.

use geometry::region;
use plan::{GateKind, Run, defaults::COMMON_PRACTICE};
use words::texts::Gates;
use workup::RunWorkup;
use workup::gates::{GateWork, NoRoad, OffKind, TO_CORNER_M};

use crate::limits::{Limit, OWN_FORMAT};
use crate::names::Named;
use crate::{Finding, Look, Severity, Subject, run_name};

/// From where a gate is wanted to its join; nearer than this it stands there.
const OFF_JOIN: Limit = Limit { metres: 1.0, source: COMMON_PRACTICE };
/// Clear width that a quad wants: about 1.2 m of quad and a hand's breadth on both sides.
const QUAD: Limit = Limit { metres: 1.5, source: "from memory: a quad is about 1.2 m wide" };
/// The source of what is said of gates in portable netting.
const TRADE: &str = "common practice, no source: gates at joins, away from corners; no driving over a net";

pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    let mut found = pins(look, run, worked);
    for (number, (stated, gate)) in run.gates.iter().zip(&worked.gates).enumerate() {
        let one = One { look, run, number: (number + 1).to_string(), gate };
        let of_gate = one.widths(stated.width_m).into_iter().chain(one.place()).chain(one.way());
        found.extend(of_gate.map(|one| one.about(Subject::Gate(number))));
    }
    if worked.gates.iter().any(|gate| gate.opening.is_none() && gate.width_m > 0.0 && !gate.none_left) {
        let said = look.words.say(Gates::FindNoJoin, &[("run", run_name(run))]);
        found.push(Finding::new("gate-no-join", Severity::Warning, TRADE).says(said));
    }
    if worked.gates.iter().any(|gate| gate.no_road == Some(NoRoad::NoGateway)) {
        let said = look.words.say(Gates::FindNoGateway, &[("run", run_name(run))]);
        found.push(Finding::new("gate-no-gateway", Severity::Note, OWN_FORMAT).says(said));
    }
    if worked.gates.iter().any(|gate| gate.opening.is_some()) {
        let said = look.words.say(Gates::FindPowerOff, &[("run", run_name(run))]);
        found.push(Finding::new("gate-power-off", Severity::Note, TRADE).says(said));
    }
    found
}

/// A gateway that is no way into the paddock: the ways begin there all the same.
pub(crate) fn of_plan(look: Look<'_>) -> Option<Finding> {
    let gateway = look.plan.ground.gateway.as_ref()?;
    let boundary = crate::ground::closed(&look.plan.ground.boundary)?;
    let off_m = region::distance_to_m(&boundary, crate::point(gateway.at));
    (off_m > GATEWAY_REACH_M).then(|| {
        let off = look.words.length(off_m);
        Finding::new("gateway-off-boundary", Severity::Note, OWN_FORMAT)
            .about(Subject::Gateway)
            .says(look.words.say(Gates::FindGatewayOff, &[("off", &off)]))
            .at([gateway.at])
    })
}

/// A gateway stands in the paddock's edge; drawn by hand it lies within this distance of it, metres.
const GATEWAY_REACH_M: f64 = 2.0;

fn pins(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    let Some(lay) = &worked.lay else { return Vec::new() };
    let broken = run.pins.iter().zip(&lay.pins).enumerate().filter(|(_, (_, pin))| !pin.kept);
    broken
        .map(|(number, (stated, pin))| {
            let text = match pin.along_m {
                None => Gates::FindPinLost,
                Some(_) if run.start_m.is_some() && lay.closed => Gates::FindPinFixed,
                Some(_) => Gates::FindPinBroken,
            };
            let name = crate::pin_name(look.words, lay, stated, pin);
            Finding::new("pin-not-kept", Severity::Warning, OWN_FORMAT)
                .about(Subject::Pin(number))
                .says(look.words.say(text, &[("run", run_name(run)), ("pin", &name)]))
                .at([pin.at])
        })
        .collect()
}

/// One gate.
struct One<'a> {
    look: Look<'a>,
    run: &'a Run,
    number: String,
    gate: &'a GateWork,
}

impl One<'_> {
    fn says(&self, text: Gates, more: &[(&str, &str)]) -> String {
        let mut places = vec![("run", run_name(self.run)), ("number", self.number.as_str())];
        places.extend(more);
        self.look.words.say(text, &places)
    }

    fn widths(&self, stated_m: Option<f64>) -> Option<Finding> {
        let words = self.look.words;
        let width_m = stated_m?;
        let coop = self.look.plan.coop_of(self.run);
        let (limit_m, source, id, text) = match self.gate.kind {
            GateKind::Wheels => (QUAD.metres, QUAD.source, "gate-wheels-narrow", Gates::FindWheelsNarrow),
            GateKind::Coop => (coop?.width_m(), OWN_FORMAT, "gate-coop-narrow", Gates::FindCoopNarrow),
            GateKind::Foot => return None,
        };
        (width_m < limit_m).then(|| {
            let figures = [("width", &*words.length(width_m)), ("limit", &*words.length(limit_m))];
            Finding::new(id, Severity::Warning, source).says(self.says(text, &figures)).at(self
                .gate
                .opening
                .as_ref()
                .map(|opening| opening.at))
        })
    }

    fn place(&self) -> Vec<Finding> {
        let (words, mut found) = (self.look.words, Vec::new());
        if self.gate.none_left {
            found.push(
                Finding::new("gate-none-left", Severity::Warning, TRADE)
                    .says(self.says(Gates::FindNoneLeft, &[]))
                    .mends(words.text(Gates::FindNoneLeftMend)),
            );
        }
        let Some(opening) = &self.gate.opening else { return found };
        if let Some(other) = self.gate.taken_by {
            let places =
                [("other", &*(other + 1).to_string()), ("far", &*words.length(self.gate.from_stated_m.unwrap_or(0.0)))];
            found.push(
                Finding::new("gate-join-taken", Severity::Note, TRADE)
                    .says(self.says(Gates::FindJoinTaken, &places))
                    .at([opening.join]),
            );
        }
        if let Some(other) = self.gate.runs_into {
            found.push(
                Finding::new("gate-overlap", Severity::Warning, TRADE)
                    .says(self.says(Gates::FindOverlap, &[("other", &(other + 1).to_string())]))
                    .mends(words.text(Gates::FindOverlapMend))
                    .at([opening.at]),
            );
        }
        let off_m = self.gate.from_stated_m.filter(|_| self.gate.taken_by.is_none());
        if let Some(far_m) = off_m.filter(|&far_m| far_m > OFF_JOIN.metres) {
            found.push(
                Finding::new("gate-off-join", Severity::Note, OFF_JOIN.source)
                    .says(self.says(Gates::FindOffJoin, &[("far", &words.length(far_m))]))
                    .mends(words.text(Gates::FindOffJoinMend))
                    .at([opening.join]),
            );
        }
        if !self.gate.is_wide_enough() {
            let figures =
                [("width", &*words.length(self.gate.width_m)), ("clear", &*words.fine_length(opening.clear_m))];
            found.push(
                Finding::new("gate-too-wide", Severity::Warning, TRADE)
                    .says(self.says(Gates::FindNarrow, &figures))
                    .mends(words.text(Gates::FindNarrowMend))
                    .at([opening.at]),
            );
        }
        if let Some(far_m) = opening.to_corner_m.filter(|&far_m| far_m < TO_CORNER_M) {
            let figures = [("far", &*words.length(far_m)), ("limit", &*words.length(TO_CORNER_M))];
            found.push(
                Finding::new("gate-near-corner", Severity::Warning, TRADE)
                    .says(self.says(Gates::FindCorner, &figures))
                    .at([opening.at]),
            );
        }
        for near in &opening.near {
            let name = match near.kind {
                OffKind::Dip => words.text(Gates::TheDip).to_owned(),
                OffKind::Water(index) => self.look.amid(Named::KeepOut(index)),
            };
            found.push(
                Finding::new("gate-wet", Severity::Warning, COMMON_PRACTICE)
                    .says(self.says(Gates::FindWet, &[("keep_out", &name)]))
                    .at([opening.at]),
            );
        }
        found
    }

    fn way(&self) -> Option<Finding> {
        let words = self.look.words;
        let (id, text, mend) = match self.gate.no_road? {
            NoRoad::NoGateway | NoRoad::Narrow | NoRoad::Waiting => return None,
            NoRoad::Blocked => ("gate-no-way", Gates::FindNoWay, Some(Gates::FindNoWayMend)),
            NoRoad::CoopBlocked => ("gate-no-way", Gates::FindCoopBlocked, Some(Gates::FindNoWayMend)),
            NoRoad::OutOfSteps => ("gate-way-unknown", Gates::FindOutOfSteps, None),
        };
        Some(
            Finding::new(id, Severity::Warning, TRADE)
                .says(self.says(text, &[]))
                .mends(mend.map_or("", |mend| words.text(mend)))
                .at(self.gate.opening.as_ref().map(|opening| opening.at)),
        )
    }
}
