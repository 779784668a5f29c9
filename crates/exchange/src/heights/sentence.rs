//! Why a file gives no heights, and what was noticed in one that does: a sentence each.

use words::Words;
use words::texts::Slope as Text;

use super::{HeightsError, MAX_BYTES, MOST_KEPT, Note, STEEPEST};

/// The sentence for an error; `file` is what the keeper calls the file.
pub fn sentence(words: Words, file: &str, error: &HeightsError) -> String {
    let say = |text: Text, places: &[(&str, &str)]| {
        let mut all = vec![("file", file)];
        all.extend_from_slice(places);
        words.say(text, &all)
    };
    let count = |count: usize| words.number(count as f64, 0);
    match error {
        HeightsError::TooLarge { bytes } => {
            let size = |bytes: usize| format!("{} MiB", words.number(bytes as f64 / (1024.0 * 1024.0), 1));
            say(Text::FileTooLarge, &[("size", &size(*bytes)), ("most", &size(MAX_BYTES))])
        }
        HeightsError::NoGrid => say(Text::NoGrid, &[]),
        HeightsError::Header { key } => say(Text::Header, &[("key", key)]),
        HeightsError::NotANumber { line, found } => {
            say(Text::NotANumber, &[("line", &line.to_string()), ("found", &plain(found))])
        }
        HeightsError::Count { found, wanted } => {
            say(Text::HeightCount, &[("found", &count(*found)), ("wanted", &count(*wanted))])
        }
        HeightsError::Tiff { problem } => say(Text::TiffUnread, &[("problem", &plain(problem))]),
        HeightsError::NoPlace => say(Text::TiffNoPlace, &[]),
        HeightsError::Turned => say(Text::TiffTurned, &[]),
        HeightsError::Projection { code: 0 } => say(Text::OtherProjection, &[]),
        HeightsError::Projection { code } => say(Text::OtherProjectionCode, &[("code", &code.to_string())]),
        HeightsError::Unit { code } => say(Text::OtherUnit, &[("code", &code.to_string())]),
        HeightsError::NoOrigin => say(Text::GridNoOrigin, &[]),
        HeightsError::Cell { cell } => say(Text::CellSize, &[("cell", &format!("{cell}"))]),
        HeightsError::WrongPlace { off_m } if off_m.is_finite() => {
            say(Text::WrongPlace, &[("off", &words.far(*off_m))])
        }
        HeightsError::WrongPlace { .. } => say(Text::WrongPlaceFar, &[]),
        HeightsError::AllHoles => say(Text::AllHoles, &[]),
        HeightsError::Steep { share } => say(
            Text::SteepGrid,
            &[("share", &words.number(share * 100.0, 0)), ("limit", &words.number(STEEPEST * 100.0, 0))],
        ),
        HeightsError::TooMany { heights } => {
            say(Text::TooManyHeights, &[("count", &count(*heights)), ("most", &count(MOST_KEPT))])
        }
    }
}

/// The sentence for something noticed.
pub fn note(words: Words, note: &Note) -> String {
    match note {
        Note::Holes { holes: 1 } => words.text(Text::NoteHole).to_owned(),
        Note::Holes { holes } => words.say(Text::NoteHoles, &[("count", &words.number(*holes as f64, 0))]),
        Note::TakenAsUtm { zone } => words.say(Text::NoteUtm, &[("zone", &zone.to_string())]),
        Note::TakenAsDegrees => words.text(Text::NoteDegrees).to_owned(),
        Note::Coarse { cell_m } => words.say(Text::NoteCoarse, &[("cell", &words.length(*cell_m))]),
    }
}

/// A stranger's text on one line, shortened.
fn plain(text: &str) -> String {
    text.chars().map(|letter| if letter.is_control() { ' ' } else { letter }).take(80).collect()
}
