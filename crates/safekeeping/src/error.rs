//! Why something could not be kept, with the place; the words are in `words`, the display is for developers.

use std::io;
use std::path::{Path, PathBuf};

/// Why a file could not be written. What stood there stands there still.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SaveError {
    /// `safekeeping/no-folder`: the folder is not there, or its disk is not.
    #[error("safekeeping/no-folder: {path}")]
    NoFolder {
        /// The file that was to be written.
        path: PathBuf,
    },
    /// `safekeeping/forbidden`: the file or its folder is write-protected.
    #[error("safekeeping/forbidden: {path}")]
    Forbidden {
        /// The file that was to be written.
        path: PathBuf,
    },
    /// `safekeeping/is-folder`: a folder bears that name.
    #[error("safekeeping/is-folder: {path}")]
    IsFolder {
        /// The folder.
        path: PathBuf,
    },
    /// `safekeeping/not-a-file`: a pipe or a device, which cannot be replaced whole.
    #[error("safekeeping/not-a-file: {path}")]
    NotAFile {
        /// The pipe or device.
        path: PathBuf,
    },
    /// `safekeeping/disk-full`: no room, or no more than the keeper is allowed.
    #[error("safekeeping/disk-full: {path}")]
    DiskFull {
        /// The file that was to be written.
        path: PathBuf,
    },
    /// `safekeeping/unwritable`: something else, as the system tells it.
    #[error("safekeeping/unwritable: {path}: {reason}")]
    Unwritable {
        /// The file that was to be written.
        path: PathBuf,
        /// What the system said, for the log.
        reason: String,
    },
}

impl SaveError {
    /// What the system's error means for the file at `path`.
    pub(crate) fn at(path: &Path) -> impl Fn(io::Error) -> Self {
        use io::ErrorKind as Is;
        move |error| {
            let path = path.to_path_buf();
            match error.kind() {
                Is::NotFound | Is::NotADirectory => Self::NoFolder { path },
                Is::PermissionDenied | Is::ReadOnlyFilesystem => Self::Forbidden { path },
                Is::IsADirectory => Self::IsFolder { path },
                Is::StorageFull | Is::QuotaExceeded => Self::DiskFull { path },
                _ => Self::Unwritable { path, reason: error.to_string() },
            }
        }
    }

    /// The file or folder that it is about.
    pub fn path(&self) -> &Path {
        match self {
            Self::NoFolder { path }
            | Self::Forbidden { path }
            | Self::IsFolder { path }
            | Self::NotAFile { path }
            | Self::DiskFull { path }
            | Self::Unwritable { path, .. } => path,
        }
    }
}

/// Why an edit is not in the journal.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum JournalError {
    /// The journal's file could not be written.
    #[error(transparent)]
    File(#[from] SaveError),
    /// `safekeeping/no-lock`: the folder's file system has no locks, so that a second window would take this one
    /// for fallen.
    #[error("safekeeping/no-lock: {path}")]
    NoLock {
        /// The journal.
        path: PathBuf,
    },
    /// `safekeeping/not-recordable`: the plan or the edit does not read back as it was written, as with a number
    /// that is none.
    #[error("safekeeping/not-recordable: {path}")]
    NotRecordable {
        /// The journal.
        path: PathBuf,
    },
    /// `safekeeping/journal-stopped`: an earlier edit is missing, so that no later one may follow until
    /// [`crate::Journal::restart`].
    #[error("safekeeping/journal-stopped: {path}")]
    Stopped {
        /// The journal.
        path: PathBuf,
    },
}
