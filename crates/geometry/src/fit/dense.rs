//! Small dense symmetric systems by Cholesky, row by row in one vector; the lower triangle counts.

/// Factors `a` (`n` by `n`) in place into its lower triangle; `false` where it is not positive definite.
pub(super) fn cholesky(a: &mut [f64], n: usize) -> bool {
    for row in 0..n {
        for column in 0..=row {
            let (above, below) = a.split_at(row * n);
            let left = &below[..column];
            let other = if column < row { &above[column * n..column * n + column] } else { left };
            let sum = below[column] - left.iter().zip(other).map(|(one, other)| one * other).sum::<f64>();
            if column < row {
                let pivot = a[column * n + column];
                a[row * n + column] = sum / pivot;
            } else if sum > 1e-12 {
                a[row * n + row] = sum.sqrt();
            } else {
                return false;
            }
        }
    }
    true
}

/// Solves `L z = b` in place.
pub(super) fn forward(l: &[f64], n: usize, b: &mut [f64]) {
    for row in 0..n {
        let (done, rest) = b.split_at_mut(row);
        let sum: f64 = l[row * n..row * n + row].iter().zip(done.iter()).map(|(one, other)| one * other).sum();
        rest[0] = (rest[0] - sum) / l[row * n + row];
    }
}

/// Solves `L^T z = b` in place.
pub(super) fn backward(l: &[f64], n: usize, b: &mut [f64]) {
    for row in (0..n).rev() {
        b[row] /= l[row * n + row];
        let value = b[row];
        for column in 0..row {
            b[column] -= l[row * n + column] * value;
        }
    }
}
