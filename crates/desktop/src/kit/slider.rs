//! A slider with named stops.

use drawing::Palette;
use egui::{Align2, Rect, Response, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};

use super::focus_ring;
use super::words::put;
use crate::theme::{self, colour};

/// So near to a stop the slider is at it.
const AT_STOP: f64 = 0.08;

/// A stop of a slider: its place from 0 to 1, and its name.
pub(crate) struct Stop<'a> {
    /// Place, 0 to 1.
    pub(crate) place: f64,
    /// Name.
    pub(crate) name: &'a str,
}

/// A slider with named stops; returns its response and, while it is moved, its new place from 0 to 1.
pub(crate) fn slider(
    ui: &mut Ui,
    label: &str,
    value: &str,
    place: f64,
    stops: &[Stop<'_>],
    p: &Palette,
) -> (Response, Option<f64>) {
    let wide = ui.available_width();
    // Names that would run into each other stand on two lines by turns.
    let names: Vec<_> = stops.iter().map(|stop| put(ui, stop.name, theme::semi_bold(11.0), colour(p.ink))).collect();
    let spans: Vec<[f32; 2]> = stops
        .iter()
        .zip(&names)
        .enumerate()
        .map(|(index, (stop, name))| {
            let (at, size) = (4.0 + (wide - 8.0) * stop.place as f32, name.size().x);
            let left = match index {
                0 => 0.0,
                last if last + 1 == stops.len() => wide - size,
                _ => at - size / 2.0,
            };
            [left, left + size]
        })
        .collect();
    let by_turns = spans.windows(2).any(|two| two[1][0] < two[0][1] + 4.0);
    let tall = if by_turns { 58.0 } else { 44.0 };
    let (rect, response) = ui.allocate_exact_size(vec2(wide, tall), Sense::click_and_drag());
    response.widget_info(|| WidgetInfo {
        current_text_value: Some(value.to_owned()),
        ..WidgetInfo::slider(true, place, label)
    });
    let rail = rect.shrink2(vec2(4.0, 0.0));
    let x_of = |place: f64| rail.left() + rail.width() * place as f32;
    let y = rect.top() + 12.0;
    let painter = ui.painter();
    painter.hline(rect.x_range(), y, Stroke::new(3.0, colour(p.hairline)));
    painter.hline(rect.left()..=x_of(place), y, Stroke::new(3.0, colour(p.ink)));
    let nearest = stops.iter().map(|stop| (stop.place - place).abs()).fold(f64::INFINITY, f64::min);
    for (index, stop) in stops.iter().enumerate() {
        let x = x_of(stop.place);
        let lower = if by_turns && index % 2 == 1 { 13.0 } else { 0.0 };
        painter.vline(x, y + 7.0..=y + 11.0 + lower, Stroke::new(1.0, colour(p.rule)));
        let (at, anchor) = match index {
            0 => (rect.left(), Align2::LEFT_TOP),
            last if last + 1 == stops.len() => (rect.right(), Align2::RIGHT_TOP),
            _ => (x, Align2::CENTER_TOP),
        };
        let off = (stop.place - place).abs();
        // Between two stops it is at neither.
        let here = off <= nearest && off <= AT_STOP;
        let (font, ink) = if here { (theme::semi_bold(11.0), p.ink) } else { (theme::regular(11.0), p.ink2) };
        painter.text(pos2(at, y + 14.0 + lower), anchor, stop.name, font, colour(ink));
    }
    let knob = Rect::from_center_size(pos2(x_of(place), y), vec2(8.0, 16.0));
    painter.rect_filled(knob, 0.0, colour(p.ink));
    if response.hovered() || response.dragged() {
        painter.rect_stroke(knob.expand(2.5), 0.0, Stroke::new(1.5, colour(p.pick)), StrokeKind::Middle);
    }
    focus_ring(ui, &response, p);
    let pointed = response.interact_pointer_pos().filter(|_| response.dragged() || response.clicked());
    let mut moved = pointed.map(|at| f64::from((at.x - rail.left()) / rail.width()).clamp(0.0, 1.0));
    if response.has_focus() {
        let filter = egui::EventFilter { horizontal_arrows: true, ..egui::EventFilter::default() };
        ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
        let step = ui.input(|input| {
            input.num_presses(egui::Key::ArrowRight) as f64 - input.num_presses(egui::Key::ArrowLeft) as f64
        });
        if step != 0.0 {
            moved = Some((place + step / 60.0).clamp(0.0, 1.0));
        }
    }
    (response.on_hover_cursor(egui::CursorIcon::ResizeHorizontal), moved)
}
