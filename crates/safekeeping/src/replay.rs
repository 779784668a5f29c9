//! From the bytes of a journal to the plan that its window had: pure, for any bytes.
//!
//! Lines are replayed up to the first that is torn or does not apply; every edit before it is kept, and what
//! comes after is counted and left aside, since edits count corners and one missing shifts all that follow.

use std::path::PathBuf;

use plan::{Edit, EditError, Plan};

use crate::header::{Damage, Header};
use crate::line::Lines;

/// What a journal holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Replay {
    /// The plan's file, if it had one.
    pub plan_path: Option<PathBuf>,
    /// Whether that file held [`Replay::base`].
    pub saved: bool,
    /// The plan that the edits went on from.
    pub base: Plan,
    /// The edits, undo and redo among them as edits.
    pub edits: Vec<Edit>,
    /// The plan after them.
    pub plan: Plan,
    /// What was left aside at the end.
    pub dropped: Option<Dropped>,
}

impl Replay {
    /// Whether something here was never saved: an edit, or the base itself.
    pub fn has_changes(&self) -> bool {
        !self.saved || !self.edits.is_empty()
    }
}

/// The end of a journal that could not be replayed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dropped {
    /// Whole lines in it; none where the last line was cut while it was written, the usual case.
    pub lines: usize,
    /// Bytes in it.
    pub bytes: usize,
    /// What its first line is.
    pub stop: Stop,
}

/// Why a replay stops.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Stop {
    /// A line cut short or altered.
    Torn,
    /// A whole line that is no edit that this version knows.
    NoEdit,
    /// An edit that does not fit the plan before it.
    DoesNotApply(EditError),
}

/// Replays a journal.
///
/// # Errors
/// [`Damage`] where its first line cannot be read.
pub fn replay(bytes: &[u8]) -> Result<Replay, Damage> {
    let mut lines = Lines::new(bytes);
    let header = Header::read(lines.next().ok_or(Damage::Header)?)?;
    let mut plan = header.base.clone();
    let mut edits = Vec::new();
    let dropped = loop {
        let rest = lines.rest();
        if rest.is_empty() {
            break None;
        }
        match next(&mut lines, &mut plan) {
            Ok(edit) => edits.push(edit),
            Err(stop) => {
                let lines = rest.split_inclusive(|&byte| byte == b'\n').filter(|line| line.ends_with(b"\n")).count();
                break Some(Dropped { lines, bytes: rest.len(), stop });
            }
        }
    };
    Ok(Replay { plan_path: header.path, saved: header.saved, base: header.base, edits, plan, dropped })
}

fn next(lines: &mut Lines<'_>, plan: &mut Plan) -> Result<Edit, Stop> {
    let json = lines.next().ok_or(Stop::Torn)?;
    let edit: Edit = serde_json::from_slice(json).map_err(|_| Stop::NoEdit)?;
    plan.apply(edit.clone()).map_err(Stop::DoesNotApply)?;
    Ok(edit)
}
