//! Which part of the plan an edit is about: whether the order of two matters, or the later makes the earlier needless.

use std::mem;

use super::{Edit, Shape};

/// A part of the plan that an edit is about.
#[derive(PartialEq)]
enum Part<'a> {
    Boundary,
    KeepOuts,
    Run(&'a str),
    Walls,
    Shade,
    Damp,
    Hazards,
    /// The list of runs.
    Runs,
    Other(mem::Discriminant<Edit>),
}

impl Edit {
    /// Whether both are about the same part of the plan, so that their order matters.
    pub(crate) fn touches_same(&self, other: &Edit) -> bool {
        match (self.part(), other.part()) {
            (Part::Runs, Part::Run(_) | Part::Runs) | (Part::Run(_), Part::Runs) => true,
            (part, other) => part == other,
        }
    }

    fn part(&self) -> Part<'_> {
        match self {
            Edit::SetOutline { shape, .. }
            | Edit::MoveCorner { shape, .. }
            | Edit::InsertCorner { shape, .. }
            | Edit::RemoveCorner { shape, .. } => match shape {
                Shape::Boundary => Part::Boundary,
                Shape::Run(id) | Shape::Branch(id, _) => Part::Run(id),
                Shape::KeepOut(_) => Part::KeepOuts,
                Shape::Wall(_) => Part::Walls,
                Shape::Shade(_) => Part::Shade,
                Shape::Damp(_) => Part::Damp,
                Shape::Hazard(_) => Part::Hazards,
            },
            Edit::SetRun { run } => Part::Run(&run.id),
            Edit::AddRun { .. } | Edit::RemoveRun { .. } => Part::Runs,
            Edit::SetKeepOuts { .. } => Part::KeepOuts,
            Edit::SetWalls { .. } => Part::Walls,
            Edit::SetShade { .. } => Part::Shade,
            Edit::SetDamp { .. } => Part::Damp,
            Edit::SetHazards { .. } => Part::Hazards,
            Edit::SetTitle { .. }
            | Edit::SetOrigin { .. }
            | Edit::SetTarget { .. }
            | Edit::SetPaddock { .. }
            | Edit::SetSoil { .. }
            | Edit::SetWind { .. }
            | Edit::SetToday { .. }
            | Edit::SetStore { .. }
            | Edit::SetGateway { .. }
            | Edit::SetHeights { .. }
            | Edit::SetHeightGrid { .. }
            | Edit::SetCoop { .. }
            | Edit::SetOtherCoops { .. }
            | Edit::SetSeason { .. }
            | Edit::SetLabels { .. }
            | Edit::SetTapePoints { .. }
            | Edit::SetUnderlay { .. }
            | Edit::SetReadings { .. } => Part::Other(mem::discriminant(self)),
        }
    }

    /// Whether both state the same thing anew, so that the later makes the earlier needless.
    pub fn same_place(&self, other: &Edit) -> bool {
        match (self, other) {
            (Edit::MoveCorner { shape, corner, .. }, Edit::MoveCorner { shape: its, corner: number, .. }) => {
                shape == its && corner == number
            }
            (Edit::SetOutline { shape, .. }, Edit::SetOutline { shape: its, .. }) => shape == its,
            (Edit::SetRun { run }, Edit::SetRun { run: other }) => run.id == other.id,
            (
                Edit::MoveCorner { .. }
                | Edit::SetOutline { .. }
                | Edit::SetRun { .. }
                | Edit::InsertCorner { .. }
                | Edit::RemoveCorner { .. }
                | Edit::AddRun { .. }
                | Edit::RemoveRun { .. },
                _,
            ) => false,
            _ => mem::discriminant(self) == mem::discriminant(other),
        }
    }
}
