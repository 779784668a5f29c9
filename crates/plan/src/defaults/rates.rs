//! The rate table of setting up and taking down: practised hands, soft ground, short dry grass, daylight.
//!
//! Together they give the rule of thumb of 10 minutes a net within a fifth. Unless another source is named: common
//! practice, no source.

/// Where the seconds a post and the speed with a roll come from.
pub const POST_SOURCE: &str = "derived: 6 s to pull and 10 s to push a post, 45 m a minute along the net (husbandry 1.6); no source for the inputs";

/// Handling of one net while it is rolled out, minutes.
pub const UNROLL_MINUTES: f64 = 2.0;
/// Treading in one post, seconds; twice that in harder ground.
pub const TREAD_POST_S: f64 = 10.0;
/// Tying and clipping one join, minutes.
pub const JOIN_MINUTES: f64 = 1.0;
/// Setting one brace, minutes.
pub const BRACE_MINUTES: f64 = 2.0;
/// Setting one further post at a dip or a ridge and clipping the net to it, minutes.
pub const FURTHER_POST_MINUTES: f64 = 1.0;
/// Clipping on, switching on and reading, minutes.
pub const POWER_MINUTES: f64 = 3.0;
/// Folding and tying one net, minutes.
pub const FOLD_MINUTES: f64 = 2.0;
/// Pulling up one post, seconds.
pub const PULL_POST_S: f64 = 6.0;
/// Untying and unclipping one join, minutes.
pub const UNTIE_MINUTES: f64 = 0.5;
/// Drawing one brace, minutes.
pub const DRAW_BRACE_MINUTES: f64 = 1.0;
/// Walking with empty hands, metres a second: 4.5 km/h.
pub const WALK_M_PER_S: f64 = 1.25;
/// Walking with a roll in hand, metres a second: 45 m a minute.
pub const CARRY_M_PER_S: f64 = 0.75;
/// Rolls carried in one trip.
pub const ROLLS_A_TRIP: u32 = 1;
/// People at work.
pub const PEOPLE: u32 = 1;
/// Share of the minutes that two people need: they wait for one another now and then.
pub const TWO_PEOPLE_FACTOR: f64 = 0.6;
/// How many times as long the first time takes; one buyer's 90 minutes against 16 for 50 m in hard ground.
pub const FIRST_TIME_FACTOR: f64 = 4.0;
/// Stony ground, long grass, rain and dark where nothing is said.
pub const NO_HINDRANCE: bool = false;
/// Stony ground, on posts and braces.
pub const STONY_FACTOR: f64 = 2.0;
/// Long grass, on rolling out, folding and walking.
pub const LONG_GRASS_FACTOR: f64 = 2.0;
/// Rain, on everything.
pub const RAIN_FACTOR: f64 = 1.25;
/// The dark, on everything.
pub const DARK_FACTOR: f64 = 1.5;
