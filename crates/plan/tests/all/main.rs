//! The plan, its file and its edits.
//!
//! One program, not one for each file: each of those would be linked with the whole room.
#![allow(clippy::disallowed_methods, clippy::unwrap_used, reason = "a test may stop, and works with files")]

mod coops;
mod edits;
mod file;
