//! Plans to measure with: one long run, and farms of a thousand and of ten thousand things.

use plan::{
    Coop, Gate, GateKind, Hazard, HazardKind, KeepOut, Label, NetKind, Pin, PinKind, Plan, Point, Reading, ReadingKind,
    Rest, Run, RunStatus,
};

/// One closed run of ten nets round a coop.
pub(crate) fn ten_nets() -> Plan {
    let mut plan = Plan { coop: Some(coop()), ..Plan::default() };
    plan.ground.boundary = ring(Point::new(0.0, 0.0), 110.0, 8);
    plan.store.nets.push(long(10));
    plan.runs.push(run(0, Point::new(0.0, 0.0), 10, 10));
    plan
}

/// The ten nets with a gate for wheels and two pins, a pond and trees to go round; and with a run that stands all about it,
/// so that no way leads to the gate.
pub(crate) fn gated(shut_off: bool) -> Plan {
    let mut plan = ten_nets();
    let corner = |corner: usize| plan.runs[0].outline[corner];
    let pins = vec![Pin::new(PinKind::Corner, corner(3)), Pin::new(PinKind::Join, corner(6))];
    plan.runs[0].pins = pins;
    plan.runs[0].gates = vec![Gate::new(GateKind::Wheels)];
    for index in 0..12 {
        let way = f64::from(index) * 0.52;
        plan.ground.keep_outs.push(KeepOut {
            name: format!("Tree {}", index + 1),
            water: index % 4 == 0,
            ..KeepOut::new(ring(Point::new(95.0 * way.cos(), 95.0 * way.sin()), 2.5, 8))
        });
    }
    if shut_off {
        plan.store.nets[0].count = Some(22);
        plan.runs.push(run(1, Point::new(0.0, 0.0), 11, 11));
        // Round the first with room to spare.
        plan.runs[1].outline = ring(Point::new(0.0, 0.0), 90.5, 11);
    }
    plan
}

/// One run of four nets in a paddock of 60 corners with ten keep-outs.
pub(crate) fn searched() -> Plan {
    let mut plan = Plan::default();
    plan.ground.boundary = ring(Point::new(0.0, 0.0), 60.0, 60);
    plan.store.nets.push(long(4));
    plan.runs.push(run(0, Point::new(0.0, 0.0), 4, 4));
    for index in 0..10 {
        let way = f64::from(index) * 2.4;
        let middle = Point::new((40.0 + f64::from(index)) * way.cos(), (40.0 + f64::from(index)) * way.sin());
        plan.ground.keep_outs.push(KeepOut {
            name: format!("Tree {}", index + 1),
            may_enclose: Some(index % 2 == 0),
            ..KeepOut::new(ring(middle, 2.0, 6))
        });
    }
    plan
}

/// So many runs of five nets with five readings each, forty keep-outs and twenty hazards.
pub(crate) fn of_runs(runs: u32) -> Plan {
    // About square.
    let columns = (1..=runs).find(|columns| columns * columns >= runs).unwrap_or(1);
    let side_m = 90.0 * f64::from(columns) - 35.0;
    let mut plan = Plan::default();
    plan.ground.boundary = [(-55.0, -55.0), (side_m, -55.0), (side_m, side_m), (-55.0, side_m)]
        .map(|(east, north)| Point::new(east, north))
        .to_vec();
    plan.store.nets.push(long(5 * runs));
    for index in 0..runs {
        let middle = Point::new(f64::from(index % columns) * 90.0, f64::from(index / columns) * 90.0);
        let laid = run(index as usize, middle, 5, 5);
        for reading in 0..5 {
            plan.readings.push(Reading {
                run: laid.id.clone(),
                kind: ReadingKind::FenceKv,
                along_m: Some(20.0 + 45.0 * f64::from(reading)),
                value: Some(3.0 + 0.3 * f64::from(reading)),
                rest: Rest::new(),
            });
        }
        plan.runs.push(laid);
    }
    for index in 0..40 {
        let middle = Point::new(-45.0 + f64::from(index % 8) * 50.0, -45.0 + f64::from(index / 8) * 66.0);
        plan.ground.keep_outs.push(KeepOut {
            name: format!("Tree {}", index + 1),
            may_enclose: Some(true),
            water: index % 4 == 0,
            ..KeepOut::new(ring(middle, 2.5, 6))
        });
    }
    for index in 0..20 {
        let off = 15.0 * f64::from(index);
        let (kind, path) = match index % 4 {
            0 => (HazardKind::OverheadLine, vec![Point::new(off - 50.0, -60.0), Point::new(off, 240.0)]),
            1 => (
                HazardKind::PublicWay,
                vec![Point::new(-60.0, off), Point::new(120.0, off + 4.0), Point::new(330.0, off)],
            ),
            2 => (HazardKind::OtherEnergisedFence, vec![Point::new(off, 230.0), Point::new(off + 40.0, 225.0)]),
            _ => (HazardKind::ForeignEarth, vec![Point::new(off, -50.0)]),
        };
        plan.ground.hazards.push(Hazard::new(kind, path));
    }
    plan
}

/// The ten nets, and so many words on the map about them.
pub(crate) fn of_words(count: u32) -> Plan {
    let mut plan = ten_nets();
    let place = |index: u32| Point::new(f64::from(index % 100) * 2.0 - 100.0, f64::from(index / 100) * 2.0 - 100.0);
    let word = |index| Label { at: place(index), text: format!("Peg {}", index + 1), ..Label::default() };
    plan.labels = (0..count).map(word).collect();
    plan
}

fn run(index: usize, middle: Point, nets: usize, corners: usize) -> Run {
    let side_m = 50.0 * nets as f64 / corners as f64;
    let radius_m = side_m / (2.0 * (std::f64::consts::PI / corners as f64).sin());
    Run {
        id: format!("run-{}", index + 1),
        name: format!("Run {}", index + 1),
        outline: ring(middle, radius_m, corners),
        nets: Some(vec!["long".to_owned(); nets]),
        status: RunStatus::Standing,
        ..Run::default()
    }
}

fn ring(middle: Point, radius_m: f64, corners: usize) -> Vec<Point> {
    let angle_rad = |corner: usize| std::f64::consts::TAU * corner as f64 / corners as f64;
    let place =
        |angle: f64| Point::new(middle.east_m + radius_m * angle.cos(), middle.north_m + radius_m * angle.sin());
    (0..corners).map(|corner| place(angle_rad(corner))).collect()
}

fn coop() -> Coop {
    Coop {
        id: "coop".to_owned(),
        at: Point::new(0.0, 0.0),
        heading_deg: Some(60.0),
        door: None,
        length_m: None,
        width_m: None,
        birds: Some(200),
        kind: None,
        hidden: false,
        locked: false,
        rest: Rest::new(),
    }
}

fn long(count: u32) -> NetKind {
    NetKind { count: Some(count), ..NetKind::new("long", 50.0, 14) }
}
