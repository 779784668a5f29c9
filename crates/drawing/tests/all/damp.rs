//! Damp ground: a hatch of its own that is seen on every ground, picked and hidden; and the energizer at its place.

use crate::hand;
use crate::sheet;
use crate::sheet::contrast;
use drawing::{Drawing, Form, Ink, Role, Theme, Thing, View};
use plan::{Damp, EarthStakes, Plan, Point};

fn drawn(plan: &Plan) -> Drawing {
    let worked = workup::workup(plan, workup::Depth::Quick);
    let findings = care::Findings::default();
    drawing::map(&drawing::Scene { plan, workup: &worked, findings: &findings, words: words::Words::default() })
}

fn hollow() -> Plan {
    let outline = [(10.0, 10.0), (30.0, 10.0), (30.0, 25.0), (10.0, 25.0)].map(Point::from).to_vec();
    let mut plan = Plan::default();
    plan.ground.damp = vec![Damp { name: "Hollow".to_owned(), outline, ..Damp::default() }];
    plan
}

fn view(theme: Theme) -> View {
    View::fit(Some((Point::new(0.0, 0.0), Point::new(45.0, 35.0))), [900.0, 700.0], 10.0, theme)
}

#[test]
fn its_strokes_lie_level_inside_and_stand_out_from_every_ground() {
    let (with, bare) = (drawn(&hollow()), drawn(&Plan::default()));
    for theme in [Theme::Light, Theme::Dark, Theme::Contrast, Theme::Print] {
        let p = theme.palette();
        for px_per_m in [4.0, 18.0, 60.0] {
            let mut view = view(theme);
            view.px_per_m = px_per_m;
            let (all, none) = (with.ink(&view), bare.ink(&view));
            let strokes: Vec<&Vec<[f32; 2]>> = all
                .iter()
                .filter(|item| !none.contains(item))
                .filter_map(|item| match item {
                    Ink::Line { spots, colour, dash: None, .. } if spots.len() == 2 && *colour == p.water_edge => {
                        Some(spots)
                    }
                    _ => None,
                })
                .collect();
            let level: Vec<_> = strokes.iter().filter(|line| (line[0][1] - line[1][1]).abs() < 1e-3).collect();
            assert!(level.len() > 4, "{theme:?} at {px_per_m}: {}", level.len());
            assert!(level.len() < 20_000);
            for line in level.iter().filter(|line| (line[0][0] - line[1][0]).abs() < 7.5) {
                for end in line.iter() {
                    let at = view.place(*end);
                    let inside = (9.99..=30.01).contains(&at.east_m) && (9.99..=25.01).contains(&at.north_m);
                    assert!(inside, "{theme:?} at {px_per_m}: {at:?}");
                }
            }
        }
        // Marks owe their ground 3 (WCAG 2.2, 1.4.11), in high contrast 4.5.
        let owed = if theme == Theme::Contrast { 4.5 } else { 3.0 };
        for on in [p.sheet, p.paper, p.grass, p.run, p.strip, p.water] {
            let shaded = sheet::over(p.shade, on);
            for on in [on, shaded] {
                assert!(contrast(p.water_edge, on) >= owed, "{theme:?} on {on:?}: {}", contrast(p.water_edge, on));
            }
        }
    }
}

#[test]
fn it_is_picked_by_its_ground_and_drawn_no_more_where_it_is_hidden() {
    let mut plan = hollow();
    let drawing = drawn(&plan);
    let view = view(Theme::Light);
    let at = |drawing: &Drawing, east_m: f64, north_m: f64| {
        drawing.thing_at(&view, view.spot(Point::new(east_m, north_m)), 9.0)
    };
    assert_eq!(at(&drawing, 20.0, 18.0), Some(Thing::Damp { damp: 0 }));
    assert_eq!(at(&drawing, 35.0, 18.0), None);
    plan.ground.damp[0].hidden = true;
    let hidden = drawn(&plan);
    assert_eq!(at(&hidden, 20.0, 18.0), None);
    assert!(hidden.shapes().all(|shape| !matches!(shape.thing, Some(Thing::Damp { .. }))));
}

#[test]
fn the_energizer_stands_where_it_is_said_to_and_its_leads_go_from_there() {
    let mut hand = hand::field();
    let at = Point::new(-20.0, -15.0);
    hand.plan.runs[0].energizer_at = Some(at);
    let places = [(-30.0, -15.0), (-24.0, -15.0), (-27.0, -15.0)].map(Point::from).to_vec();
    hand.plan.runs[0].earth_stakes = EarthStakes { places, ..EarthStakes::default() };
    let drawing = drawing::map(&hand.scene());
    let of = |role: Role| drawing.shapes().filter(move |shape| shape.role == role && shape.run == Some(0));
    let mark = of(Role::Energizer).next().unwrap();
    assert_eq!(
        (&mark.form, mark.thing),
        (&Form::Mark { at, toward_rad: std::f64::consts::FRAC_PI_2 }, Some(Thing::Energizer { run: 0 }))
    );
    let paths = |role: Role| -> Vec<Vec<Point>> {
        of(role)
            .filter_map(|shape| if let Form::Path { points, .. } = &shape.form { Some(points.clone()) } else { None })
            .collect()
    };
    assert_eq!(paths(Role::Lead)[0][0], at);
    // The earth lead goes to the nearest stake, and the further ones hang on each other.
    let east = |from: f64, to: f64| vec![Point::new(from, -15.0), Point::new(to, -15.0)];
    assert_eq!(paths(Role::EarthLead), [east(-20.0, -24.0), east(-24.0, -27.0), east(-27.0, -30.0)]);
}
