//! Picking and treating several things by hand: keys, the clipboard's events, and the rectangle.
//!
//! The rectangle that is being drawn lives in egui's memory until the hand lets go.

use drawing::Thing;
use egui::{Event, Id, Key, Modifiers, PointerButton, Pos2, Rect, Response, Shape, Stroke, Ui};
use plan::Point;
use words::texts::{Many as Text, Window};

use crate::editor::{Editor, ManyMessage, Message};
use crate::pen;
use crate::said::Said;
use crate::theme::{self, colour};
use crate::tool::Tool;

/// Where the rectangle was begun, kept under this name while it is drawn.
fn begun() -> Id {
    Id::unique("rectangle to pick by")
}

fn say(said: &mut Said, message: ManyMessage) {
    said.say(Message::Many(message));
}

/// Listens to the keys of several things and to the clipboard; `hover` is the place under the pointer.
pub(crate) fn keys(ui: &Ui, editor: &Editor, hover: Option<Point>, said: &mut Said) {
    if ui.ctx().text_edit_focused() || editor.question().is_some() {
        return;
    }
    let picking = *editor.tool() == Tool::Pick;
    let (mut copies, mut cuts, mut pasted) = (false, false, None);
    ui.input_mut(|input| {
        let at = hover.filter(|_| input.modifiers.shift);
        input.events.retain(|event| {
            match event {
                // A tape at hand is copied in words.
                Event::Copy if !matches!(editor.tool(), Tool::Tape(_)) => copies = true,
                Event::Cut => cuts = true,
                Event::Paste(text) => pasted = Some((text.clone(), at)),
                _ => return true,
            }
            false
        });
        if input.consume_key(Modifiers::COMMAND, Key::A) {
            say(said, ManyMessage::All);
        }
        if !picking {
            return;
        }
        if input.consume_key(Modifiers::NONE, Key::B) {
            say(said, ManyMessage::ByRectangle(!editor.picks_by_rectangle()));
        }
        // With a corner in the hand L keeps its length.
        if editor.held_from().is_none() && input.consume_key(Modifiers::NONE, Key::L) {
            say(said, ManyMessage::List(!editor.is_listing()));
        }
        if input.consume_key(Modifiers::SHIFT, Key::H) {
            say(said, ManyMessage::ShowAll);
        }
        if editor.picked().is_some() {
            if input.consume_key(Modifiers::NONE, Key::H) {
                say(said, ManyMessage::HidePicked);
            }
            if input.consume_key(Modifiers::NONE, Key::K) {
                say(said, ManyMessage::LockPicked);
            }
        }
    });
    for (asked, message) in [(copies, ManyMessage::Copy), (cuts, ManyMessage::Cut)] {
        if asked {
            say(said, message);
        }
    }
    if let Some((text, at)) = pasted {
        say(said, ManyMessage::Paste(text, at));
    }
}

/// Ctrl with an arrow moves what is picked by a panel; of a stretch of grass it takes the end along instead.
pub(crate) fn nudge_keys(ui: &Ui, editor: &Editor, said: &mut Said) {
    if matches!(editor.picked(), None | Some(Thing::Zone { .. })) {
        return;
    }
    for (key, east, north) in [
        (Key::ArrowLeft, -1.0, 0.0),
        (Key::ArrowRight, 1.0, 0.0),
        (Key::ArrowUp, 0.0, 1.0),
        (Key::ArrowDown, 0.0, -1.0),
    ] {
        let steps = ui.input_mut(|input| input.count_and_consume_key(Modifiers::COMMAND, key)) as f64;
        if steps > 0.0 {
            say(said, ManyMessage::NudgePanels(east * steps, north * steps));
        }
    }
}

/// Whether a drag that begins on a thing draws a rectangle: with Shift on free ground, or with the tool anywhere.
fn begins_on(ui: &Ui, editor: &Editor, thing: Option<Thing>) -> bool {
    let free = matches!(thing, None | Some(Thing::Boundary | Thing::Run { .. }));
    editor.picks_by_rectangle() || (free && ui.input(|input| input.modifiers.shift))
}

/// Draws the rectangle while the hand drags it; whether it does, so that nothing else is done with the drag.
pub(crate) fn rectangle(
    ui: &Ui,
    response: &Response,
    editor: &Editor,
    thing_at: &impl Fn(Pos2) -> Option<Thing>,
    place_at: &impl Fn(Pos2) -> Point,
    said: &mut Said,
) -> bool {
    if *editor.tool() != Tool::Pick {
        return false;
    }
    if response.drag_started_by(PointerButton::Primary)
        && let Some(at) = ui.input(|input| input.pointer.press_origin())
        && begins_on(ui, editor, thing_at(at))
    {
        ui.data_mut(|data| data.insert_temp(begun(), place_at(at)));
    }
    let Some(from) = ui.data(|data| data.get_temp::<Point>(begun())) else { return false };
    if response.drag_stopped() || !response.dragged() {
        ui.data_mut(|data| data.remove_temp::<Point>(begun()));
        if let Some(at) = response.interact_pointer_pos().filter(|_| response.drag_stopped()) {
            let also = ui.input(|input| input.modifiers.shift);
            say(said, ManyMessage::Within(from, place_at(at), also));
        }
    }
    true
}

/// A click with Shift picks one more thing, or lets go of it; whether it was one.
pub(crate) fn click(response: &Response, thing: Option<Thing>, said: &mut Said) -> bool {
    let also = response.clicked() && response.ctx.input(|input| input.modifiers.shift);
    if let Some(thing) = thing.filter(|_| also) {
        say(said, ManyMessage::Also(thing));
    }
    also
}

/// Paints the rectangle that is being drawn.
pub(crate) fn paint(ui: &Ui, painter: &egui::Painter, editor: &Editor, on_sheet: &impl Fn(Point) -> Pos2) {
    let Some(from) = ui.data(|data| data.get_temp::<Point>(begun())) else { return };
    let Some(to) = ui.input(|input| input.pointer.latest_pos()) else { return };
    let p = editor.theme().palette();
    let rect = Rect::from_two_pos(on_sheet(from), to);
    painter.rect_filled(rect, 0.0, theme::thinned(p.pick, 0.08));
    let corners = [rect.left_top(), rect.right_top(), rect.right_bottom(), rect.left_bottom(), rect.left_top()];
    pen::bed(painter, editor, corners.to_vec(), 1.5);
    painter.extend(Shape::dashed_line(&corners, Stroke::new(1.5, colour(p.pick)), 6.0, 3.0));
}

/// What the foot of the map says of several things.
pub(crate) fn hint(editor: &Editor) -> Option<String> {
    let words = editor.words();
    if editor.picks_by_rectangle() {
        return Some(words.text(Text::HintRectangle).to_owned());
    }
    let count = editor.chosen().len();
    (editor.has_several() && editor.notice().is_none_or(|notice: Window| notice == Window::SomeAreLocked))
        .then(|| words.say(Text::SeveralPicked, &[("count", &count.to_string())]))
}
