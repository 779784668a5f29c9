//! Walls, shade, damp ground, words on the map and the picture beneath it, in version 1.

use crate::defaults;
use crate::file::mirror::mirrored;
use crate::model::{LabelSize, Point, TapeLetter, WallKind, World};

mirrored! {
    /// A wall, a hedge or a permanent fence, which may serve as a side of a run.
    Wall {
        /// Its name.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        name: String,
        /// What it is.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = WallKind::Wall))]
        kind: Option<WallKind>,
        /// Its path.
        #[serde(default)]
        path: Vec<Point>,
        /// Whether it holds birds, so that it may stand in for a side.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = false))]
        holds_birds: Option<bool>,
        /// Whether foxes do not pass it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        stops_foxes: Option<bool>,
        /// Whether it is of metal.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        metal: Option<bool>,
        /// Whether it is fed by an energizer.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        energised: Option<bool>,
        /// Whose it is, such as `own` or `neighbour`.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        owner: Option<String>,
        /// Whether the map leaves it out; it counts all the same, and paper shows it.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        hidden: bool,
        /// Whether the hand on the map leaves it where it is.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        locked: bool,
    }

    /// Shade: trees or a roof. It is drawn; no rule hangs on it.
    Shade {
        /// Its name.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        name: String,
        /// Its outline.
        outline: Vec<Point>,
        /// Whether the map leaves it out; paper shows it.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        hidden: bool,
        /// Whether the hand on the map leaves it where it is.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        locked: bool,
    }

    /// Damp ground, where an earth stake earths best.
    Damp {
        /// Its name.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        name: String,
        /// Its outline.
        outline: Vec<Point>,
        /// Resistivity of its soil, ohm metres; left out, the ground's as after rain.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        resistivity_ohm_m: Option<f64>,
        /// Whether the map leaves it out; it counts all the same, and paper shows it.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        hidden: bool,
        /// Whether the hand on the map leaves it where it is.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        locked: bool,
    }

    /// Words on the map.
    Label {
        /// Where their middle is.
        at: Point,
        /// What they say.
        text: String,
        /// How large they are.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = LabelSize::Small))]
        size: Option<LabelSize>,
        /// Whether the map leaves them out; paper shows them.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        hidden: bool,
        /// Whether the hand on the map leaves them where they are.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        locked: bool,
    }

    /// A place that is found again on the ground, from which corners are taped out.
    TapePoint {
        /// Its name.
        #[serde(default)]
        name: String,
        /// Where it is.
        at: Point,
        /// Its letter on the map and on paper, which stays its own: only those with one are taped from, of two with the same the first. Where no place has one, the first two that lie apart are P and Q.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        letter: Option<TapeLetter>,
    }

    /// A picture beneath the map, PNG or JPEG.
    Underlay {
        /// Where its file lies, from the folder of the plan's, with `/` between folders.
        path: String,
        /// SHA-256 of its bytes when it was brought in, hexadecimal; left out, nothing is compared.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        sha256: String,
        /// Its width and height, pixels.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        size_px: Option<[u32; 2]>,
        /// Where it lies, in the six lines of a world file and the plan's metres: east and north of a step to the right, of a step down, and of the middle of the upper left pixel. Left out, a tenth of a metre a pixel from the origin.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        world_m: Option<World>,
        /// How much of it is seen over the paper, 0 to 1.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::UNDERLAY_OPACITY))]
        opacity: Option<f64>,
        /// Whether the map leaves it out.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        hidden: bool,
        /// Whether it lies by eye: where it lies was taken from the view, and nobody said how large it is.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        by_eye: bool,
        /// Whether it is kept from being moved.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        locked: bool,
    }
}
