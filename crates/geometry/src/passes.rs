//! The lines to walk behind the mower: the strip's passes side by side, less keep-outs, and how often it is turned.
//!
//! The passes lie evenly across the strip so that the outer cuts end at its edges; the overlap is then never less than
//! the one asked for. Each is the line moved aside with mitred corners. Where a side is too short for the move it is
//! left out and its neighbours meet instead, as a person walks; a keep-out is cut out as drawn, without the half width
//! of the mower, as the strip's area is. The order in which the pieces are walked takes the nearest next end: a good
//! walk, not a proven one. Metres.
//! Moved aside by d a closed line of mitred corners is longer by d times a sum over its turns, so that evenly placed
//! passes are together exactly passes x length until sides vanish: a free self-test.

use geo::Line;
use geo::line_intersection::{LineIntersection, line_intersection};

use crate::outline::{SAME_PLACE_M, TURN_GRAIN_RAD};
use crate::{Outline, Point, StripPolygon, StripWidth, Vector, mowing, region, span_m};

/// What to walk.
#[derive(Debug, Clone, Copy)]
pub struct PassesRequest<'a> {
    /// The line.
    pub outline: &'a Outline,
    /// Width of the strip.
    pub width: StripWidth,
    /// Width of the mower's cut, metres.
    pub mower_width_m: f64,
    /// Share of the cut that overlaps the one before, at least.
    pub overlap: f64,
    /// Keep-outs as drawn, closed.
    pub keep_outs: &'a [Outline],
    /// Ground that is mown already.
    pub mown: &'a [StripPolygon],
}

/// The lines to walk, in order.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Passes {
    /// Unbroken lines in the order and direction of the walk.
    pub lines: Vec<PassLine>,
    /// Metres mown on them, without the steps between them.
    pub length_m: f64,
    /// Times that the mower is turned round or moved over to the next line.
    pub turnings: u32,
    /// Corners of [`SHARP_TURN_RAD`] or more that it is pushed round on the way.
    pub sharp_corners: u32,
}

/// One unbroken line.
#[derive(Debug, Clone, PartialEq)]
pub struct PassLine {
    /// Its pass, from 0 at the left edge of the strip.
    pub pass: u32,
    /// Its places; a closed one does not repeat its first.
    pub points: Vec<Point>,
    /// Whether it comes back to its first place.
    pub closed: bool,
}

/// A turn from which a mower is turned rather than steered: 30 degrees (common practice, no source).
pub const SHARP_TURN_RAD: f64 = std::f64::consts::PI / 6.0;

/// A mitre whose tip is farther than this many offsets from the vertex is walked round by its two feet.
const LONGEST_MITRE: f64 = 5.0;

/// More pieces than this are walked in the order in which they lie.
const MOST_SORTED: usize = 2_000;

/// More passes than this are not drawn: nobody walks them.
const MOST_PASSES: u32 = 200;

/// The lines to walk; `None` where the mower cannot do it or the passes are beyond drawing.
pub fn passes(request: &PassesRequest<'_>) -> Option<Passes> {
    let width_m = request.width.whole_m();
    let count =
        mowing::passes(width_m, request.mower_width_m, request.overlap).filter(|&count| count <= MOST_PASSES)?;
    let off = Off::all(request);
    let mut pieces = Vec::new();
    for pass in 0..count {
        let aside_m = request.width.left_m - across_m(width_m, request.mower_width_m, count, pass);
        let points = moved_aside(request.outline, aside_m);
        if points.len() > 1 {
            pieces.extend(cut_out(pass, &points, request.outline.is_closed(), &off));
        }
    }
    let lines = if pieces.len() <= MOST_SORTED { nearest_first(pieces) } else { pieces };
    let length_m = lines.iter().map(|line| outline_of(line).length_m()).sum();
    let sharp = |line: &PassLine| {
        let outline = outline_of(line);
        outline.vertices().iter().filter(|vertex| vertex.turn_rad() >= SHARP_TURN_RAD - TURN_GRAIN_RAD).count() as u32
    };
    Some(Passes {
        length_m,
        turnings: (lines.len() as u32).saturating_sub(1),
        sharp_corners: lines.iter().map(sharp).sum(),
        lines,
    })
}

/// How far the middle of a pass lies from the strip's left edge, metres.
fn across_m(width_m: f64, mower_m: f64, count: u32, pass: u32) -> f64 {
    if count > 1 && width_m > mower_m {
        mower_m / 2.0 + (width_m - mower_m) * f64::from(pass) / f64::from(count - 1)
    } else {
        width_m * (f64::from(pass) + 0.5) / f64::from(count)
    }
}

fn outline_of(line: &PassLine) -> Outline {
    if line.closed { Outline::closed(&line.points) } else { Outline::open(&line.points) }
}

/// A side moved aside: a place on it, its direction, and where it began before the move.
#[derive(Clone, Copy)]
struct Moved {
    from: Point,
    to: Point,
    way: Vector,
}

/// The line moved to its left by `aside_m` (to the right where negative), corners mitred.
fn moved_aside(outline: &Outline, aside_m: f64) -> Vec<Point> {
    let mut sides: Vec<Moved> = outline
        .sides()
        .map(|(from, to)| {
            let way = (to - from).unit();
            let aside = way.left() * aside_m;
            Moved { from: from + aside, to: to + aside, way }
        })
        .collect();
    let closed = outline.is_closed();
    // A side that the corners at its ends eat up would be walked backwards: its neighbours meet instead. Each turn of
    // the loop takes one side away, so it ends.
    loop {
        let corners = corners_of(&sides, closed, aside_m);
        let least = if closed { 3 } else { 1 };
        let eaten = (0..sides.len())
            .map(|index| (index, (corners[index].1 - corners[index].0).dot(sides[index].way)))
            .filter(|&(_, length_m)| length_m < -SAME_PLACE_M)
            .min_by(|a, b| a.1.total_cmp(&b.1));
        match eaten {
            Some((index, _)) if sides.len() > least => {
                sides.remove(index);
            }
            _ => {
                let mut points: Vec<Point> = Vec::with_capacity(corners.len() + 1);
                for place in corners.iter().flat_map(|&(from, to)| [from, to]) {
                    if points.last().is_none_or(|last| last.distance_m(place) > SAME_PLACE_M) {
                        points.push(place);
                    }
                }
                while closed && points.len() > 1 && points[0].distance_m(points[points.len() - 1]) <= SAME_PLACE_M {
                    points.pop();
                }
                return points;
            }
        }
    }
}

/// Where each moved side begins and ends, once it meets its neighbours.
fn corners_of(sides: &[Moved], closed: bool, aside_m: f64) -> Vec<(Point, Point)> {
    let count = sides.len();
    let mut ends: Vec<(Point, Point)> = sides.iter().map(|side| (side.from, side.to)).collect();
    let joints = if closed { count } else { count.saturating_sub(1) };
    for index in 0..joints {
        let next = (index + 1) % count;
        let (before, after) = (sides[index], sides[next]);
        let sine = before.way.cross(after.way);
        let half_turn_cosine = f64::midpoint(1.0, before.way.dot(after.way)).max(0.0).sqrt();
        // Straight on, or so sharp that the tip would lie too far out: the feet stay.
        let outside = sine * aside_m < 0.0;
        if sine.abs() <= TURN_GRAIN_RAD || (outside && half_turn_cosine * LONGEST_MITRE < 1.0) {
            continue;
        }
        let share_m = (after.from - before.from).cross(after.way) / sine;
        let tip = before.from + before.way * share_m;
        ends[index].1 = tip;
        ends[next].0 = tip;
    }
    ends
}

/// Ground that is not to be mown: its rings, the outer one first.
struct Off(Vec<Outline>);

impl Off {
    fn all(request: &PassesRequest<'_>) -> Vec<Self> {
        let keep_outs = request.keep_outs.iter().map(|ring| Self(vec![ring.clone()]));
        let mown = request.mown.iter().map(|piece| {
            let rings = std::iter::once(&piece.outer).chain(&piece.holes);
            Self(rings.map(|ring| Outline::closed(ring)).collect())
        });
        keep_outs.chain(mown).collect()
    }

    fn is_near(&self, points: &[Point]) -> bool {
        self.0.first().is_some_and(|outer| boxes_touch(points, outer))
    }

    /// Inside the outer ring and in none of its holes.
    fn holds(&self, place: Point) -> bool {
        self.0.iter().filter(|ring| region::contains(ring, place)).count() % 2 == 1
    }
}

/// The parts of a line that lie on no ground that is left out.
fn cut_out(pass: u32, points: &[Point], closed: bool, off: &[Off]) -> Vec<PassLine> {
    let near: Vec<&Off> = off.iter().filter(|off| off.is_near(points)).collect();
    if near.is_empty() {
        return vec![PassLine { pass, points: points.to_vec(), closed }];
    }
    let count = points.len();
    let sides = if closed { count } else { count.saturating_sub(1) };
    let mut parts: Vec<Vec<Point>> = Vec::new();
    let mut whole = true;
    let mut open_end = false;
    for index in 0..sides {
        let (from, to) = (points[index], points[(index + 1) % count]);
        let mut shares = vec![0.0, 1.0];
        let here: Vec<&Off> = near.iter().copied().filter(|off| off.is_near(&[from, to])).collect();
        for ring in here.iter().flat_map(|off| &off.0) {
            shares.extend(meeting_shares(from, to, ring));
        }
        shares.sort_unstable_by(f64::total_cmp);
        for pair in shares.windows(2).filter(|pair| pair[1] > pair[0]) {
            let middle = from.towards(to, f64::midpoint(pair[0], pair[1]));
            if here.iter().any(|off| off.holds(middle)) {
                whole = false;
                open_end = false;
                continue;
            }
            let (start, end) = (from.towards(to, pair[0]), from.towards(to, pair[1]));
            match parts.last_mut() {
                Some(part) if open_end => part.push(end),
                _ => parts.push(vec![start, end]),
            }
            open_end = true;
        }
    }
    if closed && whole {
        return vec![PassLine { pass, points: points.to_vec(), closed }];
    }
    // On a ring the last part may go on in the first.
    if closed && open_end && parts.len() > 1 && parts[0][0].distance_m(points[0]) <= SAME_PLACE_M {
        let first = parts.remove(0);
        if let Some(last) = parts.last_mut() {
            last.extend(first.into_iter().skip(1));
        }
    }
    parts
        .into_iter()
        .map(|part| PassLine { pass, points: without_middles(&part), closed: false })
        .filter(|line| line.points.len() > 1)
        .collect()
}

/// Shares of the way from `from` to `to` at which a ring is met.
fn meeting_shares(from: Point, to: Point, ring: &Outline) -> Vec<f64> {
    let way = to - from;
    let line = Line::new(region::coord(from), region::coord(to));
    let share = |place: geo::Coord<f64>| (Point::new(place.x, place.y) - from).dot(way) / way.dot(way);
    ring.sides()
        .filter_map(|(one, other)| line_intersection(line, Line::new(region::coord(one), region::coord(other))))
        .flat_map(|meeting| match meeting {
            LineIntersection::SinglePoint { intersection, .. } => vec![share(intersection)],
            LineIntersection::Collinear { intersection } => vec![share(intersection.start), share(intersection.end)],
        })
        .filter(|share| (0.0..=1.0).contains(share))
        .collect()
}

/// The same line without places in the middle of a straight.
fn without_middles(points: &[Point]) -> Vec<Point> {
    let outline = Outline::open(points);
    let last = outline.vertices().len().saturating_sub(1);
    let kept = |(index, vertex): (usize, &crate::Vertex)| {
        (index == 0 || index == last || vertex.turn_rad() > TURN_GRAIN_RAD).then_some(vertex.at)
    };
    outline.vertices().iter().enumerate().filter_map(kept).collect()
}

fn boxes_touch(points: &[Point], keep_out: &Outline) -> bool {
    let apart = |of: fn(Point) -> f64| {
        let (low, high) = span_m(points.iter().copied().map(of));
        let (other_low, other_high) = span_m(keep_out.points().map(of));
        low > other_high || other_low > high
    };
    !apart(|at| at.east_m) && !apart(|at| at.north_m)
}

/// The pieces in the order of the walk: from the end of each to the nearest end of those left; of equals the first.
fn nearest_first(pieces: Vec<PassLine>) -> Vec<PassLine> {
    let mut left: Vec<Option<PassLine>> = pieces.into_iter().map(Some).collect();
    let mut walked: Vec<PassLine> = Vec::with_capacity(left.len());
    while walked.len() < left.len() {
        let here =
            walked.last().map(|line| if line.closed { line.points[0] } else { line.points[line.points.len() - 1] });
        let mut best: Option<(f64, usize, bool)> = None;
        for (index, line) in left.iter().enumerate() {
            let Some(line) = line else { continue };
            let (first, last) = (line.points[0], line.points[line.points.len() - 1]);
            let ends = [(first, false), (last, true)];
            for (end, turned) in ends.into_iter().take(if line.closed || here.is_none() { 1 } else { 2 }) {
                let off_m = here.map_or(0.0, |here| here.distance_m(end));
                if best.is_none_or(|(best_m, ..)| off_m < best_m - SAME_PLACE_M) {
                    best = Some((off_m, index, turned));
                }
            }
            if here.is_none() {
                break;
            }
        }
        let Some((_, index, turned)) = best else { break };
        if let Some(mut line) = left[index].take() {
            if turned {
                line.points.reverse();
            }
            walked.push(line);
        }
    }
    walked
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(points: &[(f64, f64)]) -> Outline {
        Outline::closed(&points.iter().copied().map(Point::from).collect::<Vec<_>>())
    }

    fn walked(outline: &Outline, keep_outs: &[Outline]) -> Passes {
        let (width, mower_width_m, overlap) = (StripWidth::even(1.2), 0.53, 0.1);
        passes(&PassesRequest { outline, width, mower_width_m, overlap, keep_outs, mown: &[] })
            .expect("a mower that cuts")
    }

    fn square() -> Outline {
        ring(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)])
    }

    #[test]
    fn three_rounds_of_a_square_are_three_times_its_length() {
        // Husbandry N23 and 5.1: 1.2 m by 0.53 m at 10 % is three passes, 300 m.
        let passes = walked(&square(), &[]);
        assert_eq!((passes.lines.len(), passes.turnings, passes.sharp_corners), (3, 2, 12));
        assert!((passes.length_m - 300.0).abs() < 1e-9, "{}", passes.length_m);
        // The outer cuts end at the strip's edges.
        let (low, high) = span_m(passes.lines.iter().flat_map(|line| &line.points).map(|at| at.east_m));
        assert!((low + 0.6 - 0.265).abs() < 1e-12 && (high - 25.6 + 0.265).abs() < 1e-12, "{low} {high}");
    }

    #[test]
    fn an_open_line_is_walked_to_and_fro() {
        let passes = walked(&Outline::open(&[(0.0, 0.0), (50.0, 0.0)].map(Point::from)), &[]);
        assert_eq!((passes.lines.len(), passes.turnings, passes.sharp_corners), (3, 2, 0));
        assert!((passes.length_m - 150.0).abs() < 1e-9);
        let starts: Vec<f64> = passes.lines.iter().map(|line| line.points[0].east_m).collect();
        assert_eq!(starts, [0.0, 50.0, 0.0]);
    }

    #[test]
    fn a_keep_out_across_the_line_cuts_every_pass() {
        // 5 m of the south side, and the ring over its first vertex stays in one piece.
        let pond = ring(&[(5.0, -5.0), (10.0, -5.0), (10.0, 5.0), (5.0, 5.0)]);
        let passes = walked(&square(), &[pond]);
        assert_eq!((passes.lines.len(), passes.turnings), (3, 2));
        assert!((passes.length_m - (300.0 - 15.0)).abs() < 1e-9, "{}", passes.length_m);
        assert!(passes.lines.iter().all(|line| !line.closed && line.points.len() == 6));
        // None is left where all is covered, and one far away changes nothing.
        let field = ring(&[(-9.0, -9.0), (40.0, -9.0), (40.0, 40.0), (-9.0, 40.0)]);
        assert_eq!(walked(&square(), &[field]).lines, []);
        let far = ring(&[(60.0, 60.0), (70.0, 60.0), (70.0, 70.0)]);
        assert_eq!(walked(&square(), &[far]), walked(&square(), &[]));
        // In the middle of the run, within the box but not on the strip.
        let tree = ring(&[(12.0, 12.0), (13.0, 12.0), (13.0, 13.0)]);
        assert_eq!(walked(&square(), &[tree]), walked(&square(), &[]));
    }

    #[test]
    fn what_is_mown_already_is_not_walked_again() {
        // The run of the test in `strip`, turned over its east side: of its three rounds the two outer ones lie under
        // the side that stays for 25.0 m and what they reach beyond its corners, and each crosses both ends there.
        let next = ring(&[(25.0, 0.0), (50.0, 0.0), (50.0, 25.0), (25.0, 25.0)]);
        let request = crate::StripRequest {
            outline: &square(),
            width: StripWidth::even(1.2),
            keep_outs: &[],
            mower: crate::Mower { width_m: 0.53, overlap: 0.1, speed_m_per_s: 1.0 },
        };
        let stands = crate::strip(&request).polygons;
        let (width, mower_width_m, overlap) = (StripWidth::even(1.2), 0.53, 0.1);
        let request = PassesRequest { outline: &next, width, mower_width_m, overlap, keep_outs: &[], mown: &stands };
        let left = passes(&request).expect("a mower that cuts");
        // Each round is a square moved aside by -0.335, 0 and 0.335 m; what lies west of 25.6 m is mown.
        let want_m: f64 = [-0.335_f64, 0.0, 0.335]
            .map(|aside_m| {
                let (side_m, west_m) = (25.0 + 2.0 * aside_m, 25.0 - aside_m);
                side_m + 2.0 * (west_m + side_m - 25.6)
            })
            .iter()
            .sum();
        assert!((left.length_m - want_m).abs() < 1e-4, "{} {want_m}", left.length_m);
    }

    #[test]
    fn a_side_too_short_for_the_move_is_left_out() {
        // A chamfer of 0.14 m: 0.335 m inside it there is nothing left to walk of it.
        let chamfered = ring(&[(0.0, 0.0), (25.0, 0.0), (25.0, 24.9), (24.9, 25.0), (0.0, 25.0)]);
        let inner = moved_aside(&chamfered, 0.335);
        assert_eq!(inner.len(), 4, "{inner:?}");
        let dent = ring(&[(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (10.1, 20.0), (10.0, 19.9), (9.9, 20.0), (0.0, 20.0)]);
        for aside_m in [-0.335, 0.335] {
            let around = Outline::closed(&moved_aside(&dent, aside_m));
            assert!(crate::check_outline(&around.points().collect::<Vec<_>>(), true).is_empty(), "{aside_m}");
        }
    }

    #[test]
    fn what_no_mower_can_do_is_none() {
        let outline = square();
        for (mower_width_m, overlap) in [(0.0, 0.1), (0.5, 1.0), (1e-6, 0.0), (f64::NAN, 0.0)] {
            let width = StripWidth::even(1.2);
            let request = PassesRequest { outline: &outline, width, mower_width_m, overlap, keep_outs: &[], mown: &[] };
            assert_eq!(passes(&request), None, "{mower_width_m} {overlap}");
        }
        assert_eq!(walked(&Outline::open(&[]), &[]).length_m, 0.0);
    }
}
