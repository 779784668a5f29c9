//! Which coops a run has, on its page: the one that is stated, and those that stand in it.

use egui::Ui;
use plan::{Edit, Plan, Run};
use words::Words;
use words::texts::About;
use words::texts::Ground as Text;

use super::Desk;
use crate::editor::Message;
use crate::{facts, field};

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run) {
    let (words, plan) = (desk.words, desk.editor.plan());
    if plan.coops().next().is_none() {
        return;
    }
    desk.section(ui, words.text(Text::Coop), "", About::Coops);
    ui.add_space(6.0);
    let named: Vec<(&str, String)> =
        plan.coops().map(|coop| (coop.id.as_str(), care::names::coop(words, coop))).collect();
    let mut options = vec![(None, words.text(Text::ByPlace))];
    options.extend(named.iter().map(|(id, name)| (Some(*id), name.as_str())));
    if let Some(chosen) = field::choice(ui, desk.p, words.text(Text::CoopOfRun), &options, Some(run.coop.as_deref())) {
        let run = Run { coop: chosen.map(str::to_owned), ..run.clone() };
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(run) }));
    }
    desk.second(ui, &sentence(words, plan, run));
}

/// Whose birds the run's are.
fn sentence(words: Words, plan: &Plan, run: &Run) -> String {
    let named: Vec<String> = plan.coops_in(run).map(|coop| care::names::coop(words, coop)).collect();
    let (Some(flock), Some((last, others))) = (plan.flock(run), named.split_last()) else {
        return words.text(Text::CoopNone).to_owned();
    };
    let (count, birds) = (words.number(f64::from(flock.birds), 0), facts::birds(words, flock));
    let said = [("count", count.as_str()), ("birds", birds)];
    if others.is_empty() {
        let text = if run.coop.is_none() { Text::CoopAssumed } else { Text::CoopStated };
        return words.say(text, &[&said[..], &[("coop", last)]].concat());
    }
    let text = if run.coop.is_none() { Text::CoopsAssumed } else { Text::CoopsStated };
    words.say(text, &[&said[..], &[("coops", &others.join(", ")), ("last", last)]].concat())
}
