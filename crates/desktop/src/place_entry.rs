//! The entry at a corner or at a thing of one place that is picked: its coordinates, typed on the map.
//!
//! Enter opens it and sets what was typed, in one step; Esc, or a click elsewhere, leaves all as it is.

use drawing::{Taken, Thing};
use egui::{Id, Painter, Rect, Stroke, Ui, Vec2};

use crate::coordinates_entry::{self, FIELDS};
use crate::editor::{Editor, Message};
use crate::entry;
use crate::map_view::on_map;
use crate::said::Said;
use crate::theme::colour;
use crate::tool::Typed;

/// What is kept of it between two frames: what it is at, and what was typed.
fn kept() -> Id {
    Id::unique("typed of the picked place")
}

fn open_at(ui: &Ui) -> Option<(Thing, Typed)> {
    ui.data(|data| data.get_temp(kept()))
}

/// Enter opens the entry.
pub(crate) fn keys(ui: &Ui, editor: &Editor) {
    if let Some((thing, _)) = editor.place_to_type()
        && entry::opens(ui, thing)
    {
        ui.data_mut(|data| data.insert_temp(kept(), (thing, Typed::default())));
    }
}

/// Where it stands.
pub(crate) fn place(ui: &Ui, rect: Rect, editor: &Editor, map: &Taken) -> Option<Rect> {
    open_at(ui)?;
    let (_, at) = editor.place_to_type()?;
    let beside = (on_map(rect, editor, at), Vec2::splat(1.0));
    Some(entry::beside(rect, beside, coordinates_entry::size(editor), &[], editor, map))
}

/// The entry in its place on the map, and where the corner would stand.
pub(crate) fn paint(ui: &Ui, painter: &Painter, (rect, place): (Rect, Option<Rect>), editor: &Editor, said: &mut Said) {
    let Some((thing, typed)) = open_at(ui) else { return };
    let at = editor.place_to_type().filter(|&(picked, _)| picked == thing).map(|(_, at)| at);
    let stays = place.zip(at).and_then(|(place, at)| {
        let (next, set) = coordinates_entry::show(ui, place, editor, typed.place(&[], at), typed);
        if set && next != Typed::default() {
            said.say(Message::PutAt(thing, next.place(&[], at)));
        }
        let spot = on_map(rect, editor, next.place(&[], at));
        painter.circle_stroke(spot, 6.0, Stroke::new(2.0, colour(editor.theme().palette().pick)));
        Some(next).filter(|_| !set && entry::has_keys(ui, FIELDS))
    });
    entry::keep(ui, kept(), stays.map(|typed| (thing, typed)));
}
