//! Pins and gates of the run in hand: what is fixed and what it costs, what opens and the way there.

use std::sync::Arc;

use care::gate_said;
use drawing::{Ghost, Thing};
use egui::{Align2, Id, Ui, pos2, vec2};
use plan::{Edit, Gate, GateKind, Pin, PinKind, Point, Run};
use words::texts::{About, Gates as Text};
use words::{Measure, Range};
use workup::{Corner, Lay, RunWorkup};

use super::kept::kept;
use super::{Desk, ghosts, picks};
use crate::editor::{Editor, Message, Page};
use crate::facts;
use crate::field::{self, Label, Shown};
use crate::kit;
use crate::theme::{self, colour};

/// Clear width of a gate, metres.
const WIDTH_M: Range = Range::between(0.3, 50.0);
/// A gate that opens farther than this from where it is wanted is offered a join there, metres.
const OFF_JOIN_M: f64 = 1.0;
/// A gate stands at a join within this, metres.
const SAME_PLACE_M: f64 = 0.01;
/// No more corners than this are offered a post at once.
const MOST_OFFERS: usize = 5;
/// No more joins than this are offered.
const MOST_JOINS: usize = 8;

/// Where egui remembers the gate that is shown open.
const GHOST: &str = "open gate";

/// The gate that is shown open, while the page about runs is.
pub(crate) fn ghost(ui: &Ui, editor: &Editor) -> Option<Arc<Ghost>> {
    let laid = editor.run().is_some_and(|(_, worked)| worked.lay.is_some());
    ghosts::given(ui, GHOST).filter(|_| laid && editor.page() == Page::Run && !editor.shapes().is_open())
}

/// For each corner between posts, the way to a post.
pub(super) fn to_posts(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, lay: &Lay) {
    let is_picked =
        |vertex: usize| desk.editor.picked() == Some(Thing::RunCorner { run: desk.editor.run_index(), vertex });
    let mut off: Vec<(usize, &Corner)> = lay
        .corners
        .iter()
        .filter(|corner| corner.is_between_posts())
        .filter_map(|corner| Some((facts::stated_vertex(run, corner)?, corner)))
        .collect();
    // Of many, the one that is picked and the farthest off.
    off.sort_by(|(a, one), (b, other)| {
        is_picked(*b).cmp(&is_picked(*a)).then(other.to_post_m.total_cmp(&one.to_post_m)).then(a.cmp(b))
    });
    off.truncate(MOST_OFFERS);
    off.sort_by_key(|(vertex, _)| *vertex);
    let greatest_m = lay.corners.iter().map(|corner| corner.to_post_m).fold(0.0, f64::max);
    for (vertex, corner) in off {
        let miss = desk.words.fine_length_in_column(corner.to_post_m, greatest_m);
        let places = [("number", &*(vertex + 1).to_string()), ("miss", &*miss)];
        let label = desk.words.say(Text::MoveToPost, &places);
        ui.add_space(4.0);
        let link = kit::link(ui, &label, desk.p);
        if link.clicked() {
            desk.said.say(Message::ToPost(vertex));
        }
        // By that it is found again.
        ui.interact(link.rect, way_to_post(vertex), egui::Sense::hover());
    }
}

/// The way to a post of a corner.
pub(super) fn way_to_post(vertex: usize) -> Id {
    Id::unique(("way to a post", vertex))
}

/// The row of a gate.
pub(super) fn gate_row(gate: usize) -> Id {
    Id::unique(("gate row", gate))
}

/// The row of a pin.
pub(super) fn pin_row(pin: usize) -> Id {
    Id::unique(("pin row", pin))
}

/// Says that the run in hand is to be as it became.
fn set(desk: &mut Desk<'_>, run: &Run, change: impl FnOnce(&mut Run)) {
    let mut run = run.clone();
    change(&mut run);
    desk.said.say(Message::Make(Edit::SetRun { run: Box::new(run) }));
}

/// The corner or post that is picked on the run in hand: its place, what it is called, and whether it is a corner.
fn picked(desk: &Desk<'_>, run: &Run, lay: &Lay) -> Option<(Point, String, bool)> {
    let words = desk.words;
    let index = desk.editor.run_index();
    let number = |place: usize| (place + 1).to_string();
    match desk.editor.picked()? {
        Thing::RunCorner { run: of, vertex } if of == index => {
            let name = words.say(Text::CornerPlace, &[("number", &number(vertex))]);
            Some((*run.outline.get(vertex)?, name, true))
        }
        Thing::Post { run: of, post } if of == index => {
            let name = words.say(Text::PostPlace, &[("number", &number(post))]);
            Some((lay.posts.get(post)?.at, name, false))
        }
        _ => None,
    }
}

/// What is fixed of how the nets fall.
pub(super) fn pins(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, lay: &Lay) {
    let (words, p) = (desk.words, desk.p);
    let aside = if run.pins.is_empty() { "" } else { words.text(Text::PinsAside) };
    desk.section(ui, words.text(Text::Pins), aside, About::Pins);
    if !run.pins.is_empty() {
        kit::rule(ui, p);
    }
    for (index, (stated, pin)) in run.pins.iter().zip(&lay.pins).enumerate() {
        let thing = Thing::Pin { run: desk.editor.run_index(), pin: index };
        let name = care::pin_name(words, lay, stated, pin);
        let cost = gate_said::cost(pin, words);
        if row(ui, desk, thing, pin_row(index), &name, &cost, !pin.kept) {
            ui.add_space(4.0);
            if kit::link(ui, &words.say(Text::TakeOutPin, &[("pin", &name)]), p).clicked() {
                set(desk, run, |run| drop(run.pins.remove(index)));
            }
        }
    }
    ui.add_space(6.0);
    let Some((at, place, is_corner)) = picked(desk, run, lay) else {
        desk.second(ui, words.text(if run.pins.is_empty() { Text::NoPins } else { Text::PickToPin }));
        return;
    };
    let offers = offers(lay, at, is_corner);
    let offers: Vec<Pin> = offers.into_iter().filter(|pin| !run.pins.contains(pin)).collect();
    let keeps = keeps(ui, desk.editor, run, lay, &offers);
    for (pin, keeps) in offers.into_iter().zip(keeps.iter()) {
        let net = pin.net.clone().unwrap_or_default();
        let (offer, why_not) = match pin.kind {
            PinKind::Start => (Text::PinStartHere, Text::CannotStart),
            PinKind::Join => (Text::PinJoinHere, Text::CannotJoin),
            PinKind::Corner => (Text::PinCornerHere, Text::CannotCorner),
            PinKind::Net => (Text::PinNetHere, Text::CannotNet),
        };
        let says = |text: Text| words.say(text, &[("place", &place), ("net", &net)]);
        if !keeps {
            desk.second(ui, &says(why_not));
        } else if kit::link(ui, &says(offer), p).clicked() {
            desk.said.say(Message::Make(Edit::SetRun { run: Box::new(workup::pins::with_pin(run, pin)) }));
        }
        ui.add_space(4.0);
    }
}

/// What may be pinned at a corner or post.
fn offers(lay: &Lay, at: Point, is_corner: bool) -> Vec<Pin> {
    let mut offers = vec![Pin::new(PinKind::Start, at), Pin::new(PinKind::Join, at)];
    if is_corner {
        offers.push(Pin::new(PinKind::Corner, at));
    }
    let mut kinds: Vec<&str> = lay.nets.iter().map(|net| net.kind.as_str()).collect();
    kinds.sort_unstable();
    kinds.dedup();
    // Where all nets are of a kind, there is nothing to choose.
    if kinds.len() > 1 {
        offers.extend(kinds.into_iter().map(|net| Pin { net: Some(net.to_owned()), ..Pin::new(PinKind::Net, at) }));
    }
    offers
}

/// Whether each of those pins can be kept beside the run's own; while something is in the hand nobody pins, and nothing
/// is worked out for it.
fn keeps(ui: &Ui, editor: &Editor, run: &Run, lay: &Lay, offers: &[Pin]) -> Arc<Vec<bool>> {
    if editor.held_from().is_some() {
        return Arc::new(vec![true; offers.len()]);
    }
    let key = (run.clone(), editor.plan().store.nets.clone(), editor.plan().heights.clone(), offers.to_vec());
    kept(ui, Id::unique("pins that can be kept"), key, || {
        offers.iter().map(|pin| workup::pins::can_keep(editor.plan(), run, lay, pin)).collect()
    })
}

/// Where the run opens.
pub(super) fn gates(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, worked: &RunWorkup, lay: &Lay) {
    let (words, p) = (desk.words, desk.p);
    let aside = if run.gates.is_empty() { "" } else { words.text(Text::GatesAside) };
    desk.section(ui, words.text(Text::Gates), aside, About::Gates);
    ghosts::give(ui, GHOST, open_gate(desk, worked, lay));
    if run.gates.is_empty() {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::NoGates));
    } else {
        kit::rule(ui, p);
    }
    for (index, (stated, gate)) in run.gates.iter().zip(&worked.gates).enumerate() {
        let thing = Thing::Gate { run: desk.editor.run_index(), gate: index };
        let name = gate_said::name(words, stated.kind, index);
        let mut figures = gate_said::figures(gate, lay, words).into_iter();
        let opens = figures.next().unwrap_or_default();
        let faulty = gate.opening.is_none() || !gate.is_wide_enough() || (gate.road.is_none() && !gate.waits());
        let open = row(ui, desk, thing, gate_row(index), &name, "", false);
        for text in std::iter::once(opens).chain(figures) {
            let ink = if faulty { p.ink } else { p.ink2 };
            kit::prose(ui, &text, theme::regular(12.0), colour(ink));
        }
        if open {
            fields(ui, desk, run, lay, index);
        }
        ui.add_space(6.0);
    }
    ui.add_space(6.0);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        for (kind, text) in
            [(GateKind::Foot, Text::AddFoot), (GateKind::Wheels, Text::AddWheels), (GateKind::Coop, Text::AddCoop)]
        {
            if kit::choice(ui, words.text(text), false, p).clicked() {
                let gate = run.gates.len();
                set(desk, run, |run| run.gates.push(Gate::new(kind)));
                desk.said.say(Message::Pick(Some(Thing::Gate { run: desk.editor.run_index(), gate })));
            }
        }
    });
    if !run.gates.is_empty() {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::PowerOff));
    }
}

/// The gate that is hovered or picked, as it stands open.
fn open_gate(desk: &Desk<'_>, worked: &RunWorkup, lay: &Lay) -> Option<Ghost> {
    let own = desk.editor.run_index();
    let gate = |thing: Option<Thing>| match thing? {
        Thing::Gate { run, gate } if run == own => Some(gate),
        _ => None,
    };
    let gate = gate(desk.editor.hovered()).or_else(|| gate(desk.editor.picked()))?;
    let opening = worked.gates.get(gate)?.opening.as_ref()?;
    Ghost::open_gate(lay, opening, gate_said::clear(opening, desk.words))
}

/// What can be said of a gate that is picked.
pub(super) fn fields(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, lay: &Lay, index: usize) {
    let (words, p) = (desk.words, desk.p);
    let Some(stated) = run.gates.get(index) else { return };
    let worked = desk.editor.workup().runs.get(desk.editor.run_index());
    let from_stated_m = worked.and_then(|worked| worked.gates.get(index)?.from_stated_m);
    let number = (index + 1).to_string();
    let say = |text: Text| words.say(text, &[("number", &number)]);
    let width_m = stated.width_m(desk.editor.plan().coop_of(run));
    let shown = Shown::of(words, Measure::Length, width_m, stated.width_m.is_none());
    let read = field::or_nothing(field::figure(words, Measure::Length, WIDTH_M));
    let said = say(Text::WidthSaid);
    let label = Label { shown: words.text(Text::Width), said: &said };
    if let Some(width_m) = field::line(ui, p, Id::unique(("gate width", index)), label, &shown, read) {
        set(desk, run, |run| run.gates[index].width_m = width_m);
    }
    if let Some(at) = stated.at {
        if from_stated_m.is_some_and(|far_m| far_m > OFF_JOIN_M) {
            ui.add_space(4.0);
            if kit::link(ui, &say(Text::PinJoinAtGate), p).clicked() {
                set(desk, run, |run| run.pins.push(Pin::new(PinKind::Join, at)));
            }
        }
        ui.add_space(4.0);
        if kit::link(ui, &say(Text::GateAnywhere), p).clicked() {
            set(desk, run, |run| run.gates[index].at = None);
        }
    }
    // Every join as a place to put it.
    for (along_m, join) in lay.join_places().into_iter().take(MOST_JOINS) {
        // Neither where it stands nor where another was set.
        let is_there = |gate: &Gate| gate.at.is_some_and(|at| crate::tool::apart_m(at, join) < SAME_PLACE_M);
        if run.gates.iter().any(is_there) {
            continue;
        }
        let at = care::place_on_line(words, lay, along_m);
        ui.add_space(4.0);
        if kit::link(ui, &words.say(Text::GateHere, &[("number", &number), ("place", &at)]), p).clicked() {
            set(desk, run, |run| run.gates[index].at = Some(join));
        }
    }
    ui.add_space(4.0);
    if kit::link(ui, &say(Text::TakeOutGate), p).clicked() {
        set(desk, run, |run| drop(run.gates.remove(index)));
    }
}

/// A row with words at both ends that picks a thing; whether that is picked.
fn row(ui: &mut Ui, desk: &mut Desk<'_>, thing: Thing, id: Id, left: &str, right: &str, faulty: bool) -> bool {
    let p = desk.p;
    let label = if right.is_empty() { left.to_owned() } else { format!("{left}: {right}") };
    let wide = |text: &str| kit::width(ui, text, theme::medium(13.0));
    let below = wide(left) + 12.0 + wide(right) > ui.available_width();
    let (rect, picked) = picks(ui, desk, id, thing, &label);
    let y = rect.center().y;
    let (weight, ink) = (if picked { theme::medium(13.0) } else { theme::regular(13.0) }, colour(p.ink));
    kit::cell(ui, pos2(rect.left(), y), Align2::LEFT_CENTER, left, weight, ink);
    let ink = colour(if faulty { p.danger } else { p.ink2 });
    if below {
        kit::prose(ui, right, theme::regular(12.0), ink);
    } else {
        kit::cell(ui, pos2(rect.right(), y), Align2::RIGHT_CENTER, right, theme::regular(13.0), ink);
    }
    picked
}
