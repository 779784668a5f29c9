//! What an outline can be drawn for.

use plan::{HazardKind, WallKind};

use super::FEWEST_CORNERS;

/// What an outline is drawn for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Drawn {
    /// The paddock, drawn anew.
    Paddock,
    /// A further run.
    Run,
    /// A place that runs keep off.
    KeepOut,
    /// Water that runs keep off.
    Water,
    /// A thing that can hurt: a path, or one place.
    Hazard(HazardKind),
    /// The coop: one place; where there is one, it goes there.
    Coop,
    /// One more coop: one place.
    FurtherCoop,
    /// A known place that corners are taped from.
    TapePoint,
    /// The way into the paddock: one place.
    Gateway,
    /// A spot whose height is known.
    Height,
    /// Netting that hangs on a run, from the line on.
    Branch,
    /// An earth stake of that run: one place.
    EarthStake(usize),
    /// A wall, a hedge or a permanent fence: a path.
    Wall(WallKind),
    /// Trees or a roof.
    Shade,
    /// Damp ground.
    Damp,
    /// Words: one place.
    Label,
    /// Where that run's rolls are put down: one place.
    Drop(usize),
    /// Where that run's lead meets its net: one place.
    Feed(usize),
    /// Where that run's energizer stands: one place.
    Energizer(usize),
    /// Two places of the picture beneath the map whose distance is known.
    Known,
}

impl Drawn {
    /// Fewest corners that make one.
    pub fn fewest(self) -> usize {
        match self {
            Self::Paddock | Self::Run | Self::KeepOut | Self::Water | Self::Shade | Self::Damp => FEWEST_CORNERS,
            Self::Hazard(HazardKind::ForeignEarth)
            | Self::Coop
            | Self::FurtherCoop
            | Self::TapePoint
            | Self::Gateway
            | Self::Height
            | Self::Label
            | Self::Drop(_)
            | Self::Feed(_)
            | Self::Energizer(_)
            | Self::EarthStake(_) => 1,
            Self::Hazard(_) | Self::Branch | Self::Wall(_) | Self::Known => 2,
        }
    }

    /// Whether one place is all of it.
    pub fn is_place(self) -> bool {
        self.fewest() == 1
    }

    /// Whether it closes at its first corner.
    pub fn closes(self) -> bool {
        self.fewest() == FEWEST_CORNERS
    }
}
