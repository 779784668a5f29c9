//! Everything that is on the map, by name and with its figures: what the list shows and what a screen reader reads.
//!
//! An entry is light and says nothing yet: names and figures are made for those that are in sight.

use care::fault_said;
use drawing::Thing;
use plan::{HazardKind, Point};
use words::Words;
use words::texts::{Many as Text, Map};
use workup::{Corner, Lay, Verdict};

use crate::editor::Editor;
use crate::editor::chosen::coop_at;
use crate::editor::hiding::name_of;
use crate::facts;

/// Something that has an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(crate) enum Item {
    /// The head of a group.
    Head(Group),
    /// Something that can be picked.
    Thing(Thing),
    /// A net of a run's line.
    Net {
        /// The run.
        run: usize,
        /// Its place in the chain.
        net: usize,
    },
    /// The brace of a corner, or of an end of the netting.
    Brace {
        /// The run.
        run: usize,
        /// The corner's place in the lay.
        corner: usize,
    },
}

/// The groups, in their order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(crate) enum Group {
    /// The paddock, its way in, spot heights.
    Ground,
    /// What runs keep off.
    KeepOuts,
    /// What can hurt.
    Hazards,
    /// The coops.
    Coops,
    /// The runs with all that belongs to them.
    Runs,
    /// What was found.
    Findings,
}

impl Group {
    fn name(self) -> Text {
        match self {
            Self::Ground => Text::Ground,
            Self::KeepOuts => Text::KeepOuts,
            Self::Hazards => Text::Hazards,
            Self::Coops => Text::Coops,
            Self::Runs => Text::Runs,
            Self::Findings => Text::Findings,
        }
    }
}

/// One line of the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Entry {
    /// What it is.
    pub(crate) item: Item,
    /// How deep it stands: a head 0, a whole 1, its parts 2, their parts 3.
    pub(crate) level: u8,
}

/// All entries. Corners of the paddock, of keep-outs and hazards are told where all are asked for, or theirs is picked.
pub(crate) fn entries(editor: &Editor, all: bool) -> Vec<Entry> {
    let mut list = List { entries: Vec::new(), whole: editor.picked().map(whole_of), all };
    let (plan, ground) = (editor.plan(), &editor.plan().ground);
    list.group(Group::Ground, |list| {
        if !ground.boundary.is_empty() {
            list.outline(Thing::Boundary, ground.boundary.len(), |vertex| Thing::BoundaryCorner { vertex });
        }
        list.add(1, ground.gateway.iter().map(|_| Thing::Gateway));
        list.add(1, (0..plan.heights.len()).map(|height| Thing::Height { height }));
    });
    list.group(Group::KeepOuts, |list| {
        for (keep_out, stated) in ground.keep_outs.iter().enumerate() {
            list.outline(Thing::KeepOut { keep_out }, stated.outline.len(), |vertex| Thing::KeepOutCorner {
                keep_out,
                vertex,
            });
        }
    });
    list.group(Group::Hazards, |list| {
        for (hazard, stated) in ground.hazards.iter().enumerate() {
            list.outline(Thing::Hazard { hazard }, stated.path.len(), |vertex| Thing::HazardCorner { hazard, vertex });
        }
    });
    list.group(Group::Coops, |list| {
        list.add(1, (0..plan.coop.iter().chain(&plan.other_coops).count()).map(|coop| Thing::Coop { coop }));
    });
    list.group(Group::Runs, |list| (0..plan.runs.len()).for_each(|run| list.run(editor, run)));
    list.group(Group::Findings, |list| {
        let findings = editor.findings();
        let of_runs = findings.runs.iter().enumerate().map(|(run, found)| (Some(run), found));
        for (run, found) in of_runs.chain([(None, &findings.plan)]) {
            list.add(1, (0..found.len()).map(|finding| Thing::Finding { run, finding }));
        }
    });
    list.entries
}

struct List {
    entries: Vec<Entry>,
    whole: Option<Thing>,
    all: bool,
}

impl List {
    fn group(&mut self, group: Group, fill: impl FnOnce(&mut Self)) {
        let head = self.entries.len();
        self.entries.push(Entry { item: Item::Head(group), level: 0 });
        fill(self);
        if self.entries.len() == head + 1 {
            self.entries.pop();
        }
    }

    fn add(&mut self, level: u8, things: impl Iterator<Item = Thing>) {
        self.entries.extend(things.map(|thing| Entry { item: Item::Thing(thing), level }));
    }

    fn outline(&mut self, whole: Thing, corners: usize, corner: impl Fn(usize) -> Thing) {
        self.add(1, std::iter::once(whole));
        if self.all || self.whole == Some(whole) {
            self.add(2, (0..corners).map(corner));
        }
    }

    fn run(&mut self, editor: &Editor, run: usize) {
        self.add(1, std::iter::once(Thing::Run { run }));
        self.entries.extend(parts(editor, run));
    }
}

/// The parts of a run, in the order in which they are walked: corners, faults and grass, nets, braces, gates, pins,
/// branches, its power, readings.
pub(crate) fn parts(editor: &Editor, run: usize) -> Vec<Entry> {
    let mut list = List { entries: Vec::new(), whole: None, all: true };
    let (plan, worked) = (editor.plan(), editor.workup().runs.get(run));
    let Some(stated) = plan.runs.get(run) else { return list.entries };
    list.add(2, (0..stated.outline.len()).map(|vertex| Thing::RunCorner { run, vertex }));
    for branch in stated.lines() {
        list.add(2, (0..stated.faults_on(branch).len()).map(|fault| Thing::Fault { run, branch, fault }));
        list.add(2, (0..stated.zones_on(branch).len()).map(|zone| Thing::Zone { run, branch, zone }));
    }
    if let Some(lay) = worked.and_then(|worked| worked.lay.as_ref()) {
        let nets = (0..lay.nets.len()).map(|net| Item::Net { run, net });
        let braces = lay.corners.iter().enumerate().filter(|(_, corner)| has_brace(corner));
        let braces = braces.map(|(corner, _)| Item::Brace { run, corner });
        list.entries.extend(nets.chain(braces).map(|item| Entry { item, level: 2 }));
    }
    list.add(2, (0..stated.gates.len()).map(|gate| Thing::Gate { run, gate }));
    list.add(2, (0..stated.pins.len()).map(|pin| Thing::Pin { run, pin }));
    for (branch, hanging) in stated.branches.iter().enumerate() {
        list.add(2, std::iter::once(Thing::Branch { run, branch }));
        list.add(3, (0..hanging.outline.len()).map(|vertex| Thing::BranchCorner { run, branch, vertex }));
    }
    if worked.is_some_and(|worked| worked.volts.is_some()) {
        list.add(2, [Thing::Energizer { run }, Thing::Feed { run }].into_iter());
    }
    list.add(2, (0..workup::earth::places(stated).len()).map(|stake| Thing::EarthStake { run, stake }));
    let readings = plan.readings.iter().enumerate().filter(|(_, reading)| reading.run == stated.id);
    list.add(2, readings.map(|(reading, _)| Thing::Reading { run, reading }));
    list.entries
}

/// Whether a corner has a brace, or wants one.
fn has_brace(corner: &Corner) -> bool {
    corner.braced || corner.verdict != Verdict::None
}

/// The whole whose corners are told with a thing.
fn whole_of(thing: Thing) -> Thing {
    match thing {
        Thing::BoundaryCorner { .. } | Thing::BoundarySide { .. } => Thing::Boundary,
        Thing::KeepOutCorner { keep_out, .. } | Thing::KeepOutSide { keep_out, .. } => Thing::KeepOut { keep_out },
        Thing::HazardCorner { hazard, .. } => Thing::Hazard { hazard },
        thing => thing,
    }
}

/// What picking an entry picks: of a net its run, of a brace its corner.
pub(crate) fn picks(editor: &Editor, item: Item) -> Option<Thing> {
    match item {
        Item::Head(_) => None,
        Item::Thing(thing) => Some(thing),
        Item::Net { run, .. } => Some(Thing::Run { run }),
        Item::Brace { run, corner } => {
            let stated = editor.plan().runs.get(run)?;
            let vertex = lay(editor, run)?.corners.get(corner).and_then(|corner| facts::stated_vertex(stated, corner));
            Some(vertex.map_or(Thing::Run { run }, |vertex| Thing::RunCorner { run, vertex }))
        }
    }
}

fn lay(editor: &Editor, run: usize) -> Option<&Lay> {
    editor.workup().runs.get(run)?.lay.as_ref()
}

fn numbered(words: Words, text: Text, index: usize) -> String {
    words.say(text, &[("number", &(index + 1).to_string())])
}

/// What a kind of hazard is called.
fn hazard_kind(kind: HazardKind) -> Map {
    match kind {
        HazardKind::OverheadLine => Map::OverheadLine,
        HazardKind::PublicWay => Map::PublicWay,
        HazardKind::OtherEnergisedFence => Map::OtherFence,
        HazardKind::ForeignEarth => Map::ForeignEarth,
    }
}

/// What an entry is called beside its fellows: `Corner 3`.
pub(crate) fn name(editor: &Editor, item: Item) -> String {
    let (words, plan) = (editor.words(), editor.plan());
    let thing = match item {
        Item::Head(group) => return words.text(group.name()).to_owned(),
        Item::Net { net, .. } => return numbered(words, Text::Net, net),
        Item::Brace { run, corner } => {
            let vertex = lay(editor, run).and_then(|lay| lay.corners.get(corner)).and_then(|corner| corner.vertex);
            return vertex.map_or_else(
                || words.text(Text::BraceAtEnd).to_owned(),
                |vertex| numbered(words, Text::Brace, vertex),
            );
        }
        Item::Thing(thing) => thing,
    };
    if let Some(name) = name_of(plan, thing).filter(|name| !name.is_empty()) {
        return name.to_owned();
    }
    match thing {
        Thing::Run { run } => plan.runs.get(run).map(|run| care::run_name(run).to_owned()).unwrap_or_default(),
        Thing::Boundary => words.text(Text::Paddock).to_owned(),
        Thing::Gateway => words.text(Text::Gateway).to_owned(),
        Thing::Height { height } => numbered(words, Text::Height, height),
        Thing::KeepOut { keep_out } => {
            let water = plan.ground.keep_outs.get(keep_out).is_some_and(|keep_out| keep_out.water);
            numbered(words, if water { Text::WaterNumber } else { Text::KeepOut }, keep_out)
        }
        Thing::Hazard { hazard } => {
            let kind = plan.ground.hazards.get(hazard).map_or("", |one| words.text(hazard_kind(one.kind)));
            words.say(Text::HazardNumber, &[("kind", kind), ("number", &(hazard + 1).to_string())])
        }
        Thing::Coop { coop } => {
            words.say(Text::Coop, &[("name", coop_at(plan, coop).map_or("", |coop| coop.id.as_str()))])
        }
        Thing::RunCorner { vertex, .. }
        | Thing::BoundaryCorner { vertex }
        | Thing::KeepOutCorner { vertex, .. }
        | Thing::HazardCorner { vertex, .. }
        | Thing::BranchCorner { vertex, .. } => numbered(words, Text::Corner, vertex),
        Thing::Gate { run, gate } => {
            let kind = plan.runs.get(run).and_then(|run| run.gates.get(gate)).map(|gate| gate.kind);
            kind.map_or_else(
                || numbered(words, Text::GateNumber, gate),
                |kind| care::gate_said::name(words, kind, gate),
            )
        }
        Thing::Pin { pin, .. } => numbered(words, Text::PinNumber, pin),
        Thing::Branch { branch, .. } => numbered(words, Text::BranchNumber, branch),
        Thing::Feed { .. } => words.text(Text::Feed).to_owned(),
        Thing::Energizer { .. } => words.text(Text::Energizer).to_owned(),
        Thing::EarthStake { stake, .. } => numbered(words, Text::StakeNumber, stake),
        Thing::Reading { reading, .. } => numbered(words, Text::ReadingNumber, reading),
        Thing::Fault { run, branch, fault } => {
            let on = editor.on_line(run, branch);
            on.and_then(|(alone, lay)| {
                let stated = alone.faults.get(fault)?;
                Some(fault_said::name(&alone, &lay, branch, stated, words))
            })
            .unwrap_or_default()
        }
        Thing::Zone { run, branch, zone } => {
            let stated = plan.runs.get(run).and_then(|run| run.zones_on(branch).get(zone));
            stated.map(|zone| fault_said::zone(zone, words)).unwrap_or_default()
        }
        Thing::Finding { run, finding } => {
            let findings = editor.findings();
            let found = run.map_or(Some(&findings.plan), |run| findings.runs.get(run));
            found.and_then(|found| found.get(finding)).map(|one| one.message.clone()).unwrap_or_default()
        }
        _ => String::new(),
    }
}

/// What an entry is called by itself: with the run that it belongs to.
pub(crate) fn full_name(editor: &Editor, item: Item) -> String {
    let own = name(editor, item);
    let run = match item {
        Item::Net { run, .. } | Item::Brace { run, .. } => Some(run),
        Item::Thing(Thing::Run { .. } | Thing::Finding { .. }) | Item::Head(_) => None,
        Item::Thing(thing) => thing.run(),
    };
    let words = editor.words();
    if let Some(run) = run.and_then(|run| editor.plan().runs.get(run)) {
        return words.say(Text::OfRun, &[("thing", &own), ("run", care::run_name(run))]);
    }
    let of = match item {
        Item::Thing(
            thing @ (Thing::BoundaryCorner { .. } | Thing::KeepOutCorner { .. } | Thing::HazardCorner { .. }),
        ) => name(editor, Item::Thing(whole_of(thing))),
        _ => return own,
    };
    words.say(Text::OfRun, &[("thing", &own), ("run", &of)])
}

fn place(words: Words, at: Point) -> String {
    words.say(Text::Place, &[("east", &words.length(at.east_m)), ("north", &words.length(at.north_m))])
}

/// The figures of an entry; empty where it has none.
pub(crate) fn figures(editor: &Editor, item: Item) -> String {
    let (words, plan) = (editor.words(), editor.plan());
    let thing = match item {
        Item::Head(_) => return String::new(),
        Item::Net { run, net } => {
            let kind = lay(editor, run).and_then(|lay| lay.nets.get(net)).and_then(|net| plan.net_kind(&net.kind));
            return kind.map(|kind| words.length(kind.length_m)).unwrap_or_default();
        }
        Item::Brace { run, corner } => {
            let corner = lay(editor, run).and_then(|lay| lay.corners.get(corner));
            return corner.map(|corner| words.text(brace(corner)).to_owned()).unwrap_or_default();
        }
        Item::Thing(thing) => thing,
    };
    match thing {
        Thing::Run { run } => run_figures(editor, run),
        Thing::Boundary => words.field(editor.workup().paddock_m2),
        Thing::KeepOut { keep_out } => {
            plan.ground.keep_outs.get(keep_out).map(|one| words.area(area_m2(&one.outline))).unwrap_or_default()
        }
        Thing::Hazard { hazard } => plan.ground.hazards.get(hazard).map_or_else(String::new, |one| {
            let long_m: f64 = one.path.windows(2).map(|pair| crate::tool::apart_m(pair[0], pair[1])).sum();
            match one.line_voltage_kv {
                Some(kv) => words.kilovolts(kv),
                None if long_m > 0.0 => words.far(long_m),
                None => one.path.first().map(|&at| place(words, at)).unwrap_or_default(),
            }
        }),
        Thing::Height { height } => plan.heights.get(height).map(|one| words.length(one.up_m)).unwrap_or_default(),
        Thing::Coop { coop } => coop_at(plan, coop).map_or_else(String::new, |coop| {
            let birds = words.number(f64::from(coop.birds()), 0);
            format!("{birds} {}", facts::birds(words, coop.kind()))
        }),
        Thing::Branch { run, branch } => {
            let laid = lay(editor, run).and_then(|lay| lay.branches.iter().find(|laid| laid.branch == branch));
            laid.map(|laid| words.length(laid.line_m)).unwrap_or_default()
        }
        Thing::Gate { run, gate } => {
            let worked = editor.workup().runs.get(run).and_then(|worked| worked.gates.get(gate));
            worked
                .and_then(|gate| gate.opening.as_ref())
                .map(|open| care::gate_said::clear(open, words))
                .unwrap_or_default()
        }
        Thing::Pin { run, pin } => {
            let stated = plan.runs.get(run).and_then(|run| run.pins.get(pin));
            let laid = lay(editor, run).and_then(|lay| Some((lay, lay.pins.get(pin)?)));
            stated.zip(laid).map(|(stated, (lay, pin))| care::pin_name(words, lay, stated, pin)).unwrap_or_default()
        }
        Thing::Energizer { run } => plan.runs.get(run).map_or_else(String::new, |run| {
            let own = run.energizer.as_deref().or(plan.store.energizers.first().map(|one| one.id.as_str()));
            own.unwrap_or_default().to_owned()
        }),
        Thing::Zone { run, branch, zone } => editor.on_line(run, branch).map_or_else(String::new, |(alone, lay)| {
            alone
                .leakage_zones
                .get(zone)
                .map(|zone| fault_said::zone_ends(&lay, branch, zone, words))
                .unwrap_or_default()
        }),
        Thing::Reading { reading, .. } => {
            let value = plan.readings.get(reading).and_then(|reading| reading.value);
            value.map(|value| words.number(value, 1)).unwrap_or_default()
        }
        Thing::Finding { .. } => String::new(),
        thing => at(editor, Item::Thing(thing)).map(|at| place(words, at)).unwrap_or_default(),
    }
}

fn run_figures(editor: &Editor, run: usize) -> String {
    let words = editor.words();
    let Some(worked) = editor.workup().runs.get(run) else { return String::new() };
    let Some(lay) = &worked.lay else {
        return worked.line_m.map(|line_m| words.length(line_m)).unwrap_or_default();
    };
    let (area, line, nets) = (words.area(lay.area_m2), words.length(lay.line_m), lay.nets.len().to_string());
    let figures = if lay.closed {
        words.say(Text::RunFigures, &[("area", &area), ("line", &line), ("nets", &nets)])
    } else {
        words.say(Text::NetsAndLine, &[("line", &line), ("nets", &nets)])
    };
    match worked.volts.as_ref().and_then(|volts| volts.weakest.as_ref()) {
        Some(weakest) => {
            words.say(Text::WithVolts, &[("figures", &figures), ("volts", &facts::weakest(words, weakest))])
        }
        None => figures,
    }
}

fn brace(corner: &Corner) -> Text {
    match corner.verdict {
        _ if corner.brace_too_weak() => Text::Weak,
        _ if corner.braced => Text::Set,
        Verdict::Advised => Text::Advised,
        _ => Text::Needed,
    }
}

fn area_m2(outline: &[Point]) -> f64 {
    let Some(&from) = outline.first() else { return 0.0 };
    let local = |at: &Point| (at.east_m - from.east_m, at.north_m - from.north_m);
    let pairs = outline.iter().zip(outline.iter().cycle().skip(1));
    let twice: f64 = pairs.map(|(one, other)| (local(one), local(other))).map(|(a, b)| a.0 * b.1 - a.1 * b.0).sum();
    twice.abs() / 2.0
}

/// Where an entry lies on the map; `None` where it lies nowhere.
pub(crate) fn at(editor: &Editor, item: Item) -> Option<Point> {
    let plan = editor.plan();
    let mean = |places: &[Point]| {
        let count = places.len() as f64;
        let sum = places.iter().fold((0.0, 0.0), |sum, at| (sum.0 + at.east_m, sum.1 + at.north_m));
        (count > 0.0).then(|| Point::new(sum.0 / count, sum.1 / count))
    };
    let thing = match item {
        Item::Head(_) => return None,
        Item::Net { run, net } => {
            let lay = lay(editor, run)?;
            let net = lay.nets.get(net)?;
            let chain_m = f64::midpoint(net.start_m, net.end_m);
            let along_m = if lay.reversed { lay.start_m - chain_m } else { lay.start_m + chain_m };
            return lay.place_at(if lay.closed { along_m.rem_euclid(lay.line_m) } else { along_m });
        }
        Item::Brace { run, corner } => return lay(editor, run)?.corners.get(corner).map(|corner| corner.stake.at),
        Item::Thing(thing) => thing,
    };
    match thing {
        Thing::Run { run } => mean(&plan.runs.get(run)?.outline),
        Thing::RunCorner { run, vertex } => plan.runs.get(run)?.outline.get(vertex).copied(),
        Thing::Boundary => mean(&plan.ground.boundary),
        Thing::BoundaryCorner { vertex } => plan.ground.boundary.get(vertex).copied(),
        Thing::KeepOut { keep_out } => mean(&plan.ground.keep_outs.get(keep_out)?.outline),
        Thing::KeepOutCorner { keep_out, vertex } => plan.ground.keep_outs.get(keep_out)?.outline.get(vertex).copied(),
        Thing::Hazard { hazard } => mean(&plan.ground.hazards.get(hazard)?.path),
        Thing::HazardCorner { hazard, vertex } => plan.ground.hazards.get(hazard)?.path.get(vertex).copied(),
        Thing::Coop { coop } => coop_at(plan, coop).map(|coop| coop.at),
        Thing::Gateway => plan.ground.gateway.as_ref().map(|gateway| gateway.at),
        Thing::Height { height } => plan.heights.get(height).map(|height| height.at),
        Thing::Branch { run, branch } => mean(&plan.runs.get(run)?.branches.get(branch)?.outline),
        Thing::BranchCorner { run, branch, vertex } => {
            plan.runs.get(run)?.branches.get(branch)?.outline.get(vertex).copied()
        }
        Thing::EarthStake { run, stake } => workup::earth::places(plan.runs.get(run)?).get(stake).copied(),
        Thing::Finding { run, finding } => {
            let findings = editor.findings();
            run.map_or(Some(&findings.plan), |run| findings.runs.get(run))?.get(finding)?.at.first().copied()
        }
        // Where a sign of it is drawn.
        thing => editor.drawing().shapes.iter().find(|shape| shape.thing == Some(thing)).and_then(|shape| match &shape
            .form
        {
            drawing::Form::Mark { at, .. } | drawing::Form::Label { at, .. } => Some(*at),
            drawing::Form::Path { points, .. } => points.get(points.len() / 2).copied(),
            drawing::Form::Area { rings } => rings.first().and_then(|ring| mean(ring)),
        }),
    }
}
