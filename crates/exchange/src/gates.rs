//! Pins and gates: their keys in the report and its lines.

use care::gate_said;
use plan::{GateKind, PinKind, Point, Run};
use schemars::JsonSchema;
use serde::Serialize;
use words::{Words, texts::Gates as Text};
use workup::RunWorkup;
use workup::gates::{GateWork, NoRoad, OffKind};

/// What a run's pins cost, and what its gates open.
#[derive(Serialize, JsonSchema)]
pub(crate) struct OfRun {
    /// What became of each pin, in the plan's order.
    pins: Vec<Pin>,
    /// What each gate opens, in the plan's order.
    gates: Vec<Gate>,
}

/// What became of a pin.
#[derive(Serialize, JsonSchema)]
struct Pin {
    /// `start`, `join`, `corner` or `net`.
    kind: PinKind,
    /// Its place on the line.
    at: Point,
    /// The same along the outline, metres; `null` for a corner that is not there.
    along_m: Option<f64>,
    /// The kind of net, for a pinned net.
    #[serde(skip_serializing_if = "Option::is_none")]
    net: Option<String>,
    /// Whether it is kept.
    kept: bool,
    /// Metres that the distances from corners to posts grow by for its sake; `null` where it is not kept or the plan
    /// fixes the start.
    cost_m: Option<f64>,
    /// Whether that cost is proved.
    cost_proven: bool,
}

/// What a gate opens. Everything else in the report is of the run with its gates shut.
#[derive(Serialize, JsonSchema)]
struct Gate {
    /// `foot`, `wheels` or `coop`.
    kind: GateKind,
    /// The clear width asked for, metres.
    width_m: f64,
    /// The middle of the opening; `null` where the run has no join.
    at: Option<Point>,
    /// The join that is untied.
    join: Option<Point>,
    /// The same along the outline, metres.
    join_along_m: Option<f64>,
    /// From where the gate is wanted to that join, metres; absent where the tool chose it.
    #[serde(skip_serializing_if = "Option::is_none")]
    from_stated_m: Option<f64>,
    /// What opens, metres.
    clear_m: Option<f64>,
    /// The posts that are pulled: places in `posts`.
    posts_pulled: Vec<usize>,
    /// Panels laid back.
    panels_laid_back: usize,
    /// Where they lie, along the netting that stays.
    laid_back: Vec<Vec<Point>>,
    /// From the opening to the nearest corner along the line, metres.
    to_corner_m: Option<f64>,
    /// Ground that it should keep off and does not.
    near: Vec<Near>,
    /// Where the way begins.
    gateway: Option<Point>,
    /// The way from the gateway to the middle of the opening; `null` where there is none.
    way: Option<Vec<Point>>,
    /// Its length, metres.
    way_m: Option<f64>,
    /// The way from the coop to the middle of the opening, for a coop's gate.
    #[serde(skip_serializing_if = "Option::is_none")]
    coop_way: Option<Vec<Point>>,
    /// Its length, metres.
    #[serde(skip_serializing_if = "Option::is_none")]
    coop_way_m: Option<f64>,
    /// The gate, by its place in the plan's order, that opens the join where this one is wanted.
    #[serde(skip_serializing_if = "Option::is_none")]
    taken_by: Option<usize>,
    /// The gate, by its place in the plan's order, whose clear width this one's runs into.
    #[serde(skip_serializing_if = "Option::is_none")]
    runs_into: Option<usize>,
    /// `true` where the other gates open every join, so that none is left for this one.
    #[serde(skip_serializing_if = "Option::is_none")]
    none_left: Option<bool>,
    /// Why there is no way: `no_gateway`, `narrow`, `blocked`, `coop_blocked` or `out_of_steps`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(extend("enum" = ["no_gateway", "narrow", "blocked", "coop_blocked", "out_of_steps", null]))]
    no_way: Option<&'static str>,
}

/// Ground that a gate should keep off.
#[derive(Serialize, JsonSchema)]
struct Near {
    /// `water` or `dip`.
    kind: &'static str,
    /// Water's place in the plan's keep-outs.
    keep_out: Option<usize>,
    /// Straight distance, metres; 0 within.
    apart_m: f64,
}

/// The keys of one run.
pub(crate) fn of_run(run: &Run, worked: &RunWorkup) -> OfRun {
    let pins = worked.lay.iter().flat_map(|lay| run.pins.iter().zip(&lay.pins));
    OfRun {
        pins: pins
            .map(|(stated, pin)| Pin {
                kind: stated.kind,
                at: pin.at,
                along_m: pin.along_m,
                net: stated.net.clone(),
                kept: pin.kept,
                cost_m: pin.cost_m,
                cost_proven: pin.proven,
            })
            .collect(),
        gates: worked.gates.iter().map(gate).collect(),
    }
}

fn gate(gate: &GateWork) -> Gate {
    let (opening, road) = (gate.opening.as_ref(), gate.road.as_ref());
    let coop = road.filter(|road| !road.inside.is_empty());
    Gate {
        kind: gate.kind,
        width_m: gate.width_m,
        at: opening.map(|opening| opening.at),
        join: opening.map(|opening| opening.join),
        join_along_m: opening.map(|opening| opening.join_along_m),
        from_stated_m: gate.from_stated_m,
        clear_m: opening.map(|opening| opening.clear_m),
        posts_pulled: opening.map(|opening| opening.pulled.clone()).unwrap_or_default(),
        panels_laid_back: opening.map_or(0, |opening| opening.panels),
        laid_back: opening.map(|opening| opening.laid_back.clone()).unwrap_or_default(),
        to_corner_m: opening.and_then(|opening| opening.to_corner_m),
        near: opening
            .iter()
            .flat_map(|opening| &opening.near)
            .map(|near| {
                let (kind, keep_out) = match near.kind {
                    OffKind::Water(keep_out) => ("water", Some(keep_out)),
                    OffKind::Dip => ("dip", None),
                };
                Near { kind, keep_out, apart_m: near.apart_m }
            })
            .collect(),
        gateway: road.map(|road| road.gateway),
        way: road.map(|road| road.points.clone()),
        way_m: road.map(|road| road.length_m),
        coop_way: coop.map(|road| road.inside.clone()),
        coop_way_m: coop.map(|road| road.inside_m),
        taken_by: gate.taken_by,
        runs_into: gate.runs_into,
        none_left: gate.none_left.then_some(true),
        no_way: gate.no_road.and_then(|why| match why {
            NoRoad::NoGateway => Some("no_gateway"),
            NoRoad::Narrow => Some("narrow"),
            NoRoad::Blocked => Some("blocked"),
            NoRoad::CoopBlocked => Some("coop_blocked"),
            NoRoad::OutOfSteps => Some("out_of_steps"),
            // A report is of everything worked out.
            NoRoad::Waiting => None,
        }),
    }
}

/// The lines of the readable report, each a label and its figures.
pub fn lines(run: &Run, worked: &RunWorkup, words: Words) -> Vec<(&'static str, String)> {
    let mut lines = Vec::new();
    let Some(lay) = &worked.lay else { return lines };
    for (stated, pin) in run.pins.iter().zip(&lay.pins) {
        let cost = gate_said::cost(pin, words);
        let places = [("pin", &*care::pin_name(words, lay, stated, pin)), ("cost", &*cost)];
        lines.push((words.text(Text::Pins), words.say(Text::PinLine, &places)));
    }
    for gate in &worked.gates {
        let figures = gate_said::figures(gate, lay, words).join("; ");
        let places = [("kind", gate_said::kind(gate.kind, words)), ("figures", &*figures)];
        lines.push((words.text(Text::Gates), words.say(Text::GateLine, &places)));
    }
    lines
}
