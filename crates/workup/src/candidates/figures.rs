//! A found outline as a run of the plan, and that run's figures from the one workup.

use geometry::largest::{Family, Largest};
use plan::{Plan, Run};

use super::{Ask, Candidate, OnSlope, Whole};
use crate::{Compared, Depth, Known, knowing, place, stocking};

/// The run that every candidate is, but for its outline and id.
pub(super) fn template(plan: &Plan, ask: &Ask, nets: Vec<String>) -> Run {
    let like = ask.like.as_ref().and_then(|id| plan.run(id));
    let run = match like {
        Some(run) => Run {
            energizer: run.energizer.clone(),
            feed_at: run.feed_at,
            energizer_at: run.energizer_at,
            earth_stakes: run.earth_stakes.clone(),
            earth_ohm: run.earth_ohm,
            leakage_s_per_m: run.leakage_s_per_m,
            join_ohm: run.join_ohm,
            lead_ohm: run.lead_ohm,
            lead_of: run.lead_of,
            lead_m: run.lead_m,
            // Whichever way round the run was drawn, what is found is drawn the other way or not: both sides alike.
            strip_width_m: run.strip_width_m.or((!run.strip_is_assumed()).then(|| run.strip_sides_m().iter().sum())),
            ..Run::default()
        },
        None => Run::default(),
    };
    let coop = if ask.coop { plan.coop.as_ref().or(plan.other_coops.first()) } else { None };
    Run { nets: Some(nets), coop: coop.map(|coop| coop.id.clone()), ..run }
}

/// The candidate, its run worked out alone on the plan's ground; with the ids that the plan's runs have and the plan's
/// numbers of the walls.
pub(super) fn candidate(
    (plan, known): (&Plan, &Known),
    template: &Run,
    (ids, walls): (&[String], &[usize]),
    found: &Largest,
    slope: Option<OnSlope>,
) -> Candidate {
    let wall = found.wall.and_then(|wall| walls.get(wall)).copied();
    let run = Run {
        id: id(ids, found.family, wall),
        outline: found.outline.iter().copied().map(place).collect(),
        closed: found.wall.map(|_| false),
        ..template.clone()
    };
    let alone = Plan { runs: vec![run.clone()], ..plan.clone() };
    let worked = knowing(&alone, Depth::Quick, &mut known.of_ground()).runs.pop().expect("one run was put in");
    let lay = worked.lay.as_ref();
    // The one figure of the workup; an open line encloses nothing by itself, so a wall's run has the outline's.
    let area_m2 = worked.area_m2.filter(|_| found.wall.is_none()).unwrap_or(found.area_m2);
    let rule = stocking::chosen(plan);
    let in_order = lay.map(|lay| lay.nets.iter().map(|net| net.kind.clone()).collect());
    Candidate {
        family: found.family,
        wall,
        outline: run.outline.clone(),
        area_m2,
        area_bound_m2: found.area_bound_m2,
        line_m: worked.line_m.unwrap_or(found.line_m),
        nets: in_order.unwrap_or_else(|| template.nets.clone().unwrap_or_default()),
        compared: Compared::of(&worked, rule).with_area(area_m2, rule),
        whole_panels: found.whole_panels.as_ref().map(|whole| Whole {
            outline: whole.outline.iter().copied().map(place).collect(),
            side_panels: whole.side_panels.clone(),
            area_m2: whole.area_m2,
        }),
        slope,
        run,
        worked,
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
