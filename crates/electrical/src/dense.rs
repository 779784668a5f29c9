//! One small dense task: `1ᵀ M⁻¹ 1` of a symmetric, positive definite matrix.

/// Sum of the elements of the inverse of the `n` by `n` matrix `entry`; `None` where it is not positive definite.
pub(crate) fn sum_of_inverse(n: usize, entry: impl Fn(usize, usize) -> f64) -> Option<f64> {
    sums_of_inverse(n, entry, |_| 0).map(|sums| sums[0][0])
}

/// The matrix that adds up the elements of the inverse of `entry` by groups: with `g` the group of each row, element
/// `(a, b)` is the sum over rows of `a` and columns of `b`. `None` where `entry` is not positive definite.
pub(crate) fn sums_of_inverse(
    n: usize,
    entry: impl Fn(usize, usize) -> f64,
    group: impl Fn(usize) -> usize,
) -> Option<[[f64; 2]; 2]> {
    // Cholesky's factors: with M = L Lᵀ and L y = 1 on one group, 0 on the other, they are the products of the two y.
    let mut factor = vec![0.0; n * n];
    let mut y = vec![[0.0; 2]; n];
    for i in 0..n {
        for j in 0..=i {
            let dot: f64 = (0..j).map(|k| factor[i * n + k] * factor[j * n + k]).sum();
            let rest = entry(i, j) - dot;
            if i == j {
                if !(rest.is_finite() && rest > 0.0) {
                    return None;
                }
                factor[i * n + i] = rest.sqrt();
            } else {
                factor[i * n + j] = rest / factor[j * n + j];
            }
        }
        y[i] = [0, 1].map(|side| {
            let dot: f64 = (0..i).map(|k| factor[i * n + k] * y[k][side]).sum();
            let own = if group(i) == side { 1.0 } else { 0.0 };
            (own - dot) / factor[i * n + i]
        });
    }
    let product = |a: usize, b: usize| y.iter().map(|y| y[a] * y[b]).sum();
    Some([[product(0, 0), product(0, 1)], [product(1, 0), product(1, 1)]])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_by_two_by_hand() {
        let m = [[4.0, 1.0], [1.0, 3.0]];
        // The inverse is [3 -1; -1 4] / 11.
        let sum = sum_of_inverse(2, |i, j| m[i][j]);
        assert!(sum.is_some_and(|sum| (sum - 5.0 / 11.0).abs() < 1e-15));
        assert_eq!(sum_of_inverse(2, |_, _| 1.0), None, "singular");
    }
}
