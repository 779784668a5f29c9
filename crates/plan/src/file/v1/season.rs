//! What the keeper asks of a season, in version 1.

use crate::defaults;
use crate::file::mirror::mirrored;

mirrored! {
    /// What the keeper asks of a season of moves.
    Season {
        /// Id of the rule by which birds are counted against ground; `own` counts by `min_m2_per_bird`.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::BIRDS_RULE))]
        birds_rule: Option<String>,
        /// The least ground a bird by the keeper's own rule, square metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::MIN_M2_PER_BIRD))]
        min_m2_per_bird: Option<f64>,
    }
}
