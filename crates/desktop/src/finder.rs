//! The list of commands over the window: opened by Ctrl+K or F1, searched by typing, walked by the arrow keys.

use egui::{
    Align2, Id, Key, KeyboardShortcut, Modal, Modifiers, Rect, Response, Role, ScrollArea, Sense, TextEdit, Ui,
    WidgetInfo, pos2, vec2,
};
use words::texts::Commands as Text;

use crate::commands::{self, Command, Does};
use crate::editor::Editor;
use crate::said::Said;
use crate::theme::{self, colour};
use crate::{kit, size};

const OPEN: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::K);
const WIDTH: f32 = 520.0;
const ROW: f32 = 28.0;
/// Rows in sight.
const ROWS: f32 = 12.0;

/// What is typed and which row is marked, while the list is open.
#[derive(Clone, Default)]
struct Open {
    query: String,
    row: usize,
}

fn kept() -> Id {
    Id::unique("list of commands")
}

/// Whether the list is open: then the keys are its own.
pub(crate) fn is_open(ui: &Ui) -> bool {
    ui.data(|data| data.get_temp::<Open>(kept())).is_some()
}

/// Opens the list.
pub(crate) fn open(ui: &Ui) {
    ui.data_mut(|data| data.insert_temp(kept(), Open::default()));
    ui.ctx().request_repaint();
}

/// Ctrl+K or F1 opens the list.
pub(crate) fn shortcut(ui: &Ui) {
    let asked = ui.input_mut(|input| input.consume_shortcut(&OPEN) || input.consume_key(Modifiers::NONE, Key::F1));
    if asked {
        open(ui);
    }
}

/// Shows the list, where it is open.
pub(crate) fn show(ui: &mut Ui, editor: &Editor, said: &mut Said) {
    let Some(mut open) = ui.data(|data| data.get_temp::<Open>(kept())) else { return };
    let p = editor.theme().palette();
    let commands = commands::all(editor);
    let frame = egui::Frame::new()
        .fill(colour(p.sheet))
        .stroke(egui::Stroke::new(1.0, colour(p.ink)))
        .inner_margin(16.0)
        .corner_radius(2.0);
    let modal = Modal::new(Id::unique("commands")).frame(frame);
    let shown = modal.show(ui.ctx(), |ui| {
        ui.set_width(WIDTH.min(ui.ctx().content_rect().width() - 64.0));
        ui.spacing_mut().item_spacing = vec2(8.0, 0.0);
        list(ui, editor, &commands, &mut open)
    });
    let chosen = shown.inner;
    let leaves = chosen.is_some() || shown.should_close() || ui.input(|input| input.key_pressed(Key::Escape));
    if let Some(command) = chosen.and_then(|index| commands.into_iter().nth(index)) {
        run(ui, command, said);
    }
    if leaves {
        ui.data_mut(|data| data.remove_temp::<Open>(kept()));
        ui.ctx().request_repaint();
    } else {
        ui.data_mut(|data| data.insert_temp(kept(), open));
    }
}

fn run(ui: &Ui, command: Command, said: &mut Said) {
    match command.does {
        Does::Say(message) => said.say(message),
        Does::Ask(ask) => said.ask(ask),
        Does::Paste => ui.ctx().send_viewport_cmd(egui::ViewportCommand::RequestPaste),
        Does::Size { larger } => size::step(ui.ctx(), larger),
        Does::Nothing => {}
    }
}

/// The field and the rows; the command that was chosen.
fn list(ui: &mut Ui, editor: &Editor, commands: &[Command], open: &mut Open) -> Option<usize> {
    let (words, p) = (editor.words(), editor.theme().palette());
    let (up, down, enter) = ui.input_mut(|input| {
        (
            input.count_and_consume_key(Modifiers::NONE, Key::ArrowUp),
            input.count_and_consume_key(Modifiers::NONE, Key::ArrowDown),
            input.consume_key(Modifiers::NONE, Key::Enter),
        )
    });
    let id = Id::unique("find a command");
    let field = TextEdit::singleline(&mut open.query)
        .id(id)
        .font(theme::regular(15.0))
        .desired_width(f32::INFINITY)
        .hint_text(words.text(Text::Type))
        .margin(vec2(8.0, 6.0));
    let response = ui.add(field);
    response.widget_info(|| WidgetInfo::labeled(Role::TextInput, true, words.text(Text::Find)));
    response.request_focus();
    if response.changed() {
        open.row = 0;
    }
    ui.add_space(8.0);
    let found = commands::found(commands, &open.query);
    open.row = (open.row + down).saturating_sub(up).min(found.len().saturating_sub(1));
    if found.is_empty() {
        kit::prose(ui, words.text(Text::NothingFound), theme::regular(13.0), colour(p.ink2));
        return None;
    }
    let moved = up + down > 0 || response.changed();
    let mut chosen = None;
    // The height last shown is no bound: after a search of one row the next list has its own.
    let rows = ScrollArea::vertical().max_height(ROW * ROWS).min_scrolled_height(ROW * ROWS);
    rows.auto_shrink([false, true]).show(ui, |ui| {
        let mut group = None;
        for (row, &index) in found.iter().enumerate() {
            let command = &commands[index];
            // Searched for, commands stand by how well they fit, not under their heads.
            if open.query.is_empty() && group != Some(command.group) {
                ui.add_space(if group.is_some() { 10.0 } else { 0.0 });
                kit::prose(ui, words.text(command.group), theme::regular(11.0), colour(p.ink2));
                ui.add_space(4.0);
                group = Some(command.group);
            }
            let response = one(ui, editor, command, row == open.row);
            if row == open.row && moved {
                response.scroll_to_me(None);
            }
            if response.clicked() && command.enabled {
                chosen = Some(index);
            }
        }
    });
    chosen.or_else(|| enter.then(|| found[open.row]).filter(|&index| commands[index].enabled))
}

fn one(ui: &mut Ui, editor: &Editor, command: &Command, marked: bool) -> Response {
    let p = editor.theme().palette();
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::MenuItem, command.enabled, marked, &command.name));
    if marked {
        ui.painter().rect_filled(rect, theme::RADIUS, colour(p.picked_row));
    } else if response.hovered() {
        ui.painter().rect_filled(rect, theme::RADIUS, theme::thinned(p.rule, 0.18));
    }
    let ink = colour(if command.enabled { p.ink } else { p.ink2 });
    let (left, right) = (rect.left() + 8.0, rect.right() - 12.0);
    let keys = if command.enabled { command.keys.as_str() } else { editor.words().text(Text::NotNow) };
    let at = pos2(right, rect.center().y);
    let drawn: Rect = ui.painter().text(at, Align2::RIGHT_CENTER, keys, theme::regular(12.0), colour(p.ink2));
    let galley = kit::shortened(ui, &command.name, theme::regular(13.0), ink, drawn.left() - left - 12.0);
    ui.painter().galley(pos2(left, rect.center().y - galley.size().y / 2.0), galley, ink);
    response
}
