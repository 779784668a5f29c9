//! The page of keys holds every key once, in columns that do not run over the paper.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

use drawing::Ink;
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

#[test]
fn it_is_a_pdf_and_always_the_same() {
    let pdf = || keys(Words::default(), &groups(5, 9), Paper::A4).unwrap();
    assert!(pdf().starts_with(b"%PDF"));
    assert_eq!(pdf(), pdf());
}
