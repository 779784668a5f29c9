//! The solver against laws and a second way of solving.
//!
//! One program, not one for each file: each of those would be linked with the whole room.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod exact;
mod laws;
mod nasty;
mod oracle;
mod woven;
