//! Inside, overlap, distance and crossings of outlines on flat ground. Metres, square metres, radians.
//!
//! Straight distances. Orientation tests are exact (adaptive predicates); areas of overlap carry the grid of the polygon
//! overlay, about 1e-9 of the extent. An outline that crosses itself has no inside worth asking for.

use geo::coordinate_position::{CoordPos, CoordinatePosition};
use geo::line_intersection::{LineIntersection, line_intersection};
use geo::{Area, BooleanOps, Coord, Euclidean, InteriorPoint, Length, Line, LineString, Polygon};

use crate::{Outline, Point, span_m};

/// What lies this near to a boundary lies on it, metres: room for the rounding of computed places.
pub const ON_LINE_M: f64 = 1e-6;

/// Whether `point` lies inside the closed outline or on it; an open one contains nothing.
pub fn contains(outline: &Outline, point: Point) -> bool {
    filled(outline).is_some_and(|polygon| polygon.coordinate_position(&coord(point)) != CoordPos::Outside)
}

/// Whether the whole of `inner` (its line and, if closed, its ground) lies inside the closed `boundary` or on it.
///
/// Places within [`ON_LINE_M`] of the boundary count as on it.
pub fn inside(inner: &Outline, boundary: &Outline) -> bool {
    let Some(polygon) = filled(boundary) else { return false };
    let within = |place: Point| {
        polygon.coordinate_position(&coord(place)) != CoordPos::Outside || distance_to_m(boundary, place) <= ON_LINE_M
    };
    // Between two meetings with the boundary a side stays on one side of it, so the places between tell all. The ground
    // follows its line: a boundary has no holes.
    inner.points().all(within)
        && inner.sides().all(|side| {
            let mut shares: Vec<f64> = meetings(side, boundary).map(|(place, _)| share_of(side, place)).collect();
            shares.extend([0.0, 1.0]);
            shares.sort_unstable_by(f64::total_cmp);
            shares.windows(2).all(|pair| within(side.0.towards(side.1, f64::midpoint(pair[0], pair[1]))))
        })
}

/// Straight distance between two lines, metres: 0 where they touch or cross. What they enclose does not count.
///
/// Infinite where one of them has no vertex.
pub fn distance_between_m(one: &Outline, other: &Outline) -> f64 {
    if one.vertices().is_empty() || other.vertices().is_empty() {
        return f64::INFINITY;
    }
    if one.sides().any(|side| meetings(side, other).next().is_some()) {
        return 0.0;
    }
    let from_one = one.points().map(|point| distance_to_m(other, point));
    let from_other = other.points().map(|point| distance_to_m(one, point));
    from_one.chain(from_other).fold(f64::INFINITY, f64::min)
}

/// [`distance_between_m`] where it may be below `reach_m`, else infinite: lines whose upright boxes stand that far
/// apart are looked at no closer.
pub fn distance_within_m(one: &Outline, other: &Outline, reach_m: f64) -> f64 {
    if boxes_apart_m(one.points(), other.points()) > reach_m { f64::INFINITY } else { distance_between_m(one, other) }
}

/// Straight distance between the upright boxes round the places of two lines, metres: never more than the lines' own.
pub fn boxes_apart_m(one: impl Iterator<Item = Point> + Clone, other: impl Iterator<Item = Point> + Clone) -> f64 {
    let apart = |of: fn(Point) -> f64| {
        let ((low, high), (other_low, other_high)) = (span_m(one.clone().map(of)), span_m(other.clone().map(of)));
        (other_low - high).max(low - other_high).max(0.0)
    };
    apart(|at| at.east_m).hypot(apart(|at| at.north_m))
}

/// Straight distance from a point to a line, metres; what it encloses does not count. Infinite without a vertex.
pub fn distance_to_m(outline: &Outline, point: Point) -> f64 {
    if outline.vertices().is_empty() { f64::INFINITY } else { outline.nearest_along(point).1 }
}

/// Where two lines cross or touch, with the angle between them, 0 to π/2 radians, along the first line.
///
/// Where they run on each other the angle is 0 and the place the beginning of the shared stretch. A meeting at a vertex
/// is one meeting, at the smallest of its angles.
pub fn crossings(one: &Outline, other: &Outline) -> Vec<(Point, f64)> {
    let mut found: Vec<(Point, f64)> = Vec::new();
    for side in one.sides() {
        let mut here: Vec<(Point, f64)> = meetings(side, other).collect();
        here.sort_by(|a, b| share_of(side, a.0).total_cmp(&share_of(side, b.0)));
        for (place, angle_rad) in here {
            match found.iter_mut().find(|known| known.0.distance_m(place) <= ON_LINE_M) {
                Some(known) => known.1 = known.1.min(angle_rad),
                None => found.push((place, angle_rad)),
            }
        }
    }
    found
}

/// Ground that two closed outlines share, square metres; 0 where one is open.
pub fn overlap_area_m2(one: &Outline, other: &Outline) -> f64 {
    match (filled(one), filled(other)) {
        (Some(one), Some(other)) => one.intersection(&other).unsigned_area(),
        _ => 0.0,
    }
}

/// Ground of a closed outline that lies in one of the others or in several, counted once, square metres; open ones count
/// for nothing.
pub fn overlap_with_any_m2<'a>(one: &Outline, others: impl IntoIterator<Item = &'a Outline>) -> f64 {
    let Some(ground) = filled(one) else { return 0.0 };
    let shared = others.into_iter().filter_map(filled).map(|other| ground.intersection(&other));
    let shared = shared.filter(|piece| piece.unsigned_area() > 0.0);
    shared.reduce(|all, next| all.union(&next)).map_or(0.0, |all| all.unsigned_area())
}

/// A piece of ground that two closed outlines share.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SharedGround {
    /// Its area, square metres.
    pub area_m2: f64,
    /// A place inside it.
    pub at: Point,
}

/// The pieces of ground that two closed outlines share, the largest first; none where one is open.
///
/// A piece no wider than `least_wide_m` is left out: of two lines that are meant as one a sliver remains. Its width is
/// `2 A / P`, that of a long strip of area A and perimeter P, and half of a square's.
pub fn shared_ground(one: &Outline, other: &Outline, least_wide_m: f64) -> Vec<SharedGround> {
    let (Some(one), Some(other)) = (filled(one), filled(other)) else { return Vec::new() };
    let piece = |piece: &Polygon<f64>| {
        let (area_m2, round_m) = (piece.unsigned_area(), Euclidean.length(piece.exterior()));
        let at = piece.interior_point()?;
        (2.0 * area_m2 > least_wide_m * round_m).then(|| SharedGround { area_m2, at: point(at.into()) })
    };
    let mut pieces: Vec<SharedGround> = one.intersection(&other).iter().filter_map(piece).collect();
    pieces.sort_by(|one, other| other.area_m2.total_cmp(&one.area_m2));
    pieces
}

/// Places where a side meets a line, with the angle between.
fn meetings(side: (Point, Point), other: &Outline) -> impl Iterator<Item = (Point, f64)> + '_ {
    let line = Line::new(coord(side.0), coord(side.1));
    let way = (side.1 - side.0).unit();
    other.sides().filter_map(move |(from, to)| {
        let angle_rad = {
            let other_way = (to - from).unit();
            way.cross(other_way).abs().atan2(way.dot(other_way).abs())
        };
        match line_intersection(line, Line::new(coord(from), coord(to)))? {
            LineIntersection::SinglePoint { intersection, .. } => Some((point(intersection), angle_rad)),
            LineIntersection::Collinear { intersection } => {
                let (start, end) = (point(intersection.start), point(intersection.end));
                Some((if share_of(side, start) <= share_of(side, end) { start } else { end }, 0.0))
            }
        }
    })
}

/// How far along a side a place lies: 0 at its beginning, 1 at its end.
fn share_of(side: (Point, Point), place: Point) -> f64 {
    let way = side.1 - side.0;
    (place - side.0).dot(way) / way.dot(way)
}

/// The ground within a closed outline, counter-clockwise; `None` where there is none.
pub(crate) fn filled(outline: &Outline) -> Option<Polygon<f64>> {
    if !outline.is_closed() || outline.vertices().len() < 3 {
        return None;
    }
    let mut ring: Vec<Coord<f64>> = outline.points().map(coord).collect();
    if !outline.is_counter_clockwise() {
        ring.reverse();
    }
    Some(Polygon::new(LineString::new(ring), Vec::new()))
}

/// A place as the polygon library writes it.
pub(crate) fn coord(point: Point) -> Coord<f64> {
    Coord { x: point.east_m, y: point.north_m }
}

fn point(coord: Coord<f64>) -> Point {
    Point::new(coord.x, coord.y)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::FRAC_PI_2;

    fn ring(points: &[(f64, f64)]) -> Outline {
        Outline::closed(&points.iter().copied().map(Point::from).collect::<Vec<_>>())
    }

    fn path(points: &[(f64, f64)]) -> Outline {
        Outline::open(&points.iter().copied().map(Point::from).collect::<Vec<_>>())
    }

    fn dented() -> Outline {
        ring(&[(0.0, 0.0), (30.0, 0.0), (30.0, 30.0), (15.0, 10.0), (0.0, 30.0)])
    }

    #[test]
    fn a_point_on_the_line_is_inside() {
        for (east_m, north_m, within) in
            [(5.0, 5.0, true), (0.0, 15.0, true), (15.0, 10.0, true), (15.0, 11.0, false), (-1.0, 0.0, false)]
        {
            assert_eq!(contains(&dented(), Point::new(east_m, north_m)), within, "{east_m} {north_m}");
        }
        assert!(!contains(&path(&[(0.0, 0.0), (5.0, 0.0), (5.0, 5.0)]), Point::new(4.0, 1.0)));
    }

    #[test]
    fn a_side_across_a_dent_is_not_inside() {
        assert!(inside(&dented(), &dented()));
        assert!(inside(&ring(&[(1.0, 1.0), (29.0, 1.0), (15.0, 9.0)]), &dented()));
        assert!(!inside(&path(&[(2.0, 20.0), (28.0, 20.0)]), &dented()));
        // Both ends on the boundary and nothing of it inside.
        assert!(!inside(&path(&[(0.0, 30.0), (30.0, 30.0)]), &dented()));
        assert!(!inside(&path(&[(2.0, 2.0), (40.0, 2.0)]), &dented()));
    }

    #[test]
    fn distances_are_straight_and_nothing_when_crossing() {
        let near = path(&[(33.0, -4.0), (34.0, -4.0)]);
        assert!((distance_between_m(&dented(), &near) - 5.0).abs() < 1e-12);
        assert_eq!(distance_between_m(&dented(), &path(&[(5.0, 5.0), (50.0, 5.0)])), 0.0);
        // Inside counts as away from the line.
        assert_eq!(distance_between_m(&dented(), &path(&[(2.0, 3.0), (5.0, 4.0)])), 2.0);
        assert_eq!(distance_between_m(&dented(), &path(&[])), f64::INFINITY);
    }

    #[test]
    fn crossings_come_along_the_first_line_with_their_angles() {
        let fence = path(&[(0.0, 0.0), (30.0, 0.0)]);
        let power = path(&[(20.0, 10.0), (20.0, -10.0), (0.0, 10.0)]);
        let found = crossings(&fence, &power);
        assert_eq!(found.len(), 2);
        assert!(found[0].0.distance_m(Point::new(10.0, 0.0)) < 1e-12 && (found[0].1 - FRAC_PI_2 / 2.0).abs() < 1e-12);
        assert!(found[1].0.distance_m(Point::new(20.0, 0.0)) < 1e-12 && (found[1].1 - FRAC_PI_2).abs() < 1e-12);
        // At the other line's bend there is one meeting, at the flatter of its angles.
        let bend = crossings(&fence, &path(&[(5.0, 5.0), (5.0, 0.0), (6.0, -1.0)]));
        assert_eq!(bend.len(), 1);
        assert!((bend[0].1 - FRAC_PI_2 / 2.0).abs() < 1e-12);
        assert_eq!(crossings(&fence, &path(&[(10.0, 0.0), (20.0, 0.0)])), [(Point::new(10.0, 0.0), 0.0)]);
    }

    #[test]
    fn shared_ground_is_measured_whichever_way_the_lines_run() {
        let square = ring(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]);
        let other = ring(&[(5.0, 5.0), (5.0, 15.0), (15.0, 15.0), (15.0, 5.0)]);
        assert!((overlap_area_m2(&square, &other) - 25.0).abs() < 1e-5);
        assert_eq!(overlap_area_m2(&square, &path(&[(0.0, 0.0), (1.0, 1.0)])), 0.0);
    }

    #[test]
    fn a_sliver_between_two_lines_meant_as_one_is_no_shared_ground() {
        let square = ring(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]);
        let beside = |by_m: f64| ring(&[(by_m, 0.0), (by_m + 10.0, 0.0), (by_m + 10.0, 10.0), (by_m, 10.0)]);
        assert_eq!(shared_ground(&square, &beside(10.0), 0.25), []);
        assert_eq!(shared_ground(&square, &beside(9.8), 0.25), []);
        let [piece] = shared_ground(&square, &beside(9.0), 0.25)[..] else { panic!("one piece") };
        assert!((piece.area_m2 - 10.0).abs() < 1e-5, "{piece:?}");
        assert!(contains(&square, piece.at) && contains(&beside(9.0), piece.at), "{piece:?}");
        // Two pieces, the larger first: a frame over a bar that is thicker at one end.
        let bar = ring(&[(-5.0, 4.0), (15.0, 4.0), (15.0, 7.0), (-5.0, 6.0)]);
        let frame = ring(&[
            (-4.0, -5.0),
            (14.0, -5.0),
            (14.0, 12.0),
            (12.0, 12.0),
            (12.0, 0.0),
            (-2.0, 0.0),
            (-2.0, 12.0),
            (-4.0, 12.0),
        ]);
        let pieces = shared_ground(&bar, &frame, 0.25);
        assert!(pieces.len() == 2 && pieces[0].area_m2 > pieces[1].area_m2, "{pieces:?}");
        assert!(pieces[0].at.east_m > 12.0 && pieces[1].at.east_m < -2.0, "{pieces:?}");
        assert_eq!(shared_ground(&square, &path(&[(0.0, 5.0), (10.0, 5.0)]), 0.25), []);
    }

    #[test]
    fn what_is_looked_at_no_closer_is_no_nearer() {
        let line = ring(&[(0.0, 0.0), (10.0, 0.0), (10.0, 8.0), (0.0, 8.0)]);
        for step in 0..60 {
            let by = f64::from(step) * 0.5;
            let other = ring(&[(by, 3.0 + by), (by + 4.0, 2.0 + by), (by + 3.0, 9.0 + by)]);
            let distance_m = distance_between_m(&line, &other);
            for reach_m in [0.0, 0.4, 2.5, 9.0] {
                let within_m = distance_within_m(&line, &other, reach_m);
                if distance_m <= reach_m {
                    assert!((within_m - distance_m).abs() < 1e-12, "{by}, {reach_m}");
                } else {
                    assert!(within_m > reach_m, "{by}, {reach_m}");
                }
            }
        }
    }
}
