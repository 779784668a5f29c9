//! The sheet as it is set: nothing is cut, too small, in the margin, or over another thing.

use crate::case::{Case, MM, demo, every_block, german, long_names, longer, round, texts, unmade};
use drawing::{Anchor, Ink};
use fieldsheet::Paper;
use words::{Language, Units, Words};

/// Left, top, right and bottom of an item; no text beside the map is turned.
fn bounds(item: &Ink) -> [f32; 4] {
    let around = |spots: &mut dyn Iterator<Item = [f32; 2]>, pad: f32| {
        spots.fold([f32::MAX, f32::MAX, f32::MIN, f32::MIN], |bounds, [x, y]| {
            [bounds[0].min(x - pad), bounds[1].min(y - pad), bounds[2].max(x + pad), bounds[3].max(y + pad)]
        })
    };
    match item {
        Ink::Area { rings, .. } => around(&mut rings.iter().flatten().copied(), 0.0),
        Ink::Line { spots, width, .. } => around(&mut spots.iter().copied(), width / 2.0),
        Ink::Disc { middle, radius, .. } => around(&mut [*middle].into_iter(), *radius),
        Ink::Text { at, text, size, weight, anchor, .. } => {
            let width = drawing::letters::text_width(text, *size, *weight);
            let start = match anchor {
                Anchor::Start => at[0],
                Anchor::Middle => at[0] - width / 2.0,
                Anchor::End => at[0] - width,
            };
            // Capitals reach 0.35 of the height above the middle line, descenders 0.57 below it.
            [start, at[1] - size * 0.35, start + width, at[1] + size * 0.57]
        }
    }
}

fn apart(a: [f32; 4], b: [f32; 4]) -> bool {
    a[2] <= b[0] || b[2] <= a[0] || a[3] <= b[1] || b[3] <= a[1]
}

#[test]
fn no_word_is_cut_in_any_language_nor_where_text_is_two_fifths_longer() {
    let feet = Words { units: Units::Feet, ..german() };
    for words in [Words::default(), german(), feet, longer()] {
        for (plan, name) in [(demo(), "example"), (every_block(), "every block"), (round(26), "round")] {
            let case = Case::of(plan, words);
            for paper in [Paper::A4, Paper::Letter] {
                let pages = case.pages(paper);
                let cut: Vec<&str> = pages.iter().flat_map(texts).filter(|text| text.contains('…')).collect();
                assert_eq!(cut, [""; 0], "{name} in {words:?} on {paper:?}");
                // Words that are long take lines, and then a second page; so do the corners by tape, a third where many.
                assert!(pages.len() <= 3, "{name} in {words:?} on {paper:?}: {} pages", pages.len());
            }
        }
    }
}

#[test]
fn nothing_is_too_small_or_in_the_margin_or_over_another_text() {
    let feet = Words { language: Language::English, units: Units::Feet };
    for (case, name) in [
        (Case::demo(), "example"),
        (Case::of(demo(), feet), "feet"),
        (Case::of(long_names(), Words::default()), "long names"),
        (Case::of(every_block(), german()), "German"),
        (Case::of(every_block(), longer()), "longer text"),
        (Case::of(round(70), Words::default()), "round"),
        (Case::of(unmade(), Words::default()), "unmade"),
    ] {
        for paper in [Paper::A4, Paper::Letter] {
            for (number, page) in case.pages(paper).iter().enumerate() {
                let place = format!("{name}, {paper:?}, page {}", number + 1);
                let [width, height] = page.size;
                for item in page.ink.iter().chain(page.map.iter().flat_map(|map| &map.ink)) {
                    if let Ink::Text { size, text, .. } = item {
                        assert!(*size >= 8.0, "{place}: “{text}” is set in {size} points");
                    }
                }
                // A rule's own width may lie on the edge.
                let margin = 15.0 * MM - 0.7;
                let mut set: Vec<([f32; 4], &str)> = Vec::new();
                for item in &page.ink {
                    let own = bounds(item);
                    let inside =
                        own[0] >= margin && own[1] >= margin && own[2] <= width - margin && own[3] <= height - margin;
                    assert!(inside, "{place}: {item:?} reaches into the margin");
                    if let Ink::Text { text, .. } = item {
                        for (other, said) in &set {
                            assert!(apart(own, *other), "{place}: “{text}” lies over “{said}”");
                        }
                        set.push((own, text));
                    }
                }
            }
        }
    }
}

#[test]
fn blocks_do_not_run_into_each_other() {
    // Long rules stand over the blocks' rows and at the foot; no text may lie across one.
    for case in [Case::demo(), Case::of(round(70), Words::default()), Case::of(every_block(), longer())] {
        for page in case.pages(Paper::Letter) {
            let rules: Vec<[f32; 4]> = (page.ink.iter())
                .filter(|item| matches!(item, Ink::Line { spots, closed: false, .. } if spots.len() == 2))
                .map(bounds)
                .filter(|rule| rule[2] - rule[0] > 100.0)
                .collect();
            assert!(rules.len() >= 4, "title, foot, and the rules of at least one block");
            for item in page.ink.iter().filter(|item| matches!(item, Ink::Text { .. })) {
                let [left, top, right, bottom] = bounds(item);
                let body = [left, top + 0.5, right, bottom - 1.5];
                assert!(rules.iter().all(|rule| apart(body, *rule)), "{item:?} lies across a rule");
            }
        }
    }
}
