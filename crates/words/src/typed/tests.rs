//! What keepers type, and what it means.

use proptest::prelude::*;

use super::{Measure, Range, Typed};
use crate::figures::{Units, Words};

const METRIC: Words = Words { language: crate::Language::English, units: Units::Metric };
const GERMAN: Words = Words { language: crate::Language::German, units: Units::Metric };
const FEET: Words = Words { language: crate::Language::English, units: Units::Feet };
const ANY: Range = Range::zero_to(1e9);

#[test]
fn what_keepers_type_is_understood() {
    use Measure::{Count, Degrees, Joules, Kilovolts, Length, Mass, OhmMetres, Ohms, Percent, Small, Thin};
    let rows: &[(Words, Measure, &str, f64)] = &[
        (METRIC, Length, "50", 50.0),
        (METRIC, Length, " 50 m ", 50.0),
        (METRIC, Length, "50m", 50.0),
        (METRIC, Length, "12,5", 12.5),
        (METRIC, Length, "12.50", 12.5),
        (METRIC, Length, ",5", 0.5),
        (METRIC, Length, "5.", 5.0),
        (METRIC, Length, "+5", 5.0),
        (METRIC, Length, "1 200", 1200.0),
        (METRIC, Length, "1\u{a0}200,5 m", 1200.5),
        (METRIC, Length, "1,234.5 m", 1234.5),
        (METRIC, Length, "1.234,5 m", 1234.5),
        (METRIC, Length, "1,234,567", 1_234_567.0),
        (METRIC, Length, "0,530", 0.53),
        (METRIC, Length, "1234,567", 1234.567),
        (METRIC, Length, "1.200", 1.2),
        (METRIC, Length, "164 ft", 49.9872),
        (METRIC, Length, "12' 6\"", 3.81),
        (METRIC, Length, "12’6”", 3.81),
        (METRIC, Length, "12 ft 6 in", 3.81),
        (METRIC, Length, "12ft. 6in.", 3.81),
        (METRIC, Length, "12' 6", 3.81),
        (METRIC, Length, "1 m 20 cm", 1.2),
        (METRIC, Length, "53 cm", 0.53),
        (METRIC, Length, "21 IN", 0.5334),
        (METRIC, Length, "55 yards", 50.292),
        (FEET, Length, "164", 49.9872),
        (FEET, Length, "50 m", 50.0),
        (METRIC, Small, "53", 0.53),
        (METRIC, Small, "0.53 m", 0.53),
        (FEET, Small, "21", 0.5334),
        (METRIC, Thin, "12", 0.012),
        (FEET, Thin, "0.5", 0.0127),
        (FEET, Thin, "12 mm", 0.012),
        (METRIC, Count, "3", 3.0),
        (METRIC, Count, "3.0", 3.0),
        (METRIC, Kilovolts, "7", 7.0),
        (METRIC, Kilovolts, "7 kv", 7.0),
        (METRIC, Kilovolts, "5000 V", 5.0),
        (METRIC, Joules, "700 mJ", 0.7),
        (METRIC, Ohms, "500 Ω", 500.0),
        (METRIC, Ohms, "500 ohm", 500.0),
        (METRIC, OhmMetres, "100 Ω m", 100.0),
        (METRIC, Degrees, "89°", 89.0),
        (METRIC, Degrees, "89 degrees", 89.0),
        (METRIC, Percent, "10 %", 0.1),
        (METRIC, Percent, "10", 0.1),
        (METRIC, Mass, "7 kg", 7.0),
        (METRIC, Mass, "2 lb 8 oz", 1.133_980_925),
        (FEET, Mass, "10", 4.535_923_7),
    ];
    for (words, measure, text, value) in rows {
        let read = words.read(*measure, text, ANY);
        let near = read.as_ref().is_ok_and(|read| (read - value).abs() <= 1e-12 * value.abs());
        assert!(near, "{text:?} of {measure:?} in {:?} gave {read:?}, not {value}", words.units);
    }
}

#[test]
fn what_cannot_be_used_is_refused_by_name_and_in_a_sentence() {
    let range = Range::between(0.5, 1000.0);
    let rows: &[(Measure, &str, Range, &str)] = &[
        (Measure::Length, "", range, "Nothing is typed yet; type a figure, such as 50 m."),
        (Measure::Length, "   ", range, "Nothing is typed yet; type a figure, such as 50 m."),
        (Measure::Length, "fifty", range, "“fifty” is no number; type figures, such as 50 m."),
        (Measure::Length, "1,2,3", range, "“1,2,3” is no number; type figures, such as 50 m."),
        (Measure::Length, "5 6", range, "“5 6” is no number; type figures, such as 50 m."),
        (Measure::Length, "12.5.1", range, "“12.5.1” is no number; type figures, such as 50 m."),
        (Measure::Length, "12' 14\"", range, "“12' 14\"” is no number; type figures, such as 50 m."),
        (Measure::Length, "3 cm 4 ft", range, "“3 cm 4 ft” is no number; type figures, such as 50 m."),
        (Measure::Length, "5!", range, "“5!” is no number; type figures, such as 50 m."),
        (Measure::Length, "nan", range, "“nan” is no number; type figures, such as 50 m."),
        (Measure::Length, "-5", range, "Less than nothing does not work here; type it without the minus."),
        (Measure::Length, "−5 m", range, "Less than nothing does not work here; type it without the minus."),
        (Measure::Length, "0", range, "Nothing at all does not work here; type more than 0, such as 50 m."),
        (Measure::Length, "0.4", range, "That is too little here; type 0.5 m or more."),
        (Measure::Length, "1001", range, "That is too much here; type 1000 m or less."),
        (Measure::Length, "1e9", range, "“e” is no unit for this; type m, cm, mm, ft or in, or the figure alone."),
        (Measure::Length, "5 kg", range, "“kg” is no unit for this; type m, cm, mm, ft or in, or the figure alone."),
        (Measure::Percent, "5 m", Range::up_to(1.0), "“m” is no unit for this; type %, or the figure alone."),
        (Measure::Length, "1,200", range, "“1,200” may be 1200 or 1.2; type the one that you mean."),
        (Measure::Length, "12,345 m", range, "“12,345 m” may be 12345 or 12.345; type the one that you mean."),
        (Measure::Length, "1,000", range, "“1,000” may be 1000 or 1; type the one that you mean."),
        (Measure::Count, "2.5", Range::up_to(99.0), "Only whole ones count; type 2 or 3."),
        (
            Measure::Count,
            "2 nets",
            Range::up_to(99.0),
            "“nets” does not belong here; type the figure alone, such as 3.",
        ),
        (Measure::Kilovolts, "5 A", Range::up_to(20.0), "“A” is no unit for this; type kV or V, or the figure alone."),
    ];
    for (measure, text, range, sentence) in rows {
        let refused = METRIC.read(*measure, text, *range).map_err(|typed| typed.sentence(METRIC));
        assert_eq!(refused, Err((*sentence).to_owned()), "{text:?}");
    }
    let huge = "9".repeat(400);
    assert!(matches!(METRIC.read_length(&huge, range), Err(Typed::TooLarge { .. })));
    assert_eq!(
        METRIC.read_count("4294967296", Range::up_to(1e12)),
        Err(Typed::TooLarge { most: "4294967295".to_owned() })
    );
}

#[test]
fn a_bound_that_is_named_can_itself_be_typed() {
    for most in [5.0, 30.0, 77.0, 200.0, 1000.0] {
        let range = Range::between(0.1, most);
        for measure in [Measure::Length, Measure::Small, Measure::Thin] {
            for (text, least) in [("9999999", false), ("0.001 mm", true)] {
                let bound = match FEET.read(measure, text, range) {
                    Err(Typed::TooLarge { most }) if !least => most,
                    Err(Typed::TooSmall { least: bound }) if least => bound,
                    other => panic!("{text} gave {other:?}"),
                };
                let read = FEET.read(measure, &bound, range);
                assert!(read.is_ok(), "{bound} gave {read:?}");
            }
        }
    }
}

#[test]
fn a_field_shows_no_more_than_there_is() {
    let rows = [
        (METRIC, Measure::Length, 50.0, "50", "m"),
        (METRIC, Measure::Length, 1234.5, "1234.5", "m"),
        (FEET, Measure::Length, 49.9872, "164", "ft"),
        (METRIC, Measure::Small, 0.53, "53", "cm"),
        (FEET, Measure::Small, 0.5334, "21", "in"),
        (METRIC, Measure::Thin, 0.012, "12", "mm"),
        (METRIC, Measure::Percent, 0.1, "10", "%"),
        (METRIC, Measure::Joules, 0.7, "0.7", "J"),
        (METRIC, Measure::Length, 0.0012, "0.0012", "m"),
        (METRIC, Measure::Length, f64::NAN, "–", "m"),
    ];
    for (words, measure, value, figure, unit) in rows {
        assert_eq!(words.typed_parts(measure, value), (figure.to_owned(), unit));
    }
}

proptest! {
    #[test]
    fn a_length_that_is_shown_reads_back_within_its_rounding(metres in 0.1_f64..99_999.0) {
        for (words, step_m) in [(METRIC, 0.1), (FEET, 0.03048)] {
            let read = words.read_length(&words.length(metres), ANY);
            prop_assert!(read.clone().is_ok_and(|read| (read - metres).abs() <= step_m / 2.0 + 1e-9), "{read:?}");
        }
    }

    #[test]
    fn a_field_reads_what_it_shows(value in 0.001_f64..5000.0) {
        use Measure::{Joules, Kilovolts, Length, Mass, Percent, Small, Thin};
        for words in [METRIC, FEET] {
            for measure in [Length, Small, Thin, Kilovolts, Joules, Percent, Mass] {
                let (figure, unit) = words.typed_parts(measure, value);
                let read = words.read(measure, &format!("{figure} {unit}"), ANY);
                let near = read.clone().is_ok_and(|read| (read - value).abs() <= 0.006 + 0.06 * value);
                prop_assert!(near, "{value} of {measure:?} shown as {figure} {unit} read {read:?}");
                let again = words.typed_parts(measure, read.unwrap_or_default());
                prop_assert_eq!(again, (figure, unit));
            }
        }
    }

    #[test]
    fn nothing_typed_panics(text in "\\PC{0,24}", figures in "[-0-9 ,.'\"mftinck\u{2032}°Ω½]{0,16}") {
        use Measure::{Count, Degrees, Joules, Kilovolts, Length, Mass, Number, OhmMetres, Ohms, Percent, Small, Thin};
        for measure in [Length, Small, Thin, Count, Number, Kilovolts, Joules, Ohms, OhmMetres, Degrees, Percent, Mass] {
            for text in [&text, &figures] {
                for range in [Range::up_to(100.0), Range::between(-5.0, 5.0)] {
                    match FEET.read(measure, text, range) {
                        Ok(value) => prop_assert!(value >= range.least && value <= range.most * (1.0 + 1e-9)),
                        Err(refused) => prop_assert!(refused.sentence(FEET).len() > 20, "{refused:?}"),
                    }
                }
            }
        }
    }
}

#[test]
fn areas_in_both_systems() {
    let (metric, feet) = (METRIC, FEET);
    let read = |words: Words, text: &str| words.read(Measure::Area, text, Range::up_to(1000.0));
    for text in ["4", "4 m²", "4 m2", "4,0 sq m", "4 Square Metres"] {
        assert_eq!(read(metric, text), Ok(4.0), "{text}");
    }
    for text in ["100", "100 ft²", "100 ft2", "100 sq ft"] {
        let found = read(feet, text);
        assert!(found.as_ref().is_ok_and(|area| (area - 9.290304).abs() < 1e-12), "{found:?}");
    }
    assert_eq!(feet.typed_parts(Measure::Area, 9.290304), ("100".to_owned(), "ft²"));
    assert!(read(metric, "4 kg").unwrap_err().sentence(metric).contains("m²"));
}

#[test]
fn german_marks_are_read_and_shown_and_one_that_may_part_thousands_is_asked_about() {
    let length = |text: &str| GERMAN.read(Measure::Length, text, ANY);
    for (typed, metres) in
        [("1,125", 1.125), ("1.234,5 m", 1234.5), ("12.5", 12.5), ("0.530", 0.53), ("12 Fuß", 3.6576)]
    {
        assert_eq!(length(typed), Ok(metres), "{typed}");
    }
    let ambiguous = Typed::Ambiguous { typed: "1.200".into(), whole: "1200".into(), fraction: "1,2".into() };
    assert_eq!(length("1.200"), Err(ambiguous));
    assert_eq!(GERMAN.typed_parts(Measure::Length, 1234.56), ("1234,56".to_owned(), "m"));
}

proptest! {
    #[test]
    fn what_a_field_shows_in_german_is_read_back(value in 0.0..9_999.0_f64) {
        let value = (value * 100.0).round() / 100.0;
        let (shown, _) = GERMAN.typed_parts(Measure::Length, value);
        prop_assert_eq!(GERMAN.read(Measure::Length, &shown, ANY), Ok(value));
    }
}
