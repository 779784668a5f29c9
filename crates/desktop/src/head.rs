//! The head: the mark of the house, the plan's name and menu, how safe it is, undo and redo, and over the page
//! the pages' names.
//!
//! The open page's name stands on a plate with a cut corner that is one piece with the sheet below.

use std::sync::Arc;

use egui::{
    Align2, Color32, Galley, Id, Rect, Response, Role, Sense, Shape, Stroke, Ui, UiBuilder, WidgetInfo, pos2, vec2,
};
use words::texts::{Commands, Files, Many, Rolls, Window as Text};

use crate::asking::Ask;
use crate::editor::{Editor, ManyMessage, Message, Page, SaveState};
use crate::icons::{self, Icon};
use crate::said::Said;
use crate::theme::{self, colour};
use crate::{finder, kit, menus};

/// Height of the head.
pub(crate) const HEIGHT: f32 = 44.0;
/// How many buttons stand before the one that lists the commands: take back, do again, what was done and fit; and the list
/// of everything, which under the first question is not there where the head is short.
const BUTTONS: f32 = 4.0;
const MIDDLING: f32 = 1000.0;
/// From this width on the way to the commands is in words.
const WORDED: f32 = 1180.0;
/// What a button has round its words: its icon and margins.
const ROUND_WORDS: f32 = 41.0;
const FIND_KEYS: &str = "Ctrl K";
/// Before the plan's name, after it for its chevron, and before what stands beside it.
const BEFORE_TITLE: f32 = 56.0;
const CHEVRON: f32 = 24.0;
const BESIDE_TITLE: f32 = 16.0;
/// The plan's name is cut to this before the way to one's own plan loses its words.
const LEAST_TITLE: f32 = 72.0;
/// How the names of the pages stand, from roomy to tight: from the edges to the first and the last name, how far the open
/// one's plate reaches beyond its name on either side, and the least space between the plate and the name beside it.
const NAMES_ROOMY: [[f32; 3]; 3] = [[24.0, 12.0, 8.0], [24.0, 9.0, 6.0], [16.0, 8.0, 6.0]];
const NAMES_TIGHT: [f32; 3] = [10.0, 7.0, 5.0];

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

/// Shows the head; the pages' names stand over a page of that width. `kept` tells whether the journal is written.
pub(crate) fn show(ui: &mut Ui, rect: Rect, page_width: f32, editor: &Editor, kept: bool, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let painter = ui.painter();
    painter.rect_filled(rect, 0.0, colour(p.paper));
    painter.hline(rect.x_range(), rect.bottom() - 0.5, Stroke::new(1.0, colour(p.rule)));
    icons::mark(painter, rect.min + vec2(18.0, 10.0), colour(p.ink));
    let names = Names::of(ui, page_width, editor);
    let names_left = rect.right() - names.wide;
    // In a short head the buttons stand closer together.
    let gap = if rect.width() < WORDED { 2.0 } else { 8.0 };
    let lists = rect.width() >= MIDDLING || editor.question().is_none();
    let before_find = (BUTTONS + f32::from(u8::from(lists))) * (kit::BUTTON + gap);
    let free = names_left - 16.0 - before_find - rect.left();
    let find = find_width(ui, rect.width(), free, editor, kept);
    let width = before_find + find;
    let buttons = Rect::from_min_size(pos2(names_left - 16.0 - width, rect.top() + 6.0), vec2(width, 32.0));
    let title = title(ui, rect, buttons.left(), editor, kept, said);
    state(ui, title, buttons.left(), editor, kept, said);
    let mut inside = ui.new_child(UiBuilder::new().id_salt("undo").max_rect(buttons));
    inside.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = gap;
        if kit::icon_button(ui, Icon::Undo, words.text(Text::Undo), editor.can_undo(), false, p).clicked() {
            said.say(Message::Undo);
        }
        if kit::icon_button(ui, Icon::Redo, words.text(Text::Redo), editor.can_redo(), false, p).clicked() {
            said.say(Message::Redo);
        }
        menus::history(ui, editor, said);
        if kit::icon_button(ui, Icon::Fit, words.text(Text::Fit), true, false, p).clicked() {
            said.say(Message::Fit);
        }
        if lists {
            let everything = words.text(Many::Everything);
            if kit::icon_button(ui, Icon::List, everything, editor.question().is_none(), false, p).clicked() {
                said.say(Message::Many(ManyMessage::List(!editor.is_listing())));
            }
        }
        self::find(ui, find, editor);
    });
    pages(ui, Rect::from_min_max(pos2(names_left, rect.top()), rect.max), names, editor, said);
}

/// Width of the button that opens the list of commands: its icon alone where the head is short, or where its words would
/// cut the plan's name.
fn find_width(ui: &Ui, wide: f32, free: f32, editor: &Editor, kept: bool) -> f32 {
    let words = editor.words();
    let keys = kit::width(ui, &words.keys(FIND_KEYS), theme::regular(11.0));
    let worded = 28.0 + kit::width(ui, words.text(Commands::Find), theme::regular(13.0)) + keys + 22.0;
    let title = BEFORE_TITLE + kit::width(ui, &menus::name_of(editor), theme::semi_bold(15.0)) + CHEVRON;
    let fits = title + BESIDE_TITLE + beside_title(ui, editor, kept) + worded <= free;
    if wide >= WORDED && fits { worded } else { 32.0 }
}

/// Width of what stands beside the plan's name: how safe it is, or the way to one's own plan.
fn beside_title(ui: &Ui, editor: &Editor, kept: bool) -> f32 {
    if starts(editor) {
        own_width(ui, editor)
    } else {
        kit::width(ui, editor.words().text(state_of(editor, kept)), theme::regular(12.0)) + 8.0
    }
}

/// Whether the way to the keeper's own plan stands in the head.
fn starts(editor: &Editor) -> bool {
    editor.is_example() && editor.question().is_none()
}

/// Width of the way to one's own plan, in words.
fn own_width(ui: &Ui, editor: &Editor) -> f32 {
    kit::width(ui, editor.words().text(Rolls::StartOwn), theme::medium(13.0)) + ROUND_WORDS
}

/// The button that opens the list of commands.
fn find(ui: &mut Ui, wide: f32, editor: &Editor) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let label = words.text(Commands::Find);
    if wide <= 32.0 {
        if kit::icon_button(ui, Icon::Find, label, true, false, p).clicked() {
            finder::open(ui);
        }
        return;
    }
    let (rect, response) = ui.allocate_exact_size(vec2(wide, 32.0), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, label));
    let painter = ui.painter();
    if response.hovered() {
        painter.rect_filled(rect, theme::RADIUS, theme::thinned(p.rule, 0.18));
    }
    let icon = Rect::from_center_size(pos2(rect.left() + 16.0, rect.center().y), egui::Vec2::splat(16.0));
    icons::icon(painter, icon, Icon::Find, colour(p.ink));
    let at = pos2(icon.right() + 6.0, rect.center().y);
    let drawn = painter.text(at, Align2::LEFT_CENTER, label, theme::regular(13.0), colour(p.ink));
    let at = pos2(drawn.right() + 8.0, rect.center().y);
    painter.text(at, Align2::LEFT_CENTER, words.keys(FIND_KEYS), theme::regular(11.0), colour(p.ink2));
    kit::focus_ring(ui, &response, p);
    if response.on_hover_cursor(egui::CursorIcon::PointingHand).clicked() {
        finder::open(ui);
    }
}

/// The plan's name, which opens its menu; returns its place.
fn title(ui: &mut Ui, rect: Rect, right: f32, editor: &Editor, kept: bool, said: &mut Said) -> Rect {
    let (words, p) = (editor.words(), editor.theme().palette());
    let title = &menus::name_of(editor);
    let free = right - rect.left() - BEFORE_TITLE - CHEVRON - BESIDE_TITLE;
    let worded = free - beside_title(ui, editor, kept);
    let room = if starts(editor) && worded < LEAST_TITLE { free - kit::BUTTON } else { worded }.max(48.0);
    let galley = kit::shortened(ui, title, theme::semi_bold(15.0), colour(p.ink), room);
    let at = pos2(rect.left() + BEFORE_TITLE, rect.center().y - galley.size().y / 2.0);
    let place = Rect::from_min_size(at, galley.size() + vec2(CHEVRON, 0.0));
    ui.painter().galley(at, galley, colour(p.ink));
    icons::chevron(ui.painter(), pos2(place.right() - 8.0, rect.center().y + 1.0), colour(p.ink));
    ui.interact(place, Id::unique("title"), Sense::hover())
        .widget_info(|| WidgetInfo::labeled(Role::Heading, true, title));
    let button: Response = ui.interact(place.expand2(vec2(6.0, 5.0)), Id::unique("plan menu"), Sense::click());
    button.widget_info(|| WidgetInfo::labeled(Role::Button, true, words.text(Files::PlanMenu)));
    if button.hovered() {
        ui.painter().hline(at.x..=place.right() - CHEVRON, rect.center().y + 11.0, Stroke::new(1.0, colour(p.ink2)));
    }
    kit::focus_ring(ui, &button, p);
    menus::plan(&button.on_hover_cursor(egui::CursorIcon::PointingHand), editor, said);
    place
}

/// How safe the plan is.
fn state_of(editor: &Editor, kept: bool) -> Files {
    match editor.save_state() {
        _ if !kept => Files::StateNotKept,
        _ if editor.is_example() => Files::StateExample,
        SaveState::Example | SaveState::Fresh => Files::StateFresh,
        SaveState::NeverSaved => Files::StateNeverSaved,
        SaveState::Saved => Files::StateSaved,
        SaveState::Changed => Files::StateChanged,
    }
}

/// How safe the plan is, in two words; in the example the way to the keeper's own plan.
fn state(ui: &mut Ui, title: Rect, right: f32, editor: &Editor, kept: bool, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let text = words.text(state_of(editor, kept));
    let ink = colour(if kept { p.ink2 } else { p.danger });
    let left = title.right() + BESIDE_TITLE;
    let galley = kit::shortened(ui, text, theme::regular(12.0), ink, right - left - 8.0);
    let mut place = Rect::from_min_size(pos2(left, title.center().y - galley.size().y / 2.0), galley.size());
    let (starts, own) = (starts(editor), words.text(Rolls::StartOwn));
    let own_wide = own_width(ui, editor);
    // Where both find no room the way to one's own plan says enough.
    if starts && place.right() + 14.0 + own_wide > right {
        place = Rect::from_min_size(place.min - vec2(14.0, 0.0), vec2(0.0, place.height()));
    } else {
        ui.painter().galley(place.min, galley, ink);
    }
    ui.interact(place, Id::unique("save state"), Sense::hover())
        .widget_info(|| WidgetInfo::labeled(Role::Label, true, text));
    if starts {
        let at = Rect::from_min_size(pos2(place.right() + 14.0, title.center().y - 16.0), vec2(own_wide, 32.0));
        let mut inside = ui.new_child(UiBuilder::new().id_salt("own").max_rect(at));
        let button = if at.right() <= right {
            kit::button(&mut inside, Icon::Coil, own, true, p)
        } else {
            kit::bare_button(&mut inside, Icon::Coil, own, true, p)
        };
        if button.clicked() {
            said.ask(Ask::NewFromRolls);
        }
    }
}

/// The names of the pages, laid out: no plate covers the name beside it.
struct Names {
    galleys: Vec<(Page, Arc<Galley>)>,
    /// From the edges to the first and the last name, and how far a plate reaches beyond its name on either side.
    margin: f32,
    reach: f32,
    /// All of them: as wide as the page, or wider where their words are long.
    wide: f32,
}

impl Names {
    fn of(ui: &Ui, page_width: f32, editor: &Editor) -> Self {
        let (words, p) = (editor.words(), editor.theme().palette());
        let small = page_width < 320.0;
        let size = if small { 12.0 } else { 13.0 };
        let galleys: Vec<_> = Page::ALL
            .into_iter()
            .map(|page| {
                let open = editor.page() == page;
                let font = if open { theme::semi_bold(size) } else { theme::regular(size) };
                let ink = colour(if open { p.ink } else { p.ink2 });
                (page, ui.painter().layout_no_wrap(words.text(name(page)).to_owned(), font, ink))
            })
            .collect();
        // Any of them may be the open one: nothing moves where another page is opened.
        let bold = |page: Page| kit::width(ui, words.text(name(page)), theme::semi_bold(size));
        let widest: f32 = Page::ALL.into_iter().map(bold).sum();
        let needs =
            |[margin, reach, apart]: [f32; 3]| widest + 2.0 * margin + (galleys.len() - 1) as f32 * (reach + apart);
        // The first name stands on the page's margin; long names come nearer to each other and to the edges first, and then
        // stand over more than the page.
        let ways = if small { &NAMES_ROOMY[2..] } else { &NAMES_ROOMY[..] };
        let way = ways.iter().copied().find(|&way| needs(way) <= page_width).unwrap_or(NAMES_TIGHT);
        let [margin, reach, _] = way;
        Self { margin, reach, wide: page_width.max(needs(way)), galleys }
    }
}

fn pages(ui: &mut Ui, rect: Rect, names: Names, editor: &Editor, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let Names { galleys, margin, reach, .. } = names;
    // What is left over parts the names evenly.
    let wide: f32 = galleys.iter().map(|(_, galley)| galley.size().x).sum();
    let gap = (rect.width() - 2.0 * margin - wide) / (galleys.len() - 1) as f32;
    let mut left = rect.left() + margin - reach;
    for (index, (page, galley)) in galleys.into_iter().enumerate() {
        let label = words.text(name(page));
        let open = editor.page() == page;
        let plate =
            Rect::from_min_max(pos2(left, rect.top() + 8.0), pos2(left + galley.size().x + 2.0 * reach, rect.bottom()));
        left += galley.size().x + gap;
        let response = ui.interact(plate.shrink2(vec2(2.0, 0.0)), Id::unique(("page", index)), Sense::click());
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
