//! Pictures as a camera held it: all eight orientations of Exif, from bytes that are made here.

use exchange::underlay::{read, seen_world, size_px};
use plan::World;

/// Pixels along a block of a JPEG.
const BLOCK: usize = 8;
/// Two blocks wide and three tall, each of one grey, row by row.
const GREYS: [[u8; 2]; 3] = [[20, 60], [100, 140], [180, 220]];

/// Bits from the highest on, with a nought after each byte of ones, as ITU-T T.81 B.1.1.5 asks for.
struct Bits(Vec<u8>, u32, u32);

impl Bits {
    fn put(&mut self, bits: u32, count: u32) {
        for place in (0..count).rev() {
            self.1 = (self.1 << 1) | ((bits >> place) & 1);
            self.2 += 1;
            if self.2 == 8 {
                self.0.push(self.1 as u8);
                if self.1 == 0xff {
                    self.0.push(0);
                }
                (self.1, self.2) = (0, 0);
            }
        }
    }
}

/// The Exif segment of a picture that lies so in its file.
fn exif(orientation: u16, little: bool, kind: u16) -> Vec<u8> {
    let short = |number: u16| if little { number.to_le_bytes() } else { number.to_be_bytes() };
    let long = |number: u32| if little { number.to_le_bytes() } else { number.to_be_bytes() };
    let mut tiff = if little { b"II*\0".to_vec() } else { b"MM\0*".to_vec() };
    tiff.extend(long(8));
    tiff.extend(short(2));
    // Another entry before it: the width.
    for (tag, kind, value) in [(256, 3, 16), (274, kind, orientation)] {
        tiff.extend([short(tag), short(kind)].concat());
        tiff.extend(long(1));
        tiff.extend(short(value));
        tiff.extend([0, 0]);
    }
    tiff.extend(long(0));
    let body = [b"Exif\0\0".as_slice(), &tiff].concat();
    [&[0xff, 0xe1][..], &((body.len() + 2) as u16).to_be_bytes(), &body].concat()
}

/// A grey baseline JPEG of [`GREYS`] after a segment.
fn jpeg(segment: &[u8]) -> Vec<u8> {
    let mut bytes = vec![0xff, 0xd8];
    bytes.extend(segment);
    bytes.extend([0xff, 0xdb, 0, 67, 0]);
    // A step of the mean is one grey.
    bytes.extend([8; 64]);
    bytes.extend([0xff, 0xc0, 0, 11, 8, 0, 24, 0, 16, 1, 1, 0x11, 0]);
    // Means: twelve codes of four bits for so many further bits; all else: one code, which ends a block.
    bytes.extend([0xff, 0xc4, 0, 31, 0x00, 0, 0, 0, 12, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
    bytes.extend(0..12);
    bytes.extend([0xff, 0xc4, 0, 20, 0x10, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
    bytes.extend([0xff, 0xda, 0, 8, 1, 1, 0x00, 0, 63, 0]);
    let (mut bits, mut before) = (Bits(Vec::new(), 0, 0), 0);
    for grey in GREYS.as_flattened() {
        let mean = i32::from(*grey) - 128;
        let step = mean - before;
        before = mean;
        let count = 32 - step.unsigned_abs().leading_zeros();
        bits.put(count, 4);
        let coded = if step < 0 { step + (1 << count) - 1 } else { step };
        bits.put(coded as u32, count);
        bits.put(0, 1);
    }
    while bits.2 != 0 {
        bits.put(1, 1);
    }
    bytes.extend(bits.0);
    bytes.extend([0xff, 0xd9]);
    bytes
}

/// The greys of a picture, block by block.
fn greys(bytes: &[u8]) -> Vec<Vec<u8>> {
    let picture = read(bytes, 4096).unwrap();
    assert_eq!((picture.size_px, picture.shown_px), (size_px(bytes).unwrap(), picture.size_px));
    let [wide, tall] = picture.size_px.map(|side| side as usize);
    let grey = |column: usize, row: usize| picture.rgba[(row * wide + column) * 4];
    (0..tall / BLOCK)
        .map(|row| (0..wide / BLOCK).map(|column| grey(column * BLOCK + 3, row * BLOCK + 3)).collect())
        .collect()
}

/// What is seen for each value of the tag, by its meaning in the standard: where the first row and column are.
fn seen(orientation: u16) -> Vec<Vec<u8>> {
    let [[a, b], [c, d], [e, f]] = GREYS;
    match orientation {
        2 => vec![vec![b, a], vec![d, c], vec![f, e]],
        3 => vec![vec![f, e], vec![d, c], vec![b, a]],
        4 => vec![vec![e, f], vec![c, d], vec![a, b]],
        // First row at the left, first column at the top, and so on.
        5 => vec![vec![a, c, e], vec![b, d, f]],
        6 => vec![vec![e, c, a], vec![f, d, b]],
        7 => vec![vec![f, d, b], vec![e, c, a]],
        8 => vec![vec![b, d, f], vec![a, c, e]],
        _ => vec![vec![a, b], vec![c, d], vec![e, f]],
    }
}

#[test]
fn all_eight_orientations_are_seen_the_right_way_up() {
    for orientation in 1..=8 {
        for little in [true, false] {
            let bytes = jpeg(&exif(orientation, little, 3));
            assert_eq!(greys(&bytes), seen(orientation), "orientation {orientation}");
        }
    }
    assert_eq!(size_px(&jpeg(&exif(6, true, 3))), Ok([24, 16]), "told as it is seen");
}

#[test]
fn without_an_orientation_or_with_nonsense_there_it_is_seen_as_it_lies() {
    let plain = seen(1);
    for segment in [Vec::new(), exif(0, true, 3), exif(9, false, 3), exif(6, true, 4)] {
        assert_eq!(greys(&jpeg(&segment)), plain);
    }
    // Cut short anywhere, or led out of itself.
    let whole = exif(6, true, 3);
    for end in 10..whole.len() {
        let mut cut = whole[..end].to_vec();
        let length = (cut.len() - 2) as u16;
        cut[2..4].copy_from_slice(&length.to_be_bytes());
        let found = greys(&jpeg(&cut));
        assert!(found == plain || found == seen(6), "{end}");
    }
    let mut far = exif(6, true, 3);
    far[14..18].copy_from_slice(&u32::MAX.to_le_bytes());
    assert_eq!(greys(&jpeg(&far)), plain);
}

#[test]
fn a_world_file_of_a_turned_picture_lays_each_pixel_where_it_laid_it() {
    // Half a metre a pixel, north up, the file's first pixel at 100, 200.
    let stated = World([0.5, 0.0, 0.0, -0.5, 100.0, 200.0]);
    for orientation in 1..=8 {
        let bytes = jpeg(&exif(orientation, true, 3));
        let world = seen_world(&bytes, stated).unwrap();
        let seen = seen(orientation);
        for (row, greys) in seen.iter().enumerate() {
            for (column, grey) in greys.iter().enumerate() {
                let middle = |block: usize| (block * BLOCK) as f64 + 4.0;
                let at = world.place([middle(column), middle(row)]);
                let place = GREYS.as_flattened().iter().position(|one| one == grey).unwrap();
                let want = stated.place([middle(place % 2), middle(place / 2)]);
                assert!(
                    (at.east_m - want.east_m).hypot(at.north_m - want.north_m) < 1e-9,
                    "orientation {orientation}: {at:?} and {want:?}"
                );
            }
        }
    }
    assert_eq!(seen_world(&jpeg(&[]), stated), Ok(stated));
}
