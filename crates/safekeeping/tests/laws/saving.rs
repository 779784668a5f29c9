//! A save that fails at any operation, and the power that goes at any moment.

use std::io::ErrorKind;
use std::path::Path;

use safekeeping::{SaveError, save};

use crate::memory::{Fail, Memory};

const PATH: &str = "/farm/spring.netfold.json";
const BACKUP: &str = "/farm/spring.netfold.json.bak";
const OLD: &[u8] = b"the plan as it was";
const NEW: &[u8] = b"the plan as it shall be, and longer";

/// A folder with or without a plan, with or without an older backup, on disks with and without links.
fn folders() -> Vec<Memory> {
    let mut folders = Vec::new();
    for links in [true, false] {
        for there in 0..4 {
            let memory = Memory::with_folders(&["/farm"]);
            if there > 0 {
                memory.put(PATH, OLD);
            }
            if there == 2 {
                memory.put(BACKUP, b"older");
            }
            if there == 3 {
                // An earlier save failed in its last step: both names are of one file.
                memory.fail(Fail::At(6), ErrorKind::Other);
                assert!(save(&memory, Path::new(PATH), b"never").is_err());
                memory.fail(Fail::Never, ErrorKind::Other);
                assert_eq!(memory.bytes(BACKUP).as_deref(), Some(OLD));
            }
            folders.push(if links { memory } else { memory.without_links() });
        }
    }
    folders
}

#[test]
fn a_save_puts_the_new_in_place_and_keeps_the_old_as_a_backup() {
    for memory in folders() {
        let old = memory.bytes(PATH);
        save(&memory, Path::new(PATH), NEW).unwrap();
        assert_eq!(memory.bytes(PATH).as_deref(), Some(NEW));
        assert_eq!(memory.bytes(BACKUP), old);
        assert!(memory.names().iter().all(|name| !name.ends_with("draft")), "{:?}", memory.names());
        save(&memory, Path::new(PATH), b"third").unwrap();
        assert_eq!(memory.bytes(BACKUP).as_deref(), Some(NEW));
    }
}

#[test]
fn a_save_that_fails_anywhere_leaves_the_old_file_and_no_draft() {
    let (mut failed, mut tried) = (0, 0);
    for folder in folders() {
        for kind in [ErrorKind::StorageFull, ErrorKind::PermissionDenied, ErrorKind::Other] {
            for at in 0.. {
                for fail in [Fail::At(at), Fail::From(at)] {
                    let memory = folder.after_kill();
                    let (old, backup) = (memory.bytes(PATH), memory.bytes(BACKUP));
                    memory.fail(fail, kind);
                    let saved = save(&memory, Path::new(PATH), NEW);
                    tried += 1;
                    let whole = memory.bytes(PATH);
                    let kept = memory.bytes(BACKUP);
                    if let Err(error) = &saved {
                        failed += 1;
                        assert_eq!(whole, old, "{fail:?}");
                        assert!(kept == backup || kept == old, "{fail:?}");
                        let meant = match kind {
                            ErrorKind::StorageFull => matches!(error, SaveError::DiskFull { .. }),
                            ErrorKind::PermissionDenied => matches!(error, SaveError::Forbidden { .. }),
                            _ => matches!(error, SaveError::Unwritable { .. }),
                        };
                        assert!(meant, "{error}");
                    } else {
                        assert_eq!(whole.as_deref(), Some(NEW), "{fail:?}");
                        assert!(old.is_none() || kept == old, "{fail:?}");
                    }
                    let drafts = memory.names().iter().filter(|name| name.ends_with("draft")).count();
                    // A draft stays only where taking it away is what fails.
                    assert!(drafts == 0 || matches!(fail, Fail::From(_)) || saved.is_ok(), "{fail:?}");
                }
                let clean = folder.after_kill();
                save(&clean, Path::new(PATH), NEW).unwrap();
                if at > clean.done() {
                    break;
                }
            }
        }
    }
    assert!(failed > 150 && tried > failed, "{failed} of {tried}");
}

#[test]
fn the_power_may_go_at_any_moment_of_a_save() {
    for folder in folders() {
        for at in 0..12 {
            for (spared, last_names) in [(0, false), (0, true), (3, false), (3, true), (99, true)] {
                let memory = folder.after_kill();
                let old = memory.bytes(PATH);
                memory.fail(Fail::From(at), ErrorKind::Other);
                let saved = save(&memory, Path::new(PATH), NEW);
                let after = memory.after_power_loss(spared, last_names);
                let found = after.bytes(PATH);
                assert!(found == old || found.as_deref() == Some(NEW), "{at}: {found:?}");
                assert!(saved.is_ok() || found == old, "{at}");
                if let Some(whole) = after.bytes(BACKUP) {
                    assert!([OLD, b"older"].contains(&whole.as_slice()), "{at}: {whole:?}");
                }
            }
        }
        // Once it has returned and the names could be flushed, the new one is there for good.
        let memory = folder.after_kill();
        save(&memory, Path::new(PATH), NEW).unwrap();
        assert_eq!(memory.after_power_loss(0, false).bytes(PATH).as_deref(), Some(NEW));
    }
}

#[test]
fn what_cannot_be_replaced_is_named() {
    let memory = Memory::with_folders(&["/farm", "/farm/fold", "/farm/odd.bak"]);
    memory.put("/farm/kept", OLD);
    memory.protect("/farm/kept");
    memory.put("/farm/odd", OLD);
    let refused = |path: &str| save(&memory, Path::new(path), NEW).unwrap_err();
    assert_eq!(refused("/farm/kept"), SaveError::Forbidden { path: "/farm/kept".into() });
    assert_eq!(refused("/farm/fold"), SaveError::IsFolder { path: "/farm/fold".into() });
    assert_eq!(refused("/gone/a"), SaveError::NoFolder { path: "/gone/a".into() });
    assert_eq!(refused("/farm/odd"), SaveError::IsFolder { path: "/farm/odd.bak".into() });
    assert_eq!(refused("/farm/odd").to_string(), "safekeeping/is-folder: /farm/odd.bak");
    assert_eq!(refused("/farm/odd").path(), Path::new("/farm/odd.bak"));
    assert_eq!(memory.names(), ["/farm/kept", "/farm/odd"]);
    assert_eq!(memory.bytes("/farm/odd").as_deref(), Some(OLD));
}
