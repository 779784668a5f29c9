//! The coop and its birds.

use serde::{Deserialize, Serialize};

use super::{Point, Rest};
use crate::defaults;

/// What lives in a coop.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum CoopKind {
    /// Laying hens.
    #[default]
    Layer,
    /// Young hens before lay.
    Pullet,
    /// Chicks.
    Chick,
    /// Table birds.
    Table,
    /// Ducks.
    Duck,
    /// Geese.
    Goose,
    /// Turkeys.
    Turkey,
    /// Something else.
    Other,
}

/// A movable coop.
#[derive(Clone, Debug, PartialEq)]
pub struct Coop {
    /// Its id, unique among coops.
    pub id: String,
    /// Its middle.
    pub at: Point,
    /// Which way its length points, degrees clockwise from north.
    pub heading_deg: Option<f64>,
    /// Length, metres.
    pub length_m: Option<f64>,
    /// Width, metres.
    pub width_m: Option<f64>,
    /// Birds in it.
    pub birds: Option<u32>,
    /// What birds.
    pub kind: Option<CoopKind>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Coop {
    /// Its corners, from the one ahead on the right, counter-clockwise: its length points along the heading.
    pub fn corners(&self) -> [Point; 4] {
        let (sin, cos) = self.heading_deg().to_radians().sin_cos();
        [(1.0, 1.0), (1.0, -1.0), (-1.0, -1.0), (-1.0, 1.0)].map(|(ahead, right)| {
            let (ahead_m, right_m) = (ahead * self.length_m() / 2.0, right * self.width_m() / 2.0);
            Point::new(self.at.east_m + ahead_m * sin + right_m * cos, self.at.north_m + ahead_m * cos - right_m * sin)
        })
    }

    /// A coop of which no more is stated than where it stands.
    pub fn new(id: impl Into<String>, at: Point) -> Self {
        Self {
            id: id.into(),
            at,
            heading_deg: None,
            length_m: None,
            width_m: None,
            birds: None,
            kind: None,
            rest: Rest::new(),
        }
    }

    /// Heading, stated or assumed, degrees clockwise from north.
    pub fn heading_deg(&self) -> f64 {
        self.heading_deg.unwrap_or(defaults::HEADING_DEG)
    }

    /// Length, stated or assumed, metres.
    pub fn length_m(&self) -> f64 {
        self.length_m.unwrap_or(defaults::COOP_LENGTH_M)
    }

    /// Width, stated or assumed, metres.
    pub fn width_m(&self) -> f64 {
        self.width_m.unwrap_or(defaults::COOP_WIDTH_M)
    }

    /// Birds, stated or assumed.
    pub fn birds(&self) -> u32 {
        self.birds.unwrap_or(defaults::BIRDS)
    }

    /// Kind of bird, stated or assumed.
    pub fn kind(&self) -> CoopKind {
        self.kind.unwrap_or_default()
    }
}
