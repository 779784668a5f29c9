//! The earth of a run: its stakes as they stand, their figures, or the resistance that was measured.

use egui::{Id, Role, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};
use plan::Run;
use words::texts::Store as Text;
use words::texts::Window;
use words::{Measure, Range};

use super::{Desk, Figure, Owner, set_run, set_store};
use crate::icons::Icon;
use crate::kit;
use crate::theme::colour;

/// Most earth stakes that are drawn, and that the buttons go to.
const MOST_DRAWN: u32 = 9;

const COUNT: Figure = Figure::new(Text::Stakes, Measure::Count, Range::between(1.0, 100.0));
const SPACING: Figure = Figure::new(Text::StakesApart, Measure::Length, Range::between(0.1, 100.0));
const LENGTH: Figure = Figure::new(Text::StakeInGround, Measure::Length, Range::between(0.1, 10.0));
const THICKNESS: Figure = Figure::new(Text::StakeThick, Measure::Thin, Range::between(0.001, 0.2));
const MEASURED: Figure = Figure::new(Text::MeasuredEarth, Measure::Ohms, Range::between(0.1, 100_000.0));

pub(in crate::pages) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run) {
    let words = desk.words;
    let volts = desk.editor.run().and_then(|(_, worked)| worked.volts.as_ref());
    let kept = volts
        .map_or_else(String::new, |volts| words.say(Window::EarthKeeps, &[("kv", &words.kilovolts(volts.earth_kv))]));
    desk.section(ui, words.text(Window::Earth), &kept);
    ui.add_space(8.0);
    let name = words.text(Text::EarthStakesOf);
    let owner = Owner { id: Id::unique(("earth field", &run.id)), name };
    let mut changed = run.clone();
    if run.earth_ohm.is_none() {
        stakes(ui, desk, run, owner, &mut changed);
    }
    // An emptied field goes back to the stakes.
    owner.stated(ui, desk, &MEASURED, &mut changed.earth_ohm, run.earth_ohm);
    if run.earth_ohm.is_some() {
        ui.add_space(4.0);
        desk.second(ui, words.text(Text::MeasuredEarthWhy));
    }
    set_run(desk, changed);
}

fn stakes(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, owner: Owner<'_>, changed: &mut Run) {
    let words = desk.words;
    let count = run.earth_stakes.count();
    let stake = &desk.editor.plan().store.earth_stake;
    ui.horizontal(|ui| {
        drawn(ui, count, &in_words(desk, run), desk);
        ui.add_space(8.0);
        let p = desk.p;
        if kit::icon_button(ui, Icon::Less, words.text(Window::FewerStakes), count > 1, true, p).clicked() {
            changed.earth_stakes.count = Some(count - 1);
        }
        let more = count < MOST_DRAWN;
        if kit::icon_button(ui, Icon::More, words.text(Window::MoreStakes), more, true, p).clicked() {
            changed.earth_stakes.count = Some(count + 1);
        }
    });
    ui.add_space(6.0);
    owner.counted(ui, desk, &COUNT, &mut changed.earth_stakes.count, count);
    if count > 1 {
        let spacing_m = run.earth_stakes.spacing_m();
        owner.stated(ui, desk, &SPACING, &mut changed.earth_stakes.spacing_m, spacing_m);
    }
    let mut store = desk.editor.plan().store.clone();
    owner.stated(ui, desk, &LENGTH, &mut store.earth_stake.length_m, stake.length_m());
    owner.stated(ui, desk, &THICKNESS, &mut store.earth_stake.diameter_m, stake.diameter_m());
    set_store(desk, store);
}

fn in_words(desk: &Desk<'_>, run: &Run) -> String {
    let words = desk.words;
    let length = words.length(desk.editor.plan().store.earth_stake.length_m());
    let spacing = words.length(run.earth_stakes.spacing_m());
    match run.earth_stakes.count() {
        0 => words.text(Window::NoStakes).to_owned(),
        1 => words.say(Window::OneStake, &[("length", &length)]),
        count => {
            let count = count.to_string();
            words.say(Window::Stakes, &[("count", &count), ("length", &length), ("spacing", &spacing)])
        }
    }
}

fn drawn(ui: &mut Ui, count: u32, label: &str, desk: &Desk<'_>) {
    let p = desk.p;
    let wide = (ui.available_width() - 68.0).max(40.0);
    let (rect, response) = ui.allocate_exact_size(vec2(wide, 40.0), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, label));
    let painter = ui.painter();
    let ground = rect.top() + 8.0;
    painter.hline(rect.x_range(), ground, Stroke::new(1.0, colour(p.rule)));
    let step = (rect.width() / (count.max(1) as f32 + 0.5)).min(40.0);
    for stake in 0..count.min(MOST_DRAWN) {
        let x = rect.left() + 14.0 + step * stake as f32;
        let (top, tip) = (ground - 5.0, ground + 26.0);
        painter.vline(x, top..=tip - 5.0, Stroke::new(1.75, colour(p.ink)));
        let point = vec![pos2(x - 3.5, tip - 7.0), pos2(x + 3.5, tip - 7.0), pos2(x, tip)];
        painter.add(egui::Shape::convex_polygon(point, colour(p.ink), Stroke::NONE));
    }
}
