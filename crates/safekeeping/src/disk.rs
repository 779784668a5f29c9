//! The machine's own file system: the one page of this crate that touches files.
//!
//! On Unix a folder is flushed as a file is, and what a new file may be read by is settled before it has its
//! name. Windows has neither; there a rename is on the disk when the system pleases.

use std::fs::{self, File, OpenOptions, TryLockError};
use std::io::{self, ErrorKind, Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};

use crate::files::{Files, Handle, Kind};

/// The most links that are followed from one to the next.
const MOST_LINKS: usize = 40;

/// The machine's own file system.
#[derive(Clone, Copy, Debug, Default)]
pub struct Disk;

impl Files for Disk {
    type Handle = File;

    fn absolute(&self, path: &Path) -> io::Result<PathBuf> {
        std::path::absolute(path)
    }

    fn resolve(&self, path: &Path) -> io::Result<PathBuf> {
        let mut at = path.to_path_buf();
        for _ in 0..MOST_LINKS {
            match at.canonicalize() {
                // A link to a file that is not there yet: the file is made there, and the link stays.
                Err(error) if error.kind() == ErrorKind::NotFound => match at.read_link() {
                    Ok(named) => at = at.parent().unwrap_or(Path::new("")).join(named),
                    Err(_) => return Ok(at),
                },
                resolved => return resolved,
            }
        }
        Err(io::Error::other("links that name one another"))
    }

    fn kind(&self, path: &Path) -> io::Result<Kind> {
        match path.metadata() {
            Ok(found) if found.is_dir() => Ok(Kind::Folder),
            Ok(found) if !found.is_file() => Ok(Kind::Other),
            Ok(found) if found.permissions().readonly() => Ok(Kind::Protected),
            Ok(_) => Ok(Kind::File),
            Err(error) if matches!(error.kind(), ErrorKind::NotFound | ErrorKind::NotADirectory) => Ok(Kind::Nothing),
            Err(error) => Err(error),
        }
    }

    fn fresh(&self) -> String {
        static COUNT: AtomicU64 = AtomicU64::new(0);
        format!("{}-{}", std::process::id(), COUNT.fetch_add(1, Ordering::Relaxed))
    }

    fn write_new(&self, path: &Path, bytes: &[u8], like: &Path) -> io::Result<()> {
        let mut file = private_new(path)?;
        file.write_all(bytes)?;
        readable_as(&file, like)?;
        file.sync_all()
    }

    fn copy_new(&self, from: &Path, to: &Path) -> io::Result<()> {
        match fs::hard_link(from, to) {
            Err(error) if error.kind() != ErrorKind::AlreadyExists => {
                // Not every disk has links, and not every file may be linked to.
                let mut copy = private_new(to)?;
                io::copy(&mut File::open(from)?, &mut copy)?;
                readable_as(&copy, from)?;
                copy.sync_all()
            }
            linked => linked,
        }
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::rename(from, to)
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        fs::remove_file(path)
    }

    fn list(&self, folder: &Path) -> io::Result<Vec<PathBuf>> {
        let mut paths = fs::read_dir(folder)?.map(|entry| Ok(entry?.path())).collect::<io::Result<Vec<_>>>()?;
        paths.sort();
        Ok(paths)
    }

    fn create_folder(&self, folder: &Path) -> io::Result<()> {
        fs::create_dir_all(folder)
    }

    #[cfg(unix)]
    fn sync_folder(&self, folder: &Path) -> io::Result<()> {
        File::open(folder)?.sync_all()
    }

    #[cfg(not(unix))]
    fn sync_folder(&self, _folder: &Path) -> io::Result<()> {
        Ok(())
    }

    fn create(&self, path: &Path) -> io::Result<File> {
        private_new(path)
    }

    fn open(&self, path: &Path) -> io::Result<File> {
        // Some systems lock only what is open for writing.
        File::options().read(true).write(true).open(path)
    }
}

impl Handle for File {
    fn try_lock(&self) -> io::Result<bool> {
        match File::try_lock(self) {
            Ok(()) => Ok(true),
            Err(TryLockError::WouldBlock) => Ok(false),
            Err(TryLockError::Error(error)) => Err(error),
        }
    }

    fn read(&mut self) -> io::Result<Vec<u8>> {
        let mut bytes = Vec::new();
        self.seek(SeekFrom::Start(0))?;
        self.read_to_end(&mut bytes)?;
        Ok(bytes)
    }

    fn append(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.write_all(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.sync_data()
    }
}

/// Opens a file where none is, that nobody else may read.
fn private_new(path: &Path) -> io::Result<File> {
    let mut options = OpenOptions::new();
    options.read(true).write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options.open(path)
}

/// Lets a file be read by whoever may read the one at `like`, or by everybody where there is none.
#[cfg(unix)]
fn readable_as(file: &File, like: &Path) -> io::Result<()> {
    use std::os::unix::fs::PermissionsExt;
    let mode = like.metadata().map_or(0o644, |was| was.permissions().mode() & 0o777);
    file.set_permissions(fs::Permissions::from_mode(mode))
}

#[cfg(not(unix))]
fn readable_as(_file: &File, _like: &Path) -> io::Result<()> {
    Ok(())
}
