//! The entry at a corner or at a thing of one place that is picked: its coordinates, typed on the map.
//!
//! Enter opens it and sets what was typed, in one step; Esc, or a click elsewhere, leaves all as it is.

use drawing::{Taken, Thing};
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

/// Least width of the entry.
const LEAST_WIDE: f32 = 262.0;
/// How many fields it has.
const FIELDS: usize = 2;

/// What was typed of the place, metres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Typed {
    east_m: Option<f64>,
    north_m: Option<f64>,
}

impl Typed {
    fn place(self, at: Point) -> Point {
        Point::new(self.east_m.unwrap_or(at.east_m), self.north_m.unwrap_or(at.north_m))
    }
}

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

fn on_map(rect: Rect, editor: &Editor, at: Point) -> Pos2 {
    let [right, down] = editor.view().spot(at);
    rect.min + vec2(right, down)
}

/// Where it stands.
pub(crate) fn place(ui: &Ui, rect: Rect, editor: &Editor, map: &Taken) -> Option<Rect> {
    open_at(ui)?;
    let (_, at) = editor.place_to_type()?;
    let size = entry::size(LEAST_WIDE, editor.words().text(Unroll::PlaceSets));
    Some(entry::beside(rect, (on_map(rect, editor, at), Vec2::splat(1.0)), size, &[], editor, map))
}

/// The entry in its place on the map, and where the corner would stand.
pub(crate) fn paint(ui: &Ui, painter: &Painter, (rect, place): (Rect, Option<Rect>), editor: &Editor, said: &mut Said) {
    let Some((thing, typed)) = open_at(ui) else { return };
    let at = editor.place_to_type().filter(|&(picked, _)| picked == thing).map(|(_, at)| at);
    let stays = place.zip(at).and_then(|(place, at)| {
        let next = fields(ui, place, (thing, at), editor, typed, said)?;
        let spot = on_map(rect, editor, next.place(at));
        painter.circle_stroke(spot, 6.0, Stroke::new(2.0, colour(editor.theme().palette().pick)));
        Some(next)
    });
    ui.data_mut(|data| match stays {
        Some(typed) => {
            data.insert_temp(kept(), (thing, typed));
        }
        None => {
            data.remove::<(Thing, Typed)>(kept());
        }
    });
    if stays.is_none() {
        entry::closed(ui);
    }
}

/// What is typed now; `None` once it is set or left.
fn fields(
    ui: &Ui,
    place: Rect,
    (thing, at): (Thing, Point),
    editor: &Editor,
    typed: Typed,
    said: &mut Said,
) -> Option<Typed> {
    let (words, p) = (editor.words(), editor.theme().palette());
    let shown = typed.place(at);
    let cell = |text: Text, value_m: f64| {
        let (figure, unit) = words.typed_parts(Measure::Length, value_m);
        let label = words.text(text).to_owned();
        Cell { said: label.clone(), label, figure, unit, wide: 62.0 }
    };
    let cells = [cell(Text::East, shown.east_m), cell(Text::North, shown.north_m)];
    let read = |cell: usize, text: &str, typed: Typed| {
        // What stands there was not typed: Tab alone changes nothing.
        if text.trim() == cells[cell].figure {
            return Ok(typed);
        }
        let value_m = Some(field::figure(words, Measure::Length, PLACE_M)(text)?);
        Ok(if cell == 0 { Typed { east_m: value_m, ..typed } } else { Typed { north_m: value_m, ..typed } })
    };
    entry::tabs_round(ui, FIELDS);
    let (next, set) = entry::show(ui, place, (&cells, typed), (words.text(Unroll::PlaceSets), p.ink2), p, read);
    if !set {
        return entry::has_keys(ui, FIELDS).then_some(next);
    }
    if next != Typed::default() {
        said.say(Message::PutAt(thing, next.place(at)));
    }
    None
}
