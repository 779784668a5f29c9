//! Every refusal is one sentence on one line, short, whole and with its place.

use exchange::geojson::{ExportError, ImportError, ImportNote};
use exchange::refusal::{LONGEST, note, sentence};
use plan::{EditError, ReadError};
use words::Words;

const FILE: &str = "kettle-field.netfold.json";

fn plan_refused(text: &str) -> String {
    sentence(Words::default(), FILE, &plan::read(text.as_bytes()).unwrap_err())
}

fn net_refused(net: &str) -> String {
    plan_refused(&format!(r#"{{"format":"netfold-plan","version":1,"store":{{"nets":[{net}]}}}}"#))
}

#[test]
fn what_stands_in_a_file_is_said_in_plain_words() {
    for (got, want) in [
        (
            net_refused(r#"{"id":"a","length_m":"fifty","panels":14}"#),
            "kettle-field.netfold.json: store.nets[0].length_m is the text “fifty” where a number belongs: \
             correct it there.",
        ),
        (
            net_refused(r#"{"id":"a","length_m":50,"panels":-2}"#),
            "kettle-field.netfold.json: store.nets[0].panels is -2 where a whole number, zero or above, belongs: \
             correct it there.",
        ),
        (
            net_refused(r#"{"id":"a","length_m":50}"#),
            "kettle-field.netfold.json: store.nets[0].panels is missing: add it.",
        ),
        (
            plan_refused(r#"{"format":"netfold-plan","version":1,"runs":[{"id":"a","outline":[[0,0],[1]]}]}"#),
            "kettle-field.netfold.json: runs[0].outline[1] is a list of 1 where a pair of numbers belongs: correct it \
             there.",
        ),
        (
            plan_refused(r#"{"format":"netfold-plan","version":1,"runs":[{"id":"a","outline":[],"status":"gone"}]}"#),
            "kettle-field.netfold.json: runs[0].status is the text “gone” where one of option, standing, past belongs: \
             correct it there.",
        ),
        (
            plan_refused(r#"{"format":"netfold-plan","version":1,"ground":{"soil":{"by_foot":"hardly"}}}"#),
            "kettle-field.netfold.json: ground.soil.by_foot is the text “hardly” where one of pushes_in, firm, \
             needs_bar, refuses belongs: correct it there.",
        ),
        (
            plan_refused(
                r#"{"format":"netfold-plan","version":1,"ground":{"soil":{"class":{"table":"mine","name":"firm"}}}}"#,
            ),
            "kettle-field.netfold.json: ground.soil.class.table is the text “mine” where one of tm_5_818_1, bs_8004, \
             em_1110_2_2504 belongs: correct it there.",
        ),
        (
            plan_refused(r#"{"format":"netfold-plan","version":1,"runs":{}}"#),
            "kettle-field.netfold.json: runs is a group of keys in braces where a list belongs: correct it there.",
        ),
        (
            plan_refused(r#"{"format":"netfold-plan","version":2}"#),
            "kettle-field.netfold.json was written by a newer version of this program (format version 2, this one \
             reads 1): bring this program up to date; the file was left as it is.",
        ),
        (
            plan_refused(r#"{"type":"FeatureCollection","features":[]}"#),
            "kettle-field.netfold.json is GeoJSON (FeatureCollection) and not a plan: bring it in with import.",
        ),
        (
            sentence(
                Words::default(),
                "field.geojson",
                &ImportError::Swapped { path: "coordinates[0][3]".to_owned(), first: 52.5, second: -103.25 },
            ),
            "field.geojson: the position coordinates[0][3] is [52.5, -103.25], which has its latitude first: GeoJSON \
             wants longitude, then latitude, so swap them.",
        ),
    ] {
        assert_eq!(got, want);
    }
}

#[test]
fn whatever_a_stranger_writes_a_sentence_stays_one_short_line() {
    let foreign = "x\n\u{7}“{file}”[0].".repeat(4000);
    let text = || foreign.clone();
    let read = [
        ReadError::TooLarge { bytes: usize::MAX },
        ReadError::NotJson { line: usize::MAX, column: usize::MAX },
        ReadError::CutShort { line: usize::MAX },
        ReadError::NotAPlan { found: text() },
        ReadError::NotAPlan { found: String::new() },
        ReadError::Newer { version: text() },
        ReadError::WrongType { path: text(), problem: text() },
        ReadError::WrongType { path: text(), problem: format!("invalid type: string {foreign}, expected {foreign}") },
        ReadError::WrongType { path: text(), problem: format!("unknown variant `{foreign}`, expected one of `a`") },
        ReadError::WrongType { path: text(), problem: format!("invalid value: {foreign}, expected one of {foreign}") },
        ReadError::Missing { path: text() },
        ReadError::NotFinite { line: 1, column: 1 },
        ReadError::DoubledId { path: text(), id: text() },
        ReadError::UnknownId { path: text(), id: text() },
    ];
    let import = [
        ImportError::TooLarge { bytes: usize::MAX },
        ImportError::NotJson { line: 1, column: 1 },
        ImportError::CutShort { line: 1 },
        ImportError::NotFinite { line: 1, column: 1 },
        ImportError::NotGeoJson { found: text() },
        ImportError::NotGeoJson { found: String::new() },
        ImportError::BadShape { path: text(), problem: text() },
        ImportError::BadShape { path: String::new(), problem: text() },
        ImportError::NoPolygon { shapes: 3 },
        ImportError::TooManyPositions { positions: 1 },
        ImportError::TooFewPositions { path: text(), positions: 2 },
        ImportError::Swapped { path: text(), first: f64::MIN, second: f64::MIN_POSITIVE },
        ImportError::NotDegrees { path: text(), first: f64::MAX, second: -f64::MIN_POSITIVE },
        ImportError::TooWide { path: text(), across_km: 40_000.0 },
    ];
    let export = [
        ExportError::NoOrigin,
        ExportError::OriginNotOnTheGlobe { latitude_deg: f64::MAX, longitude_deg: f64::NAN },
        ExportError::TooFar { path: text() },
    ];
    let words = Words::default();
    let with_file: Vec<String> = (read.iter().map(|error| sentence(words, &foreign, error)))
        .chain(import.iter().map(|error| sentence(words, &foreign, error)))
        .chain(export.iter().map(|error| sentence(words, &foreign, error)))
        .collect();
    let edits = [
        EditError::NoSuchRun { id: text() },
        EditError::RunExists { id: text() },
        EditError::NoSuchKeepOut { index: 3 },
        EditError::NoSuchBranch { index: 3 },
        EditError::NoSuchWall { index: 3 },
        EditError::NoSuchShade { index: 3 },
        EditError::NoSuchDamp { index: 3 },
        EditError::NoSuchHazard { index: 3 },
        EditError::NoSuchCorner { corner: 3 },
        EditError::NoSuchPlace { index: 3 },
        EditError::NotFinite,
    ];
    let notes = [
        ImportNote::PolygonsLeftOut { polygons: 1 },
        ImportNote::PolygonsLeftOut { polygons: 2 },
        ImportNote::ShapesLeftOut { shapes: 1 },
        ImportNote::ShapesLeftOut { shapes: 2 },
        ImportNote::RingClosed { path: text() },
        ImportNote::OtherCoordinates { name: text() },
    ];
    let without_file = (edits.iter().map(|error| sentence(words, "", error)))
        .chain(notes.iter().map(|said| note(words, said)))
        .collect::<Vec<_>>();
    for said in with_file.iter().chain(&without_file) {
        assert!(said.chars().count() <= LONGEST, "{said}");
        assert!(!said.chars().any(char::is_control), "{said}");
        assert!(said.ends_with('.'), "{said}");
        for place in ["{path}", "{found}", "{line}", "{most}", "{id}", "{number}", "{problem}", "{count}", "{first}"] {
            assert!(!said.contains(place), "{said}");
        }
    }
    assert!(with_file.iter().all(|said| said.starts_with('…')), "the end of a long file name is kept");
}
