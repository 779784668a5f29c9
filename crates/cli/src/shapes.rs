//! `netfold shapes`: the largest runs of each family, as a table or as JSON.

use std::path::Path;

use anyhow::{Result, anyhow};
use serde_json::{Value, json};
use words::{Words, texts::Candidates as Text};
use workup::candidates::{Ask, Candidate, CandidateFault, CandidateNote, CandidateSearch, Family};

use crate::{commands, files};

/// Finds the largest runs and prints them.
pub(crate) fn run(path: &Path, ask: &Ask, as_json: bool, words: Words) -> Result<()> {
    let plan = commands::open(path, words)?.plan;
    let refused = |fault: &CandidateFault| anyhow!(sentence(fault, &files::name(path), words));
    let mut search = CandidateSearch::new(&plan, ask).map_err(|fault| refused(&fault))?;
    while search.step() {}
    let found = search.best();
    if found.is_empty() {
        return Err(refused(&CandidateFault::NothingFits { coop: ask.coop }));
    }
    let notes: Vec<String> = search.notes().iter().map(|note| noted(note, words)).collect();
    let printed =
        if as_json { format!("{:#}\n", value(&found, &notes)) } else { table(&found, &notes, ask.nets, words) };
    files::print(printed.as_bytes())
}

/// The answer by the keys that scripts rely on.
fn value(found: &[Candidate], notes: &[String]) -> Value {
    let points = |points: &[plan::Point]| points.iter().map(|at| json!([at.east_m, at.north_m])).collect::<Vec<_>>();
    let families = found.iter().map(|one| {
        let whole = one.whole_panels.as_ref().map(|whole| {
            json!({
                "area_m2": whole.area_m2,
                "outline": points(&whole.outline),
                "side_panels": whole.side_panels,
            })
        });
        let mut entry = json!({
            "family": one.family.id(),
            "area_m2": one.area_m2,
            "area_bound_m2": one.area_bound_m2,
            "outline": points(&one.outline),
            "line_m": one.line_m,
            "nets": one.nets.len(),
            "kinds": one.nets,
            "spare_m": one.spare_m,
            "corners": one.corners,
            "braces": one.braces,
            "strip_m2": one.strip_m2,
            "minutes": one.minutes,
            "weakest_kv": one.weakest_kv,
            "whole_panels": whole,
        });
        // Only what leans on one has a wall.
        if let Some(wall) = one.wall {
            entry["wall"] = json!(wall);
        }
        entry
    });
    json!({ "families": families.collect::<Vec<_>>(), "notes": notes })
}

/// The candidates as a table, then what should be known.
fn table(found: &[Candidate], notes: &[String], nets: u32, words: Words) -> String {
    let heads = [
        Text::Shape,
        Text::Area,
        Text::NoLarger,
        Text::Line,
        Text::Spare,
        Text::Corners,
        Text::Braces,
        Text::Strip,
        Text::Minutes,
        Text::Weakest,
        Text::WholePanels,
    ];
    let mut rows = vec![heads.map(|head| words.text(head).to_owned())];
    let unknown = || words.text(Text::Unknown).to_owned();
    for one in found {
        let count = |count: Option<usize>| count.map_or_else(unknown, |count| count.to_string());
        rows.push([
            shape(one, words),
            words.area(one.area_m2),
            words.area(one.area_bound_m2),
            words.length(one.line_m),
            one.spare_m.map_or_else(unknown, |spare_m| words.length(spare_m)),
            count(one.corners),
            count(one.braces),
            one.strip_m2.map_or_else(unknown, |strip_m2| words.area(strip_m2)),
            one.minutes.map_or_else(unknown, |minutes| words.minutes_figure(minutes)),
            one.weakest_kv.map_or_else(unknown, |weakest_kv| words.kilovolts(weakest_kv)),
            one.whole_panels.as_ref().map_or_else(unknown, |whole| words.area(whole.area_m2)),
        ]);
    }
    let widths: Vec<usize> =
        (0..heads.len()).map(|column| rows.iter().map(|row| row[column].chars().count()).max().unwrap_or(0)).collect();
    let count = nets.to_string();
    let owned =
        if nets == 1 { words.text(Text::OneNet).to_owned() } else { words.say(Text::Nets, &[("count", &count)]) };
    let mut text = words.say(Text::Title, &[("nets", &owned)]) + "\n\n";
    for row in rows {
        let cells = row.iter().zip(&widths).enumerate().map(|(column, (cell, &width))| {
            // Names from the left, figures to the right.
            if column == 0 { format!("{cell:<width$}") } else { format!("{cell:>width$}") }
        });
        text.extend([cells.collect::<Vec<_>>().join("  ").trim_end(), "\n"]);
    }
    for note in notes {
        text.extend(["\n", note, "\n"]);
    }
    text.extend(["\n", words.text(Text::NoWarranty), "\n"]);
    text
}

fn shape(one: &Candidate, words: Words) -> String {
    let family = words.text(match one.family {
        Family::Square => Text::Square,
        Family::Rectangle => Text::Rectangle,
        Family::Hexagon => Text::Hexagon,
        Family::Octagon => Text::Octagon,
        Family::Round => Text::Round,
        Family::Free => Text::Free,
    });
    match one.wall {
        Some(wall) => words.say(Text::AtWall, &[("family", family), ("number", &(wall + 1).to_string())]),
        None => family.to_owned(),
    }
}

fn noted(note: &CandidateNote, words: Words) -> String {
    match note {
        CandidateNote::KeepOutOutside { name } => words.say(Text::NoteOutside, &[("name", name)]),
        CandidateNote::KeepOutsOverlap { first, second } => {
            words.say(Text::NoteOverlap, &[("first", first), ("second", second)])
        }
        CandidateNote::PaddockInParts { count } => words.say(Text::NoteParts, &[("count", &count.to_string())]),
        CandidateNote::NoWall => words.text(Text::NoteNoWall).to_owned(),
    }
}

/// Why there are no candidates, as one sentence.
fn sentence(fault: &CandidateFault, file: &str, words: Words) -> String {
    let plain = |text: Text| words.say(text, &[("file", file)]);
    match fault {
        CandidateFault::NoBoundary => plain(Text::NoBoundary),
        CandidateFault::BadBoundary { at: Some(at) } => {
            let at = format!("[{:.2}, {:.2}]", at.east_m, at.north_m);
            words.say(Text::CrossedBoundary, &[("file", file), ("at", &at)])
        }
        CandidateFault::BadBoundary { at: None } => plain(Text::BadBoundary),
        CandidateFault::BadKeepOut { name } => words.say(Text::BadKeepOut, &[("file", file), ("name", name)]),
        CandidateFault::BadClearance => plain(Text::BadClearance),
        CandidateFault::NoNets => plain(Text::NoNets),
        CandidateFault::NetsAsked { asked, owned } => {
            let places = [("file", file), ("asked", &*asked.to_string()), ("owned", &*owned.to_string())];
            words.say(Text::NetsAsked, &places)
        }
        CandidateFault::BadNet { id } => words.say(Text::BadNet, &[("file", file), ("id", id)]),
        CandidateFault::TooFewPanels { panels } => {
            words.say(Text::TooFewPanels, &[("file", file), ("panels", &panels.to_string())])
        }
        CandidateFault::Sides { asked, most } => {
            words.say(Text::SidesAsked, &[("asked", &asked.to_string()), ("most", &most.to_string())])
        }
        CandidateFault::NoCoop => plain(Text::NoCoop),
        CandidateFault::BadCoop => plain(Text::BadCoop),
        CandidateFault::CoopOutside => plain(Text::CoopOutside),
        CandidateFault::CoopInKeepOut { name } => words.say(Text::CoopInKeepOut, &[("file", file), ("name", name)]),
        CandidateFault::NothingFits { coop: false } => plain(Text::NothingFits),
        CandidateFault::NothingFits { coop: true } => plain(Text::NothingFitsCoop),
    }
}
