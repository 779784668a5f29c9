//! What is read from and written to other files.
//!
//! One program, not one for each file: each of those would be linked with the whole room.
#![allow(
    clippy::disallowed_methods,
    clippy::indexing_slicing,
    clippy::unwrap_used,
    reason = "a test may stop, and works with files"
)]

mod compare;
mod geojson;
mod heights;
mod open;
mod orientation;
mod projection;
mod refusal;
mod report;
mod tape;
mod underlay;
