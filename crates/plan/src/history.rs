//! Undo and redo: the inverses of what was done, and a place among them.
//!
//! A drag is many small edits and one step: [`History::begin`] opens a step, edits fold into it, and
//! [`History::end`] closes it. The revision counts every change and never goes back, so that caches and
//! answers that took long can tell whether they are of today's plan.

use std::mem;

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
    applied: Vec<Edit>,
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
        // The way of a drag does not matter, only where it began.
        let folds = self.open.as_ref().and_then(|step| step.first()).is_some_and(|first| first.same_place(&edit));
        let inverse = plan.apply(edit.clone())?;
        self.revision += 1;
        self.note(edit);
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
        let back = self.turn(plan, step);
        self.undone.push(back);
        true
    }

    /// Does the step that was taken back last again; says whether there was one.
    pub fn redo(&mut self, plan: &mut Plan) -> bool {
        self.end();
        let Some(step) = self.undone.pop() else {
            return false;
        };
        let back = self.turn(plan, step);
        self.done.push(back);
        true
    }

    /// The steps that were done, the first one first: what each did before all else.
    pub fn done(&self) -> impl ExactSizeIterator<Item = &Edit> {
        self.done.iter().map(|step| step.last().expect("a step without an edit leaves no trace"))
    }

    /// The steps that were taken back, the next to be done again first.
    pub fn undone(&self) -> impl ExactSizeIterator<Item = &Edit> {
        self.undone.iter().rev().map(|step| step.first().expect("a step without an edit leaves no trace"))
    }

    /// Every edit that took effect since this was last asked, undo and redo included: what a journal needs.
    pub fn take_applied(&mut self) -> Vec<Edit> {
        mem::take(&mut self.applied)
    }

    /// Applies a step and returns the one that takes it back.
    fn turn(&mut self, plan: &mut Plan, step: Step) -> Step {
        let mut back = Step::with_capacity(step.len());
        for edit in step {
            self.note(edit.clone());
            back.push(plan.apply(edit).expect("an inverse fits the plan that its edit left"));
        }
        self.revision += 1;
        back.reverse();
        back
    }

    /// Keeps an edit for the journal; of the places that a drag went through only the last.
    fn note(&mut self, edit: Edit) {
        match self.applied.last_mut() {
            Some(last) if last.same_place(&edit) => *last = edit,
            _ => self.applied.push(edit),
        }
    }
}
