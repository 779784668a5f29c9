//! Heights at the nodes of a square grid.

use super::{Piece, Surface, ordered};
use crate::Point;

/// Heights at the nodes of a square grid, with holes.
///
/// Between four nodes the ground is four flat triangles that meet in the middle, whose height is the mean of the four:
/// no diagonal is preferred, and the middle is that of the usual bilinear patch. A square with a hole at any of its
/// nodes is a hole. Outside the nodes nothing is known.
#[derive(Debug, Clone, PartialEq)]
pub struct Grid {
    south_west: Point,
    cell_m: f64,
    columns: usize,
    rows: usize,
    up_m: Vec<Option<f64>>,
}

impl Grid {
    /// The grid whose first node stands at `south_west`; nodes run east in a row, rows run north. `None` where there are
    /// fewer than two rows or columns, a row is not whole, or the cell is no size.
    pub fn new(south_west: Point, cell_m: f64, columns: usize, up_m: Vec<Option<f64>>) -> Option<Self> {
        let whole = columns >= 2 && up_m.len().is_multiple_of(columns) && up_m.len() / columns >= 2;
        let sized = cell_m > 0.0 && cell_m.is_finite() && south_west.is_finite();
        let finite = up_m.iter().flatten().all(|up_m| up_m.is_finite());
        (whole && sized && finite).then(|| Self { south_west, cell_m, columns, rows: up_m.len() / columns, up_m })
    }

    /// Whether its heights differ.
    pub fn rises(&self) -> bool {
        let mut known = self.up_m.iter().flatten();
        let first = known.next();
        known.any(|up_m| Some(up_m) != first)
    }

    /// A place in cells east and north of the first node.
    fn local(&self, at: Point) -> (f64, f64) {
        let off = at - self.south_west;
        (off.east / self.cell_m, off.north / self.cell_m)
    }

    fn node(&self, column: usize, row: usize) -> Option<f64> {
        self.up_m[row * self.columns + column]
    }
}

/// A place this far outside the last node still lies on it, cells.
const EDGE: f64 = 1e-9;

impl Surface for Grid {
    fn cuts(&self, from: Point, to: Point) -> Vec<f64> {
        let ((x0, y0), (x1, y1)) = (self.local(from), self.local(to));
        let (last_x, last_y) = ((self.columns - 1) as f64, (self.rows - 1) as f64);
        // Columns, rows and the two diagonals, each family within the grid.
        let families = [
            (x0, x1, 0.0, last_x),
            (y0, y1, 0.0, last_y),
            (x0 + y0, x1 + y1, 0.0, last_x + last_y),
            (x0 - y0, x1 - y1, -last_y, last_x),
        ];
        let mut shares = Vec::new();
        for (start, end, low, high) in families {
            if start == end {
                continue;
            }
            let (first, last) = (start.min(end).ceil().max(low), start.max(end).floor().min(high));
            let mut line = first;
            while line <= last {
                shares.push((line - start) / (end - start));
                line += 1.0;
            }
        }
        ordered(shares)
    }

    fn piece(&self, within: Point, from: Point, to: Point) -> Option<Piece> {
        let (x, y) = self.local(within);
        let (last_x, last_y) = ((self.columns - 1) as f64, (self.rows - 1) as f64);
        if !((-EDGE..=last_x + EDGE).contains(&x) && (-EDGE..=last_y + EDGE).contains(&y)) {
            return None;
        }
        let column = (x.max(0.0) as usize).min(self.columns - 2);
        let row = (y.max(0.0) as usize).min(self.rows - 2);
        let south_west = self.node(column, row)?;
        let south_east = self.node(column + 1, row)?;
        let north_west = self.node(column, row + 1)?;
        let north_east = self.node(column + 1, row + 1)?;
        let doubled_middle = (south_west + south_east + north_west + north_east) / 2.0;
        let (u, v) = (x - column as f64, y - row as f64);
        // Height at the corner of the triangle, and its rise a cell east and north.
        let (corner, east, north) = if v <= u && v <= 1.0 - u {
            (south_west, south_east - south_west, doubled_middle - south_west - south_east)
        } else if v >= u && v >= 1.0 - u {
            let south = doubled_middle - north_west - north_east;
            (north_west + south, north_east - north_west, -south)
        } else if u < v {
            (south_west, doubled_middle - south_west - north_west, north_west - south_west)
        } else {
            let west = doubled_middle - south_east - north_east;
            (south_east + west, -west, north_east - south_east)
        };
        let up_m = |at: Point| {
            let (x, y) = self.local(at);
            corner + east * (x - column as f64) + north * (y - row as f64)
        };
        Some(Piece { from_up_m: up_m(from), to_up_m: up_m(to), beyond: false })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grid(up_m: &[f64]) -> Grid {
        Grid::new(Point::new(10.0, 20.0), 2.0, 3, up_m.iter().copied().map(Some).collect()).expect("a grid")
    }

    #[test]
    fn nodes_and_middles_have_their_heights() {
        let grid = grid(&[0.0, 1.0, 5.0, 2.0, 7.0, 3.0]);
        for (east_m, north_m, up_m) in [
            (10.0, 20.0, 0.0),
            (12.0, 20.0, 1.0),
            (14.0, 22.0, 3.0),
            (11.0, 21.0, 2.5),
            (13.0, 21.0, 4.0),
            (11.0, 20.0, 0.5),
        ] {
            let found = grid.up_m(Point::new(east_m, north_m)).expect("known");
            assert!((found - up_m).abs() < 1e-12, "{east_m} {north_m}: {found}");
        }
        assert_eq!(grid.up_m(Point::new(9.9, 21.0)), None);
        assert_eq!(grid.up_m(Point::new(11.0, 22.1)), None);
    }

    #[test]
    fn a_hole_takes_its_squares_with_it() {
        let mut up_m = vec![Some(1.0); 9];
        up_m[8] = None;
        let grid = Grid::new(Point::default(), 1.0, 3, up_m).expect("a grid");
        assert_eq!(grid.up_m(Point::new(1.5, 1.5)), None);
        assert_eq!(grid.up_m(Point::new(0.5, 1.5)), Some(1.0));
    }

    #[test]
    fn what_is_no_grid_is_none() {
        let four = vec![Some(0.0); 4];
        assert!(Grid::new(Point::default(), 0.0, 2, four.clone()).is_none());
        assert!(Grid::new(Point::default(), 1.0, 1, four.clone()).is_none());
        assert!(Grid::new(Point::default(), 1.0, 3, four.clone()).is_none());
        assert!(Grid::new(Point::default(), 1.0, 2, vec![Some(f64::NAN); 4]).is_none());
        assert!(Grid::new(Point::default(), 1.0, 2, four).is_some());
    }
}
