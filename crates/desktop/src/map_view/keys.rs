//! Keys that are about the map, while no field has them.

use drawing::Thing;
use egui::{Key, Modifiers, Ui};
use plan::Point;
use workup::shaping::Keep;

use crate::editor::{Editor, Message, Over, ShapingMessage, corner_of};
use crate::said::Said;
use crate::tool::{Hand, Tool};
use crate::{commands, first_corner, leading, many, measured, pages, place_entry, side_entry};

/// A step of the arrow keys, metres; ten times that with Shift.
pub(crate) const NUDGE_M: f64 = 0.1;
/// How much of the map an arrow moves it, without Shift and with it.
const PAN: f32 = 0.125;
const PAN_FAR: f32 = 0.75;
/// A step of the turning keys, degrees.
pub(crate) const TURN_DEG: f64 = 5.0;

/// Listens to the keys that are about the map, while no field has them.
pub(crate) fn keys(ui: &Ui, editor: &Editor, said: &mut Said) {
    if ui.ctx().text_edit_focused() {
        return;
    }
    let drawing = *editor.tool() != Tool::Pick;
    let signs = first_corner::takes_digits(ui, editor);
    many::keys(ui, editor, pointed(ui, editor), said);
    // Esc closes an open menu first.
    let menu = egui::Popup::is_any_open(ui.ctx());
    ui.input_mut(|input| {
        if !menu && input.consume_key(Modifiers::NONE, Key::Escape) {
            said.say(Message::Escape);
        }
        if drawing && input.consume_key(Modifiers::NONE, Key::Enter) {
            said.say(Message::Hand(Hand::CloseHere));
        }
        if drawing && input.consume_key(Modifiers::NONE, Key::Backspace) {
            said.say(Message::Hand(Hand::Back));
        }
        if !drawing && input.consume_key(Modifiers::NONE, Key::Delete) {
            said.say(Message::Remove);
        }
        if input.consume_key(Modifiers::NONE, Key::D) {
            said.say(Message::KeepDimensions(!editor.keeps_dimensions()));
        }
        // What is half drawn is not thrown away.
        if !matches!(editor.tool(), Tool::Outline { .. }) && input.consume_key(Modifiers::NONE, Key::T) {
            said.say(Message::Use(Tool::tape()));
        }
        if input.consume_key(Modifiers::NONE, Key::F) {
            said.say(Message::Fit);
        }
        let (larger, smaller) = (
            input.consume_key(Modifiers::NONE, Key::Plus) || input.consume_key(Modifiers::NONE, Key::Equals),
            !signs && input.consume_key(Modifiers::NONE, Key::Minus),
        );
        if larger || smaller {
            let middle = editor.view().size.map(|side| side / 2.0);
            let by = if larger { commands::ZOOM } else { 1.0 / commands::ZOOM };
            said.say(Message::Zoom(by, middle));
        }
        if input.modifiers.alt != editor.is_free() {
            said.say(Message::Free(input.modifiers.alt));
        }
    });
    measured::copy(ui, editor);
    if drawing {
        first_corner::keys(ui, editor);
        leading::by_keys(ui, editor, said);
        return;
    }
    if pages::list::is_walked(ui) {
        return;
    }
    side_entry::keys(ui, editor);
    place_entry::keys(ui, editor);
    many::nudge_keys(ui, editor, said);
    shape_keys(ui, editor, said);
    if editor.picked().is_none() {
        pan_keys(ui, editor, said);
    }
    if editor.picked().is_some() {
        let turn = ui.input_mut(|input| {
            let (left, right) = (Key::OpenBracket, Key::CloseBracket);
            input.count_and_consume_key(Modifiers::NONE, right) as f64
                - input.count_and_consume_key(Modifiers::NONE, left) as f64
        });
        if turn != 0.0 {
            said.say(Message::Turn(turn * TURN_DEG));
        }
        let ways = [
            (Key::ArrowLeft, -1.0, 0.0),
            (Key::ArrowRight, 1.0, 0.0),
            (Key::ArrowUp, 0.0, 1.0),
            (Key::ArrowDown, 0.0, -1.0),
        ];
        for (key, east, north) in ways {
            // Of a stretch of grass: Ctrl takes its end a step along, Alt its start.
            if editor.picked().is_some_and(|thing| matches!(thing, Thing::Zone { .. })) {
                for (modifiers, last) in [(Modifiers::COMMAND, true), (Modifiers::ALT, false)] {
                    let steps = ui.input_mut(|input| {
                        let far = input.count_and_consume_key(modifiers | Modifiers::SHIFT, key) as f64;
                        far * 10.0 + input.count_and_consume_key(modifiers, key) as f64
                    });
                    if steps > 0.0 {
                        said.say(Message::NudgeEnd(last, east * steps * NUDGE_M, north * steps * NUDGE_M));
                    }
                }
            }
            let steps = ui.input_mut(|input| {
                let far = input.count_and_consume_key(Modifiers::SHIFT, key) as f64;
                far * 10.0 + input.count_and_consume_key(Modifiers::NONE, key) as f64
            });
            if steps > 0.0 {
                said.say(Message::Nudge(east * steps * NUDGE_M, north * steps * NUDGE_M));
            }
        }
    }
}

/// With nothing picked the arrows look on over the ground that way; with Shift most of the map at once. A part of the
/// window that has the keys keeps them.
fn pan_keys(ui: &Ui, editor: &Editor, said: &mut Said) {
    if ui.memory(|memory| memory.focused().is_some()) || editor.question().is_some() {
        return;
    }
    let [wide, high] = editor.view().size;
    for (key, right, down) in [
        (Key::ArrowLeft, 1.0, 0.0),
        (Key::ArrowRight, -1.0, 0.0),
        (Key::ArrowUp, 0.0, 1.0),
        (Key::ArrowDown, 0.0, -1.0),
    ] {
        let share = ui.input_mut(|input| {
            let far = input.count_and_consume_key(Modifiers::SHIFT, key) as f32 * PAN_FAR;
            far + input.count_and_consume_key(Modifiers::NONE, key) as f32 * PAN
        });
        if share > 0.0 {
            said.say(Message::Pan(right * share * wide, down * share * high));
        }
    }
}

/// The place under the pointer where the map was in the last frame.
fn pointed(ui: &Ui, editor: &Editor) -> Option<Point> {
    let map = ui.ctx().read_response(super::map_id())?;
    let at = map.hover_pos()?;
    Some(editor.view().place([at.x - map.rect.left(), at.y - map.rect.top()]))
}

/// Keys that shape the outline of what is picked.
fn shape_keys(ui: &Ui, editor: &Editor, said: &mut Said) {
    let (shift, none) = (Modifiers::SHIFT, Modifiers::NONE);
    // With Shift first: without, the same key would be taken.
    let keys = [
        (shift, Key::M, ShapingMessage::Mirror(Over::NorthSouth)),
        (none, Key::M, ShapingMessage::Mirror(Over::EastWest)),
        (shift, Key::N, ShapingMessage::Beside(false)),
        (none, Key::N, ShapingMessage::Beside(true)),
        (none, Key::I, ShapingMessage::InsertCorner),
        (none, Key::Q, ShapingMessage::SquareUp),
        (none, Key::C, ShapingMessage::CutCorner),
        (none, Key::P, ShapingMessage::PivotHere),
    ];
    for (modifiers, key, message) in keys {
        if ui.input_mut(|input| input.consume_key(modifiers, key)) {
            said.say(Message::Shaping(message));
        }
    }
    // With nothing in the hand L lists everything on the map, and A keeps the angle of a corner that is picked only: a key
    // pressed by chance changes nothing that is yet to be drawn.
    let corner = editor.picked().is_some_and(|thing| corner_of(editor.plan(), thing).is_some());
    let by_length = editor.held_from().map(|_| (Key::L, Keep::Length));
    let by_angle = (corner || editor.held_from().is_some()).then_some((Key::A, Keep::Angle));
    for (key, keep) in by_length.into_iter().chain(by_angle) {
        if ui.input_mut(|input| input.consume_key(Modifiers::NONE, key)) {
            let keep = if editor.keep() == keep { Keep::Free } else { keep };
            said.say(Message::Shaping(ShapingMessage::Keep(keep)));
        }
    }
}
