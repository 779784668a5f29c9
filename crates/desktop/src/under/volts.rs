//! Volts along the line, standing on the unfolded line itself: one picture of where they sink.

use std::sync::Arc;

use drawing::{LineDrawing, Thing};
use egui::{Align2, Color32, Pos2, Rect, Stroke, Ui, UiBuilder, pos2, vec2};
use egui_plot::{FilledArea, GridMark, HLine, Line, LineStyle, PlotPoint, PlotPoints};
use plan::ReadingKind;
use words::texts::{About, Faults, Window as Text};
use workup::{Lay, Sample, Sound, Volts};

use super::beside::beside;
use crate::about;
use crate::crossing::runs_through;
use crate::editor::curves::{Curve, along, round};
use crate::editor::{Editor, Page};
use crate::icons;
use crate::pages::plot::{bare, decimals, kept_pen};
use crate::theme::{self, colour};

/// Opacity of the band from low to high.
const BAND: f32 = 0.13;
/// Kept set-ups are named at these shares of their way, in their order.
const NAMED_AT: [f64; 3] = [0.2, 0.32, 0.65];
/// The sound fence is named at the first of these shares of its way where its name is free of plates.
const SOUND_NAMED_AT: [f64; 5] = [0.8, 0.6, 0.42, 0.92, 0.25];
/// Width of the likely value's line.
const CORE: f32 = 3.5;

pub(super) fn show(ui: &mut Ui, rect: Rect, editor: &Editor, line: &LineDrawing) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let head = rect.min + vec2(24.0, 16.0);
    let aside = match editor.page() {
        Page::Book => words.text(words::texts::Book::PlotAside),
        _ => words.text(Text::VoltsAlongAside),
    };
    let title =
        ui.painter().text(head, Align2::LEFT_TOP, words.text(Text::VoltsAlong), theme::semi_bold(13.0), colour(p.ink));
    ui.painter().text(
        pos2(title.right() + 14.0, title.center().y),
        Align2::LEFT_CENTER,
        aside,
        theme::regular(11.0),
        colour(p.ink2),
    );
    let worked = editor.run().and_then(|(_, worked)| worked.lay.as_ref().zip(worked.volts.as_ref()));
    let Some((lay, volts)) = worked.filter(|_| line.line_m > 0.0) else {
        let middle = rect.center() + vec2(0.0, 12.0);
        let text = words.text(if editor.run().is_some() { Text::NoVolts } else { Text::NoVoltsYet });
        ui.painter().text(middle, Align2::CENTER_CENTER, text, theme::regular(13.0), colour(p.ink2));
        return;
    };
    let (low_kv, high_kv) = range(volts);
    let target_kv = editor.plan().target_kv();
    let read = read(editor);
    let greatest = [volts.feed_kv, high_kv, target_kv].into_iter().chain(read.iter().map(|one| one.1));
    let greatest = greatest.chain(sound(editor).into_iter().flat_map(|sound| sound.posts_kv.iter().copied()));
    let kept: Vec<&Curve> = editor.curves().filter(|_| editor.page() == Page::Power).collect();
    let greatest = greatest.chain(kept.iter().flat_map(|curve| curve.along.iter().map(|at| at.1)));
    let greatest = greatest.chain(volts.samples.iter().map(|sample| sample.high_kv));
    let top_kv = greatest.fold(1.0, f64::max) * 1.06;
    let step_kv = step(top_kv);
    let plot_rect = Rect::from_min_max(
        pos2(rect.left() + line.left, rect.top() + 42.0),
        pos2(rect.left() + line.right, rect.bottom() - 6.0),
    );
    let y_of = |kv: f64| plot_rect.bottom() - plot_rect.height() * (kv / top_kv) as f32;
    let mut kv = 0.0;
    while kv <= top_kv {
        let at = pos2(plot_rect.left() - 10.0, y_of(kv));
        let text = words.number(kv, decimals(step_kv));
        ui.painter().text(at, Align2::RIGHT_CENTER, text, theme::regular(11.0), colour(p.ink2));
        kv += step_kv;
    }
    ui.painter().text(
        pos2(plot_rect.left() - if decimals(step_kv) == 0 { 24.0 } else { 32.0 }, y_of(kv - step_kv)),
        Align2::RIGHT_CENTER,
        "kV",
        theme::regular(11.0),
        colour(p.ink2),
    );
    let line_m = line.line_m;
    let edge_of = |of: fn(&Sample) -> f64| points_of(&along(lay, volts, of));
    let points = edge_of(|sample| sample.peak_kv);
    let (lows, highs) = (edge_of(|sample| sample.low_kv), edge_of(|sample| sample.high_kv));
    let sound = sound(editor).map(|sound| sound_along(sound, lay));
    let dark = editor.theme() == drawing::Theme::Dark;
    let along_m: Vec<f64> = lows.iter().map(|at| at.x).collect();
    let kv = |points: &[PlotPoint]| points.iter().map(|at| at.y).collect::<Vec<f64>>();
    // The area's own edge is not smoothed: a fine line along it is.
    let rims = [&lows, &highs].map(|rim| {
        let pen = Stroke::new(1.0, theme::thinned(p.ink, 2.0 * BAND));
        Line::new("rim", PlotPoints::Owned(rim.clone())).stroke(pen).allow_hover(false)
    });
    let trace = points.clone();
    let band = FilledArea::new("band", &along_m, &kv(&lows), &kv(&highs))
        .fill_color(theme::thinned(p.ink, BAND))
        .stroke(Stroke::NONE)
        .allow_hover(false);
    let target = HLine::new("target", target_kv)
        .stroke(Stroke::new(1.75, colour(p.green)))
        .style(LineStyle::Dashed { length: 7.0 })
        .allow_hover(false);
    let edge_width = CORE + 2.0 * if dark { 1.1 } else { 1.4 };
    let edge = Line::new("edge", PlotPoints::Owned(points.clone()))
        .stroke(Stroke::new(edge_width, colour(p.edge)))
        .allow_hover(false);
    let shade = move |at: PlotPoint| -> Color32 { colour(drawing::palette::volts(at.y, target_kv)) };
    let core = Line::new("likely", PlotPoints::Owned(points))
        .stroke(Stroke::new(CORE, colour(p.edge)))
        .gradient_color(Arc::new(shade), false)
        .allow_hover(false);
    let mut inside = ui.new_child(UiBuilder::new().id_salt("volts").max_rect(plot_rect));
    inside.style_mut().spacing.item_spacing = egui::Vec2::ZERO;
    let grid = move |_| {
        let count = (top_kv / step_kv) as usize;
        (0..=count).map(|index| GridMark { value: index as f64 * step_kv, step_size: step_kv }).collect()
    };
    bare("volts", plot_rect)
        .show_grid([false, true])
        .grid_color(colour(p.hairline))
        .grid_fade(0.0)
        .y_grid_spacer(grid)
        .show(&mut inside, |plot| {
            plot.set_plot_bounds_x(0.0..=line_m);
            plot.set_plot_bounds_y(0.0..=top_kv);
            plot.add(band);
            for rim in rims {
                plot.line(rim);
            }
            if let Some(sound) = &sound {
                let pen = Stroke::new(1.5, colour(p.ink2));
                let line = Line::new("sound", PlotPoints::Owned(sound.clone())).stroke(pen);
                plot.line(line.style(LineStyle::Dotted { spacing: 4.0 }).allow_hover(false));
            }
            for (number, curve) in kept.iter().enumerate() {
                let (pen, style) = kept_pen(number, p);
                let line = Line::new("kept", PlotPoints::Owned(points_of(&curve.along))).stroke(pen);
                plot.line(line.style(style).allow_hover(false));
            }
            plot.line(edge);
            plot.line(core);
            // Over the trace, which may run on it.
            plot.hline(target);
        });
    let painter = ui.painter();
    let target =
        painter.layout_no_wrap(words.text(words::texts::Map::Target).to_owned(), theme::medium(11.0), colour(p.green));
    // Beyond the line's end where there is room, else on it.
    let beyond = plot_rect.right() + 6.0;
    let at = if beyond + target.size().x <= rect.right() - 2.0 {
        pos2(beyond, y_of(target_kv) - target.size().y / 2.0)
    } else {
        pos2(plot_rect.right() - 4.0 - target.size().x, y_of(target_kv))
    };
    let on_target = Rect::from_min_size(at, target.size());
    painter.galley(at, target, colour(p.green));
    let measured = volts.weakest.is_some_and(|weakest| weakest.measured);
    let band_text = words.text(if measured { Text::BandMeasured } else { Text::Band });
    let band = painter.layout_no_wrap(band_text.to_owned(), theme::regular(11.0), colour(p.ink2));
    let screen = |points: &[PlotPoint]| -> Vec<Pos2> {
        points.iter().map(|at| pos2(rect.left() + line.x_of(at.x), y_of(at.y))).collect()
    };
    let mut lines = vec![screen(&trace)];
    lines.extend(sound.as_ref().map(|sound| screen(sound)));
    lines.extend(kept.iter().map(|curve| screen(&points_of(&curve.along))));
    // Named where it runs, at its lower edge or its upper one, clear of the hairlines and of every line.
    let hairlines: Vec<f32> = (0..=(top_kv / step_kv) as usize).map(|index| y_of(index as f64 * step_kv)).collect();
    let named = |left: f32, foot: f32| {
        let crossed = hairlines.iter().find(|hairline| (foot - 14.0..=foot).contains(*hairline));
        let foot = crossed.map_or(foot, |hairline| hairline - 2.0);
        Rect::from_min_size(pos2(left, foot - band.size().y), band.size())
    };
    let right = plot_rect.right() - 8.0 - band.size().x;
    let [low_rim, high_rim] = [screen(&lows), screen(&highs)];
    let places =
        [plot_rect.left() + 8.0, plot_rect.center().x - band.size().x / 2.0, right].into_iter().flat_map(|left| {
            let over = |rim: &[Pos2], of: fn(f32, f32) -> f32, none: f32| {
                let reach = left..=left + band.size().x;
                rim.iter().filter(|at| reach.contains(&at.x)).map(|at| at.y).reduce(of).unwrap_or(none)
            };
            let (low_y, high_y) = (y_of(lows.first().map_or(low_kv, |at| at.y)), y_of(high_kv));
            [named(left, over(&low_rim, f32::min, low_y) - 3.0), named(left, over(&high_rim, f32::max, high_y) + 16.0)]
        });
    let places: Vec<Rect> = places.filter(|place| place.left() >= plot_rect.left()).collect();
    let discs: Vec<_> =
        read.iter().map(|&(along_m, kv)| (pos2(rect.left() + line.x_of(along_m), y_of(kv)), kv)).collect();
    let mark = volts.weakest.map(|weakest| {
        let at = pos2(rect.left() + line.x_of(weakest.along_m), y_of(weakest.peak_kv));
        let number = words.post_number(weakest.post, weakest.branch);
        let now = words.kilovolts(weakest.peak_kv);
        let text = match volts.weakest_sound_kv().filter(|_| sound.is_some()) {
            Some(kv) => {
                let sound = words.kilovolts_figure(kv);
                words.say(Faults::Soundly, &[("sound", &sound), ("now", &now), ("post", &number)])
            }
            None => words.say(Text::WeakestAt, &[("kv", &now), ("post", &number)]),
        };
        let galley = painter.layout_no_wrap(text, theme::semi_bold(11.0), colour(p.ink));
        let size = galley.size() + vec2(12.0, 6.0);
        let left = at.x - size.x / 2.0;
        // Above its place or below it, beside what was read nearby.
        let lefts = [left, at.x + 14.0, at.x - 14.0 - size.x];
        let tops = [at.y - 14.0 - size.y, at.y + 14.0];
        let plate = |left: f32, top: f32| {
            let left = left.clamp(plot_rect.left(), (plot_rect.right() - size.x).max(plot_rect.left()));
            Rect::from_min_size(pos2(left, top), size)
        };
        let free = |place: &Rect| {
            let clear = !discs.iter().any(|&(disc, _)| place.expand2(vec2(12.0, 8.0)).contains(disc));
            clear && place.top() > rect.top() + 36.0 && place.bottom() < rect.bottom()
        };
        let places = lefts.into_iter().flat_map(|left| tops.map(|top| plate(left, top)));
        let usual = plate(left, if tops[0] > rect.top() + 36.0 { tops[0] } else { tops[1] });
        (at, places.into_iter().find(free).unwrap_or(usual), galley)
    });
    let on_mark = |place: Rect| mark.as_ref().is_some_and(|(_, plate, _)| plate.expand(3.0).intersects(place));
    // A disc and its figure, the weakest post's plate and every line go before the band's name.
    let free = |place: &&Rect| {
        !discs.iter().any(|&(at, _)| place.expand2(vec2(16.0, 22.0)).contains(at))
            && !on_mark(**place)
            && !place.expand(2.0).intersects(on_target)
            && !lines.iter().any(|line| runs_through(line, place.expand2(vec2(4.0, CORE + 2.0))))
    };
    let band_at = places.iter().find(free).copied();
    if let Some(place) = band_at {
        painter.galley(place.min, band, colour(p.ink2));
    }
    let aim = vec![pos2(plot_rect.left(), y_of(target_kv)), pos2(plot_rect.right(), y_of(target_kv))];
    let drawn: Vec<Vec<Pos2>> = lines.into_iter().chain([aim]).collect();
    let room =
        Rect::from_min_max(pos2(plot_rect.left() + 2.0, rect.top() + 36.0), pos2(rect.right(), plot_rect.bottom()));
    let mut plates: Vec<Rect> = discs.iter().map(|&(at, _)| Rect::from_center_size(at, vec2(8.0, 8.0))).collect();
    plates.extend(mark.iter().map(|(_, plate, _)| plate.expand(3.0)));
    plates.push(on_target);
    plates.extend(band_at);
    for (at, kv) in discs {
        painter.circle(at, 4.5, colour(p.ink), Stroke::new(1.5, colour(p.sheet)));
        let figure = painter.layout_no_wrap(words.kilovolts_figure(kv), theme::semi_bold(11.0), colour(p.ink));
        let place = beside(at, figure.size(), room, &plates, &drawn);
        plates.push(place);
        painter.galley(place.min, figure, colour(p.ink));
    }
    if let Some(sound) = &sound {
        let text = words.text(words::texts::Power::Sound).to_owned();
        let name = painter.layout_no_wrap(text, theme::regular(11.0), colour(p.ink2));
        let over = |at: &PlotPoint| {
            let foot = pos2(rect.left() + line.x_of(at.x), y_of(at.y) - 4.0);
            Align2::CENTER_BOTTOM.anchor_size(foot, name.size())
        };
        let places = SOUND_NAMED_AT.iter().filter_map(|share| sound.get((sound.len() as f64 * share) as usize));
        let free = |place: &Rect| plot_rect.contains_rect(*place) && !plates.iter().any(|one| one.intersects(*place));
        if let Some(place) = places.map(over).find(free) {
            painter.galley(place.min, name, colour(p.ink2));
        }
    }
    if let Some(along_m) = picked_fault(editor, lay) {
        let x = rect.left() + line.x_of(along_m);
        painter.vline(x, plot_rect.top()..=rect.bottom(), Stroke::new(1.5, colour(p.pick)));
    }
    for (number, curve) in kept.iter().enumerate() {
        // Named where neither the sound fence nor another one is; in full where it stands alone, else on the page.
        let name = match kept.len() {
            1 => editor.curve_name(number, curve),
            _ => words.say(Faults::CurveNumber, &[("number", &(number + 1).to_string())]),
        };
        let share = NAMED_AT[number.min(NAMED_AT.len() - 1)];
        if let Some(&(along_m, kv)) = curve.along.get((curve.along.len() as f64 * share) as usize) {
            let place = pos2(rect.left() + line.x_of(along_m), y_of(kv) - 4.0);
            painter.text(place, Align2::CENTER_BOTTOM, name, theme::regular(11.0), colour(p.ghost));
        }
    }
    let figures = Rect::from_min_max(rect.min, pos2(plot_rect.left(), rect.bottom()));
    about::say_in(ui, figures, "volts axis", words, About::VoltsAlong);
    if let Some((at, plate, galley)) = mark {
        about::say_in(ui, plate, "weakest on the plot", words, About::Weakest);
        painter.circle(at, 4.5, colour(p.sheet), Stroke::new(1.75, colour(p.ink)));
        painter.add(egui::Shape::convex_polygon(
            icons::cut_plate(plate, 5.0),
            colour(p.sheet),
            Stroke::new(1.25, colour(p.ink)),
        ));
        painter.galley(plate.min + vec2(6.0, 3.0), galley, colour(p.ink));
    }
}

/// What was read at posts, the newest at each place: where along the line, metres, and kilovolts.
fn read(editor: &Editor) -> Vec<(f64, f64)> {
    let Some((run, _)) = editor.run() else { return Vec::new() };
    drawing::map::readings::newest(editor.plan(), &run.id)
        .into_iter()
        .map(|index| &editor.plan().readings[index])
        .filter(|reading| reading.kind == ReadingKind::FenceKv)
        .filter_map(|reading| reading.along_m.zip(reading.value))
        .filter(|(along_m, kv)| along_m.is_finite() && kv.is_finite() && *kv >= 0.0)
        .collect()
}

/// Lowest and highest that the weakest post may be, kilovolts.
fn range(volts: &Volts) -> (f64, f64) {
    volts.weakest.map_or((0.0, 0.0), |weakest| (weakest.low_kv, weakest.high_kv))
}

/// A round step that gives three to seven hairlines.
fn step(top_kv: f64) -> f64 {
    [0.5, 1.0, 2.0, 5.0, 10.0].into_iter().find(|step| top_kv / step <= 6.5).unwrap_or(20.0)
}

/// Where the fault that is picked acts, metres along the line.
fn picked_fault(editor: &Editor, lay: &Lay) -> Option<f64> {
    let Some(Thing::Fault { run, branch: None, fault }) = editor.picked() else { return None };
    let (stated, _) = editor.run().filter(|_| run == editor.run_index())?;
    let fault = stated.faults.get(fault)?;
    workup::faults::land(stated, lay, fault.kind, fault.at).ok().map(|landing| landing.along_m)
}

/// The sound fence, where the run has faults and the page is about volts.
fn sound(editor: &Editor) -> Option<&Sound> {
    editor.sound().filter(|_| editor.page() == Page::Power)
}

/// Its volts by distance from corner 1.
fn sound_along(sound: &Sound, lay: &Lay) -> Vec<PlotPoint> {
    let posts = lay.posts.iter().zip(&sound.posts_kv).map(|(post, &kv)| (post.along_m, kv));
    points_of(&round(lay, posts.collect()))
}

fn points_of(along: &[(f64, f64)]) -> Vec<PlotPoint> {
    along.iter().map(|&(along_m, kv)| PlotPoint::new(along_m, kv)).collect()
}
