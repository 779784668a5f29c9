//! A line on the ground, closed or open, and measuring along it.
//!
//! `along_m` runs from the first vertex in the order stated; on a closed outline it lies in `[0, length)` and any other
//! value is taken round the ring, on an open one it is held to `[0, length]`. A repeated closing vertex and vertices on
//! top of their neighbour ([`SAME_PLACE_M`]) are dropped; [`Vertex::stated`] leads back to the vertex as stated.
//! Lengths, places and turns are exact to rounding. Straight sides only. An outline lies on level ground unless it was laid
//! on a profile ([`Outline::over`]): then places along it are metres of ground, and its area and turns stay those in plan.

use crate::slope::Profile;
use crate::{Point, Vector};

/// Neighbouring vertices nearer than this are one, metres: a nanometre, ten times the grain of `f64` at 1,000 km.
pub const SAME_PLACE_M: f64 = 1e-9;

/// A vertex with at least this exterior turn is a corner: 5 degrees.
pub const CORNER_TURN_RAD: f64 = 5.0 * std::f64::consts::PI / 180.0;

/// Rounding that a turn may carry before it changes a verdict, radians: a regular polygon of 72 sides has corners.
pub(crate) const TURN_GRAIN_RAD: f64 = 1e-9;

/// A cleaned line on the ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    vertices: Vec<Vertex>,
    closed: bool,
    length_m: f64,
    /// The ground under it, where it is not level.
    ground: Option<Profile>,
}

/// A vertex of an outline.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Vertex {
    /// Where it stands.
    pub at: Point,
    /// Its number in the points as stated (the first of those that fell together).
    pub stated: usize,
    /// Distance along the line from the first vertex, metres.
    pub along_m: f64,
    /// Exterior turn, radians: 0 straight on, π doubling back, positive to the left. 0 at the ends of an open line.
    pub signed_turn_rad: f64,
}

impl Vertex {
    /// Exterior turn without its side, radians, 0 to π.
    pub fn turn_rad(&self) -> f64 {
        self.signed_turn_rad.abs()
    }

    /// Whether the turn makes it a corner: [`CORNER_TURN_RAD`] or more.
    pub fn is_corner(&self) -> bool {
        self.turn_rad() >= CORNER_TURN_RAD - TURN_GRAIN_RAD
    }
}

impl Outline {
    /// The closed line through `points`; a repeated closing vertex is dropped.
    pub fn closed(points: &[Point]) -> Outline {
        Outline::build(points, true)
    }

    /// The open line through `points`.
    pub fn open(points: &[Point]) -> Outline {
        Outline::build(points, false)
    }

    fn build(points: &[Point], closed: bool) -> Outline {
        let mut kept: Vec<(usize, Point)> = Vec::with_capacity(points.len());
        for (stated, &at) in points.iter().enumerate() {
            if kept.last().is_none_or(|&(_, last)| last.distance_m(at) > SAME_PLACE_M) {
                kept.push((stated, at));
            }
        }
        while closed && kept.len() > 1 && kept[0].1.distance_m(kept[kept.len() - 1].1) <= SAME_PLACE_M {
            kept.pop();
        }
        let count = kept.len();
        let side = |from: usize| kept[(from + 1) % count].1 - kept[from].1;
        let mut vertices = Vec::with_capacity(count);
        let mut along_m = 0.0;
        for (index, &(stated, at)) in kept.iter().enumerate() {
            let has_turn = if closed { count > 1 } else { index > 0 && index + 1 < count };
            let signed_turn_rad = if has_turn { turn(side((index + count - 1) % count), side(index)) } else { 0.0 };
            vertices.push(Vertex { at, stated, along_m, signed_turn_rad });
            if closed || index + 1 < count {
                along_m += side(index).length();
            }
        }
        Outline { vertices, closed, length_m: along_m, ground: None }
    }

    /// This line laid on the ground: places along it are then metres of ground, as a net that lies on it has them.
    ///
    /// `profile` is the ground along this very outline.
    #[must_use]
    pub fn over(&self, profile: &Profile) -> Outline {
        let mut laid = self.clone();
        for (index, vertex) in laid.vertices.iter_mut().enumerate() {
            vertex.along_m =
                if index < self.side_count() { profile.side(index).0.along_m } else { profile.surface_m() };
        }
        laid.length_m = profile.surface_m();
        laid.ground = Some(profile.clone());
        laid
    }

    /// Whether the line comes back to its first vertex.
    pub fn is_closed(&self) -> bool {
        self.closed
    }

    /// Length of the line, metres.
    pub fn length_m(&self) -> f64 {
        self.length_m
    }

    /// The vertices in order, cleaned.
    pub fn vertices(&self) -> &[Vertex] {
        &self.vertices
    }

    /// The vertices' places in order; a closed outline does not repeat its first.
    pub fn points(&self) -> impl ExactSizeIterator<Item = Point> + Clone + '_ {
        self.vertices.iter().map(|vertex| vertex.at)
    }

    /// Number of sides.
    pub fn side_count(&self) -> usize {
        match self.vertices.len() {
            0 | 1 => 0,
            count if self.closed => count,
            count => count - 1,
        }
    }

    /// The two ends of side `index`, which starts at vertex `index`.
    pub fn side(&self, index: usize) -> (Point, Point) {
        let next = (index + 1) % self.vertices.len();
        (self.vertices[index].at, self.vertices[next].at)
    }

    /// All sides in order.
    pub fn sides(&self) -> impl ExactSizeIterator<Item = (Point, Point)> + '_ {
        (0..self.side_count()).map(|index| self.side(index))
    }

    /// The vertices that are corners, with their numbers.
    pub fn corners(&self) -> impl Iterator<Item = (usize, &Vertex)> + '_ {
        self.vertices.iter().enumerate().filter(|(_, vertex)| vertex.is_corner())
    }

    /// Enclosed area with its sign, square metres: positive where the line runs counter-clockwise. 0 for an open line.
    ///
    /// Shifted to the first vertex before summing: with coordinates of 1e6 m the products would otherwise lose a metre.
    pub fn signed_area_m2(&self) -> f64 {
        if !self.closed || self.vertices.len() < 3 {
            return 0.0;
        }
        let origin = self.vertices[0].at;
        let doubled: f64 = self.vertices.windows(2).map(|pair| (pair[0].at - origin).cross(pair[1].at - origin)).sum();
        doubled / 2.0
    }

    /// Enclosed area, square metres; 0 for an open line. Means nothing where the outline crosses itself.
    pub fn area_m2(&self) -> f64 {
        self.signed_area_m2().abs()
    }

    /// Whether a closed line runs counter-clockwise (its inside is on the left).
    pub fn is_counter_clockwise(&self) -> bool {
        self.signed_area_m2() > 0.0
    }

    /// `along_m` brought into the line: round the ring when closed, held to the ends when open.
    pub fn wrap_m(&self, along_m: f64) -> f64 {
        if self.length_m <= 0.0 || !along_m.is_finite() {
            return 0.0;
        }
        if !self.closed {
            return along_m.clamp(0.0, self.length_m);
        }
        let wrapped = along_m.rem_euclid(self.length_m);
        // The last nanometre of the ring is its beginning: rounding must not turn 0 into the length.
        if self.length_m - wrapped < SAME_PLACE_M { 0.0 } else { wrapped }
    }

    /// The place `along_m` from the first vertex.
    pub fn at(&self, along_m: f64) -> Point {
        if self.side_count() == 0 {
            return self.vertices.first().map_or(Point::default(), |vertex| vertex.at);
        }
        let along_m = self.wrap_m(along_m);
        let index = self.side_at(along_m);
        let (from, to) = self.side(index);
        from.towards(to, self.share_of(index, along_m).clamp(0.0, 1.0))
    }

    /// Share of a side in plan at a place along the line.
    fn share_of(&self, side: usize, along_m: f64) -> f64 {
        let (start_m, end_m) = (self.vertices[side].along_m, self.side_end_m(side));
        match &self.ground {
            None => (along_m - start_m) / (end_m - start_m),
            Some(ground) => {
                let (start, end) = ground.side(side);
                (ground.level_of(along_m) - start.level_m) / (end.level_m - start.level_m)
            }
        }
    }

    /// The side on which a place along the line lies, and its share of that side in plan; `None` where there is no side.
    pub fn spot(&self, along_m: f64) -> Option<(usize, f64)> {
        if self.side_count() == 0 {
            return None;
        }
        let along_m = self.wrap_m(along_m);
        let side = self.side_at(along_m);
        Some((side, self.share_of(side, along_m).clamp(0.0, 1.0)))
    }

    /// The place along the line at a share of a side in plan, metres.
    pub fn along_of(&self, side: usize, share: f64) -> f64 {
        let (start_m, end_m) = (self.vertices[side].along_m, self.side_end_m(side));
        match &self.ground {
            None => start_m + share * (end_m - start_m),
            Some(ground) => {
                let (start, end) = ground.side(side);
                ground.along_of(start.level_m + share * (end.level_m - start.level_m))
            }
        }
    }

    /// Direction of the line at `along_m`, length one; at a vertex that of the side that begins there.
    pub fn direction_at(&self, along_m: f64) -> Vector {
        if self.side_count() == 0 {
            return Vector::default();
        }
        let (from, to) = self.side(self.side_at(self.wrap_m(along_m)));
        (to - from).unit()
    }

    /// Direction of the line just before `along_m`, length one; at a vertex that of the side that ends there.
    pub fn direction_before(&self, along_m: f64) -> Vector {
        let count = self.side_count();
        if count == 0 {
            return Vector::default();
        }
        let along_m = self.wrap_m(along_m);
        let mut index = self.side_at(along_m);
        if along_m - self.vertices[index].along_m <= SAME_PLACE_M && (self.closed || index > 0) {
            index = (index + count - 1) % count;
        }
        let (from, to) = self.side(index);
        (to - from).unit()
    }

    /// Distance between two places measured along the line, metres: the shorter way round when closed.
    pub fn between_m(&self, one_m: f64, other_m: f64) -> f64 {
        let apart_m = (self.wrap_m(one_m) - self.wrap_m(other_m)).abs();
        if self.closed { apart_m.min(self.length_m - apart_m) } else { apart_m }
    }

    /// The line's place nearest to `point` (`along_m`) and its straight distance, metres; of equals the first along.
    pub fn nearest_along(&self, point: Point) -> (f64, f64) {
        let mut best = (0.0, self.at(0.0).distance_m(point));
        for index in 0..self.side_count() {
            let (from, to) = self.side(index);
            let way = to - from;
            let share = ((point - from).dot(way) / way.dot(way)).clamp(0.0, 1.0);
            let distance_m = from.towards(to, share).distance_m(point);
            if distance_m < best.1 {
                best = (self.wrap_m(self.along_of(index, share)), distance_m);
            }
        }
        best
    }

    /// `along_m` of the end of a side, not wrapped.
    fn side_end_m(&self, index: usize) -> f64 {
        self.vertices.get(index + 1).map_or(self.length_m, |vertex| vertex.along_m)
    }

    /// The side on which a wrapped `along_m` lies; there is at least one.
    fn side_at(&self, along_m: f64) -> usize {
        let after = self.vertices.partition_point(|vertex| vertex.along_m <= along_m);
        after.saturating_sub(1).min(self.side_count() - 1)
    }
}

/// Signed angle from one direction to the next, radians.
fn turn(into: Vector, out: Vector) -> f64 {
    into.cross(out).atan2(into.dot(out))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(points: &[(f64, f64)], closed: bool) -> Outline {
        let points: Vec<Point> = points.iter().copied().map(Point::from).collect();
        if closed { Outline::closed(&points) } else { Outline::open(&points) }
    }

    #[test]
    fn repeats_are_dropped_and_the_stated_numbers_kept() {
        let square = line(&[(0.0, 0.0), (10.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0), (0.0, 0.0)], true);
        let stated: Vec<usize> = square.vertices().iter().map(|vertex| vertex.stated).collect();
        assert_eq!(stated, [0, 1, 3, 4]);
        assert_eq!((square.length_m(), square.area_m2()), (40.0, 100.0));
        assert!(square.is_counter_clockwise());
    }

    #[test]
    fn an_open_line_keeps_a_last_point_on_its_first() {
        let there_and_back = line(&[(0.0, 0.0), (10.0, 0.0), (0.0, 0.0)], false);
        assert_eq!((there_and_back.vertices().len(), there_and_back.length_m()), (3, 20.0));
        assert_eq!(there_and_back.area_m2(), 0.0);
    }

    #[test]
    fn turns_have_their_side_and_open_ends_none() {
        let dent = line(&[(0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (10.0, 10.0), (10.0, 20.0), (0.0, 20.0)], true);
        let right_angle = std::f64::consts::FRAC_PI_2;
        for (index, vertex) in dent.vertices().iter().enumerate() {
            let want = if index == 3 { -right_angle } else { right_angle };
            assert!((vertex.signed_turn_rad - want).abs() < 1e-12, "vertex {index}");
        }
        let open = line(&[(0.0, 0.0), (5.0, 0.0), (5.0, 5.0)], false);
        assert_eq!(open.corners().map(|(index, _)| index).collect::<Vec<_>>(), [1]);
    }

    #[test]
    fn a_turn_of_five_degrees_is_a_corner_and_one_below_is_not() {
        for (degrees, corner) in [(4.999, false), (5.0, true), (5.001, true)] {
            let turn_rad = f64::to_radians(degrees);
            let bent = line(&[(0.0, 0.0), (10.0, 0.0), (10.0 + turn_rad.cos(), turn_rad.sin())], false);
            assert_eq!(bent.corners().count() == 1, corner, "{degrees} degrees");
        }
        // A regular polygon of 72 sides turns by 5 degrees at each, whatever rounding says.
        let round: Vec<(f64, f64)> =
            (0..72).map(|index| f64::from(index * 5).to_radians()).map(|a| (30.0 * a.cos(), 30.0 * a.sin())).collect();
        assert_eq!(line(&round, true).corners().count(), 72);
    }

    #[test]
    fn along_runs_round_a_ring_and_stops_at_the_ends_of_a_line() {
        let square = line(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)], true);
        for (along_m, east_m, north_m) in [(0.0, 0.0, 0.0), (15.0, 10.0, 5.0), (-5.0, 0.0, 5.0), (83.0, 3.0, 0.0)] {
            assert!(square.at(along_m).distance_m(Point::new(east_m, north_m)) < 1e-12, "{along_m}");
        }
        assert_eq!(square.wrap_m(-1e-15), 0.0);
        assert_eq!((square.between_m(1.0, 39.0), square.between_m(5.0, 25.0)), (2.0, 20.0));
        let open = line(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)], false);
        assert_eq!((open.at(-3.0), open.at(99.0)), (Point::new(0.0, 0.0), Point::new(10.0, 10.0)));
        assert_eq!(open.between_m(1.0, 19.0), 18.0);
    }

    #[test]
    fn directions_at_a_vertex_are_those_of_its_sides() {
        let square = line(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)], true);
        assert_eq!(square.direction_before(0.0), Vector::new(0.0, -1.0));
        assert_eq!(square.direction_at(0.0), Vector::new(1.0, 0.0));
        assert_eq!(square.direction_before(10.0), Vector::new(1.0, 0.0));
        let open = line(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)], false);
        assert_eq!(open.direction_before(0.0), Vector::new(1.0, 0.0));
        assert_eq!(open.direction_at(20.0), Vector::new(0.0, 1.0));
    }

    #[test]
    fn the_nearest_place_is_the_first_of_equals() {
        let square = line(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)], true);
        assert_eq!(square.nearest_along(Point::new(5.0, 5.0)), (5.0, 5.0));
        assert_eq!(square.nearest_along(Point::new(13.0, 14.0)), (20.0, 5.0));
    }

    #[test]
    fn what_is_no_line_measures_nothing_and_does_not_panic() {
        for points in [&[][..], &[(3.0, 4.0)], &[(3.0, 4.0), (3.0, 4.0)]] {
            for closed in [false, true] {
                let nothing = line(points, closed);
                assert_eq!((nothing.length_m(), nothing.area_m2(), nothing.side_count()), (0.0, 0.0, 0));
                nothing.at(5.0);
                nothing.direction_at(5.0);
                nothing.direction_before(5.0);
                nothing.nearest_along(Point::default());
            }
        }
    }

    #[test]
    fn area_keeps_its_digits_far_from_the_origin() {
        let far: Vec<(f64, f64)> =
            [(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(|(e, n)| (e + 999_900.0, n - 999_900.0)).into();
        assert!((line(&far, true).area_m2() - 625.0).abs() < 1e-9);
    }
}
