//! Faults and stretches of other grass in words: one wording for map, line, page and findings.

use plan::{Fault, FaultCause, FaultKind, LeakageZone, Plan, Run, defaults};
use words::Words;
use words::texts::{Faults as Text, Window};
use workup::Lay;
use workup::faults::{Landing, NoLanding, land};

use crate::gate_said::corner_before;
use crate::place_on_line;

/// Grass as a scale of leakage, siemens per metre of net: none, touching, long, long and wet. The classes are a
/// working assumption, bracketed by one published range for netting (docs, the model and its limits).
pub const GRASS: [(Window, f64); 4] = [
    (Window::GrassNone, defaults::LEAKAGE_CLEAN_S_PER_M),
    (Window::GrassTouching, defaults::LEAKAGE_S_PER_M),
    (Window::GrassLong, 5e-5),
    (Window::GrassLongWet, defaults::LEAKAGE_LONG_WET_S_PER_M),
];

/// The word of the grass that leaks most nearly so much.
pub fn grass(s_per_m: f64) -> Window {
    let off = |leaks: f64| if s_per_m > 0.0 { (s_per_m / leaks).ln().abs() } else { leaks };
    GRASS.into_iter().min_by(|one, other| off(one.1).total_cmp(&off(other.1))).map_or(Window::GrassNone, |one| one.0)
}

/// What a fault is called: a short by what it is made of, where that is stated.
pub fn called(fault: &Fault, words: Words) -> &'static str {
    words.text(match fault.kind {
        FaultKind::Short => match fault.cause {
            Some(FaultCause::FallenBranch) => Text::FallenBranch,
            Some(FaultCause::Peg) => Text::PegOnLine,
            None => Text::Short,
        },
        FaultKind::Break => Text::Break,
        FaultKind::LineBreak => Text::LineBreak,
        FaultKind::Join => Text::Join,
    })
}

/// Live lines of a net of the lay.
pub fn live_lines(plan: &Plan, lay: &Lay, net: usize) -> Option<u32> {
    let kind = &lay.nets.get(net)?.kind;
    let stated = plan.store.nets.iter().find(|one| one.id == *kind)?;
    u32::try_from(stated.live_line_heights_m().len()).ok()
}

/// What a fault does where it lands: its ohms, its lines, the nets.
pub fn what(plan: &Plan, lay: &Lay, fault: &Fault, landed: Result<Landing, NoLanding>, words: Words) -> String {
    let landing = match landed {
        Ok(landing) => landing,
        Err(NoLanding::NoJoin) => return words.text(Text::NoJoin).to_owned(),
        Err(NoLanding::NoNet) => return words.text(Text::OffNet).to_owned(),
    };
    let ohm = words.ohms(fault.ohm.unwrap_or(0.0));
    let number = |net: usize| (net + 1).to_string();
    let net = number(landing.net);
    match fault.kind {
        FaultKind::Short => words.say(Text::ToGround, &[("ohm", &ohm)]),
        FaultKind::Break => words.say(Text::InNet, &[("net", &net)]),
        FaultKind::LineBreak => {
            let lines = live_lines(plan, lay, landing.net).map_or_else(String::new, |lines| lines.to_string());
            let count = fault.lines.unwrap_or(1).to_string();
            words.say(Text::OfLines, &[("count", &count), ("lines", &lines), ("net", &net)])
        }
        FaultKind::Join => {
            let behind = landing.behind.unwrap_or(landing.net);
            let (one, other) = (landing.net.min(behind), landing.net.max(behind));
            words.say(Text::BetweenNets, &[("ohm", &ohm), ("one", &number(one)), ("other", &number(other))])
        }
    }
}

/// A fault as a supposition: `What if: bad join, 1.0 kΩ, nets 2 and 3`.
pub fn what_if(plan: &Plan, run: &Run, lay: &Lay, fault: &Fault, words: Words) -> String {
    let what = what(plan, lay, fault, land(run, lay, fault.kind, fault.at), words);
    words.say(Text::WhatIf, &[("name", called(fault, words)), ("what", &what)])
}

/// A place of a run's line in words, or of one of its branches.
pub fn place(words: Words, lay: &Lay, branch: Option<usize>, along_m: f64) -> String {
    match branch {
        None => place_on_line(words, lay, along_m),
        Some(branch) => {
            let (along, number) = (words.length(along_m), (branch + 1).to_string());
            words.say(Text::AlongBranch, &[("along", &along), ("number", &number)])
        }
    }
}

/// The same as an end of something: `corner 3`, not `at corner 3`.
pub fn end_place(words: Words, lay: &Lay, branch: Option<usize>, along_m: f64) -> String {
    match (branch, corner_before(lay, along_m)) {
        (None, (number, None)) => words.say(Text::Corner, &[("number", &number)]),
        _ => place(words, lay, branch, along_m),
    }
}

/// A fault by its place, on a run's line or on one of its branches: `Bad join at corner 3`.
pub fn name(run: &Run, lay: &Lay, branch: Option<usize>, fault: &Fault, words: Words) -> String {
    words::capital(&name_within(run, lay, branch, fault, words))
}

/// The same within a sentence: `bad join at corner 3`.
pub fn name_within(run: &Run, lay: &Lay, branch: Option<usize>, fault: &Fault, words: Words) -> String {
    let place = match land(run, lay, fault.kind, fault.at) {
        Ok(landing) => place(words, lay, branch, landing.along_m),
        Err(NoLanding::NoJoin) => words.text(Text::NoJoin).to_owned(),
        Err(NoLanding::NoNet) => words.text(Text::OffNet).to_owned(),
    };
    words.say(Text::FaultRow, &[("name", called(fault, words)), ("place", &place)])
}

/// What a stretch of other grass is called: `Long, wet grass`.
pub fn zone(zone: &LeakageZone, words: Words) -> String {
    words::capital(&zone_within(zone, words))
}

/// The same within a sentence: `long, wet grass`.
pub fn zone_within(zone: &LeakageZone, words: Words) -> String {
    match grass(zone.s_per_m) {
        Window::GrassNone => words.text(Text::ZoneBare).to_owned(),
        word => words.say(Text::Zone, &[("grass", words.text(word))]),
    }
}

/// Where a stretch goes from and to, on a run's line or on one of its branches.
pub fn zone_ends(lay: &Lay, branch: Option<usize>, stretch: &LeakageZone, words: Words) -> String {
    ends_said(Text::ZoneEnds, lay, branch, stretch, words)
}

/// The same within a sentence.
pub fn zone_ends_within(lay: &Lay, branch: Option<usize>, stretch: &LeakageZone, words: Words) -> String {
    ends_said(Text::ZoneEndsWithin, lay, branch, stretch, words)
}

fn ends_said(text: Text, lay: &Lay, branch: Option<usize>, stretch: &LeakageZone, words: Words) -> String {
    let at = |along_m: f64| end_place(words, lay, branch, lay.held_m(along_m));
    let (from, to) = (at(stretch.from_m), at(stretch.to_m));
    words.say(text, &[("from", &from), ("to", &to)])
}

/// How long a stretch is, metres; one that ends before it starts goes over the first vertex.
pub fn zone_m(lay: &Lay, stretch: &LeakageZone) -> f64 {
    let straight_m = stretch.to_m - stretch.from_m;
    if straight_m < 0.0 && lay.closed { straight_m + lay.line_m } else { straight_m }
}

/// An end of a stretch: `End of long, wet grass, 3.0 m past corner 2`.
pub fn zone_end(lay: &Lay, branch: Option<usize>, stretch: &LeakageZone, last: bool, words: Words) -> String {
    let at_m = if last { stretch.to_m } else { stretch.from_m };
    let (grass, place) = (zone_within(stretch, words), place(words, lay, branch, lay.held_m(at_m)));
    words.say(if last { Text::EndOfZone } else { Text::StartOfZone }, &[("grass", &grass), ("place", &place)])
}

/// A stretch as a supposition.
pub fn zone_what_if(stretch: &LeakageZone, words: Words) -> String {
    let (name, from, to) = (zone_within(stretch, words), words.length(stretch.from_m), words.length(stretch.to_m));
    words.say(Text::WhatIfZone, &[("name", &name), ("from", &from), ("to", &to)])
}
