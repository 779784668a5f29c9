//! What stands in about braces and wind where nothing is stated. Unless another source is named: common practice, no
//! source; the ranges stand in `docs/model.md`.

/// Height of the pull of a test, metres: about the middle of a net.
pub const PULL_HEIGHT_M: f64 = 0.5;
/// Whether the ground was wet when a spike was pulled or a corner seen: dry gives the lower strength of either.
pub const SEEN_WET: bool = false;
/// What wet ground holds of what it holds dry: "about half", InTents magazine, June 2009, on stakes of tents.
pub const WET_FACTOR: f64 = 0.5;
/// The source of [`WET_FACTOR`].
pub const WET_SOURCE: &str = "stakes of tents hold about half in wet ground: InTents magazine, June 2009";
/// Height at which a guy is tied to its post, metres, but no higher than the net.
pub const GUY_HEIGHT_M: f64 = 1.0;
/// Pegs of a guy.
pub const PEGS: u32 = 1;
/// Length of a brace post in the ground, metres.
pub const POST_LENGTH_M: f64 = 0.45;
/// Diameter of a brace post, metres.
pub const POST_DIAMETER_M: f64 = 0.0127;
/// Driving a peg that much longer (0.15 m), minutes.
pub const LONGER_PEG_MINUTES: f64 = 0.5;
/// So much longer is that peg, metres.
pub const LONGER_PEG_STEP_M: f64 = 0.15;
/// Driving a second peg and tying it to the first, minutes.
pub const SECOND_PEG_MINUTES: f64 = 1.0;
/// Driving a brace post and tying the corner's to it, minutes.
pub const POST_MINUTES: f64 = 3.0;
/// Each post more that a corner is cut over: a cane, a look along it, minutes.
pub const CUT_POST_MINUTES: f64 = 0.5;
/// Each thing more to carry there and back and to keep, minutes.
pub const CARRY_MINUTES: f64 = 0.5;
/// Share of a fouled net's face that is strand, grass and leaves; derived for a net with grass in it (husbandry 2.3).
pub const FOULED_SHARE: f64 = 0.2;
/// Thickness of a line of a net, metres (husbandry 2.3, an example net).
pub const LINE_THICKNESS_M: f64 = 0.0025;
/// Share of a net's length that is stays: 3 mm every 75 mm (husbandry 2.3, an example net).
pub const STAY_SHARE: f64 = 0.04;
