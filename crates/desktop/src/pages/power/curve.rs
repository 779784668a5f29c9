//! A curve that is kept in the plot, to see anything changed after against it.

use egui::{Id, Ui};
use words::texts::Faults as Text;
use workup::RunWorkup;

use crate::editor::Message;
use crate::editor::faults::LONGEST_NAME;
use crate::pages::Desk;
use crate::{field, kit};

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, worked: &RunWorkup) {
    let (words, p) = (desk.words, desk.p);
    let Some(now) = worked.volts.as_ref().and_then(|volts| volts.weakest) else { return };
    ui.add_space(12.0);
    let Some(curve) = desk.editor.curve() else {
        let button = kit::word_button(ui, words.text(Text::KeepCurve), false, p);
        if button.on_hover_text(words.text(Text::CurveWhy)).clicked() {
            desk.said.say(Message::KeepCurve);
        }
        return;
    };
    let then = curve.weakest_kv.map_or_else(String::new, |kv| words.kilovolts(kv));
    let now = words.kilovolts(now.peak_kv);
    desk.second(ui, &words.say(Text::CurveGoes, &[("name", &curve.name), ("then", &then), ("now", &now)]));
    let read = |text: &str| match text.trim() {
        "" => Ok(words.text(Text::AsItWas).to_owned()),
        name if name.chars().count() > LONGEST_NAME => {
            Err(words.say(Text::LongName, &[("most", &LONGEST_NAME.to_string())]))
        }
        name => Ok(name.to_owned()),
    };
    if let Some(name) = field::text(ui, p, Id::unique("curve name"), words.text(Text::CurveName), &curve.name, read) {
        desk.said.say(Message::NameCurve(name));
    }
    ui.add_space(4.0);
    if kit::link(ui, words.text(Text::LetGo), p).clicked() {
        desk.said.say(Message::LetCurveGo);
    }
}
