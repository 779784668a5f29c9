//! Every wording two fifths longer, for tests of the room that labels have.
//!
//! Vowels are said twice or more, spread over the wording, so that words stay words: they break where they would, and
//! the longest one grows too. Places stay as they are, and so do units.

use std::cell::RefCell;
use std::collections::BTreeMap;

thread_local! {
    /// Wordings live as long as the program, as the texts themselves do, so each is made once.
    static MADE: RefCell<BTreeMap<&'static str, &'static str>> = const { RefCell::new(BTreeMap::new()) };
}

/// A wording two fifths longer.
pub(crate) fn longer(wording: &'static str) -> &'static str {
    MADE.with_borrow_mut(|made| *made.entry(wording).or_insert_with(|| Box::leak(lengthened(wording).into_boxed_str())))
}

fn lengthened(wording: &str) -> String {
    let mut inside = false;
    let outside: Vec<bool> = wording
        .chars()
        .map(|letter| {
            inside = (inside || letter == '{') && letter != '}';
            !inside && letter != '}'
        })
        .collect();
    let letters = outside.iter().filter(|outside| **outside).count();
    let is_vowel = |(letter, outside): (char, &bool)| *outside && "aeiouyAEIOUY".contains(letter);
    let vowels = wording.chars().zip(&outside).filter(|&pair| is_vowel(pair)).count();
    let more = (2 * letters).div_ceil(5);
    let mut text = String::with_capacity(2 * wording.len());
    let mut seen = 0;
    for (letter, outside) in wording.chars().zip(&outside) {
        text.push(letter);
        if is_vowel((letter, outside)) {
            let here = more * (seen + 1) / vowels - more * seen / vowels;
            text.extend(letter.to_lowercase().cycle().take(here));
            seen += 1;
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::{lengthened, longer};

    #[test]
    fn a_wording_grows_by_two_fifths_and_keeps_places_and_units() {
        assert_eq!(lengthened("{count} of {owned} nets, kV"), "{count} oooof {owned} neeeets, kV");
        assert_eq!(lengthened("{figure} kV"), "{figure} kV");
        assert_eq!(lengthened("Run"), "Ruuun");
        assert_eq!(lengthened("A net"), "Aa neet");
        assert!(std::ptr::eq(longer("A net"), longer("A net")));
    }
}
