//! Where entries lie on the map.

use drawing::Thing;
use plan::Point;

use super::{Item, lay};
use crate::editor::Editor;
use crate::editor::chosen::coop_at;

/// Where an entry lies on the map; `None` where it lies nowhere.
pub(crate) fn at(editor: &Editor, item: Item) -> Option<Point> {
    let plan = editor.plan();
    let thing = match item {
        Item::Head(_) => return None,
        Item::Net { run, net } => {
            let lay = lay(editor, run)?;
            let net = lay.nets.get(net)?;
            let chain_m = f64::midpoint(net.start_m, net.end_m);
            let along_m = if lay.reversed { lay.start_m - chain_m } else { lay.start_m + chain_m };
            return lay.place_at(if lay.closed { along_m.rem_euclid(lay.line_m) } else { along_m });
        }
        Item::Brace { run, corner } => return lay(editor, run)?.corners.get(corner).map(|corner| corner.stake.at),
        Item::Thing(brace @ Thing::Brace { .. }) => return at(editor, Item::of(brace)),
        Item::Thing(thing) => thing,
    };
    match thing {
        Thing::Run { run } => mean(&plan.runs.get(run)?.outline),
        Thing::RunCorner { run, vertex } => plan.runs.get(run)?.outline.get(vertex).copied(),
        Thing::Boundary => mean(&plan.ground.boundary),
        Thing::BoundaryCorner { vertex } => plan.ground.boundary.get(vertex).copied(),
        Thing::KeepOut { keep_out } => mean(&plan.ground.keep_outs.get(keep_out)?.outline),
        Thing::KeepOutCorner { keep_out, vertex } => plan.ground.keep_outs.get(keep_out)?.outline.get(vertex).copied(),
        Thing::Hazard { hazard } => mean(&plan.ground.hazards.get(hazard)?.path),
        Thing::HazardCorner { hazard, vertex } => plan.ground.hazards.get(hazard)?.path.get(vertex).copied(),
        Thing::Wall { wall } => along_middle(&plan.walls.get(wall)?.path),
        Thing::WallCorner { wall, vertex } => plan.walls.get(wall)?.path.get(vertex).copied(),
        Thing::Shade { shade } => mean(&plan.ground.shade.get(shade)?.outline),
        Thing::ShadeCorner { shade, vertex } => plan.ground.shade.get(shade)?.outline.get(vertex).copied(),
        Thing::Damp { damp } => mean(&plan.ground.damp.get(damp)?.outline),
        Thing::DampCorner { damp, vertex } => plan.ground.damp.get(damp)?.outline.get(vertex).copied(),
        Thing::Label { label } => plan.labels.get(label).map(|label| label.at),
        Thing::Underlay => mean(&plan.underlay.as_ref()?.corners()),
        Thing::Drop { run } => plan.runs.get(run)?.drop_at,
        Thing::Feed { run } => plan.runs.get(run)?.feed_at.or_else(|| drawn_at(editor, thing)),
        Thing::Coop { coop } => coop_at(plan, coop).map(|coop| coop.at),
        Thing::Gateway => plan.ground.gateway.as_ref().map(|gateway| gateway.at),
        Thing::Height { height } => plan.heights.get(height).map(|height| height.at),
        Thing::TapePoint { point } => plan.tape_points.get(point).map(|point| point.at),
        Thing::Branch { run, branch } => mean(&plan.runs.get(run)?.branches.get(branch)?.outline),
        Thing::BranchCorner { run, branch, vertex } => {
            plan.runs.get(run)?.branches.get(branch)?.outline.get(vertex).copied()
        }
        Thing::EarthStake { run, stake } => workup::earth::places(plan.runs.get(run)?).get(stake).copied(),
        Thing::Finding { run, finding } => editor.finding(run, finding)?.at.first().copied(),
        thing => drawn_at(editor, thing),
    }
}

/// The middle of a line's middle side.
fn along_middle(path: &[Point]) -> Option<Point> {
    let side = path.len().checked_sub(1)? / 2;
    let (one, other) = (path[side], *path.get(side + 1).unwrap_or(&path[side]));
    Some(Point::new(one.east_m.midpoint(other.east_m), one.north_m.midpoint(other.north_m)))
}

/// Where a sign of a thing is drawn.
fn drawn_at(editor: &Editor, thing: Thing) -> Option<Point> {
    let drawn = editor.drawing().shapes().find(|shape| shape.thing == Some(thing))?;
    match &drawn.form {
        drawing::Form::Mark { at, .. } | drawing::Form::Label { at, .. } => Some(*at),
        drawing::Form::Path { points, .. } => points.get(points.len() / 2).copied(),
        drawing::Form::Area { rings } => rings.first().and_then(|ring| mean(ring)),
    }
}

/// The mean of places.
fn mean(places: &[Point]) -> Option<Point> {
    let count = places.len() as f64;
    let sum = places.iter().fold((0.0, 0.0), |sum, at| (sum.0 + at.east_m, sum.1 + at.north_m));
    (count > 0.0).then(|| Point::new(sum.0 / count, sum.1 / count))
}
