//! Readings and the run that is only thought of: where their signs stand, and what keeps off them.

use crate::hand;
use crate::sheet;
use drawing::map::readings::{newest, of_run};
use drawing::{Drawing, Ghost, GhostMark, Ink, LineView, Theme, Thing, View, line, map};
use plan::{Point, Reading, ReadingKind, Rest};
use proptest::prelude::*;

fn reading(hand: &hand::Hand, kind: ReadingKind, along_m: f64, value: f64, when: &str) -> Reading {
    let mut rest = Rest::new();
    rest.insert("when".to_owned(), when.into());
    Reading { run: hand.plan.runs[0].id.clone(), kind, along_m: Some(along_m), value: Some(value), rest }
}

/// The field with five readings: two at one place, of which the later in the list is the older.
fn read() -> hand::Hand {
    let mut hand = hand::field();
    hand.plan.readings = vec![
        reading(&hand, ReadingKind::FenceKv, 75.0, 2.6, "2027-05-10"),
        reading(&hand, ReadingKind::FenceKv, 75.2, 6.6, "2027-05-03"),
        reading(&hand, ReadingKind::FenceKv, 20.0, 3.13, "2027-05-10"),
        reading(&hand, ReadingKind::EarthKv, 0.0, 0.4, "2027-05-10"),
        reading(&hand, ReadingKind::Ticking, 120.0, 0.0, "2027-05-11"),
    ];
    hand
}

fn texts(ink: &[Ink]) -> Vec<&str> {
    ink.iter().filter_map(|item| if let Ink::Text { text, .. } = item { Some(text.as_str()) } else { None }).collect()
}

fn near(drawing: &Drawing) -> View {
    let view = View::fit(drawing.bounds(), [1600.0, 1000.0], 20.0, Theme::Light);
    View { px_per_m: 11.0, ..view }
}

#[test]
fn readings_stand_in_the_order_of_their_days_and_the_newest_counts() {
    let hand = read();
    let run = &hand.plan.runs[0].id;
    assert_eq!(of_run(&hand.plan, run), [1, 0, 2, 3, 4]);
    assert_eq!(newest(&hand.plan, run), [0, 2, 3, 4]);
    assert!(of_run(&hand.plan, "another").is_empty());
}

#[test]
fn each_newest_reading_has_a_sign_and_can_be_picked_by_its_board() {
    let hand = read();
    let drawing = map(&hand.scene());
    let view = near(&drawing);
    let ink = drawing.ink(&view);
    let says = texts(&ink);
    for want in ["2.6", "3.1", "0.4", "ticks"] {
        assert_eq!(says.iter().filter(|text| **text == want).count(), 1, "{want}: {says:?}");
    }
    assert!(!says.contains(&"6.6"), "an older reading has no sign");
    let at = ink.iter().find_map(|item| match item {
        Ink::Text { at, text, .. } if text == "2.6" => Some(*at),
        _ => None,
    });
    assert_eq!(drawing.thing_at(&view, at.unwrap(), 6.0), Some(Thing::Reading { run: 0, reading: 0 }));
    // The run's ground lies within: signs stand on the inner side.
    let foot = view.place(at.unwrap());
    assert!((30.0..68.0).contains(&foot.east_m) && (16.0..60.0).contains(&foot.north_m), "{foot:?}");
}

#[test]
fn on_the_unfolded_line_the_sign_stands_over_its_place() {
    let hand = read();
    let view = LineView { width: 1080.0, height: 128.0, theme: Theme::Dark, picked: None, hovered: None, stale: false };
    let line = line(&hand.scene(), 0, &view);
    let sign = line.ink.iter().find_map(|item| match item {
        Ink::Text { at, text, .. } if text == "2.6" => Some(*at),
        _ => None,
    });
    let sign = sign.unwrap();
    assert!((sign[0] - line.x_of(75.0)).abs() < 0.1 && sign[1] < line.axis);
    assert_eq!(line.thing_at(sign, 2.0), Some(Thing::Reading { run: 0, reading: 0 }));
    // The post beneath its foot is still at hand.
    let post = line.thing_at([line.x_of(75.0), line.axis + 2.0], 6.0);
    assert!(matches!(post, Some(Thing::Post { .. })), "{post:?}");
}

fn ghost() -> Ghost {
    Ghost {
        outline: hand::points(&[(59.62, 15.5), (68.91, 38.71), (92.0, 30.0), (80.0, 5.0)]),
        closed: true,
        stays: Some([Point::new(59.62, 15.5), Point::new(68.91, 38.71)]),
        mark: GhostMark::Letter("B".to_owned()),
    }
}

#[test]
fn a_thought_of_run_lies_beneath_the_net_and_is_dashed_but_where_it_stays() {
    let hand = hand::field();
    let drawing = map(&hand.scene());
    let view = near(&drawing);
    let colours = Theme::Light.palette();
    let ink = drawing.ink_with(&view, Some(&ghost()));
    let fill = ink.iter().position(|item| matches!(item, Ink::Area { fill, .. } if *fill == colours.ghost_fill));
    let dashed: Vec<usize> = (0..ink.len())
        .filter(|&index| matches!(&ink[index], Ink::Line { colour, dash: Some(_), .. } if *colour == colours.ghost))
        .collect();
    assert_eq!(dashed.len(), 3, "the side that stays is not dashed");
    let net = ink
        .iter()
        .position(|item| matches!(item, Ink::Line { colour, width, .. } if *colour == colours.edge && *width > 5.0));
    assert!(fill.unwrap() < dashed[0] && dashed[2] < net.unwrap());
    assert!(texts(&ink).contains(&"B"));
    assert_eq!(drawing.ink_with(&view, None), drawing.ink(&view));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn no_words_lie_over_signs_and_letters(
        east in 0.0..1.0_f64, north in 0.0..1.0_f64, zoom in -1.2..2.4_f64, dark in any::<bool>(),
        width in 60.0..1600.0_f32, height in 60.0..1000.0_f32,
    ) {
        let hand = read();
        let drawing = map(&hand.scene());
        let (low, high) = drawing.bounds().unwrap();
        let share = |low: f64, high: f64, share: f64| low + (high - low) * share;
        let middle = Point::new(share(low.east_m, high.east_m, east), share(low.north_m, high.north_m, north));
        let theme = if dark { Theme::Dark } else { Theme::Light };
        let view = View { middle, px_per_m: 10_f64.powf(zoom), size: [width, height], theme, ..near(&drawing) };
        let ink = drawing.ink_with(&view, Some(&ghost()));
        prop_assert!(sheet::finite(&ink));
        let overlaps = sheet::overlaps(&ink);
        prop_assert!(overlaps.is_empty(), "{overlaps:?} in {view:?}");
    }
}

#[test]
fn nonsense_is_drawn_without_panic() {
    let mut hand = read();
    for (along_m, value) in [(f64::NAN, 1.0), (f64::INFINITY, 1.0), (1e300, f64::NAN), (-5.0, -1e300)] {
        hand.plan.readings.push(reading(&hand, ReadingKind::FenceKv, along_m, value, ""));
    }
    let drawing = map(&hand.scene());
    let view = near(&drawing);
    let far = f64::MAX;
    let nonsense = [(f64::NAN, 0.0), (far, far), (0.0, f64::INFINITY)];
    let thought = Ghost { outline: hand::points(&nonsense), stays: Some([Point::new(far, far); 2]), ..ghost() };
    assert!(sheet::finite(&drawing.ink_with(&view, Some(&thought))));
    let none = Ghost { outline: Vec::new(), stays: None, ..ghost() };
    assert!(sheet::finite(&drawing.ink_with(&view, Some(&none))));
}

/// Where a keeper reads at the feed, the board steps off the energizer and the pin that stand there too.
#[test]
fn a_board_slides_off_other_signs_and_is_picked_where_it_stands() {
    let mut hand = hand::field();
    let corner = hand.plan.runs[0].outline[0];
    hand.plan.readings = vec![reading(&hand, ReadingKind::FenceKv, 0.0, 4.4, "2027-05-10")];
    let figure = |hand: &hand::Hand| {
        let drawing = map(&hand.scene());
        let view = near(&drawing);
        let at = drawing.ink(&view).into_iter().find_map(|item| match item {
            Ink::Text { at, text, .. } if text == "4.4" => Some(at),
            _ => None,
        });
        let at = at.unwrap();
        assert_eq!(drawing.thing_at(&view, at, 6.0), Some(Thing::Reading { run: 0, reading: 0 }));
        (at, view.spot(corner))
    };
    let ([right, _], [corner_right, _]) = figure(&hand);
    // Its needle stands before the figure.
    assert!((right - corner_right - 8.0).abs() < 6.0, "over its place: {right}, {corner_right}");
    let unit = Point::new(corner.east_m - 2.0, corner.north_m + 1.8);
    hand.plan.runs[0].energizer_at = Some(unit);
    let ([right, down], _) = figure(&hand);
    let [unit_right, unit_down] = near(&map(&hand.scene())).spot(unit);
    let (off_right, off_down) = ((right - 8.0 - unit_right).abs(), (down - unit_down).abs());
    assert!(off_right > 26.0 + 9.0 || off_down > 9.0 + 8.0, "{right} {down}, {unit_right} {unit_down}");
}
