//! What the keeper says of the ground for the sake of the braces: by foot, by a table's class, by pulling, by what stood.

use serde::{Deserialize, Serialize};

use super::{Point, Rest};
use crate::defaults::bracing as defaults;

/// Newtons that a kilogram weighs (standard gravity), for a spring scale.
const NEWTONS_PER_KILOGRAM: f64 = 9.806_65;

/// How a spike goes in under the foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ByFoot {
    /// It pushes in easily.
    PushesIn,
    /// It goes in with the whole weight.
    Firm,
    /// It needs a hole made with a bar.
    NeedsBar,
    /// It does not go in: stone or frost. Nothing in such ground can be relied on.
    Refuses,
}

/// A published table of soil classes. One word means different ground in different tables.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
pub enum SoilTable {
    /// Clays by the American words: US Army TM 5-818-1, table 2-2.
    #[serde(rename = "tm_5_818_1")]
    American,
    /// Clays by the British words: the limits of BS 8004, as practising engineers quote them.
    #[serde(rename = "bs_8004")]
    British,
    /// Sands: USACE EM 1110-2-2504, table 3-1, after Teng.
    #[serde(rename = "em_1110_2_2504")]
    Sands,
}

/// A class's word.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum SoilWord {
    /// Very soft.
    VerySoft,
    /// Soft.
    Soft,
    /// Between soft and firm.
    SoftToFirm,
    /// Medium.
    Medium,
    /// Firm.
    Firm,
    /// Between firm and stiff.
    FirmToStiff,
    /// Stiff.
    Stiff,
    /// Very stiff.
    VeryStiff,
    /// Hard.
    Hard,
    /// Very loose.
    VeryLoose,
    /// Loose.
    Loose,
    /// Dense.
    Dense,
    /// Very dense.
    VeryDense,
}

/// A class of a named table.
#[derive(Clone, Debug, PartialEq)]
pub struct SoilClass {
    /// The table.
    pub table: SoilTable,
    /// Its word.
    pub name: SoilWord,
    /// Unknown keys.
    pub rest: Rest,
}

/// The keeper's own pull: a spring scale on a spike until it leaned.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PullTest {
    /// Height of the pull above the ground, metres.
    pub height_m: Option<f64>,
    /// The pull at which it leaned, newtons.
    pub pull_n: Option<f64>,
    /// The same as a scale in kilograms shows it; counts where no newtons are stated.
    pub pull_kg: Option<f64>,
    /// Length of the spike in the ground, metres.
    pub spike_length_m: Option<f64>,
    /// Its diameter, metres.
    pub spike_diameter_m: Option<f64>,
    /// Spikes under the post that was pulled.
    pub spikes: Option<u32>,
    /// Whether the ground was wet then.
    pub wet: Option<bool>,
    /// Unknown keys.
    pub rest: Rest,
}

impl PullTest {
    /// Height of the pull, stated or assumed, metres.
    pub fn height_m(&self) -> f64 {
        self.height_m.unwrap_or(defaults::PULL_HEIGHT_M)
    }

    /// The pull, newtons; `None` where none is stated.
    pub fn pull_n(&self) -> Option<f64> {
        self.pull_n.or(self.pull_kg.map(|kilograms| kilograms * NEWTONS_PER_KILOGRAM))
    }

    /// The pull, kilograms; `None` where none is stated.
    pub fn pull_kg(&self) -> Option<f64> {
        self.pull_kg.filter(|_| self.pull_n.is_none()).or(self.pull_n.map(|newtons| newtons / NEWTONS_PER_KILOGRAM))
    }

    /// Whether the ground was wet, stated or assumed.
    pub fn wet(&self) -> bool {
        self.wet.unwrap_or(defaults::SEEN_WET)
    }
}

/// A corner without a brace that stood or leaned.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CornerSeen {
    /// The run that it was of, which may be gone since.
    pub run: Option<String>,
    /// Where.
    pub at: Point,
    /// Whether it stood; else it leaned.
    pub stood: bool,
    /// How far the line turned there, degrees; left out, as the run turns there now.
    pub turn_deg: Option<f64>,
    /// Whether the ground was wet then.
    pub wet: Option<bool>,
    /// Unknown keys.
    pub rest: Rest,
}

impl CornerSeen {
    /// Whether the ground was wet, stated or assumed.
    pub fn wet(&self) -> bool {
        self.wet.unwrap_or(defaults::SEEN_WET)
    }
}
