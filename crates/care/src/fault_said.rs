//! Faults and stretches of other grass in words: one wording for map, line, page and findings.

use plan::{Fault, FaultKind, LeakageZone, Plan, Run, defaults};
use words::Words;
use words::texts::{Faults as Text, Window};
use workup::Lay;
use workup::faults::{Landing, NoLanding, land};

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

/// What a kind of fault is called.
pub fn kind(kind: FaultKind, words: Words) -> &'static str {
    words.text(match kind {
        FaultKind::Short => Text::Short,
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
    words.say(Text::WhatIf, &[("name", kind(fault.kind, words)), ("what", &what)])
}

/// A fault by its place: `bad join at corner 3`.
pub fn name(run: &Run, lay: &Lay, fault: &Fault, words: Words) -> String {
    let place = match land(run, lay, fault.kind, fault.at) {
        Ok(landing) => place_on_line(words, lay, landing.along_m),
        Err(NoLanding::NoJoin) => words.text(Text::NoJoin).to_owned(),
        Err(NoLanding::NoNet) => words.text(Text::OffNet).to_owned(),
    };
    words::capital(&words.say(Text::FaultRow, &[("name", kind(fault.kind, words)), ("place", &place)]))
}

/// What a stretch of other grass is called: `Long, wet grass`.
pub fn zone(zone: &LeakageZone, words: Words) -> String {
    let said = match grass(zone.s_per_m) {
        Window::GrassNone => words.text(Text::ZoneBare).to_owned(),
        word => words.say(Text::Zone, &[("grass", words.text(word))]),
    };
    words::capital(&said)
}

/// Where a stretch goes from and to.
pub fn zone_ends(lay: &Lay, stretch: &LeakageZone, words: Words) -> String {
    let at = |along_m: f64| place_on_line(words, lay, lay.held_m(along_m));
    let (from, to) = (at(stretch.from_m), at(stretch.to_m));
    words.say(Text::ZoneEnds, &[("from", &from), ("to", &to)])
}

/// A stretch as a supposition.
pub fn zone_what_if(stretch: &LeakageZone, words: Words) -> String {
    let (name, from, to) =
        (zone(stretch, words).to_lowercase(), words.length(stretch.from_m), words.length(stretch.to_m));
    words.say(Text::WhatIfZone, &[("name", &name), ("from", &from), ("to", &to)])
}
