//! Setting up and taking down: how long and how far, and the steps in their order on demand.

use egui::{Id, Ui};
use exchange::work::sentences;
use words::texts::{About, SettingUp as Text, Underlay, Window};
use workup::setting_up::Work;
use workup::{Lay, RunWorkup};

use super::{Desk, store};
use crate::editor::Message;
use crate::icons::Icon;
use crate::kit::{self, Figure};
use crate::theme::{self, colour};
use crate::tool::{Drawn, Tool};

/// Room for a step's number, points.
const NUMBER: f32 = 26.0;

/// What a keeper asks of a run first: how long it takes to put up, as sheet and report say it, to take away, and to mow.
pub(super) fn lead(ui: &mut Ui, desk: &Desk<'_>, worked: &RunWorkup) {
    let words = desk.words;
    let minutes = |work: &Work| words.minutes_figure(work.minutes_low);
    let lay = worked.lay.as_ref().filter(|_| worked.set_up.is_some());
    let set_up = lay.map(|lay| (words.minutes_figure(lay.set_up_minutes), Text::ToSetUp, About::SetUp));
    let take_down = worked.taking_down.as_ref().map(|work| (minutes(work), Text::ToTakeDown, About::TakeDown));
    let mow = worked.strip.as_ref().map(|strip| (words.minutes_figure(strip.minutes), Text::ToMow, About::Behind));
    let told: Vec<_> = set_up.into_iter().chain(take_down).chain(mow).collect();
    if told.is_empty() {
        return;
    }
    ui.add_space(14.0);
    let unit = words.text(Window::MinutesUnit);
    let figures: Vec<_> =
        told.iter().map(|(value, label, about)| Figure::told(words, [value, unit], *label, *about)).collect();
    kit::figures(ui, &figures, desk.p);
    if let (Some(work), Some(down), Some(lay)) = (&worked.set_up, &worked.taking_down, lay) {
        let minutes = [lay.set_up_minutes, work.minutes_low, work.minutes_high, down.minutes_high];
        let [rule, low, up, down] = minutes.map(|minutes| words.minutes_figure(minutes));
        // Two figures of one work are told apart where both stand.
        let text = if sentences::is_by_rule(work, lay) { Text::FirstTimeByRule } else { Text::FirstTime };
        ui.add_space(6.0);
        desk.second(ui, &words.say(text, &[("rule", &rule), ("low", &low), ("up", &up), ("down", &down)]));
    }
}

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, worked: &RunWorkup) {
    if let Some(work) = &worked.set_up {
        part(ui, desk, [Text::SettingUp, Text::ShowSetUp, Text::FoldSetUp], work, worked.lay.as_ref());
        let rule = worked.lay.as_ref().and_then(|lay| sentences::rule_of_thumb(work, lay, desk.words));
        if let Some(rule) = rule {
            ui.add_space(4.0);
            desk.second(ui, &rule);
        }
    }
    if let Some(work) = &worked.taking_down {
        part(ui, desk, [Text::TakingDown, Text::ShowTakeDown, Text::FoldTakeDown], work, worked.lay.as_ref());
    }
    if worked.set_up.is_some() {
        ui.add_space(8.0);
        let (words, p) = (desk.words, desk.p);
        let drawn = Drawn::Drop(desk.editor.run_index());
        let on = desk.editor.tool().draws(drawn);
        if kit::button(ui, Icon::Drop, words.text(Underlay::PlaceDrop), on, p).clicked() {
            desk.said.say(if on { Message::Escape } else { Message::Use(Tool::outline(drawn)) });
        }
        store::rates(ui, desk);
    }
}

fn part(ui: &mut Ui, desk: &mut Desk<'_>, [head, show, fold]: [Text; 3], work: &Work, lay: Option<&Lay>) {
    let (words, p) = (desk.words, desk.p);
    let steps = work.steps.len().to_string();
    desk.section(ui, words.text(head), &words.say(Text::StepsCount, &[("count", &steps)]), About::Steps);
    ui.add_space(6.0);
    desk.second(ui, &sentences::time(work, words));
    ui.add_space(4.0);
    let id = Id::unique(("work open", words.text(head)));
    let open = ui.data(|data| data.get_temp::<bool>(id)).unwrap_or(false);
    let label = words.text(if open { fold } else { show });
    if kit::link(ui, label, p).clicked() {
        ui.data_mut(|data| data.insert_temp(id, !open));
    }
    if !open {
        return;
    }
    ui.add_space(6.0);
    kit::rule(ui, p);
    for (index, step) in work.steps.iter().enumerate() {
        ui.add_space(5.0);
        ui.horizontal_top(|ui| {
            let number = (index + 1).to_string();
            let (rect, _) = ui.allocate_exact_size(egui::vec2(NUMBER - 8.0, 18.0), egui::Sense::hover());
            let (font, ink) = (theme::semi_bold(13.0), colour(p.ink));
            kit::cell(ui, rect.left_top(), egui::Align2::LEFT_TOP, &number, font, ink);
            kit::prose(ui, &sentences::timed(work, step, lay, words), theme::regular(13.0), ink);
        });
    }
}
