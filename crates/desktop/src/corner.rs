//! A corner in the hand on the map: the line that it keeps to, and the entry at the pointer with its sides and its turn.

use drawing::{Ink, Taken};
use egui::{Rect, Ui, vec2};
use words::texts::Shape as Text;
use words::{Measure, Range};
use workup::shaping::{CornerTyped, turn_deg};

use crate::editor::{CornerInHand, Editor, Message, ShapingMessage};
use crate::entry::{self, Cell};
use crate::map_view;
use crate::said::Said;
use crate::tool::apart_m;

/// Width of the entry for so many fields.
const WIDE: [f32; 4] = [120.0, 150.0, 250.0, 356.0];
/// The longest side that can be typed, metres.
pub(crate) const LONGEST_M: f64 = 10_000.0;

/// What can be typed of a corner.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Field {
    Before,
    After,
    Turn,
}

/// The line that the corner in the hand keeps to.
pub(crate) fn ink(editor: &Editor) -> Vec<Ink> {
    let way = editor.corner_in_hand().and_then(|corner| corner.way);
    way.map(|(line, closed)| drawing::shaping::kept(editor.view(), &line, closed)).unwrap_or_default()
}

/// Where the entry beside the corner in the hand stands.
pub(crate) fn place(rect: Rect, editor: &Editor, map: &Taken) -> Option<Rect> {
    let corner = editor.corner_in_hand()?;
    let on_map = |at| map_view::on_map(rect, editor, at);
    let size = vec2(WIDE[cells(editor, &corner).len().min(3)], entry::TALL);
    // Outside, where the outline is not.
    let others: Vec<egui::Pos2> = corner.neighbours.into_iter().flatten().map(on_map).collect();
    Some(entry::beside(rect, (on_map(corner.at), away(editor, &corner)), size, &others, editor, map))
}

/// The entry beside the corner in the hand, in its place on the map.
pub(crate) fn paint(ui: &Ui, place: Option<Rect>, editor: &Editor, said: &mut Said) {
    let (Some(corner), Some(place)) = (editor.corner_in_hand(), place) else { return };
    let (words, p) = (editor.words(), editor.theme().palette());
    let (fields, cells): (Vec<Field>, Vec<Cell>) = cells(editor, &corner).into_iter().unzip();
    let read = |cell: usize, text: &str, typed: CornerTyped| -> Result<CornerTyped, String> {
        let length = || words.read(Measure::Length, text, Range::up_to(LONGEST_M));
        let read = match fields[cell] {
            Field::Before => length().map(|side_m| CornerTyped { before_m: Some(side_m), ..typed }),
            Field::After => length().map(|side_m| CornerTyped { after_m: Some(side_m), ..typed }),
            Field::Turn => words
                .read(Measure::Degrees, text, Range::between(0.0, MOST_TURN_DEG))
                .map(|turn| CornerTyped { turn_deg: Some(turn), ..typed }),
        };
        let typed = read.map_err(|refused| refused.sentence(words))?;
        editor.corner_can(typed).then_some(typed).ok_or_else(|| words.text(Text::CannotClose).to_owned())
    };
    let ink = if corner.way.is_some() || editor.snapped().is_some() { p.pick } else { p.ink2 };
    let foot = editor.corner_reason(&corner);
    let (next, set) = entry::show(ui, place, (&cells, corner.typed), (&foot, ink), p, read);
    if next != corner.typed {
        said.say(Message::Shaping(ShapingMessage::Typed(next)));
    }
    if set {
        said.say(Message::Drop);
    }
}

/// A corner that turns further doubles back on itself, degrees.
pub(crate) const MOST_TURN_DEG: f64 = 179.0;

/// The way from its neighbours' middle to the corner, on the screen.
fn away(editor: &Editor, corner: &CornerInHand) -> egui::Vec2 {
    let known: Vec<plan::Point> = corner.neighbours.into_iter().flatten().collect();
    let count = known.len().max(1) as f64;
    let sum = known.iter().fold((0.0, 0.0), |sum, at| (sum.0 + at.east_m, sum.1 + at.north_m));
    let [right, down] = editor.view().spot(plan::Point::new(sum.0 / count, sum.1 / count));
    let [to_right, to_down] = editor.view().spot(corner.at);
    vec2(to_right - right, to_down - down)
}

fn cells(editor: &Editor, corner: &CornerInHand) -> Vec<(Field, Cell)> {
    let words = editor.words();
    let number = |index: usize| (index % corner.corners.max(1) + 1).to_string();
    let length = |text: Text, said: Text, other: String, beside: plan::Point| {
        let (figure, unit) = words.typed_parts(Measure::Length, apart_m(beside, corner.at));
        let places = [("number", other.as_str())];
        Cell { label: words.say(text, &places), said: words.say(said, &places), figure, unit, wide: 52.0 }
    };
    let [before, after] = corner.neighbours;
    let before = before.map(|before| {
        let other = number(corner.corner + corner.corners - 1);
        (Field::Before, length(Text::Before, Text::SideBefore, other, before))
    });
    let after =
        after.map(|after| (Field::After, length(Text::After, Text::SideAfter, number(corner.corner + 1), after)));
    let turn = turn_deg(corner.neighbours, corner.at).map(|turn| {
        let (figure, unit) = words.typed_parts(Measure::Degrees, turn);
        let label = words.text(Text::Turn).to_owned();
        (Field::Turn, Cell { said: label.clone(), label, figure, unit, wide: 46.0 })
    });
    before.into_iter().chain(after).chain(turn).collect()
}
