//! Undo and redo: the inverses of what was done, and a place among them.
//!
//! A drag is many small edits and one step: [`History::begin`] opens a step, edits fold into it, and
//! [`History::end`] closes it. The revision counts every change and never goes back, so that caches and
//! answers that took long can tell whether they are of today's plan.

use std::mem;

use crate::deed::Deed;
use crate::edit::{Edit, EditError};
use crate::model::Plan;

/// One step: the edits that take it back, in the order in which they are to be applied, and what it was.
#[derive(Clone, Debug)]
struct Step {
    edits: Vec<Edit>,
    deed: Deed,
}

/// What was done to a plan, and what was taken back.
#[derive(Clone, Debug, Default)]
pub struct History {
    done: Vec<Step>,
    undone: Vec<Step>,
    open: Option<Step>,
    /// The revision at which the open step began.
    began_at: u64,
    /// What the open step is called, where its first edit does not say it.
    named: Option<Deed>,
    revision: u64,
    applied: Vec<Edit>,
    /// What could be done again when the open step began.
    laid_by: Vec<Step>,
}

impl History {
    /// Counts every change of the plan, undo and redo included.
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// Whether a step is open.
    pub fn is_open(&self) -> bool {
        self.open.is_some()
    }

    /// The revision at which the open step began; `None` where none is open.
    pub fn began_at(&self) -> Option<u64> {
        self.open.as_ref().map(|_| self.began_at)
    }

    /// Makes an edit, as a step of its own or as part of the open one.
    ///
    /// # Errors
    /// [`EditError`] where the edit cannot be made; plan and history are as they were.
    pub fn apply(&mut self, plan: &mut Plan, edit: Edit) -> Result<(), EditError> {
        // The way of a drag does not matter, only where it began.
        let folds = self.open.as_ref().is_some_and(|step| {
            // Past edits of other parts of the plan, but past none of its own: undone, each must find what it left.
            let near = step.edits.iter().find(|inverse| inverse.touches_same(&edit));
            near.is_some_and(|inverse| inverse.same_place(&edit))
        });
        let deed = Deed::of(&edit, plan);
        let inverse = plan.apply(edit.clone())?;
        self.revision += 1;
        self.note(edit);
        self.undone.clear();
        match &mut self.open {
            Some(_) if folds => {}
            Some(step) => {
                if step.edits.is_empty() {
                    step.deed = self.named.unwrap_or(deed);
                }
                step.edits.insert(0, inverse);
            }
            None => self.done.push(Step { edits: vec![inverse], deed }),
        }
        Ok(())
    }

    /// Forgets every step, for another plan; the revision goes on, so that late answers are known as such.
    pub fn forget(&mut self) {
        *self = Self { revision: self.revision + 1, ..Self::default() };
    }

    /// Takes up the steps of a history that was laid aside; the revision goes on from here.
    pub fn resume(&mut self, laid_aside: Self) {
        *self = Self { revision: self.revision + 1, applied: Vec::new(), ..laid_aside };
    }

    /// Opens a step into which the edits up to [`History::end`] fold.
    pub fn begin(&mut self) {
        self.end();
        self.laid_by.clone_from(&self.undone);
        self.open = Some(Step { edits: Vec::new(), deed: Deed::Change });
        self.began_at = self.revision;
    }

    /// Opens a step that is called something.
    pub fn begin_called(&mut self, deed: Deed) {
        self.begin();
        self.named = Some(deed);
    }

    /// Calls the open step something else from now on; says nothing where none is open.
    pub fn call(&mut self, deed: Deed) {
        if let Some(step) = &mut self.open {
            self.named = Some(deed);
            step.deed = deed;
        }
    }

    /// Takes the open step back as if it had never been; says whether anything was done in it.
    pub fn cancel(&mut self, plan: &mut Plan) -> bool {
        self.named = None;
        let Some(step) = self.open.take().filter(|step| !step.edits.is_empty()) else { return false };
        drop(self.turn(plan, step));
        self.undone = mem::take(&mut self.laid_by);
        true
    }

    /// Closes the open step; one in which nothing was done leaves no trace.
    pub fn end(&mut self) {
        self.named = None;
        if let Some(step) = self.open.take()
            && !step.edits.is_empty()
        {
            self.done.push(step);
        }
    }

    /// Whether there is something to take back.
    pub fn can_undo(&self) -> bool {
        !self.done.is_empty() || self.open.as_ref().is_some_and(|step| !step.edits.is_empty())
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

    /// What was done, the first step first.
    pub fn done(&self) -> impl ExactSizeIterator<Item = Deed> + DoubleEndedIterator {
        self.done.iter().map(|step| step.deed)
    }

    /// What was taken back, the next to be done again first.
    pub fn undone(&self) -> impl ExactSizeIterator<Item = Deed> {
        self.undone.iter().rev().map(|step| step.deed)
    }

    /// Every edit that took effect since this was last asked, undo and redo included: what a journal needs.
    pub fn take_applied(&mut self) -> Vec<Edit> {
        mem::take(&mut self.applied)
    }

    /// Applies a step and returns the one that takes it back.
    fn turn(&mut self, plan: &mut Plan, step: Step) -> Step {
        let mut back = Vec::with_capacity(step.edits.len());
        for edit in step.edits {
            self.note(edit.clone());
            back.push(plan.apply(edit).expect("an inverse fits the plan that its edit left"));
        }
        self.revision += 1;
        back.reverse();
        Step { edits: back, deed: step.deed }
    }

    /// Keeps an edit for the journal; of the places that a drag went through only the last.
    fn note(&mut self, edit: Edit) {
        match self.applied.last_mut() {
            Some(last) if last.same_place(&edit) => *last = edit,
            _ => self.applied.push(edit),
        }
    }
}
