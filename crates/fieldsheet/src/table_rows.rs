//! Tables of corners: their columns are as wide as what stands in them, and words that find no room take more lines.

use crate::rows::{ROW, Row};
use crate::setting::{BODY, LABEL, PLATE, PRINT, SMALL_STRONG, STRONG, Sheet, TICK, Type};

/// A row of column heads.
const HEADS: f32 = 13.0;
/// Least space between two columns.
const APART: f32 = 8.0;
/// Where the columns of figures end where short figures stand before words, and how wide the stakes' is then.
const ENDS: [f32; 4] = [48.0, 89.0, 115.0, 150.0];
const STAKE: f32 = 64.0;
/// From the figures to the words, from the words to the stakes, and from the stakes to their ticks.
const BEFORE_WORDS: f32 = 10.0;
const BEFORE_TICK: f32 = 4.0;

/// A corner, or the heads of the columns.
#[derive(Clone)]
pub(crate) struct TableRow {
    /// Its plate; none for the row of heads.
    plate: Option<String>,
    figures: [String; 4],
    words: Option<Words>,
    /// Where the columns of figures end.
    ends: [f32; 4],
}

/// What stands behind the figures.
#[derive(Clone)]
pub(crate) struct Words {
    pub(crate) corner: String,
    pub(crate) stake: String,
    /// Whether there is a stake to tick off.
    pub(crate) tick: bool,
}

/// The rows of one table: all have the columns that the widest cells ask for.
pub(crate) fn table(mut rows: Vec<TableRow>) -> Vec<Row> {
    let widest = |of: &dyn Fn(&TableRow) -> f32| rows.iter().map(of).fold(0.0, f32::max);
    let mut ends = if rows.iter().any(|row| row.words.is_some()) { ENDS } else { [0.0; 4] };
    let mut left = widest(&|row| row.plate.as_ref().map_or(0.0, |plate| SMALL_STRONG.width(plate))).max(PLATE);
    for (column, end) in ends.iter_mut().enumerate() {
        let figure = widest(&|row| row.set(column).width(&row.figures[column]));
        *end = end.max(left + APART + figure);
        left = *end;
    }
    for row in &mut rows {
        row.ends = ends;
    }
    rows.into_iter().map(Row::Table).collect()
}

impl TableRow {
    /// A corner by its figures; the heads of the columns where it has no plate.
    pub(crate) fn new(plate: Option<String>, figures: [String; 4]) -> Self {
        Self { plate, figures, words: None, ends: [0.0; 4] }
    }

    /// With words behind the figures.
    pub(crate) fn with(self, words: Words) -> Self {
        Self { words: Some(words), ..self }
    }

    /// Whether it is the row of heads.
    pub(crate) fn is_heads(&self) -> bool {
        self.plate.is_none()
    }

    /// How a figure is set, and words like the last of them.
    fn set(&self, column: usize) -> Type {
        match column {
            _ if self.is_heads() => LABEL,
            0 | 1 => STRONG,
            _ => BODY,
        }
    }

    /// Left edge and room of the corner's words, then of its stake.
    fn rooms(&self, width: f32) -> [[f32; 2]; 2] {
        let words = self.ends[3] + BEFORE_WORDS;
        let stake = width - TICK - BEFORE_TICK - STAKE;
        // The head of the stakes reaches over their ticks.
        let over = if self.is_heads() { TICK + BEFORE_TICK } else { 0.0 };
        [[words, stake - words - BEFORE_TICK], [stake, STAKE + over]]
    }

    /// Its height in that width.
    pub(crate) fn height(&self, width: f32) -> f32 {
        let row = if self.is_heads() { HEADS } else { ROW };
        let Some(words) = &self.words else { return row };
        let set = self.set(3);
        let [[_, corner], [_, stake]] = self.rooms(width);
        row + set.more(&words.corner, corner).max(set.more(&words.stake, stake))
    }

    /// Puts it down between two edges, with the rule at its foot. Room that no words take parts the figures evenly.
    pub(crate) fn put(&self, sheet: &mut Sheet, [left, right]: [f32; 2], middle: f32, foot: f32) {
        if let Some(plate) = &self.plate {
            // The word of an end is wider than a plate.
            if SMALL_STRONG.width(plate) < PLATE {
                sheet.plate(left, middle, plate);
            } else {
                sheet.left(left, middle, SMALL_STRONG, plate);
            }
        }
        let spare = if self.words.is_some() { 0.0 } else { (right - left - self.ends[3]).max(0.0) };
        let apart = spare / self.figures.len() as f32;
        for (column, (figure, end)) in self.figures.iter().zip(self.ends).enumerate() {
            sheet.right(left + end + (column + 1) as f32 * apart, middle, self.set(column), figure);
        }
        if let Some(words) = &self.words {
            let [[corner_at, corner], [stake_at, stake]] = self.rooms(right - left);
            sheet.lines(left + corner_at, middle, self.set(3), &words.corner, corner);
            sheet.lines(left + stake_at, middle, self.set(3), &words.stake, stake);
            if words.tick {
                sheet.tick(right - TICK, middle);
            }
        }
        let colour = if self.is_heads() { PRINT.rule } else { PRINT.hairline };
        sheet.rule(left, right, foot, 0.5, colour);
    }
}
