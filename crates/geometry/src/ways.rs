//! The shortest way between two places round lines that may not be crossed nor come near to: nets, water, fences.
//!
//! Each line keeps its own clearance, metres, straight and round at its corners. The way is a row of straight pieces over
//! a visibility graph: at every outward corner and every end stands a fan of places just beyond the clearance, no more
//! than 30 degrees apart, and two places see each other where the piece between keeps every clearance. The pieces cut the
//! corners' arcs from outside, so a way is at most 3.6 % longer at its bends than the shortest, and a passage that is
//! less than 3.6 % wider than it has to be counts as shut. Found by A* with the straight distance as its bound.
//! Source: Lozano-Pérez and Wesley, Commun. ACM 22 (1979), from memory.
//!
//! Whether lines shut the two places off from each other is asked first ([`shut`]), for a search that finds nothing looks
//! at every pair of places and costs the most.

mod shut;

use std::cmp::Ordering;
use std::collections::BinaryHeap;
use std::f64::consts::{FRAC_PI_6, PI, TAU};

use crate::{Outline, Point, Vector};

/// Clearances are kept to within this, metres: room for the rounding of a place that keeps one exactly.
const GRAIN_M: f64 = 1e-6;

/// Places of a fan stand no farther apart than this, radians.
const FAN_RAD: f64 = FRAC_PI_6;

/// A budget for a way: a step is a piece looked at against one side. About a tenth of a second on a small computer.
pub const WAY_BUDGET_STEPS: u64 = 4_000_000;

/// A line that a way keeps off.
#[derive(Debug, Clone, PartialEq)]
pub struct Barrier {
    /// The line; what it encloses may be gone into only where the line is open.
    pub line: Outline,
    /// How far the way keeps off it, metres.
    pub clear_m: f64,
}

/// A way that was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Way {
    /// Its places, both ends included.
    pub points: Vec<Point>,
    /// Its length, metres.
    pub length_m: f64,
}

/// Why there is no way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NoWay {
    /// An end stands nearer to a line than that line's clearance.
    #[error("an end of the way stands too near to what it keeps off")]
    EndTooNear,
    /// None keeps every clearance.
    #[error("no way keeps off everything that it has to")]
    None,
    /// The budget ended before one was found or ruled out.
    #[error("so many lines stand about that no way was found in the steps allowed")]
    OutOfSteps,
}

/// One side of a barrier, with the box about it grown by its clearance.
struct Side {
    from: Point,
    to: Point,
    clear_m: f64,
    low: Point,
    high: Point,
}

/// The shortest way from one place to another that keeps every clearance. What it costs is taken from `budget_steps`, so
/// that several ways may share one budget.
///
/// # Errors
/// [`NoWay`], where there is none or none was found within the budget.
pub fn shortest_way(from: Point, to: Point, barriers: &[Barrier], budget_steps: &mut u64) -> Result<Way, NoWay> {
    let sides: Vec<Side> = barriers.iter().flat_map(sides_of).collect();
    if !clear(from, from, &sides) || !clear(to, to, &sides) {
        return Err(NoWay::EndTooNear);
    }
    if clear(from, to, &sides) {
        return Ok(Way { points: vec![from, to], length_m: from.distance_m(to) });
    }
    if shut::off(from, to, &sides) {
        return Err(NoWay::None);
    }
    let mut places = vec![from, to];
    for barrier in barriers {
        places.extend(fans(barrier).filter(|&at| at.is_finite() && clear(at, at, &sides)));
    }
    let (mut reached_m, mut before) = (vec![f64::INFINITY; places.len()], vec![usize::MAX; places.len()]);
    let mut settled = vec![false; places.len()];
    reached_m[0] = 0.0;
    let mut open = BinaryHeap::from([Open { least_m: from.distance_m(to), place: 0 }]);
    while let Some(Open { place, .. }) = open.pop() {
        if place == 1 {
            let mut points = vec![to];
            let mut here = 1;
            while here != 0 {
                here = before[here];
                points.push(places[here]);
            }
            points.reverse();
            return Ok(Way { points, length_m: reached_m[1] });
        }
        if std::mem::replace(&mut settled[place], true) {
            continue;
        }
        for next in 0..places.len() {
            let there_m = reached_m[place] + places[place].distance_m(places[next]);
            if settled[next] || there_m >= reached_m[next] {
                continue;
            }
            let Some(left) = budget_steps.checked_sub(sides.len() as u64 + 1) else {
                return Err(NoWay::OutOfSteps);
            };
            *budget_steps = left;
            if clear(places[place], places[next], &sides) {
                (reached_m[next], before[next]) = (there_m, place);
                open.push(Open { least_m: there_m + places[next].distance_m(to), place: next });
            }
        }
    }
    Err(NoWay::None)
}

/// Whether the straight piece between two places keeps every clearance.
pub fn is_clear(from: Point, to: Point, barriers: &[Barrier]) -> bool {
    let sides: Vec<Side> = barriers.iter().flat_map(sides_of).collect();
    clear(from, to, &sides)
}

/// The pieces of a line that are left when the stretch of `length_m` from `from_m` on is taken out, as open lines.
///
/// On a closed line the stretch may run over the first vertex. Nothing is left where it is the whole line.
pub fn without_stretch(line: &Outline, from_m: f64, length_m: f64) -> Vec<Outline> {
    let line_m = line.length_m();
    if length_m <= 0.0 {
        return vec![line.clone()];
    }
    if length_m >= line_m {
        return Vec::new();
    }
    if line.is_closed() {
        return vec![stretch(line, from_m + length_m, line_m - length_m)];
    }
    let (first_m, last_m) = (from_m.clamp(0.0, line_m), (from_m + length_m).clamp(0.0, line_m));
    [(0.0, first_m), (last_m, line_m)]
        .into_iter()
        .filter(|(from_m, to_m)| to_m - from_m > crate::SAME_PLACE_M)
        .map(|(from_m, to_m)| stretch(line, from_m, to_m - from_m))
        .collect()
}

/// The stretch of `length_m` of a line from `from_m` on, as an open line; round a closed one over its first vertex.
pub fn stretch(line: &Outline, from_m: f64, length_m: f64) -> Outline {
    let start_m = line.wrap_m(from_m);
    let beyond_m = |along_m: f64| {
        let beyond_m = along_m - start_m;
        if line.is_closed() && beyond_m <= 0.0 { beyond_m + line.length_m() } else { beyond_m }
    };
    let mut between: Vec<(f64, Point)> = line
        .vertices()
        .iter()
        .map(|vertex| (beyond_m(vertex.along_m), vertex.at))
        .filter(|(beyond_m, _)| *beyond_m > 0.0 && *beyond_m < length_m)
        .collect();
    between.sort_by(|a, b| a.0.total_cmp(&b.0));
    let end = line.at(start_m + length_m);
    let points: Vec<Point> =
        std::iter::once(line.at(start_m)).chain(between.into_iter().map(|(_, at)| at)).chain([end]).collect();
    Outline::open(&points)
}

/// A place that was seen and not yet settled.
struct Open {
    least_m: f64,
    place: usize,
}

impl PartialEq for Open {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Open {}

impl Ord for Open {
    /// The shortest first out of a heap that gives its greatest.
    fn cmp(&self, other: &Self) -> Ordering {
        other.least_m.total_cmp(&self.least_m).then(other.place.cmp(&self.place))
    }
}

impl PartialOrd for Open {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

fn sides_of(barrier: &Barrier) -> impl Iterator<Item = Side> + '_ {
    let clear_m = barrier.clear_m.max(0.0);
    barrier.line.sides().map(move |(from, to)| Side {
        from,
        to,
        clear_m,
        low: Point::new(from.east_m.min(to.east_m) - clear_m, from.north_m.min(to.north_m) - clear_m),
        high: Point::new(from.east_m.max(to.east_m) + clear_m, from.north_m.max(to.north_m) + clear_m),
    })
}

/// Whether a straight piece keeps every side's clearance.
fn clear(from: Point, to: Point, sides: &[Side]) -> bool {
    let (low_east, high_east) = (from.east_m.min(to.east_m), from.east_m.max(to.east_m));
    let (low_north, high_north) = (from.north_m.min(to.north_m), from.north_m.max(to.north_m));
    sides.iter().all(|side| {
        high_east < side.low.east_m
            || low_east > side.high.east_m
            || high_north < side.low.north_m
            || low_north > side.high.north_m
            || apart_m((from, to), (side.from, side.to)) >= (side.clear_m - GRAIN_M).max(GRAIN_M)
    })
}

/// Straight distance between two segments, metres; 0 where they cross.
fn apart_m(one: (Point, Point), other: (Point, Point)) -> f64 {
    let (here, there) = nearest(one, other);
    here.distance_m(there)
}

/// The places on two segments that are nearest to each other; the same one where they cross.
fn nearest(one: (Point, Point), other: (Point, Point)) -> (Point, Point) {
    let side_of = |line: (Point, Point), at: Point| (line.1 - line.0).cross(at - line.0);
    let parts = |line: (Point, Point), by: (Point, Point)| side_of(line, by.0) * side_of(line, by.1) < 0.0;
    if parts(one, other) && parts(other, one) {
        let (from, to) = (side_of(other, one.0), side_of(other, one.1));
        let at = one.0.towards(one.1, from / (from - to));
        return (at, at);
    }
    let on_segment = |at: Point, (from, to): (Point, Point)| {
        let way = to - from;
        let squared = way.dot(way);
        let share = if squared > 0.0 { ((at - from).dot(way) / squared).clamp(0.0, 1.0) } else { 0.0 };
        from.towards(to, share)
    };
    let pairs = [
        (one.0, on_segment(one.0, other)),
        (one.1, on_segment(one.1, other)),
        (on_segment(other.0, one), other.0),
        (on_segment(other.1, one), other.1),
    ];
    let mut best = pairs[0];
    for pair in &pairs[1..] {
        if pair.0.distance_m(pair.1) < best.0.distance_m(best.1) {
            best = *pair;
        }
    }
    best
}

/// Places just beyond the clearance, round the outside of every turn and round every end.
fn fans(barrier: &Barrier) -> impl Iterator<Item = Point> + '_ {
    let line = &barrier.line;
    let sides: Vec<(Point, Point)> = line.sides().collect();
    let count = line.vertices().len();
    let heading = |way: Vector| way.north.atan2(way.east);
    (0..count).flat_map(move |index| {
        let at = line.vertices()[index].at;
        let into = if index > 0 { sides.get(index - 1) } else { sides.last().filter(|_| line.is_closed()) };
        let out = sides.get(index);
        let (first_rad, turn_rad) = match (into, out) {
            (Some(into), Some(out)) => {
                let (into, out) = (into.1 - into.0, out.1 - out.0);
                let turn_rad = into.cross(out).atan2(into.dot(out));
                // The outside of a turn to the left is on the right.
                let normal = if turn_rad > 0.0 { -PI / 2.0 } else { PI / 2.0 };
                (heading(into) + normal, turn_rad)
            }
            (Some(into), None) => (heading(into.1 - into.0) + PI / 2.0, -PI),
            (None, Some(out)) => (heading(out.0 - out.1) + PI / 2.0, -PI),
            (None, None) => (0.0, TAU),
        };
        let steps = (turn_rad.abs() / FAN_RAD - 1e-9).ceil().max(0.0);
        let step_rad = if steps > 0.0 { turn_rad / steps } else { 0.0 };
        let beyond_m = (barrier.clear_m.max(0.0) + 2.0 * GRAIN_M) / (step_rad / 2.0).cos();
        let kept = turn_rad.abs() > 1e-9;
        (0..=steps as usize).filter(move |_| kept).map(move |step| {
            let toward_rad = first_rad + step_rad * step as f64;
            at + Vector::new(toward_rad.cos(), toward_rad.sin()) * beyond_m
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(points: &[(f64, f64)], clear_m: f64) -> Barrier {
        let points: Vec<Point> = points.iter().copied().map(Point::from).collect();
        Barrier { line: Outline::closed(&points), clear_m }
    }

    fn path(points: &[(f64, f64)], clear_m: f64) -> Barrier {
        let points: Vec<Point> = points.iter().copied().map(Point::from).collect();
        Barrier { line: Outline::open(&points), clear_m }
    }

    fn way(from: (f64, f64), to: (f64, f64), barriers: &[Barrier]) -> Result<Way, NoWay> {
        let mut budget = WAY_BUDGET_STEPS;
        shortest_way(from.into(), to.into(), barriers, &mut budget)
    }

    /// The least distance of a way from a line, sampled every centimetre.
    fn nearest_m(way: &Way, line: &Outline) -> f64 {
        let samples = way.points.windows(2).flat_map(|pair| {
            let steps = (pair[0].distance_m(pair[1]) / 0.01).ceil().max(1.0) as usize;
            (0..=steps).map(move |step| pair[0].towards(pair[1], step as f64 / steps as f64))
        });
        samples.map(|at| crate::region::distance_to_m(line, at)).fold(f64::INFINITY, f64::min)
    }

    #[test]
    fn nothing_between_is_a_straight_way() {
        let found = way((0.0, 0.0), (30.0, 40.0), &[]).expect("a way");
        assert_eq!((found.points.len(), found.length_m), (2, 50.0));
        // What stands aside by its clearance or more leaves it straight.
        let found = way((0.0, 0.0), (10.0, 0.0), &[path(&[(0.0, 2.0), (10.0, 2.0)], 2.0)]).expect("a way");
        assert_eq!(found.points.len(), 2);
    }

    #[test]
    fn round_a_wall_the_way_is_two_tangents_and_an_arc() {
        // Closed form: from 10 m before a wall's end to 10 m behind it, off by 1 m: twice the tangent and the arc between.
        let wall = path(&[(0.0, 0.0), (0.0, 100.0)], 1.0);
        let found = way((-10.0, 10.0), (10.0, 10.0), std::slice::from_ref(&wall)).expect("a way");
        let far_m = 10.0_f64.hypot(10.0);
        let tangent_m = (far_m * far_m - 1.0).sqrt();
        let arc_rad = PI * 1.5 - 2.0 * (1.0 / far_m).acos();
        let exact_m = 2.0 * tangent_m + arc_rad;
        assert!(found.length_m >= exact_m - 1e-6, "{} is shorter than {exact_m}", found.length_m);
        assert!(found.length_m <= exact_m * 1.01, "{} is far longer than {exact_m}", found.length_m);
        assert!(nearest_m(&found, &wall.line) >= 1.0 - 1e-5);
    }

    #[test]
    fn what_is_shut_has_no_way_and_a_gap_opens_it() {
        let square = [(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)];
        assert_eq!(way((10.0, 10.0), (40.0, 10.0), &[ring(&square, 0.5)]), Err(NoWay::None));
        let net = ring(&square, 0.5).line;
        let opened = |gap_m: f64| -> Vec<Barrier> {
            without_stretch(&net, 10.0, gap_m).into_iter().map(|line| Barrier { line, clear_m: 0.5 }).collect()
        };
        let found = way((10.0, 10.0), (40.0, 10.0), &opened(3.0)).expect("a way");
        assert!(found.points.iter().any(|at| at.north_m < 0.0), "out through the south side: {found:?}");
        assert_eq!(way((10.0, 10.0), (40.0, 10.0), &opened(0.8)), Err(NoWay::None), "the gap is narrower than the way");
    }

    #[test]
    fn an_end_within_a_clearance_is_refused_and_the_budget_ends() {
        let wall = path(&[(0.0, 0.0), (0.0, 10.0)], 2.0);
        assert_eq!(way((1.0, 5.0), (9.0, 5.0), std::slice::from_ref(&wall)), Err(NoWay::EndTooNear));
        let found = shortest_way(Point::new(-5.0, 5.0), Point::new(5.0, 5.0), &[wall], &mut 3);
        assert_eq!(found, Err(NoWay::OutOfSteps));
    }

    #[test]
    fn what_is_shut_off_costs_no_search() {
        // Five rings one in the other, of forty sides each: to look at every pair would cost millions of steps.
        let rings: Vec<Barrier> = (1..=5)
            .map(|ring_number| {
                let radius_m = 10.0 * f64::from(ring_number);
                let places: Vec<(f64, f64)> = (0..40)
                    .map(|step| f64::from(step) * TAU / 40.0)
                    .map(|angle| (radius_m * angle.cos(), radius_m * angle.sin()))
                    .collect();
                ring(&places, 1.0)
            })
            .collect();
        let mut budget = 1;
        let found = shortest_way(Point::new(0.0, 0.0), Point::new(80.0, 3.0), &rings, &mut budget);
        assert_eq!((found, budget), (Err(NoWay::None), 1));
    }

    #[test]
    fn shut_off_is_said_only_of_what_has_no_way() {
        // Boxes scattered so thickly that about half of the places are shut in: never one to which a way is found, and
        // most of those to which none is.
        let (mut shut_off, mut none) = (0, 0);
        for case in 0..120_u32 {
            let boxes: Vec<Barrier> = (0..14)
                .map(|index| {
                    let spread = |by: f64| (f64::from(case * 31 + index) * by).sin() * 14.0;
                    let (east, north) = (spread(1.7), spread(2.9));
                    let half_m = 1.0 + f64::from(index % 4);
                    let places = [(-1.0, -1.0), (1.0, -0.8), (0.9, 1.0), (-1.0, 1.1)]
                        .map(|(e, n): (f64, f64)| (east + half_m * e, north + half_m * n));
                    ring(&places, 0.9)
                })
                .collect();
            let (from, to) = (Point::new(0.0, 0.0), Point::new(40.0, 1.0));
            let sides: Vec<Side> = boxes.iter().flat_map(sides_of).collect();
            if !clear(from, from, &sides) {
                continue;
            }
            let is_shut = shut::off(from, to, &sides);
            // Without the shortcut: every pair of places looked at.
            let mut places = vec![from, to];
            places.extend(boxes.iter().flat_map(fans).filter(|&at| clear(at, at, &sides)));
            let (mut reached, mut open) = (vec![false; places.len()], vec![0]);
            reached[0] = true;
            while let Some(here) = open.pop() {
                for next in 0..places.len() {
                    if !reached[next] && clear(places[here], places[next], &sides) {
                        reached[next] = true;
                        open.push(next);
                    }
                }
            }
            assert!(!(is_shut && reached[1]), "case {case}: there is a way");
            shut_off += u32::from(is_shut);
            none += u32::from(!reached[1]);
        }
        assert!(none >= 5 && shut_off * 10 >= none * 8, "{shut_off} of {none}");
    }

    #[test]
    fn the_lazy_search_finds_what_the_whole_graph_holds() {
        // Every pair of places looked at, by Floyd and Warshall, on scattered boxes.
        for case in 0..25_u32 {
            let boxes: Vec<Barrier> = (0..6)
                .map(|index| {
                    let spread = |by: f64| (f64::from(case * 7 + index) * by).sin() * 12.0;
                    let (east, north) = (20.0 + spread(1.7), spread(2.9));
                    ring(
                        &[
                            (east, north),
                            (east + 5.0, north + 1.0),
                            (east + 4.0, north + 6.0),
                            (east - 1.0, north + 5.0),
                        ],
                        0.8,
                    )
                })
                .collect();
            let (from, to) = (Point::new(-5.0, 0.0), Point::new(45.0, 3.0));
            let sides: Vec<Side> = boxes.iter().flat_map(sides_of).collect();
            let mut places = vec![from, to];
            places.extend(boxes.iter().flat_map(fans).filter(|&at| clear(at, at, &sides)));
            let count = places.len();
            let mut far_m = vec![vec![f64::INFINITY; count]; count];
            for (one, from) in places.iter().enumerate() {
                for (other, to) in places.iter().enumerate() {
                    if clear(*from, *to, &sides) {
                        far_m[one][other] = from.distance_m(*to);
                    }
                }
            }
            for over in 0..count {
                for one in 0..count {
                    for other in 0..count {
                        far_m[one][other] = far_m[one][other].min(far_m[one][over] + far_m[over][other]);
                    }
                }
            }
            let mut budget = WAY_BUDGET_STEPS;
            match shortest_way(from, to, &boxes, &mut budget) {
                Ok(found) => {
                    assert!((found.length_m - far_m[0][1]).abs() < 1e-9, "case {case}");
                    assert!(boxes.iter().all(|one| nearest_m(&found, &one.line) >= 0.8 - 1e-5), "case {case}");
                }
                Err(_) => assert!(far_m[0][1].is_infinite(), "case {case}"),
            }
        }
    }

    #[test]
    fn stretches_run_over_the_first_vertex() {
        let square = ring(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)], 0.0).line;
        let over = stretch(&square, 35.0, 10.0);
        assert_eq!(over.points().collect::<Vec<_>>(), [(0.0, 5.0), (0.0, 0.0), (5.0, 0.0)].map(Point::from));
        let rest = without_stretch(&square, 35.0, 10.0);
        assert!(rest.len() == 1 && (rest[0].length_m() - 30.0).abs() < 1e-9);
        let open = path(&[(0.0, 0.0), (10.0, 0.0)], 0.0).line;
        assert_eq!(without_stretch(&open, 4.0, 2.0).iter().map(Outline::length_m).collect::<Vec<_>>(), [4.0, 4.0]);
        assert!(without_stretch(&open, 0.0, 10.0).is_empty());
    }
}
