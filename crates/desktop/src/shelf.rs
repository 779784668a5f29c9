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

/// How a picture's file ends.
pub(crate) const PICTURE_ENDINGS: [&str; 3] = [".png", ".jpg", ".jpeg"];

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
pub(crate) fn write(path: &Path, bytes: &[u8]) -> Result<(), SaveError> {
    safekeeping::replace(&Disk, path, bytes)
}

/// Why a file could not be written, as a sentence.
pub(crate) fn refused(error: &SaveError, words: Words) -> String {
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

/// Where a file lies that a plan names: from the folder of the plan's own file, where it has one.
pub(crate) fn beside(plan: Option<&Path>, named: &str) -> PathBuf {
    match plan.and_then(Path::parent) {
        Some(folder) => folder.join(named),
        None => PathBuf::from(named),
    }
}

/// A file as a plan in that file names it: from the plan's folder, with `/` between folders; whole where the plan has no
/// file yet, or lies on another disk.
pub(crate) fn named_from(plan: Option<&Path>, file: &Path) -> String {
    let whole_file = whole(file);
    let relative = plan.and_then(|plan| {
        let folder = whole(plan).parent()?.to_path_buf();
        let (from, to): (Vec<_>, Vec<_>) = (folder.components().collect(), whole_file.components().collect());
        let alike = from.iter().zip(&to).take_while(|(one, other)| one == other).count();
        let up = std::iter::repeat_n("..".to_owned(), from.len() - alike);
        let down = to[alike..].iter().map(|part| part.as_os_str().to_string_lossy().into_owned());
        (alike > 0).then(|| up.chain(down).collect::<Vec<_>>().join("/"))
    });
    relative.unwrap_or_else(|| whole_file.to_string_lossy().into_owned())
}

/// The plan as it is written to a file: the picture beneath it is named from there.
pub(crate) fn underlay_for(plan: &Plan, was: Option<&Path>, file: &Path) -> Option<plan::Underlay> {
    let underlay = plan.underlay.as_ref()?;
    let path = named_from(Some(file), &beside(was, &underlay.path));
    (path != underlay.path).then(|| plan::Underlay { path, ..underlay.clone() })
}

/// Reads a picture, and by what it is known again.
pub(crate) fn picture(
    path: &Path,
    most_px: u32,
) -> Result<(exchange::underlay::Picture, String), exchange::underlay::PictureError> {
    let bytes = picture_bytes(path)?;
    Ok((exchange::underlay::read(&bytes, most_px)?, exchange::underlay::fingerprint(&bytes)))
}

fn picture_bytes(path: &Path) -> Result<Vec<u8>, exchange::underlay::PictureError> {
    use exchange::underlay::{MOST_FILE_BYTES, PictureError};
    let refused = |error: std::io::Error| match error.kind() {
        ErrorKind::NotFound => PictureError::Missing,
        _ => PictureError::Unreadable,
    };
    if path.is_dir() {
        return Err(PictureError::Unreadable);
    }
    let mut bytes = Vec::new();
    let file = std::fs::File::open(path).map_err(refused)?;
    file.take(MOST_FILE_BYTES + 1).read_to_end(&mut bytes).map_err(refused)?;
    if bytes.len() as u64 > MOST_FILE_BYTES { Err(PictureError::TooHeavy) } else { Ok(bytes) }
}

/// A picture to be laid under a plan in that file, with its world file's place where it has one.
pub(crate) fn underlay(path: &Path, plan: Option<&Path>, words: Words) -> Result<plan::Underlay, String> {
    use exchange::underlay;
    let name = path.file_name().map_or_else(|| shown(path), |name| name.to_string_lossy().into_owned());
    let refused = |error| underlay::sentence(words, &name, &error);
    let bytes = picture_bytes(path).map_err(refused)?;
    // The head alone may belong to a file that was cut short: it is read whole before it is taken.
    underlay::read(&bytes, crate::underlay::MOST_PX).map_err(refused)?;
    let size_px = underlay::size_px(&bytes).map_err(refused)?;
    let world_m = world_of(path, &name, words)?;
    let world_m = world_m.map(|world| underlay::seen_world(&bytes, world)).transpose().map_err(refused)?;
    Ok(plan::Underlay {
        sha256: underlay::fingerprint(&bytes),
        size_px: Some(size_px),
        world_m,
        ..plan::Underlay::new(named_from(plan, path))
    })
}

/// What the world file beside a picture says, where there is one.
fn world_of(path: &Path, name: &str, words: Words) -> Result<Option<plan::World>, String> {
    let folder = path.parent().unwrap_or(Path::new("."));
    for beside in exchange::underlay::world_names(name) {
        let Ok(file) = std::fs::File::open(folder.join(&beside)) else { continue };
        let mut bytes = Vec::new();
        if file.take(64 * 1024).read_to_end(&mut bytes).is_ok() {
            let world = exchange::underlay::world(&bytes);
            return world.map(Some).map_err(|error| exchange::underlay::world_sentence(words, &beside, &error));
        }
    }
    Ok(None)
}

#[cfg(test)]
mod tests {
    use super::{beside, named_from};
    use std::path::Path;

    #[test]
    fn a_picture_is_named_from_the_plans_folder_and_found_again() {
        let plan = Path::new("/farm/plans/kettle.netfold.json");
        for (file, named) in [
            ("/farm/plans/air.png", "air.png"),
            ("/farm/plans/pictures/air.png", "pictures/air.png"),
            ("/farm/air.png", "../air.png"),
            ("/photos/2027/air.png", "../../photos/2027/air.png"),
        ] {
            assert_eq!(named_from(Some(plan), Path::new(file)), named);
            let found = beside(Some(plan), named);
            assert!(found.starts_with("/farm/plans"), "{found:?}");
        }
        assert_eq!(named_from(None, Path::new("/photos/air.png")), "/photos/air.png");
        assert_eq!(beside(None, "/photos/air.png"), Path::new("/photos/air.png"));
        assert_eq!(beside(Some(plan), "/photos/air.png"), Path::new("/photos/air.png"));
    }
}
