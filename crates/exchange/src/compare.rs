//! Runs side by side: what is compared stands here once, for the window's table, the report, the clipboard and CSV.

use plan::Plan;
use words::{Words, texts::Compare as Text};
use workup::{Compared, Workup, stocking};

/// One row of the table: a run of the plan, or a shape that was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Its name.
    pub name: String,
    /// Its figures.
    pub figures: Compared,
}

/// What is compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Column {
    /// Area enclosed.
    Ground,
    /// Birds that the chosen rule allows.
    Birds,
    /// Nets in the chain.
    Nets,
    /// Netting beyond the line.
    Spare,
    /// Posts on the line.
    Posts,
    /// Corners that fall on posts.
    OnPosts,
    /// Corners and ends that need a brace.
    Braces,
    /// Ground to mow.
    Strip,
    /// Minutes to mow it.
    Mow,
    /// Minutes to set up.
    SetUp,
    /// The range of the weakest post.
    Weakest,
}

/// Which of two figures of a column is the better one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Better {
    /// The greater.
    More,
    /// The lesser.
    Fewer,
    /// Neither.
    Neither,
}

impl Column {
    /// Every column in the order of the table.
    pub const ALL: [Column; 11] = [
        Column::Ground,
        Column::Birds,
        Column::Nets,
        Column::Spare,
        Column::Posts,
        Column::OnPosts,
        Column::Braces,
        Column::Strip,
        Column::Mow,
        Column::SetUp,
        Column::Weakest,
    ];

    /// Its head.
    pub fn head(self) -> Text {
        match self {
            Column::Ground => Text::Ground,
            Column::Birds => Text::Birds,
            Column::Nets => Text::Nets,
            Column::Spare => Text::Spare,
            Column::Posts => Text::Posts,
            Column::OnPosts => Text::OnPosts,
            Column::Braces => Text::Braces,
            Column::Strip => Text::Strip,
            Column::Mow => Text::Mow,
            Column::SetUp => Text::SetUp,
            Column::Weakest => Text::Weakest,
        }
    }

    /// Which figure is the better one.
    pub fn better(self) -> Better {
        match self {
            Column::Ground | Column::Birds | Column::OnPosts => Better::More,
            Column::Weakest => Better::Neither,
            _ => Better::Fewer,
        }
    }

    /// The figure by which rows are ordered; `None` where it could not be worked out.
    pub fn value(self, figures: &Compared) -> Option<f64> {
        let count = |count: Option<usize>| count.map(|count| count as f64);
        match self {
            Column::Ground => figures.area_m2,
            Column::Birds => figures.birds.map(f64::from),
            Column::Nets => count(figures.nets),
            Column::Spare => figures.spare_m,
            Column::Posts => count(figures.posts),
            Column::OnPosts => figures.on_posts.map(|(on, all)| if all == 0 { 1.0 } else { on as f64 / all as f64 }),
            Column::Braces => count(figures.braces),
            Column::Strip => figures.strip_m2,
            Column::Mow => figures.mow_minutes,
            Column::SetUp => figures.set_up_minutes,
            Column::Weakest => figures.weakest.map(|weakest| weakest.peak_kv),
        }
    }

    /// The figure as it is read, and its unit; `None` where it could not be worked out.
    pub fn shown(self, figures: &Compared, words: Words) -> Option<(String, &'static str)> {
        let value = self.value(figures)?;
        Some(match self {
            Column::Ground | Column::Strip => words.area_parts(value),
            // What is missing is said to be: a minus is easily read over.
            Column::Spare if value < 0.0 => {
                let (figure, unit) = words.length_parts(-value);
                (words.say(Text::ShortFigure, &[("figure", &figure)]), unit)
            }
            Column::Spare => words.length_parts(value),
            Column::Mow | Column::SetUp => (words.minutes_figure(value), words.text(Text::MinutesUnit)),
            Column::OnPosts => {
                let (on, all) = figures.on_posts?;
                let (on, all) = (on.to_string(), all.to_string());
                (words.say(Text::OnPostsFigures, &[("on", &on), ("all", &all)]), "")
            }
            Column::Weakest => {
                let weakest = figures.weakest?;
                // The band and the faults that are counted stand with the run itself; columns are narrow.
                (care::volts_said::weakest_parts(&weakest, words).0, "kV")
            }
            Column::Birds | Column::Nets | Column::Posts | Column::Braces => (words.number(value, 0), ""),
        })
    }
}

/// The runs of a plan, in its order.
pub fn runs(plan: &Plan, workup: &Workup) -> Vec<Entry> {
    let rule = stocking::chosen(plan);
    let entry = |(run, worked)| Entry { name: care::run_name(run).to_owned(), figures: Compared::of(worked, rule) };
    plan.runs.iter().zip(&workup.runs).map(entry).collect()
}

/// The table for another program's page: a line a row, cells parted by tabs.
pub fn text(entries: &[Entry], words: Words) -> String {
    let cell = |column: Column, figures: &Compared| {
        let shown = column.shown(figures, words);
        let shown = shown.map(|(figure, unit)| format!("{figure} {unit}").trim_end().to_owned());
        shown.unwrap_or_else(|| words.text(Text::Unknown).to_owned())
    };
    let line = |first: &str, cells: Vec<String>| format!("{first}\t{}\n", cells.join("\t"));
    let heads = Column::ALL.iter().map(|column| words.text(column.head()).to_owned()).collect();
    let mut table = line(words.text(Text::Shape), heads);
    for entry in entries {
        // A tab in a name would begin a cell.
        let name = entry.name.replace(['\t', '\n', '\r'], " ");
        table += &line(&name, Column::ALL.iter().map(|&column| cell(column, &entry.figures)).collect());
    }
    table
}

/// The table as CSV (RFC 4180): units in the heads, plain numbers, an empty cell where nothing could be worked out.
pub fn csv(entries: &[Entry]) -> Vec<u8> {
    const HEADS: [&str; 15] = [
        "name",
        "area_m2",
        "birds",
        "nets",
        "spare_m",
        "posts",
        "corners_on_posts",
        "corners",
        "braces",
        "strip_m2",
        "mow_minutes",
        "set_up_minutes",
        "weakest_kv",
        "weakest_low_kv",
        "weakest_high_kv",
    ];
    fn cell<T: ToString>(value: Option<T>) -> String {
        value.map_or_else(String::new, |value| value.to_string())
    }
    let mut writer = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    let rows = entries.iter().map(|Entry { name, figures }| {
        let weakest = figures.weakest.as_ref();
        [
            name.clone(),
            cell(figures.area_m2),
            cell(figures.birds),
            cell(figures.nets),
            cell(figures.spare_m),
            cell(figures.posts),
            cell(figures.on_posts.map(|(on, _)| on)),
            cell(figures.on_posts.map(|(_, all)| all)),
            cell(figures.braces),
            cell(figures.strip_m2),
            cell(figures.mow_minutes),
            cell(figures.set_up_minutes),
            cell(weakest.map(|weakest| weakest.peak_kv)),
            cell(weakest.map(|weakest| weakest.low_kv)),
            cell(weakest.map(|weakest| weakest.high_kv)),
        ]
    });
    for row in std::iter::once(HEADS.map(str::to_owned)).chain(rows) {
        writer.write_record(&row).expect("rows of one width go into memory");
    }
    writer.into_inner().expect("memory takes what it is given")
}
