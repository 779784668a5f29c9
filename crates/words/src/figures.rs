//! Figures as a keeper reads them: rounded, with their unit, a space between.
//!
//! Rounding happens here and nowhere else. The units are metric or feet; the plan and the report stay in
//! SI units whatever is chosen.

use crate::message::{Language, Message, fill};
use crate::texts::{Keys, Sources};

/// The units that figures are shown in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Units {
    /// Metres, hectares, kilograms.
    #[default]
    Metric,
    /// Feet, acres, pounds.
    Feet,
}

/// A language and units: the argument of everything that speaks to a keeper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Words {
    /// The language.
    pub language: Language,
    /// The units.
    pub units: Units,
}

/// Metres in a foot, exactly.
pub const METRES_PER_FOOT: f64 = 0.3048;
/// Feet in a yard, and inches in a foot.
const FEET_IN_A_YARD: f64 = 3.0;
const INCHES_IN_A_FOOT: f64 = 12.0;
/// Metres in a mile, exactly.
const METRES_PER_MILE: f64 = 1_609.344;
/// Square metres in an acre.
const SQUARE_METRES_PER_ACRE: f64 = 4_046.856_422_4;
/// Newtons that a kilogram weighs (standard gravity).
const NEWTONS_PER_KILOGRAM: f64 = 9.806_65;
/// Kilograms in a pound, exactly.
const KILOGRAMS_PER_POUND: f64 = 0.453_592_37;

impl Words {
    /// A post's number for the keeper, from 1; on a branch with that branch's number.
    pub fn post_number(self, post: usize, branch: Option<usize>) -> String {
        let number = (post + 1).to_string();
        let on = |branch: usize| {
            let branch = (branch + 1).to_string();
            self.say(crate::texts::Findings::OnBranch, &[("post", &number), ("branch", &branch)])
        };
        branch.map_or_else(|| number.clone(), on)
    }

    /// A text without places.
    pub fn text(self, message: impl Message) -> &'static str {
        message.wording(self.language)
    }

    /// A text with its places filled.
    pub fn say(self, message: impl Message, places: &[(&str, &str)]) -> String {
        fill(message.wording(self.language), places)
    }

    /// Where a figure comes from, which the rooms that compute name in English; one that no table knows stays so.
    pub fn source(self, english: &'static str) -> &'static str {
        let known = Sources::ALL.iter().find(|source| source.wording(Language::English) == english);
        known.map_or(english, |source| source.wording(self.language))
    }

    /// Keys held or pressed together, such as `Ctrl Shift S`, as the language's keyboards name them.
    pub fn keys(self, english: &str) -> String {
        let named = |key| {
            let known = Keys::ALL.iter().find(|known| known.wording(Language::English) == key);
            known.map_or(key, |known| known.wording(self.language))
        };
        english.split(' ').map(named).collect::<Vec<_>>().join(" ")
    }

    /// A place of the plan, metres east and north, as files write it: `[12.30, 4.50]`.
    pub fn place(self, east_m: f64, north_m: f64) -> String {
        let apart = if self.language.decimal_mark() == ',' { ';' } else { ',' };
        let figure = |metres: f64| self.marked(&format!("{metres:.2}"));
        format!("[{}{apart} {}]", figure(east_m), figure(north_m))
    }

    /// A number as files write it, with the language's own mark before its decimals.
    pub fn marked(self, number: &str) -> String {
        number.replace('.', self.language.decimal_mark().encode_utf8(&mut [0; 4]))
    }

    /// A name between quotation marks.
    pub fn quoted(self, name: &str) -> String {
        self.say(crate::texts::Errors::Quoted, &[("name", name)])
    }

    /// A number with that many decimals and thousands parted, by the marks of the language; never `-0`.
    pub fn number(self, value: f64, decimals: usize) -> String {
        if !value.is_finite() {
            return "–".to_owned();
        }
        let rounded = format!("{:.*}", decimals, value.abs());
        let negative = value < 0.0 && rounded.bytes().any(|byte| (b'1'..=b'9').contains(&byte));
        let (whole, fraction) = rounded.split_once('.').unwrap_or((&rounded, ""));
        let mut text = String::new();
        if negative {
            text.push('−');
        }
        for (index, digit) in whole.chars().enumerate() {
            if index > 0 && (whole.len() - index) % 3 == 0 {
                text.push(self.language.thousands_mark());
            }
            text.push(digit);
        }
        if !fraction.is_empty() {
            text.push(self.language.decimal_mark());
            text.push_str(fraction);
        }
        text
    }

    /// A length's figure and unit.
    pub fn length_parts(self, metres: f64) -> (String, &'static str) {
        match self.units {
            Units::Metric => (self.number(metres, 1), "m"),
            Units::Feet => (self.number(metres / METRES_PER_FOOT, 1), "ft"),
        }
    }

    /// A length, such as `35.7 m`.
    pub fn length(self, metres: f64) -> String {
        join(self.length_parts(metres))
    }

    /// A length to the centimetre, such as `1.07 m`. In feet, what is less than a yard is said in inches, as a rule shows
    /// it and pegs are bought: `17.7 in`, `4.66 ft`.
    pub fn fine_length(self, metres: f64) -> String {
        let feet = metres / METRES_PER_FOOT;
        match self.units {
            Units::Metric => join((self.number(metres, 2), "m")),
            Units::Feet if feet.abs() < FEET_IN_A_YARD => join((self.number(feet * INCHES_IN_A_FOOT, 1), "in")),
            Units::Feet => join((self.number(feet, 2), "ft")),
        }
    }

    /// A length to the centimetre in a column, in the unit that its greatest is said in.
    pub fn fine_length_in_column(self, metres: f64, greatest_m: f64) -> String {
        let inches = greatest_m / METRES_PER_FOOT < FEET_IN_A_YARD;
        match self.units {
            Units::Feet if !inches => join((self.number(metres / METRES_PER_FOOT, 2), "ft")),
            _ => self.fine_length(metres),
        }
    }

    /// How high a spot is, such as `101.92 m`.
    pub fn height(self, metres: f64) -> String {
        match self.units {
            Units::Metric => self.fine_length(metres),
            Units::Feet => join((self.number(metres / METRES_PER_FOOT, 2), "ft")),
        }
    }

    /// The figure and unit of a length to the metre.
    pub fn far_parts(self, metres: f64) -> (String, &'static str) {
        match self.units {
            Units::Metric => (self.number(metres, 0), "m"),
            Units::Feet => (self.number(metres / METRES_PER_FOOT, 0), "ft"),
        }
    }

    /// A length to the metre, such as `600 m`.
    pub fn far(self, metres: f64) -> String {
        join(self.far_parts(metres))
    }

    /// An area's figure and unit.
    pub fn area_parts(self, square_metres: f64) -> (String, &'static str) {
        let unit = match self.units {
            Units::Metric => "m²",
            Units::Feet => "ft²",
        };
        (self.number(square_metres / self.area_unit_m2(), 0), unit)
    }

    /// Square metres in the unit of areas.
    pub fn area_unit_m2(self) -> f64 {
        match self.units {
            Units::Metric => 1.0,
            Units::Feet => METRES_PER_FOOT * METRES_PER_FOOT,
        }
    }

    /// An area, such as `1,497 m²`.
    pub fn area(self, square_metres: f64) -> String {
        join(self.area_parts(square_metres))
    }

    /// An area for each bird, such as `16.6 m²`.
    pub fn area_each(self, square_metres: f64) -> String {
        match self.units {
            Units::Metric => join((self.number(square_metres, 1), "m²")),
            Units::Feet => join((self.number(square_metres / (METRES_PER_FOOT * METRES_PER_FOOT), 1), "ft²")),
        }
    }

    /// The area of a field, such as `0.97 ha`.
    pub fn field(self, square_metres: f64) -> String {
        match self.units {
            Units::Metric => join((self.number(square_metres / 10_000.0, 2), "ha")),
            Units::Feet => join((self.number(square_metres / SQUARE_METRES_PER_ACRE, 2), "ac")),
        }
    }

    /// A force as what it would weigh, such as `14.4 kg`.
    pub fn force(self, newtons: f64) -> String {
        let kilograms = newtons / NEWTONS_PER_KILOGRAM;
        match self.units {
            Units::Metric => join((self.number(kilograms, 1), "kg")),
            Units::Feet => join((self.number(kilograms / KILOGRAMS_PER_POUND, 0), "lb")),
        }
    }

    /// A wind, such as `54 km/h`.
    pub fn wind(self, metres_per_second: f64) -> String {
        let per_hour_m = metres_per_second * 3_600.0;
        match self.units {
            Units::Metric => join((self.number(per_hour_m / 1_000.0, 0), "km/h")),
            Units::Feet => join((self.number(per_hour_m / METRES_PER_MILE, 0), "mph")),
        }
    }

    /// Volts' figure, kilovolts with one decimal.
    pub fn kilovolts_figure(self, kilovolts: f64) -> String {
        self.number(kilovolts, 1)
    }

    /// Volts, such as `4.7 kV`.
    pub fn kilovolts(self, kilovolts: f64) -> String {
        join((self.kilovolts_figure(kilovolts), "kV"))
    }

    /// Volts that lie below some limit, with as many decimals as tell them from it: `3.98 kV` below `4.0 kV`.
    pub fn kilovolts_below(self, kilovolts: f64, limit_kv: f64) -> String {
        let decimals = (1..4).find(|&decimals| self.number(kilovolts, decimals) != self.number(limit_kv, decimals));
        join((self.number(kilovolts, decimals.unwrap_or(1)), "kV"))
    }

    /// A number rounded up to that many decimals: the least that is enough. A whole hundred-thousandth over is rounding.
    pub fn number_up(self, value: f64, decimals: usize) -> String {
        let times = 10_f64.powf(decimals as f64);
        self.number((value * times - 1e-5).ceil() / times, decimals)
    }

    /// A resistance, such as `50 Ω` or `1.0 kΩ`.
    pub fn ohms(self, ohms: f64) -> String {
        if ohms.abs() >= 999.5 {
            join((self.number(ohms / 1e3, 1), "kΩ"))
        } else {
            let whole = ohms.abs() >= 10.0 || ohms.fract() == 0.0;
            join((self.number(ohms, usize::from(!whole)), "Ω"))
        }
    }

    /// A range of volts' figures, such as `1.2 – 5.9`.
    pub fn kilovolts_range(self, low_kv: f64, high_kv: f64) -> String {
        format!("{} – {}", self.kilovolts_figure(low_kv), self.kilovolts_figure(high_kv))
    }

    /// Volts that are likely, and the band in which they lie until they are read: the figure and what follows it, such as
    /// `about 1.5` and `kV, 1.1 – 6.0`.
    pub fn likely_kilovolts_parts(self, likely_kv: f64, low_kv: f64, high_kv: f64) -> (String, String) {
        let figure = self.say(crate::texts::Map::Likely, &[("figure", &self.kilovolts_figure(likely_kv))]);
        (figure, format!("kV, {}", self.kilovolts_range(low_kv, high_kv)))
    }

    /// The same in one, such as `about 1.5 kV, 1.1 – 6.0`.
    pub fn likely_kilovolts(self, likely_kv: f64, low_kv: f64, high_kv: f64) -> String {
        let (figure, after) = self.likely_kilovolts_parts(likely_kv, low_kv, high_kv);
        format!("{figure} {after}")
    }

    /// A share in whole hundredths, such as `18 %`.
    pub fn percent(self, share: f64) -> String {
        join((self.number(share * 100.0, 0), "%"))
    }

    /// Whole minutes; what takes any time takes at least one.
    pub fn minutes_figure(self, minutes: f64) -> String {
        self.number(if minutes > 0.0 { minutes.round().max(1.0) } else { minutes }, 0)
    }

    /// Minutes to the tenth, such as `1.5 min`: what one thing takes, not what is planned with.
    pub fn minutes_each(self, minutes: f64) -> String {
        join((self.number(minutes, 1), "min"))
    }

    /// Seconds, such as `20 s`.
    pub fn seconds(self, seconds: f64) -> String {
        join((self.number(seconds, 0), "s"))
    }

    /// An energy, such as `1.0 J`.
    pub fn joules(self, joules: f64) -> String {
        join((self.number(joules, 1), "J"))
    }

    /// An angle, such as `89°`.
    pub fn degrees(self, degrees: f64) -> String {
        format!("{}°", self.number(degrees, 0))
    }
}

fn join((figure, unit): (String, &'static str)) -> String {
    format!("{figure} {unit}")
}

/// Words as a sentence begins.
pub fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().collect::<String>() + letters.as_str())
}

#[cfg(test)]
mod tests {
    use super::{Language, Units, Words, capital};

    #[test]
    fn a_sentence_begins_with_a_capital() {
        assert_eq!([capital("öre"), capital(""), capital("Six sides")], ["Öre", "", "Six sides"]);
    }

    #[test]
    fn keys_are_called_as_the_keyboard_of_the_language_calls_them() {
        let german = Words { language: Language::German, ..Words::default() };
        for (english, said) in [
            ("Ctrl Shift S", "Strg Umschalt S"),
            ("Delete", "Entf"),
            ("Enter", "Eingabe"),
            ("Space", "Leertaste"),
            ("Backspace", "Rücktaste"),
            ("Esc", "Esc"),
            ("Tab", "Tab"),
            ("Ctrl ← ↑ ↓ →", "Strg ← ↑ ↓ →"),
            ("Ctrl −", "Strg −"),
            ("F9", "F9"),
            ("", ""),
        ] {
            assert_eq!(german.keys(english), said);
            assert_eq!(Words::default().keys(english), english);
        }
    }

    #[test]
    fn figures_are_rounded_once_and_carry_their_unit() {
        let metric = Words::default();
        assert_eq!(metric.length(35.714), "35.7 m");
        assert_eq!(metric.area(1497.4), "1,497 m²");
        assert_eq!(metric.number(-0.04, 1), "0.0");
        assert_eq!(metric.number(-1234567.8, 0), "−1,234,568");
        assert_eq!(metric.number(f64::NAN, 0), "–");
        assert_eq!(metric.force(141.42), "14.4 kg");
        assert_eq!(metric.kilovolts_range(1.24, 5.86), "1.2 – 5.9");
        let below = |kv| metric.kilovolts_below(kv, 4.0);
        assert_eq!([below(3.98), below(3.9), below(3.996), below(1.2)], ["3.98 kV", "3.9 kV", "3.996 kV", "1.2 kV"]);
        let up = |value| metric.number_up(value, 1);
        assert_eq!([up(1.01), up(1.0), up(1.1), up(0.0)], ["1.1", "1.0", "1.1", "0.0"]);
        assert_eq!(metric.likely_kilovolts(1.52, 1.13, 5.96), "about 1.5 kV, 1.1 – 6.0");
        assert_eq!(metric.minutes_figure(11.26), "11");
        assert_eq!(
            [metric.minutes_each(1.25), metric.seconds(20.4), metric.joules(0.96)],
            ["1.2 min", "20 s", "1.0 J"]
        );
        assert_eq!([metric.percent(0.1849), metric.percent(-12.0)], ["18 %", "−1,200 %"]);
        let german = Words { language: Language::German, ..metric };
        assert_eq!([german.number(-1_234_567.8, 1), german.length(35.714)], ["−1.234.567,8", "35,7 m"]);
        let feet = Words { units: Units::Feet, ..metric };
        assert_eq!(feet.length(30.48), "100.0 ft");
        // One rule for what is small: inches below a yard, feet from there.
        for (metres, said) in [
            (0.0, "0.0 in"),
            (0.1, "3.9 in"),
            (0.45, "17.7 in"),
            (-0.45, "−17.7 in"),
            (0.9, "35.4 in"),
            (0.92, "3.02 ft"),
            (1.42, "4.66 ft"),
        ] {
            assert_eq!(feet.fine_length(metres), said, "{metres}");
        }
        let column = |metres| feet.fine_length_in_column(metres, 1.21);
        assert_eq!([column(1.21), column(0.22)], ["3.97 ft", "0.72 ft"], "one unit in one column");
        assert_eq!(feet.fine_length_in_column(0.22, 0.74), "8.7 in");
        assert_eq!((feet.height(0.3048), Words::default().height(0.3048)), ("1.00 ft".to_owned(), "0.30 m".to_owned()));
        assert_eq!(feet.field(4_046.856_422_4), "1.00 ac");
    }
}
