//! A run that is open looks open: dashes where no netting stands, and the gap where its ground would be told.

use drawing::{Ink, Scene, Spot, Theme, Thing, View, map};
use plan::{NetKind, Plan, Point, Run, Wall};
use words::{Language, Units, Words};
use workup::{Depth, workup};

/// 120 m of line and 100 m of netting, from the first corner on: of the side of 30 m that comes last a third has netting.
fn plan() -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(2), ..NetKind::new("long", 50.0, 14) });
    plan.runs.push(Run {
        id: "run-1".to_owned(),
        outline: [(0.0, 0.0), (30.0, 0.0), (30.0, 30.0), (0.0, 30.0)].map(Point::from).to_vec(),
        nets: Some(vec!["long".to_owned(); 2]),
        start_m: Some(0.0),
        reversed: Some(false),
        ..Run::default()
    });
    plan
}

fn ink(plan: &Plan, words: Words, theme: Theme, picked: Option<Thing>) -> (Vec<Ink>, View) {
    let worked = workup(plan, Depth::Quick);
    let findings = care::findings(plan, &worked, words);
    let drawing = map(&Scene { plan, workup: &worked, findings: &findings, words });
    let mut view = View::fit(drawing.bounds(), [900.0, 900.0], 80.0, theme);
    (view.picked, view.handles) = (picked, true);
    (drawing.ink(&view), view)
}

/// Lines that run through a spot.
fn through(ink: &[Ink], at: Spot) -> Vec<(drawing::Colour, Option<[f32; 2]>)> {
    let off = |from: Spot, to: Spot| {
        let way = [to[0] - from[0], to[1] - from[1]];
        let long = way[0].hypot(way[1]).max(1e-6);
        let along = (((at[0] - from[0]) * way[0] + (at[1] - from[1]) * way[1]) / long).clamp(0.0, long);
        (from[0] + way[0] / long * along - at[0]).hypot(from[1] + way[1] / long * along - at[1])
    };
    let lines = ink.iter().filter_map(|item| match item {
        Ink::Line { spots, closed, colour, dash, .. } => {
            let around = spots.iter().zip(spots.iter().skip(1)).map(|(one, other)| (*one, *other));
            let last = spots.last().zip(spots.first()).filter(|_| *closed).map(|(one, other)| (*one, *other));
            around.chain(last).any(|(from, to)| off(from, to) < 1.0).then_some((*colour, *dash))
        }
        _ => None,
    });
    lines.collect()
}

fn texts(ink: &[Ink]) -> Vec<String> {
    let texts = ink.iter().filter_map(|item| match item {
        Ink::Text { text, .. } => Some(text.clone()),
        _ => None,
    });
    texts.collect()
}

#[test]
fn the_gap_stays_dashed_while_the_run_is_picked_and_the_netting_beside_it_is_blue() {
    for picked in [None, Some(Thing::Run { run: 0 }), Some(Thing::RunSide { run: 0, side: 3 })] {
        let (ink, view) = ink(&plan(), Words::default(), Theme::Light, picked);
        let palette = Theme::Light.palette();
        let (gap, netting) = (Point::new(0.0, 9.0), Point::new(0.0, 27.0));
        let at_gap = through(&ink, view.spot(gap));
        assert!(at_gap.iter().any(|(colour, dash)| *colour == palette.danger && dash.is_some()), "{picked:?}");
        let solid = |lines: &[(drawing::Colour, Option<[f32; 2]>)]| {
            lines.iter().any(|(colour, dash)| *colour == palette.pick && dash.is_none())
        };
        assert!(!solid(&at_gap), "{picked:?}: {at_gap:?}");
        assert_eq!(solid(&through(&ink, view.spot(netting))), picked.is_some(), "{picked:?}");
    }
}

#[test]
fn where_its_ground_would_stand_the_map_says_what_is_open() {
    for (language, open) in [(Language::English, "20.0 m open"), (Language::German, "20,0 m offen")] {
        let words = Words { language, units: Units::Metric };
        let (shown, _) = ink(&plan(), words, Theme::Light, None);
        let said = texts(&shown).join("|");
        assert!(said.contains(open) && !said.contains("900 m²"), "{said}");
        // A wall along the gap that holds birds shuts it.
        let mut plan = plan();
        let path = [(0.0, -4.0), (0.0, 34.0)].map(Point::from).to_vec();
        plan.walls = vec![Wall { path, holds_birds: Some(true), ..Wall::default() }];
        let (shown, _) = ink(&plan, words, Theme::Light, None);
        let said = texts(&shown).join("|");
        assert!(!said.contains(open) && said.contains("900 m²"), "{said}");
    }
}

#[test]
fn ground_that_a_wall_shuts_in_is_filled() {
    let mut plan = plan();
    let run = &mut plan.runs[0];
    (run.closed, run.start_m, run.reversed) = (Some(false), None, None);
    run.outline = [(0.0, 0.0), (0.0, 40.0), (20.0, 40.0), (20.0, 0.0)].map(Point::from).to_vec();
    let path = [(-4.0, 0.0), (24.0, 0.0)].map(Point::from).to_vec();
    plan.walls = vec![Wall { path, holds_birds: Some(true), ..Wall::default() }];
    let fill = Theme::Light.palette().run;
    let filled = |plan: &Plan| {
        let (ink, _) = ink(plan, Words::default(), Theme::Light, None);
        ink.iter().any(|item| matches!(item, Ink::Area { fill: with, .. } if *with == fill))
    };
    assert!(filled(&plan));
    plan.walls[0].holds_birds = None;
    assert!(!filled(&plan));
}
