//! Of several runs the one that is led is worked out, judged and drawn alone, and the others are kept: whatever is led,
//! and let go, everything is as if it had been worked out from nothing.

use std::cell::OnceCell;
use std::f64::consts::TAU;

use desktop::editor::{Editor, ManyMessage, Message};
use desktop::worker::Answer;
use drawing::Thing;
use plan::{
    Branch, Coop, Damp, Fault, FaultKind, Gate, GateKind, Pin, PinKind, Plan, Point, Rest, Run, RunStatus, SideSlope,
    SpotHeight, StatedBrace,
};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use words::Words;
use workup::gates::GateWork;
use workup::{Depth, Known, RunWorkup, Workup};

const TWO_RUNS: &[u8] = include_bytes!("../../../../assets/demo/square-or-rectangle.netfold.json");

/// What stands on a run.
#[derive(Clone, Debug)]
struct Made {
    middle: (f64, f64),
    /// From the middle to each corner, metres.
    far_m: Vec<f64>,
    closed: bool,
    /// How many nets are named; none leaves them to be chosen.
    nets: Option<usize>,
    status: RunStatus,
    /// On the store's first energizer, or on none that is stated.
    fed: bool,
    placed: bool,
    fixed: bool,
    gate: bool,
    pin: bool,
    fault: bool,
    brace: bool,
    branch: bool,
    slope: bool,
    coop: bool,
}

impl Made {
    fn run(&self, number: usize, plan: &Plan) -> Run {
        let count = self.far_m.len();
        let corner = |(index, far_m): (usize, &f64)| {
            let turn = TAU * (index as f64 + 0.1 * number as f64) / count as f64;
            Point::new(self.middle.0 + far_m * turn.cos(), self.middle.1 + far_m * turn.sin())
        };
        let outline: Vec<Point> = self.far_m.iter().enumerate().map(corner).collect();
        let kind = plan.store.nets[0].id.clone();
        let on_side = middle(outline[0], outline[1]);
        let outward = |by: f64| Point::new(outline[1].east_m + by, outline[1].north_m + by);
        let fault = Fault {
            at: on_side,
            kind: FaultKind::Short,
            ohm: Some(300.0),
            lines: None,
            cause: None,
            rest: Rest::new(),
        };
        let branch = Branch {
            from_m: 0.0,
            outline: vec![outline[0], outward(14.0), outward(22.0)],
            nets: vec![kind.clone()],
            ..Branch::default()
        };
        Run {
            id: format!("run-{number}"),
            closed: Some(self.closed),
            nets: self.nets.map(|nets| vec![kind; nets]),
            status: self.status,
            energizer: self.fed.then(|| plan.store.energizers[0].id.clone()),
            // Whence stakes are sought a damp place within reach.
            energizer_at: self.placed.then(|| Point::new(self.middle.0 + 3.0, self.middle.1)),
            start_m: self.fixed.then_some(3.0),
            gates: if self.gate { vec![Gate::new(GateKind::Foot)] } else { Vec::new() },
            pins: if self.pin { vec![Pin::new(PinKind::Corner, outline[1])] } else { Vec::new() },
            faults: if self.fault { vec![fault] } else { Vec::new() },
            braces: if self.brace {
                vec![StatedBrace { at: outline[1], ..StatedBrace::default() }]
            } else {
                Vec::new()
            },
            branches: if self.branch { vec![branch] } else { Vec::new() },
            side_slopes: if self.slope {
                vec![SideSlope { rises_m: Some(1.5), ..SideSlope::at(on_side) }]
            } else {
                Vec::new()
            },
            coop: self.coop.then(|| "house".to_owned()),
            outline,
            ..Run::default()
        }
    }
}

fn middle(one: Point, other: Point) -> Point {
    Point::new(f64::midpoint(one.east_m, other.east_m), f64::midpoint(one.north_m, other.north_m))
}

prop_compose! {
    fn made()(
        middle in (10.0..110.0_f64, 10.0..70.0_f64),
        far_m in proptest::collection::vec(11.0..26.0_f64, 3..6),
        status in prop_oneof![Just(RunStatus::Standing), Just(RunStatus::Option), Just(RunStatus::Past)],
        nets in prop_oneof![4 => (1..4_usize).prop_map(Some), 1 => Just(None)],
        (closed, fed, placed, fixed) in
            (prop::bool::weighted(0.8), any::<bool>(), any::<bool>(), prop::bool::weighted(0.2)),
        (gate, pin, fault, brace) in (any::<bool>(), prop::bool::weighted(0.3), any::<bool>(), any::<bool>()),
        (branch, slope, coop) in (prop::bool::weighted(0.3), prop::bool::weighted(0.3), any::<bool>()),
    ) -> Made {
        Made { middle, far_m, closed, nets, status, fed, placed, fixed, gate, pin, fault, brace, branch, slope, coop }
    }
}

prop_compose! {
    /// A farm of two to four runs that lie beside and over each other.
    fn farm()(
        runs in proptest::collection::vec(made(), 2..5),
        rolls in 4..12_u32,
        (coop, damp, heights) in (any::<bool>(), prop::bool::weighted(0.4), prop::bool::weighted(0.3)),
    ) -> Plan {
        let mut plan = plan::read(TWO_RUNS).unwrap().plan;
        plan.store.nets[0].count = Some(rolls);
        plan.runs = runs.iter().enumerate().map(|(number, made)| made.run(number, &plan)).collect();
        plan.coop = coop.then(|| Coop::new("house", Point::new(60.0, 40.0)));
        let places = |all: &[(f64, f64)]| all.iter().copied().map(Point::from).collect::<Vec<_>>();
        if damp {
            let outline = places(&[(5.0, 5.0), (115.0, 5.0), (115.0, 75.0), (5.0, 75.0)]);
            plan.ground.damp = vec![Damp { outline, ..Damp::default() }];
        }
        if heights {
            let up_m = [(0.0, 0.0, 0.0), (120.0, 0.0, 3.0), (60.0, 90.0, 6.0), (50.0, 30.0, 1.0)];
            let spot = |(east_m, north_m, up_m)| SpotHeight { at: Point::new(east_m, north_m), up_m, rest: Rest::new() };
            plan.heights = up_m.map(spot).to_vec();
        }
        plan
    }
}

/// What is taken hold of, by numbers that are brought within what there is.
#[derive(Clone, Copy, Debug)]
enum Grip {
    Corner(usize, usize),
    /// A side slides where it is not taken by its middle, and else gets a corner there.
    Side(usize, usize, f64),
    Run(usize),
    /// Two runs at once.
    Two(usize),
    /// A run by its turning ring.
    Ring(usize),
    BranchCorner(usize),
    Gate(usize),
    KeepOut,
}

#[derive(Clone, Copy, Debug)]
enum End {
    Drop,
    Escape,
    /// Taken back while it is still in the hand.
    Undo,
}

#[derive(Clone, Debug)]
struct Gesture {
    grip: Grip,
    /// Where the hand goes, metres from where it took hold.
    way: Vec<(f64, f64)>,
    end: End,
    /// Whether the answer of the long working out comes before the next.
    answered: bool,
}

fn gesture() -> impl Strategy<Value = Gesture> {
    let (run, corner) = (0..4_usize, 0..5_usize);
    let share = prop_oneof![Just(0.5), 0.1..0.3_f64];
    let grip = prop_oneof![
        4 => (run.clone(), corner.clone()).prop_map(|(run, corner)| Grip::Corner(run, corner)),
        3 => (run.clone(), corner, share).prop_map(|(run, side, share)| Grip::Side(run, side, share)),
        2 => run.clone().prop_map(Grip::Run),
        1 => run.clone().prop_map(Grip::Two),
        1 => run.clone().prop_map(Grip::Ring),
        1 => run.clone().prop_map(Grip::BranchCorner),
        1 => run.prop_map(Grip::Gate),
        1 => Just(Grip::KeepOut),
    ];
    let off = (-18.0..18.0_f64, -18.0..18.0_f64);
    // Now and then back to where it was.
    let way = proptest::collection::vec(prop_oneof![5 => off, 1 => Just((0.0, 0.0))], 1..4);
    let end = prop_oneof![5 => Just(End::Drop), 1 => Just(End::Escape), 1 => Just(End::Undo)];
    (grip, way, end, prop::bool::weighted(0.3)).prop_map(|(grip, way, end, answered)| Gesture {
        grip,
        way,
        end,
        answered,
    })
}

/// The thing that is taken hold of, and where.
fn taken(plan: &Plan, grip: Grip) -> Option<(Thing, Point)> {
    let within = |run: usize| run % plan.runs.len();
    let outline = |run: usize| &plan.runs[within(run)].outline;
    match grip {
        Grip::Corner(run, corner) => {
            let vertex = corner % outline(run).len();
            Some((Thing::RunCorner { run: within(run), vertex }, outline(run)[vertex]))
        }
        Grip::Side(run, side, share) => {
            let side = side % (outline(run).len() - 1);
            let (from, to) = (outline(run)[side], outline(run)[side + 1]);
            let at = Point::new(
                from.east_m + share * (to.east_m - from.east_m),
                from.north_m + share * (to.north_m - from.north_m),
            );
            Some((Thing::RunSide { run: within(run), side }, at))
        }
        Grip::Run(run) | Grip::Two(run) | Grip::Ring(run) => Some((Thing::Run { run: within(run) }, outline(run)[0])),
        Grip::BranchCorner(run) => {
            let branch = plan.runs[within(run)].branches.first()?;
            Some((Thing::BranchCorner { run: within(run), branch: 0, vertex: 1 }, branch.outline[1]))
        }
        Grip::Gate(run) => {
            plan.runs[within(run)].gates.first()?;
            Some((Thing::Gate { run: within(run), gate: 0 }, middle(outline(run)[0], outline(run)[1])))
        }
        Grip::KeepOut => Some((Thing::KeepOut { keep_out: 0 }, plan.ground.keep_outs[0].outline[0])),
    }
}

fn take_hold(editor: &mut Editor, grip: Grip) -> Option<Point> {
    let (thing, at) = taken(editor.plan(), grip)?;
    editor.receive(Message::Pick(Some(thing)));
    if let Grip::Two(run) = grip {
        let run = (run + 1) % editor.plan().runs.len();
        editor.receive(Message::Many(ManyMessage::Also(Thing::Run { run })));
    }
    editor.receive(if let Grip::Ring(_) = grip { Message::GrabTurn(at) } else { Message::Grab(thing, at) });
    Some(at)
}

/// A run but for its gates.
fn but_gates(run: &RunWorkup) -> RunWorkup {
    RunWorkup { gates: Vec::new(), ..run.clone() }
}

/// How far what an editor shows is worked out.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Worked {
    /// All of it quickly.
    Quickly,
    /// In full before something was led: what was touched since is worked out quickly.
    Partly,
    Fully,
}

/// Holds what was put together against what the same plan gives from nothing: its figures, its findings, its map.
fn is_whole(editor: &Editor, worked: Worked, when: &str) -> Result<(), TestCaseError> {
    // What is in the hand keeps its chains for that long; an answer is known for good.
    let mut known = if worked == Worked::Fully { Known::default() } else { editor.known().clone() };
    if editor.held_from().is_none() {
        known.let_go();
    }
    let whole = |depth| workup::knowing(editor.plan(), depth, &mut known.clone());
    let is = editor.workup();
    if worked == Worked::Fully {
        prop_assert_eq!(is, &whole(Depth::Full), "figures {}", when);
    } else {
        let (quick, full) = (whole(Depth::Quick), OnceCell::new());
        let of_plan = |worked: &Workup| Workup { runs: Vec::new(), ..worked.clone() };
        prop_assert_eq!(of_plan(is), of_plan(&quick), "what is of the whole plan {}", when);
        prop_assert_eq!(is.runs.len(), quick.runs.len());
        for (place, (run, quick)) in is.runs.iter().zip(&quick.runs).enumerate() {
            let full = || {
                let full = full.get_or_init(|| whole(Depth::Full));
                Some(&full.runs[place]).filter(|_| worked == Worked::Partly)
            };
            if but_gates(run) != but_gates(quick) && full().is_none_or(|full| but_gates(run) != but_gates(full)) {
                prop_assert_eq!(run, quick, "figures of run {} {}", place, when);
            }
            prop_assert_eq!(run.gates.len(), quick.gates.len());
            // A way that is not known waits to be searched for; what was known before may be kept or wait as well.
            for (number, gate) in run.gates.iter().enumerate() {
                let waiting = |gate: &GateWork| {
                    let mut gate = gate.clone();
                    gate.wait();
                    gate
                };
                let quick = quick.gates.get(number);
                let same = quick == Some(gate)
                    || quick.map(waiting).as_ref() == Some(gate)
                    || full().is_some_and(|full| full.gates.get(number) == Some(gate));
                prop_assert!(same, "gate {} of run {} {}: {:?} is {:?}", number, place, when, gate, quick);
            }
        }
    }
    is_said_and_drawn(editor, when)
}

/// Findings and map are those of the figures as they are.
fn is_said_and_drawn(editor: &Editor, when: &str) -> Result<(), TestCaseError> {
    let findings = care::findings(editor.plan(), editor.workup(), editor.words());
    prop_assert_eq!(editor.findings(), &findings, "findings {}", when);
    let mut drawing = drawing::map(&editor.scene());
    drawing.foremost = editor.drawing().foremost;
    drawing.chosen.clone_from(&editor.drawing().chosen);
    prop_assert_eq!(editor.drawing(), &drawing, "map {}", when);
    Ok(())
}

fn leads(plan: Plan, gestures: &[Gesture]) -> Result<(), TestCaseError> {
    let mut editor = Editor::new(plan, Words::default());
    editor.receive(Message::Free(true));
    let mut worked = Worked::Quickly;
    is_whole(&editor, worked, "at first")?;
    // What the worker knows from one answer to the next.
    let mut known = Known::default();
    for (number, gesture) in gestures.iter().enumerate() {
        let Some(from) = take_hold(&mut editor, gesture.grip) else { continue };
        for (step, by) in gesture.way.iter().enumerate() {
            editor.receive(Message::Drag(Point::new(from.east_m + by.0, from.north_m + by.1)));
            is_whole(&editor, worked, &format!("in gesture {number}, step {step}"))?;
        }
        editor.receive(match gesture.end {
            End::Drop => Message::Drop,
            End::Escape => Message::Escape,
            End::Undo => Message::Undo,
        });
        is_whole(&editor, worked, &format!("after gesture {number}"))?;
        if let Some(request) = editor.request().filter(|_| gesture.answered) {
            let workup = workup::knowing(&request.plan, Depth::Full, &mut known);
            let answer = Answer { revision: request.revision, workup, known: known.clone(), fitted: None };
            editor.receive(Message::Worked(Box::new(answer)));
            is_whole(&editor, Worked::Fully, &format!("answered after gesture {number}"))?;
            worked = Worked::Partly;
        }
    }
    Ok(())
}

/// A fixed slice; `NETFOLD_HEAVY=1` draws hundreds of others each time.
fn cases() -> ProptestConfig {
    let heavy = std::env::var_os("NETFOLD_HEAVY").is_some_and(|heavy| heavy == "1");
    let (cases, rng_seed) = if heavy { (400, RngSeed::Random) } else { (16, RngSeed::Fixed(7)) };
    ProptestConfig { cases, rng_seed, failure_persistence: None, ..ProptestConfig::default() }
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn whatever_is_led_over_several_runs_the_parts_make_the_whole(
        plan in farm(), gestures in proptest::collection::vec(gesture(), 3..7),
    ) {
        leads(plan, &gestures)?;
    }
}
