//! The table of the plan's runs and the shapes that were found, side by side.

use exchange::compare::{self, Column, Entry};
use exchange::shapes;
use workup::candidates::Candidate;

use super::{ShapeKey, key};
use crate::editor::Editor;

/// One row of the table.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Which it is.
    pub what: RowOf,
    /// Its name and figures.
    pub entry: Entry,
}

/// What a row is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RowOf {
    /// A run of the plan, by its place.
    Run(usize),
    /// A shape that was found.
    Shape(ShapeKey),
}

impl Editor {
    /// How many rows the table has.
    pub fn compared_count(&self) -> usize {
        self.plan.runs.len() + if self.shapes.open { self.shapes.found.len() } else { 0 }
    }

    /// The table: the plan's runs and what was found, in the order that was asked for.
    pub fn compared(&self) -> Vec<Row> {
        let runs = compare::runs(&self.plan, &self.workup).into_iter().enumerate();
        let runs = runs.map(|(index, entry)| Row { what: RowOf::Run(index), entry });
        let shape = |one: &Candidate| Row {
            what: RowOf::Shape(key(one)),
            entry: Entry { name: shapes::title(one, self.words), figures: one.compared.clone() },
        };
        let found = if self.shapes.open { &self.shapes.found[..] } else { &[] };
        let mut rows: Vec<Row> = runs.chain(found.iter().map(shape)).collect();
        let (column, least_first) = match (self.shapes.sort, self.shapes.open) {
            (Some(sort), _) => sort,
            (None, false) => return rows,
            (None, true) => (Column::Ground, false),
        };
        rows.sort_by(|one, other| {
            let (one, other) = (column.value(&one.entry.figures), column.value(&other.entry.figures));
            match (one, other) {
                (Some(one), Some(other)) if least_first => one.total_cmp(&other),
                (Some(one), Some(other)) => other.total_cmp(&one),
                // What could not be worked out stands last.
                (one, other) => one.is_none().cmp(&other.is_none()),
            }
        });
        rows
    }

    /// The table as CSV.
    pub fn table_csv(&self) -> Vec<u8> {
        compare::csv(&self.compared().into_iter().map(|row| row.entry).collect::<Vec<_>>())
    }

    /// The table as text for the clipboard.
    pub fn table_text(&self) -> String {
        compare::text(&self.compared().into_iter().map(|row| row.entry).collect::<Vec<_>>(), self.words)
    }
}
