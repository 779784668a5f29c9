//! What is known of the ground's height: at single spots, on a grid, along a side.

use super::{Point, Rest};

/// A height at a spot, over any level; only differences count.
#[derive(Clone, Debug, PartialEq)]
pub struct SpotHeight {
    /// Where.
    pub at: Point,
    /// How high, metres.
    pub up_m: f64,
    /// Unknown keys.
    pub rest: Rest,
}

/// Heights on a square grid: a clip of a survey, as it was brought in. A plan and its copies share one.
#[derive(Clone, Debug)]
pub struct HeightGrid {
    /// The place of the first height.
    pub south_west: Point,
    /// From one height to the next, metres.
    pub cell_m: f64,
    /// Heights in a row.
    pub columns: u32,
    /// The heights, metres, row after row from the south, each row from the west; `None` is a hole.
    pub up_m: Vec<Option<f64>>,
    /// Unknown keys.
    pub rest: Rest,
}

impl HeightGrid {
    /// Whole rows of it.
    pub fn rows(&self) -> usize {
        self.up_m.len() / (self.columns as usize).max(1)
    }

    /// The place of the last height.
    pub fn north_east(&self) -> Point {
        let span_m = |count: usize| count.saturating_sub(1) as f64 * self.cell_m;
        Point::new(
            self.south_west.east_m + span_m(self.columns as usize),
            self.south_west.north_m + span_m(self.rows()),
        )
    }
}

impl PartialEq for HeightGrid {
    fn eq(&self, other: &Self) -> bool {
        // Plans are compared in every frame: one grid is itself without a look at its heights.
        std::ptr::eq(self, other)
            || (self.south_west == other.south_west
                && self.cell_m == other.cell_m
                && self.columns == other.columns
                && self.up_m == other.up_m
                && self.rest == other.rest)
    }
}

/// What a side of a run rises, by hand. It belongs to the side that lies nearest to its place, so that it stays with it
/// when corners are put in or taken out; of two on one side the later counts.
#[derive(Clone, Debug, PartialEq)]
pub struct SideSlope {
    /// A place on the side.
    pub at: Point,
    /// Metres that its end lies above its start, in the outline's order; below zero where it falls.
    pub rises_m: Option<f64>,
    /// One metre up in so many along; below zero where it falls. Counts where `rises_m` is not stated.
    pub one_in: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl SideSlope {
    /// A slope of a place on a side; nothing stated yet.
    pub fn at(at: Point) -> Self {
        Self { at, rises_m: None, one_in: None, rest: Rest::new() }
    }
}

impl super::Run {
    /// The side, counted by the vertex where it starts, that lies nearest to a place.
    pub fn side_at(&self, at: Point) -> Option<usize> {
        let corners = self.outline.len();
        let sides = if self.closed() { corners } else { corners.saturating_sub(1) };
        let off_m = |side: &usize| {
            let (from, to) = (self.outline[*side], self.outline[(side + 1) % corners]);
            let (east, north) = (to.east_m - from.east_m, to.north_m - from.north_m);
            let along = (at.east_m - from.east_m) * east + (at.north_m - from.north_m) * north;
            let squared = east * east + north * north;
            let share = if squared > 0.0 { (along / squared).clamp(0.0, 1.0) } else { 0.0 };
            (at.east_m - from.east_m - share * east).hypot(at.north_m - from.north_m - share * north)
        };
        (0..sides).filter(|_| corners > 1).min_by(|a, b| off_m(a).total_cmp(&off_m(b)))
    }

    /// What is stated of a side's slope; of two the later counts.
    pub fn side_slope(&self, side: usize) -> Option<&SideSlope> {
        self.side_slopes.iter().rev().find(|slope| self.side_at(slope.at) == Some(side))
    }

    /// The run with a side as long on the map as that: its far corner moves along it, and what the side is stated to rise
    /// goes with it. The same run where there is no such side, or none with a direction.
    #[must_use]
    pub fn with_side_on_map(&self, side: usize, level_m: f64) -> Self {
        let Some((from, corner, to)) = drawn_out(&self.outline, side, level_m) else { return self.clone() };
        let middle = Point::new(f64::midpoint(from.east_m, to.east_m), f64::midpoint(from.north_m, to.north_m));
        let stated = self.side_slope(side).map(|stated| SideSlope { at: middle, ..stated.clone() });
        let mut run = if stated.is_some() { self.with_side_slope(side, stated) } else { self.clone() };
        run.outline[corner] = to;
        run
    }

    /// The run with a side's slope stated anew, or taken back.
    #[must_use]
    pub fn with_side_slope(&self, side: usize, stated: Option<SideSlope>) -> Self {
        let mut run = self.clone();
        run.side_slopes.retain(|slope| self.side_at(slope.at) != Some(side));
        run.side_slopes.extend(stated);
        run
    }
}

/// A side of an outline made so long: where it starts, its far corner, and where that goes along it. `None` where there is
/// no such side, or it has no direction.
pub fn drawn_out(outline: &[Point], side: usize, length_m: f64) -> Option<(Point, usize, Point)> {
    let corner = (side + 1) % outline.len().max(1);
    let (&from, &to) = (outline.get(side)?, outline.get(corner)?);
    let (east_m, north_m) = (to.east_m - from.east_m, to.north_m - from.north_m);
    let share = length_m / east_m.hypot(north_m);
    share.is_finite().then(|| (from, corner, Point::new(from.east_m + share * east_m, from.north_m + share * north_m)))
}

#[cfg(test)]
mod tests {
    use super::super::{Point, Run};

    #[test]
    fn a_side_of_no_length_stays_as_it_is() {
        let outline: Vec<Point> = [(0.0, 0.0), (4.0, 3.0), (4.0, 3.0)].map(Point::from).to_vec();
        let run = Run { outline, ..Run::default() };
        assert_eq!(run.with_side_on_map(1, 7.0), run);
        assert_eq!(run.with_side_on_map(3, 7.0), run);
        assert_eq!(run.with_side_on_map(0, 10.0).outline[1], Point::new(8.0, 6.0));
    }
}
