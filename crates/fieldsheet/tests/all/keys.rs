//! The page of keys holds every key once, in columns that do not run over the paper.

use drawing::letters::text_width;
use drawing::{Anchor, Ink};
use fieldsheet::{KeyGroup, Paper, key_pages, keys};
use words::Words;

fn groups(heads: usize, rows: usize) -> Vec<KeyGroup> {
    let row = |head: usize, row: usize| (format!("do {head}.{row}"), format!("Ctrl {head}{row}"));
    (0..heads).map(|head| (format!("head {head}"), (0..rows).map(|one| row(head, one)).collect())).collect()
}

#[test]
fn every_key_is_on_the_page_once_and_within_its_margins() {
    for (heads, rows) in [(5, 9), (3, 40), (1, 120)] {
        for paper in [Paper::A4, Paper::Letter] {
            let groups = groups(heads, rows);
            let pages = key_pages(Words::default(), &groups, paper);
            let texts: Vec<(&str, [f32; 2])> = pages
                .iter()
                .flat_map(|page| &page.ink)
                .filter_map(|ink| match ink {
                    Ink::Text { text, at, .. } => Some((text.as_str(), *at)),
                    _ => None,
                })
                .collect();
            for (name, keys) in groups.iter().flat_map(|(_, rows)| rows) {
                assert_eq!(texts.iter().filter(|(text, _)| text == name).count(), 1, "{name}");
                assert_eq!(texts.iter().filter(|(text, _)| text == keys).count(), 1, "{keys}");
            }
            let [width, height] = paper.size();
            assert!(texts.iter().all(|(_, [x, y])| *x > 40.0 && *x < width - 40.0 && *y > 40.0 && *y < height - 40.0));
        }
    }
}

/// Where a text begins and ends, and the height at which it stands.
fn ends(ink: &Ink) -> Option<(&str, [f32; 3])> {
    let Ink::Text { text, at, size, weight, anchor, .. } = ink else { return None };
    let width = text_width(text, *size, *weight);
    let left = match anchor {
        Anchor::Start => at[0],
        Anchor::Middle => at[0] - width / 2.0,
        Anchor::End => at[0] - width,
    };
    Some((text, [left, left + width, at[1]]))
}

#[test]
fn long_names_and_heads_end_within_their_column() {
    let long = "what is done by this command, told at greater length than any command has been told so far";
    let groups: Vec<KeyGroup> = (0..6)
        .map(|head| {
            let row = |row: usize| (format!("{head}.{row} {long}"), format!("Ctrl Shift {head}{row}"));
            (format!("{head}: {long}"), (0..12).map(row).collect())
        })
        .collect();
    for paper in [Paper::A4, Paper::Letter] {
        let [width, _] = paper.size();
        for page in key_pages(Words::default(), &groups, paper) {
            let texts: Vec<_> = page.ink.iter().filter_map(ends).collect();
            for (text, [left, right, y]) in &texts {
                // What a key does takes as many lines as it needs.
                assert!(!text.contains('…') || groups.iter().any(|(head, _)| head.starts_with(&text[..8])), "{text}");
                assert!(*left > 40.0 && *right < width - 40.0, "{text}: {left} to {right} of {width}");
                let beside = texts.iter().filter(|(_, [start, _, at])| at == y && start > left);
                for (other, [start, ..]) in beside {
                    assert!(right < start, "{text} runs into {other}");
                }
            }
        }
    }
}

#[test]
fn it_is_a_pdf_and_always_the_same() {
    let pdf = || keys(Words::default(), &groups(5, 9), Paper::A4).unwrap();
    assert!(pdf().starts_with(b"%PDF"));
    assert_eq!(pdf(), pdf());
}
