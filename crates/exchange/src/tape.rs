//! Corners by tape as lines of plain text.

use care::tape_said::{self, TapedRow};
use plan::{Plan, Run};
use words::Words;
use words::texts::Sheet as Text;

/// Space between two columns, letters.
const APART: usize = 2;

/// How the corners of a run and of its branches are set out; nothing for a run that is no line.
pub(crate) fn lines(plan: &Plan, run: &Run, words: Words) -> Vec<String> {
    let Some(taped) = workup::tape::taped(plan, run) else { return Vec::new() };
    let cells = |row: TapedRow| {
        let name = row.name.clone();
        let [first, second, lies, next] = row.cells();
        [name, first, second, lies, next]
    };
    let [first, second, lies, next] = tape_said::heads(words).map(str::to_owned);
    let mut of_run = vec![[String::new(), first, second, lies, next]];
    of_run.extend(tape_said::rows(&taped, words).into_iter().map(cells));
    let branches = tape_said::branches(&taped, words);
    let mut blocks = vec![(None, of_run)];
    blocks.extend(branches.into_iter().map(|(said, rows)| (Some(said), rows.into_iter().map(cells).collect())));
    // One set of columns for all.
    let wide = |column: usize| {
        let all = blocks.iter().flat_map(|(_, rows)| rows.iter().map(move |row| row[column].chars().count()));
        all.max().unwrap_or_default()
    };
    let wide: [usize; 5] = std::array::from_fn(wide);
    let head = format!("{}: {}", words.text(Text::ByTape), tape_said::known(plan, &taped, words));
    let mut lines = vec![head];
    for (said, rows) in blocks {
        lines.extend(said.map(|said| format!("  {said}")));
        for row in rows {
            let cells = row.iter().zip(wide).map(|(cell, wide)| {
                let before = wide - cell.chars().count();
                format!("{}{cell}", " ".repeat(before + APART))
            });
            lines.push(cells.collect());
        }
    }
    lines.push(format!("  {}", tape_said::note(&taped, words)));
    lines
}
