//! Which plan is open: its file, and whether all of it is saved.

use std::path::{Path, PathBuf};

use plan::{History, Plan};

use super::Editor;
use super::first::{Lesson, Question};

/// A plan, what was done to it, its file and what of it is on the disk.
#[derive(Clone, Debug)]
pub(super) struct Document {
    plan: Plan,
    history: History,
    file: Option<PathBuf>,
    saved: Option<Plan>,
    example: bool,
    /// The question that laid it out.
    pub(super) answered: Option<Box<Question>>,
}

impl Document {
    /// What was done to it.
    pub(super) fn history(&self) -> &History {
        &self.history
    }
}

/// How safe the plan is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SaveState {
    /// The example farm as it was made: nothing to save.
    Example,
    /// Never saved, and nothing done yet that would be missed.
    Fresh,
    /// Never saved.
    NeverSaved,
    /// On the disk as it is.
    Saved,
    /// Changed since it was saved.
    Changed,
}

impl SaveState {
    /// Whether closing would lose something.
    pub fn is_unsaved(self) -> bool {
        matches!(self, Self::NeverSaved | Self::Changed)
    }
}

impl Editor {
    /// The plan's file.
    pub fn file(&self) -> Option<&Path> {
        self.file.as_deref()
    }

    /// Whether this is the example farm, as it came or changed.
    pub fn is_example(&self) -> bool {
        self.example
    }

    /// Whether leaving the question leads back to the example farm.
    pub fn came_from_example(&self) -> bool {
        self.question.as_ref().is_some_and(|question| question.was.example)
    }

    /// Counts the plans that were open: a journal belongs to one.
    pub fn epoch(&self) -> u64 {
        self.epoch
    }

    /// Whether all of the plan is on the disk.
    pub fn save_state(&self) -> SaveState {
        let as_saved = self.as_saved;
        match (&self.file, self.question.is_some()) {
            (_, true) => SaveState::Fresh,
            (Some(_), _) if as_saved => SaveState::Saved,
            (Some(_), _) => SaveState::Changed,
            (None, _) if as_saved && self.example => SaveState::Example,
            (None, _) if as_saved => SaveState::Fresh,
            (None, _) => SaveState::NeverSaved,
        }
    }

    /// The example farm is open.
    pub(super) fn mark_example(&mut self) {
        self.example = true;
    }

    /// The plan was written to that file as it is.
    pub(super) fn saved(&mut self, file: PathBuf) {
        self.file = Some(file);
        self.saved = Some(self.plan.clone());
        self.as_saved = true;
        self.example = false;
        self.epoch += 1;
    }

    /// What the journal of a crash held is open; nothing of it is on the disk.
    pub(super) fn recovered(&mut self, plan: Plan, file: Option<PathBuf>) {
        self.replace(plan, file);
        self.saved = None;
        self.as_saved = false;
    }

    /// Another plan takes the place of this one.
    pub(super) fn replace(&mut self, plan: Plan, file: Option<PathBuf>) {
        self.question = None;
        self.answered = None;
        self.lesson = Lesson::Done;
        self.example = false;
        self.saved = Some(plan.clone());
        self.file = file;
        self.epoch += 1;
        self.curves.clear();
        self.compare = plan.runs.len() > 1;
        self.show(plan);
        self.fit();
    }

    pub(super) fn document(&self) -> Document {
        Document {
            plan: self.plan.clone(),
            history: self.history.clone(),
            file: self.file.clone(),
            saved: self.saved.clone(),
            example: self.example,
            answered: self.answered.clone(),
        }
    }

    pub(super) fn restore(&mut self, document: Document) {
        let Document { plan, history, file, saved, example, answered } = document;
        self.replace(plan, file);
        self.history.resume(history);
        (self.saved, self.example, self.answered) = (saved, example, answered);
        // The history goes on counting from here, and so does what is asked of the worker.
        self.changed();
    }

    /// Shows a plan with a history of its own.
    pub(super) fn show(&mut self, plan: Plan) {
        self.plan = plan;
        self.history.forget();
        self.unhold();
        self.pivot = None;
        self.picked = None;
        self.chosen = super::chosen::Chosen { listing: self.chosen.listing, ..Default::default() };
        self.run = 0;
        self.tool = crate::tool::Tool::Pick;
        self.laid_by.clear();
        self.changed();
    }
}
