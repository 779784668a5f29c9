//! What a brace is made of, how long it takes to set, and what is carried for it: of one that is only offered, of one
//! that is stated, and of the store's own where a corner needs one and none is stated.

use plan::defaults::bracing as table;
use plan::{BraceKind, BraceRule, StatedBrace, Store};

use super::judging::GRAIN;

/// What a guy carries beside its pegs: the line itself. A brace post has its tie.
const ONE_LINE: u32 = 1;

/// What a brace is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kit {
    /// A guy, or a post of its own.
    pub kind: BraceKind,
    /// Pegs of a guy; 0 of a post.
    pub pegs: u32,
    /// Length of a peg or of the post in the ground, metres.
    pub length_m: f64,
    /// Whether an earth stake of the run is its first peg, so that it is carried once.
    pub earth: bool,
}

impl Kit {
    /// Of a brace as stated; of none the store's guy.
    pub fn of(rule: &BraceRule, brace: Option<&StatedBrace>) -> Self {
        match brace {
            Some(brace) if brace.kind == BraceKind::Post => {
                Self { kind: BraceKind::Post, pegs: 0, length_m: rule.post_length_m(), earth: false }
            }
            stated => Self {
                kind: BraceKind::Guy,
                pegs: stated.and_then(|brace| brace.pegs).unwrap_or(rule.pegs()).max(1),
                length_m: stated.and_then(|brace| brace.peg_length_m).unwrap_or(rule.stake_length_m()),
                earth: false,
            },
        }
    }

    /// The same where an earth stake stands at its stake's place; a post stays what it is.
    #[must_use]
    pub(crate) fn on_earth(self, earth: bool) -> Self {
        Self { earth: earth && self.kind == BraceKind::Guy, ..self }
    }

    /// Pegs that are carried for it beside the earth stake.
    pub fn own_pegs(&self) -> u32 {
        self.pegs - u32::from(self.earth).min(self.pegs)
    }

    /// Whether it is the one guy with the one stake of the store.
    pub fn is_plain(&self, rule: &BraceRule) -> bool {
        self.kind == BraceKind::Guy
            && !self.earth
            && self.pegs == 1
            && (self.length_m - rule.stake_length_m()).abs() <= GRAIN
    }

    /// Minutes to set it on soft ground by day, by the store's rates.
    pub fn minutes(&self, store: &Store) -> f64 {
        let rule = &store.brace;
        if self.kind == BraceKind::Post {
            return rule.post_minutes();
        }
        let steps = ((self.length_m - rule.stake_length_m()) / table::LONGER_PEG_STEP_M).max(0.0);
        store.rates.brace_minutes()
            + f64::from(self.pegs - 1) * rule.second_peg_minutes()
            + steps * rule.longer_peg_minutes() * f64::from(self.pegs)
    }

    /// How many times as long it takes as a brace of the rate table, in drawing as in setting (common practice, no source).
    pub(crate) fn share(&self, store: &Store) -> f64 {
        let plain = store.rates.brace_minutes();
        if plain > 0.0 { self.minutes(store) / plain } else { 1.0 }
    }

    /// Things to carry.
    pub fn carried(&self) -> u32 {
        if self.earth { ONE_LINE + self.own_pegs() } else { ONE_LINE + self.pegs.max(1) }
    }
}
