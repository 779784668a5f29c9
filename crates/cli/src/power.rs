//! `netfold power`: which energizer keeps the target on how many nets, as a table or as JSON.

use std::path::Path;

use anyhow::{Result, anyhow};
use plan::{Energizer, Plan};
use words::{Words, texts::Power as Text};
use workup::power::{ByGrass, Choice, MOST_NETS, MOST_STORED_J, study};

use crate::{commands, files};

/// The counts of nets that the table shows.
const SHOWN: [usize; 8] = [1, 2, 3, 4, 6, 8, 12, 20];

/// Works the choice out and prints it.
pub(crate) fn run(path: &Path, run: Option<&str>, as_json: bool, words: Words) -> Result<()> {
    let plan = commands::open(path, words)?.plan;
    let file = files::name(path);
    let id = run_of(&plan, run, &file, words)?;
    let study = study(&plan, id);
    let Some(choice) = &study.choice else { return Err(not_worked(&file, id, words)) };
    let worked = workup::workup(&plan, workup::Depth::Quick);
    let found = plan.runs.iter().zip(&worked.runs).find(|(run, _)| run.id == id);
    let printed = if as_json {
        let mut value = exchange::power::value(&plan, &study, choice, words);
        if let Some((run, worked)) = found {
            value["earth"] = exchange::power::earth(&plan, run, worked, words);
        }
        format!("{value:#}\n")
    } else {
        let said = found.map(|(run, worked)| exchange::power::earth_said(&plan, run, worked, words));
        page(&plan, choice, &said.unwrap_or_default(), words)
    };
    files::print(printed.as_bytes())
}

/// The circuit of a run as a netlist.
pub(crate) fn netlist(plan: &Plan, run: Option<&str>, file: &str, words: Words) -> Result<String> {
    let id = run_of(plan, run, file, words)?;
    let wiring = workup::power::wiring(plan, id).ok_or_else(|| not_worked(file, id, words))?;
    Ok(exchange::spice::write(&wiring, &plan.title))
}

/// The run that is named, else the first.
fn run_of<'a>(plan: &'a Plan, run: Option<&'a str>, file: &str, words: Words) -> Result<&'a str> {
    let Some(first) = plan.runs.first() else {
        return Err(anyhow!(words.say(Text::NoRuns, &[("file", file)])));
    };
    let id = run.unwrap_or(&first.id);
    if plan.runs.iter().any(|run| run.id == id) {
        return Ok(id);
    }
    let runs: Vec<String> = plan.runs.iter().map(|run| words.quoted(&run.id)).collect();
    let runs = runs.join(", ");
    Err(anyhow!(words.say(Text::NoSuchRun, &[("file", file), ("run", id), ("runs", &runs)])))
}

fn not_worked(file: &str, run: &str, words: Words) -> anyhow::Error {
    anyhow!(words.say(Text::NotWorked, &[("file", file), ("run", run)]))
}

/// The earth, each energizer in a sentence with its row, then the least stored energy.
fn page(plan: &Plan, choice: &Choice, of_earth: &[String], words: Words) -> String {
    let title = [("run", choice.run.as_str()), ("target", &words.kilovolts(choice.target_kv))];
    let mut text = words.say(Text::Title, &title) + "\n";
    text += &words.say(Text::FenceIs, &[("ohm", &words.number(choice.earth_ohm, 0))]);
    for sentence in of_earth {
        text.extend(["\n", sentence]);
    }
    text += "\n\n";
    let assumed = Energizer::assumed();
    for unit in &choice.units {
        let sheet = plan.store.energizers.iter().find(|other| other.id == unit.id).unwrap_or(&assumed);
        text += &exchange::power::data_sheet(sheet, unit.model, words);
        text.push('\n');
        if unit.model.is_ok() {
            let row = |of: fn(&ByGrass<f64>) -> f64| -> Vec<String> {
                unit.weakest_kv.iter().map(|kv| words.kilovolts(of(kv))).collect()
            };
            let holds = |of: fn(&ByGrass<f64>) -> f64| match unit.holds(choice.target_kv, of) {
                0 => words.text(Text::None).to_owned(),
                count => words.say(Text::Upto, &[("count", &count.to_string())]),
            };
            text += &table(
                &[
                    (Text::Clean, row(|kv| kv.clean), holds(|kv| kv.clean)),
                    (Text::AsItIs, row(|kv| kv.likely), holds(|kv| kv.likely)),
                    (Text::Overgrown, row(|kv| kv.overgrown), holds(|kv| kv.overgrown)),
                ],
                Some(Text::Holds),
                words,
            );
        }
        text.push('\n');
    }
    text += words.text(Text::LeastStored);
    text.push('\n');
    let joules = |found: &[Option<f64>]| -> Vec<String> {
        let most = words.number(MOST_STORED_J, 0);
        let figure = |j: &Option<f64>| match j {
            Some(j) => words.number_up(*j, if *j < 10.0 { 2 } else { 1 }),
            None => words.say(Text::NotWithin, &[("most", &most)]),
        };
        found.iter().map(figure).collect()
    };
    let least = &choice.least_stored_j;
    text += &table(
        &[
            (Text::Clean, joules(&least.clean), String::new()),
            (Text::AsItIs, joules(&least.likely), String::new()),
            (Text::Overgrown, joules(&least.overgrown), String::new()),
        ],
        None,
        words,
    );
    text.extend(["\n", words.text(Text::NoWarranty), "\n"]);
    text
}

/// Rows of figures by nets; names from the left, figures to the right.
fn table(rows: &[(Text, Vec<String>, String)], last: Option<Text>, words: Words) -> String {
    let counts = SHOWN.iter().copied().filter(|&count| count <= MOST_NETS);
    let heads = counts.clone().map(|count| match count {
        1 => words.text(Text::OneNet).to_owned(),
        count => words.say(Text::OfNets, &[("count", &count.to_string())]),
    });
    let mut all = vec![std::iter::once(String::new()).chain(heads).collect::<Vec<String>>()];
    all[0].extend(last.map(|last| words.text(last).to_owned()));
    for (name, figures, end) in rows {
        let mut cells = vec![format!("  {}", words.text(*name))];
        cells.extend(counts.clone().map(|count| figures[count - 1].clone()));
        cells.extend(last.map(|_| end.clone()));
        all.push(cells);
    }
    let columns = all[0].len();
    let width = |column: usize| all.iter().map(|row| row[column].chars().count()).max().unwrap_or(0);
    let widths: Vec<usize> = (0..columns).map(width).collect();
    let mut text = String::new();
    for row in &all {
        let cells = row.iter().zip(&widths).enumerate().map(|(column, (cell, &width))| {
            if column == 0 { format!("{cell:<width$}") } else { format!("{cell:>width$}") }
        });
        text.extend([cells.collect::<Vec<_>>().join("  ").trim_end(), "\n"]);
    }
    text
}
