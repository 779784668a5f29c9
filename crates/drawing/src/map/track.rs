//! A run's line as a track: where a place along it lies, and which side is outside.
//!
//! The outer side of a closed line is the one that its ground does not lie on; an open line is judged as if it
//! closed, so that its hollow side is inside, and a straight one has its outside to the right.

use plan::Point;

/// Places on the line nearer than this are one place, metres.
pub(crate) const SAME_M: f64 = 0.01;

/// A line of straight sides.
#[derive(Clone)]
pub(crate) struct Track {
    vertices: Vec<(Point, f64)>,
    closed: bool,
    line_m: f64,
    /// Whether the outside lies to the right of the direction of the outline.
    outside_right: bool,
}

impl Track {
    /// The track of those vertices, each with its place along the line; `None` where there is no line.
    pub(crate) fn new(vertices: &[(Point, f64)], closed: bool, line_m: f64) -> Option<Self> {
        if vertices.len() < 2 || !(line_m > 0.0 && line_m.is_finite()) {
            return None;
        }
        let places: Vec<Point> = vertices.iter().map(|vertex| vertex.0).collect();
        Some(Self { vertices: vertices.to_vec(), closed, line_m, outside_right: signed_area_m2(&places) >= 0.0 })
    }

    pub(crate) fn line_m(&self) -> f64 {
        self.line_m
    }

    pub(crate) fn closed(&self) -> bool {
        self.closed
    }

    pub(crate) fn outside_right(&self) -> bool {
        self.outside_right
    }

    pub(crate) fn vertices(&self) -> &[(Point, f64)] {
        &self.vertices
    }

    /// Number of sides.
    pub(crate) fn sides(&self) -> usize {
        self.vertices.len() - usize::from(!self.closed)
    }

    /// Start and end of a side: its places and where they lie along the line.
    pub(crate) fn side(&self, side: usize) -> ((Point, f64), (Point, f64)) {
        let start = self.vertices[side];
        match self.vertices.get(side + 1) {
            Some(&end) => (start, end),
            None => (start, (self.vertices[0].0, self.line_m)),
        }
    }

    /// The place along the line, held to its ends or taken round the ring.
    pub(crate) fn held(&self, along_m: f64) -> f64 {
        if self.closed { along_m.rem_euclid(self.line_m) } else { along_m.clamp(0.0, self.line_m) }
    }

    /// The side that a place along the line lies on.
    fn side_at(&self, along_m: f64) -> usize {
        let along_m = self.held(along_m);
        let after = self.vertices.partition_point(|vertex| vertex.1 <= along_m);
        after.saturating_sub(1).min(self.sides() - 1)
    }

    /// Where a place along the line lies.
    pub(crate) fn at(&self, along_m: f64) -> Point {
        let along_m = self.held(along_m);
        let (start, end) = self.side(self.side_at(along_m));
        let part = if end.1 > start.1 { (along_m - start.1) / (end.1 - start.1) } else { 0.0 };
        Point::new(
            start.0.east_m + (end.0.east_m - start.0.east_m) * part,
            start.0.north_m + (end.0.north_m - start.0.north_m) * part,
        )
    }

    /// The line's place that is nearest to a place of the ground, metres along it.
    pub(crate) fn nearest(&self, place: Point) -> f64 {
        let mut best = (f64::INFINITY, 0.0);
        for side in 0..self.sides() {
            let ((start, start_m), (end, end_m)) = self.side(side);
            let part = part_of(start, end, place);
            let (east, north) = (end.east_m - start.east_m, end.north_m - start.north_m);
            let far_m = (place.east_m - start.east_m - east * part).hypot(place.north_m - start.north_m - north * part);
            if far_m < best.0 {
                best = (far_m, start_m + (end_m - start_m) * part);
            }
        }
        best.1
    }

    /// Outward from a side, radians counter-clockwise from east.
    pub(crate) fn outward_of_side(&self, side: usize) -> f64 {
        let ((start, _), (end, _)) = self.side(side);
        let along = (end.north_m - start.north_m).atan2(end.east_m - start.east_m);
        along + if self.outside_right { -1.0 } else { 1.0 } * std::f64::consts::FRAC_PI_2
    }

    /// Outward from a place along the line: square to its side, or along the bisector at a vertex.
    pub(crate) fn outward(&self, along_m: f64) -> f64 {
        let near = |vertex: &(Point, f64)| {
            let apart_m = (vertex.1 - self.held(along_m)).abs();
            apart_m < SAME_M || (self.closed && self.line_m - apart_m < SAME_M)
        };
        match self.vertices.iter().position(near) {
            Some(vertex) => self.outward_of_vertex(vertex),
            None => self.outward_of_side(self.side_at(along_m)),
        }
    }

    /// Outward from a place along the line, square to the side that it lies on.
    pub(crate) fn square_outward(&self, along_m: f64) -> f64 {
        self.outward_of_side(self.side_at(along_m))
    }

    /// Outward from a vertex: along the bisector of its sides' outward directions.
    pub(crate) fn outward_of_vertex(&self, vertex: usize) -> f64 {
        let before = match vertex.checked_sub(1) {
            Some(side) => side,
            None if self.closed => self.sides() - 1,
            None => 0,
        };
        let after = vertex.min(self.sides() - 1);
        let (a, b) = (self.outward_of_side(before), self.outward_of_side(after));
        let (east, north) = (a.cos() + b.cos(), a.sin() + b.sin());
        // A line that doubles back has no bisector; its own direction serves.
        if east.hypot(north) < 1e-6 { a + std::f64::consts::FRAC_PI_2 } else { north.atan2(east) }
    }
}

/// Area of a ring, square metres, positive where it runs counter-clockwise; taken about its first place.
pub(crate) fn signed_area_m2(ring: &[Point]) -> f64 {
    let Some(&origin) = ring.first() else { return 0.0 };
    let local = |place: &Point| (place.east_m - origin.east_m, place.north_m - origin.north_m);
    let next = ring.iter().skip(1).chain(std::iter::once(&origin));
    ring.iter()
        .zip(next)
        .map(|(a, b)| {
            let ((ax, ay), (bx, by)) = (local(a), local(b));
            (ax * by - bx * ay) / 2.0
        })
        .sum()
}

/// Whether a place lies inside a ring (even-odd).
pub(crate) fn inside(ring: &[Point], place: Point) -> bool {
    let mut inside = false;
    let mut last = ring.last();
    for corner in ring {
        if let Some(last) = last
            && (corner.north_m > place.north_m) != (last.north_m > place.north_m)
        {
            let part = (place.north_m - corner.north_m) / (last.north_m - corner.north_m);
            inside ^= place.east_m < corner.east_m + part * (last.east_m - corner.east_m);
        }
        last = Some(corner);
    }
    inside
}

/// The part of a side, 0 to 1, that lies nearest to a place.
fn part_of(start: Point, end: Point, place: Point) -> f64 {
    let (east, north) = (end.east_m - start.east_m, end.north_m - start.north_m);
    let squared = east * east + north * north;
    let way = (place.east_m - start.east_m) * east + (place.north_m - start.north_m) * north;
    if squared > 0.0 { (way / squared).clamp(0.0, 1.0) } else { 0.0 }
}

/// Distance from a place to a ring's nearest side, metres.
fn distance_m(ring: &[Point], place: Point) -> f64 {
    let next = ring.iter().skip(1).chain(ring.first());
    ring.iter()
        .zip(next)
        .map(|(a, b)| {
            let (east, north) = (b.east_m - a.east_m, b.north_m - a.north_m);
            let part = part_of(*a, *b, place);
            let (east, north) = (place.east_m - a.east_m - east * part, place.north_m - a.north_m - north * part);
            east * east + north * north
        })
        .fold(f64::INFINITY, f64::min)
        .sqrt()
}

/// A place well inside a ring, and its distance from the nearest side, metres: the centroid where that is nearly
/// as far in as any place of a coarse grid; `None` for a ring without ground.
pub(crate) fn middle(ring: &[Point]) -> Option<(Point, f64)> {
    const STEPS: i32 = 14;
    let (mut low, mut high) = (*ring.first()?, *ring.first()?);
    let (mut east_m, mut north_m) = (0.0, 0.0);
    for place in ring {
        low = Point::new(low.east_m.min(place.east_m), low.north_m.min(place.north_m));
        high = Point::new(high.east_m.max(place.east_m), high.north_m.max(place.north_m));
        east_m += place.east_m / ring.len() as f64;
        north_m += place.north_m / ring.len() as f64;
    }
    let depth = |place: Point| if inside(ring, place) { distance_m(ring, place) } else { -1.0 };
    let mean = Point::new(east_m, north_m);
    let mut best = (mean, depth(mean) / 0.8);
    for row in 1..STEPS {
        for column in 1..STEPS {
            let place = Point::new(
                low.east_m + (high.east_m - low.east_m) * f64::from(column) / f64::from(STEPS),
                low.north_m + (high.north_m - low.north_m) * f64::from(row) / f64::from(STEPS),
            );
            // No place of the ring is deeper in it than in the box round it.
            let at_most_m = (place.east_m - low.east_m)
                .min(high.east_m - place.east_m)
                .min(place.north_m - low.north_m)
                .min(high.north_m - place.north_m);
            if at_most_m <= best.1 {
                continue;
            }
            let depth_m = depth(place);
            if depth_m > best.1 {
                best = (place, depth_m);
            }
        }
    }
    let depth_m = depth(best.0);
    (depth_m > 0.0).then_some((best.0, depth_m))
}
