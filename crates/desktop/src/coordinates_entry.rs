//! Coordinates in an entry on the map: east and north, as far as they are typed.

use egui::{Rect, Ui, Vec2};
use plan::Point;
use words::Measure;
use words::texts::{Shape as Text, Unroll};

use crate::editor::Editor;
use crate::entry::{self, Cell};
use crate::field;
use crate::pages::PLACE_M;
use crate::tool::Typed;

/// How many fields it has.
pub(crate) const FIELDS: usize = 2;
/// Its least width, and that of a figure.
const LEAST_WIDE: f32 = 262.0;
const FIGURE_WIDE: f32 = 62.0;

/// How large it is.
pub(crate) fn size(editor: &Editor) -> Vec2 {
    entry::size(LEAST_WIDE, editor.words().text(Unroll::PlaceSets))
}

/// The entry with where something stands as far as it is typed; what is typed now, and whether it is set.
pub(crate) fn show(ui: &Ui, place: Rect, editor: &Editor, at: Point, typed: Typed) -> (Typed, bool) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let cell = |text: Text, value_m: f64| {
        let (figure, unit) = words.typed_parts(Measure::Length, value_m);
        let label = words.text(text).to_owned();
        Cell { said: label.clone(), label, figure, unit, wide: FIGURE_WIDE }
    };
    let cells = [cell(Text::East, at.east_m), cell(Text::North, at.north_m)];
    let read = |cell: usize, text: &str, typed: Typed| {
        // What stands there was not typed: Tab alone changes nothing.
        if text.trim() == cells[cell].figure {
            return Ok(typed);
        }
        let value_m = Some(field::figure(words, Measure::Length, PLACE_M)(text)?);
        Ok(if cell == 0 { Typed { east_m: value_m, ..typed } } else { Typed { north_m: value_m, ..typed } })
    };
    entry::tabs_round(ui, FIELDS);
    entry::show(ui, place, (&cells, typed), (words.text(Unroll::PlaceSets), p.ink2), p, read)
}
