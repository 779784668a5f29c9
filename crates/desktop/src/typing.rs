//! Whether the field that has the focus was typed into since it got it. Until then undoing is the window's, as it is where
//! no field has the focus: a name field that a new thing opens with must not swallow the undoing of that thing.

use egui::{Context, Event, Id, ImeEvent, Key};

/// The field that has the focus, and whether it was typed into.
#[derive(Clone, Copy, Default)]
struct Typing {
    field: Option<Id>,
    typed: bool,
}

fn key() -> Id {
    Id::unique("what was typed into the field in focus")
}

/// Follows the focus and what is typed; once a frame, before any field takes the keys. Whether undoing is the window's.
pub(crate) fn undoes_plan(ctx: &Context) -> bool {
    if !ctx.text_edit_focused() {
        ctx.data_mut(|data| data.remove_temp::<Typing>(key()));
        return true;
    }
    let field = ctx.memory(egui::Memory::focused);
    let before = ctx.data(|data| data.get_temp::<Typing>(key())).filter(|before| before.field == field);
    let typed = before.is_some_and(|before| before.typed) || ctx.input(|input| input.events.iter().any(changes_text));
    ctx.data_mut(|data| data.insert_temp(key(), Typing { field, typed }));
    !typed
}

/// Says that a field gets the focus with something typed into it already.
pub(crate) fn begins(ctx: &Context, field: Id) {
    ctx.data_mut(|data| data.insert_temp(key(), Typing { field: Some(field), typed: true }));
}

fn changes_text(event: &Event) -> bool {
    match event {
        Event::Text(_) | Event::Paste(_) | Event::Cut => true,
        Event::Ime(ImeEvent::Commit(text) | ImeEvent::Preedit { text, .. }) => !text.is_empty(),
        Event::Key { key, pressed, .. } => *pressed && matches!(key, Key::Backspace | Key::Delete),
        _ => false,
    }
}
