//! Set-ups that are kept in the plots, to see anything changed after against them.

use egui::{Sense, Ui, pos2, vec2};
use words::texts::Faults as Text;
use workup::RunWorkup;

use crate::editor::Message;
use crate::editor::curves::MOST_CURVES;
use crate::kit;
use crate::pages::Desk;
use crate::pages::plot::{KEPT_SAMPLE, kept_sample};

/// The row's line stands at its first line of text, so far below its top, points.
const MIDDLE: f32 = 9.0;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, worked: &RunWorkup) {
    let (words, p) = (desk.words, desk.p);
    let Some(now) = worked.volts.as_ref().and_then(|volts| volts.weakest) else { return };
    ui.add_space(12.0);
    let now = words.kilovolts(now.peak_kv);
    let editor = desk.editor;
    for (number, curve) in editor.curves().enumerate() {
        let then = curve.weakest_kv.map_or_else(String::new, |kv| words.kilovolts(kv));
        let name = words::capital(&editor.curve_name(number, curve));
        let says = words.say(Text::CurveGoes, &[("name", &name), ("then", &then), ("now", &now)]);
        sampled(ui, desk, number, &says);
        let short = words.say(Text::CurveNumber, &[("number", &(number + 1).to_string())]);
        ui.add_space(2.0);
        if kit::link(ui, &words.say(Text::LetGo, &[("name", &short)]), p).clicked() {
            desk.said.say(Message::LetCurveGo(number));
        }
        ui.add_space(8.0);
    }
    if editor.curves().count() < MOST_CURVES {
        let button = kit::word_button(ui, words.text(Text::KeepCurve), false, p);
        if button.on_hover_text(words.text(Text::CurveWhy)).clicked() {
            desk.said.say(Message::KeepCurve);
        }
    }
}

/// A sentence after a piece of the line that it tells of.
pub(super) fn sampled(ui: &mut Ui, desk: &Desk<'_>, number: usize, says: &str) {
    ui.horizontal_top(|ui| {
        let (rect, _) = ui.allocate_exact_size(vec2(KEPT_SAMPLE, 1.0), Sense::hover());
        kept_sample(ui, pos2(rect.left(), rect.top() + MIDDLE), number, desk.p);
        ui.vertical(|ui| desk.second(ui, says));
    });
}
