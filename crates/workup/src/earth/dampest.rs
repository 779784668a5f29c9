//! The dampest place for a run's earth stakes within reach of its earth lead, and what they would resist there.
//!
//! A place inside damp ground, off the net, off the earths of others, in no keep-out, and of such places the nearest to
//! the energizer. Several stakes stand in a row at the run's spacing that stays inside where it fits: the first is in
//! reach, the others hang on it. A brace's stake that stands so is named, for one galvanised stake may be both.

use std::f64::consts::TAU;

use geometry::Outline;
use geometry::standing::{KeepOff, Standing};
use plan::{BraceKind, Plan, Point, Run, RunStatus};

use super::{MOST_STAKES, OFF_FENCES_M, OFF_FOREIGN_M, OFF_NET_M, apart_m, at_ohm_m, fed_apart, known, layout};
use crate::model::{Lay, RunWorkup};
use crate::outlines::Ground;
use crate::{lead, place, point, volts};

/// How far inside the outline of damp ground a stake stands, metres, for that is drawn by hand: the first that leaves
/// room within reach. Common practice, no source.
const INSETS_M: [f64; 3] = [0.5, 0.25, 0.1];
/// So much farther than it must a stake keeps off, metres: a hand's breadth.
const BESIDE_M: f64 = 0.05;
/// Ways that a row of stakes may run, all round.
const WAYS: u32 = 36;
/// Where the first stake that is nearest leaves no room for the row, so many places a side are tried for it.
const TRIED: u32 = 12;
/// A place is better where it takes at least this share off the resistance: common practice, no source.
pub(crate) const WORTH: f64 = 0.05;

/// The dampest place in reach, and what the run's stakes would resist there.
#[derive(Clone, Debug, PartialEq)]
pub struct Dampest {
    /// The damp place, in the ground's list.
    pub damp: usize,
    /// Where the stakes would stand, the one in reach first. Fewer than the run has where what they keep off cuts the row
    /// short.
    pub places: Vec<Point>,
    /// How many of them stand in the damp place.
    pub inside: usize,
    /// From the energizer to the first, metres.
    pub off_m: f64,
    /// Their resistance there, ohms.
    pub ohm: f64,
    /// Resistance of the run's stakes as they stand, ohms.
    pub now_ohm: f64,
    /// Whether all of the run's stakes stand in ground as damp already.
    pub there: bool,
    /// Whether it is known where one of the run's stakes stands.
    pub known: bool,
    /// The corner, in the order of the lay's, whose brace's stake stands in the damp place within reach too, and holds no
    /// earth yet.
    pub corner: Option<usize>,
}

impl Dampest {
    /// Whether the stakes are worth putting there.
    pub fn is_better(&self) -> bool {
        !self.there && self.ohm < self.now_ohm * (1.0 - WORTH)
    }
}

/// Finds it for every run that has such a place.
pub(crate) fn all(plan: &Plan, ground: &Ground, wanted: &dyn Fn(usize) -> bool, runs: &mut [RunWorkup]) {
    if ground.damp.iter().all(Option::is_none) {
        return;
    }
    for index in (0..runs.len()).filter(|&index| wanted(index)) {
        runs[index].dampest = of_run(plan, ground, runs, index);
    }
}

fn of_run(plan: &Plan, ground: &Ground, runs: &[RunWorkup], index: usize) -> Option<Dampest> {
    let run = plan.runs.get(index)?;
    if run.earth_ohm.is_some()
        || run.status == RunStatus::Past
        || !(1..=MOST_STAKES).contains(&run.earth_stakes.count())
    {
        return None;
    }
    let from = lead::energizer(run).filter(|at| point(*at).is_finite())?;
    let lines = kept_off(plan, runs, index);
    let off: Vec<KeepOff<'_>> = lines
        .iter()
        .map(|(line, metres)| KeepOff { line, metres: metres + BESIDE_M, filled: false })
        .chain(ground.keep_outs.iter().map(|line| KeepOff { line, metres: BESIDE_M, filled: true }))
        .collect();
    let own_ohm_m = plan.ground.resistivity_today_ohm_m();
    let all: Vec<(f64, usize, &Outline)> = ground
        .damp
        .iter()
        .enumerate()
        .filter_map(|(number, outline)| {
            Some((plan.ground.damp_today_ohm_m(&plan.ground.damp[number]), number, outline.as_ref()?))
        })
        .collect();
    let mut damp = all.clone();
    damp.retain(|(ohm_m, ..)| *ohm_m > 0.0 && *ohm_m < own_ohm_m);
    damp.sort_by(|one, other| one.0.total_cmp(&other.0));
    let mut best: Option<Dampest> = None;
    for (ohm_m, number, inside) in damp {
        // Of places as damp the one with the shortest lead.
        if best.as_ref().is_some_and(|best| plan.ground.damp_today_ohm_m(&plan.ground.damp[best.damp]) < ohm_m) {
            break;
        }
        // Where damp places overlap the soil counts as the drier's.
        let drier = all.iter().filter(|(other_ohm_m, ..)| *other_ohm_m > ohm_m);
        let drier = drier.map(|&(_, _, line)| KeepOff { line, metres: BESIDE_M, filled: true });
        let off: Vec<KeepOff<'_>> = off.iter().copied().chain(drier).collect();
        let Some(found) = in_place(plan, run, runs, (index, number, ohm_m), from, inside, &off) else { continue };
        if best.as_ref().is_none_or(|best| found.off_m < best.off_m) {
            best = Some(found);
        }
    }
    best
}

fn in_place(
    plan: &Plan,
    run: &Run,
    runs: &[RunWorkup],
    (index, damp, ohm_m): (usize, usize, f64),
    from: Point,
    inside: &Outline,
    off: &[KeepOff<'_>],
) -> Option<Dampest> {
    let reach_m = run.earth_stakes.lead_m();
    let (standing, first) = INSETS_M.into_iter().find_map(|inset_m| {
        let standing = Standing { inside, inset_m, off };
        Some((standing, standing.nearest(point(from), reach_m)?))
    })?;
    let (places, inside) = row(&standing, run, point(from), reach_m, first);
    let stand: Vec<Point> = places.into_iter().map(place).collect();
    let count = run.earth_stakes.count() as usize;
    let own = known(run);
    let there = own.len() == count && own.iter().all(|&at| at_ohm_m(plan, at) <= ohm_m);
    Some(Dampest {
        damp,
        inside,
        off_m: apart_m(from, *stand.first()?),
        ohm: layout(plan, &stand)?,
        now_ohm: volts::earth_ohm(plan, run)?,
        there,
        known: !own.is_empty(),
        corner: runs[index].lay.as_ref().and_then(|lay| brace(lay, &standing, from, reach_m)),
        places: stand,
    })
}

/// What an earth stake of the run keeps off, and how far: netting, earths of others, stakes of fences that are fed apart.
fn kept_off(plan: &Plan, runs: &[RunWorkup], index: usize) -> Vec<(Outline, f64)> {
    let standing = |run: &Run| run.status == RunStatus::Standing;
    let run = &plan.runs[index];
    let others = plan.runs.iter().zip(runs).enumerate();
    let others: Vec<_> =
        others.filter(|&(other, (stated, _))| other != index && standing(run) && standing(stated)).collect();
    let nets = runs[index].lay.iter().chain(others.iter().filter_map(|(_, (_, worked))| worked.lay.as_ref()));
    let mut lines: Vec<(Outline, f64)> = nets.filter_map(Lay::netting).map(|net| (net, OFF_NET_M)).collect();
    for hazard in plan.ground.hazards.iter().filter(|one| one.kind == plan::HazardKind::ForeignEarth) {
        let path: Vec<_> = hazard.path.iter().copied().map(point).collect();
        lines.push((Outline::open(&path), OFF_FOREIGN_M));
    }
    for (_, (other, _)) in others.iter().filter(|(_, (other, _))| fed_apart(plan, run, other)) {
        lines.extend(known(other).into_iter().map(|at| (Outline::open(&[point(at)]), OFF_FENCES_M)));
    }
    lines.retain(|(line, _)| !line.vertices().is_empty());
    lines
}

/// The run's stakes in a row at its spacing, from the first on, and how many of them stand inside.
fn row(
    standing: &Standing<'_>,
    run: &Run,
    from: geometry::Point,
    reach_m: f64,
    first: geometry::Point,
) -> (Vec<geometry::Point>, usize) {
    let count = run.earth_stakes.count();
    if count < 2 {
        return (vec![first], 1);
    }
    let of = |first: geometry::Point, way: u32| {
        let turn = TAU * f64::from(way) / f64::from(WAYS);
        let at = |number: u32| {
            let along_m = f64::from(number) * run.earth_stakes.spacing_m();
            geometry::Point::new(first.east_m + along_m * turn.cos(), first.north_m + along_m * turn.sin())
        };
        let stand: Vec<_> = (0..count).map(at).take_while(|&at| standing.keeps_off(at)).collect();
        let inside = stand.iter().take_while(|&&at| standing.allows(at)).count();
        (stand, inside)
    };
    // As many inside as can be, then as many as keep off, then as near the energizer as that allows.
    let best_of = |first: geometry::Point| {
        let far_m = |stand: &[geometry::Point]| stand.last().map_or(0.0, |at| at.distance_m(from));
        let ways = (0..WAYS).map(|way| of(first, way));
        ways.min_by(|(one, in_one), (two, in_two)| {
            let more = in_two.cmp(in_one).then(two.len().cmp(&one.len()));
            more.then((far_m(one) * 1e6).round().total_cmp(&(far_m(two) * 1e6).round()))
        })
    };
    let Some(best) = best_of(first) else { return (vec![first], 1) };
    if best.1 == count as usize {
        return best;
    }
    // From elsewhere in reach there may be room for all.
    let span = |at: fn(geometry::Point) -> f64, from_m: f64| {
        let (low, high) = geometry::span_m(standing.inside.points().map(at));
        (low.max(from_m - reach_m), high.min(from_m + reach_m))
    };
    let (east, north) = (span(|at| at.east_m, from.east_m), span(|at| at.north_m, from.north_m));
    let step = |(low, high): (f64, f64), number: u32| low + (high - low) * (f64::from(number) + 0.5) / f64::from(TRIED);
    let tried =
        (0..TRIED * TRIED).map(|number| geometry::Point::new(step(east, number % TRIED), step(north, number / TRIED)));
    let tried = standing.corners().into_iter().chain(tried.filter(|at| standing.allows(*at)));
    let mut tried: Vec<_> = tried.filter(|at| at.distance_m(from) <= reach_m).collect();
    tried.sort_by(|one, two| one.distance_m(from).total_cmp(&two.distance_m(from)));
    let mut rows = tried.into_iter().filter_map(best_of);
    rows.find(|(_, inside)| *inside == count as usize).unwrap_or(best)
}

/// The guyed corner whose stake stands in the damp place within reach, the nearest to the energizer.
fn brace(lay: &Lay, standing: &Standing<'_>, from: Point, reach_m: f64) -> Option<usize> {
    let guyed = lay.corners.iter().enumerate().filter(|(_, corner)| {
        let free = corner.needs_brace() && corner.kit.kind == BraceKind::Guy && !corner.kit.earth;
        free && apart_m(corner.stake.at, from) <= reach_m && standing.allows(point(corner.stake.at))
    });
    guyed
        .min_by(|one, other| apart_m(one.1.stake.at, from).total_cmp(&apart_m(other.1.stake.at, from)))
        .map(|(corner, _)| corner)
}
