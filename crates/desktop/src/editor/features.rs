//! Walls, shade, damp ground, the keeper's words, drop points and the coop's door: taken out, doubled, caught, ended on.

use drawing::Thing;
use geometry::guides::Edge;
use plan::{Coop, Edit, Point, Run};

use super::hold::{Held, Hold};
use super::snap::point;
use super::{Editor, known_places};
use crate::tool::{Drawn, Hand, Tool, free_run_id};

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
            Thing::Damp { damp } | Thing::DampSide { damp, .. } => {
                without(&plan.ground.damp, damp).map(|damp| Edit::SetDamp { damp })
            }
            Thing::Label { label } => without(&plan.labels, label).map(|labels| Edit::SetLabels { labels }),
            Thing::TapePoint { point } => {
                without(&known_places::lettered(plan), point).map(|points| Edit::SetTapePoints { points })
            }
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
                second.name = plan.free_wall_name(&second.name);
                walls.push(second);
                Some((Edit::SetWalls { walls }, Thing::Wall { wall: plan.walls.len() }))
            }
            Thing::Shade { shade } | Thing::ShadeCorner { shade, .. } | Thing::ShadeSide { shade, .. } => {
                let mut all = plan.ground.shade.clone();
                let mut second = all.get(shade)?.clone();
                second.outline.iter_mut().for_each(|at| *at = beside(*at));
                (second.hidden, second.locked) = (false, false);
                second.name = plan.free_shade_name(&second.name);
                all.push(second);
                Some((Edit::SetShade { shade: all }, Thing::Shade { shade: plan.ground.shade.len() }))
            }
            Thing::Damp { damp } | Thing::DampCorner { damp, .. } | Thing::DampSide { damp, .. } => {
                let mut all = plan.ground.damp.clone();
                let mut second = all.get(damp)?.clone();
                (second.hidden, second.locked) = (false, false);
                second.name = plan.free_damp_name(&second.name);
                second.outline.iter_mut().for_each(|at| *at = beside(*at));
                all.push(second);
                Some((Edit::SetDamp { damp: all }, Thing::Damp { damp: plan.ground.damp.len() }))
            }
            Thing::Label { label } => {
                let mut labels = plan.labels.clone();
                let mut second = labels.get(label)?.clone();
                second.at = beside(second.at);
                (second.hidden, second.locked) = (false, false);
                labels.push(second);
                Some((Edit::SetLabels { labels }, Thing::Label { label: plan.labels.len() }))
            }
            Thing::Coop { .. } | Thing::CoopDoor => {
                let coop = if let Thing::Coop { coop } = thing { coop } else { 0 };
                let mut second = super::chosen::coop_at(plan, coop)?.clone();
                second.at = beside(second.at);
                (second.hidden, second.locked) = (false, false);
                second.id = plan.free_coop_id();
                let other_coops = plan.other_coops.iter().cloned().chain([second]).collect();
                Some((Edit::SetOtherCoops { other_coops }, Thing::Coop { coop: plan.coops().count() }))
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

    /// Whether a place lies on a wall, a hedge or a fence.
    fn is_on_wall(&self, at: Point) -> bool {
        let mut sides = self.plan.walls.iter().filter(|wall| !wall.hidden).flat_map(|wall| wall.path.windows(2));
        sides.any(|pair| {
            let side = Edge { from: point(pair[0]), to: point(pair[1]) };
            side.nearest(point(at)).distance_m(point(at)) <= ON_WALL_M
        })
    }

    /// Whether the run that is unrolled may end where the corner in hand is: on a wall, a hedge or a fence.
    pub(crate) fn may_end_here(&self) -> bool {
        let last =
            self.tool.draws(Drawn::Run).then(|| self.tool.corners_here()).and_then(|corners| corners.last().copied());
        last.is_some_and(|last| self.is_on_wall(last))
    }

    /// The run that is finished with its last corner on a wall: it stays open there.
    pub(super) fn ends_on_wall(&self, hand: Hand) -> Option<Edit> {
        let outline = match (&self.tool, hand) {
            (Tool::Outline { of: Drawn::Run, corners, .. }, Hand::Close) => corners.clone(),
            (tool, Hand::CloseHere) if tool.draws(Drawn::Run) => tool.corners_here(),
            _ => return None,
        };
        let last = *outline.last().filter(|_| outline.len() >= 2)?;
        if !self.is_on_wall(last) {
            return None;
        }
        let id = free_run_id(&self.plan);
        let run = Run { id, outline, closed: Some(false), ..Run::default() };
        Some(Edit::AddRun { index: self.plan.runs.len(), run: Box::new(run) })
    }
}

/// All but one.
fn without<T: Clone>(all: &[T], out: usize) -> Option<Vec<T>> {
    (out < all.len())
        .then(|| all.iter().enumerate().filter(|(index, _)| *index != out).map(|(_, one)| one.clone()).collect())
}
