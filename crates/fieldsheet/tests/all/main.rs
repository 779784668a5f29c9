//! The printed sheet.
//!
//! One program, not one for each file: each of those would be linked with the whole room.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod branches;
mod case;
mod dangers;
mod keys;
mod open;
mod setting;
mod sheet;
