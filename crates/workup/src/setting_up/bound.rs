//! What no way of pairing the rolls can beat: half of the cheapest assignment of a partner to every roll.
//!
//! A partition into trips of one or two is an assignment in which partners choose one another and a lone roll chooses
//! itself, at twice the partition's minutes; the best assignment may also go round in odd rings and so costs no more.
//! Found by shortest augmenting paths (Kuhn 1955, Munkres 1957; the form of Jonker and Volgenant 1987, from memory) in
//! rolls^3 steps; its dual is feasible to rounding, so the sum of the dual is itself a bound.

/// Beyond so many rolls the cube is too long a wait, and the simpler bound stands alone.
pub(crate) const MOST_ASSIGNED: usize = 150;

/// Half of the least assignment; `minutes(one, other)` is a pair's trip, or a lone trip where both are the same.
pub(crate) fn half_assignment(count: usize, minutes: impl Fn(usize, usize) -> f64) -> f64 {
    let cost = |row: usize, column: usize| minutes(row, column) * if row == column { 2.0 } else { 1.0 };
    // Rows and columns from 1; column 0 holds the row that is being placed.
    let (mut row_price, mut column_price) = (vec![0.0; count + 1], vec![0.0; count + 1]);
    let mut row_of = vec![0_usize; count + 1];
    for row in 1..=count {
        row_of[0] = row;
        let mut column = 0;
        let mut least = vec![f64::INFINITY; count + 1];
        let mut came_from = vec![0_usize; count + 1];
        let mut seen = vec![false; count + 1];
        while row_of[column] != 0 {
            seen[column] = true;
            let here = row_of[column];
            let (mut step, mut next) = (f64::INFINITY, 0);
            for other in (1..=count).filter(|&other| !seen[other]) {
                let slack = cost(here - 1, other - 1) - row_price[here] - column_price[other];
                if slack < least[other] {
                    (least[other], came_from[other]) = (slack, column);
                }
                if least[other] < step {
                    (step, next) = (least[other], other);
                }
            }
            if !step.is_finite() {
                return f64::NEG_INFINITY;
            }
            for other in 0..=count {
                if seen[other] {
                    row_price[row_of[other]] += step;
                    column_price[other] -= step;
                } else {
                    least[other] -= step;
                }
            }
            column = next;
        }
        while column != 0 {
            row_of[column] = row_of[came_from[column]];
            column = came_from[column];
        }
    }
    f64::midpoint(row_price[1..].iter().sum(), column_price[1..].iter().sum())
}

#[cfg(test)]
mod tests {
    use super::half_assignment;

    #[test]
    fn small_tables_by_hand() {
        // Lone 5 each, pairs 6 but for one of 4: {0, 1} and 2 alone is 9; each with another round a ring of three is 8.
        let minutes = |one: usize, other: usize| match (one.min(other), one.max(other)) {
            (one, other) if one == other => 5.0,
            (0, 1) => 4.0,
            _ => 6.0,
        };
        assert!((half_assignment(3, minutes) - 8.0).abs() < 1e-12);
        assert!((half_assignment(2, minutes) - 4.0).abs() < 1e-12);
        assert!((half_assignment(1, minutes) - 5.0).abs() < 1e-12);
        assert!(half_assignment(0, minutes).abs() < 1e-12);
    }
}
