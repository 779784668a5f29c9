//! Lines on the screen against the plates that lie there.

use egui::{Pos2, Rect};

/// Whether a line on the screen runs through a rectangle.
pub(crate) fn runs_through(line: &[Pos2], through: Rect) -> bool {
    line.windows(2).any(|ends| {
        let (from, way) = (ends[0], ends[1] - ends[0]);
        // The share of the way that lies between each pair of sides; what both have in common is inside.
        let between = |at: f32, step: f32, low: f32, high: f32| {
            if step.abs() < f32::EPSILON {
                return if (low..=high).contains(&at) { (0.0, 1.0) } else { (1.0, 0.0) };
            }
            let (one, other) = ((low - at) / step, (high - at) / step);
            (one.min(other), one.max(other))
        };
        let across = between(from.x, way.x, through.left(), through.right());
        let down = between(from.y, way.y, through.top(), through.bottom());
        across.0.max(down.0).max(0.0) <= across.1.min(down.1).min(1.0)
    })
}

#[cfg(test)]
mod tests {
    use super::runs_through;
    use egui::{Rect, pos2};

    #[test]
    fn a_line_runs_through_a_plate_where_none_of_its_ends_lies_in_it() {
        let plate = Rect::from_min_max(pos2(10.0, 10.0), pos2(20.0, 14.0));
        let through = |ends: [[f32; 2]; 2]| runs_through(&ends.map(|[x, y]| pos2(x, y)), plate);
        assert!(through([[0.0, 12.0], [40.0, 12.5]]) && through([[15.0, 0.0], [15.0, 40.0]]));
        assert!(through([[12.0, 12.0], [13.0, 12.0]]));
        assert!(!through([[0.0, 8.0], [40.0, 9.0]]) && !through([[0.0, 0.0], [9.0, 40.0]]));
    }
}
