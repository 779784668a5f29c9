//! The shape of whole panels nearest below a found one, at the same place and angle.

use super::branch::Pose;
use super::field::Field;
use super::kind::Kind;

/// Rounding that a side may fall short of whole panels, in panels.
const GRAIN: f64 = 1e-6;

/// The pose and the panels of its sides; `None` where no such shape fits.
pub(super) fn whole(kind: Kind, field: &Field, pose: Pose, panel: f64, panels: u32) -> Option<(Pose, Vec<u32>)> {
    let floor = |length: f64| (length / panel + GRAIN).floor() as u32;
    let fits = |pose: Pose| {
        let scales = field.scales(&kind.shape(pose.angle, pose.stretch), pose.at);
        // A side that rounds up to whole panels by rounding alone still fits.
        scales.largest(pose.scale).is_some_and(|scale| scale >= pose.scale * (1.0 - 1e-7)).then_some(pose)
    };
    match kind {
        Kind::Regular(sides) => {
            let side = pose.scale * kind.round(0.0) / f64::from(sides);
            let each = floor(side).min(panels / sides);
            let scale = pose.scale * f64::from(each) * panel / side;
            (each > 0).then(|| fits(Pose { scale, ..pose })).flatten().map(|pose| (pose, vec![each; sides as usize]))
        }
        Kind::Rectangle => {
            let long = pose.scale * (pose.stretch / 2.0).exp();
            let wide = pose.scale * (-pose.stretch / 2.0).exp();
            let tries = [(0, 0), (1, 0), (0, 1)].map(|(a, b)| (floor(long) + a, floor(wide) + b));
            let found = tries.into_iter().filter(|&(a, b)| a > 0 && b > 0 && 2 * (a + b) <= panels);
            let found = found.filter_map(|(a, b)| {
                let scale = panel * f64::from(a * b).sqrt();
                let stretch = (f64::from(a) / f64::from(b)).ln();
                fits(Pose { stretch, scale, ..pose }).map(|pose| (pose, vec![a, b, a, b]))
            });
            found.max_by(|one, two| one.0.scale.total_cmp(&two.0.scale))
        }
    }
}
