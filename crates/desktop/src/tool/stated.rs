//! What a drawn outline states of the plan.

use plan::{
    Branch, Coop, Damp, Edit, Gateway, Hazard, KeepOut, Label, Plan, Point, Rest, Run, Shade, Shape, SpotHeight,
    TapePoint, Wall,
};

use super::{Drawn, apart_m, free_run_id};
use crate::editor::known_places;

/// What a drawn outline states; `None` where there is nothing to hang it on.
pub(super) fn edit(of: Drawn, outline: Vec<Point>, plan: &Plan) -> Option<Edit> {
    Some(match of {
        Drawn::Paddock => Edit::SetOutline { shape: Shape::Boundary, outline },
        Drawn::Run => {
            let run = Run { id: free_run_id(plan), outline, ..Run::default() };
            Edit::AddRun { index: plan.runs.len(), run: Box::new(run) }
        }
        Drawn::KeepOut | Drawn::Water => {
            let keep_out = KeepOut { water: of == Drawn::Water, ..KeepOut::new(outline) };
            Edit::SetKeepOuts { keep_outs: with(&plan.ground.keep_outs, keep_out) }
        }
        Drawn::Hazard(kind) => {
            let hazard = Hazard::new(kind, outline);
            Edit::SetHazards { hazards: with(&plan.ground.hazards, hazard) }
        }
        Drawn::Wall(kind) => {
            let wall = Wall { kind: Some(kind), path: outline, ..Wall::default() };
            Edit::SetWalls { walls: with(&plan.walls, wall) }
        }
        Drawn::Shade => Edit::SetShade { shade: with(&plan.ground.shade, Shade { outline, ..Shade::default() }) },
        Drawn::Damp => Edit::SetDamp { damp: with(&plan.ground.damp, Damp { outline, ..Damp::default() }) },
        Drawn::Label => {
            let label = Label { at: outline.first().copied()?, ..Label::default() };
            Edit::SetLabels { labels: with(&plan.labels, label) }
        }
        Drawn::Drop(index) => {
            let run = Run { drop_at: outline.first().copied(), ..plan.runs.get(index)?.clone() };
            Edit::SetRun { run: Box::new(run) }
        }
        Drawn::Feed(index) => {
            let run = Run { feed_at: outline.first().copied(), ..plan.runs.get(index)?.clone() };
            Edit::SetRun { run: Box::new(run) }
        }
        Drawn::Energizer(index) => {
            let run = Run { energizer_at: outline.first().copied(), ..plan.runs.get(index)?.clone() };
            Edit::SetRun { run: Box::new(run) }
        }
        Drawn::Known => return None,
        Drawn::Gateway => {
            let at = outline.first().copied().unwrap_or_default();
            let rest = plan.ground.gateway.as_ref().map(|gateway| gateway.rest.clone()).unwrap_or_default();
            Edit::SetGateway { gateway: Some(Gateway { at, rest }) }
        }
        Drawn::Height => {
            let at = outline.first().copied().unwrap_or_default();
            // As high as the spot nearest to it until it is typed: nothing slopes that nobody stated.
            let off_m = |height: &&SpotHeight| apart_m(height.at, at);
            let nearest = plan.heights.iter().min_by(|a, b| off_m(a).total_cmp(&off_m(b)));
            let up_m = nearest.map_or(0.0, |height| height.up_m);
            let height = SpotHeight { at, up_m, rest: Rest::new() };
            Edit::SetHeights { heights: with(&plan.heights, height) }
        }
        Drawn::Coop => {
            let at = outline.first().copied().unwrap_or_default();
            let coop = match &plan.coop {
                Some(coop) => Coop { at, ..coop.clone() },
                None => Coop::new(plan.free_coop_id(), at),
            };
            Edit::SetCoop { coop: Some(coop) }
        }
        Drawn::FurtherCoop => {
            let coop = Coop::new(plan.free_coop_id(), outline.first().copied()?);
            Edit::SetOtherCoops { other_coops: with(&plan.other_coops, coop) }
        }
        Drawn::TapePoint => {
            let point = TapePoint { at: outline.first().copied()?, ..TapePoint::default() };
            Edit::SetTapePoints { points: known_places::with(plan, point) }
        }
        Drawn::EarthStake(index) => {
            let (run, at) = (plan.runs.get(index)?, *outline.first()?);
            // A row that stands nowhere yet is only told where; else one more stands beside the others.
            let stand = workup::earth::places(run);
            let mut run = run.clone();
            if stand.is_empty() && run.earth_stakes.count() > 1 {
                run.earth_stakes.at = Some(at);
            } else {
                run = crate::editor::earth::placed(&run, with(&stand, at));
            }
            Edit::SetRun { run: Box::new(run) }
        }
        Drawn::Branch => {
            let (run, branch) = hung(plan, &outline)?;
            Edit::SetRun { run: Box::new(Run { branches: with(&run.branches, branch), ..run.clone() }) }
        }
    })
}

/// A drawn line as a branch of the run whose line is nearest to its first corner.
fn hung<'a>(plan: &'a Plan, drawn: &[Point]) -> Option<(&'a Run, Branch)> {
    let shown = plan.runs.iter().filter(|run| !run.hidden);
    let hung = shown.filter_map(|run| workup::hang(plan, run, drawn).map(|hung| (run, hung)));
    let (run, (branch, _)) = hung.min_by(|one, other| one.1.1.total_cmp(&other.1.1))?;
    Some((run, branch))
}

/// Where the first corner of a branch comes to hang: on the line at once, so that a side that is typed from it is that side.
pub(super) fn hangs_at(plan: &Plan, at: Point) -> Point {
    hung(plan, &[at]).and_then(|(_, branch)| branch.outline.first().copied()).unwrap_or(at)
}

fn with<T: Clone>(all: &[T], one: T) -> Vec<T> {
    all.iter().cloned().chain([one]).collect()
}
