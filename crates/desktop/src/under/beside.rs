//! A figure beside its mark in a plot, clear of what else is drawn there.

use egui::{Pos2, Rect, Vec2, vec2};

use crate::crossing::runs_through;

/// From a mark's middle to its figure.
const OFF: f32 = 8.0;
/// Kept between a figure and a line or another thing.
const AIR: f32 = 1.5;

/// Where a figure stands: below its mark, else above, beside, or at a corner of it, wherever it lies on the least.
/// `plates` may not be covered at all, `lines` only where there is no other place; it never leaves `inside`.
pub(super) fn beside(mark: Pos2, size: Vec2, inside: Rect, plates: &[Rect], lines: &[Vec<Pos2>]) -> Rect {
    let reach = size / 2.0 + vec2(OFF, OFF - 2.0);
    let ways = [(0, 1), (0, -1), (1, 0), (-1, 0), (1, 1), (1, -1), (-1, 1), (-1, -1)];
    let places = ways.map(|(right, down)| {
        let middle = mark + vec2(reach.x * right as f32, reach.y * down as f32);
        Rect::from_center_size(middle, size)
    });
    let cost = |place: &Rect| {
        let beyond = usize::from(!inside.contains_rect(*place));
        let air = place.expand(AIR);
        let covered = plates.iter().filter(|plate| plate.intersects(air)).count();
        let crossed = lines.iter().filter(|line| runs_through(line, air)).count();
        (beyond, covered, crossed)
    };
    places.into_iter().min_by_key(cost).unwrap_or(places[0])
}

#[cfg(test)]
mod tests {
    use super::beside;
    use egui::{Pos2, Rect, Vec2, pos2, vec2};

    const SIZE: Vec2 = vec2(20.0, 14.0);

    fn inside() -> Rect {
        Rect::from_min_max(pos2(0.0, 0.0), pos2(400.0, 200.0))
    }

    fn flat(y: f32) -> Vec<Pos2> {
        vec![pos2(0.0, y), pos2(400.0, y)]
    }

    #[test]
    fn with_nothing_near_it_stands_below() {
        let at = pos2(100.0, 100.0);
        let place = beside(at, SIZE, inside(), &[], &[]);
        assert!(place.top() > at.y && place.center().x == at.x);
    }

    #[test]
    fn at_the_axis_it_steps_to_the_right_and_at_the_far_end_to_the_left() {
        let first = beside(pos2(0.0, 100.0), SIZE, inside(), &[], &[]);
        assert!(first.left() > 4.0, "{first:?}");
        let last = beside(pos2(400.0, 100.0), SIZE, inside(), &[], &[]);
        assert!(last.right() < 396.0, "{last:?}");
    }

    #[test]
    fn a_line_below_sends_it_above_and_one_on_both_sides_beside() {
        let at = pos2(100.0, 100.0);
        let above = beside(at, SIZE, inside(), &[], &[flat(112.0)]);
        assert!(above.bottom() < at.y, "{above:?}");
        let between = beside(at, SIZE, inside(), &[], &[flat(112.0), flat(88.0)]);
        assert!(between.left() > at.x && between.y_range().contains(at.y), "{between:?}");
    }

    #[test]
    fn a_plate_is_never_covered_where_a_line_is_the_price() {
        let at = pos2(100.0, 100.0);
        let plate = Rect::from_min_max(pos2(60.0, 60.0), pos2(140.0, 98.0));
        let place = beside(at, SIZE, inside(), &[plate], &[flat(112.0)]);
        assert!(!place.intersects(plate), "{place:?}");
    }
}
