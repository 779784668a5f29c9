//! Corners by tape: what one keeper with one tape measures to set the run out on the ground.

use care::tape_said::{self, TapedRow};
use words::texts::Sheet as Text;
use workup::tape::{TapedRun, taped};

use super::{Block, Look};
use crate::known::Known;
use crate::map::Marked;
use crate::rows::Row;
use crate::table_rows::{TableRow, table};

/// The block, what the branches' corners are called on the map, and the known places on it; none for a run that is no line.
pub(super) fn block(look: Look<'_>) -> Option<(Block, Vec<Marked>, Vec<Marked>)> {
    let taped = taped(look.scene.plan, look.run)?;
    let words = look.words;
    let heads = TableRow::new(None, tape_said::heads(words).map(str::to_owned));
    let row = |row: TapedRow| TableRow::new(Some(row.name.clone()), row.cells());
    let mut all: Vec<TableRow> =
        std::iter::once(heads).chain(tape_said::rows(&taped, words).into_iter().map(row)).collect();
    let mut said = Vec::new();
    for (sentence, rows) in tape_said::branches(&taped, words) {
        said.push((all.len(), sentence));
        all.extend(rows.into_iter().map(row));
    }
    // The columns of all are alike; the sentences stand between them.
    let mut rows = table(all);
    for (place, sentence) in said.into_iter().rev() {
        rows.insert(place, Row::Note(sentence));
    }
    rows.push(Row::Note(tape_said::note(&taped, words)));
    let known = Known::of(look.scene.plan, look.run, &taped, words);
    rows.extend(known.off_map.into_iter().map(Row::Note));
    let aside = tape_said::known(look.scene.plan, &taped, words);
    let marked = marked(look, &taped);
    Some((Block { head: look.text(Text::ByTape), aside, rows }, marked, known.on_map))
}

/// The branches' corners with their names; the map has numbers for the run's alone.
fn marked(look: Look<'_>, taped: &TapedRun) -> Vec<Marked> {
    let names = tape_said::branch_names(taped, look.words).into_iter();
    names
        .filter_map(|(name, branch, corner)| {
            let at = *look.run.branches.get(branch)?.outline.get(corner)?;
            Some(Marked { name, at })
        })
        .collect()
}
