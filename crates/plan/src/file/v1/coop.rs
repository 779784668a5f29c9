//! The coop, in version 1.

use crate::defaults;
use crate::file::mirror::mirrored;
use crate::model::{CoopKind, DoorSide, Point};

mirrored! {
    /// A movable coop.
    Coop {
        /// Its id, unique among coops.
        id: String,
        /// Its middle.
        at: Point,
        /// Which way its length points, degrees clockwise from north.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::HEADING_DEG))]
        heading_deg: Option<f64>,
        /// In which of its walls the door is, seen along the heading.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = DoorSide::Right))]
        door: Option<DoorSide>,
        /// Length, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::COOP_LENGTH_M))]
        length_m: Option<f64>,
        /// Width, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::COOP_WIDTH_M))]
        width_m: Option<f64>,
        /// Birds in it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::BIRDS))]
        birds: Option<u32>,
        /// What birds.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = CoopKind::Layer))]
        kind: Option<CoopKind>,
        /// Whether the map leaves it out; it counts all the same, and paper shows it.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        hidden: bool,
        /// Whether the hand on the map leaves it where it is.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        locked: bool,
    }
}
