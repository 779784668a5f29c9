//! Placement, shapes and statics.
//!
//! One program, not one for each file: each of those would be linked with the whole room.
#![allow(clippy::print_stdout, clippy::unwrap_used, reason = "a test may stop, and says what it measured")]

mod bracing;
mod closing;
mod fit;
mod largest;
mod laws;
mod passes;
mod pins;
mod shaping;
mod slope;
mod standing;
