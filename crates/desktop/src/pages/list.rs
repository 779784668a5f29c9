//! The list of everything on the map, in the page's place: found by typing, walked by the arrow keys, and the way in for
//! a screen reader. A row picks its thing; what is picked is named and its figures are typed below.
//!
//! Only the rows in sight are made: how high each is follows from its kind, and of a sentence alone from its words. Which
//! row has the keyboard lives in egui's memory.

mod layout;
mod picked;
mod rows;

use drawing::Palette;
use egui::{Id, Key, Modifiers, Rect, Role, Sense, Stroke, TextEdit, Ui, UiBuilder, WidgetInfo, pos2, vec2};
use words::Words;
use words::texts::Many as Text;

use crate::editor::{Editor, ManyMessage, Message};
use crate::icons::Icon;
use crate::kit;
use crate::roster::Item;
use crate::said::Said;
use crate::theme::{self, colour};

pub(crate) use layout::ListSheet;
use picked::{PICKED, picked};
use rows::rows;

/// The most of the page that is about what is picked.
const PICKED_SHARE: f32 = 0.36;
/// Its height before it was first measured.
const LEAST_PICKED: f32 = 54.0;

/// Which row has the keyboard, where the list stands, and what is typed to find.
#[derive(Clone, Default)]
struct Walk {
    at: Option<Item>,
    offset: f32,
    filter: String,
    /// Whether it was open in the frame before.
    open: bool,
    /// How high is what can be said of what is picked, and what is left for the rows.
    foot: f32,
    high: f32,
    /// Whether the foot grew in the frame before, over what is picked.
    keeps: bool,
}

fn kept() -> Id {
    Id::unique("list of everything on the map")
}

fn row_id(item: Item) -> Id {
    Id::unique(("listed", item))
}

/// Whether a row has the keyboard: then arrows walk the list and do not move what is picked.
pub(crate) fn is_walked(ui: &Ui) -> bool {
    let at = ui.data(|data| data.get_temp::<Walk>(kept())).filter(|walk| walk.open).and_then(|walk| walk.at);
    at.is_some_and(|item| ui.memory(|memory| memory.has_focus(row_id(item))))
}

/// The list is closed: where it stood is forgotten.
pub(crate) fn closed(ui: &Ui) {
    ui.data_mut(|data| data.remove_temp::<Walk>(kept()));
}

/// Shows the list.
pub(crate) fn show(ui: &mut Ui, rect: Rect, editor: &Editor, sheet: &mut ListSheet, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    ui.painter().rect_filled(rect, 0.0, colour(p.sheet));
    ui.painter().vline(rect.left() + 0.5, rect.y_range(), Stroke::new(1.0, colour(p.rule)));
    let margin = if rect.width() < super::WIDTH { 16.0 } else { 24.0 };
    let mut walk = ui.data(|data| data.get_temp::<Walk>(kept())).unwrap_or_default();
    let inside = rect.shrink2(vec2(margin, 0.0));
    sheet.renew(ui, editor, &walk.filter, inside.width() + 16.0);
    // As high as it was in the frame before; where it grew, the row that was picked is kept in sight.
    let foot = walk.foot.max(LEAST_PICKED);
    let mut upper = ui.new_child(UiBuilder::new().id_salt("everything").max_rect(inside));
    upper.add_space(22.0);
    let count = words.say(Text::Count, &[("count", &words.number(sheet.things as f64, 0))]);
    head(&mut upper, editor, &count, p, said);
    upper.add_space(10.0);
    let moved = find(&mut upper, words, &mut walk, p);
    upper.add_space(8.0);
    let top = upper.cursor().top();
    let place = Rect::from_min_max(pos2(inside.left() - 8.0, top), pos2(inside.right() + 8.0, rect.bottom() - foot));
    if sheet.entries.is_empty() {
        let nothing = if walk.filter.is_empty() { Text::NothingYet } else { Text::NothingFound };
        kit::prose(&mut upper, words.text(nothing), theme::regular(13.0), colour(p.ink2));
    } else {
        rows(ui, place, editor, sheet, &mut walk, moved, said);
    }
    let below = Rect::from_min_max(pos2(rect.left() + 1.0, rect.bottom() - foot), rect.max);
    ui.painter().hline(inside.x_range(), below.top() + 0.5, Stroke::new(1.0, colour(p.rule)));
    let high = picked(ui, below.shrink2(vec2(margin, 0.0)), editor, said);
    let high = high.min(PICKED).min(rect.height() * PICKED_SHARE).max(LEAST_PICKED).round();
    if high != foot {
        ui.ctx().request_repaint();
    }
    (walk.open, walk.foot) = (true, high);
    ui.data_mut(|data| data.insert_temp(kept(), walk));
}

/// The title, how many there are, and the way out.
fn head(ui: &mut Ui, editor: &Editor, count: &str, p: &Palette, said: &mut Said) {
    let words = editor.words();
    let title = words.text(Text::Everything);
    let count = ui.painter().layout_no_wrap(count.to_owned(), theme::regular(12.0), colour(p.ink2));
    let room = ui.available_width() - 32.0 - 8.0;
    let galley = ui.painter().layout(title.to_owned(), theme::semi_bold(16.0), colour(p.ink), room);
    let high = galley.size().y + count.size().y;
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), high), Sense::hover());
    let button = Rect::from_min_size(pos2(rect.right() - 32.0, rect.top() - 2.0), vec2(32.0, 32.0));
    let mut inside = ui.new_child(UiBuilder::new().id_salt("close").max_rect(button));
    if kit::icon_button(&mut inside, Icon::TakeOut, words.text(Text::Close), true, false, p).clicked() {
        said.say(Message::Many(ManyMessage::List(false)));
    }
    let place = Rect::from_min_size(rect.min, galley.size());
    ui.interact(place, kept().with("title"), Sense::hover())
        .widget_info(|| WidgetInfo::labeled(Role::Heading, true, title));
    ui.painter().galley(place.min, galley, colour(p.ink));
    ui.painter().galley(place.left_bottom(), count, colour(p.ink2));
}

/// The field to find by; whether the keyboard goes from it to the first row.
fn find(ui: &mut Ui, words: Words, walk: &mut Walk, p: &Palette) -> bool {
    let id = kept().with("filter");
    let has_focus = ui.memory(|memory| memory.has_focus(id));
    let down = has_focus && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::ArrowDown));
    if ui.input_mut(|input| input.consume_key(Modifiers::COMMAND, Key::F)) {
        ui.memory_mut(|memory| memory.request_focus(id));
    }
    let field = TextEdit::singleline(&mut walk.filter)
        .id(id)
        .font(theme::regular(13.0))
        .desired_width(f32::INFINITY)
        .hint_text(words.text(Text::FilterHint))
        .margin(vec2(8.0, 5.0));
    let response = ui.add(field);
    response.widget_info(|| WidgetInfo::labeled(Role::SearchInput, true, words.text(Text::Filter)));
    kit::focus_ring(ui, &response, p);
    if response.changed() {
        walk.offset = 0.0;
    }
    down
}
