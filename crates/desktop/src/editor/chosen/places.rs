//! Where things lie: the places that each is made of, its outline, the middle of many; and which coop has which number.

use drawing::Thing;
use geometry::span_m;
use plan::{Coop, Plan, Point, Shape};

use crate::editor::corner_of;

/// The coop of a number: the plan's own first, where it has one.
pub(crate) fn coop_at(plan: &Plan, index: usize) -> Option<&Coop> {
    plan.coop.iter().chain(&plan.other_coops).nth(index)
}

pub(super) fn coop_mut(plan: &mut Plan, index: usize) -> Option<&mut Coop> {
    plan.coop.iter_mut().chain(&mut plan.other_coops).nth(index)
}

/// The outline that a whole is, where corners of it can be moved one by one; a run's is not among them, since more goes
/// with it than its corners.
pub(super) fn outline_of(thing: Thing) -> Option<Shape> {
    match thing {
        Thing::Boundary => Some(Shape::Boundary),
        Thing::KeepOut { keep_out } => Some(Shape::KeepOut(keep_out)),
        Thing::Wall { wall } => Some(Shape::Wall(wall)),
        Thing::Shade { shade } => Some(Shape::Shade(shade)),
        Thing::Damp { damp } => Some(Shape::Damp(damp)),
        Thing::Hazard { hazard } => Some(Shape::Hazard(hazard)),
        _ => None,
    }
}

/// The places that a thing is made of.
pub(in crate::editor) fn places_of(plan: &Plan, thing: Thing) -> Vec<Point> {
    let one = |at: Option<Point>| at.into_iter().collect();
    if let Some(shape) = outline_of(thing) {
        return plan.outline(&shape).map(<[Point]>::to_vec).unwrap_or_default();
    }
    if let Some((shape, corner)) = corner_of(plan, thing) {
        return one(plan.outline(&shape).and_then(|outline| outline.get(corner)).copied());
    }
    match thing {
        Thing::Run { run } => plan.runs.get(run).map(|run| run.outline.clone()).unwrap_or_default(),
        Thing::Coop { coop } => coop_at(plan, coop).map(|coop| coop.corners().to_vec()).unwrap_or_default(),
        Thing::Gateway => one(plan.ground.gateway.as_ref().map(|gateway| gateway.at)),
        Thing::Height { height } => one(plan.heights.get(height).map(|height| height.at)),
        Thing::Label { label } => one(plan.labels.get(label).map(|label| label.at)),
        Thing::TapePoint { point } => one(plan.tape_points.get(point).map(|point| point.at)),
        Thing::Underlay => plan.underlay.as_ref().map(|underlay| underlay.corners().to_vec()).unwrap_or_default(),
        Thing::Drop { run } => one(plan.runs.get(run).and_then(|run| run.drop_at)),
        Thing::Feed { run } => one(plan.runs.get(run).and_then(|run| run.feed_at)),
        Thing::Energizer { run } => one(plan.runs.get(run).and_then(|run| run.energizer_at)),
        Thing::EarthStake { run, stake } => {
            one(plan.runs.get(run).and_then(|run| run.earth_stakes.places.get(stake)).copied())
        }
        Thing::Fault { run, branch, fault } => {
            one(plan.runs.get(run).and_then(|run| run.faults_on(branch).get(fault)).map(|fault| fault.at))
        }
        Thing::BranchCorner { run, branch, vertex } => {
            let branch = plan.runs.get(run).and_then(|run| run.branches.get(branch));
            one(branch.and_then(|branch| branch.outline.get(vertex)).copied())
        }
        _ => Vec::new(),
    }
}

/// The middle of the box round places; `None` where there are none, or all are one place.
pub(in crate::editor) fn middle(places: &[Point]) -> Option<Point> {
    let finite = places.iter().filter(|at| at.east_m.is_finite() && at.north_m.is_finite());
    let ends = |of: fn(&Point) -> f64| span_m(finite.clone().map(of));
    let (east, north) = (ends(|at| at.east_m), ends(|at| at.north_m));
    (east.0 < east.1 || north.0 < north.1)
        .then(|| Point::new(f64::midpoint(east.0, east.1), f64::midpoint(north.0, north.1)))
}
