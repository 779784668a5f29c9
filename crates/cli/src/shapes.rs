//! `netfold shapes`: the largest runs of each family, as a table or as JSON.

use std::path::Path;

use anyhow::{Result, anyhow};
use exchange::shapes;
use serde_json::{Value, json};
use words::{Words, texts::Candidates as Text};
use workup::candidates::{Ask, Candidate, CandidateFault, CandidateSearch};

use crate::{commands, files};

/// Finds the largest runs and prints them.
pub(crate) fn run(path: &Path, ask: &Ask, as_json: bool, words: Words) -> Result<()> {
    let plan = commands::open(path, words)?.plan;
    let refused = |fault: &CandidateFault| anyhow!(shapes::refused_of_file(fault, &files::name(path), words));
    let mut search = CandidateSearch::new(&plan, ask).map_err(|fault| refused(&fault))?;
    while search.step() {}
    let found = search.best();
    if found.is_empty() {
        return Err(refused(&CandidateFault::NothingFits { coop: ask.coop }));
    }
    let notes: Vec<String> = search.notes().iter().map(|note| shapes::noted(note, words)).collect();
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
            "spare_m": one.compared.spare_m,
            "corners": one.compared.on_posts.map(|(_, all)| all),
            "birds": one.compared.birds,
            "braces": one.compared.braces,
            "strip_m2": one.compared.strip_m2,
            "minutes": one.compared.set_up_minutes,
            "weakest_kv": one.compared.weakest.map(|weakest| weakest.peak_kv),
            "whole_panels": whole,
        });
        // Only ground that is not level has more to say.
        if let Some(slope) = one.slope {
            entry["slope"] = json!({ "share": slope.share, "short_m": slope.short_m });
        }
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
        let figures = &one.compared;
        let count = |count: Option<usize>| count.map_or_else(unknown, |count| count.to_string());
        rows.push([
            shapes::name(one, words),
            words.area(one.area_m2),
            words.area(one.area_bound_m2),
            words.length(one.line_m),
            figures.spare_m.map_or_else(unknown, |spare_m| match spare_m {
                short_m if short_m < 0.0 => words.say(Text::Short, &[("length", &words.length(-short_m))]),
                spare_m => words.length(spare_m),
            }),
            count(figures.on_posts.map(|(_, all)| all)),
            count(figures.braces),
            figures.strip_m2.map_or_else(unknown, |strip_m2| words.area(strip_m2)),
            figures.set_up_minutes.map_or_else(unknown, |minutes| words.minutes_figure(minutes)),
            figures.weakest.map_or_else(unknown, |weakest| words.kilovolts(weakest.peak_kv)),
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
