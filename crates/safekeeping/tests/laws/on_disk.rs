//! The same on the machine's own file system: links, permissions, locks.

use std::fs;
use std::path::Path;

use plan::{Edit, Plan};
use safekeeping::{Base, Disk, Files, Handle, Journal, Kind, SaveError, left_behind, save};

fn names(folder: &Path) -> Vec<String> {
    let paths = Disk.list(folder).unwrap();
    paths.iter().map(|path| path.file_name().unwrap().to_str().unwrap().to_owned()).collect()
}

#[test]
fn a_save_keeps_the_file_before_it() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("spring.netfold.json");
    for text in ["one", "two", "three"] {
        save(&Disk, &path, text.as_bytes()).unwrap();
        assert_eq!(fs::read_to_string(&path).unwrap(), text);
    }
    assert_eq!(fs::read_to_string(folder.path().join("spring.netfold.json.bak")).unwrap(), "two");
    assert_eq!(names(folder.path()), ["spring.netfold.json", "spring.netfold.json.bak"]);
}

#[test]
fn what_cannot_be_written_is_named() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("gone/a");
    assert_eq!(save(&Disk, &path, b""), Err(SaveError::NoFolder { path: path.clone() }));
    let path = folder.path().to_path_buf();
    assert_eq!(save(&Disk, &path, b""), Err(SaveError::IsFolder { path: path.clone() }));
    fs::write(folder.path().join("file"), "").unwrap();
    let path = folder.path().join("file/a");
    assert_eq!(save(&Disk, &path, b""), Err(SaveError::NoFolder { path: path.clone() }));
    assert!(save(&Disk, Path::new(""), b"").is_err());
    assert!(save(&Disk, &folder.path().join("n".repeat(300)), b"").is_err());
    let path = folder.path().join("file");
    let mut permissions = path.metadata().unwrap().permissions();
    permissions.set_readonly(true);
    fs::set_permissions(&path, permissions).unwrap();
    assert_eq!(save(&Disk, &path, b"new"), Err(SaveError::Forbidden { path: path.clone() }));
    assert_eq!(fs::read(&path).unwrap(), b"");
    assert_eq!(names(folder.path()), ["file"]);
}

#[cfg(unix)]
#[test]
fn links_are_followed_and_permissions_kept() {
    use std::os::unix::fs::{PermissionsExt, symlink};
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    let mode = |name: &str| at(name).metadata().unwrap().permissions().mode() & 0o777;
    fs::create_dir(at("plans")).unwrap();
    symlink("plans/new", at("dangling")).unwrap();
    symlink("dangling", at("twice")).unwrap();
    save(&Disk, &at("twice"), b"one").unwrap();
    assert_eq!(fs::read(at("plans/new")).unwrap(), b"one");
    assert_eq!(mode("plans/new"), 0o644);
    fs::set_permissions(at("plans/new"), fs::Permissions::from_mode(0o640)).unwrap();
    save(&Disk, &at("dangling"), b"two").unwrap();
    assert_eq!((mode("plans/new"), mode("plans/new.bak")), (0o640, 0o640));
    assert_eq!(names(&at("plans")), ["new", "new.bak"]);
    assert!(at("twice").is_symlink() && at("dangling").is_symlink());
    symlink("round", at("round")).unwrap();
    assert!(save(&Disk, &at("round"), b"").is_err());
    assert!(at("round").is_symlink());
    assert_eq!(Disk.kind(Path::new("/dev/null")).unwrap(), Kind::Other);
    assert_eq!(save(&Disk, Path::new("/dev/null"), b""), Err(SaveError::NotAFile { path: "/dev/null".into() }));
}

#[test]
fn a_second_name_keeps_the_old_bytes() {
    let folder = tempfile::tempdir().unwrap();
    let (from, to) = (folder.path().join("a"), folder.path().join("b"));
    Disk.write_new(&from, b"old", &from).unwrap();
    Disk.copy_new(&from, &to).unwrap();
    assert!(Disk.copy_new(&from, &to).is_err());
    assert!(Disk.write_new(&from, b"new", &from).is_err());
    save(&Disk, &from, b"new").unwrap();
    assert_eq!((fs::read(&from).unwrap(), fs::read(&to).unwrap()), (b"new".to_vec(), b"old".to_vec()));
}

#[test]
fn a_journal_is_locked_while_its_window_lives() {
    let folder = tempfile::tempdir().unwrap();
    let state = folder.path().join("state/journals");
    assert!(left_behind(&Disk, &state).unwrap().left.is_empty());
    let base = Base { plan: &Plan::default(), path: Some(Path::new("yard")), saved: true };
    let mut journal = Journal::start(Disk, &state, "window", base).unwrap();
    let edit = Edit::SetTitle { title: "Yard".to_owned() };
    journal.append(std::slice::from_ref(&edit)).unwrap();
    journal.flush().unwrap();
    assert!(!Handle::try_lock(&Disk.open(journal.path()).unwrap()).unwrap());
    assert!(left_behind(&Disk, &state).unwrap().left.is_empty());
    drop(journal);
    let left = left_behind(&Disk, &state).unwrap().left.pop().unwrap();
    assert_eq!(left.replay.edits, [edit]);
    assert_eq!(left.replay.plan_path, Some(std::path::absolute("yard").unwrap()));
    assert!(left_behind(&Disk, &state).unwrap().left.is_empty());
    let mut journal = left.take_up("window").unwrap();
    let alone = |journal: &Journal<Disk>| assert_eq!(Disk.list(&state).unwrap(), [journal.path()]);
    alone(&journal);
    let was = journal.path().to_path_buf();
    journal.restart(base).unwrap();
    alone(&journal);
    assert_ne!(journal.path(), was);
    journal.finish().unwrap();
    assert!(names(&state).is_empty());
}

#[test]
fn a_window_that_restarts_is_never_taken_for_a_fallen_one() {
    let folder = tempfile::tempdir().unwrap();
    let base = Base { plan: &Plan::default(), path: None, saved: false };
    let mut looks = 0;
    std::thread::scope(|scope| {
        let window = scope.spawn(|| {
            for _ in 0..300 {
                let mut journal = Journal::start(Disk, folder.path(), "window", base).unwrap();
                for _ in 0..3 {
                    journal.restart(base).unwrap();
                }
                journal.finish().unwrap();
            }
        });
        while !window.is_finished() {
            let found = left_behind(&Disk, folder.path()).unwrap();
            assert!(found.left.is_empty() && found.damaged.is_empty(), "{found:?}");
            looks += 1;
        }
        window.join().unwrap();
    });
    assert!(looks > 100, "only {looks} looks");
    assert!(names(folder.path()).is_empty());
}

#[test]
fn a_journal_can_go_to_another_thread() {
    fn goes<T: Send>() {}
    goes::<Journal<Disk>>();
    goes::<safekeeping::Left<Disk>>();
}
