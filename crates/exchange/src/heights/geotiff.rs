//! GeoTIFF, OGC 19-008r4: one band of heights, its place and its projection by geo keys.
//!
//! Worked with are rows that run east (pixel scale and one tie point), WGS 84 degrees (4326), UTM zones on WGS 84
//! (32601 to 32660, 32701 to 32760), and no projection at all.

use std::io::Cursor;

use tiff::decoder::{Decoder, DecodingResult, Limits};
use tiff::tags::Tag;

use super::{Frame, HeightsError, MOST_READ, Raster};

/// Codes of the geo keys (OGC 19-008r4, annex B).
mod key {
    pub(super) const MODEL_TYPE: u32 = 1024;
    pub(super) const RASTER_TYPE: u32 = 1025;
    pub(super) const GEODETIC_CRS: u32 = 2048;
    pub(super) const ANGULAR_UNIT: u32 = 2054;
    pub(super) const PROJECTED_CRS: u32 = 3072;
    pub(super) const LINEAR_UNIT: u32 = 3076;
    pub(super) const VERTICAL_UNIT: u32 = 4099;
}

/// Values of those keys.
const PROJECTED: u32 = 1;
const GEOGRAPHIC: u32 = 2;
const PIXEL_IS_POINT: u32 = 2;
const WGS_84: u32 = 4326;
const METRE: u32 = 9001;
const DEGREE: u32 = 9102;
/// What a key says where it stands aside from the tables.
const USER_DEFINED: u32 = 32_767;

pub(super) fn is_tiff(bytes: &[u8]) -> bool {
    [b"II*\0", b"MM\0*", b"II+\0", b"MM\0+"].iter().any(|magic| bytes.starts_with(*magic))
}

fn tiff(error: tiff::TiffError) -> HeightsError {
    HeightsError::Tiff { problem: error.to_string() }
}

pub(super) fn read(bytes: &[u8]) -> Result<Raster, HeightsError> {
    let mut limits = Limits::default();
    limits.decoding_buffer_size = MOST_READ * 8;
    let mut decoder = Decoder::new(Cursor::new(bytes)).map_err(tiff)?.with_limits(limits);
    let (columns, rows) = decoder.dimensions().map_err(tiff)?;
    let (columns, rows) = (columns as usize, rows as usize);
    let heights = columns.saturating_mul(rows);
    if heights > MOST_READ {
        return Err(HeightsError::TooMany { heights });
    }
    if columns < 2 || rows < 2 {
        return Err(HeightsError::Count { found: heights, wanted: 4 });
    }
    let keys = keys(&mut decoder)?;
    let frame = frame(&keys)?;
    let (first, step) = place(&mut decoder, &keys, rows)?;
    let no_data = match decoder.find_tag(Tag::GdalNodata).map_err(tiff)? {
        Some(value) => value.into_string().ok().and_then(|text| text.trim_matches(['\0', ' ']).parse::<f64>().ok()),
        None => None,
    };
    let from_north = values(decoder.read_image().map_err(tiff)?)?;
    if from_north.len() != heights {
        return Err(HeightsError::Count { found: from_north.len(), wanted: heights });
    }
    let known = |up_m: f64| Some(up_m).filter(|up_m| up_m.is_finite() && Some(*up_m) != no_data);
    let up_m = from_north.chunks_exact(columns).rev().flatten().map(|&up_m| known(up_m)).collect();
    Ok(Raster { frame, first, step, columns, rows, up_m })
}

fn values(image: DecodingResult) -> Result<Vec<f64>, HeightsError> {
    fn wide<T: Into<f64>>(values: Vec<T>) -> Vec<f64> {
        values.into_iter().map(Into::into).collect()
    }
    Ok(match image {
        DecodingResult::U8(values) => wide(values),
        DecodingResult::U16(values) => wide(values),
        DecodingResult::U32(values) => wide(values),
        DecodingResult::I8(values) => wide(values),
        DecodingResult::I16(values) => wide(values),
        DecodingResult::I32(values) => wide(values),
        DecodingResult::F32(values) => wide(values),
        DecodingResult::F64(values) => values,
        _ => return Err(HeightsError::Tiff { problem: "heights of 64 whole bits or 16 broken ones".to_owned() }),
    })
}

/// The geo keys that are short numbers, by code.
fn keys(decoder: &mut Decoder<Cursor<&[u8]>>) -> Result<Vec<(u32, u32)>, HeightsError> {
    let Some(directory) = decoder.find_tag(Tag::GeoKeyDirectoryTag).map_err(tiff)? else { return Ok(Vec::new()) };
    let directory = directory.into_u32_vec().map_err(tiff)?;
    // Four numbers a key: its code, where its value stands (0: here), how many, the value.
    let own = directory.chunks_exact(4).skip(1).filter(|entry| entry[1] == 0);
    Ok(own.map(|entry| (entry[0], entry[3])).collect())
}

fn value(keys: &[(u32, u32)], code: u32) -> Option<u32> {
    keys.iter().find(|(key, _)| *key == code).map(|(_, value)| *value)
}

fn frame(keys: &[(u32, u32)]) -> Result<Frame, HeightsError> {
    let unit = |code: u32, wanted: u32| match value(keys, code) {
        Some(unit) if unit != wanted => Err(HeightsError::Unit { code: unit }),
        _ => Ok(()),
    };
    unit(key::VERTICAL_UNIT, METRE)?;
    match value(keys, key::MODEL_TYPE) {
        None => Ok(Frame::Unsaid),
        Some(PROJECTED) => {
            unit(key::LINEAR_UNIT, METRE)?;
            match value(keys, key::PROJECTED_CRS).unwrap_or(0) {
                code @ 32_601..=32_660 => Ok(Frame::Utm { zone: code - 32_600, north: true }),
                code @ 32_701..=32_760 => Ok(Frame::Utm { zone: code - 32_700, north: false }),
                code => Err(HeightsError::Projection { code: if code == USER_DEFINED { 0 } else { code } }),
            }
        }
        Some(GEOGRAPHIC) => {
            unit(key::ANGULAR_UNIT, DEGREE)?;
            match value(keys, key::GEODETIC_CRS).unwrap_or(0) {
                WGS_84 => Ok(Frame::Degrees),
                code => Err(HeightsError::Projection { code: if code == USER_DEFINED { 0 } else { code } }),
            }
        }
        // Metres from the earth's middle, or a type of one's own.
        Some(_) => Err(HeightsError::Projection { code: 0 }),
    }
}

/// East and north.
type Pair = (f64, f64);

/// Place of the south-western height, and the steps east and north.
fn place(decoder: &mut Decoder<Cursor<&[u8]>>, keys: &[(u32, u32)], rows: usize) -> Result<(Pair, Pair), HeightsError> {
    let mut numbers = |tag: Tag| -> Result<Option<Vec<f64>>, HeightsError> {
        let value = decoder.find_tag(tag).map_err(tiff)?;
        value.map(|value| value.into_f64_vec().map_err(tiff)).transpose()
    };
    let (scale, tie) = (numbers(Tag::ModelPixelScaleTag)?, numbers(Tag::ModelTiepointTag)?);
    // North-western corner of the first pixel, and the steps east and south.
    let (corner, step) = if let (Some(scale), Some(tie)) = (&scale, &tie) {
        let (Some([east, north]), Some(&[column, row, _, at_east, at_north, _])) =
            (scale.get(..2).map(|two| [two[0], two[1]]), tie.get(..6).and_then(|six| six.first_chunk::<6>()))
        else {
            return Err(HeightsError::NoPlace);
        };
        ((at_east - column * east, at_north + row * north), (east, north))
    } else if let Some(matrix) = numbers(Tag::ModelTransformationTag)? {
        let Some(m) = matrix.first_chunk::<16>() else { return Err(HeightsError::NoPlace) };
        if m[1] != 0.0 || m[4] != 0.0 {
            return Err(HeightsError::Turned);
        }
        ((m[3], m[7]), (m[0], -m[5]))
    } else {
        return Err(HeightsError::NoPlace);
    };
    if !(step.0 > 0.0 && step.1 > 0.0 && corner.0.is_finite() && corner.1.is_finite()) {
        return Err(HeightsError::Turned);
    }
    let middle = if value(keys, key::RASTER_TYPE) == Some(PIXEL_IS_POINT) { 0.0 } else { 0.5 };
    let last_row = (rows - 1) as f64;
    Ok(((corner.0 + middle * step.0, corner.1 - (middle + last_row) * step.1), step))
}
