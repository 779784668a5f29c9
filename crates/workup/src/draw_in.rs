//! The corner to draw in where hardly any netting is spare: ground is never level, and a net that is just long enough on
//! the map is short in the field.
//!
//! It is the corner that is set last of those that bulge: drawn in it moves to the inside of the run. What stands inside,
//! right at that corner, is not looked at. Where heights are known the netting that comes free is that along the ground.
//! Metres.

use geometry::{CORNER_TURN_RAD, MEET_M, Outline, Point, Vertex};

use crate::model::Lay;
use crate::slope::Measure;
use crate::{place, point};

/// Netting that should be spare on ground that is never level, as a share of the line (common practice, no source).
pub const SPARE_SHARE: f64 = 0.01;

/// A corner drawn in so that enough netting comes free for ground that is not level.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrawIn {
    /// The corner, from 0, in the outline without repeats.
    pub corner: usize,
    /// Where it stands.
    pub at: plan::Point,
    /// Where it stands once drawn in.
    pub to: plan::Point,
    /// How far that is, metres.
    pub by_m: f64,
    /// Netting that comes free, metres.
    pub gives_m: f64,
}

/// For a run as it lies; `None` for an open line, one that is short of netting, and one with enough to spare.
pub(crate) fn of_lay(lay: &Lay, ground: Option<&Measure>) -> Option<DrawIn> {
    if !lay.closed || lay.short_m >= MEET_M {
        return None;
    }
    let places: Vec<Point> = lay.vertices.iter().map(|vertex| point(vertex.0)).collect();
    let along_m: Vec<f64> = lay.vertices.iter().map(|vertex| vertex.1).collect();
    let chain = Chain { along_m: &along_m, line_m: lay.line_m, start_m: lay.start_m, reversed: lay.reversed };
    of_chain(&Outline::closed(&places), &chain, lay.spare_m, ground)
}

/// For a ring whose chain starts so far along it and leaves so much netting spare.
pub(crate) fn of_ring(
    ring: &Outline,
    start_m: f64,
    reversed: bool,
    spare_m: f64,
    ground: Option<&Measure>,
) -> Option<DrawIn> {
    let laid = ground.and_then(|ground| ground.laid(ring));
    let laid = laid.as_ref().unwrap_or(ring);
    let along_m: Vec<f64> = laid.vertices().iter().map(|vertex| vertex.along_m).collect();
    of_chain(ring, &Chain { along_m: &along_m, line_m: laid.length_m(), start_m, reversed }, spare_m, ground)
}

/// How a chain lies on a ring, in metres of ground.
struct Chain<'a> {
    /// Of each vertex.
    along_m: &'a [f64],
    line_m: f64,
    start_m: f64,
    reversed: bool,
}

fn of_chain(ring: &Outline, chain: &Chain<'_>, spare_m: f64, ground: Option<&Measure>) -> Option<DrawIn> {
    let Chain { along_m, line_m, start_m, reversed } = *chain;
    let needed_m = SPARE_SHARE * line_m - spare_m;
    if needed_m.is_nan() || needed_m <= 0.0 {
        return None;
    }
    let vertices = ring.vertices();
    let leftward = if ring.is_counter_clockwise() { 1.0 } else { -1.0 };
    let set_at_m = |corner: usize| {
        let from_start_m = if reversed { start_m - along_m[corner] } else { along_m[corner] - start_m };
        let chain_m = from_start_m.rem_euclid(line_m);
        // A corner at the chain's start is its end, too, and was set first.
        if line_m - chain_m < MEET_M { 0.0 } else { chain_m }
    };
    let bulges = |vertex: &Vertex| vertex.signed_turn_rad * leftward >= CORNER_TURN_RAD;
    let (corner, vertex) = vertices
        .iter()
        .enumerate()
        .filter(|(_, vertex)| bulges(vertex))
        .max_by(|(one, _), (other, _)| set_at_m(*one).total_cmp(&set_at_m(*other)))?;
    let count = vertices.len();
    let neighbours = [vertices[(corner + count - 1) % count].at, vertices[(corner + 1) % count].at];
    let level_m = |at: Point| neighbours.iter().map(|&other| at.distance_m(other)).sum::<f64>();
    let length_m = |at: Point| match ground {
        None => level_m(at),
        Some(ground) => {
            let mut points: Vec<Point> = ring.points().collect();
            points[corner] = at;
            let moved = Outline::closed(&points);
            // Drawn in onto its neighbours' chord it is a corner still; onto one of them it is none.
            if moved.vertices().len() == count { ground.beside_m(&moved, corner) } else { level_m(at) }
        }
    };
    let rounds = if ground.is_some() { 30 } else { 60 };
    let (at, to) = (vertex.at, drawn(vertex.at, neighbours, needed_m, &length_m, rounds));
    Some(DrawIn { corner, at: place(at), to: place(to), by_m: at.distance_m(to), gives_m: length_m(at) - length_m(to) })
}

/// A corner drawn in along its bisector until its two sides are so much shorter, at most onto its neighbours' chord.
fn drawn(at: Point, neighbours: [Point; 2], needed_m: f64, length_m: &dyn Fn(Point) -> f64, rounds: usize) -> Point {
    let (one_m, other_m) = (at.distance_m(neighbours[0]), at.distance_m(neighbours[1]));
    // The bisector meets the chord where it divides it like the sides: there the two are shortest.
    let chord = neighbours[0].towards(neighbours[1], one_m / (one_m + other_m));
    let goal_m = length_m(at) - needed_m;
    let (mut near, mut far) = (0.0, 1.0);
    for _ in 0..rounds {
        let middle = f64::midpoint(near, far);
        if length_m(at.towards(chord, middle)) > goal_m { near = middle } else { far = middle }
    }
    at.towards(chord, far)
}
