//! The one worker: long figures are worked out beside the window, never in it.
//!
//! One thread, one slot: a new request takes the place of the one that waits, and only the newest answer is
//! kept. Answers carry the revision that they belong to; the editor drops those of an earlier plan.

use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;

use plan::Plan;
use workup::{Depth, FitRefusal, Fitted, Workup};

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
    /// What came of the fit, and of which run.
    pub fitted: Option<(FitAsked, Result<Fitted, FitRefusal>)>,
}

#[derive(Default)]
struct Slot {
    request: Option<Request>,
    answer: Option<Answer>,
    closed: bool,
}

#[derive(Default)]
struct Desk {
    slot: Mutex<Slot>,
    bell: Condvar,
}

impl Desk {
    fn slot(&self) -> MutexGuard<'_, Slot> {
        // The slot holds whole values only, so a worker that stopped in panic leaves none half written.
        self.slot.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// The worker's thread; it ends when this is dropped.
pub struct Worker {
    desk: Arc<Desk>,
    thread: Option<JoinHandle<()>>,
}

impl Worker {
    /// Starts the thread; `done` is called from it after every answer.
    #[allow(clippy::disallowed_methods, reason = "threads stay in desktop")]
    pub fn start(done: impl Fn() + Send + 'static) -> Self {
        let desk = Arc::new(Desk::default());
        let theirs = Arc::clone(&desk);
        let thread = std::thread::spawn(move || work(&theirs, &done));
        Self { desk, thread: Some(thread) }
    }

    /// Asks for a plan to be worked out, in place of any that still waits.
    pub fn ask(&self, request: Request) {
        self.desk.slot().request = Some(request);
        self.desk.bell.notify_one();
    }

    /// The newest answer, once.
    pub fn answer(&self) -> Option<Answer> {
        self.desk.slot().answer.take()
    }
}

impl Drop for Worker {
    fn drop(&mut self) {
        self.desk.slot().closed = true;
        self.desk.bell.notify_one();
        if let Some(thread) = self.thread.take()
            && thread.join().is_err()
        {
            tracing::error!("the worker stopped in panic");
        }
    }
}

fn work(desk: &Desk, done: &impl Fn()) {
    loop {
        let mut slot = desk.slot();
        while slot.request.is_none() && !slot.closed {
            slot = desk.bell.wait(slot).unwrap_or_else(PoisonError::into_inner);
        }
        if slot.closed {
            return;
        }
        let request = slot.request.take();
        drop(slot);
        if let Some(Request { revision, plan, fit }) = request {
            let workup = workup::workup(&plan, Depth::Full);
            let fitted = fit.map(|asked| {
                let answer = workup::fit(&plan, &asked.run, asked.double_back);
                (asked, answer)
            });
            desk.slot().answer = Some(Answer { revision, workup, fitted });
            done();
        }
    }
}
