//! What fills the sheet, kept by where it lies: of ten thousand words and signs, those that look for room ask their
//! neighbours alone.

use std::ops::RangeInclusive;

use super::blocks::Block;

/// Side of a cell, pixels: about the length of a word.
const CELL_PX: f64 = 64.0;
/// Beyond what rounding can move an edge, pixels.
const HAIR_PX: f64 = 0.001;

/// The blocks of a sheet, and which of them reach into each of its cells.
pub(crate) struct Filled {
    blocks: Vec<Block>,
    columns: usize,
    rows: usize,
    /// Row by row; what lies beyond the sheet is in the cells at its edge.
    cells: Vec<Vec<usize>>,
}

impl Filled {
    /// An empty sheet of a size.
    pub(crate) fn new(size: [f64; 2]) -> Self {
        let [columns, rows] = size.map(|side| ((side / CELL_PX).ceil() as usize).clamp(1, 256));
        Self { blocks: Vec::new(), columns, rows, cells: vec![Vec::new(); columns * rows] }
    }

    pub(crate) fn push(&mut self, block: Block) {
        let index = self.blocks.len();
        for cell in self.cells_of(&block) {
            self.cells[cell].push(index);
        }
        self.blocks.push(block);
    }

    pub(crate) fn len(&self) -> usize {
        self.blocks.len()
    }

    /// Whether any of the blocks shares ground with that one.
    pub(crate) fn overlaps(&self, block: &Block) -> bool {
        self.cells_of(block).any(|cell| self.cells[cell].iter().any(|&other| self.blocks[other].overlaps(block)))
    }

    /// The blocks in the order in which they came.
    pub(crate) fn blocks(&self) -> &[Block] {
        &self.blocks
    }

    /// The cells that a block reaches into.
    fn cells_of(&self, block: &Block) -> impl Iterator<Item = usize> + use<> {
        let reach = block.reach();
        let span = |axis: usize, count: usize| -> RangeInclusive<usize> {
            let cell = |px: f64| ((px / CELL_PX).max(0.0) as usize).min(count - 1);
            cell(reach.low[axis] - HAIR_PX)..=cell(reach.high[axis] + HAIR_PX)
        };
        let (across, down, columns) = (span(0, self.columns), span(1, self.rows), self.columns);
        down.flat_map(move |row| across.clone().map(move |column| row * columns + column))
    }
}

impl Extend<Block> for Filled {
    fn extend<Blocks: IntoIterator<Item = Block>>(&mut self, blocks: Blocks) {
        blocks.into_iter().for_each(|block| self.push(block));
    }
}

#[cfg(test)]
mod tests {
    use super::{Block, Filled};

    #[test]
    fn neighbours_alone_say_what_all_would_say() {
        let size = [900.0, 640.0];
        let mut filled = Filled::new(size);
        // Scattered over the sheet, across its cells and beyond its edges, some turned, some larger than a cell.
        let scattered = |index: usize| {
            let part = |by: f64| (index as f64 * by).fract();
            let at = [1100.0 * part(0.618_034) - 100.0, 840.0 * part(0.414_214) - 100.0];
            Block::turned(
                at,
                2.0 + 150.0 * part(0.236_068).powi(4),
                2.0 + 20.0 * part(0.732_051),
                6.3 * part(0.162_278),
            )
        };
        let mut overlapped = 0;
        for index in 0..3000 {
            let block = scattered(index);
            let by_all = filled.blocks.iter().any(|other| other.overlaps(&block));
            assert_eq!(filled.overlaps(&block), by_all, "{block:?}");
            overlapped += usize::from(by_all);
            if !by_all {
                filled.push(block);
            }
        }
        assert!(overlapped > 500 && filled.len() > 500, "{overlapped} overlapped, {} did not", filled.len());
        // An edge that is shared is no ground that is shared, also where two cells meet.
        let mut filled = Filled::new(size);
        filled.push(Block::new([54.0, 32.0], 20.0, 10.0));
        assert!(!filled.overlaps(&Block::new([74.0, 32.0], 20.0, 10.0)));
        assert!(filled.overlaps(&Block::new([73.9, 32.0], 20.0, 10.0)));
    }
}
