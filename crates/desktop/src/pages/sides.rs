//! The sides of an outline, each with its length in a field: typing one moves the side's far corner along it.

use drawing::Thing;
use egui::{Id, Rect, Ui};
use plan::{Point, Shape};
use words::texts::Shaping as Text;
use words::{Measure, Range};

use super::Desk;
use crate::editor::Message;
use crate::field::{self, Label, Shown};
use crate::tool::apart_m;

/// A side longer than this is a slip of the pen, metres.
const SIDE_M: Range = Range::between(0.1, 10_000.0);
/// More sides than this are a traced line: its corners are dragged, not typed.
const MOST_SIDES: usize = 24;

/// Shows them under a head of their own; `thing` names a side for the map.
pub(super) fn show(
    ui: &mut Ui,
    desk: &mut Desk<'_>,
    shape: &Shape,
    outline: &[Point],
    closed: bool,
    thing: impl Fn(usize) -> Thing,
) {
    let words = desk.words;
    let corners = outline.len();
    let sides = if closed { corners } else { corners.saturating_sub(1) };
    if corners < 2 || sides > MOST_SIDES {
        return;
    }
    desk.section(ui, words.text(Text::Sides), words.text(Text::SidesAside));
    ui.add_space(6.0);
    for side in 0..sides {
        let (from, to) = (side, (side + 1) % corners);
        let numbers = [("from", (from + 1).to_string()), ("to", (to + 1).to_string())];
        let numbers = numbers.each_ref().map(|(name, number)| (*name, number.as_str()));
        let (shown, said) = (words.say(Text::SideFromTo, &numbers), words.say(Text::SideLabel, &numbers));
        let length_m = apart_m(outline[from], outline[to]);
        let id = Id::unique(("side length", shape, side));
        let read = field::figure(words, Measure::Length, SIDE_M);
        let value = Shown::of(words, Measure::Length, length_m, false);
        let top = ui.cursor().top();
        if let Some(length_m) = field::line(ui, desk.p, id, Label { shown: &shown, said: &said }, &value, read) {
            desk.said.say(Message::SideLength(shape.clone(), side, length_m));
        }
        let row = Rect::from_x_y_ranges(ui.max_rect().x_range(), top..=ui.cursor().top());
        if ui.rect_contains_pointer(row) {
            desk.said.hovered = desk.said.hovered.or(Some(thing(side)));
        }
    }
}
