//! The head: the mark of the house, the plan's name, undo and redo, and over the page the pages' names.
//!
//! The open page's name stands on a plate with a cut corner that is one piece with the sheet below.

use egui::{Color32, Id, Rect, Role, Sense, Shape, Stroke, Ui, UiBuilder, WidgetInfo, pos2, vec2};
use words::texts::Window as Text;

use crate::editor::{Editor, Message, Page};
use crate::icons::{self, Icon};
use crate::kit;
use crate::said::Said;
use crate::theme::{self, colour};

/// Height of the head.
pub(crate) const HEIGHT: f32 = 44.0;

/// The name of a page.
pub(crate) fn name(page: Page) -> Text {
    match page {
        Page::Ground => Text::Ground,
        Page::Run => Text::Run,
        Page::Power => Text::Power,
        Page::Moves => Text::Moves,
        Page::Book => Text::Book,
        Page::Sheet => Text::Sheet,
    }
}

/// Shows the head; the pages' names stand over a page of that width.
pub(crate) fn show(ui: &mut Ui, rect: Rect, page_width: f32, editor: &Editor, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let painter = ui.painter();
    painter.rect_filled(rect, 0.0, colour(p.paper));
    painter.hline(rect.x_range(), rect.bottom() - 0.5, Stroke::new(1.0, colour(p.rule)));
    icons::mark(painter, rect.min + vec2(18.0, 10.0), colour(p.ink));
    let page_left = rect.right() - page_width;
    let buttons = Rect::from_min_size(pos2(page_left - 20.0 - 120.0, rect.top() + 6.0), vec2(120.0, 32.0));
    let room = buttons.left() - rect.left() - 56.0 - 24.0;
    let title = if editor.plan().title.is_empty() { words.text(Text::Untitled) } else { &editor.plan().title };
    let galley = kit::shortened(ui, title, theme::semi_bold(15.0), colour(p.ink), room);
    let at = pos2(rect.left() + 56.0, rect.center().y - galley.size().y / 2.0);
    let place = Rect::from_min_size(at, galley.size());
    ui.painter().galley(at, galley, colour(p.ink));
    ui.interact(place, Id::unique("title"), Sense::hover())
        .widget_info(|| WidgetInfo::labeled(Role::Heading, true, title));
    let mut inside = ui.new_child(UiBuilder::new().id_salt("undo").max_rect(buttons));
    inside.horizontal(|ui| {
        if kit::icon_button(ui, Icon::Undo, words.text(Text::Undo), editor.can_undo(), false, p).clicked() {
            said.say(Message::Undo);
        }
        if kit::icon_button(ui, Icon::Redo, words.text(Text::Redo), editor.can_redo(), false, p).clicked() {
            said.say(Message::Redo);
        }
        if kit::icon_button(ui, Icon::Fit, words.text(Text::Fit), true, false, p).clicked() {
            said.say(Message::Fit);
        }
    });
    let over_page = Rect::from_min_max(pos2(page_left, rect.top()), rect.max);
    pages(ui, over_page, editor, said);
}

fn pages(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let margin = if rect.width() > 320.0 { 24.0 } else { 16.0 };
    // The plate reaches 12 beyond its name on either side, so the first name stands on the page's margin.
    let step = (rect.width() - 2.0 * margin + 24.0) / Page::ALL.len() as f32;
    for (index, page) in Page::ALL.into_iter().enumerate() {
        let label = words.text(name(page));
        let open = editor.page() == page;
        let font = if open { theme::semi_bold(13.0) } else { theme::regular(13.0) };
        let left = rect.left() + margin - 12.0 + step * index as f32;
        let galley = ui.painter().layout_no_wrap(label.to_owned(), font, colour(if open { p.ink } else { p.ink2 }));
        let plate =
            Rect::from_min_max(pos2(left, rect.top() + 8.0), pos2(left + galley.size().x + 24.0, rect.bottom()));
        let response = ui.interact(plate, Id::unique(("page", index)), Sense::click());
        response.widget_info(|| WidgetInfo::selected(Role::Tab, true, open, label));
        let painter = ui.painter();
        let middle = pos2(plate.center().x, rect.top() + 26.0);
        if open {
            let cut = 7.0;
            let edge = icons::cut_plate(plate, cut);
            painter.add(Shape::convex_polygon(edge.clone(), colour(p.sheet), Stroke::NONE));
            // No line below: the plate is one piece with the sheet.
            let sides = vec![edge[4], edge[0], edge[1], edge[2], edge[3]];
            painter.add(Shape::line(sides, Stroke::new(1.0, colour(p.rule))));
            let fold = vec![edge[1], pos2(edge[1].x, edge[2].y), edge[2]];
            painter.add(Shape::line(fold, Stroke::new(1.0, colour(p.rule))));
            painter.hline(
                plate.left() + 0.5..=plate.right() - 0.5,
                rect.bottom() - 0.5,
                Stroke::new(1.5, colour(p.sheet)),
            );
            let word = Rect::from_center_size(middle, galley.size());
            painter.hline(word.x_range(), middle.y + 11.0, Stroke::new(2.0, colour(p.ink)));
        } else if response.hovered() {
            let word = Rect::from_center_size(middle, galley.size());
            painter.hline(word.x_range(), middle.y + 11.0, Stroke::new(1.0, colour(p.ink2)));
        }
        painter.galley(middle - galley.size() / 2.0, galley, Color32::PLACEHOLDER);
        kit::focus_ring(ui, &response, p);
        if response.on_hover_cursor(egui::CursorIcon::PointingHand).clicked() {
            said.say(Message::Open(page));
        }
    }
}
