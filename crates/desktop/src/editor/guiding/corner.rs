//! A corner in the hand: the corners beside it, and the sides of its outline that stay.

use plan::Point;

/// A corner in the hand.
#[derive(Clone, Debug, Default)]
pub(super) struct Corner {
    pub(super) beside: [Option<Point>; 2],
    /// Their numbers.
    pub(super) numbers: [Option<usize>; 2],
    pub(super) own: Vec<[Point; 2]>,
    /// Number of each own side's first corner, and of its last.
    pub(super) named: Vec<[usize; 2]>,
    pub(super) joined: [Option<usize>; 2],
}

impl Corner {
    /// Of an outline: the sides that do not move with it are its own.
    pub(super) fn of(outline: &[Point], closed: bool, corner: usize) -> Self {
        let count = outline.len();
        let before = if corner > 0 { Some(corner - 1) } else { (closed && count > 1).then(|| count - 1) };
        let after = if corner + 1 < count { Some(corner + 1) } else { (closed && count > 1).then_some(0) };
        let numbers = [before, after];
        let mut all = Self { beside: numbers.map(|at| at.map(|at| outline[at])), numbers, ..Self::default() };
        let sides = if closed && count > 2 { count } else { count.saturating_sub(1) };
        for from in 0..sides {
            let to = (from + 1) % count;
            if from == corner || to == corner {
                continue;
            }
            if Some(to) == before {
                all.joined[0] = Some(all.own.len());
            }
            if Some(from) == after {
                all.joined[1] = Some(all.own.len());
            }
            all.own.push([outline[from], outline[to]]);
            all.named.push([from, to]);
        }
        all
    }
}
