//! Whatever the hand, the keys and the fields do, 200 times over: undone it is the first plan byte for byte, and redone the
//! last.

use desktop::editor::{Editor, ManyMessage, Message, Over, ShapingMessage};
use desktop::tool::{Drawn, Hand, Tool};
use drawing::Thing;
use plan::{
    Branch, Edit, Fault, FaultCause, FaultKind, Gate, GateKind, Gateway, Hazard, HazardKind, KeepOut, LeakageZone,
    NetKind, Plan, Point, Rest, Run, Shape, SideSlope, Soil, SpotHeight, TapePoint, write,
};
use proptest::prelude::*;
use words::Words;
use workup::shaping::{CornerTyped, Keep};

/// Two runs of which one has slopes, pins, a gate and other grass, a paddock and a keep-out; and whatever else is drawn on
/// the ground: a wall, shade, damp ground, words, a drop point, an energizer, a picture beneath, two coops.
fn farm() -> Plan {
    let places = |all: &[(f64, f64)]| all.iter().copied().map(Point::from).collect::<Vec<_>>();
    let slope = SideSlope { at: Point::new(20.0, 0.0), rises_m: Some(0.5), one_in: None, rest: Rest::new() };
    let pin = plan::Pin::new(plan::PinKind::Corner, Point::new(40.0, 30.0));
    let one = Run {
        id: "one".to_owned(),
        outline: places(&[(0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (0.0, 30.0)]),
        side_slopes: vec![slope],
        pins: vec![pin],
        gates: vec![Gate::new(GateKind::Foot)],
        strip_left_m: Some(0.4),
        drop_at: Some(Point::new(-5.0, 3.0)),
        energizer_at: Some(Point::new(-6.0, -4.0)),
        coop: Some("house".to_owned()),
        feed_at: Some(Point::new(0.0, 10.0)),
        branches: vec![Branch { from_m: 50.0, outline: places(&[(40.0, 10.0), (55.0, 12.0)]), ..Branch::default() }],
        leakage_zones: vec![LeakageZone { from_m: 5.0, to_m: 20.0, s_per_m: 1e-4, rest: Rest::new() }],
        ..Run::default()
    };
    let two =
        Run { id: "two".to_owned(), outline: places(&[(60.0, 0.0), (90.0, 3.0), (70.0, 40.0)]), ..Run::default() };
    let mut plan = Plan { runs: vec![one, two], ..Plan::default() };
    plan.store.nets = vec![NetKind::new("long", 50.0, 20)];
    plan.ground.boundary = places(&[(-30.0, -30.0), (150.0, -30.0), (150.0, 90.0), (-30.0, 90.0)]);
    plan.ground.keep_outs = vec![KeepOut {
        name: "oak".to_owned(),
        ..KeepOut::new(places(&[(100.0, 50.0), (110.0, 50.0), (110.0, 60.0)]))
    }];
    plan.walls = vec![plan::Wall { path: places(&[(-20.0, -20.0), (50.0, -22.0)]), ..plan::Wall::default() }];
    plan.ground.shade =
        vec![plan::Shade { outline: places(&[(120.0, 0.0), (130.0, 0.0), (130.0, 9.0)]), ..plan::Shade::default() }];
    let hollow = places(&[(-20.0, 40.0), (-10.0, 40.0), (-12.0, 55.0)]);
    plan.ground.damp = vec![plan::Damp { outline: hollow, ..plan::Damp::default() }];
    plan.labels = vec![plan::Label { text: "gap".to_owned(), ..plan::Label::default() }];
    plan.underlay = Some(plan::Underlay { size_px: Some([40, 30]), ..plan::Underlay::new("air.png".to_owned()) });
    plan.ground.hazards = vec![
        Hazard::new(HazardKind::OverheadLine, places(&[(-20.0, 70.0), (100.0, 75.0)])),
        Hazard::new(HazardKind::ForeignEarth, places(&[(95.0, 10.0)])),
    ];
    plan.ground.gateway = Some(Gateway { at: Point::new(-30.0, 0.0), rest: Rest::new() });
    plan.heights = vec![SpotHeight { at: Point::new(5.0, 5.0), up_m: 1.0, rest: Rest::new() }];
    plan.tape_points = vec![TapePoint { at: Point::new(-25.0, -25.0), ..TapePoint::default() }];
    plan.coop = Some(plan::Coop::new("house", Point::new(20.0, 15.0)));
    plan.other_coops = vec![plan::Coop::new("shed", Point::new(80.0, 60.0))];
    plan
}

fn places() -> impl Strategy<Value = Point> {
    // Now and then a place that is no number.
    let number = prop_oneof![30 => -40.0..160.0_f64, 1 => Just(f64::NAN), 2 => Just(0.0)];
    (number.clone(), number).prop_map(Point::from)
}

fn things() -> impl Strategy<Value = Thing> {
    let corner = 0..6_usize;
    prop_oneof![
        (0..3_usize).prop_map(|run| Thing::Run { run }),
        (0..3_usize, corner.clone()).prop_map(|(run, vertex)| Thing::RunCorner { run, vertex }),
        (0..3_usize, corner.clone()).prop_map(|(run, side)| Thing::RunSide { run, side }),
        Just(Thing::Boundary),
        corner.clone().prop_map(|vertex| Thing::BoundaryCorner { vertex }),
        corner.clone().prop_map(|side| Thing::BoundarySide { side }),
        (0..2_usize).prop_map(|keep_out| Thing::KeepOut { keep_out }),
        (0..2_usize, corner.clone()).prop_map(|(keep_out, vertex)| Thing::KeepOutCorner { keep_out, vertex }),
        (0..2_usize, corner).prop_map(|(keep_out, side)| Thing::KeepOutSide { keep_out, side }),
        drawn_things(),
    ]
}

/// What else is drawn on the ground, and what stands on a run's line.
fn drawn_things() -> impl Strategy<Value = Thing> {
    let (two, corner) = (0..2_usize, 0..4_usize);
    prop_oneof![
        two.clone().prop_map(|wall| Thing::Wall { wall }),
        (two.clone(), corner.clone()).prop_map(|(wall, vertex)| Thing::WallCorner { wall, vertex }),
        two.clone().prop_map(|hazard| Thing::Hazard { hazard }),
        (two.clone(), corner.clone()).prop_map(|(hazard, vertex)| Thing::HazardCorner { hazard, vertex }),
        two.clone().prop_map(|shade| Thing::Shade { shade }),
        (two.clone(), corner.clone()).prop_map(|(shade, vertex)| Thing::ShadeCorner { shade, vertex }),
        (two.clone(), corner).prop_map(|(shade, side)| Thing::ShadeSide { shade, side }),
        damp_things(),
        placed_things(),
        two.clone().prop_map(|label| Thing::Label { label }),
        two.clone().prop_map(|run| Thing::Drop { run }),
        (0..3_usize).prop_map(|coop| Thing::Coop { coop }),
        prop_oneof![Just(Thing::CoopDoor), Just(Thing::Underlay)],
        (two.clone(), two.clone()).prop_map(|(run, gate)| Thing::Gate { run, gate }),
        (two.clone(), two).prop_map(|(run, zone)| Thing::Zone { run, branch: None, zone }),
    ]
}

/// Damp ground, and what stands beside it.
fn damp_things() -> impl Strategy<Value = Thing> {
    let (two, corner) = (0..2_usize, 0..4_usize);
    prop_oneof![
        two.clone().prop_map(|damp| Thing::Damp { damp }),
        (two.clone(), corner.clone()).prop_map(|(damp, vertex)| Thing::DampCorner { damp, vertex }),
        (two.clone(), corner).prop_map(|(damp, side)| Thing::DampSide { damp, side }),
        two.prop_map(|run| Thing::Energizer { run }),
    ]
}

/// What is one place, and what hangs on a run.
fn placed_things() -> impl Strategy<Value = Thing> {
    let two = 0..2_usize;
    prop_oneof![
        Just(Thing::Gateway),
        two.clone().prop_map(|height| Thing::Height { height }),
        two.clone().prop_map(|point| Thing::TapePoint { point }),
        two.clone().prop_map(|run| Thing::Feed { run }),
        (two.clone(), two.clone()).prop_map(|(run, stake)| Thing::EarthStake { run, stake }),
        (two.clone(), two.clone()).prop_map(|(run, branch)| Thing::Branch { run, branch }),
        (two.clone(), two.clone(), 0..3_usize).prop_map(|(run, branch, vertex)| Thing::BranchCorner {
            run,
            branch,
            vertex
        }),
        (two.clone(), two).prop_map(|(run, fault)| Thing::Fault { run, branch: None, fault }),
    ]
}

/// What is drawn or put down with a tool, to its end or left on the way.
fn drawn() -> impl Strategy<Value = Vec<Message>> {
    let of = prop_oneof![
        Just(Drawn::Paddock),
        Just(Drawn::Run),
        Just(Drawn::KeepOut),
        Just(Drawn::Water),
        Just(Drawn::Hazard(HazardKind::PublicWay)),
        Just(Drawn::Coop),
        Just(Drawn::FurtherCoop),
        Just(Drawn::TapePoint),
        Just(Drawn::Gateway),
        Just(Drawn::Height),
        Just(Drawn::Branch),
        Just(Drawn::Wall(plan::WallKind::Hedge)),
        Just(Drawn::Shade),
        Just(Drawn::Damp),
        Just(Drawn::Label),
        (0..2_usize).prop_map(Drawn::Drop),
        (0..2_usize).prop_map(Drawn::Feed),
        (0..2_usize).prop_map(Drawn::Energizer),
        (0..2_usize).prop_map(Drawn::EarthStake),
    ];
    let end =
        prop_oneof![4 => Just(Hand::Close), 1 => Just(Hand::CloseHere), 1 => Just(Hand::Back), 1 => Just(Hand::Leave)];
    (of, proptest::collection::vec(places(), 1..6), end).prop_map(|(of, corners, end)| {
        let tool = Tool::outline(of);
        let clicks =
            corners.into_iter().flat_map(|at| [Hand::Move(at), Hand::Click { at, reach_m: 0.5 }].map(Message::Hand));
        [Message::Use(tool)].into_iter().chain(clicks).chain([Message::Hand(end), Message::Hand(Hand::Leave)]).collect()
    })
}

/// What is taken out, put in, named and typed where it stands.
fn listed() -> impl Strategy<Value = Vec<Message>> {
    let other = || String::from_utf8(write(&farm())).unwrap();
    prop_oneof![
        things().prop_map(|thing| vec![Message::Pick(Some(thing)), Message::Many(ManyMessage::Cut)]),
        proptest::option::of(places()).prop_map(move |at| vec![Message::Many(ManyMessage::Paste(other(), at))]),
        (things(), "[a-z ]{0,12}").prop_map(|(thing, name)| vec![Message::Many(ManyMessage::Rename(thing, name))]),
        (things(), places()).prop_map(|(thing, at)| vec![Message::PutAt(thing, at)]),
    ]
}

/// Several things picked.
fn several() -> impl Strategy<Value = (Thing, Vec<Message>)> {
    proptest::collection::vec(things(), 2..6).prop_map(|things| {
        let also = things.iter().map(|&thing| Message::Many(ManyMessage::Also(thing)));
        (things[0], [Message::Pick(None)].into_iter().chain(also).collect())
    })
}

/// What is done to several things, and what is hidden and locked.
fn many() -> impl Strategy<Value = Vec<Message>> {
    let done = prop_oneof![
        Just(Message::Remove),
        Just(Message::Duplicate),
        (-9.0..9.0_f64).prop_map(|by| Message::Nudge(by, -by)),
        (-360.0..360.0_f64).prop_map(Message::Turn),
        Just(Message::Many(ManyMessage::HidePicked)),
        Just(Message::Many(ManyMessage::LockPicked)),
    ];
    let all = |(mut said, done): (Vec<Message>, Message)| {
        said.push(done);
        said
    };
    prop_oneof![
        3 => (several().prop_map(|(_, said)| said), done).prop_map(all),
        4 => (several(), places(), proptest::collection::vec(places(), 1..4)).prop_map(|((thing, mut said), at, way)| {
            said.push(Message::Grab(thing, at));
            said.extend(way.into_iter().map(Message::Drag));
            said.push(Message::Drop);
            said
        }),
        1 => (things(), any::<bool>()).prop_map(|(thing, on)| vec![Message::Many(ManyMessage::Hide(thing, on))]),
        1 => (things(), any::<bool>()).prop_map(|(thing, on)| vec![Message::Many(ManyMessage::Lock(thing, on))]),
        1 => Just(vec![Message::Many(ManyMessage::ShowAll)]),
    ]
}

fn shapes() -> impl Strategy<Value = Shape> {
    prop_oneof![
        Just(Shape::Boundary),
        prop_oneof!["one", "two", "nobody"].prop_map(Shape::Run),
        (0..2_usize).prop_map(Shape::KeepOut)
    ]
}

fn typed() -> impl Strategy<Value = CornerTyped> {
    let some = |range: std::ops::Range<f64>| proptest::option::of(range);
    (some(1.0..60.0), some(1.0..60.0), some(0.0..179.0)).prop_map(|(before_m, after_m, turn_deg)| CornerTyped {
        before_m,
        after_m,
        turn_deg,
    })
}

/// What is said about shapes.
fn shaping() -> impl Strategy<Value = ShapingMessage> {
    let keep = prop_oneof![Just(Keep::Free), Just(Keep::Length), Just(Keep::Angle)];
    let over = prop_oneof![Just(Over::EastWest), Just(Over::NorthSouth), Just(Over::Side)];
    prop_oneof![
        Just(ShapingMessage::SquareUp),
        Just(ShapingMessage::CutCorner),
        over.prop_map(ShapingMessage::Mirror),
        any::<bool>().prop_map(ShapingMessage::Beside),
        keep.prop_map(ShapingMessage::Keep),
        Just(ShapingMessage::PivotHere),
        Just(ShapingMessage::PivotMiddle),
        places().prop_map(ShapingMessage::GrabPivot),
        (shapes(), 0..6_usize, -360.0..360.0_f64).prop_map(|(of, side, deg)| ShapingMessage::Bearing(of, side, deg)),
        (shapes(), 0..6_usize, 1.0..60.0_f64).prop_map(|(of, side, m)| ShapingMessage::Panels(of, side, m)),
        (shapes(), 0..6_usize, places()).prop_map(|(of, corner, at)| ShapingMessage::Place(of, corner, at)),
        (shapes(), 0..6_usize, 0.0..179.0_f64).prop_map(|(of, corner, deg)| ShapingMessage::Turn(of, corner, deg)),
        typed().prop_map(ShapingMessage::Typed),
    ]
}

/// Edits that pages make.
fn edits() -> impl Strategy<Value = Edit> {
    prop_oneof![
        (shapes(), 0..6_usize, places()).prop_map(|(shape, corner, at)| Edit::InsertCorner { shape, corner, at }),
        (shapes(), 0..6_usize).prop_map(|(shape, corner)| Edit::RemoveCorner { shape, corner }),
        (1.0..100.0_f64)
            .prop_map(|kpa| Edit::SetSoil { soil: Soil { undrained_strength_kpa: Some(kpa), ..Soil::default() } }),
        (20.0..60.0_f64, 5..20_u32).prop_map(|(length_m, panels)| {
            let nets = vec![NetKind::new("long", length_m, panels)];
            Edit::SetStore { store: Box::new(plan::Store { nets, ..plan::Store::default() }) }
        }),
        (prop_oneof!["one", "two"], places(), any::<bool>()).prop_map(|(id, at, faulty)| {
            let mut run = farm().runs.into_iter().find(|run| run.id == id).unwrap();
            let fault = Fault {
                at,
                kind: FaultKind::Short,
                ohm: Some(50.0),
                lines: None,
                cause: Some(FaultCause::Peg),
                rest: Rest::new(),
            };
            if faulty {
                run.faults = vec![fault];
            } else {
                run.gates.push(Gate { at: Some(at), ..Gate::new(GateKind::Wheels) });
            }
            Edit::SetRun { run: Box::new(run) }
        }),
    ]
}

/// What the hand says, mostly in an order that makes sense.
fn gestures() -> impl Strategy<Value = Vec<Message>> {
    let drag = |grab: Message, way: Vec<Point>, end: Option<bool>| {
        let led = way.into_iter().map(Message::Drag);
        let end = end.map(|dropped| if dropped { Message::Drop } else { Message::Escape });
        [grab].into_iter().chain(led).chain(end).collect::<Vec<_>>()
    };
    let way = || proptest::collection::vec(places(), 1..4);
    let end = prop_oneof![6 => Just(Some(true)), 1 => Just(Some(false)), 1 => Just(None)];
    prop_oneof![
        4 => (things(), places(), way(), end.clone()).prop_map(move |(thing, at, way, end)| {
            let mut said = vec![Message::Pick(Some(thing))];
            said.extend(drag(Message::Grab(thing, at), way, end));
            said
        }),
        1 => (things(), way(), end).prop_map(move |(thing, way, end)| {
            let mut said = vec![Message::Pick(Some(thing))];
            said.extend(drag(Message::GrabTurn(Point::new(0.0, 50.0)), way, end));
            said
        }),
        4 => (things(), shaping()).prop_map(|(thing, said)| vec![Message::Pick(Some(thing)), Message::Shaping(said)]),
        2 => shaping().prop_map(|said| vec![Message::Shaping(said)]),
        3 => edits().prop_map(|edit| vec![Message::Make(edit)]),
        4 => many(),
        2 => drawn(),
        2 => listed(),
        1 => things().prop_map(|thing| vec![Message::Pick(Some(thing)), Message::Duplicate]),
        1 => things().prop_map(|thing| vec![Message::Pick(Some(thing)), Message::Remove]),
        1 => (things(), -9.0..9.0_f64).prop_map(|(thing, by)| vec![Message::Pick(Some(thing)), Message::Nudge(by, -by)]),
        1 => (things(), -360.0..360.0_f64).prop_map(|(thing, deg)| vec![Message::Pick(Some(thing)), Message::Turn(deg)]),
        1 => (shapes(), 0..6_usize, 0.5..60.0_f64).prop_map(|(of, side, m)| vec![Message::SideLength(of, side, m)]),
        1 => any::<bool>().prop_map(|free| vec![Message::Free(free)]),
        2 => Just(vec![Message::Undo]),
        1 => Just(vec![Message::Redo]),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_200_deeds_undone_are_the_first_plan_and_redone_the_last(
        said in proptest::collection::vec(gestures(), 200)
    ) {
        let plan = farm();
        let first = write(&plan);
        let mut editor = Editor::new(plan.clone(), Words::default());
        // What a journal would hold: it replays to the same plan.
        let mut replayed = plan;
        let mut applied = 0;
        for message in said.into_iter().flatten() {
            editor.receive(message);
            for edit in editor.take_applied() {
                prop_assert!(replayed.apply(edit).is_ok());
                applied += 1;
            }
            prop_assert!(replayed == *editor.plan());
            prop_assert!(editor.plan().runs.iter().flat_map(|run| &run.outline).all(|at| at.east_m.is_finite() && at.north_m.is_finite()));
        }
        let steps = editor.deeds();
        editor.receive(Message::GoTo(steps.0.len() + steps.1.len()));
        let last = write(editor.plan());
        editor.receive(Message::GoTo(0));
        prop_assert_eq!(&write(editor.plan()), &first);
        editor.receive(Message::GoTo(usize::MAX));
        prop_assert_eq!(&write(editor.plan()), &last);
        // Steps that are undone and then forgotten count as well: how many are left is chance.
        prop_assert!(applied > 40, "only {} edits were made", applied);
    }
}
