//! Small signs beside words: plates, kites, tags, the mark of the house.

use care::Severity;
use drawing::Palette;
use egui::{Color32, Painter, Pos2, Rect, Shape, Stroke, Vec2, pos2, vec2};

use crate::theme::{self, colour};

/// An outline drawn small, in a square about a place.
pub(crate) fn small_outline(painter: &Painter, middle: Pos2, side: f32, outline: &[plan::Point], pen: Stroke) {
    let range = |of: fn(&plan::Point) -> f64| {
        let (low, high) = geometry::span_m(outline.iter().map(of));
        (low.midpoint(high), high - low)
    };
    let ((east_m, wide_m), (north_m, tall_m)) = (range(|at| at.east_m), range(|at| at.north_m));
    let scale = f64::from(side) / wide_m.max(tall_m);
    if !scale.is_finite() {
        return;
    }
    let spot = |at: &plan::Point| {
        middle + vec2(((at.east_m - east_m) * scale) as f32, ((north_m - at.north_m) * scale) as f32)
    };
    painter.add(Shape::closed_line(outline.iter().map(spot).collect(), pen));
}

/// The mark of the house: four posts and the line between them, in a box of 24.
pub(crate) const MARK: [[f32; 2]; 4] = [[2.5, 18.5], [8.0, 6.5], [15.0, 17.0], [21.5, 5.5]];

/// Radius of a post of the mark.
pub(crate) const MARK_POST: f32 = 2.5;

/// Width of the mark's line.
pub(crate) const MARK_LINE: f32 = 2.25;

/// Paints the mark of the house with its upper left corner at a place.
pub(crate) fn mark(painter: &Painter, corner: Pos2, ink: Color32) {
    let points: Vec<Pos2> = MARK.iter().map(|&[x, y]| corner + vec2(x, y)).collect();
    for &post in &points {
        painter.circle_filled(post, MARK_POST, ink);
    }
    painter.add(Shape::line(points, Stroke::new(MARK_LINE, ink)));
}

/// A plate with its upper right corner cut, as an outline.
pub(crate) fn cut_plate(rect: Rect, cut: f32) -> Vec<Pos2> {
    vec![
        rect.left_top(),
        pos2(rect.right() - cut, rect.top()),
        pos2(rect.right(), rect.top() + cut),
        rect.right_bottom(),
        rect.left_bottom(),
    ]
}

/// The last post of a line that is open: what stands for an end where a corner has its number.
pub(crate) fn end_post(painter: &Painter, middle: Pos2, p: &Palette) {
    let pen = Stroke::new(1.75, colour(p.ink));
    painter.vline(middle.x, middle.y - 7.0..=middle.y + 7.0, pen);
    painter.hline(middle.x - 5.0..=middle.x + 5.0, middle.y - 7.0, pen);
}

/// Paints a corner's plate: its number, filled where it is picked.
pub(crate) fn number_plate(painter: &Painter, rect: Rect, number: &str, picked: bool, p: &Palette) {
    let (fill, edge, ink) = if picked { (p.pick, p.pick, p.sheet) } else { (p.sheet, p.ink, p.ink) };
    let plate = cut_plate(rect, 5.0);
    painter.add(Shape::convex_polygon(plate, colour(fill), Stroke::new(1.5, colour(edge))));
    let size = if number.len() > 2 { 10.0 } else { 12.0 };
    painter.text(rect.center(), egui::Align2::CENTER_CENTER, number, theme::semi_bold(size), colour(ink));
}

/// How a brace's kite is filled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kite {
    /// No kite: the corner stands.
    None,
    /// Open: a brace is advised.
    Advised,
    /// Filled: one is needed, or stands.
    Needed,
    /// Half filled: one stands and is too weak.
    Weak,
}

/// Paints a brace's kite, pointing right, filled as on the map.
pub(crate) fn kite(painter: &Painter, middle: Pos2, kite: Kite, p: &Palette) {
    let points =
        vec![middle + vec2(5.5, 0.0), middle + vec2(-1.5, 4.0), middle + vec2(-5.5, 0.0), middle + vec2(-1.5, -4.0)];
    let (fill, pen) = match kite {
        Kite::None => return,
        Kite::Advised | Kite::Weak => (Color32::TRANSPARENT, Stroke::new(1.25, colour(p.ink))),
        Kite::Needed => (colour(p.ink), Stroke::NONE),
    };
    if kite == Kite::Weak {
        painter.add(Shape::convex_polygon(points[..3].to_vec(), colour(p.ink), Stroke::NONE));
    }
    painter.add(Shape::convex_polygon(points, fill, pen));
}

/// Paints the map's sign of a post that goes over in the wind.
pub(crate) fn goes_over(painter: &Painter, middle: Pos2, p: &Palette) {
    for stroke in drawing::GOES_OVER {
        let ends = stroke.map(|[x, y]| middle + vec2(x as f32, y as f32));
        painter.line_segment(ends, Stroke::new(1.75, colour(p.ink)));
    }
}

/// Size of a finding's tag.
pub(crate) const TAG: Vec2 = vec2(14.0, 20.0);

/// Paints a finding's tag with its upper left corner at a place; it points down.
pub(crate) fn tag(painter: &Painter, corner: Pos2, severity: Severity, p: &Palette) {
    let rect = Rect::from_min_size(corner, TAG).shrink(0.75);
    let outline = vec![
        rect.left_top(),
        rect.right_top(),
        pos2(rect.right(), rect.bottom() - 5.5),
        pos2(rect.center().x, rect.bottom()),
        pos2(rect.left(), rect.bottom() - 5.5),
    ];
    // The two fills are alike in both themes, so the ink on them is too.
    let dark = drawing::Theme::Light.palette().ink;
    let (fill, edge, strokes) = match severity {
        Severity::Danger => (p.danger_fill, dark, 3),
        Severity::Warning => (p.warning_fill, dark, 2),
        Severity::Note => (p.sheet, p.pick, 1),
    };
    let edge = colour(edge);
    let outer = if severity == Severity::Note { edge } else { colour(p.ink) };
    painter.add(Shape::convex_polygon(outline, colour(fill), Stroke::new(1.5, outer)));
    let top = corner.y + 8.0 - 1.5 * (strokes - 1) as f32;
    for stroke in 0..strokes {
        let y = top + 3.0 * stroke as f32;
        painter.hline(corner.x + 4.0..=corner.x + 10.0, y, Stroke::new(1.25, edge));
    }
}

/// Paints a chevron that points down, for what lies below.
pub(crate) fn chevron(painter: &Painter, middle: Pos2, ink: Color32) {
    let points = vec![middle + vec2(-5.0, -2.5), middle + vec2(0.0, 2.5), middle + vec2(5.0, -2.5)];
    painter.add(Shape::line(points, Stroke::new(1.5, ink)));
}
