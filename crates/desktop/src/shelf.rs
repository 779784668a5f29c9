//! The disk as the window sees it: plans opened and saved, folders looked into, each refusal as a sentence.

#![allow(clippy::disallowed_methods, reason = "only cli and desktop touch files")]

use std::io::{ErrorKind, Read};
use std::path::{Path, PathBuf};

use plan::Plan;
use safekeeping::{Disk, SaveError};
use words::Words;
use words::texts::{Errors, Files};

/// How a table of runs and shapes ends.
pub(crate) const TABLE_ENDING: &str = ".csv";
/// Ending of a page to print.
pub(crate) const SHEET_ENDING: &str = ".pdf";
/// How a plan's file ends.
pub(crate) const PLAN_ENDING: &str = ".netfold.json";
/// How a boundary's file ends.
pub(crate) const BOUNDARY_ENDINGS: [&str; 2] = [".geojson", ".json"];

/// How a file of heights ends.
pub(crate) const HEIGHTS_ENDINGS: [&str; 5] = [".asc", ".txt", ".tif", ".tiff", ".grd"];

/// Reads heights for the ground of a plan.
pub(crate) fn heights(path: &Path, plan: &Plan, words: Words) -> Result<exchange::heights::Import, String> {
    let bytes = bytes(path, words)?;
    exchange::heights::read(&bytes, plan).map_err(|error| exchange::heights::sentence(words, &shown(path), &error))
}

/// Reads a plan.
pub(crate) fn open(path: &Path, words: Words) -> Result<Plan, String> {
    let bytes = bytes(path, words)?;
    match plan::read(&bytes) {
        Ok(opened) => Ok(opened.plan),
        Err(error) => Err(exchange::refusal::sentence(words, &shown(path), &error)),
    }
}

/// Reads a boundary from GeoJSON, or the ground of another plan.
pub(crate) fn bring_in(path: &Path, words: Words) -> Result<Plan, String> {
    let bytes = bytes(path, words)?;
    let brought = match plan::read(&bytes) {
        Ok(opened) => opened.plan,
        Err(_) => match exchange::geojson::read(&bytes) {
            Ok(import) => import.plan,
            Err(error) => return Err(exchange::refusal::sentence(words, &shown(path), &error)),
        },
    };
    if brought.ground.boundary.is_empty() {
        return Err(words.say(Files::NoBoundary, &[("file", &shown(path))]));
    }
    Ok(brought)
}

/// Writes a plan whole or not at all; the file that was there is kept beside it as a backup.
pub(crate) fn save(path: &Path, plan: &Plan, words: Words) -> Result<(), String> {
    let bytes = plan::write(plan);
    // What could not be read again is no save.
    if let Err(error) = plan::read(&bytes) {
        let reason = exchange::refusal::sentence(words, &shown(path), &error);
        return Err(words.say(Files::SaveFailed, &[("reason", &reason)]));
    }
    safekeeping::save(&Disk, path, &bytes)
        .map_err(|error| words.say(Files::SaveFailed, &[("reason", &refused(&error, words))]))
}

/// Writes a file that can be made again, whole or not at all.
pub(crate) fn write(path: &Path, bytes: &[u8], words: Words) -> Result<(), String> {
    safekeeping::replace(&Disk, path, bytes).map_err(|error| refused(&error, words))
}

fn refused(error: &SaveError, words: Words) -> String {
    let text = match error {
        SaveError::NoFolder { .. } => Errors::FolderMissing,
        SaveError::Forbidden { .. } => Errors::FileForbidden,
        SaveError::IsFolder { .. } => Errors::FileIsFolder,
        SaveError::DiskFull { .. } => Errors::DiskFull,
        SaveError::NotAFile { .. } | SaveError::Unwritable { .. } => Errors::FileUnwritable,
    };
    words.say(text, &[("file", &shown(error.path()))])
}

fn bytes(path: &Path, words: Words) -> Result<Vec<u8>, String> {
    let refused = |kind: ErrorKind| {
        let text = match kind {
            ErrorKind::NotFound => Errors::FileMissing,
            ErrorKind::PermissionDenied => Errors::FileForbidden,
            ErrorKind::IsADirectory => Errors::FileIsFolder,
            _ => Errors::FileUnreadable,
        };
        words.say(text, &[("file", &shown(path))])
    };
    if path.is_dir() {
        return Err(refused(ErrorKind::IsADirectory));
    }
    let mut bytes = Vec::new();
    // One byte more than may be, so that a larger file is seen to be one.
    let most = plan::file::MAX_BYTES as u64 + 1;
    let file = std::fs::File::open(path).map_err(|error| refused(error.kind()))?;
    file.take(most).read_to_end(&mut bytes).map_err(|error| refused(error.kind()))?;
    Ok(bytes)
}

/// What lies in a folder: its folders, then its files of some endings, each by name.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Listing {
    pub(crate) folders: Vec<String>,
    pub(crate) files: Vec<String>,
}

/// Looks into a folder; what is hidden stays so.
pub(crate) fn list(folder: &Path, endings: &[&str]) -> std::io::Result<Listing> {
    let mut listing = Listing::default();
    for entry in std::fs::read_dir(folder)? {
        let Ok(entry) = entry else { continue };
        let Ok(name) = entry.file_name().into_string() else { continue };
        if name.starts_with('.') {
            continue;
        }
        // A link counts as what it names.
        if entry.path().is_dir() {
            listing.folders.push(name);
        } else if endings.iter().any(|ending| name.to_lowercase().ends_with(ending)) {
            listing.files.push(name);
        }
    }
    listing.folders.sort_by_key(|name| name.to_lowercase());
    listing.files.sort_by_key(|name| name.to_lowercase());
    Ok(listing)
}

/// The folder in which a chooser begins: the plan's, else the current one.
pub(crate) fn first_folder(plan: Option<&Path>) -> PathBuf {
    let beside = plan.and_then(Path::parent).filter(|folder| !folder.as_os_str().is_empty()).map(Path::to_path_buf);
    let folder = beside.or_else(|| std::env::current_dir().ok()).unwrap_or_else(|| PathBuf::from("."));
    folder.canonicalize().unwrap_or(folder)
}

/// A path with its folder, where it was typed without one.
pub(crate) fn whole(path: &Path) -> PathBuf {
    std::path::absolute(path).unwrap_or_else(|_| path.to_path_buf())
}

/// Whether something of that name is there.
pub(crate) fn exists(path: &Path) -> bool {
    path.exists()
}

/// A file's name in a sentence, shortened from its start so that the sentence stays one.
pub(crate) fn shown(path: &Path) -> String {
    let shown = path.display().to_string();
    let count = shown.chars().count();
    if count <= 120 { shown } else { format!("…{}", shown.chars().skip(count - 119).collect::<String>()) }
}

/// A title as the name of a file: letters and figures, the rest as hyphens.
pub(crate) fn file_name(title: &str) -> String {
    let plain: String = title.to_lowercase().chars().map(|c| if c.is_alphanumeric() { c } else { ' ' }).collect();
    let name = plain.split_whitespace().collect::<Vec<_>>().join("-");
    if name.is_empty() { "plan".to_owned() } else { name }
}
