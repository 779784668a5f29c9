//! What the reckoner is asked, and what it said last.

use workup::power::Study;

use super::{Editor, Page};
use crate::reckoner::{Job, Reckoned};

/// What was asked last, and what was answered last.
#[derive(Default)]
pub(super) struct Reckoning {
    asked: Option<(u64, String)>,
    answered: Option<Reckoned>,
}

impl Editor {
    /// What the reckoner should be asked, once: while the page about volts is open and nothing is in the hand.
    pub fn reckon_request(&mut self) -> Option<Job> {
        if self.page != Page::Power || self.held.is_some() || self.question.is_some() || self.history.is_open() {
            return None;
        }
        let run = self.plan.runs.get(self.run)?.id.clone();
        let revision = self.history.revision();
        if self.reckoning.asked.as_ref() == Some(&(revision, run.clone())) {
            return None;
        }
        self.reckoning.asked = Some((revision, run.clone()));
        Some(Job { revision, plan: self.plan.clone(), run })
    }

    pub(super) fn reckoned(&mut self, reckoned: Reckoned) {
        self.reckoning.answered = Some(reckoned);
    }

    /// What was reckoned of the run in hand last; with true where the plan has changed since.
    pub fn study(&self) -> Option<(&Study, bool)> {
        let run = self.plan.runs.get(self.run)?;
        let last = self.reckoning.answered.as_ref().filter(|last| last.run == run.id)?;
        Some((&last.study, last.revision != self.history.revision()))
    }
}
