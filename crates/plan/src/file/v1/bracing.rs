//! What the keeper says of the ground for the sake of the braces, in version 1.

use crate::defaults::bracing as defaults;
use crate::file::mirror::mirrored;
use crate::model::{Point, SoilTable, SoilWord};

mirrored! {
    /// A class of a named table.
    SoilClass {
        /// The table: `tm_5_818_1` (American words), `bs_8004` (British words) or `em_1110_2_2504` (sands).
        table: SoilTable,
        /// Its word, one of the table's own.
        name: SoilWord,
    }

    /// The keeper's own pull: a spring scale on a spike until it leaned; `pull_n` or `pull_kg` is needed.
    PullTest {
        /// Height of the pull above the ground, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::PULL_HEIGHT_M))]
        height_m: Option<f64>,
        /// The pull at which it leaned, newtons.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pull_n: Option<f64>,
        /// The same in kilograms of pull; counts where no newtons are stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pull_kg: Option<f64>,
        /// Length of the spike in the ground, metres; left out, that of the store's first net.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        spike_length_m: Option<f64>,
        /// Its diameter, metres; left out, that of the store's first net.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        spike_diameter_m: Option<f64>,
        /// Spikes under the post that was pulled; left out, those of the store's first net.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        spikes: Option<u32>,
        /// Whether the ground was wet then.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::SEEN_WET))]
        wet: Option<bool>,
    }

    /// A corner without a brace that stood or leaned.
    CornerSeen {
        /// Id of the run that it was of, which may be gone since.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        run: Option<String>,
        /// Where.
        at: Point,
        /// Whether it stood; else it leaned.
        stood: bool,
        /// How far the line turned there, degrees; left out, as a run turns there now.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        turn_deg: Option<f64>,
        /// Whether the ground was wet then.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::SEEN_WET))]
        wet: Option<bool>,
    }
}
