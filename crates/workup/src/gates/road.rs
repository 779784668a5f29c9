//! The way from the gateway to a gate, as wide as the gate, over no net.

use geometry::ways::{self, Barrier, NoWay, WAY_BUDGET_STEPS};
use geometry::{Outline, Placement, Point, region};
use plan::{GateKind, HazardKind, Plan, RunStatus};

use super::opening::{self, Choice};
use super::{NoRoad, Opening, Road, Site};
use crate::lay::Line;
use crate::model::RunWorkup;
use crate::{Depth, place, point};

/// The way is narrower than the gate by this on each side, metres: room for rounding.
const ROOM_M: f64 = 0.005;

/// The way runs straight before its gate for half its width and this, metres.
const STRAIGHT_M: f64 = 0.5;

/// Half a corner of the boundary counts as no sharper than this, its sine.
const LEAST_HALF_CORNER: f64 = 0.1;

/// The nets and guys that stand, by run.
pub(super) struct Nets {
    /// Nets of the standing runs: the run, and its netting.
    standing: Vec<(usize, Outline)>,
    /// Guys of the braces that a run has or needs: the run, whether it stands, and the guy.
    guys: Vec<(usize, bool, Outline)>,
}

impl Nets {
    pub(super) fn of(plan: &Plan, lines: &[Option<Line>], runs: &[RunWorkup]) -> Self {
        let (mut standing, mut guys) = (Vec::new(), Vec::new());
        for (index, (line, worked)) in lines.iter().zip(runs).enumerate() {
            let stands = plan.runs[index].status == RunStatus::Standing;
            if let Some(Line { outline, placement: Some(placement), .. }) = line
                && stands
            {
                standing.push((index, netting(outline, placement).0));
            }
            let braced = worked.lay.iter().flat_map(|lay| &lay.corners).filter(|corner| corner.needs_brace());
            guys.extend(braced.map(|corner| {
                let guy = Outline::open(&[point(corner.at), point(corner.stake.at)]);
                (index, stands, guy)
            }));
        }
        Self { standing, guys }
    }
}

/// The netting on a line: the line itself where it covers it, else an open one; and where the chain starts along that.
fn netting(outline: &Outline, placement: &Placement) -> (Outline, bool) {
    if !placement.falls_short() {
        return (outline.clone(), true);
    }
    let covered_m = placement.covered_m();
    let start_m = placement.along_m(0.0);
    let from_m = if placement.reversed { start_m - covered_m } else { start_m };
    (ways::stretch(outline, from_m, covered_m), false)
}

/// What may be spent on the ways to one gate, whichever of its joins are tried.
pub(super) fn budget() -> u64 {
    WAY_BUDGET_STEPS
}

/// The way to a gate's opening; the steps to find it are taken from `budget`.
pub(super) fn of(
    site: &Site<'_>,
    (kind, width_m): (GateKind, f64),
    choice: &Choice,
    opening: &Opening,
    budget: &mut u64,
) -> Result<Road, NoRoad> {
    let Some(gateway) = site.plan.gateway_for(opening.at) else { return Err(NoRoad::NoGateway) };
    if choice.broken[0] {
        return Err(NoRoad::Narrow);
    }
    if site.depth == Depth::Quick {
        return Err(NoRoad::Waiting);
    }
    let clear_m = (width_m / 2.0 - ROOM_M).max(ROOM_M);
    let mut lines = standing(site, choice);
    lines.extend(things(site, kind));
    let mut barriers: Vec<Barrier> = lines.into_iter().map(|line| Barrier { line, clear_m }).collect();
    let within = barriers.clone();
    if let Some(boundary) = site.boundary {
        barriers.extend(opened(boundary, point(gateway), clear_m).into_iter().map(|line| Barrier { line, clear_m }));
    }
    let mut way = |from: Point, barriers: &[Barrier], blocked: NoRoad| {
        through(opening, width_m, from, barriers, budget).map_err(|why| match why {
            NoWay::OutOfSteps => NoRoad::OutOfSteps,
            NoWay::EndTooNear | NoWay::None => blocked,
        })
    };
    let (points, length_m) = way(point(gateway), &barriers, NoRoad::Blocked)?;
    let mut road = Road { gateway, points, length_m, ..Road::default() };
    if let (GateKind::Coop, Some(coop)) = (kind, site.plan.coop_of(site.run)) {
        (road.inside, road.inside_m) = way(point(coop.at), &within, NoRoad::CoopBlocked)?;
    }
    Ok(road)
}

/// The shorter way from a place into the opening from one of its two sides: straight for the last steps, for the way is
/// as wide as the gate.
fn through(
    opening: &Opening,
    width_m: f64,
    from: Point,
    barriers: &[Barrier],
    budget: &mut u64,
) -> Result<(Vec<plan::Point>, f64), NoWay> {
    let at = point(opening.at);
    let ends = opening.gap.first().zip(opening.gap.last()).map(|(first, last)| point(*last) - point(*first));
    let across = ends.unwrap_or_default().unit().left();
    let straight_m = width_m / 2.0 + STRAIGHT_M;
    let mut best: Result<(Vec<plan::Point>, f64), NoWay> = Err(NoWay::None);
    for side in [-1.0, 1.0] {
        let before = at + across * (side * straight_m);
        // The last steps keep every clearance as well.
        let is_straight = ways::is_clear(before, at, barriers);
        let way = if is_straight { ways::shortest_way(from, before, barriers, budget) } else { Err(NoWay::None) };
        let found = way.map(|way| {
            let points: Vec<plan::Point> = way.points.into_iter().chain([at]).map(place).collect();
            (points, way.length_m + straight_m)
        });
        best = match (best, found) {
            (Ok(known), Ok(new)) => Ok(if new.1 < known.1 { new } else { known }),
            (Ok(known), Err(_)) => Ok(known),
            (Err(_), Ok(new)) => Ok(new),
            (Err(NoWay::OutOfSteps), Err(_)) => Err(NoWay::OutOfSteps),
            (Err(_), Err(why)) => Err(why),
        };
    }
    best
}

/// The nets that stand, this run's own with its gate open, and the guys.
fn standing(site: &Site<'_>, choice: &Choice) -> Vec<Outline> {
    let (own, whole) = netting(site.outline, site.placement);
    let (gap_m, length_m) = opening::gap_m(site, choice);
    let gap_m = if whole { gap_m } else { own.nearest_along(site.outline.at(gap_m)).0 };
    let mut lines = ways::without_stretch(&own, gap_m, length_m);
    let others = site.nets.standing.iter().filter(|(run, _)| *run != site.index);
    lines.extend(others.map(|(_, line)| line.clone()));
    let guys = site.nets.guys.iter().filter(|(run, stands, _)| *stands || *run == site.index);
    lines.extend(guys.map(|(_, _, guy)| guy.clone()));
    lines
}

/// Everything but its own net that a way to a run's gates may have to go round, whoever goes through.
pub(super) fn about(site: &Site<'_>) -> Vec<Outline> {
    let others = site.nets.standing.iter().filter(|(run, _)| *run != site.index).map(|(_, line)| line.clone());
    let guys = site.nets.guys.iter().filter(|(run, stands, _)| *stands || *run == site.index);
    others.chain(guys.map(|(_, _, guy)| guy.clone())).chain(things(site, GateKind::Foot)).collect()
}

/// What else is kept off: keep-outs and water, other fences, coops but the one that goes through.
fn things(site: &Site<'_>, kind: GateKind) -> Vec<Outline> {
    let plan = site.plan;
    let ring = |places: &[plan::Point]| Outline::closed(&places.iter().copied().map(point).collect::<Vec<_>>());
    let mut lines: Vec<Outline> = plan.ground.keep_outs.iter().map(|keep_out| ring(&keep_out.outline)).collect();
    let fences = plan.ground.hazards.iter().filter(|hazard| hazard.kind == HazardKind::OtherEnergisedFence);
    lines.extend(fences.map(|fence| Outline::open(&fence.path.iter().copied().map(point).collect::<Vec<_>>())));
    let moves = plan.coop_of(site.run).filter(|_| kind == GateKind::Coop).map(|coop| &coop.id);
    let coops = plan.coop.iter().chain(&plan.other_coops).filter(|coop| Some(&coop.id) != moves);
    lines.extend(coops.map(|coop| ring(&coop.corners())));
    lines
}

/// The boundary with the gateway open: as much of it is taken out as the way needs there.
fn opened(boundary: &Outline, gateway: Point, clear_m: f64) -> Vec<Outline> {
    let (along_m, apart_m) = boundary.nearest_along(gateway);
    // A gateway well within the paddock opens nothing; one beyond its edge opens the edge before it.
    if apart_m > clear_m && region::contains(boundary, gateway) {
        return vec![boundary.clone()];
    }
    let edge = boundary.at(along_m);
    let near = if apart_m > clear_m { edge } else { gateway };
    // In a corner the way comes in between both edges, so more of them is open.
    let corner = boundary
        .vertices()
        .iter()
        .map(|vertex| (boundary.between_m(vertex.along_m, along_m), vertex.turn_rad()))
        .filter(|(off_m, _)| *off_m < 2.0 * clear_m)
        .map(|(off_m, turn_rad)| off_m + clear_m / (turn_rad / 2.0).cos().max(LEAST_HALF_CORNER))
        .fold(clear_m, f64::max);
    let mut half_m = corner * 1.05 + ROOM_M;
    for _ in 0..8 {
        let left = ways::without_stretch(boundary, along_m - half_m, 2.0 * half_m);
        if left.iter().all(|line| region::distance_to_m(line, near) > clear_m) {
            return left;
        }
        half_m *= 1.4;
    }
    Vec::new()
}
