//! Words and marks stand out from every ground that they lie on, over a picture as over the paper: measured in the ink,
//! as it is put down.

use crate::hand::{self, Hand};
use crate::sheet::over;
use crate::sheet::seen::too_faint;
use drawing::{Colour, Drawing, Ink, Theme, Thing, View, map};
use plan::{Damp, Gateway, KeepOut, Label, LabelSize, Point, Shade, SpotHeight, TapePoint, Wall, WallKind};

/// What may lie beneath: the darkest, the lightest, and a meadow from the air.
const PICTURES: [Colour; 3] = [[0, 0, 0, 255], [255; 4], [112, 124, 90, 255]];
/// How strong it may be.
const OPACITIES: [f64; 4] = [0.1, plan::defaults::UNDERLAY_OPACITY, 0.66, 1.0];
const SCALES: [f64; 3] = [3.0, 7.0, 16.0];

/// A field with everything on it that a keeper can draw, half on and half off the run.
fn everything() -> Hand {
    let mut hand = hand::field();
    let ground = &mut hand.plan.ground;
    let shade = |name: &str, places: &[(f64, f64)]| Shade {
        name: name.to_owned(),
        outline: hand::points(places),
        ..Shade::default()
    };
    // On the run and its strip, on the paddock, on bare paper.
    ground.shade = vec![
        shade("Limes", &[(50.0, 36.0), (72.0, 34.0), (74.0, 48.0), (52.0, 50.0)]),
        shade("", &[(104.0, 20.0), (116.0, 22.0), (112.0, 34.0)]),
        shade("Copse", &[(146.0, 60.0), (160.0, 60.0), (160.0, 78.0), (146.0, 76.0)]),
    ];
    let outline = hand::points(&[(34.0, 10.0), (54.0, 8.0), (56.0, 30.0), (36.0, 28.0)]);
    ground.damp = vec![Damp { name: "Hollow".to_owned(), outline, ..Damp::default() }];
    ground.keep_outs.push(KeepOut::new(hand::points(&[(106.0, 24.0), (110.0, 24.0), (110.0, 28.0)])));
    ground.gateway = Some(Gateway { at: Point::new(2.0, 20.0), rest: plan::Rest::new() });
    hand.plan.heights = [(30.0, 60.0), (56.0, 44.0), (108.0, 30.0), (150.0, 66.0)]
        .map(|at| SpotHeight { at: Point::from(at), up_m: 1.25, rest: plan::Rest::new() })
        .into();
    let wall = |kind: WallKind, places: &[(f64, f64)]| Wall {
        name: format!("{kind:?}"),
        kind: Some(kind),
        path: hand::points(places),
        holds_birds: Some(true),
        ..Wall::default()
    };
    hand.plan.walls = vec![
        wall(WallKind::Wall, &[(70.0, 52.0), (96.0, 70.0)]),
        wall(WallKind::Hedge, &[(12.0, 44.0), (34.0, 46.0)]),
        wall(WallKind::Fence, &[(76.0, 10.0), (112.0, 8.0)]),
    ];
    let label = |at: (f64, f64), text: &str, size| Label {
        at: Point::from(at),
        text: text.to_owned(),
        size: Some(size),
        ..Label::default()
    };
    hand.plan.labels =
        vec![label((60.0, 46.0), "Trough", LabelSize::Large), label((15.0, 12.0), "Old gate", LabelSize::Small)];
    let known = |at: (f64, f64)| TapePoint { at: Point::from(at), ..TapePoint::default() };
    hand.plan.tape_points = [(20.0, 66.0), (118.0, 50.0), (64.0, 42.0)].map(known).into();
    hand.plan.runs[0].drop_at = Some(Point::new(12.0, 26.0));
    let fouled = hand.goes_over();
    let wind = workup::bracing::Wind { fouled: Some(fouled), ..Default::default() };
    hand.workup.runs[0].bracing = Some(workup::bracing::Bracing { wind, ..Default::default() });
    hand
}

/// Views of all of it, near and far, bare and with something in hand.
fn views(drawing: &Drawing, theme: Theme) -> Vec<View> {
    let picks = [None, Some(Thing::RunCorner { run: 0, vertex: 1 }), Some(Thing::Shade { shade: 0 })];
    let fit = View::fit(drawing.bounds(), [1200.0, 800.0], 20.0, theme);
    let view = |(px_per_m, picked): (f64, Option<Thing>)| View {
        px_per_m,
        picked,
        handles: picked.is_some(),
        wind: true,
        ..fit
    };
    SCALES
        .into_iter()
        .zip(picks)
        .map(view)
        .chain([View { middle: Point::new(48.0, 32.0), ..view((16.0, None)) }])
        .collect()
}

#[test]
fn over_any_picture_every_word_keeps_four_and_a_half_and_every_mark_three() {
    let hand = everything();
    let (drawing, mut faults, mut measured) = (map(&hand.scene()), Vec::new(), [0, 0]);
    for theme in Theme::OF_SCREENS {
        let paper = theme.palette().paper;
        let strong = |picture: Colour| {
            OPACITIES.map(|opacity| over([picture[0], picture[1], picture[2], (255.0 * opacity).round() as u8], paper))
        };
        let beneath: Vec<Colour> = PICTURES.into_iter().flat_map(strong).collect();
        for view in views(&drawing, theme) {
            let bedded = drawing.ink(&View { underlay: true, ..view });
            let (faint, counts) = too_faint(&bedded, theme, &beneath);
            (0..2).for_each(|of| measured[of] += counts[of]);
            faults.extend(faint.into_iter().map(|fault| format!("{theme:?} {} px/m {fault}", view.px_per_m)));
            // What stands beside the map's own: scale, north, the key of volts, a tape.
            let (words, corner) = (words::Words::default(), [1100.0, 700.0]);
            let mut beside = drawing::furniture::scale_bar(&view, words, corner);
            beside.extend(drawing::furniture::north(theme, words, corner));
            beside.extend(drawing::furniture::volts_key(theme, words, 4.0, [800.0, 60.0]));
            let taped = [Point::new(20.0, 20.0), Point::new(80.0, 50.0)];
            beside.extend(drawing::tape::ink(&view, words, &taped, false));
            let (faint, counts) = too_faint(&drawing::bedded(beside, theme), theme, &beneath);
            assert!(counts[0] > 6 && counts[1] > 4, "{counts:?}");
            faults.extend(faint.into_iter().map(|fault| format!("{theme:?} beside {fault}")));
            // The measure sees what beds and plates are for.
            let sheet = theme.palette().sheet;
            let on_sheet = |item: &Ink| matches!(item, Ink::Area { fill: colour, .. } | Ink::Line { colour, .. } if *colour == sheet);
            let bare: Vec<Ink> = bedded.into_iter().filter(|item| !on_sheet(item)).collect();
            let (faint, _) = too_faint(&bare, theme, &beneath);
            assert!(faint.len() > 50, "{theme:?}: {} without", faint.len());
        }
    }
    assert!(measured[0] > 150 && measured[1] > 1500, "{measured:?} words and marks were measured");
    assert!(faults.is_empty(), "{} of {measured:?}: {:#?}", faults.len(), &faults[..faults.len().min(12)]);
}

#[test]
fn on_the_paper_every_word_and_mark_stands_out_from_every_ground_that_it_lies_on() {
    let hand = everything();
    let (drawing, mut faults, mut measured) = (map(&hand.scene()), Vec::new(), [0, 0]);
    for theme in [Theme::Light, Theme::Dark, Theme::Contrast, Theme::Print] {
        for view in views(&drawing, theme) {
            let (faint, counts) = too_faint(&drawing.ink(&view), theme, &[theme.palette().paper]);
            (0..2).for_each(|of| measured[of] += counts[of]);
            faults.extend(faint.into_iter().map(|fault| format!("{theme:?} {} px/m {fault}", view.px_per_m)));
        }
    }
    assert!(measured[0] > 200 && measured[1] > 2000, "{measured:?} words and marks were measured");
    assert!(faults.is_empty(), "{} of {measured:?}: {:#?}", faults.len(), &faults[..faults.len().min(12)]);
}

#[test]
fn without_a_picture_nothing_is_bedded() {
    let hand = everything();
    let drawing = map(&hand.scene());
    let view = views(&drawing, Theme::Light)[1];
    let (plain, bedded) = (drawing.ink(&view), drawing.ink(&View { underlay: true, ..view }));
    let sheet = Theme::Light.palette().sheet;
    let beds =
        |ink: &[Ink]| ink.iter().filter(|item| matches!(item, Ink::Line { colour, .. } if *colour == sheet)).count();
    assert!(bedded.len() > plain.len() * 3 / 2 && beds(&bedded) > beds(&plain) + 100);
    // Once the first word is reached no bed follows: all of them lie beneath every mark.
    let marks = drawing::bedded(plain.clone(), Theme::Light);
    let first = marks.iter().position(|item| matches!(item, Ink::Text { .. } | Ink::Disc { .. })).unwrap();
    let first = marks[first..].iter().position(|item| plain.contains(item)).unwrap() + first;
    assert!(first > 100 && marks.len() > plain.len() + 100, "{first} of {}", marks.len());
    assert!(marks[first..].iter().all(|item| plain.contains(item)));
}

/// Shade is told by its rim: crowns all round, on whatever it lies, and its name.
#[test]
fn shade_has_a_rim_of_crowns_and_its_name_at_every_distance() {
    let mut plan = plan::Plan::default();
    let outline = hand::points(&[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)]);
    plan.ground.shade = vec![Shade { name: "Limes".to_owned(), outline: outline.clone(), ..Shade::default() }];
    let hand = Hand { workup: workup::workup(&plan, workup::Depth::Quick), findings: care::Findings::default(), plan };
    let drawing = map(&hand.scene());
    for theme in [Theme::Light, Theme::Dark, Theme::Contrast, Theme::Print] {
        for px_per_m in [3.0, 8.0, 20.0] {
            let view = View { px_per_m, ..View::fit(drawing.bounds(), [1200.0, 800.0], 20.0, theme) };
            let ink = drawing.ink(&view);
            let edge = theme.palette().hedge_edge;
            let rim: Vec<[f32; 2]> = ink
                .iter()
                .filter_map(|item| match item {
                    Ink::Line { spots, colour, .. } if *colour == edge => Some(spots.clone()),
                    _ => None,
                })
                .flatten()
                .collect();
            // Never inside the outline by more than a corner that is cut, nor far out of it.
            let off = |spot: &[f32; 2]| {
                let at = view.place(*spot);
                let east = (at.east_m - 30.0).max(-at.east_m);
                let north = (at.north_m - 20.0).max(-at.north_m);
                east.max(north) * px_per_m
            };
            let (least, most) =
                rim.iter().map(off).fold((f64::MAX, f64::MIN), |(low, high), off| (low.min(off), high.max(off)));
            assert!(least > -5.0 && (1.5..6.0).contains(&most), "{theme:?} at {px_per_m}: {least:.1} to {most:.1}");
            let round = 100.0 * px_per_m;
            assert!(rim.len() as f64 > round / 12.0 * 5.0, "{theme:?} at {px_per_m}: {} places", rim.len());
            assert!(ink.iter().any(|item| matches!(item, Ink::Text { text, .. } if text == "Limes")));
        }
    }
}
