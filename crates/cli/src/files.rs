//! The rim of the program: files read whole and written whole or not at all.

use std::fs::File;
use std::io::{ErrorKind, Read, Write};
use std::path::{Path, PathBuf};

use anyhow::{Result, anyhow};
use words::{Words, texts::Errors};

/// Reads a file; one larger than any plan is refused before it is read.
pub(crate) fn read(path: &Path, words: Words) -> Result<Vec<u8>> {
    let unreadable = |error: &std::io::Error| {
        let text = match error.kind() {
            ErrorKind::NotFound => Errors::FileMissing,
            ErrorKind::PermissionDenied => Errors::FileForbidden,
            ErrorKind::IsADirectory => Errors::FileIsFolder,
            _ => Errors::FileUnreadable,
        };
        anyhow!(words.say(text, &[("file", &name(path))]))
    };
    if path.is_dir() {
        return Err(unreadable(&ErrorKind::IsADirectory.into()));
    }
    let mut bytes = Vec::new();
    // One byte more than may be, so that a larger file is seen to be one.
    let most = plan::file::MAX_BYTES as u64 + 1;
    File::open(path).and_then(|file| file.take(most).read_to_end(&mut bytes)).map_err(|error| unreadable(&error))?;
    Ok(bytes)
}

/// Writes a file whole: beside its place first, flushed, then renamed into it. A failure leaves what was there.
pub(crate) fn write(path: &Path, bytes: &[u8], words: Words) -> Result<()> {
    // A link is followed, so that what it names is written and the link stays.
    let target = path.canonicalize().unwrap_or_else(|_| path.to_path_buf());
    let path = target.as_path();
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let unwritable = |error: std::io::Error| {
        let text = match error.kind() {
            ErrorKind::NotFound | ErrorKind::NotADirectory => Errors::FolderMissing,
            ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => Errors::FileForbidden,
            ErrorKind::IsADirectory => Errors::FileIsFolder,
            ErrorKind::StorageFull => Errors::DiskFull,
            _ => Errors::FileUnwritable,
        };
        anyhow!(words.say(text, &[("file", &name(path))]))
    };
    if path.is_dir() {
        return Err(unwritable(ErrorKind::IsADirectory.into()));
    }
    if path.exists() && !path.is_file() {
        // A pipe or a device cannot be replaced, only written to.
        return File::options().write(true).open(path).and_then(|mut file| file.write_all(bytes)).map_err(unwritable);
    }
    let mut draft = tempfile::Builder::new().prefix(".netfold-").tempfile_in(folder).map_err(unwritable)?;
    draft.write_all(bytes).and_then(|()| draft.as_file().sync_all()).map_err(unwritable)?;
    readable_by_others(draft.as_file(), path).map_err(unwritable)?;
    draft.persist(path).map_err(|error| unwritable(error.error))?;
    Ok(())
}

/// A draft is private; the file that it becomes is as readable as the one that it replaces, or as usual.
#[cfg(unix)]
fn readable_by_others(draft: &File, path: &Path) -> std::io::Result<()> {
    use std::os::unix::fs::PermissionsExt;
    let mode = path.metadata().map_or(0o644, |was| was.permissions().mode() & 0o777);
    draft.set_permissions(std::fs::Permissions::from_mode(mode))
}

#[cfg(not(unix))]
fn readable_by_others(_draft: &File, _path: &Path) -> std::io::Result<()> {
    Ok(())
}

/// The folder where this program keeps what it remembers between starts; `None` where the system names none.
pub(crate) fn own_folder() -> Option<PathBuf> {
    let named = |name: &str| std::env::var_os(name).map(PathBuf::from).filter(|path| path.is_absolute());
    let folder = if cfg!(windows) {
        named("LOCALAPPDATA")
    } else if cfg!(target_os = "macos") {
        named("HOME").map(|home| home.join("Library").join("Application Support"))
    } else {
        // XDG base directories: state, which outlives a restart but is no setting to carry about.
        named("XDG_STATE_HOME").or_else(|| named("HOME").map(|home| home.join(".local").join("state")))
    };
    folder.map(|folder| folder.join("netfold"))
}

/// Puts a result on standard output; a reader that has gone away is no error.
pub(crate) fn print(bytes: &[u8]) -> Result<()> {
    let mut out = std::io::stdout().lock();
    match out.write_all(bytes).and_then(|()| out.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => Err(error.into()),
        _ => Ok(()),
    }
}

/// A file's name in a sentence, shortened from its start so that the sentence stays one.
pub(crate) fn name(path: &Path) -> String {
    let shown = path.display().to_string();
    let count = shown.chars().count();
    if count <= 120 { shown } else { format!("…{}", shown.chars().skip(count - 119).collect::<String>()) }
}
