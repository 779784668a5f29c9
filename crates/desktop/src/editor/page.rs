//! The pages beside the map.

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
        | Thing::Height { .. } => Some(Page::Ground),
        _ => None,
    }
}
