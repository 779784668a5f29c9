//! Damp ground on the ground page: drawn, listed, named, its soil stated.

use drawing::Thing;
use egui::{Id, Ui};
use plan::{Damp, Edit};
use words::texts::{About, Damp as Text};
use words::{Measure, Range};

use super::Desk;
use super::features::{name_field, row};
use crate::editor::Message;
use crate::field::{self, Label, Shown};
use crate::icons::Icon;
use crate::kit;
use crate::tool::Drawn;

/// What may be typed of a soil: from salt water to bare rock.
const SOIL: Range = Range::between(0.1, 100_000.0);

/// The tool that draws it.
pub(super) fn tool(ui: &mut Ui, desk: &mut Desk<'_>) {
    super::tool(ui, desk, Drawn::Damp, Icon::Damp, desk.words.text(Text::DrawDamp));
}

/// Every damp place by name, with its ground.
pub(super) fn places(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, editor) = (desk.words, desk.editor);
    desk.section(ui, words.text(Text::Places), "", About::Damp);
    let all = &editor.plan().ground.damp;
    if all.is_empty() {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::NoPlaces));
        return;
    }
    kit::rule(ui, desk.p);
    for (index, one) in all.iter().enumerate() {
        let name = care::names::listed(editor.plan(), words, care::names::Named::Damp(index));
        let is_it = |thing: Option<Thing>| {
            matches!(
                thing,
                Some(Thing::Damp { damp } | Thing::DampCorner { damp, .. } | Thing::DampSide { damp, .. })
                    if damp == index
            )
        };
        let area = words.area(drawing::map::area_m2(&one.outline));
        row(ui, desk, ("damp row", index), Thing::Damp { damp: index }, &is_it, [&name, &area]);
    }
}

/// The fields of one that is picked.
pub(in crate::pages) fn fields(ui: &mut Ui, desk: &mut Desk<'_>, index: usize, one: &Damp, name: &str) {
    let words = desk.words;
    let id = Id::unique(("damp fields", index));
    let mut changed = name_field(ui, desk, id.with("name"), &one.name, name).map(|name| Damp { name, ..one.clone() });
    let stands_ohm_m = desk.editor.plan().ground.damp_ohm_m(one);
    let shown = Shown::of(words, Measure::OhmMetres, stands_ohm_m, one.resistivity_ohm_m.is_none());
    let said = words.say(Text::SoilOf, &[("name", name)]);
    let label = Label { shown: words.text(Text::Soil), said: &said };
    let read = field::or_nothing(field::figure(words, Measure::OhmMetres, SOIL));
    if let Some(resistivity_ohm_m) = field::line(ui, desk.p, id.with("soil"), label, &shown, read) {
        changed = Some(Damp { resistivity_ohm_m, ..one.clone() });
    }
    ui.add_space(4.0);
    desk.second(ui, words.text(Text::SoilWhy));
    ui.add_space(6.0);
    if let Some(changed) = changed {
        let mut damp = desk.editor.plan().ground.damp.clone();
        damp[index] = changed;
        desk.said.say(Message::Make(Edit::SetDamp { damp }));
    }
}
