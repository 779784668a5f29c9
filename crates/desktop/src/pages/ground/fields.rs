//! Fields of what a run keeps off and of what can hurt. Each commit is one edit.

use egui::{Id, Ui};
use plan::{Edit, Hazard, HazardKind, KeepOut};
use words::texts::Ground as Text;
use words::{Measure, Range};

use super::Desk;
use crate::editor::Message;
use crate::field::{self, Label, Shown};

const CLEARANCE_M: Range = Range::zero_to(100.0);
const LINE_KV: Range = Range::up_to(1000.0);
/// The most letters of a name.
const LONGEST_NAME: usize = 60;

/// The fields of a keep-out.
pub(in crate::pages) fn keep_out(ui: &mut Ui, desk: &mut Desk<'_>, index: usize, one: &KeepOut, name: &str) {
    let (words, p) = (desk.words, desk.p);
    let said = |text: Text| words.say(Text::FieldOf, &[("field", words.text(text)), ("name", name)]);
    let id = Id::unique(("keep-out fields", index));
    let mut changed: Option<KeepOut> = None;
    let label = said(Text::Name);
    let label = Label { shown: words.text(Text::Name), said: &label };
    if let Some(name) = field::text(ui, p, id.with("name"), label, &one.name, |text| Ok(read_name(text))) {
        changed = Some(KeepOut { name, ..one.clone() });
    }
    let shown = Shown::of(words, Measure::Length, one.clearance_m(), one.clearance_m.is_none());
    let read = field::or_nothing(field::figure(words, Measure::Length, CLEARANCE_M));
    let label = said(Text::Clearance);
    let label = Label { shown: words.text(Text::Clearance), said: &label };
    if let Some(clearance_m) = field::line(ui, p, id.with("clearance"), label, &shown, read) {
        changed = Some(KeepOut { clearance_m, ..one.clone() });
    }
    if let Some(inside) = yes_no(ui, desk, Text::MayEnclose, &said(Text::MayEnclose), one.may_enclose()) {
        changed = Some(KeepOut { may_enclose: Some(inside), ..one.clone() });
    }
    if let Some(water) = yes_no(ui, desk, Text::IsWater, &said(Text::IsWater), one.water) {
        changed = Some(KeepOut { water, ..one.clone() });
    }
    if let Some(changed) = changed {
        let mut keep_outs = desk.editor.plan().ground.keep_outs.clone();
        keep_outs[index] = changed;
        desk.said.say(Message::Make(Edit::SetKeepOuts { keep_outs }));
    }
}

/// The fields of a hazard.
pub(in crate::pages) fn hazard(ui: &mut Ui, desk: &mut Desk<'_>, index: usize, one: &Hazard, name: &str) {
    let (words, p) = (desk.words, desk.p);
    let said = |text: Text| words.say(Text::FieldOf, &[("field", words.text(text)), ("name", name)]);
    let id = Id::unique(("hazard fields", index));
    let mut changed: Option<Hazard> = None;
    let label = said(Text::Name);
    let label = Label { shown: words.text(Text::Name), said: &label };
    if let Some(name) = field::text(ui, p, id.with("name"), label, &one.name, |text| Ok(read_name(text))) {
        changed = Some(Hazard { name, ..one.clone() });
    }
    match one.kind {
        HazardKind::OverheadLine => {
            let shown = match one.line_voltage_kv {
                Some(kv) => Shown::of(words, Measure::Kilovolts, kv, false),
                None => Shown::nothing(words, Measure::Kilovolts),
            };
            let read = field::or_nothing(field::figure(words, Measure::Kilovolts, LINE_KV));
            let label = said(Text::LineVoltage);
            let label = Label { shown: words.text(Text::LineVoltage), said: &label };
            if let Some(line_voltage_kv) = field::line(ui, p, id.with("kv"), label, &shown, read) {
                changed = Some(Hazard { line_voltage_kv, ..one.clone() });
            }
        }
        HazardKind::PublicWay => {
            if let Some(signed) = yes_no(ui, desk, Text::Signed, &said(Text::Signed), one.signed) {
                changed = Some(Hazard { signed, ..one.clone() });
            }
            if let Some(unpowered_gate) = yes_no(ui, desk, Text::Gate, &said(Text::Gate), one.unpowered_gate) {
                changed = Some(Hazard { unpowered_gate, ..one.clone() });
            }
        }
        HazardKind::OtherEnergisedFence | HazardKind::ForeignEarth => {}
    }
    if let Some(changed) = changed {
        let mut hazards = desk.editor.plan().ground.hazards.clone();
        hazards[index] = changed;
        desk.said.say(Message::Make(Edit::SetHazards { hazards }));
    }
}

pub(super) fn yes_no(ui: &mut Ui, desk: &Desk<'_>, text: Text, said: &str, on: bool) -> Option<bool> {
    let words = desk.words;
    let options = [(true, words.text(Text::Yes)), (false, words.text(Text::No))];
    field::choice(ui, desk.p, Label { shown: words.text(text), said }, &options, Some(on)).filter(|&now| now != on)
}

/// A name is taken as typed, without the ends' spaces and no longer than a label has room.
pub(super) fn read_name(text: &str) -> String {
    text.trim().chars().take(LONGEST_NAME).collect()
}
