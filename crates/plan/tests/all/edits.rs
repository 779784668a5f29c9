//! Edits: any sequence, undone, gives back the first plan byte for byte, and redone the last.

use plan::{
    Branch, ByFoot, Coop, CornerSeen, Edit, Fault, FaultCause, FaultKind, Gate, GateKind, Gateway, Hazard, HazardKind,
    HeightGrid, History, KeepOut, LeakageZone, Pin, PinKind, Plan, Point, PullTest, Reading, ReadingKind, Rest, Rolls,
    Run, Shape, SideSlope, Soil, SoilClass, SoilTable, SoilWord, SpotHeight, Today, read, write,
};
use proptest::prelude::*;

fn farm() -> Plan {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../assets/demo/square-or-rectangle.netfold.json");
    read(&std::fs::read(path).unwrap()).unwrap().plan
}

fn shapes() -> impl Strategy<Value = Shape> {
    prop_oneof![
        Just(Shape::Boundary),
        prop_oneof!["square", "rectangle", "new", "nobody"].prop_map(Shape::Run),
        (0..4_usize).prop_map(Shape::KeepOut),
        (0..2_usize).prop_map(Shape::Wall),
        (0..2_usize).prop_map(Shape::Shade),
        (0..2_usize).prop_map(Shape::Damp),
        (0..3_usize).prop_map(Shape::Hazard),
        (prop_oneof!["square", "nobody"], 0..3_usize).prop_map(|(id, branch)| Shape::Branch(id, branch)),
    ]
}

fn places() -> impl Strategy<Value = Point> {
    // Now and then a place that is no number: it must be refused and change nothing.
    let number = prop_oneof![20 => -1e4..1e4_f64, 1 => Just(f64::NAN), 1 => Just(0.0)];
    (number.clone(), number).prop_map(Point::from)
}

fn edits() -> impl Strategy<Value = Edit> {
    prop_oneof![
        "[a-zé ]{0,9}".prop_map(|title| Edit::SetTitle { title }),
        proptest::option::of(1.0..9.0_f64).prop_map(|target_kv| Edit::SetTarget { target_kv }),
        (shapes(), 0..9_usize, places()).prop_map(|(shape, corner, to)| Edit::MoveCorner { shape, corner, to }),
        (shapes(), 0..9_usize, places()).prop_map(|(shape, corner, at)| Edit::InsertCorner { shape, corner, at }),
        (shapes(), 0..9_usize).prop_map(|(shape, corner)| Edit::RemoveCorner { shape, corner }),
        (shapes(), proptest::collection::vec(places(), 0..6))
            .prop_map(|(shape, outline)| Edit::SetOutline { shape, outline }),
        (0..4_usize, prop_oneof!["new", "square"])
            .prop_map(|(index, id)| Edit::AddRun { index, run: Box::new(Run { id, ..Run::default() }) }),
        prop_oneof!["new", "square", "rectangle", "nobody"].prop_map(|id| Edit::RemoveRun { id }),
        Just(Edit::SetKeepOuts {
            keep_outs: vec![KeepOut {
                name: "oak".to_owned(),
                clearance_m: Some(1.5),
                may_enclose: Some(true),
                ..KeepOut::new(vec![Point::new(1.0, 2.0)])
            }]
        }),
        proptest::option::of(places()).prop_map(|at| Edit::SetCoop { coop: at.map(coop) }),
        (1.0..60.0_f64).prop_map(|length_m| {
            let rolls = Rolls { length_m, ..Rolls::default() };
            Edit::SetStore { store: Box::new(rolls.lay_out().unwrap().store) }
        }),
        (prop_oneof!["square", "rectangle", "new"], proptest::collection::vec(places(), 0..5))
            .prop_map(|(id, outline)| Edit::SetRun { run: Box::new(Run { id, outline, ..Run::default() }) }),
        (prop_oneof!["square", "rectangle"], proptest::collection::vec(places(), 0..5), places(), 0.0..9.0_f64)
            .prop_map(|(id, outline, at, from_m)| {
                let rest = Rest::new;
                let fault = Fault {
                    at,
                    kind: FaultKind::Short,
                    ohm: Some(50.0),
                    lines: None,
                    cause: Some(FaultCause::Peg),
                    rest: rest(),
                };
                let zone = LeakageZone { from_m, to_m: from_m + 2.0, s_per_m: 1e-4, rest: rest() };
                let branch = Branch {
                    from_m,
                    outline,
                    nets: vec!["long".to_owned()],
                    leakage_zones: vec![zone],
                    faults: vec![fault],
                    rest: rest(),
                };
                Edit::SetRun { run: Box::new(Run { id, branches: vec![branch], ..Run::default() }) }
            },),
        (prop_oneof!["square", "rectangle"], places(), proptest::option::of(places())).prop_map(|(id, at, gate_at)| {
            let pins = vec![Pin { net: Some("long".to_owned()), ..Pin::new(PinKind::Net, at) }];
            let gates = vec![Gate { at: gate_at, ..Gate::new(GateKind::Wheels) }];
            Edit::SetRun { run: Box::new(Run { id, pins, gates, ..Run::default() }) }
        }),
        proptest::option::of(places())
            .prop_map(|at| Edit::SetGateway { gateway: at.map(|at| Gateway { at, rest: Rest::new() }) }),
        (proptest::option::of(0.0..60.0_f64), proptest::option::of(0.01..1.0_f64))
            .prop_map(|(wind_m_per_s, fouled_share)| Edit::SetWind { wind_m_per_s, fouled_share }),
        proptest::option::of(prop_oneof![Just(Today::Dry), Just(Today::Frozen)])
            .prop_map(|today| Edit::SetToday { today }),
        (places(), any::<bool>(), proptest::option::of(1.0..170.0_f64)).prop_map(|(at, stood, turn_deg)| {
            let seen = CornerSeen { run: Some("square".to_owned()), at, stood, turn_deg, ..CornerSeen::default() };
            let test = PullTest { pull_kg: turn_deg, ..PullTest::default() };
            let class = SoilClass { table: SoilTable::British, name: SoilWord::SoftToFirm, rest: Rest::new() };
            Edit::SetSoil {
                soil: Soil {
                    by_foot: Some(ByFoot::NeedsBar),
                    class: Some(class),
                    pull_test: turn_deg.map(|_| Box::new(test)),
                    corners_seen: vec![seen],
                    wet_factor: turn_deg.map(|deg| deg / 180.0),
                    ..Soil::default()
                },
            }
        }),
        (1.0..100.0_f64)
            .prop_map(|kpa| Edit::SetSoil { soil: Soil { undrained_strength_kpa: Some(kpa), ..Soil::default() } }),
        proptest::collection::vec(places(), 0..3).prop_map(|path| Edit::SetHazards { hazards: vec![hazard(path)] }),
        (places(), -9.0..9.0_f64)
            .prop_map(|(at, up_m)| Edit::SetHeights { heights: vec![SpotHeight { at, up_m, rest: Rest::new() }] }),
        (places(), 0..3_usize).prop_map(|(south_west, holes)| Edit::SetHeightGrid {
            grid: (holes < 2).then(|| {
                let up_m = vec![Some(1.0), None, Some(2.5), Some(-0.5)];
                std::sync::Arc::new(HeightGrid { south_west, cell_m: 0.5, columns: 2, up_m, rest: Rest::new() })
            })
        }),
        (prop_oneof!["square", "new"], places()).prop_map(|(id, at)| {
            let slope = SideSlope { at, rises_m: Some(1.5), one_in: None, rest: Rest::new() };
            Edit::SetRun { run: Box::new(Run { id, side_slopes: vec![slope], ..Run::default() }) }
        }),
        proptest::collection::vec(places(), 0..4)
            .prop_map(|path| Edit::SetWalls { walls: vec![plan::Wall { path, ..plan::Wall::default() }] }),
        proptest::collection::vec(places(), 0..4)
            .prop_map(|outline| Edit::SetShade { shade: vec![plan::Shade { outline, ..plan::Shade::default() }] }),
        proptest::collection::vec(places(), 0..4)
            .prop_map(|outline| Edit::SetDamp { damp: vec![plan::Damp { outline, ..plan::Damp::default() }] }),
        places().prop_map(|at| Edit::SetLabels {
            labels: vec![plan::Label { at, text: "gap".to_owned(), ..plan::Label::default() }]
        }),
        places().prop_map(|at| Edit::SetTapePoints {
            points: vec![plan::TapePoint { at, name: "gatepost".to_owned(), ..plan::TapePoint::default() }]
        }),
        proptest::option::of(places()).prop_map(|at| Edit::SetUnderlay {
            underlay: at.map(|at| plan::Underlay {
                size_px: Some([40, 30]),
                world_m: Some(plan::World([0.5, 0.0, 0.0, -0.5, at.east_m, at.north_m])),
                opacity: Some(0.5),
                by_eye: true,
                ..plan::Underlay::new("air.png".to_owned())
            })
        }),
        (any::<bool>(), any::<bool>()).prop_map(|(hidden, locked)| Edit::SetPaddock { hidden, locked }),
        (0.0..9.0_f64).prop_map(|kv| Edit::SetReadings { readings: vec![reading(kv)] }),
    ]
}

fn coop(at: Point) -> Coop {
    Coop {
        id: "hut".to_owned(),
        at,
        heading_deg: None,
        door: None,
        length_m: None,
        width_m: None,
        birds: Some(40),
        kind: None,
        hidden: false,
        locked: false,
        rest: Rest::new(),
    }
}

fn hazard(path: Vec<Point>) -> Hazard {
    Hazard { name: "track".to_owned(), signed: true, ..Hazard::new(HazardKind::PublicWay, path) }
}

fn reading(kv: f64) -> Reading {
    Reading {
        run: "square".to_owned(),
        kind: ReadingKind::FenceKv,
        along_m: Some(3.0),
        value: Some(kv),
        rest: Rest::new(),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_sequence_undone_is_the_first_plan_and_redone_the_last(
        sequence in proptest::collection::vec((edits(), 0..8_u8), 200)
    ) {
        let mut plan = farm();
        let first = write(&plan);
        // What a journal would hold: it replays to the same plan at every moment.
        let mut replayed = plan.clone();
        let mut history = History::default();
        for (edit, gesture) in sequence {
            match gesture {
                0 => history.begin(),
                1 => history.end(),
                2 => { history.undo(&mut plan); }
                3 => { history.redo(&mut plan); }
                _ => {
                    let before = write(&plan);
                    if history.apply(&mut plan, edit).is_err() {
                        prop_assert_eq!(&write(&plan), &before);
                    }
                }
            }
            for edit in history.take_applied() {
                prop_assert!(replayed.apply(edit).is_ok());
            }
            prop_assert!(replayed == plan);
        }
        while history.redo(&mut plan) {}
        let last = write(&plan);
        while history.undo(&mut plan) {}
        prop_assert_eq!(&write(&plan), &first);
        while history.redo(&mut plan) {}
        prop_assert_eq!(&write(&plan), &last);
    }

    #[test]
    fn an_edit_survives_its_log(edit in edits()) {
        let line = serde_json::to_string(&edit).unwrap();
        // A place that is no number becomes null and is refused on the way back; every other edit is the same.
        if let Ok(back) = serde_json::from_str::<Edit>(&line) {
            prop_assert_eq!(back, edit);
        } else {
            prop_assert!(line.contains("null"));
        }
    }
}

#[test]
fn a_drag_is_one_step() {
    let mut plan = farm();
    let first = write(&plan);
    let mut history = History::default();
    history.begin();
    for step in 1..50 {
        let to = Point::new(f64::from(step), 0.0);
        history.apply(&mut plan, Edit::MoveCorner { shape: Shape::Boundary, corner: 0, to }).unwrap();
    }
    history.end();
    assert_eq!(history.revision(), 49);
    assert!(history.undo(&mut plan));
    assert!(!history.can_undo());
    assert_eq!(write(&plan), first);
}

#[test]
fn a_step_folds_past_no_edit_that_it_would_undo_into_nothing() {
    let keep_out = |east_m: f64| KeepOut::new(vec![Point::new(east_m, 0.0)]);
    let mut plan = farm();
    let first = write(&plan);
    let mut history = History::default();
    history.begin();
    for edit in [
        Edit::SetKeepOuts { keep_outs: vec![keep_out(1.0)] },
        Edit::MoveCorner { shape: Shape::KeepOut(0), corner: 0, to: Point::new(2.0, 0.0) },
        Edit::SetKeepOuts { keep_outs: Vec::new() },
    ] {
        history.apply(&mut plan, edit).unwrap();
    }
    history.end();
    assert!(history.undo(&mut plan));
    assert_eq!(write(&plan), first);
}
