//! Everything that is on the map, by name and with its figures: what the list shows and what a screen reader reads.
//!
//! An entry is light and says nothing yet: names and figures are made for those that are in sight.

mod figures;
mod names;
mod places;

use drawing::Thing;
use words::Words;
use words::texts::{Many as Text, Underlay};
use workup::{Corner, Lay, Verdict};

use crate::editor::Editor;

pub(crate) use figures::{figures, place};
pub(crate) use names::{full_name, name};
pub(crate) use places::at;

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
    /// The paddock, its way in, the picture beneath, spot heights.
    Ground,
    /// What runs keep off.
    KeepOuts,
    /// What can hurt.
    Hazards,
    /// What may serve as a side.
    Walls,
    /// Trees and roofs.
    Shade,
    /// What the keeper wrote on the map.
    Labels,
    /// The coops.
    Coops,
    /// The runs with all that belongs to them.
    Runs,
    /// What was found.
    Findings,
}

impl Group {
    fn name(self, words: Words) -> &'static str {
        words.text(match self {
            Self::Walls => return words.text(Underlay::Walls),
            Self::Shade => return words.text(Underlay::Shade),
            Self::Labels => return words.text(Underlay::Labels),
            Self::Ground => Text::Ground,
            Self::KeepOuts => Text::KeepOuts,
            Self::Hazards => Text::Hazards,
            Self::Coops => Text::Coops,
            Self::Runs => Text::Runs,
            Self::Findings => Text::Findings,
        })
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

/// The outline on the ground that is picked, or of which a corner is: its corners are told.
pub(crate) fn opened(editor: &Editor) -> Option<Thing> {
    let whole = editor.picked()?.whole();
    let is_outline = matches!(
        whole,
        Thing::Boundary
            | Thing::Damp { .. }
            | Thing::KeepOut { .. }
            | Thing::Hazard { .. }
            | Thing::Wall { .. }
            | Thing::Shade { .. }
    );
    is_outline.then_some(whole)
}

/// All entries. Corners of what stands on the ground are told where all are asked for, or of what is opened.
pub(crate) fn entries(editor: &Editor, all: bool) -> Vec<Entry> {
    let mut list = List { entries: Vec::new(), whole: opened(editor), all };
    let (plan, ground) = (editor.plan(), &editor.plan().ground);
    list.group(Group::Ground, |list| {
        if !ground.boundary.is_empty() {
            list.outline(Thing::Boundary, ground.boundary.len(), |vertex| Thing::BoundaryCorner { vertex });
        }
        list.add(1, ground.gateway.iter().map(|_| Thing::Gateway));
        list.add(1, plan.underlay.iter().map(|_| Thing::Underlay));
        list.add(1, (0..plan.heights.len()).map(|height| Thing::Height { height }));
        list.add(1, (0..plan.tape_points.len()).map(|point| Thing::TapePoint { point }));
        for (damp, stated) in ground.damp.iter().enumerate() {
            list.outline(Thing::Damp { damp }, stated.outline.len(), |vertex| Thing::DampCorner { damp, vertex });
        }
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
            // One that is a place alone has no corners.
            let corners = if stated.path.len() > 1 { stated.path.len() } else { 0 };
            list.outline(Thing::Hazard { hazard }, corners, |vertex| Thing::HazardCorner { hazard, vertex });
        }
    });
    list.group(Group::Walls, |list| {
        for (wall, stated) in plan.walls.iter().enumerate() {
            list.outline(Thing::Wall { wall }, stated.path.len(), |vertex| Thing::WallCorner { wall, vertex });
        }
    });
    list.group(Group::Shade, |list| {
        for (shade, stated) in ground.shade.iter().enumerate() {
            list.outline(Thing::Shade { shade }, stated.outline.len(), |vertex| Thing::ShadeCorner { shade, vertex });
        }
    });
    list.group(Group::Labels, |list| list.add(1, (0..plan.labels.len()).map(|label| Thing::Label { label })));
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
    list.add(2, stated.drop_at.iter().map(|_| Thing::Drop { run }));
    list.add(2, (0..workup::earth::places(stated).len()).map(|stake| Thing::EarthStake { run, stake }));
    let readings = plan.readings.iter().enumerate().filter(|(_, reading)| reading.run == stated.id);
    list.add(2, readings.map(|(reading, _)| Thing::Reading { run, reading }));
    list.entries
}

/// Whether a corner has a brace, or wants one.
fn has_brace(corner: &Corner) -> bool {
    corner.braced || corner.verdict != Verdict::None
}

/// Whether an entry's figures stand under its name: of what stands by itself, and of what is told in more than a figure.
pub(crate) fn has_two_lines(item: Item) -> bool {
    match item {
        Item::Head(_) | Item::Net { .. } | Item::Brace { .. } => false,
        Item::Thing(thing) => match thing {
            Thing::Height { .. } | Thing::Branch { .. } | Thing::Reading { .. } => false,
            thing => thing.whole() == thing,
        },
    }
}

/// Whether an entry is told in a sentence, which is as long as it needs to be.
pub(crate) fn is_sentence(item: Item) -> bool {
    matches!(
        item,
        Item::Thing(
            Thing::Finding { .. } | Thing::Zone { .. } | Thing::Fault { .. } | Thing::Gate { .. } | Thing::Pin { .. }
        )
    )
}

/// What picking an entry picks: of a net its run.
pub(crate) fn picks(item: Item) -> Option<Thing> {
    match item {
        Item::Head(_) => None,
        Item::Thing(thing) => Some(thing),
        Item::Net { run, .. } => Some(Thing::Run { run }),
        Item::Brace { run, corner } => Some(Thing::Brace { run, corner }),
    }
}

impl Item {
    /// The entry of a thing.
    pub(crate) fn of(thing: Thing) -> Self {
        match thing {
            Thing::Brace { run, corner } => Self::Brace { run, corner },
            thing => Self::Thing(thing),
        }
    }
}

fn lay(editor: &Editor, run: usize) -> Option<&Lay> {
    editor.workup().runs.get(run)?.lay.as_ref()
}
