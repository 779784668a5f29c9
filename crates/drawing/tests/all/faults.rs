//! Faults and stretches of other grass: where their signs stand on the map and the line, picked where they are seen.

use crate::hand;
use crate::sheet;
use crate::sheet::contrast;
use drawing::{Form, Ink, LineView, Role, Theme, Thing, View, line, map};
use plan::{Fault, FaultKind, LeakageZone, Point, Rest};
use proptest::prelude::*;

const KINDS: [FaultKind; 4] = [FaultKind::Short, FaultKind::Break, FaultKind::LineBreak, FaultKind::Join];
const THEMES: [Theme; 4] = [Theme::Light, Theme::Dark, Theme::Contrast, Theme::Print];

/// The field with a fault of each kind a metre off its line, and a stretch of grass over corner 1.
fn faulty() -> hand::Hand {
    let mut hand = hand::field();
    let outline = hand.plan.runs[0].outline.clone();
    let amid = |from: Point, to: Point| {
        Point::new(f64::midpoint(from.east_m, to.east_m) + 0.5, f64::midpoint(from.north_m, to.north_m) + 0.5)
    };
    let places = outline.windows(2).map(|pair| amid(pair[0], pair[1]));
    let fault = |(at, kind)| Fault { at, kind, ohm: Some(1_000.0), lines: Some(1), cause: None, rest: Rest::new() };
    hand.plan.runs[0].faults = places.zip(KINDS).map(fault).collect();
    let line_m = hand.workup.runs[0].lay.as_ref().unwrap().line_m;
    let zone = |from_m, to_m| LeakageZone { from_m, to_m, s_per_m: 1e-4, rest: Rest::new() };
    hand.plan.runs[0].leakage_zones = vec![zone(line_m - 6.0, 5.0)];
    hand
}

fn near(drawing: &drawing::Drawing) -> View {
    View { px_per_m: 14.0, ..View::fit(drawing.bounds(), [1600.0, 1000.0], 20.0, Theme::Light) }
}

#[test]
fn every_fault_has_its_sign_on_the_net_and_is_picked_there() {
    let hand = faulty();
    let drawing = map(&hand.scene());
    let lay = hand.workup.runs[0].lay.as_ref().unwrap();
    for (index, kind) in KINDS.into_iter().enumerate() {
        let thing = Thing::Fault { run: 0, branch: None, fault: index };
        let sign = drawing.shapes().find_map(|shape| match (&shape.form, shape.role) {
            (Form::Mark { at, .. }, Role::Fault { kind: is }) if shape.thing == Some(thing) => Some((*at, is)),
            _ => None,
        });
        let (at, is) = sign.unwrap();
        assert_eq!(is, kind);
        assert!(lay.nearest_m(at).unwrap().1 < 1e-6, "{kind:?} stands off the net");
        let mut view = near(&drawing);
        view.middle = at;
        assert_eq!(drawing.thing_at(&view, view.spot(at), 8.0), Some(thing), "{kind:?}");
    }
}

#[test]
fn a_stretch_over_corner_1_is_a_band_outside_the_net_picked_beside_it_and_seen_at_both_ends_of_the_line() {
    let hand = faulty();
    let drawing = map(&hand.scene());
    let thing = Thing::Zone { run: 0, branch: None, zone: 0 };
    let band = drawing.shapes().find_map(|shape| match (&shape.form, shape.role) {
        (Form::Path { points, .. }, Role::Zone { more: true }) if shape.thing == Some(thing) => Some(points.clone()),
        _ => None,
    });
    let band = band.unwrap();
    let long_m: f64 =
        band.windows(2).map(|pair| (pair[1].east_m - pair[0].east_m).hypot(pair[1].north_m - pair[0].north_m)).sum();
    assert!((long_m - 11.0).abs() < 1e-6, "{long_m}");
    let view = LineView { width: 1080.0, height: 128.0, theme: Theme::Dark, picked: None, hovered: None, stale: false };
    let line = line(&hand.scene(), 0, &view);
    for along_m in [2.0, line.line_m - 2.0] {
        assert_eq!(line.thing_at([line.x_of(along_m), line.axis - 13.0], 1.0), Some(thing), "{along_m}");
    }
    for (index, _) in KINDS.iter().enumerate() {
        let fault = Thing::Fault { run: 0, branch: None, fault: index };
        let along_m = hand.workup.runs[0].lay.as_ref().unwrap();
        let landed = workup::faults::land(
            &hand.plan.runs[0],
            along_m,
            hand.plan.runs[0].faults[index].kind,
            hand.plan.runs[0].faults[index].at,
        );
        let x = line.x_of(landed.unwrap().along_m);
        assert_eq!(line.thing_at([x, line.axis], 1.0), Some(fault));
    }
}

#[test]
fn a_stretch_is_taken_by_either_end_on_the_map_and_on_the_line() {
    let hand = faulty();
    let drawing = map(&hand.scene());
    let line_m = hand.workup.runs[0].lay.as_ref().unwrap().line_m;
    for (last, along_m) in [(false, line_m - 6.0), (true, 5.0)] {
        let thing = Thing::ZoneEnd { run: 0, branch: None, zone: 0, last };
        let marks = drawing.shapes().filter(|shape| shape.thing == Some(thing));
        let marks: Vec<(Point, f64)> = marks
            .filter_map(|shape| match shape.form {
                Form::Mark { at, toward_rad } if shape.role == Role::ZoneEnd => Some((at, toward_rad)),
                _ => None,
            })
            .collect();
        let [(at, toward_rad)] = marks[..] else { panic!("{last}: {marks:?}") };
        let place = hand.workup.runs[0].lay.as_ref().unwrap().place_at(along_m).unwrap();
        assert!((at.east_m - place.east_m).hypot(at.north_m - place.north_m) < 1e-6, "{last}");
        for px_per_m in [2.0, 5.0, 14.0] {
            let view = View { px_per_m, middle: at, ..near(&drawing) };
            let [x, y] = view.spot(at);
            let spot = [x + 14.0 * toward_rad.cos() as f32, y - 14.0 * toward_rad.sin() as f32];
            assert_eq!(drawing.thing_at(&view, spot, 8.0), Some(thing), "{last} at {px_per_m}");
        }
        let view =
            LineView { width: 1080.0, height: 128.0, theme: Theme::Light, picked: None, hovered: None, stale: false };
        let line = line(&hand.scene(), 0, &view);
        assert_eq!(line.thing_at([line.x_of(along_m), line.axis - 15.0], 1.0), Some(thing));
    }
}

#[test]
fn the_grips_of_a_stretch_show_while_it_or_an_end_of_it_is_in_hand() {
    let hand = faulty();
    let drawing = map(&hand.scene());
    let zone = Thing::Zone { run: 0, branch: None, zone: 0 };
    let end = Thing::ZoneEnd { run: 0, branch: None, zone: 0, last: true };
    for theme in THEMES {
        let pick = theme.palette().pick;
        let picked = |thing| {
            let mut view = View { picked: thing, theme, ..near(&drawing) };
            view.middle = hand.plan.runs[0].outline[0];
            let lines = drawing.ink(&view).into_iter();
            lines.filter(|item| matches!(item, Ink::Line { colour, .. } if *colour == pick)).count()
        };
        assert!(picked(Some(zone)) > picked(None) + 2 && picked(Some(end)) > picked(None) + 2, "{theme:?}");
    }
}

#[test]
fn a_tag_keeps_off_a_faults_sign_and_both_are_picked_at_every_scale() {
    let mut hand = faulty();
    let lay = hand.workup.runs[0].lay.clone().unwrap();
    let stated = hand.plan.runs[0].faults.clone();
    let places = stated.iter().map(|fault| lay.place_at(lay.nearest_m(fault.at).unwrap().0).unwrap());
    let places = places.collect();
    hand.findings.runs[0] = vec![hand::finding(care::Severity::Danger, places)];
    let drawing = map(&hand.scene());
    let tag = Thing::Finding { run: Some(0), finding: 0 };
    for (index, fault) in stated.iter().enumerate().take(3) {
        let at = lay.place_at(lay.nearest_m(fault.at).unwrap().0).unwrap();
        for px_per_m in [1.0, 2.0, 4.0, 8.0, 16.0] {
            let view = View { px_per_m, middle: at, ..near(&drawing) };
            let [x, y] = view.spot(at);
            let sign = Thing::Fault { run: 0, branch: None, fault: index };
            // The diamond's upper half is where a tag on its place would lie.
            for up in [0.0, 3.0, 5.0] {
                assert_eq!(drawing.thing_at(&view, [x, y - up], 8.0), Some(sign), "fault {index} at {px_per_m}");
            }
            let beside = (-60..=60_i16).flat_map(|right| (-60..=60_i16).map(move |down| [right, down]));
            let mut beside = beside.map(|off| [x + f32::from(off[0]), y + f32::from(off[1])]);
            assert!(beside.any(|spot| drawing.thing_at(&view, spot, 8.0) == Some(tag)), "tag {index} at {px_per_m}");
        }
    }
}

#[test]
fn what_is_on_a_branch_is_drawn_there_and_its_corners_are_picked() {
    let mut hand = faulty();
    let at = hand.workup.runs[0].lay.as_ref().unwrap().place_at(20.0).unwrap();
    let far = |east_m: f64, north_m: f64| Point::new(at.east_m + east_m, at.north_m + north_m);
    let outline = vec![at, far(0.0, -12.0), far(15.0, -12.0)];
    let branch = plan::Branch {
        from_m: 20.0,
        outline: outline.clone(),
        nets: vec!["long".to_owned()],
        leakage_zones: vec![LeakageZone { from_m: 14.0, to_m: 24.0, s_per_m: 1e-4, rest: Rest::new() }],
        faults: vec![Fault { at: far(0.5, -6.0), ..hand.plan.runs[0].faults[0].clone() }],
        rest: Rest::new(),
    };
    hand.plan.runs[0].branches = vec![branch];
    let net = workup::LaidNet { kind: "long".to_owned(), start_m: 0.0, end_m: 27.0 };
    let laid = workup::LaidBranch {
        branch: 0,
        from_m: 20.0,
        at,
        vertices: outline.iter().copied().zip([0.0, 12.0, 27.0]).collect(),
        line_m: 27.0,
        spare_m: 0.0,
        short_m: 0.0,
        nets: vec![net],
        posts: Vec::new(),
        spare_posts: Vec::new(),
    };
    hand.workup.runs[0].lay.as_mut().unwrap().branches = vec![laid];
    let drawing = map(&hand.scene());
    let fault = Thing::Fault { run: 0, branch: Some(0), fault: 0 };
    let view = |middle| View { middle, ..near(&drawing) };
    let on_branch = far(0.0, -6.0);
    assert_eq!(drawing.thing_at(&view(on_branch), view(on_branch).spot(on_branch), 8.0), Some(fault));
    let says = drawing.ink(&View { picked: Some(fault), ..view(on_branch) });
    let said = |item: &Ink| matches!(item, Ink::Text { text, .. } if text == "What if: short, 1.0 kΩ to the ground");
    assert!(says.iter().any(said));
    for (vertex, &corner) in outline.iter().enumerate() {
        let thing = Thing::BranchCorner { run: 0, branch: 0, vertex };
        assert_eq!(drawing.thing_at(&view(corner), view(corner).spot(corner), 8.0), Some(thing));
    }
    let side = far(6.0, -12.0);
    let thing = Thing::BranchSide { run: 0, branch: 0, side: 1 };
    assert_eq!(drawing.thing_at(&view(side), view(side).spot(side), 4.0), Some(thing));
    let ends = drawing.shapes().filter(|shape| {
        matches!(shape.thing, Some(Thing::ZoneEnd { branch: Some(0), .. })) && shape.role == Role::ZoneEnd
    });
    assert_eq!(ends.count(), 2);
}

#[test]
fn the_plate_of_a_supposition_is_there_while_it_is_picked() {
    let hand = faulty();
    let drawing = map(&hand.scene());
    let says = |picked: Option<Thing>| -> Vec<String> {
        let ink = drawing.ink(&View { picked, ..near(&drawing) });
        let texts =
            ink.into_iter().filter_map(|item| if let Ink::Text { text, .. } = item { Some(text) } else { None });
        texts.filter(|text| text.starts_with("What if: ")).collect()
    };
    assert!(says(None).is_empty());
    assert_eq!(says(Some(Thing::Fault { run: 0, branch: None, fault: 0 })), ["What if: short, 1.0 kΩ to the ground"]);
    assert!(
        says(Some(Thing::Fault { run: 0, branch: None, fault: 3 }))[0].starts_with("What if: bad join, 1.0 kΩ, nets ")
    );
}

/// A diamond's edge and glyph lie on the sheet's colour, and its edge on every ground; tufts lie on the grounds.
#[test]
fn signs_of_faults_and_tufts_stand_out() {
    let hand = faulty();
    let drawing = map(&hand.scene());
    for theme in THEMES {
        let p = theme.palette();
        for (name, on) in
            [("sheet", p.sheet), ("paper", p.paper), ("grass", p.grass), ("run", p.run), ("strip", p.strip)]
        {
            for (what, colour) in [("fault", p.danger), ("picked fault", p.pick), ("tufts", p.hedge_edge)] {
                assert!(contrast(colour, on) >= 3.0, "{theme:?}: {what} on {name}");
            }
        }
        let ink = drawing.ink(&View { theme, ..near(&drawing) });
        let drawn = |colour| ink.iter().any(|item| matches!(item, Ink::Line { colour: is, .. } if *is == colour));
        assert!(drawn(p.danger) && drawn(p.hedge_edge), "{theme:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn no_words_lie_over_signs_and_each_other(
        east in 0.0..1.0_f64, north in 0.0..1.0_f64, zoom in -1.2..2.2_f64, picked in 0_usize..5,
    ) {
        let hand = faulty();
        let drawing = map(&hand.scene());
        let (low, high) = drawing.bounds().unwrap();
        let share = |low: f64, high: f64, share: f64| low + (high - low) * share;
        let middle = Point::new(share(low.east_m, high.east_m, east), share(low.north_m, high.north_m, north));
        let picked = if picked < 4 { Thing::Fault { run: 0, branch: None, fault: picked } } else { Thing::Zone { run: 0, branch: None, zone: 0 } };
        let view = View { middle, px_per_m: 10_f64.powf(zoom), picked: Some(picked), ..near(&drawing) };
        let ink = drawing.ink(&view);
        prop_assert!(sheet::finite(&ink));
        let overlaps = sheet::overlaps(&ink);
        prop_assert!(overlaps.is_empty(), "{overlaps:?} in {view:?}");
    }
}

#[test]
fn nonsense_is_drawn_without_panic() {
    let mut hand = faulty();
    let run = &mut hand.plan.runs[0];
    for far in [f64::NAN, f64::INFINITY, 1e300, -1e300] {
        run.faults.push(Fault { at: Point::new(far, 0.0), ..run.faults[0].clone() });
        run.leakage_zones.push(LeakageZone { from_m: far, to_m: -far, ..run.leakage_zones[0].clone() });
        run.leakage_zones.push(LeakageZone { from_m: 1.0, to_m: far, ..run.leakage_zones[0].clone() });
    }
    let drawing = map(&hand.scene());
    assert!(sheet::finite(&drawing.ink(&near(&drawing))));
    let view = LineView { width: 900.0, height: 104.0, theme: Theme::Light, picked: None, hovered: None, stale: false };
    assert!(sheet::finite(&line(&hand.scene(), 0, &view).ink));
    hand.workup.runs[0].lay = None;
    let drawing = map(&hand.scene());
    assert!(sheet::finite(&drawing.ink(&near(&drawing))));
}
