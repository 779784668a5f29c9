//! The first start: the one question, and the plan that the answer lays out.

use plan::{Deed, Plan, Rolls, between};
use words::texts::Window as Text;

use super::{Editor, Page};

/// The question that stands on the map until it is answered or left.
#[derive(Clone, Debug)]
pub struct Question {
    /// The answer as it stands, filled in from the start.
    pub rolls: Rolls,
    /// The plan that it was asked over, to come back to.
    pub(super) was: Box<super::document::Document>,
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
            self.question = Some(Question { rolls, was });
            // Nothing of what is only asked about is anybody's file.
            self.example = false;
            self.file = None;
            self.preview(rolls);
            self.page = Page::Run;
        }
    }

    /// The answer changed: what it would lay out is shown.
    pub(super) fn answer_rolls(&mut self, rolls: Rolls) {
        if let Some(question) = &mut self.question {
            question.rolls = rolls;
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
            // A step of its own over the empty plan, so that it is undone as any other.
            self.replace(Plan::default(), None);
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
