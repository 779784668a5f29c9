//! The search for the largest runs, beside the window and beside the worker, so that neither waits for it.
//!
//! One thread, one job: a new one takes the place of the one that is being searched, and [`Searcher::stop`] lets it go
//! where it is. What is found is told while it grows. When the nets that were asked for are searched, the other counts
//! of nets up to what the store has follow, for the curve of ground by nets.

use plan::Plan;
use workup::candidates::{Ask, Candidate, CandidateFault, CandidateNote, CandidateSearch, Family};

use crate::errand::{self, Errand};

/// More counts of nets than this are not searched for the curve.
pub const MOST_COUNTS: u32 = 12;

/// What is to be searched.
#[derive(Clone, Debug)]
pub struct Job {
    /// Its number: what is found carries it.
    pub number: u64,
    /// The plan.
    pub plan: Plan,
    /// What is asked.
    pub ask: Ask,
    /// Nets that the store has.
    pub owned: u32,
}

/// The largest ground of each family with so many nets, square metres.
pub type ByFamily = Vec<(Family, f64)>;

/// What was found so far.
#[derive(Clone, Debug)]
pub struct Found {
    /// The job's number.
    pub number: u64,
    /// The candidates, the largest first, and what should be known; or why there are none.
    pub candidates: Result<(Vec<Candidate>, Vec<CandidateNote>), CandidateFault>,
    /// Whether the nets that were asked for are searched to the end.
    pub done: bool,
    /// For each count of nets that is searched to the end: the largest ground of each family.
    pub by_nets: Vec<(u32, ByFamily)>,
    /// Whether there is nothing more to search.
    pub all_done: bool,
}

/// The thread's side of the window.
type Desk = errand::Desk<Job, Found>;

/// The searcher's thread; it ends when this is dropped.
pub struct Searcher(Errand<Job, Found>);

impl Searcher {
    /// Starts the thread; `told` is called from it whenever more was found.
    pub fn start(told: impl Fn() + Send + 'static) -> Self {
        Self(Errand::start(move |desk, job| search(desk, &job, &told)))
    }

    /// Searches something, in place of what is being searched.
    pub fn search(&self, job: Job) {
        self.0.give(job);
    }

    /// Lets go of what is being searched.
    pub fn stop(&self) {
        self.0.stop();
    }

    /// What was found since this was last asked.
    pub fn found(&self) -> Option<Found> {
        self.0.taken()
    }
}

/// Searches until the end or until the job is over.
fn search(desk: &Desk, job: &Job, told: &impl Fn()) {
    let tell = |found: Found| {
        desk.answer_if_wanted(found);
        told();
    };
    let mut found = Found {
        number: job.number,
        candidates: Ok((Vec::new(), Vec::new())),
        done: false,
        by_nets: Vec::new(),
        all_done: false,
    };
    let mut search = match CandidateSearch::new(&job.plan, &job.ask) {
        Ok(search) => search,
        Err(fault) => return tell(Found { candidates: Err(fault), done: true, all_done: true, ..found }),
    };
    let mut told_m2 = 0.0;
    loop {
        if desk.is_over() {
            return;
        }
        let more = search.step();
        // A candidate is worked out in full to be told; so only what grew is.
        let grown_m2: f64 = search.outlines().iter().map(|one| one.area_m2).sum();
        if !more || grown_m2 > told_m2 {
            told_m2 = grown_m2;
            let best = search.best();
            found.candidates = if !more && best.is_empty() {
                Err(CandidateFault::NothingFits { coop: job.ask.coop })
            } else {
                Ok((best, search.notes().to_vec()))
            };
            found.done = !more;
            tell(found.clone());
        }
        if !more {
            break;
        }
    }
    for nets in 1..=job.owned.clamp(job.ask.nets, job.ask.nets.max(MOST_COUNTS)) {
        let Some(by_family) = of_count(desk, job, nets) else { return };
        found.by_nets.push((nets, by_family));
        tell(found.clone());
    }
    found.all_done = true;
    tell(found);
}

/// The largest ground of each family with so many nets; `None` where the job is over.
fn of_count(desk: &Desk, job: &Job, nets: u32) -> Option<ByFamily> {
    let ask = Ask { nets, walls: false, ..job.ask.clone() };
    // So few nets that they close no shape enclose nothing.
    let Ok(mut search) = CandidateSearch::new(&job.plan, &ask) else { return Some(Vec::new()) };
    while search.step() {
        if desk.is_over() {
            return None;
        }
    }
    Some(search.grounds())
}
