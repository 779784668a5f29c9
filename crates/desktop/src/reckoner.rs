//! What takes many pulses, beside the window and beside the worker: which energizer holds on how many nets, what
//! animals feel, how many stakes are worth driving.
//!
//! It is asked for while the page about volts is open and nothing is in the hand; answers carry the revision and the
//! run that they belong to.

use plan::Plan;
use workup::power::Study;

use crate::errand::Errand;

/// What is to be reckoned.
#[derive(Clone, Debug)]
pub struct Job {
    /// The revision of the plan.
    pub revision: u64,
    /// The plan.
    pub plan: Plan,
    /// The run, by its id.
    pub run: String,
}

/// What came of it.
#[derive(Clone, Debug)]
pub struct Reckoned {
    /// The revision of the plan.
    pub revision: u64,
    /// The run, by its id.
    pub run: String,
    /// What was asked.
    pub study: Study,
}

/// The reckoner's thread; it ends when this is dropped.
pub struct Reckoner(Errand<Job, Reckoned>);

impl Reckoner {
    /// Starts the thread; `done` is called from it after every answer.
    pub fn start(done: impl Fn() + Send + 'static) -> Self {
        Self(Errand::start(move |desk, Job { revision, plan, run }| {
            let study = workup::power::study(&plan, &run);
            desk.answer_if_wanted(Reckoned { revision, run, study });
            done();
        }))
    }

    /// Reckons something, in place of any that still waits.
    pub fn reckon(&self, job: Job) {
        self.0.give(job);
    }

    /// The newest answer, once.
    pub fn reckoned(&self) -> Option<Reckoned> {
        self.0.taken()
    }
}
