//! The first start: the one question, and the plan that the answer lays out.

use plan::{Deed, History, Plan, Rolls, between};
use words::texts::Window as Text;

use super::document::Document;
use super::{Editor, Page};
use crate::tool::Hand;

/// The question that stands on the map until it is answered or left.
#[derive(Clone, Debug)]
pub struct Question {
    /// The answer as it stands, filled in from the start.
    pub rolls: Rolls,
    /// The plan that it was asked over, to come back to.
    pub(super) was: Box<Document>,
    /// What was laid out from this answer and taken back, to be done again until another answer is given.
    pub(super) taken_back: Option<Box<Document>>,
}

impl Question {
    /// Whether it stands again because what was laid out from it was taken back.
    pub fn stands_again(&self) -> bool {
        self.taken_back.is_some()
    }
}

/// What the keeper is shown next after the first run was laid; each goes when it is done.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Lesson {
    /// Drag the run onto the ground.
    Drag,
    /// Read the unfolded line.
    ReadLine,
    /// No more.
    #[default]
    Done,
}

impl Editor {
    /// Asks how much netting there is.
    pub(super) fn ask_rolls(&mut self) {
        if self.question.is_none() {
            let rolls = Rolls::default();
            let was = Box::new(self.document());
            self.stand(Question { rolls, was, taken_back: None });
        }
    }

    fn stand(&mut self, question: Question) {
        let rolls = question.rolls;
        self.question = Some(question);
        self.lesson = Lesson::Done;
        // Nothing of what is only asked about is anybody's file.
        self.example = false;
        self.file = None;
        self.preview(rolls);
        self.page = Page::Run;
    }

    /// Takes the last thing back: of what is drawn first.
    pub(super) fn undo(&mut self) {
        if self.undoes_drawn() { self.undo_drawn() } else { self.undo_step() }
    }

    /// Does the next thing again.
    pub(super) fn redo(&mut self) {
        if self.redoes_drawn() { self.hand(Hand::Again) } else { self.redo_step() }
    }

    /// Takes the last step back; behind the first of a plan that was laid out stands the question that it answered.
    pub(super) fn undo_step(&mut self) {
        self.turn(History::undo);
        if !self.history.can_undo()
            && let Some(question) = self.answered.take()
        {
            let taken_back = Some(Box::new(self.document()));
            self.stand(Question { taken_back, ..*question });
        }
    }

    /// Does the next step again, which may be the one that answered the question.
    pub(super) fn redo_step(&mut self) {
        if let Some(taken_back) = self.question.as_mut().and_then(|question| question.taken_back.take()) {
            let answered = self.question.take();
            self.restore(*taken_back);
            self.answered = answered.map(Box::new);
            self.turn(History::redo);
            self.fit();
        } else {
            self.turn(History::redo);
        }
    }

    /// The steps that can be taken back and done again.
    pub(super) fn steps(&self) -> &History {
        let laid_by = self.question.as_ref().and_then(|question| question.taken_back.as_ref());
        laid_by.map_or(&self.history, |document| document.history())
    }

    /// The answer changed: what it would lay out is shown.
    pub(super) fn answer_rolls(&mut self, rolls: Rolls) {
        if let Some(question) = &mut self.question {
            question.rolls = rolls;
            question.taken_back = None;
            self.preview(rolls);
        }
    }

    fn preview(&mut self, rolls: Rolls) {
        self.show(self.laid(rolls).unwrap_or_default());
        self.fit();
    }

    /// The plan that rolls lay out, its run named as any that is drawn.
    fn laid(&self, rolls: Rolls) -> Option<Plan> {
        let mut plan = rolls.lay_out()?;
        for (index, run) in plan.runs.iter_mut().enumerate() {
            run.name = self.words.say(Text::RunNumber, &[("number", &(index + 1).to_string())]);
        }
        Some(plan)
    }

    /// Lays the rolls out; too few of them enclose nothing, and the question stays.
    pub(super) fn lay_out(&mut self) {
        if let Some(plan) = self.question.as_ref().and_then(|question| self.laid(question.rolls)) {
            let mut answered = self.question.take();
            // One question leads back to one plan, not to all before it.
            if let Some(question) = &mut answered {
                question.was.answered = None;
            }
            // A step of its own over the empty plan, so that it is undone as any other.
            self.replace(Plan::default(), None);
            self.answered = answered.map(|question| Box::new(Question { taken_back: None, ..question }));
            self.one_step(Deed::LayOut, between(&self.plan, &plan));
            self.fit();
            self.saved = None;
            self.as_saved = false;
            self.lesson = Lesson::Drag;
        }
    }

    /// Back to what was there before the question.
    pub(super) fn leave_question(&mut self) {
        self.tool = crate::tool::Tool::Pick;
        if let Some(Question { was, .. }) = self.question.take() {
            self.restore(*was);
        }
    }

    /// An empty plan of the keeper's own, for who would rather draw.
    pub(super) fn start_empty(&mut self) {
        self.replace(Plan::default(), None);
    }
}
