//! The steps of setting up and taking down as sentences, for the readable report and whoever else shows them.

use plan::{MowWay, Point};
use words::{Words, texts::SettingUp as Text};
use workup::setting_up::{Doing, Step, Work};
use workup::{Lay, RunWorkup, StillToMow};

/// What lies nearer than this is at hand, metres: no way is walked.
const AT_HAND_M: f64 = 1.0;
/// What lies no farther from the line than this is told by its corners, metres.
const ON_LINE_M: f64 = 0.5;
/// What lies no farther past a corner than this is at it, metres; and no farther before it.
const AT_CORNER_M: f64 = 0.1;
const ON_CORNER_M: f64 = 0.05;

/// The lines of the readable report on a run's work, without indent; empty where none could be worked out.
pub fn lines(worked: &RunWorkup, words: Words) -> Vec<String> {
    let mut lines = Vec::new();
    let parts = [
        (Text::SettingUp, (Text::Drop, Text::DropAssumed), &worked.set_up),
        (Text::TakingDown, (Text::LayAt, Text::LayAtAssumed), &worked.taking_down),
    ];
    for (title, (drop, assumed), work) in parts {
        let Some(work) = work else { continue };
        if !lines.is_empty() {
            lines.push(String::new());
        }
        let drop = if work.drop_assumed { assumed } else { drop };
        let drop = words.say(drop, &[("at", &place(work.drop_at, worked.lay.as_ref(), words))]);
        lines.push(words.text(title).to_owned());
        lines.push(format!("  {}", time(work, words)));
        let rule =
            worked.lay.as_ref().filter(|_| title == Text::SettingUp).and_then(|lay| rule_of_thumb(work, lay, words));
        lines.extend(rule.map(|rule| format!("  {rule}")));
        lines.push(format!("  {drop}"));
        for (index, step) in work.steps.iter().enumerate() {
            let number = format!("{:>2}", index + 1);
            lines.push(format!(
                "  {}",
                words
                    .say(Text::Steps, &[("number", &number), ("step", &timed(work, step, worked.lay.as_ref(), words))])
            ));
        }
    }
    lines
}

/// How long and how far, in one phrase.
pub fn time(work: &Work, words: Words) -> String {
    let mut parts = vec![words.say(
        Text::Minutes,
        &[
            ("low", &words.minutes_figure(work.minutes_low)),
            ("high", &words.minutes_figure(work.minutes_high)),
            ("walk", &words.far(work.walk_m)),
            ("carry", &words.far(work.carry_m)),
        ],
    )];
    // Where the search was exact the bound is the answer and says nothing more.
    if work.minutes_low - work.minutes_bound > 0.5 {
        parts.push(words.say(Text::Bound, &[("bound", &words.minutes_figure(work.minutes_bound))]));
    }
    if work.mow_minutes > 0.0 {
        parts.push(words.say(Text::Mowing, &[("minutes", &words.minutes_figure(work.mow_minutes))]));
    }
    parts.join(" ")
}

/// Whether tables and the sheet say other minutes of setting up than the steps: those of a rule of thumb.
pub fn is_by_rule(work: &Work, lay: &Lay) -> bool {
    (lay.set_up_minutes - work.minutes_low).abs() >= 0.5
}

/// The rule of thumb's minutes where tables and the sheet still say those and not the steps'.
pub fn rule_of_thumb(work: &Work, lay: &Lay, words: Words) -> Option<String> {
    is_by_rule(work, lay)
        .then(|| words.say(Text::RuleOfThumb, &[("minutes", &words.minutes_figure(lay.set_up_minutes))]))
}

/// The row on the walk behind the mower: its label and figures; `None` where it could not be worked out.
pub fn mowing(worked: &RunWorkup, words: Words) -> Option<(&'static str, String)> {
    let walk = worked.mow_walk.as_ref()?;
    let places = [("turnings", &*walk.turnings.to_string()), ("corners", &*walk.sharp_corners.to_string())];
    Some((words.text(Text::Turnings), words.say(Text::TurningsFigures, &places)))
}

/// The row on what is left of the strip where nets that stand have been mown for: its label and figures.
pub fn still_to_mow(left: &StillToMow, words: Words) -> (&'static str, String) {
    let (area, walk) = (words.area(left.area_m2), words.far(left.walk_m));
    let places = [("area", &*area), ("walk", &*walk), ("minutes", &*words.minutes_figure(left.minutes))];
    (words.text(Text::StillToMow), words.say(Text::StillToMowFigures, &places))
}

/// The row on when the grass is back: its label and figures; `None` where it could not be worked out.
pub fn grass(worked: &RunWorkup, words: Words) -> Option<(&'static str, String)> {
    let grass = worked.grass?;
    // Whole days, downwards: the mower is wanted before the grass touches.
    let days = |days: f64| words.number(days.floor(), 0);
    let places = [("fast", &*days(grass.fast)), ("mean", &*days(grass.mean)), ("slow", &*days(grass.slow))];
    Some((words.text(Text::Grass), words.say(Text::GrassFigures, &places)))
}

/// One step as a sentence, with its minutes where it takes some.
pub fn timed(work: &Work, step: &Step, lay: Option<&Lay>, words: Words) -> String {
    let sentence = sentence(work, step, lay, words);
    // Half a minute and less is not worth a figure.
    if step.minutes < 0.5 {
        return sentence;
    }
    words.say(Text::StepMinutes, &[("step", &sentence), ("minutes", &words.minutes_figure(step.minutes))])
}

/// One step of a piece of work as a sentence.
pub fn sentence(work: &Work, step: &Step, lay: Option<&Lay>, words: Words) -> String {
    let at = |index: usize| step.places.get(index).map(|&at| place(at, lay, words)).unwrap_or_default();
    let last = at(step.places.len().saturating_sub(1));
    let count = step.places.len().to_string();
    let roll = step.net.and_then(|net| work.order.iter().find(|roll| roll.net == net));
    let number = roll.map(|roll| roll.number.to_string()).unwrap_or_default();
    // Rolls are numbered as they are laid, nets as they lie along the line: both are said.
    let kind = roll.map_or_else(String::new, |roll| {
        words.say(Text::NetOfKind, &[("net", &(roll.net + 1).to_string()), ("kind", &roll.kind)])
    });
    let length = words.far(step.carry_m);
    let text = match step.what {
        Doing::Look if step.places.is_empty() => Text::Look,
        Doing::Look => {
            let all: Vec<String> = step.places.iter().map(|&at| place(at, lay, words)).collect();
            return words.say(Text::LookUp, &[("at", &all.join("; "))]);
        }
        Doing::Canes => Text::Canes,
        Doing::Mow(MowWay::BetweenCanes) => Text::MowBetweenCanes,
        Doing::Mow(MowWay::AlongNet) => Text::MowAlongNet,
        Doing::Mow(MowWay::NotAtAll) => Text::MowNotAtAll,
        Doing::Restand => Text::Restand,
        Doing::Carry(2) => Text::CarryTwo,
        Doing::Carry(_) if step.carry_m < AT_HAND_M => Text::TakeUp,
        Doing::Carry(_) if second_of_trip(work, step) => Text::CarryOn,
        Doing::Carry(_) => Text::CarryOne,
        Doing::RollOut => Text::RollOut,
        Doing::TreadIn => Text::TreadIn,
        Doing::Tie if step.places.len() == 1 => Text::TieOne,
        Doing::Tie => Text::TieMany,
        Doing::Brace => Text::Brace,
        Doing::FurtherPosts if step.places.len() == 1 => Text::FurtherPost,
        Doing::FurtherPosts => Text::FurtherPosts,
        Doing::Power | Doing::PowerOff if let Some(apart_m) = work.energizer_apart_m => {
            let apart = words.length(apart_m);
            let off = step.what == Doing::PowerOff;
            let (text, clip) = if off { (Text::PowerOffApart, at(1)) } else { (Text::PowerApart, at(0)) };
            return words.say(text, &[("at", &clip), ("apart", &apart)]);
        }
        Doing::Power => Text::Power,
        Doing::FarReading => Text::FarReading,
        Doing::Birds => Text::Birds,
        Doing::PowerOff => Text::PowerOff,
        Doing::OpenGate => Text::OpenGate,
        Doing::GoTo => Text::GoTo,
        Doing::Untie if step.places.len() == 1 => Text::Untie,
        Doing::Untie => Text::UntieMany,
        Doing::Fold => Text::Fold,
        Doing::CarryAway(1) if step.carry_m < AT_HAND_M => Text::LayDown,
        Doing::CarryAway(2) => Text::CarryAwayTwo,
        Doing::CarryAway(_) => Text::CarryAwayOne,
    };
    words.say(text, &[("at", &last), ("count", &count), ("number", &number), ("kind", &kind), ("length", &length)])
}

/// Whether a step's roll is not the first of its trip.
fn second_of_trip(work: &Work, step: &Step) -> bool {
    let mine = work.order.iter().position(|roll| Some(roll.net) == step.net);
    mine.is_some_and(|index| index > 0 && work.order[index - 1].trip == work.order[index].trip)
}

/// A place as it is found in the field: by the corner before it on the line, else by the map's metres.
fn place(at: Point, lay: Option<&Lay>, words: Words) -> String {
    if let Some((number, past_m)) = lay.and_then(|lay| past_corner(at, lay)) {
        let number = number.to_string();
        return if past_m < AT_CORNER_M {
            words.say(Text::AtCorner, &[("number", &number)])
        } else {
            words.say(Text::PastCorner, &[("length", &words.length(past_m)), ("number", &number)])
        };
    }
    words.say(Text::At, &[("east", &words.length(at.east_m)), ("north", &words.length(at.north_m))])
}

/// The number of the corner before a place of the line, and how far past it, metres; `None` off the line, and before the
/// first corner of one that is open.
fn past_corner(at: Point, lay: &Lay) -> Option<(usize, f64)> {
    let ends = lay.vertices.iter().copied();
    let back = lay.vertices.first().map(|first| (first.0, lay.line_m)).filter(|_| lay.closed);
    let next = ends.clone().skip(1).chain(back);
    let (off_m, along_m) = ends
        .zip(next)
        .map(|((from, from_m), (to, to_m))| {
            let (east, north) = (to.east_m - from.east_m, to.north_m - from.north_m);
            let (right, up) = (at.east_m - from.east_m, at.north_m - from.north_m);
            let squared = east.mul_add(east, north * north).max(f64::MIN_POSITIVE);
            let share = (right.mul_add(east, up * north) / squared).clamp(0.0, 1.0);
            ((right - share * east).hypot(up - share * north), from_m + share * (to_m - from_m))
        })
        .min_by(|one, other| one.0.total_cmp(&other.0))?;
    if off_m > ON_LINE_M {
        return None;
    }
    let past_m = |corner: &&workup::Corner| {
        let past_m = along_m - corner.along_m;
        let past_m = if lay.closed { past_m.rem_euclid(lay.line_m) } else { past_m };
        // A place at a corner may lie a hair before it.
        let before_m = if lay.closed { lay.line_m - past_m } else { -past_m };
        if before_m.abs() < ON_CORNER_M { 0.0 } else { past_m }
    };
    let corners = lay.corners.iter().filter(|corner| !corner.end && corner.vertex.is_some());
    let corner =
        corners.filter(|corner| past_m(corner) >= 0.0).min_by(|one, other| past_m(one).total_cmp(&past_m(other)))?;
    Some((corner.vertex? + 1, past_m(&corner)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_step_is_numbered_and_the_birds_come_last() {
        let mut plan = plan::Plan::default();
        plan.store.nets.push(plan::NetKind { count: Some(2), ..plan::NetKind::new("long", 50.0, 14) });
        let outline = [(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(Point::from).to_vec();
        plan.runs.push(plan::Run { id: "run".to_owned(), outline, ..plan::Run::default() });
        let worked = workup::workup(&plan, workup::Depth::Quick);
        let text = lines(&worked.runs[0], Words::default());
        let up: Vec<&String> = text.iter().take_while(|line| !line.is_empty()).collect();
        assert!(up[0] == "Setting up" && up[3].contains("taken to lie"), "{}", up[3]);
        assert!(up[2].contains("By rule of thumb it is 33 min"), "{}", up[2]);
        assert!(up[4].starts_with("   1. Energizer off."), "{}", up[4]);
        assert!(up[up.len() - 1].contains("Only now let the birds out."));
        let down: Vec<&String> = text.iter().skip_while(|line| !line.is_empty()).skip(1).collect();
        assert!(down[3].contains("tested dead before anyone touches it"), "{}", down[3]);
        assert!(down[4].contains("gate join"), "{}", down[4]);
        assert!(text.iter().all(|line| !line.contains('{')), "every place is filled");
        // Two nets of a square end at its corners 1 and 3; nothing on the line is told in metres east.
        assert!(text.iter().any(|line| line.contains("Roll it out to corner 3")), "{text:#?}");
        assert!(text.iter().all(|line| !line.contains(" east")), "{text:#?}");
        let lay = worked.runs[0].lay.as_ref();
        let told = |east_m: f64, north_m: f64| place(Point::new(east_m, north_m), lay, Words::default());
        assert_eq!(told(10.0, 0.2), "10.0 m past corner 1");
        assert_eq!(told(0.0, 0.02), "corner 1", "a hair before it");
        assert_eq!(told(0.0, 20.0), "5.0 m past corner 4");
        assert_eq!(told(-3.0, 4.0), "−3.0 m east, 4.0 m north");
        // An energizer that stands apart is walked to, and the clip on the net is told by its corner.
        plan.runs[0].energizer_at = Some(Point::new(-3.0, -4.0));
        let worked = workup::workup(&plan, workup::Depth::Quick);
        let text = lines(&worked.runs[0], Words::default()).join(" ");
        assert!(text.contains("clip on the lead at corner 1; then go to the energizer, 5.0 m from there"), "{text}");
        assert!(text.contains("off where it stands, 5.0 m from the net’s clip, then unclipped at corner 1"), "{text}");
        // One that stands at the feed point is not walked to.
        plan.runs[0].energizer_at = Some(Point::new(0.0, 0.005));
        let worked = workup::workup(&plan, workup::Depth::Quick);
        let text = lines(&worked.runs[0], Words::default()).join(" ");
        assert!(!text.contains("go to the energizer") && !text.contains("off where it stands"), "{text}");
        let grass = grass(&worked.runs[0], Words::default()).map(|row| row.1);
        assert_eq!(
            grass.as_deref(),
            Some("at the lowest live line in 2 days where it grows fast, 10 on average, 41 slowly")
        );
    }
}
