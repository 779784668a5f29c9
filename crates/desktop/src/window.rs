//! The window's parts in their places, and the one order in which things happen in a frame.
//!
//! First the worker's answer, then the hand on the map and the keys, whose messages take effect at once; then
//! everything is painted from the editor as it now is. What the other views say takes effect after that and is
//! painted in the next frame.

use std::path::PathBuf;

use drawing::Thing;
use egui::{Key, KeyboardShortcut, Modifiers, Rect, Ui, UiBuilder, pos2};
use plan::Plan;
use words::Words;
use words::texts::Files;

use crate::asking::{Ask, Asking};
use crate::editor::{Editor, Message, Page, ShapesMessage};
use crate::journal::Keeper;
use crate::map_view::{self, MapSheet};
use crate::pages::{self, list::ListSheet, sheet::Paper};
use crate::reckoner::Reckoner;
use crate::said::Said;
use crate::searcher::Searcher;
use crate::settings::Settings;
use crate::tool::{Drawn, Tool};
use crate::under::{self, LineSheet};
use crate::underlay::Pictures;
use crate::worker::Worker;
use crate::{allocator, entry, field, figures, finder, first, first_corner, head, leading, menus, size, theme, typing};

/// Width of the window below which it counts as small.
const SMALL: f32 = 1000.0;

const UNDO: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::Z);
const REDO: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::Z);
const SAVE: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::S);
const SAVE_AS: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::S);
const OPEN: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::O);
const NEW: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::N);
const DOUBLE: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::D);
const LARGER: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::Plus);
const LARGER_TOO: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::Equals);
const SMALLER: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::Minus);
/// Keys of the pages, in their order.
const PAGE_KEYS: [Key; 6] = [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5, Key::Num6];
const REDO_TOO: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::Y);

/// What a window opens with.
#[derive(Clone, Debug, Default)]
pub struct Opening {
    /// The plan.
    pub plan: Plan,
    /// Its file.
    pub path: Option<PathBuf>,
    /// Language and units.
    pub words: Words,
    /// Whether the plan is the example farm.
    pub is_example: bool,
    /// The example farm, for who wants to look round it later.
    pub example: Option<Plan>,
    /// Where settings and journals are kept.
    pub folder: Option<PathBuf>,
    /// Something that did not work on the way here.
    pub notice: Option<String>,
}

/// The whole window, on whatever surface egui has.
pub struct Window {
    editor: Editor,
    worker: Worker,
    searcher: Searcher,
    reckoner: Reckoner,
    pictures: Pictures,
    map: MapSheet,
    line: LineSheet,
    paper: Paper,
    list: ListSheet,
    asking: Asking,
    /// Where settings and journals are kept; `None` keeps nothing.
    folder: Option<PathBuf>,
    keeper: Option<Keeper>,
    /// The plan that the journal is of.
    epoch: u64,
    settings: Settings,
    title: String,
    /// Whether the host was told to close the window.
    closing: bool,
    /// What was asked for while a field was being typed into.
    waiting: Vec<Ask>,
    /// Whether the host asked to close while a field was being typed into.
    to_close: bool,
    /// Whether figures stood in an entry on the map when something was asked for.
    typed_on_map: bool,
    /// What the pointer was on outside the map when the last frame was painted.
    beside_map: Option<Thing>,
}

impl Window {
    /// A window of a plan that keeps nothing on the disk but what it is told to save. The context gets the fonts
    /// and themes; `path` is the plan's file.
    pub fn new(ctx: &egui::Context, plan: Plan, path: Option<PathBuf>, words: Words) -> Self {
        let opening = Opening { plan, path, words, ..Opening::default() };
        Self::open(ctx, opening)
    }

    /// A window as the program opens it.
    pub fn open(ctx: &egui::Context, opening: Opening) -> Self {
        let Opening { plan, path, words, is_example, example, folder, notice } = opening;
        allocator::keep_freed();
        theme::set_up(ctx);
        let [waker, caller, reckoned, seen] = [ctx.clone(), ctx.clone(), ctx.clone(), ctx.clone()];
        let settings = folder.as_deref().map(Settings::read).unwrap_or_default();
        let kept = Words { units: settings.units(), language: settings.language() };
        let words = if folder.is_some() { kept } else { words };
        let mut editor = Editor::new(plan, words);
        if is_example {
            editor.receive(Message::Example(Box::new(editor.plan().clone())));
        } else if path.is_some() {
            editor.receive(Message::Opened(Box::new(editor.plan().clone()), path.clone()));
        }
        if folder.is_some() {
            editor.receive(Message::Theme(settings.theme()));
            editor.receive(Message::Grid(settings.grid()));
            editor.receive(Message::KeepDimensions(settings.keeps_dimensions()));
            size::choose(ctx, settings.zoom());
        }
        let (keeper, left) = folder.as_deref().map(Keeper::start).unzip();
        let mut asking = Asking::new(example, left.unwrap_or_default());
        if let Some(sentence) = notice {
            asking.tell(sentence);
        }
        let mut window = Self {
            editor,
            worker: Worker::start(move || waker.request_repaint()),
            searcher: Searcher::start(move || caller.request_repaint()),
            reckoner: Reckoner::start(move || reckoned.request_repaint()),
            pictures: Pictures::start(move || seen.request_repaint()),
            map: MapSheet::default(),
            line: LineSheet::default(),
            paper: Paper::new(),
            list: ListSheet::default(),
            asking,
            folder,
            keeper,
            epoch: u64::MAX,
            settings,
            title: String::new(),
            closing: false,
            waiting: Vec::new(),
            to_close: false,
            typed_on_map: false,
            beside_map: None,
        };
        theme::show(ctx, window.editor.theme());
        window.ask();
        window.keep(ctx);
        window
    }

    /// What the window is about.
    pub fn editor(&self) -> &Editor {
        &self.editor
    }

    /// Says something to the editor, as a view would.
    pub fn say(&mut self, message: Message) {
        self.editor.receive(message);
        self.ask();
    }

    /// Says whether the host may close the window now, and asks the keeper where work is unsaved. What is being typed is
    /// committed in the next frame first; where nothing is unsaved then, the window closes itself.
    pub fn asked_to_close(&mut self, ctx: &egui::Context) -> bool {
        if ctx.text_edit_focused() && !self.asking.may_close() {
            self.to_close = true;
            ctx.request_repaint();
        } else if !self.asking.may_close() {
            let mut said = Said::default();
            self.asking.take(Ask::Close, &self.editor, field::has_unread(ctx), &mut said);
            self.take(said.messages);
        }
        self.asking.may_close()
    }

    /// Shows the window; it fills the whole surface.
    pub fn ui(&mut self, ui: &mut Ui) {
        let all = ui.ctx().content_rect();
        let ui = &mut ui.new_child(UiBuilder::new().id_salt("window").max_rect(all));
        ui.set_clip_rect(all);
        if let Some(answer) = self.worker.answer() {
            self.editor.receive(Message::Worked(Box::new(answer)));
        }
        if let Some(found) = self.searcher.found() {
            self.editor.receive(Message::Shapes(ShapesMessage::Found(Box::new(found))));
        }
        if let Some(reckoned) = self.reckoner.reckoned() {
            self.editor.receive(Message::Reckoned(Box::new(reckoned)));
        }
        if let Some(message) = self.pictures.follow(ui.ctx(), &self.editor) {
            self.editor.receive(message);
            ui.ctx().request_repaint();
        }
        theme::show(ui.ctx(), self.editor.theme());
        size::fit(ui.ctx(), all);
        ui.spacing_mut().item_spacing = egui::vec2(8.0, 0.0);
        let parts = Parts::of(all, &self.editor);

        let mut first = Said::default();
        if !self.asking.is_open() && !finder::is_open(ui) {
            shortcuts(ui, &self.editor, &mut first);
            // Under the first question there is nothing to be found or drawn yet.
            if self.editor.question().is_none() {
                finder::shortcut(ui);
            }
            map_view::keys(ui, &self.editor, &mut first);
        }
        map_view::listen(ui, parts.map, &self.editor, &mut first);
        if std::mem::take(&mut self.to_close) {
            first.ask(Ask::Close);
        }
        let mut asks = std::mem::take(&mut self.waiting);
        if ui.ctx().text_edit_focused() && !first.asks.is_empty() {
            // What is being typed is committed first, and the ask taken in the next frame; an entry on the map commits nothing
            // by itself.
            self.typed_on_map = entry::is_typed(ui.ctx());
            ui.memory_mut(|memory| memory.focused().into_iter().for_each(|id| memory.surrender_focus(id)));
            self.waiting = std::mem::take(&mut first.asks);
            ui.ctx().request_repaint();
        }
        asks.append(&mut first.asks);
        leading::chosen(ui, &first.messages);
        pages::seek_said(ui.ctx(), &self.editor, &first.messages);
        let tool = self.editor.tool().clone();
        self.take(first.messages);
        field::next(ui, pages::ground::typed_next(&tool, &self.editor));
        self.editor.receive(Message::Hover(first.hovered.or(self.beside_map)));

        let mut said = Said::default();
        // A page opened by the map may have changed the parts.
        let parts = Parts::of(all, &self.editor);
        map_view::paint(ui, parts.map, &self.editor, (&mut self.map, &self.pictures), &mut said);
        first::lesson(ui, parts.map, &self.editor);
        first::bare(ui, parts.map, &self.editor, &mut said);
        first::show(ui, parts.map, &self.editor, self.asking.is_open(), &mut said);
        under::show(ui, parts.under, &self.editor, &mut self.line, &mut said);
        if !self.editor.is_listing() {
            pages::list::closed(ui);
        }
        if self.editor.is_listing() && !self.editor.is_folded() {
            pages::list::show(ui, parts.page, &self.editor, &mut self.list, &mut said);
        } else if !self.editor.is_folded() {
            pages::show(ui, parts.page, &self.editor, &mut self.paper, &mut said);
        }
        figures::show(ui, parts.figures, &self.editor, &mut said);
        let kept = self.keeper.as_ref().is_none_or(|keeper| !keeper.wants_restart());
        let names = if all.width() < SMALL { pages::WIDTH_SMALL } else { pages::WIDTH };
        head::show(ui, parts.head, names, &self.editor, kept, &mut said);

        // What was said comes first: an ask may be about a plan that was only now begun.
        let asks: Vec<Ask> = asks.into_iter().chain(std::mem::take(&mut said.asks)).collect();
        if !asks.is_empty() {
            self.take(std::mem::take(&mut said.messages));
            ui.ctx().request_repaint();
        }
        for ask in asks {
            let unread = field::has_unread(ui.ctx()) || std::mem::take(&mut self.typed_on_map);
            self.asking.take(ask, &self.editor, unread, &mut said);
        }
        self.asking.show(ui, &self.editor, &mut said);
        if !self.asking.is_open() {
            finder::show(ui, &self.editor, &mut said);
            // What the list of commands asks for is taken in the next frame, when the list is gone.
            self.waiting.append(&mut said.asks);
        }

        if said.hovered != self.beside_map || !said.messages.is_empty() {
            self.beside_map = said.hovered;
            leading::chosen(ui, &said.messages);
            pages::seek_said(ui.ctx(), &self.editor, &said.messages);
            self.take(said.messages);
            ui.ctx().request_repaint();
        }
        self.copied(ui.ctx());
        self.ask();
        self.keep(ui.ctx());
        if self.asking.may_close() && !self.closing {
            self.closing = true;
            ui.ctx().send_viewport_cmd(egui::ViewportCommand::Close);
        }
    }

    /// Keeps the journal, the settings and the window's title up with what is shown.
    fn keep(&mut self, ctx: &egui::Context) {
        let applied = self.editor.take_applied();
        if let Some(keeper) = &mut self.keeper
            && self.editor.question().is_none()
        {
            let unsaved = self.editor.save_state().is_unsaved();
            keeper.clean = !unsaved || self.asking.may_close();
            if self.epoch == self.editor.epoch() && !keeper.wants_restart() {
                keeper.append(applied);
            } else {
                match self.asking.taken_back() {
                    Some(left) => {
                        keeper.take_up(left);
                        keeper.append(applied);
                    }
                    None => keeper.restart(self.editor.plan(), self.editor.file(), !unsaved),
                }
                self.epoch = self.editor.epoch();
            }
        }
        if let Some(folder) = &self.folder {
            let settings = Settings::of(&self.editor, size::chosen(ctx), &self.settings);
            if settings != self.settings {
                settings.write(folder);
                self.settings = settings;
            }
        }
        let name = menus::name_of(&self.editor);
        let unsaved = self.editor.save_state().is_unsaved();
        let wording = if unsaved { Files::WindowTitleUnsaved } else { Files::WindowTitle };
        let title = self.editor.words().say(wording, &[("name", &name)]);
        if title != self.title {
            ctx.send_viewport_cmd(egui::ViewportCommand::Title(title.clone()));
            self.title = title;
        }
    }

    /// What was copied goes to the clipboard.
    fn copied(&mut self, ctx: &egui::Context) {
        if let Some(text) = self.editor.take_copied() {
            ctx.copy_text(text);
        }
    }

    fn take(&mut self, messages: Vec<Message>) {
        for message in messages {
            self.editor.receive(message);
        }
    }

    fn ask(&mut self) {
        if let Some(request) = self.editor.request() {
            self.worker.ask(request);
        }
        if let Some(job) = self.editor.reckon_request() {
            self.reckoner.reckon(job);
        }
        match self.editor.search_request() {
            Some(Some(job)) => self.searcher.search(job),
            Some(None) => self.searcher.stop(),
            None => {}
        }
    }
}

fn shortcuts(ui: &Ui, editor: &Editor, said: &mut Said) {
    // In a field that is typed into these are the field's own.
    if typing::undoes_plan(ui.ctx()) {
        ui.input_mut(|input| {
            // The longer shortcut first: Ctrl+Z would match it too.
            if input.consume_shortcut(&REDO) || input.consume_shortcut(&REDO_TOO) {
                said.say(Message::Redo);
            }
            if input.consume_shortcut(&UNDO) {
                said.say(Message::Undo);
            }
        });
    }
    // And in any field these.
    if !ui.ctx().text_edit_focused() {
        let is_typed = first_corner::takes_digits(ui, editor);
        ui.input_mut(|input| {
            if input.consume_shortcut(&DOUBLE) {
                said.say(Message::Duplicate);
            }
            if editor.question().is_some() {
                return;
            }
            if input.consume_key(Modifiers::NONE, Key::F9) {
                said.say(Message::Fold(!editor.is_folded()));
            }
            // While something is drawn or placed, or a corner dragged, its figures are typed; what is half drawn is not thrown
            // away.
            let drawing = matches!(editor.tool(), Tool::Outline { corners, .. } if !corners.is_empty());
            let drawing = drawing || editor.corner_in_hand().is_some();
            if !drawing && !is_typed {
                for (page, key) in Page::ALL.into_iter().zip(PAGE_KEYS) {
                    if input.consume_key(Modifiers::NONE, key) {
                        said.say(Message::Open(page));
                    }
                }
            }
            if *editor.tool() == Tool::Pick && input.consume_key(Modifiers::NONE, Key::R) {
                said.say(Message::UseOn(Page::Run, Tool::outline(Drawn::Run)));
            }
        });
    }
    for (shortcut, larger) in [(LARGER, true), (LARGER_TOO, true), (SMALLER, false)] {
        if ui.input_mut(|input| input.consume_shortcut(&shortcut)) {
            size::step(ui.ctx(), larger);
        }
    }
    for (shortcut, ask) in [(SAVE_AS, Ask::SaveAs), (SAVE, Ask::Save), (OPEN, Ask::Open), (NEW, Ask::NewFromRolls)] {
        if ui.input_mut(|input| input.consume_shortcut(&shortcut)) {
            said.ask(ask);
        }
    }
}

/// The places of the window's parts.
struct Parts {
    head: Rect,
    map: Rect,
    under: Rect,
    page: Rect,
    figures: Rect,
}

impl Parts {
    fn of(all: Rect, editor: &Editor) -> Self {
        let page_width = if editor.is_folded() {
            0.0
        } else if all.width() < SMALL {
            pages::WIDTH_SMALL
        } else {
            pages::WIDTH
        };
        let (head, rest) = all.split_top_bottom_at_y(all.top() + head::HEIGHT);
        let (rest, figures) = rest.split_top_bottom_at_y(all.bottom() - figures::HEIGHT);
        let (left, page) = rest.split_left_right_at_x(all.right() - page_width);
        let under = under::height(editor, all.height());
        let map = Rect::from_min_max(left.min, pos2(left.right(), left.bottom() - under));
        let under = Rect::from_min_max(pos2(left.left(), map.bottom()), left.max);
        Self { head, map, under, page, figures }
    }
}
