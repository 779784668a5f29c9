//! The few things that are asked of a file system, so that a test can stand in for it and fail anywhere.

use std::fmt::Debug;
use std::io;
use std::path::{Path, PathBuf};

/// What stands at a path, links followed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Nothing.
    Nothing,
    /// A file that may be replaced.
    File,
    /// A file that is write-protected.
    Protected,
    /// A folder.
    Folder,
    /// A pipe, a device or the like.
    Other,
}

/// A file system.
pub trait Files: Clone + Debug {
    /// An open file of this file system.
    type Handle: Handle;

    /// The path from the root, links not followed.
    fn absolute(&self, path: &Path) -> io::Result<PathBuf>;
    /// The path that is meant once every link is followed, also where nothing stands there yet.
    fn resolve(&self, path: &Path) -> io::Result<PathBuf>;
    /// What stands there.
    fn kind(&self, path: &Path) -> io::Result<Kind>;
    /// A few letters that no other draft of this machine is likely to bear; another at each call.
    fn fresh(&self) -> String;
    /// Writes a file where none is and flushes it. It may be read by whoever may read the file at `like`, or by
    /// everybody where there is none. A failure may leave a part of it.
    fn write_new(&self, path: &Path, bytes: &[u8], like: &Path) -> io::Result<()>;
    /// Puts the same file under a second name where none is: a link, or a copy that is flushed. A failure may
    /// leave a part of it.
    fn copy_new(&self, from: &Path, to: &Path) -> io::Result<()>;
    /// Gives a file another name, at once; what bore that name is gone.
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()>;
    /// Takes a file away.
    fn remove(&self, path: &Path) -> io::Result<()>;
    /// What lies in a folder, in order.
    fn list(&self, folder: &Path) -> io::Result<Vec<PathBuf>>;
    /// Makes a folder and those above it; one that is there is no error.
    fn create_folder(&self, folder: &Path) -> io::Result<()>;
    /// Flushes the names in a folder, where the system can.
    fn sync_folder(&self, folder: &Path) -> io::Result<()>;
    /// Opens a new private file, where none is.
    fn create(&self, path: &Path) -> io::Result<Self::Handle>;
    /// Opens a file that is there, to be locked and read.
    fn open(&self, path: &Path) -> io::Result<Self::Handle>;
}

/// An open file; closing it gives up its lock.
pub trait Handle: Debug {
    /// Locks the file against every other handle, in this process or another; `false` where one of them has it.
    fn try_lock(&self) -> io::Result<bool>;
    /// All that is in it.
    fn read(&mut self) -> io::Result<Vec<u8>>;
    /// Hands bytes to the system, at the end. A failure may leave a part of them.
    fn append(&mut self, bytes: &[u8]) -> io::Result<()>;
    /// Has the system put all of it on the disk.
    fn flush(&mut self) -> io::Result<()>;
}
