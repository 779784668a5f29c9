//! The report as a page of plain text: a sentence first, the figures behind it.

use care::{Findings, Severity};
use plan::Plan;
use words::{
    Words,
    texts::{Compare, Faults, Page as Text},
};
use workup::{Compared, Lay, RunWorkup, Verdict, Volts, Workup};

use crate::compare::Column;

/// The page, with a line end.
pub fn text(plan: &Plan, workup: &Workup, findings: &Findings, words: Words) -> String {
    let mut page = Page { plan, words, lines: Vec::new() };
    if !plan.title.is_empty() {
        page.lines.push(plan.title.clone());
        page.lines.push("=".repeat(plan.title.chars().count()));
        page.blank();
    }
    for (index, (run, worked)) in plan.runs.iter().zip(&workup.runs).enumerate() {
        page.run(run, worked, workup);
        page.findings(findings.runs.get(index).map_or(&[], Vec::as_slice));
        page.blank();
    }
    if workup.runs.len() > 1 {
        page.side_by_side(workup);
        page.blank();
    }
    page.lines.push(words.text(Text::Findings).to_owned());
    page.findings(&findings.plan);
    let assumed = plan::assumed(plan);
    if !assumed.is_empty() {
        page.blank();
        page.lines.push(words.text(Text::Assumed).to_owned());
        for assumed in assumed {
            let value = assumed.value.to_string();
            let pair =
                assumed.value.as_array().and_then(|pair| Some((pair.first()?.as_f64()?, pair.get(1)?.as_f64()?)));
            let value = match pair {
                Some((east_m, north_m)) if words.language != words::Language::English => words.place(east_m, north_m),
                _ if assumed.value.is_number() => words.marked(&value),
                _ => value,
            };
            page.lines.push(format!(
                "  {}",
                words.say(
                    Text::AssumedLine,
                    &[("key", &assumed.key), ("value", &value), ("source", words.source(assumed.source))],
                )
            ));
        }
    }
    page.blank();
    page.lines.push(words.text(Text::Cautions).to_owned());
    page.lines.join("\n") + "\n"
}

struct Page<'a> {
    plan: &'a Plan,
    words: Words,
    lines: Vec<String>,
}

/// Width of the column of labels.
const LABEL: usize = 17;

impl Page<'_> {
    fn blank(&mut self) {
        self.lines.push(String::new());
    }

    fn row(&mut self, label: Text, figures: String) {
        self.lines.push(format!("  {:LABEL$}{figures}", self.words.text(label)));
    }

    fn run(&mut self, run: &plan::Run, worked: &RunWorkup, workup: &Workup) {
        let words = self.words;
        let name = care::run_name(run);
        self.lines.push(name.to_owned());
        self.lines.push("-".repeat(name.chars().count()));
        let Some(lay) = &worked.lay else {
            self.lines.push(format!("  {}", words.text(Text::NotWorkedOut)));
            return;
        };
        self.lines.push(format!("  {}", self.sentence(run, worked)));
        self.blank();
        let owned: u64 = self.plan.store.nets.iter().map(|net| u64::from(net.count())).sum();
        let left = if lay.short_m >= geometry::MEET_M {
            words.say(Text::Short, &[("length", &words.length(lay.short_m))])
        } else {
            words.say(Text::Spare, &[("length", &words.length(lay.spare_m))])
        };
        self.row(
            Text::Nets,
            words.say(
                Text::NetsFigures,
                &[
                    ("used", &lay.nets.len().to_string()),
                    ("owned", &owned.to_string()),
                    ("line", &words.length(lay.line_m)),
                    ("left", &left),
                ],
            ),
        );
        self.row(
            Text::Posts,
            words.say(
                if lay.joins() == 1 { Text::PostsOneJoin } else { Text::PostsFigures },
                &[("posts", &lay.posts.len().to_string()), ("joins", &lay.joins().to_string())],
            ),
        );
        let gates = crate::gates::lines(run, worked, words);
        for (label, figures) in gates.into_iter().chain(crate::slope::rows(worked, words)) {
            self.lines.push(format!("  {label:LABEL$}{figures}"));
        }
        if let Some(strip) = &worked.strip {
            self.row(
                Text::Strip,
                words.say(
                    if strip.passes == 1 { Text::StripOnePass } else { Text::StripFigures },
                    &[
                        ("area", &words.area(strip.area_m2)),
                        ("passes", &strip.passes.to_string()),
                        ("walk", &words.far(strip.walk_m)),
                        ("minutes", &words.minutes_figure(strip.minutes)),
                    ],
                ),
            );
        }
        let rows = [crate::work::sentences::mowing(worked, words), crate::work::sentences::grass(worked, words)];
        for (label, figures) in rows.into_iter().flatten() {
            self.lines.push(format!("  {label:LABEL$}{figures}"));
        }
        let braces = lay.braces();
        let by_rule = worked.set_up.as_ref().is_some_and(|work| crate::work::sentences::is_by_rule(work, lay));
        self.row(
            Text::SetUp,
            words.say(
                if by_rule { Text::SetUpByRule } else { Text::SetUpFigures },
                &[("minutes", &words.minutes_figure(lay.set_up_minutes)), ("braces", &braces.to_string())],
            ),
        );
        if let Some(volts) = &worked.volts {
            self.volts(run, lay, volts);
        }
        let rows = [
            crate::bracing::sentences::soil(self.plan, workup, words),
            crate::bracing::sentences::wind(self.plan, worked, words),
        ];
        for (label, figures) in rows.into_iter().flatten() {
            self.lines.push(format!("  {label:LABEL$}{figures}"));
        }
        self.corners(lay, worked);
        let indented = |line: String| if line.is_empty() { line } else { format!("  {line}") };
        self.blank();
        self.lines.extend(crate::tape::lines(self.plan, run, words).into_iter().map(indented));
        let work = crate::work::sentences::lines(worked, words);
        if !work.is_empty() {
            self.blank();
        }
        self.lines.extend(work.into_iter().map(indented));
    }

    fn sentence(&self, run: &plan::Run, worked: &RunWorkup) -> String {
        let ground = |ground_m2| self.ground(run, worked, ground_m2);
        care::closing_said::sentence(self.plan, worked, self.words, ground).unwrap_or_default()
    }

    fn ground(&self, run: &plan::Run, worked: &RunWorkup, ground_m2: f64) -> String {
        let words = self.words;
        let area = words.area(ground_m2);
        let birds = self.plan.flock(run).map(|flock| flock.birds);
        match birds.and_then(|birds| Some((birds, worked.each_bird_m2(birds)?))) {
            Some((birds, each_m2)) => words.say(
                if birds == 1 { Text::SentenceOneBird } else { Text::Sentence },
                &[("area", &area), ("birds", &birds.to_string()), ("each", &words.area_each(each_m2))],
            ),
            _ => words.say(Text::SentenceNoCoop, &[("area", &area)]),
        }
    }

    fn volts(&mut self, run: &plan::Run, lay: &Lay, volts: &Volts) {
        let words = self.words;
        if let Some(weakest) = volts.weakest {
            let post = words.say(Text::Post, &[("number", &words.post_number(weakest.post, weakest.branch))]);
            // A reading does not narrow the range yet: it is not fitted.
            let text = if weakest.measured { Text::WeakestMeasured } else { Text::WeakestNotMeasured };
            let said = care::volts_said::weakest(&weakest, words);
            self.row(Text::Weakest, words.say(text, &[("weakest", &said), ("post", &post)]));
            if let Some(tried) = care::volts_said::tried_and_which(run, lay, words) {
                let counted = words.say(Faults::Counted, &[("tried", &tried)]);
                let sound = care::volts_said::sound(volts, words);
                let said: Vec<String> = [Some(counted), sound].into_iter().flatten().collect();
                self.row(Text::Faults, said.join(" "));
            }
            if let Some(animal_kv) = volts.weakest_sample().and_then(|sample| sample.animal_kv) {
                self.row(Text::Animal, words.say(Text::AnimalFigures, &[("volts", &words.kilovolts(animal_kv))]));
            }
        }
        self.row(
            Text::Feed,
            words.say(
                Text::FeedFigures,
                &[("feed", &words.kilovolts(volts.feed_kv)), ("earth", &words.kilovolts(volts.earth_kv))],
            ),
        );
    }

    fn corners(&mut self, lay: &Lay, worked: &RunWorkup) {
        let words = self.words;
        if lay.corners.is_empty() {
            return;
        }
        self.blank();
        self.lines.push(format!("  {}", words.text(Text::Corners)));
        for (index, corner) in lay.corners.iter().enumerate() {
            let off = words.length(corner.stake.stand_off_m);
            let verdict = words.text(care::bracing::verdict(corner));
            let brace = match (corner.braced, corner.verdict) {
                (true, _) if corner.brace_too_weak() => Text::BraceWeak,
                (true, _) => Text::Braced,
                (false, Verdict::Required) => Text::NeedsBrace,
                (false, Verdict::Advised) => Text::BraceAdvised,
                (false, Verdict::None) => Text::NoBrace,
            };
            let brace = words.say(brace, &[("off", &off)]);
            let along = words.length(corner.along_m);
            let line = match corner.vertex {
                Some(vertex) => words.say(
                    Text::CornerLine,
                    &[
                        ("number", &format!("{:>3}", vertex + 1)),
                        ("along", &format!("{along:>9}")),
                        ("verdict", verdict),
                        ("brace", &brace),
                    ],
                ),
                None => words
                    .say(Text::EndLine, &[("along", &format!("{along:>9}")), ("verdict", verdict), ("brace", &brace)]),
            };
            self.lines.push(format!("    {line}"));
            let why = words.say(
                Text::CornerWhy,
                &[
                    ("turn", &words.degrees(corner.turn_deg)),
                    ("pull", &words.force(corner.pull_n)),
                    ("hold", &words.force(corner.hold_n)),
                    ("miss", &words.fine_length(corner.to_post_m)),
                ],
            );
            self.lines.push(format!("         {}: {why}", words.text(Text::Why)));
            for line in crate::bracing::sentences::of_corner(self.plan, worked, index, words) {
                self.lines.push(format!("         {line}"));
            }
        }
    }

    fn findings(&mut self, findings: &[care::Finding]) {
        let words = self.words;
        if findings.is_empty() {
            return;
        }
        self.blank();
        let severities = [Text::Danger, Text::Warning, Text::Note].map(|severity| words.text(severity).chars().count());
        let wide = severities.into_iter().max().unwrap_or_default() + 1;
        for finding in findings {
            let severity = words.text(match finding.severity {
                Severity::Danger => Text::Danger,
                Severity::Warning => Text::Warning,
                Severity::Note => Text::Note,
            });
            self.lines.push(format!("  {severity:wide$} {} [{}]", finding.message, finding.id));
            for more in [&finding.mend, &finding.why] {
                if !more.is_empty() {
                    self.lines.push(format!("{:1$}{more}", "", wide + 3));
                }
            }
        }
    }

    /// The runs of a plan in columns of one table.
    fn side_by_side(&mut self, workup: &Workup) {
        let words = self.words;
        let entries = crate::compare::runs(self.plan, workup);
        self.lines.push(words.text(Text::SideBySide).to_owned());
        let mut rows = vec![std::iter::once(String::new()).chain(entries.iter().map(|one| one.name.clone())).collect()];
        for column in Column::ALL {
            let cell = |figures: &Compared| match column.shown(figures, words) {
                Some((figure, unit)) => format!("{figure} {unit}").trim_end().to_owned(),
                None => words.text(Compare::Unknown).to_owned(),
            };
            let head = words.text(column.head()).to_owned();
            let row: Vec<String> = std::iter::once(head).chain(entries.iter().map(|one| cell(&one.figures))).collect();
            rows.push(row);
        }
        let widths: Vec<usize> = (0..=entries.len())
            .map(|column| rows.iter().map(|row| row[column].chars().count()).max().unwrap_or(0))
            .collect();
        for row in &rows {
            let cells: Vec<String> =
                row[1..].iter().zip(&widths[1..]).map(|(cell, &width)| pad_left(cell, width)).collect();
            self.lines.push(format!("  {}  {}", pad_right(&row[0], widths[0]), cells.join("  ")));
        }
    }
}

fn pad_left(text: &str, width: usize) -> String {
    format!("{}{text}", " ".repeat(width.saturating_sub(text.chars().count())))
}

fn pad_right(text: &str, width: usize) -> String {
    format!("{text}{}", " ".repeat(width.saturating_sub(text.chars().count())))
}
