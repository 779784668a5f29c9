//! Fields of what stands on the ground: the coop, the picked keep-out or hazard. Each commit is one edit.

use egui::{Id, Ui};
use plan::{Coop, CoopKind, DoorSide, Edit, Hazard, HazardKind, KeepOut};
use words::texts::{Ground as Text, Underlay};
use words::{Measure, Range};

use super::Desk;
use crate::editor::{ManyMessage, Message};
use crate::field::{self, Label, Shown};

const BIRDS: Range = Range::zero_to(100_000.0);
const COOP_M: Range = Range::between(0.2, 50.0);
const HEADING_DEG: Range = Range::zero_to(360.0);
const CLEARANCE_M: Range = Range::zero_to(100.0);
const LINE_KV: Range = Range::up_to(1000.0);
/// The most letters of a name.
const LONGEST_NAME: usize = 60;

const KINDS: [(CoopKind, Text); 8] = [
    (CoopKind::Layer, Text::Hens),
    (CoopKind::Pullet, Text::Pullets),
    (CoopKind::Chick, Text::Chicks),
    (CoopKind::Table, Text::Table),
    (CoopKind::Duck, Text::Ducks),
    (CoopKind::Goose, Text::Geese),
    (CoopKind::Turkey, Text::Turkeys),
    (CoopKind::Other, Text::Other),
];

/// The field in which the coop is named.
pub(in crate::pages) fn coop_name_id() -> Id {
    Id::unique("coop fields").with("name")
}

/// The coop's fields.
pub(in crate::pages) fn coop(ui: &mut Ui, desk: &mut Desk<'_>, coop: &Coop) {
    let (words, p) = (desk.words, desk.p);
    let said = |text: Text| words.say(Text::CoopField, &[("field", words.text(text))]);
    let mut changed: Option<Coop> = None;
    let id = Id::unique("coop fields");
    let label = said(Text::Name);
    let label = Label { shown: words.text(Text::Name), said: &label };
    if let Some(name) = field::text(ui, p, coop_name_id(), label, &coop.id, |text| Ok(read_name(text))) {
        desk.said.say(Message::Many(ManyMessage::Rename(drawing::Thing::Coop { coop: 0 }, name)));
    }
    let birds = Shown::of(words, Measure::Count, f64::from(coop.birds()), coop.birds.is_none());
    let read = field::or_nothing(field::count(words, BIRDS));
    let label = said(Text::Birds);
    let label = Label { shown: words.text(Text::Birds), said: &label };
    if let Some(birds) = field::line(ui, p, id.with("birds"), label, &birds, read) {
        changed = Some(Coop { birds, ..coop.clone() });
    }
    let kinds = KINDS.map(|(kind, text)| (kind, words.text(text)));
    let label = said(Text::KindOfBird);
    let label = Label { shown: words.text(Text::KindOfBird), said: &label };
    if let Some(kind) = field::choice(ui, p, label, &kinds, Some(coop.kind())) {
        changed = Some(Coop { kind: Some(kind), ..coop.clone() });
    }
    type Put = fn(&mut Coop, Option<f64>);
    let figures: [(Text, Measure, Range, Option<f64>, f64, Put); 3] = [
        (Text::Length, Measure::Length, COOP_M, coop.length_m, coop.length_m(), |coop, value| coop.length_m = value),
        (Text::Width, Measure::Length, COOP_M, coop.width_m, coop.width_m(), |coop, value| coop.width_m = value),
        (Text::Heading, Measure::Degrees, HEADING_DEG, coop.heading_deg, coop.heading_deg(), |coop, value| {
            coop.heading_deg = value;
        }),
    ];
    for (text, measure, range, stated, value, put) in figures {
        let shown = Shown::of(words, measure, value, stated.is_none());
        let read = field::or_nothing(field::figure(words, measure, range));
        let said = said(text);
        let label = Label { shown: words.text(text), said: &said };
        if let Some(value) = field::line(ui, p, id.with(words.text(text)), label, &shown, read) {
            let mut coop = coop.clone();
            put(&mut coop, value);
            changed = Some(coop);
        }
    }
    let doors = [
        (DoorSide::Ahead, Underlay::DoorAhead),
        (DoorSide::Right, Underlay::DoorRight),
        (DoorSide::Behind, Underlay::DoorBehind),
        (DoorSide::Left, Underlay::DoorLeft),
    ]
    .map(|(side, text)| (side, words.text(text)));
    let said = words.say(Text::CoopField, &[("field", words.text(Underlay::Door))]);
    let label = Label { shown: words.text(Underlay::Door), said: &said };
    if let Some(door) = field::choice(ui, p, label, &doors, Some(coop.door())) {
        changed = Some(Coop { door: Some(door), ..coop.clone() });
    }
    if let Some(coop) = changed {
        desk.said.say(Message::Make(Edit::SetCoop { coop: Some(coop) }));
    }
}

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
