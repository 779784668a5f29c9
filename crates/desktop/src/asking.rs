//! What needs files or a question first: opening, saving, leaving unsaved work, what a crash left behind.
//!
//! One question stands at a time, over the whole window. What is asked for while the plan is unsaved waits
//! behind the question whether to save it.

use std::path::{Path, PathBuf};

use drawing::Palette;
use egui::{Id, Key, Modal, Ui, vec2};
use plan::Plan;
use safekeeping::{Disk, Left};
use words::Words;
use words::texts::{Files as Text, Slope};

use crate::chooser::{Choice, Chooser, Purpose};
use crate::editor::{Editor, Message, UnderlayMessage};
use crate::journal::LeftBehind;
use crate::said::Said;
use crate::theme::{self, colour};
use crate::{commands, kit, menus, shelf};

/// What is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Ask {
    /// Save the plan to its file, or to one that is chosen.
    Save,
    /// Save it to a file that is chosen.
    SaveAs,
    /// Open a plan.
    Open,
    /// Begin with rolls.
    NewFromRolls,
    /// Begin with nothing.
    NewEmpty,
    /// Open the example farm.
    Example,
    /// Bring in a boundary.
    BringIn,
    /// Bring in a grid of heights.
    BringHeights,
    /// Lay a picture under the map.
    BringPicture,
    /// Save the table of runs and shapes.
    SaveTable,
    /// Save the page of keys.
    SaveKeys,
    /// Close the window.
    Close,
}

impl Ask {
    /// Whether the open plan gives way to another.
    fn leaves_plan(self) -> bool {
        matches!(self, Self::Open | Self::NewFromRolls | Self::NewEmpty | Self::Example | Self::Close)
    }
}

/// What is begun and no part of the plan yet, so that saving would not keep it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Unfinished {
    /// A line is half drawn.
    Drawn,
    /// What stands in a field cannot be read.
    Typed,
}

/// The question that stands, if one does.
#[derive(Default)]
pub(crate) struct Asking {
    question: Option<Question>,
    /// What goes on once the plan is saved.
    then: Option<Ask>,
    /// The example farm.
    example: Option<Plan>,
    /// Whether the window may close.
    may_close: bool,
    /// The journal of a plan that is open again.
    taken_back: Option<Box<Left<Disk>>>,
}

enum Question {
    /// Which file.
    Choose(Chooser),
    /// Whether to go on without what is not in the plan yet.
    Unfinished(Ask, Unfinished),
    /// Whether to save before going on.
    Unsaved(Ask),
    /// What a crash left behind.
    Left(Vec<LeftBehind>),
    /// What came of it, under a title: what was noticed in a file that was brought in, where one was saved.
    Noted(String, String),
    /// That something did not work; then back to the choice of a file, if it came from there.
    Told(String, Option<Chooser>),
}

impl Asking {
    pub(crate) fn new(example: Option<Plan>, left: Vec<LeftBehind>) -> Self {
        let question = (!left.is_empty()).then_some(Question::Left(left));
        Self { question, example, ..Self::default() }
    }

    /// Tells something that did not work.
    pub(crate) fn tell(&mut self, sentence: String) {
        self.question.get_or_insert(Question::Told(sentence, None));
    }

    /// Whether the window may close.
    pub(crate) fn may_close(&self) -> bool {
        self.may_close
    }

    /// The journal of the plan that was taken back, once, to go on with.
    pub(crate) fn taken_back(&mut self) -> Option<Box<Left<Disk>>> {
        self.taken_back.take()
    }

    /// Whether a question stands.
    pub(crate) fn is_open(&self) -> bool {
        self.question.is_some()
    }

    /// Does what is asked for, or asks back first; `unread` where something stands in a field that cannot be read.
    pub(crate) fn take(&mut self, ask: Ask, editor: &Editor, unread: bool, said: &mut Said) {
        // What waited for an earlier save waits no more.
        self.then = None;
        let of_a_plan = matches!(
            ask,
            Ask::Save | Ask::SaveAs | Ask::BringIn | Ask::BringHeights | Ask::BringPicture | Ask::SaveTable
        );
        if of_a_plan && editor.question().is_some() {
            // Nothing is laid out yet that could be saved or brought into.
            return;
        }
        let unfinished = match (editor.has_unfinished(), unread) {
            (true, _) => Some(Unfinished::Drawn),
            (false, true) => Some(Unfinished::Typed),
            (false, false) => None,
        };
        match unfinished.filter(|_| ask.leaves_plan()) {
            Some(unfinished) => self.question = Some(Question::Unfinished(ask, unfinished)),
            None => self.leave(ask, editor, said),
        }
    }

    /// Goes on, or asks first whether to save.
    fn leave(&mut self, ask: Ask, editor: &Editor, said: &mut Said) {
        if ask.leaves_plan() && editor.save_state().is_unsaved() {
            self.question = Some(Question::Unsaved(ask));
        } else {
            self.go_on(ask, editor, said);
        }
    }

    fn go_on(&mut self, ask: Ask, editor: &Editor, said: &mut Said) {
        match ask {
            Ask::Save => match editor.file() {
                Some(path) => self.save(path.to_path_buf(), editor, said),
                None => self.choose(Purpose::Save, editor),
            },
            Ask::SaveAs => self.choose(Purpose::Save, editor),
            Ask::Open => self.choose(Purpose::Open, editor),
            Ask::BringIn => self.choose(Purpose::BringIn, editor),
            Ask::BringHeights => self.choose(Purpose::BringHeights, editor),
            Ask::BringPicture => self.choose(Purpose::BringPicture, editor),
            Ask::SaveTable => self.choose(Purpose::SaveTable, editor),
            Ask::SaveKeys => self.choose(Purpose::SaveKeys, editor),
            Ask::NewFromRolls => said.say(Message::AskRolls),
            Ask::NewEmpty => said.say(Message::StartEmpty),
            Ask::Example => {
                if let Some(example) = &self.example {
                    said.say(Message::Example(Box::new(example.clone())));
                }
            }
            Ask::Close => self.may_close = true,
        }
    }

    fn choose(&mut self, purpose: Purpose, editor: &Editor) {
        let name = match purpose {
            Purpose::Save => match editor.file().and_then(Path::file_name) {
                Some(name) => name.to_string_lossy().into_owned(),
                None => format!("{}{}", shelf::file_name(&editor.plan().title), shelf::PLAN_ENDING),
            },
            Purpose::SaveTable => format!("{}{}", shelf::file_name(&editor.plan().title), shelf::TABLE_ENDING),
            Purpose::SaveKeys => {
                format!("{}{}", editor.words().text(words::texts::Commands::KeysFile), shelf::SHEET_ENDING)
            }
            Purpose::Open | Purpose::BringIn | Purpose::BringHeights | Purpose::BringPicture => String::new(),
        };
        self.question = Some(Question::Choose(Chooser::new(purpose, shelf::first_folder(editor.file()), name)));
    }

    fn save(&mut self, path: PathBuf, editor: &Editor, said: &mut Said) {
        // The picture is named from where the plan will lie.
        let mut plan = editor.plan().clone();
        let renamed = shelf::underlay_for(&plan, editor.file(), &path);
        if renamed.is_some() {
            plan.underlay.clone_from(&renamed);
        }
        match shelf::save(&path, &plan, editor.words()) {
            Ok(()) => {
                if let Some(underlay) = renamed {
                    said.say(Message::Make(plan::Edit::SetUnderlay { underlay: Some(underlay) }));
                }
                said.say(Message::Saved(path));
                if let Some(then) = self.then.take() {
                    self.go_on(then, editor, said);
                }
            }
            Err(sentence) => {
                self.then = None;
                self.question = Some(Question::Told(sentence, None));
            }
        }
    }

    fn chosen(&mut self, chooser: Chooser, path: PathBuf, editor: &Editor, said: &mut Said) {
        let words = editor.words();
        match chooser.purpose {
            Purpose::Save => {
                self.save(path, editor, said);
                if let Some(Question::Told(_, back)) = &mut self.question {
                    *back = Some(chooser);
                }
            }
            Purpose::SaveTable => {
                let written = shelf::write(&path, &editor.table_csv()).map_err(|error| shelf::refused(&error, words));
                self.question = Some(saved(written, &path, chooser, words));
            }
            Purpose::SaveKeys => {
                let written = fieldsheet::keys(words, &commands::keys(editor), fieldsheet::Paper::default())
                    .map_err(|error| {
                        tracing::warn!(%error, "the page of keys");
                        words.text(words::texts::Window::SheetCannot).to_owned()
                    })
                    .and_then(|bytes| shelf::write(&path, &bytes).map_err(|error| shelf::refused(&error, words)));
                self.question = Some(saved(written, &path, chooser, words));
            }
            Purpose::Open => match shelf::open(&path, words) {
                Ok(plan) => said.say(Message::Opened(Box::new(plan), Some(path))),
                Err(sentence) => self.question = Some(Question::Told(sentence, Some(chooser))),
            },
            Purpose::BringHeights => match shelf::heights(&path, editor.plan(), words) {
                Ok(import) => {
                    let notes: Vec<String> =
                        import.notes.iter().map(|note| exchange::heights::note(words, note)).collect();
                    if !notes.is_empty() {
                        self.question = Some(Question::Noted(words.text(Slope::GridTitle).to_owned(), notes.join(" ")));
                    }
                    said.say(Message::BringHeights(Box::new(import)));
                }
                Err(sentence) => self.question = Some(Question::Told(sentence, Some(chooser))),
            },
            Purpose::BringPicture => match shelf::underlay(&path, editor.file(), words) {
                Ok(underlay) => said.say(Message::Underlay(UnderlayMessage::Bring(Box::new(underlay)))),
                Err(sentence) => self.question = Some(Question::Told(sentence, Some(chooser))),
            },
            Purpose::BringIn => match shelf::bring_in(&path, words) {
                Ok(plan) => said.say(Message::BringIn(Box::new(plan))),
                Err(sentence) => self.question = Some(Question::Told(sentence, Some(chooser))),
            },
        }
    }

    /// Shows the question that stands.
    pub(crate) fn show(&mut self, ui: &Ui, editor: &Editor, said: &mut Said) {
        let Some(question) = self.question.take() else { return };
        let (words, p) = (editor.words(), editor.theme().palette());
        let frame = egui::Frame::new()
            .fill(colour(p.sheet))
            .stroke(egui::Stroke::new(1.0, colour(p.ink)))
            .inner_margin(24.0)
            .corner_radius(2.0);
        let modal = Modal::new(Id::unique("question")).frame(frame);
        let left = modal.show(ui.ctx(), |ui| self.ask(ui, question, editor, words, p, said)).inner;
        let escaped = ui.input(|input| input.key_pressed(Key::Escape));
        // Esc leaves a question; what a crash left behind is asked again at the next start.
        if escaped && left.is_some() {
            self.then = None;
        } else {
            self.question = left.or(self.question.take());
        }
    }

    /// Asks one question; gives it back where it still stands.
    fn ask(
        &mut self,
        ui: &mut Ui,
        question: Question,
        editor: &Editor,
        words: Words,
        p: &Palette,
        said: &mut Said,
    ) -> Option<Question> {
        match question {
            Question::Choose(mut chooser) => match chooser.show(ui, words, p) {
                None => return Some(Question::Choose(chooser)),
                Some(Choice::Left) => self.then = None,
                Some(Choice::File(path)) => self.chosen(chooser, path, editor, said),
            },
            Question::Unfinished(ask, unfinished) => {
                let (title, text) = match unfinished {
                    Unfinished::Drawn => (Text::HalfDrawnTitle, Text::HalfDrawnText),
                    Unfinished::Typed => (Text::UnreadTitle, Text::UnreadText),
                };
                words_of(ui, words.text(title), words.text(text), p);
                let without = if ask == Ask::Close { Text::CloseWithoutIt } else { Text::LeaveWithoutIt };
                match buttons(ui, words, &[Text::KeepWorking, without], p) {
                    Some(Text::KeepWorking) => {}
                    Some(_) => self.leave(ask, editor, said),
                    None => return Some(Question::Unfinished(ask, unfinished)),
                }
            }
            Question::Unsaved(ask) => {
                let name = menus::name_of(editor);
                words_of(ui, words.text(Text::CloseTitle), &words.say(Text::CloseText, &[("name", &name)]), p);
                let discard = if ask == Ask::Close { Text::CloseDiscard } else { Text::LeaveDiscard };
                match buttons(ui, words, &[Text::Save, discard, Text::KeepWorking], p) {
                    Some(Text::Save) => {
                        self.then = Some(ask);
                        self.go_on(Ask::Save, editor, said);
                    }
                    Some(Text::KeepWorking) => {}
                    Some(_) => self.go_on(ask, editor, said),
                    None => return Some(Question::Unsaved(ask)),
                }
            }
            Question::Left(mut all) => {
                let one = all.pop()?;
                let text = one.sentence(words);
                words_of(ui, words.text(Text::LeftTitle), &text, p);
                let choices: &[Text] = if one.can_take() {
                    &[Text::LeftTake, Text::LeftThrow, Text::LeftLater]
                } else {
                    &[Text::Understood]
                };
                match buttons(ui, words, choices, p) {
                    Some(Text::LeftTake) => {
                        if let Some((message, left)) = one.take() {
                            said.say(message);
                            self.taken_back = Some(left);
                        }
                    }
                    Some(Text::LeftThrow) => one.throw_away(),
                    Some(_) => {}
                    None => {
                        all.push(one);
                        return Some(Question::Left(all));
                    }
                }
                // One plan is open at a time: once one is taken back, the others are offered at the next start.
                let more = self.taken_back.is_none() && !all.is_empty();
                return more.then_some(Question::Left(all));
            }
            Question::Noted(title, sentence) => {
                words_of(ui, &title, &sentence, p);
                if buttons(ui, words, &[Text::Understood], p).is_none() {
                    return Some(Question::Noted(title, sentence));
                }
            }
            Question::Told(sentence, chooser) => {
                words_of(ui, words.text(Text::CannotTitle), &sentence, p);
                if buttons(ui, words, &[Text::Understood], p).is_none() {
                    return Some(Question::Told(sentence, chooser));
                }
                return chooser.map(|chooser| Question::Choose(chooser.again()));
            }
        }
        None
    }
}

/// Says where a file was saved, or why it was not and back to the choice of one.
fn saved(written: Result<(), String>, path: &Path, chooser: Chooser, words: Words) -> Question {
    match written {
        Ok(()) => Question::Noted(
            words.text(Text::SavedTitle).to_owned(),
            words.say(Text::SavedAs, &[("file", &shelf::shown(path))]),
        ),
        Err(sentence) => Question::Told(sentence, Some(chooser)),
    }
}

fn words_of(ui: &mut Ui, title: &str, sentence: &str, p: &Palette) {
    ui.set_width(400.0);
    ui.spacing_mut().item_spacing = vec2(8.0, 0.0);
    kit::title(ui, title, "", "", p);
    ui.add_space(8.0);
    kit::prose(ui, sentence, theme::regular(13.0), colour(p.ink));
    ui.add_space(20.0);
}

/// Buttons side by side, the first one the first choice; the one that was clicked.
fn buttons(ui: &mut Ui, words: Words, texts: &[Text], p: &Palette) -> Option<Text> {
    let mut clicked = None;
    ui.horizontal(|ui| {
        for (index, &text) in texts.iter().enumerate() {
            let button = kit::word_button(ui, words.text(text), index == 0, p);
            // Enter is the first choice.
            if index == 0 && ui.memory(|memory| memory.focused().is_none()) {
                button.request_focus();
            }
            if button.clicked() {
                // A further question begins with its own first choice, not with the button that stands where this one was.
                button.surrender_focus();
                clicked = Some(text);
            }
        }
    });
    clicked
}
