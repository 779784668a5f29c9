//! The outline by its figures: of every side its length, its panels and its bearing, of every corner its turn and its
//! place, each in a field. What is typed is so exactly: the side's far corner moves, or the corner itself.

use drawing::Thing;
use egui::{Align2, Id, Rect, Role, Sense, Ui, WidgetInfo, pos2, vec2};
use plan::{Point, Shape};
use words::texts::{About, Shape as Table, Shaping as Text};
use words::{Measure, Range};
use workup::shaping::{CornerTyped, neighbours, turn_deg};

use super::{Desk, PLACE_M};
use crate::corner::MOST_TURN_DEG;
use crate::editor::{Message, ShapingMessage, corner_thing};
use crate::field::{self, Shown};
use crate::side::Side;
use crate::theme::{self, colour};
use crate::{icons, kit};

/// Of more sides than this, as a traced line has, those about what is picked are shown.
const MOST_SIDES: usize = 24;
/// Height of a row and of its fields, and the column of names.
const ROW: f32 = 28.0;
const TALL: f32 = 24.0;
const NAMES: f32 = 62.0;
/// Space between two fields.
const BETWEEN: f32 = 8.0;

/// What a table of an outline is about.
struct Of<'a> {
    shape: &'a Shape,
    outline: &'a [Point],
}

/// Shows them under a head of their own; `thing` names a side for the map. Where the ground of a run's sides is known,
/// their lengths are those along the ground, as on the map and on the unrolled line.
pub(super) fn show(
    ui: &mut Ui,
    desk: &mut Desk<'_>,
    shape: &Shape,
    outline: &[Point],
    closed: bool,
    thing: impl Fn(usize) -> Thing,
) {
    if count(outline, closed) == 0 {
        return;
    }
    let words = desk.words;
    let aside =
        if is_on_ground(desk, shape) { words.text(Text::SidesAsideGround) } else { words.text(Table::TableAside) };
    desk.section(ui, words.text(Table::Table), aside, About::Sides);
    ui.add_space(6.0);
    rows(ui, desk, shape, outline, closed, thing);
    ui.add_space(8.0);
    super::shaping::corner_choice(ui, desk);
    super::shaping::turn_by(ui, desk);
}

/// Whether the lengths are those along the ground.
fn is_on_ground(desk: &Desk<'_>, shape: &Shape) -> bool {
    Side::of(desk.editor, shape, 0).is_some_and(|side| side.is_on_ground())
}

/// How many sides there are.
fn count(outline: &[Point], closed: bool) -> usize {
    match outline.len() {
        0 | 1 => 0,
        corners if closed => corners,
        corners => corners - 1,
    }
}

/// Which of so many sides are shown: all, or those about the one that is picked.
fn shown(sides: usize, picked: Option<usize>) -> std::ops::Range<usize> {
    let first = picked.unwrap_or(0).saturating_sub(MOST_SIDES / 2).min(sides.saturating_sub(MOST_SIDES));
    first..sides.min(first + MOST_SIDES)
}

/// The side of an outline that is picked, or that begins at the corner that is.
fn picked_side(desk: &Desk<'_>, shape: &Shape, sides: usize, thing: &impl Fn(usize) -> Thing) -> Option<usize> {
    let picked = desk.editor.picked()?;
    (0..sides).find(|&side| thing(side) == picked || corner_thing(desk.editor.plan(), shape, side) == Some(picked))
}

/// Their rows alone; those of a branch are told from the run's own.
pub(super) fn rows(
    ui: &mut Ui,
    desk: &mut Desk<'_>,
    shape: &Shape,
    outline: &[Point],
    closed: bool,
    thing: impl Fn(usize) -> Thing,
) {
    let sides = count(outline, closed);
    if sides == 0 {
        return;
    }
    let (words, of) = (desk.words, Of { shape, outline });
    let metre = words.typed_parts(Measure::Length, 0.0).1;
    let has_nets = matches!(shape, Shape::Run(_));
    let mut heads = vec![(Table::Length, metre), (Table::Bearing, "°")];
    if has_nets {
        heads.insert(1, (Table::Panels, ""));
    }
    let range = shown(sides, picked_side(desk, shape, sides, &thing));
    if range.len() < sides {
        let (from, to) = ((range.start + 1).to_string(), range.end.to_string());
        let places = [("from", &*from), ("to", &*to), ("sides", &*sides.to_string())];
        desk.second(ui, &words.say(Table::SomeSides, &places));
        ui.add_space(6.0);
    }
    head(ui, desk, Table::Side, &heads);
    for side in range.clone() {
        let top = ui.cursor().top();
        side_row(ui, desk, &of, side, thing(side));
        hover(ui, desk, top, thing(side));
    }
    ui.add_space(10.0);
    head(ui, desk, Table::CornerHead, &[(Table::Turn, "°"), (Table::East, metre), (Table::North, metre)]);
    // An open line has one corner more than sides.
    let corners = range.start..if range.end == sides { outline.len() } else { range.end };
    for corner in corners {
        let top = ui.cursor().top();
        corner_row(ui, desk, &of, corner);
        if let Some(thing) = corner_thing(desk.editor.plan(), shape, corner) {
            hover(ui, desk, top, thing);
        }
    }
}

fn hover(ui: &Ui, desk: &mut Desk<'_>, top: f32, thing: Thing) {
    let row = Rect::from_x_y_ranges(ui.max_rect().x_range(), top..=ui.cursor().top());
    if ui.rect_contains_pointer(row) {
        desk.said.hovered = desk.said.hovered.or(Some(thing));
    }
}

/// The fields of a row, from the left.
fn places(row: Rect, count: usize) -> Vec<Rect> {
    let wide = (row.width() - NAMES - BETWEEN * (count - 1) as f32) / count as f32;
    (0..count)
        .map(|place| {
            let left = row.left() + NAMES + place as f32 * (wide + BETWEEN);
            Rect::from_min_size(pos2(left, row.center().y - TALL / 2.0), vec2(wide, TALL))
        })
        .collect()
}

/// The heads of the columns, each over the end of its figures.
fn head(ui: &mut Ui, desk: &Desk<'_>, first: Table, heads: &[(Table, &str)]) {
    let (words, p) = (desk.words, desk.p);
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 20.0), Sense::hover());
    let put = |ui: &mut Ui, at, anchor, text: &str| {
        kit::cell(ui, at, anchor, text, theme::regular(11.0), colour(p.ink2));
    };
    put(ui, rect.left_bottom(), Align2::LEFT_BOTTOM, words.text(first));
    for (place, (name, unit)) in places(rect, heads.len()).into_iter().zip(heads) {
        let text = format!("{} {unit}", words.text(*name));
        put(ui, pos2(place.right() - 6.0, rect.bottom()), Align2::RIGHT_BOTTOM, text.trim_end());
    }
}

/// A row's name and the places of its fields.
fn row(ui: &mut Ui, count: usize) -> (Rect, Vec<Rect>) {
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::hover());
    (rect, places(rect, count))
}

/// The label of a field: one of a branch is told from the run's own.
fn label(desk: &Desk<'_>, of: &Of<'_>, own: String) -> String {
    match of.shape {
        Shape::Branch(_, branch) => {
            desk.words.say(Text::OfBranch, &[("side", &own), ("branch", &(branch + 1).to_string())])
        }
        _ => own,
    }
}

/// The name of a row picks what it is; whether that is picked.
fn name(ui: &mut Ui, desk: &mut Desk<'_>, row: Rect, id: Id, said: &str, thing: Option<Thing>) -> bool {
    let picked = thing.is_some() && desk.editor.picked() == thing;
    let place = Rect::from_min_size(row.min, vec2(NAMES - BETWEEN, row.height()));
    let response = ui.interact(place, id, Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, picked, said));
    kit::focus_ring(ui, &response, desk.p);
    if response.clicked() {
        desk.said.say(Message::Pick(thing.filter(|_| !picked)));
    }
    response.on_hover_cursor(egui::CursorIcon::PointingHand);
    picked
}

fn side_row(ui: &mut Ui, desk: &mut Desk<'_>, of: &Of<'_>, side: usize, thing: Thing) {
    let (words, p) = (desk.words, desk.p);
    let Some(one) = Side::of(desk.editor, of.shape, side) else { return };
    let (rect, places) = row(ui, if one.has_nets { 3 } else { 2 });
    let picking = label(desk, of, one.say(Table::PickSideOf));
    let picked = name(ui, desk, rect, Id::unique(("side name", of.shape, side)), &picking, Some(thing));
    let (font, ink) = if picked { (theme::medium(13.0), p.pick) } else { (theme::regular(13.0), p.ink2) };
    kit::cell(ui, rect.left_center(), Align2::LEFT_CENTER, &one.say(Text::SideFromTo), font, colour(ink));
    let length_m = one.length_m();
    let mut refused = Vec::new();

    let read = |text: &str| one.on_map_m(one.read_length(text)?, None);
    let said = label(desk, of, one.say(Text::SideLabel));
    let id = Id::unique(("side length", of.shape, side));
    let value = Shown::of(words, Measure::Length, length_m, false);
    let (typed, not) = field::cell(ui, p, id, places[0], &said, &value, read);
    refused.extend(not);
    if let Some(length_m) = typed {
        desk.said.say(Message::SideLength(of.shape.clone(), side, length_m));
    }

    if one.has_nets {
        let read = |text: &str| one.on_map_m(one.read_panels(text)?, None);
        let value = Shown { figure: one.panels(length_m), unit: "", assumed: false };
        let said = label(desk, of, one.say(Table::PanelsOf));
        let id = Id::unique(("side panels", of.shape, side));
        let (typed, not) = field::cell(ui, p, id, places[1], &said, &value, read);
        refused.extend(not);
        if let Some(length_m) = typed {
            desk.said.say(Message::Shaping(ShapingMessage::Panels(of.shape.clone(), side, length_m)));
        }
    }

    let value = Shown::of(words, Measure::Degrees, one.bearing_deg(), false);
    let said = label(desk, of, one.say(Table::BearingOf));
    let id = Id::unique(("side bearing", of.shape, side));
    let read = |text: &str| one.read_bearing(text);
    let (typed, not) = field::cell(ui, p, id, places[places.len() - 1], &said, &value, read);
    refused.extend(not);
    if let Some(bearing) = typed {
        desk.said.say(Message::Shaping(ShapingMessage::Bearing(of.shape.clone(), side, bearing)));
    }
    for sentence in &refused {
        field::refusal(ui, sentence, p);
    }
}

/// The row of a corner.
pub(super) fn corner_id(shape: &Shape, corner: usize) -> Id {
    Id::unique(("corner name", shape, corner))
}

fn corner_row(ui: &mut Ui, desk: &mut Desk<'_>, of: &Of<'_>, corner: usize) {
    let (words, plan, p) = (desk.words, desk.editor.plan(), desk.p);
    let (at, number) = (of.outline[corner], (corner + 1).to_string());
    let (rect, places) = row(ui, 3);
    let thing = corner_thing(desk.editor.plan(), of.shape, corner);
    let picking = label(desk, of, words.say(Table::PickCornerOf, &[("number", number.as_str())]));
    let picked = name(ui, desk, rect, corner_id(of.shape, corner), &picking, thing);
    let plate = Rect::from_center_size(rect.left_center() + vec2(9.0, 0.0), egui::Vec2::splat(18.0));
    icons::number_plate(ui.painter(), plate, &number, picked, p);
    let numbered = [("number", number.as_str())];
    let mut refused = Vec::new();

    let beside = neighbours(plan, of.shape, corner);
    if let Some(turn) = turn_deg(beside, at) {
        let figure = field::figure(words, Measure::Degrees, Range::between(0.0, MOST_TURN_DEG));
        let read = |text: &str| {
            let turn_deg = figure(text)?;
            let typed = CornerTyped { turn_deg: Some(turn_deg), ..CornerTyped::default() };
            let can = typed.place(beside, at).is_some();
            can.then_some(turn_deg).ok_or_else(|| words.text(Table::CannotClose).to_owned())
        };
        let said = label(desk, of, words.say(Table::TurnOf, &numbered));
        let value = Shown::of(words, Measure::Degrees, turn, false);
        let id = Id::unique(("corner turn", of.shape, corner));
        let (typed, not) = field::cell(ui, p, id, places[0], &said, &value, read);
        refused.extend(not);
        if let Some(turn) = typed {
            desk.said.say(Message::Shaping(ShapingMessage::Turn(of.shape.clone(), corner, turn)));
        }
    }
    let axes = [(Table::EastOf, at.east_m, "east"), (Table::NorthOf, at.north_m, "north")];
    for (place, (name, value_m, axis)) in places[1..].iter().zip(axes) {
        let read = field::figure(words, Measure::Length, PLACE_M);
        let said = label(desk, of, words.say(name, &numbered));
        let value = Shown::of(words, Measure::Length, value_m, false);
        let id = Id::unique(("corner place", of.shape, corner, axis));
        let (typed, not) = field::cell(ui, p, id, *place, &said, &value, read);
        refused.extend(not);
        if let Some(typed_m) = typed {
            let to = if axis == "east" { Point::new(typed_m, at.north_m) } else { Point::new(at.east_m, typed_m) };
            desk.said.say(Message::Shaping(ShapingMessage::Place(of.shape.clone(), corner, to)));
        }
    }
    for sentence in &refused {
        field::refusal(ui, sentence, p);
    }
}
