//! What a fox, a dog, a hen and a sheep would feel at one post, on soil from damp to very dry; and the pulse there over
//! time.

use egui::text::LayoutJob;
use egui::{Align2, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};
use egui_plot::LineStyle;
use words::Words;
use words::texts::About;
use words::texts::{Faults, Power as Text, Window};
use workup::power::{Felt, PulseShape, SOILS_OHM_M, Study, Who};

use super::curve::sampled;
use crate::kit;
use crate::pages::Desk;
use crate::pages::plot::{below, frame, kept_pen, line, plot};

use crate::theme::{self, colour};

/// Columns of the table end at these shares of the width.
const ENDS: [f32; 4] = [0.33, 0.52, 0.74, 1.0];
/// The plot shows so many times the pulse's width.
const WIDTHS: f64 = 2.5;

/// What animals feel at a post.
pub(super) fn feel(ui: &mut Ui, desk: &mut Desk<'_>, study: &Study, stale: bool, post: usize) {
    let (words, p) = (desk.words, desk.p);
    let head = words.say(Window::AnimalAt, &[("post", &(post + 1).to_string())]);
    desk.section(ui, &head, "", About::Feel);
    let wide = ui.available_width();
    let texts = [Text::DampSoil, Text::DrySoil, Text::VeryDrySoil, Text::EnergyDamp];
    let lefts = [0.0, ENDS[0], ENDS[1], ENDS[2]];
    // A head wraps within its column, by words.
    let galleys: Vec<_> = texts
        .into_iter()
        .zip(lefts.into_iter().zip(ENDS))
        .map(|(text, (left, end))| {
            let (font, room) = (theme::regular(11.0), (end - left) * wide - 6.0);
            let mut job = LayoutJob::simple(words.text(text).to_owned(), font, colour(p.ink2), room);
            job.halign = egui::Align::RIGHT;
            ui.painter().layout_job(job)
        })
        .collect();
    let tall = galleys.iter().map(|galley| galley.size().y + 4.0).fold(20.0, f32::max);
    let (rect, heads) = ui.allocate_exact_size(vec2(wide, tall), Sense::hover());
    let soils = SOILS_OHM_M.map(|ohm_m| words.say(Text::SoilOf, &[("ohm_m", &words.number(ohm_m, 0))]));
    kit::explain(ui, &heads, &soils.join("\n"));
    for (galley, end) in galleys.into_iter().zip(ENDS) {
        let at = pos2(rect.left() + end * wide, rect.bottom() - galley.size().y);
        ui.painter().galley(at, galley, colour(p.ink2));
    }
    kit::rule(ui, p);
    for who in Who::ALL {
        let felt = SOILS_OHM_M.map(|soil| {
            let row = study.feels.iter().find(|one| one.who == who && one.soil_ohm_m == soil);
            row.and_then(|row| row.posts.get(post)).copied()
        });
        row(ui, who, &felt, stale, desk);
    }
    ui.add_space(6.0);
    desk.second(ui, words.text(Text::People));
    ui.add_space(4.0);
    desk.second(ui, words.text(Text::FeelWhy));
    if let Some(turns) = &study.turns {
        ui.add_space(4.0);
        let kv = |value: f64| words.kilovolts(value);
        let [_, _, very_dry] = turns.fox_kv;
        let places = [
            ("dry", kv(very_dry[0])),
            ("plain_dry", kv(very_dry[1])),
            ("weakest", kv(turns.weakest_kv[0])),
            ("plain_weakest", kv(turns.weakest_kv[1])),
        ];
        let places: Vec<(&str, &str)> = places.iter().map(|(name, text)| (*name, text.as_str())).collect();
        desk.second(ui, &words.say(Text::ByTurns, &places));
    }
}

fn row(ui: &mut Ui, who: Who, felt: &[Option<Felt>; 3], stale: bool, desk: &Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    let name = words.text(match who {
        Who::Fox => Text::Fox,
        Who::Dog => Text::Dog,
        Who::Hen => Text::Hen,
        Who::Sheep => Text::Sheep,
    });
    let shown = |text: Option<String>| match text {
        Some(text) if stale => format!("({text})"),
        Some(text) => text,
        None => "–".to_owned(),
    };
    let kv = |felt: &Option<Felt>| shown(felt.map(|felt| words.kilovolts(felt.kv)));
    let joules = shown(felt[0].map(|felt| words.say(Text::Joules, &[("joules", &words.number(felt.j, 2))])));
    let cells = [kv(&felt[0]), kv(&felt[1]), kv(&felt[2]), joules];
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), kit::ROW), Sense::hover());
    let said = words.say(
        Text::FeelRow,
        &[("who", name), ("damp", &cells[0]), ("dry", &cells[1]), ("very_dry", &cells[2]), ("joules", &cells[3])],
    );
    response.widget_info(|| WidgetInfo::labeled(egui::Role::Label, true, &said));
    let y = rect.center().y;
    ui.painter().hline(rect.x_range(), rect.bottom() - 0.5, Stroke::new(1.0, colour(p.hairline)));
    kit::cell(ui, pos2(rect.left(), y), Align2::LEFT_CENTER, name, theme::regular(13.0), colour(p.ink));
    for (text, end) in cells.iter().zip(ENDS) {
        let at = pos2(rect.left() + end * rect.width(), y);
        kit::cell(ui, at, Align2::RIGHT_CENTER, text, theme::regular(13.0), colour(p.ink));
    }
    let charge = felt[0].map(|felt| words.number(felt.charge_c * 1e3, 2)).unwrap_or_default();
    let body = who.body();
    let why = words.say(
        Text::BodyWhy,
        &[
            ("body", &words.number(body.body_ohm, 0)),
            ("feet", &body.feet.to_string()),
            ("charge", &charge),
            ("source", words.source(body.source)),
        ],
    );
    kit::explain(ui, &response, &why);
}

/// The pulse at a post over time, beside the one at the feed.
pub(super) fn shape(ui: &mut Ui, desk: &mut Desk<'_>, pulse: &PulseShape, sound: Option<&PulseShape>, post: usize) {
    let (words, p) = (desk.words, desk.p);
    let Some(here) = pulse.posts_kv.get(post) else { return };
    let head = words.say(Text::PulseAt, &[("post", &(post + 1).to_string())]);
    let wide =
        words.say(Text::PulseWide, &[("ms", &milliseconds(words, workup::power::width_s(&pulse.times_s, here)))]);
    desk.section(ui, &head, &wide, About::Pulse);
    let other =
        sound.map_or((&pulse.times_s, Some(&pulse.feed_kv)), |sound| (&sound.times_s, sound.posts_kv.get(post)));
    let kept: Vec<(usize, &PulseShape)> = desk
        .editor
        .curves()
        .enumerate()
        .filter_map(|(number, curve)| Some((number, curve.pulse.as_ref()?)))
        .filter(|(_, pulse)| post < pulse.posts_kv.len())
        .collect();
    let widths = sound.into_iter().chain(kept.iter().map(|(_, pulse)| *pulse)).map(|pulse| pulse.duration_s);
    let end_s = WIDTHS * widths.fold(pulse.duration_s, f64::max);
    let points = |times: &[f64], kv: &[f64]| -> Vec<[f64; 2]> {
        times.iter().zip(kv).take_while(|(at, _)| **at <= end_s).map(|(at, kv)| [at * 1e3, *kv]).collect()
    };
    let (mine, theirs) = (points(&pulse.times_s, here), other.1.map(|kv| points(other.0, kv)));
    let kept: Vec<(usize, Vec<[f64; 2]>)> =
        kept.into_iter().map(|(number, pulse)| (number, points(&pulse.times_s, &pulse.posts_kv[post]))).collect();
    let all = mine.iter().chain(theirs.iter().flatten()).chain(kept.iter().flat_map(|(_, points)| points));
    let (low, high) = all.fold((0.0_f64, 1.0_f64), |(low, high), at| (low.min(at[1]), high.max(at[1])));
    let frame = frame(ui, desk, &head, (0.0, end_s * 1e3), (low.floor(), high.ceil()), 1.0, |kv, decimals| {
        words.number(kv, decimals)
    });
    plot(ui, "pulse over time", &frame, |plot| {
        if let Some(theirs) = theirs {
            let pen = Stroke::new(1.25, colour(p.ink2));
            plot.line(line("other", theirs).stroke(pen).style(LineStyle::Dotted { spacing: 4.0 }));
        }
        for (number, points) in kept.clone() {
            let (pen, style) = kept_pen(number, p);
            plot.line(line("kept", points).stroke(pen).style(style));
        }
        plot.line(line("here", mine).stroke(Stroke::new(2.0, colour(p.ink))));
    });
    for share in [0.0, 0.5, 1.0] {
        let at = share * end_s;
        let text = if share == 0.0 { "0".to_owned() } else { milliseconds(words, at) };
        let anchor = if share == 1.0 { Align2::RIGHT_TOP } else { Align2::CENTER_TOP };
        below(ui, desk, &frame, at * 1e3, &text, anchor, false);
    }
    ui.add_space(4.0);
    desk.second(ui, words.text(if sound.is_some() { Text::DottedSound } else { Text::DottedFeed }));
    for (number, _) in &kept {
        if let Some(curve) = desk.editor.curves().nth(*number) {
            let name = words::capital(&desk.editor.curve_name(*number, curve));
            sampled(ui, desk, *number, &words.say(Faults::CurvePulse, &[("name", &name)]));
        }
    }
    let charge = words.number(pulse.charge_c * 1e3, 2);
    let joules = words.number(pulse.energy_j, 2);
    desk.second(ui, &words.say(Text::PulseCarries, &[("joules", &joules), ("charge", &charge)]));
}

fn milliseconds(words: Words, seconds: f64) -> String {
    let ms = seconds * 1e3;
    words.say(Text::Milliseconds, &[("ms", &words.number(ms, if ms < 1.0 { 2 } else { 1 }))])
}
