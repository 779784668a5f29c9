//! Pins as stated, to places on the line and back to what became of them.

use geometry::{Outline, PinOutcome};
use plan::{PinKind, Plan, Point, Run};

use crate::{place, point};

/// A pinned corner is the nearest one within this, metres; farther than that there is none.
pub const CORNER_REACH_M: f64 = 1.0;

/// What became of a pin.
#[derive(Clone, Debug, PartialEq)]
pub struct PinWork {
    /// Its place on the line; as stated where it has none there.
    pub at: Point,
    /// The same along the outline, metres; `None` for a corner that is not there.
    pub along_m: Option<f64>,
    /// The corner's number, from 0, for a pinned corner.
    pub vertex: Option<usize>,
    /// Whether it is kept.
    pub kept: bool,
    /// Metres of misses that it costs; `None` where it is not kept or nothing is left to choose.
    pub cost_m: Option<f64>,
    /// Whether that cost is proved.
    pub proven: bool,
}

/// The run's pins in the terms of geometry, and for each stated one its number among them.
pub(crate) struct Pins {
    pub(crate) pins: Vec<geometry::Pin>,
    of_stated: Vec<Option<(usize, Option<usize>)>>,
}

impl Pins {
    pub(crate) fn of(plan: &Plan, run: &Run, outline: &Outline) -> Self {
        let (mut pins, mut of_stated) = (Vec::new(), Vec::new());
        for stated in &run.pins {
            let at = point(stated.at);
            let along = || outline.nearest_along(at).0;
            let corner = outline
                .vertices()
                .iter()
                .enumerate()
                .map(|(index, vertex)| (index, vertex.along_m, vertex.at.distance_m(at)))
                .filter(|corner| corner.2 <= CORNER_REACH_M)
                .min_by(|a, b| a.2.total_cmp(&b.2));
            let kind = |id: &String| plan.store.nets.iter().position(|net| net.id == *id);
            let pinned = match stated.kind {
                PinKind::Start => Some((geometry::PinKind::Start, along(), None)),
                PinKind::Join => Some((geometry::PinKind::Join, along(), None)),
                PinKind::Corner => corner.map(|(vertex, along_m, _)| (geometry::PinKind::Post, along_m, Some(vertex))),
                PinKind::Net => {
                    let kind = stated.net.as_ref().and_then(kind);
                    kind.map(|kind| (geometry::PinKind::Net { kind }, along(), None))
                }
            };
            of_stated.push(pinned.map(|(what, along_m, vertex)| {
                pins.push(geometry::Pin { along_m, what });
                (pins.len() - 1, vertex)
            }));
        }
        Self { pins, of_stated }
    }

    /// What became of each stated pin.
    pub(crate) fn worked(&self, run: &Run, outline: &Outline, outcomes: &[PinOutcome]) -> Vec<PinWork> {
        let lost = PinOutcome { kept: false, cost_m: None, proven: true };
        run.pins
            .iter()
            .zip(&self.of_stated)
            .map(|(stated, pinned)| {
                let outcome = pinned.and_then(|(pin, _)| outcomes.get(pin).copied()).unwrap_or(lost);
                let along_m = pinned.map(|(pin, _)| self.pins[pin].along_m);
                PinWork {
                    at: along_m.map_or(stated.at, |along_m| place(outline.at(along_m))),
                    along_m,
                    vertex: pinned.and_then(|(_, vertex)| vertex),
                    kept: outcome.kept,
                    cost_m: outcome.cost_m,
                    proven: outcome.proven,
                }
            })
            .collect()
    }
}
