//! Pins and gates in words: one wording for window, report and sheet.

use plan::{GateKind, Pin, PinKind};
use words::{Words, texts::Gates as Text};
use workup::Lay;
use workup::gates::{GateWork, NoRoad, Opening};
use workup::pins::PinWork;

/// A place nearer to a corner than this stands at it, metres.
const AT_CORNER_M: f64 = 0.05;
/// A pin that costs less than this costs nothing, metres: what is printed is half a centimetre at best.
const NOTHING_M: f64 = 0.005;

/// A place on a run's line, by the corner before it: what the keeper sees there, and what an edit elsewhere leaves as it is.
pub fn place_on_line(words: Words, lay: &Lay, along_m: f64) -> String {
    match corner_before(lay, along_m) {
        (number, None) => words.say(Text::AtCorner, &[("number", &number)]),
        (number, Some(past_m)) => words.say(Text::PastCorner, &[("along", &words.length(past_m)), ("number", &number)]),
    }
}

/// The number of the corner before a place of the line, and how far past it that is, metres; `None` where it is at the
/// corner.
pub(crate) fn corner_before(lay: &Lay, along_m: f64) -> (String, Option<f64>) {
    let past_m = |corner_m: f64| {
        let past_m = along_m - corner_m;
        let past_m = if lay.closed { past_m.rem_euclid(lay.line_m) } else { past_m };
        // A place at a corner may lie a hair before it.
        let before_m = if lay.closed { lay.line_m - past_m } else { -past_m };
        if before_m.abs() < AT_CORNER_M { 0.0 } else { past_m }
    };
    let corners = lay.corners.iter().filter(|corner| !corner.end);
    let corners = corners.filter_map(|corner| Some((corner.vertex?, past_m(corner.along_m))));
    let before = corners.filter(|corner| corner.1 >= 0.0).min_by(|one, other| one.1.total_cmp(&other.1));
    // Without a corner before it the line's own beginning counts.
    let (vertex, past_m) = before.unwrap_or((0, along_m));
    ((vertex + 1).to_string(), (past_m >= AT_CORNER_M).then_some(past_m))
}

/// What a pin is called.
pub fn pin_name(words: Words, lay: &Lay, stated: &Pin, pin: &PinWork) -> String {
    let at = pin.along_m.map_or(String::new(), |along_m| place_on_line(words, lay, along_m));
    match (stated.kind, pin.vertex) {
        (PinKind::Start, _) => words.say(Text::PinStart, &[("at", &at)]),
        (PinKind::Join, _) => words.say(Text::PinJoin, &[("at", &at)]),
        (PinKind::Net, _) => {
            words.say(Text::PinNet, &[("net", stated.net.as_deref().unwrap_or_default()), ("at", &at)])
        }
        (PinKind::Corner, Some(vertex)) => words.say(Text::PinCorner, &[("number", &(vertex + 1).to_string())]),
        (PinKind::Corner, None) => words.text(Text::PinLostCorner).to_owned(),
    }
}

/// What a pin costs.
pub fn cost(pin: &PinWork, words: Words) -> String {
    match pin.cost_m {
        _ if !pin.kept => words.text(Text::NotKept).to_owned(),
        None if pin.waits => words.text(Text::CostFollows).to_owned(),
        None => words.text(Text::Kept).to_owned(),
        Some(cost_m) if cost_m < NOTHING_M && pin.proven => words.text(Text::CostsNothing).to_owned(),
        Some(cost_m) => {
            let text = if pin.proven { Text::Costs } else { Text::CostsAbout };
            words.say(text, &[("cost", &words.fine_length(cost_m))])
        }
    }
}

/// Who goes through.
pub fn kind(kind: GateKind, words: Words) -> &'static str {
    words.text(match kind {
        GateKind::Foot => Text::Foot,
        GateKind::Wheels => Text::Wheels,
        GateKind::Coop => Text::Coop,
    })
}

/// What a gate is called, by its place in the run's list.
pub fn name(words: Words, of: GateKind, index: usize) -> String {
    words.say(Text::GateNumber, &[("kind", kind(of, words)), ("number", &(index + 1).to_string())])
}

/// How wide a gate opens.
pub fn clear(opening: &Opening, words: Words) -> String {
    words.say(Text::Clear, &[("clear", &words.fine_length(opening.clear_m))])
}

/// Where and how wide a gate opens.
pub fn opens(opening: &Opening, lay: &Lay, words: Words) -> String {
    let at = place_on_line(words, lay, opening.join_along_m);
    words.say(Text::OpensAt, &[("clear", &words.fine_length(opening.clear_m)), ("at", &at)])
}

/// What is pulled and laid back.
pub fn pulled(opening: &Opening, words: Words) -> String {
    let text = match opening.pulled.len() {
        0 => Text::NonePulled,
        1 => Text::OnePulled,
        _ => Text::Pulled,
    };
    words.say(text, &[("posts", &posts(opening, words)), ("panels", &opening.panels.to_string())])
}

/// What a gate opens: its clear width and place, what is pulled and laid back, its way. One line each.
pub fn figures(gate: &GateWork, lay: &Lay, words: Words) -> Vec<String> {
    let Some(opening) = &gate.opening else {
        let text = if gate.none_left { Text::NoJoinLeft } else { Text::NoJoin };
        return vec![words.text(text).to_owned()];
    };
    let way = match (&gate.road, gate.no_road) {
        (Some(road), _) if road.inside.is_empty() => words.say(Text::Way, &[("way", &words.far(road.length_m))]),
        (Some(road), _) => {
            let ways = [("way", &*words.far(road.length_m)), ("inside", &*words.far(road.inside_m))];
            words.say(Text::WayAndCoop, &ways)
        }
        (None, why) => words
            .text(match why {
                Some(NoRoad::Narrow) => Text::Narrow,
                Some(NoRoad::CoopBlocked) => Text::CoopBlocked,
                Some(NoRoad::OutOfSteps) => Text::OutOfSteps,
                Some(NoRoad::NoGateway) => Text::NoGateway,
                Some(NoRoad::Waiting) => Text::WayFollows,
                Some(NoRoad::Blocked) | None => Text::Blocked,
            })
            .to_owned(),
    };
    vec![opens(opening, lay, words), pulled(opening, words), way]
}

/// The posts that are pulled, by the numbers that the map shows: `12`, `12, 13`, `12 to 15`.
fn posts(opening: &Opening, words: Words) -> String {
    let numbers: Vec<usize> = opening.pulled.iter().map(|post| post + 1).collect();
    match (numbers.first(), numbers.last()) {
        (Some(first), Some(last)) if numbers.len() > 2 && last - first + 1 == numbers.len() => {
            words.say(Text::PostsTo, &[("first", &first.to_string()), ("last", &last.to_string())])
        }
        _ => numbers.iter().map(usize::to_string).collect::<Vec<_>>().join(", "),
    }
}

/// How a gate is opened and shut, step by step, the same for each.
pub fn steps(words: Words) -> [&'static str; 5] {
    [Text::StepOff, Text::StepShutIn, Text::StepOpen, Text::StepShut, Text::StepOn].map(|text| words.text(text))
}
