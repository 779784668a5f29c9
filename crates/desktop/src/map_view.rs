//! The map: listening to the hand, then painting the ink of the editor's drawing.
//!
//! Listening comes first in a frame, so that what a drag changes is painted in the same frame. The ink is kept
//! as long as the drawing's stamp, the camera and the place of the map stay the same.

use std::sync::Arc;

use drawing::{Ghost, Ink, Palette, Thing, View};
use egui::{
    CursorIcon, Id, Key, Modifiers, PointerButton, Pos2, Rect, Response, Role, Sense, Shape, Stroke, Ui, Vec2,
    WidgetInfo, pos2, vec2,
};
use plan::Point;
use words::texts::{Faults, Guides, Power, Shaping, Underlay, Window as Text};
use workup::shaping::Keep;

use crate::editor::{Editor, Lesson, Message, Over, Page, ShapingMessage};
use crate::pages;
use crate::pen::{self, Painted};
use crate::said::Said;
use crate::theme::{self, colour};
use crate::tool::{Drawn, Hand, Tool};
use crate::underlay::{self, Pictures};
use crate::{commands, corner, first, icons, many, measured, nodes, unroll};

/// How near the pointer must come to a thing, pixels.
const REACH_PX: f32 = 9.0;
/// How near the first corner a click closes an outline, pixels.
const CLOSE_PX: f32 = 11.0;
/// A step of the arrow keys, metres; ten times that with Shift.
const NUDGE_M: f64 = 0.1;
/// How far over what is picked its turning ring stands, how large it is and how near counts as on it, pixels.
const RING_OFF_PX: f32 = 30.0;
const RING_PX: f32 = 6.0;
const RING_REACH_PX: f32 = 11.0;
/// How large the cross is about which the picked thing turns, and how near counts as on it, pixels.
const CROSS_PX: f32 = 6.0;
const CROSS_REACH_PX: f32 = 7.0;
/// Distance of scale, north and key from the map's right and upper edge, and from its foot, pixels.
const RIGHT_PX: f32 = 20.0;
const FOOT_PX: f32 = 16.0;
/// A hint narrower than this stands over the scale, pixels.
const LEAST_HINT_PX: f32 = 240.0;
/// A step of the turning keys, degrees.
pub(crate) const TURN_DEG: f64 = 5.0;
/// How much one notch of the wheel zooms: pixels of scrolling that double the scale.
const DOUBLING_PX: f64 = 160.0;

/// What ink is made from: the drawing's stamp, the camera, the map's place, pixels of a point, a run only thought of.
type InkKey = (u64, View, Rect, f32, Option<Arc<Ghost>>);

/// Ink that was made ready, and what it was made from.
#[derive(Default)]
pub(crate) struct MapSheet {
    key: Option<InkKey>,
    painted: Painted,
    /// What lies over it while something is edited.
    over: Painted,
}

/// Listens to the pointer and the keys over the map.
pub(crate) fn listen(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) {
    let response = ui.interact(rect, Id::unique("map"), Sense::CLICK | Sense::DRAG);
    response.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, editor.words().text(Text::Map)));
    let size = [rect.width(), rect.height()];
    said.say(Message::Size(size, drawing::furniture::kept(size, RIGHT_PX, FOOT_PX, has_key(rect.size()))));
    let view = editor.view();
    let here = |at: Pos2| [at.x - rect.left(), at.y - rect.top()];
    // Open grass is nothing to pick, but where the page is about it.
    let thing_at = |at: Pos2| {
        let thing = editor.drawing().thing_at(view, here(at), REACH_PX);
        thing.filter(|thing| !matches!(thing, Thing::Boundary | Thing::Underlay) || editor.page() == Page::Ground)
    };
    let space = ui.input(|input| input.key_down(Key::Space)) && !ui.ctx().text_edit_focused();

    if let Some(at) = response.hover_pos() {
        zoom(ui, here(at), said);
        let place = view.place(here(at));
        if *editor.tool() == Tool::Pick {
            // What is dragged is what is under the pointer, as is said below.
            let dragged = editor.held_from().is_some() && response.dragged_by(PointerButton::Primary);
            said.hovered = if dragged { editor.picked() } else { thing_at(at) };
        } else {
            said.say(Message::Hand(Hand::Move(place)));
        }
    }
    let taping = measured::drag(&response, editor, space, &here, said);
    let place_at = |at: Pos2| view.place(here(at));
    let by_rectangle = !space && many::rectangle(ui, &response, editor, &thing_at, &place_at, said);
    if response.drag_started_by(PointerButton::Primary)
        && *editor.tool() == Tool::Pick
        && !by_rectangle
        && !space
        && let Some(at) = ui.input(|input| input.pointer.press_origin())
    {
        if ring(editor, rect).is_some_and(|ring| ring.distance(at) <= RING_REACH_PX) {
            said.say(Message::GrabTurn(view.place(here(at))));
        } else if editor.has_pivot() && cross(editor, rect).is_some_and(|cross| cross.distance(at) <= CROSS_REACH_PX) {
            // In the middle, where it stands unless it was put elsewhere, a thing itself is taken hold of.
            said.say(Message::Shaping(ShapingMessage::GrabPivot(view.place(here(at)))));
        } else if let Some(thing) = thing_at(at)
            && (can_be_held(thing, editor.picked()) || editor.is_one_of_several(thing) || is_lesson(editor, thing))
        {
            said.say(Message::Grab(thing, view.place(here(at))));
            said.hovered = Some(thing);
        }
    }
    let moved = response.drag_delta();
    let holding = editor.held_from().is_some()
        || said.messages.iter().any(|one| {
            matches!(one, Message::Grab(..) | Message::GrabTurn(_) | Message::Shaping(ShapingMessage::GrabPivot(_)))
        });
    if by_rectangle {
        // The rectangle is the drag's.
    } else if response.dragged_by(PointerButton::Primary) && holding {
        if let Some(at) = response.interact_pointer_pos().filter(|_| moved != Vec2::ZERO) {
            said.say(Message::Drag(view.place(here(at))));
        }
        said.hovered = editor.picked();
    } else if ((response.dragged_by(PointerButton::Primary) && !taping) || response.dragged_by(PointerButton::Middle))
        && moved != Vec2::ZERO
    {
        said.say(Message::Pan(moved.x, moved.y));
    }
    let given_back = Id::unique("given back to the pointer");
    // Esc in the entry gives the corner back to the pointer; a drag of egui's ends with it, the hand's does not.
    let in_entry = ui.ctx().text_edit_focused() && ui.input(|input| input.key_pressed(Key::Escape));
    if response.drag_stopped() && holding && in_entry {
        ui.data_mut(|data| data.insert_temp(given_back, true));
    } else if response.drag_stopped() && holding {
        said.say(Message::Drop);
    } else if ui.data(|data| data.get_temp::<bool>(given_back)).is_some() {
        let (at, moved, down) =
            ui.input(|input| (input.pointer.latest_pos(), input.pointer.delta(), input.pointer.primary_down()));
        if let Some(at) = at.filter(|_| moved != Vec2::ZERO) {
            said.say(Message::Drag(view.place(here(at))));
        }
        if !down || editor.corner_in_hand().is_none() {
            ui.data_mut(|data| data.remove_temp::<bool>(given_back));
            said.say(Message::Drop);
        }
    }
    clicks(&response, editor, said, &here, &thing_at);
    let cursor = cursor(editor, said, &response, space);
    response.on_hover_and_drag_cursor(cursor);
}

fn cursor(editor: &Editor, said: &Said, response: &Response, space: bool) -> CursorIcon {
    if *editor.tool() != Tool::Pick || editor.picks_by_rectangle() {
        CursorIcon::Crosshair
    } else if editor.held_from().is_some() {
        CursorIcon::Grabbing
    } else if response.dragged() || space {
        CursorIcon::Move
    } else {
        match said.hovered {
            Some(thing) if can_be_held(thing, editor.picked()) || is_lesson(editor, thing) => CursorIcon::Grab,
            Some(_) => CursorIcon::PointingHand,
            None => CursorIcon::Default,
        }
    }
}

fn clicks(
    response: &Response,
    editor: &Editor,
    said: &mut Said,
    here: &impl Fn(Pos2) -> drawing::Spot,
    thing_at: &impl Fn(Pos2) -> Option<Thing>,
) {
    let Some(at) = response.interact_pointer_pos() else { return };
    let view = editor.view();
    if *editor.tool() == Tool::Pick {
        if response.double_clicked() && thing_at(at).is_none_or(is_ground) {
            said.say(Message::Fit);
        } else if many::click(response, thing_at(at), said) {
            // One more, or one less.
        } else if response.clicked() {
            said.say(Message::Pick(thing_at(at)));
        }
    } else if response.double_clicked() {
        said.say(Message::Hand(Hand::Close));
    } else if response.clicked() {
        let reach_m = f64::from(CLOSE_PX) / view.px_per_m;
        said.say(Message::Hand(Hand::Click { at: view.place(here(at)), reach_m }));
    }
}

fn zoom(ui: &Ui, about: drawing::Spot, said: &mut Said) {
    let (scroll, pinch) = ui.input(|input| (input.smooth_scroll_delta().y, f64::from(input.zoom_delta())));
    let by = (f64::from(scroll) / DOUBLING_PX).exp2() * pinch;
    if (by - 1.0).abs() > 1e-6 {
        said.say(Message::Zoom(by, about));
    }
}

/// Where the turning ring of what is picked stands on the screen.
fn ring(editor: &Editor, rect: Rect) -> Option<Pos2> {
    let [right, down] = editor.view().spot(editor.turn_ring()?);
    Some(rect.min + vec2(right, down - RING_OFF_PX))
}

/// Where the cross stands about which what is picked turns: in the middle it is not, unless that was chosen.
fn cross(editor: &Editor, rect: Rect) -> Option<Pos2> {
    ring(editor, rect)?;
    let [right, down] = editor.view().spot(editor.turns_about()?);
    Some(rect.min + vec2(right, down))
}

/// Whether a drag takes hold of a thing: corners, single signs, and the sides and the ground of what is picked;
/// elsewhere a drag moves the map.
fn can_be_held(thing: Thing, picked: Option<Thing>) -> bool {
    match thing {
        Thing::RunCorner { .. }
        | Thing::BoundaryCorner { .. }
        | Thing::KeepOutCorner { .. }
        | Thing::Coop { .. }
        | Thing::Gateway
        | Thing::WallCorner { .. }
        | Thing::ShadeCorner { .. }
        | Thing::Label { .. }
        | Thing::Drop { .. }
        | Thing::CoopDoor
        | Thing::Gate { .. }
        | Thing::Fault { .. }
        | Thing::Zone { .. }
        | Thing::ZoneEnd { .. }
        | Thing::BranchCorner { .. }
        | Thing::Height { .. }
        | Thing::Feed { .. }
        | Thing::EarthStake { .. }
        | Thing::EarthStakes { .. } => true,
        Thing::Hazard { .. } | Thing::Underlay => picked == Some(thing),
        Thing::Wall { wall } => {
            matches!(picked, Some(Thing::Wall { wall: one } | Thing::WallCorner { wall: one, .. }) if one == wall)
        }
        Thing::Shade { shade } | Thing::ShadeSide { shade, .. } => matches!(
            picked,
            Some(Thing::Shade { shade: one } | Thing::ShadeCorner { shade: one, .. } | Thing::ShadeSide { shade: one, .. })
                if one == shade
        ),
        Thing::Branch { run, branch } | Thing::BranchSide { run, branch, .. } => matches!(
            picked,
            Some(Thing::Branch { run: one, branch: other } | Thing::BranchCorner { run: one, branch: other, .. } | Thing::BranchSide { run: one, branch: other, .. })
                if (one, other) == (run, branch)
        ),
        Thing::RunSide { run, .. } | Thing::Run { run } | Thing::Post { run, .. } => {
            picked.and_then(Thing::run) == Some(run)
        }
        Thing::Boundary | Thing::BoundarySide { .. } => {
            matches!(picked, Some(Thing::Boundary | Thing::BoundaryCorner { .. } | Thing::BoundarySide { .. }))
        }
        Thing::KeepOut { keep_out } | Thing::KeepOutSide { keep_out, .. } => matches!(
            picked,
            Some(Thing::KeepOut { keep_out: one } | Thing::KeepOutCorner { keep_out: one, .. } | Thing::KeepOutSide { keep_out: one, .. })
                if one == keep_out
        ),
        _ => false,
    }
}

/// The first run may be dragged by its ground before it was picked.
fn is_lesson(editor: &Editor, thing: Thing) -> bool {
    editor.lesson() == Lesson::Drag && matches!(thing, Thing::Run { .. } | Thing::RunSide { .. })
}

fn is_ground(thing: Thing) -> bool {
    matches!(thing, Thing::Boundary | Thing::Underlay | Thing::Run { .. })
}

/// Listens to the keys that are about the map, while no field has them.
pub(crate) fn keys(ui: &Ui, editor: &Editor, said: &mut Said) {
    if ui.ctx().text_edit_focused() {
        return;
    }
    let drawing = *editor.tool() != Tool::Pick;
    many::keys(ui, editor, pointed(ui, editor), said);
    // Esc closes an open menu first.
    let menu = egui::Popup::is_any_open(ui.ctx());
    ui.input_mut(|input| {
        if !menu && input.consume_key(Modifiers::NONE, Key::Escape) {
            said.say(Message::Escape);
        }
        if drawing && input.consume_key(Modifiers::NONE, Key::Enter) {
            said.say(Message::Hand(Hand::Close));
        }
        if drawing && input.consume_key(Modifiers::NONE, Key::Backspace) {
            said.say(Message::Hand(Hand::Back));
        }
        if !drawing && input.consume_key(Modifiers::NONE, Key::Delete) {
            said.say(Message::Remove);
        }
        if input.consume_key(Modifiers::NONE, Key::D) {
            said.say(Message::KeepDimensions(!editor.keeps_dimensions()));
        }
        // What is half drawn is not thrown away.
        if !matches!(editor.tool(), Tool::Outline { .. }) && input.consume_key(Modifiers::NONE, Key::T) {
            said.say(Message::Use(Tool::tape()));
        }
        if input.consume_key(Modifiers::NONE, Key::F) {
            said.say(Message::Fit);
        }
        let (larger, smaller) = (
            input.consume_key(Modifiers::NONE, Key::Plus) || input.consume_key(Modifiers::NONE, Key::Equals),
            input.consume_key(Modifiers::NONE, Key::Minus),
        );
        if larger || smaller {
            let middle = editor.view().size.map(|side| side / 2.0);
            let by = if larger { commands::ZOOM } else { 1.0 / commands::ZOOM };
            said.say(Message::Zoom(by, middle));
        }
        if input.modifiers.alt != editor.is_free() {
            said.say(Message::Free(input.modifiers.alt));
        }
    });
    measured::copy(ui, editor);
    if drawing {
        draw_by_keys(ui, editor, said);
        return;
    }
    if pages::list::is_walked(ui) {
        return;
    }
    many::nudge_keys(ui, editor, said);
    shape_keys(ui, editor, said);
    if editor.picked().is_some() {
        let turn = ui.input_mut(|input| {
            let (left, right) = (Key::OpenBracket, Key::CloseBracket);
            input.count_and_consume_key(Modifiers::NONE, right) as f64
                - input.count_and_consume_key(Modifiers::NONE, left) as f64
        });
        if turn != 0.0 {
            said.say(Message::Turn(turn * TURN_DEG));
        }
        let ways = [
            (Key::ArrowLeft, -1.0, 0.0),
            (Key::ArrowRight, 1.0, 0.0),
            (Key::ArrowUp, 0.0, 1.0),
            (Key::ArrowDown, 0.0, -1.0),
        ];
        for (key, east, north) in ways {
            // Of a stretch of grass: Ctrl takes its end a step along, Alt its start.
            if editor.picked().is_some_and(|thing| matches!(thing, Thing::Zone { .. })) {
                for (modifiers, last) in [(Modifiers::COMMAND, true), (Modifiers::ALT, false)] {
                    let steps = ui.input_mut(|input| {
                        let far = input.count_and_consume_key(modifiers | Modifiers::SHIFT, key) as f64;
                        far * 10.0 + input.count_and_consume_key(modifiers, key) as f64
                    });
                    if steps > 0.0 {
                        said.say(Message::NudgeEnd(last, east * steps * NUDGE_M, north * steps * NUDGE_M));
                    }
                }
            }
            let steps = ui.input_mut(|input| {
                let far = input.count_and_consume_key(Modifiers::SHIFT, key) as f64;
                far * 10.0 + input.count_and_consume_key(Modifiers::NONE, key) as f64
            });
            if steps > 0.0 {
                said.say(Message::Nudge(east * steps * NUDGE_M, north * steps * NUDGE_M));
            }
        }
    }
}

/// The place under the pointer where the map was in the last frame.
fn pointed(ui: &Ui, editor: &Editor) -> Option<Point> {
    let map = ui.ctx().read_response(Id::unique("map"))?;
    let at = map.hover_pos()?;
    Some(editor.view().place([at.x - map.rect.left(), at.y - map.rect.top()]))
}

/// Keys that shape the outline of what is picked.
fn shape_keys(ui: &Ui, editor: &Editor, said: &mut Said) {
    let (shift, none) = (Modifiers::SHIFT, Modifiers::NONE);
    // With Shift first: without, the same key would be taken.
    let keys = [
        (shift, Key::M, ShapingMessage::Mirror(Over::NorthSouth)),
        (none, Key::M, ShapingMessage::Mirror(Over::EastWest)),
        (shift, Key::N, ShapingMessage::Beside(false)),
        (none, Key::N, ShapingMessage::Beside(true)),
        (none, Key::Q, ShapingMessage::SquareUp),
        (none, Key::P, ShapingMessage::PivotHere),
    ];
    for (modifiers, key, message) in keys {
        if ui.input_mut(|input| input.consume_key(modifiers, key)) {
            said.say(Message::Shaping(message));
        }
    }
    // With nothing in the hand L lists everything on the map.
    let by_length = editor.held_from().map(|_| (Key::L, Keep::Length));
    for (key, keep) in by_length.into_iter().chain([(Key::A, Keep::Angle)]) {
        if ui.input_mut(|input| input.consume_key(Modifiers::NONE, key)) {
            let keep = if editor.keep() == keep { Keep::Free } else { keep };
            said.say(Message::Shaping(ShapingMessage::Keep(keep)));
        }
    }
}

/// Under this name it is kept where the arrow keys have led the tool, until the pointer leads it again.
fn led_by_keys() -> Id {
    Id::unique("where the keys led the tool")
}

/// Arrows lead a tool over the ground, a metre or a tenth with Shift; Space sets a corner there.
fn draw_by_keys(ui: &Ui, editor: &Editor, said: &mut Said) {
    let kept = led_by_keys();
    if ui.input(|input| input.pointer.delta() != Vec2::ZERO) {
        ui.data_mut(|data| data.remove_temp::<Point>(kept));
    }
    let led = ui.data(|data| data.get_temp::<Point>(kept));
    let mut moved = Vec2::ZERO;
    ui.input_mut(|input| {
        let ways = [
            (Key::ArrowLeft, vec2(-1.0, 0.0)),
            (Key::ArrowRight, vec2(1.0, 0.0)),
            (Key::ArrowUp, vec2(0.0, 1.0)),
            (Key::ArrowDown, vec2(0.0, -1.0)),
        ];
        for (key, way) in ways {
            // With Shift first: without would match it too.
            moved += way * 0.1 * input.count_and_consume_key(Modifiers::SHIFT, key) as f32;
            moved += way * input.count_and_consume_key(Modifiers::NONE, key) as f32;
        }
    });
    if moved != Vec2::ZERO {
        let from = led.or_else(|| editor.tool().last_place()).unwrap_or(editor.view().middle);
        let to = Point::new(from.east_m + f64::from(moved.x), from.north_m + f64::from(moved.y));
        ui.data_mut(|data| data.insert_temp(kept, to));
        said.say(Message::Hand(Hand::Move(to)));
    }
    if led.is_some() && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Space)) {
        said.say(Message::Hand(Hand::Set));
    }
}

/// Paints the map.
pub(crate) fn paint(
    ui: &mut Ui,
    rect: Rect,
    editor: &Editor,
    (sheet, pictures): (&mut MapSheet, &Pictures),
    said: &mut Said,
) {
    let view = *editor.view();
    let ghost = pages::ghost(ui, editor);
    let key = Some((editor.stamp(), view, rect, ui.pixels_per_point(), ghost.clone()));
    if sheet.key != key {
        sheet.painted.renew(ui.ctx(), &ink(editor, rect.size(), ghost.as_deref()), rect.min);
        sheet.key = key;
    }
    let p = editor.theme().palette();
    let painter = pen::inside(ui.painter(), rect);
    painter.rect_filled(rect, 0.0, colour(p.paper));
    pictures.paint(&painter, editor, rect);
    if editor.plan().ground.boundary.is_empty() {
        first::crosses(&painter, editor, rect);
    }
    sheet.painted.paint(&painter);
    let over = measured::ink(editor, rect);
    sheet.over.renew(ui.ctx(), &over, rect.min);
    sheet.over.paint(&painter);
    unroll::paint(ui, &painter, rect, editor, said);
    corner::paint(ui, rect, editor, said);
    let on_sheet = |at: Point| {
        let [right, down] = view.spot(at);
        rect.min + vec2(right, down)
    };
    if let Some(was) = editor.held_from() {
        let stroke = Stroke::new(1.0, colour(p.ink));
        let ring: Vec<Pos2> = (0..=24)
            .map(|step| on_sheet(was) + Vec2::angled(step as f32 * std::f32::consts::TAU / 24.0) * 7.0)
            .collect();
        painter.extend(Shape::dashed_line(&ring, stroke, 2.0, 3.0));
    }
    turning_ring(&painter, editor, rect, &on_sheet);
    outline_in_hand(&painter, editor, &on_sheet);
    snapped(&painter, editor, rect, &on_sheet);
    measured::paint(ui, &painter, rect, editor);
    many::paint(ui, &painter, editor, &on_sheet);
    hint(&painter, editor, rect);
    nodes::show(ui, rect, editor, &on_sheet, said);
}

fn ink(editor: &Editor, size: Vec2, ghost: Option<&Ghost>) -> Vec<Ink> {
    let view = editor.view();
    let mut ink = editor.drawing().ink_with(view, ghost);
    if let Some(step_m) = editor.grid().step_m(editor.words().units) {
        // On the ground, under all that stands on it.
        let ground = ink.iter().take_while(|item| matches!(item, Ink::Area { .. })).count();
        ink.splice(ground..ground, drawing::guides::grid(view, step_m));
    }
    if let Some(in_hand) = editor.in_hand() {
        ink.extend(unroll::ink(editor, in_hand));
    }
    ink.extend(corner::ink(editor));
    let (right, below) = (size.x - RIGHT_PX, size.y - FOOT_PX);
    ink.extend(drawing::furniture::north(view.theme, editor.words(), [right, below]));
    ink.extend(drawing::furniture::scale_bar(view, editor.words(), [right - 40.0, below]));
    let coloured = editor.in_hand().is_none() && editor.workup().runs.iter().any(|run| run.volts.is_some());
    if coloured && has_key(size) {
        let target_kv = editor.plan().target_kv();
        ink.extend(drawing::furniture::volts_key(view.theme, editor.words(), target_kv, [right, RIGHT_PX]));
    }
    ink
}

/// The ring by which what is picked is turned, on a stem.
fn turning_ring(painter: &egui::Painter, editor: &Editor, rect: Rect, on_sheet: &impl Fn(Point) -> Pos2) {
    let (Some(at), Some(top)) = (ring(editor, rect), editor.turn_ring()) else { return };
    let p = editor.theme().palette();
    let pen = Stroke::new(2.0, colour(p.pick));
    painter.line_segment([at + vec2(0.0, RING_PX), on_sheet(top) - vec2(0.0, 10.0)], Stroke::new(1.0, colour(p.pick)));
    painter.circle(at, RING_PX, colour(p.sheet), pen);
    if let Some(cross) = cross(editor, rect) {
        for (way, stroke) in [(1.0, Stroke::new(4.0, colour(p.sheet))), (0.0, Stroke::new(1.5, colour(p.pick)))] {
            let reach = CROSS_PX + way;
            painter.line_segment([cross - vec2(reach, 0.0), cross + vec2(reach, 0.0)], stroke);
            painter.line_segment([cross - vec2(0.0, reach), cross + vec2(0.0, reach)], stroke);
        }
    }
}

/// What caught the corner in the hand: an open diamond, and the reason on a plate.
fn snapped(painter: &egui::Painter, editor: &Editor, rect: Rect, on_sheet: &impl Fn(Point) -> Pos2) {
    let Some(snapped) = editor.snapped() else { return };
    let p = editor.theme().palette();
    let at = on_sheet(snapped.at);
    let ends = [vec2(0.0, -9.0), vec2(9.0, 0.0), vec2(0.0, 9.0), vec2(-9.0, 0.0)].map(|by| at + by);
    painter.add(Shape::closed_line(ends.to_vec(), Stroke::new(2.0, colour(p.pick))));
    // The entry at the pointer says it in its own line.
    let in_entry = editor.corner_in_hand().is_some();
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

/// Whether the key of volts finds room on a map of that size.
fn has_key(size: Vec2) -> bool {
    size.y > 320.0 && size.x > 700.0
}

fn outline_in_hand(painter: &egui::Painter, editor: &Editor, on_sheet: &impl Fn(Point) -> Pos2) {
    let Tool::Outline { of, corners, pointer, .. } = editor.tool() else { return };
    // A run's own nets show where it lies.
    if *of == Drawn::Run {
        return;
    }
    if *of == Drawn::Known {
        return underlay::known_points(painter, editor, on_sheet);
    }
    let p = editor.theme().palette();
    let (pen, thin) = (Stroke::new(2.0, colour(p.pick)), Stroke::new(1.5, colour(p.pick)));
    let spots: Vec<Pos2> = corners.iter().map(|&corner| on_sheet(corner)).collect();
    painter.add(Shape::line(spots.clone(), pen));
    if let (Some(&last), Some(pointer)) = (corners.last(), *pointer) {
        let to = on_sheet(pointer);
        painter.line_segment([on_sheet(last), to], pen);
        if of.closes() && corners.len() > 1 {
            painter.extend(Shape::dashed_line(&[to, spots[0]], thin, 7.0, 4.0));
        }
    }
    for (index, &spot) in spots.iter().enumerate() {
        let fill = if index == 0 { p.pick } else { p.sheet };
        let square = Rect::from_center_size(spot, Vec2::splat(8.0));
        painter.rect(square, 0.0, colour(fill), thin, egui::StrokeKind::Middle);
    }
}

/// One line at the foot of the map: what the tool waits for, or what could not be done.
pub(crate) fn hint_text(editor: &Editor) -> Option<String> {
    if let Some(hint) = many::hint(editor) {
        return Some(hint);
    }
    let words = editor.words();
    if let Some(notice) = editor.notice_underlay() {
        return Some(words.text(notice).to_owned());
    }
    let text = match (editor.notice(), editor.tool()) {
        (Some(notice), _) => words.text(notice),
        (None, Tool::Tape(tape)) if tape.done => words.text(Guides::HintTaped),
        (None, Tool::Tape(_)) => words.text(Guides::HintTape),
        (None, Tool::Pick) if let Some(told) = editor.shape_told().or_else(|| editor.shape_hint()) => words.text(told),
        (None, Tool::Try(_)) => words.text(Faults::HintFault),
        (None, Tool::Outline { of: Drawn::Coop, .. }) => words.text(Shaping::HintPlaceCoop),
        (None, Tool::Outline { of: Drawn::Branch, .. }) => words.text(Power::HintBranch),
        (None, Tool::Outline { of: Drawn::Height, .. }) => words.text(words::texts::Slope::HintHeight),
        (None, Tool::Outline { of: Drawn::EarthStake(_), .. }) => words.text(words::texts::Earth::HintStake),
        (None, Tool::Outline { of: Drawn::Drop(_), .. }) => words.text(Underlay::HintDrop),
        (None, Tool::Outline { of: Drawn::Feed(_), .. }) => words.text(Underlay::HintFeed),
        (None, Tool::Outline { of: Drawn::Label, .. }) => words.text(Underlay::HintLabel),
        (None, Tool::Outline { of: Drawn::Known, corners, .. }) => words.text(match corners.len() {
            0 => Underlay::HintKnownFirst,
            1 => Underlay::HintKnownSecond,
            _ => Underlay::HintKnownType,
        }),
        (None, Tool::Outline { of, .. }) if of.is_place() => words.text(Shaping::HintPoint),
        (None, Tool::Outline { of, .. }) if !of.closes() => words.text(Shaping::HintPath),
        (None, Tool::Outline { corners, .. }) if corners.len() < crate::tool::FEWEST_CORNERS => {
            words.text(Text::HintFirstCorners)
        }
        (None, Tool::Outline { .. }) => words.text(Text::HintMoreCorners),
        (None, Tool::Pick) if editor.is_catchable() => words.text(Shaping::HintFree),
        (None, Tool::Pick) if on_picked_whole(editor) => words.text(Shaping::WholeHint),
        (None, Tool::Pick) => return stake_hovered(editor),
    };
    Some(text.to_owned())
}

/// How far off what the earth stake under the pointer stands.
fn stake_hovered(editor: &Editor) -> Option<String> {
    let Some(Thing::EarthStake { run, stake }) = editor.hovered().filter(|_| editor.held_from().is_none()) else {
        return None;
    };
    let words = editor.words();
    let all = workup::earth::stakes(editor.plan(), editor.workup(), run);
    let off = all.get(stake).map_or_else(
        || words.text(words::texts::Earth::NotPlaced).to_owned(),
        |one| care::earths::said(editor.plan(), editor.workup(), run, one, words),
    );
    Some(words.say(words::texts::Earth::StakeSaid, &[("number", &(stake + 1).to_string()), ("said", &off)]))
}

fn hint(painter: &egui::Painter, editor: &Editor, rect: Rect) {
    let Some(text) = hint_text(editor) else { return };
    let p = editor.theme().palette();
    // Beside the scale where there is room for it, else over it: the scale is always in sight.
    let beside = rect.width() - 2.0 * RIGHT_PX - drawing::furniture::SCALE_PX - 36.0;
    let over = beside < LEAST_HINT_PX;
    let room = if over { rect.width() - 2.0 * RIGHT_PX - 24.0 } else { beside }.min(rect.width() * 0.6);
    let galley = painter.layout(text, theme::medium(13.0), colour(p.ink), room);
    let foot = if over { FOOT_PX + drawing::furniture::PLATE_PX as f32 + 8.0 } else { FOOT_PX };
    let plate = Rect::from_min_size(
        pos2(rect.left() + 20.0, rect.bottom() - foot - galley.size().y - 12.0),
        galley.size() + vec2(24.0, 12.0),
    );
    let edge = Stroke::new(1.5, colour(p.pick));
    painter.add(Shape::convex_polygon(icons::cut_plate(plate, 7.0), colour(p.sheet), edge));
    painter.galley(plate.min + vec2(12.0, 6.0), galley, colour(p.ink));
}

/// Whether the pointer is on something picked that can be moved whole.
fn on_picked_whole(editor: &Editor) -> bool {
    editor.held_from().is_none()
        && editor.turn_ring().is_some()
        && editor.hovered().is_some_and(|thing| Some(thing) == editor.picked())
}
