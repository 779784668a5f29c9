//! Whether a run is shut: by its own netting, or together with what stands already and holds birds.
//!
//! A closed outline is shut where its nets reach all the way round. Netting that ends elsewhere is shut by a wall, a
//! hedge or a permanent fence that is stated to hold birds, or by the netting of another run that stands, where both of
//! its ends stand on such things and these meet one another: then the shortest way along them, from end to end, is the
//! last side. All else is open, and an open run has no ground: what it would enclose depends on what closes it.
//!
//! Metres on the map. A thing that a line crosses on its way counts for nothing; an end that stands on a thing is taken
//! to its nearest place.

use geometry::{MEET_M, Outline, OutlineFault, region};
use plan::{Plan, Point, Run, RunStatus};

use crate::model::{Closing, ClosingSide, Lay, RunWorkup, ShutBy};
use crate::{place, point};

/// An end of netting nearer than this to a wall, a hedge, a fence or another net stands on it, metres: one panel is drawn
/// up to it. Things nearer to one another than this meet. Common practice, no source.
pub const ON_WALL_M: f64 = 0.5;

/// Finds what shuts every run that was laid, and what of it is open; says of which runs that changed, by their places.
///
/// A wall or another run's net may shut a run, so where one run changed all are looked at anew.
pub fn close(plan: &Plan, runs: &mut [RunWorkup]) -> Vec<usize> {
    let open = |worked: &RunWorkup| worked.lay.as_ref().is_some_and(|lay| !meets_itself(lay));
    let things = if runs.iter().any(open) { Things::of(plan, runs) } else { Things::default() };
    let closings: Vec<Option<Closing>> = plan
        .runs
        .iter()
        .zip(runs.iter())
        .enumerate()
        .map(|(index, (run, worked))| worked.lay.as_ref().map(|lay| closing(run, index, lay, &things)))
        .collect();
    let mut changed = Vec::new();
    for (index, (worked, closing)) in runs.iter_mut().zip(closings).enumerate() {
        if worked.closing != closing {
            worked.closing = closing;
            changed.push(index);
        }
    }
    changed
}

/// Whether a line of netting ends where it begins.
fn meets_itself(lay: &Lay) -> bool {
    lay.short_m < MEET_M && (lay.closed || ends_apart_m(lay) < ON_WALL_M)
}

/// How far apart the ends of an open line lie, metres.
fn ends_apart_m(lay: &Lay) -> f64 {
    let (Some(first), Some(last)) = (lay.vertices.first(), lay.vertices.last()) else { return 0.0 };
    point(first.0).distance_m(point(last.0))
}

fn closing(run: &Run, index: usize, lay: &Lay, things: &Things) -> Closing {
    if meets_itself(lay) {
        let places = || lay.vertices.iter().map(|vertex| point(vertex.0)).collect::<Vec<_>>();
        let ground_m2 = if lay.closed { Some(lay.area_m2) } else { ground_m2(&places(), &[]) };
        return Closing { by: ShutBy::Netting, gap_m: 0.0, ground_m2, ring: Vec::new() };
    }
    let holds = |thing: &Thing| thing.holds && thing.of != ClosingSide::Run(index);
    // With netting to its ends a line may be shut.
    let ends = lay.vertices.first().zip(lay.vertices.last()).map(|(first, last)| [point(first.0), point(last.0)]);
    let wants_netting = || lay.closed || ends.is_some_and(|[first, last]| things.way(last, first, &holds).is_some());
    let ends_m = if lay.short_m >= MEET_M && wants_netting() { 0.0 } else { ends_apart_m(lay) };
    let gap_m = ends_m + lay.short_m;
    let open = |may| Closing { by: ShutBy::Nothing { may }, gap_m, ground_m2: None, ring: Vec::new() };
    // What stood once is shut by nothing that stands now.
    let Some(netting) = lay.netting().filter(|_| run.status != RunStatus::Past) else { return open(Vec::new()) };
    let places: Vec<_> = netting.points().collect();
    let (Some(&first), Some(&last)) = (places.first(), places.last()) else { return open(Vec::new()) };
    if let Some(way) = things.way(last, first, &holds) {
        let ring: Vec<_> = places.iter().chain(&way.places).copied().collect();
        let ground_m2 = ground_m2(&ring, &[first, last]);
        let ring = if ground_m2.is_some() { ring.into_iter().map(place).collect() } else { Vec::new() };
        return Closing { by: ShutBy::Sides { along: way.along }, gap_m: way.length_m, ground_m2, ring };
    }
    let may = |thing: &Thing| thing.may_hold && thing.of != ClosingSide::Run(index);
    let unsaid = |side: &ClosingSide| things.all.iter().any(|thing| thing.of == *side && !thing.holds);
    let may = things.way(last, first, &may).map_or_else(Vec::new, |way| way.along);
    open(may.into_iter().filter(unsaid).collect())
}

/// Ground within a ring, square metres; `None` where the ring crosses itself other than at an end that stands on a wall.
fn ground_m2(ring: &[geometry::Point], ends: &[geometry::Point]) -> Option<f64> {
    let crossed = |fault: OutlineFault| match fault {
        OutlineFault::CrossesItself { at, .. } => ends.iter().all(|end| end.distance_m(at) > 2.0 * ON_WALL_M),
        _ => false,
    };
    let area_m2 = Outline::closed(ring).area_m2();
    let sound = !geometry::check_outline(ring, true).into_iter().any(crossed);
    (sound && area_m2 > MEET_M * MEET_M).then_some(area_m2)
}

/// Something that stands and may serve as a side.
struct Thing {
    of: ClosingSide,
    line: Outline,
    /// Whether it is known to hold birds, or at least not known not to.
    holds: bool,
    may_hold: bool,
}

/// All that stands, and where of it meets what else.
#[derive(Default)]
struct Things {
    all: Vec<Thing>,
    /// Two things and the place on each, metres along it.
    meetings: Vec<[(usize, f64); 2]>,
}

/// A way along things that stand.
struct Way {
    places: Vec<geometry::Point>,
    length_m: f64,
    along: Vec<ClosingSide>,
}

impl Things {
    fn of(plan: &Plan, runs: &[RunWorkup]) -> Self {
        let walls = plan.walls.iter().enumerate().filter_map(|(index, wall)| {
            let places: Vec<_> = wall.path.iter().copied().map(point).collect();
            let fatal = |fault: &OutlineFault| fault.is_fatal() && !matches!(fault, OutlineFault::CrossesItself { .. });
            let sound = !geometry::check_outline(&places, false).iter().any(fatal);
            let (holds, may_hold) = (wall.holds_birds(), wall.holds_birds.unwrap_or(true));
            sound.then(|| Thing { of: ClosingSide::Wall(index), line: Outline::open(&places), holds, may_hold })
        });
        let stands = |run: &Run| run.status == RunStatus::Standing;
        let nets = plan.runs.iter().zip(runs).enumerate().filter(|(_, (run, _))| stands(run));
        let nets = nets.filter_map(|(index, (_, worked))| {
            let line = worked.lay.as_ref()?.netting()?;
            Some(Thing { of: ClosingSide::Run(index), line, holds: true, may_hold: true })
        });
        let all: Vec<Thing> = walls.chain(nets).collect();
        let mut meetings = Vec::new();
        for one in 0..all.len() {
            for other in one + 1..all.len() {
                let found = places_of_meeting(&all[one].line, &all[other].line);
                meetings.extend(found.into_iter().map(|[here, there]| [(one, here), (other, there)]));
            }
        }
        Self { all, meetings }
    }

    /// The shortest way from one place to another along things that count; `None` where either stands on none of them, or
    /// they do not meet.
    fn way(&self, from: geometry::Point, to: geometry::Point, counts: &dyn Fn(&Thing) -> bool) -> Option<Way> {
        let mut stops: Vec<(usize, f64)> = Vec::new();
        let feet = |at: geometry::Point| -> Vec<(usize, f64)> {
            let near = self.all.iter().enumerate().filter(|(_, thing)| counts(thing));
            let feet = near.map(|(index, thing)| (index, thing.line.nearest_along(at)));
            feet.filter(|(_, foot)| foot.1 <= ON_WALL_M).map(|(index, foot)| (index, foot.0)).collect()
        };
        let (starts, goals) = (feet(from), feet(to));
        if starts.is_empty() || goals.is_empty() {
            return None;
        }
        for (index, thing) in self.all.iter().enumerate().filter(|(_, thing)| counts(thing)) {
            stops.extend(thing.line.vertices().iter().map(|vertex| (index, vertex.along_m)));
        }
        let meetings: Vec<_> =
            self.meetings.iter().filter(|pair| pair.iter().all(|one| counts(&self.all[one.0]))).collect();
        stops.extend(starts.iter().chain(&goals).chain(meetings.iter().copied().flatten()).copied());
        stops.sort_by(|one, other| one.0.cmp(&other.0).then(one.1.total_cmp(&other.1)));
        stops.dedup();
        let number = |stop: &(usize, f64)| stops.iter().position(|one| one == stop);
        let mut steps: Vec<(usize, usize, f64)> = Vec::new();
        for (index, pair) in stops.windows(2).enumerate() {
            if pair[0].0 == pair[1].0 {
                steps.push((index, index + 1, pair[1].1 - pair[0].1));
            }
        }
        for (index, thing) in self.all.iter().enumerate().filter(|(_, thing)| thing.line.is_closed()) {
            let first = stops.iter().position(|stop| stop.0 == index);
            let last = stops.iter().rposition(|stop| stop.0 == index);
            if let (Some(first), Some(last)) = (first, last) {
                steps.push((last, first, thing.line.length_m() - stops[last].1 + stops[first].1));
            }
        }
        steps.extend(meetings.iter().filter_map(|pair| Some((number(&pair[0])?, number(&pair[1])?, 0.0))));
        let starts: Vec<usize> = starts.iter().filter_map(number).collect();
        let goals: Vec<usize> = goals.iter().filter_map(number).collect();
        let (stops_on, length_m) = shortest(stops.len(), &steps, &starts, &goals)?;
        let mut along: Vec<ClosingSide> = Vec::new();
        for &stop in &stops_on {
            let of = self.all[stops[stop].0].of;
            if along.last() != Some(&of) {
                along.push(of);
            }
        }
        let at = |stop: &usize| self.all[stops[*stop].0].line.at(stops[*stop].1);
        Some(Way { places: stops_on.iter().map(at).collect(), length_m, along })
    }
}

/// Where two lines meet, metres along each.
fn places_of_meeting(one: &Outline, other: &Outline) -> Vec<[f64; 2]> {
    if region::distance_within_m(one, other, ON_WALL_M) > ON_WALL_M {
        return Vec::new();
    }
    let near = |line: &Outline, at: geometry::Point| Some(line.nearest_along(at)).filter(|foot| foot.1 <= ON_WALL_M);
    let of_one = one.vertices().iter().filter_map(|vertex| Some([vertex.along_m, near(other, vertex.at)?.0]));
    let of_other = other.vertices().iter().filter_map(|vertex| Some([near(one, vertex.at)?.0, vertex.along_m]));
    let crossed = region::crossings(one, other);
    let crossed = crossed.iter().map(|(at, _)| [one.nearest_along(*at).0, other.nearest_along(*at).0]);
    of_one.chain(of_other).chain(crossed).collect()
}

/// The stops on the shortest way from any start to any goal, and its length (Dijkstra 1959).
fn shortest(
    count: usize,
    steps: &[(usize, usize, f64)],
    starts: &[usize],
    goals: &[usize],
) -> Option<(Vec<usize>, f64)> {
    let mut length_m = vec![f64::INFINITY; count];
    let mut before: Vec<Option<usize>> = vec![None; count];
    let mut done = vec![false; count];
    for &start in starts {
        length_m[start] = 0.0;
    }
    loop {
        let open = (0..count).filter(|&stop| !done[stop] && length_m[stop].is_finite());
        let here = open.min_by(|&one, &other| length_m[one].total_cmp(&length_m[other]))?;
        if goals.contains(&here) {
            let mut way = vec![here];
            while let Some(stop) = before[way[way.len() - 1]] {
                way.push(stop);
            }
            way.reverse();
            return Some((way, length_m[here]));
        }
        done[here] = true;
        for &(from, to, step_m) in steps {
            let next = match here {
                here if here == from => to,
                here if here == to => from,
                _ => continue,
            };
            let longer_m = length_m[here] + step_m;
            if longer_m < length_m[next] {
                length_m[next] = longer_m;
                before[next] = Some(here);
            }
        }
    }
}

impl Closing {
    /// Whether it is shut.
    pub fn is_shut(&self) -> bool {
        !matches!(self.by, ShutBy::Nothing { .. })
    }

    /// The places of the walls and runs that shut it, or may.
    pub fn sides(&self) -> &[ClosingSide] {
        match &self.by {
            ShutBy::Netting => &[],
            ShutBy::Sides { along } | ShutBy::Nothing { may: along } => along,
        }
    }

    /// The ring of netting and what shuts it, where another thing than the netting does.
    pub fn ring(&self) -> Option<&[Point]> {
        Some(&self.ring[..]).filter(|ring| ring.len() > 2)
    }
}
