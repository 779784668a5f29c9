//! The pages beside the map.

use care::Finding;
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

/// The page that a finding stands on; one of the whole plan is about the ground where it is about an outline.
pub(crate) fn page_of_finding(finding: &Finding, of_plan: bool) -> Page {
    match finding.id {
        "weak-post"
        | "fault-off-net"
        | "fault-no-join"
        | "fault-no-ohm"
        | "fault-lines"
        | "not-measured"
        | "data-sheet"
        | "live-lines"
        | "no-volts"
        | "foreign-earth-near"
        | "foreign-earth-unchecked"
        | "earths-near"
        | "earth-stakes-together"
        | "earth-stakes-many"
        | "earth-stakes-differ"
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
        | "all-lines-broken" => Page::Power,
        "overhead-line-crossed"
        | "overhead-line-near"
        | "public-way-crossed"
        | "public-way-unsigned"
        | "two-fences-near"
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
        | "heights-coarse"
        | "heights-elsewhere"
        | "height-grid"
        | "heights-missing"
        | "heights-beyond"
        | "damp-drier"
        | "gateway-off-boundary"
        | "gate-no-gateway"
        | "hidden-on-map"
        | "unknown-key"
        | "leaves-paddock" => Page::Ground,
        id if of_plan && id.starts_with("outline-") => Page::Ground,
        _ => Page::Run,
    }
}
