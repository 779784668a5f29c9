//! What the keeper measured.

use serde::{Deserialize, Serialize};

use super::Rest;

/// What a reading tells of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ReadingKind {
    /// A post, to a probe in the soil, kilovolts.
    FenceKv,
    /// The energizer's earth pole, to a probe, kilovolts.
    EarthKv,
    /// The energizer's poles with the fence unclipped, kilovolts.
    EnergizerKv,
    /// The battery, volts.
    BatteryV,
    /// Ticking heard at that place.
    Ticking,
}

/// A measurement that the keeper took.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// The run that it was taken on.
    pub run: String,
    /// What was read.
    pub kind: ReadingKind,
    /// Where along the outline, metres.
    pub along_m: Option<f64>,
    /// The value, in the unit of its kind.
    pub value: Option<f64>,
    /// Everything else that the file says of it.
    pub rest: Rest,
}
