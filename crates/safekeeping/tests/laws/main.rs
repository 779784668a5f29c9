//! What saving, journal and recovery keep, whatever fails and wherever.
#![allow(clippy::unwrap_used, clippy::disallowed_methods, reason = "a test may stop and may read files")]

mod edits;
mod journalling;
mod memory;
mod on_disk;
mod recovering;
mod saving;
