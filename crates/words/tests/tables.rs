//! Every table of texts in every language: nothing empty, nothing lost, nothing left in English.

use words::Language;
use words::texts::wordings;

/// What is the same in German as in English: units, names, and words that both have.
const SAME: [&str; 17] = [
    "A",
    "April",
    "August",
    "J",
    "Letter",
    "N",
    "Name",
    "Netfold",
    "November",
    "Plan",
    "September",
    "Text",
    "V",
    "Wind",
    "kV",
    "min",
    "ms",
];

/// A wording with its places taken out, and their names in order.
fn parted(wording: &str) -> (String, Vec<&str>) {
    let (mut text, mut places) = (String::new(), Vec::new());
    let mut rest = wording;
    while let Some((before, after)) = rest.split_once('{') {
        let (place, after) = after.split_once('}').expect("a place ends");
        text.push_str(before);
        text.push(' ');
        places.push(place);
        rest = after;
    }
    text.push_str(rest);
    places.sort_unstable();
    places.dedup();
    (text, places)
}

fn pairs() -> impl Iterator<Item = (&'static str, &'static str)> {
    let (english, german) = (wordings(Language::English), wordings(Language::German));
    assert_eq!(english.len(), german.len());
    assert!(english.len() > 1_500, "{}", english.len());
    english.into_iter().zip(german)
}

#[test]
fn no_wording_is_empty_and_each_begins_and_ends_as_in_english() {
    for (english, german) in pairs() {
        assert!(!english.trim().is_empty() && !german.trim().is_empty(), "{english:?} and {german:?}");
        for end in [' ', '.', '?', ':', '…'] {
            let ends = |wording: &str| (wording.starts_with(end), wording.ends_with(end));
            assert_eq!(ends(english), ends(german), "{english:?} and {german:?}");
        }
    }
}

#[test]
fn a_wording_has_the_same_places_in_every_language() {
    for (english, german) in pairs() {
        let named = |wording| parted(wording).1;
        assert_eq!(named(english), named(german), "{english:?} and {german:?}");
        assert!(
            named(english).iter().all(|place| place.chars().all(|letter| letter.is_ascii_lowercase() || letter == '_'))
        );
    }
}

#[test]
fn nothing_is_left_in_english() {
    let same: Vec<&str> = pairs()
        .filter(|(english, german)| english == german)
        .map(|(english, _)| english)
        .filter(|english| {
            let text = parted(english).0;
            let mut named = text.split(|letter: char| !letter.is_alphabetic()).filter(|word| !word.is_empty());
            named.any(|word| !SAME.contains(&word))
        })
        .collect();
    assert_eq!(same, [""; 0], "translate them, or list what is the same in both languages");
}

#[test]
fn german_has_its_own_quotation_marks_and_decimals() {
    for (english, german) in pairs() {
        let (open, close) = (german.matches('„').count(), german.matches('“').count());
        assert!(open == close && !german.contains('”'), "{german:?}");
        // Straight ones stand only in a piece of a file, which is the same in both.
        assert_eq!(english.matches('"').count(), german.matches('"').count(), "{german:?}");
        let pointed = |wording: &str| {
            let letters: Vec<char> = parted(wording).0.chars().collect();
            let digit = |letter: char| letter.is_ascii_digit();
            letters.windows(3).filter(|three| digit(three[0]) && three[1] == '.' && digit(three[2])).count()
        };
        // A clause of a law or a standard is no decimal number, and is written alike in both.
        let clauses: usize = ["7 CFR 205.241", "22.108"].map(|clause| german.matches(clause).count()).iter().sum();
        assert_eq!(pointed(german), clauses, "{german:?}");
    }
}

#[test]
fn an_apostrophe_is_curved_everywhere() {
    for (english, german) in pairs() {
        // A straight one is no letter of a text: feet are said by their unit.
        assert!(!english.contains('\'') && !german.contains('\''), "{english:?} and {german:?}");
    }
}

#[cfg(feature = "longer")]
#[test]
fn the_longer_language_is_two_fifths_longer() {
    let letters = |texts: Vec<&str>| texts.iter().map(|text| parted(text).0.chars().count()).sum::<usize>() as f64;
    let grown = letters(wordings(Language::Longer)) / letters(wordings(Language::English));
    assert!((1.38..1.46).contains(&grown), "{grown}");
}
