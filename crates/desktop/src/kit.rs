//! The window's own few widgets, each with a name that a screen reader reads.
//!
//! Buttons are 32 high with icon and word; rows 28 with a hairline; sections are parted by space, never by
//! boxes. Keyboard focus is a ring of 2 in the pick colour with a gap of 2.

use std::sync::Arc;

use drawing::Palette;
use egui::text::LayoutJob;
use egui::{
    Align2, Color32, FontId, Galley, Painter, Pos2, Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, Vec2,
    WidgetInfo, pos2, vec2,
};

use words::texts::{About, Window as Text};
use words::{Message, Words};

use crate::icons::{self, Icon};
use crate::theme::{self, RADIUS, colour};

/// Height of a button.
pub(crate) const BUTTON: f32 = 32.0;
/// What a tile takes beside its word.
pub(crate) const TILE: f32 = 32.0;
/// Height of a row.
pub(crate) const ROW: f32 = 28.0;
/// Least space between two figures side by side.
const APART: f32 = 10.0;
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
    icon_sized(ui, icon, label, Vec2::splat(side), enabled, framed, p)
}

/// One of a row of small buttons with an icon alone, close beside each other.
pub(crate) fn icon_close(ui: &mut Ui, icon: Icon, label: &str, wide: f32, p: &Palette) -> Response {
    icon_sized(ui, icon, label, vec2(wide, BUTTON), true, false, p)
}

fn icon_sized(ui: &mut Ui, icon: Icon, label: &str, size: Vec2, enabled: bool, framed: bool, p: &Palette) -> Response {
    let sense = if enabled { Sense::click() } else { Sense::hover() };
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
    ui.add(egui::Label::new(egui::RichText::new(text).font(font).color(ink)).wrap())
}

fn put(ui: &Ui, text: &str, font: FontId, ink: Color32) -> Arc<Galley> {
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

/// A figure and its unit on one baseline, the unit smaller and in ink2.
pub(crate) struct Measure {
    figure: Arc<Galley>,
    unit: Option<Arc<Galley>>,
    gap: f32,
}

impl Measure {
    /// A figure in a font and ink, and its unit.
    pub(crate) fn new(ui: &Ui, figure: &str, unit: &str, font: FontId, ink: Color32, p: &Palette) -> Self {
        let gap = if font.size > 20.0 { 5.0 } else { 4.0 };
        let unit = (!unit.is_empty()).then(|| put(ui, unit, theme::regular(12.0), colour(p.ink2)));
        Self { figure: put(ui, figure, font, ink), unit, gap }
    }

    /// Width and height.
    pub(crate) fn size(&self) -> Vec2 {
        let unit = self.unit.as_ref().map_or(0.0, |unit| self.gap + unit.size().x);
        self.figure.size() + vec2(unit, 0.0)
    }

    /// Width of the figure alone.
    pub(crate) fn figure_width(&self) -> f32 {
        self.figure.size().x
    }

    /// Paints it with its upper left corner at a place.
    pub(crate) fn paint(&self, painter: &Painter, at: Pos2) {
        if let Some(unit) = &self.unit {
            let drop = baseline(&self.figure) - baseline(unit);
            painter.galley(at + vec2(self.figure.size().x + self.gap, drop), unit.clone(), Color32::PLACEHOLDER);
        }
        painter.galley(at, self.figure.clone(), Color32::PLACEHOLDER);
    }
}

/// Where the letters of a text stand, below its top.
fn baseline(galley: &Galley) -> f32 {
    galley.rows.first().map_or(0.0, |row| row.pos.y + row.glyphs.first().map_or(row.size.y, |glyph| glyph.pos.y))
}

/// A large figure, its unit, and what it is.
pub(crate) struct Figure<'a> {
    /// The figure.
    pub(crate) value: &'a str,
    /// Its unit.
    pub(crate) unit: &'a str,
    /// What it is.
    pub(crate) label: &'a str,
    /// What it is, its unit and where it comes from, in a sentence or two.
    pub(crate) about: &'a str,
    /// Whether it rests on something assumed.
    pub(crate) assumed: bool,
}

impl<'a> Figure<'a> {
    /// One that rests on nothing assumed: the figure and its unit, and the texts that tell what it is.
    pub(crate) fn told(words: Words, [value, unit]: [&'a str; 2], label: impl Message, about: About) -> Self {
        Self { value, unit, label: words.text(label), about: words.text(about), assumed: false }
    }
}

/// Large figures side by side, in columns of equal width.
pub(crate) fn figures(ui: &mut Ui, figures: &[Figure<'_>], p: &Palette) {
    let wide = ui.available_width();
    let galleys: Vec<_> = figures
        .iter()
        .map(|one| Measure::new(ui, one.value, one.unit, theme::medium(24.0), colour(p.ink), p))
        .collect();
    let label_width = |ui: &Ui, one: &Figure<'_>| put(ui, one.label, theme::regular(11.0), colour(p.ink2)).size().x;
    let needs: Vec<f32> =
        figures.iter().zip(&galleys).map(|(one, galley)| galley.size().x.max(label_width(ui, one))).collect();
    // Long words take two lines of figures.
    let count = figures.len();
    if count > 1 && needs.iter().sum::<f32>() + APART * (count - 1) as f32 > wide {
        let (first, rest) = figures.split_at(count.div_ceil(2));
        self::figures(ui, first, p);
        ui.add_space(8.0);
        self::figures(ui, rest, p);
        return;
    }
    let (rect, _) = ui.allocate_exact_size(vec2(wide, 46.0), Sense::hover());
    // Columns start where an even division says, or as close after it as long figures and labels allow.
    let even = wide / figures.len().max(1) as f32;
    let slack: f32 = wide - needs.iter().sum::<f32>();
    let tight = needs.iter().any(|need| need + 8.0 > even);
    let mut left = rect.left();
    for (index, (one, galley)) in figures.iter().zip(galleys).enumerate() {
        let column =
            Rect::from_min_size(pos2(left, rect.top()), vec2(if tight { needs[index] } else { even }, rect.height()));
        let response = ui.interact(column, ui.scope_id().with(("figure", index, one.label)), Sense::hover());
        name(&response, Role::Label, format!("{} {} {}", one.value, one.unit, one.label).trim());
        response.on_hover_text(one.about);
        left += if tight { needs[index] + slack / figures.len().saturating_sub(1).max(1) as f32 } else { even };
        galley.paint(ui.painter(), column.min);
        if one.assumed {
            let right = column.left() + galley.figure_width();
            dots(ui.painter(), column.left(), right, column.top() + galley.size().y - 2.0, p);
        }
        ui.painter().text(
            column.min + vec2(0.0, 31.0),
            Align2::LEFT_TOP,
            one.label,
            theme::regular(11.0),
            colour(p.ink2),
        );
    }
}

/// The row of dots under what is assumed.
pub(crate) fn dots(painter: &Painter, left: f32, right: f32, y: f32, p: &Palette) {
    let mut x = left + 1.0;
    while x <= right {
        painter.circle_filled(pos2(x, y), 0.85, colour(p.ink2));
        x += 4.5;
    }
}

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

/// Paints words in a row or cell.
pub(crate) fn cell(ui: &Ui, at: Pos2, anchor: Align2, text: &str, font: FontId, ink: Color32) -> Rect {
    // Far out of sight nothing is laid out.
    if !ui.clip_rect().y_range().expand(ROW).contains(at.y) {
        return Rect::from_pos(at);
    }
    ui.painter().text(at, anchor, text, font, ink)
}

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
        let here = (stop.place - place).abs() <= nearest;
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

/// A finding: its tag, its sentence, what mends it. A click picks its place.
pub(crate) fn finding(
    ui: &mut Ui,
    id: egui::Id,
    finding: &care::Finding,
    picked: bool,
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
    let sense = if finding.at.is_empty() { Sense::hover() } else { Sense::click() };
    let response = ui.interact(reach, id, sense);
    let role = if finding.at.is_empty() { Role::Label } else { Role::Button };
    response.widget_info(|| {
        let weight = words.text(match finding.severity {
            care::Severity::Danger => Text::Danger,
            care::Severity::Warning => Text::Warning,
            care::Severity::Note => Text::Note,
        });
        let mut label = format!("{weight}: {}", finding.message);
        if !finding.mend.is_empty() {
            label = format!("{label} {}", finding.mend);
        }
        WidgetInfo::selected(role, true, picked, label)
    });
    if picked {
        ui.painter().rect_filled(reach, 0.0, colour(p.picked_row));
    } else if response.hovered() && !finding.at.is_empty() {
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
    response.on_hover_text(shown)
}
