//! The best small step under linear limits: a dense primal simplex for a few unknowns.
//!
//! Maximise c x subject to A x <= b with b >= 0 and |x_i| <= reach. x = 0 is a corner to start from. Textbook tableau
//! with the steepest column, Bland's least index after a while so that it cannot go round in a ring.

/// One limit: its coefficients and what it leaves.
pub(super) type Limit = (Vec<f64>, f64);

/// Rounding below which a coefficient is none.
const GRAIN: f64 = 1e-11;

/// The x that is best.
pub(super) fn best_step(gain: &[f64], limits: &[Limit], reach: f64) -> Vec<f64> {
    let n = gain.len();
    // A limit that no step within reach can use up is none.
    let used = |limit: &&Limit| limit.0.iter().map(|value| value.abs()).sum::<f64>() * reach > limit.1;
    let limits: Vec<&Limit> = limits.iter().filter(used).collect();
    let rows = limits.len() + 2 * n;
    // Columns: the parts of x above and below 0, then what is left of each limit. The slacks' columns need not be
    // stored: each pivot swaps a row's unknown with a column's.
    let width = 2 * n + 1;
    let mut table = vec![0.0; (rows + 1) * width];
    for (row, (coefficients, left)) in limits.iter().enumerate() {
        for (column, &value) in coefficients.iter().enumerate() {
            table[row * width + column] = value;
            table[row * width + n + column] = -value;
        }
        table[row * width + 2 * n] = left.max(0.0);
    }
    for column in 0..2 * n {
        let row = limits.len() + column;
        table[row * width + column] = 1.0;
        table[row * width + 2 * n] = reach;
    }
    for (column, &value) in gain.iter().enumerate() {
        table[rows * width + column] = value;
        table[rows * width + n + column] = -value;
    }
    let mut in_row: Vec<usize> = (2 * n..2 * n + rows).collect();
    let mut in_column: Vec<usize> = (0..2 * n).collect();
    for turn in 0..40 * (n + 4) {
        let bland = turn > 20 * (n + 4);
        let worth = |column: usize| table[rows * width + column];
        let gaining = (0..2 * n).filter(|&column| worth(column) > GRAIN);
        let entering = if bland {
            gaining.min_by_key(|&column| in_column[column])
        } else {
            gaining.max_by(|&a, &b| worth(a).total_cmp(&worth(b)))
        };
        let Some(column) = entering else { break };
        let mut leaving: Option<(f64, usize)> = None;
        for row in 0..rows {
            let slope = table[row * width + column];
            if slope > GRAIN {
                let ratio = table[row * width + 2 * n] / slope;
                if leaving.is_none_or(|(least, at)| ratio < least || (ratio <= least && in_row[row] < in_row[at])) {
                    leaving = Some((ratio, row));
                }
            }
        }
        let Some((_, row)) = leaving else { break };
        pivot(&mut table, width, rows, row, column);
        std::mem::swap(&mut in_row[row], &mut in_column[column]);
    }
    let mut x = vec![0.0; n];
    for (row, &unknown) in in_row.iter().enumerate() {
        if unknown < 2 * n {
            let value = table[row * width + 2 * n];
            x[unknown % n] += if unknown < n { value } else { -value };
        }
    }
    x
}

fn pivot(table: &mut [f64], width: usize, rows: usize, row: usize, column: usize) {
    let by = 1.0 / table[row * width + column];
    let kept: Vec<f64> = table[row * width..(row + 1) * width].iter().map(|value| value * by).collect();
    for other in (0..=rows).filter(|&other| other != row) {
        let share = table[other * width + column];
        if share != 0.0 {
            for (value, kept) in table[other * width..(other + 1) * width].iter_mut().zip(&kept) {
                *value -= share * kept;
            }
            table[other * width + column] = -share * by;
        }
    }
    table[row * width..(row + 1) * width].copy_from_slice(&kept);
    table[row * width + column] = by;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_step_goes_to_the_corner_that_gains_most() {
        // x + y <= 1, x - y <= 0.5: the corner (0.75, 0.25) for 2x + y.
        let limits = [(vec![1.0, 1.0], 1.0), (vec![1.0, -1.0], 0.5)];
        let x = best_step(&[2.0, 1.0], &limits, 10.0);
        assert!((x[0] - 0.75).abs() < 1e-12 && (x[1] - 0.25).abs() < 1e-12, "{x:?}");
        // The reach alone, and downhill.
        let x = best_step(&[-1.0, 0.5], &[], 0.1);
        assert!((x[0] + 0.1).abs() < 1e-12 && (x[1] - 0.1).abs() < 1e-12, "{x:?}");
        // Nothing left in any way that gains.
        let x = best_step(&[1.0, 0.0], &[(vec![1.0, 0.0], 0.0)], 1.0);
        assert!(x[0].abs() < 1e-12, "{x:?}");
    }
}
