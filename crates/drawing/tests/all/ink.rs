//! Ink of the map: the same every time, never one text over another, and no panic whatever is drawn.

use crate::hand;
use crate::sheet;
use std::sync::LazyLock;

use care::Findings;
use drawing::{Drawing, Ink, Scene, Theme, Thing, View, map};
use plan::{Plan, Point, Run};
use proptest::prelude::*;
use words::Words;
use workup::Workup;

pub(crate) static DRAWINGS: LazyLock<Vec<Drawing>> = LazyLock::new(|| {
    [hand::field(), hand::bare(), hand::kinds(), hand::farm(12)].iter().map(|hand| map(&hand.scene())).collect()
});

fn any_thing() -> impl Strategy<Value = Option<Thing>> {
    let run = 0..6_usize;
    prop_oneof![
        Just(None),
        (run.clone(), 0..6_usize).prop_map(|(run, vertex)| Some(Thing::RunCorner { run, vertex })),
        (run.clone(), 0..6_usize).prop_map(|(run, side)| Some(Thing::RunSide { run, side })),
        (run.clone(), 0..40_usize).prop_map(|(run, post)| Some(Thing::Post { run, post })),
        run.clone().prop_map(|run| Some(Thing::Run { run })),
        run.clone().prop_map(|run| Some(Thing::Energizer { run })),
        run.clone().prop_map(|run| Some(Thing::EarthStakes { run })),
        run.clone().prop_map(|run| Some(Thing::EarthStake { run, stake: run % 3 })),
        run.prop_map(|run| Some(Thing::Feed { run })),
        (0..3_usize).prop_map(|finding| Some(Thing::Finding { run: Some(0), finding })),
        (0..3_usize).prop_map(|keep_out| Some(Thing::KeepOut { keep_out })),
        (0..3_usize).prop_map(|hazard| Some(Thing::Hazard { hazard })),
        Just(Some(Thing::Boundary)),
        Just(Some(Thing::Coop { coop: 0 })),
    ]
}

prop_compose! {
    pub(crate) fn any_view()(
        east in -0.2..1.2_f64, north in -0.2..1.2_f64, zoom in -1.2..2.6_f64,
        width in 60.0..1600.0_f32, height in 60.0..1000.0_f32, dark in any::<bool>(), stale in any::<bool>(),
        handles in any::<bool>(), picked in any_thing(), hovered in any_thing(), which in 0..4_usize,
    ) -> (usize, View) {
        let (low, high) = DRAWINGS[which].bounds().unwrap();
        let share = |low: f64, high: f64, share: f64| low + (high - low) * share;
        let middle = Point::new(share(low.east_m, high.east_m, east), share(low.north_m, high.north_m, north));
        let theme = if dark { Theme::Dark } else { Theme::Light };
        let px_per_m = 10_f64.powf(zoom);
        (which, View { middle, px_per_m, size: [width, height], theme, picked, hovered, stale, handles, wind: handles, underlay: stale, kept: [None; 2], held: [None; 2], earth: handles })
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(192))]

    #[test]
    fn no_text_lies_over_another((which, view) in any_view()) {
        let ink = DRAWINGS[which].ink(&view);
        prop_assert!(sheet::finite(&ink));
        let overlaps = sheet::overlaps(&ink);
        prop_assert!(overlaps.is_empty(), "{overlaps:?} in {view:?}");
    }

    #[test]
    fn nothing_lies_over_words_nor_words_across_marks((which, view) in any_view()) {
        let p = view.theme.palette();
        let spoiled = sheet::spoiled(&DRAWINGS[which].ink(&view), &[p.pick, p.edge, p.ghost, p.danger]);
        prop_assert!(spoiled.is_empty(), "{spoiled:?} in {view:?}");
    }

    #[test]
    fn words_are_never_cut_by_the_edge((which, view) in any_view()) {
        // Corner plates may leave with their corner; words that find their own place may not.
        for item in DRAWINGS[which].ink(&view) {
            let Some(corners) = sheet::text_corners(&item) else { continue };
            let Ink::Text { text, .. } = &item else { continue };
            if text.chars().all(|letter| letter.is_ascii_digit()) {
                continue;
            }
            let inside = corners.iter().all(|at| at[0] >= 0.0 && at[1] >= 0.0 && at[0] <= view.size[0] && at[1] <= view.size[1]);
            prop_assert!(inside, "{text} at {corners:?}");
        }
    }

    #[test]
    fn the_same_view_gives_the_same_ink((which, view) in any_view()) {
        prop_assert_eq!(DRAWINGS[which].ink(&view), DRAWINGS[which].ink(&view));
    }
}

/// The weakest post says its figure and its unit at every distance, and numbers of posts stand at theirs.
#[test]
fn the_weakest_post_and_the_numbers_of_posts_are_shown_at_every_distance() {
    let hand = hand::field();
    let drawing = map(&hand.scene());
    let lay = hand.workup.runs[0].lay.as_ref().unwrap();
    for theme in [Theme::Light, Theme::Print] {
        for (width, height) in [(1280.0, 800.0), (900.0, 600.0), (560.0, 420.0)] {
            let view = View::fit(drawing.bounds(), [width, height], 20.0, theme);
            let ink = drawing.ink(&view);
            let texts: Vec<(&[f32; 2], &String)> = ink
                .iter()
                .filter_map(|item| if let Ink::Text { at, text, .. } = item { Some((at, text)) } else { None })
                .collect();
            let weakest = |text: &&String| text.contains(" – ") && text.contains(" kV");
            assert!(texts.iter().any(|(_, text)| weakest(text)), "{theme:?} {width}: {texts:?}");
            let numbered: Vec<(usize, [f32; 2])> =
                texts.iter().filter_map(|(at, text)| Some((text.strip_prefix("post ")?.parse().ok()?, **at))).collect();
            let far = view.distance() == drawing::Distance::Far && theme != Theme::Print;
            assert_eq!(numbered.len(), usize::from(!far), "{theme:?} {width}: {texts:?}");
            for (number, at) in numbered {
                let post = view.spot(lay.posts[number - 1].at);
                assert!((at[0] - post[0]).hypot(at[1] - post[1]) < 60.0, "{number} at {at:?}, {post:?}");
            }
        }
    }
}

#[test]
fn the_same_plan_gives_the_same_drawing() {
    assert_eq!(map(&hand::field().scene()), map(&hand::field().scene()));
}

#[test]
fn what_is_drawn_shows_every_sign_of_the_field() {
    let hand = hand::field();
    let drawing = map(&hand.scene());
    let mut view = View::fit(drawing.bounds(), [1500.0, 1000.0], 20.0, Theme::Light);
    view.px_per_m = 10.0;
    let texts: Vec<String> = drawing
        .ink(&view)
        .into_iter()
        .filter_map(|item| if let Ink::Text { text, .. } = item { Some(text) } else { None })
        .collect();
    for want in [
        "1",
        "2",
        "3",
        "4",
        "5",
        "Pond",
        "Old well",
        "Footpath",
        "11 kV line",
        "Round Quince House",
        "1 J",
        "35.7 m · 10 panels",
        "30.7 m",
    ] {
        assert!(texts.iter().any(|text| text == want), "{want} is not in {texts:?}");
    }
    assert!(texts.iter().any(|text| text.starts_with("about ") && text.contains(" at post ")), "{texts:?}");
}

#[test]
fn stale_figures_stand_in_brackets() {
    let hand = hand::field();
    let drawing = map(&hand.scene());
    let mut view = View::fit(drawing.bounds(), [1500.0, 1000.0], 20.0, Theme::Light);
    view.px_per_m = 10.0;
    let bracketed = |stale: bool| {
        let ink = drawing.ink(&View { stale, ..view });
        ink.iter().filter(|item| matches!(item, Ink::Text { text, .. } if text.starts_with('('))).count()
    };
    assert_eq!(bracketed(false), 0);
    assert!(bracketed(true) > 3);
}

fn inked(plan: &Plan, workup: &Workup) {
    let scene = Scene { plan, workup, findings: &Findings::default(), words: Words::default() };
    let drawing = map(&scene);
    for theme in [Theme::Light, Theme::Dark, Theme::Contrast, Theme::Print] {
        for px_per_m in [0.02, 3.0, 8.0, 30.0, 400.0] {
            let mut view = View::fit(drawing.bounds(), [900.0, 600.0], 30.0, theme);
            view.px_per_m = px_per_m;
            assert!(sheet::finite(&drawing.ink(&view)));
            let _ = drawing.thing_at(&view, [450.0, 300.0], 8.0);
        }
    }
    for run in 0..plan.runs.len() {
        for height in [0.0, 56.0, 128.0, 280.0] {
            let view = drawing::LineView {
                width: 700.0,
                height,
                theme: Theme::Light,
                picked: None,
                hovered: None,
                stale: false,
            };
            assert!(sheet::finite(&drawing::line(&scene, run, &view).ink));
        }
    }
}

#[test]
fn nothing_panics_for_plans_without_sense() {
    inked(&Plan::default(), &Workup::default());
    let outlines: [&[(f64, f64)]; 8] = [
        &[],
        &[(0.0, 0.0)],
        &[(0.0, 0.0), (0.0, 0.0)],
        &[(0.0, 0.0), (1e300, -1e300), (5.0, 5.0)],
        &[(0.0, 0.0), (f64::NAN, 1.0), (5.0, f64::INFINITY)],
        &[(0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0)],
        &[(1e9, 1e9), (1e9 + 20.0, 1e9), (1e9 + 20.0, 1e9 + 20.0)],
        &[(0.0, 0.0), (1e-9, 0.0), (0.0, 1e-9)],
    ];
    for outline in outlines {
        for closed in [true, false] {
            let mut plan = Plan::default();
            plan.ground.boundary = hand::points(outline);
            plan.ground.keep_outs = [0.0, 3.0, f64::NAN, 1e12]
                .map(|clearance_m| hand::keep_out("Pond", outline, clearance_m, closed))
                .into();
            plan.ground.hazards = [
                plan::HazardKind::OverheadLine,
                plan::HazardKind::PublicWay,
                plan::HazardKind::OtherEnergisedFence,
                plan::HazardKind::ForeignEarth,
            ]
            .map(|kind| hand::hazard(kind, "", outline))
            .into();
            plan.coop = outline.first().map(|&at| hand::coop("c", Point::from(at), f64::NAN, 3));
            plan.runs =
                vec![Run { id: "r".into(), outline: hand::points(outline), closed: Some(closed), ..Run::default() }];
            inked(&plan, &Workup::default());
        }
    }
}

#[test]
fn nothing_panics_for_workups_that_lack_parts() {
    let full = hand::field();
    for part in 0..6 {
        let mut hand = hand::field();
        let run = &mut hand.workup.runs[0];
        match part {
            0 => run.lay = None,
            1 => run.strip = None,
            2 => run.volts = None,
            3 => hand.workup.runs.clear(),
            4 => {
                let lay = run.lay.as_mut().unwrap();
                lay.posts.clear();
                lay.nets.clear();
                lay.corners.clear();
                lay.corners_judged = false;
            }
            _ => {
                let volts = run.volts.as_mut().unwrap();
                volts.samples.iter_mut().for_each(|sample| sample.peak_kv = f64::NAN);
            }
        }
        inked(&hand.plan, &hand.workup);
        assert_ne!(map(&hand.scene()), map(&full.scene()), "part {part}");
    }
}

#[test]
fn far_from_the_origin_the_picture_is_the_same() {
    let (here, mut there) = (hand::field(), hand::field());
    // Whole powers of two, so that the sums are exact and only the drawing could lose anything.
    let moved = |at: &mut Point| *at = Point::new(at.east_m + 1_048_576.0, at.north_m - 524_288.0);
    let plan = &mut there.plan;
    plan.ground.boundary.iter_mut().for_each(moved);
    plan.ground.keep_outs.clear();
    plan.ground.hazards.clear();
    plan.runs.clear();
    let mut near = here.plan.clone();
    near.ground.keep_outs.clear();
    near.ground.hazards.clear();
    near.runs.clear();
    if let Some(coop) = &mut plan.coop {
        moved(&mut coop.at);
    }
    let ink = |plan: &Plan, theme| {
        let (workup, findings) = (Workup::default(), Findings::default());
        let drawing = map(&Scene { plan, workup: &workup, findings: &findings, words: Words::default() });
        let mut view = View::fit(drawing.bounds(), [900.0, 600.0], 30.0, theme);
        view.px_per_m = 5.0;
        drawing.ink(&view)
    };
    let (near, far) = (ink(&near, Theme::Light), ink(&there.plan, Theme::Light));
    assert_eq!(near.len(), far.len());
    for (a, b) in near.iter().zip(&far) {
        let (Ink::Line { spots: a, .. }, Ink::Line { spots: b, .. }) = (a, b) else { continue };
        for (a, b) in a.iter().flatten().zip(b.iter().flatten()) {
            assert!((a - b).abs() < 1e-3, "{a} {b}");
        }
    }
}
