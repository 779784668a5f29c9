//! Which way something lies, in degrees and as a point of the compass.

use crate::Words;
use crate::texts::Guides as Text;

/// Points of the compass, clockwise from north.
const POINTS: [Text; 8] = [
    Text::North,
    Text::NorthEast,
    Text::East,
    Text::SouthEast,
    Text::South,
    Text::SouthWest,
    Text::West,
    Text::NorthWest,
];

impl Words {
    /// Which way so far east and north lies: whole degrees clockwise from north, 0 to 359, and the nearest of eight points.
    ///
    /// ```
    /// assert_eq!(words::Words::default().bearing(-100.0, 1.0), ("271°".to_owned(), "west"));
    /// ```
    pub fn bearing(self, east_m: f64, north_m: f64) -> (String, &'static str) {
        let bearing_deg = east_m.atan2(north_m).to_degrees().rem_euclid(360.0);
        let point = POINTS[((bearing_deg / 45.0).round() as usize) % POINTS.len()];
        // 359.6° is said as 0°.
        (self.degrees(bearing_deg.round().rem_euclid(360.0)), self.text(point))
    }
}
