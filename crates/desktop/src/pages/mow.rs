//! The strip to mow: how much, how far and how long, its width on either side, and when the grass is back.

use egui::Ui;
use exchange::work::sentences;
use plan::Run;
use words::texts::{About, Window as Text};
use workup::{RunWorkup, Strip};

use super::{Desk, store};
use crate::kit::{self, Figure};
use crate::theme::{self, colour};

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, worked: &RunWorkup) {
    let words = desk.words;
    let Some(strip) = &worked.strip else { return };
    figures(ui, desk, run, strip);
    let share = words.percent(desk.editor.plan().store.mower.efficiency());
    let by_area = words.minutes_figure(strip.minutes_by_area);
    ui.add_space(4.0);
    desk.second(ui, &words.say(Text::MowByArea, &[("minutes", &by_area), ("share", &share)]));
    let left = worked.still_to_mow.as_ref().map(|left| sentences::still_to_mow(left, words));
    for (label, figures) in
        [left, sentences::mowing(worked, words), sentences::grass(worked, words)].into_iter().flatten()
    {
        ui.add_space(4.0);
        desk.second(ui, &format!("{label}: {figures}"));
    }
    ui.add_space(6.0);
    store::strip(ui, desk, run, worked);
}

fn figures(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, strip: &Strip) {
    let (words, p) = (desk.words, desk.p);
    let wide = words.say(Text::StripWide, &[("width", &words.length(strip.width_m))]);
    let response = desk.section(ui, words.text(Text::StripToMow), &wide, About::Strip);
    let assumed = run.strip_is_assumed();
    if assumed {
        let width = ui.painter().layout_no_wrap(wide, theme::regular(12.0), colour(p.ink2)).size().x;
        kit::dots(ui.painter(), response.rect.right() - width, response.rect.right(), response.rect.bottom(), p);
    }
    ui.add_space(8.0);
    let (area, walk) = (words.area_parts(strip.area_m2), words.far_parts(strip.walk_m));
    let passes = words.number(f64::from(strip.passes), 0);
    let minutes = words.minutes_figure(strip.minutes);
    let figure = |value, unit, label, about| Figure::told(words, [value, unit], label, about);
    kit::figures(
        ui,
        &[
            Figure { assumed, ..figure(&area.0, area.1, Text::StripGround, About::StripGround) },
            figure(&passes, "", Text::Passes, About::Passes),
            figure(&walk.0, walk.1, Text::OnFoot, About::OnFoot),
            figure(&minutes, words.text(Text::MinutesUnit), Text::BehindMower, About::Behind),
        ],
        p,
    );
}
