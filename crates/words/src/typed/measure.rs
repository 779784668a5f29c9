//! What figures measure, and the units that each may be typed in.
//!
//! Factors are exact by definition (international yard and pound, 1959).

use crate::figures::Units;

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

/// A unit: its names, the first of which is shown, and what one of it is, `times / per` of what is kept.
pub(super) struct Unit {
    pub(super) names: &'static [&'static str],
    pub(super) times: f64,
    pub(super) per: f64,
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

impl Measure {
    pub(super) fn units(self) -> &'static [Unit] {
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
    pub(super) fn shown(self, units: Units) -> (&'static str, f64, f64, usize) {
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
    pub(super) fn known(self) -> Vec<&'static str> {
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
    pub(super) fn usual(self) -> f64 {
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
