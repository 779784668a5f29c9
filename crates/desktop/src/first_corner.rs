//! The first corner, or the one place, of what is drawn by its coordinates: the entry that opens at the pointer with the
//! first digit while nothing has the keys. Of what is not typed the pointer says it.

use drawing::Taken;
use egui::{Id, Painter, Pos2, Rect, Stroke, Ui, Vec2, vec2};
use plan::Point;
use words::Measure;
use words::texts::{Shape as Text, Unroll};

use crate::editor::{Editor, Message};
use crate::entry::{self, Cell};
use crate::field;
use crate::pages::PLACE_M;
use crate::said::Said;
use crate::theme::colour;
use crate::tool::{Drawn, Hand, Tool, Typed};

/// Least width of the entry.
const LEAST_WIDE: f32 = 262.0;
/// How many fields it has.
const FIELDS: usize = 2;

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

fn on_map(rect: Rect, editor: &Editor, at: Point) -> Pos2 {
    let [right, down] = editor.view().spot(at);
    rect.min + vec2(right, down)
}

/// Where it stands.
pub(crate) fn place(ui: &Ui, rect: Rect, editor: &Editor, map: &Taken) -> Option<Rect> {
    let (at, _) = in_hand(editor).filter(|_| is_open(ui))?;
    let beside = (on_map(rect, editor, at), Vec2::splat(1.0));
    let size = entry::size(LEAST_WIDE, editor.words().text(Unroll::PlaceSets));
    Some(entry::beside(rect, beside, size, &[], editor, map))
}

/// The entry in its place on the map, and where the corner would stand.
pub(crate) fn paint(ui: &Ui, painter: &Painter, (rect, place): (Rect, Option<Rect>), editor: &Editor, said: &mut Said) {
    if !is_open(ui) {
        return;
    }
    let (Some((at, typed)), Some(place)) = (in_hand(editor), place) else { return close(ui) };
    let (words, p) = (editor.words(), editor.theme().palette());
    let cell = |text: Text, value_m: f64| {
        let (figure, unit) = words.typed_parts(Measure::Length, value_m);
        let label = words.text(text).to_owned();
        Cell { said: label.clone(), label, figure, unit, wide: 62.0 }
    };
    let cells = [cell(Text::East, at.east_m), cell(Text::North, at.north_m)];
    let read = |cell: usize, text: &str, typed: Typed| {
        let value_m = field::figure(words, Measure::Length, PLACE_M)(text)?;
        Ok(match cell {
            0 => Typed { east_m: Some(value_m), ..typed },
            _ => Typed { north_m: Some(value_m), ..typed },
        })
    };
    let spot = on_map(rect, editor, at);
    painter.circle_stroke(spot, 9.0, Stroke::new(2.0, colour(p.pick)));
    painter.circle_filled(spot, 2.5, colour(p.pick));
    entry::tabs_round(ui, FIELDS);
    let foot = words.text(Unroll::PlaceSets);
    let (next, set) = entry::show(ui, place, (&cells, typed), (foot, p.ink2), p, read);
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
