//! Stretches of a line, and what is left without one.

use crate::{Outline, Point};

/// The pieces of a line that are left when the stretch of `length_m` from `from_m` on is taken out, as open lines.
///
/// On a closed line the stretch may run over the first vertex. Nothing is left where it is the whole line.
pub fn without_stretch(line: &Outline, from_m: f64, length_m: f64) -> Vec<Outline> {
    let line_m = line.length_m();
    if length_m <= 0.0 {
        return vec![line.clone()];
    }
    if length_m >= line_m {
        return Vec::new();
    }
    if line.is_closed() {
        return vec![stretch(line, from_m + length_m, line_m - length_m)];
    }
    let (first_m, last_m) = (from_m.clamp(0.0, line_m), (from_m + length_m).clamp(0.0, line_m));
    [(0.0, first_m), (last_m, line_m)]
        .into_iter()
        .filter(|(from_m, to_m)| to_m - from_m > crate::SAME_PLACE_M)
        .map(|(from_m, to_m)| stretch(line, from_m, to_m - from_m))
        .collect()
}

/// The stretch of `length_m` of a line from `from_m` on, as an open line; round a closed one over its first vertex.
pub fn stretch(line: &Outline, from_m: f64, length_m: f64) -> Outline {
    let start_m = line.wrap_m(from_m);
    let beyond_m = |along_m: f64| {
        let beyond_m = along_m - start_m;
        if line.is_closed() && beyond_m <= 0.0 { beyond_m + line.length_m() } else { beyond_m }
    };
    let mut between: Vec<(f64, Point)> = line
        .vertices()
        .iter()
        .map(|vertex| (beyond_m(vertex.along_m), vertex.at))
        .filter(|(beyond_m, _)| *beyond_m > 0.0 && *beyond_m < length_m)
        .collect();
    between.sort_by(|a, b| a.0.total_cmp(&b.0));
    let end = line.at(start_m + length_m);
    let points: Vec<Point> =
        std::iter::once(line.at(start_m)).chain(between.into_iter().map(|(_, at)| at)).chain([end]).collect();
    Outline::open(&points)
}
