//! Walls, shade, the keeper's words, drop points and the coop's door: taken out, doubled, caught, ended on.

use drawing::Thing;
use plan::{Coop, Edit, Point, Run, Shape};
use words::texts::Underlay as Text;

use super::hold::{Held, Hold, SNAP_PX};
use super::{Editor, Snapped};
use crate::tool::{Drawn, Hand, Tool, apart_m, free_run_id};

/// A corner nearer to a wall than this lies on it, metres: it was caught there.
const ON_WALL_M: f64 = 1e-6;

impl Editor {
    /// The edit that takes such a thing out.
    pub(super) fn feature_out(&self, thing: Thing) -> Option<Edit> {
        let plan = &self.plan;
        match thing {
            Thing::Wall { wall } => without(&plan.walls, wall).map(|walls| Edit::SetWalls { walls }),
            Thing::Shade { shade } | Thing::ShadeSide { shade, .. } => {
                without(&plan.ground.shade, shade).map(|shade| Edit::SetShade { shade })
            }
            Thing::Label { label } => without(&plan.labels, label).map(|labels| Edit::SetLabels { labels }),
            Thing::Drop { run } => {
                let run = plan.runs.get(run).filter(|run| run.drop_at.is_some())?;
                Some(Edit::SetRun { run: Box::new(Run { drop_at: None, ..run.clone() }) })
            }
            Thing::Underlay => plan.underlay.is_some().then_some(Edit::SetUnderlay { underlay: None }),
            _ => None,
        }
    }

    /// The edit that makes a second one of such a thing, and that one.
    pub(super) fn feature_doubled(&self, thing: Thing, beside: impl Fn(Point) -> Point) -> Option<(Edit, Thing)> {
        let plan = &self.plan;
        match thing {
            Thing::Wall { wall } | Thing::WallCorner { wall, .. } => {
                let mut walls = plan.walls.clone();
                let mut second = walls.get(wall)?.clone();
                second.path.iter_mut().for_each(|at| *at = beside(*at));
                (second.hidden, second.locked) = (false, false);
                walls.push(second);
                Some((Edit::SetWalls { walls }, Thing::Wall { wall: plan.walls.len() }))
            }
            Thing::Shade { shade } | Thing::ShadeCorner { shade, .. } | Thing::ShadeSide { shade, .. } => {
                let mut all = plan.ground.shade.clone();
                let mut second = all.get(shade)?.clone();
                second.outline.iter_mut().for_each(|at| *at = beside(*at));
                (second.hidden, second.locked) = (false, false);
                all.push(second);
                Some((Edit::SetShade { shade: all }, Thing::Shade { shade: plan.ground.shade.len() }))
            }
            Thing::Label { label } => {
                let mut labels = plan.labels.clone();
                let mut second = labels.get(label)?.clone();
                second.at = beside(second.at);
                (second.hidden, second.locked) = (false, false);
                labels.push(second);
                Some((Edit::SetLabels { labels }, Thing::Label { label: plan.labels.len() }))
            }
            _ => None,
        }
    }

    /// Takes hold of the coop's door.
    pub(super) fn door_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        let coop = self.plan.coop.clone().filter(|_| thing == Thing::CoopDoor)?;
        self.take_up(Some(thing));
        self.history.begin_called(plan::Deed::Turn);
        Some(Held { what: Hold::Door(Box::new(coop.clone())), from: at, was: coop.door_at(), moved: false })
    }

    /// The door held towards a place.
    pub(super) fn door_to(coop: &Coop, place: Point) -> Edit {
        Edit::SetCoop { coop: Some(coop.with_door_towards(place)) }
    }

    /// The nearest place on a wall, a hedge or a fence within reach, and which.
    fn on_wall(&self, at: Point, reach_m: f64) -> Option<(usize, Point)> {
        let all = self
            .plan
            .walls
            .iter()
            .enumerate()
            .flat_map(|(wall, stated)| stated.path.windows(2).map(move |pair| (wall, foot(pair[0], pair[1], at))));
        let nearest = all.min_by(|one, other| apart_m(one.1, at).total_cmp(&apart_m(other.1, at)))?;
        (apart_m(nearest.1, at) <= reach_m).then_some(nearest)
    }

    /// The wall that catches a corner.
    pub(super) fn caught_by_wall(&self, own: Option<&Shape>, at: Point) -> Option<Snapped> {
        if self.free || matches!(own, Some(Shape::Wall(_))) {
            return None;
        }
        let (wall, place) = self.on_wall(at, SNAP_PX / self.view.px_per_m)?;
        let name = wall_name(&self.plan, self.words, wall);
        let text = match (self.tool.draws(Drawn::Run), self.plan.walls[wall].holds_birds()) {
            (true, true) => Text::OnWall,
            (true, false) => Text::OnWallNoBirds,
            (false, _) => Text::AtWall,
        };
        Some(Snapped { at: place, reason: self.words.say(text, &[("name", &name)]) })
    }

    /// A corner of a run that is unrolled, caught by a wall, a hedge or a fence.
    pub(super) fn caught_on_wall(&mut self, hand: Hand) -> Option<Hand> {
        let Tool::Outline { of: Drawn::Run, corners, typed, .. } = &self.tool else { return None };
        let (Hand::Move(at) | Hand::Click { at, .. }) = hand else { return None };
        let first = corners.first().filter(|_| corners.len() >= crate::tool::FEWEST_CORNERS);
        let closes = first.is_some_and(|&first| apart_m(first, at) * self.view.px_per_m <= SNAP_PX);
        if self.free || closes || *typed != crate::tool::Typed::default() {
            return None;
        }
        let caught = self.caught_by_wall(None, at)?;
        self.unguided();
        let at = caught.at;
        self.snapped = Some(caught);
        Some(match hand {
            Hand::Click { reach_m, .. } => Hand::Click { at, reach_m },
            _ => Hand::Move(at),
        })
    }

    /// The run that is finished with its last corner on a wall: it stays open there.
    pub(super) fn ends_on_wall(&self, hand: Hand) -> Option<Edit> {
        let (Tool::Outline { of: Drawn::Run, corners, .. }, Hand::Close) = (&self.tool, hand) else { return None };
        let last = *corners.last().filter(|_| corners.len() >= 2)?;
        self.on_wall(last, ON_WALL_M)?;
        let id = free_run_id(&self.plan);
        let run = Run { id, outline: corners.clone(), closed: Some(false), ..Run::default() };
        Some(Edit::AddRun { index: self.plan.runs.len(), run: Box::new(run) })
    }
}

/// What a wall is called.
pub(crate) fn wall_name(plan: &plan::Plan, words: words::Words, wall: usize) -> String {
    let Some(stated) = plan.walls.get(wall) else { return String::new() };
    if !stated.name.is_empty() {
        return stated.name.clone();
    }
    words.text(kind_name(stated.kind())).to_owned()
}

/// What a kind of wall is called.
fn kind_name(kind: plan::WallKind) -> Text {
    match kind {
        plan::WallKind::Wall => Text::AWall,
        plan::WallKind::Hedge => Text::AHedge,
        plan::WallKind::Fence => Text::AFence,
    }
}

/// All but one.
fn without<T: Clone>(all: &[T], out: usize) -> Option<Vec<T>> {
    (out < all.len())
        .then(|| all.iter().enumerate().filter(|(index, _)| *index != out).map(|(_, one)| one.clone()).collect())
}

/// The place of a straight line that is nearest to a place.
fn foot(from: Point, to: Point, at: Point) -> Point {
    let (east, north) = (to.east_m - from.east_m, to.north_m - from.north_m);
    let squared = east * east + north * north;
    let share = ((at.east_m - from.east_m) * east + (at.north_m - from.north_m) * north) / squared;
    let share = if share.is_finite() { share.clamp(0.0, 1.0) } else { 0.0 };
    Point::new(from.east_m + share * east, from.north_m + share * north)
}
