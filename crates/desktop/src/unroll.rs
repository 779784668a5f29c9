//! A run in hand on the map: its ink, and the entry at the pointer with what is left on the roll.

use drawing::Taken;
use egui::{Align2, Area, Id, Order, Painter, Pos2, Rect, Role, Sense, Shape, Stroke, Ui, Vec2, WidgetInfo, vec2};
use words::texts::Unroll as Text;
use words::{Measure, Range};
use workup::unroll::Unrolled;

use crate::corner::LONGEST_M;
use crate::editor::{Editor, InHand, Message};
use crate::entry::{self, Cell};
use crate::map_view::on_map;
use crate::said::Said;
use crate::theme::{self, colour};
use crate::tool::{Drawn, FEWEST_CORNERS, Hand, Tool, Typed};

/// Size of the entry.
const ENTRY: Vec2 = vec2(300.0, 124.0);
/// Beside its foot's words stand a mark and the plate's edges.
const BESIDE_FOOT: f32 = 42.0;
/// The roll's ring.
const ROLL_RADIUS: f32 = 9.0;
/// Beside the words over the fields stand the roll and the plate's edge.
const ROLL_WIDE: f32 = 56.0;
/// Less netting than this is not missing, metres: it is not shown either.
const LEAST_SHORT_M: f64 = 0.05;
/// The most panels that can be typed.
const MOST_PANELS: f64 = 9_999.0;

/// Where the entry at the pointer stands, once a corner is set.
pub(crate) fn place(rect: Rect, editor: &Editor, map: &Taken) -> Option<Rect> {
    let (Some(in_hand), Tool::Outline { of: Drawn::Run, corners, .. }) = (editor.in_hand(), editor.tool()) else {
        return None;
    };
    let last = on_map(rect, editor, *corners.last()?);
    let next = next(rect, editor, in_hand);
    let others: Vec<Pos2> = corners.iter().map(|&corner| on_map(rect, editor, corner)).collect();
    Some(entry::beside(rect, (next, next - last), size(editor, in_hand), &others, editor, map))
}

/// As wide as what holds the corner, and what is missing, need to be read whole.
fn size(editor: &Editor, in_hand: &InHand) -> Vec2 {
    let foot = editor.snapped().map_or("", |snapped| snapped.reason.as_str());
    let (head, below) = left(editor, in_hand);
    let wide = |text: &str, size: f32, weight| drawing::letters::text_width(text, size, weight);
    let wide = [
        BESIDE_FOOT + wide(foot, 12.0, drawing::Weight::Medium),
        ROLL_WIDE + wide(&head, 13.0, drawing::Weight::SemiBold),
        ROLL_WIDE + wide(&below, 12.0, drawing::Weight::Medium),
    ];
    vec2(wide.into_iter().fold(ENTRY.x, f32::max), ENTRY.y)
}

/// Where the corner in hand is on the map.
fn next(rect: Rect, editor: &Editor, in_hand: &InHand) -> Pos2 {
    in_hand.unrolled.corners.last().map_or(rect.center(), |&next| on_map(rect, editor, next))
}

/// The entry at the pointer, in its place on the map.
pub(crate) fn paint(
    ui: &mut Ui,
    painter: &Painter,
    (rect, place): (Rect, Option<Rect>),
    editor: &Editor,
    said: &mut Said,
) {
    let (Some(in_hand), Tool::Outline { typed, .. }) = (editor.in_hand(), editor.tool()) else { return };
    let Some(place) = place else { return };
    let next = next(rect, editor, in_hand);
    let p = editor.theme().palette();
    // The corner in hand.
    painter.circle_stroke(next, 9.0, Stroke::new(2.0, colour(p.pick)));
    painter.circle_filled(next, 2.5, colour(p.pick));
    // It goes along with the pointer, so nothing of it can be clicked; the keys reach it.
    let area = Area::new(Id::unique("entry at the pointer")).order(Order::Foreground).interactable(false);
    area.fixed_pos(place.min).show(ui.ctx(), |ui| {
        let (place, response) = ui.allocate_exact_size(size(editor, in_hand), Sense::hover());
        let (text, ink) = match editor.snapped() {
            Some(snapped) => (snapped.reason.as_str(), p.pick),
            None => (editor.words().text(Text::Free), p.ink2),
        };
        response.widget_info(|| {
            let (head, below) = left(editor, in_hand);
            let told: Vec<&str> = [head.as_str(), &below, text].into_iter().filter(|one| !one.is_empty()).collect();
            WidgetInfo::labeled(Role::Label, true, told.join(", "))
        });
        entry::back(ui, place, p);
        roll(ui, place, editor, in_hand);
        fields(ui, place, editor, in_hand, *typed, said);
        entry::foot(ui, place, text, ink, p);
    });
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
    let (font, ink) = match short_m(editor, unrolled) {
        Some(_) => (theme::medium(12.0), p.danger),
        None => (theme::regular(12.0), p.ink2),
    };
    painter.text(at + vec2(0.0, 17.0), Align2::LEFT_CENTER, below, font, colour(ink));
}

/// How much netting is missing to close from the corner in hand, metres; `None` while it can close, and where the run may
/// end open on a wall.
fn short_m(editor: &Editor, unrolled: &Unrolled) -> Option<f64> {
    if editor.may_end_here() {
        return None;
    }
    let closing = unrolled.closing.filter(|_| unrolled.corners.len() >= FEWEST_CORNERS)?;
    Some(-closing.spare_m).filter(|&short_m| short_m > LEAST_SHORT_M)
}

/// What is left on the net in hand, and in the store.
fn left(editor: &Editor, in_hand: &InHand) -> (String, String) {
    let (words, unrolled) = (editor.words(), &in_hand.unrolled);
    if in_hand.rolls.count() == 0 {
        let owns_none = editor.plan().store.nets.is_empty();
        (words.text(if owns_none { Text::NoNetsYet } else { Text::NoNets }).to_owned(), String::new())
    } else if unrolled.short_m > 0.0 {
        (words.say(Text::Beyond, &[("length", &words.length(unrolled.short_m))]), String::new())
    } else {
        let (length, net) = (words.length(unrolled.on_roll_m), unrolled.begun.to_string());
        let store = match unrolled.in_store {
            _ if let Some(short_m) = short_m(editor, unrolled) => {
                words.say(Text::ShortOfClosing, &[("length", &words.length(short_m))])
            }
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
    let cells = shown(editor, in_hand, corners).map(|(field, label, figure, wide)| Cell {
        label: words.text(label).to_owned(),
        said: words.text(label).to_owned(),
        figure,
        unit: match field {
            Field::Side => words.typed_parts(Measure::Length, 1.0).1,
            Field::Panels => "",
            Field::Turn => "°",
        },
        wide,
    });
    let order = [Field::Side, Field::Panels, Field::Turn];
    let read = |cell: usize, text: &str, next| read(editor, in_hand, corners, order[cell], text, next);
    let (next, set) = entry::fields(ui, place, &cells, typed, p, read);
    if next != typed {
        said.say(Message::Hand(Hand::Type(next)));
    }
    if set {
        said.say(Message::Hand(Hand::Set));
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
