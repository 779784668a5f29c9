//! Ground under the line: dips, ridges and where further posts go.

use words::texts::Slope as Text;
use workup::Slope;

use super::{Block, Look};
use crate::rows::Row;

/// More panels than this are told by their number: the map shows them.
const MOST_ROWS: usize = 8;

/// The slope of the run on the sheet.
fn slope(look: Look<'_>) -> Option<&Slope> {
    look.worked?.slope.as_ref()
}

/// A block where the ground wants something done.
pub(super) fn block(look: Look<'_>) -> Option<Block> {
    let slope = slope(look).filter(|slope| !slope.uneven.is_empty())?;
    let words = look.words;
    let mut rows: Vec<Row> =
        slope.uneven.iter().take(MOST_ROWS).map(|panel| Row::Plain(care::panel_said(words, panel))).collect();
    if slope.uneven.len() > MOST_ROWS {
        let more = (slope.uneven.len() - MOST_ROWS).to_string();
        rows.push(Row::Plain(words.say(Text::MoreUneven, &[("count", &more)])));
    }
    let gap = words.fine_length(slope.allowed_gap_m);
    Some(Block {
        head: words.text(Text::DipsHead).to_owned(),
        aside: words.say(Text::SheetAside, &[("gap", &gap)]),
        rows,
    })
}

/// Further posts to take along.
pub(super) fn further_posts(look: Look<'_>) -> usize {
    slope(look).map_or(0, |slope| slope.posts().count())
}
