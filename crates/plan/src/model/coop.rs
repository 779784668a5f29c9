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

/// In which of its walls a coop's door is, seen along its heading.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum DoorSide {
    /// In the right one.
    #[default]
    Right,
    /// In the left one.
    Left,
    /// In the one ahead.
    Ahead,
    /// In the one behind.
    Behind,
}

impl DoorSide {
    /// The way out of the door, degrees clockwise from the heading.
    pub fn bearing_deg(self) -> f64 {
        match self {
            Self::Ahead => 0.0,
            Self::Right => 90.0,
            Self::Behind => 180.0,
            Self::Left => 270.0,
        }
    }
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
    /// In which of its walls the door is.
    pub door: Option<DoorSide>,
    /// Length, metres.
    pub length_m: Option<f64>,
    /// Width, metres.
    pub width_m: Option<f64>,
    /// Birds in it.
    pub birds: Option<u32>,
    /// What birds.
    pub kind: Option<CoopKind>,
    /// Whether the map leaves it out; it counts all the same.
    pub hidden: bool,
    /// Whether the hand on the map leaves it where it is.
    pub locked: bool,
    /// Unknown keys.
    pub rest: Rest,
}

/// The birds of one or more coops.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Flock {
    /// How many, stated or assumed.
    pub birds: u32,
    /// What they are; [`CoopKind::Other`] where they are not all of one kind.
    pub kind: CoopKind,
}

impl Flock {
    /// The birds of all of them together; `None` where there is no coop.
    pub fn of<'a>(coops: impl IntoIterator<Item = &'a Coop>) -> Option<Self> {
        let each = coops.into_iter().map(|coop| Self { birds: coop.birds(), kind: coop.kind() });
        each.reduce(|all, one| Self {
            birds: all.birds.saturating_add(one.birds),
            kind: if all.kind == one.kind { all.kind } else { CoopKind::Other },
        })
    }
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
            door: None,
            length_m: None,
            width_m: None,
            birds: None,
            kind: None,
            hidden: false,
            locked: false,
            rest: Rest::new(),
        }
    }

    /// Heading, stated or assumed, degrees clockwise from north.
    pub fn heading_deg(&self) -> f64 {
        self.heading_deg.unwrap_or(defaults::HEADING_DEG)
    }

    /// In which of its walls the door is, stated or assumed.
    pub fn door(&self) -> DoorSide {
        self.door.unwrap_or_default()
    }

    /// Where the foot of its ramp stands: off the door's wall by the door's share of the coop.
    pub fn door_at(&self) -> Point {
        let out_rad = (self.heading_deg() + self.door().bearing_deg()).to_radians();
        let wall_m = match self.door() {
            DoorSide::Ahead | DoorSide::Behind => self.length_m() / 2.0,
            DoorSide::Right | DoorSide::Left => self.width_m() / 2.0,
        };
        let out_m = wall_m + 0.225 * self.width_m();
        // In a long wall the door stands a quarter of its length ahead.
        let along_m = match self.door() {
            DoorSide::Ahead | DoorSide::Behind => 0.0,
            DoorSide::Right | DoorSide::Left => 0.25 * self.length_m(),
        };
        let heading_rad = self.heading_deg().to_radians();
        Point::new(
            self.at.east_m + out_m * out_rad.sin() + along_m * heading_rad.sin(),
            self.at.north_m + out_m * out_rad.cos() + along_m * heading_rad.cos(),
        )
    }

    /// The coop turned about its middle so that the foot of its ramp points to a place.
    #[must_use]
    pub fn with_door_towards(&self, place: Point) -> Self {
        let bearing = |to: Point| (to.east_m - self.at.east_m).atan2(to.north_m - self.at.north_m).to_degrees();
        let turn_deg = bearing(place) - bearing(self.door_at());
        if !turn_deg.is_finite() || (place.east_m == self.at.east_m && place.north_m == self.at.north_m) {
            return self.clone();
        }
        Self { heading_deg: Some((self.heading_deg() + turn_deg).rem_euclid(360.0)), ..self.clone() }
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
