//! Who leads a tool over the map: the mouse once it moves, else the arrow keys.
//!
//! A corner that was set rests there until the mouse goes on by more than a hand trembles, so that no further corner is
//! shown beside it that nobody wants. Where the keys lead is kept as they led it, so that their steps add up past
//! whatever catches the corner.

use egui::{Event, Id, Key, Modifiers, Painter, Pos2, Rect, Role, Sense, Stroke, Ui, Vec2, WidgetInfo, vec2};
use plan::Point;
use words::texts::Window as Text;

use crate::editor::{Editor, Message};
use crate::said::Said;
use crate::theme::colour;
use crate::tool::{Drawn, Hand, Tool};
use crate::{map_view, pen};

/// How far the mouse goes before it leads again, pixels.
const REST_PX: f32 = 5.0;
/// So near the map's edge the keys take the map along, pixels.
const EDGE_PX: f32 = 48.0;
/// The cross at the keys' pointer.
const RING_PX: f32 = 9.0;
const ARM_PX: f32 = 14.0;

/// Who leads.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
enum By {
    /// Nobody yet.
    #[default]
    Nobody,
    /// The tool was chosen by a key: the keys, from the middle of the view.
    KeysNext,
    /// The keys, and where to, uncaught.
    Keys(Point),
    /// The mouse.
    Mouse,
}

/// What is kept of it in egui's memory.
#[derive(Clone, Copy, Debug, Default)]
struct Lead {
    by: By,
    /// Corners that were set.
    set: usize,
    /// Where the mouse rests.
    rests: Option<Pos2>,
}

fn id() -> Id {
    Id::unique("who leads the tool")
}

fn kept(ctx: &egui::Context) -> Lead {
    ctx.data(|data| data.get_temp(id())).unwrap_or_default()
}

/// A tool that was chosen by a key gives the map the keys.
pub(crate) fn chosen(ui: &Ui, messages: &[Message]) {
    let takes_up = |one: &Message| matches!(one, Message::Use(tool) | Message::UseOn(_, tool) if *tool != Tool::Pick);
    if !messages.iter().any(takes_up) {
        return;
    }
    let by_key =
        ui.input(|input| input.raw.events.iter().any(|event| matches!(event, Event::Key { pressed: true, .. })));
    let lead = if by_key {
        ui.memory_mut(|memory| memory.focused().into_iter().for_each(|id| memory.surrender_focus(id)));
        Lead { by: By::KeysNext, rests: mouse(ui), set: 0 }
    } else {
        Lead::default()
    };
    ui.data_mut(|data| data.insert_temp(id(), lead));
    ui.ctx().request_repaint();
}

fn mouse(ui: &Ui) -> Option<Pos2> {
    ui.input(|input| input.pointer.latest_pos())
}

/// Listens to the mouse, which is over the map at `hover`.
pub(crate) fn by_mouse(ui: &Ui, rect: Rect, hover: Option<Pos2>, editor: &Editor, said: &mut Said) {
    let mut lead = caught_up(ui, editor);
    if lead.by == By::KeysNext {
        let middle = editor.view().middle;
        lead.by = By::Keys(middle);
        said.say(Message::Hand(Hand::Move(middle)));
    }
    if let (Some(rest), Some(now)) = (lead.rests, mouse(ui))
        && rest.distance(now) > REST_PX
    {
        lead.rests = None;
    }
    match hover {
        Some(at) if lead.rests.is_none() => {
            lead.by = By::Mouse;
            let place = editor.view().place([at.x - rect.left(), at.y - rect.top()]);
            said.say(Message::Hand(Hand::Move(place)));
        }
        None if lead.by == By::Mouse && mouse(ui).is_none_or(|at| !rect.contains(at)) => {
            lead.by = By::Nobody;
            said.say(Message::Hand(Hand::Off));
        }
        _ => {}
    }
    ui.data_mut(|data| data.insert_temp(id(), lead));
}

/// What is kept, with a corner that was set or taken up since: the mouse rests, and the keys go on from that corner.
fn caught_up(ui: &Ui, editor: &Editor) -> Lead {
    let (mut lead, tool) = (kept(ui.ctx()), editor.tool());
    if lead.set != tool.set_count() {
        lead.set = tool.set_count();
        lead.rests = mouse(ui);
        if let (By::Keys(_), Some(at)) = (lead.by, tool.last_place()) {
            lead.by = By::Keys(at);
        }
    }
    lead
}

/// Arrows lead the tool over the ground, a metre or a tenth with Shift; Space sets a corner there.
pub(crate) fn by_keys(ui: &Ui, editor: &Editor, said: &mut Said) {
    let mut lead = caught_up(ui, editor);
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
        let from = match lead.by {
            By::Keys(at) => at,
            By::Mouse | By::Nobody | By::KeysNext => editor.tool().pointer().unwrap_or(editor.view().middle),
        };
        let to = Point::new(from.east_m + f64::from(moved.x), from.north_m + f64::from(moved.y));
        (lead.by, lead.rests) = (By::Keys(to), mouse(ui));
        if let Some(message) = follows(editor, to) {
            said.say(message);
        }
        said.say(Message::Hand(Hand::Move(to)));
    }
    if matches!(lead.by, By::Keys(_)) && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Space)) {
        said.say(Message::Hand(Hand::Set));
    }
    ui.data_mut(|data| data.insert_temp(id(), lead));
}

/// The map goes along where the keys lead off it.
fn follows(editor: &Editor, to: Point) -> Option<Message> {
    let (spot, size) = (editor.view().spot(to), editor.view().size);
    let over = |side: usize| spot[side].clamp(EDGE_PX, (size[side] - EDGE_PX).max(EDGE_PX)) - spot[side];
    let (right, down) = (over(0), over(1));
    (right != 0.0 || down != 0.0).then_some(Message::Pan(right, down))
}

/// What the keys do, while they lead.
pub(crate) fn hint(ctx: &egui::Context, editor: &Editor) -> Option<&'static str> {
    let of = match editor.tool() {
        Tool::Pick | Tool::Try(_) => return None,
        Tool::Tape(tape) if tape.done => return None,
        Tool::Tape(_) => None,
        Tool::Outline { of: Drawn::Known, corners, .. } if corners.len() >= Drawn::Known.fewest() => return None,
        Tool::Outline { of, .. } => Some(*of),
    };
    if !matches!(kept(ctx).by, By::Keys(_)) {
        return None;
    }
    Some(editor.words().text(match of {
        Some(of) if of.is_place() => Text::KeysPlace,
        Some(of) if of.closes() => Text::KeysOutline,
        _ => Text::KeysPath,
    }))
}

/// The keys' pointer, which no mouse shows, with what the keys do for who cannot see it.
pub(crate) fn paint(ui: &Ui, painter: &Painter, editor: &Editor, on_sheet: &impl Fn(Point) -> Pos2) {
    let (Some(told), Some(at)) = (hint(ui.ctx(), editor), editor.tool().pointer()) else { return };
    let at = on_sheet(at);
    let stroke = Stroke::new(2.0, colour(editor.theme().palette().pick));
    let arms = [vec2(1.0, 0.0), vec2(0.0, 1.0), vec2(-1.0, 0.0), vec2(0.0, -1.0)]
        .map(|way| [at + way * (RING_PX - 4.0), at + way * ARM_PX]);
    for line in arms.iter().map(|arm| arm.to_vec()).chain([map_view::round(at, RING_PX)]) {
        pen::bed(painter, editor, line, stroke.width);
    }
    painter.circle_stroke(at, RING_PX, stroke);
    for arm in arms {
        painter.line_segment(arm, stroke);
    }
    let response =
        ui.interact(Rect::from_center_size(at, Vec2::splat(1.0)), Id::unique("the keys' pointer"), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, told));
}
