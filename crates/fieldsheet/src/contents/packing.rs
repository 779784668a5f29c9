//! What to take along, and in what order to set it up.

use std::collections::BTreeMap;

use plan::{BraceKind, HazardKind, NetKind};
use words::Words;
use words::texts::{Sheet as Text, Slope};
use workup::Lay;
use workup::bracing::Kit;

use super::{Block, Look, number};
use crate::rows::Row;

/// Places nearer than this are one, metres.
const SAME_PLACE_M: f64 = 0.05;
/// The standard acceleration of free fall (3rd General Conference on Weights and Measures, 1901).
const STANDARD_GRAVITY_M_PER_S2: f64 = 9.806_65;

pub(super) fn take_along(look: Look<'_>) -> Block {
    let mut items: Vec<(usize, String, String)> = Vec::new();
    let mut mass_kg = 0.0;
    if let Some(lay) = look.lay() {
        let kinds = nets_by_kind(lay);
        // Of one kind the sum beside the head says it all.
        let several = kinds.len() > 1;
        for (kind, count) in kinds {
            let Some(net) = look.scene.plan.store.nets.iter().find(|net| net.id == kind) else { continue };
            let net_mass_kg = look.scene.plan.mass_today_kg(net) * count as f64;
            mass_kg += net_mass_kg;
            items.push((
                count,
                net_name(look, net, count),
                if several { weight(look.words, net_mass_kg) } else { String::new() },
            ));
        }
        items.extend(lay.kits().into_iter().map(|(kit, count)| (count, kit_name(look, kit, count), String::new())));
        let advised = lay.braces_advised();
        if advised > 0 {
            let text = if advised == 1 { Text::AdvisedGuy } else { Text::AdvisedGuys };
            items.push((advised, look.text(text), String::new()));
        }
    }
    let further = super::slope::further_posts(look);
    if further > 0 {
        let text = if further == 1 { Slope::SheetTakeOne } else { Slope::SheetTake };
        items.push((further, look.words.text(text).to_owned(), String::new()));
    }
    let stakes = look.run.earth_stakes.count() as usize;
    let length = look.words.length(look.scene.plan.store.earth_stake.length_m());
    let text = if stakes == 1 { Text::EarthStakeOf } else { Text::EarthStakes };
    items.push((stakes, look.say(text, &[("length", &length)]), String::new()));
    let store = &look.scene.plan.store.energizers;
    let energizer = match look.run.energizer.as_ref().or_else(|| store.first().map(|unit| &unit.id)) {
        Some(kind) => look.say(Text::EnergizerOf, &[("kind", kind)]),
        None => look.text(Text::Energizer),
    };
    items.push((1, energizer, String::new()));
    if look.scene.plan.ground.hazards.iter().any(|hazard| hazard.kind == HazardKind::PublicWay) {
        items.push((0, look.text(Text::Signs), String::new()));
    }
    items.push((0, look.text(Text::Tools), String::new()));
    let aside =
        if mass_kg > 0.0 { look.say(Text::NetMass, &[("mass", &weight(look.words, mass_kg))]) } else { String::new() };
    let rows = items.into_iter().map(|(count, name, mass)| Row::Item { count, name, mass }).collect();
    Block { head: look.text(Text::TakeAlong), aside, rows }
}

/// What a mass weighs, as `words` says forces: by the weight that pulls as much.
fn weight(words: Words, mass_kg: f64) -> String {
    words.force(mass_kg * STANDARD_GRAVITY_M_PER_S2)
}

fn nets_by_kind(lay: &Lay) -> BTreeMap<&str, usize> {
    let mut counts = BTreeMap::new();
    for net in &lay.nets {
        *counts.entry(net.kind.as_str()).or_insert(0) += 1;
    }
    counts
}

fn net_name(look: Look<'_>, net: &NetKind, count: usize) -> String {
    let length = look.words.length(net.length_m);
    let text = if count == 1 { Text::NetOf } else { Text::NetsOf };
    look.say(text, &[("kind", &net.id), ("length", &length)])
}

/// So many braces of one kind: guys with the store's stake by that name, others with what they are made of.
fn kit_name(look: Look<'_>, kit: Kit, count: usize) -> String {
    let one = |one: Text, more: Text| if count == 1 { one } else { more };
    let (length, pegs) = (look.words.fine_length(kit.length_m), kit.pegs.to_string());
    match (kit.kind, kit.pegs) {
        // The earth stake that holds it is carried with the others and counted there.
        (BraceKind::Guy, _) if kit.earth && kit.own_pegs() == 0 => look.text(one(Text::GuyOnEarth, Text::GuysOnEarth)),
        (BraceKind::Guy, _) if kit.earth => {
            let pegs = kit.own_pegs().to_string();
            look.say(one(Text::GuyOnEarthMore, Text::GuysOnEarthMore), &[("pegs", &pegs), ("length", &length)])
        }
        _ if kit.is_plain(&look.scene.plan.store.brace) => look.text(one(Text::Guy, Text::Guys)),
        (BraceKind::Post, _) => look.say(one(Text::BracePost, Text::BracePosts), &[("length", &length)]),
        (BraceKind::Guy, 0 | 1) => look.say(one(Text::GuyPeg, Text::GuysPeg), &[("length", &length)]),
        (BraceKind::Guy, _) => look.say(one(Text::GuyPegs, Text::GuysPegs), &[("pegs", &pegs), ("length", &length)]),
    }
}

pub(super) fn order(look: Look<'_>, letters: &[String]) -> Block {
    let mut steps = vec![look.text(Text::OrderLook)];
    if let Some(strip) = look.worked.and_then(|worked| worked.strip.as_ref()) {
        steps.push(match strip.passes {
            1 => look.text(Text::OrderMowOnce),
            passes => look.say(Text::OrderMow, &[("passes", &passes.to_string())]),
        });
    }
    steps.push(look.text(Text::OrderShut));
    if let Some(lay) = look.lay() {
        steps.extend(start(look, lay));
        steps.push(look.text(Text::OrderSpikes));
        if lay.braces() > 0 {
            steps.push(look.text(Text::OrderBrace));
        }
    }
    let placed = !look.run.earth_stakes.places.is_empty();
    steps.push(look.text(if placed { Text::OrderEarthPlaced } else { Text::OrderEarth }));
    if let (Some(first), Some(last)) = (letters.first(), letters.last()) {
        steps.push(look.say(Text::OrderRead, &[("first", first), ("last", last)]));
    }
    let rows = steps.into_iter().enumerate().map(|(index, text)| Row::Step { number: index + 1, text }).collect();
    Block { head: look.text(Text::Order), aside: String::new(), rows }
}

/// Where the first post goes, and which way the nets follow: the first roll of the order that the map shows, which leaves
/// out rolls that are wholly left over; else the first net of the chain.
fn start(look: Look<'_>, lay: &Lay) -> [String; 2] {
    let mut corners: Vec<(usize, f64)> =
        lay.corners.iter().filter_map(|corner| Some((number(lay, corner)?, corner.along_m))).collect();
    corners.sort_by(|(_, a), (_, b)| a.total_cmp(b));
    let work = look.worked.and_then(|worked| worked.set_up.as_ref());
    let rolls: Vec<_> = work.into_iter().flat_map(|work| work.standing(lay)).collect();
    let (from_m, onward) = match rolls.first() {
        // A roll that is partly left over is begun where its standing part ends.
        Some((roll, [_, end_m])) if !roll.forward => (along_m(lay, *end_m), lay.reversed),
        Some((_, [start_m, _])) => (along_m(lay, *start_m), !lay.reversed),
        None => (lay.start_m, !lay.reversed),
    };
    // The last corner at or before the start, round the ring where there is none.
    let before = corners
        .iter()
        .rev()
        .find(|(_, along_m)| *along_m <= from_m + SAME_PLACE_M)
        .or_else(|| corners.last().filter(|_| lay.closed));
    let first = match before {
        Some((corner, along_m)) => {
            let past_m =
                if *along_m <= from_m + SAME_PLACE_M { from_m - along_m } else { from_m + lay.line_m - along_m };
            if past_m < SAME_PLACE_M {
                look.say(Text::OrderStartAt, &[("corner", &corner.to_string())])
            } else {
                let off = look.words.length(past_m);
                look.say(Text::OrderStart, &[("off", &off), ("corner", &corner.to_string())])
            }
        }
        None => look.say(Text::OrderStartAlong, &[("off", &look.words.length(from_m))]),
    };
    let toward = if onward {
        corners
            .iter()
            .find(|(_, along_m)| *along_m > from_m + SAME_PLACE_M)
            .or_else(|| corners.first().filter(|_| lay.closed))
    } else {
        corners
            .iter()
            .rev()
            .find(|(_, along_m)| *along_m < from_m - SAME_PLACE_M)
            .or_else(|| corners.last().filter(|_| lay.closed))
    };
    let then = match (toward, rolls.as_slice()) {
        (Some((corner, _)), [(first, _), .., (last, _)]) => {
            let [first, last, corner] = [first.number, last.number, *corner].map(|number| number.to_string());
            look.say(Text::OrderRolls, &[("first", &first), ("last", &last), ("corner", &corner)])
        }
        (Some((corner, _)), _) => look.say(Text::OrderToward, &[("corner", &corner.to_string())]),
        (None, _) => look.text(Text::OrderOnward),
    };
    [first, then]
}

/// A place of the chain along the outline, metres.
fn along_m(lay: &Lay, chain_m: f64) -> f64 {
    let along_m = lay.start_m + if lay.reversed { -chain_m } else { chain_m };
    // The chain's end on a ring is its start again, not a hair before it.
    let along_m = if lay.closed { along_m.rem_euclid(lay.line_m) } else { along_m };
    if lay.closed && lay.line_m - along_m < SAME_PLACE_M { 0.0 } else { along_m }
}
