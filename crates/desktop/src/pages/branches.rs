//! Netting that hangs on the run in hand: where each branch starts, its nets, and taking it out.

use egui::Ui;
use plan::{Edit, Run};
use words::texts::Power as Text;
use workup::Lay;

use super::Desk;
use crate::editor::Message;
use crate::icons::Icon;
use crate::kit;
use crate::tool::{Drawn, Tool};

/// The button that takes the tool to hand.
pub(super) fn button(ui: &mut Ui, desk: &mut Desk<'_>) {
    let on = desk.editor.tool().draws(Drawn::Branch);
    if kit::button(ui, Icon::Outline, desk.words.text(Text::DrawBranch), on, desk.p).clicked() {
        desk.said.say(if on { Message::Escape } else { Message::Use(Tool::outline(Drawn::Branch)) });
    }
}

/// The list, where there is one.
pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, lay: &Lay) {
    let (words, p) = (desk.words, desk.p);
    if run.branches.is_empty() {
        return;
    }
    desk.section(ui, words.text(Text::Branches), &run.branches.len().to_string());
    kit::rule(ui, p);
    for (index, branch) in run.branches.iter().enumerate() {
        let number = (index + 1).to_string();
        let from = care::place_on_line(words, lay, branch.from_m);
        let nets = match branch.nets.len() {
            1 => words.text(Text::OneNet).to_owned(),
            count => words.say(Text::OfNets, &[("count", &count.to_string())]),
        };
        let apart = |pair: &[plan::Point]| crate::tool::apart_m(pair[0], pair[1]);
        let length = words.length(branch.outline.windows(2).map(apart).sum());
        let row = words.say(Text::BranchRow, &[("number", &number), ("from", &from)]);
        kit::fact(ui, &row, &words.say(Text::BranchNets, &[("nets", &nets), ("length", &length)]), p);
        ui.add_space(4.0);
        if kit::link(ui, &words.say(Text::TakeBranch, &[("number", &number)]), p).clicked() {
            let mut run = run.clone();
            run.branches.remove(index);
            desk.said.say(Message::Make(Edit::SetRun { run: Box::new(run) }));
        }
        ui.add_space(6.0);
    }
}
