//! The circle that an earth lead reaches, drawn while a stake or the energizer is in the hand.

use std::f32::consts::TAU;

use egui::{Painter, Pos2, Rect, Shape, Stroke, vec2};
use plan::Point;
use words::texts::Damp as Text;

use crate::editor::Editor;
use crate::map_view::plate;
use crate::pen;
use crate::theme::colour;

/// Sides of the circle as it is drawn: at the size of a screen none is seen.
const SIDES: u16 = 180;

pub(crate) fn paint(painter: &Painter, editor: &Editor, rect: Rect, on_sheet: &impl Fn(Point) -> Pos2) {
    let Some(reach) = editor.earth_reach() else { return };
    let p = editor.theme().palette();
    let middle = on_sheet(reach.from);
    let round = (reach.lead_m * editor.view().px_per_m) as f32;
    // From so near that its rim is far off the screen there is nothing to see, and much to dash.
    if !(round.is_finite() && round < 8.0 * rect.width().max(rect.height())) {
        return;
    }
    let at = |side: u16| middle + egui::Vec2::angled(f32::from(side) / f32::from(SIDES) * TAU) * round;
    let ring: Vec<Pos2> = (0..=SIDES).map(at).collect();
    // A bed of the sheet's colour, so that it is seen on any picture.
    pen::bed(painter, editor, ring.clone(), 1.5);
    painter.extend(Shape::dashed_line(&ring, Stroke::new(1.5, colour(p.pick)), 8.0, 5.0));
    let (words, length) = (editor.words(), editor.words().length(reach.lead_m));
    let text = if reach.assumed {
        words.say(Text::ReachAssumed, &[("reach", &length)])
    } else {
        format!("{} {length}", words.text(words::texts::Store::EarthLead))
    };
    plate(painter, rect, middle + vec2(8.0, -round - 24.0), &text, p);
}
