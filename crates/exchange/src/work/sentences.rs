//! The steps of setting up and taking down as sentences, for the readable report and whoever else shows them.

use plan::{MowWay, Point};
use words::{Words, texts::SettingUp as Text};
use workup::RunWorkup;
use workup::StillToMow;
use workup::setting_up::{Doing, Step, Work};

/// What lies nearer than this is at hand, metres: no way is walked.
const AT_HAND_M: f64 = 1.0;

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
        let drop = words.say(drop, &[("at", &place(work.drop_at, words))]);
        lines.push(words.text(title).to_owned());
        lines.extend([format!("  {}", time(work, words)), format!("  {drop}")]);
        for (index, step) in work.steps.iter().enumerate() {
            let number = format!("{:>2}", index + 1);
            lines.push(format!(
                "  {}",
                words.say(Text::Steps, &[("number", &number), ("step", &timed(work, step, words))])
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
pub fn timed(work: &Work, step: &Step, words: Words) -> String {
    let sentence = sentence(work, step, words);
    // Half a minute and less is not worth a figure.
    if step.minutes < 0.5 {
        return sentence;
    }
    words.say(Text::StepMinutes, &[("step", &sentence), ("minutes", &words.minutes_figure(step.minutes))])
}

/// One step of a piece of work as a sentence.
pub fn sentence(work: &Work, step: &Step, words: Words) -> String {
    let at = |index: usize| step.places.get(index).map(|&at| place(at, words)).unwrap_or_default();
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
            let all: Vec<String> = step.places.iter().map(|&at| place(at, words)).collect();
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

fn place(at: Point, words: Words) -> String {
    words.say(Text::At, &[("east", &words.length(at.east_m)), ("north", &words.length(at.north_m))])
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
        assert!(up[0] == "Setting up" && up[2].contains("taken to lie"), "{}", up[2]);
        assert!(up[3].starts_with("   1. Energizer off."), "{}", up[3]);
        assert!(up[up.len() - 1].contains("Only now let the birds out."));
        let down: Vec<&String> = text.iter().skip_while(|line| !line.is_empty()).skip(1).collect();
        assert!(down[3].contains("tested dead before anyone touches it"), "{}", down[3]);
        assert!(down[4].contains("gate join"), "{}", down[4]);
        assert!(text.iter().all(|line| !line.contains('{')), "every place is filled");
        let grass = grass(&worked.runs[0], Words::default()).map(|row| row.1);
        assert_eq!(
            grass.as_deref(),
            Some("at the lowest live line in 2 days where it grows fast, 10 on average, 41 slowly")
        );
    }
}
