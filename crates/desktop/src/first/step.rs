//! A field of the question: a large figure, and one more or less of it.

use drawing::Palette;
use egui::{Align2, Id, Key, Modifiers, Rect, Sense, Stroke, Ui, UiBuilder, Vec2, pos2, vec2};
use words::texts::Rolls as Text;
use words::{Measure, Range, Words};

use crate::icons::Icon;
use crate::theme::{self, colour};
use crate::{field, kit};

/// Height of a field's figure, and of one of more than so many signs: a length in feet has six.
const FIGURE: f32 = 20.0;
const FIGURE_LONG: f32 = 17.0;
const LONG: usize = 5;

/// The field of a name.
pub(super) fn field_named(words: Words, label: Text) -> Id {
    Id::unique(("rolls field", words.text(label)))
}

/// What came of a field.
pub(super) enum Came {
    /// A figure.
    Answer(f64),
    /// Words that stand there and cannot be used, and why.
    Refused(String),
    /// Such words were just said to be all: the figure from before they were typed holds, and why.
    Back(f64, String),
    /// Esc, with nothing typed: out of all of it.
    Left,
}

/// A field 40 high with its figure at 20, and one more or less of it; what is typed follows at once.
pub(super) struct Step {
    label: Text,
    measure: Measure,
    range: Range,
    now: f64,
    by: f64,
}

impl Step {
    const SIZE: Vec2 = vec2(126.0, 40.0);

    pub(super) fn new(label: Text, measure: Measure, range: Range, now: f64, by: f64) -> Self {
        Self { label, measure, range, now, by }
    }

    pub(super) fn id(&self, words: Words) -> Id {
        field_named(words, self.label)
    }

    /// What it is called.
    pub(super) fn name(&self, words: Words) -> &'static str {
        words.text(self.label)
    }

    fn read(&self, words: Words, text: &str) -> Result<f64, String> {
        let read = match self.measure {
            Measure::Count => words.read_count(text, self.range).map(f64::from),
            measure => words.read(measure, text, self.range),
        };
        read.map_err(|typed| typed.sentence(words))
    }

    /// What was typed or stepped to, or why it cannot be used.
    pub(super) fn show(&self, ui: &mut Ui, words: Words, p: &Palette) -> Option<Came> {
        let name = self.name(words);
        let mut came = None;
        ui.vertical(|ui| {
            ui.set_width(Self::SIZE.x);
            let head = kit::prose(ui, name, theme::regular(12.0), colour(p.ink2));
            // Beside the name: a long figure fills its field.
            let (_, unit) = words.typed_parts(self.measure, self.now);
            let at = pos2(ui.max_rect().left() + Self::SIZE.x, head.rect.center().y);
            ui.painter().text(at, Align2::RIGHT_CENTER, unit, theme::regular(12.0), colour(p.ink2));
            ui.add_space(5.0);
            let (rect, _) = ui.allocate_exact_size(Self::SIZE, Sense::hover());
            let id = self.id(words);
            came = self.entry(ui, rect, id, head.id, words, p);
            for (index, (icon, by, said)) in
                [(Icon::Less, -self.by, Text::Fewer), (Icon::More, self.by, Text::More)].into_iter().enumerate()
            {
                let left = rect.right() - 56.0 + 28.0 * index as f32;
                let pen = Stroke::new(1.0, colour(p.hairline));
                ui.painter().vline(left, rect.top() + 9.0..=rect.bottom() - 9.0, pen);
                let place = Rect::from_min_size(pos2(left - 2.0, rect.top() + 4.0), vec2(32.0, 32.0));
                let mut inside = ui.new_child(UiBuilder::new().id_salt(("step", index)).max_rect(place));
                let say = words.say(said, &[("label", name)]);
                if kit::icon_in_field(&mut inside, icon, &say, p).clicked() {
                    came = Some(self.stepped(ui, words, by));
                }
            }
        });
        came
    }

    /// One step up or down from what holds, in place of what was being typed.
    fn stepped(&self, ui: &Ui, words: Words, by: f64) -> Came {
        let id = self.id(words);
        ui.data_mut(|data| {
            data.remove_temp::<String>(id.with("draft"));
            data.remove_temp::<bool>(id.with("refused"));
        });
        let (next, _) = words.typed_parts(self.measure, self.now + by);
        self.read(words, &next).map_or_else(Came::Refused, Came::Answer)
    }

    /// The field itself: the arrow keys step its figure. What cannot be read stays, and is refused once it is said to be all
    /// by Enter or by leaving; the last good answer holds meanwhile. Esc brings back what stood there before.
    fn entry(&self, ui: &mut Ui, rect: Rect, id: Id, head: Id, words: Words, p: &Palette) -> Option<Came> {
        let focused = ui.memory(|memory| memory.has_focus(id));
        let refused = id.with("refused");
        let is_refused = |ui: &Ui| ui.data(|data| data.get_temp::<bool>(refused)).is_some();
        let edge = match (is_refused(ui), focused) {
            (true, _) => Stroke::new(2.0, colour(p.danger)),
            (false, true) => Stroke::new(2.0, colour(p.pick)),
            (false, false) => Stroke::new(1.0, colour(p.rule)),
        };
        ui.painter().rect(rect, 2.0, colour(p.sheet), edge, egui::StrokeKind::Inside);
        let draft = id.with("draft");
        let (figure, _) = words.typed_parts(self.measure, self.now);
        let mut text = ui.data(|data| data.get_temp::<String>(draft)).unwrap_or(figure);
        let text_is_long = text.chars().count() > LONG;
        let room = Rect::from_min_max(rect.min + vec2(10.0, 6.0), pos2(rect.right() - 58.0, rect.bottom() - 6.0));
        let edit = egui::TextEdit::singleline(&mut text)
            .id(id)
            .frame(egui::Frame::NONE)
            .font(theme::medium(if text_is_long { FIGURE_LONG } else { FIGURE }))
            .margin(Vec2::ZERO)
            .desired_width(room.width());
        let presses =
            |key| move |input: &mut egui::InputState| input.count_and_consume_key(Modifiers::NONE, key) as f64;
        let steps =
            if focused { ui.input_mut(presses(Key::ArrowUp)) - ui.input_mut(presses(Key::ArrowDown)) } else { 0.0 };
        let response = ui.put(room, edit).labelled_by(head);
        if steps != 0.0 {
            return Some(self.stepped(ui, words, steps * self.by));
        }
        if response.gained_focus()
            && let Some(state) = egui::TextEdit::load_state(ui.ctx(), id)
        {
            field::mark_all(ui.ctx(), id, state, &text);
        }
        let before = id.with("before");
        if response.gained_focus() {
            ui.data_mut(|data| data.insert_temp(before, self.now));
        }
        if response.changed() {
            ui.data_mut(|data| data.remove_temp::<bool>(refused));
        }
        let read = self.read(words, &text);
        let forget = |ui: &Ui| {
            ui.data_mut(|data| {
                data.remove_temp::<String>(draft);
                data.remove_temp::<bool>(refused);
            });
        };
        if response.lost_focus() {
            let was = ui.data(|data| data.get_temp::<f64>(before)).unwrap_or(self.now);
            let (escaped, entered) = ui.input(|input| (input.key_pressed(Key::Escape), input.key_pressed(Key::Enter)));
            return match read {
                Err(sentence) if !escaped => {
                    ui.data_mut(|data| {
                        data.insert_temp(draft, text);
                        data.insert_temp(refused, true);
                    });
                    if entered {
                        response.request_focus();
                    }
                    Some(Came::Back(was, sentence))
                }
                Ok(now) if escaped && now == was => {
                    forget(ui);
                    Some(Came::Left)
                }
                _ => {
                    forget(ui);
                    escaped.then_some(Came::Answer(was))
                }
            };
        }
        let stands = is_refused(ui);
        if response.has_focus() {
            ui.data_mut(|data| data.insert_temp(draft, text));
        }
        match read {
            Ok(_) if stands => {
                forget(ui);
                None
            }
            Ok(typed) => response.has_focus().then_some(Came::Answer(typed)),
            Err(sentence) => stands.then_some(Came::Refused(sentence)),
        }
    }
}
