//! The shortest way to fetch and lay the rolls: which with which, from which end, and which last.
//!
//! A trip goes from the base with one roll or two, over the nets, and home; the last one goes home elsewhere. A roll
//! goes into the ground in one of a few ways: the place where its work is entered and the place where it is left. The
//! time along the net itself is the same in every order and stands elsewhere. Straight ways; minutes and metres.
//!
//! The order of trips other than the last changes nothing, so the search is over partitions. With one roll a trip it
//! is exact in closed form. With two it is exact by dynamic programming over subsets up to [`EXACT_ROLLS`]; beyond that
//! a walk improved until no two trips can be mixed better stands beside its lower bound. Equal walks: the one that
//! leaves the last roll for last, then the pairs in the chain's order, then the first way.

use geometry::Point;

use super::bound::{MOST_ASSIGNED, half_assignment};

/// So many rolls are worked out exactly, two a trip; one a trip is exact for any number.
pub const EXACT_ROLLS: usize = 12;

/// Walks whose minutes differ by less are equal.
pub(crate) const EQUAL_MINUTES: f64 = 1e-9;

/// Rounds of improvement beyond the exact size: far more than were ever needed.
const MOST_ROUNDS: usize = 50;

/// One way to work on a roll.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Way {
    /// Where the work is entered.
    pub(crate) enter: Point,
    /// Where it is left.
    pub(crate) leave: Point,
}

/// The rolls and how fast one walks.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Task {
    /// Where every trip starts, and all but the last end.
    pub(crate) base: Point,
    /// Where the last trip ends.
    pub(crate) last_home: Point,
    /// The ways of each roll, in the chain's order; none is empty.
    pub(crate) rolls: Vec<Vec<Way>>,
    /// Rolls in one trip: 1 or 2.
    pub(crate) rolls_a_trip: usize,
    /// From the base to the first roll's place, minutes a metre.
    pub(crate) out: f64,
    /// From one roll's place to the next one's in a trip, minutes a metre.
    pub(crate) between: f64,
    /// Home, minutes a metre.
    pub(crate) home: f64,
}

/// A roll of a trip and its way.
pub(crate) type Stop = (usize, usize);

/// The best walk found, and what no walk is shorter than.
#[derive(Clone, Debug, PartialEq, Default)]
pub(crate) struct Walk {
    /// The trips in order.
    pub(crate) trips: Vec<Vec<Stop>>,
    /// Its minutes.
    pub(crate) minutes: f64,
    /// No walk takes fewer minutes.
    pub(crate) bound: f64,
}

/// A trip with its minutes.
#[derive(Clone, Debug)]
struct Trip {
    stops: Vec<Stop>,
    minutes: f64,
}

impl Task {
    /// Minutes of a trip that ends at `home`.
    pub(crate) fn trip_minutes(&self, stops: &[Stop], home: Point) -> f64 {
        let mut minutes = 0.0;
        let mut here = self.base;
        for (index, &(roll, way)) in stops.iter().enumerate() {
            let way = self.rolls[roll][way];
            minutes += here.distance_m(way.enter) * if index == 0 { self.out } else { self.between };
            here = way.leave;
        }
        minutes + here.distance_m(home) * self.home
    }

    /// The best trip over these rolls, in any order of them and any way, that ends at `home`.
    fn best_trip(&self, rolls: &[usize], home: Point) -> Trip {
        let mut best: Option<Trip> = None;
        let mut consider = |stops: Vec<Stop>| {
            let minutes = self.trip_minutes(&stops, home);
            if best.as_ref().is_none_or(|best| minutes < best.minutes - EQUAL_MINUTES) {
                best = Some(Trip { stops, minutes });
            }
        };
        let ways = |roll: usize| 0..self.rolls[roll].len();
        match *rolls {
            [one] => ways(one).for_each(|way| consider(vec![(one, way)])),
            [one, other] => {
                for (first, second) in [(one, other), (other, one)] {
                    for first_way in ways(first) {
                        ways(second).for_each(|way| consider(vec![(first, first_way), (second, way)]));
                    }
                }
            }
            _ => {}
        }
        best.expect("a trip has one roll or two, and each has a way")
    }

    /// Sets the trips in order: round the chain, so that the last trip closes it.
    fn ordered(mut trips: Vec<Trip>, last: Trip) -> Vec<Vec<Stop>> {
        let first_roll = |trip: &Trip| trip.stops.iter().map(|stop| stop.0).min();
        let end = last.stops.iter().map(|stop| stop.0).max();
        trips.sort_by_key(|trip| (first_roll(trip) < end, first_roll(trip)));
        trips.into_iter().chain([last]).map(|trip| trip.stops).collect()
    }
}

/// The best walk over all partitions into trips, orders and ways.
pub(crate) fn best(task: &Task) -> Walk {
    let count = task.rolls.len();
    if count == 0 {
        return Walk::default();
    }
    if task.rolls_a_trip < 2 || count == 1 {
        return one_a_trip(task);
    }
    let pairs = Pairs::of(task);
    if count <= EXACT_ROLLS { over_subsets(task, &pairs) } else { improved(task, &pairs) }
}

fn one_a_trip(task: &Task) -> Walk {
    let mut trips: Vec<Trip> = (0..task.rolls.len()).map(|roll| task.best_trip(&[roll], task.base)).collect();
    let sum: f64 = trips.iter().map(|trip| trip.minutes).sum();
    let (last, ends) = least(trips.iter().enumerate().rev().map(|(roll, trip)| {
        let ends = task.best_trip(&[roll], task.last_home);
        (ends.minutes - trip.minutes, (roll, ends))
    }))
    .expect("a walk has a roll");
    let minutes = sum - trips.remove(last).minutes + ends.minutes;
    Walk { trips: Task::ordered(trips, ends), minutes, bound: minutes }
}

/// The first of the least, by minutes.
fn least<T>(all: impl Iterator<Item = (f64, T)>) -> Option<T> {
    let mut best: Option<(f64, T)> = None;
    for (minutes, one) in all {
        if best.as_ref().is_none_or(|best| minutes < best.0 - EQUAL_MINUTES) {
            best = Some((minutes, one));
        }
    }
    best.map(|(_, one)| one)
}

/// The best trip of every roll by itself and of every two, home to the base.
struct Pairs {
    count: usize,
    minutes: Vec<f64>,
}

impl Pairs {
    fn of(task: &Task) -> Self {
        let count = task.rolls.len();
        let mut minutes = vec![0.0; count * count];
        for one in 0..count {
            for other in one..count {
                let rolls = [one, other];
                let trip = task.best_trip(if one == other { &rolls[..1] } else { &rolls }, task.base);
                minutes[one * count + other] = trip.minutes;
                minutes[other * count + one] = trip.minutes;
            }
        }
        Self { count, minutes }
    }

    /// Minutes of the best trip with both, or with one where they are the same.
    fn minutes(&self, one: usize, other: usize) -> f64 {
        self.minutes[one * self.count + other]
    }
}

/// Rolls as a trip: one where both are the same.
fn rolls_of(one: usize, other: usize) -> Vec<usize> {
    if one == other { vec![one] } else { vec![one.min(other), one.max(other)] }
}

/// Exact: `fewest[set]` is the least for that set of rolls, home to the base each time.
fn over_subsets(task: &Task, pairs: &Pairs) -> Walk {
    let count = task.rolls.len();
    let all = (1_usize << count) - 1;
    let mut fewest = vec![(0.0, 0_usize); all + 1];
    for set in 1..=all {
        // Trips are in no order, so the lowest roll may go with any other.
        let lowest = set.trailing_zeros() as usize;
        let rest = set & !(1 << lowest);
        let alone = (fewest[rest].0 + pairs.minutes(lowest, lowest), lowest);
        let with = (lowest + 1..count).filter(|roll| set & (1 << roll) != 0);
        fewest[set] = least([(alone.0, alone)].into_iter().chain(with.map(|other| {
            let minutes = fewest[rest & !(1 << other)].0 + pairs.minutes(lowest, other);
            (minutes, (minutes, other))
        })))
        .expect("one roll can go alone");
    }
    let lasts = (0..count).rev().flat_map(|one| (0..=one).rev().map(move |other| (one, other)));
    let (last, mut set, minutes) = least(lasts.map(|(one, other)| {
        let last = task.best_trip(&rolls_of(one, other), task.last_home);
        let rest = all & !(1 << one) & !(1 << other);
        let minutes = fewest[rest].0 + last.minutes;
        (minutes, (last, rest, minutes))
    }))
    .expect("a walk has a roll");
    let mut trips = Vec::new();
    while set != 0 {
        let lowest = set.trailing_zeros() as usize;
        let other = fewest[set].1;
        trips.push(task.best_trip(&rolls_of(lowest, other), task.base));
        set &= !(1 << lowest) & !(1 << other);
    }
    Walk { trips: Task::ordered(trips, last), minutes, bound: minutes }
}

/// Beyond the exact size: neighbours in pairs, mixed two trips at a time until nothing is gained.
fn improved(task: &Task, pairs: &Pairs) -> Walk {
    let count = task.rolls.len();
    let mut trips: Vec<(usize, usize)> = (0..count).step_by(2).map(|one| (one, (one + 1).min(count - 1))).collect();
    for _ in 0..MOST_ROUNDS {
        let mut gained = false;
        for first in 0..trips.len() {
            for second in first + 1..trips.len() {
                gained |= mixed(pairs, &mut trips, first, second);
            }
        }
        trips.retain(|&(one, _)| one < count);
        if !gained {
            break;
        }
    }
    let sum: f64 = trips.iter().map(|&(one, other)| pairs.minutes(one, other)).sum();
    let (index, last, saved) = least(trips.iter().enumerate().rev().map(|(index, &(one, other))| {
        let last = task.best_trip(&rolls_of(one, other), task.last_home);
        let saved = last.minutes - pairs.minutes(one, other);
        (saved, (index, last, saved))
    }))
    .expect("a walk has a roll");
    trips.remove(index);
    let others = trips.iter().map(|&(one, other)| task.best_trip(&rolls_of(one, other), task.base)).collect();
    Walk { trips: Task::ordered(others, last), minutes: sum + saved, bound: bound(task, pairs).min(sum + saved) }
}

/// The best mix of two trips' rolls; a trip that is left without a roll holds a number past the last.
fn mixed(pairs: &Pairs, trips: &mut [(usize, usize)], first: usize, second: usize) -> bool {
    let none = pairs.count;
    if trips[first].0 == none || trips[second].0 == none {
        return false;
    }
    let minutes = |trip: (usize, usize)| if trip.0 == none { 0.0 } else { pairs.minutes(trip.0, trip.1) };
    let (a, b, c, d) = (trips[first].0, trips[first].1, trips[second].0, trips[second].1);
    let mut choices = vec![((a, c), (b, d)), ((a, d), (b, c))];
    match (a == b, c == d) {
        (true, true) => choices = vec![((a, c), (none, none))],
        (true, false) => choices = vec![((a, c), (d, d)), ((a, d), (c, c))],
        (false, true) => choices = vec![((a, c), (b, b)), ((b, c), (a, a))],
        (false, false) => {}
    }
    let now = minutes(trips[first]) + minutes(trips[second]);
    let best = least(choices.into_iter().map(|(one, other)| {
        let sum = minutes(one) + minutes(other);
        (sum, (sum, one, other))
    }));
    match best {
        Some((sum, one, other)) if sum < now - EQUAL_MINUTES => {
            (trips[first], trips[second]) = (one, other);
            true
        }
        _ => false,
    }
}

/// No walk is shorter: all trips home to the base cost at least the assignment's half, and at least each roll's own trip
/// or half of its best pair; the last way home saves at most what it saves from the best place.
fn bound(task: &Task, pairs: &Pairs) -> f64 {
    let shares = (0..pairs.count).map(|roll| {
        let halves = (0..pairs.count).filter(|&other| other != roll).map(|other| pairs.minutes(roll, other) / 2.0);
        halves.fold(pairs.minutes(roll, roll), f64::min)
    });
    let home = |way: &Way| (way.leave.distance_m(task.last_home) - way.leave.distance_m(task.base)) * task.home;
    let saved = task.rolls.iter().flatten().map(home).fold(f64::INFINITY, f64::min);
    let by_shares: f64 = shares.sum();
    let by_assignment = if pairs.count <= MOST_ASSIGNED {
        half_assignment(pairs.count, |one, other| pairs.minutes(one, other))
    } else {
        f64::NEG_INFINITY
    };
    by_shares.max(by_assignment) + saved
}

#[cfg(test)]
#[path = "trips_tests.rs"]
mod tests;
