//! How far places reach along one axis, metres.

/// The least and the greatest of coordinates along an axis, metres.
///
/// Without any it is from infinity to minus infinity, which neither holds a place nor reaches one. What is no number is
/// passed over. Exact.
///
/// ```
/// assert_eq!(geometry::span_m([2.0, -1.0, 0.5]), (-1.0, 2.0));
/// let (low, high) = geometry::span_m([]);
/// assert!(low > high);
/// ```
pub fn span_m(along_m: impl IntoIterator<Item = f64>) -> (f64, f64) {
    along_m.into_iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), one| (low.min(one), high.max(one)))
}
