//! Earth stakes whose places are stated: their keys in the report and on the map of others.

use plan::{Plan, Point};
use schemars::JsonSchema;
use serde::Serialize;
use workup::Workup;
use workup::earth::EarthStake;

/// The earth stakes of a run whose places are stated.
#[derive(Serialize, JsonSchema)]
pub(crate) struct OfRun {
    /// Each in the plan's order; absent where no places are stated.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    earth_stakes: Vec<Stake>,
}

/// An earth stake, and how far it is from what matters, straight, metres.
#[derive(Serialize, JsonSchema)]
pub(crate) struct Stake {
    /// Where it stands.
    at: Point,
    /// To the nearest netting.
    #[serde(skip_serializing_if = "Option::is_none")]
    net_m: Option<f64>,
    /// To the feed point.
    #[serde(skip_serializing_if = "Option::is_none")]
    feed_m: Option<f64>,
    /// To the nearest other stake of the run.
    #[serde(skip_serializing_if = "Option::is_none")]
    next_m: Option<f64>,
    /// To the nearest earth of others on the map.
    #[serde(skip_serializing_if = "Option::is_none")]
    foreign_earth_m: Option<f64>,
    /// To the nearest earth stake of a standing run that is fed apart.
    #[serde(skip_serializing_if = "Option::is_none")]
    other_run_m: Option<f64>,
    /// The corner or end, from 0 in the report's `corners`, whose brace's stake it is as well.
    #[serde(skip_serializing_if = "Option::is_none")]
    brace_of_corner: Option<usize>,
}

/// The keys of one run.
pub(crate) fn of_run(plan: &Plan, workup: &Workup, index: usize) -> OfRun {
    OfRun { earth_stakes: placed(plan, workup, index).iter().map(out).collect() }
}

/// The stakes whose places are stated.
pub(crate) fn placed(plan: &Plan, workup: &Workup, index: usize) -> Vec<EarthStake> {
    let stated = plan.runs.get(index).is_some_and(|run| !run.earth_stakes.places.is_empty());
    if stated { workup::earth::stakes(plan, workup, index) } else { Vec::new() }
}

/// One stake.
pub(crate) fn out(stake: &EarthStake) -> Stake {
    let far = |metres: Option<f64>| metres.filter(|metres| metres.is_finite());
    Stake {
        at: stake.at,
        net_m: far(stake.net_m),
        feed_m: far(stake.feed_m),
        next_m: far(stake.next_m),
        foreign_earth_m: far(stake.foreign.map(|(_, metres)| metres)),
        other_run_m: far(stake.other_run.map(|(_, metres)| metres)),
        brace_of_corner: stake.corner,
    }
}
