//! The keeper's rates with every hindrance in: minutes for each thing that hands do.
//!
//! Stony ground slows posts and braces, long grass the net and the walk, rain, dark and the ground today everything;
//! two people share everything. Factors multiply. Source: the plan's rate table.

use plan::{Ground, Rates};

/// Minutes of a practised keeper today.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Hands {
    pub(crate) unroll: f64,
    pub(crate) tread_post: f64,
    pub(crate) join: f64,
    /// How many times as long a brace takes in this ground, today.
    pub(crate) ground: f64,
    pub(crate) further_post: f64,
    pub(crate) power: f64,
    pub(crate) fold: f64,
    pub(crate) pull_post: f64,
    pub(crate) untie: f64,
    pub(crate) draw_brace: f64,
    /// A metre with empty hands.
    pub(crate) walk: f64,
    /// A metre with a roll in hand.
    pub(crate) carry: f64,
    /// How many times as long the first time takes.
    pub(crate) first_time: f64,
    pub(crate) rolls_a_trip: usize,
}

impl Hands {
    pub(crate) fn of(rates: &Rates, ground: &Ground) -> Self {
        let when = |holds: bool, factor: f64| if holds { factor } else { 1.0 };
        let all = ground.factors().minutes
            * when(rates.rain(), rates.rain_factor())
            * when(rates.dark(), rates.dark_factor())
            * when(rates.people() > 1, rates.two_people_factor());
        let ground = all * when(rates.stony(), rates.stony_factor());
        let grass = all * when(rates.long_grass(), rates.long_grass_factor());
        Self {
            unroll: rates.unroll_minutes() * grass,
            tread_post: rates.tread_post_s() / 60.0 * ground,
            join: rates.join_minutes() * all,
            ground,
            further_post: rates.further_post_minutes() * ground,
            power: rates.power_minutes() * all,
            fold: rates.fold_minutes() * grass,
            pull_post: rates.pull_post_s() / 60.0 * ground,
            untie: rates.untie_minutes() * all,
            draw_brace: rates.draw_brace_minutes() * ground,
            walk: grass / (60.0 * rates.walk_m_per_s()),
            carry: grass / (60.0 * rates.carry_m_per_s()),
            first_time: rates.first_time_factor(),
            rolls_a_trip: rates.rolls_a_trip() as usize,
        }
    }
}
