//! The rows that blocks are made of: how high each is and how it is put down.

use drawing::Ink;

use crate::paper::GUTTER;
use crate::setting::{BODY, LABEL, LEADING, PRINT, RING, SECOND, SMALL, SMALL_STRONG, STRONG, Sheet, TICK, Type};
use crate::table_rows::TableRow;

/// A row that is written in or ticked off with a pencil.
pub(crate) const ROW: f32 = 17.0;
/// Between two cautions or dangers.
const BETWEEN: f32 = 1.5;
/// Over a note.
const NOTE_OVER: f32 = 4.0;
/// From the left of a caution's mark to its words.
const INDENT: f32 = 10.0;
/// From the left of an item to its name, and of a step to its words.
const BEFORE_ITEM: f32 = TICK + 20.0;
const BEFORE_STEP: f32 = 14.0;
/// Height of a box to write a reading in.
const BOX: f32 = 20.0;

/// One row.
#[derive(Clone)]
pub(crate) enum Row {
    /// A corner in a table, or the heads of its columns.
    Table(TableRow),
    /// Readings side by side.
    Readings(Vec<Reading>),
    /// A thing to take along.
    Item {
        /// How many; 0 where nobody counts.
        count: usize,
        name: String,
        mass: String,
    },
    /// A step.
    Step { number: usize, text: String },
    /// A step that is read and not ticked off: small, in as many lines as it takes.
    Line { number: usize, text: String },
    /// Something that may hurt someone here.
    Danger(String),
    /// Something to mind everywhere.
    Caution(String),
    /// Words that may take several lines.
    Note(String),
    /// Words.
    Plain(String),
}

/// A place to read the volts at.
#[derive(Clone)]
pub(crate) struct Reading {
    pub(crate) letter: String,
    pub(crate) name: String,
    pub(crate) place: String,
    pub(crate) expected: String,
    pub(crate) unit: String,
}

impl Row {
    /// The heads of columns again, for the next page.
    pub(crate) fn heads(&self) -> Option<Self> {
        match self {
            Self::Table(row) if row.is_heads() => Some(Self::Table(row.clone())),
            _ => None,
        }
    }

    /// Its height in that width.
    pub(crate) fn height(&self, width: f32) -> f32 {
        match self {
            Self::Table(row) => row.height(width),
            Self::Item { name, mass, .. } => ROW + BODY.more(name, item_room(mass, width)),
            Self::Step { text, .. } => ROW + BODY.more(text, width - BEFORE_STEP),
            Self::Plain(text) => ROW + BODY.more(text, width),
            Self::Readings(readings) => readings.chunks(abreast(readings, width)).count() as f32 * READING,
            Self::Danger(text) => lines(SMALL_STRONG, text, width).len() as f32 * LEADING + BETWEEN,
            Self::Caution(text) | Self::Line { text, .. } => lines(SMALL, text, width).len() as f32 * LEADING + BETWEEN,
            Self::Note(text) => lines(SMALL, text, width).len() as f32 * LEADING + NOTE_OVER + BETWEEN,
        }
    }

    /// Puts it down between two edges, from the top.
    pub(crate) fn put(&self, sheet: &mut Sheet, [left, right]: [f32; 2], top: f32) {
        let foot = top + self.height(right - left);
        let middle = f32::midpoint(top, foot);
        match self {
            Self::Table(row) => row.put(sheet, [left, right], middle, foot),
            Self::Readings(readings) => {
                let abreast = abreast(readings, right - left);
                let share = share(abreast, right - left);
                for (index, reading) in readings.iter().enumerate() {
                    let start = left + (index % abreast) as f32 * share;
                    let top = top + (index / abreast) as f32 * READING + 3.0;
                    reading.put(sheet, [start, start + share - GUTTER], top);
                }
            }
            Self::Item { count, name, mass } => {
                sheet.tick(left, middle);
                let counted = if *count == 0 { String::new() } else { count.to_string() };
                sheet.right(left + TICK + 15.0, middle, STRONG, &counted);
                sheet.right(right, middle, SECOND, mass);
                sheet.lines(left + BEFORE_ITEM, middle, BODY, name, item_room(mass, right - left));
                sheet.rule(left, right, foot, 0.5, PRINT.hairline);
            }
            Self::Step { number, text } => {
                sheet.left(left, middle, STRONG, &number.to_string());
                sheet.lines(left + BEFORE_STEP, middle, BODY, text, right - left - BEFORE_STEP);
                sheet.rule(left, right, foot, 0.5, PRINT.hairline);
            }
            Self::Danger(text) => {
                danger_mark(sheet, left, top + LEADING / 2.0);
                bullet(sheet, SMALL_STRONG, text, [left, right], top);
            }
            Self::Caution(text) => {
                let half = 1.75;
                let at = top + LEADING / 2.0;
                sheet.area([left, at - half, left + 2.0 * half, at + half], PRINT.ink);
                bullet(sheet, SMALL, text, [left, right], top);
            }
            Self::Line { number, text } => {
                sheet.left(left, top + LEADING / 2.0, SMALL_STRONG, &number.to_string());
                bullet(sheet, SMALL, text, [left, right], top);
            }
            Self::Note(text) => bullet(sheet, SMALL, text, [left - INDENT, right - INDENT], top + NOTE_OVER),
            Self::Plain(text) => sheet.lines(left, middle, BODY, text, right - left),
        }
    }
}

/// Room for the name of an item, before what it weighs.
fn item_room(mass: &str, width: f32) -> f32 {
    width - BEFORE_ITEM - if mass.is_empty() { 0.0 } else { SECOND.width(mass) + 4.0 }
}

/// Height of a row of readings.
const READING: f32 = 3.0 * LEADING + BOX + 6.5;

/// How many readings stand side by side: as many as there are, four at least, where their words find room; else two.
fn abreast(readings: &[Reading], width: f32) -> usize {
    let all = readings.len().max(4);
    let room = share(all, width) - GUTTER;
    if readings.iter().all(|reading| reading.fits(room)) { all } else { 2 }
}

/// From the left of one reading to that of the next.
fn share(abreast: usize, width: f32) -> f32 {
    (width + GUTTER) / abreast as f32
}

impl Reading {
    /// Whether its words find room in that width.
    fn fits(&self, width: f32) -> bool {
        let one_line = |set: Type, text: &str, room: f32| set.lines(text, room).1.len() < 2;
        let beside = width - RING - 4.0;
        one_line(SMALL, &self.name, beside)
            && one_line(SMALL, &self.place, beside)
            && STRONG.width(&self.expected) <= width
    }

    fn put(&self, sheet: &mut Sheet, [left, right]: [f32; 2], top: f32) {
        let line = |line: f32| top + LEADING / 2.0 + line * LEADING;
        sheet.ring([left + RING / 2.0, line(0.5)], &self.letter);
        let start = left + RING + 4.0;
        // A reading of one line of name stands level with its letter.
        let (name_at, place_at) = if self.place.is_empty() { (0.5, 0.5) } else { (0.0, 1.0) };
        sheet.within(start, line(name_at), SMALL, &self.name, right - start);
        sheet.within(start, line(place_at), SMALL, &self.place, right - start);
        sheet.left(left, line(2.0), STRONG, &self.expected);
        let box_top = top + 3.0 * LEADING + 2.0;
        sheet.open_box([left, box_top, right, box_top + BOX], 0.8, PRINT.ink);
        sheet.right(right - 4.0, box_top + BOX / 2.0, LABEL, &self.unit);
    }
}

fn lines(set: Type, text: &str, width: f32) -> Vec<String> {
    set.wrapped(text, width - INDENT)
}

fn bullet(sheet: &mut Sheet, set: Type, text: &str, [left, right]: [f32; 2], top: f32) {
    for (index, line) in lines(set, text, right - left).iter().enumerate() {
        sheet.left(left + INDENT, top + LEADING * (index as f32 + 0.5), set, line);
    }
}

/// A danger's mark: a solid disc with a stroke left open, so that it is told by its shape.
fn danger_mark(sheet: &mut Sheet, left: f32, middle: f32) {
    sheet.0.push(Ink::Disc { middle: [left + 3.5, middle], radius: 3.5, fill: Some(PRINT.ink), edge: None });
    sheet.line(vec![[left + 3.5, middle - 2.2], [left + 3.5, middle + 0.6]], false, 1.1, PRINT.sheet);
    sheet.line(vec![[left + 3.5, middle + 1.3], [left + 3.5, middle + 2.4]], false, 1.1, PRINT.sheet);
}
