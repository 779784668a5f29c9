//! An outline shaped by hand: a side slid, an outline squared up, a like side to be shared, a corner by its figures.
//!
//! Metres and radians; corners are numbered from 0, side *i* leads from corner *i* to the next. Where a shape cannot be had
//! the answer is `None`: nothing is bent to fit.

use crate::closing::{AngleArc, ClosingCurve};
use crate::outline::SAME_PLACE_M;
use crate::outline_fault::check_outline;
use crate::point::{Point, Vector};

/// A neighbour that turns less than this off a side, as a sine, runs along it: nothing of the side slides on it.
const PARALLEL_SINE: f64 = 1e-3;
/// Two typed figures and the place that both leave may disagree by so much, metres.
const AGREES_M: f64 = 1e-6;

/// The outline with a side slid to the left by so many metres, as it is walked; the two neighbours keep their lines, so
/// that the side's corners move along them. An end of an open line has no neighbour and moves square to the side.
///
/// `None` where the side has no length or a neighbour runs along it.
pub fn slide_side(outline: &[Point], closed: bool, side: usize, by_m: f64) -> Option<Vec<Point>> {
    let count = outline.len();
    let next = side + 1;
    if count < 2 || side >= count || (!closed && next >= count) || !by_m.is_finite() {
        return None;
    }
    let (one, other) = (side, next % count);
    let way = outline[other] - outline[one];
    if way.length() <= SAME_PLACE_M {
        return None;
    }
    let before = (closed || one > 0).then(|| outline[(one + count - 1) % count]);
    let after = (closed || other + 1 < count).then(|| outline[(other + 1) % count]);
    let rails = rails([outline[one], outline[other]], [before, after])?;
    let mut slid = outline.to_vec();
    slid[one] = outline[one] + rails[0] * by_m;
    slid[other] = outline[other] + rails[1] * by_m;
    slid.iter().all(|at| at.is_finite()).then_some(slid)
}

/// The ways of a side's two corners for each metre that it slides to the left: along the neighbours that lead on to the
/// corners beyond, square to the side where there is none. `None` where a neighbour runs along the side.
pub(crate) fn rails(ends: [Point; 2], beyond: [Option<Point>; 2]) -> Option<[Vector; 2]> {
    let normal = (ends[1] - ends[0]).unit().left();
    let rail = |corner: Point, beyond: Option<Point>| {
        let along = beyond.map_or(normal, |beyond| (corner - beyond).unit());
        let sine = along.dot(normal);
        (sine.abs() >= PARALLEL_SINE).then(|| along * (1.0 / sine))
    };
    Some([rail(ends[0], beyond[0])?, rail(ends[1], beyond[1])?])
}

/// The main direction of an outline, radians counter-clockwise from east, below a quarter turn: the mean of its sides'
/// directions, weighted by length and counted by quarters of a turn, so that square sides agree.
///
/// `None` where the sides point nowhere together (a regular hexagon).
fn main_direction(sides: &[Vector]) -> Option<f64> {
    let (mut sine, mut cosine, mut total) = (0.0, 0.0, 0.0);
    for side in sides {
        let (length, turn) = (side.length(), 4.0 * side.north.atan2(side.east));
        sine += length * turn.sin();
        cosine += length * turn.cos();
        total += length;
    }
    (sine.hypot(cosine) > 1e-9 * total).then(|| sine.atan2(cosine) / 4.0)
}

/// The outline with every side in one of two directions square to each other, its corners moved least (the sum of the
/// squares of their ways) for the side's directions so chosen.
///
/// Each side takes the nearer direction; sides that follow one another in one direction share a line, and the line goes
/// through the mean of their corners, which is the least of squares. `None` where that leaves no outline: a triangle, say.
pub fn square_up(outline: &[Point], closed: bool) -> Option<Vec<Point>> {
    let count = outline.len();
    let side_count = if closed { count } else { count.saturating_sub(1) };
    if count < 2 || !outline.iter().all(|at| at.is_finite()) {
        return None;
    }
    let sides: Vec<Vector> = (0..side_count).map(|side| outline[(side + 1) % count] - outline[side]).collect();
    let longest = || sides.iter().copied().max_by(|one, other| one.length().total_cmp(&other.length()));
    let turn = main_direction(&sides).or_else(|| longest().map(|side| side.north.atan2(side.east)))?;
    let along = Vector::new(turn.cos(), turn.sin());
    let across = along.left();
    let runs_along: Vec<bool> = sides.iter().map(|side| side.dot(along).abs() >= side.dot(across).abs()).collect();
    // About its own first corner, so that far from the origin nothing is lost.
    let home = outline[0];
    let mut places: Vec<[f64; 2]> =
        outline.iter().map(|&at| [(at - home).dot(along), (at - home).dot(across)]).collect();
    // A side along has one place across at both its ends, and the other way round.
    for (axis, shares) in [(1, true), (0, false)] {
        for group in shared(count, &runs_along, shares) {
            let mean = group.iter().map(|&corner| places[corner][axis]).sum::<f64>() / group.len() as f64;
            for corner in group {
                places[corner][axis] = mean;
            }
        }
    }
    // Looked at in the two directions themselves, where what is in line is so exactly.
    let level: Vec<Point> = places.iter().map(|&[u, v]| Point::new(u, v)).collect();
    let apart = (0..side_count).all(|side| level[side].distance_m(level[(side + 1) % count]) > SAME_PLACE_M);
    let sound = apart && check_outline(&level, closed).is_empty();
    sound.then(|| places.iter().map(|[u, v]| home + along * *u + across * *v).collect())
}

/// The corners that sides of one direction join, each group in one place of the other direction.
fn shared(count: usize, runs_along: &[bool], along: bool) -> Vec<Vec<usize>> {
    let mut leader: Vec<usize> = (0..count).collect();
    for (side, _) in runs_along.iter().enumerate().filter(|&(_, &runs)| runs == along) {
        let (one, other) = (leader[side], leader[(side + 1) % count]);
        leader.iter_mut().filter(|one_of| **one_of == other).for_each(|one_of| *one_of = one);
    }
    let group = |first: usize| (0..count).filter(|&corner| leader[corner] == first).collect::<Vec<_>>();
    (0..count).map(group).filter(|group| group.len() > 1).collect()
}

/// The way by which a closed outline, shifted as it is, comes to share that side: a side of it as long, walked the other
/// way, lies there then. `None` where it has none within `off_m`.
pub fn shift_to_share(outline: &[Point], side: usize, off_m: f64) -> Option<Vector> {
    let count = outline.len();
    let (from, to) = (*outline.get(side)?, *outline.get((side + 1) % count)?);
    (0..count)
        .filter(|&other| other != side)
        .map(|other| (outline[other], outline[(other + 1) % count]))
        .map(|(one, end)| (((end - one) + (to - from)).length(), to - one))
        .filter(|&(off, _)| off <= off_m)
        .min_by(|one, other| one.0.total_cmp(&other.0))
        .map(|(_, shift)| shift)
}

/// How far the line turns at a corner, radians, to the left positive.
pub fn turn_rad(before: Point, at: Point, after: Point) -> f64 {
    let (on, away) = (at - before, after - at);
    on.cross(away).atan2(on.dot(away))
}

/// What is stated of a corner between two others; what is not follows the hand.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct CornerFigures {
    /// Length of the side that leads to it, metres.
    pub before_m: Option<f64>,
    /// Length of the side that leads from it, metres.
    pub after_m: Option<f64>,
    /// How far the line turns there, radians from 0 to π; to which hand is the hand's to say.
    pub turn_rad: Option<f64>,
}

impl CornerFigures {
    /// The place with those figures that is nearest to where the hand is; `None` where there is none.
    pub fn place(self, before: Point, after: Point, near: Point) -> Option<Point> {
        let nearest = |places: Vec<Point>| {
            places.into_iter().min_by(|one, other| one.distance_m(near).total_cmp(&other.distance_m(near)))
        };
        let turned = |turn_rad: f64| AngleArc::of_turn(before, after, turn_rad, is_left(before, after, near));
        match (self.before_m, self.after_m, self.turn_rad) {
            (None, None, None) => Some(near),
            (Some(length_m), None, None) => at_length(before, near, length_m),
            (None, Some(length_m), None) => at_length(after, near, length_m),
            (None, None, Some(0.0)) => between(before, after, near),
            (None, None, Some(turn_rad)) => turned(turn_rad)?.nearest(near),
            (Some(one_m), Some(other_m), turn) => {
                let sum_m = one_m + other_m;
                let found = match ClosingCurve::new(before, after, sum_m) {
                    Some(curve) => nearest(curve.at_side(one_m))?,
                    // So long together that the corner lies in line.
                    None => at_length(before, after, one_m)
                        .filter(|at| (at.distance_m(after) - other_m).abs() <= AGREES_M)?,
                };
                let agrees = |turn: f64| {
                    let off = (turn_rad(before, found, after).abs() - turn).abs();
                    off * one_m.min(other_m) <= AGREES_M
                };
                turn.is_none_or(agrees).then_some(found)
            }
            (Some(length_m), None, Some(turn)) => nearest(on_way(before, after, near, length_m, turn)),
            (None, Some(length_m), Some(turn)) => nearest(on_way(after, before, near, length_m, turn)),
        }
    }
}

fn is_left(from: Point, to: Point, at: Point) -> bool {
    (to - from).cross(at - from) > 0.0
}

/// The place so far from a corner, towards another place.
fn at_length(from: Point, towards: Point, length_m: f64) -> Option<Point> {
    let way = towards - from;
    (way.length() > 0.0 && length_m > 0.0).then(|| from + way.unit() * length_m)
}

/// The foot of a place on the side between two corners.
fn between(from: Point, to: Point, near: Point) -> Option<Point> {
    let way = to - from;
    let share = (near - from).dot(way) / way.dot(way);
    (share > 0.0 && share < 1.0).then(|| from.towards(to, share))
}

/// The places at that length from one corner at which the line to another turns so far, on the hand's side: the triangle
/// of two sides and the angle opposite the second (the law of cosines, quadratic in the third side).
fn on_way(from: Point, to: Point, near: Point, length_m: f64, turn_rad: f64) -> Vec<Point> {
    let apart_m = from.distance_m(to);
    let (sine, cosine) = turn_rad.sin_cos();
    // d² = r² + q² + 2 r q cos(turn), for the interior angle is π − turn.
    let square = apart_m * apart_m - (length_m * sine) * (length_m * sine);
    if square < 0.0 || length_m <= 0.0 || apart_m <= 0.0 {
        return Vec::new();
    }
    let left = is_left(from, to, near);
    let rests = [square.sqrt() - length_m * cosine, -square.sqrt() - length_m * cosine];
    let triangle = |rest_m: f64| {
        let along_m = 0.5 * (apart_m + (length_m - rest_m) * ((length_m + rest_m) / apart_m));
        let off_m = (length_m * length_m - along_m * along_m).max(0.0).sqrt();
        let unit = (to - from).unit();
        from + unit * along_m + unit.left() * if left { off_m } else { -off_m }
    };
    rests.into_iter().filter(|&rest_m| rest_m > 0.0).map(triangle).collect()
}
