//! Whether lines shut one place off from another, without looking for a way.
//!
//! Around every side lies the ground that a way keeps off, a convex strip. Two strips that overlap leave no room between
//! them. Two places are parted by all strips together exactly where some closed walk through overlapping strips crosses the
//! straight line between the two places an odd number of times: the strips and their overlaps being convex, every closed
//! curve in their union can be drawn out into such a walk (the nerve theorem, and Jordan's on curves; textbook, from
//! memory). So it is enough to join the strips that overlap, each with whether the step to it crosses that line, and to see
//! whether some strip can be come to in both ways.

use super::GRAIN_M;
use super::side::{Side, nearest};
use crate::Point;

/// Whether there is no way from one place to the other, both of them clear of every side. A passage that is just wide
/// enough is open.
pub(super) fn off(from: Point, to: Point, sides: &[Side]) -> bool {
    let line = (from, to);
    let mut order: Vec<usize> = (0..sides.len()).collect();
    order.sort_by(|&one, &other| sides[one].low.east_m.total_cmp(&sides[other].low.east_m));
    let mut joined = Joined::of(sides.len());
    for (place, &one) in order.iter().enumerate() {
        let a = &sides[one];
        for &other in &order[place + 1..] {
            let b = &sides[other];
            if b.low.east_m > a.high.east_m {
                break;
            }
            if b.low.north_m > a.high.north_m || b.high.north_m < a.low.north_m {
                continue;
            }
            let (here, there) = nearest((a.from, a.to), (b.from, b.to));
            if here.distance_m(there) > (a.clear_m + b.clear_m - 2.0 * GRAIN_M).max(GRAIN_M) {
                continue;
            }
            // From one side's beginning along it, over, and along the other to its beginning.
            let walk = [a.from, here, there, b.from];
            let odd = walk.windows(2).filter(|pair| crosses((pair[0], pair[1]), line)).count() % 2 == 1;
            if joined.join(one, other, odd) {
                return true;
            }
        }
    }
    false
}

/// Whether a piece crosses a line; what only touches it counts on the line's left, so that a walk that touches it and goes
/// back crosses it twice or never.
fn crosses(piece: (Point, Point), line: (Point, Point)) -> bool {
    let way = line.1 - line.0;
    let (first, last) = (way.cross(piece.0 - line.0), way.cross(piece.1 - line.0));
    if (first >= 0.0) == (last >= 0.0) {
        return false;
    }
    let at = piece.0.towards(piece.1, first / (first - last));
    let along = way.dot(at - line.0);
    (0.0..way.dot(way)).contains(&along)
}

/// What is joined, each with whether the walk from its group's first is odd.
struct Joined {
    before: Vec<(usize, bool)>,
}

impl Joined {
    fn of(count: usize) -> Self {
        Self { before: (0..count).map(|one| (one, false)).collect() }
    }

    /// A group's first, and whether the walk to it is odd.
    fn first(&mut self, one: usize) -> (usize, bool) {
        let (mut at, mut odd) = (one, false);
        while self.before[at].0 != at {
            odd ^= self.before[at].1;
            at = self.before[at].0;
        }
        // Whoever was passed is put straight under the first.
        let (first, mut here, mut here_odd) = (at, one, odd);
        while self.before[here].0 != first && here != first {
            let (next, step_odd) = self.before[here];
            self.before[here] = (first, here_odd);
            (here, here_odd) = (next, here_odd ^ step_odd);
        }
        (first, odd)
    }

    /// Joins two by a step; whether that closes an odd walk.
    fn join(&mut self, one: usize, other: usize, odd: bool) -> bool {
        let ((one_first, one_odd), (other_first, other_odd)) = (self.first(one), self.first(other));
        if one_first == other_first {
            return one_odd ^ other_odd ^ odd;
        }
        self.before[other_first] = (one_first, one_odd ^ other_odd ^ odd);
        false
    }
}
