//! The step of least cost between two-sided rows: `min g d + d W d / 2` with `low <= a d <= high` for every row.
//!
//! Solved in the multipliers, whose matrix `A W^-1 A^T` is small. Rows are taken in and let go in blocks while that
//! lessens what is wrong, then one by one in the order of their numbers (Murty 1974; Júdice and Pires 1992), so that
//! it ends. A whisper on the diagonal keeps dependent rows solvable. Whatever comes back, the bound of
//! [`super::bound`] holds for any multipliers, so an unfinished answer costs time and never truth.

use super::dense::{backward, cholesky, forward};

/// Rows by columns, with a range each.
#[derive(Default)]
pub(super) struct Rows {
    /// Coefficients, row after row.
    pub(super) coefficients: Vec<f64>,
    /// Least value of each row.
    pub(super) low: Vec<f64>,
    /// Greatest value of each row.
    pub(super) high: Vec<f64>,
}

/// A step and the multiplier of each row: positive where it pushes up from `low`, negative down from `high`.
pub(super) struct Step {
    pub(super) step: Vec<f64>,
    pub(super) multipliers: Vec<f64>,
}

/// Rounds of exchange after which the last answer is taken.
const MOST_ROUNDS: usize = 60;
/// A row that is off by less is met, metres.
const MET_M: f64 = 1e-11;

/// Solves it; `factor` is the Cholesky factor of `W`.
pub(super) fn solve(factor: &[f64], gradient: &[f64], rows: &Rows) -> Step {
    let n = gradient.len();
    let count = rows.low.len();
    let mut start: Vec<f64> = gradient.iter().map(|value| -value).collect();
    forward(factor, n, &mut start);
    let mut turned = rows.coefficients.clone();
    for row in turned.chunks_exact_mut(n) {
        forward(factor, n, row);
    }
    let row = |index: usize| &turned[index * n..(index + 1) * n];
    let dot = |one: &[f64], other: &[f64]| one.iter().zip(other).map(|(one, other)| one * other).sum::<f64>();
    let free: Vec<f64> = (0..count).map(|index| dot(row(index), &start)).collect();
    let mut gram = vec![0.0; count * count];
    for one in 0..count {
        for other in 0..=one {
            let value = dot(row(one), row(other));
            gram[one * count + other] = value;
            gram[other * count + one] = value;
        }
    }
    let multipliers = exchange(&gram, &free, rows);
    for (index, &multiplier) in multipliers.iter().enumerate() {
        if multiplier != 0.0 {
            for (value, part) in start.iter_mut().zip(row(index)) {
                *value += multiplier * part;
            }
        }
    }
    backward(factor, n, &mut start);
    Step { step: start, multipliers }
}

/// Where a row stands: within its range, or held at an end of it.
#[derive(Clone, Copy, PartialEq)]
enum Held {
    Free,
    Low,
    High,
}

fn exchange(gram: &[f64], free: &[f64], rows: &Rows) -> Vec<f64> {
    let count = free.len();
    let fixed = |index: usize| rows.high[index] - rows.low[index] < MET_M;
    let mut held: Vec<Held> = (0..count)
        .map(|index| match free[index] {
            _ if fixed(index) => Held::Low,
            value if value < rows.low[index] => Held::Low,
            value if value > rows.high[index] => Held::High,
            _ => Held::Free,
        })
        .collect();
    let mut multipliers = vec![0.0; count];
    let mut fewest_wrong = usize::MAX;
    let mut chances = 8;
    for _ in 0..MOST_ROUNDS {
        let set: Vec<usize> = (0..count).filter(|&index| held[index] != Held::Free).collect();
        let size = set.len();
        let mut matrix = vec![0.0; size * size];
        let mut right = vec![0.0; size];
        for (place, &index) in set.iter().enumerate() {
            for (other_place, &other) in set[..=place].iter().enumerate() {
                matrix[place * size + other_place] = gram[index * count + other];
            }
            matrix[place * size + place] += 1e-11 + 1e-12 * gram[index * count + index];
            let goal = if held[index] == Held::High { rows.high[index] } else { rows.low[index] };
            right[place] = goal - free[index];
        }
        if !cholesky(&mut matrix, size) {
            break;
        }
        forward(&matrix, size, &mut right);
        backward(&matrix, size, &mut right);
        multipliers.fill(0.0);
        for (&index, &value) in set.iter().zip(&right) {
            multipliers[index] = value;
        }
        let mut wrong: Vec<(usize, Held)> = Vec::new();
        for index in 0..count {
            match held[index] {
                Held::Low if !fixed(index) && multipliers[index] < 0.0 => wrong.push((index, Held::Free)),
                Held::High if multipliers[index] > 0.0 => wrong.push((index, Held::Free)),
                Held::Free => {
                    let value = free[index]
                        + set.iter().map(|&other| gram[index * count + other] * multipliers[other]).sum::<f64>();
                    if value < rows.low[index] - MET_M {
                        wrong.push((index, Held::Low));
                    } else if value > rows.high[index] + MET_M {
                        wrong.push((index, Held::High));
                    }
                }
                _ => {}
            }
        }
        if wrong.is_empty() {
            break;
        }
        if wrong.len() < fewest_wrong {
            (fewest_wrong, chances) = (wrong.len(), 8);
        } else if chances > 0 {
            chances -= 1;
        } else {
            // Only the last: the order of the numbers is what makes it end.
            wrong.drain(..wrong.len() - 1);
        }
        for (index, now) in wrong {
            held[index] = now;
        }
    }
    for (index, multiplier) in multipliers.iter_mut().enumerate() {
        match held[index] {
            Held::Low if !fixed(index) => *multiplier = multiplier.max(0.0),
            Held::High => *multiplier = multiplier.min(0.0),
            _ => {}
        }
    }
    multipliers
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_step_ends_at_the_nearest_point_between_the_rows() {
        // W = 1, from (0, 0) towards (3, 1): x + y = 2 exactly, x at most 1.2.
        let rows = Rows { coefficients: vec![1.0, 1.0, 1.0, 0.0], low: vec![2.0, -9.0], high: vec![2.0, 1.2] };
        let found = solve(&[1.0, 0.0, 0.0, 1.0], &[-3.0, -1.0], &rows);
        assert!((found.step[0] - 1.2).abs() < 1e-9 && (found.step[1] - 0.8).abs() < 1e-9, "{:?}", found.step);
        assert!(found.multipliers[1] < 0.0);
        let open = Rows { high: vec![2.0, 9.0], ..rows };
        let found = solve(&[1.0, 0.0, 0.0, 1.0], &[-3.0, -1.0], &open);
        assert!((found.step[0] - 2.0).abs() < 1e-9 && found.step[1].abs() < 1e-9, "{:?}", found.step);
    }
}
