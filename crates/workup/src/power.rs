//! Power on demand: what the pulse page asks for beyond each run's volts.
//!
//! - [`choice`]: which energizer keeps the target on how many nets, over this earth, clean to overgrown.
//!
//! All of it is worked out when asked for and not with every edit: it takes many pulses.

pub mod choice;

pub use electrical::SourceModel;

pub use choice::{ByGrass, Choice, MOST_NETS, MOST_STORED_J, UnitChoice, choice};
