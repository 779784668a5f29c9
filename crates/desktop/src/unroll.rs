//! A run in hand on the map: its ink, and the entry at the pointer with what is left on the roll.

use drawing::{Ink, Palette};
use egui::{
    Align2, Area, Id, Key, Margin, Modifiers, Order, Painter, Pos2, Rect, Role, Sense, Shape, Stroke, TextEdit, Ui,
    Vec2, WidgetInfo, pos2, vec2,
};
use words::texts::Unroll as Text;
use words::{Measure, Range};
use workup::unroll::Unrolled;

use crate::editor::{Editor, InHand, Message};
use crate::icons;
use crate::kit;
use crate::measured;
use crate::said::Said;
use crate::theme::{self, colour};
use crate::tool::{Drawn, Hand, Tool, Typed};

/// Size of the entry.
const ENTRY: Vec2 = vec2(300.0, 124.0);
/// From the pointer to the entry.
const OFF: f32 = 28.0;
/// The roll's ring.
const ROLL_RADIUS: f32 = 9.0;
/// The longest side that can be typed, metres.
const LONGEST_M: f64 = 2_000.0;
/// The most panels that can be typed.
const MOST_PANELS: f64 = 9_999.0;

/// The nets in hand, what closes them, and the turn of the last side.
pub(crate) fn ink(editor: &Editor, in_hand: &InHand) -> Vec<Ink> {
    let (view, words) = (editor.view(), editor.words());
    let mut ink = drawing::unroll::reach(view, words, &in_hand.unrolled);
    ink.extend(in_hand.drawn.drawing.ink(view));
    ink.extend(drawing::unroll::turn(view, words, &in_hand.unrolled));
    ink
}

/// The entry at the pointer, once a corner is set.
pub(crate) fn paint(ui: &mut Ui, painter: &Painter, rect: Rect, editor: &Editor, said: &mut Said) {
    let (Some(in_hand), Tool::Outline { of: Drawn::Run, corners, typed, .. }) = (editor.in_hand(), editor.tool())
    else {
        return;
    };
    let Some(&last) = corners.last() else { return };
    let on_map = |at: plan::Point| {
        let [right, down] = editor.view().spot(at);
        rect.min + vec2(right, down)
    };
    let next = in_hand.unrolled.corners.last().map_or(rect.center(), |&next| on_map(next));
    let p = editor.theme().palette();
    // The corner in hand.
    painter.circle_stroke(next, 9.0, Stroke::new(2.0, colour(p.pick)));
    painter.circle_filled(next, 2.5, colour(p.pick));
    let place = beside(rect, next, on_map(last), editor);
    // It goes along with the pointer, so nothing of it can be clicked; the keys reach it.
    let area = Area::new(Id::unique("entry at the pointer")).order(Order::Foreground).interactable(false);
    area.fixed_pos(place.min).show(ui.ctx(), |ui| {
        let (place, response) = ui.allocate_exact_size(ENTRY, Sense::hover());
        let (text, ink) = match editor.snapped() {
            Some(snapped) => (snapped.reason.as_str(), p.pick),
            None => (editor.words().text(Text::Free), p.ink2),
        };
        response.widget_info(|| {
            let (head, below) = left(editor, in_hand);
            let told: Vec<&str> = [head.as_str(), &below, text].into_iter().filter(|one| !one.is_empty()).collect();
            WidgetInfo::labeled(Role::Label, true, told.join(", "))
        });
        let edge = Stroke::new(1.5, colour(p.ink));
        ui.painter().add(Shape::convex_polygon(icons::cut_plate(place, 8.0), colour(p.sheet), edge));
        roll(ui, place, editor, in_hand);
        fields(ui, place, editor, in_hand, *typed, said);
        let y = place.bottom() - 18.0;
        let across = place.left() + 12.0..=place.right() - 12.0;
        ui.painter().hline(across, place.bottom() - 34.0, Stroke::new(1.0, colour(p.hairline)));
        let mark = pos2(place.left() + 16.0, y);
        let ends = [vec2(0.0, -4.0), vec2(4.0, 0.0), vec2(0.0, 4.0), vec2(-4.0, 0.0)].map(|by| mark + by);
        ui.painter().add(Shape::convex_polygon(ends.to_vec(), colour(ink), Stroke::NONE));
        let at = pos2(place.left() + 28.0, y);
        let said = kit::shortened(ui, text, theme::medium(12.0), colour(ink), place.right() - 12.0 - at.x);
        ui.painter().galley(at - vec2(0.0, said.size().y / 2.0), said, colour(ink));
    });
}

/// Where the entry stands: beyond the corner in hand, away from the side that leads to it, within the map.
fn beside(rect: Rect, next: Pos2, last: Pos2, editor: &Editor) -> Rect {
    let way = (next - last).normalized();
    let right = if way.x >= 0.0 { OFF } else { -OFF - ENTRY.x };
    let down = if way.y >= 0.0 { OFF } else { -OFF - ENTRY.y };
    let free = Rect::from_min_size(next + vec2(right, down), ENTRY);
    measured::within(free, rect, editor)
}

/// The roll as a ring that empties, and what is left on it and in the store.
fn roll(ui: &Ui, place: Rect, editor: &Editor, in_hand: &InHand) {
    let (p, unrolled) = (editor.theme().palette(), &in_hand.unrolled);
    let middle = place.min + vec2(24.0, 26.0);
    let painter = ui.painter();
    painter.circle_stroke(middle, ROLL_RADIUS, Stroke::new(5.0, colour(p.hairline)));
    let share = if unrolled.roll_m > 0.0 { unrolled.on_roll_m / unrolled.roll_m } else { 0.0 };
    let steps = (share * 48.0).round() as u32;
    let up = -std::f32::consts::FRAC_PI_2;
    let arc: Vec<Pos2> = (0..=steps)
        .map(|step| middle + Vec2::angled(up + step as f32 * std::f32::consts::TAU / 48.0) * ROLL_RADIUS)
        .collect();
    painter.add(Shape::line(arc, Stroke::new(5.0, colour(p.ink))));
    let (head, below) = left(editor, in_hand);
    let at = place.min + vec2(44.0, 19.0);
    painter.text(at, Align2::LEFT_CENTER, head, theme::semi_bold(13.0), colour(p.ink));
    painter.text(at + vec2(0.0, 17.0), Align2::LEFT_CENTER, below, theme::regular(12.0), colour(p.ink2));
}

/// What is left on the net in hand, and in the store.
fn left(editor: &Editor, in_hand: &InHand) -> (String, String) {
    let (words, unrolled) = (editor.words(), &in_hand.unrolled);
    if in_hand.rolls.count() == 0 {
        (words.text(Text::NoNets).to_owned(), String::new())
    } else if unrolled.short_m > 0.0 {
        (words.say(Text::Beyond, &[("length", &words.length(unrolled.short_m))]), String::new())
    } else {
        let (length, net) = (words.length(unrolled.on_roll_m), unrolled.begun.to_string());
        let store = match unrolled.in_store {
            0 => words.text(Text::NoneInStore).to_owned(),
            count => words.say(Text::LeftInStore, &[("count", &count.to_string())]),
        };
        (words.say(Text::LeftOnNet, &[("length", &length), ("net", &net)]), store)
    }
}

/// What can be typed of the next corner, in the order of Tab.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Field {
    Side,
    Panels,
    Turn,
}

/// Under this name it is kept that something was typed since the last corner.
fn typing() -> Id {
    Id::unique("typed at the pointer")
}

fn id_of(field: Field) -> Id {
    Id::unique(("entry", field as u8))
}

/// The fields with what they show while nobody types, and their widths.
fn shown(editor: &Editor, in_hand: &InHand, corners: &[plan::Point]) -> [(Field, Text, String, f32); 3] {
    let (words, unrolled) = (editor.words(), &in_hand.unrolled);
    let laid_m = laid_m(in_hand, corners);
    let side_m = unrolled.along_m.last().map_or(0.0, |along_m| along_m - laid_m);
    let panels = in_hand.rolls.panels(laid_m, laid_m + side_m);
    let turn = turn_deg(unrolled).map(|turn| words.typed_parts(Measure::Degrees, turn).0);
    let turn_text = if corners.len() < 2 { Text::Bearing } else { Text::Turn };
    [
        (Field::Side, Text::Side, words.typed_parts(Measure::Length, side_m).0, 52.0),
        (Field::Panels, Text::Panels, panels.map_or_else(String::new, |panels| panels.to_string()), 34.0),
        (Field::Turn, turn_text, turn.unwrap_or_default(), 46.0),
    ]
}

/// Line up to the last corner that is set, metres.
fn laid_m(in_hand: &InHand, corners: &[plan::Point]) -> f64 {
    corners.len().checked_sub(1).and_then(|last| in_hand.unrolled.along_m.get(last)).copied().unwrap_or(0.0)
}

fn fields(ui: &mut Ui, place: Rect, editor: &Editor, in_hand: &InHand, typed: Typed, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let Tool::Outline { corners, .. } = editor.tool() else { return };
    focus_by_typing(ui);
    let (mut next, mut set, mut refused, mut refused_in) = (typed, false, None, Field::Side);
    let mut left = place.left() + 12.0;
    for (field, label, figure, wide) in shown(editor, in_hand, corners) {
        let unit = match field {
            Field::Side => words.typed_parts(Measure::Length, 1.0).1,
            Field::Panels => "",
            Field::Turn => "°",
        };
        let unit_wide = text_width(ui, unit);
        let wide = wide + unit_wide;
        let (id, label) = (id_of(field), words.text(label));
        let at = pos2(left, place.top() + 66.0);
        let named = ui.painter().text(at, Align2::LEFT_CENTER, label, theme::regular(11.0), colour(p.ink2));
        let rect = Rect::from_min_size(pos2(named.right() + 5.0, place.top() + 55.0), vec2(wide, 22.0));
        left = rect.right() + 8.0;
        let kept = ui.data(|data| data.get_temp::<String>(id));
        let focused = ui.memory(|memory| memory.has_focus(id));
        let mut text = kept.filter(|_| focused).unwrap_or(figure);
        let edit = TextEdit::singleline(&mut text).id(id).font(theme::medium(13.0));
        let margin = Margin { left: 4, right: unit_wide as i8 + 7, top: 2, bottom: 2 };
        let response = ui.put(rect, edit.align(Align2::RIGHT_CENTER).margin(margin));
        let unit_at = pos2(rect.right() - 5.0, rect.center().y);
        ui.painter().text(unit_at, Align2::RIGHT_CENTER, unit, theme::regular(11.0), colour(p.ink2));
        response.widget_info(|| WidgetInfo::labeled(Role::TextInput, true, label));
        if response.lost_focus() && ui.input(|input| input.key_pressed(Key::Escape)) {
            next = Typed::default();
            forget(ui);
        }
        // A field lets the focus go on Enter.
        let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        if !response.has_focus() && !entered {
            ui.data_mut(|data| data.remove_temp::<String>(id));
            continue;
        }
        if response.changed() || ui.data(|data| data.get_temp::<bool>(typing())).is_some() {
            ui.data_mut(|data| data.insert_temp(typing(), true));
            match read(editor, in_hand, corners, field, &text, next) {
                Ok(read) => next = read,
                Err(sentence) => (refused, refused_in) = (Some(sentence), field),
            }
        }
        ui.data_mut(|data| data.insert_temp(id, text));
        if entered {
            set = true;
        }
    }
    if next != typed {
        said.say(Message::Hand(Hand::Type(next)));
    }
    match refused {
        Some(sentence) => {
            // What cannot be used stays to be mended.
            if set {
                ui.memory_mut(|memory| memory.request_focus(id_of(refused_in)));
            }
            refusal(ui, place, sentence, p);
        }
        None if set => {
            said.say(Message::Hand(Hand::Set));
            forget(ui);
        }
        None => {}
    }
}

/// What is typed is over: the pointer leads again.
fn forget(ui: &Ui) {
    ui.data_mut(|data| data.remove_temp::<bool>(typing()));
    ui.memory_mut(|memory| memory.focused().into_iter().for_each(|id| memory.surrender_focus(id)));
}

/// Figures that are typed while nothing has the focus go to the first field, and so does Tab.
fn focus_by_typing(ui: &Ui) {
    if ui.ctx().text_edit_focused() {
        return;
    }
    let digit = ui.input(|input| {
        let digit = |text: &str| text.starts_with(|letter: char| letter.is_ascii_digit());
        input.events.iter().any(|event| matches!(event, egui::Event::Text(text) if digit(text)))
    });
    let first = id_of(Field::Side);
    if digit {
        // The emptied field reads the figure itself, in this same frame.
        ui.data_mut(|data| {
            data.insert_temp(first, String::new());
            data.insert_temp(typing(), true);
        });
        ui.memory_mut(|memory| memory.request_focus(first));
    } else if ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Tab)) {
        // Tab has set out for the next widget of the window; it ends here.
        ui.memory_mut(|memory| {
            memory.move_focus(egui::FocusDirection::None);
            memory.request_focus(first);
        });
    }
}

/// What was typed of the next corner with this field read, or why it cannot be.
fn read(
    editor: &Editor,
    in_hand: &InHand,
    corners: &[plan::Point],
    field: Field,
    text: &str,
    typed: Typed,
) -> Result<Typed, String> {
    let words = editor.words();
    let read = match field {
        Field::Side => words
            .read(Measure::Length, text, Range::up_to(LONGEST_M))
            .map(|side_m| Typed { side_m: Some(side_m), ..typed }),
        Field::Panels => words.read_count(text, Range::between(1.0, MOST_PANELS)).and_then(|panels| {
            let side_m = in_hand.rolls.panels_m(laid_m(in_hand, corners), panels as usize);
            let most = words::Typed::TooLarge { most: left_panels(in_hand, corners).to_string() };
            side_m.ok_or(most).map(|side_m| Typed { side_m: Some(side_m), ..typed })
        }),
        Field::Turn => words
            .read(Measure::Degrees, text, Range::between(-360.0, 360.0))
            .map(|turn| Typed { turn_deg: Some(turn), ..typed }),
    };
    read.map_err(|refused| refused.sentence(words))
}

/// Panels that are left of all netting.
fn left_panels(in_hand: &InHand, corners: &[plan::Point]) -> usize {
    in_hand.rolls.panels(laid_m(in_hand, corners), in_hand.rolls.length_m()).unwrap_or(0)
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

/// The turn into the side in hand, or the bearing of a first side, degrees.
fn turn_deg(unrolled: &Unrolled) -> Option<f64> {
    match *unrolled.corners {
        [one, other] => {
            let bearing = (other.east_m - one.east_m).atan2(other.north_m - one.north_m).to_degrees();
            Some(bearing.rem_euclid(360.0))
        }
        _ => unrolled.turns_deg.get(unrolled.corners.len().checked_sub(2)?).copied(),
    }
}
