//! The pages beside the map.

use care::{Finding, Subject};
use drawing::Thing;

/// The pages beside the map.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Page {
    /// The paddock, what stands on it, its soil.
    Ground,
    /// The runs.
    #[default]
    Run,
    /// Volts.
    Power,
    /// Where the flock goes next.
    Moves,
    /// What was read.
    Book,
    /// Paper.
    Sheet,
}

impl Page {
    /// The pages in the head's order.
    pub const ALL: [Self; 6] = [Self::Ground, Self::Run, Self::Power, Self::Moves, Self::Book, Self::Sheet];
}

/// The page that is about a thing, where picking it opens one.
pub(super) fn page_of(thing: Thing) -> Option<Page> {
    match thing.whole() {
        Thing::Energizer { .. }
        | Thing::Feed { .. }
        | Thing::EarthStakes { .. }
        | Thing::EarthStake { .. }
        | Thing::Fault { .. }
        | Thing::Zone { .. } => Some(Page::Power),
        Thing::Reading { .. } => Some(Page::Book),
        Thing::Brace { .. } => Some(Page::Run),
        Thing::Boundary
        | Thing::Gateway
        | Thing::KeepOut { .. }
        | Thing::Hazard { .. }
        | Thing::Wall { .. }
        | Thing::Shade { .. }
        | Thing::Damp { .. }
        | Thing::Label { .. }
        | Thing::CoopDoor
        | Thing::Underlay
        | Thing::Height { .. }
        | Thing::TapePoint { .. } => Some(Page::Ground),
        _ => None,
    }
}

/// The page that a finding stands on, which is the one where it is mended; one of the whole plan is about the ground where
/// it is about an outline.
pub(crate) fn page_of_finding(finding: &Finding, of_plan: bool) -> Page {
    // What is stated to be a danger is mended there, a run beside another at the run; an earth stake where the earth is.
    if finding.id == "two-fences-near" && matches!(finding.subject, Subject::Outline(..)) {
        return Page::Ground;
    }
    if finding.id == "stake-near-net" && matches!(finding.subject, Subject::EarthStake(_)) {
        return Page::Power;
    }
    match (finding.id, &finding.subject) {
        ("bad-value", Subject::Figure(key)) => page_of_key(key),
        ("not-measured", _) => Page::Book,
        (
            "weak-post"
            | "fault-off-net"
            | "fault-no-join"
            | "fault-no-ohm"
            | "fault-lines"
            | "data-sheet"
            | "no-volts"
            | "foreign-earth-near"
            | "foreign-earth-unchecked"
            | "earths-near"
            | "earth-stakes-together"
            | "earth-stakes-many"
            | "earth-stakes-differ"
            | "earth-stake-weak"
            | "energizer-above-limit"
            | "energizer-long-impulse"
            | "no-energizer"
            | "lead-short"
            | "earth-lead-short"
            | "earth-damper-near"
            | "feed-off-line"
            | "leakage-zero"
            | "resistivity-odd"
            | "leakage-enormous"
            | "all-lines-broken",
            _,
        ) => Page::Power,
        (
            "overhead-line-crossed"
            | "overhead-line-near"
            | "public-way-crossed"
            | "public-way-unsigned"
            | "hazard-without-path"
            | "buried-services"
            | "local-codes-first"
            | "two-soils"
            | "soil-refuses"
            | "no-such-class"
            | "seen-nowhere"
            | "corners-contradict"
            | "keep-out-touched"
            | "keep-out-enclosed"
            | "coop-outside"
            | "coop-cut"
            | "coop-in-no-run"
            | "end-to-look-at"
            | "heights-coarse"
            | "heights-elsewhere"
            | "height-grid"
            | "heights-missing"
            | "heights-beyond"
            | "damp-drier"
            | "gateway-off-boundary"
            | "gate-no-gateway"
            | "hidden-on-map"
            | "unknown-key",
            _,
        ) => Page::Ground,
        (id, _) if of_plan && id.starts_with("outline-") => Page::Ground,
        _ => Page::Run,
    }
}

/// The page that has a figure, by its key in the file.
fn page_of_key(key: &str) -> Page {
    let of_run = key.strip_prefix("runs[").and_then(|rest| rest.split_once("].")).map(|(_, name)| name);
    // Of a branch as of its run.
    let of_run = of_run.map(|name| {
        name.strip_prefix("branches[").map_or(name, |rest| rest.split_once("].").map_or(rest, |(_, name)| name))
    });
    let begins = |name: &str, with: &[&str]| with.iter().any(|with| name.starts_with(with));
    match of_run {
        Some(name) if begins(name, &["leakage", "faults", "join_ohm", "lead", "energizer", "earth"]) => Page::Power,
        None if begins(key, &["store.energizers", "store.earth_stake", "target_kv", "ground.soil.resistivity"]) => {
            Page::Power
        }
        None if begins(key, &["ground.wind", "ground.fouled"]) => Page::Run,
        None if begins(key, &["ground.", "heights", "coop", "other_coops"]) => Page::Ground,
        _ => Page::Run,
    }
}
