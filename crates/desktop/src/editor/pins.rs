//! Corners that go to a post.

use plan::{Deed, Edit, Pin, PinKind};

use super::Editor;

impl Editor {
    /// Moves a corner of the run in hand, by its place in the outline, to a post: one step.
    pub(super) fn move_to_post(&mut self, corner: usize) {
        let Some(run) = self.plan.runs.get(self.run) else { return };
        let Some(found) = workup::pins::corner_to_post(&self.plan, run, corner) else { return };
        let mut moved = run.clone();
        if let Some(at) = moved.outline.get_mut(corner) {
            *at = found.to;
        }
        let mut moved = workup::taken_along(&self.plan, run, &moved);
        if found.pin {
            moved.pins.push(Pin::new(PinKind::Corner, found.to));
        }
        self.history.begin_called(Deed::MoveCorner);
        self.make(Edit::SetRun { run: Box::new(moved) });
        self.history.end();
    }
}
