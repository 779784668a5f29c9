//! The ground: paddock, keep-outs, hazards and coops.

use geo::{Buffer, Coord, LineString, Polygon};
use plan::{Coop, HazardKind, Point};

use super::Sheet;
use super::track;
use crate::shape::{Role, Thing};

/// The ground of the paddock.
pub(super) fn paddock(sheet: &mut Sheet<'_>) {
    let (boundary, hidden) = (&sheet.scene.plan.ground.boundary, sheet.scene.plan.ground.boundary_hidden);
    if !hidden && boundary.len() >= 3 {
        sheet.area(Role::Paddock, vec![boundary.clone()], Some(Thing::Boundary));
    }
}

/// The edge of the paddock, keep-outs and hazards.
pub(super) fn features(sheet: &mut Sheet<'_>) {
    let ground = &sheet.scene.plan.ground;
    if !ground.boundary_hidden && ground.boundary.len() >= 2 {
        sheet.path(Role::PaddockEdge, ground.boundary.clone(), true, None);
    }
    for (index, keep_out) in ground.keep_outs.iter().enumerate().filter(|(_, one)| !one.hidden) {
        let thing = Some(Thing::KeepOut { keep_out: index });
        let role = if keep_out.water { Role::Water } else { Role::KeepOut };
        for ring in clearance(&keep_out.outline, keep_out.clearance_m()) {
            sheet.path(Role::Clearance { water: keep_out.water }, ring, true, None);
        }
        if keep_out.outline.len() >= 3 {
            sheet.area(role, vec![keep_out.outline.clone()], thing);
        }
    }
    for (index, hazard) in ground.hazards.iter().enumerate().filter(|(_, one)| !one.hidden) {
        let (role, thing) = (Role::Hazard { kind: hazard.kind }, Some(Thing::Hazard { hazard: index }));
        if hazard.kind == HazardKind::ForeignEarth || hazard.path.len() < 2 {
            for &at in &hazard.path {
                sheet.mark(role, at, std::f64::consts::FRAC_PI_2, thing);
            }
        } else {
            sheet.path(role, hazard.path.clone(), false, thing);
        }
    }
}

/// Every coop, true to size.
pub(super) fn coops(sheet: &mut Sheet<'_>) {
    let plan = sheet.scene.plan;
    let coops = plan.coop.iter().chain(&plan.other_coops).enumerate();
    for (index, coop) in coops.filter(|(_, coop)| !coop.hidden) {
        let role = Role::Coop { length_m: coop.length_m(), width_m: coop.width_m(), door: coop.door() };
        sheet.mark(role, coop.at, heading_rad(coop), Some(Thing::Coop { coop: index }));
    }
}

/// Handles of the paddock, keep-outs and hazards.
pub(super) fn handles(sheet: &mut Sheet<'_>) {
    let ground = &sheet.scene.plan.ground;
    if !ground.boundary_hidden {
        sheet.handles(
            &ground.boundary,
            true,
            |vertex| Thing::BoundaryCorner { vertex },
            |side| Thing::BoundarySide { side },
        );
    }
    for (keep_out, stated) in ground.keep_outs.iter().enumerate().filter(|(_, one)| !one.hidden) {
        sheet.handles(
            &stated.outline,
            true,
            |vertex| Thing::KeepOutCorner { keep_out, vertex },
            |side| Thing::KeepOutSide { keep_out, side },
        );
    }
    // One that is a place alone is its sign.
    for (hazard, stated) in ground.hazards.iter().enumerate().filter(|(_, one)| !one.hidden && one.path.len() > 1) {
        sheet.handles(
            &stated.path,
            false,
            |vertex| Thing::HazardCorner { hazard, vertex },
            |_| Thing::Hazard { hazard },
        );
    }
}

/// Where a coop's length points, radians counter-clockwise from east.
pub(super) fn heading_rad(coop: &Coop) -> f64 {
    (90.0 - coop.heading_deg()).to_radians()
}

/// The line that keeps a distance from an outline, round at its corners.
fn clearance(outline: &[Point], clearance_m: f64) -> Vec<Vec<Point>> {
    let finite = outline.iter().all(|place| place.east_m.is_finite() && place.north_m.is_finite());
    let reasonable = (SMALLEST_CLEARANCE_M..LARGEST_CLEARANCE_M).contains(&clearance_m);
    if outline.len() < 3 || !finite || !reasonable || track::signed_area_m2(outline).abs() < 1e-6 {
        return Vec::new();
    }
    let origin = outline[0];
    let local = |place: &Point| Coord { x: place.east_m - origin.east_m, y: place.north_m - origin.north_m };
    let ring = LineString::new(outline.iter().chain(outline.first()).map(local).collect());
    Polygon::new(ring, Vec::new())
        .buffer(clearance_m)
        .into_iter()
        .map(|polygon| {
            let mut ring: Vec<Point> = polygon
                .exterior()
                .coords()
                .map(|coord| Point::new(coord.x + origin.east_m, coord.y + origin.north_m))
                .collect();
            ring.pop();
            ring
        })
        .collect()
}

/// Clearances beyond these are not drawn, metres.
const SMALLEST_CLEARANCE_M: f64 = 0.05;
const LARGEST_CLEARANCE_M: f64 = 1e4;
