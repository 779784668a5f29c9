//! Figures worked out of a plan.
//!
//! One program, not one for each file: each of those would be linked with the whole room.
#![allow(
    clippy::disallowed_methods,
    clippy::indexing_slicing,
    clippy::unwrap_used,
    reason = "a test may stop, and works with files"
)]

mod along;
mod bracing;
mod branches;
mod candidates_slope;
mod closing;
mod cuts;
mod damp;
mod earth;
mod example;
mod faults;
mod fit;
mod fit_slope;
mod gates;
mod mowing;
mod power;
mod setting_up;
mod sides_slope;
mod square;
mod tape;
mod today;
mod unroll;
