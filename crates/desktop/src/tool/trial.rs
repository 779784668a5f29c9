//! What is tried on a fence.

use words::texts::Faults;

/// What is tried on a fence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trial {
    /// A fallen branch.
    Branch,
    /// Long grass along some metres.
    LongGrass,
    /// A peg on a live line.
    Peg,
    /// One live line broken.
    CutLine,
    /// A join that conducts badly.
    BadJoin,
    /// Every live line open.
    DeadNet,
}

impl Trial {
    /// What its button is called.
    pub fn name(self) -> Faults {
        match self {
            Self::Branch => Faults::Branch,
            Self::LongGrass => Faults::LongGrass,
            Self::Peg => Faults::Peg,
            Self::CutLine => Faults::CutLine,
            Self::BadJoin => Faults::BadJoin,
            Self::DeadNet => Faults::DeadNet,
        }
    }
}
