//! Netting that hangs on the run in hand: where each branch starts, its nets and sides, and taking it out.

use drawing::Thing;
use egui::{Id, Ui};
use plan::{Edit, Run, Shape};
use words::texts::{About, Power as Text};
use words::{Measure, Range};
use workup::Lay;

use super::{Desk, picks_told, sides};
use crate::editor::Message;
use crate::field::{self, Label, Shown};
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
    desk.section(ui, words.text(Text::Branches), &run.branches.len().to_string(), About::Branches);
    kit::rule(ui, p);
    let at = desk.editor.run_index();
    for (index, branch) in run.branches.iter().enumerate() {
        let number = (index + 1).to_string();
        let from = care::place_on_line(words, lay, branch.from_m);
        let nets = match branch.nets.len() {
            1 => words.text(Text::OneNet).to_owned(),
            count => words.say(Text::OfNets, &[("count", &count.to_string())]),
        };
        let apart = |pair: &[plan::Point]| crate::tool::apart_m(pair[0], pair[1]);
        let on_map_m = branch.outline.windows(2).map(apart).sum();
        let length = words.length(lay.branch(index).map_or(on_map_m, |laid| laid.line_m));
        let row = words.say(Text::BranchRow, &[("number", &number), ("from", &from)]);
        let right = words.say(Text::BranchNets, &[("nets", &nets), ("length", &length)]);
        let thing = Thing::Branch { run: at, branch: index };
        let by_row = picks_told(ui, desk, thing, &row, &right);
        let of_it = desk.editor.picked().and_then(Thing::hanging) == Some(thing);
        if by_row || of_it {
            ui.add_space(4.0);
            fields(ui, desk, run, lay, index);
        }
        ui.add_space(4.0);
        if kit::link(ui, &words.say(Text::TakeBranch, &[("number", &number)]), p).clicked() {
            let mut run = run.clone();
            run.branches.remove(index);
            desk.said.say(Message::Make(Edit::SetRun { run: Box::new(run) }));
        }
        ui.add_space(6.0);
    }
}

/// Where it hangs, and the lengths of its sides.
pub(super) fn fields(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, lay: &Lay, index: usize) {
    let words = desk.words;
    let Some(branch) = run.branches.get(index) else { return };
    let (number, at) = ((index + 1).to_string(), desk.editor.run_index());
    let said = words.say(Text::HangsFromSaid, &[("number", &number)]);
    let label = Label { shown: words.text(Text::HangsFrom), said: &said };
    let on_line = Range::zero_to(lay.line_m);
    let read = |text: &str| words.read_length(text, on_line).map_err(|refused| refused.sentence(words));
    let shown = Shown::of(words, Measure::Length, branch.from_m, false);
    if let Some(from_m) = field::line(ui, desk.p, Id::unique(("branch hangs", at, index)), label, &shown, read) {
        desk.said.say(Message::HangAt(at, index, from_m));
    }
    let shape = Shape::Branch(run.id.clone(), index);
    sides::rows(ui, desk, &shape, &branch.outline, false, |side| Thing::BranchSide { run: at, branch: index, side });
}
