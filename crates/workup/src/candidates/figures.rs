//! A found outline as a run of the plan, and that run's figures from the one workup.

use geometry::largest::{Family, Largest};
use plan::{Plan, Run};

use super::{Ask, Candidate, Whole};
use crate::{Depth, place, workup};

/// The run that every candidate is, but for its outline and id.
pub(super) fn template(plan: &Plan, ask: &Ask, nets: Vec<String>) -> Run {
    let like = ask.like.as_ref().and_then(|id| plan.run(id));
    let run = match like {
        Some(run) => Run {
            energizer: run.energizer.clone(),
            feed_at: run.feed_at,
            earth_stakes: run.earth_stakes.clone(),
            earth_ohm: run.earth_ohm,
            leakage_s_per_m: run.leakage_s_per_m,
            join_ohm: run.join_ohm,
            lead_ohm: run.lead_ohm,
            strip_width_m: run.strip_width_m,
            ..Run::default()
        },
        None => Run::default(),
    };
    let coop = if ask.coop { plan.coop.as_ref().or(plan.other_coops.first()) } else { None };
    Run { nets: Some(nets), coop: coop.map(|coop| coop.id.clone()), ..run }
}

/// The candidate, its run worked out alone on the plan's ground.
pub(super) fn candidate(plan: &Plan, template: &Run, ids: &[String], walls: &[usize], found: &Largest) -> Candidate {
    let wall = found.wall.and_then(|wall| walls.get(wall)).copied();
    let run = Run {
        id: id(ids, found.family, wall),
        outline: found.outline.iter().copied().map(place).collect(),
        closed: found.wall.map(|_| false),
        ..template.clone()
    };
    let alone = Plan { runs: vec![run.clone()], ..plan.clone() };
    let worked = workup(&alone, Depth::Quick).runs.pop().expect("one run was put in");
    let lay = worked.lay.as_ref();
    let in_order = lay.map(|lay| lay.nets.iter().map(|net| net.kind.clone()).collect());
    let judged = lay.filter(|lay| lay.corners_judged);
    Candidate {
        family: found.family,
        wall,
        outline: run.outline.clone(),
        // The one figure of the workup; an open line encloses nothing by itself, so a wall's run has the outline's.
        area_m2: worked.area_m2.filter(|_| found.wall.is_none()).unwrap_or(found.area_m2),
        area_bound_m2: found.area_bound_m2,
        line_m: worked.line_m.unwrap_or(found.line_m),
        nets: in_order.unwrap_or_else(|| template.nets.clone().unwrap_or_default()),
        spare_m: lay.map(|lay| lay.spare_m),
        corners: judged.map(|lay| lay.corners.iter().filter(|corner| !corner.end).count()),
        braces: judged.map(crate::Lay::braces),
        strip_m2: worked.strip.as_ref().map(|strip| strip.area_m2),
        minutes: lay.map(|lay| lay.set_up_minutes),
        weakest_kv: worked.volts.as_ref().and_then(|volts| volts.weakest.as_ref()).map(|weakest| weakest.peak_kv),
        whole_panels: found.whole_panels.as_ref().map(|whole| Whole {
            outline: whole.outline.iter().copied().map(place).collect(),
            side_panels: whole.side_panels.clone(),
            area_m2: whole.area_m2,
        }),
        run,
    }
}

/// An id that no run has.
fn id(ids: &[String], family: Family, wall: Option<usize>) -> String {
    let wall = wall.map(|wall| format!("-wall-{}", wall + 1)).unwrap_or_default();
    let plain = format!("largest-{}{wall}", family.id());
    let numbered = (2..).map(|number| format!("{plain}-{number}"));
    std::iter::once(plain.clone())
        .chain(numbered)
        .find(|id| !ids.contains(id))
        .expect("a plan has fewer runs than there are numbers")
}
