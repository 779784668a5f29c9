//! What each subcommand does: bytes in, a pure function, bytes out.

use std::path::Path;
use std::process::ExitCode;
use std::time::Instant;

use anyhow::{Result, anyhow};
use care::{Findings, Severity};
use drawing::{Scene, Theme};
use plan::Opened;
use words::Words;
use words::texts::{Errors, Page};
use workup::candidates::Ask;
use workup::{Depth, Workup};

use crate::arguments::{Arguments, Command, Described, Format};
use crate::{example, files, power, shapes, window};

/// Size of an exported map, pixels.
const PICTURE: [f32; 2] = [1440.0, 1080.0];

/// A plan with everything that follows from it.
pub(crate) struct Worked {
    pub(crate) plan: plan::Plan,
    pub(crate) workup: Workup,
    pub(crate) findings: Findings,
    pub(crate) words: Words,
}

impl Worked {
    pub(crate) fn of(opened: Opened, words: Words) -> Self {
        let workup = workup::workup(&opened.plan, Depth::Full);
        let mut findings = care::findings(&opened.plan, &workup, words);
        findings.plan.extend(care::unknown_keys(&opened.unknown, words));
        Self { plan: opened.plan, workup, findings, words }
    }

    pub(crate) fn scene(&self) -> Scene<'_> {
        Scene { plan: &self.plan, workup: &self.workup, findings: &self.findings, words: self.words }
    }

    pub(crate) fn report(&self) -> Vec<u8> {
        exchange::report::json(&self.plan, &self.workup, &self.findings)
    }

    pub(crate) fn page(&self) -> String {
        exchange::page::text(&self.plan, &self.workup, &self.findings, self.words)
    }

    pub(crate) fn picture(&self, format: Format, run: Option<&str>, file: &str) -> Result<Vec<u8>> {
        Ok(match format {
            Format::Geojson => exchange::geojson::write(&self.plan, &self.workup)
                .map_err(|error| anyhow!(exchange::refusal::sentence(self.words, file, &error)))?,
            Format::Svg => {
                let (ink, background) = exchange::picture::map(&self.scene(), PICTURE, Theme::Light);
                exchange::svg::write(&ink, PICTURE, background, &self.plan.title).into_bytes()
            }
            Format::Png => {
                let (ink, background) = exchange::picture::map(&self.scene(), PICTURE, Theme::Light);
                exchange::png::write(&ink, PICTURE, background, 1.0)
            }
            Format::Csv => exchange::compare::csv(&exchange::compare::runs(&self.plan, &self.workup)),
            Format::Spice => power::netlist(&self.plan, run, file, self.words)?.into_bytes(),
        })
    }
}

/// Opens a plan file.
pub(crate) fn open(path: &Path, words: Words) -> Result<Opened> {
    let bytes = files::read(path, words)?;
    plan::read(&bytes).map_err(|error| anyhow!(exchange::refusal::sentence(words, &files::name(path), &error)))
}

fn work_out(path: &Path, words: Words) -> Result<Worked> {
    Ok(Worked::of(open(path, words)?, words))
}

/// Does what was asked.
pub(crate) fn run(arguments: Arguments, since: Instant) -> Result<ExitCode> {
    let language = arguments.language.unwrap_or_default().into();
    let words = Words { language, ..Words::default() };
    let Some(command) = arguments.command else {
        return window::open(arguments.plan.as_deref(), arguments.smoke, words, since);
    };
    match command {
        Command::Report { plan, json } => {
            let worked = work_out(&plan, words)?;
            files::print(&if json { worked.report() } else { worked.page().into_bytes() })?;
        }
        Command::Check { plan } => return check(&work_out(&plan, words)?),
        Command::Sheet { plan, output } => {
            let worked = work_out(&plan, words)?;
            let pdf = fieldsheet::sheet(&worked.scene(), fieldsheet::Runs::All, None, fieldsheet::Paper::A4)
                .map_err(|error| anyhow!(no_sheet(&error, &plan, words)))?;
            files::write(&output, &pdf, words)?;
        }
        Command::Export { plan, to, run, output } => {
            let bytes = work_out(&plan, words)?.picture(to, run.as_deref(), &files::name(&plan))?;
            files::write(&output, &bytes, words)?;
        }
        Command::Import { file, into, output } => {
            files::write(&output, &import(&file, into.as_deref(), words)?, words)?;
        }
        Command::Fit { plan, run, double_back, json } => return crate::fit::run(&plan, &run, double_back, json, words),
        Command::Shapes { plan, nets, coop, walls, sides, json } => {
            let ask = Ask { coop, walls, free_sides: sides, ..Ask::new(nets) };
            shapes::run(&plan, &ask, json, words)?;
        }
        Command::Power { plan, run, json } => power::run(&plan, run.as_deref(), json, words)?,
        Command::Schema { of } => {
            let schema = match of {
                Described::Plan => plan::schema::plan(),
                Described::Report => exchange::report::schema(),
            };
            files::print(format!("{schema:#}\n").as_bytes())?;
        }
        Command::Demo { output } => example::write(&output, words)?,
    }
    Ok(ExitCode::SUCCESS)
}

fn no_sheet(error: &fieldsheet::SheetError, plan: &Path, words: Words) -> String {
    let file = files::name(plan);
    match error {
        fieldsheet::SheetError::NoRuns | fieldsheet::SheetError::NoSuchRun { .. } => {
            words.say(Errors::SheetNoRuns, &[("file", &file)])
        }
        fieldsheet::SheetError::NotWritten { problem } => {
            words.say(Errors::NoSheet, &[("file", &file), ("reason", problem)])
        }
    }
}

/// Prints each finding on a line; says whether one is a danger.
fn check(worked: &Worked) -> Result<ExitCode> {
    let mut lines = String::new();
    for finding in worked.findings.all() {
        let words = worked.words;
        let places: Vec<String> = finding.at.iter().map(|at| words.place(at.east_m, at.north_m)).collect();
        // A name may hold a line's end; a finding stays on one line.
        let message = finding.message.split_whitespace().collect::<Vec<_>>().join(" ");
        let severity = words.text(match finding.severity {
            Severity::Danger => Page::Danger,
            Severity::Warning => Page::Warning,
            Severity::Note => Page::Note,
        });
        let said = match places.as_slice() {
            [] => message,
            places => words.say(Page::At, &[("sentence", &message), ("places", &places.join(", "))]),
        };
        lines.extend([severity, " ", finding.id, ": ", &said, " (", words.source(finding.source), ")\n"]);
    }
    files::print(lines.as_bytes())?;
    let danger = worked.findings.all().any(|finding| finding.severity == Severity::Danger);
    Ok(if danger { ExitCode::from(1) } else { ExitCode::SUCCESS })
}

/// A plan as it would be written back, or a new one from a boundary, or one with heights.
fn import(path: &Path, into: Option<&Path>, words: Words) -> Result<Vec<u8>> {
    let bytes = files::read(path, words)?;
    let file = files::name(path);
    if exchange::heights::is_heights(&bytes) || into.is_some() {
        return heights(&bytes, &file, into, words);
    }
    match plan::read(&bytes) {
        Ok(opened) => return Ok(plan::write(&opened.plan)),
        // Not a plan, but perhaps a boundary.
        Err(plan::ReadError::NotAPlan { found }) if found != plan::file::FORMAT => {}
        Err(error) => return Err(anyhow!(exchange::refusal::sentence(words, &file, &error))),
    }
    let import =
        exchange::geojson::read(&bytes).map_err(|error| anyhow!(exchange::refusal::sentence(words, &file, &error)))?;
    for note in &import.notes {
        crate::complain(&exchange::refusal::note(words, note));
    }
    Ok(plan::write(&import.plan))
}

/// A plan with the heights of a file; without a plan, a new one that holds them and nothing else.
fn heights(bytes: &[u8], file: &str, into: Option<&Path>, words: Words) -> Result<Vec<u8>> {
    let mut plan = into.map(|path| open(path, words)).transpose()?.map(|opened| opened.plan).unwrap_or_default();
    let import = exchange::heights::read(bytes, &plan)
        .map_err(|error| anyhow!(exchange::heights::sentence(words, file, &error)))?;
    for note in &import.notes {
        crate::complain(&exchange::heights::note(words, note));
    }
    plan.origin = plan.origin.or(import.origin);
    plan.ground.height_grid = Some(std::sync::Arc::new(import.grid));
    Ok(plan::write(&plan))
}
