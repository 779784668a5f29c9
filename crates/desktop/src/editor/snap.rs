//! What stands and can be taken hold of: posts, corners and sides of other things, with their names.

use care::names::{self, Named};
use geometry::guides::{Edge, Guide, Guides, Line, Why};
use plan::{Plan, Point, Shape};
use words::Words;
use words::texts::{Guides as Text, Shaping};
use workup::Workup;

/// Where a corner was caught, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct Snapped {
    /// The place.
    pub at: Point,
    /// What stands there, in words.
    pub reason: String,
}

/// A place that can be taken hold of, by its number.
#[derive(Clone, Copy, Debug)]
enum Hold {
    RunCorner(usize, usize),
    Post(usize, usize),
    PaddockCorner(usize),
    KeepOutCorner(usize, usize),
    HazardPoint(usize, usize),
    WallCorner(usize, usize),
    ShadeCorner(usize, usize),
    DampCorner(usize, usize),
    BranchCorner(usize, usize, usize),
}

/// A side that stands, by the number of its first corner, and its last.
#[derive(Clone, Copy, Debug)]
struct Side {
    of: SideOf,
    from: usize,
    to: usize,
}

#[derive(Clone, Copy, Debug)]
enum SideOf {
    Run(usize),
    Branch(usize, usize),
    Paddock,
    KeepOut(usize),
    Hazard(usize),
    Wall(usize),
    Shade(usize),
    Damp(usize),
}

/// Everything of a plan that catches a hand, but what is in the hand itself.
#[derive(Debug)]
pub(super) struct Standing {
    pub(super) guides: Guides,
    places: Vec<Hold>,
    sides: Vec<Side>,
}

pub(super) fn point(at: Point) -> geometry::Point {
    geometry::Point::new(at.east_m, at.north_m)
}

pub(super) fn place(at: geometry::Point) -> Point {
    Point::new(at.east_m, at.north_m)
}

impl Standing {
    /// All that is drawn but `own`; of places at one spot a corner goes before a post.
    pub(super) fn of(plan: &Plan, workup: &Workup, own: Option<&Shape>) -> Self {
        let mut all = Listed::default();
        let is_own_run = |run: usize| matches!(own, Some(Shape::Run(id)) if plan.runs[run].id == *id);
        for (run, stated) in plan.runs.iter().enumerate() {
            let is_own =
                |branch: usize| matches!(own, Some(Shape::Branch(id, one)) if stated.id == *id && *one == branch);
            if stated.hidden || is_own_run(run) {
                continue;
            }
            all.line(&stated.outline, stated.closed(), SideOf::Run(run), |corner| Some(Hold::RunCorner(run, corner)));
            for (branch, hanging) in stated.branches.iter().enumerate().filter(|(branch, _)| !is_own(*branch)) {
                let name = |corner| Some(Hold::BranchCorner(run, branch, corner));
                all.line(&hanging.outline, false, SideOf::Branch(run, branch), name);
            }
        }
        if !plan.ground.boundary_hidden && own != Some(&Shape::Boundary) {
            let name = |corner| Some(Hold::PaddockCorner(corner));
            all.line(&plan.ground.boundary, true, SideOf::Paddock, name);
        }
        for (index, keep_out) in plan.ground.keep_outs.iter().enumerate() {
            if !keep_out.hidden && own != Some(&Shape::KeepOut(index)) {
                let name = |corner| Some(Hold::KeepOutCorner(index, corner));
                all.line(&keep_out.outline, true, SideOf::KeepOut(index), name);
            }
        }
        for (index, hazard) in plan.ground.hazards.iter().enumerate() {
            if !hazard.hidden && own != Some(&Shape::Hazard(index)) {
                all.line(&hazard.path, false, SideOf::Hazard(index), |point| Some(Hold::HazardPoint(index, point)));
            }
        }
        for (index, wall) in plan.walls.iter().enumerate() {
            if !wall.hidden && own != Some(&Shape::Wall(index)) {
                all.line(&wall.path, false, SideOf::Wall(index), |corner| Some(Hold::WallCorner(index, corner)));
            }
        }
        for (index, shade) in plan.ground.shade.iter().enumerate() {
            if !shade.hidden && own != Some(&Shape::Shade(index)) {
                all.line(&shade.outline, true, SideOf::Shade(index), |corner| Some(Hold::ShadeCorner(index, corner)));
            }
        }
        for (index, damp) in plan.ground.damp.iter().enumerate() {
            if !damp.hidden && own != Some(&Shape::Damp(index)) {
                all.line(&damp.outline, true, SideOf::Damp(index), |corner| Some(Hold::DampCorner(index, corner)));
            }
        }
        let with_posts = |run: usize| plan.runs.get(run).is_some_and(|stated| !stated.hidden) && !is_own_run(run);
        for (run, worked) in workup.runs.iter().enumerate().filter(|(run, _)| with_posts(*run)) {
            for (post, one) in worked.lay.iter().flat_map(|lay| &lay.posts).enumerate() {
                all.place(one.at, Hold::Post(run, post));
            }
        }
        Self { guides: Guides::new(all.spots, all.edges), places: all.places, sides: all.sides }
    }

    /// What a place is called, where it catches a hand.
    pub(super) fn place_reason(&self, plan: &Plan, words: Words, index: usize) -> Option<String> {
        let number = |index: usize| (index + 1).to_string();
        let corner_of = |corner: usize, named: Named| {
            let name = other_name(plan, words, named)?;
            Some(words.say(Text::OnCornerOf, &[("number", &number(corner)), ("name", &name)]))
        };
        Some(match *self.places.get(index)? {
            Hold::RunCorner(run, corner) => {
                let name = care::run_name(plan.runs.get(run)?);
                words.say(Shaping::OnCorner, &[("number", &number(corner)), ("name", name)])
            }
            Hold::Post(run, post) => {
                let name = care::run_name(plan.runs.get(run)?);
                words.say(Shaping::OnPost, &[("number", &number(post)), ("name", name)])
            }
            Hold::PaddockCorner(corner) => words.say(Shaping::OnPaddockCorner, &[("number", &number(corner))]),
            Hold::KeepOutCorner(index, corner) => corner_of(corner, Named::KeepOut(index))?,
            Hold::WallCorner(index, corner) => corner_of(corner, Named::Wall(index))?,
            Hold::ShadeCorner(index, corner) => corner_of(corner, Named::Shade(index))?,
            Hold::DampCorner(index, corner) => corner_of(corner, Named::Damp(index))?,
            Hold::BranchCorner(run, branch, corner) => {
                let name = branch_name(plan, words, run, branch)?;
                words.say(Text::OnCornerOf, &[("number", &number(corner)), ("name", &name)])
            }
            Hold::HazardPoint(index, point) => {
                let name = other_name(plan, words, Named::Hazard(index))?;
                words.say(Text::OnPointOf, &[("number", &number(point)), ("name", &name)])
            }
        })
    }

    /// What a side is called.
    pub(super) fn side_name(&self, plan: &Plan, words: Words, index: usize) -> Option<String> {
        let side = self.sides.get(index)?;
        let (from, to) = ((side.from + 1).to_string(), (side.to + 1).to_string());
        let say = |text: Text, name: &str| words.say(text, &[("from", &from), ("to", &to), ("name", name)]);
        Some(match side.of {
            SideOf::Run(run) => say(Text::SideOfRun, care::run_name(plan.runs.get(run)?)),
            SideOf::Branch(run, branch) => say(Text::SideOfOther, &branch_name(plan, words, run, branch)?),
            SideOf::Paddock => say(Text::SideOfPaddock, ""),
            SideOf::KeepOut(index) => say(Text::SideOfOther, &other_name(plan, words, Named::KeepOut(index))?),
            SideOf::Hazard(index) => say(Text::SideOfOther, &other_name(plan, words, Named::Hazard(index))?),
            SideOf::Wall(index) => say(Text::SideOfOther, &other_name(plan, words, Named::Wall(index))?),
            SideOf::Shade(index) => say(Text::SideOfOther, &other_name(plan, words, Named::Shade(index))?),
            SideOf::Damp(index) => say(Text::SideOfOther, &other_name(plan, words, Named::Damp(index))?),
        })
    }

    /// The wall, hedge or fence that a side is part of, by its number.
    pub(super) fn wall(&self, line: Line) -> Option<usize> {
        let Line::Other(index) = line else { return None };
        match self.sides.get(index)?.of {
            SideOf::Wall(wall) => Some(wall),
            _ => None,
        }
    }

    /// The wall, hedge or fence whose corner a place is, by its number, and the corner.
    pub(super) fn wall_corner(&self, place: usize) -> Option<(usize, usize)> {
        match *self.places.get(place)? {
            Hold::WallCorner(wall, corner) => Some((wall, corner)),
            _ => None,
        }
    }

    /// The wall that a corner caught so lies on.
    pub(super) fn on_wall(&self, why: Why) -> Option<usize> {
        if let Why::Place(place) = why {
            return self.wall_corner(place).map(|(wall, _)| wall);
        }
        why.guides().find_map(|guide| match guide {
            Guide::On(line) => self.wall(line),
            _ => None,
        })
    }
}

#[derive(Default)]
struct Listed {
    spots: Vec<geometry::Point>,
    places: Vec<Hold>,
    edges: Vec<Edge>,
    sides: Vec<Side>,
}

impl Listed {
    fn place(&mut self, at: Point, hold: Hold) {
        self.spots.push(point(at));
        self.places.push(hold);
    }

    /// The corners of a line, as far as they are named, and its sides.
    fn line(&mut self, line: &[Point], closed: bool, of: SideOf, name: impl Fn(usize) -> Option<Hold>) {
        for (corner, &at) in line.iter().enumerate() {
            if let Some(hold) = name(corner) {
                self.place(at, hold);
            }
        }
        let count = line.len();
        let sides = if closed && count > 2 { count } else { count.saturating_sub(1) };
        for from in 0..sides {
            let to = (from + 1) % count;
            self.edges.push(Edge { from: point(line[from]), to: point(line[to]) });
            self.sides.push(Side { of, from, to });
        }
    }
}

/// A branch of a run by itself.
fn branch_name(plan: &Plan, words: Words, run: usize, branch: usize) -> Option<String> {
    let name = care::run_name(plan.runs.get(run)?);
    Some(words.say(Shaping::OfBranch, &[("side", name), ("branch", &(branch + 1).to_string())]))
}

/// What the list calls a thing that is no run: a name by itself, which stands in brackets and so in one case.
fn other_name(plan: &Plan, words: Words, named: Named) -> Option<String> {
    Some(names::listed(plan, words, named)).filter(|name| !name.is_empty())
}
