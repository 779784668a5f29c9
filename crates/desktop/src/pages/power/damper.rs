//! The dampest place within reach for a run's earth stakes, in a sentence, and the button that puts them there.

use egui::Ui;
use plan::{Edit, Run};
use words::texts::Damp as Text;
use workup::RunWorkup;

use crate::editor::Message;
use crate::icons::Icon;
use crate::kit;
use crate::pages::Desk;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, worked: &RunWorkup) {
    let words = desk.words;
    for sentence in care::damper_said(desk.editor.plan(), run, worked, words) {
        ui.add_space(4.0);
        desk.second(ui, &sentence);
    }
    let Some(best) = worked.dampest.as_ref().filter(|best| best.is_better()) else { return };
    ui.add_space(6.0);
    let label = words.text(if best.places.len() == 1 { Text::PutThere } else { Text::PutThem });
    if kit::button(ui, Icon::Damp, label, false, desk.p).clicked() {
        let put = crate::editor::earth::placed(run, best.places.clone());
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(put) }));
    }
    ui.add_space(4.0);
    desk.second(ui, words.text(Text::BarsSafely));
}
