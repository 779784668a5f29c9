//! The one worker: long figures are worked out beside the window, never in it.
//!
//! One thread, one slot: a new request takes the place of the one that waits, and only the newest answer is
//! kept. Answers carry the revision that they belong to; the editor drops those of an earlier plan.

use plan::Plan;
use workup::{Depth, FitRefusal, Fitted, Known, Workup};

use crate::errand::Errand;

/// A plan to be worked out in full.
#[derive(Clone, Debug)]
pub struct Request {
    /// The revision of the plan.
    pub revision: u64,
    /// The plan.
    pub plan: Plan,
    /// The run that is to be made of whole panels, by its id.
    pub fit: Option<FitAsked>,
}

/// Which run is to be made of whole panels, and how many of them are doubled back.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FitAsked {
    /// The run's id.
    pub run: String,
    /// Panels doubled back at the chain's end.
    pub double_back: u32,
}

/// What follows from it.
#[derive(Clone, Debug)]
pub struct Answer {
    /// The revision of the plan.
    pub revision: u64,
    /// Everything that follows.
    pub workup: Workup,
    /// What was searched for on the way.
    pub known: Known,
    /// What came of the fit, and of which run.
    pub fitted: Option<(FitAsked, Result<Fitted, FitRefusal>)>,
}

/// The worker's thread; it ends when this is dropped.
pub struct Worker(Errand<Request, Answer>);

impl Worker {
    /// Starts the thread; `done` is called from it after every answer.
    pub fn start(done: impl Fn() + Send + 'static) -> Self {
        let mut known = Known::default();
        Self(Errand::start(move |desk, Request { revision, plan, fit }| {
            let workup = workup::knowing(&plan, Depth::Full, &mut known);
            let fitted = fit.map(|asked| {
                let answer = workup::fit(&plan, &asked.run, asked.double_back);
                (asked, answer)
            });
            desk.answer(Answer { revision, workup, known: known.clone(), fitted });
            done();
        }))
    }

    /// Asks for a plan to be worked out, in place of any that still waits.
    pub fn ask(&self, request: Request) {
        self.0.give(request);
    }

    /// The newest answer, once.
    pub fn answer(&self) -> Option<Answer> {
        self.0.taken()
    }
}
