//! A corner cut over several posts, so that each of them turns less.
//!
//! The turn is shared out equally over so many posts a panel apart, symmetric about the corner: from a place so far
//! before the vertex to one as far after it the line goes in chords of one panel. Metres, radians, square metres; exact
//! to rounding. Length is lost by it, and ground at a corner that bulges (at one that dents it is won).

use crate::{Outline, Point, SAME_PLACE_M, Vector};

/// More posts than this make no corner but a round.
pub const MOST_CUT_POSTS: usize = 12;

/// A side is left at least this long beyond a cut, metres: no post stands on another.
const LEFT_M: f64 = 0.05;

/// A corner cut.
#[derive(Debug, Clone, PartialEq)]
pub struct Cut {
    /// The places that stand in for the vertex, along the outline.
    pub places: Vec<Point>,
    /// Turn at each of them, radians.
    pub turn_rad: f64,
    /// From the vertex to the first and to the last of them, metres.
    pub set_back_m: f64,
    /// So much shorter is the line, metres.
    pub shorter_m: f64,
    /// Ground between the old line and the new, square metres.
    pub ground_m2: f64,
}

/// Cuts a corner over so many posts a panel apart.
///
/// `None` where the vertex does not turn, where fewer than two or more than [`MOST_CUT_POSTS`] are asked for, or where a
/// side beside it is too short.
///
/// ```
/// use geometry::{Outline, Point, cut_corner};
///
/// let square = Outline::closed(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(Point::from));
/// let cut = cut_corner(&square, 1, 2, 3.0).expect("sides are long enough");
/// // One chord of 3 m across a right angle: 45 degrees at each end, 3 / sqrt 2 m off the corner, a triangle of 2.25 m2.
/// assert!((cut.turn_rad - 45_f64.to_radians()).abs() < 1e-12 && (cut.ground_m2 - 2.25).abs() < 1e-12);
/// assert!((cut.places[0].east_m - (25.0 - 3.0 / 2_f64.sqrt())).abs() < 1e-12);
/// ```
pub fn cut_corner(outline: &Outline, vertex: usize, posts: usize, panel_m: f64) -> Option<Cut> {
    let corner = outline.vertices().get(vertex)?;
    let turn_rad = corner.signed_turn_rad;
    let count = outline.vertices().len();
    let has_sides = outline.is_closed() || (vertex > 0 && vertex + 1 < count);
    if !(2..=MOST_CUT_POSTS).contains(&posts) || !has_sides || panel_m <= SAME_PLACE_M || turn_rad.abs() < 1e-9 {
        return None;
    }
    let each_rad = turn_rad / posts as f64;
    let (before, after) = (outline.direction_before(corner.along_m), outline.direction_at(corner.along_m));
    let chord = |number: usize| turned(before, each_rad * number as f64) * panel_m;
    // From the first place to the last; it lies along the base of an equal-sided triangle whose tip is the vertex.
    let mut across = Vector::default();
    for number in 1..posts {
        across = across + chord(number);
    }
    let set_back_m = across.length() / (2.0 * (turn_rad / 2.0).cos());
    let side_m = |from: usize| {
        let (one, other) = outline.side(from);
        one.distance_m(other)
    };
    let beside_m = side_m((vertex + count - 1) % count).min(side_m(vertex));
    if !set_back_m.is_finite() || set_back_m + LEFT_M > beside_m {
        return None;
    }
    let mut places = vec![corner.at - before * set_back_m];
    for number in 1..posts - 1 {
        places.push(*places.last()? + chord(number));
    }
    // The last lies on the side beyond the corner, to rounding; it is put there.
    places.push(corner.at + after * set_back_m);
    let between: Vec<Point> = std::iter::once(corner.at).chain(places.iter().copied()).collect();
    Some(Cut {
        places,
        turn_rad: each_rad.abs(),
        set_back_m,
        shorter_m: 2.0 * set_back_m - panel_m * (posts - 1) as f64,
        ground_m2: Outline::closed(&between).area_m2(),
    })
}

fn turned(way: Vector, angle_rad: f64) -> Vector {
    let (sin, cos) = angle_rad.sin_cos();
    Vector::new(way.east * cos - way.north * sin, way.east * sin + way.north * cos)
}
