//! What entries are called: beside their fellows, and by themselves.

use care::fault_said;
use care::names::{self, Named};
use drawing::Thing;
use words::Words;
use words::texts::{Many as Text, Taping, Underlay};

use super::{Item, lay};
use crate::editor::Editor;
use crate::editor::chosen::coop_at;
use crate::editor::hiding::name_of;

fn numbered(words: Words, text: impl words::Message, index: usize) -> String {
    words.say(text, &[("number", &(index + 1).to_string())])
}

/// What an entry is called beside its fellows: `Corner 3`.
pub(crate) fn name(editor: &Editor, item: Item) -> String {
    let (words, plan) = (editor.words(), editor.plan());
    let thing = match item {
        Item::Head(group) => return group.name(words).to_owned(),
        Item::Net { net, .. } => return numbered(words, Text::Net, net),
        Item::Brace { run, corner } => {
            let vertex = lay(editor, run).and_then(|lay| lay.corners.get(corner)).and_then(|corner| corner.vertex);
            return vertex.map_or_else(
                || words.text(Text::BraceAtEnd).to_owned(),
                |vertex| numbered(words, Text::Brace, vertex),
            );
        }
        Item::Thing(brace @ Thing::Brace { .. }) => return name(editor, Item::of(brace)),
        Item::Thing(thing) => thing,
    };
    if let Thing::TapePoint { point } = thing {
        return tape_point(editor, point);
    }
    if let Some(name) = name_of(plan, thing).filter(|name| !name.is_empty()) {
        return name.to_owned();
    }
    match thing {
        Thing::Run { run } => plan.runs.get(run).map(|run| care::run_name(run).to_owned()).unwrap_or_default(),
        Thing::Boundary => words.text(Text::Paddock).to_owned(),
        Thing::Gateway => words.text(Text::Gateway).to_owned(),
        Thing::Height { height } => numbered(words, Text::Height, height),
        Thing::KeepOut { keep_out } => names::listed(plan, words, Named::KeepOut(keep_out)),
        Thing::Hazard { hazard } => names::listed(plan, words, Named::Hazard(hazard)),
        Thing::Coop { coop } => coop_at(plan, coop).map_or_else(String::new, |coop| match coop.number() {
            Some(_) => names::coop(words, coop),
            None => words.say(Text::Coop, &[("name", &coop.id)]),
        }),
        Thing::Wall { wall } => names::listed(plan, words, Named::Wall(wall)),
        Thing::Shade { shade } => names::listed(plan, words, Named::Shade(shade)),
        Thing::Damp { damp } => names::listed(plan, words, Named::Damp(damp)),
        Thing::Underlay => words.text(Underlay::TheUnderlay).to_owned(),
        Thing::Drop { .. } => words.text(Underlay::PlaceDrop).to_owned(),
        Thing::RunCorner { vertex, .. }
        | Thing::BoundaryCorner { vertex }
        | Thing::WallCorner { vertex, .. }
        | Thing::ShadeCorner { vertex, .. }
        | Thing::DampCorner { vertex, .. }
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
            editor.finding(run, finding).map(|one| one.message.clone()).unwrap_or_default()
        }
        _ => String::new(),
    }
}

/// A known place: its letter where the sheet tapes from it, and its name.
fn tape_point(editor: &Editor, point: usize) -> String {
    let (words, plan) = (editor.words(), editor.plan());
    let name = plan.tape_points.get(point).map_or("", |stated| stated.name.as_str());
    let known = workup::tape::known(plan).into_iter().find(|known| known.point == point);
    match (known.map(|known| known.letter.as_str()), name) {
        (Some(letter), "") => words.say(Taping::Place, &[("letter", letter)]),
        (Some(letter), name) => words.say(Taping::Called, &[("letter", letter), ("name", name)]),
        (None, "") => numbered(words, Taping::PlaceNumber, point),
        (None, name) => name.to_owned(),
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
            thing @ (Thing::BoundaryCorner { .. }
            | Thing::KeepOutCorner { .. }
            | Thing::HazardCorner { .. }
            | Thing::WallCorner { .. }
            | Thing::ShadeCorner { .. }
            | Thing::DampCorner { .. }),
        ) => name(editor, Item::Thing(thing.whole())),
        _ => return own,
    };
    words.say(Text::OfRun, &[("thing", &own), ("run", &of)])
}
