//! Buttons, links and tiles: what is clicked.

use drawing::Palette;
use egui::{Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, Vec2, WidgetInfo, vec2};

use super::words::{put, shortened};
use super::{focus_ring, name};
use crate::icons::{self, Icon};
use crate::theme::{self, RADIUS, colour};

/// Height of a button.
pub(crate) const BUTTON: f32 = 32.0;

/// What a tile takes beside its word.
pub(crate) const TILE: f32 = 32.0;

/// A button with an icon and a word; filled and edged in pick where it is on.
pub(crate) fn button(ui: &mut Ui, icon: Icon, label: &str, on: bool, p: &Palette) -> Response {
    let text = ui.painter().layout_no_wrap(label.to_owned(), theme::medium(13.0), colour(p.ink));
    let size = vec2(8.0 + 16.0 + 7.0 + text.size().x + 10.0, BUTTON);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, on, label));
    button_back(ui, rect, &response, on, p);
    let painter = ui.painter();
    icons::icon(painter, Rect::from_min_size(rect.min + vec2(8.0, 8.0), Vec2::splat(16.0)), icon, colour(p.ink));
    painter.galley(rect.min + vec2(31.0, (BUTTON - text.size().y) / 2.0), text, colour(p.ink));
    focus_ring(ui, &response, p);
    response.on_hover_cursor(egui::CursorIcon::PointingHand)
}

/// The same with its icon alone, where there is no room for the word; it shows when the pointer rests on it.
pub(crate) fn bare_button(ui: &mut Ui, icon: Icon, label: &str, on: bool, p: &Palette) -> Response {
    let (rect, response) = ui.allocate_exact_size(Vec2::splat(BUTTON), Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, on, label));
    button_back(ui, rect, &response, on, p);
    icons::icon(ui.painter(), Rect::from_center_size(rect.center(), Vec2::splat(16.0)), icon, colour(p.ink));
    focus_ring(ui, &response, p);
    response.on_hover_cursor(egui::CursorIcon::PointingHand).on_hover_text(label)
}

/// One of several buttons of equal width, with an icon and a word; filled and edged in pick where it is on.
pub(crate) fn tile(ui: &mut Ui, icon: Icon, label: &str, on: bool, wide: f32, p: &Palette) -> Response {
    let (rect, response) = ui.allocate_exact_size(vec2(wide, BUTTON), Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, on, label));
    button_back(ui, rect, &response, on, p);
    let ink = colour(if on { p.pick } else { p.ink });
    icons::icon(ui.painter(), Rect::from_min_size(rect.min + vec2(7.0, 8.0), Vec2::splat(16.0)), icon, ink);
    let text = shortened(ui, label, theme::medium(13.0), colour(p.ink), wide - TILE);
    ui.painter().galley(rect.min + vec2(29.0, (BUTTON - text.size().y) / 2.0), text, colour(p.ink));
    focus_ring(ui, &response, p);
    response.on_hover_cursor(egui::CursorIcon::PointingHand)
}

/// A button with a word alone; filled and edged in pick where it is the first choice.
pub(crate) fn word_button(ui: &mut Ui, label: &str, first: bool, p: &Palette) -> Response {
    let text = put(ui, label, theme::medium(13.0), colour(p.ink));
    let (rect, response) = ui.allocate_exact_size(vec2(text.size().x + 24.0, BUTTON), Sense::click());
    name(&response, Role::Button, label);
    button_back(ui, rect, &response, first, p);
    ui.painter().galley(rect.center() - text.size() / 2.0, text, colour(p.ink));
    focus_ring(ui, &response, p);
    response.on_hover_cursor(egui::CursorIcon::PointingHand)
}

/// One of several words, of which one holds.
pub(crate) fn choice(ui: &mut Ui, label: &str, on: bool, p: &Palette) -> Response {
    let text = put(ui, label, if on { theme::semi_bold(13.0) } else { theme::regular(13.0) }, colour(p.ink));
    let (rect, response) = ui.allocate_exact_size(vec2(text.size().x + 20.0, 24.0), Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, on, label));
    button_back(ui, rect, &response, on, p);
    ui.painter().galley(rect.center() - text.size() / 2.0, text, colour(p.ink));
    focus_ring(ui, &response, p);
    response.on_hover_cursor(egui::CursorIcon::PointingHand)
}

/// A button that is an icon alone; its name shows when the pointer rests on it.
pub(crate) fn icon_button(ui: &mut Ui, icon: Icon, label: &str, enabled: bool, framed: bool, p: &Palette) -> Response {
    let side = if framed { 24.0 } else { BUTTON };
    let sense = if enabled { Sense::click() } else { Sense::hover() };
    icon_sized(ui, icon, label, Vec2::splat(side), sense, framed, p)
}

/// A button inside a field, for the hand alone: the keyboard passes it by, since the field answers to keys.
pub(crate) fn icon_in_field(ui: &mut Ui, icon: Icon, label: &str, p: &Palette) -> Response {
    icon_sized(ui, icon, label, Vec2::splat(BUTTON), Sense::CLICK, false, p)
}

/// One of a row of small buttons with an icon alone, close beside each other.
pub(crate) fn icon_close(ui: &mut Ui, icon: Icon, label: &str, wide: f32, p: &Palette) -> Response {
    icon_sized(ui, icon, label, vec2(wide, BUTTON), Sense::click(), false, p)
}

fn icon_sized(ui: &mut Ui, icon: Icon, label: &str, size: Vec2, sense: Sense, framed: bool, p: &Palette) -> Response {
    let enabled = sense.senses_click();
    let (rect, response) = ui.allocate_exact_size(size, sense);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, enabled, label));
    if framed {
        button_back(ui, rect, &response, false, p);
    } else if enabled && response.hovered() {
        ui.painter().rect_filled(rect, RADIUS, theme::thinned(p.rule, 0.18));
    }
    let ink = if enabled { colour(p.ink) } else { theme::thinned(p.ink2, 0.6) };
    icons::icon(ui.painter(), rect, icon, ink);
    focus_ring(ui, &response, p);
    response.on_hover_text(label)
}

fn button_back(ui: &Ui, rect: Rect, response: &Response, on: bool, p: &Palette) {
    let (fill, edge) = if on {
        (p.picked_row, Stroke::new(1.5, colour(p.pick)))
    } else if response.is_pointer_button_down_on() {
        (p.picked_row, Stroke::new(1.0, colour(p.ink)))
    } else if response.hovered() {
        (p.paper, Stroke::new(1.0, colour(p.ink)))
    } else {
        (p.sheet, Stroke::new(1.0, colour(p.rule)))
    };
    ui.painter().rect(rect, RADIUS, colour(fill), edge, StrokeKind::Inside);
}

/// Words that do something when clicked.
pub(crate) fn link(ui: &mut Ui, label: &str, p: &Palette) -> Response {
    let text = ui.painter().layout(label.to_owned(), theme::medium(13.0), colour(p.pick), ui.available_width());
    let (rect, response) = ui.allocate_exact_size(text.size() + vec2(0.0, 2.0), Sense::click());
    name(&response, Role::Link, label);
    let ends: Vec<(f32, f32)> = text.rows.iter().map(|row| (row.pos.x + row.size.x, row.pos.y + row.size.y)).collect();
    ui.painter().galley(rect.min, text, colour(p.pick));
    let width = if response.hovered() { 1.5 } else { 1.0 };
    for (right, below) in ends {
        let y = rect.top() + below + 0.5;
        ui.painter().hline(rect.left()..=rect.left() + right, y, Stroke::new(width, colour(p.pick)));
    }
    focus_ring(ui, &response, p);
    response.on_hover_cursor(egui::CursorIcon::PointingHand)
}
