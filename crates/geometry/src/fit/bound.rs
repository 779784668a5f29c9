//! A proven lower bound of the cost of every outline whose sides end within given ranges.
//!
//! **What is bounded.** Half the sum of squared moves, `f = sum |m_i|^2 / 2` with `p_i = s_i + m_i`, over all closed
//! lines `p` with sides `v_i = p_(i+1) - p_i` of length `l_i`, where `x_j = l_0 + ... + l_(j-1)` lies in
//! `[low_j, high_j]`, and which keep certain walls `n p_i >= b`. Square metres.
//!
//! **The bound.** Take any numbers `y_i` (one a side), any unit vectors `u_i`, any lengths `w_i > 0` and any `z >= 0` (one
//! a wall). On every allowed line `|v_i| = l_i` and the walls are kept, so
//! `f >= f + sum y_i (|v_i| - l_i) - sum z (n p - b)`. Then
//!
//! - where `y_i >= 0`: `|v_i| >= u_i v_i`, the projection on a direction;
//! - where `y_i < 0`: `|v_i| <= (|v_i|^2 / w_i + w_i) / 2`, the mean of two numbers against their root.
//!
//! What is left is a quadratic in the moves with the matrix `H = 1 - D^T K D` in each coordinate, where
//! `K = |y_i| / w_i` for the stretched sides and `D` takes the difference of neighbours. Where `H` is positive definite
//! its least value is had by one solve; where it is not, a share of all `y_i` and `z` is taken, which keeps the bound
//! true and only weakens it. What remains, `-sum y_i l_i`, is linear in the `x_j` and so least at an end of each range. QED.
//!
//! **How near.** With the multipliers and the sides of a stationary shape, and `H` positive definite, every step is an
//! equality at that shape: the bound *is* its cost, so it is the nearest of all. That is the duality of Lagrange, with
//! the one nonconvex part (a side that must grow) taken into the quadratic. Errors of the multipliers count squared.
//! Rounding is taken off at the end: 1e-13 of the terms that were summed.

use super::dense::{cholesky, forward};
use super::shape::{Lengths, Shape, sides};
use crate::Vector;

/// The bound that a shape's multipliers prove for all lines within `lengths`, square metres, at least 0.
pub(super) fn lower_m2(sketch: &[Vector], shape: &Shape, lengths: &Lengths) -> f64 {
    if let Some(bound_m2) = at_share(sketch, shape, lengths, 1.0) {
        return bound_m2.max(0.0);
    }
    // Too much pull for the quadratic: the greatest share of it that bears, then the best share below that. The bound
    // is concave in the share, since it is a least value of functions that are linear in it.
    let (mut bears, mut breaks) = (0.0, 1.0);
    for _ in 0..12 {
        let middle = f64::midpoint(bears, breaks);
        if at_share(sketch, shape, lengths, middle).is_some() { bears = middle } else { breaks = middle }
    }
    let value = |share: f64| at_share(sketch, shape, lengths, share).unwrap_or(0.0);
    let (mut from, mut to) = (0.0, bears);
    for _ in 0..10 {
        let (one, other) = (from + 0.382 * (to - from), from + 0.618 * (to - from));
        if value(one) < value(other) { from = one } else { to = other }
    }
    value(from).max(value(to)).max(value(bears)).max(0.0)
}

/// The bound with every multiplier taken at this share; `None` where `H` is not positive definite.
fn at_share(sketch: &[Vector], shape: &Shape, lengths: &Lengths, share: f64) -> Option<f64> {
    let count = sketch.len();
    let sides = sides(&shape.at);
    let next = |index: usize| (index + 1) % count;
    let pull_m = |side: usize| shape.pull_m[side] * share;
    let mut factor = vec![0.0; count * count];
    for index in 0..count {
        factor[index * count + index] = 1.0;
    }
    for (side, &(length_m, _)) in sides.iter().enumerate() {
        if pull_m(side) < 0.0 {
            let bend = -pull_m(side) / length_m;
            let (one, other) = (side, next(side));
            factor[one * count + one] -= bend;
            factor[other * count + other] -= bend;
            factor[one * count + other] += bend;
            factor[other * count + one] += bend;
        }
    }
    if !cholesky(&mut factor, count) {
        return None;
    }
    let mut slope = vec![Vector::default(); count];
    let mut sum = 0.0;
    let mut weight = 0.0;
    for (side, &(length_m, way)) in sides.iter().enumerate() {
        let pull_m = pull_m(side);
        let drawn = sketch[next(side)] - sketch[side];
        let part = if pull_m >= 0.0 {
            sum += pull_m * way.dot(drawn);
            way * pull_m
        } else {
            sum += 0.5 * pull_m * (drawn.dot(drawn) / length_m + length_m);
            drawn * (pull_m / length_m)
        };
        weight += pull_m.abs() * (drawn.length() + length_m);
        slope[side] = slope[side] - part;
        slope[next(side)] = slope[next(side)] + part;
    }
    for (wall, push_m) in shape.walls.iter().filter(|(wall, push_m)| wall.always && *push_m > 0.0) {
        let push_m = push_m * share;
        for &(corner, part) in &wall.parts {
            sum -= push_m * part.dot(sketch[corner]);
            slope[corner] = slope[corner] - part * push_m;
        }
        sum += push_m * wall.least_m;
        weight += push_m * wall.least_m.abs();
    }
    for of in [|way: &Vector| way.east, |way: &Vector| way.north] {
        let mut column: Vec<f64> = slope.iter().map(of).collect();
        forward(&factor, count, &mut column);
        sum -= 0.5 * column.iter().map(|value| value * value).sum::<f64>();
    }
    // -sum y_i (x_(i+1) - x_i), x_0 = 0: each x_j at the end of its range that makes it least.
    for end in 0..count {
        let after_m = if end + 1 < count { pull_m(end + 1) } else { 0.0 };
        let gain = after_m - pull_m(end);
        sum += gain * if gain >= 0.0 { lengths.low_m[end] } else { lengths.high_m[end] };
        weight += gain.abs() * lengths.high_m[end].abs();
    }
    Some(sum - 1e-13 * weight)
}
