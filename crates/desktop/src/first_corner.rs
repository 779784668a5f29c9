//! The first corner, or the one place, of what is drawn by its coordinates: the entry that opens at the pointer with the
//! first digit while nothing has the keys. Of what is not typed the pointer says it.

use drawing::Taken;
use egui::{Id, Painter, Rect, Stroke, Ui, Vec2};
use plan::Point;

use crate::coordinates_entry::{self, FIELDS};
use crate::editor::{Editor, Message};
use crate::entry;
use crate::map_view::on_map;
use crate::said::Said;
use crate::theme::colour;
use crate::tool::{Drawn, Hand, Tool, Typed};

fn opened() -> Id {
    Id::unique("the first corner is typed")
}

/// What is drawn and has no corner yet: where it would stand, and what is typed of that.
fn in_hand(editor: &Editor) -> Option<(Point, Typed)> {
    match editor.tool() {
        Tool::Outline { of, corners, pointer, typed, .. } if corners.is_empty() && *of != Drawn::Known => {
            let pointer = pointer.unwrap_or(editor.view().middle);
            Some((typed.place(corners, pointer), *typed))
        }
        _ => None,
    }
}

/// Whether digits go to it: there is one, and nothing else has the keys.
pub(crate) fn takes_digits(ui: &Ui, editor: &Editor) -> bool {
    ui.memory(|memory| memory.focused().is_none()) && in_hand(editor).is_some()
}

/// The first digit opens the entry.
pub(crate) fn keys(ui: &Ui, editor: &Editor) {
    if !takes_digits(ui, editor) {
        return;
    }
    // West and south of the origin a coordinate begins with its sign.
    let signed = entry::sign_typed(ui);
    if signed || entry::digit_typed(ui) {
        ui.data_mut(|data| data.insert_temp(opened(), true));
    }
    if signed {
        entry::begin(ui);
    }
}

fn is_open(ui: &Ui) -> bool {
    ui.data(|data| data.get_temp::<bool>(opened())).is_some()
}

/// Where it stands.
pub(crate) fn place(ui: &Ui, rect: Rect, editor: &Editor, map: &Taken) -> Option<Rect> {
    let (at, _) = in_hand(editor).filter(|_| is_open(ui))?;
    let beside = (on_map(rect, editor, at), Vec2::splat(1.0));
    Some(entry::beside(rect, beside, coordinates_entry::size(editor), &[], editor, map))
}

/// The entry in its place on the map, and where the corner would stand.
pub(crate) fn paint(ui: &Ui, painter: &Painter, (rect, place): (Rect, Option<Rect>), editor: &Editor, said: &mut Said) {
    if !is_open(ui) {
        return;
    }
    let (Some((at, typed)), Some(place)) = (in_hand(editor), place) else { return close(ui) };
    let p = editor.theme().palette();
    let spot = on_map(rect, editor, at);
    painter.circle_stroke(spot, 9.0, Stroke::new(2.0, colour(p.pick)));
    painter.circle_filled(spot, 2.5, colour(p.pick));
    let (next, set) = coordinates_entry::show(ui, place, editor, at, typed);
    if next != typed {
        // Of a pointer that is nowhere yet it starts from the middle.
        if editor.tool().pointer().is_none() {
            said.say(Message::Hand(Hand::Move(editor.view().middle)));
        }
        said.say(Message::Hand(Hand::Type(next)));
    }
    if set {
        said.say(Message::Hand(Hand::Set));
    }
    if set || !entry::has_keys(ui, FIELDS) {
        // What is not in sight any more leads no pointer.
        if !set && next != Typed::default() {
            said.say(Message::Hand(Hand::Type(Typed::default())));
        }
        close(ui);
    }
}

fn close(ui: &Ui) {
    ui.data_mut(|data| data.remove_temp::<bool>(opened()));
    entry::closed(ui);
}
