//! A journal gives back what was done, wherever it is cut and whatever fails.

use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use plan::{Edit, Energizer, Plan, Point, Shape, Store};
use proptest::prelude::*;
use safekeeping::{Base, Damage, Files, Journal, JournalError, SaveError, left_behind, replay};

use crate::edits::{seeds, work, yard};
use crate::memory::{Fail, Memory};

const FOLDER: &str = "/state/journals";

fn folder() -> &'static Path {
    Path::new(FOLDER)
}

fn start(memory: &Memory, plan: &Plan) -> Journal<Memory> {
    let base = Base { plan, path: Some(Path::new("/farm/yard.netfold.json")), saved: true };
    Journal::start(memory.clone(), folder(), "window", base).unwrap()
}

fn bytes(memory: &Memory, journal: &Journal<Memory>) -> Vec<u8> {
    memory.bytes(journal.path()).unwrap()
}

proptest! {
    #[test]
    fn a_replay_is_the_plan(seeds in seeds(60)) {
        let memory = Memory::default();
        let base = yard();
        let mut plan = base.clone();
        let mut journal = start(&memory, &base);
        let mut edits = Vec::new();
        for batch in work(&mut plan, &seeds) {
            journal.append(&batch).unwrap();
            edits.extend(batch);
        }
        journal.flush().unwrap();
        prop_assert_eq!(journal.bytes(), bytes(&memory, &journal).len());
        for after in [memory.after_kill(), memory.after_power_loss(0, false)] {
            let mut found = left_behind(&after, folder()).unwrap();
            prop_assert!(found.damaged.is_empty());
            let left = found.left.pop().unwrap();
            prop_assert!(found.left.is_empty());
            prop_assert_eq!(&left.replay.plan_path, &Some(PathBuf::from("/farm/yard.netfold.json")));
            prop_assert_eq!(&left.replay.base, &base);
            prop_assert_eq!(&left.replay.edits, &edits);
            prop_assert_eq!(&left.replay.plan, &plan);
            prop_assert_eq!(&left.replay.dropped, &None);
        }
        // The plan of any moment may be the next base.
        journal.restart(Base { plan: &plan, path: None, saved: false }).unwrap();
        let again = replay(&bytes(&memory, &journal)).unwrap();
        prop_assert_eq!((again.base, again.plan_path, again.saved), (plan, None, false));
        prop_assert_eq!(memory.names().len(), 1);
    }
}

proptest! {
    // Each case is some thousand replays.
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn cut_or_altered_at_any_byte_it_is_the_plan_after_the_last_whole_line(
        seeds in seeds(12), altered: prop::sample::Index, bit in 0..8_u32,
    ) {
        let memory = Memory::default();
        let mut plan = yard();
        let mut journal = start(&memory, &plan);
        let mut moments = vec![(journal.bytes(), plan.clone())];
        for edit in work(&mut plan.clone(), &seeds).into_iter().flatten() {
            journal.append(std::slice::from_ref(&edit)).unwrap();
            plan.apply(edit).unwrap();
            moments.push((journal.bytes(), plan.clone()));
        }
        let whole = bytes(&memory, &journal);
        for cut in 0..=whole.len() {
            let lines = moments.iter().take_while(|(end, _)| *end <= cut).count();
            let Some(last) = lines.checked_sub(1) else {
                prop_assert_eq!(replay(&whole[..cut]), Err(Damage::Header));
                continue;
            };
            let replay = replay(&whole[..cut]).unwrap();
            prop_assert_eq!(&replay.plan, &moments[last].1);
            prop_assert_eq!(replay.edits.len(), last);
            prop_assert_eq!(replay.dropped.map(|dropped| (dropped.lines, dropped.bytes)),
                (cut > moments[last].0).then(|| (0, cut - moments[last].0)));
        }
        let at = altered.index(whole.len());
        let mut other = whole.clone();
        other[at] ^= 1 << bit;
        match (replay(&other), moments.iter().filter(|(end, _)| *end <= at).count().checked_sub(1)) {
            (Err(damage), None) => prop_assert_eq!(damage, Damage::Header),
            (Ok(replay), Some(last)) => prop_assert_eq!(&replay.plan, &moments[last].1),
            (other, last) => prop_assert!(false, "{other:?} for line {last:?}"),
        }
    }
}

fn title(number: usize) -> Edit {
    Edit::SetTitle { title: number.to_string() }
}

/// What a window knows to be kept when it falls: the number of the last edit.
#[derive(Clone, Copy, Debug, Default)]
struct Known {
    made: usize,
    appended: usize,
    flushed: usize,
    saved: usize,
}

/// A window that makes numbered edits, saves now and then, and starts anew after a failure as it should.
fn window(memory: &Memory) -> (Known, Option<Journal<Memory>>) {
    let mut known = Known::default();
    let mut plan = Plan { title: "0".to_owned(), ..yard() };
    let mut journal: Option<Journal<Memory>> = None;
    let path = Some(Path::new("/farm/yard.netfold.json"));
    for number in 0..=13 {
        known.made = number;
        let mut done = Ok(());
        if number > 0 {
            plan.apply(title(number)).unwrap();
            if let Some(journal) = &mut journal {
                done = journal.append(&[title(number)]);
                known.appended = if done.is_ok() { number } else { known.appended };
                if done.is_ok() && number % 3 == 0 {
                    done = journal.flush();
                    known.flushed = if done.is_ok() { number } else { known.flushed };
                }
            }
        }
        let saves = number == 4 || number == 10;
        known.saved = if saves { number } else { known.saved };
        let base = Base { plan: &plan, path, saved: saves };
        let begun = match &mut journal {
            None => Journal::start(memory.clone(), folder(), "window", base).map(|new| journal = Some(new)),
            Some(journal) if saves || done.is_err() || journal.is_stopped() => journal.restart(base),
            Some(_) => continue,
        };
        if begun.is_ok() {
            known = Known { appended: number, flushed: number, ..known };
        }
    }
    (known, journal)
}

/// The number of the newest plan that can be had, and whether something in it was never saved.
fn newest(memory: &Memory) -> Option<(usize, bool)> {
    let found = left_behind(memory, folder()).unwrap();
    assert!(found.damaged.is_empty(), "{:?}", found.damaged);
    found.left.iter().map(|left| (left.replay.plan.title.parse().unwrap(), left.replay.has_changes())).max()
}

fn check(memory: &Memory, known: Known, least: usize, moment: &str) {
    match newest(memory) {
        None => assert_eq!(least, 0, "{moment}: nothing found; {known:?}"),
        Some((number, changes)) => {
            assert!((least..=known.made).contains(&number), "{moment}: {number}; {known:?}");
            assert!(changes || number <= known.saved, "{moment}: {number} is said to be saved; {known:?}");
        }
    }
}

#[test]
fn whatever_fails_what_was_kept_is_found_after_a_kill_and_after_a_power_loss() {
    let clean = Memory::default();
    let (known, journal) = window(&clean);
    assert_eq!((known.appended, known.flushed), (13, 12));
    let operations = clean.done();
    assert!(operations > 40, "{operations}");
    drop(journal);
    for at in 0..operations {
        for fail in [Fail::At(at), Fail::From(at)] {
            let memory = Memory::default();
            memory.fail(fail, ErrorKind::StorageFull);
            let (known, _living) = window(&memory);
            if matches!(fail, Fail::At(_)) {
                assert_eq!(known.appended, 13, "{fail:?}: the window did not go on");
            }
            check(&memory.after_kill(), known, known.appended, &format!("{fail:?}, kill"));
            for (spared, last_names) in [(0, false), (0, true), (9, false), (9, true), (50, true)] {
                let after = memory.after_power_loss(spared, last_names);
                check(&after, known, known.flushed, &format!("{fail:?}, power, {spared} bytes spared"));
            }
        }
    }
}

#[test]
fn a_journal_that_failed_takes_nothing_more_until_it_is_restarted() {
    let memory = Memory::default();
    let mut plan = yard();
    let mut journal = start(&memory, &plan);
    journal.append(&[title(1)]).unwrap();
    memory.fail(Fail::At(0), ErrorKind::StorageFull);
    plan.title = "2".to_owned();
    let full = JournalError::File(SaveError::DiskFull { path: journal.path().to_path_buf() });
    assert_eq!(journal.append(&[title(2)]), Err(full));
    let stopped = JournalError::Stopped { path: journal.path().to_path_buf() };
    assert_eq!(journal.append(&[title(3)]), Err(stopped.clone()));
    assert_eq!(journal.flush(), Err(stopped));
    let replay = replay(&bytes(&memory, &journal)).unwrap();
    assert_eq!((replay.plan.title.as_str(), replay.dropped.map(|dropped| dropped.lines)), ("1", Some(0)));
    journal.restart(Base { plan: &plan, path: None, saved: false }).unwrap();
    journal.append(&[title(4)]).unwrap();
    assert_eq!(newest(&memory.after_kill()), Some((4, true)));
}

#[test]
fn a_flush_or_a_restart_that_failed_stops_it_too() {
    let plan = yard();
    let base = Base { plan: &plan, path: None, saved: true };
    let fails: [fn(&mut Journal<Memory>, Base<'_>) -> bool; 2] =
        [|journal, _| journal.flush().is_err(), |journal, base| journal.restart(base).is_err()];
    for fails in fails {
        let memory = Memory::default();
        let mut journal = start(&memory, &plan);
        journal.append(&[title(1)]).unwrap();
        memory.fail(Fail::At(0), ErrorKind::StorageFull);
        assert!(fails(&mut journal, base) && journal.is_stopped());
        assert!(matches!(journal.append(&[title(2)]), Err(JournalError::Stopped { .. })));
        assert_eq!(newest(&memory.after_kill()), Some((1, true)));
        journal.restart(base).unwrap();
        assert!(!journal.is_stopped());
    }
}

#[test]
fn what_does_not_read_back_is_refused_before_it_is_written() {
    let memory = Memory::default();
    let mut odd = yard();
    let mut unit = Energizer::assumed();
    unit.stored_j = Some(f64::NAN);
    odd.store.energizers = vec![unit.clone()];
    let base = Base { plan: &odd, path: None, saved: false };
    let refused = Journal::start(memory.clone(), folder(), "window", base).map(drop);
    assert!(matches!(refused, Err(JournalError::NotRecordable { .. })), "{refused:?}");
    assert!(memory.names().is_empty());

    let mut journal = start(&memory, &yard());
    let was = bytes(&memory, &journal);
    let store = Box::new(Store { energizers: vec![unit], ..Store::default() });
    assert!(matches!(journal.append(&[Edit::SetStore { store }]), Err(JournalError::NotRecordable { .. })));
    assert_eq!(bytes(&memory, &journal), was);
    assert!(journal.is_stopped());
}

#[test]
fn a_window_that_ends_well_leaves_nothing_and_one_that_lives_is_not_seen() {
    let memory = Memory::default();
    let mut journal = start(&memory, &yard());
    journal.append(&[title(1)]).unwrap();
    assert_eq!(newest(&memory), None);
    let second = start(&memory, &yard());
    assert_ne!(journal.path(), second.path());
    journal.restart(Base { plan: &yard(), path: None, saved: true }).unwrap();
    assert_eq!(newest(&memory), None);
    journal.finish().unwrap();
    second.finish().unwrap();
    assert!(memory.names().is_empty(), "{:?}", memory.names());
}

#[test]
fn a_boundary_closed_by_hand_keeps_its_count_of_corners() {
    let memory = Memory::default();
    let mut plan = yard();
    plan.ground.boundary.push(plan.ground.boundary[0]);
    let mut journal = start(&memory, &plan);
    let edit = Edit::MoveCorner { shape: Shape::Boundary, corner: 3, to: Point::new(7.0, 7.0) };
    journal.append(std::slice::from_ref(&edit)).unwrap();
    plan.apply(edit).unwrap();
    assert_eq!(replay(&bytes(&memory, &journal)).unwrap().plan, plan);
}

#[test]
fn a_folder_without_locks_is_refused() {
    let memory = Memory::default();
    start(&memory, &yard()).finish().unwrap();
    // Folder, name, path from the root, draft, then the lock.
    memory.fail(Fail::At(4), ErrorKind::Unsupported);
    let base = Base { plan: &yard(), path: Some(Path::new("/a")), saved: true };
    let refused = Journal::start(memory.clone(), folder(), "window", base).map(drop);
    let path = PathBuf::from("/state/journals/window-2.netfold-journal");
    assert_eq!(refused, Err(JournalError::NoLock { path }));
    assert!(memory.list(folder()).unwrap().is_empty());
}
