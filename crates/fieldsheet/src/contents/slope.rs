//! Slope and wind, where the plan says anything of them: what the line takes on its ground, dips, ridges and where
//! further posts go, and which posts the wind takes first.

use words::texts::{Bracing, Sheet, Slope as Text};
use workup::Slope;

use super::{Block, Look};
use crate::rows::Row;

/// More panels than this are told by their number: the map shows them.
const MOST_ROWS: usize = 8;

/// The slope of the run on the sheet.
fn slope(look: Look<'_>) -> Option<&Slope> {
    look.worked?.slope.as_ref()
}

/// A block where heights are known, a side is stated to rise, or a wind is to be stood.
pub(super) fn block(look: Look<'_>) -> Option<Block> {
    let words = look.words;
    let slope = slope(look);
    let wind = look.worked.and_then(|worked| worked.bracing.as_ref()).map(|bracing| &bracing.wind);
    let asked = wind.and_then(|wind| Some((wind, care::bracing::wind_asked_line(words, wind)?)));
    let mut rows = Vec::new();
    if let Some(slope) = slope {
        rows.push(Row::Caution(care::slope_line(words, slope)));
        rows.extend(slope.uneven.iter().take(MOST_ROWS).map(|panel| Row::Caution(care::panel_said(words, panel))));
        if slope.uneven.len() > MOST_ROWS {
            let more = (slope.uneven.len() - MOST_ROWS).to_string();
            rows.push(Row::Caution(words.say(Text::MoreUneven, &[("count", &more)])));
        }
    }
    if let Some((wind, asked)) = &asked {
        rows.push(Row::Caution(care::bracing::wind_line(words, wind)));
        rows.push(Row::Caution(asked.clone()));
    }
    let head = match (slope, &asked) {
        (None, None) => return None,
        (Some(_), None) => words.text(Text::Head),
        (None, Some(_)) => words.text(Bracing::Wind),
        (Some(_), Some(_)) => words.text(Sheet::SlopeAndWind),
    };
    let gap = slope.filter(|slope| !slope.uneven.is_empty()).map(|slope| words.fine_length(slope.allowed_gap_m));
    let aside = gap.map(|gap| words.say(Text::SheetAside, &[("gap", &gap)])).unwrap_or_default();
    Some(Block { head: head.to_owned(), aside, rows })
}

/// Further posts to take along.
pub(super) fn further_posts(look: Look<'_>) -> usize {
    slope(look).map_or(0, |slope| slope.posts().count())
}
