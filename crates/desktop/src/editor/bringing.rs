//! What is read from other files into the plan.

use std::sync::Arc;

use drawing::Thing;
use plan::{Deed, Edit, Plan, Point, Shape};

use super::Editor;

impl Editor {
    /// Takes in a paddock that was read from a file, as one step.
    pub(super) fn bring_in(&mut self, brought: Plan) {
        // A plan that has its place on the globe keeps it, and what is brought comes into its metres.
        let moved = match (&self.plan.origin, &brought.origin) {
            (Some(own), Some(theirs)) => exchange::projection::between(theirs, own),
            _ => None,
        };
        let to = |at: Point| moved.as_ref().and_then(|moved| moved.of(at)).unwrap_or(at);
        let outline = brought.ground.boundary.iter().map(|&at| to(at)).collect();
        let mut keep_outs = self.plan.ground.keep_outs.clone();
        keep_outs.extend(brought.ground.keep_outs.into_iter().map(|mut keep_out| {
            keep_out.outline.iter_mut().for_each(|at| *at = to(*at));
            keep_out
        }));
        let origin = self.plan.origin.clone().or(brought.origin);
        self.history.begin_called(Deed::BringIn);
        self.make_all(vec![
            Edit::SetOutline { shape: Shape::Boundary, outline },
            Edit::SetOrigin { origin },
            Edit::SetKeepOuts { keep_outs },
        ]);
        self.history.end();
        self.pick(Some(Thing::Boundary));
        self.fit();
    }

    /// Takes in heights that were read from a file, as one step.
    pub(super) fn bring_heights(&mut self, import: exchange::heights::Import) {
        let origin = self.plan.origin.clone().or(import.origin);
        self.history.begin_called(Deed::BringIn);
        self.make_all(vec![Edit::SetOrigin { origin }, Edit::SetHeightGrid { grid: Some(Arc::new(import.grid)) }]);
        self.history.end();
    }
}
