//! The window's own few widgets, each with a name that a screen reader reads.
//!
//! Buttons are 32 high with icon and word; rows 28 with a hairline; sections are parted by space, never by
//! boxes. Keyboard focus is a ring of 2 in the pick colour with a gap of 2.

mod buttons;
mod figures;
mod rows;
mod slider;
mod words;

use drawing::Palette;
use egui::{Response, Role, Stroke, StrokeKind, Ui, WidgetInfo};

pub(crate) use self::words::{cell, explain, prose, rule, section, shortened, tell, title, told, width};
pub(crate) use buttons::{
    BUTTON, TILE, bare_button, button, choice, icon_button, icon_close, icon_in_field, link, tile, word_button,
};
pub(crate) use figures::{Figure, Measure, dots, figures};
pub(crate) use rows::{ROW, fact, finding, row, said_finding, tall_row};
pub(crate) use slider::{Stop, slider};

use crate::theme::{RADIUS, colour};

/// Space between two sections.
pub(crate) const BETWEEN: f32 = 32.0;

/// Rings what has the keyboard's focus.
pub(crate) fn focus_ring(ui: &Ui, response: &Response, p: &Palette) {
    if response.has_focus() {
        let pen = Stroke::new(2.0, colour(p.pick));
        ui.painter().rect_stroke(response.rect.expand(3.0), RADIUS + 3, pen, StrokeKind::Middle);
    }
}

fn name(response: &Response, role: Role, label: &str) {
    response.widget_info(|| WidgetInfo::labeled(role, true, label));
}
