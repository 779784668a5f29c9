//! A chooser of files that needs nothing of the system: a folder that is typed or walked, what lies in it, a name.

use std::path::{Path, PathBuf};

use egui::text::{CCursor, CCursorRange};
use egui::{Id, Key, Role, ScrollArea, Sense, Stroke, TextEdit, Ui, WidgetInfo, pos2, vec2};
use words::Words;
use words::texts::Files as Text;

use crate::kit;
use crate::shelf::{self, Listing};
use crate::theme::{self, colour};
use drawing::Palette;

/// What a file is chosen for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Purpose {
    /// To open a plan.
    Open,
    /// To save the plan.
    Save,
    /// To bring in a boundary.
    BringIn,
    /// To bring in a grid of heights.
    BringHeights,
    /// To lay a picture under the map.
    BringPicture,
    /// To save the table of runs and shapes.
    SaveTable,
    /// To save the page of keys.
    SaveKeys,
}

impl Purpose {
    /// The ending of a file that is written, if one is.
    fn ending_written(self) -> Option<&'static str> {
        match self {
            Purpose::Save => Some(shelf::PLAN_ENDING),
            Purpose::SaveTable => Some(shelf::TABLE_ENDING),
            Purpose::SaveKeys => Some(shelf::SHEET_ENDING),
            Purpose::Open | Purpose::BringIn | Purpose::BringHeights | Purpose::BringPicture => None,
        }
    }
}

/// A chooser at work.
#[derive(Clone, Debug)]
pub(crate) struct Chooser {
    pub(crate) purpose: Purpose,
    folder: PathBuf,
    /// The folder as typed.
    typed: String,
    name: String,
    listing: Result<Listing, ()>,
    /// The file of which it was said that it is there already.
    warned: Option<PathBuf>,
    problem: Option<Text>,
    /// Whether it was shown before: the name is ready to be typed at first.
    shown: bool,
}

/// What came of it.
pub(crate) enum Choice {
    File(PathBuf),
    Left,
}

impl Chooser {
    /// A chooser that begins in a folder, with a name filled in.
    pub(crate) fn new(purpose: Purpose, folder: PathBuf, name: String) -> Self {
        let mut chooser = Self {
            purpose,
            typed: String::new(),
            folder: PathBuf::new(),
            name,
            listing: Ok(Listing::default()),
            warned: None,
            problem: None,
            shown: false,
        };
        chooser.go(folder);
        chooser
    }

    /// The same once more, after something else stood before it: its name has the keys again.
    pub(crate) fn again(self) -> Self {
        Self { shown: false, ..self }
    }

    fn endings(&self) -> &'static [&'static str] {
        match self.purpose {
            Purpose::Open | Purpose::Save => &[shelf::PLAN_ENDING],
            Purpose::BringIn => &shelf::BOUNDARY_ENDINGS,
            Purpose::BringHeights => &shelf::HEIGHTS_ENDINGS,
            Purpose::BringPicture => &shelf::PICTURE_ENDINGS,
            Purpose::SaveTable => &[shelf::TABLE_ENDING],
            Purpose::SaveKeys => &[shelf::SHEET_ENDING],
        }
    }

    fn go(&mut self, folder: PathBuf) {
        self.listing = shelf::list(&folder, self.endings()).map_err(|error| tracing::info!(%error, "a folder"));
        self.typed = folder.display().to_string();
        self.folder = folder;
        self.warned = None;
        self.problem = None;
    }

    /// Shows it; `Some` once the keeper has decided.
    pub(crate) fn show(&mut self, ui: &mut Ui, words: Words, p: &Palette) -> Option<Choice> {
        let (title, done) = match self.purpose {
            Purpose::Open => (Text::OpenTitle, Text::DoOpen),
            Purpose::Save => (Text::SaveTitle, Text::DoSave),
            Purpose::BringIn => (Text::BringInTitle, Text::DoBringIn),
            Purpose::BringHeights => (Text::BringHeightsTitle, Text::DoBringIn),
            Purpose::BringPicture => (Text::BringPictureTitle, Text::DoBringIn),
            Purpose::SaveTable => (Text::SaveTableTitle, Text::DoSave),
            Purpose::SaveKeys => (Text::SaveKeysTitle, Text::DoSave),
        };
        ui.set_width(460.0);
        ui.spacing_mut().item_spacing = vec2(8.0, 0.0);
        kit::title(ui, words.text(title), "", "", p);
        ui.add_space(14.0);
        self.folder_line(ui, words, p);
        ui.add_space(10.0);
        let mut choice = self.rows(ui, words, p);
        ui.add_space(12.0);
        let label = kit::prose(ui, words.text(Text::FileName), theme::regular(12.0), colour(p.ink2));
        ui.add_space(4.0);
        let edit = TextEdit::singleline(&mut self.name)
            .id(Id::unique("chooser name"))
            .font(theme::regular(13.0))
            .desired_width(f32::INFINITY)
            .min_size(vec2(0.0, 24.0));
        let mut output = edit.show(ui);
        let field = output.response.response.clone().labelled_by(label.id);
        if !std::mem::replace(&mut self.shown, true) {
            field.request_focus();
            // The first key replaces the name.
            let all = CCursorRange::two(CCursor::default(), CCursor::new(self.name.chars().count()));
            output.state.cursor.set_char_range(Some(all));
            output.state.store(ui.ctx(), field.id);
        }
        if field.changed() {
            self.warned = None;
            self.problem = None;
        }
        let entered = field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        let exists = if self.purpose == Purpose::Save { Text::Exists } else { Text::ExistsPlain };
        let warning = self.warned.as_ref().map(|path| words.say(exists, &[("name", &name_of(path))]));
        let problem = self.problem.map(|text| words.text(text).to_owned());
        if let Some(sentence) = problem.or(warning) {
            ui.add_space(8.0);
            kit::prose(ui, &sentence, theme::medium(13.0), colour(p.danger));
        }
        ui.add_space(16.0);
        ui.horizontal(|ui| {
            let done = if self.warned.is_some() { Text::DoReplace } else { done };
            if kit::word_button(ui, words.text(done), true, p).clicked() || entered {
                choice = choice.take().or_else(|| self.decide());
                // What is wrong with the name is mended in its field. A file that stands is not replaced by one more Enter.
                self.shown = self.problem.is_none();
            }
            if kit::word_button(ui, words.text(Text::Cancel), false, p).clicked() {
                choice = Some(Choice::Left);
            }
        });
        choice
    }

    fn folder_line(&mut self, ui: &mut Ui, words: Words, p: &Palette) {
        let label = kit::prose(ui, words.text(Text::Folder), theme::regular(12.0), colour(p.ink2));
        ui.add_space(4.0);
        let edit = TextEdit::singleline(&mut self.typed)
            .id(Id::unique("chooser folder"))
            .font(theme::regular(13.0))
            .desired_width(f32::INFINITY)
            .min_size(vec2(0.0, 24.0));
        let field = ui.add(edit).labelled_by(label.id);
        if field.lost_focus() && Path::new(self.typed.trim()) != self.folder {
            self.go(PathBuf::from(self.typed.trim()));
        }
    }

    fn rows(&mut self, ui: &mut Ui, words: Words, p: &Palette) -> Option<Choice> {
        let mut go = None;
        let mut choice = None;
        ui.painter().hline(ui.max_rect().x_range(), ui.cursor().top(), Stroke::new(1.0, colour(p.rule)));
        ScrollArea::vertical().id_salt("chooser").max_height(220.0).min_scrolled_height(220.0).auto_shrink(false).show(
            ui,
            |ui| {
                if let Some(up) = self.folder.parent() {
                    let up_words = words.text(Text::UpOneFolder);
                    if row(ui, up_words, up_words, Some("↑"), false, p).clicked() {
                        go = Some(up.to_path_buf());
                    }
                }
                let Ok(listing) = &self.listing else {
                    ui.add_space(8.0);
                    let folder = shelf::shown(&self.folder);
                    let sentence = words.say(Text::FolderUnreadable, &[("folder", &folder)]);
                    kit::prose(ui, &sentence, theme::medium(13.0), colour(p.danger));
                    return;
                };
                for name in &listing.folders {
                    let label = words.say(Text::FolderRow, &[("name", name)]);
                    if row(ui, name, &label, Some("→"), false, p).clicked() {
                        go = Some(self.folder.join(name));
                    }
                }
                for name in &listing.files {
                    let label = words.say(Text::FileRow, &[("name", name)]);
                    let response = row(ui, name, &label, None, *name == self.name, p);
                    if response.clicked() {
                        self.name.clone_from(name);
                        self.warned = None;
                        self.problem = None;
                    }
                    if response.double_clicked() && self.purpose.ending_written().is_none() {
                        choice = Some(Choice::File(self.folder.join(name)));
                    }
                }
                if listing.files.is_empty() {
                    ui.add_space(8.0);
                    kit::prose(ui, words.text(Text::NothingHere), theme::regular(12.0), colour(p.ink2));
                }
            },
        );
        if let Some(folder) = go {
            self.go(folder);
        }
        choice
    }

    /// The file that is meant, once nothing speaks against it.
    fn decide(&mut self) -> Option<Choice> {
        let typed = Path::new(self.typed.trim());
        if typed != self.folder {
            self.go(typed.to_path_buf());
        }
        let name = self.name.trim();
        if name.is_empty() {
            self.problem = Some(Text::NameFirst);
            return None;
        }
        let mut path = self.folder.join(name);
        if let Some(ending) = self.purpose.ending_written() {
            if !name.to_lowercase().ends_with(ending) {
                let stem = name.strip_suffix(".json").filter(|_| self.purpose == Purpose::Save).unwrap_or(name);
                path = self.folder.join(format!("{stem}{ending}"));
            }
            if shelf::exists(&path) && self.warned.as_ref() != Some(&path) {
                self.warned = Some(path);
                return None;
            }
        }
        Some(Choice::File(path))
    }
}

fn name_of(path: &Path) -> String {
    path.file_name().map_or_else(|| shelf::shown(path), |name| name.to_string_lossy().into_owned())
}

/// A file, or with the way that it leads a folder.
fn row(ui: &mut Ui, name: &str, label: &str, way: Option<&str>, picked: bool, p: &Palette) -> egui::Response {
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 26.0), Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::Row, true, picked, label));
    if picked {
        ui.painter().rect_filled(rect, 0.0, colour(p.picked_row));
    } else if response.hovered() {
        ui.painter().rect_filled(rect, 0.0, theme::thinned(p.rule, 0.18));
    }
    let font = if way.is_some() { theme::medium(13.0) } else { theme::regular(13.0) };
    let shown = way.map_or_else(|| name.to_owned(), |way| format!("{name} {way}"));
    let galley = kit::shortened(ui, &shown, font, colour(p.ink), rect.width() - 16.0);
    let at = pos2(rect.left() + 8.0, rect.center().y - galley.size().y / 2.0);
    ui.painter().galley(at, galley, colour(p.ink));
    kit::focus_ring(ui, &response, p);
    response
}
