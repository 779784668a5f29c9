//! Gates as they are shut, what is pulled and laid back to open them, the way there, and the pins.

use std::f64::consts::{FRAC_PI_2, PI};

use plan::{Point, RunStatus};

use super::Sheet;
use super::run::RunLine;
use super::track::Track;
use crate::shape::{Role, Thing};

/// How far the swing of a shut gate is drawn, radians.
pub(crate) const SWING_RAD: f64 = 52.0 * PI / 180.0;
/// Pieces of a swing.
const PIECES: u32 = 12;

/// The gateway, where it is stated.
pub(super) fn gateway(sheet: &mut Sheet<'_>) {
    if let Some(gateway) = &sheet.scene.plan.ground.gateway {
        sheet.mark(Role::Gateway, gateway.at, FRAC_PI_2, Some(Thing::Gateway));
    }
}

/// The ways to a run's gates, beneath every net.
pub(super) fn ways(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    if run.run.status == RunStatus::Past {
        return;
    }
    for (index, gate) in run.worked.iter().flat_map(|worked| &worked.gates).enumerate() {
        let thing = Some(Thing::Gate { run: run.index, gate: index });
        for points in gate.road.iter().flat_map(|road| [&road.points, &road.inside]).filter(|points| points.len() > 1) {
            sheet.path(Role::Way, points.clone(), false, thing);
        }
    }
}

/// What a run's gates open, and its pins.
pub(super) fn signs(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let Some((lay, track)) = run.laid.as_ref().filter(|_| run.run.status != RunStatus::Past) else { return };
    for (index, gate) in run.worked.iter().flat_map(|worked| &worked.gates).enumerate() {
        let Some(opening) = &gate.opening else { continue };
        let thing = Some(Thing::Gate { run: run.index, gate: index });
        for lies in outside_right(track, &opening.laid_back) {
            sheet.path(Role::LaidBack, lies, false, thing);
        }
        for &(hinge, end) in &opening.leaves {
            sheet.path(Role::Swing { hinge }, swing(track, hinge, end), false, thing);
        }
        for post in opening.pulled.iter().filter_map(|&post| lay.posts.get(post)) {
            sheet.mark(Role::PulledPost, post.at, track.outward(post.along_m), thing);
        }
    }
    for (index, pin) in lay.pins.iter().enumerate() {
        let toward = track.outward(track.nearest(pin.at)) + PI;
        let thing = Some(Thing::Pin { run: run.index, pin: index });
        sheet.mark(Role::Pin { kept: pin.kept }, pin.at, toward, thing);
    }
}

/// Where the end of a leaf goes when it swings outward, from shut on.
fn swing(track: &Track, hinge: Point, end: Point) -> Vec<Point> {
    let (east_m, north_m) = (end.east_m - hinge.east_m, end.north_m - hinge.north_m);
    let (length_m, shut_rad) = (east_m.hypot(north_m), north_m.atan2(east_m));
    let middle = Point::new(f64::midpoint(hinge.east_m, end.east_m), f64::midpoint(hinge.north_m, end.north_m));
    let outward = track.outward(track.nearest(middle));
    let turn = if (outward - shut_rad).sin() >= 0.0 { SWING_RAD } else { -SWING_RAD };
    (0..=PIECES)
        .map(|piece| shut_rad + turn * f64::from(piece) / f64::from(PIECES))
        .map(|toward| Point::new(hinge.east_m + length_m * toward.cos(), hinge.north_m + length_m * toward.sin()))
        .collect()
}

/// Lines along a track, each turned so that the outer side is to its right.
pub(crate) fn outside_right(track: &Track, lines: &[Vec<Point>]) -> Vec<Vec<Point>> {
    let turned = |line: &Vec<Point>| {
        let heading = (line[1].north_m - line[0].north_m).atan2(line[1].east_m - line[0].east_m);
        let middle =
            Point::new(f64::midpoint(line[0].east_m, line[1].east_m), f64::midpoint(line[0].north_m, line[1].north_m));
        let outward = track.outward(track.nearest(middle));
        let mut line = line.clone();
        if (outward - heading).sin() > 0.0 {
            line.reverse();
        }
        line
    };
    lines.iter().filter(|line| line.len() > 1).map(turned).collect()
}
