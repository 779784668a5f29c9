//! What was left behind is found, gone on with, or set aside; nothing is lost on the way.

use std::io::ErrorKind;
use std::path::Path;

use plan::{Edit, Plan};
use proptest::prelude::*;
use safekeeping::{Base, Damage, Found, Journal, left_behind};

use crate::memory::{Fail, Memory};

const FOLDER: &str = "/state";

fn title(title: &str) -> Edit {
    Edit::SetTitle { title: title.to_owned() }
}

fn find(memory: &Memory) -> Found<Memory> {
    left_behind(memory, Path::new(FOLDER)).unwrap()
}

/// A folder in which a window fell after so many edits.
fn fallen(edits: &[Edit]) -> Memory {
    let memory = Memory::with_folders(&[FOLDER]);
    let base = Base { plan: &Plan::default(), path: Some(Path::new("/farm/a")), saved: true };
    let mut journal = Journal::start(memory.clone(), Path::new(FOLDER), "window", base).unwrap();
    journal.append(edits).unwrap();
    journal.flush().unwrap();
    memory.after_kill()
}

#[test]
fn what_is_taken_up_survives_a_second_fall_and_goes_on() {
    let memory = fallen(&[title("one"), title("two")]);
    let mut found = find(&memory);
    // While one window looks at it no other is offered it.
    assert!(find(&memory).left.is_empty());
    let mut journal = found.left.pop().unwrap().take_up("second").unwrap();
    assert_eq!(memory.names(), ["/state/second-2.netfold-journal"]);
    assert_eq!(find(&memory.after_kill()).left[0].replay.edits, [title("one"), title("two")]);
    journal.append(&[title("three")]).unwrap();
    let again = find(&memory.after_kill());
    let replay = &again.left[0].replay;
    assert_eq!(replay.edits, [title("one"), title("two"), title("three")]);
    assert_eq!((&replay.base, replay.plan_path.as_deref()), (&Plan::default(), Some(Path::new("/farm/a"))));
    assert!(replay.saved);
}

#[test]
fn what_is_discarded_is_gone_and_what_is_only_looked_at_stays() {
    let memory = fallen(&[title("one")]);
    drop(find(&memory));
    assert_eq!(find(&memory).left.len(), 1);
    find(&memory).left.pop().unwrap().discard().unwrap();
    assert!(memory.names().is_empty());
    let idle = fallen(&[]);
    assert!(!find(&idle).left[0].replay.has_changes());
}

#[test]
fn taking_up_may_fail_anywhere_and_loses_nothing() {
    for at in 0..16 {
        for fail in [Fail::At(at), Fail::From(at)] {
            let memory = fallen(&[title("one")]);
            let left = find(&memory).left.pop().unwrap();
            memory.fail(fail, ErrorKind::StorageFull);
            let taken = left.take_up("second");
            for after in [memory.after_kill(), memory.after_power_loss(0, true), memory.after_power_loss(0, false)] {
                let found = find(&after);
                assert!(!found.left.is_empty() || (taken.is_err() && after.names().is_empty()), "{fail:?}");
                for left in &found.left {
                    assert_eq!(left.replay.plan.title, "one");
                }
            }
            assert!(!find(&memory.after_kill()).left.is_empty(), "{fail:?}");
        }
    }
}

#[test]
fn a_damaged_journal_is_set_aside_and_told_of_once() {
    let memory = fallen(&[]);
    let whole = memory.bytes("/state/window-1.netfold-journal").unwrap();
    let torn = &whole[..whole.len() - 3];
    memory.put("/state/a.netfold-journal", torn);
    memory.put("/state/a.netfold-journal.damaged", b"an earlier one");
    memory.put("/state/b.netfold-journal", b"");
    memory.put("/state/note.txt", b"not ours");
    let found = find(&memory);
    assert_eq!(found.left.len(), 1);
    let damaged: Vec<_> = found.damaged.iter().map(|one| (one.journal.to_str().unwrap(), &one.damage)).collect();
    let expected = ["/state/a.netfold-journal-2.damaged", "/state/b.netfold-journal.damaged"];
    assert_eq!(damaged, expected.map(|path| (path, &Damage::Header)));
    assert_eq!(memory.bytes(expected[0]).as_deref(), Some(torn));
    drop(found);
    assert!(find(&memory).damaged.is_empty());
    assert_eq!(memory.names().len(), 5);
}

#[test]
fn whole_lines_that_were_dropped_are_set_aside_and_a_torn_one_is_not() {
    for (tail, set_aside) in [(&b"0123456789abcdef {\"edi"[..], 0), (b"torn {}\nwhole {}\n", 1)] {
        let memory = fallen(&[title("one")]);
        let mut bytes = memory.bytes("/state/window-1.netfold-journal").unwrap();
        bytes.extend_from_slice(tail);
        memory.put("/state/window-1.netfold-journal", &bytes);
        let left = find(&memory).left.pop().unwrap();
        assert_eq!(left.replay.dropped.as_ref().map(|dropped| dropped.bytes), Some(tail.len()));
        let journal = left.take_up("second").unwrap();
        assert_eq!(memory.names().iter().filter(|name| name.ends_with(".damaged")).count(), set_aside);
        drop(journal);
        let left = find(&memory).left.pop().unwrap();
        assert_eq!((left.replay.plan.title.as_str(), &left.replay.dropped), ("one", &None));
    }
}

#[test]
fn drafts_are_swept_but_an_empty_one_may_be_about_to_be_locked() {
    let memory = Memory::with_folders(&[FOLDER]);
    memory.put("/state/window-1.netfold-journal-draft", b"half a jour");
    memory.put("/state/window-2.netfold-journal-draft", b"");
    // A save of a plan that lies in the same folder is no business of ours.
    memory.put("/state/.netfold-1.draft", b"a plan");
    assert!(find(&memory).left.is_empty());
    assert_eq!(memory.names(), ["/state/.netfold-1.draft", "/state/window-2.netfold-journal-draft"]);
    assert!(left_behind(&memory, Path::new("/gone")).unwrap().left.is_empty());
}

#[test]
fn a_look_that_fails_anywhere_deletes_nothing() {
    for at in 0..12 {
        let memory = fallen(&[title("one")]);
        memory.put("/state/a.netfold-journal", b"odd");
        memory.fail(Fail::From(at), ErrorKind::PermissionDenied);
        drop(left_behind(&memory, Path::new(FOLDER)));
        let after = memory.after_kill();
        assert_eq!(find(&after).left[0].replay.plan.title, "one");
        assert_eq!(after.names().len(), 2);
    }
}

proptest! {
    #[test]
    fn any_bytes_are_found_and_kept(bytes: Vec<u8>) {
        let memory = Memory::with_folders(&[FOLDER]);
        memory.put("/state/a.netfold-journal", &bytes);
        let found = find(&memory);
        prop_assert!(found.left.is_empty());
        prop_assert_eq!(found.damaged.len(), 1);
        prop_assert_eq!(memory.bytes(&found.damaged[0].journal), Some(bytes));
    }
}
