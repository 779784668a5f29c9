//! Which coop a run has, on its page: the one that is stated, else the one that stands in it.

use egui::Ui;
use plan::{Edit, Run};
use words::texts::Ground as Text;

use super::Desk;
use crate::editor::Message;
use crate::{facts, field};

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run) {
    let (words, plan) = (desk.words, desk.editor.plan());
    if plan.coops().next().is_none() {
        return;
    }
    desk.section(ui, words.text(Text::Coop), "");
    ui.add_space(6.0);
    let ids: Vec<&str> = plan.coops().map(|coop| coop.id.as_str()).collect();
    let mut options = vec![(None, words.text(Text::ByPlace))];
    options.extend(ids.iter().map(|&id| (Some(id), id)));
    if let Some(chosen) = field::choice(ui, desk.p, words.text(Text::CoopOfRun), &options, Some(run.coop.as_deref())) {
        let run = Run { coop: chosen.map(str::to_owned), ..run.clone() };
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(run) }));
    }
    let sentence = match plan.coop_in(run) {
        Some(coop) => {
            let count = words.number(f64::from(coop.birds()), 0);
            let text = if run.coop.is_none() { Text::CoopAssumed } else { Text::CoopStated };
            let birds = facts::birds(words, coop);
            words.say(text, &[("coop", &coop.id), ("count", &count), ("birds", birds)])
        }
        None => words.text(Text::CoopNone).to_owned(),
    };
    desk.second(ui, &sentence);
}
