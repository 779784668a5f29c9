//! The page about where the flock goes next: the run in hand moved over one of its sides, and what stays.
//!
//! What is previewed is no part of the plan. The side is the one that is picked, else the best; side, motion and the
//! ghost that the map shows are remembered by egui alone, and the map asks for the ghost only while this page is open.

mod ahead;

use std::sync::Arc;

use care::Severity;
use drawing::{Ghost, GhostMark, Palette, Thing};
use egui::{Align2, Id, Rect, Shape, Stroke, Ui, Vec2, pos2, vec2};
use moves::{Motion, Stays};
use plan::Edit;
use words::texts::{About, Moves as Text, Window};

use self::ahead::{Ahead, Side};
use super::{Desk, ghosts, quiet};
use crate::editor::{Editor, Message, Page};
use crate::icons::{self, Icon};
use crate::kit::{self, Figure};
use crate::theme::{self, colour};

/// Where egui remembers the ghost.
const GHOST: &str = "moves ghost";
/// Less netting than this is missing to rounding, metres.
const LEAST_SHORT_M: f64 = 0.01;
/// Ground grazed twice below this is rounding, square metres.
pub(super) const LEAST_GRAZED_M2: f64 = 0.5;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    if editor.run().is_none() {
        kit::title(ui, words.text(Text::Title), "", words.text(Text::NoRun), p);
        super::way_to_a_run(ui, desk);
        return;
    }
    let from = words.say(Text::FromRun, &[("number", &(editor.run_index() + 1).to_string())]);
    kit::title(ui, words.text(Text::Title), &from, words.text(Text::Sentence), p);
    let motion_id = Id::unique("moves motion");
    let motion: Motion = ui.data(|data| data.get_temp(motion_id)).unwrap_or_default();
    let sides = ahead::sides(ui, editor);
    let aheads = ahead::all(ui, editor, &sides, motion);
    let Some(side) = ahead::chosen(ui, editor, &sides, &aheads) else {
        ghosts::give(ui, GHOST, None);
        ui.add_space(12.0);
        desk.second(ui, words.text(Text::CannotMove));
        runs(ui, desk);
        return;
    };
    ui.add_space(14.0);
    ui.horizontal(|ui| {
        for (which, label) in [(Motion::TurnOver, Text::TurnOver), (Motion::Shift, Text::Shift)] {
            if kit::choice(ui, words.text(label), motion == which, p).clicked() {
                // What is shown follows in the next frame.
                let motion = which;
                ui.data_mut(|data| data.insert_temp(motion_id, motion));
                ui.ctx().request_repaint();
            }
        }
    });
    ui.add_space(6.0);
    desk.second(
        ui,
        words.text(match motion {
            Motion::TurnOver => Text::TurnOverSays,
            Motion::Shift => Text::ShiftSays,
        }),
    );
    list(ui, desk, &sides, &aheads, side.vertex);
    let ahead = ahead::of(ui, editor, side.vertex, motion);
    if let Some(ahead) = &ahead {
        next(ui, desk, side, motion, ahead);
    }
    let new = ahead.filter(|ahead| ahead::kept_as(editor.plan(), &ahead.next.run).is_none());
    ghosts::give(
        ui,
        GHOST,
        new.map(|ahead| Ghost {
            outline: ahead.next.run.outline.clone(),
            closed: ahead.next.run.closed(),
            stays: ahead.next.shared,
            mark: GhostMark::Letter(side.letter.clone()),
        }),
    );
    runs(ui, desk);
}

/// The sides, to pick one.
fn list(ui: &mut Ui, desk: &mut Desk<'_>, sides: &[Side], aheads: &[Option<Arc<Ahead>>], chosen: usize) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    desk.section(ui, words.text(Text::OverWhich), "", About::OverSides);
    kit::rule(ui, p);
    for (side, ahead) in sides.iter().zip(aheads) {
        let thing = Thing::RunSide { run: editor.run_index(), side: side.vertex };
        let name = words.say(Text::Side, &[("from", &side.from), ("to", &side.to)]);
        let length = words.length(side.length_m);
        let panels = side.panels.map(|panels| match panels {
            1 => words.text(Text::OnePanel).to_owned(),
            panels => words.say(Text::Panels, &[("count", &panels.to_string())]),
        });
        let label = words.say(
            Text::SideRow,
            &[("side", &name), ("length", &length), ("panels", panels.as_deref().unwrap_or_default())],
        );
        // What stands against it, at a glance.
        let worst = ahead.as_ref().and_then(|ahead| ahead.of_ground().map(|one| one.severity).max());
        let mut label = label.trim_end_matches(", ").to_owned();
        if let Some(severity) = worst {
            label = format!("{label}: {}", words.text(spoken(severity)));
        }
        let (picked, hovered) = (side.vertex == chosen, editor.hovered() == Some(thing));
        let id = Id::unique(("move over side", side.vertex));
        let (rect, response) = kit::row(ui, id, picked, hovered, &label, p);
        if response.hovered() {
            desk.said.hovered = desk.said.hovered.or(Some(thing));
        }
        if response.clicked() {
            desk.said.say(Message::Pick(Some(thing)));
        }
        let y = rect.center().y;
        letter(ui, Rect::from_center_size(pos2(rect.left() + 9.0, y), Vec2::splat(18.0)), &side.letter, picked, p);
        let font = if picked { theme::medium(13.0) } else { theme::regular(13.0) };
        let name = kit::cell(ui, pos2(rect.left() + 30.0, y), Align2::LEFT_CENTER, &name, font, colour(p.ink));
        let mut left = name.right();
        if let Some(severity) = worst {
            icons::tag(ui.painter(), pos2(left + 10.0, y - icons::TAG.y / 2.0), severity, p);
            left += 10.0 + icons::TAG.x;
        }
        // Left out where it would run over what stands before it; the row says it all the same.
        let right = rect.right() - 72.0;
        let fits = |panels: &&String| right - kit::width(ui, panels, theme::regular(13.0)) >= left + 6.0;
        if let Some(panels) = panels.as_ref().filter(fits) {
            kit::cell(ui, pos2(right, y), Align2::RIGHT_CENTER, panels, theme::regular(13.0), colour(p.ink2));
        }
        quiet(ui, rect.right(), y, &length, p);
    }
}

fn spoken(severity: Severity) -> Window {
    match severity {
        Severity::Danger => Window::Danger,
        Severity::Warning => Window::Warning,
        Severity::Note => Window::Note,
    }
}

/// A plate with the letter of a next run, filled where it is the one that is shown.
fn letter(ui: &Ui, rect: Rect, letter: &str, chosen: bool, p: &Palette) {
    let (fill, ink) = if chosen { (p.ghost, p.sheet) } else { (p.sheet, p.ghost) };
    let edge = Stroke::new(1.5, colour(p.ghost));
    ui.painter().add(Shape::convex_polygon(icons::cut_plate(rect, 5.0), colour(fill), edge));
    ui.painter().text(rect.center(), Align2::CENTER_CENTER, letter, theme::semi_bold(12.0), colour(ink));
}

/// What follows if the flock goes there, and the button that keeps it.
fn next(ui: &mut Ui, desk: &mut Desk<'_>, side: &Side, motion: Motion, ahead: &Ahead) {
    let (words, p) = (desk.words, desk.p);
    let head = match motion {
        Motion::TurnOver => Text::NextHead,
        Motion::Shift => Text::NextHeadShift,
    };
    desk.section(ui, &words.say(head, &[("from", &side.from), ("to", &side.to)]), "", About::MoveOver);
    ui.add_space(10.0);
    match &ahead.next.stays {
        None => desk.second(ui, words.text(Text::NotLaid)),
        Some(_) if ahead.next.shared.is_none() => desk.second(ui, words.text(Text::NothingStays)),
        Some(stays) => {
            let (metres, unit) = words.length_parts(stays.netting_m);
            let figure = |value, unit, label, about| Figure::told(words, [value, unit], label, about);
            let (stay, go) = (stays.posts.len().to_string(), stays.posts_to_move.to_string());
            let three = [
                figure(metres.as_str(), unit, Text::NettingStays, About::NettingStays),
                figure(stay.as_str(), "", Text::PostsStay, About::PostsStay),
                figure(go.as_str(), "", Text::PostsMove, About::PostsMove),
            ];
            kit::figures(ui, &three, p);
        }
    }
    ui.add_space(12.0);
    keep(ui, desk, ahead);
    ui.add_space(14.0);
    kit::rule(ui, p);
    facts(ui, desk, ahead);
    let short_m = ahead.worked.lay.as_ref().map_or(0.0, |lay| lay.short_m);
    if ahead.worked.slope.is_some() && short_m >= LEAST_SHORT_M {
        ui.add_space(8.0);
        desk.second(ui, &words.say(Text::ShortOnSlope, &[("short", &words.fine_length(short_m))]));
    }
    let found: Vec<_> = ahead.of_ground().collect();
    if !found.is_empty() {
        ui.add_space(16.0);
        for (index, finding) in found.into_iter().enumerate() {
            kit::finding(ui, Id::unique(("next run finding", index)), finding, (false, false), words, p);
            ui.add_space(14.0);
        }
    }
    ui.add_space(8.0);
    desk.second(ui, words.text(Text::NoWarranty));
}

fn facts(ui: &mut Ui, desk: &Desk<'_>, ahead: &Ahead) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let ground = &editor.plan().ground;
    if let Some(stays) = &ahead.next.stays {
        kit::fact(ui, words.text(Text::Nets), &nets(desk, stays), p);
    }
    // An open line has no ground of its own.
    let area_m2 = ahead.worked.area_m2.filter(|&area_m2| area_m2 > 0.0);
    if let Some(area_m2) = area_m2 {
        let fresh_m2 = (area_m2 - ahead.next.grazed_m2).max(0.0);
        kit::fact(ui, words.text(Text::FreshGround), &words.area(fresh_m2), p);
    }
    if ahead.next.grazed_m2 > LEAST_GRAZED_M2 {
        kit::fact(ui, words.text(Text::GrazedAgain), &words.area(ahead.next.grazed_m2), p);
    }
    if area_m2.is_some() {
        desk.second(ui, words.text(Text::FreshOfAll));
        ui.add_space(6.0);
    }
    if let Some(left) = &ahead.still_to_mow {
        let figures = [("area", &*words.area(left.area_m2)), ("minutes", &*words.minutes_figure(left.minutes))];
        kit::fact(ui, words.text(Text::LeftToMow), &words.say(Text::LeftToMowFigures, &figures), p);
    }
    let paddock = if ground.boundary.len() < 3 {
        Text::NoPaddock
    } else if ahead.found("leaves-paddock") {
        Text::PaddockLeft
    } else {
        Text::PaddockInside
    };
    kit::fact(ui, words.text(Text::Paddock), words.text(paddock), p);
    let keep_outs = if ground.keep_outs.is_empty() {
        Text::KeepOutsNone
    } else if ahead.found("keep-out-touched") || ahead.found("keep-out-enclosed") {
        Text::KeepOutsMet
    } else {
        Text::KeepOutsClear
    };
    kit::fact(ui, words.text(Text::KeepOuts), words.text(keep_outs), p);
    if ahead.next.run.coop.as_ref().is_some_and(|id| editor.plan().coop(id).is_some()) {
        let coop = if ahead.found(ahead::COOP_OUTSIDE) { Text::CoopTowed } else { Text::CoopInside };
        kit::fact(ui, words.text(Text::Coop), words.text(coop), p);
    }
    let weakest = ahead.worked.volts.as_ref().and_then(|volts| volts.weakest);
    let weakest = weakest.map_or_else(
        || words.text(Text::NotKnown).to_owned(),
        |weakest| words.say(Text::WeakestRange, &[("weakest", &care::volts_said::weakest(&weakest, words))]),
    );
    kit::fact(ui, words.text(Text::Weakest), &weakest, p);
}

fn nets(desk: &Desk<'_>, stays: &Stays) -> String {
    let (words, part) = (desk.words, stays.nets_in_part.to_string());
    match (stays.nets, stays.nets_in_part) {
        (0, 0) => words.text(Text::NetsNone).to_owned(),
        (0, _) => words.say(Text::NetsPart, &[("part", &part)]),
        (whole, _) => words.say(Text::NetsWhole, &[("whole", &whole.to_string()), ("part", &part)]),
    }
}

/// The button, or where the plan has that ground already, the way to it.
fn keep(ui: &mut Ui, desk: &mut Desk<'_>, ahead: &Ahead) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    if let Some(index) = ahead::kept_as(editor.plan(), &ahead.next.run) {
        let name = care::run_name(&editor.plan().runs[index]);
        desk.second(ui, &words.say(Text::Kept, &[("run", name)]));
        ui.add_space(4.0);
        if kit::link(ui, &words.say(Text::TakeInHand, &[("run", name)]), p).clicked() {
            desk.said.say(Message::Pick(Some(Thing::Run { run: index })));
        }
        return;
    }
    if kit::button(ui, Icon::More, words.text(Text::Keep), false, p).clicked() {
        let index = editor.plan().runs.len();
        let run = Box::new(ahead.next.run.clone());
        desk.said.say(Message::Make(Edit::AddRun { index, run }));
        desk.said.say(Message::InSight(index));
    }
}

/// The ghost that the map shows while this page is open.
pub(crate) fn ghost(ui: &Ui, editor: &Editor) -> Option<Arc<Ghost>> {
    ghosts::given(ui, GHOST).filter(|_| editor.page() == Page::Moves && editor.run().is_some())
}

/// The runs of the plan, to take one in hand.
fn runs(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    if editor.plan().runs.len() < 2 {
        return;
    }
    desk.section(ui, words.text(Text::Runs), "", About::Runs);
    kit::rule(ui, p);
    for (index, (run, worked)) in editor.plan().runs.iter().zip(&editor.workup().runs).enumerate() {
        let thing = Thing::Run { run: index };
        let in_hand = editor.run_index() == index;
        let name = care::run_name(run);
        let id = Id::unique(("moves run", index));
        let (rect, response) = kit::row(ui, id, in_hand, editor.hovered() == Some(thing), name, p);
        if response.hovered() {
            desk.said.hovered = desk.said.hovered.or(Some(thing));
        }
        if response.clicked() {
            desk.said.say(Message::Pick(Some(thing)));
        }
        let plate = Rect::from_center_size(rect.left_center() + vec2(9.0, 0.0), Vec2::splat(18.0));
        icons::number_plate(ui.painter(), plate, &(index + 1).to_string(), in_hand, p);
        let galley = kit::shortened(ui, name, theme::regular(13.0), colour(p.ink), rect.width() - 120.0);
        ui.painter().galley(pos2(rect.left() + 30.0, rect.center().y - galley.size().y / 2.0), galley, colour(p.ink));
        if let Some(figure) = care::closing_said::figure(worked, words) {
            quiet(ui, rect.right(), rect.center().y, &figure, p);
        }
    }
}
