//! Power on demand: what the pulse page asks for beyond each run's volts.
//!
//! - [`pulse`]: the pulse over time at every post, and what it carries;
//! - [`feel`]: what a fox, a dog, a hen and a sheep would feel, on soil from damp to very dry;
//! - [`earth`]: how many stakes are worth driving, and what the shorted-fence test reads;
//! - [`choice`]: which energizer keeps the target on how many nets, over this earth, clean to overgrown.
//!
//! All of it is worked out when asked for and not with every edit: it takes many pulses.

pub mod choice;
pub mod earth;
pub mod feel;
mod fence;
pub mod pulse;

pub use electrical::SourceModel;

pub use choice::{ByGrass, Choice, MOST_NETS, MOST_STORED_J, UnitChoice, choice};
pub use earth::{EarthTest, Stakes, StakesIn, earth_test, stakes};
pub use feel::{Body, Feels, Felt, SOILS_OHM_M, Who, feels};
pub use pulse::{PulseShape, pulse_shape};
