//! Three small plots: ground by the proportion of a rectangle, by the count of nets, and by the minutes of setting up.
//!
//! Lines are named where they run; the keeper's own is solid, what is looked at is in the ghost's colour.

use egui::{Align2, Rect, Sense, Stroke, Ui, UiBuilder, WidgetInfo, pos2, vec2};
use egui_plot::{HLine, Line, LineStyle, MarkerShape, Plot, PlotPoints, PlotUi, Points, VLine};
use exchange::shapes;
use words::texts::Compare as Text;
use workup::candidates::{Family, Proportions, proportions};

use crate::pages::Desk;
use crate::theme::{self, colour};

/// Height of a plot, room for the figures at its left, for the names at its right, and for what stands below.
const TALL: f32 = 150.0;
const LEFT: f32 = 46.0;
const RIGHT: f32 = 76.0;
const BELOW: f32 = 18.0;
/// The longest rectangle that is plotted.
const LONGEST: f64 = 3.0;
/// Names stand no nearer to one another than this, points.
const NAME_TALL: f32 = 13.0;

/// A plot's frame: what is plotted where.
struct Frame {
    rect: Rect,
    x: (f64, f64),
    y: (f64, f64),
}

impl Frame {
    fn x_of(&self, x: f64) -> f32 {
        self.rect.left() + self.rect.width() * ((x - self.x.0) / (self.x.1 - self.x.0)) as f32
    }

    fn y_of(&self, y: f64) -> f32 {
        self.rect.bottom() - self.rect.height() * ((y - self.y.0) / (self.y.1 - self.y.0)) as f32
    }
}

/// A name at the right end of a line.
struct Name {
    at: f64,
    text: String,
    loud: bool,
}

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    if desk.editor.shapes().found().is_empty() {
        return;
    }
    by_proportion(ui, desk);
    by_nets(ui, desk);
    by_minutes(ui, desk);
}

/// Ground of the keeper's own run, square metres.
fn own_m2(desk: &Desk<'_>) -> Option<f64> {
    super::own(desk)?.area_m2
}

fn by_proportion(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let Some(first) = editor.shapes().found().iter().find(|one| one.wall.is_none()) else { return };
    let Proportions { curve, whole } = proportions(editor.plan(), &first.nets, LONGEST);
    let lines: Vec<(Family, f64)> = editor
        .shapes()
        .found()
        .iter()
        .filter(|one| one.wall.is_none() && !matches!(one.family, Family::Square | Family::Rectangle))
        .map(|one| (one.family, one.area_m2))
        .collect();
    let own = own_m2(desk);
    let values = lines.iter().map(|line| line.1).chain(own).chain(curve.iter().map(|at| at[1]));
    let y = round_range(values, words.area_unit_m2());
    let aside = words.text(Text::OpenGround);
    desk.section(ui, words.text(Text::GroundByProportion), aside);
    let frame = frame(ui, desk, words.text(Text::GroundByProportion), (1.0, LONGEST), y);
    let chosen = editor.shapes().chosen().map(|one| one.family);
    plot(ui, "ground by proportion", &frame, |plot| {
        plot.line(line("rectangle", curve).stroke(Stroke::new(1.75, colour(p.ink))));
        if let Some(own) = own {
            plot.hline(HLine::new("yours", own).stroke(Stroke::new(1.5, colour(p.ink))).allow_hover(false));
        }
        for &(family, area_m2) in &lines {
            let loud = chosen == Some(family);
            let pen = if loud { Stroke::new(2.0, colour(p.ghost)) } else { Stroke::new(1.25, colour(p.ink2)) };
            let style = if loud { LineStyle::Dashed { length: 7.0 } } else { LineStyle::Dotted { spacing: 5.0 } };
            plot.hline(HLine::new(family.id(), area_m2).stroke(pen).style(style).allow_hover(false));
        }
        plot.points(dots("whole panels", whole, p));
    });
    let mut names: Vec<Name> = lines
        .iter()
        .map(|&(family, at)| Name { at, text: shapes::family(family, words).to_owned(), loud: chosen == Some(family) })
        .collect();
    names.extend(own.map(|at| Name { at, text: words.text(Text::Yours).to_owned(), loud: false }));
    name_lines(ui, desk, &frame, names);
    for (x, text, anchor) in [
        (1.0, Text::Square, Align2::LEFT_TOP),
        (2.0, Text::TwoToOne, Align2::CENTER_TOP),
        (LONGEST, Text::ThreeToOne, Align2::RIGHT_TOP),
    ] {
        below(ui, desk, &frame, x, words.text(text), anchor, false);
    }
}

fn by_nets(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let by_nets = editor.shapes().by_nets();
    if by_nets.len() < 2 {
        return;
    }
    let mut families: Vec<Family> = by_nets.iter().flat_map(|(_, found)| found.iter().map(|one| one.0)).collect();
    families.sort();
    families.dedup();
    let line_of = |family: Family| -> Vec<[f64; 2]> {
        let at = |(nets, found): &(u32, Vec<(Family, f64)>)| {
            found.iter().find(|one| one.0 == family).map(|one| [f64::from(*nets), one.1])
        };
        by_nets.iter().filter_map(at).collect()
    };
    let lines: Vec<(Family, Vec<[f64; 2]>)> = families.into_iter().map(|family| (family, line_of(family))).collect();
    let most = by_nets.iter().map(|(nets, _)| *nets).max().unwrap_or(2);
    let values = lines.iter().flat_map(|(_, points)| points.iter().map(|at| at[1])).chain([0.0]);
    let y = round_range(values, words.area_unit_m2());
    let owned = words.say(Text::YouOwn, &[("count", &editor.nets_owned().to_string())]);
    desk.section(ui, words.text(Text::GroundByNets), &owned);
    let frame = frame(ui, desk, words.text(Text::GroundByNets), (1.0, f64::from(most)), y);
    let chosen = editor.shapes().chosen().map(|one| one.family);
    let nets = f64::from(editor.shapes_nets());
    plot(ui, "ground by nets", &frame, |plot| {
        let here = Stroke::new(1.0, colour(p.ink2));
        plot.vline(VLine::new("nets", nets).stroke(here).style(LineStyle::Dotted { spacing: 4.0 }).allow_hover(false));
        for (family, points) in &lines {
            let loud = chosen == Some(*family);
            let pen = if loud { Stroke::new(2.25, colour(p.ghost)) } else { Stroke::new(1.25, colour(p.ink)) };
            plot.line(line(family.id(), points.clone()).stroke(pen));
        }
    });
    let names = lines.iter().filter_map(|(family, points)| {
        let at = points.last()?[1];
        Some(Name { at, text: shapes::family(*family, words).to_owned(), loud: chosen == Some(*family) })
    });
    name_lines(ui, desk, &frame, names.collect());
    for count in 1..=most {
        let x = f64::from(count);
        below(ui, desk, &frame, x, &count.to_string(), Align2::CENTER_TOP, (x - nets).abs() < 0.5);
    }
}

fn by_minutes(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let chosen = editor.shapes().chosen_key();
    let mut all: Vec<(f64, f64, String, bool)> = Vec::new();
    let braces = |count: Option<usize>| match count {
        None => words.text(Text::Unknown).to_owned(),
        Some(0) => words.text(Text::BracesNone).to_owned(),
        Some(1) => words.text(Text::BracesOne).to_owned(),
        Some(count) => words.say(Text::BracesMany, &[("count", &count.to_string())]),
    };
    let dot = |name: &str, figures: &workup::Compared, loud: bool| {
        let said = words.say(Text::DotBraces, &[("name", name), ("braces", &braces(figures.braces))]);
        Some((figures.set_up_minutes?, figures.area_m2?, said, loud))
    };
    all.extend(super::own(desk).and_then(|own| dot(words.text(Text::Yours), &own, false)));
    all.extend(
        editor
            .shapes()
            .found()
            .iter()
            .filter_map(|one| dot(&shapes::name(one, words), &one.compared, chosen == Some((one.family, one.wall)))),
    );
    if all.len() < 2 {
        return;
    }
    // A dot at the very edge would be cut in half.
    let beside = |value: f64| [value * 0.99, value * 1.01];
    let x = round_range(all.iter().flat_map(|dot| beside(dot.0)), 1.0);
    let y = round_range(all.iter().flat_map(|dot| beside(dot.1)), words.area_unit_m2());
    desk.section(ui, words.text(Text::WorkByGround), "");
    let frame = frame(ui, desk, words.text(Text::WorkByGround), x, y);
    let (loud, quiet): (Vec<_>, Vec<_>) = all.iter().partition(|dot| dot.3);
    plot(ui, "ground by minutes", &frame, |plot| {
        plot.points(dots("shapes", quiet.iter().map(|dot| [dot.0, dot.1]).collect(), p));
        let chosen = dots("chosen", loud.iter().map(|dot| [dot.0, dot.1]).collect(), p);
        plot.points(chosen.color(colour(p.ghost)).filled(true).radius(5.0));
    });
    // A name stands right of its dot, or left of it near the right edge; one that finds no room is left out.
    let mut taken: Vec<Rect> = all
        .iter()
        .map(|dot| Rect::from_center_size(pos2(frame.x_of(dot.0), frame.y_of(dot.1)), vec2(10.0, 10.0)))
        .collect();
    for (minutes, area_m2, said, loud) in loud.iter().chain(&quiet) {
        let ink = if *loud { p.ghost } else { p.ink2 };
        let galley = ui.painter().layout_no_wrap(said.clone(), theme::regular(11.0), colour(ink));
        let spot = pos2(frame.x_of(*minutes), frame.y_of(*area_m2));
        let size = galley.size();
        let rightward = spot + vec2(8.0, -size.y / 2.0);
        let leftward = spot + vec2(-8.0 - size.x, -size.y / 2.0);
        // Right of the figures of the ground, up to the page's edge.
        let wide = frame.rect.left()..=frame.rect.right() + RIGHT;
        let place = [rightward, leftward].into_iter().map(|at| Rect::from_min_size(at, size)).find(|place| {
            wide.contains(&place.left())
                && wide.contains(&place.right())
                && !taken.iter().any(|other| other.intersects(place.shrink(1.0)))
        });
        if let Some(place) = place {
            ui.painter().galley(place.min, galley, colour(ink));
            taken.push(place);
        }
    }
    for (minutes, anchor) in [(x.0, Align2::LEFT_TOP), (x.1, Align2::RIGHT_TOP)] {
        let text = format!("{} {}", words.minutes_figure(minutes), words.text(Text::MinutesUnit));
        below(ui, desk, &frame, minutes, &text, anchor, false);
    }
}

/// A range about some values whose ends are round in the unit that is shown.
fn round_range(values: impl Iterator<Item = f64>, unit: f64) -> (f64, f64) {
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

/// Makes room for a plot, with hairlines and the ground at each.
fn frame(ui: &mut Ui, desk: &Desk<'_>, name: &str, x: (f64, f64), y: (f64, f64)) -> Frame {
    let (words, p) = (desk.words, desk.p);
    ui.add_space(10.0);
    let (all, response) = ui.allocate_exact_size(vec2(ui.available_width(), TALL), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(egui::Role::Image, true, name));
    let rect = Rect::from_min_max(all.min + vec2(LEFT, 6.0), all.max - vec2(RIGHT, BELOW));
    let frame = Frame { rect, x, y };
    let step = round_step(y.1 - y.0, words.area_unit_m2());
    let mut at = y.0;
    while at <= y.1 + step * 1e-6 {
        let height = frame.y_of(at);
        ui.painter().hline(rect.x_range(), height, Stroke::new(1.0, colour(p.hairline)));
        let (figure, _) = words.area_parts(at);
        let place = pos2(rect.left() - 8.0, height);
        ui.painter().text(place, Align2::RIGHT_CENTER, figure, theme::regular(11.0), colour(p.ink2));
        at += step;
    }
    frame
}

fn plot(ui: &mut Ui, id: &str, frame: &Frame, add: impl FnOnce(&mut PlotUi<'_>)) {
    let mut inside = ui.new_child(UiBuilder::new().id_salt(id).max_rect(frame.rect));
    Plot::new(id)
        .width(frame.rect.width())
        .height(frame.rect.height())
        .show_axes(false)
        .show_background(false)
        .show_grid(false)
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
        .show(&mut inside, |plot| {
            plot.set_plot_bounds_x(frame.x.0..=frame.x.1);
            plot.set_plot_bounds_y(frame.y.0..=frame.y.1);
            add(plot);
        });
}

fn line(name: &str, points: Vec<[f64; 2]>) -> Line<'static> {
    Line::new(name.to_owned(), PlotPoints::from(points)).allow_hover(false)
}

/// Open dots.
fn dots(name: &str, points: Vec<[f64; 2]>, p: &drawing::Palette) -> Points<'static> {
    Points::new(name.to_owned(), PlotPoints::from(points))
        .shape(MarkerShape::Circle)
        .radius(3.5)
        .filled(false)
        .color(colour(p.ink))
        .allow_hover(false)
}

/// Names at the lines' right ends, moved apart where they would overlap.
fn name_lines(ui: &Ui, desk: &Desk<'_>, frame: &Frame, mut names: Vec<Name>) {
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
        ui.painter().text(pos2(frame.rect.right() + 8.0, y), Align2::LEFT_CENTER, &name.text, font, colour(ink));
    }
}

fn below(ui: &Ui, desk: &Desk<'_>, frame: &Frame, x: f64, text: &str, anchor: Align2, here: bool) {
    let p = desk.p;
    let (font, ink) = if here { (theme::semi_bold(11.0), p.ink) } else { (theme::regular(11.0), p.ink2) };
    ui.painter().text(pos2(frame.x_of(x), frame.rect.bottom() + 5.0), anchor, text, font, colour(ink));
}
