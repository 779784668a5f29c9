//! The button that sets a run's energizer down on the map.

use egui::Ui;
use words::texts::Damp as Text;

use crate::editor::Message;
use crate::icons::Icon;
use crate::kit;
use crate::pages::Desk;
use crate::tool::{Drawn, Tool};

pub(super) fn button(ui: &mut Ui, desk: &mut Desk<'_>) {
    let of = Drawn::Energizer(desk.editor.run_index());
    let on = desk.editor.tool().draws(of);
    if kit::button(ui, Icon::Energizer, desk.words.text(Text::PlaceEnergizer), on, desk.p).clicked() {
        desk.said.say(if on { Message::Escape } else { Message::Use(Tool::outline(of)) });
    }
}
