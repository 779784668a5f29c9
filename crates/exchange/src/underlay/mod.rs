//! Pictures that lie under the map: PNG and JPEG read and made small enough to be painted, and world files.
//!
//! A picture's size is read from its head and judged before anything of it is unpacked. [`read`] then makes it smaller
//! by whole pixels, each the mean of those that it covers, and turned as its camera held it ([`Orientation`]).
//! [`world`] reads the six lines that say where it lies.

mod orientation;
mod shrink;
mod world;

use std::fmt::Write as _;
use std::io::Cursor;

use sha2::{Digest, Sha256};
use words::Words;
use words::texts::Underlay as Text;
use zune_core::bytestream::ZCursor;
use zune_core::colorspace::ColorSpace;
use zune_core::options::DecoderOptions;
use zune_jpeg::JpegDecoder;

pub use orientation::Orientation;
use shrink::Shrinker;
pub use world::{WorldError, names as world_names, sentence as world_sentence, world};

/// The longest side of a picture that is read, pixels.
pub const MOST_SIDE_PX: u32 = 16_000;
/// The most that a picture may fill unpacked, bytes: what a plain machine has to spare.
const MOST_BYTES: u64 = 1 << 30;
/// The largest file that is read, bytes.
pub const MOST_FILE_BYTES: u64 = 256 * 1024 * 1024;

/// A picture, made small enough to be painted.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Its width and height in the file, pixels.
    pub size_px: [u32; 2],
    /// Its width and height as it was made, pixels.
    pub shown_px: [u32; 2],
    /// How much of that it fills: the last column and row may reach beyond it.
    pub filled: [f32; 2],
    /// Red, green, blue and opacity of each pixel, row by row from the top.
    pub rgba: Vec<u8>,
}

/// Why a picture is not shown.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PictureError {
    /// `picture/missing`: no such file.
    #[error("picture/missing")]
    Missing,
    /// `picture/unreadable`: the file cannot be opened.
    #[error("picture/unreadable")]
    Unreadable,
    /// `picture/too-heavy`: more bytes than are read.
    #[error("picture/too-heavy")]
    TooHeavy,
    /// `picture/not-a-picture`: neither PNG nor JPEG.
    #[error("picture/not-a-picture")]
    NotAPicture,
    /// `picture/too-large`: more pixels than memory has room for.
    #[error("picture/too-large: {size_px:?}")]
    TooLarge {
        /// Width and height, pixels.
        size_px: [u32; 2],
    },
    /// `picture/damaged`: cut short, or otherwise no whole picture.
    #[error("picture/damaged: {problem}")]
    Damaged {
        /// What the decoder says.
        problem: String,
    },
}

impl PictureError {
    fn damaged(problem: impl ToString) -> Self {
        Self::Damaged { problem: problem.to_string() }
    }
}

/// The sentence for what is wrong with a picture of that name.
pub fn sentence(words: Words, file: &str, error: &PictureError) -> String {
    let whole = |number: f64| words.number(number, 0);
    match error {
        PictureError::Missing => words.say(Text::Missing, &[("file", file)]),
        PictureError::Unreadable => words.say(Text::Unreadable, &[("file", file)]),
        PictureError::NotAPicture => words.say(Text::NotAPicture, &[("file", file)]),
        PictureError::TooHeavy => {
            let most = whole(MOST_FILE_BYTES as f64 / 1024.0 / 1024.0);
            words.say(Text::TooHeavy, &[("file", file), ("most", &most)])
        }
        PictureError::TooLarge { size_px: [wide, tall] } => {
            let (wide, tall) = (whole(f64::from(*wide)), whole(f64::from(*tall)));
            let most = whole(f64::from(MOST_SIDE_PX));
            words.say(Text::TooLarge, &[("file", file), ("wide", &wide), ("tall", &tall), ("most", &most)])
        }
        PictureError::Damaged { .. } => words.say(Text::Damaged, &[("file", file)]),
    }
}

/// By what a picture is known again: SHA-256 (FIPS 180-4) of its bytes, hexadecimal.
pub fn fingerprint(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().fold(String::new(), |mut hex, byte| {
        let _ = write!(hex, "{byte:02x}");
        hex
    })
}

#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Png,
    Jpeg,
}

fn kind(bytes: &[u8]) -> Result<Kind, PictureError> {
    if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
        Ok(Kind::Png)
    } else if bytes.starts_with(b"\xff\xd8\xff") {
        Ok(Kind::Jpeg)
    } else {
        Err(PictureError::NotAPicture)
    }
}

/// Width and height of a picture as it is seen, by its head, pixels; nothing is unpacked.
///
/// # Errors
/// [`PictureError`] where it is no picture, or too large to be read.
pub fn size_px(bytes: &[u8]) -> Result<[u32; 2], PictureError> {
    head(bytes).map(|(size, orientation)| orientation.seen(size))
}

/// How a picture lies in its file, and a world file's place of it as it is seen.
///
/// # Errors
/// [`PictureError`] as of [`size_px`].
pub fn seen_world(bytes: &[u8], world: plan::World) -> Result<plan::World, PictureError> {
    head(bytes).map(|(size, orientation)| orientation.world(world, size))
}

/// Width and height in the file, and how the picture lies there.
fn head(bytes: &[u8]) -> Result<([u32; 2], Orientation), PictureError> {
    let mut orientation = Orientation::default();
    let (size_px, bytes_a_pixel) = match kind(bytes)? {
        Kind::Png => {
            let mut decoder = png::Decoder::new(Cursor::new(bytes));
            let info = decoder.read_header_info().map_err(PictureError::damaged)?;
            ([info.width, info.height], (info.bytes_per_pixel() as u64).max(4))
        }
        Kind::Jpeg => {
            let mut decoder = jpeg(bytes);
            decoder.decode_headers().map_err(|error| PictureError::damaged(format!("{error:?}")))?;
            let info = decoder.info().ok_or_else(|| PictureError::damaged("no head"))?;
            orientation = decoder.exif().map_or(orientation, |exif| Orientation::of_exif(exif));
            ([u32::from(info.width), u32::from(info.height)], 4)
        }
    };
    let [wide, tall] = size_px;
    if wide == 0 || tall == 0 {
        return Err(PictureError::damaged("no width or no height"));
    }
    let unpacked = u64::from(wide) * u64::from(tall) * bytes_a_pixel;
    if wide > MOST_SIDE_PX || tall > MOST_SIDE_PX || unpacked > MOST_BYTES {
        return Err(PictureError::TooLarge { size_px });
    }
    Ok((size_px, orientation))
}

/// Reads a picture, made no larger than `most_px` a side.
///
/// # Errors
/// [`PictureError`]: too large, judged before anything is unpacked; cut short, or otherwise no whole picture.
pub fn read(bytes: &[u8], most_px: u32) -> Result<Picture, PictureError> {
    let (size, orientation) = head(bytes)?;
    match kind(bytes)? {
        Kind::Png => read_png(bytes, size, most_px),
        Kind::Jpeg => read_jpeg(bytes, (size, orientation), most_px),
    }
}

fn jpeg(bytes: &[u8]) -> JpegDecoder<ZCursor<&[u8]>> {
    // Its own limits are lifted: what is too large is told with both sides.
    let options = DecoderOptions::default()
        .set_max_width(usize::from(u16::MAX))
        .set_max_height(usize::from(u16::MAX))
        .set_strict_mode(true)
        .jpeg_set_out_colorspace(ColorSpace::RGB);
    JpegDecoder::new_with_options(ZCursor::new(bytes), options)
}

fn read_jpeg(
    bytes: &[u8],
    (size, orientation): ([u32; 2], Orientation),
    most_px: u32,
) -> Result<Picture, PictureError> {
    // A decoder fills what is missing with grey, so the mark of the end is looked for.
    let ends = bytes.windows(2).rev().take(END_WITHIN).any(|pair| pair == [0xff, 0xd9]);
    if !ends {
        return Err(PictureError::damaged("no end of image"));
    }
    let mut decoder = jpeg(bytes);
    let rgb = decoder.decode().map_err(|error| PictureError::damaged(format!("{error:?}")))?;
    let [wide, tall] = size.map(|side| side as usize);
    let channels = rgb.len() / (wide * tall).max(1);
    if rgb.len() != wide * tall * channels || !matches!(channels, 1 | 3 | 4) {
        return Err(PictureError::damaged("colours of a kind that is not known"));
    }
    let seen = orientation.seen(size);
    let mut shrinker = Shrinker::new(seen, most_px);
    if orientation == Orientation::AsSeen {
        rgb.chunks_exact(wide * channels).for_each(|row| shrinker.row(row, channels));
        return Ok(shrinker.finish());
    }
    let mut line = Vec::with_capacity(seen[0] as usize * channels);
    for row in 0..i64::from(seen[1]) {
        line.clear();
        for column in 0..i64::from(seen[0]) {
            let [column, row] = orientation.in_file([column, row], size).map(|at| at as usize);
            let pixel = (row * wide + column) * channels;
            line.extend_from_slice(&rgb[pixel..pixel + channels]);
        }
        shrinker.row(&line, channels);
    }
    Ok(shrinker.finish())
}

/// So many bytes may follow the mark of a JPEG's end: what cameras add.
const END_WITHIN: usize = 1024;

fn read_png(bytes: &[u8], size: [u32; 2], most_px: u32) -> Result<Picture, PictureError> {
    let mut decoder = png::Decoder::new_with_limits(Cursor::new(bytes), png::Limits { bytes: MOST_BYTES as usize });
    // Eight bits a channel, palettes unfolded.
    decoder.set_transformations(png::Transformations::EXPAND | png::Transformations::STRIP_16);
    let mut reader = decoder.read_info().map_err(PictureError::damaged)?;
    let channels = reader.output_color_type().0.samples();
    let mut shrinker = Shrinker::new(size, most_px);
    if reader.info().interlaced {
        let room = reader.output_buffer_size().ok_or(PictureError::TooLarge { size_px: size })?;
        let mut all = vec![0; room];
        let frame = reader.next_frame(&mut all).map_err(PictureError::damaged)?;
        all.chunks_exact(frame.line_size).take(size[1] as usize).for_each(|row| shrinker.row(row, channels));
    } else {
        for _ in 0..size[1] {
            let row = reader.next_row().map_err(PictureError::damaged)?;
            let row = row.ok_or_else(|| PictureError::damaged("too few rows"))?;
            shrinker.row(row.data(), channels);
        }
    }
    // What comes after the last row is checked too: without it the file is cut short.
    reader.finish().map_err(PictureError::damaged)?;
    Ok(shrinker.finish())
}
