//! What is measured on the map: the marks of what caught the hand, dimensions beside what is edited, the tape.

use std::sync::Arc;

use drawing::Ink;
use egui::{
    Event, Galley, Id, Painter, PointerButton, Pos2, Rect, Response, Role, Sense, Shape, Stroke, Ui, WidgetInfo, vec2,
};
use words::texts::Guides as Text;

use crate::editor::{Editor, Message};
use crate::icons;
use crate::said::Said;
use crate::theme::{self, colour};
use crate::tool::{Hand, Tool};

/// From the hand to the reason at it, pixels, and how high its plate is.
const REASON: egui::Vec2 = vec2(14.0, 12.0);
const REASON_HIGH: f32 = 22.0;

/// Takes the tape by a drag from one place to another; whether that is what the drag is.
pub(crate) fn drag(
    response: &Response,
    editor: &Editor,
    space: bool,
    here: &impl Fn(Pos2) -> drawing::Spot,
    said: &mut Said,
) -> bool {
    if !matches!(editor.tool(), Tool::Tape(_)) || space {
        return false;
    }
    let view = editor.view();
    let click = |at: Pos2| Message::Hand(Hand::Click { at: view.place(here(at)), reach_m: 0.0 });
    if response.drag_started_by(PointerButton::Primary)
        && let Some(from) = response.ctx.input(|input| input.pointer.press_origin())
    {
        said.say(Message::Use(Tool::tape()));
        said.say(click(from));
    }
    if response.dragged_by(PointerButton::Primary)
        && let Some(at) = response.interact_pointer_pos()
    {
        said.say(Message::Hand(Hand::Move(view.place(here(at)))));
    }
    if response.drag_stopped_by(PointerButton::Primary) {
        said.say(Message::Hand(Hand::Close));
    }
    response.dragged_by(PointerButton::Primary) || response.drag_stopped_by(PointerButton::Primary)
}

/// Ctrl+C takes what the tape says along.
pub(crate) fn copy(ui: &Ui, editor: &Editor) {
    let asked = ui.input(|input| input.events.iter().any(|event| matches!(event, Event::Copy)));
    if let (true, Some(said)) = (asked, editor.tape_said()) {
        ui.ctx().copy_text(said.join("\n"));
    }
}

/// The plate with the reason beside the hand, where it stands there.
pub(crate) fn reason(rect: Rect, editor: &Editor) -> Option<Rect> {
    let snapped = editor.snapped()?;
    let [right, down] = editor.view().spot(snapped.at);
    let wide = drawing::letters::text_width(&snapped.reason, 11.0, drawing::Weight::Medium) + 14.0;
    let plate = Rect::from_min_size(rect.min + vec2(right, down) + REASON, vec2(wide, REASON_HIGH));
    // It is pushed back into the map at its right edge.
    Some(plate.translate(vec2((rect.right() - 8.0 - plate.right()).min(0.0), 0.0)))
}

/// Marks and tape as ink over the map.
pub(crate) fn ink(editor: &Editor) -> Vec<Ink> {
    let (view, words) = (editor.view(), editor.words());
    let mut ink = editor.guide_ink();
    if let Some(places) = editor.taped() {
        ink.extend(drawing::tape::ink(view, words, &places, true));
    }
    ink
}

/// The tape's plate, and both in words for who cannot see them.
pub(crate) fn paint(ui: &mut Ui, painter: &Painter, rect: Rect, editor: &Editor) {
    if let Some(said) = editor.dimensions_said() {
        let response =
            ui.interact(Rect::from_min_size(rect.min, vec2(1.0, 1.0)), Id::unique("dimensions"), Sense::hover());
        response.widget_info(|| WidgetInfo::labeled(Role::Label, true, said.as_str()));
    }
    let Some(tape) = Tape::of(painter, rect, editor) else { return };
    let p = editor.theme().palette();
    let edge = Stroke::new(1.5, colour(p.ink));
    painter.add(Shape::convex_polygon(icons::cut_plate(tape.plate, 7.0), colour(p.sheet), edge));
    let mut top = tape.plate.top() + 5.0;
    for line in tape.lines {
        let high = line.size().y;
        painter.galley(egui::pos2(tape.plate.left() + 10.0, top), line, colour(p.ink));
        top += high + 2.0;
    }
    let response = ui.interact(tape.plate, Id::unique("tape"), Sense::hover());
    let told = editor.words().say(Text::TapeNode, &[("figures", &tape.said)]);
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, told.as_str()));
}

/// What the tape says, beside its end.
pub(crate) struct Tape {
    /// Its plate.
    pub(crate) plate: Rect,
    lines: Vec<Arc<Galley>>,
    said: String,
}

impl Tape {
    /// It, where there is one.
    pub(crate) fn of(painter: &Painter, rect: Rect, editor: &Editor) -> Option<Self> {
        let (said, places) = (editor.tape_said()?, editor.taped()?);
        let p = editor.theme().palette();
        let [right, down] = editor.view().spot(*places.last()?);
        let at = rect.min + vec2(right, down);
        let laid = |(line, text): (usize, &String)| {
            let (font, ink) = if line == 0 { (theme::semi_bold(13.0), p.ink) } else { (theme::regular(12.0), p.ink2) };
            painter.layout_no_wrap(text.clone(), font, colour(ink))
        };
        let lines: Vec<Arc<Galley>> = said.iter().enumerate().map(laid).collect();
        let wide = lines.iter().map(|line| line.size().x).fold(0.0, f32::max) + 22.0;
        let high = lines.iter().map(|line| line.size().y + 2.0).sum::<f32>() + 10.0;
        let up = if editor.snapped().is_some() { -high - 14.0 } else { 14.0 };
        let free = Rect::from_min_size(at + vec2(14.0, up), vec2(wide, high));
        Some(Self { plate: within(free, rect, editor), lines, said: said.join(", ") })
    }
}

/// A plate moved into the map, and clear of the scale bar.
pub(crate) fn within(free: Rect, rect: Rect, editor: &Editor) -> Rect {
    let room = rect.shrink(8.0);
    let into = |low: f32, high: f32, from: f32, to: f32| if low < from { from - low } else { (to - high).min(0.0) };
    let plate = free.translate(vec2(
        into(free.left(), free.right(), room.left(), room.right()),
        into(free.top(), free.bottom(), room.top(), room.bottom()),
    ));
    let scale = editor.view().kept[0].map(|[left, top, right, bottom]| {
        Rect::from_min_max(rect.min + vec2(left, top), rect.min + vec2(right, bottom))
    });
    match scale.filter(|scale| scale.intersects(plate)) {
        Some(scale) => plate.translate(vec2(0.0, scale.top() - 6.0 - plate.bottom())),
        None => plate,
    }
}
