//! The corners of each shape.

use super::{EditError, Shape};
use crate::model::{Plan, Point};

impl Plan {
    pub(super) fn run_index(&self, id: &str) -> Result<usize, EditError> {
        self.runs.iter().position(|run| run.id == id).ok_or_else(|| EditError::NoSuchRun { id: id.to_owned() })
    }

    /// The corners of a shape, if the plan has it.
    pub fn outline(&self, shape: &Shape) -> Option<&[Point]> {
        match shape {
            Shape::Boundary => Some(&self.ground.boundary),
            Shape::Run(id) => self.run(id).map(|run| run.outline.as_slice()),
            Shape::KeepOut(index) => self.ground.keep_outs.get(*index).map(|keep_out| keep_out.outline.as_slice()),
            Shape::Wall(index) => self.walls.get(*index).map(|wall| wall.path.as_slice()),
            Shape::Shade(index) => self.ground.shade.get(*index).map(|shade| shade.outline.as_slice()),
            Shape::Damp(index) => self.ground.damp.get(*index).map(|damp| damp.outline.as_slice()),
            Shape::Hazard(index) => self.ground.hazards.get(*index).map(|hazard| hazard.path.as_slice()),
            Shape::Branch(id, index) => {
                let branch = self.run(id)?.branches.get(*index);
                branch.map(|branch| branch.outline.as_slice())
            }
        }
    }

    /// The corners of a shape, to be changed.
    ///
    /// # Errors
    /// [`EditError`] where the plan has no such shape.
    pub fn outline_mut(&mut self, shape: &Shape) -> Result<&mut Vec<Point>, EditError> {
        match shape {
            Shape::Boundary => Ok(&mut self.ground.boundary),
            Shape::Run(id) => {
                let index = self.run_index(id)?;
                Ok(&mut self.runs[index].outline)
            }
            Shape::KeepOut(index) => self
                .ground
                .keep_outs
                .get_mut(*index)
                .map(|keep_out| &mut keep_out.outline)
                .ok_or(EditError::NoSuchKeepOut { index: *index }),
            Shape::Wall(index) => {
                let wall = self.walls.get_mut(*index).map(|wall| &mut wall.path);
                wall.ok_or(EditError::NoSuchWall { index: *index })
            }
            Shape::Shade(index) => {
                let shade = self.ground.shade.get_mut(*index).map(|shade| &mut shade.outline);
                shade.ok_or(EditError::NoSuchShade { index: *index })
            }
            Shape::Damp(index) => {
                let damp = self.ground.damp.get_mut(*index).map(|damp| &mut damp.outline);
                damp.ok_or(EditError::NoSuchDamp { index: *index })
            }
            Shape::Hazard(index) => {
                let hazard = self.ground.hazards.get_mut(*index).map(|hazard| &mut hazard.path);
                hazard.ok_or(EditError::NoSuchHazard { index: *index })
            }
            Shape::Branch(id, index) => {
                let run = self.run_index(id)?;
                let branch = self.runs[run].branches.get_mut(*index);
                branch.map(|branch| &mut branch.outline).ok_or(EditError::NoSuchBranch { index: *index })
            }
        }
    }
}
