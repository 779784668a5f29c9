//! A picture made smaller row by row: each pixel is the mean of a square of pixels that it covers.

use super::Picture;

pub(super) struct Shrinker {
    size_px: [u32; 2],
    /// Pixels of the file along one pixel's side.
    every: u32,
    shown_px: [u32; 2],
    /// Sums of the row in the making: red, green, blue, opacity.
    sums: Vec<[u32; 4]>,
    rows: u32,
    rgba: Vec<u8>,
}

impl Shrinker {
    pub(super) fn new(size_px: [u32; 2], most_px: u32) -> Self {
        let every = size_px[0].max(size_px[1]).div_ceil(most_px.max(1)).max(1);
        let shown_px = size_px.map(|side| side.div_ceil(every));
        let room = shown_px[0] as usize * shown_px[1] as usize * 4;
        let sums = vec![[0; 4]; shown_px[0] as usize];
        Self { size_px, every, shown_px, sums, rows: 0, rgba: Vec::with_capacity(room) }
    }

    /// Takes a row of grey, grey and opacity, colours, or colours and opacity.
    pub(super) fn row(&mut self, row: &[u8], channels: usize) {
        for (column, pixel) in row.chunks_exact(channels).enumerate() {
            let [red, green, blue, alpha] = match *pixel {
                [grey] => [grey, grey, grey, 255],
                [grey, alpha] => [grey, grey, grey, alpha],
                [red, green, blue] => [red, green, blue, 255],
                [red, green, blue, alpha, ..] => [red, green, blue, alpha],
                [] => continue,
            };
            if let Some(sum) = self.sums.get_mut(column / self.every as usize) {
                for (sum, part) in sum.iter_mut().zip([red, green, blue, alpha]) {
                    *sum += u32::from(part);
                }
            }
        }
        self.rows += 1;
        if self.rows == self.every {
            self.put();
        }
    }

    fn put(&mut self) {
        let (rows, every, wide) = (self.rows, self.every, self.size_px[0]);
        for (column, sum) in self.sums.iter_mut().enumerate() {
            // The last column may cover fewer.
            let columns = every.min(wide - (column as u32 * every).min(wide)).max(1);
            let count = columns * rows;
            self.rgba.extend(sum.map(|sum| ((sum + count / 2) / count) as u8));
            *sum = [0; 4];
        }
        self.rows = 0;
    }

    pub(super) fn finish(mut self) -> Picture {
        if self.rows > 0 {
            self.put();
        }
        let filled = [0, 1].map(|side| self.size_px[side] as f32 / (self.shown_px[side] * self.every) as f32);
        self.rgba.resize(self.shown_px[0] as usize * self.shown_px[1] as usize * 4, 0);
        Picture { size_px: self.size_px, shown_px: self.shown_px, filled, rgba: self.rgba }
    }
}
