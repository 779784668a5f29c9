//! From a plan and an [`Ask`] to the question that `geometry` answers.

use geometry::Outline;
use geometry::largest::{Hold, KeepOff, LargestRequest, MOST_FREE_SIDES, Panels};
use plan::{Coop, Plan};

use super::Ask;
use super::fault::CandidateFault;
use crate::{nets, point};

/// More nets than this are a slip of the pen.
const MOST_NETS: u32 = 1000;
/// Panels whose lengths differ by less are alike, metres.
const ALIKE_M: f64 = 1e-6;

/// The question and the nets that it stands for.
pub(super) struct Request {
    pub(super) question: LargestRequest,
    pub(super) nets: Vec<String>,
}

/// The question, and for each of its walls the number of the plan's.
pub(super) fn request(plan: &Plan, ask: &Ask) -> Result<(Request, Vec<usize>), CandidateFault> {
    if plan.ground.boundary.is_empty() {
        return Err(CandidateFault::NoBoundary);
    }
    let chosen = longest(plan, ask.nets)?;
    if !(3..=MOST_FREE_SIDES).contains(&ask.free_sides) {
        return Err(CandidateFault::Sides { asked: ask.free_sides, most: MOST_FREE_SIDES });
    }
    let coop = plan.coop.as_ref().or(plan.other_coops.first());
    let hold = if ask.coop { Some(held(coop.ok_or(CandidateFault::NoCoop)?)?) } else { None };
    let outline = |points: &[plan::Point]| Outline::closed(&points.iter().copied().map(point).collect::<Vec<_>>());
    let keep_outs = plan.ground.keep_outs.iter().map(|keep_out| KeepOff {
        outline: outline(&keep_out.outline),
        clearance_m: keep_out.clearance_m(),
        // Water is never enclosed, whatever else is said of it.
        may_enclose: keep_out.may_enclose() && !keep_out.water,
    });
    let walls = if ask.walls { walls(plan) } else { Vec::new() };
    let numbers = walls.iter().map(|wall| wall.0).collect();
    let question = LargestRequest {
        boundary: outline(&plan.ground.boundary),
        keep_outs: keep_outs.collect(),
        hold,
        towards: coop.map(|coop| point(coop.at)),
        net_m: chosen.iter().map(|&kind| plan.store.nets[kind].length_m).sum(),
        panels: panels(plan, &chosen),
        walls: walls.iter().map(|&(_, from, to)| (from, to)).collect(),
        free_sides: ask.free_sides,
    };
    if question.panels.count < 3 {
        return Err(CandidateFault::TooFewPanels { panels: question.panels.count });
    }
    let nets = chosen.iter().map(|&kind| plan.store.nets[kind].id.clone()).collect();
    Ok((Request { question, nets }, numbers))
}

/// Places in the store of the longest nets, so many of them; of like ones the lighter.
fn longest(plan: &Plan, asked: u32) -> Result<Vec<usize>, CandidateFault> {
    let kinds = &plan.store.nets;
    let owned = kinds.iter().map(|kind| u64::from(kind.count())).sum::<u64>();
    if owned == 0 {
        return Err(CandidateFault::NoNets);
    }
    if asked == 0 || asked > MOST_NETS || u64::from(asked) > owned {
        return Err(CandidateFault::NetsAsked { asked, owned: owned.min(u64::from(MOST_NETS)) as u32 });
    }
    let mut by_length: Vec<usize> = (0..kinds.len()).collect();
    by_length.sort_by(|&one, &other| {
        let (one, other) = (&kinds[one], &kinds[other]);
        other.length_m.total_cmp(&one.length_m).then(one.mass_kg().total_cmp(&other.mass_kg()))
    });
    let each =
        by_length.into_iter().flat_map(|kind| std::iter::repeat_n(kind, kinds[kind].count().min(asked) as usize));
    let chosen: Vec<usize> = each.take(asked as usize).collect();
    match chosen.iter().find(|&&kind| nets::built(&kinds[kind]).is_err()) {
        Some(&kind) => Err(CandidateFault::BadNet { id: kinds[kind].id.clone() }),
        None => Ok(chosen),
    }
}

fn panels(plan: &Plan, chosen: &[usize]) -> Panels {
    let mut lengths_m = Vec::new();
    for kind in chosen.iter().map(|&kind| &plan.store.nets[kind]) {
        match &kind.panel_lengths_m {
            Some(stated_m) => lengths_m.extend(stated_m),
            None => {
                lengths_m.extend(std::iter::repeat_n(kind.length_m / kind.panel_count() as f64, kind.panel_count()));
            }
        }
    }
    let least_m = lengths_m.iter().copied().fold(f64::INFINITY, f64::min);
    let equal = lengths_m.iter().all(|length_m| length_m - least_m < ALIKE_M);
    Panels { count: lengths_m.len() as u32, equal }
}

/// The coop's four corners and the clearance that it states; without a statement the line may touch it.
fn held(coop: &Coop) -> Result<Hold, CandidateFault> {
    let clearance_m = coop.rest.get("clearance_m").map_or(0.0, |stated| stated.as_f64().unwrap_or(0.0));
    let sizes = [coop.length_m(), coop.width_m()];
    if !sizes.iter().all(|size_m| size_m.is_finite() && *size_m > 0.0) || clearance_m < 0.0 {
        return Err(CandidateFault::BadCoop);
    }
    Ok(Hold { places: coop.corners().map(point).to_vec(), clearance_m })
}

/// Every straight stretch of the walls that hold birds, with the wall's number in the plan.
fn walls(plan: &Plan) -> Vec<(usize, geometry::Point, geometry::Point)> {
    let mut found = Vec::new();
    for (index, wall) in plan.walls.iter().enumerate().filter(|(_, wall)| wall.holds_birds()) {
        let near = |at: &&plan::Point| at.east_m.abs().max(at.north_m.abs()) <= geometry::FARTHEST_M;
        let places: Vec<geometry::Point> = wall.path.iter().filter(near).map(|&at| point(at)).collect();
        found.extend(places.windows(2).map(|pair| (index, pair[0], pair[1])));
    }
    found
}
