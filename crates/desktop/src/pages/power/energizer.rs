//! Where the energizer stands and where its lead meets the net: set down on the map, or typed.

use drawing::Thing;
use egui::{Id, Ui, vec2};
use plan::{Edit, Run};
use words::texts::{About, Damp as Text, Underlay};

use crate::editor::Message;
use crate::icons::Icon;
use crate::kit;
use crate::pages::coordinates::{self, Stands};
use crate::pages::{Desk, Mark, seek};
use crate::roster::{self, Item};
use crate::tool::{Drawn, Tool};

/// In words, on the map, in figures.
pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run) {
    let (words, editor) = (desk.words, desk.editor);
    let index = editor.run_index();
    let picked = editor.picked() == Some(Thing::Energizer { run: index });
    let was =
        ui.data_mut(|data| std::mem::replace(data.get_temp_mut_or_default(Id::unique("energizer was picked")), picked));
    let head = words.text(Text::WhereItStands);
    desk.section(ui, head, "", About::Leads);
    if picked && !was {
        seek(ui.ctx(), Some(Mark::Section(head.to_owned())));
    }
    ui.add_space(4.0);
    desk.second(ui, &care::stands_said(editor.plan(), run, words));
    ui.add_space(8.0);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        tool(ui, desk, Drawn::Energizer(index), Icon::Energizer, words.text(Text::PlaceEnergizer));
        tool(ui, desk, Drawn::Feed(index), Icon::Feed, words.text(Underlay::PlaceFeed));
    });
    ui.add_space(6.0);
    let name = roster::name(editor, Item::Thing(Thing::Energizer { run: index }));
    fields(ui, desk, index, &name);
}

fn tool(ui: &mut Ui, desk: &mut Desk<'_>, of: Drawn, icon: Icon, label: &str) {
    let on = desk.editor.tool().draws(of);
    if kit::button(ui, icon, label, on, desk.p).clicked() {
        desk.said.say(if on { Message::Escape } else { Message::Use(Tool::outline(of)) });
    }
}

/// Its place in figures, at the feed point until something else is stated.
pub(in crate::pages) fn fields(ui: &mut Ui, desk: &mut Desk<'_>, index: usize, name: &str) {
    let Some(run) = desk.editor.plan().runs.get(index) else { return };
    let Some(stands) = Stands::at(run.energizer_at, workup::lead::energizer(run)) else { return };
    let id = Id::unique(("energizer place", &run.id));
    if let Some(typed) = coordinates::fields(ui, desk, id, name, stands) {
        let run = Run { energizer_at: typed.place(), ..run.clone() };
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(run) }));
    }
}
