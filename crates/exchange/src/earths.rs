//! The energizer, its leads, its earth stakes and the dampest place for them: their keys in the report and on the map of
//! others.

use plan::{Plan, Point, Run};
use schemars::JsonSchema;
use serde::Serialize;
use workup::earth::{Dampest, EarthStake};
use workup::{RunWorkup, Workup};

/// The energizer of a run where its place is stated, its earth stakes whose places are, and where they would earth best.
#[derive(Serialize, JsonSchema)]
pub(crate) struct OfRun {
    /// The energizer; absent where its place is not stated.
    #[serde(skip_serializing_if = "Option::is_none")]
    energizer_place: Option<Energizer>,
    /// The dampest place for the earth stakes within reach; absent where no damp ground is in reach.
    #[serde(skip_serializing_if = "Option::is_none")]
    dampest: Option<Best>,
    /// Each in the plan's order; absent where no places are stated.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    earth_stakes: Vec<Stake>,
}

/// Where the energizer stands, and its lead to the net.
#[derive(Serialize, JsonSchema)]
pub(crate) struct Energizer {
    /// Where it stands.
    at: Point,
    /// From it to where the lead meets the net, straight, metres.
    feed_m: Option<f64>,
    /// Length of the lead, stated or as far as the two are apart, metres.
    lead_m: Option<f64>,
    /// What the lead resists, ohms.
    lead_ohm: f64,
    /// From it to the nearest earth stake, metres; absent where no place of one is stated.
    #[serde(skip_serializing_if = "Option::is_none")]
    earth_stake_m: Option<f64>,
}

/// The dampest place for a run's earth stakes within reach of the earth lead.
#[derive(Serialize, JsonSchema)]
pub(crate) struct Best {
    /// The damp ground, from 0 in the plan's `ground.damp`.
    damp: usize,
    /// Where the stakes would stand, the one in reach first.
    places: Vec<Point>,
    /// How many of them stand in the damp ground.
    inside: usize,
    /// From the energizer to the first, metres.
    off_m: f64,
    /// How far the earth lead reaches, stated or assumed, metres.
    earth_lead_m: f64,
    /// Their resistance there, ohms.
    earth_ohm: f64,
    /// Resistance of the stakes as they stand, ohms.
    now_ohm: f64,
    /// Whether all of the run's stakes stand in ground as damp already.
    there: bool,
    /// The corner or end, from 0 in the report's `corners`, whose brace's stake stands there too.
    #[serde(skip_serializing_if = "Option::is_none")]
    brace_of_corner: Option<usize>,
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
    /// To the energizer, where its place is stated.
    #[serde(skip_serializing_if = "Option::is_none")]
    energizer_m: Option<f64>,
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
    let (run, worked) = (plan.runs.get(index), workup.runs.get(index));
    OfRun {
        energizer_place: run.and_then(|run| energizer(plan, run)),
        dampest: run.zip(worked).and_then(|(run, worked)| best(run, worked)),
        earth_stakes: placed(plan, workup, index).iter().map(out).collect(),
    }
}

/// The energizer whose place is stated.
pub(crate) fn energizer(plan: &Plan, run: &Run) -> Option<Energizer> {
    let lead = workup::lead::lead(plan, run);
    Some(Energizer {
        at: run.energizer_at?,
        feed_m: lead.apart_m,
        lead_m: lead.length_m,
        lead_ohm: lead.ohm,
        earth_stake_m: workup::earth::nearest_to_energizer(run).map(|(_, off_m)| off_m),
    })
}

/// The dampest place for the stakes of a run.
pub(crate) fn best(run: &Run, worked: &RunWorkup) -> Option<Best> {
    let Dampest { damp, places, inside, off_m, ohm, now_ohm, there, known: _, corner } = worked.dampest.clone()?;
    Some(Best {
        damp,
        places,
        inside,
        off_m,
        earth_lead_m: run.earth_stakes.lead_m(),
        earth_ohm: ohm,
        now_ohm,
        there,
        brace_of_corner: corner,
    })
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
        energizer_m: far(stake.energizer_m),
        next_m: far(stake.next_m),
        foreign_earth_m: far(stake.foreign.map(|(_, metres)| metres)),
        other_run_m: far(stake.other_run.map(|(_, metres)| metres)),
        brace_of_corner: stake.corner,
    }
}
