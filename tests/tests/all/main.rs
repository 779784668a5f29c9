//! The published checks, the house and what the documents say.
//!
//! One program, not one for each file: each of those would be linked with the whole room.
#![allow(
    clippy::disallowed_methods,
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a test may stop, and works with files, and says what it measured"
)]

mod bad_figures;
mod bracing;
mod damp;
mod documents;
mod earth_stakes;
mod earths;
mod electrical_facts;
mod findings;
mod fit;
mod gates;
mod house;
mod husbandry;
mod languages;
mod largest;
mod ngspice;
mod placement;
mod projection;
mod quiet;
mod shapes;
mod slope;
mod told;
