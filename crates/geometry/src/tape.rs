//! Corners set out on the ground with a tape: each by its distances from two places that stand already.
//!
//! Two tapes cross where the corner is. Square across they leave it uncertain by no more than the tape is; at a crossing
//! angle θ by 1/sin θ times that. A corner is set from known places where they cross well there, else from the corner
//! before it, whose side has to be measured anyway, and the standing place that crosses that most squarely; where even
//! that is flat, from the two that cross most squarely of all. A corner that only flat crossings reach is put off until
//! others stand. While all that stands is one spot there is nothing to cross: the first corner is set where it is wanted,
//! the next at its distance from there, in a direction that no tape gives. A place on top of another is no second one.
//!
//! Metres on the level, straight from place to place: the tape is held level. Source: plane trigonometry.

use crate::{MEET_M, Point};

/// A crossing with a sine of at least this is taken without looking further: 30 degrees.
const GOOD_SINE: f64 = 0.5;
/// A corner whose best crossing has a smaller sine is put off: 15 degrees.
const FLAT_SINE: f64 = 0.258_819;
/// Below this sine the two tapes lie in one line, to within what a tape shows: 1 degree.
const IN_LINE_SINE: f64 = 0.017_452;
/// Sines that differ by less are equal.
const EQUAL_SINE: f64 = 1e-9;
/// Of more places that stand than this the search over all two of them takes so many, spread over all: a run with a
/// hundred corners has enough that cross well.
const MOST_TRIED: usize = 16;

/// What stands on the ground already.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// A known place, by its number.
    Known(usize),
    /// A corner that is set, by its number.
    Corner(usize),
}

/// A distance from what stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taped {
    /// From where.
    pub from: Standing,
    /// How far, metres.
    pub length_m: f64,
}

/// How one corner is set.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    /// Which corner.
    pub corner: usize,
    /// Its distances from what stands: two, or fewer where fewer stand.
    pub tapes: Vec<Taped>,
    /// Which of the two places where the tapes cross: to the left of the way from the first to the second, or to the
    /// right; `None` where there are not two tapes, or they lie in one line.
    pub left: Option<bool>,
    /// The angle at which they cross, radians, 0 to π/2; 0 where there are not two.
    pub crossing_rad: f64,
}

/// In what order corners are set and from where. Of more than two known places the first two that lie apart count.
///
/// ```
/// use geometry::{Point, tape};
///
/// let square = [(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(Point::from);
/// let set = tape::set_out(&square, &[]);
/// let third: Vec<f64> = set[2].tapes.iter().map(|taped| taped.length_m).collect();
/// assert!((third[0] - 25.0).abs() < 1e-12 && (third[1] - 25.0 * 2_f64.sqrt()).abs() < 1e-12);
/// assert_eq!(set[3].left, Some(false));
/// ```
pub fn set_out(corners: &[Point], known: &[Point]) -> Vec<Setting> {
    set_further(corners, 0, known)
}

/// The same where the first so many of the corners stand already.
pub fn set_further(corners: &[Point], standing: usize, known: &[Point]) -> Vec<Setting> {
    let mut stand: Vec<(Standing, Point)> = Vec::new();
    for &number in &known_pair(known) {
        stand.push((Standing::Known(number), known[number]));
    }
    let known = stand.len();
    stand.extend(corners.iter().take(standing).enumerate().map(|(corner, &at)| (Standing::Corner(corner), at)));
    let mut left: Vec<usize> = (standing..corners.len()).collect();
    let mut set = Vec::with_capacity(left.len());
    while !left.is_empty() {
        let next = next(corners, &stand, known, &left);
        left.retain(|&corner| corner != next.corner);
        stand.push((Standing::Corner(next.corner), corners[next.corner]));
        set.push(next);
    }
    set
}

/// The longest distance between two corners that is neither a side nor taped: what shows whether all of it came out right.
pub fn check(corners: &[Point], closed: bool, set: &[Setting]) -> Option<(usize, usize, f64)> {
    let taped = |one: usize, other: usize| {
        let is = |setting: &Setting, from: usize, to: usize| {
            setting.corner == to && setting.tapes.iter().any(|taped| taped.from == Standing::Corner(from))
        };
        set.iter().any(|setting| is(setting, one, other) || is(setting, other, one))
    };
    let last = corners.len().saturating_sub(1);
    let side = |one: usize, other: usize| other == one + 1 || (closed && one == 0 && other == last);
    let mut longest: Option<(usize, usize, f64)> = None;
    for other in 0..corners.len() {
        for one in 0..other {
            let length_m = corners[one].distance_m(corners[other]);
            let longer = longest.is_none_or(|(.., most_m)| length_m > most_m + MEET_M);
            if longer && !side(one, other) && !taped(one, other) {
                longest = Some((one, other, length_m));
            }
        }
    }
    longest
}

/// Which known places count: the first two that lie apart, or the only one; by their numbers.
pub fn known_pair(known: &[Point]) -> Vec<usize> {
    let Some(&first) = known.first() else { return Vec::new() };
    let second = known.iter().position(|other| other.distance_m(first) > MEET_M);
    std::iter::once(0).chain(second).collect()
}

/// The corner that is set next.
fn next(corners: &[Point], stand: &[(Standing, Point)], known: usize, left: &[usize]) -> Setting {
    let Some(first_two) = first_apart(stand) else {
        let corner = left[0];
        let tapes = stand.last().map(|one| taped(*one, corners[corner])).into_iter().collect();
        return Setting { corner, tapes, left: None, crossing_rad: 0.0 };
    };
    let mut best: Option<(f64, Setting)> = None;
    for &corner in left {
        let (sine, pair) = crossing(corners, stand, known, corner).unwrap_or((0.0, first_two));
        let better = best.as_ref().is_none_or(|(most, _)| sine > most + EQUAL_SINE);
        if better {
            best = Some((sine, setting(corner, corners[corner], pair.map(|index| stand[index]))));
        }
        if sine >= FLAT_SINE {
            break;
        }
    }
    best.expect("a corner is left to set").1
}

/// The first of what stands and the first that lies apart from it, by their places in `stand`.
fn first_apart(stand: &[(Standing, Point)]) -> Option<[usize; 2]> {
    let first = stand.first()?.1;
    Some([0, stand.iter().position(|other| other.1.distance_m(first) > MEET_M)?])
}

/// From which two places that stand apart a corner is set, by their places in `stand`, and the sine of their crossing.
fn crossing(corners: &[Point], stand: &[(Standing, Point)], known: usize, corner: usize) -> Option<(f64, [usize; 2])> {
    let at = corners[corner];
    let sine = |pair: [usize; 2]| sine(at, pair.map(|index| stand[index].1));
    if known == 2 && sine([0, 1]) >= GOOD_SINE {
        return Some((sine([0, 1]), [0, 1]));
    }
    let apart = |pair: &[usize; 2]| stand[pair[0]].1.distance_m(stand[pair[1]].1) > MEET_M;
    let before = corner.checked_sub(1).unwrap_or(corners.len() - 1);
    let before = stand.iter().position(|one| one.0 == Standing::Corner(before));
    let with_before = before.into_iter().flat_map(|before| {
        let others = (0..stand.len()).filter(move |&other| other != before);
        others.map(move |other| [before, other])
    });
    let beside = squarest(with_before.filter(apart).map(|pair| (sine(pair), pair)));
    if let Some((sine, pair)) = beside.filter(|one| one.0 >= GOOD_SINE) {
        return Some((sine, pair));
    }
    let step = stand.len().div_ceil(MOST_TRIED);
    let some = || (0..stand.len()).step_by(step);
    let pairs = some().flat_map(|one| some().filter(move |&other| other > one).map(move |other| [one, other]));
    let any = squarest(pairs.filter(apart).map(|pair| (sine(pair), pair)));
    squarest(beside.into_iter().chain(any))
}

/// The first of those that cross most squarely.
fn squarest(all: impl Iterator<Item = (f64, [usize; 2])>) -> Option<(f64, [usize; 2])> {
    all.reduce(|best, one| if one.0 > best.0 + EQUAL_SINE { one } else { best })
}

fn setting(corner: usize, at: Point, pair: [(Standing, Point); 2]) -> Setting {
    let [from, to] = pair.map(|one| one.1);
    let sine = sine(at, [from, to]);
    let left = (sine >= IN_LINE_SINE).then(|| cross(from, to, at) > 0.0);
    Setting { corner, tapes: pair.map(|one| taped(one, at)).to_vec(), left, crossing_rad: sine.asin() }
}

fn taped((from, stands): (Standing, Point), at: Point) -> Taped {
    Taped { from, length_m: stands.distance_m(at) }
}

/// The sine of the angle under which two places are seen; 0 where one of them is there.
fn sine(at: Point, [one, other]: [Point; 2]) -> f64 {
    let (near_m, far_m) = (at.distance_m(one), at.distance_m(other));
    if near_m <= MEET_M || far_m <= MEET_M {
        return 0.0;
    }
    (cross(at, one, other).abs() / (near_m * far_m)).min(1.0)
}

/// Twice the area to the left of the way from one place to another, as seen from a third.
fn cross(from: Point, to: Point, at: Point) -> f64 {
    let (east, north) = (to.east_m - from.east_m, to.north_m - from.north_m);
    east.mul_add(at.north_m - from.north_m, -(north * (at.east_m - from.east_m)))
}

#[cfg(test)]
#[path = "tape_tests.rs"]
mod tests;
