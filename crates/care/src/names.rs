//! What things on the ground are called in sentences and in lists: by the keeper's own name; without one by what they are,
//! and by their number among all of what they are, so that no two share a name.
//!
//! A thing that alone of its like has no name is "the hedge" in a sentence. Of several each is "hedge 2", which is what
//! lists call it, too: there the number always stands, for it is the way from a sentence to the thing.

use plan::{Coop, HazardKind, Plan, WallKind};
use words::texts::Findings as Text;
use words::{Words, capital};

/// A thing on the ground, by its place in the plan's list of its kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Named {
    /// A keep-out, or water.
    KeepOut(usize),
    /// A hazard.
    Hazard(usize),
    /// A wall, a hedge or a fence.
    Wall(usize),
    /// Shade.
    Shade(usize),
    /// Damp ground.
    Damp(usize),
}

/// Amid a sentence: `the hedge`, or `hedge 2`.
pub fn amid(plan: &Plan, words: Words, named: Named) -> String {
    own(plan, named).map_or_else(|| unnamed(plan, words, named), str::to_owned)
}

/// At the beginning of a sentence: `The hedge`, or `Hedge 2`. The keeper's own name stays as it is written.
pub fn first(plan: &Plan, words: Words, named: Named) -> String {
    own(plan, named).map_or_else(|| capital(&unnamed(plan, words, named)), str::to_owned)
}

/// In a list: `Hedge 2`.
pub fn listed(plan: &Plan, words: Words, named: Named) -> String {
    own(plan, named).map_or_else(|| numbered(plan, words, named), str::to_owned)
}

/// On the map, where one that is alone needs no number: its kind is given, else its number stands with it.
pub fn on_map(plan: &Plan, words: Words, named: Named, kind: &str) -> String {
    match own(plan, named) {
        Some(own) => own.to_owned(),
        None if is_alone(plan, named) => kind.to_owned(),
        None => numbered(plan, words, named),
    }
}

/// A coop, in a sentence as in a list: by the keeper's own name, else by its number: `Coop 2`.
pub fn coop(words: Words, coop: &Coop) -> String {
    let numbered = |number: usize| words.say(Text::CoopNumber, &[("number", &number.to_string())]);
    coop.number().map_or_else(|| coop.id.clone(), numbered)
}

fn unnamed(plan: &Plan, words: Words, named: Named) -> String {
    match what(plan, named) {
        Some([the, _]) if is_alone(plan, named) => words.text(the).to_owned(),
        Some([_, one_of]) => words.say(one_of, &[("number", &number(plan, named))]),
        None => String::new(),
    }
}

fn numbered(plan: &Plan, words: Words, named: Named) -> String {
    let of = |[_, one_of]: [Text; 2]| capital(&words.say(one_of, &[("number", &number(plan, named))]));
    what(plan, named).map_or_else(String::new, of)
}

/// Its number among all that are the same, with a name or without: the third hedge is hedge 3 wherever walls stand.
fn number(plan: &Plan, named: Named) -> String {
    let own_kind = what(plan, named);
    let before = fellows(plan, named).take_while(|&other| other != named);
    (1 + before.filter(|&other| what(plan, other) == own_kind).count()).to_string()
}

/// The keeper's own name, where there is one.
fn own(plan: &Plan, named: Named) -> Option<&str> {
    let ground = &plan.ground;
    let name = match named {
        Named::KeepOut(index) => &ground.keep_outs.get(index)?.name,
        Named::Hazard(index) => &ground.hazards.get(index)?.name,
        Named::Wall(index) => &plan.walls.get(index)?.name,
        Named::Shade(index) => &ground.shade.get(index)?.name,
        Named::Damp(index) => &ground.damp.get(index)?.name,
    };
    Some(name.as_str()).filter(|name| !name.is_empty())
}

/// What a thing is, alone and as one of several.
fn what(plan: &Plan, named: Named) -> Option<[Text; 2]> {
    Some(match named {
        Named::KeepOut(index) if plan.ground.keep_outs.get(index)?.water => [Text::TheWater, Text::WaterNumber],
        Named::KeepOut(_) => [Text::TheKeepOut, Text::KeepOutNumber],
        Named::Hazard(index) => match plan.ground.hazards.get(index)?.kind {
            HazardKind::OverheadLine => [Text::TheOverheadLine, Text::OverheadLineNumber],
            HazardKind::PublicWay => [Text::ThePublicWay, Text::PublicWayNumber],
            HazardKind::OtherEnergisedFence => [Text::TheOtherFence, Text::OtherFenceNumber],
            HazardKind::ForeignEarth => [Text::TheForeignEarth, Text::ForeignEarthNumber],
        },
        Named::Wall(index) => match plan.walls.get(index)?.kind() {
            WallKind::Wall => [Text::TheWall, Text::WallNumber],
            WallKind::Hedge => [Text::TheHedge, Text::HedgeNumber],
            WallKind::Fence => [Text::TheFence, Text::FenceNumber],
        },
        Named::Shade(_) => [Text::TheShade, Text::ShadeNumber],
        Named::Damp(_) => [Text::TheDampPlace, Text::DampPlaceNumber],
    })
}

/// Whether no other thing that is the same has no name either.
fn is_alone(plan: &Plan, named: Named) -> bool {
    let own_kind = what(plan, named);
    let same = |other: Named| other != named && own(plan, other).is_none() && what(plan, other) == own_kind;
    !fellows(plan, named).any(same)
}

/// All in the plan's list of its kind, itself among them.
fn fellows(plan: &Plan, named: Named) -> impl Iterator<Item = Named> + use<> {
    let (count, one): (usize, fn(usize) -> Named) = match named {
        Named::KeepOut(_) => (plan.ground.keep_outs.len(), Named::KeepOut),
        Named::Hazard(_) => (plan.ground.hazards.len(), Named::Hazard),
        Named::Wall(_) => (plan.walls.len(), Named::Wall),
        Named::Shade(_) => (plan.ground.shade.len(), Named::Shade),
        Named::Damp(_) => (plan.ground.damp.len(), Named::Damp),
    };
    (0..count).map(one)
}
