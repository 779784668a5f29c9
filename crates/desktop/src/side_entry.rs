//! The entry at a side that is picked: its length, of a run's side its panels, and its bearing, typed on the map.
//!
//! Enter opens it, and sets what was typed in one step, as the outline's table does; Esc, or a click elsewhere, leaves the
//! side as it is. Digits alone open pages. What is typed lives in egui's memory.

use drawing::{Taken, Thing};
use egui::{Id, Painter, Pos2, Rect, Shape, Stroke, Ui};
use words::Measure;
use words::texts::Shape as Text;

use crate::editor::{Editor, Message, ShapingMessage};
use crate::entry::{self, Cell};
use crate::map_view;
use crate::said::Said;
use crate::side::Side;
use crate::theme::colour;

/// Least width of the entry with and without panels.
const LEAST_WIDE: [f32; 2] = [320.0, 262.0];

/// What was typed of the side.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Typed {
    /// Its length along the ground, metres, and whether it was typed by panels.
    length: Option<(f64, bool)>,
    /// Where it points, degrees clockwise from north.
    bearing_deg: Option<f64>,
}

/// What can be typed.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Field {
    Length,
    Panels,
    Bearing,
}

/// What is kept of it between two frames: the side that it is at, and what was typed.
fn kept() -> Id {
    Id::unique("typed of the picked side")
}

fn open_at(ui: &Ui) -> Option<(Thing, Typed)> {
    ui.data(|data| data.get_temp(kept()))
}

/// Enter opens the entry.
pub(crate) fn keys(ui: &Ui, editor: &Editor) {
    if let Some(thing) = editor.picked()
        && editor.side_to_type().is_some()
        && entry::opens(ui, thing)
    {
        ui.data_mut(|data| data.insert_temp(kept(), (thing, Typed::default())));
    }
}

/// Where it stands: beside the middle of its side, away from the middle of what the side belongs to.
pub(crate) fn place(ui: &Ui, rect: Rect, editor: &Editor, map: &Taken) -> Option<Rect> {
    open_at(ui)?;
    let (shape, side) = editor.side_to_type()?;
    let one = Side::of(editor, &shape, side)?;
    let on_map = |at| map_view::on_map(rect, editor, at);
    let corners: Vec<Pos2> = editor.plan().outline(&shape)?.iter().copied().map(on_map).collect();
    let sum = corners.iter().fold(egui::Vec2::ZERO, |sum, corner| sum + corner.to_vec2());
    let middle = (sum / corners.len() as f32).to_pos2();
    let [from, to] = one.ends.map(on_map);
    let at = from + (to - from) / 2.0;
    let size = entry::size(LEAST_WIDE[usize::from(!one.has_nets)], &one.say(Text::SideSets));
    Some(entry::beside(rect, (at, at - middle), size, &[from, to], editor, map))
}

/// The entry in its place on the map, and the side as it would lie.
pub(crate) fn paint(ui: &Ui, painter: &Painter, (rect, place): (Rect, Option<Rect>), editor: &Editor, said: &mut Said) {
    let Some((thing, typed)) = open_at(ui) else { return };
    let stays = place.filter(|_| editor.picked() == Some(thing)).and_then(|place| {
        let typed = at_side(ui, place, editor, typed, said)?;
        as_typed(painter, rect, editor, typed);
        Some(typed)
    });
    entry::keep(ui, kept(), stays.map(|typed| (thing, typed)));
}

/// What is typed now; `None` once it is set or left.
fn at_side(ui: &Ui, place: Rect, editor: &Editor, typed: Typed, said: &mut Said) -> Option<Typed> {
    let (words, p) = (editor.words(), editor.theme().palette());
    let (shape, side) = editor.side_to_type()?;
    let one = Side::of(editor, &shape, side)?;
    let along_m = typed.length.map_or_else(|| one.length_m(), |(along_m, _)| along_m);
    let shown = |field: Field| {
        let (text, (figure, unit), wide) = match field {
            Field::Length => (Text::Length, words.typed_parts(Measure::Length, along_m), 52.0),
            Field::Panels => (Text::Panels, (one.panels(along_m), ""), 34.0),
            Field::Bearing => {
                let bearing = typed.bearing_deg.unwrap_or_else(|| one.bearing_deg());
                (Text::Bearing, words.typed_parts(Measure::Degrees, bearing), 46.0)
            }
        };
        let label = words.text(text).to_owned();
        Cell { said: label.clone(), label, figure, unit, wide }
    };
    let all: &[Field] =
        if one.has_nets { &[Field::Length, Field::Panels, Field::Bearing] } else { &[Field::Length, Field::Bearing] };
    let cells: Vec<Cell> = all.iter().map(|&field| shown(field)).collect();
    let read = |cell: usize, text: &str, typed: Typed| {
        // What stands there was not typed: Tab alone changes nothing.
        if text.trim() == cells[cell].figure {
            return Ok(typed);
        }
        let typed = match all[cell] {
            Field::Length => Typed { length: Some((one.read_length(text)?, false)), ..typed },
            Field::Panels => Typed { length: Some((one.read_panels(text)?, true)), ..typed },
            Field::Bearing => Typed { bearing_deg: Some(one.read_bearing(text)?), ..typed },
        };
        if let Some((along_m, _)) = typed.length {
            one.on_map_m(along_m, typed.bearing_deg)?;
        }
        Ok(typed)
    };
    entry::tabs_round(ui, cells.len());
    let foot = one.say(Text::SideSets);
    let (next, set) = entry::show(ui, place, (&cells, typed), (&foot, p.ink2), p, read);
    if !set {
        return entry::has_keys(ui, cells.len()).then_some(next);
    }
    let length = next.length.and_then(|(along_m, by_panels)| {
        let on_map_m = one.on_map_m(along_m, next.bearing_deg).ok()?;
        Some((on_map_m, by_panels))
    });
    match (length, next.bearing_deg) {
        (Some((length_m, false)), None) => said.say(Message::SideLength(shape, side, length_m)),
        (Some((length_m, true)), None) => said.say(Message::Shaping(ShapingMessage::Panels(shape, side, length_m))),
        (None, Some(bearing)) => said.say(Message::Shaping(ShapingMessage::Bearing(shape, side, bearing))),
        (Some((length_m, _)), Some(bearing)) => {
            said.say(Message::Shaping(ShapingMessage::LengthAndBearing(shape, side, length_m, bearing)));
        }
        (None, None) => {}
    }
    None
}

/// The side as it would lie with what is typed, dashed.
fn as_typed(painter: &Painter, rect: Rect, editor: &Editor, typed: Typed) {
    let Some(one) = editor.side_to_type().and_then(|(shape, side)| Side::of(editor, &shape, side)) else { return };
    let Some(to) = one.end(typed.length.map(|(along_m, _)| along_m), typed.bearing_deg) else { return };
    let on_map = |at| map_view::on_map(rect, editor, at);
    let pen = Stroke::new(2.0, colour(editor.theme().palette().pick));
    painter.extend(Shape::dashed_line(&[on_map(one.ends[0]), on_map(to)], pen, 7.0, 4.0));
    painter.circle_stroke(on_map(to), 6.0, pen);
}
