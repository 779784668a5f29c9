//! One text read as a figure: its sign, its numbers with their separators, its units, its range.

use super::measure::Unit;
use super::{Measure, Range, Typed, plain, with_unit};
use crate::figures::Words;

/// Units that may follow one another, and how many of the second make one of the first.
static PAIRS: [(&str, &str, f64); 3] = [("ft", "in", 12.0), ("m", "cm", 100.0), ("lb", "oz", 16.0)];

/// One text being read.
pub(super) struct Reading<'a> {
    pub(super) words: Words,
    pub(super) measure: Measure,
    pub(super) range: Range,
    pub(super) text: &'a str,
}

impl Reading<'_> {
    pub(super) fn value(&self) -> Result<f64, Typed> {
        let text = levelled(self.text);
        if text.is_empty() {
            return Err(Typed::Empty { example: self.example() });
        }
        let (negative, text) = match text.strip_prefix('-') {
            Some(rest) => (true, rest),
            None => (false, text.strip_prefix('+').unwrap_or(&text)),
        };
        let mut parts = Vec::new();
        let mut rest = text.trim_start();
        while !rest.is_empty() {
            let (figures, after) = figures(rest);
            let end = after.find(|letter: char| letter.is_ascii_digit()).unwrap_or(after.len());
            let (name, after) = after.split_at(end);
            parts.push((self.number(figures)?, name.trim()));
            rest = after;
        }
        let value = match parts.as_slice() {
            [(number, "")] => {
                let (_, times, per, _) = self.measure.shown(self.words.units);
                number * times / per
            }
            &[(number, name)] => {
                let unit = self.unit(name)?;
                number * unit.times / unit.per
            }
            &[(first, name), (second, other)] => self.pair((first, name), (second, other))?,
            _ => return Err(self.no_number()),
        };
        Ok(if negative { -value } else { value })
    }

    /// Feet and inches, or the like.
    fn pair(&self, (first, name): (f64, &str), (second, other): (f64, &str)) -> Result<f64, Typed> {
        let large = self.unit(name)?;
        let pair = PAIRS.iter().find(|pair| pair.0 == large.names[0]).ok_or_else(|| self.no_number())?;
        // `12' 6` is feet and inches; of no other unit is the next left unsaid.
        let small = self.unit(if other.is_empty() && pair.0 == "ft" { "in" } else { other })?;
        if small.names[0] != pair.1 || second >= pair.2 || first.fract() > 0.0 {
            return Err(self.no_number());
        }
        Ok((first * pair.2 + second) * small.times / small.per)
    }

    fn unit(&self, name: &str) -> Result<&'static Unit, Typed> {
        let lower = name.trim_end_matches('.').to_lowercase();
        let found = self.measure.units().iter().find(|unit| unit.names.contains(&lower.as_str()));
        found.ok_or_else(|| {
            if name.chars().any(char::is_alphabetic) {
                let known = self.measure.known();
                Typed::UnknownUnit { unit: clipped(name), known, example: self.example() }
            } else {
                self.no_number()
            }
        })
    }

    /// The number that figures with their separators stand for.
    fn number(&self, figures: &str) -> Result<f64, Typed> {
        let count = |mark: char| figures.matches(mark).count();
        let (spaces, commas, points) = (count(' '), count(','), count('.'));
        let last = figures.rfind([',', '.']).and_then(|at| figures[at..].chars().next());
        let thousands = |whole: &str| {
            let mut groups = whole.split([' ', ',', '.']);
            let first = groups.next().unwrap_or_default();
            (1..=3).contains(&first.len()) && !first.starts_with('0') && groups.all(|group| group.len() == 3)
        };
        let decimal = match (spaces, commas, points) {
            (_, 1, 0) | (_, 0, 1) | (0, 1, 1) => last,
            (0, _, 1) if last == Some('.') => last,
            (0, 1, _) if last == Some(',') => last,
            (_, 0, 0) | (0, _, 0) | (0, 0, _) => None,
            _ => return Err(self.no_number()),
        };
        let (whole, fraction) = decimal.and_then(|mark| figures.rsplit_once(mark)).unwrap_or((figures, ""));
        if whole.contains([' ', ',', '.']) && !thousands(whole) {
            return Err(self.no_number());
        }
        let digits: String = whole.chars().filter(char::is_ascii_digit).collect();
        if (digits.is_empty() && fraction.is_empty()) || fraction.contains(' ') {
            return Err(self.no_number());
        }
        let language = self.words.language;
        let parts_thousands = decimal == Some(language.thousands_mark()) && spaces == 0 && commas + points == 1;
        if parts_thousands && fraction.len() == 3 && thousands(figures) {
            let (decimals, mark) = (fraction.trim_end_matches('0'), language.decimal_mark());
            let whole_too = if decimals.is_empty() { whole.to_owned() } else { format!("{whole}{mark}{decimals}") };
            return Err(Typed::Ambiguous {
                typed: clipped(self.text),
                whole: format!("{digits}{fraction}"),
                fraction: whole_too,
            });
        }
        format!("{digits}.{fraction}0").parse().map_err(|_| self.no_number())
    }

    pub(super) fn within(&self, value: f64) -> Result<f64, Typed> {
        let Range { least, most, zero } = self.range;
        if value == 0.0 {
            // Whatever its sign, it is nothing.
            return if zero { Ok(0.0) } else { Err(Typed::Zero { example: self.example() }) };
        }
        if value < 0.0 && least >= 0.0 {
            return Err(Typed::Negative);
        }
        // What a conversion loses; pieces are not converted.
        let slack = if self.measure == Measure::Count { 0.0 } else { 1e-10 * most.abs().max(least.abs()) };
        if value > most + slack {
            return Err(Typed::TooLarge { most: self.bound(most, f64::floor) });
        }
        if value < least - slack {
            return Err(Typed::TooSmall { least: self.bound(least, f64::ceil) });
        }
        if self.measure == Measure::Count && value.fract() != 0.0 {
            return Err(Typed::NotWhole {
                below: plain(self.words.language, value.floor().max(least), 0),
                above: plain(self.words.language, value.ceil().min(most), 0),
            });
        }
        Ok(value)
    }

    /// A bound as it is shown, rounded to the inside so that it can itself be typed.
    fn bound(&self, value: f64, to_inside: fn(f64) -> f64) -> String {
        let (unit, times, per, decimals) = self.measure.shown(self.words.units);
        let scale = 10_f64.powf(decimals as f64);
        let scaled = value * per / times * scale;
        // What the conversion itself lost is not rounded away.
        let near = scaled.round();
        let inside = if (scaled - near).abs() < 1e-11 * near.abs() { near } else { to_inside(scaled) };
        with_unit(&plain(self.words.language, inside / scale, decimals), unit)
    }

    fn example(&self) -> String {
        let usual = self.measure.usual().min(self.range.most).max(self.range.least);
        let (_, times, per, _) = self.measure.shown(self.words.units);
        // Whole in the unit that is shown, where there is room for that.
        let whole = (usual * per / times).round() * times / per;
        let example = if whole > 0.0 && (self.range.least..=self.range.most).contains(&whole) { whole } else { usual };
        let (figure, unit) = self.words.typed_parts(self.measure, example);
        with_unit(&figure, unit)
    }

    fn no_number(&self) -> Typed {
        Typed::NotANumber { typed: clipped(self.text), example: self.example() }
    }
}

/// The figures and separators that a text begins with, and what follows.
fn figures(text: &str) -> (&str, &str) {
    let bytes = text.as_bytes();
    let is_digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
    let mut end = 0;
    while end < bytes.len() {
        let part_of_it = match bytes[end] {
            b'0'..=b'9' | b',' | b'.' => true,
            b' ' => end > 0 && is_digit(end - 1) && is_digit(end + 1),
            _ => false,
        };
        if !part_of_it {
            break;
        }
        end += 1;
    }
    text.split_at(end)
}

/// A text with one kind of space, minus and prime.
fn levelled(text: &str) -> String {
    let mut level = String::with_capacity(text.len());
    for letter in text.trim().chars() {
        let letter = match letter {
            '−' | '–' | '—' => '-',
            '’' | '‘' | '′' | '`' | '´' => '\'',
            '“' | '”' | '″' | '„' => '"',
            'º' | '˚' => '°',
            other if other.is_whitespace() => ' ',
            other => other,
        };
        if letter != ' ' || !level.ends_with(' ') {
            level.push(letter);
        }
    }
    level.replace("''", "\"").replace("m2", "m²").replace("ft2", "ft²")
}

/// What was typed, short enough for one line.
fn clipped(text: &str) -> String {
    const MOST: usize = 18;
    if text.chars().count() <= MOST { text.to_owned() } else { text.chars().take(MOST - 1).chain(['…']).collect() }
}
