//! A square of two nets whose corners lean, changed by a test, and what follows for it.

use plan::{CornerSeen, NetKind, Plan, Point, Run, SoilClass, SoilTable, SoilWord};
use workup::bracing::{Holding, SoilFound, soil};
use workup::{Depth, RunWorkup, workup as work_out};

/// A square of 25 m from two nets; each corner pulls with 141.4 N, on spikes of 200 by 10 mm loaded 0.5 m up.
pub(crate) fn square() -> Plan {
    let mut plan = Plan::default();
    let net = NetKind {
        count: Some(2),
        height_m: Some(1.0),
        spike_length_m: Some(0.2),
        spike_diameter_m: Some(0.01),
        tension_n: Some(100.0),
        ..NetKind::new("long", 50.0, 14)
    };
    plan.store.nets.push(net);
    let outline = [(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(Point::from).to_vec();
    plan.runs.push(Run { id: "run".into(), outline, ..Run::default() });
    plan
}

pub(crate) fn with(change: impl FnOnce(&mut Plan)) -> Plan {
    let mut plan = square();
    change(&mut plan);
    plan
}

pub(crate) fn worked(plan: &Plan) -> RunWorkup {
    work_out(plan, Depth::Quick).runs.remove(0)
}

pub(crate) fn found(plan: &Plan) -> SoilFound {
    soil(plan).0
}

pub(crate) fn kpa(found: &SoilFound) -> f64 {
    match found.holding {
        Holding::Clay(kpa) => kpa,
        Holding::Sand(..) => panic!("a sand"),
    }
}

#[expect(clippy::unnecessary_wraps, reason = "it is put where a plan may say nothing")]
pub(crate) fn class(table: SoilTable, name: SoilWord) -> Option<SoilClass> {
    Some(SoilClass { table, name, rest: plan::Rest::new() })
}

pub(crate) fn seen(stood: bool, turn_deg: f64) -> CornerSeen {
    CornerSeen { at: Point::new(400.0, 0.0), stood, turn_deg: Some(turn_deg), ..CornerSeen::default() }
}
