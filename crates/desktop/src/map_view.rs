//! The map: listening to the hand, then painting the ink of the editor's drawing.
//!
//! Listening comes first in a frame, so that what a drag changes is painted in the same frame. The pointer is heard here,
//! the keys in [`mod@keys`]; what is painted is in [`mod@paint`], the line at the map's foot in [`mod@hint`].

mod at_pointer;
mod hint;
mod keys;
mod paint;
mod resting;

use drawing::{Thing, furniture};
use egui::{CursorIcon, Event, Id, Key, PointerButton, Pos2, Rect, Response, Role, Sense, Ui, Vec2, WidgetInfo, vec2};
use words::texts::Window as Text;

pub(crate) use hint::hint_text;
pub(crate) use keys::{NUDGE_M, TURN_DEG, keys};
pub(crate) use paint::{MapSheet, paint, plate, round};

use crate::editor::{Editor, Lesson, Message, Page, ShapingMessage};
use crate::said::Said;
use crate::tool::{Hand, Tool};
use crate::{leading, many, measured, pages};

/// How near the pointer must come to a thing, pixels.
const REACH_PX: f32 = 9.0;
/// How near the first corner a click closes an outline, pixels.
const CLOSE_PX: f32 = 11.0;
/// How far over what is picked its turning ring stands, how far off its stem ends, and how near counts as on it, pixels.
const RING_OFF_PX: f32 = 30.0;
const RING_FOOT_PX: f32 = 10.0;
const RING_REACH_PX: f32 = 11.0;
/// How near counts as on the cross about which the picked thing turns, pixels.
const CROSS_REACH_PX: f32 = 7.0;
/// Distance of scale, north and key from the map's right and upper edge, and from its foot, pixels.
const RIGHT_PX: f32 = 20.0;
const FOOT_PX: f32 = 16.0;
/// A hand that keeps still so long rests, seconds.
const RESTS_S: f64 = 0.4;
/// How much one notch of the wheel zooms: pixels of scrolling that double the scale.
const DOUBLING_PX: f64 = 160.0;

/// Where a place of the plan is on the map of that part of the window.
pub(crate) fn on_map(rect: Rect, editor: &Editor, at: plan::Point) -> Pos2 {
    let [right, down] = editor.view().spot(at);
    rect.min + vec2(right, down)
}

/// The map among the window's widgets.
fn map_id() -> Id {
    Id::unique("map")
}

/// Listens to the pointer and the keys over the map.
pub(crate) fn listen(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) {
    let response = ui.interact(rect, map_id(), Sense::CLICK | Sense::DRAG);
    response.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, editor.words().text(Text::Map)));
    let size = [rect.width(), rect.height()];
    said.say(Message::Size(size, kept(editor, size)));
    let (view, shown) = (editor.view(), paint::shown(editor, rect));
    let here = |at: Pos2| [at.x - rect.left(), at.y - rect.top()];
    // Open grass is nothing to pick, but where the page is about it.
    let thing_at = |at: Pos2| {
        let thing = editor.drawing().thing_at(&shown, here(at), REACH_PX);
        thing.filter(|thing| !matches!(thing, Thing::Boundary | Thing::Underlay) || editor.page() == Page::Ground)
    };
    let space = ui.input(|input| input.key_down(Key::Space)) && !ui.ctx().text_edit_focused();

    zoom(ui, response.hover_pos().map(here), said);
    if let Some(at) = response.hover_pos()
        && *editor.tool() == Tool::Pick
    {
        // What is dragged is what is under the pointer, as is said below.
        let dragged = editor.held_from().is_some() && response.dragged_by(PointerButton::Primary);
        said.hovered = if dragged { editor.picked() } else { thing_at(at) };
    }
    if *editor.tool() != Tool::Pick {
        leading::by_mouse(ui, rect, response.hover_pos(), editor, said);
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
        if ring(editor, rect).is_some_and(|ring| ring.at.distance(at) <= RING_REACH_PX) {
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
    rests(ui, editor, said);
    clicks(&response, editor, said, &here, &thing_at);
    let roll = response.hover_pos().filter(|_| *editor.tool() == Tool::Pick && editor.held_from().is_none());
    if let Some(number) = roll.and_then(|at| editor.drawing().roll_at(view, here(at))) {
        let words = editor.words();
        response.show_tooltip_text(words.say(words::texts::Map::RollSaid, &[("number", &number.to_string())]));
    }
    let cursor = cursor(editor, said, &response, space);
    response.on_hover_and_drag_cursor(cursor);
}

/// Says that the hand rests with what it leads, once it has kept still.
fn rests(ui: &Ui, editor: &Editor, said: &mut Said) {
    let led = Id::unique("when the hand led last");
    if editor.held_from().is_none() {
        ui.data_mut(|data| data.remove_temp::<f64>(led));
        return;
    }
    let now = ui.input(|input| input.time);
    if said.messages.iter().any(|one| matches!(one, Message::Drag(_))) {
        ui.data_mut(|data| data.insert_temp(led, now));
    }
    let Some(at) = ui.data(|data| data.get_temp::<f64>(led)) else { return };
    if now - at < RESTS_S {
        ui.ctx().request_repaint_after(std::time::Duration::from_secs_f64(RESTS_S - (now - at)));
    } else {
        ui.data_mut(|data| data.remove_temp::<f64>(led));
        said.say(Message::Rest);
    }
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
    // Of a thousand things the one under the pointer is looked for only where there was a click.
    let Some(at) = response.interact_pointer_pos().filter(|_| response.clicked()) else { return };
    let view = editor.view();
    // Who clicked elsewhere a moment ago has clicked three times by the second click of a double one.
    let twice = response.double_clicked() || response.triple_clicked();
    if *editor.tool() == Tool::Pick {
        if twice && thing_at(at).is_none_or(is_ground) {
            said.say(Message::Fit);
        } else if many::click(response, thing_at(at), said) {
            // One more, or one less.
        } else if response.clicked() {
            let picks = thing_at(at).map(|thing| editor.picks_at(thing, view.place(here(at))));
            said.say(pages::clicked(picks));
        }
    } else if twice {
        said.say(Message::Hand(Hand::Close));
    } else if response.clicked() {
        let reach_m = f64::from(CLOSE_PX) / view.px_per_m;
        said.say(Message::Hand(Hand::Click { at: view.place(here(at)), reach_m }));
    }
}

/// Zooms about the spot under the pointer by a wheel that was turned over the map: what egui leaves of a turn to
/// later frames belongs to where it was turned, also where the pointer came here since.
fn zoom(ui: &Ui, about: Option<drawing::Spot>, said: &mut Said) {
    let elsewhere = Id::unique("the wheel was turned beside the map");
    let (scroll, pinch, turned) = ui.input(|input| {
        let turned = input.events.iter().any(|event| matches!(event, Event::MouseWheel { .. }));
        (input.smooth_scroll_delta().y, f64::from(input.zoom_delta()), turned)
    });
    if turned {
        ui.data_mut(|data| data.insert_temp(elsewhere, about.is_none()));
    }
    let Some(about) = about else { return };
    let scroll = if ui.data(|data| data.get_temp(elsewhere)).unwrap_or(false) { 0.0 } else { scroll };
    let by = (f64::from(scroll) / DOUBLING_PX).exp2() * pinch;
    if (by - 1.0).abs() > 1e-6 {
        said.say(Message::Zoom(by, about));
    }
}

/// The turning ring of what is picked, on the screen.
struct TurnRing {
    at: Pos2,
    /// Where its stem ends, at the outline.
    foot: Pos2,
}

/// Where it stands: over the outline, or under its upper side where scale, key or the map's edge would cover it.
fn ring(editor: &Editor, rect: Rect) -> Option<TurnRing> {
    let view = editor.view();
    let [right, down] = view.spot(editor.turn_ring()?);
    let ring = |way: f32| TurnRing {
        at: rect.min + vec2(right, down + way * RING_OFF_PX),
        foot: rect.min + vec2(right, down + way * RING_FOOT_PX),
    };
    let is_free = |ring: &TurnRing| {
        let around = Rect::from_center_size(ring.at, Vec2::splat(2.0 * RING_REACH_PX));
        let covers = |&[left, top, right, foot]: &[f32; 4]| {
            let kept = Rect::from_min_max(rect.min + vec2(left, top), rect.min + vec2(right, foot));
            kept.intersects(around)
        };
        around.top() >= rect.top() && !view.kept.iter().flatten().any(covers)
    };
    [-1.0, 1.0].map(ring).into_iter().find(is_free).or_else(|| Some(ring(-1.0)))
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
        | Thing::HazardCorner { .. }
        | Thing::ShadeCorner { .. }
        | Thing::DampCorner { .. }
        | Thing::Label { .. }
        | Thing::Drop { .. }
        | Thing::CoopDoor
        | Thing::Gate { .. }
        | Thing::Fault { .. }
        | Thing::Zone { .. }
        | Thing::ZoneEnd { .. }
        | Thing::BranchCorner { .. }
        | Thing::Height { .. }
        | Thing::TapePoint { .. }
        | Thing::Feed { .. }
        | Thing::Energizer { .. }
        | Thing::EarthStake { .. }
        | Thing::EarthStakes { .. } => true,
        Thing::Underlay => picked == Some(thing),
        Thing::RunSide { run, .. } | Thing::Run { run } | Thing::Post { run, .. } => {
            picked.and_then(Thing::run) == Some(run)
        }
        Thing::Wall { .. }
        | Thing::Hazard { .. }
        | Thing::Shade { .. }
        | Thing::ShadeSide { .. }
        | Thing::Damp { .. }
        | Thing::DampSide { .. }
        | Thing::Branch { .. }
        | Thing::BranchSide { .. }
        | Thing::Boundary
        | Thing::BoundarySide { .. }
        | Thing::KeepOut { .. }
        | Thing::KeepOutSide { .. } => picked.map(Thing::whole) == Some(thing.whole()),
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

/// What scale and key take of the map: the key makes way for what the hand can take hold of, but not while it does.
fn kept(editor: &Editor, size: [f32; 2]) -> [Option<[f32; 4]>; 2] {
    let (view, key) = (editor.view(), key_size(editor, size.into()));
    let rests = editor.held_from().is_none() || view.size != size || view.kept[1].is_some() != key.is_some();
    if !rests {
        return view.kept;
    }
    let handles = key.map_or_else(Vec::new, |_| editor.handles());
    let handles: Vec<drawing::Spot> = handles.into_iter().map(|at| view.spot(at)).collect();
    furniture::kept(size, RIGHT_PX, FOOT_PX, key, &handles)
}

/// How wide and how high the key is, where the map has one.
fn key_size(editor: &Editor, size: Vec2) -> Option<[f32; 2]> {
    let tells_earth = editor.earth_suggested().is_some();
    shows_volts(editor, size).then(|| furniture::key_size(editor.words(), editor.plan().target_kv(), tells_earth))
}

/// Whether the key of volts is shown: there are some, and it finds room on a map of that size.
fn shows_volts(editor: &Editor, size: Vec2) -> bool {
    let coloured = editor.in_hand().is_none() && editor.workup().runs.iter().any(|run| run.volts.is_some());
    coloured && size.y > 320.0 && size.x > 560.0
}
