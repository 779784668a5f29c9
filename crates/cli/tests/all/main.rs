//! The commands, run as a keeper runs them.
//!
//! One program, not one for each file: each of those would be linked with the whole room.
#![allow(clippy::disallowed_methods, clippy::unwrap_used, reason = "a test may stop, and works with files")]

mod commands;
mod fit;
mod hand;
mod language;
mod power;
mod shapes;
mod slope;
