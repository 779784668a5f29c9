//! The unfolded line: its axis, its order, and what can be picked on it.

use crate::hand;
use crate::sheet;
use drawing::{Ink, LineDrawing, LineView, Theme, Thing, line};
use proptest::prelude::*;

fn view(width: f32, height: f32) -> LineView {
    LineView { width, height, theme: Theme::Light, picked: None, hovered: None, stale: false }
}

fn texts(line: &LineDrawing) -> Vec<(f32, String)> {
    line.ink
        .iter()
        .filter_map(|item| if let Ink::Text { at, text, .. } = item { Some((at[0], text.clone())) } else { None })
        .collect()
}

#[test]
fn it_starts_and_ends_at_corner_1() {
    let hand = hand::field();
    let line = line(&hand.scene(), 0, &view(1080.0, 128.0));
    assert!((line.line_m - 150.0).abs() < 0.1);
    let texts = texts(&line);
    let x_of = |want: &str| texts.iter().filter(|text| text.1 == want).map(|text| text.0).collect::<Vec<_>>();
    assert_eq!(x_of("1"), [40.0, 1040.0]);
    assert_eq!(x_of("0.0"), [40.0]);
    let third = x_of("3");
    assert!((f64::from(third[0]) - f64::from(line.x_of(60.71))).abs() < 0.2, "{third:?}");
    for net in ["Net 1", "Net 2", "Net 3"] {
        assert_eq!(x_of(net).len(), 1, "{texts:?}");
    }
}

#[test]
fn small_it_keeps_net_joins_feed_and_plates() {
    let hand = hand::field();
    let small = line(&hand.scene(), 0, &view(600.0, 56.0));
    let says: Vec<String> = texts(&small).into_iter().map(|text| text.1).collect();
    let (plates, numbers): (Vec<&String>, Vec<&String>) = says.iter().partition(|text| text.len() == 1);
    assert_eq!(plates.len(), 6);
    assert!(numbers.iter().any(|text| text.starts_with("post ")), "{says:?}");
    assert!(numbers.iter().all(|text| text.trim_start_matches("post ").parse::<usize>().is_ok()), "{says:?}");
    let low = |item: &Ink| match item {
        Ink::Text { at, .. } => at[1] < 50.0,
        Ink::Line { spots, .. } => spots.iter().all(|spot| spot[1] <= 56.0),
        _ => true,
    };
    assert!(small.ink.iter().all(low));
}

/// Every number stands at its own post, counted as the pages count, and none over another or over a sign.
#[test]
fn posts_are_numbered_every_so_many_where_there_is_room() {
    let hand = hand::field();
    let lay = hand.workup.runs[0].lay.as_ref().unwrap();
    let mut steps = Vec::new();
    for width in [500.0, 900.0, 1400.0, 3000.0, 6000.0] {
        let line = line(&hand.scene(), 0, &view(width, 128.0));
        let row = line.axis - 18.5;
        let at_row = |item: &Ink| match item {
            Ink::Text { at, text, .. } if (at[1] - row).abs() < 0.01 => Some((at[0], text.clone())),
            _ => None,
        };
        let mut numbers: Vec<(f32, String)> = line.ink.iter().filter_map(at_row).collect();
        numbers.sort_by(|a, b| a.0.total_cmp(&b.0));
        assert!(numbers.len() > 2, "{width}: {numbers:?}");
        assert_eq!(numbers.iter().filter(|(_, text)| text.starts_with("post ")).count(), 1, "{numbers:?}");
        let mut step = usize::MAX;
        for (x, text) in &numbers {
            let number: usize = text.trim_start_matches("post ").parse().unwrap();
            assert!((line.x_of(lay.posts[number - 1].along_m) - x).abs() < 0.1, "{text} at {x}");
            step =
                [1, 2, 5, 10, 20, 50].into_iter().filter(|step| number.is_multiple_of(*step)).max().unwrap().min(step);
        }
        assert!(sheet::overlaps(&line.ink).is_empty(), "{:?}", sheet::overlaps(&line.ink));
        steps.push(step);
    }
    // The wider the line, the more of them.
    assert!(steps.windows(2).all(|pair| pair[1] <= pair[0]) && steps[0] > steps[4], "{steps:?}");
}

#[test]
fn what_is_seen_can_be_picked() {
    let hand = hand::field();
    let line = line(&hand.scene(), 0, &view(1080.0, 128.0));
    let pick = |x: f32, y: f32| line.thing_at([x, y], 6.0);
    assert_eq!(pick(line.x_of(60.71), line.axis + 31.0), Some(Thing::RunCorner { run: 0, vertex: 2 }));
    assert_eq!(pick(line.right, line.axis + 31.0), Some(Thing::RunCorner { run: 0, vertex: 0 }));
    assert_eq!(pick(line.x_of(143.0), line.axis), Some(Thing::Feed { run: 0 }));
    assert_eq!(pick(line.x_of(50.0 / 14.0), line.axis - 6.0), Some(Thing::Post { run: 0, post: 1 }));
    assert_eq!(pick(line.x_of(50.0 / 14.0 * 1.5), line.axis), Some(Thing::RunSide { run: 0, side: 0 }));
    assert_eq!(pick(line.x_of(75.0), 2.0), None);
}

#[test]
fn a_gap_is_said_in_metres_and_a_run_that_is_not_laid_in_words() {
    let hand = hand::kinds();
    let gap = texts(&line(&hand.scene(), 1, &view(1080.0, 128.0)));
    assert!(gap.iter().any(|text| text.1 == "12.0 m open"), "{gap:?}");
    let not_laid = line(&hand.scene(), 5, &view(1080.0, 128.0));
    assert_eq!(texts(&not_laid).len(), 1);
    assert_eq!(not_laid.along_at(500.0), None);
    assert_eq!(line(&hand.scene(), 99, &view(1080.0, 128.0)), LineDrawing::default());
}

#[test]
fn netting_covers_the_line_but_for_its_gap() {
    // Painted length along the axis, whatever the start and direction of the chain.
    let hand = hand::kinds();
    for (run, bare_m) in [(0, 0.0), (1, 12.0), (2, 0.0), (3, 0.0), (4, 0.4)] {
        let line = line(&hand.scene(), run, &view(1080.0, 128.0));
        let edge = Theme::Light.palette().edge;
        let mut spans: Vec<(f32, f32)> = line
            .ink
            .iter()
            .filter_map(|item| match item {
                Ink::Line { spots, colour, width, .. }
                    if *colour == edge
                        && *width > 5.0
                        && spots.iter().all(|spot| (spot[1] - line.axis).abs() < 0.1) =>
                {
                    let xs = spots.iter().map(|spot| spot[0]);
                    Some((xs.clone().fold(f32::MAX, f32::min), xs.fold(f32::MIN, f32::max)))
                }
                _ => None,
            })
            .collect();
        spans.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut covered = 0.0;
        let mut reach = f32::MIN;
        for (from, to) in spans {
            covered += (to - from.max(reach)).max(0.0);
            reach = reach.max(to);
        }
        let covered_m = f64::from(covered) * line.line_m / f64::from(line.right - line.left);
        assert!((line.line_m - covered_m - bare_m).abs() < 0.1, "run {run}: {covered_m} of {}", line.line_m);
    }
}

proptest! {
    #[test]
    fn the_axis_goes_there_and_back(along in 0.0..1.0_f64, width in 150.0..2000.0_f32) {
        let hand = hand::field();
        let line = line(&hand.scene(), 0, &view(width, 128.0));
        let along_m = along * line.line_m;
        let back = line.along_at(line.x_of(along_m).clamp(line.left, line.right)).unwrap();
        prop_assert!((back - along_m).abs() < 0.01, "{along_m} {back}");
    }

    #[test]
    fn no_text_lies_over_another(width in 20.0..1600.0_f32, height in 20.0..300.0_f32, run in 0..6_usize, vertex in 0..5_usize) {
        let kinds = hand::kinds();
        for hand in [&kinds, &hand::field()] {
            let view = LineView { picked: Some(Thing::RunCorner { run: 0, vertex }), ..view(width, height) };
            let line = line(&hand.scene(), run, &view);
            let overlaps = sheet::overlaps(&line.ink);
            prop_assert!(overlaps.is_empty(), "{overlaps:?}");
            for item in &line.ink {
                let Some(corners) = sheet::text_corners(item) else { continue };
                prop_assert!(corners.iter().all(|at| at[0] >= 0.0 && at[0] <= width), "{item:?} leaves {width}");
            }
        }
    }
}
