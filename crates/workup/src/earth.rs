//! Earth stakes: where each stands, what they are together, and how far each is from what it must keep off.
//!
//! Stakes whose places are stated stand there. Of a row only the first stake's place can be stated, and not which way
//! the row runs: it is drawn level on the sheet, away from the feed point, and no distance is told of its further
//! stakes. An earth stake that stands where a brace's stake stands is that stake: one galvanised steel stake may be
//! both, and is carried once.

pub(crate) mod dampest;
mod soil;

use geometry::{Outline, region};
use plan::{BraceKind, Hazard, HazardKind, Plan, Point, Run, RunStatus, defaults};

pub use dampest::Dampest;
pub use soil::at_ohm_m;
pub(crate) use soil::{joint_ohm, layout, ohm};

use crate::model::{Lay, RunWorkup, SampleOf, Workup};
use crate::{lead, point};

/// More earth stakes than this are a slip of the pen.
pub const MOST_STAKES: u32 = 100;
/// How far a metal stake keeps off the net, metres: nearer it may touch it when the net sways.
pub const OFF_NET_M: f64 = 0.3;
/// How far an earth stake keeps off any other earth, metres.
pub const OFF_FOREIGN_M: f64 = 10.0;
/// How far the earth stakes of fences that are fed apart keep off each other, metres.
pub const OFF_FENCES_M: f64 = 10.0;
/// An earth stake as near as this to a brace's stake is that stake, metres: common practice, no source.
pub const SAME_STAKE_M: f64 = 0.05;

/// An earth stake, and how far it is from what matters: straight, on the ground, metres.
#[derive(Clone, Debug, PartialEq)]
pub struct EarthStake {
    /// Where it stands, or is drawn.
    pub at: Point,
    /// Whether its place is stated, so that the distances are its own.
    pub placed: bool,
    /// To the nearest netting: of its own run, and between standing runs of the others.
    pub net_m: Option<f64>,
    /// To the feed point.
    pub feed_m: Option<f64>,
    /// To the energizer, where its place is stated.
    pub energizer_m: Option<f64>,
    /// To the nearest other stake of its run.
    pub next_m: Option<f64>,
    /// To the nearest earth that is not this fence's, with its place in the plan's hazards.
    pub foreign: Option<(usize, f64)>,
    /// Between standing runs that are fed apart, to the nearest earth stake of another, with that run's place in the plan.
    pub other_run: Option<(usize, f64)>,
    /// The corner whose brace's stake it is, in the order of the lay's corners.
    pub corner: Option<usize>,
}

/// Where a run's earth stakes stand: as stated, or in their row from the first; empty where no place is stated.
pub fn places(run: &Run) -> Vec<Point> {
    let stated = &run.earth_stakes;
    match stated.at {
        _ if !stated.places.is_empty() => stated.places.clone(),
        Some(first) => row(run, first, run.feed_at.or(run.outline.first().copied())),
        None => Vec::new(),
    }
}

/// The row of a run's stakes from a first place on, away from the feed point.
pub fn row(run: &Run, first: Point, feed: Option<Point>) -> Vec<Point> {
    let (way, spacing_m) = (level(first, feed), run.earth_stakes.spacing_m());
    let at = |number: u32| Point::new(first.east_m + way * f64::from(number) * spacing_m, first.north_m);
    (0..run.earth_stakes.count().min(MOST_STAKES)).map(at).collect()
}

/// Level on the sheet, away from the net: a row is read most easily so.
fn level(first: Point, feed: Option<Point>) -> f64 {
    if feed.is_some_and(|feed| first.east_m < feed.east_m) { -1.0 } else { 1.0 }
}

/// Where one more stake would stand: in line beyond the last two, at the run's spacing, and a step farther where a stake
/// stands there already. `None` where no place is stated.
pub fn one_more(run: &Run) -> Option<Point> {
    beyond(run, &places(run))
}

fn beyond(run: &Run, stand: &[Point]) -> Option<Point> {
    let last = *stand.last()?;
    let way = stand.len().checked_sub(2).and_then(|before| {
        let (east, north) = (last.east_m - stand[before].east_m, last.north_m - stand[before].north_m);
        let far_m = east.hypot(north);
        (far_m > 0.0 && far_m.is_finite()).then(|| (east / far_m, north / far_m))
    });
    let way = way.unwrap_or_else(|| (level(last, run.feed_at.or(run.outline.first().copied())), 0.0));
    let stated_m = run.earth_stakes.spacing_m();
    let usable = stated_m.is_finite() && stated_m > 0.0;
    let spacing_m = if usable { stated_m } else { defaults::EARTH_STAKE_SPACING_M };
    let at = |step: usize| {
        let far_m = step as f64 * spacing_m;
        Point::new(last.east_m + way.0 * far_m, last.north_m + way.1 * far_m)
    };
    let clear = |place: &Point| stand.iter().all(|&other| apart_m(*place, other) >= spacing_m / 2.0);
    // Each stake stands in the way of two steps at the most.
    (1..=2 * stand.len() + 1).map(at).find(clear)
}

/// The first two of a run's stated stakes that stand at one place, by number from 0.
pub(crate) fn together(plan: &Plan, run: &Run) -> Option<(usize, usize)> {
    let (stand, thick_m) = (&run.earth_stakes.places, plan.store.earth_stake.diameter_m());
    let pairs = (1..stand.len()).flat_map(|other| (0..other).map(move |one| (one, other)));
    pairs.into_iter().find(|&(one, other)| apart_m(stand[one], stand[other]) <= thick_m)
}

/// Whether one of a run's earth stakes is the one stake that stands there, as far as it is known where they stand.
pub(crate) fn is_stake(run: &Run, at: Point) -> bool {
    known(run).into_iter().any(|stake| apart_m(stake, at) <= SAME_STAKE_M)
}

/// How far an earth of others is from a place; `None` of what is none, or has no place.
pub fn foreign_m(hazard: &Hazard, at: Point) -> Option<f64> {
    let is_one = hazard.kind == HazardKind::ForeignEarth && !hazard.path.is_empty();
    let path: Vec<_> = hazard.path.iter().copied().map(point).collect();
    is_one.then(|| region::distance_to_m(&Outline::open(&path), point(at)))
}

/// Whether two standing runs tick apart: they name different energizers, or one of which there are two.
pub fn fed_apart(plan: &Plan, run: &Run, other: &Run) -> bool {
    let units = &plan.store.energizers;
    let unit = |run: &Run| match &run.energizer {
        Some(id) => units.iter().position(|unit| unit.id == *id),
        None => (!units.is_empty()).then_some(0),
    };
    let (one, two) = (unit(run), unit(other));
    one != two
        || one.is_none_or(|unit| units[unit].count() != 1)
        || run.energizer.is_none()
        || other.energizer.is_none()
}

/// Every earth stake of a run; empty where no place of one is stated.
pub fn stakes(plan: &Plan, workup: &Workup, index: usize) -> Vec<EarthStake> {
    let (Some(run), Some(worked)) = (plan.runs.get(index), workup.runs.get(index)) else { return Vec::new() };
    let standing = |run: &Run| run.status == RunStatus::Standing;
    let others = || {
        let all = plan.runs.iter().zip(&workup.runs).enumerate();
        all.filter(|&(other, (stated, _))| other != index && standing(run) && standing(stated))
    };
    let nets = worked.lay.iter().chain(others().filter_map(|(_, (_, worked))| worked.lay.as_ref()));
    let nets: Vec<Outline> = nets.filter_map(Lay::netting).collect();
    let feed = feed(run, worked);
    let stand = places(run);
    let nearest = |all: &mut dyn Iterator<Item = (usize, f64)>| all.min_by(|one, other| one.1.total_cmp(&other.1));
    let stake = |(number, &at): (usize, &Point)| {
        let to_net = nets.iter().map(|net| region::distance_to_m(net, point(at)));
        let rest = stand.iter().enumerate().filter(|(other, _)| *other != number);
        let hazards = plan.ground.hazards.iter().enumerate();
        let apart = others().filter(|(_, (other, _))| fed_apart(plan, run, other));
        let theirs = apart.flat_map(|(other, (stated, _))| known(stated).into_iter().map(move |at| (other, at)));
        EarthStake {
            at,
            placed: number == 0 || !run.earth_stakes.places.is_empty(),
            net_m: to_net.min_by(f64::total_cmp),
            feed_m: feed.map(|feed| apart_m(feed, at)),
            energizer_m: run.energizer_at.map(|energizer| apart_m(energizer, at)),
            next_m: rest.map(|(_, &other)| apart_m(other, at)).min_by(f64::total_cmp),
            foreign: nearest(&mut hazards.filter_map(|(number, hazard)| Some((number, foreign_m(hazard, at)?)))),
            other_run: nearest(&mut theirs.map(|(other, place)| (other, apart_m(place, at)))),
            corner: worked.lay.as_ref().and_then(|lay| corner(lay, at)),
        }
    };
    stand.iter().enumerate().map(stake).collect()
}

/// The earth stakes of a run of which it is known where they stand: all whose places are stated, and of a row the first.
pub fn known(run: &Run) -> Vec<Point> {
    if run.earth_stakes.places.is_empty() {
        run.earth_stakes.at.into_iter().collect()
    } else {
        run.earth_stakes.places.clone()
    }
}

/// The earth stake of a run that is nearest to its energizer, of those of which it is known where they stand, and how far
/// it is, metres: the earth lead goes there, and the others hang on it.
pub fn nearest_to_energizer(run: &Run) -> Option<(Point, f64)> {
    let from = lead::energizer(run)?;
    let off = known(run).into_iter().map(|at| (at, apart_m(at, from)));
    off.min_by(|one, other| one.1.total_cmp(&other.1))
}

/// The guyed corner whose stake stands there.
fn corner(lay: &Lay, at: Point) -> Option<usize> {
    let is_it = |corner: &crate::model::Corner| {
        corner.kit.earth && corner.kit.kind == BraceKind::Guy && apart_m(corner.stake.at, at) <= SAME_STAKE_M
    };
    lay.corners.iter().position(is_it)
}

fn feed(run: &Run, worked: &RunWorkup) -> Option<Point> {
    let samples = worked.volts.as_ref().map(|volts| &volts.samples);
    let sample = samples.and_then(|samples| samples.iter().find(|sample| sample.of == SampleOf::Feed));
    sample.map(|sample| sample.at).or(run.feed_at).or(run.outline.first().copied())
}

fn apart_m(one: Point, other: Point) -> f64 {
    (one.east_m - other.east_m).hypot(one.north_m - other.north_m)
}
