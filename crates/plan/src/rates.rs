//! How long the keeper's hands take: the rate table behind the set-up order, every rate editable.
//!
//! Minutes and seconds of a practised person on soft ground in short dry grass by day; the factors say what makes
//! it longer. Sources: docs/sources.md, husbandry 1.6; where none stands beside a rate, common practice, no source.

use crate::defaults::rates as defaults;
use crate::model::Rest;

/// The rate table of setting up and taking down.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Rates {
    /// Handling of one net while it is rolled out, beside the walk, minutes.
    pub unroll_minutes: Option<f64>,
    /// Treading in one post, seconds.
    pub tread_post_s: Option<f64>,
    /// Tying and clipping one join, minutes.
    pub join_minutes: Option<f64>,
    /// Setting one brace, minutes.
    pub brace_minutes: Option<f64>,
    /// Setting one further post at a dip or a ridge, beside the walk, minutes.
    pub further_post_minutes: Option<f64>,
    /// Clipping on the energizer, switching on and reading at the far end, beside the walk, minutes.
    pub power_minutes: Option<f64>,
    /// Folding and tying one net, beside the walk, minutes.
    pub fold_minutes: Option<f64>,
    /// Pulling up one post, seconds.
    pub pull_post_s: Option<f64>,
    /// Untying and unclipping one join, minutes.
    pub untie_minutes: Option<f64>,
    /// Drawing one brace, minutes.
    pub draw_brace_minutes: Option<f64>,
    /// Walking with empty hands, metres a second.
    pub walk_m_per_s: Option<f64>,
    /// Walking with a roll in hand, metres a second.
    pub carry_m_per_s: Option<f64>,
    /// Rolls carried in one trip: 1 or 2.
    pub rolls_a_trip: Option<u32>,
    /// People at work: 1 or 2.
    pub people: Option<u32>,
    /// Share of the minutes that two people need.
    pub two_people_factor: Option<f64>,
    /// How many times as long the first time takes.
    pub first_time_factor: Option<f64>,
    /// Whether the ground is stony.
    pub stony: Option<bool>,
    /// Whether the grass is long.
    pub long_grass: Option<bool>,
    /// Whether it rains.
    pub rain: Option<bool>,
    /// Whether it is dark.
    pub dark: Option<bool>,
    /// How many times as long a post or a brace takes in stony ground.
    pub stony_factor: Option<f64>,
    /// How many times as long rolling out, folding and walking take in long grass.
    pub long_grass_factor: Option<f64>,
    /// How many times as long everything takes in the rain.
    pub rain_factor: Option<f64>,
    /// How many times as long everything takes in the dark.
    pub dark_factor: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

macro_rules! stated_or_assumed {
    ($($(#[$meta:meta])* $name:ident: $type:ty = $constant:ident;)*) => {$(
        $(#[$meta])*
        pub fn $name(&self) -> $type {
            self.$name.unwrap_or(defaults::$constant)
        }
    )*};
}

impl Rates {
    stated_or_assumed! {
        /// Handling of one net while it is rolled out, stated or assumed, minutes.
        unroll_minutes: f64 = UNROLL_MINUTES;
        /// Treading in one post, stated or assumed, seconds.
        tread_post_s: f64 = TREAD_POST_S;
        /// Tying and clipping one join, stated or assumed, minutes.
        join_minutes: f64 = JOIN_MINUTES;
        /// Setting one brace, stated or assumed, minutes.
        brace_minutes: f64 = BRACE_MINUTES;
        /// Setting one further post, stated or assumed, minutes.
        further_post_minutes: f64 = FURTHER_POST_MINUTES;
        /// Power and the far reading, stated or assumed, minutes.
        power_minutes: f64 = POWER_MINUTES;
        /// Folding and tying one net, stated or assumed, minutes.
        fold_minutes: f64 = FOLD_MINUTES;
        /// Pulling up one post, stated or assumed, seconds.
        pull_post_s: f64 = PULL_POST_S;
        /// Untying one join, stated or assumed, minutes.
        untie_minutes: f64 = UNTIE_MINUTES;
        /// Drawing one brace, stated or assumed, minutes.
        draw_brace_minutes: f64 = DRAW_BRACE_MINUTES;
        /// Walking with empty hands, stated or assumed, metres a second.
        walk_m_per_s: f64 = WALK_M_PER_S;
        /// Walking with a roll in hand, stated or assumed, metres a second.
        carry_m_per_s: f64 = CARRY_M_PER_S;
        /// Rolls carried in one trip, stated or assumed.
        rolls_a_trip: u32 = ROLLS_A_TRIP;
        /// People at work, stated or assumed.
        people: u32 = PEOPLE;
        /// Share of the minutes that two people need, stated or assumed.
        two_people_factor: f64 = TWO_PEOPLE_FACTOR;
        /// How many times as long the first time takes, stated or assumed.
        first_time_factor: f64 = FIRST_TIME_FACTOR;
        /// Whether the ground is stony, stated or assumed.
        stony: bool = NO_HINDRANCE;
        /// Whether the grass is long, stated or assumed.
        long_grass: bool = NO_HINDRANCE;
        /// Whether it rains, stated or assumed.
        rain: bool = NO_HINDRANCE;
        /// Whether it is dark, stated or assumed.
        dark: bool = NO_HINDRANCE;
        /// The factor of stony ground, stated or assumed.
        stony_factor: f64 = STONY_FACTOR;
        /// The factor of long grass, stated or assumed.
        long_grass_factor: f64 = LONG_GRASS_FACTOR;
        /// The factor of rain, stated or assumed.
        rain_factor: f64 = RAIN_FACTOR;
        /// The factor of the dark, stated or assumed.
        dark_factor: f64 = DARK_FACTOR;
    }

    /// Whether the keeper stated any rate or condition.
    pub fn stated(&self) -> bool {
        let keys_of_others = Self { rest: self.rest.clone(), ..Self::default() };
        *self != keys_of_others
    }
}
