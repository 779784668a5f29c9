//! The strip of ground mown under and beside the line.
//!
//! Union of each side's rectangle and each vertex's mitre, flat at open ends, every place counted once, less keep-outs.
//! Metres, square metres, minutes. Model: docs/model.md, "Corners and strip"; docs/sources.md, husbandry 5 and 8.2.

use geo::{Area, BooleanOps, LineString, MultiPolygon, Polygon, unary_union};

use crate::outline::TURN_GRAIN_RAD;
use crate::{Outline, Point, Vertex, mowing, region, span_m};

/// The mower.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mower {
    /// Width of cut, metres.
    pub width_m: f64,
    /// Share of the width that overlaps the last pass, 0 to 1.
    pub overlap: f64,
    /// Walking speed, metres per second.
    pub speed_m_per_s: f64,
}

/// How far the strip reaches to either side of the line, in the line's direction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StripWidth {
    /// To its left, metres.
    pub left_m: f64,
    /// To its right, metres.
    pub right_m: f64,
}

impl StripWidth {
    /// Half on either side.
    pub fn even(width_m: f64) -> Self {
        Self { left_m: width_m / 2.0, right_m: width_m / 2.0 }
    }

    /// From edge to edge, metres.
    pub fn whole_m(self) -> f64 {
        self.left_m + self.right_m
    }

    /// Whether there is anything to mow: neither side is less than nothing, and not both are nothing.
    fn is_some(self) -> bool {
        self.left_m >= 0.0 && self.right_m >= 0.0 && self.whole_m() > 0.0 && self.whole_m().is_finite()
    }
}

/// What to mow.
#[derive(Debug, Clone, Copy)]
pub struct StripRequest<'a> {
    /// The line.
    pub outline: &'a Outline,
    /// Width of the strip.
    pub width: StripWidth,
    /// Keep-outs as drawn, closed.
    pub keep_outs: &'a [Outline],
    /// The mower.
    pub mower: Mower,
}

/// The strip and the walk.
#[derive(Debug, Clone, PartialEq)]
pub struct Strip {
    /// Its area, square metres.
    pub area_m2: f64,
    /// Its shape, for drawing.
    pub polygons: Vec<StripPolygon>,
    /// Passes of the mower; `None` where the mower cannot do it.
    pub passes: Option<u32>,
    /// Distance walked, metres.
    pub walk_m: Option<f64>,
    /// Minutes of walking.
    pub minutes: Option<f64>,
}

/// One connected piece of the strip.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct StripPolygon {
    /// Its outer ring, counter-clockwise, first point not repeated.
    pub outer: Vec<Point>,
    /// Its holes, clockwise, first point not repeated.
    pub holes: Vec<Vec<Point>>,
}

/// A mitre whose tip is farther from the vertex than this many half-widths is cut to the triangle.
const LONGEST_MITRE: f64 = 5.0;

/// Areas nearer than this share of each other, and than a grid cell along both edges, are equal.
const AREA_GRAIN: f64 = 1e-6;

/// The overlay's grid has at least this many cells across the extent: 30 bits.
const GRID_CELLS: f64 = (1_u32 << 30) as f64;

/// The strip under and beside the line.
///
/// On open ground a mitred strip of even width is exactly length x width: what two rectangles share inside a corner is
/// what the kite adds outside; where it reaches farther to one side, the squares of both reaches differ at each corner
/// by the tangent of half its turn. The overlay finds that area only to its grid (a share of 1e-9 of the extent along
/// both edges), so where it agrees, where no mitre was cut and no keep-out bites, the product itself is reported; the
/// overlay then was the check.
pub fn strip(request: &StripRequest<'_>) -> Strip {
    let StripRequest { outline, width, keep_outs, mower } = *request;
    let passes = mowing::passes(width.whole_m(), mower.width_m, mower.overlap);
    let walk_m = passes.map(|passes| f64::from(passes) * outline.length_m());
    let minutes = walk_m.filter(|_| mower.speed_m_per_s > 0.0).map(|walk_m| walk_m / mower.speed_m_per_s / 60.0);

    let pieces: Vec<Polygon<f64>> = strip_pieces(outline, width).iter().map(|ring| polygon(ring)).collect();
    let whole = unary_union(&pieces);
    let whole_m2 = whole.unsigned_area();
    let kept_out: Vec<Polygon<f64>> = keep_outs.iter().filter_map(region::filled).collect();
    let mown = if kept_out.is_empty() { whole } else { whole.difference(&unary_union(&kept_out)) };
    let mown_m2 = mown.unsigned_area();

    let open_ground_m2 = open_ground_m2(outline, width);
    let grain_m2 = AREA_GRAIN * open_ground_m2 + grid_m(outline) * 2.0 * outline.length_m();
    let same = |one_m2: f64, other_m2: f64| (one_m2 - other_m2).abs() <= grain_m2;
    let untouched = same(mown_m2, whole_m2) && !any_mitre_cut(outline);
    let area_m2 = if untouched && same(whole_m2, open_ground_m2) { open_ground_m2 } else { mown_m2 };
    Strip { area_m2, polygons: mown.iter().map(strip_polygon).collect(), passes, walk_m, minutes }
}

/// Area of a strip's pieces that others, mown already, leave to be mown, square metres. Each of both counts a place once.
pub fn still_to_mow_m2(strip: &[StripPolygon], mown: &[StripPolygon]) -> f64 {
    let [strip, mown] = [strip, mown].map(|pieces| pieces.iter().map(with_holes).collect::<Vec<_>>());
    MultiPolygon::new(strip).difference(&unary_union(&mown)).unsigned_area()
}

/// Area of a strip that meets neither itself nor anything else.
fn open_ground_m2(outline: &Outline, width: StripWidth) -> f64 {
    let StripWidth { left_m, right_m } = width;
    let gained = |vertex: &Vertex| (vertex.turn_rad() / 2.0).tan().copysign(vertex.signed_turn_rad);
    let turned: f64 = outline.vertices().iter().filter(|vertex| turns(vertex)).map(gained).sum();
    outline.length_m() * width.whole_m() + (right_m * right_m - left_m * left_m) * turned
}

/// The pieces whose union is the strip: a rectangle a side, a mitre a vertex; each convex, counter-clockwise.
pub fn strip_pieces(outline: &Outline, width: StripWidth) -> Vec<Vec<Point>> {
    if !width.is_some() {
        return Vec::new();
    }
    let rectangles = outline.sides().map(|(from, to)| {
        let leftward = (to - from).unit().left();
        let (left, right) = (leftward * width.left_m, leftward * width.right_m);
        vec![from - right, to - right, to + left, from + left]
    });
    let mitres = outline.vertices().iter().filter_map(|vertex| mitre(outline, vertex, width));
    rectangles.chain(mitres).collect()
}

/// Whether the line turns at a vertex at all.
fn turns(vertex: &Vertex) -> bool {
    vertex.turn_rad() > TURN_GRAIN_RAD
}

/// The kite outside a vertex, or the triangle where the kite's tip would be too far; `None` where the line goes straight.
fn mitre(outline: &Outline, vertex: &Vertex, width: StripWidth) -> Option<Vec<Point>> {
    // Outside is to the right of a left turn and the other way about.
    let side_m = if vertex.signed_turn_rad > 0.0 { -width.right_m } else { width.left_m };
    if !turns(vertex) || side_m == 0.0 {
        return None;
    }
    let before = outline.direction_before(vertex.along_m).left() * side_m;
    let after = outline.direction_at(vertex.along_m).left() * side_m;
    let mut ring = vec![vertex.at, vertex.at + before];
    if !is_cut(vertex) {
        let cosine = before.dot(after) / (side_m * side_m);
        ring.push(vertex.at + (before + after) * (1.0 / (1.0 + cosine)));
    }
    ring.push(vertex.at + after);
    if vertex.signed_turn_rad < 0.0 {
        ring.reverse();
    }
    Some(ring)
}

/// Whether the mitre's tip, `1 / cos(turn / 2)` half-widths out, is too far.
fn is_cut(vertex: &Vertex) -> bool {
    LONGEST_MITRE * (vertex.turn_rad() / 2.0).cos() < 1.0 - TURN_GRAIN_RAD
}

/// Two cells of the overlay's grid, metres: as far as it may move a corner of a piece.
fn grid_m(outline: &Outline) -> f64 {
    let across_m = |along: fn(Point) -> f64| {
        let (low, high) = span_m(outline.points().map(along));
        (high - low).max(0.0)
    };
    2.0 * across_m(|point| point.east_m).max(across_m(|point| point.north_m)) / GRID_CELLS
}

fn any_mitre_cut(outline: &Outline) -> bool {
    outline.vertices().iter().any(is_cut)
}

fn polygon(ring: &[Point]) -> Polygon<f64> {
    Polygon::new(ring.iter().map(|&point| region::coord(point)).collect(), Vec::new())
}

fn with_holes(piece: &StripPolygon) -> Polygon<f64> {
    let ring = |ring: &[Point]| ring.iter().map(|&point| region::coord(point)).collect();
    Polygon::new(ring(&piece.outer), piece.holes.iter().map(|hole| ring(hole)).collect())
}

fn strip_polygon(polygon: &Polygon<f64>) -> StripPolygon {
    // The overlay repeats a ring's first point at its end.
    let ring = |ring: &LineString<f64>| -> Vec<Point> {
        ring.0.iter().take(ring.0.len().saturating_sub(1)).map(|coord| Point::new(coord.x, coord.y)).collect()
    };
    StripPolygon { outer: ring(polygon.exterior()), holes: polygon.interiors().iter().map(ring).collect() }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MOWER: Mower = Mower { width_m: 0.53, overlap: 0.1, speed_m_per_s: 4.0 / 3.6 };

    fn ring(points: &[(f64, f64)]) -> Outline {
        Outline::closed(&points.iter().copied().map(Point::from).collect::<Vec<_>>())
    }

    fn mown(outline: &Outline, width_m: f64, keep_outs: &[Outline]) -> Strip {
        strip(&StripRequest { outline, width: StripWidth::even(width_m), keep_outs, mower: MOWER })
    }

    #[test]
    fn a_square_is_length_times_width_with_a_hole_in_the_middle() {
        let strip = mown(&ring(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)]), 1.2, &[]);
        assert_eq!((strip.area_m2, strip.passes, strip.walk_m), (120.0, Some(3), Some(300.0)));
        assert!((strip.minutes.unwrap_or_default() - 4.5).abs() < 1e-12);
        assert_eq!((strip.polygons.len(), strip.polygons[0].holes.len()), (1, 1));
        assert_eq!((strip.polygons[0].outer.len(), strip.polygons[0].holes[0].len()), (4, 4));
    }

    #[test]
    fn a_strip_over_itself_counts_each_place_once() {
        // Two sides half a metre apart: 0.7 m of width are shared along 10 m, less the ends.
        let hairpin = ring(&[(0.0, 0.0), (10.0, 0.0), (10.0, 0.5), (0.0, 0.5)]);
        let strip = mown(&hairpin, 1.2, &[]);
        assert!((strip.area_m2 - 11.2 * 1.7).abs() < 1e-4, "{}", strip.area_m2);
    }

    #[test]
    fn a_needle_has_its_mitre_cut() {
        // A turn of 2 atan(20): the tip would lie 20 half-widths out, so the triangle stands there instead.
        let needle = ring(&[(0.0, 0.0), (200.0, 10.0), (0.0, 20.0)]);
        assert!(any_mitre_cut(&needle));
        let strip = mown(&needle, 0.2, &[]);
        assert!(strip.area_m2 < needle.length_m() * 0.2 - 0.01);
        // The kite that was cut has 20 r^2 - the triangle's r^2 sin cos: what two rectangles share stays shared.
        let half_turn_rad = 20_f64.atan();
        let lost_m2 = 0.01 * (half_turn_rad.tan() - half_turn_rad.sin() * half_turn_rad.cos());
        assert!((strip.area_m2 - (needle.length_m() * 0.2 - lost_m2)).abs() < 3e-4, "{}", strip.area_m2);
        // Just within five half-widths it stays.
        let blunt_rad = 0.2_f64.acos() - 1e-6;
        let blunt = ring(&[(0.0, 0.0), (100.0, 100.0 / blunt_rad.tan()), (0.0, 200.0 / blunt_rad.tan())]);
        assert!(!any_mitre_cut(&blunt));
    }

    #[test]
    fn keep_outs_bite_as_drawn_and_once() {
        let square = ring(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)]);
        let pond = ring(&[(5.0, -5.0), (10.0, -5.0), (10.0, 5.0), (5.0, 5.0)]);
        let strip = mown(&square, 1.2, &[pond.clone(), pond.clone()]);
        assert!((strip.area_m2 - 114.0).abs() < 1e-5, "{}", strip.area_m2);
        // The piece between two bites makes no hole any more.
        assert_eq!(strip.polygons.iter().map(|polygon| polygon.holes.len()).sum::<usize>(), 0);
        let far = ring(&[(10.0, 10.0), (15.0, 10.0), (15.0, 15.0)]);
        assert_eq!(mown(&square, 1.2, &[far]).area_m2, 120.0);
    }

    #[test]
    fn open_ends_are_flat_and_nothing_is_nothing() {
        let straight = Outline::open(&[Point::new(0.0, 0.0), Point::new(50.0, 0.0)]);
        assert_eq!(mown(&straight, 1.2, &[]).area_m2, 60.0);
        for width_m in [0.0, -1.0, f64::NAN] {
            assert_eq!(mown(&straight, width_m, &[]).polygons, []);
        }
        assert_eq!(mown(&Outline::open(&[]), 1.2, &[]).area_m2, 0.0);
        let stuck = Mower { speed_m_per_s: 0.0, ..MOWER };
        let width = StripWidth::even(1.2);
        let request = StripRequest { outline: &straight, width, keep_outs: &[], mower: stuck };
        assert_eq!(strip(&request).minutes, None);
    }

    #[test]
    fn a_strip_on_one_side_gains_or_loses_its_corners() {
        // docs/sources.md, husbandry 8.2: 25 m square, 1.2 m inside alone 114.24 m²; outside alone the mitred corners
        // add 4 x 1.44.
        let square = ring(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)]);
        for (left_m, right_m, expected_m2) in [(1.2, 0.0, 114.24), (0.0, 1.2, 125.76), (0.4, 0.8, 120.0 + 4.0 * 0.48)] {
            let width = StripWidth { left_m, right_m };
            let strip = strip(&StripRequest { outline: &square, width, keep_outs: &[], mower: MOWER });
            assert!((strip.area_m2 - expected_m2).abs() < 1e-9, "{left_m} {right_m}: {}", strip.area_m2);
            let drawn_m2 = |ring: &Vec<Point>| Outline::closed(ring).area_m2();
            let drawn = &strip.polygons[0];
            let drawn_m2 = drawn_m2(&drawn.outer) - drawn.holes.iter().map(drawn_m2).sum::<f64>();
            assert!((drawn_m2 - expected_m2).abs() < 1e-5, "{drawn_m2}");
            assert_eq!(strip.passes, Some(3));
        }
        for width in [StripWidth { left_m: -0.1, right_m: 1.0 }, StripWidth { left_m: f64::NAN, right_m: 1.0 }] {
            assert_eq!(strip_pieces(&square, width), Vec::<Vec<Point>>::new());
        }
    }

    #[test]
    fn what_is_mown_already_is_not_mown_again() {
        // Turned over its east side: 25.0 + 1.2 m of the strip lie under the side that stays.
        let square = ring(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)]);
        let next = ring(&[(25.0, 0.0), (50.0, 0.0), (50.0, 25.0), (25.0, 25.0)]);
        let (stands, strip) = (mown(&square, 1.2, &[]), mown(&next, 1.2, &[]));
        let left_m2 = still_to_mow_m2(&strip.polygons, &stands.polygons);
        assert!((left_m2 - (120.0 - 26.2 * 1.2)).abs() < 1e-4, "{left_m2}");
    }

    #[test]
    fn every_vertex_gets_its_kite_also_below_five_degrees() {
        let slight = Outline::open(&[(0.0, 0.0), (10.0, 0.0), (20.0, 0.5)].map(Point::from));
        assert_eq!(strip_pieces(&slight, StripWidth::even(1.0)).len(), 3);
        assert_eq!(
            strip_pieces(
                &Outline::open(&[(0.0, 0.0), (10.0, 0.0), (20.0, 0.0)].map(Point::from)),
                StripWidth::even(1.0)
            )
            .len(),
            2
        );
    }
}
