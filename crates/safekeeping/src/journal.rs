//! Every edit of a running window, written down as it is made.
//!
//! One file a window, locked while the window lives. It is written under a draft's name first and takes its own
//! only when it is locked and its first line is on the disk, so that whoever finds it finds it whole and held.
//! A restart makes a second such file under a new name and then takes the first away: had it taken the first one's
//! name, another window could open the old file, get its lock the moment it is given up, and take the living window
//! for fallen.

use std::path::{Path, PathBuf};

use plan::{Edit, Plan};

use crate::error::{JournalError, SaveError};
use crate::files::{Files, Handle, Kind};
use crate::header::Header;
use crate::line::{self, Sum};

/// The ending of a journal's name.
pub const EXTENSION: &str = "netfold-journal";
/// The ending of its draft's name: no other draft, as a save's, has it.
pub const DRAFT_EXTENSION: &str = "netfold-journal-draft";

/// What the edits go on from.
#[derive(Clone, Copy, Debug)]
pub struct Base<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// Its file, if it has one.
    pub path: Option<&'a Path>,
    /// Whether nothing would be lost if this plan were: its file holds it, or the program can make it again, as
    /// with an empty one. A base that is not saved is worth recovering without any edit.
    pub saved: bool,
}

/// The journal of a running window. Dropped without [`Journal::finish`] it stays, to be recovered.
#[derive(Debug)]
pub struct Journal<F: Files> {
    files: F,
    folder: PathBuf,
    name: String,
    path: PathBuf,
    handle: F::Handle,
    sum: Sum,
    bytes: usize,
    stopped: bool,
}

/// A journal's file, locked and on the disk.
struct Sheet<H> {
    path: PathBuf,
    handle: H,
    sum: Sum,
    bytes: usize,
}

impl<F: Files> Journal<F> {
    /// Starts a journal in a folder, which is made where it is not there. `name` is what its file's
    /// name begins with, without a slash; any number of journals may share it.
    ///
    /// # Errors
    /// [`JournalError`]: nothing was left in the folder, where that could be helped.
    pub fn start(files: F, folder: &Path, name: &str, base: Base<'_>) -> Result<Self, JournalError> {
        Self::with_edits(files, folder, name, base, &[])
    }

    /// Starts a journal that has edits already.
    pub(crate) fn with_edits(
        files: F,
        folder: &Path,
        name: &str,
        base: Base<'_>,
        edits: &[Edit],
    ) -> Result<Self, JournalError> {
        files.create_folder(folder).map_err(SaveError::at(folder))?;
        let Sheet { path, handle, sum, bytes } = sheet(&files, folder, name, base, edits)?;
        let (folder, name) = (folder.to_path_buf(), name.to_owned());
        Ok(Self { files, folder, name, path, handle, sum, bytes, stopped: false })
    }

    /// Hands edits that took effect to the system, in their order: safe from a fall of this program, not yet of
    /// the power.
    ///
    /// # Errors
    /// [`JournalError`]: the journal may lack these edits and takes no more until [`Journal::restart`] with the
    /// plan of that moment, not saved. What it holds from before can still be recovered.
    pub fn append(&mut self, edits: &[Edit]) -> Result<(), JournalError> {
        self.going()?;
        self.stopped = true;
        let mut text = Vec::new();
        push(&mut text, &mut self.sum, edits, &self.path)?;
        self.handle.append(&text).map_err(SaveError::at(&self.path))?;
        self.bytes += text.len();
        self.stopped = false;
        Ok(())
    }

    /// Has the system put every edit on the disk: safe from a fall of the power, too.
    ///
    /// # Errors
    /// [`JournalError`], as [`Journal::append`]: what a system does with bytes that it failed to flush is not known.
    pub fn flush(&mut self) -> Result<(), JournalError> {
        self.going()?;
        self.handle.flush().map_err(|error| {
            self.stopped = true;
            SaveError::at(&self.path)(error).into()
        })
    }

    /// Goes on from another base: after a save, for another plan, or after a failure.
    ///
    /// # Errors
    /// [`JournalError`]: the journal on the disk is the one before, and takes no more until a restart succeeds.
    pub fn restart(&mut self, base: Base<'_>) -> Result<(), JournalError> {
        self.stopped = true;
        let new = sheet(&self.files, &self.folder, &self.name, base, &[])?;
        // Taken away while it is still locked. Should that fail it is found after a fall only, beside the new one.
        drop(self.files.remove(&self.path));
        (self.path, self.handle, self.sum, self.bytes) = (new.path, new.handle, new.sum, new.bytes);
        self.stopped = false;
        Ok(())
    }

    /// Ends the journal: the window closes, and nothing is left to recover.
    ///
    /// # Errors
    /// [`JournalError`] where the file cannot be taken away; it will be found as left behind.
    pub fn finish(self) -> Result<(), JournalError> {
        Ok(self.files.remove(&self.path).map_err(SaveError::at(&self.path))?)
    }

    /// Where it is; another place after each restart.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// How large it is; a window may restart one that has grown long.
    pub fn bytes(&self) -> usize {
        self.bytes
    }

    /// Whether it takes no edits until a restart succeeds.
    pub fn is_stopped(&self) -> bool {
        self.stopped
    }

    fn going(&self) -> Result<(), JournalError> {
        if self.stopped { Err(JournalError::Stopped { path: self.path.clone() }) } else { Ok(()) }
    }
}

/// Makes a journal's file: drafted, locked, written, flushed, named.
fn sheet<F: Files>(
    files: &F,
    folder: &Path,
    name: &str,
    base: Base<'_>,
    edits: &[Edit],
) -> Result<Sheet<F::Handle>, JournalError> {
    let path = new_name(files, folder, name)?;
    let mut sum = Sum::new();
    let mut text = Vec::new();
    let plan_path = base.path.map(|path| files.absolute(path)).transpose().map_err(SaveError::at(&path))?;
    let header = Header::write(plan_path.as_deref(), base.saved, base.plan);
    if !Header::read(&header).is_ok_and(|read| read.base == *base.plan) {
        return Err(JournalError::NotRecordable { path });
    }
    line::push(&mut text, &mut sum, &header);
    push(&mut text, &mut sum, edits, &path)?;

    let draft = path.with_extension(DRAFT_EXTENSION);
    let mut handle = files.create(&draft).map_err(SaveError::at(&path))?;
    let made = match handle.try_lock() {
        Ok(true) => handle
            .append(&text)
            .and_then(|()| handle.flush())
            .and_then(|()| files.rename(&draft, &path))
            .map_err(|error| SaveError::at(&path)(error).into()),
        _ => Err(JournalError::NoLock { path: path.clone() }),
    };
    if let Err(error) = made {
        drop(files.remove(&draft));
        return Err(error);
    }
    if let Err(error) = files.sync_folder(folder) {
        drop(files.remove(&path));
        return Err(SaveError::at(&path)(error).into());
    }
    Ok(Sheet { path, handle, sum, bytes: text.len() })
}

/// A name that no journal has, and that none of this process had: whoever still has an earlier one open finds its
/// name gone, and not another journal under it.
fn new_name<F: Files>(files: &F, folder: &Path, name: &str) -> Result<PathBuf, SaveError> {
    loop {
        let path = folder.join(format!("{name}-{}.{EXTENSION}", files.fresh()));
        if files.kind(&path).map_err(SaveError::at(&path))? == Kind::Nothing {
            return Ok(path);
        }
    }
}

/// Writes edits down, each checked to read back as it is.
fn push(text: &mut Vec<u8>, sum: &mut Sum, edits: &[Edit], path: &Path) -> Result<(), JournalError> {
    for edit in edits {
        let json = serde_json::to_vec(edit)
            .ok()
            .filter(|json| serde_json::from_slice::<Edit>(json).is_ok_and(|read| read == *edit))
            .ok_or_else(|| JournalError::NotRecordable { path: path.to_path_buf() })?;
        line::push(text, sum, &json);
    }
    Ok(())
}
