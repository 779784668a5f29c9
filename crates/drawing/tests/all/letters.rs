//! The tables of letters against the font files, and every text against the font's letters.

use crate::hand;
use std::collections::BTreeSet;

use drawing::letters::{BASELINE, advance, text_width};
use drawing::{Ink, LineView, Theme, View, Weight, furniture, line, map};
use ttf_parser::Face;
use words::{Language, texts};

const FILES: [(Weight, &[u8]); 3] = [
    (Weight::Regular, include_bytes!("../../../../assets/fonts/ibm-plex-sans/IBMPlexSans_400Regular.ttf")),
    (Weight::Medium, include_bytes!("../../../../assets/fonts/ibm-plex-sans/IBMPlexSans_500Medium.ttf")),
    (Weight::SemiBold, include_bytes!("../../../../assets/fonts/ibm-plex-sans/IBMPlexSans_600SemiBold.ttf")),
];

#[test]
fn the_tables_are_the_fonts() {
    for (weight, file) in FILES {
        let face = Face::parse(file, 0).unwrap();
        assert_eq!(face.units_per_em(), 1000);
        let capitals = f32::from(face.capital_height().unwrap()) / 1000.0;
        assert!((capitals / 2.0 - BASELINE).abs() < 1e-3, "{capitals}");
        let mut letters = 0;
        for letter in ('\u{20}'..='\u{2265}').filter(|&letter| advance(letter, weight).is_some()) {
            let glyph = face.glyph_index(letter).unwrap_or_else(|| panic!("{letter:?} has no glyph"));
            assert_eq!(advance(letter, weight), face.glyph_hor_advance(glyph), "{letter:?} {weight:?}");
            letters += 1;
        }
        assert!(letters > 330, "{letters}");
        // So that bold figures stay in column.
        for digit in ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '−', '+', '×', '='] {
            assert_eq!(advance(digit, weight), Some(600), "{digit}");
        }
    }
    assert!((text_width("10", 10.0, Weight::Regular) - 12.0).abs() < 1e-4);
}

#[test]
fn every_text_that_is_drawn_has_its_glyphs() {
    let mut ink: Vec<Ink> = Vec::new();
    for hand in [hand::field(), hand::bare(), hand::kinds(), hand::farm(3)] {
        for units in [words::Units::Metric, words::Units::Feet] {
            let mut scene = hand.scene();
            scene.words.units = units;
            let drawing = map(&scene);
            for px_per_m in [0.5, 3.0, 8.0, 14.0, 60.0] {
                let mut view = View::fit(drawing.bounds(), [1200.0, 800.0], 30.0, Theme::Light);
                view.px_per_m = px_per_m;
                ink.extend(drawing.ink(&view));
                ink.extend(furniture::scale_bar(&view, scene.words, [600.0, 600.0]));
            }
            ink.extend(furniture::volts_key(Theme::Light, scene.words, 3.7, [600.0, 60.0]));
            ink.extend(furniture::north(Theme::Light, scene.words, [600.0, 60.0]));
            for run in 0..hand.plan.runs.len() {
                let view = LineView {
                    width: 900.0,
                    height: 128.0,
                    theme: Theme::Light,
                    picked: None,
                    hovered: None,
                    stale: true,
                };
                ink.extend(line(&scene, run, &view).ink);
            }
        }
    }
    let mut texts = 0;
    for item in &ink {
        let Ink::Text { text, weight, .. } = item else { continue };
        texts += 1;
        for letter in text.chars() {
            assert!(advance(letter, *weight).is_some(), "{letter:?} of {text:?} has no glyph");
        }
    }
    assert!(texts > 300, "{texts}");
}

#[test]
fn every_wording_in_every_language_has_its_glyphs() {
    let mut letters = BTreeSet::new();
    for language in Language::ALL {
        for wording in texts::wordings(language) {
            letters.extend(wording.chars().filter(|letter| *letter != '\n'));
        }
    }
    assert!(letters.contains(&'ß') && letters.len() > 90, "{letters:?}");
    for (weight, file) in FILES {
        let face = Face::parse(file, 0).unwrap();
        for &letter in &letters {
            assert!(advance(letter, weight).is_some(), "{letter:?} has no width");
            assert!(face.glyph_index(letter).is_some(), "{letter:?} has no glyph");
        }
    }
}
