//! One thread beside the window, with one slot: a new job takes the place of the one that waits, and only the newest
//! answer is kept. What the jobs are, the [`crate::worker`] and the [`crate::searcher`] say.

use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;

struct Slot<J, A> {
    job: Option<J>,
    answer: Option<A>,
    stopped: bool,
    closed: bool,
}

/// What the window and the thread share.
pub(crate) struct Desk<J, A> {
    slot: Mutex<Slot<J, A>>,
    bell: Condvar,
}

impl<J, A> Desk<J, A> {
    fn new() -> Self {
        let slot = Slot { job: None, answer: None, stopped: false, closed: false };
        Self { slot: Mutex::new(slot), bell: Condvar::new() }
    }

    fn slot(&self) -> MutexGuard<'_, Slot<J, A>> {
        // The slot holds whole values only, so a thread that stopped in panic leaves none half written.
        self.slot.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// The next job, waited for; `None` when the window is closed.
    fn next(&self) -> Option<J> {
        let mut slot = self.slot();
        while slot.job.is_none() && !slot.closed {
            slot = self.bell.wait(slot).unwrap_or_else(PoisonError::into_inner);
        }
        slot.stopped = false;
        if slot.closed { None } else { slot.job.take() }
    }

    /// Whether the job at hand is of use no more.
    pub(crate) fn is_over(&self) -> bool {
        let slot = self.slot();
        slot.stopped || slot.closed || slot.job.is_some()
    }

    /// Puts an answer down.
    pub(crate) fn answer(&self, answer: A) {
        self.slot().answer = Some(answer);
    }

    /// Puts an answer down where the job at hand is still of use.
    pub(crate) fn answer_if_wanted(&self, answer: A) {
        let mut slot = self.slot();
        if !slot.stopped && slot.job.is_none() {
            slot.answer = Some(answer);
        }
    }
}

/// The thread; it ends when this is dropped.
pub(crate) struct Errand<J, A> {
    desk: Arc<Desk<J, A>>,
    thread: Option<JoinHandle<()>>,
}

impl<J: Send + 'static, A: Send + 'static> Errand<J, A> {
    /// Starts the thread, which does every job by `work`.
    #[allow(clippy::disallowed_methods, reason = "threads stay in desktop")]
    pub(crate) fn start(mut work: impl FnMut(&Desk<J, A>, J) + Send + 'static) -> Self {
        let desk = Arc::new(Desk::new());
        let theirs = Arc::clone(&desk);
        let thread = std::thread::spawn(move || {
            while let Some(job) = theirs.next() {
                work(&theirs, job);
            }
        });
        Self { desk, thread: Some(thread) }
    }
}

impl<J, A> Errand<J, A> {
    /// Gives a job, in place of any that still waits.
    pub(crate) fn give(&self, job: J) {
        let mut slot = self.desk.slot();
        slot.stopped = false;
        slot.job = Some(job);
        drop(slot);
        self.desk.bell.notify_one();
    }

    /// Lets go of the job at hand and of any that waits.
    pub(crate) fn stop(&self) {
        let mut slot = self.desk.slot();
        slot.stopped = true;
        slot.job = None;
    }

    /// The newest answer, once.
    pub(crate) fn taken(&self) -> Option<A> {
        self.desk.slot().answer.take()
    }
}

impl<J, A> Drop for Errand<J, A> {
    fn drop(&mut self) {
        self.desk.slot().closed = true;
        self.desk.bell.notify_one();
        if let Some(thread) = self.thread.take()
            && thread.join().is_err()
        {
            tracing::error!("a thread beside the window stopped in panic");
        }
    }
}
