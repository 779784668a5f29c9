//! The first start: one question inside the dashed outline of the very run that it will lay, and what is shown
//! next on the map once it is laid.

mod ask;
mod bare;
mod lesson;
mod page;
mod step;

use drawing::Palette;
use egui::{
    Align2, FontId, Id, Painter, Pos2, Rect, Role, Sense, Shape, Stroke, Ui, UiBuilder, Vec2, WidgetInfo, pos2, vec2,
};
use plan::{Point, Rolls};
use words::texts::Rolls as Text;

use crate::asking::Ask;
use crate::editor::{Editor, Message, Page};
use crate::said::Said;
use crate::theme::{self, colour};
use crate::{field, kit};

pub(crate) use bare::bare;
pub(crate) use lesson::lesson;
pub(crate) use page::page;

/// Size of the block with the question, points.
const BLOCK: Vec2 = vec2(410.0, 268.0);
/// Distance of the crosses on bare ground, metres.
const CROSSES_M: f64 = 10.0;

/// Bare ground: a small cross each ten metres, as far as they stand apart enough.
pub(crate) fn crosses(painter: &Painter, editor: &Editor, rect: Rect) {
    let view = editor.view();
    let apart = (CROSSES_M * view.px_per_m) as f32;
    if apart < 40.0 {
        return;
    }
    let ink = Stroke::new(1.0, theme::thinned(editor.theme().palette().rule, 0.5));
    let low = view.place([0.0, rect.height()]);
    let high = view.place([rect.width(), 0.0]);
    let steps = |from: f64, to: f64| ((from / CROSSES_M).ceil() as i64)..=((to / CROSSES_M).floor() as i64);
    for east in steps(low.east_m, high.east_m) {
        for north in steps(low.north_m, high.north_m) {
            let [x, y] = view.spot(Point::new(east as f64 * CROSSES_M, north as f64 * CROSSES_M));
            let at = rect.min + vec2(x, y);
            painter.hline(at.x - 3.0..=at.x + 3.0, at.y, ink);
            painter.vline(at.x, at.y - 3.0..=at.y + 3.0, ink);
        }
    }
}

/// The question, over the whole map; `covered` where another stands over it, whose keys are not for this one.
pub(crate) fn show(ui: &mut Ui, rect: Rect, editor: &Editor, covered: bool, said: &mut Said) {
    let asked = Id::unique("the question was asked");
    let Some(question) = editor.question() else {
        ui.data_mut(|data| data.remove_temp::<bool>(asked));
        return;
    };
    // The first figure is typed at once, unless the keys are yet to take back or do again.
    if !covered && !question.stands_again() && ui.data(|data| data.get_temp::<bool>(asked)).is_none() {
        ui.data_mut(|data| data.insert_temp(asked, true));
        field::next(ui, Some(step::field_named(editor.words(), Text::Rolls)));
    }
    let (words, p, rolls) = (editor.words(), editor.theme().palette(), question.rolls);
    // The map beneath is not to be dragged or picked while it asks.
    // It only keeps the map from the pointer; the keys pass it by.
    let under = ui.interact(rect, Id::unique("under the question"), Sense::CLICK | Sense::DRAG);
    under.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, words.text(words::texts::Window::Map)));
    let painter = ui.painter().with_clip_rect(rect);
    painter.rect_filled(rect, 0.0, colour(p.paper));
    crosses(&painter, editor, rect);
    let middle = pos2(rect.center().x, rect.center().y - 24.0);
    let room = rect.size() - vec2(140.0, 144.0);
    let dashed = outline(rolls, middle, room);
    painter.rect_filled(dashed, 0.0, colour(p.sheet));
    let corners =
        [dashed.left_top(), dashed.right_top(), dashed.right_bottom(), dashed.left_bottom(), dashed.left_top()];
    painter.extend(Shape::dashed_line(&corners, Stroke::new(1.75, colour(p.ink2)), 7.0, 4.0));
    if let Some((long, short)) = rolls.sides() {
        teeth(&painter, dashed, long, short, colour(p.ink2));
        let side = |panels: u32| {
            let length = words.length(f64::from(panels) * rolls.panel_m());
            words.say(Text::SidePanels, &[("length", &length), ("panels", &panels.to_string())])
        };
        let font = theme::medium(12.0);
        let over = pos2(dashed.center().x, dashed.top() - 18.0);
        painter.text(over, Align2::CENTER_CENTER, side(long), font.clone(), colour(p.ink2));
        turned(&painter, pos2(dashed.left() - 20.0, dashed.center().y), &side(short), font, p);
    }
    let block = Rect::from_center_size(middle, BLOCK.min(rect.size() - Vec2::splat(24.0)));
    // Where the outline is smaller than the question, the question stands on a ground of its own.
    let ground = block.expand(14.0);
    if !dashed.contains_rect(ground) {
        painter.rect_filled(ground, 2.0, colour(p.sheet));
    }
    let mut inside = ui.new_child(UiBuilder::new().id_salt("question").max_rect(block));
    inside.spacing_mut().item_spacing = vec2(8.0, 0.0);
    ask::ask(&mut inside, rolls, editor, covered, said);
    let below = dashed.bottom().max(block.bottom().max(inside.min_rect().bottom()) + 14.0) + 22.0;
    let ways = Rect::from_min_max(pos2(block.left(), below), pos2(rect.right() - 8.0, rect.bottom()));
    other_ways(ui, ways, editor, said);
}

/// The run to be, as large as the room allows and at least as large as looks like ground.
fn outline(rolls: Rolls, middle: Pos2, room: Vec2) -> Rect {
    let (long, short) = rolls.sides().map_or((7.0, 6.0), |(long, short)| (long as f32, short as f32));
    let scale = (room.x / long).min(room.y / short);
    Rect::from_center_size(middle, vec2(long, short) * scale)
}

fn teeth(painter: &Painter, rect: Rect, long: u32, short: u32, ink: egui::Color32) {
    let pen = Stroke::new(1.5, ink);
    // More teeth than fit apart would be a grey band.
    if rect.width() / long as f32 >= 4.0 {
        for step in 1..long {
            let x = rect.left() + rect.width() * step as f32 / long as f32;
            painter.vline(x, rect.top() - 9.0..=rect.top() - 3.0, pen);
            painter.vline(x, rect.bottom() + 3.0..=rect.bottom() + 9.0, pen);
        }
    }
    if rect.height() / short as f32 >= 4.0 {
        for step in 1..short {
            let y = rect.top() + rect.height() * step as f32 / short as f32;
            painter.hline(rect.left() - 9.0..=rect.left() - 3.0, y, pen);
            painter.hline(rect.right() + 3.0..=rect.right() + 9.0, y, pen);
        }
    }
}

/// Words turned to be read from the right.
fn turned(painter: &Painter, middle: Pos2, words: &str, font: FontId, p: &Palette) {
    let galley = painter.layout_no_wrap(words.to_owned(), font, colour(p.ink2));
    let at = middle + vec2(-galley.size().y / 2.0, galley.size().x / 2.0);
    let text = egui::epaint::TextShape::new(at, galley, colour(p.ink2)).with_angle(-std::f32::consts::FRAC_PI_2);
    painter.add(text);
}

/// Other ways in, small: beneath the outline of the question, and on the map of an empty plan. Where they stand.
fn other_ways(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) -> Rect {
    let (words, p) = (editor.words(), editor.theme().palette());
    let asked = editor.question().is_some();
    let mut inside = ui.new_child(UiBuilder::new().id_salt("ways").max_rect(rect));
    inside.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(22.0, 6.0);
        if asked && !editor.came_from_example() && kit::link(ui, words.text(Text::BackToPlan), p).clicked() {
            said.say(Message::LeaveQuestion);
        }
        if kit::link(ui, words.text(Text::DrawFirst), p).clicked() {
            begin_empty(asked, said);
            said.say(Message::UseOn(Page::Ground, crate::tool::Tool::outline(crate::tool::Drawn::Paddock)));
        }
        if kit::link(ui, words.text(Text::BringIn), p).clicked() {
            begin_empty(asked, said);
            said.ask(Ask::BringIn);
        }
        if kit::link(ui, words.text(Text::LookRound), p).clicked() {
            // The one that it was asked over is as the keeper left it.
            if editor.came_from_example() {
                said.say(Message::LeaveQuestion);
            } else {
                said.ask(Ask::Example);
            }
        }
    });
    inside.min_rect()
}

/// In place of what the question was asked over begins an empty plan; one that is open already stays.
fn begin_empty(asked: bool, said: &mut Said) {
    if asked {
        said.say(Message::StartEmpty);
    }
}
