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

use crate::editor::{Editor, Message};
use crate::map_view::{self, MapSheet};
use crate::pages::{self, sheet::Paper};
use crate::said::Said;
use crate::under::{self, LineSheet};
use crate::worker::Worker;
use crate::{figures, head, theme};

/// Width of the window below which it counts as small.
const SMALL: f32 = 1000.0;

const UNDO: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::Z);
const REDO: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::Z);
const REDO_TOO: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::Y);

/// The whole window, on whatever surface egui has.
pub struct Window {
    editor: Editor,
    worker: Worker,
    map: MapSheet,
    line: LineSheet,
    paper: Paper,
    /// What the pointer was on outside the map when the last frame was painted.
    beside_map: Option<Thing>,
}

impl Window {
    /// A window of a plan. The context gets the fonts and themes; `path` is the plan's file.
    pub fn new(ctx: &egui::Context, plan: Plan, path: Option<PathBuf>, words: Words) -> Self {
        theme::set_up(ctx);
        let waker = ctx.clone();
        let paper = Paper::beside(path.as_deref(), &plan.title);
        let mut window = Self {
            editor: Editor::new(plan, words),
            worker: Worker::start(move || waker.request_repaint()),
            map: MapSheet::default(),
            line: LineSheet::default(),
            paper,
            beside_map: None,
        };
        theme::show(ctx, window.editor.theme());
        window.ask();
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

    /// Shows the window; it fills the whole surface.
    pub fn ui(&mut self, ui: &mut Ui) {
        let all = ui.ctx().content_rect();
        let ui = &mut ui.new_child(UiBuilder::new().id_salt("window").max_rect(all));
        ui.set_clip_rect(all);
        if let Some(answer) = self.worker.answer() {
            self.editor.receive(Message::Worked(answer));
        }
        theme::show(ui.ctx(), self.editor.theme());
        ui.spacing_mut().item_spacing = egui::vec2(8.0, 0.0);
        let parts = Parts::of(all, &self.editor);

        let mut first = Said::default();
        shortcuts(ui, &mut first);
        map_view::keys(ui, &self.editor, &mut first);
        map_view::listen(ui, parts.map, &self.editor, &mut first);
        self.take(first.messages);
        self.editor.receive(Message::Hover(first.hovered.or(self.beside_map)));

        let mut said = Said::default();
        // A page opened by the map may have changed the parts.
        let parts = Parts::of(all, &self.editor);
        map_view::paint(ui, parts.map, &self.editor, &mut self.map, &mut said);
        under::show(ui, parts.under, &self.editor, &mut self.line, &mut said);
        pages::show(ui, parts.page, &self.editor, &mut self.paper, &mut said);
        figures::show(ui, parts.figures, &self.editor, &mut said);
        head::show(ui, parts.head, parts.page.width(), &self.editor, &mut said);

        if said.hovered != self.beside_map || !said.messages.is_empty() {
            self.beside_map = said.hovered;
            self.take(said.messages);
            ui.ctx().request_repaint();
        }
        self.ask();
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
    }
}

fn shortcuts(ui: &Ui, said: &mut Said) {
    if ui.ctx().text_edit_focused() {
        return;
    }
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
        let page_width = if all.width() < SMALL { pages::WIDTH_SMALL } else { pages::WIDTH };
        let (head, rest) = all.split_top_bottom_at_y(all.top() + head::HEIGHT);
        let (rest, figures) = rest.split_top_bottom_at_y(all.bottom() - figures::HEIGHT);
        let (left, page) = rest.split_left_right_at_x(all.right() - page_width);
        let under = under::height(editor, all.height());
        let map = Rect::from_min_max(left.min, pos2(left.right(), left.bottom() - under));
        let under = Rect::from_min_max(pos2(left.left(), map.bottom()), left.max);
        Self { head, map, under, page, figures }
    }
}
