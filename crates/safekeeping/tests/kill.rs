//! A real process, killed at some moment of its work.
//!
//! The child keeps a journal on the real disk, saves now and then, and says after each flush how far it got; the
//! parent kills it without warning and looks for what it left. `NETFOLD_HEAVY=1` kills fifty instead of five.
#![allow(clippy::unwrap_used, clippy::disallowed_methods, reason = "a test may stop and may read files")]

use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use plan::{Edit, Plan, Point, Shape};
use safekeeping::{Base, Disk, Journal, left_behind, save};

const FOLDER: &str = "NETFOLD_TEST_FOLDER";
const PLAN: &str = "yard.netfold.json";
/// Edits between two flushes.
const FLUSH_EDITS: usize = 40;
const REST_MS: u64 = 5;
/// Edits between two saves.
const SAVE_EDITS: usize = 100;
/// Edits after which a child ends that nobody killed.
const MOST_EDITS: usize = 4000;

/// The edits that bring a plan from one number to the next.
fn edits(number: usize) -> [Edit; 2] {
    let to = Point::new(number as f64 * 0.1, -0.7 * number as f64);
    [Edit::MoveCorner { shape: Shape::Boundary, corner: number % 3, to }, Edit::SetTitle { title: number.to_string() }]
}

/// The plan of a number.
fn plan_of(number: usize) -> Plan {
    let mut plan = Plan { title: "0".to_owned(), ..Plan::default() };
    plan.ground.boundary = [(0.0, 0.0), (50.0, 0.0), (50.0, 40.0)].map(Point::from).to_vec();
    for edit in (1..=number).flat_map(edits) {
        plan.apply(edit).unwrap();
    }
    plan
}

#[test]
#[ignore = "the child of the test below"]
fn child() {
    let Some(folder) = std::env::var_os(FOLDER) else {
        return;
    };
    let folder = Path::new(&folder);
    let path = folder.join(PLAN);
    let mut plan = plan_of(0);
    let base = Base { plan: &plan, path: Some(&path), saved: false };
    let mut journal = Journal::start(Disk, folder, "window", base).unwrap();
    let say = |text: String| writeln!(std::io::stdout(), "\n{text}").unwrap();
    for number in 1..=MOST_EDITS {
        let edits = edits(number);
        for edit in &edits {
            plan.apply(edit.clone()).unwrap();
        }
        journal.append(&edits).unwrap();
        if number % FLUSH_EDITS == 0 {
            journal.flush().unwrap();
            say(format!("flushed {number}"));
        }
        if number % SAVE_EDITS == 0 {
            save(&Disk, &path, &plan::write(&plan)).unwrap();
            say(format!("saved {number}"));
            journal.restart(Base { plan: &plan, path: Some(&path), saved: true }).unwrap();
        }
        std::thread::sleep(Duration::from_millis(REST_MS));
    }
}

/// Starts a child, kills it after a while, and says how many edits were reported flushed, saved and found.
fn kill_one(after: Duration) -> (usize, usize, usize) {
    let folder = tempfile::tempdir().unwrap();
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "child", "--ignored", "--nocapture"])
        .env(FOLDER, folder.path())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut waited = Duration::ZERO;
    let look = Duration::from_millis(7);
    while waited < after {
        // A window that lives is never taken for a fallen one.
        let found = left_behind(&Disk, folder.path()).unwrap();
        assert!(found.left.is_empty() && found.damaged.is_empty(), "{found:?}");
        std::thread::sleep(look);
        waited += look;
    }
    let out = BufReader::new(child.stdout.take().unwrap());
    child.kill().unwrap();
    let status = child.wait().unwrap();
    assert!(!status.success(), "the child ended by itself");
    #[cfg(unix)]
    assert_eq!(std::os::unix::process::ExitStatusExt::signal(&status), Some(9));

    let (mut flushed, mut saved) = (0, 0);
    for line in out.lines().map(Result::unwrap) {
        match line.split_once(' ') {
            Some(("flushed", number)) => flushed = number.parse().unwrap(),
            Some(("saved", number)) => saved = number.parse().unwrap(),
            _ => {}
        }
    }
    let found = left_behind(&Disk, folder.path()).unwrap();
    assert!(found.damaged.is_empty(), "{:?}", found.damaged);
    let mut newest = 0;
    for left in &found.left {
        let replay = &left.replay;
        // An edit of the two may be there without the other.
        let number: usize = replay.plan.title.parse().unwrap();
        let mut between = plan_of(number);
        let whole = replay.plan == between;
        between.apply(edits(number + 1)[0].clone()).unwrap();
        assert!(whole || replay.plan == between, "{number} is another plan");
        assert!(replay.dropped.as_ref().is_none_or(|dropped| dropped.lines == 0), "{:?}", replay.dropped);
        newest = newest.max(number);
    }
    assert!(newest >= flushed, "{flushed} edits were flushed, {newest} found");
    let path = folder.path().join(PLAN);
    if saved > 0 || path.exists() {
        let read = plan::read(&std::fs::read(&path).unwrap()).unwrap().plan;
        let number: usize = read.title.parse().unwrap();
        assert!(number >= saved && read == plan_of(number), "{saved} was saved, {number} read");
    }
    (flushed, saved, newest)
}

#[test]
fn a_killed_window_loses_nothing_that_was_flushed() {
    let kills = if std::env::var_os("NETFOLD_HEAVY").is_some_and(|heavy| heavy == "1") { 50 } else { 5 };
    let mut state = 0x9e37_79b9_u32;
    let mut met = 0;
    for kill in 0..kills {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        let after = Duration::from_millis(20 + u64::from(state >> 16) % 1500);
        let (flushed, saved, found) = kill_one(after);
        met = met.max(flushed);
        writeln!(std::io::stderr(), "kill {kill} after {after:?}: flushed {flushed}, saved {saved}, found {found}")
            .unwrap();
    }
    assert!(met >= FLUSH_EDITS, "no child lived long enough to flush: the test saw nothing");
}
