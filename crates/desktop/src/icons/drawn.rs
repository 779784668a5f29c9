//! Each icon as it is drawn: a 16 point grid, 1.5 strokes, no fill but dots.

use egui::{Color32, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, Vec2, vec2};

use super::Icon;

/// Corners of a regular polygon, the first one up.
fn regular(middle: Pos2, radius: f32, sides: usize) -> Vec<Pos2> {
    let turn = std::f32::consts::TAU / sides as f32;
    (0..sides).map(|side| middle + Vec2::angled(turn * side as f32 - std::f32::consts::FRAC_PI_2) * radius).collect()
}

/// Paints an icon in the middle of a rectangle.
pub(crate) fn icon(painter: &Painter, rect: Rect, icon: Icon, ink: Color32) {
    let corner = rect.center() - Vec2::splat(8.0);
    let at = |x: f32, y: f32| corner + vec2(x, y);
    let pen = Stroke::new(1.5, ink);
    let line = |points: &[(f32, f32)]| {
        painter.add(Shape::line(points.iter().map(|&(x, y)| at(x, y)).collect(), pen));
    };
    match icon {
        Icon::Outline => {
            let corners = [(2.5, 5.0), (12.0, 2.5), (13.5, 12.0), (4.0, 13.5)];
            painter.add(Shape::closed_line(corners.iter().map(|&(x, y)| at(x, y)).collect(), pen));
            for (x, y) in corners {
                painter.rect_filled(Rect::from_center_size(at(x, y), Vec2::splat(4.0)), 0.0, ink);
            }
        }
        Icon::Undo => {
            line(&[(6.5, 3.0), (3.0, 6.5), (6.5, 10.0)]);
            line(&[(3.0, 6.5), (10.0, 6.5), (12.5, 7.7), (13.2, 10.0), (12.5, 12.3), (10.0, 13.0), (8.0, 13.0)]);
        }
        Icon::Redo => {
            line(&[(9.5, 3.0), (13.0, 6.5), (9.5, 10.0)]);
            line(&[(13.0, 6.5), (6.0, 6.5), (3.5, 7.7), (2.8, 10.0), (3.5, 12.3), (6.0, 13.0), (8.0, 13.0)]);
        }
        Icon::Fit => {
            line(&[(2.5, 6.0), (2.5, 2.5), (6.0, 2.5)]);
            line(&[(10.0, 2.5), (13.5, 2.5), (13.5, 6.0)]);
            line(&[(13.5, 10.0), (13.5, 13.5), (10.0, 13.5)]);
            line(&[(6.0, 13.5), (2.5, 13.5), (2.5, 10.0)]);
            painter.rect_stroke(Rect::from_center_size(at(8.0, 8.0), Vec2::splat(4.0)), 0.0, pen, StrokeKind::Middle);
        }
        Icon::Compare => {
            for y in [3.5, 8.0, 12.5] {
                line(&[(2.0, y), (14.0, y)]);
                line(&[(2.0, y - 1.75), (2.0, y + 1.75)]);
                line(&[(14.0, y - 1.75), (14.0, y + 1.75)]);
            }
        }
        Icon::Shapes => {
            painter.add(Shape::closed_line(regular(at(8.0, 8.0), 6.5, 6), pen));
            painter.rect_stroke(Rect::from_center_size(at(8.0, 8.0), Vec2::splat(5.0)), 0.0, pen, StrokeKind::Middle);
        }
        Icon::Paper => {
            painter.add(Shape::closed_line(
                vec![at(3.5, 2.0), at(9.5, 2.0), at(12.5, 5.0), at(12.5, 14.0), at(3.5, 14.0)],
                pen,
            ));
            line(&[(9.5, 2.0), (9.5, 5.0), (12.5, 5.0)]);
            line(&[(5.8, 8.0), (10.2, 8.0)]);
            line(&[(5.8, 11.0), (10.2, 11.0)]);
        }
        Icon::Find => {
            painter.circle_stroke(at(7.0, 7.0), 4.0, pen);
            line(&[(9.9, 9.9), (13.5, 13.5)]);
        }
        Icon::Light => {
            painter.circle_stroke(at(8.0, 8.0), 3.0, pen);
            for step in 0..8 {
                let way = Vec2::angled(step as f32 * std::f32::consts::FRAC_PI_4);
                painter.line_segment([at(8.0, 8.0) + way * 5.0, at(8.0, 8.0) + way * 7.0], pen);
            }
        }
        Icon::Dark => {
            // A disc of 5.5 less a disc of 5: the arcs meet where the two circles cross.
            let arc = |middle: (f32, f32), radius: f32, from: f32, to: f32| {
                (0..=14).map(move |step| {
                    let turn = from + (to - from) * step as f32 / 14.0;
                    at(middle.0, middle.1) + Vec2::angled(turn) * radius
                })
            };
            let outer = arc((7.5, 8.5), 5.5, 0.32, 4.39);
            let inner = arc((10.5, 5.5), 5.0, 3.54, 1.17);
            painter.add(Shape::closed_line(outer.chain(inner).collect(), pen));
        }
        Icon::More => {
            line(&[(3.5, 8.0), (12.5, 8.0)]);
            line(&[(8.0, 3.5), (8.0, 12.5)]);
        }
        Icon::Less => line(&[(3.5, 8.0), (12.5, 8.0)]),
        Icon::Before => line(&[(10.0, 3.5), (5.5, 8.0), (10.0, 12.5)]),
        Icon::After => line(&[(6.0, 3.5), (10.5, 8.0), (6.0, 12.5)]),
        Icon::Coil => {
            painter.circle_stroke(at(5.5, 7.5), 3.5, pen);
            line(&[(5.5, 11.0), (14.5, 11.0)]);
            line(&[(10.5, 6.0), (10.5, 11.0)]);
            line(&[(14.0, 6.0), (14.0, 11.0)]);
        }
        Icon::KeepOut => {
            painter.rect_stroke(Rect::from_center_size(at(8.0, 8.0), Vec2::splat(11.0)), 0.0, pen, StrokeKind::Middle);
            for x in [4.0, 7.0, 10.0] {
                line(&[(x, 2.5), (x + 2.5, 6.0)]);
                line(&[(x + 2.0, 13.5), (x - 0.5, 10.0)]);
            }
        }
        Icon::Tape => {
            painter.add(Shape::closed_line(vec![at(1.75, 5.0), at(14.25, 5.0), at(14.25, 11.0), at(1.75, 11.0)], pen));
            for x in [5.0, 8.0, 11.0] {
                line(&[(x, 5.0), (x, 8.25)]);
            }
        }
        Icon::Water => {
            for y in [5.0, 8.5, 12.0] {
                line(&[(2.0, y), (5.0, y - 1.75), (8.0, y), (11.0, y - 1.75), (14.0, y)]);
            }
        }
        Icon::Coop => {
            line(&[(2.0, 7.0), (8.0, 2.5), (14.0, 7.0), (14.0, 13.5), (2.0, 13.5), (2.0, 7.0)]);
            line(&[(6.0, 13.5), (6.0, 9.0), (10.0, 9.0), (10.0, 13.5)]);
        }
        Icon::Gate => {
            line(&[(2.0, 2.5), (2.0, 13.5)]);
            line(&[(14.0, 2.5), (14.0, 13.5)]);
            for y in [4.5, 8.0, 11.5] {
                line(&[(2.0, y), (14.0, y)]);
            }
            line(&[(2.0, 11.5), (14.0, 4.5)]);
        }
        Icon::BringIn => {
            line(&[(4.5, 6.0), (2.5, 6.0), (2.5, 13.5), (13.5, 13.5), (13.5, 6.0), (11.5, 6.0)]);
            line(&[(8.0, 2.0), (8.0, 10.0)]);
            line(&[(5.0, 7.0), (8.0, 10.0), (11.0, 7.0)]);
        }
        Icon::List => {
            for y in [4.0, 8.0, 12.0] {
                line(&[(5.5, y), (14.0, y)]);
                painter.circle_filled(at(2.75, y), 1.25, ink);
            }
        }
        Icon::History => {
            // From the left over the top and round, open where it came from.
            let round = (0..=24).map(|step| (200.0 + 12.5 * step as f32).to_radians());
            let round: Vec<(f32, f32)> =
                round.map(|turn| (5.75_f32.mul_add(turn.cos(), 8.5), 5.75_f32.mul_add(turn.sin(), 8.25))).collect();
            line(&round);
            line(&[(1.0, 3.75), (3.0, 6.75), (6.0, 5.25)]);
            line(&[(8.5, 5.0), (8.5, 8.5), (11.0, 10.0)]);
        }
        Icon::Double => {
            line(&[(10.5, 5.5), (10.5, 2.5), (2.5, 2.5), (2.5, 10.5), (5.5, 10.5)]);
            painter.rect_stroke(Rect::from_min_max(at(5.5, 5.5), at(13.5, 13.5)), 0.0, pen, StrokeKind::Middle);
        }
        Icon::TakeOut => {
            line(&[(4.0, 4.0), (12.0, 12.0)]);
            line(&[(12.0, 4.0), (4.0, 12.0)]);
        }
        Icon::Eye => {
            line(&[(1.5, 8.0), (4.5, 5.0), (8.0, 4.0), (11.5, 5.0), (14.5, 8.0)]);
            line(&[(1.5, 8.0), (4.5, 11.0), (8.0, 12.0), (11.5, 11.0), (14.5, 8.0)]);
            painter.circle_filled(at(8.0, 8.0), 2.25, ink);
        }
        Icon::Shut => {
            line(&[(1.5, 7.0), (4.5, 10.0), (8.0, 11.0), (11.5, 10.0), (14.5, 7.0)]);
            line(&[(8.0, 11.0), (8.0, 13.5)]);
            line(&[(4.0, 10.0), (2.5, 12.0)]);
            line(&[(12.0, 10.0), (13.5, 12.0)]);
        }
        Icon::Locked | Icon::Unlocked => {
            painter.rect_stroke(Rect::from_min_max(at(3.5, 7.5), at(12.5, 13.5)), 0.0, pen, StrokeKind::Middle);
            let end = if icon == Icon::Locked { 7.5 } else { 5.0 };
            line(&[(5.5, 7.5), (5.5, 4.5), (7.0, 3.0), (9.0, 3.0), (10.5, 4.5), (10.5, end)]);
        }
        Icon::Branch => {
            line(&[(8.0, 2.5), (8.0, 12.5)]);
            line(&[(3.5, 4.0), (8.0, 8.5), (12.5, 5.0)]);
            line(&[(3.5, 13.5), (12.5, 13.5)]);
        }
        Icon::Grass => line(&[(9.5, 2.0), (5.5, 8.5), (10.0, 8.0), (6.5, 14.0)]),
        Icon::Peg => {
            line(&[(4.0, 3.0), (12.0, 3.0)]);
            line(&[(8.0, 3.0), (8.0, 8.0)]);
            line(&[(4.5, 8.0), (11.5, 8.0), (8.0, 13.5), (4.5, 8.0)]);
        }
        Icon::CutLine => {
            line(&[(1.5, 8.0), (5.5, 8.0)]);
            line(&[(5.5, 4.5), (5.5, 11.5)]);
            line(&[(14.5, 8.0), (10.5, 8.0)]);
            line(&[(10.5, 4.5), (10.5, 11.5)]);
        }
        Icon::BadJoin => {
            for x in [3.0, 8.0, 13.0] {
                painter.circle_filled(at(x, 8.0), 1.75, ink);
            }
        }
        Icon::DeadNet => {
            line(&[(1.0, 8.0), (4.0, 8.0)]);
            line(&[(12.0, 8.0), (15.0, 8.0)]);
            line(&[(5.0, 5.0), (11.0, 11.0)]);
            line(&[(5.0, 11.0), (11.0, 5.0)]);
        }
        Icon::DryEarth => {
            line(&[(2.0, 4.0), (14.0, 4.0)]);
            line(&[(5.0, 4.0), (6.5, 8.0), (4.5, 13.0)]);
            line(&[(11.0, 4.0), (9.5, 8.5), (11.5, 13.0)]);
        }
        Icon::Wall => {
            for y in [3.0, 8.0, 13.0] {
                line(&[(2.0, y), (14.0, y)]);
            }
            for (x, y) in [(6.0, 3.0), (11.5, 3.0), (3.5, 8.0), (9.0, 8.0)] {
                line(&[(x, y), (x, y + 5.0)]);
            }
        }
        Icon::Hedge => {
            for x in [4.0, 8.0, 12.0] {
                painter.circle_stroke(at(x, 8.0), 2.75, pen);
            }
            line(&[(1.5, 13.0), (14.5, 13.0)]);
        }
        Icon::Fence => {
            for x in [3.5, 12.5] {
                line(&[(x, 3.0), (x, 13.5)]);
            }
            for y in [5.5, 10.0] {
                line(&[(1.5, y), (14.5, y)]);
            }
        }
        Icon::Shade => {
            painter.circle_stroke(at(8.0, 6.0), 4.25, pen);
            line(&[(8.0, 6.5), (8.0, 13.5)]);
            line(&[(4.0, 13.5), (12.0, 13.5)]);
        }
        Icon::Letter => {
            line(&[(3.0, 13.0), (8.0, 3.0), (13.0, 13.0)]);
            line(&[(5.0, 9.5), (11.0, 9.5)]);
        }
        Icon::Drop => {
            for (x, y) in [(4.5, 10.5), (11.5, 10.5), (8.0, 4.75)] {
                painter.circle_stroke(at(x, y), 2.75, pen);
            }
        }
        Icon::Picture => {
            painter.rect_stroke(Rect::from_min_max(at(2.0, 3.0), at(14.0, 13.0)), 0.0, pen, StrokeKind::Middle);
            line(&[(2.5, 12.0), (6.5, 7.5), (9.5, 10.5), (11.0, 9.0), (13.5, 11.5)]);
            painter.circle_filled(at(10.75, 5.75), 1.25, ink);
        }
        Icon::Known => {
            line(&[(5.0, 11.0), (11.0, 5.0)]);
            painter.circle_stroke(at(3.75, 12.25), 1.75, pen);
            painter.circle_stroke(at(12.25, 3.75), 1.75, pen);
        }
        Icon::Energizer => {
            painter.rect_stroke(Rect::from_min_max(at(2.0, 3.5), at(14.0, 12.5)), 0.0, pen, StrokeKind::Middle);
            line(&[(4.0, 9.0), (6.5, 9.0), (8.0, 5.5), (9.5, 10.5), (10.5, 9.0), (12.0, 9.0)]);
        }
        Icon::Damp => {
            for (x, y) in [(2.0, 4.5), (9.0, 4.5), (5.5, 8.0), (2.0, 11.5), (9.0, 11.5)] {
                line(&[(x, y), (x + 5.0, y)]);
            }
        }
        Icon::Feed => {
            line(&[(2.0, 4.0), (14.0, 4.0)]);
            line(&[(8.0, 6.0), (8.0, 14.0)]);
            painter.circle_filled(at(8.0, 4.0), 2.0, ink);
        }
        Icon::Square => {
            painter.rect_stroke(Rect::from_min_max(at(2.5, 2.5), at(13.5, 13.5)), 0.0, pen, StrokeKind::Middle);
            line(&[(2.5, 9.0), (7.0, 9.0), (7.0, 13.5)]);
        }
        Icon::CutCorner => {
            line(&[(2.0, 14.0), (2.0, 7.0), (8.0, 2.0), (14.5, 2.0)]);
            for (x, y) in [(2.0, 7.0), (8.0, 2.0)] {
                painter.rect_filled(Rect::from_center_size(at(x, y), egui::vec2(3.5, 3.5)), 0.0, pen.color);
            }
        }
        Icon::MirrorEast => {
            line(&[(8.0, 1.5), (8.0, 14.5)]);
            line(&[(5.5, 4.0), (1.5, 12.0), (5.5, 12.0), (5.5, 4.0)]);
            line(&[(10.5, 4.0), (14.5, 12.0), (10.5, 12.0), (10.5, 4.0)]);
        }
        Icon::MirrorNorth => {
            line(&[(1.5, 8.0), (14.5, 8.0)]);
            line(&[(4.0, 5.5), (12.0, 1.5), (12.0, 5.5), (4.0, 5.5)]);
            line(&[(4.0, 10.5), (12.0, 14.5), (12.0, 10.5), (4.0, 10.5)]);
        }
        Icon::MirrorSide => {
            line(&[(2.5, 13.5), (13.5, 2.5)]);
            line(&[(3.0, 9.5), (3.0, 3.0), (9.5, 3.0)]);
            line(&[(6.5, 13.0), (13.0, 13.0), (13.0, 6.5)]);
        }
        Icon::Beside => {
            line(&[(8.0, 2.0), (8.0, 14.0)]);
            line(&[(8.0, 3.0), (1.5, 6.0), (1.5, 13.0), (8.0, 13.0)]);
            line(&[(8.0, 3.0), (14.5, 6.0), (14.5, 13.0), (8.0, 13.0)]);
        }
        Icon::BesideAsIs => {
            line(&[(8.0, 2.0), (8.0, 14.0)]);
            line(&[(8.0, 3.0), (1.5, 5.5), (1.5, 13.0), (8.0, 10.5)]);
            line(&[(14.5, 3.0), (8.0, 5.5), (8.0, 13.0), (14.5, 10.5), (14.5, 3.0)]);
        }
        Icon::Pivot => {
            line(&[(1.5, 12.5), (6.5, 12.5)]);
            line(&[(4.0, 10.0), (4.0, 15.0)]);
            line(&[(4.0, 2.5), (8.0, 3.4), (11.5, 6.0), (13.2, 9.5), (13.5, 12.5)]);
            line(&[(11.0, 10.5), (13.5, 13.0), (15.5, 10.5)]);
        }
        Icon::PivotMiddle => {
            painter.circle_stroke(at(8.0, 8.0), 6.0, pen);
            line(&[(5.5, 8.0), (10.5, 8.0)]);
            line(&[(8.0, 5.5), (8.0, 10.5)]);
        }
        Icon::Height => {
            line(&[(2.0, 13.5), (14.0, 9.0)]);
            line(&[(8.0, 2.0), (8.0, 8.0)]);
            line(&[(5.0, 5.0), (11.0, 5.0)]);
        }
    }
}
