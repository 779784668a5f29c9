//! The corners of a run and of its branches by tape: what is measured to set each out on the ground (see
//! [`geometry::tape`]). A branch comes when the run's corners stand; where it begins on the line,
//! that is found between two of them.
//!
//! Straight and on the level, whatever is known of heights. Worked out when asked for: nothing else hangs on it.

use geometry::tape::{self, Standing};
use geometry::{Outline, region};
use plan::{Plan, Run, TapeLetter};

use crate::{outlines, point};

/// A run's corners in the order in which they are set.
#[derive(Clone, Debug, PartialEq)]
pub struct TapedRun {
    /// The known places that count, at most two.
    pub known: Vec<KnownPlace>,
    /// The corners.
    pub corners: Vec<TapedCorner>,
    /// Its branches, those that are lines, in the order in which they are set.
    pub branches: Vec<TapedBranch>,
    /// Two corners, by their places in the outline, and the distance between them that nothing was set by, metres.
    pub check: Option<(usize, usize, f64)>,
    /// The longest distance that is taped, metres.
    pub longest_m: f64,
}

/// A known place that corners are taped from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct KnownPlace {
    /// Its place in the plan's list.
    pub point: usize,
    /// What it is called.
    pub letter: TapeLetter,
}

/// A branch's corners in the order in which they are set, after the run's.
#[derive(Clone, Debug, PartialEq)]
pub struct TapedBranch {
    /// Its place in the run's list.
    pub branch: usize,
    /// Whether its first corner lies on the run's line.
    pub on_line: bool,
    /// The corners, the place where it hangs first.
    pub corners: Vec<TapedCorner>,
}

/// How one corner is set.
#[derive(Clone, Debug, PartialEq)]
pub struct TapedCorner {
    /// Its place in the outline of its run, or of its branch.
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

impl TapedRun {
    /// Whether any corner is taped from the known place of that place in [`TapedRun::known`].
    pub fn is_taped_from(&self, known: usize) -> bool {
        let corners = self.corners.iter().chain(self.branches.iter().flat_map(|branch| &branch.corners));
        corners.flat_map(|corner| &corner.tapes).any(|tape| tape.0 == TapedFrom::Known(known))
    }
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
    /// At a corner of the run, by its place in the outline.
    Corner(usize),
    /// At a corner of the same branch, by its place in the branch's outline.
    OfBranch(usize),
}

/// The known places of a plan that count, at most two that lie apart: those with a letter; where none has one, the first.
pub fn known(plan: &Plan) -> Vec<KnownPlace> {
    let points = &plan.tape_points;
    let stated = |letter| points.iter().position(|one| one.letter == Some(letter));
    let stated = TapeLetter::ALL.map(|letter| Some((stated(letter)?, Some(letter))));
    let mut all: Vec<(usize, Option<TapeLetter>)> = stated.into_iter().flatten().collect();
    if all.is_empty() {
        all = (0..points.len()).map(|point| (point, None)).collect();
    }
    let places: Vec<geometry::Point> = all.iter().map(|&(number, _)| point(points[number].at)).collect();
    let pair = tape::known_pair(&places).into_iter().zip(TapeLetter::ALL);
    pair.map(|(one, letter)| KnownPlace { point: all[one].0, letter: all[one].1.unwrap_or(letter) }).collect()
}

/// Works it out; `None` where the outline is no line.
pub fn taped(plan: &Plan, run: &Run) -> Option<TapedRun> {
    let outline = outlines::of_run(run)?;
    let known = known(plan);
    let points = known.iter().map(|known| point(plan.tape_points[known.point].at)).collect();
    let ground = Ground { corners: line(&outline), closed: outline.is_closed(), points, known };
    let at: Vec<geometry::Point> = ground.corners.iter().map(|corner| corner.1).collect();
    let set = tape::set_out(&at, &ground.points);
    let stated = |corner: usize| ground.corners[corner].0;
    let check =
        tape::check(&at, ground.closed, &set).map(|(one, other, length_m)| (stated(one), stated(other), length_m));
    let corners: Vec<TapedCorner> = set
        .iter()
        .map(|setting| {
            let back = ground.closed.then(|| at[0]);
            let next = at.get(setting.corner + 1).copied().or(back);
            ground.corner((stated(setting.corner), at[setting.corner]), setting, next, &[])
        })
        .collect();
    let branches: Vec<TapedBranch> = (0..run.branches.len())
        .filter_map(|index| Some(ground.branch(index, &outlines::of_branch(run, index)?)))
        .collect();
    let rows = || corners.iter().chain(branches.iter().flat_map(|branch| &branch.corners));
    let all_m = rows().flat_map(|row| row.tapes.iter().map(|tape| tape.1).chain(row.next_m));
    let longest_m = all_m.chain(check.map(|check| check.2)).fold(0.0, f64::max);
    Some(TapedRun { known: ground.known, corners, branches, check, longest_m })
}

/// The corners of a line: the place of each in what is stated, and where it is.
fn line(outline: &Outline) -> Vec<(usize, geometry::Point)> {
    outline.vertices().iter().map(|vertex| (vertex.stated, vertex.at)).collect()
}

/// What a run's corners are taped from.
struct Ground {
    corners: Vec<(usize, geometry::Point)>,
    closed: bool,
    /// The known places that count.
    points: Vec<geometry::Point>,
    known: Vec<KnownPlace>,
}

impl Ground {
    /// A corner as it was set; beyond the run's own corners those of its branch are counted.
    fn corner(
        &self,
        (corner, at): (usize, geometry::Point),
        setting: &tape::Setting,
        next: Option<geometry::Point>,
        of_branch: &[(usize, geometry::Point)],
    ) -> TapedCorner {
        let from = |standing: Standing| match standing {
            Standing::Corner(corner) => match self.corners.get(corner) {
                Some(of_run) => TapedFrom::Corner(of_run.0),
                None => TapedFrom::OfBranch(of_branch[corner - self.corners.len()].0),
            },
            Standing::Known(number) => TapedFrom::Known(number),
        };
        TapedCorner {
            corner,
            tapes: setting.tapes.iter().map(|taped| (from(taped.from), taped.length_m)).collect(),
            left: setting.left,
            known_m: self.points.iter().map(|known| known.distance_m(at)).collect(),
            next_m: next.map(|next| at.distance_m(next)),
        }
    }

    /// A branch of the run.
    fn branch(&self, branch: usize, outline: &Outline) -> TapedBranch {
        let own = line(outline);
        let all: Vec<geometry::Point> = self.corners.iter().chain(&own).map(|corner| corner.1).collect();
        let (of_run, foot) = (self.corners.len(), own[0].1);
        // Where it hangs is found along the net that stands; a foot that is beside the line is set like any corner.
        let on_side = self.on_side(foot);
        let on_line = on_side.is_some();
        let first =
            on_side.into_iter().map(|tapes| tape::Setting { corner: of_run, tapes, left: None, crossing_rad: 0.0 });
        let stands = of_run + first.len();
        let set: Vec<tape::Setting> = first.chain(tape::set_further(&all, stands, &self.points)).collect();
        let corners = set.iter().map(|setting| {
            let corner = own[setting.corner - of_run];
            self.corner(corner, setting, all.get(setting.corner + 1).copied(), &own)
        });
        TapedBranch { branch, on_line, corners: corners.collect() }
    }

    /// How far a place on the line is from the corners at both ends of its side; `None` beside the line.
    fn on_side(&self, at: geometry::Point) -> Option<Vec<tape::Taped>> {
        let count = self.corners.len();
        let sides = if self.closed { count } else { count.saturating_sub(1) };
        (0..sides).map(|from| [from, (from + 1) % count]).find_map(|ends| {
            let [near_m, far_m] = ends.map(|end| self.corners[end].1.distance_m(at));
            let side = Outline::open(&ends.map(|end| self.corners[end].1));
            let tapes = ends.into_iter().zip([near_m, far_m]);
            let tapes = tapes.map(|(end, length_m)| tape::Taped { from: Standing::Corner(end), length_m });
            (region::distance_to_m(&side, at) < geometry::MEET_M).then(|| tapes.collect())
        })
    }
}
