//! Corners and ends of the netting: where each is, what it will do, and where its stake goes.

use words::texts::Sheet as Text;
use workup::{Corner, Lay, Verdict};

use super::{Block, Look, SAME_PLACE_M, number};
use crate::rows::Row;
use crate::table_rows::{TableRow, Words, table};

pub(super) fn block(look: Look<'_>) -> Block {
    let (_, unit) = look.words.length_parts(0.0);
    let mut rows = Vec::new();
    match look.lay() {
        None => {}
        Some(lay) if !lay.corners_judged => rows.push(Row::Plain(look.text(Text::CornersNotJudged))),
        Some(lay) if lay.corners.is_empty() => rows.push(Row::Plain(look.text(Text::NoCorners))),
        Some(lay) => {
            let corners = lay.corners.iter().enumerate().map(|(index, corner)| row(look, lay, index, corner));
            rows.extend(table(std::iter::once(heads(look)).chain(corners).collect()));
            rows.extend(braces(look));
        }
    }
    let aside = look.say(Text::AlongTheLine, &[("unit", unit)]);
    Block { head: look.text(Text::Corners), aside, rows }
}

/// Where the plan says anything of soil classes, pulls or braces: on which words the soil rests, and what holds each
/// corner most cheaply.
fn braces(look: Look<'_>) -> Vec<Row> {
    let stated = plan::bracing::stated(look.scene.plan);
    let (Some(lay), Some(soil)) = (look.lay(), look.scene.workup.soil.as_ref()) else { return Vec::new() };
    if !stated {
        return care::bracing::today_line(look.words, soil).map(Row::Note).into_iter().collect();
    }
    let mut lines = vec![care::bracing::soil_line(look.words, soil)];
    let details = look.worked.and_then(|worked| worked.bracing.as_ref()).map(|bracing| bracing.details.as_slice());
    // Corners that want the same are told together.
    let mut same: Vec<(String, Vec<String>)> = Vec::new();
    for (corner, detail) in lay.corners.iter().zip(details.unwrap_or_default()) {
        let Some(mend) = detail.cheapest() else { continue };
        let plate = number(lay, corner).map_or_else(|| look.text(Text::End), |number| number.to_string());
        let text = care::bracing::mend(look.words, mend);
        match same.iter_mut().find(|(said, _)| *said == text) {
            Some((_, plates)) => plates.push(plate),
            None => same.push((text, vec![plate])),
        }
    }
    lines.extend(
        same.into_iter()
            .map(|(mend, plates)| look.say(Text::CheapestHold, &[("corners", &plates.join(", ")), ("mend", &mend)])),
    );
    // One note: each line by itself would have air over it, and the sheet has little.
    vec![Row::Note(lines.join("\n"))]
}

fn heads(look: Look<'_>) -> TableRow {
    let figures = [Text::HeadAlong, Text::HeadNext, Text::HeadTurn, Text::HeadPost].map(|head| look.text(head));
    let words = Words { corner: look.text(Text::HeadCorner), stake: look.text(Text::HeadStake), tick: false };
    TableRow::new(None, figures).with(words)
}

fn row(look: Look<'_>, lay: &Lay, index: usize, corner: &Corner) -> TableRow {
    let figure = |metres: f64| look.words.length_parts(metres).0;
    let wants_stake = corner.needs_brace() || corner.brace_advised();
    let stake = match (wants_stake, corner.end, corner.dents) {
        (false, ..) => None,
        (true, true, _) => Some(Text::InLine),
        (true, false, true) => Some(Text::Inside),
        (true, false, false) => Some(Text::Outside),
    };
    let off = look.words.length(corner.stake.stand_off_m);
    let plate = number(lay, corner).map_or_else(|| look.text(Text::End), |number| number.to_string());
    let figures = [
        figure(corner.along_m),
        next_m(lay, index).map_or_else(|| "–".to_owned(), figure),
        if corner.end { "–".to_owned() } else { look.words.degrees(corner.turn_deg) },
        posts_at(lay, corner.along_m),
    ];
    let words = Words {
        corner: look.text(match (corner.braced, corner.end, corner.verdict) {
            (true, ..) if corner.brace_too_weak() => Text::BraceWeak,
            (true, ..) => Text::Braced,
            (false, true, _) => Text::EndWillLean,
            (false, false, Verdict::Required) => Text::WillLean,
            (false, false, Verdict::Advised) => Text::MayLean,
            (false, false, Verdict::None) => Text::Stands,
        }),
        stake: stake.map_or_else(|| "–".to_owned(), |text| look.say(text, &[("off", &off)])),
        tick: wants_stake,
    };
    TableRow::new(Some(plate), figures).with(words)
}

/// From a corner or end along the line to the next one; none beyond the last of an open line.
fn next_m(lay: &Lay, index: usize) -> Option<f64> {
    let along_m = lay.corners[index].along_m;
    let least = |places: &mut dyn Iterator<Item = f64>| places.min_by(f64::total_cmp);
    let mut ahead = lay.corners.iter().map(|next| next.along_m - along_m).filter(|next_m| *next_m > SAME_PLACE_M);
    let mut behind = lay.corners.iter().map(|first| first.along_m + lay.line_m - along_m);
    least(&mut ahead).or_else(|| least(&mut behind).filter(|_| lay.closed))
}

/// The post at a place along the line, or both where two stand side by side, as the map counts them.
fn posts_at(lay: &Lay, along_m: f64) -> String {
    let off_m = |post: &workup::Post| {
        let straight_m = (post.along_m - along_m).abs();
        if lay.closed { straight_m.min((lay.line_m - straight_m).abs()) } else { straight_m }
    };
    let nearest_m = lay.posts.iter().map(off_m).fold(f64::INFINITY, f64::min);
    let numbers: Vec<String> = lay
        .posts
        .iter()
        .enumerate()
        .filter(|(_, post)| off_m(post) < nearest_m + SAME_PLACE_M)
        .map(|(index, _)| (index + 1).to_string())
        .collect();
    numbers.join(", ")
}
