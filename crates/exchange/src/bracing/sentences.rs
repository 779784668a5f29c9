//! The readable page's lines on soil, braces and wind, where the plan says anything of them.

use plan::Plan;
use words::{Words, texts::Bracing as Text};
use workup::{RunWorkup, Workup};

/// Label and figures of the soil.
pub(crate) fn soil(plan: &Plan, workup: &Workup, words: Words) -> Option<(&'static str, String)> {
    let soil = workup.soil.as_ref().filter(|soil| plan::bracing::stated(plan) || soil.today.is_some())?;
    Some((words.text(Text::SoilRow), care::bracing::soil_line(words, soil)))
}

/// Label and figures of the wind on a run.
pub(crate) fn wind(plan: &Plan, worked: &RunWorkup, words: Words) -> Option<(&'static str, String)> {
    let wind = &worked.bracing.as_ref().filter(|_| plan::bracing::stated(plan))?.wind;
    let (clean, fouled) = (wind.clean.as_ref()?, wind.fouled.as_ref()?);
    let figures = words.say(
        Text::WindFigures,
        &[
            ("clean", &words.wind(clean.limit_m_per_s)),
            ("fouled", &words.wind(fouled.limit_m_per_s)),
            ("posts", &care::bracing::first_posts_within(words, fouled)),
        ],
    );
    Some((words.text(Text::WindRow), figures))
}

/// What is said of a corner beside its pull and hold.
pub(crate) fn of_corner(plan: &Plan, worked: &RunWorkup, index: usize, words: Words) -> Vec<String> {
    let bracing = worked.bracing.as_ref().filter(|_| plan::bracing::stated(plan));
    let Some(detail) = bracing.and_then(|bracing| bracing.details.get(index)) else { return Vec::new() };
    let mut lines = Vec::new();
    if let Some(judged) = &detail.stated {
        let times = words.number(judged.safety.min(99.0), 1);
        let wanted = words.number(worked.bracing.as_ref().map_or(0.0, |bracing| bracing.wanted), 1);
        let text = if judged.holds { Text::BraceJudged } else { Text::BraceJudgedWeak };
        lines.push(words.say(text, &[("times", &times), ("wanted", &wanted)]));
    }
    match detail.cheapest() {
        Some(mend) => {
            let places = [("mend", care::bracing::mend(words, mend)), ("cost", care::bracing::mend_cost(words, mend))];
            lines.push(words.say(Text::CheapestMend, &places.each_ref().map(|(name, text)| (*name, text.as_str()))));
            lines.extend(care::bracing::cut_off_posts(words, mend));
        }
        None if !detail.mends.is_empty() => lines.push(words.text(Text::NothingHolds).to_owned()),
        None => {}
    }
    lines
}
