//! What else the keeper drew: the picture beneath the map, walls, shade, damp ground, words, drop points, the coop's door.

use std::f64::consts::FRAC_PI_2;

use plan::{Label, LabelSize, RunStatus};

use super::run::RunLine;
use super::{Legend, Sheet, ground, track};
use crate::shape::{About, Priority, Role, Thing};

/// Where the picture lies; one that is locked is not picked by a click.
pub(super) fn underlay(sheet: &mut Sheet<'_>) {
    if let Some(underlay) = sheet.scene.plan.underlay.as_ref().filter(|underlay| !underlay.hidden) {
        let thing = (!underlay.locked).then_some(Thing::Underlay);
        sheet.area(Role::Underlay, vec![underlay.corners().to_vec()], thing);
    }
}

/// Trees and roofs, beneath everything that stands.
pub(super) fn shade(sheet: &mut Sheet<'_>) {
    for (index, shade) in sheet.scene.plan.ground.shade.iter().enumerate().filter(|(_, shade)| !shade.hidden) {
        if shade.outline.len() >= 3 {
            sheet.area(Role::Shade, vec![shade.outline.clone()], Some(Thing::Shade { shade: index }));
        }
    }
}

/// Damp ground.
pub(super) fn damp(sheet: &mut Sheet<'_>) {
    for (index, damp) in sheet.scene.plan.ground.damp.iter().enumerate().filter(|(_, damp)| !damp.hidden) {
        if damp.outline.len() >= 3 {
            sheet.area(Role::Damp, vec![damp.outline.clone()], Some(Thing::Damp { damp: index }));
        }
    }
}

/// Walls, hedges and permanent fences.
pub(super) fn walls(sheet: &mut Sheet<'_>) {
    for (index, wall) in sheet.scene.plan.walls.iter().enumerate().filter(|(_, wall)| !wall.hidden) {
        let role = Role::Wall { kind: wall.kind(), holds: wall.holds_birds() };
        if wall.path.len() >= 2 {
            sheet.path(role, wall.path.clone(), false, Some(Thing::Wall { wall: index }));
        }
    }
}

/// Where a run's rolls are put down, where that is stated.
pub(super) fn drop(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    if let Some(at) = run.run.drop_at.filter(|_| run.run.status != RunStatus::Past) {
        sheet.mark(Role::Drop, at, FRAC_PI_2, Some(Thing::Drop { run: run.index }));
    }
}

/// Handles of walls, shade and damp ground, and of the coop's door.
pub(super) fn handles(sheet: &mut Sheet<'_>) {
    let plan = sheet.scene.plan;
    for (wall, stated) in plan.walls.iter().enumerate().filter(|(_, wall)| !wall.hidden) {
        let corner = |vertex| Thing::WallCorner { wall, vertex };
        sheet.handles(&stated.path, false, corner, |_| Thing::Wall { wall });
    }
    for (shade, stated) in plan.ground.shade.iter().enumerate().filter(|(_, shade)| !shade.hidden) {
        let corner = |vertex| Thing::ShadeCorner { shade, vertex };
        sheet.handles(&stated.outline, true, corner, |side| Thing::ShadeSide { shade, side });
    }
    for (damp, stated) in plan.ground.damp.iter().enumerate().filter(|(_, damp)| !damp.hidden) {
        let corner = |vertex| Thing::DampCorner { damp, vertex };
        sheet.handles(&stated.outline, true, corner, |side| Thing::DampSide { damp, side });
    }
    if let Some(coop) = plan.coop.as_ref().filter(|coop| !coop.hidden) {
        let out_rad = ground::heading_rad(coop) - coop.door().bearing_deg().to_radians();
        let at = coop.door_at();
        let off_m = (at.east_m - coop.at.east_m).hypot(at.north_m - coop.at.north_m);
        sheet.mark(Role::Door { off_m }, at, out_rad, Some(Thing::CoopDoor));
    }
}

/// The known places that corners are taped from; the two that count have a letter.
pub(super) fn tape_points(sheet: &mut Sheet<'_>) {
    let known = workup::tape::known(sheet.scene.plan);
    for (point, stated) in sheet.scene.plan.tape_points.iter().enumerate() {
        let letter = known.iter().find(|known| known.point == point).map(|known| known.letter);
        sheet.mark(Role::TapePoint { letter }, stated.at, FRAC_PI_2, Some(Thing::TapePoint { point }));
    }
}

/// What walls, shade and damp ground are called, and what the keeper wrote.
pub(super) fn words(sheet: &mut Sheet<'_>) {
    let plan = sheet.scene.plan;
    for (index, wall) in plan.walls.iter().enumerate().filter(|(_, wall)| !wall.hidden && !wall.name.is_empty()) {
        let Some(&at) = wall.path.get(wall.path.len() / 2) else { continue };
        let legend = Legend {
            about: About::Wall,
            at,
            toward_rad: -FRAC_PI_2,
            texts: vec![wall.name.clone()],
            priority: Priority::Ground,
        };
        sheet.label(legend, Some(Thing::Wall { wall: index }));
    }
    for (index, shade) in plan.ground.shade.iter().enumerate().filter(|(_, shade)| !shade.hidden) {
        area_name(sheet, &shade.name, &shade.outline, Thing::Shade { shade: index });
    }
    for (index, damp) in plan.ground.damp.iter().enumerate().filter(|(_, damp)| !damp.hidden) {
        area_name(sheet, &damp.name, &damp.outline, Thing::Damp { damp: index });
    }
    let written = |(_, label): &(usize, &Label)| !label.hidden && !label.text.trim().is_empty();
    for (index, label) in plan.labels.iter().enumerate().filter(written) {
        let legend = Legend {
            about: About::Label { large: label.size() == LabelSize::Large },
            at: label.at,
            toward_rad: FRAC_PI_2,
            texts: vec![label.text.clone()],
            priority: Priority::Ground,
        };
        sheet.label(legend, Some(Thing::Label { label: index }));
    }
}

/// What an area is called, below its middle.
fn area_name(sheet: &mut Sheet<'_>, name: &str, outline: &[plan::Point], thing: Thing) {
    let Some((at, _)) = track::middle(outline).filter(|_| !name.is_empty()) else { return };
    let reach = |place: &plan::Point| (place.north_m - at.north_m).abs();
    let half_m = outline.iter().map(reach).fold(0.0, f64::max);
    let legend = Legend {
        about: About::KeepOut { half_m },
        at,
        toward_rad: -FRAC_PI_2,
        texts: vec![name.to_owned()],
        priority: Priority::Ground,
    };
    sheet.label(legend, Some(thing));
}
