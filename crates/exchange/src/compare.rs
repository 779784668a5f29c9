//! The runs of a plan side by side: one column a run, figures as words.

use plan::Plan;
use words::{Words, texts::Page as Text};
use workup::{RunWorkup, Workup};

/// A table of runs.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// Names of the runs.
    pub columns: Vec<String>,
    /// What is compared.
    pub rows: Vec<Row>,
}

/// One thing compared.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What it is.
    pub label: &'static str,
    /// A figure a run; a dash where it cannot be worked out.
    pub cells: Vec<String>,
}

impl Row {
    /// The label at 0, then the cells.
    pub(crate) fn cell(&self, column: usize) -> &str {
        match column.checked_sub(1) {
            None => self.label,
            Some(index) => self.cells.get(index).map_or("", String::as_str),
        }
    }
}

type Figure = fn(&RunWorkup, Words) -> Option<String>;

/// The runs of a plan side by side.
pub fn table(plan: &Plan, workup: &Workup, words: Words) -> Table {
    let figures: [(Text, Figure); 9] = [
        (Text::Ground, |run, words| Some(words.area(run.lay.as_ref()?.area_m2))),
        (Text::Nets, |run, _| Some(run.lay.as_ref()?.nets.len().to_string())),
        (Text::Posts, |run, _| Some(run.lay.as_ref()?.posts.len().to_string())),
        (Text::OnPosts, on_posts),
        (Text::Braces, |run, _| Some(run.lay.as_ref()?.braces().to_string())),
        (Text::Strip, |run, words| Some(words.area(run.strip.as_ref()?.area_m2))),
        (Text::Mow, |run, words| Some(words.minutes_figure(run.strip.as_ref()?.minutes))),
        (Text::SetUpShort, |run, words| Some(words.minutes_figure(run.lay.as_ref()?.set_up_minutes))),
        (Text::WeakestShort, weakest),
    ];
    Table {
        columns: plan.runs.iter().map(|run| care::run_name(run).to_owned()).collect(),
        rows: figures
            .iter()
            .map(|(label, figure)| Row {
                label: words.text(*label),
                cells: workup.runs.iter().map(|run| figure(run, words).unwrap_or_else(|| "–".to_owned())).collect(),
            })
            .collect(),
    }
}

fn on_posts(run: &RunWorkup, words: Words) -> Option<String> {
    let (on, all) = run.lay.as_ref()?.corners_on_posts();
    Some(words.say(Text::OnPostsFigures, &[("on", &on.to_string()), ("all", &all.to_string())]))
}

fn weakest(run: &RunWorkup, words: Words) -> Option<String> {
    let weakest = run.volts.as_ref()?.weakest?;
    // A reading does not narrow the range yet: it is not fitted.
    let range = words.kilovolts_range(weakest.low_kv, weakest.high_kv);
    Some(if weakest.measured { range } else { format!("{range}, {}", words.text(Text::NotMeasuredYet)) })
}
