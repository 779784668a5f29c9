//! Which triangles lie near a place or along a straight way: squares that each know the triangles that reach into them.
//!
//! It only leaves out what cannot matter: whoever asks still looks at each triangle, in the order of their numbers, so that
//! an answer is the same as by looking at all.

use crate::{Point, span_m};

/// Squares over triangles.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Buckets {
    low: (f64, f64),
    cell_m: f64,
    columns: usize,
    rows: usize,
    cells: Vec<Vec<u32>>,
}

/// One of a place's two coordinates.
type Coordinate = fn(&Point) -> f64;

/// Share of a square by which a triangle may reach into the next one by rounding.
const SLACK: f64 = 1e-6;

impl Buckets {
    /// Squares about as many as there are triangles.
    pub(super) fn of(corners: &[[Point; 3]]) -> Self {
        let (east, north): (Coordinate, Coordinate) = (|at| at.east_m, |at| at.north_m);
        let whole = |of: Coordinate| span_m(corners.iter().flatten().map(of));
        let (in_east, in_north) = (whole(east), whole(north));
        let low = (in_east.0, in_north.0);
        let span = (in_east.1 - low.0, in_north.1 - low.1);
        let cell_m = (span.0 * span.1 / corners.len().max(1) as f64).sqrt().max(span.0.max(span.1) / 1e3);
        if !(cell_m > 0.0 && cell_m.is_finite()) {
            return Self { low, cell_m: 1.0, columns: 1, rows: 1, cells: vec![(0..corners.len() as u32).collect()] };
        }
        let count = |span_m: f64| (span_m / cell_m).floor() as usize + 1;
        let mut buckets = Self { low, cell_m, columns: count(span.0), rows: count(span.1), cells: Vec::new() };
        buckets.cells = vec![Vec::new(); buckets.columns * buckets.rows];
        for (number, triangle) in corners.iter().enumerate() {
            let range = |of: Coordinate| span_m(triangle.iter().map(of));
            let (columns, rows) = (buckets.columns_of(range(east)), buckets.rows_of(range(north)));
            for row in rows {
                for column in columns.clone() {
                    buckets.cells[row * buckets.columns + column].push(number as u32);
                }
            }
        }
        buckets
    }

    /// One square that knows all of them: what the others are checked against.
    #[cfg(test)]
    pub(super) fn holding_all(self, all: Vec<u32>) -> Self {
        Self { columns: 1, rows: 1, cells: vec![all], ..self }
    }

    fn columns_of(&self, (low, high): (f64, f64)) -> std::ops::RangeInclusive<usize> {
        cells_of((low - self.low.0) / self.cell_m, (high - self.low.0) / self.cell_m, self.columns)
    }

    fn rows_of(&self, (low, high): (f64, f64)) -> std::ops::RangeInclusive<usize> {
        cells_of((low - self.low.1) / self.cell_m, (high - self.low.1) / self.cell_m, self.rows)
    }

    /// Numbers of the triangles that may hold a place, in order.
    pub(super) fn at(&self, at: Point) -> &[u32] {
        let (column, row) = (self.columns_of((at.east_m, at.east_m)), self.rows_of((at.north_m, at.north_m)));
        self.cells.get(row.start() * self.columns + column.start()).map_or(&[], Vec::as_slice)
    }

    /// Numbers of the triangles that a straight way may meet, in order.
    pub(super) fn along(&self, from: Point, to: Point) -> Vec<u32> {
        let mut near = Vec::new();
        let (low, high) = (from.north_m.min(to.north_m), from.north_m.max(to.north_m));
        for row in self.rows_of((low, high)) {
            // The part of the way in this row of squares.
            let edge = |row: usize| self.low.1 + row as f64 * self.cell_m;
            let slack_m = SLACK * self.cell_m;
            let rises_m = to.north_m - from.north_m;
            let share = |north_m: f64| if rises_m == 0.0 { None } else { Some((north_m - from.north_m) / rises_m) };
            let (one, other) = match (share(edge(row) - slack_m), share(edge(row + 1) + slack_m)) {
                (Some(one), Some(other)) => (one.min(other).clamp(0.0, 1.0), one.max(other).clamp(0.0, 1.0)),
                _ => (0.0, 1.0),
            };
            let (a, b) = (from.towards(to, one).east_m, from.towards(to, other).east_m);
            for column in self.columns_of((a.min(b), a.max(b))) {
                near.extend(self.cells.get(row * self.columns + column).into_iter().flatten());
            }
        }
        near.sort_unstable();
        near.dedup();
        near
    }
}

/// The squares from one place to another, both in squares, held to those that there are.
fn cells_of(low: f64, high: f64, count: usize) -> std::ops::RangeInclusive<usize> {
    let last = count.saturating_sub(1);
    let cell = |at: f64| (at.max(0.0).floor() as usize).min(last);
    cell(low - SLACK)..=cell(high + SLACK)
}
