//! All that was found in one list over the foot, the gravest first, each with the page on which it is mended; a click or
//! Enter leads there.

use drawing::Thing;
use egui::{
    Align2, EventFilter, Id, Key, Modifiers, PointerButton, Popup, Response, Role, ScrollArea, Sense, Ui, WidgetInfo,
    pos2, vec2,
};
use words::texts::Found as Text;

use crate::editor::{Editor, Message, page_of_finding};
use crate::said::Said;
use crate::theme::{self, colour};
use crate::{head, icons, kit};

/// Width of the list where there is room, and what it leaves of a small window.
const WIDTH: f32 = 440.0;
const BESIDE: f32 = 32.0;
/// Its height at most, and what it leaves of a low window.
const HIGH: f32 = 420.0;
const ABOVE: f32 = 180.0;
/// Between the edge, the tag, the sentence and the page.
const EDGE: f32 = 8.0;
const TAG: f32 = 28.0;
const PAGE: f32 = 84.0;
/// Over and under a sentence.
const AIR: f32 = 7.0;

fn row_id(thing: Thing) -> Id {
    Id::unique(("found", thing))
}

/// The list, which the button in the foot opens.
pub(crate) fn list(button: &Response, editor: &Editor, said: &mut Said) {
    let by_key = button.clicked() && !button.clicked_by(PointerButton::Primary);
    let window = button.ctx.content_rect();
    Popup::menu(button).show(|ui| {
        ui.set_width(WIDTH.min(window.width() - BESIDE));
        ui.spacing_mut().item_spacing = vec2(8.0, 0.0);
        let (words, p) = (editor.words(), editor.theme().palette());
        egui::Frame::NONE.inner_margin(egui::Margin::symmetric(EDGE as i8, 4)).show(ui, |ui| {
            kit::prose(ui, words.text(Text::How), theme::regular(12.0), colour(p.ink2));
        });
        ui.add_space(4.0);
        let all = editor.findings_by_weight();
        let to = stepped(ui, &all).or_else(|| all.first().map(|one| one.0).filter(|_| by_key));
        if let Some(to) = to {
            ui.memory_mut(|memory| memory.request_focus(row_id(to)));
        }
        ScrollArea::vertical().max_height(HIGH.min(window.height() - ABOVE)).auto_shrink([false, true]).show(
            ui,
            |ui| {
                for &(thing, found) in &all {
                    let response = row(ui, editor, thing, found);
                    if response.hovered() || response.has_focus() {
                        said.hovered = said.hovered.or(Some(thing));
                    }
                    if to == Some(thing) {
                        response.scroll_to_me(None);
                    }
                    if response.clicked() {
                        said.say(Message::Mend(thing));
                        ui.close();
                    }
                }
            },
        );
    });
}

/// The row to which the arrow keys go from the one that has the keyboard.
fn stepped(ui: &Ui, all: &[(Thing, &care::Finding)]) -> Option<Thing> {
    let from = all.iter().position(|&(thing, _)| ui.memory(|memory| memory.has_focus(row_id(thing))))?;
    ui.input_mut(|input| {
        let last = all.len() - 1;
        let mut to = from;
        to += input.count_and_consume_key(Modifiers::NONE, Key::ArrowDown);
        to = to.saturating_sub(input.count_and_consume_key(Modifiers::NONE, Key::ArrowUp)).min(last);
        if input.consume_key(Modifiers::NONE, Key::Home) {
            to = 0;
        }
        if input.consume_key(Modifiers::NONE, Key::End) {
            to = last;
        }
        (to != from).then(|| all[to].0)
    })
}

/// A finding: its tag, its sentence, its page.
fn row(ui: &mut Ui, editor: &Editor, thing: Thing, found: &care::Finding) -> Response {
    let (words, p) = (editor.words(), editor.theme().palette());
    let page = words.text(head::name(page_of_finding(found, thing.run().is_none())));
    let wide = ui.available_width();
    let room = wide - 2.0 * EDGE - TAG - PAGE;
    let sentence = ui.painter().layout(found.message.clone(), theme::regular(13.0), colour(p.ink), room);
    let tall = sentence.size().y.max(icons::TAG.y) + 2.0 * AIR;
    let (rect, _) = ui.allocate_exact_size(vec2(wide, tall), Sense::hover());
    let response = ui.interact(rect, row_id(thing), Sense::click());
    response.widget_info(|| {
        let places = [("finding", &*kit::said_finding(found, words)), ("page", page)];
        WidgetInfo::labeled(Role::MenuItem, true, words.say(Text::OnPage, &places))
    });
    if response.has_focus() {
        let filter = EventFilter { vertical_arrows: true, ..EventFilter::default() };
        ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    }
    if response.hovered() {
        ui.painter().rect_filled(rect, 2.0, theme::thinned(p.rule, 0.18));
    }
    icons::tag(ui.painter(), rect.left_top() + vec2(EDGE, AIR), found.severity, p);
    ui.painter().galley(rect.left_top() + vec2(EDGE + TAG, AIR), sentence, colour(p.ink));
    let at = pos2(rect.right() - EDGE, rect.top() + AIR);
    ui.painter().text(at, Align2::RIGHT_TOP, page, theme::regular(12.0), colour(p.ink2));
    kit::focus_ring(ui, &response, p);
    response.on_hover_cursor(egui::CursorIcon::PointingHand)
}
