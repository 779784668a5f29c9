//! The journal of this window, written on a thread of its own, and what earlier windows left behind.
//!
//! Every edit goes to the system at once and to the disk within [`FLUSH`], so that a fall of the power takes less
//! than a second's work. A closed window takes its journal away; one that fell leaves it, and the next start offers
//! what is in it.

#![allow(clippy::disallowed_methods, reason = "only cli and desktop touch files, clocks and threads")]

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

use plan::{Edit, Plan};
use safekeeping::{Base, Disk, Journal, JournalError, Left};
use words::Words;
use words::texts::Files as Text;

use crate::editor::Message;
use crate::shelf;

/// The longest that an edit waits to be flushed.
const FLUSH: Duration = Duration::from_millis(300);
/// A journal longer than this is begun anew from the plan as it is, bytes.
const LONG: usize = 16 * 1024 * 1024;

/// What the thread is told.
enum Task {
    Append(Vec<Edit>),
    Restart { plan: Box<Plan>, path: Option<PathBuf>, saved: bool },
    TakeUp(Box<Left<Disk>>),
    End { clean: bool },
}

/// Keeps the journal of one window.
pub(crate) struct Keeper {
    tasks: Sender<Task>,
    thread: Option<JoinHandle<()>>,
    wants_restart: Arc<AtomicBool>,
    /// Whether the window may end without leaving anything behind.
    pub(crate) clean: bool,
}

impl Keeper {
    /// Starts the thread over a folder of journals; returns what is left behind there, too.
    pub(crate) fn start(folder: &Path) -> (Self, Vec<LeftBehind>) {
        let folder = folder.join("journals");
        let left = LeftBehind::all(&folder);
        let (tasks, waiting) = channel();
        let wants_restart = Arc::new(AtomicBool::new(false));
        let flag = Arc::clone(&wants_restart);
        let thread = std::thread::spawn(move || Desk { folder, journal: None, unflushed: None, flag }.work(&waiting));
        (Self { tasks, thread: Some(thread), wants_restart, clean: true }, left)
    }

    /// Writes down edits that took effect.
    pub(crate) fn append(&self, edits: Vec<Edit>) {
        if !edits.is_empty() {
            self.tell(Task::Append(edits));
        }
    }

    /// Goes on from a plan.
    pub(crate) fn restart(&self, plan: &Plan, path: Option<&Path>, saved: bool) {
        self.wants_restart.store(false, Ordering::Relaxed);
        let (plan, path) = (Box::new(plan.clone()), path.map(Path::to_path_buf));
        self.tell(Task::Restart { plan, path, saved });
    }

    /// Goes on with what a window that fell left behind, whose plan is open again.
    pub(crate) fn take_up(&self, left: Box<Left<Disk>>) {
        self.wants_restart.store(false, Ordering::Relaxed);
        self.tell(Task::TakeUp(left));
    }

    /// Whether the journal must begin anew: it could not be written, or has grown long.
    pub(crate) fn wants_restart(&self) -> bool {
        self.wants_restart.load(Ordering::Relaxed)
    }

    fn tell(&self, task: Task) {
        if self.tasks.send(task).is_err() {
            tracing::error!("the journal's thread has ended");
        }
    }
}

impl Drop for Keeper {
    fn drop(&mut self) {
        self.tell(Task::End { clean: self.clean });
        if let Some(thread) = self.thread.take()
            && thread.join().is_err()
        {
            tracing::error!("the journal's thread stopped in panic");
        }
    }
}

/// The thread's side.
struct Desk {
    folder: PathBuf,
    journal: Option<Journal<Disk>>,
    /// Since when something waits to be flushed.
    unflushed: Option<Instant>,
    flag: Arc<AtomicBool>,
}

impl Desk {
    fn work(mut self, waiting: &Receiver<Task>) {
        loop {
            let task = match self.unflushed {
                None => waiting.recv().map_err(|_| RecvTimeoutError::Disconnected),
                Some(since) => waiting.recv_timeout(FLUSH.saturating_sub(since.elapsed())),
            };
            match task {
                Ok(Task::Append(edits)) => {
                    let done = self.journal.as_mut().map_or(Ok(()), |journal| journal.append(&edits));
                    if self.noted(done) {
                        self.unflushed.get_or_insert_with(Instant::now);
                    }
                    if self.journal.as_ref().is_some_and(|journal| journal.bytes() > LONG) {
                        self.flag.store(true, Ordering::Relaxed);
                    }
                }
                Ok(Task::Restart { plan, path, saved }) => {
                    let base = Base { plan: &plan, path: path.as_deref(), saved };
                    let done = if let Some(journal) = &mut self.journal {
                        journal.restart(base)
                    } else {
                        Journal::start(Disk, &self.folder, &own_name(), base).map(|new| self.journal = Some(new))
                    };
                    self.unflushed = None;
                    self.noted(done);
                }
                Ok(Task::TakeUp(left)) => {
                    let taken = left.take_up(&own_name());
                    self.unflushed = None;
                    // The plan before it had nothing unsaved, or the keeper let it go.
                    let done = taken.and_then(|new| self.journal.replace(new).map_or(Ok(()), Journal::finish));
                    self.noted(done);
                }
                Ok(Task::End { clean }) => return self.end(clean),
                Err(RecvTimeoutError::Disconnected) => return self.end(false),
                Err(RecvTimeoutError::Timeout) => {}
            }
            if self.unflushed.is_some_and(|since| since.elapsed() >= FLUSH) {
                self.flush();
            }
        }
    }

    fn flush(&mut self) {
        let done = self.journal.as_mut().map_or(Ok(()), Journal::flush);
        self.noted(done);
        self.unflushed = None;
    }

    /// Whether it worked; a journal that could not be written is begun anew with the next edit.
    fn noted(&self, done: Result<(), JournalError>) -> bool {
        if let Err(error) = &done {
            tracing::warn!(%error, "the journal");
            self.flag.store(true, Ordering::Relaxed);
        }
        done.is_ok()
    }

    fn end(mut self, clean: bool) {
        if !clean {
            self.flush();
        } else if let Some(journal) = self.journal.take()
            && let Err(error) = journal.finish()
        {
            tracing::warn!(%error, "the journal stays");
        }
    }
}

/// The journal's name, this window's own among those that run at once.
fn own_name() -> String {
    format!("window-{}", std::process::id())
}

/// What a window that fell left behind.
pub(crate) enum LeftBehind {
    /// A journal that was replayed.
    Work(Box<Left<Disk>>),
    /// One that cannot be read; it was kept.
    Damaged(PathBuf),
}

impl LeftBehind {
    fn all(folder: &Path) -> Vec<Self> {
        let found = match safekeeping::left_behind(&Disk, folder) {
            Ok(found) => found,
            Err(error) => {
                tracing::warn!(%error, "journals");
                return Vec::new();
            }
        };
        let mut all: Vec<Self> = found.damaged.into_iter().map(|damaged| Self::Damaged(damaged.journal)).collect();
        for left in found.left {
            // A window may fall between a save and its journal's new start: the file has all of it then.
            let file = left.replay.plan_path.as_deref();
            let on_disk = file.and_then(|path| shelf::open(path, Words::default()).ok());
            if left.replay.has_changes() && on_disk.as_ref() != Some(&left.replay.plan) {
                all.push(Self::Work(Box::new(left)));
            } else if let Some(aside) = throw_away(left) {
                all.push(Self::Damaged(aside));
            }
        }
        all
    }

    /// What was left, in a sentence.
    pub(crate) fn sentence(&self, words: Words) -> String {
        match self {
            Self::Work(left) => {
                let title = left.replay.plan.title.as_str();
                let file = left.replay.plan_path.as_deref().map(shelf::shown);
                let name = if title.is_empty() { file.as_deref().unwrap_or(words.text(Text::Unnamed)) } else { title };
                if left.replay.edits.is_empty() {
                    return words.say(Text::LeftNeverSaved, &[("name", name)]);
                }
                let count = match left.replay.edits.len() {
                    1 => words.text(Text::LeftOneChange).to_owned(),
                    count => words.say(Text::LeftChanges, &[("count", &count.to_string())]),
                };
                let text = words.say(Text::LeftText, &[("name", name), ("count", &count)]);
                match &left.replay.dropped {
                    Some(dropped) if dropped.lines > 0 => format!("{text} {}", words.text(Text::LeftPart)),
                    _ => text,
                }
            }
            Self::Damaged(path) => words.say(Text::LeftDamaged, &[("file", &shelf::shown(path))]),
        }
    }

    /// Whether there is a plan to be taken back.
    pub(crate) fn can_take(&self) -> bool {
        matches!(self, Self::Work(_))
    }

    /// The plan as it was when the window fell, and the journal to go on with.
    pub(crate) fn take(self) -> Option<(Message, Box<Left<Disk>>)> {
        let Self::Work(left) = self else { return None };
        let (plan, path) = (left.replay.plan.clone(), left.replay.plan_path.clone());
        Some((Message::Recovered(Box::new(plan), path), left))
    }

    /// Takes it away for good.
    pub(crate) fn throw_away(self) {
        if let Self::Work(left) = self {
            drop(throw_away(*left));
        }
    }
}

/// Takes a journal away; what could not be read of it is set aside, and where to is returned.
fn throw_away(left: Left<Disk>) -> Option<PathBuf> {
    left.discard().unwrap_or_else(|error| {
        tracing::warn!(%error, "a journal stays");
        None
    })
}
