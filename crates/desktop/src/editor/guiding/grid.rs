//! The grid that the hand is caught by.

use words::METRES_PER_FOOT;
use words::texts::Guides as Text;
use words::{Units, Words};

/// The grid that the hand is caught by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Grid {
    /// None.
    #[default]
    Off,
    /// Of one metre, or one foot.
    One,
    /// Of five.
    Five,
    /// Of ten.
    Ten,
}

impl Grid {
    /// All of them, as they are offered.
    pub const ALL: [Self; 4] = [Self::Off, Self::One, Self::Five, Self::Ten];

    /// Its step, metres.
    pub fn step_m(self, units: Units) -> Option<f64> {
        let unit_m = if units == Units::Feet { METRES_PER_FOOT } else { 1.0 };
        match self {
            Self::Off => None,
            Self::One => Some(unit_m),
            Self::Five => Some(5.0 * unit_m),
            Self::Ten => Some(10.0 * unit_m),
        }
    }

    /// What it is called.
    pub fn name(self, words: Words) -> String {
        self.step_m(words.units).map_or_else(|| words.text(Text::GridOff).to_owned(), |step_m| words.far(step_m))
    }
}
