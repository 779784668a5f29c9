//! The window, worked by hand and key without a screen.
//!
//! One program, not one for each file: each of those would be linked with the whole room.
#![allow(
    clippy::disallowed_methods,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop, and works with files"
)]

mod about;
mod again;
mod apart;
mod book;
mod bracing;
mod branches;
mod by_keys;
mod chips;
mod clipboard;
mod commands;
mod coops;
mod corners;
mod damp;
mod earth;
mod editor;
mod entries;
mod everything;
mod faults;
mod feet;
mod fields;
mod fitting;
mod gates;
mod ground;
mod half_drawn;
mod hand;
mod hazards;
mod hidden;
mod hiding;
mod in_sight;
mod keeping;
mod languages;
mod lead;
mod led;
mod list_fields;
mod listing;
mod many;
mod measures;
mod mending;
mod minutes;
mod moves;
mod open_runs;
mod outline;
mod parts;
mod picked_entries;
mod places;
mod pointer;
mod power;
mod resting;
mod setting_up;
mod shapes;
mod shaping;
mod sides;
mod slope;
mod small;
mod snapping;
mod start;
mod steps;
mod suggested;
mod tape_points;
mod typing;
mod underlay;
mod undo;
mod unrolling;
mod window;
mod zones;
