//! Painting the map: the ink of the editor's drawing, and over it what is in the hand.
//!
//! The ink is kept as long as the drawing's stamp, the camera and the place of the map stay the same.

use std::sync::Arc;

use drawing::{Ghost, Ink, Palette, Taken, UnderHand, View};
use egui::{Pos2, Rect, Shape, Stroke, Ui, Vec2, vec2};
use plan::Point;
use words::texts::About;

use super::at_pointer::AtPointer;
use super::hint::Hint;
use super::{FOOT_PX, RIGHT_PX, cross, map_id, ring, shows_volts};
use crate::editor::Editor;
use crate::measured::Tape;
use crate::pen::{self, Painted};
use crate::said::Said;
use crate::theme::{self, colour};
use crate::tool::{Drawn, Tool};
use crate::underlay::{self, Pictures};
use crate::{
    about, corner, first, first_corner, icons, leading, many, measured, next_corner, nodes, pages, place_entry, reach,
    side_entry, unroll,
};

/// How large the ring and the cross are by which what is picked is turned, pixels.
const RING_PX: f32 = 6.0;
const CROSS_PX: f32 = 6.0;

/// What ink is made from: the drawing's stamp, the camera, the map's place, pixels of a point, a run only thought of.
type InkKey = (u64, View, Rect, f32, Option<Arc<Ghost>>);

/// Ink that was made ready, and what it was made from.
#[derive(Default)]
pub(crate) struct MapSheet {
    key: Option<InkKey>,
    ink: Vec<Ink>,
    /// What of the map its words and signs take.
    taken: Taken,
    /// The words over which something stands that is shown for the moment: they are left out.
    hidden: Vec<usize>,
    painted: Painted,
    /// What lies over it while something is edited.
    over: Painted,
}

/// Paints the map.
pub(crate) fn paint(
    ui: &mut Ui,
    rect: Rect,
    editor: &Editor,
    (sheet, pictures): (&mut MapSheet, &Pictures),
    said: &mut Said,
) {
    let view = shown(editor, rect);
    let ghost = pages::ghost(ui, editor);
    let key = Some((editor.stamp(), view, rect, ui.pixels_per_point(), ghost.clone()));
    let renewed = sheet.key != key;
    if renewed {
        (sheet.ink, sheet.taken) = ink(editor, &view, rect.size(), ghost.as_deref());
        sheet.key = key;
    }
    let at_pointer = AtPointer::of(ui, rect, editor, &sheet.taken);
    let hint = Hint::of(ui.painter(), editor, rect, &at_pointer);
    let standing = at_pointer
        .all()
        .chain(hint.iter().map(|hint| hint.plate))
        .chain(Tape::of(ui.painter(), rect, editor).map(|tape| tape.plate));
    let (over, plates) = over(editor, rect, standing, &sheet.taken);
    let hidden = sheet.taken.words_under(&plates);
    if renewed || sheet.hidden != hidden {
        let shown = if hidden.is_empty() { None } else { Some(sheet.taken.without(&sheet.ink, &hidden)) };
        sheet.painted.renew(ui.ctx(), shown.as_ref().unwrap_or(&sheet.ink), rect.min);
        sheet.hidden = hidden;
    }
    let p = editor.theme().palette();
    let painter = pen::inside(ui.painter(), rect);
    painter.rect_filled(rect, 0.0, colour(p.paper));
    pictures.paint(&painter, editor, rect);
    if editor.plan().ground.boundary.is_empty() {
        first::crosses(&painter, editor, rect);
    }
    sheet.painted.paint(&painter);
    let on_sheet = |at: Point| {
        let [right, down] = view.spot(at);
        rect.min + vec2(right, down)
    };
    // What is measured lies over what is drawn.
    outline_in_hand(&painter, editor, &on_sheet);
    sheet.over.renew(ui.ctx(), &over, rect.min);
    sheet.over.paint(&painter);
    unroll::paint(ui, &painter, (rect, at_pointer.unroll), editor, said);
    first_corner::paint(ui, &painter, (rect, at_pointer.first_corner), editor, said);
    next_corner::paint(ui, at_pointer.next_corner, editor, said);
    corner::paint(ui, at_pointer.corner, editor, said);
    side_entry::paint(ui, &painter, (rect, at_pointer.side), editor, said);
    place_entry::paint(ui, &painter, (rect, at_pointer.place), editor, said);
    if let Some(was) = editor.held_from() {
        let stroke = Stroke::new(1.0, colour(p.ink));
        let ring = round(on_sheet(was), 7.0);
        pen::bed(&painter, editor, ring.clone(), 1.0);
        painter.extend(Shape::dashed_line(&ring, stroke, 2.0, 3.0));
    }
    turning_ring(&painter, editor, rect);
    reach::paint(&painter, editor, rect, &on_sheet);
    snapped(&painter, editor, rect, &on_sheet);
    measured::paint(ui, &painter, rect, editor);
    many::paint(ui, &painter, editor, &on_sheet);
    if let Some(hint) = hint {
        hint.paint(ui, &painter, editor);
    }
    leading::paint(ui, &painter, editor, &on_sheet);
    nodes::show(ui, rect, editor, &on_sheet, said);
    tell(ui, rect, editor, &sheet.taken);
}

/// Says of the figure under the pointer what it is, while nothing is in the hand.
fn tell(ui: &Ui, rect: Rect, editor: &Editor, taken: &Taken) {
    let rests = *editor.tool() == Tool::Pick && editor.held_from().is_none();
    let Some(map) = ui.ctx().read_response(map_id()).filter(|_| rests) else { return };
    let Some(at) = map.hover_pos() else { return };
    let spot = [at.x - rect.left(), at.y - rect.top()];
    let covers =
        |&[left, top, right, foot]: &[f32; 4]| (left..=right).contains(&spot[0]) && (top..=foot).contains(&spot[1]);
    let plates = editor.view().kept.iter().zip([About::Scale, About::VoltsKey]);
    let plate = || plates.filter(|(kept, _)| kept.as_ref().is_some_and(covers)).map(|(_, about)| about).next();
    if let Some(about) = taken.told_at(spot).map(about::of).or_else(plate) {
        about::say(&map, editor.words(), about);
    }
}

/// The map as it is shown, with what the hand can take hold of over it: signs that step aside are drawn and picked there.
pub(super) fn shown(editor: &Editor, rect: Rect) -> View {
    View { held: held(editor, rect), ..*editor.view() }
}

/// What is measured while something is edited, clear of the map's own words and signs and of what stands at the pointer;
/// and the plates that lie over the map with it.
fn over(editor: &Editor, rect: Rect, standing: impl Iterator<Item = Rect>, map: &Taken) -> (Vec<Ink>, Vec<[f32; 4]>) {
    let dimensions = editor.dimensions();
    let in_hand = editor.in_hand();
    let on_map = |part: Rect| part.translate(-rect.min.to_vec2());
    let sides = |part: Rect| [part.left(), part.top(), part.right(), part.bottom()];
    let mut plates: Vec<[f32; 4]> = standing.map(on_map).map(sides).collect();
    let mut ink = bedded(measured::ink(editor), editor.view());
    if !dimensions.is_empty() || in_hand.is_some() {
        let mut taken = map.clone();
        plates.iter().chain(held(editor, rect).iter().flatten()).for_each(|&part| taken.take(part));
        let (view, words) = (editor.view(), editor.words());
        let told = in_hand.map(|in_hand| drawing::unroll::told(view, words, &in_hand.unrolled, taken.clone()));
        let mut written: Vec<Ink> = told.into_iter().flatten().collect();
        written.extend(drawing::dimensions::ink(view, words, &dimensions, taken));
        plates.extend(written.iter().filter_map(Ink::area_box));
        ink.extend(bedded(written, editor.view()));
    }
    (ink, plates)
}

/// What the hand takes hold of, over the map: the ring with its stem and the cross.
fn held(editor: &Editor, rect: Rect) -> [Option<[f32; 4]>; 2] {
    let on_map = |part: Rect| {
        let part = part.translate(-rect.min.to_vec2());
        [part.left(), part.top(), part.right(), part.bottom()]
    };
    let ring = ring(editor, rect).map(|ring| {
        let around = Rect::from_center_size(ring.at, Vec2::splat(2.0 * RING_PX + 4.0));
        around.union(Rect::from_two_pos(ring.at, ring.foot).expand(1.0))
    });
    let cross = cross(editor, rect).map(|at| Rect::from_center_size(at, Vec2::splat(2.0 * CROSS_PX + 4.0)));
    [ring.map(on_map), cross.map(on_map)]
}

/// Ink of the map, of what is in the hand over it, and of scale, north and key.
fn ink(editor: &Editor, view: &View, size: Vec2, ghost: Option<&Ghost>) -> (Vec<Ink>, Taken) {
    let in_hand = editor.in_hand();
    let drawn = in_hand.map(|in_hand| (&in_hand.shown().drawing, &in_hand.unrolled));
    let UnderHand { map: mut ink, hand, taken } = editor.drawing().ink_under(view, ghost, drawn);
    if let Some(step_m) = editor.grid().step_m(editor.words().units) {
        // On the ground, under all that stands on it.
        let ground = ink.iter().take_while(|item| matches!(item, Ink::Area { .. })).count();
        ink.splice(ground..ground, drawing::guides::grid(view, step_m));
    }
    let mut over = Vec::new();
    if let Some(in_hand) = in_hand {
        over.extend(drawing::unroll::reach(view, &in_hand.unrolled));
    }
    let (right, below) = (size.x - RIGHT_PX, size.y - FOOT_PX);
    let mut beside = corner::ink(editor);
    beside.extend(drawing::furniture::north(view.theme, editor.words(), [right, below]));
    beside.extend(drawing::furniture::scale_bar(view, editor.words(), [right - 40.0, below]));
    if let Some([_, top, right, _]) = view.kept[1].filter(|_| shows_volts(editor, size)) {
        let target_kv = editor.plan().target_kv();
        beside.extend(drawing::furniture::volts_key(view.theme, editor.words(), target_kv, [right, top]));
        if editor.earth_suggested().is_some() {
            let [_, high] = drawing::furniture::key_size(editor.words(), target_kv, false);
            beside.extend(drawing::furniture::earth_key(view.theme, editor.words(), target_kv, [right, top + high]));
        }
    }
    ink.extend(bedded(over, view));
    ink.extend(hand);
    ink.extend(bedded(beside, view));
    (ink, taken)
}

/// Ink as it lies over what is beneath the map: on beds, where that is a picture.
fn bedded(ink: Vec<Ink>, view: &View) -> Vec<Ink> {
    if view.underlay { drawing::bedded(ink, view.theme) } else { ink }
}

/// The ring by which what is picked is turned, on a stem.
fn turning_ring(painter: &egui::Painter, editor: &Editor, rect: Rect) {
    let Some(ring) = ring(editor, rect) else { return };
    let p = editor.theme().palette();
    let stem = (ring.foot - ring.at).normalized();
    let thin = Stroke::new(1.0, colour(p.pick));
    pen::bed(painter, editor, vec![ring.at, ring.foot], 1.0);
    pen::bed(painter, editor, round(ring.at, RING_PX), 2.0);
    painter.line_segment([ring.at + stem * RING_PX, ring.foot], thin);
    painter.circle(ring.at, RING_PX, colour(p.sheet), Stroke::new(2.0, colour(p.pick)));
    if let Some(cross) = cross(editor, rect) {
        for (way, stroke) in [(1.0, Stroke::new(4.0, colour(p.sheet))), (0.0, Stroke::new(1.5, colour(p.pick)))] {
            let reach = CROSS_PX + way;
            painter.line_segment([cross - vec2(reach, 0.0), cross + vec2(reach, 0.0)], stroke);
            painter.line_segment([cross - vec2(0.0, reach), cross + vec2(0.0, reach)], stroke);
        }
    }
}

/// A circle as a line.
pub(crate) fn round(middle: Pos2, radius: f32) -> Vec<Pos2> {
    (0..=24).map(|step| middle + Vec2::angled(step as f32 * std::f32::consts::TAU / 24.0) * radius).collect()
}

/// What caught the corner in the hand: an open diamond, and the reason on a plate.
fn snapped(painter: &egui::Painter, editor: &Editor, rect: Rect, on_sheet: &impl Fn(Point) -> Pos2) {
    let Some(snapped) = editor.snapped() else { return };
    let p = editor.theme().palette();
    let at = on_sheet(snapped.at);
    let ends = [vec2(0.0, -9.0), vec2(9.0, 0.0), vec2(0.0, 9.0), vec2(-9.0, 0.0)].map(|by| at + by);
    pen::bed(painter, editor, [&ends[..], &ends[..2]].concat(), 2.0);
    painter.add(Shape::closed_line(ends.to_vec(), Stroke::new(2.0, colour(p.pick))));
    // The entry at the pointer says it in its own line.
    let in_entry = editor.corner_in_hand().is_some() || next_corner::is_open(editor);
    if !in_entry && editor.in_hand().is_none_or(|in_hand| in_hand.unrolled.corners.len() < 2) {
        plate(painter, rect, at + vec2(14.0, 12.0), &snapped.reason, p);
    }
}

/// Words on a plate with a cut corner, kept inside the map.
pub(crate) fn plate(painter: &egui::Painter, rect: Rect, at: Pos2, words: &str, p: &Palette) {
    let text = painter.layout_no_wrap(words.to_owned(), theme::medium(11.0), colour(p.ink));
    let plate = Rect::from_min_size(at, text.size() + vec2(12.0, 6.0));
    let into = vec2((rect.right() - 8.0 - plate.right()).min(0.0), (rect.top() + 8.0 - plate.top()).max(0.0));
    let plate = plate.translate(into);
    let edge = Stroke::new(1.25, colour(p.ink));
    painter.add(Shape::convex_polygon(icons::cut_plate(plate, 5.0), colour(p.sheet), edge));
    painter.galley(plate.min + vec2(6.0, 3.0), text, colour(p.ink));
}

fn outline_in_hand(painter: &egui::Painter, editor: &Editor, on_sheet: &impl Fn(Point) -> Pos2) {
    let Tool::Outline { of, corners, pointer, typed, .. } = editor.tool() else { return };
    // A run's own nets show where it lies.
    if *of == Drawn::Run {
        return;
    }
    if *of == Drawn::Known {
        return underlay::known_points(painter, editor, on_sheet);
    }
    let p = editor.theme().palette();
    let (bold, thin) = (Stroke::new(2.0, colour(p.pick)), Stroke::new(1.5, colour(p.pick)));
    let spots: Vec<Pos2> = corners.iter().map(|&corner| on_sheet(corner)).collect();
    pen::bed(painter, editor, spots.clone(), bold.width);
    if let (Some(&last), Some(pointer)) = (spots.last(), *pointer) {
        let to = on_sheet(typed.place(corners, pointer));
        let back = (of.closes() && spots.len() > 1).then(|| spots[0]);
        pen::bed(painter, editor, [last, to].into_iter().chain(back).collect(), bold.width);
        painter.line_segment([last, to], bold);
        if let Some(first) = back {
            painter.extend(Shape::dashed_line(&[to, first], thin, 7.0, 4.0));
        }
    }
    painter.add(Shape::line(spots.clone(), bold));
    for (index, &spot) in spots.iter().enumerate() {
        let fill = if index == 0 { p.pick } else { p.sheet };
        let square = Rect::from_center_size(spot, Vec2::splat(8.0));
        if editor.view().underlay {
            painter.rect_filled(square.expand(0.75 + drawing::BED_PX), 0.0, colour(p.sheet));
        }
        painter.rect(square, 0.0, colour(fill), thin, egui::StrokeKind::Middle);
    }
}
