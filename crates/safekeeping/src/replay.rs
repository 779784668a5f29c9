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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::line::{Sum, push};
    use proptest::prelude::*;

    fn journal<'a>(lines: impl IntoIterator<Item = &'a [u8]>) -> Vec<u8> {
        let mut sum = Sum::new();
        let mut text = Vec::new();
        push(&mut text, &mut sum, &Header::write(None, true, &Plan::default()));
        for line in lines {
            push(&mut text, &mut sum, line);
        }
        text
    }

    #[test]
    fn a_replay_stops_where_an_edit_is_unknown_or_does_not_fit() {
        let title = |title: &str| serde_json::to_vec(&Edit::SetTitle { title: title.to_owned() }).unwrap();
        let (first, last) = (title("first"), title("last"));
        let gone = serde_json::to_vec(&Edit::RemoveRun { id: "gone".to_owned() }).unwrap();
        for (odd, stop) in [
            (&gone[..], Stop::DoesNotApply(EditError::NoSuchRun { id: "gone".to_owned() })),
            (br#"{"edit": "plant_hedge"}"#, Stop::NoEdit),
            (b"", Stop::NoEdit),
            (b"\xff", Stop::NoEdit),
        ] {
            let replay = replay(&journal([&first[..], odd, &last])).unwrap();
            assert_eq!(replay.edits.len(), 1);
            assert_eq!(replay.plan.title, "first");
            let dropped = replay.dropped.unwrap();
            assert_eq!(dropped.stop, stop);
            assert_eq!((dropped.lines, dropped.bytes), (2, odd.len() + last.len() + 36));
        }
        let whole = replay(&journal([&first[..], &last])).unwrap();
        assert_eq!((whole.plan.title.as_str(), whole.dropped), ("last", None));
    }

    #[test]
    fn a_base_that_was_saved_and_has_no_edits_has_no_changes() {
        let mut replay = replay(&journal([])).unwrap();
        assert!(!replay.has_changes());
        replay.saved = false;
        assert!(replay.has_changes());
    }

    proptest! {
        #[test]
        fn no_bytes_make_it_panic(bytes: Vec<u8>, lines in prop::collection::vec(any::<Vec<u8>>(), 0..4)) {
            prop_assert_eq!(replay(&bytes), Err(Damage::Header));
            let mut sum = Sum::new();
            let mut text = Vec::new();
            for line in &lines {
                push(&mut text, &mut sum, line);
            }
            prop_assert_eq!(replay(&text), Err(Damage::Header));
            let replay = replay(&journal(lines.iter().map(Vec::as_slice))).unwrap();
            prop_assert_eq!(replay.plan, Plan::default());
            prop_assert_eq!(replay.dropped.is_some(), !lines.is_empty());
        }
    }
}
