//! A file put into its place whole, or not at all, with the one before it kept as a backup.
//!
//! The new file is written under another name in the same folder and flushed; the old one gets a second name,
//! which then becomes the backup's; then the new file takes the name. So each name stands for a whole file at
//! any moment, and a failure or a fallen power line in between leaves the old one. A process that is killed in
//! between may leave a draft, `.netfold-….draft`, which nobody reads.

use std::io;
use std::path::{Path, PathBuf};

use crate::error::SaveError;
use crate::files::{Files, Kind};

/// How many names are tried for a draft, where others are taken.
const NAMES: usize = 100;

/// Writes a file whole. A link is followed; permissions are those of the file replaced, which becomes the backup.
///
/// # Errors
/// [`SaveError`]: the file and all that it held is as it was. Where the last step failed the backup is a copy of it.
pub fn save<F: Files>(files: &F, path: &Path, bytes: &[u8]) -> Result<(), SaveError> {
    put(files, path, bytes, true)
}

/// Writes a file whole as [`save`] does, and keeps no backup: for what can be made again.
///
/// # Errors
/// [`SaveError`]: the file and all that it held is as it was.
pub fn replace<F: Files>(files: &F, path: &Path, bytes: &[u8]) -> Result<(), SaveError> {
    put(files, path, bytes, false)
}

fn put<F: Files>(files: &F, path: &Path, bytes: &[u8], keep: bool) -> Result<(), SaveError> {
    let target = files.resolve(path).map_err(SaveError::at(path))?;
    let replaced = match files.kind(&target).map_err(SaveError::at(path))? {
        Kind::Nothing => false,
        Kind::File => true,
        Kind::Protected => return Err(SaveError::Forbidden { path: path.to_path_buf() }),
        Kind::Folder => return Err(SaveError::IsFolder { path: path.to_path_buf() }),
        Kind::Other => return Err(SaveError::NotAFile { path: path.to_path_buf() }),
    };
    let folder = folder_of(&target);
    let draft = beside(files, folder, |draft| files.write_new(draft, bytes, &target)).map_err(SaveError::at(path))?;
    let placed = if replaced && keep { keep_backup(files, &target) } else { Ok(()) }
        .and_then(|()| files.rename(&draft, &target).map_err(SaveError::at(path)));
    match placed {
        // Where the names cannot be flushed, each still stands for a whole file.
        Ok(()) => drop(files.sync_folder(folder)),
        Err(_) => drop(files.remove(&draft)),
    }
    placed
}

/// The name under which the file before a save is kept: the file's own and `.bak`.
pub fn backup_of(path: &Path) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(".bak");
    name.into()
}

fn keep_backup<F: Files>(files: &F, target: &Path) -> Result<(), SaveError> {
    let backup = backup_of(target);
    let spare =
        beside(files, folder_of(target), |spare| files.copy_new(target, spare)).map_err(SaveError::at(&backup))?;
    let kept = files.rename(&spare, &backup).map_err(SaveError::at(&backup));
    // Two names of one file: such a rename does nothing and leaves both.
    drop(files.remove(&spare));
    kept
}

/// Makes a file under a name that nobody has; what a failure left of it is taken away.
fn beside<F: Files>(files: &F, folder: &Path, make: impl Fn(&Path) -> io::Result<()>) -> io::Result<PathBuf> {
    for _ in 0..NAMES {
        let path = folder.join(format!(".netfold-{}.draft", files.fresh()));
        match make(&path) {
            Ok(()) => return Ok(path),
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {}
            Err(error) => {
                drop(files.remove(&path));
                return Err(error);
            }
        }
    }
    Err(io::ErrorKind::AlreadyExists.into())
}

fn folder_of(path: &Path) -> &Path {
    path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."))
}
