//! What earth stakes resist, by the soil in which each of them stands.
//!
//! The matrix knows one soil. Where all stakes stand in one damp place it is that place's, where none does the ground's
//! own. Between the two the least is taken of what holds for sure: of the stakes that stand in soil of so many ohm
//! metres or fewer, all in soil of so many; a further stake, wherever it is, never makes an earth worse. That is on the
//! cautious side of a soil of two kinds, of which no formula is used.

use electrical::{layout_ohm, stakes_ohm};
use geometry::region;
use plan::{Plan, Point, Run, Shape};

use super::{apart_m, beyond};
use crate::{outlines, point};

/// Resistivity today where a place lies, ohm metres: of the damp places that hold it the driest, else the ground's own.
pub fn at_ohm_m(plan: &Plan, at: Point) -> f64 {
    let holds = |number: usize, outline: &[Point]| {
        let built = outlines::build(&Shape::Damp(number), outline, true, &mut Vec::new());
        built.is_some_and(|outline| region::contains(&outline, point(at)))
    };
    let damp = plan.ground.damp.iter().enumerate();
    let damp = damp.filter(|(number, damp)| holds(*number, &damp.outline)).map(|(_, damp)| damp);
    let driest = damp.map(|damp| plan.ground.damp_today_ohm_m(damp)).max_by(f64::total_cmp);
    driest.unwrap_or_else(|| plan.ground.resistivity_today_ohm_m())
}

/// Resistance of so many of a run's earth stakes, by the matrix: the first of those whose places are stated and then as
/// [`super::one_more`] has it, else in line. Of a row only the first stake's place is known, and so only its soil.
pub(crate) fn ohm(plan: &Plan, run: &Run, count: usize) -> Option<f64> {
    let (stake, stated) = (&plan.store.earth_stake, &run.earth_stakes);
    if stated.places.is_empty() {
        let row = |soil_ohm_m: f64, count: usize| {
            stakes_ohm(soil_ohm_m, stake.length_m(), stake.diameter_m(), count, stated.spacing_m()).ok()
        };
        let all = row(plan.ground.resistivity_today_ohm_m(), count)?;
        let first = stated.at.filter(|_| count > 0).and_then(|at| row(at_ohm_m(plan, at), 1));
        return Some(first.map_or(all, |first| if count == 1 { first } else { first.min(all) }));
    }
    let mut stand: Vec<Point> = stated.places.iter().copied().take(count).collect();
    while stand.len() < count {
        stand.push(beyond(run, &stand)?);
    }
    layout(plan, &stand)
}

/// Resistance of stakes that stand at those places.
pub(crate) fn layout(plan: &Plan, stand: &[Point]) -> Option<f64> {
    let stake = &plan.store.earth_stake;
    let soils: Vec<f64> = stand.iter().map(|&at| at_ohm_m(plan, at)).collect();
    let mut kinds = soils.clone();
    kinds.sort_by(f64::total_cmp);
    kinds.dedup();
    let in_soil = |&soil_ohm_m: &f64| {
        let of = stand.iter().zip(&soils).filter(|(_, own)| **own <= soil_ohm_m);
        let places_m: Vec<[f64; 2]> = of.map(|(at, _)| [at.east_m, at.north_m]).collect();
        layout_ohm(soil_ohm_m, stake.length_m(), stake.diameter_m(), &places_m).ok()
    };
    let all: Option<Vec<f64>> = kinds.iter().map(in_soil).collect();
    all?.into_iter().min_by(f64::total_cmp)
}

/// Resistance of the stakes of several runs as one layout; `None` where not every stake's place is stated, or an earth
/// was measured.
pub(crate) fn joint_ohm(plan: &Plan, runs: &[&Run]) -> Option<f64> {
    let placed = runs.iter().all(|run| run.earth_ohm.is_none() && !run.earth_stakes.places.is_empty());
    if runs.len() < 2 || !placed {
        return None;
    }
    let stake = &plan.store.earth_stake;
    let mut stand: Vec<Point> = Vec::new();
    for &at in runs.iter().flat_map(|run| &run.earth_stakes.places) {
        if stand.iter().all(|&other| apart_m(other, at) > stake.diameter_m()) {
            stand.push(at);
        }
    }
    layout(plan, &stand)
}
