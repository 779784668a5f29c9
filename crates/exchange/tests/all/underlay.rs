//! Pictures that lie under the map: sizes judged by the head alone, means exact, what is cut short refused.

use exchange::underlay::{
    PictureError, WorldError, fingerprint, read, sentence, size_px, world, world_names, world_sentence,
};
use plan::World;
use words::Words;

/// A PNG of so many pixels, each as `of` says.
fn png(size: [u32; 2], of: impl Fn(u32, u32) -> [u8; 4]) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, size[0], size[1]);
    encoder.set_color(png::ColorType::Rgba);
    encoder.set_depth(png::BitDepth::Eight);
    let pixels: Vec<u8> =
        (0..size[1]).flat_map(|y| (0..size[0]).map(move |x| (x, y))).flat_map(|(x, y)| of(x, y)).collect();
    encoder.write_header().unwrap().write_image_data(&pixels).unwrap();
    bytes
}

/// The head of a PNG of so many pixels, and nothing else: its checksum is that of the polynomial of ISO 3309.
fn head(wide: u32, tall: u32) -> Vec<u8> {
    let mut chunk = b"IHDR".to_vec();
    chunk.extend(wide.to_be_bytes());
    chunk.extend(tall.to_be_bytes());
    chunk.extend([8, 6, 0, 0, 0]);
    let mut crc = u32::MAX;
    for &byte in &chunk {
        crc ^= u32::from(byte);
        for _ in 0..8 {
            crc = if crc & 1 == 1 { (crc >> 1) ^ 0xedb8_8320 } else { crc >> 1 };
        }
    }
    [b"\x89PNG\r\n\x1a\n".as_slice(), &13_u32.to_be_bytes(), &chunk, &(!crc).to_be_bytes()].concat()
}

/// A JPEG's head of so many pixels: start, one frame of grey, and a scan that never comes.
fn jpeg_head(wide: u16, tall: u16) -> Vec<u8> {
    let frame =
        [vec![0xff, 0xc0, 0, 11, 8], tall.to_be_bytes().to_vec(), wide.to_be_bytes().to_vec(), vec![1, 1, 0x11, 0]];
    let mut table = vec![0xff, 0xdb, 0, 67, 0];
    table.extend([1; 64]);
    let scan = vec![0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0];
    [vec![0xff, 0xd8], table, frame.concat(), scan].concat()
}

#[test]
fn forty_thousand_pixels_a_side_are_refused_by_the_head_alone() {
    let bytes = head(40_000, 40_000);
    let error = size_px(&bytes).unwrap_err();
    assert_eq!(error, PictureError::TooLarge { size_px: [40_000, 40_000] });
    assert_eq!(read(&bytes, 4096).unwrap_err(), error);
    let said = sentence(Words::default(), "air.png", &error);
    assert!(said.starts_with("air.png is 40,000 × 40,000 pixels") && said.contains("16,000"), "{said}");
    assert_eq!(size_px(&jpeg_head(40_000, 40_000)), Err(PictureError::TooLarge { size_px: [40_000, 40_000] }));
    // Sixteen bits of four channels of 16,000 x 16,000 do not fit, nor do four thousand millions of one row.
    assert_eq!(size_px(&head(u32::MAX >> 1, 1)), Err(PictureError::TooLarge { size_px: [u32::MAX >> 1, 1] }));
    assert_eq!(size_px(&head(16_000, 16_000)), Ok([16_000, 16_000]));
    assert_eq!(size_px(&jpeg_head(640, 480)), Ok([640, 480]));
}

#[test]
fn what_is_cut_short_or_no_picture_is_refused() {
    let whole = png([60, 40], |x, y| [x as u8 * 4, y as u8 * 6, (x * y) as u8, 255]);
    assert!(read(&whole, 4096).is_ok());
    for keep in [9, 20, 40, whole.len() / 2, whole.len() - 20] {
        let refused = read(&whole[..keep], 4096).err();
        assert!(matches!(refused, Some(PictureError::Damaged { .. })), "{keep}: {refused:?}");
    }
    let whole = include_bytes!("data/patch.jpg");
    let picture = read(whole, 4096).unwrap();
    assert_eq!(picture.size_px, [48, 32]);
    // It is even: red 200, green 120, blue 40, as far as JPEG keeps it.
    let even = picture
        .rgba
        .chunks(4)
        .all(|pixel| pixel.iter().zip([200, 120, 40, 255]).all(|(&is, was)| is.abs_diff(was) < 6));
    assert!(even, "{:?}", &picture.rgba[..4]);
    for keep in [20, whole.len() / 2, whole.len() - 2] {
        let refused = read(&whole[..keep], 4096).err();
        assert!(matches!(refused, Some(PictureError::Damaged { .. })), "{keep}: {refused:?}");
    }
    assert!(matches!(read(&jpeg_head(64, 64), 4096), Err(PictureError::Damaged { .. })));
    assert!(matches!(read(b"\xff\xd8\xff", 4096), Err(PictureError::Damaged { .. })));
    assert_eq!(read(b"", 4096), Err(PictureError::NotAPicture));
    assert_eq!(read(b"GIF89a", 4096), Err(PictureError::NotAPicture));
    assert!(matches!(size_px(&head(0, 5)), Err(PictureError::Damaged { .. })));
}

#[test]
fn each_pixel_is_the_mean_of_those_that_it_covers() {
    let bytes = png([5, 4], |x, y| [(x * 10) as u8, (y * 20) as u8, 0, 255]);
    let same = read(&bytes, 5).unwrap();
    assert_eq!((same.size_px, same.shown_px, same.filled), ([5, 4], [5, 4], [1.0, 1.0]));
    assert_eq!(same.rgba[(5 + 3) * 4..][..4], [30, 20, 0, 255]);
    let half = read(&bytes, 3).unwrap();
    assert_eq!((half.shown_px, half.filled), ([3, 2], [5.0 / 6.0, 1.0]));
    // Columns 2 and 3 of rows 0 and 1: (20 + 30) / 2 and (0 + 20) / 2; the last column covers one.
    assert_eq!(half.rgba[4..8], [25, 10, 0, 255]);
    assert_eq!(half.rgba[8..12], [40, 10, 0, 255]);
}

#[test]
fn a_world_file_is_six_numbers_of_which_none_makes_a_pixel_nothing() {
    let good = b"0.25\n0.0\r\n0\n-0.25\n\n 100.125 \n900.875\n";
    let read = world(good).unwrap();
    assert_eq!(read, World([0.25, 0.0, 0.0, -0.25, 100.125, 900.875]));
    // The upper left corner is half a pixel off the middle of its pixel.
    assert_eq!(read.place([0.0, 0.0]), plan::Point::new(100.0, 901.0));
    assert_eq!(world(b"0\n0\n0\n-0.25\n1\n1\n"), Err(WorldError::Zero));
    assert_eq!(world(b"0\n0\n0\n0\n1\n1"), Err(WorldError::Zero));
    assert_eq!(world(b"1\n1\n1\n1\n0\n0"), Err(WorldError::Zero));
    assert_eq!(world(b"1\n0\n0\n"), Err(WorldError::Lines { count: 3 }));
    assert_eq!(world(b"1\n0\nnorth\n-1\n0\n0"), Err(WorldError::NotANumber { line: 3 }));
    assert_eq!(world(b"1\n0\n0\ninf\n0\n0"), Err(WorldError::NotANumber { line: 4 }));
    assert_eq!(world(b"1e-6\n0\n0\n-1e-6\n9.1\n52.2"), Err(WorldError::Degrees));
    assert_eq!(world(b"\xff\xfe\x00"), Err(WorldError::Lines { count: 1 }));
    let said = world_sentence(Words::default(), "air.pgw", &WorldError::Zero);
    assert!(said.contains("air.pgw") && said.contains("two known points"), "{said}");
    assert_eq!(world_names("air.png"), ["air.pgw", "air.pngw", "air.wld"]);
    assert_eq!(world_names("Air.JPG"), ["Air.jgw", "Air.JGW", "Air.JPGw", "Air.wld"]);
}

#[test]
fn a_picture_is_known_again_by_the_published_hash() {
    // FIPS 180-4, example of one block: "abc".
    assert_eq!(fingerprint(b"abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
}
