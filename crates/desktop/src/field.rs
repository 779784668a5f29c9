//! Fields that a keeper types into: a label at the left, the figure and its unit at the right.
//!
//! A field commits on Enter, on Tab and when the focus goes elsewhere, and says so once. Words that cannot be used
//! stay, with a sentence under them, until they are mended or Esc restores the old value; the plan keeps that value
//! meanwhile. What is being typed lives in egui's memory under the caller's id, which is made of the thing that the
//! figure belongs to, so that it never wanders to another. While a field has the focus, the window's keys are quiet
//! (`Context::text_edit_focused`).

use drawing::Palette;
use egui::{
    Align, Align2, Color32, EventFilter, Frame, Id, Key, Margin, Modifiers, Rect, Response, Role, Sense, Stroke,
    StrokeKind, TextEdit, Ui, WidgetInfo, pos2, vec2,
};
use words::{Measure, Range, Words};

use crate::kit;
use crate::pages::{self, Mark};
use crate::theme::{self, RADIUS, colour};

/// Height of a field's row, and of the field.
const ROW: f32 = 28.0;
const TALL: f32 = 24.0;
/// Width of a field for a figure, of the column for units after it, of a field for a name.
const FIGURE: f32 = 72.0;
const UNIT: f32 = 32.0;
const NAME: f32 = 156.0;
/// From a field's edge to its text.
const INSIDE: f32 = 6.0;

/// What a field is called: in sight, and to a screen reader, which does not see the head above it.
#[derive(Clone, Copy)]
pub(crate) struct Label<'a> {
    /// In sight.
    pub(crate) shown: &'a str,
    /// To a screen reader.
    pub(crate) said: &'a str,
}

impl<'a> From<&'a str> for Label<'a> {
    fn from(label: &'a str) -> Self {
        Self { shown: label, said: label }
    }
}

/// What stands in a field while nobody types.
pub(crate) struct Shown {
    /// The figure or word.
    pub(crate) figure: String,
    /// Its unit.
    pub(crate) unit: &'static str,
    /// Whether it is assumed.
    pub(crate) assumed: bool,
}

impl Shown {
    /// A value of some measure; assumed where it was not stated.
    pub(crate) fn of(words: Words, measure: Measure, value: f64, assumed: bool) -> Self {
        let (figure, unit) = words.typed_parts(measure, value);
        Self { figure, unit, assumed }
    }

    /// Nothing yet; its unit stands after the field.
    pub(crate) fn nothing(words: Words, measure: Measure) -> Self {
        Self { figure: String::new(), unit: words.typed_parts(measure, 0.0).1, assumed: false }
    }
}

/// Reads a figure of some measure within a range.
pub(crate) fn figure(words: Words, measure: Measure, range: Range) -> impl Fn(&str) -> Result<f64, String> {
    move |text| words.read(measure, text, range).map_err(|refused| refused.sentence(words))
}

/// Reads a whole number within a range.
pub(crate) fn count(words: Words, range: Range) -> impl Fn(&str) -> Result<u32, String> {
    move |text| words.read_count(text, range).map_err(|refused| refused.sentence(words))
}

/// Reads as `read` does; an emptied field takes the statement back.
pub(crate) fn or_nothing<T>(read: impl Fn(&str) -> Result<T, String>) -> impl Fn(&str) -> Result<Option<T>, String> {
    move |text| if text.trim().is_empty() { Ok(None) } else { read(text).map(Some) }
}

/// A field for a figure; what was read, once for each commit.
pub(crate) fn line<'a, T>(
    ui: &mut Ui,
    p: &Palette,
    id: Id,
    label: impl Into<Label<'a>>,
    shown: &Shown,
    read: impl Fn(&str) -> Result<T, String>,
) -> Option<T> {
    let look = Look { wide: FIGURE, align: Align2::RIGHT_CENTER };
    row(ui, p, id, label.into(), shown, look, read)
}

/// A field for a name; what was read, once for each commit.
pub(crate) fn text<'a, T>(
    ui: &mut Ui,
    p: &Palette,
    id: Id,
    label: impl Into<Label<'a>>,
    shown: &str,
    read: impl Fn(&str) -> Result<T, String>,
) -> Option<T> {
    let shown = Shown { figure: shown.to_owned(), unit: "", assumed: false };
    row(ui, p, id, label.into(), &shown, Look { wide: NAME, align: Align2::LEFT_CENTER }, read)
}

/// A few words side by side, of which one holds; the one that was chosen instead.
pub(crate) fn choice<'a, T: PartialEq + Copy>(
    ui: &mut Ui,
    p: &Palette,
    label: impl Into<Label<'a>>,
    options: &[(T, &str)],
    on: Option<T>,
) -> Option<T> {
    let label = label.into();
    let wide = |ui: &Ui| -> f32 {
        let one = |word: &str| {
            ui.painter().layout_no_wrap(word.to_owned(), theme::semi_bold(13.0), Color32::PLACEHOLDER).size().x + 20.0
        };
        options.iter().map(|(_, word)| one(word) + 4.0).sum::<f32>() - 4.0
    };
    let room = ui.available_width();
    let galley = ui.painter().layout(label.shown.to_owned(), theme::regular(13.0), colour(p.ink2), room);
    let words_wide = wide(ui);
    let beside = galley.size().x + 12.0 + words_wide <= room;
    let (rect, response) = ui.allocate_exact_size(vec2(room, ROW.max(galley.size().y + 8.0)), Sense::hover());
    name(&response, label.said);
    ui.painter().galley(pos2(rect.left(), rect.center().y - galley.size().y / 2.0), galley, colour(p.ink2));
    let mut chosen = None;
    let mut words = |ui: &mut Ui| {
        ui.spacing_mut().item_spacing = vec2(4.0, 4.0);
        for (value, word) in options {
            let here = on == Some(*value);
            if kit::choice(ui, word, here, p).clicked() && !here {
                chosen = Some(*value);
            }
        }
    };
    if beside {
        let at = Rect::from_min_max(pos2(rect.right() - words_wide, rect.top() + (ROW - TALL) / 2.0), rect.max);
        let mut inside =
            ui.new_child(egui::UiBuilder::new().max_rect(at).layout(egui::Layout::left_to_right(Align::Min)));
        words(&mut inside);
    } else {
        ui.horizontal_wrapped(words);
        ui.add_space(4.0);
    }
    chosen
}

/// How a field is set.
#[derive(Clone, Copy)]
struct Look {
    wide: f32,
    align: Align2,
}

/// What is being typed, what stood there before, and why it was refused.
#[derive(Clone, Default)]
struct Draft {
    text: String,
    before: String,
    refused: bool,
}

/// What stands in a field: where it changes, in its unit too, what was refused before it goes.
fn standing(shown: &Shown) -> String {
    format!("{} {}", shown.figure, shown.unit)
}

fn row<T>(
    ui: &mut Ui,
    p: &Palette,
    id: Id,
    label: Label<'_>,
    shown: &Shown,
    look: Look,
    read: impl Fn(&str) -> Result<T, String>,
) -> Option<T> {
    let wide = ui.available_width();
    let galley = ui.painter().layout(label.shown.to_owned(), theme::regular(13.0), colour(p.ink2), wide);
    // A long label stands over its field.
    let above = galley.size().x > wide - UNIT - look.wide - 12.0;
    let head = if above { galley.size().y + 4.0 } else { 0.0 };
    let (all, labelled) = ui.allocate_exact_size(vec2(wide, head + ROW), Sense::hover());
    name(&labelled, label.said);
    kit::told(ui, &labelled);
    let rect = Rect::from_min_max(all.min + vec2(0.0, head), all.max);
    let right = rect.right() - UNIT;
    let place = Rect::from_min_max(
        pos2(right - look.wide, rect.top() + (ROW - TALL) / 2.0),
        pos2(right, rect.bottom() - (ROW - TALL) / 2.0),
    );
    let top = if above { all.top() + 4.0 } else { rect.center().y - galley.size().y / 2.0 };
    ui.painter().galley(pos2(all.left(), top), galley, colour(p.ink2));
    ui.painter().text(
        pos2(place.right() + 5.0, rect.center().y),
        Align2::LEFT_CENTER,
        shown.unit,
        theme::regular(12.0),
        colour(p.ink2),
    );

    let (read_now, refused) = typed(ui, p, id, place, &labelled, shown, look, read);
    if let Some(sentence) = refused {
        refusal(ui, &sentence, p);
    }
    read_now
}

/// Why something typed cannot be used, under its field; as it comes it is brought into sight.
pub(crate) fn refusal(ui: &mut Ui, sentence: &str, p: &Palette) {
    ui.add_space(2.0);
    let said = kit::prose(ui, sentence, theme::regular(12.0), colour(p.danger));
    ui.add_space(8.0);
    let (now, seen) = (ui.ctx().cumulative_frame_nr(), said.id.with("refused in frame"));
    let before = ui.data_mut(|data| {
        let before = data.get_temp::<u64>(seen);
        data.insert_temp(seen, now);
        before
    });
    if before.is_none_or(|before| before + 1 < now) {
        pages::seek(ui.ctx(), Some(Mark::Widget(said.id)));
    }
}

/// A field in a table, its label in the head over it; what was read, once for each commit, and why something else was
/// refused, which the table says under its row.
pub(crate) fn cell<T>(
    ui: &mut Ui,
    p: &Palette,
    id: Id,
    place: Rect,
    said: &str,
    shown: &Shown,
    read: impl Fn(&str) -> Result<T, String>,
) -> (Option<T>, Option<String>) {
    let labelled = ui.interact(place, id.with("label"), Sense::hover());
    name(&labelled, said);
    let look = Look { wide: place.width(), align: Align2::RIGHT_CENTER };
    typed(ui, p, id, place, &labelled, shown, look, read)
}

/// The field itself.
#[expect(clippy::too_many_arguments, reason = "what a field is made of, named apart by its callers")]
fn typed<T>(
    ui: &mut Ui,
    p: &Palette,
    id: Id,
    place: Rect,
    labelled: &Response,
    shown: &Shown,
    look: Look,
    read: impl Fn(&str) -> Result<T, String>,
) -> (Option<T>, Option<String>) {
    let key = id.with("draft");
    let mut draft = ui.data(|data| data.get_temp::<Draft>(key));
    let mut text = draft.as_ref().map_or_else(|| shown.figure.clone(), |draft| draft.text.clone());
    let response = entry(ui, place, id, &mut text, look, p).labelled_by(labelled.id);
    // A press elsewhere ends the typing before it can turn the page.
    if response.has_focus() && !response.contains_pointer() && ui.input(|input| input.pointer.any_pressed()) {
        response.surrender_focus();
    }
    let typing = response.has_focus() || response.lost_focus() || response.changed();
    if !typing {
        kit::told(ui, &response);
    }
    // What stood there has changed meanwhile, or the field went out of sight before it could commit.
    if draft
        .take_if(|draft| !typing && (!draft.refused || draft.before != standing(shown) || read(&draft.text).is_ok()))
        .is_some()
    {
        ui.ctx().request_repaint();
    }
    let refused = draft.as_ref().is_some_and(|draft| draft.refused);
    frame(ui, place, &response, refused, p);
    if shown.assumed && draft.is_none() && !response.has_focus() {
        let galley = ui.painter().layout_no_wrap(text.clone(), theme::regular(13.0), Color32::PLACEHOLDER);
        let end = place.right() - INSIDE;
        kit::dots(ui.painter(), end - galley.size().x, end, place.bottom() - 3.0, p);
    }

    if response.changed() {
        let refused = draft.is_some_and(|draft| draft.refused) && read(&text).is_err();
        draft = Some(Draft { text: text.clone(), before: standing(shown), refused });
    }
    let mut read_now = None;
    if response.has_focus() && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape)) {
        draft = None;
        response.surrender_focus();
    } else if response.lost_focus() || (response.changed() && !response.has_focus()) {
        let entered = ui.input(|input| input.key_pressed(Key::Enter));
        draft = draft.filter(|draft| shown.assumed || draft.text.trim() != shown.figure).and_then(|draft| {
            if let Ok(value) = read(&draft.text) {
                read_now = Some(value);
                return None;
            }
            if entered {
                response.request_focus();
            }
            Some(Draft { refused: true, ..draft })
        });
    }
    // Read anew, so that the sentence speaks of what holds now.
    let sentence = draft.as_ref().filter(|draft| draft.refused).and_then(|draft| read(&draft.text).err());
    if sentence.is_some() {
        let now = ui.ctx().cumulative_frame_nr();
        ui.data_mut(|data| data.insert_temp(unread(), now));
    }
    ui.data_mut(|data| match draft {
        Some(draft) => {
            data.insert_temp(key, draft);
        }
        None => data.remove::<Draft>(key),
    });
    (read_now, sentence)
}

/// Under this name it is kept in which frame something last stood in a field that could not be read.
fn unread() -> Id {
    Id::unique("something typed that cannot be read")
}

/// Whether something stands in a field in sight that cannot be read.
pub(crate) fn has_unread(ctx: &egui::Context) -> bool {
    let last = ctx.data(|data| data.get_temp::<u64>(unread()));
    last.is_some_and(|frame| frame + 1 >= ctx.cumulative_frame_nr())
}

/// Gives the field the keys that was asked for a frame ago, and asks for the next one: what asks is often a click, which
/// takes the keys from every field that it is not in.
pub(crate) fn next(ui: &Ui, asked: Option<Id>) {
    let key = Id::unique("the field that is typed into next");
    if let Some(id) = ui.data(|data| data.get_temp::<Id>(key)) {
        ui.data_mut(|data| data.remove::<Id>(key));
        crate::pages::seek(ui.ctx(), Some(crate::pages::Mark::Widget(id)));
        ui.memory_mut(|memory| memory.request_focus(id));
    }
    if let Some(id) = asked {
        ui.data_mut(|data| data.insert_temp(key, id));
        ui.ctx().request_repaint();
    }
}

/// Marks all that stands in a field: the first key replaces it.
pub(crate) fn mark_all(ctx: &egui::Context, id: Id, mut state: egui::text_edit::TextEditState, text: &str) {
    let end = egui::text::CCursor::new(text.chars().count());
    let all = egui::text::CCursorRange::two(egui::text::CCursor::default(), end);
    state.cursor.set_char_range(Some(all));
    state.store(ctx, id);
}

/// The text itself, without a frame.
fn entry(ui: &mut Ui, place: Rect, id: Id, text: &mut String, look: Look, p: &Palette) -> Response {
    let edit = TextEdit::singleline(text)
        .id(id)
        .frame(Frame::NONE.inner_margin(Margin::symmetric(INSIDE as i8, 0)))
        .font(theme::regular(13.0))
        .text_color(colour(p.ink))
        .align(look.align)
        .desired_width(place.width())
        .min_size(place.size())
        .char_limit(120)
        .event_filter(EventFilter { horizontal_arrows: true, vertical_arrows: true, tab: false, escape: true });
    let mut inside = ui.new_child(egui::UiBuilder::new().id_salt(id).max_rect(place));
    let output = edit.show(&mut inside);
    let response = output.response.response;
    // The first key replaces what stands there, also where that has changed since the field was reached.
    let whole = id.with("whole");
    let selected = ui.data(|data| data.get_temp::<String>(whole));
    if response.changed() || response.lost_focus() {
        ui.data_mut(|data| data.remove_temp::<String>(whole));
    } else if response.gained_focus() || selected.is_some_and(|selected| selected != *text && response.has_focus()) {
        ui.data_mut(|data| data.insert_temp(whole, text.clone()));
        mark_all(ui.ctx(), id, output.state, text);
    }
    response
}

fn frame(ui: &Ui, place: Rect, response: &Response, refused: bool, p: &Palette) {
    let pen = if response.has_focus() {
        Stroke::new(2.0, colour(p.pick))
    } else if refused {
        Stroke::new(1.5, colour(p.danger))
    } else if response.hovered() {
        Stroke::new(1.0, colour(p.ink))
    } else {
        Stroke::new(1.0, colour(p.rule))
    };
    ui.painter().rect_stroke(place, RADIUS, pen, StrokeKind::Inside);
}

fn name(response: &Response, label: &str) {
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, label));
}
