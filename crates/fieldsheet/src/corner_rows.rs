//! The table of corners: its columns are as wide as what stands in them, and words that find no room take more lines.

use crate::rows::{ROW, Row};
use crate::setting::{BODY, LABEL, PLATE, SMALL_STRONG, STRONG, Sheet, TICK, Type};

/// A row of column heads.
const HEADS: f32 = 13.0;
/// Where the columns of figures end where their heads are short, and how wide the stakes' is then.
const ENDS: [f32; 4] = [48.0, 89.0, 115.0, 150.0];
const STAKE: f32 = 64.0;
/// Least space between two columns.
const APART: f32 = 8.0;
/// From the stakes to their ticks, and from the words to the stakes.
const BEFORE_TICK: f32 = 4.0;

/// A corner, cell by cell.
#[derive(Clone)]
pub(crate) struct CornerRow {
    /// Its plate; none for the row of heads.
    pub(crate) plate: Option<String>,
    pub(crate) along: String,
    pub(crate) next: String,
    pub(crate) turn: String,
    pub(crate) post: String,
    pub(crate) words: String,
    pub(crate) stake: String,
    /// Whether there is a stake to tick off.
    pub(crate) tick: bool,
    /// Where the columns of figures end.
    pub(crate) ends: [f32; 4],
}

/// The rows of one table: all have the columns that the widest cells ask for.
pub(crate) fn table(mut rows: Vec<CornerRow>) -> Vec<Row> {
    let widest = |of: &dyn Fn(&CornerRow) -> f32| rows.iter().map(of).fold(0.0, f32::max);
    let plate = widest(&|row| row.plate.as_ref().map_or(0.0, |plate| SMALL_STRONG.width(plate))).max(PLATE);
    let mut ends = ENDS;
    let mut left = plate;
    for (column, end) in ends.iter_mut().enumerate() {
        let cell = widest(&|row| row.set(column).width(row.cell(column)));
        *end = end.max(left + APART + cell);
        left = *end;
    }
    for row in &mut rows {
        row.ends = ends;
    }
    rows.into_iter().map(Row::Corner).collect()
}

impl CornerRow {
    /// Whether it is the row of heads.
    pub(crate) fn is_heads(&self) -> bool {
        self.plate.is_none()
    }

    /// A cell of the columns of figures.
    fn cell(&self, column: usize) -> &str {
        [&self.along, &self.next, &self.turn, &self.post][column]
    }

    /// How that cell is set.
    fn set(&self, column: usize) -> Type {
        match column {
            _ if self.is_heads() => LABEL,
            0 | 1 => STRONG,
            _ => BODY,
        }
    }

    /// Left edge and room of the corner's words, then of its stake.
    fn rooms(&self, width: f32) -> [[f32; 2]; 2] {
        let words = self.ends[3] + 10.0;
        let stake = width - TICK - BEFORE_TICK - STAKE;
        // The head of the stakes reaches over their ticks.
        let over = if self.is_heads() { TICK + BEFORE_TICK } else { 0.0 };
        [[words, stake - words - BEFORE_TICK], [stake, STAKE + over]]
    }

    /// Its height in that width.
    pub(crate) fn height(&self, width: f32) -> f32 {
        let set = self.set(3);
        let [[_, words], [_, stake]] = self.rooms(width);
        let row = if self.is_heads() { HEADS } else { ROW };
        row + set.more(&self.words, words).max(set.more(&self.stake, stake))
    }

    /// Puts it down between two edges.
    pub(crate) fn put(&self, sheet: &mut Sheet, [left, right]: [f32; 2], middle: f32) {
        if let Some(plate) = &self.plate {
            // The word of an end is wider than a plate.
            if SMALL_STRONG.width(plate) < PLATE {
                sheet.plate(left, middle, plate);
            } else {
                sheet.left(left, middle, SMALL_STRONG, plate);
            }
        }
        for (column, end) in self.ends.iter().enumerate() {
            sheet.right(left + end, middle, self.set(column), self.cell(column));
        }
        let [[words_at, words], [stake_at, stake]] = self.rooms(right - left);
        sheet.lines(left + words_at, middle, self.set(3), &self.words, words);
        sheet.lines(left + stake_at, middle, self.set(3), &self.stake, stake);
        if self.tick {
            sheet.tick(right - TICK, middle);
        }
    }
}
