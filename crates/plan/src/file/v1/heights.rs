//! Heights of the ground, in version 1.

use crate::file::mirror::mirrored;
use crate::model::Point;

mirrored! {
    /// A height at a spot, over any level; only differences count.
    SpotHeight {
        /// Where.
        at: Point,
        /// How high, metres.
        up_m: f64,
    }

    /// Heights on a square grid, such as a clip of a survey.
    HeightGrid {
        /// The place of the first height.
        south_west: Point,
        /// From one height to the next, metres.
        cell_m: f64,
        /// Heights in a row.
        columns: u32,
        /// Heights, metres, row after row from the south, each row from the west; null is a hole.
        up_m: Vec<Option<f64>>,
    }

    /// What a side of a run rises, by hand: the side that lies nearest to the place.
    SideSlope {
        /// A place on the side.
        at: Point,
        /// Metres that its end lies above its start, in the outline's order.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rises_m: Option<f64>,
        /// One metre up in so many along; counts where `rises_m` is not stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        one_in: Option<f64>,
    }
}
