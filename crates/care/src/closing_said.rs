//! Whether a run is shut in words: one wording for page, foot, list, map, sheet and report.

use plan::{Plan, Run};
use words::Words;
use words::texts::Closing as Text;
use workup::{Closing, ClosingSide, Lay, RunWorkup, ShutBy};

use crate::names::{self, Named};
use crate::run_name;

/// Below this a gap is said to the centimetre, metres.
const FINE_M: f64 = 1.0;

/// What a run shuts in, or else what of it is open: `625 m²`, `12.0 m open`; `None` where its nets could not be laid, or
/// where its line crosses what shuts it.
pub fn figure(worked: &RunWorkup, words: Words) -> Option<String> {
    let closing = worked.closing.as_ref()?;
    match closing.ground_m2 {
        Some(ground_m2) => Some(words.area(ground_m2)),
        None => open(closing, words),
    }
}

/// What of it is open: `12.0 m open`.
pub fn open(closing: &Closing, words: Words) -> Option<String> {
    (!closing.is_shut()).then(|| words.say(Text::Gap, &[("length", &gap(closing, words))]))
}

/// A line's unit with what is open of it: `m, open`, or `m, 12.0 m open` where that is not what it is short.
pub fn unit_of_line(worked: &RunWorkup, unit: &str, words: Words) -> String {
    let closing = worked.closing.as_ref().and_then(|closing| Some((closing, open(closing, words)?)));
    match closing.zip(worked.lay.as_ref()) {
        None => unit.to_owned(),
        Some(((closing, _), lay)) if is_short_alone(closing, lay) => words.say(Text::LineOpen, &[("unit", unit)]),
        Some(((_, open), _)) => format!("{unit}, {open}"),
    }
}

/// Whether a run that is open is so for want of netting on its line alone.
fn is_short_alone(closing: &Closing, lay: &Lay) -> bool {
    closing.gap_m - lay.short_m < geometry::MEET_M
}

/// That it is open, by how much, and what closes it; `None` of a run that is shut.
pub fn open_sentence(plan: &Plan, worked: &RunWorkup, words: Words) -> Option<String> {
    let (closing, lay) = (worked.closing.as_ref()?, worked.lay.as_ref()?);
    let ShutBy::Nothing { may } = &closing.by else { return None };
    let text = if is_short_alone(closing, lay) { Text::OpenOutline } else { Text::OpenLine };
    let open = words.say(text, &[("gap", &gap(closing, words)), ("line", &words.length(lay.line_m))]);
    let closes = if may.is_empty() {
        let rolls = rolls(plan, lay, closing.gap_m);
        let text = if rolls == 1 { Text::OneRoll } else { Text::Rolls };
        words.say(text, &[("count", &rolls.to_string())])
    } else {
        words.say(Text::MayClose, &[("sides", &words::capital(&sides(plan, may, words)))])
    };
    Some(format!("{open} {closes}"))
}

/// What shuts it beside its own netting: `Shut by 63.0 m of line and 20.0 m along the wall.`; `None` where nothing does.
pub fn shut_sentence(plan: &Plan, worked: &RunWorkup, words: Words) -> Option<String> {
    let (closing, lay) = (worked.closing.as_ref()?, worked.lay.as_ref()?);
    let ShutBy::Sides { along } = &closing.by else { return None };
    let netted_m = lay.covered_m();
    Some(words.say(
        Text::ShutBySides,
        &[
            ("line", &words.length(netted_m)),
            ("way", &words.length(closing.gap_m)),
            ("sides", &sides(plan, along, words)),
        ],
    ))
}

/// Its ground as a page says it, with what else than netting shuts it; that it is open where it is.
pub fn sentence(plan: &Plan, worked: &RunWorkup, words: Words, ground: impl FnOnce(f64) -> String) -> Option<String> {
    if let Some(open) = open_sentence(plan, worked, words) {
        return Some(open);
    }
    let ground = worked.ground_m2().map(ground);
    match (ground, shut_sentence(plan, worked, words)) {
        (Some(ground), Some(shut)) => {
            let ground = ground.trim_end_matches('.');
            Some(words.say(Text::GroundAndSides, &[("ground", ground), ("shut", &shut)]))
        }
        (ground, shut) => ground.or(shut),
    }
}

fn gap(closing: &Closing, words: Words) -> String {
    if closing.gap_m < FINE_M { words.fine_length(closing.gap_m) } else { words.length(closing.gap_m) }
}

/// How many rolls of the kind that its chain ends with reach over a gap.
fn rolls(plan: &Plan, lay: &Lay, gap_m: f64) -> usize {
    let last = lay.nets.last().and_then(|net| plan.net_kind(&net.kind));
    let of_store = || plan.store.nets.first();
    let roll_m = last.or_else(of_store).map_or(0.0, |net| net.length_m);
    if roll_m > 0.0 { ((gap_m / roll_m).ceil() as usize).max(1) } else { 1 }
}

fn sides(plan: &Plan, sides: &[ClosingSide], words: Words) -> String {
    let of_run = |run: &Run| words.say(Text::NettingOf, &[("run", run_name(run))]);
    let said = |side: &ClosingSide| match *side {
        ClosingSide::Wall(wall) => names::amid(plan, words, Named::Wall(wall)),
        ClosingSide::Run(run) => plan.runs.get(run).map(of_run).unwrap_or_default(),
    };
    sides.iter().map(said).collect::<Vec<_>>().join(", ")
}
