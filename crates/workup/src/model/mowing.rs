//! The strip to mow.

use plan::Point;

/// The ground to mow.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Strip {
    /// Its width, metres.
    pub width_m: f64,
    /// Its area, square metres.
    pub area_m2: f64,
    /// Times round.
    pub passes: u32,
    /// Metres walked.
    pub walk_m: f64,
    /// Minutes mowed.
    pub minutes: f64,
    /// Minutes by its area, the mower's speed and width, and the share of the time in which it mows.
    pub minutes_by_area: f64,
    /// Its outlines: one exterior ring and its holes each, for drawing.
    pub polygons: Vec<Vec<Vec<Point>>>,
}

/// What of a strip is not mown yet.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StillToMow {
    /// Its area, square metres.
    pub area_m2: f64,
    /// Metres walked behind the mower.
    pub walk_m: f64,
    /// Minutes mowed.
    pub minutes: f64,
}
