//! Whole things: what moves and turns as one, with every place that belongs to it.

use drawing::Thing;
use plan::{
    Coop, Damp, Edit, Gateway, KeepOut, Label, Motion, Plan, Point, Run, Shade, Shape, SpotHeight, TapePoint, Underlay,
    Wall,
};

use super::hiding::is_hidden;

/// A thing as it was before it was moved; each motion starts from there, so that rounding never adds up.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Whole {
    /// A run, and the coops inside it by their numbers.
    Run(Box<Run>, Vec<(usize, Coop)>),
    Boundary(Vec<Point>),
    KeepOut(usize, Vec<KeepOut>),
    Hazard(usize, Vec<Point>),
    Coop(Coop),
    /// One of the further coops.
    OtherCoop(usize, Vec<Coop>),
    Height(usize, Vec<SpotHeight>),
    /// A known place that corners are taped from.
    TapePoint(usize, Vec<TapePoint>),
    Feed(Box<Run>, Point),
    EarthStakes(Box<Run>, Vec<Point>),
    Gateway(Gateway),
    Wall(usize, Vec<Wall>),
    Shade(usize, Vec<Shade>),
    Damp(usize, Vec<Damp>),
    Label(usize, Label),
    /// Where a run's rolls are put down.
    Drop(Box<Run>, Point),
    Underlay(Box<Underlay>),
}

impl Whole {
    /// The whole that a thing is or belongs to, if it can be moved as one.
    pub(super) fn of(plan: &Plan, thing: Thing) -> Option<Self> {
        let keep_out = |index: usize| {
            plan.ground.keep_outs.get(index).map(|_| Self::KeepOut(index, plan.ground.keep_outs.clone()))
        };
        let run = |index: usize| plan.runs.get(index).map(|run| Box::new(run.clone()));
        match thing {
            Thing::Run { run: index } | Thing::RunSide { run: index, .. } => {
                let run = run(index)?;
                // A coop goes along with the one run that is round it.
                let goes = |coop: &Coop| !coop.locked && plan.run_round(coop) == Some(index);
                let coops = plan.coops().cloned().enumerate().filter(|(_, coop)| goes(coop));
                Some(Self::Run(run, coops.collect()))
            }
            Thing::Boundary | Thing::BoundarySide { .. } => {
                (!plan.ground.boundary.is_empty()).then(|| Self::Boundary(plan.ground.boundary.clone()))
            }
            Thing::KeepOut { keep_out: index } | Thing::KeepOutSide { keep_out: index, .. } => keep_out(index),
            Thing::Hazard { hazard } => {
                plan.ground.hazards.get(hazard).map(|stated| Self::Hazard(hazard, stated.path.clone()))
            }
            Thing::CoopDoor => plan.coop.clone().map(Self::Coop),
            Thing::Coop { coop } => {
                if let Some(own) = plan.coop.clone().filter(|_| coop == 0) {
                    return Some(Self::Coop(own));
                }
                let other = coop.checked_sub(usize::from(plan.coop.is_some()))?;
                (other < plan.other_coops.len()).then(|| Self::OtherCoop(other, plan.other_coops.clone()))
            }
            Thing::Gateway => plan.ground.gateway.clone().map(Self::Gateway),
            Thing::Wall { wall } => plan.walls.get(wall).map(|_| Self::Wall(wall, plan.walls.clone())),
            Thing::Shade { shade } | Thing::ShadeSide { shade, .. } => {
                plan.ground.shade.get(shade).map(|_| Self::Shade(shade, plan.ground.shade.clone()))
            }
            Thing::Damp { damp } | Thing::DampSide { damp, .. } => {
                plan.ground.damp.get(damp).map(|_| Self::Damp(damp, plan.ground.damp.clone()))
            }
            Thing::Label { label } => plan.labels.get(label).map(|stated| Self::Label(label, stated.clone())),
            Thing::Drop { run: index } => {
                let run = run(index)?;
                let at = run.drop_at?;
                Some(Self::Drop(run, at))
            }
            Thing::Underlay => {
                plan.underlay.clone().filter(|underlay| !underlay.locked).map(|one| Self::Underlay(Box::new(one)))
            }
            Thing::Height { height } => plan.heights.get(height).map(|_| Self::Height(height, plan.heights.clone())),
            Thing::TapePoint { point } => {
                plan.tape_points.get(point).map(|_| Self::TapePoint(point, plan.tape_points.clone()))
            }
            Thing::Feed { run: index } => {
                let run = run(index)?;
                let at = run.feed_at.or(run.outline.first().copied())?;
                Some(Self::Feed(run, at))
            }
            Thing::EarthStakes { run: index } => {
                let run = run(index)?;
                let stand = workup::earth::known(&run);
                (!stand.is_empty()).then_some(Self::EarthStakes(run, stand))
            }
            _ => None,
        }
    }

    /// The edits that put it where a motion takes it on the plan's ground.
    pub(super) fn moved(&self, plan: &Plan, motion: Motion) -> Vec<Edit> {
        let all = |places: &[Point]| places.iter().map(|&at| motion.of(at)).collect::<Vec<_>>();
        let one = match self {
            Self::Run(run, coops) => {
                // On other ground its metres are others.
                let run = Edit::SetRun { run: Box::new(workup::taken_along(plan, run, &run.moved(motion))) };
                return [run].into_iter().chain(coops_moved(plan, coops, motion)).collect();
            }
            Self::Boundary(outline) => Edit::SetOutline { shape: Shape::Boundary, outline: all(outline) },
            Self::KeepOut(index, keep_outs) => {
                let outline = all(&keep_outs[*index].outline);
                Edit::SetOutline { shape: Shape::KeepOut(*index), outline }
            }
            Self::Hazard(index, path) => Edit::SetOutline { shape: Shape::Hazard(*index), outline: all(path) },
            Self::Wall(index, _) => Edit::SetOutline { shape: Shape::Wall(*index), outline: all(&self.places()) },
            Self::Shade(index, _) => Edit::SetOutline { shape: Shape::Shade(*index), outline: all(&self.places()) },
            Self::Damp(index, _) => Edit::SetOutline { shape: Shape::Damp(*index), outline: all(&self.places()) },
            Self::Label(index, label) => {
                let mut labels = plan.labels.clone();
                labels.get_mut(*index).into_iter().for_each(|one| one.at = motion.of(label.at));
                Edit::SetLabels { labels }
            }
            Self::Drop(run, at) => {
                Edit::SetRun { run: Box::new(Run { drop_at: Some(motion.of(*at)), ..(**run).clone() }) }
            }
            Self::Underlay(underlay) => {
                let world_m = Some(underlay.world_m().moved(motion));
                Edit::SetUnderlay { underlay: Some(Underlay { world_m, ..(**underlay).clone() }) }
            }
            Self::Coop(coop) => Edit::SetCoop { coop: Some(coop.moved(motion)) },
            Self::OtherCoop(index, coops) => {
                let mut other_coops = coops.clone();
                other_coops[*index] = coops[*index].moved(motion);
                Edit::SetOtherCoops { other_coops }
            }
            Self::Height(index, heights) => {
                let mut heights = heights.clone();
                heights[*index].at = motion.of(heights[*index].at);
                Edit::SetHeights { heights }
            }
            Self::TapePoint(index, points) => {
                let mut points = points.clone();
                points[*index].at = motion.of(points[*index].at);
                Edit::SetTapePoints { points }
            }
            Self::Feed(run, at) => {
                Edit::SetRun { run: Box::new(Run { feed_at: Some(motion.of(*at)), ..(**run).clone() }) }
            }
            Self::Gateway(gateway) => {
                Edit::SetGateway { gateway: Some(Gateway { at: motion.of(gateway.at), ..gateway.clone() }) }
            }
            Self::EarthStakes(run, _) => {
                let mut run = run.clone();
                let stakes = &mut run.earth_stakes;
                stakes.at.iter_mut().chain(&mut stakes.places).for_each(|at| *at = motion.of(*at));
                Edit::SetRun { run }
            }
        };
        vec![one]
    }

    /// The outline that it is, if it is one.
    pub(super) fn shape(&self) -> Option<Shape> {
        match self {
            Self::Run(run, _) => Some(Shape::Run(run.id.clone())),
            Self::Boundary(_) => Some(Shape::Boundary),
            Self::KeepOut(index, _) => Some(Shape::KeepOut(*index)),
            Self::Wall(index, _) => Some(Shape::Wall(*index)),
            Self::Shade(index, _) => Some(Shape::Shade(*index)),
            Self::Damp(index, _) => Some(Shape::Damp(*index)),
            Self::Hazard(index, _) => Some(Shape::Hazard(*index)),
            _ => None,
        }
    }

    /// The places of its outline or path.
    pub(super) fn places(&self) -> Vec<Point> {
        match self {
            Self::Run(run, _) => run.outline.clone(),
            Self::Boundary(outline) | Self::Hazard(_, outline) => outline.clone(),
            Self::KeepOut(index, keep_outs) => keep_outs[*index].outline.clone(),
            Self::Coop(coop) => vec![coop.at],
            Self::OtherCoop(index, coops) => vec![coops[*index].at],
            Self::Height(index, heights) => vec![heights[*index].at],
            Self::TapePoint(index, points) => vec![points[*index].at],
            Self::Feed(_, at) | Self::Drop(_, at) => vec![*at],
            Self::EarthStakes(_, stand) => stand.clone(),
            Self::Gateway(gateway) => vec![gateway.at],
            Self::Wall(index, walls) => walls[*index].path.clone(),
            Self::Shade(index, shade) => shade[*index].outline.clone(),
            Self::Damp(index, damp) => damp[*index].outline.clone(),
            Self::Label(_, label) => vec![label.at],
            Self::Underlay(underlay) => underlay.corners().to_vec(),
        }
    }

    /// What a turn leaves where it is: the mean of its places, which turns of it do not move. `None` for what is
    /// one place.
    pub(super) fn pivot(&self) -> Option<Point> {
        let one_place = match self {
            Self::Feed(..)
            | Self::Gateway(_)
            | Self::Height(..)
            | Self::TapePoint(..)
            | Self::Label(..)
            | Self::Drop(..) => true,
            Self::EarthStakes(_, stand) => stand.len() < 2,
            _ => false,
        };
        if one_place {
            return None;
        }
        let places = self.places();
        let count = places.len() as f64;
        let mean = |of: fn(&Point) -> f64| places.iter().map(of).sum::<f64>() / count;
        (count > 0.0).then(|| Point::new(mean(|at| at.east_m), mean(|at| at.north_m)))
    }
}

impl super::Editor {
    /// Over which place the turning ring of what is picked stands, where it can be turned: the northernmost place of
    /// its outline over its middle.
    pub fn turn_ring(&self) -> Option<Point> {
        if self.has_several() {
            return self.ring_of_several();
        }
        let whole = Whole::of(&self.plan, self.picked.filter(|&thing| !is_hidden(&self.plan, thing))?)?;
        let pivot = whole.pivot()?;
        let coop = match &whole {
            Whole::Coop(coop) => Some(coop),
            Whole::OtherCoop(index, coops) => coops.get(*index),
            _ => None,
        };
        if let Some(coop) = coop {
            return Some(Point::new(pivot.east_m, pivot.north_m + coop.length_m() / 2.0));
        }
        let places = whole.places();
        let sides = places.iter().zip(places.iter().cycle().skip(1));
        let top_m = sides
            .filter_map(|(from, to)| {
                let share = (pivot.east_m - from.east_m) / (to.east_m - from.east_m);
                (0.0..=1.0).contains(&share).then_some(from.north_m + share * (to.north_m - from.north_m))
            })
            .fold(pivot.north_m, f64::max);
        Some(Point::new(pivot.east_m, top_m))
    }

    /// Whether the plan has that thing, as far as it can be picked.
    pub(super) fn exists(&self, thing: Thing) -> bool {
        let plan = &self.plan;
        match thing {
            Thing::RunCorner { run, vertex } | Thing::RunSide { run, side: vertex } => {
                plan.runs.get(run).is_some_and(|run| vertex < run.outline.len())
            }
            Thing::Run { run } | Thing::Feed { run } | Thing::Energizer { run } | Thing::EarthStakes { run } => {
                run < plan.runs.len()
            }
            Thing::EarthStake { run, stake } => self.has_stake(run, stake),
            Thing::BoundaryCorner { vertex } | Thing::BoundarySide { side: vertex } => {
                vertex < plan.ground.boundary.len()
            }
            Thing::Boundary => !plan.ground.boundary.is_empty(),
            Thing::KeepOutCorner { keep_out, vertex } | Thing::KeepOutSide { keep_out, side: vertex } => {
                plan.ground.keep_outs.get(keep_out).is_some_and(|keep_out| vertex < keep_out.outline.len())
            }
            Thing::KeepOut { keep_out } => keep_out < plan.ground.keep_outs.len(),
            Thing::HazardCorner { hazard, vertex } => {
                plan.ground.hazards.get(hazard).is_some_and(|hazard| vertex < hazard.path.len())
            }
            Thing::Hazard { hazard } => hazard < plan.ground.hazards.len(),
            Thing::Coop { coop } => super::chosen::coop_at(plan, coop).is_some(),
            Thing::Height { height } => height < plan.heights.len(),
            Thing::TapePoint { point } => point < plan.tape_points.len(),
            Thing::Reading { reading, .. } => reading < plan.readings.len(),
            Thing::Gateway => plan.ground.gateway.is_some(),
            Thing::WallCorner { wall, vertex } => plan.walls.get(wall).is_some_and(|wall| vertex < wall.path.len()),
            Thing::Wall { wall } => wall < plan.walls.len(),
            Thing::ShadeCorner { shade, vertex } | Thing::ShadeSide { shade, side: vertex } => {
                plan.ground.shade.get(shade).is_some_and(|shade| vertex < shade.outline.len())
            }
            Thing::Shade { shade } => shade < plan.ground.shade.len(),
            Thing::DampCorner { damp, vertex } | Thing::DampSide { damp, side: vertex } => {
                plan.ground.damp.get(damp).is_some_and(|damp| vertex < damp.outline.len())
            }
            Thing::Damp { damp } => damp < plan.ground.damp.len(),
            Thing::Label { label } => label < plan.labels.len(),
            Thing::Drop { run } => plan.runs.get(run).is_some_and(|run| run.drop_at.is_some()),
            Thing::CoopDoor => plan.coop.is_some(),
            Thing::Underlay => plan.underlay.is_some(),
            Thing::Gate { run, gate } => plan.runs.get(run).is_some_and(|run| gate < run.gates.len()),
            Thing::Pin { run, pin } => plan.runs.get(run).is_some_and(|run| pin < run.pins.len()),
            Thing::Fault { run, branch, fault } => {
                plan.runs.get(run).is_some_and(|run| fault < run.faults_on(branch).len())
            }
            Thing::Zone { run, branch, zone } | Thing::ZoneEnd { run, branch, zone, .. } => {
                plan.runs.get(run).is_some_and(|run| zone < run.zones_on(branch).len())
            }
            Thing::Branch { run, branch } => plan.runs.get(run).is_some_and(|run| branch < run.branches.len()),
            Thing::BranchCorner { run, branch, vertex } | Thing::BranchSide { run, branch, side: vertex } => {
                let branch = plan.runs.get(run).and_then(|run| run.branches.get(branch));
                branch.is_some_and(|branch| vertex < branch.outline.len())
            }
            Thing::Brace { run, corner } => {
                let lay = self.workup.runs.get(run).and_then(|worked| worked.lay.as_ref());
                lay.is_some_and(|lay| corner < lay.corners.len())
            }
            // Posts and findings are counted anew with every change.
            Thing::Post { .. } | Thing::Finding { .. } => false,
        }
    }
}

/// The edits that put coops, by their numbers and as they were, where a motion takes them.
fn coops_moved(plan: &Plan, coops: &[(usize, Coop)], motion: Motion) -> impl Iterator<Item = Edit> {
    let first = usize::from(plan.coop.is_some());
    let (own, others): (Vec<_>, Vec<_>) = coops.iter().partition(|(number, _)| *number < first);
    let own = own.first().map(|(_, coop)| Edit::SetCoop { coop: Some(coop.moved(motion)) });
    let others = (!others.is_empty()).then(|| {
        let mut other_coops = plan.other_coops.clone();
        for (number, coop) in others {
            if let Some(one) = other_coops.get_mut(number - first) {
                *one = coop.moved(motion);
            }
        }
        Edit::SetOtherCoops { other_coops }
    });
    own.into_iter().chain(others)
}
