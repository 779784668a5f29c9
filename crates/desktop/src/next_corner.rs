//! The next corner of an outline or a path that is drawn: the entry at the pointer with its side and its turn. A run that
//! is unrolled has one of its own, with its panels and what is left on the roll.

use drawing::Taken;
use egui::{Pos2, Rect, Ui};
use plan::Point;
use words::texts::{Shape, Unroll as Text};
use words::{Measure, Range};
use workup::shaping::{bearing_deg, turn_deg};

use crate::corner::LONGEST_M;
use crate::editor::{Editor, Message};
use crate::entry::{self, Cell};
use crate::map_view;
use crate::said::Said;
use crate::tool::{Drawn, Hand, Tool, Typed, apart_m};

/// Least width of the entry.
const LEAST_WIDE: f32 = 250.0;
/// Nearer to the last corner the pointer has not set out yet, metres.
const STILL_M: f64 = 1e-6;

/// What is drawn, up to the corner that follows the pointer.
struct Line<'a> {
    corners: &'a [Point],
    last: Point,
    next: Point,
    typed: Typed,
}

impl<'a> Line<'a> {
    /// It, once its first corner is set.
    fn of(editor: &'a Editor) -> Option<Self> {
        let Tool::Outline { of, corners, pointer, typed, .. } = editor.tool() else { return None };
        if matches!(of, Drawn::Run | Drawn::Known) {
            return None;
        }
        let (last, typed) = (*corners.last()?, *typed);
        Some(Self { corners, last, next: typed.place(corners, (*pointer)?), typed })
    }

    /// The turn into the side in hand, of a first side its bearing, degrees; `None` before the pointer sets out.
    fn turn_deg(&self) -> Option<f64> {
        if apart_m(self.last, self.next) < STILL_M {
            return None;
        }
        match *self.corners {
            [.., before, last] => turn_deg([Some(before), Some(self.next)], last),
            _ => Some(bearing_deg(self.last, self.next)),
        }
    }
}

/// What holds the next corner, in words.
fn held(editor: &Editor, line: &Line<'_>) -> String {
    let number = (line.corners.len() + 1).to_string();
    let free = || editor.words().say(Shape::FreeCorner, &[("number", &number)]);
    editor.snapped().map_or_else(free, |snapped| snapped.reason.clone())
}

/// Whether there is an entry: it says in its own line what caught the corner.
pub(crate) fn is_open(editor: &Editor) -> bool {
    Line::of(editor).is_some()
}

/// Where the entry stands.
pub(crate) fn place(rect: Rect, editor: &Editor, map: &Taken) -> Option<Rect> {
    let line = Line::of(editor)?;
    let on_map = |at| map_view::on_map(rect, editor, at);
    let (last, next) = (on_map(line.last), on_map(line.next));
    let others: Vec<Pos2> = line.corners.iter().copied().map(on_map).collect();
    Some(entry::beside(rect, (next, next - last), entry::size(LEAST_WIDE, &held(editor, &line)), &others, editor, map))
}

/// The entry in its place on the map.
pub(crate) fn paint(ui: &Ui, place: Option<Rect>, editor: &Editor, said: &mut Said) {
    let (Some(line), Some(place)) = (Line::of(editor), place) else { return };
    let (words, p) = (editor.words(), editor.theme().palette());
    let turn_text = if line.corners.len() < 2 { Text::Bearing } else { Text::Turn };
    let cell = |label: Text, (figure, unit): (String, &'static str), wide: f32| {
        let label = words.text(label).to_owned();
        Cell { said: label.clone(), label, figure, unit, wide }
    };
    let turn = line.turn_deg().map(|turn| words.typed_parts(Measure::Degrees, turn).0);
    let cells = [
        cell(Text::Side, words.typed_parts(Measure::Length, apart_m(line.last, line.next)), 52.0),
        cell(turn_text, (turn.unwrap_or_default(), words.typed_parts(Measure::Degrees, 0.0).1), 46.0),
    ];
    let read = |cell: usize, text: &str, typed: Typed| {
        let read = match cell {
            0 => words
                .read(Measure::Length, text, Range::up_to(LONGEST_M))
                .map(|side_m| Typed { side_m: Some(side_m), ..typed }),
            _ => words
                .read(Measure::Degrees, text, Range::between(-360.0, 360.0))
                .map(|turn| Typed { turn_deg: Some(turn), ..typed }),
        };
        read.map_err(|refused| refused.sentence(words))
    };
    let ink = if editor.snapped().is_some() { p.pick } else { p.ink2 };
    let foot = held(editor, &line);
    let (next, set) = entry::show(ui, place, (&cells, line.typed), (&foot, ink), p, read);
    if next != line.typed {
        said.say(Message::Hand(Hand::Type(next)));
    }
    if set {
        said.say(Message::Hand(Hand::Set));
    }
}
