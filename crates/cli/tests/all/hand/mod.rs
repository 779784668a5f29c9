//! The program as a script runs it, on a plan in a folder of its own and without a display.

use std::process::{Command, Output};

pub(crate) fn netfold(command: &str, plan: &str, arguments: &[&str]) -> Output {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("plan.netfold.json"), plan).unwrap();
    let output = Command::new(env!("CARGO_BIN_EXE_netfold"))
        .args([command, "plan.netfold.json"])
        .args(arguments)
        .current_dir(folder.path())
        .env_remove("DISPLAY")
        .env_remove("WAYLAND_DISPLAY")
        .output()
        .unwrap();
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1, "no file is left behind");
    output
}

/// The one sentence of a refusal.
pub(crate) fn sentence(refused: Output) -> String {
    assert_eq!(refused.status.code(), Some(2), "{refused:?}");
    assert!(refused.stdout.is_empty(), "{refused:?}");
    let said = String::from_utf8(refused.stderr).unwrap();
    assert!(said.trim_end().lines().count() == 1 && said.chars().count() <= 501, "{said}");
    said
}
