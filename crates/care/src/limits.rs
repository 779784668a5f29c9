//! The limits that the rules go by, each with its source. Data, not law: local codes come first.

use workup::earth;

/// A limit in metres with the source of its number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// Metres.
    pub metres: f64,
    /// Where the number comes from.
    pub source: &'static str,
}

/// The installation annex of the energizer standard, read in reprints.
const ANNEX: &str = "IEC 60335-2-76, Annex BB (requirements for electric animal fences), read in reprints";

/// Between fences of independently timed energizers.
pub(crate) const BETWEEN_FENCES: Limit = Limit { metres: 2.5, source: ANNEX };
/// From the energizer's earth stake to any other earth.
pub(crate) const BETWEEN_EARTHS: Limit = Limit { metres: earth::OFF_FOREIGN_M, source: ANNEX };
/// Between the earth stakes of fences that are fed apart.
pub(crate) const EARTHS_OF_FENCES: Limit = Limit {
    metres: earth::OFF_FENCES_M,
    source: "Swiss and French farm press: earth stakes 10 m and more from other earths",
};
/// On the ground from an overhead line of up to 1 kV: within it, wires no higher than 3 m.
pub(crate) const LOW_LINE: Limit = Limit { metres: 2.0, source: ANNEX };
/// On the ground from an overhead line above 1 kV: within it, wires no higher than 3 m.
pub(crate) const HIGH_LINE: Limit = Limit { metres: 15.0, source: ANNEX };
/// Up to which voltage a line is of the lower class, kilovolts.
pub(crate) const LOW_LINE_KV: f64 = 1.0;
/// Distance between warning signs along a public way: the strictest of the rural figures.
pub(crate) const SIGN_SPACING: Limit =
    Limit { metres: 50.0, source: "Cornwall Council, signs along rights of way; the standard names no figure" };
/// A public way goes through a fence by an unpowered gate or stile only.
pub(crate) const ACROSS_WAY: Limit = Limit { metres: 0.0, source: ANNEX };
/// A fence nearer than this stands beside a public way.
pub(crate) const BESIDE_WAY: Limit = Limit { metres: 10.0, source: plan::defaults::COMMON_PRACTICE };
/// A metal stake nearer than this to the net may touch it when the net sways.
pub(crate) const STAKE_TO_NET: Limit = Limit { metres: earth::OFF_NET_M, source: plan::defaults::COMMON_PRACTICE };
/// An end of a run nearer than this to a wall, a hedge or a fence ends on it: one panel is drawn up to it.
pub(crate) const END_ON_WALL: Limit = Limit { metres: workup::ON_WALL_M, source: plan::defaults::COMMON_PRACTICE };
/// Shared ground no wider than this lies between two drawings of one side, metres.
pub(crate) const ONE_SIDE: Limit = Limit { metres: 0.25, source: plan::defaults::COMMON_PRACTICE };
/// Below this the weakest post counts as a fault, kilovolts.
pub(crate) const FAULT_KV: f64 = 3.0;
/// The source of [`FAULT_KV`].
pub(crate) const FAULT_SOURCE: &str =
    "electric netting at 3 kV or more: Ohio State University Extension (2009); as a fault limit common practice";
/// Most joules into 500 ohms of an energizer that is limited in energy.
pub(crate) const ENERGIZER_J: f64 = 5.0;
/// The source of [`ENERGIZER_J`], and of the line that one limited in current keeps below.
pub(crate) const ENERGIZER_CLAUSE: &str =
    "IEC 60335-2-76: 5 J read in a summary of BS EN 60335-2-76; clause 22.108 and its current limits from memory";
/// Longest impulse, seconds.
pub(crate) const IMPULSE_S: f64 = 10e-3;
/// The source of [`IMPULSE_S`].
pub(crate) const IMPULSE_CLAUSE: &str =
    "IEC 60335-2-76: 10 ms read in a summary of BS EN 60335-2-76; what counts as its length (clause 3) from memory";
/// A feed point farther than this from the line is hardly meant to feed it, metres.
pub(crate) const FEED_REACH_M: f64 = 10.0;
/// More leakage than this is no grass, siemens per metre: ten times that of heavy wet growth.
pub(crate) const LEAKAGE_MOST: f64 = 10.0 * plan::defaults::LEAKAGE_LONG_WET_S_PER_M;
/// The source of rules that follow from what the file format means.
pub(crate) const OWN_FORMAT: &str = "the plan file’s own rules";
/// The source of what is said of the wind.
pub(crate) const WIND: &str =
    "EN 1991-1-4 (from memory) for the wind; statics; Broms, J. Soil Mech. Found. Div. ASCE 90 (1964)";
/// The source of the verdict on corners.
pub(crate) const STATICS: &str = "statics; Broms, J. Soil Mech. Found. Div. ASCE 90 (1964)";
