//! Which parts of the sheet are taken, so that words find room or are left out.

use super::trace::{Px, Window, add, scaled, sub};

/// A rectangle, perhaps turned, that something fills.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Block {
    middle: Px,
    /// Half its width and the direction of it; half its height.
    across: Px,
    half_width: f64,
    half_height: f64,
}

impl Block {
    /// An upright block.
    pub(crate) fn new(middle: Px, width: f64, height: f64) -> Self {
        Self::turned(middle, width, height, 0.0)
    }

    /// The upright block between left, top, right and bottom.
    pub(crate) fn of([left, top, right, bottom]: [f64; 4]) -> Self {
        Self::new([f64::midpoint(left, right), f64::midpoint(top, bottom)], right - left, bottom - top)
    }

    /// A block turned clockwise on the sheet.
    pub(crate) fn turned(middle: Px, width: f64, height: f64, turn_rad: f64) -> Self {
        Self { middle, across: [turn_rad.cos(), turn_rad.sin()], half_width: width / 2.0, half_height: height / 2.0 }
    }

    /// The same block with a margin.
    pub(crate) fn grown(self, by: f64) -> Self {
        Self { half_width: self.half_width + by, half_height: self.half_height + by, ..self }
    }

    /// Its width and its height.
    pub(crate) fn size(&self) -> [f64; 2] {
        [2.0 * self.half_width, 2.0 * self.half_height]
    }

    pub(crate) fn middle(&self) -> Px {
        self.middle
    }

    /// Whether it is not turned, as most blocks are not: then its sides say all.
    fn is_upright(&self) -> bool {
        self.across == [1.0, 0.0]
    }

    fn down(&self) -> Px {
        [-self.across[1], self.across[0]]
    }

    pub(crate) fn corners(&self) -> [Px; 4] {
        let (w, h) = (scaled(self.across, self.half_width), scaled(self.down(), self.half_height));
        [
            sub(sub(self.middle, w), h),
            sub(add(self.middle, w), h),
            add(add(self.middle, w), h),
            add(sub(self.middle, w), h),
        ]
    }

    /// The upright window round the block.
    pub(crate) fn reach(&self) -> Window {
        let half =
            [0, 1].map(|axis| self.half_width * self.across[axis].abs() + self.half_height * self.down()[axis].abs());
        Window { low: sub(self.middle, half), high: add(self.middle, half) }
    }

    /// Whether two blocks share ground: no line parts them along a side of either.
    pub(crate) fn overlaps(&self, other: &Self) -> bool {
        if self.is_upright() && other.is_upright() {
            return (0..2).all(|axis| {
                let span = |block: &Self| {
                    let half = [block.half_width, block.half_height][axis];
                    (block.middle[axis] - half, block.middle[axis] + half)
                };
                let (a, b) = (span(self), span(other));
                a.0 < b.1 && b.0 < a.1
            });
        }
        let reach = self.half_width + self.half_height + other.half_width + other.half_height;
        let way = sub(other.middle, self.middle);
        if way[0].abs() > reach || way[1].abs() > reach {
            return false;
        }
        let (mine, theirs) = (self.corners(), other.corners());
        [self.across, self.down(), other.across, other.down()].iter().all(|axis| {
            let span = |corners: &[Px; 4]| {
                corners
                    .iter()
                    .map(|at| at[0] * axis[0] + at[1] * axis[1])
                    .fold((f64::MAX, f64::MIN), |span, at| (span.0.min(at), span.1.max(at)))
            };
            let (a, b) = (span(&mine), span(&theirs));
            a.0 < b.1 && b.0 < a.1
        })
    }

    /// Whether a place lies in the block.
    pub(crate) fn holds(&self, at: Px) -> bool {
        self.meets(at, at)
    }

    /// Whether a segment touches the block.
    pub(crate) fn meets(&self, from: Px, to: Px) -> bool {
        let local = |at: Px| {
            let way = sub(at, self.middle);
            let down = self.down();
            [way[0] * self.across[0] + way[1] * self.across[1], way[0] * down[0] + way[1] * down[1]]
        };
        let (from, to) = (local(from), local(to));
        let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
        for (axis, half) in [self.half_width, self.half_height].into_iter().enumerate() {
            let way = to[axis] - from[axis];
            if way.abs() < 1e-12 {
                if from[axis].abs() > half {
                    return false;
                }
                continue;
            }
            let (a, b) = ((-half - from[axis]) / way, (half - from[axis]) / way);
            enter = enter.max(a.min(b));
            leave = leave.min(a.max(b));
        }
        enter <= leave
    }
}

#[cfg(test)]
mod tests {
    use super::Block;

    #[test]
    fn turned_blocks_overlap_only_where_they_do() {
        let upright = Block::new([0.0, 0.0], 20.0, 10.0);
        let turned = |x: f64, y: f64| Block::turned([x, y], 20.0, 2.0, std::f64::consts::FRAC_PI_4);
        assert!(upright.overlaps(&turned(10.0, 5.0)));
        // The upright hull of that one would overlap; the block itself does not.
        assert!(!upright.overlaps(&turned(16.0, -6.0)));
        assert!(!upright.overlaps(&Block::new([20.1, 0.0], 20.0, 10.0)));
    }

    #[test]
    fn a_segment_meets_a_block_that_it_passes_through() {
        let block = Block::new([0.0, 0.0], 20.0, 10.0);
        assert!(block.meets([-50.0, 0.0], [50.0, 1.0]));
        assert!(block.meets([0.0, 0.0], [1.0, 1.0]));
        assert!(!block.meets([-50.0, 6.0], [50.0, 6.0]));
        assert!(!block.meets([11.0, -50.0], [11.0, 50.0]));
    }
}
