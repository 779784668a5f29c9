//! The rows in sight: walked by the arrow keys, picked by a click, hidden and locked by their switches.

use drawing::Thing;
use egui::{
    Align2, EventFilter, Key, Modifiers, Rangef, Rect, Response, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui,
    UiBuilder, WidgetInfo, pos2, vec2,
};
use words::texts::Many as Text;

use super::layout::{ListSheet, ROW, RowWords, is_tall, reach};
use super::picked::{PICKED, name_field};
use super::{Walk, kept, row_id};
use crate::editor::hiding::{self, Switches};
use crate::editor::{Editor, ManyMessage, Message};
use crate::icons::{self, Icon};
use crate::kit;
use crate::pages;
use crate::roster::{self, Entry, Item};
use crate::said::Said;
use crate::theme::{self, colour};

/// Width of a row's switch.
const SWITCH: f32 = 24.0;

/// What is done with the row to which the keys walk.
#[derive(Clone, Copy)]
enum Walks {
    /// It is picked in place of what was.
    Picks,
    /// It is picked too; back on one that is, the one that was left is let go.
    PicksToo,
    /// Nothing.
    Past,
}

/// Where the keys take the row from, of so many rows, and how; `None` where no key was pressed.
fn stepped(ui: &Ui, from: usize, page: usize, last: usize) -> Option<(usize, Walks)> {
    // With Shift and Ctrl first: without, the same keys would be taken.
    let ways =
        [(Modifiers::COMMAND, Walks::Past), (Modifiers::SHIFT, Walks::PicksToo), (Modifiers::NONE, Walks::Picks)];
    ways.into_iter().find_map(|(modifiers, walks)| {
        ui.input_mut(|input| {
            let mut to = from;
            for (key, by) in [
                (Key::ArrowDown, 1),
                (Key::ArrowUp, -1),
                (Key::PageDown, page.cast_signed()),
                (Key::PageUp, -(page.cast_signed())),
            ] {
                let times = input.count_and_consume_key(modifiers, key).cast_signed();
                to = to.saturating_add_signed(by.saturating_mul(times));
            }
            if input.consume_key(modifiers, Key::Home) {
                to = 0;
            }
            if input.consume_key(modifiers, Key::End) {
                to = last;
            }
            let to = to.min(last);
            (to != from).then_some((to, walks))
        })
    })
}

/// Says what is picked by walking over rows, from the first of them to the last.
fn walked(editor: &Editor, way: &[Item], walks: Walks, said: &mut Said) {
    let [_, .., to] = *way else { return };
    match walks {
        Walks::Past => {}
        Walks::Picks => {
            if let Some(thing) = roster::picks(to) {
                said.say(Message::Pick(Some(thing)));
            }
        }
        Walks::PicksToo => {
            // A net picks its run, and is none itself.
            let own = |item: Item| roster::picks(item).filter(|&thing| Item::of(thing) == item);
            let chosen = editor.chosen();
            let all: Vec<Thing> = way.iter().filter_map(|&item| own(item)).collect();
            // Back over rows that are picked lets go of them.
            let also: Vec<Thing> = match &*all {
                [left @ .., _] if !left.is_empty() && all.iter().all(|one| chosen.contains(one)) => left.to_vec(),
                all => all.iter().copied().filter(|one| !chosen.contains(one)).collect(),
            };
            said.messages.extend(also.into_iter().map(|thing| Message::Many(ManyMessage::Also(thing))));
        }
    }
}

/// The rows in sight.
pub(super) fn rows(
    ui: &mut Ui,
    place: Rect,
    editor: &Editor,
    sheet: &ListSheet,
    walk: &mut Walk,
    from_field: bool,
    said: &mut Said,
) {
    let (entries, tops) = (&sheet.entries[..], &sheet.tops[..]);
    let last = entries.len() - 1;
    let is_row = |index: usize| !matches!(entries[index].item, Item::Head(_));
    let at = walk.at.and_then(|item| entries.iter().position(|entry| entry.item == item));
    let focused = at.filter(|&index| ui.memory(|memory| memory.has_focus(row_id(entries[index].item))));
    // Opened anew, the keyboard is on what is picked, else on the first.
    let picked = || {
        let here = editor.picked()?;
        entries.iter().position(|entry| entry.item == Item::of(here))
    };
    let first = || (0..=last).find(|&index| is_row(index));
    let mut walks = Walks::Picks;
    let to = if !walk.open {
        picked().or_else(first)
    } else if from_field {
        first()
    } else {
        focused.and_then(|from| stepped(ui, from, sheet.page(from, place.height()), last)).map(|(to, how)| {
            walks = how;
            // Heads are passed by, in the way of the step.
            let ahead = (to..=last).find(|&index| is_row(index));
            let back = (0..=to).rev().find(|&index| is_row(index));
            if focused.is_some_and(|from| to < from) { back.or(ahead) } else { ahead.or(back) }.unwrap_or(to)
        })
    };
    let mut area = ScrollArea::vertical().id_salt("everything").auto_shrink(false);
    if let Some(to) = to {
        let item = entries[to].item;
        ui.memory_mut(|memory| memory.request_focus(row_id(item)));
        if walk.open {
            let from = focused.unwrap_or(to);
            let mut way: Vec<Item> = entries[from.min(to)..=from.max(to)].iter().map(|entry| entry.item).collect();
            if to < from {
                way.reverse();
            }
            // From the field the first row is come to, not walked to.
            if focused.is_none() {
                way.push(item);
            }
            walked(editor, &way, walks, said);
        }
        walk.at = Some(item);
    }
    // A foot that grew takes no row out of sight that was just picked; the area knows its new height a frame later.
    let grew = walk.open && place.height() < walk.high;
    let keeps = std::mem::replace(&mut walk.keeps, grew);
    walk.high = place.height();
    if grew {
        ui.ctx().request_repaint();
    }
    let kept = || at.filter(|&index| tops[index] < walk.offset + place.height() + PICKED);
    if let Some(to) = to.or_else(|| kept().filter(|_| keeps)) {
        let (top, foot) = (tops[to], tops[to + 1] - place.height());
        let kept_in_sight = walk.offset.clamp(foot.max(0.0), top.max(foot.max(0.0)));
        // The head over a group's first row comes in sight with it.
        let head = if to > 0 && !is_row(to - 1) { (top - ROW).min(kept_in_sight) } else { kept_in_sight };
        area = area.vertical_scroll_offset(head.max(0.0));
    }
    let mut inside = ui.new_child(UiBuilder::new().id_salt("rows").max_rect(place));
    inside.spacing_mut().item_spacing = vec2(0.0, 0.0);
    let output = area.show_viewport(&mut inside, |ui, sight| {
        ui.set_height(tops[entries.len()]);
        let all = ui.max_rect();
        let seen = sheet.at(sight.min.y)..=sheet.at(sight.max.y);
        // The row that has the keyboard keeps it while it is out of sight.
        let walked = to.or(focused).filter(|index| !seen.contains(index));
        for index in seen.chain(walked) {
            let rows = Rangef::new(all.top() + tops[index], all.top() + tops[index + 1]);
            let tall = is_tall(entries[index].item, sheet.narrow);
            row(ui, Rect::from_x_y_ranges(all.x_range(), rows), editor, (entries[index], tall), walk, said);
        }
    });
    walk.offset = output.state.clamped_offset().y;
}

fn row(ui: &mut Ui, rect: Rect, editor: &Editor, (entry, tall): (Entry, bool), walk: &mut Walk, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let name = roster::name(editor, entry.item);
    let reach = reach(entry, rect.width());
    let left = rect.left() + reach.min;
    if matches!(entry.item, Item::Head(_)) {
        let response = ui.interact(rect, row_id(entry.item), Sense::hover());
        response.widget_info(|| WidgetInfo::labeled(Role::Heading, true, &name));
        let at = pos2(left, rect.bottom() - 6.0);
        ui.painter().text(at, Align2::LEFT_BOTTOM, &name, theme::semi_bold(12.0), colour(p.ink2));
        ui.painter().hline(rect.x_range().shrink(8.0), rect.bottom() - 0.5, Stroke::new(1.0, colour(p.rule)));
        return;
    }
    let figures = roster::figures(editor, entry.item);
    let thing = roster::picks(entry.item);
    // A net picks its run, and is none itself.
    let is_picked = thing.is_some_and(|thing| Item::of(thing) == entry.item && editor.chosen().contains(&thing));
    // The switches of a whole stand at the right of its row.
    let switches = match entry.item {
        Item::Thing(thing) if entry.level == 1 && thing.whole() == thing => {
            hiding::switches(editor.plan(), thing).map(|switches| (thing, switches))
        }
        _ => None,
    };
    let full = roster::full_name(editor, entry.item);
    let taken = if switches.is_some() { 8.0 + 2.0 * SWITCH } else { 4.0 };
    let pick_rect = Rect::from_min_max(rect.min, pos2(rect.right() - taken, rect.bottom()));
    let id = row_id(entry.item);
    let response = ui.interact(pick_rect, id, Sense::click());
    response.widget_info(|| {
        let label = if figures.is_empty() {
            full.clone()
        } else {
            words.say(Text::Figures, &[("thing", &full), ("figures", &figures)])
        };
        WidgetInfo::selected(Role::Row, true, is_picked, label)
    });
    let painter = ui.painter();
    if is_picked {
        painter.rect_filled(rect, 0.0, colour(p.picked_row));
    }
    let hovered = thing.is_some() && (response.hovered() || editor.hovered() == thing) && !is_picked;
    if hovered {
        painter.rect_stroke(rect.shrink(0.75), 0.0, Stroke::new(1.5, colour(p.ink)), StrokeKind::Inside);
    }
    painter.hline(rect.x_range().shrink(8.0), rect.bottom() - 0.5, Stroke::new(1.0, colour(p.hairline)));
    let hidden = switches.is_some_and(|(_, switches)| switches.hidden);
    let ink = colour(if hidden { p.ink2 } else { p.ink });
    let inks = [ink, colour(p.ink2)];
    let cells = Rect::from_x_y_ranges(Rangef::new(left, rect.left() + reach.max), rect.y_range());
    // The switches stand beside the name alone.
    let top = if switches.is_some() { pick_rect.right() - 4.0 - left } else { cells.width() };
    let room = [top, if tall { cells.width() } else { top }];
    let laid = RowWords::new(ui, entry, tall, [&name, &figures], inks, room);
    let whole = laid.is_whole();
    laid.paint(ui, Rect::from_min_max(cells.min, pos2(left + room[1], cells.max.y)), inks);
    kit::focus_ring(ui, &response, p);
    if let Some((thing, switches)) = switches {
        row_switches(ui, rect, editor, thing, switches, &full, said);
    }
    let taken = keys(ui, &response, editor, entry.item, thing, said);
    if response.hovered() {
        said.hovered = said.hovered.or(thing);
    }
    if response.has_focus() {
        walk.at = Some(entry.item);
    }
    // Enter, which opened its page, and Space are clicks to egui.
    if response.clicked()
        && !taken
        && let Some(thing) = thing
    {
        response.request_focus();
        let also = ui.input(|input| input.modifiers.shift || input.modifiers.command);
        said.say(if also { Message::Many(ManyMessage::Also(thing)) } else { Message::Pick(Some(thing)) });
    }
    let response = response.on_hover_cursor(egui::CursorIcon::PointingHand);
    if !whole {
        kit::explain(ui, &response, &full);
    }
}

/// The keys of the row that has the keyboard; whether Enter opened its page or Space picked it too: egui's own Enter and
/// Space would pick it alone.
fn keys(ui: &Ui, response: &Response, editor: &Editor, item: Item, thing: Option<Thing>, said: &mut Said) -> bool {
    if !response.has_focus() {
        return false;
    }
    let filter = EventFilter { vertical_arrows: true, horizontal_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    let Some(thing) = thing else { return false };
    let (enter, space, names) = ui.input_mut(|input| {
        (
            input.consume_key(Modifiers::NONE, Key::Enter),
            input.consume_key(Modifiers::COMMAND, Key::Space) || input.consume_key(Modifiers::NONE, Key::Space),
            input.consume_key(Modifiers::NONE, Key::F2),
        )
    });
    if space {
        said.say(Message::Many(ManyMessage::Also(thing)));
    }
    if enter {
        said.say(Message::Open(editor.page_about(thing)));
        said.say(pages::clicked(Some(thing)));
    }
    if names {
        let named = if let Item::Thing(thing) = item { name_field(thing) } else { None };
        match named {
            Some(field) => ui.memory_mut(|memory| memory.request_focus(field)),
            // The row keeps the keys: what is typed for a name would be keys of the window.
            None => said.say(Message::Many(ManyMessage::NoName)),
        }
    }
    enter || space
}

fn row_switches(
    ui: &mut Ui,
    rect: Rect,
    editor: &Editor,
    thing: Thing,
    switches: Switches,
    name: &str,
    said: &mut Said,
) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let places = [("thing", name)];
    let hide = if switches.hidden { Text::ShowIt } else { Text::HideIt };
    let lock = if switches.locked { Text::UnlockIt } else { Text::LockIt };
    for (number, on, icon, text, message) in [
        (
            0,
            switches.hidden,
            if switches.hidden { Icon::Shut } else { Icon::Eye },
            hide,
            ManyMessage::Hide(thing, !switches.hidden),
        ),
        (
            1,
            switches.locked,
            if switches.locked { Icon::Locked } else { Icon::Unlocked },
            lock,
            ManyMessage::Lock(thing, !switches.locked),
        ),
    ] {
        let left = rect.right() - 8.0 - SWITCH * (2.0 - number as f32);
        let place = Rect::from_min_size(pos2(left, rect.top() + 1.0), vec2(SWITCH, ROW - 2.0));
        let response = ui.interact(place, kept().with(("switch", thing, number)), Sense::click());
        let label = words.say(text, &places);
        response.widget_info(|| WidgetInfo::selected(Role::Switch, true, on, &label));
        if response.hovered() {
            ui.painter().rect_filled(place.shrink(1.0), theme::RADIUS, theme::thinned(p.rule, 0.18));
        }
        let ink = if on { colour(p.ink) } else { theme::thinned(p.ink2, 0.75) };
        icons::icon(ui.painter(), Rect::from_center_size(place.center(), egui::Vec2::splat(16.0)), icon, ink);
        kit::focus_ring(ui, &response, p);
        let response = response.on_hover_text(&label);
        if response.clicked() {
            // The keyboard goes on from the row.
            ui.memory_mut(|memory| memory.request_focus(row_id(Item::Thing(thing))));
            said.say(Message::Many(message));
        }
    }
}
