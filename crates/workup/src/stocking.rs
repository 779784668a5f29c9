//! How many birds a piece of ground carries, by a rule that the keeper chooses.
//!
//! A rule is a figure of ground a bird; birds are counted whole, rounded down. The rules of several places stand side
//! by side because they differ by a factor of fifty: none of them is the right one, and each has conditions that no
//! map shows (housing, access, cover, records). Sources: docs/sources.md, husbandry 3.

use geometry::MEET_M;
use plan::Plan;

/// Square metres in a square foot, exactly.
const M2_PER_FT2: f64 = 0.3048 * 0.3048;
/// Square metres in a hectare.
const M2_PER_HA: f64 = 10_000.0;

/// One rule of ground a bird.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StockingRule {
    /// A name that stays, as the plan states it.
    pub id: &'static str,
    /// The least ground a bird, square metres.
    pub m2_per_bird: f64,
    /// Where it stands.
    pub source: &'static str,
}

/// Id of the keeper's own rule, whose figure the plan states.
pub const OWN: &str = "own";

/// The rules beside the keeper's own.
pub const RULES: [StockingRule; 13] = [
    rule(
        "eu_free_range_rotated",
        2.5,
        "Regulation (EC) 589/2008, Annex II 1(c): each paddock, with 10 m² a hen in all",
    ),
    rule("eu_free_range", 4.0, "Regulation (EC) 589/2008, Annex II 1(c)"),
    rule("eu_organic_layer", 4.0, "Regulation (EU) 2020/464, Annex I Part IV (from memory)"),
    rule("eu_organic_table_mobile", 2.5, "Regulation (EU) 2020/464, Annex I Part IV (from memory)"),
    rule("eu_organic_duck", 4.5, "Regulation (EU) 2020/464, Annex I Part IV 8"),
    rule("eu_organic_turkey", 10.0, "Regulation (EU) 2020/464, Annex I Part IV (from memory)"),
    rule("eu_organic_goose", 15.0, "Regulation (EU) 2020/464, Annex I Part IV (from memory)"),
    rule("eu_free_range_table", 1.0, "Regulation (EC) 543/2008, Annex V (d) (from memory)"),
    rule("eu_traditional_table", 2.0, "Regulation (EC) 543/2008, Annex V (e) (from memory)"),
    rule("au_label", M2_PER_HA / 10_000.0, "Free Range Egg Labelling Information Standard 2017, sections 7 to 9"),
    rule("au_code", M2_PER_HA / 1_500.0, "Model Code of Practice, Domestic Poultry, 4th edition, 2002 (from memory)"),
    rule("nz_code", M2_PER_HA / 2_500.0, "layer hen welfare code, as quoted"),
    rule("us_organic_layer", 2.0 * M2_PER_FT2, "7 CFR 205.241, hens of 4.5 lb (from memory)"),
];

const fn rule(id: &'static str, m2_per_bird: f64, source: &'static str) -> StockingRule {
    StockingRule { id, m2_per_bird, source }
}

/// The rule that the plan counts birds by; `None` where it states one that is not known or no ground a bird.
pub fn chosen(plan: &Plan) -> Option<StockingRule> {
    let id = plan.season.birds_rule();
    if id == OWN {
        let m2_per_bird = plan.season.min_m2_per_bird();
        let source =
            if plan.season.min_m2_per_bird.is_some() { "the keeper" } else { plan::defaults::MIN_M2_PER_BIRD_SOURCE };
        return (m2_per_bird.is_finite() && m2_per_bird > 0.0).then_some(rule(OWN, m2_per_bird, source));
    }
    RULES.into_iter().find(|rule| rule.id == id)
}

/// Square metres for each of so many birds; `None` of none.
pub fn each_m2(ground_m2: f64, birds: u32) -> Option<f64> {
    (birds > 0).then(|| ground_m2 / f64::from(birds))
}

impl StockingRule {
    /// Whole birds on that much ground, square metres; what is short by rounding alone counts.
    pub fn birds(&self, area_m2: f64) -> u32 {
        ((area_m2 + MEET_M * MEET_M) / self.m2_per_bird).floor().max(0.0) as u32
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn birds(id: &str, area_m2: f64) -> u32 {
        let mut plan = Plan::default();
        plan.season.birds_rule = Some(id.to_owned());
        chosen(&plan).map_or(0, |rule| rule.birds(area_m2))
    }

    #[test]
    fn whole_birds_on_625_square_metres() {
        // docs/sources.md, husbandry 3, the arithmetic beside its table.
        for (id, expected) in [
            ("eu_free_range", 156),
            ("eu_free_range_rotated", 250),
            ("au_label", 625),
            ("au_code", 93),
            ("us_organic_layer", 3_363),
            ("eu_organic_duck", 138),
            ("eu_organic_turkey", 62),
            ("eu_organic_goose", 41),
            ("nobody's", 0),
        ] {
            assert_eq!(birds(id, 625.0), expected, "{id}");
        }
    }

    #[test]
    fn the_keepers_own_figure_counts_and_none_without_ground() {
        let mut plan = Plan::default();
        assert_eq!(chosen(&plan).map(|rule| rule.birds(625.0)), Some(250));
        plan.season.min_m2_per_bird = Some(10.0);
        assert_eq!(chosen(&plan).map(|rule| rule.birds(629.9)), Some(62));
        for nothing in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            plan.season.min_m2_per_bird = Some(nothing);
            assert_eq!(chosen(&plan), None, "{nothing}");
        }
    }
}
