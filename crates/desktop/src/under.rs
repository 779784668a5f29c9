//! What lies under the map: the run unfolded, its volts on the pages about power and readings, or all runs side by
//! side.

mod beside;
mod compare;
mod volts;

use drawing::{LineDrawing, LineView, Thing};
use egui::{Id, Rect, Role, Sense, Stroke, Ui, WidgetInfo};
use words::texts::{Unroll, Window as Text};

use crate::editor::{Editor, Lesson, Message, Page};
use crate::pen::{self, Painted};
use crate::said::Said;
use crate::theme::{self, colour};
use crate::tool::{Hand, Tool};
use crate::{about, pages};

/// Height of the unfolded line.
const LINE: f32 = 128.0;
/// Its height in a small window.
const LINE_SMALL: f32 = 56.0;
/// Height with volts over the line.
const WITH_VOLTS: f32 = 280.0;
/// The same in a small window.
const WITH_VOLTS_SMALL: f32 = 216.0;
/// How near the pointer must come to a thing on the line, pixels.
const REACH_PX: f32 = 8.0;

/// Ink of the line, and what it was made from.
#[derive(Default)]
pub(crate) struct LineSheet {
    key: Option<(u64, usize, LineView, Rect, f32)>,
    drawing: LineDrawing,
    painted: Painted,
}

/// What is shown under the map.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Shown {
    Line,
    Volts,
    Compare,
}

fn shown(editor: &Editor) -> Shown {
    match editor.page() {
        Page::Power | Page::Book => Shown::Volts,
        Page::Run if editor.compare() && editor.in_hand().is_none() => Shown::Compare,
        _ => Shown::Line,
    }
}

/// Height of what lies under the map, for a window of that height.
pub(crate) fn height(editor: &Editor, window: f32) -> f32 {
    let small = window < 700.0;
    match shown(editor) {
        Shown::Line if small => LINE_SMALL,
        Shown::Line => LINE,
        Shown::Volts if small => WITH_VOLTS_SMALL,
        Shown::Volts => WITH_VOLTS,
        Shown::Compare => compare::height(editor.compared_count(), window),
    }
}

/// Shows it.
pub(crate) fn show(ui: &mut Ui, rect: Rect, editor: &Editor, sheet: &mut LineSheet, said: &mut Said) {
    let p = editor.theme().palette();
    ui.painter().rect_filled(rect, 0.0, colour(p.sheet));
    ui.painter().hline(rect.x_range(), rect.top() + 0.5, Stroke::new(1.0, colour(p.rule)));
    match shown(editor) {
        Shown::Line => line(ui, rect, editor, sheet, said),
        Shown::Volts => {
            let tall = if rect.height() < WITH_VOLTS { LINE_SMALL } else { 104.0 };
            let (above, below) = rect.split_top_bottom_at_y(rect.bottom() - tall);
            line(ui, below, editor, sheet, said);
            volts::show(ui, above, editor, &sheet.drawing);
        }
        Shown::Compare => compare::show(ui, rect, editor, said),
    }
}

fn line(ui: &mut Ui, rect: Rect, editor: &Editor, sheet: &mut LineSheet, said: &mut Said) {
    let response = ui.interact(rect, Id::unique("line"), Sense::CLICK | Sense::DRAG);
    response.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, editor.words().text(Text::Line)));
    if response.hovered() && editor.lesson() == Lesson::ReadLine {
        said.say(Message::Learnt(Lesson::Done));
    }
    let view = LineView {
        width: rect.width(),
        height: rect.height(),
        theme: editor.theme(),
        picked: editor.picked(),
        hovered: editor.hovered(),
        stale: false,
    };
    let run = editor.run_index();
    let key = Some((editor.stamp(), run, view, rect, ui.pixels_per_point()));
    if sheet.key != key {
        sheet.drawing = match editor.in_hand().map(|in_hand| in_hand.closed.as_ref().unwrap_or(&in_hand.drawn)) {
            // Nothing is unrolled before the first side.
            Some(_) if !editor.has_side_in_hand() => LineDrawing::default(),
            Some(sketch) => drawing::line(&sketch.scene(editor.words()), 0, &view),
            None if editor.run().is_some() => drawing::line(&editor.scene(), run, &view),
            None => LineDrawing::default(),
        };
        sheet.painted.renew(ui.ctx(), &sheet.drawing.ink, rect.min);
        sheet.key = key;
    }
    sheet.painted.paint(&pen::inside(ui.painter(), rect));
    let words = editor.words();
    let told = match editor.in_hand() {
        Some(_) if !editor.has_side_in_hand() => {
            let begun = matches!(editor.tool(), Tool::Outline { corners, .. } if !corners.is_empty());
            Some(words.text(if begun { Unroll::SecondCorner } else { Unroll::FirstCorner }))
        }
        None if editor.run().is_none() && shown(editor) == Shown::Line && editor.question().is_none() => {
            Some(words.text(Text::NoLineYet))
        }
        _ => None,
    };
    if let Some(text) = told {
        let ink = colour(editor.theme().palette().ink2);
        ui.painter().text(rect.center(), egui::Align2::CENTER_CENTER, text, theme::regular(13.0), ink);
    }
    let thing_at =
        |at: egui::Pos2| -> Option<Thing> { sheet.drawing.thing_at([at.x - rect.left(), at.y - rect.top()], REACH_PX) };
    // The place of the ground that the line shows at a spot.
    let place_at = |at: egui::Pos2| {
        let along_m = sheet.drawing.along_at(at.x - rect.left())?;
        editor.run()?.1.lay.as_ref()?.place_at(along_m)
    };
    if matches!(editor.tool(), Tool::Try(_)) {
        let place = response.hover_pos().and_then(place_at);
        if let Some(place) = place {
            // What is said has the next frame painted: at rest nothing is.
            if ui.input(|input| input.pointer.delta() != egui::Vec2::ZERO) {
                said.say(Message::Hand(Hand::Move(place)));
            }
            if response.clicked() {
                said.say(Message::Hand(Hand::Click { at: place, reach_m: 0.0 }));
            }
        }
        response.on_hover_cursor(egui::CursorIcon::Crosshair);
        return;
    }
    if slide(&response, editor, &thing_at, &place_at, said) {
        return;
    }
    if let Some(at) = response.hover_pos() {
        said.hovered = said.hovered.or_else(|| thing_at(at));
        if let Some(told) = sheet.drawing.told_at([at.x - rect.left(), at.y - rect.top()]) {
            about::say(&response, words, about::of(told));
        }
    }
    if response.clicked()
        && let Some(at) = response.interact_pointer_pos()
    {
        said.say(pages::clicked(thing_at(at)));
    }
}

/// A fault or a stretch of grass slides along the line, as it does on the map; whether one is in the hand.
fn slide(
    response: &egui::Response,
    editor: &Editor,
    thing_at: &impl Fn(egui::Pos2) -> Option<Thing>,
    place_at: &impl Fn(egui::Pos2) -> Option<plan::Point>,
    said: &mut Said,
) -> bool {
    let slides = |thing: &Thing| matches!(thing, Thing::Fault { .. } | Thing::Zone { .. } | Thing::ZoneEnd { .. });
    let primary = egui::PointerButton::Primary;
    if response.drag_started_by(primary)
        && let Some(from) = response.ctx.input(|input| input.pointer.press_origin())
        && let Some((thing, place)) = thing_at(from).filter(slides).zip(place_at(from))
    {
        said.say(Message::Grab(thing, place));
        said.hovered = Some(thing);
    }
    let grabs = || said.messages.iter().any(|one| matches!(one, Message::Grab(..)));
    let holds = response.dragged_by(primary) || response.drag_stopped();
    if !holds || !(editor.held_from().is_some() || grabs()) {
        return false;
    }
    let moved = response.drag_delta() != egui::Vec2::ZERO;
    if let Some(place) = response.interact_pointer_pos().filter(|_| moved).and_then(place_at) {
        said.say(Message::Drag(place));
    }
    if response.drag_stopped() {
        said.say(Message::Drop);
    }
    said.hovered = editor.picked();
    true
}
