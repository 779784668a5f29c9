//! Heights at single spots.

use std::collections::BTreeMap;

use super::buckets::Buckets;
use super::{GRAIN, Piece, Surface, ordered};
use crate::{Point, Vector};

/// Heights at single spots, with flat triangles between them (Delaunay).
///
/// Beyond the outermost spots the ground has the height of the nearest place on their hull: two spots make a slope that is
/// level across. Spots in one line do so too. Of several heights at one place the last counts.
#[derive(Debug, Clone, PartialEq)]
pub struct Spots {
    known: Vec<(Point, f64)>,
    triangles: Vec<[usize; 3]>,
    near: Buckets,
    /// Edges of the hull, or of the line where all spots lie in one.
    rim: Vec<[usize; 2]>,
}

/// Spots nearer than this are one, metres.
const ONE_SPOT_M: f64 = 1e-6;

/// Spots whose triangles are all thinner than this share of their span lie in one line.
const IN_LINE: f64 = 1e-9;

impl Spots {
    /// The ground through those heights; `None` with fewer than two spots apart: one height says nothing of a slope.
    pub fn new(heights: &[(Point, f64)]) -> Option<Self> {
        let mut spots: Vec<(Point, f64)> = Vec::with_capacity(heights.len());
        let mut columns: BTreeMap<i64, Vec<usize>> = BTreeMap::new();
        for &(at, up_m) in heights.iter().filter(|(at, up_m)| at.is_finite() && up_m.is_finite()) {
            // Of one column of the map or of those beside it: not every spot is compared with every other.
            let column = (at.east_m / ONE_SPOT_M).floor() as i64;
            let near = columns.range(column - 1..=column + 1).flat_map(|(_, spots)| spots).copied();
            let same = near.filter(|&spot| spots[spot].0.distance_m(at) < ONE_SPOT_M).min();
            if let Some(known) = same {
                spots[known].1 = up_m;
            } else {
                columns.entry(column).or_default().push(spots.len());
                spots.push((at, up_m));
            }
        }
        if spots.len() < 2 {
            return None;
        }
        if let Some(order) = in_line(&spots) {
            let rim = order.windows(2).map(|pair| [pair[0], pair[1]]).collect();
            return Some(Self { known: spots, triangles: Vec::new(), near: Buckets::default(), rim });
        }
        let points: Vec<_> = spots.iter().map(|(at, _)| delaunator::Point { x: at.east_m, y: at.north_m }).collect();
        let found = delaunator::triangulate(&points);
        let triangles: Vec<[usize; 3]> =
            found.triangles.chunks_exact(3).map(|three| [three[0], three[1], three[2]]).collect();
        let near = Buckets::of(&triangles.iter().map(|three| three.map(|spot| spots[spot].0)).collect::<Vec<_>>());
        let next = |place: usize| found.hull[(place + 1) % found.hull.len()];
        let rim = found.hull.iter().enumerate().map(|(place, &spot)| [spot, next(place)]).collect();
        Some(Self { known: spots, triangles, near, rim })
    }

    /// How many spots stand apart.
    pub fn count(&self) -> usize {
        self.known.len()
    }

    /// Whether they lie at different heights.
    pub fn rise(&self) -> bool {
        self.known.iter().any(|(_, up_m)| *up_m != self.known[0].1)
    }

    fn at(&self, spot: usize) -> Point {
        self.known[spot].0
    }

    /// Twice the signed area of a triangle of two spots and a place, square metres.
    fn side_of(&self, from: usize, to: usize, at: Point) -> f64 {
        (self.at(to) - self.at(from)).cross(at - self.at(from))
    }

    /// The triangle that holds a place.
    fn holding(&self, at: Point) -> Option<[usize; 3]> {
        let mut near = self.near.at(at).iter().map(|&number| self.triangles[number as usize]);
        near.find(|&[a, b, c]| {
            let sides = [self.side_of(a, b, at), self.side_of(b, c, at), self.side_of(c, a, at)];
            let area = self.side_of(a, b, self.at(c)).abs();
            sides.iter().all(|side| *side >= -GRAIN * area) || sides.iter().all(|side| *side <= GRAIN * area)
        })
    }

    /// Height at a place by the plane of a triangle.
    fn on(&self, [a, b, c]: [usize; 3], at: Point) -> f64 {
        let whole = self.side_of(a, b, self.at(c));
        let (to_b, to_c) = (-self.side_of(a, c, at) / whole, self.side_of(a, b, at) / whole);
        let up_m = |spot: usize| self.known[spot].1;
        up_m(a) + to_b * (up_m(b) - up_m(a)) + to_c * (up_m(c) - up_m(a))
    }

    /// Share of the way along an edge of the rim that is nearest to a place.
    fn share(&self, [from, to]: [usize; 2], at: Point) -> f64 {
        let way = self.at(to) - self.at(from);
        ((at - self.at(from)).dot(way) / way.dot(way)).clamp(0.0, 1.0)
    }
}

/// The spots in their order along the line, where all lie in one.
fn in_line(spots: &[(Point, f64)]) -> Option<Vec<usize>> {
    let first = spots[0].0;
    let farthest = |from: Point| {
        let far = |spot: &&(Point, f64)| from.distance_m(spot.0);
        spots.iter().max_by(|a, b| far(a).total_cmp(&far(b))).map_or(from, |spot| spot.0)
    };
    let from = farthest(first);
    let way = farthest(from) - from;
    let span_m = way.length();
    let unit = way.unit();
    if spots.iter().any(|(at, _)| unit.cross(*at - from).abs() > IN_LINE * span_m) {
        return None;
    }
    let mut order: Vec<usize> = (0..spots.len()).collect();
    order.sort_by(|&a, &b| unit.dot(spots[a].0 - from).total_cmp(&unit.dot(spots[b].0 - from)));
    Some(order)
}

/// Where the way `from` + share `way` meets the line through `at` along `along`, as a share.
fn meets(from: Point, way: Vector, at: Point, along: Vector) -> Option<f64> {
    let across = way.cross(along);
    (across != 0.0).then(|| (at - from).cross(along) / across)
}

impl Surface for Spots {
    fn cuts(&self, from: Point, to: Point) -> Vec<f64> {
        let way = to - from;
        let mut shares = Vec::new();
        let near = self.near.along(from, to);
        let triangles = near.iter().map(|&number| self.triangles[number as usize]);
        for [a, b] in triangles.flat_map(|[a, b, c]| [[a, b], [b, c], [c, a]]) {
            // Each edge inside belongs to two triangles; what is cut twice is one cut.
            let along = self.at(b) - self.at(a);
            let crosses = self.side_of(a, b, from) * self.side_of(a, b, to) <= 0.0
                && way.cross(self.at(a) - from) * way.cross(self.at(b) - from) <= 0.0;
            if crosses {
                shares.extend(meets(from, way, self.at(a), along));
            }
        }
        for &[a, b] in &self.rim {
            // Beyond the hull the nearest edge changes on the squares at its ends.
            let along = self.at(b) - self.at(a);
            shares.extend(meets(from, way, self.at(a), along.left()));
            shares.extend(meets(from, way, self.at(b), along.left()));
            if self.triangles.is_empty() {
                shares.extend(meets(from, way, self.at(a), along));
            }
        }
        ordered(shares)
    }

    fn piece(&self, within: Point, from: Point, to: Point) -> Option<Piece> {
        if let Some(triangle) = self.holding(within) {
            let (from_up_m, to_up_m) = (self.on(triangle, from), self.on(triangle, to));
            return Some(Piece { from_up_m, to_up_m, beyond: false });
        }
        let far_m = |edge: [usize; 2]| {
            let [a, b] = edge;
            self.at(a).towards(self.at(b), self.share(edge, within)).distance_m(within)
        };
        let edge = self.rim.iter().copied().min_by(|a, b| far_m(*a).total_cmp(&far_m(*b)))?;
        let up_m = |at: Point| {
            let (low, high) = (self.known[edge[0]].1, self.known[edge[1]].1);
            low + self.share(edge, at) * (high - low)
        };
        Some(Piece { from_up_m: up_m(from), to_up_m: up_m(to), beyond: far_m(edge) > BEYOND_M })
    }
}

/// A place this near to the spots' hull lies on it, metres: a height put down at a corner is meant for that corner.
const BEYOND_M: f64 = 0.5;

#[cfg(test)]
mod tests {
    use super::*;

    fn spots(heights: &[(f64, f64, f64)]) -> Option<Spots> {
        Spots::new(
            &heights.iter().map(|&(east_m, north_m, up_m)| (Point::new(east_m, north_m), up_m)).collect::<Vec<_>>(),
        )
    }

    #[test]
    fn three_spots_make_a_plane_and_its_edge_goes_on() {
        let plane = spots(&[(0.0, 0.0, 0.0), (10.0, 0.0, 1.0), (0.0, 10.0, 2.0)]).expect("three spots");
        let up_m = |east_m, north_m| plane.up_m(Point::new(east_m, north_m)).expect("everywhere");
        assert!((up_m(2.0, 3.0) - 0.8).abs() < 1e-12);
        assert!((up_m(5.0, -4.0) - 0.5).abs() < 1e-12, "as at the foot of the perpendicular");
        assert!((up_m(-3.0, -3.0) - 0.0).abs() < 1e-12);
        assert!((up_m(10.0, 10.0) - 1.5).abs() < 1e-12);
    }

    #[test]
    fn two_spots_make_a_slope_that_is_level_across() {
        let slope = spots(&[(0.0, 0.0, 0.0), (10.0, 0.0, 2.0)]).expect("two spots");
        for (east_m, north_m, up_m) in [(5.0, 0.0, 1.0), (5.0, 30.0, 1.0), (-4.0, 2.0, 0.0), (17.0, -5.0, 2.0)] {
            assert_eq!(slope.up_m(Point::new(east_m, north_m)), Some(up_m));
        }
    }

    #[test]
    fn what_is_looked_up_by_squares_is_what_a_look_at_all_triangles_finds() {
        let mut state = 7_u64;
        let mut random = |span: f64| {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            span * ((state >> 11) as f64 / (1_u64 << 53) as f64 - 0.5)
        };
        for count in [3, 4, 9, 60, 300] {
            // Wide and low fields, too, and spots in rows, as a grid has them.
            for (wide, deep, rows) in [(80.0, 80.0, false), (400.0, 3.0, false), (60.0, 60.0, true)] {
                let place = |at: f64| if rows { (at / 5.0).round() * 5.0 } else { at };
                let heights: Vec<_> =
                    (0..count).map(|_| (Point::new(place(random(wide)), place(random(deep))), random(4.0))).collect();
                let Some(quick) = Spots::new(&heights) else { continue };
                let all = Spots { near: Buckets::of(&[]), ..quick.clone() };
                let everything = (0..quick.triangles.len() as u32).collect();
                let all = Spots { near: all.near.holding_all(everything), ..all };
                for _ in 0..60 {
                    let mut at = || Point::new(place(random(1.4 * wide)), random(1.4 * deep));
                    let (from, to) = (at(), at());
                    assert_eq!(quick.cuts(from, to), all.cuts(from, to));
                    assert_eq!(quick.piece(from, from, to), all.piece(from, from, to));
                    let level = Point::new(to.east_m, from.north_m);
                    assert_eq!(quick.cuts(from, level), all.cuts(from, level));
                }
            }
        }
    }

    #[test]
    fn one_place_is_one_spot_and_one_spot_is_no_slope() {
        assert!(spots(&[(1.0, 1.0, 5.0)]).is_none());
        assert!(spots(&[(1.0, 1.0, 5.0), (1.0, 1.0, 7.0)]).is_none());
        let twice = spots(&[(0.0, 0.0, 5.0), (0.0, 0.0, 7.0), (1.0, 0.0, 7.0)]).expect("two places");
        assert_eq!((twice.count(), twice.up_m(Point::default())), (2, Some(7.0)));
    }
}
