//! Figures as a keeper types them, read back into SI units.
//!
//! The counterpart of [`crate::figures`]: a bare number is in the unit that is shown, and units of the other
//! system are understood too. Decimals may stand after a point or a comma, thousands apart by a space or either; the
//! language's own mark of thousands that may be either is refused with both readings, never guessed. The range is the
//! caller's.

mod measure;
mod reading;

use crate::figures::Words;
use crate::message::Language;
use crate::texts::Field;

pub use measure::Measure;
use reading::Reading;

/// What may be typed, in the unit that is kept (metres, kilograms, a share, kV and so on).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// The least.
    pub least: f64,
    /// The most.
    pub most: f64,
    /// Whether nothing at all is allowed.
    pub zero: bool,
}

impl Range {
    /// More than nothing, up to that.
    pub const fn up_to(most: f64) -> Self {
        Self { least: 0.0, most, zero: false }
    }

    /// Nothing, or up to that.
    pub const fn zero_to(most: f64) -> Self {
        Self { least: 0.0, most, zero: true }
    }

    /// From one to the other.
    pub const fn between(least: f64, most: f64) -> Self {
        Self { least, most, zero: least <= 0.0 }
    }
}

/// Why typed words cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Typed {
    /// Nothing was typed.
    Empty {
        /// What could be.
        example: String,
    },
    /// No number.
    NotANumber {
        /// What was typed.
        typed: String,
        /// What could be.
        example: String,
    },
    /// Below nothing where that makes no sense.
    Negative,
    /// Nothing where something is needed.
    Zero {
        /// What could be typed.
        example: String,
    },
    /// Below the range.
    TooSmall {
        /// The least, as it is shown.
        least: String,
    },
    /// Above the range.
    TooLarge {
        /// The most, as it is shown.
        most: String,
    },
    /// A part of a piece.
    NotWhole {
        /// The whole number below.
        below: String,
        /// The whole number above.
        above: String,
    },
    /// A unit that does not measure this.
    UnknownUnit {
        /// What was typed.
        unit: String,
        /// The units that do; empty where none does.
        known: Vec<&'static str>,
        /// What could be typed.
        example: String,
    },
    /// A mark that may part thousands or decimals.
    Ambiguous {
        /// What was typed.
        typed: String,
        /// It with thousands.
        whole: String,
        /// It with decimals.
        fraction: String,
    },
}

impl Typed {
    /// One sentence: what is wrong, and what to type.
    pub fn sentence(&self, words: Words) -> String {
        match self {
            Self::Empty { example } => words.say(Field::Empty, &[("example", example)]),
            Self::NotANumber { typed, example } => {
                words.say(Field::NotANumber, &[("typed", typed), ("example", example)])
            }
            Self::Negative => words.text(Field::Negative).to_owned(),
            Self::Zero { example } => words.say(Field::Zero, &[("example", example)]),
            Self::TooSmall { least } => words.say(Field::TooSmall, &[("least", least)]),
            Self::TooLarge { most } => words.say(Field::TooLarge, &[("most", most)]),
            Self::NotWhole { below, above } => words.say(Field::NotWhole, &[("below", below), ("above", above)]),
            Self::UnknownUnit { unit, known, example } => match known.split_last() {
                None => words.say(Field::NoUnit, &[("unit", unit), ("example", example)]),
                Some((only, [])) => words.say(Field::UnknownUnit, &[("unit", unit), ("known", only)]),
                Some((last, first)) => {
                    let known = words.say(Field::Or, &[("first", &first.join(", ")), ("last", last)]);
                    words.say(Field::UnknownUnit, &[("unit", unit), ("known", &known)])
                }
            },
            Self::Ambiguous { typed, whole, fraction } => {
                words.say(Field::Ambiguous, &[("typed", typed), ("whole", whole), ("fraction", fraction)])
            }
        }
    }
}

impl Words {
    /// A figure and its unit as a field shows them: no more decimals than it has, thousands not parted, so that
    /// what is shown can be typed.
    pub fn typed_parts(self, measure: Measure, value: f64) -> (String, &'static str) {
        let (unit, times, per, decimals) = measure.shown(self.units);
        (plain(self.language, value * per / times, decimals), unit)
    }

    /// What was typed, in what is kept: metres, kilograms, kilovolts, joules, ohms, degrees, a share.
    ///
    /// # Errors
    /// [`Typed`] where it is no figure of that measure, or out of range.
    pub fn read(self, measure: Measure, text: &str, range: Range) -> Result<f64, Typed> {
        let reading = Reading { words: self, measure, range, text: text.trim() };
        let value = reading.value()?;
        reading.within(value)
    }

    /// A length, metres.
    ///
    /// # Errors
    /// [`Typed`] where it is none, or out of range.
    pub fn read_length(self, text: &str, range: Range) -> Result<f64, Typed> {
        self.read(Measure::Length, text, range)
    }

    /// A whole number of pieces.
    ///
    /// # Errors
    /// [`Typed`] where it is none, or out of range.
    pub fn read_count(self, text: &str, range: Range) -> Result<u32, Typed> {
        let most = range.most.min(f64::from(u32::MAX));
        let value = self.read(Measure::Count, text, Range { least: range.least.max(0.0), most, zero: range.zero })?;
        Ok(value as u32)
    }
}

fn with_unit(figure: &str, unit: &str) -> String {
    match unit {
        "" => figure.to_owned(),
        "°" => format!("{figure}{unit}"),
        unit => format!("{figure} {unit}"),
    }
}

/// A number without parted thousands or needless noughts; a small one keeps two figures that count.
fn plain(language: Language, value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let size = value.abs();
    let needed = if size > 0.0 && size < 0.1 { (1.0 - size.log10().floor()).clamp(0.0, 9.0) as usize } else { 0 };
    let text = format!("{value:.*}", decimals.max(needed));
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" {
        return "0".to_owned();
    }
    text.replace('-', "−").replace('.', language.decimal_mark().encode_utf8(&mut [0; 4]))
}

#[cfg(test)]
mod tests;
