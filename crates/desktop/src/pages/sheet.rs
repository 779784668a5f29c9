//! The page about paper: where the field sheet goes, and whether it got there.

use std::path::{Path, PathBuf};

use drawing::{Scene, Theme};
use egui::{Id, Key, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use fieldsheet::{Framed, Page, Runs};
use safekeeping::SaveError;
use words::Words;
use words::texts::Window as Text;

use super::{Desk, findings};
use crate::editor::Editor;
use crate::icons::Icon;
use crate::kit;
use crate::menus;
use crate::pen::{self, Painted};
use crate::shelf;
use crate::theme::{self, colour};

/// What the page remembers: the path typed, how writing went, what is on paper.
pub(crate) struct Paper {
    path: String,
    /// The plan, by its epoch and title, that the path was proposed for; another one gets a path of its own.
    proposed_for: Option<(u64, String)>,
    /// The file of which it was said that it is there already; the page's own sheets are written over unasked.
    warned: Option<PathBuf>,
    written: Vec<PathBuf>,
    outcome: Option<Outcome>,
    size: fieldsheet::Paper,
    all_runs: bool,
    page: usize,
    preview: Option<(MadeFrom, Vec<Page>)>,
    painted: Option<Shown>,
}

/// What came of writing the sheet; it is worded when it is shown.
enum Outcome {
    /// It lies there.
    Written(PathBuf),
    /// No file is named.
    NoPath,
    /// The file is there and not of this page.
    Exists(PathBuf),
    /// No sheet comes of this plan.
    NoSheet,
    /// The file could not be written.
    Unwritable(SaveError),
}

impl Outcome {
    fn said(&self, words: Words) -> String {
        let of = |text: Text, path: &Path| words.say(text, &[("path", &shelf::shown(&shelf::whole(path)))]);
        match self {
            Self::Written(path) => of(Text::SheetWritten, path),
            Self::NoPath => words.text(Text::SheetNoPath).to_owned(),
            Self::Exists(path) => of(Text::SheetExists, path),
            Self::NoSheet => words.text(Text::SheetCannot).to_owned(),
            Self::Unwritable(error) => shelf::refused(error, words),
        }
    }
}

/// A page made ready for a place of the window: its parts, each cut off at its frame.
struct Shown {
    page: usize,
    rect: Rect,
    px_per_point: f32,
    parts: Vec<(Rect, Painted)>,
}

/// What a preview was made from: the drawing's stamp, which runs, which paper.
#[derive(Clone, Copy, PartialEq, Eq)]
struct MadeFrom {
    stamp: u64,
    runs: Runs,
    size: fieldsheet::Paper,
    /// Whether the plan has a file, which names a plan without a name.
    filed: bool,
}

impl Paper {
    /// Paper on which nothing is written yet.
    pub(crate) fn new() -> Self {
        Self {
            path: String::new(),
            proposed_for: None,
            warned: None,
            written: Vec::new(),
            outcome: None,
            size: fieldsheet::Paper::A4,
            all_runs: true,
            page: 0,
            preview: None,
            painted: None,
        }
    }

    /// Proposes a path for the open plan, once: what the keeper types after that stays.
    fn propose(&mut self, desk: &Desk<'_>) {
        let editor = desk.editor;
        let plan = Some((editor.epoch(), editor.plan().title.clone()));
        if self.proposed_for != plan {
            self.path = beside(editor.file(), &editor.plan().title);
            self.proposed_for = plan;
            self.outcome = None;
            self.warned = None;
        }
    }

    fn runs(&self, desk: &Desk<'_>) -> Runs {
        if self.all_runs { Runs::All } else { Runs::One(desk.editor.run_index()) }
    }
}

/// The sheet goes beside the plan, under the plan's name.
fn beside(plan: Option<&Path>, title: &str) -> String {
    let path = match plan {
        Some(plan) => {
            let name = plan.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
            let stem = name.strip_suffix(shelf::PLAN_ENDING).or(name.strip_suffix(".json")).unwrap_or(&name);
            plan.with_file_name(format!("{stem}.pdf"))
        }
        None => PathBuf::from(format!("{}.pdf", shelf::file_name(title))),
    };
    path.to_string_lossy().into_owned()
}

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, paper: &mut Paper) {
    let (words, p) = (desk.words, desk.p);
    if desk.editor.plan().runs.is_empty() {
        kit::title(ui, words.text(Text::SheetTitle), "", words.text(Text::SheetNoRun), p);
        super::way_to_a_run(ui, desk);
        return;
    }
    paper.propose(desk);
    kit::title(ui, words.text(Text::SheetTitle), "", words.text(Text::SheetSentence), p);
    ui.add_space(16.0);
    let label = kit::prose(ui, words.text(Text::SheetPath), theme::regular(12.0), colour(p.ink2));
    ui.add_space(4.0);
    let edit = egui::TextEdit::singleline(&mut paper.path)
        .id(Id::unique("sheet path"))
        .font(theme::regular(13.0))
        .desired_width(f32::INFINITY)
        .min_size(vec2(0.0, 24.0));
    let field = ui.add(edit).labelled_by(label.id);
    if field.changed() {
        paper.outcome = None;
        paper.warned = None;
    }
    let entered = field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
    ui.add_space(10.0);
    let button = kit::button(ui, Icon::Paper, words.text(Text::WriteSheet), false, p);
    if button.clicked() || entered {
        let outcome = write(desk, paper);
        paper.outcome = Some(outcome);
    }
    if let Some(outcome) = &paper.outcome {
        ui.add_space(10.0);
        let ink = if matches!(outcome, Outcome::Written(_)) { p.ink } else { p.danger };
        kit::prose(ui, &outcome.said(words), theme::medium(13.0), colour(ink));
    }
    choices(ui, desk, paper);
    preview(ui, desk, paper);
    ui.add_space(10.0);
    desk.second(ui, words.text(Text::CodesFirst));
    findings(ui, desk);
}

fn choices(ui: &mut Ui, desk: &Desk<'_>, paper: &mut Paper) {
    let (words, p) = (desk.words, desk.p);
    ui.add_space(18.0);
    // In another language a row's words may need a second line.
    ui.horizontal_wrapped(|ui| {
        for (size, name) in [(fieldsheet::Paper::A4, Text::A4), (fieldsheet::Paper::Letter, Text::Letter)] {
            if kit::choice(ui, words.text(name), paper.size == size, p).clicked() {
                paper.size = size;
            }
        }
        if desk.editor.plan().runs.len() > 1 {
            ui.add_space(14.0);
            for (all, name) in [(true, Text::AllRuns), (false, Text::ThisRun)] {
                if kit::choice(ui, words.text(name), paper.all_runs == all, p).clicked() {
                    paper.all_runs = all;
                }
            }
        }
    });
}

/// The sheet as it will be printed, one page at a time.
fn preview(ui: &mut Ui, desk: &mut Desk<'_>, paper: &mut Paper) {
    let (words, p) = (desk.words, desk.p);
    let key = MadeFrom {
        stamp: desk.editor.stamp(),
        runs: paper.runs(desk),
        size: paper.size,
        filed: desk.editor.file().is_some(),
    };
    // While something is in the hand the paper rests: it is laid out when that is put down.
    let resting = desk.editor.held_from().is_some() && paper.preview.is_some();
    if !resting && paper.preview.as_ref().is_none_or(|(made, _)| *made != key) {
        let pages =
            with_named(desk.editor, |scene| fieldsheet::pages(scene, key.runs, None, key.size)).unwrap_or_default();
        paper.page = paper.page.min(pages.len().saturating_sub(1));
        paper.preview = Some((key, pages));
        paper.painted = None;
    }
    let Some((_, pages)) = &paper.preview else { return };
    let Some(page) = pages.get(paper.page) else {
        ui.add_space(16.0);
        desk.second(ui, words.text(Text::SheetCannot));
        return;
    };
    let (number, count) = ((paper.page + 1).to_string(), pages.len().to_string());
    let label = words.say(Text::PageOf, &[("number", &number), ("count", &count)]);
    desk.section(ui, words.text(Text::Preview), &label, None);
    ui.add_space(10.0);
    let wide = ui.available_width();
    let scale = wide / page.size[0];
    let (rect, response) = ui.allocate_exact_size(vec2(wide, page.size[1] * scale), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &label));
    let px_per_point = ui.pixels_per_point();
    if paper
        .painted
        .as_ref()
        .is_none_or(|made| (made.page, made.rect, made.px_per_point) != (paper.page, rect, px_per_point))
    {
        let whole = Painted::of(ui.ctx(), &pen::scaled(&page.ink, scale), rect.min);
        let map = page.map.as_ref().map(|Framed { frame: [left, top, right, bottom], ink }| {
            let frame = Rect::from_min_max(pos2(*left, *top), pos2(*right, *bottom)) * scale;
            (frame.translate(rect.min.to_vec2()), Painted::of(ui.ctx(), &pen::scaled(ink, scale), rect.min))
        });
        let parts = map.into_iter().chain([(rect, whole)]).collect();
        paper.painted = Some(Shown { page: paper.page, rect, px_per_point, parts });
    }
    ui.painter().rect_filled(rect, 0.0, colour(Theme::Print.palette().sheet));
    for (clip, painted) in paper.painted.iter().flat_map(|made| &made.parts) {
        painted.paint(&pen::inside(ui.painter(), *clip));
    }
    ui.painter().rect_stroke(rect, 0.0, Stroke::new(1.0, colour(p.rule)), StrokeKind::Outside);
    let last = pages.len() - 1;
    if last > 0 {
        ui.add_space(8.0);
        ui.horizontal(|ui| {
            if kit::icon_button(ui, Icon::Before, words.text(Text::PageBefore), paper.page > 0, true, p).clicked() {
                paper.page -= 1;
            }
            if kit::icon_button(ui, Icon::After, words.text(Text::PageAfter), paper.page < last, true, p).clicked() {
                paper.page += 1;
            }
        });
    }
}

/// Does something with the scene, whose plan is called as in the window's head: by its file where it has no name.
fn with_named<T>(editor: &Editor, then: impl FnOnce(&Scene<'_>) -> T) -> T {
    let scene = editor.scene();
    if scene.plan.title.is_empty() && editor.file().is_some() {
        let named = plan::Plan { title: menus::name_of(editor), ..scene.plan.clone() };
        return then(&Scene { plan: &named, ..scene });
    }
    then(&scene)
}

fn write(desk: &Desk<'_>, paper: &mut Paper) -> Outcome {
    let path = PathBuf::from(paper.path.trim());
    if path.as_os_str().is_empty() {
        return Outcome::NoPath;
    }
    if shelf::exists(&path) && !paper.written.contains(&path) && paper.warned.as_ref() != Some(&path) {
        paper.warned = Some(path.clone());
        return Outcome::Exists(path);
    }
    let (runs, size) = (paper.runs(desk), paper.size);
    let bytes = match with_named(desk.editor, |scene| fieldsheet::sheet(scene, runs, None, size)) {
        Ok(bytes) => bytes,
        Err(error) => {
            tracing::info!(%error, "no sheet");
            return Outcome::NoSheet;
        }
    };
    match shelf::write(&path, &bytes) {
        Ok(()) => {
            paper.written.push(path.clone());
            Outcome::Written(path)
        }
        Err(error) => Outcome::Unwritable(error),
    }
}

#[cfg(test)]
mod tests {
    use super::beside;
    use std::path::Path;

    #[test]
    fn the_sheet_goes_beside_the_plan() {
        let path = |plan: Option<&str>, title: &str| beside(plan.map(Path::new), title);
        assert_eq!(path(Some("farm/kettle.netfold.json"), "x"), "farm/kettle.pdf");
        assert_eq!(path(None, "Kettle Field, first grass"), "kettle-field-first-grass.pdf");
        assert_eq!(path(None, "../"), "plan.pdf");
    }
}
