//! Rows: what can be picked, what only tells, and findings.

use drawing::Palette;
use egui::text::LayoutJob;
use egui::{Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use words::Words;
use words::texts::Window as Text;

use super::words::{explain, put, told};
use super::{focus_ring, name};
use crate::icons;
use crate::theme::{self, colour};

/// Height of a row.
pub(crate) const ROW: f32 = 28.0;

/// A row that can be picked; `label` is what a screen reader says. Returns where to paint, and the response.
pub(crate) fn row(
    ui: &mut Ui,
    id: egui::Id,
    picked: bool,
    hovered: bool,
    label: &str,
    p: &Palette,
) -> (Rect, Response) {
    tall_row(ui, id, (picked, hovered), label, ROW, p)
}

/// The same, of that height.
pub(crate) fn tall_row(
    ui: &mut Ui,
    id: egui::Id,
    (picked, hovered): (bool, bool),
    label: &str,
    tall: f32,
    p: &Palette,
) -> (Rect, Response) {
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), tall), Sense::hover());
    let reach = rect.expand2(vec2(8.0, 0.0));
    let response = ui.interact(reach, id, Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::Row, true, picked, label));
    if picked {
        ui.painter().rect_filled(reach, 0.0, colour(p.picked_row));
    }
    ui.painter().hline(rect.x_range(), rect.bottom() - 0.5, Stroke::new(1.0, colour(p.hairline)));
    if (hovered || response.hovered()) && !picked {
        ui.painter().rect_stroke(reach.shrink(0.75), 0.0, Stroke::new(1.5, colour(p.ink)), StrokeKind::Inside);
    }
    focus_ring(ui, &response, p);
    told(ui, &response);
    (rect, response.on_hover_cursor(egui::CursorIcon::PointingHand))
}

/// A row that only tells: words at the left, words at the right, or below them where both find no room on one line.
pub(crate) fn fact(ui: &mut Ui, left: &str, right: &str, p: &Palette) -> Rect {
    let wide = ui.available_width();
    let said = format!("{left}: {right}");
    let left = put(ui, left, theme::regular(13.0), colour(p.ink2));
    let mut job = LayoutJob::simple(right.to_owned(), theme::regular(13.0), colour(p.ink), wide);
    job.halign = egui::Align::RIGHT;
    let right = ui.painter().layout_job(job);
    let beside = left.size().x + 12.0 + right.size().x <= wide;
    let tall = if beside { ROW } else { ROW + right.size().y };
    let (rect, response) = ui.allocate_exact_size(vec2(wide, tall), Sense::hover());
    name(&response, Role::Label, &said);
    told(ui, &response);
    if !ui.is_rect_visible(rect) {
        return rect;
    }
    ui.painter().hline(rect.x_range(), rect.bottom() - 0.5, Stroke::new(1.0, colour(p.hairline)));
    let middle = rect.top() + ROW / 2.0;
    let below = if beside { middle - right.size().y / 2.0 } else { rect.top() + ROW - 5.0 };
    ui.painter().galley(pos2(rect.left(), middle - left.size().y / 2.0), left, colour(p.ink2));
    ui.painter().galley(pos2(rect.right(), below), right, colour(p.ink));
    rect
}

/// A finding as it is said: its weight, its sentence, what mends it.
pub(crate) fn said_finding(finding: &care::Finding, words: Words) -> String {
    let weight = words.text(match finding.severity {
        care::Severity::Danger => Text::Danger,
        care::Severity::Warning => Text::Warning,
        care::Severity::Note => Text::Note,
    });
    let label = format!("{weight}: {}", finding.message);
    if finding.mend.is_empty() { label } else { format!("{label} {}", finding.mend) }
}

/// A finding: its tag, its sentence, what mends it. A click leads to where it is mended, if it `leads` anywhere.
pub(crate) fn finding(
    ui: &mut Ui,
    id: egui::Id,
    finding: &care::Finding,
    (picked, leads): (bool, bool),
    words: Words,
    p: &Palette,
) -> Response {
    let wide = ui.available_width() - 28.0;
    let sentence = ui.painter().layout(finding.message.clone(), theme::regular(13.0), colour(p.ink), wide);
    let mend = (!finding.mend.is_empty())
        .then(|| ui.painter().layout(format!("→ {}", finding.mend), theme::medium(13.0), colour(p.ink), wide));
    let tall = sentence.size().y + mend.as_ref().map_or(0.0, |mend| mend.size().y + 2.0);
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), tall.max(icons::TAG.y)), Sense::hover());
    let reach = rect.expand2(vec2(8.0, 5.0));
    let sense = if leads { Sense::click() } else { Sense::hover() };
    let response = ui.interact(reach, id, sense);
    let role = if leads { Role::Button } else { Role::Label };
    response.widget_info(|| WidgetInfo::selected(role, true, picked, said_finding(finding, words)));
    if picked {
        ui.painter().rect_filled(reach, 0.0, colour(p.picked_row));
    } else if response.hovered() && leads {
        ui.painter().rect_stroke(reach, 0.0, Stroke::new(1.5, colour(p.ink)), StrokeKind::Inside);
    }
    icons::tag(ui.painter(), rect.min, finding.severity, p);
    let left = rect.left() + 28.0;
    let below = rect.top() + sentence.size().y + 2.0;
    ui.painter().galley(pos2(left, rect.top()), sentence, colour(p.ink));
    if let Some(mend) = mend {
        ui.painter().galley(pos2(left, below), mend, colour(p.ink));
    }
    focus_ring(ui, &response, p);
    let source = words.source(finding.source);
    let shown = if finding.why.is_empty() { source.to_owned() } else { format!("{}\n{source}", finding.why) };
    explain(ui, &response, &shown);
    response
}
