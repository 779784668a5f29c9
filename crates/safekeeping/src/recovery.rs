//! What windows that fell have left behind.
//!
//! A journal that can be locked has no window. The lock is kept while it is looked at, so that of two windows
//! that start at once one alone offers it. Nothing is deleted here unasked but drafts, which never held anything
//! that is not elsewhere.

use std::io;
use std::path::{Path, PathBuf};

use crate::error::{JournalError, SaveError};
use crate::files::{Files, Handle, Kind};
use crate::header::Damage;
use crate::journal::{Base, DRAFT_EXTENSION, EXTENSION, Journal};
use crate::replay::{Replay, replay};

/// What was found in a folder.
#[derive(Debug)]
pub struct Found<F: Files> {
    /// Journals that can be replayed, in the order of their names, those without changes among them.
    pub left: Vec<Left<F>>,
    /// Those that cannot.
    pub damaged: Vec<Damaged>,
}

/// A journal that a window left behind, locked while this value lives. Dropped it stays for another time.
#[derive(Debug)]
pub struct Left<F: Files> {
    /// The journal.
    pub journal: PathBuf,
    /// What it holds.
    pub replay: Replay,
    files: F,
    handle: F::Handle,
}

/// A journal that nothing can be had from; it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Damaged {
    /// Where it is now: set aside as `.damaged`, or in its place where a later program can read it or it could
    /// not be read or moved.
    pub journal: PathBuf,
    /// What is wrong with it.
    pub damage: Damage,
}

/// Finds every journal in a folder that no window holds. A folder that is not there has none.
///
/// # Errors
/// [`SaveError`] where the folder cannot be looked into.
pub fn left_behind<F: Files>(files: &F, folder: &Path) -> Result<Found<F>, SaveError> {
    let mut found = Found { left: Vec::new(), damaged: Vec::new() };
    let paths = match files.list(folder) {
        Ok(paths) => paths,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(found),
        Err(error) => return Err(SaveError::at(folder)(error)),
    };
    for journal in paths {
        match journal.extension().and_then(|end| end.to_str()) {
            Some(EXTENSION) => {}
            Some(DRAFT_EXTENSION) => {
                sweep(files, &journal);
                continue;
            }
            _ => continue,
        }
        let (handle, bytes) = match take(files, &journal) {
            Ok(Some(taken)) => taken,
            Ok(None) => continue,
            Err(error) => {
                found.damaged.push(Damaged { journal, damage: Damage::Unreadable { reason: error.to_string() } });
                continue;
            }
        };
        match replay(&bytes) {
            Ok(replay) => found.left.push(Left { journal, replay, files: files.clone(), handle }),
            Err(damage @ Damage::Header) => {
                let journal = set_aside(files, &journal).unwrap_or(journal);
                found.damaged.push(Damaged { journal, damage });
            }
            Err(damage) => found.damaged.push(Damaged { journal, damage }),
        }
    }
    Ok(found)
}

impl<F: Files> Left<F> {
    /// Takes the journal away: its work was saved, or the keeper does not want it. One of which whole lines could not
    /// be replayed is set aside as `.damaged` instead, and its new path returned.
    ///
    /// # Errors
    /// [`SaveError`] where that fails; it is found again then.
    pub fn discard(self) -> Result<Option<PathBuf>, SaveError> {
        if self.replay.dropped.as_ref().is_some_and(|dropped| dropped.lines > 0) {
            return set_aside(&self.files, &self.journal).map(Some);
        }
        // The lock goes after the name, so that nobody takes up what is being taken away.
        self.files.remove(&self.journal).map_err(SaveError::at(&self.journal))?;
        drop(self.handle);
        Ok(None)
    }

    /// Goes on with what was replayed, as the journal of the window called `name`: the same base and the same
    /// edits, so that a second fall loses nothing. A journal of which whole lines were dropped is set aside as
    /// `.damaged`.
    ///
    /// # Errors
    /// [`JournalError`]: the journal is left behind as it was.
    pub fn take_up(self, name: &str) -> Result<Journal<F>, JournalError> {
        let Replay { plan_path, saved, base, edits, dropped, .. } = &self.replay;
        let folder = self.journal.parent().unwrap_or(Path::new("."));
        let base = Base { plan: base, path: plan_path.as_deref(), saved: *saved };
        let journal = Journal::with_edits(self.files.clone(), folder, name, base, edits)?;
        if dropped.as_ref().is_some_and(|dropped| dropped.lines > 0) {
            drop(set_aside(&self.files, &self.journal));
        } else {
            drop(self.files.remove(&self.journal));
        }
        drop(self.handle);
        Ok(journal)
    }
}

/// Locks and reads a journal; `None` where a window holds it or has just given it up.
fn take<F: Files>(files: &F, journal: &Path) -> io::Result<Option<(F::Handle, Vec<u8>)>> {
    let mut handle = match files.open(journal) {
        Ok(handle) => handle,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
        Err(error) => return Err(error),
    };
    // A window takes its journal's name away before it gives up the lock: a lock without a name is of the past.
    if !handle.try_lock()? || files.kind(journal)? == Kind::Nothing {
        return Ok(None);
    }
    let bytes = handle.read()?;
    Ok(Some((handle, bytes)))
}

/// Takes a draft away that no window holds. One in which nothing stands may be about to be locked, and is let be.
fn sweep<F: Files>(files: &F, draft: &Path) {
    let written = files.open(draft).and_then(|mut handle| handle.read()).is_ok_and(|bytes| !bytes.is_empty());
    if written && let Ok(Some(_held)) = take(files, draft) {
        drop(files.remove(draft));
    }
}

/// Puts a journal out of the way; it is never deleted, since somebody may still read it by eye.
fn set_aside<F: Files>(files: &F, journal: &Path) -> Result<PathBuf, SaveError> {
    let mut name = journal.as_os_str().to_owned();
    name.push(".damaged");
    let aside = free(files, Path::new(&name))?;
    files.rename(journal, &aside).map_err(SaveError::at(journal))?;
    Ok(aside)
}

/// The path, or the like of it that nothing has: `name.end`, `name-2.end` and so on.
fn free<F: Files>(files: &F, path: &Path) -> Result<PathBuf, SaveError> {
    let stem = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let end = path.extension().unwrap_or_default().to_string_lossy().into_owned();
    let mut free = path.to_path_buf();
    let mut number = 2_u64;
    while files.kind(&free).map_err(SaveError::at(path))? != Kind::Nothing {
        free = path.with_file_name(format!("{stem}-{number}.{end}"));
        number += 1;
    }
    Ok(free)
}
