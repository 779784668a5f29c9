//! Signs on a run: energizer and earth, corners and braces.

use std::f64::consts::{FRAC_PI_2, PI};

use plan::{Point, RunStatus};
use workup::{Corner, Lay, SampleOf, earth};

use super::Sheet;
use super::run::RunLine;
use super::track::{SAME_M, Track};
use crate::shape::{Role, Thing};

/// Where an energizer is drawn whose earth stakes have no stated place: so far outside its feed point, metres.
const ENERGIZER_M: f64 = 4.0;
/// And its stakes so far from the energizer.
const STAKES_M: f64 = 3.0;
/// Stated stakes have their energizer at this share of the way from the feed point.
const ENERGIZER_SHARE: f64 = 0.6;
/// More stakes of a row than this are not drawn.
const MOST_STAKES: usize = 24;

/// Where the power of a run stands.
pub(crate) struct Power {
    feed: Point,
    outward: f64,
    pub(crate) energizer: Point,
    pub(crate) stakes: Vec<Point>,
}

impl Power {
    /// The places, stated or assumed; `None` for a run without a feed point.
    pub(crate) fn of(run: &RunLine<'_>, track: &Track) -> Option<Self> {
        let (feed, outward) = feed(run, track).filter(|_| run.run.status != RunStatus::Past)?;
        let stated = &run.run.earth_stakes;
        let step = |from: Point, toward: f64, far_m: f64| {
            Point::new(from.east_m + far_m * toward.cos(), from.north_m + far_m * toward.sin())
        };
        let on_brace = |at: Point| {
            let near =
                |stake: Point| (stake.east_m - at.east_m).hypot(stake.north_m - at.north_m) <= earth::SAME_STAKE_M;
            let lay = run.laid.as_ref().map(|(lay, _)| lay);
            lay.is_some_and(|lay| lay.corners.iter().any(|corner| corner.kit.earth && near(corner.stake.at)))
        };
        let (energizer, first) = if let Some(energizer) = run.run.energizer_at {
            (energizer, stated.first().unwrap_or_else(|| step(energizer, outward, STAKES_M)))
        } else if let Some(at) = stated.first().filter(|&at| on_brace(at)) {
            // From the feed to a brace's stake it would stand in the net.
            (step(feed, outward, ENERGIZER_M), at)
        } else if let Some(at) = stated.first() {
            let share = |from: f64, to: f64| from + (to - from) * ENERGIZER_SHARE;
            (Point::new(share(feed.east_m, at.east_m), share(feed.north_m, at.north_m)), at)
        } else {
            let energizer = step(feed, outward, ENERGIZER_M);
            (energizer, step(energizer, outward, STAKES_M))
        };
        let stakes = if stated.places.is_empty() {
            earth::row(run.run, first, Some(feed)).into_iter().take(MOST_STAKES).collect()
        } else {
            stated.places.iter().copied().take(earth::MOST_STAKES as usize).collect()
        };
        Some(Self { feed, outward, energizer, stakes })
    }

    /// The wire from the energizer to the stakes: to the nearest, and from there always to the stake that is nearest to
    /// one that has its wire. A row is one line, from the first.
    fn wires(&self, in_row: bool) -> Vec<Vec<Point>> {
        if in_row {
            return vec![std::iter::once(self.energizer).chain(self.stakes.iter().copied()).collect()];
        }
        let off_m = |one: &Point, other: &Point| (one.east_m - other.east_m).hypot(one.north_m - other.north_m);
        // For each stake that has no wire yet: where the nearest end of one is, and how far.
        let mut left: Vec<(Point, Point, f64)> =
            self.stakes.iter().map(|&at| (at, self.energizer, off_m(&self.energizer, &at))).collect();
        let mut wires = Vec::new();
        // The energizer has one terminal for the earth: from the first stake on the wire goes on from stakes.
        while let Some(next) = (0..left.len()).min_by(|&one, &other| left[one].2.total_cmp(&left[other].2)) {
            let (at, from, _) = left.remove(next);
            for (other, end, far_m) in &mut left {
                let through_m = off_m(&at, other);
                if wires.is_empty() || through_m < *far_m {
                    (*end, *far_m) = (at, through_m);
                }
            }
            wires.push(vec![from, at]);
        }
        wires
    }
}

/// Lead, feed point, energizer and earth stakes.
pub(super) fn power(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let Some(power) = run.laid.as_ref().and_then(|(_, track)| Power::of(run, track)) else { return };
    let index = run.index;
    for wire in power.wires(run.run.earth_stakes.places.is_empty()) {
        sheet.path(Role::EarthLead, wire, false, Some(Thing::EarthStakes { run: index }));
    }
    for (stake, at) in power.stakes.into_iter().enumerate() {
        sheet.mark(Role::EarthStake, at, -FRAC_PI_2, Some(Thing::EarthStake { run: index, stake }));
    }
    let unit = Some(Thing::Energizer { run: index });
    sheet.path(Role::Lead, vec![power.energizer, power.feed], false, unit);
    sheet.mark(Role::Energizer, power.energizer, FRAC_PI_2, unit);
    sheet.mark(Role::Feed, power.feed, power.outward, Some(Thing::Feed { run: index }));
}

/// Where the lead meets the net, and outward from there, square to the net, off a corner's plate: as worked out, else
/// as stated.
pub(crate) fn feed(run: &RunLine<'_>, track: &Track) -> Option<(Point, f64)> {
    let worked = run.worked.and_then(|worked| worked.volts.as_ref());
    let sample = worked.and_then(|volts| volts.samples.iter().find(|sample| sample.of == SampleOf::Feed));
    match sample {
        Some(sample) => Some((sample.at, track.square_outward(sample.along_m))),
        // Without volts the feed is where it was stated.
        None => run.run.feed_at.map(|at| (at, track.square_outward(track.nearest(at)))),
    }
}

/// Guys and stakes where a brace is needed, advised or stated.
pub(super) fn braces(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let Some((lay, _)) = &run.laid else { return };
    if run.run.status == RunStatus::Past {
        return;
    }
    for (index, corner) in lay.corners.iter().enumerate().filter(|(_, corner)| is_braced(corner)) {
        let needed = corner.needs_brace();
        let (at, stake) = (corner.at, corner.stake.at);
        let away = (stake.north_m - at.north_m).atan2(stake.east_m - at.east_m);
        sheet.path(Role::Guy { needed }, vec![at, stake], false, None);
        let guy_m = (stake.east_m - at.east_m).hypot(stake.north_m - at.north_m);
        let brace = Some(Thing::Brace { run: run.index, corner: index });
        sheet.mark(Role::Brace { needed, weak: corner.brace_too_weak(), guy_m }, stake, away, brace);
    }
}

/// The posts that go over first in the wind with grass in the net, as the page tells them; one mark for two at a join.
pub(super) fn gusts(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let Some((lay, track)) = &run.laid else { return };
    let wind = run.worked.and_then(|worked| Some(&worked.bracing.as_ref()?.wind));
    let Some(over) = wind.and_then(|wind| wind.fouled.as_ref()) else { return };
    if run.run.status == RunStatus::Past {
        return;
    }
    let mut last: Option<Point> = None;
    for post in over.posts.iter().filter_map(|&number| lay.posts.get(number)) {
        let here = |at: Point| (at.east_m - post.at.east_m).hypot(at.north_m - post.at.north_m) < SAME_M;
        if last.replace(post.at).is_some_and(here) {
            continue;
        }
        sheet.mark(Role::GoesOver, post.at, track.square_outward(post.along_m), None);
    }
}

fn is_braced(corner: &Corner) -> bool {
    let stands = corner.stake.stand_off_m > 0.0 && corner.stake.at.east_m.is_finite();
    stands && (corner.needs_brace() || corner.brace_advised())
}

/// Plates with the corners' numbers.
pub(super) fn corners(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let Some((lay, track)) = &run.laid else { return };
    if run.run.status == RunStatus::Past {
        return;
    }
    for vertex in corner_vertices(lay, track) {
        let (at, along_m) = track.vertices()[vertex];
        let here = |corner: &&Corner| (corner.along_m - along_m).abs() < SAME_M && is_braced(corner);
        let outside = |corner: &&Corner| !corner.dents && !corner.end;
        let guy_m = lay.corners.iter().filter(here).find(outside).map(|corner| corner.stake.stand_off_m);
        let role = Role::Corner { number: vertex + 1, guy_m };
        let thing = Thing::RunCorner { run: run.index, vertex: run.stated_vertex(vertex) };
        sheet.mark(role, at, track.outward_of_vertex(vertex), Some(thing));
    }
}

/// Vertices that are numbered on the map: those that turn by 5 degrees or more, and the ends of an open line.
pub(crate) fn corner_vertices(lay: &Lay, track: &Track) -> Vec<usize> {
    const LEAST_TURN_RAD: f64 = 5.0 * PI / 180.0 - 1e-9;
    let sides = track.sides();
    (0..track.vertices().len())
        .filter(|&vertex| {
            if !lay.closed && (vertex == 0 || vertex == sides) {
                return true;
            }
            let before = track.outward_of_side((vertex + sides - 1) % sides);
            let after = track.outward_of_side(vertex % sides);
            let turn = (after - before + PI).rem_euclid(2.0 * PI) - PI;
            turn.abs() >= LEAST_TURN_RAD
        })
        .collect()
}
