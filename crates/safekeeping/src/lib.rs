//! What keeps the keeper's work: a save that is whole or did not happen, the file before it as a backup, a
//! journal of every edit since, and what a window that fell left behind.
//!
//! A tour: [`mod@save`] puts a file into its place; [`journal`] writes down each edit of a running window;
//! [`recovery`] finds the journals that nobody holds and replays them. Under them lie [`files`], the few things
//! that are asked of a file system, and [`disk`], the one that the machine has; [`error`] says why something
//! could not be kept. [`mod@replay`] is pure: bytes of a journal to a plan, through [`header`], [`base`] and
//! [`line`].
//!
//! **Invariants.**
//! - A save that fails, wherever it fails, leaves the file as it was, byte for byte.
//! - What [`Journal::flush`] has returned from is found again after the process was killed or the power went.
//! - A journal is under its own name only while it is whole and locked, or after its window is gone.
//! - A journal never holds a gap: after a line that could not be written nothing more is, until it is restarted.
//! - The replay of a journal cut anywhere is the plan after its last whole line.
//! - No bytes make anything here panic, and nothing that cannot be read is deleted unasked.
//!
//! This crate has no thread and no clock and knows no words; files are touched in [`disk`] only.

mod base;
pub mod disk;
pub mod error;
pub mod files;
pub mod header;
pub mod journal;
mod line;
pub mod recovery;
pub mod replay;
pub mod save;

pub use disk::Disk;
pub use error::{JournalError, SaveError};
pub use files::{Files, Handle, Kind};
pub use header::Damage;
pub use journal::{Base, Journal};
pub use recovery::{Damaged, Found, Left, left_behind};
pub use replay::{Dropped, Replay, Stop, replay};
pub use save::{backup_of, replace, save};
