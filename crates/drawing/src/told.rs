//! Figures that stand in words on a drawing, so that a view can say of one what it is.

use plan::HazardKind;

use crate::shape::About;

/// What a figure on a drawing is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Told {
    /// The weakest post's volts, or what is supposed of a fault.
    Weakest,
    /// A run's ground, and its birds.
    Run,
    /// A side's length, and its panels.
    Side,
    /// Volts at a post.
    Volts,
    /// A post's number.
    Post,
    /// How high a spot is.
    Height,
    /// The voltage of an overhead line.
    OverheadLine,
    /// How far a corner is along the line.
    Along,
    /// A net's number in the chain.
    Net,
    /// Line without netting.
    Gap,
}

impl Told {
    /// What words on the map tell in figures; `None` of those that only name something.
    pub(crate) fn of(about: About) -> Option<Self> {
        match about {
            About::Weakest | About::WhatIf => Some(Self::Weakest),
            About::Run { .. } => Some(Self::Run),
            About::Side { .. } => Some(Self::Side),
            About::Hazard { kind: HazardKind::OverheadLine } => Some(Self::OverheadLine),
            About::Height => Some(Self::Height),
            About::Post { .. } => Some(Self::Volts),
            About::Hazard { .. } | About::KeepOut { .. } | About::Wall | About::Label { .. } | About::Energizer => None,
        }
    }
}
