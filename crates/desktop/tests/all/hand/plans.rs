//! Plans that more than one test looks at: the example with more and more on it.

use plan::{
    ByFoot, Fault, FaultKind, Gate, GateKind, Label, Pin, PinKind, Plan, Point, Reading, ReadingKind, Rest, Shade,
    SideSlope, Today, Underlay, Wall, WallKind, World,
};

/// With what a keeper read on it.
pub(crate) fn read_on(mut plan: Plan) -> Plan {
    let run = plan.runs[0].id.clone();
    let reading = |kind, along_m, value, when: &str| Reading {
        run: run.clone(),
        kind,
        along_m,
        value: Some(value),
        rest: Rest::from_iter([("when".to_owned(), when.into())]),
    };
    plan.readings = vec![
        reading(ReadingKind::FenceKv, Some(0.0), 4.4, "2027-05-01"),
        reading(ReadingKind::FenceKv, Some(70.0), 3.1, "2027-05-08"),
        reading(ReadingKind::EarthKv, None, 0.2, "2027-05-08"),
    ];
    plan
}

/// With soil, wind, gates, a pin and a side that rises.
pub(crate) fn stated(mut plan: Plan) -> Plan {
    plan.ground.soil.by_foot = Some(ByFoot::PushesIn);
    plan.ground.wind_m_per_s = Some(15.0);
    let run = &mut plan.runs[0];
    run.gates = vec![Gate::new(GateKind::Foot), Gate::new(GateKind::Wheels)];
    run.pins = vec![Pin::new(PinKind::Corner, run.outline[1])];
    let (one, other) = (run.outline[0], run.outline[1]);
    let middle = Point::new(0.5 * (one.east_m + other.east_m), 0.5 * (one.north_m + other.north_m));
    run.side_slopes = vec![SideSlope { at: middle, rises_m: Some(1.0), one_in: None, rest: Rest::new() }];
    plan
}

/// With a short at a corner, on wet ground.
pub(crate) fn faulty(mut plan: Plan) -> Plan {
    let at = plan.runs[0].outline[2];
    plan.runs[0].faults =
        vec![Fault { at, kind: FaultKind::Short, ohm: Some(300.0), lines: None, cause: None, rest: Rest::new() }];
    plan.ground.today = Some(Today::Wet);
    plan
}

/// With a hedge, shade, words, a drop point and a picture beneath.
pub(crate) fn drawn_on(mut plan: Plan) -> Plan {
    let places = |all: &[(f64, f64)]| all.iter().copied().map(Point::from).collect::<Vec<_>>();
    let kind = Some(WallKind::Hedge);
    plan.walls = vec![Wall { path: places(&[(10.0, 62.0), (40.0, 66.0)]), kind, ..Wall::default() }];
    let outline = places(&[(70.0, 60.0), (76.0, 60.0), (76.0, 64.0)]);
    plan.ground.shade = vec![Shade { outline, ..Shade::default() }];
    plan.labels = vec![Label { at: Point::new(15.0, 40.0), text: "Trough".to_owned(), ..Label::default() }];
    plan.runs[0].drop_at = Some(Point::new(12.0, 20.0));
    plan.underlay = Some(picture("air.png"));
    plan
}

/// A picture to lie beneath, half a metre a pixel, of a file that need not be there.
pub(crate) fn picture(path: &str) -> Underlay {
    Underlay {
        size_px: Some([160, 120]),
        world_m: Some(World([0.5, 0.0, 0.0, -0.5, 0.25, 59.75])),
        ..Underlay::new(path.to_owned())
    }
}
