//! The page of other shapes: the largest runs of the same nets on this ground, what each gives and costs, and taking
//! one. It takes the place of the page about the run while it is open.

mod birds;
mod plots;

use egui::{Ui, vec2};
use exchange::compare::Column;
use exchange::shapes;
use words::texts::{About, Compare as Text};
use workup::Compared;
use workup::candidates::{Candidate, CandidateFault, MOST_FREE_SIDES};

use super::Desk;
use crate::asking::Ask;
use crate::editor::{Message, Page, Progress, ShapeKey, ShapesMessage};
use crate::icons::Icon;
use crate::kit;
use crate::theme::{self, colour};
use crate::tool::{Drawn, Tool};

/// The most counts of nets that are offered side by side.
const MOST_COUNTS: u32 = 8;
/// Less than this is missing to rounding, metres.
const LEAST_SHORT_M: f64 = 0.005;
/// The fewest sides of a free shape.
const FEWEST_SIDES: u32 = 3;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    kit::title(ui, words.text(Text::PageTitle), "", &sentence(desk), p);
    ui.add_space(8.0);
    if kit::link(ui, words.text(Text::BackToRun), p).clicked() {
        say(desk, ShapesMessage::Open(false));
    }
    ui.add_space(14.0);
    asked(ui, desk);
    progress(ui, desk);
    if let Some(fault) = desk.editor.shapes().fault() {
        ui.add_space(10.0);
        kit::prose(ui, &shapes::refused(fault, words), theme::medium(13.0), colour(p.danger));
        if matches!(fault, CandidateFault::NoBoundary) {
            ui.add_space(6.0);
            if kit::link(ui, words.text(Text::DrawPaddock), p).clicked() {
                say(desk, ShapesMessage::Open(false));
                desk.said.say(Message::Open(Page::Ground));
                desk.said.say(Message::Use(Tool::outline(Drawn::Paddock)));
            }
        }
    }
    for note in desk.editor.shapes().notes() {
        ui.add_space(6.0);
        desk.second(ui, &shapes::noted(note, words));
    }
    chosen(ui, desk);
    plots::show(ui, desk);
    birds::show(ui, desk);
    ways_out(ui, desk);
}

fn say(desk: &mut Desk<'_>, message: ShapesMessage) {
    desk.said.say(Message::Shapes(message));
}

/// The run in hand's ground, where it encloses any.
fn own(desk: &Desk<'_>) -> Option<Compared> {
    let (_, worked) = desk.editor.run()?;
    Some(Compared::of(worked, workup::stocking::chosen(desk.editor.plan())))
}

/// The best of all in one sentence.
fn sentence(desk: &Desk<'_>) -> String {
    let words = desk.words;
    let Some(best) = desk.editor.shapes().found().first() else {
        return if desk.editor.shapes().fault().is_some() {
            String::new()
        } else {
            words.text(Text::LookingFirst).to_owned()
        };
    };
    let braces = |figures: &Compared| match figures.braces {
        None => String::new(),
        Some(0) => words.text(Text::NoBraces).to_owned(),
        Some(1) => words.text(Text::OneBrace).to_owned(),
        Some(count) => words.say(Text::ManyBraces, &[("count", &count.to_string())]),
    };
    let name = shapes::title(best, words);
    match own(desk).and_then(|own| Some((own.area_m2?, own))) {
        Some((own_m2, own)) if own_m2 >= best.area_m2 => words.say(Text::BestYours, &[("braces", &braces(&own))]),
        Some((own_m2, _)) => {
            let more = words.area(best.area_m2 - own_m2);
            words.say(Text::BestMore, &[("name", &name), ("more", &more), ("braces", &braces(&best.compared))])
        }
        None => {
            let area = words.area(best.area_m2);
            words.say(Text::BestAlone, &[("name", &name), ("area", &area), ("braces", &braces(&best.compared))])
        }
    }
}

/// What is asked: how many nets, whether round the coop, whether a wall may be borrowed.
fn asked(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let (nets, owned) = (editor.shapes_nets(), editor.nets_owned());
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        kit::prose(ui, words.text(Text::With), theme::semi_bold(13.0), colour(p.ink));
        // Of many, those about the count that is asked for.
        let first = nets.saturating_sub(MOST_COUNTS / 2).clamp(1, owned.saturating_sub(MOST_COUNTS - 1).max(1));
        for count in first..=owned.min(first + MOST_COUNTS - 1) {
            if kit::choice(ui, &count.to_string(), count == nets, p).clicked() && count != nets {
                say(desk, ShapesMessage::Nets(count));
            }
        }
        let unit = if nets == 1 { Text::NetUnit } else { Text::NetsUnit };
        kit::prose(ui, words.text(unit), theme::regular(13.0), colour(p.ink2));
    });
    ui.add_space(4.0);
    let store = match owned {
        1 => words.text(Text::StoreHasOne).to_owned(),
        owned => words.say(Text::StoreHas, &[("owned", &owned.to_string())]),
    };
    desk.second(ui, &store);
    let (coop, walls) = editor.shapes().wants();
    ui.add_space(6.0);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        let own = editor.plan().coop.as_ref();
        let several = !editor.plan().other_coops.is_empty();
        let round = own.map(|own| match care::names::coop(words, own) {
            name if several => words.say(Text::RoundOneCoop, &[("coop", &name)]),
            _ => words.text(Text::RoundCoop).to_owned(),
        });
        if round.is_some_and(|round| kit::choice(ui, &round, coop, p).clicked()) {
            say(desk, ShapesMessage::Coop(!coop));
        }
        if editor.plan().walls.iter().any(plan::Wall::holds_birds)
            && kit::choice(ui, words.text(Text::BorrowWall), walls, p).clicked()
        {
            say(desk, ShapesMessage::Walls(!walls));
        }
    });
    ui.add_space(6.0);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        kit::prose(ui, words.text(Text::FreeSides), theme::regular(13.0), colour(p.ink2));
        for sides in FEWEST_SIDES..=MOST_FREE_SIDES {
            let on = sides == editor.shapes().sides();
            if kit::choice(ui, &sides.to_string(), on, p).clicked() && !on {
                say(desk, ShapesMessage::Sides(sides));
            }
        }
    });
}

/// Whether something is searched, and the way to stop it or to begin again.
fn progress(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    let progress = desk.editor.shapes().progress();
    ui.add_space(10.0);
    let (text, button, message) = match progress {
        Progress::ToAsk | Progress::Looks => (Text::Looking, Text::Stop, ShapesMessage::Stop),
        Progress::Counts => (Text::LookingCounts, Text::Stop, ShapesMessage::Stop),
        Progress::Rests => {
            if kit::link(ui, words.text(Text::LookAgain), p).clicked() {
                say(desk, ShapesMessage::Look);
            }
            return;
        }
    };
    desk.second(ui, words.text(text));
    ui.add_space(6.0);
    if kit::word_button(ui, words.text(button), false, p).clicked() {
        say(desk, message);
    }
}

/// The shape that is looked at, beside the keeper's own.
fn chosen(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let Some(candidate) = editor.shapes().chosen() else {
        taken(ui, desk);
        if !editor.shapes().found().is_empty() {
            ui.add_space(10.0);
            desk.second(ui, words.text(Text::ChooseOne));
        }
        return;
    };
    let key: ShapeKey = (candidate.family, candidate.wall);
    let name = shapes::title(candidate, words);
    let own = own(desk);
    let head = if own.is_some() { Text::Instead } else { Text::OnItsOwn };
    desk.section(ui, &words.say(head, &[("name", &name)]), "", About::Shapes);
    kit::rule(ui, p);
    for column in [Column::Ground, Column::Birds, Column::Braces, Column::Spare, Column::SetUp, Column::Strip] {
        if let Some(said) = change(desk, column, &candidate.compared, own.as_ref()) {
            kit::fact(ui, words.text(column.head()), &said, p);
        }
    }
    facts_of(ui, desk, candidate);
    let leaves = |run: &plan::Run| !run.gates.is_empty() || !run.pins.is_empty() || !run.braces.is_empty();
    if editor.run().is_some_and(|(run, _)| leaves(run)) {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::LeavesBehind));
    }
    ui.add_space(12.0);
    if editor.shapes().taken().is_some_and(|taken| taken.key == key) {
        taken(ui, desk);
        return;
    }
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        if editor.run().is_some() && kit::button(ui, Icon::Outline, words.text(Text::MakeIt), false, p).clicked() {
            say(desk, ShapesMessage::Take(key));
        }
        if kit::button(ui, Icon::More, words.text(Text::KeepIt), false, p).clicked() {
            say(desk, ShapesMessage::Keep(key));
        }
    });
}

/// What was just made of a shape, with the way back; stands where its buttons stood.
fn taken(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let Some(taken) = editor.shapes().taken() else { return };
    let number = editor.plan().runs.len().to_string();
    let (text, name) = match &taken.beside {
        Some(name) => (Text::KeptIt, name.clone()),
        None => (Text::MadeIt, shapes::title(&taken.shape, words)),
    };
    kit::prose(ui, &words.say(text, &[("name", &name), ("number", &number)]), theme::medium(13.0), colour(p.ink));
    ui.add_space(4.0);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(16.0, 6.0);
        if kit::link(ui, words.text(Text::TakeItBack), p).clicked() {
            desk.said.say(Message::Undo);
        }
        if kit::link(ui, words.text(Text::SeeTheRun), p).clicked() {
            say(desk, ShapesMessage::Open(false));
        }
    });
}

/// What is the shape's alone: its corners on posts, what is proved of it, the wall that it leans on.
fn facts_of(ui: &mut Ui, desk: &Desk<'_>, candidate: &Candidate) {
    let (words, p) = (desk.words, desk.p);
    if let Some((on, all)) = candidate.compared.on_posts {
        let said = words.say(Text::CornersOnPosts, &[("on", &on.to_string()), ("all", &all.to_string())]);
        kit::fact(ui, words.text(Text::Corners), &said, p);
    }
    if candidate.area_bound_m2.is_finite() {
        let said = words.say(Text::NoLargerThan, &[("area", &words.area(candidate.area_bound_m2))]);
        kit::fact(ui, words.text(Text::NoLarger), &said, p);
    }
    if let Some(slope) = candidate.slope {
        let said = if slope.short_m >= LEAST_SHORT_M {
            Some(words.say(Text::OpenOnSlope, &[("short", &words.fine_length(slope.short_m))]))
        } else {
            let percent = words.number(100.0 * slope.share, 1);
            (slope.share < 1.0).then(|| words.say(Text::DrawnInOnSlope, &[("percent", &percent)]))
        };
        if let Some(said) = said {
            ui.add_space(6.0);
            desk.second(ui, &said);
        }
    }
    if let Some(wall) = candidate.wall {
        ui.add_space(6.0);
        desk.second(ui, &words.say(Text::WallSentence, &[("number", &(wall + 1).to_string())]));
    }
}

/// A figure and what it changes: `1,787 m², 290 m² more`.
fn change(desk: &Desk<'_>, column: Column, figures: &Compared, own: Option<&Compared>) -> Option<String> {
    let words = desk.words;
    let with_unit = |(figure, unit): (String, &str)| format!("{figure} {unit}").trim_end().to_owned();
    let now = with_unit(column.shown(figures, words)?);
    let Some(own) = own else { return Some(now) };
    let (value, was) = (column.value(figures)?, column.value(own)?);
    if column.shown(figures, words) == column.shown(own, words) {
        return Some(words.say(Text::NowAnd, &[("now", &now), ("change", words.text(Text::Same))]));
    }
    let by = (value - was).abs();
    let by = with_unit(match column {
        Column::Ground | Column::Strip => words.area_parts(by),
        Column::Spare => words.length_parts(by),
        Column::SetUp | Column::Mow => (words.minutes_figure(by), words.text(Text::MinutesUnit)),
        _ => (words.number(by, 0), ""),
    });
    let change = words.say(if value > was { Text::More } else { Text::Less }, &[("by", &by)]);
    Some(words.say(Text::NowAnd, &[("now", &now), ("change", &change)]))
}

/// The table for other programs.
fn ways_out(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    ui.add_space(kit::BETWEEN);
    if kit::link(ui, words.text(Text::CopyTable), p).clicked() {
        ui.ctx().copy_text(desk.editor.table_text());
    }
    ui.add_space(8.0);
    if kit::link(ui, words.text(Text::SaveTable), p).clicked() {
        desk.said.ask(Ask::SaveTable);
    }
}
