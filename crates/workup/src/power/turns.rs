//! What wiring by turns, live and earthed, gains in dry soil and what it costs, for a run whose nets are built so.

use electrical::Animal;
use plan::{NetKind, Plan};

use super::feel::{SOILS_OHM_M, Who};
use super::fence::Fence;

/// The run as its nets are built, beside the same nets with every line live.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ByTurns {
    /// Kilovolts at the weakest post: by turns, all live.
    pub weakest_kv: [f64; 2],
    /// Kilovolts across a fox at the weakest post on each soil of the table: by turns, all live.
    pub fox_kv: [[f64; 2]; SOILS_OHM_M.len()],
}

/// The comparison; `None` where no net of the run has earthed lines or nothing can be worked out.
pub fn by_turns(plan: &Plan, run: &str) -> Option<ByTurns> {
    let stated = plan.runs.iter().find(|other| other.id == run)?;
    let earthed = |net: &&NetKind| !net.earthed_line_heights_m().is_empty();
    let ids: Vec<&str> = plan.store.nets.iter().filter(earthed).map(|net| net.id.as_str()).collect();
    let used = |id: &String| ids.contains(&id.as_str());
    let any = stated.nets.as_ref().map_or(!ids.is_empty(), |nets| nets.iter().any(used));
    if !any {
        return None;
    }
    let all_live = with_all_live(plan);
    let mut weakest_kv = [0.0; 2];
    let mut fox_kv = [[0.0; 2]; SOILS_OHM_M.len()];
    for (way, plan) in [plan, &all_live].into_iter().enumerate() {
        let fence = Fence::of(plan, run)?;
        let (_, posts_v) = fence.peaks_v(&fence.circuit)?;
        let no_load_v = fence.circuit.source.v0;
        weakest_kv[way] = posts_v.into_iter().fold(f64::INFINITY, f64::min).min(no_load_v) / 1e3;
        for (soil, &soil_ohm_m) in SOILS_OHM_M.iter().enumerate() {
            let there = super::on_soil(plan, soil_ohm_m);
            let fence = Fence::of(&there, run)?;
            let body = Who::Fox.body();
            let feet_ohm = electrical::foot_ohm(soil_ohm_m, body.foot_m, body.feet);
            let animal = Animal { body_ohm: body.body_ohm, feet_ohm };
            let felt = fence.touched(&animal, |touch| touch.peak_v / 1e3)?;
            fox_kv[soil][way] = felt.into_iter().fold(f64::INFINITY, f64::min);
        }
    }
    Some(ByTurns { weakest_kv, fox_kv })
}

/// The plan with every line of every net live.
fn with_all_live(plan: &Plan) -> Plan {
    let mut plan = plan.clone();
    for net in &mut plan.store.nets {
        let Some(earthed) = net.earthed_line_heights_m.take() else { continue };
        let mut heights_m = net.live_line_heights_m().to_vec();
        heights_m.extend(earthed);
        heights_m.sort_by(f64::total_cmp);
        net.live_line_heights_m = Some(heights_m);
    }
    plan
}
