//! Undo and redo: the inverses of what was done, and a place among them.
//!
//! A drag is many small edits and one step: [`History::begin`] opens a step, edits fold into it, and
//! [`History::end`] closes it. The revision counts every change and never goes back, so that caches and
//! answers that took long can tell whether they are of today's plan.

use crate::edit::{Edit, EditError};
use crate::model::Plan;

/// One step: the edits that take it back, in the order in which they are to be applied.
type Step = Vec<Edit>;

/// What was done to a plan, and what was taken back.
#[derive(Clone, Debug, Default)]
pub struct History {
    done: Vec<Step>,
    undone: Vec<Step>,
    open: Option<Step>,
    revision: u64,
}

impl History {
    /// Counts every change of the plan, undo and redo included.
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// Makes an edit, as a step of its own or as part of the open one.
    ///
    /// # Errors
    /// [`EditError`] where the edit cannot be made; plan and history are as they were.
    pub fn apply(&mut self, plan: &mut Plan, edit: Edit) -> Result<(), EditError> {
        let folds = match (&self.open, &edit) {
            // The way of a drag does not matter, only where it began.
            (Some(step), Edit::MoveCorner { shape, corner, .. }) => matches!(
                step.first(),
                Some(Edit::MoveCorner { shape: was, corner: number, .. }) if was == shape && number == corner
            ),
            _ => false,
        };
        let inverse = plan.apply(edit)?;
        self.revision += 1;
        self.undone.clear();
        match &mut self.open {
            Some(_) if folds => {}
            Some(step) => step.insert(0, inverse),
            None => self.done.push(vec![inverse]),
        }
        Ok(())
    }

    /// Opens a step into which the edits up to [`History::end`] fold.
    pub fn begin(&mut self) {
        self.end();
        self.open = Some(Step::new());
    }

    /// Closes the open step; one in which nothing was done leaves no trace.
    pub fn end(&mut self) {
        if let Some(step) = self.open.take()
            && !step.is_empty()
        {
            self.done.push(step);
        }
    }

    /// Whether there is something to take back.
    pub fn can_undo(&self) -> bool {
        !self.done.is_empty() || self.open.as_ref().is_some_and(|step| !step.is_empty())
    }

    /// Whether there is something to do again.
    pub fn can_redo(&self) -> bool {
        !self.undone.is_empty()
    }

    /// Takes the last step back; says whether there was one.
    pub fn undo(&mut self, plan: &mut Plan) -> bool {
        self.end();
        let Some(step) = self.done.pop() else {
            return false;
        };
        self.undone.push(turn(plan, step));
        self.revision += 1;
        true
    }

    /// Does the step that was taken back last again; says whether there was one.
    pub fn redo(&mut self, plan: &mut Plan) -> bool {
        self.end();
        let Some(step) = self.undone.pop() else {
            return false;
        };
        self.done.push(turn(plan, step));
        self.revision += 1;
        true
    }
}

/// Applies a step and returns the one that takes it back.
fn turn(plan: &mut Plan, step: Step) -> Step {
    let mut back = Step::with_capacity(step.len());
    for edit in step {
        back.push(plan.apply(edit).expect("an inverse fits the plan that its edit left"));
    }
    back.reverse();
    back
}
