//! The shape nearest to a sketch for given lengths or ranges of lengths: Newton steps with multipliers.
//!
//! Minimises half the sum of squared moves, `sum |p_i - s_i|^2 / 2`, with `h_j`, the length of the line from the first
//! corner to the end of side `j`, between `low_j` and `high_j`, and with every wall kept. Metres. Each step solves the
//! quadratic model of the Lagrangian between the linearised rows and is shortened until a merit falls; where the model
//! bends the wrong way (sides stretched far) its negative part is left out by halves. The end is a stationary point;
//! whether it is the nearest of all is told by [`super::bound`].

use super::dense::cholesky;
use super::qp::{self, Rows};
use crate::Vector;

/// A straight wall that one or two corners keep to: `sum c p >= least_m`.
#[derive(Debug, Clone)]
pub(super) struct Wall {
    /// Corners and their parts.
    pub(super) parts: [(usize, Vector); 2],
    /// The least value, metres.
    pub(super) least_m: f64,
    /// Whether every allowed outline keeps it, so that a bound may lean on it.
    pub(super) always: bool,
}

impl Wall {
    /// How far beyond the wall, metres; negative where it is crossed.
    pub(super) fn clear_m(&self, at: &[Vector]) -> f64 {
        self.parts.iter().map(|&(corner, part)| part.dot(at[corner])).sum::<f64>() - self.least_m
    }
}

/// A shape with its multipliers.
#[derive(Debug, Clone)]
pub(super) struct Shape {
    /// The corners.
    pub(super) at: Vec<Vector>,
    /// Pull of each side, metres: positive shortens it.
    pub(super) pull_m: Vec<f64>,
    /// The walls that were kept, with their push, metres.
    pub(super) walls: Vec<(Wall, f64)>,
    /// Whether the steps came to rest.
    pub(super) settled: bool,
}

impl Shape {
    pub(super) fn at_rest(at: Vec<Vector>) -> Shape {
        let pull_m = vec![0.0; at.len()];
        Shape { at, pull_m, walls: Vec::new(), settled: false }
    }

    /// Half the sum of squared moves, square metres.
    pub(super) fn cost_m2(&self, sketch: &[Vector]) -> f64 {
        cost_m2(sketch, &self.at)
    }
}

/// Half the sum of squared moves, square metres.
pub(super) fn cost_m2(sketch: &[Vector], at: &[Vector]) -> f64 {
    0.5 * sketch.iter().zip(at).map(|(&from, &to)| (to - from).dot(to - from)).sum::<f64>()
}

/// Ranges of the line's length from the first corner to the end of each side, metres.
pub(super) struct Lengths {
    pub(super) low_m: Vec<f64>,
    pub(super) high_m: Vec<f64>,
}

/// Steps smaller than this are rest, metres.
const REST_M: f64 = 1e-10;
/// A side shorter than this has no direction of its own, metres.
const POINT_M: f64 = 1e-9;

/// Length and direction of each side.
pub(super) fn sides(at: &[Vector]) -> Vec<(f64, Vector)> {
    (0..at.len())
        .map(|side| {
            let way = at[(side + 1) % at.len()] - at[side];
            let length_m = way.length();
            if length_m > POINT_M { (length_m, way * (1.0 / length_m)) } else { (POINT_M, Vector::new(1.0, 0.0)) }
        })
        .collect()
}

/// Moves a shape towards the nearest one in at most `rounds` steps, which are counted in `steps`; `walls` names the walls
/// that matter at a shape.
pub(super) fn settle(
    sketch: &[Vector],
    mut shape: Shape,
    lengths: &Lengths,
    walls: &mut dyn FnMut(&[Vector]) -> Vec<Wall>,
    rounds: usize,
    steps: &mut u64,
) -> Shape {
    let count = sketch.len();
    let mut price = 0.0_f64;
    shape.settled = false;
    for _ in 0..rounds {
        *steps += 1;
        let sides = sides(&shape.at);
        let named = walls(&shape.at);
        let factor = model(&sides, &shape.pull_m);
        let gradient: Vec<f64> =
            shape.at.iter().zip(sketch).flat_map(|(&at, &from)| [at.east - from.east, at.north - from.north]).collect();
        let rows = rows(&sides, lengths, &named, &shape.at);
        let found = qp::solve(&factor, &gradient, &rows);
        price = found.multipliers.iter().fold(price, |most, value| most.max(1.2 * value.abs()));
        // The pull of a side is the sum over the rows that it is part of.
        let mut sum = 0.0;
        for side in (0..count).rev() {
            sum -= found.multipliers[side];
            shape.pull_m[side] = sum;
        }
        let merit = |at: &[Vector]| cost_m2(sketch, at) + price * amiss_m(at, lengths, &named);
        let before = merit(&shape.at);
        let mut share = 1.0;
        let most_m = found.step.iter().fold(0.0_f64, |most, value| most.max(value.abs()));
        let moved = |share: f64| -> Vec<Vector> {
            shape
                .at
                .iter()
                .zip(found.step.chunks_exact(2))
                .map(|(&at, step)| at + Vector::new(step[0], step[1]) * share)
                .collect()
        };
        let mut next = moved(share);
        if most_m > 1e-5 {
            while merit(&next) > before + 1e-12 * (1.0 + before) && share > 0.02 {
                share *= 0.5;
                next = moved(share);
            }
        }
        shape.at = next;
        shape.walls = named.into_iter().zip(found.multipliers[count..].iter().copied()).collect();
        if most_m < REST_M {
            shape.settled = true;
            break;
        }
    }
    shape
}

/// By how much lengths and walls are missed, metres in all.
pub(super) fn amiss_m(at: &[Vector], lengths: &Lengths, walls: &[Wall]) -> f64 {
    let mut along_m = 0.0;
    let mut sum_m = 0.0;
    for (side, (length_m, _)) in sides(at).into_iter().enumerate() {
        along_m += length_m;
        sum_m += (lengths.low_m[side] - along_m).max(along_m - lengths.high_m[side]).max(0.0);
    }
    sum_m + walls.iter().map(|wall| (-wall.clear_m(at)).max(0.0)).sum::<f64>()
}

/// Cholesky factor of the Lagrangian's second derivative, made positive where it is not.
fn model(sides: &[(f64, Vector)], pull_m: &[f64]) -> Vec<f64> {
    let count = sides.len();
    let n = 2 * count;
    let mut kept = 1.0;
    loop {
        let mut matrix = vec![0.0; n * n];
        for index in 0..n {
            matrix[index * n + index] = 1.0;
        }
        for (side, &(length_m, way)) in sides.iter().enumerate() {
            let bend = pull_m[side] / length_m;
            let bend = if bend < 0.0 { bend * kept } else { bend };
            let across = way.left();
            let block = [
                [bend * across.east * across.east, bend * across.east * across.north],
                [bend * across.east * across.north, bend * across.north * across.north],
            ];
            let (one, other) = (2 * side, 2 * ((side + 1) % count));
            for (row, line) in block.iter().enumerate() {
                for (column, &value) in line.iter().enumerate() {
                    matrix[(one + row) * n + one + column] += value;
                    matrix[(other + row) * n + other + column] += value;
                    matrix[(one + row) * n + other + column] -= value;
                    matrix[(other + row) * n + one + column] -= value;
                }
            }
        }
        if cholesky(&mut matrix, n) {
            return matrix;
        }
        kept = if kept > 0.1 { 0.5 * kept } else { 0.0 };
    }
}

fn rows(sides: &[(f64, Vector)], lengths: &Lengths, walls: &[Wall], at: &[Vector]) -> Rows {
    let count = sides.len();
    let n = 2 * count;
    let mut rows = Rows { coefficients: vec![0.0; (count + walls.len()) * n], ..Rows::default() };
    let mut along_m = 0.0;
    let mut line = vec![0.0; n];
    for (side, &(length_m, way)) in sides.iter().enumerate() {
        let (one, other) = (2 * side, 2 * ((side + 1) % count));
        line[one] -= way.east;
        line[one + 1] -= way.north;
        line[other] += way.east;
        line[other + 1] += way.north;
        rows.coefficients[side * n..(side + 1) * n].copy_from_slice(&line);
        along_m += length_m;
        rows.low.push(lengths.low_m[side] - along_m);
        rows.high.push(lengths.high_m[side] - along_m);
    }
    for (index, wall) in walls.iter().enumerate() {
        let line = &mut rows.coefficients[(count + index) * n..(count + index + 1) * n];
        for &(corner, part) in &wall.parts {
            line[2 * corner] += part.east;
            line[2 * corner + 1] += part.north;
        }
        rows.low.push(-wall.clear_m(at));
        rows.high.push(1e9);
    }
    rows
}
