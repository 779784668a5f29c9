//! What the keeper asks of a season of moves.

use super::Rest;
use crate::defaults;

/// What the keeper asks of a season, as far as it is stated.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Season {
    /// Id of the rule by which birds are counted against ground; `own` counts by the keeper's own figure.
    pub birds_rule: Option<String>,
    /// The least ground a bird by the keeper's own rule, square metres.
    pub min_m2_per_bird: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Season {
    /// Id of the rule for birds, stated or assumed.
    pub fn birds_rule(&self) -> &str {
        self.birds_rule.as_deref().unwrap_or(defaults::BIRDS_RULE)
    }

    /// The keeper's own least ground a bird, stated or assumed, square metres.
    pub fn min_m2_per_bird(&self) -> f64 {
        self.min_m2_per_bird.unwrap_or(defaults::MIN_M2_PER_BIRD)
    }
}
