//! Known places that corners are taped from, on the ground page: put down on the map, named and typed here.

use drawing::Thing;
use egui::{Id, Ui};
use plan::{Edit, TapeLetter, TapePoint};
use words::texts::{About, Ground, Taping as Text};
use workup::tape::KnownPlace;

use super::features::{name_field, row};
use super::{Desk, name_of, tool};
use crate::editor::{Message, known_places};
use crate::field::{self, Label};
use crate::icons::Icon;
use crate::kit;
use crate::pages::coordinates::{self, Stands, Typed};
use crate::roster::{self, Item};
use crate::tool::Drawn;

/// The places in a list, what the sheet does with them, and the tool that puts one down.
pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, plan) = (desk.words, desk.editor.plan());
    desk.section(ui, words.text(Text::Head), "", About::Taped);
    ui.add_space(6.0);
    let named = |known: KnownPlace| name_of(desk, Thing::TapePoint { point: known.point });
    // A letter is free and a place has none: the keeper says whether it takes it.
    let has_letter = |one: &TapePoint| one.letter.is_some();
    let waits = plan.tape_points.iter().any(has_letter) && !plan.tape_points.iter().all(has_letter);
    let sentence = match (&workup::tape::known(plan)[..], plan.tape_points.len()) {
        ([], _) => words.text(Text::None).to_owned(),
        ([one], _) if waits => words.say(Text::OneOfMore, &[("name", &named(*one))]),
        ([one], _) => words.say(Text::One, &[("name", &named(*one))]),
        ([_, _], 2) => words.text(Text::Two).to_owned(),
        ([one, other, ..], _) => words.say(Text::More, &[("one", &named(*one)), ("other", &named(*other))]),
    };
    desk.second(ui, &sentence);
    ui.add_space(4.0);
    if !plan.tape_points.is_empty() {
        kit::rule(ui, desk.p);
    }
    for point in 0..plan.tape_points.len() {
        let thing = Thing::TapePoint { point };
        let place = roster::figures(desk.editor, Item::Thing(thing));
        let is_it = |other: Option<Thing>| other == Some(thing);
        row(ui, desk, ("tape point row", point), thing, &is_it, [&name_of(desk, thing), &place]);
    }
    ui.add_space(6.0);
    tool(ui, desk, Drawn::TapePoint, Icon::Known, words.text(Text::Put));
}

/// The field in which a place is named.
pub(in crate::pages) fn name_id(point: usize) -> Id {
    Id::unique(("tape point fields", point)).with("name")
}

/// The fields of one that is picked.
pub(in crate::pages) fn fields(ui: &mut Ui, desk: &mut Desk<'_>, point: usize) {
    let words = desk.words;
    let points = &desk.editor.plan().tape_points;
    let Some(one) = points.get(point) else { return };
    let name = name_of(desk, Thing::TapePoint { point });
    let mut changed =
        name_field(ui, desk, name_id(point), &one.name, &name).map(|name| TapePoint { name, ..one.clone() });
    let id = Id::unique(("tape point fields", point));
    let typed = coordinates::fields(ui, desk, id, &name, Stands::Always(one.at));
    if let Some(at) = typed.and_then(Typed::place) {
        changed = Some(TapePoint { at, ..one.clone() });
    }
    if points.len() > 1 {
        let on = workup::tape::known(desk.editor.plan()).into_iter().find(|known| known.point == point);
        let label = words.say(Ground::FieldOf, &[("field", words.text(Text::Letter)), ("name", &name)]);
        let label = Label { shown: words.text(Text::Letter), said: &label };
        let letters = TapeLetter::ALL.map(|letter| (letter, letter.as_str()));
        let chosen = field::choice(ui, desk.p, label, &letters, on.map(|known| known.letter));
        if let Some(letter) = chosen {
            let points = known_places::called(desk.editor.plan(), point, letter);
            desk.said.say(Message::Make(Edit::SetTapePoints { points }));
            return;
        }
    }
    if let Some(changed) = changed {
        let mut points = points.clone();
        points[point] = changed;
        desk.said.say(Message::Make(Edit::SetTapePoints { points }));
    }
}
