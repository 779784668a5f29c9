//! The table of corners by tape: its columns are as wide as what stands in them.

use crate::rows::{ROW, Row};
use crate::setting::{BODY, LABEL, PLATE, SMALL_STRONG, STRONG, Sheet, Type};

/// A row of column heads.
const HEADS: f32 = 13.0;
/// Least space between two columns.
const APART: f32 = 8.0;

/// A corner, cell by cell: first tape, second tape, where it lies, to the next.
#[derive(Clone)]
pub(crate) struct TapeRow {
    /// Its plate; none for the row of heads.
    pub(crate) plate: Option<String>,
    pub(crate) cells: [String; 4],
    /// How wide each column is.
    pub(crate) wide: [f32; 4],
}

/// The rows of one table: all have the columns that the widest cells ask for.
pub(crate) fn table(mut rows: Vec<TapeRow>) -> Vec<Row> {
    let widest =
        |column: usize| rows.iter().map(|row| row.set(column).width(&row.cells[column])).fold(0.0, f32::max) + APART;
    let wide = [0, 1, 2, 3].map(widest);
    for row in &mut rows {
        row.wide = wide;
    }
    rows.into_iter().map(Row::Tape).collect()
}

impl TapeRow {
    /// Whether it is the row of heads.
    pub(crate) fn is_heads(&self) -> bool {
        self.plate.is_none()
    }

    fn set(&self, column: usize) -> Type {
        match column {
            _ if self.is_heads() => LABEL,
            0 | 1 => STRONG,
            _ => BODY,
        }
    }

    /// Its height.
    pub(crate) fn height(&self) -> f32 {
        if self.is_heads() { HEADS } else { ROW }
    }

    /// Puts it down between two edges; what room is left parts the columns evenly.
    pub(crate) fn put(&self, sheet: &mut Sheet, [left, right]: [f32; 2], middle: f32) {
        if let Some(plate) = &self.plate {
            if SMALL_STRONG.width(plate) < PLATE {
                sheet.plate(left, middle, plate);
            } else {
                sheet.left(left, middle, SMALL_STRONG, plate);
            }
        }
        let spare = (right - left - PLATE - self.wide.iter().sum::<f32>()).max(0.0) / self.wide.len() as f32;
        let mut end = left + PLATE;
        for (column, wide) in self.wide.iter().enumerate() {
            end += wide + spare;
            sheet.right(end, middle, self.set(column), &self.cells[column]);
        }
    }
}
