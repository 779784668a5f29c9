//! Corners by tape: what one keeper with one tape measures to set the run out on the ground.

use drawing::map::TAPE_LETTERS;
use words::texts::Sheet as Text;
use workup::tape::{TapedCorner, TapedFrom, TapedRun, taped};

use super::{Block, Look};
use crate::rows::Row;
use crate::table_rows::{TableRow, table};

/// The block; none for a run that is no line.
pub(super) fn block(look: Look<'_>) -> Option<Block> {
    let taped = taped(look.scene.plan, look.run)?;
    let heads = [Text::HeadTape, Text::HeadSecondTape, Text::HeadLies, Text::HeadNext].map(|head| look.text(head));
    let rows = taped.corners.iter().map(|corner| row(look, &taped, corner));
    let mut rows = table(std::iter::once(TableRow::new(None, heads)).chain(rows).collect());
    rows.push(Row::Note(note(look, &taped)));
    Some(Block { head: look.text(Text::ByTape), aside: known(look, &taped), rows })
}

/// `P gatepost, Q coop corner`; where no place is known, how long a tape it takes.
fn known(look: Look<'_>, taped: &TapedRun) -> String {
    let called = |(letter, &index): (&&str, &usize)| {
        let name = look.scene.plan.tape_points.get(index).map_or("", |known| known.name.as_str());
        format!("{letter} {name}").trim_end().to_owned()
    };
    if taped.known.is_empty() {
        return look.say(Text::LongestTape, &[("length", &look.words.fine_length(taped.longest_m))]);
    }
    TAPE_LETTERS.iter().zip(&taped.known).map(called).collect::<Vec<_>>().join(", ")
}

fn row(look: Look<'_>, taped: &TapedRun, corner: &TapedCorner) -> TableRow {
    let length = |metres: f64| look.words.fine_length_in_column(metres, taped.longest_m);
    let none = || "–".to_owned();
    let tape = |index: usize| {
        corner.tapes.get(index).map_or_else(none, |&(from, metres)| {
            let from = match from {
                TapedFrom::Known(index) => TAPE_LETTERS.get(index).copied().unwrap_or_default().to_owned(),
                TapedFrom::Corner(corner) => (corner + 1).to_string(),
            };
            look.say(Text::TapeFrom, &[("length", &length(metres)), ("from", &from)])
        })
    };
    let lies = match (corner.tapes.len(), corner.left) {
        (2, Some(true)) => look.text(Text::LiesLeft),
        (2, Some(false)) => look.text(Text::LiesRight),
        (2, None) => look.text(Text::LiesInLine),
        _ => none(),
    };
    let plate = Some((corner.corner + 1).to_string());
    TableRow::new(plate, [tape(0), tape(1), lies, corner.next_m.map_or_else(none, length)])
}

/// How it is read, and what shows whether it came out right.
fn note(look: Look<'_>, taped: &TapedRun) -> String {
    let length = |metres: f64| look.words.fine_length_in_column(metres, taped.longest_m);
    let number = |corner: &TapedCorner| (corner.corner + 1).to_string();
    let toward = taped.corners.iter().find(|corner| corner.is_free_in_direction()).map(number);
    let loose = taped.corners.first().filter(|corner| corner.tapes.is_empty()).map(number);
    let begin = match (loose, toward) {
        (Some(first), Some(second)) => look.say(Text::TapeFirst, &[("corner", &first), ("second", &second)]),
        (None, Some(only)) => look.say(Text::TapeToward, &[("corner", &only)]),
        _ => String::new(),
    };
    let check = taped.check.map(|(one, other, metres)| {
        let [one, other] = [one, other].map(|corner| (corner + 1).to_string());
        look.say(Text::TapeCheck, &[("one", &one), ("other", &other), ("length", &length(metres))])
    });
    let said = [begin, look.text(Text::TapeHow), check.unwrap_or_default()];
    said.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ")
}
