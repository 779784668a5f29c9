//! The coops on the ground page: one in its fields, of several each in a row that leads to its own. Each commit is one edit.

use drawing::Thing;
use egui::{Id, Ui};
use plan::{Coop, CoopKind, DoorSide, Edit, Plan};
use words::texts::{About, Ground as Text, Many, Shaping, Underlay};
use words::{Measure, Range};

use super::features::row;
use super::fields::read_name;
use super::{Desk, name_of};
use crate::editor::chosen::coop_at;
use crate::editor::{ManyMessage, Message};
use crate::field::{self, Label, Shown};
use crate::icons::Icon;
use crate::pages::coordinates::{self, Stands, Typed};
use crate::roster::{self, Item};
use crate::tool::Drawn;

const BIRDS: Range = Range::zero_to(100_000.0);
const COOP_M: Range = Range::between(0.2, 50.0);
const HEADING_DEG: Range = Range::zero_to(360.0);

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

/// The coop that a thing is or belongs to, by its number.
pub(super) fn of(plan: &Plan, thing: Thing) -> Option<usize> {
    let number = match thing {
        Thing::Coop { coop } => coop,
        // Of the plan's own alone the door can be picked.
        Thing::CoopDoor if plan.coop.is_some() => 0,
        _ => return None,
    };
    coop_at(plan, number).map(|_| number)
}

/// All of them under one head.
pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, editor) = (desk.words, desk.editor);
    let plan = editor.plan();
    let count = plan.coops().count();
    let leads = editor.picked().and_then(|thing| of(plan, thing));
    if count == 1 && leads.is_some() {
        return;
    }
    desk.section(ui, if count > 1 { words.text(Many::Coops) } else { words.text(Text::Coop) }, "", About::Coops);
    ui.add_space(6.0);
    match count {
        0 => desk.second(ui, words.text(Text::NoCoop)),
        1 => fields(ui, desk, 0),
        _ => {
            for coop in 0..count {
                let thing = Thing::Coop { coop };
                let is_it = |other: Option<Thing>| other.and_then(|other| of(plan, other)) == Some(coop);
                let birds = roster::figures(editor, Item::Thing(thing));
                row(ui, desk, ("coop row", coop), thing, &is_it, [&name_of(desk, thing), &birds]);
            }
        }
    }
    if count > 0 {
        further(ui, desk);
    }
}

/// The tool that sets down one more.
pub(super) fn further(ui: &mut Ui, desk: &mut Desk<'_>) {
    ui.add_space(6.0);
    super::tool(ui, desk, Drawn::FurtherCoop, Icon::More, desk.words.text(Shaping::PlaceFurtherCoop));
}

/// The field in which a coop is named.
pub(in crate::pages) fn name_id(number: usize) -> Id {
    Id::unique(("coop fields", number)).with("name")
}

/// The edit that puts a coop in the place of that number.
fn stated(plan: &Plan, number: usize, coop: Coop) -> Edit {
    let own = usize::from(plan.coop.is_some());
    match number.checked_sub(own) {
        None => Edit::SetCoop { coop: Some(coop) },
        Some(other) => {
            let mut other_coops = plan.other_coops.clone();
            other_coops.iter_mut().skip(other).take(1).for_each(|one| one.clone_from(&coop));
            Edit::SetOtherCoops { other_coops }
        }
    }
}

/// The fields of a coop; nothing where there is none of that number.
pub(in crate::pages) fn fields(ui: &mut Ui, desk: &mut Desk<'_>, number: usize) {
    let (words, p, plan) = (desk.words, desk.p, desk.editor.plan());
    let Some(coop) = coop_at(plan, number).cloned() else { return };
    let thing = Thing::Coop { coop: number };
    let (name, sole) = (name_of(desk, thing), plan.coops().count() == 1);
    // Of several a screen reader hears which.
    let said = |field: &str| {
        let of = if sole { Text::CoopField } else { Text::FieldOf };
        words.say(of, &[("field", field), ("name", &name)])
    };
    let mut changed: Option<Coop> = None;
    let id = Id::unique(("coop fields", number));
    let label = said(words.text(Text::Name));
    let label = Label { shown: words.text(Text::Name), said: &label };
    let called = care::names::coop(words, &coop);
    if let Some(name) = field::text(ui, p, name_id(number), label, &called, |text| Ok(read_name(text))) {
        desk.said.say(Message::Many(ManyMessage::Rename(thing, name)));
    }
    let birds = Shown::of(words, Measure::Count, f64::from(coop.birds()), coop.birds.is_none());
    let read = field::or_nothing(field::count(words, BIRDS));
    let label = said(words.text(Text::Birds));
    let label = Label { shown: words.text(Text::Birds), said: &label };
    if let Some(birds) = field::line(ui, p, id.with("birds"), label, &birds, read) {
        changed = Some(Coop { birds, ..coop.clone() });
    }
    let kinds = KINDS.map(|(kind, text)| (kind, words.text(text)));
    let label = said(words.text(Text::KindOfBird));
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
        let said = said(words.text(text));
        let label = Label { shown: words.text(text), said: &said };
        if let Some(value) = field::line(ui, p, id.with(words.text(text)), label, &shown, read) {
            let mut coop = coop.clone();
            put(&mut coop, value);
            changed = Some(coop);
        }
    }
    let typed = coordinates::fields(ui, desk, id, &name, Stands::Always(coop.at));
    if let Some(at) = typed.and_then(Typed::place) {
        changed = Some(Coop { at, ..coop.clone() });
    }
    let doors = [
        (DoorSide::Ahead, Underlay::DoorAhead),
        (DoorSide::Right, Underlay::DoorRight),
        (DoorSide::Behind, Underlay::DoorBehind),
        (DoorSide::Left, Underlay::DoorLeft),
    ]
    .map(|(side, text)| (side, words.text(text)));
    let said = said(words.text(Underlay::Door));
    let label = Label { shown: words.text(Underlay::Door), said: &said };
    if let Some(door) = field::choice(ui, p, label, &doors, Some(coop.door())) {
        changed = Some(Coop { door: Some(door), ..coop.clone() });
    }
    if let Some(coop) = changed {
        desk.said.say(Message::Make(stated(plan, number, coop)));
    }
}
