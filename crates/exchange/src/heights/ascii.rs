//! The Esri ASCII grid: a header of six lines, then the heights row after row from the north.

use super::{Frame, HeightsError, MOST_READ, Raster};

/// What stands for a hole where the header does not say.
const NO_DATA: f64 = -9999.0;

pub(super) fn is_ascii(bytes: &[u8]) -> bool {
    let start = bytes.iter().position(|byte| !byte.is_ascii_whitespace()).unwrap_or(0);
    bytes[start..].get(..5).is_some_and(|word| word.eq_ignore_ascii_case(b"ncols"))
}

/// The figures of the header, each where it was met.
#[derive(Default)]
struct Header {
    columns: Option<f64>,
    rows: Option<f64>,
    east: Option<f64>,
    north: Option<f64>,
    centred: (bool, bool),
    cell: (Option<f64>, Option<f64>),
    no_data: Option<f64>,
}

pub(super) fn read(bytes: &[u8]) -> Result<Raster, HeightsError> {
    let text = String::from_utf8_lossy(bytes);
    let mut words = text
        .lines()
        .enumerate()
        .flat_map(|(line, text)| text.split_whitespace().map(move |word| (line + 1, word)))
        .peekable();
    let mut header = Header::default();
    while let Some(&(line, word)) = words.peek() {
        if !word.starts_with(|letter: char| letter.is_ascii_alphabetic()) || word.eq_ignore_ascii_case("nan") {
            break;
        }
        words.next();
        let (_, value) = words.next().ok_or(HeightsError::Header { key: "ncols" })?;
        let value = figure(line, value)?;
        match word.to_ascii_lowercase().as_str() {
            "ncols" => header.columns = Some(value),
            "nrows" => header.rows = Some(value),
            "xllcorner" => header.east = Some(value),
            "yllcorner" => header.north = Some(value),
            "xllcenter" => (header.east, header.centred.0) = (Some(value), true),
            "yllcenter" => (header.north, header.centred.1) = (Some(value), true),
            "cellsize" => header.cell = (Some(value), Some(value)),
            "dx" => header.cell.0 = Some(value),
            "dy" => header.cell.1 = Some(value),
            "nodata_value" => header.no_data = Some(value),
            _ => return Err(HeightsError::NotANumber { line, found: word.to_owned() }),
        }
    }
    let count = |value: Option<f64>, key| match value {
        Some(value) if value >= 2.0 && value.fract() == 0.0 && value <= MOST_READ as f64 => Ok(value as usize),
        _ => Err(HeightsError::Header { key }),
    };
    let (columns, rows) = (count(header.columns, "ncols")?, count(header.rows, "nrows")?);
    let size = |value: Option<f64>| value.filter(|value| *value > 0.0).ok_or(HeightsError::Header { key: "cellsize" });
    let step = (size(header.cell.0)?, size(header.cell.1)?);
    let first = |value: Option<f64>, centred: bool, step: f64, key| {
        let corner = value.ok_or(HeightsError::Header { key })?;
        Ok(if centred { corner } else { corner + step / 2.0 })
    };
    let first = (
        first(header.east, header.centred.0, step.0, "xllcorner")?,
        first(header.north, header.centred.1, step.1, "yllcorner")?,
    );
    let wanted = columns.saturating_mul(rows);
    if wanted > MOST_READ {
        return Err(HeightsError::TooMany { heights: wanted });
    }
    let no_data = header.no_data.unwrap_or(NO_DATA);
    let mut from_north = Vec::with_capacity(wanted.min(bytes.len()));
    for (line, word) in words {
        let hole = word.eq_ignore_ascii_case("nan");
        let up_m = if hole { None } else { Some(figure(line, word)?) };
        from_north.push(up_m.filter(|up_m| *up_m != no_data));
    }
    if from_north.len() != wanted {
        return Err(HeightsError::Count { found: from_north.len(), wanted });
    }
    let up_m = from_north.chunks_exact(columns).rev().flatten().copied().collect();
    Ok(Raster { frame: Frame::Unsaid, first, step, columns, rows, up_m })
}

fn figure(line: usize, word: &str) -> Result<f64, HeightsError> {
    // Some programs write a decimal comma.
    let plain = word.replace(',', ".");
    match plain.parse::<f64>() {
        Ok(value) if value.is_finite() => Ok(value),
        _ => Err(HeightsError::NotANumber { line, found: word.chars().take(40).collect() }),
    }
}
