//! The corners of a run by tape: what is measured to set each out on the ground (see [`geometry::tape`]).
//!
//! Straight and on the level, whatever is known of heights. Worked out when asked for: nothing else hangs on it.

use geometry::tape::{self, Standing};
use plan::{Plan, Run};

use crate::{outlines, point};

/// A run's corners in the order in which they are set.
#[derive(Clone, Debug, PartialEq)]
pub struct TapedRun {
    /// The known places that count, at most two: their places in the plan's list.
    pub known: Vec<usize>,
    /// The corners.
    pub corners: Vec<TapedCorner>,
    /// Two corners, by their places in the outline, and the distance between them that nothing was set by, metres.
    pub check: Option<(usize, usize, f64)>,
    /// The longest distance that is taped, metres.
    pub longest_m: f64,
}

/// How one corner is set.
#[derive(Clone, Debug, PartialEq)]
pub struct TapedCorner {
    /// Its place in the run's outline.
    pub corner: usize,
    /// What it is taped from: two distances, fewer while fewer places stand.
    pub tapes: Vec<(TapedFrom, f64)>,
    /// Whether it lies to the left of the way from the first of them to the second; `None` where that is no question.
    pub left: Option<bool>,
    /// Its distance from each of [`TapedRun::known`], metres.
    pub known_m: Vec<f64>,
    /// To the next corner along the outline, metres; `None` behind the last of an open line.
    pub next_m: Option<f64>,
}

impl TapedCorner {
    /// Whether it is set at its distance from one place, in a direction that no tape gives.
    pub fn is_free_in_direction(&self) -> bool {
        matches!(self.tapes[..], [(_, length_m)] if length_m > geometry::MEET_M)
    }
}

/// Where a tape begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TapedFrom {
    /// At a known place, by its place in [`TapedRun::known`].
    Known(usize),
    /// At a corner, by its place in the outline.
    Corner(usize),
}

/// The known places of a plan that count, at most two, by their places in its list: the first two that lie apart.
pub fn known(plan: &Plan) -> Vec<usize> {
    tape::known_pair(&known_places(plan))
}

fn known_places(plan: &Plan) -> Vec<geometry::Point> {
    plan.tape_points.iter().map(|known| point(known.at)).collect()
}

/// Works it out; `None` where the outline is no line.
pub fn taped(plan: &Plan, run: &Run) -> Option<TapedRun> {
    let outline = outlines::of_run(run)?;
    let vertices = outline.vertices();
    let corners: Vec<geometry::Point> = vertices.iter().map(|vertex| vertex.at).collect();
    let points = known_places(plan);
    let known = tape::known_pair(&points);
    let set = tape::set_out(&corners, &points);
    let stated = |corner: usize| vertices[corner].stated;
    let check = tape::check(&corners, outline.is_closed(), &set)
        .map(|(one, other, length_m)| (stated(one), stated(other), length_m));
    let from = |standing: Standing| match standing {
        Standing::Corner(corner) => TapedFrom::Corner(stated(corner)),
        Standing::Known(number) => TapedFrom::Known(known.iter().position(|&one| one == number).unwrap_or_default()),
    };
    let rows: Vec<TapedCorner> = set
        .iter()
        .map(|setting| {
            let at = corners[setting.corner];
            let back = outline.is_closed().then(|| corners[0]);
            let next = corners.get(setting.corner + 1).copied().or(back);
            TapedCorner {
                corner: stated(setting.corner),
                tapes: setting.tapes.iter().map(|taped| (from(taped.from), taped.length_m)).collect(),
                left: setting.left,
                known_m: known.iter().map(|&number| points[number].distance_m(at)).collect(),
                next_m: next.map(|next| at.distance_m(next)),
            }
        })
        .collect();
    let taped = rows.iter().flat_map(|row| row.tapes.iter().map(|tape| tape.1).chain(row.next_m));
    let longest_m = taped.chain(check.map(|check| check.2)).fold(0.0, f64::max);
    Some(TapedRun { known, corners: rows, check, longest_m })
}
