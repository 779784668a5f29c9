//! Figures as a keeper types them, read back into SI units.
//!
//! The counterpart of [`crate::figures`]: a bare number is in the unit that is shown, and units of the other
//! system are understood too. Decimals may stand after a point or a comma, thousands apart by a space or either; the
//! language's own mark of thousands that may be either is refused with both readings, never guessed. The range is the
//! caller's. Factors are exact by definition (international yard and pound, 1959).

use crate::figures::{Units, Words};
use crate::message::Language;
use crate::texts::Field;

/// What a figure measures, and so in which units it is shown and typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Measure {
    /// A length on the ground in metres; shown in m or ft.
    Length,
    /// A length of a hand or so in metres; shown in cm or in.
    Small,
    /// A thickness in metres; shown in mm or in.
    Thin,
    /// Pieces.
    Count,
    /// A number without a unit.
    Number,
    /// Kilovolts.
    Kilovolts,
    /// Joules.
    Joules,
    /// Ohms.
    Ohms,
    /// Ohm metres.
    OhmMetres,
    /// Degrees.
    Degrees,
    /// A share, 0.1 for 10 %.
    Percent,
    /// A mass in kilograms; shown in kg or lb.
    Mass,
    /// An area of a room or so in square metres; shown in m² or ft².
    Area,
    /// Minutes.
    Minutes,
    /// Seconds.
    Seconds,
    /// A speed on foot in metres a second; shown in km/h or mph.
    Speed,
    /// A wind in metres a second; shown in km/h or mph.
    Wind,
}

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

/// A unit: its names, the first of which is shown, and what one of it is, `times / per` of what is kept.
struct Unit {
    names: &'static [&'static str],
    times: f64,
    per: f64,
}

const fn unit(names: &'static [&'static str], times: f64, per: f64) -> Unit {
    Unit { names, times, per }
}

const METRE: Unit = unit(&["m", "metre", "metres", "meter", "meters"], 1.0, 1.0);
const CENTIMETRE: Unit =
    unit(&["cm", "centimetre", "centimetres", "centimeter", "centimeters", "zentimeter"], 1.0, 100.0);
const MILLIMETRE: Unit = unit(&["mm", "millimetre", "millimetres", "millimeter", "millimeters"], 1.0, 1000.0);
const FOOT: Unit = unit(&["ft", "'", "foot", "feet", "fuß", "fuss"], 3048.0, 10_000.0);
const INCH: Unit = unit(&["in", "\"", "inch", "inches", "zoll"], 254.0, 10_000.0);
const YARD: Unit = unit(&["yd", "yard", "yards"], 9144.0, 10_000.0);
const KILOGRAM: Unit = unit(&["kg", "kilo", "kilos", "kilogram", "kilograms", "kilogramm"], 1.0, 1.0);
const GRAM: Unit = unit(&["g", "gram", "grams", "gramm"], 1.0, 1000.0);
const POUND: Unit = unit(&["lb", "lbs", "pound", "pounds", "pfund"], 45_359_237.0, 100_000_000.0);
const OUNCE: Unit = unit(&["oz", "ounce", "ounces"], 45_359_237.0, 1_600_000_000.0);

static LENGTHS: [Unit; 6] = [METRE, CENTIMETRE, MILLIMETRE, FOOT, INCH, YARD];
static MASSES: [Unit; 4] = [KILOGRAM, GRAM, POUND, OUNCE];
static AREAS: [Unit; 2] = [
    unit(&["m²", "sq m", "square metre", "square metres", "qm"], 1.0, 1.0),
    unit(&["ft²", "sq ft", "square foot", "square feet"], 9_290_304.0, 100_000_000.0),
];
static MINUTES: [Unit; 2] = [
    unit(&["min", "minute", "minutes", "minuten"], 1.0, 1.0),
    unit(&["s", "sec", "second", "seconds", "sekunde", "sekunden"], 1.0, 60.0),
];
static SECONDS: [Unit; 2] = [
    unit(&["s", "sec", "second", "seconds", "sekunde", "sekunden"], 1.0, 1.0),
    unit(&["min", "minute", "minutes", "minuten"], 60.0, 1.0),
];
static SPEEDS: [Unit; 3] = [
    unit(&["km/h", "kmh", "kph"], 10.0, 36.0),
    unit(&["mph"], 44_704.0, 100_000.0),
    unit(&["m/s", "metres a second"], 1.0, 1.0),
];
static KILOVOLTS: [Unit; 2] =
    [unit(&["kv", "kilovolt", "kilovolts"], 1.0, 1.0), unit(&["v", "volt", "volts"], 1.0, 1000.0)];
static JOULES: [Unit; 2] =
    [unit(&["j", "joule", "joules"], 1.0, 1.0), unit(&["mj", "millijoule", "millijoules"], 1.0, 1000.0)];
static OHMS: [Unit; 2] = [unit(&["ω", "ohm", "ohms"], 1.0, 1.0), unit(&["kω", "kohm"], 1000.0, 1.0)];
static OHM_METRES: [Unit; 1] = [unit(&["ωm", "ω m", "ohm m", "ohm metre", "ohm metres", "ω·m"], 1.0, 1.0)];
static DEGREES: [Unit; 1] = [unit(&["°", "deg", "degree", "degrees", "grad"], 1.0, 1.0)];
static PERCENT: [Unit; 1] = [unit(&["%", "percent", "per cent", "pct", "prozent"], 1.0, 100.0)];

/// Units that may follow one another, and how many of the second make one of the first.
static PAIRS: [(&str, &str, f64); 3] = [("ft", "in", 12.0), ("m", "cm", 100.0), ("lb", "oz", 16.0)];

impl Measure {
    fn units(self) -> &'static [Unit] {
        match self {
            Self::Length | Self::Small | Self::Thin => &LENGTHS,
            Self::Count | Self::Number => &[],
            Self::Kilovolts => &KILOVOLTS,
            Self::Joules => &JOULES,
            Self::Ohms => &OHMS,
            Self::OhmMetres => &OHM_METRES,
            Self::Degrees => &DEGREES,
            Self::Percent => &PERCENT,
            Self::Mass => &MASSES,
            Self::Area => &AREAS,
            Self::Minutes => &MINUTES,
            Self::Seconds => &SECONDS,
            Self::Speed | Self::Wind => &SPEEDS,
        }
    }

    /// The unit that it is shown in, as it is written, what one of it is, and how many decimals are shown.
    fn shown(self, units: Units) -> (&'static str, f64, f64, usize) {
        let of = |unit: &Unit, decimals| (unit.names[0], unit.times, unit.per, decimals);
        let feet = units == Units::Feet;
        match self {
            Self::Length => of(if feet { &FOOT } else { &METRE }, 2),
            Self::Small if feet => of(&INCH, 2),
            Self::Small => of(&CENTIMETRE, 1),
            Self::Thin if feet => of(&INCH, 3),
            Self::Thin => of(&MILLIMETRE, 1),
            Self::Count => ("", 1.0, 1.0, 0),
            Self::Number => ("", 1.0, 1.0, 3),
            Self::Kilovolts => ("kV", 1.0, 1.0, 2),
            Self::Joules => ("J", 1.0, 1.0, 3),
            Self::Ohms => ("Ω", 1.0, 1.0, 1),
            Self::OhmMetres => ("Ω m", 1.0, 1.0, 1),
            Self::Degrees => ("°", 1.0, 1.0, 1),
            Self::Percent => ("%", 1.0, 100.0, 1),
            Self::Mass => of(if feet { &POUND } else { &KILOGRAM }, 2),
            Self::Area => of(&AREAS[usize::from(feet)], 2),
            Self::Minutes => of(&MINUTES[0], 2),
            Self::Seconds => of(&SECONDS[0], 1),
            Self::Speed => of(&SPEEDS[usize::from(feet)], 2),
            Self::Wind => of(&SPEEDS[usize::from(feet)], 0),
        }
    }

    /// The names of its units, as they are written.
    fn known(self) -> Vec<&'static str> {
        match self {
            Self::Length | Self::Small | Self::Thin => vec!["m", "cm", "mm", "ft", "in"],
            Self::Count | Self::Number => Vec::new(),
            Self::Kilovolts => vec!["kV", "V"],
            Self::Joules => vec!["J", "mJ"],
            Self::Ohms => vec!["Ω", "ohm"],
            Self::OhmMetres => vec!["Ω m", "ohm m"],
            Self::Degrees => vec!["°"],
            Self::Percent => vec!["%"],
            Self::Mass => vec!["kg", "g", "lb", "oz"],
            Self::Area => vec!["m²", "ft²"],
            Self::Minutes | Self::Seconds => vec!["min", "s"],
            Self::Speed | Self::Wind => vec!["km/h", "mph", "m/s"],
        }
    }

    /// Something that might be typed, in what is kept.
    fn usual(self) -> f64 {
        match self {
            Self::Length => 50.0,
            Self::Small => 0.5,
            Self::Thin => 0.012,
            Self::Count => 3.0,
            Self::Number => 1.5,
            Self::Kilovolts | Self::Mass => 7.0,
            Self::Joules => 1.0,
            Self::Area => 4.0,
            Self::Minutes => 2.0,
            Self::Seconds | Self::Wind => 15.0,
            Self::Speed => 1.11,
            Self::Ohms => 500.0,
            Self::OhmMetres => 100.0,
            Self::Degrees => 90.0,
            Self::Percent => 0.1,
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

/// One text being read.
struct Reading<'a> {
    words: Words,
    measure: Measure,
    range: Range,
    text: &'a str,
}

impl Reading<'_> {
    fn value(&self) -> Result<f64, Typed> {
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

    fn within(&self, value: f64) -> Result<f64, Typed> {
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
