//! Edits as a keeper may make them, out of what proptest gives.

use plan::{
    Coop, CoopKind, EarthStakes, Edit, Energizer, HeightGrid, History, KeepOut, NetKind, Origin, Plan, Point, Reading,
    ReadingKind, Rest, Run, RunStatus, Shape, Soil, SpotHeight, Store,
};
use proptest::prelude::*;

/// What an edit is made from: its kind, and what it is about.
#[derive(Clone, Debug)]
pub(crate) struct Seed {
    kind: u8,
    which: usize,
    corner: usize,
    at: Point,
    text: String,
}

/// Numbers that text gets wrong most easily.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => -500.0..500.0,
        1 => any::<f64>().prop_filter("finite", |number| number.is_finite()),
        1 => prop::sample::select(vec![0.0, -0.0, 0.1 + 0.2, 1.0, f64::MAX, f64::MIN_POSITIVE, 5e-324, 1e21, 1e-7]),
    ]
}

fn seed() -> impl Strategy<Value = Seed> {
    let text = prop_oneof![3 => "[a-z \"\\\\\u{1f414}ü\n\r\u{2028}]{0,12}", 1 => any::<String>()];
    (any::<u8>(), 0..6_usize, 0..6_usize, number(), number(), text).prop_map(
        |(kind, which, corner, east_m, north_m, text)| Seed {
            kind,
            which,
            corner,
            at: Point::new(east_m, north_m),
            text,
        },
    )
}

/// So many things that a keeper does.
pub(crate) fn seeds(most: usize) -> impl Strategy<Value = Vec<Seed>> {
    prop::collection::vec(seed(), 0..most)
}

/// A plan with something of each kind in it.
pub(crate) fn yard() -> Plan {
    let outline = |side: f64| [(0.0, 0.0), (side, 0.0), (side, side)].map(Point::from).to_vec();
    let mut plan = Plan { title: "Orchard".to_owned(), ..Plan::default() };
    plan.ground.boundary = outline(90.0);
    plan.ground.keep_outs = vec![keep_out("Pond", outline(5.0))];
    plan.runs = vec![run("run-1", outline(20.0)), run("run-2", outline(30.0))];
    plan
}

fn run(id: &str, outline: Vec<Point>) -> Run {
    Run { id: id.to_owned(), outline, ..Run::default() }
}

fn keep_out(name: &str, outline: Vec<Point>) -> KeepOut {
    let name = name.to_owned();
    KeepOut {
        name,
        outline,
        clearance_m: Some(1.5),
        may_enclose: None,
        water: true,
        hidden: true,
        locked: true,
        rest: Rest::new(),
    }
}

fn rest(text: &str, number: f64) -> Rest {
    let list = serde_json::json!([number, null, { "deep": text }]);
    Rest::from_iter([(format!("x{text}"), list), ("note".to_owned(), text.into())])
}

fn net(seed: &Seed) -> NetKind {
    NetKind {
        id: format!("net-{}", seed.which),
        count: Some(seed.corner as u32),
        length_m: seed.at.east_m,
        panels: None,
        panel_lengths_m: Some(vec![seed.at.north_m, 3.2]),
        height_m: Some(seed.at.north_m),
        live_line_heights_m: None,
        earthed_line_heights_m: None,
        line_resistance_ohm_per_m: None,
        tension_n: None,
        spikes_per_post: Some(2),
        spike_length_m: None,
        spike_diameter_m: None,
        mass_kg: None,
        rest: rest(&seed.text, seed.at.east_m),
    }
}

fn underlay(seed: &Seed) -> plan::Underlay {
    plan::Underlay {
        path: seed.text.clone(),
        sha256: String::new(),
        size_px: Some([4, 3]),
        world_m: Some(plan::World([0.5, 0.0, 0.0, -0.5, seed.at.east_m, seed.at.north_m])),
        opacity: Some(0.3),
        hidden: seed.corner > 2,
        by_eye: seed.corner > 2,
        locked: seed.corner > 1,
        rest: rest(&seed.text, 0.5),
    }
}

fn coop(seed: &Seed) -> Coop {
    Coop {
        id: seed.text.clone(),
        at: seed.at,
        heading_deg: Some(seed.at.north_m),
        door: (seed.corner > 1).then_some(plan::DoorSide::Left),
        length_m: None,
        width_m: None,
        birds: Some(30),
        kind: Some(CoopKind::default()),
        hidden: seed.corner > 1,
        locked: seed.corner > 2,
        rest: rest(&seed.text, seed.at.north_m),
    }
}

/// The edit, which may not fit the plan.
fn edit(plan: &Plan, seed: &Seed) -> Edit {
    let id = plan.runs.get(seed.which).map_or_else(|| format!("run-{}", seed.which), |run| run.id.clone());
    let shape = match seed.which {
        0 => Shape::Boundary,
        1 => Shape::KeepOut(seed.corner % 2),
        _ => Shape::Run(id.clone()),
    };
    let outline = vec![seed.at, Point::new(1.0, 2.0), seed.at];
    let boxed = |id: &str| {
        Box::new(Run {
            name: seed.text.clone(),
            closed: Some(seed.corner.is_multiple_of(2)),
            nets: Some(vec![format!("net-{}", seed.which)]),
            status: RunStatus::Standing,
            feed_at: Some(seed.at),
            earth_stakes: EarthStakes {
                at: Some(seed.at),
                places: vec![seed.at; seed.corner % 3],
                ..EarthStakes::default()
            },
            rest: rest(&seed.text, seed.at.east_m),
            ..run(id, outline.clone())
        })
    };
    match seed.kind % 21 {
        0..=2 => Edit::MoveCorner { shape, corner: seed.corner, to: seed.at },
        3 => Edit::InsertCorner { shape, corner: seed.corner, at: seed.at },
        4 => Edit::RemoveCorner { shape, corner: seed.corner },
        5 => Edit::AddRun { index: seed.corner, run: boxed(&format!("run-{}{}", seed.which, seed.text)) },
        6 => Edit::RemoveRun { id },
        7 => Edit::SetRun { run: boxed(&id) },
        8 => Edit::SetStore {
            store: Box::new(Store {
                nets: vec![net(seed)],
                energizers: vec![Energizer::assumed()],
                rest: rest(&seed.text, seed.at.east_m),
                ..Store::default()
            }),
        },
        9 => Edit::SetCoop { coop: (seed.corner > 0).then(|| coop(seed)) },
        10 => Edit::SetKeepOuts { keep_outs: vec![keep_out(&seed.text, outline); seed.which] },
        11 => Edit::SetTitle { title: seed.text.clone() },
        12 => Edit::SetOutline { shape, outline },
        13 => {
            let (latitude_deg, longitude_deg) = (seed.at.north_m, seed.at.east_m);
            Edit::SetOrigin { origin: Some(Origin { latitude_deg, longitude_deg, rest: rest(&seed.text, 0.5) }) }
        }
        14 => {
            Edit::SetSoil { soil: Soil { resistivity_ohm_m: Some(seed.at.east_m), wet: Some(true), ..Soil::default() } }
        }
        15 => Edit::SetHeights {
            heights: vec![SpotHeight { at: seed.at, up_m: 2.5, rest: rest(&seed.text, 0.5) }; seed.which],
        },
        16 => {
            let (up_m, rest) = (vec![Some(1.5), None, Some(-0.0), Some(2.0)], rest(&seed.text, 0.5));
            let grid = HeightGrid { south_west: seed.at, cell_m: 0.5, columns: 2, up_m, rest };
            Edit::SetHeightGrid { grid: (seed.corner > 0).then(|| std::sync::Arc::new(grid)) }
        }
        17 => Edit::SetUnderlay { underlay: (seed.corner > 0).then(|| underlay(seed)) },
        18 => Edit::SetWalls {
            walls: vec![plan::Wall { path: outline, rest: rest(&seed.text, 0.5), ..plan::Wall::default() }; seed.which],
        },
        19 => Edit::SetPaddock { hidden: seed.corner > 1, locked: seed.which > 1 },
        _ => {
            let value = Some(seed.at.east_m);
            let (kind, rest) = (ReadingKind::FenceKv, Rest::new());
            Edit::SetReadings { readings: vec![Reading { run: id, kind, along_m: None, value, rest }] }
        }
    }
}

/// What of the edits took effect, in batches as a window takes them from its history; steps, undo and redo among
/// them. The plan is then what the window shows.
pub(crate) fn work(plan: &mut Plan, seeds: &[Seed]) -> Vec<Vec<Edit>> {
    let mut history = History::default();
    let mut batches = Vec::new();
    for seed in seeds {
        match seed.kind / 16 {
            0 | 1 => drop(history.undo(plan)),
            2 => drop(history.redo(plan)),
            3 => history.begin(),
            4 => history.end(),
            _ => {
                let edit = edit(plan, seed);
                // What a step folds, and how it is taken back, is the history's business; these stand alone.
                if matches!(edit, Edit::SetKeepOuts { .. } | Edit::SetOutline { .. } | Edit::SetRun { .. }) {
                    history.end();
                }
                drop(history.apply(plan, edit));
            }
        }
        if seed.corner > 1 {
            batches.push(history.take_applied());
        }
    }
    batches.push(history.take_applied());
    batches
}
