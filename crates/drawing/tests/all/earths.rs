//! The drop where earth stakes would earth best: only while that is suggested and asked about, seen on every ground.

use crate::hand;
use crate::sheet::contrast;
use drawing::{Drawing, Form, Ink, Role, Theme, View};
use plan::{Damp, EarthStakes, Plan, Point, Run};

/// A run with one stake in dry ground, and damp ground within reach of its earth lead.
fn hollow() -> Plan {
    let outline = [(0.0, 0.0), (40.0, 0.0), (40.0, 35.0), (0.0, 35.0)].map(Point::from).to_vec();
    let stakes = EarthStakes { places: vec![Point::new(-4.0, 12.0)], lead_m: Some(8.0), ..EarthStakes::default() };
    let feed = Point::new(0.0, 8.0);
    let run = Run {
        id: "run-1".to_owned(),
        outline,
        feed_at: Some(feed),
        energizer_at: Some(Point::new(-2.0, 8.0)),
        earth_stakes: stakes,
        ..Run::default()
    };
    let mut plan = Plan { runs: vec![run], ..Plan::default() };
    plan.ground.soil.resistivity_ohm_m = Some(200.0);
    let wet = [(-12.0, -4.0), (-6.0, -4.0), (-6.0, 6.0), (-12.0, 6.0)].map(Point::from).to_vec();
    plan.ground.damp = vec![Damp { outline: wet, resistivity_ohm_m: Some(20.0), ..Damp::default() }];
    plan
}

fn drawn(plan: &Plan) -> Drawing {
    let worked = workup::workup(plan, workup::Depth::Quick);
    let findings = care::Findings::default();
    drawing::map(&drawing::Scene { plan, workup: &worked, findings: &findings, words: words::Words::default() })
}

fn places(drawing: &Drawing) -> Vec<Point> {
    let best = drawing.shapes().filter(|shape| shape.role == Role::EarthBest);
    best.filter_map(|shape| if let Form::Mark { at, .. } = shape.form { Some(at) } else { None }).collect()
}

fn view(theme: Theme, earth: bool) -> View {
    let bounds = Some((Point::new(-16.0, -6.0), Point::new(45.0, 40.0)));
    View { earth, ..View::fit(bounds, [900.0, 700.0], 10.0, theme) }
}

/// The ink that only the suggestion puts down.
fn own(drawing: &Drawing, theme: Theme) -> Vec<Ink> {
    let without = drawing.ink(&view(theme, false));
    drawing.ink(&view(theme, true)).into_iter().filter(|item| !without.contains(item)).collect()
}

#[test]
fn it_stands_where_the_stakes_would_until_they_stand_there() {
    let mut plan = hollow();
    let worked = workup::workup(&plan, workup::Depth::Quick);
    let best = worked.runs[0].dampest.clone().unwrap();
    assert!(best.is_better(), "{best:?}");
    let drawing = drawn(&plan);
    assert_eq!(places(&drawing), best.places);
    let ink = own(&drawing, Theme::Light);
    let p = Theme::Light.palette();
    let drop = ink.iter().find_map(|item| match item {
        Ink::Line { spots, closed: true, colour, .. } if *colour == p.ghost => Some(spots.clone()),
        _ => None,
    });
    let [right, down] = view(Theme::Light, true).spot(best.places[0]);
    let drop = drop.unwrap();
    let tip = drop.iter().map(|spot| spot[1]).fold(f32::INFINITY, f32::min);
    let foot = drop.iter().map(|spot| spot[1]).fold(f32::NEG_INFINITY, f32::max);
    assert!(drop.iter().all(|spot| (spot[0] - right).abs() < 10.0), "about its place");
    assert!(down - tip > foot - down && foot > down, "a drop, its tip up: {tip} {down} {foot}");
    // Where they stand there, nothing is suggested, whatever the view asks.
    plan.runs[0].earth_stakes.places.clone_from(&best.places);
    let there = drawn(&plan);
    assert_eq!(places(&there), []);
    assert_eq!(own(&there, Theme::Light), []);
    // A hidden run suggests nothing.
    let mut hidden = hollow();
    hidden.runs[0].hidden = true;
    assert_eq!(places(&drawn(&hidden)), []);
}

#[test]
fn what_changed_elsewhere_changes_it_in_a_map_that_is_drawn_again() {
    let (mut plan, words, findings) = (hollow(), words::Words::default(), care::Findings::default());
    let was = drawn(&plan);
    plan.ground.damp.clear();
    let workup = workup::workup(&plan, workup::Depth::Quick);
    let scene = drawing::Scene { plan: &plan, workup: &workup, findings: &findings, words };
    assert_eq!(places(&drawing::map_again(&scene, was, Some(&[]))), []);
}

#[test]
fn it_stands_out_from_every_ground() {
    for theme in [Theme::Light, Theme::Dark, Theme::Contrast] {
        let p = theme.palette();
        assert!(!own(&drawn(&hollow()), theme).is_empty(), "{theme:?}");
        // Its inside is the sheet's; marks owe their ground 3 (WCAG 2.2, 1.4.11), in high contrast 4.5.
        let owed = if theme == Theme::Contrast { 4.5 } else { 3.0 };
        for on in [p.sheet, p.paper, p.grass, p.run, p.strip, p.water] {
            assert!(contrast(p.ghost, on) >= owed, "{theme:?} on {on:?}: {}", contrast(p.ghost, on));
        }
    }
}

/// A tag whose place is where the earth would be best stands beside the drop while that is shown, and on its place else.
#[test]
fn a_tag_keeps_off_the_drop() {
    let plan = hollow();
    let worked = workup::workup(&plan, workup::Depth::Quick);
    let at = worked.runs[0].dampest.clone().unwrap().places[0];
    let finding = hand::finding(care::Severity::Warning, vec![at]);
    let findings = care::Findings { runs: vec![vec![finding]], plan: Vec::new() };
    let words = words::Words::default();
    let drawing = drawing::map(&drawing::Scene { plan: &plan, workup: &worked, findings: &findings, words });
    let p = Theme::Light.palette();
    let tag = |earth: bool| -> Vec<[f32; 2]> {
        let ink = drawing.ink(&view(Theme::Light, earth));
        let rings = ink.iter().find_map(|item| match item {
            Ink::Area { rings, fill } if *fill == p.warning_fill && rings[0].len() == 5 => Some(rings[0].clone()),
            _ => None,
        });
        rings.unwrap()
    };
    let drop = own(&drawing, Theme::Light).into_iter().find_map(|item| match item {
        Ink::Line { spots, closed: true, colour, .. } if colour == p.ghost => Some(spots),
        _ => None,
    });
    let box_of = |ring: &[[f32; 2]]| {
        let ends = |axis: usize| {
            let of = ring.iter().map(move |spot| spot[axis]);
            (of.clone().fold(f32::INFINITY, f32::min), of.fold(f32::NEG_INFINITY, f32::max))
        };
        [ends(0), ends(1)]
    };
    let (drop, spot) = (box_of(&drop.unwrap()), view(Theme::Light, true).spot(at));
    let apart = |tag: &[[f32; 2]]| {
        let tag = box_of(tag);
        (0..2).any(|axis| tag[axis].1 <= drop[axis].0 || drop[axis].1 <= tag[axis].0)
    };
    assert!(apart(&tag(true)), "{:?} on {drop:?}", tag(true));
    let rests = tag(false)[3];
    assert!((rests[0] - spot[0]).hypot(rests[1] - spot[1]) < 0.5, "{rests:?}, {spot:?}");
    // And there it is picked.
    let [right, down] = tag(true)[3];
    let thing = drawing.thing_at(&view(Theme::Light, true), [right, down - 9.0], 8.0);
    assert_eq!(thing, Some(drawing::Thing::Finding { run: Some(0), finding: 0 }));
}
