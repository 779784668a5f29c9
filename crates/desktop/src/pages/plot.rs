//! What the small plots beside the map share: a frame with hairlines and figures, lines, dots, names where they run.

use egui::{Align2, Rect, Sense, Stroke, Ui, UiBuilder, WidgetInfo, pos2, vec2};
use egui_plot::{Line, LineStyle, MarkerShape, Plot, PlotPoints, PlotUi, Points};

use super::Desk;
use crate::theme::{self, colour};

/// Height of a plot, room for the figures at its left, for the names at its right, and for what stands below.
const TALL: f32 = 150.0;
const LEFT: f32 = 46.0;
pub(super) const RIGHT: f32 = 76.0;
const BELOW: f32 = 18.0;
/// Width of a kept set-up's line before its name.
pub(super) const KEPT_SAMPLE: f32 = 34.0;
/// Names stand no nearer to one another than this, points.
const NAME_TALL: f32 = 13.0;

/// A plot's frame: what is plotted where.
pub(super) struct Frame {
    pub(super) rect: Rect,
    pub(super) x: (f64, f64),
    pub(super) y: (f64, f64),
}

impl Frame {
    pub(super) fn x_of(&self, x: f64) -> f32 {
        self.rect.left() + self.rect.width() * ((x - self.x.0) / (self.x.1 - self.x.0)) as f32
    }

    pub(super) fn y_of(&self, y: f64) -> f32 {
        self.rect.bottom() - self.rect.height() * ((y - self.y.0) / (self.y.1 - self.y.0)) as f32
    }
}

/// A name at the right end of a line.
pub(super) struct Name {
    pub(super) at: f64,
    pub(super) text: String,
    pub(super) loud: bool,
}

/// A range about some values whose ends are round in the unit that is shown.
pub(super) fn round_range(values: impl Iterator<Item = f64>, unit: f64) -> (f64, f64) {
    let (low, high) =
        values.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)));
    let step = round_step((high - low).max(high.abs() * 0.02).max(1e-9), unit);
    let (low, high) = ((low / step).floor() * step, (high / step).ceil() * step);
    if high > low { (low, high) } else { (low, low + step) }
}

/// A step that divides a range into two to five, round in a unit.
fn round_step(range: f64, unit: f64) -> f64 {
    let power = 10_f64.powf((range / unit / 4.0).log10().floor()) * unit;
    [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|times| times * power)
        .find(|step| range / step <= 4.0)
        .unwrap_or(power * 10.0)
}

/// Decimals that tell neighbouring ticks of a step apart: 0 for 1, 1 for 0.5, 2 for 0.25.
pub(crate) fn decimals(step: f64) -> usize {
    (0..6)
        .find(|&decimals| {
            let times = step * 10_f64.powf(decimals as f64);
            (times - times.round()).abs() < 1e-6 * times.abs()
        })
        .unwrap_or(6)
}

/// Makes room for a plot, with hairlines, round in a unit, and the figure at each with the decimals that the step needs.
pub(super) fn frame(
    ui: &mut Ui,
    desk: &Desk<'_>,
    name: &str,
    x: (f64, f64),
    y: (f64, f64),
    unit: f64,
    figure: impl Fn(f64, usize) -> String,
) -> Frame {
    let p = desk.p;
    ui.add_space(10.0);
    let (all, response) = ui.allocate_exact_size(vec2(ui.available_width(), TALL), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(egui::Role::Image, true, name));
    let rect = Rect::from_min_max(all.min + vec2(LEFT, 6.0), all.max - vec2(RIGHT, BELOW));
    let frame = Frame { rect, x, y };
    let step = round_step(y.1 - y.0, unit);
    let decimals = decimals(step / unit);
    let mut at = y.0;
    while at <= y.1 + step * 1e-6 {
        let height = frame.y_of(at);
        ui.painter().hline(rect.x_range(), height, Stroke::new(1.0, colour(p.hairline)));
        let place = pos2(rect.left() - 8.0, height);
        ui.painter().text(place, Align2::RIGHT_CENTER, figure(at, decimals), theme::regular(11.0), colour(p.ink2));
        at += step;
    }
    frame
}

/// A plot that is only looked at: no axes, no ground of its own, nothing to drag or zoom.
pub(crate) fn bare(id: &str, rect: Rect) -> Plot<'static> {
    Plot::new(id)
        .width(rect.width())
        .height(rect.height())
        .show_axes(false)
        .show_background(false)
        .allow_zoom(false)
        .allow_drag(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .allow_double_click_reset(false)
        .show_x(false)
        .show_y(false)
        .show_crosshair(false)
        .sense(Sense::hover())
        .set_margin_fraction(egui::Vec2::ZERO)
}

pub(super) fn plot(ui: &mut Ui, id: &str, frame: &Frame, add: impl FnOnce(&mut PlotUi<'_>)) {
    let mut inside = ui.new_child(UiBuilder::new().id_salt(id).max_rect(frame.rect));
    bare(id, frame.rect).show_grid(false).show(&mut inside, |plot| {
        plot.set_plot_bounds_x(frame.x.0..=frame.x.1);
        plot.set_plot_bounds_y(frame.y.0..=frame.y.1);
        add(plot);
    });
}

pub(super) fn line(name: &str, points: Vec<[f64; 2]>) -> Line<'static> {
    Line::new(name.to_owned(), PlotPoints::from(points)).allow_hover(false)
}

/// The pen of a kept set-up by its number, from 0: one colour, dashes that grow.
pub(crate) fn kept_pen(number: usize, p: &drawing::Palette) -> (Stroke, LineStyle) {
    (Stroke::new(1.75, colour(p.ghost)), LineStyle::Dashed { length: kept_dash(number) })
}

/// Length of its dashes, points.
fn kept_dash(number: usize) -> f32 {
    4.0 + 5.0 * number as f32
}

/// A piece of that line, to stand before the set-up's name.
pub(super) fn kept_sample(ui: &Ui, at: egui::Pos2, number: usize, p: &drawing::Palette) {
    let dash = kept_dash(number);
    let ends = [at, at + vec2(KEPT_SAMPLE, 0.0)];
    ui.painter().extend(egui::Shape::dashed_line(&ends, kept_pen(number, p).0, dash, dash * 0.618));
}

/// Open dots.
pub(super) fn dots(name: &str, points: Vec<[f64; 2]>, p: &drawing::Palette) -> Points<'static> {
    Points::new(name.to_owned(), PlotPoints::from(points))
        .shape(MarkerShape::Circle)
        .radius(3.5)
        .filled(false)
        .color(colour(p.ink))
        .allow_hover(false)
}

/// Names at the lines' right ends, moved apart where they would overlap.
pub(super) fn name_lines(ui: &Ui, desk: &Desk<'_>, frame: &Frame, mut names: Vec<Name>) {
    let p = desk.p;
    names.sort_by(|one, other| other.at.total_cmp(&one.at));
    let mut least = f32::NEG_INFINITY;
    let mut places: Vec<f32> = names
        .iter()
        .map(|name| {
            let y = frame.y_of(name.at).max(least);
            least = y + NAME_TALL;
            y
        })
        .collect();
    // What was pushed below the plot moves all above it up.
    let mut most = frame.rect.bottom() + 4.0;
    for y in places.iter_mut().rev() {
        *y = y.min(most);
        most = *y - NAME_TALL;
    }
    for (name, y) in names.iter().zip(places) {
        let (font, ink) = if name.loud { (theme::semi_bold(11.0), p.ghost) } else { (theme::regular(11.0), p.ink2) };
        // One that would run off the page ends over its line.
        let room = ui.clip_rect().right() - frame.rect.right() - 8.0;
        if crate::kit::width(ui, &name.text, font.clone()) <= room {
            ui.painter().text(pos2(frame.rect.right() + 8.0, y), Align2::LEFT_CENTER, &name.text, font, colour(ink));
        } else {
            let at = pos2(frame.rect.right() + RIGHT, y - 3.0);
            let galley = crate::kit::shortened(ui, &name.text, font, colour(ink), frame.rect.width());
            ui.painter().galley(at - vec2(galley.size().x, galley.size().y), galley, colour(ink));
        }
    }
}

pub(super) fn below(ui: &Ui, desk: &Desk<'_>, frame: &Frame, x: f64, text: &str, anchor: Align2, here: bool) {
    let p = desk.p;
    let (font, ink) = if here { (theme::semi_bold(11.0), p.ink) } else { (theme::regular(11.0), p.ink2) };
    ui.painter().text(pos2(frame.x_of(x), frame.rect.bottom() + 5.0), anchor, text, font, colour(ink));
}

#[cfg(test)]
mod tests {
    use super::{decimals, round_step};

    #[test]
    fn a_tick_has_the_decimals_that_its_step_needs() {
        let of = |range: f64| {
            let step = round_step(range, 1.0);
            (step, decimals(step))
        };
        assert_eq!([of(2.0), of(4.0), of(0.2), of(900.0)], [(0.5, 1), (1.0, 0), (0.05, 2), (500.0, 0)]);
        assert_eq!([decimals(2.5), decimals(0.25), decimals(0.1 + 0.2)], [1, 2, 1]);
    }
}
