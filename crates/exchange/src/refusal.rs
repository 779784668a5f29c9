//! Why something cannot be read, written or done, in one sentence with file, place and mend.
//!
//! The rooms return errors; `desktop` and `cli` show sentences, and both take them from here, so that one
//! trouble is said in one way. A sentence is one line of at most [`LONGEST`] characters whatever a stranger's
//! file holds: foreign text is shortened and freed of control characters.

use plan::{EditError, ReadError};
use words::Words;
use words::texts::Errors;

use crate::geojson::{ExportError, ImportError, ImportNote, MAX_BYTES, MAX_EXTENT_KM, MAX_POSITIONS};
use crate::projection::REACH_M;

/// The longest sentence, characters.
pub const LONGEST: usize = 500;
/// The longest text of a stranger's that is quoted, characters.
const LONGEST_QUOTE: usize = 60;
/// The longest path within a file, characters; of a longer one the end is shown, where it tells most.
const LONGEST_PATH: usize = 90;
/// The longest name of a file, characters; likewise.
const LONGEST_FILE: usize = 120;

/// An error that a keeper can meet.
#[derive(Clone, Copy, Debug)]
pub enum Refusal<'a> {
    /// A plan file that is not read.
    Read(&'a ReadError),
    /// An edit that is not made.
    Edit(&'a EditError),
    /// GeoJSON that is not read.
    Import(&'a ImportError),
    /// A plan that is not written as GeoJSON.
    Export(&'a ExportError),
}

macro_rules! refusals {
    ($($variant:ident: $error:ty),*) => {$(
        impl<'a> From<&'a $error> for Refusal<'a> {
            fn from(error: &'a $error) -> Self {
                Self::$variant(error)
            }
        }
    )*};
}
refusals!(Read: ReadError, Edit: EditError, Import: ImportError, Export: ExportError);

/// The sentence for an error. `file` is what the keeper calls the file; an edit's sentence has none.
pub fn sentence<'a>(words: Words, file: &str, refusal: impl Into<Refusal<'a>>) -> String {
    let say = Say { words, file: &end(file, LONGEST_FILE) };
    let sentence = match refusal.into() {
        Refusal::Read(error) => say.read(error),
        Refusal::Edit(error) => say.edit(error),
        Refusal::Import(error) => say.import(error),
        Refusal::Export(error) => say.export(error),
    };
    start(&sentence, LONGEST)
}

/// The sentence for something noticed while reading GeoJSON.
pub fn note(words: Words, note: &ImportNote) -> String {
    let say = Say { words, file: "" };
    match note {
        ImportNote::PolygonsLeftOut { polygons: 1 } => say.text(Errors::NotePolygonLeftOut, &[]),
        ImportNote::PolygonsLeftOut { polygons } => {
            say.text(Errors::NotePolygonsLeftOut, &[("count", &say.count(*polygons))])
        }
        ImportNote::ShapesLeftOut { shapes: 1 } => say.text(Errors::NoteShapeLeftOut, &[]),
        ImportNote::ShapesLeftOut { shapes } => say.text(Errors::NoteShapesLeftOut, &[("count", &say.count(*shapes))]),
        ImportNote::RingClosed { path } => say.text(Errors::NoteRingClosed, &[("path", &end(path, LONGEST_PATH))]),
        ImportNote::OtherCoordinates { name } => {
            say.text(Errors::NoteOtherCoordinates, &[("name", &start(name, LONGEST_QUOTE))])
        }
    }
}

struct Say<'a> {
    words: Words,
    file: &'a str,
}

impl Say<'_> {
    fn text(&self, text: Errors, places: &[(&str, &str)]) -> String {
        let mut all = vec![("file", self.file)];
        all.extend_from_slice(places);
        self.words.say(text, &all)
    }

    fn at_line(&self, text: Errors, line: usize, column: usize) -> String {
        self.text(text, &[("line", &line.to_string()), ("column", &column.to_string())])
    }

    fn count(&self, count: usize) -> String {
        self.words.number(count as f64, 0)
    }

    fn size(&self, bytes: usize) -> String {
        format!("{} MiB", self.words.number(bytes as f64 / (1024.0 * 1024.0), 1))
    }

    fn read(&self, error: &ReadError) -> String {
        match error {
            ReadError::TooLarge { bytes } => {
                let most = self.size(plan::file::MAX_BYTES);
                self.text(Errors::PlanTooLarge, &[("size", &self.size(*bytes)), ("most", &most)])
            }
            ReadError::NotJson { line, column } => self.at_line(Errors::PlanNotJson, *line, *column),
            ReadError::CutShort { line } => self.at_line(Errors::PlanCutShort, *line, 0),
            ReadError::NotFinite { line, column } => self.at_line(Errors::PlanNotFinite, *line, *column),
            ReadError::NotAPlan { found } => self.not_a_plan(found),
            ReadError::Newer { version } => self.text(
                Errors::PlanNewer,
                &[("version", &start(version, LONGEST_QUOTE)), ("reads", &plan::file::VERSION.to_string())],
            ),
            ReadError::WrongType { path, problem } => self.wrong_type(&end(path, LONGEST_PATH), problem),
            ReadError::Missing { path } => self.text(Errors::PlanMissing, &[("path", &end(path, LONGEST_PATH))]),
            ReadError::DoubledId { path, id } => self.with_id(Errors::PlanDoubledId, path, id),
            ReadError::UnknownId { path, id } => self.with_id(Errors::PlanUnknownId, path, id),
        }
    }

    fn with_id(&self, text: Errors, path: &str, id: &str) -> String {
        self.text(text, &[("path", &end(path, LONGEST_PATH)), ("id", &start(id, LONGEST_QUOTE))])
    }

    fn not_a_plan(&self, found: &str) -> String {
        const GEOJSON: [&str; 4] = ["FeatureCollection", "Feature", "Polygon", "MultiPolygon"];
        let text = match found {
            "" => Errors::PlanNotAPlan,
            found if GEOJSON.contains(&found) => Errors::PlanIsGeoJson,
            _ => Errors::PlanOtherFormat,
        };
        self.text(text, &[("found", &start(found, LONGEST_QUOTE))])
    }

    /// A reader's complaint about a type, such as `invalid type: string "fifty", expected f64`, in plain words.
    fn wrong_type(&self, path: &str, problem: &str) -> String {
        let parts = problem
            .strip_prefix("invalid type: ")
            .or_else(|| problem.strip_prefix("invalid value: "))
            .or_else(|| problem.strip_prefix("invalid "))
            .or_else(|| problem.strip_prefix("found "))
            .or_else(|| problem.strip_prefix("unknown variant "))
            // A text that was found may hold these words too; what is expected stands last.
            .and_then(|problem| problem.rsplit_once(", expected "));
        match parts {
            Some((found, expected)) => self.text(
                Errors::PlanWrongType,
                &[("path", path), ("found", &self.found(found)), ("expected", &self.expected(expected))],
            ),
            None => self.text(Errors::PlanWrongOther, &[("path", path), ("problem", &start(problem, LONGEST_QUOTE))]),
        }
    }

    fn found(&self, found: &str) -> String {
        let quoted =
            |text: &str| self.text(Errors::TheText, &[("text", &start(text.trim_matches(['"', '`']), LONGEST_QUOTE))]);
        if let Some(text) = found.strip_prefix("string ") {
            return quoted(text);
        }
        if let Some(count) = found.strip_prefix("length ") {
            return self.text(Errors::AListOf, &[("count", &start(count, LONGEST_QUOTE))]);
        }
        match found {
            "null" | "unit value" => self.text(Errors::Nothing, &[]),
            "map" => self.text(Errors::AGroup, &[]),
            "sequence" => self.text(Errors::AList, &[]),
            variant if variant.starts_with('`') => quoted(variant),
            // ``integer `5` ``, ``floating point `0.5` ``, ``boolean `true` ``.
            value => start(value.split('`').nth(1).unwrap_or(value), LONGEST_QUOTE),
        }
    }

    fn expected(&self, expected: &str) -> String {
        let plain = match expected {
            "f64" => Errors::ANumber,
            "u32" | "u64" | "usize" => Errors::AWholeNumber,
            "a string" => Errors::AText,
            "a boolean" => Errors::TrueOrFalse,
            "a sequence" => Errors::AList,
            "a map" => Errors::AGroup,
            expected if expected.starts_with("struct ") => Errors::AGroup,
            expected if expected.starts_with("a tuple of size 2") => Errors::TwoNumbers,
            expected => {
                return match expected.strip_prefix("one of ") {
                    Some(choices) => {
                        self.text(Errors::OneOf, &[("choices", &start(&choices.replace('`', ""), 2 * LONGEST_QUOTE))])
                    }
                    None => start(&expected.replace('`', ""), LONGEST_QUOTE),
                };
            }
        };
        self.text(plain, &[])
    }

    fn edit(&self, error: &EditError) -> String {
        let number = |number: usize| (number + 1).to_string();
        match error {
            EditError::NoSuchRun { id } => self.text(Errors::EditNoSuchRun, &[("id", &start(id, LONGEST_QUOTE))]),
            EditError::RunExists { id } => self.text(Errors::EditRunExists, &[("id", &start(id, LONGEST_QUOTE))]),
            EditError::NoSuchKeepOut { index } => self.text(Errors::EditNoSuchKeepOut, &[("number", &number(*index))]),
            EditError::NoSuchBranch { index } => self.text(Errors::EditNoSuchBranch, &[("number", &number(*index))]),
            EditError::NoSuchWall { index } => self.text(Errors::EditNoSuchWall, &[("number", &number(*index))]),
            EditError::NoSuchDamp { index } => self.text(Errors::EditNoSuchDamp, &[("number", &number(*index))]),
            EditError::NoSuchHazard { index } => self.text(Errors::EditNoSuchHazard, &[("number", &number(*index))]),
            EditError::NoSuchShade { index } => self.text(Errors::EditNoSuchShade, &[("number", &number(*index))]),
            EditError::NoSuchCorner { corner } => self.text(Errors::EditNoSuchCorner, &[("number", &number(*corner))]),
            EditError::NoSuchPlace { index } => self.text(Errors::EditNoSuchPlace, &[("number", &number(*index))]),
            EditError::NotFinite => self.text(Errors::EditNotFinite, &[]),
        }
    }

    fn import(&self, error: &ImportError) -> String {
        let kilometres = |km: f64| format!("{} km", self.words.number(km, 0));
        match error {
            ImportError::TooLarge { bytes } => {
                let most = self.size(MAX_BYTES);
                self.text(Errors::ImportTooLarge, &[("size", &self.size(*bytes)), ("most", &most)])
            }
            ImportError::NotJson { line, column } => self.at_line(Errors::ImportNotJson, *line, *column),
            ImportError::CutShort { line } => self.at_line(Errors::ImportCutShort, *line, 0),
            ImportError::NotFinite { line, column } => self.at_line(Errors::ImportNotFinite, *line, *column),
            ImportError::NotGeoJson { found } => {
                let text = match found.as_str() {
                    "" => Errors::ImportNotGeoJson,
                    plan::file::FORMAT => Errors::ImportIsPlan,
                    _ => Errors::ImportOtherFormat,
                };
                self.text(text, &[("found", &start(found, LONGEST_QUOTE))])
            }
            ImportError::BadShape { path, problem } => {
                let text = if path.is_empty() { Errors::ImportBadFile } else { Errors::ImportBadShape };
                let problem = start(problem, 2 * LONGEST_QUOTE);
                self.text(text, &[("path", &end(path, LONGEST_PATH)), ("problem", &problem)])
            }
            ImportError::NoPolygon { .. } => self.text(Errors::ImportNoPolygon, &[]),
            ImportError::TooManyPositions { .. } => {
                self.text(Errors::ImportTooManyPositions, &[("most", &self.count(MAX_POSITIONS))])
            }
            ImportError::TooFewPositions { path, positions } => self.text(
                Errors::ImportTooFewPositions,
                &[("path", &end(path, LONGEST_PATH)), ("positions", &positions.to_string())],
            ),
            ImportError::Swapped { path, first, second } => {
                self.with_position(Errors::ImportSwapped, path, *first, *second)
            }
            ImportError::NotDegrees { path, first, second } => {
                self.with_position(Errors::ImportNotDegrees, path, *first, *second)
            }
            ImportError::TooWide { path, across_km } => self.text(
                Errors::ImportTooWide,
                &[
                    ("path", &end(path, LONGEST_PATH)),
                    ("across", &kilometres(*across_km)),
                    ("most", &kilometres(MAX_EXTENT_KM)),
                ],
            ),
        }
    }

    fn with_position(&self, text: Errors, path: &str, first: f64, second: f64) -> String {
        self.text(
            text,
            &[
                ("path", &end(path, LONGEST_PATH)),
                ("first", &start(&as_written(first), LONGEST_QUOTE)),
                ("second", &start(&as_written(second), LONGEST_QUOTE)),
            ],
        )
    }

    fn export(&self, error: &ExportError) -> String {
        match error {
            ExportError::NoOrigin => self.text(Errors::ExportNoOrigin, &[]),
            ExportError::OriginNotOnTheGlobe { latitude_deg, longitude_deg } => self.text(
                Errors::ExportOriginOff,
                &[("latitude", &as_written(*latitude_deg)), ("longitude", &as_written(*longitude_deg))],
            ),
            ExportError::TooFar { path } => {
                let most = format!("{} km", self.words.number(REACH_M / 1000.0, 0));
                self.text(Errors::ExportTooFar, &[("path", &end(path, LONGEST_PATH)), ("most", &most)])
            }
        }
    }
}

/// A number as a file has it: without a comma between thousands, which a list would confuse.
fn as_written(value: f64) -> String {
    if value.abs() < 1e9 { format!("{value}") } else { format!("{value:e}") }
}

/// The start of a text, on one line, with an ellipsis where it was cut.
fn start(text: &str, longest: usize) -> String {
    let letters: Vec<char> = one_line(text);
    if letters.len() <= longest {
        return letters.into_iter().collect();
    }
    letters[..longest - 1].iter().copied().chain(std::iter::once('…')).collect()
}

/// The end of a text, on one line, with an ellipsis where it was cut.
fn end(text: &str, longest: usize) -> String {
    let letters: Vec<char> = one_line(text);
    if letters.len() <= longest {
        return letters.into_iter().collect();
    }
    std::iter::once('…').chain(letters[letters.len() - (longest - 1)..].iter().copied()).collect()
}

fn one_line(text: &str) -> Vec<char> {
    text.chars().map(|letter| if letter.is_control() { ' ' } else { letter }).collect()
}
