//! The list of everything on the map, in the page's place: found by typing, walked by the arrow keys, and the way in for
//! a screen reader. A row picks its thing; what is picked is named and its figures are typed below.
//!
//! Only the rows in sight are made. Which row has the keyboard lives in egui's memory.

use drawing::{Palette, Thing};
use egui::{
    Align2, EventFilter, Id, Key, Modifiers, Rect, Response, Role, ScrollArea, Sense, Stroke, StrokeKind, TextEdit, Ui,
    UiBuilder, WidgetInfo, pos2, vec2,
};
use plan::{Edit, Point, Shape};
use words::texts::Many as Text;
use words::{Measure, Range, Words};

use super::{Desk, ground};
use crate::editor::hiding::{self, Switches};
use crate::editor::{Editor, ManyMessage, Message};
use crate::field::{self, Label, Shown};
use crate::icons::{self, Icon};
use crate::kit;
use crate::roster::{self, Entry, Item};
use crate::said::Said;
use crate::theme::{self, colour};

/// Height of a row.
const ROW: f32 = 26.0;
/// How much deeper each level stands.
const STEP: f32 = 14.0;
/// Width of a row's switch.
const SWITCH: f32 = 24.0;
/// Height of what can be said of what is picked.
const PICKED: f32 = 168.0;
/// How far a corner may be typed to, metres.
const FARTHEST_M: f64 = 100_000.0;

/// The entries, and what they were made from.
#[derive(Default)]
pub(crate) struct ListSheet {
    key: Option<(u64, Option<Thing>, String, Words)>,
    entries: Vec<Entry>,
}

/// Which row has the keyboard, where the list stands, and what is typed to find.
#[derive(Clone, Default)]
struct Walk {
    at: Option<Item>,
    offset: f32,
    filter: String,
    /// Whether it was open in the frame before.
    open: bool,
}

fn kept() -> Id {
    Id::unique("list of everything on the map")
}

fn row_id(item: Item) -> Id {
    Id::unique(("listed", item))
}

/// Whether a row has the keyboard: then arrows walk the list and do not move what is picked.
pub(crate) fn is_walked(ui: &Ui) -> bool {
    let at = ui.data(|data| data.get_temp::<Walk>(kept())).filter(|walk| walk.open).and_then(|walk| walk.at);
    at.is_some_and(|item| ui.memory(|memory| memory.has_focus(row_id(item))))
}

/// The list is closed: where it stood is forgotten.
pub(crate) fn closed(ui: &Ui) {
    ui.data_mut(|data| data.remove_temp::<Walk>(kept()));
}

/// Shows the list.
pub(crate) fn show(ui: &mut Ui, rect: Rect, editor: &Editor, sheet: &mut ListSheet, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    ui.painter().rect_filled(rect, 0.0, colour(p.sheet));
    ui.painter().vline(rect.left() + 0.5, rect.y_range(), Stroke::new(1.0, colour(p.rule)));
    let margin = if rect.width() < super::WIDTH { 16.0 } else { 24.0 };
    let mut walk = ui.data(|data| data.get_temp::<Walk>(kept())).unwrap_or_default();
    sheet.renew(editor, &walk.filter);
    let inside = rect.shrink2(vec2(margin, 0.0));
    // The foot stays where nothing is picked, so that no row is pushed out of sight by being picked.
    let foot = PICKED;
    let mut upper = ui.new_child(UiBuilder::new().id_salt("everything").max_rect(inside));
    upper.add_space(22.0);
    let things = sheet.entries.iter().filter(|entry| !matches!(entry.item, Item::Head(_))).count();
    let count = words.say(Text::Count, &[("count", &words.number(things as f64, 0))]);
    head(&mut upper, editor, &count, p, said);
    upper.add_space(10.0);
    let moved = find(&mut upper, words, &mut walk, p);
    upper.add_space(8.0);
    let top = upper.cursor().top();
    let place = Rect::from_min_max(pos2(inside.left() - 8.0, top), pos2(inside.right() + 8.0, rect.bottom() - foot));
    if sheet.entries.is_empty() {
        let nothing = if walk.filter.is_empty() { Text::NothingYet } else { Text::NothingFound };
        kit::prose(&mut upper, words.text(nothing), theme::regular(13.0), colour(p.ink2));
    } else {
        rows(ui, place, editor, &sheet.entries, &mut walk, moved, said);
    }
    let below = Rect::from_min_max(pos2(rect.left() + 1.0, rect.bottom() - foot), rect.max);
    ui.painter().hline(inside.x_range(), below.top() + 0.5, Stroke::new(1.0, colour(p.rule)));
    picked(ui, below.shrink2(vec2(margin, 0.0)), editor, said);
    walk.open = true;
    ui.data_mut(|data| data.insert_temp(kept(), walk));
}

impl ListSheet {
    fn renew(&mut self, editor: &Editor, filter: &str) {
        let key = (editor.stamp(), editor.picked(), filter.to_owned(), editor.words());
        if self.key.as_ref() == Some(&key) {
            return;
        }
        self.entries = roster::entries(editor, !filter.is_empty());
        let asked: Vec<String> = filter.to_lowercase().split_whitespace().map(str::to_owned).collect();
        if !asked.is_empty() {
            self.entries.retain(|entry| {
                let text = format!("{} {}", roster::full_name(editor, entry.item), roster::figures(editor, entry.item));
                let text = text.to_lowercase();
                !matches!(entry.item, Item::Head(_)) && asked.iter().all(|word| text.contains(word))
            });
        }
        self.key = Some(key);
    }
}

/// The title, how many there are, and the way out.
fn head(ui: &mut Ui, editor: &Editor, count: &str, p: &Palette, said: &mut Said) {
    let words = editor.words();
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 28.0), Sense::hover());
    let button = Rect::from_min_size(pos2(rect.right() - 32.0, rect.top() - 2.0), vec2(32.0, 32.0));
    let mut inside = ui.new_child(UiBuilder::new().id_salt("close").max_rect(button));
    if kit::icon_button(&mut inside, Icon::TakeOut, words.text(Text::Close), true, false, p).clicked() {
        said.say(Message::Many(ManyMessage::List(false)));
    }
    let title = words.text(Text::Everything);
    let count = ui.painter().layout_no_wrap(count.to_owned(), theme::regular(12.0), colour(p.ink2));
    let room = button.left() - rect.left() - count.size().x - 16.0;
    let galley = kit::shortened(ui, title, theme::semi_bold(16.0), colour(p.ink), room);
    let place = Rect::from_min_size(rect.left_center() - vec2(0.0, galley.size().y / 2.0), galley.size());
    ui.interact(place, kept().with("title"), Sense::hover())
        .widget_info(|| WidgetInfo::labeled(Role::Heading, true, title));
    ui.painter().galley(place.min, galley, colour(p.ink));
    let at = pos2(button.left() - 6.0 - count.size().x, rect.center().y - count.size().y / 2.0);
    ui.painter().galley(at, count, colour(p.ink2));
}

/// The field to find by; whether the keyboard goes from it to the first row.
fn find(ui: &mut Ui, words: Words, walk: &mut Walk, p: &Palette) -> bool {
    let id = kept().with("filter");
    let has_focus = ui.memory(|memory| memory.has_focus(id));
    let down = has_focus && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::ArrowDown));
    if ui.input_mut(|input| input.consume_key(Modifiers::COMMAND, Key::F)) {
        ui.memory_mut(|memory| memory.request_focus(id));
    }
    let field = TextEdit::singleline(&mut walk.filter)
        .id(id)
        .font(theme::regular(13.0))
        .desired_width(f32::INFINITY)
        .hint_text(words.text(Text::FilterHint))
        .margin(vec2(8.0, 5.0));
    let response = ui.add(field);
    response.widget_info(|| WidgetInfo::labeled(Role::SearchInput, true, words.text(Text::Filter)));
    kit::focus_ring(ui, &response, p);
    if response.changed() {
        walk.offset = 0.0;
    }
    down
}

/// Where the keys take the row from, of so many rows; `None` where no key was pressed.
fn stepped(ui: &Ui, from: usize, page: usize, last: usize) -> Option<usize> {
    ui.input_mut(|input| {
        let mut to = from;
        for (key, by) in [
            (Key::ArrowDown, 1),
            (Key::ArrowUp, -1),
            (Key::PageDown, page.cast_signed()),
            (Key::PageUp, -(page.cast_signed())),
        ] {
            let times = input.count_and_consume_key(Modifiers::NONE, key).cast_signed();
            to = to.saturating_add_signed(by.saturating_mul(times));
        }
        if input.consume_key(Modifiers::NONE, Key::Home) {
            to = 0;
        }
        if input.consume_key(Modifiers::NONE, Key::End) {
            to = last;
        }
        (to != from).then_some(to.min(last))
    })
}

/// The rows in sight.
fn rows(
    ui: &mut Ui,
    place: Rect,
    editor: &Editor,
    entries: &[Entry],
    walk: &mut Walk,
    from_field: bool,
    said: &mut Said,
) {
    let last = entries.len() - 1;
    let is_row = |index: usize| !matches!(entries[index].item, Item::Head(_));
    let at = walk.at.and_then(|item| entries.iter().position(|entry| entry.item == item));
    let focused = at.filter(|&index| ui.memory(|memory| memory.has_focus(row_id(entries[index].item))));
    let page = (place.height() / ROW) as usize;
    // Opened anew, the keyboard is on what is picked, else on the first.
    let picked = || {
        let here = editor.picked()?;
        entries.iter().position(|entry| entry.item == Item::Thing(here))
    };
    let first = || (0..=last).find(|&index| is_row(index));
    let to = if !walk.open {
        picked().or_else(first)
    } else if from_field {
        first()
    } else {
        focused.and_then(|from| stepped(ui, from, page.max(2) - 1, last)).map(|to| {
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
        if walk.open
            && let Some(thing) = roster::picks(editor, item)
        {
            said.say(Message::Pick(Some(thing)));
        }
        walk.at = Some(item);
        let (top, foot) = (to as f32 * ROW, (to + 1) as f32 * ROW - place.height());
        let kept_in_sight = walk.offset.clamp((foot).max(0.0), top.max(foot.max(0.0)));
        // The head over a group's first row comes in sight with it.
        let head = if to > 0 && !is_row(to - 1) { (top - ROW).min(kept_in_sight) } else { kept_in_sight };
        area = area.vertical_scroll_offset(head.max(0.0));
    }
    let mut inside = ui.new_child(UiBuilder::new().id_salt("rows").max_rect(place));
    inside.spacing_mut().item_spacing = vec2(0.0, 0.0);
    let output = area.show_rows(&mut inside, ROW, entries.len(), |ui, range| {
        for entry in &entries[range] {
            row(ui, editor, *entry, walk, said);
        }
    });
    walk.offset = output.state.clamped_offset().y;
}

fn row(ui: &mut Ui, editor: &Editor, entry: Entry, walk: &mut Walk, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::hover());
    let name = roster::name(editor, entry.item);
    let left = rect.left() + 8.0 + STEP * f32::from(entry.level.saturating_sub(1));
    let y = rect.center().y;
    if matches!(entry.item, Item::Head(_)) {
        let response = ui.interact(rect, row_id(entry.item), Sense::hover());
        response.widget_info(|| WidgetInfo::labeled(Role::Heading, true, &name));
        let at = pos2(left, rect.bottom() - 6.0);
        ui.painter().text(at, Align2::LEFT_BOTTOM, &name, theme::semi_bold(12.0), colour(p.ink2));
        ui.painter().hline(rect.x_range().shrink(8.0), rect.bottom() - 0.5, Stroke::new(1.0, colour(p.rule)));
        return;
    }
    let figures = roster::figures(editor, entry.item);
    let thing = roster::picks(editor, entry.item);
    let is_picked = matches!(entry.item, Item::Thing(thing) if editor.chosen().contains(&thing));
    // The switches of a whole stand at the right of its row.
    let switches = match entry.item {
        Item::Thing(thing @ (Thing::Run { .. } | Thing::KeepOut { .. } | Thing::Hazard { .. })) => {
            hiding::switches(editor.plan(), thing).map(|switches| (thing, switches))
        }
        _ => None,
    };
    let full = roster::full_name(editor, entry.item);
    let pick_rect = Rect::from_min_max(rect.min, pos2(rect.right() - 8.0 - 2.0 * SWITCH, rect.bottom()));
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
    let font = if entry.level == 1 { theme::medium(13.0) } else { theme::regular(13.0) };
    let right = pick_rect.right() - 4.0;
    let wide = right - left;
    let figures = kit::shortened(ui, &figures, theme::regular(12.0), colour(p.ink2), wide * 0.62);
    let name = kit::shortened(ui, &name, font, ink, wide - figures.size().x - 10.0);
    ui.painter().galley(pos2(right - figures.size().x, y - figures.size().y / 2.0), figures, colour(p.ink2));
    ui.painter().galley(pos2(left, y - name.size().y / 2.0), name, ink);
    kit::focus_ring(ui, &response, p);
    if let Some((thing, switches)) = switches {
        row_switches(ui, rect, editor, thing, switches, &full, said);
    }
    keys(ui, &response, editor, entry.item, thing, said);
    if response.hovered() {
        said.hovered = said.hovered.or(thing);
    }
    if response.has_focus() {
        walk.at = Some(entry.item);
    }
    if response.clicked()
        && let Some(thing) = thing
    {
        response.request_focus();
        let also = ui.input(|input| input.modifiers.shift || input.modifiers.command);
        said.say(if also { Message::Many(ManyMessage::Also(thing)) } else { Message::Pick(Some(thing)) });
    }
    response.on_hover_cursor(egui::CursorIcon::PointingHand);
}

/// The keys of the row that has the keyboard. Enter opens its page; egui's own Enter and Space would only pick.
fn keys(ui: &Ui, response: &Response, editor: &Editor, item: Item, thing: Option<Thing>, said: &mut Said) {
    if !response.has_focus() {
        return;
    }
    let filter = EventFilter { vertical_arrows: true, horizontal_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    let Some(thing) = thing else { return };
    let (enter, space, names) = ui.input_mut(|input| {
        (
            input.consume_key(Modifiers::NONE, Key::Enter),
            input.consume_key(Modifiers::SHIFT, Key::Space),
            input.consume_key(Modifiers::NONE, Key::F2),
        )
    });
    if space {
        said.say(Message::Many(ManyMessage::Also(thing)));
    }
    if enter {
        said.say(Message::Open(editor.page_about(thing)));
        said.say(Message::Pick(Some(thing)));
    }
    if names && let Item::Thing(thing) = item {
        ui.memory_mut(|memory| memory.request_focus(name_id(thing)));
    }
}

/// The field in which a thing is named.
fn name_id(thing: Thing) -> Id {
    match thing {
        Thing::KeepOut { keep_out } => Id::unique(("keep-out fields", keep_out)).with("name"),
        Thing::Hazard { hazard } => Id::unique(("hazard fields", hazard)).with("name"),
        thing => kept().with(("name", thing)),
    }
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
        let place = Rect::from_min_size(pos2(left, rect.top()), vec2(SWITCH, ROW));
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

/// What is picked: its name and its figures, to be typed.
fn picked(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let mut inside = ui.new_child(UiBuilder::new().id_salt("picked in the list").max_rect(rect));
    let mut desk = Desk { editor, said, words, p, sections: Vec::new() };
    let Some(thing) = editor.picked() else {
        inside.add_space(10.0);
        kit::prose(&mut inside, words.text(Text::Keys), theme::regular(11.0), colour(p.ink2));
        return;
    };
    ScrollArea::vertical().id_salt(("picked", thing)).auto_shrink(false).show(&mut inside, |ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 0.0);
        ui.add_space(10.0);
        let full = roster::full_name(editor, Item::Thing(thing));
        let figures = roster::figures(editor, Item::Thing(thing));
        kit::prose(ui, &full, theme::semi_bold(13.0), colour(p.ink));
        if !figures.is_empty() {
            kit::prose(ui, &figures, theme::regular(12.0), colour(p.ink2));
        }
        ui.add_space(6.0);
        fields(ui, &mut desk, thing, &full);
        ui.add_space(6.0);
        kit::prose(ui, words.text(Text::Keys), theme::regular(11.0), colour(p.ink2));
        ui.add_space(10.0);
    });
}

fn fields(ui: &mut Ui, desk: &mut Desk<'_>, thing: Thing, name: &str) {
    let (words, p, plan) = (desk.words, desk.p, desk.editor.plan());
    if let Some((shape, corner)) = crate::editor::corner_of(plan, thing) {
        let at = plan.outline(&shape).and_then(|outline| outline.get(corner)).copied();
        if let Some(at) = at {
            coordinates(ui, desk, &shape, corner, at, name);
        }
        return;
    }
    match thing {
        Thing::Run { run } => {
            let Some(stated) = plan.runs.get(run) else { return };
            let said = words.say(Text::NameOf, &[("thing", name)]);
            let label = Label { shown: words.text(Text::Name), said: &said };
            let read = |text: &str| Ok::<_, String>(text.to_owned());
            if let Some(name) = field::text(ui, p, name_id(thing), label, &stated.name, read) {
                desk.said.say(Message::Many(ManyMessage::Rename(thing, name)));
            }
        }
        Thing::KeepOut { keep_out } => {
            let Some(stated) = plan.ground.keep_outs.get(keep_out) else { return };
            ground::fields::keep_out(ui, desk, keep_out, stated, name);
        }
        Thing::Hazard { hazard } => {
            let Some(stated) = plan.ground.hazards.get(hazard) else { return };
            ground::fields::hazard(ui, desk, hazard, stated, name);
        }
        Thing::Coop { coop: 0 } => {
            if let Some(coop) = plan.coop.clone() {
                ground::fields::coop(ui, desk, &coop);
            }
        }
        _ => {}
    }
}

/// Where a corner stands, typed.
fn coordinates(ui: &mut Ui, desk: &mut Desk<'_>, shape: &Shape, corner: usize, at: Point, name: &str) {
    let (words, p) = (desk.words, desk.p);
    let range = Range::between(-FARTHEST_M, FARTHEST_M);
    for (east, text, of, value) in
        [(true, Text::East, Text::EastOf, at.east_m), (false, Text::North, Text::NorthOf, at.north_m)]
    {
        let said = words.say(of, &[("thing", name)]);
        let label = Label { shown: words.text(text), said: &said };
        let shown = Shown::of(words, Measure::Length, value, false);
        let id = kept().with(("corner", shape, corner, east));
        if let Some(metres) = field::line(ui, p, id, label, &shown, field::figure(words, Measure::Length, range)) {
            let to = if east { Point::new(metres, at.north_m) } else { Point::new(at.east_m, metres) };
            desk.said.say(Message::Make(Edit::MoveCorner { shape: shape.clone(), corner, to }));
        }
    }
}
