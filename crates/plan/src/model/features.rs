//! What else is drawn on the ground: walls, hedges and fences that may serve as a side, shade, damp ground, and words.

use serde::{Deserialize, Serialize};

use super::{Point, Rest};

/// What kind of a thing serves as a side.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum WallKind {
    /// A wall.
    #[default]
    Wall,
    /// A hedge.
    Hedge,
    /// A permanent fence.
    Fence,
}

/// A wall, a hedge or a permanent fence, which may serve as a side of a run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wall {
    /// Its name; empty where none is stated.
    pub name: String,
    /// What it is.
    pub kind: Option<WallKind>,
    /// Its path.
    pub path: Vec<Point>,
    /// Whether it holds birds, so that a run may end on it.
    pub holds_birds: Option<bool>,
    /// Whether foxes do not pass it.
    pub stops_foxes: Option<bool>,
    /// Whether it is of metal.
    pub metal: Option<bool>,
    /// Whether it is fed by an energizer.
    pub energised: Option<bool>,
    /// Whose it is.
    pub owner: Option<String>,
    /// Whether the map leaves it out; it counts all the same.
    pub hidden: bool,
    /// Whether the hand on the map leaves it where it is.
    pub locked: bool,
    /// Unknown keys.
    pub rest: Rest,
}

impl Wall {
    /// What it is, stated or assumed.
    pub fn kind(&self) -> WallKind {
        self.kind.unwrap_or_default()
    }

    /// Whether it is stated to hold birds; what is not stated to does not.
    pub fn holds_birds(&self) -> bool {
        self.holds_birds.unwrap_or(false)
    }
}

/// Shade: trees or a roof.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shade {
    /// Its name; empty where none is stated.
    pub name: String,
    /// Its outline.
    pub outline: Vec<Point>,
    /// Whether the map leaves it out.
    pub hidden: bool,
    /// Whether the hand on the map leaves it where it is.
    pub locked: bool,
    /// Unknown keys.
    pub rest: Rest,
}

/// Damp ground: a hollow, a ditch, the wet end of a meadow, where an earth stake earths best.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Damp {
    /// Its name; empty where none is stated.
    pub name: String,
    /// Its outline.
    pub outline: Vec<Point>,
    /// Resistivity of its soil, ohm metres, as on a day without a word for the ground.
    pub resistivity_ohm_m: Option<f64>,
    /// Whether the map leaves it out; it counts all the same.
    pub hidden: bool,
    /// Whether the hand on the map leaves it where it is.
    pub locked: bool,
    /// Unknown keys.
    pub rest: Rest,
}

/// What a known place that corners are taped from is called, on the map and on paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
pub enum TapeLetter {
    /// The first.
    P,
    /// The second.
    Q,
}

impl TapeLetter {
    /// Both, in their order.
    pub const ALL: [Self; 2] = [Self::P, Self::Q];

    /// As it is written.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::P => "P",
            Self::Q => "Q",
        }
    }
}

/// A place that is found again on the ground, from which corners are taped out: a gatepost, the corner of a shed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TapePoint {
    /// Its name; empty where none is stated.
    pub name: String,
    /// Where it is.
    pub at: Point,
    /// Its letter. Where none of the plan's has one, the first two that lie apart are P and Q; else those with none are
    /// not taped from.
    pub letter: Option<TapeLetter>,
    /// Unknown keys.
    pub rest: Rest,
}

/// How large words are written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum LabelSize {
    /// As the map's own words.
    #[default]
    Small,
    /// As a run's name, and larger.
    Large,
}

/// Words that the keeper wrote on the map.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Label {
    /// Where their middle is.
    pub at: Point,
    /// What they say.
    pub text: String,
    /// How large they are.
    pub size: Option<LabelSize>,
    /// Whether the map leaves them out.
    pub hidden: bool,
    /// Whether the hand on the map leaves them where they are.
    pub locked: bool,
    /// Unknown keys.
    pub rest: Rest,
}

impl Label {
    /// How large they are, stated or assumed.
    pub fn size(&self) -> LabelSize {
        self.size.unwrap_or_default()
    }
}
