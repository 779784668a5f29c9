//! The pages beside the map: each says what it is, what to do, what follows, then its findings.

mod assumed;
mod book;
mod bracing;
mod branches;
mod coop;
mod coordinates;
mod fitting;
mod gates;
mod ghosts;
pub(crate) mod ground;
mod kept;
pub(crate) mod list;
mod mending;
mod moves;
mod mow;
mod picked;
pub(crate) mod plot;
mod power;
mod run;
mod setting_up;
mod shapes;
mod shaping;
pub(crate) mod sheet;
mod sides;
mod slope;
mod steady;
mod store;
mod unroll;

use std::sync::Arc;

use care::Finding;
use drawing::{Ghost, Palette, Thing};
use egui::{Align2, Context, Id, Rect, Response, ScrollArea, Sense, Stroke, Ui, UiBuilder, pos2, vec2};
use words::Words;
use words::texts::{About, Window as Text};

use crate::editor::{Editor, Message, Page, leads, page_of_finding};
use crate::icons::{self, Icon};
use crate::kit::{self, BETWEEN};
use crate::said::Said;
use crate::theme::{self, colour};
pub(crate) use coordinates::PLACE_M;
pub(crate) use steady::{Mark, seek};

/// Width of the page, and in a small window.
pub(crate) const WIDTH: f32 = 360.0;
/// Its width in a window below 1000 points.
pub(crate) const WIDTH_SMALL: f32 = 296.0;

/// Height of the line that names what lies below.
const BELOW: f32 = 32.0;

/// What every page paints with.
pub(crate) struct Desk<'a> {
    pub(crate) editor: &'a Editor,
    pub(crate) said: &'a mut Said,
    pub(crate) words: Words,
    pub(crate) p: &'static Palette,
    /// The sections, with the height at which each begins.
    sections: Vec<(f32, String)>,
}

impl Desk<'_> {
    /// Begins a section, with space before it; it can be asked into sight by its head. What its figures are about is said
    /// while the pointer rests on them.
    fn section(&mut self, ui: &mut Ui, head: &str, aside: &str, about: impl Into<Option<About>>) -> Response {
        ui.add_space(BETWEEN);
        self.sections.push((ui.cursor().top(), head.to_owned()));
        kit::tell(ui, about.into().map(|about| self.words.text(about)));
        kit::section(ui, head, aside, self.p)
    }

    /// Words in ink2.
    fn second(&self, ui: &mut Ui, text: &str) {
        kit::prose(ui, text, theme::regular(12.0), colour(self.p.ink2));
    }
}

/// The way to the page where a run is laid out, for a page that tells of one and has none.
fn way_to_a_run(ui: &mut Ui, desk: &mut Desk<'_>) {
    ui.add_space(14.0);
    if kit::button(ui, Icon::Outline, desk.words.text(words::texts::Moves::ToRunPage), false, desk.p).clicked() {
        desk.said.say(Message::Open(Page::Run));
    }
}

/// The button that takes the tape to hand, or puts it away.
fn tape_button(ui: &mut Ui, desk: &mut Desk<'_>) {
    let on = matches!(desk.editor.tool(), crate::tool::Tool::Tape(_));
    if kit::button(ui, Icon::Tape, desk.words.text(words::texts::Guides::Tape), on, desk.p).clicked() {
        desk.said.say(if on { Message::Escape } else { Message::Use(crate::tool::Tool::tape()) });
    }
}

/// The run that is only thought of and that the open page shows on the map.
pub(crate) fn ghost(ui: &Ui, editor: &Editor) -> Option<Arc<Ghost>> {
    let on_run = || bracing::ghost(ui, editor).or_else(|| gates::ghost(ui, editor));
    moves::ghost(ui, editor).or_else(|| editor.shape_ghost().map(Arc::new)).or_else(on_run)
}

/// Shows the open page.
pub(crate) fn show(ui: &mut Ui, rect: Rect, editor: &Editor, paper: &mut sheet::Paper, said: &mut Said) {
    let p = editor.theme().palette();
    ui.painter().rect_filled(rect, 0.0, colour(p.sheet));
    ui.painter().vline(rect.left() + 0.5, rect.y_range(), Stroke::new(1.0, colour(p.rule)));
    let margin = if rect.width() < WIDTH { 16.0 } else { 24.0 };
    let mut desk = Desk { editor, said, words: editor.words(), p, sections: Vec::new() };
    let mut inside = ui.new_child(UiBuilder::new().id_salt(("page", editor.page())).max_rect(rect));
    if editor.page() == Page::Ground && ground::leads_anew(ui, &desk) {
        steady::from_the_top(ui.ctx(), editor.page());
    }
    let area = ScrollArea::vertical().id_salt(editor.page()).auto_shrink(false);
    let mut top = rect.top();
    let output = steady::scrolled(ui.ctx(), editor.page(), area).show(&mut inside, |ui| {
        top = ui.cursor().top();
        ui.horizontal_top(|ui| {
            ui.spacing_mut().item_spacing.x = 0.0;
            ui.add_space(margin);
            ui.vertical(|ui| {
                ui.spacing_mut().item_spacing.x = 6.0;
                ui.set_width(rect.width() - 2.0 * margin);
                ui.add_space(22.0);
                kit::tell(ui, at_the_top(editor).map(|about| editor.words().text(about)));
                match editor.page() {
                    _ if editor.question().is_some() => crate::first::page(ui, editor.words(), p),
                    Page::Ground => ground::show(ui, &mut desk),
                    Page::Run if let Some(in_hand) = editor.in_hand() => unroll::show(ui, &mut desk, in_hand),
                    Page::Run if editor.shapes().is_open() => shapes::show(ui, &mut desk),
                    Page::Run => run::show(ui, &mut desk),
                    Page::Power => power::show(ui, &mut desk),
                    Page::Moves => moves::show(ui, &mut desk),
                    Page::Book => book::show(ui, &mut desk),
                    Page::Sheet => sheet::show(ui, &mut desk, paper),
                }
                ui.add_space(40.0);
            });
        });
    });
    let beside = |on: Id| on == strip_id() || desk.sections.iter().any(|(_, name)| on == way_id(name));
    let laid = steady::Laid { rect, layer: ui.layer_id(), foot: BELOW, top, sections: &desk.sections };
    steady::hold(ui.ctx(), editor.page(), &laid, beside, &output);
    let hidden_px = output.content_size.y - rect.height() - output.state.clamped_offset().y;
    // What follows beside the page is about none of it.
    kit::tell(ui, None);
    if hidden_px > 40.0 {
        below(ui, rect, margin, &desk);
    }
}

/// What the figures at a page's top are about.
fn at_the_top(editor: &Editor) -> Option<About> {
    match editor.page() {
        _ if editor.question().is_some() => None,
        Page::Run | Page::Power | Page::Moves | Page::Book if editor.run().is_none() => None,
        Page::Ground => Some(About::Paddock),
        Page::Run if editor.shapes().is_open() => Some(About::Shapes),
        Page::Run => Some(About::RunGround),
        Page::Power => Some(About::Weakest),
        Page::Moves => Some(About::MoveOver),
        Page::Book => Some(About::Readings),
        Page::Sheet => None,
    }
}

/// Space between two names at the foot.
const NAMES_APART: f32 = 12.0;

/// The last line of a page that goes on: what lies below, each name a way there; what finds no room is counted.
fn below(ui: &mut Ui, rect: Rect, margin: f32, desk: &Desk<'_>) {
    let names: Vec<&str> = desk
        .sections
        .iter()
        .filter(|(top, _)| *top > rect.bottom() - BELOW - 12.0)
        .map(|(_, name)| name.as_str())
        .collect();
    if names.is_empty() {
        return;
    }
    let p = desk.p;
    let strip = Rect::from_min_max(pos2(rect.left() + 1.0, rect.bottom() - BELOW), rect.max);
    ui.painter().rect_filled(strip, 0.0, colour(p.sheet));
    // What it hides is not pressed through it: between the names it brings the first of them.
    let between = ui.interact(strip, strip_id(), Sense::CLICK | Sense::DRAG);
    between.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, desk.words.text(Text::Below)));
    if between.clicked() {
        seek(ui.ctx(), Some(Mark::Section(names[0].to_owned())));
        ui.ctx().request_repaint();
    }
    ui.painter().hline(
        strip.left() + margin..=strip.right() - margin,
        strip.top(),
        Stroke::new(1.0, colour(p.hairline)),
    );
    icons::chevron(ui.painter(), strip.left_center() + vec2(margin + 6.0, 0.0), colour(p.ink2));
    let width = |ui: &Ui, text: &str| {
        ui.painter().layout_no_wrap(text.to_owned(), theme::regular(12.0), colour(p.ink2)).size().x
    };
    let more = |count: usize| desk.words.say(Text::BelowMore, &[("count", &count.to_string())]);
    let right = strip.right() - margin;
    let mut left = strip.left() + margin + 22.0;
    for (index, name) in names.iter().enumerate() {
        let rest = names.len() - index - 1;
        let kept = if rest == 0 { 0.0 } else { NAMES_APART + width(ui, &more(rest)) };
        let fits = left + width(ui, name) + kept <= right;
        let label = if fits { (*name).to_owned() } else { more(rest + 1) };
        left = way_to(ui, pos2(left, strip.center().y), &label, name, p) + NAMES_APART;
        if !fits {
            break;
        }
    }
}

fn strip_id() -> Id {
    Id::unique("what lies below")
}

fn way_id(section: &str) -> Id {
    Id::unique(("way to", section))
}

/// A name that brings its section in sight; where it ends.
fn way_to(ui: &mut Ui, at: egui::Pos2, label: &str, section: &str, p: &Palette) -> f32 {
    let text = ui.painter().layout_no_wrap(label.to_owned(), theme::regular(12.0), colour(p.ink2));
    let place = Rect::from_min_size(at - vec2(0.0, text.size().y / 2.0), text.size());
    let response = ui.interact(place.expand2(vec2(4.0, 6.0)), way_id(section), egui::Sense::click());
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Link, true, label));
    let ink = if response.hovered() { p.ink } else { p.ink2 };
    if response.hovered() {
        ui.painter().hline(place.x_range(), place.bottom() + 0.5, Stroke::new(1.0, colour(ink)));
    }
    ui.painter().galley(place.min, text, colour(ink));
    kit::focus_ring(ui, &response, p);
    if response.clicked() {
        seek(ui.ctx(), Some(Mark::Section(section.to_owned())));
        ui.ctx().request_repaint();
    }
    response.on_hover_cursor(egui::CursorIcon::PointingHand);
    place.right()
}

/// The findings of the open page: those of the run in hand, then those of the plan, the weightiest first.
fn of_page(editor: &Editor, page: Page) -> Vec<(Thing, &Finding)> {
    let findings = editor.findings();
    let index = editor.run_index();
    let of_run = findings.runs.get(index).into_iter().flatten().enumerate();
    let of_run = of_run.map(|(finding, one)| (Thing::Finding { run: Some(index), finding }, one));
    let of_plan = findings.plan.iter().enumerate();
    let of_plan = of_plan.map(|(finding, one)| (Thing::Finding { run: None, finding }, one));
    let mut found: Vec<_> =
        of_run.chain(of_plan).filter(|(thing, one)| page_of_finding(one, is_of_plan(*thing)) == page).collect();
    found.sort_by_key(|(_, one)| std::cmp::Reverse(one.severity));
    found
}

fn is_of_plan(thing: Thing) -> bool {
    matches!(thing, Thing::Finding { run: None, .. })
}

/// What was asked for on a page by what is said comes into sight there: of a finding the place where it is mended, of one
/// that was picked its sentence; what else is picked takes that back.
pub(crate) fn seek_said(ctx: &Context, editor: &Editor, messages: &[Message]) {
    for message in messages {
        match *message {
            Message::Mend(thing @ Thing::Finding { run, finding }) => {
                let mends = editor.finding(run, finding).and_then(|found| mending::mark(ctx, editor, run, found));
                seek(ctx, Some(mends.unwrap_or_else(|| mending::sentence(thing))));
            }
            Message::Pick(Some(thing @ Thing::Finding { .. })) => seek(ctx, Some(mending::sentence(thing))),
            Message::Pick(_) => seek(ctx, None),
            _ => {}
        }
    }
}

/// What a click on something that is drawn says: of a finding where it is mended.
pub(crate) fn clicked(thing: Option<Thing>) -> Message {
    match thing {
        Some(finding @ Thing::Finding { .. }) => Message::Mend(finding),
        thing => Message::Pick(thing),
    }
}

/// The findings of this page.
fn findings(ui: &mut Ui, desk: &mut Desk<'_>) {
    let found = of_page(desk.editor, desk.editor.page());
    if found.is_empty() {
        return;
    }
    let head = desk.words.text(Text::FindingsHere);
    desk.section(ui, head, "", None);
    ui.add_space(8.0);
    for (thing, finding) in found {
        let picked = desk.editor.picked() == Some(thing) || desk.editor.hovered() == Some(thing);
        let id = mending::sentence_id(thing);
        let response = kit::finding(ui, id, finding, (picked, leads(finding)), desk.words, desk.p);
        if response.hovered() && !finding.at.is_empty() {
            desk.said.hovered = desk.said.hovered.or(Some(thing));
        }
        if response.clicked() {
            desk.said.say(Message::Mend(thing));
        }
        ui.add_space(14.0);
    }
}

/// A row that picks its thing, or lets go of it; where to paint, and whether it is picked.
fn picks(ui: &mut Ui, desk: &mut Desk<'_>, id: Id, thing: Thing, label: &str) -> (Rect, bool) {
    let picked = desk.editor.picked() == Some(thing);
    let (rect, response) = kit::row(ui, id, picked, desk.editor.hovered() == Some(thing), label, desk.p);
    if response.hovered() {
        desk.said.hovered = desk.said.hovered.or(Some(thing));
    }
    if response.clicked() {
        desk.said.say(Message::Pick(Some(thing).filter(|_| !picked)));
    }
    (rect, picked)
}

/// The row of a thing on its page.
fn row_id(thing: Thing) -> Id {
    Id::unique(("row of", thing))
}

/// A row that picks its thing, with a word at its right; whether that is picked.
fn picks_told(ui: &mut Ui, desk: &mut Desk<'_>, thing: Thing, left: &str, right: &str) -> bool {
    let p = desk.p;
    let label = if right.is_empty() { left.to_owned() } else { format!("{left}: {right}") };
    let (rect, picked) = picks(ui, desk, row_id(thing), thing, &label);
    let y = rect.center().y;
    let right = kit::cell(ui, pos2(rect.right(), y), Align2::RIGHT_CENTER, right, theme::regular(13.0), colour(p.ink2));
    let font = if picked { theme::medium(13.0) } else { theme::regular(13.0) };
    let left = kit::shortened(ui, left, font, colour(p.ink), right.left() - rect.left() - 12.0);
    ui.painter().galley(pos2(rect.left(), y - left.size().y / 2.0), left, colour(p.ink));
    picked
}

/// A quiet cell of a table.
fn quiet(ui: &Ui, right: f32, y: f32, text: &str, p: &Palette) {
    kit::cell(ui, pos2(right, y), Align2::RIGHT_CENTER, text, theme::regular(13.0), colour(p.ink));
}
