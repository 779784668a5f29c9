//! The small entry at the pointer: figures of what is in the hand, typed without letting go of it.
//!
//! It goes along with the pointer, so nothing of it can be clicked: the first digit goes to its first field, Tab walks
//! through the fields, Enter sets, Esc gives back to the pointer. What is being typed lives in egui's memory. Figures that
//! cannot be used stay, with a sentence under the entry, and change nothing.

use drawing::{Colour, Palette, Taken, Thing};
use egui::{
    Align2, EventFilter, Id, Key, LayerId, Margin, Modifiers, Order, Pos2, Rect, Role, Sense, Shape, Stroke, TextEdit,
    Ui, UiBuilder, Vec2, WidgetInfo, pos2, vec2,
};

use crate::editor::Editor;
use crate::theme::{self, colour};
use crate::{field, icons, kit, measured, nodes};

/// From the pointer to the entry, and where the corner's own plate and brace stand between.
const OFFS: [f32; 3] = [28.0, 54.0, 80.0];
/// What stands so near the corner in hand is its own, pixels.
const OWN_PX: f64 = 64.0;
/// Round a corner stand its plate and its brace, pixels.
const AROUND: f32 = 24.0;

/// A field of the entry.
pub(crate) struct Cell {
    /// Its label in sight, before it.
    pub(crate) label: String,
    /// Its label to a screen reader.
    pub(crate) said: String,
    /// What it shows while nobody types.
    pub(crate) figure: String,
    /// Its unit, inside.
    pub(crate) unit: &'static str,
    /// Width for the figure.
    pub(crate) wide: f32,
}

/// Under this name it is kept that something was typed since the hand led last.
fn typing() -> Id {
    Id::unique("typed at the pointer")
}

/// No entry has more fields.
const MOST_CELLS: usize = 4;

fn id_of(cell: usize) -> Id {
    Id::unique(("entry", cell))
}

/// Where the entry stands: beyond the corner in hand, on the way that it goes, within the map; elsewhere beside it where
/// it would cover that corner or others, or a plate on a leader: what the hand does to the weakest post is to be seen.
pub(crate) fn beside(
    rect: Rect,
    (next, way): (Pos2, Vec2),
    size: Vec2,
    others: &[Pos2],
    editor: &Editor,
    map: &Taken,
) -> Rect {
    let at = |right: bool, down: bool, off: f32| {
        let right = if right { off } else { -off - size.x };
        let down = if down { off } else { -off - size.y };
        measured::within(Rect::from_min_size(next + vec2(right, down), size), rect, editor)
    };
    let (right, down) = (way.x >= 0.0, way.y >= 0.0);
    let covered = |place: &Rect| {
        let around = place.expand(AROUND);
        // The corner in hand goes before any other.
        let hand = if place.expand(AROUND / 2.0).contains(next) { others.len() + 1 } else { 0 };
        let on_map = place.translate(-rect.min.to_vec2());
        let part = [on_map.left(), on_map.top(), on_map.right(), on_map.bottom()];
        let about: [f32; 2] = (next - rect.min.to_vec2()).into();
        let (near, all) = map.signs_under(part, about, OWN_PX);
        let signs = map.flags_under(part) + near;
        let others = others.iter().filter(|&&other| around.contains(other)).count();
        // It lies on other signs and hides words only where that spares those.
        let elsewhere = all + map.words_under(&[part]).len();
        (hand + signs + others, elsewhere)
    };
    let ways = [(right, down), (right, !down), (!right, down), (!right, !down)];
    let places = ways.into_iter().flat_map(|(right, down)| OFFS.map(|off| at(right, down, off)));
    // Of equal ones the first.
    places.min_by_key(covered).unwrap_or_else(|| at(right, down, OFFS[0]))
}

/// How high an entry is that has nothing over its fields.
pub(crate) const TALL: f32 = 84.0;

/// Its size: so wide that its last line is not cut.
pub(crate) fn size(least: f32, foot: &str) -> Vec2 {
    let wide = drawing::letters::text_width(foot, 12.0, drawing::Weight::Medium);
    vec2(least.max(wide + 42.0), TALL)
}

/// An entry that has nothing over its fields, in its place on the map: its plate, its fields, what holds the corner in its
/// last line. What is typed now, and whether it is set.
pub(crate) fn show<T: Copy + Default>(
    ui: &Ui,
    place: Rect,
    (cells, typed): (&[Cell], T),
    (foot_text, foot_ink): (&str, Colour),
    p: &Palette,
    read: impl Fn(usize, &str, T) -> Result<T, String>,
) -> (T, bool) {
    // It goes along with the pointer, so nothing of it can be clicked; the keys reach it. An area of egui's would not hear
    // the very first digit: it is only measured in the frame in which it comes.
    let id = Id::unique("entry on the map");
    let on_top = UiBuilder::new().layer_id(LayerId::new(Order::Foreground, id)).max_rect(place);
    let mut ui = Ui::new(ui.ctx().clone(), id, on_top);
    // What is refused stands under its plate.
    ui.set_clip_rect(ui.ctx().content_rect());
    let response = ui.allocate_rect(place, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, foot_text));
    back(&ui, place, p);
    let read = fields(&mut ui, place, cells, typed, p, read);
    foot(&ui, place, foot_text, foot_ink, p);
    read
}

/// Its plate.
pub(crate) fn back(ui: &Ui, place: Rect, p: &Palette) {
    let edge = Stroke::new(1.5, colour(p.ink));
    ui.painter().add(Shape::convex_polygon(icons::cut_plate(place, 8.0), colour(p.sheet), edge));
}

/// Its last line: what holds the corner.
pub(crate) fn foot(ui: &Ui, place: Rect, text: &str, ink: Colour, p: &Palette) {
    let y = place.bottom() - 18.0;
    let across = place.left() + 12.0..=place.right() - 12.0;
    ui.painter().hline(across, place.bottom() - 34.0, Stroke::new(1.0, colour(p.hairline)));
    let mark = pos2(place.left() + 16.0, y);
    let ends = [vec2(0.0, -4.0), vec2(4.0, 0.0), vec2(0.0, 4.0), vec2(-4.0, 0.0)].map(|by| mark + by);
    ui.painter().add(Shape::convex_polygon(ends.to_vec(), colour(ink), Stroke::NONE));
    let at = pos2(place.left() + 28.0, y);
    let said = kit::shortened(ui, text, theme::medium(12.0), colour(ink), place.right() - 12.0 - at.x);
    ui.painter().galley(at - vec2(0.0, said.size().y / 2.0), said, colour(ink));
}

/// The fields over the foot; what is typed now, and whether it is set.
pub(crate) fn fields<T: Copy + Default>(
    ui: &mut Ui,
    place: Rect,
    cells: &[Cell],
    typed: T,
    p: &Palette,
    read: impl Fn(usize, &str, T) -> Result<T, String>,
) -> (T, bool) {
    focus_by_typing(ui);
    let (mut next, mut set, mut refused) = (typed, false, None);
    let mut left = place.left() + 12.0;
    let middle = place.bottom() - 58.0;
    for (index, cell) in cells.iter().enumerate() {
        let unit_wide = text_width(ui, cell.unit);
        let id = id_of(index);
        let at = pos2(left, middle);
        let named = ui.painter().text(at, Align2::LEFT_CENTER, &cell.label, theme::regular(11.0), colour(p.ink2));
        let rect = Rect::from_min_size(pos2(named.right() + 5.0, middle - 11.0), vec2(cell.wide + unit_wide, 22.0));
        left = rect.right() + 8.0;
        let kept = ui.data(|data| data.get_temp::<String>(id));
        let focused = ui.memory(|memory| memory.has_focus(id));
        // Begun by a digit, or refused and given the keys again: what was typed goes on.
        let is_typed = kept.is_some();
        let mut text = kept.filter(|_| focused).unwrap_or_else(|| cell.figure.clone());
        let edit = TextEdit::singleline(&mut text).id(id).font(theme::medium(13.0));
        let margin = Margin { left: 3, right: unit_wide as i8 + 7, top: 2, bottom: 2 };
        // Esc is the field's own first: it gives back to the pointer and leaves nothing.
        let keys = EventFilter { horizontal_arrows: true, vertical_arrows: true, tab: false, escape: true };
        let response = ui.put(rect, edit.align(Align2::RIGHT_CENTER).margin(margin).event_filter(keys));
        let unit_at = pos2(rect.right() - 5.0, rect.center().y);
        ui.painter().text(unit_at, Align2::RIGHT_CENTER, cell.unit, theme::regular(11.0), colour(p.ink2));
        response.widget_info(|| WidgetInfo::labeled(Role::TextInput, true, cell.said.as_str()));
        // What stands there is replaced by what is typed, however the field came by the keys.
        if response.gained_focus()
            && !is_typed
            && let Some(state) = TextEdit::load_state(ui.ctx(), id)
        {
            field::mark_all(ui.ctx(), id, state, &text);
        }
        if response.has_focus() && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape)) {
            next = T::default();
            forget(ui);
            ui.data_mut(|data| data.remove_temp::<String>(id));
            continue;
        }
        // A field lets the focus go on Enter.
        let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        if !response.has_focus() && !entered {
            ui.data_mut(|data| data.remove_temp::<String>(id));
            continue;
        }
        if response.changed() || ui.data(|data| data.get_temp::<bool>(typing())).is_some() {
            ui.data_mut(|data| data.insert_temp(typing(), true));
            match read(index, &text, next) {
                Ok(read) => next = read,
                Err(sentence) => refused = Some((index, sentence)),
            }
        }
        ui.data_mut(|data| data.insert_temp(id, text));
        set |= entered;
    }
    if let Some((index, sentence)) = refused {
        // What cannot be used stays to be mended.
        if set {
            ui.memory_mut(|memory| memory.request_focus(id_of(index)));
        }
        refusal(ui, place, sentence, p);
        return (next, false);
    }
    if set {
        forget(ui);
    }
    (next, set)
}

/// Whether text is typed that begins so.
fn text_begins(ui: &Ui, so: impl Fn(char) -> bool) -> bool {
    ui.input(|input| input.events.iter().any(|event| matches!(event, egui::Event::Text(text) if text.starts_with(&so))))
}

/// Whether a digit is typed.
pub(crate) fn digit_typed(ui: &Ui) -> bool {
    text_begins(ui, |letter| letter.is_ascii_digit())
}

/// Whether a sign is typed, or a decimal mark.
pub(crate) fn sign_typed(ui: &Ui) -> bool {
    text_begins(ui, |letter| ['-', '−', '.', ','].contains(&letter))
}

/// Whether Enter opens the entry at a thing now: it is pressed while nothing has the keys but the thing's own node.
pub(crate) fn opens(ui: &Ui, thing: Thing) -> bool {
    let focused = ui.memory(egui::Memory::focused);
    let free = focused.is_none_or(|id| id == nodes::id(thing));
    let opens = free && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Enter));
    if opens {
        ui.memory_mut(|memory| memory.request_focus(id_of(0)));
        if let Some(id) = focused {
            ui.data_mut(|data| data.insert_temp(opener(), id));
        }
    }
    opens
}

/// Keeps what is typed at a thing for the next frame; `None` closes its entry.
pub(crate) fn keep<T: Clone + Send + Sync + 'static>(ui: &Ui, id: Id, typed: Option<(Thing, T)>) {
    if let Some(typed) = typed {
        ui.data_mut(|data| data.insert_temp(id, typed));
    } else {
        ui.data_mut(|data| data.remove::<(Thing, T)>(id));
        closed(ui);
    }
}

/// The node from which the entry was opened.
fn opener() -> Id {
    Id::unique("the entry was opened from")
}

/// Whether one of its fields, of that many, has the keys.
pub(crate) fn has_keys(ui: &Ui, cells: usize) -> bool {
    ui.memory(|memory| (0..cells).any(|cell| memory.has_focus(id_of(cell))))
}

/// Tab goes round in it: from its last field to the first, and back with Shift.
pub(crate) fn tabs_round(ui: &Ui, cells: usize) {
    let (first, last) = (id_of(0), id_of(cells.saturating_sub(1)));
    for (from, to, modifiers) in [(last, first, Modifiers::NONE), (first, last, Modifiers::SHIFT)] {
        if ui.memory(|memory| memory.has_focus(from)) && ui.input_mut(|input| input.consume_key(modifiers, Key::Tab)) {
            ui.memory_mut(|memory| {
                memory.move_focus(egui::FocusDirection::None);
                memory.request_focus(to);
            });
        }
    }
}

/// Whether something stands in an entry that was typed and is not set yet.
pub(crate) fn is_typed(ctx: &egui::Context) -> bool {
    ctx.data(|data| data.get_temp::<bool>(typing())).is_some()
}

/// The entry is gone, and what was typed in it with it.
pub(crate) fn closed(ui: &Ui) {
    ui.data_mut(|data| {
        data.remove_temp::<bool>(typing());
        data.remove::<Id>(opener());
        (0..MOST_CELLS).for_each(|cell| data.remove::<String>(id_of(cell)));
    });
}

/// What is typed is over: the pointer leads again, or the node from which the entry was opened has the keys.
fn forget(ui: &Ui) {
    let opener = ui.data_mut(|data| {
        data.remove_temp::<bool>(typing());
        let id = data.get_temp::<Id>(opener());
        data.remove::<Id>(opener());
        id
    });
    ui.memory_mut(|memory| {
        memory.focused().into_iter().for_each(|id| memory.surrender_focus(id));
        if let Some(id) = opener {
            memory.request_focus(id);
        }
    });
}

/// What is typed goes to the first field: emptied, it reads that itself, in this same frame.
pub(crate) fn begin(ui: &Ui) {
    let first = id_of(0);
    ui.data_mut(|data| {
        data.insert_temp(first, String::new());
        data.insert_temp(typing(), true);
    });
    crate::typing::begins(ui.ctx(), first);
    ui.memory_mut(|memory| memory.request_focus(first));
}

/// Figures that are typed while nothing has the focus go to the first field, and so does Tab.
fn focus_by_typing(ui: &Ui) {
    // Under a question over the window the keys are its own.
    if ui.ctx().text_edit_focused() || ui.memory(|memory| memory.top_modal_layer().is_some()) {
        return;
    }
    let first = id_of(0);
    if digit_typed(ui) {
        begin(ui);
    } else if ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Tab)) {
        // Tab has set out for the next widget of the window; it ends here.
        ui.memory_mut(|memory| {
            memory.move_focus(egui::FocusDirection::None);
            memory.request_focus(first);
        });
    }
}

/// Why what is typed cannot be used, under the entry.
fn refusal(ui: &Ui, place: Rect, sentence: String, p: &Palette) {
    let said = sentence.clone();
    let galley = ui.painter().layout(sentence, theme::medium(12.0), colour(p.danger), place.width() - 24.0);
    let under = Rect::from_min_size(place.left_bottom() + vec2(0.0, 4.0), galley.size() + vec2(24.0, 12.0));
    let edge = Stroke::new(1.25, colour(p.danger));
    ui.painter().add(Shape::convex_polygon(icons::cut_plate(under, 5.0), colour(p.sheet), edge));
    ui.painter().galley(under.min + vec2(12.0, 6.0), galley, colour(p.danger));
    let response = ui.interact(under, Id::unique("refused at the pointer"), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, said.as_str()));
}

fn text_width(ui: &Ui, text: &str) -> f32 {
    ui.painter().layout_no_wrap(text.to_owned(), theme::regular(11.0), egui::Color32::PLACEHOLDER).size().x
}
