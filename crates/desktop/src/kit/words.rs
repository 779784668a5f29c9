//! Words on a page: its title, its sections, prose, and words that are cut off or measured.

use std::sync::Arc;

use drawing::Palette;
use egui::text::LayoutJob;
use egui::{
    Align2, Color32, FontId, Galley, Id, Pos2, Rect, RectAlign, Response, Role, Sense, Stroke, Tooltip, Ui, pos2, vec2,
};

use super::{ROW, name};
use crate::theme::{self, colour};

/// A page's title with a word at its right, and its sentence.
pub(crate) fn title(ui: &mut Ui, title: &str, aside: &str, sentence: &str, p: &Palette) {
    let wide = ui.available_width();
    let aside_wide = put(ui, aside, theme::regular(13.0), colour(p.ink2)).size().x;
    let text = ui.painter().layout(
        title.to_owned(),
        theme::semi_bold(20.0),
        colour(p.ink),
        wide - if aside.is_empty() { 0.0 } else { aside_wide + 12.0 },
    );
    let (rect, response) = ui.allocate_exact_size(vec2(wide, text.size().y), Sense::hover());
    name(&response, Role::Heading, title);
    // The word at the right stands on the title's first line.
    let first = text.rows.first().map_or(26.0, |row| row.size.y);
    ui.painter().galley(rect.min, text, colour(p.ink));
    if !aside.is_empty() {
        let at = pos2(rect.right(), rect.top() + first - 4.0);
        ui.painter().text(at, Align2::RIGHT_BOTTOM, aside, theme::regular(13.0), colour(p.ink2));
    }
    if !sentence.is_empty() {
        ui.add_space(4.0);
        prose(ui, sentence, theme::regular(13.0), colour(p.ink2));
    }
}

/// A section's head with a word at its right.
pub(crate) fn section(ui: &mut Ui, head: &str, aside: &str, p: &Palette) -> Response {
    let wide = ui.available_width();
    let galley = ui.painter().layout(head.to_owned(), theme::semi_bold(13.0), colour(p.ink), wide);
    let tall = if galley.rows.len() > 1 { galley.size().y } else { 20.0 };
    let (rect, response) = ui.allocate_exact_size(vec2(wide, tall), Sense::hover());
    name(&response, Role::Heading, head);
    let head = galley;
    let text = put(ui, aside, theme::regular(12.0), colour(p.ink2));
    let beside = text.size().x <= rect.width() - head.size().x - 12.0;
    let middle = |galley: &Galley| rect.center().y - galley.size().y / 2.0;
    let at = pos2(rect.right() - text.size().x, middle(&text));
    told(ui, &response);
    ui.painter().galley(pos2(rect.left(), middle(&head)), head, colour(p.ink));
    if beside {
        ui.painter().galley(at, text, colour(p.ink2));
    } else {
        prose(ui, aside, theme::regular(12.0), colour(p.ink2));
    }
    response
}

/// A line under a head, over rows.
pub(crate) fn rule(ui: &mut Ui, p: &Palette) {
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 5.0), Sense::hover());
    ui.painter().hline(rect.x_range(), rect.center().y + 2.0, Stroke::new(1.0, colour(p.rule)));
}

/// Words that wrap, as one label.
pub(crate) fn prose(ui: &mut Ui, text: &str, font: FontId, ink: Color32) -> Response {
    let response = ui.add(egui::Label::new(egui::RichText::new(text).font(font).color(ink)).wrap());
    told(ui, &response);
    response
}

pub(super) fn put(ui: &Ui, text: &str, font: FontId, ink: Color32) -> Arc<Galley> {
    ui.painter().layout_no_wrap(text.to_owned(), font, ink)
}

/// How wide words are on one line.
pub(crate) fn width(ui: &Ui, text: &str, font: FontId) -> f32 {
    put(ui, text, font, Color32::PLACEHOLDER).size().x
}

/// Words on one line, cut off with an ellipsis where they find no room.
pub(crate) fn shortened(ui: &Ui, text: &str, font: FontId, ink: Color32, room: f32) -> Arc<Galley> {
    let mut job = LayoutJob::simple_singleline(text.to_owned(), font, ink);
    job.wrap = egui::text::TextWrapping::truncate_at_width(room.max(0.0));
    ui.painter().layout_job(job)
}

/// Paints words in a row or cell.
pub(crate) fn cell(ui: &Ui, at: Pos2, anchor: Align2, text: &str, font: FontId, ink: Color32) -> Rect {
    // Far out of sight nothing is laid out.
    if !ui.clip_rect().y_range().expand(ROW).contains(at.y) {
        return Rect::from_pos(at);
    }
    ui.painter().text(at, anchor, text, font, ink)
}

/// What the figures that follow are, their unit and where they come from; `None` where none follow.
pub(crate) fn tell(ui: &Ui, about: Option<&'static str>) {
    ui.data_mut(|data| data.insert_temp(telling(), about));
}

/// Says that while the pointer rests on one of them.
pub(crate) fn told(ui: &Ui, response: &Response) {
    if response.hovered()
        && let Some(about) = ui.data(|data| data.get_temp::<Option<&'static str>>(telling())).flatten()
    {
        explain(ui, response, about);
    }
}

fn telling() -> Id {
    Id::unique("what figures are about")
}

/// Says more of something while the pointer rests on it: beside the page, so that nothing on it is covered.
pub(crate) fn explain(ui: &Ui, response: &Response, text: &str) {
    let mut tooltip = Tooltip::for_enabled(response);
    let beside = Rect::from_x_y_ranges(ui.clip_rect().left()..=response.rect.right(), response.rect.y_range());
    tooltip.popup = tooltip.popup.anchor(beside).align(RectAlign::LEFT_START).align_alternatives(&BESIDE);
    tooltip.show(|ui| ui.label(text));
}

/// Where what is said of something stands where there is no room for it at the left.
const BESIDE: [RectAlign; 3] = [RectAlign::LEFT_END, RectAlign::TOP_START, RectAlign::BOTTOM_START];
