//! A corner cut over several posts, so that each of them turns less.
//!
//! The turn is shared out equally over so many posts a panel apart, symmetric about the corner: from a place so far
//! before the vertex to one as far after it the line goes in chords of one panel. Metres, radians, square metres; exact
//! to rounding. On ground that is not level the chords are one panel along the ground ([`cut_corner_over`]). Length is
//! lost by it, and ground at a corner that bulges (at one that dents it is won).

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
    /// From the first of them to the vertex and from there to the last, metres in plan.
    pub set_back_m: [f64; 2],
    /// The same along the line, metres: on a slope of ground.
    pub along_m: [f64; 2],
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
        set_back_m: [set_back_m; 2],
        along_m: [set_back_m; 2],
        shorter_m: 2.0 * set_back_m - panel_m * (posts - 1) as f64,
        ground_m2: Outline::closed(&between).area_m2(),
    })
}

/// The same on ground that is not level: `ground_m` measures a straight stretch of net along it, and each chord is sought
/// so that it is a panel there. The turns stay equal, so the two set-backs need not be.
pub fn cut_corner_over(
    outline: &Outline,
    vertex: usize,
    posts: usize,
    panel_m: f64,
    ground_m: &dyn Fn(Point, Point) -> f64,
) -> Option<Cut> {
    let mut cut = cut_corner(outline, vertex, posts, panel_m)?;
    for _ in 0..MOST_ROUNDS {
        let chord_m = |pair: &[Point]| pair[0].distance_m(pair[1]) * panel_m / ground_m(pair[0], pair[1]);
        let chords_m: Vec<f64> = cut.places.windows(2).map(chord_m).collect();
        let next = chorded(outline, vertex, &chords_m, panel_m)?;
        let moved_m = next.places.iter().zip(&cut.places).map(|(to, from)| to.distance_m(*from)).fold(0.0, f64::max);
        cut = next;
        if moved_m < REST_M {
            return Some(cut);
        }
    }
    None
}

/// Rounds after which chords on broken ground are given up.
const MOST_ROUNDS: usize = 60;
/// Places that move by less are at rest, metres.
const REST_M: f64 = 1e-9;

/// A cut by chords of those lengths in plan, its turns alike.
fn chorded(outline: &Outline, vertex: usize, chords_m: &[f64], panel_m: f64) -> Option<Cut> {
    let corner = outline.vertices().get(vertex)?;
    let each_rad = corner.signed_turn_rad / (chords_m.len() + 1) as f64;
    let (before, after) = (outline.direction_before(corner.along_m), outline.direction_at(corner.along_m));
    let ways = (1..).zip(chords_m).map(|(number, &chord_m)| turned(before, each_rad * f64::from(number)) * chord_m);
    let across = ways.clone().fold(Vector::default(), |sum, way| sum + way);
    // The chords go from the first place to the last, as the two set-backs do.
    let turn = before.cross(after);
    let set_back_m = [across.cross(after) / turn, before.cross(across) / turn];
    let count = outline.vertices().len();
    let sides = [(vertex + count - 1) % count, vertex];
    let side_m = sides.map(|side| {
        let (from, to) = outline.side(side);
        from.distance_m(to)
    });
    let fits = |index: usize| set_back_m[index].is_finite() && set_back_m[index] + LEFT_M <= side_m[index];
    if !fits(0) || !fits(1) || set_back_m.iter().any(|set_back_m| *set_back_m <= SAME_PLACE_M) {
        return None;
    }
    let mut places = vec![corner.at - before * set_back_m[0]];
    for way in ways.take(chords_m.len() - 1) {
        places.push(*places.last()? + way);
    }
    places.push(corner.at + after * set_back_m[1]);
    let along = |index: usize, share: f64| outline.along_of(sides[index], share);
    let along_m = [
        along(0, 1.0) - along(0, 1.0 - set_back_m[0] / side_m[0]),
        along(1, set_back_m[1] / side_m[1]) - along(1, 0.0),
    ];
    let between: Vec<Point> = std::iter::once(corner.at).chain(places.iter().copied()).collect();
    Some(Cut {
        places,
        turn_rad: each_rad.abs(),
        set_back_m,
        along_m,
        shorter_m: along_m[0] + along_m[1] - panel_m * chords_m.len() as f64,
        ground_m2: Outline::closed(&between).area_m2(),
    })
}

fn turned(way: Vector, angle_rad: f64) -> Vector {
    let (sin, cos) = angle_rad.sin_cos();
    Vector::new(way.east * cos - way.north * sin, way.east * sin + way.north * cos)
}
