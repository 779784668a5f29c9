//! What is drawn: inks, marks, letters, what lies under the pointer.
//!
//! One program, not one for each file: each of those would be linked with the whole room.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod apart;
mod contrast;
mod damp;
mod earths;
mod faults;
mod features;
mod hand;
mod ink;
mod letters;
mod open;
mod pick;
mod picture;
mod readings;
mod sheet;
mod unfolded;
mod view;
mod work;
