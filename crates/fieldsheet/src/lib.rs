//! The printed page for the field: a PDF of A4 or Letter for each run.
//!
//! A tour: [`contents`] says what stands on the sheet, in words; [`rows`] and [`setting`] put it down as ink; [`map`]
//! is the one drawing at a round scale; [`flow`] fills pages; [`pen`] writes them as a PDF. Figures come from the
//! workup; nothing is worked out here and no file is touched. A sheet is [`page::Page`]s of ink before it is a file,
//! so that a window can show what will be printed.

mod contents;
mod day;
mod flow;
mod keys;
mod known;
mod map;
mod page;
mod paper;
mod pen;
mod room;
mod rows;
mod setting;
mod table_rows;

use drawing::Scene;

pub use day::Day;
pub use keys::{Group as KeyGroup, key_pages, keys};
pub use page::{Framed, Page};
pub use paper::Paper;

use contents::Look;

/// Which runs get a sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Runs {
    /// Each of the plan's, one after the other.
    #[default]
    All,
    /// One, by its place in the plan's list.
    One(usize),
}

/// Why there is no sheet.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SheetError {
    /// `sheet/no-runs`: the plan has no run.
    #[error("sheet/no-runs")]
    NoRuns,
    /// `sheet/no-such-run`: the plan has no run at that place.
    #[error("sheet/no-such-run: {run}")]
    NoSuchRun {
        /// The place asked for, from 0.
        run: usize,
    },
    /// `sheet/not-written`: the file could not be made.
    #[error("sheet/not-written: {problem}")]
    NotWritten {
        /// What the writer says.
        problem: String,
    },
}

/// The sheets as a PDF file: the same scene, day and paper give the same bytes.
///
/// # Errors
/// See [`SheetError`].
pub fn sheet(scene: &Scene<'_>, runs: Runs, day: Option<Day>, paper: Paper) -> Result<Vec<u8>, SheetError> {
    let pages = pages(scene, runs, day, paper)?;
    let language = scene.words.language.tag();
    let title = match runs {
        Runs::One(run) => care::run_name(&scene.plan.runs[run]),
        Runs::All => &scene.plan.title,
    };
    pen::write(&pages, title, language).map_err(|problem| SheetError::NotWritten { problem })
}

/// The sheets as ink, page by page.
///
/// # Errors
/// See [`SheetError`].
pub fn pages(scene: &Scene<'_>, runs: Runs, day: Option<Day>, paper: Paper) -> Result<Vec<Page>, SheetError> {
    let wanted = match runs {
        Runs::One(run) => run..run + 1,
        Runs::All => 0..scene.plan.runs.len(),
    };
    if wanted.is_empty() {
        return Err(SheetError::NoRuns);
    }
    let runs = wanted.map(|run| {
        let look = Look::at(scene, run).ok_or(SheetError::NoSuchRun { run })?;
        Ok(flow::pages(scene, run, look.contents(day), paper))
    });
    Ok(flow::numbered(runs.collect::<Result<_, _>>()?, scene.words, paper))
}
