//! The window, or what stands in for it where there is no display.

use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::time::Instant;

use anyhow::{Result, anyhow};
use words::Words;
use words::texts::{Errors, Files};

use crate::{commands, example, files};

/// Opens a plan in the window: the one named, else the one that was open last, else the example farm.
pub(crate) fn open(path: Option<&Path>, smoke: Option<PathBuf>, words: Words, since: Instant) -> Result<ExitCode> {
    let named = path.map(|path| commands::open(path, words)).transpose()?;
    if !has_display() {
        return without_display(path, words);
    }
    // A smoke run is the same on every machine: nothing is remembered, nothing kept.
    let folder = if smoke.is_none() { files::own_folder() } else { None };
    let example = example::farm().plan;
    let mut opening = desktop::Opening { words, example: Some(example.clone()), folder, ..Default::default() };
    match (named, path) {
        (Some(opened), Some(path)) => (opening.plan, opening.path) = (opened.plan, Some(path.to_path_buf())),
        _ => open_last(&mut opening, example, words),
    }
    let start = desktop::Start {
        opening,
        theme: None,
        page: desktop::editor::Page::default(),
        smoke: smoke.map(|picture| desktop::Smoke { frames: 3, picture: Some(picture), size: [1280.0, 800.0] }),
        since,
    };
    match desktop::run(start) {
        Ok(()) => Ok(ExitCode::SUCCESS),
        // A display that is named and does not answer is none.
        Err(desktop::DesktopError::NoWindow { why }) => {
            tracing::info!(why, "no window");
            without_display(path, words)
        }
        Err(error) => Err(anyhow!(words.say(Errors::WindowFailed, &[("reason", &error.to_string())]))),
    }
}

/// The plan that was open last; where it cannot be read that is said, over the example farm.
fn open_last(opening: &mut desktop::Opening, example: plan::Plan, words: Words) {
    let settings = opening.folder.as_deref().map(desktop::Settings::read).unwrap_or_default();
    if let Some(path) = settings.last_plan() {
        match commands::open(path, words) {
            Ok(opened) => {
                (opening.plan, opening.path) = (opened.plan, Some(path.to_path_buf()));
                return;
            }
            Err(error) => {
                tracing::info!(%error, "the last plan");
                opening.notice = Some(words.say(Files::GoneFile, &[("reason", &error.to_string())]));
            }
        }
    }
    (opening.plan, opening.is_example) = (example, true);
}

/// Whether there is a display to open a window on.
#[cfg(all(unix, not(target_os = "macos")))]
fn has_display() -> bool {
    ["WAYLAND_DISPLAY", "WAYLAND_SOCKET", "DISPLAY"]
        .iter()
        .any(|name| std::env::var_os(name).is_some_and(|value| !value.is_empty()))
}

/// Elsewhere the system always has one to try.
#[cfg(not(all(unix, not(target_os = "macos"))))]
fn has_display() -> bool {
    true
}

/// So many examples beneath one folder are enough.
const MOST_FOLDERS: u32 = 10_000;

/// Writes the example into a new folder beneath the current one; a plan of the keeper's has the subcommands.
fn without_display(path: Option<&Path>, words: Words) -> Result<ExitCode> {
    if let Some(path) = path {
        return Err(anyhow!(words.say(Errors::NoDisplayForPlan, &[("file", &files::name(path))])));
    }
    let folder = (1..=MOST_FOLDERS)
        .map(|number| if number == 1 { "netfold-example".to_owned() } else { format!("netfold-example-{number}") })
        .map(PathBuf::from)
        .find(|folder| !folder.exists())
        .ok_or_else(|| anyhow!(words.text(Errors::NoDisplay)))?;
    example::write(&folder, words)?;
    crate::complain(&words.say(Errors::NoDisplay, &[("folder", &files::name(&folder))]));
    Ok(ExitCode::SUCCESS)
}
